//! What each event changes in memory and on the cards of the index.
//!
//! What is on the cards follows from the log alone, and from which private contents are
//! still there: programs that share an index write the same.

use super::index::{drawer, odd};
use super::read::Unread;
use super::{World, customer_of, padded, squeezed, under};
use crate::trouble::Trouble;
use jiff::Timestamp;
use jiff::tz::TimeZone;
use record::{AnyEvent, Stream};
use repair::price::Leeway;
use repair::{
    CustomerFact, CustomerId, Decision, Event, Fact, Field, MapFact, MapId, Order, OrderId, Place,
    Recorded, Rules, ShopFact, StallId, Token, VehicleFact, VehicleId, Words, papers,
};
use serde::{Deserialize, Serialize};
use std::collections::{BTreeMap, BTreeSet};
use store::{Card, EngineError, Row, Wanted};

/// Where an order stands.
#[derive(Debug, Clone, Default, PartialEq, Eq, Serialize, Deserialize)]
pub(super) struct OrderCard {
    pub(super) number: Option<u64>,
    vehicle: Option<String>,
    customer: Option<String>,
    /// Whether it was ever handed over or voided.
    left: bool,
    settled: bool,
    /// Of an order that was handed over and not taken back: the position of its last row.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    finished: Option<u64>,
    /// The map by which it worked when it was finished.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    map: Option<String>,
    /// Where its vehicle stands, as it is written there.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    place: Option<String>,
}

impl OrderCard {
    /// The order as finished, if it is.
    pub(super) fn finished(&self, number: u64, order: &OrderId) -> Option<super::Finished> {
        let position = self.finished?;
        Some(super::Finished {
            number,
            order: order.clone(),
            position,
            map: self.map.as_deref().map(MapId::new),
        })
    }

    /// The vehicle it is about.
    pub(super) fn vehicle(&self) -> Option<VehicleId> {
        self.vehicle.as_deref().map(VehicleId::new)
    }
}

/// A vehicle that is here, as its card says.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Standing {
    /// The order's number.
    pub number: u64,
    /// Which vehicle it is.
    pub vehicle: Option<VehicleId>,
    /// Where it stands; nothing if nobody said.
    pub place: Option<Place>,
}

impl Standing {
    fn written(vehicle: Option<&str>, place: Option<&str>) -> String {
        format!(
            "{}\n{}",
            vehicle.unwrap_or_default(),
            place.unwrap_or_default()
        )
    }

    pub(super) fn read(card: &Card) -> Option<Self> {
        let (vehicle, place) = card.value.split_once('\n')?;
        Some(Self {
            number: number_in(card).ok()?,
            vehicle: Some(vehicle)
                .filter(|id| !id.is_empty())
                .map(VehicleId::new),
            place: match place.split_once(' ') {
                None if place == "yard" => Some(Place::Yard),
                None if place == "away" => Some(Place::Away),
                None if place.is_empty() => None,
                Some(("stall", id)) => Some(Place::Stall(StallId::new(id))),
                _ => return None,
            },
        })
    }
}

/// A place as a card says it.
fn place_written(place: &Place) -> String {
    match place {
        Place::Stall(id) => format!("stall {}", id.as_str()),
        Place::Yard => "yard".to_owned(),
        Place::Away => "away".to_owned(),
    }
}

/// What rows touched whose cards can only be written once all of them are folded.
#[derive(Debug, Clone, Default)]
pub(super) struct Touched {
    /// Orders that left, with the time of what came in since.
    left: BTreeMap<OrderId, Timestamp>,
    /// Orders that are found by other words now.
    reworded: BTreeSet<OrderId>,
    vehicles: BTreeSet<VehicleId>,
    customers: BTreeSet<CustomerId>,
    /// Orders that were finished, or told more of since.
    finished: BTreeSet<OrderId>,
    /// Orders whose vehicle may stand elsewhere now.
    moved: BTreeSet<OrderId>,
    /// Kinds of vehicles that may go by another name now.
    kinds: BTreeSet<MapId>,
}

