//! Belts with no order: how one lies, how one runs, what its code says, pulleys in line, wear.

mod align;
mod code;
mod drive;
mod routing;
mod wear;

use crate::phrases::belt as say;
use crate::{Room, Say};
use belt::Caution;
pub use routing::as_found;

const MAKER: Say = || Caution::MakersSpecification.text();
const STOPPED: Say = || Caution::Stopped.text();

/// The room of belts.
pub const ROOM: Room = Room {
    code: "belt",
    name: say::belt,
    what: say::routing_length_slip_wear,
    cautions: &[STOPPED, MAKER],
    notes: &[(
        say::before_the_old_one_comes_off,
        say::tap_how_it_lies_with_the,
    )],
    calculators: &[
        routing::ROUTING,
        drive::DRIVE,
        code::CODE,
        align::ALIGN,
        wear::WEAR,
    ],
};

/// What the crate refuses: "what is wrong: how to mend it".
fn refused(error: &impl ToString) -> String {
    let message = error.to_string();
    match message.rsplit_once(": ") {
        Some((what, mend)) => format!("{what}; {mend}"),
        None => message,
    }
}
