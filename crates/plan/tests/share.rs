//! Two people on one plan: against a search minute by minute, and carried out on the bench.

#![allow(clippy::unwrap_used, reason = "a test that cannot go on should stop")]

#[allow(dead_code, reason = "other checks ask for more kinds of map")]
mod common;

use common::{Size, random_map};
use plan::{
    Bay, Budget, Minutes, Place, Plan, Shared, Task, Tool, bench, plan, share, steps, tasks,
};
use rand::{RngExt, SeedableRng};
use rand_chacha::ChaCha8Rng;
use std::collections::{BTreeMap, HashMap};

fn random_tasks(chance: &mut ChaCha8Rng) -> (Vec<Task>, Bay) {
    let count = chance.random_range(1..=6);
    let mut tasks = Vec::new();
    for at in 0..count {
        let lift = match chance.random_range(0..4) {
            0 => Some("up".to_owned()),
            1 => Some("down".to_owned()),
            _ => None,
        };
        let lamp = chance.random_range(0..4) == 0;
        tasks.push(Task {
            minutes: Minutes::tenths(chance.random_range(0..=4)),
            lift,
            only_one: lamp.then(|| Tool::new("lamp")).into_iter().collect(),
            runs_by_itself: chance.random_range(0..6) == 0,
            after: (0..at).filter(|_| chance.random_range(0..3) == 0).collect(),
        });
    }
    let bay = Bay {
        lift_at_start: (chance.random_range(0..2) == 0).then(|| "down".to_owned()),
        lift_change: Minutes::tenths(chance.random_range(0..=2)),
        ..Bay::default()
    };
    (tasks, bay)
}

/// Whether turns keep every rule, asked of each rule alone.
fn check(tasks: &[Task], bay: &Bay, people: usize, shared: &Shared) {
    assert_eq!(shared.turns.len(), tasks.len());
    let turn = |task: usize| shared.turns.iter().find(|turn| turn.task == task).unwrap();
    for (at, task) in tasks.iter().enumerate() {
        let mine = turn(at);
        assert_eq!(mine.end, mine.start + task.minutes);
        assert_eq!(mine.person.is_none(), task.runs_by_itself);
        assert!(mine.person.is_none_or(|person| person < people));
        assert!(
            task.after
                .iter()
                .all(|first| turn(*first).end <= mine.start)
        );
        for (other, its) in tasks.iter().enumerate() {
            let theirs = turn(other);
            let overlap = theirs.start < mine.end && mine.start < theirs.end;
            if other == at {
                continue;
            }
            if overlap {
                assert!(mine.person.is_none() || mine.person != theirs.person);
                assert!(task.only_one.is_disjoint(&its.only_one));
            }
            let lifts = (&task.lift, &its.lift);
            if let (Some(one), Some(two)) = lifts
                && one != two
            {
                let change = bay.lift_change;
                let apart = mine.end + change <= theirs.start || theirs.end + change <= mine.start;
                assert!(apart, "{shared:?}");
            }
        }
    }
    let end = shared
        .turns
        .iter()
        .map(|turn| turn.end)
        .max()
        .unwrap_or_default();
    assert_eq!(end, shared.finish);
    assert!(shared.bound <= shared.finish);
}

/// The minutes that each started task has left, how the lift stands, and how long it still moves.
type Moment = (Vec<Option<u32>>, Option<String>, u32);

/// The shortest finish by a search in time: at each tenth of a minute any set of tasks may
/// start. It knows no sequence of starts, no bound and nothing of states that beat each other.
struct InTime<'t> {
    tasks: &'t [Task],
    bay: &'t Bay,
    people: usize,
    known: HashMap<Moment, u32>,
}

