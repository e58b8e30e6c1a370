//! `buttonup says` and `buttonup may`: what a line names, and what a vehicle may do.

use crate::answer::{Answer, Wrong};
use clap::{Args, Subcommand};
use serde_json::{Value, json};
use states::Gate;
use std::collections::BTreeSet;
use std::path::PathBuf;
use trade::{Count, Gates, Said, Side, Stands, Thing, Vocabulary};

/// The trade's words and rules.
#[derive(Debug, Subcommand)]
pub enum Trade {
    /// Read a line as a person of the trade would mean it.
    Says(Says),
    /// What a vehicle may do, from what is off, what is back, and what was done.
    May(May),
}

/// The line to read.
#[derive(Debug, Args)]
pub struct Says {
    /// The line, as typed.
    #[arg(allow_hyphen_values = true)]
    line: String,
    #[command(flatten)]
    own: Own,
}

/// The file with what is off and what is back.
#[derive(Debug, Args)]
pub struct May {
    /// JSON: `{"things": [{"line": "...", "state": "off"|"back"|"in"}], "done": ["..."]}`.
    file: PathBuf,
    #[command(flatten)]
    own: Own,
}

/// A shop's own words and rules.
#[derive(Debug, Args)]
struct Own {
    /// A table of the shop's own words and rules, as TOML.
    #[arg(long)]
    words: Option<PathBuf>,
}

pub fn run(asked: &Trade) -> Result<Answer, Wrong> {
    match asked {
        Trade::Says(says) => says.run(),
        Trade::May(may) => may.run(),
    }
}

fn read(path: &PathBuf) -> Result<String, Wrong> {
    std::fs::read_to_string(path).map_err(|error| {
        Wrong::input(
            path.display().to_string(),
            format!("cannot be read: {error}"),
            "name a file that is there",
        )
    })
}

impl Own {
    fn with<T>(&self, use_it: impl FnOnce(&Vocabulary) -> T) -> Result<T, Wrong> {
        let Some(path) = &self.words else {
            return Ok(use_it(Vocabulary::shipped()));
        };
        let own = Vocabulary::shipped().with(&read(path)?).map_err(|error| {
            Wrong::input(
                path.display().to_string(),
                error.to_string(),
                "mend the table at the place named",
            )
        })?;
        Ok(use_it(&own))
    }
}

impl Says {
    fn run(&self) -> Result<Answer, Wrong> {
        let said = self
            .own
            .with(|vocabulary| trade::says(&self.line, vocabulary))?;
        if said.is_empty() {
            return Err(Wrong::input(
                "the line",
                "there is no word in it",
                "write what comes off, what is drained or what is put in",
            ));
        }
        Ok(Answer {
            text: said.iter().map(in_words).collect::<Vec<_>>().join("\n"),
            good: true,
            json: as_json(&self.line, &said),
        })
    }
}

fn as_json(line: &str, said: &[Said]) -> Value {
    if let [one] = said {
        return thing(one);
    }
    let all = |gates: fn(&Said) -> Gates| {
        said.iter()
            .fold(Gates::NONE, |sum, one| sum.and(gates(one)))
    };
    let owed: BTreeSet<&str> = said.iter().flat_map(Said::owed_codes).collect();
    let caution: BTreeSet<&str> = said
        .iter()
        .flat_map(|one| one.caution.iter().map(|code| &**code))
        .collect();
    json!({
        "line": line,
        "things": said.iter().map(thing).collect::<Vec<_>>(),
        "owed": owed,
        "gates_shut_off": all(|one| one.gates_shut_off).codes(),
        "gates_shut_back": all(|one| one.gates_shut_back).codes(),
        "caution": caution,
    })
}

fn thing(said: &Said) -> Value {
    json!({
        "text": said.text,
        "sort": said.sort.as_deref(),
        "kind": trade::kind_code(said.kind),
        "count": match said.count {
            None => Value::Null,
            Some(Count::Set) => json!("set"),
            Some(Count::Of(count)) => json!(count),
        },
        "size": said.sizes,
        "torque": said.torque_newton_metres,
        "torque_typed": said.torque_typed,
        "litres": said.litres,
        "side": said.side.map(Side::code),
        "system": said.system.code(),
        "zone": trade::zone_code(said.zone),
        "safety": said.safety,
        "owed": said.owed_codes(),
        "gates_shut_off": said.gates_shut_off.codes(),
        "gates_shut_back": said.gates_shut_back.codes(),
        "caution": said.caution.iter().map(|code| &**code).collect::<Vec<_>>(),
        "sure": said.sure.code(),
        "said_done": said.said_done.iter().map(|code| &**code).collect::<Vec<_>>(),
        "mend": said.mend,
        "grade": said.grade.code(),
        "source": &*said.source,
    })
}

