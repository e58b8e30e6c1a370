//! The owner's page of devices and people: letting one in, putting one out, PINs, limits, and
//! what came late.

use crate::State;
use crate::door::blocking;
use crate::network::Names;
use crate::pages::{Shown, Visit, cookie, show, trouble_answer};
use crate::tap::{Look, link};
use axum::extract::{self, Form};
use axum::http::HeaderMap;
use axum::http::StatusCode;
use axum::http::header::LOCATION;
use axum::response::{IntoResponse, Response};
use fast_qr::QRBuilder;
use jiff::Timestamp;
use maud::{Markup, html};
use serde::Deserialize;
use shop::access::{Access, Limits, Place};
use shop::repair::{PersonId, Role};
use shop::{Service, Trouble, TroubleKind};
use std::sync::Arc;

pub async fn devices(extract::State(state): extract::State<State>, headers: HeaderMap) -> Response {
    let (service, network) = (Arc::clone(&state.service), state.network.clone());
    let own = cookie(&headers, "device-id").unwrap_or_default();
    show(state, headers, move |visit| {
        let content = match network {
            None => html! {
                h1 { "Devices and people" }
                p class="gap" { "This program serves this machine alone, and asks no PIN." }
                p class="gap" { "To let phones and tablets in, start it so:" }
                p class="gap" { code { "buttonup serve --shop-network" } }
            },
            Some(_) => content(visit, &service.access(), &own)?,
        };
        Ok(Shown::new("Devices and people", content))
    })
    .await
}

fn content(visit: &Visit<'_>, access: &Access<'_>, own: &str) -> Result<Markup, Trouble> {
    let owner = visit.snap.caller().has_any(&[Role::Owner]);
    let (standing, out): (Vec<_>, Vec<_>) = access
        .devices()?
        .into_iter()
        .partition(|(_, card)| card.put_out_at.is_none());
    let limits = access.limits()?;
    let late = if owner {
        access.late_facts()?
    } else {
        Vec::new()
    };
    Ok(html! {
        h1 { "Devices and people" }
        @if !late.is_empty() {
            h2 { "Came late" }
            p class="gap" { "Kept as said. Look whether it can be so." }
            @for (command, fact) in &late {
                div class="row" {
                    span class="what" {
                        span class="strong line" { (person(visit, &fact.person)) " on " (fact.device) }
                        span class="soft line" { (fact.why) ", came " (said(visit, fact.at)) ", " a href=(where_of(&fact.stream)) { "what it is about" } }
                    }
                    (act("seen", "Seen", &[("command", command)]))
                }
            }
        }
        h2 { "Devices" }
        @for (device, card) in &standing {
            div class="row" {
                span class="what" {
                    span class="strong line" { (card.name) @if device == own { " (this one)" } }
                    span class="soft line" {
                        (match card.place { Place::Desk => "at the desk", Place::Stall => "at the vehicles" })
                        ", joined " (said(visit, card.joined_at))
                        @if let Some(used) = card.used_at { ", last signed in " (said(visit, used)) }
                        @if let Some((_, signed)) = access.standing(device)? { ", now " (person(visit, &signed.person)) }
                    }
                }
                @if owner && device != own { (act("put-out", "Put out", &[("device", device)])) }
            }
        }
        @if !out.is_empty() {
            details {
                summary class="row" { span class="what soft" { (crate::pages::count(out.len(), "device", "devices")) " put out" } }
                @for (_, card) in &out { p class="row" { (card.name) span class="soft" { @if let Some(at) = card.put_out_at { (said(visit, at)) } } } }
            }
        }
        form method="post" action="/devices/invite" class="bare" {
            div class="presses" { button class="press confirm" type="submit" { "Let a device in" } }
        }
        @if owner {
            h2 { "PINs" }
            @for (person, (name, _)) in &visit.snap.world().shop.people() {
                @let has = access.has_pin(person.as_str())?;
                @let waits = access.waits_until(person.as_str())?;
                div class="row" {
                    span class="what" {
                        span class="strong line" { (visit.snap.texts().text(*name)) }
                        span class="soft line" { @if waits.is_some() { "wrong too often, has to wait" } @else if has { "has a PIN" } @else { "no PIN yet" } }
                    }
                    @if waits.is_some() { (act("lift", "Let try again", &[("person", person.as_str())])) }
                    @if has { (act("take-pin", "Take PIN away", &[("person", person.as_str())])) }
                }
            }
            p class="soft gap" { "Who has no PIN sets one at the next sign-in. Let them do so while you stand by." }
            p class="gap" { a class="row" href="/devices/opened" { span class="what strong" { "Who opened what" } span class="soft" { "the last 90 days" } } }
            h2 { "How long" }
            form method="post" action="/devices/change" class="narrow" {
                input type="hidden" name="act" value="limits";
                (minutes("desk", "At the desk: minutes without a press, then the PIN is asked", limits.desk))
                (minutes("decision", "Before a decision: minutes after the last one or the PIN", limits.decision))
                div class="presses" { button class="press" type="submit" { "Keep" } }
            }
        }
        div class="presses two" {
            (link(Look::Plain, "Change my PIN", "", "/pin"))
            form method="post" action="/sign-out" class="bare" { button class="press" type="submit" { "Sign out" } }
        }
    })
}

