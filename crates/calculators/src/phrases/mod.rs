//! What the calculators say, in each language.

pub mod ask;
pub mod belt;
pub mod coolant;
pub mod fluids;
pub mod form;
pub mod mending;
pub mod roadtest;
pub mod threads;
