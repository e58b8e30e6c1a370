//! Parts, and what was sent out to be worked on, in words.

use crate::amount::Amount;
use crate::say::{self, Names};
use jiff::civil::Date;
use record::form::Form;
use record::v1::codes::PartStepForm;
use repair::{Fact, OldPartFate, Order, PartId, PartStep, Rules, Words, papers, stock};
use rust_decimal::Decimal;
use serde::Serialize;
use std::collections::{BTreeMap, BTreeSet};
use utoipa::ToSchema;

/// One part.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, ToSchema)]
pub struct PartView {
    /// Its name.
    pub part: String,
    /// What it is called.
    pub label: String,
    /// The order's line it belongs to.
    pub line: Option<String>,
    /// The item it goes on.
    pub item: Option<String>,
    /// Its number.
    pub number: Option<String>,
    /// How many.
    pub quantity: Amount,
    /// What one is sold for, as read at a glance.
    pub price: Option<Amount>,
    /// The same to the last digit, to put it on the price.
    pub price_exact: Option<String>,
    /// How many got how far.
    pub steps: BTreeMap<PartStepForm, Amount>,
    /// How many are neither fitted, returned nor stocked.
    pub adrift: Amount,
    /// Whether an old one comes off for it.
    pub has_old: bool,
    /// Where the old one went.
    pub old: Option<String>,
    /// When the order of it is due.
    pub due: Option<String>,
    /// Whether that day is past, and it is not here.
    pub late: bool,
    /// The core charge of one, as read at a glance.
    pub core: Option<Amount>,
    /// The same to the last digit.
    pub core_exact: Option<String>,
    /// Whether the old one went back as a core.
    pub core_back: bool,
    /// From whom it comes, or to whom it went, as told last.
    pub from: Option<String>,
}

/// One piece of work sent out.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, ToSchema)]
pub struct SubletView {
    /// Its name.
    pub sublet: String,
    /// What is to be done.
    pub what: String,
    /// To whom.
    pub to: String,
    /// The order's line it belongs to.
    pub line: Option<String>,
    /// What it costs the shop, as read at a glance.
    pub cost: Option<Amount>,
    /// What went out.
    pub items: Vec<String>,
    /// Since when.
    pub since: String,
    /// When it is due back.
    pub due: Option<String>,
    /// Whether that day is past, and it is not back.
    pub late: bool,
    /// Whether it is back.
    pub back: bool,
}

pub(crate) fn parts(names: &Names<'_>, order: &Order, rules: &Rules) -> Vec<PartView> {
    let steps = stock::steps(order);
    let adrift: BTreeMap<_, _> = stock::adrift(order)
        .into_iter()
        .filter_map(|why| match why {
            repair::Why::PartAdrift { part, quantity } => Some((part, quantity)),
            _ => None,
        })
        .collect();
    let money = |amount: Decimal| say::money(amount, papers::minor_digits(order));
    order
        .beside_moves()
        .filter_map(|(_, filed)| match &filed.fact {
            Fact::PartNeeded {
                part,
                line,
                item,
                label,
                number,
                quantity,
                price,
                core,
                has_old,
                ..
            } => {
                let steps = steps.get(part);
                let got = |step| steps.and_then(|steps| steps.get(&step)).copied();
                let here = got(PartStep::Received).unwrap_or_default();
                let due = due_of(order, part);
                Some(PartView {
                    part: part.as_str().to_owned(),
                    label: names.text(*label),
                    line: line.as_ref().map(|line| line.as_str().to_owned()),
                    item: item
                        .as_ref()
                        .map(|item| names.account().moves.name(item).as_str().to_owned()),
                    number: number.as_ref().map(|number| number.as_str().to_owned()),
                    quantity: quantity.normalize().into(),
                    price: price.map(money),
                    price_exact: price.map(|price| price.normalize().to_string()),
                    steps: steps
                        .into_iter()
                        .flatten()
                        .map(|(step, count)| (PartStepForm::of(step), count.normalize().into()))
                        .collect(),
                    adrift: adrift
                        .get(part)
                        .copied()
                        .unwrap_or_default()
                        .normalize()
                        .into(),
                    has_old: *has_old,
                    old: old_of(order, part).map(|fate| say::old_part(fate).to_owned()),
                    late: due.is_some_and(|due| due < rules.today()) && here < *quantity,
                    due: due.map(|due| due.to_string()),
                    core: core.map(money),
                    core_exact: core.map(|core| core.normalize().to_string()),
                    core_back: old_of(order, part) == Some(OldPartFate::Core),
                    from: from_of(order, part).map(|words| names.text(words)),
                })
            }
            _ => None,
        })
        .collect()
}

