//! Points that no plan can undercut.

use crate::floor::{Does, Floor, Takes};
use crate::place::{comes, expected_end};
use crate::ready::Ready;
use crate::windows::Minute;
use std::ops::Range;

/// The sum of three parts, none of which counts what another counts.
///
/// 1. Each order as if it were alone but for the vehicles that hold stalls now, with its helpers
///    at hand: so late it is at least.
/// 2. Of the others, those promised by some minute need so much of the time of the people who can
///    do it. Where that is more than these people have until then, promises break: the lightest
///    for the time that they free, the last one in part.
/// 3. Stalls that a vehicle has to be driven into.
pub(crate) fn bound(ready: &Ready) -> i64 {
    let floor = ready.floor;
    let rules = &floor.rules;
    let mut points = 0;
    let alone = late_alone(ready);
    points += alone.iter().sum::<i64>();
    let alone_late: Vec<bool> = alone.iter().map(|points| *points > 0).collect();
    let crowded = crowded(ready, &alone_late);
    points + crowded * (rules.broken + rules.late_minute) + rules.moved * moves(ready)
}

/// Points that being late costs each order at least, as if it were alone but for the vehicles that
/// hold stalls now.
pub(crate) fn late_alone(ready: &Ready) -> Vec<i64> {
    let free_from = free_from(ready);
    let all = 0..ready.floor.orders.len();
    all.map(|at| ready.late(at, alone(ready, at, &free_from)))
        .collect()
}

/// When each stall is free at the earliest: those that hold one now, as if they were alone.
fn free_from(ready: &Ready) -> Vec<Minute> {
    let floor = ready.floor;
    let mut free = vec![floor.now; floor.stalls.len()];
    for (at, sittings) in ready.sittings.iter().enumerate() {
        if let (Some(first), Some(stall)) = (sittings.first(), floor.orders[at].stands_in)
            && first.begun
            && first.seated
        {
            free[stall] = chain(ready, at, 0..first.end, floor.now);
        }
    }
    free
}

/// When an order is done if nobody is taken, and no stall but those that are held now.
fn alone(ready: &Ready, at: usize, free_from: &[Minute]) -> Minute {
    let floor = ready.floor;
    let arrives = floor.orders[at].arrives;
    let mut end = arrives.map_or(floor.now, |spread| comes(spread, floor.now));
    for sitting in &ready.sittings[at] {
        if sitting.seated && !sitting.begun {
            let way_is_free = |stall: &usize| {
                let crosses = &floor.stalls[*stall].crosses;
                let all = crosses.iter().chain([stall]).map(|one| free_from[*one]);
                all.max().unwrap_or(floor.now)
            };
            let own = floor.orders[at].stands_in;
            let first = sitting.stalls.iter().map(|stall| {
                if own == Some(*stall) {
                    floor.now
                } else {
                    way_is_free(stall)
                }
            });
            end = end.max(first.min().unwrap_or(end));
        }
        end = chain(ready, at, sitting.first..sitting.end, end);
    }
    end
}

/// When phases are done that begin at a minute, if nobody is taken.
fn chain(ready: &Ready, at: usize, phases: Range<usize>, from: Minute) -> Minute {
    let floor = ready.floor;
    let order = &floor.orders[at];
    let mut end = from;
    for number in phases {
        if number == 0 && order.running.is_some() {
            end = end.max(expected_end(ready, at));
            continue;
        }
        end = match &order.phases[number].does {
            Does::Work(work) => {
                let able = ready.able[at][number].iter();
                let done = able.map(|one| ready.done(&[*one], end, work.minutes.mean()));
                done.min().unwrap_or(end)
            }
            Does::Wait(wait) => match wait.takes {
                Takes::Minutes(spread) => end + spread.mean(),
                Takes::Comes(spread) => end.max(comes(spread, floor.now)),
            },
        };
    }
    end
}

/// The weight of promises that break at least since there is not enough time of some people.
fn crowded(ready: &Ready, alone_late: &[bool]) -> i64 {
    let floor = ready.floor;
    let mut groups: Vec<&Vec<usize>> = ready
        .able
        .iter()
        .flatten()
        .filter(|able| !able.is_empty())
        .collect();
    groups.sort_unstable();
    groups.dedup();
    let mut deadlines: Vec<Minute> = floor
        .orders
        .iter()
        .filter_map(|order| order.promise)
        .collect();
    deadlines.sort_unstable();
    deadlines.dedup();
    let mut worst = 0;
    for group in groups {
        for deadline in &deadlines {
            let time: i64 = group
                .iter()
                .map(|one| ready.hours[*one].open_between(floor.now, *deadline))
                .sum();
            let mut needs: Vec<(i64, i64)> = (0..floor.orders.len())
                .filter(|at| !alone_late[*at])
                .filter(|at| floor.orders[*at].promise.is_some_and(|by| by <= *deadline))
                .map(|at| (needed(ready, at, group), floor.orders[at].promise_weight))
                .filter(|(minutes, _)| *minutes > 0)
                .collect();
            let sum: i64 = needs.iter().map(|need| need.0).sum();
            // The lightest for its time first.
            needs.sort_by(|a, b| (a.1 * b.0).cmp(&(b.1 * a.0)));
            worst = worst.max(lightest(&needs, sum - time));
        }
    }
    worst
}

/// The least weight that frees so many minutes, the last one in part, in whole weights upward.
fn lightest(needs: &[(i64, i64)], mut excess: i64) -> i64 {
    let mut weight = 0;
    for (minutes, own) in needs {
        if excess <= 0 {
            break;
        }
        if *minutes <= excess {
            weight += own;
        } else {
            weight += (own * excess + minutes - 1) / minutes;
        }
        excess -= minutes;
    }
    weight
}

/// Minutes that an order needs of people of this group and of nobody else.
fn needed(ready: &Ready, at: usize, group: &[usize]) -> i64 {
    let order = &ready.floor.orders[at];
    let numbered = order.phases.iter().enumerate();
    numbered
        .filter(|(number, _)| *number > 0 || order.running.is_none())
        .filter(|(number, _)| {
            ready.able[at][*number]
                .iter()
                .all(|one| group.contains(one))
        })
        .filter_map(|(_, phase)| Some(phase.work()?.minutes.mean()))
        .sum()
}

/// Stalls that are driven into at least.
fn moves(ready: &Ready) -> i64 {
    let floor: &Floor = ready.floor;
    let mut moves = 0;
    for (order, sittings) in floor.orders.iter().zip(&ready.sittings) {
        let mut before: Vec<usize> = order.stands_in.into_iter().collect();
        for sitting in sittings.iter().filter(|sitting| sitting.seated) {
            let stays = sitting.begun || sitting.stalls.iter().any(|one| before.contains(one));
            moves += i64::from(!stays);
            before.clone_from(&sitting.stalls);
        }
    }
    moves
}
