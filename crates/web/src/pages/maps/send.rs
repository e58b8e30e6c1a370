//! Maps from shop to shop: what goes along with one that is sent, and what one that came would
//! change.

use super::edit::attached;
use crate::State;
use crate::allowed::caller_of;
use crate::door::blocking;
use crate::layout::Part;
use crate::pages::{Shown, Visit, count, show};
use crate::tap::{Look, button, words};
use axum::Form;
use axum::extract::{self, Path, Query};
use axum::http::HeaderMap;
use axum::response::Response;
use maud::{Markup, html};
use serde::Deserialize;
use serde_json::json;
use shop::repair::MapId;
use shop::sent_map::{ReceivedMap, SentMap, people_named, received_map, sent_map, would_change};
use shop::{Signer, Trouble};

/// So many changes are shown.
const MOST: usize = 60;

#[derive(Debug, Deserialize)]
pub struct Which {
    version: Option<u32>,
}

/// What goes along, before it goes.
pub async fn send(
    extract::State(state): extract::State<State>,
    headers: HeaderMap,
    Path(id): Path<String>,
    Query(which): Query<Which>,
) -> Response {
    let keeper = state.keeper.clone();
    show(state, headers, move |visit| {
        let id = MapId::new(id);
        let sent = sent_map(visit.snap, &id, which.version)?;
        let named = people_named(visit.snap, &sent.text);
        let signer = keeper.signer()?;
        let mut page = Shown::new("Send a map", what_goes(&sent, &named, &signer));
        page.leads_to("The map", &format!("/maps/{id}"));
        Ok(page.of_part(Part::Maps))
    })
    .await
}

fn what_goes(sent: &SentMap, named: &[String], signer: &Signer) -> Markup {
    html! {
        h1 { "Send it to another shop" }
        p class="gap" { "One file, signed by your shop. Whoever reads it in sees what it would change before it does." }
        div class="narrow" {
            div class="row" { span class="what" { "Vehicle" } span class="value" { (sent.vehicle) } }
            div class="row" { span class="what" { "Version" } span class="value" { (sent.version) ", kept " (day(&sent.kept)) } }
            div class="row" { span class="what" { "From" } span class="value" { (sent.from) } }
            div class="row" { span class="what" { "Jobs of this kind done here" } span class="number" { (sent.orders) } }
            div class="row" { span class="what" { "Signed with" } span class="number" { (signer.mark()) } }
        }
        @if named.is_empty() { p class="soft gap" { "No customer, plate or order goes along, and none of your people is named in the text." } }
        @else { p class="wait gap" { "The text names " (named.join(", ")) ". Take that out first if it means somebody here." } }
        div class="presses" {
            a class="press confirm" href=(format!("/maps/{}/sent-file?version={}", sent.map, sent.version)) download { "Save the file" }
        }
        p class="soft" { "Tell the other shop the four groups of figures and letters it is signed with, over the telephone for example: then they know that it is yours." }
    }
}

/// A day of the file as it is said on a page; as it stands where it is none.
fn day(text: &str) -> String {
    let day = text.parse::<jiff::civil::Date>();
    day.map_or_else(
        |_| text.to_owned(),
        |day| day.strftime("%a %-d %b %Y").to_string(),
    )
}

/// The file itself.
pub async fn file(
    extract::State(state): extract::State<State>,
    headers: HeaderMap,
    Path(id): Path<String>,
    Query(which): Query<Which>,
) -> Response {
    let (service, keeper) = (state.service.clone(), state.keeper.clone());
    let caller = caller_of(&state, &headers);
    let made = blocking(move || {
        let sent = service.look(&caller, |snap| {
            sent_map(snap, &MapId::new(id), which.version)
        })?;
        let text = keeper.signer()?.file(&sent);
        Ok::<_, Trouble>((format!("{}.map.json", sent.map), text))
    });
    match made.await {
        Ok((name, text)) => attached(&name, "application/json", text),
        Err(trouble) => show(state, headers, move |_| Err(trouble)).await,
    }
}

/// Asks for a file that came.
pub async fn read_in(extract::State(state): extract::State<State>, headers: HeaderMap) -> Response {
    show(state, headers, |_| Ok(shown(html! { (form("")) }))).await
}

