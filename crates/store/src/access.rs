//! What stands beside a log about who may use it: devices that joined, who is signed in on
//! them, PINs as hashes.
//!
//! It is no part of the record: it is in no chain, no event names it, and it changes in place.
//! A copy of the folder takes it along; lines of JSON do not.

/// One entry, found by its key in its drawer.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Access {
    pub key: String,
    pub value: String,
    /// Counts its changes, from 1.
    pub version: u64,
}

/// A change of one entry, made only where nobody else was quicker.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct AccessChange {
    pub log: String,
    pub drawer: String,
    pub key: String,
    /// The version that it changes; 0: there is none yet.
    pub from: u64,
    /// What stands there afterwards; `None`: nothing.
    pub to: Option<String>,
}
