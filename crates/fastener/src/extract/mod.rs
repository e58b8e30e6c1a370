//! Getting a stub out of its hole: the ways in order of risk, and where to stop.

mod rungs;

use crate::class::Class;
use crate::drill::{Drill, millimetres};
use crate::figures::{rounded_down, rounded_up, shown};
use crate::holds::Holds;
use crate::parent::{Family, Parent};
use crate::phrases::{extract as say, seized};
use crate::repair::{Depth, DrillRoom, bottomed};
use crate::sources;
use crate::thread::Thread;
use crate::tolerance::limits;
use crate::twist::breaking_torque;
use measure::{Line, Source, Working};
use thiserror::Error;

/// A stub as it sits.
#[derive(Clone, Debug, PartialEq)]
pub struct Stub {
    pub thread: Thread,
    /// What the joint holds; nothing where nobody said.
    pub holds: Option<Holds>,
    pub class: Option<Class>,
    pub stands: Stands,
    /// Length of thread that holds it.
    pub engaged_mm: f64,
    pub depth: Depth,
    pub parent: Parent,
    /// Whether a nut can be put on it and welded: room, and nothing near that heat hurts.
    pub room_to_weld: bool,
    pub drill_room: DrillRoom,
    /// How far out of square the drill is held; half a degree with a guide bush.
    pub tilt_deg: f64,
}

/// Where the stub ends.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Stands {
    Proud { by_mm: f64 },
    Flush,
    Below { by_mm: f64 },
}

/// One rung of the ladder, least risk first.
#[derive(Clone, Debug, PartialEq)]
pub struct Rung {
    pub rank: usize,
    pub way: ExtractionWay,
    /// Whether it can be tried on this stub.
    pub open: bool,
    /// Why not, where it cannot.
    pub reason: Option<String>,
    pub how: Vec<String>,
    pub drills: Vec<DrillStep>,
    /// The most that may be put on the stub, as a guide; nothing where no standard speaks.
    pub most_torque_nm: Option<f64>,
    pub stop_when: &'static str,
    pub left_inside: Vec<&'static str>,
}

/// A drill on the way up, and how far off the axis it may run.
#[derive(Clone, Debug, PartialEq)]
pub struct DrillStep {
    pub drill: Drill,
    pub centre_tolerance_mm: f64,
    /// What the drilled stub still bears in twist, as a guide; nothing where no standard speaks.
    pub stub_bears_nm: Option<f64>,
}

/// A way to get a stub out.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum ExtractionWay {
    Grip,
    WeldNut,
    LeftHandDrill,
    /// The same for a left-hand stub, which a left-hand drill would drive further in.
    RightHandDrill,
    PickOut,
    TaperedExtractor,
    DrillForRepair,
    SendOut,
}

/// What to do about a stub.
#[derive(Clone, Debug, PartialEq)]
pub struct Extraction {
    /// Read first.
    pub cautions: Vec<String>,
    pub ladder: Vec<Rung>,
    /// The largest drill that spares the thread.
    pub largest_drill: Option<Drill>,
    pub working: Working,
}

/// Why nothing is said about a stub.
#[derive(Clone, Debug, PartialEq, Error)]
pub enum ExtractionTrouble {
    #[error("{}", say::stub_size_must_lie_between(.what, .value, .least, .most))]
    OutOfRange {
        what: &'static str,
        value: f64,
        least: f64,
        most: f64,
    },
}

impl ExtractionWay {
    /// In words.
    pub fn name(self) -> &'static str {
        match self {
            ExtractionWay::Grip => say::grip_the_stub(),
            ExtractionWay::WeldNut => say::weld_a_nut_on(),
            ExtractionWay::LeftHandDrill => say::left_hand_drills(),
            ExtractionWay::RightHandDrill => say::right_hand_drills(),
            ExtractionWay::PickOut => say::drill_to_the_thread(),
            ExtractionWay::TaperedExtractor => say::tapered_extractor(),
            ExtractionWay::DrillForRepair => say::drill_for_a_thread_repair(),
            ExtractionWay::SendOut => say::send_it_out(),
        }
    }
}

/// Read before anything else.
const CAUTIONS: [fn() -> &'static str; 5] = [
    say::eyes_and_gloves_off,
    say::know_what_lies_behind,
    say::no_flame_near_and_disconnect,
    say::hardened_tools_shatter,
    seized::makers_instructions_come_first,
];

/// With less room than this the next drill is sure to touch the thread.
const LEAST_TOLERANCE_MM: f64 = 0.1;

