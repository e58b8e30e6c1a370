//! The band that the temperature holds once it is warm.

use super::{no_coolant, thermostat};
use crate::judge::{Case, Check, CheckName, Found, Outcome};
use crate::limits::{self, TOO_HOT_C};
use crate::number::{median, quantile};
use crate::opening::Opening;
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
    let told = format!("{low:.0} to {high:.0} °C over {minutes:.0} min, mostly {middle:.0} °C");
    let too_hot = case.conditions.limit_c.unwrap_or(TOO_HOT_C);
    let check = if high >= too_hot {
        Check::new(
            NAME,
            Outcome::Failed,
            format!("{told}: it does not stay below {too_hot:.0} °C"),
        )
    } else if middle < stuck {
        below(case, &told, stuck)
    } else if middle < sound {
        Check::cant_tell(
            NAME,
            format!("{told}: low, but some thermostats hold that"),
            "read the temperature stamped on the thermostat, and judge again with it",
        )
    } else if low < stuck && low < middle - SAG_K {
        Check::new(
            NAME,
            Outcome::Failed,
            format!("{told}: it sags to {low:.0} °C, as with a thermostat that does not close"),
        )
    } else if minutes < MINUTES {
        Check::cant_tell(
            NAME,
            format!("{told}: too short"),
            "drive on for three minutes once it is warm",
        )
    } else {
        Check::new(NAME, Outcome::Held, told)
    };
    let check = check
        .reading("low", low, "°C")
        .reading("high", high, "°C")
        .reading("middle", middle, "°C")
        .reading("minutes", minutes, "min");
    let line = Line::new("band held when warm", limits::common())
        .input(
            "readings",
            format!("{} steps of {:.0} s", warm.len(), drive.step_s),
        )
        .value(format!("{low:.0} to {high:.0} °C"))
        .note("all but the lowest and highest 2 %");
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
            format!("{told}: below {stuck:.0} °C, where no sound thermostat holds it"),
        )
    } else {
        Check::cant_tell(
            NAME,
            format!("{told}: low, and the thermostat can't be judged by it"),
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
                format!("it held no band: it rose to {most_c:.0} °C"),
            )
            .reading("most", most_c, "°C")
        }
        _ => Check::cant_tell(
            NAME,
            "the temperature did not settle in this log",
            "drive on until it holds for two minutes, then three more",
        ),
    }
}
