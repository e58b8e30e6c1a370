//! Plans against a search over whole plans that knows nothing of rules, choices or
//! bounds: every item's pieces, every place, every hand.

#![allow(clippy::unwrap_used, reason = "a test that cannot go on should stop")]

mod common;

use common::{Size, random_map};
use plan::{Budget, Goal, Move, Place, Problem, Tool, bench, plan, steps};
use states::{ItemId, Kind, Need, Position, State};
use std::cmp::Reverse;
use std::collections::{BTreeMap, BTreeSet, BinaryHeap, HashMap};

type Pieces = BTreeMap<Position, State>;

/// The pieces of one item in every way they may come to stand, and the moves between.
#[derive(Default)]
struct Walk {
    stands: Vec<Pieces>,
    out: Vec<Vec<Arc>>,
    back: Vec<Vec<Arc>>,
}

struct Arc {
    step: usize,
    to: usize,
    cost: u32,
}

fn rungs(kind: Kind, state: State) -> Option<usize> {
    let ladder: &[&[State]] = match kind {
        Kind::Fasteners => &[
            &[State::Tight],
            &[State::Cracked, State::Loose { passes: 0 }],
            &[State::Out],
        ],
        _ => return Some(usize::from(state != kind.home())),
    };
    ladder.iter().position(|rung| rung.contains(&state))
}

fn walk(problem: &Problem, id: &ItemId) -> Walk {
    let item = &problem.items[id];
    let rung = |state: State| rungs(item.kind, state);
    let mut walk = Walk {
        stands: vec![item.stands.clone()],
        ..Walk::default()
    };
    let mut at = 0;
    while at < walk.stands.len() {
        let pieces = walk.stands[at].clone();
        let (mut out, mut back) = (Vec::new(), Vec::new());
        for (step, a_move) in problem.moves.iter().enumerate() {
            if a_move.item != *id {
                continue;
            }
            let (near, far) = (rung(a_move.from), rung(a_move.to));
            let ready = pieces.values().all(|state| rung(*state) >= near);
            let nearer = |state: State| rung(state) < far;
            let outermost = pieces.values().all(|state| rung(*state) <= far);
            let farther = |state: State| rung(state) > near;
            let home = match near {
                Some(0) => item.kind.home(),
                _ => State::Loose { passes: 0 },
            };
            let mut go = |moves: &dyn Fn(State) -> bool,
                          to: State,
                          cost: u32,
                          each: u32,
                          arcs: &mut Vec<Arc>| {
                let count = pieces.values().filter(|state| moves(**state)).count();
                if count == 0 {
                    return;
                }
                let next: Pieces = pieces
                    .iter()
                    .map(|(at, state)| (*at, if moves(*state) { to } else { *state }))
                    .collect();
                let to = walk
                    .stands
                    .iter()
                    .position(|known| *known == next)
                    .unwrap_or_else(|| {
                        walk.stands.push(next);
                        walk.stands.len() - 1
                    });
                let cost = cost + each * u32::try_from(count).unwrap();
                arcs.push(Arc { step, to, cost });
            };
            let cost = |a_move: &Move| a_move.out.set_up + a_move.lost + a_move.snag_risk;
            if ready {
                let each = a_move.out.per_piece.in_tenths();
                go(&nearer, a_move.to, cost(a_move).in_tenths(), each, &mut out);
            }
            if outermost {
                let each = a_move.back.per_piece.in_tenths();
                go(
                    &farther,
                    home,
                    a_move.back.set_up.in_tenths(),
                    each,
                    &mut back,
                );
            }
        }
        walk.out.push(out);
        walk.back.push(back);
        at += 1;
    }
    walk
}

#[derive(Clone, PartialEq, Eq, Hash, PartialOrd, Ord)]
struct Here {
    stands: Vec<usize>,
    going_back: bool,
    place: Option<Place>,
    hand: Option<BTreeSet<Tool>>,
}

struct Brute<'a> {
    problem: &'a Problem,
    ids: Vec<&'a ItemId>,
    walks: Vec<Walk>,
}

impl<'a> Brute<'a> {
    fn new(problem: &'a Problem) -> Self {
        let ids: Vec<_> = problem.items.keys().collect();
        let walks = ids.iter().map(|id| walk(problem, id)).collect();
        Self {
            problem,
            ids,
            walks,
        }
    }

