//! Reading the fields of a table, each checked for what it should be.

use crate::trouble::{Span, Troubles};
use measure::{Dimension, Measured};
use states::Position;
use toml_edit::{Item, TableLike, Value};

/// A table, with the place of its name for what is missing in it.
#[derive(Clone)]
pub(crate) struct Fields<'t> {
    pub table: &'t dyn TableLike,
    pub span: Span,
    pub name: String,
}

impl<'t> Fields<'t> {
    /// The table of that name, if there is one.
    pub(crate) fn table(&self, key: &str, troubles: &mut Troubles) -> Option<Fields<'t>> {
        let (name, item) = self.table.get_key_value(key)?;
        let span = name.span().or_else(|| item.span());
        let Some(table) = item.as_table_like() else {
            troubles.error(
                &item.span().or(span),
                format!("`{key}` is not a table"),
                as_a_table(&self.name, key),
            );
            return None;
        };
        Some(Fields {
            table,
            span,
            name: key.to_owned(),
        })
    }

    /// Reports every key that is not among the known ones.
    pub(crate) fn only(&self, known: &[&str], troubles: &mut Troubles) {
        for (key, item) in self.table.iter() {
            if known.contains(&key) {
                continue;
            }
            let span = self.key_span(key).or_else(|| item.span());
            let keys = format!("the keys here are {}", known.join(", "));
            let mend = troubles.meant(key, known.iter().copied(), keys);
            troubles.error(&span, format!("`{key}` is no key of {}", self.name), mend);
        }
    }

    pub(crate) fn key_span(&self, key: &str) -> Span {
        self.table
            .get_key_value(key)
            .and_then(|(name, _)| name.span())
    }

    pub(crate) fn has(&self, key: &str) -> bool {
        self.table.contains_key(key)
    }

    pub(crate) fn item(&self, key: &str) -> Option<&'t Item> {
        self.table.get(key)
    }

    /// The place of a value.
    pub(crate) fn at(&self, key: &str) -> Span {
        self.item(key)
            .and_then(Item::span)
            .or_else(|| self.span.clone())
    }

    pub(crate) fn text(&self, key: &str, troubles: &mut Troubles) -> Option<String> {
        let item = self.item(key)?;
        let text = item.as_str().map(str::to_owned);
        if text.is_none() {
            troubles.error(
                &self.at(key),
                format!("`{key}` is not a text"),
                "write it in quotes",
            );
        }
        text
    }

    /// A text that must be one of these words.
    pub(crate) fn word(
        &self,
        key: &str,
        known: &[&str],
        troubles: &mut Troubles,
    ) -> Option<String> {
        let word = self.text(key, troubles)?;
        if known.contains(&word.as_str()) {
            return Some(word);
        }
        let words = format!("write one of {}", known.join(", "));
        let mend = troubles.meant(&word, known.iter().copied(), words);
        troubles.error(
            &self.at(key),
            format!("`{word}` is not known as `{key}`"),
            mend,
        );
        None
    }

    pub(crate) fn yes(&self, key: &str, troubles: &mut Troubles) -> bool {
        let Some(item) = self.item(key) else {
            return false;
        };
        item.as_bool().unwrap_or_else(|| {
            troubles.error(
                &self.at(key),
                format!("`{key}` is neither true nor false"),
                "write true, or take the line away",
            );
            false
        })
    }

    pub(crate) fn count(&self, key: &str, troubles: &mut Troubles) -> Option<Position> {
        let item = self.item(key)?;
        let count = item
            .as_integer()
            .and_then(|count| Position::try_from(count).ok());
        if count.is_none() {
            troubles.error(
                &self.at(key),
                format!("`{key}` is not a count"),
                "write a whole number",
            );
        }
        count
    }

    /// Minutes, in tenths; nothing written is none.
    pub(crate) fn tenths(&self, key: &str, troubles: &mut Troubles) -> u32 {
        let Some(item) = self.item(key) else {
            return 0;
        };
        let minutes = item.as_float().or_else(|| {
            item.as_integer()
                .and_then(|whole| u32::try_from(whole).ok())
                .map(f64::from)
        });
        let tenths = minutes.map(|minutes| minutes * 10.0).filter(|tenths| {
            (0.0..=100_000.0).contains(tenths) && (tenths - tenths.round()).abs() < 1e-6
        });
        let Some(tenths) = tenths else {
            let written = item.to_string();
            troubles.error(
                &self.at(key),
                format!(
                    "`{key}` is {}, which is no time in whole tenths of a minute",
                    written.trim()
                ),
                "write minutes from 0 to 10000, such as 2 or 2.5",
            );
            return 0;
        };
        #[allow(
            clippy::cast_possible_truncation,
            clippy::cast_sign_loss,
            reason = "checked above"
        )]
        let tenths = tenths.round() as u32;
        tenths
    }

    pub(crate) fn texts(&self, key: &str, troubles: &mut Troubles) -> Vec<(String, Span)> {
        let Some(item) = self.item(key) else {
            return Vec::new();
        };
        let values: Vec<&Value> = match item.as_value() {
            Some(Value::Array(list)) => list.iter().collect(),
            Some(value) => vec![value],
            None => Vec::new(),
        };
        let texts: Vec<_> = values
            .iter()
            .filter_map(|value| Some((value.as_str()?.to_owned(), value.span())))
            .collect();
        if texts.len() != values.len() || values.is_empty() && item.as_value().is_none() {
            troubles.error(
                &self.at(key),
                format!("`{key}` is not a list of texts"),
                "write it as [\"...\", \"...\"]",
            );
        }
        texts
    }

    pub(crate) fn measured(
        &self,
        key: &str,
        dimension: Dimension,
        troubles: &mut Troubles,
    ) -> Vec<Measured> {
        let texts = self.texts(key, troubles);
        texts
            .into_iter()
            .filter_map(|(text, span)| measure_text(&text, dimension, &span, troubles))
            .collect()
    }

    pub(crate) fn positions(
        &self,
        key: &str,
        count: Position,
        troubles: &mut Troubles,
    ) -> Vec<Position> {
        let Some(item) = self.item(key) else {
            return Vec::new();
        };
        let Some(list) = item.as_array() else {
            troubles.error(
                &self.at(key),
                format!("`{key}` names no positions"),
                "write them as a list, such as `[1, 2]`",
            );
            return Vec::new();
        };
        let all = list.iter().filter_map(|value| {
            let at = value
                .as_integer()
                .and_then(|at| Position::try_from(at).ok());
            let at = at.filter(|at| (1..=count).contains(at));
            if at.is_none() {
                troubles.error(
                    &value.span(),
                    format!("{} is no position", value.to_string().trim()),
                    format!("write one from 1 to {count}"),
                );
            }
            at
        });
        all.collect()
    }
}

