//! `buttonup belt`: a belt's path, what fits, which way all turns, and what is wrong.
//!
//! Reads a layout and a length, asks the crate `belt`, and writes down its answer. It
//! calculates nothing itself.

use crate::answer::{Answer, Wrong};
use belt::{Drive, OnPulley, Question, drive};
use clap::Args;
use measure::{Dimension, Unit};
use serde_json::{Value, json};
use std::fs;
use std::path::{Path, PathBuf};

/// A layout, and the belt to lay on it.
#[derive(Debug, Args)]
pub struct Belt {
    /// The layout, as TOML; docs/belt.md describes it.
    layout: PathBuf,
    /// The belt's length: millimetres, or with its unit, such as 50.5in.
    #[arg(long, value_name = "MM")]
    length: Option<String>,
    /// The belt by the code printed on it, such as 6PK1285 or K060505.
    #[arg(long, value_name = "CODE", conflicts_with = "length")]
    belt: Option<String>,
}

/// Works the drive out. A routing with something wrong is an answer, and no good one.
pub fn run(asked: &Belt) -> Result<Answer, Wrong> {
    let name = asked.layout.display().to_string();
    let read = read(&asked.layout, &name)?;
    let mut layout = read.layout;
    let mut warnings: Vec<String> = read.warnings.iter().map(ToString::to_string).collect();
    let mut length_mm = asked.length.as_deref().map(length).transpose()?;
    if let Some(code) = &asked.belt {
        let code = belt::code(code).map_err(refused("--belt"))?;
        length_mm = Some(code.length_mm);
        if layout.facts.ribs.is_none() {
            layout.facts.ribs = code.ribs;
        } else if layout.facts.ribs != code.ribs {
            warnings.push("the belt's ribs are not those of the layout".to_owned());
        }
    }
    let found = drive(&Question { layout, length_mm }).map_err(refused(&name))?;
    let errors: Vec<String> = found.faults.iter().map(ToString::to_string).collect();
    let notes: Vec<&String> = warnings.iter().chain(&found.notes).collect();
    Ok(Answer {
        text: words(&found, &errors, &notes),
        json: in_json(&found, &errors, &notes),
        good: errors.is_empty(),
    })
}

fn read(path: &Path, name: &str) -> Result<belt::Read, Wrong> {
    let text = fs::read_to_string(path).map_err(|error| match error.kind() {
        std::io::ErrorKind::InvalidData => Wrong::input(
            name,
            "it is no UTF-8 text",
            "save it as UTF-8 text, or name another file",
        ),
        _ => Wrong::input(name, error.to_string(), "name a file that can be read"),
    })?;
    belt::read(name, &text).map_err(|troubles| {
        let lines: Vec<String> = troubles.iter().map(ToString::to_string).collect();
        Wrong::input(name, lines.join("\n"), "see docs/belt.md")
    })
}

/// A bare number is millimetres.
fn length(text: &str) -> Result<f64, Wrong> {
    if let Ok(bare) = text.trim().parse() {
        return Ok(bare);
    }
    let unreadable = |what: String| {
        Wrong::input(
            "--length",
            what,
            "write millimetres, or a length with its unit",
        )
    };
    let measured =
        measure::read(text, Dimension::Length).map_err(|error| unreadable(error.to_string()))?;
    let metric = measured
        .convert(Unit::Millimetre)
        .map_err(|error| unreadable(error.to_string()))?;
    metric
        .number()
        .to_string()
        .parse()
        .map_err(|_| unreadable(format!("`{text}` is no length")))
}

/// What the crate refuses, told as "what is wrong: how to mend it".
fn refused(place: &str) -> impl Fn(belt::BeltError) -> Wrong {
    move |error| {
        let message = error.to_string();
        let (what, mend) = message.split_once(": ").unwrap_or((&message, "check it"));
        Wrong::input(place, what, mend)
    }
}

