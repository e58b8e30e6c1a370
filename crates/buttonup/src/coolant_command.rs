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
pub use read::celsius;
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

#[cfg(test)]
mod tests {
    use super::{Answer, Coolant, Wrong, run};
    use clap::Parser;
    use serde_json::Value;

    #[derive(Parser)]
    struct Line {
        #[command(subcommand)]
        asked: Coolant,
    }

    fn asked(words: &str) -> Result<Answer, Wrong> {
        let words: Vec<&str> = words.split_whitespace().collect();
        asked_so(&words)
    }

    fn asked_so(words: &[&str]) -> Result<Answer, Wrong> {
        let words = ["coolant"].iter().chain(words);
        run(&Line::try_parse_from(words).unwrap().asked)
    }

    fn json(words: &str) -> Value {
        asked(words).unwrap().json
    }

    fn near(value: &Value, expected: f64, tolerance: f64) -> bool {
        value
            .as_f64()
            .is_some_and(|got| (got - expected).abs() <= tolerance)
    }

    #[test]
    fn freezing_tells_the_strength_in_its_ways() {
        let found = json("freeze --glycol ethylene --volume 50%");
        assert!(near(&found["freeze_c"], -37.0, 3.0));
        assert!(near(&found["mass_fraction"], 0.5273, 5e-5));
        assert!(near(&found["volume_fraction"], 0.5, 1e-9));
        let antifreeze = json("freeze --concentrate 50%");
        assert!(near(&antifreeze["volume_fraction"], 0.4723, 5e-4));
        let back = json("freeze --reading -36C");
        assert!(near(&back["mass_fraction"], 0.5, 1e-3));
        assert_eq!(back["standing"], "within its limits");
    }

    #[test]
    fn points_of_a_label_win_over_what_is_computed() {
        let table = ["--table", "40% -24C, 50% -37C"];
        let json = |words: &[&str]| asked_so(&[words, &table].concat()).unwrap().json;
        let found = json(&["freeze", "--concentrate", "45%"]);
        assert!(near(&found["freeze_c"], -30.5, 1e-9));
        let back = json(&["freeze", "--reading", "-30.5C"]);
        assert!(near(&back["concentrate_fraction"], 0.45, 1e-9));
        // Outside its points the table says nothing.
        let weak = json(&["freeze", "--concentrate", "20%"]);
        let computed = asked("freeze --concentrate 20%").unwrap().json;
        assert_eq!(weak["freeze_c"], computed["freeze_c"]);
        for bad in ["50% -37C", "40% -24C, 50% -20C", "40 -24C, 50% -37C"] {
            let wrong = asked_so(&["freeze", "--concentrate", "45%", "--table", bad]).unwrap_err();
            assert_eq!(wrong.place, "--table", "{bad}");
        }
    }

    #[test]
    fn boiling_names_pressure_and_margin() {
        let words = "boil --glycol ethylene --volume 50% --cap 15psi --altitude 0m --hottest 115C";
        let found = json(words);
        assert!(near(&found["boil_c"], 130.0, 1.0));
        assert!(near(&found["absolute_pressure_kpa"], 204.7464, 1e-3));
        assert_eq!(found["margin"], "ample");
        let text = asked(words).unwrap().text;
        assert!(text.contains("Do not open"), "{text}");
    }

    #[test]
    fn mixing_adds_up_and_keeps_the_two_percentages_apart() {
        let words =
            "mix --capacity 9.5L --left 3.5L --now 30% --want 50% --shelf concentrate,water --of";
        let litres = |of: &str| {
            let found = json(&format!("{words} {of}"));
            assert_eq!(found["rounds"], 1);
            assert!(near(&found["reached"], 0.5, 0.006));
            let add = found["add"].as_array().unwrap().clone();
            assert!(near(
                &add[0]["litres"],
                6.0 - add[1]["litres"].as_f64().unwrap(),
                1e-9
            ));
            add[0]["litres"].as_f64().unwrap()
        };
        assert!((litres("glycol") - 3.9).abs() < 1e-9);
        assert!((litres("concentrate") - 3.7).abs() < 1e-9);
    }

