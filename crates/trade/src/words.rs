//! Words: plurals, words of one meaning, German compounds, misspellings.

use crate::fold::fold;
use crate::side::Side;
use crate::table::{GermanFile, WordFile};
use rustc_hash::{FxHashMap, FxHashSet};
use std::ops::Range;

/// A word that stands for itself and is known to nobody.
pub(crate) const STRANGE: u32 = u32::MAX;

/// What a word does besides naming.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default)]
pub(crate) struct Role {
    pub filler: bool,
    pub place: bool,
    pub join: bool,
    pub number: Option<u16>,
}

/// One word of a line, as it counts for finding.
#[derive(Debug, Clone, PartialEq, Eq)]
pub(crate) struct Token {
    pub id: u32,
    pub place: Range<usize>,
    /// Guessed from a misspelling or a compound that was not listed.
    pub guessed: bool,
    /// Typed in the plural.
    pub plural: bool,
    /// Not to be accounted for.
    pub filler: bool,
    /// A side word: may name, need not.
    pub side: bool,
    /// Stands in brackets.
    pub bracketed: bool,
}

/// What a word was looked up as.
struct Found {
    ids: Vec<u32>,
    guessed: bool,
    plural: bool,
}

/// All that is known of words.
#[derive(Debug, Clone, Default)]
pub(crate) struct Dictionary {
    ids: FxHashMap<Box<str>, u32>,
    words: Vec<Box<str>>,
    roles: Vec<Role>,
    /// The longest run that begins with this word and means something else.
    runs: Vec<u8>,
    same: FxHashMap<Box<[u32]>, Box<[u32]>>,
    sides: FxHashMap<Box<[u32]>, Side>,
    parts: FxHashMap<Box<str>, Box<[u32]>>,
    /// Words by what is left when one letter is taken out.
    without: FxHashMap<Box<str>, Vec<u32>>,
}

/// The singular of a plural, if it is known.
fn singular<'a>(word: &'a str, known: impl Fn(&str) -> bool) -> Option<std::borrow::Cow<'a, str>> {
    // "links" is left in German; "drop links" stand in the table of words.
    if word.len() <= 3 || word.ends_with("ss") || !word.ends_with('s') || word == "links" {
        return None;
    }
    let cut = &word[..word.len() - 1];
    if known(cut) {
        return Some(cut.into());
    }
    if let Some(cut) = word.strip_suffix("es")
        && known(cut)
    {
        return Some(cut.into());
    }
    if let Some(cut) = word.strip_suffix("ies") {
        let y = format!("{cut}y");
        if known(&y) {
            return Some(y.into());
        }
    }
    None
}

/// The singular of a German plural, if both are words of German names.
fn german_singular(word: &str, known: &FxHashSet<String>) -> Option<String> {
    if !known.contains(word) {
        return None;
    }
    ["n", "en", "e", "er", ""]
        .into_iter()
        .filter_map(|ending| word.strip_suffix(ending))
        .filter(|cut| cut.len() >= 3)
        .find_map(|cut| {
            let plain = plain(cut).filter(|plain| known.contains(plain));
            let same = (cut != word && known.contains(cut)).then(|| cut.to_string());
            same.or(plain)
        })
}

/// "belaeg" as "belag": the umlaut of a plural taken back.
fn plain(word: &str) -> Option<String> {
    let at = ["aeu", "ae", "oe", "ue"]
        .into_iter()
        .filter_map(|pair| word.rfind(pair))
        .max()?;
    let mut out = word.to_string();
    out.remove(at + 1);
    Some(out)
}

