//! The desk: what it comes to for whom, what was agreed, money, keys, papers to print.

use super::ask::{ask_page, write_down};
use super::papers::{payer_name, word};
use crate::State;
use crate::pages::{Shown, count, order_of, show};
use crate::tap::{
    Look, button, chips, field, figure, input, link, new, order_fact, order_request, required,
    signed, text,
};
use axum::extract::{self, Path};
use axum::http::HeaderMap;
use axum::response::Response;
use maud::{Markup, PreEscaped, html};
use papers::Kind;
use serde_json::{Value, json};
use shop::measure::Decimal;
use shop::record::v1::codes::PayerForm;
use shop::view::{AskView, ConsentView, OrderView, PaymentView, TotalView};

pub async fn desk(
    extract::State(state): extract::State<State>,
    headers: HeaderMap,
    Path(number): Path<String>,
) -> Response {
    show(state, headers, move |visit| {
        let order = order_of(visit, &number)?;
        let to = |page: &str| format!("/o/{}/{page}", order.number);
        Ok(Shown::of(&order, "Desk", html! {
            h1 { "Desk" }
            @for asked in &order.asks { (to_ask(&order, asked)) }
            div class="columns" {
                div {
                    @for total in &order.totals { (total_block(&order, total)) }
                    @if order.totals.is_empty() { p class="gap" { "No price yet." } }
                    (complaints(&order))
                }
                div {
                    h2 { "Agreed" }
                    @for consent in &order.consents { (consented(&order, consent)) }
                    @if order.consents.is_empty() { p class="gap" { "Nobody has agreed to anything yet." } }
                    h2 { "Money" }
                    @for paid in &order.payments { (payment(&order, paid)) }
                    @if order.payments.is_empty() { p class="gap" { "Nothing paid yet." } }
                    (printed(&order))
                }
            }
            @if !order.handed_over && let Some(aim) = &order.aim { div class="presses" { (link(Look::Confirm, "Next stage", aim, &to("stage"))) } }
            div class="presses even" {
                (link(Look::Plain, "Price", "", &to("price")))
                (link(Look::Plain, "How sure is it?", "", &to("odds")))
                (link(Look::Plain, "Get approval", "", &to("ask")))
                (link(Look::Plain, "Parts", "", &to("parts")))
                (link(Look::Plain, "Invoice, money, keys", "", &to("pay")))
                (link(Look::Plain, "Declined work", "signed", &to("decline")))
                (link(Look::Plain, "Hand over", "", &to("hand-over")))
            }
        }))
    })
    .await
}

/// The ask in one sentence, where one has to be made; what is left, where not.
pub fn to_ask(order: &OrderView, asked: &AskView) -> Markup {
    html! {
        a class="row" href=(ask_page(order, asked)) {
            span class={ "what" @if asked.must { " beside wait" } } { (asked.sentence) }
            @if asked.must && !asked.phone.is_empty() { span class="number strong" { (asked.phone) } }
        }
    }
}

/// What one payer's part comes to, how it stands to what was agreed, what is left to pay.
pub fn total_block(order: &OrderView, total: &TotalView) -> Markup {
    html! {
        @if order.totals.len() > 1 { h2 { (shop::say::capital(payer_name(total.payer))) } }
        div class="headline" {
            span class="fact" { (total.gross) }
            span class="what" {
                span class="soft" { (total.net) " before tax, tax " (total.tax) }
            }
        }
        @if total.written_down.bytes().any(|digit| (b'1'..=b'9').contains(&digit)) {
            div class="row" { span class="what" { "Discount, before tax" } span class="number" { (total.written_down) } }
        }
        @if let (Some(ceiling), Some(room)) = (&total.ceiling, &total.room) {
            div class="row" {
                span class="what" { "Agreed up to " (ceiling) @if total.ceiling_with_tax { " with tax" } @else { " before tax" } }
                @if room.starts_with('-') { span class="no number" { (room.trim_start_matches('-')) " over" } }
                @else { span class="yes number" { (room) " left" } }
            }
        }
        @if total.payer != PayerForm::Goodwill {
            div class="row" {
                @if let Some(back) = total.balance.strip_prefix('-') {
                    span class="what" { "Paid too much" } span class="wait number" { (back) " to give back" }
                } @else {
                    span class="what" { "Left to pay" } span class="strong number" { (total.balance) }
                }
            }
            @if let Some(cash) = &total.in_cash { div class="row" { span class="what soft" { "In cash" } span class="number" { (cash) } } }
            @if let Some(by) = &total.by_coin { div class="row" { span class="what soft" { "Difference by coin" } span class="number" { (by) } } }
            @if let Some(account) = &total.on_account { div class="row" { span class="what wait" { "On account, still to come in" } span class="number" { (account) } } }
        }
        details id=(format!("found-{:?}", total.payer)) {
            summary class="row" { span class="soft" { "How was this found?" } }
            div class="working" { (PreEscaped(&total.working_html)) }
        }
    }
}

