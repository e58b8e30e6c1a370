//! What is believed before the first job, and the grid of what may vary how much.

use crate::error::{OddsError, within};
use crate::phrases as say;
use libm::log;

/// What a shop believes before it has any history. It is entered, never fitted.
///
/// `y = ln((minutes / book minutes - floor) / (1 - floor))`; without a floor that is the
/// logarithm of minutes over book minutes.
#[derive(Clone, Debug, PartialEq)]
pub struct Prior {
    /// How many times its book minutes a usual stage takes, above 0.05 and at most 20.
    pub usual: f64,
    /// So many past jobs this belief counts as, from 1 to 10,000.
    pub jobs: f64,
    /// Typical factor by which a stage misses its usual minutes, from 1.01 to 10: with 1.6 about
    /// two of three stages lie between minutes / 1.6 and minutes x 1.6.
    pub factor: f64,
    /// The share of its book minutes that no stage undercuts, from 0 to 0.95.
    pub floor: f64,
    /// Chance that one piece brings a snag where nothing else is known, from 0.0001 to 0.9.
    pub snag_mean: f64,
    /// So many pieces that chance counts as, from 1 to 100,000.
    pub snag_pieces: f64,
    /// How far a slow vehicle is also one that snaps bolts: what is added to the log-odds of a
    /// snag for each unit of the vehicle's effect on `y`, from 0 to 10.
    pub vehicle_on_snags: f64,
}

impl Default for Prior {
    /// The book, believed like four jobs, a stage missing it by a factor of 1.6; one piece in
    /// a hundred brings a snag, believed like fifty pieces.
    fn default() -> Prior {
        Prior {
            usual: 1.0,
            jobs: 4.0,
            factor: 1.6,
            floor: 0.0,
            snag_mean: 0.01,
            snag_pieces: 50.0,
            vehicle_on_snags: 1.0,
        }
    }
}

impl Prior {
    pub(crate) fn check(&self) -> Result<(), OddsError> {
        let mend = say::enter_a_belief();
        within(
            say::the_usual_time(),
            self.usual,
            say::times_book(),
            (0.05, 20.0),
            mend,
        )?;
        within(
            say::the_weight_of_the_prior(),
            self.jobs,
            say::jobs(),
            (1.0, 10_000.0),
            mend,
        )?;
        within(
            say::the_typical_factor(),
            self.factor,
            "",
            (1.01, 10.0),
            mend,
        )?;
        within(
            say::the_floor(),
            self.floor,
            say::of_book(),
            (0.0, 0.95),
            mend,
        )?;
        within(
            say::the_chance_of_a_snag(),
            self.snag_mean,
            "",
            (1e-4, 0.9),
            mend,
        )?;
        within(
            say::the_weight_of_that_chance(),
            self.snag_pieces,
            say::pieces(),
            (1.0, 1e5),
            mend,
        )?;
        within(
            say::the_vehicles_part(),
            self.vehicle_on_snags,
            "",
            (0.0, 10.0),
            mend,
        )?;
        if self.usual <= self.floor {
            return Err(OddsError::OutOfRange {
                what: say::the_usual_time().to_owned(),
                value: self.usual,
                unit: say::times_book(),
                low: self.floor,
                high: 20.0,
                mend: say::not_below_the_floor(),
            });
        }
        Ok(())
    }

    /// The mean of `y`.
    pub(crate) fn mean(&self) -> f64 {
        log((self.usual - self.floor) / (1.0 - self.floor))
    }

    /// Shape of the inverse gamma of the variance. With it a single stage has `jobs + 2`
    /// degrees of freedom, so its spread is always finite.
    pub(crate) fn shape(&self) -> f64 {
        1.0 + self.jobs / 2.0
    }

    /// Scale of the inverse gamma: the entered variance times the shape.
    pub(crate) fn scale(&self) -> f64 {
        let deviation = log(self.factor);
        deviation * deviation * self.shape()
    }

    /// How far `y` of a stage lies from the prior mean. At or below the floor it counts as a
    /// hundredth of the book above it, since the logarithm ends there.
    pub(crate) fn ratio(&self, minutes: f64, book_minutes: f64) -> f64 {
        let above = (minutes / book_minutes - self.floor).max(0.01);
        log(above / (1.0 - self.floor)) - self.mean()
    }
}

/// How much kinds, people, conditions and vehicles may differ: each a list of variance
/// ratios (the variance of the effect over that of a single stage), all as likely before the
/// first job. Every combination is worked out exactly and weighted by its marginal likelihood.
#[derive(Clone, Debug, PartialEq)]
pub struct Grid {
    pub kind: Vec<f64>,
    pub person: Vec<f64>,
    pub condition: Vec<f64>,
    pub vehicle: Vec<f64>,
}

impl Default for Grid {
    fn default() -> Grid {
        Grid {
            kind: vec![0.02, 0.1, 0.4],
            person: vec![0.02, 0.1, 0.4],
            condition: vec![0.02, 0.15],
            vehicle: vec![0.02, 0.1, 0.3, 0.9],
        }
    }
}

impl Grid {
    pub(crate) fn check(&self) -> Result<(), OddsError> {
        for (what, ratios) in [
            ("kind", &self.kind),
            ("person", &self.person),
            ("condition", &self.condition),
            ("vehicle", &self.vehicle),
        ] {
            let sound = |ratio: &f64| ratio.is_finite() && *ratio > 0.0 && *ratio <= 1e4;
            if ratios.is_empty() || !ratios.iter().all(sound) {
                return Err(OddsError::EmptyGrid { what });
            }
        }
        Ok(())
    }
}
