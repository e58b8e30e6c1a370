//! The price: its entries, each on a line of the order and for a payer.

use super::overview::total_block;
use super::papers::{payer_pays, payers};
use super::price_offers::{self, Asked};
use crate::State;
use crate::pages::{Shown, order_of, show};
use crate::phrases::desk as say;
use crate::tap::{Look, button, chips, field, figure, input, link, order_request, when};
use axum::extract::{self, Path, Query};
use axum::http::HeaderMap;
use axum::response::Response;
use maud::{Markup, html};
use serde_json::{Map, Value, json};
use shop::offers::RateOffer;
use shop::view::{OrderView, PriceEntryView};
use std::collections::BTreeMap;

pub async fn price(
    extract::State(state): extract::State<State>,
    headers: HeaderMap,
    Path(number): Path<String>,
    Query(asked): Query<Asked>,
) -> Response {
    show(state, headers, move |visit| {
        let order = order_of(visit, &number)?;
        let found = asked.price(visit);
        let each = match &found {
            Some(Ok(offer)) => offer.price.exact(),
            _ => "",
        };
        let rates = shop::offers::rates(visit.snap);
        let rate = {
            let world = visit.snap.world();
            let settings = world.shop.settings();
            settings
                .map(|settings| settings.rate.to_string())
                .unwrap_or_default()
        };
        let set = order_request(
            &order.order,
            json!({ "price": { "entries": entries(&order, &rates), "after": seen(&order) } }),
        );
        let kept = order.price.iter().flat_map(|price| &price.open);
        let id = shop::repair::OrderId::new(order.order.clone());
        let clock = shop::offers::clock_hours(visit.snap, &id)?;
        let grade = shop::offers::grade_of(visit.snap, &order.assigned);
        let mut hint = say::hours_hint(shop::offers::hours(visit.snap));
        if let Some(clock) = &clock {
            hint = say::clock_ran(hint, phrases::number(clock));
        }
        let by_clock = order.price.is_none() && shop::offers::is_by_clock(visit.snap);
        let hours = clock.filter(|_| by_clock).unwrap_or_default();
        Ok(Shown::of(&order, say::price(), html! {
            h1 { (say::price()) }
            form {
                div class="columns" {
                    div {
                        @for total in &order.totals { (total_block(&order, total)) }
                        (on_invoices(&order))
                        @for (key, entry) in keyed(kept) { (kept_entry(&order, &key, entry)) }
                        @if order.totals.is_empty() { p class="gap" { (say::no_price_yet()) } }
                    }
                    div {
                        (belongs(&order))
                        h2 { (say::add_labour()) }
                        (input("labour", say::what_for(), "", ""))
                        (figure("hours", say::hours(), &hint, &hours, false))
                        (figure("rate", say::an_hour(), "", &rate, false))
                        @if !rates.is_empty() { (rate_chips(&rates, grade.as_deref())) }
                        h2 { (say::add_part_or_other()) }
                        (chips("charge", say::what_sort(), &sorts(), "part"))
                        (input("what", say::what(), "", ""))
                        (figure("quantity", say::how_many(), "", "1", false))
                        (figure("each", say::unit_price(), "", each, false))
                    }
                }
                div class="presses low" { (button(Look::Confirm, say::set_the_price(), "", &[set], None)) }
            }
            div class="columns" {
                div {
                    (price_offers::jobs(visit, &order))
                    (price_offers::supplies(visit, &order))
                }
                div {
                    (price_offers::disposal(visit, &order))
                    (price_offers::from_cost(&order, &asked, found.as_ref()))
                    (price_offers::discount(visit, &order, &asked))
                    (price_offers::exempt(visit, &order))
                }
            }
            div class="presses" { (link(Look::Plain, say::get_approval(), "", &format!("/o/{}/ask", order.number))) }
        }))
    })
    .await
}

/// Every entry the price would have: those kept, as they may have been changed, and those
/// that were filled in.
fn entries(order: &OrderView, rates: &[RateOffer]) -> Vec<Value> {
    let kept = order.price.iter().flat_map(|price| &price.open);
    let mut out: Vec<Value> = keyed(kept)
        .into_iter()
        .map(|(key, entry)| {
            let mut kept = entry.sent();
            kept["quantity"] = field(&format!("quantity-{key}"));
            kept["each"] = field(&format!("each-{key}"));
            when(&format!("keep-{key}"), kept)
        })
        .collect();
    // Whoever pays for its line pays for an entry, unless another is named.
    let of_line: Map<String, Value> = order
        .lines
        .iter()
        .map(|line| (line.line.clone(), json!(line.payer)))
        .collect();
    let payer = json!({ "$map": "payer", "to": { "customer": "customer", "warranty": "warranty", "goodwill": "goodwill" },
        "else": { "$map": "line", "to": of_line, "else": order.lines.first().map_or(json!("customer"), |line| json!(line.payer)) } });
    let only = match order.lines.as_slice() {
        [one] => json!(one.line),
        _ => field("line"),
    };
    out.push(when("hours", json!({ "line": only, "charge": "labour", "label": { "$text": "labour", "or": say::labour() }, "quantity": field("hours"), "each": hour(rates), "payer": payer })));
    out.push(when("each", json!({ "line": only, "charge": field("charge"), "label": { "$text": "what", "or": say::parts() }, "quantity": field("quantity"), "each": field("each"), "payer": payer })));
    out
}

