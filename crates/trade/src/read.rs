//! Reading a line: which things it names, and what follows from each.

use crate::branch::Branch;
use crate::derive::Reading;
use crate::find::{Bag, Hit};
use crate::gates::Gates;
use crate::phrases as say;
use crate::said::{Count, Happens, Owes, Said, Sure};
use crate::segment::{Segment, segments};
use crate::side::Side;
use crate::vocabulary::{Head, Keep, Vocabulary};
use crate::words::{STRANGE, Token};
use crate::work::{Code, WorkSet};
use rustc_hash::FxHashMap;
use states::{Gate, Kind};

/// Reads a line as a person of the trade would mean it.
///
/// A line may name several things. Every one of them is given, with the words it was read
/// from; together their places cover the line, so nothing typed is lost. What cannot be read is
/// given as well, with why, as a line to be mended. A line with no word in it gives nothing.
///
/// ```
/// use trade::{Count, Side, Vocabulary, says};
///
/// let said = says("2 caliper bolts M12 120 Nm front left", Vocabulary::shipped());
/// assert_eq!(said[0].count, Some(Count::Of(2)));
/// assert_eq!(said[0].torque_newton_metres, Some(120.0));
/// assert_eq!(said[0].side, Some(Side::FrontLeft));
/// assert!(said[0].safety);
/// assert_eq!(said[0].gates_shut_back.codes(), ["roll", "road", "hand"]);
/// ```
#[must_use]
pub fn says(line: &str, vocabulary: &Vocabulary) -> Vec<Said> {
    says_after(line, vocabulary, &[])
}

/// The same, after other things were named: "both wheels", then "their 10 nuts".
#[must_use]
pub fn says_after(line: &str, vocabulary: &Vocabulary, before: &[Said]) -> Vec<Said> {
    let mut parts = segments(line, vocabulary);
    let earlier: Vec<Context> = before
        .iter()
        .rev()
        .filter_map(|said| context_of(said, vocabulary))
        .collect();
    let mut readings: Vec<Option<Reading>> = Vec::with_capacity(parts.len());
    let words = |at: usize| -> Vec<u32> { vocabulary.solid_ids(&parts[at]) };
    for (at, segment) in parts.iter().enumerate() {
        let mut known: Vec<Context> = (0..at)
            .rev()
            .filter_map(|at| Context::of(readings[at].as_ref()?, words(at)))
            .collect();
        known.extend(earlier.iter().cloned());
        readings.push(vocabulary.read(segment, &known));
    }
    // What was said before its thing was named: "bolts and water pump", "wheel, hose, caliper".
    for at in 0..parts.len().saturating_sub(1) {
        let leans = readings[at].as_ref().is_some_and(|reading| {
            reading.sure == Sure::Unknown || (!reading.itself && reading.sure == Sure::Likely)
        });
        if !leans || words(at).len() > 1 {
            continue;
        }
        let mut known: Vec<Context> = Vec::new();
        for other in (0..at).rev().chain(at + 1..parts.len()) {
            let settled = readings[other]
                .as_ref()
                .filter(|reading| reading.sure != Sure::Unknown);
            known.extend(settled.and_then(|reading| Context::of(reading, words(other))));
        }
        known.extend(earlier.iter().cloned());
        readings[at] = vocabulary.read(&parts[at], &known);
    }
    let mut out: Vec<Said> = Vec::with_capacity(parts.len());
    for at in (1..parts.len()).rev() {
        if let Some(joined) = vocabulary.joined(
            &parts[at - 1],
            &parts[at],
            (&readings[at - 1], &readings[at]),
        ) {
            readings[at - 1] = Some(joined);
            readings.remove(at);
            let tail = parts.remove(at);
            parts[at - 1].take_in(tail);
        }
    }
    for (segment, reading) in parts.iter().zip(readings) {
        let reading = reading.unwrap_or_else(|| Reading::unknown(None));
        let same_again = segment.slashed
            && out.last().is_some_and(|last| {
                reading.itself
                    && reading.sort.map(|at| &vocabulary.sort(at).id) == last.sort.as_ref()
            });
        if same_again && let Some(last) = out.last_mut() {
            last.place.end = segment.place.end;
            continue;
        }
        out.extend(vocabulary.say(line, segment, &reading));
    }
    spread(line, &mut out);
    vocabulary.along(&mut out);
    out
}

/// A thing that was named, as what others may belong to.
#[derive(Debug, Clone)]
pub(crate) struct Context {
    sort: u32,
    system: Branch,
    reading: Reading,
    /// The words that named it.
    words: Vec<u32>,
}

