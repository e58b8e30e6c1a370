//! What finished jobs have taught a map: which thing came off before which, how often
//! and by how many people; what is settled by it, and what only a person can settle.
//!
//! A map keeps what was seen as it was seen: under `[seen]`, for each job, who worked on
//! it and in which sequence things came off. Needs follow from that and are never
//! written down, so that the next job can change them. Only items that say
//! `needs = "as seen"` take theirs from jobs: what a person states goes before.

use crate::fields::Fields;
use crate::needs::Known;
use crate::phrases as say;
use crate::trouble::Troubles;
use crate::value::{Map, MapItem};
use crate::words::away;
use states::{ItemId, Kind, Need};
use std::collections::{BTreeMap, BTreeSet};

/// One finished job as a map keeps it.
#[derive(Debug, Clone, PartialEq, Eq, Default)]
pub struct Seen {
    /// Who worked on it, by their names in the record.
    pub by: BTreeSet<String>,
    /// What came off, in that sequence.
    pub off: Vec<ItemId>,
}

/// What is known of two things: whether one comes off before the other.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Ground {
    /// A person stated it, in the map or as an answer.
    Stated,
    /// It was always seen so.
    Seen {
        /// In how many jobs.
        times: usize,
        /// By how many people.
        people: usize,
    },
    /// It was seen both ways, or so that the jobs together go round in a circle.
    BothWays {
        /// How often the first came off before the second.
        there: usize,
        /// How often it was the other way round.
        back: usize,
    },
}

/// Two things and what is known of them.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Pair {
    /// What comes off first, where that is known.
    pub first: ItemId,
    /// The other.
    pub second: ItemId,
    /// How it is known.
    pub ground: Ground,
}

/// What a person answered about pairs that were seen both ways.
#[derive(Debug, Clone, PartialEq, Eq, Default)]
pub struct Settled {
    /// The first comes off before the second.
    pub first: BTreeSet<(ItemId, ItemId)>,
    /// It does not matter; the lesser name first.
    pub either_way: BTreeSet<(ItemId, ItemId)>,
}

/// How often each thing was seen to come off before another, and by whom.
type Counts<'m> = BTreeMap<(&'m ItemId, &'m ItemId), (usize, BTreeSet<&'m str>)>;

impl Map {
    /// What is known of each two things that came off in one job, by name.
    #[must_use]
    pub fn pairs(&self) -> Vec<Pair> {
        let counts = self.counts();
        let kept = self.kept(&counts);
        let stated = |a: &ItemId, b: &ItemId| {
            self.stated(a).contains(b) || self.settled.first.contains(&(b.clone(), a.clone()))
        };
        let mut pairs = Vec::new();
        for (&(a, b), (there, people)) in &counts {
            let back = counts.get(&(b, a)).map_or(0, |(times, _)| *times);
            let (first, second, ground) = if stated(b, a) {
                (a, b, Ground::Stated)
            } else if stated(a, b) {
                (b, a, Ground::Stated)
            } else if kept.contains(&(a, b)) || (back == 0 && !self.as_seen(b)) {
                let people = people.len();
                (
                    a,
                    b,
                    Ground::Seen {
                        times: *there,
                        people,
                    },
                )
            } else {
                (
                    a,
                    b,
                    Ground::BothWays {
                        there: *there,
                        back,
                    },
                )
            };
            // Of a pair counted from both its ends, one is enough.
            if back == 0 || a < b {
                pairs.push(Pair {
                    first: first.clone(),
                    second: second.clone(),
                    ground,
                });
            }
        }
        pairs.sort_by(|a, b| (&a.first, &a.second).cmp(&(&b.first, &b.second)));
        pairs
    }

    /// The pairs that only a person can settle, and that nobody has settled yet. Where both
    /// items have needs of their own, it has been settled what they need.
    #[must_use]
    pub fn undecided(&self) -> Vec<Pair> {
        let open = |item: &ItemId| self.as_seen(item);
        let asked = |pair: &Pair| {
            let name = ordered(&pair.first, &pair.second);
            matches!(pair.ground, Ground::BothWays { .. })
                && !self.settled.either_way.contains(&name)
                && (open(&pair.first) || open(&pair.second))
        };
        self.pairs().into_iter().filter(asked).collect()
    }