/// By how many words a vehicle or customer is found at most.
pub(super) const MOST_NAMES: usize = 4;

/// How many of an order's parts it is found by: the first.
const MOST_PARTS: usize = 30;

/// Where something that an order came to at a time stands in the drawer of times: the sequence of
/// keys is that of times.
pub(super) fn when_key(at: Timestamp, name: &str) -> String {
    format!(
        "{} {name}",
        padded(u64::try_from(at.as_second()).unwrap_or(0))
    )
}

/// The number in the key of a words card.
pub(super) fn number_in(card: &Card) -> Result<u64, Trouble> {
    let number = card.key.split(' ').next().and_then(|key| key.parse().ok());
    number.ok_or_else(|| odd(card))
}

impl World {
    /// What an event changes in memory.
    pub(super) fn file(&mut self, row: &Row, stream: &Stream, recorded: Recorded<AnyEvent>) {
        let AnyEvent::Shop(fact) = recorded.event else {
            self.at_hand().file(stream, row.seq, recorded);
            return;
        };
        // Numbers of orders and invoices stand on cards: the shop would grow with its history.
        let numbers = matches!(
            fact,
            ShopFact::NumberGiven { .. }
                | ShopFact::InvoiceNumberGiven { .. }
                | ShopFact::CreditNumberGiven { .. }
        );
        if numbers {
            return;
        }
        self.shop_position = row.position;
        self.shop = std::mem::take(&mut self.shop).file(Recorded {
            command: recorded.command,
            nth: recorded.nth,
            stamp: recorded.stamp,
            event: fact,
        });
    }

    /// What an event changes on the cards.
    pub(super) fn note(
        &mut self,
        row: &Row,
        stream: &Stream,
        recorded: &Recorded<AnyEvent>,
    ) -> Result<(), Trouble> {
        match (&recorded.event, stream) {
            (AnyEvent::Order(event), Stream::Order(id)) => {
                self.note_order(id, event, recorded.stamp.at, row.position)?;
            }
            (
                AnyEvent::Vehicle(
                    VehicleFact::Declared { .. }
                    | VehicleFact::Mended { .. }
                    | VehicleFact::SameAs { .. }
                    | VehicleFact::OwnerTold { .. }
                    | VehicleFact::LeftOwing { .. }
                    | VehicleFact::OwingDone { .. },
                ),
                Stream::Vehicle(id),
            ) => {
                self.touched.vehicles.insert(id.clone());
            }
            (
                AnyEvent::Customer(
                    CustomerFact::Declared { .. }
                    | CustomerFact::Mended { .. }
                    | CustomerFact::SameAs { .. },
                ),
                Stream::Customer(id),
            ) => {
                self.touched.customers.insert(id.clone());
            }
            (AnyEvent::Map(MapFact::Drafted { .. }), Stream::Map(id)) => {
                self.index.put(drawer::MAP, id.as_str(), "");
            }
            (AnyEvent::Map(MapFact::SameKindAs { .. }), Stream::Map(id)) => {
                self.touched.kinds.insert(id.clone());
            }
            (AnyEvent::Shop(fact), _) => self.note_shop(row, fact)?,
            _ => {}
        }
        self.index.stands_at(row);
        Ok(())
    }

    /// What a row that cannot be read changes on the cards: they say so of its stream.
    pub(super) fn note_unread(&mut self, row: &Row, unread: &Unread) -> Result<(), Trouble> {
        if self.index.card(drawer::UNREAD, &row.stream)?.is_none() {
            let value = serde_json::to_string(unread).expect("plain values are JSON");
            self.index.put(drawer::UNREAD, &row.stream, value);
        }
        match Stream::read(&row.stream) {
            Ok(Stream::Shop) => {
                self.index.put(drawer::SHOP_SEQ, "", row.seq.to_string());
                let position = row.position.to_string();
                self.index.put(drawer::SHOP, &padded(row.seq), position);
            }
            Ok(Stream::Order(id)) => {
                // Whoever looks for it has to see it.
                let before = self.order_card(&id)?;
                let card = OrderCard {
                    settled: false,
                    ..before.clone()
                };
                self.put_order_card(&id, &before, &card)?;
            }
            _ => {}
        }
        self.index.stands_at(row);
        Ok(())
    }

