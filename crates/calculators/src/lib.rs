//! One form for every calculator: what is asked, what is answered, drawn, warned of and how
//! it was found.
//!
//! ```text
//!  Calculator { code, name, what, cautions, form: [Part], run }
//!      │ asked(fields as written, Shop)          bare numbers get the unit of their field
//!      ▼
//!  Asked { fields, troubles }  ── run ──▶  Answer { fact, rows, steps, notes, drawings, working }
//!      │                                       │
//!      └─ troubles, each beside its field      └─ a page, words, JSON, what an order keeps
//! ```
//!
//! A page, a command, the JSON door and an address that can be kept follow from that one form:
//! nobody else knows which fields there are. The next calculator is one file with a
//! [`Calculator`] in it, and its row in [`ROOMS`].
//!
//! ```
//! use calculators::{Shop, calculator};
//!
//! let torque = calculator("threads", "torque").expect("it has a row");
//! let fields = [("thread", "M10x1.5"), ("clamp", "25275"), ("friction", "0.15")];
//! let fields = fields.map(|(name, text)| (name.to_owned(), text.to_owned()));
//! let answer = torque.answer(fields.into(), &Shop::default()).unwrap();
//! assert!(answer.fact.starts_with("50.1"));
//! ```
//!
//! # What this crate must never know
//!
//! - Orders, vehicles and people: what an order knows is written into fields by `shop`.
//! - HTML, routes and command lines: it gives values, and the drawing is one of them.
//! - Files, clocks, environment, or chance.

mod answer;
mod asked;
pub mod belt;
pub mod coolant;
mod fluids;
mod form;
pub mod mending;
mod phrases;
mod roadtest;
mod rooms;
mod show;
pub mod threads;

pub use answer::{Answer, Other, Row, Step};
pub use asked::{Asked, Shop, read};
pub use form::{
    Calculator, Choices, Field, Holds, Kept, Named, Part, Say, Takes, Units, choices, fields,
    fields_once, in_row,
};
pub use rooms::{ROOMS, Room, calculator, room};
pub use show::{PHONE_PX, both_kn, both_mm, both_n, both_nm, capital};

use thiserror::Error;

/// What is wrong with something written: where, what, and how to mend it.
#[derive(Clone, Debug, PartialEq, Eq, Error)]
#[error("{place}: {what}; {mend}")]
pub struct Trouble {
    /// The field, or the line of it.
    pub place: String,
    /// What is wrong.
    pub what: String,
    /// How to mend it.
    pub mend: String,
}
