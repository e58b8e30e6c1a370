//! The rows of `checks/published/fastener-*.toml`, each against this crate.

#![allow(clippy::unwrap_used, reason = "a test fails by panicking")]

use fastener::ask::{AdapterQuestion, adapter};
use fastener::clearance::clearance_holes;
use fastener::designation::{Kind, read, read_clamping};
use fastener::drill::{named, usual};
use fastener::friction::Condition;
use fastener::head::{Head, wrench};
use fastener::parent;
use fastener::pipe::{Family, pipe};
use fastener::repair::{insert_hole, insert_length_diameters};
use fastener::strip::hole_shear_mm2_per_mm;
use fastener::tolerance::limits;
use fastener::torque::{Form, Friction, Joint, clamp_for_torque, torque_for_clamp, yield_clamp_n};
use fastener::twist::breaking_torque;
use fastener::wrench::{Reads, reads};
use fastener::{Class, Thread};
use measure::{Dimension, Grade, Unit};
use std::collections::BTreeSet;
use toml::Table;

const FILES: [&str; 4] = ["threads", "sizes", "strength", "torque"];
const INCH_MM: f64 = 25.4;
const LBF_N: f64 = 4.448_221_615_260_5;

fn file(name: &str) -> Table {
    let path = format!(
        "{}/../../checks/published/fastener-{name}.toml",
        env!("CARGO_MANIFEST_DIR")
    );
    std::fs::read_to_string(path).unwrap().parse().unwrap()
}

fn rows(name: &str, kind: &str) -> Vec<Table> {
    let rows: Vec<Table> = file(name)[kind]
        .as_array()
        .unwrap()
        .iter()
        .map(|row| row.as_table().unwrap().clone())
        .collect();
    assert!(!rows.is_empty());
    rows
}

fn text<'row>(row: &'row Table, key: &str) -> &'row str {
    row[key]
        .as_str()
        .unwrap_or_else(|| panic!("{key} in {row:?}"))
}

fn real(row: &Table, key: &str) -> f64 {
    row[key]
        .as_float()
        .unwrap_or_else(|| panic!("{key} in {row:?}"))
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
fn assert_printed(row: &Table, key: &str, got: f64) {
    let (expected, half) = printed(text(row, key));
    let tolerance = row
        .get("tolerance")
        .and_then(toml::Value::as_float)
        .unwrap_or(half);
    assert!(
        (got - expected).abs() <= tolerance * (1.0 + 1e-9),
        "{row:?}: {key} is {got}"
    );
}

fn thread(row: &Table) -> Thread {
    read_clamping(text(row, "thread")).unwrap()
}

fn class(row: &Table) -> Class {
    Class::read(text(row, "class")).unwrap()
}

/// A length in the row's unit.
fn in_unit(row: &Table, mm: f64) -> f64 {
    match text(row, "unit") {
        "mm" | "mm2" => mm,
        "in" => mm / INCH_MM,
        "in2" => mm / INCH_MM / INCH_MM,
        other => panic!("unit {other}"),
    }
}

fn size_of(row: &Table) -> f64 {
    let sizes = thread(row).geometry();
    let mm = match text(row, "quantity") {
        "pitch_diameter" => sizes.pitch_diameter_mm,
        "minor_diameter" => sizes.minor_diameter_mm,
        "root_diameter" => sizes.root_diameter_mm,
        "stress_area" => sizes.stress_area_mm2,
        other => panic!("quantity {other}"),
    };
    in_unit(row, mm)
}

#[test]
fn every_row_names_its_source_and_grade_and_there_are_twelve_sources() {
    let mut sources = BTreeSet::new();
    for name in FILES {
        for (kind, rows) in file(name) {
            for row in rows.as_array().unwrap() {
                let row = row.as_table().unwrap();
                let grade = Grade::named(text(row, "grade")).unwrap();
                assert!(!text(row, "source").is_empty(), "{kind}: {row:?}");
                if grade == Grade::Published {
                    sources.insert(text(row, "source").to_owned());
                }
            }
        }
    }
    assert!(sources.len() >= 12, "{sources:?}");
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
        let (value, half) = printed(text(&row, "printed"));
        assert!((size_of(&row) - value).abs() > half, "{row:?}");
    }
}

