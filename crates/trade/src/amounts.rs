//! Counts, sizes, torques and litres in a line; the rest are words.

use crate::chunks::{Chunk, Mark};
use crate::fold::fold;
use crate::phrases as say;
use measure::Dimension;
use std::ops::Range;

/// What one or several chunks were read as.
#[derive(Debug, Clone, PartialEq)]
pub(crate) enum What {
    /// A word, folded. `aside`: a grade or a place number that need not be known.
    Word {
        word: String,
        aside: bool,
    },
    /// A size token as typed.
    Size {
        bulb: bool,
    },
    /// A torque, in newton metres where it can be read.
    Torque(Option<f64>),
    /// Litres.
    Litres(f64),
    /// A number of pieces.
    Count(u16),
    /// What cannot be read, and how to mend it.
    Bad(&'static str),
    Parts,
    Slash,
    Open,
    Close,
}

/// One item of a line.
#[derive(Debug, Clone, PartialEq)]
pub(crate) struct Item {
    pub place: Range<usize>,
    pub what: What,
}

/// Words before a number that says which one, not how many.
const WHICH: [&str; 27] = [
    "cyl", "cylinder", "zyl", "zylinder", "bank", "no", "nr", "number", "pos", "position", "stall",
    "bay", "gear", "gang", "type", "stage", "euro", "dot", "sensor", "sens", "terminal", "klemme",
    "class", "series", "row", "hole", "order",
];

/// Words after a tied or bare number that say what sort, not how many.
const SORT: [&str; 17] = [
    "pin", "pins", "pol", "polig", "poliger", "polige", "way", "piece", "speed", "gang", "door",
    "stroke", "view", "degree", "volt", "wd", "core",
];

/// Reads a cut line.
pub(crate) fn amounts(line: &str, chunks: &[Chunk]) -> Vec<Item> {
    let mut reader = Reader {
        line,
        chunks,
        at: 0,
        out: Vec::with_capacity(chunks.len()),
    };
    while reader.at < chunks.len() {
        reader.next();
    }
    reader.out
}

/// Reads a name of the table: all its chunks are words.
pub(crate) fn words_only(line: &str, chunks: &[Chunk]) -> Vec<String> {
    chunks
        .iter()
        .filter(|chunk| chunk.mark == Mark::Word)
        .map(|chunk| fold(&line[chunk.place.clone()]))
        .collect()
}

struct Reader<'a> {
    line: &'a str,
    chunks: &'a [Chunk],
    at: usize,
    out: Vec<Item>,
}

/// A number at the start of a text, and how many bytes it takes.
fn number(text: &str) -> Option<(f64, usize)> {
    let mut end = 0;
    for (at, c) in text.char_indices() {
        if c.is_ascii_digit() || (matches!(c, '.' | ',') && at > 0) {
            end = at + 1;
        } else {
            break;
        }
    }
    let digits = &text[..end];
    let value = digits.replace(',', ".").parse::<f64>().ok()?;
    Some((value, end))
}

fn whole(text: &str) -> Option<u64> {
    (!text.is_empty() && text.bytes().all(|b| b.is_ascii_digit()))
        .then(|| text.parse().ok())
        .flatten()
}

