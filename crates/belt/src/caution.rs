//! What stands before a step that can hurt.

use crate::layout::{Profile, TensionerKind};

/// A caution, to be shown before the step that it concerns.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Caution {
    Stopped,
    SpringArm,
    Interference,
    StretchBelt,
    MakersSpecification,
}

impl Caution {
    pub const ALL: [Caution; 5] = [
        Caution::Stopped,
        Caution::SpringArm,
        Caution::Interference,
        Caution::StretchBelt,
        Caution::MakersSpecification,
    ];

    /// In words.
    pub const fn text(self) -> &'static str {
        match self {
            Caution::Stopped => {
                "Engine off, key out, battery off where a fan can start by itself. A moving belt takes fingers."
            }
            Caution::SpringArm => {
                "A tensioner's spring is strong. Turn it slowly with a long tool, never let it snap back, keep fingers out of its way."
            }
            Caution::Interference => {
                "Turn neither crank nor cams with the toothed belt off: in many engines valves and pistons meet. Turn twice by hand before starting, and stop where it catches."
            }
            Caution::StretchBelt => {
                "A stretch belt may be fitted once. Use its tool; a lever nicks the cords."
            }
            Caution::MakersSpecification => {
                "The vehicle maker's routing, tension and torque come first."
            }
        }
    }
}

/// The cautions of a drive.
pub(crate) fn of(profile: Profile, kind: Option<TensionerKind>) -> Vec<Caution> {
    let mut all = vec![Caution::Stopped];
    if kind.is_some_and(TensionerKind::follows) {
        all.push(Caution::SpringArm);
    }
    if kind == Some(TensionerKind::StretchBelt) {
        all.push(Caution::StretchBelt);
    }
    if profile.is_toothed() {
        all.push(Caution::Interference);
    }
    all.push(Caution::MakersSpecification);
    all
}
