//! Whether it ran too hot, and whether standing or at speed.

use super::{clock, no_coolant};
use crate::judge::{Case, Check, CheckName, Found, Outcome};
use crate::limits::{self, BOILS_OPEN_C, HOT_C, TOO_HOT_C, WARM_C};
use crate::number::median;
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
            format!("one reading of {:.0} °C stands alone", hottest.value),
            "drive it again with a reading every second",
        )
    } else if let Some(doubt) = doubt(case, hottest, too_hot) {
        doubt
    } else if warm_min < MINUTES || case.opening.level().is_none() {
        Check::cant_tell(
            NAME,
            format!(
                "at most {:.0} °C, but it was not seen settled and warm for long",
                hottest.value
            ),
            "drive it warm for five minutes, then let it stand idling",
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
            Line::new("hottest reading against the line", source)
                .input("line", format!("{too_hot:.0} °C"))
                .value(format!("{:.0} °C at {}", hottest.value, clock(hottest.t_s))),
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
        (true, false) if at_speed.is_some() => {
            "standing, not at speed: look at the fan and the air through the radiator"
        }
        (false, true) if standing.is_some() => {
            "at speed, not standing: look at the radiator, the flow and the head gasket"
        }
        (true, true) => "standing and at speed: look at level, air, thermostat and pump",
        _ => "look at level, air, thermostat, pump and fan",
    };
    Check::new(
        NAME,
        Outcome::Failed,
        format!(
            "{:.0} °C at {}, {too_hot:.0} °C or more is too hot; {where_to_look}",
            hottest.value,
            clock(hottest.t_s)
        ),
    )
}

fn held(hottest: Sample, standing: Option<f64>, at_speed: Option<f64>) -> Check {
    let seen = match (standing, at_speed) {
        (Some(standing), Some(at_speed)) => {
            format!("at most {standing:.0} °C standing and {at_speed:.0} °C at speed")
        }
        (Some(standing), None) => format!("at most {standing:.0} °C standing; not seen at speed"),
        (None, Some(at_speed)) => format!("at most {at_speed:.0} °C at speed; not seen standing"),
        (None, None) => format!("at most {:.0} °C", hottest.value),
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
            format!(
                "{:.0} °C at {}: hot, though some engines are meant to run so",
                hottest.value,
                clock(hottest.t_s)
            ),
            "find the maker's highest temperature and judge again with it",
        ));
    }
    let boils_open = boils_open_c(case);
    if let Some(at_s) = lost_coolant(case, boils_open - 4.0) {
        return Some(Check::cant_tell(
            NAME,
            format!(
                "at {} the reading fell faster than coolant cools: the sensor may stand in steam",
                clock(at_s)
            ),
            "let it cool, check the level, bleed it and drive again",
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
            format!("it was still rising at {end_c:.0} °C when the log ended"),
            "go on recording, watch the gauge, and stop if it climbs",
        ));
    }
    if hottest.value >= boils_open - 1.0 && sits_at(case, boils_open, hottest.value) {
        return Some(Check::cant_tell(
            NAME,
            format!(
                "it sat near {boils_open:.0} °C, where water boils without pressure: it may hold, or boil"
            ),
            "test the cap and look for steam, then judge with the boiling point",
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
