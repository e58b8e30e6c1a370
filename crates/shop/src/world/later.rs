//! What has to be thought of after a vehicle left: work that is due by a day, and whether a
//! fault that did not show itself came back. Both stand on cards by their day.

use super::index::drawer;
use super::{World, padded};
use crate::trouble::Trouble;
use jiff::civil::Date;
use jiff::tz::TimeZone;
use jiff::{Timestamp, ToSpan};
use repair::{
    Decision, Ending, Fact, Order, OrderId, Outcome, RungAbout, Until, VehicleFact, VehicleId,
    papers,
};
use store::Wanted;

/// After so many days somebody asks whether a fault came back, and what is due after a short
/// way on the road is likely due.
const DAYS: i64 = 7;
/// A short way on the road: wheel nuts are looked at again after it.
const SHORT_KM: f64 = 300.0;

/// The day in any zone that the log itself says: what stands on cards follows from it alone.
fn day(at: Timestamp) -> Date {
    at.to_zoned_datetime(TimeZone::UTC).date()
}

fn some_days_after(at: Timestamp) -> Date {
    day(at).saturating_add(DAYS.days())
}

/// The day by which work that a vehicle left with is due; nothing where only the road says.
pub(crate) fn owing_due(fact: &VehicleFact, left: Timestamp) -> Option<Date> {
    let VehicleFact::LeftOwing {
        until: Until::Later { date, distance },
        ..
    } = fact
    else {
        return None;
    };
    let short = || {
        let distance = distance.as_ref()?.as_str();
        let digits: String = distance.chars().take_while(char::is_ascii_digit).collect();
        let number: f64 = digits.parse().ok()?;
        (number <= SHORT_KM).then(|| some_days_after(left))
    };
    date.or_else(short)
}

/// The day on which somebody asks whether what did not show itself came back.
fn follow_up(order: &Order) -> Option<Date> {
    papers::handed_over(order)?;
    let left = order
        .decisions()
        .iter()
        .rev()
        .find_map(|decided| match &decided.decision {
            Decision::HandedOver { ending, .. } => Some((decided.stamp.at, *ending)),
            _ => None,
        });
    let (at, ending) = left?;
    let mut facts = order.beside_moves().map(|(_, filed)| &filed.fact);
    let not_provoked = facts.any(|fact| {
        matches!(
            fact,
            Fact::Proved {
                outcome: Outcome::NotProvoked,
                ..
            }
        )
    });
    let mut facts = order.beside_moves().map(|(_, filed)| filed);
    let asked = facts.any(|filed| {
        matches!(
            filed.fact,
            Fact::Rung {
                about: RungAbout::FollowUp,
                reached: true,
                ..
            }
        ) && filed.stamp.at > at
    });
    let open = (ending == Ending::NotReproduced || not_provoked) && !asked;
    open.then(|| some_days_after(at))
}

impl World {
    /// Vehicles with work that is due by this day.
    pub fn owing_by(&self, day: Date) -> Result<Vec<VehicleId>, Trouble> {
        let below = format!("{day}!");
        let cards = self.index.cards(&Wanted {
            below: Some(&below),
            ..Wanted::from(drawer::OWING, "")
        })?;
        let vehicle = |card: store::Card| card.key.split(' ').nth(1).map(VehicleId::new);
        Ok(cards.into_iter().filter_map(vehicle).collect())
    }

    /// Orders of which somebody asks by this day whether the fault came back.
    pub fn follow_ups_by(&self, day: Date) -> Result<Vec<(u64, OrderId)>, Trouble> {
        let below = format!("{day}!");
        self.numbered(&Wanted {
            below: Some(&below),
            ..Wanted::from(drawer::FOLLOW_UP, "")
        })
    }

    /// Where the work that a vehicle left with stands.
    pub(super) fn put_owing(&mut self, id: &VehicleId) -> Result<(), Trouble> {
        let goes_by = self.same_vehicles(id).first() == Some(id);
        let vehicle = self.vehicle(id)?;
        let owing = vehicle
            .facts()
            .filter(|(_, _, fact)| goes_by && vehicle.owing().any(|owing| owing == *fact));
        let first = owing
            .filter_map(|(_, stamp, fact)| owing_due(fact, stamp.at))
            .min();
        let key = first.map(|day| format!("{day} {id}"));
        self.put_day((drawer::OWING, drawer::OWING_DAY), id.as_str(), key, "");
        Ok(())
    }

    /// Where the question whether its fault came back stands.
    pub(super) fn put_follow_up(&mut self, id: &OrderId) -> Result<(), Trouble> {
        let Some(number) = self.order_card(id)?.number.map(padded) else {
            return Ok(());
        };
        let day = follow_up(&*self.order(id)?);
        let key = day.map(|day| format!("{day} {number}"));
        self.put_day(
            (drawer::FOLLOW_UP, drawer::FOLLOW_UP_DAY),
            &number,
            key,
            id.as_str(),
        );
        Ok(())
    }

    /// Puts a card under its day, in the place of the one that stood there.
    fn put_day(&mut self, (days, of): (&str, &str), name: &str, key: Option<String>, value: &str) {
        let before = self.index.card(of, name).ok().flatten();
        if before.as_ref().map(|card| &card.value) == key.as_ref() {
            return;
        }
        if let Some(before) = before {
            self.index.remove(days, &before.value);
            self.index.remove(of, name);
        }
        if let Some(key) = key {
            self.index.put(days, &key, value);
            self.index.put(of, name, key);
        }
    }
}
