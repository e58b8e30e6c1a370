//! What an order teaches a map: the sequence in which things came off, by whom, and how
//! long it took where somebody's clock ran.

use super::names::code;
use crate::maps::KeptMap;
use crate::phrases::order::no_order;
use crate::phrases::planning as words;
use crate::snapshot::Snapshot;
use crate::trouble::Trouble;
use jiff::Timestamp;
use map::{Job, JobItem, JobTorque};
use record::v1::codes::{SystemForm, ZoneForm};
use repair::{
    Account, Clock, Fact, ItemId, Kind, MapId, Order, StageId, State, Stated, System, Zone,
    adoption,
};
use std::collections::BTreeMap;

/// A map's text with what an order has shown added to it.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Learned {
    /// The map: the one the order works by, else the one of its vehicle, else a new one.
    pub map: MapId,
    /// The version the text grew from; 0 for a new map.
    pub from: u32,
    /// The text; nothing is kept of it yet.
    pub text: String,
    /// How many things came off.
    pub things: usize,
}

/// The name of a map for a vehicle that has none yet.
#[must_use]
pub fn map_id(vehicle: &str) -> MapId {
    MapId::new(code(&vehicle.to_lowercase()).as_str())
}

/// The map of an order's vehicle, bettered by what the order has shown.
///
/// # Errors
/// [`Trouble`]: there is no such order, nothing came off in it, or the map's text is no
/// TOML.
pub fn learned(snap: &Snapshot<'_>, number: u64, vehicle: &str) -> Result<Learned, Trouble> {
    let (job, adopted) = {
        let world = snap.world();
        let id = world
            .order_numbered(number)?
            .ok_or_else(|| Trouble::not_found(no_order(number)))?;
        let order = world.order(&id)?;
        let label = |words| snap.texts().text(words);
        let job = job_of(&order, &format!("order {number}"), vehicle, &label);
        (job, adoption(&order).map(|adopted| adopted.map.clone()))
    };
    if job.off.is_empty() {
        return Err(Trouble::not_found(words::nothing_to_learn(number)));
    }
    let of_vehicle = || -> Result<Option<MapId>, Trouble> {
        let shelf = snap.maps()?;
        let is_it = |kept: &KeptMap| {
            kept.sound()
                .is_ok_and(|map| map.vehicle.eq_ignore_ascii_case(vehicle))
        };
        Ok(shelf
            .iter()
            .find(|one| is_it(&one.newest))
            .map(|one| one.newest.id.clone()))
    };
    let known = match adopted {
        Some(map) => Some(map),
        None => of_vehicle()?,
    };
    let kept = known.map(|map| snap.map(&map, None)).transpose()?;
    let text = kept.as_ref().map_or("", |kept| &kept.text);
    let text = map::merge(text, &job).map_err(|error| {
        Trouble::unreadable(words::the_map(), error.message(), words::mend_its_newest())
    })?;
    Ok(Learned {
        map: kept
            .as_ref()
            .map_or_else(|| map_id(vehicle), |kept| kept.id.clone()),
        from: kept.as_ref().map_or(0, |kept| kept.version),
        text,
        things: job.off.len(),
    })
}

/// An order as a map sees it. `label` gives the words of an item's name.
#[must_use]
pub fn job_of(
    order: &Order,
    name: &str,
    vehicle: &str,
    label: &dyn Fn(repair::Words) -> String,
) -> Job {
    let account = Account::of(order);
    let moved = account
        .moves
        .items()
        .flat_map(|item| account.moves.live(item));
    let by = moved.filter(|(_, node)| node.stated == Stated::Moved);
    let by = by.map(|(_, node)| node.stamp.who.as_str().to_owned());
    let mut job = Job {
        name: name.to_owned(),
        vehicle: vehicle.to_owned(),
        by: by.collect(),
        off: Vec::new(),
    };
    let times = times(order, &account);
    let told_on = order.facts().map(|(_, filed)| filed.stamp.at).max();
    let told_on = told_on.map_or_else(String::new, |at| {
        jiff::tz::Offset::UTC.to_datetime(at).date().to_string()
    });
    for (item, called) in came_off(order, label) {
        let Some(known) = account.items.get(&item) else {
            continue;
        };
        let (out, back) = times.get(&item).copied().unwrap_or_default();
        let lengths = known
            .pieces
            .iter()
            .filter_map(|piece| Some((piece.position, piece.length.as_ref()?.as_str().to_owned())));
        job.off.push(JobItem {
            name: called,
            kind: known.kind,
            count: u16::try_from(known.pieces.len().max(1)).unwrap_or(u16::MAX),
            size: known.size.as_ref().map(|size| size.as_str().to_owned()),
            lengths: lengths.collect(),
            system: (known.system != System::Unknown)
                .then(|| spoken(SystemForm::word(known.system))),
            zone: (known.zone != Zone::Unknown).then(|| spoken(ZoneForm::word(known.zone))),
            holds: known.holds.as_ref().map(|holds| holds.as_str().to_owned()),
            torque: torque(known, &told_on, label),
            spent: known.spent,
            out_tenths: out,
            back_tenths: back,
        });
    }
    job
}

