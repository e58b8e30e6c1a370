//! `buttonup tray` and `buttonup mat`: loose fasteners counted from a photo, and the sheet
//! they lie on.
//!
//! Reads files, asks the crate `sight`, and writes down its answer. It sees nothing itself.

use crate::answer::{Answer, Wrong};
use clap::{Args, Subcommand, ValueEnum};
use serde_json::{Value, json};
use sight::count::{Counted, Group, Listed};
use sight::look::{Judged, Piece, Seen, Verdict, judge, look, sold_mm};
use sight::{Paper, Photo};
use std::fs;
use std::path::{Path, PathBuf};

/// The longest list of what is expected that is read, in bytes.
const LONGEST_LIST: u64 = 1_000_000;

/// What the sheet and a photo of it can be asked.
#[derive(Debug, Subcommand)]
pub enum Command {
    /// Count and measure loose fasteners on the printed sheet, from one photo.
    Tray(Tray),
    /// Write the sheet as a PDF, to be printed at 100 % ("actual size").
    Mat(Mat),
}

/// A photo, and what should lie on the sheet.
#[derive(Debug, Args)]
pub struct Tray {
    /// The photo: JPEG or PNG.
    photo: PathBuf,
    /// What is expected, as JSON: groups, each with name, thread, lengths, and its area.
    #[arg(long)]
    expect: Option<PathBuf>,
    /// What the 100 mm line on the sheet's second page measures, if it is not 100.
    #[arg(long, value_name = "MM")]
    check_line: Option<f64>,
}

/// Which paper, and where to.
#[derive(Debug, Args)]
pub struct Mat {
    /// The paper.
    #[arg(long, value_enum, default_value_t = Size::A4)]
    paper: Size,
    /// The file to write.
    #[arg(short, long)]
    output: PathBuf,
}

#[derive(Debug, Clone, Copy, ValueEnum)]
enum Size {
    A4,
    Letter,
}

/// Answers one question.
pub fn run(asked: &Command) -> Result<Answer, Wrong> {
    match asked {
        Command::Tray(asked) => tray(asked),
        Command::Mat(asked) => mat(asked),
    }
}

fn mat(asked: &Mat) -> Result<Answer, Wrong> {
    let paper = match asked.paper {
        Size::A4 => Paper::A4,
        Size::Letter => Paper::Letter,
    };
    let place = asked.output.display().to_string();
    fs::write(&asked.output, sight::sheet::pdf(paper)).map_err(|error| {
        Wrong::input(
            &*place,
            error.to_string(),
            "name a file that can be written",
        )
    })?;
    let [w, h] = paper.size_mm();
    Ok(Answer {
        text: format!(
            "{place}: {w} x {h} mm. Print it at 100 % (\"actual size\"), and measure the line on \
             its second page."
        ),
        json: json!({ "file": place, "paper": paper.name(), "width_mm": w, "height_mm": h }),
        good: true,
    })
}

fn tray(asked: &Tray) -> Result<Answer, Wrong> {
    let groups = match &asked.expect {
        Some(file) => expected(file)?,
        None => Vec::new(),
    };
    let place = asked.photo.display().to_string();
    let bytes = read(&asked.photo, sight::LONGEST_FILE as u64, "a photo")?;
    let mut photo = Photo::read(&bytes).map_err(|error| {
        let message = error.to_string();
        let (what, mend) = message
            .split_once(": ")
            .unwrap_or((&message, "send another"));
        Wrong::input(&*place, what, mend)
    })?;
    drop(bytes);
    if let Some(mm) = asked.check_line {
        photo.printed = sight::printed_scale(mm).ok_or_else(|| {
            Wrong::input(
                "--check-line",
                format!("{mm} mm"),
                "it is meant to be 100 mm: between 80 and 120 can be taken into account",
            )
        })?;
    }
    let seen = look(&photo);
    let judged = judge(&seen, &groups);
    Ok(Answer {
        text: in_words(&seen, &judged, !groups.is_empty()),
        json: as_json(&seen, &judged),
        good: if groups.is_empty() {
            seen.troubles.is_empty()
        } else {
            judged.verdict == Verdict::Complete
        },
    })
}

fn read(file: &Path, most: u64, what: &str) -> Result<Vec<u8>, Wrong> {
    let place = file.display().to_string();
    let wrong = |error: std::io::Error| {
        Wrong::input(
            &*place,
            error.to_string(),
            format!("name {what} that can be read"),
        )
    };
    let about = fs::metadata(file).map_err(wrong)?;
    if !about.is_file() {
        return Err(Wrong::input(
            &*place,
            "this is not a file",
            format!("name {what}"),
        ));
    }
    if about.len() > most {
        return Err(Wrong::input(
            &*place,
            format!("it has {} bytes", about.len()),
            format!("up to {most} are read"),
        ));
    }
    fs::read(file).map_err(wrong)
}