impl Context {
    fn of(reading: &Reading, words: Vec<u32>) -> Option<Context> {
        Some(Context {
            sort: reading.sort?,
            system: reading.system,
            reading: reading.clone(),
            words,
        })
    }
}

fn context_of(said: &Said, vocabulary: &Vocabulary) -> Option<Context> {
    let sort = *vocabulary.sort_ids.get(said.sort.as_ref()?)?;
    Some(Context {
        sort,
        system: said.system,
        reading: vocabulary.reading_of_sort(sort),
        words: segments(&said.text, vocabulary)
            .first()
            .map(|segment| vocabulary.solid_ids(segment))
            .unwrap_or_default(),
    })
}

/// The core of a segment and what stands around it.
struct Split {
    bag: Bag,
    /// The same with nothing around: every word is of the core.
    whole: Bag,
    core: Vec<usize>,
    around: Vec<usize>,
}

impl Vocabulary {
    fn solid_ids(&self, segment: &Segment) -> Vec<u32> {
        segment
            .tokens
            .iter()
            .filter(|token| self.is_solid(token))
            .map(|token| token.id)
            .collect()
    }

    fn is_solid(&self, token: &Token) -> bool {
        let role = self.words.role_of(token.id);
        !token.filler && !role.place && !role.join && role.number.is_none()
    }

    fn split(&self, segment: &Segment) -> Split {
        let tokens: Vec<&Token> = segment
            .tokens
            .iter()
            .chain(&segment.extra)
            .take(Bag::MOST)
            .collect();
        let own = segment.tokens.len();
        let axle = self.words.id("axle");
        let (mut core, mut around) = (Vec::new(), Vec::new());
        let mut placed = false;
        let ends = self.accessories_from(&tokens[..own.min(tokens.len())]);
        for (at, token) in tokens.iter().enumerate() {
            if (ends..own).contains(&at) {
                continue;
            }
            let role = self.words.role_of(token.id);
            placed |= role.place && !core.is_empty();
            if !self.is_solid(token) {
                continue;
            }
            let axled = Some(token.id) == axle && !core.is_empty() && at > 0 && tokens[at - 1].side;
            if placed || token.bracketed || at >= own || axled {
                around.push(at);
            } else {
                core.push(at);
            }
        }
        if core.is_empty() {
            core = std::mem::take(&mut around);
        }
        let mask = |places: &[usize]| places.iter().fold(0, |mask, at| mask | 1 << at);
        let ids: Vec<u32> = tokens.iter().map(|token| token.id).collect();
        // "fuel pump diesel": what it is stands before the word that says which.
        let names = |at: &&usize| !self.qualifiers.contains(&ids[**at]);
        let last = core
            .iter()
            .rev()
            .find(names)
            .or_else(|| core.last())
            .copied();
        let head = last.map_or(0, |at| 1 << at);
        let all: Vec<usize> = core
            .iter()
            .chain(&around)
            .copied()
            .filter(|at| *at < own)
            .collect();
        let whole = Bag {
            ids: ids.clone(),
            core: mask(&all),
            around: mask(
                &around
                    .iter()
                    .copied()
                    .filter(|at| *at >= own)
                    .collect::<Vec<_>>(),
            ),
            head: all.iter().max().map_or(0, |at| 1 << at),
            weak: 0,
        };
        let weak = ids
            .iter()
            .enumerate()
            .filter(|(_, id)| self.weak.contains(id) || self.qualifiers.contains(id))
            .fold(0, |mask, (at, _)| mask | 1 << at);
        Split {
            bag: Bag {
                ids,
                core: mask(&core),
                around: mask(&around),
                head,
                weak,
            },
            whole,
            core,
            around,
        }
    }

    /// Whether the words before and after "with" name a thing each, and no name holds both.
    pub(crate) fn names_two(&self, segment: &Segment, at: usize) -> bool {
        let whole = self.names.best(&self.split(segment).whole, &|_| true);
        if whole.is_some_and(|hit| hit.left == 0) {
            return false;
        }
        let part = |tokens: &[Token]| Segment {
            tokens: tokens.to_vec(),
            ..Segment::default()
        };
        let named = |tokens: &[Token]| {
            let split = self.split(&part(tokens));
            self.names
                .best(&split.bag, &|_| true)
                .is_some_and(|hit| hit.left == 0)
        };
        let accessories =
            |token: &Token| token.filler || self.asides.accessories.contains(&token.id);
        !segment.tokens[at + 1..].iter().all(accessories)
            && named(&segment.tokens[..at])
            && named(&segment.tokens[at + 1..])
    }

