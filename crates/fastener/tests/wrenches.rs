//! Levers, torque wrenches, pulleys and patterns.

#![allow(clippy::unwrap_used, reason = "a test fails by panicking")]

use fastener::head::almost_fit;
use fastener::pattern::{Layout, PatternTrouble, passes_nm, pattern};
use fastener::pulley::{HoldingBelt, PulleyBolt, held};
use fastener::wrench::{Reads, doubled_lever_mm, hand_force_n, reads, setting};

/// Across the wrench nothing is corrected; folded back the wrench is set higher.
#[test]
fn the_angle_of_an_adapter_counts() {
    let set = |angle| setting(100.0, 300.0, 60.0, angle).unwrap().set_to_nm;
    assert!((set(90.0) - 100.0).abs() < 1e-9);
    assert!((set(180.0) - 125.0).abs() < 1e-9);
    assert!(set(0.0) < 100.0);
    assert!(
        setting(100.0, 60.0, 60.0, 180.0).is_err(),
        "no lever is left"
    );
}

#[test]
fn a_doubled_wrench_takes_its_share_of_the_force() {
    let lever = doubled_lever_mm(200.0, 200.0, 0.0).unwrap();
    let single = hand_force_n(80.0, 200.0).unwrap();
    assert!((hand_force_n(80.0, lever).unwrap() - single / 2.0).abs() < 1e-9);
    assert!(doubled_lever_mm(200.0, 100.0, 150.0).is_err());
}

#[test]
fn a_torque_wrench_has_two_ends() {
    assert_eq!(reads(210.0, 200.0), Reads::TooHigh { most_nm: 200.0 });
    assert_eq!(reads(40.0, 200.0), Reads::Well);
}

/// Steering-pump pulley: three M8 at 25 N·m, ribs half round it. 400 N in each run hold it,
/// 100 N do not; nearly all of the bolt's torque turns the pulley either way.
#[test]
fn a_belt_holds_a_pulley_or_not() {
    let bolt = PulleyBolt {
        bolt_nm: 25.0,
        bolt_circle_radius_mm: 28.0,
        wrench_mm: 250.0,
    };
    let belt = HoldingBelt {
        pulley_radius_mm: 70.0,
        tension_n: 400.0,
        wrap_deg: 160.0,
        groove_friction: 1.0,
    };
    let tight = held(bolt, belt).unwrap();
    assert!(tight.holds);
    assert!(tight.least_turning_nm > 0.85 * 25.0 && tight.most_turning_nm < 1.15 * 25.0);
    let slack = held(
        bolt,
        HoldingBelt {
            tension_n: 100.0,
            ..belt
        },
    )
    .unwrap();
    assert!(!slack.holds);
    assert!(
        held(
            bolt,
            HoldingBelt {
                tension_n: f64::NAN,
                ..belt
            }
        )
        .is_err()
    );
}

#[test]
fn circles_go_across() {
    let sequence = |bolts| pattern(Layout::Circle { bolts }).unwrap().sequence;
    assert_eq!(sequence(4), [1, 3, 2, 4]);
    assert_eq!(sequence(6), [1, 4, 2, 5, 3, 6]);
    assert_eq!(sequence(7), [1, 4, 7, 3, 6, 2, 5]);
    assert_eq!(
        pattern(Layout::Circle { bolts: 1 }),
        Err(PatternTrouble::Count { bolts: 1, most: 64 })
    );
}

/// A cylinder head of two rows of five: from the middle bolts outwards, the ends last.
#[test]
fn rows_go_from_the_middle_outwards() {
    let found = pattern(Layout::TwoRows { columns: 5 }).unwrap();
    assert_eq!(found.sequence[..2], [3, 8]);
    let mut last: Vec<usize> = found.sequence[6..].to_vec();
    last.sort_unstable();
    assert_eq!(last, [1, 5, 6, 10]);
}

/// An oil pan of 4 by 3: the middles of the sides before the corners.
#[test]
fn a_rectangle_ends_in_its_corners() {
    let found = pattern(Layout::Rectangle {
        columns: 4,
        rows: 3,
    })
    .unwrap();
    assert_eq!(found.places.len(), 10);
    let mut last: Vec<usize> = found.sequence[6..].to_vec();
    last.sort_unstable();
    assert_eq!(last, [1, 4, 6, 9]);
}

#[test]
fn passes_rise_to_the_final_torque() {
    assert_eq!(passes_nm(22.0, &[0.45, 1.0]).unwrap(), [9.9, 22.0]);
    assert_eq!(
        passes_nm(22.0, &[1.0, 0.5]),
        Err(PatternTrouble::Passes { nth: 2 })
    );
}

/// 12 mm on a 1/2 inch head does not go on; 13 mm goes on and rounds it off.
#[test]
fn wrenches_that_almost_fit_are_named_with_their_slack() {
    let near = almost_fit(12.7);
    assert_eq!(near[0].name, "13 mm");
    assert!(near.iter().all(|wrench| wrench.slack_mm.abs() <= 0.6));
}
