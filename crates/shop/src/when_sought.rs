//! A day or a month that somebody looks for, in the words people write it.

use crate::say::dates;
use crate::say::in_each::InEach;
use jiff::Timestamp;
use jiff::civil::Date;
use jiff::tz::TimeZone;
use phrases::Language;
use std::ops::{Range, RangeInclusive};

/// Of which years a shop has orders; other figures are no year.
const YEARS: RangeInclusive<i16> = 1990..=2100;

/// The time that words mean: a day (`2 March 2026`, `2.3.2026`, `2026-03-02`) or a month
/// (`March 2026`, `3/2026`, `2026-03`); nothing if they are no date. Months go by their names in
/// every language. Where both could be the month, the day stands first.
pub(crate) fn time_sought(words: &str, zone: &TimeZone) -> Option<Range<Timestamp>> {
    let (first, after) = days(words)?;
    let start = |date: Date| zone.to_timestamp(date.at(0, 0, 0, 0)).ok();
    Some(start(first)?..start(after)?)
}

/// The first day, and the one after the last.
fn days(words: &str) -> Option<(Date, Date)> {
    // A telephone number may be written with strokes as well, and has no three such figures.
    let parts: Vec<&str> = words
        .split(|c: char| !c.is_alphanumeric())
        .filter(|part| !part.is_empty())
        .collect();
    let number = |part: &str| -> Option<i16> {
        let is_short = part.len() <= 4 && part.bytes().all(|byte| byte.is_ascii_digit());
        is_short.then(|| part.parse().ok()).flatten()
    };
    let is_year = |part: &str| number(part).is_some_and(|year| YEARS.contains(&year));
    let figure = |part: &str| number(part).filter(|_| part.len() <= 2);
    let month = |part: &str| figure(part).or_else(|| month_named(part));
    let (year, month, day) = match parts.as_slice() {
        [year, middle] if is_year(year) => (number(year)?, month(middle)?, None),
        [middle, year] if is_year(year) => (number(year)?, month(middle)?, None),
        [year, middle, day] if is_year(year) => (number(year)?, month(middle)?, Some(figure(day)?)),
        [one, other, year] if is_year(year) => {
            let year = number(year)?;
            match (figure(one), month(other)) {
                (Some(day), Some(month)) if month <= 12 => (year, month, Some(day)),
                // The month first.
                _ => (year, month(one)?, Some(figure(other)?)),
            }
        }
        _ => return None,
    };
    let date = |day: i16| {
        let month = i8::try_from(month).ok()?;
        Date::new(year, month, i8::try_from(day).ok()?).ok()
    };
    let first = date(day.unwrap_or(1))?;
    let after = match day {
        Some(_) => first.tomorrow().ok()?,
        None => first.last_of_month().tomorrow().ok()?,
    };
    Some((first, after))
}

/// The month of a name, whole or short, in whatever language.
fn month_named(word: &str) -> Option<i16> {
    let word = word.to_lowercase();
    let is_called = |month: i8| {
        let date = Date::new(2000, month, 1).ok()?;
        let names = [
            InEach::of(|| dates::month(date)),
            InEach::of(|| dates::short_month(date)),
        ];
        let is_it = |name: &str| name.trim_end_matches('.').to_lowercase() == word;
        let mut said = names
            .iter()
            .flat_map(|name| Language::ALL.map(|language| is_it(name.said(language))));
        said.any(|is_it| is_it).then_some(i16::from(month))
    };
    (1..=12).find_map(is_called)
}

#[cfg(test)]
mod tests {
    use super::*;

    fn sought(words: &str) -> Option<String> {
        let (first, after) = days(words)?;
        Some(format!("{first} {after}"))
    }

    #[test]
    fn a_day_is_read_however_it_is_written() {
        for words in [
            "2026-03-02",
            "2026/3/2",
            "2.3.2026",
            "02.03.2026",
            "2/3/2026",
            "2 March 2026",
            "2. März 2026",
            "Mar 2, 2026",
            "2 mar 2026",
        ] {
            assert_eq!(
                sought(words).as_deref(),
                Some("2026-03-02 2026-03-03"),
                "{words}"
            );
        }
        // No month is the thirteenth.
        assert_eq!(
            sought("3/13/2026").as_deref(),
            Some("2026-03-13 2026-03-14")
        );
    }

    #[test]
    fn a_month_is_read_as_all_its_days() {
        for words in ["2026-12", "December 2026", "Dez. 2026", "12/2026"] {
            assert_eq!(
                sought(words).as_deref(),
                Some("2026-12-01 2027-01-01"),
                "{words}"
            );
        }
    }

    #[test]
    fn what_is_no_date_is_looked_for_as_it_stands() {
        for words in [
            "",
            "1002",
            "1002 12",
            "2026",
            "KD 2302",
            "M8x75",
            "0151 234 5678",
            "31.2.2026",
            "45.3.2026",
            "March",
            "Joe Field 2026",
            "2026-13",
            "0-0-2026",
            "12 34 56",
        ] {
            assert_eq!(sought(words), None, "{words}");
        }
    }

    #[test]
    fn a_day_begins_and_ends_by_the_shop_s_clock() {
        let zone = TimeZone::get("America/Denver").unwrap();
        let day = time_sought("2026-03-08", &zone).unwrap();
        let hours = (day.end.as_second() - day.start.as_second()) / 3600;
        assert_eq!(hours, 23, "the clocks went forward");
        assert_eq!(day.start.to_string(), "2026-03-08T07:00:00Z");
    }
}
