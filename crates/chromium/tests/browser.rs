//! The browser driver itself, against small pages with a strict content security policy.
//! These run with the feature `browser-tests`, because they need Chromium.

use anyhow::Result;
use chromium::{Browser, DESK, PHONE};
use std::io::{BufRead, BufReader, Write};
use std::net::{TcpListener, TcpStream};
use std::thread;
use std::time::Duration;

/// Serves the test pages until the test's process ends, and gives their address.
fn pages() -> String {
    let listener = TcpListener::bind("127.0.0.1:0").expect("a free port");
    let address = listener.local_addr().expect("it is bound");
    thread::spawn(move || {
        for connection in listener.incoming().flatten() {
            // Chromium opens connections ahead of need: one that stays silent must not
            // hold up the others.
            thread::spawn(move || answer(connection));
        }
    });
    format!("http://{address}")
}

fn answer(mut connection: TcpStream) {
    let mut lines = BufReader::new(connection.try_clone().expect("a second handle")).lines();
    let Some(Ok(request)) = lines.next() else {
        return;
    };
    for line in lines.map_while(Result::ok) {
        if line.is_empty() {
            break;
        }
    }
    let (status, kind, body) = match request.split(' ').nth(1) {
        Some("/good") => ("200 OK", "text/html", include_str!("pages/good.html")),
        Some("/good.css") => ("200 OK", "text/css", include_str!("pages/good.css")),
        Some("/good.js") => ("200 OK", "text/javascript", include_str!("pages/good.js")),
        Some("/bad") => ("200 OK", "text/html", include_str!("pages/bad.html")),
        Some("/bad.css") => ("200 OK", "text/css", include_str!("pages/bad.css")),
        _ => (
            "404 Not Found",
            "text/html",
            "<title>none</title>no such page",
        ),
    };
    let length = body.len();
    // A browser that has gone away no longer wants the answer.
    let _ = write!(
        connection,
        "HTTP/1.1 {status}\r\nContent-Type: {kind}; charset=utf-8\r\nContent-Length: {length}\r\n\
         Content-Security-Policy: default-src 'none'; style-src 'self'; script-src 'self'; img-src data:\r\n\
         Connection: close\r\n\r\n{body}"
    );
}

fn open(path: &str) -> Result<Browser> {
    let browser = Browser::start()?;
    browser.set_viewport(PHONE)?;
    browser.goto(&format!("{}{path}", pages()))?;
    Ok(browser)
}

#[test]
fn a_page_is_used_by_role_and_name() -> Result<()> {
    let browser = open("/good")?;
    assert_eq!(browser.taps(), 0);

    browser.by_role("button", "Out as shown")?.click()?;
    browser.wait_for_text("Undertray: off")?;
    browser.by_role_containing("button", "Und")?.click()?;
    browser.wait_for_text("Undertray: on")?;
    assert_eq!(browser.taps(), 2);

    let note = browser.by_role("textbox", "Note")?;
    note.write("rusty")?;
    note.write("two clips gone")?;
    assert_eq!(note.value()?, "two clips gone");

    let way = browser.by_role("combobox", "Way")?;
    way.choose("from below")?;
    assert_eq!(way.value()?, "from below");

    browser.by_role("checkbox", "Screw 2 is missing")?.click()?;
    let ticked = browser.execute(
        "return document.querySelector('[name=screw]').checked",
        vec![],
    )?;
    assert_eq!(ticked, true);
    Ok(())
}

#[test]
fn the_keyboard_writes_to_what_has_the_focus() -> Result<()> {
    let browser = open("/good")?;
    browser.by_role("textbox", "Note")?.click()?;
    browser.press_keys("by hand")?;
    assert_eq!(browser.by_role("textbox", "Note")?.value()?, "by hand");
    Ok(())
}