/// The last day on which something ordered and not received, or away, is due.
pub(super) fn last_due(order: &Order) -> Option<Date> {
    let steps = stock::steps(order);
    let here = |part: &PartId| {
        let got = |step| steps.get(part).and_then(|steps| steps.get(&step)).copied();
        got(PartStep::Received).unwrap_or_default() >= got(PartStep::Ordered).unwrap_or_default()
    };
    let back = |sublet: &repair::SubletId| {
        order.beside_moves().any(
            |(_, filed)| matches!(&filed.fact, Fact::SubletBack { sublet: of, .. } if of == sublet),
        )
    };
    order
        .beside_moves()
        .filter_map(|(_, filed)| match &filed.fact {
            Fact::PartStepped { part, due, .. } if !here(part) => *due,
            Fact::SubletOut { sublet, due, .. } if !back(sublet) => *due,
            _ => None,
        })
        .max()
}

/// The last day named for any of a part: some may come later than the rest.
fn due_of(order: &Order, part: &PartId) -> Option<Date> {
    order
        .beside_moves()
        .filter_map(|(_, filed)| match &filed.fact {
            Fact::PartStepped { part: of, due, .. } if of == part => *due,
            _ => None,
        })
        .max()
}

pub(super) fn old_of(order: &Order, part: &PartId) -> Option<OldPartFate> {
    order
        .beside_moves()
        .find_map(|(_, filed)| match &filed.fact {
            Fact::OldPart {
                part: Some(of),
                fate,
                ..
            } if of == part => Some(*fate),
            _ => None,
        })
}

fn from_of(order: &Order, part: &PartId) -> Option<Words> {
    order
        .beside_moves()
        .filter_map(|(command, filed)| match &filed.fact {
            Fact::PartStepped {
                part: of,
                words: Some(words),
                ..
            } if of == part => Some(((filed.stamp.at, command), *words)),
            _ => None,
        })
        .max_by(|a, b| a.0.cmp(&b.0))
        .map(|(_, words)| words)
}

pub(crate) fn sublets(names: &Names<'_>, order: &Order, rules: &Rules) -> Vec<SubletView> {
    let back: BTreeSet<_> = order
        .beside_moves()
        .filter_map(|(_, filed)| match &filed.fact {
            Fact::SubletBack { sublet, .. } => Some(sublet),
            _ => None,
        })
        .collect();
    order
        .beside_moves()
        .filter_map(|(_, filed)| match &filed.fact {
            Fact::SubletOut {
                sublet,
                items,
                what,
                to,
                due,
                line,
                cost,
            } => {
                let back = back.contains(sublet);
                Some(SubletView {
                    sublet: sublet.as_str().to_owned(),
                    what: names.text(*what),
                    to: names.text(*to),
                    line: line.as_ref().map(|line| line.as_str().to_owned()),
                    cost: cost.map(|cost| say::money(cost, papers::minor_digits(order))),
                    items: items.iter().map(|item| names.label(item)).collect(),
                    since: super::story::time(rules, filed.stamp.at),
                    late: !back && due.is_some_and(|due| due < rules.today()),
                    due: due.map(|due| due.to_string()),
                    back,
                })
            }
            _ => None,
        })
        .collect()
}
