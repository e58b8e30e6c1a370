//! A program on the shop's network in a real browser: who it is, a PIN pressed with gloves, and the
//! page that lets a device in.

use super::{Shop, follow, still, tap, write};
use anyhow::{Result, ensure};
use chromium::{Browser, PHONE, Server};
use std::process::Command;

fn on_the_network() -> Result<Shop> {
    let folder = tempfile::tempdir()?;
    let server = Server::start(
        Command::new(env!("CARGO_BIN_EXE_buttonup"))
            .args([
                "demo",
                "--listen",
                "127.0.0.1:0",
                "--no-open",
                "--shop-network",
            ])
            .args(["--https-port", "0", "--http-port", "0", "--data"])
            .arg(folder.path()),
    )?;
    Ok(Shop { server, folder })
}

fn press_pin(browser: &Browser, pin: &str) -> Result<()> {
    for digit in pin.chars() {
        let press = format!("document.querySelector('[data-digit=\"{digit}\"]').click()");
        browser.execute(&press, vec![])?;
    }
    Ok(())
}

#[test]
fn somebody_sets_a_pin_signs_in_and_lets_a_phone_in() -> Result<()> {
    let shop = on_the_network()?;
    let browser = Browser::start()?;
    browser.set_viewport(PHONE)?;
    browser.goto(&shop.server.url("/"))?;
    browser.wait_for_text("Who is it?")?;
    follow(&browser, "Nuria")?;
    browser.wait_for_text("Set your PIN")?;
    // Two fields, filled one after the other by the pad.
    press_pin(&browser, "4827")?;
    press_pin(&browser, "4827")?;
    ensure!(
        browser.target_faults()?.is_empty(),
        "{:?}",
        browser.target_faults()?
    );
    tap(&browser, "Set PIN")?;
    browser.wait_for_text("Undo last")?;

    // The next time it is asked for, and a wrong one is told.
    browser.goto(&shop.server.url("/who"))?;
    tap(&browser, "Sign out")?;
    browser.wait_for_text("owner")?;
    follow(&browser, "Nuria")?;
    write(&browser, "PIN", "1111")?;
    tap(&browser, "Sign in")?;
    browser.wait_for_text("That is not the PIN")?;
    press_pin(&browser, "4827")?;
    tap(&browser, "Sign in")?;
    browser.wait_for_text("Undo last")?;

    browser.goto(&shop.server.url("/devices"))?;
    browser.wait_for_text("this computer (this one)")?;
    ensure!(
        browser.target_faults()?.is_empty(),
        "{:?}",
        browser.target_faults()?
    );
    tap(&browser, "Let a device in")?;
    browser.wait_for_text("It lets one device in")?;
    still(|| browser.by_role("image", "A code to scan").map(|_| ()))?;

    // A tap is stamped with the sign-in, and taken.
    browser.goto(&shop.server.url("/shop"))?;
    write(&browser, "Another stall", "Stall 9")?;
    tap(&browser, "Add the stall")?;
    browser.wait_for_text("Stall 9")?;

    // Too long since the last decision: the PIN is asked over the page. A wrong one is told; with
    // the right one the tap goes on, and left alone nothing is done.
    for (stall, leaves) in [("Stall 10", false), ("Stall 11", true)] {
        browser.execute(
            "const real = window.fetch;
             let once = true;
             window.fetch = (path, rest) => {
               if (once && String(path).endsWith('/api/commands')) {
                 once = false;
                 const pin = { kind: 'pin', where: 'the PIN', what: 'this is decided with the PIN', mend: 'type your PIN' };
                 return Promise.resolve(new Response(JSON.stringify(pin), { status: 401, headers: { 'content-type': 'application/json' } }));
               }
               return real(path, rest);
             };",
            vec![],
        )?;
        write(&browser, "Another stall", stall)?;
        tap(&browser, "Add the stall")?;
        browser.wait_for_text("This is decided with your PIN")?;
        ensure!(
            browser.target_faults()?.is_empty(),
            "{:?}",
            browser.target_faults()?
        );
        if leaves {
            tap(&browser, "Leave it")?;
            browser.wait_for_text("It was left without the PIN")?;
            browser.goto(&shop.server.url("/shop"))?;
            ensure!(!browser.text()?.contains(stall), "it was left");
            break;
        }
        let typed = |pin: &str| -> Result<()> {
            browser.execute(
                "document.querySelector('dialog .pin').value = arguments[0];",
                vec![pin.into()],
            )?;
            tap(&browser, "Go on")
        };
        typed("1111")?;
        browser.wait_for_text("That is not the PIN")?;
        typed("4827")?;
        browser.wait_for_text(stall)?;
        browser.goto(&shop.server.url("/shop"))?;
        browser.wait_for_text(stall)?;
    }
    // A wrong PIN is an answer that the browser notes.
    let errors = browser.console_errors()?;
    ensure!(
        errors
            .iter()
            .all(|error| error.contains("422") || error.contains("401")),
        "{errors:?}"
    );
    Ok(())
}
