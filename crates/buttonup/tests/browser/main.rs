//! The pages in a real browser, by role and name: one order from an empty folder to
//! hand-over, two browsers at once, undo, and every page's contrast and target sizes.

mod benchmark;
mod brake_job;

mod calc;
mod day_of_a_bulb;
mod day_of_a_clutch;
mod day_of_brakes;
mod days;
mod desk;
mod editor;
mod hands;
mod layout;
mod leaving;
mod live;
mod morning;
mod people;
mod plan;
mod reach;
mod small_jobs;
mod teaching;
mod threads;
mod voice;

mod coolant;

use anyhow::{Context, Result, bail, ensure};
use chromium::{Browser, DESK, PHONE, Server};
use std::process::Command;
use tempfile::TempDir;

struct Shop {
    server: Server,
    folder: TempDir,
}

fn started(command: &str) -> Result<Shop> {
    let folder = tempfile::tempdir()?;
    let server = Server::start(
        Command::new(env!("CARGO_BIN_EXE_buttonup"))
            .args([command, "--listen", "127.0.0.1:0", "--no-open", "--data"])
            .arg(folder.path()),
    )?;
    Ok(Shop { server, folder })
}

/// Every event of one kind in the record, in sequence.
fn events(shop: &Shop, kind: &str) -> Result<Vec<serde_json::Value>> {
    let out = Command::new(env!("CARGO_BIN_EXE_buttonup"))
        .args(["export", "--data"])
        .arg(shop.folder.path())
        .output()?;
    let lines = String::from_utf8(out.stdout)?;
    lines
        .lines()
        .map(serde_json::from_str::<serde_json::Value>)
        .filter(|row| row.as_ref().is_ok_and(|row| row["kind"] == kind))
        .map(|row| Ok(serde_json::from_str(row?["body"].as_str().unwrap_or(""))?))
        .collect()
}

fn phone(shop: &Shop, path: &str) -> Result<Browser> {
    let browser = Browser::start()?;
    browser.set_viewport(PHONE)?;
    browser.goto(&shop.server.url(path))?;
    Ok(browser)
}

fn write(browser: &Browser, field: &str, text: &str) -> Result<()> {
    still(|| browser.by_role_containing("textbox", field)?.write(text))
}

fn tap(browser: &Browser, button: &str) -> Result<()> {
    still(|| browser.by_role_containing("button", button)?.click())
}

fn follow(browser: &Browser, link: &str) -> Result<()> {
    still(|| browser.by_role_containing("link", link)?.click())
}

/// Opens what lies folded under these words.
fn unfold(browser: &Browser, words: &str) -> Result<()> {
    browser
        .by_role_containing("DisclosureTriangle", words)?
        .click()
}

fn choose(browser: &Browser, chip: &str) -> Result<()> {
    still(|| browser.by_role("radio", chip)?.click())
}

/// Ticks all that the page asks to be ticked now, as somebody who did it all; gives how many
/// taps that was.
fn tick_all(browser: &Browser) -> Result<u32> {
    let ticked = browser.execute(
        "const left = [...document.querySelectorAll('main [data-one-of] label:not([data-later]) input[type=checkbox]:not(:checked)')];
         left.forEach((one) => one.click());
         return left.length;",
        vec![],
    )?;
    let taps = ticked.as_u64().and_then(|taps| u32::try_from(taps).ok());
    taps.context("nothing was counted")
}

/// What the page says, without its head and its closing line, which tell of what is being sent.
fn main_text(browser: &Browser) -> Result<String> {
    let text = browser.execute("return document.querySelector('main').innerText", vec![])?;
    Ok(text.as_str().unwrap_or_default().to_owned())
}

/// Waits until the page says something else than before.
fn changed(browser: &Browser, before: &str) -> Result<()> {
    let other = || Ok((main_text(browser)? != before).then_some(()));
    ensure!(
        browser.wait_until(other)?.is_some(),
        "it stands still: {before}"
    );
    Ok(())
}

