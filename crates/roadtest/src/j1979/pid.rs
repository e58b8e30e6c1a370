//! The PIDs of service 01 that a road test shows.

use super::Answer;
use crate::Quantity;
use std::collections::BTreeSet;

/// How many data bytes each PID of service 01 has, from 00 on; 0 where none is known.
/// Needed to go on behind a PID that is not shown here.
const LENGTHS: [u8; 0x68] = [
    4, 4, 2, 2, 1, 1, 1, 1, 1, 1, 1, 1, 2, 1, 1, 1, // 00
    2, 1, 1, 1, 2, 2, 2, 2, 2, 2, 2, 2, 1, 1, 1, 2, // 10
    4, 2, 2, 2, 4, 4, 4, 4, 4, 4, 4, 4, 1, 1, 1, 1, // 20
    1, 2, 2, 1, 4, 4, 4, 4, 4, 4, 4, 4, 2, 2, 2, 2, // 30
    4, 4, 2, 2, 2, 1, 1, 1, 1, 1, 1, 1, 1, 2, 2, 4, // 40
    4, 1, 1, 2, 2, 2, 2, 2, 2, 2, 1, 1, 1, 2, 2, 1, // 50
    4, 1, 1, 2, 5, 2, 5, 3, // 60
];

/// Monitors of PID 01 in bits 0 to 2 of byte B.
const CONTINUOUS: [&str; 3] = ["misfire", "fuel system", "components"];
/// Monitors of bytes C and D, spark ignition.
const SPARK: [&str; 8] = [
    "catalyst",
    "heated catalyst",
    "evaporative system",
    "secondary air",
    "refrigerant",
    "oxygen sensor",
    "oxygen sensor heater",
    "EGR or VVT",
];
/// The same, compression ignition.
const DIESEL: [&str; 8] = [
    "NMHC catalyst",
    "NOx aftertreatment",
    "monitor 2",
    "boost pressure",
    "monitor 4",
    "exhaust gas sensor",
    "particulate filter",
    "EGR or VVT",
];

/// The quantity that a PID tells, where it tells one.
pub(crate) fn quantity_of(pid: u8) -> Option<Quantity> {
    let quantity = match pid {
        0x04 => Quantity::Load,
        0x05 => Quantity::Coolant,
        0x06 => Quantity::ShortTrim1,
        0x07 => Quantity::LongTrim1,
        0x08 => Quantity::ShortTrim2,
        0x09 => Quantity::LongTrim2,
        0x0B => Quantity::Manifold,
        0x0C => Quantity::Rpm,
        0x0D => Quantity::Speed,
        0x0E => Quantity::Timing,
        0x0F => Quantity::Intake,
        0x10 => Quantity::AirFlow,
        0x11 => Quantity::Throttle,
        0x1F => Quantity::RunTime,
        0x21 => Quantity::DistanceWithLamp,
        0x2F => Quantity::FuelLevel,
        0x30 => Quantity::WarmUps,
        0x31 => Quantity::DistanceSinceCleared,
        0x33 => Quantity::Barometer,
        0x42 => Quantity::Voltage,
        0x43 => Quantity::AbsoluteLoad,
        0x44 => Quantity::Ratio,
        0x45 => Quantity::RelativeThrottle,
        0x46 => Quantity::Ambient,
        0x4D => Quantity::MinutesWithLamp,
        0x4E => Quantity::MinutesSinceCleared,
        0x5C => Quantity::Oil,
        0x5E => Quantity::FuelRate,
        _ => return None,
    };
    Some(quantity)
}

/// One or more PIDs with their bytes.
pub(super) fn answers(data: &[u8]) -> Vec<(u8, Answer)> {
    let mut found = Vec::new();
    let mut rest = data;
    while let Some((&pid, after)) = rest.split_first() {
        let length = match pid {
            0x80 | 0xA0 | 0xC0 | 0xE0 => 4,
            pid => LENGTHS.get(usize::from(pid)).map_or(0, |n| usize::from(*n)),
        };
        let Some(bytes) = after.get(..length).filter(|_| length > 0) else {
            // One byte left over is the check sum of an older line.
            if !after.is_empty() || found.is_empty() {
                found.push((pid, Answer::Other(pid)));
            }
            break;
        };
        found.push((pid, answer(pid, bytes)));
        rest = after.get(length..).unwrap_or(&[]);
    }
    found
}

fn answer(pid: u8, bytes: &[u8]) -> Answer {
    let byte = |nth: usize| bytes.get(nth).copied().unwrap_or(0);
    match pid {
        0x00 | 0x20 | 0x40 | 0x60 | 0x80 | 0xA0 | 0xC0 | 0xE0 => {
            let word = bytes
                .iter()
                .fold(0_u32, |word, byte| word << 8 | u32::from(*byte));
            let pids: BTreeSet<u8> = (0..32_u8)
                .filter(|nth| word & (0x8000_0000 >> nth) != 0)
                .filter_map(|nth| pid.checked_add(nth + 1))
                .collect();
            Answer::Supported(pid, pids)
        }
        0x01 => status([byte(0), byte(1), byte(2), byte(3)]),
        0x03 => Answer::FuelSystem(byte(0), byte(1)),
        0x67 => {
            let of = |bit: u8, at: usize| (byte(0) & bit != 0).then(|| f64::from(byte(at)) - 40.0);
            Answer::TwoCoolants(of(1, 1), of(2, 2))
        }
        _ => match quantity_of(pid) {
            Some(quantity) => Answer::Value(quantity, value(pid, byte(0), byte(1))),
            None => Answer::Other(pid),
        },
    }
}

fn value(pid: u8, a: u8, b: u8) -> f64 {
    let (a, word) = (f64::from(a), f64::from(u16::from(a) * 256 + u16::from(b)));
    match pid {
        0x04 | 0x11 | 0x2F | 0x45 => a * 100.0 / 255.0,
        0x05 | 0x0F | 0x46 | 0x5C => a - 40.0,
        0x06..=0x09 => (a - 128.0) * 100.0 / 128.0,
        0x0C => word / 4.0,
        0x0E => a / 2.0 - 64.0,
        0x10 => word / 100.0,
        0x1F | 0x21 | 0x31 | 0x4D | 0x4E => word,
        0x42 => word / 1000.0,
        0x43 => word * 100.0 / 255.0,
        0x44 => word * 2.0 / 65_536.0,
        0x5E => word / 20.0,
        // 0B, 0D, 30, 33: the byte itself.
        _ => a,
    }
}

fn status([a, b, c, d]: [u8; 4]) -> Answer {
    let once_a_trip = if b & 0x08 == 0 { SPARK } else { DIESEL };
    let continuous = CONTINUOUS
        .into_iter()
        .enumerate()
        .filter(|(bit, _)| b & (1 << bit) != 0 && b & (0x10 << bit) != 0);
    let others = once_a_trip
        .into_iter()
        .enumerate()
        .filter(|(bit, _)| c & (1 << bit) != 0 && d & (1 << bit) != 0);
    Answer::Status {
        lamp: a & 0x80 != 0,
        count: a & 0x7F,
        incomplete: continuous.chain(others).map(|(_, name)| name).collect(),
    }
}