    /// Where "with new seals" begins, if the words end with it: it tells of the work, not of the
    /// thing.
    fn accessories_from(&self, tokens: &[&Token]) -> usize {
        let from = tokens
            .iter()
            .position(|token| self.asides.with.contains(&token.id));
        from.filter(|from| {
            let after = &tokens[*from + 1..];
            after
                .iter()
                .any(|token| self.asides.fresh.contains(&token.id))
                && after
                    .iter()
                    .all(|token| token.filler || self.asides.accessories.contains(&token.id))
        })
        .unwrap_or(tokens.len())
    }

    fn read(&self, segment: &Segment, known: &[Context]) -> Option<Reading> {
        let split = self.split(segment);
        if split.core.is_empty() {
            return self.bare(segment);
        }
        let guessed = split
            .core
            .iter()
            .any(|at| segment.tokens.get(*at).is_some_and(|token| token.guessed));
        let mut reading = self.find(segment, &split, known)?;
        if guessed && reading.sure == Sure::Sure {
            reading.sure = Sure::Likely;
        }
        if reading.kind() == Some(Kind::PutIn) {
            self.put_in_place(&mut reading, &split);
        }
        self.kind_by_head(&mut reading, &split);
        Some(self.unplugged(reading, segment))
    }

    /// "isolation test and release", "rack and pinion": one name that an "and" had parted.
    fn joined(
        &self,
        first: &Segment,
        second: &Segment,
        readings: (&Option<Reading>, &Option<Reading>),
    ) -> Option<Reading> {
        let sort = |reading: &Option<Reading>| reading.as_ref().and_then(|reading| reading.sort);
        let before = sort(readings.0);
        // What is known for itself stays a thing of its own, save where it is the same thing again.
        let stands = |reading: &Reading| {
            let again = reading.sure == Sure::Likely && reading.itself && reading.sort == before;
            reading.sure != Sure::Unknown && !again
        };
        if readings.1.as_ref().is_some_and(stands) {
            return None;
        }
        let mut both = first.clone();
        both.take_in(second.clone());
        let hit = self.names.best(&self.split(&both).whole, &|_| true)?;
        let work = self.sort(hit.sort).kind() == Some(Kind::Work);
        (hit.left == 0 && (work || before == Some(hit.sort))).then(|| self.reading_of(hit))
    }

    /// Bolts, seals and plugs that are named with their thing are bolts, seals and plugs.
    fn kind_by_head(&self, reading: &mut Reading, split: &Split) {
        let part = matches!(reading.kinds.as_slice(), [Some(Kind::Part | Kind::Cover)]);
        let keeps = reading.sort.is_some_and(|at| self.sort(at).keeps_kind);
        if !part || !reading.itself || keeps {
            return;
        }
        let Some((head, _)) = self.head_of(split) else {
            return;
        };
        let electric = matches!(
            reading.system,
            Branch::Electrical | Branch::Adas | Branch::Lamps | Branch::Climate
        );
        let renames = match head.keep {
            Keep::Fixing => head.kind == Kind::Fasteners,
            Keep::Joint => true,
            Keep::Electric => head.kind == Kind::Connector && electric,
            _ => false,
        };
        if renames {
            reading.kinds = vec![Some(head.kind)];
        }
    }

    /// "airbag unplugged", "fuel pump unplugged": the plug is off, the thing stays.
    fn unplugged(&self, reading: Reading, segment: &Segment) -> Reading {
        let said = segment
            .tokens
            .iter()
            .any(|token| self.asides.unplugged.contains(&token.id));
        if !said || reading.kinds.as_slice() != [Some(Kind::Part)] || reading.sure == Sure::Unknown
        {
            return reading;
        }
        let head = Head {
            kind: Kind::Connector,
            keep: Keep::Electric,
            shut: None,
            system: None,
        };
        self.derive(&reading, &head)
    }

    /// A segment of numbers, sides or words that name nothing.
    fn bare(&self, segment: &Segment) -> Option<Reading> {
        let hit = self.names.best(&self.all_words(segment), &|_| true)?;
        (hit.left == 0 && hit.mask != 0).then(|| self.reading_of(hit))
    }

