//! A brake job as a day in a shop: typed lines, a screw that rounds off, new pads and a disc, the
//! desk that rings, the second pair of eyes, and the owner who looks at the money.

use super::hands::{Hand, agree, owner, shop, technician};
use super::{gone, tick_all};
use anyhow::{Context, Result, ensure};

const OFF: &str = "5 front right wheel nuts M12x1.5 110 Nm\nfront right wheel\n\
    2 front right caliper bolts M10x1.25 35 Nm\nfront right caliper\nfront right brake pads";

#[test]
fn a_brake_job_with_a_rounded_screw() -> Result<()> {
    let shop = shop()?;
    let desk = owner(&shop, "Vera Lindgren", "Jonas Brix")?;
    let phone = technician(&shop, "Jonas Brix")?;
    let (set_up, _) = desk.counted();

    checked_in(&desk)?;
    walked(&phone)?;
    desk.go("/o/1001")?;
    desk.sees("Pia Wendt")?;
    agree(&desk, &phone, 1001)?;

    priced(&desk, "1.6", "Brake pads, front", "84.50", "238.10")?;
    agree(&desk, &phone, 1001)?;

    off(&phone, OFF)?;
    agree(&desk, &phone, 1001)?;
    rounded(&phone)?;
    desk.sees("rounded")?;
    agree(&desk, &phone, 1001)?;
    out_with_it(&phone)?;
    agree(&desk, &phone, 1001)?;
    off(&phone, "front right brake disc")?;
    agree(&desk, &phone, 1001)?;

    the_screw_comes(&desk)?;
    desk.go("/o/1001")?;
    fitted(&phone)?;
    agree(&desk, &phone, 1001)?;
    back(&phone)?;
    agree(&desk, &phone, 1001)?;
    tightened(&phone)?;
    agree(&desk, &phone, 1001)?;
    looked_at(&phone)?;
    checked(&desk)?;
    desk.go("/o/1001")?;
    agree(&desk, &phone, 1001)?;
    paid_and_gone(&desk)?;
    desk.go("/o/1001")?;
    agree(&desk, &phone, 1001)?;
    phone.go("/o/1001")?;
    phone.sees("Handed over: drove away")?;

    // The owner's evening: the invoice is among the month's, and nothing is owed.
    desk.go("/shop/books")?;
    desk.sees("Pia Wendt")?;
    println!("set up: {set_up} taps");
    phone.print("brakes");
    desk.print("brakes");
    phone.no_errors()?;
    desk.no_errors()
}

fn checked_in(desk: &Hand<'_>) -> Result<()> {
    desk.follow("Check in a vehicle")?;
    for (field, words) in [
        ("Plate", "LX 2050"),
        ("Customer", "Pia Wendt"),
        ("Telephone", "0600 555 120"),
        ("Vehicle maker", "Tarvo Lynx 1.6, 2015"),
        ("Complaint", "Grinds when braking, worse downhill"),
        ("Odometer", "131,400"),
    ] {
        desk.write(field, words)?;
    }
    desk.tap_for("Check it in", "Walk round it first")
}

fn walked(phone: &Hand<'_>) -> Result<()> {
    phone.go("/")?;
    phone.follow("Tarvo Lynx")?;
    phone.follow("Walk-round")?;
    phone.sees("Walk round it first")?;
    phone.unfold("Wheels")?;
    phone.write("In a few words", "locking nut key in the glovebox")?;
    phone.tap_for("Note it", "locking nut key in the glovebox")?;
    phone.tap_for("Finish walk-round", "Plan it")
}

fn priced(desk: &Hand<'_>, hours: &str, part: &str, each: &str, net: &str) -> Result<()> {
    desk.follow_only("Price")?;
    desk.write("Hours", hours)?;
    desk.browser.by_role("textbox", "What")?.write(part)?;
    desk.write("Unit price, before tax", each)?;
    desk.tap_for("Set the price", &format!("{net} before tax"))?;
    desk.follow("Get approval")?;
    desk.tap_for("Approved", &format!("Yes, up to {net}"))?;
    desk.go("/o/1001")
}

fn off(phone: &Hand<'_>, lines: &str) -> Result<()> {
    phone.go("/o/1001/off")?;
    phone.write("One thing a line", lines)?;
    phone.tap_for("Read it", "Out as shown")?;
    // Brakes want their caution before anybody puts a hand to them.
    if lines.contains("Nm") {
        ensure!(phone.says("locking nut key in the glovebox")?);
        phone.write("Who gives the torque", "Tarvo workshop manual, March 2019")?;
    }
    phone.tap_for("Out as shown", "still off")
}