/// Reads the list: `{"groups": [...]}`, or the groups alone.
fn expected(file: &Path) -> Result<Vec<Group>, Wrong> {
    let place = file.display().to_string();
    let bytes = read(file, LONGEST_LIST, "a list")?;
    let value: Value = serde_json::from_slice(&bytes).map_err(|error| {
        Wrong::input(&*place, format!("not JSON: {error}"), "send a JSON object")
    })?;
    let list = value.get("groups").unwrap_or(&value).as_array();
    let list = list.ok_or_else(|| {
        Wrong::input(
            &*place,
            "there are no groups",
            "give groups: [{name, thread, lengths}]",
        )
    })?;
    let groups: Vec<Group> = list
        .iter()
        .enumerate()
        .map(|(i, group)| {
            one_group(group).map_err(|(field, mend)| {
                Wrong::input(
                    format!("{place}, groups[{i}].{field}"),
                    "it is missing or cannot be read",
                    mend,
                )
            })
        })
        .collect::<Result<_, _>>()?;
    sight::count::check(&groups).map_err(|error| {
        let message = error.to_string();
        let (what, mend) = message.rsplit_once(": ").unwrap_or((&message, "mend it"));
        Wrong::input(&*place, what, mend)
    })?;
    Ok(groups)
}

fn one_group(group: &Value) -> Result<Group, (&'static str, &'static str)> {
    let text = |field: &'static str| {
        group
            .get(field)
            .and_then(Value::as_str)
            .map(str::to_owned)
            .ok_or((field, "write it as a text"))
    };
    let numbers = |value: &Value| -> Option<Vec<f64>> {
        value.as_array()?.iter().map(Value::as_f64).collect()
    };
    let lengths = group.get("lengths").and_then(numbers).ok_or((
        "lengths",
        "write a length in mm for each bolt: [30, 30, 75]",
    ))?;
    let area_mm = match group.get("area_mm") {
        None | Some(Value::Null) => None,
        Some(area) => Some(
            numbers(area)
                .and_then(|a| <[f64; 4]>::try_from(a).ok())
                .ok_or(("area_mm", "write four numbers in mm: [x0, y0, x1, y1]"))?,
        ),
    };
    Ok(Group {
        name: text("name")?,
        thread: text("thread")?,
        lengths,
        area_mm,
    })
}

fn rounded(value: f64) -> f64 {
    (value * 10.0).round() / 10.0
}

fn as_json(seen: &Seen, judged: &Judged) -> Value {
    let listed = |l: &Listed| json!({ "thread": l.thread, "length_mm": l.length_mm });
    let group = |g: &Counted| {
        json!({
            "name": g.name,
            "expected": g.expected,
            "found": g.found,
            "missing": g.missing.iter().map(listed).collect::<Vec<_>>(),
            "extra": g.extra.iter().map(listed).collect::<Vec<_>>(),
            "wrong": g.wrong.iter().map(|(expected, found)| {
                json!({ "expected": listed(expected), "found": listed(found) })
            }).collect::<Vec<_>>(),
        })
    };
    let piece = |(i, p): (usize, &Piece)| {
        // Against a list, a bolt is sure if nothing else that is listed or sold comes near.
        let sure = judged.decided.get(i).map_or(p.sure, |d| d.sure);
        json!({
            "kind": p.kind.name(),
            "thread": p.thread,
            "length_mm": p.length_mm.map(rounded),
            "head_mm": p.head_mm.map(rounded),
            "x_mm": rounded(p.x_mm),
            "y_mm": rounded(p.y_mm),
            "yaw_deg": p.yaw_deg.map(rounded),
            "error_mm": rounded(p.error_mm),
            "sure": sure,
        })
    };
    json!({
        "paper": seen.paper.map(Paper::name),
        "pieces": seen.pieces.iter().enumerate().map(piece).collect::<Vec<_>>(),
        "groups": judged.groups.iter().map(group).collect::<Vec<_>>(),
        "verdict": judged.verdict.name(),
        "because": judged.because.join("; "),
    })
}