    /// A bag in which every word counts, fillers too: "battery disconnected", "off", "both".
    fn all_words(&self, segment: &Segment) -> Bag {
        let ids: Vec<u32> = segment
            .tokens
            .iter()
            .take(Bag::MOST)
            .map(|token| token.id)
            .collect();
        let all = segment
            .tokens
            .iter()
            .take(Bag::MOST)
            .enumerate()
            .filter(|(_, token)| !token.side && self.words.role_of(token.id).number.is_none())
            .fold(0, |mask, (at, _)| mask | 1 << at);
        Bag {
            ids,
            core: all,
            around: 0,
            head: all,
            weak: 0,
        }
    }

    fn find(&self, segment: &Segment, split: &Split, known: &[Context]) -> Option<Reading> {
        let whole = self.names.best(&split.whole, &|_| true);
        // "downpipe" is a name of two words though one of them counts for little.
        let full = whole.filter(|hit| hit.left == 0);
        let alone = full.is_none_or(|hit| hit.mask.count_ones() < 2);
        // "hose and pipe front right" tells a corner: it is no front pipe of an exhaust.
        let corner = segment
            .sides
            .iter()
            .copied()
            .reduce(Side::join)
            .is_some_and(|side| side.code().contains('-'));
        let laxer = |short: &Reading| {
            corner && short.safety && full.is_some_and(|hit| !self.sort(hit.sort).safety)
        };
        if (alone || corner)
            && let Some(short) = self.short_word(split, known)
            && (alone || laxer(&short))
        {
            return Some(short);
        }
        if let Some(hit) = whole
            && hit.left == 0
        {
            return Some(self.reading_of(hit));
        }
        if self.is_none(segment, split) {
            return Some(Reading::none());
        }
        if let Some(work) = self.work_named(split) {
            return Some(work);
        }
        let mut hit = self.names.best(&split.bag, &|_| true);
        if hit.is_some_and(|hit| {
            self.sort(hit.sort).kind() == Some(Kind::PutIn) && self.leaves_known(split, hit.left)
        }) {
            hit = self.names.best(&split.bag, &|sort| {
                self.sort(sort).kind() != Some(Kind::PutIn)
            });
        }
        if let Some(hit) = hit
            && hit.left == 0
        {
            return Some(self.reading_of(hit));
        }
        if let Some(work) = self.verb(split) {
            return Some(work);
        }
        let derived = self.by_head(split, known);
        if let Some(hit) = hit {
            let fuller = derived
                .as_ref()
                .is_some_and(|derived| derived.sure == Sure::Sure);
            let weakly = hit.left & !split.bag.weak == 0;
            if weakly || !fuller {
                return Some(self.guard(self.reading_of(hit), split, hit));
            }
        }
        if derived.is_some() {
            return derived;
        }
        if let Some(hit) = self.names.any(&split.bag, &|sort| {
            self.sort(sort).kind() != Some(Kind::Work)
        }) {
            let mut reading = self.guard(self.reading_of(hit), split, hit);
            if self.sort(hit.sort).kind() == Some(Kind::PutIn) && self.leaves_known(split, hit.left)
            {
                reading = Reading::unknown(None);
            }
            return Some(reading);
        }
        Some(Reading::unknown(self.head_kind(split)))
    }

    /// "calibrate the acc radar": work, where a line begins with a word of work.
    fn work_named(&self, split: &Split) -> Option<Reading> {
        let first = *split.core.first()?;
        if !self.work_first.contains(&split.bag.ids[first]) || self.names_a_thing(split, first) {
            return None;
        }
        let work = |sort: u32| self.sort(sort).kind() == Some(Kind::Work);
        let hit = self.names.any(&split.bag, &work)?;
        let full = self
            .names
            .best(&split.bag, &|sort| !work(sort))
            .is_some_and(|hit| hit.left == 0);
        (hit.mask & (1 << first) != 0 && hit.solid >= 2 && !full).then(|| self.reading_of(hit))
    }

    /// "torque arm" is no work on an arm: a first word of work that names a thing with the next.
    fn names_a_thing(&self, split: &Split, first: usize) -> bool {
        split
            .core
            .get(1)
            .filter(|second| **second == first + 1)
            .is_some_and(|second| {
                let two = Bag {
                    core: 1 << first | 1 << second,
                    around: 0,
                    head: 1 << second,
                    ..split.bag.clone()
                };
                let thing = |sort: u32| self.sort(sort).kind() != Some(Kind::Work);
                self.names
                    .best(&two, &thing)
                    .is_some_and(|hit| hit.left == 0)
            })
    }

