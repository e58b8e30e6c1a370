//! An order that was opened by mistake: what stands on it and has to end first.

use crate::code::PartStep;
use crate::decide::Refusal;
use crate::decision::Decision;
use crate::fact::Fact;
use crate::ids::{PartId, SnagId, SubletId};
use crate::order::Order;
use crate::papers::{keys_here, paid, price};
use crate::reason::Why;
use crate::stock::{adrift, steps};
use crate::text::Words;
use price::Payer;
use rust_decimal::Decimal;
use states::ItemId;
use std::collections::{BTreeMap, BTreeSet};

/// Something that stands on an order, so that it cannot be voided.
#[derive(Debug, Clone, PartialEq, Eq, PartialOrd, Ord)]
pub enum Standing {
    /// An item was moved.
    Moved { item: ItemId },
    /// Fluid was drained or poured.
    Fluid {
        /// The fluid.
        item: ItemId,
    },
    /// A snag was found.
    Snag { snag: SnagId },
    /// A part was ordered, and is neither back, in stock nor called off.
    Part {
        part: PartId,
        /// How many.
        quantity: Decimal,
    },
    /// A core is owed to whoever sold the part.
    Core { part: PartId },
    /// An old part has gone nowhere yet.
    OldPart {
        /// The part that replaces it.
        part: PartId,
    },
    /// Something is away to be worked on.
    Sublet {
        /// Which.
        sublet: SubletId,
    },
    /// The invoice is written.
    Invoice,
    /// Money was taken, and not given back.
    Money {
        /// From whom.
        payer: Payer,
        /// How much; nothing, if it is too much to be added up.
        amount: Option<Decimal>,
    },
    /// The keys hang with us.
    Keys,
}

/// Voids an order on which nothing stands.
pub(crate) fn void(order: &Order, words: Words) -> Result<Decision, Refusal> {
    let standing = standing(order);
    if standing.is_empty() {
        return Ok(Decision::Voided { words });
    }
    Err(Refusal::NotVoidable { standing })
}

/// Everything that stands, each once.
fn standing(order: &Order) -> Vec<Standing> {
    let mut out: BTreeSet<Standing> = order
        .facts()
        .flat_map(|(_, filed)| of(&filed.fact))
        .collect();
    out.extend(parts(order));
    out.extend(adrift(order).into_iter().filter_map(|why| match why {
        Why::OldPartAdrift { part } => Some(Standing::OldPart { part }),
        Why::SubletOut { sublet } => Some(Standing::Sublet { sublet }),
        _ => None,
    }));
    if price(order).is_some_and(|price| !price.invoices.is_empty()) {
        out.insert(Standing::Invoice);
    }
    for payer in [Payer::Customer, Payer::Warranty, Payer::Goodwill] {
        let amount = paid(order, payer).ok();
        if amount != Some(Decimal::ZERO) {
            out.insert(Standing::Money { payer, amount });
        }
    }
    if keys_here(order) {
        out.insert(Standing::Keys);
    }
    out.into_iter().collect()
}

/// Work that one fact tells of.
fn of(fact: &Fact) -> Vec<Standing> {
    match fact {
        Fact::Moved { moves, .. } => moves
            .iter()
            .map(|moved| Standing::Moved {
                item: moved.item.clone(),
            })
            .collect(),
        Fact::Drained { item, .. } | Fact::Poured { item, .. } => {
            vec![Standing::Fluid { item: item.clone() }]
        }
        Fact::SnagFound { snag, .. } => vec![Standing::Snag { snag: snag.clone() }],
        _ => Vec::new(),
    }
}

/// Parts that left the shop's hands or came into them, and cores owed for them.
fn parts(order: &Order) -> Vec<Standing> {
    let gone: BTreeSet<&PartId> = order
        .beside_moves()
        .filter_map(|(_, filed)| match &filed.fact {
            Fact::OldPart { part, .. } => part.as_ref(),
            _ => None,
        })
        .collect();
    let with_core: BTreeSet<&PartId> = order
        .beside_moves()
        .filter_map(|(_, filed)| match &filed.fact {
            Fact::PartNeeded {
                part,
                core: Some(core),
                ..
            } if !core.is_zero() => Some(part),
            _ => None,
        })
        .collect();
    let mut out = Vec::new();
    for (part, steps) in steps(order) {
        let quantity = in_hand(&steps);
        if quantity > Decimal::ZERO {
            if with_core.contains(&part) && !gone.contains(&part) {
                out.push(Standing::Core { part: part.clone() });
            }
            out.push(Standing::Part { part, quantity });
        }
    }
    out
}

/// How many were ordered, came or were fitted, less those that are back, in stock or called
/// off.
fn in_hand(steps: &BTreeMap<PartStep, Decimal>) -> Decimal {
    let at = |step: PartStep| steps.get(&step).copied().unwrap_or_default();
    let came = [PartStep::Ordered, PartStep::Received, PartStep::Fitted]
        .into_iter()
        .map(at)
        .fold(Decimal::ZERO, Decimal::max);
    [PartStep::Returned, PartStep::Stocked, PartStep::Cancelled]
        .into_iter()
        .map(at)
        .fold(came, Decimal::saturating_sub)
}
