//! What was typed into a form's fields, read as quantities.

use coolant::{Amount, Concentrate, CoolantError, FreezeTable, Glycol, Mixture};
use measure::{Customary, Dimension, Measured, Unit};
use rust_decimal::Decimal;
use rust_decimal::prelude::FromPrimitive;
use std::collections::BTreeMap;

/// A form's fields by name, and what is wrong with them, each beside its own.
#[derive(Debug, Clone)]
pub struct Asked {
    fields: BTreeMap<String, String>,
    us: bool,
    /// By the field's name: what is wrong, and how to mend it.
    pub troubles: BTreeMap<String, String>,
}

/// Where nothing else is told.
const ROOM_C: f64 = 20.0;

impl Asked {
    /// Fields as they were sent; `us` for a shop that reads US customary units.
    #[must_use]
    pub fn new(fields: BTreeMap<String, String>, us: bool) -> Self {
        Self {
            fields,
            us,
            troubles: BTreeMap::new(),
        }
    }

    /// Whether anything was sent.
    #[must_use]
    pub fn is_blank(&self) -> bool {
        self.fields.values().all(|value| value.trim().is_empty())
    }

    /// What stands in a field; empty if it is not there.
    #[must_use]
    pub fn text(&self, name: &str) -> &str {
        self.fields.get(name).map_or("", |text| text.trim())
    }

    /// Puts a value into a field that nobody has filled.
    pub fn or_else(&mut self, name: &str, value: &str) {
        if self.text(name).is_empty() {
            self.fields.insert(name.to_owned(), value.to_owned());
        }
    }

    /// Whether the shop reads US customary units.
    #[must_use]
    pub fn is_us(&self) -> bool {
        self.us
    }

    /// The units of this shop.
    #[must_use]
    pub fn customary(&self) -> Customary {
        if self.us {
            Customary::Us
        } else {
            Customary::Metric
        }
    }

    /// What is wrong with a field, unless something is already.
    pub fn wrong(&mut self, name: &str, what: impl Into<String>) {
        self.troubles
            .entry(name.to_owned())
            .or_insert_with(|| crate::say::capital(&what.into()));
    }

    /// The value, or the trouble beside its field.
    pub(super) fn ok<T>(&mut self, name: &str, found: Result<T, CoolantError>) -> Option<T> {
        found
            .map_err(|error| self.wrong(name, error.to_string()))
            .ok()
    }

    fn number(&mut self, name: &str, text: &str, dimension: Dimension, unit: Unit) -> Option<f64> {
        match read(text, dimension, unit, usual(dimension, self.us)) {
            Ok(number) => Some(number),
            Err(what) => {
                self.wrong(name, what);
                None
            }
        }
    }

    fn optional(&mut self, name: &str, dimension: Dimension, unit: Unit) -> Option<f64> {
        let text = self.text(name).to_owned();
        (!text.is_empty())
            .then(|| self.number(name, &text, dimension, unit))
            .flatten()
    }

    /// Trouble beside a field that has to be filled and is not.
    pub(super) fn needed(&mut self, name: &str, mend: &str) {
        if self.text(name).is_empty() {
            self.wrong(name, format!("nothing is written; {mend}"));
        }
    }

    pub(super) fn litres(&mut self, name: &str) -> Option<f64> {
        self.optional(name, Dimension::Volume, Unit::Litre)
    }

    pub(super) fn kilopascals(&mut self, name: &str) -> Option<f64> {
        self.optional(name, Dimension::Pressure, Unit::Kilopascal)
    }

    pub(super) fn celsius(&mut self, name: &str) -> Option<f64> {
        self.optional(name, Dimension::Temperature, Unit::Celsius)
    }

    pub(super) fn metres(&mut self, name: &str) -> Option<f64> {
        self.optional(name, Dimension::Length, Unit::Metre)
    }

    pub(super) fn minutes(&mut self, name: &str) -> Option<f64> {
        self.optional(name, Dimension::Time, Unit::Minute)
    }

    pub(super) fn square_centimetres(&mut self, name: &str) -> Option<f64> {
        self.optional(name, Dimension::Area, Unit::SquareCentimetre)
    }

    pub(super) fn fraction(&mut self, name: &str) -> Option<f64> {
        if let Some(part) = coolant::parts(self.text(name)) {
            return Some(part);
        }
        let percent = self.optional(name, Dimension::Fraction, Unit::Percent)?;
        Some(percent / 100.0)
    }

