//! What is owed, what waits, and the small questions; bad input says how to mend it.

#![allow(clippy::unwrap_used, reason = "a test fails by panicking")]

use fluids::{
    Amount, Amounts, Before, BrakeReading, BrakeVerdictKind, ChargeVerdict, Done, DotClass,
    EqualVerdict, FluidError, Kind, LevelSeen, LevelVerdict, Levels, May, Refrigerant, Sorts, Urea,
    Washer, Work, brake_reading, equal_amounts, level_at, refrigerant, sorts, standing, urea,
    washer,
};
use proptest::prelude::*;

fn all(kind: Kind) -> Vec<Work> {
    kind.steps().iter().map(|step| step.work).collect()
}

fn after(kind: Kind, works: Vec<Work>) -> fluids::Standing {
    standing(&Done {
        kind,
        works,
        second_person: true,
    })
}

/// All steps in sequence close every fluid; each left out opens it and holds up what it says.
#[test]
fn each_step_is_owed_until_it_is_done() {
    for kind in Kind::ALL {
        let closed = after(kind, all(kind));
        assert!(
            closed.closed && closed.waits.is_empty(),
            "{kind}: {:?}",
            closed.owed
        );
        for step in kind.steps() {
            let works = all(kind)
                .into_iter()
                .filter(|work| *work != step.work)
                .collect();
            let open = after(kind, works);
            assert!(!open.closed, "{kind} without {:?}", step.work);
            assert!(
                open.waits.contains(&step.before),
                "{kind} without {:?}",
                step.work
            );
            assert!(open.waits.contains(&Before::HandOver));
        }
        assert!(
            kind.steps().iter().any(|step| step.caution.is_some()),
            "{kind} warns of nothing"
        );
    }
}

/// The table of gates: what was done, and what then waits first.
#[test]
fn what_waits() {
    use Work::{
        Bled, CircuitsNamed, Filled, LevelSeen, Named, NegativeOff, NegativeOn, NoDrip, NoSmell,
        PedalHard, PedalTwice, PositiveOff, PositiveOn, Primed, Started, Stopped, Waited,
    };
    let cases: Vec<(Kind, Vec<Work>, Option<Before>)> = vec![
        // Oil has to be in before the engine starts.
        (Kind::EngineOil, vec![], Some(Before::Start)),
        (
            Kind::EngineOil,
            vec![Named, Work::Drained],
            Some(Before::Start),
        ),
        (
            Kind::EngineOil,
            vec![Named, Work::Drained, Filled],
            Some(Before::Road),
        ),
        (
            Kind::EngineOil,
            vec![
                Named,
                Work::Drained,
                Filled,
                Started,
                Stopped,
                Waited,
                LevelSeen,
            ],
            Some(Before::HandOver),
        ),
        // A level seen before the wait is seen again.
        (
            Kind::EngineOil,
            vec![
                Named,
                Work::Drained,
                Filled,
                LevelSeen,
                Started,
                Stopped,
                Waited,
            ],
            Some(Before::Road),
        ),
        // Brakes hold up the road until the pedal is hard, twice at full height.
        (
            Kind::Brake,
            vec![CircuitsNamed, Named, Filled, Bled],
            Some(Before::Start),
        ),
        (
            Kind::Brake,
            vec![
                CircuitsNamed,
                Named,
                Filled,
                Bled,
                PedalHard,
                LevelSeen,
                Work::LeaksLookedFor,
            ],
            Some(Before::Road),
        ),
        (
            Kind::Brake,
            vec![
                CircuitsNamed,
                Named,
                Filled,
                Bled,
                PedalHard,
                PedalTwice,
                LevelSeen,
                Work::LeaksLookedFor,
            ],
            None,
        ),
        // Bled again: the pedal is tried again.
        (
            Kind::Brake,
            vec![
                CircuitsNamed,
                Named,
                Filled,
                Bled,
                PedalHard,
                PedalTwice,
                LevelSeen,
                Work::LeaksLookedFor,
                Bled,
            ],
            Some(Before::Start),
        ),
        // Fuel: no smell and no drip before the start.
        (
            Kind::Fuel,
            vec![Filled, Primed, NoDrip],
            Some(Before::Start),
        ),
        (
            Kind::Fuel,
            vec![Filled, Primed, NoDrip, NoSmell],
            Some(Before::Road),
        ),
        // Terminals in their sequence.
        (
            Kind::Battery,
            vec![NegativeOff, PositiveOff],
            Some(Before::GoLive),
        ),
        (
            Kind::Battery,
            vec![NegativeOff, PositiveOff, NegativeOn, PositiveOn],
            Some(Before::Start),
        ),
        (
            Kind::Battery,
            vec![NegativeOff, PositiveOff, PositiveOn, NegativeOn],
            Some(Before::HandOver),
        ),
        (
            Kind::Battery,
            vec![PositiveOff, NegativeOff, PositiveOn, NegativeOn],
            Some(Before::Start),
        ),
        (Kind::Washer, vec![Filled], Some(Before::HandOver)),
        (
            Kind::Axle,
            vec![Named, Work::Drained, Work::FilledToPlug],
            Some(Before::Road),
        ),
    ];
    for (kind, works, first) in cases {
        let found = after(kind, works.clone());
        assert_eq!(
            found.waits.first().copied(),
            first,
            "{kind} after {works:?}: {:?}",
            found.owed
        );
    }
    // A brake closes only with a second person.
    let alone = standing(&Done {
        kind: Kind::Brake,
        works: all(Kind::Brake),
        second_person: false,
    });
    assert!(!alone.closed && alone.second_person_owed && alone.waits[0] == Before::Road);
    let alone = standing(&Done {
        kind: Kind::Washer,
        works: all(Kind::Washer),
        second_person: false,
    });
    assert!(alone.closed);
}

