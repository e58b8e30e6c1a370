//! The words behind commitments, read when they are wanted and kept at hand.

use crate::phrases::keep;
use crate::trouble::{Trouble, TroubleKind};
use repair::Words;
use std::cell::RefCell;
use std::collections::BTreeMap;
use std::sync::{Arc, Mutex, MutexGuard, PoisonError};
use store::{Private, Store};

/// The words of one shop.
pub struct Texts {
    store: Arc<dyn Store>,
    log: String,
    at_hand: Mutex<AtHand>,
}

/// Two shelves: when the first is full it becomes the second, and what stood there is let go.
/// What is asked for comes back to the first.
#[derive(Default)]
struct AtHand {
    first: Shelf,
    second: Shelf,
    /// How large files are: what stands behind a commitment never changes.
    sizes: BTreeMap<Words, u64>,
    /// How often words were forgotten: what was read before the last time is not kept, since
    /// it may be among them.
    forgotten: u64,
}

#[derive(Default)]
struct Shelf {
    texts: BTreeMap<Words, String>,
    bytes: usize,
}

/// How much stands on one shelf: every name, plate and complaint of some thousand orders.
const MOST_BYTES: usize = 2 * 1024 * 1024;

/// So many sizes are kept at hand; then they are read anew.
const MOST_SIZES: usize = 20_000;

/// What each text takes beside its own letters.
const BESIDE: usize = 100;

/// What stands where words were erased.
pub const ERASED: &str = "(erased)";

/// What stands where words cannot be read; nobody gets to see it, see [`whole`].
const FAULT: &str = "(cannot be read)";

thread_local! {
    /// The first fault in reading words on this thread since [`whole`] began.
    static MET: RefCell<Option<Trouble>> = const { RefCell::new(None) };
    /// Words that came with the command that is being decided on this thread, see
    /// [`with_sent`].
    static SENT: RefCell<BTreeMap<Words, String>> = const { RefCell::new(BTreeMap::new()) };
}

/// Does something about a command whose words are not written down yet, and may never be: what
/// is said of it can name them.
pub(crate) fn with_sent<T>(sent: &[record::Private], act: impl FnOnce() -> T) -> T {
    let texts = sent.iter().filter(|sent| sent.media == "text/plain");
    let texts = texts.map(|sent| {
        let text = String::from_utf8_lossy(&sent.content).into_owned();
        (sent.words, text)
    });
    SENT.set(texts.collect());
    let done = act();
    SENT.set(BTreeMap::new());
    done
}

/// Does some looking. If words could not be read in the course of it, it comes to that
/// fault, whatever else it came to: a page, a paper or an answer never shows a gap for
/// something that was not erased.
///
/// # Errors
/// The fault, or what the looking itself came to.
pub fn whole<T>(look: impl FnOnce() -> Result<T, Trouble>) -> Result<T, Trouble> {
    let around = MET.take();
    let found = look();
    match MET.replace(around) {
        Some(fault) => Err(fault),
        None => found,
    }
}

/// Whether words could not be read on this thread since [`whole`] began: what was made of them
/// is not to be kept.
pub(crate) fn fault_met() -> bool {
    MET.with_borrow(Option::is_some)
}

impl Texts {
    /// The words of this log.
    #[must_use]
    pub fn new(store: Arc<dyn Store>, log: &str) -> Self {
        Self {
            store,
            log: log.to_owned(),
            at_hand: Mutex::default(),
        }
    }

    /// The words behind a commitment; `(erased)` if they were erased. Where they cannot be
    /// read, the [`whole`] around comes to a fault.
    #[must_use]
    pub fn text(&self, words: Words) -> String {
        let sent = || SENT.with_borrow(|sent| sent.get(&words).cloned());
        let known = self.at_hand().get(words).or_else(sent);
        known.unwrap_or_else(|| {
            self.fetch(words).unwrap_or_else(|fault| {
                MET.with_borrow_mut(|met| met.get_or_insert(fault).kind);
                FAULT.to_owned()
            })
        })
    }

    /// The words of an optional commitment; nothing if there is none.
    #[must_use]
    pub fn text_of(&self, words: Option<Words>) -> Option<String> {
        words.map(|words| self.text(words))
    }

    fn fetch(&self, words: Words) -> Result<String, Trouble> {
        let forgotten = self.at_hand().forgotten;
        let private = match self.look_up(words)? {
            Found::There(private) => private,
            Found::Erased => return Ok(ERASED.to_owned()),
            Found::Nothing => return Err(missing(words)),
        };
        let text = String::from_utf8_lossy(&private.content).into_owned();
        let mut at_hand = self.at_hand();
        if at_hand.forgotten == forgotten {
            at_hand.put(words, text.clone());
        }
        Ok(text)
    }

