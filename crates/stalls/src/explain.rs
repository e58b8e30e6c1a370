//! Why a vehicle waits, and what is different from the plan before, in plain sentences.

use crate::floor::{Does, Takes, WaitsFor};
use crate::phrases::explain as words;
use crate::place::Placed;
use crate::plan::Plan;
use crate::windows::Minute;

/// How a caller says a minute: "15:30", "Thursday 10:00".
pub type Say<'s> = &'s dyn Fn(Minute) -> String;

/// Something that is different from the plan before.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Change {
    /// The order's name.
    pub order: String,
    pub sentence: String,
}

/// What a phase waits for.
#[derive(Clone, Debug, PartialEq, Eq)]
pub(crate) enum Reason {
    /// Something has to come or to settle.
    Wait(WaitsFor, Minute),
    /// The vehicle is not here yet.
    Comes(Minute),
    /// Who does it works on another order.
    Busy(usize, usize, Minute),
    /// Who does it is away.
    Away(usize, Minute),
    /// Another order stands in the stall.
    Taken(usize, usize, Minute),
    /// A vehicle that has to be passed is in the way.
    Blocked(usize, Minute),
    /// Nobody who does it is at work.
    Closed(Minute),
}

impl Plan {
    /// Why a phase does not begin earlier; nothing if it begins as soon as it can.
    pub(crate) fn reason(&self, order: usize, phase: usize) -> Option<Reason> {
        let slot = self.of(order, phase)?;
        let floor = &self.floor;
        let before = phase
            .checked_sub(1)
            .and_then(|before| self.of(order, before));
        let ready = before.map_or_else(
            || {
                let arrives = floor.orders[order].arrives;
                arrives.map_or(floor.now, |spread| spread.mean())
            },
            |before| before.to,
        );
        if slot.from <= ready {
            let waited = before.filter(|before| before.to > before.from.max(floor.now));
            return match (waited, phase) {
                (Some(before), _) => match &floor.orders[order].phases[before.phase].does {
                    Does::Wait(wait) => Some(Reason::Wait(wait.waits_for, slot.from)),
                    Does::Work(_) => None,
                },
                (None, 0) if floor.orders[order].arrives.is_some() => {
                    Some(Reason::Comes(slot.from))
                }
                _ => None,
            };
        }
        self.part_reason(slot)
            .or_else(|| self.stall_reason(slot))
            .or_else(|| self.person_reason(slot))
    }

    /// It is taken apart no earlier since something comes later that it would wait for inside.
    fn part_reason(&self, slot: &Placed) -> Option<Reason> {
        let stay = (self.stays.iter())
            .find(|stay| stay.order == slot.order && stay.first == slot.phase)?;
        let phases = &self.floor.orders[slot.order].phases;
        (stay.first..stay.end).find_map(|phase| match &phases[phase].does {
            Does::Wait(wait) if matches!(wait.takes, Takes::Comes(_)) => {
                let wait_ends = self.of(slot.order, phase)?.to;
                Some(Reason::Wait(wait.waits_for, wait_ends))
            }
            _ => None,
        })
    }

    fn stall_reason(&self, slot: &Placed) -> Option<Reason> {
        let stay = (self.stays.iter())
            .find(|stay| stay.order == slot.order && stay.first == slot.phase)?;
        let left = |other: &&crate::Stay| other.order != slot.order && other.to == stay.from;
        let same = (self.stays.iter()).find(|other| left(other) && other.stall == stay.stall);
        if let Some(other) = same {
            return Some(Reason::Taken(other.order, stay.stall, stay.from));
        }
        let crosses = &self.floor.stalls[stay.stall].crosses;
        let blocked =
            (self.stays.iter()).find(|other| left(other) && crosses.contains(&other.stall));
        blocked.map(|other| Reason::Blocked(other.order, stay.from))
    }

    fn person_reason(&self, slot: &Placed) -> Option<Reason> {
        for person in &slot.people {
            let until = |other: &&Placed| {
                other.order != slot.order && other.to == slot.from && other.people.contains(person)
            };
            if let Some(other) = self.placed.iter().find(until) {
                return Some(Reason::Busy(*person, other.order, slot.from));
            }
        }
        let just_before = slot.from - 1;
        let away = |person: &&usize| self.floor.people[**person].away.is_open(just_before);
        if let Some(person) = slot.people.iter().find(away) {
            return Some(Reason::Away(*person, slot.from));
        }
        let closed = |person: &usize| !self.floor.people[*person].hours.is_open(just_before);
        (slot.people.iter().any(closed) || !self.floor.opening.is_open(just_before))
            .then_some(Reason::Closed(slot.from))
    }

    /// A reason in words that follow on "... waits: ".
    pub(crate) fn reason_words(&self, reason: &Reason, say: Say) -> String {
        let order = |at: &usize| self.floor.orders[*at].name.as_str();
        let person = |at: &usize| self.floor.people[*at].name.as_str();
        match reason {
            Reason::Wait(waits_for, until) => {
                let until = say(*until);
                match waits_for {
                    WaitsFor::Part => words::part_comes(until),
                    WaitsFor::Sublet => words::back_from_outside(until),
                    WaitsFor::Consent => words::answer_expected(until),
                    WaitsFor::Cure => words::has_to_cure(until),
                    WaitsFor::CoolDown => words::has_to_cool(until),
                    WaitsFor::Customer => words::customer_expected(until),
                }
            }
            Reason::Comes(at) => words::it_comes(say(*at)),
            Reason::Busy(who, other, until) => {
                words::works_on_until(person(who), order(other), say(*until))
            }
            Reason::Away(who, until) => words::away_until(person(who), say(*until)),
            Reason::Taken(other, stall, until) => {
                let stall = &self.floor.stalls[*stall].name;
                words::stands_in_until(order(other), stall, say(*until))
            }
            Reason::Blocked(other, until) => words::in_the_way_until(order(other), say(*until)),
            Reason::Closed(until) => words::work_goes_on(say(*until)),
        }
    }

