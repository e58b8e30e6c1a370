//! A few words said into a phone behind the lift: recorded, kept while the network does not reach,
//! sent, heard at the desk; photos of the job lie on the phone as well. A browser without a
//! microphone says so.

use super::reach::{again, all_sent, port_of, taken_along};
use super::{Shop, choose, events, phone, started, tap, unfold};
use anyhow::{Context, Result, ensure};
use chromium::{Browser, DESK, PHONE};
use serde_json::json;

/// Waits for a recording that this many seconds of speaking made.
fn say_something(browser: &Browser, seconds: u32) -> Result<()> {
    tap(browser, "Record")?;
    browser.wait_for_text("Speak now")?;
    browser.wait_for_text(&format!("Stop · {seconds} of 30 s"))?;
    tap(browser, "Stop")?;
    browser.wait_for_text("It goes with what you press below")
}

/// How long the first recording on the page plays, as the browser that shows it finds out.
fn heard(browser: &Browser) -> Result<f64> {
    let script = "const done = arguments[0]; \
        const heard = document.querySelector('.voice audio[src^=\"/file/\"]'); \
        if (!heard) return done(-1); \
        heard.addEventListener('ended', () => done(heard.currentTime), { once: true }); \
        heard.addEventListener('error', () => done(-2), { once: true }); \
        heard.muted = true; heard.playbackRate = 4; heard.play().catch((error) => done(String(error)));";
    let seconds = browser.execute_until_called_back(script, vec![])?;
    seconds
        .as_f64()
        .with_context(|| format!("it does not play: {seconds}"))
}

/// Puts a photo of a thing on the page of that thing.
fn photo_of(shop: &Shop, browser: &Browser, path: &str) -> Result<()> {
    browser.goto(&shop.server.url(path))?;
    unfold(browser, "Photo of it")?;
    const CHOOSE: &str = "const done = arguments[0]; \
        const sheet = document.createElement('canvas'); sheet.width = 800; sheet.height = 600; \
        const ink = sheet.getContext('2d'); ink.fillStyle = '#377'; ink.fillRect(100, 100, 500, 300); \
        sheet.toBlob((blob) => { const files = new DataTransfer(); \
          files.items.add(new File([blob], 'photo.png', { type: 'image/png' })); \
          document.querySelector('details[open] input[name=photo]').files = files.files; done(true); });";
    browser.execute_until_called_back(CHOOSE, vec![])?;
    tap(browser, "Keep the photo")?;
    browser.wait_for_text("all sent")?;
    Ok(())
}

#[test]
fn what_is_said_out_of_reach_is_kept_sent_and_heard_at_the_desk() -> Result<()> {
    let shop = started("demo")?;
    let browser = Browser::with_microphone()?;
    browser.set_viewport(PHONE)?;
    browser.goto(&shop.server.url("/who/pavel"))?;
    photo_of(&shop, &browser, "/o/1002/item/housing-bolts")?;
    browser.goto(&shop.server.url("/o/1002/stage"))?;
    taken_along(&browser, 1002)?;
    // Photos follow the pages.
    const PHOTOS: &str = "return caches.open('reach').then(reach => reach.keys()).then(keys => \
        keys.filter(key => new URL(key.url).pathname.startsWith('/file/')).length)";
    browser
        .wait_until(|| Ok((browser.execute(PHOTOS, vec![])? == json!(1)).then_some(())))?
        .context("no photo was taken along")?;

    let port = port_of(&shop)?;
    let Shop { server, folder } = shop;
    drop(server);
    let here = format!("http://127.0.0.1:{port}");
    browser.goto_any(&format!("{here}/o/1002/stage"))?;
    // The photo lies here; one that does not says so where it would be.
    const SHOWN: &str = "return caches.open('reach').then(reach => reach.keys()).then(keys => { \
        const one = new Image(); one.src = keys.map(key => new URL(key.url).pathname).find(path => path.startsWith('/file/')); \
        return one.decode().then(() => one.naturalWidth); })";
    let shown = browser.execute(SHOWN, vec![])?;
    ensure!(shown == json!(800), "{shown}");
    browser.execute(
        "const box = document.createElement('div'); box.className = 'thumbnails'; \
         const one = new Image(); one.alt = 'Photo: hose'; one.src = '/file/' + '0'.repeat(64); \
         box.append(one); document.querySelector('main').append(box);",
        vec![],
    )?;
    browser.wait_for_text("Photo: hose: not on this device")?;

    browser.goto_any(&format!("{here}/o/1002/snag"))?;
    browser.wait_for_text("What you see")?;
    // Nothing typed, nothing said: it is asked for.
    tap(&browser, "Put it down")?;
    // (The clock of the stage that was left waits as well.)
    const SNAGS: &str = "return Object.keys(localStorage).filter(key => key.startsWith('queue:')) \
        .flatMap(key => JSON.parse(localStorage[key])).filter(one => one.fact?.['snag-found']).length";
    ensure!(browser.execute(SNAGS, vec![])? == json!(0));
    say_something(&browser, 2)?;
    ensure!(
        browser.target_faults()?.is_empty(),
        "{:?}",
        browser.target_faults()?
    );
    tap(&browser, "Put it down")?;
    browser
        .wait_until(|| Ok((browser.execute(SNAGS, vec![])? == json!(1)).then_some(())))?
        .context("the snag is not kept")?;
    browser.wait_for_text("to send")?;
    let letters = browser.execute(
        "return Object.keys(localStorage).filter(key => key.startsWith('queue:')).map(key => localStorage[key].length).reduce((all, one) => all + one, 0)",
        vec![],
    )?;
    ensure!(
        letters.as_u64().unwrap_or(u64::MAX) < 4_000,
        "the sound lies in the queue: {letters}"
    );

    let server = again(port, folder.path())?;
    let shop = Shop { server, folder };
    all_sent(&browser)?;
    let found = events(&shop, "snag-found")?;
    let voices: Vec<_> = found
        .iter()
        .filter_map(|snag| snag["voice"]["media"].as_str())
        .collect();
    ensure!(voices == ["audio/webm"], "{found:?}");

    // The desk hears it where the snag stands, and in the story.
    let desk = Browser::start()?;
    desk.set_viewport(DESK)?;
    desk.goto(&shop.server.url("/who/greta"))?;
    let snag = found
        .iter()
        .find(|snag| !snag["voice"].is_null())
        .context("a snag")?;
    let snag = snag["snag"].as_str().context("a name")?;
    desk.goto(&shop.server.url(&format!("/o/1002/snag/{snag}")))?;
    let seconds = heard(&desk)?;
    ensure!((1.0..10.0).contains(&seconds), "{seconds} s were heard");
    desk.goto(&shop.server.url("/o/1002/story"))?;
    ensure!(heard(&desk)? > 1.0);
    Ok(())
}

