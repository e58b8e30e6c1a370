//! The shop itself: setting it up, its people, the record.

use crate::State;
use crate::door::blocking;
use crate::layout::Part;
use crate::pages::desk::ask::sources;
use crate::pages::people::sign_in::{Back, way_back};
use crate::pages::{Shown, Visit, cookie, remember, show, show_anybody};
use crate::tap::{Look, button, chips, field, link, new, required, text, when};
use axum::extract::{self, Path, Query};
use axum::http::HeaderMap;
use axum::response::Response;
use maud::{Markup, html};
use serde_json::{Value, json};
use shop::places::{NOT_ADVICE, Place, place_of, places};
use shop::record::form::Form as _;
use shop::record::v1::decisions::TaxRuleForm;
use shop::repair::{CommandId, PersonId, StallId, StallIs, Units};
use std::sync::Arc;

pub async fn who(
    extract::State(state): extract::State<State>,
    headers: HeaderMap,
    Query(back): Query<Back>,
) -> Response {
    if state.network.is_some() {
        return who_signs_in(state, headers, back.back).await;
    }
    show_anybody(state, headers, |visit| {
        let people = people(visit)?;
        Ok(Shown::new(
            "Who are you?",
            html! {
                h1 { "Who are you?" }
                @for (id, name, roles) in &people {
                    a class="row" href=(format!("/who/{id}")) {
                        span class="what beside" { (name) }
                        span class="soft" { (roles) }
                    }
                }
                p class="soft gap" { "This machine only: no PIN is asked for yet." }
            },
        ))
    })
    .await
}

/// Who it is, where people sign in.
async fn who_signs_in(state: State, headers: HeaderMap, back: Option<String>) -> Response {
    let signed = cookie(&headers, "who");
    let back = way_back(back.as_deref());
    show_anybody(state, headers, move |visit| {
        let people = people(visit)?;
        if people.is_empty() {
            return Ok(Shown::new(
                "Set up",
                html! {
                    h1 { "Nobody belongs to the shop yet" }
                    div class="presses low" { (link(Look::Confirm, "Set the shop up", "", "/setup")) }
                },
            ));
        }
        let query: String = form_urlencoded::byte_serialize(back.as_bytes()).collect();
        Ok(Shown::new(
            "Who is it?",
            html! {
                h1 { "Who is it?" }
                @for (id, name, roles) in &people {
                    a class="row" href=(format!("/sign-in/{id}?back={query}")) {
                        span class="what beside" { (name) }
                        span class="soft" { @if signed.as_deref() == Some(id.as_str()) { "signed in" } @else { (roles) } }
                    }
                }
                @if signed.is_some() {
                    form method="post" action="/sign-out" class="bare" {
                        div class="presses" { button class="press" type="submit" { "Sign out" } }
                    }
                }
            },
        ))
    })
    .await
}

fn people(visit: &Visit<'_>) -> Result<Vec<(String, String, String)>, shop::Trouble> {
    let world = visit.snap.world();
    Ok(world
        .shop
        .people()
        .into_iter()
        .map(|(id, (name, roles))| {
            let roles: Vec<_> = roles
                .iter()
                .map(|role| shop::record::v1::codes::RoleForm::word(*role))
                .collect();
            (
                id.as_str().to_owned(),
                visit.snap.texts().text(name),
                roles.join(", "),
            )
        })
        .collect())
}

pub async fn is(
    extract::State(state): extract::State<State>,
    headers: HeaderMap,
    Path(person): Path<String>,
) -> Response {
    let (service, asked) = (Arc::clone(&state.service), person.clone());
    let known = blocking(move || {
        let world = service.world()?;
        let people = world.shop.people();
        Ok(people.keys().any(|known| known.as_str() == asked))
    });
    if state.network.is_none() && known.await.unwrap_or(false) {
        return remember(&person, "/");
    }
    show_anybody(state, headers, |_| {
        Err(shop::Trouble::not_found(
            "there is no such person in this shop",
        ))
    })
    .await
}

