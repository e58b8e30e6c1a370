//! A text in every language, for what is kept for whoever asks next.

use phrases::{Language, speaking};

/// A text in every language, in the sequence of [`Language::ALL`].
#[derive(Debug, Clone, PartialEq, Eq)]
pub(crate) struct InEach([String; Language::ALL.len()]);

impl InEach {
    /// Says it in every language.
    pub(crate) fn of<T: Into<String>>(say: impl Fn() -> T) -> Self {
        Self(Language::ALL.map(|language| speaking(language, || say().into())))
    }

    /// As it is said in this language.
    pub(crate) fn said(&self, language: Language) -> &str {
        let nth = Language::ALL.iter().position(|one| *one == language);
        nth.map_or("", |nth| &self.0[nth])
    }

    /// As it is compared: the same, whatever is spoken.
    pub(crate) fn code(&self) -> &str {
        self.said(Language::default())
    }
}
