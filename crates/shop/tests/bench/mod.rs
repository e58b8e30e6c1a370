//! A shop on a store in memory, people with devices, and a clock that stands still.

#![allow(dead_code, reason = "each test file uses its own part")]
#![allow(clippy::unwrap_used, reason = "a test fails by panicking")]

pub mod between;

use jiff::{SignedDuration, Timestamp};
use seen::order;
use serde_json::{Value, json};
use shop::repair::OrderId;
use shop::view::OrderView;
use shop::{Accepted, Caller, Device, Service, Snapshot, Trouble};
use std::sync::{Arc, Mutex};
use store::{Memory, Store};

pub const LOG: &str = "shop";

/// The clock of a test: it moves when it is told to.
#[derive(Clone)]
pub struct Clock(Arc<Mutex<Timestamp>>);

impl Clock {
    pub fn new() -> Self {
        Self(Arc::new(Mutex::new(
            "2026-11-25T08:00:00Z".parse().unwrap(),
        )))
    }

    pub fn now(&self) -> Timestamp {
        *self.0.lock().unwrap()
    }

    pub fn later(&self, minutes: i64) {
        *self.0.lock().unwrap() += SignedDuration::from_mins(minutes);
    }

    pub fn as_now(&self) -> shop::Now {
        let clock = self.clone();
        Arc::new(move || clock.now())
    }
}

pub struct Bench {
    pub store: Arc<dyn Store>,
    pub service: Service,
    pub clock: Clock,
    device: Device,
}

/// A fact or request, sent by `device` at the clock's time.
pub fn command(
    device: &mut Device,
    clock: &Clock,
    stream: &str,
    part: &str,
    content: Value,
) -> Value {
    device.command(stream, clock.now(), part, content)
}

/// A command of the person that it names.
pub fn tell_to(service: &Service, command: Value) -> Result<Accepted, Trouble> {
    let who = command["who"].as_str();
    let caller = service.caller(who, "test")?;
    service.command(&caller, command)
}

impl Bench {
    /// A shop that is set up, with Ana, Ben and one stall.
    pub fn new() -> Self {
        Self::on(Arc::new(Memory::new()))
    }

    pub fn on(store: Arc<dyn Store>) -> Self {
        let clock = Clock::new();
        let mut bench = Self {
            service: Service::open(Arc::clone(&store), LOG, clock.as_now()).unwrap(),
            store,
            clock,
            device: Device::new("desk", "ana"),
        };
        bench.shop(json!({ "set": { "settings": {
            "name": Device::words("Corner Works"), "rate": "100", "currency": "EUR", "minor_digits": 2,
            "taxes": [{ "name": "VAT", "percent": "20", "on": { "labour": true, "parts": true, "other": true } }],
            "units": "metric", "zone": "Europe/Lisbon" } } }));
        for (person, name, role) in [("ana", "Ana Reis", "owner"), ("ben", "Ben Coe", "desk")] {
            bench.shop(json!({ "joined": { "person": person, "name": Device::words(name), "roles": [role, "technician"] } }));
        }
        bench.shop(json!({ "stall-added": { "stall": "stall-1", "name": Device::words("By the door"), "sort": "lift" } }));
        bench
    }

    /// Another program on the same store.
    pub fn another_program(&self) -> Service {
        Service::open(Arc::clone(&self.store), LOG, self.clock.as_now()).unwrap()
    }

    /// From here on somebody else's device sends.
    pub fn by(&mut self, who: &str) -> &mut Self {
        self.device = Device::new(&format!("phone of {who}"), who);
        self
    }

    pub fn make(&mut self, stream: &str, part: &str, content: Value) -> Value {
        command(&mut self.device, &self.clock, stream, part, content)
    }

    pub fn send(&mut self, stream: &str, part: &str, content: Value) -> Result<Accepted, Trouble> {
        let command = self.make(stream, part, content);
        tell_to(&self.service, command)
    }

