//! What is forced: the moves that every way to a goal makes, given what is ruled out.

use crate::rule::{Asks, Rule, Set};

/// For each move, the moves that every way to it makes, itself among them; nothing if
/// it cannot be made.
pub(crate) struct Forced {
    of_move: Vec<Option<Set>>,
}

/// The moves among `allowed` that can be made one after the other, if what once held
/// is taken to hold for ever.
pub(crate) fn reached(rules: &[Rule], allowed: &Set) -> Set {
    let mut done = Set::default();
    let mut left = *allowed;
    loop {
        let ready: Set = left
            .iter()
            .filter(|index| rules[*index].held(&done))
            .collect();
        if ready.is_empty() {
            return done;
        }
        done = done.or(&ready);
        left = left.minus(&ready);
    }
}

impl Forced {
    /// Finds them for all moves among `allowed`. A move that must come before itself
    /// cannot be made; alternatives force what all of them force.
    pub(crate) fn new(rules: &[Rule], allowed: &Set) -> Self {
        let possible = reached(rules, allowed);
        let mut forced = Self {
            of_move: (0..rules.len())
                .map(|index| possible.has(index).then_some(possible))
                .collect(),
        };
        loop {
            let mut changed = false;
            for index in possible.iter() {
                let now = forced.by(&rules[index]).map(|set| set.with(index));
                if now != forced.of_move[index] {
                    forced.of_move[index] = now;
                    changed = true;
                }
            }
            if !changed {
                return forced;
            }
        }
    }

    /// What a move forces.
    pub(crate) fn by_move(&self, index: usize) -> Option<Set> {
        self.of_move[index]
    }

    /// What a rule forces; nothing if it cannot be met.
    pub(crate) fn by(&self, rule: &Rule) -> Option<Set> {
        match rule {
            Rule::Point(point) => match point.asks() {
                Asks::Nothing => Some(Set::default()),
                Asks::Move(asked) => self.of_move[asked],
                Asks::Impossible => None,
            },
            Rule::All(rules) => rules
                .iter()
                .try_fold(Set::default(), |all, rule| Some(all.or(&self.by(rule)?))),
            Rule::Any(rules) => rules
                .iter()
                .filter_map(|rule| self.by(rule))
                .reduce(|all, other| all.and(&other)),
        }
    }

    /// The least that open alternatives add to `chosen`: each open `any` adds at
    /// least its cheapest alternative, and those that can share nothing add up.
    pub(crate) fn least_extra<'a>(
        &self,
        rules: impl Iterator<Item = &'a Rule>,
        chosen: &Set,
        cost: &[u32],
    ) -> u32 {
        let mut open = Vec::new();
        for rule in rules {
            self.open_alternatives(rule, chosen, cost, &mut open);
        }
        open.sort_by_key(|(extra, _)| u32::MAX - extra);
        let mut used = Set::default();
        let mut sum = 0;
        for (extra, may_add) in open {
            if may_add.and(&used).is_empty() {
                used = used.or(&may_add);
                sum += extra;
            }
        }
        sum
    }

    fn open_alternatives(
        &self,
        rule: &Rule,
        chosen: &Set,
        cost: &[u32],
        into: &mut Vec<(u32, Set)>,
    ) {
        match rule {
            Rule::Point(_) => {}
            Rule::All(rules) => {
                for rule in rules {
                    self.open_alternatives(rule, chosen, cost, into);
                }
            }
            Rule::Any(_) if rule.held(chosen) => {}
            Rule::Any(rules) => {
                let adds: Vec<_> = rules
                    .iter()
                    .filter_map(|rule| self.by(rule))
                    .map(|set| set.minus(chosen))
                    .collect();
                let price = |set: &Set| set.iter().map(|index| cost[index]).sum::<u32>();
                let extra = adds.iter().map(price).min().unwrap_or(0);
                if extra > 0 {
                    let all = adds.iter().fold(Set::default(), Set::or);
                    into.push((extra, all));
                }
            }
        }
    }
}
