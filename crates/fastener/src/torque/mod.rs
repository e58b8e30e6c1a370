//! Torque from clamp and clamp from torque.

mod fate;
mod yield_point;

pub use fate::{Fate, fate};
pub use yield_point::{share_of_proof, yield_clamp_n, yield_torque_nm};

use crate::clearance::clearance_holes;
use crate::figures::{shown, trimmed};
use crate::head::{Head, face_mm};
use crate::phrases::torque as say;
use crate::sources;
use crate::thread::Thread;
use measure::{Line, OutOfOrder, Range, Source, Working};
use std::f64::consts::PI;
use thiserror::Error;

/// A bolt and the face it turns on.
#[derive(Clone, Debug, PartialEq)]
pub struct Joint {
    pub thread: Thread,
    /// Outside diameter of the face under the head.
    pub face_mm: f64,
    /// The hole it stands on.
    pub hole_mm: f64,
}

/// Friction in the thread and under the head.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Friction {
    pub thread: f64,
    pub head: f64,
}

/// Which equation joins torque and clamp.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Form {
    /// Motosh: pitch, thread friction and friction under the head, added up.
    Motosh,
    /// ISO 16047, with the exact thread term.
    Iso16047,
    /// T = K F d, with a nut factor that stands for everything.
    Short { nut_factor: f64 },
}

/// A torque taken apart.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Terms {
    /// What stretches the bolt.
    pub pitch_nm: f64,
    pub thread_nm: f64,
    pub head_nm: f64,
    pub total_nm: f64,
    /// The K that the short form would need.
    pub nut_factor: f64,
}

/// Why no torque is worked out.
#[derive(Clone, Debug, PartialEq, Error)]
pub enum TorqueTrouble {
    #[error("{}", say::no_head_listed(.head, .thread))]
    NoFace { head: &'static str, thread: String },
    #[error("{}", say::no_clearance_hole_listed(.thread))]
    NoHole { thread: String },
    #[error("{}", say::bears_on_nothing(.face_mm, .hole_mm))]
    NothingToBearOn { face_mm: f64, hole_mm: f64 },
    #[error("{}", say::outside_of(.what, .value, .least, .most))]
    OutOfRange {
        what: &'static str,
        value: f64,
        least: f64,
        most: f64,
    },
}

/// Friction above 1 is a seized thread.
const FRICTION: (f64, f64) = (0.01, 1.0);

impl Joint {
    /// A head of a standard on the medium clearance hole.
    ///
    /// # Errors
    ///
    /// [`TorqueTrouble::NoFace`] or [`TorqueTrouble::NoHole`] where no table lists it.
    pub fn standard(thread: &Thread, head: Head) -> Result<Joint, TorqueTrouble> {
        let face_mm = face_mm(head, thread).ok_or_else(|| TorqueTrouble::NoFace {
            head: head.said(),
            thread: thread.name().to_owned(),
        })?;
        let holes = clearance_holes(thread).ok_or_else(|| TorqueTrouble::NoHole {
            thread: thread.name().to_owned(),
        })?;
        Joint::new(thread, face_mm, holes.normal_mm)
    }

    /// A bolt on a face and a hole of given sizes.
    ///
    /// # Errors
    ///
    /// [`TorqueTrouble::NothingToBearOn`].
    pub fn new(thread: &Thread, face_mm: f64, hole_mm: f64) -> Result<Joint, TorqueTrouble> {
        if !(face_mm > hole_mm && hole_mm >= 0.0 && face_mm <= 1000.0) {
            return Err(TorqueTrouble::NothingToBearOn { face_mm, hole_mm });
        }
        Ok(Joint {
            thread: thread.clone(),
            face_mm,
            hole_mm,
        })
    }

    /// Mean radius of the ring under the head.
    fn head_radius_mm(&self) -> f64 {
        (self.face_mm + self.hole_mm) / 4.0
    }

