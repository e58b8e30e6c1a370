//! An order's model as plain numbers, for another implementation to draw from.

use crate::error::OddsError;
use crate::fit::Learned;
use crate::order::Order;
use crate::prepare::{CAP, Ready};
use crate::snags::SnagHistory;
use crate::spread::Range;

/// What one draw of an order is made of.
#[derive(Clone, Debug, PartialEq)]
pub struct Model {
    /// The points of the grid.
    pub points: Vec<ModelPoint>,
    /// Each distinct row of effects: which effect, and by how much it counts.
    pub rows: Vec<Vec<(usize, f64)>>,
    /// The same of the vehicle's past stages, and the sum of what they came to.
    pub visits: Vec<(usize, f64)>,
    pub visits_y: f64,
    /// The logarithm of minutes over book that the belief begins with.
    pub center: f64,
    /// The share of the book that is never undercut.
    pub floor: f64,
    /// The most minutes over book.
    pub cap: f64,
    pub vehicle_on_snags: f64,
    pub lines: Vec<ModelLine>,
    /// What else costs.
    pub amounts: Vec<ModelRange>,
    /// An hour's labour, and tax in per cent.
    pub rate: f64,
    pub tax_percent: f64,
}

/// One point of the grid: the variance of a stage is `scale / g`, where g is drawn from a gamma
/// distribution of this shape; an effect is `mean + deviation * triangle z`; the vehicle's own is
/// `shrink * (visits_y - past) + deviation * vehicle * z`.
#[derive(Clone, Debug, PartialEq)]
pub struct ModelPoint {
    pub weight: f64,
    pub scale: f64,
    pub shape: f64,
    pub mean: Vec<f64>,
    pub triangle: Vec<Vec<f64>>,
    pub shrink: f64,
    pub vehicle: f64,
}

/// A line: as often as it is done, `book * min(cap, floor + (1 - floor) exp(y))` minutes.
#[derive(Clone, Debug, PartialEq)]
pub struct ModelLine {
    /// Its row of effects.
    pub row: usize,
    pub book: f64,
    pub times: u32,
    pub snags: Option<ModelSnags>,
}

/// What may snag: the chance of a piece is a mixture of beta distributions, its odds times
/// `exp(vehicle_on_snags * vehicle)`.
#[derive(Clone, Debug, PartialEq)]
pub struct ModelSnags {
    pub count: u32,
    /// Weight, and the two parameters.
    pub parts: Vec<(f64, f64, f64)>,
    pub minutes: ModelRange,
    pub price: ModelRange,
}

/// `low + width * b`, where b is drawn from a beta distribution; or `low` alone.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct ModelRange {
    pub low: f64,
    pub width: f64,
    pub beta: Option<(f64, f64)>,
}

impl ModelRange {
    fn of(range: &Range) -> ModelRange {
        match range.shape() {
            Some(beta) => ModelRange {
                low: range.low,
                width: range.high - range.low,
                beta: Some(beta),
            },
            None => ModelRange {
                low: range.likely,
                width: 0.0,
                beta: None,
            },
        }
    }
}

/// The model that [`crate::quote`] draws an order from.
///
/// Inputs: what was learned, the snags seen, the order. Labour is by the clock; actions that could
/// be done first are left out.
///
/// # Errors
///
/// As [`crate::quote`] for the order.
///
/// ```
/// use odds::{Grid, History, Line, Order, Prior, SnagHistory, model};
///
/// let learned = History::new(Prior::default(), Grid::default())?.fit()?;
/// let line = Line { what: "pump".into(), kind: "part".into(), book_minutes: 60.0, times: 2,
///     ..Line::default() };
/// let order = Order { lines: vec![line], ..Order::default() };
/// let found = model(&learned, &SnagHistory::default(), &order)?;
/// let weights: f64 = found.points.iter().map(|point| point.weight).sum();
/// assert!((weights - 1.0).abs() < 1e-9);
/// # Ok::<(), odds::OddsError>(())
/// ```
pub fn model(learned: &Learned, snags: &SnagHistory, order: &Order) -> Result<Model, OddsError> {
    order.check()?;
    let ready = Ready::of(learned, snags, order)?;
    let points = ready.spots.iter().zip(&learned.points);
    let points = points.map(|(spot, point)| ModelPoint {
        weight: point.weight,
        scale: point.scale,
        shape: point.shape,
        mean: spot.mean.clone(),
        triangle: spot.rows.clone(),
        shrink: spot.shrink,
        vehicle: spot.vehicle,
    });
    let lines = order.lines.iter().zip(&ready.work).map(|(line, work)| {
        let of = |pieces: &crate::order::Pieces| -> Result<ModelSnags, OddsError> {
            let chance = snags.chance(&pieces.joint, learned.history.prior())?;
            Ok(ModelSnags {
                count: pieces.count,
                parts: chance.parts,
                minutes: ModelRange::of(&pieces.minutes),
                price: ModelRange::of(&pieces.price),
            })
        };
        Ok(ModelLine {
            row: work.row,
            book: work.book,
            times: work.times,
            snags: line.pieces.as_ref().map(of).transpose()?,
        })
    });
    Ok(Model {
        points: points.collect(),
        lines: lines.collect::<Result<_, OddsError>>()?,
        amounts: order
            .amounts
            .iter()
            .map(|one| ModelRange::of(&one.price))
            .collect(),
        rows: ready.rows,
        visits: ready.visits,
        visits_y: ready.visits_y,
        center: ready.center,
        floor: ready.floor,
        cap: CAP,
        vehicle_on_snags: ready.vehicle_on_snags,
        rate: order.rule.rate,
        tax_percent: order.rule.tax_percent,
    })
}