#[test]
fn what_is_not_there_is_told_with_what_is() -> Result<()> {
    let browser = open("/good")?;
    browser.set_patience(Duration::from_millis(300));
    let error = browser
        .by_role("button", "Not here")
        .err()
        .expect("it is hidden")
        .to_string();
    assert!(
        error.contains("nothing is a button named \"Not here\""),
        "{error}"
    );
    assert!(error.contains("button \"Undo\""), "{error}");
    assert!(error.contains("button \"Out as shown\""), "{error}");

    let error = browser
        .wait_for_text("Undertray: gone")
        .unwrap_err()
        .to_string();
    assert!(error.contains("Undertray: on"), "{error}");
    Ok(())
}

#[test]
fn two_of_one_name_are_refused() -> Result<()> {
    let browser = open("/bad")?;
    let error = browser
        .by_role("button", "Right")
        .err()
        .expect("there are two")
        .to_string();
    assert!(
        error.contains("2 things are a button named \"Right\""),
        "{error}"
    );
    assert_eq!(browser.names_by_role("button")?, ["Left", "Right", "Right"]);
    Ok(())
}

#[test]
fn a_page_that_keeps_the_rules_has_no_faults() -> Result<()> {
    let browser = open("/good")?;
    for dark in [false, true] {
        browser.set_dark(dark)?;
        assert_eq!(browser.axe()?, Vec::<String>::new());
    }
    assert_eq!(browser.target_faults()?, Vec::<String>::new());
    assert_eq!(browser.targets()?.len(), 6);
    assert_eq!(browser.console_errors()?, Vec::<String>::new());
    Ok(())
}

#[test]
fn a_page_that_breaks_the_rules_is_told_so() -> Result<()> {
    let browser = open("/bad")?;

    let violations = browser.axe()?;
    assert_eq!(violations.len(), 2, "{violations:#?}");
    assert!(
        violations[0].starts_with("color-contrast-enhanced:"),
        "{violations:#?}"
    );
    assert!(violations[0].contains("class=\"pale\""), "{violations:#?}");
    assert!(violations[1].starts_with("label:"), "{violations:#?}");

    let faults = browser.target_faults()?;
    assert!(
        faults
            .iter()
            .any(|fault| fault.starts_with("\"Left\" is") && fault.contains("px tall")),
        "{faults:#?}"
    );
    assert!(
        faults
            .iter()
            .any(|fault| fault.starts_with("\"Left\" and \"Right\" are")),
        "{faults:#?}"
    );

    let errors = browser.console_errors()?;
    assert_eq!(errors.len(), 1, "{errors:#?}");
    assert!(errors[0].contains("Content Security Policy"), "{errors:#?}");
    assert_eq!(
        browser.console_errors()?,
        Vec::<String>::new(),
        "each is told once"
    );
    Ok(())
}

#[test]
fn an_error_page_is_not_taken_for_the_page() -> Result<()> {
    let browser = Browser::start()?;
    let missing = format!("{}/missing", pages());
    assert_eq!(browser.goto_any(&missing)?, 404);
    let error = browser.goto(&missing).unwrap_err().to_string();
    assert!(error.contains("status 404"), "{error}");
    Ok(())
}

#[test]
fn a_picture_is_as_large_as_the_device_and_as_dark_as_asked() -> Result<()> {
    let browser = open("/good")?;
    let folder = tempfile::tempdir()?;
    let mut pictures = Vec::new();
    for (name, viewport, dark) in [
        ("phone", PHONE, false),
        ("phone-dark", PHONE, true),
        ("desk", DESK, false),
    ] {
        browser.set_viewport(viewport)?;
        browser.set_dark(dark)?;
        let path = folder.path().join("made").join(format!("{name}.png"));
        browser.screenshot(&path)?;
        let picture = std::fs::read(&path)?;
        let side =
            |at: usize| u32::from_be_bytes(picture[at..at + 4].try_into().expect("four bytes"));
        // A PNG states its width and height right after the name of its first chunk.
        assert_eq!(&picture[12..16], b"IHDR");
        assert_eq!(
            (side(16), side(20)),
            (viewport.width_px, viewport.height_px)
        );
        pictures.push(picture);
    }
    assert_ne!(pictures[0], pictures[1], "dark looks like light");
    Ok(())
}
