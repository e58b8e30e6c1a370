//! From a map, where things stand and what is wanted, to a problem that can be planned;
//! and from a plan to what an order keeps of it.

mod adopt;
mod asked;
mod learned;
mod names;
mod order;
mod reachable;
mod say;
pub(crate) mod search;
mod shown;
mod standing;
mod two;
mod ways;
mod work;

pub use adopt::{adopt, declared, needs, torque_source};
pub use asked::{Asked, places};
pub use learned::{Learned, job_of, learned, map_id};
pub(crate) use learned::{came_off, is_away, ran_tenths};
pub use names::{in_order, move_of, on_map, step};
pub use order::{OrderMap, map_of_order, on_map_of};
pub use reachable::unreachable;
pub use say::{
    amount, comes_to, depths, goes_back as back_words, hours, hours_exact, in_minutes,
    made as move_words, need_words, time_words, trouble,
};
pub use shown::{Extras, RowShown, Shown, StageShown, choices, only_in, shown};
pub use standing::{last_place, name_on_map, owed_too, standing, to_roll, to_roll_from};
pub use two::{Shares, Turn, shares};
pub use ways::Other;
pub use work::{is_work, owing, sort as sort_of_work};

use map::{Map, MapMove};
use plan::{Changes, Effort, Goal, Item, Minutes, Move, MoveId, Place, Problem, Target, Tool};
use states::{ItemId, Kind, Position, State};
use std::collections::{BTreeMap, BTreeSet};

/// Where the pieces of items stand that are not at home, or not on the map.
pub type Stands = BTreeMap<ItemId, (Kind, BTreeMap<Position, State>)>;

/// The problem of reaching these targets on a vehicle of this map, and of bringing
/// everything home again. What the map does not know but is out is brought home as well.
///
/// Work that falls due only on the road is left out: no plan brings it home. A target
/// that the map does not have is left in, so that the plan names it.
#[must_use]
pub fn problem(map: &Map, targets: &[ItemId], stands: &Stands) -> Problem {
    let in_plan = |item: &ItemId| {
        map.items
            .get(item)
            .is_some_and(|known| known.due_after.is_none())
    };
    let mut items: BTreeMap<ItemId, Item> = map
        .items
        .iter()
        .filter(|(id, _)| in_plan(id))
        .map(|(id, known)| {
            (
                id.clone(),
                Item::group(known.kind, known.count, known.kind.home()),
            )
        })
        .collect();
    for (id, (kind, pieces)) in stands {
        let item = items.entry(id.clone()).or_insert_with(|| Item {
            kind: *kind,
            stands: BTreeMap::new(),
        });
        item.stands.extend(pieces);
    }
    let moves = map.moves().filter(|(item, _)| in_plan(item));
    Problem {
        moves: moves
            .map(|(item, step)| planned_move(item, step, &in_plan))
            .collect(),
        items,
        changes: changes(map),
        start: map.start.as_ref().map(Place::new),
        goal: Goal::Reach(targets.iter().map(|item| target(map, item)).collect()),
        forced_moves: BTreeSet::new(),
        forbidden_moves: BTreeSet::new(),
        forced_places: BTreeSet::new(),
        forbidden_places: BTreeSet::new(),
    }
}

fn changes(map: &Map) -> Changes {
    let between = |((from, to), tenths): (&(String, String), &u32)| {
        ((Place::new(from), Place::new(to)), Minutes::tenths(*tenths))
    };
    Changes {
        place: Minutes::tenths(map.place_change_tenths),
        between: map.between_tenths.iter().map(between).collect(),
        tool: Minutes::tenths(map.tool_change_tenths),
    }
}

fn target(map: &Map, item: &ItemId) -> Target {
    Target {
        item: item.clone(),
        states: map.out_of_the_way(item).unwrap_or_default(),
    }
}

