//! Things told more than once: labels, places, counts, texts. Each telling names those
//! it had seen.

use crate::fact::Fact;
use crate::ids::CommandId;
use crate::order::Order;
use std::collections::{BTreeMap, BTreeSet};

/// Of facts that replace each other, the one that none of the others has seen, for each
/// key; where several are left, the one whose command's name comes last.
pub(crate) fn latest<'a, K: Ord>(
    order: &'a Order,
    pick: impl Fn(&'a Fact) -> Option<(K, &'a Vec<CommandId>)>,
) -> BTreeMap<K, &'a Fact> {
    let mut groups: BTreeMap<K, Vec<Telling<'_, &Fact>>> = BTreeMap::new();
    for (command, filed) in order.beside_moves() {
        if let Some((key, after)) = pick(&filed.fact) {
            groups
                .entry(key)
                .or_default()
                .push((command, &filed.fact, after));
        }
    }
    groups
        .into_iter()
        .filter_map(|(key, group)| Some((key, latest_of(&group)?)))
        .collect()
}

/// Something told by a command that had seen other tellings of the same.
pub(crate) type Telling<'a, T> = (&'a CommandId, T, &'a Vec<CommandId>);

/// The same for one group, in the order of their commands' names.
pub(crate) fn latest_of<T: Copy>(group: &[Telling<'_, T>]) -> Option<T> {
    heads(group).pop()
}

/// The tellings of a group that none of the others has seen, in the order of their
/// commands' names; all of them, where each claims to have been seen.
pub(crate) fn heads<T: Copy>(group: &[Telling<'_, T>]) -> Vec<T> {
    let replaced: BTreeSet<&CommandId> = group
        .iter()
        .flat_map(|(command, _, after)| after.iter().filter(move |seen| seen != command))
        .collect();
    let told = |all: bool| -> Vec<T> {
        let stands = group
            .iter()
            .filter(|(command, ..)| all || !replaced.contains(command));
        stands.map(|(_, told, _)| *told).collect()
    };
    let heads = told(false);
    if heads.is_empty() { told(true) } else { heads }
}
