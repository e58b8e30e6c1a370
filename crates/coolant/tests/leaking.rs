//! The leak test against simulated systems, and what it says.

#![allow(clippy::unwrap_used, reason = "a test fails by panicking")]

use coolant::{
    Amount, Assumption, Contents, CoolantError, Glycol, Leak, LeakLimit, LeakNote, LeakQuestion,
    LeakVerdict, Mixture, Reading, Why, density, leak, test_pressure,
};
use proptest::prelude::*;
use rand::{RngExt, SeedableRng};
use rand_chacha::ChaCha8Rng;

const AIR_KPA: f64 = 101.325;
const STEP_KPA: f64 = 0.5;
const TEMPERATURE_WITHIN_K: f64 = 0.5;
const HEADSPACE_WITHIN: f64 = 0.1;
const LIMIT_ML_PER_H: f64 = 60.0;

fn half() -> Mixture {
    Mixture::by_volume(Glycol::Ethylene, 0.5).unwrap()
}

/// What really happens in a system while it is watched.
#[derive(Clone, Copy)]
struct System {
    headspace_l: f64,
    coolant_l: f64,
    start_gauge_kpa: f64,
    start_c: f64,
    /// How far it cools in all, and how fast.
    cools_k: f64,
    per_min: f64,
    /// mL/h at the starting pressure; the flow follows the pressure.
    leak_ml_per_h: f64,
}

/// What was read, what was stated, and what really left.
struct Test {
    readings: Vec<Reading>,
    headspace: Amount,
    contents: Contents,
    truly_ml_per_h: f64,
}

/// How many seeded runs: the 1,000 that the claims are made for, or more where
/// `COOLANT_RUNS` asks for a longer look.
fn runs() -> u64 {
    let asked = std::env::var("COOLANT_RUNS").ok();
    asked
        .and_then(|text| text.parse().ok())
        .unwrap_or(1000)
        .max(1000)
}

/// Whether at most so many in a hundred of the runs are of a kind.
fn at_most(part: usize, in_a_hundred: u64) -> bool {
    u64::try_from(part).unwrap() * 100 <= in_a_hundred * runs()
}

fn bell(chance: &mut ChaCha8Rng) -> f64 {
    let (u, v): (f64, f64) = (1.0 - chance.random::<f64>(), chance.random());
    (-2.0 * u.ln()).sqrt() * (std::f64::consts::TAU * v).cos()
}

/// Steam over water by the Magnus formula, another one than the crate's.
fn steam_kpa(t_c: f64) -> f64 {
    0.610_94 * (17.625 * t_c / (t_c + 243.04)).exp()
}

