//! The tapped hole of each way.

use super::clamp::{Clamp, Original, bears_n};
use super::estimate::Planning;
use super::hole::{Clamped, Damage, DamagedHole, Depth, DrillRoom};
use super::insert::{
    insert_hole, insert_length_diameters, insert_shear_mm2_per_mm, installed_mm, longest_multiple,
    solid_bushing_thread,
};
use super::reason::Reason;
use crate::clearance::clearance_holes;
use crate::drill::{Drill, usual};
use crate::figures::{rounded_down, rounded_up, trimmed};
use crate::head::face_mm;
use crate::holds::Holds;
use crate::phrases::repair as say;
use crate::series::{next_metric, next_unified};
use crate::strip::shear_areas;
use crate::thread::{INCH_MM, Series, Standard, Thread};
use crate::torque::Joint;

/// The tapped hole of a way before clamp, time and rank are known.
pub(super) struct Plan {
    pub reasons: Vec<Reason>,
    pub drill: Option<Drill>,
    pub tap: Option<String>,
    pub bolt: String,
    /// The thread that the bolt has then.
    pub bolt_thread: Thread,
    pub other_hole_mm: Option<f64>,
    pub hole_major_mm: Option<f64>,
    pub engaged_mm: f64,
    pub insert_mm: Option<f64>,
    /// Load at which the thread in the parent strips, and by what area.
    pub shear_mm2_per_mm: f64,
    pub clamp: Option<Clamp>,
    pub bolt_bears_n: Option<f64>,
    pub bolt_thread_n: Option<f64>,
    /// A nut carries instead of the part's thread: what it bears, where its class is known.
    pub nut_n: Option<Option<f64>>,
    pub notes: Vec<String>,
}

/// The old hole with its own bolt, on a length of sound thread.
pub(super) fn same_hole(hole: &DamagedHole, original: &Original, engaged_mm: f64) -> Plan {
    Plan {
        reasons: Vec::new(),
        drill: None,
        tap: None,
        bolt: bolt_name(&hole.thread, hole.bolt_length_mm),
        bolt_thread: hole.thread.clone(),
        other_hole_mm: None,
        hole_major_mm: None,
        engaged_mm,
        insert_mm: None,
        shear_mm2_per_mm: shear_areas(&hole.thread).hole_mm2_per_mm,
        clamp: original.unchanged(hole, 0.0),
        bolt_bears_n: original_bears(original),
        bolt_thread_n: bolt_thread_n(hole, &hole.thread, engaged_mm),
        nut_n: None,
        notes: Vec::new(),
    }
}

pub(super) fn chase(hole: &DamagedHole, original: &Original) -> Plan {
    let sound = hole.engaged_mm - hole.lost_mm();
    let mut plan = same_hole(hole, original, sound.max(0.0));
    plan.tap = Some(say::thread_chaser(hole.thread.name()));
    if let Damage::Stripped { from_face_mm } = hole.damage {
        if sound < least_sound_mm(hole) {
            plan.reasons.push(Reason::ThreadIsGone { from_face_mm });
        } else {
            plan.notes.push(say::mm_of_thread_are_gone(
                trimmed(from_face_mm, 1),
                trimmed(sound, 1),
            ));
        }
    }
    plan
}

pub(super) fn longer_bolt(hole: &DamagedHole, original: &Original, planning: &Planning) -> Plan {
    let p = hole.thread.pitch_mm();
    let step = match hole.thread.standard() {
        Standard::Metric => 5.0,
        Standard::Unified => INCH_MM / 4.0,
    };
    // The engaged length is full thread; the bolt's point reaches a pitch further.
    let room = (hole.depth.bottoms_at_mm(p) - hole.engaged_mm - p).max(0.0);
    let tappable = hole.depth.tappable_mm(p);
    let wanted = rounded_up((tappable - hole.engaged_mm).max(0.0), step);
    let longer = wanted.min(rounded_down(room, step));
    let sound = ((hole.engaged_mm + longer).min(tappable) - hole.lost_mm()).max(0.0);
    let mut plan = same_hole(hole, original, sound);
    plan.bolt = match hole.bolt_length_mm {
        Some(length) => bolt_name(&hole.thread, Some(length + longer)),
        None => say::so_much_longer(hole.thread.name(), trimmed(longer, 2)),
    };
    let load = original.load_n(hole).unwrap_or(0.0) * planning.least_strip_margin;
    let needed_mm =
        (load / (plan.shear_mm2_per_mm * hole.parent.shear_mpa)).max(least_sound_mm(hole));
    if longer <= 0.0 {
        plan.reasons.push(Reason::Bottoms {
            room_mm: room.min(hole.depth.mm()),
        });
    }
    if sound < needed_mm {
        plan.reasons.push(Reason::NoSoundThread {
            sound_mm: sound,
            needed_mm,
        });
    }
    plan
}

