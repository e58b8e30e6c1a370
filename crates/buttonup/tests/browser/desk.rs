//! The desk in a real browser: signed for on the screen, each payer apart, what was refused
//! while nobody waited, declined, and collected dismantled.

use super::{Shop, choose, follow, phone, started, tap, unfold, write};
use anyhow::{Context, Result, ensure};
use chromium::{Browser, DESK};
use serde_json::{Value, json};

/// A stroke across the sheet that is open, as a finger draws it.
fn draw(browser: &Browser) -> Result<()> {
    let place = browser.execute(
        "const sheet = [...document.querySelectorAll('canvas[data-draw]')].find((one) => one.checkVisibility());
         sheet.scrollIntoView({ block: 'center' });
         const box = sheet.getBoundingClientRect();
         return [box.left, box.top, box.width, box.height];",
        vec![],
    )?;
    let at = |share: f64, start: usize| -> Result<f64> {
        let number = |nth: usize| place[nth].as_f64().context("no sheet is open");
        Ok(number(start)? + share * number(start + 2)?)
    };
    let points = [(0.1, 0.7), (0.3, 0.2), (0.5, 0.8), (0.7, 0.3), (0.9, 0.6)];
    for (nth, (across, down)) in points.into_iter().enumerate() {
        let kind = match nth {
            0 => "mousePressed",
            4 => "mouseReleased",
            _ => "mouseMoved",
        };
        browser.cdp(
            "Input.dispatchMouseEvent",
            json!({ "type": kind, "x": at(across, 0)?, "y": at(down, 1)?, "button": "left", "buttons": 1, "clickCount": 1 }),
        )?;
    }
    Ok(())
}

/// The pictures on the page that are there and not blank: their dark points.
fn ink(browser: &Browser) -> Result<Vec<u64>> {
    let counted = browser.execute_until_called_back(
        "const done = arguments[arguments.length - 1];
         Promise.all([...document.querySelectorAll('img.signed')].map(async (one) => {
           await one.decode();
           const sheet = document.createElement('canvas');
           [sheet.width, sheet.height] = [one.naturalWidth, one.naturalHeight];
           const pen = sheet.getContext('2d');
           pen.drawImage(one, 0, 0);
           const points = pen.getImageData(0, 0, sheet.width, sheet.height).data;
           return points.filter((value, nth) => nth % 4 === 3 && value > 128).length;
         })).then((pictures) => {
           const drawn = [...document.querySelectorAll('.drawn[aria-label^=\"The signature\"] svg')];
           const area = (one) => one.width.baseVal.value * one.height.baseVal.value;
           const inked = drawn.map((one) => [...one.querySelectorAll('rect')].reduce((sum, each) => sum + area(each), 0));
           done([...pictures, ...inked.map(Math.round)]);
         }, (error) => done([]));",
        vec![],
    )?;
    let counts = counted.as_array().cloned().unwrap_or_default();
    Ok(counts.iter().filter_map(Value::as_u64).collect())
}

fn desk(shop: &Shop) -> Result<Browser> {
    let browser = phone(shop, "/who/greta")?;
    browser.set_viewport(DESK)?;
    Ok(browser)
}

#[test]
fn a_yes_is_signed_on_the_screen_and_stands_on_the_paper() -> Result<()> {
    let shop = started("demo")?;
    let browser = desk(&shop)?;
    browser.goto(&shop.server.url("/o/1002/ask"))?;
    browser.wait_for_text("69.60 before tax is left under the limit of 850.00")?;
    write(&browser, "Up to, in all", "910")?;
    choose(&browser, "in person")?;
    unfold(&browser, "They are here and sign")?;
    draw(&browser)?;
    tap(&browser, "Clear the sheet")?;
    draw(&browser)?;
    tap(&browser, "Approved")?;
    browser.wait_for_text("Yes, up to 910.00")?;
    for page in ["desk", "invoice"] {
        browser.goto(&shop.server.url(&format!("/o/1002/{page}")))?;
        let ink = ink(&browser)?;
        ensure!(ink.len() == 1 && ink[0] > 300, "{page}: {ink:?}");
    }
    let errors = browser.console_errors()?;
    ensure!(errors.is_empty(), "{}", errors.join("\n"));
    Ok(())
}

