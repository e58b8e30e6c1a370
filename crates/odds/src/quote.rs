//! The quote: the spread of hours and price, what drives it, and what would be worth doing first.

use crate::draw::{Drawings, How, Still, draw};
use crate::error::{OddsError, within};
use crate::fit::{Learned, count};
use crate::order::{Labour, Order, Rule};
use crate::phrases as say;
use crate::prepare::Ready;
use crate::snags::SnagHistory;
use crate::spread::{self, Spread};
use crate::worked;
use libm::sqrt;
use measure::Working;

/// How to draw, and what is asked of the price.
#[derive(Clone, Debug, PartialEq)]
pub struct Ask {
    pub seed: u64,
    /// From 1,000 to 1,000,000.
    pub draws: usize,
    /// At least one; the result does not hang on it.
    pub threads: usize,
    /// The amount that the customer has authorised, 0 to 1,000,000,000.
    pub ceiling: Option<f64>,
    /// The chances for which a ceiling is wanted, each from 0.01 to 0.99.
    pub chances: Vec<f64>,
    /// Whether causes, and what is worth doing first, are wanted: about half the time again.
    pub causes: bool,
}

impl Default for Ask {
    fn default() -> Ask {
        Ask {
            seed: 1,
            draws: 100_000,
            threads: 1,
            ceiling: None,
            chances: vec![0.6, 0.8, 0.9],
            causes: true,
        }
    }
}

/// A chance, and by how much it may be off for having drawn so often only.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Chance {
    pub chance: f64,
    pub error: f64,
}

/// The amount that covers the price with a wanted chance.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Covers {
    pub chance: f64,
    pub amount: f64,
    pub hours: f64,
    /// By how much the amount may be off.
    pub error: f64,
}

/// What widens the spread.
#[derive(Clone, Debug, PartialEq)]
pub struct Cause {
    pub what: String,
    pub sort: CauseSort,
    /// Hours from 1 in 10 to 9 in 10 without it.
    pub hours_without: f64,
    /// Price from 1 in 10 to 9 in 10 without it.
    pub price_without: f64,
    /// Share of the spread that goes with it, 0 to 1; of the price where there is a rate, else
    /// of the hours. Shares need not add up to 1.
    pub share: f64,
}

impl Cause {
    /// What it is, in what is spoken now, whatever was spoken when the quote was worked out.
    pub fn said(&self) -> &str {
        match self.sort {
            CauseSort::Work | CauseSort::Snag => &self.what,
            CauseSort::Vehicle => say::how_it_comes_apart(),
            CauseSort::Shop => say::how_well_times_are_known(),
            CauseSort::Parts => say::what_parts_cost(),
        }
    }
}

#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum CauseSort {
    /// How quickly this very work goes.
    Work,
    /// What snaps or tears on it.
    Snag,
    /// How this vehicle is.
    Vehicle,
    /// How well times are known in this shop.
    Shop,
    /// What parts cost.
    Parts,
}

impl CauseSort {
    /// Its name in answers.
    pub fn name(self) -> &'static str {
        match self {
            CauseSort::Work => "work",
            CauseSort::Snag => "snag",
            CauseSort::Vehicle => "vehicle",
            CauseSort::Shop => "shop",
            CauseSort::Parts => "parts",
        }
    }
}

/// What doing something first changes: negative saves.
#[derive(Clone, Debug, PartialEq)]
pub struct Worth {
    pub what: String,
    /// Change of the mean, with how far it may be off.
    pub hours: (f64, f64),
    pub price: (f64, f64),
    /// Change of what covers nine in ten.
    pub hours_nine_in_ten: f64,
    pub price_nine_in_ten: f64,
}

/// Snags, apart from slow work.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct SnagShare {
    /// Chance of at least one.
    pub chance: f64,
    /// How many on average.
    pub count: f64,
    /// Minutes that they add on average.
    pub minutes: f64,
    /// Money beside labour that they add on average.
    pub price: f64,
}

/// An answer.
#[derive(Clone, Debug, PartialEq)]
pub struct Quote {
    pub book_hours: f64,
    pub hours: Spread,
    pub price: Spread,
    pub chance_under_ceiling: Option<Chance>,
    pub ceilings: Vec<Covers>,
    /// The widest first.
    pub causes: Vec<Cause>,
    pub snags: SnagShare,
    pub worth: Vec<Worth>,
    /// Share of the draws in which a stage ran into the cap.
    pub capped: f64,
    pub seed: u64,
    pub draws: usize,
    pub notes: Vec<String>,
    pub working: Working,
}

