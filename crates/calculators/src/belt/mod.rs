//! Belts with no order: how one lies, how one runs, what its code says, pulleys in line, wear.

mod align;
mod code;
mod drive;
mod routing;
mod wear;

use crate::Room;
use belt::Caution;
pub use routing::as_found;

const MAKER: &str = Caution::MakersSpecification.text();
const STOPPED: &str = Caution::Stopped.text();

/// The room of belts.
pub const ROOM: Room = Room {
    code: "belt",
    name: "Belt",
    what: "routing, length, slip, wear",
    cautions: &[STOPPED, MAKER],
    notes: &[(
        "Before the old one comes off",
        "Tap how it lies, with the side that lies on each pulley. What runs the wrong side, the wrong way round or one rib off is found here before anybody starts the engine.",
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
