//! Freezing point, density, specific heat and viscosity, and strength from a reading.

use crate::error::{CoolantError, within};
use crate::melinder::{self, MASS_FRACTION_MAX, Property, TEMPERATURE_MAX_C};
use crate::mixture::{Glycol, Mixture};
use crate::phrases as say;
use crate::strong;
use crate::{sources, text};
use measure::{Line, Range, Source, Working};

/// How far good models and tables of the freezing point lie from the one used here, either way:
/// this much and a tenth of the freezing point itself. So wide a band holds every published row
/// of `checks/published/coolant*.toml`; at half and half it is nearly 5 K, because "50 %" is by
/// mass in one table, by volume in another, and of concentrate in a third.
const TABLES_WITHIN_K: f64 = 1.3;
const TABLES_WITHIN_PART: f64 = 0.1;

/// Where the first ice forms.
#[derive(Clone, Debug, PartialEq)]
pub struct Freezing {
    pub freeze_c: f64,
    /// Other models and tables lie within this of it, either way; nothing where the label's own
    /// points were entered.
    pub within_k: f64,
    pub working: Working,
}

impl Freezing {
    /// The warmest that any table puts it: what to count on.
    pub fn count_on_c(&self) -> f64 {
        (self.freeze_c + self.within_k).min(0.0)
    }
}

/// Mass of a volume.
#[derive(Clone, Debug, PartialEq)]
pub struct Density {
    /// Of glycol and water alone.
    pub kg_per_m3: f64,
    /// Bought coolant with its inhibitors lies in this band; the maker's curve is nearer.
    pub bought_kg_per_m3: Range<f64>,
    pub working: Working,
}

/// Heat that warms a kilogram by a kelvin.
#[derive(Clone, Debug, PartialEq)]
pub struct SpecificHeat {
    pub j_per_kg_k: f64,
    pub working: Working,
}

/// Dynamic viscosity.
#[derive(Clone, Debug, PartialEq)]
pub struct Viscosity {
    pub mpa_s: f64,
    pub working: Working,
}

/// A strength found from a reading.
#[derive(Clone, Debug, PartialEq)]
pub struct Strength {
    pub mixture: Mixture,
    /// Glycol by mass that a reading of bought coolant may stand for, where inhibitors blur it.
    pub mass_band: Option<Range<f64>>,
    pub working: Working,
}

/// The temperature at which the first ice forms.
///
/// Formula: Σ C(i) (x - xm)^i, x the glycol in per cent by mass.
///
/// Inputs: a mixture with at most 68 % ethylene or 61 % propylene glycol by mass; beyond 60 %
/// straight lines between published points.
///
/// Returns the freezing point in °C, and how far other models and tables lie from it.
///
/// # Errors
///
/// [`CoolantError::NoFreezingPoint`] beyond.
///
/// # Limits
///
/// Tables differ by nearly 5 K at half and half, and more beyond 60 %. Past 68 % of ethylene
/// glycol the freezing point turns back up; propylene glycol's does not, it thickens to a glass.
/// Ice that has begun to form is slush: the block bursts later.
///
/// # Source
///
/// Melinder, *Properties of Secondary Working Fluids for Indirect Systems* (IIR, 2010).
///
/// ```
/// use coolant::{Glycol, Mixture, freezing};
/// let half = Mixture::by_mass(Glycol::Ethylene, 0.5)?;
/// assert_eq!((freezing(half)?.freeze_c * 10.0).round(), -360.0);
/// # Ok::<(), coolant::CoolantError>(())
/// ```
pub fn freezing(mixture: Mixture) -> Result<Freezing, CoolantError> {
    if mixture.mass_fraction() > MASS_FRACTION_MAX {
        return strong::freezing(mixture);
    }
    let freeze_c = freeze_point_c(mixture)?;
    let line = Line::new(say::freezing_point(), sources::melinder())
        .formula("tf", "Σ C(i)·(x - xm)^i")
        .input(say::glycol(), mixture.glycol().to_string())
        .input("x", text::percent(mixture.mass_fraction()))
        .value(text::celsius(freeze_c));
    let working = Working::new(say::freezing_point_title())
        .line(line)
        .line(tables_line(freeze_c));
    Ok(Freezing {
        freeze_c,
        within_k: tables_within_k(freeze_c),
        working,
    })
}