/// The order's lines, each with who pays, and a way to open another.
fn complaints(order: &OrderView) -> Markup {
    let open = order_fact(
        &order.order,
        json!({ "line-opened": { "line": new("line"), "complaint": text("complaint"), "payer": field("payer") } }),
    );
    html! {
        h2 { "Complaints" }
        @for line in &order.lines {
            a class="row" href=(format!("/o/{}", order.number)) {
                span class="what" {
                    span class="strong line" { (line.complaint) }
                    @if let Some(cause) = &line.cause { span class="soft line" { "Cause: " (cause) } }
                    @if let Some(correction) = &line.correction { span class="soft line" { "Correction: " (correction) } }
                }
                span class="soft" { (payer_name(line.payer)) " pays" }
            }
        }
        details id="line" {
            summary class="row" { span class="strong" { "Another complaint" } }
            form {
                (required("complaint", "What the customer says", "in their words", ""))
                (chips("payer", "Who pays", &[("customer", "customer"), ("warranty", "warranty"), ("goodwill", "goodwill")], "customer"))
                div class="presses" { (button(Look::Plain, "Open it", "", &[open], None)) }
            }
        }
    }
}

pub fn consented(order: &OrderView, consent: &ConsentView) -> Markup {
    let lines: Vec<&str> = order
        .lines
        .iter()
        .filter(|line| consent.lines.contains(&line.line))
        .map(|line| line.complaint.as_str())
        .collect();
    html! {
        div class="row" {
            span class="what" {
                span class="strong line" {
                    @if consent.agreed { "Yes" } @else { "No" }
                    @if let Some(amount) = &consent.amount { ", up to " (amount) @if consent.tax_included { " with tax" } }
                    " · " (word(&consent.step))
                    @if consent.payer != PayerForm::Customer { " · " (payer_name(consent.payer)) }
                }
                span class="soft line" { (consent.person.as_deref().unwrap_or("somebody")) ", " (word(&consent.way)) ", " (consent.at) @if let Some(called) = &consent.number_called { ", called " (called) } }
                @if !lines.is_empty() { span class="soft line" { "For: " (lines.join("; ")) } }
                @if let Some(said) = &consent.said { span class="soft line" { "“" (said) "”" } }
                (signed(consent.signature.as_deref(), consent.person.as_deref().unwrap_or("")))
            }
        }
    }
}

pub fn payment(order: &OrderView, paid: &PaymentView) -> Markup {
    html! {
        div class="row" {
            span class="what" {
                span class="line" { (shop::say::capital(&word(&paid.by))) @if paid.deposit { ", deposit" } @if order.totals.len() > 1 { ", " (payer_name(paid.payer)) } }
                span class="soft line" { (paid.taken_by) ", " (paid.at) }
            }
            span class="strong number" { (paid.amount) }
        }
    }
}

/// Papers as they were given out.
fn given(order: &OrderView) -> Markup {
    html! {
        @if !order.papers.given.is_empty() {
            h2 { "Papers given out" }
            @for given in &order.papers.given {
                a class="row" href=(format!("/file/{}", given.file)) {
                    span class="what" {
                        span class="strong line" { (given.text) }
                        span class="soft line" { (given.by) ", " (given.at) }
                    }
                    span class="soft" { "PDF" }
                }
            }
        }
    }
}