impl Dictionary {
    /// Takes in words, in two rounds: all raw words first, so that plurals find their singular.
    pub fn build(
        raw: &FxHashSet<String>,
        said_in_german: &FxHashSet<String>,
        file: &WordFile,
        german: &GermanFile,
    ) -> Dictionary {
        let mut dictionary = Dictionary::default();
        let mut sorted: Vec<_> = raw.iter().collect();
        sorted.sort_unstable_by_key(|word| (word.len(), word.as_str()));
        for word in sorted {
            let stem = singular(word, |cut| raw.contains(cut))
                .map(std::borrow::Cow::into_owned)
                .or_else(|| german_singular(word, said_in_german))
                .and_then(|stem| dictionary.ids.get(&*stem).copied());
            let id = stem.unwrap_or_else(|| {
                let id = u32::try_from(dictionary.words.len()).unwrap_or(STRANGE);
                dictionary.words.push(word.as_str().into());
                id
            });
            dictionary.ids.insert(word.as_str().into(), id);
        }
        let count = dictionary.words.len();
        dictionary.roles = vec![Role::default(); count];
        dictionary.runs = vec![0; count];
        dictionary.roles_from(file);
        dictionary.same_from(file);
        dictionary.sides_from(file);
        for (part, words) in &german.parts {
            let ids = dictionary.name(words);
            dictionary.parts.insert(fold(part).into(), ids.into());
        }
        dictionary.spelling();
        dictionary
    }

    /// Takes in the words of a shop's own table.
    pub fn learn(&mut self, word: &str) -> u32 {
        if let Some(id) = self.ids.get(word) {
            return *id;
        }
        let stem = singular(word, |cut| self.ids.contains_key(cut))
            .and_then(|stem| self.ids.get(&*stem).copied());
        let id = stem.unwrap_or_else(|| {
            let id = u32::try_from(self.words.len()).unwrap_or(STRANGE);
            self.words.push(word.into());
            self.roles.push(Role::default());
            self.runs.push(0);
            id
        });
        self.ids.insert(word.into(), id);
        id
    }

    fn roles_from(&mut self, file: &WordFile) {
        for word in &file.filler.words {
            self.role(word, |role| role.filler = true);
        }
        for word in &file.places.words {
            self.role(word, |role| role.place = true);
        }
        for word in &file.joins.words {
            self.role(word, |role| role.join = true);
        }
        for (word, number) in &file.numbers {
            self.role(word, |role| role.number = Some(*number));
        }
    }

    fn role(&mut self, word: &str, set: impl Fn(&mut Role)) {
        for part in fold(word).split_whitespace() {
            if let Some(id) = self.ids.get(part) {
                set(&mut self.roles[*id as usize]);
            }
        }
    }

    fn same_from(&mut self, file: &WordFile) {
        for (to, from) in &file.same {
            let to: Vec<u32> = self.raw_ids(to);
            for words in from {
                let key = self.raw_ids(words);
                if key.is_empty() || key == to {
                    continue;
                }
                self.runs_at_least(key[0], key.len());
                self.same.insert(key.into(), to.clone().into());
            }
        }
    }

    fn runs_at_least(&mut self, id: u32, length: usize) {
        let run = &mut self.runs[id as usize];
        *run = (*run).max(u8::try_from(length).unwrap_or(u8::MAX));
    }

    fn sides_from(&mut self, file: &WordFile) {
        for (words, side) in &file.sides {
            let Some(side) = Side::read(side) else {
                continue;
            };
            let mut keys = vec![self.raw_ids(words)];
            keys.push(self.name(words));
            for key in keys {
                self.runs_at_least(key[0], key.len());
                self.sides.insert(key.into(), side);
            }
        }
    }

    fn raw_ids(&self, words: &str) -> Vec<u32> {
        words
            .split_whitespace()
            .map(|word| self.ids.get(&*fold(word)).copied().unwrap_or(STRANGE))
            .collect()
    }

    fn spelling(&mut self) {
        for (id, word) in self.words.iter().enumerate() {
            if word.len() < 4 || !word.bytes().all(|b| b.is_ascii_lowercase()) {
                continue;
            }
            let id = u32::try_from(id).unwrap_or(STRANGE);
            self.without.entry(word.clone()).or_default().push(id);
            for at in 0..word.len() {
                let cut = format!("{}{}", &word[..at], &word[at + 1..]);
                self.without.entry(cut.into()).or_default().push(id);
            }
        }
    }