    /// A number without a unit, such as a specific gravity.
    pub(super) fn plain(&mut self, name: &str) -> Option<f64> {
        let text = self.text(name).replace(',', ".");
        if text.is_empty() {
            return None;
        }
        let number = text.parse::<f64>().ok().filter(|number| number.is_finite());
        if number.is_none() {
            self.wrong(name, format!("`{text}` is no number; write 1.070"));
        }
        number
    }

    /// One amount, as far off as is usual where nothing is said.
    pub(super) fn amount(&mut self, name: &str, usual_l: f64) -> Option<Amount> {
        self.litres(name).map(|litres| Amount::new(litres, usual_l))
    }

    /// Several amounts: `4 L, 1.5 L`.
    pub(super) fn amounts(&mut self, name: &str) -> Vec<f64> {
        let text = self.text(name).to_owned();
        // A decimal comma has no blank behind it.
        let parts = text.split([';', '\n']).flat_map(|part| part.split(", "));
        let parts: Vec<String> = parts
            .map(|part| part.trim().to_owned())
            .filter(|part| !part.is_empty())
            .collect();
        parts
            .iter()
            .filter_map(|part| self.number(name, part, Dimension::Volume, Unit::Litre))
            .collect()
    }

    pub(super) fn glycol(&self) -> Glycol {
        Glycol::named(self.text("glycol")).unwrap_or(Glycol::Ethylene)
    }

    pub(super) fn concentrate(&mut self) -> Concentrate {
        self.fraction("bottle")
            .and_then(|part| self.ok("bottle", Concentrate::new(part)))
            .unwrap_or_default()
    }

    /// A strength in a field, told the way that `of` says: of concentrate where it says
    /// nothing, since that is what a bottle is.
    pub(super) fn strength(&mut self, name: &str) -> Option<Mixture> {
        let part = self.fraction(name)?;
        let glycol = self.glycol();
        let concentrate = self.concentrate();
        // "50/50" is what a bottle and a can of water make.
        let of = match coolant::parts(self.text(name)) {
            Some(_) => "concentrate",
            None => self.text("of"),
        };
        let mixture = match of {
            "glycol" => Mixture::by_volume(glycol, part),
            "mass" => Mixture::by_mass(glycol, part),
            _ => Mixture::of_concentrate(glycol, part, concentrate),
        };
        self.ok(name, mixture)
    }

    /// The points of a label, where some were entered.
    pub(super) fn table(&mut self) -> Option<FreezeTable> {
        let text = self.text("table").to_owned();
        if text.is_empty() {
            return None;
        }
        self.ok(
            "table",
            FreezeTable::read(&text, "the label or the coolant's maker"),
        )
    }

    /// Height above the sea; none where nothing is told.
    pub(super) fn altitude_m(&mut self) -> f64 {
        self.metres("altitude").unwrap_or(0.0)
    }

    pub(super) fn temperature_or_room(&mut self, name: &str) -> f64 {
        self.celsius(name).unwrap_or(ROOM_C)
    }

    /// In the shop's own unit alone, for large type.
    pub(super) fn large_c(&self, t_c: f64) -> String {
        let told = if self.us {
            format!("{:.0}\u{202f}°F", t_c * 1.8 + 32.0)
        } else {
            format!("{t_c:.0}\u{202f}°C")
        };
        told.replace('-', "\u{2212}")
    }

    /// In the shop's own unit alone, for large type.
    pub(super) fn large_l(&self, litres: f64) -> String {
        const LITRES_PER_QUART: f64 = 0.946_352_946;
        if self.us {
            format!("{:.1}\u{202f}qt", litres / LITRES_PER_QUART)
        } else {
            format!("{litres:.1}\u{202f}L")
        }
    }

    pub(super) fn show_c(&self, t_c: f64) -> String {
        show(t_c, 1, Unit::Celsius, self.customary())
    }

    pub(super) fn show_l(&self, litres: f64) -> String {
        show(litres, 2, Unit::Litre, self.customary())
    }

    pub(super) fn show_kpa(&self, kpa: f64) -> String {
        // The trade reads bar.
        show(kpa / 100.0, 2, Unit::Bar, self.customary())
    }
}

