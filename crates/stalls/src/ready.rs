//! A floor made ready for placing: whose hours, which stalls, which stretches.

use crate::floor::{Does, Floor, Order, Phase, StallNeed, Takes};
use crate::hours::Hours;
use crate::windows::{Minute, Windows};

/// Minutes of a plain day.
pub(crate) const DAY_MINUTES: i64 = 1440;

/// A stretch of phases that are placed at one go.
///
/// Seated: the vehicle stays in one stall from its first phase to its last. That is so from the
/// first bolt to the last wheel, and for work that follows on work where one stall suits both.
#[derive(Clone, Debug, PartialEq, Eq)]
pub(crate) struct Sitting {
    pub(crate) first: usize,
    pub(crate) end: usize,
    pub(crate) seated: bool,
    /// The stalls that suit all of it; what is good for least comes first.
    pub(crate) stalls: Vec<usize>,
    /// It has begun: its stall is fixed.
    pub(crate) begun: bool,
    /// Minutes from its start to its end at least, and from then until the order is ready.
    pub(crate) shortest: Minute,
    pub(crate) shortest_after: Minute,
}

/// Cuts an order into its stretches.
pub(crate) fn sittings(floor: &Floor, order: &Order) -> Vec<Sitting> {
    let mut cut: Vec<Sitting> = Vec::new();
    let mut rolls = order.rolls;
    for (at, phase) in order.phases.iter().enumerate() {
        let runs_seated = at == 0
            && order.stands_in.is_some()
            && order.running.is_some()
            && (phase.needs_stall() || !phase.rolls);
        let begun = at == 0 && (!rolls || runs_seated);
        let need = phase.work().map_or(StallNeed::No, |work| work.stall);
        let suited = |stall: usize| floor.stalls[stall].suits(need, order);
        let joined = cut.last_mut().filter(|last| last.seated).and_then(|last| {
            let both: Vec<usize> = last
                .stalls
                .iter()
                .copied()
                .filter(|one| suited(*one))
                .collect();
            let stays = !rolls || !phase.rolls && !phase.needs_stall();
            (stays || phase.needs_stall() && !both.is_empty()).then_some((last, both))
        });
        if let Some((last, both)) = joined {
            last.end = at + 1;
            last.stalls = both;
        } else {
            let seated = begun || phase.needs_stall();
            let stalls: Vec<usize> = match (seated, begun) {
                (false, _) => Vec::new(),
                (true, true) => order
                    .stands_in
                    .into_iter()
                    .filter(|one| suited(*one))
                    .collect(),
                (true, false) => {
                    let all = 0..floor.stalls.len();
                    let free = all.filter(|one| floor.stalls[*one].held.is_none() && suited(*one));
                    let mut free: Vec<usize> = free.collect();
                    free.sort_by_key(|one| floor.stalls[*one].good_for());
                    free
                }
            };
            cut.push(Sitting {
                first: at,
                end: at + 1,
                seated,
                stalls,
                begun,
                shortest: 0,
                shortest_after: 0,
            });
        }
        rolls = phase.rolls;
    }
    let mut after = 0;
    for sitting in cut.iter_mut().rev() {
        let phases = order.phases[sitting.first..sitting.end].iter();
        // What runs is part of the way through.
        let left = phases.skip(usize::from(sitting.first == 0 && order.running.is_some()));
        sitting.shortest = left.map(shortest).sum();
        sitting.shortest_after = after;
        after += sitting.shortest;
    }
    cut
}

/// Minutes from the start to the end of a phase at least.
fn shortest(phase: &Phase) -> Minute {
    match &phase.does {
        Does::Work(work) => work.minutes.mean(),
        Does::Wait(wait) => match wait.takes {
            Takes::Minutes(spread) => spread.mean(),
            Takes::Comes(_) => 0,
        },
    }
}

