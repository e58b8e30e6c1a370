//! `buttonup plan` and `buttonup map check`: maps as text, and the cheapest way in and back.

use crate::answer::{Answer, Wrong};
use crate::keep::Place as Kept;
use crate::sent_map_command as sent;
use clap::{Args, Subcommand};
use map::{Map, StateOf, Trouble};
use plan::{Because, Budget, Goal, MoveId, Place, Planned};
use serde_json::{Value, json};
use shop::planning::{self, learned, problem, to_roll_from};
use shop::repair::{ItemId, State};
use std::collections::BTreeSet;
use std::fs;
use std::io::ErrorKind;
use std::path::{Path, PathBuf};
use std::time::Instant;

/// What is to be reached, and what not to do on the way.
#[derive(Debug, Args)]
pub struct Plan {
    /// The map, as TOML.
    map: PathBuf,
    /// The item to get at; more than one may be named.
    #[arg(long = "for", value_name = "ITEM", required_unless_present_any = ["home", "roll"])]
    targets: Vec<String>,
    /// Bring everything home again.
    #[arg(long, conflicts_with_all = ["targets", "roll"])]
    home: bool,
    /// Bring home what must be home for the vehicle to roll.
    #[arg(long, conflicts_with = "targets")]
    roll: bool,
    /// A move not to make, such as `shroud.off`.
    #[arg(long, value_name = "ITEM.MOVE")]
    without: Vec<String>,
    /// A place that cannot be used, such as `below=no`.
    #[arg(long, value_name = "PLACE=no")]
    place: Vec<String>,
    /// A move to make in any case, such as `tray.off`.
    #[arg(long, value_name = "ITEM.MOVE")]
    also: Vec<String>,
    /// Where things stand now, as TOML; docs/state.md describes it. Without it, all is home.
    #[arg(long, value_name = "FILE")]
    state: Option<PathBuf>,
    /// The variant of the vehicle, where the map has several.
    #[arg(long, value_name = "VARIANT")]
    variant: Vec<String>,
}

/// What to do with a map.
#[derive(Debug, Subcommand)]
pub enum MapCommand {
    /// Read it, and say what is wrong with it, line by line.
    Check {
        /// The map, as TOML.
        map: PathBuf,
    },
    /// Write down what an order has shown: a new map, or the one of its vehicle bettered.
    FromOrder {
        /// The order's number.
        number: u64,
        #[command(flatten)]
        place: Kept,
    },
    /// Write a map to a signed file for another shop.
    Export(sent::Export),
    /// Say what a map that another shop has sent would change, and keep it.
    Import(sent::Import),
}

/// Does one of these.
pub fn map(command: &MapCommand) -> Result<Answer, Wrong> {
    match command {
        MapCommand::Check { map } => check(map),
        MapCommand::FromOrder { number, place } => from_order(*number, place),
        MapCommand::Export(asked) => sent::export(asked),
        MapCommand::Import(asked) => sent::import(asked),
    }
}

/// The map's text as the answer, to be looked through and kept.
fn from_order(number: u64, place: &Kept) -> Result<Answer, Wrong> {
    let store = place.write_existing()?.shared();
    place.must_hold(store.as_ref())?;
    let service =
        shop::Service::open(store, &place.log, std::sync::Arc::new(jiff::Timestamp::now))?;
    let learned = service.look(&shop::Caller::program(), |snap| {
        let vehicle = shop::view::order(snap, number)?.row.vehicle.clone();
        learned(snap, number, &vehicle)
    })?;
    Ok(Answer {
        json: json!({
            "map": learned.map.as_str(),
            "from_version": learned.from,
            "things": learned.things,
            "text": learned.text,
        }),
        text: learned.text.trim_end().to_owned(),
        good: true,
    })
}

/// Reads a map and says what is wrong with it.
fn check(map: &Path) -> Result<Answer, Wrong> {
    let text = text_of(map)?;
    let (mut good, troubles, unreachable) = match map::read(&map.display().to_string(), &text) {
        Ok(read) => (true, read.warnings, planning::unreachable(&read.map)),
        Err(troubles) => (false, troubles, Vec::new()),
    };
    good &= unreachable.is_empty();
    let mut lines: Vec<String> = troubles.iter().map(ToString::to_string).collect();
    lines.extend(
        unreachable
            .iter()
            .map(|what| format!("{}: error: {what}; mend what it needs", map.display())),
    );
    lines.push(format!(
        "{}: {}",
        map.display(),
        if good { "a good map" } else { "not a map yet" }
    ));
    Ok(Answer {
        text: lines.join("\n"),
        json: json!({
            "good": good,
            "troubles": troubles.iter().map(in_json).collect::<Vec<_>>(),
            "unreachable": unreachable,
        }),
        good,
    })
}

