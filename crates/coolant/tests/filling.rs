//! Filling: coverage of the band, verdicts, swell and vacuum.

#![allow(clippy::unwrap_used, reason = "a test fails by panicking")]

use coolant::{
    Amount, Balance, Basis, BleedWay, Caution, CoolantError, FillNote, FillQuestion, FillStanding,
    FillVerdict, Glycol, Hold, Measure, Mixture, VacuumQuestion, balance, density, fill_standing,
    swell, vacuum_fill,
};
use proptest::prelude::*;
use rand::{RngExt, SeedableRng};
use rand_chacha::ChaCha8Rng;

const PAN_WITHIN_L: f64 = 0.4;
const SPILL_WITHIN_L: f64 = 0.2;
const JUG_WITHIN_L: f64 = 0.08;

fn half() -> Mixture {
    Mixture::by_volume(Glycol::Ethylene, 0.5).unwrap()
}

fn measure(litres: f64, within_l: f64, temperature_c: f64) -> Measure {
    Measure {
        amount: Amount::new(litres, within_l),
        temperature_c,
    }
}

fn question<'a>(drained: &'a [Measure], poured: &'a [Measure]) -> FillQuestion<'a> {
    FillQuestion {
        mixture: half(),
        drained,
        lost: None,
        new_parts: None,
        low_at_start: None,
        capacity: None,
        left_in: None,
        poured,
        below_cold_mark: None,
    }
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

/// How an error is spread within its tolerance.
#[derive(Clone, Copy)]
enum Spread {
    /// Bunched: the tolerance is 1.96 standard deviations.
    Bell,
    /// Evenly, up to the tolerance.
    Even,
}

fn error_l(spread: Spread, within_l: f64, chance: &mut ChaCha8Rng) -> f64 {
    match spread {
        Spread::Even => within_l * (2.0 * chance.random::<f64>() - 1.0),
        Spread::Bell => {
            let (u, v): (f64, f64) = (1.0 - chance.random::<f64>(), chance.random());
            let bell = (-2.0 * u.ln()).sqrt() * (std::f64::consts::TAU * v).cos();
            within_l / 1.96 * bell
        }
    }
}

/// A system is drained warm into a pan, some is spilled, and it is filled from a jug
/// until no more goes in because of `trapped_l` of air. Everything is read with error.
fn simulated(spread: Spread, trapped_l: f64, seed: u64) -> Balance {
    let mut chance = ChaCha8Rng::seed_from_u64(seed);
    let density_at = |t_c| density(half(), t_c).unwrap().kg_per_m3;
    let (warm_c, cold_c) = (
        30.0 + 20.0 * chance.random::<f64>(),
        15.0 + 10.0 * chance.random::<f64>(),
    );
    let out_20_l = 4.0 + 3.0 * chance.random::<f64>();
    let spilled_l = 0.1 + 0.5 * chance.random::<f64>();
    let pan_l = out_20_l * density_at(20.0) / density_at(warm_c);
    let in_20_l = out_20_l + spilled_l - trapped_l;
    let jug_l = in_20_l * density_at(20.0) / density_at(cold_c) / 3.0;

    let drained = [measure(
        pan_l + error_l(spread, PAN_WITHIN_L, &mut chance),
        PAN_WITHIN_L,
        warm_c,
    )];
    let poured = [0; 3].map(|_| {
        measure(
            jug_l + error_l(spread, JUG_WITHIN_L, &mut chance),
            JUG_WITHIN_L,
            cold_c,
        )
    });
    let spill_l = (spilled_l + error_l(spread, SPILL_WITHIN_L, &mut chance)).max(0.0);
    balance(&FillQuestion {
        lost: Some(Amount::new(spill_l, SPILL_WITHIN_L)),
        ..question(&drained, &poured)
    })
    .unwrap()
}

#[test]
fn trapped_air_lies_inside_the_band() {
    for (spread, name) in [(Spread::Bell, "bell"), (Spread::Even, "even")] {
        let mut half_widths_l = Vec::new();
        let mut missed = Vec::new();
        for seed in 0..runs() {
            let trapped_l = f64::from(u32::try_from(seed % 30).unwrap()) / 10.0;
            let found = simulated(spread, trapped_l, seed);
            let band = found.missing_l;
            half_widths_l.push((band.high() - band.low()) / 2.0);
            if !(band.low()..=band.high()).contains(&trapped_l) {
                missed.push(seed);
            }
        }
        assert!(
            at_most(missed.len(), 5),
            "{name}: {} seeds missed: {missed:?}",
            missed.len()
        );
        half_widths_l.sort_by(f64::total_cmp);
        let squares = PAN_WITHIN_L.powi(2) + SPILL_WITHIN_L.powi(2) + 3.0 * JUG_WITHIN_L.powi(2);
        let allowed_l = 1.2 * squares.sqrt();
        assert!(
            half_widths_l[half_widths_l.len() / 2] <= allowed_l,
            "{} L, {allowed_l} L allowed",
            half_widths_l[half_widths_l.len() / 2]
        );
    }
}

#[test]
fn more_than_a_litre_missing_is_mostly_told() {
    let mut untold = Vec::new();
    let mut too_much = 0;
    for seed in 0..runs() {
        let trapped_l = 1.01 + f64::from(u32::try_from(seed % 20).unwrap()) / 20.0;
        match simulated(Spread::Bell, trapped_l, 10_000 + seed).verdict {
            FillVerdict::Short { .. } => {}
            FillVerdict::TooMuch { .. } => too_much += 1,
            FillVerdict::Full | FillVerdict::CannotTell => untold.push(10_000 + seed),
        }
    }
    assert!(
        at_most(untold.len(), 10),
        "{} seeds told nothing: {untold:?}",
        untold.len()
    );
    assert_eq!(too_much, 0);
}

/// The other way round: a full system is not called short.
#[test]
fn a_full_system_is_not_called_short() {
    let short = (0..runs())
        .filter(|seed| {
            let verdict = simulated(Spread::Bell, 0.0, 20_000 + seed).verdict;
            matches!(verdict, FillVerdict::Short { .. })
        })
        .count();
    assert!(at_most(short, 5), "{short} of {}", runs());
}

#[test]
fn verdicts_say_what_they_mean() {
    let said = |out_l, in_l, within_l| {
        let found = balance(&question(
            &[measure(out_l, within_l, 20.0)],
            &[measure(in_l, 0.1, 20.0)],
        ));
        found.unwrap().verdict.to_string()
    };
    assert_eq!(said(6.0, 6.0, 0.4), "full");
    assert_eq!(
        said(6.0, 5.0, 0.4),
        "short by about 1.0 L, more than the measuring error: bleed again"
    );
    assert_eq!(
        said(6.0, 5.4, 0.9),
        "can't tell from litres: level after cooling decides"
    );
    assert_eq!(
        said(6.0, 7.0, 0.4),
        "more went in than can fit: check capacity, or coolant elsewhere"
    );
}

#[test]
fn litres_block_only_when_much_is_missing_and_no_cold_level_is_seen() {
    let much = FillVerdict::Short { about_l: 1.3 };
    let little = FillVerdict::Short { about_l: 0.6 };
    assert_eq!(fill_standing(much, false), FillStanding::Blocks);
    assert_eq!(fill_standing(much, true), FillStanding::Warns);
    assert_eq!(fill_standing(little, false), FillStanding::Warns);
    assert_eq!(
        fill_standing(FillVerdict::CannotTell, false),
        FillStanding::Warns
    );
    assert_eq!(
        fill_standing(FillVerdict::CannotTell, true),
        FillStanding::Quiet
    );
    assert_eq!(fill_standing(FillVerdict::Full, false), FillStanding::Quiet);
}

#[test]
fn capacity_and_rest_stand_in_for_the_pan() {
    let poured = [measure(5.6, 0.1, 20.0)];
    let found = balance(&FillQuestion {
        capacity: Some(Amount::new(9.2, 0.3)),
        left_in: Some(Amount::new(3.5, 0.5)),
        ..question(&[], &poured)
    })
    .unwrap();
    assert_eq!(found.basis, Basis::Capacity);
    assert!((found.missing_l.mid() - 0.1).abs() < 1e-9);
    assert_eq!(
        balance(&question(&[], &poured)).unwrap_err(),
        CoolantError::NoBasis
    );
}

#[test]
fn two_ways_of_reckoning_are_weighed_and_compared() {
    let (drained, poured) = ([measure(5.5, 0.4, 20.0)], [measure(5.5, 0.1, 20.0)]);
    let asked = |left_l| {
        balance(&FillQuestion {
            capacity: Some(Amount::new(9.2, 0.2)),
            left_in: Some(Amount::new(left_l, 0.3)),
            ..question(&drained, &poured)
        })
        .unwrap()
    };
    let agreeing = asked(3.6);
    assert_eq!(agreeing.basis, Basis::Both);
    assert!(agreeing.notes.is_empty());
    let one_way = balance(&question(&drained, &poured)).unwrap();
    let width = |found: &Balance| found.missing_l.high() - found.missing_l.low();
    assert!(width(&agreeing) < width(&one_way));
    assert!(
        matches!(asked(2.0).notes.as_slice(), [FillNote::BasesDisagree { by_l }] if *by_l > 1.5)
    );
}

#[test]
fn a_bottle_reading_splits_what_is_missing() {
    let (drained, poured) = ([measure(5.5, 0.4, 20.0)], [measure(4.0, 0.1, 20.0)]);
    let found = balance(&FillQuestion {
        capacity: Some(Amount::new(9.2, 0.3)),
        below_cold_mark: Some(Amount::new(0.5, 0.05)),
        ..question(&drained, &poured)
    })
    .unwrap();
    let split = found.split.unwrap();
    assert!(
        (split.in_bottle.litres + split.air_or_block.litres - found.missing_l.mid()).abs() < 1e-9
    );
    assert!((found.stayed_in.unwrap().litres - 3.7).abs() < 1e-9);
}

#[test]
fn warm_litres_in_the_pan_count_for_less() {
    let found = balance(&question(
        &[measure(6.0, 0.4, 80.0)],
        &[measure(5.8, 0.1, 20.0)],
    ))
    .unwrap();
    // 4 % of 6 L.
    assert!(
        (0.2..0.26).contains(&(6.0 - found.out_l)),
        "{}",
        found.out_l
    );
}

#[test]
fn a_bad_tolerance_is_said() {
    let said = balance(&question(&[measure(6.0, f64::NAN, 20.0)], &[]))
        .unwrap_err()
        .to_string();
    assert!(
        said.starts_with("what was drained is NaN L either way"),
        "{said}"
    );
}

#[test]
fn every_bleed_way_has_work_and_defers_to_the_maker() {
    for way in BleedWay::ALL {
        assert!(way.work().len() >= 3, "{}", way.name());
        assert_eq!(way.cautions().first(), Some(&Caution::MakersSpecification));
        assert!(
            way.work().iter().any(|step| step.contains("level cold")),
            "{}",
            way.name()
        );
    }
}

#[test]
fn a_vacuum_hold_is_judged_by_what_its_maker_allows() {
    let held = |rise_kpa| {
        let hold = Hold {
            minutes: 2.0,
            rise_kpa,
            allowed_kpa: 3.0,
        };
        vacuum_fill(&VacuumQuestion {
            empty_l: 8.0,
            gauge_kpa: -80.0,
            altitude_m: 0.0,
            temperature_c: 20.0,
            hold: Some(hold),
        })
        .unwrap()
    };
    assert_eq!(held(2.0).holds, Some(true));
    assert_eq!(held(5.0).holds, Some(false));
    assert!(
        held(2.0)
            .working
            .text()
            .contains("does not prove pressure-tight")
    );
}

proptest! {
    #[test]
    fn swelling_goes_back_on_cooling(volume in 1.0..20.0_f64, cold in 0.0..40.0_f64, more in 1.0..60.0_f64) {
        let there = swell(half(), volume, cold, cold + more, Some(120.0)).unwrap();
        let back = swell(half(), volume + there.litres, cold + more, cold, None).unwrap();
        prop_assert!(there.litres > 0.0);
        prop_assert!((there.litres + back.litres).abs() < 1e-9);
        prop_assert!((there.bottle_mm.unwrap() - there.litres * 1e4 / 120.0).abs() < 1e-9);
    }

    #[test]
    fn the_deeper_the_vacuum_the_less_air_stays(gauge in -80.0..-1.0_f64, m in 0.0..1500.0_f64) {
        let at = |gauge_kpa| vacuum_fill(&VacuumQuestion {
            empty_l: 8.0, gauge_kpa, altitude_m: m, temperature_c: 20.0, hold: None,
        }).unwrap();
        let (here, deeper) = (at(gauge), at(gauge - 1.0));
        prop_assert!(deeper.gas_left_l < here.gas_left_l);
        prop_assert!((here.gas_left_l + here.expected_l - 8.0).abs() < 1e-9);
        prop_assert!(here.gas_left_l > 0.0);
    }

    #[test]
    fn no_number_makes_it_panic(a in any::<f64>(), b in any::<f64>(), c in any::<f64>()) {
        let drained = [measure(a, b, c)];
        let poured = [measure(b, c, a)];
        let _ = balance(&FillQuestion { capacity: Some(Amount::new(c, a)), left_in: Some(Amount::new(a, b)), ..question(&drained, &poured) });
        let _ = swell(half(), a, b, c, Some(c));
        let _ = vacuum_fill(&VacuumQuestion { empty_l: a, gauge_kpa: b, altitude_m: c, temperature_c: a, hold: None });
    }
}
