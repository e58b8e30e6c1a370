//! Washer fluid: concentrate and water for a wanted share, and the frost limit by its label.

use crate::error::{FluidError, within};
use crate::phrases as say;
use crate::text;
use measure::{Line, Source, Working};

/// A bottle, what is in it, and what is wanted.
#[derive(Clone, Debug, PartialEq)]
pub struct Washer {
    /// 0.5 to 50 L.
    pub holds_l: f64,
    pub left_l: f64,
    /// Concentrate in what is left, by volume, 0 to 100 %.
    pub left_percent: f64,
    /// Wanted, by volume; nothing where a frost limit is wanted instead.
    pub want_percent: Option<f64>,
    /// Wanted frost limit, by the label's points.
    pub want_c: Option<f64>,
    /// The label's points: concentrate by volume in per cent, and where that freezes.
    pub label: Vec<(f64, f64)>,
}

/// What to pour.
#[derive(Clone, Debug, PartialEq)]
pub struct WasherMix {
    pub concentrate_l: f64,
    pub water_l: f64,
    pub percent: f64,
    /// By the label, where its points reach.
    pub freezes_c: Option<f64>,
    pub working: Working,
}

/// How much concentrate and water bring a washer bottle to a share of concentrate.
///
/// Formula: c = want V - now left; water = V - left - c. A frost limit is brought to a share
/// on straight lines between the label's points.
///
/// Inputs: see [`Washer`]; per cent by volume.
///
/// Returns litres of each, the share reached, and where that freezes by the label.
///
/// # Errors
///
/// [`FluidError`]: also where the share cannot be reached without draining.
///
/// # Limits
///
/// Wind chills what is sprayed: the frost limit on the glass is less good than in the bottle.
/// Two makers' concentrates have no common label.
///
/// # Source
///
/// Balance of volumes; the label.
///
/// ```
/// use fluids::{Washer, washer};
/// let found = washer(&Washer {
///     holds_l: 4.0, left_l: 1.0, left_percent: 20.0, want_percent: Some(50.0), want_c: None, label: vec![],
/// })?;
/// assert!((found.concentrate_l - 1.8).abs() < 1e-9 && (found.water_l - 1.2).abs() < 1e-9);
/// # Ok::<(), fluids::FluidError>(())
/// ```
pub fn washer(question: &Washer) -> Result<WasherMix, FluidError> {
    let holds = within(
        say::the_bottle(),
        question.holds_l,
        "L",
        0.5..=50.0,
        say::mend_write_litres(),
    )?;
    let left = within(
        say::what_is_left(),
        question.left_l,
        "L",
        0.0..=50.0,
        say::mend_write_litres(),
    )?;
    let share = |what, value| {
        within(
            what,
            value,
            "%",
            0.0..=100.0,
            say::mend_concentrate_by_volume(),
        )
    };
    let now = share(say::concentrate_in_what_is_left(), question.left_percent)?;
    if left > holds {
        return Err(FluidError::MoreThanItHolds {
            what: say::the_bottle(),
            holds_l: holds,
            left_l: left,
        });
    }
    let label = checked(&question.label)?;
    let want = match (question.want_percent, question.want_c) {
        (Some(want), _) => share(say::the_share_wanted(), want)?,
        (None, Some(frost)) => between(&flipped(&label), frost).ok_or(FluidError::Incomplete {
            what: say::points_do_not_reach(),
            mend: say::mend_copy_more_points(),
        })?,
        (None, None) => {
            return Err(FluidError::Incomplete {
                what: say::nothing_says_what_is_wanted(),
                mend: say::mend_write_share_or_frost(),
            });
        }
    };
    let concentrate_l = (want * holds - now * left) / 100.0;
    let room = holds - left;
    if concentrate_l > room + 1e-9 {
        return Err(FluidError::TooWeak {
            want,
            bottle: 100.0,
        });
    }
    if concentrate_l < -1e-9 {
        return Err(FluidError::Incomplete {
            what: say::stronger_than_wanted(),
            mend: say::mend_leave_or_drain(),
        });
    }
    let (concentrate_l, percent) = (concentrate_l.clamp(0.0, room), want);
    let freezes_c = between(&label, percent);
    let mut working = Working::new(say::washer_title()).line(
        Line::new(say::concentrate(), Source::derived())
            .formula("c", say::concentrate_formula())
            .input(say::want(), text::percent(percent))
            .input("V", text::litres(holds))
            .input(say::at_present(), text::percent(now))
            .input(say::washer_left(), text::litres(left))
            .value(text::litres(concentrate_l)),
    );
    working = working.line(
        Line::new(say::water(), Source::derived())
            .formula("w", say::water_formula())
            .value(text::litres(room - concentrate_l)),
    );
    if let Some(frost) = freezes_c {
        working = working
            .line(Line::new(say::freezes_by_label(), Source::given()).value(text::celsius(frost)));
    }
    Ok(WasherMix {
        concentrate_l,
        water_l: room - concentrate_l,
        percent,
        freezes_c,
        working: working.limit(say::wind_chills()),
    })
}

fn checked(label: &[(f64, f64)]) -> Result<Vec<(f64, f64)>, FluidError> {
    let mut points = label.to_vec();
    for (share, frost) in &points {
        within(
            say::share_on_label(),
            *share,
            "%",
            0.0..=100.0,
            say::mend_concentrate_by_volume(),
        )?;
        within(
            say::frost_limit_on_label(),
            *frost,
            "°C",
            -100.0..=10.0,
            say::mend_write_degrees(),
        )?;
    }
    points.sort_by(|one, other| one.0.total_cmp(&other.0));
    for two in points.windows(2) {
        if two[1].1 >= two[0].1 || two[1].0 <= two[0].0 {
            return Err(FluidError::LabelNotFalling {
                weak: two[0].0,
                strong: two[1].0,
            });
        }
    }
    Ok(points)
}

/// By frost limit, the coldest first.
fn flipped(label: &[(f64, f64)]) -> Vec<(f64, f64)> {
    label
        .iter()
        .rev()
        .map(|(share, frost)| (*frost, *share))
        .collect()
}

/// On the straight line between two neighbours; nothing outside them.
fn between(points: &[(f64, f64)], at: f64) -> Option<f64> {
    points
        .windows(2)
        .find(|two| (two[0].0..=two[1].0).contains(&at))
        .map(|two| two[0].1 + (two[1].1 - two[0].1) * (at - two[0].0) / (two[1].0 - two[0].0))
}
