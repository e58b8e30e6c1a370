//! The price on a paper: entries by line, sums, money.

use super::{Paper, word};
use maud::{Markup, html};
use shop::record::v1::codes::ChargeForm;
use shop::view::{OrderView, PriceEntryView, ShareView, TotalView};

/// What is listed apart: work, then parts, then everything else.
const GROUPS: [(&str, &[ChargeForm]); 3] = [
    ("Labour", &[ChargeForm::Labour, ChargeForm::Test]),
    ("Parts", &[ChargeForm::Part, ChargeForm::Supplies]),
    (
        "Other",
        &[
            ChargeForm::Sublet,
            ChargeForm::Core,
            ChargeForm::Fee,
            ChargeForm::Disposal,
        ],
    ),
];

/// What the payer's work and parts come to, under each line where there are several.
pub fn prices(paper: &Paper<'_>) -> Markup {
    let all: Vec<&PriceEntryView> = paper
        .order
        .price
        .iter()
        .flat_map(|price| match paper.invoice {
            Some(invoice) => &invoice.entries,
            None => &price.entries,
        })
        .filter(|entry| entry.payer == paper.payer)
        .collect();
    let lines = paper.paid_lines();
    let of_line = |line: Option<&str>| -> Vec<PriceEntryView> {
        all.iter()
            .filter(|entry| entry.line.as_deref() == line)
            .map(|entry| (*entry).clone())
            .collect()
    };
    let known: Vec<&str> = lines.iter().map(|line| line.line.as_str()).collect();
    let rest: Vec<PriceEntryView> = all
        .iter()
        .filter(|entry| {
            entry
                .line
                .as_deref()
                .is_none_or(|line| !known.contains(&line))
        })
        .map(|entry| (*entry).clone())
        .collect();
    let apart = lines.len() > 1;
    html! {
        section {
            h2 { "Price" }
            @if all.is_empty() { p class="gap" { "No price yet." } }
            @if apart {
                @for line in lines {
                    @let group = of_line(Some(&line.line));
                    @if !group.is_empty() { h3 class="gap" { (line.complaint) } (groups(&group)) }
                }
                @if !rest.is_empty() { h3 class="gap" { "For all of it" } (groups(&rest)) }
            } @else {
                @let both: Vec<_> = all.iter().map(|entry| (*entry).clone()).collect();
                (groups(&both))
            }
            @match (paper.invoice, paper.total()) {
                (Some(invoice), _) => (sum_rows(paper.order, &invoice.taxes.join(", "), &invoice.shares, invoice.exempt_by.as_deref(), [&invoice.written_down, &invoice.net, &invoice.tax, &invoice.gross])),
                (None, Some(total)) => (sums(paper.order, total)),
                (None, None) => {}
            }
        }
    }
}

fn groups(all: &[PriceEntryView]) -> Markup {
    html! {
        @for (name, charges) in GROUPS {
            @let group: Vec<_> = all.iter().filter(|entry| charges.contains(&entry.charge)).cloned().collect();
            @if !group.is_empty() { (entries(name, &group)) }
        }
    }
}

pub fn entries(name: &str, entries: &[PriceEntryView]) -> Markup {
    html! {
        table class="entries" {
            thead { tr { th scope="col" { (name) } th scope="col" class="number" { "Amount" } } }
            tbody {
                @for entry in entries {
                    tr {
                        td {
                            span class="line" { (entry.label) }
                            span class="soft line" { (entry.quantity) " × " (entry.each) }
                            @for less in &entry.less { span class="soft line" { "Less " (less.amount) @if let Some(percent) = &less.percent { " (" (percent) " %)" } ", " (less.why) } }
                        }
                        td class="number" { (entry.amount) }
                    }
                }
            }
        }
    }
}

pub fn sums(order: &OrderView, total: &TotalView) -> Markup {
    let taxes = order
        .price
        .as_ref()
        .map_or_else(String::new, |price| price.taxes.join(", "));
    let rows = [&total.written_down, &total.net, &total.tax, &total.gross];
    sum_rows(order, &taxes, &total.shares, None, rows)
}

/// What was taken off, what is left before tax, its tax, and with it.
fn sum_rows(
    order: &OrderView,
    taxes: &str,
    shares: &[ShareView],
    exempt_by: Option<&str>,
    [off, net, tax, gross]: [&String; 4],
) -> Markup {
    // One tax needs no row beside that of the tax.
    let apart = shares.len() > 1 || shares.iter().any(|share| share.exempt);
    html! {
        table class="sums" {
            tbody {
                @if !nought(off) { (sum("Discount, before tax", &format!("-{off}"))) }
                (sum("Before tax", net))
                @if apart { @for share in shares { (sum(&share_name(share), &share.tax)) } }
                (sum(&if apart || taxes.is_empty() { "Tax".to_owned() } else { format!("Tax: {taxes}") }, tax))
                @if let Some(number) = exempt_by { (sum(&format!("Exempt by {number}"), "")) }
                tr class="strong all" { th scope="row" { "Total, " (order.papers.currency) } td class="number" { (gross) } }
            }
        }
    }
}

/// A tax as its row is called.
fn share_name(share: &ShareView) -> String {
    if share.exempt {
        return format!("{} {} %, not asked: exempt", share.name, share.percent);
    }
    format!("{} {} % of {}", share.name, share.percent, share.base)
}

fn sum(name: &str, amount: &str) -> Markup {
    html! { tr { th scope="row" { (name) } td class="number" { (amount) } } }
}

/// What the payer has paid, and what is left.
pub fn money(paper: &Paper<'_>) -> Markup {
    let Some(total) = paper.total() else {
        return html! {};
    };
    html! {
        section {
            h2 { "Paid" }
            table class="sums" {
                tbody {
                    @if paper.order.price.as_ref().is_some_and(|price| price.invoices.len() > 1) { (sum("To pay on all invoices", &total.gross)) }
                    @for paid in paper.order.payments.iter().filter(|paid| paid.payer == paper.payer) {
                        @let how = shop::say::capital(&word(&paid.by));
                        (sum(&format!("{how}{}, {}", if paid.deposit { ", deposit" } else { "" }, paid.at), &paid.amount))
                    }
                    (sum("Paid so far", &total.paid))
                    tr class="strong all" { th scope="row" { "Still to pay, " (paper.order.papers.currency) } td class="number" { (total.balance) } }
                }
            }
        }
    }
}

fn nought(amount: &str) -> bool {
    !amount.bytes().any(|digit| (b'1'..=b'9').contains(&digit))
}
