//! Trouble codes before and after, the lamp, and what the vehicle has checked itself.

use crate::judge::{Case, Check, CheckName, Found, Outcome};
use crate::{CodeList, Quantity};
use std::collections::BTreeSet;

const NAME: CheckName = CheckName::Codes;
/// Names that this crate knows by heart; others are shown by their number alone.
const TITLES: [(&str, &str); 12] = [
    ("P0115", "coolant sensor circuit"),
    ("P0116", "coolant sensor range"),
    ("P0117", "coolant sensor low"),
    ("P0118", "coolant sensor high"),
    ("P0119", "coolant sensor intermittent"),
    ("P0125", "too cold for closed loop"),
    ("P0126", "too cold for stable operation"),
    ("P0128", "coolant below thermostat's temperature"),
    ("P0217", "engine too hot"),
    ("P0480", "fan 1 control circuit"),
    ("P0481", "fan 2 control circuit"),
    ("P2181", "cooling system performance"),
];

pub(crate) fn codes(case: &Case) -> Found {
    let log = case.log;
    if log.codes.is_empty() && log.statuses.is_empty() {
        return Check::cant_tell(
            NAME,
            "no codes were read",
            "read codes and monitors before and after the drive (services 01, 03, 07)",
        )
        .into();
    }
    let stored_after = codes_at_end(case, CodeList::Stored);
    let stored_before = codes_at_start(case, CodeList::Stored);
    let pending_new: BTreeSet<String> = codes_at_end(case, CodeList::Pending)
        .difference(&codes_at_start(case, CodeList::Pending))
        .cloned()
        .collect();
    let pending = codes_at_end(case, CodeList::Pending);
    let lamp = last_statuses(case).any(|status| status.lamp);
    let count = last_statuses(case)
        .map(|status| u32::from(status.count))
        .sum::<u32>();
    let incomplete: BTreeSet<&str> = last_statuses(case)
        .filter_map(|status| status.incomplete.as_deref())
        .flatten()
        .copied()
        .collect();
    let check = if !stored_after.is_empty() {
        let new: BTreeSet<String> = stored_after.difference(&stored_before).cloned().collect();
        let because = if new.is_empty() {
            format!("stored: {}", told(&stored_after))
        } else {
            format!(
                "stored: {}; new in this drive: {}",
                told(&stored_after),
                told(&new)
            )
        };
        Check::new(NAME, Outcome::Failed, because)
    } else if lamp || count > 0 {
        Check::new(
            NAME,
            Outcome::Failed,
            format!(
                "the lamp is {} and {count} codes are stored",
                if lamp { "on" } else { "off" }
            ),
        )
    } else if !pending_new.is_empty() && was_read_before(case, CodeList::Pending) {
        Check::new(
            NAME,
            Outcome::Failed,
            format!("pending, new in this drive: {}", told(&pending_new)),
        )
    } else if !pending.is_empty() {
        Check::cant_tell(
            NAME,
            format!("pending: {}", told(&pending)),
            "drive once more as the complaint says and read pending codes again",
        )
    } else if !incomplete.is_empty() {
        let names: Vec<&str> = incomplete.into_iter().collect();
        Check::cant_tell(
            NAME,
            format!(
                "no codes, but not yet checked by the vehicle: {}",
                names.join(", ")
            ),
            "drive on until these monitors are complete, then read again",
        )
    } else {
        Check::new(
            NAME,
            Outcome::Held,
            "no codes, the lamp is off, nothing is left unchecked",
        )
    };
    let known = u32::try_from(stored_after.len()).unwrap_or(u32::MAX);
    with_readings(case, check, count.max(known)).into()
}

fn with_readings(case: &Case, check: Check, count: u32) -> Check {
    let last = |quantity: Quantity| case.log.of(quantity).last().map(|sample| sample.value);
    let check = check.reading("codes stored", f64::from(count), "");
    [
        Quantity::DistanceSinceCleared,
        Quantity::DistanceWithLamp,
        Quantity::WarmUps,
        Quantity::MinutesSinceCleared,
    ]
    .into_iter()
    .filter_map(|quantity| Some((quantity, last(quantity)?)))
    .fold(check, |check, (quantity, value)| {
        check.reading(quantity.name(), value, quantity.unit())
    })
}

/// The last status of each unit.
fn last_statuses<'a>(case: &'a Case<'a>) -> impl Iterator<Item = &'a crate::StatusReading> {
    let all = &case.log.statuses;
    all.iter().enumerate().filter_map(move |(nth, status)| {
        let later = all.get(nth + 1..).unwrap_or(&[]);
        (!later.iter().any(|other| other.unit == status.unit)).then_some(status)
    })
}

/// Codes of the last answer of each unit.
fn codes_at_end(case: &Case, list: CodeList) -> BTreeSet<String> {
    one_of_each_unit(
        case.log
            .codes
            .iter()
            .rev()
            .filter(|reading| reading.list == list),
    )
}

/// Codes of the first answer of each unit.
fn codes_at_start(case: &Case, list: CodeList) -> BTreeSet<String> {
    one_of_each_unit(case.log.codes.iter().filter(|reading| reading.list == list))
}

fn one_of_each_unit<'a>(
    readings: impl Iterator<Item = &'a crate::CodeReading>,
) -> BTreeSet<String> {
    let mut seen = BTreeSet::new();
    readings
        .filter(|reading| seen.insert(reading.unit.as_str()))
        .flat_map(|reading| reading.codes.iter().cloned())
        .collect()
}

/// Whether a list was read more than once: then "new" means something.
fn was_read_before(case: &Case, list: CodeList) -> bool {
    case.log
        .codes
        .iter()
        .filter(|reading| reading.list == list)
        .count()
        > 1
}

fn told(codes: &BTreeSet<String>) -> String {
    let words: Vec<String> = codes
        .iter()
        .map(|code| {
            TITLES
                .iter()
                .find(|(known, _)| known == code)
                .map_or_else(|| code.clone(), |(_, title)| format!("{code} ({title})"))
        })
        .collect();
    words.join(", ")
}
