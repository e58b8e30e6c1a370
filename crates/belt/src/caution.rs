//! What stands before a step that can hurt.

use crate::layout::{Profile, TensionerKind};
use crate::phrases as say;

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
    pub fn text(self) -> &'static str {
        match self {
            Caution::Stopped => say::stopped(),
            Caution::SpringArm => say::spring_arm(),
            Caution::Interference => say::interference(),
            Caution::StretchBelt => say::stretch_belt(),
            Caution::MakersSpecification => say::makers_specification(),
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
