//! What goes into the log, what comes out of it, and the hashes that hold it together.

use std::collections::BTreeMap;

use sha2::{Digest, Sha256};

/// A SHA-256 value.
pub type Hash = [u8; 32];

/// An event as its command brings it; the store adds everything else.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct NewEvent {
    /// The stream it belongs to (an order, a vehicle, the shop).
    pub stream: String,
    pub kind: String,
    /// The version of the stored form of `kind`.
    pub version: u32,
    /// The stored form. Kept and hashed byte for byte, never written anew.
    pub body: Vec<u8>,
}

/// A text or file that can be erased, under the commitment that an event holds.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Private {
    /// [`commitment`] of salt and content.
    pub id: Hash,
    /// 32 random bytes made on the device, so that the commitment of a short text
    /// can't be guessed once both are erased.
    pub salt: [u8; 32],
    /// The media type of the content, such as `text/plain` or `image/jpeg`. Not part of
    /// the commitment.
    pub media: String,
    pub content: Vec<u8>,
}

impl Private {
    /// Whether the content is what the commitment promised.
    #[must_use]
    pub fn matches(&self) -> bool {
        self.id == commitment(&self.salt, &self.content)
    }
}

/// What is to be appended in one piece, or not at all.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Command {
    pub log: String,
    /// A uuid; a command sent twice with one id counts once.
    pub command_id: String,
    /// A digest of the command with its texts replaced by their commitments, made by
    /// the caller. Two commands with one id and one digest are the same command.
    pub digest: Hash,
    /// Who says so (an id, not a name).
    pub who: String,
    pub device: String,
    /// The command's number in its device's queue.
    pub device_seq: u64,
    /// When it happened, as the device wrote it (RFC 3339).
    pub happened_at: String,
    /// When the program took it in, as the caller wrote it (RFC 3339).
    pub recorded_at: String,
    /// For a decision: the last sequence number it has seen, for each stream that it
    /// read. Empty for a fact, which is taken whatever the sequence number.
    pub expected: BTreeMap<String, u64>,
    /// At least one.
    pub events: Vec<NewEvent>,
    /// Texts and files that the events hold commitments of.
    pub private: Vec<Private>,
    /// Commitments whose text and salt are to be deleted. The command's events say so;
    /// `verify` asks for that.
    pub erase: Vec<Hash>,
}

/// The answer to an accepted command: the rows it made.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum Outcome {
    /// Appended now.
    Appended(Vec<Row>),
    /// The same command was accepted before; these are the rows it made then.
    Repeated(Vec<Row>),
}

impl Outcome {
    /// The rows that the command made, now or when it was first sent.
    #[must_use]
    pub fn rows(&self) -> &[Row] {
        match self {
            Self::Appended(rows) | Self::Repeated(rows) => rows,
        }
    }
}

/// One event in its log.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Row {
    pub log: String,
    /// From 1, without gaps.
    pub position: u64,
    pub stream: String,
    /// From 1, without gaps, within the stream.
    pub seq: u64,
    pub kind: String,
    pub version: u32,
    pub body: Vec<u8>,
    pub happened_at: String,
    pub device: String,
    pub device_seq: u64,
    pub recorded_at: String,
    pub who: String,
    pub command_id: String,
    /// The event's place within its command, from 0.
    pub nth: u32,
    pub command_digest: Hash,
    /// The hash of the row before; [`first_hash`] at position 1.
    pub prev_hash: Hash,
    /// SHA-256 of all the above.
    pub hash: Hash,
}

impl Row {
    /// The hash that the other columns call for: SHA-256 over a version tag and every
    /// column but `hash`, in the order of the struct. Each is preceded by its length in
    /// 8 bytes, and numbers are 8 bytes, highest first, so that no two different rows
    /// can give the same bytes.
    #[must_use]
    pub fn expected_hash(&self) -> Hash {
        hash_of(&[
            b"buttonup row 1",
            self.log.as_bytes(),
            &self.position.to_be_bytes(),
            self.stream.as_bytes(),
            &self.seq.to_be_bytes(),
            self.kind.as_bytes(),
            &u64::from(self.version).to_be_bytes(),
            &self.body,
            self.happened_at.as_bytes(),
            self.device.as_bytes(),
            &self.device_seq.to_be_bytes(),
            self.recorded_at.as_bytes(),
            self.who.as_bytes(),
            self.command_id.as_bytes(),
            &u64::from(self.nth).to_be_bytes(),
            &self.command_digest,
            &self.prev_hash,
        ])
    }
}

/// The end of a log.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Head {
    /// The last row's position; 0 in an empty log.
    pub position: u64,
    /// The last row's hash; [`first_hash`] in an empty log.
    pub hash: Hash,
}

impl Head {
    /// The head of a log that holds nothing yet.
    #[must_use]
    pub fn empty(log: &str) -> Self {
        Self {
            position: 0,
            hash: first_hash(log),
        }
    }

    pub(crate) fn at(row: &Row) -> Self {
        Self {
            position: row.position,
            hash: row.hash,
        }
    }
}

/// The end of a stream.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct StreamHead {
    pub stream: String,
    /// The last row's sequence number.
    pub seq: u64,
}

/// What stands for the hash of the row before the first: it depends on the log's name,
/// so that one log's rows can't be passed off as another's.
#[must_use]
pub fn first_hash(log: &str) -> Hash {
    hash_of(&[b"buttonup log 1", log.as_bytes()])
}

/// The commitment that an event holds in place of a private text or file:
/// SHA-256(salt | content).
///
/// ```
/// let id = store::commitment(&[7; 32], b"Left front wheel nut seized");
/// assert_ne!(id, store::commitment(&[8; 32], b"Left front wheel nut seized"));
/// ```
#[must_use]
pub fn commitment(salt: &[u8; 32], content: &[u8]) -> Hash {
    let mut hasher = Sha256::new();
    hasher.update(salt);
    hasher.update(content);
    hasher.finalize().into()
}

fn hash_of(fields: &[&[u8]]) -> Hash {
    let mut hasher = Sha256::new();
    for field in fields {
        hasher.update((field.len() as u64).to_be_bytes());
        hasher.update(field);
    }
    hasher.finalize().into()
}
