//! Damaged holes, ranked as a good machinist would rank them, each with its reason.

#![allow(clippy::unwrap_used, reason = "a test fails by panicking")]

use calculators::threads::ask::{RepairQuestion, repair};
use fastener::repair::{Planning, Reason, RepairOption, Repairs, Way};
use fastener::section::{RingKind, after, before};

/// The oil-cooler housing: bolt 6 snapped, its thread lost, blind in an aluminium boss.
const SNAG: RepairQuestion = RepairQuestion {
    thread: "M8x75",
    joint: Some("housing"),
    class: Some("8.8"),
    bolt_length: None,
    engaged: "18 mm",
    blind: Some("26 mm"),
    through: None,
    boss: Some("19 mm"),
    wall: None,
    metal: "aluminium",
    damage: Some("stripped"),
    torn: None,
    torque: Some("22 Nm"),
    condition: None,
    head: None,
    seat: None,
    other: None,
    other_hole: None,
    no_drill_room: false,
    tilt: None,
};

fn ranked(question: &RepairQuestion) -> Repairs {
    repair(question, &Planning::default()).unwrap().repairs
}

fn of(repairs: &Repairs, way: Way) -> &RepairOption {
    repairs
        .options
        .iter()
        .find(|option| option.way == way)
        .unwrap()
}

/// The ways that hold, best first.
fn holding(repairs: &Repairs) -> Vec<Way> {
    repairs
        .options
        .iter()
        .filter(|option| option.holds)
        .map(|option| option.way)
        .collect()
}

#[test]
fn the_snag_ranks_a_wire_insert_first_and_an_oversize_thread_lower() {
    let repairs = ranked(&SNAG);
    let insert = &repairs.options[0];
    assert_eq!(insert.way, Way::WireInsert);
    assert_eq!(insert.drill.as_ref().unwrap().name, "8.4 mm");
    assert_eq!(insert.tap.as_deref(), Some("M8x1.25 insert tap"));
    assert_eq!(insert.bolt, "M8x75");
    assert_eq!(insert.torque_nm, Some(22.0));
    assert_eq!(insert.clamp_ratio, Some(1.0));
    assert_eq!(insert.insert_mm, Some(16.0));
    assert_eq!(insert.other_hole_mm, None);
    assert!(insert.left_inside.contains(&"insert tang") && insert.left_inside.contains(&"chips"));
    let oversize = of(&repairs, Way::Oversize);
    assert!(oversize.holds && oversize.rank > insert.rank);
    assert_eq!(oversize.bolt, "M10x75");
    assert_eq!(oversize.other_hole_mm, Some(11.0));
    let torque_nm = oversize.torque_nm.unwrap();
    assert!((26.5..27.5).contains(&torque_nm), "{torque_nm}");
    assert!(matches!(
        of(&repairs, Way::ChaseThread).reasons[..],
        [Reason::ThreadIsGone { .. }]
    ));
    assert!(matches!(
        of(&repairs, Way::LongerBolt).reasons[..],
        [Reason::NoSoundThread { .. }]
    ));
}

/// The extraction of the stub (15 to 30 minutes) and the insert make the 40 to 90 of the order.
#[test]
fn the_snag_costs_what_was_told_to_the_customer() {
    let repairs = ranked(&SNAG);
    let minutes = repairs.options[0].minutes.unwrap();
    assert_eq!(
        (
            minutes.low() + 15.0,
            minutes.mid() + 20.0,
            minutes.high() + 30.0
        ),
        (40.0, 55.0, 90.0)
    );
    assert_eq!(repairs.options[0].cost.unwrap().mid(), 14.0);
}

/// Dirt and a bruised first turn: the metal is there, so nothing is drilled.
#[test]
fn a_scarred_thread_is_chased() {
    let repairs = ranked(&RepairQuestion {
        damage: Some("scarred"),
        ..SNAG
    });
    assert_eq!(repairs.options[0].way, Way::ChaseThread);
}

/// Boss of 13 mm round an M8: an insert would leave 1.7 mm, a larger thread 1.5. Nothing is left
/// but a new housing.
#[test]
fn a_thin_wall_takes_no_larger_hole() {
    let repairs = ranked(&RepairQuestion {
        boss: Some("13 mm"),
        ..SNAG
    });
    assert_eq!(holding(&repairs), [Way::NewPart]);
    for way in [Way::WireInsert, Way::SolidBushing, Way::Oversize] {
        assert!(
            matches!(of(&repairs, way).reasons[..], [Reason::ThinWall { .. }]),
            "{way:?}"
        );
    }
}

