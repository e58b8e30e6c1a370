//! The rungs of the ladder, one function each.

use super::{DrillStep, ExtractionWay, Rung, Stands, Stub};
use crate::figures::shown;
use crate::holds::Holds;
use crate::parent::Family;
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
        rung.how.insert(
            0,
            "heat the boss around the stud, not the stud, and let it cool once or twice before turning".to_owned(),
        );
        rung.how.push(
            "a new stud and nut of the maker's grade, with the nickel compound that the maker names"
                .to_owned(),
        );
    }
    rung
}

pub(super) fn grip(stub: &Stub, breaking_nm: Option<f64>) -> Rung {
    let warm = if stub.parent.family == Family::Magnesium {
        "no flame on magnesium: hot air at most, and only warm to the hand"
    } else {
        "warm the part around it, not the stub, where heat is safe"
    };
    let rung = Rung {
        how: words(&[
            "soak with penetrating oil and wait; in a blind hole take the oil out again",
            warm,
            "stud puller or locking pliers, to and fro by small angles, oil between",
        ]),
        most_torque_nm: breaking_nm.map(|torque| SAFE_SHARE * torque),
        ..rung(
            ExtractionWay::Grip,
            "it twists without turning at the root, or the jaws slip a second time",
        )
    };
    let rung = exhaust(stub, rung);
    let least = 0.8 * stub.thread.diameter_mm();
    match stub.stands {
        Stands::Proud { by_mm } if by_mm >= least => rung,
        Stands::Proud { by_mm } => closed(
            rung,
            format!(
                "{} stand proud, a tool needs about {}",
                shown(by_mm, 1, "mm"),
                shown(least, 1, "mm")
            ),
        ),
        Stands::Flush | Stands::Below { .. } => closed(rung, "nothing stands proud to grip"),
    }
}

pub(super) fn weld(stub: &Stub, breaking_nm: Option<f64>) -> Rung {
    let rung = Rung {
        how: words(&[
            "a nut one size up over the stub, welded from inside outwards; steel does not stick to aluminium or iron beside it",
            "let it cool until it can be touched: the heat does the work",
            "to and fro by small angles, oil between",
        ]),
        most_torque_nm: breaking_nm.map(|torque| SAFE_SHARE * torque),
        left_inside: vec!["weld spatter"],
        ..rung(ExtractionWay::WeldNut, "two nuts have torn off")
    };
    let rung = exhaust(stub, rung);
    let deepest = stub.thread.diameter_mm() / 2.0;
    match stub.stands {
        _ if !stub.room_to_weld => {
            closed(rung, "no room to weld, or heat would hurt something near")
        }
        _ if stub.parent.family == Family::Magnesium => {
            closed(rung, "magnesium burns: no welding on it")
        }
        Stands::Below { by_mm } if by_mm > deepest => closed(
            rung,
            format!(
                "{} below the face the weld bridges to the part",
                shown(by_mm, 1, "mm")
            ),
        ),
        _ => rung,
    }
}

/// Drills that turn the stub out as they bite: against its own hand.
pub(super) fn left_hand(stub: &Stub, drills: &[DrillStep]) -> Rung {
    let (way, turns) = if stub.thread.is_left_hand() {
        (
            ExtractionWay::RightHandDrill,
            "ordinary right-hand drills, slow, running forward: it often walks out as the drill bites",
        )
    } else {
        (
            ExtractionWay::LeftHandDrill,
            "left-hand drills, slow, in reverse: it often walks out as the drill bites",
        )
    };
    let rung = Rung {
        how: words(&[
            "centre: file or grind the stub flat, a guide bush in the other part's hole or a turned one in the bore, then a punch",
            turns,
        ]),
        drills: drills.to_vec(),
        left_inside: vec!["chips"],
        ..rung(
            way,
            "the drill runs off the axis by more than is allowed at its step",
        )
    };
    drillable(rung, stub, drills)
}

pub(super) fn pick_out(stub: &Stub, drills: &[DrillStep]) -> Rung {
    let rung = Rung {
        how: words(&[
            "up to the largest drill that spares the thread",
            "fold the thin shell inwards with a pick and wind it out of the thread",
            "run a chaser through, then try a new bolt by hand",
        ]),
        drills: drills.last().cloned().into_iter().collect(),
        left_inside: vec!["chips", "thread wire"],
        ..rung(
            ExtractionWay::PickOut,
            "parent metal shows on one side: the thread is lost, repair it",
        )
    };
    drillable(rung, stub, drills)
}

pub(super) fn extractor(stub: &Stub, drills: &[DrillStep]) -> Rung {
    let smallest = drills.first();
    let rung = Rung {
        how: words(&[
            "only for a stub that turns freely: a tapered extractor spreads the stub into its thread",
            if stub.thread.is_left_hand() {
                "one made for left-hand threads: an ordinary one turns it further in"
            } else {
                "a straight, fluted one spreads it less"
            },
        ]),
        drills: smallest.cloned().into_iter().collect(),
        most_torque_nm: smallest
            .and_then(|step| step.stub_bears_nm.map(|torque| SAFE_SHARE * torque)),
        ..rung(
            ExtractionWay::TaperedExtractor,
            "it creaks: a broken one is too hard for any drill and must be sent out",
        )
    };
    drillable(rung, stub, drills)
}

pub(super) fn drill_for_repair(stub: &Stub) -> Rung {
    let rung = Rung {
        how: words(&[
            "give the thread up and drill for an insert or a bushing: see the thread repair",
        ]),
        left_inside: vec!["chips"],
        ..rung(
            ExtractionWay::DrillForRepair,
            "the wall or the depth does not allow it",
        )
    };
    match stub.drill_room {
        _ if stub.holds.is_some_and(Holds::hurts) => closed(
            rung,
            "what it holds takes the maker's part, or a repair that the maker approves",
        ),
        DrillRoom::Straight => rung,
        DrillRoom::None => closed(rung, NO_ROOM),
    }
}

pub(super) fn send_out() -> Rung {
    Rung {
        how: words(&[
            "spark erosion takes out a stub, a tap or an extractor without touching the thread",
            "on the machine shop's price and day, told to the customer first",
        ]),
        ..rung(
            ExtractionWay::SendOut,
            "the price of that passes the price of a new part",
        )
    }
}

const NO_ROOM: &str = "a drill cannot be held in line with the hole";

fn drillable(rung: Rung, stub: &Stub, drills: &[DrillStep]) -> Rung {
    if stub.drill_room == DrillRoom::None {
        return closed(rung, NO_ROOM);
    }
    if drills.is_empty() {
        return closed(
            rung,
            "with that tilt over that depth no drill spares the thread: use a guide bush",
        );
    }
    rung
}
