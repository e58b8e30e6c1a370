//! Marks that are drawn the same way in every drawing.

use crate::{Anchor, Area, Ink, Mark, Pen, Point, Text, Weight};

/// Which way hatching climbs; two parts that touch take one each.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Slope {
    Rising,
    Falling,
}

/// Least distance of hatching, under which 1 px lines run together.
const LEAST_SPACING: f64 = 3.0;
const LETTERING: f64 = 16.0;
/// How far an extension line runs past the dimension line.
const OVERRUN: f64 = 6.0;
/// Half the stroke that ends a dimension line.
const TICK: f64 = 5.0;

/// Hatches a rectangle with lines at 45 degrees that end on its edges.
///
/// The lines of one spacing and slope continue from one area to the next, so
/// that a part made of several rectangles reads as one.
#[must_use]
pub fn hatch(area: Area, spacing_px: f64, slope: Slope, pen: Pen) -> Vec<Mark> {
    let Area {
        x,
        y,
        width,
        height,
    } = area;
    if ![x, y, width, height, spacing_px]
        .iter()
        .all(|n| n.is_finite())
    {
        return Vec::new();
    }
    // A rising line holds x + y = c, a falling one x - y = c.
    let sign = match slope {
        Slope::Rising => 1.0,
        Slope::Falling => -1.0,
    };
    let spacing = spacing_px.max(LEAST_SPACING) * core::f64::consts::SQRT_2;
    let ends = [
        x + sign * y,
        x + width + sign * (y + height),
        x + sign * (y + height),
        x + width + sign * y,
    ];
    let lowest = ends.iter().copied().fold(f64::INFINITY, f64::min);
    let highest = ends.iter().copied().fold(f64::NEG_INFINITY, f64::max);
    let first = libm::ceil(lowest / spacing);
    (0_u32..)
        .map(|nth| (first + f64::from(nth)) * spacing)
        .take_while(|&c| c < highest)
        .filter_map(|c| {
            // Where the line meets the left and right edges, drawn in to the others.
            let x_at = |y: f64| c - sign * y;
            let (one, other) = (x_at(y), x_at(y + height));
            let from_x = one.min(other).max(x);
            let to_x = one.max(other).min(x + width);
            let point = |x: f64| Point {
                x,
                y: sign * (c - x),
            };
            (from_x < to_x).then(|| Mark::Line {
                from: point(from_x),
                to: point(to_x),
                pen,
            })
        })
        .collect()
}

/// A dimension: extension lines, the line between them with an oblique stroke
/// at each end, and the figure beside it.
///
/// It stands `offset_px` to the left of the way from `from` to `to`; a negative
/// offset puts it on the right. Nothing is drawn between two equal points.
#[must_use]
pub fn dimension(from: Point, to: Point, offset_px: f64, figure: &str) -> Vec<Mark> {
    let length = libm::hypot(to.x - from.x, to.y - from.y);
    if !length.is_normal() || !offset_px.is_finite() {
        return Vec::new();
    }
    let along = Point::new((to.x - from.x) / length, (to.y - from.y) / length);
    let side = if offset_px < 0.0 { -1.0 } else { 1.0 };
    let outward = Point::new(along.y * side, -along.x * side);
    let pen = Pen::fine(Ink::Ink);
    let offset = offset_px.abs();
    let ends = [from, to].map(|foot| moved(foot, outward, offset));

    let mut marks = vec![Mark::Line {
        from: ends[0],
        to: ends[1],
        pen,
    }];
    for (foot, end) in [from, to].into_iter().zip(ends) {
        marks.push(Mark::Line {
            from: moved(foot, outward, 2.0),
            to: moved(end, outward, OVERRUN),
            pen,
        });
        let back = moved(moved(end, along, -TICK), outward, -TICK);
        let fore = moved(moved(end, along, TICK), outward, TICK);
        marks.push(Mark::Line {
            from: back,
            to: fore,
            pen: Pen::outline(Ink::Ink),
        });
    }
    let middle = Point::new((ends[0].x + ends[1].x) / 2.0, (ends[0].y + ends[1].y) / 2.0);
    marks.push(Mark::Text(figure_beside(middle, outward, figure)));
    marks
}

