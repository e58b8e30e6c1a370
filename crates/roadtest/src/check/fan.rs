//! Whether the fan brings the temperature down while the vehicle stands.

use super::no_coolant;
use crate::Quantity;
use crate::judge::{Case, Check, CheckName, Found, Outcome};
use crate::limits::{HOT_C, TOO_HOT_C};
use crate::number::mean;
use crate::phrases::check as say;

const NAME: CheckName = CheckName::Fan;
/// A fan has to bring it down by so much.
const FALL_K: f64 = 3.0;
/// In so much time.
const WITHIN_S: f64 = 120.0;

/// One turn of the fan, seen by what it does.
struct Cycle {
    on_s: f64,
    on_c: f64,
    off_c: f64,
}

pub(crate) fn fan(case: &Case) -> Found {
    if let Some(check) = no_coolant(case, NAME) {
        return check.into();
    }
    let drive = &case.drive;
    if !drive.has_speed() {
        let mut check = super::missing(case.log, NAME, Quantity::Speed, 0x0D);
        say::without_road_speed_a_fan_cant().clone_into(&mut check.because);
        return check.into();
    }
    let cycles = cycles(case);
    let told = told_on(case);
    let hottest = drive
        .coolant_where(|step| drive.is_standing(step) == Some(true))
        .into_iter()
        .reduce(f64::max);
    let on = mean(cycles.iter().map(|cycle| cycle.on_c));
    let off = mean(cycles.iter().map(|cycle| cycle.off_c));
    let too_hot = case.conditions.limit_c.unwrap_or(TOO_HOT_C);
    let check = match (on, off, hottest) {
        (_, _, Some(hottest)) if hottest >= too_hot => Check::new(
            NAME,
            Outcome::Failed,
            say::no_fan_in_time(format!("{hottest:.0}")),
        ),
        (Some(on), Some(off), _) => Check::new(
            NAME,
            Outcome::Held,
            say::came_down(cycles.len(), format!("{on:.0}"), format!("{off:.0}")),
        ),
        (_, _, Some(hottest)) if told == Some(false) && hottest >= HOT_C => Check::new(
            NAME,
            Outcome::Failed,
            say::fan_stayed_off(format!("{hottest:.0}")),
        ),
        (_, _, Some(hottest)) => Check::cant_tell(
            NAME,
            say::no_fan_seen(format!("{hottest:.0}")),
            say::let_it_stand_idling_warm_until(),
        ),
        (_, _, None) => Check::cant_tell(
            NAME,
            say::it_never_stood_with_the_engine(),
            say::let_it_stand_idling_warm_until(),
        ),
    };
    let check = cycles.iter().take(10).fold(check, |check, cycle| {
        check
            .at("fan on", cycle.on_c, "°C", cycle.on_s)
            .reading("fan off", cycle.off_c, "°C")
    });
    hottest
        .into_iter()
        .fold(check, |check, c| check.reading("most standing", c, "°C"))
        .into()
}

/// Whether the log's own column ever says that the fan turns.
fn told_on(case: &Case) -> Option<bool> {
    let samples = case.log.of(Quantity::Fan);
    (!samples.is_empty()).then(|| samples.iter().any(|sample| sample.value > 0.0))
}

/// Peaks while standing after which it falls quickly, still standing.
fn cycles(case: &Case) -> Vec<Cycle> {
    let drive = &case.drive;
    let Some(level) = case.opening.level() else {
        return Vec::new();
    };
    let span = drive.steps_of(WITHIN_S);
    let stands = |step: usize| drive.is_standing(step) == Some(true) && drive.is_running(step);
    let mut found = Vec::new();
    let mut step = level.from;
    while step < drive.steps {
        let falling = stands(step).then(|| fall_from(case, step, span)).flatten();
        match falling {
            Some((low, off_c)) => {
                let on_c = drive.coolant_at(step).unwrap_or(off_c);
                found.push(Cycle {
                    on_s: drive.at_s(step),
                    on_c,
                    off_c,
                });
                step = low + 1;
            }
            None => step += 1,
        }
    }
    found
}

/// Where it has fallen to from here, if it is a peak and it fell far enough while standing.
fn fall_from(case: &Case, step: usize, span: usize) -> Option<(usize, f64)> {
    let drive = &case.drive;
    let now = drive.coolant_at(step)?;
    // It has been standing for a minute: the wind has no part in the fall.
    let minute = drive.steps_of(60.0);
    let stood = (step.checked_sub(minute)?..step).all(|step| drive.is_standing(step) == Some(true));
    if !stood {
        return None;
    }
    let (low, low_c) = (step..(step + span).min(drive.steps))
        .take_while(|step| drive.is_standing(*step) == Some(true))
        .filter_map(|step| Some((step, drive.coolant_at(step)?)))
        .take_while(|(_, c)| *c <= now + 0.5)
        .fold(
            (step, now),
            |low, next| if next.1 < low.1 { next } else { low },
        );
    (now - low_c >= FALL_K).then_some((low, low_c))
}
