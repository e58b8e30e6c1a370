//! The one table of calculators.

use crate::form::Calculator;
use crate::{belt, coolant, fluids, roadtest, threads};

/// Calculators of one subject, on one page and under one address.
#[derive(Debug, Clone, Copy)]
pub struct Room {
    /// Its name in an address.
    pub code: &'static str,
    /// What it is called.
    pub name: &'static str,
    /// What is in it, in a few words.
    pub what: &'static str,
    /// Before anything in it.
    pub cautions: &'static [&'static str],
    /// What to know beside it: a title, and a few sentences.
    pub notes: &'static [(&'static str, &'static str)],
    /// What can be asked.
    pub calculators: &'static [Calculator],
}

/// Every calculator that has a page.
pub const ROOMS: &[Room] = &[
    threads::ROOM,
    coolant::ROOM,
    fluids::ROOM,
    belt::ROOM,
    roadtest::ROOM,
];

/// A room by its name in an address.
#[must_use]
pub fn room(code: &str) -> Option<&'static Room> {
    ROOMS.iter().find(|room| room.code == code)
}

/// A calculator by its room's name and its own.
#[must_use]
pub fn calculator(room: &str, code: &str) -> Option<&'static Calculator> {
    let room = self::room(room)?;
    room.calculators.iter().find(|one| one.code == code)
}
