//! Fields of a day: names of stalls and people, local times, hours, spreads.

use super::hours::{Days, Local, Weekly};
use super::{Clock, spread_of};
use crate::phrases::read as say;
use crate::spread::Spread;
use crate::windows::{Minute, Windows};
use fields::Fields;
use std::ops::{Deref, DerefMut, Range as Span, RangeInclusive};
use toml_edit::{Item, Value};

/// What is wrong so far, and the clock that local times are told by.
pub(super) struct Book<'b, 'a> {
    wrong: &'b mut fields::Book<'a>,
    clock: Clock<'b>,
}

impl<'a> Deref for Book<'_, 'a> {
    type Target = fields::Book<'a>;

    fn deref(&self) -> &Self::Target {
        self.wrong
    }
}

impl DerefMut for Book<'_, '_> {
    fn deref_mut(&mut self) -> &mut Self::Target {
        self.wrong
    }
}

impl<'b, 'a> Book<'b, 'a> {
    pub(super) fn new(wrong: &'b mut fields::Book<'a>, clock: Clock<'b>) -> Self {
        Self { wrong, clock }
    }

    pub(super) fn missing(&mut self, fields: &Fields, key: &str, what: &str) {
        self.wrong.wrong(
            fields.place(),
            say::has_no(&fields.name, key),
            say::add_key(key, what),
        );
    }

    /// A local time in minutes; one that does not exist is told, and taken as 0.
    pub(super) fn minute(&mut self, fields: &Fields, key: &str, local: Local) -> Minute {
        match (self.clock)(local) {
            Ok(minute) => minute,
            Err(what) => {
                self.wrong.wrong(
                    fields.at(key),
                    say::key_of(key, &fields.name, what),
                    say::a_time_of_that_day().to_owned(),
                );
                0
            }
        }
    }
}

/// What a day's tables are asked for beside what every table is.
pub(super) trait DayFields {
    /// A whole number within a range.
    fn between(&self, key: &str, range: RangeInclusive<i64>, book: &mut Book) -> Option<i64>;
    fn texts(&self, key: &str, book: &mut Book) -> Vec<String>;

    /// Places in a list of names.
    fn names(&self, key: &str, known: &[String], sort: &str, book: &mut Book) -> Vec<usize>;

    fn one_name(&self, key: &str, known: &[String], sort: &str, book: &mut Book) -> Option<usize>;

    /// Minutes: one number, or least, likely and most.
    fn spread(&self, key: &str, book: &mut Book) -> Option<Spread>;

    /// A local time as it is written.
    fn local(&self, key: &str, book: &mut Book) -> Option<Local>;

    /// A local time in minutes.
    fn moment(&self, key: &str, book: &mut Book) -> Option<Minute>;

    /// One local time, or the earliest, likely and latest, in minutes.
    fn moments(&self, key: &str, book: &mut Book) -> Option<Spread>;

    /// Hours by days of the week, laid on these days.
    fn hours(&self, key: &str, days: Days, book: &mut Book) -> Option<Windows>;

    /// The edge of weekly hours: where the clocks go forward, what is skipped is the next minute
    /// that exists.
    fn edge(&self, local: Local, book: &mut Book) -> Minute;

    /// Spans of local times, each [from, to].
    fn spans(&self, key: &str, book: &mut Book) -> Windows;

    /// Whole days.
    fn days(&self, key: &str, book: &mut Book) -> Windows;

    /// The texts of a list, or of one text alone.
    fn list(&self, key: &str, mend: &str, book: &mut Book) -> Vec<(String, Option<Span<usize>>)>;
}

