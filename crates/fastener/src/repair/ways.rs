//! Each way back, with what it needs and whether it holds.

use super::clamp::Original;
use super::estimate::Planning;
use super::hole::{Damage, DamagedHole};
use super::insert::insert_hole;
use super::plan::{self, Plan, centre_tolerance_mm, least_wall_mm, wall_left_mm};
use super::reason::Reason;
use super::steps::{self, Step};
use crate::drill::Drill;
use crate::figures::{shown, trimmed};
use crate::sources;
use crate::strip::credited_mm;
use crate::thread::Thread;
use measure::{Line, Range, Source, Working};

/// A way to give a hole its clamp back.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Way {
    ChaseThread,
    LongerBolt,
    WireInsert,
    SolidBushing,
    Oversize,
    NewPart,
}

/// A way with its figures. What does not apply or is not known is `None`.
#[derive(Clone, Debug, PartialEq)]
pub struct RepairOption {
    pub way: Way,
    pub rank: usize,
    pub holds: bool,
    /// Why it does not hold; empty where it does.
    pub reasons: Vec<Reason>,
    /// None for a way that does not hold: nobody should start on it.
    pub steps: Vec<Step>,
    pub drill: Option<Drill>,
    pub tap: Option<String>,
    pub bolt: String,
    /// The thread that the bolt has then.
    pub bolt_thread: Thread,
    /// What the other part's hole must be opened to.
    pub other_hole_mm: Option<f64>,
    /// Outside diameter of the new tapped hole.
    pub hole_major_mm: Option<f64>,
    /// Length of full thread that carries.
    pub engaged_mm: f64,
    /// Nominal length of an insert.
    pub insert_mm: Option<f64>,
    pub wall_left_mm: Option<f64>,
    pub clamp_n: Option<Range<f64>>,
    /// Low end against the original low end.
    pub clamp_ratio: Option<f64>,
    /// What the bolt bears; never below the original high end on the original bolt, whose
    /// torque its maker answers for.
    pub bolt_bears_n: Option<f64>,
    pub thread_bears_n: f64,
    /// `thread_bears_n` over the greatest clamp.
    pub strip_margin: Option<f64>,
    pub torque_nm: Option<f64>,
    /// How far the drill may run off the old axis, tilt taken off.
    pub centre_tolerance_mm: Option<f64>,
    pub minutes: Option<Range<f64>>,
    pub cost: Option<Range<f64>>,
    pub left_inside: Vec<&'static str>,
    pub next_repair: &'static str,
    pub notes: Vec<String>,
    pub score: f64,
    /// How the score adds up.
    pub why_here: String,
    pub working: Working,
}

impl Way {
    /// Every way, the least invasive first.
    pub const ALL: [Way; 6] = [
        Way::ChaseThread,
        Way::LongerBolt,
        Way::WireInsert,
        Way::SolidBushing,
        Way::Oversize,
        Way::NewPart,
    ];

    /// In words.
    pub fn name(self) -> &'static str {
        match self {
            Way::ChaseThread => "chase the thread",
            Way::LongerBolt => "longer bolt into sound thread",
            Way::WireInsert => "wire insert",
            Way::SolidBushing => "solid bushing",
            Way::Oversize => "oversize thread",
            Way::NewPart => "new housing",
        }
    }

    /// How much stays as it was and is left for the next repair, from 0 to 1.
    pub fn reversibility(self) -> f64 {
        match self {
            Way::ChaseThread | Way::NewPart => 1.0,
            Way::WireInsert => 0.8,
            Way::LongerBolt => 0.75,
            Way::SolidBushing => 0.65,
            Way::Oversize => 0.3,
        }
    }

    fn next_repair(self) -> &'static str {
        match self {
            Way::ChaseThread => "every other way is still open",
            Way::LongerBolt => "an insert of the same size is still open",
            Way::WireInsert => "the insert can be changed; a solid bushing may still fit",
            Way::SolidBushing => "only a larger bushing or a new part is left",
            Way::Oversize => "an insert of the larger size, where the wall still allows it",
            Way::NewPart => "everything is as it left the maker",
        }
    }
}

pub(super) fn option(
    way: Way,
    hole: &DamagedHole,
    original: &Original,
    planning: &Planning,
) -> RepairOption {
    let plan = match way {
        Way::ChaseThread => plan::chase(hole, original),
        Way::LongerBolt => plan::longer_bolt(hole, original, planning),
        Way::WireInsert => plan::wire_insert(hole, original, planning),
        Way::SolidBushing => plan::solid_bushing(hole, original),
        Way::Oversize => plan::oversize(hole, original),
        Way::NewPart => plan::same_hole(hole, original, hole.engaged_mm),
    };
    finished(way, plan, hole, original, planning)
}

