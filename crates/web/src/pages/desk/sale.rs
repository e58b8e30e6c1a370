//! A sale over the counter: no vehicle, nothing to walk round, a bill and the money.

use crate::State;
use crate::pages::{Shown, show};
use crate::phrases::desk as say;
use crate::tap::{Look, button, field, figure, input, new, required, text, when, words};
use axum::extract;
use axum::http::HeaderMap;
use axum::response::Response;
use maud::{Markup, html};
use serde_json::{Value, json};
use shop::repair::{CustomerId, VehicleId};

/// The name that whatever is sold over the counter goes under, in the record.
pub const COUNTER: &str = "counter";
/// So many things fit on the form.
const ROWS: usize = 3;

pub async fn sale(extract::State(state): extract::State<State>, headers: HeaderMap) -> Response {
    show(state, headers, |visit| {
        let world = visit.snap.world();
        let mut commands = Vec::new();
        if world.customer(&CustomerId::new(COUNTER))?.is_blank() {
            commands.push(json!({ "stream": "customer:counter", "customer_fact": { "declared": {
                "texts": { "name": words(say::counter_sale()) } } } }));
        }
        if world.vehicle(&VehicleId::new(COUNTER))?.is_blank() {
            commands.push(json!({ "stream": "vehicle:counter", "vehicle_fact": { "declared": {
                "texts": { "label": words(say::over_the_counter_record()) }, "vin_read": "none-readable", "rust": null,
                "customer": COUNTER } } }));
        }
        commands.extend(sold());
        Ok(Shown::new(say::sale(), html! {
            h1 { (say::sale_over_counter()) }
            form class="narrow" {
                @for nth in 0..ROWS { (row(nth)) }
                (input("buyer", say::buyer(), say::buyer_hint(), ""))
                (input("phone", say::telephone(), "", ""))
                div class="presses low" {
                    (button(Look::Confirm, say::to_the_bill(), "", &commands, Some("/order/{order}?to=hand-over")))
                }
            }
        }))
    })
    .await
}

fn row(nth: usize) -> Markup {
    let name = |what: &str| format!("{what}-{nth}");
    html! {
        @if nth == 0 {
            (required(&name("what"), say::what(), say::sale_hint(), ""))
            (figure(&name("each"), say::price_of_one(), "", "", true))
            (figure(&name("count"), say::how_many(), "", "1", true))
        } @else {
            details id=(name("more")) {
                summary class="row" { span class="what" { (say::one_thing_more()) } }
                (input(&name("what"), say::what(), "", ""))
                (figure(&name("each"), say::price_of_one(), "", "", false))
                (figure(&name("count"), say::how_many(), "", "1", false))
            }
        }
    }
}

/// The order of a sale: opened, priced, agreed to where it stands, and said what was done.
fn sold() -> Vec<Value> {
    let order = |part: &str, content: Value| json!({ "stream": { "$join": ["order:", new("order")] }, part: content });
    let fact = |content: Value| order("fact", content);
    let entries: Vec<Value> = (0..ROWS)
        .map(|nth| {
            let what = format!("what-{nth}");
            when(&what, json!({ "line": new("line"), "payer": "customer", "charge": "part", "label": text(&what),
                "quantity": field(&format!("count-{nth}")), "each": field(&format!("each-{nth}")) }))
        })
        .collect();
    let sums: Vec<[String; 2]> = (0..ROWS)
        .map(|nth| [format!("each-{nth}"), format!("count-{nth}")])
        .collect();
    let opened = |customer: Value| {
        order(
            "request",
            json!({ "open": { "vehicle": COUNTER, "customer": customer } }),
        )
    };
    let worded = |which: &str| {
        fact(
            json!({ "line-worded": { "line": new("line"), "text": which, "words": words(say::sold_over_counter()), "after": [] } }),
        )
    };
    vec![
        when(
            "buyer",
            json!({ "stream": { "$join": ["customer:", new("buyer")] }, "customer_fact": { "declared": {
                "texts": { "name": text("buyer"), "phone": when("phone", text("phone")) } } } }),
        ),
        when("buyer", opened(new("buyer"))),
        json!({ "$when": "buyer", "is": [""], "then": opened(json!(COUNTER)) }),
        fact(
            json!({ "line-opened": { "line": new("line"), "complaint": text("what-0"), "payer": "customer" } }),
        ),
        worded("cause"),
        worded("correction"),
        order("request", json!({ "add-to-price": { "entries": entries } })),
        // Whoever buys it agrees to its price by buying it.
        fact(json!({ "consented": {
            "step": "repair", "payer": "customer", "lines": [], "agreed": true, "amount": { "$sum": sums },
            "tax_included": false, "way": "in-person", "person": text("buyer"), "said": null,
            "number_called": null, "signature": null, "after": [] } })),
    ]
}