/// A quantity as written, with its unit.
pub(crate) fn measure_text(
    text: &str,
    dimension: Dimension,
    span: &Span,
    troubles: &mut Troubles,
) -> Option<Measured> {
    match measure::read(text, dimension) {
        Ok(measured) => Some(measured),
        Err(error) => {
            // It says where in the text, what, and how to mend it.
            let said = error.to_string();
            let said = match said.split_once(": ") {
                Some((place, said)) if place.starts_with("column ") => said,
                _ => &said,
            };
            let (what, mend) = said
                .split_once("; ")
                .unwrap_or((said, "write a number and its unit"));
            let what = format!("`{text}` is no {}: {what}", dimension.name());
            troubles.error(span, what, mend);
            None
        }
    }
}

/// How that table is written in a map.
fn as_a_table(within: &str, key: &str) -> String {
    match key {
        "items" | "sources" | "between" | "seen" => {
            format!("write `[{key}.NAME]`, with its lines below")
        }
        "minutes" => "write which way, such as `minutes = { out = 2, back = 2.5 }`".to_owned(),
        "length-at" => "write it such as `length-at = { 1 = \"30 mm\", 2 = \"75 mm\" }`".to_owned(),
        "may-miss" => "write it such as `may-miss = { up-to = 2, never-at = [1] }`".to_owned(),
        "crack" | "out" => {
            format!("write it such as `{key} = {{ minutes = {{ out = 2, back = 2 }} }}`")
        }
        _ if within == "items" => {
            format!(
                "write `[items.{}]`, with its lines below",
                toml_edit::Key::new(key)
            )
        }
        _ => format!("write it as `{key} = {{ ... }}`, or `[{key}]` with its lines below"),
    }
}
