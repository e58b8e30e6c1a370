//! What the papers for the customer say: who and which vehicle, what has changed since
//! they agreed, what was tested, what stays different.

use super::{customer_text, standing_said, story, vehicle_of, vehicle_text};
use crate::doubts::odometer;
use crate::say::{Names, Tongue};
use crate::service::carried_by_vehicle;
use crate::snapshot::Snapshot;
use crate::trouble::Trouble;
use crate::world::World;
use record::AnyEvent;
use record::form::Form;
use record::v1::codes::{LanguageForm, OutcomeForm, ProofIsForm};
use repair::{
    Fact, Field, OdometerAt, Order, OrderId, OrderReading, Rules, VehicleFact, papers as desk,
};
use serde::Serialize;
use std::sync::Arc;
use utoipa::ToSchema;

/// What the papers say beside the order.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, ToSchema)]
pub struct PapersView {
    /// The shop's name.
    pub shop: String,
    /// The currency, three letters.
    pub currency: String,
    /// Today at the shop.
    pub today: String,
    /// The day the invoice for exactly this price was written.
    pub charged_on: Option<String>,
    /// The customer's telephone number; empty if there is none.
    pub phone: String,
    /// Where the customer lives; empty if nobody said.
    pub address: String,
    /// The same part by part.
    pub postal: PostalView,
    /// The vehicle's identification number; empty if nobody said.
    pub vin: String,
    /// The odometer on the way in.
    pub odometer_in: Option<String>,
    /// The odometer on the way out.
    pub odometer_out: Option<String>,
    /// What was measured on this visit.
    pub measured: Vec<crate::measures::MeasuredLine>,
    /// Proofs that no later one replaces, oldest first.
    pub proofs: Vec<ProofView>,
    /// What is different about this vehicle for good.
    pub differences: Vec<String>,
    /// What the shop has printed of itself.
    pub letterhead: LetterheadView,
    /// The place whose rules the shop has chosen, as a code.
    pub place: Option<String>,
    /// Papers as they were given out, oldest first.
    pub given: Vec<GivenView>,
}

/// Where somebody is, part by part; what nobody said is empty.
#[derive(Debug, Clone, PartialEq, Eq, Default, Serialize, ToSchema)]
pub struct PostalView {
    /// The street and house.
    pub street: String,
    pub postcode: String,
    pub town: String,
    /// The country, as its two letters.
    pub country: String,
}

impl PostalView {
    /// As it stands on a letter: the street, then postcode and town; nothing where neither is told.
    #[must_use]
    pub fn lines(&self) -> Vec<String> {
        let town = format!("{} {}", self.postcode.trim(), self.town.trim());
        let lines = [self.street.trim(), town.trim()];
        lines
            .into_iter()
            .filter(|line| !line.is_empty())
            .map(str::to_owned)
            .collect()
    }
}

/// What the shop has printed of itself on its papers, beside its name.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, ToSchema)]
pub struct LetterheadView {
    /// Where it is, in lines.
    pub address: Option<String>,
    /// The same part by part.
    pub postal: PostalView,
    pub phone: Option<String>,
    pub mail: Option<String>,
    /// The number that it is taxed under.
    pub tax_number: Option<String>,
    /// Where money is transferred to.
    pub bank: Option<String>,
    /// What its papers say at the end.
    pub terms: Option<String>,
    /// The name that its picture is asked for by, at `/file/…`.
    pub logo: Option<String>,
    /// What its papers are written in.
    pub language: LanguageForm,
}

impl LetterheadView {
    /// What stands under the shop's name: where it is; how it is reached, and the number that it is
    /// taxed under, called so.
    #[must_use]
    pub fn lines(&self, tax_number: &str) -> Vec<String> {
        let address: Vec<&str> = self
            .address
            .iter()
            .flat_map(|text| text.lines())
            .map(str::trim)
            .collect();
        let tax = self.tax_number.as_ref();
        let tax = tax.map(|number| format!("{tax_number} {number}"));
        let reach: Vec<String> = [self.phone.clone(), self.mail.clone(), tax]
            .into_iter()
            .flatten()
            .collect();
        let lines = [address.join(", "), reach.join(" · ")];
        lines.into_iter().filter(|line| !line.is_empty()).collect()
    }
}

/// What the shop has told of itself for its papers.
#[must_use]
pub fn letterhead(snap: &Snapshot<'_>) -> LetterheadView {
    let shop = &snap.world().shop;
    let told = shop.letterhead().cloned().unwrap_or_default();
    let text = |words: Option<repair::Words>| {
        let text = words.map(|words| snap.texts().text(words));
        text.filter(|text| !text.trim().is_empty())
    };
    let seat = shop.seat().cloned().unwrap_or_default();
    let part = |words| text(words).unwrap_or_default();
    let postal = PostalView {
        street: part(seat.street),
        postcode: part(seat.postcode),
        town: part(seat.town),
        country: seat.country.unwrap_or_default().trim().to_uppercase(),
    };
    // Where it is told part by part, that is what is printed.
    let address = match postal.lines() {
        lines if lines.is_empty() => text(told.address),
        lines => Some(lines.join("\n")),
    };
    LetterheadView {
        address,
        postal,
        phone: text(told.phone),
        mail: text(told.mail),
        tax_number: text(told.tax_number),
        bank: text(told.bank),
        terms: text(told.terms),
        logo: shop.logo().map(|file| file.words.hex()),
        language: LanguageForm::of(&told.language),
    }
}

