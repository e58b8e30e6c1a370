//! The map of a kind of vehicle, made or renewed from what its finished orders have taught.

use super::job::THE_TRADE;
use super::kind::{Counted, VehicleKind, counted};
use super::said::{self, ChosenOf, about_code, chosen};
use super::taught::{away_steps, minutes, written};
use crate::phrases::planning as plan;
use crate::phrases::teaching as told;
use crate::say::figures;
use crate::snapshot::Snapshot;
use crate::trouble::Trouble;
use lessons::{About, Ask, BackNeeds, Gathered, Held, Joins, Lessons, Model, Step, Value, Way};
use map::{JobItem, JobTorque, TaughtBack, TaughtItem, Weight};
use repair::{ItemId, MapId, State};
use std::collections::{BTreeMap, BTreeSet};

/// A map's text as jobs have taught it; nothing is kept of it yet.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Renewed {
    /// The map: the first of its kind, else a new one.
    pub map: MapId,
    /// The version that the text grew from; 0 for a new map.
    pub from: u32,
    /// The text.
    pub text: String,
    /// In what it differs from that version, in words.
    pub changes: Vec<String>,
    /// The same by item, without its name; of a new map, what it says of each.
    pub items: Vec<(String, Vec<String>)>,
    /// What is wrong with it.
    pub faults: Vec<String>,
    /// Whether a plan can be made by it.
    pub sound: bool,
    /// What was told differently and nobody has chosen of; it is left out.
    pub open: usize,
    /// How many things it has.
    pub things: usize,
}

/// The map of a kind, with what finished orders have taught.
///
/// # Errors
/// [`Trouble`]: nothing came off in any of them, the newest text is no TOML, or the record
/// cannot be read.
pub fn renewed(snap: &Snapshot<'_>, kind: &VehicleKind) -> Result<Renewed, Trouble> {
    let counted = counted(snap, kind)?;
    let learner = &*counted.learner;
    let answers = said::answers(snap, kind, learner.joins());
    let model = Model::default();
    let lessons = learner.lessons(&Ask {
        way: Way::Out,
        variants: None,
        answers: &answers,
        model: &model,
    });
    let chosen = chosen(snap, &kind.said, learner.joins());
    let facts = Facts {
        counted: &counted,
        gathered: learner
            .gathered()
            .into_iter()
            .map(|one| ((one.item.clone(), one.about), one))
            .collect(),
        chosen: chosen
            .into_iter()
            .map(|(of, (value, ..))| (of, value))
            .collect(),
    };
    let base = match kind.maps.first() {
        Some(kept) => Some(snap.map(&kept.id, None)?),
        None => snap.map(&kind.code, None).ok(),
    };
    let before = base.as_ref().map_or("", |kept| kept.text.as_str());
    let stated = stated(before, learner.joins());
    let items = items(&facts, &lessons, &|item| !stated.contains(item));
    if items.is_empty() {
        let mut trouble = Trouble::not_found(told::nothing_came_off());
        told::record_what_comes_off().clone_into(&mut trouble.mend);
        return Err(trouble);
    }
    let mut taught = map::Taught {
        vehicle: kind.vehicle.clone(),
        items,
    };
    let once = each_once(before, learner.joins(), &mut taught);
    let text = map::teach(&once, &taught).map_err(|error| {
        Trouble::unreadable(plan::the_map(), error.message(), plan::mend_its_newest())
    })?;
    let (old, _) = map::look("line", before);
    let (new, faults) = map::look("line", &text);
    let changes = map::difference(&old, &new);
    let disagreements = learner.disagreements();
    let is_open = |one: &&lessons::Disagreement| match one {
        lessons::Disagreement::Values(one) => facts.chosen_of(&one.item, one.about).is_none(),
        lessons::Disagreement::Kinds { item, .. } => facts.kind_of(item).is_none(),
    };
    Ok(Renewed {
        map: base
            .as_ref()
            .map_or_else(|| kind.code.clone(), |kept| kept.id.clone()),
        from: base.as_ref().map_or(0, |kept| kept.version),
        changes: changes.iter().map(ToString::to_string).collect(),
        items: match base {
            Some(_) => by_item(&changes),
            None => as_new(&new, &taught),
        },
        sound: faults.iter().all(|fault| fault.weight != Weight::Error),
        faults: faults
            .iter()
            .map(|fault| told::fault_and_mend(&fault.what, &fault.mend))
            .collect(),
        open: disagreements.iter().filter(is_open).count(),
        things: taught.items.len(),
        text,
    })
}

/// A map's text with each thing in it once, where its names were joined since: what was learned
/// under the other name is taken out, and a thing goes on under the name that the map has.
fn each_once(text: &str, joins: &Joins, taught: &mut map::Taught) -> String {
    let (map, _) = map::look("line", text);
    let mut once = text.to_owned();
    for (name, known) in &map.items {
        let kept = joins.name(name);
        if kept == name {
            continue;
        }
        if !map.items.contains_key(kept) {
            for item in &mut taught.items {
                rename(item, kept.as_str(), name.as_str());
            }
        } else if known.as_seen {
            let item = name.to_string();
            once = map::apply(&once, &map::Edit::Remove { item }).unwrap_or(once);
        }
    }
    once
}

