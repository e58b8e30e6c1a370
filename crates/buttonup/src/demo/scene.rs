//! A way to tell one order's life in a few lines.

use jiff::{SignedDuration, Timestamp};
use map::Map;
use record::v1::basics::StateForm;
use serde_json::{Value, json};
use shop::planning::declared;
use shop::repair::{ItemId, OrderId, VehicleId};
use shop::view::{OrderView, order};
use shop::{Caller, Device, Service, Trouble};

/// Who and what an order is about.
pub struct About<'a> {
    /// The customer's name and telephone.
    pub customer: (&'a str, &'a str),
    /// Maker, model, age.
    pub vehicle: &'a str,
    /// The plate.
    pub plate: &'a str,
    /// The odometer on the way in.
    pub odometer: &'a str,
    /// What the customer says.
    pub complaint: &'a str,
}

/// One thing that comes off: its name here, what it is called, and what it is.
pub struct Thing<'a> {
    /// Its name in the order.
    pub id: &'a str,
    /// What it is called.
    pub label: &'a str,
    /// Its kind, system and zone, as stored.
    pub is: (&'a str, &'a str, &'a str),
    /// Its size.
    pub size: Option<&'a str>,
    /// How many pieces.
    pub count: u16,
    /// How it is tightened: the passes, and the positions in sequence.
    pub tightened: Option<(&'a [&'a str], &'a [u16])>,
}

/// One order while its life is told.
pub struct Scene<'a> {
    service: &'a Service,
    device: Device,
    order: String,
    vehicle: String,
    now: Timestamp,
}

impl<'a> Scene<'a> {
    /// Opens an order of a new vehicle.
    pub fn open(
        service: &'a Service,
        who: &str,
        at: Timestamp,
        about: &About<'_>,
    ) -> Result<Self, Trouble> {
        let (mut scene, customer) = Self::known(service, who, at, about)?;
        scene.take_in(&customer, about)?;
        Ok(scene)
    }

    /// Opens an order of a new vehicle that is to come.
    pub fn book(
        service: &'a Service,
        who: &str,
        at: Timestamp,
        about: &About<'_>,
        comes: &str,
    ) -> Result<Self, Trouble> {
        let (mut scene, customer) = Self::known(service, who, at, about)?;
        scene.opened(&customer, about)?;
        scene.tell(json!({ "expected": { "at": comes, "after": [] } }))?;
        Ok(scene)
    }

    /// A customer and a vehicle are spoken of for the first time.
    fn known(
        service: &'a Service,
        who: &str,
        at: Timestamp,
        about: &About<'_>,
    ) -> Result<(Self, String), Trouble> {
        let mut scene = Self::blank(service, who, at);
        let customer = Device::name();
        scene.send(&format!("customer:{customer}"), "customer_fact", json!({ "declared": { "texts": {
            "name": Device::words(about.customer.0), "phone": Device::words(about.customer.1) } } }))?;
        scene.send(
            &format!("vehicle:{}", scene.vehicle),
            "vehicle_fact",
            json!({ "declared": {
            "texts": { "label": Device::words(about.vehicle), "plate": Device::words(about.plate) },
            "vin_read": "none-readable", "rust": 2, "customer": customer } }),
        )?;
        Ok((scene, customer))
    }

    /// Opens another order of a vehicle that was here before.
    pub fn again(
        service: &'a Service,
        who: &str,
        at: Timestamp,
        earlier: u64,
        about: &About<'_>,
    ) -> Result<Self, Trouble> {
        let mut scene = Self::blank(service, who, at);
        scene.vehicle = service
            .look(&Caller::program(), |snap| order(snap, earlier))?
            .row
            .vehicle_id
            .clone()
            .unwrap_or_default();
        let customer = {
            let world = service.world()?;
            let vehicle = world.vehicle(&VehicleId::new(scene.vehicle.clone()))?;
            vehicle
                .customer()
                .map(|id| id.as_str().to_owned())
                .unwrap_or_default()
        };
        scene.take_in(&customer, about)?;
        Ok(scene)
    }

    fn blank(service: &'a Service, who: &str, at: Timestamp) -> Self {
        Self {
            service,
            device: Device::new(&format!("phone of {who}"), who),
            order: Device::name(),
            vehicle: Device::name(),
            now: at,
        }
    }

    fn opened(&mut self, customer: &str, about: &About<'_>) -> Result<(), Trouble> {
        self.ask(json!({ "open": { "vehicle": self.vehicle, "customer": customer } }))?;
        self.tell(json!({ "line-opened": { "line": "line-1", "complaint": Device::words(about.complaint), "payer": "customer" } }))
    }

