//! A map written on the screen by somebody who does not know its text: items, what each
//! needs, fasteners, times; checked while one types; kept, and kept by two at once.

use super::{follow, phone, started, still, tap, unfold, write};
use anyhow::{Context, Result, ensure};
use chromium::{Browser, DESK, PHONE};
use serde_json::json;

/// Waits until the draft holds a line: the page says that it is good a moment before.
fn drafted(browser: &Browser, line: &str) -> Result<()> {
    let holds = || Ok(draft(browser)?.contains(line).then_some(()));
    let held = browser.wait_until(holds)?;
    ensure!(held.is_some(), "{line} not in {}", draft(browser)?);
    Ok(())
}

/// The text of the draft as the page carries it.
fn draft(browser: &Browser) -> Result<String> {
    let text = browser.execute("return document.querySelector('[data-text]').value", vec![])?;
    Ok(text.as_str().context("the page carries a text")?.to_owned())
}

fn pick(browser: &Browser, field: &str, choice: &str) -> Result<()> {
    still(|| {
        browser
            .by_role_containing("combobox", field)?
            .choose(choice)
    })
}

/// Opens an item by its row in the list.
fn open(browser: &Browser, item: &str) -> Result<()> {
    let names = browser.names_by_role("button")?;
    let row = names
        .iter()
        .find(|name| *name == item || name.starts_with(&format!("{item} after ")));
    let row = row.with_context(|| format!("{item} is not in {names:?}"))?;
    still(|| browser.by_role("button", row)?.click())
}

fn add(browser: &Browser, name: &str, kind: &str, fields: &[(&str, &str)]) -> Result<()> {
    write(browser, "What is it called?", name)?;
    pick(browser, "What is it?", kind)?;
    for (field, value) in fields {
        write(browser, field, value)?;
    }
    tap(browser, "Add it")?;
    browser.wait_for_text(&format!("Added: {name}"))
}

/// The page can be read as it stands, and pressed with gloves where it is at hand.
fn legible(browser: &Browser, what: &str) -> Result<()> {
    browser.set_viewport(DESK)?;
    let mut faults = browser.axe()?;
    browser.set_viewport(PHONE)?;
    faults.extend(browser.axe()?);
    faults.extend(browser.target_faults()?);
    ensure!(faults.is_empty(), "{what}: {}", faults.join("\n"));
    Ok(())
}

