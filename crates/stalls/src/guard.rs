//! No deadlock: a vehicle comes in only where all that were begun can still get done.
//!
//! Vehicles hold stalls and places outside, and each waits for a stall that may be held by
//! another. A state is safe if they can be finished one after another while all the others stand
//! still. From a safe state there is always a move to a safe state: the first move of the one that
//! can be finished. So whoever makes only moves to safe states never gets stuck.

/// Where a vehicle is.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub(crate) enum Where {
    /// Where the customer left it, or gone.
    Street,
    Stall(usize),
    /// Outside, between two stalls.
    Yard,
}

/// A vehicle: where it is, and the stalls that suit each stretch that is still to come.
#[derive(Clone, Debug, PartialEq, Eq)]
pub(crate) struct Vehicle<'s> {
    pub(crate) at: Where,
    pub(crate) needs: Vec<&'s [usize]>,
}

/// Whether a stall can be reached or left: nobody but this vehicle stands in the way.
pub(crate) fn way_is_clear(
    crosses: &[Vec<usize>],
    held: &[Option<usize>],
    stall: usize,
    vehicle: usize,
) -> bool {
    (crosses[stall].iter()).all(|one| held[*one].is_none_or(|by| by == vehicle))
}

/// Whether all that are in stalls or outside can be finished one after another.
pub(crate) fn is_safe(crosses: &[Vec<usize>], vehicles: &[Vehicle]) -> bool {
    let mut held: Vec<Option<usize>> = vec![None; crosses.len()];
    for (at, vehicle) in vehicles.iter().enumerate() {
        if let Where::Stall(stall) = vehicle.at {
            held[stall] = Some(at);
        }
    }
    let mut left: Vec<usize> = (0..vehicles.len())
        .filter(|at| vehicles[*at].at != Where::Street)
        .collect();
    while !left.is_empty() {
        let can = |one: &usize| can_finish(crosses, &held, *one, &vehicles[*one]);
        let Some(at) = left.iter().position(can) else {
            return false;
        };
        let gone = left.swap_remove(at);
        for by in &mut held {
            if *by == Some(gone) {
                *by = None;
            }
        }
    }
    true
}

/// Whether one vehicle can go through all its stretches and leave, with the others standing.
fn can_finish(
    crosses: &[Vec<usize>],
    held: &[Option<usize>],
    number: usize,
    vehicle: &Vehicle,
) -> bool {
    let clear = |stall: usize| way_is_clear(crosses, held, stall, number);
    let free = |stall: usize| held[stall].is_none_or(|by| by == number);
    let mut at: Vec<Option<usize>> = match vehicle.at {
        Where::Stall(stall) => vec![Some(stall)],
        Where::Yard | Where::Street => vec![None],
    };
    for need in &vehicle.needs {
        let can_leave = at.iter().any(|from| from.is_none_or(clear));
        let reached = need.iter().copied().filter(|stall| {
            at.contains(&Some(*stall)) || (can_leave && free(*stall) && clear(*stall))
        });
        at = reached.map(Some).collect();
        if at.is_empty() {
            return false;
        }
    }
    at.iter().any(|from| from.is_none_or(clear))
}

#[cfg(test)]
mod tests {
    use super::{Vehicle, Where, is_safe, way_is_clear};
    use std::collections::BTreeSet;

    /// A small shop: what each stall crosses, places outside, and what each vehicle needs.
    #[derive(Clone, Debug)]
    struct Small {
        crosses: Vec<Vec<usize>>,
        yard: usize,
        needs: Vec<Vec<Vec<usize>>>,
    }

    /// Where each is, and how many of its stretches were begun; gone when on the street after all.
    type State = Vec<(Where, usize)>;

    impl Small {
        fn held(&self, state: &State) -> Vec<Option<usize>> {
            let mut held = vec![None; self.crosses.len()];
            for (at, (place, _)) in state.iter().enumerate() {
                if let Where::Stall(stall) = place {
                    held[*stall] = Some(at);
                }
            }
            held
        }

