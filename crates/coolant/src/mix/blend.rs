//! One fill of a wanted strength out of what is on the shelf.

use crate::inhibitor::Inhibitor;
use crate::mixture::{Concentrate, Glycol, Mixture};
use crate::phrases as say;
use std::fmt;

/// Something that can be poured.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Shelf {
    Concentrate(Concentrate),
    Premix(Mixture),
    Water,
}

/// A kind of bottle on the shelf.
#[derive(Clone, Debug, PartialEq)]
pub struct Stock {
    pub what: Shelf,
    /// Content of one bottle, where whole bottles matter.
    pub bottle_l: Option<f64>,
    /// What the label says; nothing for water.
    pub inhibitor: Option<Inhibitor>,
}

/// An amount of one thing to pour.
#[derive(Clone, Debug, PartialEq)]
pub struct Addition {
    pub what: Shelf,
    /// As calculated.
    pub litres: f64,
    /// As measured with the jug.
    pub jug_l: f64,
    /// Whole bottles to take from the shelf, and what is left in the last.
    pub bottles: Option<Bottles>,
}

/// Whole bottles that cover an amount.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Bottles {
    pub count: u32,
    pub left_over_l: f64,
}

impl Shelf {
    /// The part of glycol by volume.
    pub fn glycol_volume_fraction(self, glycol: Glycol) -> f64 {
        match self {
            Shelf::Concentrate(concentrate) => concentrate.glycol_volume_fraction(glycol),
            Shelf::Premix(mixture) => mixture.volume_fraction(),
            Shelf::Water => 0.0,
        }
    }
}

impl fmt::Display for Shelf {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            Shelf::Concentrate(_) => f.write_str(say::concentrate()),
            Shelf::Premix(_) => f.write_str(say::premix()),
            Shelf::Water => f.write_str(say::water()),
        }
    }
}

/// A bottle with its strength by volume.
pub(super) type Strong<'a> = (f64, &'a Stock);

pub(super) fn by_strength(shelf: &[Stock], glycol: Glycol) -> Vec<Strong<'_>> {
    let mut stocks: Vec<Strong> = shelf
        .iter()
        .map(|stock| (stock.what.glycol_volume_fraction(glycol), stock))
        .collect();
    stocks.sort_by(|one, other| one.0.total_cmp(&other.0));
    stocks
}

/// `fill_l` of the needed strength, or of the nearest that the shelf has: from one
/// bottle, or from the two whose strengths lie closest around it, so that a slip with
/// the jug matters least.
pub(super) fn blended(stocks: &[Strong], needed: f64, fill_l: f64, jug_l: f64) -> Vec<Addition> {
    let below = stocks
        .iter()
        .rev()
        .find(|(strength, _)| *strength <= needed);
    let above = stocks.iter().find(|(strength, _)| *strength >= needed);
    match (below, above) {
        (Some(low), Some(high)) if high.0 > low.0 => {
            let strong_l = fill_l * (needed - low.0) / (high.0 - low.0);
            let jug_strong_l = (libm::round(strong_l / jug_l) * jug_l).clamp(0.0, fill_l);
            let pair = [
                addition(high.1, strong_l, jug_strong_l),
                addition(low.1, fill_l - strong_l, fill_l - jug_strong_l),
            ];
            pair.into_iter().filter(|one| one.jug_l > 1e-9).collect()
        }
        (Some(only), _) | (None, Some(only)) => vec![addition(only.1, fill_l, fill_l)],
        // An empty shelf is refused before.
        (None, None) => Vec::new(),
    }
}

fn addition(stock: &Stock, litres: f64, jug_l: f64) -> Addition {
    Addition {
        what: stock.what,
        litres,
        jug_l,
        bottles: stock.bottle_l.map(|bottle_l| bottles(jug_l, bottle_l)),
    }
}

#[expect(
    clippy::cast_possible_truncation,
    clippy::cast_sign_loss,
    reason = "at most 100 L in bottles of at least 0.1 L"
)]
pub(super) fn bottles(litres: f64, bottle_l: f64) -> Bottles {
    let count = libm::ceil(litres / bottle_l - 1e-9).max(0.0);
    Bottles {
        count: count as u32,
        left_over_l: (count * bottle_l - litres).max(0.0),
    }
}

/// The glycol in what is poured, as litres of pure glycol at 20 °C.
pub(super) fn glycol_l(add: &[Addition], glycol: Glycol) -> f64 {
    add.iter()
        .map(|one| one.jug_l * one.what.glycol_volume_fraction(glycol))
        .sum()
}
