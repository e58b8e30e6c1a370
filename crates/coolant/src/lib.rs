//! Coolant: mixture, boiling under the cap, mixing, filling and bleeding, leak test.
//!
//! Strength is told in three ways that are never confused: glycol by mass, glycol by
//! volume at 20 °C, and volume of a concentrate that is not all glycol ([`Mixture`]).
//! Every calculator returns its value with a working. A published specification of the
//! vehicle maker stands above anything found here.
//!
//! How sure: tables of the freezing point differ by nearly 5 K at half and half, and every
//! answer says by how much; boiling by Raoult's law is good to 1 to 3 K.
//!
//! ```
//! use coolant::{Concentrate, Glycol, Mixture, boiling, freezing};
//!
//! let half = Mixture::of_concentrate(Glycol::Ethylene, 0.5, Concentrate::default())?;
//! let under_cap = boiling(half, 103.4, 1500.0)?;
//! assert!(freezing(half)?.freeze_c < -33.0);
//! assert!(under_cap.boil_c > 124.0 && under_cap.boil_open_c < 103.0);
//! # Ok::<(), coolant::CoolantError>(())
//! ```
//!
//! # What this crate must never know
//!
//! - Orders, vehicles, maps, gates, or who did what: it answers questions with numbers.
//! - Colour: it tells nothing of the inhibitor, and is not asked for.
//! - A capacity, a cap rating, a limit or a specification that nobody gave.
//! - Files, clocks, environment, or chance of its own.
//! - How its values are stored or sent.

mod amount;
mod bleed;
mod boil;
mod caution;
mod error;
mod fill;
mod inhibitor;
mod leak;
mod limits;
mod melinder;
mod mix;
mod mixture;
mod phrases;
mod property;
mod sources;
mod strong;
mod student;
mod swell;
mod table;
mod text;
mod vacuum;
mod water;

pub use amount::Amount;
pub use bleed::BleedWay;
pub use boil::{
    Boiling, Margin, MarginStanding, OpenedCap, THIN_MARGIN_K, boiling, margin, opening_cap,
};
pub use caution::{Caution, leak_test_steps};
pub use error::CoolantError;
pub use fill::{
    Balance, Basis, FillNote, FillQuestion, FillStanding, FillVerdict, MUCH_MISSING_L, Measure,
    Split, balance, fill_standing,
};
pub use inhibitor::{Inhibitor, InhibitorNote};
pub use leak::{
    Assumption, Contents, Jump, Leak, LeakLimit, LeakNote, LeakQuestion, LeakVerdict, LinePoint,
    Reading, TestPressure, Why, leak, test_pressure,
};
pub use limits::{StrengthStanding, USUAL_LIMITS, strength_standing};
pub use mix::{
    Addition, Bottles, DrainAndReplace, MixPlan, MixQuestion, REACHED_WITHIN, Round, Shelf, Stock,
    WholeBottles, drain_and_replace, mix, water_quality,
};
pub use mixture::{Concentrate, Glycol, Mixture, WATER_KG_PER_M3, parts};
pub use property::{
    Density, Freezing, SpecificHeat, Strength, Viscosity, density, freezing, specific_heat,
    strength_from_density, strength_from_freeze_point, viscosity,
};
pub use swell::{Swell, swell};
pub use table::{FreezeTable, freezing_by_table, strength_by_table};
pub use vacuum::{Hold, VacuumFill, VacuumQuestion, vacuum_fill};
pub use water::{Atmosphere, WaterBoiling, atmosphere, steam_pressure, water_boils};