/// Less than a diameter of thread in light metal, 0.8 in iron and steel, is no joint.
fn least_sound_mm(hole: &DamagedHole) -> f64 {
    let diameters = if hole.parent.family.is_light() {
        1.0
    } else {
        0.8
    };
    diameters * hole.thread.diameter_mm()
}

pub(super) fn wire_insert(hole: &DamagedHole, original: &Original, planning: &Planning) -> Plan {
    let d = hole.thread.diameter_mm();
    let tapped = insert_hole(&hole.thread);
    let p = hole.thread.pitch_mm();
    // ASME B18.29.8M: a bottoming tap needs four pitches below the insert, a through hole one.
    let fits = match hole.depth {
        Depth::Blind { depth_mm } => depth_mm - 4.0 * p,
        Depth::Through { length_mm } => length_mm,
    };
    // An insert longer than the bolt reaches carries nothing more.
    let mut room = fits.min(hole.engaged_mm + p);
    if hole.holds == Some(Holds::DrainPlug) {
        // A pan's boss is short, and a plug carries nothing: one diameter is enough.
        room = room.min(d);
    }
    let multiple = longest_multiple(&hole.thread, room);
    let nominal = multiple.unwrap_or(1.0) * d;
    let mut plan = Plan {
        reasons: drill_reasons(hole, tapped.major_mm),
        drill: Some(tapped.drill.clone()),
        tap: Some(tapped.tap.clone()),
        hole_major_mm: Some(tapped.major_mm),
        insert_mm: Some(nominal),
        shear_mm2_per_mm: insert_shear_mm2_per_mm(&hole.thread),
        clamp: original.unchanged(hole, planning.locking_insert_nm),
        ..same_hole(hole, original, installed_mm(&hole.thread, nominal))
    };
    if multiple.is_none() {
        plan.reasons.push(Reason::Shallow {
            usable_mm: room.max(0.0),
            needed_mm: d,
        });
    }
    let bolt_mpa = hole
        .class
        .and_then(|class| class.stresses(&hole.thread).ok())
        .map(|stresses| stresses.tensile_mpa);
    if let Some(least) =
        bolt_mpa.and_then(|mpa| insert_length_diameters(hole.parent.tensile_mpa, mpa))
        && least * d > nominal
    {
        plan.notes
            .push(say::insert_maker_asks_for(trimmed(least, 1)));
    }
    if planning.locking_insert_nm > 0.0 {
        plan.notes.push(say::torque_includes_locking(trimmed(
            planning.locking_insert_nm,
            1,
        )));
    }
    plan
}

pub(super) fn solid_bushing(hole: &DamagedHole, original: &Original) -> Plan {
    let d = hole.thread.diameter_mm();
    let Ok(outside) = solid_bushing_thread(&hole.thread) else {
        let mut plan = same_hole(hole, original, hole.engaged_mm);
        plan.reasons.push(Reason::NoSuchSize);
        return plan;
    };
    let usable = hole
        .depth
        .tappable_mm(outside.pitch_mm())
        .min(hole.engaged_mm);
    let mut plan = Plan {
        reasons: drill_reasons(hole, outside.diameter_mm()),
        drill: Some(usual(&outside).drill),
        tap: Some(outside.name().to_owned()),
        hole_major_mm: Some(outside.diameter_mm()),
        insert_mm: Some(usable),
        shear_mm2_per_mm: shear_areas(&outside).hole_mm2_per_mm,
        ..same_hole(hole, original, usable)
    };
    if usable < d {
        plan.reasons.push(Reason::Shallow {
            usable_mm: usable,
            needed_mm: d,
        });
    }
    plan
}

pub(super) fn oversize(hole: &DamagedHole, original: &Original) -> Plan {
    let Some((thread, joint, other_hole_mm)) = oversize_joint(hole) else {
        let mut plan = same_hole(hole, original, hole.engaged_mm);
        plan.reasons.push(Reason::NoSuchSize);
        return plan;
    };
    let usable = hole
        .depth
        .tappable_mm(thread.pitch_mm())
        .min(hole.engaged_mm);
    let bears = hole
        .class
        .and_then(|class| bears_n(&thread, class, original.friction.low()).ok());
    let mut plan = Plan {
        reasons: drill_reasons(hole, thread.diameter_mm()),
        drill: Some(usual(&thread).drill),
        tap: Some(thread.name().to_owned()),
        bolt: bolt_name(&thread, hole.bolt_length_mm),
        bolt_thread: thread.clone(),
        other_hole_mm: Some(other_hole_mm),
        hole_major_mm: Some(thread.diameter_mm()),
        engaged_mm: usable,
        insert_mm: None,
        shear_mm2_per_mm: shear_areas(&thread).hole_mm2_per_mm,
        clamp: original.matched(&joint),
        bolt_bears_n: bears,
        bolt_thread_n: bolt_thread_n(hole, &thread, usable),
        nut_n: None,
        notes: vec![
            say::not_the_usual_torque().to_owned(),
            say::thicker_bolt_is_stiffer().to_owned(),
        ],
    };
    let limiter = hole.other.material == Clamped::PlasticWithLimiter;
    if limiter || hole.other.material == Clamped::Plastic {
        plan.reasons.push(Reason::OtherPartMayNotGrow { limiter });
    }
    if let Some(seat_mm) = hole.seat_mm
        && seat_mm < joint.face_mm
    {
        plan.reasons.push(Reason::HeadTooLarge {
            face_mm: joint.face_mm,
            seat_mm,
        });
    }
    if usable < 0.8 * thread.diameter_mm() {
        plan.reasons.push(Reason::Shallow {
            usable_mm: usable,
            needed_mm: 0.8 * thread.diameter_mm(),
        });
    }
    plan
}

