//! The spread of hours and price of an order, never a single bare number.
//!
//! Times and snags are learned from past jobs, or start from an entered belief; an order is drawn
//! from them many times, which gives the spread, the amounts that cover it, what drives it, and
//! what would be worth doing first. Quotes that were given are scored on what happened.
//!
//! Everything here is plain numbers: minutes, amounts in one currency, chances from 0 to 1.
//!
//! # What this crate must never know
//!
//! - What a vehicle, a bolt or a repair order is: names are labels to it.
//! - A clock, a file, or chance that its caller did not seed. The same inputs give the same
//!   bits on any number of threads.
//! - A time, a rate or a chance that nobody gave: the belief before the first job is entered,
//!   and told beside the answer.
//! - Rounding of money, taxes by kind, or what a place asks of consent.

mod dense;
mod draw;
mod error;
mod fit;
mod history;
mod many;
mod model;
mod normal;
mod order;
mod phrases;
mod prepare;
mod prior;
mod quote;
mod read;
mod score;
mod snags;
mod spread;
mod summary;
mod worked;

pub use error::OddsError;
pub use fields::Trouble;
pub use fit::{Learned, LeftStages};
pub use history::{Condition, Done, History};
pub use model::{Model, ModelLine, ModelPoint, ModelRange, ModelSnags, model};
pub use order::{Action, Amount, Labour, Line, MOST_STAGES, Order, Pieces, Rule};
pub use prepare::CAP;
pub use prior::{Grid, Prior};
pub use quote::{Ask, Cause, CauseSort, Chance, Covers, Quote, SnagShare, Worth, quote};
pub use read::{Read, line, read};
pub use score::{Band, Given, LEAST_QUOTES, Reliability, Score, Verdict, pinball, score, wilson};
pub use snags::{Joint, SnagChance, SnagHistory, WEIGHTS};
pub use spread::{CHANCES, Range, Spread};
pub use summary::{Summary, summary};
