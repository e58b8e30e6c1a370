//! What may stand in an event in place of text: a commitment to words people typed,
//! a short token, or a measured value as it was written.

use crate::phrases as say;
use std::fmt;
use thiserror::Error;

/// A commitment to words or a file that stand elsewhere and can be erased there:
/// SHA-256 of 32 random bytes and the words.
#[derive(Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub struct Words(pub [u8; 32]);

/// A commitment to a photo, a signature or another file, with its media type.
#[derive(Debug, Clone, PartialEq, Eq, PartialOrd, Ord)]
pub struct File {
    /// The commitment.
    pub words: Words,
    /// Its media type, such as `image/jpeg`.
    pub media: Token,
}

/// A short typed code, such as a size (`M8x75 8.8`) or a container (`tray A`). Too
/// short and too plain for a sentence about a person.
#[derive(Debug, Clone, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub struct Token(String);

/// A measured value exactly as it was written, such as `9.2 L`.
#[derive(Debug, Clone, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub struct Written(String);

/// Why a text cannot be taken as a token or a measured value.
#[derive(Debug, Clone, PartialEq, Eq, Error)]
pub enum NotPlain {
    /// Nothing was written.
    #[error("{}", say::is_empty())]
    Empty,
    /// It is longer than a code can be.
    #[error("{}", say::too_many_characters(.length, .most))]
    TooLong {
        /// Characters found.
        length: usize,
        /// Characters allowed.
        most: usize,
    },
    /// A character that no code has.
    #[error("{}", say::cannot_stand_in_a_code(format_args!("{:?}", .found), .position))]
    Character {
        /// The character.
        found: char,
        /// Its place, from 1.
        position: usize,
    },
}

impl Words {
    /// The commitment as 64 hexadecimal digits.
    #[must_use]
    pub fn hex(&self) -> String {
        use fmt::Write;
        self.0.iter().fold(String::with_capacity(64), |mut out, b| {
            let _ = write!(out, "{b:02x}");
            out
        })
    }

    /// Reads 64 hexadecimal digits.
    #[must_use]
    pub fn from_hex(text: &str) -> Option<Self> {
        let bytes = text.as_bytes();
        if bytes.len() != 64 || !bytes.iter().all(u8::is_ascii_hexdigit) {
            return None;
        }
        let mut out = [0; 32];
        for (index, byte) in out.iter_mut().enumerate() {
            *byte = u8::from_str_radix(text.get(index * 2..index * 2 + 2)?, 16).ok()?;
        }
        Some(Self(out))
    }
}

impl fmt::Debug for Words {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        write!(f, "Words({}…)", &self.hex()[..8])
    }
}

fn plain(text: &str, most: usize) -> Result<String, NotPlain> {
    let text = text.trim();
    let length = text.chars().count();
    if length == 0 {
        return Err(NotPlain::Empty);
    }
    if length > most {
        return Err(NotPlain::TooLong { length, most });
    }
    let odd = text.chars().enumerate().find(|(_, c)| {
        !(c.is_alphanumeric() || " .,/#\"'-+%°·×()_:*²³µ\u{202f}\u{a0}".contains(*c))
    });
    match odd {
        Some((index, found)) => Err(NotPlain::Character {
            found,
            position: index + 1,
        }),
        None => Ok(text.to_owned()),
    }
}

impl Token {
    /// Takes a code of at most 40 plain characters.
    ///
    /// # Errors
    /// [`NotPlain`]: empty, too long, or a character no code has.
    pub fn new(text: &str) -> Result<Self, NotPlain> {
        plain(text, 40).map(Self)
    }

    /// The code as text.
    #[must_use]
    pub fn as_str(&self) -> &str {
        &self.0
    }
}

impl Written {
    /// Takes a measured value of at most 40 plain characters.
    ///
    /// # Errors
    /// [`NotPlain`]: empty, too long, or a character no value has.
    pub fn new(text: &str) -> Result<Self, NotPlain> {
        plain(text, 40).map(Self)
    }

    /// The value as it was written.
    #[must_use]
    pub fn as_str(&self) -> &str {
        &self.0
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_commitment_reads_back() {
        let words = Words([0xa7; 32]);
        assert_eq!(Words::from_hex(&words.hex()), Some(words));
        assert_eq!(Words::from_hex("a7"), None);
        assert_eq!(Words::from_hex(&"é".repeat(32)), None);
    }

    #[test]
    fn a_token_is_short_and_plain() {
        assert_eq!(Token::new(" M8x75 8.8 ").unwrap().as_str(), "M8x75 8.8");
        assert_eq!(Token::new("  "), Err(NotPlain::Empty));
        assert!(matches!(
            Token::new("a\nb"),
            Err(NotPlain::Character { position: 2, .. })
        ));
        assert!(matches!(
            Token::new(&"a".repeat(41)),
            Err(NotPlain::TooLong { .. })
        ));
    }
}
