//! Calls and waits: whom to ring now and what to say, answered where it stands, and what is
//! waited for.

use crate::State;
use crate::layout::Part;
use crate::pages::{Shown, show};
use crate::phrases::desk as say;
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
            say::calls_and_waits(),
            html! {
                h1 { (say::calls_and_waits()) }
                div class="columns" {
                    div {
                        h2 class="spread" { span { (say::ring_now()) } span { (ring.len()) } }
                        @if ring.is_empty() { p class="gap" { (say::no_calls()) } }
                        @for call in ring { (to_ring(call)) }
                    }
                    div {
                        h2 class="spread" { span { (say::waiting_on()) } span { (wait.len()) } }
                        @if wait.is_empty() { p class="gap" { (say::nothing_on_its_way()) } }
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
        _ if call.page.is_empty() || call.page.starts_with('#') => {
            format!("/o/{}{}", call.number, call.page)
        }
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
                @if let Some(left) = &call.left { span class="soft line" { (say::left_under_limit(left)) } }
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
                    @if let Some(tried) = &call.tried { span class="wait line" { (say::no_answer_at(tried)) } }
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
    let to = |label: &str, to: &str| crate::tap::link(Look::Plain, label, "", to);
    if call.kind == CallKind::NotCome {
        return to(say::it_came_or_comes(), &page(call));
    }
    let Some(about) = call.kind.about() else {
        return html! {};
    };
    let rung = |reached: bool| {
        order_fact(
            &call.order,
            json!({ "rung": { "about": about, "reached": reached, "words": null } }),
        )
    };
    html! {
        @match call.kind {
            CallKind::Ask => {
                @if let Some(ask) = &call.ask && let Some(sum) = &ask.sum {
                    (button(Look::Plain, &say::yes_up_to(sum), if ask.with_tax { say::with_tax() } else { say::before_tax() }, &[answered(call, ask, true)], None))
                    (button(Look::Plain, say::no(), "", &[answered(call, ask, false)], None))
                } @else { (to(say::they_answered(), &page(call))) }
            }
            CallKind::Promise => {
                (to(say::another_time(), &format!("/o/{}/promise", call.number)))
                (button(Look::Plain, say::told_them(), "", &[rung(true)], None))
            }
            CallKind::Due => {
                @if let Some(vehicle) = &call.vehicle_id { (to(say::it_comes_in(), &format!("/new?of={vehicle}"))) }
                (button(Look::Plain, say::told_them(), "", &[rung(true)], None))
            }
            CallKind::FollowUp => {
                @if let Some(vehicle) = &call.vehicle_id { (to(say::it_came_back(), &format!("/new?of={vehicle}"))) }
                (button(Look::Plain, say::it_is_fine(), "", &[rung(true)], None))
            }
            _ => { (button(Look::Plain, say::told_them(), "", &[rung(true)], None)) }
        }
        (button(Look::Plain, say::no_answer(), "", &[rung(false)], None))
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
        false => words(&say::parts_and_labour_are(added.join(", "))),
    };
    let number = match ask.phone.is_empty() {
        true => Value::Null,
        false => words(&ask.phone),
    };
    let amount = ask.sum.as_ref().filter(|_| agreed);
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
        CallKind::Left => ("no upper", say::word_left_look()),
        CallKind::Ask => ("wait upper", say::call_ask()),
        CallKind::Promise => ("no upper", say::call_promise()),
        CallKind::NotCome => ("wait upper", say::call_not_come()),
        CallKind::Ready => ("yes upper", say::word_ready()),
        CallKind::Due => ("wait upper", say::call_due()),
        CallKind::FollowUp => ("wait upper", say::call_follow_up()),
        CallKind::SaidNo => ("no upper", say::call_said_no()),
        CallKind::Late => ("no upper", say::late()),
        CallKind::Waits => ("wait upper", say::call_waits()),
        CallKind::Core => ("strong upper", say::call_core()),
    }
}
