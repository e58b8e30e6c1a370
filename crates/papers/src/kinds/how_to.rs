//! How a job was done, for the next who does it: nobody's name and no plate of a customer.

use super::Given;
use super::stall::{self, Head};
use crate::engine::column::{Body, Cell, Column, Kept, Side};
use crate::engine::lines::{Run, bold, plain};
use crate::engine::page::Paper;
use crate::phrases as say;
use shop::how_to::{HowRow, HowStage, HowTo};
use shop::map::called;

pub fn paper(given: &Given<'_>, how: &HowTo) -> Paper {
    let head = Head {
        title: say::how_it_was_done(),
        beside: vec![how.by.join(", ")],
        numbers: say::order_number(how.number),
        foot: say::how_to_foot(),
    };
    stall::paper(given, &head, |body| content(given, body, how))
}

fn content(given: &Given<'_>, body: &mut Body, how: &HowTo) {
    if let Some(title) = &how.title {
        body.part(say::job(), |column| column.text(&[bold(title.as_str())]));
    }
    let notes: Vec<String> = how.notes.iter().map(|note| note.words.clone()).collect();
    super::invoice::listed(body, say::notes(), &notes);
    for [complaint, cause, correction] in &how.lines {
        for (heading, text) in [
            (say::complaint(), complaint),
            (say::cause(), cause),
            (say::correction(), correction),
        ] {
            if !text.is_empty() {
                body.part(heading, |column| column.text(&[plain(text.as_str())]));
            }
        }
    }
    if !how.cautions.is_empty() {
        body.part(say::caution(), |column| {
            for caution in &how.cautions {
                column.text(&[bold(*caution)]);
            }
        });
    }
    for (heading, stages) in [(say::comes_off(), &how.off), (say::goes_back(), &how.back)] {
        if !stages.is_empty() {
            body.whole(heading, |column| column.table(&columns(), &rows(stages)));
        }
    }
    super::invoice::listed(body, say::torque_by(), &how.sources);
    super::invoice::listed(body, say::work_done_after(), &how.work);
    let snags: Vec<String> = how
        .snags
        .iter()
        .map(shop::how_to::HowSnag::in_one_line)
        .collect();
    super::invoice::listed(body, say::what_went_wrong(), &snags);
    if !how.photos.is_empty() {
        body.whole(say::photos(), |column| photos(given, column, how));
    }
}

/// Each photo under what was said of it; how many more the order has.
fn photos(given: &Given<'_>, column: &mut Column<'_>, how: &HowTo) {
    let mut more = 0;
    for photo in &how.photos {
        let Some(printed) = given.photos.get(&photo.file) else {
            more += 1;
            continue;
        };
        let text = match photo.text.as_str() {
            "" => say::photo(),
            text => text,
        };
        column.text(&[plain(shop::say::capital(text))]);
        column.keep();
        column.photo(printed, text);
    }
    if more > 0 {
        column.text(&[plain(say::photos_with_the_order(more))]);
    }
}

fn columns() -> [Kept; 4] {
    let of = |head, width_mm, side| Kept {
        head,
        width_mm,
        side,
    };
    [
        of("", Some(9.0), Side::Left),
        of(say::what(), None, Side::Left),
        of(say::where_with_what(), Some(48.0), Side::Left),
        of(say::min(), Some(12.0), Side::Right),
    ]
}

fn rows(stages: &[HowStage]) -> Vec<Vec<Cell>> {
    let row = |(nth, stage): (usize, &HowStage)| {
        let place: Vec<&str> = stage
            .places
            .iter()
            .map(|place| called(place))
            .chain(stage.tools.iter().map(String::as_str))
            .collect();
        vec![
            Cell::bold((nth + 1).to_string()),
            Cell {
                runs: runs(stage),
                below: notes(stage),
                ..Cell::default()
            },
            Cell::text(place.join(", ")),
            Cell::text(stage.minutes.clone().unwrap_or_default()),
        ]
    };
    stages.iter().enumerate().map(row).collect()
}

/// What people wrote beside a stage, each as a sentence.
fn notes(stage: &HowStage) -> Option<String> {
    let notes: Vec<String> = stage
        .notes
        .iter()
        .map(|note| match note.words.ends_with(['.', '!', '?']) {
            true => note.words.clone(),
            false => format!("{}.", note.words),
        })
        .collect();
    (!notes.is_empty()).then(|| say::note_beside(notes.join(" ")))
}

fn runs(stage: &HowStage) -> Vec<Run> {
    let mut runs = Vec::new();
    for (nth, row) in stage.rows.iter().enumerate() {
        if nth > 0 {
            runs.push(plain("; "));
        }
        runs.extend(row_runs(row));
    }
    runs
}

fn row_runs(row: &HowRow) -> Vec<Run> {
    let new = if row.new { say::renewed() } else { "" };
    let mut runs = vec![
        bold(row.label.as_str()),
        plain(format!(" {}{new}", row.done)),
    ];
    if let Some(at) = &row.at {
        runs.push(plain(format!(", {at}")));
    }
    if !row.torque.is_empty() {
        runs.push(bold(format!(" {}", row.torque.join(say::then()))));
    }
    if let Some(lengths) = &row.lengths {
        runs.push(plain(say::lengths(lengths)));
    }
    runs
}