/// A boss of 16 mm bears an insert, but not a bushing of 12 mm outside, which would leave 2.
#[test]
fn a_middling_wall_takes_an_insert_and_no_bushing() {
    let repairs = ranked(&RepairQuestion {
        boss: Some("16 mm"),
        ..SNAG
    });
    assert_eq!(holding(&repairs)[0], Way::WireInsert);
    assert!(!holding(&repairs).contains(&Way::SolidBushing));
}

/// The sleeve in a plastic cover takes the clamp: drilled open it is gone, so no larger bolt.
#[test]
fn a_plastic_part_with_a_limiter_is_never_opened() {
    let repairs = ranked(&RepairQuestion {
        other: Some("limiter"),
        ..SNAG
    });
    assert_eq!(repairs.options[0].way, Way::WireInsert);
    let reasons = &of(&repairs, Way::Oversize).reasons;
    assert_eq!(reasons[..], [Reason::OtherPartMayNotGrow { limiter: true }]);
    assert!(
        of(&repairs, Way::Oversize).steps.is_empty(),
        "no steps for what does not hold"
    );
}

/// A through hole with the first quarter torn and thread beyond the bolt's end: a bolt that
/// reaches through needs no drill at all, and an insert is still open afterwards.
#[test]
fn a_through_hole_with_sound_thread_behind_takes_a_longer_bolt() {
    let repairs = ranked(&RepairQuestion {
        blind: None,
        through: Some("30 mm"),
        torn: Some("13 mm"),
        ..SNAG
    });
    assert_eq!(repairs.options[0].way, Way::LongerBolt);
    assert_eq!(repairs.options[0].bolt, "M8x90");
}

/// The same tear in a hole that ends a few millimetres below the bolt: the longer bolt would bottom
/// before it clamps.
#[test]
fn a_longer_bolt_must_not_bottom() {
    let repairs = ranked(&RepairQuestion {
        blind: Some("22 mm"),
        ..SNAG
    });
    let reasons = &of(&repairs, Way::LongerBolt).reasons;
    assert!(
        reasons
            .iter()
            .any(|reason| matches!(reason, Reason::Bottoms { .. })),
        "{reasons:?}"
    );
}

/// 10 mm of depth for an M8: the insert of one diameter and the lead of its tap do not go in, and
/// a larger thread would have less than 0.8 of its diameter.
#[test]
fn a_shallow_hole_takes_no_insert() {
    let repairs = ranked(&RepairQuestion {
        engaged: "8 mm",
        blind: Some("10 mm"),
        torque: Some("10 Nm"),
        ..SNAG
    });
    assert_eq!(holding(&repairs), [Way::NewPart]);
    assert!(matches!(
        of(&repairs, Way::WireInsert).reasons[0],
        Reason::Shallow { .. }
    ));
    assert!(matches!(
        of(&repairs, Way::Oversize).reasons[0],
        Reason::Shallow { .. }
    ));
}

/// The same M8 in grey iron: iron bears more, but the insert still leaves bolt, wrench, torque and
/// the other part as they were, so it stays first; the margin is higher than in aluminium.
#[test]
fn in_iron_the_insert_is_still_first_and_its_margin_higher() {
    let repairs = ranked(&RepairQuestion {
        metal: "grey iron class 30",
        ..SNAG
    });
    assert_eq!(repairs.options[0].way, Way::WireInsert);
    let iron = repairs.options[0].strip_margin.unwrap();
    assert!(iron > ranked(&SNAG).options[0].strip_margin.unwrap());
}

/// Behind a frame rail: a drill that cannot be held in line ruins the hole, so the part comes off.
#[test]
fn without_room_for_a_drill_nothing_is_drilled() {
    let repairs = ranked(&RepairQuestion {
        no_drill_room: true,
        ..SNAG
    });
    assert_eq!(holding(&repairs), [Way::NewPart]);
    for way in [Way::WireInsert, Way::SolidBushing, Way::Oversize] {
        assert!(
            of(&repairs, way).reasons.contains(&Reason::NoRoomForTools),
            "{way:?}"
        );
    }
}

