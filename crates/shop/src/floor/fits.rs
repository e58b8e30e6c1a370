//! What fits where: how heavy and high a vehicle is, and what a lift takes.

use crate::snapshot::Snapshot;
use crate::trouble::Trouble;
use crate::world::vehicle_of;
use measure::{Decimal, Dimension, Unit, read};
use repair::{Fitted, Order, Token, Written};
use rust_decimal::prelude::ToPrimitive;
use stalls::Lift;

/// What a vehicle's figures are called in the record.
pub const WEIGHT: &str = "weight";
pub const HEIGHT: &str = "height";

/// How heavy and high a vehicle is, as far as somebody told.
#[derive(Debug, Clone, Copy, Default, PartialEq, Eq)]
pub struct Figures {
    pub weight_kg: Option<u32>,
    pub height_mm: Option<u32>,
}

/// What is known of an order's vehicle. What can't be read is not known.
///
/// # Errors
/// [`Trouble`], if the record cannot be read.
pub fn figures(snap: &Snapshot<'_>, order: &Order) -> Result<Figures, Trouble> {
    let Some(vehicle) = vehicle_of(order) else {
        return Ok(Figures::default());
    };
    let vehicle = snap.world().vehicle(&vehicle)?;
    let told = vehicle.figures();
    let figure = |name: &str| {
        let name = Token::new(name).ok()?;
        told.get(&name).map(|(value, _)| *value)
    };
    Ok(Figures {
        weight_kg: figure(WEIGHT).and_then(|value| Whole::Up.of(value, Unit::Kilogram)),
        height_mm: figure(HEIGHT).and_then(|value| Whole::Up.of(value, Unit::Millimetre)),
    })
}

/// A lift with what was told of it.
pub fn lift(fitted: Option<Fitted<'_>>) -> Lift {
    Lift {
        carries_kg: fitted
            .and_then(|fitted| fitted.carries)
            .and_then(|value| Whole::Down.of(value, Unit::Kilogram)),
        clears_mm: fitted
            .and_then(|fitted| fitted.clears)
            .and_then(|value| Whole::Down.of(value, Unit::Millimetre)),
    }
}

/// Whether a figure can be read as what it is told to be.
#[must_use]
pub fn reads(text: &str, dimension: Dimension) -> bool {
    read(text, dimension).is_ok()
}

/// To which side a figure is rounded: a vehicle is rather heavier, a lift rather weaker.
#[derive(Clone, Copy)]
enum Whole {
    Up,
    Down,
}

impl Whole {
    fn of(self, value: &Written, unit: Unit) -> Option<u32> {
        let read = read(value.as_str(), unit.dimension()).ok()?;
        let number: Decimal = read.convert(unit).ok()?.number();
        let whole = match self {
            Self::Up => number.ceil(),
            Self::Down => number.floor(),
        };
        whole.to_u32().filter(|whole| *whole > 0)
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_vehicle_is_rounded_up_a_lift_down_and_what_is_not_read_is_not_known() {
        let written = |text| Written::new(text).unwrap();
        let of = |whole: Whole, text, unit| whole.of(&written(text), unit);
        assert_eq!(of(Whole::Up, "2300 kg", Unit::Kilogram), Some(2300));
        // NIST SP 811 (2008), B.8: a pound is 0.453 592 37 kg; 5000 lb are 2267.96 kg.
        assert_eq!(of(Whole::Up, "5000 lb", Unit::Kilogram), Some(2268));
        assert_eq!(of(Whole::Down, "5000 lb", Unit::Kilogram), Some(2267));
        assert_eq!(of(Whole::Up, "1.985 m", Unit::Millimetre), Some(1985));
        assert_eq!(of(Whole::Up, "heavy", Unit::Kilogram), None);
        assert_eq!(of(Whole::Up, "2300 mm", Unit::Kilogram), None);
        assert_eq!(of(Whole::Up, "0 kg", Unit::Kilogram), None);
    }
}
