//! The odds of an order: how long the work on its price is likely to take, what covers it how
//! often, and how good the estimates were that were given.
//!
//! Times and snags are learned from the record: stages whose clock ran, and what snapped.

mod learnt;
mod past;
mod score;

pub(crate) use learnt::Learnt;
pub(crate) use past::{joints_of, stages_of};
pub(crate) use score::given_and_came_to;
pub use score::{EstimateScore, Month, score};

use crate::amount::Amount as Figure;
use crate::phrases::odds as words;
use crate::phrases::order::no_order;
use crate::planning::{map_of_order, on_map_of};
use crate::say;
use crate::snapshot::Snapshot;
use crate::trouble::Trouble;
use crate::view::entry_label;
use crate::world::{World, vehicle_of};
use ::phrases::{Language, speaking, spoken};
use odds::{
    Amount, Ask, Condition, Joint, Labour, Line, OddsError, Order as Work, Pieces, Quote, Range,
    Rule,
};
use repair::price::{Charge, Entry, Payer};
use repair::{Fact, Kind, Order, papers};
use rust_decimal::Decimal;
use rust_decimal::prelude::ToPrimitive;
use serde_json::{Value, json};

/// What an estimate is called in the record.
pub const ESTIMATE: &str = "odds";

/// Minutes that one snag is taken to add, least, likely and most.
pub const SNAG_MINUTES: Range = Range {
    low: 20.0,
    likely: 55.0,
    high: 90.0,
};

/// Work on a price is drawn as stages of about so many minutes by the book, as it is done at the
/// vehicle: quick ones and slow ones even out, the shop and the vehicle do not.
pub const STAGE_MINUTES: f64 = 12.0;

/// More snags for sure than this are not reckoned with: there somebody looks first.
pub const MOST_SNAGS: u32 = 5;

/// The seed of every estimate: the same order says the same until something is told.
const SEED: u64 = 1;
const DRAWS: usize = 40_000;

/// An amount that covers the price, and how often.
#[derive(Debug, Clone, PartialEq)]
pub struct Cover {
    /// How often, as one says it.
    pub often: String,
    /// From 0 to 1.
    pub chance: f64,
    /// The amount, rounded up to a whole one.
    pub amount: Figure,
    /// Hours that cover it as often.
    pub hours: String,
}

/// The odds of an order.
#[derive(Debug, Clone, PartialEq)]
pub struct OrderOdds {
    /// As worked out.
    pub quote: Quote,
    /// In one line, such as `likely 3.4 to 5.6 hours (8 of 10)`.
    pub likely: String,
    /// What covers it 6, 8 and 9 times in 10.
    pub covers: Vec<Cover>,
    /// What was agreed to so far, and how often it covers the price.
    pub ceiling: Option<Cover>,
    /// The same amount as a number.
    pub ceiling_amount: Option<f64>,
    /// Whether tax is within these amounts.
    pub with_tax: bool,
    /// What drives it, in words, with the share of the spread that goes with it in per cent.
    pub causes: Vec<(String, u32)>,
    /// Snags that are reckoned to come for sure.
    pub snags: u32,
    /// Fasteners that come out and may snap.
    pub fasteners: u32,
    /// Stages that it was learned from.
    pub stages: usize,
    /// One sentence for whoever is asked.
    pub sentence: String,
    /// What is told to the record when it is given.
    pub fact: Value,
    /// When one was given last.
    pub given: Option<String>,
}

