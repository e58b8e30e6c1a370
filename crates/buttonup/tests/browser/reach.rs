//! A job behind the lift, where the network does not reach: everything at the vehicle goes on,
//! and is sent once it reaches again. The account is that of the same job done at the desk's side.

use super::brake_job::{check_in, main_text, stands};
use super::{Shop, phone, started, tap};
use anyhow::{Context, Result, ensure};
use chromium::{Browser, Server};
use serde_json::json;
use std::path::Path;
use std::process::Command;

/// Presses what the page offers first, stage after stage, until it offers nothing more; says
/// how many presses that were.
fn works_on(browser: &Browser, at_most: usize) -> Result<usize> {
    const PRESS: &str = "const press = document.querySelector('main button.press.confirm[data-commands]'); \
         press?.click(); return Boolean(press);";
    for nth in 0..at_most {
        let before = main_text(browser)?;
        if browser.execute(PRESS, vec![])? != json!(true) {
            return Ok(nth);
        }
        let changed = browser.wait_until(|| Ok((main_text(browser)? != before).then_some(())))?;
        changed.with_context(|| format!("nothing came after:\n{before}"))?;
    }
    Ok(at_most)
}

/// Waits until the stages of an order lie on the device as the order stands now.
pub fn taken_along(browser: &Browser, number: u64) -> Result<usize> {
    let script = format!(
        "return fetch('/api/reach').then(answer => answer.json()).then(orders => {{ \
            const reach = JSON.parse(localStorage['reach:{number}'] ?? 'null'); \
            const now = orders.find(one => one.number === {number}); \
            const whole = reach?.whole && now && reach.seq === now.seq; \
            return navigator.serviceWorker.controller && whole ? reach.stages.length : null; }})"
    );
    let along = browser.wait_until(|| Ok(browser.execute(&script, vec![])?.as_u64()))?;
    Ok(usize::try_from(along.context("nothing was taken along")?)?)
}

fn waiting(browser: &Browser) -> Result<u64> {
    let script = "return Object.keys(localStorage).filter(key => key.startsWith('queue:')) \
         .reduce((sum, key) => sum + JSON.parse(localStorage[key]).length, 0)";
    Ok(browser.execute(script, vec![])?.as_u64().unwrap_or(0))
}

pub fn all_sent(browser: &Browser) -> Result<()> {
    let sent = browser.wait_until(|| Ok((waiting(browser)? == 0).then_some(())))?;
    sent.with_context(|| "it is still not sent".to_owned())
}

/// Starts the program again where it was.
pub fn again(port: u16, folder: &Path) -> Result<Server> {
    Server::start(
        Command::new(env!("CARGO_BIN_EXE_buttonup"))
            .args([
                "serve",
                "--no-open",
                "--listen",
                &format!("127.0.0.1:{port}"),
                "--data",
            ])
            .arg(folder),
    )
}

pub fn port_of(shop: &Shop) -> Result<u16> {
    let url = shop.server.url("");
    let port = url.trim_end_matches('/').rsplit(':').next();
    Ok(port.context("an address has a port")?.parse()?)
}

/// Two vehicles of the demonstration's kind come in with the same complaint; their orders, each
/// with the same plan.
fn two_vehicles() -> Result<(Shop, Browser, [u64; 2])> {
    let shop = started("demo")?;
    let browser = phone(&shop, "/who/pavel")?;
    let newest = "return fetch('/api/orders').then(answer => answer.json()).then(orders => orders[0].number)";
    let mut numbers = [0, 0];
    for number in &mut numbers {
        let last = browser.execute(newest, vec![])?.as_u64().unwrap_or(0);
        *number = last + 1;
        check_in(&shop, &browser, "Korvane Drayman 2.3", *number)?;
        let plan = format!("/o/{number}/plan?map=korvane-drayman-engine-front&for=housing");
        browser.goto(&shop.server.url(&plan))?;
        tap(&browser, "Work by it")?;
        browser.wait_for_text("Out as shown")?;
    }
    Ok((shop, browser, numbers))
}

#[test]
fn a_job_out_of_reach_comes_to_the_same_account() -> Result<()> {
    let (shop, browser, [within, without]) = two_vehicles()?;
    browser.goto(&shop.server.url(&format!("/o/{within}/stage")))?;
    let presses = works_on(&browser, 90)?;
    ensure!(
        presses > 20,
        "only {presses} stages: {}",
        main_text(&browser)?
    );
    let reached = stands(&shop, &browser, within)?;

    let stage = format!("/o/{without}/stage");
    browser.goto(&shop.server.url(&stage))?;
    let along = taken_along(&browser, without)?;
    ensure!(along == presses + 1, "{along} stages for {presses} presses");
    let port = port_of(&shop)?;
    let Shop { server, folder } = shop;
    drop(server);

    let here = format!("http://127.0.0.1:{port}");
    ensure!(works_on(&browser, 3)? == 3);
    let at = main_text(&browser)?;
    // The browser is closed over it, and opened again on the same stage.
    browser.goto("about:blank")?;
    browser.goto_any(&format!("{here}{stage}"))?;
    browser
        .wait_until(|| Ok((main_text(&browser)? == at).then_some(())))?
        .context("another stage")?;
    browser.wait_for_text("Out of reach")?;
    ensure!(browser.text()?.contains("to send"), "{}", browser.text()?);
    // A slip is taken back, and done again.
    tap(&browser, "Undo last")?;
    browser
        .wait_until(|| Ok((main_text(&browser)? != at).then_some(())))?
        .context("nothing was taken back")?;
    ensure!(works_on(&browser, 1)? == 1);
    ensure!(main_text(&browser)? == at, "{}", main_text(&browser)?);
    let rest = works_on(&browser, 90)?;
    ensure!(
        3 + rest == presses,
        "{rest} more presses, {presses} in all within reach: {}",
        main_text(&browser)?
    );
    // Another page says that it is not here, and what is.
    browser.goto_any(&format!("{here}/o/{without}/price"))?;
    browser.wait_for_text("Taken along")?;

    let server = again(port, folder.path())?;
    let shop = Shop { server, folder };
    browser.goto(&shop.server.url(&format!("/o/{without}/open")))?;
    all_sent(&browser)?;
    let sent = stands(&shop, &browser, without)?;
    ensure!(
        reached == sent,
        "within reach:\n{reached:#?}\nout of reach:\n{sent:#?}"
    );
    let refused = browser.execute("return localStorage.refused ?? null", vec![])?;
    ensure!(refused.is_null(), "{refused}");
    Ok(())
}
