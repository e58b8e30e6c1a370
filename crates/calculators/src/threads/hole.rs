//! What is asked of a damaged hole: the same on a page of its own and at a snag.

use crate::{Holds, Part};

/// What a joint may hold: none is chosen beforehand.
pub const JOINTS: &[(&str, &str)] = &[
    ("other", "cover, housing, bracket"),
    ("brake", "brake"),
    ("steering", "steering"),
    ("suspension", "suspen\u{ad}sion"),
    ("wheel", "wheel, hub"),
    ("driveshaft", "drive shaft"),
    ("seat", "seat"),
    ("belt", "seat belt"),
    ("airbag", "airbag"),
    ("fuel", "fuel"),
    ("towing", "towing"),
    ("high-voltage", "high voltage"),
    ("spark-plug", "spark plug"),
    ("drain-plug", "drain plug"),
    ("banjo", "banjo"),
    ("sensor", "sensor"),
    ("exhaust", "exhaust"),
    ("pipe", "pipe thread"),
];

/// What a hole may be in.
pub const METALS: &[(&str, &str)] = &[
    ("aluminium", "alumin\u{ad}ium, cast"),
    ("die-cast aluminium", "alumin\u{ad}ium, die-cast"),
    ("grey iron", "grey iron"),
    ("ductile iron", "ductile iron"),
    ("steel", "steel"),
    ("magnesium", "magne\u{ad}sium"),
];

/// What the joint holds, asked before any way is ranked.
pub const JOINT: Part = Part::asked("joint", "What does the joint hold?", JOINTS);

/// What the bolt is.
pub const BOLT: &[Part] = &[THREAD, CLASS, BOLT_LENGTH, TORQUE];

/// What the hole is, and the stub in it.
pub const HOLE: &[Part] = &[BY, ENGAGED, SORT, DEPTH, BOSS, METAL, WELD, NO_ROOM, MORE];

pub(super) const THREAD: Part = Part::text("thread", "Thread", "such as M8x1.25 or 5/16-18");
pub(super) const CLASS: Part = Part::text(
    "class",
    "Class on the head",
    "such as 8.8; leave it empty if it is not known",
);
pub(super) const BOLT_LENGTH: Part =
    Part::number("bolt-length", "Length of the bolt", Holds::LENGTH, "");
pub(super) const TORQUE: Part = Part::number(
    "torque",
    "The maker's torque",
    Holds::TORQUE,
    "empty if it is not known",
);
pub(super) const BY: Part = Part::number(
    "by",
    "How far it sits below the face or above it",
    Holds::LENGTH,
    "",
)
.unless("stands", &["none", "flush"]);
pub(super) const ENGAGED: Part = Part::number(
    "engaged",
    "Thread that was engaged",
    Holds::LENGTH,
    "how far the bolt went in",
);
pub(super) const SORT: Part = Part::choice(
    "hole",
    "The hole is",
    &[("blind", "blind"), ("through", "through")],
);
pub(super) const DEPTH: Part = Part::number(
    "depth",
    "How deep it is",
    Holds::LENGTH,
    "a blind hole to its bottom, a through one to the other side",
);
pub(super) const BOSS: Part = Part::number(
    "boss",
    "Metal around it, across",
    Holds::LENGTH,
    "twice the least way from its middle to an edge; empty if it was not measured",
);
/// None is chosen beforehand: the metal decides what holds.
pub(super) const METAL: Part = Part::asked("in", "The metal", METALS);
pub(super) const WELD: Part = Part::tick(
    "room-to-weld",
    "Room to weld on it",
    "and nothing near that heat hurts",
)
.unless("stands", &["none"]);
pub(super) const NO_ROOM: Part = Part::tick(
    "no-drill-room",
    "No room to drill",
    "a drill cannot be held in line with it",
);
pub(super) const MORE: Part = Part::More {
    id: "more",
    title: "More, if it is known",
    parts: &[
        Part::choice(
            "damage",
            "Its thread is",
            &[
                ("stripped", "lost or torn"),
                ("scarred", "bruised, all there"),
            ],
        ),
        Part::number(
            "torn",
            "Torn how deep from the face",
            Holds::LENGTH,
            "all that was engaged, if nobody looked",
        ),
        Part::choice(
            "other",
            "The part it holds is",
            &[
                ("metal", "metal"),
                ("plastic", "plastic"),
                ("limiter", "plastic, metal sleeve"),
            ],
        ),
        Part::number("other-hole", "Hole in that part", Holds::LENGTH, ""),
        Part::number("seat", "Flat under the head, across", Holds::LENGTH, ""),
        Part::text(
            "condition",
            "State of the threads",
            "oiled, dry, zinc dry …; oiled is assumed and said",
        ),
        Part::number(
            "tilt",
            "How far out of square the drill is held",
            Holds::ANGLE,
            "0.5, what a guide bush allows, is assumed",
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
