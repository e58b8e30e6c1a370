//! The owner's morning, before the shutters are up: who stands where, what waits, what was promised;
//! somebody is ill; a van stands apart on the only lift; a customer rings.

use super::days::{Device, person, send, words};
use super::hands::{Hand, owner_in, shop};
use anyhow::{Context, Result, ensure};
use serde_json::{Value, json};

/// What the morning may cost.
const MOST_TAPS: u32 = 22;
const MOST_FIELDS: u32 = 4;

/// The time zone in which it is seven in the morning now, as the tz database names it: with the
/// sign turned round.
fn where_it_is_seven() -> String {
    let now = jiff::Timestamp::now().to_zoned_datetime(jiff::tz::TimeZone::UTC);
    match 7 - i32::from(now.hour()) {
        0 => "Etc/GMT".to_owned(),
        ahead @ 1.. => format!("Etc/GMT-{ahead}"),
        behind @ -12.. => format!("Etc/GMT+{}", -behind),
        // A day ahead in place of more than half a day behind.
        behind => format!("Etc/GMT-{}", behind + 24),
    }
}

/// So many hours from now, as it is stored.
fn hours_ahead(hours: i64) -> Result<String> {
    let at = jiff::Timestamp::now().checked_add(jiff::SignedDuration::from_hours(hours))?;
    Ok(at.to_string())
}

/// The day after so many, at the shop.
fn day_ahead(zone: &str, days: i64) -> Result<String> {
    let now = jiff::Timestamp::now().to_zoned_datetime(jiff::tz::TimeZone::get(zone)?);
    let day = now.date().checked_add(jiff::Span::new().days(days))?;
    Ok(day.to_string())
}

/// Three vehicles: a van apart on the lift whose bearing comes in three days, a hatch that Tomas
/// is to do, an estate that needs the lift.
fn what_was_told_yesterday(owner: &Hand<'_>, zone: &str) -> Result<()> {
    let browser = &owner.browser;
    let mut device = Device::of(browser)?;
    owner.go("/shop")?;
    let tomas = person(browser, "Tomas Berg")?;
    let stall = browser.execute(
        "return document.querySelector('details[id^=stall-]').id.slice('stall-'.length);",
        vec![],
    )?;
    let stall = stall.as_str().context("no stall")?.to_owned();
    let mut all = vec![
        device.command(
            "shop",
            "shop_fact",
            json!({ "hours-told": { "person": null, "week": "mon-sun 07:00-19:00", "after": [] } }),
        ),
        device.command(
            "shop",
            "shop_fact",
            json!({ "stall-added": { "stall": "flat", "name": words("Stall 2"), "sort": "flat" } }),
        ),
    ];
    let part = json!({ "part-needed": { "part": "hub", "line": null, "item": null,
        "label": words("wheel bearing"), "number": null, "quantity": "1", "cost": null,
        "price": null, "core": null, "has_old": false } });
    let ordered = json!({ "part-stepped": { "part": "hub", "quantity": "1", "step": "ordered",
        "due": day_ahead(zone, 3)?, "words": null } });
    let left = |minutes: &str, stall: &str| {
        json!({ "work-left": { "minutes": minutes, "least": minutes, "most": minutes,
            "skill": null, "stall": stall, "after": [] } })
    };
    let promised =
        |hours: i64| -> Result<Value> { Ok(json!({ "promised": { "at": hours_ahead(hours)? } })) };
    for (order, customer, vehicle, told) in [
        (
            "van",
            "Ruth Amsel",
            "Halden Courier van",
            vec![
                json!({ "stood": { "place": { "stall": stall } } }),
                json!({ "declared": { "item": { "id": "wheel", "kind": "part", "system": "wheels",
                    "zone": "outside", "label": words("front wheel"), "size": null,
                    "pieces": [{ "position": 1, "length": null }], "pattern": null,
                    "spent": false, "may_miss": null, "put_in": null, "holds": null } } }),
                json!({ "moved": { "stage": null, "moves": [{ "item": "wheel", "at": [1], "after": [],
                    "left": { "state": "off", "piece": "original" }, "container": null }] } }),
                part,
                ordered,
                left("90", "any"),
                promised(24 * 5)?,
            ],
        ),
        (
            "hatch",
            "Olle Ahl",
            "Brant Piko",
            vec![
                json!({ "stood": { "place": { "stall": "flat" } } }),
                json!({ "assigned": { "person": tomas } }),
                left("60", "flat"),
                promised(4)?,
            ],
        ),
        (
            "estate",
            "Ida Vance",
            "Marlow 3 estate",
            vec![left("120", "lift"), promised(8)?],
        ),
    ] {
        all.extend(device.checked_in(order, customer, vehicle));
        let stream = format!("order:{order}");
        all.extend(
            told.into_iter()
                .map(|fact| device.command(&stream, "fact", fact)),
        );
    }
    send(browser, &all)
}

