//! Erasures that wait until records need be kept no longer.

#![allow(clippy::unwrap_used, reason = "a test fails by panicking")]

mod bench;

use bench::seen::order;

use bench::{Bench, LOG};
use serde_json::json;
use shop::TroubleKind;
use shop::repair::{CustomerId, Token, VehicleId};
use shop::{Breadth, Device, Service, Waiting, Whom};

const DAY: i64 = 24 * 60;

fn ask(service: &Service, number: u64, breadth: Breadth) -> Waiting {
    let why = Token::new("asked").unwrap();
    shop::ask_to_erase(service, &Whom::OfOrder(number), breadth, "ana", &why).unwrap()
}

fn handed_over(bench: &mut Bench) -> String {
    let id = bench.open("Ada Brandt", "Drayman", "KD 2302");
    bench.finish(&id);
    bench.hand_over(&id).unwrap();
    id
}

fn customer_id(service: &Service) -> CustomerId {
    let vehicle = order(service, 1001).unwrap().row.vehicle_id.unwrap();
    let world = service.world().unwrap();
    let vehicle = world.vehicle(&VehicleId::new(vehicle)).unwrap();
    vehicle.customer().unwrap().clone()
}

fn customer(service: &Service) -> String {
    order(service, 1001).unwrap().row.customer
}

#[test]
fn an_erasure_waits_for_its_day_and_is_carried_out_then() {
    let mut bench = Bench::new();
    handed_over(&mut bench);
    bench.shop(json!({ "records-kept": { "years": 3 } }));
    bench.clock.later(30 * DAY);
    let waits = ask(&bench.service, 1001, Breadth::Person);
    assert_eq!(waits.customer, customer_id(&bench.service));
    // Handed over on 2026-11-25.
    assert_eq!(waits.until, Some("2029-11-25".parse().unwrap()));
    let asked_at = bench.service.world().unwrap().position;
    // Asked again, it waits once.
    assert_eq!(ask(&bench.service, 1001, Breadth::Person), waits);
    assert_eq!(bench.service.world().unwrap().position, asked_at);
    assert_eq!(customer(&bench.service), "Ada Brandt");

    // On the day before, and at the start of another program.
    bench.clock.later(2 * 365 * DAY + 334 * DAY);
    assert_eq!(shop::erase_due(&bench.another_program()).unwrap(), []);
    assert_eq!(shop::erasures_waiting(&bench.service).unwrap().len(), 1);
    bench.clock.later(2 * DAY);
    let done = shop::erase_due(&bench.another_program()).unwrap();
    assert_eq!((done.len(), &done[0].orders[..]), (1, &[1001][..]));
    assert_eq!(customer(&bench.service), "(erased)");
    assert_eq!(shop::erasures_waiting(&bench.service).unwrap(), []);
    shop::verify(bench.store.as_ref(), LOG, None).unwrap();

    // What was carried out is not asked for again by a later visit.
    bench.open("Ada Brandt", "Drayman", "KD 2302");
    bench.clock.later(10 * 365 * DAY);
    assert_eq!(shop::erase_due(&bench.service).unwrap(), []);
    assert_eq!(
        order(&bench.service, 1002).unwrap().row.customer,
        "Ada Brandt"
    );
}

#[test]
fn a_vehicle_that_is_back_holds_the_erasure_up_and_its_end_counts_anew() {
    let mut bench = Bench::new();
    let id = handed_over(&mut bench);
    bench.shop(json!({ "records-kept": { "years": 1 } }));
    ask(&bench.service, 1001, Breadth::EveryWord);
    bench.clock.later(300 * DAY);
    bench
        .ask(
            &id,
            json!({ "take-back": { "words": Device::words("It squeals still") } }),
        )
        .unwrap();
    bench.clock.later(100 * DAY);
    assert_eq!(
        shop::erasures_waiting(&bench.service).unwrap()[0].until,
        None
    );
    assert_eq!(shop::erase_due(&bench.service).unwrap(), []);
    bench.hand_over(&id).unwrap();
    bench.clock.later(300 * DAY);
    assert_eq!(shop::erase_due(&bench.service).unwrap(), []);
    bench.clock.later(66 * DAY);
    assert_eq!(shop::erase_due(&bench.service).unwrap().len(), 1);
    let view = order(&bench.service, 1001).unwrap();
    assert_eq!(
        (view.row.customer.as_str(), view.row.complaint.as_str()),
        ("(erased)", "(erased)")
    );
}

