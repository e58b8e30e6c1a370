//! The hours of a week, as a shop writes them beside its door.

use crate::phrases as say;
use jiff::civil::Weekday;
use phrases::{Language, Say, spoken};
use std::fmt;

/// A span of one day: from a minute of the day to another, the last not within.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub struct DaySpan {
    /// Days since Monday.
    day: u8,
    pub from: u16,
    pub to: u16,
}

impl DaySpan {
    /// The day it is on.
    #[must_use]
    pub fn weekday(&self) -> Weekday {
        DAYS[usize::from(self.day) % DAYS.len()].1
    }
}

/// Hours of a week, such as `mon-fri 08:00-12:00, 12:30-17:00; sat 09:00-13:00`.
#[derive(Debug, Clone, Default, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub struct Week {
    /// In sequence, apart.
    spans: Vec<DaySpan>,
}

const DAYS: [(&str, Weekday); 7] = [
    ("mon", Weekday::Monday),
    ("tue", Weekday::Tuesday),
    ("wed", Weekday::Wednesday),
    ("thu", Weekday::Thursday),
    ("fri", Weekday::Friday),
    ("sat", Weekday::Saturday),
    ("sun", Weekday::Sunday),
];

/// Longer than any week that somebody writes.
const LONGEST: usize = 1_000;

impl Week {
    /// The spans, from Monday on.
    #[must_use]
    pub fn spans(&self) -> &[DaySpan] {
        &self.spans
    }

    /// Reads the hours of a week: days, then their times, then other days. Days may be named in
    /// any language that the program speaks, short or whole.
    ///
    /// # Errors
    /// What is wrong, and how to write it.
    pub fn read(text: &str) -> Result<Self, String> {
        if text.len() > LONGEST {
            return Err(say::week_too_long(text.len(), LONGEST));
        }
        let how = say::how_a_week_is_written;
        let parts = parts(text)?;
        let mut days: Vec<u8> = Vec::new();
        let mut timed = true;
        let mut spans = Vec::new();
        let mut left = parts.as_slice();
        loop {
            left = match left {
                [] => break,
                [Part::Day(first, word), Part::To, rest @ ..] => {
                    let [Part::Day(last, until), rest @ ..] = rest else {
                        return Err(say::no_day(format!("{word}-"), how()));
                    };
                    if first > last {
                        return Err(say::goes_backwards(format!("{word}-{until}")));
                    }
                    if std::mem::take(&mut timed) {
                        days.clear();
                    }
                    days.extend(*first..=*last);
                    rest
                }
                [Part::Day(day, _), rest @ ..] => {
                    if std::mem::take(&mut timed) {
                        days.clear();
                    }
                    days.push(*day);
                    rest
                }
                [
                    Part::Time(from, word),
                    Part::To,
                    Part::Time(to, until),
                    rest @ ..,
                ] => {
                    let word = format!("{word}-{until}");
                    if from >= to {
                        return Err(say::ends_before_it_begins(word));
                    }
                    if days.is_empty() {
                        return Err(say::before_any_day(word, how()));
                    }
                    timed = true;
                    spans.extend(days.iter().map(|day| DaySpan {
                        day: *day,
                        from: *from,
                        to: *to,
                    }));
                    rest
                }
                [Part::Closed, rest @ ..] => {
                    timed = true;
                    rest
                }
                [Part::Time(_, word), ..] => return Err(say::no_hours(word, how())),
                [Part::To, ..] => return Err(say::no_hours("-", how())),
            };
        }
        if spans.is_empty() || !timed {
            return Err(say::days_without_hours(how()));
        }
        Ok(Self {
            spans: apart(spans),
        })
    }

    /// The hours as what is spoken writes them, read again as they are: `Mo-Fr 8-12, 12:30-17`.
    #[must_use]
    pub fn said(&self) -> String {
        const SAID: [Say; 7] = [
            say::mon,
            say::tue,
            say::wed,
            say::thu,
            say::fri,
            say::sat,
            say::sun,
        ];
        let clock = match spoken() {
            Language::English => clock,
            Language::German => short_clock,
        };
        self.written(|day| SAID[usize::from(day) % SAID.len()](), clock)
    }

    /// Days with the same hours together.
    fn written(&self, name: impl Fn(u8) -> &'static str, clock: fn(u16) -> String) -> String {
        let of_day = |day: u8| -> Vec<String> {
            let own = self.spans.iter().filter(|span| span.day == day);
            own.map(|span| format!("{}-{}", clock(span.from), clock(span.to)))
                .collect()
        };
        let mut groups: Vec<(u8, u8, Vec<String>)> = Vec::new();
        for day in 0..7 {
            let hours = of_day(day);
            match groups.last_mut() {
                Some((_, last, same)) if *same == hours => *last = day,
                _ => groups.push((day, day, hours)),
            }
        }
        let written = groups.into_iter().filter(|(.., hours)| !hours.is_empty());
        let written = written.map(|(first, last, hours)| {
            let days = match last - first {
                0 => name(first).to_owned(),
                _ => format!("{}-{}", name(first), name(last)),
            };
            format!("{days} {}", hours.join(", "))
        });
        written.collect::<Vec<_>>().join("; ")
    }
}

