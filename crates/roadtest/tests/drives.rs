//! Real drives of one healthy car: nothing has failed in them. Faults put in by hand are found.
//!
//! Three of the logs are copied (see `checks/data/drives/README.md`). A folder with more of
//! them is judged too where `ROADTEST_DRIVES` names it.

#![allow(clippy::unwrap_used, reason = "a test fails by panicking")]
#![expect(
    clippy::cast_possible_truncation,
    clippy::cast_sign_loss,
    reason = "values are held inside the byte they go into"
)]

use roadtest::{CheckName, Conditions, Mapping, Outcome, Verdict, judge, read};
use std::collections::BTreeMap;
use std::path::PathBuf;

const SECONDS: usize = 0;
const RPM: usize = 1;
const SPEED: usize = 2;
const COOLANT: usize = 4;
const VOLTAGE: usize = 8;

/// The logs by name, as their logger wrote them.
fn drives() -> BTreeMap<String, String> {
    let own = PathBuf::from(concat!(
        env!("CARGO_MANIFEST_DIR"),
        "/../../checks/data/drives"
    ));
    let more = std::env::var_os("ROADTEST_DRIVES").map(PathBuf::from);
    let mut found = BTreeMap::new();
    for folder in [Some(own), more].into_iter().flatten() {
        for entry in std::fs::read_dir(folder).unwrap() {
            let path = entry.unwrap().path();
            if path.extension().is_some_and(|end| end == "csv") {
                let name = path.file_stem().unwrap().to_string_lossy().into_owned();
                found.insert(name, std::fs::read_to_string(path).unwrap());
            }
        }
    }
    assert!(found.len() >= 3);
    found
}

fn judged(text: &str) -> Verdict {
    judged_for(text, None)
}

fn judged_for(text: &str, complaint: Option<&str>) -> Verdict {
    let log = read(text.as_bytes(), None, &Mapping::default()).unwrap();
    let conditions = Conditions {
        complaint: complaint.map(str::to_owned),
        ..Conditions::default()
    };
    judge(&log, &conditions)
}

fn of(verdict: &Verdict, name: CheckName) -> Outcome {
    verdict
        .checks
        .iter()
        .find(|check| check.check == name)
        .unwrap()
        .verdict
}

/// The log with a fault: each row's numbers are changed in place.
fn with_fault(text: &str, mut fault: impl FnMut(&mut [f64])) -> String {
    let mut lines = text.lines();
    let mut out = lines.next().unwrap().to_owned();
    for line in lines {
        let cells: Result<Vec<f64>, _> = line.split(',').map(str::parse).collect();
        out.push('\n');
        match cells {
            Ok(mut cells) if cells.len() == 9 => {
                fault(&mut cells);
                let cells: Vec<String> = cells.iter().map(f64::to_string).collect();
                out.push_str(&cells.join(","));
            }
            _ => out.push_str(line),
        }
    }
    out
}

/// Seconds of the run, highest coolant of a log.
fn length_and_most(text: &str) -> (f64, f64) {
    let (mut end, mut most) = (0.0_f64, 0.0_f64);
    with_fault(text, |row| {
        end = end.max(row[SECONDS]);
        most = most.max(row[COOLANT]);
    });
    (end, most)
}

#[test]
fn no_check_fails_on_a_healthy_car() {
    for (name, text) in drives() {
        let verdict = judged(&text);
        for check in &verdict.checks {
            assert_ne!(check.verdict, Outcome::Failed, "{name}: {check:?}");
        }
        let (_, most) = length_and_most(&text);
        // What ends below the opening can't tell.
        if most < 84.0 {
            assert_eq!(verdict.verdict, Outcome::CantTell, "{name}");
            assert_eq!(
                of(&verdict, CheckName::Thermostat),
                Outcome::CantTell,
                "{name}"
            );
        }
    }
}