/// The figure stays upright: above or below a line that lies, beside one that stands.
fn figure_beside(middle: Point, outward: Point, figure: &str) -> Text {
    let at = moved(middle, outward, 8.0);
    let (anchor, drop) = if outward.x > 0.5 {
        (Anchor::Start, 0.35)
    } else if outward.x < -0.5 {
        (Anchor::End, 0.35)
    } else if outward.y > 0.0 {
        (Anchor::Middle, 0.8)
    } else {
        (Anchor::Middle, 0.0)
    };
    Text {
        at: Point::new(at.x, at.y + drop * LETTERING),
        text: figure.to_owned(),
        size: LETTERING,
        weight: Weight::Regular,
        anchor,
        ink: Ink::Ink,
    }
}

fn moved(point: Point, direction: Point, distance: f64) -> Point {
    Point::new(
        point.x + direction.x * distance,
        point.y + direction.y * distance,
    )
}

#[cfg(test)]
mod tests {
    use proptest::prelude::*;

    use super::*;

    fn lines(marks: &[Mark]) -> Vec<(Point, Point)> {
        marks
            .iter()
            .filter_map(|mark| match mark {
                Mark::Line { from, to, .. } => Some((*from, *to)),
                _ => None,
            })
            .collect()
    }

    proptest! {
        #[test]
        fn hatching_stays_inside_its_rectangle_at_45_degrees(
            (x, y) in (-500.0..500.0_f64, -500.0..500.0_f64),
            (width, height) in (0.0..300.0_f64, 0.0..300.0_f64),
            spacing in 0.0..20.0_f64,
            rising: bool,
        ) {
            let area = Area { x, y, width, height };
            let slope = if rising { Slope::Rising } else { Slope::Falling };
            let drawn = lines(&hatch(area, spacing, slope, Pen::fine(Ink::Ink)));
            for (from, to) in &drawn {
                for end in [from, to] {
                    prop_assert!(x - 1e-6 <= end.x && end.x <= area.right() + 1e-6);
                    prop_assert!(y - 1e-6 <= end.y && end.y <= area.bottom() + 1e-6);
                }
                let climb = if rising { from.y - to.y } else { to.y - from.y };
                prop_assert!((climb - (to.x - from.x)).abs() < 1e-6);
            }
            // As many lines as the spacing puts across the diagonal extent.
            let expected = (width + height) / (spacing.max(LEAST_SPACING) * core::f64::consts::SQRT_2);
            #[allow(clippy::cast_precision_loss)]
            let count = drawn.len() as f64;
            prop_assert!(width < 1e-3 || height < 1e-3 || (count - expected).abs() <= 1.0);
        }
    }

    #[test]
    fn a_dimension_spans_its_two_points() {
        let marks = dimension(Point::new(10.0, 50.0), Point::new(90.0, 50.0), 20.0, "80");
        let (from, to) = lines(&marks)[0];
        assert_eq!((from, to), (Point::new(10.0, 30.0), Point::new(90.0, 30.0)));
        assert!(matches!(marks.last(), Some(Mark::Text(text)) if text.area().bottom() < 30.0));
    }

    #[test]
    fn a_dimension_that_stands_has_its_figure_beside_it() {
        let marks = dimension(Point::new(10.0, 50.0), Point::new(10.0, 90.0), 20.0, "26");
        let (from, _) = lines(&marks)[0];
        assert_eq!(from, Point::new(30.0, 50.0));
        assert!(matches!(marks.last(), Some(Mark::Text(text)) if text.area().x > 30.0));
    }

    #[test]
    fn nothing_comes_of_no_length() {
        let point = Point::new(1.0, 1.0);
        assert!(dimension(point, point, 10.0, "0").is_empty());
        assert!(dimension(point, Point::new(f64::NAN, 0.0), 10.0, "0").is_empty());
        let endless = Area {
            x: 0.0,
            y: 0.0,
            width: f64::INFINITY,
            height: 1.0,
        };
        assert!(hatch(endless, 6.0, Slope::Rising, Pen::fine(Ink::Ink)).is_empty());
    }
}
