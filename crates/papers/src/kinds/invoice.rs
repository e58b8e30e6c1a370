//! The invoice: what was wrong and done, labour, parts, tax, what was agreed and paid, how it
//! was tested, how the vehicle leaves, and the code that proves the record.

use super::price::{Sort, Sums, entries, has, table};
use super::sheet::{Heading, composed};
use super::words::{code, consented, in_eights, nought, outcome, payer_name, sum};
use super::{Given, attached};
use crate::engine::column::{Body, Column};
use crate::engine::lines::{bold, plain};
use crate::engine::page::Paper;
use shop::record::v1::codes::{OutcomeForm, PayerForm};
use shop::view::{InvoiceView, LineView, OrderView};
use std::collections::BTreeSet;

/// The paper of an invoice, written or as it would be.
pub fn paper(given: &Given<'_>) -> Paper {
    let order = given.order;
    let invoice = given.invoice;
    let draft = invoice.is_none_or(|invoice| invoice.command.is_empty());
    let number = invoice.and_then(|invoice| invoice.number.clone());
    let heading = Heading {
        kind: if draft { "Draft invoice" } else { "Invoice" },
        number: number.unwrap_or_else(|| order.number.to_string()),
        day: invoice.map_or(&order.papers.today, |invoice| &invoice.day),
        payer: given.payer,
        facts: Vec::new(),
        foot: if draft {
            "Not written yet: this is how it would read now."
        } else {
            ""
        },
    };
    let file = attached(given, &heading);
    composed(order, &heading, given.size, Some(file), |body| {
        told(
            body,
            order,
            given.payer,
            ["Complaint", "Cause", "Correction"],
        );
        priced(body, order, given.payer, invoice);
        paid(body, order, given.payer, invoice);
        agreed(body, given);
        if given.payer == PayerForm::Customer {
            tested(body, order);
            leaves(body, given);
        }
        record(body, given.head.as_deref());
    })
}

/// What the customer said, what was found, what was done; with several lines, line by line.
pub fn told(body: &mut Body, order: &OrderView, payer: PayerForm, names: [&str; 3]) {
    let lines = paid_lines(order, payer);
    for line in &lines {
        body.part(names[0], |column| {
            column.text(&[plain(quoted(&line.complaint))]);
        });
        if let Some(cause) = &line.cause {
            body.part(names[1], |column| column.text(&[plain(cause.as_str())]));
        }
        if let Some(correction) = &line.correction {
            body.part(names[2], |column| {
                column.text(&[plain(correction.as_str())]);
            });
        }
    }
    if payer == PayerForm::Customer {
        let others: Vec<String> = order
            .lines
            .iter()
            .filter(|line| line.payer != payer)
            .map(|line| format!("{}: paid by {}", line.complaint, payer_name(line.payer)))
            .collect();
        listed(body, "Paid by others", &others);
    }
}

fn quoted(words: &str) -> String {
    format!("“{}”", words.trim())
}

/// The lines that a payer pays for, wholly or in part.
fn paid_lines(order: &OrderView, payer: PayerForm) -> Vec<&LineView> {
    let priced = |line: &LineView| {
        let mut all = order.price.iter().flat_map(|price| &price.entries);
        all.any(|entry| entry.payer == payer && entry.line.as_deref() == Some(&line.line))
    };
    let lines = order.lines.iter();
    lines
        .filter(|line| line.payer == payer || priced(line))
        .collect()
}

/// Labour, parts, other, and the sum under the last of them.
pub fn priced(body: &mut Body, order: &OrderView, payer: PayerForm, invoice: Option<&InvoiceView>) {
    let all = entries(order, payer, invoice);
    for sort in Sort::ALL {
        if has(sort, &all) {
            body.part(sort.name(), |column| table(column, order, sort, &all));
        }
    }
    if !all.is_empty() {
        body.glue();
    }
    body.part("Price", |column| match Sums::of(order, payer, invoice) {
        Some(sums) if !all.is_empty() => sums.put(column, &order.papers.currency),
        _ => column.text(&[plain("No price yet.")]),
    });
}

/// What the payer has paid, and what is left.
fn paid(body: &mut Body, order: &OrderView, payer: PayerForm, invoice: Option<&InvoiceView>) {
    let Some(total) = order.totals.iter().find(|total| total.payer == payer) else {
        return;
    };
    let mut rows = Vec::new();
    let all = order.price.as_ref().map_or(0, |price| {
        price
            .invoices
            .iter()
            .filter(|one| one.payer == payer)
            .count()
    });
    if all > 1 || invoice.is_some_and(|invoice| invoice.gross != total.gross) {
        rows.push(("Total of all invoices".to_owned(), sum(&total.gross)));
    }
    for paid in order.payments.iter().filter(|paid| paid.payer == payer) {
        let how = shop::say::capital(&code(&paid.by));
        let deposit = if paid.deposit { ", deposit" } else { "" };
        rows.push((format!("{how}{deposit}, {}", paid.at), sum(&paid.amount)));
    }
    rows.push(("Paid so far".to_owned(), sum(&total.paid)));
    let (left, amount) = match total.balance.strip_prefix('-') {
        Some(over) if !nought(over) => ("To give back", over),
        _ => ("Still to pay", total.balance.as_str()),
    };
    let left = format!("{left}, {}", order.papers.currency);
    body.part("Paid", |column| {
        column.sums(&rows, Some((&left, &sum(amount))));
    });
}

