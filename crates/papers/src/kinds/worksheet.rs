//! The work sheet for the stall: down the left side as it comes off, up the right side as it
//! goes back, a box to tick for each, big enough for greasy hands.

use super::Given;
use super::stall::{self, Head};
use crate::engine::column::{Body, Cell, Kept, Side};
use crate::engine::lines::{Run, bold, plain};
use crate::engine::page::Paper;
use crate::phrases as say;
use shop::map::called;
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
        title: say::work_sheet(),
        beside: order
            .row
            .place
            .iter()
            .chain(&order.row.who)
            .cloned()
            .collect(),
        numbers: format!("{}   {}", order.number, order.row.plate),
        foot: say::work_sheet_foot(),
    };
    stall::paper(given, &head, |body| content(body, order, plan))
}

fn content(body: &mut Body, order: &OrderView, plan: &Plan) {
    for line in &order.lines {
        body.part(say::complaint(), |column| {
            column.text(&[plain(line.complaint.as_str())]);
        });
        if let Some(cause) = &line.cause {
            body.part(say::cause_to_do(), |column| {
                column.text(&[plain(cause.as_str())]);
            });
        }
    }
    let noted: Vec<String> = order.standing.clone();
    super::invoice::listed(body, say::of_this_vehicle(), &noted);
    if !plan.cautions.is_empty() {
        body.part(say::caution(), |column| {
            for caution in &plan.cautions {
                column.text(&[bold(*caution)]);
            }
        });
    }
    body.whole(say::stages(), |column| {
        column.table(&columns(), &rows(plan));
    });
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
        open(say::down_as_it_comes_off()),
        fixed(say::off(), 10.0),
        fixed(say::back(), 10.0),
        fixed("", 9.0),
        open(say::up_as_it_goes_back()),
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
    // What falls due is told once, under what is to do before it leaves.
    let done = stage.rows.iter().filter(|row| !row.falls_due());
    for (nth, row) in done.enumerate() {
        if nth > 0 {
            runs.push(plain("; "));
        }
        runs.extend(row_runs(row));
    }
    let place = stage.place.iter().map(|place| called(place).to_owned());
    let below: Vec<String> = place.chain(stage.tools.iter().cloned()).collect();
    Cell {
        runs,
        below: (!below.is_empty()).then(|| below.join(", ")),
        ..Cell::default()
    }
}

fn row_runs(row: &RowShown) -> Vec<Run> {
    let size = row
        .size
        .as_ref()
        .map_or_else(String::new, |size| format!(" {size}"));
    let back = row.way == shop::plan::Way::Back;
    let new = row.spent && back;
    let name = format!("{}{size}", row.label);
    let name = if new { say::new_one(name) } else { name };
    let name = match row.at.len() {
        0 | 1 => name,
        many => format!("{many} {name}"),
    };
    let mut runs = vec![
        if new { bold(name) } else { plain(name) },
        plain(format!(" {}", row.done)),
    ];
    if !row.torque.is_empty() {
        runs.push(bold(format!(" {}", row.torque.join(say::then()))));
    }
    runs
}

fn notes(body: &mut Body, order: &OrderView, plan: &Plan) {
    if !plan.sources.is_empty() {
        let sources: Vec<String> = plan.sources.iter().cloned().collect();
        body.part(say::torque_by(), |column| {
            column.text(&[plain(sources.join("; "))]);
        });
    }
    body.part(say::litres(), |column| {
        for fluid in &plan.shown.lost {
            column.blanks(
                &[(&say::fluid_out(fluid), 18.0), (say::fluid_in(), 18.0)],
                false,
            );
        }
        if plan.shown.lost.is_empty() {
            column.text(&[plain(say::nothing_drained())]);
        }
    });
    let renewed: Vec<String> = plan.shown.renewed.clone();
    if !renewed.is_empty() {
        body.part(say::new_parts(), |column| {
            let all: Vec<&str> = renewed.iter().map(String::as_str).collect();
            column.boxes(&all);
        });
    }
    if !plan.shown.owed.is_empty() {
        body.part(say::before_it_leaves(), |column| {
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
    body.part(say::inside_now(), |column| {
        if inside.is_empty() {
            column.blanks(&[(say::clamps_plugs_rags_lamp(), 70.0)], false);
        } else {
            column.boxes(&inside);
        }
    });
    body.part(say::snags_and_more(), |column| {
        column.blanks(&[("", 140.0)], false);
        column.gap(8.0);
        column.blanks(&[("", 140.0)], false);
    });
}
