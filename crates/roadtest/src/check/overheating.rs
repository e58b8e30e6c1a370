//! Whether it ran too hot, and whether standing or at speed.

use super::{clock, no_coolant};
use crate::judge::{Case, Check, CheckName, Found, Outcome};
use crate::limits::{self, BOILS_OPEN_C, HOT_C, TOO_HOT_C, WARM_C};
use crate::number::median;
use crate::phrases::check as say;
use crate::{Quantity, Sample};
use measure::{Grade, Line, Source};

const NAME: CheckName = CheckName::Overheating;
/// A warm engine has to be seen so long.
const MINUTES: f64 = 4.0;
/// What has to lie between the hottest reading and the point where this coolant boils.
const MARGIN_K: f64 = 5.0;
/// A fall no fan can make: the sensor has lost the coolant.
const LOST_K: f64 = 10.0;
const LOST_IN_S: f64 = 8.0;

pub(crate) fn overheating(case: &Case) -> Found {
    if let Some(check) = no_coolant(case, NAME) {
        return check.into();
    }
    let drive = &case.drive;
    let too_hot = line(case);
    let samples = case.log.of(Quantity::Coolant);
    let Some(hottest) = samples
        .iter()
        .copied()
        .reduce(|best, next| if next.value > best.value { next } else { best })
    else {
        return super::missing(case.log, NAME, Quantity::Coolant, 0x05).into();
    };
    let over = samples
        .iter()
        .filter(|sample| sample.value >= too_hot)
        .count();
    let warm_min = drive.minutes(|step| {
        drive.is_running(step) && drive.coolant_at(step).is_some_and(|c| c >= WARM_C)
    });
    // Only warm: a cold start at the kerb says nothing of standing.
    let warm = |step: usize| drive.coolant_at(step).is_some_and(|c| c >= WARM_C);
    let most_standing = most(case, |step| {
        warm(step) && drive.is_standing(step) == Some(true)
    });
    let most_at_speed = most(case, |step| {
        warm(step) && drive.is_moving(step) == Some(true)
    });
    let check = if over >= 2 {
        failed(hottest, too_hot, most_standing, most_at_speed)
    } else if over == 1 {
        Check::cant_tell(
            NAME,
            say::stands_alone(format!("{:.0}", hottest.value)),
            say::drive_it_again_with_a_reading(),
        )
    } else if let Some(doubt) = doubt(case, hottest, too_hot) {
        doubt
    } else if warm_min < MINUTES || case.opening.level().is_none() {
        Check::cant_tell(
            NAME,
            say::not_warm_for_long(format!("{:.0}", hottest.value)),
            say::drive_it_warm_for_five_minutes(),
        )
    } else {
        held(hottest, most_standing, most_at_speed)
    };
    let check = check.at("most", hottest.value, "°C", hottest.t_s);
    let check = most_standing
        .into_iter()
        .fold(check, |check, c| check.reading("most standing", c, "°C"));
    let check = most_at_speed
        .into_iter()
        .fold(check, |check, c| check.reading("most at speed", c, "°C"));
    let given = case.conditions.limit_c.is_some() || case.conditions.boil_c.is_some();
    let source = if given {
        Source::new("given with the road test", "", Grade::Given)
    } else {
        limits::common()
    };
    Found {
        check: check.reading("line", too_hot, "°C"),
        lines: vec![
            Line::new(say::hottest_reading_against_the_line(), source)
                .input(say::the_line(), format!("{too_hot:.0} °C"))
                .value(say::c_at(
                    format!("{:.0}", hottest.value),
                    clock(hottest.t_s),
                )),
        ],
    }
}

/// From here on it is too hot: the lowest of what is known.
fn line(case: &Case) -> f64 {
    let boil = case.conditions.boil_c.map(|boil| boil - MARGIN_K);
    match (case.conditions.limit_c, boil) {
        (Some(limit), Some(boil)) => limit.min(boil),
        (Some(limit), None) => limit,
        (None, Some(boil)) => boil.min(TOO_HOT_C),
        (None, None) => TOO_HOT_C,
    }
}

fn most(case: &Case, holds: impl Fn(usize) -> bool) -> Option<f64> {
    case.drive.coolant_where(holds).into_iter().reduce(f64::max)
}

fn failed(hottest: Sample, too_hot: f64, standing: Option<f64>, at_speed: Option<f64>) -> Check {
    let hot = |most: Option<f64>| most.is_some_and(|c| c >= too_hot - 3.0);
    let where_to_look = match (hot(standing), hot(at_speed)) {
        (true, false) if at_speed.is_some() => say::standing_not_at_speed_look_at(),
        (false, true) if standing.is_some() => say::at_speed_not_standing_look_at(),
        (true, true) => say::standing_and_at_speed_look_at(),
        _ => say::look_at_level_air_thermostat_pump(),
    };
    Check::new(
        NAME,
        Outcome::Failed,
        say::is_too_hot(
            format!("{:.0}", hottest.value),
            clock(hottest.t_s),
            format!("{too_hot:.0}"),
            where_to_look,
        ),
    )
}

