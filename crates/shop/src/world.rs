//! Everything folded from the log: a cache that any reader can make again.

use crate::trouble::{Trouble, TroubleKind};
use record::{AnyEvent, Stored, Stream, decode};
use repair::{
    Beside, CommandId, Customer, CustomerId, Decision, Event, Fact, MapDrafts, MapId, Order,
    OrderId, PersonId, Recorded, Shop, ShopFact, Stamp, Vehicle, VehicleId, evolve,
};
use std::collections::{BTreeMap, BTreeSet};
use std::sync::Arc;
use store::Row;

/// The shop's log, folded. What is asked for by name is blank if nothing was ever filed
/// under that name, as a stream that was never written to reads as empty.
#[derive(Debug, Clone, Default)]
pub struct World {
    /// The last position folded.
    pub position: u64,
    /// The shop itself: settings, people, stalls. The numbers it gave to orders are asked
    /// for below.
    pub shop: Shop,
    pub(crate) orders: BTreeMap<OrderId, Arc<Order>>,
    /// Orders that were handed over, with nothing but payments since: no fact that came
    /// in after can call for a look at them.
    pub(crate) settled: BTreeSet<OrderId>,
    pub(crate) vehicles: BTreeMap<VehicleId, Arc<Vehicle>>,
    pub(crate) customers: BTreeMap<CustomerId, Arc<Customer>>,
    maps: BTreeMap<MapId, Arc<MapDrafts>>,
    numbers: BTreeMap<u64, OrderId>,
    pub(crate) seqs: BTreeMap<Stream, u64>,
}

/// The number of a shop's first order.
const FIRST_NUMBER: u64 = 1001;

/// What is asked for by name. An error says that the record cannot be read.
impl World {
    /// An order.
    pub fn order(&self, id: &OrderId) -> Result<Arc<Order>, Trouble> {
        Ok(self.orders.get(id).cloned().unwrap_or_default())
    }

    /// A vehicle.
    pub fn vehicle(&self, id: &VehicleId) -> Result<Arc<Vehicle>, Trouble> {
        Ok(self.vehicles.get(id).cloned().unwrap_or_default())
    }

    /// A customer.
    pub fn customer(&self, id: &CustomerId) -> Result<Arc<Customer>, Trouble> {
        Ok(self.customers.get(id).cloned().unwrap_or_default())
    }

    /// A map.
    pub fn map(&self, id: &MapId) -> Result<Arc<MapDrafts>, Trouble> {
        Ok(self.maps.get(id).cloned().unwrap_or_default())
    }

    /// The names of all maps, in order.
    pub fn maps(&self) -> Result<Vec<MapId>, Trouble> {
        Ok(self.maps.keys().cloned().collect())
    }

    /// The order that people call by this number.
    pub fn order_numbered(&self, number: u64) -> Result<Option<OrderId>, Trouble> {
        Ok(self.numbers.get(&number).cloned())
    }

    /// The number that people call an order by.
    pub fn number_of(&self, id: &OrderId) -> Result<Option<u64>, Trouble> {
        let mut numbers = self.numbers.iter();
        Ok(numbers
            .find(|(_, known)| *known == id)
            .map(|(number, _)| *number))
    }

    /// The number the next order gets.
    pub fn next_number(&self) -> Result<u64, Trouble> {
        Ok(self
            .numbers
            .last_key_value()
            .map_or(FIRST_NUMBER, |(number, _)| number.saturating_add(1)))
    }

    /// At most `most` orders, newest first, from below this number if one is given.
    pub fn orders_before(
        &self,
        before: Option<u64>,
        most: usize,
    ) -> Result<Vec<(u64, OrderId)>, Trouble> {
        let below = ..before.unwrap_or(u64::MAX);
        Ok(self
            .numbers
            .range(below)
            .rev()
            .take(most)
            .map(|(number, id)| (*number, id.clone()))
            .collect())
    }

    /// The orders that are not settled, newest first: few, however long the shop has been
    /// at work. Settled is what was handed over with nothing but payments since, so that
    /// no fact that came in after can call for a look at it.
    pub fn orders_here(&self) -> Result<Vec<(u64, OrderId)>, Trouble> {
        self.orders_where(|id, _| !self.settled.contains(id))
    }

    /// The orders about a vehicle, newest first.
    pub fn orders_of_vehicle(&self, id: &VehicleId) -> Result<Vec<(u64, OrderId)>, Trouble> {
        self.orders_where(|_, order| vehicle_of(order).as_ref() == Some(id))
    }