fn words(found: &Drive, errors: &[String], notes: &[&String]) -> String {
    let mut lines: Vec<String> = found
        .cautions
        .iter()
        .map(|caution| caution.text().to_owned())
        .collect();
    lines.push(String::new());
    lines.extend(errors.iter().map(|error| format!("WRONG {error}")));
    match found.length_mm {
        Some(length) => lines.push(format!("length {length:.2} mm")),
        None => lines.push("no belt can run like this".to_owned()),
    }
    for pulley in &found.pulleys {
        lines.push(row(pulley));
    }
    if let Some((least, most)) = found.window_mm {
        lines.push(format!("the tensioner takes {least:.1} to {most:.1} mm"));
    }
    if let Some(stand) = found.stand {
        let place = match (stand.arm_deg, stand.along_mm) {
            (Some(angle), _) => format!("arm at {angle:.2}°"),
            (_, along) => format!("tensioner {:.1} mm along", along.unwrap_or(0.0)),
        };
        let tension = stand
            .tension_n
            .map(|tension| format!(", tension {tension:.0} N"));
        lines.push(place + &tension.unwrap_or_default());
    }
    for between in &found.between_marks {
        lines.push(format!(
            "{:.2} teeth from the mark of {} to that of {}",
            between.teeth, between.from, between.to
        ));
    }
    lines.extend(notes.iter().map(ToString::to_string));
    lines.push(format!("\n{}", found.working.text().trim_end()));
    lines.join("\n")
}

fn row(pulley: &OnPulley) -> String {
    let touches = pulley.touches.map_or_else(String::new, |touches| {
        format!(
            "  wrap {:>6.2}°  run after it {:>8.2} mm",
            touches.wrap_deg, touches.span_mm
        )
    });
    let margin = pulley.slip_margin.map_or_else(String::new, |margin| {
        format!("  holds {margin:.1} times its load")
    });
    format!(
        "  {:<16} {:<5}{touches}  {:<4} {:.3} x crank{margin}",
        pulley.name,
        pulley.side.name(),
        pulley.turns.name(),
        pulley.rpm_ratio
    )
}

fn in_json(found: &Drive, errors: &[String], notes: &[&String]) -> Value {
    let working: Value = serde_json::from_str(&found.working.json())
        .expect("a working writes itself as one JSON object");
    let stand = found.stand;
    json!({
        "length_mm": found.length_mm,
        "pitch_length_mm": found.pitch_length_mm,
        "pulleys": found.pulleys.iter().map(pulley_json).collect::<Vec<_>>(),
        "window_mm": found.window_mm.map(|(least, most)| [least, most]),
        "arm_deg": stand.and_then(|stand| stand.arm_deg),
        "along_mm": stand.and_then(|stand| stand.along_mm),
        "tension_n": stand.and_then(|stand| stand.tension_n),
        "stretch": found.stretch,
        "errors": errors,
        "notes": notes,
        "last": found.let_off.iter().map(|off| json!({
            "pulley": off.pulley,
            "slack_mm": off.slack_mm,
            "reachable": off.reachable,
            "flange": off.flange,
        })).collect::<Vec<_>>(),
        "marks": found.between_marks.iter().map(|between| json!({
            "from": between.from, "to": between.to, "teeth": between.teeth,
        })).collect::<Vec<_>>(),
        "cautions": found.cautions.iter().map(|caution| caution.text()).collect::<Vec<_>>(),
        "working": working,
    })
}

fn pulley_json(pulley: &OnPulley) -> Value {
    let point = |point: Option<(f64, f64)>| point.map(|(x, y)| [x, y]);
    json!({
        "name": pulley.name,
        "side": pulley.side.name(),
        "wrap_deg": pulley.touches.map(|touches| touches.wrap_deg),
        "span_mm": pulley.touches.map(|touches| touches.span_mm),
        "meets_mm": point(pulley.touches.map(|touches| touches.meets)),
        "leaves_mm": point(pulley.touches.map(|touches| touches.leaves)),
        "turns": pulley.turns.name(),
        "rpm_ratio": pulley.rpm_ratio,
        "slip_margin": pulley.slip_margin,
        "holds_ratio": pulley.holds_ratio,
        "tension_n": pulley.tension_n,
    })
}

