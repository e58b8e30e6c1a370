//! Alarms: what came in after a hand-over and stands open, though nobody knew of it then.

use crate::order::Order;
use crate::reading::OrderReading;
use crate::reason::{Reason, ReasonKey, Why};
use crate::rules::Rules;
use states::Gate;
use std::collections::BTreeMap;

/// What came in after a hand-over and stands open now, though nobody knew of it then. What
/// was known and is now nearer home raises none.
#[must_use]
pub fn late_alarms(order: &Order, rules: &Rules) -> Vec<Reason> {
    of(&OrderReading::of(order, rules))
}

pub(crate) fn of(reading: &OrderReading<'_>) -> Vec<Reason> {
    let handed = crate::papers::handed_over(reading.order());
    let Some(known) = handed.map(|handed| handed.known) else {
        return Vec::new();
    };
    let reasons = reading.answer(Gate::HandOver).fit_to_go.iter();
    reasons
        .filter(|reason| reason.shuts() && !was_known(&reason.key, &known))
        .filter(|reason| !matches!(&reason.why, Why::Owed(debt) if debt.work.work == crate::WorkIs::LevelCold))
        .cloned()
        .collect()
}

fn was_known(key: &ReasonKey, known: &[ReasonKey]) -> bool {
    known.contains(key)
        || pieces(key).is_some_and(|(item, now)| {
            known
                .iter()
                .filter_map(pieces)
                .any(|(of, then)| of == item && only_improved(&now, &then))
        })
}

/// The item of an open one's reason, and the codes of where its pieces stand.
fn pieces(key: &ReasonKey) -> Option<(&str, BTreeMap<&str, Vec<&str>>)> {
    let rest = key.0.strip_prefix("open:");
    let rest = rest.or_else(|| key.0.strip_prefix("unlocated:"))?;
    let (item, at) = rest.rsplit_once(':')?;
    let pieces = at.split(',').filter_map(|piece| {
        let (position, stands) = piece.split_once('=')?;
        Some((position, stands.split('+').collect()))
    });
    Some((item, pieces.collect()))
}

/// Whether every piece that is away now was away then, and none is farther than anybody said.
fn only_improved(now: &BTreeMap<&str, Vec<&str>>, then: &BTreeMap<&str, Vec<&str>>) -> bool {
    now.iter().all(|(position, stands)| {
        then.get(position).is_some_and(|then| {
            stands
                .iter()
                .all(|now| then.iter().any(|then| no_farther(now, then)))
        })
    })
}

fn no_farther(now: &str, then: &str) -> bool {
    const HOME: [&str; 6] = ["On", "Tight", "Plugged", "AtLevel", "Done", "Outside"];
    let passes = |code: &str| code.strip_prefix("Loose")?.parse::<u8>().ok();
    now == then
        || HOME.contains(&now)
        || match (passes(now), passes(then)) {
            (Some(now), Some(then)) => now >= then,
            (Some(_), None) => then == "Out",
            _ => false,
        }
}
