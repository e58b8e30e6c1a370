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
use crate::phrases::repair as say;

/// A bolt right through, with a nut on the far side.
pub(super) fn bolt_and_nut(hole: &DamagedHole, original: &Original) -> Plan {
    let d = hole.thread.diameter_mm();
    let passage_mm = clearance_holes(&hole.thread).map_or(1.1 * d, |holes| holes.normal_mm);
    let loads = hole.class.and_then(|class| class.loads(&hole.thread).ok());
    Plan {
        reasons: drill_reasons(hole, passage_mm),
        drill: Some(millimetres(passage_mm)),
        bolt: say::long_enough_for_a_nut(hole.thread.name()),
        hole_major_mm: Some(passage_mm),
        engaged_mm: hole.depth.mm(),
        bolt_thread_n: None,
        nut_n: Some(loads.map(|loads| loads.breaking_n)),
        notes: vec![
            say::only_where_both_sides_reach().to_owned(),
            say::nut_washer_and_locking().to_owned(),
        ],
        ..same_hole(hole, original, hole.depth.mm())
    }
}

/// A bushing, plug, bung or reducer whose maker names drill and tap.
pub(super) fn by_its_kit(way: Way, hole: &DamagedHole, original: &Original) -> Plan {
    let tap = match way {
        Way::PlugBushing => Some(say::bushing_kits_own_tap().to_owned()),
        Way::OversizePlug => Some(say::oversize_plugs_own_tap().to_owned()),
        Way::NextPipeSize => Some(say::taper_tap_of_next_pipe_size().to_owned()),
        _ => None,
    };
    let notes: &[&str] = match way {
        Way::PlugBushing if hole.holds == Some(Holds::SparkPlug) => &[
            say::bushing_with_its_own_seat(),
            say::chips_go_into_the_cylinder(),
        ],
        Way::PlugBushing => &[say::bushing_seals_by_its_collar()],
        Way::OversizePlug => &[say::cuts_its_own_thread_once()],
        Way::WeldedBung => &[say::battery_off_before_welding()],
        Way::NextPipeSize => &[say::nothing_is_narrowed()],
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
        notes: vec![say::only_a_repair_the_maker_describes().to_owned()],
        ..same_hole(hole, original, hole.engaged_mm)
    }
}

/// What is done.
pub(super) fn steps(way: Way, hole: &DamagedHole, plan: &Plan) -> Vec<Step> {
    match way {
        Way::BoltAndNut => steps::bolt_and_nut(plan.drill.as_ref()),
        Way::PlugBushing if hole.holds == Some(Holds::SparkPlug) => steps::plug_bushing(),
        Way::PlugBushing => {
            let mut steps = steps::said(&[
                say::close_what_lies_behind(),
                say::ream_tap_and_face(),
                say::turn_the_sensor_bushing_in(),
            ]);
            if let Some(last) = steps.last_mut() {
                last.fits = true;
            }
            steps
        }
        Way::OversizePlug => steps::said(&[
            say::clean_the_boss(),
            say::cut_with_the_oversize_plug(),
            say::flush_the_chips_out(),
        ]),
        Way::WeldedBung => steps::said(&[
            say::cut_the_old_bung_out(),
            say::weld_a_bung_in(),
            say::chase_fit_and_look_for_leaks(),
        ]),
        Way::NextPipeSize => steps::said(&[
            say::close_behind_with_grease(),
            say::drill_and_tap_next_pipe_size(),
            say::seal_and_turn_the_reducer_in(),
        ]),
        Way::MakersPart => steps::said(&[
            say::fit_the_makers_new_part(),
            say::prove_it_as_the_maker_says(),
        ]),
        Way::MakersRepair => steps::said(&[
            say::find_the_repair(),
            say::do_it_to_the_letter(),
            say::prove_it_as_the_maker_says(),
        ]),
        _ => Vec::new(),
    }
}

/// The millimetres of a passage, for a step.
pub(super) fn passage(size_mm: f64) -> String {
    trimmed(size_mm, 1)
}
