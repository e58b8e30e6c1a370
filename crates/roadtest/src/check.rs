//! The checks, one file each.

mod air;
mod band;
mod charging;
mod codes;
mod fan;
mod overheating;
mod provoked;
mod thermostat;
mod trims;
mod warm_up;

pub(crate) use air::{Spike, air, spikes};
pub(crate) use band::band;
pub(crate) use charging::charging;
pub(crate) use codes::codes;
pub(crate) use fan::fan;
pub(crate) use overheating::overheating;
pub(crate) use provoked::provoked;
pub(crate) use thermostat::thermostat;
pub(crate) use trims::trims;
pub(crate) use warm_up::warm_up;

use crate::judge::{Case, Check, CheckName};
use crate::phrases::judge as say;
use crate::{Log, Quantity};

/// Nothing of this quantity in the log: what to read next, by what the vehicle supports.
fn missing(log: &Log, check: CheckName, quantity: Quantity, pid: u8) -> Check {
    let name = quantity.said();
    // The highest PID that was asked for says whether there are any beyond it.
    match &log.supported {
        Some((pids, asked_to)) if !pids.contains(&pid.min(*asked_to)) => Check::cant_tell(
            check,
            say::vehicle_does_not_tell(name, format!("{pid:02X}")),
            say::read_it_yourself(name),
        ),
        _ => Check::cant_tell(
            check,
            say::log_has_no(name),
            say::record_it_as_well(name, format!("{pid:02X}")),
        ),
    }
}

/// No coolant temperature at all.
fn no_coolant(case: &Case, check: CheckName) -> Option<Check> {
    case.drive
        .coolant
        .iter()
        .all(Option::is_none)
        .then(|| missing(case.log, check, Quantity::Coolant, 0x05))
}

/// Minutes and seconds of a moment.
fn clock(at_s: f64) -> String {
    let seconds = crate::number::index(libm::round(at_s));
    format!("{}:{:02}", seconds / 60, seconds % 60)
}
