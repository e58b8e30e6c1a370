//! How the times turned out at which vehicles were to come.

#![allow(clippy::unwrap_used, reason = "a test fails by panicking")]

mod support;

use jiff::Timestamp;
use jiff::tz::TimeZone;
use repair::*;
use support::{Job, words};

/// What happens, and when by the clock of a shop one hour before UTC.
type Told<'a> = (&'a str, Did<'a>);

enum Did<'a> {
    /// A time is agreed.
    Agreed(&'a str),
    /// It stands in a stall.
    Stands,
    Away,
    KeysTaken,
    Voided,
}

fn time(local: &str) -> Timestamp {
    format!("2026-03-{local}+01:00").parse().unwrap()
}

/// How it turned out, looked at then.
fn turned_out(told: &[Told<'_>], looked: &str) -> Vec<Turnout> {
    let mut job = Job::new();
    job.rules.zone = TimeZone::fixed(jiff::tz::offset(1));
    for (at, did) in told {
        job.rules.now = time(at);
        match did {
            Did::Agreed(comes) => job.record(Fact::Expected {
                at: time(comes),
                after: vec![],
            }),
            Did::Stands => job.record(Fact::Stood {
                place: Place::Stall(StallId::new("lift")),
            }),
            Did::Away => job.record(Fact::Stood { place: Place::Away }),
            Did::KeysTaken => job.record(Fact::Keys {
                step: KeyStep::Taken,
                words: None,
            }),
            Did::Voided => job.ask(Request::Void { words: words(3) }).unwrap(),
        };
    }
    job.rules.now = time(looked);
    turnouts(&job.order, &job.rules)
}

#[test]
fn it_came_on_its_day_on_another_or_not_at_all() {
    use Did::{Away, KeysTaken, Stands};
    use Turnout::{AnotherDay, NotAtAll, OnTheDay};
    let rows: &[(&str, &[Told<'_>], &str, &[Turnout])] = &[
        ("nothing agreed", &[("02T09:00", Stands)], "09T08:00", &[]),
        ("its day is not over", &[agreed()], "04T23:59", &[]),
        ("it never came", &[agreed()], "05T00:00", &[NotAtAll]),
        (
            "on the hour",
            &[agreed(), ("04T10:00", Stands)],
            "04T10:05",
            &[OnTheDay],
        ),
        // By the shop's clock it is the fourth, by UTC the third.
        (
            "after midnight",
            &[agreed(), ("04T00:20", KeysTaken)],
            "05T08:00",
            &[OnTheDay],
        ),
        (
            "late on the day",
            &[agreed(), ("04T23:50", KeysTaken)],
            "05T08:00",
            &[OnTheDay],
        ),
        (
            "the day after",
            &[agreed(), ("05T00:10", Stands)],
            "05T08:00",
            &[AnotherDay],
        ),
        (
            "the day before",
            &[agreed(), ("03T17:00", Stands)],
            "03T18:00",
            &[AnotherDay],
        ),
        (
            "away says nothing",
            &[agreed(), ("04T10:00", Away)],
            "05T08:00",
            &[NotAtAll],
        ),
        // It was here before, and comes again.
        (
            "what was before",
            &[("02T08:30", Stands), agreed()],
            "05T08:00",
            &[NotAtAll],
        ),
    ];
    for (name, told, looked, turned) in rows {
        assert_eq!(turned_out(told, looked), *turned, "{name}");
    }
}

fn agreed<'a>() -> Told<'a> {
    ("02T09:00", Did::Agreed("04T10:00"))
}

#[test]
fn a_time_that_was_changed_before_its_day_does_not_count() {
    use Did::{Agreed, Stands, Voided};
    use Turnout::{AnotherDay, NotAtAll, OnTheDay};
    let rows: &[(&str, &[Told<'_>], &str, &[Turnout])] = &[
        (
            "the evening before, then it comes",
            &[
                agreed(),
                ("03T19:00", Agreed("06T08:00")),
                ("06T08:10", Stands),
            ],
            "09T08:00",
            &[OnTheDay],
        ),
        (
            "on the day itself: the stall stood empty",
            &[
                agreed(),
                ("04T09:00", Agreed("06T08:00")),
                ("06T08:10", Stands),
            ],
            "09T08:00",
            &[AnotherDay, OnTheDay],
        ),
        (
            "after it did not come, and then neither",
            &[agreed(), ("05T09:00", Agreed("06T08:00"))],
            "09T08:00",
            &[NotAtAll, NotAtAll],
        ),
        (
            "another hour of the day counts once",
            &[
                agreed(),
                ("04T09:50", Agreed("04T14:00")),
                ("04T14:10", Stands),
            ],
            "09T08:00",
            &[OnTheDay],
        ),
        (
            "it is here, and comes again another week",
            &[
                agreed(),
                ("04T10:10", Stands),
                ("05T09:00", Agreed("12T08:00")),
                ("12T08:05", Stands),
            ],
            "13T08:00",
            &[OnTheDay, OnTheDay],
        ),
        (
            "voided before",
            &[agreed(), ("03T09:00", Voided)],
            "09T08:00",
            &[],
        ),
        (
            "voided after it did not come",
            &[agreed(), ("05T09:00", Voided)],
            "09T08:00",
            &[NotAtAll],
        ),
    ];
    for (name, told, looked, turned) in rows {
        assert_eq!(turned_out(told, looked), *turned, "{name}");
    }
}
