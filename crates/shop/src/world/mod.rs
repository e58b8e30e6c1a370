//! The shop as its log tells it. Little of it is in memory: the shop itself, and what was
//! asked for lately. Everything else is found through the card index, and folded from the
//! rows of its own stream when somebody asks for it.

mod at_hand;
mod filing;
mod finding;
pub(crate) mod index;
mod later;
pub(crate) mod read;
mod same;

use crate::trouble::Trouble;
use at_hand::{AtHand, Folded, Known};
pub use filing::Standing;
use filing::Touched;
use index::{Index, drawer, odd};
pub(crate) use later::owing_due;
pub use read::Unread;
use record::AnyEvent;
use record::Stream;
use repair::Recorded;
use repair::{
    Customer, CustomerId, Decision, MapDrafts, MapId, Order, OrderId, Shop, Vehicle, VehicleId,
};
use same::Same;
use std::collections::BTreeMap;
use std::sync::{Arc, Mutex, MutexGuard, PoisonError};
use store::{Row, Store, Wanted};

/// The shop as its log tells it up to a position. What is asked for by name is blank if
/// nothing was ever filed under that name, as a stream that was never written to reads as
/// empty.
pub struct World {
    /// The last position folded.
    pub position: u64,
    /// The shop itself: settings, people, stalls. The numbers it gave to orders are asked
    /// for below.
    pub shop: Shop,
    /// The first row of the shop's own stream that could not be read.
    shop_unread: Option<Arc<Unread>>,
    /// The position of the last event that is folded into the shop.
    pub shop_position: u64,
    store: Arc<dyn Store>,
    log: String,
    at_hand: Mutex<AtHand>,
    index: Index,
    touched: Touched,
    /// Vehicles and customers that have a record under another name as well.
    same_vehicle: Arc<Same>,
    same_customer: Arc<Same>,
}

impl Clone for World {
    /// The same world for another who looks: what is folded is shared, not copied.
    fn clone(&self) -> Self {
        Self {
            position: self.position,
            shop: self.shop.clone(),
            shop_unread: self.shop_unread.clone(),
            shop_position: self.shop_position,
            store: Arc::clone(&self.store),
            log: self.log.clone(),
            at_hand: Mutex::new(self.at_hand().clone()),
            index: self.index.clone(),
            touched: self.touched.clone(),
            same_vehicle: Arc::clone(&self.same_vehicle),
            same_customer: Arc::clone(&self.same_customer),
        }
    }
}

/// An order that was handed over and not taken back since.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Finished {
    /// Its number.
    pub number: u64,
    /// The order.
    pub order: OrderId,
    /// The position of its last row: where that is the same, so is what it teaches.
    pub position: u64,
    /// The map by which it worked.
    pub map: Option<MapId>,
}

impl Finished {
    /// As it stands on a card.
    fn written(&self) -> String {
        let map = self.map.as_ref().map_or("", MapId::as_str);
        format!("{} {} {map}", self.position, self.order)
    }

    fn read(card: &store::Card) -> Option<Self> {
        let mut parts = card.value.splitn(3, ' ');
        Some(Self {
            number: card.key.rsplit(' ').next()?.parse().ok()?,
            position: parts.next()?.parse().ok()?,
            order: OrderId::new(parts.next()?),
            map: parts.next().filter(|map| !map.is_empty()).map(MapId::new),
        })
    }
}

/// The number of a shop's first order.
const FIRST_NUMBER: u64 = 1001;

/// What is asked for by name or number. An error says that the record cannot be read.
impl World {
    /// An order.
    pub fn order(&self, id: &OrderId) -> Result<Arc<Order>, Trouble> {
        match self.folded(&Stream::Order(id.clone()))?.folded {
            Folded::Order(order) => Ok(order),
            _ => Ok(Arc::default()),
        }
    }