pub async fn setup(extract::State(state): extract::State<State>, headers: HeaderMap) -> Response {
    show_anybody(state, headers, |visit| {
        let done = {
            let world = visit.snap.world();
            world.shop.settings().is_some() && !world.shop.people().is_empty()
        };
        if done {
            return Ok(Shown::new("Set up", html! {
                h1 { "The shop is set up" }
                div class="presses low" { (link(Look::Confirm, "To the floor", "", "/who")) }
            }));
        }
        Ok(Shown::new("Set up", html! {
            h1 { "Your shop" }
            p class="gap" { "Everything stays in one folder on this machine." }
            form class="narrow" {
                (required("shop", "Name of the shop", "", ""))
                (required("owner", "Your name", "", ""))
                (crate::tap::input("second", "Name of a second person", "leave empty if you work alone", ""))
                (required("rate", "An hour's labour, before tax", "such as 120", ""))
                (required("currency", "Currency", "three letters", "EUR"))
                (required("tax", "Name of the tax", "", "VAT"))
                (required("percent", "Per cent of tax", "", "20"))
                (chips("taxed", "Tax falls on", &[("all", "labour and parts"), ("parts", "parts only")], "all"))
                (chips("units", "Units", &[("metric", "metric"), ("us", "US")], "metric"))
                (required("zone", "Time zone", "such as Europe/Lisbon or America/Chicago", "Europe/Lisbon"))
                (required("stalls", "Name of the first stall", "", "Stall 1"))
                details id="papers" {
                    summary class="row" { span class="what strong" { "On your papers" } span class="soft" { "can wait" } }
                    (super::letterhead::fields(&shop::view::letterhead(visit.snap)))
                }
                div class="presses" {
                    (button(Look::Confirm, "Set up", "", &setting_up(), Some("/who")))
                }
            }
        }))
    })
    .await
}

fn setting_up() -> Vec<Value> {
    let shop =
        |fact: Value| json!({ "stream": "shop", "who": { "$new": "owner" }, "shop_fact": fact });
    let taxed = json!({ "$map": "taxed", "to": { "all": true, "parts": false }, "else": true });
    vec![
        shop(json!({ "set": { "settings": {
            "name": text("shop"),
            "rate": field("rate"),
            "currency": field("currency"),
            "minor_digits": 2,
            "taxes": [{
                "name": field("tax"),
                "percent": field("percent"),
                "on": { "labour": taxed, "parts": true, "other": true },
            }],
            "units": field("units"),
            "zone": field("zone"),
        } } })),
        shop(
            json!({ "letterhead-told": { "letterhead": super::letterhead::letter(json!("en"), Value::Null, Value::Null), "after": [] } }),
        ),
        shop(json!({ "seat-told": { "seat": super::letterhead::seat(), "after": [] } })),
        shop(
            json!({ "joined": { "person": new("owner"), "name": text("owner"), "roles": ["owner", "technician"] } }),
        ),
        when(
            "second",
            shop(
                json!({ "joined": { "person": new("second"), "name": text("second"), "roles": ["technician"] } }),
            ),
        ),
        shop(
            json!({ "stall-added": { "stall": new("stall"), "name": text("stalls"), "sort": "lift" } }),
        ),
    ]
}

pub async fn shop(extract::State(state): extract::State<State>, headers: HeaderMap) -> Response {
    show(state, headers, |visit| {
        let people = people(visit)?;
        Ok(Shown::new("The shop", html! {
            h1 { "The shop" }
            (elsewhere(visit.snap.caller().sees_prices()))
            div class="columns" {
                div {
                    h2 { "People" }
                    @for (person, name, roles) in &people { (person_row(visit, person, name, roles)) }
                    form {
                        (required("name", "Somebody new", "", ""))
                        (chips("role", "What they do", &[("technician", "techni\u{ad}cian"), ("desk", "desk"), ("owner", "owner"), ("apprentice", "appren\u{ad}tice"), ("foreman", "foreman")], "technician"))
                        div class="presses" {
                            (button(Look::Plain, "Add", "", &[json!({ "stream": "shop", "shop_fact": { "joined": { "person": new("person"), "name": text("name"), "roles": [field("role")] } } })], None))
                        }
                    }
                }
                div {
                    h2 { "Stalls" }
                    (stalls(visit)?)
                    form {
                        (required("name", "Another stall", "", ""))
                        (chips("sort", "What sort", &[("lift", "lift"), ("flat", "flat")], "lift"))
                        div class="presses" {
                            (button(Look::Plain, "Add the stall", "", &[json!({ "stream": "shop", "shop_fact": { "stall-added": { "stall": new("stall"), "name": text("name"), "sort": field("sort") } } })], None))
                        }
                    }
                }
            }
            (settings(visit)?)
            (super::hours::opening(visit))
            (rules(visit)?)
            (super::words::alone(visit))
            (super::words::own_words(visit))
            (crate::pages::vehicle::fastener_facts::weights(visit)?)
        }).of_part(Part::Shop))
    })
    .await
}

