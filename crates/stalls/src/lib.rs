//! The floor: who works where and when, and promises that hold.
//!
//! Orders are phases; work needs people with a skill and mostly a stall; a vehicle that can't roll
//! holds its stall from the first bolt to the last wheel. [`plan()`] lays the days ahead so that
//! promises are kept; [`promises`] lives through them many times, by people who don't know what is
//! to come, and says when to tell the customer; [`take_in`] and [`roll_out`] say what a change
//! does to the others.
//!
//! Everything here is plain numbers: minutes since an origin that the caller names, and chances
//! from 0 to 1. Opening hours come as spans of minutes, so days, time zones and the clock changes
//! are the caller's. Its origin should be a full hour, since what is said on the phone is a
//! multiple of half hours from there.
//!
//! # What this crate must never know
//!
//! - A clock, a calendar of a place, a file, or chance that its caller did not seed.
//! - What is repaired: names of phases and skills are labels to it.
//! - How long something takes or when something comes, if nobody gave it.

// The checker of the tests calls this crate by its name.
#[cfg(test)]
extern crate self as stalls;

mod bound;
mod check;
mod climb;
mod days;
mod explain;
mod floor;
mod guard;
mod hours;
mod jobshop;
mod kept;
mod lived;
mod moves;
mod phrases;
mod place;
mod plan;
mod promise;
mod read;
mod ready;
mod search;
mod simulate;
mod spread;
mod what_if;
mod windows;

pub use check::Fault;
pub use days::Cost;
pub use explain::{Change, Say};
pub use floor::{
    Does, Floor, Lift, Order, Person, Phase, Rules, Running, Stall, StallNeed, Takes, Wait,
    WaitsFor, Work,
};
pub use jobshop::{JobPlan, JobShop};
pub use lived::Lived;
pub use place::{Placed, Stay};
pub use plan::{Plan, plan};
pub use promise::{
    Ask, Call, Outlook, Promise, calls, outlook, promise, promises, promises_of, said,
};
pub use read::{Clock, Local, Read, Trouble, now, read, zone};
pub use simulate::Policy;
pub use spread::Spread;
pub use what_if::{Compared, Effect, RollOut, roll_out, take_in, waits_apart};
pub use windows::{Minute, Windows};
