//! What the rules of a place ask of consent, as data with a date and a source. Never
//! legal advice: without a chosen place any excess is asked for, which fits everywhere.

use crate::say::SpokenText;
use repair::Shop;
use repair::price::Leeway;
use rust_decimal::Decimal;
use serde::Deserialize;
use std::sync::LazyLock;

/// What stands beside every page that shows a place's rules.
pub const NOT_ADVICE: SpokenText = SpokenText(crate::phrases::shop::not_advice);

/// The rules of one place, as they stood on a day.
#[derive(Debug, Clone, PartialEq, Eq, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Place {
    /// The place, as a code.
    pub place: String,
    /// The version of these rules; a version once shipped is never changed.
    pub version: u32,
    /// What people call it.
    name: String,
    name_in_german: String,
    /// The currency its sums are in.
    pub currency: String,
    /// The day up to which they were found to hold.
    pub as_of: String,
    #[serde(default, rename = "leeway")]
    lets_pass: Option<LeewayRow>,
    #[serde(default)]
    record: Record,
    #[serde(default)]
    keep: Keep,
    /// Where each is written.
    #[serde(rename = "source")]
    pub sources: Vec<PlaceSource>,
}

#[derive(Debug, Clone, PartialEq, Eq, Deserialize)]
#[serde(deny_unknown_fields)]
struct LeewayRow {
    percent: Decimal,
    least: Decimal,
    #[serde(default)]
    most: Option<Decimal>,
}

#[derive(Debug, Clone, PartialEq, Eq, Default, Deserialize)]
#[serde(deny_unknown_fields)]
struct Record {
    #[serde(default)]
    spoken: Vec<ToNote>,
}

#[derive(Debug, Clone, PartialEq, Eq, Default, Deserialize)]
#[serde(deny_unknown_fields)]
struct Keep {
    #[serde(default)]
    years: Option<u32>,
}

/// What a place wants noted of a consent that was spoken, beside its day and hour.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum ToNote {
    /// Who agreed.
    Person,
    /// The number called.
    NumberCalled,
    /// The added parts and labour.
    PartsAndLabour,
    /// The total.
    Total,
}

/// Where a rule is written, and how well it was read.
#[derive(Debug, Clone, PartialEq, Eq, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct PlaceSource {
    /// The rule, as it is cited.
    pub rule: String,
    /// What it says, in our words.
    says: String,
    says_in_german: String,
    /// `published`, or `memory` where no text was at hand.
    pub grade: String,
    /// What to know about how it was read; empty if nothing.
    note: String,
    note_in_german: String,
}

/// The one of two texts that is spoken now.
fn spoken<'t>(english: &'t str, german: &'t str) -> &'t str {
    match ::phrases::spoken() {
        ::phrases::Language::English => english,
        ::phrases::Language::German => german,
    }
}

impl PlaceSource {
    /// What it says, in our words.
    #[must_use]
    pub fn says(&self) -> &str {
        spoken(&self.says, &self.says_in_german)
    }

    /// How well it was read, in words.
    #[must_use]
    pub fn grade_said(&self) -> &str {
        match self.grade.as_str() {
            "published" => crate::phrases::shop::published(),
            "memory" => crate::phrases::shop::from_memory(),
            grade => grade,
        }
    }

    /// What to know about how it was read; empty if nothing.
    #[must_use]
    pub fn note(&self) -> &str {
        spoken(&self.note, &self.note_in_german)
    }
}

impl Place {
    /// What people call it.
    #[must_use]
    pub fn name(&self) -> &str {
        spoken(&self.name, &self.name_in_german)
    }

    /// How far a sum may pass what was agreed without asking again.
    #[must_use]
    pub fn leeway(&self) -> Leeway {
        self.lets_pass
            .as_ref()
            .map_or_else(Leeway::default, |row| Leeway {
                percent: row.percent,
                least: row.least,
                most: row.most,
            })
    }

    /// What is noted of a consent that was spoken.
    #[must_use]
    pub fn spoken(&self) -> &[ToNote] {
        &self.record.spoken
    }

    /// For how many years papers and notes of consent are kept, where a rule says so.
    #[must_use]
    pub fn keep_years(&self) -> Option<u32> {
        self.keep.years
    }
}

/// Every place's rules, every version of them.
#[must_use]
pub fn places() -> &'static [Place] {
    static PLACES: LazyLock<Vec<Place>> = LazyLock::new(|| {
        [
            include_str!("../places/eu-1.toml"),
            include_str!("../places/us-ca-1.toml"),
            include_str!("../places/us-fl-1.toml"),
            include_str!("../places/us-oh-1.toml"),
        ]
        .iter()
        .map(|text| toml::from_str(text).expect("a test reads every file"))
        .collect()
    });
    &PLACES
}

/// One place's rules of one version.
#[must_use]
pub fn place(code: &str, version: u32) -> Option<&'static Place> {
    places()
        .iter()
        .find(|place| place.place == code && place.version == version)
}

/// The place whose rules the shop has chosen.
#[must_use]
pub fn place_of(shop: &Shop) -> Option<&'static Place> {
    let (code, version) = shop.place()?;
    place(code.as_str(), version)
}

/// What the shop's place lets pass. Its sums mean nothing in another currency: there any
/// excess is asked for.
pub(crate) fn leeway_of(shop: &Shop) -> Leeway {
    place_of(shop)
        .filter(|place| {
            shop.settings()
                .is_some_and(|settings| settings.currency == place.currency)
        })
        .map_or_else(Leeway::default, Place::leeway)
}
