//! How far the level rises when the coolant warms.

use crate::error::{CoolantError, within};
use crate::mixture::Mixture;
use crate::phrases as say;
use crate::property::density_kg_per_m3;
use crate::{sources, text};
use measure::{Line, Source, Working};

/// What warming adds.
#[derive(Clone, Debug, PartialEq)]
pub struct Swell {
    /// From cold to hot; as much goes back on cooling.
    pub litres: f64,
    /// Of the cold volume.
    pub fraction: f64,
    /// How far the bottle's level moves, where its area is known.
    pub bottle_mm: Option<f64>,
    pub working: Working,
}

/// The volume that a system gains from cold to hot, and the level in the bottle.
///
/// Formula: ΔV = V (ρ(cold)/ρ(hot) - 1); level = ΔV / area.
///
/// Inputs: a mixture with at most 60 % glycol by mass; the cold volume in L, 0 to 200; the
/// temperatures in °C, at most 100; the bottle's area in cm², 10 to 2000, if known.
///
/// Returns litres, the fraction, and mm.
///
/// # Errors
///
/// [`CoolantError::OutOfRange`].
///
/// # Limits
///
/// Metal and hoses grow too and take back up to a fifth; not all of the coolant gets as
/// hot as the reading. Mixtures swell by 4 to 5 % from 20 to 90 °C, propylene glycol more.
///
/// # Source
///
/// Melinder (2010), as for [`crate::density`].
///
/// ```
/// use coolant::{Glycol, Mixture, swell};
/// let half = Mixture::by_volume(Glycol::Ethylene, 0.5)?;
/// let found = swell(half, 9.2, 20.0, 90.0, Some(150.0))?;
/// assert!(found.fraction > 0.04 && found.fraction < 0.05);
/// assert_eq!(found.bottle_mm.map(f64::round), Some(28.0));
/// # Ok::<(), coolant::CoolantError>(())
/// ```
pub fn swell(
    mixture: Mixture,
    volume_l: f64,
    cold_c: f64,
    hot_c: f64,
    bottle_cm2: Option<f64>,
) -> Result<Swell, CoolantError> {
    within(
        say::the_volume(),
        volume_l,
        "L",
        0.0..=200.0,
        say::mend_figure_and_unit(),
    )?;
    if let Some(area_cm2) = bottle_cm2 {
        within(
            say::bottles_area(),
            area_cm2,
            "cm²",
            10.0..=2000.0,
            say::mend_length_times_width(),
        )?;
    }
    let fraction = density_kg_per_m3(mixture, cold_c)? / density_kg_per_m3(mixture, hot_c)? - 1.0;
    let litres = volume_l * fraction;
    // A litre over a square centimetre is ten thousand millimetres high.
    let bottle_mm = bottle_cm2.map(|area_cm2| litres * 1e4 / area_cm2);
    let line = Line::new(say::gain_cold_to_hot(), sources::melinder())
        .formula("ΔV", "V·(ρc/ρh - 1)")
        .input("V", text::litres(volume_l))
        .input(say::cold(), text::celsius(cold_c))
        .input(say::hot_end(), text::celsius(hot_c))
        .value(text::litres(litres));
    let working = Working::new(say::swell_title())
        .line(line)
        .limit(say::metal_grows_too());
    let working = match bottle_mm {
        Some(level_mm) => working.line(
            Line::new(say::rise_in_the_bottle(), Source::derived())
                .formula("h", say::rise_formula())
                .value(text::millimetres(level_mm)),
        ),
        None => working,
    };
    Ok(Swell {
        litres,
        fraction,
        bottle_mm,
        working,
    })
}

/// What a volume measured at a temperature is at 20 °C.
pub(crate) fn at_20_c(
    mixture: Mixture,
    litres: f64,
    temperature_c: f64,
) -> Result<f64, CoolantError> {
    let ratio = density_kg_per_m3(mixture, temperature_c)? / density_kg_per_m3(mixture, 20.0)?;
    Ok(litres * ratio)
}
