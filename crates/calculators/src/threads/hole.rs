//! What is asked of a damaged hole: the same on a page of its own and at a snag.

use crate::form::none;
use crate::phrases::threads as say;
use crate::{Choices, Holds, Part};

/// What a joint may hold: none is chosen beforehand.
pub const JOINTS: Choices = &[
    ("other", say::cover_housing_bracket),
    ("brake", say::brake),
    ("steering", say::steering),
    ("suspension", say::suspension),
    ("wheel", say::wheel_hub),
    ("driveshaft", say::drive_shaft),
    ("seat", say::seat),
    ("belt", say::seat_belt),
    ("airbag", say::airbag),
    ("fuel", say::fuel),
    ("towing", say::towing),
    ("high-voltage", say::high_voltage),
    ("spark-plug", say::spark_plug),
    ("drain-plug", say::drain_plug),
    ("banjo", say::banjo),
    ("sensor", say::sensor),
    ("exhaust", say::exhaust),
    ("pipe", say::pipe_thread),
];

/// What a hole may be in.
pub const METALS: Choices = &[
    ("aluminium", say::aluminium_cast),
    ("die-cast aluminium", say::aluminium_die_cast),
    ("grey iron", say::grey_iron),
    ("ductile iron", say::ductile_iron),
    ("steel", say::steel),
    ("magnesium", say::magnesium),
];

/// What the joint holds, asked before any way is ranked.
pub const JOINT: Part = Part::asked("joint", say::what_does_the_joint_hold, JOINTS);

/// What the bolt is.
pub const BOLT: &[Part] = &[THREAD, CLASS, BOLT_LENGTH, TORQUE];

/// What the hole is, and the stub in it.
pub const HOLE: &[Part] = &[BY, ENGAGED, SORT, DEPTH, BOSS, METAL, WELD, NO_ROOM, MORE];

pub(super) const THREAD: Part = Part::text("thread", say::thread, say::such_as_m8x1_25_or_5);
pub(super) const CLASS: Part =
    Part::text("class", say::class_on_the_head, say::such_as_8_8_leave_it);
pub(super) const BOLT_LENGTH: Part =
    Part::number("bolt-length", say::length_of_the_bolt, Holds::LENGTH, none);
pub(super) const TORQUE: Part = Part::number(
    "torque",
    say::the_makers_torque,
    Holds::TORQUE,
    say::empty_if_it_is_not_known,
);
pub(super) const BY: Part = Part::number("by", say::how_far_it_sits_below_the, Holds::LENGTH, none)
    .unless("stands", &["none", "flush"]);
pub(super) const ENGAGED: Part = Part::number(
    "engaged",
    say::thread_that_was_engaged,
    Holds::LENGTH,
    say::how_far_the_bolt_went_in,
);
pub(super) const SORT: Part = Part::choice(
    "hole",
    say::the_hole_is,
    &[("blind", say::blind), ("through", say::through)],
);
pub(super) const DEPTH: Part = Part::number(
    "depth",
    say::how_deep_it_is,
    Holds::LENGTH,
    say::a_blind_hole_to_its_bottom,
);
pub(super) const BOSS: Part = Part::number(
    "boss",
    say::metal_around_it_across,
    Holds::LENGTH,
    say::twice_the_least_way_from_its,
);
/// None is chosen beforehand: the metal decides what holds.
pub(super) const METAL: Part = Part::asked("in", say::the_metal, METALS);
pub(super) const WELD: Part = Part::tick(
    "room-to-weld",
    say::room_to_weld_on_it,
    say::and_nothing_near_that_heat_hurts,
)
.unless("stands", &["none"]);
pub(super) const NO_ROOM: Part = Part::tick(
    "no-drill-room",
    say::no_room_to_drill,
    say::a_drill_cannot_be_held_in,
);
pub(super) const MORE: Part = Part::More {
    id: "more",
    title: say::more_if_it_is_known,
    parts: &[
        Part::choice(
            "damage",
            say::its_thread_is,
            &[
                ("stripped", say::lost_or_torn),
                ("scarred", say::bruised_all_there),
            ],
        ),
        Part::number(
            "torn",
            say::torn_how_deep_from_the_face,
            Holds::LENGTH,
            say::all_that_was_engaged_if_nobody,
        ),
        Part::choice(
            "other",
            say::the_part_it_holds_is,
            &[
                ("metal", say::metal),
                ("plastic", say::plastic),
                ("limiter", say::plastic_metal_sleeve),
            ],
        ),
        Part::number("other-hole", say::hole_in_that_part, Holds::LENGTH, none),
        Part::number("seat", say::flat_under_the_head_across, Holds::LENGTH, none),
        Part::text(
            "condition",
            say::state_of_the_threads,
            say::oiled_dry_zinc_dry_oiled_is,
        ),
        Part::number(
            "tilt",
            say::how_far_out_of_square_the,
            Holds::ANGLE,
            say::about_0_5_what_a_guide_bush,
        ),
    ],
};

/// Every field of a hole that a page shows.
pub const SHOWN: &[&str] = &[
    "thread",
    "joint",
    "class",
    "bolt-length",
    "torque",
    "by",
    "engaged",
    "depth",
    "boss",
    "in",
    "damage",
    "torn",
    "condition",
    "seat",
    "other",
    "other-hole",
    "tilt",
];