/// Draws for causes and for what is done first.
const SIDE_DRAWS: usize = 20_000;
/// The numbers that are kept for causes.
const DETAIL: usize = 6_000_000;
/// Stages times draws: about ten seconds.
const MOST_WORK: u64 = 1_000_000_000;

/// Quotes an order from what was learned.
///
/// Formula: in each draw, one point of the grid by its weight, one variance, one vector of effects
/// and one effect of the vehicle; each stage takes
/// `book (floor + (1 - floor) exp(effects + vehicle + error))`, at most 8 times book; each piece
/// brings a snag with its class's chance, its log-odds moved by the vehicle's effect. Minutes and
/// money are added up, and the draws are sorted.
///
/// Inputs: what was learned of times and of snags; the order, within the ranges of its types;
/// the seed, the number of draws (1,000 to 1,000,000) and of threads.
///
/// Returns hours and price with their quantiles and how far each may be off; the chance of
/// staying under the ceiling; the amounts that cover wanted chances; causes; what it is worth to
/// act first; the share of snags. The same inputs give the same bits on any number of threads.
///
/// # Errors
///
/// A number outside its range, no lines, more than 2,000 stages, or more draws of stages than
/// can be waited for.
///
/// # Limits
///
/// Stages come one after the other; two people at once are not reckoned with. The cap makes the
/// mean finite: it is the mean of the capped spread. A class of snag that was never seen has the
/// entered chance. An effect that nobody recorded widens every stage.
///
/// # Source
///
/// The normal-inverse-gamma model of [`crate::History::fit`] and the beta-binomial model of
/// [`SnagHistory::chance`], drawn; closed forms and another implementation check it.
///
/// ```
/// use odds::{Ask, Grid, History, Line, Order, Prior, Rule, SnagHistory, quote};
///
/// let learned = History::new(Prior::default(), Grid::default())?.fit()?;
/// let line = Line { what: "pump".into(), kind: "part".into(), book_minutes: 60.0, times: 2,
///     ..Line::default() };
/// let order = Order { lines: vec![line], rule: Rule { rate: 120.0, ..Rule::default() },
///     ..Order::default() };
/// let ask = Ask { draws: 20_000, ceiling: Some(300.0), ..Ask::default() };
/// let found = quote(&learned, &SnagHistory::default(), &order, &ask)?;
/// assert!((found.hours.at(0.5) - 2.0).abs() < 0.2);
/// assert!(found.ceilings[2].amount > found.ceilings[0].amount);
/// # Ok::<(), odds::OddsError>(())
/// ```
pub fn quote(
    learned: &Learned,
    snags: &SnagHistory,
    order: &Order,
    ask: &Ask,
) -> Result<Quote, OddsError> {
    check(order, ask)?;
    let ready = Ready::of(learned, snags, order)?;
    let how = How {
        seed: ask.seed,
        draws: ask.draws,
        threads: ask.threads,
        still: Still::default(),
        detail: false,
    };
    let drawn = draw(&ready, &how);
    let (mut hours, mut price) = totals(&ready, &drawn);
    let under = ask.ceiling.map(|ceiling| under(&price, ceiling));
    let (hours_spread, price_spread) = if ask.threads > 1 {
        std::thread::scope(|scope| {
            let other = scope.spawn(|| Spread::of(&mut hours));
            let price = Spread::of(&mut price);
            match other.join() {
                Ok(hours) => (hours, price),
                Err(fault) => std::panic::resume_unwind(fault),
            }
        })
    } else {
        (Spread::of(&mut hours), Spread::of(&mut price))
    };
    let n = count(ask.draws);
    let ceilings = ask
        .chances
        .iter()
        .map(|chance| {
            let reach = 1.96 * sqrt(chance * (1.0 - chance) / n);
            let amount = |p| spread::at(&price, p);
            Covers {
                chance: *chance,
                amount: amount(*chance),
                hours: spread::at(&hours, *chance),
                error: 0.5 * (amount(chance + reach) - amount(chance - reach)),
            }
        })
        .collect();
    let sums = drawn.sums();
    let (causes, worth) = if ask.causes {
        (causes(&ready, order, &how), worth(&ready, order, &how))
    } else {
        (Vec::new(), Vec::new())
    };
    let mut quote = Quote {
        book_hours: ready.book / 60.0,
        hours: hours_spread,
        price: price_spread,
        chance_under_ceiling: under,
        ceilings,
        causes,
        snags: SnagShare {
            chance: sums.with_snag / n,
            count: sums.snags / n,
            minutes: sums.snag_minutes / n,
            price: sums.snag_price / n,
        },
        worth,
        capped: sums.capped / n,
        seed: ask.seed,
        draws: ask.draws,
        notes: worked::notes(learned, order),
        working: Working::new(""),
    };
    quote.working = worked::working(learned, snags, order, ask, &quote);
    Ok(quote)
}