#[test]
fn a_pause_says_why_until_somebody_goes_on() -> Result<()> {
    let shop = started("demo")?;
    let browser = Browser::with_microphone()?;
    browser.set_viewport(PHONE)?;
    browser.goto(&shop.server.url("/who/pavel"))?;
    browser.goto(&shop.server.url("/o/1002/stage"))?;
    browser.wait_for_text("Undo last")?;
    unfold(&browser, "Called away?")?;
    browser
        .by_role_containing("textbox", "What the next one should know")?
        .write("waits for the drill")?;
    // Whoever presses while they speak has said it.
    tap(&browser, "Record")?;
    browser.wait_for_text("Stop · 1 of 30 s")?;
    tap(&browser, "Stop here")?;
    browser.wait_for_text("“waits for the drill”")?;
    ensure!(heard(&browser)? > 0.5);
    let clocks = || -> Result<Vec<String>> {
        let timed = events(&shop, "timed")?;
        let clock = |one: &serde_json::Value| one["clock"].as_str().unwrap_or("").to_owned();
        Ok(timed.iter().map(clock).rev().take(1).collect())
    };
    ensure!(clocks()? == ["paused"], "{:?}", clocks()?);
    // Looking at the stage again is not going on; a press in it is.
    browser.goto(&shop.server.url("/o/1002/stage"))?;
    browser.wait_for_text("all sent")?;
    ensure!(clocks()? == ["paused"], "{:?}", clocks()?);
    browser.execute(
        "document.querySelector('form[data-name] input[type=checkbox]').click()",
        vec![],
    )?;
    browser
        .wait_until(|| Ok((clocks()? == ["resumed"]).then_some(())))?
        .context("the clock still stands")?;
    browser.goto(&shop.server.url("/o/1002"))?;
    browser.wait_for_text("still off")?;
    ensure!(!browser.text()?.contains("waits for the drill"));
    Ok(())
}

#[test]
fn a_browser_without_a_microphone_says_so_and_the_snag_is_typed() -> Result<()> {
    let shop = started("demo")?;
    let browser = phone(&shop, "/who/pavel")?;
    browser.goto(&shop.server.url("/o/1002/snag"))?;
    tap(&browser, "Record")?;
    let said = browser.wait_until(|| {
        let text = browser.text()?;
        Ok(
            (text.contains("microphone is not allowed") || text.contains("No microphone is free"))
                .then_some(()),
        )
    })?;
    said.with_context(|| {
        format!(
            "nothing is said of it: {}",
            browser.text().unwrap_or_default()
        )
    })?;
    // As at an address that a browser does not trust.
    browser.execute(
        "Object.defineProperty(navigator, 'mediaDevices', { value: undefined })",
        vec![],
    )?;
    tap(&browser, "Record")?;
    browser.wait_for_text("gives no microphone at this address")?;
    choose(&browser, "leaking")?;
    tap(&browser, "Note the snag")?;
    browser.wait_for_text("all sent")?;
    let found = events(&shop, "snag-found")?;
    ensure!(
        found
            .iter()
            .any(|snag| snag["what"] == "leaking" && snag["voice"].is_null())
    );
    Ok(())
}
