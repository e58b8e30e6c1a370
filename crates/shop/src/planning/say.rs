//! Moves, needs and what keeps a plan from being made, in words.

use crate::phrases::planning as words;
use crate::say::{self, figures};
use crate::trouble::{Trouble, TroubleKind};
use map::{Map, MapMove};
use measure::Measured;
use plan::{Minutes, MoveId, PlanError, Way};
use repair::{ItemId, Kind, Need, State};
use rust_decimal::{Decimal, RoundingStrategy};
use std::collections::BTreeMap;

/// A move of the map in words: `top hose off`.
#[must_use]
pub fn made(map: &Map, id: &MoveId) -> String {
    let found = map.moves().find(|(_, made)| made.id == id.as_str());
    found.map_or_else(
        || id.to_string(),
        |(item, made)| {
            let kind = map.items.get(item).map_or(Kind::Part, |known| known.kind);
            words::moved(item, comes_to(kind, made.to, Way::Out))
        },
    )
}

/// What wants something first: work is done, everything else comes off.
fn wanting(map: &Map, id: &MoveId) -> String {
    let found = map.moves().find(|(_, made)| made.id == id.as_str());
    let kind = found.and_then(|(item, _)| map.items.get(item));
    match kind.is_some_and(|known| known.kind == Kind::Work) {
        true => goes_back(map, id),
        false => made(map, id),
    }
}

/// The same move taken back: `top hose on`.
#[must_use]
pub fn goes_back(map: &Map, id: &MoveId) -> String {
    let found = map.moves().find(|(_, made)| made.id == id.as_str());
    found.map_or_else(
        || id.to_string(),
        |(item, made)| {
            let kind = map.items.get(item).map_or(Kind::Part, |known| known.kind);
            words::moved(item, comes_to(kind, made.from, Way::Back))
        },
    )
}

/// What a row comes to, in a word or two.
#[must_use]
pub fn comes_to(kind: Kind, to: State, way: Way) -> &'static str {
    match (kind, to, way) {
        (Kind::PutIn, State::Inside, _) => words::put_in(),
        (Kind::PutIn, State::Outside, _) => words::removed(),
        (Kind::Fluid, State::Low, _) => words::drained(),
        (Kind::Fluid, State::AtLevel, _) => words::filled_to_its_level(),
        (Kind::Work, State::Due, _) => words::owed(),
        (Kind::Work, State::Done, _) => words::done(),
        (Kind::Fasteners, State::Cracked, Way::Back) => words::on_not_tight(),
        (kind, to, _) => say::state(kind, to),
    }
}

/// Why there is no plan, as a page, the command line and the JSON door say it.
#[must_use]
pub fn trouble(map: &Map, error: &PlanError) -> Trouble {
    let allow = words::allow_or_name_others();
    let (what, mend) = match error {
        PlanError::RuledOut { id } => (words::nothing_replaces(made(map, id)), allow.to_owned()),
        PlanError::BrokenNeed { id, need: missing } => (
            words::wants_first(wanting(map, id), map::said(map, missing)),
            allow.to_owned(),
        ),
        PlanError::NoSuchItem { item, .. } => (
            words::map_has_no(item),
            words::name_as_the_map_does().to_owned(),
        ),
        PlanError::Circle { moves } => {
            let moves: Vec<_> = moves.iter().map(|id| made(map, id)).collect();
            (
                words::wait_for_each_other(moves.join(", ")),
                words::allow_another_way().to_owned(),
            )
        }
        other => {
            let (what, mend) = unsound(other);
            (what, mend.unwrap_or(allow).to_owned())
        }
    };
    Trouble::new(TroubleKind::Refused, words::the_plan(), what, mend)
}

/// What is wrong with a map's moves, or too much for a plan, and how it is mended.
fn unsound(error: &PlanError) -> (String, Option<&'static str>) {
    match error {
        PlanError::NoSuchMove { id } => (words::no_such_move(id), Some(words::name_a_move())),
        PlanError::SameName { id } => (words::two_moves_named(id), Some(words::rename_one())),
        PlanError::NotOutward { id, from, to } => (
            words::not_outward(id, format!("{from:?}"), format!("{to:?}")),
            Some(words::state_the_way_out()),
        ),
        PlanError::NotOneWay { item, id } => {
            (words::not_one_way(item, id), Some(words::join_the_moves()))
        }
        PlanError::NeedsItself { id, item } => (
            words::needs_itself(id, item),
            Some(words::take_out_of_the_need()),
        ),
        PlanError::TooManyMoves { count, limit } => (
            words::too_many_moves(count, limit),
            Some(words::leave_out_far_items()),
        ),
        PlanError::TooLong { limit } => {
            (words::times_too_long(limit), Some(words::correct_longest()))
        }
        PlanError::NothingLeadsThere { item, wanted, stub } => match stub {
            true => (words::stub_in_the_way(item, format!("{wanted:?}")), None),
            false => (
                words::nothing_leads_there(item, format!("{wanted:?}")),
                Some(words::add_its_move()),
            ),
        },
        PlanError::NothingAtPlace => (
            words::nothing_at_place().to_owned(),
            Some(words::take_the_place_out()),
        ),
        PlanError::NoSequence => (
            words::no_sequence().to_owned(),
            Some(words::check_needs_in_place()),
        ),
        PlanError::HomeAtForbiddenPlace { id, place } => (
            words::home_at_ruled_out(id, place),
            Some(words::allow_the_place()),
        ),
        PlanError::BudgetSpent { expansions } => (
            words::no_plan_within(expansions),
            Some(words::allow_more_states()),
        ),
        // These are said with the map's own words.
        PlanError::NoSuchItem { .. }
        | PlanError::BrokenNeed { .. }
        | PlanError::RuledOut { .. }
        | PlanError::Circle { .. } => (error.to_string(), None),
    }
}

