//! The benchmark repair's own figures, worked out by hand, and plans taken up in the
//! middle, asked to go another way, or impossible.

#![allow(clippy::unwrap_used, reason = "a test that cannot go on should stop")]

use plan::{
    Because, Budget, Changes, Effort, Goal, Item, Minutes, Move, MoveId, Place, Plan, PlanError,
    Problem, Target, bench, plan, stages, steps,
};
use states::{ItemId, Kind, Need, State};
use std::collections::{BTreeMap, BTreeSet};

fn off(item: &str) -> Need {
    let all = [
        State::Off,
        State::Out,
        State::Cracked,
        State::Low,
        State::Inside,
    ];
    Need::Is {
        item: ItemId::new(item),
        at: Vec::new(),
        states: all.into(),
    }
}

fn is(item: &str, state: State) -> Need {
    Need::Is {
        item: ItemId::new(item),
        at: Vec::new(),
        states: [state].into(),
    }
}

/// A map written row by row; times in tenths of a minute.
struct Map(Problem);

impl Map {
    fn new(targets: &[&str]) -> Self {
        Self(Problem {
            items: BTreeMap::new(),
            moves: Vec::new(),
            changes: Changes::default(),
            start: Some(Place::new("above")),
            goal: reach(targets),
            forced_moves: BTreeSet::new(),
            forbidden_moves: BTreeSet::new(),
            forced_places: BTreeSet::new(),
            forbidden_places: BTreeSet::new(),
        })
    }

    fn item(mut self, name: &str, kind: Kind, place: &str, times: [u32; 2], need: Need) -> Self {
        self.0
            .items
            .insert(ItemId::new(name), Item::one(kind, kind.home()));
        self.row(name, (kind.home(), kind.away()), place, times, need)
    }

    fn row(
        mut self,
        name: &str,
        ends: (State, State),
        place: &str,
        [out, back]: [u32; 2],
        need: Need,
    ) -> Self {
        let id = match ends {
            (State::Cracked, State::Out) => format!("{name}.out"),
            (_, State::Cracked) => format!("{name}.crack"),
            _ => name.to_owned(),
        };
        self.0.moves.push(Move {
            id: MoveId::new(id),
            item: ItemId::new(name),
            from: ends.0,
            to: ends.1,
            need,
            back_need: None,
            makes_due: Vec::new(),
            out: Effort::once(Minutes::tenths(out)),
            back: Effort::once(Minutes::tenths(back)),
            lost: Minutes::default(),
            snag_risk: Minutes::default(),
            place: Some(Place::new(place)),
            back_place: None,
            tools: BTreeSet::new(),
            runs_by_itself: false,
        });
        self
    }
}

fn reach(targets: &[&str]) -> Goal {
    let target = |name: &&str| Target {
        item: ItemId::new(*name),
        states: [State::Off, State::Out].into(),
    };
    Goal::Reach(targets.iter().map(target).collect())
}

fn none() -> Need {
    Need::All(Vec::new())
}

/// The ways to the alternator bolts of the Drayman, and its thermostat.
fn drayman(targets: &[&str]) -> Problem {
    let shroud_or_liner = Need::Any(vec![off("shroud"), off("liner")]);
    Map::new(targets)
        .item("coolant", Kind::Fluid, "above", [100, 280], none())
        .item("top hose", Kind::Hose, "above", [20, 25], off("coolant"))
        .item("shroud screws", Kind::Fasteners, "above", [20, 25], none())
        .item(
            "shroud",
            Kind::Part,
            "above",
            [30, 40],
            Need::All(vec![off("shroud screws"), off("top hose")]),
        )
        .item(
            "wheel nuts",
            Kind::Fasteners,
            "wheel well",
            [20, 40],
            none(),
        )
        .item(
            "wheel",
            Kind::Part,
            "wheel well",
            [10, 10],
            off("wheel nuts"),
        )
        .item(
            "liner clips",
            Kind::Clips,
            "wheel well",
            [20, 20],
            off("wheel"),
        )
        .item(
            "liner",
            Kind::Cover,
            "wheel well",
            [10, 15],
            off("liner clips"),
        )
        .item(
            "alternator bolts",
            Kind::Fasteners,
            "above",
            [50, 60],
            shroud_or_liner,
        )
        .item("thermostat", Kind::Part, "above", [10, 20], off("top hose"))
        .0
}

