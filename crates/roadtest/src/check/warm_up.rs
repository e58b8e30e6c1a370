//! How soon the engine is warm, and how fast it gets there.

use super::{clock, no_coolant};
use crate::judge::{Case, Check, CheckName, Found, Outcome};
use crate::limits::{self, MOVING_KMH, STUCK_OPEN_BELOW_RATING_K, WARM_C, WARM_WITHIN_MIN};
use crate::phrases::check as say;
use measure::Line;

const NAME: CheckName = CheckName::WarmUp;
/// A start warmer than this shows no warm-up.
const COLD_START_C: f64 = 50.0;

pub(crate) fn warm_up(case: &Case) -> Found {
    if let Some(check) = no_coolant(case, NAME) {
        return check.into();
    }
    let drive = &case.drive;
    let seen = |step: &usize| drive.is_running(*step) && drive.coolant_at(*step).is_some();
    let Some(start) = (0..drive.steps).find(seen) else {
        return Check::cant_tell(
            NAME,
            say::the_engine_was_not_seen_running(),
            say::start_the_recording_then_the_engine(),
        )
        .into();
    };
    let first_c = drive.coolant_at(start).unwrap_or(0.0);
    if first_c > COLD_START_C {
        return Check::cant_tell(
            NAME,
            say::was_already_at(format!("{first_c:.0}")),
            say::record_from_a_cold_start(),
        )
        .at("first", first_c, "°C", drive.at_s(start))
        .into();
    }
    let warm_c = case.conditions.thermostat_c.map_or(WARM_C, |rating| {
        WARM_C.min(rating - STUCK_OPEN_BELOW_RATING_K)
    });
    let warm = (start..drive.steps).find(|step| {
        drive.is_running(*step) && drive.coolant_at(*step).is_some_and(|c| c >= warm_c)
    });
    let running_min =
        |to: usize| drive.minutes(|step| step >= start && step < to && drive.is_running(step));
    match warm {
        Some(warm) => reached(case, start, warm, running_min(warm), warm_c),
        None => not_reached(case, start, running_min(drive.steps), warm_c),
    }
}

fn reached(case: &Case, start: usize, warm: usize, minutes: f64, warm_c: f64) -> Found {
    let drive = &case.drive;
    let (first_c, at_c) = (
        drive.coolant_at(start).unwrap_or(0.0),
        drive.coolant_at(warm).unwrap_or(warm_c),
    );
    let k_per_min = (at_c - first_c) / minutes.max(1.0 / 60.0);
    let told = say::rose_in(
        format!("{first_c:.0}"),
        format!("{at_c:.0}"),
        format!("{minutes:.1}"),
        format!("{k_per_min:.1}"),
    );
    let check = if minutes <= WARM_WITHIN_MIN {
        Check::new(NAME, Outcome::Held, told)
    } else {
        Check::cant_tell(
            NAME,
            say::slow_warm_up(told),
            say::warm_it_up_again_on_the(),
        )
    };
    let check = check
        .at("first", first_c, "°C", drive.at_s(start))
        .at("warm", at_c, "°C", drive.at_s(warm))
        .reading("time to warm", minutes, "min")
        .reading("slope", k_per_min, "K/min");
    let line = Line::new(say::rise_while_warming_up(), limits::thermostats())
        .formula("v", "(T2 - T1) / t")
        .input("T1", format!("{first_c:.0} °C"))
        .input(
            "T2",
            say::c_at(format!("{at_c:.0}"), clock(drive.at_s(warm))),
        )
        .input("t", format!("{minutes:.1} min"))
        .value(format!("{k_per_min:.1} K/min"))
        .note(say::warm_is(
            format!("{warm_c:.0}"),
            format!("{WARM_WITHIN_MIN:.0}"),
        ));
    Found {
        check,
        lines: vec![line],
    }
}

fn not_reached(case: &Case, start: usize, minutes: f64, warm_c: f64) -> Found {
    let drive = &case.drive;
    let most = drive
        .coolant_where(|step| step >= start)
        .into_iter()
        .fold(f64::NEG_INFINITY, f64::max);
    let on_road =
        drive.minutes(|step| drive.is_running(step) && drive.is_moving(step).unwrap_or(false));
    let first_c = drive.coolant_at(start).unwrap_or(0.0);
    let check = if minutes > WARM_WITHIN_MIN && on_road >= 5.0 {
        Check::new(
            NAME,
            Outcome::Failed,
            say::only_reached(
                format!("{minutes:.0}"),
                format!("{on_road:.0}"),
                format!("{MOVING_KMH:.0}"),
                format!("{most:.0}"),
            ),
        )
    } else {
        Check::cant_tell(
            NAME,
            say::too_short_to_get_warm(format!("{most:.0}"), format!("{minutes:.0}")),
            say::drive_until_warm(format!("{warm_c:.0}")),
        )
    };
    check
        .at("first", first_c, "°C", drive.at_s(start))
        .reading("most", most, "°C")
        .reading("running", minutes, "min")
        .into()
}
