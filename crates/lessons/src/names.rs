//! Names that may mean one thing in different jobs: proposed, never joined silently.

use crate::job::Way;
use crate::learner::Learner;
use states::{ItemId, Kind};
use std::collections::{BTreeMap, BTreeSet};
use std::fmt;

/// What a name means to whoever knows the words of the trade.
#[derive(Debug, Clone, PartialEq, Eq, PartialOrd, Ord)]
pub struct Meaning {
    /// The sort of thing, as a code, the same in every language.
    pub sort: String,
    /// The side it is on, as a code, where the name says one.
    pub side: Option<String>,
}

/// Why two names may mean one thing; the surest reason comes first.
#[derive(Debug, Clone, PartialEq, Eq, PartialOrd, Ord)]
pub enum Alike {
    /// They differ only in capitals, spaces, marks or the sequence of their words.
    SameWords,
    /// One of them is the plural of the other.
    Plural,
    /// They mean the same sort of thing on the same side, in other words or another
    /// language.
    Meaning {
        /// The sort.
        sort: String,
    },
    /// So many letters differ.
    Spelling {
        /// How many.
        letters: usize,
    },
}

/// A proposal that two names mean one thing.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct SameName {
    /// The name in more jobs; of equals, the lesser one.
    pub name: ItemId,
    /// The other.
    pub other: ItemId,
    /// Why.
    pub alike: Alike,
    /// In how many jobs each stands.
    pub times: (u32, u32),
}

impl fmt::Display for SameName {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        let why = match &self.alike {
            Alike::SameWords => "the same words".to_owned(),
            Alike::Plural => "one and many".to_owned(),
            Alike::Meaning { sort } => format!("both are {}", sort.replace('-', " ")),
            Alike::Spelling { letters: 1 } => "one letter differs".to_owned(),
            Alike::Spelling { letters } => format!("{letters} letters differ"),
        };
        let SameName {
            name,
            other,
            times: (one, two),
            ..
        } = self;
        write!(f, "is {other} ({two}) the same as {name} ({one})? {why}")
    }
}

impl Learner {
    /// Names that may mean one thing, the surest first. `meaning` reads a name as the trade
    /// does; nothing where it does not know it.
    ///
    /// Two names that stand in one job mean two things, and are not proposed; nor are names of
    /// different kinds, with different numbers in them, or on different sides.
    #[must_use]
    pub fn same_names(&self, meaning: &dyn Fn(&str) -> Option<Meaning>) -> Vec<SameName> {
        let names: Vec<Read> = self
            .kinds()
            .iter()
            .map(|(item, kinds)| Read::new(item, kinds, meaning(item.as_str())))
            .collect();
        let mut found = Vec::new();
        for (at, one) in names.iter().enumerate() {
            for other in &names[at + 1..] {
                if !one.may_be(other) {
                    continue;
                }
                if let Some(alike) = one.alike(other)
                    && !self.in_one_job(&one.item, &other.item)
                {
                    let (name, rest) = match other.times > one.times {
                        true => (other, one),
                        false => (one, other),
                    };
                    found.push(SameName {
                        name: name.item.clone(),
                        other: rest.item.clone(),
                        alike,
                        times: (name.times, rest.times),
                    });
                }
            }
        }
        found.sort_by(|a, b| (&a.alike, &a.name, &a.other).cmp(&(&b.alike, &b.name, &b.other)));
        found
    }

    /// Whether two items were moved in one and the same job.
    fn in_one_job(&self, one: &ItemId, other: &ItemId) -> bool {
        [Way::Out, Way::Back].into_iter().any(|way| {
            let (firsts, seconds) = (self.numbers_of(one, way), self.numbers_of(other, way));
            let pairs = firsts
                .iter()
                .flat_map(|first| seconds.iter().map(move |second| (*first, *second)));
            let mut pairs = pairs.into_iter();
            pairs.any(|(first, second)| {
                let groups = self.groups().iter();
                let mut both = groups.map(|group| group.pair(way, first, second));
                both.any(|both| both != (0, 0, 0))
            })
        })
    }
}

/// A name, taken apart.
struct Read {
    item: ItemId,
    kinds: BTreeSet<Kind>,
    times: u32,
    words: Vec<String>,
    stems: Vec<String>,
    numbers: Vec<String>,
    meaning: Option<Meaning>,
}