    /// What the shop's own program sees.
    pub fn look<T>(
        &self,
        look: impl FnOnce(&Snapshot<'_>) -> Result<T, Trouble>,
    ) -> Result<T, Trouble> {
        self.service.look(&Caller::program(), look)
    }

    pub fn shop(&mut self, fact: Value) {
        self.send("shop", "shop_fact", fact).unwrap();
    }

    /// An order of a new vehicle of a new customer; its name in the record.
    pub fn open(&mut self, customer: &str, vehicle: &str, plate: &str) -> String {
        let (order, vehicle_id, customer_id) = (Device::name(), Device::name(), Device::name());
        self.send(
            &format!("customer:{customer_id}"),
            "customer_fact",
            json!({ "declared": { "texts": {
            "name": Device::words(customer), "phone": Device::words("0600 555 001") } } }),
        )
        .unwrap();
        self.send(
            &format!("vehicle:{vehicle_id}"),
            "vehicle_fact",
            json!({ "declared": {
            "texts": { "label": Device::words(vehicle), "plate": Device::words(plate) },
            "vin_read": "none-readable", "rust": null, "customer": customer_id } }),
        )
        .unwrap();
        self.open_again(&order, &vehicle_id, &customer_id);
        order
    }

    pub fn open_again(&mut self, order: &str, vehicle: &str, customer: &str) {
        self.ask(
            order,
            json!({ "open": { "vehicle": vehicle, "customer": customer } }),
        )
        .unwrap();
        self.tell(order, json!({ "line-opened": { "line": "line-1", "complaint": Device::words("It squeals"), "payer": "customer" } }));
    }

    pub fn tell(&mut self, order: &str, fact: Value) -> Accepted {
        self.send(&format!("order:{order}"), "fact", fact).unwrap()
    }

    pub fn ask(&mut self, order: &str, request: Value) -> Result<Accepted, Trouble> {
        self.send(&format!("order:{order}"), "request", request)
    }

    /// Sets the price, by somebody who has seen the one that stands.
    pub fn price(&mut self, order: &str, entries: &[Value]) -> Result<Accepted, Trouble> {
        let after: Vec<String> = self
            .view(order)
            .price
            .map(|price| price.after)
            .unwrap_or_default();
        self.ask(
            order,
            json!({ "price": { "entries": entries, "after": after } }),
        )
    }

    pub fn number(&self, order: &str) -> u64 {
        number(&self.service, order)
    }

    pub fn view(&self, name: &str) -> OrderView {
        order(&self.service, self.number(name)).unwrap()
    }

    /// One thing, or so many pieces of it.
    pub fn declare(&mut self, order: &str, item: &str, is: (&str, &str, &str), count: u16) {
        let (kind, system, zone) = is;
        let label = Device::words(&item.replace('-', " "));
        self.tell(order, declared(item, (kind, system, zone), &label, count));
    }

    /// All pieces of an item moved, by somebody who has seen all that is known of it.
    pub fn move_to(&mut self, order: &str, item: &str, state: &str) -> Accepted {
        let view = self.view(order);
        let known = view.items.iter().find(|known| known.item == item).unwrap();
        let moves = json!([{ "item": item, "at": known.positions, "after": known.seen,
            "left": { "state": state, "piece": "original" }, "container": null }]);
        self.tell(order, json!({ "moved": { "stage": null, "moves": moves } }))
    }

    /// All that stands between an order and its hand-over, but for what a test leaves.
    pub fn finish(&mut self, order: &str) {
        self.finish_desk(order);
        let view = self.view(order);
        for debt in view.debts.iter().filter(|debt| debt.before.is_some()) {
            self.tell(
                order,
                json!({ "work-done": {
                "work": debt.owed, "after": debt.seen, "words": null } }),
            );
        }
        let seen: Vec<_> = view.items.iter().flat_map(|item| &item.seen).collect();
        for proof in &view.proofs_needed {
            self.tell(order, json!({ "proved": { "id": Device::name(), "line": null, "proof": proof, "outcome": "held",
                "words": null, "readings": [], "calculation": null, "after": seen, "replaces": [] } }));
        }
        let items: Vec<_> = view.items.iter().map(|item| &item.item).collect();
        self.by("ben").tell(
            order,
            json!({ "checked": { "check": "second-person", "items": items, "after": seen } }),
        );
        self.by("ana");
    }

    fn finish_desk(&mut self, order: &str) {
        for text in ["cause", "correction"] {
            self.tell(order, json!({ "line-worded": { "line": "line-1", "text": text, "words": Device::words(text), "after": [] } }));
        }
        self.ask(order, json!({ "price": { "entries": [{ "line": "line-1", "charge": "labour",
            "label": Device::words("an hour"), "quantity": "1", "each": "100", "payer": "customer" }] } })).unwrap();
        self.tell(order, consent("200"));
        self.ask(order, json!({ "charge": {} })).unwrap();
        self.tell(order, json!({ "paid": { "payer": "customer", "amount": "120.00", "by": "cash", "deposit": false } }));
    }

    pub fn hand_over(&mut self, order: &str) -> Result<Accepted, Trouble> {
        self.ask(
            order,
            json!({ "hand-over": { "leaves": "drives-away", "ending": "repaired",
            "boxes": null, "signature": null, "signed_by": null } }),
        )
    }
}

pub fn number(service: &Service, order: &str) -> u64 {
    let world = service.world().unwrap();
    world.number_of(&OrderId::new(order)).unwrap().unwrap()
}

pub fn declared(item: &str, is: (&str, &str, &str), label: &Value, count: u16) -> Value {
    let (kind, system, zone) = is;
    let pieces: Vec<_> = (1..=count)
        .map(|position| json!({ "position": position, "length": null }))
        .collect();
    json!({ "declared": { "item": { "id": item, "kind": kind, "system": system, "zone": zone, "label": label,
        "size": null, "pieces": pieces, "pattern": null, "spent": false, "may_miss": null, "put_in": null, "holds": null } } })
}

pub fn consent(amount: &str) -> Value {
    json!({ "consented": { "step": "repair", "payer": "customer", "lines": [], "agreed": true, "amount": amount,
        "tax_included": true, "way": "phone", "person": null, "said": null, "number_called": null,
        "signature": null, "after": [] } })
}

/// What the shop's own program sees, function by function of [`shop::view`].
pub mod seen {
    use shop::planning::Learned;
    use shop::repair::{MapId, VehicleId};
    use shop::view::{self, CallView, OrderRow, OrderView, StandsHere};
    use shop::{Caller, KeptMap, Service, ShelvedMap, Snapshot, Trouble};
    use std::sync::Arc;

