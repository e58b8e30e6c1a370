//! The work of a way, step by step.

use super::hole::Depth;
use super::insert::InsertHole;
use super::ways::Way;
use crate::drill::Drill;
use crate::figures::{rounded_down, trimmed};
use crate::phrases::{extract, repair as say};

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
    /// Whether the insert or the bushing goes in with it.
    pub fits: bool,
}

/// What drilling and tapping put in: the rag keeps the chips from going further.
const CHIPS: &[&str] = &["chips", "rag"];
const CHIPS_ALONE: &[&str] = &["chips"];
const TANG: &[&str] = &["insert tang"];

fn step(what: impl Into<String>) -> Step {
    Step {
        what: what.into(),
        size_mm: None,
        caution: None,
        puts_in: &[],
        takes_out: &[],
        tightens: false,
        fits: false,
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
            ..step(say::run_a_thread_chaser_in(thread))
        },
        Step {
            takes_out: CHIPS_ALONE,
            ..step(say::blow_the_hole_out())
        },
    ]
}

pub(super) fn longer_bolt(bolt: &str) -> Vec<Step> {
    vec![
        step(say::chase_the_sound_thread()),
        step(say::turn_in_by_hand_without_the_part(bolt)),
    ]
}

/// `from_mm` is the hole as it is: its minor diameter.
pub(super) fn insert(hole: &InsertHole, from_mm: f64, length_mm: f64) -> Vec<Step> {
    let mut steps = drilled(&hole.drill, from_mm, say::or_the_insert_makers_size());
    steps.extend([
        tool(
            say::tap_with_the(&hole.tap),
            hole.major_mm,
            say::keep_the_tap_square(),
        ),
        chips_out(),
        Step {
            puts_in: TANG,
            fits: true,
            ..step(say::wind_the_insert_in(trimmed(length_mm, 1)))
        },
        Step {
            takes_out: TANG,
            ..step(say::break_the_tang_off())
        },
    ]);
    steps
}

pub(super) fn bushing(drill: &Drill, from_mm: f64, outside: &str) -> Vec<Step> {
    let mut steps = drilled(drill, from_mm, say::or_the_bushing_makers_size());
    steps.extend([
        Step {
            caution: Some(say::keep_the_tap_square()),
            ..step(say::tap_and_countersink(outside))
        },
        chips_out(),
        Step {
            fits: true,
            ..step(say::turn_the_bushing_in_below_the_face())
        },
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
            caution: Some(say::keep_the_tap_square()),
            ..step(say::tap_the(thread))
        },
        chips_out(),
    ]);
    if let Some(hole_mm) = other_hole_mm {
        steps.push(tool(
            say::open_the_other_parts_hole(trimmed(hole_mm, 1)),
            hole_mm,
            say::eyes_and_drill_stop(),
        ));
    }
    steps.push(step(say::mark_the_bolt()));
    steps
}

pub(super) fn new_part() -> Vec<Step> {
    vec![step(say::fit_a_sound_part())]
}

/// Steps that need no size.
pub(super) fn said(words: &[&str]) -> Vec<Step> {
    words.iter().map(|what| step(*what)).collect()
}

pub(super) fn magnesium() -> Step {
    Step {
        caution: Some(say::magnesium_chips_burn()),
        ..step(say::sharp_tools_slow())
    }
}

pub(super) fn bolt_and_nut(drill: Option<&Drill>) -> Vec<Step> {
    let mut steps = vec![step(say::see_the_far_side())];
    if let Some(drill) = drill {
        let what = say::drill_right_through(super::special::passage(drill.diameter_mm));
        steps.push(Step {
            puts_in: CHIPS,
            ..tool(what, drill.diameter_mm, say::eyes_and_drill_stop())
        });
    }
    steps.push(chips_out());
    steps.push(step(say::bolt_through_nut_behind()));
    steps
}

pub(super) fn plug_bushing() -> Vec<Step> {
    vec![
        Step {
            caution: Some(say::no_spark_no_vapour()),
            ..step(say::piston_near_the_bottom())
        },
        Step {
            puts_in: CHIPS,
            caution: Some(say::keep_the_tap_square()),
            ..step(say::ream_and_tap_with_grease())
        },
        Step {
            takes_out: CHIPS,
            ..step(say::chips_out_of_the_cylinder())
        },
        Step {
            fits: true,
            ..step(say::turn_the_plug_bushing_in())
        },
    ]
}

/// What ends every way: a dry hole, where it is blind, and the torque.
pub(super) fn ending(depth: Depth, torque_nm: Option<f64>) -> Vec<Step> {
    let dry = Step {
        caution: Some(say::blind_hole_dry()),
        ..step(say::dry_the_hole())
    };
    let tighten = Step {
        tightens: true,
        ..match torque_nm {
            Some(torque_nm) => step(say::tighten_to(trimmed(torque_nm, 1))),
            None => step(say::tighten_as_the_maker_says()),
        }
    };
    match depth {
        Depth::Blind { .. } => vec![dry, tighten],
        Depth::Through { .. } => vec![tighten],
    }
}

/// Centre, a drill half way where there is far to go, and the last drill.
fn drilled(drill: &Drill, from_mm: f64, words: &str) -> Vec<Step> {
    let mut steps = vec![step(say::centre_on_the_old_hole())];
    let way = drill.diameter_mm - from_mm;
    if way > FAR_MM {
        let half = rounded_down(from_mm + way / 2.0, 0.5);
        steps.push(tool(
            say::drill_on_the_way(trimmed(half, 1)),
            half,
            say::eyes_and_drill_stop(),
        ));
    }
    steps.push(tool(
        say::drill_with(&drill.name, words),
        drill.diameter_mm,
        say::eyes_and_drill_stop(),
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
        ..step(say::chips_out())
    }
}

/// Chips, tangs and rags that a way can leave in the vehicle.
pub(super) fn left_inside(way: Way) -> Vec<&'static str> {
    match way {
        Way::LongerBolt | Way::NewPart | Way::MakersPart | Way::MakersRepair | Way::WeldedBung => {
            Vec::new()
        }
        Way::ChaseThread | Way::OversizePlug | Way::NextPipeSize => vec![extract::chips()],
        Way::WireInsert => vec![extract::chips(), say::tang_of_an_insert(), say::rag()],
        Way::SolidBushing | Way::Oversize | Way::BoltAndNut | Way::PlugBushing => {
            vec![extract::chips(), say::rag()]
        }
    }
}
