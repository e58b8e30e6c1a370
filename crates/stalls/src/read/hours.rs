//! Local times and opening hours as people write them.

use std::fmt;

/// A time as the clock on the wall and the calendar show it.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, PartialOrd, Ord)]
pub struct Local {
    pub year: i16,
    pub month: i8,
    pub day: i8,
    pub hour: i8,
    pub minute: i8,
}

impl fmt::Display for Local {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        write!(
            f,
            "{:04}-{:02}-{:02}T{:02}:{:02}",
            self.year, self.month, self.day, self.hour, self.minute
        )
    }
}

/// Days that hours are laid on.
#[derive(Clone, Copy, Debug)]
pub(super) struct Days {
    pub(super) from: Local,
    pub(super) days: i64,
}

const WEEK: [&str; 7] = ["mon", "tue", "wed", "thu", "fri", "sat", "sun"];

/// Hours of some days of the week: `mon-fri 08:00-12:00`.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) struct Weekly {
    first: usize,
    last: usize,
    from: (i8, i8),
    to: (i8, i8),
}

impl Local {
    /// Reads `2026-11-30T08:10`; seconds may follow.
    pub(super) fn read(text: &str) -> Option<Self> {
        let (date, time) = text.trim().split_once(['T', 't', ' '])?;
        let (hour, minute) = clock(time)?;
        Some(Self {
            hour,
            minute,
            ..Self::date(date)?
        })
    }

    /// Reads `2026-11-30` as its first minute.
    pub(super) fn date(text: &str) -> Option<Self> {
        let mut parts = text.trim().split('-');
        let (year, month, day) = (parts.next()?, parts.next()?, parts.next()?);
        let date = Self {
            year: year.parse().ok()?,
            month: month.parse().ok()?,
            day: day.parse().ok()?,
            hour: 0,
            minute: 0,
        };
        let sound = year.len() == 4
            && parts.next().is_none()
            && (1..=12).contains(&date.month)
            && (1..=days_of(date.year, date.month)).contains(&date.day);
        sound.then_some(date)
    }

    /// The first minute so many days later.
    pub(super) fn days_later(self, days: i64) -> Self {
        let mut date = Self {
            hour: 0,
            minute: 0,
            ..self
        };
        for _ in 0..days {
            date.day += 1;
            if date.day > days_of(date.year, date.month) {
                date.day = 1;
                date.month += 1;
            }
            if date.month > 12 {
                date.month = 1;
                date.year += 1;
            }
        }
        date
    }

    /// The day of the week, Monday 0: Zeller's rule.
    fn weekday(self) -> usize {
        let early = self.month < 3;
        let year = i64::from(self.year) - i64::from(early);
        let month = i64::from(self.month) + if early { 12 } else { 0 };
        let saturday_is_0 =
            i64::from(self.day) + (13 * (month + 1)).div_euclid(5) + year + year.div_euclid(4)
                - year.div_euclid(100)
                + year.div_euclid(400);
        usize::try_from((saturday_is_0 + 5).rem_euclid(7)).unwrap_or(0)
    }

    fn at(self, (hour, minute): (i8, i8)) -> Self {
        Self {
            hour,
            minute,
            ..self
        }
    }
}

fn days_of(year: i16, month: i8) -> i8 {
    match month {
        4 | 6 | 9 | 11 => 30,
        2 if year % 4 == 0 && (year % 100 != 0 || year % 400 == 0) => 29,
        2 => 28,
        _ => 31,
    }
}

/// Reads `08:10`; seconds may follow.
fn clock(text: &str) -> Option<(i8, i8)> {
    let mut parts = text.trim().split(':');
    let (hour, minute) = (parts.next()?.parse().ok()?, parts.next()?.parse().ok()?);
    let end = (hour, minute) == (24, 0);
    ((0..24).contains(&hour) && (0..60).contains(&minute) || end).then_some((hour, minute))
}

