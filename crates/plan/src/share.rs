//! Tasks shared between people, so that all is finished as soon as can be.

use crate::tasks::{Bay, Task};
use crate::{Budget, Minutes, Tool};
use std::collections::{BTreeMap, BTreeSet, HashMap};

/// One task, with who does it and when.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Turn {
    /// The task, by its index.
    pub task: usize,
    /// Who does it, from 0; nothing for what runs by itself.
    pub person: Option<usize>,
    /// When it starts.
    pub start: Minutes,
    /// When it is finished.
    pub end: Minutes,
}

/// Tasks shared between people.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Shared {
    /// The turns, by their start.
    pub turns: Vec<Turn>,
    /// When all is finished.
    pub finish: Minutes,
    /// Nobody can be finished before this.
    pub bound: Minutes,
    /// Whether nothing finishes sooner.
    pub proven: bool,
    /// States looked at.
    pub expansions: u64,
}

/// So many tasks are searched; more are shared out by rule, with a bound.
const MOST_SEARCHED: usize = 128;

/// Shares tasks between so many people with the shortest finish.
///
/// Each person does one task at a time; what runs by itself takes nobody. The lift stands one
/// way at a time: a task that wants it otherwise waits until it is free and has moved. Of a
/// tool there is only one of, one task at a time has it.
///
/// Every best sharing can be had by starting tasks one after the other, each as early as those
/// started before allow; so all sequences of starts are searched, less those that something
/// at least as good has ruled out: a state with the same tasks started in which nothing is later,
/// or a task that fits in whole before the next would start.
///
/// # Limits
///
/// Walking from place to place costs nothing here, and anybody can do anything. Raising the
/// lift takes its time and nobody's hands. A state of fifty tasks takes some thirty
/// microseconds, so that a page allows tens of thousands of them, not the default of a plan.
/// Where the budget ends first, the best found comes
/// with a bound: the longest chain of waits, all work divided by the people, the lift's stands
/// one after the other, or the work with one tool, whichever is longest.
///
/// ```
/// use plan::{Bay, Budget, Minutes, Task, share};
///
/// let task = |tenths, after: &[usize]| Task {
///     minutes: Minutes::tenths(tenths),
///     after: after.iter().copied().collect(),
///     ..Task::default()
/// };
/// let tasks = [task(30, &[]), task(20, &[]), task(10, &[1]), task(20, &[0, 2])];
/// let two = share(&tasks, &Bay::default(), 2, Budget::default());
/// assert_eq!((two.finish.to_string().as_str(), two.proven), ("5", true));
/// assert_eq!(share(&tasks, &Bay::default(), 1, Budget::default()).finish.to_string(), "8");
/// ```
#[must_use]
pub fn share(tasks: &[Task], bay: &Bay, people: usize, budget: Budget) -> Shared {
    let mut search = Search::new(tasks, bay, people.max(1), budget);
    let state = search.start();
    let root = search.bound(&state);
    search.by_rule(&state);
    if tasks.len() <= MOST_SEARCHED && search.best > root {
        search.expand(&state);
    }
    let spent = search.expansions >= budget.expansions;
    let proven = search.best == root || (tasks.len() <= MOST_SEARCHED && !spent);
    let finish = Minutes::tenths(search.best);
    Shared {
        turns: search.turns(),
        finish,
        bound: if proven {
            finish
        } else {
            Minutes::tenths(root)
        },
        proven,
        expansions: search.expansions,
    }
}

/// When everything that may still matter is free.
type Times = Vec<u32>;

struct Search<'t> {
    tasks: &'t [Task],
    lifts: Vec<Option<usize>>,
    lift_count: usize,
    lift_at_start: Option<usize>,
    change: u32,
    tools: Vec<Vec<usize>>,
    tool_count: usize,
    /// From the start of each task to the end of all that waits for it, at least.
    tails: Vec<u32>,
    people: usize,
    budget: Budget,
    expansions: u64,
    best: u32,
    best_starts: Vec<u32>,
    seen: HashMap<u128, Vec<(Option<usize>, Times)>>,
}

/// What was started, and when everything is free again.
#[derive(Clone)]
struct Started {
    set: Vec<bool>,
    starts: Vec<u32>,
    left: usize,
    /// The start of the task started last.
    now: u32,
    /// When each person is free, the soonest first.
    free: Vec<u32>,
    lift: Option<usize>,
    /// When the last task that needs the lift as it stands ends.
    lift_until: u32,
    tools: Vec<u32>,
}

