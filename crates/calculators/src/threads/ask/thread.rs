//! What is this thread, and what does it bear?

use super::{Trouble, at, class, length_mm, metal};
use crate::phrases::ask as say;
use fastener::class::{Class, Loads};
use fastener::clearance::{ClearanceHoles, clearance_holes};
use fastener::designation::{Designation, Kind, read};
use fastener::drill::{Basis, TapDrill, tap_drills, usual};
use fastener::head::{AlmostFits, Head, Wrench, almost_fit, wrench, wrenches};
use fastener::near_miss::{NearMiss, near_misses};
use fastener::pipe::Pipe;
use fastener::purpose::{Purpose, often_met_as};
use fastener::strip::{Stripping, stripping};
use fastener::thread::{Geometry, Series, Thread};
use fastener::twist::{BreakingTorque, breaking_torque, only_new};
use measure::{Line, Working};

/// A thread as written, and what else to work out for it.
#[derive(Clone, Copy, Debug, Default)]
pub struct ThreadQuestion<'a> {
    pub thread: &'a str,
    pub class: Option<&'a str>,
    /// The metal that the thread is tapped in; with it goes `depth`.
    pub metal: Option<&'a str>,
    /// Length of full thread in engagement.
    pub depth: Option<&'a str>,
    /// Wanted percentage of thread, as US charts count it.
    pub percent: Option<&'a str>,
}

/// Everything that is known of a thread.
#[derive(Clone, Debug, PartialEq)]
pub struct ThreadAnswer {
    pub designation: Designation,
    /// The name of the thread as it is best written.
    pub name: String,
    /// Where it is a pipe thread, with nothing of what follows.
    pub pipe: Option<Pipe>,
    pub thread: Option<Thread>,
    pub geometry: Option<Geometry>,
    pub tap_drill: Option<TapDrill>,
    /// The nearest drill of every series for the wanted percentage.
    pub other_drills: Vec<TapDrill>,
    pub clearance: Option<ClearanceHoles>,
    pub wrench: Option<Wrench>,
    pub wrenches: Vec<WrenchAnswer>,
    pub near_misses: Vec<NearMiss>,
    pub strength: Option<Strength>,
    pub stripping: Option<Stripping>,
    pub notes: Vec<String>,
    pub working: Option<Working>,
}

/// A wrench, and the ones that almost fit.
#[derive(Clone, Debug, PartialEq)]
pub struct WrenchAnswer {
    pub wrench: Wrench,
    pub almost: Vec<AlmostFits>,
}

/// What a bolt of a class bears.
#[derive(Clone, Debug, PartialEq)]
pub struct Strength {
    pub class: Class,
    pub loads: Loads,
    /// Nothing outside ISO 898-7.
    pub breaking_torque: Option<BreakingTorque>,
}

/// Answers what a thread is.
///
/// # Errors
///
/// [`Trouble`] with the field that could not be read.
///
/// ```
/// use calculators::threads::ask::{ThreadQuestion, thread};
/// let answer = thread(&ThreadQuestion { thread: "m8", class: Some("8.8"), ..Default::default() })?;
/// assert_eq!(answer.name, "M8x1.25");
/// assert_eq!(answer.wrench.unwrap().across_flats_mm, Some(13.0));
/// # Ok::<(), calculators::threads::ask::Trouble>(())
/// ```
pub fn thread(question: &ThreadQuestion) -> Result<ThreadAnswer, Trouble> {
    let designation = read(question.thread).map_err(at("thread", say::write_a_thread_or_pipe()))?;
    let class = class(question.class)?.or(designation.class);
    match designation.kind.clone() {
        Kind::Pipe(pipe) => Ok(ThreadAnswer {
            name: pipe.name(),
            notes: vec![pipe.what_it_is()],
            pipe: Some(pipe),
            ..nothing(designation)
        }),
        Kind::Screw { thread, purpose } => screw(question, designation, thread, purpose, class),
    }
}