#[test]
fn a_map_is_written_without_knowing_its_text_and_drawn() -> Result<()> {
    let shop = started("demo")?;
    let browser = phone(&shop, "/who/pavel")?;
    browser.goto(&shop.server.url("/maps"))?;
    follow(&browser, "Write a new map")?;
    write(&browser, "Which vehicle", "Lanner estate, front door")?;
    tap(&browser, "Begin")?;
    browser.wait_for_text("New. Nothing is kept yet.")?;

    add(
        &browser,
        "handle screws",
        "fasteners",
        &[
            ("How many?", "3"),
            ("Where do you stand?", "cabin"),
            ("Which tool?", "T20"),
            ("Minutes off", "1.5"),
            ("Minutes back", "2"),
        ],
    )?;
    // What comes next is after that, unless another is picked.
    add(
        &browser,
        "panel",
        "cover",
        &[("Minutes off", "2"), ("Minutes back", "3")],
    )?;
    pick(&browser, "What has to be off first?", "nothing")?;
    add(&browser, "sill trim", "cover", &[])?;
    pick(&browser, "What has to be off first?", "panel off")?;
    pick(&browser, "Or, if that is enough", "sill trim off")?;
    add(&browser, "speaker", "part", &[("Minutes off", "1,5")])?;
    ensure!(
        draft(&browser)?.contains("{ any = [\"panel off\", \"sill trim off\"] }"),
        "{}",
        draft(&browser)?
    );
    ensure!(
        draft(&browser)?.contains("minutes = { out = 1.5 }"),
        "{}",
        draft(&browser)?
    );

    // Torque with who says it; a length that is another at one place.
    open(&browser, "handle screws")?;
    write(&browser, "Size", "M6x16")?;
    write(&browser, "Torque", "8 Nm")?;
    write(&browser, "Who says the torque", "Door manual")?;
    write(&browser, "Of which date", "2022-05-01")?;
    browser
        .by_role("textbox", "Length such as 16 mm")?
        .write("16 mm")?;
    unfold(&browser, "Where the length is another")?;
    write(&browser, "Length of 3", "40 mm")?;
    tap(&browser, "Set it")?;
    browser.wait_for_text("Changed.")?;
    browser.wait_for_text("A good map, 4 items")?;
    for line in [
        "size = \"M6x16\"",
        "torque = [\"8 Nm\"]",
        "length-at = { 3 = \"40 mm\" }",
        "date = \"2022-05-01\"",
    ] {
        drafted(&browser, line)?;
    }
    // Two moves: cracked against the panel, then out.
    tap(&browser, "Crack them first")?;
    browser.wait_for_text("Then out")?;
    pick(&browser, "To crack them it also needs", "panel on")?;
    tap(&browser, "Set it")?;
    browser.wait_for_text("Changed.")?;
    drafted(&browser, "needs = [\"panel on\"]")?;
    legible(&browser, "two moves")?;
    tap(&browser, "Out in one go after all")?;
    browser.wait_for_text("Out in one go.")?;
    tap(&browser, "Add another")?;

    // Only some of these vehicles have it.
    unfold(&browser, "The map itself")?;
    write(&browser, "What only some of them have", "loudspeakers")?;
    tap(&browser, "Set the map")?;
    browser.wait_for_text("no item is only on vehicles with `loudspeakers`")?;
    open(&browser, "speaker")?;
    still(|| {
        browser
            .by_role_containing("checkbox", "Only on vehicles with loudspeakers")?
            .click()
    })?;
    tap(&browser, "Set it")?;
    browser.wait_for_text("A good map, 4 items")?;
    drafted(&browser, "only-with = [\"loudspeakers\"]")?;

    // A reload loses nothing.
    let before = draft(&browser)?;
    browser.goto(&shop.server.url("/maps"))?;
    follow(&browser, "Write a new map")?;
    write(&browser, "Which vehicle", "Lanner estate, front door")?;
    tap(&browser, "Begin")?;
    tap(&browser, "Take it up again")?;
    browser.wait_for_text("A good map, 4 items")?;
    ensure!(draft(&browser)? == before);

    // It is kept, drawn, and can be taken along as a file.
    tap(&browser, "Keep it")?;
    browser.wait_for_text("version 1, kept by Pavel")?;
    browser.wait_for_text("The way in to speaker")?;
    let file = browser.execute_until_called_back(
        "const done = arguments[0]; fetch([...document.querySelectorAll('a')].find((a) => a.textContent === 'As a file').href).then((answer) => answer.text()).then(done)",
        vec![],
    )?;
    ensure!(file.as_str() == Some(before.as_str()), "{file}\n{before}");
    // Kept, it is no draft any more.
    follow(&browser, "Change it")?;
    browser.wait_for_text("As version 1 has it.")?;
    ensure!(!browser.text()?.contains("did not keep it"));
    let errors = browser.console_errors()?;
    ensure!(errors.is_empty(), "{}", errors.join("\n"));
    Ok(())
}

#[test]
fn what_is_wrong_is_said_beside_its_field_while_one_types() -> Result<()> {
    let shop = started("demo")?;
    let browser = phone(&shop, "/who/pavel")?;
    browser.goto(&shop.server.url("/maps/pellworth-mite-battery/edit"))?;
    open(&browser, "hold-down bolt")?;
    browser.wait_for_text("What it is")?;
    let beside = |key: &str| -> Result<String> {
        let script =
            "return document.querySelector(`[data-wrong=\"${arguments[0]}\"]`).textContent";
        let said = browser.execute(script, vec![key.into()])?;
        Ok(said.as_str().unwrap_or_default().to_owned())
    };
    let wait_beside = |key: &str, words: &str| -> Result<()> {
        let found = browser.wait_until(|| Ok(beside(key)?.contains(words).then_some(())))?;
        ensure!(found.is_some(), "{key}: {}", beside(key)?);
        Ok(())
    };
    // Nothing is pressed: it is checked as one types.
    write(&browser, "Minutes off", "soon")?;
    wait_beside("minutes.out", "no time in whole tenths of a minute")?;
    write(&browser, "Torque", "9 kg")?;
    wait_beside("torque", "`kg` measures mass, not torque")?;
    browser.wait_for_text("2 things to mend")?;
    // Set all the same, it stays as it was typed, and can be mended where it stands.
    tap(&browser, "Set it")?;
    browser.wait_for_text("Changed.")?;
    wait_beside("minutes.out", "no time in whole tenths of a minute")?;
    legible(&browser, "wrong fields")?;
    write(&browser, "Minutes off", "1")?;
    write(&browser, "Torque", "9 Nm")?;
    browser.wait_for_text("A good map")?;
    wait_beside("torque", "")?;
    // The enter key sets the fields; it takes no need away.
    let needs = |text: &str| text.matches("needs").count();
    let before = needs(&draft(&browser)?);
    browser.execute("document.querySelector('[name=\"note\"]').focus()", vec![])?;
    browser.press_keys("mind the clip\u{e007}")?;
    browser.wait_for_text("Changed.")?;
    ensure!(
        draft(&browser)?.contains("note = \"mind the clip\""),
        "{}",
        draft(&browser)?
    );
    ensure!(needs(&draft(&browser)?) == before);
    // A fault in the list leads to its item.
    tap(&browser, "Add another")?;
    browser.wait_for_text("Add what comes off next")?;
    let script = "const text = document.querySelector('[data-text]'); text.value = text.value.replace('is = \"part\"', 'is = \"prt\"'); text.dispatchEvent(new Event('input', { bubbles: true }));";
    browser.execute(script, vec![])?;
    browser.wait_for_text("`prt` is no kind of item")?;
    tap(&browser, "did you mean `part`?")?;
    browser.wait_for_text("What it is")?;
    wait_beside("is", "did you mean `part`?")?;
    pick(&browser, "What is it?", "part")?;
    browser.wait_for_text("A good map")?;
    Ok(())
}