    /// The things that were seen, or answered, to come off before this one, without those
    /// that others of them imply.
    #[must_use]
    pub fn seen_first(&self, item: &ItemId) -> BTreeMap<ItemId, Ground> {
        if !self.as_seen(item) {
            return BTreeMap::new();
        }
        let counts = self.counts();
        let kept = self.kept(&counts);
        let mut before: BTreeMap<&ItemId, BTreeSet<&ItemId>> = BTreeMap::new();
        for &(first, second) in &kept {
            before.entry(second).or_default().insert(first);
        }
        let none = BTreeSet::new();
        let direct = before.get(item).unwrap_or(&none);
        let implied = |one: &&ItemId| {
            direct.iter().any(|other| {
                before
                    .get(*other)
                    .is_some_and(|firsts| firsts.contains(*one))
            })
        };
        let known = |first: &ItemId| match counts.get(&(first, item)) {
            Some((times, people))
                if !self.settled.first.contains(&(first.clone(), item.clone())) =>
            {
                Ground::Seen {
                    times: *times,
                    people: people.len(),
                }
            }
            _ => Ground::Stated,
        };
        direct
            .iter()
            .filter(|one| !implied(one))
            .map(|first| ((*first).clone(), known(first)))
            .collect()
    }

    fn as_seen(&self, item: &ItemId) -> bool {
        self.items.get(item).is_some_and(MapItem::by_jobs)
    }

    fn counts(&self) -> Counts<'_> {
        let mut counts = Counts::new();
        for seen in self.seen.values() {
            let mut off: Vec<&ItemId> = Vec::new();
            let known = seen
                .off
                .iter()
                .filter(|item| self.items.contains_key(*item));
            for item in known {
                if !off.contains(&item) {
                    off.push(item);
                }
            }
            for (at, first) in off.iter().enumerate() {
                for second in &off[at + 1..] {
                    let (times, people) = counts.entry((*first, *second)).or_default();
                    *times += 1;
                    people.extend(seen.by.iter().map(String::as_str));
                }
            }
        }
        counts
    }

    /// The pairs that hold: answered, or seen one way only and part of no circle.
    fn kept<'m>(&'m self, counts: &Counts<'m>) -> BTreeSet<(&'m ItemId, &'m ItemId)> {
        let answered = self
            .settled
            .first
            .iter()
            .map(|(first, second)| (first, second));
        let seen = counts.keys().copied().filter(|&(a, b)| {
            self.as_seen(b)
                && !counts.contains_key(&(b, a))
                && !self.settled.either_way.contains(&ordered(a, b))
                && !self.settled.first.contains(&(b.clone(), a.clone()))
        });
        let mut all: BTreeSet<(&ItemId, &ItemId)> = answered.chain(seen).collect();
        let mut stated: BTreeMap<&ItemId, BTreeSet<ItemId>> = BTreeMap::new();
        for item in self.items.keys() {
            stated.insert(item, self.stated(item));
        }
        let items: Vec<&ItemId> = self.items.keys().collect();
        let after = |from: &ItemId, all: &BTreeSet<(&'m ItemId, &'m ItemId)>| {
            let mut met: BTreeSet<&ItemId> = BTreeSet::new();
            let mut open: Vec<&ItemId> = vec![from];
            while let Some(at) = open.pop() {
                let seen = all
                    .iter()
                    .filter(|(first, _)| *first == at)
                    .map(|(_, second)| *second);
                let needed = items
                    .iter()
                    .copied()
                    .filter(|item| stated.get(item).is_some_and(|firsts| firsts.contains(at)));
                for next in seen.chain(needed).collect::<Vec<_>>() {
                    if met.insert(next) {
                        open.push(next);
                    }
                }
            }
            met.into_iter().cloned().collect::<BTreeSet<ItemId>>()
        };
        let reach: BTreeMap<&ItemId, BTreeSet<ItemId>> = items
            .iter()
            .map(|item| (*item, after(item, &all)))
            .collect();
        let settled = |a: &ItemId, b: &ItemId| self.settled.first.contains(&(a.clone(), b.clone()));
        all.retain(|(a, b)| settled(a, b) || !reach.get(b).is_some_and(|after| after.contains(*a)));
        all
    }

    /// What an item is stated to need first, itself and by what that needs.
    fn stated(&self, item: &ItemId) -> BTreeSet<ItemId> {
        let mut met = BTreeSet::new();
        let mut open = vec![item.clone()];
        while let Some(at) = open.pop() {
            let known = self.items.get(&at).filter(|item| !item.by_jobs());
            for (first, either) in known.map(|_| self.firsts(&at)).unwrap_or_default() {
                if !either && met.insert(first.clone()) {
                    open.push(first);
                }
            }
        }
        met
    }
}