fn in_words(said: &Said) -> String {
    let mut lines = vec![format!(
        "{}: {}{}{}, {}{}",
        said.text,
        match said.count {
            Some(Count::Of(count)) => format!("{count} "),
            Some(Count::Set) => "a set, ".to_string(),
            None => String::new(),
        },
        trade::kind_code(said.kind),
        said.side
            .map_or_else(String::new, |side| format!(" {}", side.code())),
        said.system.code(),
        if said.safety { ", safety" } else { "" },
    )];
    let list = |what: &str, words: Vec<&str>| {
        (!words.is_empty()).then(|| format!("  {what}: {}", words.join(", ")))
    };
    lines.extend(
        said.torque_typed
            .iter()
            .map(|torque| format!("  torque: {torque}")),
    );
    lines.extend(list("owed", said.owed_codes()));
    lines.extend(list("shut while off", said.gates_shut_off.codes()));
    lines.extend(list("shut once back", said.gates_shut_back.codes()));
    lines.extend(
        said.caution
            .iter()
            .filter_map(|code| trade::cautions().get(&**code))
            .map(|caution| format!("  {}", caution.english)),
    );
    lines.push(format!(
        "  {}",
        match said.sure {
            trade::Sure::Sure => "sure",
            trade::Sure::Likely => "likely: look whether this is meant",
            trade::Sure::Unknown => "not known: shuts every gate until told",
        }
    ));
    lines.extend(said.mend.iter().map(|why| format!("  mend: {why}")));
    lines.join("\n")
}

impl May {
    fn run(&self) -> Result<Answer, Wrong> {
        let (things, done) = vehicle(&self.file, &read(&self.file)?)?;
        let answer = self
            .own
            .with(|vocabulary| trade::may(&things, &done, vocabulary))?;
        let gates: serde_json::Map<String, Value> = Gate::ALL
            .into_iter()
            .map(|gate| (Gates::code(gate).to_string(), json!(!answer.shut.has(gate))))
            .collect();
        let mut text: Vec<String> = Gate::ALL
            .into_iter()
            .map(|gate| {
                let why: BTreeSet<&str> = answer
                    .why
                    .iter()
                    .filter(|why| why.shuts.has(gate))
                    .map(|why| why.work.as_deref().unwrap_or(&why.text))
                    .collect();
                let open = if answer.shut.has(gate) { "no" } else { "yes" };
                let why: Vec<&str> = why.into_iter().collect();
                format!(
                    "{}: {open}{}{}",
                    Gates::code(gate),
                    if why.is_empty() { "" } else { ": " },
                    why.join(", ")
                )
            })
            .collect();
        text.push(format!("owed: {}", answer.owed.join(", ")));
        text.extend(
            answer
                .not_understood
                .iter()
                .map(|words| format!("not understood, counts for nothing: {words}")),
        );
        Ok(Answer {
            text: text.join("\n"),
            good: true,
            json: json!({
                "gates": gates,
                "owed": answer.owed.iter().map(|code| &**code).collect::<Vec<_>>(),
                "why": answer.why.iter().map(|why| json!({
                    "text": why.text,
                    "work": why.work.as_deref(),
                    "shuts": why.shuts.codes(),
                })).collect::<Vec<_>>(),
                "not_understood": answer.not_understood,
            }),
        })
    }
}

/// What a file says is off, back or in, and what was done.
fn vehicle(path: &std::path::Path, text: &str) -> Result<(Vec<Thing>, Vec<String>), Wrong> {
    let place = path.display().to_string();
    let form = r#"write {"things": [{"line": "brake hose front left", "state": "back"}], "done": ["pedal-hard"]}"#;
    let wrong = |what: String| Wrong::input(place.clone(), what, form);
    let value: Value =
        serde_json::from_str(text).map_err(|error| wrong(format!("not JSON: {error}")))?;
    let things = value["things"]
        .as_array()
        .ok_or_else(|| wrong("no list `things`".to_string()))?;
    let things = things
        .iter()
        .enumerate()
        .map(|(at, thing)| {
            let line = thing["line"]
                .as_str()
                .ok_or_else(|| wrong(format!("things[{at}] has no `line`")))?;
            let stands = match thing["state"].as_str() {
                Some("off") => Stands::Off,
                Some("back") => Stands::Back,
                Some("in") => Stands::In,
                other => {
                    return Err(wrong(format!(
                        "things[{at}]: `state` is {other:?}, not off, back or in"
                    )));
                }
            };
            Ok(Thing {
                line: line.to_string(),
                stands,
            })
        })
        .collect::<Result<_, _>>()?;
    let done = match &value["done"] {
        Value::Null => Vec::new(),
        Value::Array(done) => done
            .iter()
            .map(|word| {
                word.as_str()
                    .map(str::to_string)
                    .ok_or_else(|| wrong("`done` holds what is no text".to_string()))
            })
            .collect::<Result<_, _>>()?,
        _ => return Err(wrong("`done` is no list".to_string())),
    };
    Ok((things, done))
}
