//! 10,000 random answers, decoded by this crate and by two other open decoders; and the
//! ends of every range.

#![allow(clippy::unwrap_used, reason = "a test fails by panicking")]

use roadtest::{Answer, CodeList, Kind, Mapping, Quantity, decode_01, read};
use std::collections::BTreeSet;

const FRAMES: &str = include_str!("../../../checks/data/j1979/frames.csv");

/// What this crate makes of the frames of one message.
fn log_of(frames: &str) -> Result<roadtest::Log, roadtest::LogError> {
    let text: String = frames
        .split('|')
        .enumerate()
        .map(|(nth, data)| format!("0.0{nth} 7E8 {data}\n"))
        .collect();
    read(text.as_bytes(), Some(Kind::J1979), &Mapping::default())
}

/// The payload of frames whose lengths are sound, put together without this crate.
fn payload(frames: &str) -> Vec<u8> {
    let frames: Vec<Vec<u8>> = frames.split('|').map(hex).collect();
    let first = &frames[0];
    if frames.len() == 1 {
        return first[1..=usize::from(first[0])].to_vec();
    }
    let length = usize::from(first[0] & 0xF) * 256 + usize::from(first[1]);
    let mut bytes = first[2..].to_vec();
    bytes.extend(frames[1..].iter().flat_map(|frame| &frame[1..]));
    bytes.truncate(length);
    bytes
}

fn hex(text: &str) -> Vec<u8> {
    (0..text.len())
        .step_by(2)
        .map(|at| u8::from_str_radix(&text[at..at + 2], 16).unwrap())
        .collect()
}

/// Half of the last printed digit, and the other decoder's rounded factors: it takes the
/// 2/65536 of PID 44 as 0.0000305.
fn near(got: f64, expected: f64, quantity: Quantity) -> bool {
    let factor = if quantity == Quantity::Ratio {
        6e-4
    } else {
        1e-5
    };
    (got - expected).abs() <= 0.0006 + factor * expected.abs()
}

fn assert_says(answer: &Answer, expected: &str, row: &str) {
    let number = |text: &str| text.parse::<f64>().unwrap();
    match answer {
        Answer::Value(quantity, got) => {
            assert!(near(*got, number(expected), *quantity), "{row}: {got}");
        }
        Answer::FuelSystem(one, two) => assert_eq!(format!("{one}/{two}"), expected, "{row}"),
        Answer::TwoCoolants(one, two) => {
            let told = |t: &Option<f64>| t.map_or("-".to_owned(), |t| format!("{t}"));
            assert_eq!(format!("{}/{}", told(one), told(two)), expected, "{row}");
        }
        Answer::Status {
            lamp,
            count,
            incomplete,
        } => {
            let parts: Vec<u32> = expected
                .split('/')
                .map(|part| part.parse().unwrap())
                .collect();
            assert_eq!(
                (u32::from(*lamp), u32::from(*count)),
                (parts[0], parts[1]),
                "{row}"
            );
            let open = (parts[2] & parts[3]).count_ones() + (parts[4] & parts[5]).count_ones();
            assert_eq!(u32::try_from(incomplete.len()).unwrap(), open, "{row}");
        }
        Answer::Supported(..) | Answer::Other(_) => panic!("{row}: {answer:?}"),
    }
}

#[test]
fn ten_thousand_answers_as_other_decoders_read_them() {
    let mut rows = 0;
    let mut pids = BTreeSet::new();
    for row in FRAMES.lines().skip(1) {
        let parts: Vec<&str> = row.split(';').collect();
        let (what, frames, expected) = (parts[0], parts[1], parts[2]);
        rows += 1;
        match what {
            "one" | "many" => {
                let payload = payload(frames);
                let answers = decode_01(&payload[1..]);
                let told: Vec<&str> = expected.split(' ').collect();
                assert_eq!(answers.len(), told.len(), "{row}: {answers:?}");
                for ((pid, answer), told) in answers.iter().zip(told) {
                    let (name, value) = told.split_once('=').unwrap();
                    assert_eq!(format!("{pid:02X}"), name, "{row}");
                    pids.insert(*pid);
                    assert_says(answer, value, row);
                }
            }
            "refused" => assert!(log_of(frames).is_err(), "{row}"),
            codes => {
                let log = log_of(frames).unwrap();
                let list = match codes {
                    "codes 43" => CodeList::Stored,
                    "codes 47" => CodeList::Pending,
                    _ => CodeList::Permanent,
                };
                let wanted: BTreeSet<String> =
                    expected.split_whitespace().map(str::to_owned).collect();
                assert_eq!(log.codes[0].list, list, "{row}");
                assert_eq!(log.codes[0].codes, wanted, "{row}");
            }
        }
    }
    assert_eq!(rows, 10_000);
    // Every PID that is shown was among them.
    for pid in 0..=0x67_u8 {
        let bytes = [pid, 0, 0, 0, 0, 0];
        let shown = decode_01(&bytes)
            .first()
            .is_some_and(|(_, answer)| !matches!(answer, Answer::Other(_) | Answer::Supported(..)));
        assert_eq!(shown, pids.contains(&pid), "{pid:02X}");
    }
}

/// Whole messages, through lines, frames and units, come out as the payload alone does.
#[test]
fn lines_and_frames_change_nothing() {
    for row in FRAMES.lines().skip(1).step_by(7) {
        let parts: Vec<&str> = row.split(';').collect();
        if parts[0] != "many" {
            continue;
        }
        let log = log_of(parts[1]).unwrap();
        for (_, answer) in decode_01(&payload(parts[1])[1..]) {
            let Answer::Value(quantity, value) = answer else {
                continue;
            };
            let cut_off = quantity == Quantity::Coolant && !(-39.5..214.5).contains(&value);
            let heard = log.of(quantity).iter().any(|sample| sample.value == value);
            assert_eq!(heard, !cut_off, "{row}: {quantity:?}");
        }
    }
}
