//! How a job was done, for the next who does it: nobody's name and no plate of a customer.

use super::Given;
use super::stall::{self, Head};
use crate::engine::column::{Body, Cell, Kept, Side};
use crate::engine::lines::{Run, bold, plain};
use crate::engine::page::Paper;
use shop::how_to::{HowRow, HowStage, HowTo};

pub fn paper(given: &Given<'_>, how: &HowTo) -> Paper {
    let head = Head {
        title: "How it was done",
        beside: vec![how.by.join(", ")],
        numbers: format!("order {}", how.number),
        foot: "So it was done on this vehicle. What the maker publishes comes before what stands here.",
    };
    stall::paper(given, &head, |body| content(body, how))
}

fn content(body: &mut Body, how: &HowTo) {
    for [complaint, cause, correction] in &how.lines {
        for (heading, text) in [
            ("Complaint", complaint),
            ("Cause", cause),
            ("Correction", correction),
        ] {
            if !text.is_empty() {
                body.part(heading, |column| column.text(&[plain(text.as_str())]));
            }
        }
    }
    if !how.cautions.is_empty() {
        body.part("Caution", |column| {
            for caution in &how.cautions {
                column.text(&[bold(*caution)]);
            }
        });
    }
    for (heading, stages) in [("Comes off", &how.off), ("Goes back", &how.back)] {
        if !stages.is_empty() {
            body.whole(heading, |column| column.table(&columns(), &rows(stages)));
        }
    }
    super::invoice::listed(body, "Torque by", &how.sources);
    super::invoice::listed(body, "Work done after it", &how.work);
    let snags: Vec<String> = how
        .snags
        .iter()
        .map(shop::how_to::HowSnag::in_one_line)
        .collect();
    super::invoice::listed(body, "What went wrong", &snags);
    if !how.photos.is_empty() {
        let many = how.photos.len();
        body.part("Photos", |column| {
            column.text(&[plain(format!(
                "{many} with the order, on its page “How it was done”."
            ))]);
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
        of("What", None, Side::Left),
        of("Where, with what", Some(48.0), Side::Left),
        of("min", Some(12.0), Side::Right),
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
    let new = if row.new { ", new" } else { "" };
    let mut runs = vec![
        bold(row.label.as_str()),
        plain(format!(" {}{new}", row.done)),
    ];
    if let Some(at) = &row.at {
        runs.push(plain(format!(", {at}")));
    }
    if !row.torque.is_empty() {
        runs.push(bold(format!(" {}", row.torque.join(", then "))));
    }
    if let Some(lengths) = &row.lengths {
        runs.push(plain(format!(" (lengths {lengths})")));
    }
    runs
}