    fn take_in(&mut self, customer: &str, about: &About<'_>) -> Result<(), Trouble> {
        self.opened(customer, about)?;
        self.tell(json!({ "odometer": { "reading": about.odometer, "at": "in" } }))?;
        self.tell(json!({ "keys": { "step": "taken", "words": null } }))
    }

    /// Lets minutes go by.
    pub fn later(&mut self, minutes: i64) -> &mut Self {
        self.now += SignedDuration::from_mins(minutes);
        self
    }

    /// Hands the device to somebody else.
    pub fn taken_by(&mut self, who: &str) {
        self.device = Device::new(&format!("phone of {who}"), who);
    }

    fn send(&mut self, stream: &str, part: &str, content: Value) -> Result<(), Trouble> {
        let command = self.device.command(stream, self.now, part, content);
        self.service.command(&Caller::program(), command).map(drop)
    }

    /// Tells a fact of the order.
    pub fn tell(&mut self, fact: Value) -> Result<(), Trouble> {
        let stream = format!("order:{}", self.order);
        self.send(&stream, "fact", fact)
    }

    /// Asks for something about the order.
    pub fn ask(&mut self, request: Value) -> Result<(), Trouble> {
        let stream = format!("order:{}", self.order);
        self.send(&stream, "request", request)
    }

    /// The order as it stands.
    pub fn view(&self) -> Result<OrderView, Trouble> {
        let number = {
            let world = self.service.world()?;
            let id = OrderId::new(self.order.clone());
            world.number_of(&id)?.unwrap_or_default()
        };
        self.service.look(&Caller::program(), |snap| {
            Ok(OrderView::clone(&*order(snap, number)?))
        })
    }

