//! Cleared to …? The six gates, each with its reasons and what closes them.

use crate::State;
use crate::pages::desk::order::gate_code;
use crate::pages::{Shown, Visit, order_of, show};
use crate::phrases::vehicle as say;
use crate::tap::{Look, button, field, link, order_fact, order_request, required, text};
use axum::extract::{self, Path};
use axum::http::HeaderMap;
use axum::response::Response;
use maud::{Markup, html};
use serde_json::{Map, Value, json};
use shop::Trouble;
use shop::repair::Role;
use shop::view::{GateView, OrderView};

pub async fn may(
    extract::State(state): extract::State<State>,
    headers: HeaderMap,
    Path(number): Path<String>,
) -> Response {
    show(state, headers, move |visit| {
        let order = order_of(visit, &number)?;
        Ok(Shown::of(&order, say::cleared_to(), html! {
            h1 class="fact" { (say::cleared_to()) }
            (gates(&order))
            div class="presses low" { (link(Look::Confirm, say::fix_the_next_one(), "", &format!("/o/{}/back", order.number))) }
        }))
    })
    .await
}

/// The reasons that shut a gate.
pub fn against(gate: &GateView) -> Vec<&str> {
    let fit = gate
        .fit_to_go
        .iter()
        .filter(|reason| reason.blocks && reason.waived.is_none())
        .map(|reason| reason.text.as_str());
    let papers = gate
        .papers
        .iter()
        .filter(|reason| reason.blocks && reason.waived.is_none())
        .map(|reason| reason.text.as_str());
    fit.chain(papers).collect()
}

/// The six gates: those that are open in one line, the next one with what holds it, the others in
/// a line each.
pub fn gates(order: &OrderView) -> Markup {
    let open: Vec<&str> = order
        .gates
        .iter()
        .filter(|gate| gate.may)
        .map(|gate| gate.name.as_str())
        .collect();
    let mut shut = order.gates.iter().filter(|gate| !gate.may);
    let next = shut.next();
    html! {
        @if !open.is_empty() {
            a class="row" href=(format!("/o/{}/may", order.number)) {
                span class="gate open" {}
                span class="what strong" { (open.join(", ")) }
                span class="yes" { (say::yes()) }
            }
        }
        @if let Some(next) = next { (next_gate(order, next)) }
        @for gate in shut {
            @let against = against(gate).len();
            a class="row" href=(format!("/o/{}/may/{}", order.number, gate_code(gate))) {
                span class="gate" {}
                span class="what strong" { (gate.name) }
                span class="soft" { (say::not_yet_things(against)) }
            }
        }
    }
}

/// How much of what holds the next gate is shown at once.
const SHOWN: usize = 4;

fn next_gate(order: &OrderView, gate: &GateView) -> Markup {
    let against = against(gate);
    html! {
        a class="row next" href=(format!("/o/{}/may/{}", order.number, gate_code(gate))) {
            span class="gate first" {}
            span class="what" {
                span class="spread" { span class="large" { (gate.name) } span class="beside" { (say::not_yet()) } }
                @for reason in against.iter().take(SHOWN) { span class="line" { (reason) } }
                @if against.len() > SHOWN { span class="soft line" { (say::and_more(against.len() - SHOWN)) } }
            }
        }
    }
}

pub async fn gate(
    extract::State(state): extract::State<State>,
    headers: HeaderMap,
    Path((number, code)): Path<(String, String)>,
) -> Response {
    show(state, headers, move |visit| {
        let order = order_of(visit, &number)?;
        let gate = order
            .gates
            .iter()
            .find(|gate| gate_code(gate) == code)
            .ok_or_else(|| Trouble::not_found(say::no_such_gate()))?;
        Ok(Shown::of(&order, &gate.name, html! {
            h1 class="spread" { span { (gate.name) } @if gate.may { span class="fact yes" { (say::yes()) } } @else { span class="fact no" { (say::no()) } } }
            div class="columns" {
                div {
                    h2 { (say::fit_to_go()) }
                    @if gate.fit_to_go.is_empty() { p class="gap yes" { (say::nothing_against_it()) } }
                    @for reason in &gate.fit_to_go {
                        (reason_row(&closes(&order, &reason.kind, reason.item.as_deref()), &reason.text, reason.waived.as_deref(), reason.blocks))
                    }
                }
                @if code == "hand-over" {
                    div {
                        h2 { (say::papers()) }
                        @if gate.papers.is_empty() { p class="gap yes" { (say::papers_all_done()) } }
                        @for reason in &gate.papers {
                            (reason_row(&closes(&order, &reason.kind, None), &reason.text, reason.waived.as_deref(), reason.blocks))
                        }
                    }
                }
            }
            @if gate.may && code == "roll" {
                a class="row" href=(format!("/o/{}#place", order.number)) { span class="what strong" { (say::where_it_stands_now()) } }
            }
            (push(visit, &order, gate))
            (waive(&order, gate, &code))
            div class="presses low" {
                @if code == "hand-over" { (link(Look::Confirm, say::hand_over(), "", &format!("/o/{}/hand-over", order.number))) }
                @else { (link(Look::Confirm, say::all_six(), "", &format!("/o/{}/may", order.number))) }
            }
        }))
    })
    .await
}

