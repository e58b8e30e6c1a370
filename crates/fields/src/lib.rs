//! A text that a person wrote (TOML), read field by field.
//!
//! Whoever writes a layout or an order by hand makes slips, and wants all of them told at once, each
//! with its line and how to mend it. So a reader asks for one field after the other, gets a value or
//! a stand-in, and the slips are gathered in a [`Book`] beside it.
//!
//! ```
//! let text = "[[pulley]]\nname = \"crank\"\ndiameter_mm = 150\n";
//! let read = fields::read("belt.toml", text, "the layout", |root, book| {
//!     let pulleys = root.tables("pulley", book);
//!     pulleys.iter().map(|pulley| pulley.needed("diameter_mm", book)).sum::<f64>()
//! });
//! assert_eq!(read.unwrap().value, 150.0);
//!
//! let read = fields::read("belt.toml", "[[pulley]]\nname = \"crank\"\n", "the layout", |root, book| {
//!     root.tables("pulley", book)[0].needed("diameter_mm", book)
//! });
//! let wrong = read.unwrap_err();
//! assert_eq!(wrong[0].to_string(), "belt.toml:2: crank has no `diameter_mm`; add diameter_mm = ...");
//! ```

mod phrases;

use crate::phrases as say;
use std::fmt;
use std::ops::Range;
use toml_edit::{Document, Item, TableLike, Value};

/// One thing that is wrong in a text.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Trouble {
    /// The file, as it was named.
    pub file: String,
    /// From 1.
    pub line: usize,
    /// What is wrong.
    pub what: String,
    /// How to mend it.
    pub mend: String,
}

impl fmt::Display for Trouble {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        write!(
            f,
            "{}:{}: {}; {}",
            self.file, self.line, self.what, self.mend
        )
    }
}

/// What a text came to.
#[derive(Clone, Debug, PartialEq)]
pub struct Read<T> {
    /// What was read.
    pub value: T,
    /// What in the text has no effect.
    pub warnings: Vec<Trouble>,
}

/// Reads a text with `make`, which asks for the fields. `file` is the name that troubles are told
/// under, `name` what the whole text is called.
///
/// # Errors
///
/// Everything that is wrong, in the sequence of the text: what is no TOML, and what `make` found.
pub fn read<T>(
    file: &str,
    text: &str,
    name: &str,
    make: impl FnOnce(&Fields<'_>, &mut Book<'_>) -> T,
) -> Result<Read<T>, Vec<Trouble>> {
    let mut book = Book {
        file,
        text,
        wrong: Vec::new(),
        warnings: Vec::new(),
    };
    let document = match Document::parse(text) {
        Ok(document) => document,
        Err(error) => {
            let said = error.message().lines().collect::<Vec<_>>().join(", ");
            book.wrong(
                error.span(),
                say::no_toml(said),
                say::write_key_and_value().to_owned(),
            );
            return Err(book.wrong);
        }
    };
    let root = Fields {
        table: document.as_table(),
        span: None,
        name: name.to_owned(),
    };
    let value = make(&root, &mut book);
    let Book {
        mut wrong,
        warnings,
        ..
    } = book;
    if wrong.is_empty() {
        return Ok(Read { value, warnings });
    }
    wrong.sort_by_key(|trouble| trouble.line);
    Err(wrong)
}

/// Where something stands in its text.
pub type Span = Range<usize>;

/// What is wrong so far.
#[derive(Debug)]
pub struct Book<'a> {
    file: &'a str,
    text: &'a str,
    wrong: Vec<Trouble>,
    warnings: Vec<Trouble>,
}

impl Book<'_> {
    /// A trouble at a place; without one, at the first line.
    fn trouble(&self, span: Option<Span>, what: String, mend: String) -> Trouble {
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

    /// Something has to be mended before the text is of use.
    pub fn wrong(&mut self, span: Option<Span>, what: String, mend: String) {
        let trouble = self.trouble(span, what, mend);
        self.wrong.push(trouble);
    }

    /// Something has no effect.
    pub fn warn(&mut self, span: Option<Span>, what: String, mend: String) {
        let trouble = self.trouble(span, what, mend);
        self.warnings.push(trouble);
    }

    /// How much is wrong so far.
    #[must_use]
    pub fn faults(&self) -> usize {
        self.wrong.len()
    }
}