fn ordered(a: &ItemId, b: &ItemId) -> (ItemId, ItemId) {
    match a < b {
        true => (a.clone(), b.clone()),
        false => (b.clone(), a.clone()),
    }
}

/// Reads `[seen]` and what was answered about it.
pub(crate) fn read(root: &Fields, known: &Known, map: &mut Map, troubles: &mut Troubles) {
    if let Some(jobs) = root.table("seen", troubles) {
        let names: Vec<_> = jobs.table.iter().map(|(name, _)| name).collect();
        for name in names {
            let Some(job) = jobs.table(name, troubles) else {
                continue;
            };
            job.only(&["by", "off"], troubles);
            let by = job
                .texts("by", troubles)
                .into_iter()
                .map(|(name, _)| name)
                .collect();
            let off = job.texts("off", troubles);
            let off = off.iter().filter_map(|(name, span)| {
                if !known.contains_key(name) {
                    let names = known.keys().map(String::as_str);
                    let mend = troubles.meant(name, names, say::add_or_take_name_out());
                    troubles.error(span, say::no_such_item(name), mend);
                }
                known.contains_key(name).then(|| ItemId::new(name))
            });
            let off = off.collect();
            map.seen.insert(name.to_owned(), Seen { by, off });
        }
    }
    let Some(settled) = root.table("settled", troubles) else {
        return;
    };
    settled.only(&["first", "either-way"], troubles);
    for (first, second) in read_pairs(&settled, "first", known, troubles) {
        map.settled.first.insert((first, second));
    }
    for (one, other) in read_pairs(&settled, "either-way", known, troubles) {
        map.settled.either_way.insert(ordered(&one, &other));
    }
}

fn read_pairs(
    settled: &Fields,
    key: &str,
    known: &Known,
    troubles: &mut Troubles,
) -> Vec<(ItemId, ItemId)> {
    let Some(item) = settled.item(key) else {
        return Vec::new();
    };
    let mend = say::write_pairs();
    let Some(list) = item.as_array() else {
        troubles.error(&settled.at(key), say::no_list_of_pairs(key), mend);
        return Vec::new();
    };
    let mut pairs = Vec::new();
    for value in list {
        let names: Vec<&str> = value
            .as_array()
            .map(|pair| pair.iter().filter_map(|name| name.as_str()).collect())
            .unwrap_or_default();
        match names.as_slice() {
            [one, other]
                if one != other && known.contains_key(*one) && known.contains_key(*other) =>
            {
                pairs.push((ItemId::new(*one), ItemId::new(*other)));
            }
            _ => troubles.error(&value.span(), say::no_pair(value.to_string().trim()), mend),
        }
    }
    pairs
}

/// Adds to each first move what jobs have taught.
pub(crate) fn apply(map: &mut Map) {
    for item in map.items.values_mut() {
        if let (Some(taught), Some(step)) = (&item.taught, item.moves.first_mut()) {
            step.need = taught.clone();
        }
        if let (Some(taught), Some(step)) = (&item.taught_back, item.moves.first_mut()) {
            // What a person states goes before.
            step.need_back.get_or_insert_with(|| taught.clone());
        }
    }
    let learned: Vec<(ItemId, Vec<Need>)> = map
        .items
        .iter()
        .filter(|(_, item)| item.by_jobs() && item.kind != Kind::Work)
        .map(|(id, _)| (id.clone(), map.seen_first(id)))
        .map(|(id, firsts)| {
            let need = |item: &ItemId| {
                let kind = map.items.get(item)?.kind;
                Some(Need::Is {
                    item: item.clone(),
                    at: Vec::new(),
                    states: away(kind),
                })
            };
            let needs = firsts.keys().filter_map(need).collect();
            (id, needs)
        })
        .collect();
    for (id, needs) in learned {
        let step = map
            .items
            .get_mut(&id)
            .and_then(|item| item.moves.first_mut());
        if let Some(step) = step.filter(|_| !needs.is_empty()) {
            step.need = Need::All(needs);
        }
    }
}
