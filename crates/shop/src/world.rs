//! Everything folded from the log: a cache that any reader can make again.

use crate::trouble::{Trouble, TroubleKind};
use record::{AnyEvent, Stored, Stream, decode};
use repair::{
    Beside, CommandId, Customer, CustomerId, Decision, Event, Fact, MapDrafts, MapId, Order,
    OrderId, PersonId, Recorded, Shop, Stamp, Vehicle, VehicleId, evolve,
};
use std::collections::{BTreeMap, BTreeSet};
use store::Row;

/// The shop's log, folded.
#[derive(Debug, Clone, Default)]
pub struct World {
    /// The last position folded.
    pub position: u64,
    /// Orders.
    pub orders: BTreeMap<OrderId, Order>,
    /// Orders that were handed over, with nothing but payments since: no fact that came
    /// in after can call for a look at them.
    pub settled: BTreeSet<OrderId>,
    /// Vehicles.
    pub vehicles: BTreeMap<VehicleId, Vehicle>,
    /// Customers.
    pub customers: BTreeMap<CustomerId, Customer>,
    /// Maps.
    pub maps: BTreeMap<MapId, MapDrafts>,
    /// The shop itself.
    pub shop: Shop,
    /// The last sequence number of each stream.
    pub seqs: BTreeMap<Stream, u64>,
    /// When each command's events were written down, for the story.
    pub recorded: BTreeMap<CommandId, u64>,
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
        self.recorded.entry(command.clone()).or_insert(row.position);
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
                let order = self.orders.entry(id.clone()).or_default();
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

    /// The last sequence number of a stream; nought if it holds nothing.
    #[must_use]
    pub fn seq(&self, stream: &Stream) -> u64 {
        self.seqs.get(stream).copied().unwrap_or(0)
    }
}

fn file<K: Ord + Clone, F>(
    all: &mut BTreeMap<K, Beside<F>>,
    id: &K,
    command: CommandId,
    nth: u32,
    stamp: Stamp,
    event: F,
) {
    let one = all.entry(id.clone()).or_default();
    *one = std::mem::take(one).file(Recorded {
        command,
        nth,
        stamp,
        event,
    });
}
