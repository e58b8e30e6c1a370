//! Two steps, and what is known of them.

use crate::job::Step;
use std::fmt;

/// How a pair is known.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Ground {
    /// A person stated it, or it follows from what was stated.
    Stated,
    /// It was always seen so.
    Seen {
        /// In how many jobs.
        times: u32,
        /// By how many independent witnesses.
        witnesses: usize,
    },
    /// It was seen both ways.
    BothWays {
        /// How often the first came first.
        there: u32,
        /// How often the second did.
        back: u32,
    },
    /// Always moved in one go, so that no sequence is known.
    NeverApart {
        /// In how many jobs.
        times: u32,
    },
}

/// What a plan makes of a pair.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
pub enum Held {
    /// The first is taken to be needed before the second.
    Needed,
    /// The same, to be on the safe side: it is a guess.
    Guess,
    /// Either sequence will do.
    Either,
}

/// Two steps and what is known of them.
#[derive(Debug, Clone, PartialEq)]
pub struct Pair {
    /// What comes first, where that is known; else what was seen first more often.
    pub first: Step,
    /// The other.
    pub second: Step,
    /// How it is known.
    pub ground: Ground,
    /// What a plan makes of it.
    pub held: Held,
    /// The chance that the first is needed before the second.
    pub needed: f64,
    /// The chance that the second is needed before the first after all.
    pub opposite: f64,
    /// The chance that the opposite sequence would have shown by now, if it were possible.
    pub shown: f64,
    /// The variant by which the sequence differs, where it does.
    pub differs_by: Option<String>,
}

/// What jobs and answers together cannot be brought into one sequence.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum Contradiction {
    /// Two answers, or what follows from them, exclude each other; the need stands.
    Answers {
        /// What is said to be needed first.
        first: Step,
        /// Before what.
        second: Step,
    },
    /// What was seen goes round in a circle; this pair, the least sure of it, was dropped.
    Circle {
        /// What was seen first.
        first: Step,
        /// Before what.
        second: Step,
    },
}

impl fmt::Display for Contradiction {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            Contradiction::Answers { first, second } => write!(
                f,
                "answers exclude each other: {first} before {second}, and not; ask again, until then it counts as needed"
            ),
            Contradiction::Circle { first, second } => write!(
                f,
                "the jobs go round in a circle; {first} before {second} is the least sure and was dropped, ask whether it is needed"
            ),
        }
    }
}

impl fmt::Display for Pair {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        let Pair { first, second, .. } = self;
        match self.ground {
            Ground::Stated => write!(f, "{first} before {second}: stated")?,
            Ground::Seen {
                times: 1,
                witnesses: _,
            } => write!(f, "{first} before {second}: seen once")?,
            Ground::Seen {
                times,
                witnesses: 1,
            } => write!(
                f,
                "{first} before {second}: seen {times} times, always by the same hands, so it may be a habit"
            )?,
            Ground::Seen { times, witnesses } => write!(
                f,
                "{first} before {second}: seen {times} times, {witnesses} witnesses"
            )?,
            Ground::BothWays { there, back } => write!(
                f,
                "{first} and {second}: seen both ways, {there} and {back}"
            )?,
            Ground::NeverApart { times } => {
                write!(f, "{first} and {second}: always in one go, {times} times")?;
            }
        }
        match &self.differs_by {
            Some(variant) => write!(f, "; differs by {variant}"),
            None => Ok(()),
        }
    }
}
