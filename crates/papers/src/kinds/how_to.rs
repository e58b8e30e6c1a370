//! How a job was done, for the next who does it: nobody's name and no plate of a customer.

use super::Given;
use super::stall::{self, Head};
use crate::engine::column::{Body, Cell, Kept, Side};
use crate::engine::lines::{Run, bold, plain};
use crate::engine::page::Paper;
use crate::phrases as say;
use shop::how_to::{HowRow, HowStage, HowTo};

pub fn paper(given: &Given<'_>, how: &HowTo) -> Paper {
    let head = Head {
        title: say::how_it_was_done(),
        beside: vec![how.by.join(", ")],
        numbers: say::order_number(how.number),
        foot: say::how_to_foot(),
    };
    stall::paper(given, &head, |body| content(body, how))
}

fn content(body: &mut Body, how: &HowTo) {
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
        let many = how.photos.len();
        body.part(say::photos(), |column| {
            column.text(&[plain(say::photos_with_the_order(many))]);
        });
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
            .chain(&stage.tools)
            .map(String::as_str)
            .collect();
        vec![
            Cell::bold((nth + 1).to_string()),
            Cell {
                runs: runs(stage),
                ..Cell::default()
            },
            Cell::text(place.join(", ")),
            Cell::text(stage.minutes.clone().unwrap_or_default()),
        ]
    };
    stages.iter().enumerate().map(row).collect()
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