    /// The words of a name of the table, as they are compared.
    pub fn name(&self, words: &str) -> Vec<u32> {
        let mut ids: Vec<u32> = crate::amounts::words_only(words, &crate::chunks::cut(words))
            .iter()
            .flat_map(|word| self.look(word).ids)
            .collect();
        for _ in 0..2 {
            let mut out = Vec::with_capacity(ids.len());
            let mut at = 0;
            while at < ids.len() {
                match self.run(&ids[at..]) {
                    Some((length, to)) => {
                        out.extend_from_slice(to);
                        at += length;
                    }
                    None => {
                        out.push(ids[at]);
                        at += 1;
                    }
                }
            }
            if out == ids {
                break;
            }
            ids = out;
        }
        self.side_ids(&ids)
    }

    /// Side words of a name in the form in which a line has them: top as upper.
    fn side_ids(&self, ids: &[u32]) -> Vec<u32> {
        let mut out = Vec::with_capacity(ids.len());
        let mut at = 0;
        while at < ids.len() {
            let longest = self.runs.get(ids[at] as usize).copied().unwrap_or(0) as usize;
            let hit = (1..=longest.min(ids.len() - at)).rev().find_map(|length| {
                self.sides
                    .get(&ids[at..at + length])
                    .map(|side| (length, *side))
            });
            match hit {
                Some((length, side)) => {
                    out.extend(side.code().split('-').filter_map(|word| self.id(word)));
                    at += length;
                }
                None => {
                    out.push(ids[at]);
                    at += 1;
                }
            }
        }
        out
    }

    fn run(&self, ids: &[u32]) -> Option<(usize, &[u32])> {
        let longest = *self.runs.get(ids[0] as usize)? as usize;
        (1..=longest.min(ids.len())).rev().find_map(|length| {
            self.same
                .get(&ids[..length])
                .map(|to| (length, to.as_ref()))
        })
    }

    /// The role of a word.
    pub fn role_of(&self, id: u32) -> Role {
        self.roles.get(id as usize).copied().unwrap_or_default()
    }

    /// Whether a word is known as typed.
    pub fn knows(&self, word: &str) -> bool {
        self.ids.contains_key(word) || self.parts.contains_key(word)
    }

    /// Whether a word names a side.
    pub fn is_side(&self, id: u32) -> bool {
        self.sides.contains_key(&[id][..])
    }

    /// The id of a word that is in the table.
    pub fn id(&self, word: &str) -> Option<u32> {
        self.ids.get(word).copied()
    }

    fn look(&self, word: &str) -> Found {
        let one = |id: u32, plural: bool| Found {
            ids: vec![id],
            guessed: false,
            plural,
        };
        if let Some(id) = self.ids.get(word) {
            return one(*id, &*self.words[*id as usize] != word);
        }
        if let Some(ids) = self.parts.get(word) {
            return Found {
                ids: ids.to_vec(),
                guessed: false,
                plural: word.ends_with("en") || word.ends_with('s'),
            };
        }
        if let Some(stem) = singular(word, |cut| self.ids.contains_key(cut)) {
            return one(self.ids[&*stem], true);
        }
        if word.len() > 3
            && let Some(found) = self.inflected(word)
        {
            return found;
        }
        if word.len() >= 6
            && let Some((ids, sure)) = self.compound(word)
        {
            return Found {
                ids,
                guessed: !sure,
                plural: word.ends_with("en") || word.ends_with('s'),
            };
        }
        if let Some(id) = self.nearest(word) {
            return Found {
                ids: vec![id],
                guessed: true,
                plural: word.ends_with('s'),
            };
        }
        one(STRANGE, word.ends_with('s'))
    }

    fn inflected(&self, word: &str) -> Option<Found> {
        let known = |cut: &str| -> Option<Vec<u32>> {
            self.ids
                .get(cut)
                .map(|id| vec![*id])
                .or_else(|| self.parts.get(cut).map(|ids| ids.to_vec()))
        };
        ["n", "en", "e", "er", "es", "s", "ern", ""]
            .into_iter()
            .filter_map(|ending| word.strip_suffix(ending))
            .filter(|cut| cut.len() >= 4)
            .find_map(|cut| known(cut).or_else(|| plain(cut).and_then(|cut| known(&cut))))
            .map(|ids| Found {
                ids,
                guessed: false,
                plural: true,
            })
    }

