//! The invoice: what was wrong and done, labour, parts, tax, what was agreed and paid, how it
//! was tested, how the vehicle leaves, and the code that proves the record.

use super::price::{Sort, Sums, entries, has, table};
use super::sheet::{Heading, composed};
use super::words::{consented, in_eights, nought, sum};
use super::{Given, attached};
use crate::engine::column::{Body, Column};
use crate::engine::lines::{bold, plain};
use crate::engine::page::Paper;
use shop::Amount;
use shop::record::v1::codes::{OutcomeForm, PayerForm};
use shop::view::{InvoiceView, LineView, OrderView};

/// The paper of an invoice, written or as it would be.
pub fn paper(given: &Given<'_>) -> Paper {
    let (order, wording) = (given.order, given.wording);
    let invoice = given.invoice;
    let draft = invoice.is_none_or(|invoice| invoice.command.is_empty());
    let number = invoice.and_then(|invoice| invoice.number.clone());
    let heading = Heading {
        kind: if draft {
            wording.draft_invoice
        } else {
            wording.invoice
        },
        number: number.unwrap_or_else(|| order.number.to_string()),
        day: invoice.map_or(&order.papers.today, |invoice| &invoice.day),
        facts: Vec::new(),
        foot: if draft { wording.not_written_yet } else { "" },
    };
    let file = attached(given, &heading);
    composed(given, &heading, Some(file), |body| {
        told(
            body,
            given,
            [wording.complaint, wording.cause, wording.correction],
        );
        priced(body, given, invoice);
        paid(body, given, invoice);
        agreed(body, given);
        if given.payer == PayerForm::Customer {
            measured(body, given);
            tested(body, given);
            leaves(body, given);
        }
        if let Some(terms) = &order.papers.letterhead.terms {
            body.part(wording.terms, |column| {
                column.text(&[plain(terms.as_str())]);
            });
        }
        record(body, given);
    })
}

