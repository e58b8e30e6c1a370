//! Things told more than once: labels, places, counts, texts. Each telling names those
//! it had seen.

use crate::fact::Fact;
use crate::ids::CommandId;
use crate::order::Order;
use std::collections::{BTreeMap, BTreeSet};

/// Who had seen which tellings of one sort, whether or not they were taken back since:
/// whoever saw one had seen what its author saw.
pub(crate) struct Seen<'a>(BTreeMap<&'a CommandId, Vec<&'a [CommandId]>>);

impl<'a> Seen<'a> {
    /// Of the facts for which `told` has what their author had seen.
    pub(crate) fn of(
        order: &'a Order,
        told: impl Fn(&'a Fact) -> Option<&'a Vec<CommandId>>,
    ) -> Self {
        let mut out: BTreeMap<_, Vec<_>> = BTreeMap::new();
        for (command, filed) in order.story_beside_moves() {
            if let Some(seen) = told(&filed.fact) {
                out.entry(command).or_default().push(seen.as_slice());
            }
        }
        Self(out)
    }

    /// The tellings of a group that none of the others has seen, in the order of their
    /// commands' names; all of them, where each claims to have been seen.
    pub(crate) fn heads<T: Copy>(&self, group: &[Telling<'a, T>]) -> Vec<T> {
        let own: BTreeSet<&CommandId> = group.iter().map(|(command, ..)| *command).collect();
        heads_by(group, |after| self.reach(&own, after))
    }

    /// What a telling of a group had seen. What another of the group saw, that one names.
    pub(crate) fn reach(
        &self,
        own: &BTreeSet<&CommandId>,
        after: &'a [CommandId],
    ) -> Vec<&'a CommandId> {
        let mut seen: BTreeSet<&CommandId> = BTreeSet::new();
        let mut todo: Vec<&CommandId> = after.iter().collect();
        while let Some(next) = todo.pop() {
            if seen.insert(next) && !own.contains(next) {
                todo.extend(self.0.get(next).into_iter().flatten().copied().flatten());
            }
        }
        seen.into_iter().collect()
    }
}

/// Of facts that replace each other, the one that none of the others has seen, for each
/// key; where several are left, the one whose command's name comes last.
pub(crate) fn latest<'a, K: Ord>(
    order: &'a Order,
    pick: impl Fn(&'a Fact) -> Option<(K, &'a Vec<CommandId>)>,
) -> BTreeMap<K, &'a Fact> {
    let seen = Seen::of(order, |fact| pick(fact).map(|(_, after)| after));
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
        .filter_map(|(key, group)| Some((key, seen.heads(&group).pop()?)))
        .collect()
}

/// Something told by a command that had seen other tellings of the same.
pub(crate) type Telling<'a, T> = (&'a CommandId, T, &'a Vec<CommandId>);

/// The telling of a group that none of the others has seen, where none can be taken back;
/// where several are left, the one whose command's name comes last.
pub(crate) fn latest_of<T: Copy>(group: &[Telling<'_, T>]) -> Option<T> {
    heads_by(group, |after| after.iter().collect()).pop()
}

fn heads_by<'a, T: Copy>(
    group: &[Telling<'a, T>],
    seen: impl Fn(&'a [CommandId]) -> Vec<&'a CommandId>,
) -> Vec<T> {
    let mut replaced: BTreeSet<&CommandId> = BTreeSet::new();
    for (command, _, after) in group {
        let others = seen(after).into_iter();
        replaced.extend(others.filter(|seen| seen != command));
    }
    let told = |all: bool| -> Vec<T> {
        let stands = group
            .iter()
            .filter(|(command, ..)| all || !replaced.contains(command));
        stands.map(|(_, told, _)| *told).collect()
    };
    let heads = told(false);
    if heads.is_empty() { told(true) } else { heads }
}
