//! Each way back, with what it needs and whether it holds.

use super::clamp::Original;
use super::estimate::Planning;
use super::hole::Depth;
use super::hole::{Damage, DamagedHole};
use super::insert::insert_hole;
use super::plan::{self, Plan, centre_tolerance_mm, least_wall_mm, wall_left_mm};
use super::reason::Reason;
use super::special;
use super::steps::{self, Step};
use crate::drill::Drill;
use crate::figures::{shown, trimmed};
use crate::holds::Holds;
use crate::parent::Family;
use crate::phrases::{repair as say, torque};
use crate::sources;
use crate::strip::{credited_mm, shear_areas};
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
    /// A through hole: a bolt with a nut behind.
    BoltAndNut,
    /// A threaded sleeve for a spark plug or a sensor.
    PlugBushing,
    OversizePlug,
    WeldedBung,
    NextPipeSize,
    /// Where people are hurt if it lets go.
    MakersPart,
    /// The same, by the maker's own repair.
    MakersRepair,
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
    /// Nothing where no strength is known, or the thread carries no clamp.
    pub thread_bears_n: Option<f64>,
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
    pub const ALL: [Way; 13] = [
        Way::ChaseThread,
        Way::LongerBolt,
        Way::WireInsert,
        Way::SolidBushing,
        Way::Oversize,
        Way::BoltAndNut,
        Way::PlugBushing,
        Way::OversizePlug,
        Way::WeldedBung,
        Way::NextPipeSize,
        Way::MakersPart,
        Way::MakersRepair,
        Way::NewPart,
    ];

    /// The ways that are open to what a hole's joint holds, the least invasive first.
    pub fn open_to(hole: &DamagedHole) -> Vec<Way> {
        let ways: &[Way] = match hole.holds {
            Some(holds) if holds.hurts() => &[Way::MakersPart, Way::MakersRepair],
            Some(Holds::SparkPlug) => &[Way::ChaseThread, Way::PlugBushing, Way::NewPart],
            Some(Holds::SensorBung) => &[
                Way::ChaseThread,
                Way::PlugBushing,
                Way::WeldedBung,
                Way::NewPart,
            ],
            Some(Holds::DrainPlug) => &[
                Way::ChaseThread,
                Way::WireInsert,
                Way::OversizePlug,
                Way::NewPart,
            ],
            // The eye does not pass a larger bolt.
            Some(Holds::Banjo) => &[Way::ChaseThread, Way::WireInsert, Way::NewPart],
            Some(Holds::PipeThread) => &[Way::ChaseThread, Way::NextPipeSize, Way::NewPart],
            _ => &[
                Way::ChaseThread,
                Way::LongerBolt,
                Way::WireInsert,
                Way::SolidBushing,
                Way::Oversize,
                Way::BoltAndNut,
                Way::NewPart,
            ],
        };
        let blind = matches!(hole.depth, Depth::Blind { .. });
        let open = |way: &Way| !(blind && *way == Way::BoltAndNut);
        ways.iter().copied().filter(open).collect()
    }

    /// In words, by what the joint holds.
    pub fn called(self, holds: Option<Holds>) -> &'static str {
        match (self, holds) {
            (Way::NewPart, Some(Holds::SparkPlug)) => say::new_cylinder_head(),
            (Way::NewPart, Some(Holds::DrainPlug)) => say::new_pan(),
            (
                Way::NewPart,
                Some(Holds::Exhaust | Holds::SensorBung | Holds::PipeThread | Holds::Banjo),
            ) => say::new_part(),
            (Way::WireInsert, Some(Holds::DrainPlug)) => say::short_insert(),
            (Way::PlugBushing, Some(Holds::SensorBung)) => say::bushing_for_a_sensor(),
            _ => self.name(),
        }
    }

    /// In words.
    pub fn name(self) -> &'static str {
        match self {
            Way::ChaseThread => say::chase_the_thread(),
            Way::LongerBolt => say::longer_bolt_into_sound_thread(),
            Way::WireInsert => say::wire_insert(),
            Way::SolidBushing => say::solid_bushing(),
            Way::Oversize => say::oversize_thread(),
            Way::BoltAndNut => say::bolt_and_nut_through_the_hole(),
            Way::PlugBushing => say::bushing_for_a_spark_plug(),
            Way::OversizePlug => say::oversize_plug(),
            Way::WeldedBung => say::new_bung_welded_in(),
            Way::NextPipeSize => say::next_larger_pipe_thread(),
            Way::MakersPart => say::the_makers_part(),
            Way::MakersRepair => say::repair_the_maker_approves(),
            Way::NewPart => say::new_housing(),
        }
    }

    /// How much stays as it was and is left for the next repair, from 0 to 1.
    pub fn reversibility(self) -> f64 {
        match self {
            Way::ChaseThread | Way::NewPart | Way::MakersPart => 1.0,
            Way::BoltAndNut => 0.7,
            Way::MakersRepair => 0.8,
            Way::WireInsert => 0.8,
            Way::LongerBolt => 0.75,
            Way::SolidBushing | Way::PlugBushing => 0.65,
            Way::WeldedBung => 0.6,
            Way::Oversize | Way::OversizePlug | Way::NextPipeSize => 0.3,
        }
    }

    /// Whether it cuts metal.
    fn cuts(self) -> bool {
        !matches!(
            self,
            Way::LongerBolt | Way::NewPart | Way::MakersPart | Way::MakersRepair
        )
    }

    fn next_repair(self) -> &'static str {
        match self {
            Way::ChaseThread => say::every_other_way_is_open(),
            Way::LongerBolt => say::insert_of_same_size_is_open(),
            Way::WireInsert => say::insert_can_be_changed(),
            Way::SolidBushing | Way::PlugBushing => say::only_larger_bushing_or_new_part(),
            Way::BoltAndNut => say::another_bolt_and_nut(),
            Way::OversizePlug => say::bushing_where_the_wall_allows(),
            Way::WeldedBung => say::another_bung(),
            Way::NextPipeSize => say::only_a_new_part(),
            Way::MakersRepair => say::what_the_maker_says(),
            Way::Oversize => say::insert_of_the_larger_size(),
            Way::NewPart | Way::MakersPart => say::as_it_left_the_maker(),
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
        Way::NewPart | Way::MakersPart => plan::same_hole(hole, original, hole.engaged_mm),
        Way::BoltAndNut => special::bolt_and_nut(hole, original),
        Way::PlugBushing | Way::OversizePlug | Way::WeldedBung | Way::NextPipeSize => {
            special::by_its_kit(way, hole, original)
        }
        Way::MakersRepair => special::makers_repair(hole, original),
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
    let bears = Bears::of(&plan, hole, credited);
    let thread_bears_n = bears.least_n();
    let clamp_n = plan.clamp.map(|clamp| clamp.clamp_n);
    let load_n = clamp_n
        .map(Range::high)
        .or_else(|| original.load_n(hole))
        .filter(|_| way != Way::MakersRepair);
    let strip_margin = load_n.zip(thread_bears_n).map(|(load, bears)| bears / load);
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
        working: working(way, &plan, hole, &bears, wall, load_n),
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
    let as_made = matches!(way, Way::NewPart | Way::MakersPart | Way::BoltAndNut)
        || (way == Way::ChaseThread && hole.damage == Damage::Scarred);
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
        plan.notes
            .push(say::measure_the_wall(least_wall_mm(hole, major), major));
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
        (way, _) => special::steps(way, hole, plan),
    };
    if hole.parent.family == Family::Magnesium && way.cuts() {
        steps.insert(0, steps::magnesium());
    }
    if way == Way::MakersRepair {
        // The torque stands in that repair.
        return steps;
    }
    let torque_nm = torque_nm.or(hole.torque_nm.filter(|_| !hole.clamps()));
    steps.extend(steps::ending(hole.depth, torque_nm));
    steps
}

