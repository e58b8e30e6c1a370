//! The credit note: what is taken back of which invoice, why, each tax, and what goes back.

use super::price::share_name;
use super::sheet::{Heading, composed};
use super::words::sum;
use super::{Given, attached};
use crate::engine::lines::plain;
use crate::engine::page::Paper;
use shop::Trouble;
use shop::view::CreditView;

/// The credit note that was asked for; else the one written last.
pub fn picked<'a>(given: &Given<'a>, written: Option<&str>) -> Result<&'a CreditView, Trouble> {
    let all = || {
        let notes = given.order.price.iter().flat_map(|price| &price.credits);
        notes.filter(|note| note.payer == given.payer)
    };
    let asked = written.and_then(|command| all().find(|note| note.command == command));
    asked.or_else(|| all().next_back()).ok_or_else(|| {
        let mut trouble = Trouble::not_found("no credit note is written for this payer");
        trouble.mend = format!("write one at /o/{}/credit first", given.order.number);
        trouble
    })
}

/// The paper of a credit note.
pub fn paper(given: &Given<'_>, note: &CreditView) -> Paper {
    let order = given.order;
    let heading = Heading {
        kind: "Credit note",
        number: note.number.clone(),
        day: &note.day,
        payer: given.payer,
        facts: note
            .invoice_number
            .iter()
            .map(|number| ("Of invoice", number.clone()))
            .collect(),
        foot: "The invoice stays as it was written.",
    };
    let file = attached(given, &heading);
    composed(order, &heading, given.size, Some(file), |body| {
        body.part("Why", |column| column.text(&[plain(note.words.as_str())]));
        let mut rows: Vec<(String, String)> = note
            .lines
            .iter()
            .map(|line| {
                let kept = if line.keeps_tax {
                    ", its tax is kept"
                } else {
                    ""
                };
                (format!("{}{kept}", line.label), sum(&line.amount))
            })
            .collect();
        rows.push(("Before tax".to_owned(), sum(&note.net)));
        for share in &note.shares {
            rows.push((share_name(share), sum(&share.tax)));
        }
        body.part("Goes back", |column| {
            let total = format!("Goes back, {}", order.papers.currency);
            column.sums(&rows, Some((&total, &sum(&note.gross))));
        });
    })
}