/// How far other tables lie from a freezing point.
pub(crate) fn tables_within_k(freeze_c: f64) -> f64 {
    TABLES_WITHIN_K + TABLES_WITHIN_PART * freeze_c.abs()
}

pub(crate) fn tables_line(freeze_c: f64) -> Line {
    let within_k = tables_within_k(freeze_c);
    Line::new(say::other_models_and_tables(), sources::tables_compared())
        .formula("±", "1.3 K + 0.1·|tf|")
        .value(say::from_to(
            text::celsius(freeze_c - within_k),
            text::celsius((freeze_c + within_k).min(0.0)),
        ))
}

/// The density at a temperature.
///
/// Formula: Σ C(i,j) (x - xm)^i (t - tm)^j.
///
/// Inputs: a mixture with at most 60 % glycol by mass; a temperature from its freezing
/// point to 100 °C.
///
/// Returns kg/m³.
///
/// # Errors
///
/// [`CoolantError::OutOfRange`].
///
/// # Limits
///
/// Glycol and water only; bought coolant lies from 0.5 % below to 1.5 % above: the maker's own
/// curve is nearer.
///
/// # Source
///
/// Melinder (2010), as for [`freezing`].
///
/// ```
/// use coolant::{Glycol, Mixture, density};
/// let half = Mixture::by_mass(Glycol::Ethylene, 0.5)?;
/// assert_eq!(density(half, 20.0)?.kg_per_m3.round(), 1065.0);
/// # Ok::<(), coolant::CoolantError>(())
/// ```
pub fn density(mixture: Mixture, temperature_c: f64) -> Result<Density, CoolantError> {
    let kg_per_m3 = density_kg_per_m3(mixture, temperature_c)?;
    let value = text::number(kg_per_m3, "kg/m³");
    Ok(Density {
        kg_per_m3,
        bought_kg_per_m3: Range::new(LIGHTEST * kg_per_m3, kg_per_m3, DENSEST * kg_per_m3)
            .map_err(|_| CoolantError::Unsteady)?,
        working: property_working(
            [say::density_title(), say::density()],
            "ρ",
            mixture,
            temperature_c,
            value,
        ),
    })
}

/// Bought coolant against glycol and water alone: inhibitors make it denser, and tables differ
/// (ASTM D3306 concentrates, ASHRAE, three makers).
const LIGHTEST: f64 = 0.995;
const DENSEST: f64 = 1.015;

/// The specific heat at a temperature.
///
/// Formula: Σ C(i,j) (x - xm)^i (t - tm)^j.
///
/// Inputs: as for [`density`].
///
/// Returns J/(kg·K).
///
/// # Errors
///
/// [`CoolantError::OutOfRange`].
///
/// # Limits
///
/// Glycol and water only.
///
/// # Source
///
/// Melinder (2010), as for [`freezing`].
///
/// ```
/// use coolant::{Glycol, Mixture, specific_heat};
/// let half = Mixture::by_mass(Glycol::Ethylene, 0.5)?;
/// assert_eq!(specific_heat(half, 20.0)?.j_per_kg_k.round(), 3312.0);
/// # Ok::<(), coolant::CoolantError>(())
/// ```
pub fn specific_heat(mixture: Mixture, temperature_c: f64) -> Result<SpecificHeat, CoolantError> {
    let j_per_kg_k = evaluated(Property::SpecificHeat, mixture, temperature_c)?;
    let value = text::number(j_per_kg_k, "J/(kg·K)");
    Ok(SpecificHeat {
        j_per_kg_k,
        working: property_working(
            [say::specific_heat_title(), say::specific_heat()],
            "cp",
            mixture,
            temperature_c,
            value,
        ),
    })
}

/// The dynamic viscosity at a temperature.
///
/// Formula: exp(Σ C(i,j) (x - xm)^i (t - tm)^j).
///
/// Inputs: as for [`density`].
///
/// Returns mPa·s.
///
/// # Errors
///
/// [`CoolantError::OutOfRange`].
///
/// # Limits
///
/// Glycol and water only; handbook tables differ by a fifth near freezing.
///
/// # Source
///
/// Melinder (2010), as for [`freezing`].
///
/// ```
/// use coolant::{Glycol, Mixture, viscosity};
/// let half = Mixture::by_mass(Glycol::Ethylene, 0.5)?;
/// assert_eq!((viscosity(half, 20.0)?.mpa_s * 10.0).round(), 37.0);
/// # Ok::<(), coolant::CoolantError>(())
/// ```
pub fn viscosity(mixture: Mixture, temperature_c: f64) -> Result<Viscosity, CoolantError> {
    let mpa_s = libm::exp(evaluated(Property::LogViscosity, mixture, temperature_c)?);
    let value = text::number(mpa_s, "mPa·s");
    Ok(Viscosity {
        mpa_s,
        working: property_working(
            [say::viscosity_title(), say::viscosity()],
            "η",
            mixture,
            temperature_c,
            value,
        ),
    })
}

