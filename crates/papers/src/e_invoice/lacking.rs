//! What is missing for an e-invoice, in words, and where it is told.

use super::Of;
use super::terms::is_due;
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
        return vec![Lack::of("an invoice that is written and has a number", "")];
    }
    if of.payer() != PayerForm::Customer {
        return vec![Lack::of(
            "a payer whose address is known: only the customer\u{2019}s is",
            "",
        )];
    }
    let mut out = parties(order);
    if matches!(of, Of::Invoice(invoice) if is_due(order, invoice))
        && order.papers.letterhead.terms.is_none()
    {
        out.push(Lack::of(
            "when to pay: at the end of an invoice, on your papers",
            "/shop/letterhead",
        ));
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
        (papers.shop.as_str(), "the shop\u{2019}s name"),
        (
            own.postal.street.as_str(),
            "the shop\u{2019}s street and house",
        ),
        (&own.postal.postcode, "the shop\u{2019}s postcode"),
        (&own.postal.town, "the shop\u{2019}s town"),
        (&own.postal.country, "the shop\u{2019}s country"),
        (number, "the shop\u{2019}s tax number"),
    ];
    let of_customer = [
        (order.row.customer.as_str(), "the customer\u{2019}s name"),
        (
            papers.postal.street.as_str(),
            "the customer\u{2019}s street and house",
        ),
        (&papers.postal.postcode, "the customer\u{2019}s postcode"),
        (&papers.postal.town, "the customer\u{2019}s town"),
        (&papers.postal.country, "the customer\u{2019}s country"),
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
        Err(NotTaxed::NoTax(label)) => Some(Lack::of(
            format!("a tax on \u{201c}{label}\u{201d}: an e-invoice has to say why there is none"),
            price,
        )),
        Err(NotTaxed::SeveralTaxes(label)) => Some(Lack::of(
            format!(
                "one tax on \u{201c}{label}\u{201d}: an e-invoice has no room for more than one on a line"
            ),
            price,
        )),
        Err(NotTaxed::TaxKept(label)) => Some(Lack::of(
            format!(
                "the tax on \u{201c}{label}\u{201d}: an e-invoice can\u{2019}t take a line back and keep its tax"
            ),
            "",
        )),
        Err(NotTaxed::Uneven) => Some(Lack::of(
            "sums of the lines that come to the total: they differ by coins",
            "",
        )),
        Ok(taxed) => {
            let none = |percent: &str| !percent.bytes().any(|digit| (b'1'..=b'9').contains(&digit));
            let zero = taxed.groups.iter().find(|group| none(&group.percent));
            zero.map(|group| {
                Lack::of(
                    format!(
                        "a rate above nought for {}: an e-invoice has to say why there is no tax",
                        group.name
                    ),
                    price,
                )
            })
        }
    }
}

/// What the rules of EN 16931 refuse.
pub fn from_rules<'a>(findings: impl Iterator<Item = &'a en16931::Finding>) -> Vec<Lack> {
    findings
        .map(|finding| {
            let detail = finding.detail.as_ref().map_or_else(String::new, |detail| {
                format!(" ({} expected, {} found)", detail.expected, detail.actual)
            });
            let what = format!(
                "rule {} of EN 16931: {}{detail}",
                finding.rule, finding.message
            );
            Lack::of(what, "")
        })
        .collect()
}
