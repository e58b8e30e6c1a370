//! Random belts against a rubber band: `checks/data/belt/rubber-band.toml`, found by
//! minimising with SciPy (`rubber_band.py` beside it), not by tangents.

#![allow(clippy::unwrap_used, reason = "a test fails by panicking")]

mod common;

use belt::{Sense, Side, Tensioner, TensionerKind, Travel};
use common::{layout, solved, with_belt};
use toml::{Table, Value};

fn rows(kind: &str) -> Vec<Table> {
    let file: Table = include_str!("../../../checks/data/belt/rubber-band.toml")
        .parse()
        .unwrap();
    let rows = file[kind].as_array().unwrap();
    rows.iter()
        .map(|row| row.as_table().unwrap().clone())
        .collect()
}

fn numbers(value: &Value) -> Vec<f64> {
    value
        .as_array()
        .unwrap()
        .iter()
        .map(|number| number.as_float().unwrap())
        .collect()
}

fn pulleys(row: &Table) -> Vec<(f64, f64, f64, Side)> {
    let each = row["pulleys"].as_array().unwrap().iter().map(|pulley| {
        let part = numbers(pulley);
        let side = if part[3] < 0.0 {
            Side::Back
        } else {
            Side::Ribs
        };
        (part[0], part[1], 2.0 * part[2], side)
    });
    each.collect()
}

#[test]
fn random_belts_within_a_hundredth_of_a_millimetre() {
    let rows = rows("belt");
    assert!(rows.len() >= 50);
    let backs = rows
        .iter()
        .filter(|row| pulleys(row).iter().any(|pulley| pulley.3 == Side::Back))
        .count();
    assert!(backs >= 15, "{backs}");
    for row in rows {
        let found = solved(&layout(&pulleys(&row), Sense::CounterClockwise));
        let length = row["length_mm"].as_float().unwrap();
        assert!(
            (found.length_mm.unwrap() - length).abs() < 0.01,
            "{row:?}: {found:#?}"
        );
        let (wraps, runs) = (numbers(&row["wraps_deg"]), numbers(&row["runs_mm"]));
        let mut sum = 0.0;
        for ((pulley, wrap), run) in found.pulleys.iter().zip(wraps).zip(runs) {
            let touches = pulley.touches.unwrap();
            assert!(
                (touches.wrap_deg - wrap).abs() < 0.01,
                "{row:?}: {pulley:?}"
            );
            assert!((touches.span_mm - run).abs() < 0.01, "{row:?}: {pulley:?}");
            sum += if pulley.side == Side::Ribs {
                touches.wrap_deg
            } else {
                -touches.wrap_deg
            };
        }
        assert!((sum - 360.0).abs() < 1e-9, "{sum}");
        // They lie well, and are told so but for wraps that are small.
        assert!(
            found
                .faults
                .iter()
                .all(|fault| matches!(fault, belt::Fault::WrapTooSmall { .. })),
            "{row:?}: {:?}",
            found.faults
        );
    }
}

/// The same belt running the other way, listed so: nothing but the senses changes.
#[test]
fn the_other_sense_gives_the_same_lengths() {
    for row in rows("belt") {
        let mut backwards = pulleys(&row);
        backwards[1..].reverse();
        let one = solved(&layout(&pulleys(&row), Sense::CounterClockwise));
        let other = solved(&layout(&backwards, Sense::Clockwise));
        assert!((one.length_mm.unwrap() - other.length_mm.unwrap()).abs() < 1e-9);
    }
}

#[test]
fn arms_stand_where_the_band_puts_them() {
    let rows = rows("arm");
    assert!(rows.len() >= 10);
    for row in rows {
        let moves = usize::try_from(row["moves"].as_integer().unwrap()).unwrap();
        let (pivot, stops) = (numbers(&row["pivot"]), numbers(&row["stops_deg"]));
        let mut drawn = layout(&pulleys(&row), Sense::CounterClockwise);
        let travel = Travel::Arc {
            pivot_x_mm: pivot[0],
            pivot_y_mm: pivot[1],
            min_deg: stops[0],
            max_deg: stops[1],
        };
        drawn.tensioner = Some(Tensioner {
            kind: TensionerKind::SpringArm,
            moves: Some((drawn.pulleys[moves].name.clone(), travel)),
            torque_nm: None,
            force_n: None,
        });
        let length = row["length_mm"].as_float().unwrap();
        let found = with_belt(&drawn, length);
        let (least, most) = found.window_mm.unwrap();
        let window = numbers(&row["window_mm"]);
        assert!(
            (least - window[0]).abs() < 0.01 && (most - window[1]).abs() < 0.01,
            "{row:?}: {least} {most}"
        );
        let arm = found.stand.unwrap().arm_deg.unwrap();
        assert!(
            (arm - row["arm_deg"].as_float().unwrap()).abs() < 0.01,
            "{row:?}: {arm}"
        );
        assert!((found.length_mm.unwrap() - length).abs() < 1e-6);
    }
}
