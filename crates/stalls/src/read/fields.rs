//! Fields of a table, each read as what it should be.

use super::hours::{Days, Local, Weekly};
use super::{Clock, Trouble, spread_of};
use crate::spread::Spread;
use crate::windows::{Minute, Windows};
use std::ops::{Range as Span, RangeInclusive};
use toml_edit::{Item, TableLike, Value};

/// What is wrong so far.
pub(super) struct Book<'a> {
    file: &'a str,
    text: &'a str,
    clock: Clock<'a>,
    pub(super) wrong: Vec<Trouble>,
    pub(super) warnings: Vec<Trouble>,
}

impl<'a> Book<'a> {
    pub(super) fn new(file: &'a str, text: &'a str, clock: Clock<'a>) -> Self {
        Self {
            file,
            text,
            clock,
            wrong: Vec::new(),
            warnings: Vec::new(),
        }
    }

    fn trouble(&self, span: Option<Span<usize>>, what: String, mend: String) -> Trouble {
        let start = span.map_or(0, |span| span.start);
        let before = self.text.as_bytes().get(..start).unwrap_or_default();
        let line = 1 + before.iter().filter(|byte| **byte == b'\n').count();
        Trouble {
            file: self.file.to_owned(),
            line,
            what,
            mend,
        }
    }

    pub(super) fn wrong(&mut self, span: Option<Span<usize>>, what: String, mend: String) {
        let trouble = self.trouble(span, what, mend);
        self.wrong.push(trouble);
    }

    pub(super) fn missing(&mut self, fields: &Fields, key: &str, what: &str) {
        self.wrong(
            fields.span.clone(),
            format!("{} has no `{key}`", fields.name),
            format!("add {key} = ...: {what}"),
        );
    }

    /// A local time in minutes; one that does not exist is told, and taken as 0.
    pub(super) fn minute(&mut self, fields: &Fields, key: &str, local: Local) -> Minute {
        match (self.clock)(local) {
            Ok(minute) => minute,
            Err(what) => {
                self.wrong(
                    fields.at(key),
                    format!("`{key}` of {}: {what}", fields.name),
                    "write a time that the clock on the wall shows that day".to_owned(),
                );
                0
            }
        }
    }
}

/// A table, with its place and name for what is wrong in it.
pub(super) struct Fields<'t> {
    table: &'t dyn TableLike,
    span: Option<Span<usize>>,
    pub(super) name: String,
}

impl<'t> Fields<'t> {
    pub(super) fn root(table: &'t dyn TableLike) -> Self {
        Self {
            table,
            span: None,
            name: "the file".to_owned(),
        }
    }

    pub(super) fn has(&self, key: &str) -> bool {
        self.table.contains_key(key)
    }

    pub(super) fn at(&self, key: &str) -> Option<Span<usize>> {
        self.table
            .get(key)
            .and_then(Item::span)
            .or_else(|| self.span.clone())
    }

    /// Warns of keys that are not known; takes one that looks like a known one for a slip.
    pub(super) fn only(&self, known: &[&str], book: &mut Book) {
        for (key, item) in self.table.iter() {
            if known.contains(&key) {
                continue;
            }
            let name = self.table.get_key_value(key);
            let span = name
                .and_then(|(name, _)| name.span())
                .or_else(|| item.span());
            let what = format!("`{key}` is no key of {}", self.name);
            match known.iter().find(|word| alike(key, word)) {
                Some(meant) => book.wrong(span, what, format!("did you mean `{meant}`?")),
                None => {
                    let mend = format!("it is not used; the keys here are {}", known.join(", "));
                    let trouble = book.trouble(span, what, mend);
                    book.warnings.push(trouble);
                }
            }
        }
    }

    fn wrong(&self, key: &str, what: &str, mend: &str, book: &mut Book) {
        let what = format!("`{key}` of {} is {what}", self.name);
        book.wrong(self.at(key), what, mend.to_owned());
    }

    pub(super) fn whole(
        &self,
        key: &str,
        range: RangeInclusive<i64>,
        book: &mut Book,
    ) -> Option<i64> {
        let item = self.table.get(key)?;
        let whole = item.as_integer().filter(|whole| range.contains(whole));
        if whole.is_none() {
            let mend = format!(
                "write a whole number from {} to {}",
                range.start(),
                range.end()
            );
            self.wrong(key, "no such number", &mend, book);
        }
        whole
    }

    pub(super) fn yes(&self, key: &str, otherwise: bool, book: &mut Book) -> bool {
        let Some(item) = self.table.get(key) else {
            return otherwise;
        };
        item.as_bool().unwrap_or_else(|| {
            self.wrong(key, "neither true nor false", "write true or false", book);
            otherwise
        })
    }

