//! What becomes of a bolt under a clamp: whether it bears, yields or breaks.

use super::yield_clamp_n;
use crate::class::{Class, ClassTrouble};
use crate::phrases::torque as say;
use crate::thread::Thread;
use measure::Range;

/// What becomes of a bolt while it is tightened to a clamp, best first.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Fate {
    Bears,
    /// With the slickest threads of the range it begins to yield.
    MayYield,
    Yields,
    /// With the slickest threads of the range it breaks.
    MayBreak,
    Breaks,
}

impl Fate {
    /// One word for tables and codes.
    pub fn code(self) -> &'static str {
        match self {
            Fate::Bears => "bears",
            Fate::MayYield => "may-yield",
            Fate::Yields => "yields",
            Fate::MayBreak => "may-break",
            Fate::Breaks => "breaks",
        }
    }

    /// In words; nothing where there is nothing to say.
    pub fn said(self) -> Option<&'static str> {
        match self {
            Fate::Bears => None,
            Fate::MayYield => Some(say::slick_threads_begin_to_yield()),
            Fate::Yields => Some(say::the_bolt_yields()),
            Fate::MayBreak => Some(say::slick_threads_break()),
            Fate::Breaks => Some(say::the_bolt_breaks()),
        }
    }
}

/// What becomes of a bolt of a class.
///
/// Formula: it yields from [`yield_clamp_n`], and breaks from the same with the tensile
/// strength in place of the yield point.
///
/// Inputs: the clamp with rough, expected and slick threads (low to high), in newtons, and the
/// friction from slick to rough. Returns the fate over that range.
///
/// # Errors
///
/// [`ClassTrouble::OutOfRange`] where the class does not cover the size.
///
/// # Limits
///
/// A new bolt of whole thread. What a rusted, necked or once-yielded one bears, nobody knows.
///
/// # Source
///
/// VDI 2230-1; ISO 898-1; SAE J429.
///
/// ```
/// use fastener::{Class, Thread, torque::{Fate, fate}};
/// use measure::Range;
/// let m8 = Thread::metric(8.0, 1.25)?;
/// let rough_to_slick = Range::new(100e3, 120e3, 140e3)?;
/// let found = fate(&m8, Class::C8_8, rough_to_slick, Range::new(0.12, 0.15, 0.18)?)?;
/// assert_eq!(found, Fate::Breaks);
/// # Ok::<(), Box<dyn std::error::Error>>(())
/// ```
pub fn fate(
    thread: &Thread,
    class: Class,
    clamp_n: Range<f64>,
    friction: Range<f64>,
) -> Result<Fate, ClassTrouble> {
    let stresses = class.stresses(thread)?;
    let ends = [
        (clamp_n.low(), friction.high()),
        (clamp_n.high(), friction.low()),
    ];
    let beyond = |stress_mpa: f64| {
        ends.map(|(clamp_n, friction)| clamp_n > yield_clamp_n(thread, stress_mpa, friction, 1.0))
    };
    Ok(
        match (beyond(stresses.tensile_mpa), beyond(stresses.yield_mpa)) {
            ([true, true], _) => Fate::Breaks,
            ([false, false], [false, false]) => Fate::Bears,
            ([false, false], [true, true]) => Fate::Yields,
            ([false, false], _) => Fate::MayYield,
            _ => Fate::MayBreak,
        },
    )
}
