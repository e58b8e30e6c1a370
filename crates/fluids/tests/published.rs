//! The rows of `checks/published/fluids.toml`, each against this crate.

#![allow(clippy::unwrap_used, reason = "a test fails by panicking")]

use checks::{Row, published};
use fluids::{DotClass, UREA_HIGH, UREA_LOW, Urea, Washer, washer};

fn rows(kind: &str) -> Vec<Row> {
    published("fluids").rows(kind).to_vec()
}

#[test]
fn no_row_goes_unread() {
    let counted: usize = ["brake", "urea", "washer"]
        .iter()
        .map(|kind| rows(kind).len())
        .sum();
    assert_eq!(counted, published("fluids").all().count());
}

#[test]
fn brake() {
    let rows = rows("brake");
    assert_eq!(rows.len(), DotClass::ALL.len());
    for row in rows {
        let limits = DotClass::named(row.text("class")).unwrap().limits();
        assert_eq!(
            (limits.dry_c, limits.wet_c),
            (row.real("dry_c"), row.real("wet_c")),
            "{row}"
        );
    }
}

#[test]
fn urea() {
    for row in rows("urea") {
        assert_eq!(
            (UREA_LOW, UREA_HIGH),
            (row.real("low_percent"), row.real("high_percent"))
        );
        for (index, percent) in [("low_refraction", UREA_LOW), ("high_refraction", UREA_HIGH)] {
            let found = Urea::percent_by_refraction(row.real(index)).unwrap();
            assert!((found - percent).abs() < 1e-9);
        }
    }
}

#[test]
fn washers() {
    for row in rows("washer") {
        let found = washer(&Washer {
            holds_l: row.real("holds_l"),
            left_l: 0.0,
            left_percent: 0.0,
            want_percent: Some(row.real("want_percent")),
            want_c: None,
            label: Vec::new(),
        });
        let found = found.unwrap();
        assert!((found.concentrate_l - row.real("concentrate_l")).abs() < 1e-9);
        assert!((found.water_l - row.real("water_l")).abs() < 1e-9);
    }
}
