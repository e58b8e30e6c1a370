//! People at their screens, for days that are played: who presses what, every tap and every field
//! counted, and whether two screens say the same of an order.

use super::{Shop, started};
use anyhow::{Context, Result, bail, ensure};
use chromium::{Browser, DESK, PHONE, Viewport};
use serde_json::{Value, json};
use std::cell::Cell;

/// Somebody at a screen of their own.
pub struct Hand<'a> {
    shop: &'a Shop,
    pub browser: Browser,
    who: &'static str,
    fields: Cell<u32>,
    by_script: Cell<u32>,
}

impl<'a> Hand<'a> {
    /// Somebody who is known by name in the shop.
    pub fn of(shop: &'a Shop, who: &'static str, size: Viewport) -> Result<Self> {
        let hand = Self::nobody(shop, who, size)?;
        hand.go("/who")?;
        super::follow(&hand.browser, who)?;
        hand.browser.wait_until(|| {
            let known = "return document.body.dataset.who !== '' && location.pathname === '/';";
            Ok((hand.browser.execute(known, vec![])? == true).then_some(()))
        })?;
        Ok(hand)
    }

    fn nobody(shop: &'a Shop, who: &'static str, size: Viewport) -> Result<Self> {
        let browser = Browser::start()?;
        browser.set_viewport(size)?;
        Ok(Self {
            shop,
            browser,
            who,
            fields: Cell::new(0),
            by_script: Cell::new(0),
        })
    }

    /// Opens a page by its address, which is no tap.
    pub fn go(&self, path: &str) -> Result<()> {
        self.browser.goto(&self.shop.server.url(path))
    }

    pub fn write(&self, field: &str, text: &str) -> Result<()> {
        self.fields.set(self.fields.get() + 1);
        super::write(&self.browser, field, text)
    }

    pub fn tap(&self, button: &str) -> Result<()> {
        super::tap(&self.browser, button)
    }

    /// Presses the first of several that begin so.
    pub fn tap_first(&self, begin: &str) -> Result<()> {
        let pressed = self.browser.execute(
            "const one = [...document.querySelectorAll('main button')].find((one) => one.textContent.startsWith(arguments[0]));
             one?.click();
             return Boolean(one);",
            vec![json!(begin)],
        )?;
        ensure!(pressed == true, "{} finds no {begin:?}", self.who);
        self.by_script.set(self.by_script.get() + 1);
        Ok(())
    }

    /// Presses, and waits for what that leads to.
    pub fn tap_for(&self, button: &str, then: &str) -> Result<()> {
        self.tap(button)?;
        self.sees(then)
    }

    pub fn follow(&self, link: &str) -> Result<()> {
        super::follow(&self.browser, link)
    }

    /// Follows the link that is called so and no more. Where news came just before the press, the
    /// page says so and is pressed again, as a person would.
    pub fn follow_only(&self, link: &str) -> Result<()> {
        let here = self.browser.address()?;
        let press = || super::still(|| self.browser.by_role("link", link)?.click());
        press()?;
        let gone = self.browser.wait_until(|| {
            let left = self.browser.address()? != here;
            Ok((left || self.says("press again")?).then_some(left))
        })?;
        if gone == Some(false) {
            press()?;
        }
        Ok(())
    }

    pub fn choose(&self, chip: &str) -> Result<()> {
        super::choose(&self.browser, chip)
    }

    pub fn unfold(&self, words: &str) -> Result<()> {
        super::unfold(&self.browser, words)
    }

    pub fn sees(&self, words: &str) -> Result<()> {
        self.browser
            .wait_for_text(words)
            .with_context(|| format!("what {} looks at", self.who))
    }

    pub fn says(&self, words: &str) -> Result<bool> {
        Ok(self.browser.text()?.contains(words))
    }

    /// Taps and fields so far.
    pub fn counted(&self) -> (u32, u32) {
        (
            self.browser.taps() - self.fields.get() + self.by_script.get(),
            self.fields.get(),
        )
    }

    pub fn print(&self, day: &str) {
        let (taps, fields) = self.counted();
        #[allow(
            clippy::print_stdout,
            reason = "the taps of a day are what it is read for"
        )]
        {
            println!("{day}, {}: {taps} taps, {fields} fields", self.who);
        }
    }

    /// Nothing went wrong but what was refused in words.
    pub fn no_errors(&self) -> Result<()> {
        let mut errors = self.browser.console_errors()?;
        errors.retain(|error| !error.contains("422"));
        ensure!(errors.is_empty(), "{}: {}", self.who, errors.join("\n"));
        Ok(())
    }
}

/// An empty folder, and the shop set up in it by its owner at the desk.
pub fn shop() -> Result<Shop> {
    started("serve")
}

/// The owner, who sets up the shop with a second person.
pub fn owner<'a>(shop: &'a Shop, who: &'static str, second: &str) -> Result<Hand<'a>> {
    owner_in(shop, who, second, None)
}

/// The same, in another time zone than the usual.
pub fn owner_in<'a>(
    shop: &'a Shop,
    who: &'static str,
    second: &str,
    zone: Option<&str>,
) -> Result<Hand<'a>> {
    let owner = Hand::nobody(shop, who, DESK)?;
    owner.go("/")?;
    owner.sees("Your shop")?;
    owner.write("Name of the shop", "Lindgren Motors")?;
    owner.write("Your name", who)?;
    owner.write("Name of a second person", second)?;
    owner.write("hour's labour", "96")?;
    if let Some(zone) = zone {
        owner.write("Time zone", zone)?;
    }
    owner.tap("Set up")?;
    owner.follow(who)?;
    owner.sees("Check in a vehicle")?;
    Ok(owner)
}

/// A technician on a phone.
pub fn technician<'a>(shop: &'a Shop, who: &'static str) -> Result<Hand<'a>> {
    Hand::of(shop, who, PHONE)
}

/// What a page of an order says of its state: the word over it, what is off and owed, each gate.
const STATE: &str = "(page) => [...page.querySelectorAll('main .head .upper, main .order a[href$=\"/open\"], main .order a[href*=\"/may\"]')]
    .map((one) => one.textContent.replace(/\\s+/g, ' ').trim())";

/// Holds two screens against each other: the desk's page of the order, which nobody loads anew,
/// comes to say what the phone is told of the order now.
pub fn agree(desk: &Hand<'_>, phone: &Hand<'_>, number: u64) -> Result<()> {
    let here = desk.browser.address()?;
    ensure!(
        here.ends_with(&format!("/o/{number}")),
        "the desk looks at {here}"
    );
    let fresh = format!(
        "const [number, done] = arguments;
         const state = {STATE};
         fetch(`/o/${{number}}`).then((answer) => answer.text())
           .then((text) => done(state(new DOMParser().parseFromString(text, 'text/html'))), (error) => done(String(error)));"
    );
    let shown = format!("const state = {STATE}; return state(document);");
    let both = || -> Result<(Value, Value)> {
        let told = phone
            .browser
            .execute_until_called_back(&fresh, vec![json!(number)])?;
        Ok((told, desk.browser.execute(&shown, vec![])?))
    };
    let same = desk.browser.wait_until(|| {
        let (told, shown) = both()?;
        Ok((told == shown && told.as_array().is_some_and(|all| all.len() > 2)).then_some(()))
    })?;
    if same.is_none() {
        let (told, shown) = both()?;
        bail!("the phone is told {told:#}, the desk shows {shown:#}");
    }
    Ok(())
}
