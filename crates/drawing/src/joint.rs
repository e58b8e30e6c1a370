//! A joint cut along its axis: hole, thread, bolt and the part it holds, to scale.

mod measures;
mod pieces;
mod sheet;

use crate::phrases as say;
use crate::{Dash, Drawing, Ink, Mark, Pen, Point};
use measures::{LINE, across, sides};
use sheet::Sheet;

/// A joint in section. Depths grow from the joint face down, in millimetres; what lies above
/// the face has negative ones. Everything is symmetrical about the axis.
#[derive(Debug, Clone, Default, PartialEq)]
pub struct Joint {
    pub title: String,
    /// Written beside the head.
    pub bolt: String,
    /// Whether the outside of the metal was measured: if not, its sides are left open.
    pub edges_known: bool,
    /// Whether the hole has a bottom.
    pub blind: bool,
    /// Later ones lie over earlier ones.
    pub pieces: Vec<JointPiece>,
    pub measures: Vec<JointMeasure>,
}

/// A ring around the axis, by its depths and its diameters.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct JointPiece {
    pub is: JointPart,
    pub top_mm: f64,
    pub bottom_mm: f64,
    pub inner_mm: f64,
    pub outer_mm: f64,
}

/// What a ring is, and so how it is drawn.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum JointPart {
    Parent,
    OtherPart,
    Hole,
    Thread,
    /// Thread that is torn out: a gap.
    LostThread,
    /// A thread or a wire insert that is new.
    NewThread,
    /// A solid bushing.
    Bushing,
    Bolt,
    Head,
}

/// A size between two points of the half section: radius and depth.
#[derive(Debug, Clone, PartialEq)]
pub struct JointMeasure {
    pub label: String,
    /// As it is written, such as `4.7 mm`.
    pub figure: String,
    pub from_mm: (f64, f64),
    pub to_mm: (f64, f64),
}

const LEAST_WIDTH: f64 = 300.0;
const LEAST_HEIGHT: f64 = 200.0;

/// Draws a joint in section, no wider and no higher than said.
///
/// The sizes are to scale with each other. Nothing is drawn of a joint without pieces.
#[must_use]
pub fn joint(joint: &Joint, width_px: f64, height_px: f64) -> Drawing {
    let at_least = |value: f64, least: f64| {
        if value.is_finite() {
            value.max(least)
        } else {
            least
        }
    };
    let width = at_least(width_px, LEAST_WIDTH);
    let height = at_least(height_px, LEAST_HEIGHT);
    let Some(mut sheet) = Sheet::of(joint, width, height) else {
        return Drawing {
            width,
            height: LINE,
            title: joint.title.clone(),
            description: description(joint),
            marks: Vec::new(),
        };
    };
    let mut marks = Vec::new();
    for piece in &joint.pieces {
        pieces::draw(&mut marks, joint, &sheet, piece);
    }
    marks.push(axis(&sheet));
    sides(&mut marks, joint, &mut sheet);
    let under = across(&mut marks, joint, &sheet);
    Drawing {
        width,
        height: sheet.floor_px + under,
        title: joint.title.clone(),
        description: description(joint),
        marks,
    }
}

fn axis(sheet: &Sheet) -> Mark {
    Mark::Line {
        from: Point::new(sheet.axis_x, 0.0),
        to: Point::new(sheet.axis_x, sheet.floor_px),
        pen: Pen::fine(Ink::Ink).dashed(Dash::Centre),
    }
}

fn description(joint: &Joint) -> String {
    let sizes: Vec<String> = joint
        .measures
        .iter()
        .map(|measure| format!("{} {}", measure.label, measure.figure))
        .collect();
    let edges = if joint.edges_known {
        ""
    } else {
        say::metal_not_measured()
    };
    say::section_through_joint(&joint.bolt, sizes.join(", "), edges)
}
