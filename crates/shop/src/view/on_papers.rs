//! What the program itself says of a vehicle on a customer's papers, in the language of the paper.

use super::{goods, items, leaving, papers};
use crate::measures::{MeasuredLine, in_lines};
use crate::say::Names;
use crate::snapshot::Snapshot;
use crate::trouble::Trouble;
use repair::{Fact, Gate, Language, OrderId};
use std::collections::{BTreeMap, BTreeSet};

/// What is said on papers. Each list stands in the sequence of the order's own.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct OnPapers {
    /// What was measured.
    pub measured: Vec<MeasuredLine>,
    /// What each proof tested.
    pub proofs: Vec<String>,
    /// What became of old parts, by part.
    pub old_parts: BTreeMap<String, String>,
    /// Reasons that were let pass and print, each once.
    pub waived: BTreeSet<String>,
    /// What each thing that was declined is.
    pub declined: Vec<String>,
    pub open: Vec<OpenOnPapers>,
    /// What stays different about the vehicle.
    pub differences: Vec<String>,
    /// What is owed, and whether it is due after the hand-over.
    pub debts: Vec<(String, bool)>,
    /// How it left, and how the order ended.
    pub left: Option<(String, String)>,
    /// What went wrong and is not settled, by snag.
    pub snags: BTreeMap<String, String>,
}

/// Something that is not put back.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct OpenOnPapers {
    /// Its name in the record.
    pub item: String,
    pub label: String,
    /// In one line.
    pub text: String,
    /// How it stands.
    pub states: Vec<String>,
}

/// What is said of an order in this language.
///
/// # Errors
/// [`Trouble`], if there is no such order or the record cannot be read.
pub fn on_papers(
    snap: &Snapshot<'_>,
    order: &str,
    language: Language,
) -> Result<OnPapers, Trouble> {
    let world = snap.world();
    let id = OrderId::new(order);
    let order = &*world.order(&id)?;
    let names = &Names::of(snap, world, order).speaking(language);
    let tongue = names.tongue();
    let rules = snap.rules();
    let answers: Vec<_> = Gate::ALL
        .into_iter()
        .map(|gate| names.reading().answer(gate))
        .collect();
    let reasons = answers
        .iter()
        .flat_map(|answer| answer.fit_to_go.iter().chain(&answer.papers));
    let waived = reasons
        .filter(|reason| items::prints(reason))
        .filter_map(|reason| {
            let waived = items::waived(names, reason)?;
            Some(format!("{}, {waived}", names.reason(reason)))
        });
    let old_parts = order
        .beside_moves()
        .filter_map(|(_, filed)| match &filed.fact {
            Fact::PartNeeded { part, .. } => {
                let fate = goods::old_of(order, part)?;
                Some((part.as_str().to_owned(), (tongue.old_part)(fate).to_owned()))
            }
            _ => None,
        });
    let snags = repair::snags::open(order).into_iter();
    let left = leaving::left_view(names, order, &rules);
    Ok(OnPapers {
        measured: in_lines(tongue, snap, &id)?,
        proofs: papers::proofs(names, order, &rules)
            .into_iter()
            .map(|proof| proof.name)
            .collect(),
        old_parts: old_parts.collect(),
        waived: waived.collect(),
        declined: leaving::declined(names, order, &rules)
            .into_iter()
            .map(|declined| declined.what)
            .collect(),
        open: items::open_items(names, &rules)
            .into_iter()
            .map(|open| OpenOnPapers {
                item: open.item,
                label: open.label,
                text: open.text,
                states: open.states,
            })
            .collect(),
        differences: papers::differences(tongue, snap, world, &id, names.reading())?,
        debts: items::debts(names)
            .into_iter()
            .map(|debt| (debt.text, debt.before.is_none()))
            .collect(),
        left: left.map(|left| (left.how, left.ending)),
        snags: snags
            .map(|snag| {
                let text = names.snag_found(&snag.snag, snag.item.as_ref());
                (snag.snag.as_str().to_owned(), text)
            })
            .collect(),
    })
}
