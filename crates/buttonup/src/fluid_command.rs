//! `buttonup fluid`: steps, what is owed, limits, levels and amounts of the fluids besides
//! coolant, and the battery.
//!
//! Reads words, asks the crate `fluids`, and writes down its answer. It calculates nothing
//! itself.

mod asks;

use crate::answer::{Answer, Wrong};
use clap::Args;
use fluids::{Before, Done, Kind, Standing, Step, Work, standing};
use measure::Working;
use serde_json::{Map, Value, json};

/// One fluid, what was done, and what is asked.
#[derive(Debug, Args)]
pub struct Fluid {
    /// Which: engine-oil, brake, clutch, power-steering, automatic-gearbox, manual-gearbox,
    /// axle, refrigerant, fuel, urea, washer or battery.
    kind: String,
    /// What was done, in sequence, parted by commas, such as filled,primed.
    #[arg(long, value_delimiter = ',', value_name = "WORK")]
    done: Vec<String>,
    /// A second person has checked it.
    #[arg(long)]
    second_person: bool,
    #[command(flatten)]
    asks: asks::Asks,
}

/// Answers: where the fluid stands, and each question that was put.
pub fn run(asked: &Fluid) -> Result<Answer, Wrong> {
    let kind = Kind::named(&asked.kind).ok_or_else(|| {
        let words: Vec<&str> = Kind::ALL.iter().map(|kind| kind.word()).collect();
        Wrong::input(
            "KIND",
            format!("`{}` is no fluid", asked.kind),
            format!("write one of {}", words.join(", ")),
        )
    })?;
    let works = asked
        .done
        .iter()
        .map(|word| work(kind, word))
        .collect::<Result<Vec<Work>, Wrong>>()?;
    let found = standing(&Done {
        kind,
        works,
        second_person: asked.second_person,
    });
    let mut lines = lines(kind, &found);
    let mut members = members(kind, &found);
    for (name, value, words, working) in asked.asks.answers(kind)? {
        lines.push(String::new());
        lines.extend(words);
        lines.push(working.text().trim_end().to_owned());
        let mut value = value;
        value["working"] = working_json(&working);
        members.insert(name.to_owned(), value);
    }
    Ok(Answer {
        text: lines.join("\n"),
        json: Value::Object(members),
        good: true,
    })
}

fn work(kind: Kind, word: &str) -> Result<Work, Wrong> {
    let known = || {
        let words: Vec<&str> = kind.steps().iter().map(|step| step.work.word()).collect();
        format!("write one of {}", words.join(", "))
    };
    Work::named(word.trim())
        .filter(|work| kind.steps().iter().any(|step| step.work == *work))
        .ok_or_else(|| Wrong::input("--done", format!("`{word}` is no work of {kind}"), known()))
}

fn working_json(working: &Working) -> Value {
    serde_json::from_str(&working.json()).expect("a working writes itself as one JSON object")
}

fn lines(kind: Kind, found: &Standing) -> Vec<String> {
    let mut lines = Vec::new();
    for step in kind.steps() {
        let open = found.owed.iter().find(|owed| owed.step.work == step.work);
        if let Some(caution) = step.caution.filter(|_| open.is_some()) {
            lines.push(format!("  ! {}", caution.text()));
        }
        let state = match open {
            None => "done ",
            Some(owed) if owed.again => "again",
            Some(_) => "owed ",
        };
        lines.push(format!("{state} {:<17} {}", step.work.word(), step.text()));
    }
    if found.second_person_owed {
        lines.push("owed  a second person's check".to_owned());
    }
    lines.push(format!("It closes on {}.", found.closes_on));
    let waits: Vec<&str> = found.waits.iter().map(|before| before.words()).collect();
    lines.push(if found.closed {
        "closed".to_owned()
    } else {
        format!("waits for it: {}", waits.join(", "))
    });
    lines
}

fn members(kind: Kind, found: &Standing) -> Map<String, Value> {
    let step_json = |step: &Step| {
        json!({
            "work": step.work.word(),
            "text": step.text(),
            "caution": step.caution.map(fluids::Caution::text),
            "before": step.before.code(),
            "after": step.after.iter().map(|work| work.word()).collect::<Vec<_>>(),
        })
    };
    let owed: Vec<Value> = found
        .owed
        .iter()
        .map(|owed| json!({ "work": owed.step.work.word(), "before": owed.step.before.code(), "again": owed.again }))
        .collect();
    let value = json!({
        "kind": kind.word(),
        "closed": found.closed,
        "steps": kind.steps().iter().map(step_json).collect::<Vec<_>>(),
        "owed": owed,
        "second_person_owed": found.second_person_owed,
        "waits": found.waits.iter().copied().map(Before::code).collect::<Vec<_>>(),
        "closes_on": found.closes_on,
        "working": working_json(&found.working),
    });
    value.as_object().cloned().unwrap_or_default()
}

