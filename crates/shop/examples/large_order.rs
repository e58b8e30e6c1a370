//! How long the pages of a large order take to read: 150 items of 400 pieces and 3,000
//! facts, or as many facts as the first argument says. Prints one line of JSON, in
//! thousandths of a second.

#![allow(clippy::unwrap_used, reason = "a measurement")]
#![expect(clippy::print_stdout, reason = "this is what it does")]

use jiff::Timestamp;
use serde_json::{Value, json};
use shop::{Caller, Device, Service, view};
use std::sync::Arc;
use std::time::Instant;
use store::Memory;

const ITEMS: usize = 150;
const PIECES: usize = 400;

struct Teller {
    service: Service,
    device: Device,
}

impl Teller {
    fn send(&mut self, stream: &str, part: &str, content: Value) {
        let now = self.service.now();
        let command = self.device.command(stream, now, part, content);
        self.service.command(&Caller::program(), command).unwrap();
    }

    fn tell(&mut self, fact: Value) {
        self.send("order:large", "fact", fact);
    }
}

/// How many pieces an item has: some one, some a dozen.
fn pieces(item: usize) -> usize {
    let share = PIECES / ITEMS;
    if item.is_multiple_of(3) {
        share + 2
    } else {
        share
    }
}

fn declared(item: usize) -> Value {
    let (kind, system) = match item % 5 {
        0 => ("fasteners", "engine"),
        1 => ("fasteners", "brakes"),
        2 => ("clips", "body"),
        3 => ("connector", "electrical"),
        _ => ("part", "cooling"),
    };
    let pieces: Vec<Value> = (1..=pieces(item))
        .map(|position| json!({ "position": position, "length": null }))
        .collect();
    json!({ "declared": { "item": { "id": format!("item-{item}"), "kind": kind, "system": system, "zone": "above",
        "label": Device::words(&format!("thing {item}")), "size": null, "pieces": pieces, "pattern": null,
        "spent": false, "may_miss": null, "put_in": null, "holds": null } } })
}

fn main() {
    let facts: usize = std::env::args()
        .nth(1)
        .map_or(3_000, |text| text.parse().unwrap());
    let now: Timestamp = "2026-11-25T08:00:00Z".parse().unwrap();
    let service = Service::open(Arc::new(Memory::new()), "shop", Arc::new(move || now)).unwrap();
    let mut teller = Teller {
        service,
        device: Device::new("bench", "ana"),
    };
    teller.send("shop", "shop_fact", json!({ "set": { "settings": { "name": Device::words("Bench"), "rate": "100",
        "currency": "EUR", "minor_digits": 2, "taxes": [], "units": "metric", "zone": "Europe/Lisbon" } } }));
    teller.send(
        "shop",
        "shop_fact",
        json!({ "joined": { "person": "ana", "name": Device::words("Ana"), "roles": ["owner"] } }),
    );
    teller.send(
        "customer:c",
        "customer_fact",
        json!({ "declared": { "texts": { "name": Device::words("C") } } }),
    );
    teller.send(
        "vehicle:v",
        "vehicle_fact",
        json!({ "declared": { "texts": { "label": Device::words("V") },
        "vin_read": "none-readable", "rust": null, "customer": "c" } }),
    );
    teller.send(
        "order:large",
        "request",
        json!({ "open": { "vehicle": "v", "customer": "c" } }),
    );
    for item in 0..ITEMS {
        teller.tell(declared(item));
    }
    // Each item goes to and fro, and every move names the one before it.
    let mut last: Vec<Option<String>> = vec![None; ITEMS];
    for nth in 0..facts.saturating_sub(ITEMS) {
        let item = nth % ITEMS;
        let away = (nth / ITEMS).is_multiple_of(2);
        let state = match (item % 5, away) {
            (0 | 1, true) | (2, true) => "out",
            (0 | 1, false) => "tight",
            (3, true) => "unplugged",
            (3, false) => "plugged",
            (2, false) => "on",
            (_, true) => "off",
            (_, false) => "on",
        };
        let at: Vec<usize> = (1..=pieces(item)).collect();
        let after: Vec<Value> = last[item]
            .iter()
            .map(|command| json!({ "command": command, "nth": 0 }))
            .collect();
        let now = teller.service.now();
        let fact = json!({ "moved": { "stage": null, "moves": [{ "item": format!("item-{item}"), "at": at, "after": after,
            "left": { "state": state, "piece": "original" }, "container": null }] } });
        let command = teller.device.command("order:large", now, "fact", fact);
        last[item] = command["command_id"].as_str().map(str::to_owned);
        teller.service.command(&Caller::program(), command).unwrap();
    }
    let service = &teller.service;
    let timed = |what: &dyn Fn()| {
        let mut best = f64::MAX;
        for _ in 0..5 {
            let begun = Instant::now();
            what();
            best = best.min(begun.elapsed().as_secs_f64() * 1e3);
        }
        best
    };
    let order = timed(&|| {
        drop(
            service
                .look(&Caller::program(), |snap| view::order(snap, 1001))
                .unwrap(),
        );
    });
    let floor = timed(&|| drop(service.look(&Caller::program(), view::rows_here).unwrap()));
    println!(
        "{}",
        json!({ "facts": facts, "order_millis": order, "floor_millis": floor })
    );
}
