//! Where a joint stands on the paper, and its scale.

use super::measures::{LINE, Side, margin};
use super::{Joint, JointPart, JointPiece};

/// Metal drawn below a blind hole, as a share of the hole's diameter.
pub(super) const BELOW: f64 = 0.7;

/// Where the joint stands on the paper, and its scale.
pub(super) struct Sheet {
    pub(super) width: f64,
    pub(super) axis_x: f64,
    pub(super) face_y: f64,
    pub(super) px_per_mm: f64,
    /// Half the width of the metal, in pixels.
    pub(super) half_px: f64,
    /// Deepest metal that is drawn.
    pub(super) deepest_mm: f64,
    /// Below the metal and the labels beside it.
    pub(super) floor_px: f64,
}

impl Sheet {
    pub(super) fn of(joint: &Joint, width: f64, height: f64) -> Option<Sheet> {
        let sound = |piece: &&JointPiece| {
            [
                piece.top_mm,
                piece.bottom_mm,
                piece.inner_mm,
                piece.outer_mm,
            ]
            .iter()
            .all(|mm| mm.is_finite() && mm.abs() < 1e5)
        };
        let all: Vec<&JointPiece> = joint.pieces.iter().filter(sound).collect();
        let top = all.iter().map(|p| p.top_mm).fold(f64::INFINITY, f64::min);
        let lowest = all.iter().map(|p| p.bottom_mm).fold(0.0, f64::max);
        let outer = all.iter().map(|p| p.outer_mm).fold(0.0, f64::max);
        let hole = all
            .iter()
            .filter(|p| p.is == JointPart::Hole)
            .map(|p| p.outer_mm)
            .fold(0.0, f64::max);
        let deepest_mm = if joint.blind {
            lowest + BELOW * hole
        } else {
            lowest
        };
        if all.len() != joint.pieces.len() || outer <= 0.0 || deepest_mm <= top {
            return None;
        }
        let (left, right) = (margin(joint, Side::Left), margin(joint, Side::Right));
        let across = (width - left - right).max(60.0);
        // A line of lettering for the wall is kept free below.
        let px_per_mm = (across / outer).min((height - 2.0 * LINE - 4.0) / (deepest_mm - top));
        let face_y = 3.0 - top * px_per_mm;
        Some(Sheet {
            width,
            axis_x: left + across / 2.0,
            face_y,
            px_per_mm,
            half_px: outer * px_per_mm / 2.0,
            deepest_mm,
            floor_px: face_y + deepest_mm * px_per_mm + 3.0,
        })
    }

    pub(super) fn y(&self, depth_mm: f64) -> f64 {
        self.face_y + depth_mm * self.px_per_mm
    }

    pub(super) fn x(&self, radius_mm: f64) -> f64 {
        self.axis_x + radius_mm * self.px_per_mm
    }
}
