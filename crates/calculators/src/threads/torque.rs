//! Torque for a clamp, and the clamp of a torque.

use super::{CAUTION, told};
use crate::phrases::threads as say;
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
    name: say::torque_and_clamp,
    what: say::one_from_the_other_low_to,
    cautions: &[CAUTION],
    how: Vec::new,
    form: &[
        Part::text("thread", say::thread, say::such_as_m10x1_5),
        Part::number("torque", say::torque, Holds::TORQUE, say::to_know_the_clamp),
        Part::number(
            "clamp",
            say::or_clamp,
            Holds::FORCE,
            say::to_know_the_torque,
        ),
        Part::text(
            "condition",
            say::state_of_the_threads,
            say::oiled_dry_zinc_dry_stainless_with,
        ),
        Part::text("friction", say::or_friction, say::such_as_0_15_none_is),
        Part::text("class", say::class, say::such_as_8_8),
        Part::More {
            id: "more",
            title: say::head_hole_form,
            parts: &[
                Part::text("head", say::head, say::hex_is_assumed_flange_socket),
                Part::number(
                    "face",
                    say::face_under_the_head,
                    Holds::LENGTH,
                    say::where_no_listed_head_is_meant,
                ),
                Part::text("hole", say::hole, say::close_medium_loose_or_its_diameter),
                Part::choice(
                    "form",
                    say::form,
                    &[
                        ("", say::motosh),
                        ("iso16047", say::iso_16047),
                        ("short", say::short_with_k),
                    ],
                ),
                Part::text("nut-factor", say::k_of_the_short_form, say::none_is_assumed),
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
                say::clamp_low_to_high().to_owned(),
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
                    say::the_bolt_breaks().to_owned()
                } else {
                    both_n(range.mid(), customary)
                },
                tone: if breaks { "no" } else { "" },
                alarms: alarms(&found.strength),
                said: say::clamp_of(found.thread.name(), both_nm(found.torque_nm, customary)),
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
                    say::over_the_range_of_friction().to_owned(),
                    say::from_to(nm(found.torque_nm.low()), nm(found.torque_nm.high())),
                ),
                (
                    say::of_it_stretches_the_bolt().to_owned(),
                    nm(terms.pitch_nm),
                ),
                (
                    say::of_it_goes_into_the_thread().to_owned(),
                    nm(terms.thread_nm),
                ),
                (
                    say::of_it_goes_under_the_head().to_owned(),
                    nm(terms.head_nm),
                ),
            ];
            rows.extend(shares(&found.strength, None, customary));
            Answer {
                alarms: alarms(&found.strength),
                fact: nm(terms.total_nm),
                said: say::for_a_clamp_of(both_n(found.clamp_n, customary), found.thread.name()),
                rows: rows.into_iter().map(Row::from).collect(),
                notes: found.notes,
                working: Some(found.working),
                outputs: json!({ "torque_nm": terms.total_nm,
                    "low": found.torque_nm.low(), "high": found.torque_nm.high() }),
                ..Answer::default()
            }
        }),
        (None, None) => {
            asked.wrong("torque", say::nothing_is_asked_write_a_torque());
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
            say::of_the_proof_load().to_owned(),
            say::from_to(percent(range.low()), percent(range.high())),
        )),
        (None, Some(share)) => rows.push((say::of_the_proof_load().to_owned(), percent(share))),
        (None, None) => {}
    }
    if let Some(torque) = strength.breaking_torque_nm {
        rows.push((
            say::breaks_at().to_owned(),
            say::from_to(
                both_nm(torque.low(), customary),
                both_nm(torque.high(), customary),
            ),
        ));
    }
    if let Some(torque) = strength.yield_torque_nm {
        rows.push((
            say::begins_to_yield_at().to_owned(),
            both_nm(torque.low(), customary),
        ));
    }
    rows
}