fn held(hottest: Sample, standing: Option<f64>, at_speed: Option<f64>) -> Check {
    let seen = match (standing, at_speed) {
        (Some(standing), Some(at_speed)) => {
            say::most_standing_and_at_speed(format!("{standing:.0}"), format!("{at_speed:.0}"))
        }
        (Some(standing), None) => say::most_standing_only(format!("{standing:.0}")),
        (None, Some(at_speed)) => say::most_at_speed_only(format!("{at_speed:.0}")),
        (None, None) => say::at_most(format!("{:.0}", hottest.value)),
    };
    Check::new(NAME, Outcome::Held, seen)
}

/// Reasons not to say that it held, though the line was not reached.
fn doubt(case: &Case, hottest: Sample, too_hot: f64) -> Option<Check> {
    let drive = &case.drive;
    let no_limit = case.conditions.limit_c.is_none();
    if no_limit && hottest.value >= HOT_C.min(too_hot) {
        return Some(Check::cant_tell(
            NAME,
            say::hot_though_meant(format!("{:.0}", hottest.value), clock(hottest.t_s)),
            say::find_the_makers_highest_temperature_and(),
        ));
    }
    let boils_open = boils_open_c(case);
    if let Some(at_s) = lost_coolant(case, boils_open - 4.0) {
        return Some(Check::cant_tell(
            NAME,
            say::fell_too_fast(clock(at_s)),
            say::let_it_cool_check_the_level(),
        ));
    }
    let last = (0..drive.steps)
        .rev()
        .find(|step| drive.coolant_at(*step).is_some())?;
    let end_slope = drive.slope(last.saturating_sub(drive.steps_of(60.0)), last + 1);
    let end_c = drive.coolant_at(last)?;
    if end_c >= boils_open - 2.0 && end_slope.is_some_and(|(k_per_min, _)| k_per_min > 1.0) {
        return Some(Check::cant_tell(
            NAME,
            say::still_rising(format!("{end_c:.0}")),
            say::go_on_recording_watch_the_gauge(),
        ));
    }
    if hottest.value >= boils_open - 1.0 && sits_at(case, boils_open, hottest.value) {
        return Some(Check::cant_tell(
            NAME,
            say::sat_where_it_boils(format!("{boils_open:.0}")),
            say::test_the_cap_and_look_for(),
        ));
    }
    None
}

/// Where water boils without pressure at this barometer: Clausius and Clapeyron from 100 °C at
/// 101.325 kPa, with 40.65 kJ/mol.
fn boils_open_c(case: &Case) -> f64 {
    let pressure = median(
        case.log
            .of(Quantity::Barometer)
            .iter()
            .map(|sample| sample.value),
    );
    let Some(kpa) = pressure.filter(|kpa| (50.0..=110.0).contains(kpa)) else {
        return BOILS_OPEN_C;
    };
    1.0 / (1.0 / 373.15 - 8.314_462_6 / 40_650.0 * libm::log(kpa / 101.325)) - 273.15
}

/// A fall from hot that no fan makes, engine running.
fn lost_coolant(case: &Case, from_c: f64) -> Option<f64> {
    let drive = &case.drive;
    let span = drive.steps_of(LOST_IN_S.max(2.5 * drive.coolant_every_s));
    (0..drive.steps.saturating_sub(span))
        .find(|step| {
            let now = drive.coolant_at(*step);
            let then = drive.coolant_at(step + span);
            let runs = drive.is_running(*step) && drive.is_running(step + span);
            runs && now
                .zip(then)
                .is_some_and(|(now, then)| now >= from_c && now - then >= LOST_K)
        })
        .map(|step| drive.at_s(step))
}

/// Held within 2 K about where water boils: for a minute if it never went higher, as boiling
/// water does not; else for three.
fn sits_at(case: &Case, boils_c: f64, most_c: f64) -> bool {
    let drive = &case.drive;
    let seconds = if most_c <= boils_c + 2.5 { 60.0 } else { 180.0 };
    let span = drive.steps_of(seconds);
    let stride = drive.steps_of(10.0);
    (0..drive.steps.saturating_sub(span))
        .step_by(stride)
        .any(|from| {
            let range = (from..from + span).try_fold(
                (f64::INFINITY, f64::NEG_INFINITY),
                |(low, high), step| {
                    let c = drive.coolant_at(step).filter(|_| drive.is_running(step))?;
                    Some((c.min(low), c.max(high)))
                },
            );
            range.is_some_and(|(low, high)| {
                high - low <= 2.0 && low >= boils_c - 1.5 && high <= boils_c + 4.0
            })
        })
}
