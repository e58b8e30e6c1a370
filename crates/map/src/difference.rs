//! Two versions of a map side by side: what was added, removed and changed, in words.

use crate::phrases as say;
use crate::value::{Map, MapItem, MapMove};
use crate::words::{called, kind_word, said};
use measure::Measured;
use states::{ItemId, Need};
use std::collections::{BTreeMap, BTreeSet};
use std::fmt;

/// One thing in which two versions differ.
#[derive(Debug, Clone, PartialEq, Eq, PartialOrd, Ord)]
pub struct Change {
    /// The item; nothing for what stands at the head of the map.
    pub item: Option<ItemId>,
    /// What became of it.
    pub what: What,
}

/// What became of a thing from one version to the next.
#[derive(Debug, Clone, PartialEq, Eq, PartialOrd, Ord)]
pub enum What {
    /// The item is new.
    Added {
        /// What it is, such as `cover`.
        is: String,
    },
    /// The item is gone.
    Removed,
    /// It says something it did not say: a need, a tool, a note.
    Gained {
        /// In which respect, such as `needs`.
        field: String,
        /// What it says now.
        now: String,
    },
    /// It no longer says something.
    Lost {
        /// In which respect.
        field: String,
        /// What it said.
        was: String,
    },
    /// It says something else.
    Changed {
        /// In which respect, such as `torque`.
        field: String,
        /// What it said; of a torque, with its source.
        was: String,
        /// What it says now.
        now: String,
    },
}

impl fmt::Display for Change {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        let name = self.item.as_ref().map_or(say::the_map(), ItemId::as_str);
        write!(f, "{name}: {}", self.what)
    }
}

impl fmt::Display for What {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(&match self {
            Self::Added { is } => say::added(is),
            Self::Removed => say::taken_out().to_owned(),
            Self::Gained { field, now } => say::now_says(field, now),
            Self::Lost { field, was } => say::no_longer_says(field, was),
            Self::Changed { field, was, now } => say::was_and_is(field, was, now),
        })
    }
}

/// What a version says of one thing: a field that has one value, by its name; and what may be
/// said several times, each in words of its own.
#[derive(Default)]
struct Says {
    single: BTreeMap<String, String>,
    several: BTreeSet<(String, String)>,
}

impl Says {
    fn one(&mut self, field: impl Into<String>, value: impl Into<String>) {
        self.single.insert(field.into(), value.into());
    }

    fn also(&mut self, field: impl Into<String>, value: impl Into<String>) {
        self.several.insert((field.into(), value.into()));
    }
}

/// Everything in which the new version differs from the old: the head first, then item by item.
///
/// ```
/// let old = "vehicle = \"Van\"\n[items.tray]\nis = \"cover\"\n[items.belt]\nis = \"belt\"\n";
/// let new = format!("{old}needs = [\"tray off\"]\n");
/// let map = |text: &str| map::read("van.toml", text).unwrap().map;
/// let changes = map::difference(&map(old), &map(&new));
/// assert_eq!(changes.len(), 1);
/// assert_eq!(changes[0].to_string(), "belt: now needs tray off");
/// ```
#[must_use]
pub fn difference(old: &Map, new: &Map) -> Vec<Change> {
    let mut changes = compare(None, &head(old), &head(new));
    let names: BTreeSet<&ItemId> = old.items.keys().chain(new.items.keys()).collect();
    for name in names {
        let item = Some(name.clone());
        match (old.items.get(name), new.items.get(name)) {
            (Some(was), Some(is)) => {
                changes.extend(compare(item, &says(old, was), &says(new, is)));
            }
            (None, Some(is)) => {
                let kind = called(kind_word(is.kind)).to_owned();
                let what = What::Added { is: kind };
                changes.push(Change { item, what });
                // What a new item says is told as well; that it has the usual is not.
                let bare = Says::default();
                let fresh = compare(Some(name.clone()), &bare, &says(new, is));
                let is_kind = |change: &Change| matches!(&change.what, What::Gained { field, .. } if field == say::is());
                changes.extend(fresh.into_iter().filter(|change| !is_kind(change)));
            }
            (Some(_), None) => changes.push(Change {
                item,
                what: What::Removed,
            }),
            (None, None) => {}
        }
    }
    changes
}

fn compare(item: Option<ItemId>, old: &Says, new: &Says) -> Vec<Change> {
    let mut whats = Vec::new();
    let fields: BTreeSet<&String> = old.single.keys().chain(new.single.keys()).collect();
    for field in fields {
        let field_name = field.clone();
        match (old.single.get(field), new.single.get(field)) {
            (Some(was), Some(now)) if was != now => whats.push(What::Changed {
                field: field_name,
                was: was.clone(),
                now: now.clone(),
            }),
            (None, Some(now)) => whats.push(What::Gained {
                field: field_name,
                now: now.clone(),
            }),
            (Some(was), None) => whats.push(What::Lost {
                field: field_name,
                was: was.clone(),
            }),
            _ => {}
        }
    }
    let lost = old.several.difference(&new.several);
    whats.extend(lost.map(|(field, was)| What::Lost {
        field: field.clone(),
        was: was.clone(),
    }));
    let gained = new.several.difference(&old.several);
    whats.extend(gained.map(|(field, now)| What::Gained {
        field: field.clone(),
        now: now.clone(),
    }));
    let change = |what| Change {
        item: item.clone(),
        what,
    };
    whats.into_iter().map(change).collect()
}

