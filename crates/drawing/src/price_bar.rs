//! A price as a bar against what was agreed.

use crate::phrases as say;
use crate::plot::line;
use crate::{
    Anchor, Area, Drawing, Ink, Mark, Pen, Point, Slope, Stroke, Style, Text, Weight, hatch,
    text_width_px,
};

/// What a price is made of.
#[derive(Debug, Clone, Default, PartialEq)]
pub struct PriceBar {
    pub labour: f64,
    pub parts: f64,
    /// Work sent out, tests, supplies.
    pub other: f64,
    /// The part of it that nobody agreed to, at its end.
    pub unagreed: f64,
    /// The limit that was agreed.
    pub agreed: Option<f64>,
}

const HEIGHT: f64 = 92.0;
const LETTERING: f64 = 15.0;
const LEAST_WIDTH: f64 = 240.0;

/// Draws a price: labour filled, other work grey, parts outlined, what nobody agreed to hatched;
/// the limit as an upright that stands out of it.
#[must_use]
pub fn price_bar(price: &PriceBar, width_px: f64) -> Drawing {
    let width = if width_px.is_finite() {
        width_px.max(LEAST_WIDTH)
    } else {
        LEAST_WIDTH
    };
    let sound = |amount: f64| {
        if amount.is_finite() {
            // Nothing added up is nought below nought.
            amount.max(0.0) + 0.0
        } else {
            0.0
        }
    };
    let filled = |ink| (Style::fill(ink), Ink::Paper);
    let outlined = Style {
        line: Some(Pen::outline(Ink::Ink)),
        fill: Some(Ink::Paper),
    };
    type Named = fn(String) -> String;
    let parts: [(Named, f64, (Style, Ink)); 3] = [
        (say::labour, sound(price.labour), filled(Ink::Ink)),
        (say::other, sound(price.other), filled(Ink::Soft)),
        (say::parts, sound(price.parts), (outlined, Ink::Ink)),
    ];
    let total: f64 = parts.iter().map(|(_, amount, _)| amount).sum();
    let agreed = price.agreed.map(sound);
    let most = round_up(total.max(agreed.unwrap_or(0.0)).max(1.0) * 1.04);
    let x = |amount: f64| 2.0 + (amount / most).min(1.0) * (width - 4.0);
    let (top, tall) = (30.0, 30.0);
    let mut marks = Vec::new();
    let mut so_far = 0.0;
    for (named, amount, (style, ink)) in parts {
        if amount <= 0.0 {
            continue;
        }
        let area = Area {
            x: x(so_far),
            y: top,
            width: x(so_far + amount) - x(so_far),
            height: tall,
        };
        so_far += amount;
        marks.push(Mark::Rect {
            area,
            corner_radius: 0.0,
            style,
        });
        let words = named(in_whole(amount));
        if text_width_px(&words, LETTERING, Weight::Regular) + 12.0 < area.width {
            marks.push(text(area.x + 6.0, top + 20.0, &words, Anchor::Start, ink));
        }
    }
    let unagreed = sound(price.unagreed).min(total);
    if unagreed > 0.0 {
        let area = Area {
            x: x(total - unagreed),
            y: top,
            width: x(total) - x(total - unagreed),
            height: tall,
        };
        marks.push(Mark::Rect {
            area,
            corner_radius: 0.0,
            style: Style::fill(Ink::Paper),
        });
        marks.extend(hatch(area, 6.0, Slope::Rising, Pen::fine(Ink::Stop)));
        marks.push(Mark::Rect {
            area,
            corner_radius: 0.0,
            style: Style::line(Pen::outline(Ink::Stop)),
        });
    }
    if let Some(agreed) = agreed {
        let at = x(agreed);
        let pen = Pen {
            stroke: Stroke::Wrong,
            ..Pen::outline(Ink::Ink)
        };
        marks.push(line(at, top - 8.0, at, top + tall + 8.0, pen));
        let words = say::agreed(in_whole(agreed));
        let half = text_width_px(&words, LETTERING, Weight::Bold) / 2.0;
        let middle = at.clamp(half, (width - half).max(half));
        marks.push(Mark::Text(Text {
            at: Point::new(middle, top - 13.0),
            text: words,
            size: LETTERING,
            weight: Weight::Bold,
            anchor: Anchor::Middle,
            ink: Ink::Ink,
        }));
    }
    marks.push(text(0.0, HEIGHT - 6.0, "0", Anchor::Start, Ink::Soft));
    marks.push(text(
        width,
        HEIGHT - 6.0,
        &in_whole(most),
        Anchor::End,
        Ink::Soft,
    ));
    let against = agreed.map_or(String::new(), |sum| say::and_agreed(to_the_cent(sum)));
    Drawing {
        width,
        height: HEIGHT,
        title: say::price_against_agreed().to_owned(),
        description: {
            let [labour, other, parts] = parts.map(|(_, amount, _)| to_the_cent(amount));
            say::price_in_words(labour, other, parts, to_the_cent(total), against)
        },
        marks,
    }
}

fn in_whole(sum: f64) -> String {
    phrases::number(&format!("{sum:.0}"))
}

fn to_the_cent(sum: f64) -> String {
    phrases::number(&format!("{sum:.2}"))
}

/// The next round sum: 1, 2, 2.5 or 5 times a power of ten.
fn round_up(amount: f64) -> f64 {
    let ten = libm::pow(10.0, libm::floor(libm::log10(amount.max(1.0))));
    [1.0, 2.0, 2.5, 5.0, 10.0]
        .into_iter()
        .map(|step| step * ten)
        .find(|round| *round >= amount)
        .unwrap_or(amount)
}

fn text(x: f64, y: f64, words: &str, anchor: Anchor, ink: Ink) -> Mark {
    Mark::Text(Text {
        at: Point::new(x, y),
        text: words.to_owned(),
        size: LETTERING,
        weight: Weight::Regular,
        anchor,
        ink,
    })
}

#[cfg(test)]
mod tests {
    use super::*;
    use proptest::prelude::*;

    #[test]
    fn a_price_is_told_with_its_limit() {
        let price = PriceBar {
            labour: 440.0,
            parts: 268.0,
            other: 72.0,
            unagreed: 0.0,
            agreed: Some(850.0),
        };
        let drawn = price_bar(&price, 316.0);
        let words: Vec<&str> = drawn
            .texts()
            .iter()
            .map(|text| text.text.as_str())
            .collect();
        assert!(words.contains(&"labour 440"), "{words:?}");
        assert!(words.contains(&"agreed 850"), "{words:?}");
        assert!(words.contains(&"1,000"), "{words:?}");
        assert!(drawn.description.ends_with("in all 780.00, agreed 850.00"));
    }

    proptest! {
        #[test]
        fn any_price_fits(
            amounts in proptest::array::uniform4(0.0..1e7_f64),
            agreed in proptest::option::of(0.0..1e7_f64),
        ) {
            let [labour, parts, other, unagreed] = amounts;
            let drawn = price_bar(&PriceBar { labour, parts, other, unagreed, agreed }, 316.0);
            for text in drawn.texts() {
                let area = text.area();
                prop_assert!(area.x >= -1.0 && area.right() <= drawn.width + 1.0, "{:?}", text);
            }
        }
    }
}