impl<'a> Reader<'a> {
    fn text(&self, at: usize) -> &'a str {
        self.chunks
            .get(at)
            .filter(|chunk| chunk.mark == Mark::Word)
            .map_or("", |chunk| &self.line[chunk.place.clone()])
    }

    fn word(&self, at: usize) -> String {
        fold(self.text(at))
    }

    fn take(&mut self, chunks: usize, what: What) {
        let from = self.chunks[self.at].place.start;
        let to = self.chunks[self.at + chunks - 1].place.end;
        self.out.push(Item {
            place: from..to,
            what,
        });
        self.at += chunks;
    }

    /// A number that sorts, and what follows it: kept as words that need not be known.
    fn asides(&mut self, chunks: usize) {
        for _ in 0..chunks {
            let word = self.word(self.at);
            self.take(1, What::Word { word, aside: true });
        }
    }

    fn next(&mut self) {
        match self.chunks[self.at].mark {
            Mark::Parts => self.take(1, What::Parts),
            Mark::Slash => self.take(1, What::Slash),
            Mark::Open => self.take(1, What::Open),
            Mark::Close => self.take(1, What::Close),
            Mark::Minus => {
                let more = usize::from(!self.text(self.at + 1).is_empty());
                self.take(1 + more, What::Bad(say::number_below_nothing()));
            }
            Mark::Word => self.chunk(),
        }
    }

    fn chunk(&mut self) {
        let text = self.text(self.at);
        let first = text.as_bytes().first().copied().unwrap_or(b' ');
        if first.is_ascii_digit() {
            return self.digits(text);
        }
        let small = fold(text);
        if let Some(bulb) = named_size(&small) {
            let more = if small.starts_with('m') {
                self.thread_goes_on()
            } else {
                0
            };
            let place = self.chunks[self.at].place.clone();
            self.take(1 + more, What::Size { bulb });
            if bulb {
                // "H7" alone names a bulb.
                self.out.push(Item {
                    place,
                    what: What::Word {
                        word: small,
                        aside: true,
                    },
                });
            }
            return;
        }
        if first == b'#' {
            let thread = small.contains('-');
            if thread {
                return self.take(1, What::Size { bulb: false });
            }
            return self.asides(1);
        }
        if let Some(count) = small.strip_prefix('x').and_then(whole) {
            return self.count(1, count);
        }
        if small == "x"
            && let Some(count) = whole(self.text(self.at + 1))
        {
            return self.count(2, count);
        }
        if WHICH.contains(&small.as_str())
            && number(self.text(self.at + 1))
                .is_some_and(|(_, taken)| taken == self.text(self.at + 1).len())
            && (small == "dot" || whole(self.text(self.at + 1)).is_some())
            && !self.unit_follows(self.at + 1)
            && (!matches!(small.as_str(), "sensor" | "sens")
                || self.out.iter().any(|item| is_word(item, "bank")))
            && !(small == "order" && self.at == 0)
        {
            // "cyl 3" says which one; "stall 3" is said of a stall.
            let aside = !matches!(
                small.as_str(),
                "stall" | "terminal" | "klemme" | "type" | "sensor" | "sens" | "order"
            );
            self.take(1, What::Word { word: small, aside });
            return self.asides(1);
        }
        self.take(
            1,
            What::Word {
                word: small,
                aside: false,
            },
        );
    }

    /// "M12 x 1.5": how many more chunks belong to the thread.
    fn thread_goes_on(&self) -> usize {
        let next = self.text(self.at + 2);
        let pitch_or_length = number(next).is_some_and(|(value, taken)| {
            (taken == next.len() || &next[taken..] == "mm")
                && (value.fract() != 0.0 || value >= 10.0)
        });
        if self.word(self.at + 1) == "x" && pitch_or_length {
            2
        } else {
            0
        }
    }

    fn unit_follows(&self, at: usize) -> bool {
        let next = self.word(at + 1);
        matches!(unit(&next, &self.word(at + 2), false), Some((u, _)) if u != Unit::Plain)
    }

    fn count(&mut self, chunks: usize, count: u64) {
        let what = match u16::try_from(count) {
            Ok(0) => What::Bad(say::count_of_nothing()),
            Ok(count) if count <= 999 => What::Count(count),
            _ => What::Bad(say::more_than_999_pieces()),
        };
        self.take(chunks, what);
    }

    fn digits(&mut self, text: &'a str) {
        let small = fold(text);
        let Some((value, taken)) = number(text) else {
            return self.asides(1);
        };
        let rest = small.get(taken..).unwrap_or("");
        let next = self.word(self.at + 1);
        let tied = self.chunks.get(self.at + 1).is_some_and(|chunk| chunk.tied);
        if rest.is_empty() {
            return self.bare(text, value, &next, tied);
        }
        if inch_thread(&small) {
            let named = matches!(
                next.as_str(),
                "unf"
                    | "unc"
                    | "whit"
                    | "bsp"
                    | "bspt"
                    | "npt"
                    | "whitworth"
                    | "inch"
                    | "zoll"
                    | "af"
                    | "uns"
            );
            return self.take(1 + usize::from(named), What::Size { bulb: false });
        }
        if let Some((low, high)) = small.split_once('-')
            && let (Some(low), Some(high)) = (whole(low), whole(high))
        {
            return self.range(low, high);
        }
        if rest.starts_with("pk") || rest.starts_with("dpk") {
            return self.take(1, What::Size { bulb: false });
        }
        if rest == "x" {
            let chunks = 1;
            return self.count(chunks, value_whole(value));
        }
        if let Some(size) = rest.strip_prefix('x') {
            return self.times(value, size);
        }
        if let Some((unit, _)) = unit(rest, &next, true) {
            let place = self.chunks[self.at].place.clone();
            self.quantity(1, unit);
            if rest == "v" {
                // "12v socket": the volts say which.
                self.out.push(Item {
                    place,
                    what: What::Word {
                        word: small,
                        aside: true,
                    },
                });
            }
            return;
        }
        self.asides(1);
    }

    /// "3x10mm", "2xM12", "12x1.25", "4x4".
    fn times(&mut self, value: f64, size: &str) {
        let thread = named_size(size).is_some();
        let with_unit = number(size).is_some_and(|(_, taken)| size.get(taken..) == Some("mm"));
        if thread || with_unit {
            let place = self.chunks[self.at].place.clone();
            let cut = place.end - size.len();
            let count = u16::try_from(value_whole(value)).unwrap_or(u16::MAX);
            let what = if (1..=999).contains(&count) {
                What::Count(count)
            } else {
                What::Bad(say::more_than_999_pieces())
            };
            self.out.push(Item {
                place: place.start..cut,
                what,
            });
            self.out.push(Item {
                place: cut..place.end,
                what: What::Size { bulb: false },
            });
            self.at += 1;
        } else if size.contains(['.', ',']) {
            self.take(1, What::Size { bulb: false });
        } else {
            self.asides(1);
        }
    }

    fn range(&mut self, low: u64, high: u64) {
        let next = self.word(self.at + 1);
        if let Some((unit, more)) = unit(&next, &self.word(self.at + 2), false) {
            return self.quantity(1 + more, unit);
        }
        if high > low && high - low < 999 {
            self.count(1, high - low + 1);
        } else {
            self.asides(1);
        }
    }

    /// A number that stands alone, with what follows it.
    fn bare(&mut self, text: &'a str, value: f64, next: &str, tied: bool) {
        let after = self.word(self.at + 2);
        if let Some((unit, more)) = unit(next, &after, false) {
            return self.quantity(1 + more, unit);
        }
        if self.lists() {
            return;
        }
        let wheels =
            next == "wheel" && matches!(after.as_str(), "alignment" | "drive" | "steering");
        if tied || SORT.contains(&next) || wheels || (next == "cylinder" && after == "engine") {
            return self.asides(1);
        }
        if text == "360" && next == "camera" {
            return self.asides(1);
        }
        match whole(text) {
            Some(low) => {
                if (next == "to" || next == "bis")
                    && let Some(high) = whole(self.text(self.at + 2))
                    && high > low
                    && high - low < 99
                {
                    return self.count(3, high - low + 1);
                }
                let off = next == "off" || next == "no" || next == "x";
                let off = off
                    && !(next == "x"
                        && !self.text(self.at + 2).is_empty()
                        && number(self.text(self.at + 2)).is_some());
                self.count(1 + usize::from(off), low);
            }
            None if value.is_finite() => self.take(1, What::Bad(say::number_with_no_unit())),
            None => self.asides(1),
        }
    }

    /// "1, 2 and 4" after a plural names that many: left to the joining of things.
    fn lists(&mut self) -> bool {
        let text = self.text(self.at);
        let parts: Vec<_> = text.split(',').collect();
        if parts.len() > 2 && parts.iter().all(|part| whole(part).is_some()) {
            self.count(1, parts.len() as u64);
            return true;
        }
        false
    }

    fn quantity(&mut self, chunks: usize, unit: Unit) {
        let from = self.chunks[self.at].place.start;
        let to = self.chunks[self.at + chunks - 1].place.end;
        let typed = &self.line[from..to];
        match unit {
            Unit::Torque => {
                let newton_metres = measure::read(typed, Dimension::Torque)
                    .ok()
                    .and_then(|read| read.torque().ok())
                    .map(|torque| torque.value);
                let more = self.angle_follows(self.at + chunks);
                self.take(chunks + more, What::Torque(newton_metres));
            }
            Unit::Volume => {
                let litres = measure::read(typed, Dimension::Volume)
                    .ok()
                    .and_then(|read| read.volume().ok())
                    .map(|volume| volume.value * 1000.0);
                let what = litres.map_or(What::Size { bulb: false }, What::Litres);
                self.take(chunks, what);
            }
            Unit::Size => self.take(chunks, What::Size { bulb: false }),
            Unit::Plain => self.asides(chunks),
        }
    }

    /// "+ 90°" after a torque: how many chunks it takes.
    fn angle_follows(&self, at: usize) -> usize {
        let joined = self.chunks.get(at).is_some_and(|chunk| {
            chunk.mark == Mark::Parts && self.line[chunk.place.clone()].starts_with('+')
        }) || self.word(at) == "plus";
        let text = self.text(at + 1);
        if !joined || number(text).is_none() {
            return 0;
        }
        let degrees =
            |word: &str| matches!(word, "°" | "deg" | "degree" | "degrees" | "grad" | "d");
        let rest = number(text).map_or("", |(_, taken)| &text[taken..]);
        if degrees(rest)
            || (rest.is_empty() && !degrees(&self.word(at + 2)) && self.text(at + 2).is_empty())
        {
            2
        } else if rest.is_empty() && degrees(&self.word(at + 2)) {
            3
        } else {
            0
        }
    }
}

