//! The entries of a repair order's price: labour, parts and the rest, what they come
//! to with tax for each payer, and how that compares with what was agreed.
//!
//! This room knows nothing of orders, vehicles, people or consent: a ceiling is a
//! number here. It rounds where a rule names how, and says so in the [`working`].
//!
//! - what is charged: [`Rates`] for hours, [`Bands`] for parts and work sent out, [`Supplies`],
//!   [`Disposal`], [`core_back`], [`FixedJob`], [`off_entry`] and [`off_order`];
//! - what it comes to: [`bills`], by the [`Taxing`] that holds, each tax by itself;
//! - what is paid: [`Coin`] for cash, [`deposit`], [`balance`], [`settle`];
//! - what goes back: [`Billed::credit`].
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
//!     less: Vec::new(),
//! };
//! let on = TaxOn { labour: false, parts: true, other: true };
//! let tax = TaxRule::on_top("sales tax", Decimal::new(8, 0), on);
//! let sums = totals(&[labour], &[tax], 2).unwrap();
//! assert_eq!(sums[&Payer::Customer].net.to_string(), "440.00");
//! assert_eq!(sums[&Payer::Customer].tax.to_string(), "0.00");
//! ```

mod account;
mod apportion;
mod bands;
mod bill;
mod by_tax;
mod ceiling;
mod credit;
mod discount;
mod entry;
mod extras;
mod fault;
mod job;
mod labour;
mod leeway;
mod merge;
mod phrases;
mod round;
mod totals;
mod working;

pub use account::{Balance, Payment, Settled, balance, deposit, settle};
pub use apportion::apportion;
pub use bands::{Band, Bands, FromCost, Uplift};
pub use bill::{Bill, Share, Taxing, Terms, bills};
pub use by_tax::{ByTax, NotByTax, TaxGroup, TaxedLine};
pub use ceiling::{Ceiling, Over, WriteDown, over, over_by_rule, strictest, write_down};
pub use credit::{Billed, BilledLine, Credit, CreditLine};
pub use discount::{Portion, off_entry, off_order, renewed};
pub use entry::{Charge, Entry, Exemption, Label, Less, LineRef, Payer, TaxOn, TaxRule};
pub use extras::{Disposal, Found, Supplies, core_back};
pub use fault::{Fault, MOST, Time, Wrong};
pub use job::{FixedJob, JobPart};
pub use labour::{HoursBy, Labour, Rate, Rates};
pub use leeway::Leeway;
pub use merge::{Clash, merge};
pub use round::{By, Cash, Coin, Round, TaxRounding};
pub use totals::{TooLarge, Totals, after_write_down, amount, full_amount, rounded, totals};
pub use working::working;
