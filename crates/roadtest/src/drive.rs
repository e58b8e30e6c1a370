//! A log on one clock: every series at the same, even steps.

use crate::clock::{gap_s, usual_step};
use crate::limits::{MOVING_KMH, RUNNING_RPM, STANDING_KMH};
use crate::number::{index, median, real};
use crate::{Log, Quantity, Sample};

/// More steps than this are not needed to judge a drive.
const MOST_STEPS: f64 = 30_000.0;

/// A drive at even steps.
#[derive(Clone)]
pub(crate) struct Drive {
    pub(crate) step_s: f64,
    pub(crate) steps: usize,
    pub(crate) coolant: Vec<Option<f64>>,
    pub(crate) speed: Vec<Option<f64>>,
    pub(crate) rpm: Vec<Option<f64>>,
    pub(crate) load: Vec<Option<f64>>,
    pub(crate) voltage: Vec<Option<f64>>,
    pub(crate) running: Vec<bool>,
    /// Whether the log says by itself when the engine runs.
    pub(crate) running_known: bool,
    /// Seconds between readings of the coolant.
    pub(crate) coolant_every_s: f64,
}

impl Drive {
    pub(crate) fn of(log: &Log) -> Drive {
        let (_, end) = log.span_s();
        let step_s = libm::ceil(end / MOST_STEPS).max(1.0);
        let steps = index(end / step_s) + 1;
        let grid = |quantity| resampled(log.of(quantity), step_s, steps);
        let (speed, rpm, voltage) = (
            grid(Quantity::Speed),
            grid(Quantity::Rpm),
            grid(Quantity::Voltage),
        );
        let (running, running_known) = running(&rpm, &speed, &grid(Quantity::RunTime), steps);
        Drive {
            step_s,
            steps,
            coolant: grid(Quantity::Coolant),
            load: grid(Quantity::Load),
            speed,
            rpm,
            voltage,
            running,
            running_known,
            coolant_every_s: every_s(log.of(Quantity::Coolant)),
        }
    }

    /// The coolant with straight lines instead of these steps.
    pub(crate) fn bridged(&self, holes: impl Iterator<Item = (usize, usize)>) -> Drive {
        let mut bridged = self.clone();
        for (from, to) in holes {
            let to = to.min(self.steps.saturating_sub(1));
            let ends = self.coolant_at(from).zip(self.coolant_at(to));
            let Some((before, after)) = ends.filter(|_| from < to) else {
                continue;
            };
            for step in from..=to {
                let part = real(step - from) / real(to - from);
                if let Some(slot) = bridged.coolant.get_mut(step) {
                    *slot = Some(before + part * (after - before));
                }
            }
        }
        bridged
    }

    /// The coolant as the middle one of all readings so long before and after. A steady rise
    /// and a level stay as they are.
    pub(crate) fn smoothed(&self, seconds: f64) -> Drive {
        let half = self.steps_of(seconds);
        let coolant = (0..self.steps)
            .map(|step| {
                self.coolant_at(step)?;
                // As many before as after, or a rise would be bent at the ends.
                let half = half.min(step).min(self.steps - 1 - step);
                median((step - half..=step + half).filter_map(|step| self.coolant_at(step)))
            })
            .collect();
        Drive {
            coolant,
            ..self.clone()
        }
    }

    /// Seconds of a step.
    pub(crate) fn at_s(&self, step: usize) -> f64 {
        real(step) * self.step_s
    }

    /// How many steps so many seconds are, at least one.
    pub(crate) fn steps_of(&self, seconds: f64) -> usize {
        index(libm::round(seconds / self.step_s)).max(1)
    }

    pub(crate) fn coolant_at(&self, step: usize) -> Option<f64> {
        self.coolant.get(step).copied().flatten()
    }

    pub(crate) fn is_running(&self, step: usize) -> bool {
        self.running.get(step).copied().unwrap_or(false)
    }

    pub(crate) fn is_standing(&self, step: usize) -> Option<bool> {
        Some(self.speed.get(step).copied().flatten()? < STANDING_KMH)
    }

    pub(crate) fn is_moving(&self, step: usize) -> Option<bool> {
        Some(self.speed.get(step).copied().flatten()? >= MOVING_KMH)
    }

