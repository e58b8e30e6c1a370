//! Answers of SAE J1979 / ISO 15031-5, a frame a line: seconds, id, bytes in hex.

mod frame;
mod pid;
mod transport;

use crate::phrases::log as say;
use crate::text::{decoded, start_of};
use crate::{CodeList, CodeReading, Log, LogError, Note, Quantity, Sample, StatusReading};
use frame::Frame;
use std::collections::{BTreeMap, BTreeSet};
use transport::{Assembly, Message};

pub(crate) use pid::quantity_of;

/// Broken lines that are told one by one.
const TOLD: usize = 20;

/// What one message of service 01 says of one PID.
#[derive(Debug, Clone, PartialEq)]
pub enum Answer {
    /// A quantity in its unit.
    Value(Quantity, f64),
    /// PID 01: lamp, count of codes, monitors that are not complete.
    Status {
        lamp: bool,
        count: u8,
        incomplete: Vec<&'static str>,
    },
    /// PIDs 00, 20, 40 ...: which of the next 32 PIDs are supported.
    Supported(u8, BTreeSet<u8>),
    /// PID 03: how fuel is controlled in both systems, as the standard numbers it.
    FuelSystem(u8, u8),
    /// PID 67: coolant at both of its sensors, °C.
    TwoCoolants(Option<f64>, Option<f64>),
    /// A PID that is not shown here, or cut short.
    Other(u8),
}

/// Decodes the data of a service 01 answer, after the byte 41: one or more PIDs with their
/// bytes.
///
/// Formulas and ranges as SAE J1979 / ISO 15031-5 has them.
///
/// ```
/// use roadtest::{Answer, Quantity, decode_01};
///
/// let answers = decode_01(&[0x0C, 0x1A, 0xF8, 0x05, 0x7B]);
/// assert_eq!(answers[0], (0x0C, Answer::Value(Quantity::Rpm, 1726.0)));
/// assert_eq!(answers[1], (0x05, Answer::Value(Quantity::Coolant, 83.0)));
/// ```
#[must_use]
pub fn decode_01(data: &[u8]) -> Vec<(u8, Answer)> {
    pid::answers(data)
}

/// The trouble code of two bytes; nothing for the padding 00 00.
///
/// ```
/// assert_eq!(roadtest::code([0x01, 0x28]).as_deref(), Some("P0128"));
/// assert_eq!(roadtest::code([0, 0]), None);
/// ```
#[must_use]
pub fn code(bytes: [u8; 2]) -> Option<String> {
    let [high, low] = bytes;
    if bytes == [0, 0] {
        return None;
    }
    let letter = match high >> 6 {
        0 => 'P',
        1 => 'C',
        2 => 'B',
        _ => 'U',
    };
    Some(format!(
        "{letter}{}{:X}{low:02X}",
        (high >> 4) & 3,
        high & 0xF
    ))
}

/// The trouble codes written in a text.
pub(crate) fn codes_in(text: &str) -> BTreeSet<String> {
    text.to_uppercase()
        .split(|c: char| !c.is_ascii_alphanumeric())
        .filter(|word| {
            let mut letters = word.chars();
            word.len() == 5
                && letters.next().is_some_and(|c| "PCBU".contains(c))
                && letters.next().is_some_and(|c| ('0'..='3').contains(&c))
                && letters.all(|c| c.is_ascii_hexdigit())
        })
        .map(str::to_owned)
        .collect()
}

/// Whether these lines look like frames rather than like a table.
pub(crate) fn looks_like_frames(bytes: &[u8]) -> bool {
    let text = decoded(bytes);
    let lines: Vec<&str> = text
        .lines()
        .filter(|line| !line.trim().is_empty())
        .take(40)
        .collect();
    let frames = lines
        .iter()
        .filter(|line| frame::read(line).is_some())
        .count();
    frames > 0 && 2 * frames >= lines.len()
}

/// Reads frames, a line each.
pub(crate) fn read(bytes: &[u8]) -> Result<Log, LogError> {
    let text = decoded(bytes);
    let first = text.lines().find(|line| !line.trim().is_empty());
    let first = start_of(first.ok_or(LogError::Empty)?);
    let mut log = Log::default();
    let frames = frames(&text, &mut log);
    if frames.is_empty() {
        return Err(LogError::NoFrames { first });
    }
    let mut heard = Heard::default();
    let mut assembly = Assembly::default();
    for frame in &frames {
        if let Some(message) = assembly.take(frame, &mut log.notes) {
            heard.take(&message);
        }
    }
    assembly.left_over(&mut log.notes);
    heard.into_log(&mut log);
    if log.series.is_empty() && log.codes.is_empty() && log.statuses.is_empty() {
        return Err(LogError::NoAnswers);
    }
    Ok(log)
}