fn minutes(name: &str, label: &str, value: u32) -> Markup {
    html! {
        label class="field" {
            span { (label) }
            input type="number" name=(name) value=(value) min="1" max="720" required;
        }
    }
}

fn act(act: &str, label: &str, fields: &[(&str, &str)]) -> Markup {
    html! {
        form method="post" action="/devices/change" class="bare" {
            input type="hidden" name="act" value=(act);
            @for (name, value) in fields { input type="hidden" name=(name) value=(value); }
            button class="press" type="submit" { (label) }
        }
    }
}

fn said(visit: &Visit<'_>, at: Timestamp) -> String {
    let zoned = at.to_zoned_datetime(visit.snap.rules().zone);
    zoned.strftime("%a %-d %b, %H:%M").to_string()
}

/// What somebody is called, also who has left.
fn person(visit: &Visit<'_>, person: &str) -> String {
    let everyone = visit.snap.world().shop.everyone();
    let found = everyone.get(&PersonId::new(person));
    found.map_or_else(
        || "somebody".to_owned(),
        |(name, _)| visit.snap.texts().text(*name),
    )
}

fn where_of(stream: &str) -> String {
    match stream.split_once(':') {
        Some(("order", order)) => format!("/order/{order}"),
        Some(("vehicle", vehicle)) => format!("/v/{vehicle}"),
        _ => "/shop".to_owned(),
    }
}

/// Shows a code that lets one device in.
pub async fn invite(extract::State(state): extract::State<State>, headers: HeaderMap) -> Response {
    let (service, network) = (Arc::clone(&state.service), state.network.clone());
    let who = cookie(&headers, "who");
    let made = blocking(move || {
        let network = network.ok_or_else(only_on_the_network)?;
        let code = service.access().invite(who.as_deref())?;
        Ok((code, network.names()))
    });
    let made = made.await;
    show(state, headers, move |_| {
        let (code, names) = made?;
        Ok(Shown::new("Let a device in", invitation(&code, &names)?))
    })
    .await
}

fn invitation(code: &str, names: &Names) -> Result<Markup, Trouble> {
    let host = names.hosts.first().map_or("", String::as_str);
    let direct = format!("https://{host}/join/{code}");
    // Behind the mark nothing is sent: whoever listens on the network learns no code.
    let scanned = match &names.help {
        Some(help) => format!("{help}/#{code}"),
        None => direct.clone(),
    };
    let parts: Vec<&str> = [0, 4, 8]
        .iter()
        .filter_map(|at| code.get(*at..at + 4))
        .collect();
    Ok(html! {
        h1 { "Let a device in" }
        p class="gap" { "Scan this with the phone or tablet. It lets one device in, for ten minutes." }
        (scannable(&scanned)?)
        p class="gap" { "Or open there: " span class="strong" { "https://" (host) "/join" } }
        p class="gap" { "and type " span class="fact code" { (parts.join(" ")) } }
        @if let Some(help) = &names.help {
            p class="soft gap" { "The first page says how a device comes to trust this shop's own certificate: " (help) }
        }
        form method="post" action="/devices/invite" class="bare" {
            div class="presses two" {
                button class="press" type="submit" { "Another code" }
                (link(Look::Plain, "Devices and people", "", "/devices"))
            }
        }
    })
}

