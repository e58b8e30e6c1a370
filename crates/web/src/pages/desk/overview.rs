//! The desk: what it comes to for whom, what was agreed, money, keys, papers to print.

use super::ask::{ask_page, write_down};
use super::papers::{
    for_payer, paper_name, payer_name, payer_pays, payers, step_word, way_word, word,
};
use crate::State;
use crate::pages::{Shown, order_of, show};
use crate::phrases::desk as say;
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
use shop::Amount;
use shop::measure::Decimal;
use shop::record::v1::codes::{PaidByForm, PayerForm};
use shop::view::{AskView, ConsentView, OrderView, PaymentView, TotalView};

pub async fn desk(
    extract::State(state): extract::State<State>,
    headers: HeaderMap,
    Path(number): Path<String>,
) -> Response {
    show(state, headers, move |visit| {
        let order = order_of(visit, &number)?;
        let to = |page: &str| format!("/o/{}/{page}", order.number);
        Ok(Shown::of(&order, say::desk(), html! {
            h1 { (say::desk()) }
            @for asked in &order.asks { (to_ask(&order, asked)) }
            div class="columns" {
                div {
                    @for total in &order.totals { (total_block(&order, total)) }
                    @if order.totals.is_empty() { p class="gap" { (say::no_price_yet()) } }
                    (complaints(&order))
                }
                div {
                    h2 { (say::agreed()) }
                    @for consent in &order.consents { (consented(&order, consent)) }
                    @if order.consents.is_empty() { p class="gap" { (say::nobody_agreed()) } }
                    h2 { (say::money()) }
                    @for paid in &order.payments { (payment(&order, paid)) }
                    @if order.payments.is_empty() { p class="gap" { (say::nothing_paid_yet()) } }
                    (printed(&order))
                }
            }
            @if !order.handed_over && let Some(aim) = &order.aim { div class="presses" { (link(Look::Confirm, say::next_stage(), aim, &to("stage"))) } }
            div class="presses even" {
                (link(Look::Plain, say::price(), "", &to("price")))
                (link(Look::Plain, say::how_sure_is_it(), "", &to("odds")))
                (link(Look::Plain, say::get_approval(), "", &to("ask")))
                (link(Look::Plain, say::parts(), "", &to("parts")))
                (link(Look::Plain, say::invoice_money_keys(), "", &to("pay")))
                (link(Look::Plain, say::declined_work(), say::signed(), &to("decline")))
                (link(Look::Plain, say::hand_over(), "", &to("hand-over")))
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
                span class="soft" { (say::net_and_tax(&total.net, &total.tax)) }
            }
        }
        @if total.written_down.number().is_some_and(|sum| !sum.is_zero()) {
            div class="row" { span class="what" { (say::discount_before_tax()) } span class="number" { (total.written_down) } }
        }
        @if let (Some(ceiling), Some(room)) = (&total.ceiling, &total.room) {
            div class="row" {
                span class="what" { @if total.ceiling_with_tax { (say::agreed_up_to_with_tax(ceiling)) } @else { (say::agreed_up_to_before_tax(ceiling)) } }
                @if let Some(over) = room.below_nought() { span class="no number" { (say::amount_over(over)) } }
                @else { span class="yes number" { (say::amount_left(room)) } }
            }
        }
        @if total.payer != PayerForm::Goodwill {
            div class="row" {
                @if let Some(back) = total.balance.below_nought() {
                    span class="what" { (say::paid_too_much()) } span class="wait number" { (say::to_give_back(back)) }
                } @else {
                    span class="what" { (say::left_to_pay()) } span class="strong number" { (total.balance) }
                }
            }
            @if let Some(cash) = &total.in_cash { div class="row" { span class="what soft" { (say::in_cash()) } span class="number" { (cash) } } }
            @if let Some(by) = &total.by_coin { div class="row" { span class="what soft" { (say::by_coin()) } span class="number" { (by) } } }
            @if let Some(account) = &total.on_account { div class="row" { span class="what wait" { (say::account_to_come()) } span class="number" { (account) } } }
        }
        details id=(format!("found-{:?}", total.payer)) {
            summary class="row" { span class="soft" { (say::how_found()) } }
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
        h2 { (say::complaints()) }
        @for line in &order.lines {
            a class="row" href=(format!("/o/{}", order.number)) {
                span class="what" {
                    span class="strong line" { (line.complaint) }
                    @if let Some(cause) = &line.cause { span class="soft line" { (say::cause_is(cause)) } }
                    @if let Some(correction) = &line.correction { span class="soft line" { (say::correction_is(correction)) } }
                }
                span class="soft" { (payer_pays(line.payer)) }
            }
        }
        details id="line" {
            summary class="row" { span class="strong" { (say::another_complaint()) } }
            form {
                (required("complaint", say::what_customer_says(), say::in_their_words(), ""))
                (chips("payer", say::who_pays(), &payers(), "customer"))
                div class="presses" { (button(Look::Plain, say::open_it(), "", &[open], None)) }
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
                    @if consent.agreed { (say::yes()) } @else { (say::no()) }
                    @if let Some(amount) = &consent.amount { @if consent.tax_included { (say::up_to_with_tax(amount)) } @else { (say::up_to(amount)) } }
                    " · " (step_word(consent.step))
                    @if consent.payer != PayerForm::Customer { " · " (payer_name(consent.payer)) }
                }
                span class="soft line" { (consent.person.as_deref().unwrap_or(say::somebody())) ", " (way_word(consent.way)) ", " (consent.at) @if let Some(called) = &consent.number_called { (say::called_number(called)) } }
                @if !lines.is_empty() { span class="soft line" { (say::for_lines(lines.join("; "))) } }
                @if let Some(said) = &consent.said { span class="soft line" { (say::quoted(said)) } }
                (signed(consent.signature.as_deref(), consent.person.as_deref().unwrap_or("")))
            }
        }
    }
}

pub fn payment(order: &OrderView, paid: &PaymentView) -> Markup {
    html! {
        div class="row" {
            span class="what" {
                span class="line" { (shop::say::capital(paid_by_word(paid.by))) @if paid.deposit { (say::is_deposit()) } @if order.totals.len() > 1 { ", " (payer_name(paid.payer)) } }
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
            h2 { (say::papers_given_out()) }
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
        h2 { (say::papers_to_print()) }
        @for payer in &payers {
            @for (name, small, page) in [(say::estimate(), say::to_sign(), "estimate"), (say::added_work(), say::what_it_comes_to(), "added"), (say::invoice(), "", "invoice")] {
                a class="row" href=(format!("/o/{}/{page}?payer={}", order.number, word(payer))) {
                    span class="what strong" { (name) @if payers.len() > 1 { (for_payer(*payer)) } }
                    span class="soft" { (small) }
                }
            }
        }
        @let paid = (!order.payments.is_empty()).then_some(Kind::Receipt);
        @let planned = order.aim.is_some().then_some(Kind::WorkSheet);
        @let apart = (!order.open_items.is_empty()).then_some(Kind::Apart);
        @for kind in paid.into_iter().chain(planned).chain([Kind::Labels, Kind::HowTo]).chain(apart) {
            a class="row" href=(super::paper_file::page(order.number, kind, "")) {
                span class="what strong" { (paper_name(kind)) }
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
            say::money(),
            html! {
                h1 { (say::invoice_money_keys()) }
                div class="columns" {
                    div {
                        @for total in &order.totals { (total_block(&order, total)) }
                        @if order.totals.is_empty() { p class="gap" { (say::no_price_yet()) } }
                        (invoice(&order))
                        (super::credit::written_notes(&order))
                        (keys(&order))
                    }
                    div { (take(&order)) }
                }
                div class="presses low" { (link(Look::Plain, say::hand_over(), &say::items_open(order.open_items.len()), &format!("/o/{}/hand-over", order.number))) }
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
pub fn paid_by() -> [(&'static str, &'static str); 5] {
    [
        PaidByForm::Card,
        PaidByForm::Cash,
        PaidByForm::Transfer,
        PaidByForm::Cheque,
        PaidByForm::OnAccount,
    ]
    .map(|by| (paid_by_code(by), paid_by_word(by)))
}

fn paid_by_code(by: PaidByForm) -> &'static str {
    match by {
        PaidByForm::Card => "card",
        PaidByForm::Cash => "cash",
        PaidByForm::Transfer => "transfer",
        PaidByForm::Cheque => "cheque",
        PaidByForm::OnAccount => "on-account",
    }
}

/// A way in which money comes in, in words.
pub fn paid_by_word(by: PaidByForm) -> &'static str {
    match by {
        PaidByForm::Card => say::card(),
        PaidByForm::Cash => say::cash(),
        PaidByForm::Transfer => say::transfer(),
        PaidByForm::Cheque => say::cheque(),
        PaidByForm::OnAccount => say::on_account(),
    }
}

/// What is charged, and how it comes to be written.
pub fn invoice(order: &OrderView) -> Markup {
    let charged = order.price.as_ref().is_some_and(|price| price.charged);
    let over: Vec<&AskView> = order.asks.iter().filter(|asked| asked.must).collect();
    html! {
        (written(order))
        @if charged { p class="yes gap" { (say::invoice_is_written()) } }
        @else {
            @for sublet in super::parts_price::unpriced(order) {
                a class="row" href=(format!("/o/{}/parts", order.number)) {
                    span class="what wait" { @match &sublet.cost { Some(cost) => (say::sublet_cost_not_priced(&sublet.what, cost)), None => (say::sublet_not_priced(&sublet.what)) } }
                }
            }
            @for asked in &over {
                (to_ask(order, asked))
                @if asked.can_write_down { (write_down(order, asked)) }
            }
            @if order.price.is_some() {
                form { div class="presses" { (button(Look::Confirm, say::write_the_invoice(), "", &[charge(order)], None)) } }
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
                    span class="strong line" { (say::invoice_numbered(invoice.number.as_deref().unwrap_or(""))) }
                    span class="soft line" { (invoice.day) @if order.totals.len() > 1 { ", " (payer_name(invoice.payer)) } }
                }
                span class="strong number" { (invoice.gross) }
            }
            @if invoice.number.is_some() {
                a class="row" href=(format!("/o/{}/credit?payer={}&written={}", order.number, word(&invoice.payer), invoice.command)) { span class="what soft" { (say::take_some_back()) } }
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
        h2 { (say::money_in()) }
        form {
            @if several { (chips("payer", say::from(), &payers()[..2], "customer")) }
            (figure("amount", say::amount(), say::minus_gives_back(), owes.map_or("", |total| total.balance.exact()), true))
            @if order.payments.is_empty() && let Some(total) = owes { (parts_of(&total.gross)) }
            (chips("by", say::how(), &paid_by(), "card"))
            p class="soft" { (say::on_account_means()) }
            label class="row" { input type="checkbox" name="deposit" value="yes"; span class="what" { (say::it_is_a_deposit()) } }
            div class="presses" { (button(Look::Plain, say::record_payment(), "", &[paid], None)) }
        }
        (come_in(order))
        @for paid in &order.payments { (payment(order, paid)) }
    }
}

/// A deposit in per cent of what it comes to, each a press that fills in the amount.
fn parts_of(gross: &Amount) -> Markup {
    let parts: Vec<(u32, Amount)> = [20, 30, 50]
        .into_iter()
        .filter_map(|percent| {
            let sum = gross.number()?;
            let part = sum.checked_mul(Decimal::from(percent))? / Decimal::ONE_HUNDRED;
            let part = part.round_dp(sum.scale());
            (part > Decimal::ZERO).then(|| (percent, Amount::from(part)))
        })
        .collect();
    html! {
        div class="presses thirds" {
            @for (percent, sum) in &parts {
                button class="press" type="button" data-fill="amount" data-value=(sum.to_type()) { (percent) " %" small { (sum) } }
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
    let Some((total, account)) = open.filter(|(_, account)| !account.is_below_nought()) else {
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
        h2 { (say::came_in_from_account()) }
        form {
            (figure("amount", say::amount(), "", account.exact(), true))
            (chips("by", say::how(), &paid_by()[..4], "transfer"))
            div class="presses" { (button(Look::Plain, say::it_came_in(), "", &both, None)) }
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
        h2 { (say::keys()) }
        form {
            @if order.keys_here {
                (input("where", say::to_whom(), say::empty_for_customer(), ""))
                div class="presses" { (button(Look::Plain, say::keys_given_back(), "", &[keys("given-back")], None)) }
            } @else {
                (input("where", say::where_they_hang(), "", ""))
                div class="presses" { (button(Look::Plain, say::keys_taken_in(), "", &[keys("taken")], None)) }
            }
        }
    }
}
