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
use drawing::joint;
use shop::record::v1::codes::PayerForm;
use shop::view::{AskView, OrderView, PriceEntryView, TotalView};

const FOOT: &str = "We do nothing beyond what you agree to. If more is needed, we ask first.";

fn heading<'a>(given: &Given<'a>, kind: &'a str) -> Heading<'a> {
    Heading {
        kind,
        number: given.order.number.to_string(),
        day: &given.order.papers.today,
        payer: given.payer,
        facts: Vec::new(),
        foot: FOOT,
    }
}

/// The estimate.
pub fn estimate(given: &Given<'_>) -> Paper {
    let order = given.order;
    let heading = heading(given, "Estimate");
    let file = attached(given, &heading);
    composed(order, &heading, given.size, Some(file), |body| {
        told(
            body,
            order,
            given.payer,
            ["You told us", "We found", "We propose"],
        );
        priced(body, order, given.payer, None);
        if !order.consents.is_empty() {
            agreed(body, given);
        }
        body.part("Your approval", |column| {
            if let Some(total) = total(order, given.payer) {
                column.text(&[plain(format!(
                    "We expect this to come to {} before tax, {} with it.",
                    sum(&total.net),
                    sum(&total.gross)
                ))]);
            }
            column.text(&[plain(
                "If something has to be taken apart to find the fault and you then decide against the repair, putting it back together is charged within the sum you agree to here; or you collect it dismantled.",
            )]);
            column.gap(4.0);
            column.blanks(&[("Yes, go ahead up to", 32.0), (&format!("{} in total. Before more, ring", order.papers.currency), 40.0)], true);
            column.keep();
            column.boxes(&["No, put it back together", "No, I collect it as it is"]);
            column.keep();
            column.boxes(&["I want my old parts back", "You may keep my old parts"]);
            signed(column, order, given.payer);
        });
    })
}

/// The request for added work: what was agreed, what comes to it, what it comes to now.
pub fn added(given: &Given<'_>) -> Paper {
    let order = given.order;
    let heading = heading(given, "Added work");
    let file = attached(given, &heading);
    let ask = order.asks.iter().find(|ask| ask.payer == given.payer);
    composed(order, &heading, given.size, Some(file), |body| {
        told(
            body,
            order,
            given.payer,
            ["You told us", "We found", "We propose"],
        );
        found(body, given);
        agreed(body, given);
        if let Some(ask) = ask {
            changes(body, order, ask);
        }
        now(body, given, ask);
    })
}

/// What went wrong or was found on the way and is not settled, with the joint drawn as it was
/// found where its hole was described.
fn found(body: &mut Body, given: &Given<'_>) {
    for snag in &given.snags {
        body.part("Found on the way", |column| {
            column.text(&[plain(shop::say::capital(&snag.text))]);
            if let Some(words) = &snag.words {
                column.text(&[plain(words.as_str())]);
            }
            let told = snag.choice.as_ref().and_then(|choice| choice.told.as_ref());
            if let Some(told) = told {
                column.drawing(joint(&told.found.drawn(), 358.0, 220.0), 0.75);
                column.text(&[plain(format!("Proposed: {}", told.way.name))]);
            }
        });
    }
}

fn changes(body: &mut Body, order: &OrderView, ask: &AskView) {
    let listed = |body: &mut Body, heading: &str, all: &[PriceEntryView]| {
        let all: Vec<&PriceEntryView> = all.iter().collect();
        body.part(heading, |column| {
            for sort in Sort::ALL.into_iter().filter(|sort| has(*sort, &all)) {
                table(column, order, sort, &all);
            }
        });
    };
    if ask.added.is_empty() {
        body.part("What is added", |column| {
            column.text(&[plain("Nothing has been added since you agreed.")]);
        });
    } else {
        listed(body, "What is added", &ask.added);
    }
    if !ask.dropped.is_empty() {
        listed(body, "No longer in the price", &ask.dropped);
    }
}

fn now(body: &mut Body, given: &Given<'_>, ask: Option<&AskView>) {
    let order = given.order;
    let all = entries(order, given.payer, None);
    body.part("New total", |column| {
        match Sums::of(order, given.payer, None) {
            Some(sums) if !all.is_empty() => sums.put(column, &order.papers.currency),
            _ => column.text(&[plain("No price yet.")]),
        }
    });
    let total = total(order, given.payer);
    body.part("Your approval", |column| {
        if let Some(total) = total {
            column.text(&[bold(question(total, &order.papers.currency))]);
            column.gap(4.0);
        }
        let most = ask.and_then(|ask| Some((ask.sum.as_deref()?, ask.with_tax)));
        let yes = most.map_or_else(
            || "Yes, do the added work".to_owned(),
            |(most, with_tax)| {
                format!(
                    "Yes, up to {} {} in total",
                    sum(most),
                    if with_tax { "with tax" } else { "before tax" }
                )
            },
        );
        column.boxes(&[&yes, "No, leave it at what I agreed to"]);
        column.keep();
        column.boxes(&["I want my old parts back", "You may keep my old parts"]);
        signed(column, order, given.payer);
    });
}

fn signed(column: &mut Column<'_>, order: &OrderView, payer: PayerForm) {
    let name = if payer == PayerForm::Customer && !order.row.customer.is_empty() {
        order.row.customer.as_str()
    } else {
        "name and signature"
    };
    column.keep();
    column.sign(&[
        ("date", 0.7),
        (name, 1.2),
        (&format!("for {}", order.papers.shop), 1.2),
    ]);
}

fn total(order: &OrderView, payer: PayerForm) -> Option<&TotalView> {
    order.totals.iter().find(|total| total.payer == payer)
}

/// The old sum, the new one, and the question, in one breath.
fn question(total: &TotalView, currency: &str) -> String {
    let with_tax = if total.ceiling_with_tax {
        "with tax"
    } else {
        "before tax"
    };
    let now = format!(
        "The total is now {} {currency} before tax, {} with it",
        sum(&total.net),
        sum(&total.gross)
    );
    match (&total.ceiling, &total.room) {
        (Some(ceiling), Some(room)) => match room.strip_prefix('-') {
            Some(over) => format!(
                "{now}. You agreed to {} {with_tax}, so it is {} over. May we do the added work?",
                sum(ceiling),
                sum(over)
            ),
            None => format!(
                "{now}. It stays within the {} {with_tax} that you agreed to.",
                sum(ceiling)
            ),
        },
        _ => format!("{now}. May we do it?"),
    }
}
