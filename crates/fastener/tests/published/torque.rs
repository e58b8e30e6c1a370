//! Torque, clamp, friction, adapters: `checks/published/fastener-torque.toml`.

use super::{INCH_MM, LBF_N, assert_printed, class, printed, rows, thread};
use calculators::threads::ask::{AdapterQuestion, adapter};
use checks::Row;
use fastener::friction::Condition;
use fastener::head::Head;
use fastener::torque::{Form, Friction, Joint, torque_for_clamp, yield_clamp_n};
use fastener::wrench::{Reads, reads};
use measure::{Dimension, Unit};

fn share_of_proof_n(row: &Row) -> f64 {
    let proof_n = class(row).loads(&thread(row)).unwrap().proof_n.unwrap();
    row.real("share_of_proof") * proof_n
}

#[test]
fn the_short_form_gives_the_published_torques() {
    for row in rows("torque", "short_form") {
        let joint = Joint::standard(&thread(&row), Head::plain(&thread(&row))).unwrap();
        let form = Form::Short {
            nut_factor: row.real("nut_factor"),
        };
        let friction = Friction::both(0.15).unwrap();
        let torque_nm = torque_for_clamp(&joint, friction, share_of_proof_n(&row), form).total_nm;
        let got = match row.text("unit") {
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
fn assert_within(row: &Row, what: &str, got: f64, key: &str) {
    let (expected, half) = printed(row.text(key));
    let share = row.real(&format!("{what}_within"));
    let off = (got - expected).abs();
    assert!(off <= half + share * expected, "{row}: {what} is {got}");
}

/// Motosh and the yield point together. The faces under the head that the table of VDI 2230
/// assumes are not printed with it.
#[test]
fn yield_points_and_their_torques_are_those_of_vdi_2230() {
    for row in rows("torque", "yield_point") {
        let thread = thread(&row);
        let stresses = class(&row).stresses(&thread).unwrap();
        let friction = row.real("friction");
        let clamp_n = yield_clamp_n(&thread, stresses.yield_mpa, friction, row.real("share"));
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
        let condition = Condition::read(row.text("condition")).unwrap().friction();
        let joint = Joint::standard(&thread(&row), Head::Hex).unwrap();
        let clamp_n = share_of_proof_n(&row);
        let at = |coefficient: f64| {
            let friction = Friction::both(coefficient).unwrap();
            torque_for_clamp(&joint, friction, clamp_n, Form::Motosh).total_nm
        };
        let (expected, _) = printed(row.text("expected"));
        let (low, high) = (at(condition.low()), at(condition.high()));
        assert!((low..=high).contains(&expected), "{row}: {low} to {high}");
    }
}

#[test]
fn adapters_are_set_as_the_manuals_say() {
    for row in rows("torque", "adapter") {
        let question = AdapterQuestion {
            want: row.text("want"),
            wrench: row.text("wrench"),
            adapter: row.text("adapter"),
            angle: Some(row.text("angle")),
        };
        let got = adapter(&question).unwrap().set_to_nm;
        let expected = measure::read(row.text("expected"), Dimension::Torque).unwrap();
        let (_, half) = printed(row.text("expected").split_once(' ').unwrap().0);
        let unit_nm = measure::Measured::new(measure::Decimal::ONE, expected.unit()).unwrap();
        let nm = |measured: &measure::Measured| {
            f64::try_from(measured.convert(Unit::NewtonMetre).unwrap().number()).unwrap()
        };
        assert!(
            (got - nm(&expected)).abs() <= half * nm(&unit_nm) + 1e-9,
            "{row}: {got}"
        );
    }
}

#[test]
fn friction_is_that_of_the_classes_of_vdi_2230() {
    for row in rows("torque", "friction") {
        let range = Condition::read(row.text("condition")).unwrap().friction();
        assert_printed(&row, "low", range.low());
        if row.has("high") {
            assert_printed(&row, "high", range.high());
        }
    }
}

#[test]
fn a_torque_wrench_says_nothing_below_a_fifth() {
    for row in rows("torque", "least_reading") {
        let (range, least) = (row.real("range"), row.real("expected"));
        assert_eq!(reads(least, range), Reads::Well, "{row}");
        assert_eq!(
            reads(least - 0.1, range),
            Reads::TooLow { least_nm: least },
            "{row}"
        );
    }
}