/// Waits until the page no longer says so; what may be undone is still named there.
fn gone(browser: &Browser, words: &str) -> Result<()> {
    let gone = || {
        let text = browser.text()?;
        let mut lines = text.lines().filter(|line| !line.starts_with("last: "));
        Ok((!lines.any(|line| line.contains(words))).then_some(()))
    };
    if browser.wait_until(gone)?.is_none() {
        bail!("{words} is still there: {}", browser.text()?);
    }
    Ok(())
}

/// Does something to what was found; where the page was shown anew in between, it is
/// looked for once more, as a person would.
fn still(act: impl Fn() -> Result<()>) -> Result<()> {
    match act() {
        Err(error) if format!("{error:#}").contains("stale element") => act(),
        done => done,
    }
}

/// From here on the screens of whoever is at the browser are German.
fn speaks_german(browser: &Browser) -> Result<()> {
    let mut device = days::Device::of(browser)?;
    let who = browser.execute("return document.body.dataset.who", vec![])?;
    let speaks =
        serde_json::json!({ "person-speaks": { "person": who, "language": "de", "after": [] } });
    days::send(browser, &[device.command("shop", "shop_fact", speaks)])
}

/// An empty folder, and the shop set up in it on a phone.
fn set_up() -> Result<(Shop, Browser)> {
    let shop = started("serve")?;
    let browser = phone(&shop, "/")?;
    browser.wait_for_text("Your shop")?;
    write(&browser, "Name of the shop", "Two Bays")?;
    write(&browser, "Your name", "Mila Korn")?;
    write(&browser, "Name of a second person", "Otto Reis")?;
    write(&browser, "hour's labour", "90")?;
    tap(&browser, "Set up")?;
    follow(&browser, "Mila Korn")?;
    browser.wait_for_text("Free")?;
    Ok((shop, browser))
}