    /// The orders opened for a customer, newest first.
    pub fn orders_of_customer(&self, id: &CustomerId) -> Result<Vec<(u64, OrderId)>, Trouble> {
        self.orders_where(|_, order| customer_of(order).as_ref() == Some(id))
    }

    /// The vehicles that were first spoken of as this customer's.
    pub fn vehicles_of(&self, id: &CustomerId) -> Result<Vec<VehicleId>, Trouble> {
        let vehicles = self.vehicles.iter();
        Ok(vehicles
            .filter(|(_, vehicle)| vehicle.customer() == Some(id))
            .map(|(id, _)| id.clone())
            .collect())
    }

    /// The last sequence number of a stream; nought if it holds nothing.
    pub fn seq(&self, stream: &Stream) -> Result<u64, Trouble> {
        Ok(self.seqs.get(stream).copied().unwrap_or(0))
    }

    fn orders_where(
        &self,
        wanted: impl Fn(&OrderId, &Order) -> bool,
    ) -> Result<Vec<(u64, OrderId)>, Trouble> {
        let mut out = self.orders_before(None, usize::MAX)?;
        out.retain(|(_, id)| {
            self.orders
                .get(id)
                .is_some_and(|order| wanted(id, order.as_ref()))
        });
        Ok(out)
    }
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

impl World {
    /// Folds one row.
    ///
    /// # Errors
    /// [`Trouble`], if this program cannot read the row: the log is newer, or damaged.
    pub fn fold(&mut self, row: &Row) -> Result<(), Trouble> {
        let unreadable = |what: String| {
            Trouble::new(
                TroubleKind::Record,
                format!("row {} of the record", row.position),
                what,
                "run `buttonup verify`; if the record is sound, use the newer program",
            )
        };
        let stream = Stream::read(&row.stream).map_err(|e| unreadable(e.to_string()))?;
        let stored = Stored {
            kind: row.kind.clone(),
            version: row.version,
            body: row.body.clone(),
        };
        let event = decode(&stream, &stored).map_err(|e| unreadable(e.to_string()))?;
        let stamp = Stamp {
            who: PersonId::new(row.who.clone()),
            at: row
                .happened_at
                .parse()
                .map_err(|_| unreadable(format!("{:?} is no time", row.happened_at)))?,
        };
        self.file(row, &stream, stamp, event);
        self.seqs.insert(stream, row.seq);
        self.position = row.position;
        Ok(())
    }

    fn file(&mut self, row: &Row, stream: &Stream, stamp: Stamp, event: AnyEvent) {
        let command = CommandId::new(row.command_id.clone());
        let nth = row.nth;
        match (event, stream) {
            (AnyEvent::Order(event), Stream::Order(id)) => {
                match &event {
                    Event::Decision(Decision::HandedOver { .. }) => {
                        self.settled.insert(id.clone());
                    }
                    Event::Fact(Fact::Paid { .. }) => {}
                    _ => {
                        self.settled.remove(id);
                    }
                }
                let order = Arc::make_mut(self.orders.entry(id.clone()).or_default());
                *order = evolve(
                    std::mem::take(order),
                    Recorded {
                        command,
                        nth,
                        stamp,
                        event,
                    },
                );
            }
            (AnyEvent::Vehicle(event), Stream::Vehicle(id)) => {
                file(&mut self.vehicles, id, command, nth, stamp, event);
            }
            (AnyEvent::Customer(event), Stream::Customer(id)) => {
                file(&mut self.customers, id, command, nth, stamp, event);
            }
            (AnyEvent::Map(event), Stream::Map(id)) => {
                file(&mut self.maps, id, command, nth, stamp, event);
            }
            (AnyEvent::Shop(ShopFact::NumberGiven { number, order }), _) => {
                self.numbers.insert(number, order);
            }
            (AnyEvent::Shop(event), _) => {
                self.shop = std::mem::take(&mut self.shop).file(Recorded {
                    command,
                    nth,
                    stamp,
                    event,
                });
            }
            // `decode` gives an event of the stream's own family.
            _ => {}
        }
    }
}

fn file<K: Ord + Clone, F: Clone>(
    all: &mut BTreeMap<K, Arc<Beside<F>>>,
    id: &K,
    command: CommandId,
    nth: u32,
    stamp: Stamp,
    event: F,
) {
    let one = Arc::make_mut(all.entry(id.clone()).or_default());
    *one = std::mem::take(one).file(Recorded {
        command,
        nth,
        stamp,
        event,
    });
}