#[cfg(test)]
mod tests {
    use super::{Fluid, run};
    use crate::answer::{Answer, Wrong};
    use clap::Parser;

    #[derive(Parser)]
    struct Line {
        #[command(flatten)]
        asked: Fluid,
    }

    fn asked(words: &[&str]) -> Result<Answer, Wrong> {
        run(&Line::try_parse_from(["fluid"].iter().chain(words))
            .unwrap()
            .asked)
    }

    #[test]
    fn what_is_owed_and_what_waits() {
        let open = asked(&["fuel", "--done", "filled,primed,no-drip"]).unwrap();
        assert_eq!(open.json["waits"][0], "start");
        assert_eq!(open.json["owed"][0]["work"], "no-smell");
        assert!(open.text.contains("owed  no-smell"));
        let all = [
            "battery",
            "--done",
            "negative-off,positive-off,positive-on,negative-on,memory-restored,registered",
        ];
        assert_eq!(asked(&all).unwrap().json["closed"], true);
        // The caution stands before its step.
        let text = asked(&["battery"]).unwrap().text;
        assert!(text.find("welds itself on").unwrap() < text.find("owed  negative-off").unwrap());
    }

    #[test]
    fn questions_of_a_fluid() {
        let brake = asked(&["brake", "--class", "DOT 4", "--boils", "284F"]).unwrap();
        assert_eq!(brake.json["reading"]["verdict"], "renew");
        let unknown = asked(&["brake", "--boils", "140C"]).unwrap();
        assert_eq!(unknown.json["reading"]["verdict"], "cant-tell");
        let axle = asked(&[
            "axle",
            "--out",
            "2.1L~0.1L",
            "--in",
            "2.0L~0.1L",
            "--window",
            "20C..40C",
            "--at",
            "30C",
            "--level",
            "at-mark",
        ])
        .unwrap();
        assert_eq!(axle.json["amounts"]["verdict"], "equal");
        assert_eq!(axle.json["level"]["verdict"], "closes");
        let urea = asked(&[
            "urea", "--holds", "18L", "--left", "9L", "--now", "28%", "--bottle", "32.5%",
        ])
        .unwrap();
        assert!(urea.json["mix"]["drain_l"].as_f64().unwrap() > 0.0);
        let washer = asked(&[
            "washer", "--holds", "4L", "--left", "1L", "--now", "20%", "--want", "50%",
        ])
        .unwrap();
        assert!((washer.json["mix"]["concentrate_l"].as_f64().unwrap() - 1.8).abs() < 1e-9);
        let frost = asked(&[
            "washer",
            "--holds",
            "4L",
            "--want-frost=-20C",
            "--label",
            "50% -20C, 100% -45C",
        ])
        .unwrap();
        assert!((frost.json["mix"]["percent"].as_f64().unwrap() - 50.0).abs() < 1e-9);
        let cold = asked(&[
            "refrigerant",
            "--label-weight",
            "550",
            "--weight-out",
            "410",
            "--weight-in",
            "550",
        ])
        .unwrap();
        assert_eq!(cold.json["charge"]["verdict"], "as-labelled");
        let oil = asked(&[
            "engine-oil",
            "--inside",
            "10W-40",
            "--new",
            "5W-30",
            "--asked-for",
            "5W-30",
        ])
        .unwrap();
        assert_eq!(oil.json["sorts"]["may"], "said");
    }

    #[test]
    fn what_is_wrong_says_where_and_how_to_mend_it() {
        let wrong = |words: &[&str]| asked(words).unwrap_err();
        assert!(wrong(&["milk"]).mend.contains("engine-oil"));
        assert!(
            wrong(&["fuel", "--done", "pedal-hard"])
                .mend
                .contains("primed")
        );
        assert!(
            wrong(&["brake", "--class", "DOT 9", "--boils", "140C"])
                .mend
                .contains("DOT 3")
        );
        assert_eq!(wrong(&["brake", "--boils", "140"]).place, "--boils");
        // Two engine oils are no sum.
        let sum = wrong(&[
            "engine-oil",
            "--holds",
            "5L",
            "--now",
            "30%",
            "--want",
            "50%",
        ]);
        assert!(
            sum.what.contains("that is no sum") || sum.mend.contains("drain and fill"),
            "{sum}"
        );
        assert_eq!(
            wrong(&["axle", "--window", "20C", "--at", "30C", "--level", "low"]).place,
            "--window"
        );
    }
}