#[test]
fn a_line_for_the_warranty_has_its_own_ask_and_invoice() -> Result<()> {
    let shop = started("demo")?;
    let browser = desk(&shop)?;
    browser.goto(&shop.server.url("/o/1002/desk"))?;
    unfold(&browser, "Another complaint")?;
    write(
        &browser,
        "What the customer says",
        "Recall letter for the bonnet catch",
    )?;
    choose(&browser, "warranty")?;
    tap(&browser, "Open it")?;
    browser.wait_for_text("the warranty pays")?;
    browser.goto(&shop.server.url("/o/1002/price"))?;
    browser
        .by_role_containing("radio", "Recall letter")?
        .click()?;
    write(&browser, "Hours", "0.5")?;
    tap(&browser, "Set the price")?;
    browser.wait_for_text("60.00 before tax")?;
    // The 220 minutes before it are what they were: no digit was lost.
    ensure!(browser.text()?.contains("780.40 before tax"));
    browser.goto(&shop.server.url("/o/1002/desk"))?;
    browser.wait_for_text("Ask the warranty for 60.00 before tax: nothing is agreed yet.")?;
    browser.goto(&shop.server.url("/o/1002/invoice?payer=warranty"))?;
    let paper = browser.text()?;
    ensure!(
        paper.contains("Recall letter") && !paper.contains("780.40"),
        "{paper}"
    );
    browser.goto(&shop.server.url("/o/1002/invoice"))?;
    let paper = browser.text()?;
    ensure!(
        paper.contains("780.40")
            && paper.contains("Recall letter for the bonnet catch: paid by the warranty")
    );
    Ok(())
}

/// Types what one of an entry costs, in the row of that place.
fn dearer(browser: &Browser, nth: usize, each: &str) -> Result<()> {
    browser.execute(
        "const [nth, each] = arguments;
         const field = [...document.querySelectorAll('main input[name^=\"each-\"]')][nth];
         field.closest('details').open = true;
         field.value = each;",
        vec![json!(nth), json!(each)],
    )?;
    Ok(())
}

/// Two desks have one price before them. Lines that do not touch each other are put together;
/// where both changed the same, both are shown, what was typed stays, and the next press decides.
#[test]
fn two_desks_change_one_price() -> Result<()> {
    let shop = started("demo")?;
    let (ana, ben) = (desk(&shop)?, desk(&shop)?);
    for browser in [&ana, &ben] {
        browser.goto(&shop.server.url("/o/1002/price"))?;
        browser.wait_for_text("780.40 before tax")?;
    }
    // Ben has begun to type, so nothing that comes in moves his page.
    dearer(&ben, 1, "80")?;
    ana.by_role("textbox", "What")?.write("Lamp")?;
    write(&ana, "Unit price, before tax", "5")?;
    tap(&ana, "Set the price")?;
    ana.wait_for_text("785.40 before tax")?;
    tap(&ben, "Set the price")?;
    ben.wait_for_text("793.40 before tax")?;

    dearer(&ben, 1, "81")?;
    ana.goto(&shop.server.url("/o/1002/price"))?;
    dearer(&ana, 1, "90")?;
    tap(&ana, "Set the price")?;
    ana.wait_for_text("803.40 before tax")?;
    tap(&ben, "Set the price")?;
    ben.wait_for_text("The price was changed meanwhile by")?;
    let shown = ben.text()?;
    ensure!(
        shown.contains("you 1 × 81 = 81.00, now 1 × 90 = 90.00"),
        "{shown}"
    );
    ensure!(
        shown.contains("803.40 before tax"),
        "what stands is shown around it: {shown}"
    );
    tap(&ben, "Set the price")?;
    ben.wait_for_text("794.40 before tax")?;
    Ok(())
}

