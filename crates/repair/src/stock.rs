//! New parts, old parts and work sent out: what is not accounted for.

use crate::code::PartStep;
use crate::fact::Fact;
use crate::ids::{PartId, SubletId};
use crate::order::Order;
use crate::reason::Why;
use rust_decimal::Decimal;
use std::collections::{BTreeMap, BTreeSet};

/// How far each part has got, by step.
#[must_use]
pub fn steps(order: &Order) -> BTreeMap<PartId, BTreeMap<PartStep, Decimal>> {
    let mut out: BTreeMap<PartId, BTreeMap<PartStep, Decimal>> = BTreeMap::new();
    for (_, filed) in order.beside_moves() {
        if let Fact::PartStepped {
            part,
            quantity,
            step,
            ..
        } = &filed.fact
        {
            let sum = out
                .entry(part.clone())
                .or_default()
                .entry(*step)
                .or_default();
            *sum = sum.saturating_add(*quantity);
        }
    }
    out
}

/// Parts, old parts and sublet work that nothing accounts for.
#[must_use]
pub fn adrift(order: &Order) -> Vec<Why> {
    let steps = steps(order);
    let went: BTreeSet<&PartId> = order
        .beside_moves()
        .filter_map(|(_, filed)| match &filed.fact {
            Fact::OldPart { part, .. } => part.as_ref(),
            _ => None,
        })
        .collect();
    let back: BTreeSet<&SubletId> = order
        .beside_moves()
        .filter_map(|(_, filed)| match &filed.fact {
            Fact::SubletBack { sublet, .. } => Some(sublet),
            _ => None,
        })
        .collect();
    let mut out = Vec::new();
    for (_, filed) in order.beside_moves() {
        match &filed.fact {
            Fact::PartNeeded {
                part,
                quantity,
                has_old,
                ..
            } => {
                let at = |step| {
                    steps
                        .get(part)
                        .and_then(|steps| steps.get(&step))
                        .copied()
                        .unwrap_or_default()
                };
                let ended = [
                    PartStep::Fitted,
                    PartStep::Returned,
                    PartStep::Stocked,
                    PartStep::Cancelled,
                ]
                .into_iter()
                .map(at)
                .fold(Decimal::ZERO, Decimal::saturating_add);
                if ended < *quantity {
                    out.push(Why::PartAdrift {
                        part: part.clone(),
                        quantity: quantity.saturating_sub(ended),
                    });
                }
                if *has_old && at(PartStep::Fitted) > Decimal::ZERO && !went.contains(part) {
                    out.push(Why::OldPartAdrift { part: part.clone() });
                }
            }
            Fact::SubletOut { sublet, .. } if !back.contains(sublet) => {
                out.push(Why::SubletOut {
                    sublet: sublet.clone(),
                });
            }
            _ => {}
        }
    }
    out
}
