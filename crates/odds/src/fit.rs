//! What the history says: every point of the grid worked out exactly, and weighted.

use crate::dense::{Symmetric, Triangle};
use crate::error::OddsError;
use crate::history::{Condition, Family, History, Sums, Visits};
use crate::normal::hazard;
use libm::{exp, lgamma, log, sqrt};
use statrs::distribution::{ContinuousCDF, StudentsT};
use std::collections::BTreeMap;

/// Points of the grid with less weight than this are left out of the draws.
const LEAST_WEIGHT: f64 = 1e-6;
const MOST_ROUNDS: usize = 500;

/// What was learned of times: for each point of the grid the means of all effects, what they
/// are known to, and the spread of a single stage.
#[derive(Clone, Debug)]
pub struct Learned {
    pub(crate) history: History,
    pub(crate) points: Vec<Point>,
    pub(crate) imputed: Imputed,
}

/// One point of the grid: `effects | variance ~ Normal(mean, variance · inverse)`,
/// `variance ~ inverse gamma(shape, scale)`.
#[derive(Clone, Debug)]
pub(crate) struct Point {
    pub(crate) weight: f64,
    pub(crate) ratios: Ratios,
    pub(crate) mean: Vec<f64>,
    pub(crate) triangle: Triangle,
    pub(crate) shape: f64,
    pub(crate) scale: f64,
    log_weight: f64,
}

/// The variance ratios of one point.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(crate) struct Ratios {
    shop: f64,
    condition: f64,
    kind: f64,
    person: f64,
    pub(crate) vehicle: f64,
}

impl Ratios {
    pub(crate) fn of(&self, family: Family) -> f64 {
        match family {
            Family::Shop => self.shop,
            Family::Condition => self.condition,
            Family::Kind => self.kind,
            Family::Person => self.person,
        }
    }
}

/// What stands in for the stages that were left.
#[derive(Clone, Debug, Default, PartialEq)]
pub(crate) struct Imputed {
    /// For each the expected `y`.
    y: Vec<f64>,
    /// The sum of what each may still deviate, in `y` squared.
    variance: f64,
    /// Sum by vehicle.
    by_vehicle: BTreeMap<String, f64>,
    rounds: usize,
    change: f64,
    missing: f64,
}

/// How far the stages that were left can be leaned on.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct LeftStages {
    pub stages: usize,
    /// Rounds of expectation and maximisation.
    pub rounds: usize,
    /// The largest change of an expected `y` in the last round.
    pub change: f64,
    /// Share of what such a stage would tell if it had been finished that is missing, 0 to 1.
    pub missing_share: f64,
}

impl History {
    /// Works out what the history says.
    ///
    /// Formula: for each combination of ratios, with `A` the sum of rows squared and `b` of rows
    /// times `y` (vehicles taken out) and `D` the diagonal of one over each ratio:
    /// `mean = (A + D)⁻¹ b`, `shape = shape0 + n/2`, `scale = scale0 + (yy - bᵀ mean)/2`; its weight is
    /// proportional to `sqrt(|D| / (|A + D| |V|)) scale^-shape`.
    ///
    /// Stages that were left stand in with the mean of what lies beyond their time, found in
    /// rounds at the heaviest point; [`Learned::left_stages`] tells how sure that is.
    ///
    /// # Errors
    ///
    /// [`OddsError::Unsound`] where times lie so far apart that no digits are left.
    ///
    /// # Limits
    ///
    /// A stage that was left counts as a whole stage for the spread. Where more than one in
    /// four was left, the spread comes out a little narrow.
    ///
    /// # Source
    ///
    /// The conjugate normal-inverse-gamma model of a linear regression, as in textbooks of
    /// Bayesian statistics; tests hold it against another implementation.
    pub fn fit(&self) -> Result<Learned, OddsError> {
        let start = Imputed::at_bounds(self);
        let first = self.points(&start)?;
        let (points, imputed) = if self.left.is_empty() {
            (first, start)
        } else {
            let heaviest = first
                .iter()
                .max_by(|one, other| one.log_weight.total_cmp(&other.log_weight))
                .ok_or(OddsError::Unsound)?;
            let imputed = self.impute(heaviest.ratios, start)?;
            (self.points(&imputed)?, imputed)
        };
        Ok(Learned {
            history: self.clone(),
            points: weighed(points),
            imputed,
        })
    }

    fn points(&self, imputed: &Imputed) -> Result<Vec<Point>, OddsError> {
        let mut points = Vec::new();
        for sums in &self.sums {
            let with = self.with_imputed(sums, imputed);
            for &kind in &self.grid.kind {
                for &person in &self.grid.person {
                    for &condition in &self.grid.condition {
                        let ratios = Ratios {
                            shop: 1.0 / self.prior.jobs,
                            condition,
                            kind,
                            person,
                            vehicle: sums.ratio,
                        };
                        points.push(self.point(sums, &with, ratios)?);
                    }
                }
            }
        }
        Ok(points)
    }