#[test]
fn what_the_copied_logs_carry_is_told() {
    let drives = drives();
    let road = judged(&drives["drive12"]);
    assert_eq!(road.verdict, Outcome::Held, "{}", road.because);
    for name in [
        CheckName::WarmUp,
        CheckName::Thermostat,
        CheckName::Charging,
        CheckName::Trims,
    ] {
        assert_eq!(of(&road, name), Outcome::Held, "{name:?}");
    }
    // It was never left standing until the fan ran, and no codes were read.
    for name in [CheckName::Fan, CheckName::Codes, CheckName::Provoked] {
        assert_eq!(of(&road, name), Outcome::CantTell, "{name:?}");
    }
    let standing = judged(&drives["idle27"]);
    assert_eq!(of(&standing, CheckName::Fan), Outcome::Held);
    let fan = standing
        .checks
        .iter()
        .find(|check| check.check == CheckName::Fan)
        .unwrap();
    assert!(fan.because.contains("from 95 to 89 °C"), "{}", fan.because);
    assert_eq!(
        of(&standing, CheckName::WarmUp),
        Outcome::CantTell,
        "it began warm"
    );
    for verdict in [&road, &standing] {
        for check in &verdict.checks {
            let open = check.verdict == Outcome::CantTell;
            assert_eq!(open, check.next.is_some(), "{check:?}");
        }
    }
}

#[test]
fn a_thermostat_that_stays_open_is_found() {
    for (name, text) in drives() {
        let (end, _) = length_and_most(&text);
        let verdict = judged(&with_fault(&text, |row| {
            row[COOLANT] = row[COOLANT].min(68.0);
        }));
        if end > 400.0 {
            assert_eq!(
                of(&verdict, CheckName::Thermostat),
                Outcome::Failed,
                "{name}"
            );
            assert_eq!(of(&verdict, CheckName::Band), Outcome::Failed, "{name}");
        }
        assert_ne!(verdict.verdict, Outcome::Held, "{name}");
    }
}

#[test]
fn a_spike_of_trapped_air_is_found() {
    for (name, text) in drives() {
        let (end, _) = length_and_most(&text);
        for part in [0.35, 0.6, 0.85] {
            let from = libm::floor(end * part);
            let verdict = judged(&with_fault(&text, |row| {
                if row[SECONDS] >= from && row[SECONDS] < from + 12.0 {
                    row[COOLANT] += 18.0;
                }
            }));
            assert_eq!(
                of(&verdict, CheckName::Air),
                Outcome::Failed,
                "{name} at {from}"
            );
            assert_eq!(verdict.verdict, Outcome::Failed, "{name}");
        }
    }
}

#[test]
fn a_rise_at_standstill_is_found_and_told_from_one_at_speed() {
    for (name, text) in drives() {
        let (end, _) = length_and_most(&text);
        let from = end - 180.0;
        let verdict = judged(&with_fault(&text, |row| {
            if row[SECONDS] > from {
                row[SPEED] = 0.0;
                row[RPM] = 750.0;
                let part = (row[SECONDS] - from) / 170.0;
                row[COOLANT] = libm::round(88.0 + 24.0 * part.min(1.0));
            }
        }));
        assert_eq!(
            of(&verdict, CheckName::Overheating),
            Outcome::Failed,
            "{name}"
        );
        assert_eq!(of(&verdict, CheckName::Fan), Outcome::Failed, "{name}");
    }
    let verdict = judged(&with_fault(&drives()["drive12"], |row| {
        if row[SECONDS] > 1200.0 && row[SECONDS] < 1300.0 {
            row[SPEED] = 0.0;
            row[COOLANT] = libm::round(88.0 + 24.0 * (row[SECONDS] - 1200.0) / 95.0);
        }
    }));
    let hot = verdict
        .checks
        .iter()
        .find(|check| check.check == CheckName::Overheating)
        .unwrap();
    assert!(
        hot.because.contains("standing, not at speed"),
        "{}",
        hot.because
    );
}

#[test]
fn no_charging_is_found() {
    for (name, text) in drives() {
        let all = judged(&with_fault(&text, |row| row[VOLTAGE] = 12.2));
        assert_eq!(of(&all, CheckName::Charging), Outcome::Failed, "{name}");
        let (end, _) = length_and_most(&text);
        let late = judged(&with_fault(&text, |row| {
            if row[SECONDS] > end - 160.0 {
                row[VOLTAGE] = 12.2;
            }
        }));
        assert_eq!(of(&late, CheckName::Charging), Outcome::Failed, "{name}");
        let cooked = judged(&with_fault(&text, |row| row[VOLTAGE] = 16.1));
        assert_eq!(of(&cooked, CheckName::Charging), Outcome::Failed, "{name}");
    }
}

