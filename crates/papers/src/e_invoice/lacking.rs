//! What is missing for an e-invoice, in words, and where it is told.

use super::Of;
use super::terms::is_due;
use crate::phrases as say;
use shop::record::v1::codes::PayerForm;
use shop::view::{NotTaxed, OrderView};

/// Something that an e-invoice needs and that is not there.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Lack {
    /// In words.
    pub what: String,
    /// The page where it is told; empty where no page mends it.
    pub at: String,
}

impl Lack {
    pub(super) fn of(what: impl Into<String>, at: impl Into<String>) -> Self {
        Self {
            what: what.into(),
            at: at.into(),
        }
    }
}

/// Everything that is missing.
pub fn lacking(order: &OrderView, of: Of<'_>) -> Vec<Lack> {
    // What no page can mend says it all.
    if of.number().is_none() {
        return vec![Lack::of(say::invoice_with_a_number(), "")];
    }
    if of.payer() != PayerForm::Customer {
        return vec![Lack::of(say::payer_with_address(), "")];
    }
    let mut out = parties(order);
    if matches!(of, Of::Invoice(invoice) if is_due(order, invoice))
        && order.papers.letterhead.terms.is_none()
    {
        out.push(Lack::of(say::when_to_pay(), "/shop/letterhead"));
    }
    out.extend(taxes(order, of));
    out
}

fn parties(order: &OrderView) -> Vec<Lack> {
    let papers = &order.papers;
    let own = &papers.letterhead;
    let shop = "/shop/letterhead".to_owned();
    let customer = format!("/o/{}/mend", order.number);
    let is_told = |text: &str| !text.trim().is_empty();
    let number = own.tax_number.as_deref().unwrap_or_default();
    let of_shop = [
        (papers.shop.as_str(), say::shops_name()),
        (own.postal.street.as_str(), say::shops_street()),
        (&own.postal.postcode, say::shops_postcode()),
        (&own.postal.town, say::shops_town()),
        (&own.postal.country, say::shops_country()),
        (number, say::shops_tax_number()),
    ];
    let of_customer = [
        (order.row.customer.as_str(), say::customers_name()),
        (papers.postal.street.as_str(), say::customers_street()),
        (&papers.postal.postcode, say::customers_postcode()),
        (&papers.postal.town, say::customers_town()),
        (&papers.postal.country, say::customers_country()),
    ];
    let missing =
        |(told, what): (&str, &'static str), at: &str| (!is_told(told)).then(|| Lack::of(what, at));
    let own = of_shop.into_iter().filter_map(|one| missing(one, &shop));
    let theirs = of_customer
        .into_iter()
        .filter_map(|one| missing(one, &customer));
    own.chain(theirs).collect()
}

/// Each line has to stand under one tax of more than nought, or under one not asked of whoever
/// is exempt: why else there is none nobody has said.
fn taxes(order: &OrderView, of: Of<'_>) -> Option<Lack> {
    let price = format!("/o/{}/price", order.number);
    match of.taxed() {
        Err(NotTaxed::NoTax(label)) => Some(Lack::of(say::a_tax_on(label), price)),
        Err(NotTaxed::SeveralTaxes(label)) => Some(Lack::of(say::one_tax_on(label), price)),
        Err(NotTaxed::TaxKept(label)) => Some(Lack::of(say::the_tax_on(label), "")),
        Err(NotTaxed::Uneven) => Some(Lack::of(say::sums_that_fit(), "")),
        Ok(taxed) => {
            let none = |percent: &str| !percent.bytes().any(|digit| (b'1'..=b'9').contains(&digit));
            let zero = taxed.groups.iter().find(|group| none(&group.percent));
            zero.map(|group| Lack::of(say::a_rate_above_nought(&group.name), price))
        }
    }
}

/// What the rules of EN 16931 refuse.
pub fn from_rules<'a>(findings: impl Iterator<Item = &'a en16931::Finding>) -> Vec<Lack> {
    findings
        .map(|finding| {
            let detail = finding.detail.as_ref().map_or_else(String::new, |detail| {
                say::expected_and_found(&detail.expected, &detail.actual)
            });
            let what = say::rule_refuses(&finding.rule, &finding.message, detail);
            Lack::of(what, "")
        })
        .collect()
}
