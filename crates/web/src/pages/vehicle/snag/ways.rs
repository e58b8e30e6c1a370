//! The ways back, the best one first and ready to be taken.

use super::{Sheet, take};
use crate::pages::bench::answer;
use crate::phrases::vehicle as say;
use crate::tap::{Look, button};
use maud::{Markup, html};
use phrases::number;
use shop::calculators::Shop;
use shop::mending::{Added, Fields, Told, added, kept};

/// What the shop charges.
pub(super) struct Money {
    pub rate: shop::measure::Decimal,
    pub digits: u32,
}

pub(super) fn ways(
    sheet: &Sheet<'_>,
    fields: &Fields,
    all: &[Told],
    money: &Money,
    shop: &Shop,
) -> Markup {
    let wanted = fields.get("way");
    let Some(told) = all
        .iter()
        .find(|told| wanted == Some(&told.way.code))
        .or(all.first())
    else {
        return html! { p { (say::no_way_is_known()) } };
    };
    let price = added(sheet.order, &told.way, money.rate, money.digits);
    let kept = kept(told, sheet.stub(), &shop.planning, shop.customary);
    let holding = all.iter().filter(|told| told.way.holds).count();
    html! {
        h1 class="spread" {
            span { (shop::say::capital(&sheet.found.text)) }
            span class="soft" { @if told.way.holds { (say::way_of(told.way.rank, holding)) } }
        }
        (crate::tap::spoken(sheet.found.voice.as_ref()))
        (answer::cautions(&told.cautions))
        (answer::way(&told.way))
        div class="columns" {
            div {
                (answer::joints(&told.found, &told.way.joint, told.way.holds))
                @if told.way.holds { (cost(told, &price)) }
                (steps(told))
            }
            div {
                (answer::others(&told.others, |other| address(&sheet.path(), fields, &other.code)))
                h2 { (say::behind_it()) }
                (answer::behind(told))
                a class="row" href=(address(&sheet.path(), fields, "").replace("asked=1", "again=1").replace("&way=", "")) { span class="what strong" { (say::answer_something_else()) } }
            }
        }
        @if told.way.holds {
            form {
                div class="presses low" {
                    (button(Look::Confirm, say::take_this_way(), &small(told, &price), &take::commands(sheet, &kept, &price), Some(&sheet.path())))
                }
            }
        }
    }
}

/// The same answers with another way, or with none.
pub fn address(path: &str, fields: &Fields, way: &str) -> String {
    let mut query: Vec<String> = fields
        .iter()
        .filter(|(name, _)| !matches!(name.as_str(), "way" | "again"))
        .map(|(name, text)| format!("{name}={}", escaped(text)))
        .collect();
    query.push(format!("way={way}"));
    format!("{path}?{}", query.join("&"))
}

/// A value as it may stand in an address.
fn escaped(text: &str) -> String {
    text.bytes()
        .map(|byte| match byte {
            b'a'..=b'z' | b'A'..=b'Z' | b'0'..=b'9' | b'-' | b'_' | b'.' => {
                char::from(byte).to_string()
            }
            other => format!("%{other:02X}"),
        })
        .collect()
}

fn small(told: &Told, price: &Added) -> String {
    let parts = price
        .parts
        .as_ref()
        .map(say::plus_parts)
        .unwrap_or_default();
    match &told.way.minutes {
        Some(minutes) => {
            let ask = if price.over.is_some() {
                say::ask_again()
            } else {
                ""
            };
            format!("+{} min{parts}{ask}", minutes.mid)
        }
        None => say::time_and_price_unknown().to_owned(),
    }
}

fn cost(told: &Told, price: &Added) -> Markup {
    html! {
        dl class="figures" {
            @if let Some(minutes) = &told.way.minutes { div { dt { (say::time()) } dd { "+" (answer::minutes(minutes)) } } }
            @if let Some(cost) = &told.way.cost { div { dt { (say::parts()) } dd { "+" (number(&cost.mid)) (say::low_to_high(number(&cost.low), number(&cost.high))) } } }
            @if told.way.minutes.is_some() {
                div {
                    dt { (say::price_then()) }
                    dd { (price.now) @if let Some(over) = &price.over { " " span class="no" { (say::so_much_over(over)) } } }
                }
            }
            @if price.with_tax { div { dt { (say::what_was_agreed()) } dd { (say::has_tax_in_it()) } } }
        }
    }
}

pub fn steps(told: &Told) -> Markup {
    html! {
        @if !told.way.steps.is_empty() {
            h2 { (say::what_is_done()) }
            ol class="steps" {
                @for (nth, step) in told.way.steps.iter().enumerate() {
                    li {
                        @if let Some(caution) = answer::new_caution(&told.way.steps, nth) { p class="no" { (shop::say::capital(caution)) } }
                        p { (shop::say::capital(&step.what)) }
                    }
                }
            }
        }
    }
}
