//! Two people who changed one price at the same time.

use crate::entry::{Charge, Entry, Label, LineRef, Payer};
use std::collections::BTreeMap;

/// One entry that both changed, and not alike.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Clash {
    /// What both had before them; nothing, if each added it.
    pub before: Option<Entry>,
    /// What one of them made of it; nothing, if it was taken out.
    pub yours: Option<Entry>,
    /// What the other made of it; nothing, if it was taken out.
    pub theirs: Option<Entry>,
}

/// Puts together what two people made of one price: what only one of them changed, added or
/// took out stands as that one left it.
///
/// An entry keeps its name through a change of its count or price: the words it is called by,
/// or, without words, its line, sort and payer.
///
/// # Errors
/// Every entry that both changed, and not alike.
///
/// ```
/// use price::{Charge, Entry, Payer, merge};
/// let entry = |name: u8, each: i64| Entry {
///     line: None,
///     charge: Charge::Part,
///     label: Some([name; 32]),
///     quantity: 1.into(),
///     each: each.into(),
///     payer: Payer::Customer,
///     less: Vec::new(),
/// };
/// let before = [entry(1, 10)];
/// let yours = [entry(1, 12)];
/// let theirs = [entry(1, 10), entry(2, 5)];
/// assert_eq!(merge(&before, &yours, &theirs), Ok(vec![entry(1, 12), entry(2, 5)]));
/// let theirs = [entry(1, 11)];
/// assert_eq!(merge(&before, &yours, &theirs).unwrap_err().len(), 1);
/// ```
pub fn merge(
    before: &[Entry],
    yours: &[Entry],
    theirs: &[Entry],
) -> Result<Vec<Entry>, Vec<Clash>> {
    let own = pairs(before, yours);
    let other = pairs(before, theirs);
    let mut kept: BTreeMap<usize, Entry> = BTreeMap::new();
    let mut added = Vec::new();
    let mut clashes = Vec::new();
    for (nth, was) in before.iter().enumerate() {
        let mine = own.of_before[nth].map(|at| &yours[at]);
        let their_place = other.of_before[nth];
        let their = their_place.map(|at| &theirs[at]);
        let stands = if mine == Some(was) || mine == their {
            their
        } else if their == Some(was) {
            mine
        } else {
            clashes.push(Clash {
                before: Some(was.clone()),
                yours: mine.cloned(),
                theirs: their.cloned(),
            });
            continue;
        };
        if let (Some(place), Some(entry)) = (their_place, stands) {
            kept.insert(place, entry.clone());
        }
    }
    let mut met = vec![false; theirs.len()];
    for at in &own.added {
        let entry = &yours[*at];
        let same = other
            .added
            .iter()
            .find(|place| !met[**place] && name(entry).is_words_of(&theirs[**place]));
        match same {
            None => added.push(entry.clone()),
            Some(place) => {
                met[*place] = true;
                if theirs[*place] != *entry {
                    clashes.push(Clash {
                        before: None,
                        yours: Some(entry.clone()),
                        theirs: Some(theirs[*place].clone()),
                    });
                }
            }
        }
    }
    if !clashes.is_empty() {
        return Err(clashes);
    }
    kept.extend(other.added.iter().map(|at| (*at, theirs[*at].clone())));
    Ok(kept.into_values().chain(added).collect())
}

/// What an entry goes by while it is changed.
#[derive(Debug, Clone, PartialEq, Eq, PartialOrd, Ord)]
enum Name {
    Words(Label),
    Place(Option<LineRef>, Charge, Payer),
}

impl Name {
    /// Words are salted: two entries that bear the same are one that came twice.
    fn is_words_of(&self, other: &Entry) -> bool {
        matches!(self, Name::Words(_)) && *self == name(other)
    }
}

fn name(entry: &Entry) -> Name {
    entry.label.map_or_else(
        || Name::Place(entry.line.clone(), entry.charge, entry.payer),
        Name::Words,
    )
}

/// Which entry became which.
struct Pairs {
    /// By each entry before: its place after, if it is there.
    of_before: Vec<Option<usize>>,
    /// The places of what is new.
    added: Vec<usize>,
}

/// What stayed as it was is found first, then what goes by the same name, in sequence.
fn pairs(before: &[Entry], after: &[Entry]) -> Pairs {
    let mut of_before = vec![None; before.len()];
    let mut taken = vec![false; after.len()];
    let mut pair = |same: &dyn Fn(&Entry, &Entry) -> bool| {
        for (nth, was) in before.iter().enumerate() {
            if of_before[nth].is_some() {
                continue;
            }
            let found = (0..after.len()).find(|at| !taken[*at] && same(was, &after[*at]));
            if let Some(at) = found {
                of_before[nth] = Some(at);
                taken[at] = true;
            }
        }
    };
    pair(&|was, is| was == is);
    pair(&|was, is| name(was) == name(is));
    let added = (0..after.len()).filter(|at| !taken[*at]).collect();
    Pairs { of_before, added }
}

#[cfg(test)]
mod tests {
    use super::*;
    use proptest::prelude::*;
    use rust_decimal::Decimal;

