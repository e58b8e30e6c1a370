//! Two hundred simulated leak tests whose truth is known, and what may never be said.
//!
//! The systems are simulated with other figures than the crate's own: densities printed by
//! CoolProp 8.0.0 (MEG, half by mass), steam by the Magnus formula.

#![allow(clippy::unwrap_used, reason = "a test fails by panicking")]

use coolant::{
    Amount, Contents, CoolantError, Glycol, Leak, LeakLimit, LeakNote, LeakQuestion, LeakVerdict,
    Mixture, Reading, Why, leak,
};
use rand::{RngExt, SeedableRng};
use rand_chacha::ChaCha8Rng;
use std::collections::BTreeMap;
use std::fmt::Write;

const AIR_KPA: f64 = 101.325;
/// Of water in ethylene glycol, half and half by mass.
const WATER_MOLE_FRACTION: f64 = 0.775;

/// CoolProp 8.0.0, INCOMP::MEG[0.50]: 20, 60 and 80 °C; a parabola through the three.
fn density(t_c: f64) -> f64 {
    let (a, b, c) = (1064.929, 1040.490, 1026.406);
    a * (t_c - 60.0) * (t_c - 80.0) / 2400.0 - b * (t_c - 20.0) * (t_c - 80.0) / 800.0
        + c * (t_c - 20.0) * (t_c - 60.0) / 1200.0
}

/// The Magnus formula.
fn steam_kpa(t_c: f64) -> f64 {
    WATER_MOLE_FRACTION * 0.610_94 * (17.625 * t_c / (t_c + 243.04)).exp()
}

#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
enum Kind {
    TightAndCooling,
    SlowLeak,
    Both,
    NearTheLimit,
    OneStep,
    NoisyGauge,
    CoarseGauge,
    Warming,
    NoTemperature,
    NoAmounts,
    ThreePoints,
    CapThatOpens,
}

use Kind::{
    Both, CapThatOpens, CoarseGauge, NearTheLimit, NoAmounts, NoTemperature, NoisyGauge, OneStep,
    SlowLeak, ThreePoints, TightAndCooling, Warming,
};

const COUNTS: [(Kind, u64); 12] = [
    (TightAndCooling, 30),
    (SlowLeak, 25),
    (Both, 25),
    (NearTheLimit, 15),
    (OneStep, 25),
    (NoisyGauge, 20),
    (CoarseGauge, 15),
    (Warming, 5),
    (NoTemperature, 20),
    (NoAmounts, 10),
    (ThreePoints, 5),
    (CapThatOpens, 5),
];

/// What happens in a system, what its gauge does, and what the test asks.
struct System {
    kind: Kind,
    headspace_l: f64,
    coolant_l: f64,
    start_kpa: f64,
    start_c: f64,
    /// How far it cools in all; below nothing, it warms.
    cools_k: f64,
    per_min: f64,
    /// Against the limit, at the starting pressure.
    leak_of_limit: f64,
    step_kpa: f64,
    step_at_min: f64,
    noise_kpa: f64,
    division_kpa: f64,
    /// Above this the cap lets go until it is a few kPa lower.
    opens_kpa: Option<f64>,
    limit: LeakLimit,
    every_min: u32,
}

fn between(chance: &mut ChaCha8Rng, low: f64, high: f64) -> f64 {
    low + (high - low) * chance.random::<f64>()
}

fn bell(chance: &mut ChaCha8Rng) -> f64 {
    let (u, v): (f64, f64) = (1.0 - chance.random::<f64>(), chance.random());
    (-2.0 * u.ln()).sqrt() * (std::f64::consts::TAU * v).cos()
}

