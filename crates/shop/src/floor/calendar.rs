//! The shop's days as minutes: opening hours, closed days, and who is away when.

use crate::phrases::floor as words;
use crate::say::dates;
use jiff::civil::{Date, DateTime, Time};
use jiff::tz::TimeZone;
use jiff::{Timestamp, ToSpan, ZonedDateTime};
use repair::{PersonId, Rules, Shop, Week};
use stalls::{Minute, Windows};

/// So many days ahead are planned.
pub const DAYS: i64 = 14;

/// Where minutes are counted from: the midnight of today at the shop.
#[derive(Debug, Clone)]
pub struct Calendar {
    zone: TimeZone,
    today: Date,
    origin: i64,
}

impl Calendar {
    pub fn of(rules: &Rules) -> Self {
        let today = rules.today();
        let mut calendar = Self {
            zone: rules.zone.clone(),
            today,
            origin: 0,
        };
        calendar.origin = calendar.minute_of(today.to_datetime(Time::midnight()));
        calendar
    }

    /// What the clocks skip is the time after the gap; what they show twice the first of both.
    fn minute_of(&self, local: DateTime) -> Minute {
        let stamp = self.zone.to_ambiguous_timestamp(local).compatible();
        stamp.unwrap_or(Timestamp::MAX).as_second().div_euclid(60) - self.origin
    }

    pub fn minute(&self, at: Timestamp) -> Minute {
        at.as_second().div_euclid(60) - self.origin
    }

    pub fn time(&self, minute: Minute) -> Timestamp {
        let second = minute.saturating_add(self.origin).saturating_mul(60);
        Timestamp::from_second(second).unwrap_or(Timestamp::MAX)
    }

    fn zoned(&self, minute: Minute) -> ZonedDateTime {
        self.time(minute).to_zoned_datetime(self.zone.clone())
    }

