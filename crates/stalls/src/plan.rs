//! Plans of a floor: made, made anew, and looked at as time passes.

use crate::bound::bound;
use crate::check::Fault;
use crate::climb::climb;
use crate::days::{Cost, Days, Told, day_of};
use crate::floor::{Floor, Order, Running};
use crate::place::{Placed, Placer, Slot, Stay};
use crate::ready::Ready;
use crate::search::{Best, Genes};
use crate::windows::{Minute, Windows};
use std::collections::BTreeMap;

/// Who works where and when.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Plan {
    /// What it was made for.
    pub floor: Floor,
    /// Each phase in its place, in the sequence of their starts.
    pub placed: Vec<Placed>,
    /// Each vehicle in its stalls, in the sequence of their starts.
    pub stays: Vec<Stay>,
    /// When each order is ready.
    pub ends: Vec<Minute>,
    /// Orders in the sequence in which they are begun.
    pub sequence: Vec<usize>,
    /// Orders that are not done within the hours given.
    pub beyond: Vec<usize>,
    pub cost: Cost,
    /// No plan costs fewer points.
    pub bound: i64,
    /// How many plans were looked at.
    pub looked_at: u64,
}

impl Plan {
    /// By how much of its points it may miss the best: 0 is proven to be the best.
    pub fn gap(&self) -> f64 {
        #[allow(clippy::cast_precision_loss, reason = "a share of points")]
        let share = |part: i64, all: i64| part as f64 / all.max(1) as f64;
        share((self.cost.points - self.bound).max(0), self.cost.points)
    }

    /// A phase in its place.
    pub fn of(&self, order: usize, phase: usize) -> Option<&Placed> {
        (self.placed.iter()).find(|one| one.order == order && one.phase == phase)
    }
}

/// Plans a floor.
///
/// Broken promises weigh most, then minutes late, then lifts on which nobody works, then moves,
/// all by [`crate::Rules`]. What has begun stays where it is and with whom. Work is done by one
/// crew without anything else between: it stops for a break or for the night and goes on at the
/// next opening, but it gives way to no other vehicle before it is done.
///
/// With a `previous` plan, each phase for which somebody was told another person, stall or day
/// costs points too; and if nothing has happened but that time has passed as planned, the
/// previous plan is the answer.
///
/// `go_on` is asked before each plan that is looked at, with how many were looked at; the first is
/// always made. The same seed and the same answers give the same plan. This crate has no clock:
/// a limit of time is the caller's.
///
/// # Errors
///
/// Everything that keeps the floor from being planned ([`Floor::faults`]).
///
/// ```
/// use stalls::*;
/// let day = Windows::new([(480, 720), (750, 1020)]);
/// let floor = Floor {
///     now: 480,
///     opening: day.clone(),
///     stalls: vec![Stall { name: "1".into(), lift: Some(Lift::default()), ..Stall::default() }],
///     people: vec![Person { name: "Ana".into(), hours: day, ..Person::default() }],
///     orders: vec![Order {
///         name: "van".into(),
///         promise: Some(1000),
///         phases: vec![Phase {
///             what: "front brakes".into(),
///             does: Does::Work(Work {
///                 skill: None,
///                 minutes: Spread::new(60, 90, 120),
///                 stall: StallNeed::Lift,
///                 helpers: 0,
///                 on_the_road: false,
///             }),
///             rolls: true,
///         }],
///         ..Order::default()
///     }],
///     ..Floor::default()
/// };
/// let plan = plan(&floor, None, 1, &mut |looked_at| looked_at < 100)?;
/// assert_eq!((plan.placed[0].from, plan.placed[0].to), (480, 570));
/// assert_eq!(plan.gap(), 0.0);
/// # Ok::<(), Vec<Fault>>(())
/// ```
pub fn plan(
    floor: &Floor,
    previous: Option<&Plan>,
    seed: u64,
    go_on: &mut dyn FnMut(u64) -> bool,
) -> Result<Plan, Vec<Fault>> {
    let faults = floor.faults();
    if !faults.is_empty() {
        return Err(faults);
    }
    if let Some(previous) = previous
        && previous.has_no_news(floor)
    {
        return Ok(previous.carried_to(floor));
    }
    let ready = Ready::new(floor);
    let old = previous.map(|previous| previous.told(floor));
    let told = old.as_ref().map_or(Vec::new(), |(told, _)| told.clone());
    let mut days = Days::new(&ready, told);
    let mut first = Vec::new();
    if let Some((told, starts)) = &old {
        first.push(as_told(&ready, &days.placer, told, starts));
    }
    first.extend(days.first());
    let bound = bound(&ready);
    let told_first = old.is_some().then(|| first[0].clone());
    let mut best = climb(&mut days, &first, seed, enough(bound), go_on);
    if let (Some(best), Some(told)) = (&mut best, &told_first) {
        keep_to(told, best, &mut days);
    }
    let looked_at = best.as_ref().map_or(0, |best| best.looked_at);
    if let Some(best) = best {
        days.score(&best.genes, i64::MAX);
    }
    Ok(finished(&ready, &mut days, bound, looked_at))
}