/// A paper as it was given out: its file holds the very bytes.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, ToSchema)]
pub struct GivenView {
    /// The name the file is asked for by, at `/file/…`.
    pub file: String,
    /// What it is, and to whom it went, in words.
    pub text: String,
    /// When.
    pub at: String,
    /// Who gave it.
    pub by: String,
}

/// The media type of a paper.
pub const PAPER: &str = "application/pdf";

/// One proof.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, ToSchema)]
pub struct ProofView {
    /// What was tested.
    pub proof: ProofIsForm,
    /// The same in words.
    pub name: String,
    /// What it showed.
    pub outcome: OutcomeForm,
    /// What was seen, in words.
    pub words: Option<String>,
    /// When.
    pub at: String,
    /// Who.
    pub by: String,
}

pub(super) fn papers(
    names: &Names<'_>,
    snap: &Snapshot<'_>,
    world: &World,
    id: &OrderId,
    order: &Order,
) -> Result<PapersView, Trouble> {
    let rules = snap.rules();
    let settings = world.shop.settings();
    let vehicle = vehicle_of(order);
    let told = |field| customer_text(snap, world, order, field);
    let postal = PostalView {
        street: told(Field::Street)?,
        postcode: told(Field::Postcode)?,
        town: told(Field::Town)?,
        country: told(Field::Country)?.trim().to_uppercase(),
    };
    let own = letterhead(snap);
    let address = match postal.lines() {
        lines if lines.is_empty() => told(Field::Address)?,
        mut lines => {
            // A letter abroad bears the country.
            if !postal.country.is_empty() && postal.country != own.postal.country {
                lines.push(postal.country.clone());
            }
            lines.join("\n")
        }
    };
    Ok(PapersView {
        shop: settings.map_or_else(String::new, |set| snap.texts().text(set.name)),
        currency: settings.map_or_else(String::new, |set| set.currency.clone()),
        today: rules.today().to_string(),
        charged_on: charged_on(order, &rules),
        phone: told(Field::Phone)?,
        address,
        postal,
        vin: vehicle_text(snap, world, vehicle.as_ref(), Field::Vin)?,
        odometer_in: odometer(order, OdometerAt::In),
        odometer_out: odometer(order, OdometerAt::Out),
        measured: crate::measures::in_lines(names.tongue(), snap, id)?,
        proofs: proofs(names, order, &rules),
        differences: differences(names.tongue(), snap, world, id, names.reading())?,
        letterhead: own,
        place: crate::places::place_of(&world.shop).map(|place| place.place.clone()),
        given: given(names, order, &rules),
    })
}

fn given(names: &Names<'_>, order: &Order, rules: &Rules) -> Vec<GivenView> {
    let mut all: Vec<_> = order
        .beside_moves()
        .filter_map(|(command, filed)| match &filed.fact {
            Fact::Attached { file, words, .. } if file.media.as_str() == PAPER => {
                let view = GivenView {
                    file: file.words.hex(),
                    text: words.map(|words| names.text(words)).unwrap_or_default(),
                    at: story::dated(rules, filed.stamp.at),
                    by: names.person(&filed.stamp.who),
                };
                Some(((filed.stamp.at, command), view))
            }
            _ => None,
        })
        .collect();
    all.sort_by(|a, b| a.0.cmp(&b.0));
    all.into_iter().map(|(_, view)| view).collect()
}

fn charged_on(order: &Order, rules: &Rules) -> Option<String> {
    let price = desk::price(order).filter(desk::Price::charged)?;
    let last = price.invoices.last()?;
    Some(rules.day(last.at).to_string())
}

pub(super) fn proofs(names: &Names<'_>, order: &Order, rules: &Rules) -> Vec<ProofView> {
    let replaced = repair::proofs_replaced(order);
    let mut out: Vec<_> = order
        .beside_moves()
        .filter_map(|(_, filed)| match &filed.fact {
            Fact::Proved {
                id,
                proof,
                outcome,
                words,
                ..
            } if !replaced.contains(&(*proof, id)) => Some((
                filed.stamp.at,
                ProofView {
                    proof: ProofIsForm::of(proof),
                    name: (names.tongue().proof)(*proof).to_owned(),
                    outcome: OutcomeForm::of(outcome),
                    words: words.map(|words| names.text(words)),
                    at: story::dated(rules, filed.stamp.at),
                    by: names.person(&filed.stamp.who),
                },
            )),
            _ => None,
        })
        .collect();
    out.sort_by_key(|(at, _)| *at);
    out.into_iter().map(|(_, proof)| proof).collect()
}

/// The differences the vehicle carries, and those it would leave with now.
pub(super) fn differences(
    tongue: &Tongue,
    snap: &Snapshot<'_>,
    world: &World,
    id: &OrderId,
    reading: &OrderReading<'_>,
) -> Result<Vec<String>, Trouble> {
    let carried = match vehicle_of(reading.order()) {
        Some(vehicle) => world.vehicle(&vehicle)?,
        None => Arc::default(),
    };
    let new: Vec<VehicleFact> = carried_by_vehicle(world, reading, id)?
        .into_iter()
        .filter_map(|(_, event)| match event {
            AnyEvent::Vehicle(fact @ VehicleFact::Differs { .. }) => Some(fact),
            _ => None,
        })
        .collect();
    Ok(carried
        .differences()
        .chain(&new)
        .map(|fact| standing_said(tongue, snap, fact))
        .collect())
}