    fn point(&self, sums: &Sums, with: &WithY, ratios: Ratios) -> Result<Point, OddsError> {
        let mut square: Symmetric = sums.square.clone();
        let mut log_prior = 0.0;
        for (at, family) in self.columns.families.iter().enumerate() {
            square.add(at, at, 1.0 / ratios.of(*family));
            log_prior -= log(ratios.of(*family));
        }
        let triangle = square.cholesky().ok_or(OddsError::Unsound)?;
        let mean = triangle.solve(&with.rows_y);
        let explained: f64 = with.rows_y.iter().zip(&mean).map(|(b, m)| b * m).sum();
        let shape = self.prior.shape() + count(self.stages) / 2.0;
        let scale = self.prior.scale() + 0.5 * (with.y_square - explained).max(0.0);
        let log_weight = 0.5 * (log_prior - triangle.log_determinant() - sums.log_determinant)
            - shape * log(scale);
        if !log_weight.is_finite() {
            return Err(OddsError::Unsound);
        }
        Ok(Point {
            weight: 0.0,
            ratios,
            mean,
            triangle,
            shape,
            scale,
            log_weight,
        })
    }

    /// Finds what lies beyond the times at which stages were left.
    fn impute(&self, ratios: Ratios, start: Imputed) -> Result<Imputed, OddsError> {
        let sums = self
            .sums
            .iter()
            .find(|sums| sums.ratio.to_bits() == ratios.vehicle.to_bits())
            .ok_or(OddsError::Unsound)?;
        let mut imputed = start;
        // The rows stay, so the triangle stays; only what stands in for `y` moves.
        let triangle = self
            .point(sums, &self.with_imputed(sums, &imputed), ratios)?
            .triangle;
        for round in 1..=MOST_ROUNDS {
            let with = self.with_imputed(sums, &imputed);
            let mean = triangle.solve(&with.rows_y);
            let explained: f64 = with.rows_y.iter().zip(&mean).map(|(b, m)| b * m).sum();
            let scale = self.prior.scale() + 0.5 * (with.y_square - explained).max(0.0);
            let shape = self.prior.shape() + count(self.stages) / 2.0;
            let deviation = sqrt(scale / shape);
            let mut next = Imputed {
                rounds: round,
                ..Imputed::default()
            };
            for (left, old) in self.left.iter().zip(&imputed.y) {
                let visits = &self.vehicles[&left.vehicle];
                let total = visits.y + imputed.by_vehicle[&left.vehicle];
                let vehicle = visits.shrink(ratios.vehicle) * (total - dot(&visits.rows, &mean));
                let middle = dot(&left.row, &mean) + vehicle;
                let z = (left.beyond - middle) / deviation;
                let tail = hazard(z);
                let share = (1.0 - tail * (tail - z)).clamp(0.0, 1.0);
                let y = middle + deviation * tail;
                next.variance += deviation * deviation * share;
                next.missing += share / count(self.left.len());
                next.change = next.change.max((y - old).abs());
                *next.by_vehicle.entry(left.vehicle.clone()).or_default() += y;
                next.y.push(y);
            }
            imputed = next;
            if imputed.change < 1e-9 {
                break;
            }
        }
        Ok(imputed)
    }

    /// The sums with what stands in for the stages that were left.
    fn with_imputed(&self, sums: &Sums, imputed: &Imputed) -> WithY {
        let mut with = WithY {
            rows_y: sums.with_y.clone(),
            y_square: sums.y_square + imputed.variance,
        };
        for (left, y) in self.left.iter().zip(&imputed.y) {
            with.y_square += y * y;
            for (at, value) in &left.row {
                with.rows_y[*at] += value * y;
            }
        }
        for (vehicle, added) in &imputed.by_vehicle {
            let visits = &self.vehicles[vehicle];
            let shrink = visits.shrink(sums.ratio);
            for (at, value) in &visits.rows {
                with.rows_y[*at] -= shrink * value * added;
            }
            let total = visits.y + added;
            with.y_square -= shrink * (total * total - visits.y * visits.y);
        }
        with
    }
}

struct WithY {
    rows_y: Vec<f64>,
    y_square: f64,
}

impl Imputed {
    fn at_bounds(history: &History) -> Imputed {
        let mut imputed = Imputed::default();
        for left in &history.left {
            imputed.y.push(left.beyond);
            *imputed.by_vehicle.entry(left.vehicle.clone()).or_default() += left.beyond;
        }
        imputed
    }
}

fn weighed(mut points: Vec<Point>) -> Vec<Point> {
    let most = points
        .iter()
        .map(|point| point.log_weight)
        .fold(f64::NEG_INFINITY, f64::max);
    let all: f64 = points.iter().map(|p| exp(p.log_weight - most)).sum();
    for point in &mut points {
        point.weight = exp(point.log_weight - most) / all;
    }
    points.retain(|point| point.weight >= LEAST_WEIGHT);
    let kept: f64 = points.iter().map(|point| point.weight).sum();
    for point in &mut points {
        point.weight /= kept;
    }
    points
}

pub(crate) fn dot(row: &[(usize, f64)], values: &[f64]) -> f64 {
    row.iter().map(|(at, value)| value * values[*at]).sum()
}

