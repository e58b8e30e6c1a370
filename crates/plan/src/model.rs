//! The problem in the form that is searched: moves by index, needs as rules.

use crate::chain::{Chain, Link, distance};
use crate::check::{check_names, check_times};
use crate::problem::{Effort, Move, Problem};
use crate::rule::{Point, Rule, Set};
use crate::{Minutes, MoveId, Place, PlanError, Tool};
use states::{ItemId, Kind, Need, Position, State};
use std::collections::{BTreeMap, BTreeSet};

pub(crate) struct Model {
    pub moves: Vec<Move>,
    pub chains: BTreeMap<ItemId, Chain>,
    pub chain_of: Vec<ItemId>,
    /// What must hold before each move out.
    pub out: Vec<Rule>,
    /// What making each move adds: its time out and back, what is lost, what may go wrong.
    pub cost: Vec<u32>,
    /// What taking back costs if nothing more is made.
    pub cost_back: u32,
    /// Where one stands for each move on the way back, and with what in hand.
    pub place_of: Vec<usize>,
    pub tools_of: Vec<usize>,
    /// The same on the way out, where work only falls due and nobody walks to it.
    pub place_out: Vec<usize>,
    pub tools_out: Vec<usize>,
    /// The open moves that make a work due, by its item; nothing where none does.
    pub owing: BTreeMap<ItemId, Vec<usize>>,
    pub places: Vec<Place>,
    pub hands: Vec<BTreeSet<Tool>>,
    pub place_costs: Vec<Vec<u32>>,
    pub tool_costs: Vec<Vec<u32>>,
}

impl Model {
    pub(crate) fn new(problem: &Problem) -> Result<Self, PlanError> {
        let mut moves = problem.moves.clone();
        check_names(problem)?;
        check_times(problem)?;
        let mut chains = BTreeMap::new();
        for (id, item) in &problem.items {
            let mut links = Vec::new();
            for (index, step) in moves
                .iter()
                .enumerate()
                .filter(|(_, step)| step.item == *id)
            {
                links.push(link(index, step, item.kind)?);
            }
            links.sort_by_key(|link| link.near);
            let far_from_home =
                |state: &State| distance(item.kind, *state).is_some_and(|at| at > 0);
            if links.is_empty() && item.stands.values().any(far_from_home) {
                moves.push(unmapped(id, item.kind.home(), item.kind.away()));
                let index = moves.len() - 1;
                links.push(link(index, &moves[index], item.kind)?);
            }
            check_joined(id, &links, &moves)?;
            chains.insert(id.clone(), Chain::new(item, links));
        }
        if moves.len() > Set::LIMIT {
            return Err(PlanError::TooManyMoves {
                count: moves.len(),
                limit: Set::LIMIT,
            });
        }
        let places = places(problem, &moves);
        let hands: Vec<_> = moves
            .iter()
            .map(|step| step.tools.clone())
            .filter(|tools| !tools.is_empty())
            .collect::<BTreeSet<_>>()
            .into_iter()
            .collect();
        let by_hand = |step: &Move| chains[&step.item].item.kind != Kind::Work;
        let mut model = Self {
            place_out: moves
                .iter()
                .map(|step| index_of(&places, step.place.as_ref().filter(|_| by_hand(step))))
                .collect(),
            tools_out: moves
                .iter()
                .map(|step| index_of(&hands, Some(&step.tools).filter(|_| by_hand(step))))
                .collect(),
            owing: BTreeMap::new(),
            place_of: moves
                .iter()
                .map(|step| index_of(&places, step.place_back()))
                .collect(),
            tools_of: moves
                .iter()
                .map(|step| index_of(&hands, Some(&step.tools)))
                .collect(),
            place_costs: place_costs(problem, &places),
            tool_costs: tool_costs(problem, &hands),
            chain_of: moves.iter().map(|step| step.item.clone()).collect(),
            cost: vec![0; moves.len()],
            cost_back: 0,
            out: Vec::new(),
            moves,
            chains,
            places,
            hands,
        };
        model.owing = model.find_owing();
        model.add_costs();
        model.out = (0..model.moves.len())
            .map(|index| model.rule_out(index))
            .collect();
        Ok(model)
    }

