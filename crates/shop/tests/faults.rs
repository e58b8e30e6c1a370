//! What a page says when the record cannot be read, and what two programs on one record do to
//! each other.

#![allow(clippy::unwrap_used, reason = "a test fails by panicking")]

mod bench;

use bench::between::{Asked, Between};
use bench::{Bench, LOG, number};
use serde_json::json;
use shop::repair::Words;
use shop::view::{order, rows_here};
use shop::{Caller, Device, Service, Snapshot, Trouble, TroubleKind, whole};
use std::sync::{Arc, Mutex};
use store::{EngineError, Memory, Store};

/// A bench on a store with somebody in between, with one order.
fn between() -> (Arc<Between>, Bench, String) {
    let store = Between::new(Arc::new(Memory::new()));
    let mut bench = Bench::on(Arc::clone(&store) as Arc<dyn Store>);
    let id = bench.open("Ada Brandt", "Drayman", "KD 2302");
    bench.store = Arc::clone(&store) as Arc<dyn Store>;
    (store, bench, id)
}

#[test]
fn a_text_that_cannot_be_read_is_a_fault_and_never_erased() {
    let (store, bench, _) = between();
    for error in [
        EngineError::Unreachable {
            what: "cut".to_owned(),
        },
        EngineError::Io {
            what: "bad sector".to_owned(),
        },
    ] {
        // Another program: nothing is at hand yet.
        let fresh = bench.another_program();
        let fault = error.clone();
        store.act(move |asked| match asked {
            Asked::Private(_) => Err(fault.clone()),
            _ => Ok(()),
        });
        type Look<'a> = &'a dyn Fn(&Snapshot<'_>) -> Result<(), Trouble>;
        let looks: [Look<'_>; 2] = [&|snap| order(snap, 1001).map(drop), &|snap| {
            rows_here(snap).map(drop)
        }];
        for look in looks {
            let trouble = fresh.look(&Caller::program(), look).unwrap_err();
            let kind = match error {
                EngineError::Unreachable { .. } => TroubleKind::Away,
                _ => TroubleKind::Record,
            };
            assert_eq!(trouble.kind, kind, "{trouble}");
        }
        store.leave();
        // A fault is not kept at hand, nor is it carried on to the next look.
        let view = fresh
            .look(&Caller::program(), |snap| order(snap, 1001))
            .unwrap();
        assert_eq!(view.row.customer, "Ada Brandt");
    }
}

#[test]
fn only_an_erasure_says_erased() {
    let bench = Bench::new();
    let never_came = Words([7; 32]);
    let trouble = whole(|| Ok(bench.service.texts().text(never_came))).unwrap_err();
    assert_eq!(trouble.kind, TroubleKind::Record);
    assert!(trouble.what.contains("missing"), "{trouble}");
}

#[test]
fn no_number_is_given_twice_where_another_program_saves_the_index_in_between() {
    let (store, mut bench, first) = between();
    bench.service.save_index().unwrap();
    let other = Arc::new(Mutex::new((bench.another_program(), false)));
    // While this program looks for the next number, the other opens an order, and writes the
    // index that both go by.
    store.act(move |asked| {
        if *asked == Asked::Cards("number".to_owned()) {
            let mut other = other.lock().unwrap();
            if !std::mem::replace(&mut other.1, true) {
                let mut device = Device::new("another", "ben");
                let open = json!({ "open": { "vehicle": "v", "customer": "c" } });
                let at = "2026-11-25T08:00:00Z".parse().unwrap();
                let open = device.command("order:theirs", at, "request", open);
                other.0.command(&Caller::program(), open).unwrap();
                other.0.save_index().unwrap();
            }
        }
        Ok(())
    });
    let open = json!({ "open": { "vehicle": "v", "customer": "c" } });
    bench.ask("ours", open).unwrap();
    store.leave();
    let program = bench.another_program();
    let numbers: Vec<u64> = [first.as_str(), "theirs", "ours"]
        .map(|order| number(&program, order))
        .into();
    assert_eq!(numbers, [1001, 1002, 1003]);
    let given = bench.store.stream(LOG, "shop", 0).unwrap();
    let given = given.iter().filter(|row| row.kind == "number-given");
    assert_eq!(given.count(), 3);
}

/// Says that it is over when it goes.
struct Ends<'a>(&'a std::sync::atomic::AtomicBool);

impl Drop for Ends<'_> {
    fn drop(&mut self) {
        self.0.store(true, std::sync::atomic::Ordering::Relaxed);
    }
}

/// `DECISIONS=2000 cargo test -p shop --test faults hot -- --nocapture` for longer.
#[test]
fn a_hot_order_never_starves_who_decides_about_it() {
    let decisions: usize =
        std::env::var("DECISIONS").map_or(60, |text| text.parse().expect("a whole number"));
    let mut bench = Bench::new();
    let id = bench.open("Ada Brandt", "Drayman", "KD 2302");
    let stream = format!("order:{id}");
    let at: jiff::Timestamp = "2026-11-25T08:00:00Z".parse().unwrap();
    let other = bench.another_program();
    let ended = std::sync::atomic::AtomicBool::new(false);
    let mut took = Vec::new();
    std::thread::scope(|scope| {
        // Whatever becomes of the decisions, the others end.
        let _ends = Ends(&ended);
        for (nth, program) in [&bench.service, &bench.service, &other]
            .into_iter()
            .enumerate()
        {
            let (stream, ended) = (&stream, &ended);
            scope.spawn(move || {
                let mut device = Device::new(&format!("phone-{nth}"), "ben");
                while !ended.load(std::sync::atomic::Ordering::Relaxed) {
                    let fact = json!({ "timed": { "stage": "s", "clock": "paused",
                        "book_minutes": null, "words": null } });
                    let fact = device.command(stream, at, "fact", fact);
                    program.command(&Caller::program(), fact).unwrap();
                }
            });
        }
        let mut device = Device::new("desk", "ana");
        for _ in 0..decisions {
            let request =
                json!({ "adopt": { "map": "drayman", "version": 1, "needs": [], "work": [] } });
            let request = device.command(&stream, at, "request", request);
            let began = std::time::Instant::now();
            bench.service.command(&Caller::program(), request).unwrap();
            took.push(began.elapsed());
        }
    });
    took.sort();
    let p99 = took[took.len() * 99 / 100];
    eprintln!("{decisions} decisions on a hot order: p99 {p99:?}");
    assert!(p99 < std::time::Duration::from_secs(5), "{p99:?}");
}

#[test]
fn a_request_that_comes_twice_at_once_gets_one_answer() {
    let (store, mut bench, id) = between();
    bench
        .ask(&id, json!({ "price": { "entries": [] } }))
        .unwrap();
    let void = json!({ "void": { "words": Device::words("opened by mistake") } });
    let sent = bench.make(&format!("order:{id}"), "request", void);
    // The same command reaches another program after this one has seen that it is new.
    let other: Arc<Mutex<Option<Service>>> = Arc::new(Mutex::new(Some(bench.another_program())));
    let answers = Arc::new(Mutex::new(Vec::new()));
    let (theirs, twice) = (Arc::clone(&answers), sent.clone());
    store.act(move |asked| {
        if *asked == Asked::Command
            && let Some(other) = other.lock().unwrap().take()
        {
            theirs
                .lock()
                .unwrap()
                .push(other.command(&Caller::program(), twice.clone()).unwrap());
        }
        Ok(())
    });
    let ours = bench.service.command(&Caller::program(), sent).unwrap();
    assert_eq!(*answers.lock().unwrap(), [ours]);
}
