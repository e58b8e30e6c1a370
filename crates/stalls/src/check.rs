//! What is wrong with what is there, and what is missing; said before anything is planned.

use crate::floor::{Does, Floor, Order, Phase, StallNeed, Takes, Work};
use crate::place::MOST_HELPERS;
use crate::ready::{DAY_MINUTES, sittings};
use std::collections::BTreeSet;
use thiserror::Error;

/// One thing that keeps a floor from being planned: where, what, and how to mend it.
#[derive(Clone, Debug, PartialEq, Eq, PartialOrd, Ord, Error)]
#[error("{place}: {what}: {mend}")]
pub struct Fault {
    pub place: String,
    pub what: String,
    pub mend: String,
}

impl Fault {
    pub(crate) fn new(
        place: impl Into<String>,
        what: impl Into<String>,
        mend: impl Into<String>,
    ) -> Self {
        Self {
            place: place.into(),
            what: what.into(),
            mend: mend.into(),
        }
    }
}

/// Minutes beyond which a number is a slip: ten years.
const SANE: i64 = 10 * 366 * DAY_MINUTES;
/// Weights and points beyond which sums could overflow.
const MOST_WEIGHT: i64 = 1_000_000;

impl Floor {
    /// Everything that keeps it from being planned.
    pub fn faults(&self) -> Vec<Fault> {
        let mut faults = Vec::new();
        self.names(&mut faults);
        self.times(&mut faults);
        self.stall_faults(&mut faults);
        for order in &self.orders {
            self.order_faults(order, &mut faults);
        }
        self.held_twice(&mut faults);
        faults
    }

    /// What can be planned, and yet should be known.
    pub fn notes(&self) -> Vec<String> {
        let mut notes = Vec::new();
        for order in &self.orders {
            let lifted = |phase: &Phase| {
                phase
                    .work()
                    .is_some_and(|work| work.stall == StallNeed::Lift)
            };
            if order.weight_kg.is_none() && order.phases.iter().any(lifted) {
                notes.push(format!(
                    "{}: its weight is not given, so nobody checked that the lift carries it",
                    order.name
                ));
            }
            for phase in &order.phases {
                let Some(work) = phase.work() else { continue };
                let able = self.able(work);
                let day = able
                    .iter()
                    .map(|hours| hours.longest_day(DAY_MINUTES))
                    .max();
                if let Some(day) = day.filter(|day| work.minutes.mean() > *day) {
                    notes.push(format!(
                        "{}, {}: {} minutes are longer than any day of who can do it ({day} minutes), \
                         so it runs over several days without a pause for anything else: write it as stages",
                        order.name,
                        phase.what,
                        work.minutes.mean()
                    ));
                }
            }
        }
        notes
    }

    /// The hours of each who can do it.
    fn able(&self, work: &Work) -> Vec<crate::Windows> {
        let able = self
            .people
            .iter()
            .filter(|person| person.can(work.skill.as_deref()));
        able.map(|person| person.hours.minus(&person.away))
            .collect()
    }

    fn names(&self, faults: &mut Vec<Fault>) {
        let sorts: [(&str, Vec<&str>); 3] = [
            (
                "stall",
                self.stalls.iter().map(|one| one.name.as_str()).collect(),
            ),
            (
                "person",
                self.people.iter().map(|one| one.name.as_str()).collect(),
            ),
            (
                "order",
                self.orders.iter().map(|one| one.name.as_str()).collect(),
            ),
        ];
        for (sort, names) in sorts {
            let mut seen = BTreeSet::new();
            for name in names {
                if name.trim().is_empty() {
                    faults.push(Fault::new(format!("a {sort}"), "it has no name", "name it"));
                } else if !seen.insert(name) {
                    faults.push(Fault::new(
                        format!("{sort} {name}"),
                        format!("two have this name (each {sort} is told by its name)"),
                        "give one of them another",
                    ));
                }
            }
        }
    }

