//! What stands beside the job on an order's page at the desk: price and approval, parts, what is
//! still to do, papers. Each heading opens its own page.

use super::overview::{consented, payment, to_ask};
use crate::phrases::desk as say;
use drawing::{PriceBar, price_bar, svg};
use maud::{Markup, PreEscaped, html};
use papers::Kind;
use shop::Amount;
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
                (with_key(name, key))
            }
            span class="soft" { (small) }
        }
    }
}

/// A name with the letter that opens it underlined, where it stands in it.
pub fn with_key(name: &str, key: &str) -> Markup {
    html! {
        @if let Some((before, letter, after)) = split_at_key(name, key) { (before) u { (letter) } (after) } @else { (name) }
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
            (heading(order, say::price(), "price", say::price_key(), say::before_tax()))
            @match customer {
                None => { p class="soft gap" { (say::no_price_yet()) } }
                Some(total) => {
                    p class="spread" { span class="large" { (total.net) } (against(total)) }
                    (PreEscaped(svg(&price_bar(&bar(order, total), WIDE))))
                }
            }
        }
        section {
            (heading(order, say::approval(), "ask", say::approval_key(), &order.row.customer))
            @for asked in order.asks.iter().filter(|asked| asked.must) { (to_ask(order, asked)) }
            @for consent in order.consents.iter().rev().take(3) { (consented(order, consent)) }
            @if order.consents.is_empty() { p class="soft gap" { (say::nobody_agreed()) } }
        }
        section {
            (heading(order, say::money_and_keys(), "pay", say::money_key(), if order.keys_here { say::keys_here() } else { say::no_keys_here() }))
            @for paid in &order.payments { (payment(order, paid)) }
            @if let Some(total) = customer {
                div class="row" { span class="what" { (say::left_to_pay()) } span class="strong number" { (total.balance) } }
            }
        }
    }
}

/// How a total stands to what was agreed, in words.
fn against(total: &TotalView) -> Markup {
    html! {
        @match &total.room {
            Some(room) => {
                @if let Some(over) = room.below_nought() { span class="no" { (say::over_agreed(over)) } }
                @else { span class="yes" { (say::under_agreed(room)) } }
            }
            None => { span class="wait" { (say::nothing_agreed_yet()) } }
        }
    }
}

/// The price as it is drawn: from the very figures that stand beside it.
fn bar(order: &OrderView, total: &TotalView) -> PriceBar {
    let number = |sum: &Amount| sum.exact().parse::<f64>().unwrap_or(0.0);
    let of = |wanted: &dyn Fn(ChargeForm) -> bool| {
        let entries = order.price.iter().flat_map(|price| &price.entries);
        entries
            .filter(|entry| entry.payer == PayerForm::Customer && wanted(entry.charge))
            .map(|entry| number(&entry.amount))
            .sum::<f64>()
    };
    let over = total.room.as_ref().map_or(0.0, number);
    PriceBar {
        labour: of(&|charge| charge == ChargeForm::Labour),
        parts: of(&|charge| charge == ChargeForm::Part),
        other: of(&|charge| !matches!(charge, ChargeForm::Labour | ChargeForm::Part)),
        unagreed: (-over).max(0.0),
        agreed: total
            .ceiling
            .as_ref()
            .filter(|_| !total.ceiling_with_tax)
            .map(number),
    }
}

