//! Where moves are made and with what, what changing costs, and what follows from that for
//! every sequence.

use crate::blocks::NONE;
use crate::model::Model;

/// Where moves are made, with what, and what changes cost, in one direction.
pub(crate) struct Ground {
    pub place_of: Vec<usize>,
    pub tools_of: Vec<usize>,
    pub places: Changing,
    pub hands: Changing,
}

/// What changing from one place, or one set of tools, to another costs.
pub(crate) struct Changing {
    pub costs: Vec<Vec<u32>>,
    /// What a visit saves at least where it is left out of a way that came from elsewhere.
    saves: Vec<u32>,
    /// For each two, what a visit to the second adds at most where it comes between the first and
    /// whatever is next, other than the first.
    adds: Vec<Vec<u32>>,
    /// The same where nothing was in hand, or no place is known.
    adds_at_first: Vec<u32>,
    /// Whether no way is dearer for leaving out a visit.
    may_leave_out: Vec<bool>,
}

impl Ground {
    /// The way out, or the only way.
    pub(crate) fn new(model: &Model, place_of: &[usize], tools_of: &[usize]) -> Self {
        Self {
            place_of: place_of.to_vec(),
            tools_of: tools_of.to_vec(),
            places: Changing::new(model.place_costs.clone()),
            hands: Changing::new(model.tool_costs.clone()),
        }
    }

    /// The way back, read from its end.
    pub(crate) fn back(model: &Model) -> Self {
        Self {
            place_of: model.place_of.clone(),
            tools_of: model.tools_of.clone(),
            places: Changing::new(transposed(&model.place_costs)),
            hands: Changing::new(transposed(&model.tool_costs)),
        }
    }
}

/// What a change costs; from or to none at all it costs nothing.
pub(crate) fn change(costs: &[Vec<u32>], from: usize, to: usize) -> u32 {
    if from == NONE || to == NONE {
        return 0;
    }
    costs[from][to]
}

fn transposed(costs: &[Vec<u32>]) -> Vec<Vec<u32>> {
    let all = 0..costs.len();
    let to = |to: usize| costs.iter().map(|from| from[to]).collect();
    all.map(to).collect()
}

impl Changing {
    fn new(costs: Vec<Vec<u32>>) -> Self {
        let all = || 0..costs.len();
        let others = |this: usize| all().filter(move |other| *other != this);
        // Between two others, the same twice included, or last of all.
        let saves = |this: usize| {
            let from = |x: usize| {
                let to = |y: usize| (costs[x][this] + costs[this][y]).saturating_sub(costs[x][y]);
                let between: Vec<u32> = others(this).map(to).collect();
                between.into_iter().chain([costs[x][this]])
            };
            others(this).flat_map(from).min().unwrap_or(0)
        };
        let adds = |from: usize, this: usize| {
            let next = others(this).filter(|next| *next != from);
            let added = next.map(|next| {
                (costs[from][this] + costs[this][next]).saturating_sub(costs[from][next])
            });
            added.max().unwrap_or(0).max(costs[from][this])
        };
        let by_way_of = |this: usize, x: usize, y: usize| costs[x][this] + costs[this][y];
        let may_leave_out =
            |this: usize| all().all(|x| all().all(|y| costs[x][y] <= by_way_of(this, x, y)));
        let adds_at_first = |this: usize| others(this).map(|next| costs[this][next]).max();
        Self {
            saves: all().map(saves).collect(),
            adds: all()
                .map(|from| all().map(|this| adds(from, this)).collect())
                .collect(),
            adds_at_first: all().map(|this| adds_at_first(this).unwrap_or(0)).collect(),
            may_leave_out: all().map(may_leave_out).collect(),
            costs,
        }
    }

    /// What a change costs.
    pub(crate) fn cost(&self, from: usize, to: usize) -> u32 {
        change(&self.costs, from, to)
    }

    /// Whether a visit here, now, adds no more than leaving out a later one saves, whatever is
    /// next; the next is not where one comes from.
    pub(crate) fn now_as_later(&self, from: usize, this: usize) -> bool {
        let adds = match from {
            NONE => self.adds_at_first[this],
            from => self.adds[from][this],
        };
        adds <= self.saves[this]
    }

    /// Whether no way is dearer for leaving out a visit here.
    pub(crate) fn may_leave_out(&self, this: usize) -> bool {
        self.may_leave_out[this]
    }
}