/// The odds of an order, with so many snags that come for sure; without a number, those that
/// are open.
///
/// # Errors
/// [`Trouble`]: there is no such order, no hours stand in its price, or they make no sense.
pub fn odds_of(snap: &Snapshot<'_>, number: u64, snags: Option<u32>) -> Result<OrderOdds, Trouble> {
    let world = snap.world();
    let id = world
        .order_numbered(number)?
        .ok_or_else(|| Trouble::not_found(no_order(number)))?;
    let order = world.order(&id)?;
    let open = u32::try_from(repair::snags::open(&order).len()).unwrap_or(u32::MAX);
    let snags = snags.unwrap_or(open).min(MOST_SNAGS);
    let past = past::past(snap, Some(&id))?;
    let fasteners = fasteners(snap, number);
    let (work, ceiling, with_tax) = work(snap, world, &order, snags, fasteners)?;
    let learned = past.times.fit().map_err(|error| trouble(&error))?;
    let ask = Ask {
        seed: SEED,
        draws: DRAWS,
        threads: std::thread::available_parallelism().map_or(1, usize::from),
        ceiling,
        ..Ask::default()
    };
    let quoted = || odds::quote(&learned, &past.snags, &work, &ask);
    let quote = quoted().map_err(|error| trouble(&error))?;
    // What is kept with an estimate that is given is said the same by every screen.
    let kept = match spoken() {
        Language::English => None,
        _ => Some(speaking(Language::English, quoted).map_err(|error| trouble(&error))?),
    };
    let digits = papers::minor_digits(&order);
    let covers: Vec<Cover> = quote
        .ceilings
        .iter()
        .map(|covers| Cover {
            often: often(covers.chance),
            chance: covers.chance,
            amount: money(covers.amount.ceil(), digits),
            hours: say::figures(&format!("{:.1}", covers.hours)),
        })
        .collect();
    let (low, high) = quote.hours.eight_in_ten();
    let hours = |hours: f64| say::figures(&format!("{hours:.1}"));
    let likely = words::likely_hours(hours(low), hours(high));
    let (from, to) = quote.price.eight_in_ten();
    let most = covers
        .last()
        .map_or_else(Figure::default, |cover| cover.amount.clone());
    let [from, to] = [from, to].map(|sum| money(sum.ceil(), digits));
    let sentence = match with_tax {
        true => words::comes_to_with_tax(from, to, most),
        false => words::comes_to_before_tax(from, to, most),
    };
    Ok(OrderOdds {
        likely,
        covers,
        ceiling: quote
            .chance_under_ceiling
            .zip(ceiling)
            .map(|(under, ceiling)| Cover {
                often: often(under.chance),
                chance: under.chance,
                amount: money(ceiling, digits),
                hours: String::new(),
            }),
        ceiling_amount: ceiling,
        with_tax,
        causes: causes(&quote, fasteners),
        snags,
        fasteners,
        stages: learned.stages(),
        sentence,
        fact: fact(kept.as_ref().unwrap_or(&quote), &work, with_tax),
        given: given(&order).last().map(|(at, _)| at.to_string()),
        quote,
    })
}

/// How long work of so many minutes by the book is likely to take here, with so many fasteners
/// that come out: `likely 48 to 95 min (8 of 10)`, how many timed stages that was learned from, and
/// how it was found, as HTML made by the program.
///
/// # Errors
/// [`Trouble`]: there is no such order, or no minutes to tell it of.
pub fn minutes_of(
    snap: &Snapshot<'_>,
    number: u64,
    book_minutes: f64,
    fasteners: u32,
) -> Result<(String, usize, String), Trouble> {
    const MINUTE_DRAWS: usize = 8_000;
    let world = snap.world();
    let id = world
        .order_numbered(number)?
        .ok_or_else(|| Trouble::not_found(no_order(number)))?;
    let order = world.order(&id)?;
    let vehicle = vehicle_of(&order);
    let rust = match &vehicle {
        Some(id) => world.vehicle(id)?.rust(),
        None => None,
    };
    let past = past::past(snap, Some(&id))?;
    let learned = past.times.fit().map_err(|error| trouble(&error))?;
    let stages = (book_minutes / STAGE_MINUTES).round().clamp(1.0, 500.0);
    let pieces = (fasteners > 0).then(|| Pieces {
        count: fasteners.min(1_000),
        joint: Joint {
            rust,
            ..Joint::default()
        },
        minutes: SNAG_MINUTES,
        price: Range::default(),
    });
    let work = Work {
        vehicle: vehicle.map(|vehicle| vehicle.as_str().to_owned()),
        condition: Condition {
            rust,
            ..Condition::default()
        },
        lines: vec![Line {
            kind: "work on the plan".to_owned(),
            what: "the plan".to_owned(),
            book_minutes: book_minutes / stages,
            times: whole(stages),
            pieces,
            ..Line::default()
        }],
        rule: Rule {
            rate: 1.0,
            labour: Labour::Clock,
            tax_percent: 0.0,
        },
        amounts: Vec::new(),
        actions: Vec::new(),
    };
    let ask = Ask {
        seed: SEED,
        draws: MINUTE_DRAWS,
        threads: 1,
        ..Ask::default()
    };
    let quote = odds::quote(&learned, &past.snags, &work, &ask).map_err(|error| trouble(&error))?;
    let (low, high) = quote.hours.eight_in_ten();
    let minutes = |hours: f64| format!("{:.0}", 60.0 * hours);
    let likely = words::likely_minutes(minutes(low), minutes(high));
    Ok((likely, learned.stages(), quote.working.html()))
}