/// The ladder of ways to get a stub out.
///
/// Formula: a drill may run off the axis by (minor diameter - drill)/2, less what the tilt
/// eats over the stub's length; the drilled stub bears the breaking torque times 1 - (drill/d3)⁴.
///
/// Returns every way of [`ExtractionWay`], least risk first, those that are closed with the
/// reason.
///
/// # Errors
///
/// [`ExtractionTrouble`] for sizes outside any stub's.
///
/// # Limits
///
/// [`only_new`](crate::twist::only_new) A stub that snapped while turning was seized, or bottomed, or both.
///
/// # Source
///
/// ISO 724 (minor diameter); ISO 898-7 (breaking torque); shop practice for the sequence.
pub fn extraction(stub: &Stub) -> Result<Extraction, ExtractionTrouble> {
    check(stub)?;
    let drills = drill_steps(stub);
    let breaking_nm = stub
        .class
        .and_then(|class| breaking_torque(&stub.thread, class))
        .map(|breaking| breaking.torque_nm);
    let rungs = [
        rungs::grip(stub, breaking_nm),
        rungs::weld(stub, breaking_nm),
        rungs::left_hand(stub, &drills),
        rungs::pick_out(stub, &drills),
        rungs::extractor(stub, &drills),
        rungs::drill_for_repair(stub),
        rungs::send_out(),
    ];
    let ladder = rungs
        .into_iter()
        .enumerate()
        .map(|(index, rung)| Rung {
            rank: index + 1,
            ..rung
        })
        .collect();
    let mut cautions: Vec<String> = CAUTIONS.map(|caution| caution().to_owned()).to_vec();
    let more = [
        (
            matches!(stub.depth, Depth::Blind { .. }),
            say::blind_hole_must_be_dry(),
        ),
        (stub.thread.is_left_hand(), say::left_hand_stub()),
        (
            stub.parent.family == Family::Magnesium,
            say::magnesium_slow_and_sharp(),
        ),
        (
            stub.holds.is_some_and(Holds::hurts),
            say::people_are_hurt_no_insert(),
        ),
    ];
    cautions.extend(
        more.iter()
            .filter(|(so, _)| *so)
            .map(|(_, said)| (*said).to_owned()),
    );
    cautions.extend(bottomed(
        stub.depth,
        stub.engaged_mm,
        stub.thread.pitch_mm(),
    ));
    Ok(Extraction {
        cautions,
        ladder,
        largest_drill: drills.last().map(|step| step.drill.clone()),
        working: working(stub, &drills, breaking_nm),
    })
}

fn check(stub: &Stub) -> Result<(), ExtractionTrouble> {
    let within = |what, value: f64, least: f64, most: f64| {
        if (least..=most).contains(&value) {
            Ok(())
        } else {
            Err(ExtractionTrouble::OutOfRange {
                what,
                value,
                least,
                most,
            })
        }
    };
    within(say::engaged_length_in_mm(), stub.engaged_mm, 0.1, 500.0)?;
    within(say::depth_of_the_hole_in_mm(), stub.depth.mm(), 0.1, 1000.0)?;
    within(say::tilt_in_degrees(), stub.tilt_deg, 0.0, 10.0)?;
    match stub.stands {
        Stands::Flush => Ok(()),
        Stands::Proud { by_mm } | Stands::Below { by_mm } => {
            within(say::distance_from_the_face_in_mm(), by_mm, 0.0, 500.0)
        }
    }
}

/// From half the diameter up by about an eighth, to the largest that spares the thread.
fn drill_steps(stub: &Stub) -> Vec<DrillStep> {
    let minor = stub.thread.geometry().minor_diameter_mm;
    let eaten = stub.engaged_mm * libm::tan(stub.tilt_deg.to_radians());
    let tolerance = |drill_mm: f64| (minor - drill_mm) / 2.0 - eaten;
    let fine = if stub.thread.diameter_mm() < 4.0 {
        0.1
    } else {
        0.5
    };
    let largest = rounded_down(minor - 2.0 * (eaten + LEAST_TOLERANCE_MM), fine);
    let first = rounded_down(stub.thread.diameter_mm() / 2.0, fine);
    let step = rounded_up(stub.thread.diameter_mm() / 8.0, fine);
    let breaking = stub
        .class
        .and_then(|class| breaking_torque(&stub.thread, class));
    let root = limits(&stub.thread).bolt_root_min_mm;
    let bears = |drill_mm: f64| {
        let share = drill_mm / root;
        let left = (1.0 - share * share * share * share).max(0.0);
        breaking.as_ref().map(|breaking| breaking.torque_nm * left)
    };
    let mut sizes = Vec::new();
    let mut size = first;
    while size < largest && sizes.len() < 12 {
        sizes.push(size);
        size += step;
    }
    if largest > 0.0 {
        sizes.push(largest);
    }
    sizes
        .into_iter()
        .map(|size| DrillStep {
            drill: millimetres(size),
            centre_tolerance_mm: tolerance(size),
            stub_bears_nm: bears(size),
        })
        .collect()
}

fn working(stub: &Stub, drills: &[DrillStep], breaking_nm: Option<f64>) -> Working {
    let minor = stub.thread.geometry().minor_diameter_mm;
    let eaten = stub.engaged_mm * libm::tan(stub.tilt_deg.to_radians());
    let mut working = Working::new(say::stub_of(stub.thread.name()))
        .line(
            Line::new(say::minor_diameter(), sources::basic_profile())
                .symbol("D1")
                .value(shown(minor, 3, "mm")),
        )
        .line(
            Line::new(say::eaten_by_tilt(), Source::derived())
                .formula("t", "L·tan a")
                .input("L", shown(stub.engaged_mm, 1, "mm"))
                .input("a", shown(stub.tilt_deg, 2, "°"))
                .value(shown(eaten, 2, "mm")),
        );
    for step in drills {
        working = working.line(
            Line::new(
                say::off_centre_allowed_at(&step.drill.name),
                Source::derived(),
            )
            .formula("c", "(D1 − drill)/2 − t")
            .value(shown(step.centre_tolerance_mm, 2, "mm")),
        );
    }
    if let Some(breaking_nm) = breaking_nm {
        working = working.line(
            Line::new(say::least_breaking_torque(), sources::iso_898_7())
                .symbol("MB")
                .value(shown(breaking_nm, 2, "N·m")),
        );
    }
    working.limit(say::only_new())
}
