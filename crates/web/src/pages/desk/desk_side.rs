//! What stands beside the job on an order's page at the desk: price and approval, parts, what is
//! still to do, papers. Each heading opens its own page.

use super::overview::{consented, payment, to_ask};
use crate::pages::count;
use drawing::{PriceBar, price_bar, svg};
use maud::{Markup, PreEscaped, html};
use papers::Kind;
use shop::record::v1::codes::{ChargeForm, PartStepForm, PayerForm};
use shop::view::{OrderView, PartView, TotalView};

/// How wide the price is drawn.
const WIDE: f64 = 316.0;
/// How many rows of a list are shown.
const MOST: usize = 5;

fn heading(order: &OrderView, name: &str, page: &str, key: &str, small: &str) -> Markup {
    html! {
        h2 class="spread" {
            a href=(format!("/o/{}/{page}", order.number)) data-key=[(!key.is_empty()).then_some(key)] {
                @if let Some((before, letter, after)) = split_at_key(name, key) { (before) u { (letter) } (after) } @else { (name) }
            }
            span class="soft" { (small) }
        }
    }
}

/// A name with the letter that opens it between what stands before and after it.
fn split_at_key<'n>(name: &'n str, key: &str) -> Option<(&'n str, &'n str, &'n str)> {
    let letter = key.chars().next()?;
    let (at, found) = name
        .char_indices()
        .find(|(_, one)| one.to_ascii_lowercase() == letter)?;
    let end = at + found.len_utf8();
    Some((&name[..at], &name[at..end], &name[end..]))
}

/// The money and the words: the price against what was agreed, who approved what, what was paid.
pub fn money(order: &OrderView) -> Markup {
    let customer = order
        .totals
        .iter()
        .find(|total| total.payer == PayerForm::Customer);
    html! {
        section {
            (heading(order, "Price", "desk", "p", "before tax"))
            @match customer {
                None => { p class="soft gap" { "No price yet." } }
                Some(total) => {
                    p class="spread" { span class="large" { (total.net) } (against(total)) }
                    (PreEscaped(svg(&price_bar(&bar(order, total), WIDE))))
                }
            }
        }
        section {
            (heading(order, "Approval", "ask", "a", &order.row.customer))
            @for asked in order.asks.iter().filter(|asked| asked.must) { (to_ask(order, asked)) }
            @for consent in order.consents.iter().rev().take(3) { (consented(order, consent)) }
            @if order.consents.is_empty() { p class="soft gap" { "Nobody has agreed to anything yet." } }
        }
        section {
            (heading(order, "Money and keys", "pay", "y", if order.keys_here { "keys here" } else { "no keys here" }))
            @for paid in &order.payments { (payment(order, paid)) }
            @if let Some(total) = customer {
                div class="row" { span class="what" { "Left to pay" } span class="strong number" { (total.balance) } }
            }
        }
    }
}

/// How a total stands to what was agreed, in words.
fn against(total: &TotalView) -> Markup {
    html! {
        @match &total.room {
            Some(room) if room.starts_with('-') => {
                span class="no" { (room.trim_start_matches('-')) " over what was agreed" }
            }
            Some(room) => { span class="yes" { (room) " under what was agreed" } }
            None => { span class="wait" { "nothing agreed yet" } }
        }
    }
}

/// The price as it is drawn: from the very figures that stand beside it.
fn bar(order: &OrderView, total: &TotalView) -> PriceBar {
    let number = |text: &str| text.replace(',', "").parse::<f64>().unwrap_or(0.0);
    let of = |wanted: &dyn Fn(ChargeForm) -> bool| {
        let entries = order.price.iter().flat_map(|price| &price.entries);
        entries
            .filter(|entry| entry.payer == PayerForm::Customer && wanted(entry.charge))
            .map(|entry| number(&entry.amount))
            .sum::<f64>()
    };
    let over = total.room.as_deref().map_or(0.0, number);
    PriceBar {
        labour: of(&|charge| charge == ChargeForm::Labour),
        parts: of(&|charge| charge == ChargeForm::Part),
        other: of(&|charge| !matches!(charge, ChargeForm::Labour | ChargeForm::Part)),
        unagreed: (-over).max(0.0),
        agreed: total
            .ceiling
            .as_deref()
            .filter(|_| !total.ceiling_with_tax)
            .map(number),
    }
}