/// A floor without faults, with what placing asks again and again.
#[derive(Clone, Debug)]
pub(crate) struct Ready<'f> {
    pub(crate) floor: &'f Floor,
    /// When each works: own hours while the shop is open, but not when away. After the last hours
    /// that were given everybody works without end, so that everything has a place; what lies
    /// there is told as beyond the hours given.
    pub(crate) hours: Vec<Windows>,
    /// The same as lines of worked minutes.
    pub(crate) own: Vec<Hours>,
    /// How many skills each has.
    pub(crate) skills: Vec<usize>,
    /// The end of the hours given.
    pub(crate) beyond: Minute,
    /// The stretches of each order.
    pub(crate) sittings: Vec<Vec<Sitting>>,
    /// Who can do each phase of each order.
    pub(crate) able: Vec<Vec<Vec<usize>>>,
    /// Whether vehicles can be in each other's way when they leave.
    pub(crate) tight: bool,
}

impl<'f> Ready<'f> {
    /// The floor must have no faults.
    pub(crate) fn new(floor: &'f Floor) -> Self {
        let beyond = floor.opening.end().unwrap_or(floor.now).max(floor.now);
        let endless = beyond + DAY_MINUTES;
        let hours: Vec<Windows> = floor
            .people
            .iter()
            .map(|person| {
                let own = person.hours.and(&floor.opening).minus(&person.away);
                own.open_ended(endless)
            })
            .collect();
        let able = floor
            .orders
            .iter()
            .map(|order| {
                let of_phase = |phase: &Phase| {
                    phase.work().map_or(Vec::new(), |work| {
                        (0..floor.people.len())
                            .filter(|one| floor.people[*one].can(work.skill.as_deref()))
                            .collect()
                    })
                };
                order.phases.iter().map(of_phase).collect()
            })
            .collect();
        Self {
            floor,
            own: hours.iter().map(Hours::new).collect(),
            skills: floor.people.iter().map(|one| one.skills.len()).collect(),
            hours,
            beyond,
            sittings: floor
                .orders
                .iter()
                .map(|order| sittings(floor, order))
                .collect(),
            able,
            tight: floor.yard_places.is_some()
                || floor.stalls.iter().any(|stall| !stall.crosses.is_empty()),
        }
    }

    /// Points that it costs if an order is ready at a minute.
    pub(crate) fn late(&self, order: usize, end: Minute) -> i64 {
        let rules = &self.floor.rules;
        let order = &self.floor.orders[order];
        match order.promise {
            Some(promise) if end > promise => {
                order.promise_weight * (rules.broken + (end - promise) * rules.late_minute)
            }
            _ => 0,
        }
    }

    /// The first minute from this one on at which all of them work.
    pub(crate) fn all_here(&self, people: &[usize], from: Minute) -> Minute {
        let mut at = from;
        loop {
            let next = people.iter().map(|one| self.next_here(*one, at)).max();
            match next {
                Some(next) if next > at => at = next,
                _ => return at,
            }
        }
    }

    fn next_here(&self, person: usize, from: Minute) -> Minute {
        self.hours[person]
            .next_open(from)
            .expect("hours have no end")
    }

    /// When work that begins at a minute is done, if they work on it only together.
    pub(crate) fn done(&self, people: &[usize], from: Minute, minutes: i64) -> Minute {
        if let [one] = people {
            return self.hours[*one]
                .finish(from, minutes)
                .expect("hours have no end");
        }
        let (mut at, mut left) = (self.all_here(people, from), minutes);
        loop {
            let closes = people.iter().filter_map(|one| self.hours[*one].closes(at));
            let closes = closes.min().expect("all of them are here");
            if closes - at >= left {
                return at + left;
            }
            left -= closes - at;
            at = self.all_here(people, closes);
        }
    }

    /// Minutes of work done by these people from one minute to another.
    pub(crate) fn worked(&self, people: &[usize], from: Minute, to: Minute) -> i64 {
        let Some((first, others)) = people.split_first() else {
            return 0;
        };
        if others.is_empty() {
            return self.hours[*first].open_between(from, to);
        }
        let together = others.iter().fold(self.hours[*first].clone(), |all, one| {
            all.and(&self.hours[*one])
        });
        together.open_between(from, to)
    }
}
