//! `buttonup thread`, `torque`, `thread-repair` and `extract`.
//!
//! Hands the words over to the crate `fastener`, and writes down its answer. It calculates
//! nothing itself.

mod extract;
mod repair;
mod thread;
mod torque;

use crate::answer::{Answer, Wrong};
use clap::Subcommand;
use measure::{Customary, Range, Working};
use serde_json::{Map, Value, json};

/// What fasteners can be asked.
#[derive(Debug, Subcommand)]
pub enum Fastener {
    /// Sizes, drills, holes, wrenches, near misses and strength of a thread.
    Thread(thread::Thread),
    /// Torque for a clamp and back, the setting with an adapter, the force at a lever.
    Torque(torque::Torque),
    /// The ways to give a damaged hole its clamp back, ranked.
    ThreadRepair(repair::ThreadRepair),
    /// The ways to get a stub out, least risk first.
    Extract(extract::Extract),
}

/// Answers one question.
pub fn run(asked: &Fastener) -> Result<Answer, Wrong> {
    match asked {
        Fastener::Thread(asked) => thread::thread(asked),
        Fastener::Torque(asked) => torque::torque(asked),
        Fastener::ThreadRepair(asked) => repair::repair(asked),
        Fastener::Extract(asked) => extract::extract(asked),
    }
}

/// Says which word on the command line is wrong.
fn wrong(trouble: shop::calculators::threads::ask::Trouble) -> Wrong {
    let place = match trouble.field {
        "thread-repair" | "extract" => trouble.field.to_owned(),
        field => format!("--{field}"),
    };
    Wrong::input(place, trouble.what, trouble.mend)
}

/// Lines of text and JSON, with the working below both.
fn answered(
    mut lines: Vec<String>,
    mut members: Map<String, Value>,
    working: Option<&Working>,
) -> Answer {
    if let Some(working) = working {
        members.insert("working".to_owned(), working_json(working));
        lines.push(format!("\n{}", working.text().trim_end()));
    }
    Answer {
        text: lines.join("\n"),
        json: Value::Object(members),
        good: true,
    }
}

fn working_json(working: &Working) -> Value {
    serde_json::from_str(&working.json()).expect("a working writes itself as one JSON object")
}

/// A JSON object's members.
fn members(value: Value) -> Map<String, Value> {
    match value {
        Value::Object(members) => members,
        _ => Map::new(),
    }
}

/// Whose units are shown first: those that were asked in, else those of the thread.
fn reads_us<'a>(
    mut written: impl Iterator<Item = &'a str>,
    thread: &fastener::Thread,
) -> Customary {
    let inch = thread.standard() == fastener::Standard::Unified;
    if inch || written.any(|text| written_in(text) == Customary::Us) {
        Customary::Us
    } else {
        Customary::Metric
    }
}

/// Whose units a quantity was written in.
fn written_in(text: &str) -> Customary {
    let text = text.to_lowercase();
    if text.contains("lb") || text.contains("in") || text.contains("ft") {
        Customary::Us
    } else {
        Customary::Metric
    }
}

/// A number without the noise of its last bits; `null` where it is not known.
fn number(value: impl Into<Option<f64>>) -> Value {
    match value.into() {
        Some(value) if value.is_finite() => json!((value * 1e6).round() / 1e6),
        _ => Value::Null,
    }
}

fn range(range: Option<Range<f64>>) -> Value {
    range.map_or(Value::Null, |range| {
        json!({
            "low": number(range.low()),
            "mid": number(range.mid()),
            "high": number(range.high()),
        })
    })
}

#[cfg(test)]
mod tests {
    use super::{Answer, Fastener, Wrong, run};
    use clap::Parser;
    use serde_json::Value;

    #[derive(Parser)]
    struct Line {
        #[command(subcommand)]
        asked: Fastener,
    }

    fn asked(words: &[&str]) -> Result<Answer, Wrong> {
        let words = std::iter::once(&"buttonup").chain(words);
        run(&Line::try_parse_from(words).unwrap().asked)
    }

    fn json(words: &str) -> Value {
        asked(&words.split_whitespace().collect::<Vec<_>>())
            .unwrap()
            .json
    }

