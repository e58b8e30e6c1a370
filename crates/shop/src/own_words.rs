//! The trade's table with the words of this shop: made once, and again when a word is added.

use crate::phrases::shop as words;
use crate::snapshot::Shelves;
use crate::trouble::Trouble;
use crate::words::Texts;
use crate::world::World;
use std::sync::{Arc, Mutex, PoisonError};
use trade::Vocabulary;

/// A word and the sort it means.
type Own = (String, String);

/// The table that was made last, with the words in it.
#[derive(Default)]
pub(crate) struct Made(Mutex<Option<(Vec<Own>, Arc<Vocabulary>)>>);

/// The table as this shop speaks. A word whose text was erased is left out, and so is one that a
/// newer table of the trade does not let stand.
pub(crate) fn vocabulary(world: &World, texts: &Texts, shelves: &Shelves) -> Arc<Vocabulary> {
    let own: Vec<Own> = world
        .shop
        .own_words()
        .into_iter()
        .filter_map(|(name, sort)| Some((texts.text_of(Some(name))?, sort.as_str().to_owned())))
        .collect();
    let shelf = shelves.shelf::<Made>();
    let mut made = shelf.0.lock().unwrap_or_else(PoisonError::into_inner);
    let (known, start) = match made.as_ref() {
        Some((words, table)) if own.starts_with(words) => (words.len(), Arc::clone(table)),
        _ => (0, Arc::new(Vocabulary::shipped().clone())),
    };
    let mut table = start;
    for word in &own[known..] {
        if let Ok(with) = added(&table, word) {
            table = Arc::new(with);
        }
    }
    *made = Some((own, Arc::clone(&table)));
    table
}

fn added(table: &Vocabulary, (name, sort): &Own) -> Result<Vocabulary, trade::TableError> {
    table.with(&format!(
        "[[also]]\nsort = {}\nnames = [{}]\n",
        map::quoted(sort),
        map::quoted(name)
    ))
}

/// A word that would make the trade's rules laxer, or that names nothing, is not taken.
pub(crate) fn check_word(table: &Vocabulary, name: &str, sort: &str) -> Result<(), Trouble> {
    let word = (name.trim().to_owned(), sort.to_owned());
    added(table, &word).map(drop).map_err(|error| {
        Trouble::unreadable(
            words::own_word(),
            error.to_string(),
            words::say_what_trade_calls_it(),
        )
    })
}
