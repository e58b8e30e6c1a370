//! What the program says, in each language it speaks, and which one is spoken now.
//!
//! Every text stands in the `phrases` module of its room, once, with a note on where it stands and
//! every language beside the other. A language that is missing, or a hole that no argument fills,
//! does not compile.
//!
//! ```
//! use phrases::{Language, phrases, speaking};
//!
//! phrases! {
//!     /// Heading of the page on which a vehicle leaves.
//!     pub hand_over = "Hand over", "Übergabe";
//!     /// Why something waits: who went for it.
//!     pub fetched_by(who) = "{who} went for it", "{who} holt es";
//!     /// How many stages of the plan are to come.
//!     pub stages_left(n) = ["{n} stage left", "{n} stages left"],
//!         ["noch {n} Schritt", "noch {n} Schritte"];
//! }
//!
//! assert_eq!(hand_over(), "Hand over");
//! assert_eq!(stages_left(1), "1 stage left");
//! let said = speaking(Language::German, || (hand_over(), fetched_by("Greta"), stages_left(3)));
//! assert_eq!(said, ("Übergabe", "Greta holt es".to_owned(), "noch 3 Schritte".to_owned()));
//! ```
//!
//! Which language is spoken belongs to the look that is being made, not to each function that helps
//! to make it: a page is made on one thread from one look, so the language is set around the look
//! with [`speaking`] and read where a text is needed.

mod numbers;

#[doc(hidden)]
pub use numbers::Hole;
pub use numbers::{figures, marked, number, number_to_type};

use std::cell::Cell;

/// A language that the program speaks.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash, Default)]
pub enum Language {
    /// English, unless something else is told.
    #[default]
    English,
    /// German.
    German,
}

impl Language {
    /// All of them.
    pub const ALL: [Self; 2] = [Self::English, Self::German];

    /// Its tag, as HTML and HTTP write it (BCP 47).
    #[must_use]
    pub fn tag(self) -> &'static str {
        match self {
            Self::English => "en",
            Self::German => "de",
        }
    }

    /// What it calls itself.
    #[must_use]
    pub fn name(self) -> &'static str {
        match self {
            Self::English => "English",
            Self::German => "Deutsch",
        }
    }
}

/// A text that is said when it is wanted, for tables of texts.
pub type Say = fn() -> &'static str;

thread_local! {
    static SPOKEN: Cell<Language> = const { Cell::new(Language::English) };
}

/// The language that is spoken on this thread now.
#[must_use]
pub fn spoken() -> Language {
    SPOKEN.get()
}

/// Does something in a language; what was spoken before is spoken after it, also where it panics.
pub fn speaking<T>(language: Language, act: impl FnOnce() -> T) -> T {
    struct Before(Language);
    impl Drop for Before {
        fn drop(&mut self) {
            SPOKEN.set(self.0);
        }
    }
    let _before = Before(SPOKEN.replace(language));
    act()
}

/// Texts of a room, each with a note on where it stands, in English and in German: a fixed text, a
/// text with holes for its arguments, or one for one and one for many of its first argument.
#[macro_export]
macro_rules! phrases {
    ($($(#[doc = $note:literal])+ $vis:vis $name:ident $(($($arg:ident),+))? = $english:tt, $german:tt;)*) => {
        $($crate::phrase! { $(#[doc = $note])+ $vis $name $(($($arg),+))? = $english, $german; })*
    };
}

/// One text of [`phrases!`].
#[doc(hidden)]
#[macro_export]
macro_rules! phrase {
    ($(#[doc = $note:literal])+ $vis:vis $name:ident = $english:literal, $german:literal;) => {
        $(#[doc = $note])+
        #[must_use]
        $vis fn $name() -> &'static str {
            match $crate::spoken() {
                $crate::Language::English => $english,
                $crate::Language::German => $german,
            }
        }
    };
    ($(#[doc = $note:literal])+ $vis:vis $name:ident ($($arg:ident),+) = $english:literal, $german:literal;) => {
        $(#[doc = $note])+
        #[must_use]
        #[allow(clippy::too_many_arguments, reason = "a sentence has as many holes as it takes")]
        $vis fn $name($($arg: impl ::std::fmt::Display),+) -> String {
            match $crate::spoken() {
                $crate::Language::English => format!($english),
                $crate::Language::German => {
                    $(let $arg = &$crate::Hole(&$arg);)+
                    $(let _ = $arg;)+
                    format!($german)
                }
            }
        }
    };
    ($(#[doc = $note:literal])+ $vis:vis $name:ident ($number:ident $(, $arg:ident)*) = [$one:literal, $many:literal], [$eins:literal, $viele:literal];) => {
        $(#[doc = $note])+
        #[must_use]
        #[allow(clippy::too_many_arguments, reason = "a sentence has as many holes as it takes")]
        $vis fn $name($number: impl $crate::Number $(, $arg: impl ::std::fmt::Display)*) -> String {
            match ($crate::spoken(), $number.is_one()) {
                ($crate::Language::English, true) => format!($one),
                ($crate::Language::English, false) => format!($many),
                ($crate::Language::German, one) => {
                    $(let $arg = &$crate::Hole(&$arg);)*
                    $(let _ = $arg;)*
                    if one { format!($eins) } else { format!($viele) }
                }
            }
        }
    };
}

/// A number that says how many there are.
pub trait Number: std::fmt::Display {
    /// Whether it takes the form for one.
    fn is_one(&self) -> bool;
}

macro_rules! numbers {
    ($($kind:ty),+) => { $(impl Number for $kind {
        fn is_one(&self) -> bool { *self == 1 }
    })+ };
}
numbers!(usize, u64, u32, u16, u8, i64, i32);

#[cfg(test)]
mod tests {
    use super::*;

    phrases! {
        /// A test's text.
        yes = "yes", "ja";
        /// A test's text; one may stand twice.
        twice(what) = "{what} and {what}", "{what} und {what}";
        /// A test's text: how many, of what.
        pieces(n, what) = ["one {what}", "{n} {what}s"], ["ein {what}", "{n} {what}"];
        /// A test's text: a measure.
        deep(mm) = "{mm:.1} mm deep", "{mm:.1} mm tief";
    }

    #[test]
    fn what_is_spoken_ends_with_what_it_was_set_around() {
        assert_eq!(yes(), "yes");
        let inner = speaking(Language::German, || {
            (speaking(Language::English, yes), yes())
        });
        assert_eq!(inner, ("yes", "ja"));
        let panicked = std::panic::catch_unwind(|| speaking(Language::German, || panic!("so")));
        assert!(panicked.is_err());
        assert_eq!(spoken(), Language::English);
    }

    #[test]
    fn decimals_stand_behind_the_mark_of_the_language() {
        assert_eq!(deep(6.25), "6.2 mm deep");
        assert_eq!(speaking(Language::German, || deep(6.25)), "6,2 mm tief");
        let typed = speaking(Language::German, || twice("30.11.2026"));
        assert_eq!(typed, "30.11.2026 und 30.11.2026");
    }

    #[test]
    fn holes_and_counts_are_filled_in_each_language() {
        assert_eq!(twice("a"), "a and a");
        assert_eq!(
            (pieces(1_u64, "bolt"), pieces(0_u64, "bolt")),
            ("one bolt".into(), "0 bolts".into())
        );
        let german = speaking(Language::German, || {
            (twice("a"), pieces(2_u16, "Schrauben"))
        });
        assert_eq!(german, ("a und a".into(), "2 Schrauben".into()));
    }
}
