//! Reading the fields of a table, each checked for what it should be.

use crate::phrases as say;
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
                say::no_table(key),
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
            let keys = say::keys_here(known.join(", "));
            let mend = troubles.meant(key, known.iter().copied(), keys);
            troubles.error(&span, say::no_key_of(key, &self.name), mend);
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
            troubles.error(&self.at(key), say::no_text(key), say::write_in_quotes());
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
        let words = say::write_one_of(known.join(", "));
        let mend = troubles.meant(&word, known.iter().copied(), words);
        troubles.error(&self.at(key), say::not_known_as(&word, key), mend);
        None
    }

    pub(crate) fn yes(&self, key: &str, troubles: &mut Troubles) -> bool {
        let Some(item) = self.item(key) else {
            return false;
        };
        item.as_bool().unwrap_or_else(|| {
            troubles.error(
                &self.at(key),
                say::neither_true_nor_false(key),
                say::write_true(),
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
            troubles.error(&self.at(key), say::no_count(key), say::write_whole_number());
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
                say::no_time(key, written.trim()),
                say::write_minutes_from(),
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
                say::no_list_of_texts(key),
                say::write_as_list(),
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
                say::no_positions(key),
                say::write_positions_as_list(),
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
                    say::no_position(value.to_string().trim()),
                    say::write_one_from_to(1, count),
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
                .unwrap_or((said, say::write_number_and_unit()));
            let what = say::no_quantity(text, dimension.name(), what);
            troubles.error(span, what, mend);
            None
        }
    }
}

/// How that table is written in a map.
fn as_a_table(within: &str, key: &str) -> String {
    match key {
        "items" | "sources" | "between" | "seen" => say::write_named_table(key),
        "minutes" => say::write_which_way().to_owned(),
        "length-at" => say::write_such_as("length-at = { 1 = \"30 mm\", 2 = \"75 mm\" }"),
        "may-miss" => say::write_such_as("may-miss = { up-to = 2, never-at = [1] }"),
        "crack" | "out" => {
            say::write_such_as(format!("{key} = {{ minutes = {{ out = 2, back = 2 }} }}"))
        }
        _ if within == "items" => say::write_item_table(toml_edit::Key::new(key)),
        _ => say::write_as_table(key),
    }
}
