//! What to set on a torque wrench with an adapter, and the force at a lever.

use super::told;
use crate::threads::ask::{AdapterQuestion, LeverQuestion, adapter, lever, wrench_reads};
use crate::{Answer, Asked, Calculator, Holds, Part, both_mm, both_n, both_nm};
use fastener::wrench::Reads;
use measure::{Line, Source, Working};
use serde_json::json;

pub(super) const WRENCH: Calculator = Calculator {
    code: "wrench",
    name: "Torque wrench and lever",
    what: "adapter, hand force, two wrenches",
    cautions: &[],
    how: &[],
    form: &[
        Part::number("want", "Torque wanted", Holds::TORQUE, ""),
        Part::number(
            "wrench",
            "Length of the wrench, drive to grip",
            Holds::LENGTH,
            "",
        ),
        Part::number(
            "adapter",
            "Adapter, drive to bolt",
            Holds::LENGTH,
            "empty for the force of a hand",
        ),
        Part::number(
            "angle",
            "Angle of the adapter to the wrench",
            Holds::ANGLE,
            "0 points away, 90 needs no correction",
        ),
        Part::number(
            "range",
            "Wrench's maximum torque",
            Holds::TORQUE,
            "whether it can be believed",
        ),
        Part::number(
            "second",
            "A second wrench hooked in, its length",
            Holds::LENGTH,
            "",
        ),
        Part::number("overlap", "The two overlap by", Holds::LENGTH, ""),
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
                said: "set the wrench to this".to_owned(),
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
            let working = Working::new("Force of a hand at a lever").line(
                Line::new("force", Source::derived())
                    .formula("F", "T / L")
                    .input("T", want)
                    .input("L", both_mm(found.lever_mm, customary))
                    .value(both_n(found.hand_force_n, customary)),
            );
            let mut answer = Answer {
                fact: both_n(found.hand_force_n, customary),
                said: format!("by hand at a lever of {}", both_mm(found.lever_mm, customary)),
                working: Some(working),
                outputs: json!({ "hand_force_n": found.hand_force_n }),
                ..Answer::default()
            };
            if some(asked, "second").is_some() {
                answer.alarms.push(
                    "A wrench hooked into another slips: pull so that it falls away from you, and never hammer on it."
                        .to_owned(),
                );
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
                .push("The wrench can be believed there.".to_owned()),
            Ok(Reads::TooLow { least_nm }) => answer.alarms.push(format!(
                "Below a fifth of its range a wrench says nothing: this one reads from {}.",
                both_nm(least_nm, customary)
            )),
            Ok(Reads::TooHigh { most_nm }) => answer.alarms.push(format!(
                "Beyond the wrench: it ends at {}.",
                both_nm(most_nm, customary)
            )),
            Err(trouble) => {
                told(asked, &trouble, SHOWN);
                return None;
            }
        }
    }
    Some(answer)
}