#[test]
fn tap_drills_are_those_of_the_charts() {
    for row in rows("threads", "tap_drill") {
        assert_eq!(
            usual(&thread(&row)).drill.name,
            text(&row, "expected"),
            "{row:?}"
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
            text(&row, "grade"),
            "{row:?}"
        );
    }
    for row in rows("sizes", "wrench") {
        let thread = thread(&row);
        let head = Head::named(text(&row, "head"), &thread).unwrap();
        assert_eq!(
            wrench(head, &thread).unwrap().source.grade.name(),
            text(&row, "grade"),
            "{row:?}"
        );
    }
    for row in rows("strength", "breaking_torque") {
        let found = breaking_torque(&thread(&row), class(&row)).unwrap();
        assert_eq!(found.source.grade.name(), text(&row, "grade"), "{row:?}");
    }
}

#[test]
fn limits_are_those_of_iso_965_1_and_asme_b1_1() {
    for row in rows("threads", "limit") {
        let thread = thread(&row);
        let limits = limits(&thread);
        let mm = match text(&row, "quantity") {
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
        let found = pipe(Family::Npt, text(&row, "size")).unwrap();
        let turns = found.turns.unwrap();
        assert_eq!(
            found.threads_per_inch,
            real(&row, "threads_per_inch"),
            "{row:?}"
        );
        assert_eq!(turns.by_hand, real(&row, "by_hand"), "{row:?}");
        assert_eq!(turns.by_wrench, real(&row, "by_wrench"), "{row:?}");
        let read = read(&format!("{} NPT", text(&row, "size"))).unwrap();
        assert_eq!(read.kind, Kind::Pipe(found));
    }
}

#[test]
fn number_and_letter_drills_have_their_sizes() {
    for row in rows("threads", "drill") {
        let drill = named(text(&row, "name")).unwrap();
        assert_printed(&row, "expected", drill.diameter_mm / INCH_MM);
    }
}

#[test]
fn wrenches_are_those_of_the_standards() {
    for row in rows("sizes", "wrench") {
        let thread = thread(&row);
        let head = Head::named(text(&row, "head"), &thread).unwrap();
        let found = wrench(head, &thread).unwrap();
        assert_eq!(found.name, text(&row, "expected"), "{row:?}");
    }
}

#[test]
fn wrong_wrenches_stay_wrong() {
    for row in rows("sizes", "wrong_wrench") {
        let thread = thread(&row);
        let head = Head::named(text(&row, "head"), &thread).unwrap();
        assert_ne!(
            wrench(head, &thread).unwrap().name,
            text(&row, "printed"),
            "{row:?}"
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
        for (key, mm) in fits.into_iter().filter(|(key, _)| row.contains_key(*key)) {
            assert_printed(&row, key, in_unit(&row, mm));
        }
    }
}

#[test]
fn insert_drills_are_those_of_the_guides() {
    for row in rows("sizes", "insert_drill") {
        assert_eq!(
            insert_hole(&thread(&row)).drill.name,
            text(&row, "expected"),
            "{row:?}"
        );
    }
}

#[test]
fn insert_lengths_are_those_of_the_makers_table() {
    for row in rows("sizes", "insert_length") {
        let found = insert_length_diameters(
            real(&row, "parent_tensile_mpa"),
            real(&row, "bolt_tensile_mpa"),
        );
        assert_eq!(found, Some(real(&row, "expected")), "{row:?}");
    }
}

#[test]
fn loads_are_those_of_iso_898_1_and_sae_j429() {
    for row in rows("strength", "load") {
        let loads = class(&row).loads(&thread(&row)).unwrap();
        let newtons = match text(&row, "quantity") {
            "proof" => loads.proof_n.unwrap(),
            "yield" => loads.yield_n,
            "breaking" => loads.breaking_n,
            other => panic!("quantity {other}"),
        };
        let got = if text(&row, "unit") == "lbf" {
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
        let psi = if text(&row, "unit") == "psi" {
            0.006_894_757_293_168
        } else {
            1.0
        };
        assert_printed(&row, "yield", stresses.yield_mpa / psi);
        assert_printed(&row, "tensile", stresses.tensile_mpa / psi);
        match stresses.proof_mpa {
            Some(proof) => assert_printed(&row, "proof", proof / psi),
            None => assert!(!row.contains_key("proof"), "{row:?}"),
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
        let (value, _) = printed(text(&row, "printed"));
        assert!((found - value).abs() > 0.2 * found, "{row:?}: {found}");
    }
}

#[test]
fn the_length_of_engagement_is_that_of_the_worked_example() {
    for row in rows("strength", "engagement") {
        let area = hole_shear_mm2_per_mm(
            real(&row, "pitch_mm"),
            real(&row, "bolt_major_mm"),
            real(&row, "hole_pitch_mm"),
        );
        let length = real(&row, "load_n") / (area * real(&row, "shear_mpa"));
        assert_printed(&row, "expected", length);
    }
}

#[test]
fn parent_metals_have_their_published_strengths() {
    for row in rows("strength", "parent") {
        let metal = parent::named(text(&row, "name")).unwrap();
        assert_printed(&row, "tensile", metal.tensile_mpa);
        if row.contains_key("shear") {
            assert_printed(&row, "shear", metal.shear_mpa);
        }
    }
}

fn share_of_proof_n(row: &Table) -> f64 {
    let proof_n = class(row).loads(&thread(row)).unwrap().proof_n.unwrap();
    real(row, "share_of_proof") * proof_n
}

#[test]
fn the_short_form_gives_the_published_torques() {
    for row in rows("torque", "short_form") {
        let joint = Joint::standard(&thread(&row), Head::plain(&thread(&row))).unwrap();
        let form = Form::Short {
            nut_factor: real(&row, "nut_factor"),
        };
        let friction = Friction::both(0.15).unwrap();
        let torque_nm = torque_for_clamp(&joint, friction, share_of_proof_n(&row), form).total_nm;
        let got = match text(&row, "unit") {
            "Nm" => torque_nm,
            "lbf in" => torque_nm / (LBF_N * INCH_MM / 1000.0),
            other => panic!("unit {other}"),
        };
        assert_printed(&row, "expected", got);
    }
}

#[test]
fn clamps_at_a_share_of_proof_are_the_published_ones() {
    for row in rows("torque", "clamp") {
        assert_printed(&row, "expected", share_of_proof_n(&row) / LBF_N);
    }
}

/// Holds `got` against a printed number within the share that the row allows.
fn assert_within(row: &Table, what: &str, got: f64, key: &str) {
    let (expected, half) = printed(text(row, key));
    let share = real(row, &format!("{what}_within"));
    let off = (got - expected).abs();
    assert!(off <= half + share * expected, "{row:?}: {what} is {got}");
}

/// Motosh and the yield point together. The faces under the head that the table of VDI 2230
/// assumes are not printed with it.
#[test]
fn yield_points_and_their_torques_are_those_of_vdi_2230() {
    for row in rows("torque", "yield_point") {
        let thread = thread(&row);
        let stresses = class(&row).stresses(&thread).unwrap();
        let friction = real(&row, "friction");
        let clamp_n = yield_clamp_n(&thread, stresses.yield_mpa, friction, real(&row, "share"));
        assert_within(&row, "clamp", clamp_n / 1000.0, "clamp_kn");
        let joint = Joint::standard(&thread, Head::Hex).unwrap();
        let friction = Friction::both(friction).unwrap();
        let torque_nm = torque_for_clamp(&joint, friction, clamp_n, Form::Motosh).total_nm;
        assert_within(&row, "torque", torque_nm, "torque_nm");
    }
}

/// General tables of torque lie within the torques that our range of friction gives at the
/// same clamp.
#[test]
fn general_torque_tables_lie_within_our_range() {
    for row in rows("torque", "within_range") {
        let condition = Condition::read(text(&row, "condition")).unwrap().friction();
        let joint = Joint::standard(&thread(&row), Head::Hex).unwrap();
        let clamp_n = share_of_proof_n(&row);
        let at = |coefficient: f64| {
            let friction = Friction::both(coefficient).unwrap();
            torque_for_clamp(&joint, friction, clamp_n, Form::Motosh).total_nm
        };
        let (expected, _) = printed(text(&row, "expected"));
        let (low, high) = (at(condition.low()), at(condition.high()));
        assert!((low..=high).contains(&expected), "{row:?}: {low} to {high}");
    }
}

#[test]
fn adapters_are_set_as_the_manuals_say() {
    for row in rows("torque", "adapter") {
        let question = AdapterQuestion {
            want: text(&row, "want"),
            wrench: text(&row, "wrench"),
            adapter: text(&row, "adapter"),
            angle: Some(text(&row, "angle")),
        };
        let got = adapter(&question).unwrap().set_to_nm;
        let expected = measure::read(text(&row, "expected"), Dimension::Torque).unwrap();
        let (_, half) = printed(text(&row, "expected").split_once(' ').unwrap().0);
        let unit_nm = measure::Measured::new(measure::Decimal::ONE, expected.unit()).unwrap();
        let nm = |measured: &measure::Measured| {
            f64::try_from(measured.convert(Unit::NewtonMetre).unwrap().number()).unwrap()
        };
        assert!(
            (got - nm(&expected)).abs() <= half * nm(&unit_nm) + 1e-9,
            "{row:?}: {got}"
        );
    }
}

#[test]
fn friction_is_that_of_the_classes_of_vdi_2230() {
    for row in rows("torque", "friction") {
        let range = Condition::read(text(&row, "condition")).unwrap().friction();
        assert_printed(&row, "low", range.low());
        if row.contains_key("high") {
            assert_printed(&row, "high", range.high());
        }
    }
}

#[test]
fn a_torque_wrench_says_nothing_below_a_fifth() {
    for row in rows("torque", "least_reading") {
        let (range, least) = (real(&row, "range"), real(&row, "expected"));
        assert_eq!(reads(least, range), Reads::Well, "{row:?}");
        assert_eq!(
            reads(least - 0.1, range),
            Reads::TooLow { least_nm: least },
            "{row:?}"
        );
    }
}

/// Figures worked out by hand from the long forms, to hold the code to them: no source
/// prints them.
#[test]
fn both_long_forms_add_up() {
    let m12 = Joint::new(&Thread::metric(12.0, 1.75).unwrap(), 22.5, 13.5).unwrap();
    let m10 = Joint::standard(&Thread::metric(10.0, 1.5).unwrap(), Head::Hex).unwrap();
    let m6 = Joint::standard(&Thread::metric(6.0, 1.0).unwrap(), Head::Hex).unwrap();
    let cases = [
        (&m12, 0.15, 1000.0, 2.56931, 2.58024),
        (&m10, 0.15, 25_275.0, 50.05418, 50.29266),
        (&m6, 0.12, 8700.0, 8.65517, 8.69348),
    ];
    for (joint, coefficient, clamp_n, motosh, iso) in cases {
        let friction = Friction::both(coefficient).unwrap();
        for (form, expected) in [(Form::Motosh, motosh), (Form::Iso16047, iso)] {
            let torque_nm = torque_for_clamp(joint, friction, clamp_n, form).total_nm;
            assert!(
                (torque_nm - expected).abs() < 1e-5,
                "{form:?}: {torque_nm} for {expected}"
            );
            let back = clamp_for_torque(joint, friction, torque_nm, form);
            assert!((back / clamp_n - 1.0).abs() < 1e-12);
        }
    }
}
