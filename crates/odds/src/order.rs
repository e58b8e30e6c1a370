//! What is to be quoted: lines of work with what may snag, money, and what could be done first.

use crate::error::{OddsError, within};
use crate::history::{Condition, check_condition};
use crate::phrases as say;
use crate::snags::{self, Joint};
use crate::spread::Range;

/// An order to be quoted.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Order {
    /// The vehicle by the name it has in the history, if it was here before.
    pub vehicle: Option<String>,
    pub condition: Condition,
    pub lines: Vec<Line>,
    pub rule: Rule,
    pub amounts: Vec<Amount>,
    pub actions: Vec<Action>,
}

/// One line of work.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Line {
    pub what: String,
    /// The sort of stage, as in the history.
    pub kind: String,
    pub person: Option<String>,
    /// Minutes each time by the book, from 0.1 to 10,000.
    pub book_minutes: f64,
    /// From 1 to 2,000.
    pub times: u32,
    pub pieces: Option<Pieces>,
}

/// What on a line may snag.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Pieces {
    /// From 1 to 1,000.
    pub count: u32,
    pub joint: Joint,
    /// Minutes that one snag adds, from 0 to 10,000.
    pub minutes: Range,
    /// Parts and money that one snag adds, from 0 to 1,000,000.
    pub price: Range,
}

/// How work becomes money.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Rule {
    /// Per hour, from 0 to 100,000; 0 quotes hours alone.
    pub rate: f64,
    pub labour: Labour,
    /// Added on top of everything, in per cent, from 0 to 100.
    pub tax_percent: f64,
}

impl Default for Rule {
    fn default() -> Rule {
        Rule {
            rate: 0.0,
            labour: Labour::Clock,
            tax_percent: 0.0,
        }
    }
}

/// Which minutes are charged. The minutes of a snag are charged in every case.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub enum Labour {
    /// Those that it took.
    #[default]
    Clock,
    /// Those of the book.
    Book,
    /// The lesser of both.
    Lesser,
}

impl Labour {
    pub const ALL: [Labour; 3] = [Labour::Clock, Labour::Book, Labour::Lesser];

    /// Its name in files and answers.
    pub fn name(self) -> &'static str {
        match self {
            Labour::Clock => "clock",
            Labour::Book => "book",
            Labour::Lesser => "lesser",
        }
    }
}

/// Parts, a test, or anything else that costs, from -1,000,000 to 1,000,000.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Amount {
    pub what: String,
    pub price: Range,
}

/// Something that could be done first, such as a soak overnight.
#[derive(Clone, Debug, PartialEq)]
pub struct Action {
    pub what: String,
    /// The line it acts on, by its name.
    pub line: String,
    /// Minutes that it takes itself, from 0 to 10,000.
    pub minutes: Range,
    /// What it costs, from 0 to 1,000,000.
    pub price: Range,
    /// What the odds of a snag are multiplied by, from 0 to 100.
    pub snag_odds: f64,
    /// What the line's minutes are multiplied by, from 0.01 to 100.
    pub time: f64,
}

/// The most stages of one order.
pub const MOST_STAGES: u64 = 2_000;

impl Order {
    /// Its stages, each as often as it is done.
    pub fn stages(&self) -> u64 {
        self.lines.iter().map(|line| u64::from(line.times)).sum()
    }

    /// Its minutes by the book.
    pub fn book_minutes(&self) -> f64 {
        self.lines
            .iter()
            .map(|line| line.book_minutes * f64::from(line.times))
            .sum()
    }

    pub(crate) fn check(&self) -> Result<(), OddsError> {
        if self.lines.is_empty() {
            return Err(OddsError::NoLines);
        }
        if self.stages() > MOST_STAGES {
            return Err(OddsError::TooManyStages {
                stages: self.stages(),
                most: MOST_STAGES,
            });
        }
        check_condition(self.condition)?;
        let rule = &self.rule;
        within(
            say::the_rate(),
            rule.rate,
            say::per_hour(),
            (0.0, 1e5),
            say::write_for_one_hour(),
        )?;
        within(
            say::the_tax(),
            rule.tax_percent,
            "%",
            (0.0, 100.0),
            say::write_in_per_cent(),
        )?;
        for line in &self.lines {
            line.check()?;
        }
        for amount in &self.amounts {
            let mend = say::write_an_amount();
            amount.price.check(&amount.what, "", (-1e6, 1e6), mend)?;
        }
        self.actions
            .iter()
            .try_for_each(|action| self.check_action(action))
    }

    fn check_action(&self, action: &Action) -> Result<(), OddsError> {
        let what = &action.what;
        action
            .minutes
            .check(what, say::minutes(), (0.0, 1e4), say::write_its_minutes())?;
        action
            .price
            .check(what, "", (0.0, 1e6), say::write_its_cost())?;
        let mend = say::write_the_multiple();
        within(
            say::the_odds_after(what),
            action.snag_odds,
            say::times(),
            (0.0, 100.0),
            mend,
        )?;
        within(
            say::the_time_after(what),
            action.time,
            say::times(),
            (0.01, 100.0),
            mend,
        )?;
        if self.lines.iter().any(|line| line.what == action.line) {
            return Ok(());
        }
        Err(OddsError::NoSuchLine {
            action: what.clone(),
            line: action.line.clone(),
        })
    }
}

impl Line {
    fn check(&self) -> Result<(), OddsError> {
        for (what, name) in [
            (say::a_line(), &self.what),
            (say::a_kind_of_stage(), &self.kind),
        ] {
            if name.trim().is_empty() {
                return Err(OddsError::NoName {
                    what: what.to_owned(),
                });
            }
        }
        let what = |which: &str| say::of_line(which, &self.what);
        within(
            what(say::the_book_time()),
            self.book_minutes,
            say::minutes(),
            (0.1, 1e4),
            say::write_book_minutes_once(),
        )?;
        within(
            what(say::how_often()),
            f64::from(self.times),
            say::times(),
            (1.0, 2_000.0),
            say::write_a_whole_number(),
        )?;
        let Some(pieces) = &self.pieces else {
            return Ok(());
        };
        within(
            what(say::the_pieces()),
            f64::from(pieces.count),
            say::pieces(),
            (1.0, 1_000.0),
            say::write_how_many(),
        )?;
        snags::check(&pieces.joint)?;
        let mend = say::write_for_one_snag();
        pieces
            .minutes
            .check(&what(say::snag_minutes()), say::minutes(), (0.0, 1e4), mend)?;
        pieces
            .price
            .check(&what(say::snag_price()), "", (0.0, 1e6), mend)
    }
}
