//! Needs: conditions on states that a move may be stated to have.

use crate::State;
use std::collections::BTreeSet;
use std::fmt;

/// The name of an item within its order or map.
#[derive(Debug, Clone, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub struct ItemId(String);

/// The place of one piece in its item, counted from 1.
pub type Position = u16;

impl ItemId {
    /// Takes a name as it is.
    #[must_use]
    pub fn new(name: impl Into<String>) -> Self {
        Self(name.into())
    }

    /// The name as text.
    #[must_use]
    pub fn as_str(&self) -> &str {
        &self.0
    }
}

impl fmt::Display for ItemId {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(&self.0)
    }
}

/// A condition on states: one, all of several, or any of several.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum Need {
    /// The item stands in one of these states at each of these positions.
    Is {
        /// The item looked at.
        item: ItemId,
        /// The positions looked at; none named means every position it has.
        at: Vec<Position>,
        /// The rungs that satisfy ("cracked" means cracked or further).
        states: BTreeSet<State>,
    },
    /// Every one of these holds.
    All(Vec<Need>),
    /// At least one of these holds.
    Any(Vec<Need>),
}

impl Need {
    /// Whether the need holds.
    ///
    /// `stands` answers for an item the position and state of each of its pieces;
    /// a piece about which two people disagree is answered once for each claim,
    /// and every claim must satisfy. An item nobody knows satisfies nothing.
    ///
    /// ```
    /// use states::{ItemId, Need, State};
    /// let belt_on = Need::Is {
    ///     item: ItemId::new("belt"),
    ///     at: vec![],
    ///     states: [State::On].into(),
    /// };
    /// assert!(belt_on.holds(&|_: &ItemId| vec![(1, State::On)]));
    /// assert!(!belt_on.holds(&|_: &ItemId| vec![(1, State::On), (1, State::Off)]));
    /// assert!(!belt_on.holds(&|_: &ItemId| vec![]));
    /// ```
    pub fn holds(&self, stands: &impl Fn(&ItemId) -> Vec<(Position, State)>) -> bool {
        match self {
            Need::Is { item, at, states } => {
                let claims: Vec<_> = stands(item)
                    .into_iter()
                    .filter(|(position, _)| at.is_empty() || at.contains(position))
                    .collect();
                let all_seen = at
                    .iter()
                    .all(|wanted| claims.iter().any(|(position, _)| position == wanted));
                !claims.is_empty()
                    && all_seen
                    && claims
                        .iter()
                        .all(|(_, state)| states.contains(&state.rung()))
            }
            Need::All(needs) => needs.iter().all(|need| need.holds(stands)),
            Need::Any(needs) => needs.iter().any(|need| need.holds(stands)),
        }
    }

    /// The items this need looks at.
    #[must_use]
    pub fn items(&self) -> BTreeSet<&ItemId> {
        match self {
            Need::Is { item, .. } => [item].into(),
            Need::All(needs) | Need::Any(needs) => needs.iter().flat_map(Need::items).collect(),
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn is(item: &str, at: &[Position], states: &[State]) -> Need {
        Need::Is {
            item: ItemId::new(item),
            at: at.to_vec(),
            states: states.iter().copied().collect(),
        }
    }

    #[test]
    fn a_named_position_that_is_not_known_does_not_hold() {
        let need = is("bolts", &[1, 9], &[State::Out]);
        assert!(!need.holds(&|_: &ItemId| vec![(1, State::Out), (2, State::Out)]));
        assert!(need.holds(&|_: &ItemId| vec![(1, State::Out), (9, State::Out)]));
    }

    #[test]
    fn passes_stand_on_one_rung() {
        let need = is("bolts", &[], &[State::Loose { passes: 0 }]);
        assert!(need.holds(&|_: &ItemId| vec![(1, State::Loose { passes: 2 })]));
    }

    #[test]
    fn any_of_nothing_never_holds_and_all_of_nothing_does() {
        let stands = |_: &ItemId| vec![(1, State::On)];
        assert!(!Need::Any(vec![]).holds(&stands));
        assert!(Need::All(vec![]).holds(&stands));
        let either = Need::Any(vec![
            is("a", &[], &[State::Off]),
            is("a", &[], &[State::On]),
        ]);
        assert!(either.holds(&stands));
        assert_eq!(either.items().len(), 1);
    }
}
