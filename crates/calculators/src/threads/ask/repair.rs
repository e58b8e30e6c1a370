//! A damaged hole, and the repair options.

use super::{
    Trouble, angle_deg, at, class, condition, head, holds, length_mm, metal, screw_thread,
    torque_nm,
};
use crate::phrases::ask as say;
use fastener::designation::read;
use fastener::friction::{Condition, Finish, Lubrication};
use fastener::purpose::{Purpose, often_met_as};
use fastener::repair::{
    Clamped, Damage, DamagedHole, Depth, DrillRoom, OtherPart, Planning, RepairTrouble, Repairs,
    repairs,
};
use fastener::thread::Thread;

/// A damaged hole as somebody describes it. `through` is a length, or `depth` a blind depth.
#[derive(Clone, Copy, Debug, Default)]
pub struct RepairQuestion<'a> {
    /// The thread, perhaps with the bolt's length: `M8x75`.
    pub thread: &'a str,
    /// What the joint holds: brake, wheel, drain-plug, other ...
    pub joint: Option<&'a str>,
    pub class: Option<&'a str>,
    pub bolt_length: Option<&'a str>,
    pub engaged: &'a str,
    /// Depth of a blind hole.
    pub blind: Option<&'a str>,
    /// Length of a through hole.
    pub through: Option<&'a str>,
    /// Diameter of the metal around the hole.
    pub boss: Option<&'a str>,
    /// Or the least wall beside the old thread.
    pub wall: Option<&'a str>,
    pub metal: &'a str,
    /// `scarred` or `stripped`; torn out is assumed, being the worse.
    pub damage: Option<&'a str>,
    /// How deep the thread is torn; the engaged length where nobody looked.
    pub torn: Option<&'a str>,
    /// The maker's torque.
    pub torque: Option<&'a str>,
    /// State of the threads; oiled steel where it is not said, and said so.
    pub condition: Option<&'a str>,
    pub head: Option<&'a str>,
    pub seat: Option<&'a str>,
    /// `metal`, `plastic` or `limiter`.
    pub other: Option<&'a str>,
    pub other_hole: Option<&'a str>,
    pub no_drill_room: bool,
    pub tilt: Option<&'a str>,
}

/// The hole as it was understood, and the repair options.
#[derive(Clone, Debug, PartialEq)]
pub struct RepairAnswer {
    pub hole: DamagedHole,
    pub repairs: Repairs,
}

/// Ranks the repair options for a hole.
///
/// # Errors
///
/// [`Trouble`] with the field.
///
/// ```
/// use calculators::threads::ask::{RepairQuestion, repair};
/// use fastener::repair::{Planning, Way};
/// let question = RepairQuestion {
///     thread: "M8x75",
///     class: Some("8.8"),
///     engaged: "18 mm",
///     blind: Some("26 mm"),
///     boss: Some("19 mm"),
///     metal: "aluminium",
///     torque: Some("22 Nm"),
///     ..Default::default()
/// };
/// let answer = repair(&question, &Planning::default())?;
/// assert_eq!(answer.repairs.options[0].way, Way::WireInsert);
/// # Ok::<(), calculators::threads::ask::Trouble>(())
/// ```
pub fn repair(question: &RepairQuestion, planning: &Planning) -> Result<RepairAnswer, Trouble> {
    let hole = hole(question)?;
    if hole.holds.is_none() {
        ask_what_it_holds(&hole.thread)?;
    }
    let mut repairs = repairs(&hole, planning).map_err(|trouble| match trouble {
        RepairTrouble::NoBoltBears { .. } => {
            Trouble::new("torque", trouble, say::ask_the_makers_figure_again_inch())
        }
        other => Trouble::new(
            "thread-repair",
            other,
            say::check_the_sizes_against_one_another(),
        ),
    })?;
    if question.condition.is_none() && hole.clamps() {
        repairs
            .notes
            .push(say::the_state_of_the_threads_was().to_owned());
    }
    Ok(RepairAnswer { hole, repairs })
}

