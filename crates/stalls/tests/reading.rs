//! Days from their text, and what is said of texts that are wrong.

#![allow(clippy::unwrap_used, reason = "a test fails by panicking")]

use proptest::prelude::*;
use stalls::{Does, Local, Minute, Read, StallNeed, Takes, WaitsFor, read};

/// A place without clock changes: minutes since the first of November 2026.
fn clock(local: Local) -> Result<Minute, String> {
    let days = match (local.year, local.month) {
        (2026, 11) => i64::from(local.day) - 1,
        (2026, 12) => 29 + i64::from(local.day),
        (2027, 1) => 60 + i64::from(local.day),
        _ => return Err(format!("{local} is not on this calendar")),
    };
    if (local.month, local.day, local.hour) == (12, 6, 2) {
        return Err(format!(
            "{local} does not exist: the clocks go forward and skip it"
        ));
    }
    Ok(days * 1440 + i64::from(local.hour) * 60 + i64::from(local.minute))
}

fn documented() -> String {
    let path = concat!(env!("CARGO_MANIFEST_DIR"), "/../../docs/day.md");
    let text = std::fs::read_to_string(path).unwrap();
    let (_, rest) = text.split_once("```toml\n").unwrap();
    rest.split_once("```").unwrap().0.to_owned()
}

fn good() -> Read {
    read("day.toml", &documented(), &clock).unwrap()
}

fn wrong(text: &str) -> String {
    let troubles = read("day.toml", text, &clock).unwrap_err();
    troubles
        .iter()
        .map(ToString::to_string)
        .collect::<Vec<_>>()
        .join("\n")
}

/// The documented day with one thing changed.
fn changed(from: &str, to: &str) -> String {
    let text = documented();
    assert!(text.contains(from), "{from}");
    wrong(&text.replacen(from, to, 1))
}

#[test]
fn the_documented_day_is_read() {
    let floor = good().floor;
    assert_eq!(good().warnings, []);
    assert_eq!(floor.faults(), []);
    assert_eq!(floor.now, 29 * 1440 + 490);
    // Ten days from a Monday: eight are working days, one of these is closed.
    assert_eq!(floor.opening.spans().len(), 14);
    assert_eq!(floor.opening.spans()[0], (29 * 1440 + 480, 29 * 1440 + 720));
    assert_eq!(floor.yard_places, Some(3));
    let lifts: Vec<bool> = floor
        .stalls
        .iter()
        .map(|stall| stall.lift.is_some())
        .collect();
    assert_eq!(lifts, [true, false, true]);
    assert_eq!(floor.stalls[1].crosses, [0]);
    assert_eq!(floor.stalls[2].held.as_deref(), Some("the boat"));
    assert_eq!(floor.people[1].hours.spans().len(), 7);
    assert_eq!(
        floor.people[1].away.spans(),
        [(30 * 1440 + 480, 30 * 1440 + 630)]
    );
    let van = &floor.orders[0];
    assert_eq!(
        (van.stands_in, van.rolls, van.promise_weight),
        (Some(0), false, 2)
    );
    let Does::Wait(wait) = &van.phases[0].does else {
        panic!("{van:?}")
    };
    assert_eq!(wait.waits_for, WaitsFor::Part);
    assert!(matches!(wait.takes, Takes::Comes(spread) if spread.likely == 31 * 1440 + 600));
    // A wait leaves it as it was, work makes it roll unless it is said.
    let rolls: Vec<bool> = van.phases.iter().map(|phase| phase.rolls).collect();
    assert_eq!(rolls, [false, true, true]);
    let Does::Work(drive) = &van.phases[2].does else {
        panic!("{van:?}")
    };
    assert!(drive.on_the_road && drive.stall == StallNeed::No);
    assert_eq!(
        floor.orders[2].arrives.map(|comes| comes.likely),
        Some(29 * 1440 + 780)
    );
    let plan = stalls::plan(&floor, None, 1, &mut |seen| seen < 50).unwrap();
    assert_eq!(plan.beyond, Vec::<usize>::new());
}

