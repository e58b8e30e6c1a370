//! From a chosen sequence of moves to the rows of a plan.

use crate::blocks::NONE;
use crate::choose::Best;
use crate::ground::change;
use crate::model::Model;
use crate::problem::{Because, Goal, Plan, Planned, Problem};
use crate::rule::{Rule, Set};
use crate::{Minutes, Way};
use states::{ItemId, Position, State};
use std::collections::BTreeSet;

/// Changes of place and tools along a sequence.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default)]
struct Count {
    places: usize,
    tools: usize,
    cost: u32,
}

pub(crate) fn plan(problem: &Problem, model: &Model, best: Best) -> Plan {
    let made: Set = best.out.iter().copied().collect();
    let rules_back: Vec<_> = (0..model.moves.len())
        .map(|index| model.rule_back(index, &made, &Set::default()))
        .collect();
    let only = matches!(problem.goal, Goal::Home(Some(_)));
    let mut sequence = Sequence {
        problem,
        model,
        out: best.out,
        back: best.back,
    };
    sequence.start_early(true, |out| legal(&model.out, out.iter()));
    if !only {
        sequence.place_what_falls_due();
        sequence.start_early(false, |back| legal(&rules_back, back.iter().rev()));
    }
    let off: Vec<_> = (0..sequence.out.len())
        .map(|n| sequence.row_out(n))
        .collect();
    let back: Vec<_> = (0..sequence.back.len())
        .map(|n| Planned {
            because: sequence.because_back(n, &rules_back),
            ..sequence.row_back(n, &made)
        })
        .collect();
    let count = sequence.count();
    Plan {
        minutes: off.iter().chain(&back).map(|row| row.minutes).sum(),
        no_way_back: Vec::new(),
        stays: stubs(problem),
        place_changes: count.places,
        tool_changes: count.tools,
        cost: Minutes::tenths(best.cost),
        bound: Minutes::default(),
        proven: false,
        expansions: 0,
        off,
        back,
    }
}

fn stubs(problem: &Problem) -> Vec<(ItemId, Position)> {
    let pieces = problem
        .items
        .iter()
        .flat_map(|(id, item)| item.stands.iter().map(move |(at, state)| (id, at, state)));
    pieces
        .filter(|(_, _, state)| matches!(state, State::Stub { .. }))
        .map(|(id, at, _)| (id.clone(), *at))
        .collect()
}

/// Whether each move's rule holds when it comes.
fn legal<'a>(rules: &[Rule], mut sequence: impl Iterator<Item = &'a usize>) -> bool {
    let mut done = Set::default();
    sequence.all(|index| {
        let holds = rules[*index].holds(&done);
        done.add(*index);
        holds
    })
}

struct Sequence<'a> {
    problem: &'a Problem,
    model: &'a Model,
    out: Vec<usize>,
    back: Vec<usize>,
}