// What the program itself calls work that is quoted: it is kept with what was worked out, so it is
// the same whatever is spoken.
const WORK: &str = "work";
const THE_SNAG: &str = "putting right the snag that came";
const THE_REST: &str = "parts and the rest of the price";

/// The work on the price of an order, as it is quoted.
fn work(
    snap: &Snapshot<'_>,
    world: &World,
    order: &Order,
    snags: u32,
    fasteners: u32,
) -> Result<(Work, Option<f64>, bool), Trouble> {
    let missing = || {
        Trouble::unreadable(
            words::the_price(),
            words::no_hours(),
            words::price_the_work(),
        )
    };
    let price = papers::price(order).ok_or_else(missing)?;
    let entries: Vec<&Entry> = price
        .all()
        .filter(|entry| entry.payer == Payer::Customer)
        .collect();
    let mut lines = Vec::new();
    let (mut hours, mut labour, mut beside) = (0.0, 0.0, 0.0);
    for entry in &entries {
        let (quantity, each) = (number(entry.quantity), number(entry.each));
        if entry.charge != Charge::Labour || quantity * 60.0 < 0.1 {
            beside += quantity * each;
            continue;
        }
        hours += quantity;
        labour += quantity * each;
        let stages = (quantity * 60.0 / STAGE_MINUTES).round().clamp(1.0, 500.0);
        let label = entry_label(snap, entry);
        let what = if label.trim().is_empty() {
            WORK.to_owned()
        } else {
            label
        };
        lines.push(Line {
            kind: "work on the price".to_owned(),
            what,
            book_minutes: quantity * 60.0 / stages,
            times: whole(stages),
            ..Line::default()
        });
    }
    if hours <= 0.0 {
        return Err(missing());
    }
    let vehicle = vehicle_of(order);
    let rust = match &vehicle {
        Some(id) => world.vehicle(id)?.rust(),
        None => None,
    };
    let joint = Joint {
        rust,
        ..Joint::default()
    };
    // What may snap is told of the longest work.
    let longest = (0..lines.len()).max_by(|one, other| {
        let minutes = |at: &usize| lines[*at].book_minutes * f64::from(lines[*at].times);
        minutes(one).total_cmp(&minutes(other))
    });
    if let (Some(longest), true) = (longest, fasteners > 0) {
        lines[longest].pieces = Some(Pieces {
            count: fasteners.min(1_000),
            joint,
            minutes: SNAG_MINUTES,
            price: Range::default(),
        });
    }
    let rate = labour / hours;
    let totals = price.totals.get(&Payer::Customer);
    let ceiling = papers::ceilings(order).get(&Payer::Customer).copied();
    let with_tax = ceiling.is_some_and(|ceiling| ceiling.tax_included);
    let taxed = totals
        .filter(|totals| with_tax && totals.net > Decimal::ZERO)
        .map_or(0.0, |totals| {
            100.0 * number(totals.tax) / number(totals.net)
        });
    // A snag that is there takes its minutes for sure.
    if snags > 0 {
        lines.push(Line {
            what: THE_SNAG.to_owned(),
            kind: "snag".to_owned(),
            book_minutes: SNAG_MINUTES.mean(),
            times: snags,
            ..Line::default()
        });
    }
    let work = Work {
        vehicle: vehicle.map(|vehicle| vehicle.as_str().to_owned()),
        condition: Condition {
            rust,
            ..Condition::default()
        },
        lines,
        rule: Rule {
            rate,
            labour: Labour::Clock,
            tax_percent: taxed.clamp(0.0, 100.0),
        },
        amounts: vec![Amount {
            what: THE_REST.to_owned(),
            price: Range::sure(beside),
        }],
        actions: Vec::new(),
    };
    Ok((
        work,
        ceiling.map(|ceiling| number(ceiling.amount)),
        with_tax,
    ))
}