#[test]
fn trims_out_of_reach_are_found() {
    let lean = judged(&with_fault(&drives()["idle27"], |row| row[5] += 22.0));
    let check = lean
        .checks
        .iter()
        .find(|check| check.check == CheckName::Trims)
        .unwrap();
    assert_eq!(check.verdict, Outcome::Failed);
    assert!(
        check.because.contains("lean at idle alone"),
        "{}",
        check.because
    );
    let rich = judged(&with_fault(&drives()["drive12"], |row| row[5] -= 22.0));
    let check = rich
        .checks
        .iter()
        .find(|check| check.check == CheckName::Trims)
        .unwrap();
    assert!(check.because.contains("rich"), "{}", check.because);
}

#[test]
fn a_complaint_asks_for_what_it_needs() {
    let drives = drives();
    let outcome = |name: &str, complaint: &str| judged_for(&drives[name], Some(complaint)).verdict;
    // The fast road of this log is 1884 s long and never above 48 km/h.
    assert_eq!(
        outcome("drive12", "comes on after 20 min of motorway"),
        Outcome::NotProvoked
    );
    assert_eq!(
        outcome("drive12", "overheats after 20 min of driving"),
        Outcome::Held
    );
    assert_eq!(
        outcome("drive12", "overheats after 45 min"),
        Outcome::NotProvoked
    );
    assert_eq!(
        outcome("idle27", "overheats at idle, 10 min"),
        Outcome::Held
    );
    assert_eq!(
        outcome("idle27", "light on at cold start"),
        Outcome::NotProvoked
    );
    assert_eq!(
        outcome("drive12", "gets hot with the a/c on"),
        Outcome::CantTell
    );
    assert_eq!(outcome("drive12", "makes a noise"), Outcome::CantTell);
    // It came back, however short the drive was.
    let hot = with_fault(&drives["idle27"], |row| {
        if row[SECONDS] > 900.0 {
            row[COOLANT] = 112.0;
        }
    });
    let verdict = judged_for(&hot, Some("overheats after 20 min of motorway"));
    assert_eq!(verdict.verdict, Outcome::Failed);
    assert_eq!(of(&verdict, CheckName::Provoked), Outcome::Held);
}

#[test]
fn what_is_not_in_the_log_is_said_with_what_to_read_next() {
    let drive = &drives()["drive12"];
    for (column, name, words) in [
        (COOLANT, CheckName::Overheating, "coolant"),
        (VOLTAGE, CheckName::Charging, "voltage"),
    ] {
        let without: String = drive
            .lines()
            .map(|line| {
                let cells: Vec<&str> = line.split(',').collect();
                let kept: Vec<&str> = cells
                    .iter()
                    .enumerate()
                    .filter(|(nth, _)| *nth != column)
                    .map(|(_, cell)| *cell)
                    .collect();
                format!("{}\n", kept.join(","))
            })
            .collect();
        let verdict = judged(&without);
        let check = verdict
            .checks
            .iter()
            .find(|check| check.check == name)
            .unwrap();
        assert_eq!(check.verdict, Outcome::CantTell);
        assert!(
            check.next.as_deref().unwrap_or("").contains(words),
            "{check:?}"
        );
    }
}

#[test]
fn a_rating_and_a_makers_limit_go_first() {
    let log = read(drives()["drive12"].as_bytes(), None, &Mapping::default()).unwrap();
    let with = |conditions: Conditions, name: CheckName| of(&judge(&log, &conditions), name);
    let rated = |c: f64| Conditions {
        thermostat_c: Some(c),
        ..Conditions::default()
    };
    assert_eq!(with(rated(87.0), CheckName::Thermostat), Outcome::Held);
    assert_eq!(with(rated(105.0), CheckName::Thermostat), Outcome::Failed);
    assert_eq!(with(rated(71.0), CheckName::Thermostat), Outcome::Failed);
    let limit = Conditions {
        limit_c: Some(86.0),
        ..Conditions::default()
    };
    assert_eq!(with(limit, CheckName::Overheating), Outcome::Failed);
    let boils = Conditions {
        boil_c: Some(92.0),
        ..Conditions::default()
    };
    assert_eq!(with(boils, CheckName::Overheating), Outcome::Failed);
}

