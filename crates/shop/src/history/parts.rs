//! The parts of a history, each from what the orders say.

use super::figures::{FEW, FEW_PIECES, share, spread};
use super::order::{Joint, OrderPast};
use super::{Figure, Part};
use crate::snapshot::Snapshot;
use repair::PersonId;
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
        let stages = counted(many, "timed stage", "timed stages");
        let (words, short) = match spread {
            Some((low, middle, high)) => (
                format!("{middle:.1} × the book; 8 of 10 from {low:.1} to {high:.1}; {stages}"),
                format!("{middle:.1} × book"),
            ),
            None => (format!("{stages}: too few to tell"), String::new()),
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
        about: "How long stages took for each minute of the book, pauses left out. The dot is the middle, the line where 8 of 10 lie.",
        scale: "times the book",
        mark: Some((1.0, "the book")),
        figures,
    }
}

pub(super) fn by_stage(orders: &Orders) -> Part {
    let times = times(orders, |_, stage| Some(crate::say::capital(&stage.kind)));
    let figures = times.iter().map(|(name, of)| of.figure(name.clone()));
    time_part(
        "stages",
        "Time against the book, by stage",
        figures.collect(),
    )
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
    time_part(
        "people",
        "Time against the book, by person",
        figures.collect(),
    )
}

pub(super) fn by_month(orders: &Orders) -> Part {
    let times = times(orders, |order, _| Some(order.month.clone()));
    let figures = times
        .iter()
        .rev()
        .map(|(month, of)| of.figure(month_words(month)));
    time_part(
        "months",
        "Time against the book, by month",
        figures.collect(),
    )
}

pub(super) fn snags(orders: &Orders) -> Part {
    let mut pieces: BTreeMap<&Joint, (u32, u32, BTreeSet<u64>)> = BTreeMap::new();
    for order in orders {
        for (joint, out, found) in &order.pieces {
            let of = pieces.entry(joint).or_default();
            of.0 = of.0.saturating_add(*out);
            of.1 = of.1.saturating_add(*found);
            // The orders behind it are those where one went wrong; where none did, all.
            of.2.insert(order.number);
        }
    }
    let figures = pieces.into_iter().map(|(joint, (out, found, orders))| {
        let spread = share(found, out);
        let (words, short) = match spread {
            Some((low, _, high)) => (
                format!("{found} of {out} snapped, stuck or stripped; in the long run {low:.0} to {high:.0} in 100"),
                format!("{found} of {out}"),
            ),
            None => (
                format!("{found} of {out}: too few to tell, from {FEW_PIECES} on it can be said"),
                String::new(),
            ),
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
        title: "Snags by size and metal",
        about: "Of the fasteners that came out, how many brought a snag. The line is where the share lies 8 times in 10.",
        scale: "in 100 that come out",
        mark: None,
        figures: figures.collect(),
    }
}

fn joint_words(joint: &Joint) -> String {
    match &joint.metal {
        Some(metal) => format!("{} in {metal}", joint.size),
        None => format!("{}, metal not told", joint.size),
    }
}

pub(super) fn differed(orders: &Orders) -> Part {
    let mut all: BTreeMap<&str, (BTreeSet<&str>, BTreeSet<u64>, usize)> = BTreeMap::new();
    for order in orders {
        for (name, how) in &order.differed {
            let of = all.entry(name).or_default();
            of.0.extend(Some(how.as_str()).filter(|how| !how.is_empty()));
            of.1.insert(order.number);
            of.2 += 1;
        }
    }
    let figures = all.into_iter().map(|(name, (how, orders, times))| {
        let how: Vec<&str> = how.into_iter().collect();
        let times = counted(times, "time", "times");
        Figure {
            name: crate::say::capital(name),
            words: match how.is_empty() {
                true => times,
                false => format!("{times}: {}", how.join("; ")),
            },
            orders: newest_first(&orders),
            ..Figure::default()
        }
    });
    Part {
        id: "parts",
        title: "Parts that differed",
        about: "What is no longer as the maker fitted it, and parts that were sent back.",
        figures: figures.collect(),
        ..Part::default()
    }
}

pub(super) fn comebacks(orders: &Orders) -> Part {
    let mut all: BTreeMap<&str, (BTreeSet<u64>, BTreeSet<u64>)> = BTreeMap::new();
    for order in orders {
        if let Some((cause, before)) = &order.comeback {
            let of = all.entry(cause).or_default();
            of.0.insert(order.number);
            of.1.extend(before);
        }
    }
    let many = orders.len();
    let figures = all.into_iter().map(|(cause, (came, before))| {
        let words = format!("{} of {many}", counted(came.len(), "order", "orders"));
        let words = match many < FEW {
            true => format!("{words}: too few to tell how often"),
            false => words,
        };
        let both: BTreeSet<u64> = came.union(&before).copied().collect();
        Figure {
            name: crate::say::capital(cause),
            words,
            orders: newest_first(&both),
            ..Figure::default()
        }
    });
    Part {
        id: "comebacks",
        title: "Comebacks by cause",
        about: "Orders with a line that warranty or goodwill pays, with the visit before.",
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
    let figures = months.into_iter().rev().map(|(month, (ratios, under, orders))| {
        let many = ratios.len();
        let spread = spread(&ratios);
        let kept = format!("{under} of {many} stayed under what was said to cover it 9 times in 10");
        let (words, short) = match spread {
            Some((low, middle, high)) => (
                format!("{middle:.2} × the middle that was quoted; 8 of 10 from {low:.2} to {high:.2}; {kept}"),
                format!("{middle:.2} × quoted"),
            ),
            None => (format!("{kept}: too few to tell"), String::new()),
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
        title: "Quotes against what it came to",
        about: "The first estimate that was given with its odds, by what the order came to.",
        scale: "times the middle that was quoted",
        mark: Some((1.0, "as quoted")),
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
        let declined = counted(times, "time", "times");
        Figure {
            name: crate::say::capital(name),
            words: match came {
                0 => format!("declined {declined}, not come back yet"),
                _ => format!(
                    "declined {declined}, came back {}",
                    counted(came, "time", "times")
                ),
            },
            orders: newest_first(&orders),
            ..Figure::default()
        }
    });
    Part {
        id: "declined",
        title: "Declined work that came back",
        about: "What a customer did not want done, and whether a later visit of the vehicle did it.",
        figures: figures.collect(),
        ..Part::default()
    }
}

/// A month as one says it: `Nov 2026`.
fn month_words(month: &str) -> String {
    let first: Result<jiff::civil::Date, _> = format!("{month}-01").parse();
    first.map_or_else(
        |_| month.to_owned(),
        |day| day.strftime("%b %Y").to_string(),
    )
}

fn newest_first(orders: &BTreeSet<u64>) -> Vec<u64> {
    orders.iter().rev().copied().collect()
}

fn counted(many: usize, one: &str, several: &str) -> String {
    match many {
        1 => format!("1 {one}"),
        _ => format!("{many} {several}"),
    }
}