#[test]
fn a_work_done_too_early_is_owed_again() {
    let found = after(
        Kind::Fuel,
        vec![Work::NoDrip, Work::NoSmell, Work::Filled, Work::Primed],
    );
    let again: Vec<Work> = found
        .owed
        .iter()
        .filter(|owed| owed.again)
        .map(|owed| owed.step.work)
        .collect();
    assert_eq!(again, [Work::NoDrip, Work::NoSmell]);
    assert!(
        found
            .working
            .text()
            .contains("owed again: it was done too early")
    );
}

#[test]
fn brake_readings() {
    let read = |class, boils_c, makers_least_c| {
        brake_reading(&BrakeReading {
            class,
            boils_c,
            within_k: 5.0,
            makers_least_c,
        })
        .unwrap()
        .kind
    };
    let dot4 = Some(DotClass::Dot4);
    for (class, boils, makers, expected) in [
        (dot4, 240.0, None, BrakeVerdictKind::Dry),
        (dot4, 229.0, None, BrakeVerdictKind::TakenUpWater),
        (dot4, 160.0, None, BrakeVerdictKind::TakenUpWater),
        (dot4, 159.0, None, BrakeVerdictKind::TooNear),
        (dot4, 150.0, None, BrakeVerdictKind::TooNear),
        (dot4, 149.0, None, BrakeVerdictKind::Renew),
        // The maker asks for more than the standard.
        (dot4, 170.0, Some(180.0), BrakeVerdictKind::Renew),
        // And never for less.
        (dot4, 140.0, Some(120.0), BrakeVerdictKind::Renew),
        (
            Some(DotClass::Dot3),
            150.0,
            None,
            BrakeVerdictKind::TakenUpWater,
        ),
        (Some(DotClass::Dot51), 170.0, None, BrakeVerdictKind::Renew),
        (None, 300.0, None, BrakeVerdictKind::CannotTell),
    ] {
        assert_eq!(read(class, boils, makers), expected, "{class:?} {boils}");
    }
    let wrong = brake_reading(&BrakeReading {
        class: dot4,
        boils_c: f64::NAN,
        within_k: 5.0,
        makers_least_c: None,
    });
    assert!(
        wrong
            .unwrap_err()
            .to_string()
            .contains("read the tester again")
    );
    assert_eq!(DotClass::named("DOT 6"), None);
}