fn names(rows: &[plan::Planned]) -> Vec<&str> {
    rows.iter().map(|row| row.id.as_str()).collect()
}

fn found(problem: &Problem) -> Plan {
    let plan = plan(problem, Budget::default()).unwrap();
    assert!(plan.proven, "{plan:?}");
    assert_eq!(plan.gap(), Minutes::default());
    plan
}

/// What the bolts alone cost, out and back.
const BOLTS: u32 = 110;
/// What draining and filling costs: the shroud's way only, through the top hose.
const COOLANT: u32 = 380;

#[test]
fn the_liner_way_costs_14_5_minutes_and_the_shroud_way_16() {
    let mut problem = drayman(&["alternator bolts"]);
    // The coolant is out in any case in this repair.
    problem
        .items
        .insert(ItemId::new("coolant"), Item::one(Kind::Fluid, State::Low));
    let plan = found(&problem);
    assert_eq!(plan.cost.in_tenths(), 145 + BOLTS + 280);
    assert!(names(&plan.off).contains(&"liner"));
    problem.forbidden_moves.insert(MoveId::new("liner"));
    let plan = found(&problem);
    assert_eq!(plan.cost.in_tenths(), 160 + BOLTS + 280);
    assert!(names(&plan.off).contains(&"shroud"));
}

#[test]
fn with_the_thermostat_as_well_the_shroud_way_costs_11_5_and_wins() {
    let thermostat = found(&drayman(&["thermostat"])).cost;
    let both = drayman(&["alternator bolts", "thermostat"]);
    let plan = found(&both);
    assert!(names(&plan.off).contains(&"shroud"));
    assert_eq!(plan.cost.in_tenths(), thermostat.in_tenths() + 115 + BOLTS);
    assert_eq!(thermostat.in_tenths(), COOLANT + 45 + 30);
}

#[test]
fn place_changes_above_1_5_minutes_in_all_turn_the_first_answer_over() {
    // To the wheel well, back above, and to the wheel well again on the way home.
    for (each, shroud) in [(4, false), (6, true)] {
        let mut problem = drayman(&["alternator bolts"]);
        problem
            .items
            .insert(ItemId::new("coolant"), Item::one(Kind::Fluid, State::Low));
        problem.changes.place = Minutes::tenths(each);
        let plan = found(&problem);
        assert_eq!(
            names(&plan.off).contains(&"shroud"),
            shroud,
            "{each}: {plan:?}"
        );
        assert_eq!(plan.place_changes, if shroud { 0 } else { 3 });
    }
}

#[test]
fn a_plan_from_the_middle_repeats_nothing_done_and_runs_to_the_end() {
    let mut problem = drayman(&["alternator bolts"]);
    let whole = found(&problem);
    for done in 1..whole.off.len() {
        let row = &whole.off[done - 1];
        let item = problem.items.get_mut(&row.item).unwrap();
        for at in &row.at {
            item.stands.insert(*at, row.to);
        }
        let rest = found(&problem);
        assert_eq!(names(&rest.off), names(&whole.off)[done..]);
        assert_eq!(rest.back.len(), whole.back.len());
        let mut bench = bench(&problem);
        for step in steps(&problem, &rest).unwrap() {
            bench.step(&step).unwrap();
        }
        assert!(bench.away_from_home().is_empty());
    }
}

#[test]
fn a_group_partly_out_takes_its_set_up_and_the_pieces_left() {
    let mut problem = Map::new(&["bolts"])
        .item("bolts", Kind::Fasteners, "above", [0, 0], none())
        .0;
    let effort = Effort {
        set_up: Minutes::tenths(10),
        per_piece: Minutes::tenths(3),
    };
    (problem.moves[0].out, problem.moves[0].back) = (effort, effort);
    let mut bolts = Item::group(Kind::Fasteners, 7, State::Tight);
    bolts.stands.insert(2, State::Out);
    bolts.stands.insert(5, State::Cracked);
    problem.items.insert(ItemId::new("bolts"), bolts.clone());
    let plan = found(&problem);
    assert_eq!(plan.off[0].at, [1, 3, 4, 5, 6, 7]);
    assert_eq!(plan.off[0].minutes.in_tenths(), 10 + 6 * 3);
    assert_eq!(plan.back[0].minutes.in_tenths(), 10 + 7 * 3);
    bolts.stands.insert(6, State::Stub { holds: false });
    problem.items.insert(ItemId::new("bolts"), bolts);
    let error = refused(&problem);
    assert!(
        matches!(error, PlanError::NothingLeadsThere { stub: true, .. }),
        "{error}"
    );
    problem.goal = Goal::Home(None);
    let plan = found(&problem);
    assert_eq!(plan.stays, [(ItemId::new("bolts"), 6)]);
    assert_eq!(plan.back[0].at, [2, 5]);
}