/// What the customer said, what was found, what was done; with several lines, line by line.
pub fn told(body: &mut Body, given: &Given<'_>, names: [&str; 3]) {
    let (order, payer, wording) = (given.order, given.payer, given.wording);
    let lines = paid_lines(order, payer);
    for line in &lines {
        body.part(names[0], |column| {
            column.text(&[plain((wording.quoted)(line.complaint.trim()))]);
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
            .map(|line| {
                let by = (wording.paid_by)((wording.payer)(line.payer));
                format!("{}: {by}", line.complaint)
            })
            .collect();
        listed(body, wording.paid_by_others, &others);
    }
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
pub fn priced(body: &mut Body, given: &Given<'_>, invoice: Option<&InvoiceView>) {
    let (order, payer, wording) = (given.order, given.payer, given.wording);
    let all = entries(order, payer, invoice);
    for sort in Sort::ALL {
        if has(sort, &all) {
            body.part(sort.name(wording), |column| {
                table(column, wording, order, sort, &all);
            });
        }
    }
    if !all.is_empty() {
        body.glue();
    }
    body.part(wording.price, |column| {
        match Sums::of(order, payer, invoice) {
            Some(sums) if !all.is_empty() => sums.put(column, wording, &order.papers.currency),
            _ => column.text(&[plain(wording.no_price)]),
        }
    });
}

/// What the payer has paid, and what is left.
fn paid(body: &mut Body, given: &Given<'_>, invoice: Option<&InvoiceView>) {
    let (order, payer, wording) = (given.order, given.payer, given.wording);
    let sum = |amount: &Amount| sum(wording, amount);
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
        rows.push((wording.all_invoices.to_owned(), sum(&total.gross)));
    }
    for paid in order.payments.iter().filter(|paid| paid.payer == payer) {
        let how = (wording.paid_how)(paid.by);
        let deposit = if paid.deposit { wording.deposit } else { "" };
        let at = wording.moment(&paid.at);
        rows.push((format!("{how}{deposit}, {at}"), sum(&paid.amount)));
    }
    rows.push((wording.paid_so_far.to_owned(), sum(&total.paid)));
    let (left, amount) = match total.balance.below_nought() {
        Some(over) if !nought(&over) => (wording.give_back, over),
        _ => (wording.still_to_pay, total.balance.clone()),
    };
    let left = format!("{left}, {}", order.papers.currency);
    body.part(wording.paid, |column| {
        column.sums(&rows, Some((&left, &sum(&amount))));
    });
    if let Some(bank) = &order.papers.letterhead.bank {
        body.part(wording.pay_to, |column| {
            column.text(&[plain(bank.as_str())]);
        });
    }
}

/// What this payer approved and declined.
pub fn agreed(body: &mut Body, given: &Given<'_>) {
    let (order, payer, wording) = (given.order, given.payer, given.wording);
    let consents: Vec<_> = order
        .consents
        .iter()
        .filter(|consent| consent.payer == payer)
        .collect();
    body.part(wording.agreed, |column| {
        if consents.is_empty() {
            column.text(&[plain(wording.nothing_agreed)]);
        }
        for consent in consents {
            column.text(&[plain(consented(wording, consent))]);
            if let Some(said) = &consent.said {
                column.small(&(wording.said)(said));
            }
            signed(column, given, consent.signature.as_deref());
        }
    });
}

/// What was measured, and the least that is allowed.
pub(crate) fn measured(body: &mut Body, given: &Given<'_>) {
    let wording = given.wording;
    let lines: Vec<String> = given
        .said
        .measured
        .iter()
        .map(|one| {
            let name = shop::say::capital(&one.name);
            let least = one.least.as_ref().map_or_else(String::new, |least| {
                format!(" ({})", (wording.least_allowed)(least))
            });
            let below = if one.below { wording.below } else { "" };
            wording.figures(&format!("{name}: {}{least}{below}", one.value))
        })
        .collect();
    listed(body, wording.measured, &lines);
}

/// How it was tested.
fn tested(body: &mut Body, given: &Given<'_>) {
    let (order, wording) = (given.order, given.wording);
    let proofs = &order.papers.proofs;
    if proofs.is_empty() {
        return;
    }
    body.part(wording.tested, |column| {
        for (proof, name) in proofs.iter().zip(&given.said.proofs) {
            let name = format!(
                "{}: {}",
                shop::say::capital(name),
                (wording.outcome)(proof.outcome)
            );
            let words = proof
                .words
                .as_ref()
                .map_or_else(String::new, |words| format!(". {words}"));
            column.text(&[
                bold(name),
                plain(format!(
                    "{words} ({}, {})",
                    proof.by,
                    wording.moment(&proof.at)
                )),
            ]);
        }
        if proofs
            .iter()
            .any(|proof| proof.outcome == OutcomeForm::NotProvoked)
        {
            column.text(&[bold(wording.come_back)]);
        }
    });
}

/// How the vehicle leaves.
fn leaves(body: &mut Body, given: &Given<'_>) {
    let (order, wording) = (given.order, given.wording);
    let old = order.parts.iter().filter(|part| part.has_old);
    let old: Vec<String> = old
        .map(|part| {
            let fate = given.said.old_parts.get(&part.part);
            (wording.old_one)(
                &part.label,
                fate.map_or(wording.not_accounted, String::as_str),
            )
        })
        .collect();
    listed(body, wording.old_parts, &old);
    let waived: Vec<String> = given.said.waived.iter().cloned().collect();
    listed(body, wording.waived, &waived);
    if !order.declined.is_empty() {
        body.part(wording.work_declined, |column| {
            for (declined, what) in order.declined.iter().zip(&given.said.declined) {
                let words = format!(
                    "{what}: {} ({})",
                    declined.words,
                    wording.moment(&declined.at)
                );
                column.text(&[plain(shop::say::capital(&words))]);
                signed(column, given, declined.signature.as_deref());
            }
        });
    }
    let apart: Vec<String> = given
        .said
        .open
        .iter()
        .map(|open| open.text.clone())
        .collect();
    listed(body, wording.not_put_back, &apart);
    listed(body, wording.modified, &given.said.differences);
    let due = given.said.debts.iter().filter(|(_, later)| *later);
    let due: Vec<String> = due.map(|(text, _)| text.clone()).collect();
    listed(body, wording.still_to_do_after, &due);
    if let (Some(left), Some((how, ending))) = (&order.left, &given.said.left) {
        body.part(wording.delivery, |column| {
            let boxes = left.boxes.map_or_else(String::new, |boxes| {
                (wording.boxes_went)(&boxes.to_string())
            });
            let how = shop::say::capital(how);
            let at = wording.moment(&left.at);
            let delivered = (wording.delivered)(&how, &at, ending, &left.by);
            column.text(&[plain(format!("{delivered}{boxes}"))]);
            if left.apart {
                column.text(&[bold(wording.not_to_be_driven_yet)]);
            }
            if let Some(by) = &left.signed_by {
                let signed = if left.signature.is_some() {
                    wording.signed_for
                } else {
                    wording.collected_by
                };
                column.text(&[plain(signed(by))]);
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

fn record(body: &mut Body, given: &Given<'_>) {
    let Some(head) = given.head.as_deref() else {
        return;
    };
    body.part(given.wording.verification, |column: &mut Column<'_>| {
        column.text(&[plain(in_eights(head))]);
        column.keep();
        column.small(given.wording.verification_how);
    });
}
