//! How wide lettering is, and how it is fitted into a width.
//!
//! The device's own sans is not known here, so widths are those of the wider of
//! two open ones: what is shown takes this much room or less.

use crate::Weight;

/// Share of the size above and below the base line, accents included.
pub(crate) const ASCENT: f64 = 0.95;
pub(crate) const DESCENT: f64 = 0.25;

/// Advances of U+0020 to U+007E in thousandths of the size: the wider of
/// DejaVu Sans 2.37 and Liberation Sans 2.1, rounded up.
#[rustfmt::skip]
const REGULAR: [u16; 95] = [
    318, 401, 460, 838, 637, 951, 780, 275, 391, 391, 500, 838, 318, 361, 318, 337, 637,
    637, 637, 637, 637, 637, 637, 637, 637, 637, 337, 337, 838, 838, 838, 557, 1016, 685,
    687, 723, 771, 667, 611, 778, 752, 295, 500, 667, 558, 863, 749, 788, 667, 788, 723,
    667, 611, 732, 685, 989, 686, 667, 686, 391, 337, 391, 838, 557, 500, 613, 635, 550,
    635, 616, 353, 635, 634, 278, 278, 580, 278, 975, 634, 612, 635, 635, 412, 521, 393,
    634, 592, 818, 592, 592, 525, 637, 337, 637, 838,
];

/// The same for the bold of both.
#[rustfmt::skip]
const BOLD: [u16; 95] = [
    349, 457, 521, 838, 696, 1002, 873, 307, 458, 458, 523, 838, 380, 416, 380, 366, 696,
    696, 696, 696, 696, 696, 696, 696, 696, 696, 400, 400, 838, 838, 838, 611, 1000, 774,
    763, 734, 831, 684, 684, 821, 837, 373, 557, 775, 638, 996, 837, 851, 733, 851, 771,
    721, 683, 813, 774, 1104, 771, 725, 726, 458, 366, 458, 838, 557, 500, 675, 716, 593,
    716, 679, 436, 716, 712, 343, 343, 666, 343, 1042, 712, 688, 716, 716, 494, 596, 479,
    712, 652, 924, 646, 652, 583, 712, 366, 712, 838,
];

/// Wider than the letters of those faces from U+00A0 to U+04FF.
const OTHER_LETTER: u16 = 1420;
/// Ideographs, syllables and pictures fill a square and a little more.
const SQUARE: u16 = 1500;

const ELLIPSIS: char = '…';

/// Estimates the width of a line of text, on the large side.
#[must_use]
pub fn text_width_px(text: &str, size: f64, weight: Weight) -> f64 {
    text.chars()
        .map(|c| f64::from(advance(c, weight)) / 1000.0 * size)
        .sum()
}

fn advance(character: char, weight: Weight) -> u16 {
    let table = match weight {
        Weight::Regular => &REGULAR,
        Weight::Bold => &BOLD,
    };
    let place = u32::from(character)
        .checked_sub(0x20)
        .and_then(|place| usize::try_from(place).ok());
    if let Some(&known) = place.and_then(|place| table.get(place)) {
        return known;
    }
    match character {
        '\u{2009}' | '\u{202f}' => 200,
        '\u{a0}' => 380,
        '·' | '²' | '³' => 440,
        '–' | '°' => 560,
        '×' | '±' => 840,
        ELLIPSIS | '—' => 1000,
        // Accented Latin of everyday use is no wider than an m; ß and æ and more are.
        'À'..='Å' | 'È'..='Ö' | 'Ù'..='Ý' => 860,
        'à'..='å' | 'è'..='ö' | 'ù'..='ÿ' => 720,
        '\u{0}'..='\u{4ff}' => OTHER_LETTER,
        _ => SQUARE,
    }
}

/// Shortens a text with an ellipsis until it fits; gives it back whole if it does.
#[must_use]
pub fn ellipsis(text: &str, size: f64, weight: Weight, max_width_px: f64) -> String {
    let text = text.trim();
    if text_width_px(text, size, weight) <= max_width_px {
        return text.to_owned();
    }
    let room = max_width_px - text_width_px(&ELLIPSIS.to_string(), size, weight);
    let kept = text[..fitting_bytes(text, size, weight, room)].trim_end();
    // Not even the ellipsis fits: nothing is shown rather than something that sticks out.
    if room < 0.0 {
        String::new()
    } else {
        format!("{kept}{ELLIPSIS}")
    }
}

