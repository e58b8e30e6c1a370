//! The one table of calculators.

use crate::form::{Calculator, Say};
use crate::{belt, coolant, fluids, roadtest, threads};

/// Calculators of one subject, on one page and under one address.
#[derive(Debug, Clone, Copy)]
pub struct Room {
    /// Its name in an address.
    pub code: &'static str,
    pub(crate) name: Say,
    pub(crate) what: Say,
    pub(crate) cautions: &'static [Say],
    pub(crate) notes: &'static [(Say, Say)],
    /// What can be asked.
    pub calculators: &'static [Calculator],
}

impl Room {
    /// What it is called.
    #[must_use]
    pub fn name(&self) -> &'static str {
        (self.name)()
    }

    /// What is in it, in a few words.
    #[must_use]
    pub fn what(&self) -> &'static str {
        (self.what)()
    }

    /// Before anything in it.
    #[must_use]
    pub fn cautions(&self) -> Vec<&'static str> {
        self.cautions.iter().map(|text| text()).collect()
    }

    /// What to know beside it: a title, and a few sentences.
    #[must_use]
    pub fn notes(&self) -> Vec<(&'static str, &'static str)> {
        self.notes
            .iter()
            .map(|(title, text)| (title(), text()))
            .collect()
    }
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