#[test]
fn one_order_from_an_empty_folder_to_hand_over() -> Result<()> {
    let (shop, browser) = set_up()?;

    // A vehicle comes in.
    follow(&browser, "Check in a vehicle")?;
    write(
        &browser,
        "Vehicle identification number",
        "1M8GDM9AXKP042788",
    )?;
    browser.wait_for_text("Valid")?;
    write(&browser, "Complaint", "Coolant on the floor, smells hot")?;
    write(&browser, "Customer", "Ben Hale")?;
    write(&browser, "Telephone", "0600 555 099")?;
    write(&browser, "Vehicle maker", "Selwick Rue 1.4")?;
    write(&browser, "Plate", "TB 101")?;
    write(&browser, "Odometer", "92000 km")?;
    tap(&browser, "Check it in")?;
    browser.wait_for_text("Walk round it first")?;
    unfold(&browser, "Outside")?;
    write(&browser, "In a few words", "dent in the left door")?;
    tap(&browser, "Note it")?;
    browser.wait_for_text("dent in the left door")?;
    tap(&browser, "Nothing found wheels")?;
    browser.wait_for_text("1 thing noted, nothing in the other 4")?;
    tap(&browser, "Finish walk-round")?;

    // Price and consent.
    browser.goto(&shop.server.url("/o/1001/price"))?;
    write(&browser, "Hours", "1,5")?;
    tap(&browser, "Set the price")?;
    browser.wait_for_text("135.00 before tax")?;
    follow(&browser, "Get approval")?;
    tap(&browser, "Approved")?;
    browser.wait_for_text("Yes, up to 135.00")?;

    // Two stages off.
    browser.goto(&shop.server.url("/o/1001/off"))?;
    write(
        &browser,
        "One thing a line",
        "6 tray screws M6x16\nundertray\n5.5 L coolant\nlower coolant hose\npinch clamp for the coolant hose",
    )?;
    tap(&browser, "Read it")?;
    browser.wait_for_text("may be hot and under pressure")?;
    tap(&browser, "Out as shown")?;
    browser.wait_for_text("2 things inside")?;
    ensure!(browser.text()?.contains("still off"));

    // Refused, with all reasons.
    browser.goto(&shop.server.url("/o/1001/hand-over"))?;
    tap(&browser, "It drives away")?;
    browser.wait_for_text("reasons stand against it")?;
    for reason in [
        "tray screws",
        "still inside",
        "coolant low: 5.5 L out, 0 in",
        "Road test missing",
        "We still have the keys",
    ] {
        ensure!(
            browser.text()?.contains(reason),
            "no {reason:?} in: {}",
            browser.text()?
        );
    }

    // Back together: on, tight, filled.
    browser.goto(&shop.server.url("/o/1001/back"))?;
    tap(&browser, "On as shown")?;
    browser.wait_for_text("Nothing left to put on")?;
    write(&browser, "Poured in", "5.5 L")?;
    tap(&browser, "Filled to its level")?;
    browser.wait_for_text("0 still off · 0 inside")?;

    // What is owed, the second person's check, the proofs.
    browser.goto(&shop.server.url("/o/1001/due"))?;
    // Nothing is ticked by itself: pressed so, it asks what is done.
    tap(&browser, "Done as ticked")?;
    browser.wait_for_text("Tick what is done")?;
    tick_all(&browser)?;
    tap(&browser, "Done as ticked")?;
    gone(&browser, "Bleed")?;
    for work in ["See the level warm", "Look for leaks"] {
        ensure!(!browser.text()?.contains(work), "{work} is still owed");
    }
    // Taken back in one tap, and done again.
    tap(&browser, "Undo last")?;
    browser.wait_for_text("Bleed")?;
    tick_all(&browser)?;
    tap(&browser, "Done as ticked")?;
    gone(&browser, "Bleed")?;
    // A test that passed is asked once what it read.
    tap(&browser, "Leak test passed")?;
    browser.wait_for_text("no reading is told")?;
    tap(&browser, "Leak test passed")?;
    gone(&browser, "Leak test")?;
    write(&browser, "In a few words", "12 km, no lamp, no smell")?;
    tap(&browser, "Road test passed")?;
    browser.wait_for_text("What is needed is proved")?;
    // The second person: on the same page, or by a page of their own.
    ensure!(browser.text()?.contains("Otto checked them"));
    browser.goto(&shop.server.url("/who"))?;
    follow(&browser, "Otto Reis")?;
    browser.wait_for_text("Selwick")?;
    browser.goto(&shop.server.url("/o/1001/due"))?;
    tap(&browser, "I checked them")?;
    gone(&browser, "Second check")?;

    // The desk: invoice, money, keys; then it goes.
    browser.goto(&shop.server.url("/o/1001/pay"))?;
    tap(&browser, "Write the invoice")?;
    browser.wait_for_text("The invoice is written")?;
    tap(&browser, "Record payment")?;
    browser.wait_for_text("Left to pay\n0.00")?;
    tap(&browser, "Keys given back")?;
    browser.wait_for_text("Keys taken in")?;
    browser.goto(&shop.server.url("/o/1001/hand-over"))?;
    browser.wait_for_text("Yes: nothing stands against it")?;
    // Opened and driven, and nobody read the odometer: asked once.
    tap(&browser, "It drives away")?;
    browser.wait_for_text("odometer on the way out")?;
    write(&browser, "Odometer on the way out", "92014 km")?;
    tap(&browser, "It drives away")?;
    browser.wait_for_text("Handed over: drove away")?;
    println!("taps: {}", browser.taps());

    // It is found by name, by plate and by number.
    for wanted in ["hale", "tb101", "1001"] {
        browser.goto(&shop.server.url(&format!("/find?q={wanted}")))?;
        browser.wait_for_text("1 order")?;
    }
    // The browser notes the one answer that says no; nothing else went wrong.
    let mut errors = browser.console_errors()?;
    errors.retain(|error| !error.contains("422"));
    ensure!(errors.is_empty(), "{}", errors.join("\n"));
    Ok(())
}