/// Steps of twenty seconds: the gas law, coolant that shrinks in proportion as it cools,
/// steam, and a leak that follows the pressure. The thermometer drifts, the gauge flickers
/// and is read to its division.
fn watched(system: System, minutes: u32, seed: u64) -> Test {
    let mut chance = ChaCha8Rng::seed_from_u64(seed);
    let drift_k = TEMPERATURE_WITHIN_K / 1.96 * bell(&mut chance);
    let density_at = |t_c| density(half(), t_c).unwrap().kg_per_m3;
    let cold_c = system.start_c - system.cools_k;
    let shrinks_l = system.coolant_l * (1.0 - density_at(system.start_c) / density_at(cold_c));
    let water = half().water_mole_fraction();
    let dry_kpa = system.start_gauge_kpa + AIR_KPA - water * steam_kpa(system.start_c);
    let amount = dry_kpa * system.headspace_l / (system.start_c + 273.15);
    let mut leaked_l = 0.0;
    let mut readings = Vec::new();
    let mut gauge_kpa = system.start_gauge_kpa;
    for step in 0..=minutes * 3 {
        let now = f64::from(step) / 3.0;
        let cooled = 1.0 - (-system.per_min * now).exp();
        let t_c = system.start_c - system.cools_k * cooled;
        let volume_l = system.headspace_l + shrinks_l * cooled + leaked_l;
        gauge_kpa = amount * (t_c + 273.15) / volume_l + water * steam_kpa(t_c) - AIR_KPA;
        leaked_l += system.leak_ml_per_h / 180_000.0 * gauge_kpa / system.start_gauge_kpa;
        if step % 3 == 0 {
            let seen_kpa = gauge_kpa + 0.1 * bell(&mut chance);
            let drifted_c = t_c + drift_k * now / f64::from(minutes) + 0.05 * bell(&mut chance);
            readings.push(Reading {
                minutes: now,
                gauge_kpa: (seen_kpa / STEP_KPA).round() * STEP_KPA,
                temperature_c: Some(drifted_c),
            });
        }
    }
    assert!(gauge_kpa.is_finite());
    let stated_l = system.headspace_l * (1.0 + HEADSPACE_WITHIN / 1.96 * bell(&mut chance));
    Test {
        readings,
        headspace: Amount::new(stated_l, HEADSPACE_WITHIN * stated_l),
        contents: Contents {
            mixture: half(),
            litres: system.coolant_l,
        },
        truly_ml_per_h: leaked_l * 1000.0 / (f64::from(minutes) / 60.0),
    }
}

fn any_system(seed: u64, leak_ml_per_h: f64) -> System {
    let mut chance = ChaCha8Rng::seed_from_u64(seed ^ 0xC001);
    System {
        headspace_l: 0.8 + 1.2 * chance.random::<f64>(),
        coolant_l: 6.0 + 4.0 * chance.random::<f64>(),
        start_gauge_kpa: 90.0 + 20.0 * chance.random::<f64>(),
        start_c: 25.0 + 10.0 * chance.random::<f64>(),
        cools_k: 1.0 + 4.0 * chance.random::<f64>(),
        per_min: 0.02 + 0.06 * chance.random::<f64>(),
        leak_ml_per_h,
    }
}

fn question(test: &Test) -> LeakQuestion<'_> {
    LeakQuestion {
        readings: &test.readings,
        gauge_step_kpa: STEP_KPA,
        altitude_m: 0.0,
        headspace: Some(test.headspace),
        contents: Some(test.contents),
        temperature_within_k: TEMPERATURE_WITHIN_K,
        cold: false,
        limit: LeakLimit::MlPerHour(LIMIT_ML_PER_H),
        cap_gauge_kpa: Some(120.0),
        system_gauge_kpa: None,
        blank: None,
    }
}

/// Verdicts of seeded runs of 15 minutes: not the right one, cannot tell yet, and the
/// seeds of plainly wrong ones.
fn counted(leak_ml_per_h: impl Fn(u64) -> f64, right: LeakVerdict) -> (usize, usize, Vec<u64>) {
    let (mut untold, mut wrong) = (0, Vec::new());
    for seed in 0..runs() {
        let test = watched(any_system(seed, leak_ml_per_h(seed)), 15, seed);
        match leak(&question(&test)).unwrap().verdict {
            verdict if verdict == right => {}
            LeakVerdict::CannotTellYet { .. } => untold += 1,
            _ => wrong.push(seed),
        }
    }
    (untold + wrong.len(), untold, wrong)
}

#[test]
fn a_tight_system_that_only_cools_passes() {
    let (missed, untold, wrong) = counted(|_| 0.0, LeakVerdict::Tight);
    assert!(
        at_most(missed, 5),
        "{missed} missed, of them wrong: {wrong:?}"
    );
    assert!(at_most(untold, 10), "{untold} told nothing");
}

#[test]
fn a_leaking_system_fails() {
    let rate = |seed| 150.0 + f64::from(u32::try_from(seed % 36).unwrap()) * 10.0;
    let (missed, untold, wrong) = counted(rate, LeakVerdict::Leaks);
    assert!(
        at_most(missed, 5),
        "{missed} missed, of them wrong: {wrong:?}"
    );
    assert!(at_most(untold, 10), "{untold} told nothing");
}

