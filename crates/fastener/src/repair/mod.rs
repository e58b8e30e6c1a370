//! From a damaged hole to the repair options, ranked, each with what it needs and whether it
//! holds.

mod clamp;
mod estimate;
mod hole;
mod insert;
mod plan;
mod rank;
mod reason;
mod said;
mod special;
mod steps;
mod ways;

pub use estimate::{Estimate, Planning, Weights};
pub use hole::{Clamped, Damage, DamagedHole, Depth, DrillRoom, OtherPart, RepairTrouble};
pub use insert::{InsertHole, insert_hole, insert_length_diameters, solid_bushing_thread};
pub use reason::Reason;
pub(crate) use said::bottomed;
pub use said::what_does_it_hold;
pub use steps::Step;
pub use ways::{RepairOption, Way};

use crate::phrases::repair as say;
use measure::Range;

/// The ways back for one hole, and what they were measured against.
#[derive(Clone, Debug, PartialEq)]
pub struct Repairs {
    /// Best first; those that do not hold come last, each with its reason.
    pub options: Vec<RepairOption>,
    /// Clamp of the joint as it was, from the torque that was specified; nothing where none was.
    pub original_clamp_n: Option<Range<f64>>,
    /// What a reader must know before any of it, cautions first.
    pub notes: Vec<String>,
    /// Those of the notes that tell of what can hurt.
    pub cautions: Vec<String>,
}

/// Said before any step with a drill.
#[must_use]
pub fn caution() -> &'static str {
    say::caution()
}

/// Ranks the ways to give a damaged hole its clamp back.
///
/// Formula: each way's clamp T/(μ) low against low and high against high with the joint as it
/// was; strip load of its thread (FED-STD-H28/2) over its high clamp; wall (boss - hole)/2;
/// the weighted sum of margin, time, cost and reversibility ranks those that hold.
///
/// Inputs: the hole as found; planning figures and weights of the shop.
/// Returns every way that is open to what the joint holds, those that hold first. Where people
/// are hurt if it lets go nothing home-made is ranked: the maker's part, or a repair that the
/// maker approves.
///
/// # Errors
///
/// [`RepairTrouble`] for sizes that contradict one another.
///
/// # Limits
///
/// Sound metal around the hole, no crack, no bending load. Planning figures are the
/// shop's to change. Without a specified torque no torque is given: the margin is then
/// against what the bolt could carry, which is not a specification.
///
/// # Source
///
/// FED-STD-H28/2; ISO 965-1; ISO 273; ASME B18.29.8M and DIN 8140 (inserts); Motosh.
///
/// ```
/// use fastener::{Class, Thread, friction::Condition, head::Head, parent, repair::*};
/// let hole = DamagedHole {
///     thread: Thread::metric(8.0, 1.25)?,
///     holds: Some(fastener::holds::Holds::Other),
///     class: Some(Class::C8_8),
///     bolt_length_mm: Some(75.0),
///     engaged_mm: 18.0,
///     depth: Depth::Blind { depth_mm: 26.0 },
///     boss_mm: Some(19.0),
///     parent: parent::named("aluminium").unwrap(),
///     damage: Damage::Stripped { from_face_mm: 18.0 },
///     torque_nm: Some(22.0),
///     condition: Condition::read("oiled").unwrap(),
///     head: Head::Hex,
///     seat_mm: None,
///     other: OtherPart { material: Clamped::Metal, hole_mm: None },
///     room: DrillRoom::Straight,
///     tilt_deg: 0.5,
/// };
/// let ranked = repairs(&hole, &Planning::default())?;
/// assert_eq!(ranked.options[0].way, Way::WireInsert);
/// # Ok::<(), Box<dyn std::error::Error>>(())
/// ```
pub fn repairs(hole: &DamagedHole, planning: &Planning) -> Result<Repairs, RepairTrouble> {
    hole.check()?;
    let original = clamp::Original::of(hole)?;
    let options: Vec<RepairOption> = Way::open_to(hole)
        .into_iter()
        .map(|way| ways::option(way, hole, &original, planning))
        .collect();
    let mut notes = vec![say::caution().to_owned()];
    notes.extend(said::about(hole));
    notes.extend(original.notes.iter().cloned());
    if let Some(note) = hole.parent.note {
        notes.push(note.to_owned());
    }
    if !options.iter().any(|option| option.holds) {
        notes.push(say::no_way_holds().to_owned());
    }
    let mut options = rank::ranked(options, planning);
    if hole.hurts() {
        // Two ways that a maker answers for are not weighed against one another.
        for option in &mut options {
            option.why_here = say::not_ranked().to_owned();
        }
    }
    Ok(Repairs {
        options,
        original_clamp_n: original.clamp_n,
        cautions: notes
            .iter()
            .filter(|note| said::can_hurt(hole, note))
            .cloned()
            .collect(),
        notes,
    })
}
