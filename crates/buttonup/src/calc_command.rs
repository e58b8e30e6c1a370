//! `buttonup calc`: every calculator by its form, field by field.
//!
//! Nothing here knows which fields there are: a new calculator is here at once.

use crate::answer::{Answer, Wrong};
use clap::Args;
use serde_json::{Value, json};
use shop::calculators::{Calculator, Named, ROOMS, Room, Shop, Takes, fields_once, room};
use shop::measure::Customary;
use std::collections::BTreeMap;

/// What is asked, of which calculator.
#[derive(Debug, Args)]
pub struct Calc {
    /// The subject, such as coolant; without it all are listed.
    room: Option<String>,
    /// The calculator, such as mix; without it those of the subject are listed.
    calculator: Option<String>,
    /// Its fields, such as capacity=9.2 or want="50 %"; `@NAME` reads a file into one. Without
    /// any they are listed.
    #[arg(value_name = "FIELD=TEXT")]
    fields: Vec<String>,
    /// A bare number is in US customary units, and the answer too.
    #[arg(long)]
    us: bool,
    /// Height above the sea, where it is asked.
    #[arg(long, value_name = "HEIGHT")]
    altitude: Option<String>,
}

/// Lists, or answers.
pub fn run(asked: &Calc) -> Result<Answer, Wrong> {
    let Some(code) = &asked.room else {
        return Ok(listed(ROOMS));
    };
    let room = room(code).ok_or_else(|| {
        let codes: Vec<&str> = ROOMS.iter().map(|room| room.code).collect();
        unknown("ROOM", code, &codes)
    })?;
    let Some(code) = &asked.calculator else {
        return Ok(listed(std::slice::from_ref(room)));
    };
    let one = room.calculators.iter().find(|one| one.code == code);
    let one = one.ok_or_else(|| {
        let codes: Vec<&str> = room.calculators.iter().map(|one| one.code).collect();
        unknown("CALCULATOR", code, &codes)
    })?;
    if asked.fields.is_empty() {
        return Ok(described(one));
    }
    let shop = Shop {
        customary: if asked.us {
            Customary::Us
        } else {
            Customary::Metric
        },
        altitude: asked.altitude.clone(),
        ..Shop::default()
    };
    let answer = one.answer(written(&asked.fields)?, &shop);
    let answer = answer.map_err(|troubles| wrong(&troubles))?;
    let mut json = answer.json();
    json["room"] = json!(room.code);
    json["calculator"] = json!(one.code);
    json["cautions"] = json!(one.cautions());
    let cautions: String = one
        .cautions()
        .iter()
        .map(|text| format!("! {text}\n"))
        .collect();
    Ok(Answer {
        text: format!("{cautions}\n{}", answer.text()),
        json,
        good: answer.tone != "no",
    })
}

fn unknown(place: &str, code: &str, known: &[&str]) -> Wrong {
    Wrong::input(
        place,
        format!("`{code}` is none"),
        format!("write one of {}", known.join(", ")),
    )
}

fn written(fields: &[String]) -> Result<BTreeMap<String, String>, Wrong> {
    let each = fields.iter().map(|pair| {
        let (name, text) = pair.split_once('=').ok_or_else(|| {
            Wrong::input(
                pair,
                "it names no field",
                "write FIELD=TEXT, such as want=\"50 %\"",
            )
        })?;
        let text = match text.strip_prefix('@') {
            Some(path) => {
                let bytes = std::fs::read(path).map_err(|error| {
                    Wrong::input(
                        path,
                        format!("it cannot be read ({error})"),
                        "check the name and the permission",
                    )
                })?;
                String::from_utf8_lossy(&bytes).into_owned()
            }
            None => text.to_owned(),
        };
        Ok((name.to_owned(), text))
    });
    each.collect()
}

/// The first field that is wrong, with the others below.
fn wrong(troubles: &[shop::calculators::Trouble]) -> Wrong {
    let mut each = troubles.iter();
    let first = each.next();
    let others: String = each.map(|one| format!("\n  {one}")).collect();
    let (place, what, mend) = first
        .map_or(("the fields", "there is no answer to them", ""), |one| {
            (one.place.as_str(), one.what.as_str(), one.mend.as_str())
        });
    Wrong::input(place, format!("{what}{others}"), mend)
}

