//! Questions as people write them: every field is text, and every answer is typed.
//!
//! A field that is not written stays `None` and unknown; the fields are named as the command
//! line and the page name them.

mod extract;
mod lever;
mod repair;
mod thread;
mod torque;

pub use extract::{ExtractQuestion, extract};
pub use lever::{AdapterQuestion, LeverAnswer, LeverQuestion, adapter, lever, wrench_reads};
pub use repair::{RepairAnswer, RepairQuestion, repair};
pub use thread::{Strength, ThreadAnswer, ThreadQuestion, WrenchAnswer, thread};
pub use torque::{ClampAnswer, Shares, TorqueAnswer, TorqueQuestion, clamp, torque};

use crate::phrases::ask as say;
use fastener::class::Class;
use fastener::designation::Kind;
use fastener::friction::Condition;
use fastener::head::Head;
use fastener::holds::Holds;
use fastener::parent::{self, Parent};
use fastener::thread::Thread;
use measure::{Dimension, Line, Source, Unit, Working};
use thiserror::Error;

/// Why a question has no answer: which field, what is wrong with it, and how to mend it.
#[derive(Clone, Debug, PartialEq, Eq, Error)]
#[error("{field}: {what}")]
pub struct Trouble {
    /// The field as it is named on the command line, without dashes.
    pub field: &'static str,
    pub what: String,
    pub mend: String,
}

impl Trouble {
    pub(crate) fn new(
        field: &'static str,
        what: impl ToString,
        mend: impl Into<String>,
    ) -> Trouble {
        Trouble {
            field,
            what: what.to_string(),
            mend: mend.into(),
        }
    }
}

/// Turns an error of a calculator into a trouble with a field.
fn at<E: ToString>(field: &'static str, mend: &'static str) -> impl Fn(E) -> Trouble {
    move |error| Trouble::new(field, error, mend)
}

fn clamping_thread(field: &'static str, text: &str) -> Result<Thread, Trouble> {
    fastener::designation::read_clamping(text).map_err(at(field, say::write_a_thread()))
}

/// Any straight thread, whatever it is there for, or a pipe thread taken as one.
fn screw_thread(field: &'static str, text: &str) -> Result<Thread, Trouble> {
    let written = fastener::designation::read(text).map_err(at(field, say::write_a_thread()))?;
    match written.kind {
        Kind::Screw { thread, .. } => Ok(thread),
        Kind::Pipe(pipe) => Thread::of_pipe(&pipe).map_err(at(field, say::write_a_thread())),
    }
}

/// What somebody says that the joint holds, or what the thread was written with. A plug stays a
/// plug whatever part it sits in, unless people are hurt by it.
fn holds(text: Option<&str>, thread: &str) -> Result<Option<Holds>, Trouble> {
    let told = text.map(|text| {
        Holds::read(text).ok_or_else(|| {
            Trouble::new(
                "joint",
                say::says_no_joint(text.trim()),
                say::write_one_of(fastener::holds::names()),
            )
        })
    });
    let told = told.transpose()?;
    Ok(match told.filter(|holds| holds.hurts()) {
        Some(holds) => Some(holds),
        None => purpose(thread).or(told),
    })
}

/// What a thread that was written with its purpose holds.
fn purpose(text: &str) -> Option<Holds> {
    match fastener::designation::read(text).ok()?.kind {
        Kind::Screw { purpose, .. } => Holds::of_purpose(purpose),
        Kind::Pipe(_) => Some(Holds::PipeThread),
    }
}

fn class(text: Option<&str>) -> Result<Option<Class>, Trouble> {
    text.map(|text| Class::read(text).map_err(at("class", say::write_a_class_such_as_8())))
        .transpose()
}

fn metal(field: &'static str, text: &str) -> Result<Parent, Trouble> {
    parent::named(text).ok_or_else(|| {
        Trouble::new(
            field,
            say::is_no_metal(text.trim()),
            say::write_one_of(parent::names().join(", ")),
        )
    })
}

fn condition(text: &str) -> Result<Condition, Trouble> {
    Condition::read(text).ok_or_else(|| {
        Trouble::new(
            "condition",
            say::says_no_condition(text.trim()),
            say::write_the_state_such_as_zinc(),
        )
    })
}

fn head(text: Option<&str>, thread: &Thread) -> Result<Head, Trouble> {
    let Some(text) = text else {
        return Ok(Head::plain(thread));
    };
    Head::named(text, thread).ok_or_else(|| {
        Trouble::new(
            "head",
            say::is_no_head(text.trim()),
            say::write_one_of(Head::ALL.map(Head::name).join(", ")),
        )
    })
}

fn length_mm(field: &'static str, text: &str) -> Result<f64, Trouble> {
    quantity(field, text, Dimension::Length, Unit::Millimetre)
}

fn torque_nm(field: &'static str, text: &str) -> Result<f64, Trouble> {
    quantity(field, text, Dimension::Torque, Unit::NewtonMetre)
}

fn force_n(field: &'static str, text: &str) -> Result<f64, Trouble> {
    quantity(field, text, Dimension::Force, Unit::Newton)
}

fn angle_deg(field: &'static str, text: &str) -> Result<f64, Trouble> {
    quantity(field, text, Dimension::Angle, Unit::Degree)
}

fn quantity(
    field: &'static str,
    text: &str,
    dimension: Dimension,
    unit: Unit,
) -> Result<f64, Trouble> {
    let example = match dimension {
        Dimension::Length => say::write_a_length_such_as_12(),
        Dimension::Torque => say::write_a_torque_such_as_22(),
        Dimension::Force => say::write_a_force_such_as_25275(),
        Dimension::Angle => say::write_an_angle_such_as_90(),
        _ => say::write_a_number_with_its_unit(),
    };
    let measured = measure::read(text, dimension).map_err(at(field, example))?;
    let converted = measured.convert(unit).map_err(at(field, example))?;
    f64::try_from(converted.number()).map_err(at(field, example))
}

/// A working with the conversion of what was written, where it was in another unit.
fn converted(working: Working, what: &str, written: &str, used: &str) -> Working {
    let unit = |text: &str| -> String {
        text.chars()
            .filter(|c| c.is_alphabetic())
            .collect::<String>()
            .to_lowercase()
    };
    if unit(written) == unit(used) {
        return working;
    }
    working.line(
        Line::new(what, Source::given())
            .input(say::written(), written.trim())
            .value(used),
    )
}

/// A plain number without a unit.
fn plain(field: &'static str, text: &str) -> Result<f64, Trouble> {
    let number = text.trim().replace(',', ".").parse::<f64>();
    number
        .ok()
        .filter(|number| number.is_finite())
        .ok_or_else(|| {
            Trouble::new(
                field,
                say::is_no_number(text.trim()),
                say::write_a_number_without_a_unit(),
            )
        })
}
