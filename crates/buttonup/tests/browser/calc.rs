//! Calculators with no order, on a phone: a belt row by row, a fluid's steps, a drive out of a
//! file.

use super::{choose, follow, phone, started, tap, write};
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
