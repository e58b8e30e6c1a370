//! What to set on a torque wrench with an adapter, and the force at a lever.

use super::told;
use crate::form::none;
use crate::phrases::threads as say;
use crate::threads::ask::{AdapterQuestion, LeverQuestion, adapter, lever, wrench_reads};
use crate::{Answer, Asked, Calculator, Holds, Part, both_mm, both_n, both_nm};
use fastener::wrench::Reads;
use measure::{Line, Source, Working};
use serde_json::json;

pub(super) const WRENCH: Calculator = Calculator {
    code: "wrench",
    name: say::torque_wrench_and_lever,
    what: say::adapter_hand_force_two_wrenches,
    cautions: &[],
    how: Vec::new,
    form: &[
        Part::number("want", say::torque_wanted, Holds::TORQUE, none),
        Part::number(
            "wrench",
            say::length_of_the_wrench_drive_to,
            Holds::LENGTH,
            none,
        ),
        Part::number(
            "adapter",
            say::adapter_drive_to_bolt,
            Holds::LENGTH,
            say::empty_for_the_force_of_a,
        ),
        Part::number(
            "angle",
            say::angle_of_the_adapter_to_the,
            Holds::ANGLE,
            say::about_0_points_away_90_needs_no,
        ),
        Part::number(
            "range",
            say::wrenchs_maximum_torque,
            Holds::TORQUE,
            say::whether_it_can_be_believed,
        ),
        Part::number(
            "second",
            say::a_second_wrench_hooked_in_its,
            Holds::LENGTH,
            none,
        ),
        Part::number("overlap", say::the_two_overlap_by, Holds::LENGTH, none),
    ],
    at_first: &[],
    run,
};

const SHOWN: &[&str] = &[
    "want", "wrench", "adapter", "angle", "second", "overlap", "range",
];

/// What to set on a torque wrench with an adapter, or the force at a lever.
fn run(asked: &mut Asked) -> Option<Answer> {
    let some = Asked::some;
    let customary = asked.customary();
    let (want, length) = (asked.text("want"), asked.text("wrench"));
    let found = match some(asked, "adapter") {
        Some(reach) => adapter(&AdapterQuestion {
            want,
            wrench: length,
            adapter: reach,
            angle: some(asked, "angle"),
        })
        .map(|set| {
            let answer = Answer {
                fact: both_nm(set.set_to_nm, customary),
                said: say::set_the_wrench_to_this().to_owned(),
                outputs: json!({ "set_to_nm": set.set_to_nm }),
                working: Some(set.working),
                ..Answer::default()
            };
            (answer, Some(set.set_to_nm))
        }),
        None => lever(&LeverQuestion {
            want,
            wrench: length,
            second: some(asked, "second"),
            overlap: some(asked, "overlap"),
        })
        .map(|found| {
            let working = Working::new(say::force_of_a_hand_at_a()).line(
                Line::new(say::force(), Source::derived())
                    .formula("F", "T / L")
                    .input("T", want)
                    .input("L", both_mm(found.lever_mm, customary))
                    .value(both_n(found.hand_force_n, customary)),
            );
            let mut answer = Answer {
                fact: both_n(found.hand_force_n, customary),
                said: say::by_hand_at_a_lever_of(both_mm(found.lever_mm, customary)),
                working: Some(working),
                outputs: json!({ "hand_force_n": found.hand_force_n }),
                ..Answer::default()
            };
            if some(asked, "second").is_some() {
                answer
                    .alarms
                    .push(say::a_wrench_hooked_into_another_slips().to_owned());
            }
            (answer, None)
        }),
    };
    let (mut answer, set_nm) = match found {
        Ok(found) => found,
        Err(trouble) => {
            told(asked, &trouble, SHOWN);
            return None;
        }
    };
    if let (Some(range), Some(set_nm)) = (some(asked, "range"), set_nm) {
        match wrench_reads(range, set_nm) {
            Ok(Reads::Well) => answer
                .notes
                .push(say::the_wrench_can_be_believed_there().to_owned()),
            Ok(Reads::TooLow { least_nm }) => answer
                .alarms
                .push(say::wrench_reads_from(both_nm(least_nm, customary))),
            Ok(Reads::TooHigh { most_nm }) => answer
                .alarms
                .push(say::beyond_the_wrench(both_nm(most_nm, customary))),
            Err(trouble) => {
                told(asked, &trouble, SHOWN);
                return None;
            }
        }
    }
    Some(answer)
}