#[test]
fn two_browsers_show_the_same_and_a_tap_is_taken_back() -> Result<()> {
    let shop = started("demo")?;
    let desk = Browser::start()?;
    desk.set_viewport(DESK)?;
    desk.goto(&shop.server.url("/who/greta"))?;
    desk.goto(&shop.server.url("/o/1002/open"))?;
    let phone = phone(&shop, "/who/pavel")?;
    phone.goto(&shop.server.url("/o/1002/item/battery-negative"))?;
    ensure!(desk.text()?.contains("battery negative: unplugged"));
    tap(&phone, "Plugged")?;
    // The desk shows it without a reload.
    desk.wait_until(|| Ok((!desk.text()?.contains("battery negative")).then_some(())))?;
    ensure!(!desk.text()?.contains("battery negative"));
    tap(&phone, "Undo last")?;
    desk.wait_for_text("battery negative: unplugged")?;
    Ok(())
}

#[test]
fn who_comes_to_a_group_left_in_the_middle_sees_it_first_and_goes_on() -> Result<()> {
    let shop = started("demo")?;
    let browser = phone(&shop, "/who/greta")?;
    browser.goto(&shop.server.url("/"))?;
    browser.wait_for_text("Stopped here: wheel nuts, right front 2 of 4, pass 1")?;
    follow(&browser, "Stopped here")?;
    browser.wait_for_text("Pavel")?;
    follow(&browser, "Go on here")?;
    browser.wait_for_text("In this sequence: 2, 4")?;
    browser.wait_for_text("60 Nm")?;
    tap(&browser, "Pass 1 of 2 done")?;
    browser.wait_for_text("110 Nm")?;
    // Called away in the second pass after one of four.
    browser.goto(&shop.server.url("/o/1004"))?;
    ensure!(!browser.text()?.contains("Stopped here"));
    browser.goto(&shop.server.url("/o/1004/back"))?;
    unfold(&browser, "Called away?")?;
    tap(&browser, "1 of 4")?;
    browser.wait_for_text("the last 3: 3, 2, 4")?;
    browser.goto(&shop.server.url("/o/1004"))?;
    browser.wait_for_text("wheel nuts, right front 1 of 4")?;
    browser.wait_for_text("pass 2 · Greta")?;
    Ok(())
}

#[test]
fn a_snag_is_noted_by_tapping_the_bolt_on_the_picture() -> Result<()> {
    let shop = started("demo")?;
    let browser = phone(&shop, "/who/pavel")?;
    browser.goto(&shop.server.url("/o/1002/snag?item=housing-bolts"))?;
    tap(&browser, "Note the snag")?;
    browser.wait_for_text("Tap which one it is")?;
    browser.by_role_containing("checkbox", "6")?.click()?;
    choose(&browser, "snapped below")?;
    write(&browser, "In a few words", "2 mm below the face")?;
    tap(&browser, "Note the snag")?;
    browser.wait_for_text("Housing bolts 6: snapped")?;
    browser.goto(&shop.server.url("/o/1002/item/housing-bolts"))?;
    browser.wait_for_text("1 snapped")?;
    // The same by the keyboard, on another shape.
    browser.goto(
        &shop
            .server
            .url("/o/1002/snag?item=housing-bolts&shape=rows"),
    )?;
    browser.execute("document.querySelector('input[name=at-2]').focus()", vec![])?;
    browser.press_keys(" ")?;
    choose(&browser, "thread stripped")?;
    tap(&browser, "Note the snag")?;
    browser.wait_for_text("Housing bolts 2: thread stripped")?;
    Ok(())
}

#[test]
fn a_typo_is_mended_and_a_mistaken_order_voided() -> Result<()> {
    let shop = started("demo")?;
    let browser = phone(&shop, "/who/greta")?;
    browser.goto(&shop.server.url("/o/1006/mend"))?;
    browser
        .by_role("textbox", "Customer")?
        .write("Joris Maan-Vries")?;
    tap(&browser, "Save")?;
    browser.wait_for_text("all sent")?;
    browser.goto(&shop.server.url("/find?q=maanvries"))?;
    browser.wait_for_text("2 orders")?;
    browser.goto(&shop.server.url("/o/1006/mend"))?;
    tap(&browser, "Keys given back")?;
    write(&browser, "Why", "opened twice")?;
    tap(&browser, "Void this order")?;
    browser.wait_for_text("Stall 1")?;
    browser.goto(&shop.server.url("/o/1006"))?;
    browser.wait_for_text("Voided: opened by mistake")?;
    // One that was worked on is not.
    browser.goto(&shop.server.url("/o/1002/mend"))?;
    write(&browser, "Why", "a try")?;
    tap(&browser, "Void this order")?;
    browser.wait_for_text("bring each to its end first")?;
    Ok(())
}