fn refused(problem: &Problem) -> PlanError {
    plan(problem, Budget::default()).unwrap_err()
}

/// Pulley bolts are cracked against the belt, or held by a pin wrench.
fn pulley() -> Problem {
    let held = Need::Any(vec![is("belt", State::On), off("pin wrench")]);
    let mut map = Map::new(&["pulley"])
        .item("belt", Kind::Belt, "above", [20, 40], off("pulley bolts"))
        .item("pin wrench", Kind::PutIn, "above", [40, 0], none())
        .item(
            "pulley",
            Kind::Part,
            "above",
            [10, 10],
            Need::All(vec![is("pulley bolts", State::Out), off("belt")]),
        );
    let bolts = ItemId::new("pulley bolts");
    map.0
        .items
        .insert(bolts, Item::group(Kind::Fasteners, 3, State::Tight));
    let cracked = (State::Tight, State::Cracked);
    let mut problem = map
        .row("pulley bolts", cracked, "above", [10, 10], held)
        .row(
            "pulley bolts",
            (State::Cracked, State::Out),
            "above",
            [20, 20],
            none(),
        )
        .0;
    for step in &mut problem.moves {
        if step.id.as_str() == "belt" {
            let mut states: BTreeSet<_> = [State::Cracked, State::Out].into();
            states.insert(State::Loose { passes: 0 });
            let at = Vec::new();
            step.need = Need::Is {
                item: ItemId::new("pulley bolts"),
                at,
                states,
            };
        }
        if step.id.as_str() == "pulley bolts.crack" {
            step.back_need = Some(is("belt", State::On));
        }
    }
    problem
}

#[test]
fn bolts_are_cracked_while_the_belt_is_on_and_tightened_once_it_is_on_again() {
    let plan = found(&pulley());
    assert_eq!(plan.off[0].id.as_str(), "pulley bolts.crack");
    assert!(!names(&plan.off).contains(&"pin wrench"));
    assert_eq!(plan.back[0].id.as_str(), "pulley");
    assert_eq!(plan.back[3].id.as_str(), "pulley bolts.crack");
    let target = Because::Target(ItemId::new("pulley"));
    assert_eq!(plan.off.last().map(|row| &row.because), Some(&target));
    assert!(matches!(plan.off[0].because, Because::Needed(_)));
}

#[test]
fn a_belt_already_off_is_not_put_back_on_but_the_pin_wrench_is_named() {
    let mut problem = pulley();
    problem
        .items
        .insert(ItemId::new("belt"), Item::one(Kind::Belt, State::Off));
    let plan = found(&problem);
    assert_eq!(names(&plan.off)[..2], ["pin wrench", "pulley bolts.crack"]);
    assert!(names(&plan.off).iter().all(|id| *id != "belt"));
    problem.forbidden_moves.insert(MoveId::new("pin wrench"));
    let error = refused(&problem);
    assert!(matches!(error, PlanError::RuledOut { .. }), "{error}");
    problem.forbidden_moves.clear();
    problem
        .moves
        .retain(|step| step.id.as_str() != "pin wrench");
    let error = refused(&problem);
    assert!(matches!(error, PlanError::BrokenNeed { .. }), "{error}");
}

#[test]
fn a_stated_need_that_no_way_back_keeps_is_said() {
    let mut problem = drayman(&["thermostat"]);
    let hose = problem
        .moves
        .iter_mut()
        .find(|step| step.id.as_str() == "top hose")
        .unwrap();
    hose.back_need = Some(is("coolant", State::AtLevel));
    let coolant = problem
        .moves
        .iter_mut()
        .find(|step| step.id.as_str() == "coolant")
        .unwrap();
    coolant.back_need = Some(is("top hose", State::On));
    let plan = plan(&problem, Budget::default()).unwrap();
    assert!(plan.back.is_empty());
    assert!(
        plan.no_way_back.iter().any(|id| id.as_str() == "top hose"),
        "{plan:?}"
    );
}

