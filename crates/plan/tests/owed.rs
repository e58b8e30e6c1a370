//! Work that a move owes: it falls due where that move is made, and is done where the
//! cheapest legal sequence puts it. Walks cost what is stated.

#![allow(clippy::unwrap_used, reason = "a test that cannot go on should stop")]

use plan::{
    Because, Budget, Changes, Effort, Goal, Item, Minutes, Move, MoveId, Place, Plan, Problem,
    Target, Way, plan,
};
use states::{ItemId, Kind, Need, State};

fn place(name: &str) -> Place {
    Place::new(name)
}

fn a_move(item: &str, kind: Kind, at: &str, needs: &[(&str, State)]) -> Move {
    let need = |(item, state): &(&str, State)| Need::Is {
        item: ItemId::new(*item),
        at: Vec::new(),
        states: [*state].into(),
    };
    Move {
        id: MoveId::new(format!("{item}.off")),
        item: ItemId::new(item),
        from: kind.home(),
        to: kind.away(),
        need: Need::All(needs.iter().map(need).collect()),
        back_need: None,
        makes_due: Vec::new(),
        out: Effort::once(Minutes::tenths(10)),
        back: Effort::once(Minutes::tenths(10)),
        lost: Minutes::default(),
        snag_risk: Minutes::default(),
        place: Some(place(at)),
        back_place: None,
        tools: [].into(),
        runs_by_itself: false,
    }
}

/// A caliper at the wheel well that owes the pedal in the cabin, ten minutes away.
fn brake() -> Problem {
    let caliper = Move {
        makes_due: vec![ItemId::new("pump the pedal")],
        ..a_move("caliper", Kind::Part, "wheel well", &[])
    };
    let pump = Move {
        out: Effort::default(),
        back_need: Some(Need::Is {
            item: ItemId::new("caliper"),
            at: Vec::new(),
            states: [State::On].into(),
        }),
        ..a_move("pump the pedal", Kind::Work, "cabin", &[])
    };
    Problem {
        items: [
            (ItemId::new("caliper"), Item::one(Kind::Part, State::On)),
            (
                ItemId::new("pump the pedal"),
                Item::one(Kind::Work, State::Done),
            ),
        ]
        .into(),
        moves: vec![caliper, pump],
        changes: Changes {
            place: Minutes::tenths(100),
            ..Changes::default()
        },
        start: Some(place("wheel well")),
        goal: Goal::Reach(vec![Target {
            item: ItemId::new("caliper"),
            states: [State::Off].into(),
        }]),
        forced_moves: [].into(),
        forbidden_moves: [].into(),
        forced_places: [].into(),
        forbidden_places: [].into(),
    }
}

fn rows(plan: &Plan) -> Vec<(String, Way)> {
    let all = plan.off.iter().chain(&plan.back);
    all.map(|row| (row.item.to_string(), row.way)).collect()
}

/// One walk of ten minutes, not two: nobody goes to the cabin for the pedal to fall due.
#[test]
fn owed_work_is_walked_to_once() {
    let found = plan(&brake(), Budget::default()).unwrap();
    let told: Vec<(String, Way)> = [
        ("caliper", Way::Out),
        ("pump the pedal", Way::Out),
        ("caliper", Way::Back),
        ("pump the pedal", Way::Back),
    ]
    .map(|(item, way)| (item.to_owned(), way))
    .into();
    assert_eq!(rows(&found), told);
    assert_eq!(found.off[1].place, None);
    assert_eq!(
        found.off[1].because,
        Because::MadeDue(MoveId::new("caliper.off"))
    );
    assert_eq!(found.place_changes, 1);
    // 1 out, 1 back, 1 to pump, and a walk of 10.
    assert_eq!(found.cost.in_tenths(), 130);
    assert!(found.proven);
}

/// Starting in the cabin, the pedal still comes after the caliper.
#[test]
fn work_never_comes_before_the_move_that_owes_it() {
    let mut problem = brake();
    problem.start = Some(place("cabin"));
    let found = plan(&problem, Budget::default()).unwrap();
    let at = |item: &str| {
        found
            .off
            .iter()
            .position(|row| row.item.as_str() == item)
            .unwrap()
    };
    assert!(at("caliper") < at("pump the pedal"));
    assert_eq!(found.cost.in_tenths(), 230);
}

/// What the work needs counts when it is done: here that the caliper is off.
#[test]
fn what_the_work_needs_says_when_it_is_done() {
    let mut problem = brake();
    problem.moves[1].back_need = Some(Need::Is {
        item: ItemId::new("caliper"),
        at: Vec::new(),
        states: [State::Off].into(),
    });
    let found = plan(&problem, Budget::default()).unwrap();
    let back: Vec<&str> = found.back.iter().map(|row| row.item.as_str()).collect();
    assert_eq!(back, ["pump the pedal", "caliper"]);
}

/// A goes to C for 20; by way of B it would be 2. Nobody meant that.
#[test]
fn a_stated_walk_is_not_undercut_and_holds_both_ways() {
    let item = |name: &str| (ItemId::new(name), Item::one(Kind::Part, State::On));
    let mut problem = Problem {
        items: [item("one"), item("two")].into(),
        moves: vec![
            a_move("one", Kind::Part, "a", &[]),
            a_move("two", Kind::Part, "c", &[("one", State::Off)]),
        ],
        ..brake()
    };
    problem.goal = Goal::Reach(vec![Target {
        item: ItemId::new("two"),
        states: [State::Off].into(),
    }]);
    problem.start = Some(place("b"));
    problem.changes.between = [
        ((place("a"), place("c")), Minutes::tenths(200)),
        ((place("a"), place("b")), Minutes::tenths(10)),
        ((place("b"), place("c")), Minutes::tenths(10)),
    ]
    .into();
    // b to a, a to c, c to a again: 1 + 20 + 20, with four moves of a minute.
    let found = plan(&problem, Budget::default()).unwrap();
    assert_eq!(found.cost.in_tenths(), 10 + 200 + 200 + 40);
    // Unless the way back is stated as well.
    problem
        .changes
        .between
        .insert((place("c"), place("a")), Minutes::tenths(30));
    let found = plan(&problem, Budget::default()).unwrap();
    assert_eq!(found.cost.in_tenths(), 10 + 200 + 30 + 40);
}