#[test]
fn the_true_rate_lies_inside_the_band() {
    let missed: Vec<u64> = (0..runs())
        .filter(|seed| {
            let rate = f64::from(u32::try_from(seed % 20).unwrap()) * 10.0;
            let test = watched(any_system(*seed, rate), 15, 50_000 + seed);
            let band = leak(&question(&test)).unwrap().ml_per_h.unwrap();
            !(band.low()..=band.high()).contains(&test.truly_ml_per_h)
        })
        .collect();
    assert!(
        at_most(missed.len(), 5),
        "{} missed: {missed:?}",
        missed.len()
    );
}

/// Waiting as long as it says is enough in most runs.
#[test]
fn waiting_as_told_helps() {
    let (mut asked, mut helped) = (0, 0);
    for seed in 0..300 {
        let system = any_system(seed, 100.0);
        let short = watched(system, 6, seed);
        let found = leak(&question(&short)).unwrap();
        if let LeakVerdict::CannotTellYet {
            wait_minutes: Some(wait),
            ..
        } = found.verdict
        {
            asked += 1;
            let longer = watched(system, 6 + wait, seed);
            if leak(&question(&longer)).unwrap().verdict == LeakVerdict::Leaks {
                helped += 1;
            }
        }
    }
    assert!(asked >= 50, "only {asked} of 300 asked to wait");
    assert!(2 * helped >= asked, "{helped} of {asked}");
}

#[test]
fn cooling_is_told_from_leaking() {
    let share = |leak_ml_per_h| {
        let system = System {
            cools_k: 5.0,
            per_min: 0.08,
            ..any_system(3, leak_ml_per_h)
        };
        let test = watched(system, 15, 3);
        leak(&question(&test)).unwrap().cooling_share.unwrap()
    };
    assert!((share(0.0) - 1.0).abs() < 0.2, "{}", share(0.0));
    let half_leak = share(200.0);
    assert!((0.3..0.8).contains(&half_leak), "{half_leak}");
    assert!(share(1500.0) < 0.2, "{}", share(1500.0));
}

/// Readings each minute for a quarter of an hour.
fn falling(gauge_kpa: impl Fn(f64) -> f64, temperature_c: Option<f64>) -> Vec<Reading> {
    (0..=15)
        .map(f64::from)
        .map(|minutes| Reading {
            minutes,
            gauge_kpa: gauge_kpa(minutes),
            temperature_c,
        })
        .collect()
}

fn plain(readings: &[Reading], limit: LeakLimit) -> LeakQuestion<'_> {
    LeakQuestion {
        readings,
        gauge_step_kpa: 1.0,
        altitude_m: 0.0,
        headspace: None,
        contents: None,
        temperature_within_k: 0.3,
        cold: false,
        limit,
        cap_gauge_kpa: None,
        system_gauge_kpa: None,
        blank: None,
    }
}

const DROP: LeakLimit = LeakLimit::Drop {
    kpa: 5.0,
    minutes: 10.0,
};

#[test]
fn without_a_headspace_there_is_no_rate_only_pass_or_fail() {
    let readings = falling(|minutes| 100.0 - 1.5 * minutes, None);
    let found = leak(&LeakQuestion {
        cold: true,
        ..plain(&readings, DROP)
    })
    .unwrap();
    assert_eq!(found.verdict, LeakVerdict::Leaks);
    assert_eq!(found.ml_per_h, None);
    assert_eq!(found.cooling_share, None);
    // 15 kPa by the readings; the line's slope is the mean of a quarter of an hour.
    assert!((found.drop_kpa_in_10_min.mid() - 15.0).abs() < 1.0);
    assert!(found.assumptions.contains(&Assumption::HeadspaceUnknown));
    assert!(found.assumptions.contains(&Assumption::TemperatureSteady));
    assert!(found.notes.contains(&LeakNote::CombustionGasTest));
    assert_eq!(
        leak(&plain(&readings, LeakLimit::MlPerHour(20.0))).unwrap_err(),
        CoolantError::LimitNeedsHeadspace
    );
}

