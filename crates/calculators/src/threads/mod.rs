//! Threads with no order: what one is and bears, torque and clamp, wrenches, a pulley held by
//! its belt, tightening sequences, the ways to mend one, stubs.

pub mod ask;
pub mod hole;
mod pattern;
mod pulley;
mod repair;
mod stub;
mod thread;
mod torque;
mod wrench;

pub use thread::facts;

use crate::phrases::threads as say;
use crate::threads::ask::Trouble;
use crate::{Asked, Room, Say};

/// Before any bolt is turned.
const CAUTION: Say = say::makers_torque_comes_first;

/// The room of threads.
pub const ROOM: Room = Room {
    code: "threads",
    name: say::threads,
    what: say::torque_drills_repair,
    cautions: &[CAUTION],
    notes: &[],
    calculators: &[
        thread::THREAD,
        torque::TORQUE,
        wrench::WRENCH,
        pulley::PULLEY,
        pattern::PATTERN,
        repair::REPAIR,
        stub::STUB,
    ],
};

/// What a calculator found wrong, beside the field that it is wrong with. `shown` are the
/// fields of the page; what is wrong with none of them is told at the first.
pub fn told(asked: &mut Asked, trouble: &Trouble, shown: &[&str]) {
    let field = match trouble.field {
        "blind" | "through" if shown.contains(&"depth") => "depth",
        field if shown.contains(&field) => field,
        _ => shown.first().copied().unwrap_or("thread"),
    };
    asked.wrong(field, format!("{}; {}", trouble.what, trouble.mend));
}