    /// A vehicle, with what was said of it under other names.
    pub fn vehicle(&self, id: &VehicleId) -> Result<Arc<Vehicle>, Trouble> {
        let names = self.same_vehicles(id);
        let [first, others @ ..] = names.as_slice() else {
            return self.own_vehicle(id);
        };
        let own = self.own_vehicle(first)?;
        if others.is_empty() {
            return Ok(own);
        }
        let others: Result<Vec<_>, Trouble> =
            others.iter().map(|name| self.own_vehicle(name)).collect();
        Ok(Arc::new(Vehicle::clone(&own).with(others?)))
    }

    /// What was said of a vehicle under this very name.
    pub fn own_vehicle(&self, id: &VehicleId) -> Result<Arc<Vehicle>, Trouble> {
        match self.folded(&Stream::Vehicle(id.clone()))?.folded {
            Folded::Vehicle(vehicle) => Ok(vehicle),
            _ => Ok(Arc::default()),
        }
    }

    /// A customer, with what was said of them under other names.
    pub fn customer(&self, id: &CustomerId) -> Result<Arc<Customer>, Trouble> {
        let names = self.same_customers(id);
        let [first, others @ ..] = names.as_slice() else {
            return self.own_customer(id);
        };
        let own = self.own_customer(first)?;
        if others.is_empty() {
            return Ok(own);
        }
        let others: Result<Vec<_>, Trouble> =
            others.iter().map(|name| self.own_customer(name)).collect();
        Ok(Arc::new(Customer::clone(&own).with(others?)))
    }

    /// What was said of a customer under this very name.
    pub fn own_customer(&self, id: &CustomerId) -> Result<Arc<Customer>, Trouble> {
        match self.folded(&Stream::Customer(id.clone()))?.folded {
            Folded::Customer(customer) => Ok(customer),
            _ => Ok(Arc::default()),
        }
    }

    /// Every name under which a vehicle has a record, the one it goes by first.
    #[must_use]
    pub fn same_vehicles(&self, id: &VehicleId) -> Vec<VehicleId> {
        let names = self.same_vehicle.all(id.as_str()).into_iter();
        names.map(VehicleId::new).collect()
    }

    /// Every name under which a customer has a record, the one they go by first.
    #[must_use]
    pub fn same_customers(&self, id: &CustomerId) -> Vec<CustomerId> {
        let names = self.same_customer.all(id.as_str()).into_iter();
        names.map(CustomerId::new).collect()
    }

    /// A map.
    pub fn map(&self, id: &MapId) -> Result<Arc<MapDrafts>, Trouble> {
        match self.folded(&Stream::Map(id.clone()))?.folded {
            Folded::Map(map) => Ok(map),
            _ => Ok(Arc::default()),
        }
    }

    /// The names of all maps, in order.
    pub fn maps(&self) -> Result<Vec<MapId>, Trouble> {
        let cards = self.index.cards(&Wanted::from(drawer::MAP, ""))?;
        Ok(cards.into_iter().map(|card| MapId::new(card.key)).collect())
    }

    /// Kinds of vehicles that go by another, each with that one, as it was said of each.
    pub fn kinds_joined(&self) -> Result<BTreeMap<MapId, MapId>, Trouble> {
        let cards = self.index.cards(&Wanted::from(drawer::SAME_KIND, ""))?;
        let pair = |card: store::Card| (MapId::new(card.key), MapId::new(card.value));
        Ok(cards.into_iter().map(pair).collect())
    }

    /// The order that people call by this number.
    pub fn order_numbered(&self, number: u64) -> Result<Option<OrderId>, Trouble> {
        let card = self.index.card(drawer::NUMBER, &padded(number))?;
        Ok(card.map(|card| OrderId::new(card.value)))
    }

    /// The number that people call an order by.
    pub fn number_of(&self, id: &OrderId) -> Result<Option<u64>, Trouble> {
        Ok(self.order_card(id)?.number)
    }

    /// The number the next order gets.
    pub fn next_number(&self) -> Result<u64, Trouble> {
        let last = self.orders_before(None, 1)?;
        Ok(last
            .first()
            .map_or(FIRST_NUMBER, |(number, _)| number.saturating_add(1)))
    }

    /// The number the next invoice gets: invoices are numbered on from one, without a gap.
    pub fn next_invoice(&self) -> Result<u64, Trouble> {
        self.next_in(drawer::INVOICE)
    }