impl DayFields for Fields<'_> {
    fn between(&self, key: &str, range: RangeInclusive<i64>, book: &mut Book) -> Option<i64> {
        let item = self.item(key)?;
        let whole = item.as_integer().filter(|whole| range.contains(whole));
        if whole.is_none() {
            let (least, most) = (range.start(), range.end());
            let mend = say::whole_from_to(least, most);
            self.unsound(key, say::no_such_number(), mend, book);
        }
        whole
    }

    fn texts(&self, key: &str, book: &mut Book) -> Vec<String> {
        let mend = say::write_a_list(key);
        let list = self.list(key, &mend, book);
        list.into_iter().map(|one| one.0).collect()
    }

    fn names(&self, key: &str, known: &[String], sort: &str, book: &mut Book) -> Vec<usize> {
        let mend = say::each_name_in_quotes(sort);
        let mut found = Vec::new();
        for (name, span) in self.list(key, &mend, book) {
            match known.iter().position(|one| *one == name) {
                Some(at) => found.push(at),
                None => book.wrong(
                    span.or_else(|| self.at(key)),
                    say::names_none(key, &self.name, sort, &name),
                    say::write_one_of(known.join(", ")),
                ),
            }
        }
        found
    }

    fn one_name(&self, key: &str, known: &[String], sort: &str, book: &mut Book) -> Option<usize> {
        let name = self.text(key, book)?;
        let at = known.iter().position(|one| *one == name);
        if at.is_none() {
            let what = say::and_there_is_none(sort, &name);
            self.unsound(key, &what, say::write_one_of(known.join(", ")), book);
        }
        at
    }

    fn spread(&self, key: &str, book: &mut Book) -> Option<Spread> {
        let item = self.item(key)?;
        let numbers = match item.as_array() {
            Some(array) => array
                .iter()
                .map(Value::as_integer)
                .collect::<Option<Vec<_>>>(),
            None => item.as_integer().map(|one| vec![one]),
        };
        let spread = numbers.and_then(|numbers| spread_of(&numbers));
        if spread.is_none() {
            let mend = say::write_minutes(key);
            self.unsound(key, say::neither_whole_nor_three(), mend, book);
        }
        spread
    }

    fn local(&self, key: &str, book: &mut Book) -> Option<Local> {
        let local = local(self.item(key)?);
        if local.is_none() {
            self.unsound(
                key,
                say::no_local_time(),
                say::write_it_such_as().to_owned(),
                book,
            );
        }
        local
    }

    fn moment(&self, key: &str, book: &mut Book) -> Option<Minute> {
        let local = self.local(key, book)?;
        Some(book.minute(self, key, local))
    }

    fn moments(&self, key: &str, book: &mut Book) -> Option<Spread> {
        let mend = say::write_times(key);
        if !self.has(key) {
            return None;
        }
        let wrong = book.faults();
        let list = self.list(key, &mend, book);
        let locals: Option<Vec<Local>> = list.iter().map(|one| Local::read(&one.0)).collect();
        let minutes: Vec<Minute> = locals
            .unwrap_or_default()
            .into_iter()
            .map(|local| book.minute(self, key, local))
            .collect();
        let spread = spread_of(&minutes);
        if spread.is_none() && book.faults() == wrong {
            self.unsound(key, say::neither_time_nor_three(), mend, book);
        }
        spread
    }

    fn hours(&self, key: &str, days: Days, book: &mut Book) -> Option<Windows> {
        if !self.has(key) {
            return None;
        }
        let mend = say::write_hours(key);
        let mut spans = Vec::new();
        for (text, span) in self.list(key, &mend, book) {
            let Some(weekly) = Weekly::read(&text) else {
                let what = say::no_hours(&text, key, &self.name);
                book.wrong(span, what, mend.clone());
                continue;
            };
            for (from, to) in weekly.spans(days) {
                let from = self.edge(from, book);
                let to = self.edge(to, book);
                spans.push((from, to));
            }
        }
        Some(Windows::new(spans))
    }

    fn edge(&self, local: Local, book: &mut Book) -> Minute {
        let mut later = local;
        for _ in 0..=180 {
            if let Ok(minute) = (book.clock)(later) {
                return minute;
            }
            later.minute += 1;
            if later.minute == 60 {
                later.minute = 0;
                later.hour += 1;
            }
            if later.hour == 24 {
                later = later.days_later(1);
            }
        }
        book.minute(self, "hours", local)
    }

    fn spans(&self, key: &str, book: &mut Book) -> Windows {
        let Some(item) = self.item(key) else {
            return Windows::default();
        };
        let mend = say::write_spans(key);
        let pair = |value: &Value| {
            let both: Vec<Local> = value
                .as_array()?
                .iter()
                .map(|one| written(one).as_deref().and_then(Local::read))
                .collect::<Option<_>>()?;
            match both[..] {
                [from, to] if from < to => Some((from, to)),
                _ => None,
            }
        };
        let spans = item
            .as_array()
            .and_then(|array| array.iter().map(pair).collect::<Option<Vec<_>>>());
        let Some(spans) = spans else {
            self.unsound(key, say::no_spans(), mend, book);
            return Windows::default();
        };
        let spans: Vec<_> = spans
            .into_iter()
            .map(|(from, to)| (book.minute(self, key, from), book.minute(self, key, to)))
            .collect();
        Windows::new(spans)
    }

    fn days(&self, key: &str, book: &mut Book) -> Windows {
        let mend = say::write_days(key);
        let mut spans = Vec::new();
        for (text, span) in self.list(key, &mend, book) {
            let Some(date) = Local::date(&text) else {
                let what = say::no_date(&text, key, &self.name);
                book.wrong(span, what, mend.clone());
                continue;
            };
            spans.push((self.edge(date, book), self.edge(date.days_later(1), book)));
        }
        Windows::new(spans)
    }

    fn list(&self, key: &str, mend: &str, book: &mut Book) -> Vec<(String, Option<Span<usize>>)> {
        let Some(item) = self.item(key) else {
            return Vec::new();
        };
        let text = |value: &Value| {
            let text = written(value)?;
            Some((text, value.span()))
        };
        let list = match item.as_array() {
            Some(array) => array.iter().map(text).collect::<Option<Vec<_>>>(),
            None => item.as_value().and_then(text).map(|one| vec![one]),
        };
        list.unwrap_or_else(|| {
            self.unsound(key, say::no_texts(), mend.to_owned(), book);
            Vec::new()
        })
    }
}

/// A local time, in quotes or without.
pub(super) fn local(item: &Item) -> Option<Local> {
    item.as_value()
        .and_then(written)
        .as_deref()
        .and_then(Local::read)
}

/// A text, or a time written without quotes.
fn written(value: &Value) -> Option<String> {
    match value {
        Value::String(text) => Some(text.value().trim().to_owned()),
        Value::Datetime(time) => Some(time.value().to_string()),
        _ => None,
    }
}
