//! A bulb for a customer and a vehicle that were here before, as a day in a shop: the owner keeps
//! the job's price, the desk takes the vehicle in and gives it back, the technician fits the bulb.

use super::days::{Device, send, words};
use super::gone;
use super::hands::{Hand, agree, owner, shop, technician};
use anyhow::{Result, ensure};
use serde_json::json;

/// What all of it may cost, whoever does it.
const MOST_TAPS: u32 = 12;
const MOST_FIELDS: u32 = 4;

#[test]
fn a_bulb_for_somebody_who_is_known() -> Result<()> {
    let shop = shop()?;
    let desk = owner(&shop, "Karin Ode", "Milan Frey")?;
    keeps_the_job(&desk)?;
    was_here(&desk)?;
    let phone = technician(&shop, "Milan Frey")?;
    desk.go("/")?;
    phone.go("/")?;
    let (before_desk, before_phone) = (desk.counted(), phone.counted());

    // The desk: known by the plate, the job at its price, the keys.
    desk.follow("Check in a vehicle")?;
    desk.write("Plate", "BR 77")?;
    desk.sees("Known here")?;
    desk.follow("BR 77")?;
    desk.sees("It belongs to somebody else now")?;
    desk.write("Complaint", "Right tail lamp is out")?;
    desk.write("Odometer", "64,120")?;
    desk.choose("Tail lamp bulb 18.00")?;
    desk.tap_for("Check it in", "Walk round it first")?;
    desk.tap_for("Finish walk-round", "Nobody agreed")
        .or_else(|_| desk.sees("Yes, up to 18.00"))?;
    agree(&desk, &phone, 1001)?;

    // The technician: one tap for the bulb, one for the lamp seen.
    phone.follow("Brant Piko")?;
    phone.sees("New part, not on yet")?;
    phone.tap("Tail lamp bulb renewed")?;
    gone(&phone.browser, "New part, not on yet")?;
    agree(&desk, &phone, 1001)?;
    phone.follow("Owed, checks, proof")?;
    phone.sees("That is done")?;
    for asked in ["Road test", "Leak test", "Second check", "Bleed"] {
        ensure!(!phone.says(asked)?, "{asked} is asked for a bulb");
    }
    phone.tap_for("That is done", "it is fit to go")?;
    agree(&desk, &phone, 1001)?;

    // The desk again: what was found, the money, the keys.
    desk.go("/o/1001")?;
    desk.follow_only("Hand over")?;
    desk.sees("Invoice, paid")?;
    desk.write("What was found", "filament broken")?;
    desk.tap_for("Invoice, paid", "with what is asked here")?;
    desk.tap_for("Keys given, it drives away", "Handed over: drove away")?;
    desk.go("/o/1001")?;
    agree(&desk, &phone, 1001)?;

    let used = |hand: &Hand<'_>, before: (u32, u32)| {
        let now = hand.counted();
        (now.0 - before.0, now.1 - before.1)
    };
    let (at_desk, on_phone) = (used(&desk, before_desk), used(&phone, before_phone));
    let (taps, fields) = (at_desk.0 + on_phone.0, at_desk.1 + on_phone.1);
    println!("bulb: desk {at_desk:?}, technician {on_phone:?}: {taps} taps, {fields} fields");
    ensure!(
        taps <= MOST_TAPS && fields <= MOST_FIELDS,
        "{taps} taps, {fields} fields"
    );

    // The owner: it is paid, and nobody has to be rung.
    desk.go("/shop/books")?;
    desk.sees("21.60")?;
    desk.go("/calls")?;
    ensure!(!desk.says("Brant Piko")?, "somebody has to be rung still");
    phone.no_errors()?;
    desk.no_errors()
}

/// The owner keeps the job at its price.
fn keeps_the_job(owner: &Hand<'_>) -> Result<()> {
    owner.go("/shop/prices")?;
    owner.unfold("Another job")?;
    owner.browser.execute(
        "const form = document.querySelector('#new-job form');
         for (const [name, value] of Object.entries(arguments[0])) form.elements[name].value = value;",
        vec![json!({ "job": "Tail lamp bulb", "price": "18", "part-name-0": "Tail lamp bulb", "part-each-0": "6" })],
    )?;
    owner.tap_for("Save the job", "18.00")
}

/// The vehicle and its owner, from an earlier visit.
fn was_here(desk: &Hand<'_>) -> Result<()> {
    let mut device = Device::of(&desk.browser)?;
    let customer = json!({ "name": words("Olle Ahl"), "phone": words("0600 555 077") });
    let vehicle = json!({ "label": words("Brant Piko 1.2 2017"), "plate": words("BR 7731") });
    let known = [
        device.command(
            "customer:olle",
            "customer_fact",
            json!({ "declared": { "texts": customer } }),
        ),
        device.command(
            "vehicle:piko",
            "vehicle_fact",
            json!({ "declared": { "texts": vehicle, "vin_read": "none-readable", "rust": null, "customer": "olle" } }),
        ),
    ];
    send(&desk.browser, &known)
}