fn listed(rooms: &[Room]) -> Answer {
    let mut lines = Vec::new();
    for room in rooms {
        lines.push(room.name().to_owned());
        for one in room.calculators {
            lines.push(format!("  {} {:<12} {}", room.code, one.code, one.what()));
        }
    }
    let json: Vec<Value> = rooms
        .iter()
        .map(|room| {
            let all: Vec<Value> = room.calculators.iter().map(Calculator::json).collect();
            json!({ "room": room.code, "name": room.name(), "calculators": all })
        })
        .collect();
    Answer {
        text: lines.join("\n"),
        json: json.into(),
        good: true,
    }
}

fn described(one: &Calculator) -> Answer {
    let mut lines = vec![format!("{}: {}", one.name(), one.what())];
    lines.extend(fields_once(one.form).iter().map(line));
    Answer {
        text: lines.join("\n").replace('\u{ad}', ""),
        json: one.json(),
        good: true,
    }
}

fn line(field: &Named) -> String {
    let takes = match field.takes {
        Takes::Choice { of, .. } => {
            let codes: Vec<&str> = of
                .iter()
                .map(|(code, _)| *code)
                .filter(|code| !code.is_empty())
                .collect();
            codes.join("|")
        }
        Takes::Tick => "yes".to_owned(),
        Takes::Number { units, .. } => units.metric.symbol().to_owned(),
        Takes::File => "@FILE".to_owned(),
        Takes::Text | Takes::Said | Takes::Lines | Takes::Link => String::new(),
    };
    let mut hint = if field.hint().is_empty() {
        String::new()
    } else {
        format!("; {}", field.hint())
    };
    if let Some(rows) = field.rows {
        hint.push_str(&format!("; one a row, to {rows}"));
    }
    format!("  {:<16} {takes:<12} {}{hint}", field.name, field.label())
}

#[cfg(test)]
mod tests {
    use super::{Calc, run};
    use crate::answer::{Answer, Wrong};
    use clap::Parser;

    #[derive(Parser)]
    struct Line {
        #[command(flatten)]
        asked: Calc,
    }

    fn asked(words: &[&str]) -> Result<Answer, Wrong> {
        let words = ["calc"].iter().chain(words);
        run(&Line::try_parse_from(words).unwrap().asked)
    }

    #[test]
    fn all_are_listed_and_each_tells_its_fields() {
        let all = asked(&[]).unwrap();
        assert!(all.text.contains("coolant mix") && all.text.contains("threads torque"));
        let mix = asked(&["coolant", "mix"]).unwrap();
        assert!(mix.text.contains("capacity         L "), "{}", mix.text);
        assert_eq!(mix.json["fields"][0]["name"], "capacity");
    }

    #[test]
    fn a_question_is_answered_in_words_and_for_a_program() {
        let words = [
            "threads",
            "torque",
            "thread=M10x1.5",
            "clamp=25275",
            "friction=0.15",
        ];
        let answer = asked(&words).unwrap();
        assert!(
            answer.text.starts_with("! The vehicle maker's torque"),
            "{}",
            answer.text
        );
        let torque = answer.json["outputs"]["torque_nm"].as_f64().unwrap();
        assert!((torque - 50.05).abs() < 0.01, "{torque}");
        let inches = asked(&[
            "threads",
            "wrench",
            "want=60",
            "wrench=16",
            "adapter=2",
            "angle=0",
            "--us",
        ]);
        assert!(
            inches.unwrap().json["fact"]
                .as_str()
                .unwrap()
                .contains("lb·ft")
        );
    }

    #[test]
    fn what_is_wrong_says_where_and_how_to_mend_it() {
        assert!(asked(&["teapots"]).unwrap_err().mend.contains("coolant"));
        assert!(
            asked(&["coolant", "brew"])
                .unwrap_err()
                .mend
                .contains("mix")
        );
        let field = asked(&["coolant", "mix", "lid=9"]).unwrap_err();
        assert!(field.place == "lid" && field.mend.contains("capacity"));
        assert_eq!(asked(&["coolant", "mix", "9.2"]).unwrap_err().place, "9.2");
        let missing = asked(&["coolant", "mix", "left=3.7"]).unwrap_err();
        assert_eq!((missing.code, missing.place.as_str()), (2, "capacity"));
        let file = asked(&["coolant", "leak", "readings=@no-such-file"]).unwrap_err();
        assert_eq!(file.place, "no-such-file");
    }
}
