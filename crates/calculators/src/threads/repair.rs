//! The ways to mend a thread, ranked.

use super::hole::{
    BOLT_LENGTH, BOSS, BY, CLASS, DEPTH, ENGAGED, JOINT, METAL, MORE, NO_ROOM, SHOWN, SORT, THREAD,
    TORQUE, WELD,
};
use super::told;
use crate::mending::{SpreadTold, StepTold, Told, ways};
use crate::{Answer, Asked, Calculator, Field, Other, Part, Row, Step, Takes, capital};
use drawing::joint;
use serde_json::json;

/// Before a drill or a flame.
// The same as `fastener::repair::caution` says in English.
pub(super) const CAUTION: &str = "Eye protection; know what lies behind the hole and how deep it is; no \
     open fuel or battery gas near a drill. The vehicle maker's instructions, local rules and \
     licensed practice come before this page.";

const WAY: Part = Part::Field(Field {
    name: "way",
    label: "The way to look at",
    hint: "the best one if empty",
    takes: Takes::Link,
    unless: None,
});

const STANDS: Part = Part::choice(
    "stands",
    "In the hole",
    &[
        ("", "no stub in it"),
        ("proud", "stands proud"),
        ("flush", "is flush"),
        ("below", "sits below"),
    ],
);

pub(super) const REPAIR: Calculator = Calculator {
    code: "repair",
    name: "Thread repair",
    what: "the repair options, ranked",
    cautions: &[CAUTION],
    how: &[],
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
    let holds = if way.holds { "holds" } else { "does not hold" };
    let (fact, second) = match &way.torque {
        Some((first, second)) if way.torque_as_before => {
            (first.clone(), format!("{second}, as before"))
        }
        Some((first, second)) => (first.clone(), second.clone()),
        None => (
            "No torque is known".to_owned(),
            "the maker's holds: none is made up here".to_owned(),
        ),
    };
    let mut rows = vec![Row {
        what: "Torque in the other units".to_owned(),
        value: second,
        ..Row::default()
    }];
    if way.torque.is_none() {
        rows[0].what = "Torque".to_owned();
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
            .map(|spread| Row::from(("Time".to_owned(), minutes(spread)))),
    );
    let mut notes: Vec<String> = way.notes.iter().chain(&told.notes).cloned().collect();
    if way.holds {
        notes.push(format!("Why it stands at {}: {}", way.rank, way.why_here));
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
        said: format!("{}, bolt {} · {holds}", capital(&way.name), way.bolt),
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
    format!("{} min ({} to {})", spread.mid, spread.low, spread.high)
}
