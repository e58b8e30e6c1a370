//! When the shop is open, who works when, and what they know how to do.

use super::{Shop, ShopFact, Week};
use crate::ids::{CommandId, DaysOffId, PersonId};
use jiff::civil::Date;
use states::System;
use std::collections::BTreeSet;

/// Days on which the shop is closed, or somebody is not there.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct DaysOff<'a> {
    pub id: &'a DaysOffId,
    /// Who; nobody named means that the shop is closed.
    pub person: Option<&'a PersonId>,
    pub first: Date,
    /// The last day, within.
    pub last: Date,
}

impl Shop {
    /// The shop's opening hours, or with a person the hours of their own; nothing, if nobody told.
    #[must_use]
    pub fn hours(&self, of: Option<&PersonId>) -> Option<&Week> {
        self.told_last(|fact| match fact {
            ShopFact::HoursTold {
                person,
                week,
                after,
            } if person.as_ref() == of => Some((week.as_ref(), after)),
            _ => None,
        })
        .flatten()
    }

    /// What was told of these hours so far, for a device to name as seen.
    #[must_use]
    pub fn hours_told(&self, of: Option<&PersonId>) -> Vec<&CommandId> {
        self.tellings(
            |fact| matches!(fact, ShopFact::HoursTold { person, .. } if person.as_ref() == of),
        )
    }

    /// The systems that somebody works on; nothing, if nobody told.
    #[must_use]
    pub fn works_on(&self, of: &PersonId) -> &[System] {
        self.told_last(|fact| match fact {
            ShopFact::SystemsTold {
                person,
                systems,
                after,
            } if person == of => Some((systems.as_slice(), after)),
            _ => None,
        })
        .unwrap_or_default()
    }

    /// What was told of the systems somebody works on so far, for a device to name as seen.
    #[must_use]
    pub fn systems_told(&self, of: &PersonId) -> Vec<&CommandId> {
        self.tellings(|fact| matches!(fact, ShopFact::SystemsTold { person, .. } if person == of))
    }

    /// Days off that stand, the earliest first.
    #[must_use]
    pub fn days_off(&self) -> Vec<DaysOff<'_>> {
        let ended: BTreeSet<&DaysOffId> = self
            .facts()
            .filter_map(|(_, _, fact)| match fact {
                ShopFact::DaysOffEnded { id } => Some(id),
                _ => None,
            })
            .collect();
        let mut off: Vec<DaysOff<'_>> = self
            .facts()
            .filter_map(|(_, _, fact)| match fact {
                ShopFact::DaysOff {
                    id,
                    person,
                    first,
                    last,
                } if !ended.contains(id) => Some(DaysOff {
                    id,
                    person: person.as_ref(),
                    first: (*first).min(*last),
                    last: (*first).max(*last),
                }),
                _ => None,
            })
            .collect();
        off.sort_by_key(|one| (one.first, one.last, one.person, one.id));
        off
    }
}
