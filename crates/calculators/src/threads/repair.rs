//! The ways to mend a thread, ranked.

use super::hole::{
    BOLT_LENGTH, BOSS, BY, CLASS, DEPTH, ENGAGED, JOINT, METAL, MORE, NO_ROOM, SHOWN, SORT, THREAD,
    TORQUE, WELD,
};
use super::told;
use crate::form::Label;
use crate::mending::{SpreadTold, StepTold, Told, ways};
use crate::phrases::threads as say;
use crate::{Answer, Asked, Calculator, Field, Other, Part, Row, Say, Step, Takes, capital};
use drawing::joint;
use serde_json::json;

/// Before a drill or a flame.
pub(super) const CAUTION: Say = fastener::repair::caution;

const WAY: Part = Part::Field(Field {
    name: "way",
    label: Label::Said(say::the_way_to_look_at),
    hint: say::the_best_one_if_empty,
    takes: Takes::Link,
    unless: None,
});

const STANDS: Part = Part::choice(
    "stands",
    say::in_the_hole,
    &[
        ("", say::no_stub_in_it),
        ("proud", say::stands_proud),
        ("flush", say::is_flush),
        ("below", say::sits_below),
    ],
);

pub(super) const REPAIR: Calculator = Calculator {
    code: "repair",
    name: say::thread_repair,
    what: say::the_repair_options_ranked,
    cautions: &[CAUTION],
    how: Vec::new,
    form: &[
        JOINT,
        STANDS,
        THREAD,
        CLASS,
        BOLT_LENGTH,
        TORQUE,
        BY,
        ENGAGED,
        SORT,
        DEPTH,
        BOSS,
        METAL,
        WELD,
        NO_ROOM,
        MORE,
        WAY,
    ],
    at_first: &[],
    run,
};

/// Drawings fit a phone's page.
const HEIGHT_PX: f64 = 290.0;

fn run(asked: &mut Asked) -> Option<Answer> {
    let found = ways(
        asked.fields(),
        asked.some("stands"),
        &asked.shop().planning,
        asked.customary(),
    );
    let all = match found {
        Ok(all) => all,
        Err(trouble) => {
            told(asked, &trouble, SHOWN);
            return None;
        }
    };
    let wanted = asked.text("way");
    let chosen = all.iter().find(|told| told.way.code == wanted);
    chosen.or(all.first()).map(answer)
}

fn answer(told: &Told) -> Answer {
    let way = &told.way;
    let holds = if way.holds {
        say::holds()
    } else {
        say::does_not_hold()
    };
    let (fact, second) = match &way.torque {
        Some((first, second)) if way.torque_as_before => (first.clone(), say::as_before(second)),
        Some((first, second)) => (first.clone(), second.clone()),
        None => (
            say::no_torque_is_known().to_owned(),
            say::the_makers_holds_none_is_made().to_owned(),
        ),
    };
    let mut rows = vec![Row {
        what: say::torque_in_the_other_units().to_owned(),
        value: second,
        ..Row::default()
    }];
    if way.torque.is_none() {
        rows[0].what = say::torque().to_owned();
    }
    rows.extend(way.reasons.iter().map(|reason| Row {
        what: capital(reason),
        tone: "no",
        ..Row::default()
    }));
    let figures = way.figures.iter();
    rows.extend(figures.map(|one| Row::from((one.label.clone(), one.value.clone()))));
    rows.extend(
        way.minutes
            .iter()
            .map(|spread| Row::from((say::time().to_owned(), minutes(spread)))),
    );
    let mut notes: Vec<String> = way.notes.iter().chain(&told.notes).cloned().collect();
    if way.holds {
        notes.push(say::why_it_stands_at(way.rank, &way.why_here));
    }
    let others = told.others.iter().map(|other| Other {
        name: format!("{}. {}", other.rank, capital(&other.name)),
        reason: other.reason.clone(),
        holds: other.holds,
        ask: ("way", other.code.clone()),
    });
    let sections = match way.holds {
        true => vec![&way.joint, &told.found],
        false => vec![&told.found],
    };
    Answer {
        fact,
        said: say::way_with_bolt(capital(&way.name), &way.bolt, holds),
        tone: if way.holds { "" } else { "no" },
        rows,
        steps: steps(&way.steps),
        others: others.collect(),
        notes,
        alarms: told.cautions.clone(),
        drawings: sections
            .into_iter()
            .map(|section| joint(&section.drawn(), crate::PHONE_PX, HEIGHT_PX))
            .collect(),
        working: Some(way.working.working()),
        outputs: json!(told),
    }
}

/// Each with its caution, unless the step before has said the same.
fn steps(all: &[StepTold]) -> Vec<Step> {
    let mut last = None;
    let each = all.iter().map(|step| {
        let caution = step.caution.as_deref();
        let new = caution.filter(|caution| last != Some(*caution));
        last = caution;
        Step {
            caution: new.map(capital),
            what: capital(&step.what),
            ..Step::default()
        }
    });
    each.collect()
}

/// `55 min (40 to 90)`.
fn minutes(spread: &SpreadTold) -> String {
    say::minutes(&spread.mid, &spread.low, &spread.high)
}
