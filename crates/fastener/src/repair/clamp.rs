//! The clamp as it was, and the clamp that a way gives.

use super::hole::{DamagedHole, RepairTrouble};
use crate::class::{Class, strongest};
use crate::figures::rounded_up;
use crate::friction::dry_is_not_oiled;
use crate::phrases::repair as say;
use crate::thread::Thread;
use crate::torque::{
    Form, Friction, Joint, clamp_for_torque, clamp_range, torque_for_clamp, yield_clamp_n,
};
use measure::Range;

/// The joint before it was damaged.
#[derive(Clone, Debug)]
pub(super) struct Original {
    pub joint: Joint,
    pub friction: Range<f64>,
    /// Nothing where no torque was specified.
    pub clamp_n: Option<Range<f64>>,
    /// What the bolt bears while it is tightened; nothing where its class is not known.
    pub bears_n: Option<f64>,
    pub notes: Vec<String>,
}

/// The clamp of a way, with the torque that gives it.
#[derive(Clone, Copy, Debug)]
pub(super) struct Clamp {
    pub torque_nm: f64,
    pub clamp_n: Range<f64>,
    /// Low end against low end.
    pub ratio: f64,
}

impl Original {
    pub fn of(hole: &DamagedHole) -> Result<Original, RepairTrouble> {
        let joint = hole.joint()?;
        let friction = hole.condition.friction();
        let clamp_n = hole
            .torque_nm
            .filter(|_| hole.clamps())
            .and_then(|torque_nm| clamp_range(&joint, friction, torque_nm, Form::Motosh).ok());
        let bears_n = match hole.class.filter(|_| hole.clamps()) {
            Some(class) => Some(bears_n(&hole.thread, class, friction.low())?),
            None => None,
        };
        if let (Some(clamp), Some(torque_nm)) = (clamp_n, hole.torque_nm) {
            bearable(hole, clamp, torque_nm)?;
        }
        if !hole.clamps() {
            return Ok(Original {
                joint,
                friction,
                clamp_n,
                bears_n,
                notes: vec![say::seals_by_its_seat().to_owned()],
            });
        }
        let mut notes = vec![say::friction_of_threads(
            hole.condition.name(),
            dry_is_not_oiled(),
        )];
        if clamp_n.is_none() {
            notes.push(say::no_torque_was_specified().to_owned());
        }
        if let (Some(clamp), Some(bears)) = (clamp_n, bears_n)
            && clamp.high() > bears
            && clamp.low() <= bears
        {
            notes.push(say::slick_threads_yield(clamp.high(), bears));
        }
        Ok(Original {
            joint,
            friction,
            clamp_n,
            bears_n,
            notes,
        })
    }

    /// The load that a way's thread must bear: the greatest clamp, or without a torque what
    /// the bolt could carry.
    pub fn load_n(&self, hole: &DamagedHole) -> Option<f64> {
        match self.clamp_n {
            Some(clamp) => Some(clamp.high()),
            None if !hole.clamps() => None,
            None => {
                let loads = hole.class?.loads(&hole.thread).ok()?;
                Some(loads.proof_n.unwrap_or(loads.yield_n))
            }
        }
    }

    /// The same bolt at the same torque, plus what a locking insert takes to turn.
    pub fn unchanged(&self, hole: &DamagedHole, locking_nm: f64) -> Option<Clamp> {
        Some(Clamp {
            torque_nm: hole.torque_nm? + locking_nm,
            clamp_n: self.clamp_n?,
            ratio: 1.0,
        })
    }

    /// The torque on another joint whose low clamp is not below the original low clamp.
    pub fn matched(&self, joint: &Joint) -> Option<Clamp> {
        let original = self.clamp_n?;
        let rough = Friction {
            thread: self.friction.high(),
            head: self.friction.high(),
        };
        let exact = torque_for_clamp(joint, rough, original.low(), Form::Motosh).total_nm;
        let torque_nm = rounded_up(exact, 0.1);
        let clamp_n = clamp_range(joint, self.friction, torque_nm, Form::Motosh).ok()?;
        let low = clamp_for_torque(joint, rough, torque_nm, Form::Motosh);
        Some(Clamp {
            torque_nm,
            clamp_n,
            ratio: low / original.low(),
        })
    }
}

/// Refuses a torque that no bolt of the size bears: its figure or unit is wrong.
fn bearable(hole: &DamagedHole, clamp: Range<f64>, torque_nm: f64) -> Result<(), RepairTrouble> {
    let strongest = strongest(&hole.thread);
    let breaking = strongest.and_then(|class| class.loads(&hole.thread).ok());
    match (strongest, breaking) {
        (Some(class), Some(loads)) if clamp.low() > loads.breaking_n => {
            Err(RepairTrouble::NoBoltBears {
                torque_nm,
                thread: hole.thread.name().to_owned(),
                class: class.name(),
            })
        }
        _ => Ok(()),
    }
}

/// What a bolt bears while it is pulled and twisted at once, at the slick end.
pub(super) fn bears_n(thread: &Thread, class: Class, friction: f64) -> Result<f64, RepairTrouble> {
    let stresses = class.stresses(thread)?;
    Ok(yield_clamp_n(thread, stresses.yield_mpa, friction, 1.0))
}