fn in_words(seen: &Seen, judged: &Judged, listed: bool) -> String {
    let mut lines = Vec::new();
    if listed {
        lines.push(
            match judged.verdict {
                Verdict::Complete => "complete",
                Verdict::NotComplete => "not complete",
                Verdict::CantTell => "can't tell",
            }
            .to_owned(),
        );
    }
    lines.extend(judged.because.iter().map(|why| format!("  {why}")));
    for group in &judged.groups {
        lines.push(format!(
            "{}: {} of {}",
            group.name, group.found, group.expected
        ));
    }
    for (i, piece) in seen.pieces.iter().enumerate() {
        let sure = judged.decided.get(i).map_or(piece.sure, |d| d.sure);
        let mut words = vec![piece.kind.name().replace('_', " ")];
        match (piece.thread, piece.length_mm) {
            (Some(thread), Some(length)) => {
                words.push(format!("{thread}x{}", sold_mm(length)));
                words.push(format!(
                    "(measured {:.1} mm, give or take {:.1})",
                    length, piece.error_mm
                ));
            }
            (Some(thread), None) => words.push(thread.to_owned()),
            _ => {}
        }
        words.push(format!("at {:.0}, {:.0}", piece.x_mm, piece.y_mm));
        if !sure {
            words.push("- look at it".to_owned());
        }
        lines.push(format!("  {}", words.join(" ")));
    }
    if judged.verdict == Verdict::Complete {
        lines.push("The picture does not close anything: whoever looked confirms it.".to_owned());
    }
    lines.join("\n")
}

#[cfg(test)]
mod tests {
    use super::*;

    fn picture(name: &str) -> PathBuf {
        let folder = concat!(env!("CARGO_MANIFEST_DIR"), "/../../checks/data/tray/open");
        Path::new(folder).join(name)
    }

    fn asked(photo: PathBuf, list: Option<&str>) -> Result<Answer, Wrong> {
        let folder = tempfile::tempdir().unwrap();
        let expect = list.map(|text| {
            let file = folder.path().join("list.json");
            fs::write(&file, text).unwrap();
            file
        });
        tray(&Tray {
            photo,
            expect,
            check_line: None,
        })
    }

    #[test]
    fn a_count_has_the_fields_that_were_promised() {
        let list = r#"{"groups":[{"name":"gearbox","thread":"M8","lengths":[30, 30]}]}"#;
        let answer = asked(picture("open_012.jpg"), Some(list)).unwrap();
        assert!(!answer.good);
        let json = &answer.json;
        assert_ne!(json["verdict"], "complete");
        assert!(!json["because"].as_str().unwrap().is_empty());
        let piece = json["pieces"][0].as_object().unwrap();
        let fields = [
            "kind",
            "thread",
            "length_mm",
            "head_mm",
            "x_mm",
            "y_mm",
            "yaw_deg",
            "error_mm",
            "sure",
        ];
        assert!(fields.iter().all(|f| piece.contains_key(*f)));
        assert!(piece["sure"].is_boolean());
        let group = json["groups"][0].as_object().unwrap();
        assert_eq!(group["expected"], 2);
        let lists = ["missing", "extra", "wrong"];
        assert!(lists.iter().all(|l| group[*l].is_array()));
    }

    #[test]
    fn lists_that_cannot_be_read_say_where() {
        let wrong = |list: &str| asked(picture("open_012.jpg"), Some(list)).unwrap_err();
        for (list, place) in [
            ("{", "list.json"),
            (r#"{"groups": 3}"#, "list.json"),
            (r#"[{"thread":"M8","lengths":[30]}]"#, "groups[0].name"),
            (
                r#"[{"name":"a","thread":"M8","lengths":"30"}]"#,
                "groups[0].lengths",
            ),
            (
                r#"[{"name":"a","thread":"M8","lengths":[30],"area_mm":[1,2]}]"#,
                "groups[0].area_mm",
            ),
            (
                r#"[{"name":"a","thread":"M7","lengths":[30]}]"#,
                "list.json",
            ),
            (
                r#"[{"name":"a","thread":"M8","lengths":[1e9]}]"#,
                "list.json",
            ),
        ] {
            let wrong = wrong(list);
            assert_eq!(wrong.code, 2);
            assert!(wrong.place.contains(place), "{list}: {wrong}");
        }
    }

    #[test]
    fn what_is_no_photo_is_answered_in_words() {
        let folder = tempfile::tempdir().unwrap();
        let file = folder.path().join("notes.txt");
        fs::write(&file, "seven bolts").unwrap();
        let wrong = asked(file, None).unwrap_err();
        assert!(wrong.mend.contains("JPEG or PNG"), "{wrong}");
        let wrong = asked(folder.path().to_owned(), None).unwrap_err();
        assert!(wrong.what.contains("not a file"), "{wrong}");
        let wrong = asked(folder.path().join("none.jpg"), None).unwrap_err();
        assert_eq!(wrong.code, 2);
    }

    #[test]
    fn the_sheet_is_written() {
        let folder = tempfile::tempdir().unwrap();
        let output = folder.path().join("sheet.pdf");
        let paper = Size::Letter;
        let answer = mat(&Mat {
            paper,
            output: output.clone(),
        })
        .unwrap();
        assert_eq!(answer.json["width_mm"], 279.4);
        assert!(fs::read(output).unwrap().starts_with(b"%PDF"));
    }
}
