//! What is owed, checked and proved. Nothing is ticked by itself: a tick is somebody's word that
//! it was done. One tap a proof; one that passed without a reading is asked about once.

use super::choices::{Choices, spoken};
use super::gates::also_against;
use super::pieces::disturbed_seen;
use crate::State;
use crate::pages::bench::of_order::as_found;
use crate::pages::{Shown, Visit, order_of, show};
use crate::phrases::vehicle as say;
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
            say::owed_checks_proof(),
            html! {
                h1 { (say::owed_checks_proof()) }
                div class="columns" {
                    div { (owed(&order)) (belts) (checks(&order, visit.who, &people)) }
                    div { (proofs(&order)) (also_against(&order)) }
                }
                @if order.gates.last().is_some_and(|gate| gate.fit_to_go.iter().all(|reason| !reason.blocks || reason.waived.is_some())) {
                    div class="presses low" { (link(Look::Confirm, say::hand_over(), say::it_is_fit_to_go(), &format!("/o/{}/hand-over", order.number))) }
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
        h2 { (say::owed()) }
        @if order.debts.is_empty() { p class="gap yes" { (say::nothing_is_owed()) } }
        @else { (listed(order)) }
        details id="more" {
            summary class="row" { span class="strong" { (say::something_else_is_owed()) } }
            form {
                (required("words", say::what(), "", ""))
                (chips("before", say::before(), &[("start", say::before_start()), ("lower", say::before_lower()), ("roll", say::before_roll()), ("road", say::before_road()), ("hand-over", say::before_hand_over())], "hand-over"))
                div class="presses" {
                    (button(Look::Plain, say::it_is_owed(), "", &[order_fact(&order.order, json!({ "work-due": { "id": new("work"), "item": null, "words": text("words"), "until": { "before": field("before") } } }))], None))
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

/// Each with its own tick; what is owed alone is one tap.
fn listed(order: &OrderView) -> Markup {
    if let [debt] = order.debts.as_slice() {
        return alone(order, debt);
    }
    let commands: Vec<Value> = order
        .debts
        .iter()
        .enumerate()
        .map(|(nth, debt)| when(&format!("debt-{nth}"), done(order, debt)))
        .collect();
    html! {
        form {
            fieldset class="to-tick" data-one-of=(say::tick_what_is_done()) {
                legend class="skip" { (say::what_is_done_list()) }
                @for (nth, debt) in order.debts.iter().enumerate() {
                    label class="row" data-later[!is_now(debt)] {
                        input type="checkbox" name=(format!("debt-{nth}")) value="yes";
                        span class="what" { (capital(&debt.text)) }
                        @if !is_now(debt) { span class="soft" { (say::comes_later()) } }
                    }
                }
            }
            div class="presses" { (button(Look::Confirm, say::done_as_ticked(), say::nothing_ticked_by_itself(), &commands, None)) }
        }
    }
}

/// Whether it is done before the vehicle leaves. A level is seen cold after one full heating and
/// cooling.
fn is_now(debt: &DebtView) -> bool {
    debt.before.is_some() && debt.work != WorkIsForm::LevelCold
}

/// The only thing that is owed. What comes due later is not the press that lies under a thumb.
fn alone(order: &OrderView, debt: &DebtView) -> Markup {
    let look = if is_now(debt) {
        Look::Confirm
    } else {
        Look::Plain
    };
    html! {
        form {
            div class="row" { span class="mark" {} span class="what" { (capital(&debt.text)) } }
            div class="presses" { (button(look, say::done_one(), "", &[done(order, debt)], None)) }
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
            h2 { (say::second_check()) }
            p class="gap" { (say::second_pair_of_eyes()) }
            @for reason in &missing { div class="row" { span class="mark half" {} span class="what" { (reason.text) } } }
            form { div class="presses even" {
                @if !did(who) { (button(Look::Plain, say::i_checked_them(), say::all_of_these(), &[check(who)], None)) }
                @else {
                    @for (id, name) in others.iter().take(MOST_NAMED) {
                        (button(Look::Plain, &say::somebody_checked_them(name), &say::somebody_presses_this(name), &[check(id)], None))
                    }
                    @if others.len() > MOST_NAMED { (link(Look::Plain, say::somebody_else(), say::change_the_person(), "/who")) }
                }
                (link(Look::Plain, say::working_alone(), say::list_other_way_round(), &format!("/o/{}/second", order.number)))
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
        h2 { (say::proof()) }
        @for reason in &failed { div class="row" { span class="mark" {} span class="what no" { (reason.text) } } }
        @if needed.is_empty() && failed.is_empty() { p class="gap yes" { (say::needed_is_proved()) } }
        @for (nth, (code, name)) in needed.iter().enumerate() {
            form { fieldset {
                legend class="large" { (capital(name())) }
                (input("words", say::in_a_few_words(), say::readings_how_far(), ""))
                (outcomes(order, &json!(code), &say::passed(capital(name())), if nth == 0 { Look::Confirm } else { Look::Plain }))
                @if *code == "road-test" { (judged(order)) }
            } }
        }
        details id="other-proof" {
            summary class="row" { span class="strong" { (say::another_proof()) } }
            form {
                (chips("proof", say::what_was_tried(), &spoken(PROOFS), "other"))
                (input("words", say::in_a_few_words(), say::readings_how_far(), ""))
                (outcomes(order, &field("proof"), say::it_passed(), Look::Plain))
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
            (link(Look::Plain, say::judge_a_recording(), say::from_a_loggers_file(), &at("recording")))
            (link(Look::Plain, say::readings_by_hand(), say::typed_at_the_kerb(), &at("by-hand")))
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
        div class="presses" data-reading="words" data-reading-asks=(say::no_reading_told()) { (button(look, held, "", &[prove("held")], None)) }
        div class="presses even" {
            (button(Look::Plain, say::it_failed(), "", &[prove("failed")], None))
            (button(Look::Plain, say::couldnt_reproduce(), say::complaint_did_not_come_back(), &[prove("not-provoked")], None))
        }
    }
}

const PROOFS: &Choices = &[
    ("leak-test", say::leak_test_proof),
    ("road-test", say::road_test),
    ("brake-test", say::brake_test),
    ("fuel-leak-look", say::fuel_leak_look),
    ("restraint-lamp", say::restraint_lamp),
    ("coolant-mix", say::coolant_mix),
    ("other", say::other),
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