/// The strength from a freezing point read on a refractometer.
///
/// Formula: [`freezing`] solved for x by halving.
///
/// Inputs: the glycol in the vehicle; the scale that was read (refractometers have one
/// for each glycol); the reading in °C, from the freezing point at 60 % by mass up to 0.
///
/// Returns the mixture.
///
/// # Errors
///
/// [`CoolantError::WrongScale`] where the scale is not that of the coolant;
/// [`CoolantError::OutOfRange`].
///
/// # Limits
///
/// As for [`freezing`]: 3 K between models is about 2 % glycol. The instrument reads
/// refraction, which has no turning point, so beyond its scale it cannot be trusted here.
///
/// # Source
///
/// Melinder (2010), as for [`freezing`].
///
/// ```
/// use coolant::{Glycol, strength_from_freeze_point};
/// let found = strength_from_freeze_point(Glycol::Ethylene, Glycol::Ethylene, -36.0)?;
/// assert_eq!((found.mixture.mass_fraction() * 100.0).round(), 50.0);
/// assert!(strength_from_freeze_point(Glycol::Ethylene, Glycol::Propylene, -36.0).is_err());
/// # Ok::<(), coolant::CoolantError>(())
/// ```
pub fn strength_from_freeze_point(
    coolant: Glycol,
    scale: Glycol,
    freeze_c: f64,
) -> Result<Strength, CoolantError> {
    if scale != coolant {
        return Err(CoolantError::WrongScale { scale, coolant });
    }
    within(
        say::freezing_point_read(),
        freeze_c,
        "°C",
        melinder::freezing_c(coolant, MASS_FRACTION_MAX)..=0.0,
        match coolant {
            Glycol::Ethylene => say::mend_maybe_too_strong(),
            Glycol::Propylene => say::mend_not_measured_beyond(),
        },
    )?;
    let mass_fraction = solved(|x| -melinder::freezing_c(coolant, x), -freeze_c);
    let line = Line::new(say::strength_from_freezing(), sources::melinder())
        .formula("x", say::freezing_is_reading())
        .input(say::reading(), text::celsius(freeze_c));
    found(coolant, mass_fraction, line)
}

/// The strength from a density read on a hydrometer, at the temperature of the reading.
///
/// Formula: [`density`] solved for x by halving.
///
/// Inputs: the glycol; the density in kg/m³ (a hydrometer's specific gravity times that
/// of water at its mark, 999.0 at 60 °F, 998.2 at 20 °C); the temperature of the sample,
/// 0 to 100 °C.
///
/// Returns the mixture.
///
/// # Errors
///
/// [`CoolantError::OutOfRange`] where no strength from 0 to 60 % by mass has that density.
///
/// # Limits
///
/// 1 kg/m³ is about 0.8 % of ethylene glycol, but 1.3 to 2.5 % of propylene glycol: use a
/// refractometer for that. Inhibitors make bought coolant denser, so it seems stronger: the band
/// says by how much, the maker's own curve is nearer.
///
/// # Source
///
/// Melinder (2010), as for [`freezing`].
///
/// ```
/// use coolant::{Glycol, strength_from_density};
/// let found = strength_from_density(Glycol::Ethylene, 1040.5, 60.0)?;
/// assert_eq!((found.mixture.mass_fraction() * 100.0).round(), 50.0);
/// # Ok::<(), coolant::CoolantError>(())
/// ```
pub fn strength_from_density(
    glycol: Glycol,
    kg_per_m3: f64,
    temperature_c: f64,
) -> Result<Strength, CoolantError> {
    within(
        say::temperature_of_sample(),
        temperature_c,
        "°C",
        0.0..=TEMPERATURE_MAX_C,
        say::mend_nearer_to_room(),
    )?;
    let at = |x| melinder::evaluate(Property::Density, glycol, x, temperature_c);
    within(
        say::density_read(),
        kg_per_m3,
        "kg/m³",
        at(0.0)..=at(MASS_FRACTION_MAX),
        say::mend_no_mixture(),
    )?;
    let line = Line::new(say::strength_from_density(), sources::melinder())
        .formula("x", say::density_is_reading())
        .input(say::reading(), text::number(kg_per_m3, "kg/m³"))
        .input("t", text::celsius(temperature_c));
    let strength = found(glycol, solved(at, kg_per_m3), line)?;
    let low = solved(at, (kg_per_m3 / DENSEST).max(at(0.0)));
    let high = solved(at, (kg_per_m3 / LIGHTEST).min(at(MASS_FRACTION_MAX)));
    let middle = strength.mixture.mass_fraction();
    let band = Line::new(say::bought_coolant(), sources::bought_density())
        .formula("x", say::density_is_reading_band())
        .value(say::from_to(text::percent(low), text::percent(high)))
        .note(say::ask_for_the_curve());
    Ok(Strength {
        mass_band: Range::new(low.min(middle), middle, high.max(middle)).ok(),
        working: strength.working.line(band),
        ..strength
    })
}