    fn add_costs(&mut self) {
        for chain in self.chains.values() {
            self.cost_back += chain.cost_back(&self.moves, chain.made);
            for (n, link) in chain.moves.iter().enumerate().skip(chain.made) {
                let step = &self.moves[link.index];
                let out = step.out.of(chain.moved_out(*link).len()) + step.lost + step.snag_risk;
                let back = chain.cost_back(&self.moves, n + 1) - chain.cost_back(&self.moves, n);
                self.cost[link.index] = out.in_tenths() + back;
            }
        }
    }

    /// The moves that make each open work due, also by way of other work. Work that only other
    /// work owes is made due by a move of its own.
    fn find_owing(&self) -> BTreeMap<ItemId, Vec<usize>> {
        let open: Set = self.chains.values().flat_map(Chain::open).collect();
        let (of_work, by_hand): (Vec<usize>, Vec<usize>) = open
            .iter()
            .partition(|index| self.is_open_work(&self.chain_of[*index]));
        let mut owing: BTreeMap<ItemId, Vec<usize>> = BTreeMap::new();
        for index in by_hand {
            for work in self.made_due_by(index) {
                owing.entry(work.clone()).or_default().push(index);
            }
        }
        let free = |index: &usize| !owing.contains_key(&self.chain_of[*index]);
        let free: Vec<usize> = of_work.into_iter().filter(free).collect();
        for index in free {
            for work in self.made_due_by(index) {
                if let Some(by) = owing.get_mut(work) {
                    by.push(index);
                }
            }
        }
        owing
    }

    fn is_open_work(&self, item: &ItemId) -> bool {
        let chain = self.chains.get(item);
        chain.is_some_and(|chain| chain.item.kind == Kind::Work && chain.open().next().is_some())
    }

    /// Open work that a move makes due, also by way of other work.
    fn made_due_by(&self, index: usize) -> BTreeSet<&ItemId> {
        let mut waiting: Vec<&ItemId> = self.moves[index].makes_due.iter().collect();
        let mut met = BTreeSet::new();
        while let Some(work) = waiting.pop() {
            if self.is_open_work(work) && met.insert(work) {
                for open in self.chains[work].open() {
                    waiting.extend(&self.moves[open].makes_due);
                }
            }
        }
        met
    }

