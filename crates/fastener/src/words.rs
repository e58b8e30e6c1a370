//! The words around the sizes of a thread.

use crate::class::Class;
use crate::pipe::Family;
use crate::purpose::Purpose;

/// A designation taken apart into the words beside the sizes, and the sizes.
pub(crate) struct Words {
    pub core: String,
    pub purpose: Purpose,
    pub left_hand: bool,
    pub series: Option<&'static str>,
    pub pipe: Option<Family>,
    pub class: Option<Class>,
}

impl Words {
    pub fn of(found: &str) -> Words {
        let mut core = found
            .to_lowercase()
            .replace(['×', '✕', '*'], "x")
            .replace(['–', '—', '‑', '−'], "-")
            .replace(['"', '”', '″'], "")
            .replace("''", "");
        let class = class_at_end(&mut core);
        let purpose = taken(&mut core, &PURPOSES).unwrap_or(Purpose::Clamp);
        let left_hand = taken(
            &mut core,
            &[("left hand", ()), ("left-hand", ()), ("lh", ())],
        );
        let pipe = taken(&mut core, &PIPES);
        let series = taken(&mut core, &SERIES);
        let core = without_tolerance(&core)
            .replace(" -", "-")
            .replace("- ", "-");
        let pipe = pipe.or_else(|| pipe_letter(&core));
        Words {
            core: core
                .trim_matches(|c: char| c.is_whitespace() || c == '-')
                .to_owned(),
            purpose,
            left_hand: left_hand.is_some(),
            series,
            pipe,
            class,
        }
    }
}

const PURPOSES: [(&str, Purpose); 16] = [
    ("spark plug", Purpose::SparkPlug),
    ("sparkplug", Purpose::SparkPlug),
    ("drain plug", Purpose::DrainPlug),
    ("sump plug", Purpose::DrainPlug),
    ("brake line", Purpose::BrakeLine),
    ("brake pipe", Purpose::BrakeLine),
    ("flare nut", Purpose::BrakeLine),
    ("banjo bolt", Purpose::Banjo),
    ("banjo", Purpose::Banjo),
    ("wheel stud", Purpose::WheelStud),
    ("wheel bolt", Purpose::WheelStud),
    ("wheel nut", Purpose::WheelStud),
    ("lug nut", Purpose::WheelStud),
    ("oxygen sensor", Purpose::SensorBung),
    ("lambda sensor", Purpose::SensorBung),
    ("sensor", Purpose::SensorBung),
];

const PIPES: [(&str, Family); 5] = [
    ("nptf", Family::Npt),
    ("npt", Family::Npt),
    ("bspt", Family::BspTaper),
    ("bspp", Family::BspParallel),
    ("bsp", Family::BspParallel),
];

const SERIES: [(&str, &str); 6] = [
    ("unef", "UNEF"),
    ("unc", "UNC"),
    ("unf", "UNF"),
    ("uns", "UNS"),
    ("nc", "UNC"),
    ("nf", "UNF"),
];

/// Takes the first of `words` that stands in `core` out of it.
fn taken<T: Copy>(core: &mut String, words: &[(&str, T)]) -> Option<T> {
    let &(word, meaning) = words.iter().find(|(word, _)| core.contains(word))?;
    *core = core.replacen(word, " ", 1);
    Some(meaning)
}

/// Takes a strength class off the end: `M6x25 8.8`, `1/4-20 grade 5`. A number after an `x` or
/// a dash is a size.
fn class_at_end(core: &mut String) -> Option<Class> {
    let blanks: Vec<usize> = core.rmatch_indices(' ').map(|(at, _)| at).take(2).collect();
    let (at, class) = blanks.into_iter().rev().find_map(|at| {
        let before = core[..at].trim_end();
        let sized = before.is_empty() || before == "m" || before.ends_with(['x', '-', '#']);
        let class = Class::read(&core[at..]).ok().filter(|_| !sized)?;
        Some((at, class))
    })?;
    core.truncate(at);
    Some(class)
}

/// `6g`, `6H`, `4g6g`, `2A`, `3B` say how well the thread fits, not which it is.
fn without_tolerance(core: &str) -> String {
    let is_tolerance = |word: &str| {
        let mut characters = word.chars();
        let digit_first = characters.next().is_some_and(|c| c.is_ascii_digit());
        let letter_last = word.ends_with(['a', 'b', 'e', 'f', 'g', 'h']);
        let only = word
            .chars()
            .all(|c| c.is_ascii_digit() || "abefgh".contains(c));
        digit_first && letter_last && only && word.len() <= 4
    };
    let kept: Vec<&str> = core
        .split_inclusive(|c: char| c.is_whitespace() || c == '-')
        .filter(|part| {
            !is_tolerance(part.trim_end_matches(|c: char| c.is_whitespace() || c == '-'))
        })
        .collect();
    kept.concat()
}

/// `g1/4`, `r 1/8`, `rc 3/8`: pipe threads by their letter.
fn pipe_letter(core: &str) -> Option<Family> {
    let trimmed = core.trim_start();
    let family = match trimmed.chars().next()? {
        'g' => Family::BspParallel,
        'r' => Family::BspTaper,
        _ => return None,
    };
    trimmed
        .contains(|c: char| c.is_ascii_digit())
        .then_some(family)
}