    fn note_shop(&mut self, row: &Row, fact: &ShopFact) -> Result<(), Trouble> {
        self.index.put(drawer::SHOP_SEQ, "", row.seq.to_string());
        if let ShopFact::InvoiceNumberGiven { number, order, .. } = fact {
            self.index
                .put(drawer::INVOICE, &padded(*number), order.as_str());
            return Ok(());
        }
        if let ShopFact::CreditNumberGiven { number, order, .. } = fact {
            self.index
                .put(drawer::CREDIT, &padded(*number), order.as_str());
            return Ok(());
        }
        let ShopFact::NumberGiven { number, order } = fact else {
            let position = row.position.to_string();
            self.index.put(drawer::SHOP, &padded(row.seq), position);
            if let ShopFact::Erased { texts, .. } = fact {
                let texts: Vec<_> = texts.iter().map(|text| text.0).collect();
                self.index.erase(&texts);
            }
            return Ok(());
        };
        self.index
            .put(drawer::NUMBER, &padded(*number), order.as_str());
        let before = self.order_card(order)?;
        let card = OrderCard {
            number: Some(*number),
            ..before.clone()
        };
        self.touched.reworded.insert(order.clone());
        self.put_order_card(order, &before, &card)
    }

    fn note_order(
        &mut self,
        id: &OrderId,
        event: &Event,
        at: Timestamp,
        position: u64,
    ) -> Result<(), Trouble> {
        let before = self.order_card(id)?;
        let mut card = before.clone();
        match event {
            Event::Decision(Decision::HandedOver { .. }) => card.finished = Some(position),
            Event::Decision(Decision::TakenBack { .. } | Decision::Voided { .. }) => {
                card.finished = None;
            }
            _ => card.finished = card.finished.map(|_| position),
        }
        if let Event::Decision(Decision::Adopted { map, .. }) = event {
            if let (Some(other), Some(number)) = (&before.map, before.number.map(padded)) {
                self.index
                    .remove(drawer::OF_MAP, &format!("{other} {number}"));
            }
            card.map = Some(map.as_str().to_owned());
        }
        if is_found_by(event) {
            self.touched.reworded.insert(id.clone());
        }
        if let Event::Fact(Fact::Stood { .. } | Fact::Pushed { .. } | Fact::Undo { .. }) = event {
            self.touched.moved.insert(id.clone());
        }
        let rung = matches!(
            event,
            Event::Fact(Fact::Rung { .. } | Fact::Undo { .. } | Fact::Proved { .. })
        );
        if card.finished != before.finished || rung && card.finished.is_some() {
            self.touched.finished.insert(id.clone());
        }
        match event {
            Event::Decision(Decision::Opened {
                vehicle, customer, ..
            }) if card.vehicle.is_none() => {
                card.vehicle = Some(vehicle.as_str().to_owned());
                card.customer = Some(customer.as_str().to_owned());
                self.touched.reworded.insert(id.clone());
            }
            Event::Decision(Decision::HandedOver { .. } | Decision::Voided { .. }) => {
                card.left = true;
                card.settled = self.is_read_whole(id)?;
                self.touched.left.remove(id);
            }
            // Nothing that a payment changes calls for a look at what has left.
            Event::Fact(Fact::Paid { .. }) => {}
            _ if card.left => {
                self.touched.left.insert(id.clone(), at);
            }
            _ => {}
        }
        if let Event::Decision(Decision::Opened { .. } | Decision::HandedOver { .. }) = event {
            self.index.put(drawer::WHEN, &when_key(at, id.as_str()), "");
        }
        self.put_order_card(id, &before, &card)
    }