/// By hand: 10 % of 200 kPa lost in an hour over a litre is 1/9 of a litre an hour.
#[test]
fn a_rate_by_hand() {
    let readings: Vec<Reading> = (0..=60)
        .step_by(10)
        .map(f64::from)
        .map(|minutes| Reading {
            minutes,
            // V = 1 + t/540 L, so that p V stays the same.
            gauge_kpa: (98.675 + AIR_KPA) / (1.0 + minutes / 540.0) - AIR_KPA,
            temperature_c: Some(20.0),
        })
        .collect();
    let found = leak(&LeakQuestion {
        headspace: Some(Amount::new(1.0, 0.05)),
        ..plain(&readings, LeakLimit::MlPerHour(20.0))
    })
    .unwrap();
    // What is not known of the coolant's steam widens it by a tenth at most.
    let band = found.ml_per_h.unwrap();
    assert!(band.low() < 111.111 && 111.111 < band.high(), "{band:?}");
    assert!((band.mid() / 111.111 - 1.0).abs() < 0.1, "{band:?}");
    for (point, reading) in found.line.iter().zip(&readings) {
        assert!((point.gauge_kpa - reading.gauge_kpa).abs() < 1e-6);
        assert!(point.low_kpa < point.gauge_kpa && point.gauge_kpa < point.high_kpa);
    }
}

#[test]
fn hoses_that_still_give_are_not_called_a_leak() {
    let readings = falling(
        |minutes| 90.0 + 10.0 * (-minutes / 3.0_f64).exp(),
        Some(20.0),
    );
    let found = leak(&LeakQuestion {
        gauge_step_kpa: 0.1,
        ..plain(
            &readings,
            LeakLimit::Drop {
                kpa: 2.0,
                minutes: 10.0,
            },
        )
    })
    .unwrap();
    assert_eq!(
        found.verdict,
        LeakVerdict::CannotTellYet {
            wait_minutes: None,
            why: Why::StillSettling
        }
    );
    assert!(found.notes.contains(&LeakNote::StillSettling));
}

#[test]
fn a_tester_that_leaks_proves_nothing() {
    let readings = falling(|minutes| 100.0 - 1.5 * minutes, Some(20.0));
    let blank = falling(|minutes| 100.0 - 0.8 * minutes, None);
    let found = leak(&LeakQuestion {
        blank: Some(&blank),
        ..plain(&readings, DROP)
    })
    .unwrap();
    assert_eq!(
        found.verdict.to_string(),
        "can't tell yet: the tester loses pressure by itself; mend it and test again"
    );
    let sound = falling(|_| 100.0, None);
    let found = leak(&LeakQuestion {
        blank: Some(&sound),
        ..plain(&readings, DROP)
    })
    .unwrap();
    assert_eq!(found.verdict, LeakVerdict::Leaks);
}

#[test]
fn pressure_above_the_rating_is_taken_and_said() {
    let readings = falling(|_| 120.0, Some(20.0));
    let asked = LeakQuestion {
        cap_gauge_kpa: Some(110.0),
        system_gauge_kpa: Some(100.0),
        ..plain(&readings, DROP)
    };
    let found = leak(&asked).unwrap();
    assert_eq!(found.verdict, LeakVerdict::Tight);
    assert!(matches!(
        found.notes.as_slice(),
        [LeakNote::AboveRating { rating_kpa, .. }] if (rating_kpa - 100.0).abs() < 1e-9
    ));
    assert_eq!(
        test_pressure(Some(110.0), None).map(|found| found.at_most_kpa),
        Ok(110.0)
    );
    assert_eq!(
        test_pressure(None, None).unwrap_err(),
        CoolantError::NoRating
    );
}

