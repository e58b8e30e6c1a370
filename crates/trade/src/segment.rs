//! A line parted into what names one thing each.

use crate::amounts::{Item, What, amounts};
use crate::chunks::cut;
use crate::phrases as say;
use crate::said::Count;
use crate::side::Side;
use crate::vocabulary::Vocabulary;
use crate::words::Token;
use std::ops::Range;

/// The words that name one thing, with its amounts.
#[derive(Debug, Clone, Default)]
pub(crate) struct Segment {
    pub place: Range<usize>,
    pub tokens: Vec<Token>,
    pub sides: Vec<Side>,
    pub counts: Vec<u16>,
    /// Counts written as words: two, both, a pair.
    pub said_counts: Vec<u16>,
    /// "2 pairs": how many make one of what was counted.
    pub pack: Option<u16>,
    /// Where the last number of pieces ends.
    pub counted_to: usize,
    pub set: bool,
    pub sizes: Vec<Range<usize>>,
    pub bulb: bool,
    pub torque: Option<(Range<usize>, Option<f64>)>,
    pub litres: Option<f64>,
    pub bad: Option<&'static str>,
    /// A slash stands before it: another thing, or another name of the thing before.
    pub slashed: bool,
    /// It follows the thing before it with nothing but a number between: "housing 3 bolts".
    pub numbered: bool,
    /// Clauses about the thing that name no thing of their own.
    pub extra: Vec<Token>,
    /// "with new washers", "split pin": what goes with it and was not counted.
    pub new_seal: bool,
    pub new_fasteners: bool,
}

/// Words of a segment as they are collected: folded, place, aside, in brackets.
type RawWord = (String, Range<usize>, bool, bool);

#[derive(Default)]
struct Collect {
    words: Vec<RawWord>,
    segment: Segment,
    /// Where among the words a count stood.
    count_after: Option<usize>,
}

impl Segment {
    /// Takes in a segment that follows, as words of the same thing.
    pub fn take_in(&mut self, mut other: Segment) {
        self.tokens.append(&mut other.tokens);
        absorb(self, other, false);
    }

    /// The words that must be accounted for.
    pub fn solid<'a>(&'a self, vocabulary: &'a Vocabulary) -> impl Iterator<Item = &'a Token> {
        self.tokens.iter().filter(|token| {
            !token.filler
                && !vocabulary.words.role_of(token.id).place
                && !vocabulary.words.role_of(token.id).join
        })
    }

    /// How many pieces, or why that cannot be told.
    pub fn count(&self) -> Result<Option<Count>, &'static str> {
        if let Some(bad) = self.bad {
            return Err(bad);
        }
        let mut counts = self.counts.clone();
        counts.dedup();
        if let Some(pack) = self.pack {
            let of = counts
                .first()
                .or(self.said_counts.first())
                .copied()
                .unwrap_or(1);
            return Ok(Some(Count::Of(of.saturating_mul(pack).min(999))));
        }
        match (counts.as_slice(), self.said_counts.as_slice()) {
            ([], []) => Ok(self.set.then_some(Count::Set)),
            ([], [one]) => Ok(Some(Count::Of(*one))),
            ([], [1, more] | [more, 1]) => Ok(Some(Count::Of(*more))),
            ([], [a, b]) if a == b => Ok(Some(Count::Of(*a))),
            ([one], _) => Ok(Some(Count::Of(*one))),
            _ => Err(say::two_counts_for_one_thing()),
        }
    }
}

/// Parts a line.
pub(crate) fn segments(line: &str, vocabulary: &Vocabulary) -> Vec<Segment> {
    let chunks = cut(line);
    let items = amounts(line, &chunks);
    let mut out: Vec<Collect> = vec![Collect::default()];
    let mut depth = 0_usize;
    for (at, item) in items.iter().enumerate() {
        match &item.what {
            What::Open => {
                let closes = items[at..].iter().any(|item| item.what == What::Close);
                depth += usize::from(closes);
            }
            What::Close => depth = depth.saturating_sub(1),
            What::Parts | What::Slash if depth == 0 => {
                begin(&mut out, item.what == What::Slash);
            }
            What::Word { word, .. } if depth == 0 && joins(vocabulary, word) => {
                begin(&mut out, false);
            }
            what => collect(&mut out, what, item, depth > 0),
        }
    }
    let parted: Vec<Collect> = out
        .into_iter()
        .flat_map(|collect| part_by_count(collect, vocabulary))
        .collect();
    let mut segments: Vec<Segment> = parted
        .into_iter()
        .map(|collect| finish(collect, vocabulary))
        .filter(|segment| !segment.place.is_empty())
        .collect();
    merge(&mut segments, vocabulary);
    segments
        .into_iter()
        .flat_map(|segment| part_by_with(segment, vocabulary))
        .collect()
}