/// A code to scan, dark on light whatever the screen.
fn scannable(text: &str) -> Result<Markup, Trouble> {
    let code = QRBuilder::new(text).build().map_err(|error| {
        Trouble::new(
            TroubleKind::Record,
            "the code",
            error.to_string(),
            "type the address by hand",
        )
    })?;
    let size = code.size;
    let dark = (0..size).flat_map(|y| (0..size).map(move |x| (x, y)));
    let path: String = dark
        .filter(|(x, y)| code[*y][*x].value())
        .map(|(x, y)| format!("M{x} {y}h1v1h-1z"))
        .collect();
    Ok(html! {
        svg class="scan" viewBox=(format!("-4 -4 {0} {0}", size + 8)) role="img" aria-label="A code to scan" {
            path d=(path) {}
        }
    })
}

/// What is changed about a device or a person.
#[derive(Debug, Deserialize)]
pub struct Change {
    act: String,
    device: Option<String>,
    person: Option<String>,
    command: Option<String>,
    desk: Option<u32>,
    decision: Option<u32>,
}

pub async fn change(
    extract::State(state): extract::State<State>,
    headers: HeaderMap,
    Form(change): Form<Change>,
) -> Response {
    let (service, network) = (Arc::clone(&state.service), state.network.clone());
    let done = blocking(move || {
        let network = network.ok_or_else(only_on_the_network)?;
        let own = (cookie(&headers, "device-id"), cookie(&headers, "sign-in"));
        let (Some(device), Some(sign_in)) = own else {
            return Err(only_on_the_network());
        };
        service.access().check_fresh(&device, &sign_in)?;
        changed(&service, &change)?;
        service.access().proved(&sign_in)?;
        network.forget();
        Ok(())
    });
    match done.await {
        Ok(()) => (StatusCode::SEE_OTHER, [(LOCATION, "/devices")]).into_response(),
        Err(trouble) if trouble.kind == TroubleKind::Pin => {
            (StatusCode::SEE_OTHER, [(LOCATION, "/prove?back=/devices")]).into_response()
        }
        Err(trouble) => trouble_answer(&trouble),
    }
}

fn changed(service: &Service, change: &Change) -> Result<(), Trouble> {
    let access = service.access();
    let named = |value: &Option<String>, what: &str| {
        value.clone().ok_or_else(|| {
            Trouble::unreadable(what, "it is missing", "press it on the page of devices")
        })
    };
    match change.act.as_str() {
        "put-out" => access.put_out(&named(&change.device, "device")?),
        "lift" => access.lift(&named(&change.person, "person")?),
        "take-pin" => {
            let person = named(&change.person, "person")?;
            access.take_pin_away(&person)?;
            access.sign_out_everywhere(&person)
        }
        "seen" => access.seen_late(&named(&change.command, "command")?),
        "limits" => {
            let stands = access.limits()?;
            access.set_limits(Limits {
                desk: change.desk.unwrap_or(stands.desk),
                decision: change.decision.unwrap_or(stands.decision),
            })
        }
        other => Err(Trouble::unreadable(
            "act",
            format!("`{other}` is nothing that is changed here"),
            "press it on the page of devices",
        )),
    }
}

fn only_on_the_network() -> Trouble {
    Trouble::new(
        TroubleKind::NotFound,
        "this program",
        "it serves its own machine alone",
        "start it with --shop-network to let other devices in",
    )
}

/// Who opened pages with a customer's data on them.
pub async fn opened(extract::State(state): extract::State<State>, headers: HeaderMap) -> Response {
    /// More than anybody reads.
    const MOST: usize = 500;
    let service = Arc::clone(&state.service);
    show(state, headers, move |visit| {
        let opened = service.access().opened()?;
        Ok(Shown::new(
            "Who opened what",
            html! {
                h1 { "Who opened what" }
                p class="gap" { "Pages that show who a customer is, once a day for each person. Kept for 90 days, outside the record." }
                @if opened.is_empty() { p class="gap" { "Nothing yet." } }
                @for one in opened.iter().take(MOST) {
                    a class="row" href=(one.page) {
                        span class="what" {
                            span class="strong line" { (person(visit, &one.person)) }
                            span class="soft line" { (said(visit, one.at)) ", on " (one.device) }
                        }
                        span class="soft" { (one.page) }
                    }
                }
                @if opened.len() > MOST { p class="soft gap" { "The last " (MOST) " of " (opened.len()) "." } }
            },
        ))
    })
    .await
}
