//! From the strength that is in to the strength that is wanted.

use crate::error::{CoolantError, within};
use crate::inhibitor::{Inhibitor, InhibitorNote};
use crate::mixture::Mixture;
use crate::phrases as say;
use crate::{sources, text};
use blend::{Strong, blended, by_strength, glycol_l};
use measure::{Line, Working};
use plan::planned;

mod blend;
mod plan;

pub use blend::{Addition, Bottles, Shelf, Stock};

/// A strength this near to the wanted one, by volume, counts as reached: no jug and no
/// refractometer is better.
pub const REACHED_WITHIN: f64 = 0.005;

/// More rounds of draining and filling than this are a flush.
const ROUNDS_MAX: usize = 8;

/// The water to mix with.
pub fn water_quality() -> &'static str {
    say::water_quality()
}

/// A system to be brought to a strength.
#[derive(Clone, Debug)]
pub struct MixQuestion<'a> {
    /// All that the system holds, 0.5 to 100 L.
    pub capacity_l: f64,
    /// What is in after draining. A drain cock gives half to two thirds.
    pub left_l: f64,
    /// The strength of what is in.
    pub now: Mixture,
    pub want: Mixture,
    pub shelf: &'a [Stock],
    /// The smallest amount that the jug measures, 0.01 to 1 L.
    pub jug_l: f64,
    /// What the vehicle maker asks for.
    pub maker: Option<&'a Inhibitor>,
    /// What is in the system.
    pub in_system: Option<&'a Inhibitor>,
}

/// One fill, and the drain before it from the second round on.
#[derive(Clone, Debug, PartialEq)]
pub struct Round {
    /// Nothing in the first round, where the drain is done.
    pub drain_l: f64,
    pub add: Vec<Addition>,
    /// The strength after the coolant has been round with the heater hot.
    pub after: Mixture,
}

/// How to reach the wanted strength.
#[derive(Clone, Debug, PartialEq)]
pub struct MixPlan {
    pub rounds: Vec<Round>,
    /// With jug amounts.
    pub reached: Mixture,
    /// The last fill in whole bottles, where that comes near enough.
    pub whole_bottles: Option<WholeBottles>,
    pub inhibitors: Vec<InhibitorNote>,
    pub working: Working,
}

/// A fill of whole bottles made up with something measured.
#[derive(Clone, Debug, PartialEq)]
pub struct WholeBottles {
    pub what: Shelf,
    pub count: u32,
    pub made_up_with: Shelf,
    pub made_up_l: f64,
    pub reached: Mixture,
}

/// What to drain of a full system and to replace.
#[derive(Clone, Debug, PartialEq)]
pub struct DrainAndReplace {
    pub litres: f64,
    pub working: Working,
}