/// "steering rack off with subframe" names two things; "caliper with hose" is one name, and
/// "filter with new seals" tells of the work.
fn part_by_with(segment: Segment, vocabulary: &Vocabulary) -> Vec<Segment> {
    let with = |token: &Token| vocabulary.asides.with.contains(&token.id) && !token.bracketed;
    let Some(at) = segment.tokens.iter().position(with).filter(|at| *at > 0) else {
        return vec![segment];
    };
    if !vocabulary.names_two(&segment, at) {
        return vec![segment];
    }
    let mut first = segment;
    let tokens = first.tokens.split_off(at);
    let end = first.place.end;
    let cut = tokens.first().map_or(end, |token| token.place.start);
    first.place.end = cut;
    let second = Segment {
        tokens,
        place: cut..end,
        numbered: true,
        ..Segment::default()
    };
    vec![first, second]
}

fn joins(vocabulary: &Vocabulary, word: &str) -> bool {
    vocabulary
        .words
        .id(word)
        .is_some_and(|id| vocabulary.words.role_of(id).join)
}

fn begin(out: &mut Vec<Collect>, slashed: bool) {
    let fresh = out.last().is_some_and(|last| last.segment.place.is_empty());
    if !fresh {
        out.push(Collect::default());
    }
    if let Some(last) = out.last_mut() {
        last.segment.slashed = slashed;
    }
}

fn widen(segment: &mut Segment, place: &Range<usize>) {
    if segment.place.is_empty() {
        segment.place = place.clone();
    } else {
        segment.place.end = segment.place.end.max(place.end);
    }
}

fn collect(out: &mut [Collect], what: &What, item: &Item, bracketed: bool) {
    let Some(last) = out.last_mut() else {
        return;
    };
    let place = item.place.clone();
    widen(&mut last.segment, &place);
    let segment = &mut last.segment;
    match what {
        What::Word { word, aside } => last.words.push((word.clone(), place, *aside, bracketed)),
        What::Size { bulb } => {
            segment.bulb |= bulb;
            segment.sizes.push(place);
        }
        What::Torque(value) => segment.torque = Some((place, *value)),
        What::Litres(litres) => {
            segment.litres = Some(*litres);
            segment.sizes.push(place);
        }
        What::Count(count) => {
            if segment.counts.is_empty() && !bracketed {
                last.count_after = Some(last.words.len());
            }
            segment.counts.push(*count);
            segment.counted_to = item.place.end;
        }
        What::Bad(why) => segment.bad = Some(why),
        // Commas and slashes in brackets part nothing.
        _ => {}
    }
}

/// "thermostat housing 3 bolts": a number before bolts, clips or plugs begins another thing.
fn part_by_count(collect: Collect, vocabulary: &Vocabulary) -> Vec<Collect> {
    let Some(at) = collect
        .count_after
        .filter(|at| *at > 0 && *at < collect.words.len())
    else {
        return vec![collect];
    };
    let tokens = |words: &[RawWord]| vocabulary.words.tokens(words).0;
    let before = tokens(&collect.words[..at]);
    let after = tokens(&collect.words[at..]);
    let is_solid = |token: &&Token| !token.filler && !vocabulary.words.role_of(token.id).place;
    let names_more = after.iter().filter(is_solid).count() > 0;
    let before_named = before.iter().filter(is_solid).count() > 0;
    if !names_more || !before_named || !vocabulary.parts_before(&before, &after) {
        return vec![collect];
    }
    let cut = collect.words[at].1.start;
    let Collect { words, segment, .. } = collect;
    let mut words = words;
    let tail = words.split_off(at);
    let (mut first, mut second) = (segment.clone(), segment);
    first.counts.clear();
    // What stands before the number stays with the first thing.
    first.place.end = words.last().map_or(cut, |word| word.1.end);
    second.place.start = first.place.end;
    let split = first.place.end;
    first.sizes.retain(|place| place.end <= split);
    second.sizes.retain(|place| place.start >= split);
    if first
        .torque
        .as_ref()
        .is_some_and(|(place, _)| place.start >= split)
    {
        first.torque = None;
    } else {
        second.torque = None;
    }
    second.numbered = true;
    second.slashed = false;
    vec![
        Collect {
            words,
            segment: first,
            count_after: None,
        },
        Collect {
            words: tail,
            segment: second,
            count_after: None,
        },
    ]
}

