//! A plan from picking its map to rolling the vehicle out: made, turned, taken over,
//! worked by, upset by a snag, made again from what is so.

use super::{follow, phone, started, tap, write};
use anyhow::{Result, ensure};

#[test]
fn a_plan_is_made_taken_over_worked_by_and_made_again() -> Result<()> {
    let shop = started("demo")?;
    let browser = phone(&shop, "/who/pavel")?;

    // A map is picked, and what to get at.
    browser.goto(&shop.server.url("/o/1006/plan"))?;
    browser.wait_for_text("By which map?")?;
    follow(&browser, "Korvane Drayman 2.3")?;
    browser.wait_for_text("What do you want to get at?")?;
    write(&browser, "Find it by a word", "gaskets")?;
    tap(&browser, "Find")?;
    follow(&browser, "housing gasket")?;
    browser.wait_for_text("Proven: nothing is cheaper")?;
    ensure!(browser.text()?.contains("222.6 min with all changes"));

    // One thing more, and back.
    follow(&browser, "Get at one thing more")?;
    follow(&browser, "thermostat screws")?;
    follow(&browser, "Show the plan")?;
    browser.wait_for_text("Get at housing gasket, thermostat screws")?;
    follow(&browser, "Get at one thing more")?;
    follow(&browser, "thermostat screws")?;
    follow(&browser, "Show the plan")?;

    // The other plan stands beside it.
    follow(&browser, "Not shroud off")?;
    browser.wait_for_text("With nothing ruled out: 222.6 min, 0.5 min less")?;
    ensure!(browser.text()?.contains("wheel well"));
    follow(&browser, "The lift is taken")?;
    browser.wait_for_text("it or its place was ruled out")?;
    follow(&browser, "The lift is taken")?;
    browser.wait_for_text("With nothing ruled out")?;

    // It is taken over, and two stages come off.
    tap(&browser, "Work by it")?;
    browser.wait_for_text("9 stages left")?;
    tap(&browser, "Out as shown")?;
    browser.wait_for_text("alternator plug")?;
    tap(&browser, "Out as shown")?;
    browser.wait_for_text("belt off")?;
    browser.goto(&shop.server.url("/o/1006/open"))?;
    for open in ["pulley bolts", "battery negative: unplugged", "lamp"] {
        ensure!(browser.text()?.contains(open), "{open}");
    }

    // A pulley bolt snaps: the stages follow what is so.
    browser.goto(&shop.server.url("/o/1006/snag?item=pulley-bolts"))?;
    browser.by_role_containing("checkbox", "2")?.click()?;
    tap(&browser, "Note the snag")?;
    browser.wait_for_text("Pulley bolts 2: snapped")?;
    browser.goto(&shop.server.url("/o/1006/stage"))?;
    browser.wait_for_text("1 thing is not as planned")?;
    tap(&browser, "Out as shown")?;
    browser.wait_for_text("wheel nuts")?;
    tap(&browser, "Out as shown")?;
    browser.wait_for_text("coolant")?;

    // So that it rolls: the wheel goes back, and its nuts are tightened pass by pass.
    browser.goto(&shop.server.url("/o/1006/plan"))?;
    follow(&browser, "Get at something else")?;
    follow(&browser, "Button it up so that it rolls")?;
    browser.wait_for_text("Goes back")?;
    tap(&browser, "Work by it")?;
    browser.wait_for_text("On as shown")?;
    tap(&browser, "On as shown")?;
    browser.wait_for_text("60\u{202f}Nm")?;
    tap(&browser, "Pass 1 done")?;
    browser.wait_for_text("120\u{202f}Nm")?;
    tap(&browser, "Pass 2 done")?;
    browser.wait_for_text("belt")?;
    browser.goto(&shop.server.url("/o/1006/open"))?;
    ensure!(!browser.text()?.contains("wheel nuts M12x1.5"));
    Ok(())
}
