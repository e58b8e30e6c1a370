//! Calculators with no order, on a phone: a belt row by row, a fluid's steps, a drive out of a
//! file.

use super::{choose, events, follow, phone, set_up, started, tap, write};
use anyhow::{Result, ensure};
use serde_json::json;

#[test]
fn a_belt_is_written_row_by_row_and_drawn() -> Result<()> {
    let shop = started("demo")?;
    let browser = phone(&shop, "/who/pavel")?;
    browser.goto(&shop.server.url("/"))?;
    follow(&browser, "Work it out")?;
    follow(&browser, "How a belt runs")?;
    browser.wait_for_text("Pulley, as the belt meets it 1")?;
    let fill = "
        for (const [name, value] of Object.entries(arguments[0]))
            document.querySelector(`[name='${name}']`).value = value;";
    let rows = json!({ "across-1": "100", "name-2": "pump", "x-2": "300", "y-2": "0" });
    browser.execute(fill, vec![rows])?;
    choose(&browser, "flat or V: line as measured")?;
    tap(&browser, "Work it out")?;
    // What is missing is said in its row, and what was typed stays.
    browser.wait_for_text("Not worked out yet")?;
    ensure!(browser.text()?.contains("Nothing is written"));
    browser.execute(fill, vec![json!({ "across-2": "100" })])?;
    tap(&browser, "Work it out")?;
    browser.wait_for_text("914.2 mm")?;
    let text = browser.text()?;
    ensure!(
        text.contains("pump, on the belt's ribs") && text.contains("wrap 180°"),
        "{text}"
    );
    let drawn = browser.execute(
        "return document.querySelectorAll('main svg').length",
        vec![],
    )?;
    ensure!(drawn == 1, "{drawn}");
    // The address alone gives the same answer again.
    browser.goto(&browser.address()?)?;
    ensure!(browser.text()?.contains("914.2 mm"));
    Ok(())
}

#[test]
fn a_fluid_says_what_is_owed_and_what_waits() -> Result<()> {
    let shop = started("serve")?;
    let browser = phone(&shop, "/calc/fluids")?;
    follow(&browser, "Brake fluid")?;
    choose(&browser, "DOT 4")?;
    write(&browser, "The tester says that it boils at", "140")?;
    tap(&browser, "Work it out")?;
    browser.wait_for_text("renew it")?;
    let text = browser.text()?;
    ensure!(text.contains("owed") && text.contains("road"), "{text}");
    Ok(())
}

