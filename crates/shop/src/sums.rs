//! Results of calculators that an order keeps: read as they were written, never worked out again.

use crate::phrases::order::no_order;
use crate::snapshot::Snapshot;
use crate::trouble::Trouble;
use crate::view::OrderView;
use drawing::Drawing;
use repair::{Account, Fact, ItemId};
use serde_json::Value;
use std::collections::BTreeMap;

/// A result that was kept.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Sum {
    /// Its name in the record.
    pub id: String,
    /// Its room and its own name, as kept.
    pub calculator: String,
    /// What it found.
    pub fact: String,
    /// How it was taken.
    pub tone: &'static str,
    /// Who kept it.
    pub by: String,
    /// How it was found.
    pub working: String,
    /// The fields as they were written.
    pub inputs: BTreeMap<String, String>,
}

/// What came out of an item and what went in, as it was written.
#[derive(Debug, Clone, Default, PartialEq, Eq)]
pub struct Amounts {
    /// Each pan; what was spilled too.
    pub out: Vec<String>,
    /// Each jug.
    pub poured: Vec<String>,
}

/// The amounts that an order tells of one item.
///
/// # Errors
/// [`Trouble`], if there is no such order or the record cannot be read.
pub fn amounts(snap: &Snapshot<'_>, number: u64, item: &str) -> Result<Amounts, Trouble> {
    let world = snap.world();
    let id = world
        .order_numbered(number)?
        .ok_or_else(|| Trouble::not_found(no_order(number)))?;
    let order = &*world.order(&id)?;
    let account = Account::of(order);
    let item = account.moves.name(&ItemId::new(item)).clone();
    let mut told: Vec<_> = order
        .beside_moves()
        .filter(|(_, filed)| match &filed.fact {
            Fact::Drained { item: of, .. } | Fact::Poured { item: of, .. } => {
                *account.moves.name(of) == item
            }
            _ => false,
        })
        .collect();
    told.sort_by_key(|(command, filed)| (filed.stamp.at, (*command).clone()));
    let mut out = Amounts::default();
    for (_, filed) in told {
        match &filed.fact {
            Fact::Drained { amount, .. } => out.out.push(amount.as_str().to_owned()),
            Fact::Poured { amount, .. } => out.poured.push(amount.as_str().to_owned()),
            _ => {}
        }
    }
    Ok(out)
}

/// The results that an order keeps of one item, the last one first.
///
/// # Errors
/// [`Trouble`], if there is no such order or the record cannot be read.
pub fn of_item(snap: &Snapshot<'_>, number: u64, item: &str) -> Result<Vec<Sum>, Trouble> {
    let world = snap.world();
    let id = world
        .order_numbered(number)?
        .ok_or_else(|| Trouble::not_found(no_order(number)))?;
    let order = &*world.order(&id)?;
    let account = Account::of(order);
    let names = crate::say::Names::of(snap, world, order);
    let item = account.moves.name(&ItemId::new(item)).clone();
    let mut sums: Vec<(jiff::Timestamp, Sum)> = order
        .beside_moves()
        .filter_map(|(_, filed)| match &filed.fact {
            Fact::Calculated {
                id,
                item: Some(of),
                snag: None,
                calculator,
                inputs,
                outputs,
                working,
                ..
            } if *account.moves.name(of) == item => {
                let outputs: Value = serde_json::from_str(outputs).ok()?;
                let sum = Sum {
                    id: id.as_str().to_owned(),
                    calculator: calculator.as_str().to_owned(),
                    // Coolant keeps its sums in a form of its own, and shows them itself.
                    fact: outputs["fact"].as_str()?.to_owned(),
                    tone: match outputs["tone"].as_str() {
                        Some("yes") => "yes",
                        Some("no") => "no",
                        Some("wait") => "wait",
                        _ => "",
                    },
                    by: names.person(&filed.stamp.who),
                    working: working.clone(),
                    inputs: serde_json::from_str(inputs).unwrap_or_default(),
                };
                Some((filed.stamp.at, sum))
            }
            _ => None,
        })
        .collect();
    sums.sort_by(|a, b| b.0.cmp(&a.0).then_with(|| a.1.id.cmp(&b.1.id)));
    Ok(sums.into_iter().map(|(_, sum)| sum).collect())
}

