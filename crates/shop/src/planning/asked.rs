//! What is asked of a plan, in a map's own names, and as an order keeps it.

use super::names::{code, in_order, move_of, on_map, step};
use super::{Stands, problem};
use map::Map;
use plan::{Goal, MoveId, Place, Problem};
use record::form::Form;
use record::v1::facts::StepForm;
use repair::{Aim, AimIs, ItemId};
use serde_json::{Value, json};
use std::collections::BTreeSet;

/// What is wanted, and what not to do on the way.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Asked {
    /// What sort of aim.
    pub aim: AimIs,
    /// The items to get at.
    pub targets: BTreeSet<ItemId>,
    /// Moves not to make.
    pub without: BTreeSet<MoveId>,
    /// Moves to make in any case.
    pub also: BTreeSet<MoveId>,
    /// Places that cannot be had.
    pub places_taken: BTreeSet<String>,
    /// What this vehicle has of what some of its kind have.
    pub variants: BTreeSet<String>,
}

impl Default for Asked {
    fn default() -> Self {
        Self {
            aim: AimIs::Reach,
            targets: BTreeSet::new(),
            without: BTreeSet::new(),
            also: BTreeSet::new(),
            places_taken: BTreeSet::new(),
            variants: BTreeSet::new(),
        }
    }
}

impl Asked {
    /// What an order aims at. What its map no longer has is left out.
    #[must_use]
    pub fn of(map: &Map, aim: &Aim) -> Self {
        let moves = |steps: &[repair::Step]| {
            let moves = steps.iter().filter_map(|step| move_of(map, step));
            moves.collect()
        };
        let named = |codes: &[repair::Token], all: BTreeSet<String>| {
            let known = |name: &String| codes.contains(&code(name));
            all.into_iter().filter(known).collect()
        };
        Self {
            aim: aim.is,
            targets: aim
                .targets
                .iter()
                .filter_map(|item| on_map(map, item).cloned())
                .collect(),
            without: moves(&aim.without),
            also: moves(&aim.also),
            places_taken: named(&aim.places_taken, places(map)),
            variants: named(&aim.variants, map.variants.clone()),
        }
    }

    /// The fact by which an order keeps this, for a device to send.
    #[must_use]
    pub fn fact(&self, map: &Map, before: Option<&Aim>) -> Value {
        let steps = |moves: &BTreeSet<MoveId>| -> Vec<StepForm> {
            let steps = moves.iter().filter_map(|id| step(map, id));
            steps.map(|step| StepForm::of(&step)).collect()
        };
        let codes = |names: &BTreeSet<String>| -> Vec<String> {
            names
                .iter()
                .map(|name| code(name).as_str().to_owned())
                .collect()
        };
        let targets: Vec<String> = self
            .targets
            .iter()
            .map(|item| in_order(item).as_str().to_owned())
            .collect();
        let after: Vec<&str> = before
            .iter()
            .flat_map(|aim| &aim.told_by)
            .map(repair::CommandId::as_str)
            .collect();
        json!({ "aimed": {
            "aim": record::v1::codes::AimIsForm::of(&self.aim),
            "targets": targets,
            "without": steps(&self.without),
            "also": steps(&self.also),
            "places_taken": codes(&self.places_taken),
            "variants": codes(&self.variants),
            "after": after,
        } })
    }

    /// Whether anything is ruled out or called for.
    #[must_use]
    pub fn is_bent(&self) -> bool {
        !(self.without.is_empty() && self.also.is_empty() && self.places_taken.is_empty())
    }

    /// The same with nothing ruled out or called for.
    #[must_use]
    pub fn straight(&self) -> Self {
        Self {
            without: BTreeSet::new(),
            also: BTreeSet::new(),
            places_taken: BTreeSet::new(),
            ..self.clone()
        }
    }

    /// The problem of coming to this from where things stand. `to_roll` names what must
    /// be home for the vehicle to roll.
    #[must_use]
    pub fn problem(&self, map: &Map, stands: &Stands, to_roll: &BTreeSet<ItemId>) -> Problem {
        let targets: Vec<ItemId> = self.targets.iter().cloned().collect();
        let mut problem = problem(map, &targets, stands);
        problem.goal = match self.aim {
            AimIs::Reach => problem.goal,
            AimIs::Home => Goal::Home(None),
            AimIs::Roll => Goal::Home(Some(to_roll.clone())),
        };
        let known = |id: &&MoveId| problem.moves.iter().any(|made| made.id == **id);
        problem.forbidden_moves = self.without.iter().filter(known).cloned().collect();
        problem.forced_moves = self.also.iter().filter(known).cloned().collect();
        problem.forbidden_places = self.places_taken.iter().map(Place::new).collect();
        problem
    }
}

/// The places of a map.
#[must_use]
pub fn places(map: &Map) -> BTreeSet<String> {
    map.moves()
        .flat_map(|(_, made)| made.places())
        .map(str::to_owned)
        .collect()
}