/// A spot face of 13 mm: the head of an M10 (14.6 mm) would stand on its edge.
#[test]
fn a_larger_head_needs_its_seat() {
    let repairs = ranked(&RepairQuestion {
        seat: Some("13 mm"),
        ..SNAG
    });
    assert!(matches!(
        of(&repairs, Way::Oversize).reasons[..],
        [Reason::HeadTooLarge { .. }]
    ));
    assert_eq!(repairs.options[0].way, Way::WireInsert);
}

/// An M6 cover screw in a valve cover of magnesium, 9 N·m: same answer as aluminium, on its own
/// sizes.
#[test]
fn a_small_screw_in_magnesium_takes_an_insert() {
    let repairs = ranked(&RepairQuestion {
        thread: "M6x25",
        engaged: "12 mm",
        blind: Some("18 mm"),
        boss: Some("13 mm"),
        metal: "magnesium",
        torque: Some("9 Nm"),
        ..SNAG
    });
    assert_eq!(repairs.options[0].way, Way::WireInsert);
    assert_eq!(repairs.options[0].drill.as_ref().unwrap().name, "6.3 mm");
}

/// A 5/16-18 grade 5 bolt: the inch insert keeps the inch bolt; oversize is 3/8-16.
#[test]
fn an_inch_hole_stays_inch() {
    let repairs = ranked(&RepairQuestion {
        thread: "5/16-18",
        class: Some("grade 5"),
        bolt_length: Some("1.5 in"),
        engaged: "5/8 in",
        blind: Some("1 in"),
        boss: Some("3/4 in"),
        torque: Some("17 lb-ft"),
        ..SNAG
    });
    assert_eq!(repairs.options[0].way, Way::WireInsert);
    assert_eq!(repairs.options[0].drill.as_ref().unwrap().name, "Q");
    assert_eq!(
        of(&repairs, Way::Oversize).tap.as_deref(),
        Some("3/8-16 UNC")
    );
}

/// A thread torn 5 mm deep of 20 in aluminium: the 15 mm below still carry nearly two diameters,
/// so cleaning it is enough.
#[test]
fn a_thread_torn_only_at_its_mouth_is_cleaned() {
    let repairs = ranked(&RepairQuestion {
        engaged: "20 mm",
        blind: Some("28 mm"),
        torn: Some("5 mm"),
        ..SNAG
    });
    assert_eq!(repairs.options[0].way, Way::ChaseThread);
    assert_eq!(repairs.options[0].engaged_mm, 15.0);
}

/// A shop that weighs money above all still gets nothing that does not hold, but may put the larger
/// thread first.
#[test]
fn the_weights_are_the_shops() {
    let mut planning = Planning::default();
    planning.weights.cost = 5.0;
    planning.weights.reversibility = 0.0;
    let repairs = repair(&SNAG, &planning).unwrap().repairs;
    assert_eq!(repairs.options[0].way, Way::Oversize);
    assert!(repairs.options[0].holds);
}

/// No torque in the map: none is made up, and the margin is against what the bolt could carry.
#[test]
fn no_torque_is_invented() {
    let repairs = ranked(&RepairQuestion {
        torque: None,
        ..SNAG
    });
    assert!(repairs.original_clamp_n.is_none());
    assert!(
        repairs
            .notes
            .iter()
            .any(|note| note.contains("not a specification"))
    );
    for option in &repairs.options {
        assert_eq!(
            (option.torque_nm, option.clamp_ratio),
            (None, None),
            "{:?}",
            option.way
        );
    }
    assert_eq!(repairs.options[0].way, Way::WireInsert);
    assert!(repairs.options[0].strip_margin.is_some());
}

/// A wall that nobody measured is not judged; the least that is needed is said instead.
#[test]
fn an_unmeasured_wall_stays_unknown() {
    let repairs = ranked(&RepairQuestion { boss: None, ..SNAG });
    let insert = &repairs.options[0];
    assert_eq!((insert.way, insert.wall_left_mm), (Way::WireInsert, None));
    assert!(
        insert
            .notes
            .iter()
            .any(|note| note.contains("Measure the wall"))
    );
}