impl InTime<'_> {
    /// From now on, with the minutes each started task has left, the stand of the lift and for how
    /// long it still moves: the least time until all is done.
    fn least(
        &mut self,
        left: &[Option<u32>],
        lift: Option<String>,
        moving: u32,
        depth: u32,
    ) -> u32 {
        if left.iter().all(|left| *left == Some(0)) {
            return 0;
        }
        if depth > 60 {
            return u32::MAX / 2;
        }
        let key = (left.to_vec(), lift.clone(), moving);
        if let Some(known) = self.known.get(&key) {
            return *known;
        }
        let mut best = u32::MAX / 2;
        // One more task at this moment.
        for at in 0..left.len() {
            if left[at].is_none() && self.may_start(left, at, lift.as_deref(), moving) {
                let mut next = left.to_vec();
                next[at] = Some(self.tasks[at].minutes.in_tenths());
                let lift = self.tasks[at].lift.clone().or(lift.clone());
                best = best.min(self.least(&next, lift, moving, depth));
            }
        }
        // The lift begins to move, if nothing holds it.
        let held =
            |at: usize| self.tasks[at].lift.is_some() && left[at].is_some_and(|left| left > 0);
        if moving == 0 && self.bay.lift_change.in_tenths() > 0 && !(0..left.len()).any(held) {
            for to in ["up", "down"] {
                if lift.as_deref().is_some_and(|stands| stands != to) {
                    let change = self.bay.lift_change.in_tenths();
                    best = best.min(self.least(left, Some(to.to_owned()), change, depth));
                }
            }
        }
        // A tenth of a minute goes by.
        let busy = left.iter().flatten().any(|left| *left > 0) || moving > 0;
        if busy {
            let next: Vec<_> = left
                .iter()
                .map(|left| left.map(|left| left.saturating_sub(1)))
                .collect();
            best = best.min(1 + self.least(&next, lift, moving.saturating_sub(1), depth + 1));
        }
        self.known.insert(key, best);
        best
    }

    fn may_start(&self, left: &[Option<u32>], at: usize, lift: Option<&str>, moving: u32) -> bool {
        let task = &self.tasks[at];
        let runs = |other: usize| left[other].is_some_and(|left| left > 0);
        let busy = (0..left.len()).filter(|other| runs(*other));
        let hands = busy
            .clone()
            .filter(|other| !self.tasks[*other].runs_by_itself)
            .count();
        let wants = task.lift.as_deref();
        let free = self.bay.lift_change.in_tenths() == 0
            && busy.clone().all(|other| {
                self.tasks[other].lift.is_none() || self.tasks[other].lift == task.lift
            });
        let stands = wants.is_none() || (moving == 0 && (lift.is_none() || lift == wants || free));
        task.after.iter().all(|first| left[*first] == Some(0))
            && (task.runs_by_itself || hands < self.people)
            && stands
            && busy
                .clone()
                .all(|other| self.tasks[other].only_one.is_disjoint(&task.only_one))
    }
}

#[test]
fn small_sharings_are_as_short_as_a_search_in_time_finds() {
    let mut shorter_than_alone = 0;
    for seed in 0..400 {
        let mut chance = ChaCha8Rng::seed_from_u64(seed);
        let (tasks, bay) = random_tasks(&mut chance);
        for people in [1, 2] {
            let shared = share(&tasks, &bay, people, Budget::default());
            check(&tasks, &bay, people, &shared);
            assert!(shared.proven, "seed {seed}");
            let mut in_time = InTime {
                tasks: &tasks,
                bay: &bay,
                people,
                known: HashMap::new(),
            };
            let lift = bay.lift_at_start.clone();
            let least = in_time.least(&vec![None; tasks.len()], lift, 0, 0);
            assert_eq!(
                shared.finish.in_tenths(),
                least,
                "seed {seed}, {people} people: {tasks:?} {bay:?} {shared:?}"
            );
            if people == 2 {
                let alone = share(&tasks, &bay, 1, Budget::default());
                assert!(shared.finish <= alone.finish);
                shorter_than_alone += usize::from(shared.finish < alone.finish);
            }
        }
    }
    assert!(shorter_than_alone > 100, "{shorter_than_alone}");
}

