//! Parts of the record that can only be looked at, because something in them cannot be read,
//! and the facts that wait for them.

use crate::phrases::order as words;
use crate::service::WaitingFact;
use crate::snapshot::Snapshot;
use crate::trouble::Trouble;
use crate::world::Unread;
use record::Stream;
use repair::{Field, Words};
use serde::Serialize;
use std::collections::BTreeSet;
use utoipa::ToSchema;

/// One part of the record that takes nothing now.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, ToSchema)]
pub struct StuckView {
    /// Its name in the record.
    pub stream: String,
    /// What people call it.
    pub name: String,
    /// The number of the order, if it is one.
    pub order: Option<u64>,
    /// What cannot be read.
    pub why: String,
    /// What to do about it.
    pub mend: String,
    /// How many facts wait for it on devices.
    pub waiting: usize,
    /// Those devices.
    pub devices: Vec<String>,
}

/// Every part that takes nothing now, by name, with how much of what waits is for it.
///
/// # Errors
/// [`Trouble`], if the record cannot be read.
pub fn stuck(snap: &Snapshot<'_>, waiting: &[WaitingFact]) -> Result<Vec<StuckView>, Trouble> {
    let world = snap.world();
    let each = world.all_unread()?.into_iter().map(|unread| {
        let facts: Vec<_> = waiting
            .iter()
            .filter(|fact| fact.stream == unread.stream)
            .collect();
        let devices: BTreeSet<String> = facts.iter().map(|fact| fact.device.clone()).collect();
        let (name, order) = called(snap, &unread.stream)?;
        Ok(StuckView {
            name,
            order,
            why: unread.sentence(),
            mend: Unread::mend().to_owned(),
            waiting: facts.len(),
            devices: devices.into_iter().collect(),
            stream: unread.stream,
        })
    });
    each.collect()
}

fn called(snap: &Snapshot<'_>, stream: &str) -> Result<(String, Option<u64>), Trouble> {
    let world = snap.world();
    let text = |words: Option<Words>| snap.texts().text_of(words);
    let unnamed = || stream.to_owned();
    Ok(match Stream::read(stream) {
        Ok(Stream::Order(id)) => match world.number_of(&id)? {
            Some(number) => (words::stuck_order(number), Some(number)),
            None => (words::stuck_order_unnumbered().to_owned(), None),
        },
        Ok(Stream::Vehicle(id)) => {
            let label = text(world.vehicle(&id)?.text(Field::Label).words);
            (
                label.unwrap_or_else(|| words::stuck_vehicle().to_owned()),
                None,
            )
        }
        Ok(Stream::Customer(id)) => {
            let name = text(world.customer(&id)?.text(Field::Name).words);
            (
                name.unwrap_or_else(|| words::stuck_customer().to_owned()),
                None,
            )
        }
        Ok(Stream::Map(id)) => (words::stuck_map(id), None),
        Ok(Stream::Shop) => (words::stuck_shop().to_owned(), None),
        Err(_) => (unnamed(), None),
    })
}
