//! Trouble codes before and after, the lamp, and what the vehicle has checked itself.

use crate::judge::{Case, Check, CheckName, Found, Outcome};
use crate::phrases::check as say;
use crate::{CodeList, Quantity};
use std::collections::BTreeSet;

const NAME: CheckName = CheckName::Codes;
/// What a code stands for, in words.
type Title = fn() -> &'static str;
/// Names that this crate knows by heart; others are shown by their number alone.
const TITLES: [(&str, Title); 12] = [
    ("P0115", say::coolant_sensor_circuit),
    ("P0116", say::coolant_sensor_range),
    ("P0117", say::coolant_sensor_low),
    ("P0118", say::coolant_sensor_high),
    ("P0119", say::coolant_sensor_intermittent),
    ("P0125", say::too_cold_for_closed_loop),
    ("P0126", say::too_cold_for_stable_operation),
    ("P0128", say::coolant_below_thermostats_temperature),
    ("P0217", say::engine_too_hot),
    ("P0480", say::fan_1_control_circuit),
    ("P0481", say::fan_2_control_circuit),
    ("P2181", say::cooling_system_performance),
];

pub(crate) fn codes(case: &Case) -> Found {
    let log = case.log;
    if log.codes.is_empty() && log.statuses.is_empty() {
        return Check::cant_tell(
            NAME,
            say::no_codes_were_read(),
            say::read_codes_and_monitors_before_and(),
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
            say::stored(told(&stored_after))
        } else {
            say::stored_and_new(told(&stored_after), told(&new))
        };
        Check::new(NAME, Outcome::Failed, because)
    } else if lamp || count > 0 {
        Check::new(
            NAME,
            Outcome::Failed,
            if lamp {
                say::lamp_on_and_codes(count)
            } else {
                say::lamp_off_and_codes(count)
            },
        )
    } else if !pending_new.is_empty() && was_read_before(case, CodeList::Pending) {
        Check::new(NAME, Outcome::Failed, say::pending_new(told(&pending_new)))
    } else if !pending.is_empty() {
        Check::cant_tell(
            NAME,
            say::pending(told(&pending)),
            say::drive_once_more_as_the_complaint(),
        )
    } else if !incomplete.is_empty() {
        let names: Vec<&str> = incomplete.into_iter().map(monitor).collect();
        Check::cant_tell(
            NAME,
            say::not_yet_checked(names.join(", ")),
            say::drive_on_until_these_monitors_are(),
        )
    } else {
        Check::new(NAME, Outcome::Held, say::no_codes_the_lamp_is_off())
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
            TITLES.iter().find(|(known, _)| known == code).map_or_else(
                || code.clone(),
                |(_, title)| format!("{code} ({})", title()),
            )
        })
        .collect();
    words.join(", ")
}

/// A monitor of the vehicle, as a person reads it.
fn monitor(code: &str) -> &str {
    match code {
        "misfire" => say::monitor_misfire(),
        "fuel system" => say::monitor_fuel_system(),
        "components" => say::monitor_components(),
        "catalyst" => say::monitor_catalyst(),
        "heated catalyst" => say::monitor_heated_catalyst(),
        "evaporative system" => say::monitor_evaporative_system(),
        "secondary air" => say::monitor_secondary_air(),
        "refrigerant" => say::monitor_refrigerant(),
        "oxygen sensor" => say::monitor_oxygen_sensor(),
        "oxygen sensor heater" => say::monitor_oxygen_sensor_heater(),
        "EGR or VVT" => say::monitor_egr_or_vvt(),
        "NMHC catalyst" => say::monitor_nmhc_catalyst(),
        "NOx aftertreatment" => say::monitor_nox_aftertreatment(),
        "monitor 2" => say::monitor_monitor_2(),
        "boost pressure" => say::monitor_boost_pressure(),
        "monitor 4" => say::monitor_monitor_4(),
        "exhaust gas sensor" => say::monitor_exhaust_gas_sensor(),
        "particulate filter" => say::monitor_particulate_filter(),
        other => other,
    }
}