    /// The cards that follow from what the rows so far come to.
    pub(super) fn finish_notes(&mut self) -> Result<(), Trouble> {
        // What is not finished is finished with the next rows.
        let touched = self.touched.clone();
        self.finish(touched)?;
        self.touched = Touched::default();
        Ok(())
    }

    fn finish(&mut self, touched: Touched) -> Result<(), Trouble> {
        for (id, at) in touched.left {
            let before = self.order_card(&id)?;
            let card = OrderCard {
                settled: self.is_settled(&id, at)?,
                ..before.clone()
            };
            self.put_order_card(&id, &before, &card)?;
        }
        for id in touched.moved {
            let before = self.order_card(&id)?;
            let place = crate::view::stands(self.order(&id)?.as_ref());
            let card = OrderCard {
                place: place.as_ref().map(place_written),
                ..before.clone()
            };
            self.put_order_card(&id, &before, &card)?;
        }
        for id in touched.kinds {
            let map = self.map(&id)?;
            match map.same_kind_as().0.filter(|to| **to != id) {
                Some(to) => self.index.put(drawer::SAME_KIND, id.as_str(), to.as_str()),
                None => self.index.remove(drawer::SAME_KIND, id.as_str()),
            }
        }
        let mut reworded = touched.reworded;
        let (vehicles, customers) = self.put_same(touched.vehicles, touched.customers)?;
        for id in vehicles {
            self.put_vehicle_card(&id)?;
            self.put_names_of_vehicle(&id)?;
            self.put_owing(&id)?;
            let orders = self.orders_of_vehicle(&id)?;
            reworded.extend(orders.into_iter().map(|(_, order)| order));
        }
        for id in customers {
            self.put_names_of_customer(&id)?;
            let orders = self.orders_of_customer(&id)?;
            reworded.extend(orders.into_iter().map(|(_, order)| order));
        }
        for id in &reworded {
            self.put_words(id)?;
        }
        for id in reworded.union(&touched.finished) {
            self.put_finished(id)?;
            self.put_follow_up(id)?;
        }
        Ok(())
    }

    /// Under which other names vehicles and customers have a record. Answers all that are found
    /// otherwise now: those that were touched, and their other names before and after.
    fn put_same(
        &mut self,
        mut vehicles: BTreeSet<VehicleId>,
        mut customers: BTreeSet<CustomerId>,
    ) -> Result<(BTreeSet<VehicleId>, BTreeSet<CustomerId>), Trouble> {
        if vehicles.is_empty() && customers.is_empty() {
            return Ok((vehicles, customers));
        }
        // As the cards have it: what is in memory may be ahead of them.
        self.read_same()?;
        let mut changed = Vec::new();
        for id in &vehicles {
            let own = self.own_vehicle(id)?;
            let to = own.same_as().0.filter(|to| *to != id);
            let to = to.map(|to| to.as_str().to_owned());
            changed.push((drawer::SAME_VEHICLE, id.as_str().to_owned(), to));
        }
        for id in &customers {
            let own = self.own_customer(id)?;
            let to = own.same_as().0.filter(|to| *to != id);
            let to = to.map(|to| to.as_str().to_owned());
            changed.push((drawer::SAME_CUSTOMER, id.as_str().to_owned(), to));
        }
        let mut any = false;
        for (drawer, id, to) in changed {
            let before = self.index.card(drawer, &id)?.map(|card| card.value);
            if before == to {
                continue;
            }
            any = true;
            match to {
                Some(to) => self.index.put(drawer, &id, to),
                None => self.index.remove(drawer, &id),
            }
        }
        for again in [false, any] {
            if again {
                self.read_same()?;
            }
            let names = vehicles.iter().flat_map(|id| self.same_vehicles(id));
            vehicles = names.chain(vehicles.iter().cloned()).collect();
            let names = customers.iter().flat_map(|id| self.same_customers(id));
            customers = names.chain(customers.iter().cloned()).collect();
        }
        Ok((vehicles, customers))
    }

