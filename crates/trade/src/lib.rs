//! What people of the trade call the things of a vehicle, and what opening them owes and shuts.
//!
//! [`says`] reads a typed line: which things it names, how many, of what size, on which side;
//! and for each, from the tables in `data`: its system, whether the stricter rules hold, which
//! works are owed once it was off, open, drained or disturbed, which gates are shut while it is
//! and after it is back until the works are done, and which caution stands before.
//! [`may`] asks the same of a whole vehicle.
//!
//! The knowledge is data a technician can read: one TOML file a system, each fact with its
//! source or grade, each file with a version. [`Vocabulary::with`] adds a shop's own words and
//! rules; they may ask more, never less, of the safety class.
//!
//! # What this crate must never know
//!
//! - Orders, people, events, storage, screens: it takes words and gives values.
//! - Whether a thing is off: it is told.
//! - A default for what nobody named: what is not known stays a question, and shuts every gate.

mod additions;
mod amounts;
mod branch;
mod chunks;
mod derive;
mod find;
mod fold;
mod gates;
mod may;
mod phrases;
mod read;
mod said;
mod segment;
mod side;
mod table;
mod vocabulary;
mod waivers;
mod words;
mod work;

pub use branch::Branch;
pub use gates::Gates;
pub use may::{Answer, Stands, Thing, Why, may};
pub use read::{says, says_after};
pub use said::{Count, Grade, Happens, Owes, Rule, Said, Sure};
pub use side::Side;
pub use table::{TableError, kind_code, zone_code};
pub use vocabulary::Vocabulary;
pub use waivers::{Caution, Never, Waiver, Waivers, cautions, waivers};
pub use work::{Code, Shared, Work};
