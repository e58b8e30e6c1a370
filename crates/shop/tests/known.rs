//! Customers and vehicles that are known: found by whatever somebody remembers of them, and
//! made one where they were written down twice.

#![allow(clippy::unwrap_used, reason = "a test fails by panicking")]

mod bench;

use bench::{Bench, LOG};
use serde_json::{Value, json};
use shop::repair::{CustomerId, Token, VehicleId};
use shop::view::{self, TakenIn};
use shop::{Breadth, Device, TroubleKind, Whom};

const DAY: i64 = 24 * 60;

/// A customer with a vehicle and an order; the names of all three in the record.
struct Job {
    order: String,
    vehicle: String,
    customer: String,
}

fn open(bench: &mut Bench, customer: &str, vehicle: &str, plate: &str) -> Job {
    let order = bench.open(customer, vehicle, plate);
    let number = bench.number(&order);
    let vehicle = bench.view(&order).row.vehicle_id.unwrap();
    let customer = bench
        .look(|snap| Ok(view::customer_of_order(snap, number)))
        .unwrap()
        .unwrap();
    Job {
        order,
        vehicle,
        customer,
    }
}

fn vehicle_fact(bench: &mut Bench, vehicle: &str, fact: Value) {
    let stream = format!("vehicle:{vehicle}");
    bench.send(&stream, "vehicle_fact", fact).unwrap();
}

fn customer_fact(bench: &mut Bench, customer: &str, fact: Value) {
    let stream = format!("customer:{customer}");
    bench.send(&stream, "customer_fact", fact).unwrap();
}

fn found(bench: &Bench, words: &str) -> Vec<u64> {
    let rows = bench.look(|snap| view::rows(snap, Some(words), None));
    rows.unwrap().iter().map(|row| row.number).collect()
}

#[test]
fn an_order_is_found_by_whatever_somebody_remembers() {
    let mut bench = Bench::new();
    let job = open(&mut bench, "Ines Duarte", "Marlin Combi 2014", "AB-12-CD");
    open(&mut bench, "Rui Paz", "Osprey 3", "ZZ-99-ZZ");
    vehicle_fact(
        &mut bench,
        &job.vehicle,
        json!({ "mended": { "field": "vin", "words": Device::words("XW7BF4FK60S145161"), "vin_read": null, "after": [] } }),
    );
    customer_fact(
        &mut bench,
        &job.customer,
        json!({ "mended": { "field": "phone", "words": Device::words("+351 912 000 111"), "after": [] } }),
    );
    bench.tell(
        &job.order,
        json!({ "part-needed": { "part": "p", "line": "line-1", "item": null, "label": Device::words("Wheel bearing"),
            "number": "WB-4471", "quantity": "1", "cost": null, "price": null, "core": null, "has_old": false } }),
    );
    let number = bench.number(&job.order);
    for words in [
        "1001",
        "ab12cd",
        "AB-12",
        "duarte",
        "marlin",
        "S145161",
        "912 000 111",
        "0912000111",
        "+351912000111",
        "wheel bearing",
        "wb4471",
    ] {
        assert_eq!(found(&bench, words), [number], "{words}");
    }
    // Both complain of the same.
    assert_eq!(found(&bench, "squeals").len(), 2);
    assert!(found(&bench, "nothing of the sort").is_empty());
}

#[test]
fn what_is_typed_at_the_desk_offers_who_and_what_is_known() {
    let mut bench = Bench::new();
    let job = open(&mut bench, "Ines Duarte", "Marlin Combi 2014", "AB-12-CD");
    let offers = |typed: TakenIn| {
        let offered = bench.look(|snap| view::offered(snap, &typed)).unwrap();
        let (vehicles, customers) = offered;
        (
            vehicles
                .into_iter()
                .map(|one| one.vehicle)
                .collect::<Vec<_>>(),
            customers
                .into_iter()
                .map(|one| one.customer)
                .collect::<Vec<_>>(),
        )
    };
    let typed = |plate: &str, name: &str, phone: &str| TakenIn {
        plate: plate.to_owned(),
        name: name.to_owned(),
        phone: phone.to_owned(),
        ..TakenIn::default()
    };
    assert_eq!(offers(typed("ab12", "", "")).0, [job.vehicle.as_str()]);
    assert_eq!(offers(typed("", "duar", "")).1, [job.customer.as_str()]);
    assert_eq!(offers(typed("", "", "0600 555")).1, [job.customer.as_str()]);
    // Two letters say nothing yet, and nobody is offered for nothing.
    assert_eq!(offers(typed("a", "in", "06")), (vec![], vec![]));
    let known = bench
        .look(|snap| view::known_vehicle(snap, &VehicleId::new(job.vehicle.as_str())))
        .unwrap();
    assert_eq!(known.here, Some(1001));
    assert_eq!(known.owner, "Ines Duarte");
}