#[test]
fn a_short_test_says_how_long_to_wait() {
    let readings: Vec<Reading> = falling(|minutes| 100.0 - 0.6 * minutes, Some(20.0))[..5].to_vec();
    let found = leak(&plain(&readings, DROP)).unwrap();
    let LeakVerdict::CannotTellYet {
        wait_minutes: Some(wait),
        why,
    } = found.verdict
    else {
        panic!("{}", found.verdict);
    };
    assert_eq!(why, Why::TooShort);
    assert_eq!(
        found.verdict.to_string(),
        format!("can't tell yet, wait {wait} minutes")
    );
}

#[test]
fn readings_out_of_order_are_named() {
    let mut readings = falling(|_| 100.0, None);
    readings.swap(4, 5);
    let said = leak(&plain(&readings, DROP)).unwrap_err().to_string();
    assert_eq!(
        said,
        "reading 6 is at 4 min, not after the one before: put the readings in order of time"
    );
    assert!(matches!(
        leak(&plain(&readings[..3], DROP)),
        Err(CoolantError::TooFewReadings {
            found: 3,
            needed: 4
        })
    ));
}

/// The chance and the verdict go together.
fn consistent(found: &Leak) -> bool {
    (0.5..=1.0).contains(&found.confidence)
        && (matches!(found.verdict, LeakVerdict::CannotTellYet { .. }) || found.confidence > 0.95)
}

proptest! {
    #[test]
    fn verdict_and_confidence_agree(slope in -0.5..3.0_f64, limit in 0.5..20.0_f64) {
        let readings = falling(|minutes| 100.0 - slope * minutes, Some(20.0));
        let limit = LeakLimit::Drop { kpa: limit, minutes: 10.0 };
        let found = leak(&plain(&readings, limit)).unwrap();
        prop_assert!(consistent(&found), "{} {}", found.verdict, found.confidence);
    }

    #[test]
    fn no_number_makes_it_panic(
        rows in proptest::collection::vec((any::<f64>(), any::<f64>(), any::<f64>()), 0..8),
        a in any::<f64>(), b in any::<f64>(),
    ) {
        let readings: Vec<Reading> = rows.iter().map(|(minutes, gauge_kpa, t_c)| Reading {
            minutes: *minutes, gauge_kpa: *gauge_kpa, temperature_c: Some(*t_c),
        }).collect();
        let asked = LeakQuestion { headspace: Some(Amount::new(a, b)), ..plain(&readings, LeakLimit::MlPerHour(a)) };
        let _ = leak(&asked);
        let _ = test_pressure(Some(a), Some(b));
    }

    #[test]
    fn readings_in_range_never_panic(
        rows in proptest::collection::vec((0.01..30.0_f64, -100.0..300.0_f64, proptest::option::of(0.0..100.0_f64)), 4..20),
        step in 1e-4..50.0_f64, headspace in 0.01..10.0_f64, drop in 1e-3..50.0_f64,
    ) {
        let mut minutes = 0.0;
        let readings: Vec<Reading> = rows.iter().map(|(gap, gauge_kpa, temperature_c)| {
            minutes += gap;
            Reading { minutes, gauge_kpa: *gauge_kpa, temperature_c: *temperature_c }
        }).collect();
        let asked = LeakQuestion {
            gauge_step_kpa: step,
            headspace: Some(Amount::new(headspace, 0.1)),
            contents: Some(Contents { mixture: half(), litres: 8.0 }),
            blank: Some(&readings),
            ..plain(&readings, LeakLimit::Drop { kpa: drop, minutes: 10.0 })
        };
        if let Ok(found) = leak(&asked) {
            prop_assert!(found.confidence.is_finite());
            prop_assert!(!found.working.text().is_empty());
        }
    }
}
