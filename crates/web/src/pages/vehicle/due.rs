//! What is owed, checked and proved: one tap for a list as it stands, exceptions unticked;
//! one tap a proof.

use super::pieces::disturbed_seen;
use crate::State;
use crate::pages::bench::of_order::as_found;
use crate::pages::{Shown, Visit, order_of, show};
use crate::tap::{Look, button, chips, field, input, link, new, order_fact, required, text, when};
use axum::extract::{self, Path};
use axum::http::HeaderMap;
use axum::response::Response;
use maud::{Markup, html};
use serde_json::{Value, json};
use shop::Trouble;
use shop::record::v1::codes::WorkIsForm;
use shop::say::capital;
use shop::sums;
use shop::view::{DebtView, OrderView, ReasonView};

/// So many people have a button of their own; more are found on their page.
const MOST_NAMED: usize = 3;

pub async fn due(
    extract::State(state): extract::State<State>,
    headers: HeaderMap,
    Path(number): Path<String>,
) -> Response {
    show(state, headers, move |visit| {
        let order = order_of(visit, &number)?;
        let people = people(visit)?;
        let belts = belts(visit, &order)?;
        Ok(Shown::of(
            &order,
            "Owed, checks, proof",
            html! {
                h1 { "Owed, checks, proof" }
                div class="columns" {
                    div { (owed(&order)) (belts) (checks(&order, visit.who, &people)) }
                    div { (proofs(&order)) }
                }
                @if order.gates.last().is_some_and(|gate| gate.fit_to_go.iter().all(|reason| !reason.blocks || reason.waived.is_some())) {
                    div class="presses low" { (link(Look::Confirm, "Hand over", "it is fit to go", &format!("/o/{}/hand-over", order.number))) }
                }
            },
        ))
    })
    .await
}

/// The people of the shop: their names in the record and their given names.
fn people(visit: &Visit<'_>) -> Result<Vec<(String, String)>, Trouble> {
    let world = visit.snap.world();
    let people = world.shop.people().into_iter();
    Ok(people
        .map(|(id, (name, _))| {
            let name = visit.snap.texts().text(name);
            let given = name
                .split_whitespace()
                .next()
                .unwrap_or_default()
                .to_owned();
            (id.as_str().to_owned(), given)
        })
        .collect())
}

fn owed(order: &OrderView) -> Markup {
    html! {
        h2 { "Owed" }
        @if order.debts.is_empty() { p class="gap yes" { "Nothing is owed." } }
        @else { (listed(order)) }
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

/// How each belt lay, while it is owed to see it back as it was.
fn belts(visit: &Visit<'_>, order: &OrderView) -> Result<Markup, Trouble> {
    let owed = |debt: &DebtView| {
        debt.owed
            .sort
            .as_ref()
            .is_some_and(|sort| sort.0 == "belt-seated")
    };
    if !order.debts.iter().any(owed) {
        return Ok(html! {});
    }
    let found = sums::belts_as_found(visit.snap, order.number)?;
    Ok(html! { @for kept in &found { (as_found(kept)) } })
}

/// What stands before a gate is ticked. What is due after hand-over is not, nor the level
/// seen cold: that wants one full heating and cooling first.
fn listed(order: &OrderView) -> Markup {
    let commands: Vec<Value> = order
        .debts
        .iter()
        .enumerate()
        .map(|(nth, debt)| when(&format!("debt-{nth}"), done(order, debt)))
        .collect();
    let now = |debt: &DebtView| debt.before.is_some() && debt.work != WorkIsForm::LevelCold;
    html! {
        form {
            fieldset data-one-of="Tick what is done" {
                legend class="skip" { "What is done" }
                @for (nth, debt) in order.debts.iter().enumerate() {
                    label class="row" {
                        input type="checkbox" name=(format!("debt-{nth}")) value="yes" checked[now(debt)];
                        span class="what" { (capital(&debt.text)) }
                    }
                }
            }
            div class="presses" { (button(Look::Confirm, "Done as ticked", "untick what is not", &commands, None)) }
        }
    }
}

/// The doing of a debt, as a command: a level is seen, other work is done.
pub fn done(order: &OrderView, debt: &DebtView) -> Value {
    let level = match debt.work {
        WorkIsForm::LevelWarm => Some("warm"),
        WorkIsForm::LevelCold => Some("cold"),
        _ => None,
    };
    let fact = match (level, debt.items.first()) {
        (Some(level), Some(item)) => json!({ "level-seen": {
            "item": item, "level": level, "good": true, "reading": null,
            "temperature": null, "after": debt.seen } }),
        _ => json!({ "work-done": {
            "work": debt.owed,
            "after": debt.seen,
            "words": null,
        } }),
    };
    order_fact(&order.order, fact)
}

fn checks(order: &OrderView, who: &str, people: &[(String, String)]) -> Markup {
    let missing = standing(order, "not-checked");
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
    let check = |by: &str| {
        let mut command = order_fact(
            &order.order,
            json!({ "checked": { "check": "second-person", "items": items, "after": seen } }),
        );
        command["who"] = json!(by);
        command
    };
    let did = |person: &str| {
        missing
            .iter()
            .any(|reason| reason.by.as_deref() == Some(person))
    };
    let others: Vec<_> = people
        .iter()
        .filter(|(id, _)| id != who && !did(id))
        .collect();
    html! {
        @if !missing.is_empty() {
            h2 { "Second check" }
            p class="gap" { "Brakes, steering, wheels and their like want a second pair of eyes." }
            @for reason in &missing { div class="row" { span class="mark half" {} span class="what" { (reason.text) } } }
            form { div class="presses even" {
                @if !did(who) { (button(Look::Plain, "I checked them", "all of them", &[check(who)], None)) }
                @else {
                    @for (id, name) in others.iter().take(MOST_NAMED) {
                        (button(Look::Plain, &format!("{name} checked them"), &format!("{name} presses this"), &[check(id)], None))
                    }
                    @if others.len() > MOST_NAMED { (link(Look::Plain, "Somebody else", "change the person", "/who")) }
                }
                (link(Look::Plain, "Working alone: re-check in reverse", "the list the other way round", &format!("/o/{}/second", order.number)))
            } }
        }
    }
}

/// The reasons of a kind that stand against handing over.
fn standing<'a>(order: &'a OrderView, kind: &str) -> Vec<&'a ReasonView> {
    let gate = order.gates.last().into_iter();
    gate.flat_map(|gate| &gate.fit_to_go)
        .filter(|reason| reason.kind == kind)
        .collect()
}

