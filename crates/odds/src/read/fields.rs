//! Fields of a table, each read as what it should be.

use super::Trouble;
use crate::spread::Range;
use std::ops::Range as Span;
use toml_edit::{Item, TableLike};

/// What is wrong so far.
pub(super) struct Book<'a> {
    pub(super) file: &'a str,
    pub(super) text: &'a str,
    pub(super) wrong: Vec<Trouble>,
    pub(super) warnings: Vec<Trouble>,
}

impl Book<'_> {
    pub(super) fn trouble(&self, span: Option<Span<usize>>, what: String, mend: String) -> Trouble {
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
}

/// A table, with its place and name for what is missing in it.
pub(super) struct Fields<'t> {
    pub(super) table: &'t dyn TableLike,
    pub(super) span: Option<Span<usize>>,
    pub(super) name: String,
}

impl Fields<'_> {
    pub(super) fn at(&self, key: &str) -> Option<Span<usize>> {
        self.table
            .get(key)
            .and_then(Item::span)
            .or_else(|| self.span.clone())
    }

    pub(super) fn only(&self, known: &[&str], book: &mut Book) {
        for (key, item) in self.table.iter() {
            if known.contains(&key) {
                continue;
            }
            let span = self
                .table
                .get_key_value(key)
                .and_then(|(name, _)| name.span())
                .or_else(|| item.span());
            let what = format!("`{key}` is no key of {}", self.name);
            match known.iter().find(|word| alike(key, word)) {
                Some(meant) => book.wrong(span, what, format!("did you mean `{meant}`?")),
                None => {
                    let trouble = book.trouble(
                        span,
                        what,
                        format!("it is not used; the keys here are {}", known.join(", ")),
                    );
                    book.warnings.push(trouble);
                }
            }
        }
    }

    pub(super) fn number(&self, key: &str, book: &mut Book) -> Option<f64> {
        let item = self.table.get(key)?;
        #[allow(
            clippy::cast_precision_loss,
            reason = "ranges are checked later; no sound value is that large"
        )]
        let number = item
            .as_float()
            .or_else(|| item.as_integer().map(|whole| whole as f64));
        let number = number.filter(|number| number.is_finite());
        if number.is_none() {
            book.wrong(
                self.at(key),
                format!("`{key}` of {} is no number", self.name),
                format!("write it such as {key} = 12.5"),
            );
        }
        number
    }

    pub(super) fn needed(&self, key: &str, book: &mut Book) -> f64 {
        if !self.table.contains_key(key) {
            book.wrong(
                self.span.clone(),
                format!("{} has no `{key}`", self.name),
                format!("add {key} = ..."),
            );
        }
        self.number(key, book).unwrap_or(0.0)
    }

    pub(super) fn count(&self, key: &str, book: &mut Book) -> Option<u32> {
        let item = self.table.get(key)?;
        let count = item
            .as_integer()
            .and_then(|count| u32::try_from(count).ok())
            .filter(|count| (1..=1000).contains(count));
        if count.is_none() {
            book.wrong(
                self.at(key),
                format!("`{key}` of {} is no count", self.name),
                "write a whole number from 1".to_owned(),
            );
        }
        count
    }

    pub(super) fn yes(&self, key: &str, otherwise: bool, book: &mut Book) -> bool {
        let Some(item) = self.table.get(key) else {
            return otherwise;
        };
        item.as_bool().unwrap_or_else(|| {
            book.wrong(
                self.at(key),
                format!("`{key}` of {} is neither true nor false", self.name),
                "write true or false".to_owned(),
            );
            otherwise
        })
    }

    pub(super) fn word<'w>(
        &self,
        key: &str,
        known: &[&'w str],
        book: &mut Book,
    ) -> Option<&'w str> {
        let item = self.table.get(key)?;
        let word = item.as_str().and_then(|word| {
            known
                .iter()
                .copied()
                .find(|one| one.eq_ignore_ascii_case(word))
        });
        if word.is_none() {
            let what = format!(
                "`{key}` of {} is {}, which is not known",
                self.name,
                item.to_string().trim()
            );
            book.wrong(
                self.at(key),
                what,
                format!("write one of \"{}\"", known.join("\", \"")),
            );
        }
        word
    }

    pub(super) fn text(&self, key: &str, book: &mut Book) -> Option<String> {
        let text = self
            .table
            .get(key)?
            .as_str()
            .map(str::trim)
            .filter(|text| !text.is_empty());
        if text.is_none() {
            book.wrong(
                self.at(key),
                format!("`{key}` of {} is no text", self.name),
                "write a name in quotes".to_owned(),
            );
        }
        text.map(str::to_owned)
    }
}

/// Whether one word is another misspelt: one letter more, less or different, or the other
/// without its unit.
fn alike(written: &str, known: &str) -> bool {
    let (one, other): (Vec<char>, Vec<char>) = (written.chars().collect(), known.chars().collect());
    let same_start = one.iter().zip(&other).take_while(|(a, b)| a == b).count();
    let same_end = one
        .iter()
        .rev()
        .zip(other.iter().rev())
        .take_while(|(a, b)| a == b)
        .count();
    let (shorter, longer) = (one.len().min(other.len()), one.len().max(other.len()));
    let one_letter = longer - shorter <= 1 && shorter >= 3 && same_start + same_end + 1 >= longer;
    one_letter
        || known
            .rsplit_once('_')
            .is_some_and(|(bare, _)| bare.len() > 2 && bare == written)
}

