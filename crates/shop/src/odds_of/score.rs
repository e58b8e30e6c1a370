//! How good the estimates were that were given, by what the orders came to.

use super::past::ORDERS;
use super::{given, number};
use crate::roles::OWNER;
use crate::snapshot::Snapshot;
use crate::trouble::Trouble;
use odds::{Given, Score};
use repair::price::Payer;
use repair::{Order, PersonId, papers};
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
    /// By the sort of work, where it was opened.
    pub kinds: Vec<(String, Score)>,
    /// By who worked on it, for the owner alone.
    pub people: Vec<(String, Score)>,
}

/// An estimate that was given, with what it came to and what it was of.
struct OfOrder {
    month: String,
    kind: Option<String>,
    people: Vec<String>,
    given: Given,
}

/// Scores the first estimate given on each order that was handed over since, by its price. It
/// is taken as it was given, never reckoned again.
///
/// # Errors
/// [`Trouble`], if the record cannot be read.
pub fn score(snap: &Snapshot<'_>) -> Result<EstimateScore, Trouble> {
    let world = snap.world();
    let mut all: Vec<OfOrder> = Vec::new();
    for (_, id) in world.orders_before(None, ORDERS)? {
        let order = world.order(&id)?;
        let Some((month, given)) = given_and_came_to(&order, snap) else {
            continue;
        };
        all.push(OfOrder {
            month,
            kind: kind_of(&order),
            people: crate::view::assigned(&order),
            given,
        });
    }
    let score = |given: &[Given]| odds::score(given).map_err(|error| super::trouble(&error));
    let by = |of: &dyn Fn(&OfOrder) -> Vec<String>| -> Result<Vec<(String, Score)>, Trouble> {
        let mut groups: BTreeMap<String, Vec<Given>> = BTreeMap::new();
        for one in &all {
            for name in of(one) {
                groups.entry(name).or_default().push(one.given.clone());
            }
        }
        let scored = groups
            .into_iter()
            .map(|(name, given)| Ok((name, score(&given)?)));
        scored.collect()
    };
    let named = |person: &String| {
        let everyone = world.shop.everyone();
        let found = everyone.get(&PersonId::new(person.as_str()));
        found.map_or_else(String::new, |(name, _)| snap.texts().text(*name))
    };
    let people = match snap.caller().has_any(OWNER) {
        true => by(&|one| one.people.iter().map(named).collect())?,
        false => Vec::new(),
    };
    let given: Vec<Given> = all.iter().map(|one| one.given.clone()).collect();
    let months = by(&|one| vec![one.month.clone()])?.into_iter().rev();
    Ok(EstimateScore {
        all: score(&given)?,
        months: months
            .map(|(month, score)| Month { month, score })
            .collect(),
        kinds: by(&|one| one.kind.iter().cloned().collect())?,
        people,
    })
}

/// What sort of work it was: the system of which most was opened.
fn kind_of(order: &Order) -> Option<String> {
    let mut systems: BTreeMap<repair::System, usize> = BTreeMap::new();
    let account = order.account();
    for item in account.items.values() {
        *systems.entry(item.system).or_default() += 1;
    }
    let most = systems.into_iter().max_by_key(|(_, count)| *count);
    most.map(|(system, _)| crate::say::system_name(system).to_owned())
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
