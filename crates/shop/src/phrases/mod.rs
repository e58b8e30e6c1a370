//! Every text that use cases say, once, with a note on where it stands and each language beside the
//! other.
//!
//! What papers say is not here: it stands in `say::tongue`, for a paper speaks the language that it
//! is made in, whatever is spoken on the screen.

pub mod access;
pub mod books;
pub mod calls;
pub mod coolant;
pub mod dates;
pub mod doubts;
pub mod floor;
pub mod history;
pub mod keep;
pub mod odds;
pub mod offers;
pub mod order;
pub mod planning;
pub mod price;
pub mod say;
pub mod service;
pub mod shop;
pub mod story;
pub mod teaching;
pub mod tray;
