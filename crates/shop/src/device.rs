//! A device that sends commands: the demo, the command line and tests are devices too.

use jiff::Timestamp;
use serde_json::{Value, json};
use uuid::Uuid;

/// A device with its own queue.
#[derive(Debug)]
pub struct Device {
    name: String,
    who: String,
    seq: u64,
}

impl Device {
    /// A device of this name, in the hand of this person.
    #[must_use]
    pub fn new(name: &str, who: &str) -> Self {
        Self {
            name: name.to_owned(),
            who: who.to_owned(),
            seq: 0,
        }
    }

    /// A new name for a thing.
    #[must_use]
    pub fn name() -> String {
        Uuid::now_v7().to_string()
    }

    /// Words as a command carries them, with a salt made here.
    #[must_use]
    pub fn words(text: &str) -> Value {
        // Two version 4 uuids hold 244 random bits: more than a guess can reach.
        let salt = format!("{}{}", Uuid::new_v4().simple(), Uuid::new_v4().simple());
        json!({ "text": text, "salt": salt })
    }

    /// Thirty-two bytes that nobody guesses: two version 4 uuids hold 244 random bits.
    #[must_use]
    pub fn salt() -> [u8; 32] {
        let mut salt = [0; 32];
        salt[..16].copy_from_slice(Uuid::new_v4().as_bytes());
        salt[16..].copy_from_slice(Uuid::new_v4().as_bytes());
        salt
    }

    /// A text too long for words, such as a map's, as a command carries it.
    #[must_use]
    pub fn document(text: &str, media: &str) -> Value {
        Self::file(text.as_bytes(), media)
    }

    /// A file, such as a paper that was given out, as a command carries it.
    #[must_use]
    pub fn file(bytes: &[u8], media: &str) -> Value {
        use base64::Engine;
        let base64 = base64::engine::general_purpose::STANDARD.encode(bytes);
        let salt = format!("{}{}", Uuid::new_v4().simple(), Uuid::new_v4().simple());
        json!({ "file": base64, "media": media, "salt": salt })
    }

    /// A command: `part` is the field it stands in, `fact`, `request`, `shop_fact`, …
    pub fn command(&mut self, stream: &str, at: Timestamp, part: &str, content: Value) -> Value {
        self.seq += 1;
        json!({
            "command_id": Self::name(),
            "device": self.name,
            "device_seq": self.seq,
            "happened_at": at.to_string(),
            "who": self.who,
            "stream": stream,
            part: content,
        })
    }
}