/// Plans the cheapest way in and back.
pub fn plan(asked: &Plan) -> Result<Answer, Wrong> {
    let map = read_map(&asked.map, &asked.variant)?;
    let targets: Vec<ItemId> = asked.targets.iter().map(ItemId::new).collect();
    let mut state = match &asked.state {
        Some(path) => read_state(path, &map)?,
        None => StateOf::default(),
    };
    let questions = map::questions(&map, &state);
    planning::owed_too(&map, &mut state.items);
    let mut forbids = Vec::new();
    let mut problem = problem(&map, &targets, &state.items);
    if asked.home {
        problem.goal = Goal::Home(None);
    } else if asked.roll {
        let items = to_roll_from(&map, &state.items);
        forbids = items
            .iter()
            .map(|item| stands_words(&map, item, &state))
            .collect();
        problem.goal = Goal::Home(Some(items));
    }
    problem.start = state.at.map(Place::new).or(problem.start);
    problem.forbidden_moves = asked.without.iter().map(MoveId::new).collect();
    problem.forced_moves = asked.also.iter().map(MoveId::new).collect();
    problem.forbidden_places = asked
        .place
        .iter()
        .map(|place| match place.split_once('=') {
            Some((name, "no")) => known("--place", name, &planning::places(&map)).map(Place::new),
            _ => Err(Wrong::input(
                "--place",
                format!("{place:?} says nothing about a place"),
                "write it like below=no",
            )),
        })
        .collect::<Result<_, _>>()?;
    let began = Instant::now();
    let found = plan::plan(&problem, Budget::default()).map_err(|error| {
        let trouble = planning::trouble(&map, &error);
        Wrong {
            code: 1,
            place: asked.map.display().to_string(),
            what: match forbids.is_empty() {
                true => trouble.what,
                false => format!(
                    "{}; what forbids it to roll: {}",
                    trouble.what,
                    forbids.join(", ")
                ),
            },
            mend: trouble.mend,
        }
    })?;
    let milliseconds = began.elapsed().as_millis();
    Ok(Answer {
        text: questions
            .iter()
            .map(|question| format!("? {question}"))
            .chain(forbidden(asked.roll, &forbids, &found))
            .chain([words(&map, &found)])
            .collect::<Vec<_>>()
            .join("\n"),
        json: json!({
            "questions": questions,
            "forbids": asked.roll.then_some(&forbids),
            "off": found.off.iter().map(|planned| row(&map, planned)).collect::<Vec<_>>(),
            "back": found.back.iter().map(|planned| row(&map, planned)).collect::<Vec<_>>(),
            "stays": found.stays.iter().map(|(item, at)| json!({ "item": item.as_str(), "at": at })).collect::<Vec<_>>(),
            "no_way_back": found.no_way_back.iter().map(MoveId::as_str).collect::<Vec<_>>(),
            "minutes": minutes(found.minutes),
            "place_changes": found.place_changes,
            "tool_changes": found.tool_changes,
            "cost": minutes(found.cost),
            "bound": minutes(found.bound),
            "proven": found.proven,
            "milliseconds": u64::try_from(milliseconds).unwrap_or(u64::MAX),
        }),
        good: true,
    })
}

fn text_of(path: &Path) -> Result<String, Wrong> {
    fs::read_to_string(path).map_err(|error| {
        let (what, mend) = match error.kind() {
            ErrorKind::InvalidData => (
                "it is no UTF-8 text".to_owned(),
                "save it as UTF-8 text, or name another file",
            ),
            _ => (error.to_string(), "name a file that can be read"),
        };
        Wrong::input(path.display().to_string(), what, mend)
    })
}

fn read_state(path: &Path, map: &Map) -> Result<StateOf, Wrong> {
    let text = text_of(path)?;
    let name = path.display().to_string();
    map::read_state(&name, &text, map).map_err(|troubles| {
        let lines: Vec<String> = troubles.iter().map(ToString::to_string).collect();
        Wrong::input(name.clone(), lines.join("\n"), "see docs/state.md")
    })
}

fn read_map(path: &Path, variants: &[String]) -> Result<Map, Wrong> {
    let text = text_of(path)?;
    let name = path.display().to_string();
    let read = map::read(&name, &text).map_err(|troubles| {
        let lines: Vec<String> = troubles.iter().map(ToString::to_string).collect();
        Wrong::input(name.clone(), lines.join("\n"), "see `buttonup map check`")
    })?;
    for variant in variants {
        known("--variant", variant, &read.map.variants)?;
    }
    Ok(read.map.of_variant(&variants.iter().cloned().collect()))
}

/// Fails where a map has nothing of that name: a slip would plan for another vehicle.
fn known<'a>(option: &str, name: &'a str, there: &BTreeSet<String>) -> Result<&'a str, Wrong> {
    if there.contains(name) {
        return Ok(name);
    }
    let names: Vec<&str> = there.iter().map(String::as_str).collect();
    Err(Wrong::input(
        option,
        format!("the map says nothing of {name:?}"),
        if names.is_empty() {
            "leave it out: the map names none".to_owned()
        } else {
            format!("name one of these: {}", names.join(", "))
        },
    ))
}