        fn moves(&self, state: &State, guarded: bool) -> Vec<State> {
            let held = self.held(state);
            let outside = state.iter().filter(|one| one.0 == Where::Yard).count();
            let mut found = Vec::new();
            for (at, (place, begun)) in state.iter().enumerate() {
                let needs = &self.needs[at];
                if *place == Where::Street && *begun == needs.len() {
                    continue;
                }
                let out = match place {
                    Where::Stall(stall) => way_is_clear(&self.crosses, &held, *stall, at),
                    _ => true,
                };
                let mut to = Vec::new();
                if *begun == needs.len() {
                    if out {
                        to.push((Where::Street, *begun));
                    }
                } else {
                    for stall in &needs[*begun] {
                        let same = *place == Where::Stall(*stall);
                        let free = held[*stall].is_none()
                            && out
                            && way_is_clear(&self.crosses, &held, *stall, at);
                        if same || free {
                            to.push((Where::Stall(*stall), begun + 1));
                        }
                    }
                    if matches!(place, Where::Stall(_)) && out && outside < self.yard {
                        to.push((Where::Yard, *begun));
                    }
                }
                for next in to {
                    let mut state = state.clone();
                    state[at] = next;
                    if !guarded || self.safe(&state) {
                        found.push(state);
                    }
                }
            }
            found
        }

        fn safe(&self, state: &State) -> bool {
            let vehicles: Vec<Vehicle> = state
                .iter()
                .zip(&self.needs)
                .map(|((at, begun), needs)| Vehicle {
                    at: *at,
                    needs: needs[*begun..].iter().map(Vec::as_slice).collect(),
                })
                .collect();
            is_safe(&self.crosses, &vehicles)
        }

        /// How many states can be reached, and whether one of them has no way on.
        fn explore(&self, guarded: bool) -> (usize, bool) {
            let start: State = vec![(Where::Street, 0); self.needs.len()];
            let mut seen = BTreeSet::from([start.clone()]);
            let mut open = vec![start];
            let mut stuck = false;
            while let Some(state) = open.pop() {
                let next = self.moves(&state, guarded);
                let all_gone = state
                    .iter()
                    .zip(&self.needs)
                    .all(|((at, begun), needs)| *at == Where::Street && *begun == needs.len());
                stuck |= next.is_empty() && !all_gone;
                for state in next {
                    if seen.insert(state.clone()) {
                        open.push(state);
                    }
                }
            }
            (seen.len(), stuck)
        }
    }

    /// Every small shop: two or three stalls, each way to cross, few places outside, three
    /// vehicles of which each needs one or two stretches.
    fn all_small() -> Vec<Small> {
        let mut all = Vec::new();
        let layouts: [Vec<Vec<usize>>; 5] = [
            vec![vec![], vec![]],
            vec![vec![], vec![0]],
            vec![vec![], vec![], vec![]],
            vec![vec![], vec![0], vec![0]],
            vec![vec![], vec![0], vec![0, 1]],
        ];
        for crosses in layouts {
            let stalls = crosses.len();
            let mut kinds: Vec<Vec<Vec<usize>>> = Vec::new();
            for first in 0..stalls {
                kinds.push(vec![vec![first]]);
                for second in 0..stalls {
                    kinds.push(vec![vec![first], vec![second]]);
                }
            }
            kinds.push(vec![(0..stalls).collect(), vec![0]]);
            for one in 0..kinds.len() {
                for two in one..kinds.len() {
                    for three in two..kinds.len() {
                        for yard in 0..=1 {
                            all.push(Small {
                                crosses: crosses.clone(),
                                yard,
                                needs: vec![
                                    kinds[one].clone(),
                                    kinds[two].clone(),
                                    kinds[three].clone(),
                                ],
                            });
                        }
                    }
                }
            }
        }
        all
    }

    #[test]
    fn no_small_shop_that_is_guarded_gets_stuck() {
        let (mut would, mut states) = (0, 0);
        let all = all_small();
        for small in &all {
            let (reached, stuck) = small.explore(true);
            assert!(!stuck, "{small:?}");
            states += reached;
            would += usize::from(small.explore(false).1);
        }
        println!(
            "{} shops, {states} states; without the guard {would} get stuck",
            all.len()
        );
        assert!(would > 100, "the guard is needed: {would}");
    }
}
