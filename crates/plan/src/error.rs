//! What keeps a problem from being planned.

use crate::{Minutes, MoveId, Place};
use states::{ItemId, Need, State};
use thiserror::Error;

/// Why there is no plan.
#[derive(Debug, Clone, PartialEq, Eq, Error)]
pub enum PlanError {
    /// A move of that name does not exist.
    #[error("{id}: no such move; name one of the map's moves")]
    NoSuchMove {
        /// The name given.
        id: MoveId,
    },
    /// Two moves have one name.
    #[error("{id}: two moves have this name; rename one")]
    SameName {
        /// The name.
        id: MoveId,
    },
    /// A move, need or target names an item that does not exist.
    #[error("{named_by}: no item {item}; add the item or correct the name")]
    NoSuchItem {
        /// The item named.
        item: ItemId,
        /// The move or target that names it.
        named_by: String,
    },
    /// A move does not lead away from home on the ladder of its item.
    #[error(
        "{id}: from {from:?} to {to:?} does not lead away from home; state the move out, its way back follows"
    )]
    NotOutward {
        /// The move.
        id: MoveId,
        /// Where it starts.
        from: State,
        /// Where it would end.
        to: State,
    },
    /// The moves of one item do not join into one way out.
    #[error(
        "{item}: its moves do not join into one way out from home (at {id}); let each start where the one before ends, and state other ways as `any` in needs"
    )]
    NotOneWay {
        /// The item.
        item: ItemId,
        /// The move at which they part.
        id: MoveId,
    },
    /// A move needs a state of its own item.
    #[error(
        "{id}: needs a state of its own item {item}; `from` says that already, take it out of the need"
    )]
    NeedsItself {
        /// The move.
        id: MoveId,
        /// Its item.
        item: ItemId,
    },
    /// More moves than the search can hold.
    #[error(
        "{count} moves are more than the {limit} that can be planned at once; leave out items far from the target"
    )]
    TooManyMoves {
        /// How many there are.
        count: usize,
        /// How many there may be.
        limit: usize,
    },
    /// The times together are longer than can be counted.
    #[error("the times add up to more than {limit} minutes; correct the longest")]
    TooLong {
        /// What can be counted.
        limit: Minutes,
    },
    /// A target has no move that leads there.
    #[error("{item}: nothing leads to {wanted:?} from where it stands{}", because(.stub))]
    NothingLeadsThere {
        /// The target.
        item: ItemId,
        /// The states wanted.
        wanted: Vec<State>,
        /// Whether a stub is in the way.
        stub: bool,
    },
    /// A need does not hold and nothing that may be done makes it hold.
    #[error(
        "{id}: what it needs first cannot be had: {need:?}; state another way as `any`, or allow what was ruled out"
    )]
    BrokenNeed {
        /// The move.
        id: MoveId,
        /// Its need.
        need: Need,
    },
    /// A move that the goal needs was ruled out.
    #[error("{id}: was ruled out, and nothing replaces it; allow it, or its place")]
    RuledOut {
        /// The move.
        id: MoveId,
    },
    /// A place was asked for at which nothing can be done.
    #[error("nothing can be done at a place that was asked for; take the place out")]
    NothingAtPlace,
    /// Moves wait for each other and nothing free ever supports one of them.
    #[error("these moves wait for each other: {}; take one need away or state another way as `any`", circle(.moves))]
    Circle {
        /// The circle: each needs the next, the last needs the first.
        moves: Vec<MoveId>,
    },
    /// Everything can be had, but in no sequence that keeps every need.
    #[error(
        "no sequence of moves keeps every need on the way to the target; check needs that ask for something in place"
    )]
    NoSequence,
    /// The way home leads by a place that cannot be had.
    #[error(
        "{id}: its way back is at {place}, which was ruled out; allow the place or leave the item out"
    )]
    HomeAtForbiddenPlace {
        /// The move.
        id: MoveId,
        /// The place.
        place: Place,
    },
    /// The search budget ended before any plan was found.
    #[error("no plan was found within {expansions} states; allow more")]
    BudgetSpent {
        /// The budget.
        expansions: u64,
    },
}

fn because(stub: &bool) -> &'static str {
    if *stub {
        ": a stub is in the way, resolve its snag first"
    } else {
        "; add its move to the map"
    }
}

fn circle(moves: &[MoveId]) -> String {
    let names: Vec<_> = moves
        .iter()
        .chain(moves.first())
        .map(MoveId::as_str)
        .collect();
    names.join(" needs ")
}
