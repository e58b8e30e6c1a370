//! A customer: the texts they are known by.

use super::{Beside, Field, Told, told};
use crate::ids::CommandId;
use crate::text::Words;
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
}

pub type Customer = Beside<CustomerFact>;

impl Customer {
    /// One of their texts as it reads now.
    #[must_use]
    pub fn text(&self, field: Field) -> Told {
        told(
            self.facts().map(|(command, _, fact)| (command, fact)),
            |fact| match fact {
                CustomerFact::Declared { texts } => texts.get(&field).copied(),
                CustomerFact::Mended { .. } => None,
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
    }
}
