//! Kinds of item, the ladders of states they move on, the needs a move may have,
//! a plain executor of moves, and the codes of a vehicle's systems, zones and gates.
//!
//! This room knows nothing of repair orders, people, money, time or storage. It
//! does no input or output, reads no clock, and takes no side in whether a move
//! is wise: it says which states a kind of item has, which single steps join
//! them, and whether a stated need holds.
//!
//! ```
//! use states::{Kind, State};
//!
//! assert_eq!(Kind::Fasteners.home(), State::Tight);
//! assert!(Kind::Fasteners.steps().contains(&(State::Tight, State::Cracked)));
//! assert!(!Kind::Clips.states().contains(&State::Tight), "clips have no tight");
//! ```

mod bench;
mod kind;
mod need;
mod vehicle;

pub use bench::{Bench, CannotStep, Step};
pub use kind::{Kind, State};
pub use need::{ItemId, Need, Position};
pub use vehicle::{Gate, System, Zone};