/// The rate that was chosen among those the shop keeps, or the one that stands in its field.
fn hour(rates: &[RateOffer]) -> Value {
    if rates.is_empty() {
        return field("rate");
    }
    let named = rates.iter().enumerate();
    let to: Map<String, Value> = named
        .map(|(nth, rate)| (format!("rate-{nth}"), json!(rate.hour)))
        .collect();
    json!({ "$map": "rate-is", "to": to, "else": field("rate") })
}

/// The shop's own rate, and those it keeps; that of the grade of who works on it stands first.
fn rate_chips(rates: &[RateOffer], grade: Option<&str>) -> Markup {
    let named: Vec<(String, String)> = rates
        .iter()
        .enumerate()
        .map(|(nth, rate)| {
            (
                format!("rate-{nth}"),
                format!("{} {}", rate.name, rate.hour),
            )
        })
        .collect();
    let own = [("own", say::rate_as_above())];
    let chips_of: Vec<(&str, &str)> = own
        .into_iter()
        .chain(
            named
                .iter()
                .map(|(code, name)| (code.as_str(), name.as_str())),
        )
        .collect();
    let theirs = grade.and_then(|grade| {
        let mut all = rates.iter();
        all.position(|rate| rate.grade.as_deref() == Some(grade))
    });
    let chosen = theirs.map_or_else(|| "own".to_owned(), |nth| format!("rate-{nth}"));
    chips("rate-is", say::which_rate(), &chips_of, &chosen)
}

/// What a price set from this page has seen.
pub fn seen(order: &OrderView) -> Vec<&str> {
    let after = order.price.iter().flat_map(|price| &price.after);
    after.map(String::as_str).collect()
}

/// Entries, each with what its fields are called by: the same on a page made later, whatever
/// others have added or taken out by then, so that what was typed stays with its entry.
pub fn keyed<'a>(
    entries: impl Iterator<Item = &'a PriceEntryView>,
) -> Vec<(String, &'a PriceEntryView)> {
    let mut times: BTreeMap<String, usize> = BTreeMap::new();
    entries
        .map(|entry| {
            let words = entry.label_words.as_deref().map(|words| words.get(..12));
            let name = words.flatten().unwrap_or("nameless").to_owned();
            let nth = times.entry(name.clone()).or_default();
            *nth += 1;
            (format!("{name}-{nth}"), entry)
        })
        .collect()
}

/// What is on an invoice stays as it is.
fn on_invoices(order: &OrderView) -> Markup {
    let invoices = order.price.iter().flat_map(|price| &price.invoices);
    html! {
        @for invoice in invoices {
            p class="gap soft" { (say::on_invoice_stays(invoice.number.as_deref().unwrap_or(""), &invoice.day, &invoice.gross)) }
            @for entry in &invoice.entries {
                div class="row" { span class="what" { (entry.label) span class="soft line" { (entry.quantity) " × " (entry.each) } } span class="number" { (entry.amount) } }
            }
        }
    }
}

fn kept_entry(order: &OrderView, nth: &str, entry: &PriceEntryView) -> Markup {
    let line = order
        .lines
        .iter()
        .filter(|_| order.lines.len() > 1)
        .find(|line| Some(&line.line) == entry.line.as_ref());
    html! {
        label class="row" {
            input type="checkbox" name=(format!("keep-{nth}")) value="yes" checked;
            span class="what" {
                span class="strong line" { (entry.label) }
                @for less in &entry.less { span class="soft line" { (say::less(&less.amount)) @if let Some(percent) = &less.percent { " (" (percent) " %)" } ": " (less.why) } }
                span class="soft line" { (entry.quantity) " × " (entry.each) @if order.totals.len() > 1 { " · " (payer_pays(entry.payer)) } }
                @if let Some(line) = line { span class="soft line" { (line.complaint) } }
            }
            span class="number" { (entry.amount) }
        }
        details id=(format!("change-{nth}")) {
            summary class="row" { span class="what soft" { (say::change_count_or_price()) span class="skip" { ": " (entry.label) } } }
            (figure(&format!("quantity-{nth}"), say::how_many(), "", &entry.quantity_exact, true))
            (figure(&format!("each-{nth}"), say::unit_price(), "", &entry.each_exact, true))
        }
    }
}

/// The sorts of what is charged beside work, to choose from.
fn sorts() -> [(&'static str, &'static str); 7] {
    [
        ("part", say::sort_part()),
        ("test", say::sort_test()),
        ("sublet", say::sort_machine_work()),
        ("supplies", say::sort_supplies()),
        ("core", say::sort_core()),
        ("disposal", say::sort_disposal()),
        ("fee", say::sort_other()),
    ]
}

/// Which line what is added belongs to, and who pays for it.
fn belongs(order: &OrderView) -> Markup {
    let first = order.lines.first().map_or("", |line| line.line.as_str());
    let [customer, warranty, goodwill] = payers();
    let whose = [("line", say::as_its_line()), customer, warranty, goodwill];
    html! {
        @if order.lines.len() > 1 {
            fieldset {
                legend { (say::added_belongs_to()) }
                @for line in &order.lines {
                    label class="row" {
                        input type="radio" name="line" value=(line.line) checked[line.line == first];
                        span class="what" { span class="line" { (line.complaint) } span class="soft line" { (payer_pays(line.payer)) } }
                    }
                }
            }
        }
        (chips("payer", say::who_pays_for_it(), &whose, "line"))
    }
}