    pub(super) fn text(&self, key: &str, book: &mut Book) -> Option<String> {
        let item = self.table.get(key)?;
        let text = item.as_str().map(str::trim).filter(|text| !text.is_empty());
        if text.is_none() {
            self.wrong(key, "no text", "write it in quotes", book);
        }
        text.map(str::to_owned)
    }

    pub(super) fn needed_text(&self, key: &str, book: &mut Book) -> String {
        if !self.has(key) {
            book.missing(self, key, "a name in quotes");
        }
        self.text(key, book).unwrap_or_default()
    }

    pub(super) fn word<'w>(
        &self,
        key: &str,
        known: &[&'w str],
        book: &mut Book,
    ) -> Option<&'w str> {
        let item = self.table.get(key)?;
        let written = item.as_str();
        let word = written.and_then(|written| {
            let mut known = known.iter().copied();
            known.find(|one| one.eq_ignore_ascii_case(written))
        });
        if word.is_none() {
            let mend = format!("write one of \"{}\"", known.join("\", \""));
            self.wrong(key, "not known", &mend, book);
        }
        word
    }

    /// The texts of a list, or of one text alone.
    fn list(&self, key: &str, mend: &str, book: &mut Book) -> Vec<(String, Option<Span<usize>>)> {
        let Some(item) = self.table.get(key) else {
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
            self.wrong(key, "no list of texts", mend, book);
            Vec::new()
        })
    }

    pub(super) fn texts(&self, key: &str, book: &mut Book) -> Vec<String> {
        let mend = format!("write {key} = [\"...\", \"...\"]");
        let list = self.list(key, &mend, book);
        list.into_iter().map(|one| one.0).collect()
    }

    /// Places in a list of names.
    pub(super) fn names(
        &self,
        key: &str,
        known: &[String],
        sort: &str,
        book: &mut Book,
    ) -> Vec<usize> {
        let mend = format!("write the name of each {sort} in quotes");
        let mut found = Vec::new();
        for (name, span) in self.list(key, &mend, book) {
            match known.iter().position(|one| *one == name) {
                Some(at) => found.push(at),
                None => book.wrong(
                    span.or_else(|| self.at(key)),
                    format!(
                        "`{key}` of {} names the {sort} {name}, and there is none",
                        self.name
                    ),
                    format!("write one of {}", known.join(", ")),
                ),
            }
        }
        found
    }

    pub(super) fn one_name(
        &self,
        key: &str,
        known: &[String],
        sort: &str,
        book: &mut Book,
    ) -> Option<usize> {
        let name = self.text(key, book)?;
        let at = known.iter().position(|one| *one == name);
        if at.is_none() {
            let what = format!("the {sort} {name}, and there is none");
            self.wrong(
                key,
                &what,
                &format!("write one of {}", known.join(", ")),
                book,
            );
        }
        at
    }

    /// Minutes: one number, or least, likely and most.
    pub(super) fn spread(&self, key: &str, book: &mut Book) -> Option<Spread> {
        let item = self.table.get(key)?;
        let numbers = match item.as_array() {
            Some(array) => array
                .iter()
                .map(Value::as_integer)
                .collect::<Option<Vec<_>>>(),
            None => item.as_integer().map(|one| vec![one]),
        };
        let spread = numbers.and_then(|numbers| spread_of(&numbers));
        if spread.is_none() {
            let mend = format!("write {key} = 55, or least, likely and most: {key} = [40, 55, 90]");
            self.wrong(key, "neither a whole number nor three", &mend, book);
        }
        spread
    }

    /// A local time as it is written.
    pub(super) fn local(&self, key: &str, book: &mut Book) -> Option<Local> {
        let local = local(self.table.get(key)?);
        if local.is_none() {
            self.wrong(
                key,
                "no local time",
                "write it such as \"2026-11-30T08:10\"",
                book,
            );
        }
        local
    }

    /// A local time in minutes.
    pub(super) fn moment(&self, key: &str, book: &mut Book) -> Option<Minute> {
        let local = self.local(key, book)?;
        Some(book.minute(self, key, local))
    }

    /// One local time, or the earliest, likely and latest, in minutes.
    pub(super) fn moments(&self, key: &str, book: &mut Book) -> Option<Spread> {
        let mend = format!(
            "write {key} = \"2026-11-30T08:10\", or the earliest, the likely and the latest in a list"
        );
        if !self.has(key) {
            return None;
        }
        let wrong = book.wrong.len();
        let list = self.list(key, &mend, book);
        let locals: Option<Vec<Local>> = list.iter().map(|one| Local::read(&one.0)).collect();
        let minutes: Vec<Minute> = locals
            .unwrap_or_default()
            .into_iter()
            .map(|local| book.minute(self, key, local))
            .collect();
        let spread = spread_of(&minutes);
        if spread.is_none() && book.wrong.len() == wrong {
            self.wrong(key, "neither one local time nor three", &mend, book);
        }
        spread
    }

    /// Hours by days of the week, laid on these days.
    pub(super) fn hours(&self, key: &str, days: Days, book: &mut Book) -> Option<Windows> {
        if !self.has(key) {
            return None;
        }
        let mend = format!("write {key} = [\"mon-fri 08:00-12:00\", \"sat 09:00-13:00\"]");
        let mut spans = Vec::new();
        for (text, span) in self.list(key, &mend, book) {
            let Some(weekly) = Weekly::read(&text) else {
                let what = format!("`{text}` in `{key}` of {} are no hours", self.name);
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

    /// The edge of weekly hours: where the clocks go forward, what is skipped is the next minute
    /// that exists.
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

    /// Spans of local times, each [from, to].
    pub(super) fn spans(&self, key: &str, book: &mut Book) -> Windows {
        let Some(item) = self.table.get(key) else {
            return Windows::default();
        };
        let mend = format!("write {key} = [[\"2026-11-30T13:00\", \"2026-11-30T15:00\"]]");
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
            self.wrong(key, "no list of times from and to", &mend, book);
            return Windows::default();
        };
        let spans: Vec<_> = spans
            .into_iter()
            .map(|(from, to)| (book.minute(self, key, from), book.minute(self, key, to)))
            .collect();
        Windows::new(spans)
    }

    /// Whole days.
    pub(super) fn days(&self, key: &str, book: &mut Book) -> Windows {
        let mend = format!("write {key} = [\"2026-12-24\"]");
        let mut spans = Vec::new();
        for (text, span) in self.list(key, &mend, book) {
            let Some(date) = Local::date(&text) else {
                let what = format!("`{text}` in `{key}` of {} is no date", self.name);
                book.wrong(span, what, mend.clone());
                continue;
            };
            spans.push((self.edge(date, book), self.edge(date.days_later(1), book)));
        }
        Windows::new(spans)
    }

    pub(super) fn table(&self, key: &str, book: &mut Book) -> Option<Fields<'t>> {
        let item = self.table.get(key)?;
        let Some(table) = item.as_table_like() else {
            self.wrong(
                key,
                "no table",
                &format!("write [{key}], with its lines below"),
                book,
            );
            return None;
        };
        Some(Fields {
            table,
            span: item.span().or_else(|| place(table)),
            name: format!("the {key}"),
        })
    }

    pub(super) fn tables(&self, key: &str, book: &mut Book) -> Vec<Fields<'t>> {
        let Some(item) = self.table.get(key) else {
            return Vec::new();
        };
        let each: Option<Vec<&'t dyn TableLike>> = match item {
            Item::ArrayOfTables(list) => {
                Some(list.iter().map(|table| table as &dyn TableLike).collect())
            }
            Item::Value(Value::Array(list)) => list
                .iter()
                .map(|value| value.as_inline_table().map(|table| table as &dyn TableLike))
                .collect(),
            _ => None,
        };
        let Some(each) = each else {
            let mend = format!("write [[{key}]], in two brackets, for each");
            self.wrong(key, "no list", &mend, book);
            return Vec::new();
        };
        let is_root = self.span.is_none();
        each.into_iter()
            .enumerate()
            .map(|(at, table)| {
                let name = ["name", "what"].iter().find_map(|key| table.get(key));
                let name = name.and_then(Item::as_str);
                let name = name.map_or_else(|| format!("{key} {}", at + 1), str::to_owned);
                Fields {
                    table,
                    span: place(table),
                    name: if is_root {
                        name
                    } else {
                        format!("{}, {name}", self.name)
                    },
                }
            })
            .collect()
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

/// Where a table stands: at its first key.
fn place(table: &dyn TableLike) -> Option<Span<usize>> {
    let keys = table.iter().filter_map(|(key, item)| {
        let name = table.get_key_value(key);
        name.and_then(|(name, _)| name.span())
            .or_else(|| item.span())
    });
    keys.min_by_key(|span| span.start)
}

/// Whether one word is another misspelt: one letter more, less or different, or the other
/// without its unit.
fn alike(written: &str, known: &str) -> bool {
    let (one, other): (Vec<char>, Vec<char>) = (written.chars().collect(), known.chars().collect());
    let same_start = one.iter().zip(&other).take_while(|(a, b)| a == b).count();
    let ends = one.iter().rev().zip(other.iter().rev());
    let same_end = ends.take_while(|(a, b)| a == b).count();
    let (shorter, longer) = (one.len().min(other.len()), one.len().max(other.len()));
    let one_letter = longer - shorter <= 1 && shorter >= 3 && same_start + same_end + 1 >= longer;
    one_letter
        || known
            .rsplit_once('_')
            .is_some_and(|(bare, _)| bare.len() > 2 && bare == written)
}