#[test]
fn out_of_reach_taps_are_kept_and_sent_later() -> Result<()> {
    let shop = started("demo")?;
    let browser = phone(&shop, "/who/pavel")?;
    browser.goto(&shop.server.url("/o/1002/item/engine-cover"))?;
    let offline = |away: bool| {
        browser.cdp(
            "Network.emulateNetworkConditions",
            serde_json::json!({ "offline": away, "latency": 0, "downloadThroughput": -1, "uploadThroughput": -1 }),
        )
    };
    browser.cdp("Network.enable", serde_json::json!({}))?;
    offline(true)?;
    tap(&browser, "On")?;
    browser.wait_for_text("1 to send")?;
    offline(false)?;
    browser.wait_for_text("all sent")?;
    browser.wait_for_text("engine cover")?;
    browser.goto(&shop.server.url("/o/1002/open"))?;
    ensure!(!browser.text()?.contains("engine cover"));
    Ok(())
}

/// Puts so many photos, as large as a phone takes them, into the page's file field.
const CHOOSE_PHOTOS: &str = r#"
const [count, done] = arguments;
const field = document.querySelector('details[open] input[type="file"]');
const chosen = new DataTransfer();
const sheet = document.createElement("canvas");
sheet.width = 4000;
sheet.height = 3000;
const ink = sheet.getContext("2d");
const take = (nth) => {
  if (nth === count) {
    field.files = chosen.files;
    field.dispatchEvent(new Event("change", { bubbles: true }));
    return done(field.files.length);
  }
  for (let at = 0; at < 4000; at += 20) {
    ink.fillStyle = `hsl(${(at * 7 + nth * 50) % 360} 60% 50%)`;
    ink.fillRect((at * 31) % 4000, (at * 17 + nth * 97) % 3000, 400, 300);
  }
  sheet.toBlob((blob) => {
    chosen.items.add(new File([blob], `photo-${nth}.jpg`, { type: "image/jpeg" }));
    take(nth + 1);
  }, "image/jpeg", 0.95);
};
take(0);
"#;

#[test]
fn five_photos_out_of_reach_are_kept_and_sent_later() -> Result<()> {
    let shop = started("demo")?;
    let browser = phone(&shop, "/who/pavel")?;
    browser.goto(&shop.server.url("/o/1002/walk"))?;
    unfold(&browser, "Underneath")?;
    let chosen = browser.execute_until_called_back(CHOOSE_PHOTOS, vec![5.into()])?;
    ensure!(chosen == 5, "{chosen}");
    browser.cdp("Network.enable", serde_json::json!({}))?;
    let offline = |away: bool| {
        browser.cdp(
            "Network.emulateNetworkConditions",
            serde_json::json!({ "offline": away, "latency": 0, "downloadThroughput": -1, "uploadThroughput": -1 }),
        )
    };
    offline(true)?;
    write(&browser, "In a few words", "wet at the sump")?;
    tap(&browser, "Note it")?;
    browser.wait_for_text("1 to send")?;
    let queued = browser.execute("return JSON.stringify(localStorage).length", vec![])?;
    println!("letters in the queue's store with five photos: {queued}");
    ensure!(
        queued.as_u64().is_some_and(|letters| letters < 10_000),
        "{queued}"
    );
    offline(false)?;
    browser.wait_for_text("all sent")?;
    browser.goto(&shop.server.url("/o/1002/walk"))?;
    browser.wait_for_text("wet at the sump")?;
    let sizes = browser.execute(
        "return [...document.querySelectorAll('.thumbnails img')].map((one) => { one.loading = 'eager'; return one.decode().then(() => Math.max(one.naturalWidth, one.naturalHeight)); }).reduce((all, one) => all.then((list) => one.then((size) => [...list, size])), Promise.resolve([]))",
        vec![],
    )?;
    ensure!(
        sizes == serde_json::json!([1600, 1600, 1600, 1600, 1600]),
        "{sizes}"
    );
    Ok(())
}

