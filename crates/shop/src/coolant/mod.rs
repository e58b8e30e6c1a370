//! Coolant asked in a form's words: what was typed, the answer in the shop's units, its
//! drawing, its working, and what to be warned of first.
//!
//! The same answers serve the pages that stand alone and an order's coolant.

mod asked;
mod fill;
mod order;
mod readings;
mod strength;
mod test;

pub use asked::Asked;
pub use fill::{balance, mix};
pub use order::{
    FIGURES, Figure, KeptStrength, LEAK, LeakRun, Litre, OrderCoolant, STRENGTH, fields, of_order,
};
pub use readings::{Readings, readings};
pub use strength::{measured, protection};
pub use test::{leak, leak_of};

pub use coolant::{BleedWay, Caution, LEAK_TEST_STEPS};
use coolant::{Concentrate, Mixture, StrengthStanding, USUAL_LIMITS};
use measure::Working;

/// What a calculator answers.
#[derive(Debug, Clone, Default, PartialEq)]
pub struct Answer {
    /// What matters most, large.
    pub fact: String,
    /// The same in one sentence.
    pub said: String,
    /// How to take it: `yes`, `no`, `wait`, or nothing.
    pub tone: &'static str,
    /// What goes with it: what, and how much.
    pub rows: Vec<(String, String)>,
    /// What has to be said beside it.
    pub notes: Vec<String>,
    /// What hurts, if it is done now.
    pub alarms: Vec<String>,
    /// Drawn, as SVG.
    pub drawing: Option<String>,
    /// How it was found, as HTML.
    pub working: String,
    /// The same as text, to be kept.
    pub working_text: String,
    /// What is kept beside it.
    pub outputs: serde_json::Value,
}

/// How wide a drawing is on a phone.
pub(crate) const PHONE_PX: f64 = 358.0;

impl Answer {
    fn with_working(mut self, working: &Working) -> Self {
        self.working = working.html();
        self.working_text = working.text();
        self
    }

    fn row(&mut self, what: impl Into<String>, value: impl Into<String>) {
        self.rows.push((what.into(), value.into()));
    }
}

/// The same strength in its three ways, so that none is taken for another.
fn strength_rows(answer: &mut Answer, mixture: Mixture, concentrate: Concentrate) {
    let percent = |part: f64| format!("{:.0}\u{202f}%", part * 100.0);
    let of_bottle = mixture
        .concentrate_fraction(concentrate)
        .map_or_else(|| "stronger than the concentrate".to_owned(), percent);
    answer.row("antifreeze concentrate, by volume", of_bottle);
    answer.row(
        format!("{} glycol, by volume", mixture.glycol()),
        percent(mixture.volume_fraction()),
    );
    answer.row(
        format!("{} glycol, by mass", mixture.glycol()),
        percent(mixture.mass_fraction()),
    );
}

/// Least and most concentrate that is allowed: the maker's, or the usual.
fn limits(asked: &mut Asked) -> (f64, f64) {
    let (least, most) = USUAL_LIMITS;
    (
        asked.fraction("least").unwrap_or(least),
        asked.fraction("most").unwrap_or(most),
    )
}

fn standing(
    asked: &mut Asked,
    mixture: Mixture,
    concentrate: Concentrate,
) -> Option<(StrengthStanding, String)> {
    let limits = limits(asked);
    let found = coolant::strength_standing(mixture, concentrate, limits);
    let standing = asked.ok("least", found)?;
    let told = format!(
        "{standing}, {:.0} to {:.0}\u{202f}% of concentrate",
        limits.0 * 100.0,
        limits.1 * 100.0
    );
    Some((standing, told))
}
