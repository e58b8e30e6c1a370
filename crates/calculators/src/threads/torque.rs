//! Torque for a clamp, and the clamp of a torque.

use super::{CAUTION, told};
use crate::threads::ask::{Shares, TorqueQuestion, clamp, torque as ask};
use crate::{Answer, Asked, Calculator, Holds, Part, Row, both_kn, both_n, both_nm, capital};
use fastener::torque::Fate;
use measure::{Customary, Range};
use serde_json::json;

/// Fields of the page.
const SHOWN: &[&str] = &[
    "thread",
    "class",
    "torque",
    "clamp",
    "condition",
    "friction",
    "head",
    "face",
    "hole",
    "form",
    "nut-factor",
];

pub(super) const TORQUE: Calculator = Calculator {
    code: "torque",
    name: "Torque and clamp",
    what: "one from the other, low to high",
    cautions: &[CAUTION],
    how: &[],
    form: &[
        Part::text("thread", "Thread", "such as M10x1.5"),
        Part::number("torque", "Torque", Holds::TORQUE, "to know the clamp"),
        Part::number("clamp", "Or clamp", Holds::FORCE, "to know the torque"),
        Part::text(
            "condition",
            "State of the threads",
            "oiled, dry, zinc dry, stainless with paste …",
        ),
        Part::text("friction", "Or friction", "such as 0.15; none is assumed"),
        Part::text("class", "Class", "such as 8.8"),
        Part::More {
            id: "more",
            title: "Head, hole, form",
            parts: &[
                Part::text("head", "Head", "hex is assumed; flange, socket …"),
                Part::number(
                    "face",
                    "Face under the head, across",
                    Holds::LENGTH,
                    "where no listed head is meant",
                ),
                Part::text("hole", "Hole", "close, medium, loose, or its diameter"),
                Part::choice(
                    "form",
                    "Form",
                    &[
                        ("", "Motosh"),
                        ("iso16047", "ISO 16047"),
                        ("short", "short, with K"),
                    ],
                ),
                Part::text("nut-factor", "K of the short form", "none is assumed"),
            ],
        },
    ],
    at_first: &[],
    run,
};

/// The clamp of a torque where one is written, else the torque for a clamp.
fn run(asked: &mut Asked) -> Option<Answer> {
    let some = Asked::some;
    let question = TorqueQuestion {
        thread: asked.text("thread"),
        class: some(asked, "class"),
        friction: some(asked, "friction"),
        condition: some(asked, "condition"),
        head: some(asked, "head"),
        face: some(asked, "face"),
        hole: some(asked, "hole"),
        form: some(asked, "form"),
        nut_factor: some(asked, "nut-factor"),
    };
    let customary = asked.customary();
    let found = match (some(asked, "torque"), some(asked, "clamp")) {
        (Some(written), _) => clamp(&question, written).map(|found| {
            let range = found.clamp_n;
            let mut rows = vec![(
                "Clamp, low to high".to_owned(),
                both_kn(range.low(), range.high(), customary),
            )];
            rows.extend(shares(&found.strength, found.shares_of_proof, customary));
            let breaks = found.strength.fate == Some(Fate::Breaks);
            if breaks {
                // A broken bolt clamps nothing.
                rows.remove(0);
            }
            Answer {
                fact: if breaks {
                    "the bolt breaks".to_owned()
                } else {
                    both_n(range.mid(), customary)
                },
                tone: if breaks { "no" } else { "" },
                alarms: alarms(&found.strength),
                said: format!(
                    "clamp of {} at {}",
                    found.thread.name(),
                    both_nm(found.torque_nm, customary)
                ),
                rows: rows.into_iter().map(Row::from).collect(),
                notes: found.notes,
                working: (!breaks).then_some(found.working),
                outputs: json!({ "clamp_n": (!breaks).then_some(range.mid()),
                    "low": range.low(), "high": range.high(), "breaks": breaks }),
                ..Answer::default()
            }
        }),
        (None, Some(written)) => ask(&question, written).map(|found| {
            let terms = found.terms;
            let nm = |value| both_nm(value, customary);
            let mut rows = vec![
                (
                    "Over the range of friction".to_owned(),
                    format!(
                        "{} to {}",
                        nm(found.torque_nm.low()),
                        nm(found.torque_nm.high())
                    ),
                ),
                ("Of it stretches the bolt".to_owned(), nm(terms.pitch_nm)),
                ("Of it goes into the thread".to_owned(), nm(terms.thread_nm)),
                ("Of it goes under the head".to_owned(), nm(terms.head_nm)),
            ];
            rows.extend(shares(&found.strength, None, customary));
            Answer {
                alarms: alarms(&found.strength),
                fact: nm(terms.total_nm),
                said: format!(
                    "for a clamp of {} on {}",
                    both_n(found.clamp_n, customary),
                    found.thread.name()
                ),
                rows: rows.into_iter().map(Row::from).collect(),
                notes: found.notes,
                working: Some(found.working),
                outputs: json!({ "torque_nm": terms.total_nm,
                    "low": found.torque_nm.low(), "high": found.torque_nm.high() }),
                ..Answer::default()
            }
        }),
        (None, None) => {
            asked.wrong(
                "torque",
                "nothing is asked; write a torque, or a clamp below it",
            );
            return None;
        }
    };
    found.map_err(|trouble| told(asked, &trouble, SHOWN)).ok()
}

/// What becomes of the bolt, before any figure.
fn alarms(strength: &Shares) -> Vec<String> {
    strength
        .verdict
        .iter()
        .map(|verdict| capital(verdict))
        .collect()
}

fn shares(
    strength: &Shares,
    range: Option<Range<f64>>,
    customary: Customary,
) -> Vec<(String, String)> {
    let mut rows = Vec::new();
    let percent = |share: f64| format!("{:.0} %", 100.0 * share);
    match (range, strength.share_of_proof) {
        (Some(range), _) => rows.push((
            "Of the proof load".to_owned(),
            format!("{} to {}", percent(range.low()), percent(range.high())),
        )),
        (None, Some(share)) => rows.push(("Of the proof load".to_owned(), percent(share))),
        (None, None) => {}
    }
    if let Some(torque) = strength.breaking_torque_nm {
        rows.push((
            "Breaks at".to_owned(),
            format!(
                "{} to {}",
                both_nm(torque.low(), customary),
                both_nm(torque.high(), customary)
            ),
        ));
    }
    if let Some(torque) = strength.yield_torque_nm {
        rows.push((
            "Begins to yield at".to_owned(),
            both_nm(torque.low(), customary),
        ));
    }
    rows
}
