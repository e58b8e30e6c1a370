//! Glycol in water, and the three ways in which its strength is told.

use crate::error::{CoolantError, within};
use crate::phrases as say;
use std::fmt;

/// Density of water at 20 °C, kg/m³ (CRC Handbook of Chemistry and Physics).
pub const WATER_KG_PER_M3: f64 = 998.2;

/// Molar mass of water, g/mol.
const WATER_G_PER_MOL: f64 = 18.015;

/// Which glycol lowers the freezing point. Colour does not tell it.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Glycol {
    Ethylene,
    Propylene,
}

/// What stands on the shelf as concentrate or antifreeze: glycol with a few per cent
/// of inhibitors and water, which count as water here.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Concentrate {
    glycol_mass_fraction: f64,
}

/// One glycol in water, of a known strength.
///
/// "50 % antifreeze" is not "50 % glycol": the first is a volume of concentrate, which
/// itself is not all glycol. Each way of telling the strength has its own constructor
/// and its own reader.
///
/// # Limits
///
/// Volume fractions are of the parts before mixing, measured at 20 °C, as a jug
/// measures them. Glycol and water shrink together by up to 1.2 % (half and half), so
/// fractions of the finished volume come out up to half a per cent higher.
///
/// ```
/// use coolant::{Concentrate, Glycol, Mixture};
///
/// let glycol = Mixture::by_volume(Glycol::Ethylene, 0.5)?;
/// let antifreeze = Mixture::of_concentrate(Glycol::Ethylene, 0.5, Concentrate::default())?;
/// assert_eq!((glycol.mass_fraction() * 1e4).round(), 5273.0);
/// assert_eq!((antifreeze.mass_fraction() * 1e3).round(), 500.0);
/// # Ok::<(), coolant::CoolantError>(())
/// ```
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Mixture {
    glycol: Glycol,
    mass_fraction: f64,
}

impl Glycol {
    /// Both.
    pub const ALL: [Glycol; 2] = [Glycol::Ethylene, Glycol::Propylene];

    /// `ethylene` or `propylene`.
    pub fn name(self) -> &'static str {
        match self {
            Glycol::Ethylene => "ethylene",
            Glycol::Propylene => "propylene",
        }
    }

    /// The glycol of that name.
    pub fn named(name: &str) -> Option<Glycol> {
        Glycol::ALL.into_iter().find(|glycol| glycol.name() == name)
    }

    /// Density of the pure glycol at 20 °C (CRC Handbook of Chemistry and Physics).
    pub fn kg_per_m3(self) -> f64 {
        match self {
            Glycol::Ethylene => 1113.5,
            Glycol::Propylene => 1036.1,
        }
    }

    /// Molar mass, from the formulas C2H6O2 and C3H8O2.
    pub fn g_per_mol(self) -> f64 {
        match self {
            Glycol::Ethylene => 62.068,
            Glycol::Propylene => 76.095,
        }
    }
}

impl fmt::Display for Glycol {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(match self {
            Glycol::Ethylene => say::glycol_ethylene(),
            Glycol::Propylene => say::glycol_propylene(),
        })
    }
}

impl Concentrate {
    /// A concentrate with this part of glycol by mass, 0.5 to 1.
    ///
    /// # Errors
    ///
    /// [`CoolantError::OutOfRange`].
    pub fn new(glycol_mass_fraction: f64) -> Result<Concentrate, CoolantError> {
        within(
            say::glycol_in_concentrate(),
            glycol_mass_fraction,
            say::of_its_mass(),
            0.5..=1.0,
            say::mend_on_safety_sheet(),
        )
        .map(|glycol_mass_fraction| Concentrate {
            glycol_mass_fraction,
        })
    }

    /// The part of glycol by mass.
    pub fn glycol_mass_fraction(self) -> f64 {
        self.glycol_mass_fraction
    }

    /// The part of glycol by volume.
    pub fn glycol_volume_fraction(self, glycol: Glycol) -> f64 {
        volume_of_mass(glycol, self.glycol_mass_fraction)
    }
}

/// 95 % glycol by mass.
impl Default for Concentrate {
    fn default() -> Concentrate {
        Concentrate {
            glycol_mass_fraction: 0.95,
        }
    }
}

