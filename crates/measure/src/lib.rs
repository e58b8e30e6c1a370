//! Quantities with units as people write them, exact money, and the working
//! behind a number.
//!
//! Everything here is a value. A quantity keeps the words it was written in
//! beside its exact number and unit; money is a decimal with its currency; a
//! [`Working`] tells, line by line, how a number was found and on whose word.
//!
//! ```
//! use measure::{Customary, Dimension};
//!
//! let torque = measure::read("16.2 lb-ft", Dimension::Torque)?;
//! assert_eq!(torque.show(Customary::Metric), "22\u{202f}N·m (16.2\u{202f}lb·ft)");
//! # Ok::<(), measure::Unreadable>(())
//! ```
//!
//! # What this crate must never know
//!
//! - What a quantity is for: no bolts, coolants, belts, vehicles or orders.
//! - Where a text came from or goes to: no files, sockets, clocks, environment
//!   or locale. The same text reads the same on every machine.
//! - A default: it fills in no unit that was not written, and no number.
//! - Rounding that nobody asked for: [`Money`] is exact until a caller names a
//!   [`Rounding`]; a [`Measured`] holds the number as written.
//! - Rates of exchange, taxes and prices.
//! - How its values are stored or sent: nothing here derives a stored form.

mod factor;
mod money;
mod number;
mod phrases;
mod quantity;
mod range;
mod read;
mod render;
mod show;
mod table;
mod unit;
mod working;

pub use money::{Currency, Money, MoneyError, Rounding};
pub use number::{NumberTrouble, Place};
pub use quantity::{Measured, Misfit, Quantity};
pub use range::{OutOfOrder, Range};
pub use read::{Unreadable, read, read_any};
pub use show::{show, show_in};
pub use unit::{Customary, Dimension, Unit};
pub use working::{Grade, Input, Line, Source, Working};

/// The exact decimal number that quantities and money are made of.
pub use rust_decimal::Decimal;
/// The typed quantities of the International System, in `f64`.
pub use uom::si::f64 as si;
