//! How often vehicles came on the day that was agreed with their customers.

use super::figures::{FEW_PIECES, share};
use super::{Figure, MOST_ORDERS, Part};
use crate::phrases::history as words;
use crate::snapshot::Snapshot;
use crate::trouble::Trouble;
use jiff::civil::Date;
use repair::{OrderId, Turnout, turnouts};
use std::collections::{BTreeMap, BTreeSet};
use std::sync::{Mutex, PoisonError};

/// How the bookings of the newest orders turned out.
#[derive(Debug, Clone, PartialEq, Eq, Default)]
pub struct Bookings {
    pub on_the_day: Turned,
    pub another_day: Turned,
    pub not_at_all: Turned,
}

/// Bookings that turned out alike.
#[derive(Debug, Clone, PartialEq, Eq, Default)]
pub struct Turned {
    pub times: u32,
    pub orders: BTreeSet<u64>,
}

impl Bookings {
    fn note(&mut self, number: u64, turned: Turnout) {
        let of = match turned {
            Turnout::OnTheDay => &mut self.on_the_day,
            Turnout::AnotherDay => &mut self.another_day,
            Turnout::NotAtAll => &mut self.not_at_all,
        };
        of.times = of.times.saturating_add(1);
        of.orders.insert(number);
    }

    /// How many bookings there are of which it is known.
    #[must_use]
    pub fn all(&self) -> u32 {
        let known = [&self.on_the_day, &self.another_day, &self.not_at_all];
        known.iter().map(|one| one.times).sum()
    }

    /// Of a hundred bookings in the long run, how many do not come on their day: the least and the
    /// most, 8 times in 10; nothing where there are fewer than 20.
    ///
    /// With n bookings of which k did not, the ends of the score interval (`figures.rs`) of k in n.
    ///
    /// # Limits
    /// As if each booking came or not by itself, and as often as those before: not so in a week of
    /// snow, nor for one customer who never comes.
    #[must_use]
    pub fn stays_away(&self) -> Option<(f64, f64)> {
        let away = self.all() - self.on_the_day.times;
        share(away, self.all()).map(|(low, _, high)| (low, high))
    }

    /// In one sentence; nothing where none is known.
    #[must_use]
    pub fn said(&self) -> Option<String> {
        let [on_the_day, another, not] =
            [&self.on_the_day, &self.another_day, &self.not_at_all].map(|one| one.times);
        let all = usize::try_from(self.all()).unwrap_or(usize::MAX);
        let came = words::bookings_came(words::bookings(all), on_the_day, another, not);
        Some(match self.stays_away() {
            _ if all == 0 => return None,
            Some((low, high)) => {
                words::stay_away_in_hundred(came, format!("{low:.0}"), format!("{high:.0}"))
            }
            None => words::bookings_too_few(came, FEW_PIECES),
        })
    }
}

/// How the bookings of orders turned out that are over, each with the position of its last row where
/// that is known.
#[derive(Default)]
struct Kept {
    /// The day they were looked at: with it a day is over.
    day: Option<Date>,
    orders: BTreeMap<OrderId, (Option<u64>, Vec<Turnout>)>,
}

/// How the bookings of the newest orders turned out. An order that is over is read once.
///
/// # Errors
/// [`Trouble`], if the record cannot be read.
pub fn bookings(snap: &Snapshot<'_>) -> Result<Bookings, Trouble> {
    let world = snap.world();
    let rules = snap.rules();
    let shelf = snap.shelf::<Mutex<Kept>>();
    let mut kept = shelf.lock().unwrap_or_else(PoisonError::into_inner);
    if kept.day != Some(rules.today()) {
        kept.day = Some(rules.today());
        kept.orders.clear();
    }
    let open: BTreeSet<OrderId> = world.orders_here()?.into_iter().map(|one| one.1).collect();
    let finished = world.finished(MOST_ORDERS)?.into_iter();
    let finished: BTreeMap<OrderId, u64> = finished.map(|one| (one.order, one.position)).collect();
    let mut out = Bookings::default();
    for (number, id) in world.orders_before(None, MOST_ORDERS)? {
        let position = finished.get(&id).copied();
        let known = kept.orders.get(&id).filter(|known| known.0 == position);
        let turned = match known.filter(|_| !open.contains(&id)) {
            Some((_, turned)) => turned.clone(),
            None => {
                let turned = turnouts(&*world.order(&id)?, &rules);
                if !open.contains(&id) {
                    if kept.orders.len() >= 3 * MOST_ORDERS {
                        kept.orders.clear();
                    }
                    kept.orders.insert(id, (position, turned.clone()));
                }
                turned
            }
        };
        turned.into_iter().for_each(|one| out.note(number, one));
    }
    Ok(out)
}

pub(super) fn part(found: &Bookings) -> Part {
    let all = found.all();
    let figure = |name: &str, of: &Turned| {
        let some = words::some_of(of.times, all);
        let spread = share(of.times, all);
        let words = match spread {
            Some((low, _, high)) => {
                words::in_the_long_run(&some, format!("{low:.0}"), format!("{high:.0}"))
            }
            None => words::bookings_too_few(&some, FEW_PIECES),
        };
        Figure {
            name: name.to_owned(),
            words,
            short: spread.map_or_else(String::new, |_| some),
            spread,
            orders: of.orders.iter().rev().copied().collect(),
        }
    };
    let figures = match all {
        0 => Vec::new(),
        _ => vec![
            figure(words::came_on_the_day(), &found.on_the_day),
            figure(words::came_another_day(), &found.another_day),
            figure(words::came_not_at_all(), &found.not_at_all),
        ],
    };
    Part {
        id: "bookings",
        title: words::bookings_kept(),
        about: words::about_bookings(),
        scale: words::scale_bookings(),
        mark: None,
        figures,
    }
}
