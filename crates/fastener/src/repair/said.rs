//! What has to be said of a hole before any way.

use super::hole::{DamagedHole, Depth};
use crate::figures::trimmed;
use crate::holds::Holds;
use crate::parent::Family;
use crate::phrases::repair as say;

/// Asked where nobody said what the joint holds.
#[must_use]
pub fn what_does_it_hold() -> &'static str {
    say::what_does_it_hold()
}

/// What concerns this hole alone, most dangerous first.
pub(super) fn about(hole: &DamagedHole) -> Vec<String> {
    let mut said = Vec::new();
    match hole.holds {
        None => said.push(say::what_does_it_hold().to_owned()),
        Some(holds) if holds.hurts() => {
            said.push(say::people_are_hurt_nothing_home_made().to_owned());
        }
        Some(Holds::Exhaust) => said.push(say::exhaust_studs().to_owned()),
        Some(_) => {}
    }
    if hole.parent.family == Family::Magnesium {
        said.push(say::magnesium_rots().to_owned());
    }
    said.extend(bottomed(
        hole.depth,
        hole.engaged_mm,
        hole.thread.pitch_mm(),
    ));
    said
}

/// Whether a bolt stood on the bottom of its hole.
pub(crate) fn bottomed(depth: Depth, engaged_mm: f64, pitch_mm: f64) -> Option<String> {
    let Depth::Blind { depth_mm } = depth else {
        return None;
    };
    (engaged_mm > depth.bottoms_at_mm(pitch_mm))
        .then(|| say::may_have_stood_on_the_bottom(trimmed(engaged_mm, 1), trimmed(depth_mm, 1)))
}

/// Whether a note of a hole tells of what can hurt, so that it is read first.
pub(super) fn can_hurt(hole: &DamagedHole, note: &str) -> bool {
    let always = [
        say::caution(),
        say::people_are_hurt_nothing_home_made(),
        say::magnesium_rots(),
        say::no_way_holds(),
    ];
    let bottomed = bottomed(hole.depth, hole.engaged_mm, hole.thread.pitch_mm());
    always.contains(&note) || bottomed.as_deref() == Some(note)
}
