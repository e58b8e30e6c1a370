//! Loose fasteners on a printed sheet: found, measured and counted from one photo.
#![allow(
    clippy::cast_possible_truncation,
    clippy::cast_sign_loss,
    reason = "places in a picture are made of lengths that are held inside its borders"
)]

mod alike;
pub mod bolt;
pub mod camera;
pub mod count;
mod decide;
pub mod edges;
pub mod find;
pub mod fit;
pub mod flat;
pub mod kinds;
pub mod look;
pub mod mat;
pub mod net;
pub mod patch;
mod photo;
pub mod shape;
pub mod sheet;
mod solve;
pub mod tags;

pub mod weights;

pub use mat::Paper;
pub use photo::{LONGEST_FILE, Photo, PhotoError};

/// How large the sheet was printed, as a share, from what its 100 mm line measures.
#[must_use]
pub fn printed_scale(check_line_mm: f64) -> Option<f64> {
    (80.0..=120.0)
        .contains(&check_line_mm)
        .then(|| check_line_mm / sheet::CHECK_LINE_MM)
}