/// Parts, what is still to do, papers, and the ways to everything else.
pub fn beside(order: &OrderView) -> Markup {
    let here = order.parts.iter().filter(|part| is_here(part)).count();
    let parts = format!("{here} of {} here", order.parts.len());
    let owed = count(order.row.debts, "thing", "things");
    html! {
        section {
            (heading(order, "Parts", "parts", "t", if order.parts.is_empty() { "" } else { &parts }))
            @for part in order.parts.iter().take(MOST) {
                div class="row" {
                    span class="what" { (part.quantity) " × " (part.label) }
                    @if is_here(part) { span class="soft" { "here" } }
                    @else if part.late { span class="no" { "late" } }
                    @else { span class="wait" { (part.due.as_deref().map_or_else(|| "needed".to_owned(), shop::say::day_words)) } }
                }
            }
            @if order.parts.is_empty() { p class="soft gap" { "None needed so far." } }
        }
        section {
            (heading(order, "Still to do, proof", "due", "f", &owed))
            @for debt in order.debts.iter().take(MOST) { div class="row" { span class="what" { (debt.text) } } }
            @if order.debts.len() > MOST { div class="row" { span class="what soft" { (order.debts.len() - MOST) " more" } } }
            @for proof in &order.proofs_needed { div class="row" { span class="what wait" { (shop::say::capital(&proof.replace('-', " "))) " needed" } } }
        }
        section {
            (heading(order, "Papers", "desk", "e", ""))
            div class="papers-row" {
                @for (name, page) in [("Estimate", "estimate"), ("Added work", "added"), ("Invoice", "invoice")] {
                    a href=(format!("/o/{}/{page}", order.number)) { (name) }
                }
                @if order.aim.is_some() { a href=(super::paper_file::address(order.number, Kind::WorkSheet, "")) { "Work sheet" } }
                a href=(super::paper_file::address(order.number, Kind::Labels, "")) { "Labels" }
                a href=(format!("/o/{}/how-to", order.number)) { "How it was done" }
            }
        }
        section {
            h2 { "More" }
            div class="papers-row" {
                @for (name, page) in [("The plan", "plan"), ("Walk-round", "walk"), ("Snags", "snag"), ("Measures", "measures"), ("Trays", "tray"), ("Story", "story"), ("Edit details", "mend"), ("How sure is it?", "odds")] {
                    a href=(format!("/o/{}/{page}", order.number)) { (name) }
                }
                @if order.handed_over { a href=(format!("/maps/from-order/edit?order={}", order.number)) { "Keep what was done as a map" } }
                @if let Some(vehicle) = &order.row.vehicle_id { a href=(format!("/v/{vehicle}")) { "The vehicle" } }
            }
        }
    }
}

fn is_here(part: &PartView) -> bool {
    part.steps.contains_key(&PartStepForm::Received)
}

#[cfg(test)]
mod tests {
    use super::split_at_key;

    #[test]
    fn the_letter_that_opens_a_heading_is_found_in_its_name() {
        assert_eq!(split_at_key("Parts", "t"), Some(("Par", "t", "s")));
        assert_eq!(split_at_key("Price", "p"), Some(("", "P", "rice")));
        assert_eq!(split_at_key("Prüfen", "ü"), Some(("Pr", "ü", "fen")));
        assert_eq!(split_at_key("Price", "z"), None);
        assert_eq!(split_at_key("Price", ""), None);
    }
}
