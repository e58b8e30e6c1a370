//! Threads, their strength, torque and clamp, the repair of a torn thread, and
//! the way to a stub out of its hole.
//!
//! Every calculator here is a plain function from values to values; those that
//! people ask for come with a [`measure::Working`]. What people write is read in
//! `calculators`.
//!
//! # What this crate must never know
//!
//! - Vehicles, orders, items, prices of a shop or anything that is stored.
//! - A torque that nobody specified: what a joint could carry is shown as such
//!   and marked "not a specification".
//! - Files, clocks, environment, chance. The same question has the same answer
//!   on every machine.

pub mod class;
pub mod clearance;
pub mod designation;
pub mod drill;
pub mod exchange;
pub mod extract;
mod figures;
pub mod friction;
pub mod head;
pub mod holds;
mod loads;
pub mod near_miss;
pub mod parent;
pub mod pattern;
mod phrases;
pub mod pipe;
pub mod pulley;
pub mod purpose;
pub mod repair;
pub mod section;
pub mod seized;
mod series;
mod sources;
pub mod strip;
pub mod thread;
pub mod tolerance;
pub mod torque;
pub mod twist;
mod words;
pub mod wrench;

pub use class::Class;
pub use designation::{Designation, Unreadable};
pub use thread::{Geometry, Series, Standard, Thread, ThreadTrouble};
