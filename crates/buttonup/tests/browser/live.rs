//! News of others, on a page that somebody is at: nothing moves under a finger, and what was
//! typed, ticked or unfolded stays.

use crate::{phone, started, unfold};
use anyhow::{Result, ensure};
use chromium::Browser;
use serde_json::{Value, json};

/// Another device says something of the order; it is answered before this goes on.
fn another_says(browser: &Browser, fact: &Value) -> Result<()> {
    let script = "const [fact, done] = arguments;
        const say = async () => {
            const number = location.pathname.split('/')[2];
            const order = await (await fetch(`/api/orders/${number}`)).json();
            const command = { command_id: crypto.randomUUID(), device: 'another', who: 'greta',
                device_seq: Date.now(), happened_at: new Date().toISOString(),
                stream: `order:${order.order}`, fact };
            const answer = await fetch('/api/commands', { method: 'POST',
                headers: { 'content-type': 'application/json' }, body: JSON.stringify(command) });
            return answer.status;
        };
        say().then(done, (error) => done(String(error)));";
    let status = browser.execute_until_called_back(script, vec![fact.clone()])?;
    ensure!(status == 200, "{status}");
    Ok(())
}

/// A complaint: one more line on the order's page, above everything that can be pressed there.
fn complaint(nth: u32) -> Value {
    json!({ "line-opened": { "line": format!("heard-{nth}"), "payer": "customer",
        "complaint": { "text": format!("rattles {nth}"), "salt": format!("{nth:064}") } } })
}

/// The lines of the order at the top of what is seen: a new one moves the rows below them.
const LINES_AT_THE_TOP: &str = "[...document.querySelectorAll('h2')]
    .find((one) => one.textContent.startsWith('Complaint')).scrollIntoView({ block: 'start' })";

fn until(browser: &Browser, what: &str, script: &str) -> Result<()> {
    let holds = || Ok((browser.execute(script, vec![])? == true).then_some(()));
    ensure!(browser.wait_until(holds)?.is_some(), "{what}: {script}");
    Ok(())
}

#[test]
fn news_keep_what_is_on_the_page_and_what_was_unfolded() -> Result<()> {
    let shop = started("demo")?;
    let browser = phone(&shop, "/who/pavel")?;
    browser.goto(&shop.server.url("/o/1002"))?;
    unfold(&browser, "Where it stands")?;
    // Unfolding was a tap: its moment passes.
    browser.execute(
        "window.same = [...document.querySelectorAll('main a[href], main button, main summary, main details')]",
        vec![],
    )?;
    another_says(&browser, &complaint(1))?;
    browser.wait_for_text("rattles 1")?;
    ensure!(browser.execute("return window.same.every((one) => one.isConnected)", vec![])? == true);
    ensure!(browser.execute("return document.getElementById('place').open", vec![])? == true);
    ensure!(browser.console_errors()?.is_empty());
    Ok(())
}

#[test]
fn nothing_moves_while_hands_are_on_the_page() -> Result<()> {
    let shop = started("demo")?;
    let browser = phone(&shop, "/who/pavel")?;
    browser.goto(&shop.server.url("/o/1002"))?;
    let places = "return JSON.stringify([...document.querySelectorAll('main a[href], main button, main summary')]
        .map((one) => [one.textContent, one.getBoundingClientRect().top]))";
    // A finger that rests on the page.
    browser.execute(LINES_AT_THE_TOP, vec![])?;
    browser.execute(
        "window.dispatchEvent(new PointerEvent('pointerdown', { pointerId: 7 }))",
        vec![],
    )?;
    let before = browser.execute(places, vec![])?;
    another_says(&browser, &complaint(2))?;
    browser.wait_for_text("It shows when you pause")?;
    ensure!(browser.execute(places, vec![])? == before, "it moved");
    ensure!(!browser.text()?.contains("rattles 2"));
    browser.execute(
        "window.dispatchEvent(new PointerEvent('pointerup', { pointerId: 7 }))",
        vec![],
    )?;
    browser.wait_for_text("rattles 2")?;
    until(
        &browser,
        "and says so no more",
        "return !document.body.textContent.includes('when you pause')",
    )
}

#[test]
fn what_is_typed_and_ticked_survives_news() -> Result<()> {
    let shop = started("demo")?;
    let browser = phone(&shop, "/who/pavel")?;
    browser.goto(&shop.server.url("/o/1002/snag?item=housing-bolts"))?;
    browser.by_role_containing("checkbox", "6")?.click()?;
    browser
        .by_role_containing("textbox", "In a few words")?
        .write("2 mm below the face")?;
    browser.execute("window.box = document.querySelector('input[name=at-6]'); window.field = document.activeElement", vec![])?;
    another_says(
        &browser,
        &json!({ "odometer": { "reading": "148300 km", "at": "in" } }),
    )?;
    browser.wait_for_text("News came in")?;
    let kept = "return window.box.isConnected && window.box.checked && window.field === document.activeElement
        && window.field.value === '2 mm below the face'";
    ensure!(browser.execute(kept, vec![])? == true);
    Ok(())
}

#[test]
fn a_press_that_was_on_its_way_does_not_press_what_came_there() -> Result<()> {
    let shop = started("demo")?;
    let browser = phone(&shop, "/who/pavel")?;
    browser.goto(&shop.server.url("/o/1002"))?;
    browser.execute(LINES_AT_THE_TOP, vec![])?;
    // As soon as the page changes, what came where the walk-round's row stood is pressed.
    browser.execute(
        "window.pressed = null;
         new MutationObserver((_, watching) => {
             watching.disconnect();
             setTimeout(() => {
                 const there = document.querySelector('#cause-heard-3 summary');
                 window.pressed = there.textContent;
                 there.dispatchEvent(new PointerEvent('pointerdown', { bubbles: true, pointerId: 9 }));
                 there.dispatchEvent(new PointerEvent('pointerup', { bubbles: true, pointerId: 9 }));
                 there.click();
             }, 20);
         }).observe(document.querySelector('main'), { childList: true, subtree: true });",
        vec![],
    )?;
    another_says(&browser, &complaint(3))?;
    browser.wait_for_text("press again")?;
    let folded = "return window.pressed !== null && !document.getElementById('cause-heard-3').open";
    ensure!(browser.execute(folded, vec![])? == true, "it was pressed");
    Ok(())
}
