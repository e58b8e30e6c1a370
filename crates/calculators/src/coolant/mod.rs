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

use crate::phrases::coolant as say;
use crate::{Answer, Asked, Choices, Holds, Part, Room};
use coolant::{Caution, Concentrate, Mixture, StrengthStanding, USUAL_LIMITS};

/// The room of coolant.
pub const ROOM: Room = Room {
    code: "coolant",
    name: say::coolant,
    what: say::mix_fill_leak_test,
    cautions: &[
        || Caution::MakersSpecification.text(),
        || Caution::Poisonous.text(),
    ],
    notes: &[(
        say::about_50_is_not_50,
        say::a_bottle_of_antifreeze_is_about,
    )],
    calculators: &[
        strength::PROTECTION,
        strength::STRENGTH,
        fill::MIX,
        fill::BALANCE,
        leak::LEAK,
    ],
};

const COUNTED: Choices = &[
    ("concentrate", say::antifreeze_from_the_bottle),
    ("glycol", say::pure_glycol_by_volume),
    ("mass", say::pure_glycol_by_mass),
];

const ALTITUDE: Part = Part::within(
    "altitude",
    say::height_above_the_sea,
    Holds::HEIGHT,
    (-500.0, 6000.0),
    say::such_as_650_m_or_2100,
);

const BOTTLE: Part = Part::text(
    "bottle",
    say::glycol_in_the_concentrate,
    say::by_mass_95_if_empty,
);

/// What the label or the maker states, where it differs from what is usual.
const LABEL: Part = Part::More {
    id: "label",
    title: say::by_the_label_or_the_maker,
    parts: &[
        Part::lines(
            "table",
            say::points_of_the_label,
            say::concentrate_and_freezing_point_40_24,
        ),
        Part::text(
            "least",
            say::least_concentrate_allowed,
            say::about_40_if_empty,
        ),
        Part::text(
            "most",
            say::most_concentrate_allowed,
            say::about_60_if_empty,
        ),
        BOTTLE,
    ],
};

/// The same strength in its three ways, so that none is taken for another.
fn strength_rows(answer: &mut Answer, mixture: Mixture, concentrate: Concentrate) {
    let percent = |part: f64| format!("{:.0}\u{202f}%", part * 100.0);
    let of_bottle = mixture
        .concentrate_fraction(concentrate)
        .map_or_else(|| say::stronger_than_the_concentrate().to_owned(), percent);
    answer.row(say::antifreeze_concentrate_by_volume(), of_bottle);
    answer.row(
        say::glycol_by_volume(mixture.glycol()),
        percent(mixture.volume_fraction()),
    );
    answer.row(
        say::glycol_by_mass(mixture.glycol()),
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
    let percent = |part: f64| format!("{:.0}", part * 100.0);
    let told = say::standing_of_limits(standing, percent(limits.0), percent(limits.1));
    Some((standing, told))
}
