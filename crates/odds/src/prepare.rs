//! An order made ready to be drawn: every effect that it needs, at every point of the grid.

use crate::dense::Symmetric;
use crate::error::OddsError;
use crate::fit::{Learned, Point};
use crate::history::{Columns, Visits};
use crate::normal::exp;
use crate::order::{Action, Order, Rule};
use crate::snags::SnagHistory;
use crate::spread::Drawn;
use libm::sqrt;
use rand_distr::{Beta, Gamma};
use std::collections::{BTreeMap, BTreeSet};

/// Time is capped at so many times the book: there a technician stops and asks.
pub const CAP: f64 = 8.0;

/// What is drawn at one point of the grid.
#[derive(Clone, Debug)]
pub(crate) struct Spot {
    /// The weights up to and with this one.
    pub(crate) until: f64,
    pub(crate) scale: f64,
    pub(crate) shape: Gamma<f64>,
    pub(crate) mean: Vec<f64>,
    /// Row by row the triangle that turns normal numbers into effects.
    pub(crate) rows: Vec<Vec<f64>>,
    /// What of its stages' sum the vehicle's own effect is.
    pub(crate) shrink: f64,
    /// The standard deviation of that effect, over that of a stage.
    pub(crate) vehicle: f64,
}

#[derive(Clone, Debug)]
pub(crate) struct Work {
    /// Which of the distinct rows of effects it has.
    pub(crate) row: usize,
    pub(crate) book: f64,
    pub(crate) times: u32,
    pub(crate) factor: f64,
    pub(crate) snags: Option<Snags>,
}

#[derive(Clone, Debug)]
pub(crate) struct Snags {
    pub(crate) count: u32,
    pub(crate) odds: f64,
    /// Each with the weights up to and with it.
    pub(crate) parts: Vec<(f64, Beta<f64>)>,
    pub(crate) mean: f64,
    pub(crate) minutes: Drawn,
    pub(crate) price: Drawn,
}

/// An order made ready.
#[derive(Clone, Debug)]
pub(crate) struct Ready {
    pub(crate) spots: Vec<Spot>,
    pub(crate) rows: Vec<Vec<(usize, f64)>>,
    /// The rows of the vehicle's past stages, and the sum of their `y`.
    pub(crate) visits: Vec<(usize, f64)>,
    pub(crate) visits_y: f64,
    pub(crate) center: f64,
    pub(crate) floor: f64,
    pub(crate) vehicle_on_snags: f64,
    pub(crate) work: Vec<Work>,
    pub(crate) amounts: Vec<Drawn>,
    pub(crate) first: Option<(Drawn, Drawn)>,
    pub(crate) rule: Rule,
    pub(crate) book: f64,
}

