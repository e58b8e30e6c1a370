//! The joint in section, before and after, as sizes to draw: whoever draws it brings the lines.

use crate::clearance::clearance_holes;
use crate::phrases::repair as say;
use crate::repair::{DamagedHole, Depth, RepairOption, Way};
use crate::thread::Thread;

/// A section through a joint: what lies around its axis, from the face down.
///
/// Depths grow into the parent metal from the joint face; the other part lies above, at negative
/// depths. Everything is symmetrical about the axis.
#[derive(Clone, Debug, PartialEq)]
pub struct Section {
    pub title: String,
    /// Outside diameter of the metal; nothing where it was not measured.
    pub boss_mm: Option<f64>,
    /// Whether the hole has a bottom.
    pub blind: bool,
    /// Later rings lie over earlier ones.
    pub rings: Vec<Ring>,
    pub measures: Vec<Measure>,
}

/// A ring around the axis: of metal, of thread, or of nothing.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Ring {
    pub what: RingKind,
    pub top_mm: f64,
    pub bottom_mm: f64,
    pub inner_mm: f64,
    pub outer_mm: f64,
}

/// What a ring is.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum RingKind {
    Parent,
    OtherPart,
    /// The drilled hole.
    Hole,
    /// Thread that carries.
    Thread,
    /// Thread that is torn out.
    LostThread,
    /// Thread that was cut or put in: an insert's, or a larger one.
    NewThread,
    /// A solid bushing, its own thread inside it.
    Bushing,
    Bolt,
    Head,
}

/// A size to write beside the drawing, from one point to another in the half section.
#[derive(Clone, Debug, PartialEq)]
pub struct Measure {
    pub label: String,
    pub value_mm: f64,
    /// Radius and depth.
    pub from_mm: (f64, f64),
    pub to_mm: (f64, f64),
}

/// Height of the other part in the drawing where nobody measured it, in diameters.
const OTHER_PART: f64 = 1.0;
/// Where a ring stands that lies over the hole and under the bolt.
const OVER_HOLE: usize = 2;
/// Where a ring stands that lies over the thread and under the bolt.
const OVER_THREAD: usize = 3;
/// Height of a hexagon head, in diameters.
const HEAD: f64 = 0.65;

/// The joint as it was found.
pub fn before(hole: &DamagedHole) -> Section {
    let mut section = joint(
        say::as_found(hole.thread.name()),
        hole,
        &hole.thread,
        hole.engaged_mm,
        hole.other.hole_mm,
    );
    let lost = hole.lost_mm();
    if lost > 0.0 {
        let minor = hole.thread.geometry().minor_diameter_mm;
        section.rings.insert(
            OVER_THREAD,
            Ring {
                what: RingKind::LostThread,
                top_mm: 0.0,
                bottom_mm: lost,
                inner_mm: minor,
                outer_mm: hole.thread.diameter_mm(),
            },
        );
        section.measures.push(depth(
            say::torn_thread(),
            0.0,
            lost,
            hole.thread.diameter_mm() / 2.0,
        ));
    }
    section
}

/// The joint after a way back.
pub fn after(hole: &DamagedHole, option: &RepairOption) -> Section {
    let thread = &option.bolt_thread;
    let mut section = joint(
        say::thread_and_way(hole.thread.name(), option.way.called(hole.holds)),
        hole,
        thread,
        option.engaged_mm,
        option.other_hole_mm.or(hole.other.hole_mm),
    );
    renewed(&mut section, thread, option);
    if option.way == Way::LongerBolt && hole.lost_mm() > 0.0 {
        section.measures.push(depth(
            say::torn_thread(),
            0.0,
            hole.lost_mm(),
            thread.diameter_mm() / 2.0,
        ));
    }
    if let (Some(boss), Some(major), Some(left)) =
        (hole.boss_mm, option.hole_major_mm, option.wall_left_mm)
    {
        section.measures.push(Measure {
            label: say::wall_left().to_owned(),
            value_mm: left,
            from_mm: (major / 2.0, option.engaged_mm / 2.0),
            to_mm: (boss / 2.0, option.engaged_mm / 2.0),
        });
    }
    section
}

