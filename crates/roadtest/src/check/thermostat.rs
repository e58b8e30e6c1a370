//! Where the thermostat opens.

use super::{clock, no_coolant};
use crate::Quantity;
use crate::judge::{Case, Check, CheckName, Found, Outcome};
use crate::limits::{self, COOLEST_THERMOSTAT_C, STUCK_OPEN_BELOW_RATING_K, USUALLY_HELD_C};
use crate::opening::{Knee, Level, Opening};
use crate::phrases::check as say;
use measure::Line;

const NAME: CheckName = CheckName::Thermostat;
/// A knee less certain than this says nothing.
const MOST_WITHIN_K: f64 = 7.0;
/// A rise as fast as this before the level is bent by a valve, not by the weather.
const SHARP_K_PER_MIN: f64 = 3.0;
/// No thermostat is made to hold an engine above this.
const HIGHEST_C: f64 = 108.0;
/// A rise slower than this while standing may end by itself.
const CLEAR_K_PER_MIN: f64 = 2.0;
/// From here on nobody heats.
const HOT_DAY_C: f64 = 25.0;
/// So far above its rating a thermostat opens late.
const LATE_K: f64 = 8.0;

pub(crate) fn thermostat(case: &Case) -> Found {
    if let Some(check) = no_coolant(case, NAME) {
        return check.into();
    }
    match case.opening {
        Opening::NoCoolant | Opening::TooShort => Check::cant_tell(
            NAME,
            say::too_little_was_recorded_with_the(),
            say::drive_until_the_temperature_stops_rising(),
        )
        .into(),
        Opening::StillRising { last_c, k_per_min } => Check::cant_tell(
            NAME,
            say::ends_before_settled(format!("{last_c:.0}")),
            say::drive_on_until_it_holds_for_x(),
        )
        .reading("last", last_c, "°C")
        .reading("slope at the end", k_per_min, "K/min")
        .into(),
        Opening::NeverLevelled { most_c } => Check::new(
            NAME,
            Outcome::Failed,
            say::rose_without_settling(format!("{most_c:.0}")),
        )
        .reading("most", most_c, "°C")
        .into(),
        Opening::StartedAbove { first_c, level } => started_above(case, first_c, level),
        Opening::Levelled { level, knee } => levelled(case, level, knee),
    }
}

/// The lowest level that speaks for a sound thermostat, and below which one is stuck open.
pub(super) fn lines(case: &Case) -> (f64, f64) {
    match case.conditions.thermostat_c {
        Some(rating) => {
            let line = rating - STUCK_OPEN_BELOW_RATING_K;
            (line, line)
        }
        None => (USUALLY_HELD_C, COOLEST_THERMOSTAT_C - 1.0),
    }
}

fn started_above(case: &Case, first_c: f64, level: Level) -> Found {
    if let Some(found) = too_cold(case, level, false) {
        return found;
    }
    Check::cant_tell(
        NAME,
        say::began_with_it_open(format!("{first_c:.0}")),
        say::record_from_a_cold_start_to(),
    )
    .reading("first", first_c, "°C")
    .reading("level", level.c, "°C")
    .into()
}

/// A level that no sound thermostat holds.
fn too_cold(case: &Case, level: Level, sharp: bool) -> Option<Found> {
    let (sound, stuck) = lines(case);
    if level.c >= sound {
        return None;
    }
    let settled = say::settled_from(
        format!("{:.0}", level.c),
        clock(case.drive.at_s(level.from)),
    );
    let check = if level.c >= stuck {
        Check::cant_tell(
            NAME,
            say::low_but_some_hold_that(settled),
            say::read_the_temperature_stamped_on_the(),
        )
    } else if !sharp && stood(case) && !is_hot_day(case) {
        Check::cant_tell(
            NAME,
            say::but_it_only_stood(settled),
            say::drive_it_heater_off_for_ten(),
        )
    } else {
        Check::new(
            NAME,
            Outcome::Failed,
            say::stuck_open(settled, format!("{stuck:.0}")),
        )
    };
    Some(Found {
        check: check.at("level", level.c, "°C", case.drive.at_s(level.from)),
        lines: vec![level_line(level, stuck)],
    })
}

