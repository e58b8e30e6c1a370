//! Spikes that betray trapped air, and the overshoot of a thermostat that opens late.

use super::{clock, no_coolant};
use crate::drive::Drive;
use crate::judge::{Case, Check, CheckName, Found, Outcome};
use crate::limits::{self, SPIKE_K, SPIKE_RISE_S, WARM_C};
use crate::number::{median, real};
use crate::phrases::check as say;
use crate::{Log, Quantity, Sample};
use measure::Line;

const NAME: CheckName = CheckName::Air;
/// A warm engine has to be seen so long.
const MINUTES: f64 = 4.0;
/// Readings further apart may step over a spike.
const OFTEN_ENOUGH_S: f64 = 5.0;
/// A spike is gone within this.
const FALL_S: f64 = 60.0;
/// The rise before it is taken over so much.
const TREND_S: f64 = 30.0;
/// Its height is taken over the middle of so much before and after.
const AROUND_S: f64 = 90.0;
/// An overshoot of a late thermostat.
const OVERSHOOT_K: f64 = 10.0;

/// A rise and fall too quick for metal and water.
pub(crate) struct Spike {
    /// First step of the rise, and the step at which most of it is gone.
    pub(crate) steps: (usize, usize),
    at_s: f64,
    most_c: f64,
    height_k: f64,
    /// Readings near its top.
    readings: usize,
    seconds: f64,
}

pub(crate) fn air(case: &Case) -> Found {
    if let Some(check) = no_coolant(case, NAME) {
        return check.into();
    }
    let drive = &case.drive;
    let spikes = &case.spikes;
    let sure = spikes
        .iter()
        .filter(|spike| spike.readings >= 2 && spike.seconds >= 2.0)
        .count();
    let warm_min = drive.minutes(|step| {
        drive.is_running(step) && drive.coolant_at(step).is_some_and(|c| c >= WARM_C)
    });
    let check = if sure > 0 {
        let highest = spikes
            .iter()
            .map(|spike| spike.height_k)
            .fold(0.0, f64::max);
        let first = spikes.first().map_or(0.0, |spike| spike.at_s);
        Check::new(
            NAME,
            Outcome::Failed,
            say::shot_up(sure, format!("{highest:.0}"), clock(first)),
        )
    } else if let Some((peak, level, at_s)) = overshoot(case) {
        Check::new(
            NAME,
            Outcome::Failed,
            say::overshot(format!("{peak:.0}"), clock(at_s), format!("{level:.0}")),
        )
        .at("overshoot", peak - level, "K", at_s)
    } else if let Some(spike) = spikes.first() {
        Check::cant_tell(
            NAME,
            say::slip_or_spike(format!("{:.0}", spike.most_c), clock(spike.at_s)),
            say::record_the_coolant_every_second(),
        )
    } else {
        no_spike(case, warm_min)
    };
    let check = spikes.iter().take(10).fold(check, |check, spike| {
        check.with("spike", spike.most_c, "°C", Some(spike.at_s), None)
    });
    let check = check.reading("warm", warm_min, "min");
    let line = Line::new(say::spikes_of_the_coolant(), limits::common())
        .value(say::spikes_of(spikes.len(), format!("{SPIKE_K:.0}")))
        .note(say::spike_limits(
            format!("{SPIKE_RISE_S:.0}"),
            format!("{FALL_S:.0}"),
        ));
    Found {
        check,
        lines: vec![line],
    }
}

fn no_spike(case: &Case, warm_min: f64) -> Check {
    let every_s = case.drive.coolant_every_s;
    if warm_min < MINUTES || case.opening.level().is_none() {
        Check::cant_tell(
            NAME,
            say::no_spike_but_short(format!("{warm_min:.1}")),
            say::drive_it_warm_for_five_minutes_x(),
        )
    } else if every_s > OFTEN_ENOUGH_S {
        Check::cant_tell(
            NAME,
            say::no_spike_but_seldom(format!("{every_s:.0}")),
            say::record_the_coolant_every_second_or(),
        )
    } else {
        Check::new(
            NAME,
            Outcome::Held,
            say::no_spike_in(format!("{SPIKE_K:.0}"), format!("{warm_min:.0}")),
        )
    }
}

/// Every rise and fall that is too quick.
pub(crate) fn spikes(log: &Log, drive: &Drive) -> Vec<Spike> {
    let rise = drive.steps_of(SPIKE_RISE_S.max(2.5 * drive.coolant_every_s));
    let fall = drive.steps_of(FALL_S.max(4.0 * drive.coolant_every_s));
    let mut found: Vec<Spike> = Vec::new();
    let mut step = 1;
    while step < drive.steps {
        match spike_at(log, drive, step, rise, fall) {
            Some((spike, end)) => {
                found.push(spike);
                step = end.max(step + 1);
            }
            None => step += 1,
        }
    }
    found
}