    /// Whether words of the core are left that mean something to the trade and are no tools.
    fn leaves_known(&self, split: &Split, left: u32) -> bool {
        split.bag.ids.iter().enumerate().any(|(at, id)| {
            left & (1 << at) != 0 && *id != STRANGE && !self.tool_words.contains(id)
        })
    }

    /// A word said alone, read by the thing named before it.
    fn short_word(&self, split: &Split, known: &[Context]) -> Option<Reading> {
        let [at] = split.core.as_slice() else {
            return None;
        };
        if !split.around.is_empty() {
            return None;
        }
        let none = FxHashMap::default();
        let by = self.short.get(&split.bag.ids[*at]).unwrap_or(&none);
        let short = known.iter().find_map(|context| {
            let sort = by
                .get(&self.sort(context.sort).id)
                .or_else(|| by.get(context.system.code()))?;
            let mut out = self.reading_of_sort(*sort);
            self.kind_by_head(&mut out, split);
            Some(out)
        });
        short.or_else(|| self.with_words_before(split, known.first()?))
    }

    /// "battery and tray": the words of the thing before, with this one, are a name.
    fn with_words_before(&self, split: &Split, context: &Context) -> Option<Reading> {
        let (head, _) = self.head_of(split)?;
        if context.words.is_empty() {
            return None;
        }
        let mut both = context.words.clone();
        both.extend(split.core.iter().map(|at| split.bag.ids[*at]));
        let mut out = self.reading_of_sort(self.names.exact(&both)?);
        self.kind_by_head(&mut out, split);
        (head.kind == Kind::Part || out.kind() == Some(head.kind)).then_some(out)
    }

    fn is_none(&self, segment: &Segment, split: &Split) -> bool {
        let ids: Vec<u32> = segment
            .tokens
            .iter()
            .filter(|token| self.words.role_of(token.id).number.is_none())
            .map(|token| token.id)
            .collect();
        let begins = (1..=3.min(ids.len())).any(|length| self.none_first.contains(&ids[..length]));
        let ends = ids.last().is_some_and(|id| self.none_last.contains(id));
        let named = |bag: &Bag| {
            self.none_names
                .best(bag, &|_| true)
                .is_some_and(|hit| hit.left == 0)
        };
        begins || ends || named(&split.whole) || named(&split.bag)
    }

    /// "check the hose", "torque the carrier": work on the thing named after it.
    fn verb(&self, split: &Split) -> Option<Reading> {
        let first = *split.core.first()?;
        let owed = *self.verbs.get(&split.bag.ids[first])?;
        if self.names_a_thing(split, first) {
            return None;
        }
        let mut bag = split.bag.clone();
        bag.core &= !(1 << first);
        let hit = self.names.any(&bag, &|_| true)?;
        let mut out = self.reading_of(hit);
        if out.kind() == Some(Kind::Work) {
            return Some(out);
        }
        out.kinds = vec![Some(Kind::Work)];
        out.itself = false;
        out.owed = owed;
        out.earlier.clear();
        out.caution.clear();
        out.sure = Sure::Likely;
        out.off = self.gates_of(owed, &[]).with(Gate::HandOver);
        Some(out)
    }

