//! The receipt: what a payer has paid, when and how.

use super::sheet::{Heading, composed};
use super::words::sum;
use super::{Given, attached};
use crate::engine::lines::plain;
use crate::engine::page::Paper;

pub fn paper(given: &Given<'_>) -> Paper {
    let (order, wording) = (given.order, given.wording);
    let invoices: Vec<String> = order
        .price
        .iter()
        .flat_map(|price| &price.invoices)
        .filter(|invoice| invoice.payer == given.payer)
        .filter_map(|invoice| invoice.number.clone())
        .collect();
    let heading = Heading {
        kind: wording.receipt,
        number: order.number.to_string(),
        day: &order.papers.today,
        facts: if invoices.is_empty() {
            Vec::new()
        } else {
            vec![(wording.invoice, invoices.join(", "))]
        },
        foot: "",
    };
    let file = attached(given, &heading);
    let paid: Vec<_> = order
        .payments
        .iter()
        .filter(|paid| paid.payer == given.payer)
        .collect();
    composed(given, &heading, Some(file), |body| {
        body.part(wording.received, |column| {
            if paid.is_empty() {
                column.text(&[plain(wording.nothing_received)]);
                return;
            }
            let rows: Vec<(String, String)> = paid
                .iter()
                .map(|paid| {
                    let how = (wording.paid_how)(paid.by);
                    let deposit = if paid.deposit { wording.deposit } else { "" };
                    let at = wording.moment(&paid.at);
                    (format!("{how}{deposit}, {at}"), sum(wording, &paid.amount))
                })
                .collect();
            let total = order.totals.iter().find(|total| total.payer == given.payer);
            let words = format!("{}, {}", wording.received, order.papers.currency);
            let all = total.map(|total| sum(wording, &total.paid));
            column.sums(&rows, all.as_deref().map(|all| (words.as_str(), all)));
        });
        body.part(wording.thanks, |column| {
            column.gap(24.0);
            column.sign(&[
                (wording.sign_date, 0.7),
                (&(wording.for_shop)(&order.papers.shop), 1.2),
            ]);
        });
    })
}