fn system(kind: Kind, chance: &mut ChaCha8Rng) -> System {
    let headspace_l = between(chance, 0.6, 2.0);
    let start_kpa = between(chance, 85.0, 110.0);
    let coin: bool = chance.random();
    let leaking = between(chance, 2.0, 6.0);
    let limit = if chance.random() {
        LeakLimit::Drop {
            kpa: between(chance, 4.0, 6.0),
            minutes: 15.0,
        }
    } else {
        LeakLimit::MlPerHour(between(chance, 60.0, 120.0) * headspace_l)
    };
    let cooling = between(chance, 1.0, 5.0);
    let (cools_k, leak_of_limit) = match kind {
        TightAndCooling => (cooling, 0.0),
        SlowLeak => (0.0, leaking),
        Both => (cooling, leaking),
        NearTheLimit => (cooling, between(chance, 0.3, 1.8)),
        Warming => (-cooling, if coin { leaking } else { 0.0 }),
        CapThatOpens => (0.5, 0.0),
        _ => (cooling, if coin { leaking } else { 0.0 }),
    };
    System {
        kind,
        headspace_l,
        coolant_l: between(chance, 5.0, 11.0),
        start_kpa,
        start_c: between(chance, 18.0, 38.0),
        cools_k,
        per_min: between(chance, 0.02, 0.08),
        leak_of_limit,
        step_kpa: match kind {
            OneStep => {
                between(chance, 6.0, 12.0)
                    * if chance.random::<f64>() < 0.8 {
                        -1.0
                    } else {
                        1.0
                    }
            }
            _ => 0.0,
        },
        step_at_min: between(chance, 1.0, 14.0),
        noise_kpa: if kind == NoisyGauge {
            between(chance, 0.3, 0.8)
        } else {
            0.1
        },
        division_kpa: match kind {
            CoarseGauge => [2.0, 2.5][usize::from(coin)],
            _ => [0.5, 1.0][usize::from(coin)],
        },
        opens_kpa: (kind == CapThatOpens).then_some(start_kpa - between(chance, 4.0, 12.0)),
        limit: match (kind, limit) {
            // A rate needs the headspace.
            (NoAmounts, LeakLimit::MlPerHour(_)) => LeakLimit::Drop {
                kpa: 5.0,
                minutes: 15.0,
            },
            (_, limit) => limit,
        },
        every_min: if kind == ThreePoints { 7 } else { 1 },
    }
}

/// The limit as litres an hour.
fn limit_l_per_h(system: &System) -> f64 {
    match system.limit {
        LeakLimit::MlPerHour(ml) => ml / 1000.0,
        LeakLimit::Drop { kpa, minutes } => {
            let start = system.start_kpa + AIR_KPA - steam_kpa(system.start_c);
            system.headspace_l * (start / (start - kpa) - 1.0) * 60.0 / minutes
        }
    }
}

/// Readings of fifteen minutes, and what truly leaked, in litres an hour.
fn watched(system: &System, chance: &mut ChaCha8Rng) -> (Vec<Reading>, f64) {
    const STEPS: u32 = 10;
    let drift_k = 0.5 / 1.96 * bell(chance);
    let dry_kpa = system.start_kpa + AIR_KPA - steam_kpa(system.start_c);
    let amount = dry_kpa * system.headspace_l / (system.start_c + 273.15);
    let (mut leaked_l, mut vented_kpa) = (0.0, 0.0);
    let mut open = system.opens_kpa.is_some();
    let mut readings = Vec::new();
    for step in 0..=15 * STEPS {
        let now = f64::from(step) / f64::from(STEPS);
        let t_c = system.start_c - system.cools_k * (1.0 - (-system.per_min * now).exp());
        let coolant_l = system.coolant_l * density(system.start_c) / density(t_c);
        let volume_l = system.headspace_l + system.coolant_l - coolant_l + leaked_l;
        let mut gauge_kpa =
            amount * (t_c + 273.15) / volume_l + steam_kpa(t_c) - AIR_KPA - vented_kpa;
        if open && now > system.step_at_min {
            vented_kpa += 2.5;
            open = gauge_kpa > system.opens_kpa.unwrap();
        }
        leaked_l += limit_l_per_h(system) * system.leak_of_limit / 60.0 / f64::from(STEPS)
            * gauge_kpa
            / system.start_kpa;
        if now > system.step_at_min {
            gauge_kpa += system.step_kpa;
        }
        if step % (STEPS * system.every_min) == 0 {
            let seen_kpa = gauge_kpa + system.noise_kpa * bell(chance);
            let read_c = t_c + drift_k * now / 15.0 + 0.05 * bell(chance);
            readings.push(Reading {
                minutes: now,
                gauge_kpa: (seen_kpa / system.division_kpa).round() * system.division_kpa,
                temperature_c: (system.kind != NoTemperature)
                    .then_some((read_c * 10.0).round() / 10.0),
            });
        }
    }
    (readings, leaked_l * 4.0)
}