#[test]
fn two_people_change_one_map_and_neither_loses_anything() -> Result<()> {
    let shop = started("demo")?;
    let one = phone(&shop, "/who/pavel")?;
    let other = Browser::start()?;
    other.set_viewport(DESK)?;
    other.goto(&shop.server.url("/who/greta"))?;
    for browser in [&one, &other] {
        browser.goto(&shop.server.url("/maps/pellworth-mite-battery/edit"))?;
    }
    add(&one, "cover", "cover", &[])?;
    add(&other, "vent hose", "hose", &[])?;
    tap(&one, "Keep it")?;
    one.wait_for_text("version 2, kept by Pavel")?;
    // The other is told without doing anything, and still has what she wrote.
    other.wait_for_text("Pavel Ostrow kept version 2 of this map while you worked on version 1")?;
    ensure!(draft(&other)?.contains("vent hose"));
    // Kept all the same, it is refused and stays.
    tap(&other, "Keep it")?;
    other.wait_for_text("its last version is 2")?;
    ensure!(draft(&other)?.contains("vent hose"));
    // Both edits are brought together over the version that both began from.
    tap(&other, "Bring both together")?;
    other.wait_for_text("Both are in it now")?;
    let both = draft(&other)?;
    ensure!(
        both.contains("vent hose") && both.contains("[items.cover]"),
        "{both}"
    );
    tap(&other, "Keep it")?;
    other.wait_for_text("version 3, kept by Greta")?;
    // Both versions are there.
    let texts = [2, 3].map(|version| {
        let address = shop.server.url(&format!("/maps/pellworth-mite-battery/file?version={version}"));
        other.execute_until_called_back(
            "const [address, done] = arguments; fetch(address).then((answer) => answer.text()).then(done)",
            vec![json!(address)],
        )
    });
    let [second, third] = texts;
    ensure!(
        second?
            .as_str()
            .is_some_and(|text| text.contains("[items.cover]"))
    );
    ensure!(
        third?
            .as_str()
            .is_some_and(|text| text.contains("vent hose"))
    );
    Ok(())
}

#[test]
fn a_file_is_read_in_and_checked() -> Result<()> {
    let shop = started("demo")?;
    let browser = phone(&shop, "/who/pavel")?;
    browser.goto(&shop.server.url("/maps/start?vehicle=Small+van"))?;
    let read_in = |text: &str| {
        let script = "const field = document.querySelector('[data-read-into]'); const chosen = new DataTransfer(); chosen.items.add(new File([arguments[0]], 'van.toml', { type: 'text/plain' })); field.files = chosen.files; field.dispatchEvent(new Event('change', { bubbles: true }));";
        browser.execute(script, vec![text.into()])
    };
    read_in(
        "vehicle = \"Small van\"\n[items.tray]\nis = \"cover\"\nneeds = [\"tray screws out\"]\n",
    )?;
    browser.wait_for_text("no item is called `tray screws`")?;
    read_in("vehicle = \"Small van\"\r\n[items.tray]\r\nis = \"cover\"\r\n")?;
    browser.wait_for_text("A good map, 1 item")?;
    tap(&browser, "Keep it")?;
    browser.wait_for_text("version 1, kept by Pavel")?;
    ensure!(browser.text()?.contains("tray"));
    Ok(())
}
