//! The estimate, and the request for added work: what is proposed, what it comes to, and where
//! the customer says yes or no.

use super::invoice::{agreed, priced, told};
use super::price::{Sort, Sums, entries, has, table};
use super::sheet::{Heading, composed};
use super::words::sum;
use super::{Given, attached};
use crate::engine::column::{Body, Column};
use crate::engine::lines::{bold, plain};
use crate::engine::page::Paper;
use crate::wording::Wording;
use drawing::joint;
use phrases::speaking;
use shop::Amount;
use shop::record::v1::codes::PayerForm;
use shop::view::{AskView, OrderView, PriceEntryView, TotalView};

fn heading<'a>(given: &Given<'a>, kind: &'a str) -> Heading<'a> {
    Heading {
        kind,
        number: given.order.number.to_string(),
        day: &given.order.papers.today,
        facts: Vec::new(),
        foot: given.wording.nothing_beyond,
    }
}

/// The estimate.
pub fn estimate(given: &Given<'_>) -> Paper {
    let (order, wording) = (given.order, given.wording);
    let heading = heading(given, wording.estimate);
    let file = attached(given, &heading);
    composed(given, &heading, Some(file), |body| {
        told(
            body,
            given,
            [wording.told_us, wording.we_found, wording.we_propose],
        );
        priced(body, given, None);
        if !order.consents.is_empty() {
            super::invoice::measured(body, given);
            agreed(body, given);
        }
        body.part(wording.approval, |column| {
            if let Some(total) = total(order, given.payer) {
                column.text(&[plain((wording.expected)(
                    &sum(wording, &total.net),
                    &sum(wording, &total.gross),
                ))]);
            }
            if let Some(cover) = &given.cover {
                column.text(&[plain((wording.covered)(
                    &sum(wording, &cover.amount),
                    wording.taxed(cover.with_tax),
                    cover.in_ten,
                ))]);
            }
            column.text(&[plain(wording.if_declined)]);
            column.gap(4.0);
            column.blanks(
                &[
                    (wording.yes_up_to, 32.0),
                    (&(wording.before_more_ring)(&order.papers.currency), 40.0),
                ],
                true,
            );
            column.keep();
            column.boxes(&[wording.no_put_back, wording.no_collect]);
            column.keep();
            column.boxes(&[wording.parts_back, wording.parts_keep]);
            signed(column, given);
        });
    })
}

/// The request for added work: what was agreed, what comes to it, what it comes to now.
pub fn added(given: &Given<'_>) -> Paper {
    let (order, wording) = (given.order, given.wording);
    let heading = heading(given, wording.added_work);
    let file = attached(given, &heading);
    let ask = order.asks.iter().find(|ask| ask.payer == given.payer);
    composed(given, &heading, Some(file), |body| {
        told(
            body,
            given,
            [wording.told_us, wording.we_found, wording.we_propose],
        );
        found(body, given);
        super::invoice::measured(body, given);
        agreed(body, given);
        if let Some(ask) = ask {
            changes(body, given, ask);
        }
        now(body, given, ask);
    })
}

/// What went wrong or was found on the way and is not settled, with the joint drawn as it was
/// found where its hole was described.
fn found(body: &mut Body, given: &Given<'_>) {
    for snag in &given.snags {
        body.part(given.wording.found_on_the_way, |column| {
            let text = given.said.snags.get(&snag.snag).unwrap_or(&snag.text);
            column.text(&[plain(shop::say::capital(text))]);
            if let Some(words) = &snag.words {
                column.text(&[plain(words.as_str())]);
            }
            for photo in snag
                .photos
                .iter()
                .filter_map(|photo| given.photos.get(&photo.file))
            {
                column.photo(photo, text);
            }
            let told = snag.choice.as_ref().and_then(|choice| choice.told.as_ref());
            if let Some(told) = told {
                let drawn = speaking(given.speaks, || joint(&told.found.drawn(), 358.0, 220.0));
                column.drawing(drawn, 0.75);
                column.text(&[plain((given.wording.proposed)(&told.way.name))]);
            }
        });
    }
}

fn changes(body: &mut Body, given: &Given<'_>, ask: &AskView) {
    let (order, wording) = (given.order, given.wording);
    let listed = |body: &mut Body, heading: &str, all: &[PriceEntryView]| {
        let all: Vec<&PriceEntryView> = all.iter().collect();
        body.part(heading, |column| {
            for sort in Sort::ALL.into_iter().filter(|sort| has(*sort, &all)) {
                table(column, wording, order, sort, &all);
            }
        });
    };
    if ask.added.is_empty() {
        body.part(wording.added, |column| {
            column.text(&[plain(wording.nothing_added)]);
        });
    } else {
        listed(body, wording.added, &ask.added);
    }
    if !ask.dropped.is_empty() {
        listed(body, wording.no_longer, &ask.dropped);
    }
}

fn now(body: &mut Body, given: &Given<'_>, ask: Option<&AskView>) {
    let (order, wording) = (given.order, given.wording);
    let all = entries(order, given.payer, None);
    body.part(wording.new_total, |column| {
        match Sums::of(order, given.payer, None) {
            Some(sums) if !all.is_empty() => sums.put(column, wording, &order.papers.currency),
            _ => column.text(&[plain(wording.no_price)]),
        }
    });
    let total = total(order, given.payer);
    body.part(wording.approval, |column| {
        if let Some(total) = total {
            column.text(&[bold(question(wording, total, &order.papers.currency))]);
            column.gap(4.0);
        }
        let most = ask.and_then(|ask| Some((ask.sum.as_ref()?, ask.with_tax)));
        let yes = most.map_or_else(
            || wording.yes_added.to_owned(),
            |(most, with_tax)| (wording.yes_total)(&sum(wording, most), wording.taxed(with_tax)),
        );
        column.boxes(&[&yes, wording.no_added]);
        column.keep();
        column.boxes(&[wording.parts_back, wording.parts_keep]);
        signed(column, given);
    });
}

fn signed(column: &mut Column<'_>, given: &Given<'_>) {
    let (order, wording) = (given.order, given.wording);
    let name = if given.payer == PayerForm::Customer && !order.row.customer.is_empty() {
        order.row.customer.as_str()
    } else {
        wording.name_and_signature
    };
    column.keep();
    column.sign(&[
        (wording.sign_date, 0.7),
        (name, 1.2),
        (&(wording.for_shop)(&order.papers.shop), 1.2),
    ]);
}

fn total(order: &OrderView, payer: PayerForm) -> Option<&TotalView> {
    order.totals.iter().find(|total| total.payer == payer)
}

/// The old sum, the new one, and the question, in one breath.
fn question(wording: &Wording, total: &TotalView, currency: &str) -> String {
    let taxed = wording.taxed(total.ceiling_with_tax);
    let sum = |amount: &Amount| sum(wording, amount);
    let now = (wording.total_now)(&sum(&total.net), currency, &sum(&total.gross));
    match (&total.ceiling, &total.room) {
        (Some(ceiling), Some(room)) => match room.below_nought() {
            Some(over) => (wording.is_over)(&now, &sum(ceiling), taxed, &sum(&over)),
            None => (wording.stays_within)(&now, &sum(ceiling), taxed),
        },
        _ => (wording.may_we)(&now),
    }
}