/// The amounts that bring a system to a strength, in as few rounds as it takes.
///
/// Formula: glycol is neither made nor lost: want · capacity = now · left + Σ strength ·
/// amount, with strengths by volume of parts at 20 °C. Where even the strongest on the
/// shelf is too weak for one fill, rounds of filling, running and draining follow:
/// c' = (c · left + s · (capacity - left)) / capacity.
///
/// Inputs: see [`MixQuestion`].
///
/// Returns the rounds with calculated, jug and bottle amounts, the strength reached with
/// jug amounts, and what has to be said about inhibitors.
///
/// # Errors
///
/// [`CoolantError`], with the reason why the strength cannot be reached.
///
/// # Limits
///
/// Glycol and water shrink together by up to 1.2 %, so the level ends a little low. What
/// stays in the block mixes only when the thermostat has opened and the heater is on.
///
/// # Source
///
/// Balance of glycol.
///
/// ```
/// use coolant::{Concentrate, Glycol, MixQuestion, Mixture, Shelf, Stock, mix};
///
/// let stock = |what| Stock { what, bottle_l: None, inhibitor: None };
/// let question = MixQuestion {
///     capacity_l: 9.5,
///     left_l: 3.5,
///     now: Mixture::by_volume(Glycol::Ethylene, 0.3)?,
///     want: Mixture::by_volume(Glycol::Ethylene, 0.5)?,
///     shelf: &[stock(Shelf::Concentrate(Concentrate::default())), stock(Shelf::Water)],
///     jug_l: 0.1,
///     maker: None,
///     in_system: None,
/// };
/// let plan = mix(&question)?;
/// assert_eq!(plan.rounds.len(), 1);
/// let poured: f64 = plan.rounds[0].add.iter().map(|addition| addition.jug_l).sum();
/// assert!((poured - 6.0).abs() < 1e-9);
/// # Ok::<(), coolant::CoolantError>(())
/// ```
pub fn mix(question: &MixQuestion) -> Result<MixPlan, CoolantError> {
    checked(question)?;
    let fill_l = question.capacity_l - question.left_l;
    if fill_l <= 0.0 {
        return nothing_drained(question);
    }
    let stocks = by_strength(question.shelf, question.want.glycol());
    let want = question.want.volume_fraction();
    let mut rounds: Vec<Round> = Vec::new();
    let mut now = question.now.volume_fraction();
    loop {
        let needed = (want * question.capacity_l - now * question.left_l) / fill_l;
        let add = blended(&stocks, needed, fill_l, question.jug_l);
        let mixture = after(question, now, &add)?;
        now = mixture.volume_fraction();
        rounds.push(Round {
            drain_l: if rounds.is_empty() { 0.0 } else { fill_l },
            add,
            after: mixture,
        });
        if on_the_shelf(&stocks, needed) || (now - want).abs() <= REACHED_WITHIN {
            return planned(question, rounds);
        }
        refuse_if_hopeless(&stocks, rounds.len(), now, want)?;
    }
}

/// How much to drain of a full system, and replace, to reach a strength in one step.
///
/// Formula: x = V · (want - now) / (fill - now).
///
/// Inputs: capacity in L, 0.5 to 100; the three strengths, of one glycol.
///
/// Returns litres.
///
/// # Errors
///
/// [`CoolantError`] where the fill lies on the wrong side of what is wanted.
///
/// # Limits
///
/// What is drained must have the strength of the whole: run it before.
///
/// # Source
///
/// Balance of glycol.
///
/// ```
/// use coolant::{Glycol, Mixture, drain_and_replace};
/// let part = |volume| Mixture::by_volume(Glycol::Ethylene, volume);
/// let litres = drain_and_replace(8.0, part(0.3)?, part(0.5)?, part(1.0)?)?.litres;
/// assert!((litres - 2.285714).abs() < 1e-6);
/// # Ok::<(), coolant::CoolantError>(())
/// ```
pub fn drain_and_replace(
    capacity_l: f64,
    now: Mixture,
    want: Mixture,
    fill: Mixture,
) -> Result<DrainAndReplace, CoolantError> {
    capacity(capacity_l)?;
    same_glycol(now, want)?;
    same_glycol(fill, want)?;
    let (now, want, fill) = (
        now.volume_fraction(),
        want.volume_fraction(),
        fill.volume_fraction(),
    );
    let part = if (want - now).abs() < f64::EPSILON {
        0.0
    } else {
        (want - now) / (fill - now)
    };
    // A fill that is no stronger than what is in gives no number, or one outside 0 to 1.
    if (0.0..=1.0 + 1e-12).contains(&part) {
        let litres = capacity_l * part.min(1.0);
        let line = Line::new(say::drain_and_replace_line(), sources::mass_balance())
            .formula("x", say::drain_formula())
            .input("V", text::litres(capacity_l))
            .input(say::at_present(), text::percent(now))
            .input(say::want(), text::percent(want))
            .input(say::fill(), text::percent(fill))
            .value(text::litres(litres));
        let working = Working::new(say::drain_and_replace_title()).line(line);
        Ok(DrainAndReplace { litres, working })
    } else if want > now {
        Err(CoolantError::ShelfTooWeak {
            strongest: fill,
            want,
        })
    } else {
        Err(CoolantError::ShelfTooStrong {
            weakest: fill,
            want,
        })
    }
}