    /// The number the next credit note gets: they have a series of their own, without a gap.
    pub fn next_credit(&self) -> Result<u64, Trouble> {
        self.next_in(drawer::CREDIT)
    }

    fn next_in(&self, drawer: &str) -> Result<u64, Trouble> {
        let cards = self.index.cards(&Wanted {
            backwards: true,
            most: 1,
            ..Wanted::from(drawer, "")
        })?;
        match cards.first() {
            Some(card) => filing::number_in(card).map(|number| number.saturating_add(1)),
            None => Ok(1),
        }
    }

    /// At most `most` orders, newest first, from below this number if one is given.
    pub fn orders_before(
        &self,
        before: Option<u64>,
        most: usize,
    ) -> Result<Vec<(u64, OrderId)>, Trouble> {
        let below = before.map(padded);
        self.numbered(&Wanted {
            below: below.as_deref(),
            most,
            ..Wanted::from(drawer::NUMBER, "")
        })
    }

    /// The orders that are not settled, newest first: few, however long the shop has been
    /// at work. Settled is what was handed over, or voided, and of which nothing that came
    /// in since stands open; what comes in later can make it unsettled again.
    pub fn orders_here(&self) -> Result<Vec<(u64, OrderId)>, Trouble> {
        self.numbered(&Wanted::from(drawer::HERE, ""))
    }

    /// Where the vehicles of orders stand that are here, off the cards alone.
    pub fn standing_here(&self) -> Result<Vec<Standing>, Trouble> {
        let cards = self.index.cards(&Wanted::from(drawer::STANDS, ""))?;
        let standing = |card| Standing::read(card).ok_or_else(|| odd(card));
        cards.iter().map(standing).collect()
    }

    /// The orders about a vehicle, newest first.
    pub fn orders_of_vehicle(&self, id: &VehicleId) -> Result<Vec<(u64, OrderId)>, Trouble> {
        let names = self.same_vehicles(id);
        self.numbered_under_all(drawer::OF_VEHICLE, names.iter().map(VehicleId::as_str))
    }

    /// The orders opened for a customer, newest first.
    pub fn orders_of_customer(&self, id: &CustomerId) -> Result<Vec<(u64, OrderId)>, Trouble> {
        let names = self.same_customers(id);
        self.numbered_under_all(drawer::OF_CUSTOMER, names.iter().map(CustomerId::as_str))
    }

    /// The newest finished orders of vehicles whose label has this code, newest first.
    pub fn finished_of_label(&self, code: &str, most: usize) -> Result<Vec<Finished>, Trouble> {
        self.finished_under(drawer::OF_LABEL, code, most)
    }

    /// The newest finished orders that worked by a map, newest first.
    pub fn finished_of_map(&self, map: &MapId, most: usize) -> Result<Vec<Finished>, Trouble> {
        self.finished_under(drawer::OF_MAP, map.as_str(), most)
    }

    /// The newest finished orders, newest first.
    pub fn finished(&self, most: usize) -> Result<Vec<Finished>, Trouble> {
        let mut out = Vec::new();
        let mut below = None;
        while out.len() < most {
            let page = self.orders_before(below, most)?;
            let Some((last, _)) = page.last() else { break };
            below = Some(*last);
            for (number, order) in page {
                let card = self.order_card(&order)?;
                let finished = card.finished(number, &order);
                out.extend(finished.filter(|_| out.len() < most));
            }
        }
        Ok(out)
    }

    /// The vehicle that an order is about, without reading the order.
    pub fn vehicle_of_order(&self, id: &OrderId) -> Result<Option<VehicleId>, Trouble> {
        Ok(self.order_card(id)?.vehicle())
    }

    /// The codes of vehicles' labels that finished orders have, with how many have each.
    pub fn labels_finished(&self) -> Result<BTreeMap<String, usize>, Trouble> {
        let mut labels: BTreeMap<String, usize> = BTreeMap::new();
        for card in self.index.cards(&Wanted::from(drawer::LABEL, ""))? {
            *labels.entry(card.value).or_default() += 1;
        }
        Ok(labels)
    }

