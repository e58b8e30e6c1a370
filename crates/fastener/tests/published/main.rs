//! The rows of `checks/published/fastener-*.toml`, each against this crate.

#![allow(clippy::unwrap_used, reason = "a test fails by panicking")]

mod torque;

use checks::{Grade, Row, published};
use fastener::clearance::clearance_holes;
use fastener::designation::{Kind, read, read_clamping};
use fastener::drill::{named, usual};
use fastener::head::{Head, wrench};
use fastener::parent;
use fastener::pipe::{Family, pipe};
use fastener::repair::{insert_hole, insert_length_diameters};
use fastener::strip::hole_shear_mm2_per_mm;
use fastener::tolerance::limits;
use fastener::twist::breaking_torque;
use fastener::{Class, Thread};
use std::collections::BTreeSet;

const FILES: [&str; 4] = ["threads", "sizes", "strength", "torque"];
const INCH_MM: f64 = 25.4;
const LBF_N: f64 = 4.448_221_615_260_5;

fn rows(name: &str, kind: &str) -> Vec<Row> {
    published(&format!("fastener-{name}")).rows(kind).to_vec()
}

/// A printed number and half its last digit.
fn printed(text: &str) -> (f64, f64) {
    let decimals = text.split_once('.').map_or(0, |(_, part)| part.len());
    let half = 0.5 * 10_f64.powi(-i32::try_from(decimals).unwrap());
    // Large loads are printed in three or four figures: 11600, 112000.
    let zeros = text.len() - text.trim_end_matches('0').len();
    let half = if decimals == 0 && text.len() > 3 {
        half * 10_f64.powi(i32::try_from(zeros.min(text.len() - 3)).unwrap())
    } else {
        half
    };
    (text.parse().unwrap(), half)
}

/// Holds `got` against a printed number; a hair is allowed for its last bits.
fn assert_printed(row: &Row, key: &str, got: f64) {
    let (expected, half) = printed(row.text(key));
    let tolerance = if row.has("tolerance") {
        row.real("tolerance")
    } else {
        half
    };
    assert!(
        (got - expected).abs() <= tolerance * (1.0 + 1e-9),
        "{row}: {key} is {got}"
    );
}

fn thread(row: &Row) -> Thread {
    read_clamping(row.text("thread")).unwrap()
}

fn class(row: &Row) -> Class {
    Class::read(row.text("class")).unwrap()
}

/// A length in the row's unit.
fn in_unit(row: &Row, mm: f64) -> f64 {
    match row.text("unit") {
        "mm" | "mm2" => mm,
        "in" => mm / INCH_MM,
        "in2" => mm / INCH_MM / INCH_MM,
        other => panic!("unit {other}"),
    }
}

fn size_of(row: &Row) -> f64 {
    let sizes = thread(row).geometry();
    let mm = match row.text("quantity") {
        "pitch_diameter" => sizes.pitch_diameter_mm,
        "minor_diameter" => sizes.minor_diameter_mm,
        "root_diameter" => sizes.root_diameter_mm,
        "stress_area" => sizes.stress_area_mm2,
        other => panic!("quantity {other}"),
    };
    in_unit(row, mm)
}

#[test]
fn there_are_twelve_published_sources() {
    let mut titles = BTreeSet::new();
    for name in FILES {
        for row in published(&format!("fastener-{name}")).all() {
            if row.grade() == Grade::Published {
                titles.insert(row.source().title.clone());
            }
        }
    }
    assert!(titles.len() >= 12, "{titles:?}");
}

#[test]
fn sizes_are_those_of_iso_724_and_asme_b1_1() {
    for row in rows("threads", "size") {
        assert_printed(&row, "expected", size_of(&row));
    }
}

/// The minor diameters of the old flat form are not those of the rounded root.
#[test]
fn sizes_of_the_old_form_stay_wrong() {
    for row in rows("threads", "wrong") {
        let (value, half) = printed(row.text("printed"));
        assert!((size_of(&row) - value).abs() > half, "{row}");
    }
}

#[test]
fn tap_drills_are_those_of_the_charts() {
    for row in rows("threads", "tap_drill") {
        assert_eq!(
            usual(&thread(&row)).drill.name,
            row.text("expected"),
            "{row}"
        );
    }
}

/// What a working calls published must have been read: rows of grade `memory` come from sources
/// that the crate calls memory too.
#[test]
fn grades_in_the_workings_match_the_rows() {
    for row in rows("threads", "tap_drill") {
        assert_eq!(
            usual(&thread(&row)).source.grade.name(),
            row.grade().name(),
            "{row}"
        );
    }
    for row in rows("sizes", "wrench") {
        let thread = thread(&row);
        let head = Head::named(row.text("head"), &thread).unwrap();
        assert_eq!(
            wrench(head, &thread).unwrap().source.grade.name(),
            row.grade().name(),
            "{row}"
        );
    }
    for row in rows("strength", "breaking_torque") {
        let found = breaking_torque(&thread(&row), class(&row)).unwrap();
        assert_eq!(found.source.grade.name(), row.grade().name(), "{row}");
    }
}

#[test]
fn limits_are_those_of_iso_965_1_and_asme_b1_1() {
    for row in rows("threads", "limit") {
        let thread = thread(&row);
        let limits = limits(&thread);
        let mm = match row.text("quantity") {
            "bolt_major_min" => limits.bolt_major_min_mm,
            "bolt_pitch_min" => limits.bolt_pitch_min_mm,
            "bolt_pitch_max" => limits.bolt_pitch_max_mm,
            "bolt_root_min" => limits.bolt_root_min_mm,
            "hole_pitch_max" => limits.hole_pitch_max_mm,
            "hole_minor_max" => limits.hole_minor_max_mm,
            "hole_pitch_tolerance" => {
                limits.hole_pitch_max_mm - thread.geometry().pitch_diameter_mm
            }
            other => panic!("quantity {other}"),
        };
        assert_printed(&row, "expected", in_unit(&row, mm));
    }
}

