//! A general constraint solver on the same days: CP-SAT of OR-tools, from PyPI, in an environment
//! of its own in the target folder.

use anyhow::{Context, Result, ensure};
use serde_json::{Value, json};
use stalls::{Does, Floor, Plan, StallNeed, Takes};
use std::io::Write;
use std::path::PathBuf;
use std::process::{Command, Stdio};

/// What it is called in the table.
pub const NAME: &str = "CP-SAT of OR-tools 9.15 on two threads";
const THREADS: &str = "2";
const PACKAGE: &str = "ortools==9.15.6755";
const MODEL: &str = include_str!("model.py");

/// An environment that has the solver.
pub struct Other {
    python: PathBuf,
}

/// What it found for a day.
#[derive(Debug)]
pub struct Answer {
    pub points: Option<i64>,
    pub bound: i64,
}

impl Other {
    /// Finds the solver where an earlier run left it, or installs it.
    pub fn prepare() -> Result<Self> {
        let python = crate::python::with("plan-bench", PACKAGE, "ortools.sat.python.cp_model")?;
        Ok(Self { python })
    }

    /// Lays one day. Its first answer is given to it as a hint, for it finds none by itself in
    /// the time, which is that of the processor if that is asked for.
    pub fn solve(&self, first: &Plan, seconds: f64, processor_time: bool) -> Result<Answer> {
        let by = if processor_time { "processor" } else { "clock" };
        let mut child = Command::new(&self.python)
            .args(["-c", MODEL, &seconds.to_string(), THREADS, by])
            .stdin(Stdio::piped())
            .stdout(Stdio::piped())
            .spawn()
            .context("cannot run python")?;
        let mut input = child.stdin.take().context("python takes no input")?;
        input.write_all(exported(first)?.to_string().as_bytes())?;
        drop(input);
        let output = child.wait_with_output()?;
        ensure!(output.status.success(), "the model fails");
        let read: Value = serde_json::from_slice(&output.stdout).context("no answer")?;
        Ok(Answer {
            points: read["points"].as_i64(),
            bound: read["bound"].as_i64().context("no bound")?,
        })
    }
}

/// A day as the model reads it: everything in open minutes, and the spans of the clock they are.
fn exported(first: &Plan) -> Result<Value> {
    let floor = &first.floor;
    let end = floor.opening.end().context("no hours")?;
    // Beyond the hours given work goes on without end, a day later.
    let beyond = (end + 1440, end + 4 * 1440);
    let ahead = floor.opening.spans().iter().chain([&beyond]);
    let mut spans = Vec::new();
    let mut open = 0;
    for (from, to) in ahead {
        let from = (*from).max(floor.now);
        if from < *to {
            spans.push((open, to - from, from));
            open += to - from;
        }
    }
    let open = |minute: i64| {
        let before = spans.iter().take_while(|span| span.2 <= minute);
        let within = |span: &(i64, i64, i64)| (minute - span.2).min(span.1);
        before.map(within).sum::<i64>()
    };
    let mut orders = Vec::new();
    for (at, order) in floor.orders.iter().enumerate() {
        ensure!(
            order.stands_in.is_none() && order.running.is_none() && order.rolls,
            "{} is more than the model knows",
            order.name
        );
        orders.push(json!({
            "promise": order.promise,
            "weight": order.promise_weight,
            "from": open(order.arrives.map_or(floor.now, |spread| spread.mean())),
            "stretches": stretches(first, at, &open)?,
        }));
    }
    let rules = &floor.rules;
    Ok(json!({
        "spans": spans,
        "people": floor.people.len(),
        "lifts": floor.stalls.iter().map(|stall| stall.lift.is_some()).collect::<Vec<_>>(),
        "orders": orders,
        "broken": rules.broken,
        "late_minute": rules.late_minute,
        "idle_lift_minute": rules.idle_lift_minute,
        "moved": rules.moved,
    }))
}

/// The stalls that suit a stretch if it needs one, the hinted one, and its phases.
type Stretch = (Option<Vec<usize>>, Option<usize>, Vec<Value>);

/// Stretches in one stall, and phases without one; by the rules, told anew.
fn stretches(first: &Plan, at: usize, open: &dyn Fn(i64) -> i64) -> Result<Vec<Value>> {
    let floor: &Floor = &first.floor;
    let order = &floor.orders[at];
    let mut all: Vec<Stretch> = Vec::new();
    let mut rolls = true;
    for (number, phase) in order.phases.iter().enumerate() {
        let hint = first.of(at, number).context("a phase is not placed")?;
        let (need, value) = match &phase.does {
            Does::Work(work) => {
                ensure!(work.helpers == 0, "helpers are more than the model knows");
                let able = (0..floor.people.len()).filter(|one| {
                    let skills = &floor.people[*one].skills;
                    work.skill
                        .as_ref()
                        .is_none_or(|skill| skills.contains(skill))
                });
                let able: Vec<usize> = able.collect();
                (
                    work.stall,
                    json!({
                        "work": work.minutes.mean(),
                        "able": able,
                        "hint": open(hint.from),
                        "hinted": hint.people.first(),
                    }),
                )
            }
            Does::Wait(wait) => (
                StallNeed::No,
                match wait.takes {
                    Takes::Minutes(spread) => json!({ "wait": spread.mean() }),
                    Takes::Comes(spread) => json!({ "comes": open(spread.mean()) }),
                },
            ),
        };
        let suits = |stall: &usize| {
            let lift = floor.stalls[*stall].lift;
            let strong = |lift: stalls::Lift| {
                let both = order.weight_kg.zip(lift.carries_kg);
                both.is_none_or(|(kg, most)| kg <= most)
            };
            match need {
                StallNeed::Lift => lift.is_some_and(strong),
                StallNeed::Flat => lift.is_none(),
                StallNeed::Any | StallNeed::No => true,
            }
        };
        let needs = need != StallNeed::No;
        let stalls: Vec<usize> = (0..floor.stalls.len()).filter(suits).collect();
        if let Some((Some(held), _, phases)) = all.last_mut() {
            let both: Vec<usize> = held
                .iter()
                .copied()
                .filter(|one| stalls.contains(one))
                .collect();
            if !rolls || !phase.rolls && !needs || needs && !both.is_empty() {
                *held = both;
                phases.push(value);
                rolls = phase.rolls;
                continue;
            }
        }
        all.push((needs.then_some(stalls), hint.stall, vec![value]));
        rolls = phase.rolls;
    }
    let told =
        |(stalls, hinted, phases)| json!({ "stalls": stalls, "hinted": hinted, "phases": phases });
    Ok(all.into_iter().map(told).collect())
}