/// The pages of a day, each looked at for contrast and target sizes.
const PAGES: &[&str] = &[
    "/",
    "/calls",
    "/find",
    "/who",
    "/new?vin=1M8GDM9A0KP042788",
    "/shop",
    "/shop/prices",
    "/o/1002/price?cost=12.50&off=10%25&of=order",
    "/o/1002/credit",
    "/record",
    "/coolant",
    "/coolant/protection?strength=50&of=concentrate&cap=1.1&altitude=650&hottest=108",
    "/coolant/strength?instrument=refractometer&reading=-90",
    "/coolant/mix?capacity=9.2&left=3.7&now=35&want=50&has-concentrate=yes&has-water=yes",
    "/coolant/balance?drained=5.5&poured=4&capacity=9.2&bottle-area=150",
    "/coolant/leak?readings=0+1.10+22%0A5+1.09+22%0A10+1.09+21.5%0A15+1.085+21.5&limit=0.05&limit-time=15",
    "/o/1001",
    "/o/1002",
    "/o/1002/promise",
    "/o/1003/promise",
    "/o/1002/walk",
    "/o/1002/off",
    "/o/1002/off?lines=6+tray+screws+M6%0Ahose",
    "/o/1002/off?lines=lower+hose%2C+cooling+coolant%0Aheater+hose",
    "/maps",
    "/maps/korvane-drayman-engine-front",
    "/maps/korvane-drayman-engine-front?for=",
    "/maps/new",
    "/kinds",
    "/kinds/korvane-drayman-2-3-090fbe",
    "/history",
    "/skills",
    "/o/1002/how-to",
    "/o/1002/how-to?write=yes",
    "/o/1002/two",
    "/maps/pellworth-mite-battery/edit",
    "/maps/korvane-drayman-engine-front/edit?item=pulley+bolts",
    "/o/1002/way",
    "/o/1006/plan",
    "/o/1006/plan?map=korvane-drayman-engine-front&aim=reach&find=gasket",
    "/o/1006/plan?map=korvane-drayman-engine-front&for=housing+gasket&without=shroud.off",
    "/o/1002/plan/price?map=korvane-drayman-engine-front&for=housing+gasket",
    "/o/1002/stage",
    "/o/1002/stage?snag=which",
    "/o/1006/stage",
    "/o/1002/back",
    "/o/1004/back",
    "/o/1002/open",
    "/o/1002/tray",
    "/o/1002/item/housing-bolts",
    "/o/1002/item/oil",
    "/o/1002/calc/fluids/engine-oil?of=oil&inside=10W-40&new=5W-30&asked-for=5W-30",
    "/o/1002/calc/roadtest/by-hand?at-1=0&coolant-1=20&at-2=10&coolant-2=90&voltage-2=14.2",
    "/o/1002/item/coolant",
    "/o/1002/item/coolant/measure?instrument=refractometer&reading=-24",
    "/o/1002/item/coolant/drain",
    "/o/1002/item/coolant/pour?capacity=9.2&now=35&want=50",
    "/o/1002/item/coolant/bleed",
    "/o/1002/item/coolant/level",
    "/o/1002/item/coolant/leak",
    "/o/1002/item/coolant/figures",
    "/o/1002/snag?item=housing-bolts",
    "/o/1002/may",
    "/o/1002/may/hand-over",
    "/o/1002/due",
    "/o/1002/second",
    "/o/1002/hand-over",
    "/o/1002/desk",
    "/o/1002/price",
    "/o/1002/ask",
    "/o/1002/parts",
    "/o/1002/pay",
    "/o/1002/decline",
    "/o/1002/estimate",
    "/o/1002/added",
    "/o/1002/invoice",
    "/o/1001/invoice?payer=warranty",
    "/o/1002/estimate?payer=warranty",
    "/o/1002/story",
    "/o/1002/mend",
    "/threads",
    "/threads/thread?thread=M8x1.25&class=8.8&in=aluminium&depth=12",
    "/threads/torque?thread=M10x1.5&clamp=25275&friction=0.15",
    "/threads/wrench?want=70+in-lb&wrench=12+in&adapter=2+in&angle=0",
    "/threads/pulley?bolt-torque=25&bolt-circle=50&wrench=250&pulley=140&tension=400&wrap=160&side=ribs",
    "/threads/pattern?layout=circle&bolts=8",
    "/threads/repair?thread=M8x75&joint=other&class=8.8&engaged=18&hole=blind&depth=26&boss=19&in=aluminium&torque=22",
    "/threads/repair?thread=M8&engaged=much",
    "/threads/stub?stands=below&thread=M8&class=8.8&by=2&engaged=18&hole=blind&depth=26&in=aluminium",
    "/calc",
    "/calc/belt",
    "/calc/belt/drive?turns=cw&name-1=crank&x-1=0&y-1=0&across-1=160&name-2=tensioner&x-2=-120&y-2=116&across-2=72&side-2=back&name-3=alternator&x-3=-126&y-3=262&across-3=62&name-4=pump&x-4=172&y-4=196&across-4=132&profile=given&tensioner=arm&tensioned=tensioner&pivot-x=-120&pivot-y=46&least=72&most=110",
    "/calc/belt/drive?turns=cw&name-1=crank&x-1=0&y-1=0&across-1=160&name-2=tensioner&x-2=-120&y-2=116&across-2=72&side-2=back&name-3=alternator&x-3=-126&y-3=262&across-3=62&name-4=pump&x-4=172&y-4=196&across-4=132&profile=given&tensioner=arm&tensioned=tensioner&pivot-x=-120&pivot-y=46&least=72&most=110&belt=6PK1500",
    "/calc/belt/drive",
    "/calc/belt/code?code=6PK1285",
    "/calc/belt/align?near=0&far=1&apart=120&limit=0.33",
    "/calc/belt/wear?pin=yes",
    "/calc/fluids",
    "/calc/fluids/brake?class=DOT+4&boils=140&bled=yes",
    "/calc/fluids/axle?level=at-mark&at=30&window-low=20&window-high=40&out=2.1+L&in=2.0+L",
    "/calc/fluids/washer?holds=4&left=1&now=20&want=50",
    "/calc/fluids/battery",
    "/calc/roadtest",
    "/calc/roadtest/recording",
    "/calc/roadtest/by-hand?at-1=0&coolant-1=20&at-2=10&coolant-2=90&voltage-2=14.2&at-3=15&coolant-3=91&voltage-3=14.1&limit=110",
    "/calc/roadtest/by-hand?at-1=5&coolant-1=hot&at-2=1",
];

