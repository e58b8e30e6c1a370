//! Words people typed, on their way in: each `{"text", "salt"}` or `{"file", "salt"}` in
//! a sent command is replaced by its commitment, and kept apart.
//!
//! The commitment is SHA-256 of the salt and the bytes; whoever keeps bytes computes it.
//! Here it is a function handed in, so that this room needs no hash of its own.

use crate::phrases as say;
use repair::Words;
use serde_json::{Map, Value};
use thiserror::Error;

/// A text or file to be kept apart from events, with the salt of its commitment.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Private {
    /// Its commitment.
    pub words: Words,
    /// 32 random bytes made on the device.
    pub salt: [u8; 32],
    /// `text/plain` for words, else the file's media type.
    pub media: String,
    /// The words or the file.
    pub content: Vec<u8>,
}

/// Why a text cannot be taken.
#[derive(Debug, Clone, PartialEq, Eq, Error)]
pub enum BadText {
    /// The salt is missing or not 64 hexadecimal digits.
    #[error("{}", say::bad_salt(.at))]
    Salt {
        /// Where in the command.
        at: String,
    },
    /// The text is empty.
    #[error("{}", say::empty_text(.at))]
    Empty {
        /// Where in the command.
        at: String,
    },
    /// The text is too long.
    #[error("{}", say::text_too_long(.at, .length, .most))]
    TooLong {
        /// Where in the command.
        at: String,
        /// Bytes found.
        length: usize,
        /// Bytes allowed.
        most: usize,
    },
    /// The file is not base64.
    #[error("{}", say::bad_file(.at))]
    File {
        /// Where in the command.
        at: String,
    },
}

const LONGEST_TEXT: usize = 4_000;
/// The largest file: a photo as a phone sends it, made smaller.
const LARGEST_FILE: usize = 4 * 1024 * 1024;

/// What is committed to: the salt, then the bytes.
#[must_use]
pub fn commit(hash: &dyn Fn(&[&[u8]]) -> [u8; 32], salt: &[u8; 32], content: &[u8]) -> Words {
    Words(hash(&[salt, content]))
}

/// Replaces every text in a sent command by its commitment and returns the texts.
///
/// # Errors
/// [`BadText`]: where in the command, what is wrong, how to mend it.
pub fn take_texts(
    value: &mut Value,
    hash: &dyn Fn(&[&[u8]]) -> [u8; 32],
) -> Result<Vec<Private>, BadText> {
    let mut out = Vec::new();
    walk(value, "", hash, &mut out)?;
    Ok(out)
}

fn walk(
    value: &mut Value,
    at: &str,
    hash: &dyn Fn(&[&[u8]]) -> [u8; 32],
    out: &mut Vec<Private>,
) -> Result<(), BadText> {
    match value {
        Value::Object(map) => {
            if let Some(private) = text(map, at, hash)? {
                *value = Value::String(private.words.hex());
                out.push(private);
                return Ok(());
            }
            if let Some(private) = file(map, at, hash)? {
                *value = serde_json::json!({
                    "words": private.words.hex(),
                    "media": private.media,
                });
                out.push(private);
                return Ok(());
            }
            for (key, inner) in map.iter_mut() {
                let place = if at.is_empty() {
                    key.clone()
                } else {
                    format!("{at}.{key}")
                };
                walk(inner, &place, hash, out)?;
            }
            Ok(())
        }
        Value::Array(list) => {
            for (index, inner) in list.iter_mut().enumerate() {
                walk(inner, &format!("{at}[{index}]"), hash, out)?;
            }
            Ok(())
        }
        _ => Ok(()),
    }
}

fn text(
    map: &Map<String, Value>,
    at: &str,
    hash: &dyn Fn(&[&[u8]]) -> [u8; 32],
) -> Result<Option<Private>, BadText> {
    let Some(Value::String(text)) = map.get("text") else {
        return Ok(None);
    };
    // `line-worded` has a field `text` too, beside others that no text has.
    if map.keys().any(|key| key != "text" && key != "salt") {
        return Ok(None);
    }
    let at = at.to_owned();
    let content = text.trim().as_bytes().to_vec();
    if content.is_empty() {
        return Err(BadText::Empty { at });
    }
    if content.len() > LONGEST_TEXT {
        return Err(BadText::TooLong {
            at,
            length: content.len(),
            most: LONGEST_TEXT,
        });
    }
    let salt = salt(map).ok_or(BadText::Salt { at })?;
    Ok(Some(Private {
        words: commit(hash, &salt, &content),
        salt,
        media: "text/plain".to_owned(),
        content,
    }))
}

fn file(
    map: &Map<String, Value>,
    at: &str,
    hash: &dyn Fn(&[&[u8]]) -> [u8; 32],
) -> Result<Option<Private>, BadText> {
    let Some(Value::String(file)) = map.get("file") else {
        return Ok(None);
    };
    let at = || at.to_owned();
    let Some(Value::String(media)) = map.get("media") else {
        return Err(BadText::File { at: at() });
    };
    let content = base64(file).ok_or_else(|| BadText::File { at: at() })?;
    if content.is_empty() {
        return Err(BadText::Empty { at: at() });
    }
    if content.len() > LARGEST_FILE {
        return Err(BadText::TooLong {
            at: at(),
            length: content.len(),
            most: LARGEST_FILE,
        });
    }
    let salt = salt(map).ok_or_else(|| BadText::Salt { at: at() })?;
    Ok(Some(Private {
        words: commit(hash, &salt, &content),
        salt,
        media: media.clone(),
        content,
    }))
}

fn salt(map: &Map<String, Value>) -> Option<[u8; 32]> {
    let Some(Value::String(salt)) = map.get("salt") else {
        return None;
    };
    Words::from_hex(salt).map(|bytes| bytes.0)
}

fn base64(text: &str) -> Option<Vec<u8>> {
    use base64::Engine;
    base64::engine::general_purpose::STANDARD.decode(text).ok()
}

/// A value as text with its keys in order and no blanks: the same on every machine,
/// whatever order a device wrote its keys in.
#[must_use]
pub fn canonical(value: &Value) -> String {
    match value {
        Value::Object(map) => {
            let mut keys: Vec<_> = map.keys().collect();
            keys.sort();
            let inner: Vec<_> = keys
                .into_iter()
                .map(|key| format!("{}:{}", Value::String(key.clone()), canonical(&map[key])))
                .collect();
            format!("{{{}}}", inner.join(","))
        }
        Value::Array(list) => {
            let inner: Vec<_> = list.iter().map(canonical).collect();
            format!("[{}]", inner.join(","))
        }
        other => other.to_string(),
    }
}
