//! The rows of `checks/published/fluids.toml`, each against this crate.

#![allow(clippy::unwrap_used, reason = "a test fails by panicking")]

use fluids::{DotClass, UREA_HIGH, UREA_LOW, Urea, Washer, washer};
use measure::Grade;
use toml::Table;

fn file() -> Table {
    include_str!("../../../checks/published/fluids.toml")
        .parse()
        .unwrap()
}

fn rows(kind: &str) -> Vec<Table> {
    let rows = file()[kind].as_array().unwrap().clone();
    rows.iter()
        .map(|row| row.as_table().unwrap().clone())
        .collect()
}

fn number(row: &Table, key: &str) -> f64 {
    row[key]
        .as_float()
        .unwrap_or_else(|| panic!("{key} in {row:?}"))
}

#[test]
fn every_row_names_its_source_and_grade_and_is_read() {
    for (kind, rows) in file() {
        assert!(
            ["brake", "urea", "washer"].contains(&kind.as_str()),
            "{kind}"
        );
        for row in rows.as_array().unwrap() {
            let grade = row["grade"].as_str().and_then(Grade::named);
            assert!(
                grade.is_some_and(|grade| !matches!(grade, Grade::Given | Grade::Derived)),
                "{row:?}"
            );
            assert!(
                row["source"]
                    .as_str()
                    .is_some_and(|source| source.len() > 5)
            );
        }
    }
}

#[test]
fn brake() {
    let rows = rows("brake");
    assert_eq!(rows.len(), DotClass::ALL.len());
    for row in rows {
        let limits = DotClass::named(row["class"].as_str().unwrap())
            .unwrap()
            .limits();
        assert_eq!(
            (limits.dry_c, limits.wet_c),
            (number(&row, "dry_c"), number(&row, "wet_c")),
            "{row:?}"
        );
    }
}

#[test]
fn urea() {
    for row in rows("urea") {
        assert_eq!(
            (UREA_LOW, UREA_HIGH),
            (number(&row, "low_percent"), number(&row, "high_percent"))
        );
        for (index, percent) in [("low_refraction", UREA_LOW), ("high_refraction", UREA_HIGH)] {
            let found = Urea::percent_by_refraction(number(&row, index)).unwrap();
            assert!((found - percent).abs() < 1e-9);
        }
    }
}

#[test]
fn washers() {
    for row in rows("washer") {
        let found = washer(&Washer {
            holds_l: number(&row, "holds_l"),
            left_l: 0.0,
            left_percent: 0.0,
            want_percent: Some(number(&row, "want_percent")),
            want_c: None,
            label: Vec::new(),
        });
        let found = found.unwrap();
        assert!((found.concentrate_l - number(&row, "concentrate_l")).abs() < 1e-9);
        assert!((found.water_l - number(&row, "water_l")).abs() < 1e-9);
    }
}