    /// Where a vehicle is found by words, and where it stands in the list of all. What has a
    /// record under another name is found there alone.
    fn put_names_of_vehicle(&mut self, id: &VehicleId) -> Result<(), Trouble> {
        let goes_by = self.same_vehicles(id).first() == Some(id);
        let vehicle = self.vehicle(id)?;
        let text = |field| vehicle.text(field).words;
        let names = [
            ("plate", text(Field::Plate)),
            ("label", text(Field::Label)),
            ("vin", text(Field::Vin)),
        ];
        let names = names.map(|(what, words)| (what, words.filter(|_| goes_by)));
        self.put_names(
            (drawer::VEHICLE_WORDS, drawer::VEHICLE_LIST),
            id.as_str(),
            &names,
        )
    }

    /// The same of a customer.
    fn put_names_of_customer(&mut self, id: &CustomerId) -> Result<(), Trouble> {
        let goes_by = self.same_customers(id).first() == Some(id);
        let customer = self.customer(id)?;
        let text = |field| customer.text(field).words;
        let names = [
            ("name", text(Field::Name)),
            ("phone", text(Field::Phone)),
            ("mail", text(Field::Mail)),
            ("address", text(Field::Address)),
            ("street", text(Field::Street)),
            ("town", text(Field::Town)),
        ];
        let names = names.map(|(what, words)| (what, words.filter(|_| goes_by)));
        self.put_names(
            (drawer::CUSTOMER_WORDS, drawer::CUSTOMER_LIST),
            id.as_str(),
            &names,
        )
    }

    /// Puts what something is found by, and its place in the list by the first of it that
    /// was told.
    fn put_names(
        &mut self,
        (words_drawer, list): (&str, &str),
        id: &str,
        names: &[(&str, Option<Words>)],
    ) -> Result<(), Trouble> {
        // Where it stood in the list is written with its words.
        let place = format!("{id} listed");
        if let Some(before) = self.index.card(words_drawer, &place)? {
            self.index.remove(list, before.value.trim_start());
            self.index.remove(words_drawer, &place);
        }
        // Where the first of it was erased it stands in no list: what follows from the log alone
        // cannot know when.
        let first = names.iter().find_map(|(_, words)| *words);
        for (what, words) in names {
            let key = format!("{id} {what}");
            let text = match words {
                Some(words) => self.squeezed_text(*words)?,
                None => String::new(),
            };
            let Some(words) = words.filter(|_| !text.is_empty()) else {
                self.index.remove(words_drawer, &key);
                continue;
            };
            let of = Some(words.0);
            self.index.put_of(words_drawer, &key, text.clone(), of);
            if first == Some(words) {
                let at = format!("{text} {id}");
                self.index.put_of(list, &at, "", of);
                // With a space before it no words are found in it.
                self.index
                    .put_of(words_drawer, &place, format!(" {at}"), of);
            }
        }
        Ok(())
    }

    /// A text as it is found by; empty where it is not there, or not as it was written: that
    /// finds nothing, and whoever reads it, or verifies, is told.
    fn squeezed_text(&self, words: Words) -> Result<String, Trouble> {
        match self.store.private(&self.log, &words.0) {
            Ok(Some(private)) => Ok(squeezed(&String::from_utf8_lossy(&private.content))),
            Ok(None) | Err(EngineError::Damaged { .. }) => Ok(String::new()),
            Err(error) => Err(error.into()),
        }
    }

    /// Where a finished order is found by its kind of vehicle: by the code of its vehicle's
    /// label, which goes with the label's words when they are erased, and by its map.
    fn put_finished(&mut self, id: &OrderId) -> Result<(), Trouble> {
        let card = self.order_card(id)?;
        let Some(number) = card.number.map(padded) else {
            return Ok(());
        };
        if let Some(before) = self.index.card(drawer::LABEL, &number)? {
            let key = format!("{} {number}", before.value);
            self.index.remove(drawer::OF_LABEL, &key);
            self.index.remove(drawer::LABEL, &number);
        }
        let finished = card.finished(card.number.unwrap_or_default(), id);
        if let Some(map) = &card.map {
            let key = format!("{map} {number}");
            match &finished {
                Some(finished) => self.index.put(drawer::OF_MAP, &key, finished.written()),
                None => self.index.remove(drawer::OF_MAP, &key),
            }
        }
        let Some(finished) = finished else {
            return Ok(());
        };
        if let Some((words, code)) = self.label_of(id)? {
            let key = format!("{code} {number}");
            let of = Some(words.0);
            self.index
                .put_of(drawer::OF_LABEL, &key, finished.written(), of);
            self.index.put_of(drawer::LABEL, &number, code, of);
        }
        Ok(())
    }