    fn at_hand(&self) -> MutexGuard<'_, AtHand> {
        self.at_hand.lock().unwrap_or_else(PoisonError::into_inner)
    }

    /// A photo or other file behind a commitment, with its media type; nothing if it was
    /// erased.
    ///
    /// # Errors
    /// [`Trouble`], if there is none of that name, or it cannot be read.
    pub fn file(&self, words: Words) -> Result<Option<(String, Vec<u8>)>, Trouble> {
        match self.look_up(words)? {
            Found::There(private) => Ok(Some((private.media, private.content))),
            Found::Erased => Ok(None),
            Found::Nothing => Err(Trouble::not_found(keep::no_such_file())),
        }
    }

    /// How large the file behind a commitment is; nothing if it was erased.
    ///
    /// # Errors
    /// [`Trouble`], if there is none of that name, or it cannot be read.
    pub fn size(&self, words: Words) -> Result<Option<u64>, Trouble> {
        let (known, forgotten) = {
            let at_hand = self.at_hand();
            (at_hand.sizes.get(&words).copied(), at_hand.forgotten)
        };
        if known.is_some() {
            return Ok(known);
        }
        let bytes = self.file(words)?.map(|(_, content)| content.len() as u64);
        let mut at_hand = self.at_hand();
        if let Some(bytes) = bytes
            && at_hand.forgotten == forgotten
        {
            if at_hand.sizes.len() >= MOST_SIZES {
                at_hand.sizes.clear();
            }
            at_hand.sizes.insert(words, bytes);
        }
        Ok(bytes)
    }

    fn look_up(&self, words: Words) -> Result<Found, Trouble> {
        Ok(match self.store.private(&self.log, &words.0)? {
            Some(private) => Found::There(private),
            None if self.store.is_erased(&self.log, &words.0)? => Found::Erased,
            None => Found::Nothing,
        })
    }

    /// How often words were forgotten.
    #[must_use]
    pub fn forgotten(&self) -> u64 {
        self.at_hand().forgotten
    }

    /// Forgets words that were erased.
    pub fn forget(&self, words: &[Words]) {
        let mut at_hand = self.at_hand();
        for word in words {
            at_hand.first.remove(*word);
            at_hand.second.remove(*word);
            at_hand.sizes.remove(word);
            at_hand.forgotten += 1;
        }
    }
}

/// What is behind a commitment.
enum Found {
    There(Private),
    Erased,
    Nothing,
}

/// An event names it, so it was there once.
fn missing(words: Words) -> Trouble {
    Trouble::new(
        TroubleKind::Record,
        crate::phrases::service::the_record(),
        keep::text_is_missing(words.hex()),
        keep::verify_and_restore(),
    )
}

impl AtHand {
    fn get(&mut self, words: Words) -> Option<String> {
        if let Some(text) = self.first.texts.get(&words) {
            return Some(text.clone());
        }
        let text = self.second.remove(words)?;
        self.put(words, text.clone());
        Some(text)
    }

    fn put(&mut self, words: Words, text: String) {
        let bytes = text.len() + BESIDE;
        if self.first.bytes + bytes > MOST_BYTES {
            self.second = std::mem::take(&mut self.first);
        }
        if bytes <= MOST_BYTES && self.first.texts.insert(words, text).is_none() {
            self.first.bytes += bytes;
        }
    }
}

impl Shelf {
    fn remove(&mut self, words: Words) -> Option<String> {
        let text = self.texts.remove(&words)?;
        self.bytes -= text.len() + BESIDE;
        Some(text)
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn what_is_kept_at_hand_has_a_bound() {
        let mut at_hand = AtHand::default();
        let name = |nth: u32| {
            let mut name = [0; 32];
            name[..4].copy_from_slice(&nth.to_be_bytes());
            Words(name)
        };
        for nth in 0..10_000 {
            at_hand.put(name(nth), "x".repeat(4_000));
            assert!(at_hand.get(name(0)).is_some(), "asked for again and again");
        }
        assert!(at_hand.first.bytes <= MOST_BYTES && at_hand.second.bytes <= MOST_BYTES);
        assert!(at_hand.get(name(9_999)).is_some());
        assert!(at_hand.get(name(1)).is_none());
        for shelf in [&at_hand.first, &at_hand.second] {
            let bytes: usize = shelf.texts.values().map(|text| text.len() + BESIDE).sum();
            assert_eq!(bytes, shelf.bytes);
        }
    }
}