#[test]
fn taper_pipe_threads_are_made_up_by_the_turns_of_the_table() {
    for row in rows("threads", "pipe") {
        let found = pipe(Family::Npt, row.text("size")).unwrap();
        let turns = found.turns.unwrap();
        assert_eq!(
            found.threads_per_inch,
            row.real("threads_per_inch"),
            "{row}"
        );
        assert_eq!(turns.by_hand, row.real("by_hand"), "{row}");
        assert_eq!(turns.by_wrench, row.real("by_wrench"), "{row}");
        let read = read(&format!("{} NPT", row.text("size"))).unwrap();
        assert_eq!(read.kind, Kind::Pipe(found));
    }
}

#[test]
fn number_and_letter_drills_have_their_sizes() {
    for row in rows("threads", "drill") {
        let drill = named(row.text("name")).unwrap();
        assert_printed(&row, "expected", drill.diameter_mm / INCH_MM);
    }
}

#[test]
fn wrenches_are_those_of_the_standards() {
    for row in rows("sizes", "wrench") {
        let thread = thread(&row);
        let head = Head::named(row.text("head"), &thread).unwrap();
        let found = wrench(head, &thread).unwrap();
        assert_eq!(found.name, row.text("expected"), "{row}");
    }
}

#[test]
fn wrong_wrenches_stay_wrong() {
    for row in rows("sizes", "wrong_wrench") {
        let thread = thread(&row);
        let head = Head::named(row.text("head"), &thread).unwrap();
        assert_ne!(
            wrench(head, &thread).unwrap().name,
            row.text("printed"),
            "{row}"
        );
    }
}

#[test]
fn clearance_holes_are_those_of_iso_273_and_asme_b18_2_8() {
    for row in rows("sizes", "clearance") {
        let holes = clearance_holes(&thread(&row)).unwrap();
        let fits = [
            ("close", holes.close_mm),
            ("normal", holes.normal_mm),
            ("loose", holes.loose_mm),
        ];
        for (key, mm) in fits.into_iter().filter(|(key, _)| row.has(key)) {
            assert_printed(&row, key, in_unit(&row, mm));
        }
    }
}

#[test]
fn insert_drills_are_those_of_the_guides() {
    for row in rows("sizes", "insert_drill") {
        assert_eq!(
            insert_hole(&thread(&row)).drill.name,
            row.text("expected"),
            "{row}"
        );
    }
}

#[test]
fn insert_lengths_are_those_of_the_makers_table() {
    for row in rows("sizes", "insert_length") {
        let found =
            insert_length_diameters(row.real("parent_tensile_mpa"), row.real("bolt_tensile_mpa"));
        assert_eq!(found, Some(row.real("expected")), "{row}");
    }
}

#[test]
fn loads_are_those_of_iso_898_1_and_sae_j429() {
    for row in rows("strength", "load") {
        let loads = class(&row).loads(&thread(&row)).unwrap();
        let newtons = match row.text("quantity") {
            "proof" => loads.proof_n.unwrap(),
            "yield" => loads.yield_n,
            "breaking" => loads.breaking_n,
            other => panic!("quantity {other}"),
        };
        let got = if row.text("unit") == "lbf" {
            newtons / LBF_N
        } else {
            newtons
        };
        assert_printed(&row, "expected", got);
    }
}

#[test]
fn stresses_are_those_of_the_classes() {
    for row in rows("strength", "stress") {
        let stresses = class(&row).stresses(&thread(&row)).unwrap();
        let psi = if row.text("unit") == "psi" {
            0.006_894_757_293_168
        } else {
            1.0
        };
        assert_printed(&row, "yield", stresses.yield_mpa / psi);
        assert_printed(&row, "tensile", stresses.tensile_mpa / psi);
        match stresses.proof_mpa {
            Some(proof) => assert_printed(&row, "proof", proof / psi),
            None => assert!(!row.has("proof"), "{row}"),
        }
    }
}

#[test]
fn breaking_torques_are_those_of_iso_898_7() {
    for row in rows("strength", "breaking_torque") {
        let found = breaking_torque(&thread(&row), class(&row)).unwrap();
        assert_printed(&row, "expected", found.torque_nm);
    }
}

/// K·F·d is no breaking torque.
#[test]
fn breaking_torques_by_the_wrong_formula_stay_wrong() {
    for row in rows("strength", "wrong_breaking_torque") {
        let found = breaking_torque(&thread(&row), class(&row))
            .unwrap()
            .torque_nm;
        let (value, _) = printed(row.text("printed"));
        assert!((found - value).abs() > 0.2 * found, "{row}: {found}");
    }
}

#[test]
fn the_length_of_engagement_is_that_of_the_worked_example() {
    for row in rows("strength", "engagement") {
        let area = hole_shear_mm2_per_mm(
            row.real("pitch_mm"),
            row.real("bolt_major_mm"),
            row.real("hole_pitch_mm"),
        );
        let length = row.real("load_n") / (area * row.real("shear_mpa"));
        assert_printed(&row, "expected", length);
    }
}

#[test]
fn parent_metals_have_their_published_strengths() {
    for row in rows("strength", "parent") {
        let metal = parent::named(row.text("name")).unwrap();
        assert_printed(&row, "tensile", metal.tensile_mpa);
        if row.has("shear") {
            assert_printed(&row, "shear", metal.shear_mpa);
        }
    }
}
