//! Days and times in the language that is spoken.

use crate::phrases::dates as words;
use jiff::ZonedDateTime;
use jiff::civil::{Date, Weekday};

type Name = fn() -> &'static str;

const SHORT_MONTHS: [Name; 12] = [
    words::short_january,
    words::short_february,
    words::short_march,
    words::short_april,
    words::short_may,
    words::short_june,
    words::short_july,
    words::short_august,
    words::short_september,
    words::short_october,
    words::short_november,
    words::short_december,
];

const MONTHS: [Name; 12] = [
    words::january,
    words::february,
    words::march,
    words::april,
    words::may,
    words::june,
    words::july,
    words::august,
    words::september,
    words::october,
    words::november,
    words::december,
];

fn named(all: [Name; 12], date: Date) -> &'static str {
    let nth = usize::try_from(date.month() - 1).unwrap_or_default();
    all[nth]()
}

/// `Mon`.
pub(crate) fn short_weekday(date: Date) -> &'static str {
    match date.weekday() {
        Weekday::Monday => words::short_monday(),
        Weekday::Tuesday => words::short_tuesday(),
        Weekday::Wednesday => words::short_wednesday(),
        Weekday::Thursday => words::short_thursday(),
        Weekday::Friday => words::short_friday(),
        Weekday::Saturday => words::short_saturday(),
        Weekday::Sunday => words::short_sunday(),
    }
}

/// `Nov`.
pub(crate) fn short_month(date: Date) -> &'static str {
    named(SHORT_MONTHS, date)
}

/// `November`.
pub(crate) fn month(date: Date) -> &'static str {
    named(MONTHS, date)
}

/// `Mon 30 Nov`.
pub(crate) fn day(date: Date) -> String {
    words::day_and_month(short_weekday(date), date.day(), short_month(date))
}

/// `Monday 30 November`.
pub(crate) fn long_day(date: Date) -> String {
    let weekday = match date.weekday() {
        Weekday::Monday => words::monday(),
        Weekday::Tuesday => words::tuesday(),
        Weekday::Wednesday => words::wednesday(),
        Weekday::Thursday => words::thursday(),
        Weekday::Friday => words::friday(),
        Weekday::Saturday => words::saturday(),
        Weekday::Sunday => words::sunday(),
    };
    words::day_and_month(weekday, date.day(), named(MONTHS, date))
}

/// `Mon 03 Nov, 12:00`.
pub(crate) fn time(at: &ZonedDateTime) -> String {
    words::day_and_hour(padded_day(at.date()), at.strftime("%H:%M"))
}

/// `Mon 03 Nov 2026, 12:00`.
pub(crate) fn dated(at: &ZonedDateTime) -> String {
    words::day_year_and_hour(padded_day(at.date()), at.year(), at.strftime("%H:%M"))
}

/// `Mon 03 Nov`, where days stand below each other.
fn padded_day(date: Date) -> String {
    let day = format!("{:02}", date.day());
    words::day_and_month(short_weekday(date), day, short_month(date))
}