fn is_word(item: &Item, wanted: &str) -> bool {
    matches!(&item.what, What::Word { word, .. } if word == wanted)
}

#[expect(
    clippy::cast_possible_truncation,
    clippy::cast_sign_loss,
    reason = "the value is clamped to what a count may be before"
)]
fn value_whole(value: f64) -> u64 {
    if value.fract() == 0.0 {
        value.clamp(0.0, 1e9) as u64
    } else {
        0
    }
}

#[derive(Debug, Clone, Copy, PartialEq, Eq)]
enum Unit {
    Torque,
    Volume,
    Size,
    /// A unit that says nothing of a size here: years, percent.
    Plain,
}

/// The unit that one or two words name, and how many words it takes.
fn unit(first: &str, second: &str, tied: bool) -> Option<(Unit, usize)> {
    let two = match (first, second) {
        (
            "lb" | "lbs" | "ft" | "foot" | "in" | "inch",
            "ft" | "lb" | "lbs" | "in" | "pounds" | "pound",
        )
        | ("newton", "metres" | "metre" | "meter" | "meters")
        | ("n", "m") => Some(Unit::Torque),
        _ => None,
    };
    if let Some(unit) = two.filter(|_| !tied) {
        return Some((unit, 2));
    }
    let one = match first {
        "nm" | "n·m" | "ftlb" | "ftlbs" | "lbft" | "lbsft" | "inlb" | "inlbs" | "kgm" | "kpm"
        | "ncm" => Unit::Torque,
        "l" | "ltr" | "ltrs" | "lit" | "litre" | "litres" | "liter" | "liters" | "ml" | "qt"
        | "qts" | "quart" | "quarts" | "pint" | "pints" | "gal" | "gallon" | "gallons" | "cc"
        | "ccm" | "cl" => Unit::Volume,
        "mm" | "cm" | "inch" | "zoll" | "\"" | "g" | "gr" | "gram" | "grams" | "gramm" | "kg"
        | "oz" | "km" | "miles" | "mi" | "mile" | "bar" | "psi" | "kpa" | "volt" | "volts"
        | "watt" | "watts" | "amp" | "amps" | "ah" => Unit::Size,
        "v" | "w" | "a" | "h" | "k" | "m" | "°" | "d" if tied => Unit::Size,
        "deg" | "degrees" | "°" | "grad" => Unit::Size,
        "years" | "year" | "percent" | "min" | "mins" | "minutes" | "hours" | "hour" | "hrs"
        | "uhr" | "euro" | "eur" | "pm" | "am" => Unit::Plain,
        _ => return None,
    };
    Some((one, usize::from(!tied)))
}