/// What a way has drilled, cut and put in.
fn renewed(section: &mut Section, thread: &Thread, option: &RepairOption) {
    let Some(major_mm) = option.hole_major_mm else {
        return;
    };
    if let Some(drill) = &option.drill {
        for ring in &mut section.rings {
            if ring.what == RingKind::Hole {
                ring.outer_mm = drill.diameter_mm;
            }
        }
    }
    let minor_mm = thread.geometry().minor_diameter_mm;
    let old = section
        .rings
        .iter()
        .position(|ring| ring.what == RingKind::Thread)
        .map(|at| section.rings.remove(at));
    if option.way == Way::BoltAndNut {
        return;
    }
    let Some(insert_mm) = option.insert_mm else {
        let new = old.map(|ring| Ring {
            what: RingKind::NewThread,
            ..ring
        });
        section.rings.splice(OVER_HOLE..OVER_HOLE, new);
        return;
    };
    let wire = option.way == Way::WireInsert;
    // A wire insert is wound in to half a turn below the face.
    let top_mm = if wire { thread.pitch_mm() / 2.0 } else { 0.0 };
    let ring = |what, inner_mm, outer_mm| Ring {
        what,
        top_mm,
        bottom_mm: top_mm + insert_mm,
        inner_mm,
        outer_mm,
    };
    let new = if wire {
        vec![ring(RingKind::NewThread, minor_mm, major_mm)]
    } else {
        let d = thread.diameter_mm();
        vec![
            ring(RingKind::Bushing, d, major_mm),
            ring(RingKind::NewThread, minor_mm, d),
        ]
    };
    section.rings.splice(OVER_HOLE..OVER_HOLE, new);
    let label = if wire { say::insert() } else { say::bushing() };
    section
        .measures
        .push(depth(label, top_mm, top_mm + insert_mm, major_mm / 2.0));
}

fn joint(
    title: String,
    hole: &DamagedHole,
    thread: &Thread,
    engaged_mm: f64,
    other_hole_mm: Option<f64>,
) -> Section {
    let d = thread.diameter_mm();
    let length = hole.depth.mm();
    let listed = || clearance_holes(thread).map(|holes| holes.normal_mm);
    let passage = other_hole_mm.or_else(listed).unwrap_or(1.1 * d);
    let outside = hole.boss_mm.unwrap_or(3.0 * d);
    let other = OTHER_PART * d;
    let ring = |what, top_mm, bottom_mm, inner_mm, outer_mm| Ring {
        what,
        top_mm,
        bottom_mm,
        inner_mm,
        outer_mm,
    };
    let start = hole.lost_mm().min(engaged_mm);
    let end = match hole.depth {
        Depth::Blind { depth_mm } => engaged_mm.min(depth_mm),
        Depth::Through { length_mm } => engaged_mm.min(length_mm),
    };
    let rings = vec![
        ring(RingKind::Parent, 0.0, length, 0.0, outside),
        ring(
            RingKind::Hole,
            0.0,
            length,
            0.0,
            thread.geometry().minor_diameter_mm,
        ),
        ring(
            RingKind::Thread,
            0.0,
            end.max(start),
            thread.geometry().minor_diameter_mm,
            d,
        ),
        ring(
            RingKind::OtherPart,
            -other,
            0.0,
            passage,
            outside.max(2.0 * d),
        ),
        ring(RingKind::Bolt, -other, engaged_mm, 0.0, d),
        ring(RingKind::Head, -other - HEAD * d, -other, 0.0, 1.6 * d),
    ];
    let mut measures = vec![
        depth(say::engaged(), 0.0, engaged_mm, d / 2.0),
        depth(say::hole_depth(), 0.0, length, outside / 2.0),
        Measure {
            label: say::passage().to_owned(),
            value_mm: passage,
            from_mm: (-passage / 2.0, -other / 2.0),
            to_mm: (passage / 2.0, -other / 2.0),
        },
    ];
    if let Depth::Blind { depth_mm } = hole.depth {
        measures.push(depth(say::below_bolt(), engaged_mm, depth_mm, 0.0));
    }
    Section {
        title,
        boss_mm: hole.boss_mm,
        blind: matches!(hole.depth, Depth::Blind { .. }),
        rings,
        measures,
    }
}

fn depth(label: &str, top_mm: f64, bottom_mm: f64, radius_mm: f64) -> Measure {
    Measure {
        label: label.to_owned(),
        value_mm: bottom_mm - top_mm,
        from_mm: (radius_mm, top_mm),
        to_mm: (radius_mm, bottom_mm),
    }
}
