//! The ways to get a stub out, least risk first.

use super::hole::{
    BOLT_LENGTH, BOSS, BY, CLASS, DEPTH, ENGAGED, JOINT, METAL, MORE, NO_ROOM, SHOWN, SORT, THREAD,
    TORQUE, WELD,
};
use super::told;
use crate::mending::{RungTold, stub};
use crate::phrases::threads as say;
use crate::{Answer, Asked, Calculator, Part, Step, capital};
use serde_json::json;

pub(super) const STUB: Calculator = Calculator {
    code: "stub",
    name: say::a_stub,
    what: say::the_ways_to_get_it_out,
    cautions: &[super::repair::CAUTION],
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
    ],
    at_first: &[],
    run,
};

const STANDS: Part = Part::choice(
    "stands",
    say::the_stub,
    &[
        ("flush", say::is_flush),
        ("proud", say::stands_proud),
        ("below", say::sits_below),
    ],
);

fn run(asked: &mut Asked) -> Option<Answer> {
    asked.or_else("stands", "flush");
    let found = stub(asked.fields(), asked.text("stands"), asked.customary());
    let told = match found {
        Ok(told) => told,
        Err(trouble) => {
            told(asked, &trouble, SHOWN);
            return None;
        }
    };
    let first = told.rungs.iter().find(|rung| rung.open);
    Some(Answer {
        fact: first.map_or_else(
            || say::no_way_is_open_here().to_owned(),
            |rung| capital(&rung.name),
        ),
        said: say::the_way_with_the_least_risk().to_owned(),
        tone: if first.is_some() { "" } else { "no" },
        steps: told.rungs.iter().map(step).collect(),
        alarms: told.cautions.clone(),
        working: Some(told.working.working()),
        outputs: json!(told),
        ..Answer::default()
    })
}

fn step(rung: &RungTold) -> Step {
    let mut lines: Vec<String> = rung.reason.iter().cloned().collect();
    if rung.open {
        lines.extend(rung.how.iter().chain(&rung.drills).cloned());
        lines.extend(rung.most_torque.iter().map(say::at_most_on_the_stub));
        lines.push(say::stop_when(&rung.stop_when));
    }
    Step {
        what: capital(&rung.name),
        lines,
        stands: if rung.open { "" } else { say::not_here() }.to_owned(),
        tone: if rung.open { "" } else { "no" },
        ..Step::default()
    }
}
