//! What is wrong with what is there, and what is missing; said before anything is planned.

use crate::floor::{Does, Floor, Order, Phase, StallNeed, Takes, Work};
use crate::phrases::check as say;
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
                notes.push(say::weight_not_given(&order.name));
            }
            notes.extend(self.too_long(order));
        }
        notes
    }

    /// The stages of an order that are longer than any day of who can do them.
    pub fn too_long(&self, order: &Order) -> Vec<String> {
        let longest = |work: &Work| {
            let days = self.able(work).into_iter();
            days.map(|hours| hours.longest_day(DAY_MINUTES)).max()
        };
        let stages = order.phases.iter().filter_map(|phase| {
            let work = phase.work()?;
            let (minutes, day) = (work.minutes.mean(), longest(work)?);
            (minutes > day).then(|| say::longer_than_a_day(&order.name, &phase.what, minutes, day))
        });
        stages.collect()
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
        let sorts: [(&str, &str, Vec<&str>); 3] = [
            (
                say::a_stall(),
                say::stall(),
                self.stalls.iter().map(|one| one.name.as_str()).collect(),
            ),
            (
                say::a_person(),
                say::person(),
                self.people.iter().map(|one| one.name.as_str()).collect(),
            ),
            (
                say::an_order(),
                say::order(),
                self.orders.iter().map(|one| one.name.as_str()).collect(),
            ),
        ];
        for (one, sort, names) in sorts {
            let mut seen = BTreeSet::new();
            for name in names {
                if name.trim().is_empty() {
                    faults.push(Fault::new(one, say::no_name(), say::name_it()));
                } else if !seen.insert(name) {
                    faults.push(Fault::new(
                        format!("{sort} {name}"),
                        say::two_have_this_name(sort),
                        say::give_another_name(),
                    ));
                }
            }
        }
    }

    fn times(&self, faults: &mut Vec<Fault>) {
        if self.opening.end().is_none_or(|end| end <= self.now) {
            faults.push(Fault::new(
                say::opening_hours(),
                say::no_hours_left(),
                say::give_hours_ahead(),
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
                say::the_hours(),
                say::ten_years_away(),
                say::slip_in_the_years(),
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
                say::the_rules(),
                say::points_from_to(MOST_WEIGHT),
                say::write_smaller_points(),
            ));
        }
    }

    fn stall_faults(&self, faults: &mut Vec<Fault>) {
        for (at, stall) in self.stalls.iter().enumerate() {
            if let Some(crossed) = stall.crosses.iter().find(|one| **one >= self.stalls.len()) {
                faults.push(Fault::new(
                    &stall.name,
                    say::crosses_none(crossed),
                    say::name_stalls_that_are(),
                ));
            } else if self.reaches(at).contains(&at) {
                faults.push(Fault::new(
                    &stall.name,
                    say::crosses_itself(),
                    say::leave_out_the_crossed(),
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
            faults.push(wrong(say::nothing_to_do().to_owned(), say::write_a_phase()));
            return;
        }
        if order
            .stands_in
            .is_some_and(|stall| stall >= self.stalls.len())
        {
            let mend = say::name_a_stall_that_is();
            faults.push(wrong(say::stands_in_none().to_owned(), mend));
            return;
        }
        if !(0..=MOST_WEIGHT).contains(&order.promise_weight) {
            let what = say::promise_weighs(order.promise_weight);
            faults.push(wrong(what, say::write_a_weight()));
        }
        if order.arrives.is_some() && (order.stands_in.is_some() || order.running.is_some()) {
            let mend = say::leave_out_when_it_comes();
            faults.push(wrong(say::here_and_to_come().to_owned(), mend));
        }
        if !order.rolls && order.stands_in.is_none() {
            let what = say::apart_nowhere().to_owned();
            faults.push(wrong(what, say::name_the_stall_or_rolls()));
        }
        let last = order.phases.last().is_some_and(|phase| phase.rolls);
        if !last {
            let what = say::apart_at_the_end().to_owned();
            faults.push(wrong(what, say::write_what_puts_together()));
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
            faults.push(wrong(say::began_after_now(), say::write_when_it_began()));
        }
        if running.people.iter().any(|one| *one >= self.people.len()) {
            faults.push(wrong(say::unknown_at_work(), say::name_people_who_are()));
            return;
        }
        let phase = &order.phases[0];
        if let Some(work) = phase.work() {
            let able = running.people.first();
            if able.is_none_or(|one| !self.people[*one].can(work.skill.as_deref())) {
                faults.push(wrong(say::begun_without_skill(), say::name_who_works()));
            }
            if work.stall != StallNeed::No && order.stands_in.is_none() {
                faults.push(wrong(say::worked_on_nowhere(), say::name_the_stall()));
            }
        }
        for other in &self.orders {
            let both = other.running.iter().flat_map(|other| &other.people);
            if other.name < order.name && both.into_iter().any(|one| running.people.contains(one)) {
                faults.push(wrong(
                    &say::also_works_on(&other.name),
                    say::one_vehicle_at_a_time(),
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
                say::minutes_run(spread.least, spread.likely, spread.most),
                say::write_in_sequence(),
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
            (Some(skill), true) => {
                faults.push(wrong(say::nobody_has_skill(skill), say::give_the_skill()));
            }
            (None, true) => {
                faults.push(wrong(
                    say::nobody_to_do_it().to_owned(),
                    say::name_the_people(),
                ));
            }
            _ if !able.iter().any(|person| ahead(&person)) => {
                let names: Vec<&str> = able.iter().map(|person| person.name.as_str()).collect();
                faults.push(wrong(
                    say::nobody_here(names.join(", ")),
                    say::give_more_days(),
                ));
            }
            _ => {}
        }
        if work.helpers > MOST_HELPERS {
            let what = say::needs_helpers(work.helpers);
            faults.push(wrong(what, say::at_most_three_helpers()));
        } else if work.helpers >= self.people.len() && !self.people.is_empty() {
            faults.push(wrong(
                say::needs_more_helpers(work.helpers, self.people.len()),
                say::fewer_helpers(),
            ));
        }
        if work.on_the_road && (work.stall != StallNeed::No || !phase.rolls) {
            faults.push(wrong(
                say::road_test_rolls().to_owned(),
                say::road_test_without_stall(),
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
                    say::comes_while_apart(&road.what),
                    say::together_before_the_road(),
                ));
            }
            if !sitting.seated {
                if !first.rolls {
                    faults.push(Fault::new(
                        &place,
                        say::apart_without_stall(),
                        say::say_which_stall(),
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
            .filter_map(|stall| Some(say::held_by(&stall.name, stall.held.as_ref()?)))
            .collect();
        let is_held_apart = order.stands_in.filter(|_| !order.rolls);
        if let Some(stall) = is_held_apart {
            return Fault::new(
                place,
                say::apart_in_wrong_stall(&self.stalls[stall].name),
                say::make_it_roll_first(),
            );
        }
        if !held.is_empty() {
            return Fault::new(place, say::all_held(held.join(", ")), say::free_one());
        }
        let lifts = self.stalls.iter().filter_map(|stall| stall.lift.as_ref());
        let most = lifts.clone().filter_map(|lift| lift.carries_kg).max();
        if needs.contains(&StallNeed::Lift)
            && let (Some(weight), Some(most)) = (order.weight_kg, most)
            && weight > most
        {
            return Fault::new(place, say::too_heavy(weight, most), say::without_a_lift());
        }
        let highest = lifts.filter_map(|lift| lift.clears_mm).max();
        if needs.contains(&StallNeed::Lift)
            && let (Some(height), Some(highest)) = (order.height_mm, highest)
            && height > highest
        {
            return Fault::new(place, say::too_high(height, highest), say::without_a_lift());
        }
        let mut words: Vec<&str> = needs.iter().map(|need| need.said()).collect();
        words.dedup();
        Fault::new(
            place,
            say::no_stall_suits(words.join(say::then())),
            say::name_one_that_suits(),
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
                    say::stand_in_it(inside.join(say::and())),
                    say::one_vehicle_a_stall(),
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