/// What each thread of a joint bears; nothing where no strength is known.
struct Bears {
    credited_mm: f64,
    parent_n: Option<f64>,
    bolt_n: Option<f64>,
}

impl Bears {
    fn of(plan: &Plan, hole: &DamagedHole, credited_mm: f64) -> Bears {
        let parent_n = match plan.nut_n {
            Some(nut_n) => nut_n,
            None => (hole.clamps() && hole.parent.shear_mpa > 0.0)
                .then_some(plan.shear_mm2_per_mm * credited_mm * hole.parent.shear_mpa),
        };
        Bears {
            credited_mm,
            parent_n,
            bolt_n: plan.bolt_thread_n.filter(|_| hole.clamps()),
        }
    }

    fn least_n(&self) -> Option<f64> {
        let parent_n = self.parent_n?;
        Some(self.bolt_n.map_or(parent_n, |bolt| bolt.min(parent_n)))
    }
}

fn working(
    way: Way,
    plan: &Plan,
    hole: &DamagedHole,
    bears: &Bears,
    wall: Option<f64>,
    load_n: Option<f64>,
) -> Working {
    let title = say::thread_and_way(hole.thread.name(), way.called(hole.holds));
    let mut working = Working::new(title);
    for line in strip_lines(plan, hole, bears, load_n) {
        working = working.line(line);
    }
    if let Some(clamp) = plan.clamp {
        let range = clamp.clamp_n;
        working = working
            .line(
                Line::new(say::torque_for_the_original_clamp(), sources::motosh())
                    .formula("T", "F·(P/2π + μ·d2/(2·cos 30°) + μ·(dw + dh)/4)")
                    .input(say::friction(), hole.condition.name())
                    .value(shown(clamp.torque_nm, 1, "N·m")),
            )
            .line(
                Line::new(say::clamp_low_to_high(), sources::vdi_2230_friction())
                    .symbol("F")
                    .value(say::clamp_of(range.low(), range.high(), range.mid())),
            )
            .line(
                Line::new(say::low_end_against_original(), Source::derived())
                    .value(trimmed(clamp.ratio, 3)),
            );
    }
    if let (Some(major), Some(left)) = (plan.hole_major_mm, wall) {
        working = working.line(
            Line::new(say::wall_left(), Source::derived())
                .formula("w", say::wall_formula())
                .input(say::hole(), shown(major, 2, "mm"))
                .value(shown(left, 2, "mm"))
                .note(say::at_least_asked_for(least_wall_mm(hole, major))),
        );
    }
    working.limit(say::sound_metal_no_crack())
}

