//! The walk-round: what was found before anybody touched anything.

use super::choices::ZONES;
use super::{Shown, order_of, show};
use crate::State;
use crate::tap::{Look, button, chips, field, link, new, order_fact, text};
use axum::extract::{self, Path};
use axum::http::HeaderMap;
use axum::response::Response;
use maud::html;
use serde_json::json;

/// What may be noted, as code and word.
const NOTED: &[(&str, &str)] = &[
    ("damage", "scratch, dent"),
    ("warning-lamp", "lamp lit"),
    ("missing", "missing"),
    ("earlier-repair", "repaired before"),
    ("locking-key", "locking-nut key"),
    ("leak", "leak, wet"),
    ("other", "other"),
];

pub async fn walk(
    extract::State(state): extract::State<State>,
    headers: HeaderMap,
    Path(number): Path<String>,
) -> Response {
    show(state, headers, move |ask| {
        let order = order_of(ask, &number)?;
        let noted: Vec<_> = order
            .story
            .iter()
            .filter(|line| !line.undone && line.text.starts_with("Noted at the walk-round"))
            .collect();
        let note = order_fact(&order.order, json!({ "observed": {
            "id": new("note"), "zone": field("zone"), "what": field("what"),
            "words": text("words"), "photos": [] } }));
        let missing = missing_item(&order.order);
        Ok(Shown::of(&order, "Walk-round", html! {
            h1 { "Walk round it first" }
            p class="gap" { "What is already missing, broken or lit is not ours later." }
            @for line in &noted {
                div class="row" { span class="mark half" {} span class="what" { (line.text.trim_start_matches("Noted at the walk-round: ")) } span class="soft" { (line.at) } }
            }
            form class="narrow" {
                (chips("what", "What", NOTED, "damage"))
                (chips("zone", "Where", ZONES, "outside"))
                (crate::tap::required("words", "In a few words", "", ""))
                div class="presses" { (button(Look::Plain, "Note it", "", &[note], None)) }
            }
            details id="missing" {
                summary class="row" { span class="strong" { "A fastener or clip is missing" } }
                form class="narrow" {
                    (crate::tap::required("label", "What", "such as tray clips", ""))
                    (crate::tap::required("count", "How many there should be", "", "8"))
                    (crate::tap::required("at", "Which one is missing", "its number", "1"))
                    (chips("zone", "Where", ZONES, "below"))
                    div class="presses" { (button(Look::Plain, "Note it as found", "", &missing, None)) }
                }
            }
            div class="presses low" {
                (link(Look::Confirm, "Round it", &super::count(noted.len(), "thing noted", "things noted"), &format!("/o/{}", order.number)))
            }
        }))
    })
    .await
}

/// A group of clips with one found missing: its home is then as found.
fn missing_item(order: &str) -> Vec<serde_json::Value> {
    vec![
        order_fact(
            order,
            json!({ "declared": { "item": {
            "id": new("item"), "kind": "clips", "system": "body", "zone": field("zone"),
            "label": text("label"), "size": null, "pieces": { "$pieces": "count" },
            "pattern": null, "spent": false, "may_miss": null, "put_in": null, "holds": null } } }),
        ),
        order_fact(
            order,
            json!({ "found": { "moves": [{
            "item": new("item"), "at": [{ "$number": "at" }], "after": [],
            "left": { "state": "out", "piece": "original" }, "container": null }] } }),
        ),
    ]
}