/// So many plans are looked at after the caller's limit, to go back to what was told.
const MOST_BACK: usize = 100;

/// Goes back to who and where was told before wherever that is no worse.
fn keep_to(told: &Genes, best: &mut Best, days: &mut Days) {
    let changed =
        |at: &usize| told.choices[*at] != 0 && told.choices[*at] != best.genes.choices[*at];
    let changed: Vec<usize> = (0..told.choices.len()).filter(changed).collect();
    for at in changed.into_iter().take(MOST_BACK) {
        let was = best.genes.choices[at];
        best.looked_at += 1;
        best.genes.choices[at] = told.choices[at];
        let score = days.score(&best.genes, i64::MAX);
        if score <= best.score {
            best.score = score;
        } else {
            best.genes.choices[at] = was;
        }
    }
}

/// A score that only a plan at the bound has.
fn enough(bound: i64) -> i64 {
    bound.saturating_mul(1_000_000)
}

pub(crate) fn finished(ready: &Ready, days: &mut Days, bound: i64, looked_at: u64) -> Plan {
    let cost = days.cost();
    let mut placed: Vec<Placed> = days.placer.room.slots.iter().map(as_placed).collect();
    placed.sort_by_key(|one| (one.from, one.order, one.phase));
    let mut stays = days.placer.room.stays.clone();
    stays.sort_by_key(|stay| (stay.from, stay.order));
    let ends = days.ends.clone();
    let works_late = |order: &usize| {
        let mut own = placed.iter().filter(|one| one.order == *order);
        own.any(|one| !one.people.is_empty() && one.to > ready.beyond)
    };
    Plan {
        floor: ready.floor.clone(),
        beyond: (0..ends.len()).filter(works_late).collect(),
        sequence: sequence_of(&placed),
        placed,
        stays,
        ends,
        cost,
        bound: bound.min(cost.points),
        looked_at,
    }
}

fn sequence_of(placed: &[Placed]) -> Vec<usize> {
    let mut seen = Vec::new();
    for one in placed {
        if !seen.contains(&one.order) {
            seen.push(one.order);
        }
    }
    seen
}

fn as_placed(slot: &Slot) -> Placed {
    Placed {
        order: slot.order,
        phase: slot.phase,
        from: slot.from,
        to: slot.to,
        people: slot.crew.people().to_vec(),
        stall: slot.stall,
    }
}

/// Genes that place everything as somebody was told; what is new comes last.
fn as_told(
    ready: &Ready,
    placer: &Placer,
    told: &[Vec<Option<Told>>],
    starts: &[Vec<Option<Minute>>],
) -> Genes {
    let mut choices = vec![0; placer.choices()];
    let mut keyed = Vec::new();
    for (order, sittings) in ready.sittings.iter().enumerate() {
        let mut last = Minute::MIN;
        for sitting in sittings {
            let start = starts[order][sitting.first]
                .unwrap_or(Minute::MAX)
                .max(last);
            last = start;
            keyed.push((start, order));
            for phase in sitting.first..sitting.end {
                let Some(told) = told[order][phase] else {
                    continue;
                };
                let place = |list: &[usize], one: Option<usize>| {
                    let at = list.iter().position(|other| Some(*other) == one);
                    at.map_or(0, |at| u8::try_from(at + 1).unwrap_or(0))
                };
                let at = placer.choice(order, phase);
                choices[at] = place(&ready.able[order][phase], told.person);
                if phase == sitting.first && sitting.seated {
                    choices[at + 1] = place(&sitting.stalls, told.stall);
                }
            }
        }
    }
    keyed.sort_unstable();
    Genes {
        sequence: (keyed.into_iter())
            .map(|(_, order)| u16::try_from(order).expect("fewer than 65,536 orders"))
            .collect(),
        choices,
    }
}

/// What each phase of a floor was told before, and when it was to start.
type ToldBefore = (Vec<Vec<Option<Told>>>, Vec<Vec<Option<Minute>>>);

impl Plan {
    /// What was told about the phases of another floor: phases are the same if they have the
    /// same name and as many come after them in the order of the same name.
    fn told(&self, floor: &Floor) -> ToldBefore {
        let by_name: BTreeMap<&str, usize> = self
            .floor
            .orders
            .iter()
            .enumerate()
            .map(|(at, order)| (order.name.as_str(), at))
            .collect();
        let place = |names: Vec<&str>, name: &str| names.iter().position(|one| *one == name);
        let person = |old: usize| {
            let names = floor.people.iter().map(|one| one.name.as_str()).collect();
            place(names, &self.floor.people[old].name)
        };
        let stall = |old: usize| {
            let names = floor.stalls.iter().map(|one| one.name.as_str()).collect();
            place(names, &self.floor.stalls[old].name)
        };
        let mut told = Vec::new();
        let mut starts = Vec::new();
        for order in &floor.orders {
            let old = by_name.get(order.name.as_str()).copied();
            let before = |phase: usize| -> Option<&Placed> {
                let old = old?;
                let phases = &self.floor.orders[old].phases;
                let at = (phases.len() + phase).checked_sub(order.phases.len())?;
                let same = phases.get(at)?.what == order.phases[phase].what;
                same.then(|| self.of(old, at)).flatten()
            };
            let phases = 0..order.phases.len();
            told.push(
                phases
                    .clone()
                    .map(|phase| {
                        let before = before(phase)?;
                        Some(Told {
                            person: before.people.first().and_then(|one| person(*one)),
                            stall: before.stall.and_then(stall),
                            day: day_of(&floor.opening, before.from),
                        })
                    })
                    .collect(),
            );
            starts.push(
                phases
                    .map(|phase| before(phase).map(|one| one.from))
                    .collect(),
            );
        }
        (told, starts)
    }

