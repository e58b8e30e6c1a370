//! Boiling under the cap, the margin to it, and what an opened hot cap does.

use crate::error::{CoolantError, within};
use crate::mixture::Mixture;
use crate::phrases as say;
use crate::water::{atmosphere, boil_c as water_boil_c};
use crate::{sources, text};
use measure::{Line, Source, Working};

/// Up to this part of glycol by mass Raoult's law is used; beyond, glycol boils too.
const RAOULT_MASS_FRACTION_MAX: f64 = 0.75;

/// A margin below this is called thin, because the sensor reads cooler than the head
/// and a cap opens anywhere within a few kilopascals of its rating.
pub const THIN_MARGIN_K: f64 = 10.0;

/// Where the coolant boils.
#[derive(Clone, Debug, PartialEq)]
pub struct Boiling {
    /// Under the cap's full rating.
    pub boil_c: f64,
    /// With no pressure yet, or the cap off.
    pub boil_open_c: f64,
    /// Under the cap's full rating.
    pub absolute_pressure_kpa: f64,
    /// Outside, at this altitude.
    pub atmosphere_kpa: f64,
    pub working: Working,
}

/// How far the hottest reading stays from boiling.
#[derive(Clone, Debug, PartialEq)]
pub struct Margin {
    pub under_cap_k: f64,
    /// With no pressure; below zero it is the cap alone that keeps the coolant liquid.
    pub open_k: f64,
    pub standing: MarginStanding,
    pub working: Working,
}

/// What the margin means.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum MarginStanding {
    /// At least [`THIN_MARGIN_K`].
    Ample,
    /// Less than [`THIN_MARGIN_K`].
    Thin,
    /// The reading is at or above the boiling point under the cap.
    Boils,
}

/// What happens when the cap is opened now.
#[derive(Clone, Debug, PartialEq)]
pub struct OpenedCap {
    /// How far the coolant is above its boiling point at outside pressure.
    pub above_boiling_k: f64,
    /// It boils at once and throws out scalding coolant.
    pub boils_over: bool,
    /// To be shown before the step.
    pub caution: String,
    pub working: Working,
}

/// The boiling point of the coolant under its cap at an altitude.
///
/// Formula: water boils at Ts(p / x), where x is the part of water among the molecules
/// (Raoult; the glycol is taken as not boiling), and p = air + cap.
///
/// Inputs: a mixture with at most 75 % glycol by mass; the cap's gauge rating in kPa, 0
/// (no pressure yet) to 250; altitude in m, -500 to 6000.
///
/// Returns °C under the cap and open, and the absolute pressures in kPa.
///
/// # Errors
///
/// [`CoolantError::OutOfRange`].
///
/// # Limits
///
/// Raoult's law is an estimate: at half and half it agrees with tables within 1 to 2 K,
/// above 60 % it runs up to 5 K. The trade's "3 °F a psi" gives more than the steam
/// tables do (2.5 °F a psi up to 15 psi). A cap reaches its rating only when the coolant
/// is hot and the seal is good.
///
/// # Source
///
/// IAPWS R7-97(2012) for water; U.S. Standard Atmosphere, 1976; Raoult's law.
///
/// ```
/// use coolant::{Glycol, Mixture, boiling};
/// let half = Mixture::by_volume(Glycol::Ethylene, 0.5)?;
/// let found = boiling(half, 103.42, 0.0)?;
/// assert_eq!((found.boil_c.round(), found.boil_open_c.round()), (130.0, 108.0));
/// # Ok::<(), coolant::CoolantError>(())
/// ```
pub fn boiling(
    mixture: Mixture,
    cap_gauge_kpa: f64,
    altitude_m: f64,
) -> Result<Boiling, CoolantError> {
    within(
        say::the_caps_rating(),
        cap_gauge_kpa,
        "kPa",
        0.0..=250.0,
        say::mend_stamped_gauge_pressure(),
    )?;
    within(
        say::part_of_glycol_by_mass(),
        mixture.mass_fraction(),
        say::of_the_whole(),
        0.0..=RAOULT_MASS_FRACTION_MAX,
        say::mend_no_simple_law(),
    )?;
    let air = atmosphere(altitude_m)?;
    let air_kpa = air.absolute_kpa;
    let total_kpa = air_kpa + cap_gauge_kpa;
    let water = mixture.water_mole_fraction();
    let boil_c = water_boil_c(total_kpa / water)?;
    let boil_open_c = water_boil_c(air_kpa / water)?;

    let total = Line::new(say::absolute_under_cap(), Source::derived())
        .formula("p", say::air_and_cap())
        .input(say::cap(), text::kilopascals(cap_gauge_kpa))
        .value(text::kilopascals(total_kpa));
    let moles = Line::new(say::water_among_molecules(), Source::derived())
        .formula("x", "(1 - w)/18.015 / ((1 - w)/18.015 + w/Mg)")
        .input("w", text::percent(mixture.mass_fraction()))
        .value(text::plain(water));
    let under = Line::new(say::boils_under_cap(), sources::if97())
        .formula("t", "Ts(p/x)")
        .value(text::celsius(boil_c));
    let open = Line::new(say::boils_with_no_pressure(), sources::raoult())
        .formula("to", "Ts(pa/x)")
        .value(text::celsius(boil_open_c));
    let working = Working::new(say::boiling_point_title())
        .then(air.working)
        .line(total)
        .line(moles)
        .line(under)
        .line(open)
        .limit(say::raoult_limit())
        .limit(say::while_cap_keeps_rating());
    Ok(Boiling {
        boil_c,
        boil_open_c,
        absolute_pressure_kpa: total_kpa,
        atmosphere_kpa: air_kpa,
        working,
    })
}

