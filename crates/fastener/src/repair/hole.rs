//! The damaged hole as it was found.

use crate::class::{Class, ClassTrouble};
use crate::friction::Condition;
use crate::head::Head;
use crate::holds::Holds;
use crate::parent::{Family, Parent};
use crate::phrases::repair as say;
use crate::thread::Thread;
use crate::torque::{Joint, TorqueTrouble};
use thiserror::Error;

/// Everything that is known of a damaged hole. What is not known stays `None`.
#[derive(Clone, Debug, PartialEq)]
pub struct DamagedHole {
    pub thread: Thread,
    /// What the joint holds; nothing where nobody said.
    pub holds: Option<Holds>,
    pub class: Option<Class>,
    pub bolt_length_mm: Option<f64>,
    /// Full thread of the bolt that was in engagement.
    pub engaged_mm: f64,
    pub depth: Depth,
    /// Diameter of the metal around the hole: twice the least distance from its axis to an edge.
    pub boss_mm: Option<f64>,
    pub parent: Parent,
    pub damage: Damage,
    /// The torque that the maker specifies.
    pub torque_nm: Option<f64>,
    pub condition: Condition,
    pub head: Head,
    /// Diameter of the flat that the other part offers to a head.
    pub seat_mm: Option<f64>,
    pub other: OtherPart,
    pub room: DrillRoom,
    /// How far out of square the drill is held; half a degree with a guide bush.
    pub tilt_deg: f64,
}

/// How deep the hole is, from the joint face.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Depth {
    Blind { depth_mm: f64 },
    Through { length_mm: f64 },
}

/// What became of the thread.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Damage {
    /// Bruised or dirty, its metal all there.
    Scarred,
    /// Torn out from the face to this depth.
    Stripped { from_face_mm: f64 },
}

/// The part that the bolt holds on.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct OtherPart {
    pub material: Clamped,
    /// The hole that the bolt passes; the medium clearance hole where it is not known.
    pub hole_mm: Option<f64>,
}

/// What the other part is made of.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Clamped {
    Metal,
    Plastic,
    /// Plastic with a metal sleeve that takes the clamp.
    PlasticWithLimiter,
}

/// Whether a drill and a tap can be held in line with the hole.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum DrillRoom {
    Straight,
    None,
}

/// Why no repair is worked out.
#[derive(Clone, Debug, PartialEq, Error)]
pub enum RepairTrouble {
    #[error("{}", say::size_must_lie_between(.what, .value_mm, .least_mm, .most_mm))]
    Size {
        what: &'static str,
        value_mm: f64,
        least_mm: f64,
        most_mm: f64,
    },
    #[error("{}", say::torque_is_no_specification(.torque_nm))]
    Torque { torque_nm: f64 },
    #[error("{}", say::tilt_outside(.tilt_deg))]
    Tilt { tilt_deg: f64 },
    #[error("{}", say::no_bolt_bears(.torque_nm, .thread, .class))]
    NoBoltBears {
        torque_nm: f64,
        thread: String,
        class: &'static str,
    },
    #[error("{}", say::plastic_is_not_repaired())]
    PlasticParent,
    #[error(transparent)]
    Class(#[from] ClassTrouble),
    #[error(transparent)]
    Joint(#[from] TorqueTrouble),
}

impl Depth {
    /// Length of the hole in millimetres.
    pub fn mm(self) -> f64 {
        match self {
            Depth::Blind { depth_mm } => depth_mm,
            Depth::Through { length_mm } => length_mm,
        }
    }

    /// Full thread that a tap of a pitch can leave.
    ///
    /// A bottoming tap leaves two pitches of chamfer and one of clearance (ASME B18.29.8M).
    pub fn tappable_mm(self, pitch_mm: f64) -> f64 {
        match self {
            Depth::Blind { depth_mm } => (depth_mm - 3.0 * pitch_mm).max(0.0),
            Depth::Through { length_mm } => length_mm,
        }
    }

    /// How far a bolt's end may go in.
    pub fn bottoms_at_mm(self, pitch_mm: f64) -> f64 {
        match self {
            Depth::Blind { depth_mm } => (depth_mm - pitch_mm).max(0.0),
            Depth::Through { .. } => f64::INFINITY,
        }
    }
}

impl DamagedHole {
    /// How deep the old thread is lost.
    pub fn lost_mm(&self) -> f64 {
        match self.damage {
            Damage::Scarred => 0.0,
            Damage::Stripped { from_face_mm } => from_face_mm,
        }
    }

    /// Whether its torque stands for a clamp.
    pub fn clamps(&self) -> bool {
        self.holds.is_none_or(Holds::is_clamp)
    }

    /// Whether people are hurt if it lets go.
    pub fn hurts(&self) -> bool {
        self.holds.is_some_and(Holds::hurts)
    }

    /// The joint as it was.
    pub(crate) fn joint(&self) -> Result<Joint, TorqueTrouble> {
        if !self.clamps() {
            // Only its passage is asked for: no clamp is worked out.
            let d = self.thread.diameter_mm();
            return Joint::new(&self.thread, 2.0 * d, 1.1 * d);
        }
        let standard = Joint::standard(&self.thread, self.head)?;
        match self.other.hole_mm {
            Some(hole_mm) => Joint::new(&self.thread, standard.face_mm, hole_mm),
            None => Ok(standard),
        }
    }

    pub(crate) fn check(&self) -> Result<(), RepairTrouble> {
        let d = self.thread.diameter_mm();
        let depth = self.depth.mm();
        size(say::depth_of_the_hole(), depth, d / 4.0, 500.0)?;
        size(
            say::engaged_length(),
            self.engaged_mm,
            self.thread.pitch_mm(),
            depth,
        )?;
        if let Damage::Stripped { from_face_mm } = self.damage {
            size(say::depth_of_the_torn_thread(), from_face_mm, 0.0, depth)?;
        }
        if let Some(boss_mm) = self.boss_mm {
            size(say::metal_around_the_hole(), boss_mm, d, 1000.0)?;
        }
        if let Some(length_mm) = self.bolt_length_mm {
            size(
                say::length_of_the_bolt(),
                length_mm,
                self.engaged_mm,
                1000.0,
            )?;
        }
        if let Some(seat_mm) = self.seat_mm {
            size(say::flat_under_the_head(), seat_mm, d, 1000.0)?;
        }
        if let Some(hole_mm) = self.other.hole_mm {
            size(say::hole_in_the_other_part(), hole_mm, d, 4.0 * d)?;
        }
        if let Some(torque_nm) = self.torque_nm
            && !(torque_nm > 0.0 && torque_nm < 1e4)
        {
            return Err(RepairTrouble::Torque { torque_nm });
        }
        if !(0.0..=10.0).contains(&self.tilt_deg) {
            return Err(RepairTrouble::Tilt {
                tilt_deg: self.tilt_deg,
            });
        }
        if self.parent.family == Family::Plastic {
            return Err(RepairTrouble::PlasticParent);
        }
        Ok(())
    }
}

fn size(
    what: &'static str,
    value_mm: f64,
    least_mm: f64,
    most_mm: f64,
) -> Result<(), RepairTrouble> {
    if (least_mm..=most_mm).contains(&value_mm) {
        Ok(())
    } else {
        Err(RepairTrouble::Size {
            what,
            value_mm,
            least_mm,
            most_mm,
        })
    }
}