    fn holds(&self, need: &Need, here: &Here) -> bool {
        match need {
            Need::Is { item, .. } => {
                let n = self.ids.binary_search(&item).unwrap();
                let pieces = &self.walks[n].stands[here.stands[n]];
                need.holds(&|_: &ItemId| pieces.iter().map(|(at, state)| (*at, *state)).collect())
            }
            Need::All(needs) => needs.iter().all(|need| self.holds(need, here)),
            Need::Any(needs) => needs.iter().any(|need| self.holds(need, here)),
        }
    }

    fn is_due(&self, work: &ItemId, here: &Here) -> bool {
        let n = self.ids.binary_search(&work).unwrap();
        self.walks[n].stands[here.stands[n]][&1] == State::Due
    }

    fn is_work(&self, item: &ItemId) -> bool {
        self.problem.items[item].kind == Kind::Work
    }

    /// Work done at the start that a move by hand, still to be made at the start, makes due,
    /// perhaps by way of other such work: it falls due with that move alone.
    fn owed(&self) -> BTreeSet<&ItemId> {
        let mut owed = BTreeSet::new();
        let open = |a_move: &&Move| {
            let pieces = &self.problem.items[&a_move.item];
            let far = rungs(pieces.kind, a_move.to);
            pieces
                .stands
                .values()
                .any(|state| rungs(pieces.kind, *state).is_some_and(|rung| Some(rung) < far))
        };
        let free = |a_move: &&Move| !self.is_work(&a_move.item) || !open(a_move);
        let mut waiting: Vec<&ItemId> = self
            .problem
            .moves
            .iter()
            .filter(open)
            .filter(free)
            .flat_map(|a_move| &a_move.makes_due)
            .collect();
        while let Some(work) = waiting.pop() {
            let done = self.problem.items[work].stands[&1] == State::Done;
            if done && owed.insert(work) {
                let own = self
                    .problem
                    .moves
                    .iter()
                    .filter(|a_move| a_move.item == *work);
                waiting.extend(own.flat_map(|a_move| &a_move.makes_due));
            }
        }
        owed
    }

    /// Every owed work that a move makes due falls due, at what that costs, and nowhere.
    fn let_fall_due(&self, a_move: &Move, there: &mut Here) -> u32 {
        let mut cost = 0;
        let mut waiting: Vec<&ItemId> = a_move.makes_due.iter().collect();
        while let Some(work) = waiting.pop() {
            let n = self.ids.binary_search(&work).unwrap();
            if !self.owed().contains(work) || self.is_due(work, there) {
                continue;
            }
            let arc = &self.walks[n].out[there.stands[n]][0];
            there.stands[n] = arc.to;
            cost += arc.cost;
            waiting.extend(&self.problem.moves[arc.step].makes_due);
        }
        cost
    }

    fn place_cost(&self, from: Option<&Place>, to: &Place) -> u32 {
        let Some(from) = from else { return 0 };
        let stated = |from: &Place, to: &Place| {
            let key = (from.clone(), to.clone());
            self.problem.changes.between.get(&key)
        };
        let walk = stated(from, to).or_else(|| stated(to, from));
        match from == to {
            true => 0,
            false => walk.unwrap_or(&self.problem.changes.place).in_tenths(),
        }
    }

    /// What the move adds, and where it leads.
    fn go(&self, here: &Here, item: usize, arc: &Arc) -> (u32, Here) {
        let a_move = &self.problem.moves[arc.step];
        let mut next = here.clone();
        let mut cost = arc.cost;
        next.stands[item] = arc.to;
        if !here.going_back {
            cost += self.let_fall_due(a_move, &mut next);
            if self.is_work(&a_move.item) {
                return (cost, next);
            }
        }
        let other = a_move.back_place.as_ref().filter(|_| here.going_back);
        if let Some(place) = other.or(a_move.place.as_ref()) {
            cost += self.place_cost(here.place.as_ref(), place);
            next.place = Some(place.clone());
        }
        if !a_move.tools.is_empty() {
            if let Some(hand) = &here.hand {
                let taken = a_move.tools.difference(hand).count();
                cost += self.problem.changes.tool.times(taken).in_tenths();
            }
            next.hand = Some(a_move.tools.clone());
        }
        (cost, next)
    }

    fn target_reached(&self, here: &Here) -> bool {
        let Goal::Reach(targets) = &self.problem.goal else {
            return false;
        };
        targets.iter().all(|target| {
            let need = Need::Is {
                item: target.item.clone(),
                at: Vec::new(),
                states: target.states.clone(),
            };
            self.holds(&need, here)
        })
    }