    /// What the floor should look like at a minute, if all goes as planned until then.
    pub fn floor_at(&self, now: Minute) -> Floor {
        let orders = (0..self.floor.orders.len())
            .filter_map(|at| self.order_at(at, now))
            .collect();
        Floor {
            now,
            orders,
            ..self.floor.clone()
        }
    }

    fn order_at(&self, at: usize, now: Minute) -> Option<Order> {
        let order = &self.floor.orders[at];
        let own: Vec<&Placed> = self.placed.iter().filter(|one| one.order == at).collect();
        let done = own.iter().filter(|one| one.to <= now).count();
        if done == order.phases.len() {
            return None;
        }
        let runs = own
            .iter()
            .find(|one| one.phase == done && one.from < now)
            .map(|one| Running {
                since: one.from,
                people: one.people.clone(),
            });
        let stay = (self.stays.iter()).find(|stay| {
            stay.order == at && stay.from < now && (stay.first..stay.end).contains(&done)
        });
        let rolled = done
            .checked_sub(1)
            .map_or(order.rolls, |last| order.phases[last].rolls);
        let not_moved = order.stands_in.filter(|stall| {
            let mut stays = self.stays.iter();
            let left = |stay: &Stay| stay.order == at && stay.from < now;
            let taken = |stay: &Stay| stay.stall == *stall && stay.from < now;
            !stays.any(|stay| left(stay) || taken(stay))
        });
        Some(Order {
            arrives: order.arrives.filter(|spread| spread.mean() > now),
            stands_in: stay.map(|stay| stay.stall).or(not_moved),
            rolls: rolled && !(runs.is_some() && stay.is_some() && !order.phases[done].rolls),
            running: runs,
            phases: order.phases[done..].to_vec(),
            ..order.clone()
        })
    }

    /// Whether a floor is what it should be by now.
    fn has_no_news(&self, floor: &Floor) -> bool {
        let end = |floor: &Floor| floor.opening.end().unwrap_or(floor.now);
        let end = end(floor).min(end(&self.floor));
        if floor.now < self.floor.now || self.floor.now > end {
            return false;
        }
        let now = floor.now;
        let within = |windows: &Windows| windows.within(now, end);
        let cut = |mut floor: Floor| {
            floor.opening = within(&floor.opening);
            for person in &mut floor.people {
                person.hours = person.hours.within(floor.now, end);
                person.away = person.away.within(floor.now, end);
            }
            floor
        };
        cut(self.floor_at(floor.now)) == cut(floor.clone())
    }

    /// What is left of it for a later floor: orders by their names, without the phases that are
    /// done. Who and where stay, and so does the sequence; times are not looked at.
    #[must_use]
    pub fn carried_to(&self, floor: &Floor) -> Plan {
        if *floor == self.floor {
            return self.clone();
        }
        let mut order_of = BTreeMap::new();
        let mut ends = vec![floor.now; floor.orders.len()];
        for (at, order) in self.floor.orders.iter().enumerate() {
            let new = floor.orders.iter().position(|one| one.name == order.name);
            let before = order.phases.len();
            let done = new.and_then(|new| before.checked_sub(floor.orders[new].phases.len()));
            if let (Some(new), Some(done)) = (new, done) {
                order_of.insert(at, (new, done));
                ends[new] = self.ends[at];
            }
        }
        let placed = self.placed.iter().filter_map(|one| {
            let (order, done) = *order_of.get(&one.order)?;
            let phase = one.phase.checked_sub(done)?;
            Some(Placed {
                order,
                phase,
                ..one.clone()
            })
        });
        let stays = self.stays.iter().filter_map(|stay| {
            let (order, done) = *order_of.get(&stay.order)?;
            (stay.end > done).then(|| Stay {
                order,
                first: stay.first.saturating_sub(done),
                end: stay.end - done,
                was_there: stay.was_there || stay.from < floor.now,
                ..*stay
            })
        });
        let in_new = |all: &[usize]| -> Vec<usize> {
            all.iter()
                .filter_map(|at| Some(order_of.get(at)?.0))
                .collect()
        };
        Plan {
            floor: floor.clone(),
            placed: placed.collect(),
            stays: stays.collect(),
            ends,
            beyond: in_new(&self.beyond),
            sequence: in_new(&self.sequence),
            cost: self.cost,
            bound: self.bound,
            looked_at: self.looked_at,
        }
    }
}
