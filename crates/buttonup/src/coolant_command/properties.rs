//! Freezing, boiling and density.

use super::read::{self, Strength};
use super::{answered, refused};
use crate::answer::{Answer, Wrong};
use clap::Args;
use coolant::{Concentrate, FreezeTable, Freezing, MarginStanding, Mixture};
use measure::Working;
use serde_json::{Value, json};

/// Freezing.
#[derive(Debug, Args)]
pub struct Freeze {
    #[command(flatten)]
    strength: Strength,
    /// A freezing point read on a refractometer, instead of a strength.
    #[arg(long, allow_hyphen_values = true, conflicts_with_all = ["volume", "mass", "concentrate"])]
    reading: Option<String>,
    /// The refractometer's scale that was read; the coolant's own if not told.
    #[arg(long, requires = "reading", value_parser = ["ethylene", "propylene"])]
    scale: Option<String>,
    /// Points that the label or the maker publishes, such as "40% -24C, 50% -37C", by
    /// concentrate by volume: within them they win over what is computed.
    #[arg(long)]
    table: Option<String>,
    /// The least concentrate by volume that the vehicle maker allows.
    #[arg(long, default_value = "40%")]
    least: String,
    /// The most concentrate by volume that the vehicle maker allows.
    #[arg(long, default_value = "60%")]
    most: String,
}

/// Boiling.
#[derive(Debug, Args)]
pub struct Boil {
    #[command(flatten)]
    strength: Strength,
    /// The cap's rating, such as 15psi or 1.1bar.
    #[arg(long)]
    cap: String,
    /// Height above sea level.
    #[arg(long, default_value = "0m", allow_hyphen_values = true)]
    altitude: String,
    /// The hottest reading.
    #[arg(long, allow_hyphen_values = true)]
    hottest: Option<String>,
}

/// Density.
#[derive(Debug, Args)]
pub struct Density {
    #[command(flatten)]
    strength: Strength,
    /// Temperature of the coolant.
    #[arg(long, default_value = "20C", allow_hyphen_values = true)]
    temperature: String,
    /// A density read, in kg/m³, instead of a strength.
    #[arg(long, conflicts_with_all = ["volume", "mass", "concentrate", "specific_gravity"])]
    kg_per_m3: Option<f64>,
    /// A specific gravity read on a hydrometer marked for water at 60 °F.
    #[arg(long, conflicts_with_all = ["volume", "mass", "concentrate"])]
    specific_gravity: Option<f64>,
}

/// Density of water at 60 °F, which a hydrometer's 1.000 stands for.
const WATER_60_F_KG_PER_M3: f64 = 999.0;

pub fn freeze(args: &Freeze) -> Result<Answer, Wrong> {
    let concentrate = args.strength.concentrate()?;
    let table = args
        .table
        .as_deref()
        .map(|text| FreezeTable::read(text, "the label or the coolant's maker"))
        .transpose()
        .map_err(refused("--table"))?;
    let (mixture, found) = match &args.reading {
        Some(text) => {
            let glycol = args.strength.glycol();
            let scale = args.scale.as_deref().map_or(glycol, read::glycol);
            let freeze_c = read::celsius(text, "--reading")?;
            let found = match &table {
                Some(table) => {
                    coolant::strength_by_table(glycol, scale, freeze_c, concentrate, table)
                }
                None => coolant::strength_from_freeze_point(glycol, scale, freeze_c),
            };
            let found = found.map_err(refused("--reading"))?;
            (found.mixture, Some(found))
        }
        None => (args.strength.mixture()?, None),
    };
    let freezing = match &table {
        Some(table) => coolant::freezing_by_table(mixture, concentrate, table),
        None => coolant::freezing(mixture),
    };
    let freezing = freezing.map_err(refused("strength"))?;
    let (least, most) = (
        read::fraction(&args.least, "--least")?,
        read::fraction(&args.most, "--most")?,
    );
    let standing = coolant::strength_standing(mixture, concentrate, (least, most))
        .map_err(refused("--least, --most"))?;
    let lines = vec![
        freezing_text(&freezing),
        strength_text(mixture, concentrate),
        format!(
            "{standing}: {:.0} to {:.0} % concentrate by volume",
            least * 100.0,
            most * 100.0
        ),
    ];
    let own = json!({
        "freeze_c": freezing.freeze_c,
        "within_k": freezing.within_k,
        "count_on_c": freezing.count_on_c(),
        "standing": standing.to_string(),
    });
    let working = with_found(found, freezing.working);
    Ok(answered(
        lines,
        &[own, strength_json(mixture, concentrate)],
        &working,
    ))
}

fn freezing_text(freezing: &Freezing) -> String {
    if freezing.within_k > 0.0 {
        format!(
            "freezes at {:.1} °C; other tables put it between {:.1} and {:.1} °C, count on the warmer",
            freezing.freeze_c,
            freezing.count_on_c(),
            freezing.freeze_c - freezing.within_k
        )
    } else {
        format!(
            "freezes at {:.1} °C by the points entered",
            freezing.freeze_c
        )
    }
}