    fn head_of<'a>(&'a self, split: &Split) -> Option<(&'a Head, usize)> {
        let named = split
            .core
            .iter()
            .rev()
            .skip_while(|at| self.qualifiers.contains(&split.bag.ids[**at]))
            .count();
        let core = &split.core[..named];
        (1..=3.min(core.len())).rev().find_map(|length| {
            let tail = &core[core.len() - length..];
            let ids: Vec<u32> = tail.iter().map(|at| split.bag.ids[*at]).collect();
            self.heads
                .get(ids.as_slice())
                .map(|at| (&self.head_rules[*at as usize], length))
        })
    }

    fn head_kind(&self, split: &Split) -> Option<Kind> {
        self.head_of(split).map(|(head, _)| head.kind)
    }

    /// The thing that the last word makes of what stands before it, or around it, or was named.
    fn by_head(&self, split: &Split, known: &[Context]) -> Option<Reading> {
        let (head, length) = self.head_of(split)?;
        let rest = &split.core[..split.core.len() - length];
        if rest.is_empty() {
            if !split.around.is_empty() {
                let of = self.thing(&split.bag.ids, &split.around, 0)?;
                return Some(self.derive(&of, head));
            }
            let context = known.first()?;

            let mut out = self.derive(&context.reading, head);
            out.sure = out.sure.max(Sure::Likely);
            return Some(out);
        }
        let around = split.bag.around;
        let of = self.thing(&split.bag.ids, rest, around)?;
        Some(self.derive(&of, head))
    }

    /// The thing that some of the words name.
    fn thing(&self, ids: &[u32], places: &[usize], around: u32) -> Option<Reading> {
        let bag = Bag {
            ids: ids.to_vec(),
            core: places.iter().fold(0, |mask, at| mask | 1 << at),
            around,
            head: places.iter().max().map_or(0, |at| 1 << at),
            weak: 0,
        };
        let real = |sort: u32| {
            !matches!(
                self.sort(sort).kind(),
                Some(Kind::Work | Kind::PutIn) | None
            )
        };
        if let Some(hit) = self.names.best(&bag, &real)
            && hit.left == 0
        {
            return Some(self.reading_of(hit));
        }
        // "brake hose bracket" inside "brake hose bracket bolt" may itself be made by its last word.
        let inner = Split {
            core: places.to_vec(),
            around: Vec::new(),
            whole: bag.clone(),
            bag: Bag {
                around: 0,
                ..bag.clone()
            },
        };
        if places.len() > 1
            && let Some(made) = self.by_head(&inner, &[])
            && made.sure == Sure::Sure
        {
            return Some(made);
        }
        self.names.any(&bag, &real).map(|hit| self.reading_of(hit))
    }

    /// A reading that leaves words over is never laxer than what those words may name.
    fn guard(&self, mut reading: Reading, split: &Split, hit: Hit) -> Reading {
        reading.sure = reading.sure.max(Sure::Likely);
        if reading.safety || hit.left == 0 {
            return reading;
        }
        let left: Vec<u32> = split
            .bag
            .ids
            .iter()
            .enumerate()
            .filter(|(at, _)| hit.left & (1 << at) != 0)
            .map(|(_, id)| *id)
            .collect();
        let marked = self
            .markers
            .iter()
            .any(|marker| !marker.is_empty() && marker.iter().all(|id| left.contains(id)));
        if marked {
            reading.safety = true;
            reading.off = reading.off.with(Gate::Road);
            reading.owed = reading.owed.and(self.kept.second_check);
        }
        reading
    }

    /// Where a thing was left in decides what it is left in of.
    fn put_in_place(&self, reading: &mut Reading, split: &Split) {
        let Some(sort) = reading.sort.filter(|_| !split.around.is_empty()) else {
            return;
        };
        let named = self.names.best(&split.bag, &|at| at == sort);
        if named.is_some_and(|hit| hit.mask & split.bag.around != 0) {
            return;
        }
        let Some(of) = self.thing(&split.bag.ids, &split.around, 0) else {
            return;
        };
        if self.sort(sort).anywhere {
            reading.system = of.system;
        }
        reading.sure = reading.sure.max(Sure::Likely);
        if let Some((_, at)) = self
            .put_in_at
            .iter()
            .find(|(system, _)| *system == of.system)
        {
            let stricter = self.sort(*at);
            reading.safety |= stricter.safety;
            reading.off = reading.off.and(stricter.off);
            reading.owed = reading.owed.and(stricter.owed);
        } else if matches!(of.system, Branch::HighVoltage | Branch::Restraints) {
            reading.safety = true;
            reading.off = reading.off.with(Gate::GoLive);
        }
    }

    /// Whether a number between two runs of words begins another thing.
    pub(crate) fn parts_before(&self, before: &[Token], after: &[Token]) -> bool {
        let segment = |tokens: &[Token]| Segment {
            tokens: tokens.to_vec(),
            ..Segment::default()
        };
        let second = self.split(&segment(after));
        let Some((head, _)) = self.head_of(&second) else {
            return false;
        };
        if !matches!(head.kind, Kind::Fasteners | Kind::Clips) {
            return false;
        }
        let first = self.split(&segment(before));
        let part = self
            .names
            .best(&first.bag, &|_| true)
            .map(|hit| self.sort(hit.sort).kind());
        matches!(part, Some(Some(kind)) if !matches!(kind, Kind::Cover | Kind::Fasteners | Kind::Clips | Kind::Work | Kind::PutIn))
    }

    /// Changes readings that other things of the same line decide: a caliper that comes off on
    /// the way to its disc is hung up with its hose on.
    pub(crate) fn along(&self, things: &mut [Said]) {
        let named: Vec<Code> = things.iter().filter_map(|said| said.sort.clone()).collect();
        for said in things.iter_mut() {
            let Some(at) = said.sort.as_ref().and_then(|sort| self.sort_ids.get(sort)) else {
                continue;
            };
            let sort = self.sort(*at);
            let Some(other) = sort.reads_as.as_ref().and_then(|id| self.sort_ids.get(id)) else {
                continue;
            };
            let has = |list: &[Code]| list.iter().any(|id| named.contains(id));
            if has(&sort.along_with) && !has(&sort.unless_with) && self.is_itself(said, *at) {
                let reading = self.reading_of_sort(*other);
                self.fill(said, &reading);
                said.sort = Some(self.sort(*other).id.clone());
            }
        }
    }

    fn is_itself(&self, said: &Said, sort: u32) -> bool {
        said.kind == self.sort(sort).kind() && said.works == self.sort(sort).owed
    }

    fn fill(&self, said: &mut Said, reading: &Reading) {
        let back = match reading.kind() {
            None | Some(Kind::Work) => Gates::NONE,
            _ if reading.sure == Sure::Unknown && reading.safety => Gates::ALL,
            _ => self.gates_of(reading.owed, &reading.earlier),
        };
        said.system = reading.system;
        said.zone = reading.zone;
        said.safety = reading.safety;
        said.works = reading.owed;
        said.brings = reading.brings;
        said.owed = reading
            .owed
            .iter()
            .filter_map(|at| {
                let work = self.works.get(at)?;
                Some(Owes {
                    work: work.code.clone(),
                    shuts: self.gates_of(WorkSet::one(at), &reading.earlier),
                })
            })
            .collect();
        said.gates_shut_off = reading.off;
        said.gates_shut_back = back;
        said.caution.clone_from(&reading.caution);
        said.sure = reading.sure;
        said.grade = reading.grade;
        said.source = reading.source.clone();
    }

    fn say(&self, line: &str, segment: &Segment, reading: &Reading) -> Vec<Said> {
        let (count, mend) = match segment.count() {
            Ok(count) => (count, None),
            Err(why) => (None, Some(why)),
        };
        let kit = reading.kinds.len() > 1;
        let mut mend = mend.map(str::to_string);
        if mend.is_none() && reading.sure == Sure::Unknown {
            mend = Some(say::not_known().to_string());
        }
        let side = segment.sides.iter().copied().reduce(Side::join);
        let mut said = Said {
            place: segment.place.clone(),
            text: String::new(),
            sort: reading
                .sort
                .filter(|_| reading.itself)
                .map(|at| self.sort(at).id.clone()),
            kind: reading.kind(),
            count: count.or(kit.then_some(Count::Set)),
            sizes: segment
                .sizes
                .iter()
                .map(|place| line[place.clone()].to_string())
                .collect(),
            torque_typed: segment
                .torque
                .as_ref()
                .map(|(place, _)| line[place.clone()].to_string()),
            torque_newton_metres: segment.torque.as_ref().and_then(|(_, value)| *value),
            litres: segment.litres,
            side,
            system: reading.system,
            zone: reading.zone,
            safety: reading.safety,
            owed: Vec::new(),
            gates_shut_off: Gates::NONE,
            gates_shut_back: Gates::NONE,
            caution: Vec::new(),
            sure: reading.sure,
            happens: self.happens(segment),
            said_done: Vec::new(),
            mend,
            grade: reading.grade,
            source: reading.source.clone(),
            works: WorkSet::default(),
            brings: WorkSet::default(),
            plural: segment.tokens.iter().any(|token| token.plural),
        };
        self.fill(&mut said, reading);
        if said.mend.is_some() && said.sure != Sure::Unknown {
            // A count that cannot be read leaves open what is out: nothing is let through.
            said.sure = Sure::Unknown;
            said.gates_shut_off = Gates::ALL;
        }
        self.single(&mut said, segment);
        self.round_off(&mut said, segment);
        said.said_done = self.said_done(segment, &said);
        reading
            .kinds
            .iter()
            .map(|kind| Said {
                kind: *kind,
                ..said.clone()
            })
            .collect()
    }

    /// One bolt, one bulb, one thing left in, named in the singular, is one.
    fn single(&self, said: &mut Said, segment: &Segment) {
        let counted = matches!(said.kind, Some(Kind::Fasteners | Kind::PutIn))
            || said.sort.as_deref() == Some("headlamp-bulb");
        let plural = segment
            .tokens
            .iter()
            .filter(|token| self.is_solid(token))
            .any(|token| token.plural);
        if counted && said.count.is_none() && !plural && said.mend.is_none() {
            said.count = Some(Count::Of(1));
        }
    }

    /// Four wheels are all of them.
    fn round_off(&self, said: &mut Said, segment: &Segment) {
        let four = said.count == Some(Count::Of(4)) && said.side.is_none();
        let round = matches!(
            said.sort.as_deref(),
            Some("wheel" | "tyre" | "hub-cap" | "tpms")
        );
        let aligned = said.sort.as_deref() == Some("work-alignment")
            && segment.tokens.iter().any(|token| {
                Some(token.id) == self.words.id("4")
                    || self.words.role_of(token.id).number == Some(4)
            });
        if four && round || aligned {
            said.side = Some(Side::All);
        }
    }

    fn happens(&self, segment: &Segment) -> Option<Happens> {
        let asides = &self.asides;
        let mut said = None;
        for token in segment.tokens.iter().chain(&segment.extra) {
            let id = &token.id;
            let now = if asides.drained.contains(id) {
                Happens::Drained
            } else if asides.loosened.contains(id) {
                Happens::Loosened
            } else if asides.opened.contains(id) {
                Happens::Opened
            } else if asides.disturbed.contains(id) {
                Happens::Disturbed
            } else if asides.off.contains(id) {
                Happens::ComesOff
            } else if asides.back.contains(id) {
                Happens::GoesBack
            } else {
                continue;
            };
            said = Some(now);
        }
        said
    }

    /// Works that the line itself says were done.
    fn said_done(&self, segment: &Segment, said: &Said) -> Vec<Code> {
        let all = || segment.tokens.iter().chain(&segment.extra);
        let mut done = WorkSet::default();
        if all().any(|token| self.asides.torqued.contains(&token.id)) {
            done = done.and(self.set(&[
                "torque",
                "wheel-torque",
                "axle-nut-torque",
                "torque-at-height",
            ]));
        }
        let is_new = |token: &Token| self.asides.fresh.contains(&token.id);
        let seal = |token: &Token| self.asides.seals.contains(&token.id) && !token.filler;
        let bolt = |token: &Token| self.asides.bolts.contains(&token.id);
        let tokens: Vec<&Token> = all().collect();
        for (at, _) in tokens.iter().enumerate().filter(|(_, token)| is_new(token)) {
            let after = &tokens[at..];
            if after.iter().any(|token| seal(token)) || said.kind == Some(Kind::Seal) {
                done = done.and(self.kept.new_seal);
            }
            if after.iter().any(|token| bolt(token)) {
                done = done.and(self.kept.new_fasteners);
            }
        }
        if segment.new_seal {
            done = done.and(self.kept.new_seal);
        }
        if segment.new_fasteners {
            done = done.and(self.kept.new_fasteners);
        }
        done.iter().map(|at| self.works[at].code.clone()).collect()
    }
}