/// The papers, one of each for each payer.
fn printed(order: &OrderView) -> Markup {
    let payers: Vec<PayerForm> = order.asks.iter().map(|asked| asked.payer).collect();
    html! {
        h2 { "Papers to print" }
        @for payer in &payers {
            @for (name, small, page) in [("Estimate", "to sign", "estimate"), ("Added work", "what it comes to now", "added"), ("Invoice", "", "invoice")] {
                a class="row" href=(format!("/o/{}/{page}?payer={}", order.number, word(payer))) {
                    span class="what strong" { (name) @if payers.len() > 1 { " for " (payer_name(*payer)) } }
                    span class="soft" { (small) }
                }
            }
        }
        @let paid = (!order.payments.is_empty()).then_some(Kind::Receipt);
        @let planned = order.aim.is_some().then_some(Kind::WorkSheet);
        @let apart = (!order.open_items.is_empty()).then_some(Kind::Apart);
        @for kind in paid.into_iter().chain(planned).chain([Kind::Labels, Kind::HowTo]).chain(apart) {
            a class="row" href=(super::paper_file::page(order.number, kind, "")) {
                span class="what strong" { (kind.title()) }
            }
        }
        (given(order))
    }
}

pub async fn pay(
    extract::State(state): extract::State<State>,
    headers: HeaderMap,
    Path(number): Path<String>,
) -> Response {
    show(state, headers, move |visit| {
        let order = order_of(visit, &number)?;
        Ok(Shown::of(
            &order,
            "Money",
            html! {
                h1 { "Invoice, money, keys" }
                div class="columns" {
                    div {
                        @for total in &order.totals { (total_block(&order, total)) }
                        @if order.totals.is_empty() { p class="gap" { "No price yet." } }
                        (invoice(&order))
                        (super::credit::written_notes(&order))
                        (keys(&order))
                    }
                    div { (take(&order)) }
                }
                div class="presses low" { (link(Look::Plain, "Hand over", &count(order.open_items.len(), "item open", "items open"), &format!("/o/{}/hand-over", order.number))) }
            },
        ))
    })
    .await
}

/// What the customer's part comes to.
pub fn owed_by_customer(order: &OrderView) -> Option<&TotalView> {
    let mut totals = order.totals.iter();
    totals.find(|total| total.payer == PayerForm::Customer)
}

/// The invoice is written.
pub fn charge(order: &OrderView) -> Value {
    order_request(
        &order.order,
        json!({ "charge": { "after": super::price::seen(order) } }),
    )
}

/// How money comes in.
pub const PAID_BY: &[(&str, &str)] = &[
    ("card", "card"),
    ("cash", "cash"),
    ("transfer", "transfer"),
    ("cheque", "cheque"),
    ("on-account", "on account"),
];

/// What is charged, and how it comes to be written.
pub fn invoice(order: &OrderView) -> Markup {
    let charged = order.price.as_ref().is_some_and(|price| price.charged);
    let over: Vec<&AskView> = order.asks.iter().filter(|asked| asked.must).collect();
    html! {
        (written(order))
        @if charged { p class="yes gap" { "The invoice is written." } }
        @else {
            @for sublet in super::parts_price::unpriced(order) {
                a class="row" href=(format!("/o/{}/parts", order.number)) {
                    span class="what wait" { (sublet.what) @if let Some(cost) = &sublet.cost { " costs us " (cost) } ": not on the price yet" }
                }
            }
            @for asked in &over {
                (to_ask(order, asked))
                @if asked.can_write_down { (write_down(order, asked)) }
            }
            @if order.price.is_some() {
                form { div class="presses" { (button(Look::Confirm, "Write the invoice", "", &[charge(order)], None)) } }
            }
        }
    }
}

/// The invoices that were written, each a tap from its paper.
fn written(order: &OrderView) -> Markup {
    let invoices = order.price.iter().flat_map(|price| &price.invoices);
    html! {
        @for invoice in invoices {
            a class="row" href=(super::papers::invoice_page(order, invoice)) {
                span class="what" {
                    span class="strong line" { "Invoice " (invoice.number.as_deref().unwrap_or("")) }
                    span class="soft line" { (invoice.day) @if order.totals.len() > 1 { ", " (payer_name(invoice.payer)) } }
                }
                span class="strong number" { (invoice.gross) }
            }
            @if invoice.number.is_some() {
                a class="row" href=(format!("/o/{}/credit?payer={}&written={}", order.number, word(&invoice.payer), invoice.command)) { span class="what soft" { "Take some of it back" } }
            }
        }
    }
}