impl Weekly {
    /// Reads `mon-fri 08:00-12:00`, `sat 09:00-13:00`, or `08:00-12:00` for every day.
    pub(super) fn read(text: &str) -> Option<Self> {
        let text = text.trim().to_ascii_lowercase();
        let (days, hours) = match text.split_once(' ') {
            Some((days, hours)) => (days.trim().to_owned(), hours.trim().to_owned()),
            None => ("mon-sun".to_owned(), text),
        };
        let day = |name: &str| {
            let start = name.trim().get(..3)?;
            WEEK.iter().position(|day| *day == start)
        };
        let (first, last) = match days.split_once('-') {
            Some((first, last)) => (day(first)?, day(last)?),
            None => (day(&days)?, day(&days)?),
        };
        let (from, to) = hours.split_once('-')?;
        let (from, to) = (clock(from)?, clock(to)?);
        (from < to).then_some(Self {
            first,
            last,
            from,
            to,
        })
    }

    fn has(&self, weekday: usize) -> bool {
        if self.first <= self.last {
            (self.first..=self.last).contains(&weekday)
        } else {
            weekday >= self.first || weekday <= self.last
        }
    }

    /// Its spans on these days. Midnight at a day's end is the next day's first minute.
    pub(super) fn spans(self, days: Days) -> impl Iterator<Item = (Local, Local)> {
        (0..days.days)
            .map(move |day| (day, days.from.days_later(day)))
            .filter(move |(_, date)| self.has(date.weekday()))
            .map(move |(day, date)| {
                let to = if self.to == (24, 0) {
                    days.from.days_later(day + 1)
                } else {
                    date.at(self.to)
                };
                (date.at(self.from), to)
            })
    }
}

#[cfg(test)]
mod tests {
    use super::{Days, Local, Weekly};

    #[test]
    fn times_as_written() {
        let read = |text: &str| Local::read(text).map(|local| local.to_string());
        assert_eq!(
            read("2026-11-30T08:10").as_deref(),
            Some("2026-11-30T08:10")
        );
        assert_eq!(
            read("2026-11-30 08:10:00").as_deref(),
            Some("2026-11-30T08:10")
        );
        for wrong in [
            "2026-02-29T08:00",
            "2026-11-31T08:00",
            "2026-11-30",
            "26-11-30T08:00",
            "2026-11-30T25:00",
            "soon",
        ] {
            assert_eq!(read(wrong), None, "{wrong}");
        }
        assert_eq!(
            Local::date("2028-02-28").unwrap().days_later(2).to_string(),
            "2028-03-01T00:00"
        );
        assert_eq!(
            Local::date("2026-12-31").unwrap().days_later(1).to_string(),
            "2027-01-01T00:00"
        );
        // 30 November 2026 is a Monday, 29 February 2028 a Tuesday.
        assert_eq!(Local::date("2026-11-30").unwrap().weekday(), 0);
        assert_eq!(Local::date("2028-02-29").unwrap().weekday(), 1);
        assert_eq!(Local::date("2026-01-04").unwrap().weekday(), 6);
    }

    #[test]
    fn hours_of_the_week() {
        let days = Days {
            from: Local::read("2026-11-30T08:10").unwrap(),
            days: 7,
        };
        let spans = |text: &str| -> Vec<String> {
            let weekly = Weekly::read(text).unwrap();
            weekly
                .spans(days)
                .map(|(from, to)| format!("{from} {to}"))
                .collect()
        };
        assert_eq!(spans("mon-fri 08:00-12:00").len(), 5);
        assert_eq!(spans("08:00-12:00").len(), 7);
        assert_eq!(spans("Sat-Mon 08:00-12:00").len(), 3);
        assert_eq!(
            spans("sun 20:00-24:00"),
            ["2026-12-06T20:00 2026-12-07T00:00"]
        );
        for wrong in ["mon 12:00-08:00", "mon-xyz 08:00-12:00", "mon", "08:00"] {
            assert_eq!(Weekly::read(wrong), None, "{wrong}");
        }
    }
}