/// The things whose way back a person stated, or whose needs: those are turned round as they stand.
fn stated(text: &str, joins: &Joins) -> BTreeSet<ItemId> {
    let (map, _) = map::look("line", text);
    let by_hand = map.items.iter().filter(|(_, item)| {
        let step = item.moves.first();
        let back = step.and_then(|step| step.need_back.as_ref());
        !item.as_seen || (back.is_some() && back != item.taught_back.as_ref())
    });
    by_hand.map(|(name, _)| joins.name(name).clone()).collect()
}

fn rename(item: &mut TaughtItem, from: &str, to: &str) {
    if item.is.name == from {
        to.clone_into(&mut item.is.name);
    }
    if let Some(state) = item.needs.remove(from) {
        item.needs.insert(to.to_owned(), state);
    }
    let mut names = vec![&mut item.guessed];
    if let Some(back) = &mut item.back {
        if let Some(state) = back.away.remove(from) {
            back.away.insert(to.to_owned(), state);
        }
        names.extend([&mut back.home, &mut back.guessed]);
    }
    for names in names {
        if names.remove(from) {
            names.insert(to.to_owned());
        }
    }
}

/// What changes, item by item.
fn by_item(changes: &[map::Change]) -> Vec<(String, Vec<String>)> {
    let mut out: Vec<(String, Vec<String>)> = Vec::new();
    for change in changes {
        let name = change.item.as_ref().map_or(plan::the_map(), ItemId::as_str);
        let words = change.what.to_string();
        match out.last_mut().filter(|(last, _)| last == name) {
            Some((_, lines)) => lines.push(words),
            None => out.push((name.to_owned(), vec![words])),
        }
    }
    out
}

/// What a new map says of its items, in the sequence in which they come off.
fn as_new(map: &map::Map, taught: &map::Taught) -> Vec<(String, Vec<String>)> {
    let words = |is: &JobItem, known: &map::MapItem| {
        let mut lines = Vec::new();
        let many = (known.count > 1).then(|| known.count.to_string());
        let zone = known.zone.as_deref();
        let zone = zone.map(|zone| map::called(zone).to_owned());
        let told: Vec<String> = [many, known.size.clone(), zone]
            .into_iter()
            .flatten()
            .collect();
        if !told.is_empty() {
            lines.push(told.join(", "));
        }
        if let Some(need) = known
            .moves
            .first()
            .and_then(|step| crate::planning::need_words(map, &step.need))
        {
            lines.push(match known.guessed.is_empty() {
                true => told::after(need),
                false => told::after_as_a_guess(need),
            });
        }
        let back = known.taught_back.as_ref();
        if let Some(need) = back.and_then(|need| crate::planning::need_words(map, need)) {
            lines.push(told::goes_back_once(need));
        }
        if let Some(torque) = &is.torque {
            let passes = torque.passes.join(told::then());
            lines.push(told::torque_by(passes, &torque.title));
        }
        let minutes = |tenths: u32| figures(&written(tenths));
        let off = is
            .out_tenths
            .map(|tenths| told::minutes_off(minutes(tenths)));
        let back = is.back_tenths;
        let back = back.map(|tenths| told::minutes_back(minutes(tenths)));
        let times: Vec<String> = off.into_iter().chain(back).collect();
        if !times.is_empty() {
            lines.push(times.join(", "));
        }
        lines
    };
    let one = |item: &TaughtItem| {
        let known = map.items.get(&ItemId::new(&item.is.name))?;
        Some((item.is.name.clone(), words(&item.is, known)))
    };
    taught.items.iter().filter_map(one).collect()
}

/// The items in the sequence in which they come off, each with what it needs first.
fn items(
    facts: &Facts<'_>,
    lessons: &Lessons,
    is_taught: &dyn Fn(&ItemId) -> bool,
) -> Vec<TaughtItem> {
    let learner = &facts.counted.learner;
    let away = away_steps(learner, lessons.steps());
    let sequence = lessons.path_to(&away).map_or_else(
        |_| Vec::new(),
        |path| path.steps.into_iter().map(|one| one.step).collect(),
    );
    let is_away = |step: &Step| away.contains(step);
    let mut needs: BTreeMap<&ItemId, BTreeMap<String, State>> = BTreeMap::new();
    let mut guessed: BTreeMap<&ItemId, BTreeSet<String>> = BTreeMap::new();
    let direct = lessons.direct();
    for pair in direct.iter().filter(|pair| pair.held != Held::Either) {
        let (first, second) = (&pair.first, &pair.second);
        if first.item == second.item {
            continue;
        }
        let firsts = needs.entry(&second.item).or_default();
        // Out asks for more than cracked.
        let state = firsts.entry(first.item.to_string()).or_insert(first.to);
        if is_away(first) {
            *state = first.to;
        }
        if pair.held == Held::Guess {
            let all = guessed.entry(&second.item).or_default();
            all.insert(first.item.to_string());
        }
    }
    let names = |needs: &BTreeMap<String, State>| needs.keys().map(ItemId::new).collect();
    let firsts: lessons::Needs = away
        .iter()
        .map(|step| {
            let needs = needs.get(&step.item);
            (step.item.clone(), needs.map(names).unwrap_or_default())
        })
        .collect();
    let lessons_back = learner.lessons_back(&Model::default());
    let back = learner.way_back(&firsts, is_taught, &lessons_back);
    let one = |step: &Step| {
        let needs = needs.get(&step.item).cloned().unwrap_or_default();
        Some(TaughtItem {
            is: facts.item(&step.item)?,
            back: back.get(&step.item).map(|back| taught_back(back, &needs)),
            needs,
            guessed: guessed.get(&step.item).cloned().unwrap_or_default(),
            tools: facts.all(&step.item, About::Tool),
            owes: facts.all(&step.item, About::Owes),
        })
    };
    sequence
        .iter()
        .filter(|step| is_away(step))
        .filter_map(one)
        .collect()
}