fn planned_move(item: &ItemId, step: &MapMove, in_plan: &impl Fn(&ItemId) -> bool) -> Move {
    let effort = |set_up, per_piece| Effort {
        set_up: Minutes::tenths(set_up),
        per_piece: Minutes::tenths(per_piece),
    };
    let minutes = step.minutes;
    Move {
        id: MoveId::new(&step.id),
        item: item.clone(),
        from: step.from,
        to: step.to,
        need: step.need.clone(),
        back_need: step.need_back.clone(),
        makes_due: step
            .owes
            .iter()
            .filter(|work| in_plan(work))
            .cloned()
            .collect(),
        out: effort(minutes.out_tenths, minutes.each_out_tenths),
        back: effort(minutes.back_tenths, minutes.each_back_tenths),
        lost: Minutes::tenths(step.lost_tenths),
        snag_risk: Minutes::tenths(step.risk_tenths),
        place: step.place.as_ref().map(Place::new),
        back_place: step.place_back.as_ref().map(Place::new),
        tools: step.tools.iter().map(Tool::new).collect(),
        runs_by_itself: step.by_itself,
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use plan::{Budget, Plan, bench, plan, steps};

    fn drayman() -> Map {
        let path = concat!(
            env!("CARGO_MANIFEST_DIR"),
            "/../../demo/maps/korvane-drayman-engine-front.toml"
        );
        let text = std::fs::read_to_string(path).unwrap();
        map::read("drayman", &text).unwrap().map
    }

    fn ids(names: &[&str]) -> Vec<ItemId> {
        names.iter().copied().map(ItemId::new).collect()
    }

    fn planned(problem: &Problem) -> Plan {
        let plan = plan(problem, Budget::default()).unwrap();
        assert!(plan.proven, "gap {}", plan.gap());
        let mut bench = bench(problem);
        for step in steps(problem, &plan).unwrap() {
            bench.step(&step).unwrap();
        }
        assert!(bench.away_from_home().is_empty(), "{bench:?}");
        plan
    }

    fn has(plan: &Plan, item: &str) -> bool {
        plan.off.iter().any(|row| row.item.as_str() == item)
    }

    /// The moves alone: no cost for changing place or tools.
    fn moves_alone(targets: &[&str]) -> Problem {
        let mut problem = problem(&drayman(), &ids(targets), &Stands::new());
        problem.changes = Changes::default();
        problem
    }

    /// What of a plan is neither way to the alternator bolts.
    fn minutes_of(plan: &Plan, items: &[&str]) -> u32 {
        let rows = plan.off.iter().chain(&plan.back);
        let of_these = rows.filter(|row| items.contains(&row.item.as_str()));
        of_these.map(|row| row.minutes.in_tenths()).sum()
    }

    const LINER: [&str; 4] = ["wheel nuts", "wheel", "liner clips", "liner"];
    const SHROUD: [&str; 3] = ["top hose", "shroud screws", "shroud"];

    #[test]
    fn by_moves_alone_the_liner_way_is_taken_for_14_5_minutes() {
        let mut problem = moves_alone(&["housing gasket", "housing o-rings"]);
        let plan = planned(&problem);
        assert_eq!(minutes_of(&plan, &LINER), 145);
        assert!(!has(&plan, "shroud"));
        problem.forbidden_moves.insert(MoveId::new("liner.off"));
        let other = planned(&problem);
        assert_eq!(minutes_of(&other, &SHROUD), 160);
        assert_eq!(other.cost.in_tenths(), plan.cost.in_tenths() + 15);
    }

    #[test]
    fn the_thermostat_as_well_makes_the_shroud_way_11_5_and_cheaper() {
        let plan = planned(&moves_alone(&[
            "housing gasket",
            "housing o-rings",
            "thermostat",
        ]));
        assert!(has(&plan, "shroud") && !has(&plan, "liner"));
        assert_eq!(minutes_of(&plan, &["shroud screws", "shroud"]), 115);
    }

    #[test]
    fn what_changing_place_costs_turns_the_first_answer_over() {
        let problem = problem(&drayman(), &ids(&["housing gasket"]), &Stands::new());
        let plan = planned(&problem);
        assert!(has(&plan, "shroud") && !has(&plan, "liner"));
        let work = |item: &str| plan.back.iter().position(|row| row.item.as_str() == item);
        assert!(
            work("look for leaks") < work("tray"),
            "seen before the tray goes back"
        );
        assert!(work("clean the face") < work("housing"));
    }

    #[test]
    fn what_comes_off_with_another_is_renewed_with_it() {
        let map = drayman();
        let problem = problem(&map, &ids(&["housing gasket"]), &Stands::new());
        let shown = shown(&map, &problem, planned(&problem), &Extras::new());
        let rows = |stages: &[StageShown]| -> Vec<String> {
            let rows = stages.iter().flat_map(|stage| &stage.rows);
            rows.map(|row| row.item.to_string()).collect()
        };
        let (off, back) = (rows(&shown.off), rows(&shown.back));
        let at = |rows: &[String], item: &str| rows.iter().position(|row| row == item).unwrap();
        for (seal, with) in [
            ("drain plug washer", "drain plug"),
            ("housing o-rings", "housing"),
        ] {
            assert_eq!(at(&off, with) + 1, at(&off, seal), "{off:?}");
            assert_eq!(at(&back, seal) + 1, at(&back, with), "{back:?}");
            assert_eq!(off.iter().filter(|row| *row == seal).count(), 1);
        }
        assert_eq!(off.iter().filter(|row| *row == "housing gasket").count(), 1);
        assert_eq!(
            shown.renewed,
            [
                "belt",
                "housing gasket",
                "drain plug washer",
                "housing o-rings"
            ]
        );
        // The belt goes on a pulley that its bolts hold.
        assert!(at(&back, "pulley bolts") < at(&back, "belt"));
    }

    #[test]
    fn an_item_the_map_does_not_have_is_brought_home_too() {
        let shield = ItemId::new("heat shield");
        let stands = [(shield.clone(), (Kind::Cover, [(1, State::Off)].into()))].into();
        let plan = planned(&problem(&drayman(), &ids(&["airbox"]), &stands));
        assert!(plan.back.iter().any(|row| row.item == shield));
    }

    #[test]
    fn every_item_of_the_demo_can_be_reached_and_brought_home() {
        let map = drayman();
        for (item, known) in map
            .items
            .iter()
            .filter(|(_, known)| known.due_after.is_none())
        {
            if !matches!(known.kind, Kind::Work | Kind::PutIn) {
                planned(&problem(&map, std::slice::from_ref(item), &Stands::new()));
            }
        }
    }
}
