//! What a typed line was read as.

use crate::branch::Branch;
use crate::gates::Gates;
use crate::side::Side;
use crate::work::{Code, WorkSet};
use states::{Kind, Zone};
use std::ops::Range;

/// How many pieces a line names.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
pub enum Count {
    /// So many.
    Of(u16),
    /// "Set of": as many as belong together.
    Set,
}

/// How sure a reading is.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Sure {
    /// The words name one sort of thing.
    Sure,
    /// A word was guessed, spelled otherwise, or left over.
    Likely,
    /// Nobody knows before it is told.
    Unknown,
}

impl Sure {
    /// The code, as sent.
    #[must_use]
    pub fn code(self) -> &'static str {
        match self {
            Sure::Sure => "sure",
            Sure::Likely => "likely",
            Sure::Unknown => "unknown",
        }
    }
}

/// What happens to a thing.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Happens {
    /// It comes off, out or is unplugged.
    ComesOff,
    /// It is opened.
    Opened,
    /// It is loosened but stays.
    Loosened,
    /// It is drained.
    Drained,
    /// It is moved aside or disturbed.
    Disturbed,
    /// It goes back.
    GoesBack,
}

/// What the grade of a fact may be.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Grade {
    /// The named source calls this thing, missing, loose, leaking or opened, a defect or a danger.
    Published,
    /// General knowledge of the trade, no source.
    CommonPractice,
    /// A source recalled, not opened.
    Memory,
    /// The shop's own word.
    Shop,
}

impl Grade {
    /// The code, as stored and sent.
    #[must_use]
    pub fn code(self) -> &'static str {
        match self {
            Grade::Published => "published",
            Grade::CommonPractice => "common-practice",
            Grade::Memory => "memory",
            Grade::Shop => "shop",
        }
    }
}

/// One work that a thing owes, with the gates it shuts until it is done.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Owes {
    /// The code of the work.
    pub work: Code,
    /// The gates it shuts while it is owed; for some things earlier than usual.
    pub shuts: Gates,
}

/// What follows from one happening to one thing, as plain values that can be stored.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Rule {
    /// What happens.
    pub when: Happens,
    /// The works then owed.
    pub owes: Vec<Owes>,
    /// The gates shut as long as the thing stays so.
    pub shuts_meanwhile: Gates,
}

/// One thing that a line names.
#[derive(Debug, Clone, PartialEq)]
pub struct Said {
    /// Where its words stand in the line, in bytes; the places of all things cover the line.
    pub place: Range<usize>,
    /// Its words as typed.
    pub text: String,
    /// The sort of thing in the table; none where no sort was found.
    pub sort: Option<Code>,
    /// Its kind; none for what is no vehicle item.
    pub kind: Option<Kind>,
    /// How many.
    pub count: Option<Count>,
    /// Size tokens as typed, torque left out.
    pub sizes: Vec<String>,
    /// The torque as typed, its angle included.
    pub torque_typed: Option<String>,
    /// The torque in newton metres.
    pub torque_newton_metres: Option<f64>,
    /// Litres.
    pub litres: Option<f64>,
    /// The side.
    pub side: Option<Side>,
    /// The system.
    pub system: Branch,
    /// Where it is worked on.
    pub zone: Zone,
    /// Whether the stricter rules hold.
    pub safety: bool,
    /// The works owed once it was off, open, drained or disturbed.
    pub owed: Vec<Owes>,
    /// Gates shut while it is off, open, unplugged, low; in, for a put-in; due, for work.
    pub gates_shut_off: Gates,
    /// Gates shut once it is back, until the owed works are done.
    pub gates_shut_back: Gates,
    /// The cautions that stand before it.
    pub caution: Vec<Code>,
    /// How sure the reading is.
    pub sure: Sure,
    /// What the line says of it: off, drained, loosened, back.
    pub happens: Option<Happens>,
    /// Works that the line itself says were done: "torqued", "with new washers".
    pub said_done: Vec<Code>,
    /// What could not be read, and how to mend it.
    pub mend: Option<String>,
    /// The grade of the fact.
    pub grade: Grade,
    /// Its source; empty where it is common practice.
    pub source: Code,
    pub(crate) works: WorkSet,
    pub(crate) brings: WorkSet,
    pub(crate) plural: bool,
}

impl Said {
    /// What follows from one happening to this thing.
    ///
    /// The table does not tell a loosened joint from an opened one, or a part moved aside from
    /// one taken off: each is asked what the worst of them is asked. Going back asks nothing
    /// new, it leaves what was owed.
    #[must_use]
    pub fn rule(&self, when: Happens) -> Rule {
        let (owes, shuts_meanwhile) = match when {
            Happens::GoesBack => (Vec::new(), Gates::NONE),
            _ => (self.owed.clone(), self.gates_shut_off),
        };
        Rule {
            when,
            owes,
            shuts_meanwhile,
        }
    }

    /// The codes of the works owed, in the order of the table.
    #[must_use]
    pub fn owed_codes(&self) -> Vec<&str> {
        self.owed.iter().map(|owes| &*owes.work).collect()
    }
}
