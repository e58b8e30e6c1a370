//! What lies on the sheet and is no bolt: nuts, washers, rings, clips.

use crate::bolt::{SIZES, onto_sheet};
use crate::count::Doubtful;
use crate::find::{Field, Found, cells_of};
use crate::flat::{CELLS_PER_MM, Flat, on_tag, to_mm};
use crate::net::{END, HEAD, OTHER, PAPER, SHANK};
use crate::patch::patches;
use crate::shape::{area, hull};

/// Kinds of piece.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
pub enum Kind {
    /// Bolts and screws.
    Bolt,
    /// Threaded rod without a head.
    Stud,
    /// Nut.
    Nut,
    /// Washer.
    Washer,
    /// O-ring.
    ORing,
    /// Clip of spring wire or sheet.
    SpringClip,
    /// Anything else.
    Other,
}

impl Kind {
    /// What it is called for a program.
    #[must_use]
    pub fn name(self) -> &'static str {
        match self {
            Self::Bolt => "bolt",
            Self::Stud => "stud",
            Self::Nut => "nut",
            Self::Washer => "washer",
            Self::ORing => "o_ring",
            Self::SpringClip => "spring_clip",
            Self::Other => "other",
        }
    }
}

/// Something that is no bolt with a head.
#[derive(Debug, Clone)]
pub struct Thing {
    /// What it is.
    pub kind: Kind,
    /// Middle, as it appears on the sheet.
    pub middle_mm: [f64; 2],
    /// Longer and shorter side of its outline.
    pub sides_mm: [f64; 2],
    /// Direction of the longer side, in degrees.
    pub yaw_deg: f64,
    /// Which of [`SIZES`] it goes with, for nuts and washers.
    pub size: Option<usize>,
    /// Whether it is clear what it is, and that it is one.
    pub sure: bool,
    /// Corners of its outline.
    pub outline_mm: Vec<[f64; 2]>,
}

/// What the bolts leave over.
#[derive(Debug, Default)]
pub struct Rest {
    /// Pieces.
    pub things: Vec<Thing>,
    /// Places where something lies of which it is not clear what it is.
    pub unclear: Vec<[f64; 2]>,
    /// What of all that might be a bolt.
    pub doubtful: Vec<Doubtful>,
    /// Places where something reaches over the sheet's edge.
    pub across: Vec<[f64; 2]>,
}

/// The least area of a piece, in square millimetres.
const LEAST_MM2: f64 = 14.0;
/// What comes so near to the sheet's edge comes from outside.
const NEAR_EDGE_MM: f64 = 2.2;
/// Below this area, in square millimetres, what lies beside a bolt is a rim of it.
const CRUMB_MM2: f64 = 45.0;
/// The largest area of what looks like part of a bolt and still can be something else.
const LARGEST_MM2: f64 = 420.0;

/// Sorts what is neither paper nor one of the bolts.
pub fn rest(flat: &Flat, field: &Field, bolts: &[Found]) -> Rest {
    let mut free: Vec<bool> = field.known.iter().map(|k| k.class[PAPER] < 0.5).collect();
    for (at, free) in free.iter_mut().enumerate() {
        let (x, y) = place(field, at);
        *free &= flat.on_sheet(x, y, 0.5) && flat.seen[at];
    }
    let mut near = vec![false; free.len()];
    for found in bolts {
        let shown = found.outline(field.eye);
        for polygon in shown.head.iter().chain([&shown.shank]) {
            for at in cells_of(polygon, field, 1.2) {
                free[at] = false;
            }
            for at in cells_of(polygon, field, 2.7) {
                near[at] = true;
            }
        }
    }
    // Thin wire breaks into bits: what is nearly joined counts as one.
    let joined = widened(&free, field.width);
    let mut out = Rest::default();
    for patch in patches(&joined, field.width) {
        let cells: Vec<usize> = patch.into_iter().filter(|&at| free[at]).collect();
        let mm2 = cells.len() as f64 / (CELLS_PER_MM * CELLS_PER_MM);
        let beside = beside_a_bolt(&cells, &near);
        if mm2 < LEAST_MM2 || beside > 0.7 || (mm2 < CRUMB_MM2 && beside > 0.33) {
            continue;
        }
        sort_one(flat, field, &cells, &mut out);
    }
    out
}

/// The share of a patch that lies right beside a bolt: a rim that its outline left over.
fn beside_a_bolt(cells: &[usize], near: &[bool]) -> f64 {
    let beside = cells.iter().filter(|&&at| near[at]).count();
    beside as f64 / cells.len().max(1) as f64
}

fn place(field: &Field, at: usize) -> (f64, f64) {
    (
        to_mm((at % field.width) as f64),
        to_mm((at / field.width) as f64),
    )
}

fn widened(marked: &[bool], width: usize) -> Vec<bool> {
    let mut out = marked.to_vec();
    for at in (0..marked.len()).filter(|&at| marked[at]) {
        for next in [
            at.wrapping_sub(1),
            at + 1,
            at.wrapping_sub(width),
            at + width,
        ] {
            if next < out.len() {
                out[next] = true;
            }
        }
    }
    out
}

