//! The words behind commitments, read when they are wanted and kept at hand.

use repair::Words;
use std::collections::BTreeMap;
use std::sync::{Arc, PoisonError, RwLock, RwLockReadGuard};
use store::Store;

/// The words of one shop.
pub struct Texts {
    store: Arc<dyn Store>,
    log: String,
    at_hand: RwLock<AtHand>,
}

#[derive(Default)]
struct AtHand {
    texts: BTreeMap<Words, String>,
    /// How often words were forgotten: what was read before the last time is not kept, since
    /// it may be among them.
    forgotten: u64,
}

/// What stands where words were erased.
pub const ERASED: &str = "(erased)";

impl Texts {
    /// The words of this log.
    #[must_use]
    pub fn new(store: Arc<dyn Store>, log: &str) -> Self {
        Self {
            store,
            log: log.to_owned(),
            at_hand: RwLock::default(),
        }
    }

    /// The words behind a commitment; `(erased)` if they are gone.
    #[must_use]
    pub fn text(&self, words: Words) -> String {
        let known = self.at_hand().texts.get(&words).cloned();
        known.unwrap_or_else(|| self.fetch(words))
    }

    /// The words of an optional commitment; nothing if there is none.
    #[must_use]
    pub fn text_of(&self, words: Option<Words>) -> Option<String> {
        words.map(|words| self.text(words))
    }

    fn fetch(&self, words: Words) -> String {
        let forgotten = self.at_hand().forgotten;
        let Ok(Some(private)) = self.store.private(&self.log, &words.0) else {
            return ERASED.to_owned();
        };
        let text = String::from_utf8_lossy(&private.content).into_owned();
        let mut at_hand = self.at_hand.write().unwrap_or_else(PoisonError::into_inner);
        if at_hand.forgotten == forgotten {
            at_hand.texts.insert(words, text.clone());
        }
        text
    }

    fn at_hand(&self) -> RwLockReadGuard<'_, AtHand> {
        self.at_hand.read().unwrap_or_else(PoisonError::into_inner)
    }

    /// A photo or other file behind a commitment, with its media type.
    #[must_use]
    pub fn file(&self, words: Words) -> Option<(String, Vec<u8>)> {
        let private = self.store.private(&self.log, &words.0).ok()??;
        Some((private.media, private.content))
    }

    /// How often words were forgotten.
    #[must_use]
    pub fn forgotten(&self) -> u64 {
        self.at_hand().forgotten
    }

    /// Forgets words that were erased.
    pub fn forget(&self, words: &[Words]) {
        let mut at_hand = self.at_hand.write().unwrap_or_else(PoisonError::into_inner);
        for word in words {
            at_hand.texts.remove(word);
            at_hand.forgotten += 1;
        }
    }
}
