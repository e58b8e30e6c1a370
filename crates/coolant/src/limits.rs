//! Whether a strength is one that an engine may run on.

use crate::error::{CoolantError, within};
use crate::mixture::{Concentrate, Mixture};
use crate::phrases as say;
use std::fmt;

/// Least and most concentrate by volume, where the vehicle maker states nothing else: the
/// range that ASTM D3306 gives for its coolants (older editions up to 0.7).
pub const USUAL_LIMITS: (f64, f64) = (0.4, 0.6);

/// A strength against its limits.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum StrengthStanding {
    /// Freezes and corrodes too soon.
    TooWeak,
    Within,
    /// Carries off less heat and thickens in the cold.
    TooStrong,
}

/// Whether a mixture lies within its limits.
///
/// Formula: least ≤ concentrate by volume ≤ most.
///
/// Inputs: the mixture; the concentrate that the limits are told of; least and most, parts
/// of the whole from 0 to 1, the vehicle maker's or [`USUAL_LIMITS`].
///
/// Returns where it stands.
///
/// # Errors
///
/// [`CoolantError::OutOfRange`] where the limits are none.
///
/// # Limits
///
/// A reading is good for about ±2 %; at the edge, measure again.
///
/// # Source
///
/// The vehicle maker, else ASTM D3306, scope.
///
/// ```
/// use coolant::{Concentrate, Glycol, Mixture, StrengthStanding, USUAL_LIMITS, strength_standing};
/// let usual = Concentrate::default();
/// let weak = Mixture::of_concentrate(Glycol::Ethylene, 0.3, usual)?;
/// assert_eq!(strength_standing(weak, usual, USUAL_LIMITS)?, StrengthStanding::TooWeak);
/// # Ok::<(), coolant::CoolantError>(())
/// ```
pub fn strength_standing(
    mixture: Mixture,
    concentrate: Concentrate,
    limits: (f64, f64),
) -> Result<StrengthStanding, CoolantError> {
    let (least, most) = limits;
    let parts = say::of_the_whole();
    within(
        say::least_strength(),
        least,
        parts,
        0.0..=1.0,
        say::mend_forty_percent(),
    )?;
    within(
        say::greatest_strength(),
        most,
        parts,
        least..=1.0,
        say::mend_sixty_percent(),
    )?;
    // A round trip may end a last bit outside.
    const LAST_BIT: f64 = 1e-12;
    Ok(match mixture.concentrate_fraction(concentrate) {
        Some(part) if part < least - LAST_BIT => StrengthStanding::TooWeak,
        Some(part) if part <= most + LAST_BIT => StrengthStanding::Within,
        // Stronger than the concentrate itself counts as all of it.
        None if most >= 1.0 => StrengthStanding::Within,
        _ => StrengthStanding::TooStrong,
    })
}

impl fmt::Display for StrengthStanding {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(match self {
            StrengthStanding::TooWeak => say::too_weak(),
            StrengthStanding::Within => say::within_limits(),
            StrengthStanding::TooStrong => say::too_strong(),
        })
    }
}