fn frames(text: &str, log: &mut Log) -> Vec<Frame> {
    let mut frames = Vec::new();
    let mut broken = 0_usize;
    let mut any = false;
    for (nth, line) in text.lines().enumerate() {
        let bare = line.trim();
        if bare.is_empty() || bare.starts_with(['#', ';']) {
            continue;
        }
        match frame::read(line) {
            Some(frame) => frames.push(Frame {
                line: nth + 1,
                ..frame
            }),
            // A first line of words is a heading.
            None if !any => {}
            None => {
                broken += 1;
                if broken <= TOLD {
                    log.note(Some(nth + 1), say::not_seconds_id_and_bytes_in());
                }
            }
        }
        any = true;
    }
    if broken > TOLD {
        log.note(None, say::more_broken_lines(broken - TOLD));
    }
    put_in_sequence(&mut frames, log);
    frames
}

/// Times since the first frame, never falling.
fn put_in_sequence(frames: &mut Vec<Frame>, log: &mut Log) {
    let raw: Vec<Option<f64>> = frames.iter().map(|frame| Some(frame.t_s)).collect();
    let (placed, oddities) = crate::clock::in_sequence(&raw, &vec![true; raw.len()]);
    for oddity in oddities.iter().take(TOLD) {
        let (row, what) = match oddity {
            crate::clock::Oddity::OutOfOrder { row } => {
                (row, say::the_time_does_not_fit_those().to_owned())
            }
            crate::clock::Oddity::BeganAgain { row } => {
                (row, say::the_time_begins_again_here_the_d().to_owned())
            }
            crate::clock::Oddity::Gap { row, seconds } => {
                (row, say::nothing_recorded_for(format!("{seconds:.0}")))
            }
            crate::clock::Oddity::StoodStill { row, rows } => (row, say::clock_stands_still(rows)),
        };
        log.note(frames.get(*row).map(|frame| frame.line), what);
    }
    let mut at = placed.into_iter();
    frames.retain_mut(|frame| match at.next().flatten() {
        Some(t_s) => {
            frame.t_s = t_s;
            true
        }
        None => false,
    });
}

/// What the units have said so far, each on its own.
#[derive(Default)]
struct Heard {
    series: BTreeMap<String, BTreeMap<Quantity, Vec<Sample>>>,
    supported: BTreeMap<String, (BTreeSet<u8>, u8)>,
    codes: Vec<CodeReading>,
    statuses: Vec<StatusReading>,
    refusals: BTreeMap<(String, u8, u8), (usize, usize)>,
    cleared: Vec<usize>,
}

impl Heard {
    fn take(&mut self, message: &Message) {
        let Some((service, data)) = message.bytes.split_first() else {
            return;
        };
        match service {
            0x41 => self.current(message, data),
            0x43 => self.list(message, data, CodeList::Stored),
            0x47 => self.list(message, data, CodeList::Pending),
            0x4A => self.list(message, data, CodeList::Permanent),
            0x44 => self.cleared.push(message.line),
            0x7F => {
                if let [service, reason, ..] = data
                    // 78: the answer comes later.
                    && *reason != 0x78
                {
                    let key = (message.unit.clone(), *service, *reason);
                    self.refusals.entry(key).or_insert((message.line, 0)).1 += 1;
                }
            }
            _ => {}
        }
    }