fn bay_of_maps() -> Bay {
    let places: BTreeMap<Place, String> = [("place0", "up"), ("place1", "up"), ("place2", "down")]
        .map(|(place, lift)| (Place::new(place), lift.to_owned()))
        .into();
    Bay {
        lift_for: places,
        lift_at_start: Some("down".to_owned()),
        lift_change: Minutes::tenths(10),
        only_one: [Tool::new("tool0"), Tool::new("tool1")].into(),
    }
}

#[test]
fn a_shared_plan_can_be_carried_out_in_the_sequence_of_its_starts() {
    let mut planned = 0;
    for seed in 0..120 {
        let size = Size {
            items: 14,
            places: 4,
            tools: 4,
            targets: 2,
            all_sorts: seed % 2 == 1,
        };
        let problem = random_map(seed, size);
        let Ok(found) = plan(
            &problem,
            Budget {
                expansions: 100_000,
            },
        ) else {
            continue;
        };
        if !found.no_way_back.is_empty() {
            continue;
        }
        planned += 1;
        let bay = bay_of_maps();
        let tasks = tasks(&problem, &found, &bay);
        let shared = share(&tasks, &bay, 2, Budget { expansions: 20_000 });
        check(&tasks, &bay, 2, &shared);
        let alone = share(&tasks, &bay, 1, Budget { expansions: 20_000 });
        assert!(shared.bound <= alone.finish);
        // The rows in the sequence in which they end, on the plain executor.
        let mut order = shared.turns.clone();
        order.sort_by_key(|turn| (turn.start, turn.end));
        let outs = found.off.len();
        let row = |at: usize| found.off.iter().chain(&found.back).nth(at).unwrap().clone();
        let pick = |out: bool| {
            let turns = order.iter().filter(|turn| (turn.task < outs) == out);
            turns.map(|turn| row(turn.task)).collect::<Vec<_>>()
        };
        let carried = Plan {
            off: pick(true),
            back: pick(false),
            ..found.clone()
        };
        let mut on_bench = bench(&problem);
        for step in steps(&problem, &carried).unwrap() {
            on_bench
                .step(&step)
                .unwrap_or_else(|why| panic!("seed {seed}: {why}"));
        }
    }
    assert!(planned > 60, "{planned}");
}

/// Two targets on maps of forty items: rows enough for a long job, and few states.
#[test]
fn plans_of_the_size_of_a_real_job_are_proven() {
    let mut sooner = 0;
    for seed in 0..20 {
        let size = Size {
            items: 40,
            places: 4,
            tools: 8,
            targets: 2,
            all_sorts: false,
        };
        let problem = random_map(seed, size);
        let found = plan(&problem, Budget { expansions: 60_000 }).unwrap();
        let bay = bay_of_maps();
        let tasks = tasks(&problem, &found, &bay);
        let two = share(&tasks, &bay, 2, Budget { expansions: 5_000 });
        let alone = share(&tasks, &bay, 1, Budget { expansions: 5_000 });
        check(&tasks, &bay, 2, &two);
        assert!(two.proven, "seed {seed}: {} rows", tasks.len());
        sooner += usize::from(two.finish < alone.finish);
    }
    assert!(sooner > 10, "{sooner}");
}

#[test]
fn a_small_budget_still_gives_a_sharing_with_a_bound() {
    let mut chance = ChaCha8Rng::seed_from_u64(7);
    let tasks: Vec<Task> = (0..200)
        .map(|at| Task {
            minutes: Minutes::tenths(chance.random_range(1..60)),
            after: (0..at)
                .filter(|_| chance.random_range(0..60) == 0)
                .collect(),
            ..Task::default()
        })
        .collect();
    for count in [40, 200] {
        let shared = share(
            &tasks[..count],
            &Bay::default(),
            2,
            Budget { expansions: 50 },
        );
        check(&tasks[..count], &Bay::default(), 2, &shared);
        let all: u32 = tasks[..count]
            .iter()
            .map(|task| task.minutes.in_tenths())
            .sum();
        assert!(shared.bound.in_tenths() >= all / 2);
    }
    let none = share(&[], &Bay::default(), 2, Budget::default());
    assert_eq!((none.finish, none.proven), (Minutes::default(), true));
}
