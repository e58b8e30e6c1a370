//! The shop itself: setting it up, its people, the record.

use crate::State;
use crate::door::blocking;
use crate::layout::Part;
use crate::pages::desk::ask::sources;
use crate::pages::people::sign_in::{Back, way_back};
use crate::pages::{Shown, Visit, cookie, remember, show, show_anybody};
use crate::phrases::shop as say;
use crate::tap::{Look, button, chips, choices, field, figure, link, new, required, text, when};
use axum::extract::{self, Path, Query};
use axum::http::HeaderMap;
use axum::response::Response;
use maud::{Markup, html};
use phrases::Language;
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
            say::who_are_you(),
            html! {
                h1 { (say::who_are_you()) }
                @for (id, name, roles) in &people {
                    a class="row" href=(format!("/who/{id}")) {
                        span class="what beside" { (name) }
                        span class="soft" { (in_words(roles)) }
                    }
                }
                p class="soft gap" { (say::no_pin_asked()) }
                (language())
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
                say::set_up(),
                html! {
                    h1 { (say::nobody_yet()) }
                    div class="presses low" { (link(Look::Confirm, say::set_the_shop_up(), "", "/setup")) }
                },
            ));
        }
        let query: String = form_urlencoded::byte_serialize(back.as_bytes()).collect();
        Ok(Shown::new(
            say::who_is_it(),
            html! {
                h1 { (say::who_is_it()) }
                @for (id, name, roles) in &people {
                    a class="row" href=(format!("/sign-in/{id}?back={query}")) {
                        span class="what beside" { (name) }
                        span class="soft" { @if signed.as_deref() == Some(id.as_str()) { (say::signed_in()) } @else { (in_words(roles)) } }
                    }
                }
                @if signed.is_some() {
                    form method="post" action="/sign-out" class="bare" {
                        div class="presses" { button class="press" type="submit" { (say::sign_out()) } }
                    }
                    (language())
                }
            },
        ))
    })
    .await
}

/// Where the language is chosen, in both.
fn language() -> Markup {
    html! { a class="row" href="/language" { span class="what" { (crate::phrases::people::language_in_both()) } } }
}