/// One system: what was told about it, and whether that is right, wrong, or left open.
fn tried(kind: Kind, seed: u64) -> (f64, Option<bool>, String) {
    let mut chance = ChaCha8Rng::seed_from_u64(seed);
    let system = system(kind, &mut chance);
    let (readings, leaked_l_per_h) = watched(&system, &mut chance);
    let of_limit = leaked_l_per_h / limit_l_per_h(&system);
    let stated_l = system.headspace_l * (1.0 + 0.05 * bell(&mut chance));
    let known = kind != NoAmounts;
    let found = leak(&LeakQuestion {
        headspace: known.then_some(Amount::new(stated_l, 0.1 * stated_l)),
        contents: known.then_some(Contents {
            mixture: Mixture::by_mass(Glycol::Ethylene, 0.5).unwrap(),
            litres: system.coolant_l,
        }),
        limit: system.limit,
        ..plain(&readings, system.division_kpa)
    });
    let (right, said) = match found {
        Ok(found) => match found.verdict {
            LeakVerdict::Tight => (Some(of_limit < 1.0), found.verdict.to_string()),
            LeakVerdict::Leaks => (Some(of_limit > 1.0), found.verdict.to_string()),
            LeakVerdict::CannotTellYet { .. } => (None, found.verdict.to_string()),
        },
        Err(error) => (None, error.to_string()),
    };
    let asked = format!(
        "leak of {of_limit:.2} times its limit, cooling {:.1} K, gauge to {} kPa: {said}",
        system.cools_k, system.division_kpa
    );
    (of_limit, right, asked)
}

fn plain(readings: &[Reading], gauge_step_kpa: f64) -> LeakQuestion<'_> {
    LeakQuestion {
        readings,
        gauge_step_kpa,
        altitude_m: 0.0,
        headspace: None,
        contents: None,
        temperature_within_k: 0.5,
        cold: false,
        limit: LeakLimit::Drop {
            kpa: 5.0,
            minutes: 15.0,
        },
        cap_gauge_kpa: Some(120.0),
        system_gauge_kpa: None,
        blank: None,
    }
}

/// How often the two hundred are simulated: once, or more where `COOLANT_ROUNDS` asks.
fn rounds() -> u64 {
    let asked = std::env::var("COOLANT_ROUNDS").ok();
    asked.and_then(|text| text.parse().ok()).unwrap_or(1)
}

#[derive(Default)]
struct Tally {
    systems: u64,
    right: u64,
    open: u64,
    wrong: u64,
    /// Of those that have to be told: how many, and how many were left open.
    clear: u64,
    clear_open: u64,
}

#[test]
fn two_hundred_systems_are_judged() {
    let mut table: BTreeMap<Kind, Tally> = BTreeMap::new();
    let mut each = String::new();
    for (kind, count) in COUNTS {
        for nth in 0..count * rounds() {
            let seed = 1_000_000 * (kind as u64 + 1) + nth;
            let (of_limit, right, said) = tried(kind, seed);
            let row = table.entry(kind).or_default();
            row.systems += 1;
            match right {
                Some(true) => row.right += 1,
                Some(false) => row.wrong += 1,
                None => row.open += 1,
            }
            let all_columns = !matches!(kind, NoTemperature | NoAmounts | ThreePoints);
            let clear = all_columns && !(0.01..1.99).contains(&of_limit);
            row.clear += u64::from(clear);
            row.clear_open += u64::from(clear && right.is_none());
            let mark = match right {
                Some(true) => "right",
                Some(false) => "WRONG",
                None => "open ",
            };
            writeln!(each, "{mark} {kind:?} {seed}: {said}").unwrap();
        }
    }
    let (total, printed) = summed(&table);
    if rounds() == 1 {
        println!("{each}");
    }
    println!("{printed}");
    assert!(total.systems >= 200);
    assert!(
        100 * total.wrong <= total.systems,
        "{} wrong\n{each}\n{printed}",
        total.wrong
    );
    assert!(
        20 * total.clear_open <= total.clear,
        "{} of {} left open\n{each}\n{printed}",
        total.clear_open,
        total.clear
    );
}