impl Ready {
    pub(crate) fn of(
        learned: &Learned,
        snags: &SnagHistory,
        order: &Order,
    ) -> Result<Ready, OddsError> {
        let history = &learned.history;
        let mut columns = history.columns.clone();
        let rows: Vec<Vec<(usize, f64)>> = order
            .lines
            .iter()
            .map(|line| columns.of(&line.kind, line.person.as_deref(), order.condition))
            .collect();
        let visits = learned.visits(order.vehicle.as_deref());
        let used: BTreeSet<usize> = rows
            .iter()
            .chain([&visits.rows])
            .flatten()
            .map(|(at, _)| *at)
            .collect();
        let used: Vec<usize> = used.into_iter().collect();
        let short = |row: &[(usize, f64)]| -> Vec<(usize, f64)> {
            row.iter()
                .filter_map(|(at, value)| Some((used.binary_search(at).ok()?, *value)))
                .collect()
        };
        let mut until = 0.0;
        let mut spots = Vec::new();
        for point in &learned.points {
            until += point.weight;
            spots.push(spot(point, &used, &columns, &visits, until)?);
        }
        let mut distinct: Vec<Vec<(usize, f64)>> = Vec::new();
        let mut work = Vec::new();
        for (line, row) in order.lines.iter().zip(&rows) {
            let row = short(row);
            let at = distinct.iter().position(|known| *known == row);
            let at = at.unwrap_or_else(|| {
                distinct.push(row);
                distinct.len() - 1
            });
            let found = line
                .pieces
                .as_ref()
                .map(|pieces| -> Result<Snags, OddsError> {
                    let chance = snags.chance(&pieces.joint, &history.prior)?;
                    let mut until = 0.0;
                    let mut parts = Vec::new();
                    for (weight, a, b) in &chance.parts {
                        until += weight;
                        parts.push((until, Beta::new(*a, *b).map_err(|_| OddsError::Unsound)?));
                    }
                    Ok(Snags {
                        count: pieces.count,
                        odds: 1.0,
                        parts,
                        mean: chance.mean,
                        minutes: Drawn::of(&pieces.minutes),
                        price: Drawn::of(&pieces.price),
                    })
                })
                .transpose()?;
            work.push(Work {
                row: at,
                book: line.book_minutes,
                times: line.times,
                factor: 1.0,
                snags: found,
            });
        }
        Ok(Ready {
            spots,
            rows: distinct,
            visits: short(&visits.rows),
            visits_y: visits.y,
            center: history.prior.mean(),
            floor: history.prior.floor,
            vehicle_on_snags: history.prior.vehicle_on_snags,
            work,
            amounts: order.amounts.iter().map(|a| Drawn::of(&a.price)).collect(),
            first: None,
            rule: order.rule,
            book: order.book_minutes(),
        })
    }

    /// The same order with something done first.
    pub(crate) fn after(&self, order: &Order, action: &Action) -> Ready {
        let mut ready = self.clone();
        ready.first = Some((Drawn::of(&action.minutes), Drawn::of(&action.price)));
        for (line, work) in order.lines.iter().zip(&mut ready.work) {
            if line.what == action.line {
                work.factor = action.time;
                if let Some(snags) = &mut work.snags {
                    snags.odds = action.snag_odds;
                }
            }
        }
        ready
    }

    /// Minutes of one stage over its book minutes at `y`, capped.
    #[inline]
    pub(crate) fn times_book(&self, y: f64) -> f64 {
        (self.floor + (1.0 - self.floor) * exp(y)).min(CAP)
    }
}

fn spot(
    point: &Point,
    used: &[usize],
    columns: &Columns,
    visits: &Visits,
    until: f64,
) -> Result<Spot, OddsError> {
    let known = point.mean.len();
    let mut covariance = Symmetric::default();
    covariance.grow(used.len());
    let mut solved: BTreeMap<usize, Vec<f64>> = BTreeMap::new();
    for &at in used.iter().filter(|at| **at < known) {
        let mut unit = vec![0.0; known];
        unit[at] = 1.0;
        solved.insert(at, point.triangle.solve(&unit));
    }
    for (row, at) in used.iter().enumerate() {
        match solved.get(at) {
            Some(inverse) => {
                for (column, other) in used[..=row].iter().enumerate() {
                    if let Some(value) = inverse.get(*other) {
                        covariance.add(row, column, *value);
                    }
                }
            }
            // Never seen: only the prior speaks.
            None => covariance.add(row, row, point.ratios.of(columns.families[*at])),
        }
    }
    let triangle = covariance.cholesky().ok_or(OddsError::Unsound)?;
    let ratio = point.ratios.vehicle;
    Ok(Spot {
        until,
        scale: point.scale,
        shape: Gamma::new(point.shape, 1.0).map_err(|_| OddsError::Unsound)?,
        mean: used
            .iter()
            .map(|at| point.mean.get(*at).copied().unwrap_or(0.0))
            .collect(),
        rows: (0..used.len())
            .map(|row| triangle.row(row).to_vec())
            .collect(),
        shrink: visits.shrink(ratio),
        vehicle: sqrt(ratio / (1.0 + visits.stages * ratio)),
    })
}
