//! What must hold for any joint.

#![allow(clippy::unwrap_used, reason = "a test fails by panicking")]

use calculators::threads::ask::{self, ThreadQuestion};
use fastener::friction::{Condition, Finish, Lubrication};
use fastener::head::Head;
use fastener::parent;
use fastener::pattern::{Layout, pattern};
use fastener::repair::{
    Clamped, Damage, DamagedHole, Depth, DrillRoom, OtherPart, Planning, Way, repairs,
};
use fastener::section::{after, before};
use fastener::strip::stripping;
use fastener::torque::{Form, Friction, Joint, clamp_for_torque, torque_for_clamp, yield_clamp_n};
use fastener::{Class, Thread, designation};
use proptest::prelude::*;

fn threads() -> impl Strategy<Value = Thread> {
    prop::sample::select(vec![
        "M4", "M5", "M6", "M8", "M8x1", "M10", "M10x1.25", "M12", "M12x1.5", "M14", "M16",
        "1/4-20", "1/4-28", "5/16-18", "3/8-16", "7/16-20", "1/2-13",
    ])
    .prop_map(|written| designation::read_clamping(written).unwrap())
}

/// Metric classes from the weakest to the strongest.
const BY_STRENGTH: [Class; 9] = [
    Class::C4_6,
    Class::C4_8,
    Class::C5_6,
    Class::C5_8,
    Class::C6_8,
    Class::C8_8,
    Class::C9_8,
    Class::C10_9,
    Class::C12_9,
];

fn metals() -> impl Strategy<Value = &'static str> {
    prop::sample::select(vec![
        "aluminium",
        "A380",
        "6061-T6",
        "magnesium",
        "grey iron class 40",
        "steel",
    ])
}

fn conditions() -> impl Strategy<Value = Condition> {
    let finishes = prop::sample::select(vec![Finish::Plain, Finish::Zinc, Finish::Stainless]);
    let states = prop::sample::select(vec![
        Lubrication::Dry,
        Lubrication::Oiled,
        Lubrication::Paste,
    ]);
    (finishes, states).prop_map(|(finish, lubrication)| Condition {
        finish,
        lubrication,
    })
}

prop_compose! {
    /// Holes of any size, sense or not; some are refused, none may panic.
    fn holes()(
        thread in threads(),
        class in prop::option::of(prop::sample::select(Class::ALL.to_vec())),
        engaged in 1.0..40.0_f64,
        more in 0.0..30.0_f64,
        blind in any::<bool>(),
        boss in prop::option::of(8.0..60.0_f64),
        metal in metals(),
        torn in prop::option::of(0.0..1.0_f64),
        torque in prop::option::of(1.0..150.0_f64),
        condition in conditions(),
        other in prop::sample::select(vec![Clamped::Metal, Clamped::Plastic, Clamped::PlasticWithLimiter]),
        seat in prop::option::of(10.0..40.0_f64),
        room in prop::sample::select(vec![DrillRoom::Straight, DrillRoom::None]),
    ) -> DamagedHole {
        let length = engaged + more;
        DamagedHole {
            holds: Some(fastener::holds::Holds::Other),
            head: Head::plain(&thread),
            thread,
            class,
            bolt_length_mm: Some(engaged + 20.0),
            engaged_mm: engaged,
            depth: if blind { Depth::Blind { depth_mm: length } } else { Depth::Through { length_mm: length } },
            boss_mm: boss,
            parent: parent::named(metal).unwrap(),
            damage: torn.map_or(Damage::Scarred, |share| Damage::Stripped { from_face_mm: share * engaged }),
            torque_nm: torque,
            condition,
            seat_mm: seat,
            other: OtherPart { material: other, hole_mm: None },
            room,
            tilt_deg: 0.5,
        }
    }
}

