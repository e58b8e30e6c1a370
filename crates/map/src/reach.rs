//! What can be reached on a map by starting from what is free, if what once held holds
//! for ever. Each move is looked at again only when something it waits for has come.

use crate::value::{Map, MapMove};
use states::{ItemId, Need, State};
use std::collections::btree_map::Entry;
use std::collections::{BTreeMap, BTreeSet, VecDeque};

/// A map's moves, and which of them wait for which item.
pub(crate) struct Reach<'m> {
    steps: Vec<(&'m ItemId, &'m MapMove)>,
    items: BTreeMap<&'m ItemId, usize>,
    homes: Vec<State>,
    /// By item: the moves that start from it or need it.
    waiting: Vec<Vec<usize>>,
    /// By item: its own moves.
    own: Vec<Vec<usize>>,
}

/// What was reached.
pub(crate) struct Reached {
    /// By move: whether it can be made.
    pub made: Vec<bool>,
    /// By item: each state it came to have, with how many moves had been made by then.
    had: Vec<BTreeMap<State, usize>>,
    /// By move: how many had been made before it.
    turn: Vec<usize>,
}

impl<'m> Reach<'m> {
    pub(crate) fn new(map: &'m Map) -> Self {
        let items: BTreeMap<&ItemId, usize> = map
            .items
            .keys()
            .enumerate()
            .map(|(at, id)| (id, at))
            .collect();
        let steps: Vec<_> = map.moves().collect();
        let mut waiting = vec![Vec::new(); items.len()];
        let mut own = vec![Vec::new(); items.len()];
        for (at, (item, step)) in steps.iter().enumerate() {
            let mut asked: BTreeSet<&ItemId> = step.need.items();
            asked.insert(item);
            for item in asked {
                if let Some(item) = items.get(item) {
                    waiting[*item].push(at);
                }
            }
            own[items[*item]].push(at);
        }
        Self {
            homes: map.items.values().map(|item| item.kind.home()).collect(),
            steps,
            items,
            waiting,
            own,
        }
    }

    pub(crate) fn steps(&self) -> &[(&'m ItemId, &'m MapMove)] {
        &self.steps
    }

    /// Everything that can be reached, without one move if one is named; those of
    /// whose alternatives only some hold are left to the last, one at a time, if they are
    /// to come late.
    pub(crate) fn all(&self, without: Option<usize>, late: bool) -> Reached {
        let mut reached = Reached {
            made: vec![false; self.steps.len()],
            had: self.homes.iter().map(|home| [(*home, 0)].into()).collect(),
            turn: vec![usize::MAX; self.steps.len()],
        };
        let mut open: VecDeque<usize> = (0..self.steps.len()).collect();
        let mut put_off: VecDeque<usize> = VecDeque::new();
        let mut turn = 0;
        loop {
            let (at, waited) = match open.pop_front() {
                Some(at) => (at, false),
                None => match put_off.pop_front() {
                    Some(at) => (at, true),
                    None => return reached,
                },
            };
            let (item, step) = self.steps[at];
            let item = self.items[item];
            let ready =
                reached.had[item].contains_key(&step.from) && self.holds(&step.need, &reached);
            if reached.made[at] || Some(at) == without || !ready {
                continue;
            }
            if late && !waited && !self.all_ways_hold(&step.need, &reached) {
                put_off.push_back(at);
                continue;
            }
            turn += 1;
            reached.made[at] = true;
            reached.turn[at] = turn;
            if let Entry::Vacant(new) = reached.had[item].entry(step.to) {
                new.insert(turn);
                open.extend(self.waiting[item].iter().filter(|at| !reached.made[**at]));
            }
        }
    }

    pub(crate) fn holds(&self, need: &Need, reached: &Reached) -> bool {
        self.held_by(need, reached, usize::MAX)
    }

    /// Whether a need held before that move was made.
    pub(crate) fn held(&self, need: &Need, before: usize, reached: &Reached) -> bool {
        self.held_by(need, reached, reached.turn[before])
    }

    fn held_by(&self, need: &Need, reached: &Reached, turn: usize) -> bool {
        match need {
            Need::Is { item, states, .. } => self.items.get(item).is_some_and(|item| {
                let had = &reached.had[*item];
                had.iter()
                    .any(|(state, since)| *since < turn && states.contains(state))
            }),
            Need::All(needs) => needs.iter().all(|need| self.held_by(need, reached, turn)),
            Need::Any(needs) => needs.iter().any(|need| self.held_by(need, reached, turn)),
        }
    }

    /// Whether a need holds by each of its alternatives.
    fn all_ways_hold(&self, need: &Need, reached: &Reached) -> bool {
        match need {
            Need::Is { .. } => self.holds(need, reached),
            Need::All(needs) | Need::Any(needs) => {
                needs.iter().all(|need| self.all_ways_hold(need, reached))
            }
        }
    }

    /// The first part of a move's need that never held.
    pub(crate) fn unmet(&self, at: usize, reached: &Reached) -> Option<&'m Need> {
        self.first_unmet(&self.steps[at].1.need, reached)
    }

    fn first_unmet(&self, need: &'m Need, reached: &Reached) -> Option<&'m Need> {
        match need {
            Need::All(needs) => needs
                .iter()
                .find_map(|need| self.first_unmet(need, reached)),
            Need::Is { .. } | Need::Any(_) => (!self.holds(need, reached)).then_some(need),
        }
    }

    /// A move that cannot be made either and that this one waits for; none if no move
    /// leads to what it needs.
    pub(crate) fn waits_for(&self, at: usize, reached: &Reached) -> Option<usize> {
        let (item, step) = self.steps[at];
        let item = self.items[item];
        let open = |next: &usize| !reached.made[*next];
        if !reached.had[item].contains_key(&step.from) {
            let before = |next: &usize| self.steps[*next].1.to == step.from;
            return self.own[item]
                .iter()
                .copied()
                .find(|next| open(next) && before(next));
        }
        let mut wanted = Vec::new();
        points(self.unmet(at, reached)?, &mut wanted);
        wanted.into_iter().find_map(|(item, states)| {
            let own = &self.own[*self.items.get(item)?];
            let leads = own
                .iter()
                .any(|next| states.contains(&self.steps[*next].1.to));
            own.iter().copied().find(|next| leads && open(next))
        })
    }
}

/// The states that a need asks of each item.
fn points<'n>(need: &'n Need, into: &mut Vec<(&'n ItemId, &'n BTreeSet<State>)>) {
    match need {
        Need::Is { item, states, .. } => into.push((item, states)),
        Need::All(needs) | Need::Any(needs) => needs.iter().for_each(|need| points(need, into)),
    }
}
