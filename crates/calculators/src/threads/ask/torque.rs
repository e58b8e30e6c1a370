//! Torque, clamp, adapters and levers.

use super::{
    Trouble, at, clamping_thread, class, condition, converted, force_n, head, length_mm, plain,
    torque_nm,
};
use crate::phrases::ask as say;
use fastener::class::{Class, strongest};
use fastener::clearance::{Fit, clearance_holes};
use fastener::friction::dry_is_not_oiled;
use fastener::head::face_mm;
use fastener::thread::Thread;
use fastener::torque::{
    Fate, Form, Friction, Joint, Terms, clamp_range, fate, share_of_proof, torque_for_clamp,
    working, yield_torque_nm,
};
use measure::{Range, Working};

/// A joint, with either a clamp or a torque.
#[derive(Clone, Copy, Debug, Default)]
pub struct TorqueQuestion<'a> {
    pub thread: &'a str,
    pub class: Option<&'a str>,
    /// A coefficient of friction, such as 0.15.
    pub friction: Option<&'a str>,
    /// Or a state of the threads, such as `zinc dry`.
    pub condition: Option<&'a str>,
    pub head: Option<&'a str>,
    /// Diameter of the face under the head, where no standard head is meant.
    pub face: Option<&'a str>,
    /// `close`, `medium`, `loose`, or a diameter.
    pub hole: Option<&'a str>,
    /// `motosh`, `iso16047` or `short`.
    pub form: Option<&'a str>,
    /// The K of the short form.
    pub nut_factor: Option<&'a str>,
}

/// The torque for a clamp.
#[derive(Clone, Debug, PartialEq)]
pub struct TorqueAnswer {
    pub thread: Thread,
    pub clamp_n: f64,
    /// At the friction to expect.
    pub terms: Terms,
    /// Over the range of friction.
    pub torque_nm: Range<f64>,
    pub strength: Shares,
    pub notes: Vec<String>,
    pub working: Working,
}

/// The clamp of a torque.
#[derive(Clone, Debug, PartialEq)]
pub struct ClampAnswer {
    pub thread: Thread,
    pub torque_nm: f64,
    pub clamp_n: Range<f64>,
    /// At the clamp to expect.
    pub strength: Shares,
    /// Share of the proof load at the low, expected and high clamp.
    pub shares_of_proof: Option<Range<f64>>,
    pub notes: Vec<String>,
    pub working: Working,
}

/// What the bolt's class adds.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Shares {
    pub class: Option<Class>,
    pub share_of_proof: Option<f64>,
    /// Torque at which the bolt begins to yield, over the range of friction.
    pub yield_torque_nm: Option<Range<f64>>,
    /// Torque at which it breaks, over the range of friction.
    pub breaking_torque_nm: Option<Range<f64>>,
    /// What becomes of the bolt; nothing where its class is not known.
    pub fate: Option<Fate>,
    /// That, in words, or a question where no bolt of the size bears it.
    pub verdict: Option<String>,
}

/// The torque for a clamp.
///
/// # Errors
///
/// [`Trouble`] with the field; friction or a condition must be given, for none is assumed.
///
/// ```
/// use calculators::threads::ask::{TorqueQuestion, torque};
/// let question = TorqueQuestion {
///     thread: "M10x1.5",
///     friction: Some("0.15"),
///     ..Default::default()
/// };
/// let answer = torque(&question, "25275 N")?;
/// assert_eq!(format!("{:.2}", answer.terms.total_nm), "50.05");
/// # Ok::<(), calculators::threads::ask::Trouble>(())
/// ```
pub fn torque(question: &TorqueQuestion, clamp: &str) -> Result<TorqueAnswer, Trouble> {
    let asked = Asked::of(question)?;
    let clamp_n = force_n("clamp", clamp)?;
    if !(clamp_n > 0.0 && clamp_n < 1e7) {
        return Err(Trouble::new(
            "clamp",
            say::is_no_clamp(clamp_n),
            say::write_a_clamp_such_as_25275(),
        ));
    }
    let terms = torque_for_clamp(
        &asked.joint,
        both(asked.friction.mid()),
        clamp_n,
        asked.form,
    );
    let torque_nm = asked
        .friction
        .map(|coefficient| {
            torque_for_clamp(&asked.joint, both(coefficient), clamp_n, asked.form).total_nm
        })
        .map_err(at("friction", say::write_friction()))?;
    Ok(TorqueAnswer {
        clamp_n,
        terms,
        torque_nm,
        strength: asked.shares(
            Range::new(clamp_n, clamp_n, clamp_n).map_err(at("clamp", say::write_a_clamp()))?,
        ),
        notes: notes(),
        working: converted(
            working(
                &asked.joint,
                both(asked.friction.mid()),
                clamp_n,
                asked.form,
            ),
            say::clamp_as_written(),
            clamp,
            &format!("{clamp_n:.1} N"),
        ),
        thread: asked.joint.thread,
    })
}

