//! A shop in which every word a person can type is an attempt to run a script.

use crate::http::Door;
use serde_json::{Value, json};
use shop::Device;

/// What a person might type who means no good, told apart by a mark.
pub const ATTEMPT: &str =
    "</title></textarea><script>alert(1)</script>\"'><img src=x onerror=alert(1)>&lt;b&gt;";

fn words(mark: &str) -> Value {
    Device::words(&format!("{mark} {ATTEMPT}"))
}

/// Sets the shop up, with one person and one stall.
pub fn set_up(door: &Door) {
    let shop = |fact| door.send("shop", "shop_fact", fact);
    shop(
        json!({ "set": { "settings": { "name": words("shop"), "rate": "100", "currency": "EUR", "minor_digits": 2,
        "taxes": [{ "name": "VAT", "percent": "20", "on": { "labour": true, "parts": true, "other": true } }],
        "units": "metric", "zone": "UTC" } } }),
    );
    shop(json!({ "joined": { "person": "ana", "name": words("ana"), "roles": ["owner"] } }));
    shop(json!({ "stall-added": { "stall": "stall-1", "name": words("stall"), "sort": "lift" } }));
}

fn declared(item: &str, is: (&str, &str), put_in: Value, count: u16) -> Value {
    let pieces: Vec<_> = (1..=count)
        .map(|position| json!({ "position": position, "length": "16" }))
        .collect();
    let (kind, system) = is;
    json!({ "declared": { "item": { "id": item, "kind": kind, "system": system, "zone": "below", "label": words(item),
        "size": "M6x16", "pieces": pieces, "pattern": { "passes": ["8 Nm"], "sequence": [1], "source": words("source") },
        "spent": false, "may_miss": { "up_to": 1, "never_at": [1] }, "put_in": put_in, "holds": "4 L" } } })
}

fn moved(item: &str, at: &[u16], state: &str) -> Value {
    json!({ "item": item, "at": at, "after": [], "left": { "state": state, "piece": "original" }, "container": "tray A" })
}

/// One order with something of every sort on it.
pub fn an_order(door: &Door, id: &str) {
    let stream = format!("order:{id}");
    door.send(
        "customer:c",
        "customer_fact",
        json!({ "declared": { "texts": { "name": words("customer"), "phone": words("phone") } } }),
    );
    door.send(
        "vehicle:v",
        "vehicle_fact",
        json!({ "declared": { "texts": {
        "label": words("vehicle"), "plate": words("plate"), "vin": words("vin") },
        "vin_read": "kept-anyway", "rust": 2, "customer": "c" } }),
    );
    door.send(
        "vehicle:v",
        "vehicle_fact",
        json!({ "differs": { "id": "d", "order": "earlier", "item": words("item"), "at": [1],
        "what": "insert", "size": "M8", "torque": "22 Nm", "words": words("difference") } }),
    );
    door.send(
        &stream,
        "request",
        json!({ "open": { "vehicle": "v", "customer": "c" } }),
    );
    let tell = |fact: Value| door.send(&stream, "fact", fact);
    tell(
        json!({ "line-opened": { "line": "line-1", "complaint": words("complaint"), "payer": "customer" } }),
    );
    tell(
        json!({ "line-worded": { "line": "line-1", "text": "cause", "words": words("cause"), "after": [] } }),
    );
    tell(json!({ "keys": { "step": "taken", "words": words("keys") } }));
    tell(
        json!({ "observed": { "id": "n", "zone": "outside", "what": "damage", "words": words("noted"), "photos": [] } }),
    );
    tell(json!({ "stood": { "place": { "stall": "stall-1" } } }));
    tell(json!({ "assigned": { "person": "ana" } }));
    tell(json!({ "promised": { "at": "2026-11-25T16:00:00Z" } }));
    for (item, is, put_in, count) in [
        ("screws", ("fasteners", "body"), Value::Null, 6),
        ("tray", ("cover", "body"), Value::Null, 1),
        ("oil", ("fluid", "oil"), Value::Null, 1),
        ("plug", ("connector", "battery"), Value::Null, 1),
        ("rag", ("put-in", "oil"), json!("rag"), 1),
        ("nuts", ("fasteners", "wheels"), Value::Null, 5),
    ] {
        tell(declared(item, is, put_in, count));
    }
    tell(
        json!({ "moved": { "stage": "s", "moves": [moved("screws", &[1, 2, 3, 4, 5, 6], "out"), moved("tray", &[1], "off"),
        moved("oil", &[1], "low"), moved("plug", &[1], "unplugged"), moved("rag", &[1], "inside"), moved("nuts", &[1, 2], "out")] } }),
    );
    // Something that was never described, or not yet.
    tell(json!({ "moved": { "stage": null, "moves": [moved("nameless", &[1], "off")] } }));
    // Somebody else saw nothing of that: people disagree about the nuts.
    tell(json!({ "moved": { "stage": null, "moves": [moved("nuts", &[2], "tight")] } }));
    tell(
        json!({ "drained": { "item": "oil", "amount": "4 L", "fate": "kept", "temperature": null } }),
    );
    tell(
        json!({ "poured": { "item": "oil", "amount": "1 L", "what": words("poured"), "temperature": null } }),
    );
    tell(
        json!({ "work-due": { "id": "w", "item": null, "words": words("due"), "until": { "before": "hand-over" } } }),
    );
    tell(
        json!({ "snag-found": { "snag": "g", "item": "screws", "at": [3], "what": "snapped", "sits": "below",
        "words": words("snag"), "photos": [], "moves": [] } }),
    );
    tell(
        json!({ "part-needed": { "part": "p", "line": "line-1", "item": "tray", "label": words("part"), "number": "A-1",
        "quantity": "2", "cost": "1", "price": "2", "core": null, "has_old": true } }),
    );
    tell(
        json!({ "part-stepped": { "part": "p", "quantity": "1", "step": "ordered", "due": "2026-11-26", "words": words("from") } }),
    );
    tell(
        json!({ "sublet-out": { "sublet": "x", "line": null, "items": [], "what": words("sublet"), "to": words("to"), "due": null, "cost": null } }),
    );
    tell(
        json!({ "consented": { "step": "repair", "payer": "customer", "lines": [], "agreed": true, "amount": "50", "tax_included": false,
        "way": "phone", "person": words("person"), "said": words("said"), "number_called": words("number"), "signature": null, "after": [] } }),
    );
    tell(json!({ "paid": { "payer": "customer", "amount": "10", "by": "cash", "deposit": true } }));
    door.send(&stream, "request", json!({ "price": { "entries": [{ "line": "line-1", "charge": "labour", "label": words("entry"),
        "quantity": "1.5", "each": "100", "payer": "customer" }] } }));
    door.send(&stream, "request", json!({ "waive": { "gate": "hand-over", "reason": "owed:own:w", "figure": "0", "words": words("waived") } }));
}