    #[test]
    fn a_balance_gives_a_verdict_and_the_rise() {
        let words = "balance --volume 50% --out 5.5L~0.4L@35C --lost 0.3L --in 2L --in 2L \
                     --capacity 9.2L --hot 90C --bottle-area 150cm2";
        let found = json(words);
        assert!(near(&found["missing_l"], 1.76, 0.01));
        assert!(
            found["verdict"]
                .as_str()
                .unwrap()
                .starts_with("short by about 1.8 L")
        );
        assert!(near(&found["rise_l"], 0.42, 0.01));
    }

    #[test]
    fn fifty_fifty_is_of_the_bottle() {
        let half = json("freeze --concentrate 50/50");
        assert!(near(&half["volume_fraction"], 0.4723, 5e-4));
        // What is stated holds the published point (ASTM D1177 chart).
        let (freeze, within) = (
            half["freeze_c"].as_f64().unwrap(),
            half["within_k"].as_f64().unwrap(),
        );
        assert!((freeze + 36.8).abs() <= within);
        let wrong = asked("freeze --volume 50/50").unwrap_err();
        assert!(wrong.mend.contains("--concentrate 50/50"), "{wrong}");
    }

    #[test]
    fn density_goes_both_ways() {
        let found = json("density --mass 50% --temperature 60C");
        assert!(near(&found["density_kg_per_m3"], 1040.49, 5e-3));
        let back = json("density --kg-per-m3 1040.49 --temperature 60C");
        assert!(near(&back["mass_fraction"], 0.5, 1e-4));
        // Inhibitors blur it, and the answer says by how much.
        assert!(back["mass_fraction_low"].as_f64() < Some(0.42), "{back}");
    }

    #[test]
    fn a_leak_test_refuses_by_line_and_tells_no_pressure() {
        let leak = |name: &str, text: &str| {
            let file = std::env::temp_dir()
                .join(format!("buttonup-leak-{}-{name}.csv", std::process::id()));
            std::fs::write(&file, text).unwrap();
            let path = file.display().to_string();
            let found = asked_so(&["leak", &path, "--limit", "0.05bar/15min"]);
            std::fs::remove_file(&file).unwrap();
            found
        };
        let rows = |gauge: &str, t_c: &str| -> String {
            (0..=15)
                .map(|minutes| format!("{minutes},{gauge},{t_c}\n"))
                .collect()
        };
        let heading = "\u{feff}minutes,gauge_kpa,temperature_c\n";
        let none = leak("none", &format!("{heading}{}", rows("0", "20"))).unwrap();
        assert_eq!(none.json["why"], "no-pressure");
        assert!(
            none.text.contains("no pressure was put on"),
            "{}",
            none.text
        );
        let comma = format!("{heading}0,0,100,0,20,0\n1,0,99,8,20,1\n");
        let wrong = leak("comma", &comma).unwrap_err();
        assert!(wrong.place.ends_with("line 2"), "{wrong}");
        let sign = format!(
            "{heading}{}15,-99,20\n",
            rows("100", "20").replace("15,100,20\n", "")
        );
        let wrong = leak("sign", &sign).unwrap_err();
        assert!(wrong.place.ends_with("line 17"), "{wrong}");
        let tight = leak("tight", &format!("{heading}{}", rows("100", "20"))).unwrap();
        assert_eq!(tight.json["verdict"], "tight");
    }

    #[test]
    fn what_is_wrong_says_where_and_how_to_mend_it() {
        let wrong = |words: &str| asked(words).unwrap_err();
        let unit = wrong("freeze --volume 50");
        assert_eq!((unit.code, unit.place.as_str()), (2, "--volume"));
        assert_eq!(unit.mend, "add one of %");
        let strong = wrong("freeze --volume 80%");
        assert_eq!((strong.code, strong.place.as_str()), (1, "strength"));
        assert!(strong.mend.contains("thin it"));
        assert_eq!(wrong("freeze").place, "strength");
        assert_eq!(
            wrong("leak no-such-file.csv --limit 20mL/h").place,
            "no-such-file.csv"
        );
    }
}
