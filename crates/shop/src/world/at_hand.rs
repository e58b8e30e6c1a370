//! Streams folded lately, kept in memory for the next who ask. What was not asked for in
//! a while is let go: it can be folded again from its own rows.

use super::read::Unread;
use record::{AnyEvent, Stream};
use repair::{Customer, MapDrafts, Order, Recorded, Vehicle, evolve};
use std::collections::BTreeMap;
use std::sync::Arc;

/// What a stream comes to.
#[derive(Debug, Clone)]
pub(super) enum Folded {
    Order(Arc<Order>),
    Vehicle(Arc<Vehicle>),
    Customer(Arc<Customer>),
    Map(Arc<MapDrafts>),
    /// The shop is not folded here; its stream has a length all the same.
    Shop,
}

/// Folded streams with their last sequence numbers.
#[derive(Debug, Clone, Default)]
pub(super) struct AtHand {
    streams: BTreeMap<Stream, Held>,
    /// Events of all that is held: what it takes in memory goes by these.
    events: usize,
    asked: u64,
}

/// A folded stream.
#[derive(Debug, Clone)]
pub(super) struct Known {
    pub(super) folded: Folded,
    pub(super) seq: u64,
    /// The first of its rows that could not be read: what is folded lacks it.
    pub(super) unread: Option<Arc<Unread>>,
}

#[derive(Debug, Clone)]
struct Held {
    known: Known,
    events: usize,
    /// When it was asked for last, counted in questions.
    asked: u64,
}

/// How many events are held, about a KiB each, beside the longest stream: a shop's open orders
/// many times over. The longest is held whatever its length, since it is the one that nobody
/// wants to wait for at every tap.
const MOST_EVENTS: usize = 10_000;

impl Folded {
    pub(super) fn blank(stream: &Stream) -> Self {
        match stream {
            Stream::Order(_) => Self::Order(Arc::default()),
            Stream::Vehicle(_) => Self::Vehicle(Arc::default()),
            Stream::Customer(_) => Self::Customer(Arc::default()),
            Stream::Map(_) => Self::Map(Arc::default()),
            Stream::Shop => Self::Shop,
        }
    }

    /// Files one event of the stream.
    pub(super) fn file(&mut self, recorded: Recorded<AnyEvent>) {
        let Recorded {
            command,
            nth,
            stamp,
            event,
        } = recorded;
        macro_rules! with {
            ($event:expr) => {
                Recorded {
                    command,
                    nth,
                    stamp,
                    event: $event,
                }
            };
        }
        match (self, event) {
            (Self::Order(order), AnyEvent::Order(event)) => {
                let order = Arc::make_mut(order);
                *order = evolve(std::mem::take(order), with!(event));
            }
            (Self::Vehicle(vehicle), AnyEvent::Vehicle(fact)) => {
                let vehicle = Arc::make_mut(vehicle);
                *vehicle = std::mem::take(vehicle).file(with!(fact));
            }
            (Self::Customer(customer), AnyEvent::Customer(fact)) => {
                let customer = Arc::make_mut(customer);
                *customer = std::mem::take(customer).file(with!(fact));
            }
            (Self::Map(map), AnyEvent::Map(fact)) => {
                let map = Arc::make_mut(map);
                *map = std::mem::take(map).file(with!(fact));
            }
            // An event is of its stream's own family.
            _ => {}
        }
    }
}

impl AtHand {
    pub(super) fn get(&mut self, stream: &Stream) -> Option<Known> {
        self.asked += 1;
        let held = self.streams.get_mut(stream)?;
        held.asked = self.asked;
        Some(held.known.clone())
    }

    pub(super) fn put(&mut self, stream: Stream, known: Known, events: usize) {
        let held = Held {
            known,
            // A stream without events takes its place as well.
            events: events + 1,
            asked: self.asked,
        };
        self.events += held.events;
        if let Some(before) = self.streams.insert(stream, held) {
            self.events -= before.events;
        }
        if self.events > MOST_EVENTS {
            self.let_go();
        }
    }

    /// The longest stream, of several the one asked for last, with how many events it has.
    fn longest(&self) -> Option<(Stream, usize)> {
        let longest = self
            .streams
            .iter()
            .max_by_key(|(_, held)| (held.events, held.asked));
        longest.map(|(stream, held)| (stream.clone(), held.events))
    }

    /// Files an event of a stream that is held; of others there is nothing to keep.
    pub(super) fn file(&mut self, stream: &Stream, seq: u64, recorded: Recorded<AnyEvent>) {
        if let Some(held) = self.streams.get_mut(stream) {
            held.known.folded.file(recorded);
            held.known.seq = seq;
            held.events += 1;
            self.events += 1;
        }
    }

    /// The same for a row that could not be read.
    pub(super) fn pass_over(&mut self, stream: &Stream, unread: &Unread) {
        if let Some(held) = self.streams.get_mut(stream) {
            held.known.seq = unread.seq;
            let first = &mut held.known.unread;
            first.get_or_insert_with(|| Arc::new(unread.clone()));
        }
    }

    /// Keeps the longest, and of the others the half that was asked for last.
    fn let_go(&mut self) {
        let Some((spared, longest)) = self.longest() else {
            return;
        };
        if self.events - longest <= MOST_EVENTS {
            return;
        }
        let mut by_age: Vec<(u64, Stream)> = self
            .streams
            .iter()
            .filter(|(stream, _)| **stream != spared)
            .map(|(stream, held)| (held.asked, stream.clone()))
            .collect();
        by_age.sort();
        for (_, stream) in by_age {
            if self.events - longest <= MOST_EVENTS / 2 {
                return;
            }
            if let Some(held) = self.streams.remove(&stream) {
                self.events -= held.events;
            }
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use repair::OrderId;

    fn name(nth: usize) -> Stream {
        Stream::Order(OrderId::new(format!("order-{nth}")))
    }

    fn put(at_hand: &mut AtHand, nth: usize, events: usize) {
        let known = Known {
            folded: Folded::blank(&name(nth)),
            seq: 1,
            unread: None,
        };
        at_hand.put(name(nth), known, events);
    }

    #[test]
    fn what_was_asked_for_lately_stays() {
        let mut at_hand = AtHand::default();
        for nth in 0..300 {
            put(&mut at_hand, nth, 99);
            assert!(at_hand.get(&name(0)).is_some(), "after {nth} others");
        }
        assert!(at_hand.events <= MOST_EVENTS + 100);
        assert_eq!(
            at_hand.events,
            at_hand
                .streams
                .values()
                .map(|held| held.events)
                .sum::<usize>()
        );
        assert!(at_hand.get(&name(299)).is_some());
        assert!(at_hand.get(&name(1)).is_none());
    }

    #[test]
    fn the_longest_stays_and_lets_others_stay() {
        let mut at_hand = AtHand::default();
        put(&mut at_hand, 0, 5 * MOST_EVENTS);
        for nth in 1..50 {
            put(&mut at_hand, nth, 10);
        }
        assert!((0..50).all(|nth| at_hand.get(&name(nth)).is_some()));
        // A longer one takes its place; what nobody asks for goes.
        put(&mut at_hand, 50, 6 * MOST_EVENTS);
        assert!(at_hand.get(&name(50)).is_some());
        assert!(at_hand.get(&name(0)).is_none());
    }
}