#[test]
fn a_number_that_is_none_is_said_so_before_anything_is_sent() -> Result<()> {
    let shop = started("demo")?;
    let browser = desk(&shop)?;
    browser.goto(&shop.server.url("/o/1002/pay"))?;
    for wrong in ["", "1,5,5", "12.", "ten", "1e3", "--5"] {
        write(&browser, "Amount", wrong)?;
        tap(&browser, "Record payment")?;
        let invalid = browser.execute(
            "return document.querySelectorAll('main :invalid').length",
            vec![],
        )?;
        ensure!(invalid.as_u64() > Some(0), "{wrong:?} was taken");
    }
    write(&browser, "Amount", "-12,50")?;
    tap(&browser, "Record payment")?;
    browser.wait_for_text("948.98")?;
    Ok(())
}

#[test]
fn what_is_refused_while_nobody_waits_holds_up_no_fact_and_stays_on_the_screen() -> Result<()> {
    let shop = started("demo")?;
    let browser = desk(&shop)?;
    let offline = |away: bool| {
        browser.cdp(
            "Network.emulateNetworkConditions",
            json!({ "offline": away, "latency": 0, "downloadThroughput": -1, "uploadThroughput": -1 }),
        )
    };
    browser.goto(&shop.server.url("/o/1002/hand-over"))?;
    browser.cdp("Network.enable", json!({}))?;
    offline(true)?;
    // What is decided is decided now: it does not wait for another day.
    tap(&browser, "It drives away")?;
    browser.wait_for_text("This needs the shop's program")?;
    let queued = "return Object.keys(localStorage).some((key) => key.startsWith('queue:'))";
    ensure!(browser.execute(queued, vec![])? == json!(false));
    // One that was sent and never answered, which will be refused, and a fact behind it.
    browser.execute(
        "const [{ stream }] = JSON.parse([...document.querySelectorAll('button[data-commands]')].find((one) => one.textContent.includes('drives away')).dataset.commands).slice(-1);
         const { device } = sessionStorage;
         const common = { device, happened_at: new Date().toISOString(), who: document.body.dataset.who, stream };
         const request = { 'hand-over': { leaves: 'drives-away', ending: 'repaired', boxes: null, signature: null, signed_by: null } };
         const fact = { keys: { step: 'given-back', words: null } };
         const sent = { command_id: crypto.randomUUID(), device_seq: 1_000, ...common, request };
         const behind = { command_id: crypto.randomUUID(), device_seq: 1_001, ...common, fact };
         localStorage[`queue:${device}`] = JSON.stringify([sent, behind]);
         localStorage[`said:${sent.command_id}`] = JSON.stringify({ label: 'It drives away', from: location.pathname });
         sessionStorage.seq = behind.device_seq;",
        vec![],
    )?;
    offline(false)?;
    browser.wait_for_text("was not taken")?;
    browser.goto(&shop.server.url("/o/1002/pay"))?;
    browser.wait_for_text("Keys taken in")?;
    // On another page it still stands there, says why, and can be done again.
    browser.wait_for_text("“It drives away”")?;
    ensure!(browser.text()?.contains("reasons stand against it"));
    tap(&browser, "Do it again")?;
    browser.wait_for_text("was not taken")?;
    tap(&browser, "Leave it")?;
    browser.wait_until(|| Ok((!browser.text()?.contains("was not taken")).then_some(())))?;
    browser.goto(&shop.server.url("/o/1002"))?;
    ensure!(!browser.text()?.contains("was not taken"));
    Ok(())
}