#[test]
fn litres_in_against_out() {
    let of = |litres, within_l| Amount {
        litres,
        within_l,
        temperature_c: None,
    };
    let say = |out, poured| {
        equal_amounts(&Amounts {
            out,
            poured,
            low_before_l: None,
        })
        .unwrap()
        .verdict
    };
    assert_eq!(
        say(vec![of(5.0, 0.3)], vec![of(4.9, 0.1)]),
        EqualVerdict::Equal
    );
    assert_eq!(
        say(vec![of(5.0, 0.3)], vec![of(2.0, 0.1), of(2.0, 0.1)]),
        EqualVerdict::Short
    );
    assert_eq!(
        say(vec![of(5.0, 0.3)], vec![of(6.0, 0.1)]),
        EqualVerdict::TooMuch
    );
    assert_eq!(
        say(vec![of(5.0, 0.8)], vec![of(4.9, 0.1)]),
        EqualVerdict::CannotTell
    );
    // Five litres drained at 90 degrees are 4.77 at 20.
    let hot = Amount {
        temperature_c: Some(90.0),
        ..of(5.0, 0.1)
    };
    let cold = Amount {
        temperature_c: Some(20.0),
        ..of(4.766, 0.05)
    };
    let found = equal_amounts(&Amounts {
        out: vec![hot],
        poured: vec![cold],
        low_before_l: None,
    })
    .unwrap();
    assert!(found.missing_l.abs() < 0.001 && found.verdict == EqualVerdict::Equal);
    let low = equal_amounts(&Amounts {
        out: vec![of(4.0, 0.1)],
        poured: vec![of(4.0, 0.1)],
        low_before_l: Some(0.6),
    });
    assert!((low.unwrap().missing_l - 0.6).abs() < 1e-9);
    let none = equal_amounts(&Amounts {
        out: vec![],
        poured: vec![],
        low_before_l: None,
    });
    assert!(
        none.unwrap_err()
            .to_string()
            .contains("measure what was drained")
    );
    assert!(
        equal_amounts(&Amounts {
            out: vec![of(-1.0, 0.1)],
            poured: vec![],
            low_before_l: None
        })
        .is_err()
    );
}

#[test]
fn levels_count_in_their_window() {
    let say = |seen, temperature_c, window_c| {
        level_at(&Levels {
            seen,
            temperature_c,
            window_c,
        })
        .map(|found| found.verdict)
    };
    let window = Some((35.0, 45.0));
    for (seen, at, window, expected) in [
        (LevelSeen::AtMark, Some(35.0), window, LevelVerdict::Closes),
        (LevelSeen::AtMark, Some(45.0), window, LevelVerdict::Closes),
        (LevelSeen::AtMark, Some(34.9), window, LevelVerdict::TooCold),
        (LevelSeen::High, Some(45.1), window, LevelVerdict::TooHot),
        (LevelSeen::Low, Some(40.0), window, LevelVerdict::Low),
        (LevelSeen::High, Some(40.0), window, LevelVerdict::High),
        (LevelSeen::AtMark, None, window, LevelVerdict::CannotTell),
        (
            LevelSeen::AtMark,
            Some(40.0),
            None,
            LevelVerdict::CannotTell,
        ),
    ] {
        assert_eq!(say(seen, at, window).unwrap(), expected);
    }
    assert!(
        say(LevelSeen::Low, Some(40.0), Some((45.0, 35.0)))
            .unwrap_err()
            .to_string()
            .contains("lower temperature first")
    );
}