fn finish(collect: Collect, vocabulary: &Vocabulary) -> Segment {
    let Collect {
        mut words,
        mut segment,
        ..
    } = collect;
    take_set(&mut words, &mut segment);
    let (mut tokens, sides) = vocabulary.words.tokens(&words);
    segment.sides.extend(sides.iter().map(|(side, _)| *side));
    let next_is = |tokens: &[Token], at: usize| {
        tokens
            .get(at + 2)
            .is_some_and(|token| vocabulary.asides.alignment.contains(&token.id))
    };
    for at in 0..tokens.len() {
        let role = vocabulary.words.role_of(tokens[at].id);
        if let Some(number) = role.number
            && !tokens[at].side
        {
            let packs = vocabulary.asides.packs.contains(&tokens[at].id);
            let counted =
                segment.counted_to > 0 && tokens[at].place.start == segment.counted_to + 1;
            let after_word = at > 0 && vocabulary.words.role_of(tokens[at - 1].id).number.is_some();
            if packs && (counted || after_word) {
                segment.pack = Some(number);
            } else if !next_is(&tokens, at) && !tokens[at].guessed {
                segment.said_counts.push(number);
            }
            tokens[at].filler = true;
        }
    }
    segment.tokens = tokens;
    segment
}

/// "set of", "a set", "kit": as many as belong together. "set timing" is work.
fn take_set(words: &mut Vec<RawWord>, segment: &mut Segment) {
    let set = |word: &str| matches!(word, "set" | "sets" | "satz");
    let found = words.iter().position(|(word, ..)| set(word));
    let Some(at) = found else {
        return;
    };
    let of = words
        .get(at + 1)
        .is_some_and(|(word, ..)| word == "of" || word == "von");
    let verb = at == 0 && !of && words.len() > 1;
    if !verb {
        segment.set = true;
    }
    if of {
        words[at].2 = true;
        words.remove(at + 1);
        let place = words[at].1.clone();
        segment.place.end = segment.place.end.max(place.end);
    }
}

/// Puts clauses that name no thing of their own to the thing they speak of.
fn merge(segments: &mut Vec<Segment>, vocabulary: &Vocabulary) {
    let mut out: Vec<Segment> = Vec::with_capacity(segments.len());
    for segment in segments.drain(..) {
        let bare = segment.solid(vocabulary).count() == 0;
        match out.last_mut() {
            Some(last) if last.solid(vocabulary).count() == 0 => {
                // What came first named nothing: it goes to the first thing.
                let mut joined = segment;
                absorb(&mut joined, last.clone(), true);
                *last = joined;
            }
            Some(last) if bare => absorb(last, segment, true),
            Some(last) if vocabulary.tells_of_last(&segment) => {
                let mut aside = segment;
                last.extra.append(&mut aside.tokens);
                absorb(
                    last,
                    Segment {
                        place: aside.place,
                        ..Segment::default()
                    },
                    false,
                );
            }
            Some(last) if vocabulary.is_accessory(&segment) => {
                let seal = segment
                    .solid(vocabulary)
                    .any(|token| vocabulary.asides.seals.contains(&token.id));
                last.new_seal |= seal;
                last.new_fasteners |= !seal;
                absorb(
                    last,
                    Segment {
                        place: segment.place,
                        ..Segment::default()
                    },
                    false,
                );
            }
            _ => out.push(segment),
        }
    }
    *segments = out;
}

fn absorb(into: &mut Segment, mut other: Segment, words: bool) {
    let from = into.place.start.min(other.place.start);
    into.place = from..into.place.end.max(other.place.end);
    into.sides.append(&mut other.sides);
    into.counts.append(&mut other.counts);
    if into.counts.is_empty() || into.said_counts.is_empty() {
        into.said_counts.append(&mut other.said_counts);
    }
    into.pack = into.pack.or(other.pack);
    into.set |= other.set;
    into.sizes.append(&mut other.sizes);
    into.bulb |= other.bulb;
    into.torque = into.torque.take().or(other.torque);
    into.litres = into.litres.or(other.litres);
    into.bad = into.bad.or(other.bad);
    if words {
        into.extra.append(&mut other.tokens);
    }
    into.extra.append(&mut other.extra);
}

impl Vocabulary {
    /// "hung on wire", "hose still on": tells of the thing before.
    fn tells_of_last(&self, segment: &Segment) -> bool {
        let ids: Vec<u32> = segment.tokens.iter().map(|token| token.id).collect();
        let begins = ids
            .first()
            .is_some_and(|id| self.asides.begins.contains(id));
        begins
            || self
                .asides
                .holds
                .iter()
                .any(|held| !held.is_empty() && ids.windows(held.len()).any(|run| run == held))
    }

    /// "new washer", "split pin": goes with the thing before and was not counted.
    fn is_accessory(&self, segment: &Segment) -> bool {
        let has = |ids: &[u32]| segment.tokens.iter().any(|token| ids.contains(&token.id));
        let (fresh, pinned) = (has(&self.asides.fresh), has(&self.asides.pins));
        (fresh || pinned)
            && segment.counts.is_empty()
            && segment.said_counts.is_empty()
            && segment
                .solid(self)
                .all(|token| self.asides.accessories.contains(&token.id))
    }
}
