//! Random maps from a seed, for the checks and the bench.

use plan::{Changes, Effort, Goal, Item, Minutes, Move, MoveId, Place, Problem, Target, Tool};
use rand::{RngExt, SeedableRng};
use rand_chacha::ChaCha8Rng;
use states::{ItemId, Kind, Need, State};
use std::collections::{BTreeMap, BTreeSet};

/// How large a map is.
#[derive(Debug, Clone, Copy)]
pub struct Size {
    pub items: usize,
    pub places: usize,
    pub tools: usize,
    /// How many targets beside the last item.
    pub targets: usize,
    /// Whether needs may also ask for things in place, moves for other conditions
    /// back, and the job may be in its middle.
    pub all_sorts: bool,
}

pub struct Random {
    chance: ChaCha8Rng,
    size: Size,
}

fn name(n: usize) -> ItemId {
    ItemId::new(format!("item{n}"))
}

/// A map of this size; the same seed gives the same map.
pub fn random_map(seed: u64, size: Size) -> Problem {
    let chance = ChaCha8Rng::seed_from_u64(seed);
    Random { chance, size }.map()
}

impl Random {
    fn below(&mut self, limit: usize) -> usize {
        self.chance.random_range(0..limit)
    }

    fn one_in(&mut self, n: usize) -> bool {
        self.below(n) == 0
    }

    fn minutes(&mut self, from: u32, to: u32) -> Minutes {
        Minutes::tenths(self.chance.random_range(from..=to))
    }

    fn map(mut self) -> Problem {
        let mut items = BTreeMap::new();
        for n in 0..self.size.items {
            let item = self.item();
            items.insert(name(n), item);
        }
        let mut moves = Vec::new();
        for n in 0..self.size.items {
            self.add_moves(n, &items, &mut moves);
        }
        let place = self.minutes(3, 30);
        let tool = self.minutes(1, 8);
        let mut between = BTreeMap::new();
        if self.size.all_sorts && self.one_in(3) {
            let (a, b) = (self.below(self.size.places), self.below(self.size.places));
            // Longer than two changes, a stop over a move that nobody asked for would pay: the
            // search over whole plans would make it, a plan never does.
            let most = place.in_tenths() * 2;
            between.insert((place_named(a), place_named(b)), self.minutes(1, most));
        }
        let mut targets = vec![self.size.items - 1];
        for _ in 0..self.size.targets {
            targets.push(self.below(self.size.items));
        }
        let start = (!self.one_in(4)).then(|| place_named(0));
        Problem {
            goal: Goal::Reach(targets.into_iter().map(|n| away(&items, n)).collect()),
            items,
            moves,
            changes: Changes {
                place,
                between,
                tool,
            },
            start,
            forced_moves: BTreeSet::new(),
            forbidden_moves: BTreeSet::new(),
            forced_places: BTreeSet::new(),
            forbidden_places: BTreeSet::new(),
        }
    }

    fn item(&mut self) -> Item {
        let kind = match self.below(10) {
            9 if self.size.all_sorts && self.one_in(2) => Kind::Work,
            0..4 => Kind::Fasteners,
            4..7 => Kind::Part,
            7 => Kind::Cover,
            8 => Kind::Connector,
            _ => Kind::Hose,
        };
        let count = match kind {
            Kind::Fasteners => self.chance.random_range(1..=4),
            _ => 1,
        };
        let mut item = Item::group(kind, count, kind.home());
        if self.size.all_sorts && self.one_in(14) {
            for state in item.stands.values_mut() {
                let ladder = kind.states();
                let rungs = ladder.len().min(4);
                *state = ladder[self.chance.random_range(0..rungs)];
            }
        }
        item
    }

