//! `buttonup drive`: what a recorded drive proves.
//!
//! Reads the file and the words, asks the crate `roadtest`, and writes down its answer.

use crate::answer::{Answer, Wrong};
use crate::coolant_command::celsius;
use clap::{Args, ValueEnum};
use roadtest::{Check, Column, Conditions, Kind, Log, LogError, Mapping, Verdict};
use serde_json::{Value, json};
use std::fmt::Write;
use std::path::{Path, PathBuf};

/// A drive and what is known besides.
#[derive(Debug, Args)]
pub struct Drive {
    /// The recording: a table of any logger, or frames of SAE J1979, a line each.
    file: PathBuf,
    /// How it was recorded; found from the file if not told.
    #[arg(long, value_enum)]
    kind: Option<DriveKind>,
    /// The complaint in the customer's words: "comes on after 20 min of motorway".
    #[arg(long)]
    complaint: Option<String>,
    /// The temperature stamped on the thermostat: 88C.
    #[arg(long)]
    thermostat: Option<String>,
    /// The maker's highest coolant temperature: 110C.
    #[arg(long)]
    limit: Option<String>,
    /// Where the coolant boils under this cap, as `buttonup coolant boil` has it: 125C.
    #[arg(long)]
    boil: Option<String>,
    /// A column the headings do not explain: "coolant = Temp 3 [°F]"; may be given again.
    #[arg(long)]
    map: Vec<String>,
    /// A file of such lines.
    #[arg(long)]
    mapping: Option<PathBuf>,
}

/// How a drive was recorded.
#[derive(Debug, Clone, Copy, ValueEnum)]
enum DriveKind {
    Csv,
    J1979,
}

/// Judges the drive. A drive in which something failed is an answer, not a fault.
pub fn run(asked: &Drive) -> Result<Answer, Wrong> {
    let place = asked.file.display().to_string();
    let bytes = bytes_of(&asked.file)?;
    let kind = asked.kind.map(|kind| match kind {
        DriveKind::Csv => Kind::Csv,
        DriveKind::J1979 => Kind::J1979,
    });
    let mapping = mapping(asked)?;
    let log = roadtest::read(&bytes, kind, &mapping).map_err(|error| refused(&place, &error))?;
    let temperature = |text: &Option<String>, place: &str| {
        text.as_deref().map(|text| celsius(text, place)).transpose()
    };
    let conditions = Conditions {
        complaint: asked.complaint.clone(),
        thermostat_c: temperature(&asked.thermostat, "--thermostat")?,
        limit_c: temperature(&asked.limit, "--limit")?,
        boil_c: temperature(&asked.boil, "--boil")?,
    };
    let verdict = roadtest::judge(&log, &conditions);
    Ok(Answer {
        text: text(&log, &verdict),
        json: as_json(&log, &verdict),
        good: true,
    })
}

fn mapping(asked: &Drive) -> Result<Mapping, Wrong> {
    let (mut lines, mut place) = (asked.map.join("\n"), "--map".to_owned());
    if let Some(file) = &asked.mapping {
        place = file.display().to_string();
        let kept = String::from_utf8_lossy(&bytes_of(file)?).into_owned();
        lines = format!("{kept}\n{lines}");
    }
    Mapping::read(&lines).map_err(|error| refused(&place, &error))
}

fn bytes_of(path: &Path) -> Result<Vec<u8>, Wrong> {
    std::fs::read(path).map_err(|error| {
        Wrong::input(
            path.display().to_string(),
            format!("it cannot be read ({error})"),
            "check the name and the permission",
        )
    })
}

fn refused(place: &str, error: &LogError) -> Wrong {
    let (what, mend) = error.told();
    Wrong::input(place, what, mend)
}

fn text(log: &Log, verdict: &Verdict) -> String {
    let mut out = format!("{}: {}\n\n", verdict.verdict.said(), verdict.because);
    let width = verdict
        .checks
        .iter()
        .map(|check| check.check.code().len())
        .max()
        .unwrap_or(0);
    for check in &verdict.checks {
        let (name, said) = (check.check.code(), check.verdict.said());
        let _ = writeln!(out, "{name:width$}  {said:12}  {}", check.because);
        if let Some(next) = &check.next {
            let _ = writeln!(out, "{:width$}  {:12}  next: {next}", "", "");
        }
    }
    let unknown: Vec<&str> = log
        .columns
        .iter()
        .filter(|column| column.taken_for.is_none())
        .map(|column| column.heading.as_str())
        .collect();
    if !unknown.is_empty() {
        let _ = writeln!(out, "\nnot used: {}", unknown.join(", "));
    }
    if !log.notes.is_empty() {
        out.push_str("\nof the log:\n");
    }
    for note in &log.notes {
        let line = note
            .line
            .map_or(String::new(), |line| format!("line {line}: "));
        let _ = writeln!(out, "  {line}{}", note.what);
    }
    out.push_str("\nbefore the next drive:\n");
    for caution in &verdict.cautions {
        let _ = writeln!(out, "  {}", caution.text());
    }
    let _ = write!(out, "\n{}", verdict.working.text().trim_end());
    out
}

