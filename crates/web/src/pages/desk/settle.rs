//! The invoice and the money at the door: where nobody has to be asked first, one tap does
//! both, and what was found and done goes on the paper with it.

use super::overview::{charge, invoice, owed_by_customer, paid_by, take, total_block};
use crate::phrases::desk as say;
use crate::tap::{Look, button, chips, field, figure, input, order_fact, text, when};
use maud::{Markup, html};
use serde_json::{Value, json};
use shop::record::v1::codes::ChargeForm;
use shop::say::capital;
use shop::view::{ItemView, LineView, OrderView};

pub fn settle(order: &OrderView) -> Markup {
    let asked_first = order.asks.iter().any(|asked| asked.must);
    let owes = owed_by_customer(order).filter(|total| !total.balance.is_below_nought());
    let to_charge = order.price.as_ref().is_some_and(|price| !price.charged);
    let (Some(owes), false, 1, true) = (owes, asked_first, order.asks.len(), to_charge) else {
        return html! { (invoice(order)) (take(order)) };
    };
    let told = order.lines.first().map(|line| untold(order, line));
    let mut charged: Vec<Value> = told
        .iter()
        .flatten()
        .map(|told| told.command.clone())
        .collect();
    charged.push(charge(order));
    let paid = order_fact(
        &order.order,
        json!({ "paid": { "payer": "customer", "amount": field("amount"), "by": field("by"), "deposit": false } }),
    );
    let and_paid: Vec<Value> = charged.iter().cloned().chain([paid]).collect();
    html! {
        h2 { (say::invoice_and_money()) }
        (total_block(order, owes))
        form {
            @for told in told.iter().flatten() { (told.field()) }
            (figure("amount", say::paid_now(), say::before_it_leaves(), owes.balance.exact(), true))
            (chips("by", say::how(), &paid_by(), "card"))
            div class="presses two" {
                (button(Look::Confirm, say::invoice_paid(), "", &and_paid, None))
                (button(Look::Plain, say::invoice_only(), "", &charged, None))
            }
        }
    }
}

/// A text of a line that nobody has told yet.
pub struct Untold {
    code: &'static str,
    label: &'static str,
    hint: &'static str,
    suggested: String,
    pub command: Value,
}

impl Untold {
    /// Its field, in which what the account knows stands already.
    pub fn field(&self) -> Markup {
        input(self.code, self.label, self.hint, &self.suggested)
    }
}

/// What nobody has told of a line yet: what was found, what was done.
pub fn untold(order: &OrderView, line: &LineView) -> Vec<Untold> {
    let ask = |code: &'static str, label, hint, suggested| {
        let after = line.told_by.get(code).cloned().unwrap_or_default();
        let told = order_fact(
            &order.order,
            json!({ "line-worded": { "line": line.line, "text": code, "words": text(code), "after": after } }),
        );
        Untold {
            code,
            label,
            hint,
            suggested,
            command: when(code, told),
        }
    };
    let cause = ask(
        "cause",
        say::what_was_found(),
        say::goes_on_invoice(),
        String::new(),
    );
    let correction = ask(
        "correction",
        say::what_was_done(),
        say::goes_on_invoice_from(),
        done(order),
    );
    let missing = [line.cause.is_none(), line.correction.is_none()];
    let both = [cause, correction].into_iter().zip(missing);
    both.filter_map(|(told, missing)| missing.then_some(told))
        .collect()
}

/// What the account itself knows of what was done.
fn done(order: &OrderView) -> String {
    let renewed = |item: &&ItemView| item.spent && item.disturbed && item.home;
    let new: Vec<&str> = order
        .items
        .iter()
        .filter(renewed)
        .map(|item| item.label.as_str())
        .collect();
    let new = (!new.is_empty()).then(|| say::new_things(new.join(", ")));
    let differs = order
        .papers
        .differences
        .iter()
        .map(|differs| capital(differs));
    let mut all: Vec<String> = new.into_iter().chain(differs).collect();
    // Of a small job the price says it: what is charged was done.
    if all.is_empty() {
        let priced = order.price.iter().flat_map(|price| &price.entries);
        let jobs = priced.filter(|entry| entry.charge == ChargeForm::Labour);
        all.extend(jobs.map(|entry| entry.label.clone()));
    }
    all.join(". ")
}
