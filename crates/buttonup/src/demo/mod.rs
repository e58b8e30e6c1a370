//! The invented shop of the demo: four people, four stalls, six repair orders at
//! different points of their life, and a vehicle that is booked. Makers, vehicles and people are
//! made up.

mod benchmark;
mod hours;
mod maps;
mod others;
mod scene;

use jiff::tz::TimeZone;
use jiff::{SignedDuration, Timestamp};
use record::v1::basics::StateForm;
use serde_json::json;
use shop::{Caller, Device, Service, Trouble};

/// The people of the demo, by name in the record and as they are called.
const PEOPLE: [(&str, &str, &str); 4] = [
    ("nuria", "Nuria Vale", "owner"),
    ("pavel", "Pavel Ostrow", "technician"),
    ("greta", "Greta Lind", "desk"),
    ("sam", "Sam Okello", "apprentice"),
];

/// The stalls.
const STALLS: [(&str, &str, &str); 4] = [
    ("stall-1", "Stall 1", "lift"),
    ("stall-2", "Stall 2", "lift"),
    ("stall-3", "Stall 3", "lift"),
    ("stall-4", "Stall 4", "flat"),
];

/// What the lifts carry, and the highest vehicle that clears the roof.
const LIFTS: [(&str, &str, &str); 3] = [
    ("stall-1", "3500 kg", "2600 mm"),
    ("stall-2", "4000 kg", "2800 mm"),
    ("stall-3", "2500 kg", "2100 mm"),
];

/// What people know.
const KNOWS: [(&str, &[&str]); 2] = [
    ("nuria", &["engine", "cooling", "electrical"]),
    ("pavel", &["brakes", "suspension", "engine", "cooling"]),
];

/// Makes the invented shop.
pub fn make(service: &Service) -> Result<(), Trouble> {
    let now = Timestamp::now();
    set_up(service, now)?;
    maps::bring(service, now)?;
    others::handed_over(service, now)?;
    benchmark::order(service, now)?;
    others::at_machine_work(service, now)?;
    others::brakes(service, now)?;
    others::waiting_for_part(service, now)?;
    others::come_back(service, now)?;
    others::booked(service, now)
}

/// Some hours on, while the shop is open.
fn open_in(now: Timestamp, ahead: i8) -> String {
    let zone = TimeZone::system();
    let local = now.to_zoned_datetime(zone.clone()).datetime();
    let at = hours::open_in(local, ahead).to_zoned_datetime(zone);
    at.map_or(now, |at| at.timestamp()).to_string()
}

fn set_up(service: &Service, now: Timestamp) -> Result<(), Trouble> {
    let mut device = Device::new("desk", "nuria");
    let before = now - SignedDuration::from_hours(24 * 30);
    let mut tell = |fact| {
        service
            .command(
                &Caller::program(),
                device.command("shop", before, "shop_fact", fact),
            )
            .map(drop)
    };
    let zone = TimeZone::system();
    tell(json!({ "set": { "settings": {
        "name": Device::words("Vale Motor Works"),
        "rate": "120",
        "currency": "EUR",
        "minor_digits": 2,
        "taxes": [{ "name": "VAT", "percent": "20", "on": { "labour": true, "parts": true, "other": true } }],
        "units": "metric",
        "zone": zone.iana_name().unwrap_or("UTC"),
    } } }))?;
    for (person, name, role) in PEOPLE {
        tell(
            json!({ "joined": { "person": person, "name": Device::words(name), "roles": [role] } }),
        )?;
    }
    for (stall, name, sort) in STALLS {
        tell(
            json!({ "stall-added": { "stall": stall, "name": Device::words(name), "sort": sort } }),
        )?;
    }
    for (stall, carries, clears) in LIFTS {
        tell(
            json!({ "stall-fitted": { "stall": stall, "carries": carries, "clears": clears, "crosses": [], "after": [] } }),
        )?;
    }
    let local = now.to_zoned_datetime(zone.clone()).datetime();
    for (person, week) in hours::hours(local) {
        tell(json!({ "hours-told": { "person": person, "week": week, "after": [] } }))?;
    }
    for (person, systems) in KNOWS {
        tell(json!({ "systems-told": { "person": person, "systems": systems, "after": [] } }))?;
    }
    for (job, name, price, part, each) in JOBS {
        tell(json!({ "job-kept": { "id": job, "after": [], "job": {
            "name": Device::words(name), "price": price, "in_one": false,
            "parts": [{ "name": Device::words(part), "quantity": "1", "each": each }] } } }))?;
    }
    Ok(())
}

/// What the shop does at a fixed price: by name in the record, as it is called, for how much,
/// with which part at what price.
const JOBS: [(&str, &str, &str, &str, &str); 3] = [
    (
        "bulb",
        "Headlamp bulb renewed",
        "24.00",
        "headlamp bulb",
        "9.50",
    ),
    ("battery", "Battery renewed", "148.00", "battery", "118.00"),
    (
        "wipers",
        "Wiper blades renewed",
        "39.00",
        "pair of wiper blades",
        "27.00",
    ),
];

/// Shorthand for the states the scenes use.
const OUT: StateForm = StateForm::Out;
const OFF: StateForm = StateForm::Off;
const ON: StateForm = StateForm::On;
const TIGHT: StateForm = StateForm::Tight;
const UNPLUGGED: StateForm = StateForm::Unplugged;
const LOW: StateForm = StateForm::Low;
const LEVEL: StateForm = StateForm::AtLevel;
const INSIDE: StateForm = StateForm::Inside;
