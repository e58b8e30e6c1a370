//! A bolt snaps in an aluminium housing: from the snag to a sound joint, on a phone.

use super::{choose, phone, started, tap, write};
use anyhow::{Result, ensure};
use chromium::Browser;

fn says(browser: &Browser, words: &str) -> Result<()> {
    let text = browser.text()?.replace('\u{202f}', " ");
    ensure!(text.contains(words), "no {words:?} in: {text}");
    Ok(())
}

#[test]
fn a_snapped_housing_bolt_is_made_sound() -> Result<()> {
    let shop = started("demo")?;
    let browser = phone(&shop, "/who/pavel")?;

    // It is found.
    browser.goto(&shop.server.url("/o/1002/snag?item=housing-bolts"))?;
    let before = browser.taps();
    browser.by_role_containing("checkbox", "6")?.click()?;
    choose(&browser, "snapped below")?;
    tap(&browser, "Note the snag")?;

    // What the order knows is there; what it does not is asked.
    browser.wait_for_text("Show repair options")?;
    for known in ["M8x1.25", "8.8", "75 mm", "22 Nm"] {
        says(&browser, known)?;
    }
    write(&browser, "How far it sits below", "2")?;
    write(&browser, "Thread that was engaged", "18")?;
    write(&browser, "How deep it is", "26")?;
    write(&browser, "Metal around it", "19")?;
    choose(&browser, "aluminium, cast")?;
    tap(&browser, "Show repair options")?;

    // The insert stands first, the larger thread lower with its reason.
    browser.wait_for_text("Take this way")?;
    for words in [
        "22 N·m",
        "16.2 lb·ft, as before",
        "Wire insert, bolt M8x75",
        "way 1 of",
        "+55 min (40 to 90)",
        "+14.00 (8.00 to 25.00)",
        "904.40",
        "54.40 over",
        "Oversize thread",
        "must grow to 11 mm",
        "27.",
    ] {
        says(&browser, words)?;
    }
    tap(&browser, "Take this way")?;
    println!("taps from the snag to the way: {}", browser.taps() - before);

    // One batch: the way is kept, its steps are owed, the price knows it.
    browser.wait_for_text("All done as listed")?;
    browser.wait_for_text("Price now 904.40 before tax")?;
    says(&browser, "54.40 over what was agreed: ask for a yes")?;
    let chosen = browser.text()?;
    for words in [
        "left-hand drills",
        "8.4 mm",
        "Break the tang off",
        "chips out",
    ] {
        ensure!(
            chosen.to_lowercase().contains(&words.to_lowercase()),
            "no {words:?}"
        );
    }
    let here = browser.address()?;

    // One step alone: the drill's chips and the rag are inside from then on.
    browser
        .by_role_containing("button", "Rag in the opening")?
        .click()?;
    browser.wait_for_text("all sent")?;
    browser.goto(&shop.server.url("/o/1002/may/start"))?;
    browser.wait_for_text("rag in the opening")?;
    says(&browser, "Break the tang off")?;

    // The rest in one tap: nothing is inside any more, and the bolt is out.
    browser.goto(&here)?;
    tap(&browser, "All done as listed")?;
    browser.wait_for_text("Out as shown")?;
    browser.goto(&here)?;
    browser.wait_for_text("From now on")?;
    says(&browser, "M8x1.25 insert, bolt M8x75, 22 N·m")?;
    browser.goto(&shop.server.url("/o/1002/may/start"))?;
    let start = browser.text()?;
    ensure!(
        !start.contains("rag in the opening") && !start.contains("tang"),
        "{start}"
    );
    browser.goto(&shop.server.url("/o/1002/open"))?;
    says(&browser, "1 out (6)")?;
    ensure!(
        browser.console_errors()?.is_empty(),
        "{:?}",
        browser.console_errors()?
    );
    Ok(())
}

#[test]
fn threads_are_asked_with_no_order_and_by_address() -> Result<()> {
    let shop = started("demo")?;
    let browser = phone(&shop, "/threads")?;
    browser.by_role_containing("link", "A thread")?.click()?;
    write(&browser, "Thread", "5/16-18")?;
    write(&browser, "Class", "grade 5")?;
    tap(&browser, "Work it out")?;
    browser.wait_for_text("Breaks in twist")?;
    says(&browser, "Near miss: bolt")?;
    says(&browser, "not a specification")?;
    // The address alone gives the same answer again.
    let here = browser.address()?;
    browser.goto(&here)?;
    says(&browser, "Breaks in twist")?;

    // What is wrong stands beside its field, with how to mend it.
    browser.goto(
        &shop
            .server
            .url("/threads/torque?thread=M8&clamp=heavy&friction=0.15"),
    )?;
    says(&browser, "write a force such as 25275 N")?;
    browser.goto(&shop.server.url("/threads/torque?thread=M8&clamp=10000"))?;
    says(&browser, "none is assumed")?;

    // A bare number has the unit that the page names.
    browser.goto(
        &shop
            .server
            .url("/threads/torque?thread=M10x1.5&clamp=25275&friction=0.15"),
    )?;
    says(&browser, "50.1 N·m (36.9 lb·ft)")?;

    // The weak way says why.
    browser.goto(&shop.server.url(
        "/threads/repair?thread=M8x75&joint=other&class=8.8&engaged=18&hole=blind&depth=26&boss=10&in=aluminium&torque=22",
    ))?;
    says(&browser, "of wall would be left")?;
    Ok(())
}

#[test]
fn the_item_page_tells_its_size_and_the_shop_weighs_the_ways() -> Result<()> {
    let shop = started("demo")?;
    let browser = phone(&shop, "/who/pavel")?;
    browser.goto(&shop.server.url("/o/1002/item/housing-bolts"))?;
    says(&browser, "M8x1.25: tap drill 6.8 mm, wrench 13 mm")?;
    says(&browser, "Torque 10 Nm, then 22 Nm")?;

    let snapped = "/threads/repair?thread=M8x75&joint=other&class=8.8&engaged=18&hole=blind&depth=26&boss=19&in=aluminium&torque=22";
    browser.goto(&shop.server.url(snapped))?;
    says(&browser, "Wire insert, bolt M8x75 · holds")?;
    browser.goto(&shop.server.url("/shop"))?;
    browser.execute("document.getElementById('weights').open = true", vec![])?;
    for (field, weight) in [
        ("Far from", "0"),
        ("Soon", "0"),
        ("Cheap", "1"),
        ("Much stays", "0"),
    ] {
        write(&browser, field, weight)?;
    }
    tap(&browser, "Count them so")?;
    browser.wait_until(|| {
        browser.goto(&shop.server.url(snapped))?;
        Ok(browser
            .text()?
            .contains("Oversize thread, bolt M10x75 · holds")
            .then_some(()))
    })?;
    says(&browser, "Oversize thread, bolt M10x75 · holds")
}
