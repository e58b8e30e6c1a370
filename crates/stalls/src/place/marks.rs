//! Marks in the plan that is changed again and again: what comes before a change is not placed anew.

use super::room::Room;
use super::{Choices, Placer};

/// A mark is set after so many of the sequence.
const EVERY: usize = 6;

/// The plan that is changed, and the room at its marks.
#[derive(Debug, Default)]
pub(super) struct Marks {
    sequence: Vec<u16>,
    choices: Vec<u8>,
    rooms: Vec<Room>,
    /// How many of the rooms are of this plan.
    set: usize,
    /// By order: where in the sequence its first stretch is placed.
    begun: Vec<usize>,
    /// The same in what was placed last.
    begun_now: Vec<usize>,
}

impl Placer<'_, '_> {
    /// Places everything in this sequence; an order as often as it has stretches. Stops when being
    /// late costs more points than `most`, and says whether it did not.
    pub(crate) fn place(&mut self, sequence: &[u16], choices: &[u8], most: i64) -> bool {
        let same = self.same(sequence, choices);
        let from = self.restore(same);
        let orders = self.room.next.len();
        self.marks.begun_now.clone_from(&self.marks.begun);
        self.marks.begun_now.resize(orders, 0);
        for (at, token) in sequence.iter().enumerate().skip(from) {
            if at == self.marks.set * EVERY && at <= same {
                self.set_mark();
            }
            let before = self.room.slots.len();
            self.place_next(usize::from(*token), Choices::new(choices));
            for slot in &self.room.slots[before..] {
                if slot.phase == 0 {
                    self.marks.begun_now[slot.order] = at;
                }
            }
            if self.room.all_late > most {
                return false;
            }
        }
        self.complete(Choices::new(choices));
        self.room.all_late <= most
    }

    /// Makes what was placed last the plan that is changed.
    pub(crate) fn keep(&mut self, sequence: &[u16], choices: &[u8]) {
        let same = self.same(sequence, choices);
        let marks = &mut self.marks;
        marks.set = marks.set.min(same / EVERY + 1);
        std::mem::swap(&mut marks.begun, &mut marks.begun_now);
        marks.sequence.clear();
        marks.sequence.extend_from_slice(sequence);
        marks.choices.clear();
        marks.choices.extend_from_slice(choices);
    }

    fn set_mark(&mut self) {
        let marks = &mut self.marks;
        match marks.rooms.get_mut(marks.set) {
            Some(room) => room.copy(&self.room),
            None => marks.rooms.push(self.room.clone()),
        }
        marks.set += 1;
    }

    /// A sequence that leaves something out is completed.
    fn complete(&mut self, choices: Choices) {
        for order in 0..self.room.next.len() {
            while self.room.next[order] < self.ready.sittings[order].len() {
                self.place_next(order, choices);
            }
        }
    }

    /// Makes the room what it is at the last mark up to here, and says where that is.
    fn restore(&mut self, same: usize) -> usize {
        let mark = (same / EVERY).min(self.marks.set.saturating_sub(1));
        if mark < self.marks.set {
            self.room.copy(&self.marks.rooms[mark]);
            mark * EVERY
        } else {
            self.room.copy(&self.empty);
            0
        }
    }

    /// How far a plan is the same as the one that is changed.
    fn same(&self, sequence: &[u16], choices: &[u8]) -> usize {
        let marks = &self.marks;
        if marks.sequence.len() != sequence.len() || marks.choices.len() != choices.len() {
            return 0;
        }
        let pairs = sequence.iter().zip(&marks.sequence);
        let mut same = pairs.take_while(|pair| pair.0 == pair.1).count();
        if choices != marks.choices {
            for (at, _) in (choices.iter().zip(&marks.choices))
                .enumerate()
                .filter(|(_, pair)| pair.0 != pair.1)
            {
                let order = self.offset.partition_point(|offset| *offset <= at) - 1;
                same = same.min(marks.begun[order]);
            }
        }
        same
    }
}