/// The spike whose top is near this step, and where it ends.
fn spike_at(
    log: &Log,
    drive: &Drive,
    step: usize,
    rise: usize,
    fall: usize,
) -> Option<(Spike, usize)> {
    let from = step.saturating_sub(rise);
    let now = drive.coolant_at(step)?;
    let (foot, foot_c) = lowest(drive, from, step)?;
    if now - foot_c < SPIKE_K {
        return None;
    }
    // The top lies here or a little further on.
    let (top, most_c) = (step..(step + rise).min(drive.steps))
        .filter_map(|step| Some((step, drive.coolant_at(step)?)))
        .fold(
            (step, now),
            |best, next| if next.1 > best.1 { next } else { best },
        );
    let end = (top + fall).min(drive.steps);
    let (_, after_c) = lowest(drive, top, end)?;
    // Warming up under load it rises too, and falls when the radiator's cold water comes: only
    // what goes beyond the rise before counts.
    let before = drive.steps_of(TREND_S);
    let trend = drive
        .slope(foot.saturating_sub(before), foot.max(3))
        .map_or(0.0, |(k_per_min, _)| k_per_min.max(0.0) / 60.0);
    let expected = trend * (drive.at_s(top) - drive.at_s(foot));
    let height_k = (most_c - foot_c - expected).min(most_c - after_c);
    let around = drive.steps_of(AROUND_S);
    let middle = median(
        (foot.saturating_sub(around)..(top + around).min(drive.steps))
            .filter_map(|step| drive.coolant_at(step)),
    )?;
    if height_k < SPIKE_K || most_c - middle < SPIKE_K {
        return None;
    }
    if !(foot..end.min(top + rise)).all(|step| drive.is_running(step)) {
        return None;
    }
    let near_top = foot_c + 0.6 * height_k;
    let over = (foot..end)
        .skip_while(|step| drive.coolant_at(*step).is_none_or(|c| c < near_top))
        .take_while(|step| drive.coolant_at(*step).is_some_and(|c| c >= near_top))
        .collect::<Vec<usize>>();
    let last = over.last().copied().unwrap_or(top);
    let first = over.first().copied().unwrap_or(top);
    let samples: &[Sample] = log.of(Quantity::Coolant);
    let (from_s, to_s) = (
        drive.at_s(first) - drive.step_s,
        drive.at_s(last) + drive.step_s,
    );
    let readings = samples
        .iter()
        .filter(|sample| sample.t_s >= from_s && sample.t_s <= to_s && sample.value >= near_top)
        .count();
    let back = (last..end)
        .find(|step| {
            drive
                .coolant_at(*step)
                .is_none_or(|c| c <= foot_c + 0.3 * height_k)
        })
        .unwrap_or(end);
    let spike = Spike {
        steps: (foot, back),
        at_s: drive.at_s(top),
        most_c,
        height_k,
        readings,
        seconds: real(over.len()) * drive.step_s,
    };
    Some((spike, back))
}

fn lowest(drive: &Drive, from: usize, to: usize) -> Option<(usize, f64)> {
    (from..to)
        .filter_map(|step| Some((step, drive.coolant_at(step)?)))
        .min_by(|one, other| one.1.total_cmp(&other.1))
}

/// A first peak on the road well above what is held later.
fn overshoot(case: &Case) -> Option<(f64, f64, f64)> {
    let drive = &case.drive;
    let on_road = |step: usize| drive.is_running(step) && drive.is_moving(step) == Some(true);
    let level = case.opening.level();
    let (peak, peak_c) = (0..drive.steps)
        .filter(|step| on_road(*step))
        .filter_map(|step| Some((step, drive.coolant_at(step)?)))
        .fold(None::<(usize, f64)>, |best, next| match best {
            Some(best) if best.1 >= next.1 => Some(best),
            _ => Some(next),
        })?;
    // Only at the first opening, and only if it was on the road just before.
    let minute = drive.steps_of(60.0);
    let before = (peak.saturating_sub(minute)..peak)
        .filter(|step| on_road(*step))
        .count();
    if level.is_some_and(|level| peak > level.from) || before < minute * 4 / 5 {
        return None;
    }
    let later = drive.coolant_where(|step| step > peak + 2 * minute && on_road(step));
    if later.len() < 2 * minute {
        return None;
    }
    let held = median(later)?;
    let fell = lowest(drive, peak, (peak + 2 * minute).min(drive.steps))?.1;
    (peak_c - held >= OVERSHOOT_K && peak_c - fell >= 0.8 * OVERSHOOT_K)
        .then(|| (peak_c, held, drive.at_s(peak)))
}
