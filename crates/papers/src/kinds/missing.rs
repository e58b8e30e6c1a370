//! What the rules of the shop's place ask of a paper and it lacks, named before it is printed.
//! Never legal advice: rules change.

use super::Kind;
use crate::phrases as say;
use serde::Deserialize;
use shop::record::v1::codes::PayerForm;
use shop::view::OrderView;
use std::sync::LazyLock;

/// What one rule asks of one paper, as data with a date and a source.
#[derive(Debug, Clone, PartialEq, Eq, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Rule {
    /// The place, as a code.
    pub place: String,
    /// The paper it is about.
    pub paper: String,
    /// What has to stand on it, as codes.
    pub wants: Vec<Wanted>,
    /// The rule, as it is cited.
    pub rule: String,
    /// The day up to which it was found to hold.
    pub as_of: String,
    /// `published`, or `memory` where no text was at hand.
    pub grade: String,
    /// What to know about how it was read.
    pub note: String,
}

#[derive(Debug, Deserialize)]
#[serde(deny_unknown_fields)]
struct Rules {
    #[serde(rename = "rule")]
    rules: Vec<Rule>,
}

/// Something that has to stand on a paper.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum Wanted {
    ShopAddress,
    ShopPhone,
    TaxNumber,
    CustomerName,
    CustomerAddress,
    CustomerPhone,
    Plate,
    OdometerIn,
    Complaint,
    Price,
    PromisedDay,
}

/// Something that is missing, and the rule that asks for it.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Missing {
    /// In words.
    pub what: &'static str,
    /// Where it is told.
    pub at: String,
    pub rule: &'static Rule,
}

static RULES: LazyLock<Vec<Rule>> = LazyLock::new(|| {
    let rules: Rules =
        toml::from_str(include_str!("../../rules/papers.toml")).expect("a test reads the rules");
    rules.rules
});

/// What a paper for the customer lacks by the rules of the place that the shop has chosen;
/// nothing where none is chosen.
#[must_use]
pub fn missing(order: &OrderView, kind: Kind, payer: PayerForm) -> Vec<Missing> {
    let Some(place) = &order.papers.place else {
        return Vec::new();
    };
    if payer != PayerForm::Customer {
        return Vec::new();
    }
    let rules = RULES
        .iter()
        .filter(|rule| rule.place == *place && rule.paper == kind.name());
    let mut out: Vec<Missing> = Vec::new();
    for rule in rules {
        for wanted in &rule.wants {
            let lacks = lacking(order, *wanted);
            out.extend(lacks.map(|(what, at)| Missing { what, at, rule }));
        }
    }
    out
}

/// What it is called and where it is told, where it is not known.
fn lacking(order: &OrderView, wanted: Wanted) -> Option<(&'static str, String)> {
    let own = &order.papers.letterhead;
    let shop = || "/shop/letterhead".to_owned();
    let customer = || format!("/o/{}/mend", order.number);
    let desk = || format!("/o/{}/desk", order.number);
    let is_known = |told: &str| !told.trim().is_empty();
    let (known, what, at) = match wanted {
        Wanted::ShopAddress => (own.address.is_some(), say::shops_address(), shop()),
        Wanted::ShopPhone => (own.phone.is_some(), say::shops_telephone(), shop()),
        Wanted::TaxNumber => (own.tax_number.is_some(), say::shops_tax_number(), shop()),
        Wanted::CustomerName => (
            is_known(&order.row.customer),
            say::customers_name(),
            customer(),
        ),
        Wanted::CustomerAddress => (
            is_known(&order.papers.address),
            say::customers_address(),
            customer(),
        ),
        Wanted::CustomerPhone => (
            is_known(&order.papers.phone),
            say::customers_telephone(),
            customer(),
        ),
        Wanted::Plate => (is_known(&order.row.plate), say::the_plate(), customer()),
        Wanted::OdometerIn => (
            order.papers.odometer_in.is_some(),
            say::the_odometer(),
            desk(),
        ),
        Wanted::Complaint => (!order.lines.is_empty(), say::the_complaint(), desk()),
        Wanted::Price => (
            order.price.is_some(),
            say::a_price(),
            format!("/o/{}/price", order.number),
        ),
        Wanted::PromisedDay => (
            order.row.promised.is_some(),
            say::when_ready(),
            format!("/o/{}/promise", order.number),
        ),
    };
    (!known).then_some((what, at))
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn every_rule_names_a_paper_a_place_and_its_source() {
        assert!(RULES.len() >= 3);
        for rule in RULES.iter() {
            assert!(Kind::named(&rule.paper).is_some(), "{}", rule.paper);
            let known = shop::places::places()
                .iter()
                .any(|place| place.place == rule.place);
            assert!(known, "{}", rule.place);
            assert!(!rule.wants.is_empty() && !rule.rule.is_empty());
            assert!(["published", "memory"].contains(&rule.grade.as_str()));
        }
    }
}