/// Sizes that wheels, brake lines, plugs and sensors have are not taken for a plain joint.
fn ask_what_it_holds(thread: &Thread) -> Result<(), Trouble> {
    let often: Vec<&str> = often_met_as(thread)
        .into_iter()
        .filter(|purpose| *purpose != Purpose::Clamp)
        .map(Purpose::name)
        .collect();
    if often.is_empty() {
        return Ok(());
    }
    Err(Trouble::new(
        "joint",
        say::what_does_it_hold(thread.name(), often.join(say::another())),
        say::write_one_of(fastener::holds::names()),
    ))
}

fn hole(question: &RepairQuestion) -> Result<DamagedHole, Trouble> {
    let thread = screw_thread("thread", question.thread)?;
    let written = read(question.thread).map_err(at("thread", say::write_a_metric_thread()))?;
    let optional = |field: &'static str, text: Option<&str>| {
        text.map(|text| length_mm(field, text)).transpose()
    };
    let engaged_mm = length_mm("engaged", question.engaged)?;
    Ok(DamagedHole {
        holds: holds(question.joint, question.thread)?,
        class: class(question.class)?.or(written.class),
        bolt_length_mm: optional("bolt-length", question.bolt_length)?.or(written.length_mm),
        depth: depth(question.blind, question.through)?,
        boss_mm: match (
            optional("boss", question.boss)?,
            optional("wall", question.wall)?,
        ) {
            (Some(boss_mm), _) => Some(boss_mm),
            (None, Some(wall_mm)) => Some(thread.diameter_mm() + 2.0 * wall_mm),
            (None, None) => None,
        },
        parent: metal("in", question.metal)?,
        damage: damage(question, engaged_mm)?,
        torque_nm: question
            .torque
            .map(|text| torque_nm("torque", text))
            .transpose()?,
        condition: match question.condition {
            Some(text) => condition(text)?,
            None => Condition {
                finish: Finish::Plain,
                lubrication: Lubrication::Oiled,
            },
        },
        head: head(question.head, &thread)?,
        seat_mm: optional("seat", question.seat)?,
        other: OtherPart {
            material: other(question.other)?,
            hole_mm: optional("other-hole", question.other_hole)?,
        },
        room: if question.no_drill_room {
            DrillRoom::None
        } else {
            DrillRoom::Straight
        },
        tilt_deg: tilt_deg(question.tilt)?,
        engaged_mm,
        thread,
    })
}

/// Half a degree is what a guide bush allows.
pub(super) fn tilt_deg(text: Option<&str>) -> Result<f64, Trouble> {
    text.map_or(Ok(0.5), |text| angle_deg("tilt", text))
}

pub(super) fn depth(blind: Option<&str>, through: Option<&str>) -> Result<Depth, Trouble> {
    match (blind, through) {
        (Some(blind), None) => Ok(Depth::Blind {
            depth_mm: length_mm("blind", blind)?,
        }),
        (None, Some(through)) => Ok(Depth::Through {
            length_mm: length_mm("through", through)?,
        }),
        _ => Err(Trouble::new(
            "blind",
            say::the_hole_must_be_either_blind(),
            say::give_the_depth_of_a_blind(),
        )),
    }
}

fn damage(question: &RepairQuestion, engaged_mm: f64) -> Result<Damage, Trouble> {
    match question.damage.map(str::trim) {
        Some("scarred") => Ok(Damage::Scarred),
        None | Some("stripped") => Ok(Damage::Stripped {
            from_face_mm: question
                .torn
                .map_or(Ok(engaged_mm), |text| length_mm("torn", text))?,
        }),
        Some(other) => Err(Trouble::new(
            "damage",
            say::is_no_damage(other),
            say::write_scarred_its_metal_all_there(),
        )),
    }
}

fn other(text: Option<&str>) -> Result<Clamped, Trouble> {
    match text.map(str::trim) {
        None | Some("metal") => Ok(Clamped::Metal),
        Some("plastic") => Ok(Clamped::Plastic),
        Some("limiter" | "plastic with limiter") => Ok(Clamped::PlasticWithLimiter),
        Some(found) => Err(Trouble::new(
            "other",
            say::is_no_material(found),
            say::write_metal_plastic_or_limiter_plastic(),
        )),
    }
}