    fn finished_under(
        &self,
        drawer: &str,
        name: &str,
        most: usize,
    ) -> Result<Vec<Finished>, Trouble> {
        let (from, below) = under(name);
        let cards = self.index.cards(&Wanted {
            below: Some(&below),
            backwards: true,
            most,
            ..Wanted::from(drawer, &from)
        })?;
        let finished = |card: &store::Card| Finished::read(card).ok_or_else(|| odd(card));
        cards.iter().map(finished).collect()
    }

    /// This customer's vehicles.
    pub fn vehicles_of(&self, id: &CustomerId) -> Result<Vec<VehicleId>, Trouble> {
        let mut out = Vec::new();
        for name in self.same_customers(id) {
            let (from, below) = under(name.as_str());
            let cards = self.index.cards(&Wanted {
                below: Some(&below),
                ..Wanted::from(drawer::VEHICLE_OF, &from)
            })?;
            for card in &cards {
                let vehicle = card.key.get(from.len()..).map(VehicleId::new);
                out.push(vehicle.ok_or_else(|| odd(card))?);
            }
        }
        Ok(out)
    }

    /// The first row of a stream that this program cannot read, if there is one. What the
    /// stream comes to here lacks it, and nothing is written into the stream.
    pub fn unread(&self, stream: &Stream) -> Result<Option<Arc<Unread>>, Trouble> {
        if *stream == Stream::Shop {
            return Ok(self.shop_unread.clone());
        }
        Ok(self.folded(stream)?.unread)
    }

    /// The first row that cannot be read of every stream that has one, by the streams' names.
    pub fn all_unread(&self) -> Result<Vec<Unread>, Trouble> {
        let cards = self.index.cards(&Wanted::from(drawer::UNREAD, ""))?;
        let each = cards.iter().map(unread_on);
        each.collect()
    }

    /// The last sequence number of a stream; nought if it holds nothing.
    pub fn seq(&self, stream: &Stream) -> Result<u64, Trouble> {
        if *stream != Stream::Shop {
            return Ok(self.folded(stream)?.seq);
        }
        match self.index.card(drawer::SHOP_SEQ, "")? {
            Some(card) => card.value.parse().map_err(|_| odd(&card)),
            None => Ok(0),
        }
    }

    fn numbered_under(&self, drawer: &str, name: &str) -> Result<Vec<(u64, OrderId)>, Trouble> {
        let (from, below) = under(name);
        self.numbered(&Wanted {
            below: Some(&below),
            ..Wanted::from(drawer, &from)
        })
    }

    /// The same under several names.
    fn numbered_under_all<'a>(
        &self,
        drawer: &str,
        names: impl Iterator<Item = &'a str>,
    ) -> Result<Vec<(u64, OrderId)>, Trouble> {
        let mut out = Vec::new();
        for name in names {
            out.extend(self.numbered_under(drawer, name)?);
        }
        out.sort_by(|one, other| other.cmp(one));
        Ok(out)
    }

    /// Orders off cards whose keys end in a number, the last first.
    fn numbered(&self, wanted: &Wanted<'_>) -> Result<Vec<(u64, OrderId)>, Trouble> {
        let backwards = Wanted {
            backwards: true,
            ..*wanted
        };
        let cards = self.index.cards(&backwards)?;
        cards
            .into_iter()
            .map(|card| {
                let number = card.key.rsplit(' ').next().and_then(|key| key.parse().ok());
                let number = number.ok_or_else(|| odd(&card))?;
                Ok((number, OrderId::new(card.value)))
            })
            .collect()
    }
}

/// How it comes about.
impl World {
    /// The world up to where the stored index stands.
    pub(crate) fn open(store: Arc<dyn Store>, log: &str) -> Result<Self, Trouble> {
        let index = Index::open(Arc::clone(&store), log)?;
        for card in index.cards(&Wanted::from(drawer::UNREAD, ""))? {
            let unread = unread_on(&card)?;
            let rows = store.log(log, unread.position.saturating_sub(1), 1)?;
            if rows.first().is_some_and(|row| read::row(row).is_ok()) {
                // This program can read what the one before it could not.
                return Self::blank(store, log);
            }
        }
        Self::by(store, log, index)
    }

