//! Where the pieces of a group stand in a picture: by its shape, since nobody measures them.

use fastener::pattern::{Layout, pattern};

/// How a group is drawn.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Shape {
    /// On a circle, numbered clockwise from the top.
    Circle,
    /// In two rows, numbered along the first, then along the second.
    Rows,
    /// Around a rectangle, numbered clockwise from the upper left.
    Rectangle,
}

impl Shape {
    /// The shapes that so many pieces can have.
    #[must_use]
    pub fn of(pieces: usize) -> Vec<Shape> {
        let rectangle = pieces >= 6 && pieces.is_multiple_of(2);
        [
            (pieces >= 2, Shape::Circle),
            (pieces >= 4, Shape::Rows),
            (rectangle, Shape::Rectangle),
        ]
        .into_iter()
        .filter(|(fits, _)| *fits)
        .map(|(_, shape)| shape)
        .collect()
    }
}

/// Where each piece of a group stands, from the first on, in units of the least distance of two
/// of them; x to the right, y downwards, both from nought. Rows are upright and a rectangle is
/// at most three wide, as a phone is held.
///
/// ```
/// use shop::view::{Shape, bolt_places};
/// let five = bolt_places(Shape::Circle, 5);
/// assert_eq!(five.len(), 5);
/// assert!(five.iter().all(|(_, y)| *y >= five[0].1), "the first is at the top");
/// ```
#[must_use]
pub fn bolt_places(shape: Shape, pieces: usize) -> Vec<(f64, f64)> {
    let layout = match shape {
        Shape::Circle => Layout::Circle { bolts: pieces },
        Shape::Rows => Layout::TwoRows {
            columns: pieces.div_ceil(2),
        },
        Shape::Rectangle => Layout::Rectangle {
            columns: 3,
            rows: pieces.saturating_sub(2) / 2,
        },
    };
    let Ok(found) = pattern(layout) else {
        return (0..pieces).map(|nth| (0.0, nth as f64)).collect();
    };
    let mut places: Vec<(f64, f64)> = found
        .places
        .iter()
        .take(pieces)
        .map(|place| match shape {
            Shape::Rows => (place.y, place.x),
            _ => (place.x, place.y),
        })
        .collect();
    let least = |pick: fn(&(f64, f64)) -> f64| places.iter().map(pick).fold(f64::MAX, f64::min);
    let (left, top) = (least(|p| p.0), least(|p| p.1));
    let apart = nearest(&places).max(f64::EPSILON);
    for place in &mut places {
        *place = ((place.0 - left) / apart, (place.1 - top) / apart);
    }
    places
}

/// How the pieces of a group are drawn where they are tightened, and in which sequence.
#[derive(Debug, Clone, PartialEq)]
pub struct Face {
    /// How they stand.
    pub shape: Shape,
    /// Where each piece stands, from the first on.
    pub places: Vec<(f64, f64)>,
    /// The pieces in the sequence of tightening, counted from 1; empty where nobody said one.
    pub sequence: Vec<u16>,
}

/// Words for a sequence across and across, as people and maps write it.
const CROSSWISE: [&str; 5] = ["star", "cross", "diagonal", "stern", "kreuz"];

/// Words for one that goes outward, across or not: nobody knows how those pieces stand.
const OUTWARD: [&str; 5] = ["inside", "middle", "centre", "innen", "mitte"];

/// How so many pieces are drawn: by the words for their sequence, else by their count.
///
/// A star is tightened across and across, so the pieces stand on a circle and the sequence is
/// known; for other words the pieces are drawn without one.
///
/// ```
/// use shop::view::{Shape, face};
/// let wheel = face(5, Some("in a star"));
/// assert_eq!((wheel.shape, wheel.sequence), (Shape::Circle, vec![1, 3, 5, 2, 4]));
/// assert!(face(7, Some("from inside out")).sequence.is_empty());
/// ```
#[must_use]
pub fn face(pieces: usize, words: Option<&str>) -> Face {
    const MOST_ON_A_CIRCLE: usize = 6;
    let words = words.unwrap_or_default().to_lowercase();
    let says = |all: &[&str]| all.iter().any(|word| words.contains(word));
    let star = says(&CROSSWISE) && !says(&OUTWARD);
    let shape = match star || pieces <= MOST_ON_A_CIRCLE {
        true => Shape::Circle,
        false => Shape::Rows,
    };
    let found = pattern(Layout::Circle { bolts: pieces }).ok();
    let sequence = found.filter(|_| star).map(|found| found.sequence);
    let sequence = sequence.into_iter().flatten();
    Face {
        shape,
        places: bolt_places(shape, pieces),
        sequence: sequence.filter_map(|nth| u16::try_from(nth).ok()).collect(),
    }
}

/// The least distance of two.
fn nearest(places: &[(f64, f64)]) -> f64 {
    let pairs = places
        .iter()
        .enumerate()
        .flat_map(|(nth, a)| places[nth + 1..].iter().map(move |b| (a, b)));
    let least = pairs
        .map(|(a, b)| (a.0 - b.0).hypot(a.1 - b.1))
        .fold(f64::MAX, f64::min);
    if least == f64::MAX { 1.0 } else { least }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_star_is_read_in_both_languages_and_nothing_else_is() {
        for words in ["in a star", "crosswise", "Über Kreuz", "sternförmig"] {
            assert_eq!(face(4, Some(words)).sequence, [1, 3, 2, 4], "{words}");
        }
        for words in [None, Some("from inside out, crosswise"), Some("")] {
            assert!(face(4, words).sequence.is_empty(), "{words:?}");
        }
        // A star over many is a circle still; others of that many stand in rows.
        assert_eq!(face(8, Some("in a star")).shape, Shape::Circle);
        assert_eq!(face(8, None).shape, Shape::Rows);
    }

    #[test]
    fn every_group_has_a_place_for_each_piece_and_none_overlap() {
        for pieces in 2..=64 {
            for shape in Shape::of(pieces) {
                let places = bolt_places(shape, pieces);
                assert_eq!(places.len(), pieces, "{shape:?}");
                assert!(nearest(&places) > 0.999, "{shape:?} {pieces}");
                let inside = |(x, y): &(f64, f64)| *x > -1e-9 && *y > -1e-9;
                assert!(places.iter().all(inside), "{shape:?} {pieces}");
            }
        }
        assert_eq!(
            bolt_places(Shape::Circle, 200).len(),
            200,
            "a list at least"
        );
    }
}