    fn times(&self, faults: &mut Vec<Fault>) {
        if self.opening.end().is_none_or(|end| end <= self.now) {
            faults.push(Fault::new(
                "the opening hours",
                "none is left after the moment that is planned from",
                "give hours for the days ahead",
            ));
        }
        let sane = |minute: i64| (-SANE..=SANE).contains(&minute);
        let spans = self
            .people
            .iter()
            .flat_map(|person| [&person.hours, &person.away]);
        let spans = spans.chain([&self.opening]).flat_map(crate::Windows::spans);
        if !sane(self.now) || spans.into_iter().any(|span| !sane(span.0) || !sane(span.1)) {
            faults.push(Fault::new(
                "the hours",
                "a time lies more than ten years away",
                "look for a slip in the years",
            ));
        }
        let rules = &self.rules;
        let points = [
            rules.broken,
            rules.late_minute,
            rules.idle_lift_minute,
            rules.moved,
            rules.changed,
        ];
        if points
            .iter()
            .any(|points| !(0..=MOST_WEIGHT).contains(points))
        {
            faults.push(Fault::new(
                "the rules",
                format!("points have to be from 0 to {MOST_WEIGHT}"),
                "write smaller ones; only what they are to each other counts",
            ));
        }
    }

    fn stall_faults(&self, faults: &mut Vec<Fault>) {
        for (at, stall) in self.stalls.iter().enumerate() {
            if let Some(crossed) = stall.crosses.iter().find(|one| **one >= self.stalls.len()) {
                faults.push(Fault::new(
                    &stall.name,
                    format!("it crosses stall number {crossed}, and there is none"),
                    "name stalls that are there",
                ));
            } else if self.reaches(at).contains(&at) {
                faults.push(Fault::new(
                    &stall.name,
                    "whoever leaves it has to cross it again (the stalls to cross go round in a circle)",
                    "leave out the stall that need not be crossed",
                ));
            }
        }
    }

    /// The stalls that are crossed from here, and those crossed from there.
    fn reaches(&self, stall: usize) -> BTreeSet<usize> {
        let mut reached = BTreeSet::new();
        let mut open = self.stalls[stall].crosses.clone();
        while let Some(next) = open.pop() {
            if next < self.stalls.len() && reached.insert(next) {
                open.extend(&self.stalls[next].crosses);
            }
        }
        reached
    }

    fn order_faults(&self, order: &Order, faults: &mut Vec<Fault>) {
        let wrong = |what: String, mend: &str| Fault::new(&order.name, what, mend);
        if order.phases.is_empty() {
            faults.push(wrong(
                "nothing is to be done".to_owned(),
                "write at least one phase, or leave the order out",
            ));
            return;
        }
        if order
            .stands_in
            .is_some_and(|stall| stall >= self.stalls.len())
        {
            let mend = "name a stall that is there";
            faults.push(wrong(
                "it stands in a stall that is not there".to_owned(),
                mend,
            ));
            return;
        }
        if !(0..=MOST_WEIGHT).contains(&order.promise_weight) {
            let what = format!("its promise weighs {}", order.promise_weight);
            faults.push(wrong(what, "write a weight from 0 to 1000000; 1 is usual"));
        }
        if order.arrives.is_some() && (order.stands_in.is_some() || order.running.is_some()) {
            let mend = "leave out when it comes";
            faults.push(wrong(
                "it is here, and it is still to come".to_owned(),
                mend,
            ));
        }
        if !order.rolls && order.stands_in.is_none() {
            let what = "it can't roll, and no stall is named in which it stands".to_owned();
            faults.push(wrong(what, "name the stall, or say that it rolls"));
        }
        let last = order.phases.last().is_some_and(|phase| phase.rolls);
        if !last {
            let what = "it can't roll when all is done".to_owned();
            faults.push(wrong(what, "write the phase that puts it back together"));
        }
        self.running_faults(order, faults);
        let before = faults.len();
        for phase in &order.phases {
            self.phase_faults(order, phase, faults);
        }
        if faults.len() == before && order.rolls_or_stands() && last {
            self.sitting_faults(order, faults);
        }
    }

