//! The rows of `checks/published/coolant.toml`, each against this crate.

#![allow(clippy::unwrap_used, reason = "a test fails by panicking")]

use checks::{Row, published};
use coolant::{Concentrate, Glycol, Mixture, boiling, density, freezing, specific_heat, viscosity};
use std::collections::BTreeSet;

fn rows(kind: &str) -> Vec<Row> {
    published("coolant").rows(kind).to_vec()
}

fn glycol(row: &Row) -> Glycol {
    Glycol::named(row.text("glycol")).unwrap()
}

fn mixture(row: &Row) -> Mixture {
    let fraction = row.real("fraction");
    match row.text("basis") {
        "mass" => Mixture::by_mass(glycol(row), fraction),
        "volume" => Mixture::by_volume(glycol(row), fraction),
        "concentrate" => Mixture::of_concentrate(glycol(row), fraction, Concentrate::default()),
        other => panic!("{other} is no basis"),
    }
    .unwrap()
}

#[test]
fn the_rows_come_from_twelve_sources() {
    let file = published("coolant");
    let titles: BTreeSet<&str> = file.all().map(|row| row.source().title.as_str()).collect();
    assert!(titles.len() >= 12, "{titles:?}");
}

#[test]
fn freeze() {
    for row in rows("freeze") {
        let got = freezing(mixture(&row)).unwrap().freeze_c;
        row.assert_near(got, "expected_c", "tolerance_k");
    }
}

/// Rows of both files: those that a value is held against, and those that only a band is.
fn with_bands(kind: &str) -> Vec<Row> {
    let more = published("coolant-bands").rows(kind).to_vec();
    rows(kind).into_iter().chain(more).collect()
}

/// Every table lies within the band that is stated, on either side.
#[test]
fn the_stated_band_holds_every_published_freezing_point() {
    let all = with_bands("freeze");
    assert!(all.len() >= 40);
    for row in all {
        let found = freezing(mixture(&row)).unwrap();
        let off = (found.freeze_c - row.real("expected_c")).abs();
        let (freeze_c, within_k) = (found.freeze_c, found.within_k);
        assert!(off <= within_k, "{row}: {freeze_c} ± {within_k}");
    }
}

/// Bought coolant and other tables lie within the band of densities that is stated, warm too.
#[test]
fn the_stated_band_holds_every_published_density() {
    for row in with_bands("density") {
        let found = density(mixture(&row), row.real("temperature_c")).unwrap();
        let printed = row.real("expected_kg_per_m3");
        let band = found.bought_kg_per_m3;
        assert!(
            band.low() <= printed && printed <= band.high(),
            "{row}: {band:?}"
        );
    }
}

/// Beyond 60 % by mass the published points answer; past 68 % nothing is said, and of propylene
/// glycol never that it turns back.
#[test]
fn beyond_the_models_published_points_answer() {
    let at = |glycol, x| freezing(Mixture::by_mass(glycol, x).unwrap());
    let strong = at(Glycol::Ethylene, 0.64).unwrap().freeze_c;
    assert!((-69.0..-52.0).contains(&strong), "{strong}");
    let says = |glycol| at(glycol, 0.7).unwrap_err().to_string();
    assert!(says(Glycol::Ethylene).contains("turns back up"));
    let propylene = says(Glycol::Propylene);
    assert!(propylene.contains("does not turn back"), "{propylene}");
    let density = density(Mixture::by_mass(Glycol::Propylene, 0.7).unwrap(), 20.0).unwrap_err();
    assert!(!density.to_string().contains("freez"), "{density}");
}

/// The lowest that is published lies beyond the models, and is answered as published.
#[test]
fn turns_back() {
    for row in rows("turns_back") {
        let lowest = freezing(mixture(&row)).unwrap().freeze_c;
        assert!(
            (lowest - row.real("lowest_c")).abs() < 0.5,
            "{row}: {lowest}"
        );
        let strongest = Mixture::by_mass(glycol(&row), 0.6).unwrap();
        assert!(freezing(strongest).unwrap().freeze_c > row.real("lowest_c"));
    }
}

#[test]
fn densities() {
    for row in rows("density") {
        let got = density(mixture(&row), row.real("temperature_c")).unwrap();
        row.assert_near(got.kg_per_m3, "expected_kg_per_m3", "tolerance");
    }
}

#[test]
fn pure_density() {
    for row in rows("pure_density") {
        row.assert_near(glycol(&row).kg_per_m3(), "expected_kg_per_m3", "tolerance");
    }
}

#[test]
fn specific_heats() {
    for row in rows("specific_heat") {
        let got = specific_heat(mixture(&row), row.real("temperature_c")).unwrap();
        row.assert_near(got.j_per_kg_k, "expected", "tolerance");
    }
}

#[test]
fn viscosities() {
    for row in rows("viscosity") {
        let got = viscosity(mixture(&row), row.real("temperature_c")).unwrap();
        row.assert_near(got.mpa_s, "expected", "tolerance");
    }
}

#[test]
fn conversion() {
    for row in rows("conversion") {
        let mixture = Mixture::by_mass(glycol(&row), row.real("mass_fraction")).unwrap();
        row.assert_near(mixture.volume_fraction(), "volume_fraction", "tolerance");
    }
}

#[test]
fn swell() {
    for row in rows("swell") {
        let (cold_c, hot_c) = (row.real("cold_c"), row.real("hot_c"));
        let found = coolant::swell(mixture(&row), 1.0, cold_c, hot_c, None).unwrap();
        row.assert_near(1.0 + found.litres, "expected_ratio", "tolerance");
    }
}

#[test]
fn steam_pressure() {
    for row in rows("steam_pressure") {
        let got = coolant::steam_pressure(row.real("temperature_c"))
            .unwrap()
            .absolute_kpa;
        row.assert_near(got, "expected_kpa", "tolerance");
    }
}

#[test]
fn water_boils() {
    for row in rows("water_boils") {
        let got = coolant::water_boils(row.real("absolute_kpa"))
            .unwrap()
            .boil_c;
        row.assert_near(got, "expected_c", "tolerance_k");
    }
}

#[test]
fn atmosphere() {
    for row in rows("atmosphere") {
        let got = coolant::atmosphere(row.real("altitude_m"))
            .unwrap()
            .absolute_kpa;
        row.assert_near(got, "expected_kpa", "tolerance");
    }
}

#[test]
fn boiling_points() {
    for row in rows("boiling") {
        let cap = row.real("cap_gauge_kpa");
        let found = boiling(mixture(&row), cap, row.real("altitude_m")).unwrap();
        row.assert_near(found.boil_c, "expected_c", "tolerance_k");
        assert!(found.boil_open_c <= found.boil_c);
    }
}

/// Every kind of row in the file is checked by a test of this crate.
#[test]
fn no_row_goes_unread() {
    let read = [
        "freeze",
        "turns_back",
        "density",
        "pure_density",
        "specific_heat",
        "viscosity",
        "conversion",
        "swell",
        "steam_pressure",
        "water_boils",
        "atmosphere",
        "boiling",
        "student",
    ];
    for kind in published("coolant").kinds() {
        assert!(read.contains(&kind), "{kind}");
    }
}