    fn near(value: &Value, expected: f64, tolerance: f64) -> bool {
        value
            .as_f64()
            .is_some_and(|got| (got - expected).abs() <= tolerance)
    }

    #[test]
    fn a_thread_is_told_in_fields_that_carry_their_unit() {
        let found = json("thread M8x1.25 --class 8.8 --in A380 --depth 12mm");
        for (field, expected, tolerance) in [
            ("pitch_mm", 1.25, 0.0),
            ("pitch_diameter_mm", 7.188, 5e-4),
            ("minor_diameter_mm", 6.647, 5e-4),
            ("root_diameter_mm", 6.466, 5e-4),
            ("stress_area_mm2", 36.6, 0.05),
            ("tap_drill_mm", 6.8, 0.0),
            ("hex_mm", 13.0, 0.0),
            ("proof_load_n", 21_200.0, 0.0),
            ("breaking_load_n", 29_200.0, 0.0),
            ("breaking_torque_nm", 33.0, 0.5),
        ] {
            assert!(
                near(&found[field], expected, tolerance),
                "{field}: {}",
                found[field]
            );
        }
        assert_eq!(found["tap_drill_name"], "6.8 mm");
        assert_eq!(found["fails_first"], "the bolt breaks");
    }

    #[test]
    fn outside_iso_898_7_there_is_no_breaking_torque() {
        assert_eq!(
            json("thread M12 --class 8.8")["breaking_torque_nm"],
            Value::Null
        );
        assert_eq!(
            json("thread M8 --class 4.6")["breaking_torque_nm"],
            Value::Null
        );
    }

    #[test]
    fn a_pipe_thread_is_told_in_words_and_turns() {
        let text = asked(&["thread", "1/8", "NPT"]).unwrap().text;
        assert!(text.contains("4.5 by hand"), "{text}");
        let text = asked(&["thread", "spark plug M14x1.25"]).unwrap().text;
        assert!(text.contains("maker's torque"), "{text}");
    }

    #[test]
    fn torque_and_clamp_go_both_ways() {
        let found = json("torque --thread M10x1.5 --clamp 25275N --friction 0.15");
        assert!(near(&found["torque_nm"], 50.05418, 1e-4), "{found}");
        assert!(near(&found["pitch_nm"], 6.03396, 1e-4));
        assert!(near(&found["thread_nm"], 19.75621, 1e-4));
        assert!(near(&found["head_nm"], 24.264, 1e-4));
        let back = json("torque --thread M10x1.5 --torque 50.05418Nm --friction 0.15 --class 8.8");
        assert!(near(&back["clamp_n"], 25_275.0, 0.1));
        assert!(near(&back["share_of_proof"], 0.75, 1e-4));
    }

    #[test]
    fn an_adapter_and_a_lever_are_told() {
        let found = json("torque --adapter 2in --wrench 12in --angle 0deg --want 70in-lb");
        assert!(
            near(&found["set_to_nm"], 60.0 * 0.112_984_829, 1e-5),
            "{found}"
        );
        let small = json("torque --adapter 2in --wrench 12in --want 22Nm --range 200Nm");
        assert!(small["wrench"].as_str().unwrap().contains("says nothing"));
        let lever = json("torque --want 120Nm --wrench 300mm --second 320mm --overlap 20mm");
        assert!(near(&lever["hand_force_n"], 200.0, 1e-6));
    }

    #[test]
    fn the_housing_bolt_gets_its_insert() {
        let found = json(
            "thread-repair --thread M8x75 --joint housing --class 8.8 --engaged 18mm --blind 26mm \
             --boss 19mm --in aluminium --torque 22Nm",
        );
        assert_eq!(found["asks"], Value::Null);
        let first = &found["options"][0];
        assert_eq!(first["way"], "wire insert");
        assert_eq!(first["rank"], 1);
        assert_eq!(first["holds"], true);
        assert!(near(&first["drill_mm"], 8.4, 0.0));
        assert!(near(&first["torque_nm"], 22.0, 0.0));
        assert!(near(&first["clamp_ratio"], 1.0, 0.0));
        let options = found["options"].as_array().unwrap();
        for option in options {
            for field in [
                "way",
                "holds",
                "reason",
                "drill_mm",
                "tap",
                "bolt",
                "torque_nm",
                "clamp_ratio",
                "strip_margin",
                "wall_left_mm",
                "centre_tolerance_mm",
                "minutes",
                "rank",
            ] {
                assert!(option.get(field).is_some(), "{field}");
            }
        }
    }

