//! What a person chooses among with chips, as stored code and spoken word.

use crate::phrases::vehicle as say;
use serde_json::{Value, json};
use shop::map::called;
use shop::planning::StageShown;

/// Choices of a page: what is stored, and what is said.
pub type Choices = [(&'static str, fn() -> &'static str)];

/// The choices in words, as chips take them.
pub fn spoken(list: &Choices) -> Vec<(&'static str, &'static str)> {
    list.iter().map(|(code, word)| (*code, word())).collect()
}

/// Where a stage is worked on, in words.
pub fn place_of(stage: &StageShown) -> &str {
    match &stage.place {
        Some(at) => called(at),
        None => say::anywhere(),
    }
}

/// What a thing is.
pub const KINDS: &Choices = &[
    ("fasteners", say::bolts_screws_nuts),
    ("clips", say::clips),
    ("part", say::a_part),
    ("cover", say::cover),
    ("hose", say::hose_pipe),
    ("connector", say::plug),
    ("seal", say::seal),
    ("belt", say::belt),
    ("fluid", say::fluid),
    ("put-in", say::put_in),
];

/// What it belongs to.
pub const SYSTEMS: &Choices = &[
    ("brakes", say::brakes),
    ("steering", say::steering),
    ("wheels", say::wheels),
    ("suspension", say::suspension),
    ("fuel", say::fuel),
    ("restraints", say::airbags_belts),
    ("drive-belt", say::drive_belt),
    ("high-voltage", say::high_voltage),
    ("cooling", say::cooling),
    ("oil", say::engine_oil),
    ("engine", say::engine),
    ("transmission", say::gearbox),
    ("intake", say::intake),
    ("exhaust", say::exhaust),
    ("battery", say::battery),
    ("electrical", say::electrical),
    ("climate", say::climate),
    ("body", say::body_covers),
];

/// Where it is worked on.
pub const ZONES: &Choices = &[
    ("above", say::above),
    ("below", say::below),
    ("wheel-well", say::wheel_well),
    ("cabin", say::cabin),
    ("rear", say::rear),
    ("outside", say::outside),
    ("unknown", say::not_told),
];

/// Every code mapped to itself.
pub fn same(list: &Choices) -> Value {
    list.iter()
        .map(|(code, _)| ((*code).to_owned(), json!(code)))
        .collect::<serde_json::Map<_, _>>()
        .into()
}
