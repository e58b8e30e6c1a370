//! A lower bound: walks of one node a position, each node free to be passed more than
//! once or not at all, with a price on each node that draws walks towards passing it
//! exactly once.
//!
//! For any prices the cheapest walk, less the sum of the prices, costs no more than the
//! cheapest sequence. The walk from any position on bounds the rest of a sequence that
//! stands there, less the prices of the nodes still to come. Prices and costs are whole
//! parts of a unit, so that no rounding can make a bound too high.

use super::assign::worths;
use super::instance::Instance;
use plan::bits::Bits;

/// Parts of a unit of cost.
const PARTS: i64 = 64;
const FAR: i64 = i64::MAX / 4;

pub struct Bound<const W: usize> {
    nodes: usize,
    cost: Vec<i64>,
    price: Vec<i64>,
    /// For each position and node, the nodes that may follow.
    follow: Vec<Bits<W>>,
    /// The cheapest walk from the start to a position and node, and from there to the end.
    to_here: Vec<i64>,
    from_here: Vec<i64>,
}

impl<const W: usize> Bound<W> {
    pub fn new(instance: &Instance) -> Self {
        let nodes = instance.nodes;
        let all = 0..nodes;
        let earliest = |node: usize| {
            all.clone()
                .filter(|other| instance.before(*other, node))
                .count()
        };
        let latest = |node: usize| {
            nodes
                - 1
                - all
                    .clone()
                    .filter(|other| instance.before(node, *other))
                    .count()
        };
        let windows: Vec<_> = all
            .clone()
            .map(|node| earliest(node)..=latest(node))
            .collect();
        let between = |first: usize, second: usize| {
            all.clone()
                .any(|by| instance.before(first, by) && instance.before(by, second))
        };
        let mut after = vec![Bits::<W>::default(); nodes];
        for first in all.clone() {
            for second in all.clone() {
                if first != second && !instance.before(second, first) && !between(first, second) {
                    after[first].add(second);
                }
            }
        }
        let mut follow = vec![Bits::default(); nodes * nodes];
        for position in 0..nodes - 1 {
            let next: Bits<W> = all
                .clone()
                .filter(|node| windows[*node].contains(&(position + 1)))
                .collect();
            for node in all
                .clone()
                .filter(|node| windows[*node].contains(&position))
            {
                follow[position * nodes + node] = after[node].and(&next);
            }
        }
        let cost: Vec<i64> = all
            .clone()
            .flat_map(|from| all.clone().map(move |to| (from, to)))
            .map(|(from, to)| i64::from(instance.cost(from, to)) * PARTS)
            .collect();
        let mut bound = Self {
            nodes,
            price: first_prices(nodes, &cost, &after),
            cost,
            follow,
            to_here: vec![FAR; nodes * nodes],
            from_here: vec![FAR; nodes * nodes],
        };
        bound.walk_back();
        bound
    }

    /// The bound on the whole sequence.
    pub fn whole(&self) -> u32 {
        units(self.exact())
    }

    /// The bound on the whole sequence, in parts of a unit.
    pub fn exact(&self) -> i64 {
        self.from_here[0] - self.prices()
    }

    /// The prices, node by node.
    pub fn all_prices(&self) -> Vec<i64> {
        self.price.clone()
    }

    /// Puts other prices in their stead; any give a bound.
    pub fn start_from(&mut self, prices: Vec<i64>) {
        self.price = prices;
        self.walk_back();
    }

    /// The bound on what comes after a node at a position, whose prices are those of
    /// all nodes still to come.
    pub fn rest(&self, position: usize, node: usize, prices: i64) -> Option<u32> {
        let walk = self.from_here[position * self.nodes + node];
        (walk < FAR).then(|| units(walk - prices))
    }

    /// The price of a node.
    pub fn price(&self, node: usize) -> i64 {
        self.price[node]
    }

    /// The prices of all nodes but the first.
    pub fn prices(&self) -> i64 {
        self.price[1..].iter().sum()
    }

    /// The nodes that may follow a node at a position.
    pub fn follow(&self, position: usize, node: usize) -> &Bits<W> {
        &self.follow[position * self.nodes + node]
    }

    fn walk_back(&mut self) {
        let nodes = self.nodes;
        self.from_here.fill(FAR);
        self.from_here[nodes * nodes - 1] = 0;
        for position in (0..nodes - 1).rev() {
            for node in 0..nodes {
                let mut least = FAR;
                for next in self.follow[position * nodes + node].iter() {
                    let walk = self.from_here[(position + 1) * nodes + next]
                        + self.cost[node * nodes + next]
                        + self.price[next];
                    least = least.min(walk);
                }
                self.from_here[position * nodes + node] = least.min(FAR);
            }
        }
    }