/// Gives each thing the words up to the next, and sides and counts that were said for all.
fn spread(line: &str, things: &mut [Said]) {
    let starts: Vec<usize> = things.iter().map(|said| said.place.start).collect();
    for (at, said) in things.iter_mut().enumerate() {
        let start = if starts[at] == starts[0] {
            0
        } else {
            starts[at]
        };
        let next = starts.iter().copied().find(|next| *next > starts[at]);
        said.place = start..next.unwrap_or(line.len());
        said.text = line[said.place.clone()]
            .trim()
            .trim_end_matches([',', '+', '&', ';', '/'])
            .trim()
            .to_string();
    }
    let low = |side: Option<Side>| matches!(side, Some(Side::Upper | Side::Lower));
    let sided = |side: Option<Side>| {
        side.filter(|side| {
            !matches!(
                side,
                Side::Upper | Side::Lower | Side::Driver | Side::Passenger
            )
        })
    };
    let all: Vec<Option<Side>> = things.iter().map(|said| sided(said.side)).collect();
    for at in 0..things.len() {
        let side = things[at].side;
        if (side.is_none() || low(side)) && things[at].kind.is_some() {
            let before = all[..at].iter().rev().find_map(|side| *side);
            let other = before.or_else(|| all[at..].iter().find_map(|side| *side));
            things[at].side = side.into_iter().chain(other).reduce(Side::join);
        }
    }
    let any = things
        .iter()
        .any(|said| matches!(said.count, Some(Count::Of(_))));
    if things.len() > 1 && any {
        for said in things
            .iter_mut()
            .filter(|said| said.count.is_none() && said.mend.is_none() && !said.plural)
        {
            said.count = Some(Count::Of(1));
        }
    }
}