/// How deep a patch is: how often its rim can be taken off, in cells.
fn depth(cells: &[usize], width: usize) -> usize {
    let columns = cells.iter().map(|at| at % width);
    let rows = cells.iter().map(|at| at / width);
    let (Some(left), Some(right)) = (columns.clone().min(), columns.max()) else {
        return 0;
    };
    let (Some(top), Some(bottom)) = (rows.clone().min(), rows.max()) else {
        return 0;
    };
    let w = right - left + 3;
    let mut marked = vec![false; w * (bottom - top + 3)];
    let mut inside: Vec<usize> = cells
        .iter()
        .map(|at| (at / width - top + 1) * w + at % width - left + 1)
        .collect();
    for &at in &inside {
        marked[at] = true;
    }
    let mut depth = 0;
    while !inside.is_empty() {
        let (kept, rim): (Vec<usize>, Vec<usize>) = inside
            .into_iter()
            .partition(|&at| marked[at - 1] && marked[at + 1] && marked[at - w] && marked[at + w]);
        for at in rim {
            marked[at] = false;
        }
        inside = kept;
        depth += 1;
    }
    depth
}

fn sort_one(flat: &Flat, field: &Field, cells: &[usize], out: &mut Rest) {
    let mm2 = cells.len() as f64 / (CELLS_PER_MM * CELLS_PER_MM);
    let n = cells.len() as f64;
    let mut middle = [0.0, 0.0];
    let mut class = [0.0_f64; 5];
    let (mut at_edge, mut at_tag) = (0, 0);
    for &at in cells {
        let (x, y) = place(field, at);
        middle[0] += x / n;
        middle[1] += y / n;
        for (sum, share) in class.iter_mut().zip(field.known[at].class) {
            *sum += f64::from(share) / n;
        }
        at_edge += usize::from(!flat.on_sheet(x, y, NEAR_EDGE_MM));
        at_tag += usize::from(on_tag(flat.sheet_mm, x, y, 0.5));
    }
    if at_tag * 2 > cells.len() {
        return;
    }
    // More of the edge than a stain would take: it comes from outside.
    if at_edge as f64 >= 2.0 * CELLS_PER_MM {
        out.across.push(middle);
        return;
    }
    let bolt_like = class[HEAD] + class[SHANK] + class[END];
    let thing = thing(field, cells, middle, class[OTHER]);
    let depth = depth(cells, field.width);
    let thin = depth <= 3 && thing.sides_mm[1] < 5.0;
    let line = depth <= 4 && thing.sides_mm[1] < 4.6 && mm2 < 60.0;
    // Thinner than the thinnest shank: a shadow's edge.
    if thin || (line && class[OTHER] < 0.5) {
        return;
    }
    out.doubtful.push(Doubtful {
        middle_mm: middle,
        bolt_chance: bolt_chance(&thing, mm2, bolt_like / (1.0 - class[PAPER]).max(0.1)),
        long_mm: thing.sides_mm[0],
        mm2,
    });
    // Longer than a nut, or larger than a washer, and not of a kind that looks so.
    let long = thing.sides_mm[0] > 1.9 * thing.sides_mm[1] && thing.sides_mm[0] > 14.0;
    let clip = thing.kind == Kind::SpringClip && class[OTHER] > 0.3;
    if bolt_like > class[OTHER] && !clip && (long || mm2 > LARGEST_MM2) {
        out.unclear.push(middle);
    }
    out.things.push(thing);
}

/// How likely a thing is a bolt that was not made out: by its shape, and by what share of it looks
/// like one.
fn bolt_chance(thing: &Thing, mm2: f64, looks_so: f64) -> f64 {
    let compact = thing.sides_mm[0] < COMPACT * thing.sides_mm[1] && thing.sides_mm[0] < 26.0;
    // A bolt fills most of its hull; wire that is bent does not.
    let hollow = mm2 < HOLLOW * area(&thing.outline_mm).max(1.0);
    match thing.kind {
        Kind::Washer | Kind::ORing => 0.02,
        _ if looks_so < 0.4 => 0.03,
        _ if looks_so < LOOKS_LIKE_A_BOLT => 0.1,
        _ if hollow => 0.15,
        _ if compact => 0.35,
        _ => looks_so,
    }
}

/// The share of a bolt that looks like one at least, rather than like a clip.
const LOOKS_LIKE_A_BOLT: f64 = 0.78;
/// No longer than this for its width: a nut or a push clip rather than a bolt.
const COMPACT: f64 = 1.28;
/// The share of its hull that bent wire fills at most.
const HOLLOW: f64 = 0.7;