/// An item with where it stands: `wheel nuts out`.
fn stands_words(map: &Map, item: &ItemId, state: &StateOf) -> String {
    let kind = map.items.get(item).map(|known| known.kind);
    let Some((told, pieces)) = state.items.get(item) else {
        return item.to_string();
    };
    let kind = kind.unwrap_or(*told);
    let away: BTreeSet<&str> = pieces
        .values()
        .filter(|stands| **stands != kind.home())
        .map(|stands| planning::comes_to(kind, *stands, plan::Way::Out))
        .collect();
    format!(
        "{item} {}",
        away.into_iter().collect::<Vec<_>>().join(" and ")
    )
}

/// What forbids it to roll, before the plan that mends it.
fn forbidden(asked: bool, forbids: &[String], found: &plan::Plan) -> Vec<String> {
    if !asked {
        return Vec::new();
    }
    let stubs = found
        .stays
        .iter()
        .map(|(item, at)| format!("{item} {at} is a stub, until its snag is resolved"));
    let all: Vec<String> = forbids.iter().cloned().chain(stubs).collect();
    match all.as_slice() {
        [] => vec!["nothing forbids it to roll, as far as the map knows".to_owned()],
        all => vec![format!("what forbids it to roll: {}", all.join(", "))],
    }
}

fn in_json(trouble: &Trouble) -> Value {
    json!({
        "warning": trouble.weight == map::Weight::Warning,
        "file": trouble.file,
        "line": trouble.line,
        "column": trouble.column,
        "what": trouble.what,
        "mend": trouble.mend,
    })
}

/// Minutes as a number: a plan counts whole tenths.
fn minutes(time: plan::Minutes) -> f64 {
    time.to_string().parse().unwrap_or_default()
}

fn row(map: &Map, planned: &Planned) -> Value {
    json!({
        "item": planned.item.as_str(),
        "move": planned.id.as_str(),
        "at": planned.at,
        "place": planned.place.as_ref().map(Place::as_str),
        "tools": planned.tools.iter().map(plan::Tool::as_str).collect::<Vec<_>>(),
        "torque": torque(map, planned),
        "minutes": minutes(planned.minutes),
        "because": because(map, &planned.because),
    })
}

/// The passes of its torque, where a row tightens.
fn torque(map: &Map, planned: &Planned) -> Vec<String> {
    let tightens = planned.way == plan::Way::Back && planned.to == State::Tight;
    let known = map.items.get(&planned.item).filter(|_| tightens);
    let passes = known.into_iter().flat_map(|known| &known.torque);
    passes.map(|pass| pass.written().to_owned()).collect()
}

fn because(map: &Map, why: &Because) -> String {
    match why {
        Because::Target(item) => format!("{item} is what we want"),
        Because::Needed(needed_by) => format!("{needed_by} needs it first"),
        Because::MadeDue(made_by) => format!("{made_by} makes it due"),
        Because::AskedFor => "asked for".to_owned(),
        Because::Owed(by) => format!("owed since {by}"),
        Because::LetsBack(next) => {
            format!("it comes before {}", planning::back_words(map, next))
        }
        Because::Home => "it goes home, and nothing waits for it".to_owned(),
    }
}

fn words(map: &Map, found: &plan::Plan) -> String {
    let mut lines = Vec::new();
    for (title, rows) in [("off", &found.off), ("back", &found.back)] {
        lines.push(title.to_owned());
        for planned in rows {
            let what = match planned.way {
                plan::Way::Out => planned.id.as_str().to_owned(),
                plan::Way::Back => format!("{} back", planned.item),
            };
            let place = planned.place.as_ref().map_or("", Place::as_str);
            let mut with: Vec<String> = planned.tools.iter().map(plan::Tool::to_string).collect();
            let torque = torque(map, planned);
            if !torque.is_empty() {
                with.push(torque.join(" then "));
            }
            lines.push(format!(
                "  {:<28} {:>5}  {place:<12} {:<32} {}",
                what,
                planned.minutes.to_string(),
                with.join(", "),
                because(map, &planned.because)
            ));
        }
    }
    for (item, at) in &found.stays {
        lines.push(format!("{item} {at} stays until its snag is resolved"));
    }
    if !found.no_way_back.is_empty() {
        let moves: Vec<_> = found.no_way_back.iter().map(MoveId::as_str).collect();
        lines.push(format!("no legal way back for {}", moves.join(", ")));
    }
    lines.push(format!(
        "{} minutes of work, {} place changes, {} tool changes: {} in all, {}",
        found.minutes,
        found.place_changes,
        found.tool_changes,
        found.cost,
        if found.proven {
            "proven cheapest".to_owned()
        } else {
            format!("at most {} above the cheapest", found.gap())
        }
    ));
    lines.join("\n")
}
