//! Alarms: what came in after a hand-over and stands open, though nobody knew of it then.

use crate::order::Order;
use crate::reading::OrderReading;
use crate::reason::{Away, Reason, ReasonKey, Why};
use crate::rules::Rules;
use states::{Gate, ItemId, State};

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
                .any(|(of, then)| of == item && only_improved(now, then))
        })
}

/// The item of an open one's reason, and where its pieces stand.
fn pieces(key: &ReasonKey) -> Option<(&ItemId, &[Away])> {
    match key {
        ReasonKey::Open { item, away } | ReasonKey::Unlocated { item, away } => Some((item, away)),
        _ => None,
    }
}

/// Whether every piece that is away now was away then, and none is farther than anybody said.
fn only_improved(now: &[Away], then: &[Away]) -> bool {
    now.iter().all(|now| {
        let mut then = then.iter().filter(|then| then.position == now.position);
        then.next().is_some_and(|then| {
            now.states
                .iter()
                .all(|now| then.states.iter().any(|then| no_farther(*now, *then)))
        })
    })
}

fn no_farther(now: State, then: State) -> bool {
    let home = matches!(
        now,
        State::On | State::Tight | State::Plugged | State::AtLevel | State::Done | State::Outside
    );
    now == then
        || home
        || match (now, then) {
            (State::Loose { passes: now }, State::Loose { passes: then }) => now >= then,
            (State::Loose { .. }, State::Out) => true,
            _ => false,
        }
}
