//! The plans of an order: the one that is asked for, the whole job, and other ways beside.

use super::order::OrderMap;
use super::shown::{Shown, choices, only_in, shown};
use super::{Stands, say};
use crate::phrases::planning as words;
use crate::snapshot::Snapshot;
use crate::trouble::Trouble;
use map::MapMove;
use plan::{MoveId, Plan, Problem};
use repair::{AimIs, ItemId, State};
use std::collections::{BTreeMap, BTreeSet};

/// Another plan beside the one shown.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Other {
    /// The move that it rules out; nothing, if it rules out nothing.
    pub without: Option<MoveId>,
    /// That move in words.
    pub not: String,
    /// Its cost.
    pub cost: plan::Minutes,
    /// How much dearer it is, in tenths of a minute; negative if cheaper.
    pub dearer_tenths: i64,
    /// What comes off only in it.
    pub only_here: Vec<String>,
    /// What comes off only in the plan shown.
    pub only_there: Vec<String>,
}

impl OrderMap {
    /// The plan in words.
    ///
    /// # Errors
    /// [`Trouble`]: why there is none, in words.
    pub fn plan(&self, snap: &Snapshot<'_>) -> Result<Shown, Trouble> {
        let problem = self.problem();
        let plan = self.found(snap, &problem)?;
        Ok(shown(&self.map, &problem, plan, &self.extras))
    }

    /// The plan of what is asked from a vehicle on which nothing was moved yet: what the
    /// whole job is priced by. What only makes sense with things off is planned as it stands.
    ///
    /// # Errors
    /// [`Trouble`]: why there is none, in words.
    pub fn whole(&self, snap: &Snapshot<'_>) -> Result<Shown, Trouble> {
        if self.asked.aim != AimIs::Reach {
            return self.plan(snap);
        }
        let problem = self.whole_problem();
        let plan = self.found(snap, &problem)?;
        Ok(shown(&self.map, &problem, plan, &self.extras))
    }

    /// The plan with nothing ruled out or called for, if anything is.
    #[must_use]
    pub fn straight(&self, snap: &Snapshot<'_>, plan: &Plan) -> Option<Other> {
        let problem = self.problem_of(&self.asked.straight());
        let other = snap.plan(&problem).ok().filter(|_| self.asked.is_bent())?;
        Some(other_plan(None, String::new(), &other, plan))
    }

    /// Plans by other ways, each with one move of this plan ruled out: the cheapest few.
    #[must_use]
    pub fn other_ways(&self, snap: &Snapshot<'_>, plan: &Plan) -> Vec<Other> {
        const LOOKED_AT: usize = 4;
        let problem = self.problem();
        let ruled_out: Vec<MoveId> = choices(&problem, plan)
            .into_iter()
            .take(LOOKED_AT)
            .collect();
        let bent = |id: &MoveId| {
            let mut bent = problem.clone();
            bent.forbidden_moves.insert(id.clone());
            bent
        };
        let others = snap.plans(&ruled_out.iter().map(bent).collect::<Vec<_>>());
        let mut out = Vec::new();
        for (id, other) in ruled_out.into_iter().zip(others) {
            if let Ok(other) = other {
                let not = say::made(&self.map, &id);
                out.push(other_plan(Some(id), not, &other, plan));
            }
        }
        out.sort_by_key(|other| other.dearer_tenths);
        out.dedup_by(|a, b| a.only_here == b.only_here && a.only_there == b.only_there);
        out
    }

    /// What has come about that no plan from a whole vehicle would have: things off that
    /// this way does not need, and pieces that stay behind.
    #[must_use]
    pub fn unforeseen(&self, snap: &Snapshot<'_>) -> Vec<String> {
        let planned: BTreeSet<ItemId> = match snap.plan(&self.whole_problem()) {
            Ok(plan) if self.asked.aim == AimIs::Reach => {
                let moved = |step: &MapMove| plan.off.iter().any(|row| row.id.as_str() == step.id);
                let steps = self.map.moves().map(|(_, step)| step);
                let renewed = steps
                    .filter(|step| moved(step))
                    .flat_map(|step| &step.renews);
                let off = plan.off.iter().map(|row| &row.item);
                off.chain(renewed).cloned().collect()
            }
            _ => self.map.items.keys().cloned().collect(),
        };
        let mut out = Vec::new();
        for (item, (kind, pieces)) in &self.stands {
            let label = self
                .extras
                .get(item)
                .cloned()
                .unwrap_or_else(|| item.to_string());
            let stubs: BTreeMap<State, Vec<u16>> =
                pieces.iter().fold(BTreeMap::new(), |mut all, (at, state)| {
                    if let State::Stub { .. } = state {
                        all.entry(*state).or_insert_with(Vec::new).push(*at);
                    }
                    all
                });
            for (state, at) in stubs {
                let (at, state) = (crate::say::positions(&at), crate::say::state(*kind, state));
                out.push(words::stub_stays(&label, at, state));
            }
            let away = pieces.values().any(|state| *state != kind.home());
            if away && !planned.contains(item) {
                out.push(match self.extras.contains_key(item) {
                    true => words::off_unknown(label),
                    false => words::off_not_needed(label),
                });
            }
        }
        out
    }

    fn whole_problem(&self) -> Problem {
        self.asked
            .problem(&self.map, &Stands::new(), &BTreeSet::new())
    }

    fn found(&self, snap: &Snapshot<'_>, problem: &Problem) -> Result<Plan, Trouble> {
        snap.plan(problem)
            .map_err(|error| say::trouble(&self.map, &error))
    }
}

fn other_plan(without: Option<MoveId>, not: String, other: &Plan, plan: &Plan) -> Other {
    let tenths = |plan: &Plan| i64::from(plan.cost.in_tenths());
    Other {
        without,
        not,
        cost: other.cost,
        dearer_tenths: tenths(other) - tenths(plan),
        only_here: only_in(other, plan),
        only_there: only_in(plan, other),
    }
}