/// "7/16", "1/4-20", "5/16".
fn inch_thread(small: &str) -> bool {
    let Some((over, under)) = small.split_once('/') else {
        return false;
    };
    let under =
        under.split_once('-').map_or(
            under,
            |(under, pitch)| {
                if whole(pitch).is_some() { under } else { "" }
            },
        );
    whole(over).is_some() && whole(under.trim_end_matches(['"', '″'])).is_some()
}

/// A size that begins with a letter: a metric thread, a bulb. True for a bulb.
fn named_size(small: &str) -> Option<bool> {
    if let Some(rest) = small.strip_prefix('m') {
        let (_, taken) = number(rest)?;
        let tail = &rest[taken..];
        let fits = tail.is_empty()
            || tail.strip_prefix('x').is_some_and(|tail| {
                tail.split('x')
                    .all(|part| number(part).is_some_and(|(_, taken)| taken == part.len()))
            });
        return fits.then_some(false);
    }
    is_bulb(small).then_some(true)
}

fn is_bulb(small: &str) -> bool {
    let digits = |text: &str| {
        !text.is_empty() && text.len() <= 2 && text.bytes().all(|b| b.is_ascii_digit())
    };
    if let Some(rest) = small
        .strip_prefix("hb")
        .or_else(|| small.strip_prefix("hir"))
    {
        return digits(rest);
    }
    if let Some(rest) = small.strip_prefix('d') {
        return matches!(rest.as_bytes(), [b'1'..=b'8', b's' | b'r']);
    }
    if let Some(rest) = small.strip_prefix('h') {
        return digits(rest) && rest != "0";
    }
    let stem = small.trim_start_matches(['p', 'w', 't', 'r', 'c', 'y']);
    let letters = small.len() - stem.len();
    (1..=2).contains(&letters)
        && stem
            .strip_suffix('w')
            .is_some_and(|stem| stem.split('/').all(digits) && !stem.is_empty())
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::chunks::cut;

    fn read(line: &str) -> Vec<What> {
        amounts(line, &cut(line))
            .into_iter()
            .map(|item| item.what)
            .filter(|what| !matches!(what, What::Word { .. } | What::Open | What::Close))
            .collect()
    }

    #[test]
    fn sizes_torques_and_counts_are_told_apart() {
        assert_eq!(
            read("2 caliper bolts M12x1.25 120 Nm"),
            [
                What::Count(2),
                What::Size { bulb: false },
                What::Torque(Some(120.0))
            ]
        );
        assert_eq!(read("1,5 l brake fluid"), [What::Litres(1.5)]);
        assert_eq!(read("trim clips x12"), [What::Count(12)]);
        assert_eq!(read("injector plugs 1-4"), [What::Count(4)]);
        assert_eq!(read("seat bolts 4 off"), [What::Count(4)]);
        assert_eq!(read("stop lamp bulb P21/5W"), [What::Size { bulb: true }]);
        assert_eq!(
            read("crankshaft bolt M14x1.5 180 Nm + 90°")[1],
            What::Torque(Some(180.0))
        );
        assert_eq!(
            read("bolt M12 x 1.5 x4"),
            [What::Size { bulb: false }, What::Count(4)]
        );
        assert_eq!(read("towing socket 13 pin"), []);
        assert_eq!(read("4-wheel alignment"), []);
        assert_eq!(read("coil cyl 2"), []);
    }

    #[test]
    fn what_cannot_be_counted_is_told() {
        assert!(matches!(read("-3 bolts")[0], What::Bad(_)));
        assert!(matches!(read("0 bolts")[0], What::Bad(_)));
        assert!(matches!(read("2.5 bolts")[0], What::Bad(_)));
        assert!(matches!(read("1000 bolts")[0], What::Bad(_)));
    }
}
