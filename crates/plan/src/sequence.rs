//! The cheapest sequence of a chosen set of moves.

use crate::blocks::{Blocks, NONE};
use crate::forced::reached;
use crate::ground::Ground;
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
    /// For each move the others whose needs it may break.
    breaks: Vec<Set>,
    wanted: Set,
    ground: &'a Ground,
    at_place: Vec<Set>,
    with_hand: Vec<Set>,
    without_hand: Set,
    places: Blocks,
    hands: Blocks,
    /// Where it may start, with what was spent until then.
    pub starts: Vec<(usize, usize, u32)>,
    /// Where it may end, with what comes afterwards; empty if the end is free.
    pub ends: Vec<(usize, usize, u32)>,
    /// What may be in hand first after a free end.
    pub first_after: Set,
}

impl<'a> Sequence<'a> {
    pub(crate) fn new(rules: &'a [Rule], wanted: Set, ground: &'a Ground, most: usize) -> Self {
        let mut breaks = vec![Set::default(); rules.len()];
        for index in wanted.iter() {
            let mut spoilers = Set::default();
            rules[index].spoilers(&mut spoilers);
            for spoiler in spoilers.iter() {
                breaks[spoiler].add(index);
            }
        }
        let lasting = |(index, rule): (usize, &Rule)| {
            (wanted.has(index) && rule.is_lasting()).then(|| Held::new(rule))
        };
        let fragile = wanted.iter().filter(|index| !rules[*index].is_lasting());
        let (place_of, tools_of) = (&ground.place_of, &ground.tools_of);
        let (places, hands) = (&ground.places.costs, &ground.hands.costs);
        let without_hand = wanted.iter().filter(|index| tools_of[*index] == NONE);
        Self {
            rules,
            fragile: fragile.collect(),
            lasting: rules.iter().enumerate().map(lasting).collect(),
            breaks,
            at_place: classes(wanted, place_of, places.len()),
            with_hand: classes(wanted, tools_of, hands.len()),
            without_hand: without_hand.collect(),
            places: Blocks::new(rules, wanted, place_of, places, most),
            hands: Blocks::new(rules, wanted, tools_of, hands, most),
            wanted,
            ground,
            starts: vec![(NONE, NONE, 0)],
            ends: Vec::new(),
            first_after: Set::default(),
        }
    }

    /// What may be in hand first or, read from the end, last: each set of tools for which some move
    /// is needed by none that asks for tools.
    pub(crate) fn hands_at_end(&self) -> Set {
        let with_tools = self.wanted.minus(&self.without_hand);
        let by_none = |index: &usize| {
            let mut others = self.wanted;
            others.remove(*index);
            let mut needed = with_tools;
            needed.remove(*index);
            needed.within(&reached(self.rules, &others))
        };
        let last = with_tools.iter().filter(by_none);
        last.map(|index| self.ground.tools_of[index]).collect()
    }

    /// Whether what can be done here with this in hand is best done now: it is all that is left for
    /// it anywhere, so it has to be taken in hand once in any case, and now is as cheap as ever.
    ///
    /// Whatever way follows, the same way with these moves made first costs no more: to take this
    /// in hand now before whatever comes next costs at most what leaving it out later saves. That
    /// does not hold where what is in hand now may be used first all the same, or where the end asks
    /// for this hand.
    fn is_finished_by(&self, from: &Stand, hand: usize) -> bool {
        let place = from.place;
        if hand == NONE || place == NONE || hand == from.hand {
            return false;
        }
        if !self.ground.places.may_leave_out(place)
            || !self.ground.hands.now_as_later(from.hand, hand)
        {
            return false;
        }
        let elsewhere = |moves: &Set| !moves.within(&self.at_place[place]);
        let held = match self.with_hand.get(from.hand) {
            Some(moves) => moves.minus(&from.done),
            None => Set::default(),
        };
        let by_hand_alone = self.without_hand.minus(&from.done);
        let goes_on = |moves: &Set| moves.iter().any(|index| self.can(index, &from.done));
        let used_first = !held.is_empty()
            && (elsewhere(&held.or(&by_hand_alone)) || goes_on(&held.or(&by_hand_alone)));
        let left = self.with_hand[hand].minus(&from.done);
        let wanted_at_end =
            self.first_after.has(hand) || self.ends.iter().any(|(_, end, _)| *end == hand);
        if used_first || wanted_at_end || elsewhere(&left) {
            return false;
        }
        let mut here = left.or(&self
            .without_hand
            .and(&self.at_place[place])
            .minus(&from.done));
        let mut done = from.done;
        loop {
            let can = here.iter().filter(|index| self.can(*index, &done));
            let more: Set = can.collect();
            if more.is_empty() {
                return left.within(&done);
            }
            for index in more.iter() {
                if self.may_break(index, &done) {
                    return false;
                }
                done.add(index);
            }
            here = here.minus(&more);
        }
    }

    /// Whether making a move now may break what one still to be made needs.
    fn may_break(&self, index: usize, done: &Set) -> bool {
        !self.breaks[index].within(done)
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
        self.ground.places.cost(from.place, place) + self.ground.hands.cost(from.hand, hand)
    }

    /// Whether a move can be made when exactly these have been.
    fn can(&self, index: usize, done: &Set) -> bool {
        match &self.lasting[index] {
            Some(held) => held.by(done),
            None => self.rules[index].holds(done),
        }
    }

    fn to(&self, from: &Stand, index: usize) -> Next<Stand> {
        let (place, hand) = (self.ground.place_of[index], self.ground.tools_of[index]);
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
            if stays && !self.may_break(index, &from.done) {
                into.clear();
                into.push(next);
                return;
            }
            if next.state.place == from.place && self.is_finished_by(from, next.state.hand) {
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

/// The moves of each class.
fn classes(wanted: Set, class_of: &[usize], count: usize) -> Vec<Set> {
    let of = |class: usize| {
        wanted
            .iter()
            .filter(|index| class_of[*index] == class)
            .collect()
    };
    (0..count).map(of).collect()
}
