//! The weights that come with this crate, fitted by `cargo xtask tray-train`.

use crate::net::WEIGHTS;

/// Each weight is a whole number of these parts of one, in two bytes, low byte first.
pub const PARTS: f32 = 4096.0;

static STORED: &[u8; WEIGHTS * 2] = include_bytes!("weights.bin");

/// The weights, in the order in which [`crate::net`] takes them.
#[must_use]
pub fn weights() -> Vec<f32> {
    unpacked(STORED)
}

/// Weights from their stored form.
#[must_use]
pub fn unpacked(stored: &[u8]) -> Vec<f32> {
    stored
        .chunks_exact(2)
        .map(|two| f32::from(i16::from_le_bytes([two[0], two[1]])) / PARTS)
        .collect()
}

/// Weights in their stored form.
#[must_use]
pub fn packed(weights: &[f32]) -> Vec<u8> {
    weights
        .iter()
        .flat_map(|w| (libm::roundf(w * PARTS).clamp(-32768.0, 32767.0) as i16).to_le_bytes())
        .collect()
}
