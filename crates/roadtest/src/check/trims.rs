//! Fuel trims, by load.

use super::missing;
use crate::drive::resampled;
use crate::judge::{Case, Check, CheckName, Found, Outcome};
use crate::limits::{self, TRIM_PERCENT, WARM_C};
use crate::number::{mean, real};
use crate::phrases::check as say;
use crate::{Log, Quantity};
use measure::Line;

const NAME: CheckName = CheckName::Trims;
/// A part of the drive counts from here on.
const SEEN_S: f64 = 45.0;

/// What part of a drive is looked at apart.
#[derive(Clone, Copy, PartialEq, Eq)]
enum Part {
    Idle,
    Light,
    Heavy,
}

impl Part {
    /// As a program reads it.
    fn code(self) -> &'static str {
        match self {
            Part::Idle => "idling",
            Part::Light => "light load",
            Part::Heavy => "heavy load",
        }
    }

    /// The same of a bank, as a person reads it.
    fn of_bank(self, bank: u8) -> String {
        match self {
            Part::Idle => say::bank_idling(bank),
            Part::Light => say::bank_light_load(bank),
            Part::Heavy => say::bank_heavy_load(bank),
        }
    }
}

pub(crate) fn trims(case: &Case) -> Found {
    let log = case.log;
    if log.of(Quantity::ShortTrim1).is_empty() && log.of(Quantity::LongTrim1).is_empty() {
        return missing(log, NAME, Quantity::ShortTrim1, 0x06).into();
    }
    let banks = [
        (1, Quantity::ShortTrim1, Quantity::LongTrim1),
        (2, Quantity::ShortTrim2, Quantity::LongTrim2),
    ];
    let mut found: Vec<(u8, Part, f64)> = Vec::new();
    for (bank, short, long) in banks {
        if log.of(short).is_empty() && log.of(long).is_empty() {
            continue;
        }
        let total = total(case, log, short, long);
        for part in [Part::Idle, Part::Light, Part::Heavy] {
            if let Some(mean) = of_part(case, &total, part) {
                found.push((bank, part, mean));
            }
        }
    }
    let both = !log.of(Quantity::ShortTrim1).is_empty() && !log.of(Quantity::LongTrim1).is_empty();
    let worst = found
        .iter()
        .max_by(|one, other| one.2.abs().total_cmp(&other.2.abs()));
    let Some((bank, part, percent)) = worst else {
        return Check::cant_tell(
            NAME,
            say::the_engine_was_not_warm_and(),
            say::drive_it_warm_idling_steady_and(),
        )
        .into();
    };
    let told = say::trim_at_most(format!("{percent:+.1}"), part.of_bank(*bank));
    let (usual, failing) = TRIM_PERCENT;
    let check = if percent.abs() > failing {
        Check::new(NAME, Outcome::Failed, format!("{told}: {}", reason(&found)))
    } else if percent.abs() > usual {
        Check::cant_tell(
            NAME,
            say::more_than_usual(told),
            say::compare_idling_with_2500_rpm_and(),
        )
    } else if both {
        Check::new(NAME, Outcome::Held, told)
    } else {
        Check::cant_tell(
            NAME,
            say::only_one_trim(told),
            say::record_short_and_long_trim_together(),
        )
    };
    let check = found.iter().fold(check, |check, (bank, part, mean)| {
        check.reading(&format!("bank {bank} {}", part.code()), *mean, "%")
    });
    let line = Line::new(say::short_and_long_trim_together_warm(), limits::trims())
        .value(say::furthest_off(format!("{percent:+.1}")))
        .note(say::trim_limits(
            format!("{usual:.0}"),
            format!("{failing:.0}"),
        ));
    Found {
        check,
        lines: vec![line],
    }
}

/// Both trims added, step by step; the one that is read where only one is.
fn total(case: &Case, log: &Log, short: Quantity, long: Quantity) -> Vec<Option<f64>> {
    let drive = &case.drive;
    let grid = |quantity| resampled(log.of(quantity), drive.step_s, drive.steps);
    let (short, long) = (grid(short), grid(long));
    let loops = grid(Quantity::ClosedLoop);
    let closed = |step: usize| {
        loops.iter().all(Option::is_none)
            || loops
                .get(step)
                .copied()
                .flatten()
                .is_some_and(|closed| closed > 0.5)
    };
    (0..drive.steps)
        .map(|step| {
            let at = |series: &[Option<f64>]| series.get(step).copied().flatten();
            let sum = match (at(&short), at(&long)) {
                (None, None) => None,
                (short, long) => Some(short.unwrap_or(0.0) + long.unwrap_or(0.0)),
            };
            sum.filter(|_| closed(step))
        })
        .collect()
}

/// The mean over a part of the drive; nothing where it was hardly seen.
fn of_part(case: &Case, total: &[Option<f64>], part: Part) -> Option<f64> {
    let drive = &case.drive;
    let knows_coolant = drive.coolant.iter().any(Option::is_some);
    let values: Vec<f64> = (0..drive.steps)
        .filter(|step| drive.is_running(*step))
        .filter(|step| !knows_coolant || drive.coolant_at(*step).is_some_and(|c| c >= WARM_C))
        .filter(|step| part_at(case, *step) == Some(part))
        .filter_map(|step| total.get(step).copied().flatten())
        .collect();
    (real(values.len()) * drive.step_s >= SEEN_S)
        .then(|| mean(values))
        .flatten()
}

fn part_at(case: &Case, step: usize) -> Option<Part> {
    let drive = &case.drive;
    let load = drive.load.get(step).copied().flatten();
    let idles = match drive.is_standing(step) {
        Some(standing) => {
            standing
                && drive
                    .rpm
                    .get(step)
                    .copied()
                    .flatten()
                    .is_none_or(|rpm| rpm < 1200.0)
        }
        None => drive.rpm.get(step).copied().flatten()? < 1200.0,
    };
    Some(match (idles, load) {
        (true, _) => Part::Idle,
        (false, Some(load)) if load >= 60.0 => Part::Heavy,
        (false, _) => Part::Light,
    })
}

/// Where a lean or rich engine is to be looked at, by where it is so.
fn reason(found: &[(u8, Part, f64)]) -> &'static str {
    let of =
        |part: Part| mean(found.iter().filter(|one| one.1 == part).map(|one| one.2)).unwrap_or(0.0);
    let (idle, light, heavy) = (of(Part::Idle), of(Part::Light), of(Part::Heavy));
    let usual = TRIM_PERCENT.0;
    if idle > usual && light < usual && heavy < usual {
        say::lean_at_idle_alone_air_that()
    } else if heavy > usual && idle < usual {
        say::lean_under_load_fuel_delivery_or()
    } else if idle.max(light).max(heavy) > usual {
        say::lean_air_not_counted_fuel_delivery()
    } else {
        say::rich_fuel_pressure_a_leaking_injector()
    }
}
