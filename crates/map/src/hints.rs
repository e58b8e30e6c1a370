//! What a map says that is no error and yet can hardly be meant.

use crate::fields::Fields;
use crate::phrases as say;
use crate::trouble::Troubles;
use crate::value::{Map, MapItem, MapMove};
use crate::words::ZONES;
use std::collections::BTreeMap;

/// Longer than a working day, in tenths of a minute.
const LONG_TENTHS: u32 = 4800;

/// Warns of places that only a slip of the pen tells apart, of times nobody stands by,
/// and of variants that no item has.
pub(crate) fn hints(map: &Map, root: &Fields, troubles: &mut Troubles) {
    variants(map, root, troubles);
    let mut uses: BTreeMap<&str, usize> = BTreeMap::new();
    for (_, step) in map.moves() {
        for place in step.places() {
            *uses.entry(place).or_default() += 1;
        }
    }
    let known = |place: &str| ZONES.contains(&place) || uses.contains_key(place);
    let stand = |troubles: &mut Troubles, place: &str, span| {
        let often = uses.iter().filter(|(_, times)| **times > 1);
        let names = ZONES.into_iter().chain(often.map(|(place, _)| *place));
        let mend = troubles.meant(place, names, say::write_a_named_place());
        troubles.warn(&span, say::nothing_worked_on_at(place), mend);
    };
    if let Some(start) = map.start.as_deref().filter(|start| !known(start)) {
        stand(troubles, start, root.at("start"));
    }
    if let Some(between) = root.table("between", troubles) {
        for (from, _) in between.table.iter() {
            if !known(from) {
                stand(troubles, from, between.key_span(from));
            }
            let Some(to_each) = between.table(from, troubles) else {
                continue;
            };
            for (to, _) in to_each.table.iter().filter(|(to, _)| !known(to)) {
                stand(troubles, to, to_each.key_span(to));
            }
        }
    }
    let mut tools: BTreeMap<&str, usize> = BTreeMap::new();
    for tool in map.moves().flat_map(|(_, step)| &step.tools) {
        *tools.entry(tool).or_default() += 1;
    }
    let Some(items) = root.table("items", troubles) else {
        return;
    };
    for (id, item) in &map.items {
        let Some(fields) = items.table(id.as_str(), troubles) else {
            continue;
        };
        for step in &item.moves {
            let fields = part_of(step, &fields, troubles);
            lone_place(step, &fields, &uses, troubles);
            lone_tools(step, &fields, &tools, troubles);
            long_times(item, step, &fields, troubles);
        }
    }
}

/// Where a move is written: of fasteners that are first cracked, within.
fn part_of<'t>(step: &MapMove, fields: &Fields<'t>, troubles: &mut Troubles) -> Fields<'t> {
    let verb = step.id.rsplit('.').next().unwrap_or_default();
    let within = ["crack", "out"].contains(&verb) && fields.has("crack");
    let within = within.then(|| fields.table(verb, troubles)).flatten();
    within.unwrap_or_else(|| fields.clone())
}

/// A place may have any name; one that is used once, and is near another, has a slip in it.
fn lone_place(
    step: &MapMove,
    fields: &Fields,
    uses: &BTreeMap<&str, usize>,
    troubles: &mut Troubles,
) {
    for (key, place) in [("place", &step.place), ("place-back", &step.place_back)] {
        if let Some(place) = place.as_deref() {
            slip_in_a_place(step, (key, place), fields, uses, troubles);
        }
    }
}

fn slip_in_a_place(
    step: &MapMove,
    (key, place): (&str, &str),
    fields: &Fields,
    uses: &BTreeMap<&str, usize>,
    troubles: &mut Troubles,
) {
    if ZONES.contains(&place) || uses.get(place) != Some(&1) {
        return;
    }
    let others = uses.keys().copied().filter(|other| *other != place);
    let mend = troubles.meant(place, ZONES.into_iter().chain(others), "");
    if !mend.is_empty() {
        let what = say::only_one_worked_on_at(&step.id, place);
        troubles.warn(&fields.at(key), what, mend);
    }
}

/// A tool may have any name; one that is used once, and is spelled nearly as another, has a
/// slip in it. Sizes differ in their digits, so only words are compared.
fn lone_tools(
    step: &MapMove,
    fields: &Fields,
    uses: &BTreeMap<&str, usize>,
    troubles: &mut Troubles,
) {
    let digits = |tool: &str| -> String { tool.chars().filter(char::is_ascii_digit).collect() };
    for tool in step
        .tools
        .iter()
        .filter(|tool| uses.get(tool.as_str()) == Some(&1))
    {
        let often = uses.iter().filter(|(other, times)| {
            **times > 1 && **other != tool.as_str() && digits(other) == digits(tool)
        });
        let mend = troubles.meant(tool, often.map(|(other, _)| *other), "");
        if !mend.is_empty() {
            let what = say::only_one_takes(&step.id, tool);
            troubles.warn(&fields.at("tools"), what, mend);
        }
    }
}

fn long_times(item: &MapItem, step: &MapMove, fields: &Fields, troubles: &mut Troubles) {
    let times = step.minutes;
    let whole = |once: u32, each: u32| once.saturating_add(each.saturating_mul(item.count.into()));
    let out = whole(times.out_tenths, times.each_out_tenths);
    let longest = out.max(whole(times.back_tenths, times.each_back_tenths));
    if longest > LONG_TENTHS && !step.by_itself {
        let what = say::longer_than_a_day(&step.id, longest / 10);
        let mend = say::write_minutes_or_by_itself();
        troubles.warn(&fields.at("minutes"), what, mend);
    }
}

fn variants(map: &Map, root: &Fields, troubles: &mut Troubles) {
    for (variant, span) in root.texts("variants", troubles) {
        if !map
            .items
            .values()
            .any(|item| item.only_with.contains(&variant))
        {
            let what = say::no_item_only_with(&variant);
            let mend = say::add_only_with(&variant);
            troubles.warn(&span, what, mend);
        }
    }
}
