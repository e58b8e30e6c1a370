//! A map as a value.

use crate::learned::{Seen, Settled};
use measure::Measured;
use states::{ItemId, Kind, Need, Position, State};
use std::collections::{BTreeMap, BTreeSet};

/// What is fitted to what on one kind of vehicle.
#[derive(Debug, Clone, Default, PartialEq)]
pub struct Map {
    /// The vehicle, as people call it.
    pub vehicle: String,
    /// Counted up with each change that is kept.
    pub version: u32,
    /// Where one stands at the start.
    pub start: Option<String>,
    /// What changing place costs, in tenths of a minute.
    pub place_change_tenths: u32,
    /// The same between two places, from the first to the second; the other way too, unless
    /// that is stated as well.
    pub between_tenths: BTreeMap<(String, String), u32>,
    /// What taking up another tool costs, in tenths of a minute.
    pub tool_change_tenths: u32,
    /// Who says what the torques are, and when.
    pub sources: BTreeMap<String, Source>,
    /// What some of these vehicles have and others do not.
    pub variants: BTreeSet<String>,
    /// The items.
    pub items: BTreeMap<ItemId, MapItem>,
    /// What finished jobs have shown, by their names.
    pub seen: BTreeMap<String, Seen>,
    /// What a person answered about it.
    pub settled: Settled,
}

/// Who says so, and of which date.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Source {
    /// Who says so.
    pub title: String,
    /// The date, year first.
    pub date: String,
}

/// One item of a map.
#[derive(Debug, Clone, PartialEq)]
pub struct MapItem {
    /// Its kind.
    pub kind: Kind,
    /// The system it belongs to; nothing until told.
    pub system: Option<String>,
    /// Where on the vehicle it is; nothing until told.
    pub zone: Option<String>,
    /// How many pieces.
    pub count: Position,
    /// Its size as written, such as `M6x16 8.8`.
    pub size: Option<String>,
    /// The length of each piece that has one stated.
    pub lengths: BTreeMap<Position, Measured>,
    /// The passes of its torque, as published; empty where none is known.
    pub torque: Vec<Measured>,
    /// The source of the torque, by its name in `sources`.
    pub torque_from: Option<String>,
    /// The sequence of its torque, in words.
    pub pattern: Option<String>,
    /// Whether it may not go back once off.
    pub spent: bool,
    /// How many may be missing, and where none may be.
    pub may_miss: Option<(u16, Vec<Position>)>,
    /// How much it holds, for a fluid, and how much its cock gives.
    pub holds: Option<Measured>,
    /// How much draining gives.
    pub drains: Option<Measured>,
    /// For work, when it falls due if not at once: after a distance or a time on the
    /// road, so that no plan brings it home.
    pub due_after: Option<String>,
    /// For work, what the trade calls it, as a code such as `bleed-brakes`; nothing where
    /// nobody has said.
    pub sort: Option<String>,
    /// What a person should know, as written.
    pub note: Option<String>,
    /// Only on vehicles with one of these variants; empty if on all.
    pub only_with: BTreeSet<String>,
    /// Whether it needs what jobs have shown, rather than what is written.
    pub as_seen: bool,
    /// What jobs have taught that it needs, where the shop wrote that down.
    pub taught: Option<Need>,
    /// The items that it is only guessed to need by what jobs have taught.
    pub guessed: BTreeSet<ItemId>,
    /// What jobs have taught that it needs to go back, where that is not the way out turned
    /// round and the shop wrote it down.
    pub taught_back: Option<Need>,
    /// The items that it is only guessed to need to go back.
    pub guessed_back: BTreeSet<ItemId>,
    /// Its moves out, in their sequence.
    pub moves: Vec<MapMove>,
}

/// One move out, with what its way back takes.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct MapMove {
    /// Its name: the item and a verb, `shroud.off`.
    pub id: String,
    /// Where it starts.
    pub from: State,
    /// Where it leads.
    pub to: State,
    /// What must hold first.
    pub need: Need,
    /// What must hold before it is taken back, where that is another condition.
    pub need_back: Option<Need>,
    /// Work that it makes due.
    pub owes: Vec<ItemId>,
    /// What comes off with it and may not go back: its gasket, its washer.
    pub renews: Vec<ItemId>,
    /// The time it takes.
    pub minutes: MoveTimes,
    /// What is lost or renewed, as tenths of a minute at the labour rate.
    pub lost_tenths: u32,
    /// What may go wrong, in tenths of a minute.
    pub risk_tenths: u32,
    /// Where one stands for it.
    pub place: Option<String>,
    /// Where one stands to take it back, where that is another place.
    pub place_back: Option<String>,
    /// What one holds for it.
    pub tools: BTreeSet<String>,
    /// Whether it runs by itself once started.
    pub by_itself: bool,
}

impl MapMove {
    /// Where one stands for it or to take it back: one place, two, or none.
    pub fn places(&self) -> impl Iterator<Item = &str> {
        self.place
            .iter()
            .chain(&self.place_back)
            .map(String::as_str)
    }
}

/// Tenths of a minute: once, and for each piece.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default)]
pub struct MoveTimes {
    /// Once, on the way out.
    pub out_tenths: u32,
    /// Once, on the way back.
    pub back_tenths: u32,
    /// For each piece, on the way out.
    pub each_out_tenths: u32,
    /// For each piece, on the way back.
    pub each_back_tenths: u32,
}

impl Map {
    /// The map of the vehicles that have exactly these variants: items of others are
    /// left out, and so are needs that ask for them.
    #[must_use]
    pub fn of_variant(&self, variants: &BTreeSet<String>) -> Map {
        let mut map = self.clone();
        map.items
            .retain(|_, item| item.only_with.is_empty() || !item.only_with.is_disjoint(variants));
        let known: BTreeSet<ItemId> = map.items.keys().cloned().collect();
        for step in map.items.values_mut().flat_map(|item| &mut item.moves) {
            step.need = without(&step.need, &known).unwrap_or(Need::All(Vec::new()));
            step.need_back = step
                .need_back
                .take()
                .and_then(|need| without(&need, &known));
            step.owes.retain(|work| known.contains(work));
            step.renews.retain(|seal| known.contains(seal));
        }
        map
    }

    /// The item's own state that ends its way out, as a target.
    #[must_use]
    pub fn out_of_the_way(&self, item: &ItemId) -> Option<BTreeSet<State>> {
        let known = self.items.get(item)?;
        known.moves.last().map(|last| [last.to].into())
    }

    /// All moves, in the sequence of the items' names.
    pub fn moves(&self) -> impl Iterator<Item = (&ItemId, &MapMove)> {
        let items = self.items.iter();
        items.flat_map(|(id, item)| item.moves.iter().map(move |step| (id, step)))
    }
}

impl MapItem {
    /// Whether what it needs follows from the jobs that the map keeps.
    pub(crate) fn by_jobs(&self) -> bool {
        self.as_seen && self.taught.is_none()
    }
}

/// A need without what asks for items that are not there; nothing if all of it did.
fn without(need: &Need, known: &BTreeSet<ItemId>) -> Option<Need> {
    let kept = |needs: &[Need]| -> Vec<Need> {
        needs
            .iter()
            .filter_map(|need| without(need, known))
            .collect()
    };
    match need {
        Need::Is { item, .. } => known.contains(item).then(|| need.clone()),
        Need::All(needs) => Some(Need::All(kept(needs))),
        Need::Any(needs) => {
            let kept = kept(needs);
            (!kept.is_empty()).then_some(Need::Any(kept))
        }
    }
}
