//! A planning problem as a value.

use crate::{Minutes, PlanError, Way};
use states::{ItemId, Kind, Need, Position, State};
use std::collections::{BTreeMap, BTreeSet};
use std::fmt;

macro_rules! name {
    ($(#[$doc:meta])* $name:ident) => {
        $(#[$doc])*
        #[derive(Debug, Clone, PartialEq, Eq, PartialOrd, Ord, Hash)]
        pub struct $name(String);

        impl $name {
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

        impl fmt::Display for $name {
            fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
                f.write_str(&self.0)
            }
        }
    };
}

name! {
    /// The name of a move within its problem.
    MoveId
}
name! {
    /// Where one stands to work: above, below, at the wheel well.
    Place
}
name! {
    /// What one holds to work.
    Tool
}

/// An item and where each of its pieces stands now.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Item {
    /// Its kind, which gives its ladder.
    pub kind: Kind,
    /// The state of each piece.
    pub stands: BTreeMap<Position, State>,
}

/// The time a move takes: once, and again for each piece left to move.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default)]
pub struct Effort {
    /// Once, however many pieces are left.
    pub set_up: Minutes,
    /// For each piece left.
    pub per_piece: Minutes,
}

/// One move away from home, with what its way back takes.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Move {
    /// Its name.
    pub id: MoveId,
    /// The item that moves.
    pub item: ItemId,
    /// The state nearer home that it starts from.
    pub from: State,
    /// The state farther from home that it leads to.
    pub to: State,
    /// What must hold before it.
    pub need: Need,
    /// What must hold before it is taken back; where none is stated, `need`.
    pub back_need: Option<Need>,
    /// Work that it makes due, which must have a move of its own from done to due. That one
    /// is made with it and nowhere: the work's place, tools and needs count when it is done.
    pub makes_due: Vec<ItemId>,
    /// The time out.
    pub out: Effort,
    /// The time back.
    pub back: Effort,
    /// What is lost or renewed by it, as time at the labour rate.
    pub lost: Minutes,
    /// What may go wrong in it, as time.
    pub snag_risk: Minutes,
    /// Where one stands for it; nothing if it can be made from anywhere.
    pub place: Option<Place>,
    /// Where one stands to take it back, if that is another place: a fluid is drained below
    /// and filled above.
    pub back_place: Option<Place>,
    /// What one holds for it; nothing if no tool is taken up.
    pub tools: BTreeSet<Tool>,
    /// Whether it runs by itself once started (a drain, a cure), so that it is best
    /// started early.
    pub runs_by_itself: bool,
}

/// What changing place and tools costs.
#[derive(Debug, Clone, PartialEq, Eq, Default)]
pub struct Changes {
    /// From one place to another, unless stated below.
    pub place: Minutes,
    /// Between two places, from the first to the second; the other way too, unless that is
    /// stated as well. A stated walk costs what is stated, whatever a detour would.
    pub between: BTreeMap<(Place, Place), Minutes>,
    /// For each tool taken up that the move before did not use. What one holds for
    /// the first move is in hand.
    pub tool: Minutes,
}

/// What is wanted.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum Goal {
    /// Reach these, and bring everything home afterwards.
    Reach(Vec<Target>),
    /// Bring home everything that is out, or only these items and what they need.
    Home(Option<BTreeSet<ItemId>>),
}

/// An item that must come to stand in one of these states.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Target {
    /// The item.
    pub item: ItemId,
    /// The states that will do.
    pub states: BTreeSet<State>,
}

/// Items, moves, costs, a goal and what is asked of the way.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Problem {
    /// The items and where they stand.
    pub items: BTreeMap<ItemId, Item>,
    /// The moves there are.
    pub moves: Vec<Move>,
    /// What changing place and tools costs.
    pub changes: Changes,
    /// Where one stands at the start; nothing if the first place costs nothing.
    pub start: Option<Place>,
    /// What is wanted.
    pub goal: Goal,
    /// Moves that must be made.
    pub forced_moves: BTreeSet<MoveId>,
    /// Moves that must not be made.
    pub forbidden_moves: BTreeSet<MoveId>,
    /// Places at which something must be done.
    pub forced_places: BTreeSet<Place>,
    /// Places that cannot be had.
    pub forbidden_places: BTreeSet<Place>,
}

