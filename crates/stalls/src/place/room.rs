//! The room in which orders are placed: what is taken, and what was placed.

use super::{Slot, Stay, comes, taken::Taken, taken::fill};
use crate::bound::late_alone;
use crate::ready::Ready;
use crate::windows::Minute;

/// What is taken and placed so far.
#[derive(Clone, Debug, Default)]
pub(crate) struct Room {
    /// By person, in their own worked minutes.
    pub(super) people: Vec<Taken>,
    pub(super) stalls: Vec<Taken>,
    /// Minutes at which somebody crosses this stall.
    pub(super) crossed: Vec<Vec<Minute>>,
    /// Who stands in a stall for an unknown time, since the end of that stay is not placed yet.
    pub(super) holds: Vec<Option<usize>>,
    pub(super) yard: Taken,
    /// The next stretch of each order.
    pub(super) next: Vec<usize>,
    /// When each order can go on; when all of it is placed, when it is ready.
    pub(crate) free_at: Vec<Minute>,
    pub(super) last_stay: Vec<Option<usize>>,
    pub(crate) slots: Vec<Slot>,
    pub(crate) stays: Vec<Stay>,
    /// By stay: minutes in which somebody works on the vehicle.
    pub(crate) worked: Vec<i64>,
    /// By order: points that being late costs at least, after what is placed.
    pub(super) late: Vec<i64>,
    /// The sum of these.
    pub(super) all_late: i64,
}

impl Room {
    /// Nothing is placed; what has begun holds its people and its stall.
    pub(super) fn new(ready: &Ready, running: &[Option<Minute>]) -> Self {
        let floor = ready.floor;
        let orders = floor.orders.len();
        let mut room = Self {
            people: vec![Vec::new(); floor.people.len()],
            stalls: vec![Vec::new(); floor.stalls.len()],
            crossed: vec![Vec::new(); floor.stalls.len()],
            holds: vec![None; floor.stalls.len()],
            next: vec![0; orders],
            last_stay: vec![None; orders],
            late: late_alone(ready),
            ..Self::default()
        };
        room.all_late = room.late.iter().sum();
        for (order, it) in floor.orders.iter().enumerate() {
            let here = it.arrives.map(|spread| comes(spread, floor.now));
            room.free_at.push(here.unwrap_or(floor.now));
            let begun = ready.sittings[order].first().filter(|first| first.begun);
            if let (Some(_), Some(stall)) = (begun, it.stands_in) {
                room.holds[stall] = Some(order);
            }
            if let (Some(running), Some(end)) = (&it.running, running[order]) {
                for person in &running.people {
                    let own = &ready.own[*person];
                    let span = (own.worked(running.since), own.worked(end));
                    fill(&mut room.people[*person], span);
                }
            }
        }
        room
    }

    /// Becomes like another of the same floor, in the memory it has.
    pub(super) fn copy(&mut self, other: &Self) {
        fn lists<T: Clone>(own: &mut [Vec<T>], other: &[Vec<T>]) {
            for (own, other) in own.iter_mut().zip(other) {
                own.clone_from(other);
            }
        }
        lists(&mut self.people, &other.people);
        lists(&mut self.stalls, &other.stalls);
        lists(&mut self.crossed, &other.crossed);
        self.holds.clone_from(&other.holds);
        self.yard.clone_from(&other.yard);
        self.next.clone_from(&other.next);
        self.free_at.clone_from(&other.free_at);
        self.last_stay.clone_from(&other.last_stay);
        self.slots.clone_from(&other.slots);
        self.stays.clone_from(&other.stays);
        self.worked.clone_from(&other.worked);
        self.late.clone_from(&other.late);
        self.all_late = other.all_late;
    }
}
