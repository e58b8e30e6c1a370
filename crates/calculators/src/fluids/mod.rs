//! The fluids besides coolant, and the battery, with no order: what is done in which sequence,
//! what is owed and what waits for it, and the questions that each can be asked.

mod asks;
mod kinds;

use crate::form::{Field, Label, none};
use crate::phrases::fluids as say;
use crate::{Answer, Asked, Calculator, Part, Room, Row, Say, Step, Takes, capital};
use asks::Said;
use fluids::{Caution, Done, Kind, Work, standing};
use measure::Working;
use serde_json::{Value, json};

const MAKER: Say = || Caution::MakersSpecification.text();

/// The room of fluids.
pub const ROOM: Room = Room {
    code: "fluids",
    name: say::fluids,
    what: say::oil_brake_gearbox_battery,
    cautions: &[MAKER],
    notes: &[(
        say::a_fluid_closes_on_its_level,
        say::litres_are_counted_and_compared_but,
    )],
    calculators: kinds::ALL,
};

/// Steps of a fluid as boxes to tick.
const fn ticks<const N: usize>(steps: &'static [fluids::Step]) -> [Part; N] {
    let mut parts = [Part::Heading(none); N];
    let mut nth = 0;
    while nth < N {
        parts[nth] = Part::Field(Field {
            name: steps[nth].work.word(),
            label: Label::Step(&steps[nth]),
            hint: none,
            takes: Takes::Tick,
            unless: None,
        });
        nth += 1;
    }
    parts
}

/// Whether another person has looked.
const SECOND: Part = Part::tick("second-person", say::a_second_person_has_checked_it, none);

/// A calculator of one fluid: its steps to tick, then what it can be asked.
const fn of(
    kind: Kind,
    name: Say,
    what: Say,
    form: &'static [Part],
    run: fn(&mut Asked) -> Option<Answer>,
) -> Calculator {
    Calculator {
        code: kind.word(),
        name,
        what,
        cautions: &[MAKER],
        how: Vec::new,
        form,
        at_first: &[],
        run,
    }
}

/// Where the fluid stands by the boxes ticked, with every question that was put.
fn worked(kind: Kind, asked: &mut Asked) -> Option<Answer> {
    let works: Vec<Work> = kind
        .steps()
        .iter()
        .map(|step| step.work)
        .filter(|work| asked.some(work.word()).is_some())
        .collect();
    let found = standing(&Done {
        kind,
        works,
        second_person: asked.some("second-person").is_some(),
    });
    let said: Vec<Said> = asks::answers(kind, asked);
    if !asked.troubles.is_empty() {
        return None;
    }
    let waits: Vec<&str> = found.waits.iter().map(|before| before.words()).collect();
    let open = found.owed.len() + usize::from(found.second_person_owed);
    let mut answer = Answer {
        fact: match open {
            0 => say::closed().to_owned(),
            open => say::steps_owed(open),
        },
        said: if found.closed {
            say::it_closed_on(found.closes_on)
        } else {
            say::until_then_wait_with(waits.join(", "))
        },
        tone: if found.closed { "yes" } else { "wait" },
        ..Answer::default()
    };
    for step in kind.steps() {
        let owed = found.owed.iter().find(|owed| owed.step.work == step.work);
        answer.steps.push(Step {
            caution: step
                .caution
                .filter(|_| owed.is_some())
                // It stands above the whole page.
                .filter(|caution| *caution != Caution::MakersSpecification)
                .map(|caution| caution.text().to_owned()),
            what: capital(step.text()),
            lines: Vec::new(),
            stands: match owed {
                None => say::done(),
                Some(owed) if owed.again => say::owed_again_it_was_done_too(),
                Some(_) => say::owed(),
            }
            .to_owned(),
            tone: if owed.is_some() { "wait" } else { "yes" },
        });
    }
    if found.second_person_owed {
        answer.steps.push(Step {
            what: say::a_second_persons_check().to_owned(),
            stands: say::owed().to_owned(),
            tone: "wait",
            ..Step::default()
        });
    }
    if !found.closed {
        answer.notes.push(say::it_closes_on(found.closes_on));
    }
    let owed: Vec<&str> = found
        .owed
        .iter()
        .map(|owed| owed.step.work.word())
        .collect();
    answer.outputs = json!({ "kind": kind.word(), "closed": found.closed, "owed": owed,
        "second_person_owed": found.second_person_owed, "waits": waits });
    let mut working = Working::clone(&found.working);
    for one in said {
        answer.rows.push(Row {
            what: one.what.to_owned(),
            value: one.value,
            beside: one.beside,
            tone: one.tone,
        });
        let mut outputs: Value = one.outputs;
        outputs["verdict"] = json!(one.code);
        answer.outputs[one.name] = outputs;
        working = working.then(one.working);
    }
    // What was asked stands before what is owed.
    if let Some(first) = answer.rows.first().cloned() {
        answer
            .notes
            .insert(0, format!("{}. {}", capital(&answer.fact), answer.said));
        answer.fact = first.value;
        answer.said = first.beside;
        answer.tone = first.tone;
        answer.rows.remove(0);
    }
    Some(answer.with_working(&working))
}