/// The clamp of a torque: the way back of [`torque`].
///
/// # Errors
///
/// As [`torque`].
pub fn clamp(question: &TorqueQuestion, torque: &str) -> Result<ClampAnswer, Trouble> {
    let asked = Asked::of(question)?;
    let torque_nm = torque_nm("torque", torque)?;
    if !(torque_nm > 0.0 && torque_nm < 1e5) {
        return Err(Trouble::new(
            "torque",
            say::is_no_torque(torque_nm),
            say::write_a_torque(),
        ));
    }
    let clamp_n = clamp_range(&asked.joint, asked.friction, torque_nm, asked.form)
        .map_err(at("friction", say::write_friction()))?;
    let share = |clamp_n: f64| {
        asked
            .class
            .and_then(|class| share_of_proof(&asked.joint.thread, class, clamp_n))
    };
    let strength = asked.shares(clamp_n);
    let shares_of_proof = match (
        share(clamp_n.low()),
        share(clamp_n.mid()),
        share(clamp_n.high()),
    ) {
        (Some(low), Some(mid), Some(high)) if strength.fate != Some(Fate::Breaks) => {
            Range::new(low, mid, high).ok()
        }
        _ => None,
    };
    Ok(ClampAnswer {
        torque_nm,
        clamp_n,
        strength,
        shares_of_proof,
        notes: notes(),
        working: converted(
            working(
                &asked.joint,
                both(asked.friction.mid()),
                clamp_n.mid(),
                asked.form,
            ),
            say::torque_as_written(),
            torque,
            &format!("{torque_nm:.3} N·m"),
        ),
        thread: asked.joint.thread,
    })
}

/// A question with its fields read.
struct Asked {
    joint: Joint,
    friction: Range<f64>,
    form: Form,
    class: Option<Class>,
}

impl Asked {
    fn of(question: &TorqueQuestion) -> Result<Asked, Trouble> {
        let thread = clamping_thread("thread", question.thread)?;
        let form = form(question)?;
        Ok(Asked {
            joint: match form {
                // T = K F d knows no head.
                Form::Short { .. } => short_joint(&thread)?,
                _ => joint(question, &thread)?,
            },
            friction: friction(question)?,
            form,
            class: class(question.class)?,
        })
    }

    fn shares(&self, clamp_n: Range<f64>) -> Shares {
        let thread = &self.joint.thread;
        let stresses = self.class.and_then(|class| class.stresses(thread).ok());
        let fate_of = |class: Class| fate(thread, class, clamp_n, self.friction).ok();
        let fate = self.class.and_then(fate_of);
        let breaks_all = strongest(thread).filter(|class| fate_of(*class) == Some(Fate::Breaks));
        let verdict = match (breaks_all, fate.and_then(Fate::said)) {
            (Some(class), _) => Some(say::no_bolt_bears_that(thread.name(), class.name())),
            (None, said) => said.map(str::to_owned),
        };
        // The short form says nothing of a head, so no torque is worked out by its face.
        let by_face = !matches!(self.form, Form::Short { .. });
        let torque_at = |stress_mpa: f64| {
            by_face
                .then(|| yield_torque_nm(&self.joint, stress_mpa, self.friction).ok())
                .flatten()
        };
        Shares {
            class: self.class,
            // A broken bolt has no share of anything.
            share_of_proof: self
                .class
                .filter(|_| fate < Some(Fate::Breaks) && breaks_all.is_none())
                .and_then(|class| share_of_proof(thread, class, clamp_n.mid())),
            yield_torque_nm: stresses
                .as_ref()
                .and_then(|found| torque_at(found.yield_mpa)),
            breaking_torque_nm: stresses
                .as_ref()
                .and_then(|found| torque_at(found.tensile_mpa)),
            fate: fate.or(breaks_all.map(|_| Fate::Breaks)),
            verdict,
        }
    }
}