    /// A compound as its parts, the fewest that cover it. Sure where all parts are listed as such.
    fn compound(&self, word: &str) -> Option<(Vec<u32>, bool)> {
        if !word.is_ascii() {
            return None;
        }
        let length = word.len();
        // Cheapest way to reach each place: (parts, where from, where the part ends).
        let mut best: Vec<Option<(usize, usize, usize)>> = vec![None; length + 1];
        best[0] = Some((0, 0, 0));
        for from in 0..length {
            let Some((cost, _, _)) = best[from] else {
                continue;
            };
            for to in from + 2..=length {
                let piece = &word[from..to];
                let listed = self.parts.contains_key(piece);
                let known = piece.len() >= 4 && self.ids.contains_key(piece);
                if !listed && !known {
                    continue;
                }
                let price = cost + if listed { 10 } else { 11 };
                for link in ["", "s", "n", "en", "es", "e"] {
                    let end = to + link.len();
                    if end > length
                        || (end == length && !matches!(link, "" | "n" | "en" | "e" | "s"))
                    {
                        continue;
                    }
                    if word[to..].starts_with(link) {
                        let price = price + usize::from(!link.is_empty());
                        if best[end].is_none_or(|(known, _, _)| price < known) {
                            best[end] = Some((price, from, to));
                        }
                    }
                }
            }
        }
        let mut pieces = Vec::new();
        let mut at = length;
        while at > 0 {
            let (_, from, to) = best[at]?;
            pieces.push(&word[from..to]);
            at = from;
        }
        if pieces.len() < 2 || pieces.len() > 4 {
            return None;
        }
        pieces.reverse();
        let mut sure = true;
        let mut ids = Vec::new();
        for piece in pieces {
            match self.parts.get(piece) {
                Some(part) => ids.extend_from_slice(part),
                None => {
                    sure &= piece.len() >= 5;
                    ids.push(self.ids[piece]);
                }
            }
        }
        Some((ids, sure))
    }

    /// The nearest known word: one slip, or two in a word of eight letters or more.
    fn nearest(&self, word: &str) -> Option<u32> {
        if word.len() < 4 || !word.bytes().all(|b| b.is_ascii_lowercase()) {
            return None;
        }
        let allowed = if word.len() >= 8 { 2 } else { 1 };
        let mut best: Option<(usize, u32)> = None;
        let mut consider = |key: &str| {
            for id in self.without.get(key).into_iter().flatten() {
                let known = &self.words[*id as usize];
                if known.len() < 5 && (known.len() != word.len() || !same_ends(known, word)) {
                    continue;
                }
                let far = slips(known, word, allowed);
                if far <= allowed
                    && best.is_none_or(|(best_far, best_id)| (far, *id) < (best_far, best_id))
                {
                    best = Some((far, *id));
                }
            }
        };
        consider(word);
        for at in 0..word.len() {
            consider(&format!("{}{}", &word[..at], &word[at + 1..]));
        }
        best.map(|(_, id)| id)
    }

    /// The tokens of a run of words, with the sides they name.
    pub fn tokens(
        &self,
        words: &[(String, Range<usize>, bool, bool)],
    ) -> (Vec<Token>, Vec<(Side, Range<usize>)>) {
        let mut tokens = Vec::with_capacity(words.len() + 2);
        for (word, place, aside, bracketed) in words {
            let found = self.look(word);
            for id in found.ids {
                tokens.push(Token {
                    id,
                    place: place.clone(),
                    guessed: found.guessed,
                    plural: found.plural,
                    filler: *aside || self.role_of(id).filler,
                    side: false,
                    bracketed: *bracketed,
                });
            }
        }
        for _ in 0..2 {
            match self.same_tokens(&tokens) {
                Some(other) => tokens = other,
                None => break,
            }
        }
        self.side_tokens(tokens)
    }

