//! The rungs of the ladder, one function each.

use super::{DrillStep, ExtractionWay, Rung, Stands, Stub};
use crate::figures::shown;
use crate::holds::Holds;
use crate::parent::Family;
use crate::phrases::extract as say;
use crate::repair::DrillRoom;

/// A margin under the least breaking torque of a new bolt.
const SAFE_SHARE: f64 = 0.8;

fn rung(way: ExtractionWay, stop_when: &'static str) -> Rung {
    Rung {
        rank: 0,
        way,
        open: true,
        reason: None,
        how: Vec::new(),
        drills: Vec::new(),
        most_torque_nm: None,
        stop_when,
        left_inside: Vec::new(),
    }
}

fn closed(mut rung: Rung, reason: impl Into<String>) -> Rung {
    rung.open = false;
    rung.reason = Some(reason.into());
    rung
}

fn words(how: &[&str]) -> Vec<String> {
    how.iter().map(|&step| step.to_owned()).collect()
}

/// Exhaust studs want heat first, and the nickel compound after.
fn exhaust(stub: &Stub, mut rung: Rung) -> Rung {
    if stub.holds == Some(Holds::Exhaust) {
        rung.how
            .insert(0, say::heat_the_boss_not_the_stud().to_owned());
        rung.how
            .push(say::new_stud_with_nickel_compound().to_owned());
    }
    rung
}

pub(super) fn grip(stub: &Stub, breaking_nm: Option<f64>) -> Rung {
    let warm = if stub.parent.family == Family::Magnesium {
        say::no_flame_on_magnesium()
    } else {
        say::warm_the_part_where_safe()
    };
    let rung = Rung {
        how: words(&[
            say::soak_and_take_oil_out_again(),
            warm,
            say::stud_puller_to_and_fro(),
        ]),
        most_torque_nm: breaking_nm.map(|torque| SAFE_SHARE * torque),
        ..rung(ExtractionWay::Grip, say::twists_at_the_root())
    };
    let rung = exhaust(stub, rung);
    let least = 0.8 * stub.thread.diameter_mm();
    match stub.stands {
        Stands::Proud { by_mm } if by_mm >= least => rung,
        Stands::Proud { by_mm } => closed(
            rung,
            say::stands_proud_too_little(shown(by_mm, 1, "mm"), shown(least, 1, "mm")),
        ),
        Stands::Flush | Stands::Below { .. } => closed(rung, say::nothing_stands_proud()),
    }
}

pub(super) fn weld(stub: &Stub, breaking_nm: Option<f64>) -> Rung {
    let rung = Rung {
        how: words(&[
            say::nut_one_size_up_welded(),
            say::let_it_cool_heat_does_the_work(),
            say::to_and_fro_by_small_angles(),
        ]),
        most_torque_nm: breaking_nm.map(|torque| SAFE_SHARE * torque),
        left_inside: vec![say::weld_spatter()],
        ..rung(ExtractionWay::WeldNut, say::two_nuts_torn_off())
    };
    let rung = exhaust(stub, rung);
    let deepest = stub.thread.diameter_mm() / 2.0;
    match stub.stands {
        _ if !stub.room_to_weld => closed(rung, say::no_room_to_weld()),
        _ if stub.parent.family == Family::Magnesium => {
            closed(rung, say::no_welding_on_magnesium())
        }
        Stands::Below { by_mm } if by_mm > deepest => {
            closed(rung, say::weld_bridges_to_the_part(shown(by_mm, 1, "mm")))
        }
        _ => rung,
    }
}

/// Drills that turn the stub out as they bite: against its own hand.
pub(super) fn left_hand(stub: &Stub, drills: &[DrillStep]) -> Rung {
    let (way, turns) = if stub.thread.is_left_hand() {
        (
            ExtractionWay::RightHandDrill,
            say::right_hand_drills_forward(),
        )
    } else {
        (
            ExtractionWay::LeftHandDrill,
            say::left_hand_drills_in_reverse(),
        )
    };
    let rung = Rung {
        how: words(&[say::centre_the_stub(), turns]),
        drills: drills.to_vec(),
        left_inside: vec![say::chips()],
        ..rung(way, say::drill_runs_off_the_axis())
    };
    drillable(rung, stub, drills)
}

pub(super) fn pick_out(stub: &Stub, drills: &[DrillStep]) -> Rung {
    let rung = Rung {
        how: words(&[
            say::up_to_the_largest_drill(),
            say::fold_the_shell_inwards(),
            say::run_a_chaser_through(),
        ]),
        drills: drills.last().cloned().into_iter().collect(),
        left_inside: vec![say::chips(), say::thread_wire()],
        ..rung(ExtractionWay::PickOut, say::parent_metal_shows())
    };
    drillable(rung, stub, drills)
}

pub(super) fn extractor(stub: &Stub, drills: &[DrillStep]) -> Rung {
    let smallest = drills.first();
    let rung = Rung {
        how: words(&[
            say::only_for_a_stub_that_turns_freely(),
            if stub.thread.is_left_hand() {
                say::extractor_for_left_hand_threads()
            } else {
                say::straight_fluted_one()
            },
        ]),
        drills: smallest.cloned().into_iter().collect(),
        most_torque_nm: smallest
            .and_then(|step| step.stub_bears_nm.map(|torque| SAFE_SHARE * torque)),
        ..rung(ExtractionWay::TaperedExtractor, say::it_creaks())
    };
    drillable(rung, stub, drills)
}

pub(super) fn drill_for_repair(stub: &Stub) -> Rung {
    let rung = Rung {
        how: words(&[say::give_the_thread_up()]),
        left_inside: vec![say::chips()],
        ..rung(ExtractionWay::DrillForRepair, say::wall_does_not_allow_it())
    };
    match stub.drill_room {
        _ if stub.holds.is_some_and(Holds::hurts) => closed(rung, say::takes_the_makers_part()),
        DrillRoom::Straight => rung,
        DrillRoom::None => closed(rung, say::no_drill_in_line()),
    }
}

pub(super) fn send_out() -> Rung {
    Rung {
        how: words(&[say::spark_erosion(), say::on_the_machine_shops_price()]),
        ..rung(ExtractionWay::SendOut, say::price_passes_a_new_part())
    }
}

fn drillable(rung: Rung, stub: &Stub, drills: &[DrillStep]) -> Rung {
    if stub.drill_room == DrillRoom::None {
        return closed(rung, say::no_drill_in_line());
    }
    if drills.is_empty() {
        return closed(rung, say::no_drill_spares_the_thread());
    }
    rung
}