    /// What holds an order up longest, in words.
    pub fn why(&self, order: usize, say: Say) -> Option<String> {
        let own = self.placed.iter().filter(|one| one.order == order);
        let mut ready = self
            .floor
            .orders
            .get(order)?
            .arrives
            .map_or(self.floor.now, |s| s.mean());
        let mut longest: Option<(Minute, usize)> = None;
        for one in own {
            let is_wait = one.people.is_empty();
            let waited = if is_wait {
                one.to - one.from.max(self.floor.now)
            } else {
                one.from - ready
            };
            let phase = one.phase + usize::from(is_wait);
            if waited > 0 && longest.is_none_or(|longest| waited > longest.0) {
                longest = Some((waited, phase));
            }
            ready = one.to;
        }
        let (_, phase) = longest?;
        let reason = self.reason(order, phase)?;
        Some(self.reason_words(&reason, say))
    }

    /// Everything that is different from the plan before, a sentence each.
    pub fn changes_from(&self, previous: &Plan, say: Say) -> Vec<Change> {
        let mut changes = Vec::new();
        for (at, order) in self.floor.orders.iter().enumerate() {
            let mut tell = |sentence: String| {
                changes.push(Change {
                    order: order.name.clone(),
                    sentence,
                });
            };
            let old = previous
                .floor
                .orders
                .iter()
                .position(|old| old.name == order.name);
            let Some(old) = old else {
                tell(words::is_new(&order.name, say(self.ends[at])));
                continue;
            };
            let skipped = previous.floor.orders[old]
                .phases
                .len()
                .checked_sub(order.phases.len());
            let Some(skipped) = skipped else {
                let added = order.phases.len() - previous.floor.orders[old].phases.len();
                tell(words::more_phases(
                    &order.name,
                    added,
                    say(self.ends[at]),
                    say(previous.ends[old]),
                ));
                continue;
            };
            self.end_change(at, previous, old, say)
                .into_iter()
                .for_each(&mut tell);
            for phase in 0..order.phases.len() {
                let (Some(new), Some(before)) =
                    (self.of(at, phase), previous.of(old, phase + skipped))
                else {
                    continue;
                };
                self.who_and_where(new, previous, before, say)
                    .into_iter()
                    .for_each(&mut tell);
            }
        }
        changes
    }

    fn end_change(&self, at: usize, previous: &Plan, old: usize, say: Say) -> Option<String> {
        let name = &self.floor.orders[at].name;
        let (new_end, old_end) = (self.ends[at], previous.ends[old]);
        let times = words::ready_instead(say(new_end), say(old_end));
        match new_end.cmp(&old_end) {
            std::cmp::Ordering::Equal => None,
            std::cmp::Ordering::Less => Some(words::comes_forward(name, times)),
            std::cmp::Ordering::Greater => Some(match self.why(at, say) {
                Some(why) => words::waits_for(name, why, times),
                None => words::takes_longer(name, times),
            }),
        }
    }

    fn who_and_where(&self, new: &Placed, previous: &Plan, old: &Placed, say: Say) -> Vec<String> {
        let mut said = Vec::new();
        let order = &self.floor.orders[new.order];
        let what = &order.phases[new.phase].what;
        let name = |plan: &Plan, one: &Placed| {
            let first = one.people.first()?;
            Some(plan.floor.people[*first].name.clone())
        };
        let stall = |plan: &Plan, one: &Placed| Some(plan.floor.stalls[one.stall?].name.clone());
        if let (Some(now), Some(before)) = (name(self, new), name(previous, old))
            && now != before
        {
            let why = self.why_not(&before, new, say);
            let said_so = words::does_instead(now, what, &order.name, before);
            said.push(format!("{said_so}{why}"));
        }
        let is_first = self
            .stays
            .iter()
            .any(|stay| stay.order == new.order && stay.first == new.phase);
        if let (Some(now), Some(before)) = (stall(self, new), stall(previous, old))
            && now != before
            && is_first
        {
            let taken = self.stays.iter().find(|stay| {
                self.floor.stalls[stay.stall].name == before
                    && stay.order != new.order
                    && stay.from < new.to
                    && new.from < stay.to
            });
            let why = taken.map_or(String::new(), |stay| {
                let other = &self.floor.orders[stay.order].name;
                format!(": {}", words::stands_there_until(other, say(stay.to)))
            });
            let said_so = words::goes_into_instead(&order.name, now, before);
            said.push(format!("{said_so}{why}"));
        }
        said
    }

    /// Why somebody does not do it who was to do it.
    fn why_not(&self, person: &str, slot: &Placed, say: Say) -> String {
        let Some(at) = self.floor.people.iter().position(|one| one.name == person) else {
            return format!(": {}", words::is_not_there(person));
        };
        let who = &self.floor.people[at];
        let away = who.away.spans().iter();
        if let Some(span) = away
            .clone()
            .find(|span| span.0 < slot.to && slot.from < span.1)
        {
            return format!(": {}", words::away_until(person, say(span.1)));
        }
        let other = self.placed.iter().find(|other| {
            other.people.contains(&at) && other.from < slot.to && slot.from < other.to
        });
        other.map_or(String::new(), |other| {
            let order = &self.floor.orders[other.order].name;
            format!(": {}", words::works_on_until(person, order, say(other.to)))
        })
    }
}
