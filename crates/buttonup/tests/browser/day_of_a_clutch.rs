//! A clutch that is taken apart by a map written from nothing, then declined, and collected in
//! boxes: what is off goes with it on paper, and nobody may drive it.

use super::hands::{Hand, agree, owner, shop, technician};
use super::{changed, gone, main_text};
use anyhow::{Context, Result, ensure};
use serde_json::json;

const MAP: &str = include_str!("day_of_a_clutch.toml");

#[test]
fn a_clutch_declined_and_collected_in_boxes() -> Result<()> {
    let shop = shop()?;
    let desk = owner(&shop, "Ruth Amsel", "Henk Vos")?;
    let phone = technician(&shop, "Henk Vos")?;
    map_written(&desk)?;
    checked_in(&desk)?;
    phone.go("/o/1001/walk")?;
    phone.tap_for("Finish walk-round", "Plan it")?;
    desk.go("/o/1001")?;
    agree(&desk, &phone, 1001)?;

    allowed_to_look(&desk)?;
    agree(&desk, &phone, 1001)?;
    planned(&phone)?;
    apart(&phone, &desk)?;
    agree(&desk, &phone, 1001)?;

    declined(&desk)?;
    desk.go("/o/1001")?;
    agree(&desk, &phone, 1001)?;
    collected(&desk)?;
    desk.go("/o/1001")?;
    agree(&desk, &phone, 1001)?;
    phone.go("/o/1001")?;
    phone.sees("Handed over: collected")?;

    phone.print("clutch");
    desk.print("clutch");
    phone.no_errors()?;
    desk.no_errors()
}

/// The owner writes down what is fitted to what, from nothing.
fn map_written(owner: &Hand<'_>) -> Result<()> {
    owner.go("/maps/new")?;
    owner.write("Which vehicle", "Ostra Haul 1.9 van")?;
    owner.tap_for("Begin", "Keep it")?;
    let text = "const text = document.querySelector('[data-text]');
        text.value = arguments[0];
        text.dispatchEvent(new Event('input', { bubbles: true }));
        text.dispatchEvent(new Event('change', { bubbles: true }));";
    owner.browser.execute(text, vec![json!(MAP)])?;
    owner.tap_for("Keep it", "version 1, kept by Ruth")
}

fn checked_in(desk: &Hand<'_>) -> Result<()> {
    desk.go("/new")?;
    for (field, words) in [
        ("Plate", "OH 1900"),
        ("Customer", "Sanne Kuiper"),
        ("Telephone", "0600 555 141"),
        ("Vehicle maker", "Ostra Haul 1.9 van"),
        ("Complaint", "Slips uphill, smells burnt"),
        ("Odometer", "208,400"),
    ] {
        desk.write(field, words)?;
    }
    desk.tap_for("Check it in", "Walk round it first")
}

/// Consent to take it apart, and what putting it back would cost.
fn allowed_to_look(desk: &Hand<'_>) -> Result<()> {
    desk.go("/o/1001/price")?;
    desk.write("Hours", "2,5")?;
    desk.tap_for("Set the price", "240.00 before tax")?;
    desk.follow("Get approval")?;
    desk.choose("take apart")?;
    desk.tap_for("Approved", "Yes, up to 240.00")?;
    desk.go("/o/1001")
}

fn planned(phone: &Hand<'_>) -> Result<()> {
    phone.go("/o/1001")?;
    phone.follow("Plan it")?;
    phone.sees("clutch disc")?;
    phone.follow("clutch disc")?;
    phone.sees("Proven: nothing is cheaper")?;
    phone.tap_for("Work by it", "Out as shown")
}

/// Stage after stage, the desk told of each.
fn apart(phone: &Hand<'_>, desk: &Hand<'_>) -> Result<()> {
    let main = || main_text(&phone.browser);
    for _ in 0..12 {
        let before = main()?;
        if before.contains("You are there") {
            return Ok(());
        }
        if before.contains("Came out: gearbox oil") {
            phone.write("Came out: gearbox oil", "2.0 L")?;
        }
        phone.tap("Out as shown")?;
        changed(&phone.browser, &before)?;
        agree(desk, phone, 1001)?;
    }
    ensure!(main()?.contains("You are there"), "{}", main()?);
    Ok(())
}

fn declined(desk: &Hand<'_>) -> Result<()> {
    desk.go("/o/1001/ask")?;
    desk.choose("repair")?;
    desk.tap_for("No", "No · repair")?;
    Ok(())
}

/// Paid for what was done, and fetched with a trailer.
fn collected(desk: &Hand<'_>) -> Result<()> {
    desk.go("/o/1001/hand-over")?;
    // It does not drive away like this.
    desk.tap_for("It drives away", "reasons stand against it")?;
    desk.write(
        "What was found",
        "disc worn down to its rivets, cover blued",
    )?;
    desk.write(
        "What was done",
        "taken apart and looked at; the repair is declined",
    )?;
    desk.tap("Invoice, paid")?;
    gone(&desk.browser, "Invoice and money")?;
    desk.unfold("Collected dismantled")?;
    desk.sees("It must not be driven or started")?;
    for open in ["gearbox", "clutch disc", "left driveshaft"] {
        ensure!(desk.says(open)?, "{open} is not on the list");
    }
    desk.write("Boxes that go with it", "4")?;
    desk.write("Signed by", "Sanne Kuiper")?;
    draw(desk)?;
    desk.tap_for("as listed, with its keys", "4 boxes with it")?;
    desk.follow("Print the invoice")?;
    desk.sees("Not put back")?;
    for said in [
        "Boxes that went with it: 4",
        "declined, and collected dismantled",
    ] {
        ensure!(desk.says(said)?, "no {said:?}");
    }
    Ok(())
}

fn draw(desk: &Hand<'_>) -> Result<()> {
    let place = desk.browser.execute(
        "const sheet = [...document.querySelectorAll('canvas[data-draw]')].find((one) => one.checkVisibility() && one.closest('#apart'));
         sheet.scrollIntoView({ block: 'center' });
         const box = sheet.getBoundingClientRect();
         return [box.left, box.top, box.width, box.height];",
        vec![],
    )?;
    let number = |nth: usize| place[nth].as_f64().context("no sheet is open");
    for (nth, (across, down)) in [(0.2, 0.6), (0.5, 0.3), (0.8, 0.7)].into_iter().enumerate() {
        let kind = ["mousePressed", "mouseMoved", "mouseReleased"][nth];
        desk.browser.cdp(
            "Input.dispatchMouseEvent",
            json!({ "type": kind, "x": number(0)? + across * number(2)?, "y": number(1)? + down * number(3)?,
                "button": "left", "buttons": 1, "clickCount": 1 }),
        )?;
    }
    Ok(())
}