#[allow(clippy::cast_precision_loss, reason = "counts stay far below 2^52")]
pub(crate) fn count(count: usize) -> f64 {
    count as f64
}

/// What one point says of one sort of stage: a Student t of `y`.
#[derive(Clone, Copy, Debug, PartialEq)]
struct OneStage {
    weight: f64,
    middle: f64,
    deviation: f64,
    freedom: f64,
}

impl Learned {
    /// How far the stages that were left can be leaned on.
    pub fn left_stages(&self) -> LeftStages {
        LeftStages {
            stages: self.history.left.len(),
            rounds: self.imputed.rounds,
            change: self.imputed.change,
            missing_share: self.imputed.missing,
        }
    }

    /// How many stages it was learned from.
    pub fn stages(&self) -> usize {
        self.history.stages
    }

    /// Chance that one stage takes at most `times_book` times its book minutes.
    ///
    /// Formula: for each point of the grid a Student t with `2 shape` degrees of freedom about
    /// the sum of the effects, weighted. A closed form; the draws have to agree with it.
    ///
    /// Inputs: the sort of stage, who does it, on which vehicle; `times_book` above 0.
    ///
    /// Returns a chance from 0 to 1; at and below the floor 0.
    ///
    /// ```
    /// use odds::{Condition, Grid, History, Prior};
    ///
    /// let learned = History::new(Prior::default(), Grid::default())?.fit()?;
    /// let even = learned.chance_within(None, "fasteners", None, Condition::default(), 1.0);
    /// assert!((even - 0.5).abs() < 1e-12);
    /// # Ok::<(), odds::OddsError>(())
    /// ```
    pub fn chance_within(
        &self,
        vehicle: Option<&str>,
        kind: &str,
        person: Option<&str>,
        condition: Condition,
        times_book: f64,
    ) -> f64 {
        let prior = &self.history.prior;
        if times_book.is_nan() || times_book <= prior.floor {
            return 0.0;
        }
        let above = (times_book - prior.floor) / (1.0 - prior.floor);
        let y = log(above) - prior.mean();
        self.one_stage(vehicle, kind, person, condition)
            .iter()
            .map(|one| {
                let z = (y - one.middle) / one.deviation;
                // At least three degrees of freedom by the prior's shape.
                one.weight
                    * StudentsT::new(0.0, 1.0, one.freedom).map_or(0.5, |student| student.cdf(z))
            })
            .sum()
    }

    /// The logarithm of the marginal likelihood at the point of the grid that weighs most,
    /// up to what is the same for every point; with the weight of that point.
    pub fn heaviest(&self) -> (f64, f64) {
        self.points
            .iter()
            .map(|point| (point.log_weight, point.weight))
            .max_by(|one, other| one.0.total_cmp(&other.0))
            .unwrap_or((f64::NEG_INFINITY, 0.0))
    }

    fn one_stage(
        &self,
        vehicle: Option<&str>,
        kind: &str,
        person: Option<&str>,
        condition: Condition,
    ) -> Vec<OneStage> {
        let mut columns = self.history.columns.clone();
        let row = columns.of(kind, person, condition);
        let visits = self.visits(vehicle);
        let known = self.history.columns.families.len();
        self.points
            .iter()
            .map(|point| {
                let shrink = visits.shrink(point.ratios.vehicle);
                // What the vehicle's effect takes back of the others stands in the row.
                let mut dense = vec![0.0; known];
                let mut own = 1.0 + shrink;
                for (at, value) in &row {
                    match dense.get_mut(*at) {
                        Some(place) => *place += value,
                        None => own += value * value * point.ratios.of(columns.families[*at]),
                    }
                }
                for (at, value) in &visits.rows {
                    dense[*at] -= shrink * value;
                }
                let middle: f64 = shrink * visits.y
                    + dense
                        .iter()
                        .zip(&point.mean)
                        .map(|(x, m)| x * m)
                        .sum::<f64>();
                let solved = point.triangle.solve(&dense);
                let shared: f64 = dense.iter().zip(&solved).map(|(x, s)| x * s).sum();
                OneStage {
                    weight: point.weight,
                    middle,
                    deviation: sqrt(point.scale / point.shape * (own + shared)),
                    freedom: 2.0 * point.shape,
                }
            })
            .collect()
    }

    /// What is known of a vehicle, the stages that were left included.
    pub(crate) fn visits(&self, vehicle: Option<&str>) -> Visits {
        let known = vehicle.and_then(|name| {
            let mut visits = self.history.vehicles.get(name)?.clone();
            visits.y += self.imputed.by_vehicle.get(name).copied().unwrap_or(0.0);
            Some(visits)
        });
        known.unwrap_or_default()
    }
}

/// The logarithm of the beta-binomial chance of `x` among `n`, for a Beta(a, b), without the
/// binomial coefficient.
pub(crate) fn log_beta_binomial(x: f64, n: f64, a: f64, b: f64) -> f64 {
    let log_beta = |p: f64, q: f64| lgamma(p) + lgamma(q) - lgamma(p + q);
    log_beta(x + a, n - x + b) - log_beta(a, b)
}