    /// The moves in which work falls due when this one is made by hand: they cost what they
    /// cost, and nobody walks to them.
    pub(crate) fn falls_due(&self, index: usize) -> impl Iterator<Item = usize> + '_ {
        self.owing
            .iter()
            .filter(move |(_, by)| by.contains(&index))
            .flat_map(|(work, _)| self.chains[work].open())
    }

    fn rule_out(&self, index: usize) -> Rule {
        let step = &self.moves[index];
        let chain = &self.chains[&step.item];
        if self.owing.contains_key(&step.item) {
            // It falls due with the move that owes it, whatever it needs to be done.
            return Rule::ALWAYS;
        }
        let before = chain.open().take_while(|open| *open != index).last();
        let mut rules: Vec<_> = self
            .falls_due(index)
            .chain(before)
            .map(Rule::after)
            .collect();
        // Work that nothing owes makes other such work due only after it.
        let free = step
            .makes_due
            .iter()
            .filter(|work| !self.owing.contains_key(*work));
        rules.extend(free.map(|work| self.point_out(work, &[], &[State::Due].into())));
        if chain.item.kind != Kind::Work {
            rules.push(self.need_out(&step.need));
        }
        Rule::All(rules)
    }

    pub(crate) fn need_out(&self, need: &Need) -> Rule {
        match need {
            Need::Is { item, at, states } => self.point_out(item, at, states),
            Need::All(needs) => Rule::All(needs.iter().map(|need| self.need_out(need)).collect()),
            Need::Any(needs) => Rule::Any(needs.iter().map(|need| self.need_out(need)).collect()),
        }
    }

    pub(crate) fn point_out(
        &self,
        item: &ItemId,
        at: &[Position],
        states: &BTreeSet<State>,
    ) -> Rule {
        let Some(chain) = self.chains.get(item) else {
            return Rule::NEVER;
        };
        let way: Vec<_> = chain.open().collect();
        let holds = (0..=way.len()).map(|n| {
            let stands = chain.after_out(chain.made + n);
            holds_at(item, at, states, &stands)
        });
        match self.owing.get(item) {
            Some(owing) => owed(owing, holds.collect::<Vec<_>>().as_slice()),
            None => point(way.clone(), holds),
        }
    }

    /// The rule of taking a move back, over the moves that are still out. An item
    /// whose moves are not all decided is taken to stand as needed.
    pub(crate) fn rule_back(&self, index: usize, made: &Set, undecided: &Set) -> Rule {
        let step = &self.moves[index];
        let chain = &self.chains[&step.item];
        let back = chain.to_take_back(self.out_of(chain, made));
        let before = back.iter().take_while(|link| link.index != index).last();
        let mut rules: Vec<_> = before
            .map(|link| Rule::after(link.index))
            .into_iter()
            .collect();
        let need = step.back_need.as_ref().unwrap_or(&step.need);
        rules.push(self.need_back(need, made, undecided));
        Rule::All(rules)
    }

    /// The open moves of the items that taking a move back asks to be out: those that
    /// do not satisfy it as they stand, all the way home.
    pub(crate) fn asked_back(&self, index: usize) -> Set {
        let step = &self.moves[index];
        let mut asked = Set::default();
        self.add_asked_back(step.back_need.as_ref().unwrap_or(&step.need), &mut asked);
        asked
    }

    fn add_asked_back(&self, need: &Need, asked: &mut Set) {
        match need {
            Need::Is { item, at, states } => {
                let Some(chain) = self.chains.get(item) else {
                    return;
                };
                let steps = chain.to_take_back(chain.made).len();
                let holds = |left| {
                    let stands = chain.on_way_back(chain.made, left);
                    holds_at(item, at, states, &stands)
                };
                if !(0..=steps).all(holds) {
                    match self.owing.get(item) {
                        Some(owing) => owing.iter().for_each(|step| asked.add(*step)),
                        None => chain.open().for_each(|open| asked.add(open)),
                    }
                }
            }
            Need::All(needs) | Need::Any(needs) => {
                needs
                    .iter()
                    .for_each(|need| self.add_asked_back(need, asked));
            }
        }
    }

    fn need_back(&self, need: &Need, made: &Set, undecided: &Set) -> Rule {
        let inner = |need: &Need| self.need_back(need, made, undecided);
        match need {
            Need::Is { item, at, states } => {
                let Some(chain) = self.chains.get(item) else {
                    return Rule::NEVER;
                };
                let owing = self.owing.get(item).into_iter().flatten().copied();
                if chain.open().chain(owing).any(|open| undecided.has(open)) {
                    return Rule::ALWAYS;
                }
                let out = self.out_of(chain, made);
                let way: Vec<_> = chain
                    .to_take_back(out)
                    .iter()
                    .map(|link| link.index)
                    .collect();
                let holds = (0..=way.len())
                    .map(|left| holds_at(item, at, states, &chain.on_way_back(out, left)));
                point(way.clone(), holds)
            }
            Need::All(needs) => Rule::All(needs.iter().map(inner).collect()),
            Need::Any(needs) => Rule::Any(needs.iter().map(inner).collect()),
        }
    }

    /// How many moves of a chain are out when these have been made.
    pub(crate) fn out_of(&self, chain: &Chain, made: &Set) -> usize {
        chain.made + chain.open().filter(|open| made.has(*open)).count()
    }

    /// The moves to take back when these have been made.
    pub(crate) fn to_take_back(&self, made: &Set) -> Set {
        self.chains
            .values()
            .flat_map(|chain| chain.to_take_back(self.out_of(chain, made)))
            .map(|link| link.index)
            .collect()
    }

    pub(crate) fn index_of_move(&self, id: &MoveId) -> Result<usize, PlanError> {
        self.moves
            .iter()
            .position(|step| step.id == *id)
            .ok_or_else(|| PlanError::NoSuchMove { id: id.clone() })
    }
}

