//! What is offered beside the price: jobs at a fixed price, a price from what a thing costs,
//! supplies and fees, discounts.

use super::price::{keyed, seen};
use crate::pages::Visit;
use crate::phrases::desk as say;
use crate::tap::{Look, button, field, figure, order_request, required, text, when, words};
use maud::{Markup, PreEscaped, html};
use serde::Deserialize;
use serde_json::{Value, json};
use shop::Trouble;
use shop::offers::{self, PriceOffer};
use shop::record::v1::codes::PayerForm;
use shop::repair::OrderId;
use shop::view::OrderView;

/// What was asked on the page before.
#[derive(Debug, Default, Deserialize)]
pub struct Asked {
    /// What something costs us.
    #[serde(default)]
    cost: String,
    /// Whether it is work sent out.
    #[serde(default)]
    sublet: bool,
    /// What is to be taken off: a per cent or an amount.
    #[serde(default)]
    off: String,
    /// Of what: an entry as the page calls it, or the whole order.
    #[serde(default)]
    of: String,
}

impl Asked {
    /// The price that follows from the cost that was asked for.
    pub fn price(&self, visit: &Visit<'_>) -> Option<Result<PriceOffer, Trouble>> {
        let cost = self.cost.trim();
        (!cost.is_empty()).then(|| offers::from_cost(visit.snap, cost, self.sublet))
    }
}

fn told(trouble: &Trouble) -> Markup {
    html! { p class="no gap" { (shop::say::capital(&trouble.place)) ": " (trouble.what) ". " (shop::say::capital(&trouble.mend)) "." } }
}

/// How an offer was found, to be opened.
pub fn how(id: &str, working: &str) -> Markup {
    html! {
        details id=(id) {
            summary class="row" { span class="soft" { (say::how_found()) } }
            div class="working" { (PreEscaped(working)) }
        }
    }
}

/// Whoever pays for the first line pays for what is offered, and it belongs to a line where
/// there is but one.
fn belonging(order: &OrderView) -> (Value, Value) {
    let line = match order.lines.as_slice() {
        [one] => json!(one.line),
        _ => Value::Null,
    };
    let payer = order
        .lines
        .first()
        .map_or(PayerForm::Customer, |line| line.payer);
    (line, json!(payer))
}

fn add(order: &OrderView, entries: &[Value]) -> Value {
    let (line, payer) = belonging(order);
    let entries: Vec<Value> = entries
        .iter()
        .map(|entry| {
            let mut entry = entry.clone();
            entry["line"] = line.clone();
            entry["payer"] = payer.clone();
            entry
        })
        .collect();
    order_request(
        &order.order,
        json!({ "add-to-price": { "entries": entries } }),
    )
}

/// The jobs that the shop keeps, each on the price by one tap.
pub fn jobs(visit: &Visit<'_>, order: &OrderView) -> Markup {
    let jobs = offers::jobs(visit.snap);
    html! {
        @if !jobs.is_empty() { h2 { (say::fixed_price_jobs()) } }
        @for job in &jobs {
            form {
                div class="presses" { (button(Look::Plain, &job.name, &job.price.to_string(), &[add(order, &job.entries)], None)) }
                @if !job.parts.is_empty() { p class="soft" { (say::with_parts(job.parts.join(", "))) } }
            }
        }
    }
}

/// Shop supplies as the rule has them, where none are on the price yet.
pub fn supplies(visit: &Visit<'_>, order: &OrderView) -> Markup {
    let open = order.price.iter().flat_map(|price| &price.open);
    let charged = open
        .into_iter()
        .any(|entry| entry.charge == shop::record::v1::codes::ChargeForm::Supplies);
    let offered = offers::supplies(visit.snap, &OrderId::new(order.order.clone()));
    html! {
        @if let Some(offer) = offered.filter(|_| !charged) {
            @let entry = json!({ "charge": "supplies", "label": words(say::shop_supplies()), "quantity": "1", "each": offer.price });
            form { div class="presses" { (button(Look::Plain, say::shop_supplies(), &offer.price.to_string(), &[add(order, &[entry])], None)) } }
            (how("supplies-found", &offer.working_html))
        }
    }
}

/// Fees for getting rid of things: how many of each.
pub fn disposal(visit: &Visit<'_>, order: &OrderView) -> Markup {
    let fees = offers::disposal(visit.snap);
    let entries: Vec<Value> = fees
        .iter()
        .enumerate()
        .map(|(nth, fee)| {
            let (line, payer) = belonging(order);
            let name = format!("fee-{nth}");
            when(&name, json!({ "line": line, "payer": payer, "charge": "disposal", "label": words(&say::disposal_of(&fee.of)),
                "quantity": field(&name), "each": fee.each }))
        })
        .collect();
    let add = order_request(
        &order.order,
        json!({ "add-to-price": { "entries": entries } }),
    );
    html! {
        @if !fees.is_empty() {
            h2 { (say::disposal()) }
            form {
                @for (nth, fee) in fees.iter().enumerate() {
                    (figure(&format!("fee-{nth}"), &say::how_many_of(&fee.of), &say::each_costs(&fee.each), "", false))
                }
                div class="presses" { (button(Look::Plain, say::put_on_price(), "", &[add], None)) }
            }
        }
    }
}

