//! The parts of a history, each from what the orders say.

use super::figures::{FEW, FEW_PIECES, share, spread};
use super::order::{Joint, OrderPast};
use super::{Figure, Part};
use crate::phrases::history as words;
use crate::say::{dates, figures};
use crate::snapshot::Snapshot;
use repair::PersonId;
use rust_decimal::Decimal;
use std::collections::{BTreeMap, BTreeSet};
use std::sync::Arc;

type Orders = [Arc<OrderPast>];

/// How long timed stages took by the book, and on which orders.
#[derive(Default)]
struct Times {
    ratios: Vec<f64>,
    orders: BTreeSet<u64>,
}

impl Times {
    fn figure(&self, name: String) -> Figure {
        let many = self.ratios.len();
        let spread = spread(&self.ratios);
        let stages = words::timed_stages(many);
        let (words, short) = match spread {
            Some((low, middle, high)) => {
                let [low, middle, high] = [low, middle, high].map(tenths);
                (
                    words::times_the_book(&middle, low, high, stages),
                    words::times_book_short(middle),
                )
            }
            None => (words::too_few(stages), String::new()),
        };
        Figure {
            name,
            words,
            short,
            spread,
            orders: newest_first(&self.orders),
        }
    }
}

/// Times by whatever a stage is counted under.
fn times(
    orders: &Orders,
    under: impl Fn(&OrderPast, &odds::Done) -> Option<String>,
) -> BTreeMap<String, Times> {
    let mut times: BTreeMap<String, Times> = BTreeMap::new();
    for order in orders {
        // What was left before its end took longer than its clock says.
        for stage in order.stages.iter().filter(|stage| !stage.left) {
            let Some(name) = under(order, stage) else {
                continue;
            };
            let of = times.entry(name).or_default();
            of.ratios.push(stage.minutes / stage.book_minutes);
            of.orders.insert(order.number);
        }
    }
    times
}

fn time_part(id: &'static str, title: &'static str, figures: Vec<Figure>) -> Part {
    Part {
        id,
        title,
        about: "",
        scale: words::scale_book(),
        mark: Some((1.0, words::the_book())),
        figures,
    }
}

pub(super) fn by_stage(orders: &Orders) -> Part {
    let times = times(orders, |_, stage| Some(stage.kind.clone()));
    let name = |code: &String| crate::say::capital(&stage_words(code));
    let figures = times.iter().map(|(code, of)| of.figure(name(code)));
    Part {
        about: words::about_times(),
        ..time_part("stages", words::by_stage(), figures.collect())
    }
}

/// By person; for who answers for the shop alone.
pub(super) fn by_person(snap: &Snapshot<'_>, orders: &Orders) -> Part {
    let times = times(orders, |_, stage| stage.person.clone());
    let people = snap.world().shop.everyone();
    let name = |person: &String| {
        let known = people.get(&PersonId::new(person));
        known.map_or_else(|| person.clone(), |(name, _)| snap.texts().text(*name))
    };
    let figures = times.iter().map(|(person, of)| of.figure(name(person)));
    time_part("people", words::by_person(), figures.collect())
}

/// By what the kind of each order's vehicle is called, the kinds with the most orders first.
pub(super) fn by_kind(orders: &Orders, kinds: &[String]) -> Part {
    let of: BTreeMap<u64, &String> = orders.iter().map(|order| order.number).zip(kinds).collect();
    let named = |order: &OrderPast| of.get(&order.number).map(|kind| (*kind).clone());
    let times = times(orders, |order, _| {
        named(order).filter(|kind| !kind.is_empty())
    });
    let mut figures: Vec<Figure> = times
        .into_iter()
        .map(|(kind, of)| of.figure(kind))
        .collect();
    figures.sort_by_key(|figure| std::cmp::Reverse(figure.orders.len()));
    time_part("kinds", words::by_kind(), figures)
}

pub(super) fn by_month(orders: &Orders) -> Part {
    let times = times(orders, |order, _| Some(order.month.clone()));
    let figures = times
        .iter()
        .rev()
        .map(|(month, of)| of.figure(month_words(month)));
    time_part("months", words::by_month(), figures.collect())
}

/// Of one joint: pieces that came out, those with a snag, the orders of both.
type OfJoint = (u32, u32, BTreeSet<u64>, BTreeSet<u64>);

