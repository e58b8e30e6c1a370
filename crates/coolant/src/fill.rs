//! Litres out and in: what is still missing, and what that means.

use crate::amount::WIDENED;
use crate::amount::{Amount, sum, weighted, widened};
use crate::error::CoolantError;
use crate::mixture::Mixture;
use crate::phrases as say;
use crate::swell::at_20_c;
use crate::{sources, text};
use measure::{Line, Range, Source, Working};
use std::fmt;
use verdict::verdict;

mod verdict;

pub use verdict::{FillStanding, FillVerdict, MUCH_MISSING_L, fill_standing};

/// A volume read at a temperature.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Measure {
    pub amount: Amount,
    pub temperature_c: f64,
}

/// What went out and in. Every volume is a 95 % statement.
#[derive(Clone, Copy, Debug)]
pub struct FillQuestion<'a> {
    pub mixture: Mixture,
    /// Caught while draining.
    pub drained: &'a [Measure],
    /// Spilled, or carried off in hoses and parts.
    pub lost: Option<Amount>,
    /// What new parts hold beyond the old ones.
    pub new_parts: Option<Amount>,
    /// How far the level was low before anything was opened.
    pub low_at_start: Option<Amount>,
    /// All that the system holds, by its manual.
    pub capacity: Option<Amount>,
    /// What stayed in when it was drained.
    pub left_in: Option<Amount>,
    pub poured: &'a [Measure],
    /// How far the level stands below the cold mark, after one full heating and cooling.
    pub below_cold_mark: Option<Amount>,
}

/// What is missing, and what it means.
#[derive(Clone, Debug, PartialEq)]
pub struct Balance {
    /// All volumes at 20 °C.
    pub out_l: f64,
    pub in_l: f64,
    /// Litres, with the 95 % band; below zero more is in than went out.
    pub missing_l: Range<f64>,
    pub basis: Basis,
    pub verdict: FillVerdict,
    /// Where the readings allow: what is missing in the bottle, and what elsewhere.
    pub split: Option<Split>,
    /// What stayed in the block, where the capacity tells.
    pub stayed_in: Option<Amount>,
    pub notes: Vec<FillNote>,
    pub working: Working,
}

/// What the missing litres were reckoned from.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Basis {
    /// What was caught and lost.
    Drained,
    /// The capacity and what stayed in.
    Capacity,
    /// Both, each by its weight.
    Both,
}

/// What is missing, by cause.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Split {
    /// Below the cold mark.
    pub in_bottle: Amount,
    /// The rest: air trapped, or coolant that never left the block.
    pub air_or_block: Amount,
}

/// What else has to be said.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum FillNote {
    /// The two bases differ by more than both their errors.
    BasesDisagree { by_l: f64 },
}

/// What is still missing after filling, with its band and what it means.
///
/// Formula: missing = (caught + lost + new parts + low at the start) - poured, or
/// (capacity + new parts - left in) - poured; both, where both are known, by the inverse of their
/// squared tolerances. Every volume is brought to 20 °C. Band: 1.15 √Σ tolerance².
///
/// Inputs: see [`FillQuestion`]; volumes 0 to 200 L, temperatures at most 100 °C.
///
/// Returns litres missing with the 95 % band, the verdict, and the split by cause.
///
/// # Errors
///
/// [`CoolantError::NoBasis`] where neither drained litres nor capacity and rest are
/// given; [`CoolantError::OutOfRange`].
///
/// # Limits
///
/// Litres never close a fluid: a pocket of air and a wrong capacity look alike. The
/// level after one full heating and cooling decides.
///
/// # Source
///
/// Balance of volumes; densities by Melinder (2010).
///
/// ```
/// use coolant::{Amount, FillQuestion, FillVerdict, Glycol, Measure, Mixture, balance};
///
/// let measure = |litres, within_l, temperature_c| Measure {
///     amount: Amount::new(litres, within_l),
///     temperature_c,
/// };
/// let found = balance(&FillQuestion {
///     mixture: Mixture::by_volume(Glycol::Ethylene, 0.5)?,
///     drained: &[measure(5.5, 0.4, 35.0)],
///     lost: Some(Amount::new(0.3, 0.2)),
///     new_parts: None,
///     low_at_start: None,
///     capacity: None,
///     left_in: None,
///     poured: &[measure(4.0, 0.1, 20.0)],
///     below_cold_mark: None,
/// })?;
/// assert!(matches!(found.verdict, FillVerdict::Short { about_l } if (1.0..2.5).contains(&about_l)));
/// # Ok::<(), coolant::CoolantError>(())
/// ```
pub fn balance(question: &FillQuestion) -> Result<Balance, CoolantError> {
    let poured = total(question.mixture, question.poured, say::what_was_poured())?;
    let caught = total(question.mixture, question.drained, say::what_was_drained())?;
    let lost = given(question.lost, say::what_was_lost(), 0.0)?;
    // New parts may hold less than the old ones.
    let new_parts = given(question.new_parts, say::what_new_parts_hold(), -200.0)?;
    let low = given(question.low_at_start, say::how_far_it_was_low(), -200.0)?;
    let by_drained = (!question.drained.is_empty()).then(|| sum(&[caught, lost, new_parts, low]));
    let capacity = checked(question.capacity, say::the_capacity(), 0.0)?;
    let left_in = checked(question.left_in, say::what_stayed_in(), 0.0)?;
    let by_capacity = capacity
        .zip(left_in)
        .map(|(all, rest)| sum(&[all, new_parts, rest.negated()]));

    let (room, basis, notes) = combined(by_drained, by_capacity)?;
    let missing = widened(sum(&[room, poured.negated()]));
    let verdict = verdict(missing);
    let bottle = checked(question.below_cold_mark, say::below_cold_mark(), -200.0)?;
    let split = bottle.map(|in_bottle| Split {
        in_bottle,
        air_or_block: widened(sum(&[room, poured.negated(), in_bottle.negated()])),
    });
    let stayed_in = match (capacity, left_in) {
        (Some(all), None) if !question.drained.is_empty() => Some(widened(sum(&[
            all,
            caught.negated(),
            lost.negated(),
            low.negated(),
        ]))),
        _ => None,
    };
    Ok(Balance {
        out_l: sum(&[caught, lost]).litres,
        in_l: poured.litres,
        missing_l: missing.band(),
        basis,
        verdict,
        split,
        stayed_in,
        notes,
        working: working(basis, room, poured, missing, verdict),
    })
}

