//! What was typed into a form's fields, read as quantities.

use crate::form::{Named, Part, Takes, fields, in_row};
use crate::phrases::form as say;
use crate::{Trouble, capital};
use coolant::{Amount, Concentrate, FreezeTable, Glycol, Mixture};
use fastener::repair::Planning;
use measure::{Customary, Dimension, Measured, Unit};
use rust_decimal::Decimal;
use rust_decimal::prelude::FromPrimitive;
use std::collections::BTreeMap;

/// What a shop knows whoever asks.
#[derive(Debug, Clone)]
pub struct Shop {
    /// The units that it reads.
    pub customary: Customary,
    /// Its height above the sea, as told.
    pub altitude: Option<String>,
    /// What counts when ways to mend a thread are ranked.
    pub planning: Planning,
}

impl Default for Shop {
    fn default() -> Self {
        Shop {
            customary: Customary::Metric,
            altitude: None,
            planning: Planning::default(),
        }
    }
}

/// A form's fields by name, and what is wrong with them, each beside its own.
#[derive(Debug, Clone)]
pub struct Asked {
    fields: BTreeMap<String, String>,
    shop: Shop,
    /// By the field's name: what is wrong, and how to mend it.
    pub troubles: BTreeMap<String, String>,
}

/// Where nothing else is told.
const ROOM_C: f64 = 20.0;

impl Asked {
    /// Fields as they were sent.
    #[must_use]
    pub fn new(fields: BTreeMap<String, String>, shop: Shop) -> Self {
        Self {
            fields,
            shop,
            troubles: BTreeMap::new(),
        }
    }

    /// The same, with the shop's height where nobody has written another.
    #[must_use]
    pub fn at_the_shop(mut self) -> Self {
        if let Some(altitude) = self.shop.altitude.clone() {
            self.or_else("altitude", &altitude);
        }
        self
    }

    /// Gives each bare number the unit that stands beside its field, and looks whether it can
    /// be meant.
    pub fn complete(&mut self, form: &'static [Part]) {
        for field in fields(form) {
            self.complete_one(&field);
        }
    }

    fn complete_one(&mut self, field: &Named) {
        let Takes::Number { units, limits } = field.takes else {
            return;
        };
        let text = self.text(&field.name).replace('\u{2212}', "-");
        let text = text.trim_start_matches('+');
        if text.is_empty() {
            return;
        }
        let unit = units.read_by(self.customary());
        let mut text = text.to_owned();
        if text.replace(',', ".").parse::<f64>().is_ok() {
            text = format!("{text} {}", unit.symbol());
            self.set(&field.name, &text);
        }
        let (Some((least, most)), Ok(number)) =
            (limits, read(&text, unit.dimension(), units.metric, unit))
        else {
            return;
        };
        if !(least..=most).contains(&number) {
            let symbol = units.metric.symbol();
            self.wrong(&field.name, say::lies_outside(text, least, most, symbol));
        }
    }

    /// The fields as they stand.
    #[must_use]
    pub fn fields(&self) -> &BTreeMap<String, String> {
        &self.fields
    }

    /// What stands in a field; empty if it is not there.
    #[must_use]
    pub fn text(&self, name: &str) -> &str {
        self.fields.get(name).map_or("", |text| text.trim())
    }

    /// A field's text, nothing where it is blank.
    #[must_use]
    pub fn some(&self, name: &str) -> Option<&str> {
        Some(self.text(name)).filter(|text| !text.is_empty())
    }

    /// The last row of which anything is written, from 1; the first always stands.
    #[must_use]
    pub fn rows(&self, most: usize, parts: &'static [Part]) -> usize {
        let named = fields(parts);
        // A page sends what is chosen beforehand, too.
        let is_written = |row: &usize| {
            named.iter().any(|field| {
                let text = self.text(&in_row(&field.name, *row));
                let usual = match field.takes {
                    Takes::Choice { of, first: true } => of.first().map_or("", |(code, _)| code),
                    _ => "",
                };
                !text.is_empty() && text != usual
            })
        };
        (1..=most).rev().find(is_written).unwrap_or(1)
    }

    /// Writes into a field, whatever stands there.
    pub fn set(&mut self, name: &str, value: &str) {
        self.fields.insert(name.to_owned(), value.to_owned());
    }

    /// Puts a value into a field that nobody has filled.
    pub fn or_else(&mut self, name: &str, value: &str) {
        if self.text(name).is_empty() {
            self.set(name, value);
        }
    }

    /// Whether the shop reads US customary units.
    #[must_use]
    pub fn is_us(&self) -> bool {
        self.shop.customary == Customary::Us
    }

    /// The units of this shop.
    #[must_use]
    pub fn customary(&self) -> Customary {
        self.shop.customary
    }

    /// What this shop knows.
    #[must_use]
    pub fn shop(&self) -> &Shop {
        &self.shop
    }

