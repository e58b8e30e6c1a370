//! Results of calculators that an order keeps: read as they were written, never worked out again.

use crate::snapshot::Snapshot;
use crate::trouble::Trouble;
use repair::{Account, Fact, ItemId};
use serde_json::Value;

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
        .ok_or_else(|| Trouble::not_found(format!("there is no order {number}")))?;
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
        .ok_or_else(|| Trouble::not_found(format!("there is no order {number}")))?;
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
                };
                Some((filed.stamp.at, sum))
            }
            _ => None,
        })
        .collect();
    sums.sort_by(|a, b| b.0.cmp(&a.0).then_with(|| a.1.id.cmp(&b.1.id)));
    Ok(sums.into_iter().map(|(_, sum)| sum).collect())
}
