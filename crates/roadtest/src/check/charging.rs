//! Charging voltage standing, at speed, and under load.

use super::{clock, missing};
use crate::Quantity;
use crate::judge::{Case, Check, CheckName, Found, Outcome};
use crate::limits::{self, CHARGING_V, NOT_CHARGING_V, OVERCHARGING_V};
use crate::number::{median, quantile};
use measure::Line;

const NAME: CheckName = CheckName::Charging;
/// After the start the battery takes what it gave.
const SETTLE_S: f64 = 30.0;
/// So long a low or high voltage has to last.
const LASTING_S: f64 = 120.0;
/// So much running has to be seen.
const SEEN_S: f64 = 60.0;

/// Where the voltage stayed low or high.
struct Stretch {
    from_s: f64,
    seconds: f64,
    volts: f64,
    /// It charged again after it.
    recovered: bool,
}

pub(crate) fn charging(case: &Case) -> Found {
    let drive = &case.drive;
    if case.log.of(Quantity::Voltage).is_empty() {
        return missing(case.log, NAME, Quantity::Voltage, 0x42).into();
    }
    let settled = settled(case);
    let volts = |holds: &dyn Fn(usize) -> bool| {
        median(
            settled
                .iter()
                .filter(|step| holds(**step))
                .filter_map(|step| drive.voltage.get(*step).copied().flatten()),
        )
    };
    let Some(all) = volts(&|_| true).filter(|_| settled.len() >= drive.steps_of(SEEN_S)) else {
        return Check::cant_tell(
            NAME,
            "less than a minute was recorded with the engine running",
            "record two minutes idling and two at 2000 rpm, lamps and blower on",
        )
        .into();
    };
    let parts = [
        (
            "standing",
            volts(&|step| drive.is_standing(step) == Some(true)),
        ),
        (
            "at speed",
            volts(&|step| drive.is_moving(step) == Some(true)),
        ),
        (
            "engine loaded",
            volts(&|step| {
                drive
                    .load
                    .get(step)
                    .copied()
                    .flatten()
                    .is_some_and(|load| load >= 60.0)
            }),
        ),
    ];
    let told: Vec<String> = parts
        .iter()
        .filter_map(|(name, volts)| Some(format!("{:.1} V {name}", (*volts)?)))
        .collect();
    let told = if told.is_empty() {
        format!("{all:.1} V")
    } else {
        told.join(", ")
    };
    let low = stretch(case, &settled, |volts| volts < NOT_CHARGING_V);
    let high = stretch(case, &settled, |volts| volts > OVERCHARGING_V);
    let check = verdict(case, all, &told, low, high);
    let check = parts
        .into_iter()
        .filter_map(|(name, volts)| Some((name, volts?)))
        .fold(check, |check, (name, volts)| {
            check.reading(name, volts, "V")
        })
        .reading("middle", all, "V");
    let least = quantile(
        settled
            .iter()
            .filter_map(|step| drive.voltage.get(*step).copied().flatten()),
        0.02,
    );
    let check = least
        .into_iter()
        .fold(check, |check, least| check.reading("least", least, "V"));
    let line = Line::new("charging voltage", limits::charging())
        .value(format!("{all:.2} V"))
        .note(format!(
            "the middle of all readings from {SETTLE_S:.0} s after the start; charging is {:.1} to \
             {:.1} V, below {NOT_CHARGING_V:.1} V the battery feeds the vehicle. What was switched \
             on is not in the log",
            CHARGING_V.0, CHARGING_V.1
        ));
    Found {
        check,
        lines: vec![line],
    }
}

fn verdict(
    case: &Case,
    all: f64,
    told: &str,
    low: Option<Stretch>,
    high: Option<Stretch>,
) -> Check {
    let lasting = |stretch: &Stretch| {
        format!(
            "{:.1} V for {:.0} min from {}",
            stretch.volts,
            stretch.seconds / 60.0,
            clock(stretch.from_s)
        )
    };
    if let Some(high) = high {
        return Check::new(
            NAME,
            Outcome::Failed,
            format!(
                "{}: too much, the regulator does not hold it",
                lasting(&high)
            ),
        );
    }
    if !case.drive.running_known {
        return Check::cant_tell(
            NAME,
            format!("{told}, but the log does not say when the engine ran"),
            "record rpm (PID 0C) as well",
        );
    }
    match low {
        Some(low) if low.recovered => Check::cant_tell(
            NAME,
            format!(
                "{}, then it charged again: a bad contact, or charging that the vehicle manages",
                lasting(&low)
            ),
            "load it with lamps and blower, and see whether it stays above 13 V",
        ),
        Some(low) => Check::new(
            NAME,
            Outcome::Failed,
            format!(
                "{}: not charging, the battery feeds the vehicle",
                lasting(&low)
            ),
        ),
        None if (CHARGING_V.0..=CHARGING_V.1).contains(&all) => {
            Check::new(NAME, Outcome::Held, told)
        }
        None => Check::cant_tell(
            NAME,
            format!("{told}: beside the usual, though charging may be managed by the vehicle"),
            "load it with lamps and blower, and see whether it stays above 13 V",
        ),
    }
}

/// Steps with the engine running, some time after each start.
fn settled(case: &Case) -> Vec<usize> {
    let drive = &case.drive;
    let wait = drive.steps_of(SETTLE_S);
    let mut since = 0;
    (0..drive.steps)
        .filter(|step| {
            since = if drive.is_running(*step) {
                since + 1
            } else {
                0
            };
            since > wait && drive.voltage.get(*step).copied().flatten().is_some()
        })
        .collect()
}

/// The longest stretch on one side of a line, smoothed over ten seconds.
fn stretch(case: &Case, settled: &[usize], beyond: impl Fn(f64) -> bool) -> Option<Stretch> {
    let drive = &case.drive;
    let around = drive.steps_of(10.0);
    let volts: Vec<(usize, f64)> = settled
        .chunks(around)
        .filter_map(|chunk| {
            let first = chunk.first()?;
            let middle = median(
                chunk
                    .iter()
                    .filter_map(|step| drive.voltage.get(*step).copied().flatten()),
            )?;
            Some((*first, middle))
        })
        .collect();
    let mut best: Option<(usize, usize)> = None;
    let mut from = None;
    for (nth, (_, value)) in volts.iter().enumerate() {
        if beyond(*value) {
            let start = *from.get_or_insert(nth);
            if best.is_none_or(|(a, b)| nth - start > b - a) {
                best = Some((start, nth));
            }
        } else {
            from = None;
        }
    }
    let (a, b) = best?;
    let (first, last) = (volts.get(a)?.0, volts.get(b)?.0);
    let seconds = drive.at_s(last + around) - drive.at_s(first);
    let inside = median(volts.get(a..=b)?.iter().map(|(_, volts)| *volts))?;
    let recovered = volts
        .iter()
        .skip(b + 1)
        .filter(|(_, volts)| *volts >= CHARGING_V.0)
        .count()
        >= 3;
    (seconds >= LASTING_S).then_some(Stretch {
        from_s: drive.at_s(first),
        seconds,
        volts: inside,
        recovered,
    })
}
