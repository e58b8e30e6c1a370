//! Small jobs at the desk: a bulb for a customer and a vehicle that are known, every tap and every
//! field counted; somebody written down twice; a sale over the counter.

use super::days::{Device, send, words};
use super::{choose, follow, gone, phone, set_up, started, tap, write};
use anyhow::{Result, ensure};
use chromium::{Browser, DESK, PHONE};
use serde_json::json;

/// What the whole of it may cost.
const MOST_TAPS: u32 = 12;
const MOST_FIELDS: u32 = 4;

/// A customer and a vehicle that were here before.
fn known(browser: &Browser) -> Result<()> {
    let mut device = Device::of(browser)?;
    let customer = json!({ "name": words("Rui Paz"), "phone": words("0600 555 044") });
    let vehicle = json!({ "label": words("Osprey 3 2016"), "plate": words("MN 4410") });
    let known = [
        device.command(
            "customer:rui",
            "customer_fact",
            json!({ "declared": { "texts": customer } }),
        ),
        device.command(
            "vehicle:osprey",
            "vehicle_fact",
            json!({ "declared": { "texts": vehicle, "vin_read": "none-readable", "rust": null, "customer": "rui" } }),
        ),
    ];
    send(browser, &known)
}

#[test]
fn a_bulb_from_the_complaint_to_the_keys() -> Result<()> {
    for size in [PHONE, DESK] {
        let shop = started("demo")?;
        let browser = phone(&shop, "/who/greta")?;
        browser.set_viewport(size)?;
        known(&browser)?;
        browser.goto(&shop.server.url("/"))?;
        let start = browser.taps();
        let mut fields = 0;
        let mut typed = |field: &str, text: &str| {
            fields += 1;
            write(&browser, field, text)
        };

        // Known by three letters of the plate.
        follow(&browser, "Check")?;
        typed("Plate", "MN 4")?;
        browser.wait_for_text("Known here")?;
        follow(&browser, "MN 4")?;
        browser.wait_for_text("It belongs to somebody else now")?;
        typed("Complaint", "Left headlamp is out")?;
        typed("Odometer", "91420 km")?;
        choose(&browser, "Headlamp bulb renewed 24.00")?;
        tap(&browser, "Check it in")?;
        browser.wait_for_text("Walk round it first")?;
        tap(&browser, "Finish walk-round")?;
        browser.wait_for_text("New part, not on yet")?;
        tap(&browser, "Headlamp bulb renewed")?;
        gone(&browser, "New part, not on yet")?;
        // Nothing is asked for it but a look at the lamp.
        follow(
            &browser,
            if size == PHONE {
                "Owed, checks, proof"
            } else {
                "Still to do"
            },
        )?;
        browser.wait_for_text("That is done")?;
        let owed = browser.text()?;
        ensure!(
            !owed.contains("Road test") && !owed.contains("Leak test"),
            "{owed}"
        );
        tap(&browser, "That is done")?;
        browser.wait_for_text("it is fit to go")?;
        follow(&browser, "Hand over")?;
        browser.wait_for_text("Invoice, paid")?;
        typed("What was found", "bulb burnt through")?;
        tap(&browser, "Invoice, paid")?;
        browser.wait_for_text("with what is asked here")?;
        tap(&browser, "Keys given, it drives away")?;
        browser.wait_for_text("Handed over: drove away")?;

        let taps = browser.taps() - start - fields;
        println!("{taps} taps, {fields} fields at {size:?}");
        ensure!(
            taps <= MOST_TAPS && fields <= MOST_FIELDS,
            "{taps} taps, {fields} fields"
        );
        let errors = browser.console_errors()?;
        ensure!(errors.is_empty(), "{}", errors.join("\n"));
    }
    Ok(())
}

#[test]
fn who_is_typed_again_is_known_and_a_second_record_becomes_one_with_the_first() -> Result<()> {
    let (shop, browser) = set_up()?;
    let take_in = |customer: &str, plate: &str, vin: &str| -> Result<()> {
        browser.goto(&shop.server.url("/new"))?;
        write(&browser, "Plate", plate)?;
        write(&browser, "Vehicle maker", "Marlin Combi 2014")?;
        write(&browser, "Vehicle identification", vin)?;
        write(&browser, "Customer", customer)?;
        write(&browser, "Telephone", "0912 000 111")?;
        write(&browser, "Complaint", "It squeals")?;
        write(&browser, "Odometer", "88,200")?;
        Ok(())
    };
    // A letter that no number contains: what is meant is one tap, and nothing typed is lost.
    take_in("Ines Duarte", "AB-12-CD", "1M8GDM9AXKPO42788")?;
    browser.wait_for_text("Not valid as typed")?;
    tap(&browser, "1M8GDM9AXKP042788")?;
    browser.wait_for_text("Valid")?;
    tap(&browser, "Check it in")?;
    browser.wait_for_text("Walk round it first")?;

    // The same once more, by somebody who does not look: asked once, taken when said again.
    take_in("I. Duarte", "ab 12 cd", "")?;
    browser.wait_for_text("Known here")?;
    tap(&browser, "Check it in")?;
    browser.wait_for_text("is known: Marlin Combi 2014, Ines Duarte")?;
    tap(&browser, "Check it in")?;
    browser.wait_for_text("Walk round it first")?;

    browser.goto(&shop.server.url("/find?q=0912000111"))?;
    follow(&browser, "Ines Duarte 0912")?;
    browser.wait_for_text("Is this the same customer?")?;
    super::unfold(&browser, "Is this the same customer?")?;
    tap(&browser, "The same customer")?;
    browser.wait_for_text("Also written down as I. Duarte")?;
    browser.goto(&shop.server.url("/vehicles"))?;
    browser.wait_for_text("AB-12-CD")?;
    browser.goto(&shop.server.url("/find"))?;
    // As one types.
    write(&browser, "Number, plate, name", "squeals")?;
    browser.wait_for_text("2 orders")?;
    let errors = browser.console_errors()?;
    ensure!(
        errors.iter().all(|error| error.contains("422")),
        "{}",
        errors.join("\n")
    );
    Ok(())
}

#[test]
fn a_sale_over_the_counter_is_a_bill_and_the_money() -> Result<()> {
    let (shop, browser) = set_up()?;
    browser.goto(&shop.server.url("/sale"))?;
    write(&browser, "What", "Wiper blades, pair")?;
    write(&browser, "Price of one", "27,50")?;
    tap(&browser, "To the bill")?;
    // 27.50 and 20 per cent of tax.
    browser.wait_for_text("33.00")?;
    browser.wait_for_text("Invoice, paid")?;
    tap(&browser, "Invoice, paid")?;
    browser.wait_for_text("nothing stands against it")?;
    tap(&browser, "Sold, done")?;
    browser.wait_for_text("Handed over")?;
    let errors = browser.console_errors()?;
    ensure!(errors.is_empty(), "{}", errors.join("\n"));
    Ok(())
}
