//! A finished job, as far as it teaches, and what is wrong with one.

use states::{ItemId, Kind, Position, State};
use std::collections::BTreeSet;
use std::fmt;

/// One finished job on a vehicle of the kind that is learned.
#[derive(Debug, Clone, PartialEq, Eq, Default)]
pub struct Job {
    /// What it is called, such as the order's number. A job of the same name takes its place.
    pub name: String,
    /// Who worked on it.
    pub by: BTreeSet<String>,
    /// What this vehicle has that others of its kind have not.
    pub variants: BTreeSet<String>,
    /// What was moved; the sequence of the list says nothing, the minutes do.
    pub moves: Vec<Moved>,
    /// What was told of the items.
    pub told: Vec<Told>,
}

/// One item that was moved.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Moved {
    /// The item, as this job calls it.
    pub item: ItemId,
    /// Its kind.
    pub kind: Kind,
    /// Where it stood.
    pub from: State,
    /// Where it was left.
    pub to: State,
    /// When, in minutes from any start. Of two moves in the same minute nobody knows which
    /// came first: so are all rows of a stage that was confirmed at once.
    pub minute: u32,
}

/// One thing that somebody said of an item.
#[derive(Debug, Clone, PartialEq, Eq, PartialOrd, Ord)]
pub struct Told {
    /// The item, as this job calls it.
    pub item: ItemId,
    /// What was said of.
    pub about: About,
    /// What was said, as written.
    pub value: String,
    /// Who says so: a person, or the title of a published source.
    pub by: String,
}

/// What can be said of an item.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
pub enum About {
    /// How many pieces.
    Count,
    /// Its size.
    Size,
    /// The length of the piece at a position.
    Length(Position),
    /// How it is tightened, its passes joined by commas.
    Torque,
    /// Where one stands for it.
    Place,
    /// A tool that was used; there may be several.
    Tool,
    /// That it was renewed, or may not go back.
    Spent,
    /// Work that is owed once it has moved; there may be several.
    Owes,
}

impl About {
    /// Whether only one answer can be right.
    #[must_use]
    pub fn is_single(self) -> bool {
        !matches!(self, About::Tool | About::Owes)
    }
}

impl fmt::Display for About {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            About::Count => f.write_str("how many there are"),
            About::Size => f.write_str("size"),
            About::Length(at) => write!(f, "length at {at}"),
            About::Torque => f.write_str("torque"),
            About::Place => f.write_str("where it is worked on"),
            About::Tool => f.write_str("tool"),
            About::Spent => f.write_str("whether it goes back"),
            About::Owes => f.write_str("work it leaves"),
        }
    }
}

/// Away from home, or towards it.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
pub enum Way {
    /// Away from home.
    Out,
    /// Towards home.
    Back,
}

/// A move as it is compared between jobs: the item and the state it was left in.
#[derive(Debug, Clone, PartialEq, Eq, PartialOrd, Ord)]
pub struct Step {
    /// The item, by the name it goes by in all jobs.
    pub item: ItemId,
    /// The state it is left in.
    pub to: State,
}

impl Step {
    /// A step of an item.
    #[must_use]
    pub fn new(item: &str, to: State) -> Self {
        Self {
            item: ItemId::new(item),
            to: to.rung(),
        }
    }
}

impl fmt::Display for Step {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        let word = match self.to {
            State::On => "on",
            State::Off => "off",
            State::Tight => "tight",
            State::Cracked => "cracked",
            State::Out => "out",
            State::Loose { .. } => "on, not tight",
            State::Stub { .. } => "snapped",
            State::Plugged => "plugged in",
            State::Unplugged => "unplugged",
            State::AtLevel => "at level",
            State::Low => "drained",
            State::Done => "done",
            State::Due => "due",
            State::Outside => "taken out",
            State::Inside => "put in",
        };
        write!(f, "{} {word}", self.item)
    }
}

/// What is odd about a job that was taken in all the same.
#[derive(Debug, Clone, PartialEq, Eq, PartialOrd, Ord)]
pub enum Note {
    /// A job of this name was known; it is forgotten, and this one taken in its place.
    Replaced {
        /// The job.
        job: String,
    },
    /// Nothing was moved in it.
    NothingMoved {
        /// The job.
        job: String,
    },
    /// Nobody is named; such jobs together count as one witness.
    Nobody {
        /// The job.
        job: String,
    },
    /// The state belongs to no item of that kind; the move was left out.
    NoSuchState {
        /// The job.
        job: String,
        /// The item.
        item: ItemId,
    },
    /// The item changes its kind within the job; its moves were left out.
    TwoKinds {
        /// The job.
        job: String,
        /// The item.
        item: ItemId,
    },
    /// So many different steps are known that this one cannot be told apart any more.
    NoRoom {
        /// The job.
        job: String,
        /// The step.
        step: Step,
    },
    /// More moves than a job can have; the later ones were left out.
    TooMany {
        /// The job.
        job: String,
        /// How many were taken in.
        taken: usize,
    },
}

impl fmt::Display for Note {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            Note::Replaced { job } => write!(
                f,
                "{job}: was known already; it now counts as it was given last"
            ),
            Note::NothingMoved { job } => write!(
                f,
                "{job}: nothing was moved in it, so it teaches no sequence; record what comes off"
            ),
            Note::Nobody { job } => write!(
                f,
                "{job}: nobody is named; say who worked on it, or all such jobs count as one person's"
            ),
            Note::NoSuchState { job, item } => write!(
                f,
                "{job}: {item} was left in a state that its kind does not have; left out, correct the kind"
            ),
            Note::TwoKinds { job, item } => write!(
                f,
                "{job}: {item} is two kinds of thing in one job; left out, give one of them another name"
            ),
            Note::NoRoom { job, step } => write!(
                f,
                "{job}: {step} was left out: there are too many different steps; join names that mean one thing"
            ),
            Note::TooMany { job, taken } => write!(
                f,
                "{job}: only the first {taken} moves count; split the job"
            ),
        }
    }
}

/// How far a state is from home on the ladder of its kind; nothing if it is not on it.
pub(crate) fn away_from_home(kind: Kind, state: State) -> Option<u8> {
    let state = state.rung();
    if !kind.states().contains(&state) {
        return None;
    }
    Some(match state {
        at if at == kind.home() => 0,
        State::Cracked | State::Loose { .. } => 1,
        _ => 2,
    })
}