/// How many fasteners the plan takes out, where the order works by a map.
fn fasteners(snap: &Snapshot<'_>, number: u64) -> u32 {
    let found = || -> Result<u32, Trouble> {
        let Some((map, version)) = map_of_order(snap, number)? else {
            return Ok(0);
        };
        let on = on_map_of(snap, number, &map, Some(version), None)?;
        if !on.asks() {
            return Ok(0);
        }
        let plan = on.plan(snap)?;
        let rows = plan.off.iter().flat_map(|stage| &stage.rows);
        let pieces: usize = rows
            .filter(|row| row.kind == Kind::Fasteners && row.size.is_some())
            .map(|row| row.at.len())
            .sum();
        Ok(u32::try_from(pieces).unwrap_or(u32::MAX))
    };
    // Where there is no plan, nobody knows what comes out.
    found().unwrap_or(0)
}

fn causes(quote: &Quote, fasteners: u32) -> Vec<(String, u32)> {
    use odds::CauseSort;
    let shown = quote.causes.iter().filter(|cause| cause.share >= 0.01);
    shown
        .take(5)
        .map(|cause| {
            let what = match cause.said() {
                WORK => words::work(),
                THE_SNAG => words::the_snag(),
                THE_REST => words::the_rest(),
                other => other,
            };
            let words = match cause.sort {
                CauseSort::Work => words::how_quickly(what),
                CauseSort::Snag => words::one_of_fasteners(fasteners),
                CauseSort::Vehicle | CauseSort::Shop | CauseSort::Parts => what.to_owned(),
            };
            #[allow(
                clippy::cast_possible_truncation,
                clippy::cast_sign_loss,
                reason = "a share from 0 to 1"
            )]
            let per_cent = (100.0 * cause.share).round() as u32;
            (words, per_cent.min(100))
        })
        .collect()
}

/// What the record keeps of an estimate that was given: it is never reckoned again.
fn fact(quote: &Quote, work: &Work, with_tax: bool) -> Value {
    let told = |spread: &odds::Spread| -> Vec<Value> {
        let quantiles = spread.quantiles.iter();
        quantiles.map(|(p, q, _)| json!([p, q])).collect()
    };
    let lines: Vec<Value> = work
        .lines
        .iter()
        .map(|line| json!({ "minutes": line.book_minutes, "times": line.times, "pieces": line.pieces.as_ref().map(|pieces| pieces.count) }))
        .collect();
    let inputs = json!({ "lines": lines, "rate": work.rule.rate, "rust": work.condition.rust,
        "seed": quote.seed, "draws": quote.draws });
    let outputs = json!({ "hours": told(&quote.hours), "price": told(&quote.price),
        "with_tax": with_tax });
    json!({ "calculator": ESTIMATE, "version": 2, "inputs": inputs.to_string(),
        "outputs": outputs.to_string(), "working": quote.working.text() })
}

/// The estimates that were given on an order, oldest first.
fn given(order: &Order) -> Vec<(jiff::Timestamp, Value)> {
    let mut out: Vec<(jiff::Timestamp, Value)> = order
        .beside_moves()
        .filter_map(|(_, filed)| match &filed.fact {
            Fact::Calculated {
                calculator,
                outputs,
                ..
            } if calculator.as_str() == ESTIMATE => Some((
                filed.stamp.at,
                serde_json::from_str(outputs).unwrap_or_default(),
            )),
            _ => None,
        })
        .collect();
    out.sort_by_key(|(at, _)| *at);
    out
}

/// A chance as one says it.
#[must_use]
pub fn often(chance: f64) -> String {
    let tenths = chance * 10.0;
    if chance < 0.005 {
        words::hardly_ever().to_owned()
    } else if chance > 0.995 {
        words::nearly_always().to_owned()
    } else if (tenths - tenths.round()).abs() < 0.05 {
        words::times_in_ten(format!("{tenths:.0}"))
    } else {
        words::times_in_hundred(format!("{:.0}", chance * 100.0))
    }
}

/// A whole number from 1 to 500.
#[allow(
    clippy::cast_possible_truncation,
    clippy::cast_sign_loss,
    reason = "whole, and from 1 to 500"
)]
fn whole(stages: f64) -> u32 {
    stages as u32
}

fn number(decimal: Decimal) -> f64 {
    decimal.to_f64().unwrap_or(0.0)
}

fn money(amount: f64, digits: u32) -> Figure {
    let amount = Decimal::try_from(amount);
    amount.map_or_else(|_| Figure::default(), |amount| say::money(amount, digits))
}

/// What the crate refuses, told as what is wrong and how to mend it.
fn trouble(error: &OddsError) -> Trouble {
    let message = error.to_string();
    let (what, mend) = message
        .split_once(": ")
        .unwrap_or((&message, words::check_it()));
    Trouble::unreadable(words::the_price(), what, mend)
}