fn holds_at(
    item: &ItemId,
    at: &[Position],
    states: &BTreeSet<State>,
    stands: &[(Position, State)],
) -> bool {
    let need = Need::Is {
        item: item.clone(),
        at: at.to_vec(),
        states: states.clone(),
    };
    need.holds(&|_: &ItemId| stands.to_vec())
}

/// A need on work that falls due with any of some moves: whether it holds while none of them
/// has been made, and once one has.
fn owed(owing: &[usize], holds: &[bool]) -> Rule {
    match holds {
        [true, .., true] | [true] => Rule::ALWAYS,
        [false, .., true] => Rule::Any(owing.iter().map(|step| Rule::after(*step)).collect()),
        [true, .., false] => {
            let not_yet = |step: &usize| point(vec![*step], [true, false].into_iter());
            Rule::All(owing.iter().map(not_yet).collect())
        }
        _ => Rule::NEVER,
    }
}

pub(crate) fn point(way: Vec<usize>, holds: impl Iterator<Item = bool>) -> Rule {
    let holds = holds
        .enumerate()
        .fold(0, |bits, (n, holds)| bits | u8::from(holds) << n);
    Rule::Point(Point { way, holds })
}

fn link(index: usize, step: &Move, kind: Kind) -> Result<Link, PlanError> {
    let ends = (distance(kind, step.from), distance(kind, step.to));
    match ends {
        (Some(near), Some(far))
            if near < far
                && [step.from, step.to]
                    .iter()
                    .all(|end| kind.states().contains(&end.rung())) =>
        {
            Ok(Link { index, near, far })
        }
        _ => Err(PlanError::NotOutward {
            id: step.id.clone(),
            from: step.from,
            to: step.to,
        }),
    }
}

fn unmapped(item: &ItemId, from: State, to: State) -> Move {
    Move {
        id: MoveId::new(item.as_str()),
        item: item.clone(),
        from,
        to,
        need: Need::All(Vec::new()),
        back_need: None,
        makes_due: Vec::new(),
        out: Effort::default(),
        back: Effort::default(),
        lost: Minutes::default(),
        snag_risk: Minutes::default(),
        place: None,
        back_place: None,
        tools: BTreeSet::new(),
        runs_by_itself: false,
    }
}

fn check_joined(item: &ItemId, links: &[Link], moves: &[Move]) -> Result<(), PlanError> {
    let mut reached = 0;
    for link in links {
        if link.near != reached {
            return Err(PlanError::NotOneWay {
                item: item.clone(),
                id: moves[link.index].id.clone(),
            });
        }
        reached = link.far;
    }
    Ok(())
}

fn places(problem: &Problem, moves: &[Move]) -> Vec<Place> {
    moves
        .iter()
        .flat_map(Move::places)
        .chain(&problem.start)
        .cloned()
        .collect::<BTreeSet<_>>()
        .into_iter()
        .collect()
}

fn index_of<T: PartialEq>(all: &[T], wanted: Option<&T>) -> usize {
    all.iter()
        .position(|known| Some(known) == wanted)
        .unwrap_or(crate::blocks::NONE)
}

/// What each change of place costs: as stated for the two, in either direction unless the other
/// is stated as well; else as any change. Nobody goes by way of a third place to save a walk
/// that was stated.
fn place_costs(problem: &Problem, places: &[Place]) -> Vec<Vec<u32>> {
    let changes = &problem.changes;
    let direct = |from: &Place, to: &Place| {
        if from == to {
            return 0;
        }
        changes.from_to(from, to).in_tenths()
    };
    places
        .iter()
        .map(|from| places.iter().map(|to| direct(from, to)).collect())
        .collect()
}

fn tool_costs(problem: &Problem, hands: &[BTreeSet<Tool>]) -> Vec<Vec<u32>> {
    let cost = |from: &BTreeSet<Tool>, to: &BTreeSet<Tool>| {
        problem
            .changes
            .tool
            .times(to.difference(from).count())
            .in_tenths()
    };
    hands
        .iter()
        .map(|from| hands.iter().map(|to| cost(from, to)).collect())
        .collect()
}
