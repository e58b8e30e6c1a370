//! `buttonup coolant`: mixture, boiling, mixing, filling and the leak test.
//!
//! Reads words and files, asks the crate `coolant`, and writes down its answer. It
//! calculates nothing itself.

mod leak;
mod litres;
mod properties;
mod read;

use crate::answer::{Answer, Wrong};
use clap::Subcommand;
use measure::Working;
use serde_json::{Map, Value};

/// What coolant can be asked.
#[derive(Debug, Subcommand)]
pub enum Coolant {
    /// Freezing point of a mixture, or the strength from a refractometer's reading.
    Freeze(properties::Freeze),
    /// Boiling point under the cap at an altitude, and the margin to the hottest reading.
    Boil(properties::Boil),
    /// What to pour to reach a strength, in how many rounds.
    Mix(litres::Mix),
    /// Litres out and in: what is still missing, and what that means.
    ///
    /// An amount may carry how far it may be off, and its temperature: 5.5L~0.4L@35C.
    Balance(litres::Balance),
    /// A pressure test from a table of readings, with the cooling taken out.
    ///
    /// The table has a heading: minutes, gauge_kpa (or gauge_bar, gauge_psi), and
    /// temperature_c (or temperature_f) if it was read, parted by commas or semicolons.
    Leak(leak::Leak),
    /// Density, specific heat and viscosity, or the strength from a hydrometer's reading.
    Density(properties::Density),
}

/// Answers one question.
pub fn run(asked: &Coolant) -> Result<Answer, Wrong> {
    match asked {
        Coolant::Freeze(asked) => properties::freeze(asked),
        Coolant::Boil(asked) => properties::boil(asked),
        Coolant::Mix(asked) => litres::mix(asked),
        Coolant::Balance(asked) => litres::balance(asked),
        Coolant::Leak(asked) => leak::leak(asked),
        Coolant::Density(asked) => properties::density(asked),
    }
}

/// Lines of text and JSON, each with the working below; the parts are objects whose
/// names differ.
fn answered(mut lines: Vec<String>, parts: &[Value], working: &Working) -> Answer {
    let mut members: Map<String, Value> = parts
        .iter()
        .filter_map(Value::as_object)
        .flat_map(Clone::clone)
        .collect();
    let json = serde_json::from_str(&working.json());
    members.insert(
        "working".to_owned(),
        json.expect("a working writes itself as one JSON object"),
    );
    lines.push(format!("\n{}", working.text().trim_end()));
    Answer {
        text: lines.join("\n"),
        json: Value::Object(members),
        good: true,
    }
}

/// What the crate refuses, told as "what is wrong: how to mend it".
fn refused(place: &str) -> impl Fn(coolant::CoolantError) -> Wrong {
    move |error| {
        let message = error.to_string();
        let (what, mend) = message.split_once(": ").unwrap_or((&message, "check it"));
        Wrong {
            code: 1,
            ..Wrong::input(place, what, mend)
        }
    }
}