#[cfg(test)]
mod tests {
    use super::{Belt, run};
    use crate::answer::{Answer, Wrong};
    use clap::Parser;
    use std::fs;

    #[derive(Parser)]
    struct Line {
        #[command(flatten)]
        asked: Belt,
    }

    const LAYOUT: &str = "
[[pulley]]
name = \"crank\"
x_mm = 0
y_mm = 0
diameter_mm = 160
drives = true
turns = \"cw\"
[[pulley]]
name = \"tensioner\"
x_mm = -120
y_mm = 116
diameter_mm = 72
side = \"back\"
[[pulley]]
name = \"alternator\"
x_mm = -126
y_mm = 262
diameter_mm = 62
[[pulley]]
name = \"pump\"
x_mm = 172
y_mm = 196
diameter_mm = 132
[tensioner]
pulley = \"tensioner\"
pivot_x_mm = -120
pivot_y_mm = 46
min_deg = 72
max_deg = 110
";

    fn asked(layout: &str, words: &[&str]) -> Result<Answer, Wrong> {
        let folder = tempfile::tempdir().unwrap();
        let file = folder.path().join("layout.toml");
        fs::write(&file, layout).unwrap();
        let file = file.display().to_string();
        let words = ["belt", &file].into_iter().chain(words.iter().copied());
        run(&Line::try_parse_from(words).unwrap().asked)
    }

    #[test]
    fn a_drive_is_answered_in_the_agreed_form() {
        let answer = asked(LAYOUT, &[]).unwrap();
        assert!(answer.good, "{}", answer.json["errors"]);
        let json = &answer.json;
        let window: Vec<f64> = json["window_mm"]
            .as_array()
            .unwrap()
            .iter()
            .map(|n| n.as_f64().unwrap())
            .collect();
        assert!(window[0] < window[1]);
        assert_eq!(json["arm_deg"], 90.0);
        let alternator = &json["pulleys"][2];
        assert_eq!(alternator["name"], "alternator");
        assert_eq!(alternator["turns"], "cw");
        assert!((alternator["rpm_ratio"].as_f64().unwrap() - 160.0 / 62.0).abs() < 1e-9);
        assert!(alternator["wrap_deg"].as_f64().unwrap() > 90.0 && alternator["span_mm"].is_f64());
        assert!(alternator["slip_margin"].is_null());
        assert_eq!(json["errors"].as_array().unwrap().len(), 0);
        let middle = format!("{}", f64::midpoint(window[0], window[1]));
        let fits = asked(LAYOUT, &["--length", &middle]).unwrap();
        assert!(
            fits.good
                && (fits.json["length_mm"].as_f64().unwrap() - f64::midpoint(window[0], window[1]))
                    .abs()
                    < 1e-6
        );
        assert!(answer.text.contains("A moving belt takes fingers"));
    }

    #[test]
    fn a_belt_that_does_not_fit_is_told_and_no_good_answer() {
        let answer = asked(LAYOUT, &["--belt", "6PK1500"]).unwrap();
        assert!(!answer.good);
        assert!(
            answer.json["errors"][0]
                .as_str()
                .unwrap()
                .starts_with("arm at its stop: the belt is")
        );
        let inches = asked(LAYOUT, &["--length", "60in"]).unwrap();
        assert!(!inches.good);
    }

    #[test]
    fn what_is_wrong_says_where_and_how_to_mend_it() {
        let wrong = asked("[[pulley]]\nname = 3\n", &[]).unwrap_err();
        assert_eq!((wrong.code, wrong.mend.as_str()), (2, "see docs/belt.md"));
        assert!(
            wrong
                .what
                .contains("layout.toml:2: `name` of pulley 1 is no text"),
            "{}",
            wrong.what
        );
        let still = LAYOUT.replace("turns = \"cw\"", "");
        let sense = asked(&still, &[]).unwrap_err();
        assert!(sense.mend.contains("add turns"));
        assert_eq!(
            asked(LAYOUT, &["--length", "long"]).unwrap_err().place,
            "--length"
        );
        assert_eq!(
            asked(LAYOUT, &["--belt", "XX"]).unwrap_err().place,
            "--belt"
        );
    }
}