pub(super) fn tables<'t>(root: &Fields<'t>, key: &str, book: &mut Book) -> Vec<Fields<'t>> {
    let Some(item) = root.table.get(key) else {
        return Vec::new();
    };
    let each: Option<Vec<&'t dyn TableLike>> = match item {
        Item::ArrayOfTables(list) => {
            Some(list.iter().map(|table| table as &dyn TableLike).collect())
        }
        Item::Value(toml_edit::Value::Array(list)) => list
            .iter()
            .map(|value| value.as_inline_table().map(|table| table as &dyn TableLike))
            .collect(),
        _ => None,
    };
    let Some(each) = each else {
        book.wrong(
            item.span().or_else(|| root.at(key)),
            format!("`{key}` is no list"),
            format!("write [[{key}]], in two brackets, for each"),
        );
        return Vec::new();
    };
    each.into_iter()
        .enumerate()
        .map(|(at, table)| {
            let name = ["what", "name"].iter().find_map(|key| table.get(key));
            let name = name.and_then(Item::as_str);
            let name = name.map_or_else(|| format!("{key} {}", at + 1), str::to_owned);
            Fields {
                table,
                span: place(table),
                name,
            }
        })
        .collect()
}

/// Where a table stands: at its first key.
fn place(table: &dyn TableLike) -> Option<Span<usize>> {
    let keys = table.iter().filter_map(|(key, item)| {
        table
            .get_key_value(key)
            .and_then(|(name, _)| name.span())
            .or_else(|| item.span())
    });
    keys.min_by_key(|span| span.start)
}

pub(super) fn table<'t>(root: &Fields<'t>, key: &str, book: &mut Book) -> Option<Fields<'t>> {
    let item = root.table.get(key)?;
    let Some(table) = item.as_table_like() else {
        book.wrong(
            item.span(),
            format!("`{key}` is no table"),
            format!("write [{key}], with its lines below"),
        );
        return None;
    };
    let span = item.span().or_else(|| place(table));
    Some(Fields {
        table,
        span,
        name: format!("the {key}"),
    })
}

impl Book<'_> {
    pub(super) fn missing(&mut self, fields: &Fields, key: &str) {
        self.wrong(
            fields.span.clone(),
            format!("{} has no `{key}`", fields.name),
            format!("add {key} = ..."),
        );
    }
}

impl Fields<'_> {
    /// A name that has to be there.
    pub(super) fn name_of(&self, key: &str, book: &mut Book) -> String {
        if !self.table.contains_key(key) {
            book.missing(self, key);
        }
        self.text(key, book).unwrap_or_default()
    }

    /// A whole number from 0.
    pub(super) fn many(&self, key: &str, book: &mut Book) -> Option<u32> {
        let item = self.table.get(key)?;
        let count = item
            .as_integer()
            .and_then(|count| u32::try_from(count).ok());
        if count.is_none() {
            book.wrong(
                self.at(key),
                format!("`{key}` of {} is no count", self.name),
                "write a whole number from 0".to_owned(),
            );
        }
        count
    }

    pub(super) fn rust(&self, book: &mut Book) -> Option<u8> {
        let item = self.table.get("rust")?;
        let rust = item
            .as_integer()
            .and_then(|rust| u8::try_from(rust).ok())
            .filter(|rust| *rust <= 3);
        if rust.is_none() {
            book.wrong(
                self.at("rust"),
                format!("`rust` of {} is no class of rust", self.name),
                "write 0 for none, 1, 2, or 3 for heavy".to_owned(),
            );
        }
        rust
    }

    pub(super) fn numbers(&self, key: &str, book: &mut Book) -> Option<Vec<f64>> {
        let Some(item) = self.table.get(key) else {
            book.missing(self, key);
            return None;
        };
        let numbers: Option<Vec<f64>> = item
            .as_array()
            .and_then(|list| list.iter().map(number_of).collect());
        if numbers.is_none() {
            book.wrong(
                self.at(key),
                format!("`{key}` of {} is no list of numbers", self.name),
                format!("write it such as {key} = [0.1, 0.5, 0.9]"),
            );
        }
        numbers
    }

    /// One number, or least, likely and most.
    pub(super) fn range(&self, key: &str, book: &mut Book) -> Option<Range> {
        let item = self.table.get(key)?;
        let alone = item.as_value().and_then(number_of).map(Range::sure);
        let three: Option<Vec<f64>> = item
            .as_array()
            .and_then(|list| list.iter().map(number_of).collect());
        let three = three.and_then(|three| match three[..] {
            [low, likely, high] => Some(Range { low, likely, high }),
            _ => None,
        });
        let found = alone.or(three);
        if found.is_none() {
            book.wrong(
                self.at(key),
                format!("`{key}` of {} is neither a number nor three", self.name),
                format!("write {key} = 55, or least, likely and most: {key} = [40, 55, 90]"),
            );
        }
        found
    }
}

#[allow(
    clippy::cast_precision_loss,
    reason = "ranges are checked later; no sound value is that large"
)]
fn number_of(value: &toml_edit::Value) -> Option<f64> {
    value
        .as_float()
        .or_else(|| value.as_integer().map(|whole| whole as f64))
        .filter(|number| number.is_finite())
}
