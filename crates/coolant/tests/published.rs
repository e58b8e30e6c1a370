//! The rows of `checks/published/coolant.toml`, each against this crate.

#![allow(clippy::unwrap_used, reason = "a test fails by panicking")]

use coolant::{Concentrate, Glycol, Mixture, boiling, density, freezing, specific_heat, viscosity};
use measure::Grade;
use std::collections::BTreeSet;
use toml::{Table, Value};

fn file() -> Table {
    include_str!("../../../checks/published/coolant.toml")
        .parse()
        .unwrap()
}

fn rows(kind: &str) -> Vec<Table> {
    let file = file();
    let rows = file[kind].as_array().unwrap();
    assert!(!rows.is_empty(), "{kind}");
    rows.iter()
        .map(|row| row.as_table().unwrap().clone())
        .collect()
}

fn number(row: &Table, key: &str) -> f64 {
    row[key]
        .as_float()
        .unwrap_or_else(|| panic!("{key} in {row:?}"))
}

fn text<'row>(row: &'row Table, key: &str) -> &'row str {
    row[key]
        .as_str()
        .unwrap_or_else(|| panic!("{key} in {row:?}"))
}

fn glycol(row: &Table) -> Glycol {
    Glycol::named(text(row, "glycol")).unwrap()
}

fn mixture(row: &Table) -> Mixture {
    let fraction = number(row, "fraction");
    match text(row, "basis") {
        "mass" => Mixture::by_mass(glycol(row), fraction),
        "volume" => Mixture::by_volume(glycol(row), fraction),
        "concentrate" => Mixture::of_concentrate(glycol(row), fraction, Concentrate::default()),
        other => panic!("{other} is no basis"),
    }
    .unwrap()
}

fn assert_near(row: &Table, got: f64, expected: &str, tolerance: &str) {
    let off = (got - number(row, expected)).abs();
    assert!(off <= number(row, tolerance), "{row:?}: got {got}");
}

#[test]
fn every_row_names_its_source_and_grade() {
    let mut sources = BTreeSet::new();
    for (kind, rows) in file() {
        for row in rows.as_array().unwrap() {
            let row = row.as_table().unwrap();
            let grade = Grade::named(text(row, "grade"));
            assert!(
                grade.is_some_and(|grade| !matches!(grade, Grade::Given | Grade::Derived)),
                "{kind}: {row:?}"
            );
            sources.insert(text(row, "source").to_owned());
        }
    }
    assert!(
        sources.len() >= 12,
        "only {} sources: {sources:?}",
        sources.len()
    );
}

#[test]
fn freeze() {
    for row in rows("freeze") {
        let got = freezing(mixture(&row)).unwrap().freeze_c;
        assert_near(&row, got, "expected_c", "tolerance_k");
    }
}

/// Where the freezing point has turned back up, nothing is said.
#[test]
fn turns_back() {
    for row in rows("turns_back") {
        assert!(freezing(mixture(&row)).is_err(), "{row:?}");
        let strongest = Mixture::by_mass(glycol(&row), 0.6).unwrap();
        assert!(freezing(strongest).unwrap().freeze_c > number(&row, "lowest_c"));
    }
}

#[test]
fn densities() {
    for row in rows("density") {
        let got = density(mixture(&row), number(&row, "temperature_c")).unwrap();
        assert_near(&row, got.kg_per_m3, "expected_kg_per_m3", "tolerance");
    }
}

#[test]
fn pure_density() {
    for row in rows("pure_density") {
        assert_near(
            &row,
            glycol(&row).kg_per_m3(),
            "expected_kg_per_m3",
            "tolerance",
        );
    }
}

#[test]
fn specific_heats() {
    for row in rows("specific_heat") {
        let got = specific_heat(mixture(&row), number(&row, "temperature_c")).unwrap();
        assert_near(&row, got.j_per_kg_k, "expected", "tolerance");
    }
}

#[test]
fn viscosities() {
    for row in rows("viscosity") {
        let got = viscosity(mixture(&row), number(&row, "temperature_c")).unwrap();
        assert_near(&row, got.mpa_s, "expected", "tolerance");
    }
}

#[test]
fn conversion() {
    for row in rows("conversion") {
        let mixture = Mixture::by_mass(glycol(&row), number(&row, "mass_fraction")).unwrap();
        assert_near(
            &row,
            mixture.volume_fraction(),
            "volume_fraction",
            "tolerance",
        );
    }
}

#[test]
fn swell() {
    for row in rows("swell") {
        let (cold_c, hot_c) = (number(&row, "cold_c"), number(&row, "hot_c"));
        let found = coolant::swell(mixture(&row), 1.0, cold_c, hot_c, None).unwrap();
        assert_near(&row, 1.0 + found.litres, "expected_ratio", "tolerance");
    }
}

#[test]
fn steam_pressure() {
    for row in rows("steam_pressure") {
        let got = coolant::steam_pressure(number(&row, "temperature_c"))
            .unwrap()
            .absolute_kpa;
        assert_near(&row, got, "expected_kpa", "tolerance");
    }
}

#[test]
fn water_boils() {
    for row in rows("water_boils") {
        let got = coolant::water_boils(number(&row, "absolute_kpa"))
            .unwrap()
            .boil_c;
        assert_near(&row, got, "expected_c", "tolerance_k");
    }
}

#[test]
fn atmosphere() {
    for row in rows("atmosphere") {
        let got = coolant::atmosphere(number(&row, "altitude_m"))
            .unwrap()
            .absolute_kpa;
        assert_near(&row, got, "expected_kpa", "tolerance");
    }
}

#[test]
fn boiling_points() {
    for row in rows("boiling") {
        let cap = number(&row, "cap_gauge_kpa");
        let found = boiling(mixture(&row), cap, number(&row, "altitude_m")).unwrap();
        assert_near(&row, found.boil_c, "expected_c", "tolerance_k");
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
    for (kind, rows) in file() {
        assert!(
            matches!(rows, Value::Array(_)) && read.contains(&kind.as_str()),
            "{kind}"
        );
    }
}
