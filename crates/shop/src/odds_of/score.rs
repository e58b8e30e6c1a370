//! How good the estimates were that were given, by what the orders came to.

use super::past::ORDERS;
use super::{given, number};
use crate::snapshot::Snapshot;
use crate::trouble::Trouble;
use odds::{Given, Score};
use repair::price::Payer;
use repair::{Order, papers};
use serde_json::Value;
use std::collections::BTreeMap;

/// The score of one month.
#[derive(Debug, Clone, PartialEq)]
pub struct Month {
    /// Such as `2026-11`, of the hand-over.
    pub month: String,
    pub score: Score,
}

/// How good the estimates were.
#[derive(Debug, Clone, PartialEq)]
pub struct EstimateScore {
    /// Of all.
    pub all: Score,
    /// By month, the newest first.
    pub months: Vec<Month>,
}

/// Scores the first estimate given on each order that was handed over since, by its price. It
/// is taken as it was given, never reckoned again.
///
/// # Errors
/// [`Trouble`], if the record cannot be read.
pub fn score(snap: &Snapshot<'_>) -> Result<EstimateScore, Trouble> {
    let world = snap.world();
    let mut all = Vec::new();
    let mut months: BTreeMap<String, Vec<Given>> = BTreeMap::new();
    for (_, id) in world.orders_before(None, ORDERS)? {
        let order = world.order(&id)?;
        let Some((month, given)) = given_and_came_to(&order, snap) else {
            continue;
        };
        all.push(given.clone());
        months.entry(month).or_default().push(given);
    }
    let score = |given: &[Given]| odds::score(given).map_err(|error| super::trouble(&error));
    Ok(EstimateScore {
        all: score(&all)?,
        months: months
            .iter()
            .rev()
            .map(|(month, given)| {
                Ok(Month {
                    month: month.clone(),
                    score: score(given)?,
                })
            })
            .collect::<Result<_, Trouble>>()?,
    })
}

/// The first estimate of an order with what it came to, and the month it left in.
pub(crate) fn given_and_came_to(order: &Order, snap: &Snapshot<'_>) -> Option<(String, Given)> {
    let left = papers::handed_over(order)?;
    let (_, first) = given(order).into_iter().find(|(at, _)| *at <= left.at)?;
    let price = papers::price(order)?;
    let totals = price.totals.get(&Payer::Customer)?;
    let happened = match first["with_tax"].as_bool() {
        Some(true) => totals.gross,
        _ => totals.net,
    };
    let quantiles: Option<Vec<(f64, f64)>> = first["price"]
        .as_array()?
        .iter()
        .map(|pair: &Value| Some((pair[0].as_f64()?, pair[1].as_f64()?)))
        .collect();
    let day = snap.rules().day(left.at);
    let month = format!("{:04}-{:02}", day.year(), day.month());
    let given = Given {
        quantiles: quantiles?,
        happened: number(happened),
    };
    // What somebody else's program wrote may make no sense: then it is not scored.
    odds::score(std::slice::from_ref(&given)).ok()?;
    Some((month, given))
}