/// The next larger thread, its joint, and the hole that the other part needs for it.
fn oversize_joint(hole: &DamagedHole) -> Option<(Thread, Joint, f64)> {
    let d = hole.thread.diameter_mm();
    let thread = match hole.thread.standard() {
        Standard::Metric => {
            let row = next_metric(d)?;
            Thread::metric(row.diameter_mm, row.pitch_mm).ok()?
        }
        Standard::Unified => {
            let row = next_unified(d / INCH_MM)?;
            Thread::unified(row.size, row.diameter_in, row.threads_per_inch).ok()?
        }
    };
    let normal_mm = clearance_holes(&thread)?.normal_mm;
    let other_hole_mm = hole.other.hole_mm.unwrap_or(0.0).max(normal_mm);
    let thread = if hole.thread.is_left_hand() {
        thread.left_handed()
    } else {
        thread
    };
    let joint = Joint::new(&thread, face_mm(hole.head, &thread)?, other_hole_mm).ok()?;
    Some((thread, joint, other_hole_mm))
}

/// What stands against drilling a hole of this size.
pub(super) fn drill_reasons(hole: &DamagedHole, major_mm: f64) -> Vec<Reason> {
    let mut reasons = Vec::new();
    if hole.room == DrillRoom::None {
        reasons.push(Reason::NoRoomForTools);
    }
    let least_mm = least_wall_mm(hole, major_mm);
    if let Some(left_mm) = wall_left_mm(hole, major_mm)
        && left_mm < least_mm
    {
        reasons.push(Reason::ThinWall { left_mm, least_mm });
    }
    reasons
}

pub(super) fn wall_left_mm(hole: &DamagedHole, major_mm: f64) -> Option<f64> {
    hole.boss_mm.map(|boss| (boss - major_mm) / 2.0)
}

/// Designers of inserts ask for 0.2 to 0.6 of the outside diameter in light alloys.
pub(super) fn least_wall_mm(hole: &DamagedHole, major_mm: f64) -> f64 {
    let share = if hole.parent.family.is_light() {
        0.25
    } else {
        0.2
    };
    share * major_mm
}

/// The maker answers for the original torque on the original bolt.
fn original_bears(original: &Original) -> Option<f64> {
    let bears = original.bears_n?;
    Some(
        original
            .clamp_n
            .map_or(bears, |clamp| bears.max(clamp.high())),
    )
}

/// The load at which the bolt's own thread strips; nothing where its class is not known.
fn bolt_thread_n(hole: &DamagedHole, thread: &Thread, engaged_mm: f64) -> Option<f64> {
    let stresses = hole.class?.stresses(thread).ok()?;
    Some(shear_areas(thread).bolt_mm2_per_mm * engaged_mm * 0.6 * stresses.tensile_mpa)
}

fn bolt_name(thread: &Thread, length_mm: Option<f64>) -> String {
    match (length_mm, thread.standard()) {
        // A coarse pitch goes without saying: M8x75.
        (Some(length), Standard::Metric)
            if thread.series() == Series::Coarse && !thread.name().contains("LH") =>
        {
            let d = trimmed(thread.diameter_mm(), 2);
            format!("M{d}x{}", trimmed(length, 1))
        }
        (Some(length), Standard::Metric) => format!("{}x{}", thread.name(), trimmed(length, 1)),
        (Some(length), Standard::Unified) => {
            format!("{} x {} in", thread.name(), trimmed(length / INCH_MM, 3))
        }
        (None, _) => thread.name().to_owned(),
    }
}

/// How far off the old axis the new hole may run: the play of the bolt in the other part's hole
/// and the wall to spare, less what the tilt of the drill eats.
pub(super) fn centre_tolerance_mm(
    plan: &Plan,
    hole: &DamagedHole,
    original: &Original,
) -> Option<f64> {
    let major = plan.hole_major_mm?;
    let (passage, bolt) = match plan.other_hole_mm {
        Some(opened) => (opened, major),
        None => (original.joint.hole_mm, hole.thread.diameter_mm()),
    };
    let play = (passage - bolt) / 2.0;
    let spare = wall_left_mm(hole, major).map_or(play, |left| left - least_wall_mm(hole, major));
    let tilt = plan.engaged_mm * libm::tan(hole.tilt_deg.to_radians());
    Some((play.min(spare) - tilt).max(0.0))
}
