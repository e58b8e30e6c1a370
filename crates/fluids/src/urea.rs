//! Urea solution: what a mixture comes to, and what to drain.

use crate::error::{FluidError, within};
use crate::phrases as say;
use crate::text;
use measure::{Grade, Line, Source, Working};

/// Least and greatest urea by mass that the standard allows.
pub const UREA_LOW: f64 = 31.8;
pub const UREA_HIGH: f64 = 33.2;

/// Density of solution with 32.5 % at 20 °C, the middle of what the standard allows.
const SOLUTION_KG_PER_L: f64 = 1.090;
const SOLUTION_PERCENT: f64 = 32.5;
const WATER_KG_PER_L: f64 = 0.9982;
/// Refractive indices at 20 °C that belong to the least and the greatest content.
const REFRACTION: (f64, f64) = (1.3814, 1.3843);

/// A tank, what is in it, and what is to go in.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Urea {
    /// 1 to 500 L.
    pub tank_l: f64,
    pub left_l: f64,
    /// Urea by mass in what is left, 0 to 45 %.
    pub left_percent: f64,
    /// Urea by mass in the container, 0 to 45 %: 32.5 to the standard.
    pub add_percent: f64,
}

/// What comes of it.
#[derive(Clone, Debug, PartialEq)]
pub struct UreaMix {
    /// With the tank filled up.
    pub full_percent: f64,
    pub within_standard: bool,
    /// How much of what is in has to come out first, where filling up is not enough.
    pub drain_l: Option<f64>,
    pub working: Working,
}

/// What filling up makes of a tank of urea solution, and what to drain first if that is not
/// enough.
///
/// Formula: urea is neither made nor lost: w = (w1 m1 + w2 m2) / (m1 + m2), m = V d, with the
/// density d on a line from water to solution of 32.5 %.
///
/// Inputs: see [`Urea`]; per cent by mass, litres at 20 °C.
///
/// Returns the strength of the full tank, whether it keeps 31.8 to 33.2 %, and the least
/// amount to drain first where it does not and draining helps.
///
/// # Errors
///
/// [`FluidError`], also where the container itself is outside the standard.
///
/// # Limits
///
/// Strength is not cleanliness: with fuel, coolant or tap water in it the tank is emptied
/// and the system looked at, whatever the strength.
///
/// # Source
///
/// Balance of urea; ISO 22241-1 (31.8 to 33.2 %, 1087 to 1093 kg/m³ at 20 °C).
///
/// ```
/// use fluids::{Urea, urea};
/// let found = urea(&Urea { tank_l: 18.0, left_l: 6.0, left_percent: 32.5, add_percent: 32.5 })?;
/// assert!((found.full_percent - 32.5).abs() < 1e-9 && found.within_standard);
/// # Ok::<(), fluids::FluidError>(())
/// ```
pub fn urea(question: &Urea) -> Result<UreaMix, FluidError> {
    let tank = within(
        say::the_tank(),
        question.tank_l,
        "L",
        1.0..=500.0,
        say::mend_write_litres(),
    )?;
    let left = within(
        say::what_is_left(),
        question.left_l,
        "L",
        0.0..=500.0,
        say::mend_write_litres(),
    )?;
    let strength = |what, value| within(what, value, "%", 0.0..=45.0, say::mend_urea_by_mass());
    let now = strength(say::strength_in_tank(), question.left_percent)?;
    let add = strength(say::strength_in_container(), question.add_percent)?;
    if left > tank {
        return Err(FluidError::MoreThanItHolds {
            what: say::the_tank(),
            holds_l: tank,
            left_l: left,
        });
    }
    if !standard(add) {
        return Err(FluidError::TooWeak {
            want: UREA_LOW,
            bottle: add,
        });
    }
    let full_percent = mixed(left, now, tank - left, add);
    let within_standard = standard(full_percent);
    let drain_l = (!within_standard).then(|| drain(tank, left, now, add));
    let iso = || {
        Source::new(
            "ISO 22241-1",
            "urea content and density, as tabulated by a supplier",
            Grade::Published,
        )
    };
    let mut working = Working::new(say::urea_title())
        .line(
            Line::new(say::strength_when_full(), Source::derived())
                .formula("w", "(w1·m1 + w2·m2)/(m1 + m2)")
                .input(
                    say::left(),
                    say::so_much_of(text::litres(left), text::percent(now)),
                )
                .input(
                    say::added(),
                    say::so_much_of(text::litres(tank - left), text::percent(add)),
                )
                .value(text::percent(full_percent)),
        )
        .line(Line::new(say::allowed(), iso()).value(say::urea_from_to(
            text::percent(UREA_LOW),
            text::percent(UREA_HIGH),
        )));
    if let Some(drain) = drain_l {
        working = working.line(
            Line::new(say::drain_first_at_least(), Source::derived()).value(text::litres(drain)),
        );
    }
    Ok(UreaMix {
        full_percent,
        within_standard,
        drain_l,
        working: working.limit(say::strength_is_not_cleanliness()),
    })
}

fn standard(percent: f64) -> bool {
    (UREA_LOW..=UREA_HIGH).contains(&percent)
}

fn density(percent: f64) -> f64 {
    WATER_KG_PER_L + (SOLUTION_KG_PER_L - WATER_KG_PER_L) * percent / SOLUTION_PERCENT
}

fn mixed(one_l: f64, one: f64, other_l: f64, other: f64) -> f64 {
    let (a, b) = (one_l * density(one), other_l * density(other));
    if a + b <= 0.0 {
        other
    } else {
        (a * one + b * other) / (a + b)
    }
}

/// The least to drain so that the full tank comes within the standard: the more comes out,
/// the nearer it is to the container's strength.
fn drain(tank: f64, left: f64, now: f64, add: f64) -> f64 {
    let (mut low, mut high) = (0.0, left);
    for _ in 0..60 {
        let middle = f64::midpoint(low, high);
        let kept = left - middle;
        if standard(mixed(kept, now, tank - kept, add)) {
            high = middle;
        } else {
            low = middle;
        }
    }
    high
}

impl Urea {
    /// Urea by mass from a refractive index at 20 °C, between the standard's two ends; nothing
    /// outside them, where the line is not given.
    ///
    /// ```
    /// use fluids::Urea;
    /// assert!((Urea::percent_by_refraction(1.38285).unwrap() - 32.5).abs() < 1e-9);
    /// assert_eq!(Urea::percent_by_refraction(1.36), None);
    /// ```
    pub fn percent_by_refraction(index: f64) -> Option<f64> {
        let (low, high) = REFRACTION;
        (low..=high)
            .contains(&index)
            .then(|| UREA_LOW + (UREA_HIGH - UREA_LOW) * (index - low) / (high - low))
    }
}
