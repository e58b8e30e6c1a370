//! Torque for a clamp, and the clamp of a torque.

use super::{some, told};
use crate::coolant::{Answer, Asked};
use crate::mending::{both_kn, both_n, both_nm};
use fastener::ask::{Shares, TorqueQuestion, clamp, torque as ask};
use fastener::torque::Fate;
use measure::{Customary, Range};

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

/// The clamp of a torque where one is written, else the torque for a clamp.
#[must_use]
pub fn torque(asked: &mut Asked) -> Option<Answer> {
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
                rows,
                notes: found.notes,
                working: if breaks {
                    String::new()
                } else {
                    found.working.html()
                },
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
                rows,
                notes: found.notes,
                working: found.working.html(),
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
        .map(|verdict| crate::say::capital(verdict))
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