impl<'t> Search<'t> {
    fn new(tasks: &'t [Task], bay: &Bay, people: usize, budget: Budget) -> Self {
        let named: BTreeSet<&String> = tasks
            .iter()
            .filter_map(|task| task.lift.as_ref())
            .chain(&bay.lift_at_start)
            .collect();
        let lifts: BTreeMap<&String, usize> = named.into_iter().zip(0..).collect();
        let named: BTreeSet<&Tool> = tasks.iter().flat_map(|task| &task.only_one).collect();
        let tools: BTreeMap<&Tool, usize> = named.into_iter().zip(0..).collect();
        let number =
            |lift: &Option<String>| lift.as_ref().and_then(|lift| lifts.get(lift)).copied();
        Self {
            lifts: tasks.iter().map(|task| number(&task.lift)).collect(),
            lift_count: lifts.len(),
            lift_at_start: number(&bay.lift_at_start),
            change: bay.lift_change.in_tenths(),
            tools: tasks
                .iter()
                .map(|task| task.only_one.iter().map(|tool| tools[tool]).collect())
                .collect(),
            tool_count: tools.len(),
            tails: tails(tasks),
            tasks,
            people,
            budget,
            expansions: 0,
            best: u32::MAX,
            best_starts: Vec::new(),
            seen: HashMap::new(),
        }
    }

    fn start(&self) -> Started {
        Started {
            set: vec![false; self.tasks.len()],
            starts: vec![0; self.tasks.len()],
            left: self.tasks.len(),
            now: 0,
            free: vec![0; self.people],
            lift: self.lift_at_start,
            lift_until: 0,
            tools: vec![0; self.tool_count],
        }
    }

    fn minutes(&self, task: usize) -> u32 {
        self.tasks[task].minutes.in_tenths()
    }

    fn end(&self, state: &Started, task: usize) -> u32 {
        state.starts[task] + self.minutes(task)
    }

    fn is_open(&self, state: &Started, task: usize) -> bool {
        let after = &self.tasks[task].after;
        !state.set[task] && after.iter().all(|first| state.set[*first])
    }

    /// The soonest that an open task can start, not before the one started last.
    fn soonest(&self, state: &Started, task: usize) -> u32 {
        let after = self.tasks[task].after.iter();
        let mut at = after
            .map(|first| self.end(state, *first))
            .fold(state.now, u32::max);
        if !self.tasks[task].runs_by_itself {
            at = at.max(state.free[0]);
        }
        if let Some(lift) = self.lifts[task]
            && state.lift.is_some_and(|stands| stands != lift)
        {
            at = at.max(state.lift_until + self.change);
        }
        let tools = self.tools[task].iter();
        tools.map(|tool| state.tools[*tool]).fold(at, u32::max)
    }

    fn begin(&self, state: &Started, task: usize, at: u32) -> Started {
        let mut next = state.clone();
        next.set[task] = true;
        next.starts[task] = at;
        next.left -= 1;
        next.now = at;
        let end = at + self.minutes(task);
        if !self.tasks[task].runs_by_itself {
            next.free[0] = end;
            next.free.sort_unstable();
        }
        if let Some(lift) = self.lifts[task] {
            let stands = next.lift == Some(lift);
            next.lift_until = if stands {
                next.lift_until.max(end)
            } else {
                end
            };
            next.lift = Some(lift);
        }
        for tool in &self.tools[task] {
            next.tools[*tool] = end;
        }
        next
    }

    /// No way on from here finishes before this.
    fn bound(&self, state: &Started) -> u32 {
        let started = (0..self.tasks.len()).filter(|task| state.set[*task]);
        let mut bound = started.map(|task| self.end(state, task)).max().unwrap_or(0);
        let left: Vec<usize> = (0..self.tasks.len())
            .filter(|task| !state.set[*task])
            .collect();
        let mut work = 0;
        let mut lifts = vec![(0_u32, 0_u32); self.lift_count];
        let mut tools = vec![0_u32; self.tool_count];
        for task in left {
            let after = self.tasks[task]
                .after
                .iter()
                .filter(|first| state.set[**first]);
            let ready = after
                .map(|first| self.end(state, *first))
                .fold(state.now, u32::max);
            bound = bound.max(ready + self.tails[task]);
            let minutes = self.minutes(task);
            let by_hand = !self.tasks[task].runs_by_itself;
            work += if by_hand { minutes } else { 0 };
            if let Some(lift) = self.lifts[task] {
                let (longest, all) = &mut lifts[lift];
                *longest = (*longest).max(minutes);
                *all += if by_hand { minutes } else { 0 };
            }
            for tool in &self.tools[task] {
                tools[*tool] += minutes;
            }
        }
        let people = u32::try_from(self.people).unwrap_or(u32::MAX);
        if work > 0 {
            let free: u32 = state.free.iter().map(|free| (*free).max(state.now)).sum();
            // With more people than tasks some would wait for ever, and the rest do the same.
            bound = bound.max((free + work).div_ceil(people));
        }
        let mut lift_work = 0;
        for (lift, (longest, all)) in lifts.iter().enumerate() {
            if *longest > 0 {
                let moves = state.lift.is_some_and(|stands| stands != lift);
                lift_work += (*longest).max(all.div_ceil(people)) + u32::from(moves) * self.change;
            }
        }
        bound = bound.max(state.now + lift_work);
        for (tool, work) in tools.iter().enumerate().filter(|(_, work)| **work > 0) {
            bound = bound.max(state.tools[tool].max(state.now) + work);
        }
        bound
    }

    /// A first sharing: always what starts soonest, of equals what most waits for.
    fn by_rule(&mut self, state: &Started) {
        let mut state = state.clone();
        while let Some((at, _, task)) = self.open(&state).into_iter().next() {
            state = self.begin(&state, task, at);
        }
        self.take(&state);
    }