/// A table, with its place and name for what is missing in it.
pub struct Fields<'t> {
    table: &'t dyn TableLike,
    span: Option<Span>,
    /// What it is called where something in it is wrong.
    pub name: String,
}

impl<'t> Fields<'t> {
    /// Whether there is such a key.
    #[must_use]
    pub fn has(&self, key: &str) -> bool {
        self.table.contains_key(key)
    }

    /// The value of a key as it was written, for what only one reader knows how to read.
    #[must_use]
    pub fn item(&self, key: &str) -> Option<&'t Item> {
        self.table.get(key)
    }

    /// Where the table stands.
    #[must_use]
    pub fn place(&self) -> Option<Span> {
        self.span.clone()
    }

    /// Where a key's value stands; where the table does, without one.
    #[must_use]
    pub fn at(&self, key: &str) -> Option<Span> {
        self.table
            .get(key)
            .and_then(Item::span)
            .or_else(|| self.span.clone())
    }

    /// Says which keys are not known: those that look like a known one misspelt are wrong, the
    /// others have no effect.
    pub fn only(&self, known: &[&str], book: &mut Book<'_>) {
        for (key, item) in self.table.iter() {
            if known.contains(&key) {
                continue;
            }
            let span = key_span(self.table, key).or_else(|| item.span());
            let what = say::no_key_of(key, &self.name);
            match known.iter().find(|word| alike(key, word)) {
                Some(meant) => book.wrong(span, what, say::did_you_mean(meant)),
                None => book.warn(span, what, say::not_used(known.join(", "))),
            }
        }
    }

    /// Says that a key is missing.
    pub fn missing(&self, key: &str, book: &mut Book<'_>) {
        book.wrong(
            self.span.clone(),
            say::has_no(&self.name, key),
            say::add(key),
        );
    }

    /// Says that a key's value is not what it should be.
    pub fn unsound(&self, key: &str, is: &str, mend: String, book: &mut Book<'_>) {
        book.wrong(self.at(key), say::unsound(key, &self.name, is), mend);
    }

    /// A finite number.
    pub fn number(&self, key: &str, book: &mut Book<'_>) -> Option<f64> {
        let number = self.table.get(key)?.as_value().and_then(number_of);
        if number.is_none() {
            self.unsound(key, say::no_number(), say::such_as_number(key), book);
        }
        number
    }

    /// A number that has to be there; 0 stands in for it.
    pub fn needed(&self, key: &str, book: &mut Book<'_>) -> f64 {
        if !self.has(key) {
            self.missing(key, book);
        }
        self.number(key, book).unwrap_or(0.0)
    }

    /// A list of numbers that has to be there.
    pub fn numbers(&self, key: &str, book: &mut Book<'_>) -> Option<Vec<f64>> {
        let Some(item) = self.table.get(key) else {
            self.missing(key, book);
            return None;
        };
        let numbers = numbers_of(item);
        if numbers.is_none() {
            let mend = say::such_as_numbers(key);
            self.unsound(key, say::no_list_of_numbers(), mend, book);
        }
        numbers
    }

    /// A whole number from 1 to 1,000.
    pub fn count(&self, key: &str, book: &mut Book<'_>) -> Option<u32> {
        self.whole(key, 1, 1000, book)
    }

    /// A whole number between two.
    pub fn whole(&self, key: &str, least: u32, most: u32, book: &mut Book<'_>) -> Option<u32> {
        let item = self.table.get(key)?;
        let count = item
            .as_integer()
            .and_then(|count| u32::try_from(count).ok())
            .filter(|count| (least..=most).contains(count));
        if count.is_none() {
            let mend = say::whole_number_from(least);
            self.unsound(key, say::no_count(), mend, book);
        }
        count
    }

    /// True or false.
    pub fn yes(&self, key: &str, otherwise: bool, book: &mut Book<'_>) -> bool {
        let Some(item) = self.table.get(key) else {
            return otherwise;
        };
        item.as_bool().unwrap_or_else(|| {
            let mend = say::write_true_or_false().to_owned();
            self.unsound(key, say::neither_true_nor_false(), mend, book);
            otherwise
        })
    }

    /// One of the known words, in small or capital letters.
    pub fn word<'w>(&self, key: &str, known: &[&'w str], book: &mut Book<'_>) -> Option<&'w str> {
        let item = self.table.get(key)?;
        let word = item.as_str().and_then(|word| {
            let mut all = known.iter().copied();
            all.find(|one| one.eq_ignore_ascii_case(word))
        });
        if word.is_none() {
            let is = say::not_known(item.to_string().trim());
            let mend = say::write_one_of(format!("\"{}\"", known.join("\", \"")));
            self.unsound(key, &is, mend, book);
        }
        word
    }

    /// A text that is not blank.
    pub fn text(&self, key: &str, book: &mut Book<'_>) -> Option<String> {
        let text = self.table.get(key)?.as_str().map(str::trim);
        let text = text.filter(|text| !text.is_empty());
        if text.is_none() {
            self.unsound(key, say::no_text(), say::write_in_quotes().to_owned(), book);
        }
        text.map(str::to_owned)
    }

    /// A text that has to be there; an empty one stands in for it.
    pub fn needed_text(&self, key: &str, book: &mut Book<'_>) -> String {
        if !self.has(key) {
            self.missing(key, book);
        }
        self.text(key, book).unwrap_or_default()
    }

    /// The tables of a list; each is called by its `name` or its `what`, else by its number, and by
    /// the table that it lies in.
    pub fn tables(&self, key: &str, book: &mut Book<'_>) -> Vec<Fields<'t>> {
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
            book.wrong(
                item.span().or_else(|| self.at(key)),
                say::no_list(key),
                say::in_two_brackets(key),
            );
            return Vec::new();
        };
        let named = |table: &'t dyn TableLike| {
            let mut names = ["what", "name"].iter();
            names.find_map(|key| table.get(key)).and_then(Item::as_str)
        };
        // The whole text goes without saying.
        let within = |name: String| match &self.span {
            Some(_) => format!("{}, {name}", self.name),
            None => name,
        };
        each.into_iter()
            .enumerate()
            .map(|(at, table)| Fields {
                table,
                span: first_key(table),
                name: within(
                    named(table).map_or_else(|| format!("{key} {}", at + 1), str::to_owned),
                ),
            })
            .collect()
    }

    /// A table within this one.
    pub fn table(&self, key: &str, book: &mut Book<'_>) -> Option<Fields<'t>> {
        let item = self.table.get(key)?;
        let Some(table) = item.as_table_like() else {
            book.wrong(item.span(), say::no_table(key), say::lines_below(key));
            return None;
        };
        Some(Fields {
            table,
            span: item.span().or_else(|| first_key(table)),
            name: say::the_table(key),
        })
    }
}

/// A finite number, written with a point or without.
#[must_use]
#[allow(
    clippy::cast_precision_loss,
    reason = "ranges are checked by whoever asked; no sound value is that large"
)]
pub fn number_of(value: &Value) -> Option<f64> {
    value
        .as_float()
        .or_else(|| value.as_integer().map(|whole| whole as f64))
        .filter(|number| number.is_finite())
}

/// A list of finite numbers.
#[must_use]
pub fn numbers_of(item: &Item) -> Option<Vec<f64>> {
    item.as_array()
        .and_then(|list| list.iter().map(number_of).collect())
}

fn key_span(table: &dyn TableLike, key: &str) -> Option<Span> {
    table.get_key_value(key).and_then(|(name, _)| name.span())
}

/// Where a table stands: at its first key.
fn first_key(table: &dyn TableLike) -> Option<Span> {
    let keys = table
        .iter()
        .filter_map(|(key, item)| key_span(table, key).or_else(|| item.span()));
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