/// Breaks a text into lines between words, and within a word that is wider than
/// a line. What does not fit into the lines allowed ends in an ellipsis.
#[must_use]
pub fn wrap(
    text: &str,
    size: f64,
    weight: Weight,
    max_width_px: f64,
    max_lines: usize,
) -> Vec<String> {
    let mut lines = Vec::new();
    let mut rest = text.trim();
    while !rest.is_empty() && lines.len() < max_lines {
        let fits = fitting_bytes(rest, size, weight, max_width_px);
        if lines.len() + 1 == max_lines || fits == rest.len() || fits == 0 {
            lines.push(ellipsis(rest, size, weight, max_width_px));
            break;
        }
        let (line, left) = rest.split_at(break_bytes(rest, fits));
        lines.push(line.trim_end().to_owned());
        rest = left.trim_start();
    }
    lines.retain(|line| !line.is_empty());
    lines
}

/// How many bytes of a text, up to a whole character, fit into a width.
fn fitting_bytes(text: &str, size: f64, weight: Weight, max_width_px: f64) -> usize {
    let mut width = 0.0;
    text.char_indices()
        .find(|&(_, character)| {
            width += f64::from(advance(character, weight)) / 1000.0 * size;
            width > max_width_px
        })
        .map_or(text.len(), |(at, _)| at)
}

/// Where to break a text of which so many bytes fit: at the last space, or
/// after the last hyphen, or where the room ends.
fn break_bytes(text: &str, fits: usize) -> usize {
    if text[fits..].starts_with(char::is_whitespace) {
        return fits;
    }
    let space = text[..fits].rfind(char::is_whitespace);
    let hyphen = text[..fits].rfind('-').map(|at| at + 1);
    space.max(hyphen).filter(|&at| at > 0).unwrap_or(fits)
}

#[cfg(test)]
mod tests {
    use proptest::prelude::*;

    use super::*;

    const SIZE: f64 = 16.0;

    #[test]
    fn words_stay_whole_where_they_can() {
        let lines = wrap("Oil-cooler housing bolts", SIZE, Weight::Bold, 130.0, 3);
        assert_eq!(lines, ["Oil-cooler", "housing bolts"]);
    }

    #[test]
    fn a_long_word_is_broken_and_the_last_line_says_that_more_follows() {
        let lines = wrap(
            "Kühlflüssigkeitsausgleichsbehälter",
            SIZE,
            Weight::Regular,
            120.0,
            2,
        );
        assert_eq!(lines.len(), 2);
        assert!(lines[1].ends_with('…'), "{lines:?}");
    }

    #[test]
    fn nothing_is_lettered_where_there_is_no_room() {
        assert_eq!(ellipsis("tray", SIZE, Weight::Regular, 3.0), "");
        assert!(wrap("tray", SIZE, Weight::Regular, 3.0, 4).is_empty());
        assert!(wrap("tray", SIZE, Weight::Regular, 100.0, 0).is_empty());
        assert!(wrap(" \n ", SIZE, Weight::Regular, 100.0, 2).is_empty());
    }

    proptest! {
        #[test]
        fn lines_fit_and_lose_nothing_while_there_are_enough_of_them(
            text in "\\PC{0,60}",
            width in 40.0..400.0_f64,
        ) {
            let lines = wrap(&text, SIZE, Weight::Bold, width, 1000);
            for line in &lines {
                prop_assert!(text_width_px(line, SIZE, Weight::Bold) <= width);
            }
            let letters = |s: &str| s.chars().filter(|c| !c.is_whitespace()).collect::<String>();
            prop_assert_eq!(letters(&lines.concat()), letters(&text));
        }

        #[test]
        fn few_lines_are_kept_to(text in "\\PC*", width in 0.0..200.0_f64, most in 0..4_usize) {
            let lines = wrap(&text, SIZE, Weight::Regular, width, most);
            prop_assert!(lines.len() <= most);
            for line in &lines {
                prop_assert!(text_width_px(line, SIZE, Weight::Regular) <= width);
            }
        }
    }
}
