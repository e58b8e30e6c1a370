//! Figures with their spread, one beneath the other on one scale.

use crate::plot::line;
use crate::text::ellipsis;
use crate::{Anchor, Dash, Drawing, Ink, Mark, Pen, Point, Style, Text, Weight, text_width_px};

/// Figures on one scale.
#[derive(Debug, Clone, Default, PartialEq)]
pub struct Spreads {
    /// What the drawing is called.
    pub title: String,
    /// What the scale tells, with its unit.
    pub scale: String,
    /// A value that the others are held against, and its name.
    pub mark: Option<(f64, String)>,
    /// The figures.
    pub rows: Vec<SpreadRow>,
}

/// One figure: its middle and where most lie.
#[derive(Debug, Clone, Default, PartialEq)]
pub struct SpreadRow {
    /// What it is of.
    pub name: String,
    /// The same in a few words, at the right.
    pub words: String,
    /// The lower end of its spread, its middle, the upper end.
    pub values: (f64, f64, f64),
}

const LETTERING: f64 = 16.0;
const ROW: f64 = 52.0;
const HEAD: f64 = 28.0;
const FOOT: f64 = 26.0;
const LEAST_WIDTH: f64 = 240.0;
const EDGE: f64 = 8.0;

/// Draws each figure as a dot on the line of its spread, its name above it.
///
/// ```
/// use drawing::{SpreadRow, Spreads, spreads};
///
/// let row = SpreadRow { name: "Hoses off".into(), words: "1.2".into(), values: (0.9, 1.2, 1.8) };
/// let drawn = spreads(&Spreads { rows: vec![row], ..Spreads::default() }, 358.0);
/// assert!(drawn.texts().iter().any(|text| text.text == "Hoses off"));
/// ```
#[must_use]
pub fn spreads(spreads: &Spreads, width_px: f64) -> Drawing {
    let width = match width_px.is_finite() {
        true => width_px.max(LEAST_WIDTH),
        false => LEAST_WIDTH,
    };
    let is_sound = |row: &&SpreadRow| {
        let (low, middle, high) = row.values;
        low.is_finite() && middle.is_finite() && high.is_finite()
    };
    let rows: Vec<&SpreadRow> = spreads.rows.iter().filter(is_sound).collect();
    let mark = spreads.mark.as_ref().filter(|(at, _)| at.is_finite());
    let most = rows
        .iter()
        .map(|row| row.values.2.max(row.values.1))
        .chain(mark.map(|(at, _)| *at))
        .fold(0.0, f64::max);
    let most = if most > 0.0 { most } else { 1.0 };
    let x = |value: f64| EDGE + (value / most).clamp(0.0, 1.0) * (width - 2.0 * EDGE);
    let many = f64::from(u32::try_from(rows.len()).unwrap_or(u32::MAX));
    let height = HEAD + many * ROW + FOOT;
    let mut marks = Vec::new();
    if let Some((at, name)) = mark {
        let half = text_width_px(name, LETTERING, Weight::Bold) / 2.0;
        let middle = x(*at).clamp(half, (width - half).max(half));
        marks.push(text(middle, HEAD - 8.0, name, Anchor::Middle, Weight::Bold));
    }
    let mut top = HEAD;
    for row in rows {
        if let Some((at, _)) = mark {
            let pen = Pen::outline(Ink::Soft).dashed(Dash::Dashed);
            marks.push(line(x(*at), top + 25.0, x(*at), top + 47.0, pen));
        }
        row_marks(row, (top, width), &x, &mut marks);
        top += ROW;
    }
    let foot = height - 6.0;
    marks.push(text(0.0, foot, "0", Anchor::Start, Weight::Regular));
    let end = format!("{most:.1}").replace(".0", "");
    let scale = format!("{end} {}", spreads.scale);
    let scale = ellipsis(&scale, LETTERING, Weight::Regular, width - 24.0);
    marks.push(text(width, foot, &scale, Anchor::End, Weight::Regular));
    Drawing {
        width,
        height,
        title: spreads.title.clone(),
        description: described(spreads),
        marks,
    }
}

fn row_marks(
    row: &SpreadRow,
    (top, width): (f64, f64),
    x: &dyn Fn(f64) -> f64,
    marks: &mut Vec<Mark>,
) {
    let words = ellipsis(&row.words, LETTERING, Weight::Regular, width / 2.0);
    let taken = text_width_px(&words, LETTERING, Weight::Regular);
    let name = ellipsis(&row.name, LETTERING, Weight::Bold, width - taken - 16.0);
    let above = top + 18.0;
    marks.push(text(0.0, above, &name, Anchor::Start, Weight::Bold));
    marks.push(text(width, above, &words, Anchor::End, Weight::Regular));
    let (low, middle, high) = row.values;
    let at = top + 36.0;
    marks.push(line(x(low), at, x(high), at, Pen::outline(Ink::Ink)));
    for end in [low, high] {
        marks.push(line(
            x(end),
            at - 5.0,
            x(end),
            at + 5.0,
            Pen::outline(Ink::Ink),
        ));
    }
    marks.push(Mark::Circle {
        centre: Point::new(x(middle), at),
        radius: 6.0,
        style: Style::fill(Ink::Ink),
    });
}

fn described(spreads: &Spreads) -> String {
    let each: Vec<String> = spreads
        .rows
        .iter()
        .map(|row| format!("{}: {}", row.name, row.words))
        .collect();
    each.join("; ")
}

fn text(x: f64, y: f64, words: &str, anchor: Anchor, weight: Weight) -> Mark {
    Mark::Text(Text {
        at: Point::new(x, y),
        text: words.to_owned(),
        size: LETTERING,
        weight,
        anchor,
        ink: Ink::Ink,
    })
}

#[cfg(test)]
mod tests {
    use super::*;
    use proptest::prelude::*;

    fn row(values: (f64, f64, f64)) -> SpreadRow {
        SpreadRow {
            name: "front left wheel nuts of a long name".to_owned(),
            words: "0.9 to 1.8 × book".to_owned(),
            values,
        }
    }

    proptest! {
        #[test]
        fn any_figures_stay_within_the_paper_and_no_words_lie_on_others(
            all in proptest::collection::vec((0.0..9.0_f64, 0.0..9.0_f64, 0.0..99.0_f64), 0..6),
            mark in proptest::option::of(0.0..99.0_f64),
            width in 100.0..1400.0_f64,
        ) {
            let drawn = spreads(&Spreads {
                title: "Time".to_owned(),
                scale: "times the book".to_owned(),
                mark: mark.map(|at| (at, "book".to_owned())),
                rows: all.into_iter().map(row).collect(),
            }, width);
            let texts = drawn.texts();
            for (nth, one) in texts.iter().enumerate() {
                let area = one.area();
                prop_assert!(area.x >= -0.5 && area.right() <= drawn.width + 0.5, "{one:?}");
                prop_assert!(area.y >= 0.0 && area.bottom() <= drawn.height, "{one:?}");
                for other in &texts[nth + 1..] {
                    prop_assert!(!area.overlaps(&other.area()), "{one:?} {other:?}");
                }
            }
        }
    }

    #[test]
    fn what_is_no_number_is_left_out() {
        let drawn = spreads(
            &Spreads {
                rows: vec![row((f64::NAN, 1.0, 2.0))],
                ..Spreads::default()
            },
            358.0,
        );
        assert!(!drawn.texts().iter().any(|text| text.text.contains("nuts")));
    }
}