    /// Hours since today's midnight, by the clock on the wall.
    #[allow(
        clippy::cast_precision_loss,
        reason = "minutes of some days are far below what a float counts"
    )]
    pub fn hour(&self, minute: Minute) -> f64 {
        let local = self.zoned(minute).datetime();
        let since = local.duration_since(self.today.to_datetime(Time::midnight()));
        since.as_mins() as f64 / 60.0
    }

    /// The hour today, the day as well on other days, the date after a week.
    pub fn say(&self, minute: Minute) -> String {
        let zoned = self.zoned(minute);
        let date = zoned.date();
        let days = self.today.until(date).map_or(0, |span| span.get_days());
        let hour = zoned.strftime("%H:%M");
        match days {
            0 => hour.to_string(),
            1..=6 => words::day_hour(dates::short_weekday(date), hour),
            _ => words::day_hour(dates::day(date), hour),
        }
    }

    /// For a program: local, with its offset.
    pub fn iso(&self, minute: Minute) -> String {
        self.zoned(minute).strftime("%Y-%m-%dT%H:%M%:z").to_string()
    }

    fn days(&self) -> impl Iterator<Item = Date> + '_ {
        (0..DAYS).filter_map(|days| self.today.checked_add(days.days()).ok())
    }

    /// The hours of a week on the days ahead.
    pub fn windows(&self, week: &Week) -> Windows {
        let spans = self.days().flat_map(|date| {
            let own = week
                .spans()
                .iter()
                .filter(move |span| span.weekday() == date.weekday());
            own.map(move |span| {
                let at = |minute: u16| {
                    let midnight = date.to_datetime(Time::midnight());
                    let local = midnight.checked_add(i64::from(minute).minutes());
                    self.minute_of(local.unwrap_or(DateTime::MAX))
                };
                (at(span.from), at(span.to))
            })
        });
        Windows::new(spans)
    }

    /// The days on which the shop is closed, or with a person on which they are not there.
    pub fn off(&self, shop: &Shop, of: Option<&PersonId>) -> Windows {
        let off = shop.days_off();
        let own = off.iter().filter(|one| one.person == of);
        Windows::new(own.map(|one| self.days_from(one.first, one.last)))
    }

    /// From the beginning of one day to the end of another.
    pub fn days_from(&self, first: Date, last: Date) -> (Minute, Minute) {
        let midnight = |date: Date| self.minute_of(date.to_datetime(Time::midnight()));
        let after = last.checked_add(1.day()).unwrap_or(Date::MAX);
        (midnight(first), midnight(after))
    }

    /// When the shop opens and closes on a day; on one on which it does not, on the next that
    /// it does.
    pub fn open_on(&self, opening: &Windows, date: Date) -> Option<(Minute, Minute)> {
        let first = opening.next_open(self.days_from(date, date).0)?;
        let date = self.zoned(first).date();
        let day = Windows::new([self.days_from(date, date)]);
        Some((first, opening.and(&day).end()?))
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn calendar(now: &str) -> Calendar {
        Calendar::of(&Rules {
            now: now.parse().unwrap(),
            zone: TimeZone::get("Europe/Lisbon").unwrap(),
            leeway: repair::price::Leeway::default(),
        })
    }

    #[test]
    fn minutes_count_from_the_midnight_of_the_shop() {
        let calendar = calendar("2026-06-01T07:30:00Z");
        let now = calendar.minute("2026-06-01T07:30:00Z".parse().unwrap());
        assert_eq!(now, 8 * 60 + 30);
        assert_eq!(calendar.say(now), "08:30");
        assert_eq!(calendar.say(now + 24 * 60), "Tue 08:30");
        assert_eq!(calendar.say(now + 8 * 24 * 60), "Tue 9 Jun 08:30");
        assert_eq!(calendar.iso(now), "2026-06-01T08:30+01:00");
        assert!((calendar.hour(now) - 8.5).abs() < 1e-9);
    }

    #[test]
    fn a_day_on_which_the_clocks_change_has_its_own_length() {
        // In Lisbon the clocks go back on 25 October 2026, at two in the night.
        let calendar = calendar("2026-10-24T10:00:00Z");
        let week = Week::read("mon 08:00-12:00; sat-sun 08:00-12:00").unwrap();
        let windows = calendar.windows(&week);
        let spans = &windows.spans()[..3];
        assert_eq!(
            spans,
            [
                (480, 720),
                (480 + 25 * 60, 720 + 25 * 60),
                (480 + 49 * 60, 720 + 49 * 60)
            ]
        );
        assert_eq!(calendar.say(spans[1].0), "Sun 08:00");
    }

    /// In the European Union the clocks go on at 01:00 UTC on the last Sunday of March and back at
    /// 01:00 UTC on the last of October (Directive 2000/84/EC, articles 2 and 3; memory).
    #[test]
    fn hours_over_a_change_of_the_clocks_are_as_long_as_they_are() {
        let week = Week::read("sun 00:00-04:00").unwrap();
        for (now, zone, open) in [
            ("2026-03-28T10:00:00Z", "Europe/Lisbon", 3 * 60),
            ("2026-10-24T10:00:00Z", "Europe/Lisbon", 5 * 60),
            ("2026-03-28T10:00:00Z", "Europe/Vienna", 3 * 60),
            ("2026-10-24T10:00:00Z", "Europe/Vienna", 5 * 60),
            ("2026-03-28T10:00:00Z", "Asia/Tokyo", 4 * 60),
        ] {
            let calendar = Calendar::of(&Rules {
                now: now.parse().unwrap(),
                zone: TimeZone::get(zone).unwrap(),
                leeway: repair::price::Leeway::default(),
            });
            let (from, to) = calendar.windows(&week).spans()[0];
            assert_eq!(to - from, open, "{zone} after {now}");
            assert_eq!(calendar.say(from), "Sun 00:00");
            assert_eq!(calendar.say(to), "Sun 04:00");
            // What was a moment before is the same after.
            for minute in from - 60..to + 60 {
                assert_eq!(calendar.minute(calendar.time(minute)), minute);
            }
        }
        // A time that the clocks skip is the one after the gap.
        let calendar = calendar("2026-03-28T10:00:00Z");
        let skipped = Week::read("sun 01:30-03:00").unwrap();
        let (from, to) = calendar.windows(&skipped).spans()[0];
        assert_eq!(
            (calendar.say(from), to - from),
            ("Sun 02:30".to_owned(), 30)
        );
    }
}