/// A need in words; nothing if it asks for nothing.
#[must_use]
pub fn need_words(map: &Map, stated: &Need) -> Option<String> {
    (!stated.items().is_empty()).then(|| map::said(map, stated))
}

/// The times of a move, in minutes.
#[must_use]
pub fn time_words(made: &MapMove, count: u16) -> String {
    let minutes = |once: u32, each: u32| {
        Minutes::tenths(once) + Minutes::tenths(each).times(usize::from(count))
    };
    let out = minutes(made.minutes.out_tenths, made.minutes.each_out_tenths);
    let back = minutes(made.minutes.back_tenths, made.minutes.each_back_tenths);
    words::out_and_back(in_minutes(out), in_minutes(back))
}

/// Minutes as they are written in what is spoken.
#[must_use]
pub fn in_minutes(minutes: Minutes) -> String {
    figures(&minutes.to_string())
}

/// How much a map says: as it is written there, but the mark of decimals is that of what is
/// spoken, and a litre has the letter that it has on every other page.
#[must_use]
pub fn amount(said: &Measured) -> String {
    let written = figures(said.written());
    match written.strip_suffix(" l") {
        Some(litres) => format!("{litres} L"),
        None => written,
    }
}

/// A time as hours, for the price of labour: to the hundredth, 36 seconds, as bills say it.
#[must_use]
pub fn hours(minutes: Minutes) -> String {
    const TENTHS_AN_HOUR: u32 = 600;
    let hours = Decimal::from(minutes.in_tenths()) / Decimal::from(TENTHS_AN_HOUR);
    hours
        .round_dp_with_strategy(2, RoundingStrategy::MidpointAwayFromZero)
        .normalize()
        .to_string()
}

/// The same for an entry of the price, so that hours times a rate come to what the minutes
/// come to.
#[must_use]
pub fn hours_exact(minutes: Minutes) -> String {
    const TENTHS_AN_HOUR: u32 = 600;
    // The least of a rate's coins shows at about the tenth digit of a month of work.
    const DIGITS: u32 = 10;
    let hours = Decimal::from(minutes.in_tenths()) / Decimal::from(TENTHS_AN_HOUR);
    hours
        .round_dp_with_strategy(DIGITS, RoundingStrategy::MidpointAwayFromZero)
        .normalize()
        .to_string()
}

/// How deep each item sits: 0 for what can be moved at once, else one more than the
/// deepest thing that must move before it. Of several ways the nearest counts.
#[must_use]
pub fn depths(map: &Map) -> BTreeMap<ItemId, usize> {
    let mut depths: BTreeMap<ItemId, usize> = BTreeMap::new();
    // Each round settles at least one more item, or none ever will.
    for _ in 0..map.items.len() {
        for (item, known) in &map.items {
            let deepest = known
                .moves
                .iter()
                .map(|made| depth(map, &made.need, &depths))
                .try_fold(0, |all, one| one.map(|one: usize| all.max(one)));
            if let Some(deepest) = deepest {
                let depth = depths.entry(item.clone()).or_insert(deepest);
                *depth = (*depth).min(deepest);
            }
        }
    }
    depths
}

fn depth(map: &Map, need: &Need, known: &BTreeMap<ItemId, usize>) -> Option<usize> {
    match need {
        Need::Is { item, states, .. } => {
            let home = map.items.get(item)?.kind.home();
            if states.contains(&home) {
                return Some(0);
            }
            known.get(item).map(|depth| depth + 1)
        }
        Need::All(needs) => needs
            .iter()
            .map(|need| depth(map, need, known))
            .try_fold(0, |all, one| one.map(|one| all.max(one))),
        Need::Any(needs) => needs
            .iter()
            .filter_map(|need| depth(map, need, known))
            .min(),
    }
}