    fn entry(name: u8, each: i64) -> Entry {
        Entry {
            line: None,
            charge: Charge::Part,
            label: Some([name; 32]),
            quantity: 1.into(),
            each: each.into(),
            payer: Payer::Customer,
            less: Vec::new(),
        }
    }

    fn sum(entries: &[Entry]) -> Decimal {
        entries.iter().map(|entry| entry.each).sum()
    }

    fn sorted(mut entries: Vec<Entry>) -> Vec<Entry> {
        entries.sort_by_key(|entry| (entry.label, entry.charge, entry.each));
        entries
    }

    /// A price of named and nameless entries.
    fn some() -> impl Strategy<Value = Vec<Entry>> {
        let nameless = (any::<bool>(), 1i64..4).prop_map(|(labour, each)| Entry {
            label: None,
            charge: if labour { Charge::Labour } else { Charge::Fee },
            ..entry(0, each)
        });
        let named = proptest::collection::btree_map(1u8..6, 1i64..4, 0..5).prop_map(|all| {
            let entries = all.into_iter().map(|(name, each)| entry(name, each));
            entries.collect::<Vec<_>>()
        });
        (named, proptest::collection::vec(nameless, 0..3))
            .prop_map(|(named, nameless)| [named, nameless].concat())
    }

    #[test]
    fn lines_that_do_not_touch_each_other_are_put_together() {
        let before = [entry(1, 10), entry(2, 20), entry(3, 30)];
        let yours = [entry(1, 11), entry(2, 20), entry(3, 30), entry(4, 40)];
        let theirs = [entry(5, 50), entry(1, 10), entry(3, 33)];
        assert_eq!(
            merge(&before, &yours, &theirs).unwrap(),
            [entry(5, 50), entry(1, 11), entry(3, 33), entry(4, 40)]
        );
    }

    #[test]
    fn what_both_touched_is_shown_with_what_was_before() {
        let before = [entry(1, 10), entry(2, 20), entry(3, 30)];
        let yours = [entry(1, 11), entry(3, 30), entry(6, 60)];
        let theirs = [entry(1, 12), entry(2, 21), entry(6, 61)];
        let clashes = merge(&before, &yours, &theirs).unwrap_err();
        let shown: Vec<_> = clashes
            .iter()
            .map(|clash| {
                let each = |entry: &Option<Entry>| entry.as_ref().map(|entry| entry.each);
                (each(&clash.before), each(&clash.yours), each(&clash.theirs))
            })
            .collect();
        let some = |each: i64| Some(Decimal::from(each));
        assert_eq!(
            shown,
            [
                (some(10), some(11), some(12)),
                (some(20), None, some(21)),
                (None, some(60), some(61))
            ]
        );
    }

    #[test]
    fn what_both_took_out_or_changed_alike_is_no_clash() {
        let before = [entry(1, 10), entry(2, 20)];
        let both = [entry(1, 11), entry(3, 30)];
        assert_eq!(merge(&before, &both, &both).unwrap(), both);
    }

    proptest! {
        #[test]
        fn who_changed_nothing_changes_nothing(before in some(), other in some()) {
            prop_assert_eq!(merge(&before, &before, &other), Ok(other.clone()));
            let merged = merge(&before, &other, &before).map(sorted);
            prop_assert_eq!(merged, Ok(sorted(other)));
        }

        #[test]
        fn both_orders_come_to_the_same(before in some(), one in some(), other in some()) {
            let (there, back) = (merge(&before, &one, &other), merge(&before, &other, &one));
            prop_assert_eq!(there.is_ok(), back.is_ok());
            if let (Ok(there), Ok(back)) = (there, back) {
                prop_assert_eq!(sorted(there), sorted(back));
            }
        }

        /// What named lines come to is what was there and what each of them made of it.
        #[test]
        fn no_change_is_lost_and_none_counts_twice(
            before in proptest::collection::btree_map(1u8..6, 1i64..9, 0..5),
            own in proptest::collection::btree_map(1u8..6, 0i64..9, 0..3),
            other in proptest::collection::btree_map(1u8..6, 0i64..9, 0..3),
        ) {
            let list = |all: &BTreeMap<u8, i64>| -> Vec<Entry> {
                all.iter().filter(|(_, each)| **each > 0).map(|(name, each)| entry(*name, *each)).collect()
            };
            // Nought takes a line out.
            let changed = |by: &BTreeMap<u8, i64>| {
                let mut all = before.clone();
                all.extend(by.iter().map(|(name, each)| (*name, *each)));
                list(&all)
            };
            let (was, yours, theirs) = (list(&before), changed(&own), changed(&other));
            if let Ok(merged) = merge(&was, &yours, &theirs) {
                let alike: Decimal = own
                    .iter()
                    .filter(|(name, each)| other.get(name) == Some(each))
                    .map(|(name, each)| Decimal::from(each - before.get(name).copied().unwrap_or(0)))
                    .sum();
                prop_assert_eq!(sum(&merged), sum(&yours) + sum(&theirs) - sum(&was) - alike);
            }
        }
    }
}
