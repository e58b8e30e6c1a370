//! Orders larger than any shop has: 150 items of 400 pieces, and as many facts as wanted. The
//! facts go the way that a page's taps go, through the service.

use jiff::Timestamp;
use serde_json::{Value, json};
use shop::{Caller, Device, Service};
use std::path::Path;
use std::sync::Arc;
use store::Sqlite;

const ITEMS: usize = 150;
const PIECES: usize = 400;

/// Makes a shop with one order for each of these numbers of facts; they are numbered from 1001
/// on, in this sequence.
pub fn write(to: &Path, facts: &[usize]) {
    let store = Arc::new(Sqlite::open(to).unwrap());
    let service = Service::open(store, "shop", Arc::new(Timestamp::now)).unwrap();
    let mut teller = Teller {
        service,
        device: Device::new("bench", "nuria"),
    };
    teller.set_up();
    for (nth, facts) in facts.iter().enumerate() {
        teller.order(&format!("order:large-{nth}"), *facts);
    }
    teller.service.save_index().unwrap();
    println!("{}", json!({ "orders": facts.len() }));
}

struct Teller {
    service: Service,
    device: Device,
}

impl Teller {
    fn send(&mut self, stream: &str, part: &str, content: Value) -> Option<String> {
        let now = self.service.now();
        let command = self.device.command(stream, now, part, content);
        let name = command["command_id"].as_str().map(str::to_owned);
        self.service.command(&Caller::program(), command).unwrap();
        name
    }

    fn set_up(&mut self) {
        let settings = json!({ "name": Device::words("Bench"), "rate": "100", "currency": "EUR",
            "minor_digits": 2, "taxes": [], "units": "metric", "zone": "Europe/Lisbon" });
        let joined =
            json!({ "person": "nuria", "name": Device::words("Nuria"), "roles": ["owner"] });
        let customer = json!({ "texts": { "name": Device::words("C") } });
        let vehicle = json!({ "texts": { "label": Device::words("V") }, "vin_read": "none-readable",
            "rust": null, "customer": "c" });
        for (stream, part, content) in [
            (
                "shop",
                "shop_fact",
                json!({ "set": { "settings": settings } }),
            ),
            ("shop", "shop_fact", json!({ "joined": joined })),
            (
                "customer:c",
                "customer_fact",
                json!({ "declared": customer }),
            ),
            ("vehicle:v", "vehicle_fact", json!({ "declared": vehicle })),
        ] {
            self.send(stream, part, content);
        }
    }

    fn order(&mut self, stream: &str, facts: usize) {
        let open = json!({ "open": { "vehicle": "v", "customer": "c" } });
        self.send(stream, "request", open);
        for item in 0..ITEMS {
            self.send(stream, "fact", declared(item));
        }
        // Each item goes to and fro, and every move names the one before it.
        let mut last: Vec<Option<String>> = vec![None; ITEMS];
        for nth in 0..facts.saturating_sub(ITEMS) {
            let item = nth % ITEMS;
            let away = (nth / ITEMS).is_multiple_of(2);
            last[item] = self.send(stream, "fact", moved(item, away, last[item].as_deref()));
        }
    }
}

/// How many pieces an item has: some two, some four.
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
    json!({ "declared": { "item": { "id": format!("item-{item}"), "kind": kind, "system": system,
        "zone": "above", "label": Device::words(&format!("thing {item}")), "size": null,
        "pieces": pieces, "pattern": null, "spent": false, "may_miss": null, "put_in": null,
        "holds": null } } })
}

fn moved(item: usize, away: bool, after: Option<&str>) -> Value {
    let state = match (item % 5, away) {
        (0..=2, true) => "out",
        (0 | 1, false) => "tight",
        (3, true) => "unplugged",
        (3, false) => "plugged",
        (_, true) => "off",
        (_, false) => "on",
    };
    let at: Vec<usize> = (1..=pieces(item)).collect();
    let after: Vec<Value> = after
        .iter()
        .map(|command| json!({ "command": command, "nth": 0 }))
        .collect();
    json!({ "moved": { "stage": null, "moves": [{ "item": format!("item-{item}"), "at": at,
        "after": after, "left": { "state": state, "piece": "original" }, "container": null }] } })
}
