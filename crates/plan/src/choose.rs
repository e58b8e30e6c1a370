//! Which moves to make: branching on open alternatives, each choice brought into its
//! cheapest sequence, until no choice left can cost less than the best found.

use crate::blocks::NONE;
use crate::forced::{Forced, reached};
use crate::ground::Ground;
use crate::layered::{Outcome, pass};
use crate::model::Model;
use crate::rule::{Rule, Set};
use crate::sequence::{Sequence, Stand};
use rustc_hash::FxHashMap;
use std::cmp::Reverse;
use std::collections::BinaryHeap;

/// Widths of the search in layers, from a first idea to a proof.
const WIDTHS: [usize; 5] = [8, 64, 1_000, 30_000, usize::MAX];

/// How many states a bound may look at: little for a choice still open, much where
/// every state of a search in layers asks for it.
const LOOK_OPEN: usize = 1_000;
const LOOK_SEQUENCE: usize = 20_000;

/// What is chosen from.
pub(crate) struct Choice<'a> {
    pub model: &'a Model,
    /// The rule of each move, in the direction that is chosen.
    pub rules: &'a [Rule],
    /// What each move adds to the cost.
    pub cost: &'a [u32],
    /// What is spent in any case.
    pub spent: u32,
    /// The moves that may be chosen.
    pub allowed: Set,
    pub goal: Rule,
    /// Whether everything is then brought home.
    pub and_back: bool,
    pub start: usize,
    /// Where moves are made and with what, in the direction that is chosen.
    pub ground: Ground,
}

/// The best choice found.
#[derive(Debug, Clone)]
pub(crate) struct Best {
    pub cost: u32,
    pub out: Vec<usize>,
    pub back: Vec<usize>,
}

/// What the search ended with.
pub(crate) struct Chosen {
    pub best: Option<Best>,
    /// No choice costs less, whether found or not.
    pub bound: u32,
    pub complete: bool,
}

struct Node {
    chosen: Set,
    /// Moves that may still be chosen.
    undecided: Set,
}

struct Search<'a> {
    choice: &'a Choice<'a>,
    ground_back: Ground,
    best: Option<Best>,
    /// The least bound of anything left unsearched.
    cut: u32,
    budget: u64,
    /// How many of the widths each set was brought into sequence by.
    passed: FxHashMap<Set, usize>,
}

pub(crate) fn choose(choice: &Choice, budget: &mut u64) -> Chosen {
    let mut search = Search {
        choice,
        ground_back: Ground::back(choice.model),
        best: None,
        cut: u32::MAX,
        budget: *budget,
        passed: FxHashMap::default(),
    };
    let mut heap = BinaryHeap::new();
    let mut nodes: Vec<Option<Node>> = Vec::new();
    let root = Node {
        chosen: Set::default(),
        undecided: choice.allowed,
    };
    search.idea(&root);
    let mut looked_at = 0_usize;
    search.offer(root, &mut heap, &mut nodes);
    while let Some((Reverse(bound), Reverse(at))) = heap.pop() {
        if bound >= search.limit() {
            break;
        }
        if search.budget == 0 {
            search.cut = search.cut.min(bound);
            break;
        }
        let Some(node) = nodes[at].take() else {
            continue;
        };
        looked_at += 1;
        if looked_at.is_power_of_two() {
            search.idea(&node);
        }
        for child in search.branch(&node) {
            search.offer(child, &mut heap, &mut nodes);
        }
    }
    *budget = search.budget;
    let found = search.limit();
    Chosen {
        bound: found.min(search.cut),
        complete: search.cut >= found,
        best: search.best,
    }
}

