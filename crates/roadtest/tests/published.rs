//! The rows of `checks/published/roadtest.toml`, each against this crate.

#![allow(clippy::unwrap_used, reason = "a test fails by panicking")]

use roadtest::{Answer, Check, Conditions, Kind, Mapping, code, decode_01, judge, read};
use std::fmt::Write;
use toml::{Table, Value};

fn file() -> Table {
    include_str!("../../../checks/published/roadtest.toml")
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

fn hex(text: &str) -> Vec<u8> {
    (0..text.len())
        .step_by(2)
        .map(|at| u8::from_str_radix(&text[at..at + 2], 16).unwrap())
        .collect()
}

/// What a row says of a check's verdict.
fn assert_says(row: &Table, check: &Check) {
    if let Some(says) = row.get("says").and_then(Value::as_str) {
        assert_eq!(check.verdict.code(), says, "{row:?}: {}", check.because);
    }
    if let Some(never) = row.get("never").and_then(Value::as_str) {
        assert_ne!(check.verdict.code(), never, "{row:?}: {}", check.because);
    }
    assert!(
        row.contains_key("says") != row.contains_key("never"),
        "{row:?}"
    );
}

fn check_of(csv: &str, conditions: &Conditions, name: &str) -> Check {
    let log = read(csv.as_bytes(), None, &Mapping::default()).unwrap();
    let verdict = judge(&log, conditions);
    let check = verdict
        .checks
        .iter()
        .find(|check| check.check.code() == name);
    check.unwrap().clone()
}

#[test]
fn pid() {
    for row in rows("pid") {
        let mut bytes = hex(text(&row, "pid"));
        bytes.extend(hex(text(&row, "bytes")));
        let answers = decode_01(&bytes);
        let [(_, Answer::Value(quantity, got))] = answers.as_slice() else {
            panic!("{row:?}: {answers:?}");
        };
        let off = (got - number(&row, "expected")).abs();
        assert!(
            off <= number(&row, "tolerance"),
            "{row:?}: {quantity:?} {got}"
        );
    }
}

#[test]
fn trouble_codes() {
    for row in rows("code") {
        let bytes = hex(text(&row, "bytes"));
        let found = code([bytes[0], bytes[1]]).unwrap_or_default();
        assert_eq!(found, text(&row, "expected"), "{row:?}");
    }
}

#[test]
fn status() {
    for row in rows("status") {
        let line = format!("0.0 7E8 06 41 01 {}\n", text(&row, "bytes"));
        let log = read(line.as_bytes(), Some(Kind::J1979), &Mapping::default()).unwrap();
        let status = &log.statuses[0];
        assert_eq!(Some(status.lamp), row["lamp"].as_bool(), "{row:?}");
        assert_eq!(
            Some(i64::from(status.count)),
            row["count"].as_integer(),
            "{row:?}"
        );
        // Compression ignition has its own monitors.
        let all = status.incomplete.clone().unwrap();
        let diesel = all.contains(&"particulate filter") || all.contains(&"NOx aftertreatment");
        let spark = all.contains(&"catalyst") || all.contains(&"evaporative system");
        assert!(!(diesel && spark), "{row:?}: {all:?}");
        if diesel || spark {
            assert_eq!(Some(diesel), row["diesel"].as_bool(), "{row:?}");
        }
    }
}

/// A cold start on the road, the level, then standing with the fan between its temperatures.
fn engine_drive(row: &Table) -> String {
    let level = number(row, "level_c");
    let fan: Option<Vec<f64>> = row.get("fan_c").map(|fan| {
        fan.as_array()
            .unwrap()
            .iter()
            .map(|c| c.as_float().unwrap())
            .collect()
    });
    let mut csv = "time (s),coolant (°C),speed (km/h),rpm\n".to_owned();
    let mut standing = level;
    let mut rising = true;
    for second in 0..1800 {
        let t = f64::from(second);
        let on_road = second < 1000;
        let c = if on_road {
            (20.0 + 0.18 * t).min(level)
        } else if let Some([on, off]) = fan.as_deref() {
            standing += if rising { 0.05 } else { -0.2 };
            rising = if rising {
                standing < *on
            } else {
                standing <= *off
            };
            standing
        } else {
            level
        };
        let (speed, rpm) = if on_road { (60, 2000) } else { (0, 750) };
        writeln!(csv, "{second},{c:.1},{speed},{rpm}").unwrap();
    }
    csv
}

#[test]
fn engines() {
    for row in rows("engine") {
        let conditions = Conditions {
            thermostat_c: row.get("rating_c").and_then(Value::as_float),
            ..Conditions::default()
        };
        let check = check_of(&engine_drive(&row), &conditions, text(&row, "check"));
        assert_says(&row, &check);
    }
}

#[test]
fn voltage() {
    for row in rows("voltage") {
        let mut csv = "time (s),voltage (V),rpm\n".to_owned();
        for second in 0..300 {
            writeln!(csv, "{second},{},800", number(&row, "volts")).unwrap();
        }
        assert_says(&row, &check_of(&csv, &Conditions::default(), "charging"));
    }
}

#[test]
fn trim() {
    for row in rows("trim") {
        let mut csv = "time (s),STFT1 (%),LTFT1 (%),rpm,speed,coolant\n".to_owned();
        let half = number(&row, "percent") / 2.0;
        for second in 0..300 {
            writeln!(csv, "{second},{half},{half},800,0,90").unwrap();
        }
        assert_says(&row, &check_of(&csv, &Conditions::default(), "trims"));
    }
}
