//! Broken logs never stop the program: they are read with notes, or refused with words.
//!
//! `ROADTEST_FUZZ` says how many (100000 for all).

#![allow(clippy::unwrap_used, reason = "a test fails by panicking")]

use rand::{RngExt, SeedableRng};
use rand_chacha::ChaCha8Rng;
use roadtest::{Conditions, Kind, Mapping, Outcome, judge, read};

const DRIVE: &str = include_str!("../../../checks/data/drives/idle27.csv");
const FRAMES: &str = include_str!("../../../checks/data/j1979/frames.csv");

/// Cells that nobody expects.
const ODD: [&str; 24] = [
    "",
    "NaN",
    "1e308",
    "-1e308",
    "1e-308",
    "99999999999999999999",
    "-40",
    "215",
    "0",
    "on",
    "P0128",
    "\"",
    "\"\"",
    "\u{feff}",
    "°F",
    ";",
    "\t",
    "12:61:99",
    "2024-02-31T25:00:00",
    "-",
    "0x",
    "\u{0}",
    "1,5",
    "١٢",
];

fn table(chance: &mut ChaCha8Rng) -> Vec<u8> {
    let lines: Vec<&str> = DRIVE.lines().collect();
    let from = chance.random_range(1..lines.len() - 120);
    let stride = chance.random_range(1..12);
    let mut text = format!("{}\n", lines[0]);
    for line in lines[from..].iter().step_by(stride).take(120) {
        text.push_str(line);
        text.push('\n');
    }
    text.into_bytes()
}

fn frames(chance: &mut ChaCha8Rng) -> Vec<u8> {
    let lines: Vec<&str> = FRAMES.lines().skip(1).collect();
    let mut text = String::new();
    let mut at_s = 0.0;
    for _ in 0..60 {
        let row = lines[chance.random_range(0..lines.len())];
        let id = ["7E8", "7E9", "18DAF110", "486B10"][chance.random_range(0..4)];
        for data in row.split(';').nth(1).unwrap().split('|') {
            at_s += chance.random_range(0.0..2.0);
            text.push_str(&format!("{at_s:.2} {id} {data}\n"));
        }
    }
    text.into_bytes()
}

fn broken(chance: &mut ChaCha8Rng) -> Vec<u8> {
    let mut bytes = match chance.random_range(0..8) {
        0..=4 => table(chance),
        5 | 6 => frames(chance),
        _ => (0..chance.random_range(0..400))
            .map(|_| chance.random())
            .collect(),
    };
    for _ in 0..chance.random_range(0..12) {
        if bytes.is_empty() {
            break;
        }
        let at = chance.random_range(0..bytes.len());
        match chance.random_range(0..6) {
            0 => bytes[at] = chance.random(),
            1 => {
                bytes.remove(at);
            }
            2 => bytes.truncate(at),
            3 => {
                let odd = ODD[chance.random_range(0..ODD.len())];
                bytes.splice(at..at, odd.bytes());
            }
            4 => {
                let line: Vec<u8> = bytes[at..].iter().copied().take(80).collect();
                bytes.splice(at..at, line);
            }
            // A whole cell becomes something odd.
            _ => {
                let to = bytes[at..]
                    .iter()
                    .position(|b| *b == b',')
                    .map_or(at, |n| at + n);
                let odd = ODD[chance.random_range(0..ODD.len())];
                bytes.splice(at..to, odd.bytes());
            }
        }
    }
    bytes
}

#[test]
fn broken_logs_are_read_or_refused() {
    let count = std::env::var("ROADTEST_FUZZ").map_or(3_000, |count| count.parse().unwrap());
    let mapping = Mapping::read("time = 1\ncoolant = 5\nspeed = 3 [mph]\n").unwrap();
    let complaint = Conditions {
        complaint: Some("overheats after 1e308 min at 0 km/h uphill".to_owned()),
        thermostat_c: Some(88.0),
        limit_c: Some(f64::NAN),
        boil_c: Some(f64::INFINITY),
    };
    let (mut were_read, mut refused) = (0, 0);
    for seed in 0..count {
        let mut chance = ChaCha8Rng::seed_from_u64(seed);
        let bytes = broken(&mut chance);
        let kind = [None, None, Some(Kind::Csv), Some(Kind::J1979)][chance.random_range(0..4)];
        let mapping = if chance.random_bool(0.2) {
            mapping.clone()
        } else {
            Mapping::default()
        };
        match read(&bytes, kind, &mapping) {
            Ok(log) => {
                were_read += 1;
                for conditions in [&Conditions::default(), &complaint] {
                    let verdict = judge(&log, conditions);
                    assert_eq!(verdict.checks.len(), 10, "seed {seed}");
                    for check in &verdict.checks {
                        assert!(!check.because.is_empty(), "seed {seed}: {check:?}");
                        let open = matches!(check.verdict, Outcome::CantTell);
                        assert!(!open || check.next.is_some(), "seed {seed}: {check:?}");
                        assert!(
                            check.readings.iter().all(|r| r.value.is_finite()),
                            "seed {seed}: {check:?}"
                        );
                    }
                }
            }
            Err(error) => {
                refused += 1;
                let (what, mend) = error.told();
                assert!(!what.is_empty() && !mend.is_empty(), "seed {seed}");
            }
        }
    }
    println!("{were_read} read, {refused} refused");
    assert!(were_read > 0 && refused > 0);
}
