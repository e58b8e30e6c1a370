//! When a vehicle comes that is not here yet, as it was agreed with its customer.

use crate::code::{KeyStep, OdometerAt, Place};
use crate::decision::Decision;
use crate::fact::Fact;
use crate::ids::CommandId;
use crate::order::Order;
use crate::papers::handed_over;
use crate::rules::Rules;
use crate::told::latest;
use jiff::Timestamp;

/// When the vehicle is to come; nothing if nobody told, or if something told since says that it
/// is here: where it stands, its odometer or keys on the way in, work on it. By the clocks of
/// those who told it, as with where it stands.
#[must_use]
pub fn expected(order: &Order) -> Option<Timestamp> {
    let told = latest(order, |fact| match fact {
        Fact::Expected { after, .. } => Some(((), after)),
        _ => None,
    });
    let fact = *told.get(&())?;
    let Fact::Expected { at, .. } = fact else {
        return None;
    };
    let mut facts = order.beside_moves();
    let (_, filed) = facts.find(|(_, filed)| std::ptr::eq(&filed.fact, fact))?;
    let since = filed.stamp.at;
    let here = order
        .facts()
        .any(|(_, filed)| filed.stamp.at > since && says_it_is_here(&filed.fact));
    (!here).then_some(*at)
}

/// What was told of when it comes, for a device to name as seen.
#[must_use]
pub fn expected_told(order: &Order) -> Vec<CommandId> {
    let told = order
        .beside_moves()
        .filter(|(_, filed)| matches!(filed.fact, Fact::Expected { .. }));
    told.map(|(command, _)| command.clone()).collect()
}

/// How an agreed time turned out.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
pub enum Turnout {
    OnTheDay,
    /// Earlier or later.
    AnotherDay,
    /// Its day is over, and nothing says that it came since.
    NotAtAll,
}

/// How the times that were agreed for an order turned out, the first agreed first.
///
/// It came on the day of the first fact, told after the time was agreed, that says it is here:
/// where it stands, its odometer or keys on the way in, work on it; else of its hand-over.
/// Days are those of the shop's zone.
///
/// A time does not count
/// - that was agreed anew before its day began, or of an order voided before that: nobody kept a
///   stall free for it;
/// - for which another hour of the same day was agreed: the other one counts;
/// - whose day is not over, as long as it has not come.
///
/// # Limits
/// When it came is when somebody told it: what stands before the door unnoticed until the next day
/// came the next day. Whether the customer rang or stayed away without a word is not told apart.
#[must_use]
pub fn turnouts(order: &Order, rules: &Rules) -> Vec<Turnout> {
    let mut told: Vec<(Timestamp, Timestamp)> = order
        .beside_moves()
        .filter_map(|(_, filed)| match &filed.fact {
            Fact::Expected { at, .. } => Some((filed.stamp.at, *at)),
            _ => None,
        })
        .collect();
    if told.is_empty() {
        return Vec::new();
    }
    told.sort_unstable();
    let facts = order.facts();
    let here = facts.filter(|(_, filed)| says_it_is_here(&filed.fact));
    let mut here: Vec<Timestamp> = here.map(|(_, filed)| filed.stamp.at).collect();
    here.extend(handed_over(order).map(|left| left.at));
    here.sort_unstable();
    let voided = order
        .decisions()
        .iter()
        .find(|decided| matches!(decided.decision, Decision::Voided { .. }))
        .map(|decided| decided.stamp.at);
    let turned_out = |(nth, (since, at)): (usize, &(Timestamp, Timestamp))| {
        let day = rules.day(*at);
        let before = |moment: Timestamp| rules.day(moment) < day;
        if voided.is_some_and(before) {
            return None;
        }
        if let Some((anew, other)) = told.get(nth + 1)
            && (before(*anew) || rules.day(*other) == day)
        {
            return None;
        }
        match here.iter().find(|moment| *moment > since) {
            Some(came) if rules.day(*came) == day => Some(Turnout::OnTheDay),
            Some(_) => Some(Turnout::AnotherDay),
            None => (day < rules.today()).then_some(Turnout::NotAtAll),
        }
    };
    told.iter().enumerate().filter_map(turned_out).collect()
}

fn says_it_is_here(fact: &Fact) -> bool {
    match fact {
        Fact::Stood { place } | Fact::Pushed { to: place, .. } => *place != Place::Away,
        Fact::Odometer { at, .. } => *at == OdometerAt::In,
        Fact::Keys { step, .. } => *step == KeyStep::Taken,
        Fact::Moved { .. } | Fact::Timed { .. } => true,
        _ => false,
    }
}