    #[test]
    fn a_brake_gets_the_makers_part_and_a_wheel_is_asked_about() {
        let hole = "--engaged 15mm --blind 25mm --in steel --torque 100Nm";
        let brake = json(&format!(
            "thread-repair --thread M12x1.5 --joint brake {hole}"
        ));
        assert_eq!(brake["options"][0]["way"], "the maker's part");
        assert_eq!(brake["options"].as_array().unwrap().len(), 2);
        let line = format!("thread-repair --thread M12x1.5 {hole}");
        let words: Vec<&str> = line.split_whitespace().collect();
        let wheel = asked(&words).unwrap_err();
        assert_eq!(wheel.place, "--joint");
        assert!(wheel.what.contains("what does the joint hold?"), "{wheel}");
    }

    #[test]
    fn a_broken_bolt_has_no_share_of_its_proof_load() {
        let words = "torque --thread M8 --class 8.8 --torque 500Nm --friction 0.15";
        let found = json(words);
        assert_eq!(found["fate"], "breaks");
        assert_eq!(
            (&found["share_of_proof"], &found["clamp_n"]),
            (&Value::Null, &Value::Null)
        );
        let text = asked(&words.split_whitespace().collect::<Vec<_>>())
            .unwrap()
            .text;
        assert!(text.starts_with("! the bolt breaks"), "{text}");
        assert!(!text.contains("% of the proof load"), "{text}");
    }

    #[test]
    fn answers_come_in_the_units_that_were_asked_in() {
        let text = |words: &str| {
            asked(&words.split_whitespace().collect::<Vec<_>>())
                .unwrap()
                .text
        };
        let wrench = text("torque --adapter 2in --wrench 16in --want 60ft-lb");
        assert!(
            wrench.starts_with("set the wrench to 53.3\u{202f}lb·ft (72.3\u{202f}N·m)"),
            "{wrench}"
        );
        let inch = text("thread 1/4-20");
        assert!(
            inch.contains("pitch 0.05000 in, pitch diameter 0.2175 in"),
            "{inch}"
        );
        let pipe = json("thread G 1/4");
        assert!(
            near(&pipe["major_diameter_mm"], 13.157, 1e-9) && near(&pipe["pitch_mm"], 1.3368, 1e-4)
        );
        assert_eq!(pipe["tap_drill_name"], "11.8 mm");
    }

    #[test]
    fn a_stub_has_a_ladder_with_cautions_first() {
        let words = "extract --thread M8 --class 8.8 --stub below --by 2mm --engaged 18mm \
                     --blind 26mm --in aluminium";
        let found = json(words);
        assert!(
            found["cautions"][0]
                .as_str()
                .unwrap()
                .contains("Eye protection")
        );
        assert!(near(&found["largest_drill_mm"], 6.0, 0.0));
        let text = asked(&words.split_whitespace().collect::<Vec<_>>())
            .unwrap()
            .text;
        assert!(
            text.find("Eye protection") < text.find("left-hand drills"),
            "{text}"
        );
    }

    #[test]
    fn what_is_wrong_says_where_and_how_to_mend_it() {
        let wrong = |words: &str| {
            let words: Vec<&str> = words.split_whitespace().collect();
            asked(&words).unwrap_err()
        };
        let unit = wrong("torque --thread M8 --clamp 100 --friction 0.15");
        assert_eq!((unit.code, unit.place.as_str()), (2, "--clamp"));
        let friction = wrong("torque --thread M8 --clamp 100N");
        assert!(friction.what.contains("none is assumed"));
        assert_eq!(wrong("thread M9").place, "--thread");
        assert_eq!(wrong("torque --thread M8").place, "torque");
    }
}