/// Where a reason is closed.
fn closes(order: &OrderView, kind: &str, item: Option<&str>) -> String {
    let page = match kind {
        "owed" | "not-checked" | "proof-missing" | "proof-failed" => "due".to_owned(),
        "snag" => "snag".to_owned(),
        "part" | "old-part" | "sublet" => "parts".to_owned(),
        "no-consent" | "over-ceiling" => "ask".to_owned(),
        "not-priced" => "price".to_owned(),
        "not-charged" | "unpaid" | "keys-here" => "pay".to_owned(),
        // Cause and correction are told on the order's own page.
        "line" => return format!("/o/{}", order.number),
        _ => item.map_or_else(|| "open".to_owned(), |item| format!("item/{item}")),
    };
    format!("/o/{}/{page}", order.number)
}

/// What else holds the vehicle here, beside what the page of what is owed, checked and proved
/// lists itself, each with where it is closed.
pub fn also_against(order: &OrderView) -> Markup {
    let due = format!("/o/{}/due", order.number);
    let reasons = order.gates.last().into_iter();
    let rows: Vec<(String, &str)> = reasons
        .flat_map(|gate| &gate.fit_to_go)
        .filter(|reason| reason.blocks && reason.waived.is_none())
        .map(|reason| {
            let page = closes(order, &reason.kind, reason.item.as_deref());
            (page, reason.text.as_str())
        })
        .filter(|(page, _)| *page != due)
        .collect();
    html! {
        @if !rows.is_empty() {
            h2 { (say::also_in_the_way()) }
            @for (page, words) in &rows { (reason_row(page, words, None, true)) }
        }
    }
}

fn reason_row(closes: &str, words: &str, waived: Option<&str>, blocks: bool) -> Markup {
    html! {
        a class="row" href=(closes) {
            span class="what" {
                span class="line" { (words) }
                @if let Some(waived) = waived { span class="soft line" { (waived) } }
                @if !blocks { span class="soft line" { (say::does_not_hold_the_vehicle()) } }
            }
            @if waived.is_none() { span class="strong" { (say::fix()) } }
        }
    }
}

/// Pushing it by hand: where it may, the owner or the foreman writes so, and *roll* stays shut.
fn push(visit: &Visit<'_>, order: &OrderView, gate: &GateView) -> Markup {
    let Some(against) = &gate.against_pushing else {
        return html! {};
    };
    let caller = visit.snap.caller();
    let leads = caller.has_any(&[Role::Owner, Role::Foreman]);
    let stalls: Vec<(String, String)> = visit
        .snap
        .world()
        .shop
        .stalls()
        .into_iter()
        .map(|(id, name, _)| (id.as_str().to_owned(), visit.snap.texts().text(name)))
        .collect();
    let pushed = |to: Value| {
        order_fact(
            &order.order,
            json!({ "pushed": { "to": to, "words": text("words") } }),
        )
    };
    html! {
        h2 { (say::push_by_hand()) }
        @if against.is_empty() {
            p class="caution" { (say::pushing_caution()) }
            @if leads {
                form class="narrow" {
                    (required("words", say::why_and_who_stands_where(), say::as_owner_or_foreman(), ""))
                    div class="presses even" {
                        @for (id, name) in &stalls { (button(Look::Plain, name, say::pushed_there(), &[pushed(json!({ "stall": id }))], None)) }
                        (button(Look::Plain, say::yard(), say::pushed_there(), &[pushed(json!("yard"))], None))
                    }
                }
            } @else { p class="gap" { (say::owner_writes_so()) } }
        } @else {
            p class="gap no" { (say::not_even_that(against.len())) }
            @for reason in against { p { (reason) } }
        }
    }
}

/// A reason may pass, where it may be waived at all: by a named person, in writing.
fn waive(order: &OrderView, gate: &GateView, code: &str) -> Markup {
    let fit = gate
        .fit_to_go
        .iter()
        .filter(|reason| reason.waivable && reason.blocks && reason.waived.is_none())
        .map(|reason| (&reason.key, &reason.text, &reason.figure));
    let papers = gate
        .papers
        .iter()
        .filter(|reason| reason.waivable && reason.blocks && reason.waived.is_none())
        .map(|reason| (&reason.key, &reason.text, &reason.figure));
    let may_pass: Vec<_> = fit.chain(papers).collect();
    // A waiver is of as much as was seen.
    let figures: Map<String, Value> = may_pass
        .iter()
        .map(|(key, _, figure)| ((*key).clone(), json!(figure)))
        .collect();
    let waive = order_request(
        &order.order,
        json!({ "waive": { "gate": code, "reason": field("reason"), "words": text("words"),
            "figure": { "$map": "reason", "to": figures, "else": "" } } }),
    );
    html! {
        @if !may_pass.is_empty() {
            details id="waive" {
                summary class="row" { span class="strong" { (say::waive_one()) } }
                form class="narrow" {
                    @for (nth, (key, text, _)) in may_pass.iter().enumerate() {
                        label class="row" {
                            input type="radio" name="reason" value=(key) checked[nth == 0];
                            span class="what" { (text) }
                        }
                    }
                    (required("words", say::why_it_may_pass(), say::your_name_beside_it(), ""))
                    div class="presses" { (button(Look::Plain, say::waive_it(), "", &[waive], None)) }
                }
            }
        }
    }
}