/// How the strip margin was found: every factor is printed so finely that what is printed
/// multiplies to what is printed.
fn strip_lines(plan: &Plan, hole: &DamagedHole, bears: &Bears, load_n: Option<f64>) -> Vec<Line> {
    let mut lines = Vec::new();
    let Some(least_n) = bears.least_n() else {
        return lines;
    };
    if let (Some(parent_n), None) = (bears.parent_n, plan.nut_n) {
        lines.push(
            Line::new(say::thread_in_the_part_bears(), sources::strip_areas())
                .formula("F", "AS·Le·τ")
                .input("AS", shown(plan.shear_mm2_per_mm, 6, torque::mm2_per_mm()))
                .input("Le", shown(bears.credited_mm, 4, "mm"))
                .input("τ", shown(hole.parent.shear_mpa, 1, "MPa"))
                .value(shown(parent_n, 0, "N")),
        );
    }
    if let Some(nut_n) = plan.nut_n.flatten() {
        lines.push(
            Line::new(say::bolt_with_a_nut_bears(), sources::iso_898_1())
                .note(say::nut_bears_as_much())
                .value(shown(nut_n, 0, "N")),
        );
    }
    if let Some(bolt_n) = bears.bolt_n {
        lines.push(
            Line::new(say::bolts_own_thread_bears(), sources::strip_areas())
                .formula("F", "ASs·Le·τ")
                .input(
                    "ASs",
                    shown(
                        shear_areas(&plan.bolt_thread).bolt_mm2_per_mm,
                        6,
                        torque::mm2_per_mm(),
                    ),
                )
                .input("Le", shown(plan.engaged_mm, 4, "mm"))
                .input(say::shear_of_its_tensile(), bolt_shear(plan, hole))
                .value(shown(bolt_n, 0, "N")),
        );
    }
    if let Some(load_n) = load_n {
        lines.push(
            Line::new(say::strip_margin(), Source::derived())
                .formula("S", say::least_load_over_greatest_clamp())
                .input(say::bears(), shown(least_n, 0, "N"))
                .input(say::clamp(), shown(load_n, 0, "N"))
                .value(trimmed(least_n / load_n, 3)),
        );
    }
    lines
}

fn bolt_shear(plan: &Plan, hole: &DamagedHole) -> String {
    let stresses = hole
        .class
        .and_then(|class| class.stresses(&plan.bolt_thread).ok());
    stresses.map_or_else(
        || say::not_known().to_owned(),
        |stresses| shown(0.6 * stresses.tensile_mpa, 3, "MPa"),
    )
}
