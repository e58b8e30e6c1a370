//! A plan from picking its map to rolling the vehicle out: made, turned, taken over,
//! worked by, upset by a snag, made again from what is so.

use super::{Shop, changed, choose, events, follow, main_text, phone, started, tap, write};
use anyhow::{Context, Result, bail, ensure};
use chromium::Browser;

/// Stage after stage comes off until this is among what is off, and that page is shown.
fn out_until(shop: &Shop, browser: &Browser, off: &str) -> Result<()> {
    for _ in 0..9 {
        browser.goto(&shop.server.url("/o/1006/stage"))?;
        browser.wait_for_text("Out as shown")?;
        let before = main_text(browser)?;
        tap(browser, "Out as shown")?;
        changed(browser, &before)?;
        browser.goto(&shop.server.url("/o/1006/open"))?;
        if main_text(browser)?.contains(off) {
            return Ok(());
        }
    }
    bail!("{off} never came off: {}", browser.text()?)
}

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
    ensure!(browser.text()?.contains("225.4 min with all changes"));

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
    browser.wait_for_text("With nothing ruled out: 225.4 min, 0.3 min less")?;
    ensure!(browser.text()?.contains("wheel well"));
    follow(&browser, "The lift is taken")?;
    browser.wait_for_text("it or its place was ruled out")?;
    follow(&browser, "The lift is taken")?;
    browser.wait_for_text("With nothing ruled out")?;

    // It is taken over, and stages come off until the pulley's bolts are out.
    tap(&browser, "Work by it")?;
    browser.wait_for_text("9 stages left")?;
    out_until(&shop, &browser, "pulley bolts")?;
    for open in ["battery negative: unplugged", "lamp"] {
        ensure!(browser.text()?.contains(open), "{open}");
    }

    // A pulley bolt snaps: the stages follow what is so.
    browser.goto(&shop.server.url("/o/1006/snag?item=pulley-bolts"))?;
    browser.by_role_containing("checkbox", "2")?.click()?;
    choose(&browser, "snapped flush")?;
    tap(&browser, "Note the snag")?;
    browser.wait_for_text("Pulley bolts 2: snapped")?;
    browser.goto(&shop.server.url("/o/1006/stage"))?;
    browser.wait_for_text("1 thing is not as planned")?;
    out_until(&shop, &browser, "wheel nuts")?;

    // So that it rolls: the wheel goes back, and its nuts are tightened pass by pass.
    browser.goto(&shop.server.url("/o/1006/plan"))?;
    follow(&browser, "Get at something else")?;
    follow(&browser, "Button it up so that it rolls")?;
    browser.wait_for_text("Goes back")?;
    tap(&browser, "Work by it")?;
    browser.wait_for_text("stages left")?;
    let mut torques = [("60\u{202f}Nm", false), ("120\u{202f}Nm", false)];
    while !main_text(&browser)?.contains("Nothing is in the way of rolling") {
        let before = main_text(&browser)?;
        for (torque, seen) in &mut torques {
            *seen |= before.contains(*torque);
        }
        let next = [
            "On and tight",
            "On as shown",
            "On, pass 1 done",
            "Pass 2 done",
        ];
        let next = next.into_iter().find(|next| before.contains(next));
        tap(&browser, next.context("nothing goes home")?)?;
        changed(&browser, &before)?;
    }
    ensure!(torques.iter().all(|(_, seen)| *seen), "{torques:?}");
    browser.goto(&shop.server.url("/o/1006/open"))?;
    let open = browser.text()?;
    ensure!(!open.contains("wheel nuts M12x1.5"));
    ensure!(!open.contains("pump bolts"), "{open}");
    Ok(())
}

/// Where each stage's clock went, by the stages in the sequence they were opened.
fn clocks(shop: &Shop) -> Result<Vec<Vec<String>>> {
    let mut out: Vec<(String, Vec<String>)> = Vec::new();
    for timed in events(shop, "timed")? {
        let text = |field: &str| timed[field].as_str().unwrap_or("").to_owned();
        let stage = text("stage");
        match out.iter_mut().find(|(known, _)| *known == stage) {
            Some((_, clock)) => clock.push(text("clock")),
            None => out.push((stage, vec![text("clock")])),
        }
    }
    Ok(out.into_iter().map(|(_, clock)| clock).collect())
}

/// Until the clocks stand so: a page tells them after it is shown.
fn wait_for_clocks(shop: &Shop, before: usize, expected: &[&[&str]]) -> Result<()> {
    let until = std::time::Instant::now() + std::time::Duration::from_secs(90);
    loop {
        let found = clocks(shop)?.split_off(before);
        if found == expected {
            return Ok(());
        }
        ensure!(std::time::Instant::now() < until, "{found:?}");
        std::thread::sleep(std::time::Duration::from_millis(50));
    }
}

#[test]
fn a_clock_runs_on_a_stage_without_a_tap() -> Result<()> {
    let shop = started("demo")?;
    let browser = phone(&shop, "/who/pavel")?;
    let before = clocks(&shop)?.len();
    let wait_for_clocks = |expected: &[&[&str]]| wait_for_clocks(&shop, before, expected);
    browser.goto(&shop.server.url("/o/1006/plan"))?;
    follow(&browser, "Korvane Drayman 2.3")?;
    write(&browser, "Find it by a word", "gaskets")?;
    tap(&browser, "Find")?;
    follow(&browser, "housing gasket")?;
    tap(&browser, "Work by it")?;
    browser.wait_for_text("stages left")?;
    wait_for_clocks(&[&["opened"]])?;

    // Shown anew it goes on; another page pauses it; back, it goes on; confirmed, it has run.
    browser.goto(&shop.server.url("/o/1006/stage"))?;
    browser.goto(&shop.server.url("/o/1006/open"))?;
    wait_for_clocks(&[&["opened", "paused"]])?;
    browser.goto(&shop.server.url("/o/1006/stage"))?;
    wait_for_clocks(&[&["opened", "paused", "resumed"]])?;
    tap(&browser, "Out as shown")?;
    browser.wait_for_text("alternator plug")?;
    wait_for_clocks(&[&["opened", "paused", "resumed"], &["opened"]])?;
    let opened = events(&shop, "timed")?.pop().unwrap_or_default();
    let stage = events(&shop, "moved")?.pop().unwrap_or_default();
    ensure!(stage["stage"].is_string() && stage["stage"] != opened["stage"]);
    let timed = events(&shop, "timed")?;
    let timed = timed.iter().find(|timed| timed["stage"] == stage["stage"]);
    ensure!(
        timed.is_some_and(|timed| timed["book_minutes"].is_string()),
        "the stage that was confirmed is the one that was timed"
    );
    Ok(())
}