pub fn boil(args: &Boil) -> Result<Answer, Wrong> {
    let mixture = args.strength.mixture()?;
    let cap_kpa = read::kilopascals(&args.cap, "--cap")?;
    let altitude_m = read::metres(&args.altitude, "--altitude")?;
    let boiling =
        coolant::boiling(mixture, cap_kpa, altitude_m).map_err(refused("coolant boil"))?;
    let concentrate = args.strength.concentrate()?;
    let mut lines = vec![
        format!(
            "boils at {:.1} °C under the cap, {:.1} °C with no pressure",
            boiling.boil_c, boiling.boil_open_c
        ),
        format!(
            "{:.1} kPa absolute under the cap",
            boiling.absolute_pressure_kpa
        ),
        strength_text(mixture, concentrate),
    ];
    let own = json!({
        "boil_c": boiling.boil_c,
        "boil_open_c": boiling.boil_open_c,
        "absolute_pressure_kpa": boiling.absolute_pressure_kpa,
        "atmosphere_kpa": boiling.atmosphere_kpa,
    });
    let mut working = boiling.working.clone();
    let mut parts = vec![own, strength_json(mixture, concentrate)];
    if let Some(hottest) = &args.hottest {
        let hottest_c = read::celsius(hottest, "--hottest")?;
        let trouble = refused("--hottest");
        let margin = coolant::margin(&boiling, hottest_c).map_err(&trouble)?;
        let opened = coolant::opening_cap(mixture, altitude_m, hottest_c).map_err(&trouble)?;
        let standing = standing_word(margin.standing);
        lines.push(format!(
            "margin {:.1} K under the cap: {standing}",
            margin.under_cap_k
        ));
        lines.push(opened.caution.clone());
        parts.push(json!({
            "margin_k": margin.under_cap_k,
            "margin_open_k": margin.open_k,
            "margin": standing,
            "caution": opened.caution,
        }));
        working = working.then(margin.working);
    }
    Ok(answered(lines, &parts, &working))
}

pub fn density(args: &Density) -> Result<Answer, Wrong> {
    let temperature_c = read::celsius(&args.temperature, "--temperature")?;
    let gravity = args
        .specific_gravity
        .map(|gravity| gravity * WATER_60_F_KG_PER_M3);
    let (mixture, found) = match args.kg_per_m3.or(gravity) {
        Some(kg_per_m3) => {
            let glycol = args.strength.glycol();
            let found = coolant::strength_from_density(glycol, kg_per_m3, temperature_c)
                .map_err(refused("reading"))?;
            (found.mixture, Some(found))
        }
        None => (args.strength.mixture()?, None),
    };
    let trouble = refused("coolant density");
    let density = coolant::density(mixture, temperature_c).map_err(&trouble)?;
    let heat = coolant::specific_heat(mixture, temperature_c).map_err(&trouble)?;
    let viscosity = coolant::viscosity(mixture, temperature_c).map_err(&trouble)?;
    let concentrate = args.strength.concentrate()?;
    let bought = density.bought_kg_per_m3;
    let mut lines = vec![
        format!(
            "{:.1} kg/m³, {:.0} J/(kg·K), {:.2} mPa·s at {temperature_c:.1} °C",
            density.kg_per_m3, heat.j_per_kg_k, viscosity.mpa_s
        ),
        format!(
            "bought coolant with its inhibitors: {:.0} to {:.0} kg/m³; the maker's curve is nearer",
            bought.low(),
            bought.high()
        ),
        strength_text(mixture, concentrate),
    ];
    let band = found.as_ref().and_then(|found| found.mass_band);
    lines.extend(band.map(|band| {
        format!(
            "bought coolant that reads so: {:.0} to {:.0} % glycol by mass; ask its maker for the curve",
            band.low() * 100.0,
            band.high() * 100.0
        )
    }));
    let own = json!({
        "density_kg_per_m3": density.kg_per_m3,
        "bought_low_kg_per_m3": bought.low(),
        "bought_high_kg_per_m3": bought.high(),
        "mass_fraction_low": band.map(measure::Range::low),
        "mass_fraction_high": band.map(measure::Range::high),
        "specific_heat_j_per_kg_k": heat.j_per_kg_k,
        "viscosity_mpa_s": viscosity.mpa_s,
        "temperature_c": temperature_c,
    });
    let working = with_found(
        found,
        density.working.then(heat.working).then(viscosity.working),
    );
    Ok(answered(
        lines,
        &[own, strength_json(mixture, concentrate)],
        &working,
    ))
}

/// How a strength was found goes before what follows from it.
fn with_found(found: Option<coolant::Strength>, working: Working) -> Working {
    match found {
        Some(found) => found.working.then(working),
        None => working,
    }
}

fn standing_word(standing: MarginStanding) -> &'static str {
    match standing {
        MarginStanding::Ample => "ample",
        MarginStanding::Thin => "thin",
        MarginStanding::Boils => "boils",
    }
}

/// The same strength in its three ways.
pub fn strength_text(mixture: Mixture, concentrate: Concentrate) -> String {
    let of_concentrate = match mixture.concentrate_fraction(concentrate) {
        Some(part) => format!(", {:.1} % concentrate by volume", part * 100.0),
        None => ", stronger than the concentrate".to_owned(),
    };
    format!(
        "{} glycol: {:.1} % by mass, {:.1} % by volume{of_concentrate}",
        mixture.glycol(),
        mixture.mass_fraction() * 100.0,
        mixture.volume_fraction() * 100.0
    )
}

pub fn strength_json(mixture: Mixture, concentrate: Concentrate) -> Value {
    json!({
        "glycol": mixture.glycol().name(),
        "mass_fraction": mixture.mass_fraction(),
        "volume_fraction": mixture.volume_fraction(),
        "concentrate_fraction": mixture.concentrate_fraction(concentrate),
    })
}
