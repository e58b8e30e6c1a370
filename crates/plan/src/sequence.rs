//! The cheapest sequence of a chosen set of moves.

use crate::blocks::{Blocks, NONE};
use crate::layered::{Layered, Next};
use crate::rule::{Held, Rule, Set};

/// What was done, and where one stands with what in hand.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
pub(crate) struct Stand {
    pub done: Set,
    pub place: usize,
    pub hand: usize,
}

/// A set of moves to bring into sequence, their rules, and what changes cost.
pub(crate) struct Sequence<'a> {
    rules: &'a [Rule],
    /// The rules that hold for ever once they held, in the form that is asked most often.
    lasting: Vec<Option<Held>>,
    /// The moves whose rules may hold and then hold no longer: what came too early leaves one of
    /// them undone for ever.
    fragile: Vec<usize>,
    wanted: Set,
    place_of: &'a [usize],
    tools_of: &'a [usize],
    place_costs: &'a [Vec<u32>],
    tool_costs: &'a [Vec<u32>],
    spoilers: Set,
    places: Blocks,
    hands: Blocks,
    /// Where it may start, with what was spent until then.
    pub starts: Vec<(usize, usize, u32)>,
    /// Where it may end, with what comes afterwards; empty if the end is free.
    pub ends: Vec<(usize, usize, u32)>,
}

/// Where moves are made, with what, and what changes cost.
#[derive(Clone, Copy)]
pub(crate) struct Ground<'a> {
    pub place_of: &'a [usize],
    pub tools_of: &'a [usize],
    pub place_costs: &'a [Vec<u32>],
    pub tool_costs: &'a [Vec<u32>],
}

/// What a change between two classes costs.
pub(crate) fn change(costs: &[Vec<u32>], from: usize, to: usize) -> u32 {
    if from == NONE || to == NONE {
        return 0;
    }
    costs[from][to]
}

impl<'a> Sequence<'a> {
    pub(crate) fn new(rules: &'a [Rule], wanted: Set, ground: Ground<'a>, most: usize) -> Self {
        let mut spoilers = Set::default();
        for index in wanted.iter() {
            rules[index].spoilers(&mut spoilers);
        }
        let lasting = |(index, rule): (usize, &Rule)| {
            (wanted.has(index) && rule.is_lasting()).then(|| Held::new(rule))
        };
        let fragile = wanted.iter().filter(|index| !rules[*index].is_lasting());
        Self {
            rules,
            fragile: fragile.collect(),
            lasting: rules.iter().enumerate().map(lasting).collect(),
            wanted,
            spoilers,
            places: Blocks::new(rules, wanted, ground.place_of, ground.place_costs, most),
            hands: Blocks::new(rules, wanted, ground.tools_of, ground.tool_costs, most),
            place_of: ground.place_of,
            tools_of: ground.tools_of,
            place_costs: ground.place_costs,
            tool_costs: ground.tool_costs,
            starts: vec![(NONE, NONE, 0)],
            ends: Vec::new(),
        }
    }

    /// How many states the bounds looked at.
    pub(crate) fn looked_at(&self) -> u64 {
        self.places.looked_at() + self.hands.looked_at()
    }

    /// What the changes cost at least when these count as done at the start.
    pub(crate) fn least(&mut self, done: &Set) -> Option<u32> {
        let starts = self.starts.clone();
        starts
            .into_iter()
            .filter_map(|(place, hand, spent)| Some(spent + self.rest(done, place, hand)?))
            .min()
    }

    fn rest(&mut self, done: &Set, place: usize, hand: usize) -> Option<u32> {
        let places = self.places.rest(done, place)?;
        let hands = self.hands.rest(done, hand)?;
        Some(places + hands)
    }

    /// What it costs to come from one stand to a place with something in hand.
    pub(crate) fn turn(&self, from: &Stand, place: usize, hand: usize) -> u32 {
        change(self.place_costs, from.place, place) + change(self.tool_costs, from.hand, hand)
    }

    /// Whether a move can be made when exactly these have been.
    fn can(&self, index: usize, done: &Set) -> bool {
        match &self.lasting[index] {
            Some(held) => held.by(done),
            None => self.rules[index].holds(done),
        }
    }

    fn to(&self, from: &Stand, index: usize) -> Next<Stand> {
        let (place, hand) = (self.place_of[index], self.tools_of[index]);
        let keep = |new: usize, old: usize| if new == NONE { old } else { new };
        Next {
            label: index,
            cost: self.turn(from, place, hand),
            state: Stand {
                done: from.done.with(index),
                place: keep(place, from.place),
                hand: keep(hand, from.hand),
            },
        }
    }
}

impl Layered for Sequence<'_> {
    type State = Stand;

    fn steps(&self) -> usize {
        self.wanted.len()
    }

    fn starts(&mut self) -> Vec<(Stand, u32)> {
        let stand = |(place, hand, spent): &(usize, usize, u32)| {
            let done = Set::default();
            (
                Stand {
                    done,
                    place: *place,
                    hand: *hand,
                },
                *spent,
            )
        };
        self.starts.iter().map(stand).collect()
    }

    /// A move that changes nothing about place and hand, and after which no need that
    /// held is broken, is made at once: leaving it for later can save nothing.
    fn follow(&mut self, from: &Stand, into: &mut Vec<Next<Stand>>) {
        for index in self.wanted.minus(&from.done).iter() {
            if !self.can(index, &from.done) {
                continue;
            }
            let next = self.to(from, index);
            let stays = next.state.place == from.place && next.state.hand == from.hand;
            if stays && !self.spoilers.has(index) {
                into.clear();
                into.push(next);
                return;
            }
            into.push(next);
        }
    }

    fn bound(&mut self, state: &Stand) -> Option<u32> {
        let lost =
            |index: &usize| !state.done.has(*index) && !self.rules[*index].may_hold(&state.done);
        if self.fragile.iter().any(lost) {
            return None;
        }
        let rest = self.rest(&state.done, state.place, state.hand)?;
        let end = self.ends.iter().map(|(_, _, after)| *after).min();
        Some(rest + end.unwrap_or(0))
    }

    fn ending(&mut self, state: &Stand) -> u32 {
        self.ends
            .iter()
            .map(|(place, hand, after)| after + self.turn(state, *place, *hand))
            .min()
            .unwrap_or(0)
    }
}
