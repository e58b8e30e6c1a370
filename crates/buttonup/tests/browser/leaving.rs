//! Declined and put back: the third way an order ends, seen by a person at the desk.

use super::{choose, follow, phone, started, tap, unfold, write};
use anyhow::{Result, ensure};
use chromium::DESK;

#[test]
fn declined_and_put_back() -> Result<()> {
    let shop = started("demo")?;
    let browser = phone(&shop, "/who/greta")?;
    browser.set_viewport(DESK)?;
    // The comeback of the demonstration: nothing of it is off yet, so it can be put back.
    for (fold, field, words) in [
        ("Write the cause", "Cause", "Sump cracked beside the insert"),
        (
            "Write the correction",
            "Correction",
            "None: the customer declines a new sump",
        ),
    ] {
        browser.goto(&shop.server.url("/o/1006"))?;
        unfold(&browser, fold)?;
        write(&browser, field, words)?;
        tap(&browser, "Save")?;
        browser.wait_for_text(words)?;
    }
    browser.goto(&shop.server.url("/o/1006/price"))?;
    write(&browser, "Hours", "0.25")?;
    tap(&browser, "Set the price")?;
    browser.wait_for_text("30.00 before tax")?;
    // To find the fault; then no to the repair.
    browser.goto(&shop.server.url("/o/1006/ask"))?;
    choose(&browser, "find the fault")?;
    tap(&browser, "Approved")?;
    browser.wait_for_text("Yes, up to 30.00")?;
    browser.goto(&shop.server.url("/o/1006/ask"))?;
    choose(&browser, "repair")?;
    tap(&browser, "No")?;
    browser.wait_for_text("No · repair")?;
    browser.goto(&shop.server.url("/o/1006/pay"))?;
    tap(&browser, "Write the invoice")?;
    browser.wait_for_text("The invoice is written")?;
    tap(&browser, "Record payment")?;
    browser.wait_for_text("Left to pay\n0.00")?;
    if browser.text()?.contains("Keys given back") {
        tap(&browser, "Keys given back")?;
        browser.wait_for_text("Keys taken in")?;
    }
    browser.goto(&shop.server.url("/o/1006/hand-over"))?;
    ensure!(
        browser.text()?.contains("Yes: nothing stands against it"),
        "{}",
        browser.text()?
    );
    choose(&browser, "declined, put back")?;
    write(&browser, "Odometer on the way out", "184260 km")?;
    tap(&browser, "It drives away")?;
    browser.wait_for_text("Declined, and put back together")?;
    follow(&browser, "Print the invoice")?;
    browser.wait_for_text("declined the repair")?;
    ensure!(browser.text()?.contains("declined, and put back together"));
    Ok(())
}