/// Everybody: the name in the record, the name, and the codes of what they do.
type Person = (String, String, Vec<&'static str>);

fn people(visit: &Visit<'_>) -> Result<Vec<Person>, shop::Trouble> {
    let world = visit.snap.world();
    Ok(world
        .shop
        .people()
        .into_iter()
        .map(|(id, (name, roles))| {
            let roles = roles
                .iter()
                .map(|role| shop::record::v1::codes::RoleForm::word(*role))
                .collect();
            (id.as_str().to_owned(), visit.snap.texts().text(name), roles)
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
        Err(shop::Trouble::not_found(say::no_such_person()))
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
            return Ok(Shown::new(say::set_up(), html! {
                h1 { (say::shop_is_set_up()) }
                div class="presses low" { (link(Look::Confirm, say::to_the_floor(), "", "/who")) }
            }));
        }
        Ok(Shown::new(say::set_up(), html! {
            h1 { (say::your_shop()) }
            p class="gap" { (say::all_in_one_folder()) }
            form class="narrow" {
                (chips("speaks", crate::phrases::people::language_in_both(), &Language::ALL.map(|language| (language.tag(), language.name())), phrases::spoken().tag()))
                (required("shop", say::name_of_the_shop(), "", ""))
                (required("owner", say::your_name(), "", ""))
                (crate::tap::input("second", say::name_of_a_second(), say::empty_if_alone(), ""))
                (figure("rate", say::hours_labour(), say::such_as_120(), "", true))
                (required("currency", say::currency(), say::three_letters(), "EUR"))
                (required("tax", say::name_of_the_tax(), "", say::usual_tax()))
                (figure("percent", say::per_cent_of_tax(), "", say::usual_tax_rate(), true))
                (chips("taxed", say::tax_falls_on(), &[("all", say::labour_and_parts()), ("parts", say::parts_only())], "all"))
                (chips("units", say::units(), &[("metric", say::metric()), ("us", say::us_units())], "metric"))
                (required("zone", say::time_zone(), say::such_zones(), say::usual_zone()))
                (required("stalls", say::name_of_first_stall(), "", say::first_stall()))
                details id="papers" {
                    summary class="row" { span class="what strong" { (say::on_your_papers()) } span class="soft" { (say::can_wait()) } }
                    (super::letterhead::fields(&shop::view::letterhead(visit.snap)))
                }
                div class="presses" {
                    (button(Look::Confirm, say::set_up(), "", &setting_up(), Some("/who")))
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
        shop(json!({ "shop-speaks": { "language": field("speaks"), "after": [] } })),
        shop(
            json!({ "letterhead-told": { "letterhead": super::letterhead::letter(json!(field("speaks")), Value::Null, Value::Null), "after": [] } }),
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
        Ok(Shown::new(say::the_shop(), html! {
            h1 { (say::the_shop()) }
            (elsewhere(visit.snap.caller().sees_prices()))
            div class="columns" {
                div {
                    h2 { (say::people()) }
                    @for (person, name, roles) in &people { (person_row(visit, person, name, roles)) }
                    form {
                        (required("name", say::somebody_new(), "", ""))
                        (chips("role", say::what_they_do(), &choices(ROLES_NARROW), "technician"))
                        div class="presses" {
                            (button(Look::Plain, say::add(), "", &[json!({ "stream": "shop", "shop_fact": { "joined": { "person": new("person"), "name": text("name"), "roles": [field("role")] } } })], None))
                        }
                    }
                }
                div {
                    h2 id="stalls" { (say::stalls()) }
                    (stalls(visit)?)
                    form {
                        (required("name", say::another_stall(), "", ""))
                        (chips("sort", say::what_sort(), &choices(SORTS), "lift"))
                        div class="presses" {
                            (button(Look::Plain, say::add_the_stall(), "", &[json!({ "stream": "shop", "shop_fact": { "stall-added": { "stall": new("stall"), "name": text("name"), "sort": field("sort") } } })], None))
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
            say::what_prices_go_by(),
            say::what_prices_go_by_hint(),
            "/shop/prices",
        ),
        (say::books(), say::books_hint(), "/shop/books"),
        (
            say::on_your_papers(),
            say::on_your_papers_hint(),
            "/shop/letterhead",
        ),
        (say::who_can_do_what(), say::table_of_skills(), "/skills"),
        (say::devices_and_people(), say::phones_pins(), "/devices"),
        (say::the_record(), say::check_copy_erase(), "/record"),
        (say::maps(), "", "/maps"),
        (
            crate::phrases::people::language_of_the_screens(),
            phrases::spoken().name(),
            "/language",
        ),
        (say::somebody_else(), say::change_the_person(), "/who"),
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

type Said = fn() -> &'static str;

/// What people do, by its code; where there is little room a word may be parted.
const ROLES: &[(&str, Said)] = &[
    ("technician", say::technician),
    ("desk", say::desk),
    ("owner", say::owner),
    ("apprentice", say::apprentice),
    ("foreman", say::foreman),
];
const ROLES_NARROW: &[(&str, Said)] = &[
    ("technician", say::technician_narrow),
    ("desk", say::desk),
    ("owner", say::owner),
    ("apprentice", say::apprentice_narrow),
    ("foreman", say::foreman),
];

/// What a stall is, by its code.
const SORTS: &[(&str, Said)] = &[
    ("lift", say::lift),
    ("flat", say::flat),
    ("outside", say::outside),
];

/// The words of these codes.
fn in_words(roles: &[&'static str]) -> String {
    let words: Vec<&str> = roles.iter().map(|code| word_of(ROLES, code)).collect();
    words.join(", ")
}

fn word_of<'c>(words: &[(&str, Said)], code: &'c str) -> &'c str {
    let found = words.iter().find(|(known, _)| *known == code);
    found.map_or(code, |(_, said)| said())
}

pub fn of_shop(fact: Value) -> Value {
    json!({ "stream": "shop", "shop_fact": fact })
}

pub fn seen(commands: Vec<&CommandId>) -> Vec<&str> {
    commands.into_iter().map(CommandId::as_str).collect()
}

/// A person, with what can be put right about them, and the way out.
fn person_row(visit: &Visit<'_>, person: &str, name: &str, roles: &[&'static str]) -> Markup {
    let after = seen(visit.snap.world().shop.person_told(&PersonId::new(person)));
    let role = |role: &str| when(role, json!(role));
    let told = of_shop(
        json!({ "person-told": { "person": person, "name": text("name"),
        "roles": ROLES.iter().map(|(code, _)| role(code)).collect::<Vec<_>>(), "after": after } }),
    );
    html! {
        details id=(format!("person-{person}")) {
            summary class="row" { span class="what" { (name) } span class="soft" { (in_words(roles)) } }
            (super::hours::not_here_today(visit, person))
            form {
                (required("name", say::name(), "", name))
                fieldset data-one-of=(say::tick_what_they_do()) {
                    legend { (say::what_they_do()) }
                    @for (code, word) in choices(ROLES_NARROW) {
                        label class="row" { input type="checkbox" name=(code) value=(code) checked[roles.contains(&code)]; span { (word) } }
                    }
                }
                div class="presses" { (button(Look::Plain, say::save(), "", &[told], None)) }
            }
            (super::letterhead::grade(visit, person))
            (super::hours::of_person(visit, person))
            form { div class="presses" {
                (button(Look::Plain, say::no_longer_with_us(), say::stays_in_the_record(), &[of_shop(json!({ "departed": { "person": person } }))], None))
            } }
        }
    }
}

/// A stall, with its name, its sort, what it takes and the way out.
fn stall_row(visit: &Visit<'_>, stall: &StallId, name: &str, sort: StallIs) -> Markup {
    let after = seen(visit.snap.world().shop.stall_told(stall));
    let code = shop::record::v1::codes::StallIsForm::word(sort);
    let told = of_shop(
        json!({ "stall-told": { "stall": stall.as_str(), "name": text("name"), "sort": field("sort"), "after": after } }),
    );
    html! {
        details id=(format!("stall-{}", stall.as_str())) {
            summary class="row" { span class="what" { (name) } span class="soft" { (word_of(SORTS, code)) (super::stall::in_short(visit, stall)) } }
            form {
                (required("name", say::name(), "", name))
                (chips("sort", say::what_sort(), &choices(SORTS), code))
                div class="presses" { (button(Look::Plain, say::save(), "", &[told], None)) }
            }
            (super::stall::takes(visit, stall, sort))
            form { div class="presses" {
                (button(Look::Plain, say::remove_the_stall(), "", &[of_shop(json!({ "stall-removed": { "stall": stall.as_str() } }))], None))
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
            summary class="row" { span class="what strong" { (say::name_rate_tax_units()) } }
            form class="narrow" {
                (required("shop", say::name_of_the_shop(), "", &visit.snap.texts().text(now.name)))
                (figure("rate", say::labour_an_hour(), "", &now.rate.normalize().to_string(), true))
                @if let Some(tax) = tax {
                    (required("tax", say::name_of_the_tax(), "", &tax.name))
                    (figure("percent", say::tax_rate(), "", &percent, true))
                }
                (chips("units", say::units(), &[("metric", say::metric()), ("us", say::us_units())], units))
                (required("zone", say::time_zone(), say::such_zones(), &now.zone))
                div class="presses" { (button(Look::Plain, say::save(), "", &[set], None)) }
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
        h2 { (say::rules_for_consent()) }
        @match chosen {
            None => p class="gap" { (say::no_rules()) },
            Some(place) => {
                p class="gap strong" { (say::rules_as_of(place.name(), &place.as_of)) }
                (sources(place))
            },
        }
        @if let Some((settings, place)) = other_currency {
            p class="gap wait" { (say::other_currency(&place.currency, &settings.currency)) }
        }
        details id="rules" {
            summary class="row" { span class="what" { (say::choose_a_place()) } }
            p class="wait gap" { (NOT_ADVICE) }
            @for place in places() {
                form { div class="presses" { (button(Look::Plain, place.name(), &say::as_of(&place.as_of), &[choose(Some(place))], None)) } }
            }
            form { div class="presses" { (button(Look::Plain, say::no_places_rules(), say::any_excess_is_asked(), &[choose(None)], None)) } }
        }
    })
}