impl Search<'_> {
    fn limit(&self) -> u32 {
        self.best.as_ref().map_or(u32::MAX, |best| best.cost)
    }

    fn price(&self, set: &Set) -> u32 {
        set.iter().map(|index| self.choice.cost[index]).sum()
    }

    /// The rules of what is chosen, and the goal.
    fn open_rules<'b>(&'b self, chosen: &Set) -> impl Iterator<Item = &'b Rule> + use<'b> {
        let chosen = chosen.iter().map(|index| &self.choice.rules[index]);
        chosen.chain([&self.choice.goal])
    }

    /// Adds what is forced, and puts the node on the heap unless it cannot be better
    /// than the best.
    fn offer(
        &mut self,
        mut node: Node,
        heap: &mut BinaryHeap<(Reverse<u32>, Reverse<usize>)>,
        nodes: &mut Vec<Option<Node>>,
    ) {
        self.budget = self.budget.saturating_sub(1);
        let choice = self.choice;
        let forced = Forced::new(choice.rules, &node.chosen.or(&node.undecided));
        let Some(mut all) = forced.by(&choice.goal) else {
            return;
        };
        for index in node.chosen.iter() {
            match forced.by_move(index) {
                Some(set) => all = all.or(&set),
                None => return,
            }
        }
        node.chosen = all;
        node.undecided = node.undecided.minus(&all);
        let extra = forced.least_extra(self.open_rules(&all), &all, choice.cost);
        let sum = choice.spent + self.price(&all) + extra;
        if sum >= self.limit() {
            return;
        }
        let Some(changes) = self.least_changes(&node) else {
            return;
        };
        if sum + changes < self.limit() {
            heap.push((Reverse(sum + changes), Reverse(nodes.len())));
            nodes.push(Some(node));
        }
    }

    /// What changes of place and tools cost at least, undecided moves taken as made.
    fn least_changes(&mut self, node: &Node) -> Option<u32> {
        let choice = self.choice;
        let mut out = sequence_out(choice, node.chosen, LOOK_OPEN);
        let least = out.least(&node.undecided);
        self.look(out.looked_at());
        let least = least?;
        if !choice.and_back {
            return Some(least);
        }
        let rules = self.rules_back(node);
        let wanted = self.to_take_back(&node.chosen);
        let mut back = Sequence::new(&rules, wanted, &self.ground_back, LOOK_OPEN);
        let least_back = back.least(&node.undecided);
        let looked_at = back.looked_at();
        self.look(looked_at);
        Some(least + least_back?)
    }

    /// Takes what a sequence's bounds looked at from the budget.
    fn look(&mut self, looked_at: u64) {
        self.budget = self.budget.saturating_sub(looked_at);
    }

    fn to_take_back(&self, chosen: &Set) -> Set {
        match self.choice.and_back {
            true => self.choice.model.to_take_back(chosen),
            false => Set::default(),
        }
    }

    fn rules_back(&self, node: &Node) -> Vec<Rule> {
        let model = self.choice.model;
        let wanted = self.to_take_back(&node.chosen);
        (0..model.moves.len())
            .map(|index| match wanted.has(index) {
                true => model.rule_back(index, &node.chosen, &node.undecided),
                false => Rule::NEVER,
            })
            .collect()
    }

    /// The choices that follow: where the goal is not yet supported, each alternative
    /// that may support it, without those before it; where it is, each move more that
    /// could let a chosen one be made sooner.
    fn branch(&mut self, node: &Node) -> Vec<Node> {
        let reached = reached(self.choice.rules, &node.chosen);
        let supported = node.chosen == reached && self.choice.goal.held(&reached);
        if supported {
            let cut = self.bring_into_sequence(&node.chosen, &WIDTHS);
            self.cut = self.cut.min(cut);
        }
        let candidates = match supported {
            true => self
                .asked(node, self.open_rules(&node.chosen))
                .or(&self.asked_on_way_back(node)),
            false => self.missing(node, &reached),
        };
        let mut undecided = node.undecided;
        let mut children = Vec::new();
        for index in candidates.iter() {
            undecided.remove(index);
            children.push(Node {
                chosen: node.chosen.with(index),
                undecided,
            });
        }
        children
    }

    fn asked<'b>(&self, node: &Node, rules: impl Iterator<Item = &'b Rule>) -> Set {
        let mut asked = Set::default();
        rules.for_each(|rule| rule.asked(&mut asked));
        asked.and(&node.undecided)
    }

    /// Undecided moves of items that a need on the way back looks at.
    fn asked_on_way_back(&self, node: &Node) -> Set {
        let model = self.choice.model;
        let back = self.to_take_back(&node.chosen);
        let asked = back
            .iter()
            .map(|index| model.asked_back(index))
            .fold(Set::default(), |all, asked| all.or(&asked));
        asked.and(&node.undecided)
    }

    /// Undecided moves of which at least one must be chosen: those of the rule that
    /// lacks most plainly, or where only a circle is unsupported, those of all its moves.
    fn missing(&self, node: &Node, reached: &Set) -> Set {
        let unsupported = node.chosen.minus(reached);
        let rules = || {
            let moves = unsupported.iter().map(|index| &self.choice.rules[index]);
            moves.chain([&self.choice.goal])
        };
        rules()
            .filter(|rule| !rule.held(&node.chosen))
            .map(|rule| self.asked(node, std::iter::once(rule)))
            .min_by_key(Set::len)
            .unwrap_or_else(|| self.asked(node, rules()))
    }

    /// Completes a choice greedily, so that the search has something to beat.
    fn idea(&mut self, from: &Node) {
        let choice = self.choice;
        let forced = Forced::new(choice.rules, &from.chosen.or(&from.undecided));
        let Some(by_goal) = forced.by(&choice.goal) else {
            return;
        };
        let chosen = by_goal.or(&from.chosen);
        let mut node = Node {
            chosen,
            undecided: from.undecided.minus(&chosen),
        };
        loop {
            let reached = reached(choice.rules, &node.chosen);
            if node.chosen == reached && choice.goal.held(&reached) {
                self.bring_into_sequence(&node.chosen, &WIDTHS[..2]);
                return;
            }
            let cheapest = self
                .missing(&node, &reached)
                .iter()
                .filter_map(|index| forced.by_move(index))
                .min_by_key(|set| self.price(&set.minus(&node.chosen)));
            let Some(cheapest) = cheapest else {
                return;
            };
            node.chosen = node.chosen.or(&cheapest);
            node.undecided = node.undecided.minus(&cheapest);
        }
    }

    /// Finds the cheapest sequence of a set that supports itself, out and back, and
    /// answers what any sequence costs at least that was left unsearched.
    ///
    /// What the way back costs at least is what the way out cannot have, and the other way round,
    /// so that neither is searched beyond what could still pay. Where a pass over the way out
    /// leaves something unsearched, the way back is looked at alone, wherever the way out may end.
    fn bring_into_sequence(&mut self, chosen: &Set, widths: &[usize]) -> u32 {
        let choice = self.choice;
        let node = Node {
            chosen: *chosen,
            undecided: Set::default(),
        };
        let rules = self.rules_back(&node);
        let wanted = self.to_take_back(chosen);
        let mut out = sequence_out(choice, *chosen, LOOK_SEQUENCE);
        let mut back = Sequence::new(&rules, wanted, &self.ground_back, LOOK_SEQUENCE);
        out.first_after = back.hands_at_end();
        let spent = choice.spent + self.price(chosen);
        let (least_out, least_back) = (out.least(&Set::default()), back.least(&Set::default()));
        let (Some(mut least_out), Some(mut least_back)) = (least_out, least_back) else {
            return u32::MAX;
        };
        let mut budget = self.budget;
        let mut cut = 0;
        // The cheapest way back alone that was found, and whether it is proven.
        let mut alone = (u32::MAX, false);
        let done = self.passed.get(chosen).copied().unwrap_or(0);
        for (at, width) in widths.iter().enumerate().skip(done) {
            let limit = self.limit();
            if spent + least_out + least_back >= limit {
                cut = u32::MAX;
                break;
            }
            let below = limit - spent - least_back;
            let ways_out = pass(&mut out, *width, below, &mut budget);
            least_out = least_out.max(ways_out.least(below));
            if spent + least_out + least_back >= limit {
                cut = u32::MAX;
                break;
            }
            if ways_out.cut.is_some() && !alone.1 {
                back.ends.clear();
                let below = alone.0.min(limit - spent - least_out);
                let ways = pass(&mut back, *width, below, &mut budget);
                alone = (ways.cheapest().unwrap_or(below), ways.cut.is_none());
                least_back = least_back.max(ways.least(below));
                if spent + least_out + least_back >= limit {
                    cut = u32::MAX;
                    break;
                }
            }
            let mut left = ways_out
                .cut
                .map_or(u32::MAX, |cut| cut + spent + least_back);
            back.ends = ways_out
                .ways
                .iter()
                .map(|way| (way.state.place, way.state.hand, way.cost))
                .collect();
            if !ways_out.ways.is_empty() {
                let ways_back = pass(&mut back, *width, limit - spent, &mut budget);
                left = left.min(ways_back.cut.map_or(u32::MAX, |cut| cut + spent));
                if let Some(way) = ways_back.ways.first() {
                    self.best = Some(Best {
                        cost: spent + way.cost,
                        out: end_before(&ways_out, &back, &way.state),
                        back: way.labels.iter().rev().copied().collect(),
                    });
                }
            }
            self.passed.insert(*chosen, at + 1);
            // Each pass by itself says what was left at least.
            cut = cut.max(left);
            if cut >= self.limit() || budget == 0 {
                break;
            }
        }
        self.budget = budget.saturating_sub(out.looked_at() + back.looked_at());
        cut
    }
}

fn sequence_out<'a>(choice: &'a Choice, wanted: Set, most: usize) -> Sequence<'a> {
    let mut sequence = Sequence::new(choice.rules, wanted, &choice.ground, most);
    sequence.starts = vec![(choice.start, NONE, 0)];
    sequence
}

/// The way out that the best way back was joined to.
fn end_before(ways_out: &Outcome<Stand>, back: &Sequence, first: &Stand) -> Vec<usize> {
    ways_out
        .ways
        .iter()
        .min_by_key(|way| way.cost + back.turn(first, way.state.place, way.state.hand))
        .map(|way| way.labels.clone())
        .unwrap_or_default()
}