/// Pages of the shop that are their own.
fn elsewhere(sees_prices: bool) -> Markup {
    let pages = [
        (
            "What prices go by",
            "taxes, rates, fixed-price jobs",
            "/shop/prices",
        ),
        (
            "Books",
            "invoices, payments, taxes, what is not paid",
            "/shop/books",
        ),
        (
            "On your papers",
            "address, tax number, bank, picture",
            "/shop/letterhead",
        ),
        ("Who can do what", "the table of skills", "/skills"),
        ("Devices and people", "phones, PINs", "/devices"),
        ("The record", "check, copy, erase", "/record"),
        ("Maps", "", "/maps"),
        ("Somebody else", "change the person", "/who"),
    ];
    let shown = pages
        .iter()
        .filter(|(_, _, to)| sees_prices || !["/shop/prices", "/shop/books"].contains(to));
    html! {
        @for (label, small, to) in shown {
            a class="row" href=(to) { span class="what strong" { (label) } span class="soft" { (small) } }
        }
    }
}

fn stalls(visit: &Visit<'_>) -> Result<Markup, shop::Trouble> {
    let world = visit.snap.world();
    Ok(html! {
        @for (stall, name, sort) in world.shop.stalls() {
            (stall_row(visit, stall, &visit.snap.texts().text(name), sort))
        }
    })
}

const ROLES: &[(&str, &str)] = &[
    ("technician", "techni\u{ad}cian"),
    ("desk", "desk"),
    ("owner", "owner"),
    ("apprentice", "appren\u{ad}tice"),
    ("foreman", "foreman"),
];

pub fn of_shop(fact: Value) -> Value {
    json!({ "stream": "shop", "shop_fact": fact })
}

pub fn seen(commands: Vec<&CommandId>) -> Vec<&str> {
    commands.into_iter().map(CommandId::as_str).collect()
}

/// A person, with what can be put right about them, and the way out.
fn person_row(visit: &Visit<'_>, person: &str, name: &str, roles: &str) -> Markup {
    let after = seen(visit.snap.world().shop.person_told(&PersonId::new(person)));
    let first = roles.split(", ").next().unwrap_or_default();
    let role = |role: &str| when(role, json!(role));
    let told = of_shop(
        json!({ "person-told": { "person": person, "name": text("name"),
        "roles": ROLES.iter().map(|(code, _)| role(code)).collect::<Vec<_>>(), "after": after } }),
    );
    html! {
        details id=(format!("person-{person}")) {
            summary class="row" { span class="what" { (name) } span class="soft" { (roles) } }
            form {
                (required("name", "Name", "", name))
                fieldset data-one-of="Tick what they do" {
                    legend { "What they do" }
                    @for (code, word) in ROLES {
                        label class="row" { input type="checkbox" name=(code) value=(code) checked[roles.contains(code) || *code == first]; span { (word) } }
                    }
                }
                div class="presses" { (button(Look::Plain, "Save", "", &[told], None)) }
            }
            (super::letterhead::grade(visit, person))
            (super::hours::of_person(visit, person))
            form { div class="presses" {
                (button(Look::Plain, "No longer with us", "what they did stays in the record", &[of_shop(json!({ "departed": { "person": person } }))], None))
            } }
        }
    }
}