/// One tap for each proof that is needed; others folded away.
fn proofs(order: &OrderView) -> Markup {
    let needed: Vec<_> = PROOFS
        .iter()
        .filter(|(code, _)| order.proofs_needed.iter().any(|needed| needed == code))
        .collect();
    let failed = standing(order, "proof-failed");
    html! {
        h2 { "Proof" }
        @for reason in &failed { div class="row" { span class="mark" {} span class="what no" { (reason.text) } } }
        @if needed.is_empty() && failed.is_empty() { p class="gap yes" { "What is needed is proved." } }
        @for (nth, (code, name)) in needed.iter().enumerate() {
            form { fieldset {
                legend class="large" { (capital(name)) }
                (input("words", "In a few words", "readings, how far, how long", ""))
                (outcomes(order, &json!(code), &format!("{} passed", capital(name)), if nth == 0 { Look::Confirm } else { Look::Plain }))
                @if *code == "road-test" { (judged(order)) }
            } }
        }
        details id="other-proof" {
            summary class="row" { span class="strong" { "Another proof, or one again" } }
            form {
                (chips("proof", "What was tried", PROOFS, "other"))
                (input("words", "In a few words", "readings, how far, how long", ""))
                (outcomes(order, &field("proof"), "It passed", Look::Plain))
            }
            (judged(order))
        }
    }
}

/// A drive that was recorded or written down says itself what it proves.
fn judged(order: &OrderView) -> Markup {
    let at = |code: &str| format!("/o/{}/calc/roadtest/{code}", order.number);
    html! {
        div class="presses even" {
            (link(Look::Plain, "Judge a recording", "from a logger's file", &at("recording")))
            (link(Look::Plain, "Readings by hand", "typed at the kerb", &at("by-hand")))
        }
    }
}

/// How it came out, for a proof that is known or one that is chosen on the page.
fn outcomes(order: &OrderView, proof: &Value, held: &str, look: Look) -> Markup {
    let earlier = match proof.as_str() {
        Some(known) => json!(order.proofs_told.get(known).cloned().unwrap_or_default()),
        None => json!({ "$map": "proof", "to": order.proofs_told, "else": [] }),
    };
    let seen = disturbed_seen(order);
    let prove = |outcome: &str| {
        order_fact(
            &order.order,
            json!({ "proved": {
                "id": new("proof"), "line": null, "proof": proof, "outcome": outcome,
                "words": text("words"), "readings": [], "calculation": null,
                "after": seen, "replaces": earlier } }),
        )
    };
    html! {
        div class="presses" { (button(look, held, "", &[prove("held")], None)) }
        div class="presses even" {
            (button(Look::Plain, "It failed", "", &[prove("failed")], None))
            (button(Look::Plain, "Couldn't reproduce", "the complaint did not come back on", &[prove("not-provoked")], None))
        }
    }
}

const PROOFS: &[(&str, &str)] = &[
    ("leak-test", "leak test"),
    ("road-test", "road test"),
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