impl fmt::Display for FillNote {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            FillNote::BasesDisagree { by_l } => f.write_str(&say::bases_disagree(by_l)),
        }
    }
}

/// What the system has room for, by one basis or by both.
fn combined(
    by_drained: Option<Amount>,
    by_capacity: Option<Amount>,
) -> Result<(Amount, Basis, Vec<FillNote>), CoolantError> {
    match (by_drained, by_capacity) {
        (Some(drained), None) => Ok((drained, Basis::Drained, Vec::new())),
        (None, Some(capacity)) => Ok((capacity, Basis::Capacity, Vec::new())),
        (Some(drained), Some(capacity)) => {
            let apart = sum(&[drained, capacity.negated()]);
            let disagree = apart.litres.abs() > WIDENED * apart.within_l;
            let notes = disagree.then_some(FillNote::BasesDisagree {
                by_l: apart.litres.abs(),
            });
            let mut room = weighted(drained, capacity);
            if disagree {
                // One of them is wrong, and nothing says which.
                room.within_l = room.within_l.max(apart.litres.abs());
            }
            Ok((room, Basis::Both, notes.into_iter().collect()))
        }
        (None, None) => Err(CoolantError::NoBasis),
    }
}

fn total(
    mixture: Mixture,
    measures: &[Measure],
    what: &'static str,
) -> Result<Amount, CoolantError> {
    let amounts = measures
        .iter()
        .map(|one| {
            let amount = one.amount.checked(what, 0.0)?;
            Ok(Amount {
                litres: at_20_c(mixture, amount.litres, one.temperature_c)?,
                ..amount
            })
        })
        .collect::<Result<Vec<_>, CoolantError>>()?;
    Ok(sum(&amounts))
}

fn checked(
    amount: Option<Amount>,
    what: &'static str,
    low_l: f64,
) -> Result<Option<Amount>, CoolantError> {
    amount.map(|one| one.checked(what, low_l)).transpose()
}

/// What is not given is nothing, exactly.
fn given(amount: Option<Amount>, what: &'static str, low_l: f64) -> Result<Amount, CoolantError> {
    Ok(checked(amount, what, low_l)?.unwrap_or(Amount::new(0.0, 0.0)))
}

fn working(
    basis: Basis,
    room: Amount,
    poured: Amount,
    missing: Amount,
    verdict: FillVerdict,
) -> Working {
    let tell = |amount: Amount| {
        say::litres_within(text::litres(amount.litres), text::litres(amount.within_l))
    };
    let formula = match basis {
        Basis::Drained => say::formula_drained(),
        Basis::Capacity => say::formula_capacity(),
        Basis::Both => say::formula_both(),
    };
    let room = Line::new(say::room_at_20(), sources::melinder())
        .formula("R", formula)
        .value(tell(room));
    let poured = Line::new(say::poured_at_20(), Source::given())
        .symbol("P")
        .value(tell(poured));
    let missing = Line::new(say::missing(), Source::derived())
        .formula("M", say::formula_missing())
        .value(tell(missing));
    Working::new(say::filling_title())
        .line(room)
        .line(poured)
        .line(missing)
        .remark(verdict.to_string())
        .limit(say::litres_warn())
}
