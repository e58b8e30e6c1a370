//! Wear by the shop's gauge: depth of the ribs, and length.

use crate::error::{BeltError, within};
use crate::phrases as say;
use crate::text;
use measure::{Line, Source, Working};

/// What was read of a belt. What was not read stays `None`.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub struct WearQuestion {
    /// How deep the gauge sinks between two ribs, 0 to 20 mm, and the depth at which its
    /// maker calls the belt worn.
    pub groove_mm: Option<(f64, f64)>,
    /// A gauge without figures: whether its pin lies level with the ribs or below them.
    pub pin_level_or_below: Option<bool>,
    /// Length printed and length read on the same line, 50 to 20 000 mm.
    pub length_mm: Option<(f64, f64)>,
    /// Stretch at which its maker calls the belt worn, 0 to 20 %.
    pub stretch_limit_percent: Option<f64>,
    /// Cracks across the ribs, chunks out, fraying, glaze or oil seen.
    pub damage_seen: Option<bool>,
}

/// What is to be said of the belt.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum WearVerdict {
    Good,
    Worn,
    /// Nothing was read that tells.
    CannotTell,
}

/// Wear, and how it was found.
#[derive(Clone, Debug, PartialEq)]
pub struct Wear {
    pub verdict: WearVerdict,
    /// What speaks for it being worn.
    pub because: Vec<String>,
    pub stretch_percent: Option<f64>,
    pub working: Working,
}

/// Whether a belt is worn, by the shop's own gauge.
///
/// Formula: worn where the gauge sinks to its limit or deeper, where its pin lies level or
/// below, where the stretch (read - printed) / printed reaches its limit, or where damage is
/// seen.
///
/// Inputs: see [`WearQuestion`].
///
/// Returns the verdict with its reasons, and the stretch in per cent.
///
/// # Errors
///
/// [`BeltError::OutOfRange`].
///
/// # Limits
///
/// Ribs of newer rubber wear like a tyre, without cracks: looking alone proves nothing. The
/// limits are those of the gauge and the belt's maker; none is assumed.
///
/// # Source
///
/// Practice of the trade.
///
/// ```
/// use belt::{WearQuestion, WearVerdict, wear};
/// let found = wear(&WearQuestion { groove_mm: Some((2.6, 2.4)), ..WearQuestion::default() })?;
/// assert_eq!(found.verdict, WearVerdict::Worn);
/// # Ok::<(), belt::BeltError>(())
/// ```
pub fn wear(question: &WearQuestion) -> Result<Wear, BeltError> {
    let mut because = Vec::new();
    let mut told = false;
    let mut working = Working::new(say::wear_title());
    if let Some((read, limit)) = question.groove_mm {
        within(
            say::grooves_depth(),
            read,
            "mm",
            0.0..=20.0,
            say::mend_gauge_in_millimetres(),
        )?;
        within(
            say::gauges_limit(),
            limit,
            "mm",
            0.1..=20.0,
            say::mend_on_the_gauge(),
        )?;
        told = true;
        if read >= limit {
            because.push(say::worn_to_limit().to_owned());
        }
        working = working.line(
            Line::new(say::depth_between_ribs(), Source::given())
                .input(say::limit(), text::millimetres(limit))
                .value(text::millimetres(read)),
        );
    }
    if let Some(level) = question.pin_level_or_below {
        told = true;
        if level {
            because.push(say::pin_lies_level().to_owned());
        }
    }
    if question.damage_seen == Some(true) {
        told = true;
        because.push(say::cracks().to_owned());
    }
    let mut stretch_percent = None;
    if let Some((printed, read)) = question.length_mm {
        within(
            say::length_printed(),
            printed,
            "mm",
            50.0..=20_000.0,
            say::mend_in_millimetres(),
        )?;
        within(
            say::length_read(),
            read,
            "mm",
            50.0..=20_000.0,
            say::mend_in_millimetres(),
        )?;
        let stretch = 100.0 * (read - printed) / printed;
        stretch_percent = Some(stretch);
        working = working.line(
            Line::new(say::stretch(), Source::derived())
                .formula("s", say::stretch_formula())
                .input(say::printed(), text::millimetres(printed))
                .input(say::read(), text::millimetres(read))
                .value(format!("{stretch:.2}\u{202f}%")),
        );
        if let Some(limit) = question.stretch_limit_percent {
            within(
                say::stretch_allowed(),
                limit,
                "%",
                0.0..=20.0,
                say::mend_per_cent(),
            )?;
            told = true;
            if stretch >= limit {
                because.push(say::stretched_to_limit().to_owned());
            }
        }
    }
    let verdict = match (because.is_empty(), told) {
        (false, _) => WearVerdict::Worn,
        (true, true) => WearVerdict::Good,
        (true, false) => WearVerdict::CannotTell,
    };
    let working = working.limit(say::limits_of_makers());
    Ok(Wear {
        verdict,
        because,
        stretch_percent,
        working,
    })
}
