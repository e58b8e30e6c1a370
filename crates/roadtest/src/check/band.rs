//! The band that the temperature holds once it is warm.

use super::{no_coolant, thermostat};
use crate::judge::{Case, Check, CheckName, Found, Outcome};
use crate::limits::{self, TOO_HOT_C};
use crate::number::{median, quantile};
use crate::opening::Opening;
use crate::phrases::check as say;
use measure::Line;

const NAME: CheckName = CheckName::Band;
/// So long a warm engine has to be seen.
const MINUTES: f64 = 3.0;
/// Below the level by more than this for a while: the thermostat does not hold it.
const SAG_K: f64 = 12.0;

pub(crate) fn band(case: &Case) -> Found {
    if let Some(check) = no_coolant(case, NAME) {
        return check.into();
    }
    let drive = &case.drive;
    let Some(level) = case.opening.level() else {
        return unsettled(case).into();
    };
    let warm = drive.coolant_where(|step| step >= level.from);
    let minutes = drive.minutes(|step| step >= level.from && drive.is_running(step));
    let (Some(low), Some(high), Some(middle)) = (
        quantile(warm.iter().copied(), 0.02),
        quantile(warm.iter().copied(), 0.98),
        median(warm.iter().copied()),
    ) else {
        return unsettled(case).into();
    };
    let (sound, stuck) = thermostat::lines(case);
    let told = say::band_over(
        format!("{low:.0}"),
        format!("{high:.0}"),
        format!("{minutes:.0}"),
        format!("{middle:.0}"),
    );
    let too_hot = case.conditions.limit_c.unwrap_or(TOO_HOT_C);
    let check = if high >= too_hot {
        Check::new(
            NAME,
            Outcome::Failed,
            say::does_not_stay_below(told, format!("{too_hot:.0}")),
        )
    } else if middle < stuck {
        below(case, &told, stuck)
    } else if middle < sound {
        Check::cant_tell(
            NAME,
            say::low_but_some_hold_that(told),
            say::read_the_temperature_stamped_on_the(),
        )
    } else if low < stuck && low < middle - SAG_K {
        Check::new(
            NAME,
            Outcome::Failed,
            say::it_sags_to(told, format!("{low:.0}")),
        )
    } else if minutes < MINUTES {
        Check::cant_tell(
            NAME,
            say::too_short(told),
            say::drive_on_for_three_minutes_once(),
        )
    } else {
        Check::new(NAME, Outcome::Held, told)
    };
    let check = check
        .reading("low", low, "°C")
        .reading("high", high, "°C")
        .reading("middle", middle, "°C")
        .reading("minutes", minutes, "min");
    let line = Line::new(say::band_held_when_warm(), limits::common())
        .input(
            say::readings(),
            say::steps_of(warm.len(), format!("{:.0}", drive.step_s)),
        )
        .value(say::c_from_to(format!("{low:.0}"), format!("{high:.0}")))
        .note(say::all_but_the_lowest_and_highest());
    Found {
        check,
        lines: vec![line],
    }
}

fn below(case: &Case, told: &str, stuck: f64) -> Check {
    // The same doubt as of the thermostat: it stood in the cold.
    let doubt = thermostat(case).check;
    if doubt.verdict == Outcome::Failed {
        Check::new(
            NAME,
            Outcome::Failed,
            say::below_any_thermostat(told, format!("{stuck:.0}")),
        )
    } else {
        Check::cant_tell(
            NAME,
            say::thermostat_cant_be_judged(told),
            doubt.next.unwrap_or_default(),
        )
    }
}

fn unsettled(case: &Case) -> Check {
    match case.opening {
        Opening::NeverLevelled { most_c }
            if most_c >= case.conditions.limit_c.unwrap_or(TOO_HOT_C) =>
        {
            Check::new(
                NAME,
                Outcome::Failed,
                say::held_no_band(format!("{most_c:.0}")),
            )
            .reading("most", most_c, "°C")
        }
        _ => Check::cant_tell(
            NAME,
            say::the_temperature_did_not_settle_in(),
            say::drive_on_until_it_holds_for(),
        ),
    }
}