/// What a bare number means in a field, which says so.
pub(super) fn usual(dimension: Dimension, us: bool) -> Unit {
    match (dimension, us) {
        (Dimension::Volume, false) => Unit::Litre,
        (Dimension::Volume, true) => Unit::UsQuart,
        (Dimension::Pressure, false) => Unit::Bar,
        (Dimension::Pressure, true) => Unit::PoundPerSquareInch,
        (Dimension::Temperature, false) => Unit::Celsius,
        (Dimension::Temperature, true) => Unit::Fahrenheit,
        (Dimension::Length, false) => Unit::Metre,
        (Dimension::Length, true) => Unit::Foot,
        (Dimension::Area, false) => Unit::SquareCentimetre,
        (Dimension::Area, true) => Unit::SquareInch,
        (Dimension::Fraction, _) => Unit::Percent,
        _ => Unit::Minute,
    }
}

/// A quantity as people write it, in `unit`; a bare number is one of `bare`.
pub(super) fn read(
    text: &str,
    dimension: Dimension,
    unit: Unit,
    bare: Unit,
) -> Result<f64, String> {
    let text = text.trim().replace('\u{2212}', "-");
    let is_bare = text.ends_with(|last: char| last.is_ascii_digit());
    let text = if is_bare {
        format!("{text} {}", bare.symbol())
    } else {
        text
    };
    let measured = measure::read(&text, dimension).map_err(|error| error.to_string())?;
    let converted = measured.convert(unit).map_err(|error| error.to_string())?;
    let number = converted.number().to_string().parse::<f64>();
    number.map_err(|_| format!("`{text}` is too large; check it"))
}

/// A number of `unit` with at most `digits`, the other system's value beside it.
fn show(number: f64, digits: u32, unit: Unit, customary: Customary) -> String {
    let rounded = Decimal::from_f64(number).map(|number| {
        number.round_dp_with_strategy(digits, rust_decimal::RoundingStrategy::MidpointAwayFromZero)
    });
    rounded
        .and_then(|number| Measured::new(number.normalize(), unit).ok())
        .map_or_else(|| "unknown".to_owned(), |measured| measured.show(customary))
}

#[cfg(test)]
mod tests {
    use super::*;

    fn asked(fields: &[(&str, &str)]) -> Asked {
        let fields = fields
            .iter()
            .map(|(name, text)| ((*name).to_owned(), (*text).to_owned()))
            .collect();
        Asked::new(fields, false)
    }

    #[test]
    fn a_bare_number_is_of_the_usual_unit_and_a_unit_wins() {
        let mut one = asked(&[("cap", "1.1"), ("other", "15 psi"), ("t", "\u{2212}36")]);
        assert_eq!(one.kilopascals("cap"), Some(110.0));
        assert!(
            one.kilopascals("other")
                .is_some_and(|kpa| (kpa - 103.42).abs() < 0.01)
        );
        assert_eq!(one.celsius("t"), Some(-36.0));
        assert!(one.troubles.is_empty());
    }

    #[test]
    fn what_cannot_be_read_stands_beside_its_field() {
        let mut one = asked(&[("cap", "15 litres"), ("strength", "fifty")]);
        assert_eq!(one.kilopascals("cap"), None);
        assert_eq!(one.strength("strength"), None);
        assert!(
            one.troubles["cap"].contains("pressure"),
            "{:?}",
            one.troubles
        );
        assert!(one.troubles.contains_key("strength"));
    }

    #[test]
    fn fifty_of_antifreeze_is_not_fifty_of_glycol() {
        let strength = |of| asked(&[("strength", "50"), ("of", of)]).strength("strength");
        let volume = |of| strength(of).map(|mixture| (mixture.volume_fraction() * 1000.0).round());
        assert_eq!(volume("glycol"), Some(500.0));
        assert_eq!(volume("concentrate"), Some(472.0));
        assert_eq!(volume(""), Some(472.0));
        // Half a bottle and half water, whatever the field counts.
        let told = asked(&[("strength", "50/50"), ("of", "glycol")]).strength("strength");
        assert!(told.is_some_and(|mixture| (mixture.volume_fraction() - 0.472).abs() < 5e-4));
    }

    #[test]
    fn several_amounts_may_have_decimal_commas() {
        let mut one = asked(&[("in", "4 L, 1,5 L; 500 mL")]);
        assert_eq!(one.amounts("in"), [4.0, 1.5, 0.5]);
    }
}
