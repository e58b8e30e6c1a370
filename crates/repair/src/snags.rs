//! Snags that were found and have not come to their end.

use crate::code::SnagIs;
use crate::fact::Fact;
use crate::ids::SnagId;
use crate::order::{Order, Stamp};
use crate::trade::Trade;
use states::{ItemId, Position};
use std::collections::BTreeSet;

#[derive(Debug, Clone, PartialEq, Eq)]
pub struct OpenSnag {
    /// Its name.
    pub snag: SnagId,
    pub item: Option<ItemId>,
    pub at: Vec<Position>,
    pub what: SnagIs,
    /// What its words speak of, where it names no item.
    pub about: Option<Trade>,
    /// Who found it, and when.
    pub since: Stamp,
}

/// The snags that are open.
#[must_use]
pub fn open(order: &Order) -> Vec<OpenSnag> {
    let ended: BTreeSet<&SnagId> = order
        .beside_moves()
        .filter_map(|(_, filed)| match &filed.fact {
            Fact::SnagResolved { snag, .. } => Some(snag),
            _ => None,
        })
        .collect();
    order
        .beside_moves()
        .filter_map(|(_, filed)| match &filed.fact {
            Fact::SnagFound {
                snag,
                item,
                at,
                what,
                about,
                ..
            } if !ended.contains(snag) => Some(OpenSnag {
                snag: snag.clone(),
                item: item.clone(),
                at: at.clone(),
                what: *what,
                about: about.clone(),
                since: filed.stamp.clone(),
            }),
            _ => None,
        })
        .collect()
}