/// Asks what a thing costs us, and says what it is sold for.
pub fn from_cost(
    order: &OrderView,
    asked: &Asked,
    found: Option<&Result<PriceOffer, Trouble>>,
) -> Markup {
    html! {
        details id="from-cost" open[found.is_some()] {
            summary class="row" { span class="what" { (say::price_from_cost()) } }
            form method="get" action=(format!("/o/{}/price", order.number)) {
                (figure("cost", say::it_costs_us(), say::before_tax(), &offers::plain_number(&asked.cost), true))
                label class="row" { input type="checkbox" name="sublet" value="true" checked[asked.sublet]; span class="what" { (say::it_is_machine_work()) } }
                div class="presses" { button class="press" type="submit" { (say::work_out_price()) } }
            }
            @match found {
                Some(Ok(offer)) => {
                    p class="yes gap" { (say::sold_for(&offer.price)) }
                    (how("cost-found", &offer.working_html))
                },
                Some(Err(trouble)) => (told(trouble)),
                None => {},
            }
        }
    }
}

/// A discount: asked for first, and taken off by a tap that says why.
pub fn discount(visit: &Visit<'_>, order: &OrderView, asked: &Asked) -> Markup {
    let open = || order.price.iter().flat_map(|price| &price.open);
    let keyed = keyed(open());
    if keyed.is_empty() {
        return html! {};
    }
    let nth = keyed.iter().position(|(key, _)| *key == asked.of);
    let off = (!asked.off.trim().is_empty()).then(|| {
        let id = OrderId::new(order.order.clone());
        offers::discount(visit.snap, &id, &asked.off, nth)
    });
    html! {
        details id="discount" open[off.is_some()] {
            summary class="row" { span class="what" { (say::a_discount()) } }
            form method="get" action=(format!("/o/{}/price", order.number)) {
                (required("off", say::how_much(), say::percent_or_amount(), &asked.off))
                fieldset {
                    legend { (say::off_what()) }
                    label class="row" { input type="radio" name="of" value="order" checked[nth.is_none()]; span { (say::off_all()) } }
                    @for (key, entry) in &keyed {
                        label class="row" { input type="radio" name="of" value=(key) checked[*key == asked.of]; span class="what" { (entry.label) } span class="number" { (entry.amount) } }
                    }
                }
                div class="presses" { button class="press" type="submit" { (say::work_it_out()) } }
            }
            @match off {
                Some(Ok(offer)) => {
                    @let entries: Vec<Value> = keyed.iter().zip(&offer.less).map(|((_, entry), less)| {
                        let mut sent = entry.sent();
                        sent["less"] = with_reason(less);
                        sent
                    }).collect();
                    @let set = order_request(&order.order, json!({ "price": { "entries": entries, "after": seen(order) } }));
                    p class="gap strong" { (say::amount_off(&offer.off)) }
                    @for ((_, entry), left) in keyed.iter().zip(&offer.amounts) {
                        @if *left != entry.amount {
                            div class="row" { span class="what" { (entry.label) span class="soft line" { (say::now_amount(&entry.amount)) } } span class="number" { (left) } }
                        }
                    }
                    form {
                        (required("why", say::why(), say::stands_on_papers(), ""))
                        div class="presses" { (button(Look::Plain, say::take_it_off(), &offer.off.to_string(), &[set], Some(&format!("/o/{}/price", order.number)))) }
                    }
                },
                Some(Err(trouble)) => (told(&trouble)),
                None => {},
            }
        }
    }
}

/// Whether the customer is exempt from taxes: told with their number.
pub fn exempt(visit: &Visit<'_>, order: &OrderView) -> Markup {
    let Some(known) = offers::exemption(visit.snap, &OrderId::new(order.order.clone())) else {
        return html! {};
    };
    let told = |number: Value| {
        json!({ "stream": format!("customer:{}", known.customer),
            "customer_fact": { "exempted": { "number": number, "taxes": [], "after": known.after } } })
    };
    html! {
        details id="exempt" {
            summary class="row" { span class="what" { @if let Some(number) = &known.number { (say::exempt_by(number)) } @else { (say::customer_is_exempt()) } } }
            form {
                (required("exempt", say::exemption_number(), say::stands_on_invoice(), known.number.as_deref().unwrap_or("")))
                div class="presses" { (button(Look::Plain, say::exempt(), say::holds_from_now(), &[told(text("exempt"))], None)) }
            }
            @if known.number.is_some() {
                form { div class="presses" { (button(Look::Plain, say::not_exempt(), "", &[told(Value::Null)], None)) } }
            }
        }
    }
}

/// What is new bears the reason that is typed.
fn with_reason(less: &[Value]) -> Value {
    less.iter()
        .map(|less| {
            let mut less = less.clone();
            if less["why"].is_null() {
                less["why"] = text("why");
            }
            less
        })
        .collect()
}
