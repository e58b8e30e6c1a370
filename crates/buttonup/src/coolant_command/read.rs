//! Words of the command line as quantities.

use super::refused;
use crate::answer::Wrong;
use clap::Args;
use coolant::{Amount, Concentrate, Glycol, Mixture};
use measure::{Dimension, Measured, Unit, Unreadable};

/// Which glycol, and how strong, told in one of three ways.
#[derive(Debug, Args)]
pub struct Strength {
    /// Which glycol.
    #[arg(long, default_value = "ethylene", value_parser = ["ethylene", "propylene"])]
    glycol: String,
    /// Glycol by volume, such as 50%.
    #[arg(long, conflicts_with_all = ["mass", "concentrate"])]
    volume: Option<String>,
    /// Glycol by mass, such as 50%.
    #[arg(long, conflicts_with = "concentrate")]
    mass: Option<String>,
    /// Antifreeze concentrate by volume, such as 50%.
    #[arg(long)]
    concentrate: Option<String>,
    /// Glycol in the concentrate, by mass.
    #[arg(long, default_value = "95%")]
    concentrate_glycol: String,
}

impl Strength {
    pub fn glycol(&self) -> Glycol {
        glycol(&self.glycol)
    }

    pub fn concentrate(&self) -> Result<Concentrate, Wrong> {
        concentrate(&self.concentrate_glycol, "--concentrate-glycol")
    }

    /// The mixture, where a strength was told.
    pub fn told(&self) -> Result<Option<Mixture>, Wrong> {
        let glycol = self.glycol();
        let of_glycol = [(&self.volume, "--volume"), (&self.mass, "--mass")];
        for (text, place) in of_glycol {
            if let Some(text) = text.as_ref().filter(|text| coolant::parts(text).is_some()) {
                return Err(Wrong::input(
                    place,
                    format!(
                        "`{text}` is parts of antifreeze from the bottle and of water, not of glycol"
                    ),
                    format!("write --concentrate {text}"),
                ));
            }
        }
        let mixture = if let Some(text) = &self.volume {
            Mixture::by_volume(glycol, fraction(text, "--volume")?)
        } else if let Some(text) = &self.mass {
            Mixture::by_mass(glycol, fraction(text, "--mass")?)
        } else if let Some(text) = &self.concentrate {
            Mixture::of_concentrate(
                glycol,
                fraction(text, "--concentrate")?,
                self.concentrate()?,
            )
        } else {
            return Ok(None);
        };
        mixture.map(Some).map_err(refused("strength"))
    }

    /// The mixture; it has to be told.
    pub fn mixture(&self) -> Result<Mixture, Wrong> {
        self.told()?.ok_or_else(|| {
            Wrong::input(
                "strength",
                "no strength is told",
                "give one of --volume 50%, --mass 50%, --concentrate 50%",
            )
        })
    }
}

/// The parser of the command line lets only the two names through.
pub fn glycol(name: &str) -> Glycol {
    Glycol::named(name).unwrap_or(Glycol::Ethylene)
}

pub fn concentrate(text: &str, place: &str) -> Result<Concentrate, Wrong> {
    Concentrate::new(fraction(text, place)?).map_err(refused(place))
}

/// `50 %`, or `50/50` where it says parts of antifreeze and of water.
pub fn fraction(text: &str, place: &str) -> Result<f64, Wrong> {
    if let Some(part) = coolant::parts(text) {
        return Ok(part);
    }
    Ok(number(text, Dimension::Fraction, Unit::Percent, place)? / 100.0)
}

pub fn litres(text: &str, place: &str) -> Result<f64, Wrong> {
    number(text, Dimension::Volume, Unit::Litre, place)
}

pub fn kilopascals(text: &str, place: &str) -> Result<f64, Wrong> {
    number(text, Dimension::Pressure, Unit::Kilopascal, place)
}

pub fn celsius(text: &str, place: &str) -> Result<f64, Wrong> {
    number(text, Dimension::Temperature, Unit::Celsius, place)
}

pub fn kelvins(text: &str, place: &str) -> Result<f64, Wrong> {
    number(
        text,
        Dimension::TemperatureDifference,
        Unit::KelvinDifference,
        place,
    )
}

pub fn metres(text: &str, place: &str) -> Result<f64, Wrong> {
    number(text, Dimension::Length, Unit::Metre, place)
}

pub fn minutes(text: &str, place: &str) -> Result<f64, Wrong> {
    number(text, Dimension::Time, Unit::Minute, place)
}

pub fn square_centimetres(text: &str, place: &str) -> Result<f64, Wrong> {
    number(text, Dimension::Area, Unit::SquareCentimetre, place)
}

/// `5.5L`, or `5.5L~0.4L` with how far it may be off.
pub fn amount(text: &str, usual_l: f64, place: &str) -> Result<Amount, Wrong> {
    match text.split_once('~') {
        Some((volume, tolerance)) => Ok(Amount::new(
            litres(volume, place)?,
            litres(tolerance, place)?,
        )),
        None => Ok(Amount::new(litres(text, place)?, usual_l)),
    }
}

/// An amount with the temperature at which it was read: `5.5L~0.4L@35C`.
pub fn amount_at(text: &str, usual_l: f64, place: &str) -> Result<(Amount, f64), Wrong> {
    const ROOM_C: f64 = 20.0;
    match text.split_once('@') {
        Some((volume, temperature)) => Ok((
            amount(volume, usual_l, place)?,
            celsius(temperature, place)?,
        )),
        None => Ok((amount(text, usual_l, place)?, ROOM_C)),
    }
}

/// What the reader of quantities says, told as "what is wrong; how to mend it".
fn unreadable(place: &str) -> impl Fn(Unreadable) -> Wrong {
    move |error| {
        let message = error.to_string();
        let (what, mend) = message.split_once("; ").unwrap_or((&message, "check it"));
        Wrong::input(place, what, mend)
    }
}

fn number(text: &str, dimension: Dimension, unit: Unit, place: &str) -> Result<f64, Wrong> {
    let measured = measure::read(text, dimension).map_err(unreadable(place))?;
    in_unit(&measured, unit, place)
}

fn in_unit(measured: &Measured, unit: Unit, place: &str) -> Result<f64, Wrong> {
    let converted = measured.convert(unit).map_err(Unreadable::from);
    let number = converted.map_err(unreadable(place))?.number();
    // Every decimal number prints as one that reads as the nearest double.
    Ok(number.to_string().parse().unwrap_or(f64::NAN))
}
