//! From a problem to its plan.

use crate::assemble;
use crate::blocks::NONE;
use crate::chain::Chain;
use crate::choose::{Best, Choice, Chosen, choose};
use crate::explain::explain;
use crate::forced::reached;
use crate::ground::Ground;
use crate::model::{Model, point};
use crate::problem::{Budget, Goal, Plan, Problem};
use crate::rule::{Rule, Set};
use crate::{Minutes, PlanError};
use states::{ItemId, Need};
use std::collections::BTreeSet;

/// Finds the cheapest way to the goal and, for a target, home again.
///
/// The cost is that of whole plans: rows out and back, changes of place and tools on
/// the way out, at the turn and on the way back, what is lost and what may go wrong.
/// Nothing is put back on to meet a need on the way out. An item goes back on under
/// the condition under which it came off, unless its move states another. Only moves that
/// the goal or a need asks for are made, none to shorten a walk. Work falls due with the
/// first move that owes it and is done on the way back, where its needs hold and it costs
/// least.
///
/// # Errors
/// [`PlanError`] says what in the problem cannot be, or why nothing leads to the goal.
pub fn plan(problem: &Problem, budget: Budget) -> Result<Plan, PlanError> {
    let model = Model::new(problem)?;
    let mut left = budget.expansions;
    let (chosen, no_way_back) = match &problem.goal {
        Goal::Home(Some(items)) => (home(problem, &model, items, &mut left)?, Vec::new()),
        _ => out_and_back(problem, &model, &mut left)?,
    };
    let expansions = budget.expansions - left;
    let Some(best) = chosen.best else {
        return Err(if chosen.complete {
            PlanError::NoSequence
        } else {
            PlanError::BudgetSpent { expansions }
        });
    };
    let mut plan = assemble::plan(problem, &model, best);
    plan.bound = Minutes::tenths(chosen.bound);
    plan.proven = chosen.complete;
    plan.no_way_back = no_way_back
        .into_iter()
        .map(|index| model.moves[index].id.clone())
        .collect();
    plan.expansions = expansions;
    Ok(plan)
}

fn out_and_back(
    problem: &Problem,
    model: &Model,
    budget: &mut u64,
) -> Result<(Chosen, Vec<usize>), PlanError> {
    check_way_home(problem, model)?;
    let allowed = allowed(problem, model)?;
    let goal = goal(problem, model, &allowed)?;
    explain(problem, model, &model.out, &goal, &allowed)?;
    let mut choice = Choice {
        model,
        rules: &model.out,
        cost: &model.cost,
        spent: model.cost_back,
        allowed: relevant(&model.out, &goal, &allowed, |made| {
            let back = model.to_take_back(made);
            back.iter()
                .map(|index| model.asked_back(index))
                .fold(Set::default(), |all, asked| all.or(&asked))
        }),
        goal: Rule::All(goal.into_iter().map(|(_, rule)| rule).collect()),
        and_back: true,
        start: start(problem, model),
        ground: Ground::new(model, &model.place_out, &model.tools_out),
    };
    let chosen = choose(&choice, budget);
    if chosen.best.is_some() || !chosen.complete {
        return Ok((chosen, Vec::new()));
    }
    choice.and_back = false;
    let chosen = choose(&choice, budget);
    let stuck = chosen.best.as_ref().map(|best| stuck(model, best));
    Ok((chosen, stuck.unwrap_or_default()))
}

/// The moves that no sequence takes back, or all if each alone could be.
fn stuck(model: &Model, best: &Best) -> Vec<usize> {
    let made: Set = best.out.iter().copied().collect();
    let wanted = model.to_take_back(&made);
    let rules: Vec<_> = (0..model.moves.len())
        .map(|index| match wanted.has(index) {
            true => model.rule_back(index, &made, &Set::default()),
            false => Rule::NEVER,
        })
        .collect();
    let never = wanted.minus(&reached(&rules, &wanted));
    if never.is_empty() { wanted } else { never }
        .iter()
        .collect()
}

fn start(problem: &Problem, model: &Model) -> usize {
    model
        .places
        .iter()
        .position(|place| Some(place) == problem.start.as_ref())
        .unwrap_or(NONE)
}

fn at_forbidden_place(problem: &Problem, model: &Model, index: usize) -> bool {
    let mut places = model.moves[index].places();
    places.any(|place| problem.forbidden_places.contains(place))
}

fn check_way_home(problem: &Problem, model: &Model) -> Result<(), PlanError> {
    for index in model.to_take_back(&Set::default()).iter() {
        let step = &model.moves[index];
        if let Some(place) = step
            .place_back()
            .filter(|place| problem.forbidden_places.contains(place))
        {
            return Err(PlanError::HomeAtForbiddenPlace {
                id: step.id.clone(),
                place: place.clone(),
            });
        }
    }
    Ok(())
}

fn allowed(problem: &Problem, model: &Model) -> Result<Set, PlanError> {
    let mut allowed: Set = model.chains.values().flat_map(Chain::open).collect();
    for id in &problem.forbidden_moves {
        allowed.remove(model.index_of_move(id)?);
    }
    Ok(allowed
        .iter()
        .filter(|index| !at_forbidden_place(problem, model, *index))
        .collect())
}

