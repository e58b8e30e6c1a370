//! The work of a way, step by step.

use super::insert::InsertHole;
use super::ways::Way;
use crate::drill::Drill;
use crate::figures::trimmed;

/// One step of the work.
#[derive(Clone, Debug, PartialEq)]
pub struct Step {
    pub what: String,
    /// Size of the tool, where it has one.
    pub size_mm: Option<f64>,
    /// Read before the step.
    pub caution: Option<&'static str>,
}

const EYES: &str = "eye protection; stop the drill at the depth of the hole";
const SQUARE: &str = "keep the tap square to the face; back it off to break the chip";
const DRY: &str =
    "a blind hole must be dry: oil or coolant in it bursts the casting under the bolt";

fn step(what: impl Into<String>) -> Step {
    Step {
        what: what.into(),
        size_mm: None,
        caution: None,
    }
}

fn tool(what: impl Into<String>, size_mm: f64, caution: &'static str) -> Step {
    Step {
        what: what.into(),
        size_mm: Some(size_mm),
        caution: Some(caution),
    }
}

pub(super) fn chase(thread: &str, torque_nm: Option<f64>) -> Vec<Step> {
    vec![
        step(format!(
            "run a {thread} thread chaser in by hand, with oil: a chaser, not a cutting tap"
        )),
        step("blow the hole out under a rag and look at the thread with a lamp"),
        dry_hole(),
        tighten(torque_nm),
    ]
}

pub(super) fn longer_bolt(bolt: &str, torque_nm: Option<f64>) -> Vec<Step> {
    vec![
        step("chase the sound thread through the torn one, and blow the hole out"),
        step(format!(
            "turn the {bolt} in by hand without the part: count the turns, see that it does not bottom"
        )),
        dry_hole(),
        tighten(torque_nm),
    ]
}

pub(super) fn insert(hole: &InsertHole, length_mm: f64, torque_nm: Option<f64>) -> Vec<Step> {
    let mut steps = vec![
        step("centre on the old hole, with a guide bush through the other part's hole if it fits"),
        tool(
            format!("drill {} (or the insert maker's size)", hole.drill.name),
            hole.drill.diameter_mm,
            EYES,
        ),
        tool(format!("tap with the {}", hole.tap), hole.major_mm, SQUARE),
        step(
            "chips out: grease on the tap's flutes, vacuum, then a magnet shows nothing in light metal, so look",
        ),
        step(format!(
            "wind the insert, {} mm long, in to half a turn below the face",
            trimmed(length_mm, 1)
        )),
        step("break the tang off and take it out: it counts as a thing inside until it is seen"),
    ];
    steps.extend([dry_hole(), tighten(torque_nm)]);
    steps
}

pub(super) fn bushing(drill: &Drill, outside: &str, torque_nm: Option<f64>) -> Vec<Step> {
    vec![
        step("centre on the old hole, with a guide bush through the other part's hole if it fits"),
        tool(
            format!("drill {} (or the bushing maker's size)", drill.name),
            drill.diameter_mm,
            EYES,
        ),
        step(format!(
            "tap {outside}, and countersink for the keys or the collar"
        )),
        step("chips out, then look with a lamp"),
        step("turn the bushing in below the face and drive the keys or swage it as its maker says"),
        dry_hole(),
        tighten(torque_nm),
    ]
}

pub(super) fn oversize(
    drill: &Drill,
    thread: &str,
    other_hole_mm: Option<f64>,
    torque_nm: Option<f64>,
) -> Vec<Step> {
    let mut steps = vec![
        step("centre on the old hole"),
        tool(format!("drill {}", drill.name), drill.diameter_mm, EYES),
        Step {
            caution: Some(SQUARE),
            ..step(format!("tap {thread}"))
        },
        step("chips out, then look with a lamp"),
    ];
    if let Some(hole_mm) = other_hole_mm {
        steps.push(tool(
            format!(
                "open the other part's hole to {} mm and break its edge",
                trimmed(hole_mm, 1)
            ),
            hole_mm,
            EYES,
        ));
    }
    steps.push(step(
        "mark the bolt: it takes another wrench and another torque than its neighbours",
    ));
    steps.extend([dry_hole(), tighten(torque_nm)]);
    steps
}

pub(super) fn new_part(torque_nm: Option<f64>) -> Vec<Step> {
    vec![
        step("fit a new or sound used part; keep the old one until the new one is tight"),
        tighten(torque_nm),
    ]
}

/// Chips, tangs and rags that a way can leave in the vehicle.
pub(super) fn left_inside(way: Way) -> Vec<&'static str> {
    match way {
        Way::LongerBolt | Way::NewPart => Vec::new(),
        Way::ChaseThread => vec!["chips"],
        Way::WireInsert => vec!["chips", "insert tang", "rag"],
        Way::SolidBushing | Way::Oversize => vec!["chips", "rag"],
    }
}

fn dry_hole() -> Step {
    Step {
        caution: Some(DRY),
        ..step("dry the hole")
    }
}

fn tighten(torque_nm: Option<f64>) -> Step {
    match torque_nm {
        Some(torque_nm) => step(format!(
            "tighten to {} N·m, in the pattern of the joint",
            trimmed(torque_nm, 1)
        )),
        None => step("tighten as the maker says: no torque was specified here, so none is given"),
    }
}
