//! Bolts of a joint seen from above, each with its turn in the sequence of tightening.

use crate::phrases as say;
use crate::{Anchor, Drawing, Ink, Mark, Pen, Point, Style, Text, Weight};

/// A bolt: where it stands, in any unit, and its turn, counted from 1.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Turn {
    pub x: f64,
    pub y: f64,
    pub turn: usize,
}

const RADIUS: f64 = 20.0;
const LETTERING: f64 = 20.0;
/// Between the edges of neighbours at least.
const APART: f64 = 8.0;

/// Draws bolts with the numbers of their turns, as large as the width allows; the first is
/// filled.
///
/// Bolts that stand too close for the width make the drawing wider.
#[must_use]
pub fn turns(title: &str, bolts: &[Turn], width_px: f64) -> Drawing {
    let sound: Vec<Turn> = bolts
        .iter()
        .copied()
        .filter(|bolt| bolt.x.is_finite() && bolt.y.is_finite())
        .collect();
    let least = |pick: fn(&Turn) -> f64| sound.iter().map(pick).fold(f64::INFINITY, f64::min);
    let most = |pick: fn(&Turn) -> f64| sound.iter().map(pick).fold(f64::NEG_INFINITY, f64::max);
    let (left, top) = (least(|b| b.x), least(|b| b.y));
    let (across, down) = (most(|b| b.x) - left, most(|b| b.y) - top);
    let edge = RADIUS + 2.0;
    let widest = if width_px.is_finite() { width_px } else { 0.0 };
    let nearest = nearest(&sound);
    // Neighbours never touch; otherwise no larger than is needed to tell them apart.
    let floor = (2.0 * RADIUS + APART) / nearest;
    let fit = (widest - 2.0 * edge) / across.max(1e-9);
    let scale = fit.clamp(floor, floor.max(1.8 * floor));
    let mut marks = Vec::new();
    for bolt in &sound {
        let at = Point::new(
            edge + (bolt.x - left) * scale,
            edge + (bolt.y - top) * scale,
        );
        let first = bolt.turn == 1;
        marks.push(Mark::Circle {
            centre: at,
            radius: RADIUS,
            style: Style {
                line: Some(Pen::outline(Ink::Ink)),
                fill: Some(if first { Ink::Ink } else { Ink::Paper }),
            },
        });
        marks.push(Mark::Text(Text {
            at: Point::new(at.x, at.y + 0.35 * LETTERING),
            text: bolt.turn.to_string(),
            size: LETTERING,
            weight: Weight::Bold,
            anchor: Anchor::Middle,
            ink: if first { Ink::Paper } else { Ink::Ink },
        }));
    }
    let extent = |length: f64| {
        if length.is_finite() {
            length * scale
        } else {
            0.0
        }
    };
    Drawing {
        width: extent(across) + 2.0 * edge,
        height: extent(down) + 2.0 * edge,
        title: title.to_owned(),
        description: say::bolts_and_turns(sound.len()),
        marks,
    }
}

/// The least distance between two bolts; 1 where there are no two apart.
fn nearest(bolts: &[Turn]) -> f64 {
    let mut least = f64::INFINITY;
    for (index, one) in bolts.iter().enumerate() {
        for other in bolts.iter().skip(index + 1) {
            let apart = libm::hypot(one.x - other.x, one.y - other.y);
            if apart > 1e-9 {
                least = least.min(apart);
            }
        }
    }
    if least.is_finite() { least } else { 1.0 }
}