    fn current(&mut self, message: &Message, data: &[u8]) {
        for (_, answer) in decode_01(data) {
            match answer {
                Answer::Value(quantity, value) => self.value(message, quantity, value),
                Answer::Status {
                    lamp,
                    count,
                    incomplete,
                } => self.statuses.push(StatusReading {
                    t_s: message.t_s,
                    line: message.line,
                    unit: message.unit.clone(),
                    lamp,
                    count,
                    incomplete: Some(incomplete),
                }),
                Answer::Supported(base, pids) => {
                    let entry = self.supported.entry(message.unit.clone()).or_default();
                    entry.0.extend(pids);
                    entry.1 = entry.1.max(base.saturating_add(0x20));
                }
                Answer::FuelSystem(first, _) => {
                    // 2: closed loop; 16: closed loop with a fault in one sensor.
                    let closed = if matches!(first, 2 | 16) { 1.0 } else { 0.0 };
                    self.value(message, Quantity::ClosedLoop, closed);
                }
                Answer::TwoCoolants(one, two) => {
                    let known = self.series.get(&message.unit);
                    let has_own = known.is_some_and(|known| known.contains_key(&Quantity::Coolant));
                    if let (Some(value), false) = (one.or(two), has_own) {
                        self.value(message, Quantity::Coolant, value);
                    }
                }
                Answer::Other(_) => {}
            }
        }
    }

    fn value(&mut self, message: &Message, quantity: Quantity, value: f64) {
        // A coolant sensor that is cut off reads the end of its scale.
        if quantity == Quantity::Coolant && !(-39.5..214.5).contains(&value) {
            return;
        }
        self.series
            .entry(message.unit.clone())
            .or_default()
            .entry(quantity)
            .or_default()
            .push(Sample {
                t_s: message.t_s,
                value,
                line: message.line,
            });
    }

    fn list(&mut self, message: &Message, data: &[u8], list: CodeList) {
        // On CAN a count stands first; older lines send three codes with padding.
        let pairs = match data.split_first() {
            Some((_, rest)) if message.on_can || data.len() % 2 == 1 => rest,
            _ => data,
        };
        let codes = pairs
            .chunks_exact(2)
            .filter_map(|pair| <[u8; 2]>::try_from(pair).ok())
            .filter_map(code)
            .collect();
        self.codes.push(CodeReading {
            t_s: message.t_s,
            line: message.line,
            unit: message.unit.clone(),
            list,
            codes,
        });
    }

    /// Puts together what the units said: of two that tell the same, the engine's counts.
    fn into_log(self, log: &mut Log) {
        let engine = engine_unit(&self.series);
        if let Some(engine) = &engine
            && let Some(own) = self.series.get(engine)
        {
            log.series.clone_from(own);
        }
        for (unit, series) in &self.series {
            for (quantity, samples) in series {
                if !log.series.contains_key(quantity) {
                    log.series.insert(*quantity, samples.clone());
                    if self.series.len() > 1 {
                        log.note(None, say::told_by_unit(quantity.said(), unit));
                    }
                }
            }
        }
        if self.series.len() > 1 {
            let units: Vec<&str> = self.series.keys().map(String::as_str).collect();
            let engine = engine.clone().unwrap_or_default();
            log.note(
                None,
                say::units_answered(units.len(), units.join(", "), engine),
            );
        }
        log.supported = engine
            .and_then(|engine| self.supported.get(&engine).cloned())
            .or_else(|| self.supported.into_values().next());
        log.codes = self.codes;
        log.statuses = self.statuses;
        for line in self.cleared {
            log.note(Some(line), say::codes_were_cleared_here());
        }
        for ((unit, service, reason), (line, times)) in self.refusals {
            log.notes.push(Note {
                line: Some(line),
                what: say::unit_refused(unit, format!("{service:02X}"), refusal(reason), times),
            });
        }
    }
}

/// The unit that tells of the engine: most of coolant, rpm and load; then the lowest id.
fn engine_unit(series: &BTreeMap<String, BTreeMap<Quantity, Vec<Sample>>>) -> Option<String> {
    let wanted = [Quantity::Coolant, Quantity::Rpm, Quantity::Load];
    let told = |series: &BTreeMap<Quantity, Vec<Sample>>| {
        wanted.iter().filter(|q| series.contains_key(q)).count()
    };
    let most = series.values().map(told).max()?;
    series
        .iter()
        .find(|(_, series)| told(series) == most)
        .map(|(unit, _)| unit.clone())
}

/// The reasons of ISO 14229 / SAE J1979 for a refusal.
fn refusal(reason: u8) -> String {
    match reason {
        0x10 => say::general_reject().to_owned(),
        0x11 => say::service_not_supported().to_owned(),
        0x12 => say::sub_function_not_supported_or_invalid().to_owned(),
        0x21 => say::busy_repeat_the_request().to_owned(),
        0x22 => say::conditions_not_correct().to_owned(),
        other => say::refused_for_reason(format!("{other:02X}")),
    }
}