pub(super) fn snags(orders: &Orders) -> Part {
    let mut pieces: BTreeMap<&Joint, OfJoint> = BTreeMap::new();
    for order in orders {
        for (joint, out, found) in &order.pieces {
            let of = pieces.entry(joint).or_default();
            of.0 = of.0.saturating_add(*out);
            of.1 = of.1.saturating_add(*found);
            let behind = if *found > 0 { &mut of.2 } else { &mut of.3 };
            behind.insert(order.number);
        }
    }
    let figures = pieces
        .into_iter()
        .map(|(joint, (out, found, wrong, well))| {
            // The orders behind it are those where one went wrong; where none did, all.
            let orders = if wrong.is_empty() { well } else { wrong };
            let spread = share(found, out);
            let (words, short) = match spread {
                Some((low, _, high)) => (
                    words::snags_in_hundred(found, out, format!("{low:.0}"), format!("{high:.0}")),
                    words::some_of(found, out),
                ),
                None => (words::snags_too_few(found, out, FEW_PIECES), String::new()),
            };
            Figure {
                name: joint_words(joint),
                words,
                short,
                spread,
                orders: newest_first(&orders),
            }
        });
    Part {
        id: "snags",
        title: words::snags_by_size(),
        about: words::about_snags(),
        scale: words::scale_hundred(),
        mark: None,
        figures: figures.collect(),
    }
}

fn joint_words(joint: &Joint) -> String {
    match &joint.metal {
        Some(metal) => words::size_in_metal(&joint.size, metal),
        None => words::metal_not_told(&joint.size),
    }
}

pub(super) fn differed(orders: &Orders) -> Part {
    let mut all: BTreeMap<&str, (BTreeSet<String>, BTreeSet<u64>, usize)> = BTreeMap::new();
    for order in orders {
        for (name, how) in &order.differed {
            let of = all.entry(name).or_default();
            of.0.extend(Some(how.said()).filter(|how| !how.is_empty()));
            of.1.insert(order.number);
            of.2 += 1;
        }
    }
    let figures = all.into_iter().map(|(name, (how, orders, times))| {
        let how: Vec<String> = how.into_iter().collect();
        let times = words::times(times);
        Figure {
            name: crate::say::capital(name),
            words: match how.is_empty() {
                true => times,
                false => words::times_and_how(times, how.join("; ")),
            },
            orders: newest_first(&orders),
            ..Figure::default()
        }
    });
    Part {
        id: "parts",
        title: words::parts_that_differed(),
        about: words::about_parts(),
        figures: figures.collect(),
        ..Part::default()
    }
}

/// Work that came back, by cause: how often, and what it cost. What it cost in money is for whoever
/// sees prices.
pub(super) fn comebacks(orders: &Orders, sees_prices: bool) -> Part {
    #[derive(Default)]
    struct Of {
        came: BTreeSet<u64>,
        after: BTreeSet<u64>,
        minutes: f64,
        net: Decimal,
        digits: u32,
        not_priced: usize,
    }
    let mut all: BTreeMap<String, Of> = BTreeMap::new();
    for order in orders {
        let Some(one) = &order.comeback else { continue };
        let of = all.entry(one.cause.said()).or_default();
        of.came.insert(order.number);
        of.after.extend(one.after);
        of.minutes += one.minutes;
        match one.net {
            Some((net, digits)) => {
                of.net += net;
                of.digits = digits;
            }
            None => of.not_priced += 1,
        }
    }
    let many = orders.len();
    let figures = all.into_iter().map(|(cause, of)| {
        let times = words::orders_of(of.came.len(), many);
        let mut told = vec![match many < FEW {
            true => words::too_few_how_often(times),
            false => times,
        }];
        if of.minutes > 0.0 {
            told.push(words::clocked(tenths(of.minutes / 60.0)));
        }
        if sees_prices && of.not_priced < of.came.len() {
            told.push(words::cost_us(crate::say::money(of.net, of.digits)));
        }
        if sees_prices && of.not_priced > 0 {
            told.push(words::not_priced(of.not_priced));
        }
        let both: BTreeSet<u64> = of.came.union(&of.after).copied().collect();
        Figure {
            name: crate::say::capital(&cause),
            words: told.join("; "),
            orders: newest_first(&both),
            ..Figure::default()
        }
    });
    Part {
        id: "comebacks",
        title: words::comebacks_by_cause(),
        about: words::about_comebacks(),
        figures: figures.collect(),
        ..Part::default()
    }
}