fn head(map: &Map) -> Says {
    let mut says = Says::default();
    says.one(say::vehicle(), &map.vehicle);
    if let Some(start) = &map.start {
        says.one(say::start(), start);
    }
    says.one(
        say::minutes_to_change_place(),
        minutes(map.place_change_tenths),
    );
    says.one(
        say::minutes_to_change_tool(),
        minutes(map.tool_change_tenths),
    );
    for ((from, to), tenths) in &map.between_tenths {
        says.one(
            say::minutes_from_to(called(from), called(to)),
            minutes(*tenths),
        );
    }
    for (name, source) in &map.sources {
        let said = format!("{}, {}", source.title, source.date);
        says.one(say::source(name), said);
    }
    for variant in &map.variants {
        says.also(say::has_the_variant(), variant);
    }
    for (job, seen) in &map.seen {
        let off: Vec<_> = seen.off.iter().map(ItemId::as_str).collect();
        says.one(say::as_seen_in(job), off.join(", "));
    }
    for (first, second) in &map.settled.first {
        says.also(say::settled(), say::before(first, second));
    }
    for (one, other) in &map.settled.either_way {
        says.also(say::settled(), say::either_way(one, other));
    }
    says
}

fn says(map: &Map, item: &MapItem) -> Says {
    let mut says = Says::default();
    says.one(say::is(), called(kind_word(item.kind)));
    if item.count > 1 {
        says.one(say::count(), item.count.to_string());
    }
    let texts = [
        (say::size(), &item.size),
        (say::torque_sequence(), &item.pattern),
        (say::due_after(), &item.due_after),
        (say::sort(), &item.sort),
        (say::note(), &item.note),
    ];
    for (field, text) in texts {
        if let Some(text) = text {
            says.one(field, text);
        }
    }
    for (field, word) in [(say::system(), &item.system), (say::zone(), &item.zone)] {
        if let Some(word) = word {
            says.one(field, called(word));
        }
    }
    let measures = [(say::holds(), &item.holds), (say::drains(), &item.drains)];
    for (field, measured) in measures {
        if let Some(measured) = measured {
            says.one(field, measured.written());
        }
    }
    for (at, length) in &item.lengths {
        says.one(say::length_at(at), length.written());
    }
    if !item.torque.is_empty() {
        says.one(say::torque(), torque(map, item));
    }
    if item.spent {
        says.also(say::is(), say::renewed_each_time());
    }
    if let Some((many, never)) = &item.may_miss {
        let at: Vec<_> = never.iter().map(ToString::to_string).collect();
        let never = match at.is_empty() {
            true => String::new(),
            false => say::never_at(at.join(", ")),
        };
        says.one(say::may_lack(), format!("{many}{never}"));
    }
    for variant in &item.only_with {
        says.also(say::only_with(), variant);
    }
    for other in &item.guessed {
        says.also(say::only_guessed_to_need(), other.as_str());
    }
    for other in &item.guessed_back {
        says.also(say::only_guessed_to_need_back(), other.as_str());
    }
    if item.as_seen {
        says.also(say::needs(), say::what_jobs_have_shown());
    }
    for step in &item.moves {
        let verb = step.id.rsplit('.').next().unwrap_or_default();
        // Of two moves, each is named; of one, it is the item's.
        let of = match item.moves.len() {
            1 => "",
            _ if verb == "crack" => say::first_loosening(),
            _ => say::taking_out(),
        };
        says_move(map, item, step, of, &mut says);
    }
    says
}

fn torque(map: &Map, item: &MapItem) -> String {
    let passes: Vec<_> = item.torque.iter().map(Measured::written).collect();
    let source = item
        .torque_from
        .as_ref()
        .and_then(|name| map.sources.get(name));
    match source {
        Some(source) => format!("{} ({}, {})", passes.join(", "), source.title, source.date),
        None => passes.join(", "),
    }
}

fn says_move(map: &Map, item: &MapItem, step: &MapMove, of: &str, says: &mut Says) {
    let needs = |need: &Need, field: &str, says: &mut Says| {
        let each: &[Need] = match need {
            Need::All(all) => all,
            one => std::slice::from_ref(one),
        };
        for need in each {
            says.also(format!("{of}{field}"), said(map, need));
        }
    };
    // What jobs have shown changes with every job, and is told as seen.
    if !item.by_jobs() {
        needs(&step.need, say::needs(), says);
    }
    if let Some(need) = &step.need_back {
        needs(need, say::going_back_needs(), says);
    }
    for work in &step.owes {
        says.also(format!("{of}{}", say::owes()), work.as_str());
    }
    for seal in &step.renews {
        says.also(format!("{of}{}", say::renews()), seal.as_str());
    }
    for tool in &step.tools {
        says.also(format!("{of}{}", say::takes()), tool);
    }
    if let Some(place) = &step.place {
        says.one(format!("{of}{}", say::place()), called(place));
    }
    if let Some(place) = &step.place_back {
        says.one(format!("{of}{}", say::place_back()), called(place));
    }
    if step.by_itself {
        says.also(format!("{of}{}", say::runs()), say::by_itself());
    }
    let times = [
        (say::minutes_out(), step.minutes.out_tenths),
        (say::minutes_back(), step.minutes.back_tenths),
        (say::minutes_out_for_each(), step.minutes.each_out_tenths),
        (say::minutes_back_for_each(), step.minutes.each_back_tenths),
        (say::minutes_lost(), step.lost_tenths),
        (say::minutes_of_risk(), step.risk_tenths),
    ];
    for (field, tenths) in times {
        if tenths > 0 {
            says.one(format!("{of}{field}"), minutes(tenths));
        }
    }
}

fn minutes(tenths: u32) -> String {
    match tenths % 10 {
        0 => (tenths / 10).to_string(),
        tenth => format!("{}.{tenth}", tenths / 10),
    }
}