impl Read {
    fn new(item: &ItemId, kinds: &BTreeMap<Kind, u32>, meaning: Option<Meaning>) -> Self {
        let folded = fold(item.as_str());
        let parts = folded.split(|letter: char| !letter.is_alphanumeric());
        let mut words: Vec<String> = parts
            .filter(|word| !word.is_empty())
            .map(str::to_owned)
            .collect();
        words.sort();
        let has_digit = |word: &&String| word.chars().any(|letter| letter.is_ascii_digit());
        let mut stems: Vec<String> = words.iter().map(|word| stem(word)).collect();
        stems.sort();
        Self {
            item: item.clone(),
            kinds: kinds.keys().copied().collect(),
            times: kinds.values().sum(),
            numbers: words.iter().filter(has_digit).cloned().collect(),
            stems,
            words,
            meaning,
        }
    }

    fn may_be(&self, other: &Read) -> bool {
        let side = |read: &Read| {
            read.meaning
                .as_ref()
                .and_then(|meaning| meaning.side.clone())
        };
        let sides_differ = side(self) != side(other);
        !sides_differ && self.numbers == other.numbers && !self.kinds.is_disjoint(&other.kinds)
    }

    fn alike(&self, other: &Read) -> Option<Alike> {
        if self.words == other.words {
            return Some(Alike::SameWords);
        }
        if self.stems == other.stems {
            return Some(Alike::Plural);
        }
        if let (Some(one), Some(two)) = (&self.meaning, &other.meaning) {
            if one.sort == two.sort {
                let sort = one.sort.clone();
                return Some(Alike::Meaning { sort });
            }
            // What the trade knows as two sorts of thing is no slip of the pen.
            return None;
        }
        let (one, two) = (self.words.concat(), other.words.concat());
        let shorter = one.chars().count().min(two.chars().count());
        let most = match shorter {
            0..=3 => 0,
            4..=7 => 1,
            _ => 2,
        };
        if one.chars().count().abs_diff(two.chars().count()) > most {
            return None;
        }
        let letters = distance(&one, &two);
        (letters <= most).then_some(Alike::Spelling { letters })
    }
}

/// Small letters without their marks, as people type them in a hurry.
fn fold(name: &str) -> String {
    let mut folded = String::new();
    for letter in name.to_lowercase().chars() {
        match letter {
            'ä' | 'à' | 'á' | 'â' => folded.push('a'),
            'ö' | 'ò' | 'ó' | 'ô' => folded.push('o'),
            'ü' | 'ù' | 'ú' | 'û' => folded.push('u'),
            'é' | 'è' | 'ê' | 'ë' => folded.push('e'),
            'ß' => folded.push_str("ss"),
            other => folded.push(other),
        }
    }
    folded
}

/// A word without the ending of its plural, English or German.
fn stem(word: &str) -> String {
    for ending in ["es", "en", "er", "s", "n", "e"] {
        if let Some(stem) = word.strip_suffix(ending)
            && stem.chars().count() >= 3
        {
            return stem.to_owned();
        }
    }
    word.to_owned()
}

/// How many letters must be added, taken away, changed, or swapped with the next.
fn distance(one: &str, other: &str) -> usize {
    let other: Vec<char> = other.chars().collect();
    let one: Vec<char> = one.chars().collect();
    let mut rows: Vec<Vec<usize>> = vec![(0..=other.len()).collect()];
    for (at, letter) in one.iter().enumerate() {
        let mut row = vec![at + 1];
        for (n, known) in other.iter().enumerate() {
            let changed = rows[at][n] + usize::from(letter != known);
            let mut least = changed.min(row[n] + 1).min(rows[at][n + 1] + 1);
            if at > 0 && n > 0 && one[at - 1] == *known && *letter == other[n - 1] {
                least = least.min(rows[at - 1][n - 1] + 1);
            }
            row.push(least);
        }
        rows.push(row);
    }
    rows[one.len()][other.len()]
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn letters_that_differ_are_counted() {
        assert_eq!(distance("shroud", "shroud"), 0);
        assert_eq!(distance("shroud", "shruod"), 1);
        assert_eq!(distance("clip", "clamp"), 2);
        assert_eq!(distance("", "abc"), 3);
    }

    #[test]
    fn plurals_have_one_stem() {
        for (one, many) in [
            ("hose", "hoses"),
            ("nut", "nuts"),
            ("bush", "bushes"),
            ("schraube", "schrauben"),
            ("schlauch", "schlauche"),
        ] {
            assert_eq!(stem(one), stem(many), "{one} {many}");
        }
        assert_ne!(stem("tray"), stem("train"));
    }
}
