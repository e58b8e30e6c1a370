//! A price from a plan: its minutes at the labour rate, and what it renews.

use super::query::{Query, address};
use super::{found_by, picked};
use crate::State;
use crate::pages::desk::price::{keyed, seen};
use crate::pages::{Shown, order_of, show};
use crate::phrases::vehicle as say;
use crate::tap::{Look, button, field, figure, link, order_request, when, words};
use axum::extract::{self, Path, RawQuery};
use axum::http::HeaderMap;
use axum::response::Response;
use maud::html;
use serde_json::{Value, json};
use shop::Trouble;
use shop::planning::{Asked, hours, hours_exact, in_minutes};
use shop::repair::AimIs;

/// The work in words for the customer.
fn work_words(asked: &Asked, renewed: &[String]) -> String {
    let names: Vec<String> = asked.targets.iter().map(ToString::to_string).collect();
    if asked.aim != AimIs::Reach || names.is_empty() {
        return super::aim_words(asked);
    }
    match names.iter().all(|name| renewed.contains(name)) {
        true => say::renewing(names.join(", ")),
        false => say::work_on(names.join(", ")),
    }
}

pub async fn price(
    extract::State(state): extract::State<State>,
    headers: HeaderMap,
    Path(number): Path<String>,
    RawQuery(query): RawQuery,
) -> Response {
    show(state, headers, move |visit| {
        let order = order_of(visit, &number)?;
        let query = Query::read(&query.unwrap_or_default());
        let (map, version) = picked(visit, &order, &query)?
            .ok_or_else(|| Trouble::not_found(say::no_map_is_picked()))?;
        let on = found_by(visit, &order, &map, version, &query)?;
        let found = on.whole(visit.snap)?;
        let rate = {
            let world = visit.snap.world();
            let settings = world.shop.settings();
            settings.map(|settings| settings.rate.to_string()).unwrap_or_default()
        };
        let minutes = found.plan.minutes;
        let label = work_words(&on.asked, &found.renewed);
        let label = format!("{label}: {} min", in_minutes(minutes));
        let kept = keyed(order.price.iter().flat_map(|price| &price.open));
        let mut entries: Vec<Value> = kept
            .iter()
            .map(|(key, entry)| when(&format!("keep-{key}"), entry.sent()))
            .collect();
        entries.push(when("labour", json!({
            "line": null, "charge": "labour", "label": words(&label), "quantity": hours_exact(minutes),
            "each": field("rate"), "payer": "customer" })));
        entries.extend(found.renewed.iter().enumerate().map(|(nth, part)| {
            when(&format!("part-{nth}"), json!({
                "line": null, "charge": "part", "label": words(part), "quantity": "1",
                "each": field(&format!("part-{nth}")), "payer": "customer" }))
        }));
        let mut set = super::taken_over(&order, &on);
        set.push(order_request(&order.order, json!({ "price": { "entries": entries, "after": seen(&order) } })));
        let agreed = order.consents.iter().any(|consent| consent.agreed);
        let next = if agreed { "desk" } else { "ask?then=stage" };
        Ok(Shown::of(&order, say::price_of_the_plan(), html! {
            h1 { (say::price_of_the_plan()) }
            form class="narrow" {
                @if !kept.is_empty() {
                    h2 { (say::priced_so_far()) }
                    @for (key, entry) in &kept {
                        label class="row" {
                            input type="checkbox" name=(format!("keep-{key}")) value="yes" checked;
                            span class="what" { span class="line" { (entry.label) } span class="soft line" { (entry.quantity) " × " (entry.each) } }
                            span class="number" { (entry.amount) }
                        }
                    }
                }
                h2 { (say::labour()) }
                label class="row" {
                    input type="checkbox" name="labour" value="yes" checked;
                    span class="what" { span class="strong line" { (label) } span class="soft line" { (say::hours(phrases::number(&hours(minutes)))) } }
                }
                (figure("rate", say::an_hour_before_tax(), "", &rate, false))
                @if !found.renewed.is_empty() {
                    h2 { (say::parts_it_renews()) }
                    p class="soft" { (say::give_a_price_or_leave_empty()) }
                    @for (nth, part) in found.renewed.iter().enumerate() { (figure(&format!("part-{nth}"), part, say::one_costs_before_tax(), "", false)) }
                }
                div class="presses two low" {
                    (button(Look::Confirm, say::set_the_price(), if on.current { "" } else { say::and_work_by_this_plan() }, &set, Some(&format!("/o/{}/{next}", order.number))))
                    (link(Look::Plain, say::the_plan(), "", &address(order.number, on.kept.id.as_str(), &on.asked)))
                }
            }
        }))
    })
    .await
}