/// Some joint for the short form, which uses only the diameter.
fn short_joint(thread: &Thread) -> Result<Joint, Trouble> {
    let d = thread.diameter_mm();
    Joint::new(thread, 1.5 * d, 1.1 * d).map_err(at("thread", say::write_a_metric_thread()))
}

fn joint(question: &TorqueQuestion, thread: &Thread) -> Result<Joint, Trouble> {
    let head = head(question.head, thread)?;
    let face = match question.face {
        Some(text) => Some(length_mm("face", text)?),
        None => face_mm(head, thread),
    };
    let face = face.ok_or_else(|| {
        Trouble::new(
            "head",
            say::no_such_head(head.said(), thread.name()),
            say::give_the_diameter_of_the_face(),
        )
    })?;
    let holes = clearance_holes(thread);
    let fit = match question.hole.map(str::trim) {
        None | Some("medium" | "normal") => Some(Fit::Normal),
        Some("close" | "fine") => Some(Fit::Close),
        Some("loose" | "coarse") => Some(Fit::Loose),
        Some(_) => None,
    };
    let hole = match (fit, question.hole) {
        (Some(fit), _) => holes.map(|holes| holes.of(fit)).ok_or_else(|| {
            Trouble::new(
                "hole",
                say::no_clearance_hole(thread.name()),
                say::give_its_diameter_such_as_9(),
            )
        })?,
        (None, text) => length_mm("hole", text.unwrap_or_default())?,
    };
    Joint::new(thread, face, hole).map_err(at("hole", say::give_a_hole_smaller_than_the()))
}

fn friction(question: &TorqueQuestion) -> Result<Range<f64>, Trouble> {
    match (question.friction, question.condition) {
        (Some(_), Some(_)) => Err(Trouble::new(
            "friction",
            say::a_coefficient_and_a_condition_are(),
            say::give_one_of_them(),
        )),
        (Some(text), None) => {
            let coefficient = plain("friction", text)?;
            Friction::both(coefficient).map_err(at("friction", say::write_friction()))?;
            Range::new(coefficient, coefficient, coefficient)
                .map_err(at("friction", say::write_friction()))
        }
        (None, Some(text)) => Ok(condition(text)?.friction()),
        // The short form carries its friction in K.
        (None, None) if question.nut_factor.is_some() => {
            Range::new(0.15, 0.15, 0.15).map_err(at("friction", say::write_friction()))
        }
        (None, None) => Err(Trouble::new(
            "friction",
            say::no_friction_is_given_and_none(),
            say::write_friction(),
        )),
    }
}

fn form(question: &TorqueQuestion) -> Result<Form, Trouble> {
    let nut_factor = |text: Option<&str>| {
        let text = text.ok_or_else(|| {
            Trouble::new(
                "nut-factor",
                say::the_short_form_needs_its_k(),
                say::give_k_such_as_0_2(),
            )
        })?;
        let nut_factor = plain("nut-factor", text)?;
        if (0.05..=1.0).contains(&nut_factor) {
            Ok(Form::Short { nut_factor })
        } else {
            Err(Trouble::new(
                "nut-factor",
                say::nut_factor_outside(nut_factor),
                say::give_k_such_as_0_2(),
            ))
        }
    };
    match question.form.map(str::trim) {
        None if question.nut_factor.is_some() => nut_factor(question.nut_factor),
        None | Some("motosh" | "vdi") => Ok(Form::Motosh),
        Some("iso16047" | "iso-16047" | "iso 16047" | "exact") => Ok(Form::Iso16047),
        Some("short") => nut_factor(question.nut_factor),
        Some(other) => Err(Trouble::new(
            "form",
            say::is_no_form(other),
            say::write_motosh_iso16047_or_short(),
        )),
    }
}

fn both(coefficient: f64) -> Friction {
    Friction {
        thread: coefficient,
        head: coefficient,
    }
}

fn notes() -> Vec<String> {
    vec![
        dry_is_not_oiled().to_owned(),
        say::not_a_specification_the_makers_torque().to_owned(),
    ]
}
