//! What a thread is there for, where that is not to clamp.

use crate::phrases::reading as say;
use crate::thread::{Standard, Thread};

/// What a screw thread is used for.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Purpose {
    /// It presses two parts together: the formulas of clamp and torque apply.
    Clamp,
    SparkPlug,
    DrainPlug,
    BrakeLine,
    Banjo,
    WheelStud,
    SensorBung,
}

impl Purpose {
    /// Every purpose.
    pub const ALL: [Purpose; 7] = [
        Purpose::Clamp,
        Purpose::SparkPlug,
        Purpose::DrainPlug,
        Purpose::BrakeLine,
        Purpose::Banjo,
        Purpose::WheelStud,
        Purpose::SensorBung,
    ];

    /// In words.
    pub fn name(self) -> &'static str {
        match self {
            Purpose::Clamp => say::clamp_joint(),
            Purpose::SparkPlug => say::spark_plug(),
            Purpose::DrainPlug => say::drain_plug(),
            Purpose::BrakeLine => say::brake_line(),
            Purpose::Banjo => say::banjo_bolt(),
            Purpose::WheelStud => say::wheel_stud(),
            Purpose::SensorBung => say::sensor(),
        }
    }

    /// Why no clamp is worked out for it; nothing where one is.
    pub fn why_no_clamp(self) -> Option<&'static str> {
        match self {
            Purpose::Clamp => None,
            Purpose::SparkPlug => Some(say::spark_plug_seals()),
            Purpose::DrainPlug => Some(say::drain_plug_presses()),
            Purpose::BrakeLine => Some(say::flare_nut_presses()),
            Purpose::Banjo => Some(say::banjo_is_weaker()),
            Purpose::WheelStud => Some(say::wheel_nut_seats()),
            Purpose::SensorBung => Some(say::sensor_seals()),
        }
    }
}

/// Purposes other than clamping that a thread is often met in.
///
/// ```
/// use fastener::{Thread, purpose::{Purpose, often_met_as}};
/// let plug = Thread::metric(14.0, 1.25)?;
/// assert_eq!(often_met_as(&plug), vec![Purpose::SparkPlug, Purpose::WheelStud]);
/// # Ok::<(), fastener::ThreadTrouble>(())
/// ```
pub fn often_met_as(thread: &Thread) -> Vec<Purpose> {
    let same = |a: f64, b: f64| (a - b).abs() < 1e-6;
    let is = |standard: Standard, size: f64, pitch: f64| {
        let (diameter, step) = match standard {
            Standard::Metric => (size, pitch),
            Standard::Unified => (size * 25.4, 25.4 / pitch),
        };
        thread.standard() == standard
            && same(thread.diameter_mm(), diameter)
            && same(thread.pitch_mm(), step)
    };
    OFTEN
        .iter()
        .filter(|&&(standard, size, pitch, _)| is(standard, size, pitch))
        .map(|row| row.3)
        .collect()
}

/// Metric sizes with pitches, inch sizes with threads per inch.
const OFTEN: [(Standard, f64, f64, Purpose); 21] = [
    (Standard::Metric, 10.0, 1.0, Purpose::BrakeLine),
    (Standard::Metric, 10.0, 1.0, Purpose::Banjo),
    (Standard::Metric, 10.0, 1.0, Purpose::SparkPlug),
    (Standard::Metric, 10.0, 1.25, Purpose::Banjo),
    (Standard::Metric, 12.0, 1.0, Purpose::BrakeLine),
    (Standard::Metric, 12.0, 1.25, Purpose::SparkPlug),
    (Standard::Metric, 12.0, 1.25, Purpose::WheelStud),
    (Standard::Metric, 12.0, 1.5, Purpose::WheelStud),
    (Standard::Metric, 12.0, 1.5, Purpose::Banjo),
    (Standard::Metric, 14.0, 1.25, Purpose::SparkPlug),
    (Standard::Metric, 14.0, 1.5, Purpose::DrainPlug),
    (Standard::Metric, 14.0, 1.5, Purpose::WheelStud),
    (Standard::Metric, 14.0, 1.25, Purpose::WheelStud),
    (Standard::Metric, 18.0, 1.5, Purpose::DrainPlug),
    (Standard::Metric, 18.0, 1.5, Purpose::SensorBung),
    (Standard::Unified, 0.375, 24.0, Purpose::BrakeLine),
    (Standard::Unified, 0.4375, 20.0, Purpose::WheelStud),
    (Standard::Unified, 0.5, 20.0, Purpose::WheelStud),
    (Standard::Unified, 0.5, 20.0, Purpose::DrainPlug),
    (Standard::Unified, 0.5625, 18.0, Purpose::WheelStud),
    (Standard::Unified, 0.625, 18.0, Purpose::WheelStud),
];