/// Money that comes in, or goes back.
pub fn take(order: &OrderView) -> Markup {
    let owes = owed_by_customer(order);
    let several = order.asks.len() > 1;
    let payer = if several {
        field("payer")
    } else {
        json!("customer")
    };
    let paid = order_fact(
        &order.order,
        json!({ "paid": { "payer": payer, "amount": field("amount"), "by": field("by"), "deposit": { "$flag": "deposit" } } }),
    );
    html! {
        h2 { "Money in" }
        form {
            @if several { (chips("payer", "From", &[("customer", "customer"), ("warranty", "warranty")], "customer")) }
            (figure("amount", "Amount", "a minus in front gives money back", owes.map_or("", |total| total.balance.as_str()), true))
            @if order.payments.is_empty() && let Some(total) = owes { (parts_of(&total.gross)) }
            (chips("by", "How", PAID_BY, "card"))
            p class="soft" { "On account: they pay later, as agreed; it counts as paid." }
            label class="row" { input type="checkbox" name="deposit" value="yes"; span class="what" { "It is a deposit" } }
            div class="presses" { (button(Look::Plain, "Record payment", "", &[paid], None)) }
        }
        (come_in(order))
        @for paid in &order.payments { (payment(order, paid)) }
    }
}

/// A deposit in per cent of what it comes to, each a press that fills in the amount.
fn parts_of(gross: &str) -> Markup {
    let parts: Vec<(u32, String)> = [20, 30, 50]
        .into_iter()
        .filter_map(|percent| {
            let sum: Decimal = gross.replace(',', "").parse().ok()?;
            let part = sum.checked_mul(Decimal::from(percent))? / Decimal::ONE_HUNDRED;
            let part = part.round_dp(sum.scale());
            (part > Decimal::ZERO).then(|| (percent, part.to_string()))
        })
        .collect();
    html! {
        div class="presses thirds" {
            @for (percent, sum) in &parts {
                button class="press" type="button" data-fill="amount" data-value=(sum) { (percent) " %" small { (sum) } }
            }
        }
    }
}

/// What was put on account comes in: it is on account no longer, and paid otherwise.
fn come_in(order: &OrderView) -> Markup {
    let open = order.totals.iter().find_map(|total| {
        let account = total.on_account.as_ref()?;
        Some((total, account))
    });
    let Some((total, account)) = open.filter(|(_, account)| !account.starts_with('-')) else {
        return html! {};
    };
    let paid = |amount: Value, by: Value| {
        order_fact(
            &order.order,
            json!({ "paid": { "payer": total.payer, "amount": amount, "by": by, "deposit": false } }),
        )
    };
    let off = json!({ "$join": ["-", field("amount")] });
    let both = [
        paid(off, json!("on-account")),
        paid(field("amount"), field("by")),
    ];
    html! {
        h2 { "It came in from the account" }
        form {
            (figure("amount", "Amount", "", account, true))
            (chips("by", "How", &PAID_BY[..4], "transfer"))
            div class="presses" { (button(Look::Plain, "It came in", "", &both, None)) }
        }
    }
}

fn keys(order: &OrderView) -> Markup {
    let keys = |step: &str| {
        order_fact(
            &order.order,
            json!({ "keys": { "step": step, "words": text("where") } }),
        )
    };
    html! {
        h2 { "Keys" }
        form {
            @if order.keys_here {
                (input("where", "To whom", "leave empty for the customer", ""))
                div class="presses" { (button(Look::Plain, "Keys given back", "", &[keys("given-back")], None)) }
            } @else {
                (input("where", "Where they hang", "", ""))
                div class="presses" { (button(Look::Plain, "Keys taken in", "", &[keys("taken")], None)) }
            }
        }
    }
}