/// What is wanted, each with the item it is about where it is a target.
pub(crate) type Wanted = Vec<(Option<ItemId>, Rule)>;

fn goal(problem: &Problem, model: &Model, allowed: &Set) -> Result<Wanted, PlanError> {
    let mut wanted = Vec::new();
    if let Goal::Reach(targets) = &problem.goal {
        for target in targets {
            if !model.chains.contains_key(&target.item) {
                return Err(PlanError::NoSuchItem {
                    item: target.item.clone(),
                    named_by: "target".to_owned(),
                });
            }
            let rule = model.point_out(&target.item, &[], &target.states);
            wanted.push((Some(target.item.clone()), rule));
        }
    }
    for id in &problem.forced_moves {
        let index = model.index_of_move(id)?;
        let open = model.chains[&model.chain_of[index]]
            .open()
            .any(|open| open == index);
        if open {
            wanted.push((None, Rule::after(index)));
        }
    }
    for place in &problem.forced_places {
        // Where work falls due nobody goes.
        let here = |index: &usize| {
            let mut places = model.moves[*index].places();
            places.any(|there| there == place) && model.place_out[*index] != NONE
        };
        let any = allowed.iter().filter(here).map(Rule::after).collect();
        wanted.push((None, Rule::Any(any)));
    }
    Ok(wanted)
}

/// The moves that the goal, a need on the way to it or one on the way back asks for.
fn relevant(rules: &[Rule], goal: &Wanted, allowed: &Set, asked_back: impl Fn(&Set) -> Set) -> Set {
    let mut relevant = Set::default();
    for (_, rule) in goal {
        rule.asked(&mut relevant);
    }
    loop {
        let mut more = relevant.and(allowed);
        for index in more.iter() {
            rules[index].asked(&mut more);
        }
        more = more.or(&asked_back(&more)).and(allowed);
        if more == relevant {
            return relevant;
        }
        relevant = more;
    }
}

/// Brings only some items home: each move is a taking back, and what one takes back
/// may be needed by another.
fn home(
    problem: &Problem,
    model: &Model,
    items: &BTreeSet<ItemId>,
    budget: &mut u64,
) -> Result<Chosen, PlanError> {
    let out = model.to_take_back(&Set::default());
    let allowed: Set = out
        .iter()
        .filter(|index| !at_forbidden_place(problem, model, *index))
        .collect();
    let rules: Vec<_> = (0..model.moves.len())
        .map(|index| match out.has(index) {
            true => rule_home(model, index),
            false => Rule::NEVER,
        })
        .collect();
    let mut goal = Vec::new();
    let mut cost = vec![0; model.moves.len()];
    for (id, chain) in &model.chains {
        let back = chain.to_take_back(chain.made);
        if let Some(last) = back.first().filter(|_| items.contains(id)) {
            goal.push((Some(id.clone()), Rule::after(last.index)));
        }
        for link in back {
            let pieces = chain.moved_back(chain.made, link).len();
            cost[link.index] = model.moves[link.index].back.of(pieces).in_tenths();
        }
    }
    if let Some(unknown) = items.iter().find(|item| !model.chains.contains_key(*item)) {
        return Err(PlanError::NoSuchItem {
            item: unknown.clone(),
            named_by: "home".to_owned(),
        });
    }
    explain(problem, model, &rules, &goal, &allowed)?;
    let choice = Choice {
        model,
        rules: &rules,
        cost: &cost,
        spent: 0,
        allowed: relevant(&rules, &goal, &allowed, |_| Set::default()),
        goal: Rule::All(goal.into_iter().map(|(_, rule)| rule).collect()),
        and_back: false,
        start: start(problem, model),
        ground: Ground::new(model, &model.place_of, &model.tools_of),
    };
    let mut chosen = choose(&choice, budget);
    if let Some(best) = &mut chosen.best {
        best.back = std::mem::take(&mut best.out);
    }
    Ok(chosen)
}

fn rule_home(model: &Model, index: usize) -> Rule {
    let step = &model.moves[index];
    let chain = &model.chains[&step.item];
    let back = chain.to_take_back(chain.made);
    let before = back
        .iter()
        .rev()
        .take_while(|link| link.index != index)
        .last();
    let mut rules: Vec<_> = before
        .map(|link| Rule::after(link.index))
        .into_iter()
        .collect();
    rules.push(need_home(
        model,
        step.back_need.as_ref().unwrap_or(&step.need),
    ));
    Rule::All(rules)
}

fn need_home(model: &Model, need: &Need) -> Rule {
    match need {
        Need::Is { item, .. } => {
            let Some(chain) = model.chains.get(item) else {
                return Rule::NEVER;
            };
            let mut way: Vec<_> = chain
                .to_take_back(chain.made)
                .iter()
                .map(|link| link.index)
                .collect();
            way.reverse();
            let holds = (0..=way.len()).map(|taken| {
                let stands = chain.on_way_back(chain.made, way.len() - taken);
                need.holds(&|_: &ItemId| stands.clone())
            });
            point(way.clone(), holds)
        }
        Need::All(needs) => Rule::All(needs.iter().map(|need| need_home(model, need)).collect()),
        Need::Any(needs) => Rule::Any(needs.iter().map(|need| need_home(model, need)).collect()),
    }
}