/// By which torques fasteners were tightened: who says so, and where nobody did.
pub(super) fn torque_sources(orders: &Orders) -> Part {
    let mut all: BTreeMap<&Option<String>, (u32, BTreeSet<u64>)> = BTreeMap::new();
    for order in orders {
        for (source, groups) in &order.torques {
            let of = all.entry(source).or_default();
            of.0 = of.0.saturating_add(*groups);
            of.1.insert(order.number);
        }
    }
    let figures = all.into_iter().map(|(source, (groups, orders))| Figure {
        name: source
            .clone()
            .unwrap_or_else(|| words::no_torque_told().to_owned()),
        words: words::groups_on(words::groups(groups), words::on_orders(orders.len())),
        orders: newest_first(&orders),
        ..Figure::default()
    });
    Part {
        id: "torques",
        title: words::torque_sources(),
        about: words::about_torques(),
        figures: figures.collect(),
        ..Part::default()
    }
}

pub(super) fn quotes(orders: &Orders) -> Part {
    let mut months: BTreeMap<&str, (Vec<f64>, usize, BTreeSet<u64>)> = BTreeMap::new();
    for order in orders {
        let Some(given) = &order.quote else { continue };
        let at = |part: f64| {
            let near = given
                .quantiles
                .iter()
                .min_by(|(a, _), (b, _)| (a - part).abs().total_cmp(&(b - part).abs()));
            near.map(|(_, amount)| *amount)
        };
        let (Some(middle), Some(covers)) = (at(0.5), at(0.9)) else {
            continue;
        };
        if middle > 0.0 {
            let of = months.entry(&order.month).or_default();
            of.0.push(given.happened / middle);
            of.1 += usize::from(given.happened <= covers);
            of.2.insert(order.number);
        }
    }
    let figures = months
        .into_iter()
        .rev()
        .map(|(month, (ratios, under, orders))| {
            let many = ratios.len();
            let spread = spread(&ratios);
            let kept = words::stayed_under(under, many);
            let (words, short) = match spread {
                Some((low, middle, high)) => {
                    let [low, middle, high] = [low, middle, high].map(hundredths);
                    (
                        words::times_the_middle(&middle, low, high, kept),
                        words::times_quoted_short(middle),
                    )
                }
                None => (words::too_few(kept), String::new()),
            };
            Figure {
                name: month_words(month),
                words,
                short,
                spread,
                orders: newest_first(&orders),
            }
        });
    Part {
        id: "quotes",
        title: words::quotes_against(),
        about: words::about_quotes(),
        scale: words::scale_quoted(),
        mark: Some((1.0, words::as_quoted())),
        figures: figures.collect(),
    }
}

pub(super) fn declined(orders: &Orders) -> Part {
    let mut all: BTreeMap<&str, (usize, usize, BTreeSet<u64>)> = BTreeMap::new();
    for order in orders {
        for (name, later) in &order.declined {
            let of = all.entry(name).or_default();
            of.0 += 1;
            of.1 += usize::from(later.is_some());
            of.2.insert(order.number);
            of.2.extend(later);
        }
    }
    let figures = all.into_iter().map(|(name, (times, came, orders))| {
        let declined = words::times(times);
        Figure {
            name: crate::say::capital(name),
            words: match came {
                0 => words::declined_not_back(declined),
                _ => words::declined_came_back(declined, words::times(came)),
            },
            orders: newest_first(&orders),
            ..Figure::default()
        }
    });
    Part {
        id: "declined",
        title: words::declined_came(),
        about: words::about_declined(),
        figures: figures.collect(),
        ..Part::default()
    }
}

/// A month as one says it: `Nov 2026`.
fn month_words(month: &str) -> String {
    let first: Result<jiff::civil::Date, _> = format!("{month}-01").parse();
    first.map_or_else(
        |_| month.to_owned(),
        |day| words::month(dates::short_month(day), day.strftime("%Y")),
    )
}

fn newest_first(orders: &BTreeSet<u64>) -> Vec<u64> {
    orders.iter().rev().copied().collect()
}

/// What was moved in a stage, by its code: `fasteners out`.
fn stage_words(code: &str) -> String {
    let named = |kind: &str| {
        // A code that has no gap in it stands for what is put in.
        let kind = map::kind_of(if kind == "putin" { "put-in" } else { kind });
        kind.map(|kind| match (kind, crate::say::spoken()) {
            (repair::Kind::PutIn, repair::Language::English) => "putin",
            (kind, _) => crate::teaching::kind_name(kind),
        })
    };
    let said = match code.rsplit_once(' ') {
        Some((kind, "out")) => named(kind).map(words::stage_out),
        Some((kind, "back")) => named(kind).map(words::stage_back),
        _ => None,
    };
    said.unwrap_or_else(|| code.to_owned())
}

fn tenths(number: f64) -> String {
    figures(&format!("{number:.1}"))
}

fn hundredths(number: f64) -> String {
    figures(&format!("{number:.2}"))
}