    /// What is wrong with a field, unless something is already.
    pub fn wrong(&mut self, name: &str, what: impl Into<String>) {
        self.troubles
            .entry(name.to_owned())
            .or_insert_with(|| capital(&what.into()));
    }

    /// Everything that is wrong, field by field.
    #[must_use]
    pub fn told(&self) -> Vec<Trouble> {
        let each = self.troubles.iter().map(|(place, told)| {
            let (what, mend) = told
                .rsplit_once("; ")
                .or_else(|| told.rsplit_once(": "))
                .unwrap_or((told, say::look_again()));
            Trouble {
                place: place.clone(),
                what: what.to_owned(),
                mend: mend.to_owned(),
            }
        });
        each.collect()
    }

    /// The value, or the trouble beside its field.
    pub(crate) fn ok<T, E: ToString>(&mut self, name: &str, found: Result<T, E>) -> Option<T> {
        found
            .map_err(|error| self.wrong(name, error.to_string()))
            .ok()
    }

    fn number(&mut self, name: &str, text: &str, unit: Unit) -> Option<f64> {
        let bare = usual(unit.dimension(), self.is_us());
        let found = read(text, unit.dimension(), unit, bare);
        self.ok(name, found)
    }

    /// A quantity in `unit`; nothing where nothing is written.
    pub(crate) fn quantity(&mut self, name: &str, unit: Unit) -> Option<f64> {
        let text = self.some(name)?.to_owned();
        self.number(name, &text, unit)
    }

    /// A quantity that has to be written.
    pub(crate) fn must(&mut self, name: &str, unit: Unit) -> Option<f64> {
        self.needed(name, say::write_it_with_its_unit_if());
        self.quantity(name, unit)
    }

    /// A whole number that has to be written.
    pub(crate) fn count(&mut self, name: &str) -> Option<usize> {
        let number = self.text(name).parse::<usize>().ok();
        if number.is_none() {
            self.wrong(name, say::it_is_no_count_write_a());
        }
        number
    }

    /// Trouble beside a field that has to be filled and is not.
    pub(crate) fn needed(&mut self, name: &str, mend: &str) {
        if self.text(name).is_empty() {
            self.wrong(name, say::nothing_is_written(mend));
        }
    }

    /// A volume in litres.
    pub fn litres(&mut self, name: &str) -> Option<f64> {
        self.quantity(name, Unit::Litre)
    }

    pub(crate) fn kilopascals(&mut self, name: &str) -> Option<f64> {
        self.quantity(name, Unit::Kilopascal)
    }

    pub(crate) fn celsius(&mut self, name: &str) -> Option<f64> {
        self.quantity(name, Unit::Celsius)
    }

    pub(crate) fn minutes(&mut self, name: &str) -> Option<f64> {
        self.quantity(name, Unit::Minute)
    }

    /// An area in cm².
    pub fn square_centimetres(&mut self, name: &str) -> Option<f64> {
        self.quantity(name, Unit::SquareCentimetre)
    }

    pub(crate) fn fraction(&mut self, name: &str) -> Option<f64> {
        if let Some(part) = coolant::parts(self.text(name)) {
            return Some(part);
        }
        let percent = self.quantity(name, Unit::Percent)?;
        Some(percent / 100.0)
    }

    /// A number without a unit, such as a specific gravity.
    pub(crate) fn plain(&mut self, name: &str) -> Option<f64> {
        let text = self.text(name).replace(',', ".");
        if text.is_empty() {
            return None;
        }
        let number = text.parse::<f64>().ok().filter(|number| number.is_finite());
        if number.is_none() {
            self.wrong(name, say::is_no_number(text));
        }
        number
    }

    /// One amount, as far off as is usual where nothing is said.
    pub(crate) fn amount(&mut self, name: &str, usual_l: f64) -> Option<Amount> {
        self.litres(name).map(|litres| Amount::new(litres, usual_l))
    }

    /// Several amounts: `4 L, 1.5 L`.
    pub(crate) fn amounts(&mut self, name: &str) -> Vec<f64> {
        let text = self.text(name).to_owned();
        // A decimal comma has no blank behind it.
        let parts = text.split([';', '\n']).flat_map(|part| part.split(", "));
        let parts: Vec<String> = parts
            .map(|part| part.trim().to_owned())
            .filter(|part| !part.is_empty())
            .collect();
        parts
            .iter()
            .filter_map(|part| self.number(name, part, Unit::Litre))
            .collect()
    }

    pub(crate) fn glycol(&self) -> Glycol {
        Glycol::named(self.text("glycol")).unwrap_or(Glycol::Ethylene)
    }

    pub(crate) fn concentrate(&mut self) -> Concentrate {
        self.fraction("bottle")
            .and_then(|part| self.ok("bottle", Concentrate::new(part)))
            .unwrap_or_default()
    }

