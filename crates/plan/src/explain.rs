//! Why a goal cannot be reached: the need, the circle, or what was ruled out.

use crate::PlanError;
use crate::forced::reached;
use crate::model::Model;
use crate::problem::{Goal, Problem};
use crate::rule::{Rule, Set};
use crate::solve::Wanted;
use states::{ItemId, State};

/// Passes if everything wanted can be reached by starting from what is free.
pub(crate) fn explain(
    problem: &Problem,
    model: &Model,
    rules: &[Rule],
    goal: &Wanted,
    allowed: &Set,
) -> Result<(), PlanError> {
    let reached = reached(rules, allowed);
    for (item, rule) in goal {
        if rule.held(&reached) {
            continue;
        }
        let missing = asked(rule).minus(&reached);
        let Some(first) = missing.iter().next() else {
            return Err(nothing_leads_there(problem, item.as_ref()));
        };
        return Err(missing.and(allowed).iter().next().map_or_else(
            || PlanError::RuledOut {
                id: model.moves[first].id.clone(),
            },
            |from| {
                let going_home = matches!(problem.goal, Goal::Home(Some(_)));
                follow(model, rules, &reached, allowed, going_home, from)
            },
        ));
    }
    Ok(())
}

fn asked(rule: &Rule) -> Set {
    let mut asked = Set::default();
    rule.asked(&mut asked);
    asked
}

fn nothing_leads_there(problem: &Problem, item: Option<&ItemId>) -> PlanError {
    let wanted = match &problem.goal {
        Goal::Reach(targets) => targets
            .iter()
            .find(|target| Some(&target.item) == item)
            .map(|target| target.states.iter().copied().collect())
            .unwrap_or_default(),
        Goal::Home(_) => Vec::new(),
    };
    let Some(item) = item else {
        return PlanError::NothingAtPlace;
    };
    let stands = problem.items.get(item).map(|known| &known.stands);
    let is_stub = |state: &State| matches!(state, State::Stub { .. });
    PlanError::NothingLeadsThere {
        item: item.clone(),
        wanted,
        stub: stands.is_some_and(|stands| stands.values().any(is_stub)),
    }
}

/// Goes from a move that cannot be reached to what it waits for, until that is
/// nothing at all or a move met before.
fn follow(
    model: &Model,
    rules: &[Rule],
    reached: &Set,
    allowed: &Set,
    going_home: bool,
    from: usize,
) -> PlanError {
    let mut path = vec![from];
    let mut at = from;
    loop {
        let missing = asked(&unmet(&rules[at], reached)).minus(reached);
        let Some(first) = missing.iter().next() else {
            let step = &model.moves[at];
            let back = step.back_need.as_ref().filter(|_| going_home);
            return PlanError::BrokenNeed {
                id: step.id.clone(),
                need: back.unwrap_or(&step.need).clone(),
            };
        };
        let Some(next) = missing.and(allowed).iter().next() else {
            return PlanError::RuledOut {
                id: model.moves[first].id.clone(),
            };
        };
        if let Some(met) = path.iter().position(|step| *step == next) {
            return PlanError::Circle {
                moves: path[met..]
                    .iter()
                    .map(|index| model.moves[*index].id.clone())
                    .collect(),
            };
        }
        path.push(next);
        at = next;
    }
}

/// The first part of a rule that is not met: what must be mended first.
fn unmet(rule: &Rule, reached: &Set) -> Rule {
    match rule {
        Rule::All(rules) => rules
            .iter()
            .find(|rule| !rule.held(reached))
            .map_or(Rule::ALWAYS, |rule| unmet(rule, reached)),
        other => other.clone(),
    }
}