    fn running_faults(&self, order: &Order, faults: &mut Vec<Fault>) {
        let Some(running) = &order.running else {
            return;
        };
        let wrong = |what: &str, mend: &str| Fault::new(&order.name, what, mend);
        if running.since > self.now {
            faults.push(wrong("what runs began after now", "write when it began"));
        }
        if running.people.iter().any(|one| *one >= self.people.len()) {
            faults.push(wrong(
                "somebody works on it who is not there",
                "name people who are there",
            ));
            return;
        }
        let phase = &order.phases[0];
        if let Some(work) = phase.work() {
            let able = running.people.first();
            if able.is_none_or(|one| !self.people[*one].can(work.skill.as_deref())) {
                faults.push(wrong(
                    "its first phase has begun, and nobody with the skill works on it",
                    "name who works on it, or say that it has not begun",
                ));
            }
            if work.stall != StallNeed::No && order.stands_in.is_none() {
                faults.push(wrong(
                    "it is worked on, and no stall is named in which it stands",
                    "name the stall",
                ));
            }
        }
        for other in &self.orders {
            let both = other.running.iter().flat_map(|other| &other.people);
            if other.name < order.name && both.into_iter().any(|one| running.people.contains(one)) {
                faults.push(wrong(
                    &format!("who works on it also works on {}", other.name),
                    "a person works on one vehicle at a time: say which has not begun",
                ));
            }
        }
    }

    fn phase_faults(&self, order: &Order, phase: &Phase, faults: &mut Vec<Fault>) {
        let place = format!("{}, {}", order.name, phase.what);
        let wrong = |what: String, mend: &str| Fault::new(&place, what, mend);
        let (spread, least) = match &phase.does {
            Does::Work(work) => (work.minutes, 1),
            Does::Wait(wait) => match wait.takes {
                Takes::Minutes(spread) => (spread, 0),
                Takes::Comes(spread) => (spread, -SANE),
            },
        };
        if !spread.is_sound() || spread.least < least || spread.most > SANE {
            faults.push(wrong(
                format!(
                    "its minutes run from {} over {} to {}",
                    spread.least, spread.likely, spread.most
                ),
                "write least, likely and most in that sequence; work takes at least a minute",
            ));
        }
        let Some(work) = phase.work() else { return };
        let able: Vec<_> = self
            .people
            .iter()
            .filter(|person| person.can(work.skill.as_deref()))
            .collect();
        let ahead = |person: &&&crate::Person| {
            let hours = person.hours.and(&self.opening).minus(&person.away);
            hours.end().is_some_and(|end| end > self.now)
        };
        match (&work.skill, able.is_empty()) {
            (Some(skill), true) => faults.push(wrong(
                format!("nobody has the skill {skill}"),
                "give it to somebody, or write another",
            )),
            (None, true) => {
                faults.push(wrong(
                    "there is nobody to do it".to_owned(),
                    "name the people",
                ));
            }
            _ if !able.iter().any(|person| ahead(&person)) => {
                let names: Vec<&str> = able.iter().map(|person| person.name.as_str()).collect();
                faults.push(wrong(
                    format!(
                        "nobody who can do it is here in the hours given ({})",
                        names.join(", ")
                    ),
                    "give more days, or ask who else can do it",
                ));
            }
            _ => {}
        }
        if work.helpers > MOST_HELPERS {
            let what = format!("it needs {} helpers", work.helpers);
            faults.push(wrong(
                what,
                "write at most 3, and the rest as work of its own",
            ));
        } else if work.helpers >= self.people.len() && !self.people.is_empty() {
            faults.push(wrong(
                format!(
                    "it needs {} helpers, and {} are there in all",
                    work.helpers,
                    self.people.len()
                ),
                "ask for fewer, or name more people",
            ));
        }
        if work.on_the_road && (work.stall != StallNeed::No || !phase.rolls) {
            faults.push(wrong(
                "a road test needs no stall, and the vehicle has to roll".to_owned(),
                "write it without a stall, after it can roll",
            ));
        }
    }