    fn add_moves(&mut self, n: usize, items: &BTreeMap<ItemId, Item>, moves: &mut Vec<Move>) {
        let kind = items[&name(n)].kind;
        let ends = match kind {
            Kind::Fasteners if self.one_in(4) => {
                vec![(State::Tight, State::Cracked), (State::Cracked, State::Out)]
            }
            Kind::Fasteners => vec![(State::Tight, State::Out)],
            _ => vec![(kind.home(), kind.away())],
        };
        let needs = match self.below(8) {
            0 => 0,
            _ if n == 0 => 0,
            1..6 => 1,
            _ => 2,
        };
        for (step, (from, to)) in ends.into_iter().enumerate() {
            let need = Need::All((0..needs).map(|_| self.need(n, items)).collect());
            let back_need = (self.size.all_sorts && self.one_in(14))
                .then(|| Need::All(vec![self.point(n, items)]));
            let place = (!self.one_in(8)).then(|| place_named(self.below(self.size.places)));
            let back_place = (self.size.all_sorts && self.one_in(8))
                .then(|| place_named(self.below(self.size.places)));
            let mut tools = BTreeSet::new();
            if !self.one_in(4) {
                tools.insert(tool_named(self.below(self.size.tools)));
            }
            if self.size.all_sorts && self.one_in(6) {
                tools.insert(tool_named(self.below(self.size.tools)));
            }
            moves.push(Move {
                id: MoveId::new(format!("item{n}.{step}")),
                item: name(n),
                from,
                to,
                need,
                back_need,
                makes_due: self.makes_due(n, items),
                out: self.effort(kind),
                back: self.effort(kind),
                lost: Minutes::default(),
                snag_risk: self.minutes(0, 5),
                place,
                back_place,
                tools,
                runs_by_itself: self.one_in(10),
            });
        }
    }

    fn makes_due(&mut self, n: usize, items: &BTreeMap<ItemId, Item>) -> Vec<ItemId> {
        let work = |other: &usize| *other != n && items[&name(*other)].kind == Kind::Work;
        let works: Vec<_> = (0..self.size.items).filter(work).collect();
        let due = works
            .into_iter()
            .filter(|_| self.one_in(4))
            .collect::<Vec<_>>();
        due.into_iter().map(name).collect()
    }

    fn effort(&mut self, kind: Kind) -> Effort {
        Effort {
            set_up: self.minutes(2, 30),
            per_piece: match kind {
                Kind::Fasteners => self.minutes(1, 8),
                _ => Minutes::default(),
            },
        }
    }

    /// One thing, or one of several, mostly among items nearer the start.
    fn need(&mut self, n: usize, items: &BTreeMap<ItemId, Item>) -> Need {
        if self.below(5) < 2 {
            let alternatives = self.chance.random_range(2..=3);
            return Need::Any(
                (0..alternatives)
                    .map(|_| self.alternative(n, items))
                    .collect(),
            );
        }
        self.point(n, items)
    }

    fn alternative(&mut self, n: usize, items: &BTreeMap<ItemId, Item>) -> Need {
        if self.one_in(4) {
            return Need::All(vec![self.point(n, items), self.point(n, items)]);
        }
        self.point(n, items)
    }

    fn point(&mut self, n: usize, items: &BTreeMap<ItemId, Item>) -> Need {
        let other = if n == 0 || (self.size.all_sorts && self.one_in(20)) {
            (n + 1 + self.below(self.size.items - 1)) % self.size.items
        } else {
            n.saturating_sub(1 + self.below(n.min(6)))
        };
        let kind = items[&name(other)].kind;
        let states: BTreeSet<_> = match kind {
            _ if self.size.all_sorts && self.one_in(12) => [kind.home()].into(),
            Kind::Fasteners if self.one_in(4) => {
                [State::Cracked, State::Out, State::Loose { passes: 0 }].into()
            }
            _ => [kind.away()].into(),
        };
        Need::Is {
            item: name(other),
            at: Vec::new(),
            states,
        }
    }
}

fn away(items: &BTreeMap<ItemId, Item>, n: usize) -> Target {
    Target {
        item: name(n),
        states: [items[&name(n)].kind.away()].into(),
    }
}

fn place_named(n: usize) -> Place {
    Place::new(format!("place{n}"))
}

fn tool_named(n: usize) -> Tool {
    Tool::new(format!("tool{n}"))
}