pub(crate) fn freeze_point_c(mixture: Mixture) -> Result<f64, CoolantError> {
    fitted_strength(mixture)?;
    Ok(melinder::freezing_c(
        mixture.glycol(),
        mixture.mass_fraction(),
    ))
}

pub(crate) fn density_kg_per_m3(mixture: Mixture, temperature_c: f64) -> Result<f64, CoolantError> {
    evaluated(Property::Density, mixture, temperature_c)
}

fn evaluated(
    property: Property,
    mixture: Mixture,
    temperature_c: f64,
) -> Result<f64, CoolantError> {
    let freeze_c = freeze_point_c(mixture)?;
    within(
        say::the_temperature(),
        temperature_c,
        "°C",
        freeze_c..=TEMPERATURE_MAX_C,
        say::mend_liquid(),
    )?;
    Ok(melinder::evaluate(
        property,
        mixture.glycol(),
        mixture.mass_fraction(),
        temperature_c,
    ))
}

fn fitted_strength(mixture: Mixture) -> Result<f64, CoolantError> {
    within(
        say::part_of_glycol_by_mass(),
        mixture.mass_fraction(),
        say::of_the_whole(),
        0.0..=MASS_FRACTION_MAX,
        say::mend_not_measured_here(),
    )
}

/// The x from 0 to the greatest at which a rising `f` is `target`.
fn solved(f: impl Fn(f64) -> f64, target: f64) -> f64 {
    // Sixty halvings leave less than the last bit.
    let (low, high) = (0..60).fold((0.0, MASS_FRACTION_MAX), |(low, high), _| {
        let middle = f64::midpoint(low, high);
        if f(middle) < target {
            (middle, high)
        } else {
            (low, middle)
        }
    });
    f64::midpoint(low, high)
}

fn found(glycol: Glycol, mass_fraction: f64, line: Line) -> Result<Strength, CoolantError> {
    let mixture = Mixture::by_mass(glycol, mass_fraction)?;
    let by_volume = Line::new(say::same_by_volume(), sources::handbook())
        .formula("v", "(w/ρg) / (w/ρg + (1 - w)/ρw)")
        .value(text::percent(mixture.volume_fraction()));
    let working = Working::new(say::strength_title())
        .line(line.value(text::percent(mass_fraction)))
        .line(by_volume)
        .limit(say::good_for_two_percent());
    Ok(Strength {
        mixture,
        mass_band: None,
        working,
    })
}

fn property_working(
    [title, line]: [&str; 2],
    symbol: &str,
    mixture: Mixture,
    temperature_c: f64,
    value: String,
) -> Working {
    let given = Line::new(say::strength_by_mass(), Source::given())
        .symbol("x")
        .value(text::percent(mixture.mass_fraction()));
    let line = Line::new(line, sources::melinder())
        .formula(symbol, "Σ C(i,j)·(x - xm)^i·(t - tm)^j")
        .input(say::glycol(), mixture.glycol().to_string())
        .input("t", text::celsius(temperature_c))
        .value(value);
    Working::new(title)
        .line(given)
        .line(line)
        .limit(say::glycol_and_water_only())
}