fn shown(content: Markup) -> Shown {
    let mut page = Shown::new(
        "Read in a map",
        html! {
            h1 { "Read in a map from another shop" }
            (content)
        },
    );
    page.leads_to("Maps", "/maps");
    page.of_part(Part::Maps)
}

fn form(file: &str) -> Markup {
    html! {
        p class="gap" { "Nothing is kept before you have seen what it would change." }
        form method="post" action="/maps/read-in" class="narrow" {
            label class="field" {
                span { "The file as it came" }
                input type="file" accept=".json,application/json" data-into="file";
            }
            label class="field" {
                span { "Or its text" }
                textarea name="file" rows="6" autocomplete="off" spellcheck="false" required { (file) }
            }
            div class="presses" { button class="press confirm" type="submit" { "Show what it would change" } }
        }
    }
}

/// A file that came.
#[derive(Debug, Deserialize)]
pub struct Came {
    file: String,
}

pub async fn looked_at(
    extract::State(state): extract::State<State>,
    headers: HeaderMap,
    Form(came): Form<Came>,
) -> Response {
    show(state, headers, move |visit| {
        Ok(shown(match received_map(&came.file) {
            Ok(received) => what_comes(visit, &received)?,
            Err(trouble) => html! {
                p class="no gap" { (shop::say::capital(&trouble.place)) ": " (trouble.what) }
                p class="gap" { (shop::say::capital(&trouble.mend)) }
                (form(&came.file))
            },
        }))
    })
    .await
}

fn what_comes(visit: &Visit<'_>, received: &ReceivedMap) -> Result<Markup, Trouble> {
    let would = would_change(visit.snap, received)?;
    let sent = &received.sent;
    let stream = format!("map:{}", would.map);
    let keep = [
        json!({ "stream": stream, "map_fact": { "drafted": { "version": would.version,
            "text": { "$document": "text", "media": "application/toml" } } } }),
        json!({ "stream": stream, "map_fact": { "received": { "version": would.version,
            "from": words(&sent.from), "key": received.key } } }),
    ];
    Ok(html! {
        div class="columns" {
            div {
                div class="row" { span class="what" { "Vehicle" } span class="value" { (sent.vehicle) } }
                div class="row" { span class="what" { "From" } span class="value" { (sent.from) } }
                div class="row" { span class="what" { "Their version" } span class="value" { (sent.version) ", kept " (day(&sent.kept)) } }
                div class="row" { span class="what" { "Jobs of this kind done there" } span class="number" { (sent.orders) } }
                div class="row" { span class="what" { "Things in it" } span class="number" { (would.items) } }
                div class="row" {
                    span class="what" { "Signed with" span class="line soft" {
                        @if would.before.is_empty() { "Not seen here before. Ask them what it is signed with; the same means that it is theirs." }
                        @else { "As " (would.before.join(", ")) " was." }
                    } }
                    span class="number" { (received.key) }
                }
                @if would.same { p class="yes gap" { "It is what you have already." } }
                @else {
                    form {
                        textarea name="text" hidden { (sent.text) }
                        div class="presses low" {
                            (button(Look::Confirm, "Keep it", &format!("as version {}", would.version), &keep, Some(&format!("/maps/{}", would.map))))
                            a class="press" href="/maps/read-in" { "Another file" }
                        }
                    }
                    p class="soft" { "Sizes and torques are as that shop told them. The vehicle maker's figures come first." }
                }
                @for fault in &would.faults { p class="wait" { (fault) } }
            }
            div {
                @match &would.changes {
                    None => { h2 { "You have no map of it yet" } p class="gap" { "The whole map is new." } }
                    Some(changes) => {
                        h2 class="spread" { span { "What it would change" } span class="soft" { (count(changes.len(), "change", "changes")) } }
                        @for change in changes.iter().take(MOST) { div class="row" { span class="what" { (change) } } }
                        @if changes.len() > MOST { p class="soft" { (changes.len() - MOST) " more" } }
                        @if !changes.is_empty() { p class="soft gap" { "Your own version stays; a plan goes by the newest one." } }
                    }
                }
            }
        }
    })
}
