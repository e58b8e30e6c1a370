//! Papers for the customer and the stall, as PDF.
//!
//! A paper is made from the same values as the screen: [`make`] looks at the order, lays the
//! paper out as a value ([`engine::page::Paper`]) and writes it as a PDF. From the same values
//! come the same bytes, on any machine: no clock, no path and no name goes in but what is printed.
//!
//! What was given out is kept ([`give_out`]): its bytes lie with the record as a file.
//!
//! Papers are tagged for screen readers (PDF/UA-1) and for keeping (PDF/A-3a), as far as the
//! library that writes them checks both; no outside checker of either has been run on them.
//!
//! Knows nothing of HTTP or of the disk: it gives bytes.

pub mod e_invoice;
pub mod engine;
mod given_out;
mod kinds;
mod phrases;
mod wording;

pub use engine::page::SheetSize;
pub use engine::read::read;
pub use given_out::{GivenOut, give_out};
pub use kinds::label_sheets::{FORMATS, Format, Labels};
pub use kinds::{
    Asked, Kind, Laid, Made, Missing, Rule, e_invoice_of, lay_out, make, missing, note, picked,
};
