//! Loose fasteners on a printed sheet: found, measured and counted from one photo.
#![allow(
    clippy::cast_possible_truncation,
    clippy::cast_sign_loss,
    reason = "places in a picture are made of lengths that are held inside its borders"
)]

pub mod bolt;
pub mod camera;
pub mod flat;
pub mod mat;
pub mod net;
mod photo;
pub mod shape;
mod solve;
pub mod tags;

pub use mat::Paper;
pub use photo::{Photo, PhotoError};
