//! Charging voltage standing, at speed, and under load.

use super::{clock, missing};
use crate::Quantity;
use crate::judge::{Case, Check, CheckName, Found, Outcome};
use crate::limits::{self, CHARGING_V, NOT_CHARGING_V, OVERCHARGING_V};
use crate::number::{median, quantile};
use crate::phrases::check as say;
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
            say::less_than_a_minute_was_recorded(),
            say::record_two_minutes_idling_and_two(),
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
        .filter_map(|(name, volts)| Some(told_of(name, (*volts)?)))
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
    let line = Line::new(say::charging_voltage(), limits::charging())
        .value(format!("{all:.2} V"))
        .note(say::charging_limits(
            format!("{SETTLE_S:.0}"),
            format!("{:.1}", CHARGING_V.0),
            format!("{:.1}", CHARGING_V.1),
            format!("{NOT_CHARGING_V:.1}"),
        ));
    Found {
        check,
        lines: vec![line],
    }
}

/// The voltage of a part of the drive in words.
fn told_of(part: &str, volts: f64) -> String {
    let volts = format!("{volts:.1}");
    match part {
        "standing" => say::volts_standing(volts),
        "at speed" => say::volts_at_speed(volts),
        _ => say::volts_engine_loaded(volts),
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
        say::volts_lasting(
            format!("{:.1}", stretch.volts),
            format!("{:.0}", stretch.seconds / 60.0),
            clock(stretch.from_s),
        )
    };
    if let Some(high) = high {
        return Check::new(NAME, Outcome::Failed, say::too_much_voltage(lasting(&high)));
    }
    if !case.drive.running_known {
        return Check::cant_tell(
            NAME,
            say::unknown_when_it_ran(told),
            say::record_rpm_pid_0c_as_well(),
        );
    }
    match low {
        Some(low) if low.recovered => Check::cant_tell(
            NAME,
            say::charged_again(lasting(&low)),
            say::load_it_with_lamps_and_blower(),
        ),
        Some(low) => Check::new(NAME, Outcome::Failed, say::not_charging(lasting(&low))),
        None if (CHARGING_V.0..=CHARGING_V.1).contains(&all) => {
            Check::new(NAME, Outcome::Held, told)
        }
        None => Check::cant_tell(
            NAME,
            say::beside_the_usual(told),
            say::load_it_with_lamps_and_blower(),
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
