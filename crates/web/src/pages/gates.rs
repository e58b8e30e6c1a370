//! May it …? The six gates; what is owed, checked and proved.

use super::order::gate_code;
use super::pieces::disturbed_seen;
use super::{Shown, order_of, show};
use crate::State;
use crate::tap::{
    Look, button, chips, field, input, link, new, order_fact, order_request, required, text,
};
use axum::extract::{self, Path};
use axum::http::HeaderMap;
use axum::response::Response;
use maud::{Markup, html};
use serde_json::{Value, json};
use shop::Trouble;
use shop::record::v1::codes::WorkIsForm;
use shop::view::{DebtView, GateView, OrderView};

pub async fn may(
    extract::State(state): extract::State<State>,
    headers: HeaderMap,
    Path(number): Path<String>,
) -> Response {
    show(state, headers, move |ask| {
        let order = order_of(ask, &number)?;
        Ok(Shown::of(&order, "May it …?", html! {
            h1 class="fact" { "May it …?" }
            @for gate in &order.gates { (gate_row(&order, gate)) }
            div class="presses low" { (link(Look::Confirm, "Close the next one", "", &format!("/o/{}/back", order.number))) }
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

fn gate_row(order: &OrderView, gate: &GateView) -> Markup {
    let against = against(gate);
    html! {
        a class="row" href=(format!("/o/{}/may/{}", order.number, gate_code(gate))) {
            span class="what" {
                span class="spread" {
                    span class="large" { (gate.name) }
                    @if gate.may { span class="large yes" { "yes" } } @else { span class="large no" { "no · " (against.len()) } }
                }
                @if let Some(first) = against.first() { span class="line" { (first) } }
                @if let Some(second) = against.get(1) {
                    span class="soft line short" { "then: " (second) @if let Some(third) = against.get(2) { " · " (third) } }
                }
            }
        }
    }
}

pub async fn gate(
    extract::State(state): extract::State<State>,
    headers: HeaderMap,
    Path((number, code)): Path<(String, String)>,
) -> Response {
    show(state, headers, move |ask| {
        let order = order_of(ask, &number)?;
        let gate = order
            .gates
            .iter()
            .find(|gate| gate_code(gate) == code)
            .ok_or_else(|| Trouble::not_found("there is no such gate"))?;
        Ok(Shown::of(&order, &gate.name, html! {
            h1 class="spread" { span { (gate.name) } @if gate.may { span class="fact yes" { "yes" } } @else { span class="fact no" { "no" } } }
            div class="columns" {
                div {
                    h2 { "Fit to go" }
                    @if gate.fit_to_go.is_empty() { p class="gap yes" { "Nothing stands against it." } }
                    @for reason in &gate.fit_to_go {
                        (reason_row(&closes(&order, &reason.kind, reason.item.as_deref()), &reason.text, reason.waived.as_deref(), reason.blocks))
                    }
                }
                @if code == "hand-over" {
                    div {
                        h2 { "Papers" }
                        @if gate.papers.is_empty() { p class="gap yes" { "All done." } }
                        @for reason in &gate.papers {
                            (reason_row(&closes(&order, &reason.kind, None), &reason.text, reason.waived.as_deref(), reason.blocks))
                        }
                    }
                }
            }
            (waive(&order, gate, &code))
            div class="presses low" {
                @if code == "hand-over" { (link(Look::Confirm, "Hand over", "", &format!("/o/{}/hand-over", order.number))) }
                @else { (link(Look::Confirm, "All six", "", &format!("/o/{}/may", order.number))) }
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

fn reason_row(closes: &str, words: &str, waived: Option<&str>, blocks: bool) -> Markup {
    html! {
        a class="row" href=(closes) {
            span class="what" {
                span class="line" { (words) }
                @if let Some(waived) = waived { span class="soft line" { (waived) } }
                @if !blocks { span class="soft line" { "does not hold the vehicle" } }
            }
            @if waived.is_none() { span class="strong" { "close" } }
        }
    }
}

/// A reason may pass, where it may be waived at all: by a named person, in writing.
fn waive(order: &OrderView, gate: &GateView, code: &str) -> Markup {
    let fit = gate
        .fit_to_go
        .iter()
        .filter(|reason| reason.waivable && reason.blocks && reason.waived.is_none())
        .map(|reason| (&reason.key, &reason.text));
    let papers = gate
        .papers
        .iter()
        .filter(|reason| reason.waivable && reason.blocks && reason.waived.is_none())
        .map(|reason| (&reason.key, &reason.text));
    let may_pass: Vec<_> = fit.chain(papers).collect();
    let waive = order_request(
        &order.order,
        json!({ "waive": { "gate": code, "reason": field("reason"), "words": text("words") } }),
    );
    html! {
        @if !may_pass.is_empty() {
            details id="waive" {
                summary class="row" { span class="strong" { "Let one pass, with a reason" } }
                form class="narrow" {
                    @for (nth, (key, text)) in may_pass.iter().enumerate() {
                        label class="row" {
                            input type="radio" name="reason" value=(key) checked[nth == 0];
                            span class="what" { (text) }
                        }
                    }
                    (required("words", "Why it may pass", "your name stands beside it", ""))
                    div class="presses" { (button(Look::Plain, "Waive it", "", &[waive], None)) }
                }
            }
        }
    }
}

pub async fn due(
    extract::State(state): extract::State<State>,
    headers: HeaderMap,
    Path(number): Path<String>,
) -> Response {
    show(state, headers, move |ask| {
        let order = order_of(ask, &number)?;
        Ok(Shown::of(
            &order,
            "Owed, checks, proof",
            html! {
                h1 { "Owed, checks, proof" }
                div class="columns" {
                    div { (owed(&order)) }
                    div { (checks(&order)) (proofs(&order)) }
                }
            },
        ))
    })
    .await
}

fn owed(order: &OrderView) -> Markup {
    html! {
        h2 { "Owed" }
        @if order.debts.is_empty() { p class="gap yes" { "Nothing is owed." } }
        form {
            @for debt in &order.debts {
                div class="presses" { (button(Look::Plain, &debt.text, "done", &[done(order, debt)], None)) }
            }
        }
        details id="more" {
            summary class="row" { span class="strong" { "Something else is owed" } }
            form {
                (required("words", "What", "", ""))
                (chips("before", "Before", &[("start", "start"), ("lower", "lower"), ("roll", "roll"), ("road", "road"), ("hand-over", "hand over")], "hand-over"))
                div class="presses" {
                    (button(Look::Plain, "It is owed", "", &[order_fact(&order.order, json!({ "work-due": { "id": new("work"), "item": null, "words": text("words"), "until": { "before": field("before") } } }))], None))
                }
            }
        }
    }
}

/// The doing of a debt, as a command: a level is seen, other work is done.
fn done(order: &OrderView, debt: &DebtView) -> Value {
    let level = match debt.work {
        WorkIsForm::LevelWarm => Some("warm"),
        WorkIsForm::LevelCold => Some("cold"),
        _ => None,
    };
    let fact = match (level, &debt.item) {
        (Some(level), Some(item)) => json!({ "level-seen": {
            "item": item, "level": level, "good": true, "reading": null,
            "temperature": null, "after": debt.seen } }),
        _ => json!({ "work-done": {
            "work": { "work": debt.work, "item": debt.item, "own": debt.own },
            "after": debt.seen,
            "words": null,
        } }),
    };
    order_fact(&order.order, fact)
}

fn checks(order: &OrderView) -> Markup {
    let missing: Vec<_> = order
        .gates
        .last()
        .map(|gate| {
            gate.fit_to_go
                .iter()
                .filter(|reason| reason.kind == "not-checked")
                .collect()
        })
        .unwrap_or_default();
    let items: Vec<_> = missing
        .iter()
        .filter_map(|reason| reason.item.clone())
        .collect();
    let seen: Vec<_> = order
        .items
        .iter()
        .filter(|item| items.contains(&item.item))
        .flat_map(|item| item.seen.clone())
        .collect();
    let check = |code: &str| {
        order_fact(
            &order.order,
            json!({ "checked": { "check": code, "items": items, "after": seen } }),
        )
    };
    html! {
        @if !missing.is_empty() {
            h2 { "Second check" }
            p class="gap" { "Brakes, steering, wheels and their like want a second pair of eyes." }
            @for reason in &missing { div class="row" { span class="mark half" {} span class="what" { (reason.text) } } }
            form { div class="presses even" {
                (button(Look::Plain, "I checked them", "another person than who did it", &[check("second-person")], None))
                (link(Look::Plain, "Alone: walk back", "the list the other way round", &format!("/o/{}/second", order.number)))
            } }
        }
    }
}

fn proofs(order: &OrderView) -> Markup {
    let seen = disturbed_seen(order);
    let choices: Vec<(&str, String)> = PROOFS
        .iter()
        .map(|(code, proof)| {
            let needed = order.proofs_needed.iter().any(|needed| needed == code);
            (
                *code,
                if needed {
                    format!("{proof} (needed)")
                } else {
                    (*proof).to_owned()
                },
            )
        })
        .collect();
    let choices: Vec<(&str, &str)> = choices
        .iter()
        .map(|(code, word)| (*code, word.as_str()))
        .collect();
    let standing: Vec<_> = order
        .gates
        .last()
        .map(|gate| {
            gate.fit_to_go
                .iter()
                .filter(|reason| reason.kind.starts_with("proof"))
                .collect()
        })
        .unwrap_or_default();
    let prove = |outcome: &str| {
        order_fact(
            &order.order,
            json!({ "proved": {
        "id": new("proof"), "line": null, "proof": field("proof"), "outcome": outcome,
        "words": text("words"), "readings": [], "calculation": null, "after": seen, "replaces": { "$map": "proof", "to": order.proofs_told, "else": [] } } }),
        )
    };
    let first = order
        .proofs_needed
        .first()
        .map_or("road-test", String::as_str);
    html! {
        h2 { "Proof" }
        @for reason in &standing { div class="row" { span class="mark" {} span class="what" { (reason.text) } } }
        form {
            (chips("proof", "What was tried", &choices, first))
            (input("words", "In a few words", "readings, how far, how long", ""))
            div class="presses" { (button(Look::Confirm, "It held", "", &[prove("held")], None)) }
            div class="presses even" {
                (button(Look::Plain, "It failed", "", &[prove("failed")], None))
                (button(Look::Plain, "Not provoked", "the complaint did not come back on", &[prove("not-provoked")], None))
            }
        }
    }
}

const PROOFS: &[(&str, &str)] = &[
    ("road-test", "road test"),
    ("leak-test", "leak test"),
    ("brake-test", "brake test"),
    ("fuel-leak-look", "fuel leak look"),
    ("restraint-lamp", "restraint lamp"),
    ("coolant-mix", "coolant mix"),
    ("other", "other"),
];

#[cfg(test)]
mod tests {
    use super::PROOFS;
    use shop::record::v1::codes::ProofIsForm;

    #[test]
    fn every_proof_on_the_page_is_one_the_record_knows() {
        for (code, _) in PROOFS {
            assert!(ProofIsForm::from_word(code).is_some(), "{code}");
        }
    }
}