/// The van goes back together as far as it rolls.
fn buttoned_up(owner: &Hand<'_>) -> Result<()> {
    let seen = owner.browser.execute_until_called_back(
        "const done = arguments[arguments.length - 1];
         fetch('/api/orders/1001').then((answer) => answer.json())
           .then((order) => done(order.items.find((one) => one.item === 'wheel').seen), (error) => done(String(error)));",
        vec![],
    )?;
    let mut device = Device::of(&owner.browser)?;
    device.goes_on_from(500);
    let on = device.command(
        "order:van",
        "fact",
        json!({ "moved": { "stage": null, "moves": [{ "item": "wheel", "at": [1], "after": seen,
            "left": { "state": "on", "piece": "original" }, "container": null }] } }),
    );
    send(&owner.browser, &[on])
}

#[test]
fn the_owners_morning() -> Result<()> {
    let shop = shop()?;
    let zone = where_it_is_seven();
    let owner = owner_in(&shop, "Ines Falk", "Tomas Berg", Some(&zone))?;
    what_was_told_yesterday(&owner, &zone)?;

    // There is one place outside, and the owner tells it where stalls are told.
    owner.go("/shop")?;
    owner.write("Another stall", "By the fence")?;
    owner.choose("outside")?;
    owner.tap_for("Add the stall", "By the fence")?;
    let before = owner.counted();

    // Who stands where, who works on what, what waits, what was promised and how sure it is.
    owner.follow_only("Day")?;
    owner.sees("Promises")?;
    for told in [
        "Halden Courier van",
        "Brant Piko",
        "Marlow 3 estate",
        "wheel bearing",
    ] {
        owner.sees(told)?;
    }
    let drawn = owner.browser.execute(
        "return [...document.querySelectorAll('.not-wide svg text')].map((one) => one.textContent).join('|');",
        vec![],
    )?;
    let drawn = drawn.as_str().unwrap_or_default().to_owned();
    for told in ["Tomas", "Ines", "Halden Courier van", "Brant Piko"] {
        ensure!(drawn.contains(told), "no {told} in {drawn}");
    }
    // The hatch is in time; the estate waits for the lift that the van holds.
    owner.sees("Nearly always kept")?;
    owner.sees("Hardly ever kept")?;

    // Tomas is ill: the day is laid anew, and it is said who has to be rung.
    owner.follow_only("The shop")?;
    owner.unfold("Tomas Berg")?;
    owner.tap_for("Not here today", "Days off: ")?;
    owner.follow_only("Day")?;
    owner.sees("Ring Olle Ahl")?;
    owner.sees("To keep it (nearly always kept):")?;
    owner.sees("Ines Falk does work on 1002 Brant Piko")?;

    // The van: button it up, or keep the lift?
    owner.follow("1001 Halden Courier van Ruth Amsel")?;
    owner.sees("Button it up, or keep the stall?")?;
    owner.write("Minutes to button it up", "20")?;
    owner.write("Minutes to be as far again", "20")?;
    owner.tap("What does it do?")?;
    owner.sees("Button it up and roll it out of Stall 1: fewer promises break.")?;
    // Whoever does it does it; then the owner says where it was put.
    buttoned_up(&owner)?;
    owner.follow("Where it stands, who, when")?;
    owner.tap("By the fence")?;
    owner
        .browser
        .by_role_containing("DisclosureTriangle", "By the fence")?;
    owner.follow_only("Day")?;
    owner
        .browser
        .wait_until(|| Ok((!owner.says("Ring Ida Vance")?).then_some(())))?;

    // Somebody asks whether theirs could be done today.
    owner.follow("Fit one in?")?;
    owner.write("Minutes of work", "45")?;
    owner.choose("any stall")?;
    owner.tap_for("Could we?", "What it does to the others")?;
    ensure!(
        owner.says("Yes: no promise suffers.")? || owner.says("Yes, at the cost of others.")?,
        "{}",
        owner.browser.text()?
    );

    // Ida Vance is on the phone: she hears a time, and how sure it is is known.
    owner.follow_only("Day")?;
    owner.follow("1003 Marlow 3 estate Ida Vance")?;
    owner.sees("Say ")?;
    let sure = owner.browser.execute(
        "return document.querySelector('.press.confirm small').textContent;",
        vec![],
    )?;
    let sure = sure.as_str().context("nothing is offered")?.to_owned();
    owner.tap(&sure)?;
    owner.sees("was promised")?;

    let (taps, fields) = owner.counted();
    let (taps, fields) = (taps - before.0, fields - before.1);
    println!("the owner's morning: {taps} taps, {fields} fields");
    ensure!(
        taps <= MOST_TAPS && fields <= MOST_FIELDS,
        "{taps} taps, {fields} fields"
    );
    owner.no_errors()
}
