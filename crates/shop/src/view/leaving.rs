//! How a vehicle left, and what the customer would not have put right.

use super::story::dated;
use crate::say::Names;
use repair::{Decision, Fact, Order, Rules};
use serde::Serialize;
use utoipa::ToSchema;

/// A hand-over that stands.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, ToSchema)]
pub struct LeftView {
    /// How it left, in words.
    pub how: String,
    /// How the order ended, in words.
    pub ending: String,
    /// Whether it left in pieces.
    pub apart: bool,
    /// Boxes that went with it.
    pub boxes: Option<u16>,
    /// The signature, by its commitment.
    pub signature: Option<String>,
    /// Who signed, where that was written.
    pub signed_by: Option<String>,
    /// When.
    pub at: String,
    /// Who let it go.
    pub by: String,
}

/// Something the customer would not have put right.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, ToSchema)]
pub struct DeclinedView {
    /// What it is about, in words.
    pub what: String,
    /// Why, in words.
    pub words: String,
    /// The signature, by its commitment.
    pub signature: Option<String>,
    /// When.
    pub at: String,
}

/// The hand-over that stands, if one does.
pub(super) fn left_view(names: &Names<'_>, order: &Order, rules: &Rules) -> Option<LeftView> {
    let stands = repair::papers::handed_over(order)?;
    let decided = order
        .decisions()
        .iter()
        .find(|decided| decided.command == stands.command)?;
    let Decision::HandedOver {
        leaves,
        ending: ends,
        boxes,
        signature,
        signed_by,
        ..
    } = &decided.decision
    else {
        return None;
    };
    Some(LeftView {
        how: (names.tongue().left)(*leaves).to_owned(),
        ending: (names.tongue().ending)(*ends).to_owned(),
        apart: *leaves == repair::Leaves::CollectedApart,
        boxes: *boxes,
        signature: signature.as_ref().map(|file| file.words.hex()),
        signed_by: signed_by.map(|words| names.text(words)),
        at: dated(rules, decided.stamp.at),
        by: names.person(&decided.stamp.who),
    })
}

/// What was declined and signed for, oldest first.
pub(super) fn declined(names: &Names<'_>, order: &Order, rules: &Rules) -> Vec<DeclinedView> {
    let mut out: Vec<_> = order
        .beside_moves()
        .filter_map(|(_, filed)| match &filed.fact {
            Fact::Declined {
                items,
                at,
                words,
                signature,
                entries,
                snags,
            } => {
                let what = names.declined(items, at, entries, snags);
                Some((
                    filed.stamp.at,
                    DeclinedView {
                        what,
                        words: names.text(*words),
                        signature: signature.as_ref().map(|file| file.words.hex()),
                        at: dated(rules, filed.stamp.at),
                    },
                ))
            }
            _ => None,
        })
        .collect();
    out.sort_by_key(|(at, _)| *at);
    out.into_iter().map(|(_, declined)| declined).collect()
}