#[test]
fn how_far_a_number_could_be_read_follows_from_the_number() {
    let mut bench = Bench::new();
    for (vin, read) in [
        (Some("1M8GDM9AXKP042788"), "valid"),
        (Some("1M8GDM9AXKP042789"), "kept-anyway"),
        (None, "none-readable"),
    ] {
        let id = Device::name();
        let mut texts = json!({ "label": Device::words("Bus") });
        if let Some(vin) = vin {
            texts["vin"] = Device::words(vin);
        }
        let declared = json!({ "declared": { "texts": texts, "vin_read": "valid", "rust": null, "customer": "c" } });
        let accepted = bench
            .send(&format!("vehicle:{id}"), "vehicle_fact", declared)
            .unwrap();
        let rows = bench
            .store
            .stream(LOG, &format!("vehicle:{id}"), 0)
            .unwrap();
        let body = String::from_utf8(rows[0].body.clone()).unwrap();
        assert!(body.contains(&format!("\"vin_read\":\"{read}\"")), "{body}");
        assert!(!accepted.events.is_empty());
    }
}

#[test]
fn what_was_written_down_twice_is_one_until_it_is_taken_apart() {
    let mut bench = Bench::new();
    let first = open(&mut bench, "Ines Duarte", "Marlin Combi 2014", "AB-12-CD");
    let second = open(&mut bench, "I. Duarte", "Marlin Kombi", "AB 12 CD");
    let visits = |bench: &Bench, vehicle: &str| -> Vec<u64> {
        let id = VehicleId::new(vehicle);
        let rows = bench.look(|snap| view::rows_of_vehicle(snap, &id)).unwrap();
        rows.iter().map(|row| row.number).collect()
    };
    let twins = bench
        .look(|snap| view::twins_of_vehicle(snap, &VehicleId::new(first.vehicle.as_str()), ""))
        .unwrap();
    assert_eq!(twins.len(), 1, "the same plate, however it is written");
    assert_eq!(visits(&bench, &first.vehicle), [1001]);

    let same = |to: Option<&str>, after: &[String]| json!({ "same-as": { "vehicle": to, "after": after } });
    vehicle_fact(&mut bench, &second.vehicle, same(Some(&first.vehicle), &[]));
    customer_fact(
        &mut bench,
        &second.customer,
        json!({ "same-as": { "customer": first.customer, "after": [] } }),
    );
    for vehicle in [&first.vehicle, &second.vehicle] {
        assert_eq!(visits(&bench, vehicle), [1002, 1001]);
    }
    // It goes by the name it was joined to, on the order of the other as well.
    let row = bench.view(&second.order).row;
    assert_eq!(
        (&*row.vehicle, &*row.plate),
        ("Marlin Combi 2014", "AB-12-CD")
    );
    assert_eq!(row.customer, "Ines Duarte");
    // What it carries, it carries on both.
    let differs = json!({ "differs": { "id": "d", "order": first.order, "item": Device::words("drain plug"), "at": [],
        "what": "insert", "size": "M14x1.5", "torque": null, "words": null } });
    vehicle_fact(&mut bench, &first.vehicle, differs);
    assert_eq!(bench.view(&second.order).standing.len(), 1);
    // It is found and listed once, and the other program sees the same.
    for service in [&bench.service, &bench.another_program()] {
        let world = service.world().unwrap();
        assert_eq!(world.vehicles_saying("marlin", 9).unwrap().len(), 1);
        assert_eq!(world.vehicles_from("", 9).unwrap().len(), 1);
        assert_eq!(world.customers_from("", 9).unwrap().len(), 1);
        let orders = world.orders_of_customer(&CustomerId::new(first.customer.as_str()));
        assert_eq!(orders.unwrap().len(), 2);
    }

    let told = {
        let world = bench.service.world().unwrap();
        let own = world
            .own_vehicle(&VehicleId::new(second.vehicle.as_str()))
            .unwrap();
        let told = own.same_as().1;
        told.iter()
            .map(|one| one.as_str().to_owned())
            .collect::<Vec<_>>()
    };
    vehicle_fact(&mut bench, &second.vehicle, same(None, &told));
    assert_eq!(visits(&bench, &first.vehicle), [1001]);
    assert_eq!(visits(&bench, &second.vehicle), [1002]);
    assert_eq!(bench.view(&second.order).row.vehicle, "Marlin Kombi");
    shop::verify(bench.store.as_ref(), LOG, None).unwrap();
    shop::rebuild(&bench.store, LOG, false).unwrap();
}

