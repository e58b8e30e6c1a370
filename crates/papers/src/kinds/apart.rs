//! Collected dismantled: what is not put back, box by box, and who takes it away.

use super::Given;
use super::sheet::{Heading, composed};
use crate::engine::column::{Cell, Kept, Side};
use crate::engine::lines::{bold, plain};
use crate::engine::page::Paper;
use shop::view::OrderView;

pub fn paper(given: &Given<'_>) -> Paper {
    let order = given.order;
    let heading = Heading {
        kind: "Collected dismantled",
        number: order.number.to_string(),
        day: &order.papers.today,
        payer: given.payer,
        facts: Vec::new(),
        foot: "This vehicle is not put back together. It must not be driven or started.",
    };
    composed(order, &heading, given.size, None, |body| {
        body.part("Not to be driven", |column| {
            column.text(&[bold("This vehicle is not put back together. It must not be driven or started. It leaves on a trailer or a recovery vehicle.")]);
        });
        body.part("Not put back", |column| {
            if order.open_items.is_empty() {
                column.text(&[plain("Nothing: everything is in its place.")]);
            } else {
                column.table(&columns(), &rows(order));
            }
        });
        let due: Vec<String> = order.debts.iter().map(|debt| debt.text.clone()).collect();
        super::invoice::listed(body, "Still to do", &due);
        super::invoice::listed(body, "Modified on this vehicle", &order.papers.differences);
        body.part("Handed over", |column| {
            let boxes = order.left.as_ref().and_then(|left| left.boxes);
            match boxes {
                Some(boxes) => column.text(&[plain(format!("Boxes with parts: {boxes}."))]),
                None => column.blanks(
                    &[("Boxes with parts:", 18.0), ("counted together by", 60.0)],
                    false,
                ),
            }
            column.keep();
            column.boxes(&["Keys handed over", "Old parts handed over"]);
            column.keep();
            column.sign(&[
                ("date", 0.7),
                ("name and signature of who collects it", 1.2),
                (&format!("for {}", order.papers.shop), 1.2),
            ]);
        });
    })
}

fn columns() -> [Kept; 4] {
    let fixed = |head, width_mm| Kept {
        head,
        width_mm: Some(width_mm),
        side: Side::Left,
    };
    [
        fixed("There", 12.0),
        Kept {
            head: "What",
            width_mm: None,
            side: Side::Left,
        },
        fixed("How it is", 32.0),
        fixed("Stored in", 30.0),
    ]
}

fn rows(order: &OrderView) -> Vec<Vec<Cell>> {
    let open = order.open_items.iter();
    open.map(|open| {
        let item = order.items.iter().find(|item| item.item == open.item);
        let stored = item
            .and_then(|item| item.container.clone())
            .unwrap_or_default();
        let size = item.and_then(|item| item.size.clone());
        let count = item.map_or(1, |item| item.positions.len());
        let below = (count > 1).then(|| format!("{count} pieces"));
        let label = [Some(open.label.clone()), size]
            .into_iter()
            .flatten()
            .collect::<Vec<_>>()
            .join(", ");
        vec![
            Cell::to_tick(),
            Cell {
                below,
                ..Cell::text(label)
            },
            Cell::text(open.states.join(", ")),
            Cell::text(stored),
        ]
    })
    .collect()
}