    /// The world before the first row, going by nothing that is stored but the log.
    pub(crate) fn blank(store: Arc<dyn Store>, log: &str) -> Result<Self, Trouble> {
        let index = Index::blank(Arc::clone(&store), log);
        Self::by(store, log, index)
    }

    fn by(store: Arc<dyn Store>, log: &str, index: Index) -> Result<Self, Trouble> {
        let mut world = Self {
            position: index.position,
            shop: Shop::default(),
            shop_unread: None,
            shop_position: 0,
            store,
            log: log.to_owned(),
            at_hand: Mutex::default(),
            index,
            touched: Touched::default(),
            same_vehicle: Arc::default(),
            same_customer: Arc::default(),
        };
        world.read_same()?;
        for card in world.index.cards(&Wanted::from(drawer::SHOP, ""))? {
            let position: u64 = card.value.parse().map_err(|_| odd(&card))?;
            let rows = world.store.log(log, position.saturating_sub(1), 1)?;
            let row = rows.first().ok_or_else(|| odd(&card))?;
            if row.stream != Stream::Shop.to_string() {
                return Err(odd(&card));
            }
            world.take_in(row, read::row(row));
        }
        Ok(world)
    }

    /// Folds the next rows of the log.
    ///
    /// # Errors
    /// [`Trouble`], if the record cannot be read. A single row that cannot be read is no
    /// trouble: its stream says so from then on.
    pub(crate) fn take(&mut self, rows: &[Row]) -> Result<(), Trouble> {
        let from = self.position;
        let mut joins = false;
        for row in rows.iter().filter(|row| row.position > from) {
            let event = read::row(row);
            if row.position > self.index.position {
                self.note_row(row, &event)?;
            }
            joins |= event
                .as_ref()
                .is_ok_and(|(_, one)| same::is_said(&one.event));
            self.take_in(row, event);
            self.position = row.position;
        }
        self.finish_notes()?;
        // The cards may be another program's, which had read further.
        if joins { self.read_same() } else { Ok(()) }
    }

    /// What a row changes in memory.
    fn take_in(&mut self, row: &Row, event: Result<(Stream, Recorded<AnyEvent>), Box<Unread>>) {
        match event {
            Ok((stream, recorded)) => self.file(row, &stream, recorded),
            Err(unread) => self.pass_over(&unread),
        }
    }

    fn pass_over(&mut self, unread: &Unread) {
        match Stream::read(&unread.stream) {
            Ok(Stream::Shop) => {
                let first = &mut self.shop_unread;
                first.get_or_insert_with(|| Arc::new(unread.clone()));
            }
            Ok(stream) => self.at_hand().pass_over(&stream, unread),
            // A stream of a family that only a newer program has: nobody asks for it here.
            Err(_) => {}
        }
    }

    /// What a row changes on the cards.
    fn note_row(
        &mut self,
        row: &Row,
        event: &Result<(Stream, Recorded<AnyEvent>), Box<Unread>>,
    ) -> Result<(), Trouble> {
        match event {
            Ok((stream, recorded)) => self.note(row, stream, recorded),
            Err(unread) => self.note_unread(row, unread),
        }
    }

    /// Writes the index once enough is new, or at once.
    ///
    /// # Errors
    /// [`Trouble`], if another program wrote it, and what it wrote cannot be read.
    pub(crate) fn save(&mut self, at_once: bool) -> Result<(), Trouble> {
        /// Whoever is quicker this often has written what this would have.
        const MOST_TRIES: usize = 3;
        for _ in 0..MOST_TRIES {
            if !(at_once || self.index.is_due()) || self.index.save().is_continue() {
                break;
            }
            self.index.look()?;
            self.touched = Touched::default();
            self.note_again()?;
        }
        Ok(())
    }

    /// The store and the log's name.
    pub(crate) fn record(&self) -> (&dyn Store, &str) {
        (self.store.as_ref(), &self.log)
    }

