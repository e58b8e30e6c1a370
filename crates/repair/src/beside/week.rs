//! The hours of a week, as a shop writes them beside its door.

use jiff::civil::Weekday;
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

    /// Reads the hours of a week: days, then their times, then other days.
    ///
    /// # Errors
    /// What is wrong, and how to write it.
    pub fn read(text: &str) -> Result<Self, String> {
        if text.len() > LONGEST {
            return Err(format!("{} bytes; at most {LONGEST} fit", text.len()));
        }
        let mut days: Vec<u8> = Vec::new();
        let mut timed = true;
        let mut spans = Vec::new();
        let words = text.split(|c: char| c.is_whitespace() || ",;".contains(c));
        for word in words.filter(|word| !word.is_empty()) {
            if word.starts_with(|c: char| c.is_ascii_digit()) {
                let (from, to) = times(word)?;
                if days.is_empty() {
                    return Err(format!("{word} stands before any day; {HOW}"));
                }
                timed = true;
                spans.extend(days.iter().map(|day| DaySpan {
                    day: *day,
                    from,
                    to,
                }));
            } else {
                if std::mem::take(&mut timed) {
                    days.clear();
                }
                days.extend(days_of(word)?);
            }
        }
        if spans.is_empty() || !timed {
            return Err(format!("days without their hours; {HOW}"));
        }
        Ok(Self {
            spans: apart(spans),
        })
    }
}

const HOW: &str = "write it like \"mon-fri 08:00-12:00, 12:30-17:00; sat 09:00-13:00\"";

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

fn day(word: &str) -> Result<u8, String> {
    let word = word.to_lowercase();
    let short: String = word.chars().take(3).collect();
    let found = (0..).zip(DAYS).find(|(_, (name, _))| *name == short);
    found
        .map(|(nth, _)| nth)
        .ok_or_else(|| format!("{word:?} is no day; {HOW}"))
}

fn days_of(word: &str) -> Result<Vec<u8>, String> {
    let Some((first, last)) = word.split_once('-') else {
        return Ok(vec![day(word)?]);
    };
    let (first, last) = (day(first)?, day(last)?);
    if first > last {
        return Err(format!(
            "{word} goes backwards; name the days from Monday on"
        ));
    }
    Ok((first..=last).collect())
}

fn times(word: &str) -> Result<(u16, u16), String> {
    let wrong = || format!("{word:?} are no hours; {HOW}");
    let (from, to) = word.split_once('-').ok_or_else(wrong)?;
    let (from, to) = (
        minute(from).ok_or_else(wrong)?,
        minute(to).ok_or_else(wrong)?,
    );
    if from >= to {
        return Err(format!(
            "{word} ends before it begins; hours past midnight belong to the next day"
        ));
    }
    Ok((from, to))
}

/// A minute of the day; 24:00 is its end.
fn minute(text: &str) -> Option<u16> {
    let (hours, minutes) = text.split_once(':').unwrap_or((text, "00"));
    let plain = |part: &str| {
        let digits = (1..=2).contains(&part.len()) && part.bytes().all(|c| c.is_ascii_digit());
        digits.then(|| part.parse::<u16>().ok()).flatten()
    };
    let (hours, minutes) = (plain(hours)?, plain(minutes)?);
    let minute = hours * 60 + minutes;
    (minutes < 60 && minute <= 24 * 60).then_some(minute)
}

impl fmt::Display for Week {
    /// Days with the same hours together, as they are read again.
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
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
            let name = |day: u8| DAYS[usize::from(day)].0;
            let days = match last - first {
                0 => name(first).to_owned(),
                _ => format!("{}-{}", name(first), name(last)),
            };
            format!("{days} {}", hours.join(", "))
        });
        f.write_str(&written.collect::<Vec<_>>().join("; "))
    }
}

fn clock(minute: u16) -> String {
    format!("{:02}:{:02}", minute / 60, minute % 60)
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
            prop_assert_eq!(Week::read(&week.to_string()), Ok(week));
        }

        #[test]
        fn anything_is_read_or_told(text in "\\PC{0,80}") {
            let _ = Week::read(&text);
        }
    }
}
