//! Every text of the pages, once, with a note on where it stands and each language beside the other.
//!
//! A text goes into the file of the folder of pages that shows it; what several say goes into
//! [`common`].

pub mod bench;
pub mod common;
pub mod dates;
pub mod desk;
pub mod frame;
pub mod maps;
pub mod people;
pub mod shop;
pub mod teaching;
pub mod vehicle;
