//! What goes back otherwise than the way out turned round.
//!
//! A plan puts a thing back under the condition under which it came off. Where jobs have shown
//! that it can go back after something that came off before it, that condition is too much, and
//! mostly another takes its place: the hose that came off first goes on the pump at the bench.

use crate::job::{Step, Way};
use crate::learner::Learner;
use crate::lessons::{Answers, Ask, Lessons};
use crate::model::Model;
use crate::pair::{Ground, Held, Pair};
use crate::relation::{Relation, ones};
use states::ItemId;
use std::collections::{BTreeMap, BTreeSet};

/// What an item needs to go back, where that is not what it needed to come off.
#[derive(Debug, Clone, PartialEq, Eq, Default)]
pub struct BackNeeds {
    /// Items that are still away, as when it came off.
    pub away: BTreeSet<ItemId>,
    /// Items that are home again.
    pub home: BTreeSet<ItemId>,
    /// Of those that are home, the ones that are only guessed to be needed so.
    pub guessed: BTreeSet<ItemId>,
}

/// What is needed first, by item.
pub type Needs = BTreeMap<ItemId, BTreeSet<ItemId>>;

impl Learner {
    /// What jobs have taught of the way back.
    #[must_use]
    pub fn lessons_back(&self, model: &Model) -> Lessons {
        self.lessons(&Ask {
            way: Way::Back,
            variants: None,
            answers: &Answers::default(),
            model,
        })
    }

    /// The items that go back otherwise than the way out turned round, with what each needs then.
    ///
    /// `needs` is what each item needs to come off, `is_taught` whether a plan takes that from
    /// jobs: what a person stated is turned round whatever was seen. A need is given up only
    /// where jobs have shown the other sequence; what was not seen either way stays turned round.
    /// What is kept never goes in a circle.
    #[must_use]
    pub fn way_back(
        &self,
        needs: &Needs,
        is_taught: &dyn Fn(&ItemId) -> bool,
        back: &Lessons,
    ) -> BTreeMap<ItemId, BackNeeds> {
        let turned = Turned::new(self, needs, is_taught, back);
        let order = turned.order();
        let direct = order.direct();
        let mut out = BTreeMap::new();
        for (at, item) in turned.items.iter().enumerate() {
            let firsts = turned.firsts(at);
            if !is_taught(item) {
                continue;
            }
            let away: BTreeSet<usize> = firsts
                .iter()
                .copied()
                .filter(|first| order.has(at, *first))
                .collect();
            // Where the other waits for this one to be away, it says so itself.
            let home = direct
                .iter()
                .filter(|(first, second)| *second == at && !turned.firsts(*first).contains(&at));
            let home: Vec<usize> = home.map(|(first, _)| *first).collect();
            if away.len() == firsts.len() && home.is_empty() {
                continue;
            }
            let name = |at: &usize| turned.items[*at].clone();
            let is_guess = |first: &&usize| {
                let pair = turned.between(**first, at);
                pair.is_none_or(|pair| pair.held != Held::Needed)
            };
            let needs = BackNeeds {
                away: away.iter().map(name).collect(),
                guessed: home.iter().filter(is_guess).map(name).collect(),
                home: home.iter().map(name).collect(),
            };
            out.insert(item.clone(), needs);
        }
        out
    }
}

/// The way out turned round, and what was seen otherwise.
struct Turned<'a> {
    items: Vec<ItemId>,
    needs: &'a Needs,
    is_taught: &'a dyn Fn(&ItemId) -> bool,
    back: &'a Lessons,
    /// The step that brings each item home.
    home: Vec<Option<Step>>,
}

impl<'a> Turned<'a> {
    fn new(
        learner: &Learner,
        needs: &'a Needs,
        is_taught: &'a dyn Fn(&ItemId) -> bool,
        back: &'a Lessons,
    ) -> Self {
        let items: BTreeSet<&ItemId> = needs.keys().chain(needs.values().flatten()).collect();
        let items: Vec<ItemId> = items.into_iter().cloned().collect();
        let home = |item: &ItemId| {
            let kind = learner.kinds().get(item)?.keys().next()?;
            let step = Step {
                item: item.clone(),
                to: kind.home(),
            };
            back.number(&step).map(|_| step)
        };
        Self {
            home: items.iter().map(home).collect(),
            items,
            needs,
            is_taught,
            back,
        }
    }

    fn firsts(&self, at: usize) -> BTreeSet<usize> {
        let firsts = self.needs.get(&self.items[at]).into_iter().flatten();
        firsts
            .filter_map(|first| self.items.binary_search(first).ok())
            .collect()
    }

    fn between(&self, one: usize, other: usize) -> Option<Pair> {
        self.back
            .between(self.home[one].as_ref()?, self.home[other].as_ref()?)
    }

    /// Whether the first was seen to go back before the second, and is kept to.
    fn is_held(&self, first: usize, second: usize) -> bool {
        self.between(first, second).is_some_and(|pair| {
            pair.held != Held::Either && Some(&pair.first) == self.home[first].as_ref()
        })
    }

    /// Whether jobs have shown that the first can go back before the second.
    fn is_shown(&self, first: usize, second: usize) -> bool {
        let Some(pair) = self.between(first, second) else {
            return false;
        };
        let is_first = Some(&pair.first) == self.home[first].as_ref();
        match pair.ground {
            Ground::BothWays { .. } => is_first || pair.held == Held::Either,
            Ground::Seen { .. } => is_first,
            Ground::Stated | Ground::NeverApart { .. } => false,
        }
    }

    /// What goes back before what. What a person stated goes first, then what was seen, then
    /// what follows from the way out; nothing that would go in a circle.
    fn order(&self) -> Relation {
        let count = self.items.len();
        let mut off = Relation::new(count);
        for second in 0..count {
            for first in self.firsts(second) {
                off.add(first, second);
            }
        }
        let pairs: Vec<(usize, usize)> = (0..count)
            .flat_map(|first| ones(off.after(first)).map(move |second| (first, second)))
            .collect();
        let is_taught = |second: usize| (self.is_taught)(&self.items[second]);
        let (otherwise, round): (Vec<_>, Vec<_>) = pairs
            .into_iter()
            .partition(|(first, second)| is_taught(*second) && self.is_shown(*first, *second));
        let mut order = Relation::new(count);
        let mut keep = |pairs: &mut dyn Iterator<Item = (usize, usize)>| {
            for (first, second) in pairs {
                order.add(first, second);
            }
        };
        let turned = |(first, second): (usize, usize)| (second, first);
        let stated = round
            .iter()
            .copied()
            .filter(|(_, second)| !is_taught(*second));
        keep(&mut stated.map(turned));
        let seen = otherwise.into_iter();
        keep(&mut seen.filter(|(first, second)| self.is_held(*first, *second)));
        let seen_so = round.iter().copied().map(turned);
        keep(&mut seen_so.filter(|(first, second)| self.is_held(*first, *second)));
        keep(&mut round.iter().copied().map(turned));
        order
    }
}