/// The margin between the hottest reading and boiling.
///
/// Formula: boiling point - reading.
///
/// Inputs: a [`Boiling`]; the hottest reading in °C, -60 to 200.
///
/// Returns the margins in K, under the cap and open, and what they mean.
///
/// # Errors
///
/// [`CoolantError::OutOfRange`].
///
/// # Limits
///
/// A sensor in the thermostat housing reads cooler than the coolant between the exhaust
/// valves; by how much is not known here. Below [`THIN_MARGIN_K`] the margin is called thin.
///
/// # Source
///
/// Follows from [`boiling`].
///
/// ```
/// use coolant::{Glycol, MarginStanding, Mixture, boiling, margin};
/// let found = boiling(Mixture::by_volume(Glycol::Ethylene, 0.5)?, 110.0, 0.0)?;
/// let margin = margin(&found, 112.0)?;
/// assert_eq!(margin.standing, MarginStanding::Ample);
/// assert!(margin.open_k < 0.0);
/// # Ok::<(), coolant::CoolantError>(())
/// ```
pub fn margin(boiling: &Boiling, hottest_reading_c: f64) -> Result<Margin, CoolantError> {
    reading(hottest_reading_c)?;
    let under_cap_k = boiling.boil_c - hottest_reading_c;
    let open_k = boiling.boil_open_c - hottest_reading_c;
    let standing = if under_cap_k <= 0.0 {
        MarginStanding::Boils
    } else if under_cap_k < THIN_MARGIN_K {
        MarginStanding::Thin
    } else {
        MarginStanding::Ample
    };
    let line = |what: &str, boil_c: f64, margin_k: f64| {
        Line::new(what, Source::derived())
            .formula("Δ", say::boiling_less_reading())
            .input(say::boiling_point(), text::celsius(boil_c))
            .input(say::reading_of_coolant(), text::celsius(hottest_reading_c))
            .value(text::kelvins(margin_k))
    };
    let working = Working::new(say::margin_title())
        .line(line(say::margin_under_cap(), boiling.boil_c, under_cap_k))
        .line(line(
            say::margin_with_no_pressure(),
            boiling.boil_open_c,
            open_k,
        ))
        .limit(say::sensor_reads_cooler());
    Ok(Margin {
        under_cap_k,
        open_k,
        standing,
        working,
    })
}

/// What opening the cap does at the coolant's temperature.
///
/// Formula: coolant temperature - boiling point at outside pressure.
///
/// Inputs: a mixture and altitude as for [`boiling`]; the coolant's temperature in °C,
/// -60 to 200.
///
/// Returns how far it is above boiling in K, and the caution to show.
///
/// # Errors
///
/// [`CoolantError::OutOfRange`].
///
/// # Limits
///
/// Coolant below boiling can still scald, and the head may be hotter than the reading.
///
/// # Source
///
/// Follows from [`boiling`].
///
/// ```
/// use coolant::{Glycol, Mixture, opening_cap};
/// let half = Mixture::by_volume(Glycol::Ethylene, 0.5)?;
/// assert!(opening_cap(half, 0.0, 115.0)?.boils_over);
/// assert!(!opening_cap(half, 0.0, 40.0)?.boils_over);
/// # Ok::<(), coolant::CoolantError>(())
/// ```
pub fn opening_cap(
    mixture: Mixture,
    altitude_m: f64,
    coolant_c: f64,
) -> Result<OpenedCap, CoolantError> {
    reading(coolant_c)?;
    let open = boiling(mixture, 0.0, altitude_m)?;
    let above_boiling_k = coolant_c - open.boil_open_c;
    let boils_over = above_boiling_k > 0.0;
    let caution = if boils_over {
        say::would_burst_out(text::kelvins(above_boiling_k))
    } else if above_boiling_k > -THIN_MARGIN_K {
        say::close_to_boiling().to_owned()
    } else {
        say::open_only_cool().to_owned()
    };
    let line = Line::new(say::above_boiling(), Source::derived())
        .formula("Δ", say::coolant_less_to())
        .input(say::coolant(), text::celsius(coolant_c))
        .value(text::kelvins(above_boiling_k));
    let working = open.working.line(line);
    Ok(OpenedCap {
        above_boiling_k,
        boils_over,
        caution,
        working,
    })
}

fn reading(temperature_c: f64) -> Result<f64, CoolantError> {
    within(
        say::the_coolants_temperature(),
        temperature_c,
        "°C",
        -60.0..=200.0,
        say::mend_reading_and_unit(),
    )
}