fn summed(table: &BTreeMap<Kind, Tally>) -> (Tally, String) {
    let mut total = Tally::default();
    let mut printed = format!(
        "{:<16}{:>8}{:>7}{:>7}{:>7}{:>7}{:>12}\n",
        "kind", "systems", "right", "open", "wrong", "clear", "of them open"
    );
    let mut row = |name: &str, row: &Tally| {
        writeln!(
            printed,
            "{name:<16}{:>8}{:>7}{:>7}{:>7}{:>7}{:>12}",
            row.systems, row.right, row.open, row.wrong, row.clear, row.clear_open
        )
        .unwrap();
    };
    for (kind, tally) in table {
        row(&format!("{kind:?}"), tally);
        total.systems += tally.systems;
        total.right += tally.right;
        total.open += tally.open;
        total.wrong += tally.wrong;
        total.clear += tally.clear;
        total.clear_open += tally.clear_open;
    }
    row("all", &total);
    (total, printed)
}

fn each_minute(gauge_kpa: impl Fn(f64) -> f64, t_c: impl Fn(f64) -> Option<f64>) -> Vec<Reading> {
    (0..=15)
        .map(f64::from)
        .map(|minutes| Reading {
            minutes,
            gauge_kpa: gauge_kpa(minutes),
            temperature_c: t_c(minutes),
        })
        .collect()
}

fn steady(_: f64) -> Option<f64> {
    Some(20.0)
}

fn found(readings: &[Reading], gauge_step_kpa: f64) -> Leak {
    leak(&plain(readings, gauge_step_kpa)).unwrap()
}

fn why(readings: &[Reading]) -> Option<Why> {
    match found(readings, 0.5).verdict {
        LeakVerdict::CannotTellYet { why, .. } => Some(why),
        LeakVerdict::Tight | LeakVerdict::Leaks => None,
    }
}

#[test]
fn nothing_is_tight_without_pressure() {
    for gauge_kpa in [0.0, 0.4, 1.1, -3.0, -40.0] {
        let readings = each_minute(|_| gauge_kpa, steady);
        assert_eq!(why(&readings), Some(Why::NoPressure), "{gauge_kpa} kPa");
        let said = found(&readings, 0.5).verdict.to_string();
        assert!(said.contains("no pressure was put on"), "{said}");
    }
    // Held, but far below what the system has to stand.
    let weak = each_minute(|_| 20.0, steady);
    assert_eq!(why(&weak), Some(Why::TooLittlePressure));
    // Lost to the last: that is a leak all the same.
    let gone = each_minute(|minutes| (100.0 - 25.0 * minutes).max(0.0), steady);
    assert_eq!(found(&gone, 0.5).verdict, LeakVerdict::Leaks);
}

#[test]
fn a_fall_that_nobody_read_the_temperature_of_is_no_leak() {
    let falls = |minutes: f64| 100.0 - 1.0 * minutes;
    let unread = each_minute(falls, |_| None);
    assert_eq!(why(&unread), Some(Why::TemperatureNotRead));
    let said = found(&unread, 0.5).verdict.to_string();
    assert!(said.contains("read the coolant's temperature"), "{said}");
    // One reading without it is enough.
    let once = each_minute(falls, |minutes| (minutes < 9.0).then_some(20.0));
    assert_eq!(why(&once), Some(Why::TemperatureNotRead));
    // Told to be as cold as the shop, it can be judged.
    let cold = LeakQuestion {
        cold: true,
        ..plain(&unread, 0.5)
    };
    assert_eq!(leak(&cold).unwrap().verdict, LeakVerdict::Leaks);
    let held = each_minute(|_| 100.0, |_| None);
    let found = found(&held, 0.5);
    assert_eq!(found.verdict, LeakVerdict::Tight);
    assert_eq!(found.said(), "tight, unless it warmed meanwhile");
    let said: Vec<String> = found.assumptions.iter().map(ToString::to_string).collect();
    assert!(
        said.iter()
            .any(|said| said.contains("warming hides a leak")),
        "{said:?}"
    );
}

