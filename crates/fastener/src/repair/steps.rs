//! The work of a way, step by step.

use super::hole::Depth;
use super::insert::InsertHole;
use super::ways::Way;
use crate::drill::Drill;
use crate::figures::{rounded_down, trimmed};

/// One step of the work.
#[derive(Clone, Debug, PartialEq)]
pub struct Step {
    pub what: String,
    /// Size of the tool, where it has one.
    pub size_mm: Option<f64>,
    /// Read before the step.
    pub caution: Option<&'static str>,
    /// What it leaves inside the vehicle, in the words of the option's `left_inside`.
    pub puts_in: &'static [&'static str],
    /// What it brings out of the vehicle again.
    pub takes_out: &'static [&'static str],
    /// Whether it tightens the bolt, which belongs to putting the joint together.
    pub tightens: bool,
}

/// What drilling and tapping put in: the rag keeps the chips from going further.
const CHIPS: &[&str] = &["chips", "rag"];
const CHIPS_ALONE: &[&str] = &["chips"];
const TANG: &[&str] = &["insert tang"];

const EYES: &str = "eye protection; stop the drill at the depth of the hole";
const SQUARE: &str = "keep the tap square to the face; back it off to break the chip";
const DRY: &str =
    "a blind hole must be dry: oil or coolant in it bursts the casting under the bolt";

fn step(what: impl Into<String>) -> Step {
    Step {
        what: what.into(),
        size_mm: None,
        caution: None,
        puts_in: &[],
        takes_out: &[],
        tightens: false,
    }
}

fn tool(what: impl Into<String>, size_mm: f64, caution: &'static str) -> Step {
    Step {
        size_mm: Some(size_mm),
        caution: Some(caution),
        ..step(what)
    }
}

pub(super) fn chase(thread: &str) -> Vec<Step> {
    vec![
        Step {
            puts_in: CHIPS_ALONE,
            ..step(format!(
                "run a {thread} thread chaser in by hand, with oil: a chaser, not a cutting tap"
            ))
        },
        Step {
            takes_out: CHIPS_ALONE,
            ..step("blow the hole out under a rag and look at the thread with a lamp")
        },
    ]
}

pub(super) fn longer_bolt(bolt: &str) -> Vec<Step> {
    vec![
        step("chase the sound thread through the torn one, and blow the hole out"),
        step(format!(
            "turn the {bolt} in by hand without the part: count the turns, see that it does not bottom"
        )),
    ]
}

/// `from_mm` is the hole as it is: its minor diameter.
pub(super) fn insert(hole: &InsertHole, from_mm: f64, length_mm: f64) -> Vec<Step> {
    let mut steps = drilled(&hole.drill, from_mm, " (or the insert maker's size)");
    steps.extend([
        tool(format!("tap with the {}", hole.tap), hole.major_mm, SQUARE),
        chips_out(),
        Step {
            puts_in: TANG,
            ..step(format!(
                "wind the insert, {} mm long, in to half a turn below the face",
                trimmed(length_mm, 1)
            ))
        },
        Step {
            takes_out: TANG,
            ..step(
                "break the tang off and take it out: it counts as a thing inside until it is seen",
            )
        },
    ]);
    steps
}

pub(super) fn bushing(drill: &Drill, from_mm: f64, outside: &str) -> Vec<Step> {
    let mut steps = drilled(drill, from_mm, " (or the bushing maker's size)");
    steps.extend([
        Step {
            caution: Some(SQUARE),
            ..step(format!(
                "tap {outside}, and countersink for the keys or the collar"
            ))
        },
        chips_out(),
        step("turn the bushing in below the face and drive the keys or swage it as its maker says"),
    ]);
    steps
}

pub(super) fn oversize(
    drill: &Drill,
    from_mm: f64,
    thread: &str,
    other_hole_mm: Option<f64>,
) -> Vec<Step> {
    let mut steps = drilled(drill, from_mm, "");
    steps.extend([
        Step {
            caution: Some(SQUARE),
            ..step(format!("tap {thread}"))
        },
        chips_out(),
    ]);
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
    steps
}

pub(super) fn new_part() -> Vec<Step> {
    vec![step(
        "fit a new or sound used part; keep the old one until the new one is tight",
    )]
}