#[test]
fn declined_and_signed_then_collected_apart() -> Result<()> {
    let shop = started("demo")?;
    let browser = desk(&shop)?;
    browser.goto(&shop.server.url("/o/1002/decline"))?;
    browser.by_role("checkbox", "tray")?.click()?;
    write(
        &browser,
        "What they say",
        "Ada Brandt wants no tray back on",
    )?;
    draw(&browser)?;
    tap(&browser, "They decline it")?;
    browser.wait_for_text("Declined so far")?;
    ensure!(ink(&browser)?.len() == 1);

    // Settled first: the line told, the part back, the invoice written and paid, the keys given.
    browser.goto(&shop.server.url("/o/1002"))?;
    unfold(&browser, "Write the correction")?;
    write(
        &browser,
        "Correction",
        "None: declined, collected dismantled",
    )?;
    tap(&browser, "Save")?;
    browser.wait_for_text("collected dismantled")?;
    browser.goto(&shop.server.url("/o/1002/pay"))?;
    tap(&browser, "Write the invoice")?;
    browser.wait_for_text("The invoice is written")?;
    choose(&browser, "on account")?;
    tap(&browser, "Record payment")?;
    browser.wait_for_text("Left to pay\n0.00")?;
    tap(&browser, "Keys given back")?;
    browser.wait_for_text("Keys taken in")?;

    browser.goto(&shop.server.url("/o/1002/hand-over"))?;
    unfold(&browser, "Collected dismantled")?;
    browser.wait_for_text("It must not be driven or started")?;
    write(&browser, "Boxes that go with it", "3")?;
    write(&browser, "Signed by", "Ada Brandt")?;
    draw(&browser)?;
    tap(&browser, "Collected dismantled as listed")?;
    browser.wait_for_text("3 boxes with it")?;
    follow(&browser, "Print the invoice")?;
    browser.wait_for_text("Not put back")?;
    let paper = browser.text()?;
    for wanted in [
        "Boxes that went with it: 3",
        "Signed for on the screen by Ada Brandt",
        "Work you declined",
        "declined, and collected dismantled",
        "Alternator: off",
    ] {
        ensure!(paper.contains(wanted), "no {wanted:?} in {paper}");
    }
    ensure!(ink(&browser)?.len() == 2);
    Ok(())
}

/// Both sheets that people print on, and every page of them holds.
#[test]
fn papers_print() -> Result<()> {
    let shop = started("demo")?;
    let browser = desk(&shop)?;
    for (paper, inches) in [("A4", (8.27, 11.69)), ("Letter", (8.5, 11.0))] {
        for page in ["1002/estimate", "1002/added", "1001/invoice"] {
            browser.goto(&shop.server.url(&format!("/o/{page}")))?;
            let printed = browser.cdp(
                "Page.printToPDF",
                json!({ "paperWidth": inches.0, "paperHeight": inches.1, "preferCSSPageSize": false }),
            )?;
            let data = printed["data"].as_str().context("nothing was printed")?;
            ensure!(data.starts_with("JVBER"), "{page} on {paper} is no PDF");
            let wide = browser.execute(
                "return document.documentElement.scrollWidth - innerWidth",
                vec![],
            )?;
            ensure!(wide.as_i64() <= Some(0), "{page} is wider than {paper}");
        }
    }
    Ok(())
}

#[test]
fn a_vehicle_that_comes_back_is_the_same_vehicle() -> Result<()> {
    let shop = started("demo")?;
    let browser = desk(&shop)?;
    // The order it is here on was opened by mistake.
    browser.goto(&shop.server.url("/o/1006/mend"))?;
    tap(&browser, "Keys given back")?;
    write(&browser, "Why", "opened twice")?;
    tap(&browser, "Void this order")?;
    browser.wait_for_text("Goes home today")?;
    browser.goto(&shop.server.url("/o/1001"))?;
    follow(&browser, "The vehicle")?;
    browser.wait_for_text("wire insert")?;
    ensure!(browser.text()?.contains("Drain thread worn out"));
    follow(&browser, "It is back")?;
    write(&browser, "Complaint", "It drips again")?;
    write(&browser, "Odometer", "92100 km")?;
    choose(&browser, "goodwill")?;
    tap(&browser, "Check it in")?;
    browser.wait_for_text("1008")?;
    browser.goto(&shop.server.url("/o/1008"))?;
    // What it carries from the earlier order is shown at once.
    browser.wait_for_text("wire insert")?;
    follow(&browser, "The vehicle")?;
    browser.wait_for_text("It is here: order 1008")?;
    Ok(())
}