/// Why a row is in the plan.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum Because {
    /// It brings a target about.
    Target(ItemId),
    /// This move needs it first.
    Needed(MoveId),
    /// This move makes it due.
    MadeDue(MoveId),
    /// It was asked for, or is at a place that was asked for.
    AskedFor,
    /// Owed since this move, whose like it answers.
    Owed(MoveId),
    /// Going back: this move can be taken back only after it.
    LetsBack(MoveId),
    /// The item belongs at home, and nothing waits for it.
    Home,
}

/// One row of a plan.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Planned {
    /// The move.
    pub id: MoveId,
    /// The item.
    pub item: ItemId,
    /// The positions that move.
    pub at: Vec<Position>,
    /// Out or back.
    pub way: Way,
    /// The state they are left in.
    pub to: State,
    /// Where one stands.
    pub place: Option<Place>,
    /// What one holds.
    pub tools: BTreeSet<Tool>,
    /// The time it takes.
    pub minutes: Minutes,
    /// Why it is there.
    pub because: Because,
}

/// A way in and back.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Plan {
    /// The way out, in sequence.
    pub off: Vec<Planned>,
    /// The way back, in sequence.
    pub back: Vec<Planned>,
    /// Moves that no legal way back was found for. Where there are any, `back` is
    /// empty and the costs are of the way out with the time that putting back would take.
    pub no_way_back: Vec<MoveId>,
    /// Pieces that no move brings home: stubs, until their snag is resolved.
    pub stays: Vec<(ItemId, Position)>,
    /// The time of all rows.
    pub minutes: Minutes,
    /// How often the place changes, out and back.
    pub place_changes: usize,
    /// How often a tool is taken up that was not in hand, out and back.
    pub tool_changes: usize,
    /// All of it: rows, changes, what is lost and renewed, what may go wrong.
    pub cost: Minutes,
    /// No plan costs less than this.
    pub bound: Minutes,
    /// Whether the plan is proven cheapest.
    pub proven: bool,
    /// States looked at.
    pub expansions: u64,
}

/// How much searching is allowed.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Budget {
    /// How many states may be looked at.
    pub expansions: u64,
}

impl Default for Budget {
    /// About a second of one thread.
    fn default() -> Self {
        Self {
            expansions: 1_500_000,
        }
    }
}

impl Changes {
    /// What it costs to go from one place to another.
    #[must_use]
    pub fn from_to(&self, from: &Place, to: &Place) -> Minutes {
        let stated = |from: &Place, to: &Place| self.between.get(&(from.clone(), to.clone()));
        *stated(from, to)
            .or_else(|| stated(to, from))
            .unwrap_or(&self.place)
    }
}

impl Plan {
    /// How far the cost may lie above the cheapest: nothing when proven.
    #[must_use]
    pub fn gap(&self) -> Minutes {
        Minutes::tenths(self.cost.in_tenths() - self.bound.in_tenths())
    }
}

impl Item {
    /// One piece in one state.
    #[must_use]
    pub fn one(kind: Kind, state: State) -> Self {
        Self::group(kind, 1, state)
    }

    /// So many pieces, all in one state.
    #[must_use]
    pub fn group(kind: Kind, count: Position, state: State) -> Self {
        Self {
            kind,
            stands: (1..=count).map(|position| (position, state)).collect(),
        }
    }
}

impl Move {
    /// Where one stands to take it back.
    #[must_use]
    pub fn place_back(&self) -> Option<&Place> {
        self.back_place.as_ref().or(self.place.as_ref())
    }

    /// Where one stands for it or to take it back: one place, two, or none.
    pub(crate) fn places(&self) -> impl Iterator<Item = &Place> {
        self.place.iter().chain(&self.back_place)
    }
}

impl Problem {
    /// The move of this name.
    ///
    /// # Errors
    /// [`PlanError::NoSuchMove`] if there is none.
    pub fn find(&self, id: &MoveId) -> Result<&Move, PlanError> {
        self.moves
            .iter()
            .find(|candidate| candidate.id == *id)
            .ok_or_else(|| PlanError::NoSuchMove { id: id.clone() })
    }
}

impl Effort {
    /// So long once, and nothing for each piece.
    #[must_use]
    pub fn once(set_up: Minutes) -> Self {
        Self {
            set_up,
            per_piece: Minutes::default(),
        }
    }

    /// What it takes with so many pieces left.
    #[must_use]
    pub fn of(self, pieces: usize) -> Minutes {
        self.set_up + self.per_piece.times(pieces)
    }
}