fn check(order: &Order, ask: &Ask) -> Result<(), OddsError> {
    order.check()?;
    within(
        say::the_number_of_draws(),
        count(ask.draws),
        "",
        (1e3, 1e6),
        say::ask_for_usual_draws(),
    )?;
    if ask.draws as u64 * order.stages() > MOST_WORK {
        let most = MOST_WORK / order.stages().max(1);
        return Err(OddsError::TooMuchWork {
            draws: ask.draws,
            stages: order.stages(),
            most: usize::try_from(most).unwrap_or(usize::MAX),
        });
    }
    if let Some(ceiling) = ask.ceiling {
        let mend = say::write_agreed_amount();
        within(say::the_ceiling(), ceiling, "", (0.0, 1e9), mend)?;
    }
    for chance in &ask.chances {
        let mend = say::write_nine_in_ten();
        within(say::the_wanted_chance(), *chance, "", (0.01, 0.99), mend)?;
    }
    Ok(())
}

fn under(price: &[f64], ceiling: f64) -> Chance {
    let n = count(price.len());
    let chance = count(price.iter().filter(|price| **price <= ceiling).count()) / n;
    Chance {
        chance,
        error: 1.96 * sqrt(chance * (1.0 - chance) / n),
    }
}

/// Hours and price of each draw.
fn totals(ready: &Ready, drawn: &Drawings) -> (Vec<f64>, Vec<f64>) {
    let rows = drawn.work.iter().zip(&drawn.added).zip(&drawn.extra);
    rows.map(|((work, added), extra)| total(&ready.rule, ready.book, *work, *added, *extra))
        .unzip()
}

fn total(rule: &Rule, book: f64, work: f64, added: f64, extra: f64) -> (f64, f64) {
    let charged = match rule.labour {
        Labour::Clock => work,
        Labour::Book => book,
        Labour::Lesser => work.min(book),
    };
    let money = rule.rate * (charged + added) / 60.0 + extra;
    (
        (work + added) / 60.0,
        money * (1.0 + rule.tax_percent / 100.0),
    )
}