    fn walk_on(&mut self) {
        let nodes = self.nodes;
        self.to_here.fill(FAR);
        self.to_here[0] = 0;
        for position in 0..nodes - 1 {
            for node in 0..nodes {
                let here = self.to_here[position * nodes + node];
                if here >= FAR {
                    continue;
                }
                for next in self.follow[position * nodes + node].iter() {
                    let walk = here + self.cost[node * nodes + next] + self.price[next];
                    let there = &mut self.to_here[(position + 1) * nodes + next];
                    *there = walk.min(*there);
                }
            }
        }
    }

    /// How often the cheapest walk passes each node.
    fn passes(&self) -> Vec<i64> {
        let nodes = self.nodes;
        let mut passes = vec![0; nodes];
        let mut node = 0;
        for position in 0..nodes - 1 {
            let here = self.from_here[position * nodes + node];
            let next = self.follow[position * nodes + node].iter().find(|next| {
                self.from_here[(position + 1) * nodes + next]
                    + self.cost[node * nodes + next]
                    + self.price[*next]
                    == here
            });
            let Some(next) = next else { break };
            passes[next] += 1;
            node = next;
        }
        passes
    }

    /// Moves the prices towards a higher bound, as long as `more` says so.
    pub fn raise(&mut self, shorter_than: u32, mut more: impl FnMut() -> bool) {
        let mut best = (self.exact(), self.price.clone());
        let mut reach = 1.0_f64;
        let mut since = 0;
        let mut direction = vec![0.0_f64; self.nodes];
        while more() && reach > 1e-4 && units(best.0) < shorter_than {
            let passes = self.passes();
            for (slope, passes) in direction.iter_mut().zip(&passes) {
                *slope = 0.7 * *slope + 0.3 * (*passes as f64 - 1.0);
            }
            direction[0] = 0.0;
            direction[self.nodes - 1] = 0.0;
            let square: f64 = direction.iter().map(|slope| slope * slope).sum();
            if square < 1e-9 {
                break;
            }
            let gap = (i64::from(shorter_than) * PARTS - self.exact()).max(PARTS) as f64;
            let step = reach * gap / square;
            #[allow(clippy::cast_possible_truncation, reason = "any price is a valid one")]
            for (price, slope) in self.price.iter_mut().zip(&direction) {
                *price += (step * slope) as i64;
            }
            self.walk_back();
            let now = self.exact();
            since += 1;
            if now > best.0 {
                best = (now, self.price.clone());
                since = 0;
            } else if since > 20 {
                reach *= 0.7;
                since = 0;
                self.price.clone_from(&best.1);
                direction.fill(0.0);
                self.walk_back();
            }
        }
        self.price = best.1;
        self.walk_back();
    }

    /// Takes out every step that no sequence shorter than this can make; answers
    /// how many are left.
    pub fn tighten(&mut self, shorter_than: u32) -> usize {
        self.walk_on();
        let nodes = self.nodes;
        let limit = (i64::from(shorter_than) - 1) * PARTS + self.prices();
        let mut left = 0;
        for position in 0..nodes - 1 {
            for node in 0..nodes {
                let here = self.to_here[position * nodes + node];
                let at = position * nodes + node;
                for next in self.follow[at].iter() {
                    let walk = here
                        + self.cost[node * nodes + next]
                        + self.price[next]
                        + self.from_here[(position + 1) * nodes + next];
                    if walk > limit {
                        self.follow[at].remove(next);
                    }
                }
                left += self.follow[at].len();
            }
        }
        self.walk_back();
        left
    }
}

/// Prices with which the bound is at least that of the cheapest assignment of followers:
/// what leaving and entering a node is worth is taken off where it is passed.
fn first_prices<const W: usize>(nodes: usize, cost: &[i64], after: &[Bits<W>]) -> Vec<i64> {
    let (leaving, entering) = worths(nodes, |from, to| {
        after[from].has(to).then(|| cost[from * nodes + to])
    });
    let mut price: Vec<_> = leaving.iter().zip(&entering).map(|(a, b)| -a - b).collect();
    price[0] = 0;
    price[nodes - 1] = 0;
    price
}

/// Whole units, rounded up, never below nothing.
fn units(parts: i64) -> u32 {
    u32::try_from(parts.max(0).div_euclid(PARTS) + i64::from(parts.max(0) % PARTS > 0))
        .unwrap_or(u32::MAX)
}