fn as_json(log: &Log, verdict: &Verdict) -> Value {
    let checks: Vec<Value> = verdict.checks.iter().map(check).collect();
    let columns: Vec<Value> = log.columns.iter().map(column).collect();
    let notes: Vec<Value> = log
        .notes
        .iter()
        .map(|note| json!({ "line": note.line, "what": note.what }))
        .collect();
    let cautions: Vec<&str> = verdict
        .cautions
        .iter()
        .map(|caution| caution.text())
        .collect();
    let working: Value = serde_json::from_str(&verdict.working.json())
        .expect("a working writes itself as one JSON object");
    json!({
        "verdict": verdict.verdict.code(),
        "because": verdict.because,
        "checks": checks,
        "columns": columns,
        "notes": notes,
        "cautions": cautions,
        "working": working,
    })
}

fn check(check: &Check) -> Value {
    let readings: Vec<Value> = check
        .readings
        .iter()
        .map(|reading| {
            json!({
                "name": reading.name,
                "value": reading.value,
                "unit": reading.unit,
                "at_s": reading.at_s,
                "within": reading.within,
            })
        })
        .collect();
    json!({
        "check": check.check.code(),
        "verdict": check.verdict.code(),
        "because": check.because,
        "readings": readings,
        "next": check.next,
    })
}

fn column(column: &Column) -> Value {
    json!({
        "heading": column.heading,
        "taken_for": column.taken_for,
        "unit": column.unit,
        "unit_told": column.unit_told,
    })
}

#[cfg(test)]
mod tests {
    use super::{Drive, run};
    use clap::Parser;
    use serde_json::Value;
    use std::io::Write;

    #[derive(Parser)]
    struct Line {
        #[command(flatten)]
        asked: Drive,
    }

    const DRIVE: &str = concat!(
        env!("CARGO_MANIFEST_DIR"),
        "/../../checks/data/drives/drive12.csv"
    );

    fn asked(words: &[&str]) -> Result<Value, crate::answer::Wrong> {
        let words = ["drive"].iter().chain(words);
        let answer = run(&Line::try_parse_from(words).unwrap().asked)?;
        assert!(answer.good && answer.text.contains("second person reads"));
        Ok(answer.json)
    }

    fn file_of(text: &str) -> tempfile::NamedTempFile {
        let mut file = tempfile::NamedTempFile::new().unwrap();
        file.write_all(text.as_bytes()).unwrap();
        file
    }

    #[test]
    fn a_drive_has_its_verdict_and_ten_checks_with_their_reasons() {
        let found = asked(&[DRIVE]).unwrap();
        assert_eq!(found["verdict"], "held");
        let checks = found["checks"].as_array().unwrap();
        let names: Vec<&str> = checks
            .iter()
            .map(|check| check["check"].as_str().unwrap())
            .collect();
        assert_eq!(
            names,
            [
                "warm-up",
                "thermostat",
                "band",
                "air",
                "overheating",
                "fan",
                "charging",
                "trims",
                "codes",
                "provoked"
            ]
        );
        for check in checks {
            assert!(!check["because"].as_str().unwrap().is_empty());
            assert!(check["readings"].is_array());
        }
        let opening = &checks[1]["readings"][0];
        assert_eq!(opening["name"], "opening");
        assert!((opening["value"].as_f64().unwrap() - 86.0).abs() < 4.0);
    }

    #[test]
    fn a_complaint_and_a_limit_are_heard() {
        let complaint = ["--complaint", "comes on after 20 min of motorway"];
        let found = asked(&[[DRIVE].as_slice(), &complaint].concat()).unwrap();
        assert_eq!(found["verdict"], "not-provoked");
        let found = asked(&[DRIVE, "--limit", "185F"]).unwrap();
        assert_eq!(found["verdict"], "failed");
    }

    #[test]
    fn frames_and_mapped_tables_are_read() {
        let frames = file_of("0.0 7E8 03 41 05 7B\n1.0 7E8 06 41 01 81 07 65 00\n");
        let found = asked(&[frames.path().to_str().unwrap(), "--kind", "j1979"]).unwrap();
        assert_eq!(found["verdict"], "failed");
        assert_eq!(found["checks"][8]["verdict"], "failed");
        let table = file_of("a,b\n0,176\n1,177.8\n");
        let path = table.path().to_str().unwrap();
        let found = asked(&[path, "--map", "time = a", "--map", "coolant = b [°F]"]).unwrap();
        assert_eq!(found["columns"][1]["taken_for"], "coolant");
    }

    #[test]
    fn what_is_wrong_says_where_and_how_to_mend_it() {
        let wrong = |words: &[&str]| asked(words).unwrap_err();
        assert_eq!(wrong(&["no-such-file.csv"]).place, "no-such-file.csv");
        let empty = file_of("");
        let path = empty.path().to_str().unwrap();
        let told = wrong(&[path]);
        assert_eq!((told.code, told.place.as_str()), (2, path));
        assert!(told.mend.contains("record the drive again"), "{told}");
        assert_eq!(wrong(&[DRIVE, "--map", "heat"]).place, "--map");
        assert_eq!(wrong(&[DRIVE, "--limit", "110"]).place, "--limit");
        let column = wrong(&[DRIVE, "--map", "coolant = Temp"]);
        assert!(column.what.contains("Temp"), "{column}");
    }
}
