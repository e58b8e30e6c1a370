//! The odds of an amount: how often it covers what a job comes to.

use crate::phrases as say;
use crate::plot::{Frame, LETTERING, Scale, label};
use crate::{Anchor, Drawing, Ink, Mark, Pen, Weight};

/// The odds of a job.
#[derive(Debug, Clone, Default, PartialEq)]
pub struct OddsCurve {
    /// Amounts not exceeded 1, 2, ... 99 times in 100.
    pub amounts: Vec<f64>,
    /// What the amounts are, with their unit, such as `price before tax`.
    pub name: String,
    /// Amounts that are marked, and what each is called.
    pub marked: Vec<(f64, String)>,
    /// The amount that was agreed to.
    pub ceiling: Option<f64>,
}

const LEAST_WIDTH: f64 = 280.0;
const HEIGHT: f64 = 260.0;

/// Draws amounts against how often they cover, the ceiling as a dashed upright.
#[must_use]
pub fn odds_curve(odds: &OddsCurve, width_px: f64) -> Drawing {
    let width = if width_px.is_finite() {
        width_px.max(LEAST_WIDTH)
    } else {
        LEAST_WIDTH
    };
    let amounts: Vec<f64> = odds
        .amounts
        .iter()
        .copied()
        .filter(|amount| amount.is_finite())
        .collect();
    let (Some(first), Some(last)) = (amounts.first(), amounts.last()) else {
        return nothing(width);
    };
    let ceiling = odds.ceiling.filter(|ceiling| ceiling.is_finite());
    let low = ceiling.map_or(*first, |ceiling| first.min(ceiling));
    let high = ceiling.map_or(*last, |ceiling| last.max(ceiling));
    if !(high - low).is_finite() {
        return nothing(width);
    }
    let room = ((high - low) * 0.03).max(high.abs() * 0.001).max(1e-3);
    let (frame, mut marks) = Frame::drawn(
        width,
        HEIGHT,
        Scale {
            low: low - room,
            high: high + room,
            name: &odds.name,
        },
        Scale {
            low: 0.0,
            high: 100.0,
            name: say::times_in_hundred(),
        },
    );
    let points: Vec<(f64, f64)> = amounts.iter().copied().zip((1..).map(f64::from)).collect();
    marks.push(frame.curve(&points, Pen::outline(Ink::Accent)));
    for (amount, _) in odds.marked.iter().filter(|(amount, _)| amount.is_finite()) {
        let under = amounts.iter().filter(|one| *one <= amount).count();
        let chance = u32::try_from(under).unwrap_or(99);
        marks.push(frame.ring(*amount, f64::from(chance), 6.0, Ink::Ink));
    }
    if let Some(ceiling) = ceiling {
        marks.push(frame.upright(ceiling, Ink::Ink));
    }
    Drawing {
        width,
        height: HEIGHT,
        title: say::how_often_it_covers().to_owned(),
        description: description(odds, ceiling),
        marks,
    }
}

fn description(odds: &OddsCurve, ceiling: Option<f64>) -> String {
    let marked: Vec<String> = odds
        .marked
        .iter()
        .map(|(amount, called)| format!("{amount:.0} {called}"))
        .collect();
    let agreed = ceiling.map_or_else(String::new, say::dashed_line_agreed);
    format!("{}.{agreed}", marked.join(", "))
}

fn nothing(width: f64) -> Drawing {
    let words = say::no_odds_yet();
    let mark: Mark = label(0.0, 1.3 * LETTERING, words, Anchor::Start, Weight::Regular);
    Drawing {
        width,
        height: 2.0 * LETTERING,
        title: words.to_owned(),
        description: say::nothing_worked_out().to_owned(),
        marks: vec![mark],
    }
}

#[cfg(test)]
mod tests {
    use super::{OddsCurve, odds_curve};
    use crate::{Mark, svg};

    fn curve() -> OddsCurve {
        OddsCurve {
            amounts: (1..100).map(|at| 500.0 + 5.0 * f64::from(at)).collect(),
            name: "price before tax".to_owned(),
            marked: vec![(950.0, "covers it 9 times in 10".to_owned())],
            ceiling: Some(850.0),
        }
    }

    #[test]
    fn the_curve_rises_and_the_ceiling_stands_on_the_frame() {
        let drawing = odds_curve(&curve(), 358.0);
        let rising = drawing.marks.iter().any(|mark| match mark {
            Mark::Polyline { points, .. } => {
                points.len() == 99 && points.windows(2).all(|pair| pair[0].y > pair[1].y)
            }
            _ => false,
        });
        assert!(rising);
        assert!(drawing.description.contains("950 covers it 9 times in 10"));
        assert!(drawing.description.contains("850 that was agreed"));
        assert!(svg(&drawing).starts_with("<svg "));
    }

    #[test]
    fn nothing_and_nonsense_are_drawn_as_words() {
        for amounts in [Vec::new(), vec![f64::NAN; 5]] {
            let none = OddsCurve { amounts, ..curve() };
            assert_eq!(odds_curve(&none, f64::NAN).title, "No odds yet");
        }
        // All amounts alike still make a frame.
        let same = OddsCurve {
            amounts: vec![700.0; 99],
            ceiling: None,
            ..curve()
        };
        assert!(svg(&odds_curve(&same, 358.0)).contains("price before tax"));
    }
}
