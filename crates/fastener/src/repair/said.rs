//! What has to be said of a hole before any way.

use super::hole::{DamagedHole, Depth};
use crate::figures::trimmed;
use crate::holds::Holds;
use crate::parent::Family;

/// Where not even a new part holds, the question is wrong before the world is.
pub(super) const DOUBT: &str = "No way holds, not even a new part as its maker made it. Then something \
     that was said here is wrong: look again at the metal and its alloy, the torque and its unit, the \
     class, and the length that was engaged.";

/// Asked where nobody said what the joint holds.
pub const WHAT_DOES_IT_HOLD: &str = "What does the joint hold? Nobody said, so this is for none of \
     brakes, steering, suspension, wheels, seats, belts, airbags, fuel and towing: for those only \
     the maker's part, or a repair that the maker approves.";

/// In place of how a place came about.
pub(super) const NOT_RANKED: &str = "not weighed by time and money: people are hurt if it lets go";

const HURTS: &str = "People are hurt if this joint lets go: nothing home-made is ranked. Fit the \
     maker's part, or do a repair that the vehicle maker names and approves for it, and prove it as \
     the maker says. No oversize thread, no bushing, no insert of one's own choice.";

const MAGNESIUM: &str = "Magnesium: its chips and dust burn, and water makes it worse. Sharp tools, \
     slow, no flame, no welding, chips swept up at once, dry sand or a class D extinguisher at \
     hand. Steel in magnesium rots it: coated bolts and inserts, washers and sealant as the maker \
     says.";

const EXHAUST: &str = "Exhaust: studs rust in and creep. New studs and nuts of the maker's grade, and \
     the nickel compound on them that the maker names; common paste burns away. The torque is the \
     maker's for that paste.";

/// What concerns this hole alone, most dangerous first.
pub(super) fn about(hole: &DamagedHole) -> Vec<String> {
    let mut said = Vec::new();
    match hole.holds {
        None => said.push(WHAT_DOES_IT_HOLD.to_owned()),
        Some(holds) if holds.hurts() => said.push(HURTS.to_owned()),
        Some(Holds::Exhaust) => said.push(EXHAUST.to_owned()),
        Some(_) => {}
    }
    if hole.parent.family == Family::Magnesium {
        said.push(MAGNESIUM.to_owned());
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
    (engaged_mm > depth.bottoms_at_mm(pitch_mm)).then(|| {
        format!(
            "The bolt went {} mm into a hole {} mm deep: it may have stood on the bottom, and then \
             its torque never clamped the joint. Look for a wrong length, a missing washer, dirt or \
             oil in the hole.",
            trimmed(engaged_mm, 1),
            trimmed(depth_mm, 1)
        )
    })
}
