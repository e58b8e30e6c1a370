//! When somebody worked on an order: by the clocks of its stages, and where there was no clock,
//! the moments at which something was told at the vehicle.

use jiff::{SignedDuration, Timestamp};
use repair::{Clock, Fact, Order, PersonId, StageId};
use std::collections::BTreeMap;

/// A piece of work.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Worked {
    pub person: PersonId,
    pub from: Timestamp,
    pub to: Timestamp,
    /// Whether it goes on.
    pub open: bool,
}

/// What a clock was told, and when; nothing, where a move of its stage came.
type Told = (Timestamp, Option<Clock>);

/// Moments no farther apart belong together.
pub const NEAR: SignedDuration = SignedDuration::from_mins(15);

/// A clock that nobody stopped runs no longer than a stage takes.
const LONGEST_STAGE: SignedDuration = SignedDuration::from_hours(2);

/// All the work on an order that began at `since` or later, up to now, the earliest first.
pub fn worked(order: &Order, since: Timestamp, now: Timestamp) -> Vec<Worked> {
    let mut clocks: BTreeMap<(&StageId, &PersonId), Vec<Told>> = BTreeMap::new();
    let mut moments = Vec::new();
    for (_, filed) in order.facts() {
        let at = filed.stamp.at;
        match &filed.fact {
            Fact::Timed { stage, clock, .. } => clocks
                .entry((stage, &filed.stamp.who))
                .or_default()
                .push((at, Some(*clock))),
            Fact::Moved { stage, .. } => {
                if let Some(stage) = stage {
                    let of = clocks.entry((stage, &filed.stamp.who)).or_default();
                    of.push((at, None));
                }
                if (since..=now).contains(&at) {
                    moments.push((&filed.stamp.who, at));
                }
            }
            _ => {}
        }
    }
    let mut out = Vec::new();
    for ((_, person), mut told) in clocks {
        told.sort_by_key(|(at, _)| *at);
        for (from, to) in runs(&told) {
            if from < since || from > now {
                continue;
            }
            let latest = after(from, LONGEST_STAGE);
            let open = to.is_none() && now <= latest;
            let to = to.unwrap_or(now.min(latest));
            out.push(Worked {
                person: person.clone(),
                from,
                to: to.max(from),
                open,
            });
        }
    }
    moments.sort_by_key(|(_, at)| *at);
    for (person, at) in moments {
        // What is told in a row was one piece of work.
        let near = |one: &&mut Worked| {
            one.person == *person && one.from <= after(at, NEAR) && at <= after(one.to, NEAR)
        };
        match out.iter_mut().find(near) {
            Some(one) => (one.from, one.to) = (one.from.min(at), one.to.max(at)),
            None => out.push(Worked {
                person: person.clone(),
                from: at,
                to: at,
                open: false,
            }),
        }
    }
    out.sort_by_key(|one| one.from);
    out
}

fn after(at: Timestamp, long: SignedDuration) -> Timestamp {
    at.checked_add(long).unwrap_or(Timestamp::MAX)
}

/// The runs of a clock; without an end, it runs on.
fn runs(told: &[Told]) -> Vec<(Timestamp, Option<Timestamp>)> {
    let mut out = Vec::new();
    let mut since: Option<Timestamp> = None;
    for (at, clock) in told {
        match clock {
            Some(Clock::Opened | Clock::Resumed) => since = since.or(Some(*at)),
            Some(Clock::Paused | Clock::Left) | None => {
                if let Some(from) = since.take() {
                    out.push((from, Some(*at)));
                }
            }
        }
    }
    out.extend(since.map(|from| (from, None)));
    out
}

/// Minutes of work, by however many people at once.
pub fn minutes(worked: &[Worked]) -> i64 {
    let seconds: i64 = worked
        .iter()
        .map(|one| one.to.as_second() - one.from.as_second())
        .sum();
    seconds / 60
}

#[cfg(test)]
mod tests {
    use super::*;
    use jiff::ToSpan;

    fn at(minute: i64) -> Timestamp {
        Timestamp::from_second(1_764_500_000).unwrap_or_default() + (minute * 60).seconds()
    }

    #[test]
    fn a_clock_runs_from_its_opening_to_the_pause_and_on_after_it() {
        let told = [
            (at(0), Some(Clock::Opened)),
            (at(20), Some(Clock::Paused)),
            (at(30), Some(Clock::Resumed)),
            (at(45), None),
            (at(60), Some(Clock::Opened)),
        ];
        assert_eq!(
            runs(&told),
            [
                (at(0), Some(at(20))),
                (at(30), Some(at(45))),
                (at(60), None)
            ]
        );
    }
}