    /// The label of an order's vehicle, as a code.
    fn label_of(&self, id: &OrderId) -> Result<Option<(Words, String)>, Trouble> {
        let words = self.words_of(id)?;
        let Some((_, words)) = words.into_iter().find(|(what, _)| what == "label") else {
            return Ok(None);
        };
        let text = match self.store.private(&self.log, &words.0) {
            Ok(Some(private)) => String::from_utf8_lossy(&private.content).into_owned(),
            Ok(None) | Err(EngineError::Damaged { .. }) => return Ok(None),
            Err(error) => return Err(error.into()),
        };
        let code = crate::planning::map_id(text.trim());
        Ok((!text.trim().is_empty()).then(|| (words, code.as_str().to_owned())))
    }

    /// Whether an order that left needs no look. What alarms rests neither on the time nor
    /// on sums.
    fn is_settled(&self, id: &OrderId, at: Timestamp) -> Result<bool, Trouble> {
        if !self.is_read_whole(id)? {
            return Ok(false);
        }
        let order = self.order(id)?;
        let rules = Rules {
            now: at,
            zone: TimeZone::UTC,
            leeway: Leeway::default(),
        };
        Ok(papers::is_voided(&order)
            || papers::handed_over(&order).is_some()
                && repair::late_alarms(&order, &rules).is_empty())
    }

    /// Whether no row of an order was passed over.
    fn is_read_whole(&self, id: &OrderId) -> Result<bool, Trouble> {
        let name = Stream::Order(id.clone()).to_string();
        Ok(self.index.card(drawer::UNREAD, &name)?.is_none())
    }

    pub(super) fn order_card(&self, id: &OrderId) -> Result<OrderCard, Trouble> {
        match self.index.card(drawer::ORDER, id.as_str())? {
            Some(card) => serde_json::from_str(&card.value).map_err(|_| odd(&card)),
            None => Ok(OrderCard::default()),
        }
    }

    fn put_order_card(
        &mut self,
        id: &OrderId,
        before: &OrderCard,
        card: &OrderCard,
    ) -> Result<(), Trouble> {
        if card == before {
            return Ok(());
        }
        let value = serde_json::to_string(card).expect("a card of plain values is JSON");
        self.index.put(drawer::ORDER, id.as_str(), value);
        let Some(number) = card.number.map(padded) else {
            return Ok(());
        };
        if card.settled {
            self.index.remove(drawer::HERE, &number);
        } else {
            self.index.put(drawer::HERE, &number, id.as_str());
        }
        if card.settled || card.finished.is_some() {
            self.index.remove(drawer::STANDS, &number);
        } else {
            let standing = Standing::written(card.vehicle.as_deref(), card.place.as_deref());
            self.index.put(drawer::STANDS, &number, standing);
        }
        for (drawer, name) in [
            (drawer::OF_VEHICLE, &card.vehicle),
            (drawer::OF_CUSTOMER, &card.customer),
        ] {
            if let Some(name) = name {
                self.index
                    .put(drawer, &format!("{name} {number}"), id.as_str());
            }
        }
        Ok(())
    }

