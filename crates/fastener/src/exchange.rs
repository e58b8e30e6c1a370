//! A torque given for one state of the threads, and threads found in another.

use crate::figures::rounded_down;
use crate::friction::Condition;
use crate::phrases::torque as say;
use crate::torque::{Form, Friction, Joint, clamp_range, torque_for_clamp};
use measure::{OutOfOrder, Range};

/// What a torque does in another state than it was given for. Nobody has exchanged anything yet:
/// this is what to know before.
#[derive(Clone, Debug, PartialEq)]
pub struct Exchange {
    /// The clamp that the torque was meant to give.
    pub meant_n: Range<f64>,
    /// The clamp that the same torque gives on the threads as found.
    pub found_n: Range<f64>,
    /// The torque that gives the meant clamp, middle against middle. Not a specification.
    pub same_clamp_nm: f64,
    pub caution: &'static str,
}

/// Compares a torque in the state that it was given for with the state that was found.
///
/// Formula: clamps by Motosh over both ranges of friction; the torque for the middle clamp.
///
/// Inputs: `torque_nm` in N·m as the maker gives it for `given`. Returns newtons and N·m, the
/// torque rounded down to a tenth.
///
/// # Errors
///
/// [`OutOfOrder`] where the torque is no number.
///
/// # Limits
///
/// Not a specification: clean the threads into the state that the maker names, or ask.
///
/// # Source
///
/// Motosh; VDI 2230-1, friction classes.
///
/// ```
/// use fastener::{Thread, exchange::exchange, friction::Condition, head::Head, torque::Joint};
/// let joint = Joint::standard(&Thread::metric(8.0, 1.25)?, Head::Hex)?;
/// let dry = Condition::read("dry").unwrap();
/// let oiled = Condition::read("oiled").unwrap();
/// let found = exchange(&joint, 28.0, dry, oiled)?;
/// assert!(found.found_n.mid() > 1.4 * found.meant_n.mid());
/// assert!(found.same_clamp_nm < 20.0);
/// # Ok::<(), Box<dyn std::error::Error>>(())
/// ```
pub fn exchange(
    joint: &Joint,
    torque_nm: f64,
    given: Condition,
    found: Condition,
) -> Result<Exchange, OutOfOrder> {
    let meant_n = clamp_range(joint, given.friction(), torque_nm, Form::Motosh)?;
    let found_n = clamp_range(joint, found.friction(), torque_nm, Form::Motosh)?;
    let middle = Friction {
        thread: found.friction().mid(),
        head: found.friction().mid(),
    };
    let same = torque_for_clamp(joint, middle, meant_n.mid(), Form::Motosh).total_nm;
    Ok(Exchange {
        meant_n,
        found_n,
        same_clamp_nm: rounded_down(same, 0.1),
        caution: say::dry_is_not_oiled(),
    })
}
