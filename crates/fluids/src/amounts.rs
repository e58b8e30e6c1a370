//! Litres in against litres out, where a count closes nothing but tells.

use crate::error::{FluidError, within};
use crate::phrases as say;
use crate::text;
use measure::{Grade, Line, Source, Working};

/// A volume, how far it may be off, and its temperature where it was read.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Amount {
    /// 0 to 200 L.
    pub litres: f64,
    /// 0 to 20 L.
    pub within_l: f64,
    /// -40 to 150 °C.
    pub temperature_c: Option<f64>,
}

/// What came out and what went in.
#[derive(Clone, Debug, PartialEq)]
pub struct Amounts {
    pub out: Vec<Amount>,
    pub poured: Vec<Amount>,
    /// Told to be missing before anything was opened: it goes in on top.
    pub low_before_l: Option<f64>,
}

/// What the litres say.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum EqualVerdict {
    Equal,
    Short,
    TooMuch,
    /// The measuring error is larger than half a litre either way.
    CannotTell,
}

/// In against out.
#[derive(Clone, Debug, PartialEq)]
pub struct Equal {
    /// What is missing at 20 °C; below zero too much went in.
    pub missing_l: f64,
    pub within_l: f64,
    pub verdict: EqualVerdict,
    pub working: Working,
}

/// Oils swell by about so much of their volume a degree.
const SWELL_PER_K: f64 = 0.0007;
/// An error larger than this hides what matters.
const TELLS_WITHIN_L: f64 = 0.5;

/// Whether as much went in as came out, within what the measuring allows.
///
/// Formula: missing = out + low before - in, each brought to 20 °C where its temperature is
/// known: V / (1 + 0.0007 (t - 20)); tolerance = square root of the sum of squares.
///
/// Inputs: see [`Amounts`].
///
/// Returns litres missing with the tolerance, and the verdict.
///
/// # Errors
///
/// [`FluidError`], also where nothing was measured out.
///
/// # Limits
///
/// Litres never close a fluid: its level at the maker's temperature does. What stays in a
/// converter, a cooler or a filter is not in the pan.
///
/// # Source
///
/// Balance of volumes; swell of mineral oils as commonly taken.
///
/// ```
/// use fluids::{Amount, Amounts, EqualVerdict, equal_amounts};
/// let of = |litres| Amount { litres, within_l: 0.1, temperature_c: None };
/// let found = equal_amounts(&Amounts { out: vec![of(4.6)], poured: vec![of(4.0)], low_before_l: None })?;
/// assert_eq!(found.verdict, EqualVerdict::Short);
/// # Ok::<(), fluids::FluidError>(())
/// ```
pub fn equal_amounts(amounts: &Amounts) -> Result<Equal, FluidError> {
    if amounts.out.is_empty() {
        return Err(FluidError::Incomplete {
            what: say::nothing_says_what_came_out(),
            mend: say::mend_measure_drained(),
        });
    }
    let (out, out_off) = total(&amounts.out)?;
    let (poured, poured_off) = total(&amounts.poured)?;
    let low = amounts.low_before_l.unwrap_or(0.0);
    within(
        say::what_was_low_before(),
        low,
        "L",
        0.0..=20.0,
        say::mend_write_litres(),
    )?;
    let missing_l = out + low - poured;
    let within_l = libm::hypot(out_off, poured_off);
    let verdict = if missing_l > within_l {
        EqualVerdict::Short
    } else if missing_l < -within_l {
        EqualVerdict::TooMuch
    } else if within_l > TELLS_WITHIN_L {
        EqualVerdict::CannotTell
    } else {
        EqualVerdict::Equal
    };
    let swell = || {
        Source::new(
            say::swell_of_oils(),
            say::swell_a_degree(),
            Grade::CommonPractice,
        )
    };
    let working = Working::new(say::in_against_out_title())
        .line(Line::new(say::out_at_20(), swell()).value(text::litres(out)))
        .line(Line::new(say::in_at_20(), swell()).value(text::litres(poured)))
        .line(
            Line::new(say::missing(), Source::derived())
                .formula("m", say::missing_formula())
                .input(say::low_before(), text::litres(low))
                .input(say::good_to(), text::litres(within_l))
                .value(text::litres(missing_l)),
        )
        .limit(say::level_closes_it());
    Ok(Equal {
        missing_l,
        within_l,
        verdict,
        working,
    })
}

fn total(amounts: &[Amount]) -> Result<(f64, f64), FluidError> {
    let (mut litres, mut squares) = (0.0, 0.0);
    for amount in amounts {
        within(
            say::an_amount(),
            amount.litres,
            "L",
            0.0..=200.0,
            say::mend_figure_and_unit(),
        )?;
        within(
            say::how_far_amount_off(),
            amount.within_l,
            "L",
            0.0..=20.0,
            say::mend_pan_and_jug(),
        )?;
        let mut at_20 = amount.litres;
        if let Some(temperature) = amount.temperature_c {
            within(
                say::temperature_of_amount(),
                temperature,
                "°C",
                -40.0..=150.0,
                say::mend_write_degrees(),
            )?;
            at_20 /= 1.0 + SWELL_PER_K * (temperature - 20.0);
        }
        litres += at_20;
        squares += amount.within_l * amount.within_l;
    }
    Ok((litres, libm::sqrt(squares)))
}
