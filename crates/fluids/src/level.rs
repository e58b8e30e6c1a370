//! A level that counts only within the maker's temperature window.

use crate::error::{FluidError, within};
use crate::phrases as say;
use crate::text;
use measure::{Line, Source, Working};

/// Where the level was seen.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum LevelSeen {
    /// At the mark, or at the lower edge of the plug.
    AtMark,
    Low,
    /// Above the mark, or running out of the plug.
    High,
}

/// A level, and the temperatures at which it counts.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Levels {
    pub seen: LevelSeen,
    /// Of the fluid when it was seen, -40 to 150 °C; nothing if nobody read it.
    pub temperature_c: Option<f64>,
    /// The maker's window; nothing if it is not known.
    pub window_c: Option<(f64, f64)>,
}

/// What the level says.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum LevelVerdict {
    /// Right, within the window.
    Closes,
    Low,
    High,
    TooCold,
    TooHot,
    /// The window or the temperature is not known.
    CannotTell,
}

/// A level held against its window.
#[derive(Clone, Debug, PartialEq)]
pub struct LevelAt {
    pub verdict: LevelVerdict,
    pub words: &'static str,
    pub working: Working,
}

/// Whether a level counts at the temperature at which it was seen.
///
/// Formula: it counts where low <= t <= high of the maker's window.
///
/// Inputs: see [`Levels`].
///
/// Returns the verdict in words.
///
/// # Errors
///
/// [`FluidError::OutOfRange`], also for a window whose ends are not in order.
///
/// # Limits
///
/// The window is the maker's; none is assumed. The vehicle has to stand level.
///
/// # Source
///
/// The maker's data.
///
/// ```
/// use fluids::{LevelSeen, LevelVerdict, Levels, level_at};
/// let at = |t| level_at(&Levels {
///     seen: LevelSeen::AtMark, temperature_c: Some(t), window_c: Some((35.0, 45.0)),
/// });
/// assert_eq!(at(40.0)?.verdict, LevelVerdict::Closes);
/// assert_eq!(at(60.0)?.verdict, LevelVerdict::TooHot);
/// # Ok::<(), fluids::FluidError>(())
/// ```
pub fn level_at(levels: &Levels) -> Result<LevelAt, FluidError> {
    let range = |what, value| within(what, value, "°C", -40.0..=150.0, say::mend_write_degrees());
    let mut working = Working::new(say::level_by_temperature_title());
    if let Some((low, high)) = levels.window_c {
        range(say::windows_low_end(), low)?;
        within(
            say::windows_high_end(),
            high,
            "°C",
            low..=150.0,
            say::mend_lower_first(),
        )?;
        working = working.line(
            Line::new(say::the_makers_window(), Source::given())
                .value(say::from_to(text::celsius(low), text::celsius(high))),
        );
    }
    if let Some(temperature) = levels.temperature_c {
        range(say::the_temperature(), temperature)?;
        working = working
            .line(Line::new(say::seen_at(), Source::given()).value(text::celsius(temperature)));
    }
    let verdict = match (levels.temperature_c, levels.window_c) {
        (Some(t), Some((low, _))) if t < low => LevelVerdict::TooCold,
        (Some(t), Some((_, high))) if t > high => LevelVerdict::TooHot,
        (Some(_), Some(_)) => match levels.seen {
            LevelSeen::AtMark => LevelVerdict::Closes,
            LevelSeen::Low => LevelVerdict::Low,
            LevelSeen::High => LevelVerdict::High,
        },
        _ => LevelVerdict::CannotTell,
    };
    let words = match verdict {
        LevelVerdict::Closes => say::level_right(),
        LevelVerdict::Low => say::level_low(),
        LevelVerdict::High => say::level_high(),
        LevelVerdict::TooCold => say::level_too_cold(),
        LevelVerdict::TooHot => say::level_too_hot(),
        LevelVerdict::CannotTell => say::level_cannot_tell(),
    };
    Ok(LevelAt {
        verdict,
        words,
        working: working.limit(say::vehicle_level()),
    })
}