/// The spread without each cause, widest first.
fn causes(ready: &Ready, order: &Order, how: &How) -> Vec<Cause> {
    let kept = DETAIL / (3 * order.lines.len()).max(1);
    let how = How {
        draws: how.draws.min(SIDE_DRAWS).min(kept.max(1_000)),
        detail: true,
        ..*how
    };
    let drawn = draw(ready, &how);
    let all = widths(ready, &drawn.work, &drawn.added, &drawn.extra);
    let mut found = Vec::new();
    let mut add = |what: String, sort, (hours, price): (f64, f64)| {
        let (now, without) = if ready.rule.rate > 0.0 {
            (all.1, price)
        } else {
            (all.0, hours)
        };
        let share = if now > 0.0 { 1.0 - without / now } else { 0.0 };
        found.push(Cause {
            what,
            sort,
            hours_without: hours,
            price_without: price,
            share: share.max(0.0),
        });
    };
    for (line, detail) in order.lines.iter().zip(&drawn.detail) {
        let without = less(&drawn.work, &detail.own);
        let name = line.what.clone();
        let width = widths(ready, &without, &drawn.added, &drawn.extra);
        add(name.clone(), CauseSort::Work, width);
        if line.pieces.is_some() {
            let added = less(&drawn.added, &detail.snag_minutes);
            let extra = less(&drawn.extra, &detail.snag_price);
            add(
                name,
                CauseSort::Snag,
                widths(ready, &drawn.work, &added, &extra),
            );
        }
    }
    for (sort, what, still) in [
        (
            CauseSort::Vehicle,
            say::how_it_comes_apart(),
            Still {
                vehicle: true,
                shop: false,
            },
        ),
        (
            CauseSort::Shop,
            say::how_well_times_are_known(),
            Still {
                vehicle: false,
                shop: true,
            },
        ),
    ] {
        let how = How {
            still,
            detail: false,
            ..how
        };
        let drawn = draw(ready, &how);
        let width = widths(ready, &drawn.work, &drawn.added, &drawn.extra);
        add(what.to_owned(), sort, width);
    }
    if order
        .amounts
        .iter()
        .any(|amount| amount.price.shape().is_some())
    {
        let mut sure = ready.clone();
        sure.amounts = order
            .amounts
            .iter()
            .map(|amount| spread::Drawn::Sure(amount.price.mean()))
            .collect();
        let how = How {
            detail: false,
            ..how
        };
        let drawn = draw(&sure, &how);
        let width = widths(ready, &drawn.work, &drawn.added, &drawn.extra);
        add(say::what_parts_cost().to_owned(), CauseSort::Parts, width);
    }
    found.sort_by(|one, other| {
        let share = other.share.total_cmp(&one.share);
        share.then_with(|| (&one.what, one.sort).cmp(&(&other.what, other.sort)))
    });
    found
}

/// What is left when a part is put at its mean.
fn less(all: &[f64], part: &[f64]) -> Vec<f64> {
    let mean = part.iter().sum::<f64>() / count(part.len()).max(1.0);
    all.iter()
        .zip(part)
        .map(|(all, part)| all - part + mean)
        .collect()
}

/// Hours and price from 1 in 10 to 9 in 10.
fn widths(ready: &Ready, work: &[f64], added: &[f64], extra: &[f64]) -> (f64, f64) {
    let rows = work.iter().zip(added).zip(extra);
    let (mut hours, mut price): (Vec<f64>, Vec<f64>) = rows
        .map(|((work, added), extra)| total(&ready.rule, ready.book, *work, *added, *extra))
        .unzip();
    (
        picked(&mut hours, 0.9) - picked(&mut hours, 0.1),
        picked(&mut price, 0.9) - picked(&mut price, 0.1),
    )
}

/// One quantile, without sorting all.
fn picked(values: &mut [f64], p: f64) -> f64 {
    if values.is_empty() {
        return f64::NAN;
    }
    #[allow(
        clippy::cast_possible_truncation,
        clippy::cast_sign_loss,
        reason = "a rank from 1; what is too large ends at the last"
    )]
    let rank = (p * count(values.len())).ceil().max(1.0) as usize;
    let rank = rank.min(values.len()) - 1;
    *values.select_nth_unstable_by(rank, f64::total_cmp).1
}

/// What doing something first changes, the same chances drawn.
fn worth(ready: &Ready, order: &Order, how: &How) -> Vec<Worth> {
    if order.actions.is_empty() {
        return Vec::new();
    }
    let how = How {
        draws: how.draws.min(SIDE_DRAWS),
        ..*how
    };
    let (hours, price) = totals(ready, &draw(ready, &how));
    order
        .actions
        .iter()
        .map(|action| {
            let after = ready.after(order, action);
            let (mut after_hours, mut after_price) = totals(&after, &draw(&after, &how));
            Worth {
                what: action.what.clone(),
                hours: difference(&hours, &after_hours),
                price: difference(&price, &after_price),
                hours_nine_in_ten: picked(&mut after_hours, 0.9) - picked(&mut hours.clone(), 0.9),
                price_nine_in_ten: picked(&mut after_price, 0.9) - picked(&mut price.clone(), 0.9),
            }
        })
        .collect()
}

/// The mean of the differences, and how far it may be off.
fn difference(before: &[f64], after: &[f64]) -> (f64, f64) {
    let n = count(before.len()).max(2.0);
    let differences = || {
        before
            .iter()
            .zip(after)
            .map(|(before, after)| after - before)
    };
    let mean = differences().sum::<f64>() / n;
    let square: f64 = differences().map(|d| (d - mean) * (d - mean)).sum();
    (mean, 1.96 * sqrt(square / (n - 1.0) / n))
}