/// A drive as the vehicle's own answers: each row becomes frames of single PIDs.
fn as_frames(text: &str) -> String {
    let mut out = String::from("0.0 7E8 06 41 00 BE 3F A8 13\n");
    with_fault(text, |row| {
        let byte = |value: f64| format!("{:02X}", value.clamp(0.0, 255.0) as u8);
        let word = |value: f64| {
            let value = value.clamp(0.0, 65_535.0) as u16;
            format!("{:02X} {:02X}", value >> 8, value & 0xFF)
        };
        for data in [
            format!("03 41 05 {}", byte(row[COOLANT] + 40.0)),
            format!("04 41 0C {}", word(row[RPM] * 4.0)),
            format!("03 41 0D {}", byte(row[SPEED])),
            format!("04 41 42 {}", word(row[VOLTAGE] * 1000.0)),
            format!("03 41 04 {}", byte(libm::round(row[3] * 2.55))),
            format!(
                "05 41 07 {} 06 {}",
                byte(libm::round(row[5] * 1.28 + 128.0)),
                byte(libm::round(row[6] * 1.28 + 128.0))
            ),
        ] {
            out.push_str(&format!("{} 7E8 {data}\n", row[SECONDS]));
        }
    });
    out
}

#[test]
fn the_same_drive_as_frames_has_the_same_verdicts() {
    for name in ["drive12", "idle27", "live10"] {
        let text = &drives()[name];
        let (table, frames) = (judged(text), judged(&as_frames(text)));
        for (one, other) in table.checks.iter().zip(&frames.checks) {
            assert_eq!(one.verdict, other.verdict, "{name}: {one:?} {other:?}");
        }
    }
}

#[test]
fn codes_before_and_after_the_drive() {
    let drive = as_frames(&drives()["live10"]);
    let with =
        |before: &str, after: &str| judged(&format!("0.0 7E8 {before}\n{drive}630 7E8 {after}\n"));
    let because = |verdict: &Verdict| {
        let check = verdict
            .checks
            .iter()
            .find(|check| check.check == CheckName::Codes)
            .unwrap();
        (check.verdict, check.because.clone())
    };
    let clean = with("06 41 01 00 07 65 00", "06 41 01 00 07 65 00");
    assert_eq!(because(&clean).0, Outcome::Held);
    let unchecked = with("06 41 01 00 07 65 65", "06 41 01 00 07 65 04");
    let (verdict, words) = because(&unchecked);
    assert_eq!(verdict, Outcome::CantTell);
    assert!(
        words.contains("evaporative system") && !words.contains("catalyst"),
        "{words}"
    );
    let (verdict, words) = because(&with("02 43 00", "04 43 01 01 28"));
    assert_eq!(verdict, Outcome::Failed);
    assert!(
        words.contains("new in this drive: P0128 (coolant below"),
        "{words}"
    );
    let (verdict, words) = because(&with("02 47 00", "04 47 01 01 71"));
    assert_eq!(verdict, Outcome::Failed);
    assert!(words.contains("P0171"), "{words}");
    assert_eq!(
        because(&with("04 47 01 01 71", "04 47 01 01 71")).0,
        Outcome::CantTell
    );
    assert_eq!(
        because(&with("06 41 01 00 07 65 00", "06 41 01 81 07 65 00")).0,
        Outcome::Failed
    );
}

#[test]
fn a_pid_that_the_vehicle_has_not_is_said_so() {
    // Bitmap 00 without 05, and without 20: nothing beyond.
    let log = "0.0 7E8 06 41 00 10 18 00 10\n1.0 7E8 04 41 0C 0C 00\n2.0 7E8 04 41 0C 0C 00\n";
    let verdict = judged(log);
    for (name, words) in [(CheckName::Band, "PID 05"), (CheckName::Charging, "PID 42")] {
        let check = verdict
            .checks
            .iter()
            .find(|check| check.check == name)
            .unwrap();
        assert_eq!(check.verdict, Outcome::CantTell);
        assert!(
            check.because.contains("this vehicle does not tell") && check.because.contains(words),
            "{check:?}"
        );
    }
}