/// The screw of the disc is typed, and its head rounds before it moves.
fn rounded(phone: &Hand<'_>) -> Result<()> {
    phone.go("/o/1001/off")?;
    phone.write("One thing a line", "front right disc screw M6x16")?;
    phone.tap_for("Read it", "Out as shown")?;
    phone.unfold("disc screw")?;
    phone.tap_for("It won't come out", "Note the snag")?;
    phone.choose("head rounded")?;
    phone.tap_for("Note the snag", "Getting it out")?;
    // It is still in: nothing says that it is off.
    ensure!(phone.says("What came of it")?);
    Ok(())
}

fn out_with_it(phone: &Hand<'_>) -> Result<()> {
    phone.choose("a new one goes in")?;
    phone.write(
        "In a few words",
        "head drilled off, the rest turned out by hand",
    )?;
    phone.tap_for("Snag resolved", "still off")
}

/// The screw that was called for is ordered and comes.
fn the_screw_comes(desk: &Hand<'_>) -> Result<()> {
    desk.go("/o/1001/parts")?;
    desk.sees("disc screw")?;
    desk.tap_for("Received", "Same as the old")
}

fn fitted(phone: &Hand<'_>) -> Result<()> {
    phone.go("/o/1001/parts")?;
    phone.tap_for("Fitted", "fitted")?;
    phone.tap("scrap")
}

fn back(phone: &Hand<'_>) -> Result<()> {
    phone.go("/o/1001/back")?;
    phone.tap_for("On as shown", "Nothing left to put on")
}

/// The torque of each group, the drawing of its bolts beside it.
fn tightened(phone: &Hand<'_>) -> Result<()> {
    let drawn = "return [...document.querySelectorAll('.joint svg title')].map((one) => one.textContent).join('|')";
    let drawn = phone.browser.execute(drawn, vec![])?;
    ensure!(
        drawn
            .as_str()
            .is_some_and(|drawn| drawn.contains("wheel nuts")),
        "{drawn}"
    );
    let loose = || -> Result<usize> {
        let buttons = phone.browser.names_by_role("button")?;
        Ok(buttons
            .iter()
            .filter(|name| name.starts_with("Tight"))
            .count())
    };
    for left in (0..loose()?).rev() {
        phone.tap_first("Tight")?;
        let fewer = phone
            .browser
            .wait_until(|| Ok((loose()? == left).then_some(())))?;
        ensure!(fewer.is_some(), "{left} should be left, {} are", loose()?);
    }
    phone.go("/o/1001/open")?;
    phone.sees("Everything is home")
}

/// What is owed is ticked one by one: nothing was ticked before. The brakes are tried.
fn looked_at(phone: &Hand<'_>) -> Result<()> {
    // What they complained of is a brake: what was found is told before anybody drives it.
    phone.go("/o/1001")?;
    phone.unfold("Write the cause")?;
    phone.write("Cause", "Front pads down to the backing, right disc scored")?;
    phone.tap_for("Save", "down to the backing")?;
    phone.go("/o/1001/due")?;
    phone.sees("Done as ticked")?;
    let ticked = "return document.querySelectorAll('main input[type=checkbox]:checked').length";
    let ticked = phone.browser.execute(ticked, vec![])?;
    ensure!(ticked == 0, "{ticked} ticked by themselves");
    let ticks = tick_all(&phone.browser)?;
    phone.tap("Done as ticked")?;
    gone(&phone.browser, "Done as ticked").with_context(|| format!("{ticks} ticked"))?;
    for proof in ["Brake test passed", "Road test passed"] {
        let buttons = phone.browser.names_by_role("button")?;
        if buttons.iter().any(|name| name.starts_with(proof)) {
            phone.tap_for(proof, "no reading is told")?;
            phone.tap(proof)?;
            gone(&phone.browser, proof)?;
        }
    }
    phone.sees("What is needed is proved")
}

/// The second pair of eyes, at the desk's own screen.
fn checked(desk: &Hand<'_>) -> Result<()> {
    desk.go("/o/1001/due")?;
    desk.tap_for("I checked them", "it is fit to go")
}

fn paid_and_gone(desk: &Hand<'_>) -> Result<()> {
    desk.follow_only("Hand over")?;
    desk.sees("Invoice, paid")?;
    desk.write(
        "What was done",
        "pads and right disc renewed, disc screw renewed",
    )?;
    desk.tap("Invoice, paid")?;
    gone(&desk.browser, "Invoice and money")?;
    if desk.says("The key is back")? {
        desk.tap("The key is back")?;
        gone(&desk.browser, "The key is back")?;
    }
    desk.write("Odometer on the way out", "131,412")?;
    desk.tap_for("it drives away", "Handed over: drove away")
}
