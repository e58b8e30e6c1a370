//! A search in layers over what has been done and where one stands.
//!
//! Every way from start to end takes the same number of steps, so the states after
//! each step form a layer. States that cannot beat a limit are dropped, equal states
//! are met once at their least cost, and a layer may be cut to its most promising
//! states: what was cut is remembered by its least bound, so that an uncut pass is a
//! proof and a cut one still gives an honest gap.

use rustc_hash::FxHashMap;
use std::hash::Hash;

/// A problem whose ways all take the same number of steps.
pub trait Layered {
    /// What has been done and where one stands.
    type State: Clone + Eq + Hash;

    /// How many steps every way takes.
    fn steps(&self) -> usize;

    /// Where a way may start, and what starting there costs.
    fn starts(&mut self) -> Vec<(Self::State, u32)>;

    /// Adds every step that may follow.
    fn follow(&mut self, state: &Self::State, into: &mut Vec<Next<Self::State>>);

    /// What the rest of the way costs at least, the end included; nothing if it is
    /// known that there is no rest.
    fn bound(&mut self, state: &Self::State) -> Option<u32>;

    /// What ending here costs.
    fn ending(&mut self, state: &Self::State) -> u32;
}

/// One step that may follow.
#[derive(Debug, Clone)]
pub struct Next<S> {
    /// What is done.
    pub label: usize,
    /// What it costs.
    pub cost: u32,
    /// Where it leads.
    pub state: S,
}

/// The cheapest way found to one last state.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Way<S> {
    /// The last state.
    pub state: S,
    /// What the way costs, start and end included.
    pub cost: u32,
    /// What is done, in sequence.
    pub labels: Vec<usize>,
}

/// What one pass found.
#[derive(Debug, Clone)]
pub struct Outcome<S> {
    /// The cheapest way to each last state below the limit, cheapest first.
    pub ways: Vec<Way<S>>,
    /// The least bound of anything cut because a layer was too wide or the budget
    /// was spent; nothing when the pass is a proof.
    pub cut: Option<u32>,
}

impl<S> Outcome<S> {
    /// What the cheapest way costs that was found.
    #[must_use]
    pub fn cheapest(&self) -> Option<u32> {
        self.ways.first().map(|way| way.cost)
    }

    /// What any way costs at least, whether found or not, when only those below a limit were
    /// looked for.
    #[must_use]
    pub fn least(&self, limit: u32) -> u32 {
        let found = self.cheapest().unwrap_or(limit);
        self.cut.map_or(found, |cut| cut.min(found))
    }
}

struct Entry<S> {
    state: S,
    cost: u32,
    bound: u32,
    parent: usize,
    label: usize,
}

/// Searches once, keeping at most `width` states a layer and only those whose bound
/// lies below `limit`; each state expanded takes one from `budget`.
pub fn pass<L: Layered>(
    problem: &mut L,
    width: usize,
    limit: u32,
    budget: &mut u64,
) -> Outcome<L::State> {
    let mut cut: Option<u32> = None;
    let mut first = Layer::default();
    for (state, cost) in problem.starts() {
        first.offer(problem, state, cost, 0, 0, limit);
    }
    let mut layers = vec![first.entries];
    let mut next = Vec::new();
    for _ in 0..problem.steps() {
        let mut layer = Layer::default();
        let last = layers.last().map_or(&[][..], Vec::as_slice);
        let room = usize::try_from(*budget).unwrap_or(usize::MAX);
        for (parent, entry) in last.iter().take(room).enumerate() {
            problem.follow(&entry.state, &mut next);
            for Next { label, cost, state } in next.drain(..) {
                let cost = entry.cost.saturating_add(cost);
                layer.offer(problem, state, cost, parent, label, limit);
            }
        }
        for entry in last.iter().skip(room) {
            lower(&mut cut, entry.bound);
        }
        *budget = budget.saturating_sub(last.len() as u64);
        let mut entries = layer.entries;
        if entries.len() > width {
            entries.sort_by_key(|entry| (entry.bound, u32::MAX - entry.cost));
            lower(&mut cut, entries[width].bound);
            entries.truncate(width);
            entries.shrink_to_fit();
        }
        layers.push(entries);
    }
    let mut ways: Vec<_> = layers
        .last()
        .map_or(&[][..], Vec::as_slice)
        .iter()
        .enumerate()
        .map(|(at, entry)| Way {
            state: entry.state.clone(),
            cost: entry.cost.saturating_add(problem.ending(&entry.state)),
            labels: trace(&layers, at),
        })
        .filter(|way| way.cost < limit)
        .collect();
    ways.sort_by_key(|way| way.cost);
    Outcome { ways, cut }
}

fn lower(least: &mut Option<u32>, bound: u32) {
    *least = Some(least.map_or(bound, |known| known.min(bound)));
}

struct Layer<S> {
    entries: Vec<Entry<S>>,
    places: FxHashMap<S, usize>,
}

impl<S> Default for Layer<S> {
    fn default() -> Self {
        Self {
            entries: Vec::new(),
            places: FxHashMap::default(),
        }
    }
}

impl<S: Clone + Eq + Hash> Layer<S> {
    fn offer<L: Layered<State = S>>(
        &mut self,
        problem: &mut L,
        state: S,
        cost: u32,
        parent: usize,
        label: usize,
        limit: u32,
    ) {
        if let Some(&at) = self.places.get(&state) {
            let known = &mut self.entries[at];
            if cost < known.cost {
                known.bound -= known.cost - cost;
                (known.cost, known.parent, known.label) = (cost, parent, label);
            }
            return;
        }
        let Some(rest) = problem.bound(&state) else {
            return;
        };
        let bound = cost.saturating_add(rest);
        if bound < limit {
            self.places.insert(state.clone(), self.entries.len());
            self.entries.push(Entry {
                state,
                cost,
                bound,
                parent,
                label,
            });
        }
    }
}

fn trace<S>(layers: &[Vec<Entry<S>>], at: usize) -> Vec<usize> {
    let mut labels = Vec::with_capacity(layers.len());
    let mut at = at;
    for layer in layers[1..].iter().rev() {
        labels.push(layer[at].label);
        at = layer[at].parent;
    }
    labels.reverse();
    labels
}