/// Eight litres over half a litre of air, tight, and cooling by six kelvins.
#[test]
fn coolant_that_may_shrink_is_no_leak() {
    let temperature = |minutes: f64| 30.0 - 0.4 * minutes;
    let falls = |minutes: f64| {
        let air_l = 0.5 + 8.0 * (1.0 - density(30.0) / density(temperature(minutes)));
        let dry = (100.0 + AIR_KPA - steam_kpa(30.0)) * 0.5 / 303.15;
        dry * (temperature(minutes) + 273.15) / air_l + steam_kpa(temperature(minutes)) - AIR_KPA
    };
    let readings = each_minute(falls, |minutes| Some(temperature(minutes)));
    let tight = LeakQuestion {
        limit: LeakLimit::Drop {
            kpa: 1.0,
            minutes: 15.0,
        },
        ..plain(&readings, 0.5)
    };
    let verdict = leak(&tight).unwrap().verdict;
    assert!(
        matches!(
            verdict,
            LeakVerdict::CannotTellYet {
                why: Why::ContractionUnknown,
                ..
            }
        ),
        "{verdict}"
    );
    // Half of it known does not help yet.
    let half_known = LeakQuestion {
        headspace: Some(Amount::new(0.5, 0.05)),
        ..tight
    };
    assert_ne!(leak(&half_known).unwrap().verdict, LeakVerdict::Leaks);
    let contents = Contents {
        mixture: Mixture::by_mass(Glycol::Ethylene, 0.5).unwrap(),
        litres: 8.0,
    };
    let known = LeakQuestion {
        contents: Some(contents),
        limit: LeakLimit::Drop {
            kpa: 5.0,
            minutes: 15.0,
        },
        ..half_known
    };
    assert_eq!(leak(&known).unwrap().verdict, LeakVerdict::Tight);
}

#[test]
fn one_step_is_named_and_is_no_leak() {
    for (at_min, fell_kpa) in [(7.5, 8.0), (0.5, 8.0), (13.5, 8.0), (7.5, -8.0)] {
        let step = |minutes: f64| {
            if minutes > at_min {
                100.0 - fell_kpa
            } else {
                100.0
            }
        };
        let found = found(&each_minute(step, steady), 0.5);
        assert_eq!(found.verdict, LeakVerdict::Tight, "{at_min}");
        let jumped = found.notes.iter().find_map(|note| match note {
            LeakNote::Jumped(jump) => Some(*jump),
            _ => None,
        });
        let jump = jumped.unwrap();
        assert!(
            (jump.kpa + fell_kpa).abs() < 0.5 && (jump.minutes - at_min).abs() <= 0.5,
            "{jump:?}"
        );
    }
    // A leak beside it is still a leak.
    let both = |minutes: f64| {
        if minutes > 7.5 {
            92.0 - minutes
        } else {
            100.0 - minutes
        }
    };
    assert_eq!(
        found(&each_minute(both, steady), 0.5).verdict,
        LeakVerdict::Leaks
    );
    // There and back again is one misread figure.
    let misread = |minutes: f64| {
        if (6.5..7.5).contains(&minutes) {
            88.0
        } else {
            100.0
        }
    };
    assert_eq!(
        found(&each_minute(misread, steady), 0.5).verdict,
        LeakVerdict::Tight
    );
    // Again and again is no accident.
    let often = |minutes: f64| 100.0 - 8.0 * (minutes / 4.0).floor();
    assert_eq!(why(&each_minute(often, steady)), Some(Why::Jumps));
}

#[test]
fn a_rise_is_not_tight() {
    let rises = each_minute(|minutes| 100.0 + 0.6 * minutes, steady);
    assert_eq!(why(&rises), Some(Why::PressureRose));
}

#[test]
fn what_cannot_be_is_named_by_its_reading() {
    let refused = |gauge_kpa: f64, t_c: f64| {
        let mut readings = each_minute(|_| 100.0, steady);
        readings[6].gauge_kpa = gauge_kpa;
        readings[6].temperature_c = Some(t_c);
        leak(&plain(&readings, 0.5)).unwrap_err()
    };
    for (gauge_kpa, t_c) in [
        (-100.0, 20.0),
        (1000.0, 20.0),
        (100.0, 99.0),
        (100.0, 205.0),
    ] {
        let error = refused(gauge_kpa, t_c);
        assert!(
            matches!(error, CoolantError::ReadingImpossible { position: 7, .. }),
            "{error}"
        );
        assert!(error.to_string().starts_with("reading 7: "), "{error}");
    }
}