    /// Declares things.
    pub fn declare(&mut self, things: &[Thing<'_>]) -> Result<(), Trouble> {
        for thing in things {
            let pieces: Vec<_> = (1..=thing.count)
                .map(|position| json!({ "position": position, "length": null }))
                .collect();
            let (kind, system, zone) = thing.is;
            self.tell(json!({ "declared": { "item": {
                "id": thing.id, "kind": kind, "system": system, "zone": zone,
                "label": Device::words(thing.label), "size": thing.size, "pieces": pieces,
                "pattern": thing.tightened.map(|(passes, sequence)| json!({ "passes": passes, "sequence": sequence, "source": null })),
                "spent": kind == "seal", "may_miss": null,
                "put_in": if kind == "put-in" { json!(thing.label_code()) } else { Value::Null },
                "holds": null } } }))?;
        }
        Ok(())
    }

    /// Describes items as a map knows them.
    pub fn describe(&mut self, map: &Map, names: &[&str]) -> Result<(), Trouble> {
        for name in names {
            if let Some(declared) = declared(map, &ItemId::new(*name), &Device::words) {
                self.tell(declared)?;
            }
        }
        Ok(())
    }

    /// One stage: these items, all their pieces, to this state.
    pub fn stage(
        &mut self,
        moves: &[(&str, StateForm)],
        container: Option<&str>,
    ) -> Result<(), Trouble> {
        self.stage_with(moves, "original", container)
    }

    /// The same with new pieces.
    pub fn stage_new(&mut self, moves: &[(&str, StateForm)]) -> Result<(), Trouble> {
        self.stage_with(moves, "new", None)
    }

    fn stage_with(
        &mut self,
        moves: &[(&str, StateForm)],
        piece: &str,
        container: Option<&str>,
    ) -> Result<(), Trouble> {
        let view = self.view()?;
        let moves: Vec<_> = moves
            .iter()
            .filter_map(|(id, state)| {
                let item = view.items.iter().find(|item| item.item == *id)?;
                Some(json!({
                    "item": id, "at": item.positions, "after": item.seen,
                    "left": { "state": state, "piece": piece }, "container": container }))
            })
            .collect();
        let stage = Device::name();
        let timed = |clock: &str| json!({ "timed": { "stage": stage, "clock": clock, "book_minutes": null, "words": null } });
        self.tell(timed("opened"))?;
        self.later(4);
        self.tell(json!({ "moved": { "stage": stage, "moves": moves } }))
    }

    /// Some pieces of one group, with nothing said of the rest.
    pub fn some(&mut self, item: &str, at: &[u16], state: StateForm) -> Result<(), Trouble> {
        let after = self.seen(&[item])?;
        self.tell(
            json!({ "moved": { "stage": null, "moves": [{ "item": item, "at": at, "after": after,
            "left": { "state": state, "piece": "original" }, "container": null }] } }),
        )
    }

    /// The moves an item has come to, for what is told to have seen them.
    pub fn seen(&self, items: &[&str]) -> Result<Value, Trouble> {
        let view = self.view()?;
        Ok(view
            .items
            .iter()
            .filter(|item| items.is_empty() || items.contains(&item.item.as_str()))
            .flat_map(|item| item.seen.clone())
            .map(|seen| json!({ "command": seen.command, "nth": seen.nth }))
            .collect())
    }

    /// Sets the price: (charge, label, quantity, each).
    pub fn price(&mut self, entries: &[(&str, &str, &str, &str)]) -> Result<(), Trouble> {
        let entries: Vec<_> = entries
            .iter()
            .map(|(charge, label, quantity, each)| {
                json!({
                "line": "line-1", "charge": charge, "label": Device::words(label),
                "quantity": quantity, "each": each, "payer": "customer" })
            })
            .collect();
        self.ask(json!({ "price": { "entries": entries } }))
    }

    /// The customer says yes, up to so much before tax.
    pub fn consent(&mut self, amount: &str, person: &str, said: &str) -> Result<(), Trouble> {
        self.tell(json!({ "consented": {
            "step": "repair", "payer": "customer", "lines": [], "agreed": true, "amount": amount,
            "tax_included": false, "way": "phone", "person": Device::words(person), "said": Device::words(said),
            "number_called": Device::words("0600 555 010"), "signature": null, "after": [] } }))
    }

    /// Cause and correction of the one line.
    pub fn found(&mut self, cause: &str, correction: Option<&str>) -> Result<(), Trouble> {
        for (text, words) in [("cause", Some(cause)), ("correction", correction)] {
            if let Some(words) = words {
                self.tell(json!({ "line-worded": { "line": "line-1", "text": text, "words": Device::words(words), "after": [] } }))?;
            }
        }
        Ok(())
    }

    /// How heavy and high it is.
    pub fn measures(&mut self, weight: &str, height: &str) -> Result<(), Trouble> {
        let stream = format!("vehicle:{}", self.vehicle);
        for (what, value) in [("weight", weight), ("height", height)] {
            self.send(
                &stream,
                "vehicle_fact",
                json!({ "figure-told": { "what": what, "value": value, "after": [] } }),
            )?;
        }
        Ok(())
    }

    /// Where it stands, and who works on it.
    pub fn stands(&mut self, place: Value, who: &str) -> Result<(), Trouble> {
        self.tell(json!({ "stood": { "place": place } }))?;
        self.tell(json!({ "assigned": { "person": who } }))
    }

    /// Does everything that is owed before hand-over.
    pub fn do_what_is_owed(&mut self) -> Result<(), Trouble> {
        for debt in self
            .view()?
            .debts
            .into_iter()
            .filter(|debt| debt.before.is_some())
        {
            let seen: Vec<_> = debt
                .seen
                .iter()
                .map(|seen| json!({ "command": seen.command, "nth": seen.nth }))
                .collect();
            self.tell(json!({ "work-done": { "work": debt.owed, "after": seen, "words": null } }))?;
        }
        Ok(())
    }

    /// A proof that held.
    pub fn proved(&mut self, proof: &str, words: &str) -> Result<(), Trouble> {
        let after = self.seen(&[])?;
        self.tell(json!({ "proved": { "id": Device::name(), "line": null, "proof": proof, "outcome": "held",
            "words": Device::words(words), "readings": [], "calculation": null, "after": after, "replaces": [] } }))
    }
}

impl Thing<'_> {
    /// The code of what is put in, by its label.
    fn label_code(&self) -> &'static str {
        [
            ("clamp", "clamp"),
            ("plug", "plug"),
            ("rag", "rag"),
            ("lamp", "lamp"),
            ("pin", "pin"),
            ("cord", "cord"),
        ]
        .into_iter()
        .find(|(word, _)| self.label.contains(word))
        .map_or("other", |(_, code)| code)
    }
}

/// A thing in one line.
pub const fn thing<'a>(
    id: &'a str,
    label: &'a str,
    is: (&'a str, &'a str, &'a str),
    size: Option<&'a str>,
    count: u16,
) -> Thing<'a> {
    Thing {
        id,
        label,
        is,
        size,
        count,
        tightened: None,
    }
}

impl<'a> Thing<'a> {
    /// The same, tightened by passes, in this sequence of positions.
    #[must_use]
    pub const fn tightened(mut self, passes: &'a [&'a str], sequence: &'a [u16]) -> Self {
        self.tightened = Some((passes, sequence));
        self
    }
}