#[test]
fn a_drive_is_read_from_a_file_and_stays_on_the_page() -> Result<()> {
    let shop = started("demo")?;
    let browser = phone(&shop, "/who/pavel")?;
    browser.goto(&shop.server.url("/calc/roadtest/recording"))?;
    // A file as a person would choose it.
    let choose_file = "
        const field = document.querySelector(\"input[type='file']\");
        const list = new DataTransfer();
        list.items.add(new File([arguments[0]], 'drive.csv', { type: 'text/csv' }));
        field.files = list.files;
        field.dispatchEvent(new Event('change', { bubbles: true }));";
    let log = include_str!("../../../../checks/data/drives/drive12.csv");
    browser.execute(choose_file, vec![json!(log)])?;
    let read = "return document.querySelector(\"textarea[name='log']\").value.length > 1000";
    let there =
        browser.wait_until(|| Ok((browser.execute(read, vec![])? == true).then_some(())))?;
    ensure!(there.is_some(), "the file was not read");
    tap(&browser, "Work it out")?;
    browser.wait_for_text("Thermostat")?;
    ensure!(browser.text()?.contains("held"), "{}", browser.text()?);
    // Another phone's news does not take the answer away: it stands at no address.
    let other = phone(&shop, "/who/pavel")?;
    other.goto(&shop.server.url("/calc/coolant"))?;
    write(&other, "Height above the sea", "650 m")?;
    tap(&other, "Keep the height")?;
    other.wait_for_text("The shop stands at")?;
    browser.wait_for_text("This page stays as it is")?;
    ensure!(browser.text()?.contains("Thermostat"));
    Ok(())
}

#[test]
fn what_was_worked_out_for_an_order_is_kept_with_it() -> Result<()> {
    let shop = started("demo")?;
    let browser = phone(&shop, "/who/pavel")?;
    browser.goto(&shop.server.url("/o/1002/item/oil"))?;
    follow(&browser, "Engine oil: steps and limits")?;
    write(&browser, "The sort that is in", "10W-40")?;
    write(&browser, "The sort that is to go in", "5W-30")?;
    write(&browser, "The sort that the maker asks for", "5W-30")?;
    write(&browser, "Low when it came", "0.4")?;
    tap(&browser, "Work it out")?;
    browser.wait_for_text("Save with the order")?;
    tap(&browser, "Save with the order")?;
    // The form began with what came out: it is not in again.
    browser.wait_for_text("Engine oil: short")?;
    let kept = events(&shop, "calculated")?;
    let last = kept.last().map(ToString::to_string).unwrap_or_default();
    ensure!(last.contains("fluids engine-oil"), "{last}");
    browser.goto(&shop.server.url("/o/1002/story"))?;
    browser.wait_for_text("0.4 L")?;

    // A drive becomes the proof that is needed, with its readings.
    browser.goto(&shop.server.url("/o/1002/calc/roadtest/by-hand"))?;
    let rows = json!({ "at-1": "0", "coolant-1": "80", "at-2": "5", "coolant-2": "108",
        "at-3": "8", "coolant-3": "112", "limit": "105" });
    let fill = "
        for (const [name, value] of Object.entries(arguments[0])) {
            const field = document.querySelector(`[name='${name}']`);
            if (field) field.value = value;
        }";
    browser.execute(fill, vec![rows.clone()])?;
    tap(&browser, "Work it out")?;
    // Room for another reading comes with each press.
    browser.wait_for_text("Reading 3")?;
    browser.execute(fill, vec![rows])?;
    tap(&browser, "Work it out")?;
    browser.wait_for_text("Save: the road test failed")?;
    tap(&browser, "Save: the road test failed")?;
    browser.wait_for_text("Owed, checks, proof")?;
    let proved = events(&shop, "proved")?;
    let last = proved.last().map(ToString::to_string).unwrap_or_default();
    ensure!(
        last.contains("road-test") && last.contains("failed") && last.contains("112.0"),
        "{last}"
    );
    Ok(())
}

/// A belt is tapped round: each tap is the next pulley, and the last can be taken away.
#[test]
fn a_belt_is_tapped_round_its_pulleys() -> Result<()> {
    let (shop, browser) = set_up()?;
    browser.goto(&shop.server.url("/calc/belt/routing"))?;
    let tapped = |x: f64, y: f64| -> Result<()> {
        let at = browser.execute(
            "const square = document.querySelector('.places svg'); square.scrollIntoView({ block: 'center' }); \
             const box = square.getBoundingClientRect(); \
             return [box.left + box.width * arguments[0], box.top + box.height * arguments[1]];",
            vec![x.into(), y.into()],
        )?;
        for kind in ["mousePressed", "mouseReleased"] {
            let press =
                json!({ "type": kind, "x": at[0], "y": at[1], "button": "left", "clickCount": 1 });
            browser.cdp("Input.dispatchMouseEvent", press)?;
        }
        Ok(())
    };
    for (x, y) in [(0.2, 0.3), (0.5, 0.45), (0.8, 0.3), (0.9, 0.9)] {
        tapped(x, y)?;
    }
    browser.by_role("button", "Take the last away")?.click()?;
    let written =
        "return [...document.querySelectorAll('[name^=\"x-\"]')].map((one) => one.value);";
    let written = browser.execute(written, vec![])?;
    assert_eq!(written[0], "0 mm");
    assert_eq!(written[3], "180 mm", "{written}");
    assert_eq!(written[4], "", "{written}");
    browser.execute(
        "document.querySelector('[name=\"side-3\"][value=back]').click()",
        vec![],
    )?;
    browser.by_role("button", "Work it out")?.click()?;
    browser.wait_for_text("crank, pulley 2, pulley 3 (back), pulley 4")?;
    assert!(
        browser.target_faults()?.is_empty(),
        "{:?}",
        browser.target_faults()?
    );
    Ok(())
}
