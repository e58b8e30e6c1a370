//! One course of events, as promises are held against it.

use crate::check::Fault;
use crate::floor::Floor;
use crate::ready::Ready;
use crate::simulate::{Life, Luck, Policy, arrival};
use crate::windows::{FAR, Minute};

/// One course of events, lived once and looked at from any minute of it.
///
/// This is what promises are held against: what a shop would have seen, minute by minute, without
/// knowing how it ends.
#[derive(Clone, Debug)]
pub struct Lived<'a> {
    floor: &'a Floor,
    policy: Policy<'a>,
    luck: Luck,
    ends: Vec<Option<Minute>>,
}

impl<'a> Lived<'a> {
    /// Lives through a floor to its end.
    ///
    /// # Errors
    ///
    /// Everything that keeps the floor from being planned.
    pub fn new(floor: &'a Floor, policy: Policy<'a>, seed: u64) -> Result<Self, Vec<Fault>> {
        let faults = floor.faults();
        if !faults.is_empty() {
            return Err(faults);
        }
        let luck = Luck {
            seed,
            draw: 0,
            fate: true,
        };
        let ready = Ready::new(floor);
        let ends = Life::new(&ready, policy).live(luck, None, FAR);
        Ok(Self {
            floor,
            policy,
            luck,
            ends,
        })
    }

    /// When each order was ready.
    pub fn ends(&self) -> &[Option<Minute>] {
        &self.ends
    }

    /// When a vehicle came; if it was there from the beginning, nothing.
    pub fn came(&self, order: usize) -> Option<Minute> {
        arrival(self.floor.orders.get(order)?, self.luck, self.floor.now)
    }

    /// The floor as it was at a minute: what was done is gone, what is to come is not known.
    pub fn floor_at(&self, minute: Minute) -> Floor {
        let ready = Ready::new(self.floor);
        let mut life = Life::new(&ready, self.policy);
        life.live(self.luck, None, minute);
        life.floor(minute)
    }
}