    /// Stalls for each stretch that a vehicle spends in one.
    fn sitting_faults(&self, order: &Order, faults: &mut Vec<Fault>) {
        for sitting in sittings(self, order) {
            let first = &order.phases[sitting.first];
            let place = format!("{}, {}", order.name, first.what);
            if let Some(road) = order.phases[sitting.first..sitting.end]
                .iter()
                .find(|phase| sitting.seated && phase.work().is_some_and(|work| work.on_the_road))
            {
                faults.push(Fault::new(
                    &place,
                    format!("{} comes while it can't roll", road.what),
                    "write what puts it back together before the road test",
                ));
            }
            if !sitting.seated {
                if !first.rolls {
                    faults.push(Fault::new(
                        &place,
                        "it is taken apart where there is no stall",
                        "say which stall it needs: lift, flat or any",
                    ));
                }
                continue;
            }
            if !sitting.stalls.is_empty() {
                continue;
            }
            faults.push(self.no_stall(order, &place, sitting.first..sitting.end));
        }
    }

    /// Why no stall is left for these phases.
    fn no_stall(&self, order: &Order, place: &str, phases: std::ops::Range<usize>) -> Fault {
        let needs: Vec<StallNeed> = order.phases[phases]
            .iter()
            .filter_map(|phase| phase.work().map(|work| work.stall))
            .collect();
        let suits = |stall: &&crate::Stall| needs.iter().all(|need| stall.suits(*need, order));
        let held: Vec<String> = self
            .stalls
            .iter()
            .filter(suits)
            .filter_map(|stall| Some(format!("{} by {}", stall.name, stall.held.as_ref()?)))
            .collect();
        let is_held_apart = order.stands_in.filter(|_| !order.rolls);
        if let Some(stall) = is_held_apart {
            return Fault::new(
                place,
                format!(
                    "it can't roll and stands in {}, which does not suit the work",
                    self.stalls[stall].name
                ),
                "write what makes it roll first, or check its weight and what the work needs",
            );
        }
        if !held.is_empty() {
            return Fault::new(
                place,
                format!(
                    "every stall that suits it is held for good: {}",
                    held.join(", ")
                ),
                "free one of them",
            );
        }
        let lifts = self.stalls.iter().filter_map(|stall| stall.lift.as_ref());
        let most = lifts.clone().filter_map(|lift| lift.carries_kg).max();
        if needs.contains(&StallNeed::Lift)
            && let (Some(weight), Some(most)) = (order.weight_kg, most)
            && weight > most
        {
            return Fault::new(
                place,
                format!("it weighs {weight} kg, and the strongest lift carries {most} kg"),
                "do it without a lift, or elsewhere",
            );
        }
        let highest = lifts.filter_map(|lift| lift.clears_mm).max();
        if needs.contains(&StallNeed::Lift)
            && let (Some(height), Some(highest)) = (order.height_mm, highest)
            && height > highest
        {
            return Fault::new(
                place,
                format!("it is {height} mm high, and no lift clears more than {highest} mm"),
                "do it without a lift, or elsewhere",
            );
        }
        let mut words: Vec<&str> = needs.iter().map(|need| need.name()).collect();
        words.dedup();
        Fault::new(
            place,
            format!("no stall suits it (needed: {})", words.join(", then ")),
            "name a stall that does, or split the work where it can roll",
        )
    }

    fn held_twice(&self, faults: &mut Vec<Fault>) {
        for (at, stall) in self.stalls.iter().enumerate() {
            let inside: Vec<&str> = self
                .orders
                .iter()
                .filter(|order| order.stands_in == Some(at))
                .map(|order| order.name.as_str())
                .collect();
            if inside.len() > 1 {
                faults.push(Fault::new(
                    &stall.name,
                    format!("{} stand in it", inside.join(" and ")),
                    "a stall holds one vehicle: say where the others stand",
                ));
            }
        }
    }
}

impl Order {
    fn rolls_or_stands(&self) -> bool {
        self.rolls || self.stands_in.is_some()
    }
}