    /// Torque in N·m for each newton of clamp, term by term: pitch, thread, head.
    fn per_newton(&self, friction: Friction, form: Form) -> [f64; 3] {
        let p = self.thread.pitch_mm();
        let d2 = self.thread.geometry().pitch_diameter_mm;
        let head = friction.head * self.head_radius_mm();
        let pitch = p / (2.0 * PI);
        let terms_mm = match form {
            Form::Motosh => [
                pitch,
                friction.thread * d2 / 2.0 / (3.0_f64.sqrt() / 2.0),
                head,
            ],
            Form::Iso16047 => {
                // The standard prints 1.154 for 1/cos 30°.
                let flank = 2.0 / 3.0_f64.sqrt();
                let both = 0.5 * (p + flank * PI * friction.thread * d2)
                    / (PI - flank * friction.thread * p / d2);
                [pitch, both - pitch, head]
            }
            // The nut factor does not tell its parts: all of it stands in the total.
            Form::Short { nut_factor } => {
                let rest = nut_factor * self.thread.diameter_mm() - pitch;
                [pitch, rest, 0.0]
            }
        };
        terms_mm.map(|term| term / 1000.0)
    }
}

impl Friction {
    /// The same friction in the thread and under the head.
    ///
    /// # Errors
    ///
    /// [`TorqueTrouble::OutOfRange`] outside 0.01 to 1.
    pub fn both(coefficient: f64) -> Result<Friction, TorqueTrouble> {
        within(say::coefficient_of_friction(), coefficient, FRICTION)?;
        Ok(Friction {
            thread: coefficient,
            head: coefficient,
        })
    }
}

impl Form {
    /// The source of the form.
    pub fn source(self) -> Source {
        match self {
            Form::Motosh => sources::motosh(),
            Form::Iso16047 => sources::iso_16047(),
            Form::Short { .. } => sources::short_form(),
        }
    }
}

/// The torque for a clamp.
///
/// Formula: Motosh T = F (P/2π + μ d2/(2 cos 30°) + μ (dw + dh)/4); ISO 16047
/// T = F (0.5 (P + 1.154 π μ d2)/(π − 1.154 μ P/d2) + μ (dw + dh)/4); short T = K F d.
///
/// Inputs: `clamp_n` in newtons, not negative; friction 0.01 to 1.
/// Returns N·m, with its parts.
///
/// # Limits
///
/// Flat face under the head, elastic bolt, no prevailing torque. The short form tells
/// nothing of the parts beyond the pitch term.
///
/// # Source
///
/// Motosh; VDI 2230-1; ISO 16047.
///
/// ```
/// use fastener::{Thread, head::Head, torque::{Form, Friction, Joint, torque_for_clamp}};
/// let joint = Joint::standard(&Thread::metric(10.0, 1.5)?, Head::Hex)?;
/// let terms = torque_for_clamp(&joint, Friction::both(0.15)?, 25_275.0, Form::Motosh);
/// assert_eq!(format!("{:.2}", terms.total_nm), "50.05");
/// # Ok::<(), Box<dyn std::error::Error>>(())
/// ```
pub fn torque_for_clamp(joint: &Joint, friction: Friction, clamp_n: f64, form: Form) -> Terms {
    let per_newton = joint.per_newton(friction, form);
    let [pitch_nm, thread_nm, head_nm] = per_newton.map(|term| term * clamp_n);
    Terms {
        pitch_nm,
        thread_nm,
        head_nm,
        total_nm: pitch_nm + thread_nm + head_nm,
        nut_factor: per_newton.iter().sum::<f64>() / (joint.thread.diameter_mm() / 1000.0),
    }
}

/// The clamp that a torque gives: the inverse of [`torque_for_clamp`].
///
/// Formula: F = T over the torque for one newton.
///
/// Inputs: `torque_nm` in N·m; friction 0.01 to 1. Returns newtons.
///
/// # Limits
///
/// Those of [`torque_for_clamp`].
///
/// # Source
///
/// Motosh; VDI 2230-1; ISO 16047.
///
/// ```
/// use fastener::{Thread, head::Head, torque::{Form, Friction, Joint, clamp_for_torque}};
/// let joint = Joint::standard(&Thread::metric(10.0, 1.5)?, Head::Hex)?;
/// let clamp_n = clamp_for_torque(&joint, Friction::both(0.15)?, 50.05418, Form::Motosh);
/// assert_eq!(format!("{clamp_n:.0}"), "25275");
/// # Ok::<(), Box<dyn std::error::Error>>(())
/// ```
pub fn clamp_for_torque(joint: &Joint, friction: Friction, torque_nm: f64, form: Form) -> f64 {
    torque_nm / joint.per_newton(friction, form).iter().sum::<f64>()
}

/// The clamp that a torque gives over a range of friction: low, to expect, high.
///
/// Formula: [`clamp_for_torque`] at each end. Slick threads give the high clamp, rough ones
/// the low.
///
/// Inputs: `torque_nm` in N·m; friction from slick to rough. Returns newtons.
///
/// # Errors
///
/// [`OutOfOrder`] where the torque or the friction is no number.
///
/// # Limits
///
/// Those of [`torque_for_clamp`]; the wrench's own error comes on top.
///
/// # Source
///
/// Motosh; VDI 2230-1; ISO 16047.
pub fn clamp_range(
    joint: &Joint,
    friction: Range<f64>,
    torque_nm: f64,
    form: Form,
) -> Result<Range<f64>, OutOfOrder> {
    friction.map(|coefficient| {
        let both = Friction {
            thread: coefficient,
            head: coefficient,
        };
        clamp_for_torque(joint, both, torque_nm, form)
    })
}

/// How a torque for a clamp was found.
pub fn working(joint: &Joint, friction: Friction, clamp_n: f64, form: Form) -> Working {
    let terms = torque_for_clamp(joint, friction, clamp_n, form);
    let line = |what: &str, symbol: &str, formula: &str, value: f64| {
        Line::new(what, form.source())
            .formula(symbol, formula)
            .value(shown(value, 3, "N·m"))
    };
    let working = Working::new(say::torque_of(joint.thread.name())).line(
        Line::new(say::clamp(), Source::given())
            .symbol("F")
            .value(shown(clamp_n, 0, "N")),
    );
    let working = match form {
        Form::Short { nut_factor } => working.line(
            line(say::torque(), "T", "K·F·d", terms.total_nm)
                .input("K", trimmed(nut_factor, 3))
                .input("d", shown(joint.thread.diameter_mm(), 4, "mm")),
        ),
        Form::Motosh | Form::Iso16047 => {
            let thread_formula = if form == Form::Motosh {
                "F·μ·d2/(2·cos 30°)"
            } else {
                "F·0.5·(P + 1.154·π·μ·d2)/(π − 1.154·μ·P/d2) − Tp"
            };
            working
                .line(
                    line(say::pitch_term(), "Tp", "F·P/(2π)", terms.pitch_nm)
                        .input("P", shown(joint.thread.pitch_mm(), 5, "mm")),
                )
                .line(
                    line(
                        say::thread_friction(),
                        "Tt",
                        thread_formula,
                        terms.thread_nm,
                    )
                    .input("μ", trimmed(friction.thread, 3))
                    .input(
                        "d2",
                        shown(joint.thread.geometry().pitch_diameter_mm, 4, "mm"),
                    ),
                )
                .line(
                    line(
                        say::friction_under_the_head(),
                        "Th",
                        "F·μ·(dw + dh)/4",
                        terms.head_nm,
                    )
                    .input("μ", trimmed(friction.head, 3))
                    .input("dw", shown(joint.face_mm, 2, "mm"))
                    .input("dh", shown(joint.hole_mm, 2, "mm")),
                )
                .line(line(say::torque(), "T", "Tp + Tt + Th", terms.total_nm))
        }
    };
    working
        .remark(say::dry_is_not_oiled())
        .limit(say::not_a_specification())
}

pub(crate) fn within(
    what: &'static str,
    value: f64,
    (least, most): (f64, f64),
) -> Result<(), TorqueTrouble> {
    if (least..=most).contains(&value) {
        Ok(())
    } else {
        Err(TorqueTrouble::OutOfRange {
            what,
            value,
            least,
            most,
        })
    }
}