    /// A strength in a field, told the way that `of` says: of concentrate where it says
    /// nothing, since that is what a bottle is.
    pub fn strength(&mut self, name: &str) -> Option<Mixture> {
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
    pub(crate) fn table(&mut self) -> Option<FreezeTable> {
        let text = self.text("table").to_owned();
        if text.is_empty() {
            return None;
        }
        self.ok(
            "table",
            FreezeTable::read(&text, say::the_label_or_the_coolants_maker()),
        )
    }

    /// Height above the sea; none where nothing is told.
    pub(crate) fn altitude_m(&mut self) -> f64 {
        self.quantity("altitude", Unit::Metre).unwrap_or(0.0)
    }

    pub(crate) fn temperature_or_room(&mut self, name: &str) -> f64 {
        self.celsius(name).unwrap_or(ROOM_C)
    }

    /// In the shop's own unit alone, for large type.
    pub(crate) fn large_c(&self, t_c: f64) -> String {
        let told = if self.is_us() {
            format!("{:.0}\u{202f}°F", t_c * 1.8 + 32.0)
        } else {
            format!("{t_c:.0}\u{202f}°C")
        };
        told.replace('-', "\u{2212}")
    }

    /// In the shop's own unit alone, for large type.
    pub(crate) fn large_l(&self, litres: f64) -> String {
        const LITRES_PER_QUART: f64 = 0.946_352_946;
        phrases::figures(&if self.is_us() {
            format!("{:.1}\u{202f}qt", litres / LITRES_PER_QUART)
        } else {
            format!("{litres:.1}\u{202f}L")
        })
    }

    pub(crate) fn show_c(&self, t_c: f64) -> String {
        show(t_c, 1, Unit::Celsius, self.customary())
    }

    /// Litres, with the other units beside.
    pub fn show_l(&self, litres: f64) -> String {
        show(litres, 2, Unit::Litre, self.customary())
    }

    pub(crate) fn show_kpa(&self, kpa: f64) -> String {
        // The trade reads bar.
        show(kpa / 100.0, 2, Unit::Bar, self.customary())
    }
}

/// What a bare number means in a field, which says so.
pub(crate) fn usual(dimension: Dimension, us: bool) -> Unit {
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
        (Dimension::Time, _) => Unit::Minute,
        (other, _) => other.units().next().unwrap_or(Unit::Minute),
    }
}

/// A quantity as people write it, in `unit`; a bare number is one of `bare`.
///
/// # Errors
/// What is wrong, and how to mend it.
pub fn read(text: &str, dimension: Dimension, unit: Unit, bare: Unit) -> Result<f64, String> {
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
    number.map_err(|_| say::is_too_large(&text))
}

/// A number of `unit` with at most `digits`, the other system's value beside it.
fn show(number: f64, digits: u32, unit: Unit, customary: Customary) -> String {
    let rounded = Decimal::from_f64(number).map(|number| {
        number.round_dp_with_strategy(digits, rust_decimal::RoundingStrategy::MidpointAwayFromZero)
    });
    rounded
        .and_then(|number| Measured::new(number.normalize(), unit).ok())
        .map_or_else(
            || say::unknown().to_owned(),
            |measured| phrases::figures(&measured.show(customary)),
        )
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::form::none;

    #[test]
    fn a_measure_stands_with_the_mark_of_the_language() {
        let told = || show(-20.3, 1, Unit::Celsius, Customary::Metric);
        assert!(told().starts_with("-20.3"), "{}", told());
        let german = phrases::speaking(phrases::Language::German, told);
        assert!(german.starts_with("-20,3"), "{german}");
        assert!(!german.contains('.'), "{german}");
    }

    fn asked(fields: &[(&str, &str)]) -> Asked {
        let fields = fields
            .iter()
            .map(|(name, text)| ((*name).to_owned(), (*text).to_owned()))
            .collect();
        Asked::new(fields, Shop::default())
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
    fn a_field_says_what_a_bare_number_means_and_how_far_it_may_go() {
        const FORM: &[Part] = &[
            Part::number("depth", || "Depth", crate::Holds::LENGTH, none),
            Part::within(
                "want",
                || "Wanted",
                crate::Holds::TORQUE,
                (1.0, 500.0),
                none,
            ),
            Part::text("class", || "Class", none),
        ];
        let mut one = asked(&[("depth", "12,5"), ("want", "9000 Nm"), ("class", "8.8")]);
        one.complete(FORM);
        assert_eq!(one.text("depth"), "12,5 mm");
        assert_eq!(one.text("class"), "8.8");
        assert!(
            one.troubles["want"].contains("1 to 500"),
            "{:?}",
            one.troubles
        );
        assert_eq!(one.told()[0].mend, "look again");
        let shop = Shop {
            customary: Customary::Us,
            ..Shop::default()
        };
        let mut inches = Asked::new([("depth".to_owned(), "0.5".to_owned())].into(), shop);
        inches.complete(FORM);
        assert_eq!(inches.text("depth"), "0.5 in");
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