/// What lies folded on a page and is opened by a tap.
const FOLDED: &[(&str, &str)] = &[
    ("/o/1002/item/housing-bolts", "Size and torque"),
    ("/o/1002/item/housing-bolts", "M8x1.25"),
    ("/o/1002/item/housing-bolts", "Belongs to"),
    ("/o/1002/parts", "A part is needed"),
    ("/shop/prices", "Another tax"),
    ("/shop/prices", "Another job"),
    ("/o/1002/price", "A discount"),
    ("/o/1002/price", "A price from what it costs us"),
    ("/o/1002/price", "The customer is exempt from taxes"),
];

/// What is wrong with the page that is shown, light and dark.
fn faults_of(browser: &Browser, page: &str) -> Result<Vec<String>> {
    let mut faults = Vec::new();
    let address = browser.execute("return location.href", vec![])?;
    for dark in [false, true] {
        browser.set_dark(dark)?;
        browser.goto(address.as_str().unwrap_or_default())?;
        let found = browser.axe()?.into_iter();
        faults.extend(found.map(|fault| format!("{page} dark {dark}: {fault}")));
    }
    let found = browser.target_faults()?.into_iter();
    faults.extend(found.map(|fault| format!("{page}: {fault}")));
    let found = spills(browser)?.into_iter();
    faults.extend(found.map(|fault| format!("{page}: {fault}")));
    let found = browser.console_errors()?.into_iter();
    faults.extend(found.map(|fault| format!("{page}: {fault}")));
    Ok(faults)
}

