//! The way out of one item, move by move, and where its pieces stand along it.

use crate::problem::{Item, Move};
use states::{Kind, Position, State};

/// An item and its moves in their sequence outwards.
#[derive(Debug, Clone)]
pub(crate) struct Chain {
    pub item: Item,
    /// Indices of the moves, and the rungs each joins, counted from home.
    pub moves: Vec<Link>,
    /// How many of the moves have nothing left to move.
    pub made: usize,
}

#[derive(Debug, Clone, Copy)]
pub(crate) struct Link {
    pub index: usize,
    pub near: u8,
    pub far: u8,
}

/// How far from home a state is, in moves of the ladder; nothing for a stub, which
/// no move moves.
pub(crate) fn distance(kind: Kind, state: State) -> Option<u8> {
    match state.rung() {
        State::Stub { .. } => None,
        State::Cracked | State::Loose { .. } => Some(1),
        State::Out if kind == Kind::Fasteners => Some(2),
        other => Some(u8::from(other != kind.home())),
    }
}

/// The state so far from home, for a piece that came from nearer or from farther.
fn at_distance(kind: Kind, distance: u8, going_out: bool) -> State {
    match (kind, distance) {
        (_, 0) => kind.home(),
        (Kind::Fasteners, 1) if going_out => State::Cracked,
        (Kind::Fasteners, 1) => State::Loose { passes: 0 },
        _ => kind.away(),
    }
}

impl Chain {
    pub(crate) fn new(item: &Item, moves: Vec<Link>) -> Self {
        let mut chain = Self {
            item: item.clone(),
            moves,
            made: 0,
        };
        chain.made = chain
            .moves
            .iter()
            .take_while(|link| chain.pieces_nearer(link.far).is_empty())
            .count();
        chain
    }

    fn distance(&self, state: State) -> Option<u8> {
        distance(self.item.kind, state)
    }

    fn pieces_nearer(&self, far: u8) -> Vec<Position> {
        let nearer = |state: &State| self.distance(*state).is_some_and(|at| at < far);
        self.item
            .stands
            .iter()
            .filter(|(_, state)| nearer(state))
            .map(|(position, _)| *position)
            .collect()
    }

    /// The moves that can still be made.
    pub(crate) fn open(&self) -> impl Iterator<Item = usize> + '_ {
        self.moves[self.made..].iter().map(|link| link.index)
    }

    /// Where the pieces stand after the first `out` moves of the chain.
    pub(crate) fn after_out(&self, out: usize) -> Vec<(Position, State)> {
        let reached = match out {
            out if out <= self.made => 0,
            out => self.moves[out - 1].far,
        };
        let stand = |state: State| match self.distance(state) {
            Some(at) if at < reached => at_distance(self.item.kind, reached, true),
            _ => state,
        };
        self.item
            .stands
            .iter()
            .map(|(position, state)| (*position, stand(*state)))
            .collect()
    }

    /// The moves to take back after the first `out` were made, in their sequence out.
    pub(crate) fn to_take_back(&self, out: usize) -> Vec<Link> {
        let stands = self.after_out(out);
        let farther = |near: u8| {
            stands
                .iter()
                .any(|(_, state)| self.distance(*state).is_some_and(|at| at > near))
        };
        self.moves
            .iter()
            .copied()
            .filter(|link| farther(link.near))
            .collect()
    }

    /// Where the pieces stand when all but the first `left` moves to take back have
    /// been taken back.
    pub(crate) fn on_way_back(&self, out: usize, left: usize) -> Vec<(Position, State)> {
        let mut stands = self.after_out(out);
        if let Some(link) = self.to_take_back(out).get(left) {
            for (_, state) in &mut stands {
                if self.distance(*state).is_some_and(|at| at > link.near) {
                    *state = at_distance(self.item.kind, link.near, false);
                }
            }
        }
        stands
    }

    /// The positions that the move at `link` takes out from here.
    pub(crate) fn moved_out(&self, link: Link) -> Vec<Position> {
        self.pieces_nearer(link.far)
    }

    /// The positions that taking the move at `link` back brings nearer.
    pub(crate) fn moved_back(&self, out: usize, link: Link) -> Vec<Position> {
        self.after_out(out)
            .into_iter()
            .filter(|(_, state)| self.distance(*state).is_some_and(|at| at > link.near))
            .map(|(position, _)| position)
            .collect()
    }

    /// The state that the move at `link`, or taking it back, leaves pieces in.
    pub(crate) fn leaves(&self, link: Link, going_out: bool) -> State {
        let distance = if going_out { link.far } else { link.near };
        at_distance(self.item.kind, distance, going_out)
    }

    /// What taking back costs in all after the first `out` moves.
    pub(crate) fn cost_back(&self, moves: &[Move], out: usize) -> u32 {
        self.to_take_back(out)
            .into_iter()
            .map(|link| {
                let effort = moves[link.index].back;
                effort.of(self.moved_back(out, link).len()).in_tenths()
            })
            .sum()
    }
}