/// How a belt was found to lie before it came off, as it was kept.
#[derive(Debug, Clone, PartialEq)]
pub struct BeltAsFound {
    /// The belt.
    pub item: String,
    /// The pulleys in sequence, with the side where it is the back.
    pub sequence: String,
    /// What was written on the belt.
    pub belt: Option<String>,
    /// Who kept it.
    pub by: String,
    /// Drawn, where its places allow it.
    pub drawing: Option<Drawing>,
    /// The fields as they were written.
    pub inputs: BTreeMap<String, String>,
}

/// The name under which a routing is kept.
const ROUTING: &str = "belt routing";

/// How each belt of an order was found to lie: what was kept last of each.
///
/// # Errors
/// [`Trouble`], if there is no such order or the record cannot be read.
pub fn belts_as_found(snap: &Snapshot<'_>, number: u64) -> Result<Vec<BeltAsFound>, Trouble> {
    let world = snap.world();
    let id = world
        .order_numbered(number)?
        .ok_or_else(|| Trouble::not_found(no_order(number)))?;
    let order = &*world.order(&id)?;
    let mut kept: Vec<_> = order
        .beside_moves()
        .filter_map(|(command, filed)| match &filed.fact {
            Fact::Calculated {
                item: Some(item),
                calculator,
                inputs,
                outputs,
                ..
            } if calculator.as_str() == ROUTING => Some((
                (filed.stamp.at, command.clone()),
                &filed.stamp.who,
                item,
                inputs,
                outputs,
            )),
            _ => None,
        })
        .collect();
    if kept.is_empty() {
        return Ok(Vec::new());
    }
    kept.sort_by(|a, b| b.0.cmp(&a.0));
    let account = Account::of(order);
    let names = crate::say::Names::of(snap, world, order);
    let mut found: Vec<BeltAsFound> = Vec::new();
    for (_, who, item, inputs, outputs) in kept {
        let item = account.moves.name(item).as_str().to_owned();
        let outputs: Value = serde_json::from_str(outputs).unwrap_or_default();
        let (Some(sequence), false) = (
            outputs["figures"]["sequence"].as_str(),
            found.iter().any(|one| one.item == item),
        ) else {
            continue;
        };
        found.push(BeltAsFound {
            item,
            sequence: sequence.to_owned(),
            belt: outputs["figures"]["belt"].as_str().map(str::to_owned),
            by: names.person(who),
            drawing: calculators::belt::as_found(&outputs["figures"]),
            inputs: serde_json::from_str(inputs).unwrap_or_default(),
        });
    }
    Ok(found)
}

/// How a belt of this name lay on the newest finished order of the same kind of vehicle, with
/// that order's number.
///
/// # Errors
/// [`Trouble`], if the record cannot be read.
pub fn belt_of_kind(
    snap: &Snapshot<'_>,
    order: &OrderView,
    label: &str,
) -> Result<Option<(u64, BeltAsFound)>, Trouble> {
    /// So many orders are looked through.
    const MOST: usize = 40;
    for finished in crate::teaching::finished_like(snap, &order.row.vehicle, MOST)? {
        if finished.number == order.number {
            continue;
        }
        let mut found = belts_as_found(snap, finished.number)?;
        let named = |one: &BeltAsFound| -> Result<bool, Trouble> {
            let other = crate::view::order(snap, finished.number)?;
            let mut items = other.items.iter();
            Ok(items.any(|item| item.item == one.item && item.label.eq_ignore_ascii_case(label)))
        };
        let mut at = None;
        for (nth, one) in found.iter().enumerate() {
            if named(one)? {
                at = Some(nth);
                break;
            }
        }
        if let Some(nth) = at {
            return Ok(Some((finished.number, found.swap_remove(nth))));
        }
    }
    Ok(None)
}
