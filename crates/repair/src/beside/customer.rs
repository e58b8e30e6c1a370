//! A customer: the texts they are known by.

use super::{Beside, Field, Told, same, told};
use crate::ids::{CommandId, CustomerId};
use crate::text::Words;
use crate::told::{Telling, latest_of};
use price::Exemption;
use std::collections::BTreeMap;

/// What stands in a customer's stream.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum CustomerFact {
    /// The customer is spoken of for the first time.
    Declared { texts: BTreeMap<Field, Words> },
    /// A text is put right.
    Mended {
        /// Which.
        field: Field,
        /// The text.
        words: Words,
        /// The mendings seen.
        after: Vec<CommandId>,
    },
    /// The customer is exempt from taxes, or not any more.
    Exempted {
        /// The number they are exempt by; none, if they are not any more.
        number: Option<Words>,
        /// The taxes that are not asked, by name; none named means all.
        taxes: Vec<String>,
        /// The tellings seen.
        after: Vec<CommandId>,
    },
    /// It is a customer who has a record under another name already; or, after all, not.
    SameAs {
        /// The other name.
        customer: Option<CustomerId>,
        /// The tellings seen.
        after: Vec<CommandId>,
    },
}

pub type Customer = Beside<CustomerFact>;

impl Customer {
    /// One of their texts as it reads now.
    #[must_use]
    pub fn text(&self, field: Field) -> Told {
        let of = |one: &Self| {
            told(
                one.own(),
                |fact| match fact {
                    CustomerFact::Declared { texts } => texts.get(&field).copied(),
                    _ => None,
                },
                |fact| match fact {
                    CustomerFact::Mended {
                        field: mended,
                        words,
                        after,
                    } if *mended == field => Some((*words, after)),
                    _ => None,
                },
            )
        };
        self.first(|one| Some(of(one)).filter(|told| told.words.is_some()))
            .unwrap_or_default()
    }

    /// Under which other name they have a record already, and the commands that told it, for
    /// a device to name as seen.
    #[must_use]
    pub fn same_as(&self) -> (Option<&CustomerId>, Vec<CommandId>) {
        same(self.own(), |fact| match fact {
            CustomerFact::SameAs { customer, after } => Some((customer.as_ref(), after)),
            _ => None,
        })
    }

    /// What they are exempt from, as told by whoever had seen the other tellings.
    #[must_use]
    pub fn exemption(&self) -> Option<Exemption> {
        let told: Vec<Telling<'_, (Option<Words>, &[String])>> = self
            .facts()
            .filter_map(|(command, _, fact)| match fact {
                CustomerFact::Exempted {
                    number,
                    taxes,
                    after,
                } => Some((command, (*number, taxes.as_slice()), after)),
                _ => None,
            })
            .collect();
        let (number, taxes) = latest_of(&told)?;
        Some(Exemption {
            number: number?.0,
            taxes: taxes.to_vec(),
        })
    }

    /// What was told of it so far, for a device to name as seen.
    #[must_use]
    pub fn exemption_told(&self) -> Vec<&CommandId> {
        let told = self.facts();
        told.filter(|(_, _, fact)| matches!(fact, CustomerFact::Exempted { .. }))
            .map(|(command, ..)| command)
            .collect()
    }
}