    /// Whose a vehicle is, and that it is theirs.
    fn put_vehicle_card(&mut self, id: &VehicleId) -> Result<(), Trouble> {
        let before = self.index.card(drawer::VEHICLE, id.as_str())?;
        let before = before.map(|card| card.value);
        let vehicle = self.own_vehicle(id)?;
        let now = vehicle
            .customer()
            .map(|customer| customer.as_str().to_owned());
        if now == before {
            return Ok(());
        }
        if let Some(before) = before {
            let key = format!("{before} {id}");
            self.index.remove(drawer::VEHICLE_OF, &key);
        }
        if let Some(now) = now {
            let key = format!("{now} {id}");
            self.index.put(drawer::VEHICLE_OF, &key, "");
            self.index.put(drawer::VEHICLE, id.as_str(), now);
        }
        Ok(())
    }

    /// The words an order is found by: as they read now, squeezed. They are private, so
    /// each card is bound to the content it was made of, and erased with it.
    fn put_words(&mut self, id: &OrderId) -> Result<(), Trouble> {
        let Some(number) = self.order_card(id)?.number else {
            return Ok(());
        };
        let padded = padded(number);
        let (from, below) = under(&padded);
        let before = self.index.cards(&Wanted {
            below: Some(&below),
            ..Wanted::from(drawer::WORDS, &from)
        })?;
        for card in before {
            self.index.remove(drawer::WORDS, &card.key);
        }
        self.index.put(
            drawer::WORDS,
            &format!("{padded} number"),
            number.to_string(),
        );
        for (what, words) in self.words_of(id)? {
            let text = self.squeezed_text(words)?;
            if !text.is_empty() {
                let key = format!("{padded} {what}");
                self.index.put_of(drawer::WORDS, &key, text, Some(words.0));
            }
        }
        let numbers = self.part_numbers_of(id)?;
        for (nth, number) in numbers.iter().enumerate() {
            let key = format!("{padded} part-number-{nth}");
            self.index.put(drawer::WORDS, &key, number);
        }
        Ok(())
    }

    fn words_of(&self, id: &OrderId) -> Result<Vec<(String, Words)>, Trouble> {
        let order = self.order(id)?;
        let mut out = Vec::new();
        if let Some(vehicle) = super::vehicle_of(&order) {
            let vehicle = self.vehicle(&vehicle)?;
            for (what, field) in [
                ("label", Field::Label),
                ("plate", Field::Plate),
                ("vin", Field::Vin),
            ] {
                let words = vehicle.text(field).words;
                out.extend(words.map(|words| (what.to_owned(), words)));
            }
        }
        if let Some(customer) = customer_of(&order) {
            let customer = self.customer(&customer)?;
            for (what, field) in [("name", Field::Name), ("phone", Field::Phone)] {
                let words = customer.text(field).words;
                out.extend(words.map(|words| (what.to_owned(), words)));
            }
        }
        let complaints = papers::lines(&order).into_iter().enumerate();
        out.extend(complaints.map(|(nth, line)| (format!("complaint-{nth}"), line.complaint)));
        let parts = parts_of(&order).take(MOST_PARTS).enumerate();
        out.extend(parts.map(|(nth, (label, _))| (format!("part-{nth}"), label)));
        Ok(out)
    }

    fn part_numbers_of(&self, id: &OrderId) -> Result<Vec<String>, Trouble> {
        let order = self.order(id)?;
        let numbers = parts_of(&order).take(MOST_PARTS);
        let numbers = numbers.filter_map(|(_, number)| number.map(squeezed));
        Ok(numbers.filter(|number| !number.is_empty()).collect())
    }
}

/// Whether an order may be found by other words after an event.
fn is_found_by(event: &Event) -> bool {
    matches!(
        event,
        Event::Fact(
            Fact::PartNeeded { .. }
                | Fact::LineOpened { .. }
                | Fact::LineWorded { .. }
                | Fact::Undo { .. }
        )
    )
}

/// The parts that an order needs: what each is called, and its number.
fn parts_of(order: &Order) -> impl Iterator<Item = (Words, Option<&str>)> {
    order
        .beside_moves()
        .filter_map(|(_, filed)| match &filed.fact {
            Fact::PartNeeded { label, number, .. } => {
                Some((*label, number.as_ref().map(Token::as_str)))
            }
            _ => None,
        })
}
