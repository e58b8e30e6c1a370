//! The cheapest way to give each node one that follows it, circles allowed: what it
//! finds for leaving and entering each node is where the prices of the bound start.

/// Far more than any sequence costs, far less than what overflows.
const NEVER: i64 = 1 << 42;

/// What leaving and what entering each node is worth: no step from one node to another
/// costs less than both together, and the sum of all is as high as it can be. Nothing
/// leaves the last node or enters the first.
pub fn worths(nodes: usize, cost: impl Fn(usize, usize) -> Option<i64>) -> (Vec<i64>, Vec<i64>) {
    let cost = |from: usize, to: usize| cost(from, to).unwrap_or(NEVER);
    let mut leaving = vec![0; nodes];
    let mut entering = vec![0; nodes];
    // The node that each one follows; at the first, the one that is being placed.
    let mut follows = vec![None; nodes];
    for from in 0..nodes - 1 {
        follows[0] = Some(from);
        let mut least = vec![i64::MAX; nodes];
        let mut by = vec![0; nodes];
        let mut seen = vec![false; nodes];
        let mut at = 0;
        while let Some(before) = follows[at] {
            seen[at] = true;
            let mut nearest = (i64::MAX, 0);
            for to in (1..nodes).filter(|to| !seen[*to]) {
                let more = cost(before, to) - leaving[before] - entering[to];
                if more < least[to] {
                    (least[to], by[to]) = (more, at);
                }
                nearest = nearest.min((least[to], to));
            }
            for to in 0..nodes {
                if seen[to] {
                    if let Some(before) = follows[to] {
                        leaving[before] += nearest.0;
                    }
                    entering[to] -= nearest.0;
                } else if least[to] < i64::MAX {
                    least[to] -= nearest.0;
                }
            }
            at = nearest.1;
        }
        while at != 0 {
            follows[at] = follows[by[at]];
            at = by[at];
        }
    }
    entering[0] = 0;
    (leaving, entering)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn worths_add_up_to_the_cheapest_assignment() {
        // From row to column; by hand: 0 to 2, 1 to 3, 2 to 1 costs 1 + 2 + 3.
        let cost = [[0, 4, 1, 9], [0, 0, 5, 2], [0, 3, 0, 4], [0, 0, 0, 0]];
        let (leaving, entering) = worths(4, |from, to| (from != to).then_some(cost[from][to]));
        let sum: i64 = leaving.iter().chain(&entering).sum();
        assert_eq!(sum, 6);
        for from in 0..3 {
            for to in (1..4).filter(|to| *to != from) {
                assert!(leaving[from] + entering[to] <= cost[from][to]);
            }
        }
    }
}