/// A locking insert takes torque to turn: it is added, or the clamp would be short.
#[test]
fn a_locking_insert_adds_its_running_torque() {
    let planning = Planning {
        locking_insert_nm: 3.0,
        ..Planning::default()
    };
    let repairs = repair(&SNAG, &planning).unwrap().repairs;
    assert_eq!(of(&repairs, Way::WireInsert).torque_nm, Some(25.0));
}

/// A torque that would strip any thread of that length is no repair's fault: even a new part
/// does not bear it.
#[test]
fn nothing_holds_a_clamp_that_the_thread_cannot_bear() {
    let repairs = ranked(&RepairQuestion {
        thread: "M8x30",
        class: Some("12.9"),
        engaged: "4 mm",
        blind: Some("30 mm"),
        torque: Some("45 Nm"),
        ..SNAG
    });
    assert!(
        of(&repairs, Way::NewPart)
            .reasons
            .iter()
            .any(|reason| matches!(reason, Reason::Strips { .. }))
    );
}

/// A wall of 5.5 mm beside an M8 is a boss of 19 mm.
#[test]
fn a_wall_says_the_same_as_a_boss() {
    let by_wall = ranked(&RepairQuestion {
        boss: None,
        wall: Some("5.5 mm"),
        ..SNAG
    });
    assert_eq!(by_wall, ranked(&SNAG));
}

/// The drawing of the snag carries the sizes that the repair was judged by.
#[test]
fn the_section_shows_what_was_judged() {
    let answer = repair(&SNAG, &Planning::default()).unwrap();
    let insert = &answer.repairs.options[0];
    let drawn = after(&answer.hole, insert);
    let measure = |label: &str| {
        let found = drawn.measures.iter().find(|measure| measure.label == label);
        found.unwrap_or_else(|| panic!("{label}")).value_mm
    };
    assert_eq!(measure("wall left"), insert.wall_left_mm.unwrap());
    assert_eq!(measure("insert"), 16.0);
    assert_eq!(measure("hole depth"), 26.0);
    let ring = drawn
        .rings
        .iter()
        .find(|ring| ring.what == RingKind::NewThread)
        .unwrap();
    assert_eq!(ring.outer_mm, insert.hole_major_mm.unwrap());
    let torn = before(&answer.hole);
    let lost = torn
        .rings
        .iter()
        .find(|ring| ring.what == RingKind::LostThread)
        .unwrap();
    assert_eq!(lost.bottom_mm, 18.0);
}

#[test]
fn contradictions_are_named() {
    let refused = |question: RepairQuestion| repair(&question, &Planning::default()).unwrap_err();
    assert_eq!(
        refused(RepairQuestion {
            engaged: "40 mm",
            ..SNAG
        })
        .field,
        "thread-repair"
    );
    assert_eq!(
        refused(RepairQuestion {
            engaged: "18",
            ..SNAG
        })
        .field,
        "engaged"
    );
    assert_eq!(
        refused(RepairQuestion {
            metal: "cheese",
            ..SNAG
        })
        .field,
        "in"
    );
    assert_eq!(
        refused(RepairQuestion {
            through: Some("30 mm"),
            ..SNAG
        })
        .field,
        "blind"
    );
    assert!(
        refused(RepairQuestion {
            metal: "plastic",
            ..SNAG
        })
        .what
        .contains("plastic")
    );
}

/// Whatever a step leaves inside, a later step brings out: nothing stays in the vehicle.
#[test]
fn what_the_steps_put_in_they_take_out() {
    let repairs = ranked(&SNAG);
    for option in repairs.options.iter().filter(|option| option.holds) {
        let mut inside: std::collections::BTreeSet<&str> = std::collections::BTreeSet::new();
        for step in &option.steps {
            inside.extend(step.puts_in.iter().copied());
            for out in step.takes_out {
                assert!(inside.remove(out), "{:?}: {out} was never in", option.way);
            }
        }
        assert!(inside.is_empty(), "{:?}: {inside:?}", option.way);
        let named: std::collections::BTreeSet<_> =
            option.steps.iter().flat_map(|step| step.puts_in).collect();
        assert_eq!(
            named,
            option.left_inside.iter().collect(),
            "{:?}",
            option.way
        );
        assert!(option.steps.last().unwrap().tightens);
    }
}
