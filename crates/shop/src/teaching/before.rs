//! Finished jobs like the one at hand, for whoever wants to see how it was done.

use super::kind::{counted, known_kind, label_of, vehicle_kind};
use super::words::people;
use crate::phrases::order::no_order;
use crate::snapshot::Snapshot;
use crate::trouble::Trouble;
use repair::{Account, ItemId, aim, how_to_written};
use std::collections::BTreeSet;

/// So many are offered.
const MOST: usize = 12;

/// Finished jobs on vehicles of the same kind.
#[derive(Debug, Clone, Default, PartialEq, Eq)]
pub struct DoneBefore {
    /// What people call the vehicle.
    pub vehicle: String,
    /// The jobs: those that got at what is wanted here first, then the newest.
    pub jobs: Vec<JobBefore>,
}

/// A finished job.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct JobBefore {
    /// The order.
    pub number: u64,
    /// What its sheet is called, where somebody said.
    pub title: Option<String>,
    /// Who worked on it.
    pub by: String,
    /// How many things came off.
    pub things: usize,
    /// What of it is wanted here, too.
    pub wanted: Vec<String>,
}

/// Finished jobs like an order.
///
/// # Errors
/// [`Trouble`]: there is no such order, or the record cannot be read.
pub fn done_before(snap: &Snapshot<'_>, number: u64) -> Result<DoneBefore, Trouble> {
    let world = snap.world();
    let id = world
        .order_numbered(number)?
        .ok_or_else(|| Trouble::not_found(no_order(number)))?;
    let vehicle = label_of(snap, &id)?;
    let Some(code) = known_kind(snap, &vehicle)? else {
        let jobs = Vec::new();
        return Ok(DoneBefore { vehicle, jobs });
    };
    let kind = vehicle_kind(snap, code.as_str())?;
    let counted = counted(snap, &kind)?;
    let joins = counted.learner.joins();
    let order = world.order(&id)?;
    let account = Account::of(&order);
    let targets = aim(&order).map_or_else(Vec::new, |aim| aim.targets);
    let label = |item: &ItemId| {
        let known = account.items.get(account.moves.name(item))?;
        let text = snap.texts().text(known.label);
        Some(joins.name(&ItemId::new(text.trim())).clone())
    };
    let aims: BTreeSet<ItemId> = targets.iter().filter_map(label).collect();
    let others = counted
        .orders
        .iter()
        .filter(|job| job.number != number && !job.items.is_empty());
    let mut jobs: Vec<JobBefore> = others
        .map(|job| {
            let came_off = job.items.iter().map(|item| ItemId::new(&item.name));
            let came_off: BTreeSet<ItemId> =
                came_off.map(|item| joins.name(&item).clone()).collect();
            JobBefore {
                number: job.number,
                title: None,
                by: people(snap, &job.job.by),
                things: came_off.len(),
                wanted: aims
                    .intersection(&came_off)
                    .map(ItemId::to_string)
                    .collect(),
            }
        })
        .collect();
    jobs.sort_by_key(|job| std::cmp::Reverse((job.wanted.len(), job.number)));
    jobs.truncate(MOST);
    for job in &mut jobs {
        if let Some(id) = world.order_numbered(job.number)? {
            let title = how_to_written(&*world.order(&id)?).title;
            job.title = snap.texts().text_of(title);
        }
    }
    Ok(DoneBefore { vehicle, jobs })
}
