//! The credit note: what is taken back of which invoice, why, each tax, and what goes back.

use super::price::share_name;
use super::sheet::{Heading, composed};
use super::words::sum;
use super::{Asked, Given, attached};
use crate::engine::lines::plain;
use crate::engine::page::Paper;
use crate::phrases as say;
use shop::Trouble;
use shop::view::{CreditView, OrderView};

/// The credit note that was asked for; else the one written last.
pub fn picked<'a>(order: &'a OrderView, wanted: &Asked) -> Result<&'a CreditView, Trouble> {
    let all = || {
        let notes = order.price.iter().flat_map(|price| &price.credits);
        notes.filter(|note| note.payer == wanted.payer)
    };
    let written = wanted.written.as_deref();
    let asked = written.and_then(|command| all().find(|note| note.command == command));
    asked.or_else(|| all().next_back()).ok_or_else(|| {
        let mut trouble = Trouble::not_found(say::no_credit_note());
        trouble.mend = say::write_a_credit_note(order.number);
        trouble
    })
}

/// The paper of a credit note.
pub fn paper(given: &Given<'_>, note: &CreditView) -> Paper {
    let (order, wording) = (given.order, given.wording);
    let heading = Heading {
        kind: wording.credit_note,
        number: note.number.clone(),
        day: &note.day,
        facts: note
            .invoice_number
            .iter()
            .map(|number| (wording.of_invoice, number.clone()))
            .collect(),
        foot: wording.stays_as_written,
    };
    let file = attached(given, &heading);
    composed(given, &heading, Some(file), |body| {
        body.part(wording.why, |column| {
            column.text(&[plain(note.words.as_str())]);
        });
        let mut rows: Vec<(String, String)> = note
            .lines
            .iter()
            .map(|line| {
                let kept = if line.keeps_tax { wording.tax_kept } else { "" };
                (format!("{}{kept}", line.label), sum(wording, &line.amount))
            })
            .collect();
        rows.push((wording.before_tax.to_owned(), sum(wording, &note.net)));
        for share in &note.shares {
            rows.push((share_name(wording, share), sum(wording, &share.tax)));
        }
        body.part(wording.goes_back, |column| {
            let total = format!("{}, {}", wording.goes_back, order.papers.currency);
            column.sums(&rows, Some((&total, &sum(wording, &note.gross))));
        });
    })
}