    /// What can be started, the soonest first, then what most waits for.
    fn open(&self, state: &Started) -> Vec<(u32, u32, usize)> {
        let open = (0..self.tasks.len()).filter(|task| self.is_open(state, *task));
        let mut open: Vec<(u32, u32, usize)> = open
            .map(|task| (self.soonest(state, task), u32::MAX - self.tails[task], task))
            .collect();
        open.sort_unstable();
        open
    }

    fn take(&mut self, state: &Started) {
        // A circle of waits would leave tasks that never start; plans have none.
        if state.left > 0 {
            return;
        }
        let ends = (0..self.tasks.len()).map(|task| self.end(state, task));
        let finish = ends.max().unwrap_or(0);
        if finish < self.best {
            self.best = finish;
            self.best_starts.clone_from(&state.starts);
        }
    }

    fn expand(&mut self, state: &Started) {
        if state.left == 0 {
            self.take(state);
            return;
        }
        if self.expansions >= self.budget.expansions || self.is_beaten(state) {
            return;
        }
        self.expansions += 1;
        let open = self.open(state);
        for (at, _, task) in &open {
            let fits_before = open.iter().any(|(other_at, _, other)| {
                other != task && self.fits_before(state, *other, *other_at, *task, *at)
            });
            if fits_before {
                continue;
            }
            let next = self.begin(state, *task, *at);
            if self.bound(&next) < self.best {
                self.expand(&next);
            }
        }
    }

    /// Whether one task could be over before another would start, at no cost to anything.
    fn fits_before(&self, state: &Started, one: usize, at: u32, other: usize, start: u32) -> bool {
        let moves = |task: usize| self.lifts[task].is_some() && self.lifts[task] != state.lift;
        let end = at + self.minutes(one);
        let change = if moves(other) && self.lifts[one].is_some() {
            self.change
        } else {
            0
        };
        // Of two without any time each would rule out the other.
        let takes_time = end > at;
        takes_time && !moves(one) && end + change <= start
    }

    /// Whether the same tasks were started before with nothing later; if not, it is noted.
    fn is_beaten(&mut self, state: &Started) -> bool {
        let mut key = 0_u128;
        let mut times = vec![state.now];
        let later = |time: u32| time.max(state.now);
        times.extend(state.free.iter().copied().map(later));
        times.extend(state.tools.iter().copied().map(later));
        times.push(later(state.lift_until));
        let mut ends = 0;
        for task in 0..self.tasks.len() {
            if state.set[task] {
                key |= 1 << task;
                ends = ends.max(self.end(state, task));
            } else {
                let after = self.tasks[task]
                    .after
                    .iter()
                    .filter(|first| state.set[**first]);
                times.push(
                    after
                        .map(|first| self.end(state, *first))
                        .fold(state.now, u32::max),
                );
            }
        }
        times.push(ends);
        let known = self.seen.entry(key).or_default();
        let beats = |(lift, other): &(Option<usize>, Times)| {
            *lift == state.lift && other.iter().zip(&times).all(|(other, time)| other <= time)
        };
        if known.iter().any(beats) {
            return true;
        }
        known.retain(|(lift, other)| {
            *lift != state.lift || other.iter().zip(&times).any(|(other, time)| other < time)
        });
        known.push((state.lift, times));
        false
    }

    /// The best starts as turns: each task to whoever is free, and of those to who was
    /// busy last, so that people change as seldom as can be.
    fn turns(&self) -> Vec<Turn> {
        let mut order: Vec<usize> = (0..self.best_starts.len()).collect();
        // What takes no time comes before what starts at the same moment and keeps a person.
        order.sort_by_key(|task| (self.best_starts[*task], self.minutes(*task), *task));
        let mut free = vec![0; self.people];
        let mut turns = Vec::new();
        for task in order {
            let start = self.best_starts[task];
            let end = start + self.minutes(task);
            let person = (!self.tasks[task].runs_by_itself)
                .then(|| {
                    let can = (0..self.people).filter(|person| free[*person] <= start);
                    can.max_by_key(|person| (free[*person], self.people - person))
                })
                .flatten();
            if let Some(person) = person {
                free[person] = end;
            }
            turns.push(Turn {
                task,
                person,
                start: Minutes::tenths(start),
                end: Minutes::tenths(end),
            });
        }
        turns
    }
}

/// From the start of each task to the end of the longest chain that waits for it.
fn tails(tasks: &[Task]) -> Vec<u32> {
    let mut tails: Vec<u32> = tasks.iter().map(|task| task.minutes.in_tenths()).collect();
    // Waits may point either way; so many rounds reach the end of any chain.
    for _ in 0..tasks.len() {
        let mut changed = false;
        for (at, task) in tasks.iter().enumerate() {
            for first in &task.after {
                let longer = tasks[*first].minutes.in_tenths().saturating_add(tails[at]);
                if *first != at && longer > tails[*first] {
                    tails[*first] = longer;
                    changed = true;
                }
            }
        }
        if !changed {
            break;
        }
    }
    tails
}