#[test]
fn an_erasure_follows_to_what_was_written_down_twice() {
    let mut bench = Bench::new();
    let first = open(&mut bench, "Ines Duarte", "Marlin Combi", "AB-12-CD");
    let second = open(&mut bench, "I. Duarte", "Marlin Kombi", "AB 12 CD");
    customer_fact(
        &mut bench,
        &second.customer,
        json!({ "same-as": { "customer": first.customer, "after": [] } }),
    );
    let why = Token::new("asked").unwrap();
    let whom = Whom::OfOrder(1001);
    for order in [&first.order, &second.order] {
        let refused = shop::ask_to_erase(&bench.service, &whom, Breadth::Person, "ana", &why);
        assert_eq!(
            refused.unwrap_err().kind,
            TroubleKind::Refused,
            "one of theirs is here"
        );
        bench.finish(order);
        bench.hand_over(order).unwrap();
    }
    shop::ask_to_erase(&bench.service, &whom, Breadth::Person, "ana", &why).unwrap();
    bench.clock.later(2 * DAY);
    bench.shop(json!({ "altitude-told": { "altitude": "40 m", "after": [] } }));
    let done = shop::erase_due(&bench.service).unwrap();
    assert_eq!(done[0].orders, [1001, 1002]);
    for order in [&first.order, &second.order] {
        let row = bench.view(order).row;
        assert_eq!((&*row.customer, &*row.plate), ("(erased)", "(erased)"));
    }
    assert!(found(&bench, "duarte").is_empty());
    let world = bench.service.world().unwrap();
    assert!(world.customers_from("", 9).unwrap().is_empty());
    assert!(world.customers_saying("duarte", 9).unwrap().is_empty());
}

#[test]
fn a_vehicle_that_was_sold_is_its_new_owners_and_the_old_ones_words_stay_theirs() {
    let mut bench = Bench::new();
    let job = open(&mut bench, "Ines Duarte", "Marlin Combi", "AB-12-CD");
    bench.finish(&job.order);
    bench.hand_over(&job.order).unwrap();
    let new = Device::name();
    customer_fact(
        &mut bench,
        &new,
        json!({ "declared": { "texts": { "name": Device::words("Rui Paz") } } }),
    );
    vehicle_fact(
        &mut bench,
        &job.vehicle,
        json!({ "owner-told": { "customer": new, "after": [] } }),
    );
    bench.open_again("again", &job.vehicle, &new);
    assert_eq!(bench.view("again").row.customer, "Rui Paz");
    assert_eq!(bench.view(&job.order).row.customer, "Ines Duarte");
    let world = bench.service.world().unwrap();
    let of = |name: &str| world.vehicles_of(&CustomerId::new(name)).unwrap().len();
    assert_eq!((of(&job.customer), of(&new)), (0, 1));
    // The one before is erased without a word of the new one's.
    let why = Token::new("asked").unwrap();
    let whom = Whom::Customer(CustomerId::new(job.customer.as_str()));
    shop::ask_to_erase(&bench.service, &whom, Breadth::Person, "ana", &why).unwrap();
    bench.clock.later(2 * DAY);
    bench.shop(json!({ "altitude-told": { "altitude": "40 m", "after": [] } }));
    assert_eq!(shop::erase_due(&bench.service).unwrap()[0].orders, [1001]);
    let row = bench.view("again").row;
    assert_eq!((&*row.customer, &*row.plate), ("Rui Paz", "AB-12-CD"));
}