#[test]
fn a_circle_is_an_error_only_where_nothing_free_reaches_it() {
    let circle = |free: bool| {
        let mut ways = vec![off("b")];
        if free {
            ways.push(off("c"));
        }
        Map::new(&["a"])
            .item("a", Kind::Part, "above", [10, 10], Need::Any(ways))
            .item("b", Kind::Part, "above", [10, 10], off("a"))
            .item("c", Kind::Part, "above", [10, 10], none())
            .0
    };
    assert_eq!(names(&found(&circle(true)).off), ["c", "a"]);
    let error = refused(&circle(false));
    let PlanError::Circle { moves } = &error else {
        panic!("{error}");
    };
    assert_eq!(moves.len(), 2);
    assert!(error.to_string().contains("a needs b needs a"), "{error}");
}

#[test]
fn able_to_roll_brings_home_only_what_that_takes() {
    let mut problem = drayman(&["alternator bolts"]);
    for (name, kind) in [
        ("wheel nuts", Kind::Fasteners),
        ("wheel", Kind::Part),
        ("liner clips", Kind::Clips),
        ("liner", Kind::Cover),
        ("alternator bolts", Kind::Fasteners),
    ] {
        problem
            .items
            .insert(ItemId::new(name), Item::one(kind, kind.away()));
    }
    let wheel = ["wheel nuts", "wheel"].map(ItemId::new);
    problem.goal = Goal::Home(Some(wheel.into()));
    let roll = found(&problem);
    assert!(roll.off.is_empty());
    assert_eq!(names(&roll.back), ["wheel", "wheel nuts"]);
    problem.goal = Goal::Home(None);
    assert_eq!(found(&problem).back.len(), 5);
}

#[test]
fn a_place_that_is_taken_is_left_out_and_one_asked_for_is_visited() {
    let mut problem = drayman(&["alternator bolts"]);
    problem.changes.place = Minutes::tenths(1);
    problem.forbidden_places.insert(Place::new("wheel well"));
    assert!(names(&found(&problem).off).contains(&"shroud"));
    problem.forbidden_places.clear();
    problem.forced_moves.insert(MoveId::new("shroud screws"));
    let plan = found(&problem);
    let row = plan
        .off
        .iter()
        .find(|row| row.id.as_str() == "shroud screws")
        .unwrap();
    assert_eq!(row.because, Because::AskedFor);
}

#[test]
fn stages_have_one_place_and_at_most_eight_rows() {
    let mut problem = drayman(&["alternator bolts", "thermostat", "liner", "shroud"]);
    problem.changes.place = Minutes::tenths(10);
    let plan = found(&problem);
    let grouped = stages(&plan.off);
    assert_eq!(
        grouped.iter().map(|stage| stage.rows.len()).sum::<usize>(),
        plan.off.len()
    );
    for stage in &grouped {
        assert!(stage.rows.len() <= plan::MOST_ROWS);
        for row in &plan.off[stage.rows.clone()] {
            assert_eq!(row.place, stage.place);
        }
    }
}

#[test]
fn what_runs_by_itself_is_started_early() {
    let mut problem = drayman(&["thermostat", "shroud"]);
    let coolant = problem
        .moves
        .iter_mut()
        .find(|step| step.id.as_str() == "coolant")
        .unwrap();
    coolant.runs_by_itself = true;
    assert_eq!(found(&problem).off[0].id.as_str(), "coolant");
}

#[test]
fn a_budget_too_small_to_prove_gives_the_gap_or_says_so() {
    let mut problem = drayman(&["alternator bolts", "thermostat"]);
    problem.changes.place = Minutes::tenths(5);
    let cheapest = found(&problem).cost;
    for expansions in 1..60 {
        match plan(&problem, Budget { expansions }) {
            Ok(plan) => assert!(plan.bound <= cheapest && cheapest <= plan.cost),
            Err(error) => assert!(matches!(error, PlanError::BudgetSpent { .. }), "{error}"),
        }
    }
}

#[test]
fn times_too_long_to_count_are_refused() {
    let mut problem = drayman(&["thermostat"]);
    problem.moves[0].out.set_up = Minutes::tenths(u32::MAX);
    assert!(matches!(refused(&problem), PlanError::TooLong { .. }));
}
