//! The entries of a repair order's price: labour, parts and the rest, what they come
//! to with tax for each payer, and how that compares with what was agreed.
//!
//! This room knows nothing of orders, vehicles, people or consent: a ceiling is a
//! number here. It rounds in one place, by one named strategy, and says so.
//!
//! ```
//! use price::{Charge, Entry, Payer, TaxOn, TaxRule, totals};
//! use rust_decimal::Decimal;
//!
//! let labour = Entry {
//!     line: None,
//!     charge: Charge::Labour,
//!     label: None,
//!     quantity: Decimal::new(220, 0) / Decimal::new(60, 0),
//!     each: Decimal::new(120, 0),
//!     payer: Payer::Customer,
//! };
//! let tax = TaxRule {
//!     name: "sales tax".into(),
//!     percent: Decimal::new(8, 0),
//!     on: TaxOn { labour: false, parts: true, other: true },
//! };
//! let sums = totals(&[labour], &[tax], 2).unwrap();
//! assert_eq!(sums[&Payer::Customer].net.to_string(), "440.00");
//! assert_eq!(sums[&Payer::Customer].tax.to_string(), "0.00");
//! ```

mod ceiling;
mod entry;
mod leeway;
mod merge;
mod totals;
mod working;

pub use ceiling::{Ceiling, Over, WriteDown, over, over_by_rule, strictest, write_down};
pub use entry::{Charge, Entry, Label, LineRef, Payer, TaxOn, TaxRule};
pub use leeway::Leeway;
pub use merge::{Clash, merge};
pub use totals::{TooLarge, Totals, after_write_down, amount, rounded, totals};
pub use working::working;
