//! A plain executor: it makes moves one at a time and refuses what the ladder or a
//! need does not allow. Plans are run on it to prove them.

use crate::{ItemId, Kind, Need, Position, State};
use std::collections::BTreeMap;
use thiserror::Error;

/// One step of one item at some of its positions.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Step {
    /// The item that moves.
    pub item: ItemId,
    /// The positions that move.
    pub at: Vec<Position>,
    /// The state they must stand in.
    pub from: State,
    /// The state they are left in.
    pub to: State,
    /// What must hold before the step.
    pub needs: Option<Need>,
}

/// Why a step cannot be made.
#[derive(Debug, Clone, PartialEq, Eq, Error)]
pub enum CannotStep {
    /// The item is not on the bench.
    #[error("{item}: no such item; add it before moving it")]
    NoSuchItem {
        /// The item named.
        item: ItemId,
    },
    /// The item has no such position.
    #[error("{item}: no position {position}; it has {count}")]
    NoSuchPosition {
        /// The item named.
        item: ItemId,
        /// The position named.
        position: Position,
        /// How many positions the item has.
        count: usize,
    },
    /// The piece stands elsewhere.
    #[error("{item} {position}: stands at {found:?}, and the step starts from {expected:?}")]
    NotThere {
        /// The item named.
        item: ItemId,
        /// The position named.
        position: Position,
        /// Where the step starts.
        expected: State,
        /// Where the piece stands.
        found: State,
    },
    /// The ladder of this kind has no such step.
    #[error("{item}: a {kind:?} does not go from {from:?} to {to:?} in one step")]
    NoSuchStep {
        /// The item named.
        item: ItemId,
        /// Its kind.
        kind: Kind,
        /// Where the step starts.
        from: State,
        /// Where it would end.
        to: State,
    },
    /// A stated need does not hold.
    #[error("{item}: what this step needs first does not hold: {need:?}")]
    NeedBroken {
        /// The item named.
        item: ItemId,
        /// The need.
        need: Need,
    },
}

/// Items and where each piece stands.
#[derive(Debug, Clone, PartialEq, Eq, Default)]
pub struct Bench {
    items: BTreeMap<ItemId, (Kind, BTreeMap<Position, State>)>,
}

impl Bench {
    /// Puts an item on the bench with `count` pieces, all in `state`.
    pub fn place(&mut self, item: ItemId, kind: Kind, count: Position, state: State) {
        let pieces = (1..=count.max(1))
            .map(|position| (position, state))
            .collect();
        self.place_pieces(item, kind, pieces);
    }

    /// Puts an item on the bench with each piece where it stands, so that a job can
    /// be taken up in its middle.
    pub fn place_pieces(&mut self, item: ItemId, kind: Kind, pieces: BTreeMap<Position, State>) {
        self.items.insert(item, (kind, pieces));
    }

    /// The position and state of each piece of an item; empty if it is unknown.
    #[must_use]
    pub fn stands(&self, item: &ItemId) -> Vec<(Position, State)> {
        self.items
            .get(item)
            .map(|(_, pieces)| pieces.iter().map(|(at, state)| (*at, *state)).collect())
            .unwrap_or_default()
    }

    /// The items that are not all at the home of their kind.
    #[must_use]
    pub fn away_from_home(&self) -> Vec<&ItemId> {
        self.items
            .iter()
            .filter(|(_, (kind, pieces))| pieces.values().any(|state| *state != kind.home()))
            .map(|(item, _)| item)
            .collect()
    }

    /// Makes one step, or leaves everything as it was and says why not.
    ///
    /// # Errors
    /// [`CannotStep`]: unknown item or position, a piece that stands elsewhere, a
    /// step the ladder does not have, or a need that does not hold.
    ///
    /// ```
    /// use states::{Bench, ItemId, Kind, State, Step};
    /// let mut bench = Bench::default();
    /// bench.place(ItemId::new("tray"), Kind::Cover, 1, State::On);
    /// let off = Step {
    ///     item: ItemId::new("tray"),
    ///     at: vec![1],
    ///     from: State::On,
    ///     to: State::Off,
    ///     needs: None,
    /// };
    /// assert!(bench.step(&off).is_ok());
    /// assert!(bench.step(&off).is_err(), "it is off already");
    /// ```
    pub fn step(&mut self, step: &Step) -> Result<(), CannotStep> {
        let item = || step.item.clone();
        let (kind, pieces) = self
            .items
            .get(&step.item)
            .ok_or_else(|| CannotStep::NoSuchItem { item: item() })?;
        if !kind.steps().contains(&(step.from.rung(), step.to.rung())) {
            return Err(CannotStep::NoSuchStep {
                item: item(),
                kind: *kind,
                from: step.from,
                to: step.to,
            });
        }
        for position in &step.at {
            let found = pieces
                .get(position)
                .ok_or_else(|| CannotStep::NoSuchPosition {
                    item: item(),
                    position: *position,
                    count: pieces.len(),
                })?;
            if found.rung() != step.from.rung() {
                return Err(CannotStep::NotThere {
                    item: item(),
                    position: *position,
                    expected: step.from,
                    found: *found,
                });
            }
        }
        if let Some(need) = &step.needs
            && !need.holds(&|other: &ItemId| self.stands(other))
        {
            return Err(CannotStep::NeedBroken {
                item: item(),
                need: need.clone(),
            });
        }
        if let Some((_, pieces)) = self.items.get_mut(&step.item) {
            for position in &step.at {
                pieces.insert(*position, step.to);
            }
        }
        Ok(())
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn bolts(at: &[Position], from: State, to: State, needs: Option<Need>) -> Step {
        Step {
            item: ItemId::new("bolts"),
            at: at.to_vec(),
            from,
            to,
            needs,
        }
    }

    #[test]
    fn a_refused_step_changes_nothing() {
        let mut bench = Bench::default();
        bench.place(ItemId::new("bolts"), Kind::Fasteners, 3, State::Tight);
        let before = bench.clone();
        for step in [
            bolts(&[1, 4], State::Tight, State::Cracked, None),
            bolts(&[1], State::Out, State::Loose { passes: 0 }, None),
            bolts(&[1], State::Tight, State::Out, None),
            bolts(&[1], State::Tight, State::Cracked, Some(Need::Any(vec![]))),
        ] {
            assert!(bench.step(&step).is_err(), "{step:?}");
            assert_eq!(bench, before);
        }
    }

    #[test]
    fn out_and_back_by_passes_comes_home() {
        let mut bench = Bench::default();
        bench.place(ItemId::new("bolts"), Kind::Fasteners, 2, State::Tight);
        for (from, to) in [
            (State::Tight, State::Cracked),
            (State::Cracked, State::Out),
            (State::Out, State::Loose { passes: 0 }),
            (State::Loose { passes: 1 }, State::Tight),
        ] {
            assert!(bench.step(&bolts(&[1, 2], from, to, None)).is_ok());
        }
        assert!(bench.away_from_home().is_empty());
    }
}