/// What came off in an order, in that sequence, each with what it is called.
pub(crate) fn came_off(
    order: &Order,
    label: &dyn Fn(repair::Words) -> String,
) -> Vec<(ItemId, String)> {
    let account = Account::of(order);
    let mut first: BTreeMap<&ItemId, (Timestamp, usize)> = BTreeMap::new();
    for (at, item) in account.moves.items().enumerate() {
        let moved = account
            .moves
            .live(item)
            .filter(|(_, node)| node.stated == Stated::Moved);
        let kind = account
            .items
            .get(item)
            .map_or(Kind::Part, |known| known.kind);
        for (_, node) in moved.filter(|(_, node)| is_away(kind, node.change.left.state)) {
            let seen = first.entry(item).or_insert((node.stamp.at, at));
            seen.0 = seen.0.min(node.stamp.at);
        }
    }
    let mut sequence: Vec<(Timestamp, usize, usize, &ItemId)> = first
        .into_iter()
        .map(|(item, (when, at))| (when, place_in_stage(order, item), at, item))
        .collect();
    sequence.sort();
    let mut out: Vec<(ItemId, String)> = Vec::new();
    for (.., item) in sequence {
        let Some(known) = account
            .items
            .get(item)
            .filter(|known| known.kind != Kind::Work)
        else {
            continue;
        };
        let mut called = label(known.label).trim().to_owned();
        if called.is_empty() {
            continue;
        }
        // Two things under one name are two things all the same.
        let taken = |name: &str| out.iter().any(|(_, other)| other == name);
        if taken(&called) {
            let nth = (2..)
                .find(|nth| !taken(&format!("{called}, {nth}")))
                .unwrap_or(2);
            called = format!("{called}, {nth}");
        }
        out.push((item.clone(), called));
    }
    out
}

/// A torque with who says it; one that nobody stands for is not learned. A source that names no
/// date was as good as on the day it was told.
fn torque(
    item: &repair::Item,
    told_on: &str,
    label: &dyn Fn(repair::Words) -> String,
) -> Option<JobTorque> {
    let pattern = item.pattern.as_ref()?;
    let title = label(pattern.source?).trim().to_owned();
    if title.is_empty() || pattern.passes.is_empty() {
        return None;
    }
    let passes = pattern.passes.iter().map(|pass| pass.as_str().to_owned());
    let date = title.split(|c: char| !c.is_ascii_digit() && c != '-');
    let date = date
        .map(|word| word.trim_matches('-'))
        .find(|word| is_date(word))
        .unwrap_or(told_on);
    Some(JobTorque {
        passes: passes.collect(),
        date: date.to_owned(),
        title,
    })
}

/// A year, a month of one or a day, year first.
fn is_date(word: &str) -> bool {
    let day = format!(
        "{word}{}",
        ["-01-01", "-01", ""][word.matches('-').count().min(2)]
    );
    word.len() >= 4 && day.parse::<jiff::civil::Date>().is_ok()
}

/// A code as the trade says it.
fn spoken(code: &str) -> String {
    code.replace(['_', '-'], " ")
}

pub(crate) fn is_away(kind: Kind, state: State) -> bool {
    state.rung() == kind.away()
        || (kind != Kind::PutIn && !state.in_place() && state != kind.home())
}

/// Within one stage, all of which is told at once, the sequence in which it was written.
fn place_in_stage(order: &Order, item: &ItemId) -> usize {
    let moves = order.facts().filter_map(|(_, filed)| match &filed.fact {
        Fact::Moved { moves, .. } => moves.iter().position(|moved| moved.item == *item),
        _ => None,
    });
    moves.min().unwrap_or(0)
}

/// The longest that a stage is taken to have lasted: past it, somebody forgot the clock.
const LONGEST_MINUTES: i64 = 240;

/// Each item's share of the time that a clock ran on its stage, in tenths of a minute.
fn times(order: &Order, account: &Account) -> BTreeMap<ItemId, (Option<u32>, Option<u32>)> {
    let mut clocks: BTreeMap<&StageId, Vec<(Timestamp, Clock)>> = BTreeMap::new();
    for (_, filed) in order.facts() {
        if let Fact::Timed { stage, clock, .. } = &filed.fact {
            clocks
                .entry(stage)
                .or_default()
                .push((filed.stamp.at, *clock));
        }
    }
    let mut times: BTreeMap<ItemId, (Option<u32>, Option<u32>)> = BTreeMap::new();
    for (_, filed) in order.facts() {
        let Fact::Moved {
            stage: Some(stage),
            moves,
        } = &filed.fact
        else {
            continue;
        };
        let Some(ran) = clocks
            .get(stage)
            .and_then(|clock| ran_tenths(clock, filed.stamp.at))
        else {
            continue;
        };
        let many = u32::try_from(moves.len().max(1)).unwrap_or(u32::MAX);
        let share = (ran + many / 2) / many;
        for moved in moves {
            let item = account.moves.name(&moved.item).clone();
            let kind = account
                .items
                .get(&item)
                .map_or(Kind::Part, |known| known.kind);
            let both = times.entry(item).or_default();
            let way = match is_away(kind, moved.left.state) {
                true => &mut both.0,
                false => &mut both.1,
            };
            *way = Some(share);
        }
    }
    times
}

/// How long a clock ran until a stage was confirmed, pauses left out.
pub(crate) fn ran_tenths(clock: &[(Timestamp, Clock)], until: Timestamp) -> Option<u32> {
    let mut clock: Vec<_> = clock.iter().filter(|(at, _)| *at <= until).collect();
    clock.sort_by_key(|(at, _)| *at);
    let mut since: Option<Timestamp> = None;
    let mut seconds = 0;
    let mut started = false;
    for (at, what) in clock {
        match what {
            Clock::Opened | Clock::Resumed => {
                started = true;
                since.get_or_insert(*at);
            }
            Clock::Paused | Clock::Left => {
                seconds += since
                    .take()
                    .map_or(0, |from| at.as_second() - from.as_second());
            }
        }
    }
    seconds += since.map_or(0, |from| until.as_second() - from.as_second());
    let sane = started && (1..=LONGEST_MINUTES * 60).contains(&seconds);
    sane.then(|| u32::try_from((seconds + 3) / 6).unwrap_or(0).max(1))
}
