//! Coolant with no order: how far it protects, what is in, what to pour, what is missing, and
//! whether it is tight. The same answers serve an order's coolant.

mod fill;
mod leak;
mod readings;
mod strength;

pub use fill::{
    Fill, JUG_WITHIN_L, PAN_WITHIN_L, balance_of, capacity, estimated, mix, what_is_missing,
};
pub use leak::{leak, leak_of};
pub use readings::{Readings, last_digit, readings};
pub use strength::{INSTRUMENT, KIND, READING, SAMPLE, measured, protection};

use crate::{Answer, Asked, Holds, Part, Room};
use coolant::{Caution, Concentrate, Mixture, StrengthStanding, USUAL_LIMITS};

/// The room of coolant.
pub const ROOM: Room = Room {
    code: "coolant",
    name: "Coolant",
    what: "mix, fill, leak test",
    cautions: &[
        Caution::MakersSpecification.text(),
        Caution::Poisonous.text(),
    ],
    notes: &[(
        "50 % is not 50 %",
        "A bottle of antifreeze is about 95 % glycol. Half bottle, half water is 47 % glycol by volume and 50 % by mass. Say which one you mean; every answer shows all three.",
    )],
    calculators: &[
        strength::PROTECTION,
        strength::STRENGTH,
        fill::MIX,
        fill::BALANCE,
        leak::LEAK,
    ],
};

const COUNTED: &[(&str, &str)] = &[
    ("concentrate", "anti\u{ad}freeze from the bottle"),
    ("glycol", "pure glycol, by volume"),
    ("mass", "pure glycol, by mass"),
];

const ALTITUDE: Part = Part::within(
    "altitude",
    "Height above the sea",
    Holds::HEIGHT,
    (-500.0, 6000.0),
    "such as 650 m or 2100 ft",
);

const BOTTLE: Part = Part::text(
    "bottle",
    "Glycol in the concentrate",
    "by mass; 95 % if empty",
);

/// What the label or the maker states, where it differs from what is usual.
const LABEL: Part = Part::More {
    id: "label",
    title: "By the label or the maker",
    parts: &[
        Part::lines(
            "table",
            "Points of the label",
            "concentrate and freezing point: 40 % −24 °C, 50 % −37 °C. They win over what is computed.",
        ),
        Part::text("least", "Least concentrate allowed", "40 % if empty"),
        Part::text("most", "Most concentrate allowed", "60 % if empty"),
        BOTTLE,
    ],
};

/// The same strength in its three ways, so that none is taken for another.
fn strength_rows(answer: &mut Answer, mixture: Mixture, concentrate: Concentrate) {
    let percent = |part: f64| format!("{:.0}\u{202f}%", part * 100.0);
    let of_bottle = mixture
        .concentrate_fraction(concentrate)
        .map_or_else(|| "stronger than the concentrate".to_owned(), percent);
    answer.row("antifreeze concentrate, by volume", of_bottle);
    answer.row(
        format!("{} glycol, by volume", mixture.glycol()),
        percent(mixture.volume_fraction()),
    );
    answer.row(
        format!("{} glycol, by mass", mixture.glycol()),
        percent(mixture.mass_fraction()),
    );
}

/// Least and most concentrate that is allowed: the maker's, or the usual.
fn limits(asked: &mut Asked) -> (f64, f64) {
    let (least, most) = USUAL_LIMITS;
    (
        asked.fraction("least").unwrap_or(least),
        asked.fraction("most").unwrap_or(most),
    )
}

fn standing(
    asked: &mut Asked,
    mixture: Mixture,
    concentrate: Concentrate,
) -> Option<(StrengthStanding, String)> {
    let limits = limits(asked);
    let found = coolant::strength_standing(mixture, concentrate, limits);
    let standing = asked.ok("least", found)?;
    let told = format!(
        "{standing}, {:.0} to {:.0}\u{202f}% of concentrate",
        limits.0 * 100.0,
        limits.1 * 100.0
    );
    Some((standing, told))
}