    fn cheapest(&self) -> Option<u32> {
        let start = Here {
            stands: vec![0; self.ids.len()],
            going_back: false,
            place: self.problem.start.clone(),
            hand: None,
        };
        let owed = self.owed();
        let mut best = HashMap::from([(start.clone(), 0)]);
        let mut heap = BinaryHeap::from([Reverse((0, start))]);
        while let Some(Reverse((cost, here))) = heap.pop() {
            if best[&here] < cost {
                continue;
            }
            let mut next = Vec::new();
            for (n, walk) in self.walks.iter().enumerate() {
                let arcs = if here.going_back {
                    &walk.back
                } else {
                    &walk.out
                };
                for arc in &arcs[here.stands[n]] {
                    let a_move = &self.problem.moves[arc.step];
                    let need = match &a_move.back_need {
                        Some(need) if here.going_back => need,
                        _ => &a_move.need,
                    };
                    let falls_due = !here.going_back && self.is_work(&a_move.item);
                    if falls_due && owed.contains(&a_move.item) {
                        continue;
                    }
                    let free = a_move.makes_due.iter().filter(|work| !owed.contains(work));
                    let due =
                        here.going_back || free.into_iter().all(|work| self.is_due(work, &here));
                    if due && (falls_due || self.holds(need, &here)) {
                        next.push(self.go(&here, n, arc));
                    }
                }
            }
            if here.going_back {
                let all_home = |n: usize| self.walks[n].back[here.stands[n]].is_empty();
                if (0..self.ids.len()).all(all_home) {
                    return Some(cost);
                }
            } else if self.target_reached(&here) {
                let going_back = true;
                next.push((
                    0,
                    Here {
                        going_back,
                        ..here.clone()
                    },
                ));
            }
            for (more, there) in next {
                let sum = cost + more;
                let known = best.entry(there.clone()).or_insert(u32::MAX);
                if sum < *known {
                    *known = sum;
                    heap.push(Reverse((sum, there)));
                }
            }
        }
        None
    }
}

fn size(seed: u64) -> Size {
    // Four to nine items, every twentieth map has twelve.
    let items = match seed % 20 {
        0 => 12,
        _ => 4 + usize::try_from(seed % 6).unwrap(),
    };
    Size {
        items,
        places: 2 + usize::try_from(seed % 3).unwrap(),
        tools: 2 + usize::try_from(seed % 4).unwrap(),
        targets: usize::from(seed.is_multiple_of(3)),
        all_sorts: !seed.is_multiple_of(4),
    }
}

#[test]
fn every_plan_costs_what_the_cheapest_whole_plan_costs() {
    let (mut planned, mut impossible) = (0, 0);
    // A step that was done too soon in the search showed on five of these only: the first is 1918.
    for seed in 0..4_000 {
        let problem = random_map(seed, size(seed));
        let cheapest = Brute::new(&problem).cheapest();
        let found = plan(&problem, Budget::default());
        let cost = found
            .as_ref()
            .ok()
            .filter(|plan| plan.no_way_back.is_empty())
            .map(|plan| plan.cost.in_tenths());
        assert_eq!(cost, cheapest, "seed {seed}: {found:?}");
        if let Ok(plan) = &found {
            assert!(plan.proven && plan.bound == plan.cost, "seed {seed}");
        }
        planned += usize::from(cost.is_some());
        impossible += usize::from(cost.is_none());
    }
    assert!(
        planned > 2_800 && impossible > 80,
        "{planned} planned, {impossible} impossible"
    );
}

#[test]
fn every_plan_runs_on_the_plain_executor_and_brings_everything_home() {
    for seed in 0..500 {
        let problem = random_map(seed, size(seed));
        let Ok(plan) = plan(&problem, Budget::default()) else {
            continue;
        };
        let mut bench = bench(&problem);
        for step in steps(&problem, &plan).unwrap() {
            let made = bench.step(&step);
            assert!(made.is_ok(), "seed {seed}: {made:?}");
        }
        if plan.no_way_back.is_empty() {
            assert!(bench.away_from_home().is_empty(), "seed {seed}");
        }
    }
}

#[test]
fn maps_of_forty_moves_are_proven_cheapest() {
    for seed in 0..10 {
        let size = Size {
            items: 36,
            places: 4,
            tools: 8,
            targets: 2,
            all_sorts: false,
        };
        let plan = plan(&random_map(seed, size), Budget::default()).unwrap();
        assert!(plan.proven, "seed {seed}: gap {}", plan.gap());
    }
}