proptest! {
    #[test]
    fn a_stronger_class_never_breaks_sooner(size in prop::sample::select(vec!["M4", "M6", "M8x1", "M10", "M16"])) {
        let thread = designation::read_clamping(size).unwrap();
        let loads: Vec<_> = BY_STRENGTH.iter().map(|class| class.loads(&thread).unwrap()).collect();
        for pair in loads.windows(2) {
            prop_assert!(pair[0].breaking_n <= pair[1].breaking_n);
        }
        for load in loads {
            let proof = load.proof_n.unwrap();
            // The standard rounds its loads up here and down there, by less than half a percent.
            prop_assert!(proof <= load.yield_n * 1.005 && load.yield_n <= load.breaking_n * 1.005);
        }
    }

    #[test]
    fn longer_engagement_never_strips_sooner(
        thread in threads(), metal in metals(), engaged in 0.5..40.0_f64, more in 0.0..40.0_f64,
    ) {
        let metal = parent::named(metal).unwrap();
        let class = if thread.name().starts_with('M') { Class::C8_8 } else { Class::Sae5 };
        let short = stripping(&thread, class, &metal, engaged).unwrap();
        let long = stripping(&thread, class, &metal, engaged + more).unwrap();
        prop_assert!(long.hole_thread_strips_n >= short.hole_thread_strips_n);
        prop_assert!(long.bolt_thread_strips_n >= short.bolt_thread_strips_n);
    }

    /// The length that lets the bolt break first does so, and a little less does not.
    #[test]
    fn the_length_needed_is_the_turning_point(thread in threads(), metal in metals()) {
        let metal = parent::named(metal).unwrap();
        let class = if thread.name().starts_with('M') { Class::C8_8 } else { Class::Sae5 };
        let needed = stripping(&thread, class, &metal, 10.0).unwrap().length_needed_mm;
        if let Some(needed) = needed {
            use fastener::strip::FailsFirst;
            let first = |engaged| stripping(&thread, class, &metal, engaged).unwrap().first;
            prop_assert_eq!(first(needed * 1.000_001), FailsFirst::Bolt);
            prop_assert_ne!(first(needed * 0.999), FailsFirst::Bolt);
        }
    }

    #[test]
    fn clamp_from_torque_and_back_is_the_identity(
        thread in threads(), thread_mu in 0.02..0.6_f64, head_mu in 0.02..0.6_f64, clamp in 1.0..200_000.0_f64,
        form in prop::sample::select(vec![Form::Motosh, Form::Iso16047, Form::Short { nut_factor: 0.2 }]),
    ) {
        let joint = Joint::standard(&thread, Head::plain(&thread)).unwrap();
        let friction = Friction { thread: thread_mu, head: head_mu };
        let terms = torque_for_clamp(&joint, friction, clamp, form);
        let back = clamp_for_torque(&joint, friction, terms.total_nm, form);
        prop_assert!((back / clamp - 1.0).abs() < 1e-12);
    }

    /// Twist takes its share of the strength: a bolt being tightened yields before one only pulled.
    #[test]
    fn friction_takes_from_what_a_bolt_bears(thread in threads(), low in 0.02..0.3_f64, more in 0.01..0.3_f64) {
        let area = thread.geometry().stress_area_mm2;
        let slick = yield_clamp_n(&thread, 640.0, low, 1.0);
        prop_assert!(slick < 640.0 * area);
        prop_assert!(yield_clamp_n(&thread, 640.0, low + more, 1.0) < slick);
    }

    /// What is said to hold keeps the original clamp and overloads neither bolt nor thread.
    #[test]
    fn a_repair_that_holds_keeps_the_clamp(hole in holes()) {
        let Ok(found) = repairs(&hole, &Planning::default()) else { return Ok(()) };
        for option in &found.options {
            prop_assert_eq!(option.holds, option.reasons.is_empty());
            prop_assert_eq!(option.torque_nm.is_some(), hole.torque_nm.is_some());
            if !option.holds {
                continue;
            }
            if let (Some(clamp), Some(original)) = (option.clamp_n, found.original_clamp_n) {
                prop_assert!(clamp.low() >= original.low() * (1.0 - 1e-12), "{option:?}");
                // What a nut bears is known with its class alone.
                let nut = option.way == Way::BoltAndNut && hole.class.is_none();
                prop_assert!(nut || Some(clamp.high()) <= option.thread_bears_n, "{option:?}");
                if let Some(bears) = option.bolt_bears_n {
                    prop_assert!(clamp.high() <= bears, "{option:?}");
                }
            }
            if let Some(left) = option.wall_left_mm {
                prop_assert!(left > 0.0);
            }
        }
    }

    /// Ranks are 1, 2, 3 …, holding ways first, and every way is there once.
    #[test]
    fn every_way_has_its_rank(hole in holes()) {
        let Ok(found) = repairs(&hole, &Planning::default()) else { return Ok(()) };
        let ranks: Vec<usize> = found.options.iter().map(|option| option.rank).collect();
        let all = Way::open_to(&hole).len();
        prop_assert_eq!(ranks, (1..=all).collect::<Vec<_>>());
        prop_assert!(found.options.windows(2).all(|pair| pair[0].holds || !pair[1].holds));
        let mut ways: Vec<_> = found.options.iter().map(|option| option.way).collect();
        ways.sort();
        ways.dedup();
        prop_assert_eq!(ways.len(), all);
    }

    /// A section can be drawn of any of them: rings have a height and a width.
    #[test]
    fn sections_are_drawable(hole in holes()) {
        let Ok(found) = repairs(&hole, &Planning::default()) else { return Ok(()) };
        let sections = found.options.iter().map(|option| after(&hole, option));
        for section in sections.chain([before(&hole)]) {
            for ring in &section.rings {
                prop_assert!(ring.bottom_mm >= ring.top_mm && ring.outer_mm > ring.inner_mm, "{ring:?}");
            }
        }
    }

    /// More wall, more depth: what held still holds.
    #[test]
    fn more_wall_never_closes_a_way(hole in holes(), more in 0.0..20.0_f64) {
        let Some(boss) = hole.boss_mm else { return Ok(()) };
        let Ok(narrow) = repairs(&hole, &Planning::default()) else { return Ok(()) };
        let wider = DamagedHole { boss_mm: Some(boss + more), ..hole };
        let wide = repairs(&wider, &Planning::default()).unwrap();
        for option in narrow.options.iter().filter(|option| option.holds) {
            prop_assert!(wide.options.iter().any(|other| other.way == option.way && other.holds));
        }
    }

    /// A pattern tightens every bolt once.
    #[test]
    fn patterns_leave_no_bolt_out(columns in 0_usize..20, rows in 0_usize..12, kind in 0_u8..3) {
        let layout = match kind {
            0 => Layout::Circle { bolts: columns },
            1 => Layout::TwoRows { columns },
            _ => Layout::Rectangle { columns, rows },
        };
        let Ok(found) = pattern(layout) else { return Ok(()) };
        let mut sequence = found.sequence.clone();
        sequence.sort_unstable();
        let all: Vec<usize> = found.places.iter().map(|place| place.position).collect();
        prop_assert_eq!(sequence, all);
    }

    #[test]
    fn any_text_is_read_or_refused(text in ".{0,40}") {
        let _ = designation::read(&text);
        let _ = Class::read(&text);
        let _ = parent::named(&text);
        let _ = Condition::read(&text);
    }

    /// Texts that look like threads reach further into the reader.
    #[test]
    fn near_threads_are_read_or_refused(text in "(m|M|#|no\\. ?|g|r|)[0-9/.,x -]{0,14}( ?(unc|UNF|npt|lh|6g|2A|in|mm))?") {
        if let Ok(found) = designation::read(&text) {
            let _ = ask::thread(&ThreadQuestion { thread: &text, class: Some("8.8"), ..Default::default() });
            prop_assert!(found.length_mm.is_none_or(|length| length.is_finite() && length >= 0.0));
        }
    }

    /// The name of a thread reads back as that thread.
    #[test]
    fn names_read_back(diameter in 10_u32..300, pitch in 20_u32..400) {
        let (diameter, pitch) = (f64::from(diameter) / 10.0, f64::from(pitch) / 100.0);
        if let Ok(thread) = Thread::metric(diameter, pitch) {
            prop_assert_eq!(designation::read_clamping(thread.name()).unwrap(), thread);
        }
    }
}
