//! Collected dismantled: what is not put back, box by box, and who takes it away.

use super::Given;
use super::sheet::{Heading, composed};
use crate::engine::column::{Cell, Kept, Side};
use crate::engine::lines::{bold, plain};
use crate::engine::page::Paper;
use crate::wording::Wording;
use shop::record::v1::codes::KindForm;
use shop::view::ItemView;

pub fn paper(given: &Given<'_>) -> Paper {
    let (order, wording) = (given.order, given.wording);
    let heading = Heading {
        kind: wording.dismantled,
        number: order.number.to_string(),
        day: &order.papers.today,
        facts: Vec::new(),
        foot: wording.must_not_be_driven,
    };
    composed(given, &heading, None, |body| {
        body.part(wording.not_to_be_driven, |column| {
            let words = format!(
                "{} {}",
                wording.must_not_be_driven, wording.leaves_on_trailer
            );
            column.text(&[bold(words)]);
        });
        body.part(wording.not_put_back, |column| {
            if given.said.open.is_empty() {
                column.text(&[plain(wording.nothing_apart)]);
            } else {
                column.table(&columns(wording), &rows(given));
            }
        });
        let due: Vec<String> = given
            .said
            .debts
            .iter()
            .map(|(text, _)| text.clone())
            .collect();
        super::invoice::listed(body, wording.still_to_do, &due);
        super::invoice::listed(body, wording.modified, &given.said.differences);
        body.part(wording.handed_over, |column| {
            let boxes = order.left.as_ref().and_then(|left| left.boxes);
            match boxes {
                Some(boxes) => {
                    column.text(&[plain((wording.boxes_with_parts)(&boxes.to_string()))]);
                }
                None => column.blanks(
                    &[(wording.boxes_count, 18.0), (wording.counted_by, 60.0)],
                    false,
                ),
            }
            column.keep();
            column.boxes(&[wording.keys_over, wording.old_parts_over]);
            column.keep();
            column.sign(&[
                (wording.sign_date, 0.7),
                (wording.who_collects, 1.2),
                (&(wording.for_shop)(&order.papers.shop), 1.2),
            ]);
        });
    })
}

fn columns(wording: &Wording) -> [Kept; 4] {
    let fixed = |head, width_mm| Kept {
        head,
        width_mm: Some(width_mm),
        side: Side::Left,
    };
    [
        fixed(wording.there, 12.0),
        Kept {
            head: wording.what,
            width_mm: None,
            side: Side::Left,
        },
        fixed(wording.how_it_is, 32.0),
        fixed(wording.stored_in, 30.0),
    ]
}

fn rows(given: &Given<'_>) -> Vec<Vec<Cell>> {
    let (order, wording) = (given.order, given.wording);
    let open = given.said.open.iter();
    open.map(|open| {
        let item = order.items.iter().find(|item| item.item == open.item);
        // A fluid lies in no tray, and what was put in is in the vehicle.
        let lies = |item: &&ItemView| !matches!(item.kind, KindForm::Fluid | KindForm::PutIn);
        let stored = item
            .filter(lies)
            .and_then(|item| item.container.clone())
            .unwrap_or_default();
        let size = item.and_then(|item| item.size.clone());
        let count = item.map_or(1, |item| item.positions.len());
        let below = (count > 1).then(|| (wording.pieces)(count));
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
