//! Stubs, and what a careful hand would try on each.

#![allow(clippy::unwrap_used, reason = "a test fails by panicking")]

use calculators::threads::ask::{ExtractQuestion, extract};
use fastener::extract::{Extraction, ExtractionWay, Rung};

/// The housing bolt: 2 mm below the face, blind, no room to weld.
const STUB: ExtractQuestion = ExtractQuestion {
    thread: "M8",
    joint: Some("housing"),
    class: Some("8.8"),
    stands: "below",
    by: Some("2 mm"),
    engaged: "18 mm",
    blind: Some("26 mm"),
    through: None,
    metal: "aluminium",
    room_to_weld: false,
    no_drill_room: false,
    tilt: None,
};

fn of(found: &Extraction, way: ExtractionWay) -> &Rung {
    found.ladder.iter().find(|rung| rung.way == way).unwrap()
}

fn first_open(question: &ExtractQuestion) -> ExtractionWay {
    let found = extract(question).unwrap();
    found.ladder.iter().find(|rung| rung.open).unwrap().way
}

#[test]
fn the_housing_bolt_gets_left_hand_drills_from_4_to_6() {
    let found = extract(&STUB).unwrap();
    let drills: Vec<f64> = of(&found, ExtractionWay::LeftHandDrill)
        .drills
        .iter()
        .map(|step| step.drill.diameter_mm)
        .collect();
    assert_eq!(drills, [4.0, 5.0, 6.0]);
    assert_eq!(first_open(&STUB), ExtractionWay::LeftHandDrill);
}

/// (6.647 - 6)/2 less 18 mm of half a degree: 0.32 - 0.16.
#[test]
fn off_centre_is_what_the_minor_diameter_leaves_less_the_tilt() {
    let found = extract(&STUB).unwrap();
    let last = of(&found, ExtractionWay::LeftHandDrill)
        .drills
        .last()
        .unwrap()
        .clone();
    assert!((last.centre_tolerance_mm - 0.166).abs() < 1e-3);
    let crooked = extract(&ExtractQuestion {
        tilt: Some("2 deg"),
        ..STUB
    })
    .unwrap();
    assert!(crooked.largest_drill.unwrap().diameter_mm < 6.0);
}

/// The larger the drill, the less the stub left around it bears.
#[test]
fn a_drilled_stub_bears_less_and_less() {
    let found = extract(&STUB).unwrap();
    let bears: Vec<f64> = of(&found, ExtractionWay::LeftHandDrill)
        .drills
        .iter()
        .map(|step| step.stub_bears_nm.unwrap())
        .collect();
    assert!(
        bears.windows(2).all(|pair| pair[1] < pair[0]) && bears[0] < 33.0,
        "{bears:?}"
    );
}

/// 10 mm proud of an M8 is enough for a stud puller, well under the torque that twists it off.
#[test]
fn a_stub_that_stands_proud_is_gripped_first() {
    let question = ExtractQuestion {
        stands: "proud",
        by: Some("10 mm"),
        ..STUB
    };
    assert_eq!(first_open(&question), ExtractionWay::Grip);
    let found = extract(&question).unwrap();
    assert!(of(&found, ExtractionWay::Grip).most_torque_nm.unwrap() < 33.0);
    let short = ExtractQuestion {
        stands: "proud",
        by: Some("2 mm"),
        ..STUB
    };
    assert_ne!(first_open(&short), ExtractionWay::Grip);
}

/// A nut welded on brings heat with it: flush, with room, it comes before any drill.
#[test]
fn a_flush_stub_with_room_gets_a_nut() {
    let question = ExtractQuestion {
        stands: "flush",
        by: None,
        room_to_weld: true,
        ..STUB
    };
    assert_eq!(first_open(&question), ExtractionWay::WeldNut);
    let deep = ExtractQuestion {
        stands: "below",
        by: Some("6 mm"),
        room_to_weld: true,
        ..STUB
    };
    assert_ne!(first_open(&deep), ExtractionWay::WeldNut);
    let magnesium = ExtractQuestion {
        metal: "magnesium",
        ..question
    };
    assert_ne!(first_open(&magnesium), ExtractionWay::WeldNut);
}

/// No run for a drill: it goes to spark erosion rather than being drilled crooked.
#[test]
fn without_room_it_is_sent_out() {
    assert_eq!(
        first_open(&ExtractQuestion {
            no_drill_room: true,
            ..STUB
        }),
        ExtractionWay::SendOut
    );
}

/// An M8 held 60 mm deep and drilled freehand at three degrees: no drill spares that thread.
#[test]
fn too_deep_and_too_crooked_spares_no_thread() {
    let question = ExtractQuestion {
        engaged: "60 mm",
        blind: Some("70 mm"),
        tilt: Some("3 deg"),
        ..STUB
    };
    assert_eq!(first_open(&question), ExtractionWay::DrillForRepair);
    assert!(extract(&question).unwrap().largest_drill.is_none());
}

#[test]
fn cautions_come_first_and_a_blind_hole_adds_its_own() {
    let blind = extract(&STUB).unwrap().cautions;
    assert!(blind[0].contains("Eye protection"));
    assert!(blind.iter().any(|caution| caution.contains("must be dry")));
    let through = ExtractQuestion {
        blind: None,
        through: Some("26 mm"),
        ..STUB
    };
    assert!(
        !extract(&through)
            .unwrap()
            .cautions
            .iter()
            .any(|caution| caution.contains("must be dry"))
    );
}

/// The standard says nothing of a class 5.6 stub, so neither is said here.
#[test]
fn no_breaking_torque_is_invented() {
    let found = extract(&ExtractQuestion {
        class: Some("5.6"),
        stands: "proud",
        by: Some("10 mm"),
        ..STUB
    })
    .unwrap();
    assert_eq!(of(&found, ExtractionWay::Grip).most_torque_nm, None);
}