/// What a text of hours is made of.
enum Part {
    /// A day, and how it was written.
    Day(u8, String),
    /// A minute of the day, and how it was written.
    Time(u16, String),
    /// From one to the other.
    To,
    /// The days before it have no hours.
    Closed,
}

/// What each day is called, whole; in short by its first letters.
const NAMES: [&[&str]; 7] = [
    &["monday", "montag"],
    &["tuesday", "dienstag"],
    &["wednesday", "mittwoch"],
    &["thursday", "donnerstag"],
    &["friday", "freitag"],
    &["saturday", "samstag", "sonnabend"],
    &["sunday", "sonntag"],
];

/// What each day is called in two letters, where more than one begins with them.
const IN_TWO_LETTERS: [(&str, u8); 11] = [
    ("mo", 0),
    ("tu", 1),
    ("di", 1),
    ("we", 2),
    ("mi", 2),
    ("th", 3),
    ("do", 3),
    ("fr", 4),
    ("sa", 5),
    ("su", 6),
    ("so", 6),
];

/// Words between two days or two times.
const TO: [&str; 6] = ["to", "until", "till", "through", "thru", "bis"];
/// Words that days without hours have.
const CLOSED: [&str; 4] = ["closed", "geschlossen", "ruhetag", "zu"];
/// Words that change nothing.
const BESIDE: [&str; 11] = [
    "and", "from", "on", "open", "und", "sowie", "von", "ab", "am", "uhr", "h",
];

fn parts(text: &str) -> Result<Vec<Part>, String> {
    let how = say::how_a_week_is_written;
    let mut parts = Vec::new();
    let mut left = text;
    while let Some(first) = left.chars().next() {
        let is_dash = |c: char| matches!(c, '-' | '\u{2013}' | '\u{2014}' | '\u{2212}');
        let is_apart = |c: char| c.is_whitespace() || ",;:.&+/|()".contains(c);
        if is_dash(first) {
            parts.push(Part::To);
        }
        if is_dash(first) || is_apart(first) {
            left = &left[first.len_utf8()..];
            continue;
        }
        // A time has its minutes behind a colon or a point.
        let timed = first.is_ascii_digit();
        let ends = |c: char| is_dash(c) || (is_apart(c) && !(timed && ":.".contains(c)));
        let (word, rest) = left.split_at(left.find(ends).unwrap_or(left.len()));
        left = rest;
        let small = word.to_lowercase();
        parts.push(if timed {
            let minute = minute(&small).ok_or_else(|| say::no_hours(word, how()))?;
            Part::Time(minute, word.to_owned())
        } else if TO.contains(&small.as_str()) {
            Part::To
        } else if CLOSED.contains(&small.as_str()) {
            Part::Closed
        } else if BESIDE.contains(&small.as_str()) {
            continue;
        } else {
            let day = day(&small).ok_or_else(|| say::no_day(word, how()))?;
            Part::Day(day, word.to_owned())
        });
    }
    Ok(parts)
}

/// The day that a word names, since Monday.
fn day(word: &str) -> Option<u8> {
    let short = IN_TWO_LETTERS.iter().find(|(name, _)| *name == word);
    let whole = |name: &&str| {
        // `thurs` and `montags` are said, too.
        (word.len() >= 3 && name.starts_with(word)) || word.strip_suffix('s') == Some(name)
    };
    let named = || (0..).zip(NAMES).find(|(_, names)| names.iter().any(whole));
    short
        .map(|(_, nth)| *nth)
        .or_else(|| named().map(|(nth, _)| nth))
        .or_else(|| (word == "weds").then_some(2))
}

/// Spans that overlap or touch become one.
fn apart(mut spans: Vec<DaySpan>) -> Vec<DaySpan> {
    spans.sort_unstable();
    spans.dedup_by(|next, before| {
        let touches = next.day == before.day && next.from <= before.to;
        if touches {
            before.to = before.to.max(next.to);
        }
        touches
    });
    spans
}

/// A minute of the day; 24:00 is its end. `8`, `8:30`, `8.30`, `8h30` and `8h` are one.
fn minute(text: &str) -> Option<u16> {
    let text = text.trim_end_matches([':', '.']);
    let text = text.strip_suffix("uhr").unwrap_or(text);
    let text = text.strip_suffix('h').unwrap_or(text);
    let (hours, minutes) = text.split_once([':', '.', 'h']).unwrap_or((text, "00"));
    let plain = |part: &str| {
        let digits = (1..=2).contains(&part.len()) && part.bytes().all(|c| c.is_ascii_digit());
        digits.then(|| part.parse::<u16>().ok()).flatten()
    };
    let (hours, minutes) = (plain(hours)?, plain(minutes)?);
    let minute = hours * 60 + minutes;
    (minutes < 60 && minute <= 24 * 60).then_some(minute)
}

