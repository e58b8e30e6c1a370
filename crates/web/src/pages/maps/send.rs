//! Maps from shop to shop: what goes along with one that is sent, and what one that came would
//! change.

use super::edit::attached;
use crate::State;
use crate::allowed::caller_of;
use crate::door::blocking;
use crate::layout::Part;
use crate::pages::{Shown, Visit, show};
use crate::phrases::dates::dated;
use crate::phrases::maps as say;
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
        let mut page = Shown::new(say::send_a_map(), what_goes(&sent, &named, &signer));
        page.leads_to(say::the_map(), &format!("/maps/{id}"));
        Ok(page.of_part(Part::Maps))
    })
    .await
}

fn what_goes(sent: &SentMap, named: &[String], signer: &Signer) -> Markup {
    html! {
        h1 { (say::send_to_another_shop()) }
        p class="gap" { (say::one_file_signed()) }
        div class="narrow" {
            div class="row" { span class="what" { (say::vehicle()) } span class="value" { (sent.vehicle) } }
            div class="row" { span class="what" { (say::version_row()) } span class="value" { (say::version_kept(sent.version, day(&sent.kept))) } }
            div class="row" { span class="what" { (say::from_shop()) } span class="value" { (sent.from) } }
            div class="row" { span class="what" { (say::jobs_done_here()) } span class="number" { (sent.orders) } }
            div class="row" { span class="what" { (say::signed_with()) } span class="number" { (signer.mark()) } }
        }
        @if named.is_empty() { p class="soft gap" { (say::nobody_is_named()) } }
        @else { p class="wait gap" { (say::text_names(named.join(", "))) } }
        div class="presses" {
            a class="press confirm" href=(format!("/maps/{}/sent-file?version={}", sent.map, sent.version)) download { (say::save_the_file()) }
        }
        p class="soft" { (say::tell_the_groups()) }
    }
}

/// A day of the file as it is said on a page; as it stands where it is none.
fn day(text: &str) -> String {
    let day = text.parse::<jiff::civil::Date>();
    day.map_or_else(|_| text.to_owned(), |day| dated("%a %-d %b %Y", day))
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
        say::read_in_a_map(),
        html! {
            h1 { (say::read_in_from_another_shop()) }
            (content)
        },
    );
    page.leads_to(say::maps(), "/maps");
    page.of_part(Part::Maps)
}

fn form(file: &str) -> Markup {
    html! {
        p class="gap" { (say::nothing_kept_before()) }
        form method="post" action="/maps/read-in" class="narrow" {
            label class="field" {
                span { (say::file_as_it_came()) }
                input type="file" accept=".json,application/json" data-into="file";
            }
            label class="field" {
                span { (say::or_its_text()) }
                textarea name="file" rows="6" autocomplete="off" spellcheck="false" required { (file) }
            }
            div class="presses" { button class="press confirm" type="submit" { (say::show_what_it_would_change()) } }
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
                p class="no gap" { (say::where_and_what(shop::say::capital(&trouble.place), &trouble.what)) }
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
                div class="row" { span class="what" { (say::vehicle()) } span class="value" { (sent.vehicle) } }
                div class="row" { span class="what" { (say::from_shop()) } span class="value" { (sent.from) } }
                div class="row" { span class="what" { (say::their_version()) } span class="value" { (say::version_kept(sent.version, day(&sent.kept))) } }
                div class="row" { span class="what" { (say::jobs_done_there()) } span class="number" { (sent.orders) } }
                div class="row" { span class="what" { (say::things_in_it()) } span class="number" { (would.items) } }
                div class="row" {
                    span class="what" { (say::signed_with()) span class="line soft" {
                        @if would.before.is_empty() { (say::not_seen_before()) }
                        @else { (say::as_was(would.before.join(", "))) }
                    } }
                    span class="number" { (received.key) }
                }
                @if would.same { p class="yes gap" { (say::what_you_have()) } }
                @else {
                    form {
                        textarea name="text" hidden { (sent.text) }
                        div class="presses low" {
                            (button(Look::Confirm, say::keep_it(), &say::as_version(would.version), &keep, Some(&format!("/maps/{}", would.map))))
                            a class="press" href="/maps/read-in" { (say::another_file()) }
                        }
                    }
                    p class="soft" { (say::as_that_shop_told()) }
                }
                @for fault in &would.faults { p class="wait" { (fault) } }
            }
            div {
                @match &would.changes {
                    None => { h2 { (say::no_map_of_it_yet()) } p class="gap" { (say::whole_map_is_new()) } }
                    Some(changes) => {
                        h2 class="spread" { span { (say::what_it_would_change()) } span class="soft" { (say::changes(changes.len())) } }
                        @for change in changes.iter().take(MOST) { div class="row" { span class="what" { (change) } } }
                        @if changes.len() > MOST { p class="soft" { (say::more(changes.len() - MOST)) } }
                        @if !changes.is_empty() { p class="soft gap" { (say::own_version_stays()) } }
                    }
                }
            }
        }
    })
}