/// Parts, what is still to do, papers, and the ways to everything else.
pub fn beside(order: &OrderView) -> Markup {
    let here = order.parts.iter().filter(|part| is_here(part)).count();
    let parts = say::parts_here(here, order.parts.len());
    let owed = say::things_count(order.row.debts);
    html! {
        section {
            (heading(order, say::parts(), "parts", say::parts_key(), if order.parts.is_empty() { "" } else { &parts }))
            @for part in order.parts.iter().take(MOST) {
                div class="row" {
                    span class="what" { (part.quantity) " × " (part.label) }
                    @if is_here(part) { span class="soft" { (say::here()) } }
                    @else if part.late { span class="no" { (say::late()) } }
                    @else { span class="wait" { (part.due.as_deref().map_or_else(|| say::needed().to_owned(), shop::say::day_words)) } }
                }
            }
            @if order.parts.is_empty() { p class="soft gap" { (say::no_parts_needed()) } }
        }
        section {
            (heading(order, say::still_to_do(), "due", say::still_to_do_key(), &owed))
            @for debt in order.debts.iter().take(MOST) { div class="row" { span class="what" { (debt.text) } } }
            @if order.debts.len() > MOST { div class="row" { span class="what soft" { (say::count_more(order.debts.len() - MOST)) } } }
            @for proof in &order.proofs_needed { div class="row" { span class="what wait" { (say::proof_needed(shop::say::capital(proof_name(proof)))) } } }
        }
        section {
            (heading(order, say::papers(), "desk", say::papers_key(), ""))
            div class="papers-row" {
                @for (name, page) in [(say::estimate(), "estimate"), (say::added_work(), "added"), (say::invoice(), "invoice")] {
                    a href=(format!("/o/{}/{page}", order.number)) { (name) }
                }
                @if order.aim.is_some() { a href=(super::paper_file::address(order.number, Kind::WorkSheet, "")) { (say::work_sheet()) } }
                a href=(super::paper_file::address(order.number, Kind::Labels, "")) { (say::labels()) }
                a href=(format!("/o/{}/how-to", order.number)) { (say::how_it_was_done()) }
            }
        }
        section {
            h2 { (say::more()) }
            div class="papers-row" {
                @for (name, page) in [(say::the_plan(), "plan"), (say::walk_round(), "walk"), (say::snags(), "snag"), (say::measures(), "measures"), (say::trays(), "tray"), (say::story(), "story"), (say::edit_details(), "mend"), (say::how_sure_is_it(), "odds")] {
                    a href=(format!("/o/{}/{page}", order.number)) { (name) }
                }
                @if order.handed_over { a href=(format!("/maps/from-order/edit?order={}", order.number)) { (say::keep_as_map()) } }
                @if let Some(vehicle) = &order.row.vehicle_id { a href=(format!("/v/{vehicle}")) { (say::the_vehicle()) } }
            }
        }
    }
}

/// A proof by its code.
fn proof_name(code: &str) -> &str {
    match code {
        "road-test" => say::road_test(),
        "leak-test" => say::leak_test(),
        "brake-test" => say::brake_test(),
        "fuel-leak-look" => say::fuel_leak_look(),
        "restraint-lamp" => say::restraint_lamp(),
        "coolant-mix" => say::coolant_mix(),
        "other" => say::other_proof(),
        unknown => unknown,
    }
}

fn is_here(part: &PartView) -> bool {
    part.steps.contains_key(&PartStepForm::Received)
}

#[cfg(test)]
mod tests {
    use super::{say, split_at_key};
    use phrases::{Language, speaking};
    use std::collections::BTreeSet;

    #[test]
    fn the_letter_that_opens_a_heading_is_found_in_its_name() {
        assert_eq!(split_at_key("Parts", "t"), Some(("Par", "t", "s")));
        assert_eq!(split_at_key("Price", "p"), Some(("", "P", "rice")));
        assert_eq!(split_at_key("Prüfen", "ü"), Some(("Pr", "ü", "fen")));
        assert_eq!(split_at_key("Price", "z"), None);
        assert_eq!(split_at_key("Price", ""), None);
    }

    #[test]
    fn each_letter_stands_in_its_heading_in_each_language_and_opens_one_page() {
        for language in Language::ALL {
            let headings = speaking(language, || {
                [
                    (say::price(), say::price_key()),
                    (say::approval(), say::approval_key()),
                    (say::money_and_keys(), say::money_key()),
                    (say::parts(), say::parts_key()),
                    (say::still_to_do(), say::still_to_do_key()),
                    (say::papers(), say::papers_key()),
                    (say::check_in_a_vehicle(), say::check_in_key()),
                    (say::ring_now(), say::ring_key()),
                ]
            });
            for (name, key) in headings {
                assert!(split_at_key(name, key).is_some(), "{key} in {name}");
            }
            let keys: BTreeSet<&str> = headings.iter().map(|(_, key)| *key).collect();
            assert_eq!(keys.len(), headings.len());
        }
    }
}