    /// The tokens with runs of one meaning put in their one form; none where nothing changes.
    fn same_tokens(&self, tokens: &[Token]) -> Option<Vec<Token>> {
        let ids: Vec<u32> = tokens.iter().map(|token| token.id).collect();
        if (0..ids.len()).all(|at| self.run(&ids[at..]).is_none()) {
            return None;
        }
        let mut out = Vec::with_capacity(tokens.len());
        let mut at = 0;
        while at < tokens.len() {
            let Some((length, to)) = self.run(&ids[at..]) else {
                out.push(tokens[at].clone());
                at += 1;
                continue;
            };
            let of = &tokens[at..at + length];
            let place = of[0].place.start..of[length - 1].place.end;
            for id in to {
                out.push(Token {
                    id: *id,
                    place: place.clone(),
                    guessed: of.iter().any(|token| token.guessed),
                    plural: of[length - 1].plural,
                    filler: self.role_of(*id).filler || of.iter().all(|token| token.filler),
                    side: false,
                    bracketed: of[0].bracketed,
                });
            }
            at += length;
        }
        Some(out)
    }

    fn side_tokens(&self, tokens: Vec<Token>) -> (Vec<Token>, Vec<(Side, Range<usize>)>) {
        let ids: Vec<u32> = tokens.iter().map(|token| token.id).collect();
        let mut out = Vec::with_capacity(tokens.len() + 2);
        let mut sides = Vec::new();
        let mut at = 0;
        while at < tokens.len() {
            let longest = self.runs.get(ids[at] as usize).copied().unwrap_or(0) as usize;
            let hit = (1..=longest.min(ids.len() - at)).rev().find_map(|length| {
                self.sides
                    .get(&ids[at..at + length])
                    .map(|side| (length, *side))
            });
            let Some((length, side)) = hit.filter(|hit| !self.forgotten(&ids, at, hit.0)) else {
                out.push(tokens[at].clone());
                at += 1;
                continue;
            };
            let place = tokens[at].place.start..tokens[at + length - 1].place.end;
            for word in side.code().split('-') {
                if let Some(id) = self.id(word) {
                    out.push(Token {
                        id,
                        place: place.clone(),
                        guessed: false,
                        plural: false,
                        filler: true,
                        side: true,
                        bracketed: tokens[at].bracketed,
                    });
                }
            }
            sides.push((side, place));
            at += length;
        }
        (out, sides)
    }

    /// "left in", "left under": forgotten there, no side.
    fn forgotten(&self, ids: &[u32], at: usize, length: usize) -> bool {
        if length != 1 || Some(ids[at]) != self.id("left") {
            return false;
        }
        let next = ids.get(at + 1).and_then(|id| self.words.get(*id as usize));
        let before = at.checked_sub(1).map(|at| ids[at]);
        let cornered =
            before.is_some() && (before == self.id("front") || before == self.id("rear"));
        !cornered
            && next.is_some_and(|word| {
                matches!(
                    &**word,
                    "in" | "on"
                        | "under"
                        | "inside"
                        | "plugged"
                        | "behind"
                        | "at"
                        | "over"
                        | "connected"
                        | "unplugged"
                        | "unattended"
                )
            })
    }
}

fn same_ends(a: &str, b: &str) -> bool {
    a.as_bytes().first() == b.as_bytes().first() && a.as_bytes().last() == b.as_bytes().last()
}

/// Slips between two words: a letter left out, put in, changed, or two changed about.
fn slips(a: &str, b: &str, most: usize) -> usize {
    let (a, b) = (a.as_bytes(), b.as_bytes());
    if a.len().abs_diff(b.len()) > most || a.first() != b.first() {
        return most + 1;
    }
    let mut before: Vec<usize> = (0..=b.len()).collect();
    let mut two_before = before.clone();
    for i in 1..=a.len() {
        let mut row = vec![i; b.len() + 1];
        for j in 1..=b.len() {
            let change = usize::from(a[i - 1] != b[j - 1]);
            let mut least = (before[j] + 1)
                .min(row[j - 1] + 1)
                .min(before[j - 1] + change);
            if i > 1 && j > 1 && a[i - 1] == b[j - 2] && a[i - 2] == b[j - 1] {
                least = least.min(two_before[j - 2] + 1);
            }
            row[j] = least;
        }
        two_before = std::mem::replace(&mut before, row);
    }
    before[b.len()]
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn slips_are_counted() {
        assert_eq!(slips("reservoir", "resevoir", 2), 1);
        assert_eq!(slips("caliper", "calpier", 2), 1);
        assert_eq!(slips("brake", "clutch", 2), 3);
        assert_eq!(plain("belaeg").as_deref(), Some("belag"));
    }
}