fn finished(
    way: Way,
    mut plan: Plan,
    hole: &DamagedHole,
    original: &Original,
    planning: &Planning,
) -> RepairOption {
    let credited = credited_mm(&plan.bolt_thread, plan.engaged_mm, &hole.parent);
    let parent_n = plan.shear_mm2_per_mm * credited * hole.parent.shear_mpa;
    let thread_bears_n = plan
        .bolt_thread_n
        .map_or(parent_n, |bolt| bolt.min(parent_n));
    let clamp_n = plan.clamp.map(|clamp| clamp.clamp_n);
    let load_n = clamp_n.map(Range::high).or_else(|| original.load_n(hole));
    let strip_margin = load_n.map(|load| thread_bears_n / load);
    judge(&mut plan, way, hole, planning, strip_margin);
    let wall = plan
        .hole_major_mm
        .and_then(|major| wall_left_mm(hole, major));
    let torque_nm = plan.clamp.map(|clamp| clamp.torque_nm);
    let estimate = planning.estimates.get(&way);
    let holds = plan.reasons.is_empty();
    RepairOption {
        way,
        rank: 0,
        holds,
        steps: if holds {
            steps_of(way, &plan, hole, torque_nm)
        } else {
            Vec::new()
        },
        centre_tolerance_mm: centre_tolerance_mm(&plan, hole, original),
        working: working(way, &plan, hole, credited, thread_bears_n, wall),
        wall_left_mm: wall,
        reasons: plan.reasons,
        drill: plan.drill,
        tap: plan.tap,
        bolt: plan.bolt,
        bolt_thread: plan.bolt_thread,
        other_hole_mm: plan.other_hole_mm,
        hole_major_mm: plan.hole_major_mm,
        engaged_mm: plan.engaged_mm,
        insert_mm: plan.insert_mm,
        clamp_n,
        clamp_ratio: plan.clamp.map(|clamp| clamp.ratio),
        bolt_bears_n: plan.bolt_bears_n,
        thread_bears_n,
        strip_margin,
        torque_nm,
        minutes: estimate.map(|estimate| estimate.minutes),
        cost: estimate.map(|estimate| estimate.cost),
        left_inside: steps::left_inside(way),
        next_repair: way.next_repair(),
        notes: plan.notes,
        score: 0.0,
        why_here: String::new(),
    }
}

/// What stands against a planned hole once its clamp and its strip margin are known.
fn judge(
    plan: &mut Plan,
    way: Way,
    hole: &DamagedHole,
    planning: &Planning,
    strip_margin: Option<f64>,
) {
    // A thread that is as its maker cut it needs no margin beyond its clamp.
    let as_made =
        way == Way::NewPart || (way == Way::ChaseThread && hole.damage == Damage::Scarred);
    let least = if as_made {
        1.0
    } else {
        planning.least_strip_margin
    };
    let too_short = plan.reasons.iter().any(Reason::is_of_length);
    if let Some(margin) = strip_margin.filter(|&margin| !too_short && margin < least) {
        plan.reasons.push(Reason::Strips { margin, least });
    }
    if let (Some(clamp), Some(bears_n)) = (plan.clamp, plan.bolt_bears_n) {
        let high_n = clamp.clamp_n.high();
        if high_n > bears_n {
            plan.reasons
                .push(Reason::BoltOverloaded { high_n, bears_n });
        }
    }
    if let (Some(major), None) = (plan.hole_major_mm, hole.boss_mm) {
        plan.notes.push(format!(
            "Measure the wall before drilling: {:.1} mm must be left around {major:.1} mm.",
            least_wall_mm(hole, major),
        ));
    }
}

fn steps_of(way: Way, plan: &Plan, hole: &DamagedHole, torque_nm: Option<f64>) -> Vec<Step> {
    let tap = plan.tap.as_deref().unwrap_or_default();
    let from_mm = hole.thread.geometry().minor_diameter_mm;
    let mut steps = match (way, &plan.drill) {
        (Way::ChaseThread, _) => steps::chase(hole.thread.name()),
        (Way::LongerBolt, _) => steps::longer_bolt(&plan.bolt),
        (Way::WireInsert, _) => steps::insert(
            &insert_hole(&hole.thread),
            from_mm,
            plan.insert_mm.unwrap_or(plan.engaged_mm),
        ),
        (Way::SolidBushing, Some(drill)) => steps::bushing(drill, from_mm, tap),
        (Way::Oversize, Some(drill)) => steps::oversize(drill, from_mm, tap, plan.other_hole_mm),
        (Way::SolidBushing | Way::Oversize, None) => Vec::new(),
        (Way::NewPart, _) => steps::new_part(),
    };
    steps.extend(steps::ending(hole.depth, torque_nm));
    steps
}

fn working(
    way: Way,
    plan: &Plan,
    hole: &DamagedHole,
    credited: f64,
    thread_bears_n: f64,
    wall: Option<f64>,
) -> Working {
    let mut working = Working::new(format!("{}: {}", hole.thread.name(), way.name())).line(
        Line::new("thread bears", sources::strip_areas())
            .formula("F", "AS·Le·τ, the bolt's thread if that is less")
            .input("AS", shown(plan.shear_mm2_per_mm, 3, "mm² per mm"))
            .input("Le", shown(credited, 2, "mm"))
            .input("τ", shown(hole.parent.shear_mpa, 0, "MPa"))
            .value(shown(thread_bears_n, 0, "N")),
    );
    if let Some(clamp) = plan.clamp {
        let range = clamp.clamp_n;
        working = working
            .line(
                Line::new("torque for the original clamp", sources::motosh())
                    .formula("T", "F·(P/2π + μ·d2/(2·cos 30°) + μ·(dw + dh)/4)")
                    .input("friction", hole.condition.name())
                    .value(shown(clamp.torque_nm, 1, "N·m")),
            )
            .line(
                Line::new("clamp, low to high", sources::vdi_2230_friction())
                    .symbol("F")
                    .value(format!(
                        "{:.0} to {:.0} N, {:.0} N to expect",
                        range.low(),
                        range.high(),
                        range.mid()
                    )),
            )
            .line(
                Line::new("low end against the original low end", Source::derived())
                    .value(trimmed(clamp.ratio, 3)),
            );
    }
    if let (Some(major), Some(left)) = (plan.hole_major_mm, wall) {
        working = working.line(
            Line::new("wall left", Source::derived())
                .formula("w", "(boss − hole)/2")
                .input("hole", shown(major, 2, "mm"))
                .value(shown(left, 2, "mm"))
                .note(format!(
                    "at least {:.1} mm are asked for",
                    least_wall_mm(hole, major)
                )),
        );
    }
    working.limit("Sound metal, no crack, even load over the turns.")
}
