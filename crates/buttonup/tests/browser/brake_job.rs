//! A brake job as a technician does it with three vehicles: by a map written from nothing, by typed
//! lines, and by the map that the typed job became. The same is owed, and the same gates are shut.

use super::{Shop, set_up, tap, write};
use anyhow::{Result, ensure};
use chromium::Browser;
use serde_json::json;

const MAP: &str = include_str!("../../../web/tests/door/brake_job.toml");

const LINES: &str = "5 front left wheel nuts M12x1.5\nfront left wheel\n\
    2 front left caliper bolts M10\nfront left caliper\nfront left brake pads";

/// Writes the map of the brake job as text and keeps it.
pub fn write_map(shop: &Shop, browser: &Browser) -> Result<()> {
    browser.goto(&shop.server.url("/maps/new"))?;
    write(browser, "Which vehicle", "Tessel Van")?;
    tap(browser, "Begin")?;
    browser.wait_for_text("Keep it")?;
    let text = "const text = document.querySelector('[data-text]');
        text.value = arguments[0];
        text.dispatchEvent(new Event('input', { bubbles: true }));
        text.dispatchEvent(new Event('change', { bubbles: true }));";
    browser.execute(text, vec![json!(MAP)])?;
    tap(browser, "Keep it")?;
    browser.wait_for_text("version 1, kept by Mila")
}

/// Checks a vehicle in and comes to its order.
pub fn check_in(shop: &Shop, browser: &Browser, vehicle: &str, number: u64) -> Result<()> {
    browser.goto(&shop.server.url("/new"))?;
    write(browser, "Complaint", "Squeals when braking")?;
    write(browser, "Customer", "Ada Vane")?;
    write(browser, "Vehicle maker", vehicle)?;
    write(browser, "Odometer", "92000 km")?;
    tap(browser, "Check it in")?;
    browser.wait_for_text("Walk round it first")?;
    browser.goto(&shop.server.url(&format!("/o/{number}")))?;
    browser.wait_for_text(vehicle)
}

/// Takes everything off by the stages of a plan.
fn by_plan(shop: &Shop, browser: &Browser, number: u64) -> Result<()> {
    browser.goto(
        &shop
            .server
            .url(&format!("/o/{number}/plan?for=front+left+brake+pads")),
    )?;
    tap(browser, "Work by it")?;
    let end = "Now the way back";
    for _ in 0..8 {
        let next = browser.wait_until(|| {
            let text = browser.text()?;
            let there = text.contains("Out as shown") || text.contains(end);
            Ok(there.then(|| !text.contains(end)))
        })?;
        match next {
            Some(true) => {
                let before = main_text(browser)?;
                tap(browser, "Out as shown")?;
                browser.wait_until(|| Ok((main_text(browser)? != before).then_some(())))?;
            }
            Some(false) => return Ok(()),
            None => break,
        }
    }
    ensure!(false, "the stages never end: {}", browser.text()?);
    Ok(())
}

/// What a page says below its head, without the order it says it of.
fn says(shop: &Shop, browser: &Browser, number: u64, page: &str) -> Result<String> {
    browser.goto(&shop.server.url(&format!("/o/{number}/{page}")))?;
    main_text(browser)
}

pub fn main_text(browser: &Browser) -> Result<String> {
    let text = "return document.querySelector('main').innerText.trim()";
    let text = browser.execute(text, vec![])?;
    Ok(text.as_str().unwrap_or_default().to_owned())
}

/// What is owed and which gates are shut, as the pages say it. Things of one sort stand in the
/// sequence in which they were named, so only the lines are compared.
pub fn stands(shop: &Shop, browser: &Browser, number: u64) -> Result<[String; 3]> {
    let lines = |page| -> Result<String> {
        let text = says(shop, browser, number, page)?;
        let mut lines: Vec<&str> = text.lines().collect();
        lines.sort_unstable();
        Ok(lines.join("\n"))
    };
    Ok([lines("due")?, lines("may")?, lines("may/road")?])
}

#[test]
fn a_brake_job_owes_the_same_by_own_map_by_typed_lines_and_by_the_map_learned() -> Result<()> {
    let (shop, browser) = set_up()?;
    check_in(&shop, &browser, "Tessel Van", 1001)?;
    check_in(&shop, &browser, "Quarrel Estate", 1002)?;
    check_in(&shop, &browser, "Quarrel Estate", 1003)?;

    // A map written from nothing, as text.
    write_map(&shop, &browser)?;
    by_plan(&shop, &browser, 1001)?;
    let own = stands(&shop, &browser, 1001)?;

    // Typed lines, read and confirmed with one tap.
    browser.goto(&shop.server.url("/o/1002/off"))?;
    write(&browser, "One thing a line", LINES)?;
    tap(&browser, "Read it")?;
    browser.wait_for_text("front left brake pads")?;
    tap(&browser, "Out as shown")?;
    browser.wait_until(|| Ok((!main_text(&browser)?.contains("Out as shown")).then_some(())))?;
    let typed = stands(&shop, &browser, 1002)?;
    ensure!(own == typed, "own map:\n{own:#?}\ntyped:\n{typed:#?}");

    // The map that the typed job became.
    browser.goto(&shop.server.url("/maps/from-order/edit?order=1002"))?;
    tap(&browser, "Keep it")?;
    browser.wait_for_text("version 1, kept by Mila")?;
    by_plan(&shop, &browser, 1003)?;
    let learned = stands(&shop, &browser, 1003)?;
    ensure!(own == learned, "own map:\n{own:#?}\nlearned:\n{learned:#?}");

    // What a careful technician would sign.
    ensure!(own[0].to_lowercase().contains("pedal"), "{}", own[0]);
    ensure!(own[2].contains("no"), "{}", own[2]);
    ensure!(browser.console_errors()?.is_empty());
    Ok(())
}
