//! A general constraint solver on the same maps: CP-SAT of OR-tools, from PyPI, in an
//! environment of its own in the target folder.

use super::Planned;
use anyhow::{Context, Result, bail, ensure};
use plan::{Goal, Problem};
use serde_json::{Value, json};
use states::{ItemId, Need, State};
use std::collections::BTreeSet;
use std::io::Write;
use std::path::PathBuf;
use std::process::{Command, Stdio};
use std::time::Duration;

/// What it is called in the table.
pub const NAME: &str = "CP-SAT of OR-tools 9.15 on one thread";
const PACKAGE: &str = "ortools==9.15.6755";
const MODEL: &str = include_str!("model.py");

/// An environment that has the solver.
pub struct Other {
    python: PathBuf,
}

/// What it found for a map.
#[derive(Debug)]
pub struct Answer {
    pub cost: Option<u32>,
    pub bound: f64,
    pub proven: bool,
    pub took: Duration,
}

impl Other {
    /// Finds the solver where an earlier run left it, or installs it.
    pub fn prepare() -> Result<Self> {
        let python = crate::python::with("plan-bench", PACKAGE, "ortools.sat.python.cp_model")?;
        Ok(Self { python })
    }

    /// Solves each, one after another on one thread.
    pub fn solve(&self, planned: &[Planned], effort: f64) -> Result<Vec<Answer>> {
        let mut child = Command::new(&self.python)
            .args(["-c", MODEL, &effort.to_string()])
            .stdin(Stdio::piped())
            .stdout(Stdio::piped())
            .spawn()
            .context("cannot run python")?;
        let mut input = child.stdin.take().context("python takes no input")?;
        let lines: Vec<_> = planned
            .iter()
            .map(|one| exported(&one.problem).map(|map| map.to_string()))
            .collect::<Result<_>>()?;
        input.write_all(lines.join("\n").as_bytes())?;
        drop(input);
        let output = child.wait_with_output()?;
        ensure!(output.status.success(), "the model fails");
        let text = String::from_utf8(output.stdout)?;
        let answers: Vec<_> = text.lines().map(answer).collect::<Result<_>>()?;
        ensure!(answers.len() == planned.len(), "the model left some out");
        Ok(answers)
    }
}

fn answer(line: &str) -> Result<Answer> {
    let read: Value = serde_json::from_str(line).context("the model printed no answer")?;
    let number = |name: &str| {
        read[name]
            .as_f64()
            .with_context(|| format!("no {name}: {line}"))
    };
    let cost = read["cost"].as_u64().map(u32::try_from).transpose()?;
    Ok(Answer {
        cost,
        bound: number("bound")?,
        proven: read["proven"] == true,
        took: Duration::try_from_secs_f64(number("seconds")?)?,
    })
}

/// A map as the model reads it: moves by number, and needs as numbers of moves that
/// must have been made.
fn exported(problem: &Problem) -> Result<Value> {
    let (mut places, mut tools) = (BTreeSet::new(), BTreeSet::new());
    for step in &problem.moves {
        places.extend(&step.place);
        tools.extend(&step.tools);
    }
    let number = |at: Option<usize>| at.map_or(json!(-1), |at| json!(at));
    let place = |place: &Option<_>| {
        number(
            places
                .iter()
                .position(|known| Some(*known) == place.as_ref()),
        )
    };
    let mut moves = Vec::new();
    for (index, step) in problem.moves.iter().enumerate() {
        ensure!(
            step.tools.len() <= 1
                && step.back_need.is_none()
                && step.back_place.is_none()
                && step.makes_due.is_empty(),
            "{} is more than the model knows",
            step.id
        );
        let pieces = problem.items[&step.item].stands.len();
        let cost = step.out.of(pieces) + step.back.of(pieces) + step.lost + step.snag_risk;
        let before = problem.moves[..index]
            .iter()
            .rposition(|other| other.item == step.item);
        let mut need = vec![exported_need(problem, &step.need)?];
        need.extend(before.map(|before| json!(before)));
        moves.push(json!({
            "cost": cost.in_tenths(),
            "place": place(&step.place),
            "tool": number(tools.iter().position(|tool| step.tools.contains(*tool))),
            "need": { "all": need },
        }));
    }
    let Goal::Reach(targets) = &problem.goal else {
        bail!("the model only knows targets");
    };
    let mut goal: Vec<_> = targets
        .iter()
        .map(|target| after(problem, &target.item, &target.states))
        .collect::<Result<_>>()?;
    let forced = |id: &plan::MoveId| problem.moves.iter().position(|step| step.id == *id);
    goal.extend(
        problem
            .forced_moves
            .iter()
            .filter_map(forced)
            .map(Value::from),
    );
    ensure!(
        problem.changes.between.is_empty(),
        "the model knows one cost for all ways"
    );
    Ok(json!({
        "moves": moves,
        "goal": { "all": goal },
        "start": place(&problem.start),
        "place_change": problem.changes.place.in_tenths(),
        "tool_change": problem.changes.tool.in_tenths(),
    }))
}

fn exported_need(problem: &Problem, need: &Need) -> Result<Value> {
    let inner = |needs: &[Need]| -> Result<Vec<_>> {
        needs
            .iter()
            .map(|need| exported_need(problem, need))
            .collect()
    };
    Ok(match need {
        Need::Is { item, states, .. } => after(problem, item, states)?,
        Need::All(needs) => json!({ "all": inner(needs)? }),
        Need::Any(needs) => json!({ "any": inner(needs)? }),
    })
}

/// The first move of an item that leads to one of these states, all of which must hold
/// for good from there on.
fn after(problem: &Problem, item: &ItemId, states: &BTreeSet<State>) -> Result<Value> {
    let moves = || {
        problem
            .moves
            .iter()
            .enumerate()
            .filter(|(_, step)| step.item == *item)
    };
    let first = moves().find(|(_, step)| states.contains(&step.to));
    let (index, _) = first.with_context(|| format!("nothing brings {item} to {states:?}"))?;
    ensure!(
        moves()
            .filter(|(at, _)| *at >= index)
            .all(|(_, step)| states.contains(&step.to)),
        "{item} must not go on"
    );
    Ok(json!(index))
}
