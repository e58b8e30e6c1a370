//! The work sheet for the stall: down the left side as it comes off, up the right side as it
//! goes back, a box to tick for each, big enough for greasy hands.

use super::Given;
use super::stall::{self, Head};
use crate::engine::column::{Body, Cell, Kept, Side};
use crate::engine::lines::{Run, bold, plain};
use crate::engine::page::Paper;
use shop::planning::{RowShown, Shown, StageShown};
use shop::view::OrderView;
use std::collections::BTreeSet;

/// What a work sheet is made from, beside the order.
pub struct Plan {
    pub shown: Shown,
    /// Who says the torques, each once.
    pub sources: BTreeSet<String>,
    /// What stands before the steps that it concerns.
    pub cautions: Vec<&'static str>,
}

pub fn paper(given: &Given<'_>, plan: &Plan) -> Paper {
    let order = given.order;
    let head = Head {
        title: "Work sheet",
        beside: order
            .row
            .place
            .iter()
            .chain(&order.row.who)
            .cloned()
            .collect(),
        numbers: format!("{}   {}", order.number, order.row.plate),
        foot: "Tick the box when it is so. This sheet is a copy: what is told to the record counts.",
    };
    stall::paper(given, &head, |body| content(body, order, plan))
}

fn content(body: &mut Body, order: &OrderView, plan: &Plan) {
    for line in &order.lines {
        body.part("Complaint", |column| {
            column.text(&[plain(line.complaint.as_str())]);
        });
        if let Some(cause) = &line.cause {
            body.part("Cause, to do", |column| {
                column.text(&[plain(cause.as_str())]);
            });
        }
    }
    let noted: Vec<String> = order.standing.clone();
    super::invoice::listed(body, "Of this vehicle", &noted);
    if !plan.cautions.is_empty() {
        body.part("Caution", |column| {
            for caution in &plan.cautions {
                column.text(&[bold(*caution)]);
            }
        });
    }
    body.whole("Stages", |column| column.table(&columns(), &rows(plan)));
    notes(body, order, plan);
}

fn columns() -> [Kept; 6] {
    let fixed = |head, width_mm| Kept {
        head,
        width_mm: Some(width_mm),
        side: Side::Left,
    };
    let open = |head| Kept {
        head,
        width_mm: None,
        side: Side::Left,
    };
    [
        fixed("", 9.0),
        open("Down this side as it comes off"),
        fixed("off", 10.0),
        fixed("back", 10.0),
        fixed("", 9.0),
        open("Up this side as it goes back"),
    ]
}

/// The two ways beside each other: down as it comes off, up as it goes back, so that they meet
/// at the bottom.
fn rows(plan: &Plan) -> Vec<Vec<Cell>> {
    let (off, back) = (&plan.shown.off, &plan.shown.back);
    let total = off.len().max(back.len());
    (0..total)
        .map(|nth| {
            let down = off.get(nth);
            let up_nth = total - 1 - nth;
            let up = back.get(up_nth);
            let number = |stage: Option<&StageShown>, nth: usize| match stage {
                Some(_) => Cell::bold((nth + 1).to_string()),
                None => Cell::default(),
            };
            let tick = |stage: Option<&StageShown>| match stage {
                Some(_) => Cell::to_tick(),
                None => Cell::default(),
            };
            vec![
                number(down, nth),
                down.map(stage).unwrap_or_default(),
                tick(down),
                tick(up),
                number(up, up_nth),
                up.map(stage).unwrap_or_default(),
            ]
        })
        .collect()
}

fn stage(stage: &StageShown) -> Cell {
    let mut runs: Vec<Run> = Vec::new();
    for (nth, row) in stage.rows.iter().enumerate() {
        if nth > 0 {
            runs.push(plain("; "));
        }
        runs.extend(row_runs(row));
    }
    let place = stage.place.iter().cloned();
    let below: Vec<String> = place.chain(stage.tools.iter().cloned()).collect();
    Cell {
        runs,
        below: (!below.is_empty()).then(|| below.join(", ")),
        ..Cell::default()
    }
}

fn row_runs(row: &RowShown) -> Vec<Run> {
    let count = if row.at.len() > 1 {
        format!("{} ", row.at.len())
    } else {
        String::new()
    };
    let size = row
        .size
        .as_ref()
        .map_or_else(String::new, |size| format!(" {size}"));
    let back = row.way == shop::plan::Way::Back;
    let new = if row.spent && back { "new " } else { "" };
    let name = format!("{count}{new}{}{size}", row.label);
    let mut runs = vec![
        if new.is_empty() {
            plain(name)
        } else {
            bold(name)
        },
        plain(format!(" {}", row.done)),
    ];
    if !row.torque.is_empty() {
        runs.push(bold(format!(" {}", row.torque.join(", then "))));
    }
    runs
}

fn notes(body: &mut Body, order: &OrderView, plan: &Plan) {
    if !plan.sources.is_empty() {
        let sources: Vec<String> = plan.sources.iter().cloned().collect();
        body.part("Torque by", |column| {
            column.text(&[plain(sources.join("; "))]);
        });
    }
    body.part("Litres", |column| {
        for fluid in &plan.shown.lost {
            column.blanks(&[(&format!("{fluid}: out"), 18.0), ("in", 18.0)], false);
        }
        if plan.shown.lost.is_empty() {
            column.text(&[plain("Nothing is drained.")]);
        }
    });
    let renewed: Vec<String> = plan.shown.renewed.clone();
    if !renewed.is_empty() {
        body.part("New parts", |column| {
            let all: Vec<&str> = renewed.iter().map(String::as_str).collect();
            column.boxes(&all);
        });
    }
    if !plan.shown.owed.is_empty() {
        body.part("To do before it leaves", |column| {
            let all: Vec<&str> = plan.shown.owed.iter().map(String::as_str).collect();
            column.boxes(&all);
        });
    }
    let inside: Vec<&str> = order
        .open_items
        .iter()
        .filter(|open| open.inside)
        .map(|open| open.label.as_str())
        .collect();
    body.part("Inside now?", |column| {
        if inside.is_empty() {
            column.blanks(&[("Clamps, plugs, rags, lamp:", 70.0)], false);
        } else {
            column.boxes(&inside);
        }
    });
    body.part("Snags, and what was not on the list", |column| {
        column.blanks(&[("", 140.0)], false);
        column.gap(8.0);
        column.blanks(&[("", 140.0)], false);
    });
}
