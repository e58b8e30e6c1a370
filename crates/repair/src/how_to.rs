//! What people wrote on the sheet of how a job was done.

use crate::fact::Fact;
use crate::ids::{CommandId, NoteId, PersonId};
use crate::order::Order;
use crate::text::Words;
use crate::told::latest;
use jiff::Timestamp;
use std::collections::BTreeMap;

/// What people wrote on a sheet, as it reads now.
#[derive(Debug, Clone, PartialEq, Eq, Default)]
pub struct HowToWritten {
    pub title: Option<Words>,
    /// The commands that told the title, for a device to name as seen.
    pub title_told_by: Vec<CommandId>,
    /// In the sequence in which they stand.
    pub notes: Vec<HowToNote>,
    /// The commands that told their sequence.
    pub sequence_told_by: Vec<CommandId>,
}

/// One note.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct HowToNote {
    pub note: NoteId,
    /// The command that told the moves it stands beside; nothing where it is of the whole job.
    pub stage: Option<CommandId>,
    pub words: Words,
    /// Who wrote what it says now.
    pub by: PersonId,
    /// The commands that told it.
    pub told_by: Vec<CommandId>,
}

/// What people wrote on the sheet of an order.
#[must_use]
pub fn how_to_written(order: &Order) -> HowToWritten {
    let title = latest(order, |fact| match fact {
        Fact::HowToTitled { after, .. } => Some(((), after)),
        _ => None,
    });
    let title = match title.get(&()) {
        Some(Fact::HowToTitled { words, .. }) => Some(*words),
        _ => None,
    };
    HowToWritten {
        title,
        title_told_by: told_by(order, |fact| matches!(fact, Fact::HowToTitled { .. })),
        notes: notes(order),
        sequence_told_by: told_by(order, |fact| matches!(fact, Fact::HowToSequenced { .. })),
    }
}

fn notes(order: &Order) -> Vec<HowToNote> {
    let sequence = latest(order, |fact| match fact {
        Fact::HowToSequenced { after, .. } => Some(((), after)),
        _ => None,
    });
    let sequence: &[NoteId] = match sequence.get(&()) {
        Some(Fact::HowToSequenced { notes, .. }) => notes,
        _ => &[],
    };
    // When each was first written, and by which commands it was told.
    let mut told: BTreeMap<&NoteId, (Timestamp, Vec<CommandId>)> = BTreeMap::new();
    for (command, filed) in order.beside_moves() {
        if let Fact::HowToNoted { note, .. } = &filed.fact {
            let of = told.entry(note).or_insert((filed.stamp.at, Vec::new()));
            of.0 = of.0.min(filed.stamp.at);
            of.1.push(command.clone());
        }
    }
    let stands = latest(order, |fact| match fact {
        Fact::HowToNoted { note, after, .. } => Some((note, after)),
        _ => None,
    });
    let mut notes = Vec::new();
    for (_, filed) in order.beside_moves() {
        let Fact::HowToNoted {
            note,
            stage,
            words: Some(words),
            ..
        } = &filed.fact
        else {
            continue;
        };
        if !stands
            .get(note)
            .is_some_and(|last| std::ptr::eq(*last, &filed.fact))
        {
            continue;
        }
        let (first, told_by) = told.get(note).cloned().unwrap_or_default();
        let place = sequence.iter().position(|named| named == note);
        let sorted_by = (place.unwrap_or(usize::MAX), first, note.clone());
        let note = HowToNote {
            note: note.clone(),
            stage: stage.clone(),
            words: *words,
            by: filed.stamp.who.clone(),
            told_by,
        };
        notes.push((sorted_by, note));
    }
    notes.sort_by(|(a, _), (b, _)| a.cmp(b));
    notes.into_iter().map(|(_, note)| note).collect()
}

fn told_by(order: &Order, of: impl Fn(&Fact) -> bool) -> Vec<CommandId> {
    let told = order.beside_moves().filter(|(_, filed)| of(&filed.fact));
    told.map(|(command, _)| command.clone()).collect()
}