impl Mixture {
    /// A mixture with this part of glycol by mass, 0 to 1.
    ///
    /// # Errors
    ///
    /// [`CoolantError::OutOfRange`].
    pub fn by_mass(glycol: Glycol, fraction: f64) -> Result<Mixture, CoolantError> {
        fraction_of(say::part_of_glycol_by_mass(), fraction).map(|mass_fraction| Mixture {
            glycol,
            mass_fraction,
        })
    }

    /// A mixture with this part of pure glycol by volume at 20 °C, 0 to 1.
    ///
    /// Formula: w = v ρg / (v ρg + (1 - v) ρw).
    ///
    /// # Errors
    ///
    /// [`CoolantError::OutOfRange`].
    pub fn by_volume(glycol: Glycol, fraction: f64) -> Result<Mixture, CoolantError> {
        let volume = fraction_of(say::part_of_glycol_by_volume(), fraction)?;
        let glycol_kg = volume * glycol.kg_per_m3();
        let water_kg = (1.0 - volume) * WATER_KG_PER_M3;
        Ok(Mixture {
            glycol,
            mass_fraction: glycol_kg / (glycol_kg + water_kg),
        })
    }

    /// A mixture with this part of concentrate by volume at 20 °C, 0 to 1.
    ///
    /// # Errors
    ///
    /// [`CoolantError::OutOfRange`].
    pub fn of_concentrate(
        glycol: Glycol,
        fraction: f64,
        concentrate: Concentrate,
    ) -> Result<Mixture, CoolantError> {
        let volume = fraction_of(say::part_of_concentrate_by_volume(), fraction)?;
        Mixture::by_volume(glycol, volume * concentrate.glycol_volume_fraction(glycol))
    }

    /// Water alone, asked about as a mixture of no strength.
    pub fn water(glycol: Glycol) -> Mixture {
        Mixture {
            glycol,
            mass_fraction: 0.0,
        }
    }

    /// Which glycol.
    pub fn glycol(self) -> Glycol {
        self.glycol
    }

    /// The part of glycol by mass.
    pub fn mass_fraction(self) -> f64 {
        self.mass_fraction
    }

    /// The part of pure glycol by volume at 20 °C.
    pub fn volume_fraction(self) -> f64 {
        volume_of_mass(self.glycol, self.mass_fraction)
    }

    /// The part of `concentrate` by volume at 20 °C; `None` where the mixture is
    /// stronger than the concentrate.
    pub fn concentrate_fraction(self, concentrate: Concentrate) -> Option<f64> {
        let fraction = self.volume_fraction() / concentrate.glycol_volume_fraction(self.glycol);
        // A round trip may end a last bit above one.
        (fraction <= 1.0 + 1e-12).then_some(fraction.min(1.0))
    }

    /// The part of water among the molecules.
    pub fn water_mole_fraction(self) -> f64 {
        let water_mol = (1.0 - self.mass_fraction) / WATER_G_PER_MOL;
        let glycol_mol = self.mass_fraction / self.glycol.g_per_mol();
        water_mol / (water_mol + glycol_mol)
    }
}

/// The part of concentrate in `50/50` or `60:40`: antifreeze from the bottle first, then water.
///
/// Returns nothing where the text is no such pair, or its parts do not make a hundred.
///
/// ```
/// assert_eq!(coolant::parts("60/40"), Some(0.6));
/// assert_eq!(coolant::parts("50 %"), None);
/// ```
pub fn parts(text: &str) -> Option<f64> {
    let (antifreeze, water) = text.split_once(['/', ':'])?;
    let number = |text: &str| text.trim().trim_end_matches('%').trim().parse::<f64>().ok();
    let (antifreeze, water) = (number(antifreeze)?, number(water)?);
    let whole = (antifreeze + water - 100.0).abs() < 1e-9;
    (whole && antifreeze >= 0.0 && water >= 0.0).then_some(antifreeze / 100.0)
}

fn fraction_of(what: &'static str, fraction: f64) -> Result<f64, CoolantError> {
    within(
        what,
        fraction,
        say::of_the_whole(),
        0.0..=1.0,
        say::mend_fifty_percent(),
    )
}

/// v = (w / ρg) / (w / ρg + (1 - w) / ρw).
fn volume_of_mass(glycol: Glycol, mass_fraction: f64) -> f64 {
    let glycol_m3 = mass_fraction / glycol.kg_per_m3();
    let water_m3 = (1.0 - mass_fraction) / WATER_KG_PER_M3;
    glycol_m3 / (glycol_m3 + water_m3)
}