fn taught_back(back: &BackNeeds, needs: &BTreeMap<String, State>) -> TaughtBack {
    let text = |names: &BTreeSet<ItemId>| names.iter().map(ItemId::to_string).collect();
    let away = needs.iter();
    let away = away.filter(|(name, _)| back.away.contains(&ItemId::new(*name)));
    TaughtBack {
        away: away.map(|(name, state)| (name.clone(), *state)).collect(),
        home: text(&back.home),
        guessed: text(&back.guessed),
    }
}

/// What was told of the items.
struct Facts<'a> {
    counted: &'a Counted,
    gathered: BTreeMap<(ItemId, About), Gathered>,
    chosen: BTreeMap<ChosenOf, String>,
}

impl Facts<'_> {
    fn chosen_of(&self, item: &ItemId, about: About) -> Option<&String> {
        let (code, at) = about_code(about);
        self.chosen.get(&(item.clone(), code.to_owned(), at))
    }

    /// What somebody chose that an item is.
    fn kind_of(&self, item: &ItemId) -> Option<repair::Kind> {
        let chosen = (item.clone(), said::KIND.to_owned(), None);
        map::kind_of(self.chosen.get(&chosen)?)
    }

    /// What was told in one respect, where it was told one way or somebody chose.
    fn one(&self, item: &ItemId, about: About) -> Option<&Value> {
        let values = &self.gathered.get(&(item.clone(), about))?.values;
        match (self.chosen_of(item, about), values.as_slice()) {
            (Some(chosen), _) => values.iter().find(|value| value.value == *chosen),
            (None, [one]) => Some(one),
            (None, _) => None,
        }
    }

    /// Tools that were used, or work that is owed by somebody's word. What the trade says of a
    /// name it says again on every order.
    fn all(&self, item: &ItemId, about: About) -> BTreeSet<String> {
        let told = self.gathered.get(&(item.clone(), about));
        let values = told.into_iter().flat_map(|told| &told.values);
        let said = values.filter(|value| value.by.iter().any(|by| by != THE_TRADE));
        said.map(|value| value.value.clone()).collect()
    }

    fn item(&self, item: &ItemId) -> Option<JobItem> {
        let joins = self.counted.learner.joins();
        let all = self.counted.orders.iter().flat_map(|job| &job.items);
        let mut seen = all.filter(|is| joins.name(&ItemId::new(&is.name)) == item);
        let newest = seen.next()?;
        let text = |about| self.one(item, about).map(|value| value.value.clone());
        let (out, back) = minutes(self.counted, item);
        let lengths = self.gathered.keys().filter_map(|(of, about)| match about {
            About::Length(at) if of == item => Some((*at, text(*about)?)),
            _ => None,
        });
        Some(JobItem {
            kind: self.kind_of(item).unwrap_or(newest.kind),
            count: text(About::Count)
                .and_then(|count| count.parse().ok())
                .unwrap_or(newest.count),
            size: text(About::Size),
            lengths: lengths.collect(),
            torque: self.torque(item),
            spent: self.always_new(item),
            zone: text(About::Place).or_else(|| newest.zone.clone()),
            out_tenths: out,
            back_tenths: back,
            name: item.to_string(),
            ..newest.clone()
        })
    }

    /// Whether a new one went on each time it was moved. Once in a while is no rule.
    fn always_new(&self, item: &ItemId) -> bool {
        let told = self.gathered.get(&(item.clone(), About::Spent));
        told.is_some_and(|told| {
            let times = told.values.iter().map(|value| value.times).max();
            times.is_some_and(|times| times >= told.of)
        })
    }

    fn torque(&self, item: &ItemId) -> Option<JobTorque> {
        let told = self.one(item, About::Torque)?;
        let joins = self.counted.learner.joins();
        let all = self.counted.orders.iter().flat_map(|job| &job.items);
        let mut torques = all
            .filter(|is| joins.name(&ItemId::new(&is.name)) == item)
            .filter_map(|is| is.torque.as_ref());
        torques
            .find(|torque| torque.passes.join(", ") == told.value)
            .cloned()
    }
}