/// A stall, with its name, its sort and the way out.
fn stall_row(visit: &Visit<'_>, stall: &StallId, name: &str, sort: StallIs) -> Markup {
    let after = seen(visit.snap.world().shop.stall_told(stall));
    let word = shop::record::v1::codes::StallIsForm::word(sort);
    let told = of_shop(
        json!({ "stall-told": { "stall": stall.as_str(), "name": text("name"), "sort": field("sort"), "after": after } }),
    );
    html! {
        details id=(format!("stall-{}", stall.as_str())) {
            summary class="row" { span class="what" { (name) } span class="soft" { (word) } }
            form {
                (required("name", "Name", "", name))
                (chips("sort", "What sort", &[("lift", "lift"), ("flat", "flat")], word))
                div class="presses" { (button(Look::Plain, "Save", "", &[told], None)) }
            }
            form { div class="presses" {
                (button(Look::Plain, "Remove the stall", "", &[of_shop(json!({ "stall-removed": { "stall": stall.as_str() } }))], None))
            } }
        }
    }
}

/// Name, rate, tax and zone, to be put right.
fn settings(visit: &Visit<'_>) -> Result<Markup, shop::Trouble> {
    let world = visit.snap.world();
    let Some(now) = world.shop.settings() else {
        return Ok(html! {});
    };
    let after = seen(world.shop.settings_told());
    let tax = now.taxes.first();
    let percent = tax.map_or(String::new(), |tax| tax.percent.normalize().to_string());
    // What is not asked here stays as it is.
    let taxes: Vec<Value> = now
        .taxes
        .iter()
        .enumerate()
        .map(|(nth, tax)| {
            let mut sent = json!(TaxRuleForm::of(tax));
            if nth == 0 {
                sent["name"] = field("tax");
                sent["percent"] = field("percent");
            }
            sent
        })
        .collect();
    let units = match now.units {
        Units::Metric => "metric",
        Units::Us => "us",
    };
    let set = of_shop(json!({ "set": { "settings": {
        "name": text("shop"), "rate": field("rate"), "currency": now.currency, "minor_digits": now.minor_digits,
        "taxes": taxes, "units": field("units"), "zone": field("zone") }, "after": after } }));
    Ok(html! {
        details id="settings" {
            summary class="row" { span class="what strong" { "Name, rate, tax, units" } }
            form class="narrow" {
                (required("shop", "Name of the shop", "", &visit.snap.texts().text(now.name)))
                (required("rate", "Labour, an hour, before tax", "", &now.rate.normalize().to_string()))
                @if let Some(tax) = tax {
                    (required("tax", "Name of the tax", "", &tax.name))
                    (required("percent", "Tax rate, %", "", &percent))
                }
                (chips("units", "Units", &[("metric", "metric"), ("us", "US")], units))
                (required("zone", "Time zone", "such as Europe/Lisbon or America/Chicago", &now.zone))
                div class="presses" { (button(Look::Plain, "Save", "", &[set], None)) }
            }
        }
    })
}

/// Whose rules hold for consent: those of a place, or none.
fn rules(visit: &Visit<'_>) -> Result<Markup, shop::Trouble> {
    let world = visit.snap.world();
    let chosen = place_of(&world.shop);
    let after: Vec<&str> = world
        .shop
        .places_chosen()
        .into_iter()
        .map(CommandId::as_str)
        .collect();
    let choose = |place: Option<&Place>| {
        json!({ "stream": "shop", "shop_fact": { "place-chosen": {
            "place": place.map(|place| &place.place), "version": place.map_or(0, |place| place.version), "after": after } } })
    };
    let other_currency = world
        .shop
        .settings()
        .zip(chosen)
        .filter(|(settings, place)| settings.currency != place.currency);
    Ok(html! {
        h2 { "Rules for consent" }
        @match chosen {
            None => p class="gap" { "No place's rules: whatever passes what was agreed is asked for, however little. This fits everywhere." },
            Some(place) => {
                p class="gap strong" { (place.name) ", as of " (place.as_of) }
                (sources(place))
            },
        }
        @if let Some((settings, place)) = other_currency {
            p class="gap wait" { "Its sums are in " (place.currency) " and yours in " (settings.currency) ": until they are the same, whatever passes what was agreed is asked for." }
        }
        details id="rules" {
            summary class="row" { span class="what" { "Choose a place" } }
            p class="wait gap" { (NOT_ADVICE) }
            @for place in places() {
                form { div class="presses" { (button(Look::Plain, &place.name, &format!("as of {}", place.as_of), &[choose(Some(place))], None)) } }
            }
            form { div class="presses" { (button(Look::Plain, "No place's rules", "any excess is asked for", &[choose(None)], None)) } }
        }
    })
}
