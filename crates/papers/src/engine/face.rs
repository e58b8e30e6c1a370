//! The letters: two faces that are built in, shaped and measured.

use rustybuzz::{Direction, Script, ShapePlan, UnicodeBuffer};
use std::collections::BTreeSet;
use std::ops::Range;
use std::sync::{Arc, Mutex, OnceLock, PoisonError};
use unicode_bidi::BidiClass;

/// How heavy the letters are.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
pub enum Weight {
    Regular,
    Bold,
}

/// One letter shape, its lengths in parts of the type size.
#[derive(Debug, Clone, PartialEq)]
pub struct Glyph {
    pub id: u32,
    /// The bytes of the text that it stands for.
    pub range: Range<usize>,
    pub advance: f64,
    pub dx: f64,
    pub dy: f64,
}

/// How far letters reach above the base line, in parts of the type size.
pub const ASCENT: f64 = 0.80;
/// How far they reach below it.
pub const DESCENT: f64 = 0.22;

/// The font file of a weight.
pub fn bytes(weight: Weight) -> &'static [u8] {
    match weight {
        Weight::Regular => notosans::REGULAR_TTF,
        Weight::Bold => notosans::BOLD_TTF,
    }
}

fn face(weight: Weight) -> &'static rustybuzz::Face<'static> {
    static REGULAR: OnceLock<rustybuzz::Face<'static>> = OnceLock::new();
    static BOLD: OnceLock<rustybuzz::Face<'static>> = OnceLock::new();
    let held = match weight {
        Weight::Regular => &REGULAR,
        Weight::Bold => &BOLD,
    };
    held.get_or_init(|| {
        rustybuzz::Face::from_slice(bytes(weight), 0).expect("the built-in font can be read")
    })
}

/// How a script is shaped in a weight: worked out once, for it takes longer than the shaping.
fn plan(weight: Weight, script: Script) -> Arc<ShapePlan> {
    type Plans = Mutex<Vec<(Weight, Script, Arc<ShapePlan>)>>;
    static PLANS: Plans = Mutex::new(Vec::new());
    let mut plans = PLANS.lock().unwrap_or_else(PoisonError::into_inner);
    let known = plans
        .iter()
        .find(|(of, known, _)| *of == weight && *known == script);
    if let Some((.., plan)) = known {
        return Arc::clone(plan);
    }
    // A text of figures alone has no script of its own.
    let stated = (script != rustybuzz::script::UNKNOWN).then_some(script);
    let made = ShapePlan::new(face(weight), Direction::LeftToRight, stated, None, &[]);
    let plan = Arc::new(made);
    plans.push((weight, script, Arc::clone(&plan)));
    plan
}

/// The letter shapes of one line, left to right.
pub fn shape(text: &str, weight: Weight) -> Vec<Glyph> {
    let face = face(weight);
    let em = f64::from(face.units_per_em());
    let mut buffer = UnicodeBuffer::new();
    buffer.push_str(text);
    buffer.set_direction(Direction::LeftToRight);
    buffer.guess_segment_properties();
    let shaped = rustybuzz::shape_with_plan(face, &plan(weight, buffer.script()), buffer);
    let infos = shaped.glyph_infos();
    let starts: Vec<usize> = infos.iter().map(|info| info.cluster as usize).collect();
    let end_of = |start: usize| {
        let later = starts.iter().filter(|other| **other > start).min();
        later.copied().unwrap_or(text.len())
    };
    infos
        .iter()
        .zip(shaped.glyph_positions())
        .map(|(info, place)| Glyph {
            id: info.glyph_id,
            range: info.cluster as usize..end_of(info.cluster as usize),
            advance: f64::from(place.x_advance) / em,
            dx: f64::from(place.x_offset) / em,
            dy: f64::from(place.y_offset) / em,
        })
        .collect()
}

/// How wide one line of text is, in points.
pub fn width_pt(text: &str, size_pt: f64, weight: Weight) -> f64 {
    let advances = shape(text, weight).into_iter().map(|glyph| glyph.advance);
    advances.sum::<f64>() * size_pt
}

/// The text as it can be set: no control characters but line ends, no marks that only say
/// where a line may break, the hyphen that keeps a word together as a plain one.
pub fn clean(text: &str) -> String {
    let mut out = String::with_capacity(text.len());
    for letter in text.replace("\r\n", "\n").chars() {
        match letter {
            '\n' | '\u{2028}' | '\u{2029}' => out.push('\n'),
            '\u{ad}' | '\u{200b}' | '\u{2060}' | '\u{feff}' => {}
            '\u{2011}' => out.push('-'),
            '\u{202f}' => out.push('\u{a0}'),
            letter if letter.is_control() => out.push(' '),
            letter => out.push(letter),
        }
    }
    out
}

/// The letters of a text that cannot be set: those that the fonts lack, and those of scripts
/// that run from right to left.
pub fn unset(text: &str) -> BTreeSet<char> {
    let cleaned = clean(text);
    let mut out: BTreeSet<char> = cleaned.chars().filter(|c| turns(*c)).collect();
    for line in cleaned.lines() {
        for glyph in shape(line, Weight::Regular) {
            if glyph.id == 0 {
                out.extend(line[glyph.range].chars());
            }
        }
    }
    out
}

/// Whether a letter belongs to a script that runs from right to left, or orders one.
fn turns(letter: char) -> bool {
    use BidiClass::{AL, AN, FSI, LRE, LRI, LRO, PDF, PDI, R, RLE, RLI, RLO};
    matches!(
        unicode_bidi::bidi_class(letter),
        AL | AN | FSI | LRE | LRI | LRO | PDF | PDI | R | RLE | RLI | RLO
    )
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn figures_stand_under_each_other() {
        for weight in [Weight::Regular, Weight::Bold] {
            let widths: BTreeSet<u64> = ('0'..='9')
                .map(|figure| width_pt(&figure.to_string(), 1000.0, weight).to_bits())
                .collect();
            assert_eq!(widths.len(), 1, "{weight:?}");
        }
    }

    #[test]
    fn names_of_many_places_can_be_set() {
        for name in [
            "Ångström Łukasz Dvořák Őrség Çelik",
            "Ελένη Παπαδοπούλου",
            "Юлия Щербакова Њежић Ґанна",
            "Nguyễn Thị Ngọc Ảnh",
            "1 000,50 € · £ ½ × ° N·m „so“ – ’",
        ] {
            assert_eq!(unset(name), BTreeSet::new(), "{name}");
        }
    }

    #[test]
    fn what_cannot_be_set_is_named() {
        assert_eq!(unset("Ada 🙂 B"), BTreeSet::from(['🙂']));
        assert_eq!(unset("שלום"), "שלום".chars().collect());
        assert!(unset("مرحبا 1").contains(&'م'));
        assert_eq!(unset("a\u{202e}b"), BTreeSet::from(['\u{202e}']));
    }

    #[test]
    fn control_characters_do_no_harm() {
        assert_eq!(clean("a\u{0}b\tc\r\nd\u{ad}e"), "a b c\nde");
    }

    #[test]
    fn a_letter_and_its_accent_are_set_as_one() {
        let one = width_pt("é", 10.0, Weight::Regular);
        let two = width_pt("e\u{301}", 10.0, Weight::Regular);
        assert!((one - two).abs() < 1e-9, "{one} {two}");
    }
}