#[test]
fn the_longer_of_the_shops_own_years_and_its_places_counts() {
    let mut bench = Bench::new();
    let years = |bench: &Bench| shop::kept_years(&bench.service.world().unwrap());
    assert_eq!(years(&bench), 0);
    bench.shop(json!({ "place-chosen": { "place": "us-ca", "version": 1, "after": [] } }));
    let of_place = years(&bench);
    assert!(of_place > 0, "its rules name years");
    bench.shop(json!({ "records-kept": { "years": of_place + 4 } }));
    assert_eq!(years(&bench), of_place + 4);
    bench.clock.later(1);
    bench.shop(json!({ "records-kept": { "years": 0 } }));
    assert_eq!(years(&bench), of_place);
}

#[test]
fn without_years_to_keep_it_is_done_after_a_day() {
    let mut bench = Bench::new();
    handed_over(&mut bench);
    let asked = bench.clock.now();
    let waits = ask(&bench.service, 1001, Breadth::Person);
    assert_eq!(waits.earliest, asked + jiff::SignedDuration::from_hours(24));
    bench.clock.later(DAY - 1);
    assert_eq!(shop::erase_due(&bench.service).unwrap(), []);
    assert_eq!(customer(&bench.service), "Ada Brandt");
    bench.clock.later(1);
    assert_eq!(shop::erase_due(&bench.service).unwrap().len(), 1);
    assert_eq!(customer(&bench.service), "(erased)");
    assert_eq!(shop::erasures_waiting(&bench.service).unwrap(), []);
}

#[test]
fn a_day_is_counted_from_when_it_was_written_down_not_from_what_a_device_says() {
    let mut bench = Bench::new();
    handed_over(&mut bench);
    let mut asked = bench.make(
        "shop",
        "shop_fact",
        json!({ "erasure-asked": { "customer": customer_id(&bench.service).as_str(),
            "every_word": false, "why": "asked" } }),
    );
    asked["happened_at"] = json!("2020-01-01T00:00:00Z");
    bench::tell_to(&bench.service, asked).unwrap();
    assert_eq!(shop::erase_due(&bench.service).unwrap(), []);
    bench.clock.later(DAY);
    assert_eq!(shop::erase_due(&bench.service).unwrap().len(), 1);
}

#[test]
fn what_is_called_off_is_never_carried_out_and_can_be_asked_for_anew() {
    let mut bench = Bench::new();
    handed_over(&mut bench);
    let whom = Whom::OfOrder(1001);
    let none = shop::call_off(&bench.service, &whom, "ana").unwrap_err();
    assert_eq!(none.kind, TroubleKind::NotFound);
    let first = ask(&bench.service, 1001, Breadth::Person);
    let both = ask(&bench.service, 1001, Breadth::EveryWord);
    bench.clock.later(DAY - 1);
    // Whoever is at the desk does not decide it.
    let desk = shop::call_off(&bench.service, &whom, "ben").unwrap_err();
    assert_eq!(desk.kind, TroubleKind::Refused);
    let off = shop::call_off(&bench.another_program(), &whom, "ana").unwrap();
    assert_eq!(off, [first.clone(), both]);
    bench.clock.later(400 * DAY);
    assert_eq!(shop::erase_due(&bench.service).unwrap(), []);
    assert_eq!(customer(&bench.service), "Ada Brandt");
    let anew = ask(&bench.service, 1001, Breadth::Person);
    assert!(anew.asked != first.asked && anew.earliest > first.earliest);
    bench.clock.later(DAY);
    assert_eq!(shop::erase_due(&bench.service).unwrap().len(), 1);
    // What is done cannot be called off.
    let done = shop::call_off(&bench.service, &whom, "ana").unwrap_err();
    assert_eq!(done.kind, TroubleKind::NotFound);
}

#[test]
fn a_clock_is_believed_within_a_day_of_the_last_event() {
    let mut bench = Bench::new();
    assert_eq!(shop::clock_doubt(&bench.service).unwrap(), None);
    bench.clock.later(DAY);
    assert_eq!(shop::clock_doubt(&bench.service).unwrap(), None);
    bench.clock.later(1);
    let doubt = shop::clock_doubt(&bench.service).unwrap().unwrap();
    assert_eq!(
        (doubt.now, doubt.last.as_str()),
        (bench.clock.now(), "2026-11-25T08:00:00Z")
    );
    bench.clock.later(-2 * DAY - 2);
    assert!(
        shop::clock_doubt(&bench.service).unwrap().is_some(),
        "put back"
    );
    bench.shop(json!({ "records-kept": { "years": 1 } }));
    assert_eq!(shop::clock_doubt(&bench.service).unwrap(), None);
}