fn screw(
    question: &ThreadQuestion,
    designation: Designation,
    thread: Thread,
    purpose: Purpose,
    class: Option<Class>,
) -> Result<ThreadAnswer, Trouble> {
    let percent = match question.percent {
        Some(text) => super::plain("percent", text.trim().trim_end_matches('%'))?,
        None => 75.0,
    };
    let strength = match class.filter(|_| purpose == Purpose::Clamp) {
        Some(class) => Some(Strength {
            class,
            loads: class
                .loads(&thread)
                .map_err(at("class", say::write_a_class_that_covers_this()))?,
            breaking_torque: breaking_torque(&thread, class),
        }),
        None => None,
    };
    let stripping = stripped(question, &thread, class, purpose)?;
    let mut notes = notes(&thread, purpose);
    if let Some(parent) = question.metal.and_then(fastener::parent::named)
        && parent.shear_mpa <= 0.0
    {
        notes.push(say::no_strength_known(parent.said()));
    }
    if strength.is_some() {
        notes.push(say::what_a_bolt_of_this_class().to_owned());
        notes.push(only_new().to_owned());
    }
    Ok(ThreadAnswer {
        name: thread.name().to_owned(),
        geometry: Some(thread.geometry()),
        tap_drill: Some(usual(&thread)),
        other_drills: tap_drills(&thread, percent, Basis::UsChart),
        clearance: clearance_holes(&thread),
        // A spark plug or a drain plug has a hexagon of its own, in no list of bolts.
        wrench: wrench(Head::plain(&thread), &thread).filter(|_| purpose == Purpose::Clamp),
        wrenches: wrenches(&thread)
            .into_iter()
            .filter(|_| purpose == Purpose::Clamp)
            .map(with_almost)
            .collect(),
        near_misses: near_misses(&thread),
        working: Some(worked(&thread, class.filter(|_| strength.is_some()))),
        thread: Some(thread),
        strength,
        stripping,
        notes,
        ..nothing(designation)
    })
}

fn worked(thread: &Thread, class: Option<Class>) -> Working {
    let tap = usual(thread);
    let mut working = thread.working().line(
        Line::new(say::tap_drill(), tap.source)
            .value(tap.drill.name)
            .note(say::leaves_percents(
                format!("{:.0}", tap.percent_iso),
                format!("{:.0}", tap.percent_us),
            )),
    );
    let Some(class) = class else { return working };
    if let Ok(loads) = class.working(thread) {
        working = working.then(loads);
    }
    match breaking_torque(thread, class) {
        Some(breaking) => working.line(
            Line::new(say::least_breaking_torque(), breaking.source)
                .formula("MB", "τB·π·d3min³/16")
                .value(format!("{} N·m", breaking.torque_nm))
                .note(only_new()),
        ),
        None => working,
    }
}

fn stripped(
    question: &ThreadQuestion,
    thread: &Thread,
    class: Option<Class>,
    purpose: Purpose,
) -> Result<Option<Stripping>, Trouble> {
    let (metal_text, depth_text) = match (question.metal, question.depth) {
        (None, None) => return Ok(None),
        (Some(metal), Some(depth)) => (metal, depth),
        (Some(_), None) => {
            return Err(Trouble::new(
                "depth",
                say::the_engaged_length_is_missing(),
                say::add_the_length_of_full_thread(),
            ));
        }
        (None, Some(_)) => {
            return Err(Trouble::new(
                "in",
                say::the_metal_of_the_hole_is(),
                say::add_the_metal_such_as_a380(),
            ));
        }
    };
    let parent = metal("in", metal_text)?;
    let engaged = length_mm("depth", depth_text)?;
    if engaged <= 0.0 {
        return Err(Trouble::new(
            "depth",
            say::is_no_engagement(depth_text.trim()),
            say::write_the_length_of_full_thread(),
        ));
    }
    let Some(class) = class else {
        return Err(Trouble::new(
            "class",
            say::which_fails_first_depends_on_the(),
            say::add_the_class_such_as_8(),
        ));
    };
    if purpose != Purpose::Clamp || parent.shear_mpa <= 0.0 {
        return Ok(None);
    }
    stripping(thread, class, &parent, engaged)
        .map(Some)
        .map_err(at("class", say::write_a_class_that_covers_this()))
}

fn with_almost(wrench: Wrench) -> WrenchAnswer {
    WrenchAnswer {
        almost: wrench.across_flats_mm.map(almost_fit).unwrap_or_default(),
        wrench,
    }
}

fn notes(thread: &Thread, purpose: Purpose) -> Vec<String> {
    let mut notes = Vec::new();
    if let Some(why) = purpose.why_no_clamp() {
        notes.push(why.to_owned());
    } else {
        notes.extend(
            often_met_as(thread)
                .into_iter()
                .map(|often| say::often_that_of(often.name())),
        );
    }
    if thread.series() == Series::NotPreferred {
        notes.push(say::this_pitch_is_in_neither_the().to_owned());
    }
    notes
}

fn nothing(designation: Designation) -> ThreadAnswer {
    ThreadAnswer {
        designation,
        name: String::new(),
        pipe: None,
        thread: None,
        geometry: None,
        tap_drill: None,
        other_drills: Vec::new(),
        clearance: None,
        wrench: None,
        wrenches: Vec::new(),
        near_misses: Vec::new(),
        strength: None,
        stripping: None,
        notes: Vec::new(),
        working: None,
    }
}
