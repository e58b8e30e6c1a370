//! The owner's page of devices and people: letting one in, putting one out, PINs, limits, and
//! what came late.

use crate::State;
use crate::door::blocking;
use crate::network::Names;
use crate::pages::{Shown, Visit, cookie, show, trouble_answer};
use crate::phrases::dates::dated;
use crate::phrases::people as say;
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
                h1 { (say::devices_and_people()) }
                p class="gap" { (say::this_machine_alone()) }
                p class="gap" { (say::start_it_so()) }
                p class="gap" { code { "buttonup serve --shop-network" } }
            },
            Some(_) => content(visit, &service.access(), &own)?,
        };
        Ok(Shown::new(say::devices_and_people(), content))
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
        h1 { (say::devices_and_people()) }
        @if !late.is_empty() {
            h2 { (say::came_late()) }
            p class="gap" { (say::came_late_hint()) }
            @for (command, fact) in &late {
                div class="row" {
                    span class="what" {
                        span class="strong line" { (say::who_on_device(person(visit, &fact.person), &fact.device)) }
                        span class="soft line" { (say::why_and_when_it_came(&fact.why, said(visit, fact.at))) a href=(where_of(&fact.stream)) { (say::what_it_is_about()) } }
                    }
                    (act("seen", say::seen(), &[("command", command)]))
                }
            }
        }
        h2 { (say::devices()) }
        @for (device, card) in &standing {
            div class="row" {
                span class="what" {
                    span class="strong line" { (card.name) @if device == own { (say::this_one()) } }
                    span class="soft line" {
                        (match card.place { Place::Desk => say::at_the_desk(), Place::Stall => say::at_the_vehicles() })
                        (say::joined(said(visit, card.joined_at)))
                        @if let Some(used) = card.used_at { (say::last_signed_in(said(visit, used))) }
                        @if let Some((_, signed)) = access.standing(device)? { (say::now_used_by(person(visit, &signed.person))) }
                    }
                }
                @if owner && device != own { (act("put-out", say::put_out(), &[("device", device)])) }
            }
        }
        @if !out.is_empty() {
            details {
                summary class="row" { span class="what soft" { (say::devices_put_out(out.len())) } }
                @for (_, card) in &out { p class="row" { (card.name) span class="soft" { @if let Some(at) = card.put_out_at { (said(visit, at)) } } } }
            }
        }
        form method="post" action="/devices/invite" class="bare" {
            div class="presses" { button class="press confirm" type="submit" { (say::let_a_device_in()) } }
        }
        @if owner {
            h2 { (say::pins()) }
            @for (person, (name, _)) in &visit.snap.world().shop.people() {
                @let has = access.has_pin(person.as_str())?;
                @let waits = access.waits_until(person.as_str())?;
                div class="row" {
                    span class="what" {
                        span class="strong line" { (visit.snap.texts().text(*name)) }
                        span class="soft line" { @if waits.is_some() { (say::wrong_too_often()) } @else if has { (say::has_a_pin()) } @else { (say::no_pin_yet()) } }
                    }
                    @if waits.is_some() { (act("lift", say::let_try_again(), &[("person", person.as_str())])) }
                    @if has { (act("take-pin", say::take_pin_away(), &[("person", person.as_str())])) }
                }
            }
            p class="soft gap" { (say::sets_one_at_the_next()) }
            p class="gap" { a class="row" href="/devices/opened" { span class="what strong" { (say::who_opened_what()) } span class="soft" { (say::last_ninety_days()) } } }
            h2 { (say::how_long()) }
            form method="post" action="/devices/change" class="narrow" {
                input type="hidden" name="act" value="limits";
                (minutes("desk", say::minutes_at_the_desk(), limits.desk))
                (minutes("decision", say::minutes_before_a_decision(), limits.decision))
                div class="presses" { button class="press" type="submit" { (say::keep()) } }
            }
        }
        div class="presses two" {
            (link(Look::Plain, say::change_my_pin(), "", "/pin"))
            form method="post" action="/sign-out" class="bare" { button class="press" type="submit" { (say::sign_out()) } }
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
    dated("%a %-d %b, %H:%M", &zoned)
}

/// What somebody is called, also who has left.
fn person(visit: &Visit<'_>, person: &str) -> String {
    let everyone = visit.snap.world().shop.everyone();
    let found = everyone.get(&PersonId::new(person));
    found.map_or_else(
        || say::somebody().to_owned(),
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
        Ok(Shown::new(
            say::let_a_device_in(),
            invitation(&code, &names)?,
        ))
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
        h1 { (say::let_a_device_in()) }
        p class="gap" { (say::scan_this()) }
        (scannable(&scanned)?)
        p class="gap" { (say::or_open_there()) span class="strong" { "https://" (host) "/join" } }
        p class="gap" { (say::and_type()) span class="fact code" { (parts.join(" ")) } }
        @if let Some(help) = &names.help {
            p class="soft gap" { (say::first_page_says(help)) }
        }
        form method="post" action="/devices/invite" class="bare" {
            div class="presses two" {
                button class="press" type="submit" { (say::another_code()) }
                (link(Look::Plain, say::devices_and_people(), "", "/devices"))
            }
        }
    })
}

/// A code to scan, dark on light whatever the screen.
fn scannable(text: &str) -> Result<Markup, Trouble> {
    let code = QRBuilder::new(text).build().map_err(|error| {
        Trouble::new(
            TroubleKind::Record,
            say::the_code(),
            error.to_string(),
            say::type_the_address(),
        )
    })?;
    let size = code.size;
    let dark = (0..size).flat_map(|y| (0..size).map(move |x| (x, y)));
    let path: String = dark
        .filter(|(x, y)| code[*y][*x].value())
        .map(|(x, y)| format!("M{x} {y}h1v1h-1z"))
        .collect();
    Ok(html! {
        svg class="scan" viewBox=(format!("-4 -4 {0} {0}", size + 8)) role="img" aria-label=(say::code_to_scan()) {
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
            Trouble::unreadable(what, say::it_is_missing(), say::press_on_page_of_devices())
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
            say::nothing_changed_here(other),
            say::press_on_page_of_devices(),
        )),
    }
}

fn only_on_the_network() -> Trouble {
    Trouble::new(
        TroubleKind::NotFound,
        say::this_program(),
        say::serves_its_own_machine(),
        say::start_with_shop_network(),
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
            say::who_opened_what(),
            html! {
                h1 { (say::who_opened_what()) }
                p class="gap" { (say::opened_pages_are()) }
                @if opened.is_empty() { p class="gap" { (say::nothing_yet()) } }
                @for one in opened.iter().take(MOST) {
                    a class="row" href=(one.page) {
                        span class="what" {
                            span class="strong line" { (person(visit, &one.person)) }
                            span class="soft line" { (say::when_on_device(said(visit, one.at), &one.device)) }
                        }
                        span class="soft" { (one.page) }
                    }
                }
                @if opened.len() > MOST { p class="soft gap" { (say::the_last_of(MOST, opened.len())) } }
            },
        ))
    })
    .await
}
