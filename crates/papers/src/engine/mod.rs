//! The engine: letters, lines, slabs, pages, PDF. It knows paper and type, and no order.

pub mod column;
pub mod draw;
pub mod face;
pub mod flow;
pub mod lines;
pub mod page;
pub mod pdf;
pub mod read;
mod xmp;