    pub(crate) fn has_speed(&self) -> bool {
        self.speed.iter().any(Option::is_some)
    }

    /// Minutes for which something holds.
    pub(crate) fn minutes(&self, holds: impl Fn(usize) -> bool) -> f64 {
        real((0..self.steps).filter(|step| holds(*step)).count()) * self.step_s / 60.0
    }

    /// Coolant at steps for which something holds, engine running.
    pub(crate) fn coolant_where(&self, holds: impl Fn(usize) -> bool) -> Vec<f64> {
        (0..self.steps)
            .filter(|step| self.is_running(*step) && holds(*step))
            .filter_map(|step| self.coolant_at(step))
            .collect()
    }

    /// The rise of the coolant in K/min by a straight line through these steps, and their
    /// mean; nothing where much is missing.
    pub(crate) fn slope(&self, from: usize, to: usize) -> Option<(f64, f64)> {
        let points: Vec<(f64, f64)> = (from..to.min(self.steps))
            .filter_map(|step| Some((self.at_s(step), self.coolant_at(step)?)))
            .collect();
        let count = real(points.len());
        if count < 0.8 * real(to.saturating_sub(from)) || points.len() < 3 {
            return None;
        }
        let (t_mean, c_mean) = (
            points.iter().map(|p| p.0).sum::<f64>() / count,
            points.iter().map(|p| p.1).sum::<f64>() / count,
        );
        let (up, down) = points.iter().fold((0.0, 0.0), |(up, down), (t, c)| {
            (
                up + (t - t_mean) * (c - c_mean),
                down + (t - t_mean) * (t - t_mean),
            )
        });
        (down > 0.0).then(|| (up / down * 60.0, c_mean))
    }
}

/// Usual seconds between the readings of a series.
pub(crate) fn every_s(samples: &[Sample]) -> f64 {
    let times: Vec<Option<f64>> = samples.iter().map(|sample| Some(sample.t_s)).collect();
    usual_step(&times)
}

/// A series at even steps; nothing where a hole is too long to draw a line through.
pub(crate) fn resampled(samples: &[Sample], step_s: f64, steps: usize) -> Vec<Option<f64>> {
    let longest = gap_s(every_s(samples));
    let mut grid = vec![None; steps];
    let mut next = 0;
    for (step, slot) in grid.iter_mut().enumerate() {
        let now = real(step) * step_s;
        while samples
            .get(next)
            .is_some_and(|sample| sample.t_s <= now + 1e-9)
        {
            next += 1;
        }
        let before = next.checked_sub(1).and_then(|before| samples.get(before));
        *slot = match (before, samples.get(next)) {
            (Some(before), Some(after)) if after.t_s - before.t_s <= longest => {
                let part = (now - before.t_s) / (after.t_s - before.t_s);
                Some(before.value + part * (after.value - before.value))
            }
            (Some(before), _) if now - before.t_s <= step_s + 1e-9 => Some(before.value),
            _ => None,
        };
    }
    grid
}

/// Whether the engine runs, by rpm, road speed or its run time; else it is taken to run.
fn running(
    rpm: &[Option<f64>],
    speed: &[Option<f64>],
    run_time: &[Option<f64>],
    steps: usize,
) -> (Vec<bool>, bool) {
    let known = |series: &[Option<f64>]| series.iter().any(Option::is_some);
    let at = |series: &[Option<f64>], step: usize| series.get(step).copied().flatten();
    if known(rpm) {
        let mut last = false;
        let running = (0..steps)
            .map(|step| {
                last = at(rpm, step).map_or(last, |rpm| rpm >= RUNNING_RPM);
                last
            })
            .collect();
        return (running, true);
    }
    if known(run_time) {
        let running = (0..steps)
            .map(|step| {
                let now = at(run_time, step);
                let before = at(run_time, step.saturating_sub(5));
                now.zip(before).is_none_or(|(now, before)| now > before)
            })
            .collect();
        return (running, true);
    }
    let moved = speed.iter().flatten().any(|speed| *speed >= STANDING_KMH);
    (vec![true; steps], moved)
}