impl fmt::Display for Week {
    /// As it is stored, and read again.
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(&self.written(|day| DAYS[usize::from(day) % DAYS.len()].0, clock))
    }
}

fn clock(minute: u16) -> String {
    format!("{:02}:{:02}", minute / 60, minute % 60)
}

/// The same without minutes where there are none.
fn short_clock(minute: u16) -> String {
    match minute % 60 {
        0 => (minute / 60).to_string(),
        minutes => format!("{}:{minutes:02}", minute / 60),
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use proptest::prelude::*;

    #[test]
    fn a_week_is_read_as_it_is_written_beside_a_door() {
        let week = Week::read("Mon-Fri 8-12, 12:30-17:00; Saturday 09:00-13:00").unwrap();
        assert_eq!(
            week.to_string(),
            "mon-fri 08:00-12:00, 12:30-17:00; sat 09:00-13:00"
        );
        assert_eq!(week.spans().len(), 11);
        assert_eq!(week.spans()[10].weekday(), Weekday::Saturday);
        assert_eq!((week.spans()[1].from, week.spans()[1].to), (750, 1020));
        // What touches is one span; days may be named one by one.
        let week = Week::read("tue thu 08:00-12:00 12:00-24:00").unwrap();
        assert_eq!(week.to_string(), "tue 08:00-24:00; thu 08:00-24:00");
    }

    #[test]
    fn days_are_named_in_german_as_well_whatever_is_spoken() {
        let weekdays = "mon-fri 08:00-17:00";
        for text in [
            "Mo-Fr 8-17",
            "Mo.-Fr. 8-17 Uhr",
            "Mo \u{2013} Fr: 8:00 \u{2013} 17:00 Uhr",
            "Montag bis Freitag 8 bis 17 Uhr",
            "montags bis freitags von 8.00 Uhr bis 17.00 Uhr",
            "Mo, Di, Mi, Do und Fr 8-17",
            "MO-FR 08:00-17:00; So geschlossen",
            "Monday to Friday 8-17",
            "Mon, Tues, Weds, Thurs, Fri 8h-17h",
            "mon bis fr 8-17",
        ] {
            for language in Language::ALL {
                let read = phrases::speaking(language, || Week::read(text));
                assert_eq!(
                    read.map(|week| week.to_string()).as_deref(),
                    Ok(weekdays),
                    "{text}"
                );
            }
        }
        let both = Week::read("Mo-Fr 8-12, 12:30-17; Sonnabend 9-13").unwrap();
        assert_eq!(
            both.to_string(),
            "mon-fri 08:00-12:00, 12:30-17:00; sat 09:00-13:00"
        );
        assert_eq!(both.said(), both.to_string());
        let german = phrases::speaking(Language::German, || both.said());
        assert_eq!(german, "Mo-Fr 8-12, 12:30-17; Sa 9-13");
        assert_eq!(Week::read(&german), Ok(both));
        let wrong =
            |text: &str| phrases::speaking(Language::German, || Week::read(text).unwrap_err());
        assert!(wrong("irgendwann 8-17").contains("ist kein Tag"));
        assert!(wrong("Fr-Mo 8-17").contains("läuft rückwärts"));
        assert!(wrong("So geschlossen").contains("fehlen die Uhrzeiten"));
        assert!(wrong("mittags 8-17").contains("ist kein Tag"));
    }

    #[test]
    fn what_is_no_week_is_told_with_the_word_and_how_to_write_it() {
        for (text, says) in [
            ("", "days without"),
            ("mon", "days without"),
            ("mon 08:00-12:00 tue", "days without"),
            ("08:00-12:00", "before any day"),
            ("someday 08:00-12:00", "is no day"),
            ("fri-mon 08:00-12:00", "backwards"),
            ("mon 12:00-08:00", "ends before it begins"),
            ("mon 08:00", "are no hours"),
            ("mon 25:00-26:00", "are no hours"),
            ("mon 08:70-09:00", "are no hours"),
            ("mon 8:0x-9", "are no hours"),
        ] {
            let told = Week::read(text).unwrap_err();
            assert!(told.contains(says), "{text:?}: {told}");
        }
    }

    proptest! {
        #[test]
        fn what_is_written_reads_the_same(
            spans in proptest::collection::vec((0_u8..7, 0_u16..1_440, 1_u16..600), 1..12),
        ) {
            let spans = spans.into_iter().map(|(day, from, long)| DaySpan {
                day, from, to: (from + long).min(24 * 60),
            });
            let week = Week { spans: apart(spans.collect()) };
            for language in Language::ALL {
                let said = phrases::speaking(language, || week.said());
                prop_assert_eq!(Week::read(&said), Ok(week.clone()));
            }
            prop_assert_eq!(Week::read(&week.to_string()), Ok(week));
        }

        #[test]
        fn anything_is_read_or_told(text in "\\PC{0,80}") {
            let _ = Week::read(&text);
        }
    }
}
