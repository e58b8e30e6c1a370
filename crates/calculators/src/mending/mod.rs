//! The way from a snag to a sound joint: what the calculator says of a hole, written out as
//! people read it, so that what is kept with a choice reads the same for ever.
//!
//! Everything here is words and figures as printed. A page shows a fresh answer and a kept
//! one with the same types; a kept one is never worked out again.

mod kept;
mod told;
mod way;

pub use kept::{Texts, kept};

pub use told::{
    Figure, JointTold, LineTold, MeasureTold, OtherTold, PartTold, PieceTold, RungTold, SpreadTold,
    StepTold, StubTold, Told, WayTold, WorkingTold,
};

use crate::phrases::mending as say;
use crate::threads::ask::{ExtractQuestion, RepairQuestion, Trouble, extract, repair};
use fastener::repair::{Planning, Repairs};
use fastener::section::before;
use measure::Customary;
use std::collections::BTreeMap;

/// The calculator's name and version, as a choice is kept.
pub const CALCULATOR: (&str, u32) = ("thread-repair", 1);

/// What a person says of a hole, field by field, as written.
pub type Fields = BTreeMap<String, String>;

/// Every way back for a hole, best first, and the ladder for a stub in it.
///
/// `sits` says how a stub sits (`proud`, `flush`, `below`); nothing where there is none.
///
/// # Errors
/// [`Trouble`]: which field, what is wrong with it, how to mend it.
pub fn ways(
    fields: &Fields,
    sits: Option<&str>,
    planning: &Planning,
    customary: Customary,
) -> Result<Vec<Told>, Trouble> {
    let question = question(fields);
    let answer = repair(&question, planning)?;
    if answer.hole.holds.is_none() {
        return Err(Trouble {
            field: "joint",
            what: say::what_does_the_joint_hold().to_owned(),
            mend: say::say_it_first_where_people_are().to_owned(),
        });
    }
    let ladder = match sits {
        Some(stands) => Some(stub(fields, stands, customary)?),
        None => None,
    };
    let found = told::joint(&before(&answer.hole), answer.hole.thread.name(), customary);
    let all = &answer.repairs.options;
    let (cautions, notes) = cautions_and_notes(&answer.repairs);
    let shared = way::Shared {
        answer: &answer,
        ladder: ladder.as_ref(),
        extraction: sits.map(|_| planning.extraction_minutes),
        customary,
    };
    Ok(all
        .iter()
        .map(|option| Told {
            fields: fields.clone(),
            cautions: cautions.clone(),
            notes: notes.clone(),
            found: found.clone(),
            stub: ladder.clone(),
            others: all
                .iter()
                .filter(|other| other.way != option.way)
                .map(|other| way::other(other, answer.hole.holds))
                .collect(),
            way: way::told(option, &shared),
            in_other_words: BTreeMap::new(),
        })
        .collect())
}

/// What can hurt comes first; the rest stands behind the answer.
fn cautions_and_notes(found: &Repairs) -> (Vec<String>, Vec<String>) {
    let rest = |note: &&String| !found.cautions.contains(note);
    let notes = found.notes.iter().filter(rest).cloned().collect();
    (found.cautions.clone(), notes)
}

/// The ladder for a stub that sits `stands`.
///
/// # Errors
/// [`Trouble`]: which field, what is wrong with it, how to mend it.
pub fn stub(fields: &Fields, stands: &str, customary: Customary) -> Result<StubTold, Trouble> {
    extract(&stub_question(fields, stands)).map(|found| told::stub(&found, customary))
}

/// A field's text, nothing where it is blank.
fn of<'a>(fields: &'a Fields, name: &str) -> Option<&'a str> {
    fields
        .get(name)
        .map(|text| text.trim())
        .filter(|text| !text.is_empty())
}

/// One question, how deep, serves both sorts of hole; `hole` says which.
fn depth(fields: &Fields, through: bool) -> Option<&str> {
    of(fields, "depth").filter(|_| (of(fields, "hole") == Some("through")) == through)
}

fn question(fields: &Fields) -> RepairQuestion<'_> {
    let text = |name| of(fields, name);
    RepairQuestion {
        thread: text("thread").unwrap_or_default(),
        joint: text("joint"),
        class: text("class"),
        bolt_length: text("bolt-length"),
        engaged: text("engaged").unwrap_or_default(),
        blind: depth(fields, false),
        through: depth(fields, true),
        boss: text("boss"),
        wall: text("wall"),
        metal: text("in").unwrap_or_default(),
        damage: text("damage"),
        torn: text("torn"),
        torque: text("torque"),
        condition: text("condition"),
        head: text("head"),
        seat: text("seat"),
        other: text("other"),
        other_hole: text("other-hole"),
        no_drill_room: text("no-drill-room").is_some(),
        tilt: text("tilt"),
    }
}

fn stub_question<'a>(fields: &'a Fields, stands: &'a str) -> ExtractQuestion<'a> {
    let text = |name| of(fields, name);
    ExtractQuestion {
        thread: text("thread").unwrap_or_default(),
        joint: text("joint"),
        class: text("class"),
        stands,
        by: text("by"),
        engaged: text("engaged").unwrap_or_default(),
        blind: depth(fields, false),
        through: depth(fields, true),
        metal: text("in").unwrap_or_default(),
        room_to_weld: text("room-to-weld").is_some(),
        no_drill_room: text("no-drill-room").is_some(),
        tilt: text("tilt"),
    }
}
