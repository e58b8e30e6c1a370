//! Folding one order's stored events.

use crate::{median, timed};
use serde_json::json;
use shop::record::{AnyEvent, Stored, Stream, decode};
use shop::repair::{CommandId, Event, Order, PersonId, Recorded, Stamp, evolve};
use std::path::Path;
use store::{Row, Sqlite, Store};

const ROUNDS: usize = 9;

/// Folds of 100, 1,000 and 10,000 events of one order, from stored bytes and from events
/// already read.
pub fn measure(shop: &Path) {
    let from = Sqlite::open_for_reading(shop).unwrap();
    let rows = from.log("shop", 0, usize::MAX).unwrap();
    let moved: Vec<Row> = rows.into_iter().filter(|row| row.kind == "moved").collect();
    for events in [100, 1_000, 10_000] {
        let rows: Vec<Row> = (1..=events).map(|nth| one_of(&moved, nth)).collect();
        let stored = median_millis(|| rows.iter().map(read).fold(Order::default(), evolve));
        let read: Vec<Recorded<Event>> = rows.iter().map(read).collect();
        let mut copies: Vec<Vec<Recorded<Event>>> = (0..ROUNDS).map(|_| read.clone()).collect();
        let folded = median_millis(|| {
            let events = copies.pop().expect("one copy a round");
            events.into_iter().fold(Order::default(), evolve)
        });
        println!(
            "{}",
            json!({ "events": events, "stored_millis": stored, "read_millis": folded })
        );
    }
}

fn median_millis<T>(mut work: impl FnMut() -> T) -> f64 {
    let times = (0..ROUNDS).map(|_| {
        let (answer, time) = timed(&mut work);
        // Dropped after the clock stopped.
        drop(answer);
        time.as_secs_f64() * 1e3
    });
    median(times.collect())
}

fn one_of(moved: &[Row], nth: u64) -> Row {
    let mut row = moved[usize::try_from(nth).unwrap() % moved.len()].clone();
    row.stream = "order:1".to_owned();
    row.position = nth;
    row.seq = nth;
    row.command_id = format!("00000000-0000-7000-8000-{nth:012}");
    row.nth = 0;
    row
}

fn read(row: &Row) -> Recorded<Event> {
    let stored = Stored {
        kind: row.kind.clone(),
        version: row.version,
        body: row.body.clone(),
    };
    let stream = Stream::read(&row.stream).unwrap();
    let AnyEvent::Order(event) = decode(&stream, &stored).unwrap() else {
        panic!("an order's stream holds its events");
    };
    Recorded {
        command: CommandId::new(row.command_id.clone()),
        nth: row.nth,
        stamp: Stamp {
            who: PersonId::new(row.who.clone()),
            at: row.happened_at.parse().unwrap(),
        },
        event,
    }
}