#[test]
fn two_sorts() {
    let say = |kind, inside: Option<&str>, new: &str, asked: &str| {
        let own = |text: &str| Some(text.to_owned());
        sorts(&Sorts {
            kind,
            inside: inside.map(str::to_owned),
            new: own(new),
            asked_for: own(asked),
        })
        .unwrap()
    };
    for (kind, inside, new, asked, expected) in [
        (
            Kind::EngineOil,
            Some("5W-30 C3"),
            "5w30 c3",
            "5W-30 C3",
            May::Yes,
        ),
        (
            Kind::EngineOil,
            Some("10W-40 A3"),
            "5W-30 C3",
            "5W-30 C3",
            May::Said,
        ),
        (
            Kind::EngineOil,
            Some("5W-30 C3"),
            "10W-40 A3",
            "5W-30 C3",
            May::No,
        ),
        (Kind::EngineOil, None, "5W-30 C3", "5W-30 C3", May::Ask),
        (Kind::Brake, Some("DOT 4"), "DOT 4", "DOT 4", May::Yes),
        (Kind::Brake, Some("DOT 3"), "DOT 4", "DOT 4", May::Said),
        (Kind::Brake, Some("DOT 4"), "DOT 5", "DOT 4", May::No),
        (Kind::Brake, Some("DOT 5"), "DOT 4", "DOT 4", May::No),
        (Kind::Brake, Some("DOT 4"), "DOT 3", "DOT 4", May::No),
        (Kind::Brake, Some("yellow"), "DOT 4", "DOT 4", May::Ask),
        (Kind::Brake, Some("DOT 4"), "clear", "DOT 4", May::Ask),
        (
            Kind::AutomaticGearbox,
            Some("other"),
            "maker 6",
            "maker 6",
            May::No,
        ),
        (
            Kind::Refrigerant,
            Some("R134a"),
            "R1234yf",
            "R1234yf",
            May::No,
        ),
        (Kind::Washer, Some("summer"), "winter", "winter", May::Said),
    ] {
        assert_eq!(
            say(kind, inside, new, asked).may,
            expected,
            "{kind} {inside:?} {new} {asked}"
        );
    }
    let unknown = sorts(&Sorts {
        kind: Kind::Axle,
        inside: None,
        new: None,
        asked_for: None,
    })
    .unwrap();
    assert!(unknown.may == May::Ask && unknown.words.contains("nothing is guessed"));
    assert!(
        say(Kind::EngineOil, Some("a"), "b", "b")
            .words
            .contains("said on the papers")
    );
}

#[test]
fn urea_mixes_by_mass() {
    let mix = |left_l, left_percent| {
        urea(&Urea {
            tank_l: 18.0,
            left_l,
            left_percent,
            add_percent: 32.5,
        })
        .unwrap()
    };
    let good = mix(9.0, 32.0);
    assert!(good.within_standard && good.drain_l.is_none());
    // Half water by volume: (9 x 0.9982 x 0 + 9 x 1.09 x 32.5) / (9 x 0.9982 + 9 x 1.09).
    let watered = mix(9.0, 0.0);
    assert!((watered.full_percent - 1.09 * 32.5 / (0.9982 + 1.09)).abs() < 1e-9);
    let drain = watered.drain_l.unwrap();
    let kept = 9.0 - drain;
    let after = mix(kept - 1e-6, 0.0);
    assert!(after.within_standard, "{after:?}");
    assert!(!mix(kept + 0.01, 0.0).within_standard);
    assert!(matches!(
        urea(&Urea {
            tank_l: 5.0,
            left_l: 9.0,
            left_percent: 32.5,
            add_percent: 32.5
        }),
        Err(FluidError::MoreThanItHolds { .. })
    ));
    assert!(matches!(
        urea(&Urea {
            tank_l: 18.0,
            left_l: 9.0,
            left_percent: 32.5,
            add_percent: 20.0
        }),
        Err(FluidError::TooWeak { .. })
    ));
}