/// Middle, sides and direction of the smallest rectangle round a hull.
fn rectangle(hull: &[[f64; 2]]) -> ([f64; 2], [f64; 2], f64) {
    let mut best = ([0.0; 2], [f64::MAX, 1.0], 0.0);
    for i in 0..180 {
        let turn = f64::from(i) * std::f64::consts::PI / 180.0;
        let (c, s) = (libm::cos(turn), libm::sin(turn));
        let (mut low, mut high) = ([f64::MAX; 2], [f64::MIN; 2]);
        for p in hull {
            let q = [p[0] * c + p[1] * s, p[1] * c - p[0] * s];
            for k in 0..2 {
                low[k] = low[k].min(q[k]);
                high[k] = high[k].max(q[k]);
            }
        }
        let sides = [high[0] - low[0], high[1] - low[1]];
        if sides[0] >= sides[1] && sides[0] * sides[1] < best.1[0] * best.1[1] {
            let m = [(low[0] + high[0]) / 2.0, (low[1] + high[1]) / 2.0];
            best = (
                [m[0] * c - m[1] * s, m[0] * s + m[1] * c],
                sides,
                turn.to_degrees(),
            );
        }
    }
    best
}

/// Area of the holes of a patch, in square millimetres.
fn holes(field: &Field, cells: &[usize]) -> f64 {
    let columns = cells.iter().map(|at| at % field.width);
    let rows = cells.iter().map(|at| at / field.width);
    let (Some(left), Some(right)) = (columns.clone().min(), columns.max()) else {
        return 0.0;
    };
    let (Some(top), Some(bottom)) = (rows.clone().min(), rows.max()) else {
        return 0.0;
    };
    let (w, h) = (right - left + 3, bottom - top + 3);
    let mut empty = vec![true; w * h];
    for at in cells {
        empty[(at / field.width - top + 1) * w + at % field.width - left + 1] = false;
    }
    patches(&empty, w)
        .into_iter()
        .filter(|patch| !patch.contains(&0))
        .map(|patch| patch.len() as f64)
        .filter(|&n| n > 4.0)
        .sum::<f64>()
        / (CELLS_PER_MM * CELLS_PER_MM)
}

fn thing(field: &Field, cells: &[usize], middle: [f64; 2], share: f64) -> Thing {
    let half = 0.5 / CELLS_PER_MM;
    let corners: Vec<[f64; 2]> = cells
        .iter()
        .flat_map(|&at| {
            let (x, y) = place(field, at);
            [[x - half, y], [x + half, y], [x, y - half], [x, y + half]]
        })
        .collect();
    let outline = hull(&corners);
    let mm2 = cells.len() as f64 / (CELLS_PER_MM * CELLS_PER_MM);
    let hole = holes(field, cells);
    let around = area(&outline).max(1.0);
    let (centre, sides, yaw_deg) = rectangle(&outline);
    let round = sides[0] / sides[1].max(0.1);
    let solid = (mm2 + hole) / around;
    let hollow = hole / (mm2 + hole);
    let kind = if round < 1.3 && solid > 0.88 && hollow > 0.1 {
        if hollow < 0.33 {
            Kind::Washer
        } else {
            Kind::ORing
        }
    } else if mm2 / around < 0.62 {
        Kind::SpringClip
    } else if solid > 0.9 && (round < 1.28 || (1.4..2.3).contains(&round)) && sides[0] < 24.0 {
        Kind::Nut
    } else {
        Kind::Other
    };
    let (sides, size) = sized(kind, field.eye, centre, sides);
    Thing {
        kind,
        middle_mm: middle,
        sides_mm: sides,
        yaw_deg,
        size,
        sure: share > 0.7 && around < 900.0 && (solid > 0.8 || kind == Kind::SpringClip),
        outline_mm: outline,
    }
}

/// Takes the height of what has one into account, and says which size it goes with.
fn sized(
    kind: Kind,
    eye: [f64; 3],
    middle: [f64; 2],
    sides: [f64; 2],
) -> ([f64; 2], Option<usize>) {
    let nearest = |value: f64, of: &dyn Fn(usize) -> f64| {
        (0..SIZES.len()).min_by(|&a, &b| (of(a) - value).abs().total_cmp(&(of(b) - value).abs()))
    };
    match kind {
        Kind::Washer => {
            let size = nearest(sides[1], &|i| SIZES[i].washer);
            (sides, size)
        }
        Kind::Nut => {
            // A nut's top is nearer to the camera by about four fifths of its thread.
            let size = nearest(sides[1], &|i| {
                let across = SIZES[i].nut_flats();
                let edge = [middle[0] + across / 2.0, middle[1], SIZES[i].thread * 0.8];
                let seen = onto_sheet(eye, edge);
                let centre = onto_sheet(eye, [middle[0], middle[1], SIZES[i].thread * 0.8]);
                let away = libm::hypot(middle[0] - eye[0], middle[1] - eye[1]);
                let lean = away / eye[2] * SIZES[i].thread * 0.4;
                2.0 * (seen[0] - centre[0]) + lean * 0.5
            });
            (sides, size)
        }
        _ => (sides, None),
    }
}