fn checked(question: &MixQuestion) -> Result<(), CoolantError> {
    capacity(question.capacity_l)?;
    within(
        say::what_is_left_in(),
        question.left_l,
        "L",
        0.0..=question.capacity_l,
        say::mend_at_most_capacity(),
    )?;
    within(
        say::jugs_smallest_amount(),
        question.jug_l,
        "L",
        0.01..=1.0,
        say::mend_usual_jug(),
    )?;
    same_glycol(question.now, question.want)?;
    if question.shelf.is_empty() {
        return Err(CoolantError::EmptyShelf);
    }
    for stock in question.shelf {
        if let Shelf::Premix(mixture) = stock.what {
            same_glycol(mixture, question.want)?;
        }
        if let Some(bottle_l) = stock.bottle_l {
            within(
                say::bottles_content(),
                bottle_l,
                "L",
                0.1..=220.0,
                say::mend_read_its_label(),
            )?;
        }
    }
    Ok(())
}

fn capacity(capacity_l: f64) -> Result<f64, CoolantError> {
    within(
        say::the_capacity(),
        capacity_l,
        "L",
        0.5..=100.0,
        say::mend_in_vehicles_manual(),
    )
}

fn same_glycol(one: Mixture, other: Mixture) -> Result<(), CoolantError> {
    if one.glycol() == other.glycol() || one.mass_fraction() <= 0.0 || other.mass_fraction() <= 0.0
    {
        Ok(())
    } else {
        Err(CoolantError::TwoGlycols {
            first: one.glycol(),
            second: other.glycol(),
        })
    }
}

fn nothing_drained(question: &MixQuestion) -> Result<MixPlan, CoolantError> {
    let now = question.now.volume_fraction();
    if (now - question.want.volume_fraction()).abs() <= REACHED_WITHIN {
        planned(question, Vec::new())
    } else {
        Err(CoolantError::NothingDrained {
            left_l: question.left_l,
            capacity_l: question.capacity_l,
            now,
        })
    }
}

/// Whether a fill of the needed strength can be made of what is there; if so, the jug
/// comes as near as it can.
fn on_the_shelf(stocks: &[Strong], needed: f64) -> bool {
    let ends = stocks.first().zip(stocks.last());
    ends.is_some_and(|(weakest, strongest)| (weakest.0..=strongest.0).contains(&needed))
}

/// The mixture once the jug amounts are in and have been round.
fn after(question: &MixQuestion, now: f64, add: &[Addition]) -> Result<Mixture, CoolantError> {
    let glycol = question.want.glycol();
    let volume = (now * question.left_l + glycol_l(add, glycol)) / question.capacity_l;
    // Rounding may end a last bit outside.
    Mixture::by_volume(glycol, volume.clamp(0.0, 1.0))
}

fn refuse_if_hopeless(
    stocks: &[Strong],
    rounds: usize,
    now: f64,
    want: f64,
) -> Result<(), CoolantError> {
    let strongest = stocks.last().map_or(0.0, |(strength, _)| *strength);
    let weakest = stocks.first().map_or(0.0, |(strength, _)| *strength);
    if now < want && strongest < want - REACHED_WITHIN {
        Err(CoolantError::ShelfTooWeak { strongest, want })
    } else if now > want && weakest > want + REACHED_WITHIN {
        Err(CoolantError::ShelfTooStrong { weakest, want })
    } else if rounds >= ROUNDS_MAX {
        Err(CoolantError::TooManyRounds {
            rounds,
            reached: now,
            want,
        })
    } else {
        Ok(())
    }
}