    pub(crate) fn index(&self) -> &Index {
        &self.index
    }

    /// The cards of rows that are folded already, after another program's index.
    fn note_again(&mut self) -> Result<(), Trouble> {
        const PAGE: usize = 1_000;
        while self.index.position < self.position {
            let rows = self.store.log(&self.log, self.index.position, PAGE)?;
            if rows.is_empty() {
                break;
            }
            let end = self.position;
            for row in rows.iter().filter(|row| row.position <= end) {
                self.note_row(row, &read::row(row))?;
            }
        }
        self.finish_notes()?;
        self.read_same()
    }

    /// Which names are of one vehicle or customer, off the cards.
    fn read_same(&mut self) -> Result<(), Trouble> {
        let read = |drawer: &str| -> Result<Arc<Same>, Trouble> {
            let cards = self.index.cards(&Wanted::from(drawer, ""))?;
            let pairs = cards.into_iter().map(|card| (card.key, card.value));
            Ok(Arc::new(pairs.collect()))
        };
        let (vehicles, customers) = (read(drawer::SAME_VEHICLE)?, read(drawer::SAME_CUSTOMER)?);
        (self.same_vehicle, self.same_customer) = (vehicles, customers);
        Ok(())
    }

    /// Files an event in memory alone, as if it had been recorded.
    pub(crate) fn suppose(
        &mut self,
        stream: &Stream,
        recorded: Recorded<AnyEvent>,
    ) -> Result<(), Trouble> {
        let seq = self.folded(stream)?.seq;
        self.at_hand().file(stream, seq + 1, recorded);
        Ok(())
    }

    /// What a stream comes to up to this world's position, and its last sequence number.
    fn folded(&self, stream: &Stream) -> Result<Known, Trouble> {
        if let Some(known) = self.at_hand().get(stream) {
            return Ok(known);
        }
        let rows = self.store.stream(&self.log, &stream.to_string(), 0)?;
        let mut known = Known {
            folded: Folded::blank(stream),
            seq: 0,
            unread: None,
        };
        let mut events = 0;
        for row in rows.iter().filter(|row| row.position <= self.position) {
            match read::row(row) {
                Ok((_, recorded)) => known.folded.file(recorded),
                Err(unread) => known.unread = known.unread.or(Some(Arc::from(unread))),
            }
            known.seq = row.seq;
            events += 1;
        }
        self.at_hand().put(stream.clone(), known.clone(), events);
        Ok(known)
    }

    fn at_hand(&self) -> MutexGuard<'_, AtHand> {
        self.at_hand.lock().unwrap_or_else(PoisonError::into_inner)
    }
}

fn unread_on(card: &store::Card) -> Result<Unread, Trouble> {
    serde_json::from_str(&card.value).map_err(|_| odd(card))
}

/// The vehicle an order is about.
#[must_use]
pub fn vehicle_of(order: &Order) -> Option<VehicleId> {
    opened(order).map(|(vehicle, _)| vehicle.clone())
}

/// The customer an order was opened for.
#[must_use]
pub fn customer_of(order: &Order) -> Option<CustomerId> {
    opened(order).map(|(_, customer)| customer.clone())
}

fn opened(order: &Order) -> Option<(&VehicleId, &CustomerId)> {
    let mut decisions = order.decisions().iter();
    decisions.find_map(|decided| match &decided.decision {
        Decision::Opened {
            vehicle, customer, ..
        } => Some((vehicle, customer)),
        _ => None,
    })
}

/// A text for finding: letters and digits only, small.
pub(crate) fn squeezed(text: &str) -> String {
    text.chars()
        .filter(|c| c.is_alphanumeric())
        .flat_map(char::to_lowercase)
        .collect()
}

/// A number as a key: the order of keys is the order of numbers.
fn padded(number: u64) -> String {
    format!("{number:020}")
}

/// Where the keys that begin with a name begin and end. No name holds a space, which
/// stands between, nor the sign after it.
fn under(name: &str) -> (String, String) {
    (format!("{name} "), format!("{name}!"))
}
