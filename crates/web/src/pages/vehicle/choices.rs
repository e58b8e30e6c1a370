//! What a person chooses among with chips, as stored code and spoken word.

use serde_json::{Value, json};

/// What a thing is.
pub const KINDS: &[(&str, &str)] = &[
    ("fasteners", "bolts, screws, nuts"),
    ("clips", "clips"),
    ("part", "part"),
    ("cover", "cover"),
    ("hose", "hose, pipe"),
    ("connector", "plug"),
    ("seal", "seal"),
    ("belt", "belt"),
    ("fluid", "fluid"),
    ("put-in", "put in"),
];

/// What it belongs to.
pub const SYSTEMS: &[(&str, &str)] = &[
    ("brakes", "brakes"),
    ("steering", "steering"),
    ("wheels", "wheels"),
    ("suspension", "suspension"),
    ("fuel", "fuel"),
    ("restraints", "airbags, belts"),
    ("drive-belt", "drive belt"),
    ("high-voltage", "high voltage"),
    ("cooling", "cooling"),
    ("oil", "engine oil"),
    ("engine", "engine"),
    ("transmission", "gearbox"),
    ("intake", "intake"),
    ("exhaust", "exhaust"),
    ("battery", "battery"),
    ("electrical", "electrical"),
    ("climate", "climate"),
    ("body", "body, covers"),
];

/// Where it is worked on.
pub const ZONES: &[(&str, &str)] = &[
    ("above", "above"),
    ("below", "below"),
    ("wheel-well", "wheel well"),
    ("cabin", "cabin"),
    ("rear", "rear"),
    ("outside", "outside"),
    ("unknown", "not told"),
];

/// Every code mapped to itself.
pub fn same(list: &[(&str, &str)]) -> Value {
    list.iter()
        .map(|(code, _)| ((*code).to_owned(), json!(code)))
        .collect::<serde_json::Map<_, _>>()
        .into()
}
