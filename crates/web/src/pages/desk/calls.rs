//! Calls and waits: whom to ring now and what to say, answered where it stands, and what is
//! waited for.

use crate::State;
use crate::layout::Part;
use crate::pages::{Shown, show};
use crate::tap::{Look, button, order_fact, words};
use axum::extract;
use axum::http::HeaderMap;
use axum::response::Response;
use maud::{Markup, html};
use serde_json::{Value, json};
use shop::view::{AskView, CallKind, CallView};

pub async fn calls(extract::State(state): extract::State<State>, headers: HeaderMap) -> Response {
    show(state, headers, |visit| {
        let all = shop::view::calls(visit.snap)?;
        let (ring, wait): (Vec<_>, Vec<_>) = all.iter().partition(|call| call.kind.rings());
        Ok(Shown::new(
            "Calls and waits",
            html! {
                h1 { "Calls and waits" }
                div class="columns" {
                    div {
                        h2 class="spread" { span { "Ring now" } span { (ring.len()) } }
                        @if ring.is_empty() { p class="gap" { "No calls to make." } }
                        @for call in ring { (to_ring(call)) }
                    }
                    div {
                        h2 class="spread" { span { "Waiting on" } span { (wait.len()) } }
                        @if wait.is_empty() { p class="gap" { "Nothing is on its way or away." } }
                        @for call in wait { (waited_for(call)) }
                    }
                }
            },
        )
        .of_part(Part::Calls))
    })
    .await
}

/// The page on which a call is seen to.
pub fn page(call: &CallView) -> String {
    match (call.kind, &call.vehicle_id) {
        (CallKind::Due, Some(vehicle)) => format!("/v/{vehicle}"),
        _ if call.page.is_empty() => format!("/o/{}", call.number),
        _ => format!("/o/{}/{}", call.number, call.page),
    }
}

fn waited_for(call: &CallView) -> Markup {
    let (class, word) = word(call.kind);
    html! {
        a class="row top" href=(page(call)) {
            span class="what" {
                span class=(class) { (word) }
                span class="strong line" { (call.what) }
                (whose(call))
                @if let Some(left) = &call.left { span class="soft line" { (left) " left under the limit" } }
            }
        }
    }
}

fn whose(call: &CallView) -> Markup {
    html! { span class="soft line" { (call.number) " · " (call.vehicle) " · " (call.customer) } }
}

/// Somebody to ring: the number, what to say, and each answer in one tap.
pub fn to_ring(call: &CallView) -> Markup {
    let (class, word) = word(call.kind);
    html! {
        div class="call" {
            p class="spread" {
                span class=(class) { (word) }
                @if !call.phone.is_empty() { a class="beside number press tel" href=(format!("tel:{}", dialled(&call.phone))) { (call.phone) } }
            }
            a class="row top" href=(page(call)) {
                span class="what" {
                    span class="strong line" { (call.what) }
                    (whose(call))
                    @if let Some(tried) = &call.tried { span class="wait line" { "No answer " (tried) } }
                }
            }
            form { div class="presses even" { (answers(call)) } }
        }
    }
}

/// A telephone number as a telephone takes it.
fn dialled(number: &str) -> String {
    let dials = |c: &char| c.is_ascii_digit() || *c == '+';
    number.chars().filter(dials).collect()
}

/// What they may answer, each with what is written down of it.
fn answers(call: &CallView) -> Markup {
    let Some(about) = call.kind.about() else {
        return html! {};
    };
    let rung = |reached: bool| {
        order_fact(
            &call.order,
            json!({ "rung": { "about": about, "reached": reached, "words": null } }),
        )
    };
    let to = |label: &str, to: &str| crate::tap::link(Look::Plain, label, "", to);
    html! {
        @match call.kind {
            CallKind::Ask => {
                @if let Some(ask) = &call.ask && let Some(sum) = &ask.sum {
                    (button(Look::Plain, &format!("Yes, up to {sum}"), if ask.with_tax { "with tax" } else { "before tax" }, &[answered(call, ask, true)], None))
                    (button(Look::Plain, "No", "", &[answered(call, ask, false)], None))
                } @else { (to("They answered", &page(call))) }
            }
            CallKind::Promise => {
                (to("Another time", &format!("/o/{}/promise", call.number)))
                (button(Look::Plain, "Told them", "", &[rung(true)], None))
            }
            CallKind::Due => {
                @if let Some(vehicle) = &call.vehicle_id { (to("It comes in", &format!("/new?of={vehicle}"))) }
                (button(Look::Plain, "Told them", "", &[rung(true)], None))
            }
            CallKind::FollowUp => {
                @if let Some(vehicle) = &call.vehicle_id { (to("It came back", &format!("/new?of={vehicle}"))) }
                (button(Look::Plain, "It is fine", "", &[rung(true)], None))
            }
            _ => { (button(Look::Plain, "Told them", "", &[rung(true)], None)) }
        }
        (button(Look::Plain, "No answer", "", &[rung(false)], None))
    }
}

/// A yes or no on the telephone, with all that is noted of one: who, at which number, what for.
fn answered(call: &CallView, ask: &AskView, agreed: bool) -> Value {
    let added: Vec<String> = ask
        .added
        .iter()
        .map(|entry| format!("{} {}", entry.label, entry.amount))
        .collect();
    let said = match added.is_empty() {
        true => Value::Null,
        false => words(&format!("Parts and labour: {}", added.join(", "))),
    };
    let number = match ask.phone.is_empty() {
        true => Value::Null,
        false => words(&ask.phone),
    };
    // A sum as it is read has marks between its thousands.
    let amount = ask.sum.as_ref().filter(|_| agreed);
    let amount = amount.map(|sum| sum.replace(',', ""));
    order_fact(
        &call.order,
        json!({ "consented": {
            "step": ask.step, "payer": ask.payer, "lines": [], "agreed": agreed,
            "amount": amount, "tax_included": ask.with_tax, "way": "phone", "person": words(&ask.who),
            "said": said, "number_called": number, "signature": null, "after": ask.after } }),
    )
}

fn word(kind: CallKind) -> (&'static str, &'static str) {
    match kind {
        CallKind::Left => ("no upper", "left, look"),
        CallKind::Ask => ("wait upper", "ask"),
        CallKind::Promise => ("no upper", "promise"),
        CallKind::Ready => ("yes upper", "ready"),
        CallKind::Due => ("wait upper", "due"),
        CallKind::FollowUp => ("wait upper", "ask after it"),
        CallKind::SaidNo => ("no upper", "said no"),
        CallKind::Late => ("no upper", "late"),
        CallKind::Waits => ("wait upper", "waits"),
        CallKind::Core => ("strong upper", "core"),
    }
}