#[test]
fn every_fault_says_where_what_and_how_to_mend_it() {
    assert_eq!(
        changed("stands_in = \"stall 1\"", "stands_in = \"stall 9\""),
        "day.toml:37: `stands_in` of the van is the stall stall 9, and there is none; write one of stall 1, stall 2, stall 3"
    );
    for (from, to, said) in [
        (
            "minutes = [90, 110, 180]",
            "minutes = [90, 110]",
            "neither a whole number nor three; write minutes = 55",
        ),
        ("minutes = 20", "minute = 20", "did you mean `minutes`?"),
        (
            "kind = \"part\"",
            "kind = \"parcel\"",
            "`kind` of the van, cooler housing is \"parcel\", which is not known; write one of \"work\"",
        ),
        (
            "promise = \"2026-12-03T16:00\"",
            "promise = \"tomorrow\"",
            "is no local time; write it such as \"2026-11-30T08:10\"",
        ),
        (
            "cross = [\"stall 1\"]",
            "cross = [\"stall 7\"]",
            "names the stall stall 7, and there is none",
        ),
        (
            "\"mon-fri 08:00-12:00\"",
            "\"mon-fri 8 to 12\"",
            "are no hours; write hours = ",
        ),
        ("now = \"2026-11-30T08:10\"", "", "the file has no `now`"),
        ("name = \"the van\"\n", "", "has no `name`"),
        (
            "weight_kg = 2300",
            "weight_kg = -5",
            "is no such number; write a whole number from 1 to 100000",
        ),
        (
            "away = [[",
            "away = [[\"2026-12-01T12:00\", ",
            "is no list of times from and to",
        ),
        (
            "comes = \"2026-11-30T13:00\"",
            "comes = \"2026-12-06T02:30\"",
            "the clocks go forward and skip it",
        ),
        (
            "closed = [\"2026-12-08\"]",
            "closed = [\"8.12.\"]",
            "is no date",
        ),
        ("[[stall]]", "[stall]", ""),
        (
            "days = 10",
            "days = 0",
            "write a whole number from 1 to 366",
        ),
    ] {
        let text = changed(from, to);
        assert!(
            text.contains(said) && text.starts_with("day.toml:"),
            "{from} to {to}: {text}"
        );
    }
}

#[test]
fn a_key_that_is_not_known_is_a_warning() {
    let text = documented().replacen("[[stall]]", "colour = \"grey\"\n[[stall]]", 1);
    let warnings = read("day.toml", &text, &clock).unwrap().warnings;
    assert_eq!(warnings.len(), 1);
    assert!(
        warnings[0]
            .to_string()
            .contains("`colour` is no key of the file; it is not used")
    );
}

#[test]
fn times_without_quotes_are_read_as_well() {
    let text = documented().replacen("\"2026-11-30T08:10\"", "2026-11-30T08:10:00", 1);
    assert_eq!(read("day.toml", &text, &clock).unwrap().floor, good().floor);
    assert_eq!(stalls::now(&text), Some(good().now));
    assert_eq!(stalls::zone(&text).as_deref(), Some("Europe/Vienna"));
}

proptest! {
    #[test]
    fn no_text_brings_it_down(text in "\\PC{0,200}", at in 0_usize..2000, cut in 0_usize..40) {
        let _ = read("day.toml", &text, &clock);
        let good = documented();
        let at = good.char_indices().map(|one| one.0).nth(at % good.chars().count()).unwrap();
        let end = good.char_indices().map(|one| one.0).find(|end| *end >= at + cut).unwrap_or(good.len());
        let broken = format!("{}{}{}", &good[..at], text, &good[end..]);
        if let Ok(read) = read("day.toml", &broken, &clock) {
            let _ = stalls::plan(&read.floor, None, 1, &mut |seen| seen < 2);
        }
    }
}