/// Air so warm that no heater draws the engine down; unknown air is not.
fn is_hot_day(case: &Case) -> bool {
    [Quantity::Ambient, Quantity::Intake]
        .into_iter()
        .find_map(|quantity| {
            let air = case.log.of(quantity).iter().map(|sample| sample.value);
            air.reduce(f64::min)
        })
        .is_some_and(|air| air >= HOT_DAY_C)
}

/// Whether it hardly moved, as far as the log tells.
fn stood(case: &Case) -> bool {
    let moved = case
        .drive
        .minutes(|step| case.drive.is_moving(step).unwrap_or(false));
    moved < 3.0
}

fn levelled(case: &Case, level: Level, knee: Option<Knee>) -> Found {
    // An engine that slowly finds its balance bends gently; a thermostat bends it.
    let sharp = knee.is_some_and(|knee| {
        knee.before_k_per_min >= SHARP_K_PER_MIN
            && knee.after_k_per_min.abs() < 0.2 * knee.before_k_per_min
    });
    if let Some(found) = too_cold(case, level, sharp) {
        return found;
    }
    let rated = case.conditions.thermostat_c.unwrap_or(HIGHEST_C);
    if level.c > rated.max(HIGHEST_C) {
        return Check::new(
            NAME,
            Outcome::Failed,
            say::settled_only_at(format!("{:.0}", level.c)),
        )
        .at("level", level.c, "°C", case.drive.at_s(level.from))
        .into();
    }
    // Standing, an engine may find its balance below the opening: that bend is gentle.
    let clear = |knee: &Knee| {
        knee.within_k <= MOST_WITHIN_K && (knee.before_k_per_min >= CLEAR_K_PER_MIN || !stood(case))
    };
    let Some(knee) = knee.filter(clear) else {
        return Found {
            check: Check::cant_tell(
                NAME,
                say::bend_not_clear(format!("{:.0}", level.c)),
                say::record_a_cold_start_at_a(),
            )
            .at("level", level.c, "°C", case.drive.at_s(level.from)),
            lines: vec![level_line(level, lines(case).1)],
        };
    };
    let told = say::opens_at(
        format!("{:.0}", knee.c),
        format!("{:.0}", knee.within_k),
        clock(knee.at_s),
    );
    let check = match case.conditions.thermostat_c {
        Some(rating) if knee.c - knee.within_k > rating + LATE_K => Check::new(
            NAME,
            Outcome::Failed,
            say::late_for_its_stamp(told, format!("{rating:.0}")),
        ),
        Some(rating) if knee.c + knee.within_k < rating - LATE_K => Check::new(
            NAME,
            Outcome::Failed,
            say::early_for_its_stamp(told, format!("{rating:.0}")),
        ),
        _ => Check::new(NAME, Outcome::Held, told),
    };
    let check = check
        .with(
            "opening",
            knee.c,
            "°C",
            Some(knee.at_s),
            Some(knee.within_k),
        )
        .at("level", level.c, "°C", case.drive.at_s(level.from))
        .reading("slope before", knee.before_k_per_min, "K/min")
        .reading("slope after", knee.after_k_per_min, "K/min");
    let line = Line::new(say::opening_of_the_thermostat(), limits::derived())
        .formula("T", "a + b·min(t - tk, 0) + c·max(t - tk, 0)")
        .input("b", format!("{:.1} K/min", knee.before_k_per_min))
        .input("c", format!("{:.1} K/min", knee.after_k_per_min))
        .input("tk", clock(knee.at_s))
        .value(format!("{:.1} ± {:.1} °C", knee.c, knee.within_k))
        .note(say::two_lines_that_meet_by_least());
    Found {
        check,
        lines: vec![level_line(level, lines(case).1), line],
    }
}

fn level_line(level: Level, stuck: f64) -> Line {
    Line::new(say::level_after_warming_up(), limits::thermostats())
        .value(format!("{:.1} °C", level.c))
        .note(say::mean_of_two_minutes(format!("{stuck:.0}")))
}