    pub fn look<T>(
        service: &Service,
        look: impl FnOnce(&Snapshot<'_>) -> Result<T, Trouble>,
    ) -> Result<T, Trouble> {
        service.look(&Caller::program(), look)
    }

    pub fn order(service: &Service, number: u64) -> Result<OrderView, Trouble> {
        look(service, |snap| {
            view::order(snap, number).map(|view| OrderView::clone(&view))
        })
    }

    pub fn rows(
        service: &Service,
        find: Option<&str>,
        before: Option<u64>,
    ) -> Result<Vec<OrderRow>, Trouble> {
        look(service, |snap| view::rows(snap, find, before))
    }

    pub fn rows_here(service: &Service) -> Result<Vec<OrderRow>, Trouble> {
        look(service, view::rows_here)
    }

    pub fn stands_here(service: &Service) -> Result<Vec<StandsHere>, Trouble> {
        look(service, view::stands_here)
    }

    pub fn rows_of_vehicle(service: &Service, id: &VehicleId) -> Result<Vec<OrderRow>, Trouble> {
        look(service, |snap| view::rows_of_vehicle(snap, id))
    }

    pub fn calls(service: &Service) -> Result<Vec<CallView>, Trouble> {
        look(service, view::calls)
    }

    pub fn learned(service: &Service, number: u64, vehicle: &str) -> Result<Learned, Trouble> {
        look(service, |snap| {
            shop::planning::learned(snap, number, vehicle)
        })
    }

    pub fn map(
        service: &Service,
        id: &MapId,
        version: Option<u32>,
    ) -> Result<Arc<KeptMap>, Trouble> {
        look(service, |snap| snap.map(id, version))
    }

    #[expect(
        clippy::redundant_closure_for_method_calls,
        reason = "the method alone is not general enough over the snapshot's lifetime"
    )]
    pub fn maps(service: &Service) -> Result<Vec<ShelvedMap>, Trouble> {
        look(service, |snap| snap.maps())
    }
}