/// What this payer approved and declined.
pub fn agreed(body: &mut Body, given: &Given<'_>) {
    let (order, payer) = (given.order, given.payer);
    let consents: Vec<_> = order
        .consents
        .iter()
        .filter(|consent| consent.payer == payer)
        .collect();
    body.part("You agreed", |column| {
        if consents.is_empty() {
            column.text(&[plain("Nothing has been agreed to yet.")]);
        }
        for consent in consents {
            column.text(&[plain(consented(consent))]);
            if let Some(said) = &consent.said {
                column.small(&format!("Said: {said}"));
            }
            signed(column, given, consent.signature.as_deref());
        }
    });
}

/// How it was tested.
fn tested(body: &mut Body, order: &OrderView) {
    let proofs = &order.papers.proofs;
    if proofs.is_empty() {
        return;
    }
    body.part("How we tested it", |column| {
        for proof in proofs {
            let name = format!("{}: {}", shop::say::capital(&proof.name), outcome(proof.outcome));
            let words = proof.words.as_ref().map_or_else(String::new, |words| format!(". {words}"));
            column.text(&[bold(name), plain(format!("{words} ({}, {})", proof.by, proof.at))]);
        }
        if proofs.iter().any(|proof| proof.outcome == OutcomeForm::NotProvoked) {
            column.text(&[bold(
                "We could not bring your complaint back. It may come again: note when and how it does, and come back to us.",
            )]);
        }
    });
}

/// How the vehicle leaves.
fn leaves(body: &mut Body, given: &Given<'_>) {
    let order = given.order;
    let old = order.parts.iter().filter(|part| part.has_old);
    let old: Vec<String> = old
        .map(|part| {
            let fate = part.old.as_deref().unwrap_or("not accounted for yet");
            format!("{}: old one {fate}", part.label)
        })
        .collect();
    listed(body, "Old parts", &old);
    // One reason may stand at several gates.
    let waived: BTreeSet<String> = order
        .waivers
        .iter()
        .filter(|waiver| waiver.prints)
        .map(|waiver| format!("{}, {}", waiver.reason, waiver.waived))
        .collect();
    listed(body, "Waived", &waived.into_iter().collect::<Vec<_>>());
    if !order.declined.is_empty() {
        body.part("Work you declined", |column| {
            for declined in &order.declined {
                let words = format!("{}: {} ({})", declined.what, declined.words, declined.at);
                column.text(&[plain(shop::say::capital(&words))]);
                signed(column, given, declined.signature.as_deref());
            }
        });
    }
    let apart: Vec<String> = order
        .open_items
        .iter()
        .map(|open| open.text.clone())
        .collect();
    listed(body, "Not put back", &apart);
    listed(body, "Modified on this vehicle", &order.papers.differences);
    let due = order.debts.iter().filter(|debt| debt.before.is_none());
    let due: Vec<String> = due.map(|debt| debt.text.clone()).collect();
    listed(body, "Still to do afterwards", &due);
    if let Some(left) = &order.left {
        body.part("Delivery", |column| {
            let boxes = left.boxes.map_or_else(String::new, |boxes| {
                format!(" Boxes that went with it: {boxes}.")
            });
            let how = shop::say::capital(&left.how);
            column.text(&[plain(format!(
                "{how}, {}: {}.{boxes} Handed over by {}.",
                left.at, left.ending, left.by
            ))]);
            if left.apart {
                column.text(&[bold(
                    "Not put back together: it must not be driven or started.",
                )]);
            }
            if let Some(by) = &left.signed_by {
                let signed = if left.signature.is_some() {
                    "Signed for on the screen by"
                } else {
                    "Collected by"
                };
                column.text(&[plain(format!("{signed} {by}."))]);
            }
            signed(column, given, left.signature.as_deref());
        });
    }
}

/// A signature that was drawn on the screen, under what it stands for.
fn signed(column: &mut Column<'_>, given: &Given<'_>, signature: Option<&str>) {
    /// Half a line of handwriting.
    const WIDTH: f64 = 140.0;
    let drawn = signature.and_then(|file| given.signatures.get(file));
    if let Some(drawn) = drawn {
        column.keep();
        column.drawing(drawn.clone(), WIDTH / drawn.width.max(1.0));
    }
}

/// A part with a line for each of these, if there is any.
pub fn listed(body: &mut Body, heading: &str, rows: &[String]) {
    if rows.is_empty() {
        return;
    }
    body.part(heading, |column| {
        for row in rows {
            column.text(&[plain(shop::say::capital(row))]);
        }
    });
}

fn record(body: &mut Body, head: Option<&str>) {
    let Some(head) = head else {
        return;
    };
    body.part("Verification code", |column: &mut Column<'_>| {
        column.text(&[plain(in_eights(head))]);
        column.keep();
        column.small("It seals everything we recorded up to this paper. To check a paper against our record: buttonup verify --head, and the code without its gaps.");
    });
}
