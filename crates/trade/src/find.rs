//! Which name of the table the words of a line hold.

use rustc_hash::FxHashMap;

/// One name, as its words in order, each once.
#[derive(Debug, Clone)]
struct Phrase {
    ids: Box<[u32]>,
    sort: u32,
    /// How many of its words say what the thing is.
    solid: u8,
    /// A bit for each of its words: a bag that lacks one cannot hold it.
    bits: u64,
}

fn bits(ids: &[u32]) -> u64 {
    ids.iter().fold(0, |bits, id| {
        bits | 1 << (id.wrapping_mul(0x9E37_79B1) >> 26)
    })
}

/// All names, found by their rarest word.
#[derive(Debug, Clone, Default)]
pub(crate) struct Names {
    phrases: Vec<Phrase>,
    by_word: FxHashMap<u32, Vec<u32>>,
    exact: FxHashMap<Box<[u32]>, u32>,
}

/// The words of a segment, in order, as they count for finding.
#[derive(Debug, Clone, Default)]
pub(crate) struct Bag {
    pub ids: Vec<u32>,
    /// Words that a name must account for: bit by place.
    pub core: u32,
    /// Words that say where it is.
    pub around: u32,
    /// The last word of the core.
    pub head: u32,
    /// Words that only say which system the thing belongs to.
    pub weak: u32,
}

impl Bag {
    /// The most words that are looked at; what stands beyond is kept as text.
    pub const MOST: usize = 32;

    fn mask(&self, phrase: &Phrase) -> Option<u32> {
        let mut mask = 0;
        for id in &phrase.ids {
            let mut found = 0;
            for (at, known) in self.ids.iter().enumerate() {
                if known == id {
                    found |= 1 << at;
                }
            }
            if found == 0 {
                return None;
            }
            mask |= found;
        }
        Some(mask)
    }

    /// Whether the words of a name stand in its order: a strut boot is no boot strut.
    fn in_order(&self, phrase: &Phrase) -> bool {
        let mut left = self.ids.iter();
        phrase.ids.iter().all(|id| left.any(|known| known == id))
    }
}

/// A name found in a bag.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(crate) struct Hit {
    pub sort: u32,
    /// The words it accounts for.
    pub mask: u32,
    /// Words of the core it leaves.
    pub left: u32,
    /// How many of its words say what the thing is.
    pub solid: u8,
}

/// How well a name fits; the least is best.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
struct Rank {
    solid_left: u32,
    left: u32,
    placed: std::cmp::Reverse<u32>,
    length: std::cmp::Reverse<usize>,
    disordered: bool,
    at: u32,
}

impl Names {
    /// Takes in the names in the order of the table; the first to take a name keeps it.
    pub fn build(names: Vec<(Vec<u32>, u32)>, light: &dyn Fn(u32) -> bool) -> Names {
        let mut often: FxHashMap<u32, u32> = FxHashMap::default();
        let mut out = Names::default();
        for (mut ids, sort) in names {
            let mut seen = Vec::with_capacity(ids.len());
            ids.retain(|id| {
                let fresh = !seen.contains(id);
                seen.push(*id);
                fresh
            });
            if ids.is_empty() || out.exact.contains_key(ids.as_slice()) {
                continue;
            }
            for id in &ids {
                *often.entry(*id).or_default() += 1;
            }
            let solid = ids.iter().filter(|id| !light(**id)).count();
            out.exact.insert(ids.clone().into(), sort);
            out.phrases.push(Phrase {
                bits: bits(&ids),
                ids: ids.into(),
                sort,
                solid: u8::try_from(solid).unwrap_or(u8::MAX),
            });
        }
        for (at, phrase) in out.phrases.iter().enumerate() {
            let rarest = phrase.ids.iter().min_by_key(|id| (often[*id], **id));
            if let Some(id) = rarest {
                out.by_word
                    .entry(*id)
                    .or_default()
                    .push(u32::try_from(at).unwrap_or(u32::MAX));
            }
        }
        out
    }

    /// The sort that has exactly this name.
    pub fn exact(&self, ids: &[u32]) -> Option<u32> {
        self.exact.get(ids).copied()
    }

    /// Whether some name of these sorts holds all these words.
    pub fn inside(&self, ids: &[u32], sorts: &dyn Fn(u32) -> bool) -> Option<u32> {
        self.phrases
            .iter()
            .find(|phrase| sorts(phrase.sort) && ids.iter().all(|id| phrase.ids.contains(id)))
            .map(|phrase| phrase.sort)
    }

    /// The name that says most about a bag: it holds the last word of the core, or all of the
    /// core; it leaves the fewest words over; it tells most of the place; it is the longest.
    pub fn best(&self, bag: &Bag, fits: &dyn Fn(u32) -> bool) -> Option<Hit> {
        self.search(bag, true, fits)
    }

    /// The same for a thing that is only spoken of: its last word need not be held.
    pub fn any(&self, bag: &Bag, fits: &dyn Fn(u32) -> bool) -> Option<Hit> {
        self.search(bag, false, fits)
    }

    fn search(&self, bag: &Bag, with_head: bool, fits: &dyn Fn(u32) -> bool) -> Option<Hit> {
        let mut best: Option<(Rank, Hit)> = None;
        let bag_bits = bits(&bag.ids);
        for (place, id) in bag.ids.iter().enumerate() {
            if bag.ids[..place].contains(id) {
                continue;
            }
            for at in self.by_word.get(id).into_iter().flatten() {
                let phrase = &self.phrases[*at as usize];
                if phrase.bits & !bag_bits != 0 {
                    continue;
                }
                let Some(mask) = bag.mask(phrase) else {
                    continue;
                };
                let left = bag.core & !mask;
                let held = mask & bag.head != 0 || (left == 0 && bag.core != 0);
                if mask & (bag.core | bag.head) == 0
                    || (with_head && !held)
                    || phrase.solid == 0 && left != 0
                    || !fits(phrase.sort)
                {
                    continue;
                }
                let rank = Rank {
                    solid_left: (left & !bag.weak).count_ones(),
                    left: left.count_ones(),
                    placed: std::cmp::Reverse((mask & bag.around).count_ones()),
                    disordered: !bag.in_order(phrase),
                    length: std::cmp::Reverse(phrase.ids.len()),
                    at: *at,
                };
                if best.as_ref().is_none_or(|(known, _)| rank < *known) {
                    best = Some((
                        rank,
                        Hit {
                            sort: phrase.sort,
                            mask,
                            left,
                            solid: phrase.solid,
                        },
                    ));
                }
            }
        }
        best.map(|(_, hit)| hit)
    }
}
