//! The way in and out of a job: how much is off while it goes on, and how much is still to come.

use crate::phrases as say;
use crate::plot::line;
use crate::{
    Anchor, Area, Dash, Drawing, Ink, Mark, Pen, Point, Slope, Stroke, Style, Text, Weight, hatch,
    text_width_px,
};

/// How much was off when, and how much will be.
#[derive(Debug, Clone, Default, PartialEq)]
pub struct WayInAndOut {
    /// Each step that was done: when it was over, and how many things were off then.
    pub done: Vec<(f64, u32)>,
    /// Each step to come, on the same scale.
    pub to_come: Vec<(f64, u32)>,
    /// What the scale counts: `min`, `stages`.
    pub unit: String,
}

const HEIGHT: f64 = 150.0;
const LETTERING: f64 = 15.0;
const LEAST_WIDTH: f64 = 240.0;
/// Above the line that everything has to come back to.
const HEAD: f64 = 14.0;
const FOOT: f64 = 24.0;
/// Room for the dot at either end.
const EDGE: f64 = 8.0;
/// So wide is a strip of the hatch under a slope.
const STRIP: f64 = 12.0;

/// Draws the way: what was done solid over a hatch, what is to come dashed, a dot at now. It begins
/// at the line and has to come back to it.
///
/// ```
/// use drawing::{WayInAndOut, way_in_and_out};
///
/// let way = WayInAndOut {
///     done: vec![(10.0, 3), (25.0, 7)],
///     to_come: vec![(40.0, 2), (60.0, 0)],
///     unit: "min".into(),
/// };
/// let drawn = way_in_and_out(&way, 358.0);
/// assert!(drawn.texts().iter().any(|text| text.text == "7 off"));
/// ```
#[must_use]
pub fn way_in_and_out(way: &WayInAndOut, width_px: f64) -> Drawing {
    let width = match width_px.is_finite() {
        true => width_px.max(LEAST_WIDTH),
        false => LEAST_WIDTH,
    };
    let sound = |steps: &[(f64, u32)]| -> Vec<(f64, u32)> {
        let finite = steps.iter().filter(|(at, _)| at.is_finite() && *at >= 0.0);
        finite.copied().collect()
    };
    let (done, to_come) = (sound(&way.done), sound(&way.to_come));
    let steps = || done.iter().chain(&to_come);
    let end = steps().map(|(at, _)| *at).fold(1.0, f64::max);
    let most = steps().map(|(_, open)| *open).max().unwrap_or(0).max(1);
    let x = |at: f64| EDGE + at / end * (width - 2.0 * EDGE);
    let deep = HEIGHT - HEAD - FOOT;
    let y = |open: u32| HEAD + f64::from(open) / f64::from(most) * deep;
    let mut marks = vec![line(0.0, HEAD, width, HEAD, Pen::fine(Ink::Ink))];
    let now = steps_marks(&done, (0.0, 0), &x, &y, false, &mut marks);
    steps_marks(&to_come, now, &x, &y, true, &mut marks);
    let dot = Point::new(x(now.0), y(now.1));
    marks.push(Mark::Circle {
        centre: dot,
        radius: 6.0,
        style: Style::fill(Ink::Accent),
    });
    let words = say::so_many_off(now.1);
    let wide = text_width_px(&words, LETTERING, Weight::Bold);
    let before = done.iter().rev().nth(1).map_or(0, |(_, open)| *open);
    // Beside the dot, where no line runs: on the way out left below it, on the way back right
    // below it, or left where there is no room.
    let on_the_way_out = now.1 > before;
    let (at, anchor) = if on_the_way_out && dot.x - 10.0 > wide {
        (Point::new(dot.x - 10.0, dot.y + 14.0), Anchor::End)
    } else if dot.x + 12.0 + wide < width {
        (Point::new(dot.x + 12.0, dot.y + 14.0), Anchor::Start)
    } else {
        (Point::new(width, dot.y + 24.0), Anchor::End)
    };
    let at_y = at.y.min(HEIGHT - FOOT);
    marks.push(text(at.x, at_y, &words, anchor, Weight::Bold, Ink::Ink));
    let foot = HEIGHT - 5.0;
    marks.push(text(
        0.0,
        foot,
        "0",
        Anchor::Start,
        Weight::Regular,
        Ink::Soft,
    ));
    let last = format!("{end:.0} {}", way.unit);
    marks.push(text(
        width,
        foot,
        &last,
        Anchor::End,
        Weight::Regular,
        Ink::Soft,
    ));
    let left = end - now.0;
    let to_go = match to_come.is_empty() {
        true => String::new(),
        false => say::to_go(left, &way.unit),
    };
    Drawing {
        width,
        height: HEIGHT,
        title: say::way_in_and_out().to_owned(),
        description: say::off_after(now.1, now.0, &way.unit, to_go),
        marks,
    }
}

/// Steps from where one stands; answers where one stands then.
fn steps_marks(
    steps: &[(f64, u32)],
    from: (f64, u32),
    x: &dyn Fn(f64) -> f64,
    y: &dyn Fn(u32) -> f64,
    to_come: bool,
    marks: &mut Vec<Mark>,
) -> (f64, u32) {
    let pen = match to_come {
        true => Pen::outline(Ink::Ink).dashed(Dash::Dashed),
        false => Pen {
            stroke: Stroke::Wrong,
            ..Pen::outline(Ink::Ink)
        },
    };
    let mut at = from;
    for step in steps {
        let (left, right) = (x(at.0), x(step.0));
        // Within a step things come off one by one: a slope, not a stair.
        marks.push(line(left, y(at.1), right, y(step.1), pen));
        if !to_come {
            let (from, to) = (y(at.1), y(step.1));
            let mut strip = left;
            while strip < right {
                let end = (strip + STRIP).min(right);
                let depth = |x: f64| from + (to - from) * (x - left) / (right - left);
                let area = Area {
                    x: strip,
                    y: HEAD,
                    width: end - strip,
                    height: depth(strip).min(depth(end)) - HEAD,
                };
                if area.height > 1.0 {
                    marks.extend(hatch(area, 6.0, Slope::Rising, Pen::fine(Ink::Soft)));
                }
                strip = end;
            }
        }
        at = *step;
    }
    at
}

fn text(x: f64, y: f64, words: &str, anchor: Anchor, weight: Weight, ink: Ink) -> Mark {
    Mark::Text(Text {
        at: Point::new(x, y),
        text: words.to_owned(),
        size: LETTERING,
        weight,
        anchor,
        ink,
    })
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn nothing_and_nonsense_are_drawn_as_a_line() {
        for way in [
            WayInAndOut::default(),
            WayInAndOut {
                done: vec![(f64::NAN, 4), (-3.0, 2)],
                to_come: vec![(f64::INFINITY, 9)],
                unit: "min".to_owned(),
            },
        ] {
            let drawn = way_in_and_out(&way, f64::NAN);
            assert!(drawn.width.is_finite() && drawn.height.is_finite());
            assert!(
                drawn.description.starts_with("0 off"),
                "{}",
                drawn.description
            );
        }
    }

    #[test]
    fn it_says_how_much_is_off_and_how_long_it_still_takes() {
        let way = WayInAndOut {
            done: vec![(10.0, 3), (25.0, 7)],
            to_come: vec![(40.0, 2), (61.0, 0)],
            unit: "min".to_owned(),
        };
        let drawn = way_in_and_out(&way, 430.0);
        assert_eq!(drawn.description, "7 off after 25 min, 36 min to go");
    }
}
