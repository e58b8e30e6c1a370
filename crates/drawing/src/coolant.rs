//! What is in a system and what is missing, pressure against time, and where a mixture
//! freezes and boils.

mod filling;
mod mixture;
mod pressure;

pub use filling::{Filling, filling};
pub use mixture::{MixChart, Reading, mix_chart};
pub use pressure::{PressureRun, pressure};

const LEAST_WIDTH: f64 = 280.0;

/// The width asked for, or as much as the words beside a drawing need.
fn wide_enough(width_px: f64) -> f64 {
    if width_px.is_finite() {
        width_px.max(LEAST_WIDTH)
    } else {
        LEAST_WIDTH
    }
}
