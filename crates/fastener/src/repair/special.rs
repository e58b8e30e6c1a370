//! Ways for holes that are no plain clamp joint, and for those that people's lives hang on.

use super::clamp::Original;
use super::hole::DamagedHole;
use super::plan::{Plan, drill_reasons, same_hole};
use super::steps::{self, Step};
use super::ways::Way;
use crate::clearance::clearance_holes;
use crate::drill::millimetres;
use crate::figures::trimmed;
use crate::holds::Holds;

/// A bolt right through, with a nut on the far side.
pub(super) fn bolt_and_nut(hole: &DamagedHole, original: &Original) -> Plan {
    let d = hole.thread.diameter_mm();
    let passage_mm = clearance_holes(&hole.thread).map_or(1.1 * d, |holes| holes.normal_mm);
    let loads = hole.class.and_then(|class| class.loads(&hole.thread).ok());
    Plan {
        reasons: drill_reasons(hole, passage_mm),
        drill: Some(millimetres(passage_mm)),
        bolt: format!("{}, long enough for a nut behind", hole.thread.name()),
        hole_major_mm: Some(passage_mm),
        engaged_mm: hole.depth.mm(),
        bolt_thread_n: None,
        nut_n: Some(loads.map(|loads| loads.breaking_n)),
        notes: vec![
            "Only where both sides can be reached, nothing turns or flows behind, and the far face \
             bears a washer."
                .to_owned(),
            "A nut of the bolt's class, a hardened washer, and something that keeps it from \
             coming loose."
                .to_owned(),
        ],
        ..same_hole(hole, original, hole.depth.mm())
    }
}

/// A bushing, plug, bung or reducer whose maker names drill and tap.
pub(super) fn by_its_kit(way: Way, hole: &DamagedHole, original: &Original) -> Plan {
    let tap = match way {
        Way::PlugBushing => Some("the bushing kit's own reamer and tap".to_owned()),
        Way::OversizePlug => Some("the oversize plug's own tap, by hand".to_owned()),
        Way::NextPipeSize => Some("taper tap of the next pipe size".to_owned()),
        _ => None,
    };
    let notes: &[&str] = match way {
        Way::PlugBushing if hole.holds == Some(Holds::SparkPlug) => &[
            "A bushing with a seat of its own, of the plug's reach: the plug's electrodes must \
             stand where they stood.",
            "With the head on, chips go into the cylinder. Taking the head off is the surer way.",
        ],
        Way::PlugBushing => &[
            "The bushing seals by its own collar: the sensor's tip must reach as far in as before.",
        ],
        Way::OversizePlug => {
            &["It cuts its own thread once. It leaks or strips the next time: tell the customer."]
        }
        Way::WeldedBung => &["Battery and control units off before welding; the sensor out."],
        Way::NextPipeSize => {
            &["Tell what flows through it that nothing is narrowed; check the wall first."]
        }
        _ => &[],
    };
    let mut plan = Plan {
        tap,
        clamp: None,
        bolt_thread_n: None,
        notes: notes.iter().map(|note| (*note).to_owned()).collect(),
        ..same_hole(hole, original, hole.engaged_mm)
    };
    if way != Way::WeldedBung {
        plan.reasons = drill_reasons(hole, hole.thread.diameter_mm());
    }
    plan
}

/// What the vehicle maker names, and nothing of one's own.
pub(super) fn makers_repair(hole: &DamagedHole, original: &Original) -> Plan {
    Plan {
        clamp: None,
        notes: vec![
            "Only a repair that the vehicle maker describes for this very joint: say which, with \
             its page, on the order."
                .to_owned(),
        ],
        ..same_hole(hole, original, hole.engaged_mm)
    }
}

/// What is done.
pub(super) fn steps(way: Way, hole: &DamagedHole, plan: &Plan) -> Vec<Step> {
    match way {
        Way::BoltAndNut => steps::bolt_and_nut(plan.drill.as_ref()),
        Way::PlugBushing if hole.holds == Some(Holds::SparkPlug) => steps::plug_bushing(),
        Way::PlugBushing => steps::said(&[
            "take the part off, or close what lies behind with a rag",
            "ream, tap and face with the bushing kit's own tools",
            "turn the bushing in to its collar as its maker says, then the sensor by hand",
        ]),
        Way::OversizePlug => steps::said(&[
            "clean the boss; grease on the plug's flutes",
            "cut with the oversize plug, square, a turn forward and half a turn back",
            "flush the chips out with a little fresh oil before filling",
        ]),
        Way::WeldedBung => steps::said(&[
            "cut the old bung out and clean the metal",
            "weld a bung of the same metal in, and let it cool",
            "chase its thread, fit the sensor, look for leaks warm",
        ]),
        Way::NextPipeSize => steps::said(&[
            "close what lies behind with grease or a rag",
            "drill and tap the next pipe size, taper, no deeper than the reducer's turns",
            "seal and turn the reducer in by turns, not by torque; look for leaks",
        ]),
        Way::MakersPart => steps::said(&[
            "fit the vehicle maker's new part, with new bolts where the maker says so",
            "prove it as the maker says before the vehicle goes on the road",
        ]),
        Way::MakersRepair => steps::said(&[
            "find the repair in the vehicle maker's instructions, and name it on the order",
            "do it with the parts, the tools and the torque that are named there, to the letter",
            "prove it as the maker says before the vehicle goes on the road",
        ]),
        _ => Vec::new(),
    }
}

/// The millimetres of a passage, for a step.
pub(super) fn passage(size_mm: f64) -> String {
    trimmed(size_mm, 1)
}