/// Words that stand out of the box that is pressed.
fn spills(browser: &Browser) -> Result<Vec<String>> {
    let found = browser.execute(
        "return [...document.querySelectorAll('.chips label, .press')]
            .filter((box) => box.scrollWidth > box.clientWidth + 1)
            .map((box) => `\"${box.innerText}\" spills out of its box`)",
        vec![],
    )?;
    Ok(serde_json::from_value(found)?)
}

/// The same without showing the page anew: what was unfolded stays so.
fn faults_here(browser: &Browser, page: &str) -> Result<Vec<String>> {
    let mut faults = browser.axe()?;
    faults.extend(browser.target_faults()?);
    faults.extend(spills(browser)?);
    Ok(faults
        .into_iter()
        .map(|fault| format!("{page}: {fault}"))
        .collect())
}

/// The same pages in German: its words are longer. Colours are those of English, so the light ones
/// are enough; of what lies folded, each word has to fit its box.
#[test]
fn every_german_page_can_be_read_and_pressed() -> Result<()> {
    let shop = started("demo")?;
    let browser = phone(&shop, "/who/pavel")?;
    speaks_german(&browser)?;
    let mut faults = Vec::new();
    for path in PAGES {
        browser.goto(&shop.server.url(path))?;
        let tongue = browser.execute("return document.documentElement.lang", vec![])?;
        ensure!(tongue == "de", "{path} is in {tongue}");
        faults.extend(faults_here(&browser, path)?);
        let unfold =
            "document.querySelectorAll('main details').forEach((one) => { one.open = true; })";
        browser.execute(unfold, vec![])?;
        let unfolded = spills(&browser)?.into_iter();
        faults.extend(unfolded.map(|fault| format!("{path}, unfolded: {fault}")));
        let found = browser.console_errors()?.into_iter();
        faults.extend(found.map(|fault| format!("{path}: {fault}")));
    }
    ensure!(faults.is_empty(), "{}", faults.join("\n"));
    Ok(())
}

#[test]
fn every_page_can_be_read_and_pressed() -> Result<()> {
    let shop = started("demo")?;
    let browser = phone(&shop, "/who/pavel")?;
    let mut faults = Vec::new();
    for path in PAGES {
        browser.goto(&shop.server.url(path))?;
        faults.extend(faults_of(&browser, path)?);
    }
    for (path, words) in FOLDED {
        browser.goto(&shop.server.url(path))?;
        unfold(&browser, words)?;
        faults.extend(faults_here(&browser, &format!("{path}, {words}"))?);
    }
    // The names of a vehicle and of a snag are made anew each time.
    browser.goto(&shop.server.url("/o/1001"))?;
    follow(&browser, "The vehicle")?;
    browser.wait_for_text("What was done")?;
    faults.extend(faults_of(&browser, "a vehicle")?);
    browser.goto(&shop.server.url("/o/1002/snag?item=housing-bolts"))?;
    browser.by_role_containing("checkbox", "6")?.click()?;
    choose(&browser, "snapped below")?;
    tap(&browser, "Note the snag")?;
    browser.wait_for_text("Show repair options")?;
    faults.extend(faults_of(&browser, "what is asked of a snag")?);
    for (field, value) in [
        ("How far it sits below", "2"),
        ("engaged", "18"),
        ("How deep", "26"),
        ("Metal around", "19"),
    ] {
        write(&browser, field, value)?;
    }
    choose(&browser, "aluminium, cast")?;
    tap(&browser, "Show repair options")?;
    browser.wait_for_text("Take this way")?;
    faults.extend(faults_of(&browser, "the repair options")?);
    tap(&browser, "Take this way")?;
    browser.wait_for_text("All done as listed")?;
    faults.extend(faults_of(&browser, "a way that was taken")?);
    ensure!(faults.is_empty(), "{}", faults.join("\n"));
    Ok(())
}