impl Sequence<'_> {
    /// Moves what runs by itself as far forward as needs allow and changes stay as few.
    fn start_early(&mut self, out: bool, legal: impl Fn(&[usize]) -> bool) {
        let cost = self.count().cost;
        let len = if out { self.out.len() } else { self.back.len() };
        for at in 0..len {
            let now = if out { &self.out } else { &self.back }.clone();
            if !self.model.moves[now[at]].runs_by_itself {
                continue;
            }
            for to in 0..at {
                let mut earlier = now.clone();
                earlier[to..=at].rotate_right(1);
                let keeps_needs = legal(&earlier);
                *(if out { &mut self.out } else { &mut self.back }) = earlier;
                if keeps_needs && self.count().cost <= cost {
                    break;
                }
                (*(if out { &mut self.out } else { &mut self.back })).clone_from(&now);
            }
        }
    }

    /// Work falls due right after the first move that owes it, never before.
    fn place_what_falls_due(&mut self) {
        let model = self.model;
        let owed: Set = model
            .owing
            .keys()
            .flat_map(|work| model.chains[work].open())
            .collect();
        let all = std::mem::take(&mut self.out);
        let chosen: Set = all.iter().copied().collect();
        let mut placed = Set::default();
        for index in all.iter().filter(|index| !owed.has(**index)) {
            self.out.push(*index);
            for due in model.falls_due(*index).filter(|due| chosen.has(*due)) {
                if !placed.has(due) {
                    placed.add(due);
                    self.out.push(due);
                }
            }
        }
        // What was asked for by itself.
        self.out.extend(
            all.iter()
                .filter(|index| owed.has(**index) && !placed.has(**index)),
        );
    }

    fn count(&self) -> Count {
        let model = self.model;
        let start = self.problem.start.as_ref();
        let mut place = model
            .places
            .iter()
            .position(|known| Some(known) == start)
            .unwrap_or(NONE);
        let mut hand = NONE;
        let mut count = Count::default();
        let only = matches!(self.problem.goal, Goal::Home(Some(_)));
        let out = self.out.iter().map(|index| {
            let out = (model.place_out[*index], model.tools_out[*index]);
            let back = (model.place_of[*index], model.tools_of[*index]);
            if only { back } else { out }
        });
        let back = self
            .back
            .iter()
            .map(|index| (model.place_of[*index], model.tools_of[*index]));
        for (next_place, next_hand) in out.chain(back) {
            count.cost += change(&model.place_costs, place, next_place)
                + change(&model.tool_costs, hand, next_hand);
            if next_place != NONE {
                count.places += usize::from(place != NONE && place != next_place);
                place = next_place;
            }
            if next_hand != NONE {
                if hand != NONE {
                    count.tools += model.hands[next_hand]
                        .difference(&model.hands[hand])
                        .count();
                }
                hand = next_hand;
            }
        }
        count
    }

    fn row_out(&self, n: usize) -> Planned {
        let index = self.out[n];
        let step = &self.model.moves[index];
        let chain = &self.model.chains[&step.item];
        let link = chain.moves.iter().find(|link| link.index == index);
        let link = link.expect("a chosen move stands in the chain of its item");
        let at = chain.moved_out(*link);
        Planned {
            minutes: step.out.of(at.len()),
            to: chain.leaves(*link, true),
            because: self.because_out(n),
            place: step
                .place
                .clone()
                .filter(|_| self.model.place_out[index] != NONE),
            tools: match self.model.tools_out[index] {
                NONE => BTreeSet::new(),
                _ => step.tools.clone(),
            },
            ..self.row(index, Way::Out, at)
        }
    }

    fn row_back(&self, n: usize, made: &Set) -> Planned {
        let index = self.back[n];
        let step = &self.model.moves[index];
        let chain = &self.model.chains[&step.item];
        let link = chain.moves.iter().find(|link| link.index == index);
        let link = link.expect("a chosen move stands in the chain of its item");
        let at = chain.moved_back(self.model.out_of(chain, made), *link);
        Planned {
            minutes: step.back.of(at.len()),
            to: chain.leaves(*link, false),
            place: step.place_back().cloned(),
            ..self.row(index, Way::Back, at)
        }
    }

    fn row(&self, index: usize, way: Way, at: Vec<Position>) -> Planned {
        let step = &self.model.moves[index];
        Planned {
            id: step.id.clone(),
            item: step.item.clone(),
            at,
            way,
            to: step.to,
            place: step.place.clone(),
            tools: step.tools.clone(),
            minutes: Minutes::default(),
            because: self.because_home(&step.item),
        }
    }

    fn because_home(&self, item: &ItemId) -> Because {
        match &self.problem.goal {
            Goal::Home(Some(items)) if !items.contains(item) => Because::AskedFor,
            _ => Because::Home,
        }
    }

    /// The work it does, else the move that could not be taken back before it.
    fn because_back(&self, n: usize, rules_back: &[Rule]) -> Because {
        let model = self.model;
        let index = self.back[n];
        let own = self.because_home(&model.moves[index].item);
        if own == Because::AskedFor {
            return own;
        }
        let work = &model.moves[index].item;
        let owes = |step: &usize| model.moves[*step].makes_due.contains(work);
        let falls = |step: &usize| model.falls_due(*step).any(|due| due == index);
        let made = self.out.iter().copied();
        let owing = made.clone().find(falls).or_else(|| made.clone().find(owes));
        // In the middle of a job what owes it was made before.
        if let Some(step) = owing.or_else(|| (0..model.moves.len()).find(owes)) {
            return Because::Owed(model.moves[step].id.clone());
        }
        let still_out = |at: usize| -> Set { self.back[at + 1..].iter().copied().collect() };
        let here = still_out(n);
        let waits = |later: &usize| {
            let next = self.back[*later];
            // It could not be taken back with this one still out, or this one not after it.
            let there = still_out(*later);
            let rule = &rules_back[next];
            let asks = rule.holds(&there) && !rule.holds(&there.with(index));
            let mut without = here;
            without.remove(next);
            asks || !rules_back[index].holds(&without)
        };
        (n + 1..self.back.len()).find(waits).map_or(own, |later| {
            Because::LetsBack(model.moves[self.back[later]].id.clone())
        })
    }

    /// The target it brings about, else the move that could not be made without it.
    fn because_out(&self, n: usize) -> Because {
        let model = self.model;
        let index = self.out[n];
        if let Some(item) = self.target_of(index) {
            return Because::Target(item);
        }
        let later = &self.out[n + 1..];
        let makes_due = |step: &&usize| model.falls_due(**step).any(|due| due == index);
        if let Some(step) = self.out.iter().find(makes_due) {
            return Because::MadeDue(model.moves[*step].id.clone());
        }
        let mut others: Set = self.out.iter().copied().collect();
        others.remove(index);
        let asks = |step: &&usize| {
            let mut asked = Set::default();
            model.out[**step].asked(&mut asked);
            asked.has(index)
        };
        let stops = |step: &&usize| asks(step) && !model.out[**step].held(&others);
        later
            .iter()
            .find(stops)
            .or_else(|| later.iter().find(asks))
            .map_or(Because::AskedFor, |step| {
                Because::Needed(model.moves[*step].id.clone())
            })
    }

    fn target_of(&self, index: usize) -> Option<ItemId> {
        let Goal::Reach(targets) = &self.problem.goal else {
            return None;
        };
        targets
            .iter()
            .find(|target| {
                let mut asked = Set::default();
                let none = BTreeSet::new();
                let states = if target.item == self.model.chain_of[index] {
                    &target.states
                } else {
                    &none
                };
                self.model
                    .point_out(&target.item, &[], states)
                    .asked(&mut asked);
                asked.has(index)
            })
            .map(|target| target.item.clone())
    }
}
