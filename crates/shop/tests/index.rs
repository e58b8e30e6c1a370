//! The card index and what is folded on demand, against the same log folded from its first
//! row, and against what the orders themselves say: whatever is told, by however many
//! programs, wherever the index was written last.

#![allow(clippy::unwrap_used, reason = "a test fails by panicking")]

mod bench;

use bench::seen::{order, rows, rows_here, rows_of_vehicle, stands_here};
#[path = "../../record/tests/samples/mod.rs"]
mod samples;

use bench::{Bench, LOG};
use proptest::prelude::*;
use serde_json::{Value, json};
use shop::repair::{CustomerId, Token, VehicleId};
use shop::view::{MOST_ROWS, OrderRow};
use shop::{Breadth, Device, Service, Whom};
use std::sync::Arc;
use store::{CacheChange, Memory, Store, Wanted};

const NAMES: [&str; 3] = ["a", "b", "c"];

#[derive(Debug, Clone)]
enum Step {
    /// A command: where it goes, the field it stands in, the content.
    Sent(String, &'static str, Value),
    Open(&'static str, &'static str, &'static str),
    /// All that stands between an order and its hand-over, and that.
    Finish(&'static str),
    Erase(&'static str),
    /// The index is written, by the first program or the second.
    Save(bool),
    /// From here on another program is the first, and the first the second.
    ChangePlaces,
    /// The first program stops, with or without time to write, and starts again.
    Restart(bool),
}

fn name() -> impl Strategy<Value = &'static str> {
    prop::sample::select(&NAMES[..])
}

fn told(
    family: &'static str,
    part: &'static str,
    all: Vec<(&'static str, Value)>,
) -> impl Strategy<Value = Step> {
    let all: Vec<_> = all
        .into_iter()
        .filter(|(kind, _)| !["number-given", "erased"].contains(kind))
        .collect();
    let content = prop::sample::select(all)
        .prop_flat_map(|(kind, template)| samples::tagged(kind, &template));
    (name(), content).prop_map(move |(name, mut content)| {
        samples::sent(&mut content);
        let stream = match family {
            "shop" => "shop".to_owned(),
            _ => format!("{family}:{name}"),
        };
        Step::Sent(stream, part, content)
    })
}

fn step() -> impl Strategy<Value = Step> {
    prop_oneof![
        6 => told("order", "fact", samples::templates::facts()),
        3 => told("order", "request", samples::templates::requests()),
        3 => told("vehicle", "vehicle_fact", samples::templates::vehicle_facts()),
        3 => told("customer", "customer_fact", samples::templates::customer_facts()),
        1 => told("shop", "shop_fact", samples::templates::shop_facts()),
        1 => told("map", "map_fact", samples::templates::map_facts()),
        4 => (name(), name(), name()).prop_map(|(one, two, three)| Step::Open(one, two, three)),
        4 => name().prop_map(Step::Finish),
        1 => name().prop_map(Step::Erase),
        3 => any::<bool>().prop_map(Step::Save),
        2 => Just(Step::ChangePlaces),
        2 => any::<bool>().prop_map(Step::Restart),
    ]
}

/// What a refusal or a fact that cannot be read changes is nothing: all of it may happen.
fn take(bench: &mut Bench, other: &mut Service, step: Step) {
    match step {
        Step::Sent(stream, part, content) => drop(bench.send(&stream, part, content)),
        Step::Open(order, vehicle, customer) => {
            for (stream, part, fact) in [
                (
                    format!("customer:{customer}"),
                    "customer_fact",
                    json!({ "declared": { "texts": { "name": Device::words(&format!("Customer {customer}")) } } }),
                ),
                (
                    format!("vehicle:{vehicle}"),
                    "vehicle_fact",
                    json!({ "declared": { "texts": { "label": Device::words(&format!("Drayman {vehicle}")),
                        "plate": Device::words(&format!("KD {vehicle} 23")) },
                        "vin_read": "none-readable", "rust": null, "customer": customer } }),
                ),
            ] {
                bench.send(&stream, part, fact).unwrap();
            }
            let open = json!({ "open": { "vehicle": vehicle, "customer": customer } });
            drop(bench.ask(order, open));
        }
        Step::Finish(name) => {
            let stream = format!("order:{name}");
            for (part, content) in finish() {
                drop(bench.send(&stream, part, content));
            }
            drop(bench.hand_over(name));
        }
        Step::Erase(name) => {
            let why = Token::new("asked").unwrap();
            let whom = Whom::Customer(CustomerId::new(name));
            drop(shop::ask_to_erase(
                &bench.service,
                &whom,
                Breadth::Person,
                "ana",
                &why,
            ));
            bench.clock.later(24 * 60);
            drop(shop::erase_due(&bench.service));
        }
        Step::Save(first) => if first { &bench.service } else { &*other }
            .save_index()
            .unwrap(),
        Step::ChangePlaces => std::mem::swap(&mut bench.service, other),
        Step::Restart(in_time) => {
            if in_time {
                bench.service.save_index().unwrap();
            }
            bench.service = bench.another_program();
        }
    }
}

/// What an order on which nothing was done wants before it is handed over.
fn finish() -> Vec<(&'static str, Value)> {
    let mut all = vec![(
        "fact",
        json!({ "line-opened": { "line": "line-1", "complaint": Device::words("It squeals"), "payer": "customer" } }),
    )];
    for text in ["cause", "correction"] {
        all.push(("fact", json!({ "line-worded": { "line": "line-1", "text": text, "words": Device::words(text), "after": [] } })));
    }
    all.push(("request", json!({ "price": { "entries": [{ "line": "line-1", "charge": "labour",
        "label": Device::words("an hour"), "quantity": "1", "each": "100", "payer": "customer" }] } })));
    all.push(("fact", bench::consent("200")));
    all.push(("request", json!({ "charge": {} })));
    all.push(("fact", json!({ "paid": { "payer": "customer", "amount": "120.00", "by": "cash", "deposit": false } })));
    all.push((
        "fact",
        json!({ "keys": { "step": "given-back", "words": null } }),
    ));
    all
}

fn all_rows(service: &Service, find: Option<&str>) -> Vec<OrderRow> {
    let mut all: Vec<OrderRow> = Vec::new();
    loop {
        let page = rows(service, find, all.last().map(|row| row.number)).unwrap();
        let more = page.len() == MOST_ROWS;
        all.extend(page);
        if !more {
            return all;
        }
    }
}

fn squeezed(text: &str) -> String {
    let letters = text.chars().filter(|c| c.is_alphanumeric());
    letters.flat_map(char::to_lowercase).collect()
}

/// What is found must be what the orders say, read one by one.
fn check_found(service: &Service) {
    let all = all_rows(service, None);
    let here: Vec<_> = all
        .iter()
        .filter(|row| !row.voided && (!row.handed_over || row.word != "left"))
        .cloned()
        .collect();
    assert_eq!(rows_here(service).unwrap(), here);
    // Beside an order the floor is read off the cards.
    let mut standing = stands_here(service).unwrap();
    standing.sort_by_key(|one| std::cmp::Reverse(one.number));
    let standing: Vec<_> = standing
        .into_iter()
        .map(|one| (one.number, one.vehicle, one.place, one.stall))
        .collect();
    let of_rows: Vec<_> = here
        .iter()
        .filter(|row| !row.handed_over)
        .map(|row| {
            let vehicle = row.vehicle.clone();
            (row.number, vehicle, row.place.clone(), row.stall.clone())
        })
        .collect();
    assert_eq!(standing, of_rows);
    for words in ["a", "Drayman B", "kd c", "1002", "customer a", "23", "é"] {
        let wanted = squeezed(words);
        let saying: Vec<_> = all
            .iter()
            .filter(|row| {
                let mut texts = vec![row.number.to_string()];
                texts.extend([&row.vehicle, &row.plate, &row.customer].map(String::clone));
                let view = order(service, row.number).unwrap();
                texts.extend(view.lines.iter().map(|line| line.complaint.clone()));
                texts.extend(view.asks.iter().map(|asked| asked.phone.clone()));
                texts.extend(view.parts.iter().map(|part| part.label.clone()));
                texts.push(view.papers.vin.clone());
                texts
                    .iter()
                    .filter(|text| *text != "(erased)")
                    .any(|text| squeezed(text).contains(&wanted))
            })
            .cloned()
            .collect();
        assert_eq!(all_rows(service, Some(words)), saying, "{words:?}");
    }
    for vehicle in NAMES {
        let id = VehicleId::new(vehicle);
        let names = service.world().unwrap().same_vehicles(&id);
        let visits: Vec<_> = all
            .iter()
            .filter(|row| {
                let of = row.vehicle_id.as_deref();
                of.is_some_and(|of| names.iter().any(|name| name.as_str() == of))
            })
            .cloned()
            .collect();
        assert_eq!(rows_of_vehicle(service, &id).unwrap(), visits, "{vehicle}");
    }
}

proptest! {
    #![proptest_config(ProptestConfig { cases: 24, ..ProptestConfig::default() })]

    #[test]
    fn whatever_is_told_the_index_says_what_the_log_says(steps in prop::collection::vec(step(), 1..40)) {
        let mut bench = Bench::new();
        let mut other = bench.another_program();
        for step in steps {
            take(&mut bench, &mut other, step);
        }
        // Folded from the first row, in a store that holds nothing but the log.
        let apart: Arc<dyn Store> = Arc::new(Memory::new());
        shop::copy(bench.store.as_ref(), apart.as_ref(), LOG, shop::Taken::Readable).unwrap();
        let clock = bench.clock.now();
        let from_the_first = Service::open(apart, LOG, Arc::new(move || clock)).unwrap();
        let started = bench.another_program();
        let all = all_rows(&from_the_first, None);
        for service in [&bench.service, &other, &started, &from_the_first] {
            check_found(service);
            prop_assert_eq!(&all_rows(service, None), &all);
            for row in &all {
                prop_assert_eq!(
                    order(service, row.number).unwrap(),
                    order(&from_the_first, row.number).unwrap()
                );
            }
        }
        let made = shop::rebuild(&bench.store, LOG, false).unwrap();
        prop_assert_eq!(made.differences, Vec::<String>::new());
        other.save_index().unwrap();
        let made = shop::rebuild(&bench.store, LOG, true).unwrap();
        prop_assert_eq!((made.differences, made.index_stood_at), (vec![], Some(made.events)));
        check_found(&bench.another_program());
    }
}

const CACHE: &str = "index 9";

#[test]
fn a_late_fact_calls_a_settled_order_back_and_an_answer_settles_it_again() {
    let mut bench = Bench::new();
    let id = bench.open("Ada Brandt", "Drayman", "KD 2302");
    bench.declare(&id, "tray", ("cover", "body", "below"), 1);
    bench.move_to(&id, "tray", "off");
    bench.move_to(&id, "tray", "on");
    bench.finish(&id);
    bench.hand_over(&id).unwrap();
    let here = |service: &Service| rows_here(service).unwrap().len();
    assert_eq!(here(&bench.service), 0);
    bench.service.save_index().unwrap();

    // It is on the disk alone now: another program never held it.
    let started = bench.another_program();
    let mut later = bench;
    later.service = started;
    assert_eq!(here(&later.service), 0);
    later.clock.later(10);
    let late = later.tell(
        &id,
        json!({ "moved": { "stage": null, "moves": [{ "item": "tray", "at": [1], "after": [],
        "left": { "state": "off", "piece": "original" }, "container": null }] } }),
    );
    let row = rows_here(&later.service).unwrap().remove(0);
    assert_eq!(row.word, "left, look");
    assert_eq!(here(&later.another_program()), 1);

    let undo = json!({ "undo": { "command": late.command_id, "part": null } });
    later.tell(&id, undo);
    assert_eq!(here(&later.service), 0);
    later.service.save_index().unwrap();
    assert_eq!(here(&later.another_program()), 0);
    later
        .ask(
            &id,
            json!({ "take-back": { "words": Device::words("It squeals still") } }),
        )
        .unwrap();
    assert_eq!(here(&later.service), 1);
    let made = shop::rebuild(&later.store, LOG, false).unwrap();
    assert_eq!(made.differences, Vec::<String>::new());
}

#[test]
fn an_index_that_says_something_else_is_told_of_and_replaced() {
    let mut bench = Bench::new();
    bench.open("Ada Brandt", "Drayman", "KD 2302");
    bench.open("Tilde Aumann", "Lanner", "LN 7719");
    bench.service.save_index().unwrap();
    let head = bench.store.cache_head(LOG, CACHE).unwrap().unwrap();
    let mut card = bench
        .store
        .cards(LOG, CACHE, &Wanted::one("number", ""))
        .unwrap()
        .remove(0);
    card.value = "another-order".to_owned();
    let wrong = CacheChange {
        log: LOG.to_owned(),
        cache: CACHE.to_owned(),
        from: Some(head),
        to: head,
        remove: vec![("here".to_owned(), format!("{:020}", 1002))],
        put: vec![card],
    };
    assert_eq!(bench.store.change_cache(wrong), Ok(true));
    assert_eq!(rows_here(&bench.another_program()).unwrap().len(), 1);

    let made = shop::rebuild(&bench.store, LOG, true).unwrap();
    assert_eq!(made.differences.len(), 2, "{:?}", made.differences);
    assert!(made.written);
    assert_eq!(rows_here(&bench.another_program()).unwrap().len(), 2);
    assert!(
        shop::rebuild(&bench.store, LOG, true)
            .unwrap()
            .differences
            .is_empty()
    );
}

#[test]
fn an_index_of_another_log_counts_for_nothing() {
    let mut bench = Bench::new();
    bench.open("Ada Brandt", "Drayman", "KD 2302");
    let head = bench.store.head(LOG).unwrap();
    let other = CacheChange {
        log: LOG.to_owned(),
        cache: CACHE.to_owned(),
        from: None,
        // The log has another hash there.
        to: store::Head {
            hash: [7; 32],
            ..head
        },
        remove: Vec::new(),
        put: Vec::new(),
    };
    assert_eq!(bench.store.change_cache(other), Ok(true));
    let service = bench.another_program();
    assert_eq!(rows(&service, Some("brandt"), None).unwrap().len(), 1);
    service.save_index().unwrap();
    assert_eq!(bench.store.cache_head(LOG, CACHE).unwrap(), Some(head));
    assert!(
        shop::rebuild(&bench.store, LOG, false)
            .unwrap()
            .differences
            .is_empty()
    );
}

#[test]
fn an_erased_name_is_on_no_card_whoever_wrote_it() {
    let mut bench = Bench::new();
    let id = bench.open("Ada Brandt", "Drayman", "KD 2302");
    bench
        .ask(
            &id,
            json!({ "void": { "words": Device::words("a mistake") } }),
        )
        .unwrap();
    bench.service.save_index().unwrap();
    let slow = bench.another_program();
    bench.tell(
        &id,
        json!({ "odometer": { "reading": "9 km", "at": "in" } }),
    );
    let why = Token::new("asked").unwrap();
    shop::ask_to_erase(
        &bench.service,
        &Whom::OfOrder(1001),
        Breadth::Person,
        "ana",
        &why,
    )
    .unwrap();
    bench.clock.later(24 * 60);
    assert_eq!(shop::erase_due(&bench.service).unwrap().len(), 1);
    for service in [&slow, &bench.service] {
        service.save_index().unwrap();
        let cards = bench
            .store
            .cards(LOG, CACHE, &Wanted::from("words", ""))
            .unwrap();
        let words: Vec<_> = cards.iter().map(|card| card.value.as_str()).collect();
        assert_eq!(words, ["itsqueals", "drayman", "1001"]);
        assert!(rows(service, Some("brandt"), None).unwrap().is_empty());
        assert_eq!(rows(service, Some("drayman"), None).unwrap().len(), 1);
    }
    assert!(
        shop::rebuild(&bench.store, LOG, false)
            .unwrap()
            .differences
            .is_empty()
    );
}
