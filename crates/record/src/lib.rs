//! Stored and sent forms of events, with their versions.
//!
//! Core types derive no stored form, so that none becomes a promise by accident. Each
//! form is a type of its own in [`v1`]; once it has landed it is never changed, only
//! added to with a higher version.
//!
//! This room knows nothing of where bytes are kept, of hashes, of networks or of pages.

pub mod form;
pub mod v1;

mod event;
mod phrases;
mod words;

pub use event::{AnyEvent, Stored, Stream, Unkept, decode, encode, encode_checked};
pub use words::{BadText, Private, canonical, commit, take_texts};
