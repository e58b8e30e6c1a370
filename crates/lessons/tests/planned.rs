//! Three jobs with no map, and the fourth is planned from what they have shown.

#![allow(clippy::unwrap_used, reason = "a test fails by panicking")]

use lessons::{Answers, Ask, Job, Joins, Learner, Lessons, Model, Moved, Step, Way};
use plan::{Budget, Changes, Effort, Goal, Item, Minutes, Move, MoveId, Problem, Target, plan};
use states::{ItemId, Kind, Need, State};
use std::collections::BTreeMap;

/// The steps of a fastener group that is cracked while the belt is on, and of what it holds.
const STEPS: [(&str, Kind, State, State); 5] = [
    (
        "pulley bolts",
        Kind::Fasteners,
        State::Tight,
        State::Cracked,
    ),
    ("belt", Kind::Belt, State::On, State::Off),
    ("pulley bolts", Kind::Fasteners, State::Cracked, State::Out),
    ("pulley", Kind::Part, State::On, State::Off),
    (
        "lamp plug",
        Kind::Connector,
        State::Plugged,
        State::Unplugged,
    ),
];

fn job(who: &str, sequence: &[usize]) -> Job {
    let moves = sequence.iter().zip(0..).map(|(step, minute)| {
        let (item, kind, from, to) = STEPS[*step];
        Moved {
            item: ItemId::new(item),
            kind,
            from,
            to,
            minute,
        }
    });
    Job {
        name: format!("order of {who}"),
        by: [who.to_owned()].into(),
        moves: moves.collect(),
        ..Job::default()
    }
}

fn three_jobs() -> Lessons {
    let mut learner = Learner::new(Joins::default());
    for one in [
        job("ana", &[4, 0, 1, 2, 3]),
        job("ben", &[0, 1, 4, 2, 3]),
        job("cyd", &[0, 1, 2, 3, 4]),
    ] {
        assert_eq!(learner.add(&one), []);
    }
    learner.lessons(&Ask {
        way: Way::Out,
        variants: None,
        answers: &Answers::default(),
        model: &Model::default(),
    })
}

fn problem(needs: &BTreeMap<Step, Need>) -> Problem {
    let mut items = BTreeMap::new();
    let mut moves = Vec::new();
    for (nth, (item, kind, from, to)) in STEPS.into_iter().enumerate() {
        let id = ItemId::new(item);
        items.entry(id.clone()).or_insert(Item::one(kind, from));
        let need = needs.get(&Step::new(item, to));
        moves.push(Move {
            id: MoveId::new(format!("{item}.{nth}")),
            item: id,
            from,
            to,
            // A step of the item itself comes first by its ladder.
            need: need.map_or(Need::All(Vec::new()), |need| without(need, item)),
            back_need: None,
            makes_due: Vec::new(),
            out: Effort::once(Minutes::tenths(10)),
            back: Effort::once(Minutes::tenths(10)),
            lost: Minutes::default(),
            snag_risk: Minutes::default(),
            place: None,
            back_place: None,
            tools: [].into(),
            runs_by_itself: false,
        });
    }
    let target = Target {
        item: ItemId::new("pulley"),
        states: [State::Off].into(),
    };
    Problem {
        items,
        moves,
        changes: Changes::default(),
        start: None,
        goal: Goal::Reach(vec![target]),
        forced_moves: [].into(),
        forbidden_moves: [].into(),
        forced_places: [].into(),
        forbidden_places: [].into(),
    }
}

fn without(need: &Need, own: &str) -> Need {
    let Need::All(needs) = need else {
        return need.clone();
    };
    let other = |need: &&Need| !matches!(need, Need::Is { item, .. } if item.as_str() == own);
    Need::All(needs.iter().filter(other).cloned().collect())
}

#[test]
fn the_fourth_job_is_planned_from_three() {
    let lessons = three_jobs();
    let needs = lessons.needs();
    let belt_first = Need::All(vec![Need::Is {
        item: ItemId::new("belt"),
        at: Vec::new(),
        states: [State::Off].into(),
    }]);
    assert_eq!(needs[&Step::new("pulley bolts", State::Out)], belt_first);
    let found = plan(&problem(&needs), Budget::default()).unwrap();
    let rows: Vec<String> = found.off.iter().map(|row| row.id.to_string()).collect();
    // The lamp plug came off at any time, once before and twice after: it may stay.
    assert_eq!(
        rows,
        ["pulley bolts.0", "belt.1", "pulley bolts.2", "pulley.3"]
    );
    let path = lessons.path_to(&[Step::new("pulley", State::Off)]).unwrap();
    let names: Vec<String> = path.steps.iter().map(|one| one.step.to_string()).collect();
    assert_eq!(
        names,
        [
            "pulley bolts cracked",
            "belt off",
            "pulley bolts out",
            "pulley off"
        ]
    );
}
