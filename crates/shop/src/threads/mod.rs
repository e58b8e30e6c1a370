//! Threads asked in a form's words, with no order: what a thread is and bears, torque and
//! clamp, adapters and levers, a pulley that its belt holds, the sequence of a pattern.

mod thread;
mod tools;
mod torque;

pub use thread::{facts, thread};
pub use tools::{pattern, pulley, wrench};
pub use torque::torque;

use crate::coolant::Asked;
use fastener::ask::Trouble;

/// What each field holds, for a number that was written without its unit.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Holds {
    /// A length.
    Length,
    /// A torque.
    Torque,
    /// A force.
    Force,
    /// An angle.
    Angle,
}

const FIELDS: &[(&str, Holds)] = &[
    ("bolt-length", Holds::Length),
    ("engaged", Holds::Length),
    ("depth", Holds::Length),
    ("boss", Holds::Length),
    ("torn", Holds::Length),
    ("seat", Holds::Length),
    ("other-hole", Holds::Length),
    ("by", Holds::Length),
    ("face", Holds::Length),
    ("wrench", Holds::Length),
    ("adapter", Holds::Length),
    ("second", Holds::Length),
    ("overlap", Holds::Length),
    ("bolt-circle", Holds::Length),
    ("pulley", Holds::Length),
    ("torque", Holds::Torque),
    ("want", Holds::Torque),
    ("range", Holds::Torque),
    ("bolt-torque", Holds::Torque),
    ("clamp", Holds::Force),
    ("tension", Holds::Force),
    ("angle", Holds::Angle),
    ("tilt", Holds::Angle),
    ("wrap", Holds::Angle),
];

/// Fields as written, blank ones left out; a bare number gets the unit that the page names
/// beside its field.
#[must_use]
pub fn filled(
    fields: std::collections::BTreeMap<String, String>,
    us: bool,
) -> std::collections::BTreeMap<String, String> {
    fields
        .into_iter()
        .map(|(name, text)| (name, text.trim().to_owned()))
        .filter(|(_, text)| !text.is_empty())
        .map(|(name, text)| {
            let holds = FIELDS.iter().find(|(field, _)| *field == name);
            let bare = text.replace(',', ".").parse::<f64>().is_ok();
            match holds.filter(|_| bare) {
                Some((_, holds)) => {
                    let unit = unit_of(*holds, us);
                    (name, format!("{text} {unit}"))
                }
                None => (name, text),
            }
        })
        .collect()
}

/// The unit of a bare number.
#[must_use]
pub fn unit_of(holds: Holds, us: bool) -> &'static str {
    match (holds, us) {
        (Holds::Length, false) => "mm",
        (Holds::Length, true) => "in",
        (Holds::Torque, false) => "N·m",
        (Holds::Torque, true) => "lb·ft",
        (Holds::Force, false) => "N",
        (Holds::Force, true) => "lbf",
        (Holds::Angle, _) => "deg",
    }
}

/// A field's text, nothing where it is blank.
pub(crate) fn some<'a>(asked: &'a Asked, name: &str) -> Option<&'a str> {
    Some(asked.text(name)).filter(|text| !text.is_empty())
}

/// What a calculator found wrong, beside the field that it is wrong with. `shown` are the
/// fields of the page; what is wrong with none of them is told at the first.
pub fn told(asked: &mut Asked, trouble: &Trouble, shown: &[&str]) {
    let field = match trouble.field {
        "blind" | "through" if shown.contains(&"depth") => "depth",
        field if shown.contains(&field) => field,
        _ => shown.first().copied().unwrap_or("thread"),
    };
    asked.wrong(field, format!("{}; {}", trouble.what, trouble.mend));
}
