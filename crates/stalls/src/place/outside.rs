//! Few places outside: an order is placed as a whole, so that it finds one between its stalls.

use super::taken::{Taken, inside, take};
use super::{Choices, Placer};
use crate::windows::Minute;

/// How often a start is put off before everything else is let go first.
const PUT_OFF: usize = 40;

impl Placer<'_, '_> {
    /// Places all stretches of an order so that it finds room outside between them.
    pub(super) fn place_whole(&mut self, order: usize, choices: Choices) {
        let ready = self.ready;
        let sittings = &ready.sittings[order];
        for sitting in &sittings[self.room.next[order]..] {
            self.free_way(order, sitting, choices);
        }
        let mut from = self.room.free_at[order];
        for tried in 0.. {
            if self.room.next[order] >= sittings.len() {
                return;
            }
            let before = self.room.clone();
            for sitting in &sittings[self.room.next[order]..] {
                let (stall, leaves) =
                    self.best(order, sitting, self.room.free_at[order].max(from), choices);
                self.settle(order, sitting, stall, leaves);
            }
            let late = tried > PUT_OFF;
            if self.find_room_outside(before.stays.len(), late) {
                return;
            }
            self.room = before;
            from = if tried == PUT_OFF {
                self.everything_done()
            } else {
                from.max(ready.floor.now) + 30 * (1 + i64::try_from(tried).unwrap_or(0))
            };
        }
    }

    fn everything_done(&self) -> Minute {
        let lists = self
            .room
            .people
            .iter()
            .chain(&self.room.stalls)
            .chain([&self.room.yard]);
        let last = lists.filter_map(|taken| taken.iter().map(|one| one.1).max());
        last.max().unwrap_or(0)
    }

    /// Keeps a vehicle in its stall, or finds it a place outside, from one stay to its next.
    /// `at_last`: nothing better will come, so it stands where it can.
    fn find_room_outside(&mut self, first: usize, at_last: bool) -> bool {
        let places = self.ready.floor.yard_places.unwrap_or(usize::MAX);
        let mut outside = Vec::new();
        for at in first + 1..self.room.stays.len() {
            let (stay, next) = (self.room.stays[at - 1], self.room.stays[at]);
            if stay.to == next.from {
                continue;
            }
            let most = self.most_outside(stay.to, next.from);
            if most < places || at_last {
                outside.push((stay.to, next.from));
                continue;
            }
            // It stays where it is, if nobody else comes there or through there.
            let others = overlaps_other(&self.room.stalls[stay.stall], stay.to, next.from);
            let passing = (self.room.crossed[stay.stall].iter())
                .any(|one| stay.from < *one && *one < next.from);
            let crosses = &self.ready.floor.stalls[stay.stall].crosses;
            let shut = crosses
                .iter()
                .any(|one| inside(&self.room.stalls[*one], next.from).is_some());
            if others || passing || shut {
                return false;
            }
            self.room.stays[at - 1].to = next.from;
            self.room.stays[at].was_there |= stay.stall == next.stall;
            let taken = &mut self.room.stalls[stay.stall];
            if let Some(span) = taken.iter_mut().find(|span| span.1 == stay.to) {
                span.1 = next.from;
            }
            for crossed in crosses {
                self.room.crossed[*crossed].push(next.from);
            }
        }
        for span in outside {
            take(&mut self.room.yard, span);
        }
        true
    }

    /// How many stand outside at most between two minutes.
    fn most_outside(&self, from: Minute, to: Minute) -> usize {
        let starts = self.room.yard.iter().map(|one| one.0.max(from));
        let at = |minute: Minute| {
            (self.room.yard.iter())
                .filter(|one| one.0 <= minute && minute < one.1)
                .count()
        };
        starts
            .filter(|minute| *minute < to)
            .chain([from])
            .map(at)
            .max()
            .unwrap_or(0)
    }
}

/// Whether a span overlaps one that begins in it.
fn overlaps_other(taken: &Taken, from: Minute, to: Minute) -> bool {
    taken.iter().any(|one| one.0 >= from && one.0 < to)
}