/// Steps that need no size.
pub(super) fn said(words: &[&str]) -> Vec<Step> {
    words.iter().map(|what| step(*what)).collect()
}

pub(super) fn magnesium() -> Step {
    Step {
        caution: Some("magnesium chips burn: no flame, no sparks, no water; dry sand at hand"),
        ..step("sharp tools, slow, and sweep the chips up as they fall")
    }
}

pub(super) fn bolt_and_nut(drill: Option<&Drill>) -> Vec<Step> {
    let mut steps = vec![step(
        "see that the far side can be reached, and that nothing turns, flows or burns behind it",
    )];
    if let Some(drill) = drill {
        let what = format!(
            "drill right through to {} mm, and break both edges",
            super::special::passage(drill.diameter_mm)
        );
        steps.push(Step {
            puts_in: CHIPS,
            ..tool(what, drill.diameter_mm, EYES)
        });
    }
    steps.push(chips_out());
    steps.push(step(
        "bolt through, washer and nut of its class behind, held while it is tightened",
    ));
    steps
}

pub(super) fn plug_bushing() -> Vec<Step> {
    vec![
        Step {
            caution: Some("no spark, no fuel vapour: fuel pump and ignition off"),
            ..step("piston near the bottom, the valves of that cylinder shut")
        },
        Step {
            puts_in: CHIPS,
            caution: Some(SQUARE),
            ..step(
                "ream and tap with the bushing kit's own tools, grease on the flutes, wiped off often",
            )
        },
        Step {
            takes_out: CHIPS,
            ..step(
                "chips out of the cylinder: vacuum through the hole, then look with a borescope; do not crank before that",
            )
        },
        step(
            "turn the bushing in to its collar and lock it as its maker says, then the plug by hand",
        ),
    ]
}

/// What ends every way: a dry hole, where it is blind, and the torque.
pub(super) fn ending(depth: Depth, torque_nm: Option<f64>) -> Vec<Step> {
    let dry = Step {
        caution: Some(DRY),
        ..step("dry the hole")
    };
    let tighten = Step {
        tightens: true,
        ..match torque_nm {
            Some(torque_nm) => step(format!(
                "tighten to {} N·m, in the pattern of the joint",
                trimmed(torque_nm, 1)
            )),
            None => {
                step("tighten as the maker says: no torque was specified here, so none is given")
            }
        }
    };
    match depth {
        Depth::Blind { .. } => vec![dry, tighten],
        Depth::Through { .. } => vec![tighten],
    }
}

/// Centre, a drill half way where there is far to go, and the last drill.
fn drilled(drill: &Drill, from_mm: f64, words: &str) -> Vec<Step> {
    let mut steps = vec![step(
        "centre on the old hole, with a guide bush through the other part's hole if it fits",
    )];
    let way = drill.diameter_mm - from_mm;
    if way > FAR_MM {
        let half = rounded_down(from_mm + way / 2.0, 0.5);
        steps.push(tool(
            format!("drill {} mm on the way", trimmed(half, 1)),
            half,
            EYES,
        ));
    }
    steps.push(tool(
        format!("drill {}{words}", drill.name),
        drill.diameter_mm,
        EYES,
    ));
    for drilled in steps.iter_mut().filter(|step| step.size_mm.is_some()) {
        drilled.puts_in = CHIPS;
    }
    steps
}

/// A drill that takes more than this off the diameter at once grabs and runs off.
const FAR_MM: f64 = 1.5;

fn chips_out() -> Step {
    Step {
        takes_out: CHIPS,
        ..step(
            "chips out: grease on the tap's flutes, a vacuum, then a lamp; a magnet finds none of light metal",
        )
    }
}

/// Chips, tangs and rags that a way can leave in the vehicle.
pub(super) fn left_inside(way: Way) -> Vec<&'static str> {
    match way {
        Way::LongerBolt | Way::NewPart | Way::MakersPart | Way::MakersRepair | Way::WeldedBung => {
            Vec::new()
        }
        Way::ChaseThread | Way::OversizePlug | Way::NextPipeSize => vec!["chips"],
        Way::WireInsert => vec!["chips", "insert tang", "rag"],
        Way::SolidBushing | Way::Oversize | Way::BoltAndNut | Way::PlugBushing => {
            vec!["chips", "rag"]
        }
    }
}