#[test]
fn washer_by_share_and_by_frost() {
    let question = Washer {
        holds_l: 4.0,
        left_l: 1.0,
        left_percent: 20.0,
        want_percent: None,
        want_c: Some(-20.0),
        label: vec![(100.0, -45.0), (50.0, -20.0), (25.0, -5.0)],
    };
    let found = washer(&question).unwrap();
    assert!((found.percent - 50.0).abs() < 1e-9 && found.freezes_c == Some(-20.0));
    assert!((found.concentrate_l + found.water_l - 3.0).abs() < 1e-12);
    let wrong = |change: fn(&mut Washer)| {
        let mut bad = question.clone();
        change(&mut bad);
        washer(&bad).unwrap_err().to_string()
    };
    assert!(wrong(|q| q.want_c = Some(-60.0)).contains("copy more points off the label"));
    assert!(wrong(|q| q.want_c = None).contains("write a share, or a frost limit"));
    assert!(
        wrong(|q| q.label = vec![(50.0, -20.0), (60.0, -10.0)]).contains("each stronger mixture")
    );
    assert!(
        wrong(|q| q.want_percent = Some(100.0))
            .contains("bring something stronger, or drain first")
    );
    assert!(
        wrong(|q| {
            q.left_percent = 100.0;
            q.want_percent = Some(10.0);
        })
        .contains("stronger than wanted")
    );
    assert!(wrong(|q| q.left_l = 9.0).contains("no more can be left than it holds"));
}

#[test]
fn no_sum_where_there_is_no_chemistry() {
    for kind in Kind::ALL {
        let error = FluidError::NotChemistry { kind }.to_string();
        assert_eq!(
            kind.mixes_by_strength(),
            matches!(kind, Kind::Urea | Kind::Washer)
        );
        assert!(error.contains("that is no sum: "), "{error}");
        assert_eq!(Kind::named(kind.word()), Some(kind));
    }
    for work in Work::ALL {
        assert_eq!(Work::named(work.word()), Some(work));
    }
}

#[test]
fn refrigerant_account() {
    let account = Refrigerant {
        label_g: Some(550.0),
        out_g: Some(410.0),
        in_g: Some(530.0),
        within_g: 10.0,
        oil_out_ml: Some(20.0),
        oil_for_parts_ml: Some(15.0),
        oil_in_ml: Some(20.0),
    };
    let found = refrigerant(&account).unwrap();
    assert_eq!(
        (found.verdict, found.lost_g, found.oil_owed_ml),
        (ChargeVerdict::Short, Some(140.0), Some(15.0))
    );
    assert!(
        found
            .words
            .join(" ")
            .contains("search for the leak before filling")
    );
    let of = |in_g| {
        refrigerant(&Refrigerant { in_g, ..account })
            .unwrap()
            .verdict
    };
    assert_eq!(of(Some(545.0)), ChargeVerdict::AsLabelled);
    assert_eq!(of(Some(570.0)), ChargeVerdict::TooMuch);
    assert_eq!(of(None), ChargeVerdict::Open);
    assert!(
        refrigerant(&Refrigerant {
            out_g: Some(-3.0),
            ..account
        })
        .is_err()
    );
}

proptest! {
    /// Whatever was done, in any sequence and as often as one likes: an answer; and doing the
    /// whole sequence afterwards closes it.
    #[test]
    fn any_history_can_be_mended(
        kind in 0..12_usize,
        history in proptest::collection::vec(0..34_usize, 0..40),
    ) {
        let kind = Kind::ALL[kind];
        let mut works: Vec<Work> = history.iter().map(|at| Work::ALL[*at]).collect();
        let found = after(kind, works.clone());
        prop_assert_eq!(found.closed, found.owed.is_empty());
        prop_assert_eq!(found.waits.is_empty(), found.closed);
        works.extend(all(kind));
        prop_assert!(after(kind, works).closed);
    }

    /// Mixing lies between the two, and draining what is said is enough.
    #[test]
    fn urea_stays_between(left in 0.0..18.0_f64, now in 0.0..45.0_f64, add in 31.8..33.2_f64) {
        let question = Urea { tank_l: 18.0, left_l: left, left_percent: now, add_percent: add };
        let found = urea(&question).unwrap();
        prop_assert!(found.full_percent >= now.min(add) - 1e-9 && found.full_percent <= now.max(add) + 1e-9);
        if let Some(drain) = found.drain_l {
            prop_assert!((0.0..=left + 1e-9).contains(&drain));
            let kept = (left - drain - 1e-9).max(0.0);
            let after = urea(&Urea { left_l: kept, ..question }).unwrap();
            prop_assert!(after.within_standard);
        }
    }
}
