//! The plan that is changed: where everything is, who is late, and what each phase waits for.

use crate::bound::late_alone;
use crate::place::{Room, Slot, Stay};
use crate::ready::Ready;
use crate::search::below;
use rand_chacha::ChaCha8Rng;

/// A plan as changes look at it.
#[derive(Debug, Default)]
pub(crate) struct Kept {
    pub(crate) slots: Vec<Slot>,
    stays: Vec<Stay>,
    /// By order: where its phases begin in `slot_of`.
    offset: Vec<usize>,
    slot_of: Vec<usize>,
    /// By order: points that being late costs it at least.
    alone: Vec<i64>,
    /// Orders that are later than they would be alone, each with the points of all up to it.
    late: Vec<(usize, i64)>,
}

impl Kept {
    pub(crate) fn new(ready: &Ready) -> Self {
        let mut offset = vec![0];
        for order in &ready.floor.orders {
            offset.push(offset[offset.len() - 1] + order.phases.len());
        }
        let phases = offset[offset.len() - 1];
        Self {
            offset,
            slot_of: vec![0; phases],
            alone: late_alone(ready),
            ..Self::default()
        }
    }

    /// Looks at what is placed in a room.
    pub(crate) fn keep(&mut self, ready: &Ready, room: &Room) {
        self.slots.clone_from(&room.slots);
        self.stays.clone_from(&room.stays);
        for (at, slot) in self.slots.iter().enumerate() {
            self.slot_of[self.offset[slot.order] + slot.phase] = at;
        }
        self.late.clear();
        let mut all = 0;
        for (order, end) in room.free_at.iter().enumerate() {
            let points = ready.late(order, *end) - self.alone[order];
            if points > 0 {
                all += points;
                self.late.push((order, all));
            }
        }
    }

    /// Where a phase is.
    pub(crate) fn of(&self, order: usize, phase: usize) -> usize {
        self.slot_of[self.offset[order] + phase]
    }

    /// One of the late orders, the more likely the dearer.
    pub(crate) fn late(&self, chance: &mut ChaCha8Rng) -> Option<usize> {
        let all = self.late.last()?.1;
        let drawn = below(chance, usize::try_from(all).unwrap_or(usize::MAX));
        let drawn = i64::try_from(drawn).unwrap_or(0);
        let at = self.late.partition_point(|one| one.1 <= drawn);
        Some(self.late[at].0)
    }

    /// The phases of others for which one waits: they end just when it begins, with its people or
    /// in its stall.
    pub(crate) fn waits_for(&self, ready: &Ready, at: usize, found: &mut Vec<usize>) {
        found.clear();
        let slot = &self.slots[at];
        for person in slot.crew.people() {
            let own = &ready.own[*person];
            let begins = own.worked(slot.from);
            let before = self.slots.iter().position(|other| {
                other.to <= slot.from
                    && other.crew.people().contains(person)
                    && own.worked(other.to) == begins
            });
            found.extend(before.filter(|one| self.slots[*one].order != slot.order));
        }
        let stay = slot.stall.and_then(|stall| {
            let first = |stay: &&Stay| stay.order == slot.order && stay.first == slot.phase;
            self.stays
                .iter()
                .find(|stay| stay.stall == stall && first(stay))
        });
        if let Some(stay) = stay {
            let before = self.stays.iter().filter(|other| {
                other.stall == stay.stall && other.to <= stay.from && other.order != stay.order
            });
            if let Some(other) = before.max_by_key(|other| other.to)
                && ready.floor.opening.open_between(other.to, stay.from) == 0
            {
                found.push(self.of(other.order, other.end - 1));
            }
        }
    }
}
