//! Sequential ordering instances in TSPLIB's form.

use anyhow::{Context, Result, bail, ensure};

/// The most nodes that are read; the largest published instance has 380.
pub const MOST_NODES: usize = 512;

/// Costs between nodes, and which must come before which. The first node comes first
/// and the last node last.
#[derive(Debug, Clone)]
pub struct Instance {
    pub name: String,
    pub nodes: usize,
    /// As written, but no more than what a whole sequence of them can be added up of;
    /// with less than is written, a bound stays a bound.
    cost: Vec<u32>,
    written: Vec<u64>,
    before: Vec<bool>,
}

impl Instance {
    pub fn cost(&self, from: usize, to: usize) -> u32 {
        self.cost[from * self.nodes + to]
    }

    /// Whether `first` must come before `second`, directly or by way of others.
    pub fn before(&self, first: usize, second: usize) -> bool {
        self.before[first * self.nodes + second]
    }

    /// The length of a sequence of all nodes by [`Instance::cost`], or nothing if it
    /// breaks a rule.
    pub fn length(&self, sequence: &[usize]) -> Option<u32> {
        let mut place = vec![usize::MAX; self.nodes];
        for (at, node) in sequence.iter().enumerate() {
            *place.get_mut(*node)? = at;
        }
        let keeps = |first: usize, second: usize| {
            !self.before(first, second) || place[first] < place[second]
        };
        let all = 0..self.nodes;
        let legal = place.iter().all(|at| *at != usize::MAX)
            && sequence.len() == self.nodes
            && all
                .clone()
                .all(|first| all.clone().all(|second| keeps(first, second)));
        legal.then(|| {
            sequence
                .windows(2)
                .map(|pair| self.cost(pair[0], pair[1]))
                .sum()
        })
    }

    /// The length of a sequence by the costs as written.
    pub fn length_as_written(&self, sequence: &[usize]) -> u64 {
        let cost = |pair: &[usize]| self.written[pair[0] * self.nodes + pair[1]];
        sequence.windows(2).map(cost).sum()
    }

    /// Reads an instance.
    ///
    /// An entry of -1 in row `i`, column `j` says that `j` comes before `i`. What stands
    /// on the diagonal says nothing. The size may stand before the weights, in the head, or in both.
    pub fn read(text: &str) -> Result<Self> {
        let mut name = String::new();
        let mut dimension = None;
        let mut lines = text.lines();
        let mut weights_follow = false;
        for line in lines.by_ref() {
            let (key, value) = line.split_once(':').unwrap_or((line, ""));
            let value = value.trim();
            match key.trim().to_ascii_uppercase().as_str() {
                "NAME" => name = value.trim_end_matches(".sop").to_owned(),
                "TYPE" => ensure!(
                    value.eq_ignore_ascii_case("SOP"),
                    "TYPE is {value}, not SOP"
                ),
                "DIMENSION" => dimension = Some(size(value)?),
                "EDGE_WEIGHT_FORMAT" => ensure!(
                    value.eq_ignore_ascii_case("FULL_MATRIX"),
                    "EDGE_WEIGHT_FORMAT is {value}, not FULL_MATRIX"
                ),
                "EDGE_WEIGHT_SECTION" => {
                    weights_follow = true;
                    break;
                }
                _ => {}
            }
        }
        ensure!(weights_follow, "EDGE_WEIGHT_SECTION is missing");
        let mut weights = lines
            .flat_map(str::split_whitespace)
            .take_while(|word| !word.eq_ignore_ascii_case("EOF"))
            .take(MOST_NODES * MOST_NODES + 2)
            .map(|word| {
                word.parse::<i64>()
                    .with_context(|| format!("{word} is not a number"))
            })
            .collect::<Result<Vec<_>>>()?;
        let nodes = match dimension {
            Some(nodes) if weights.len() == nodes * nodes => nodes,
            _ => {
                ensure!(!weights.is_empty(), "no weights in EDGE_WEIGHT_SECTION");
                size(&weights.remove(0).to_string())?
            }
        };
        ensure!(
            nodes >= 2 && weights.len() == nodes * nodes,
            "{} weights do not make a square of {nodes} nodes",
            weights.len()
        );
        Self::new(name, nodes, &weights)
    }

    fn new(name: String, nodes: usize, weights: &[i64]) -> Result<Self> {
        let mut instance = Self {
            name,
            nodes,
            cost: vec![0; nodes * nodes],
            written: vec![0; nodes * nodes],
            before: vec![false; nodes * nodes],
        };
        let most = u32::try_from(1 << 30 >> nodes.ilog2()).unwrap_or(u32::MAX);
        for from in 0..nodes {
            for to in (0..nodes).filter(|to| *to != from) {
                let at = from * nodes + to;
                match weights[at] {
                    -1 => instance.before[to * nodes + from] = true,
                    weight => {
                        let written = u64::try_from(weight)
                            .ok()
                            .filter(|weight| *weight < 1 << 48)
                            .with_context(|| format!("weight {weight} is out of range"))?;
                        instance.written[at] = written;
                        instance.cost[at] = u32::try_from(written).unwrap_or(most).min(most);
                    }
                }
            }
        }
        for node in 1..nodes {
            instance.before[node] = true;
            instance.before[(node - 1) * nodes + nodes - 1] = true;
        }
        instance.close();
        if let Some(node) = (0..nodes).find(|node| instance.before(*node, *node)) {
            bail!("node {} must come before itself", node + 1);
        }
        Ok(instance)
    }

    fn close(&mut self) {
        let nodes = self.nodes;
        for by in 0..nodes {
            for first in 0..nodes {
                if !self.before(first, by) {
                    continue;
                }
                for second in 0..nodes {
                    if self.before(by, second) {
                        self.before[first * nodes + second] = true;
                    }
                }
            }
        }
    }
}

fn size(text: &str) -> Result<usize> {
    let size = text
        .parse()
        .ok()
        .with_context(|| format!("{text} is no number of nodes"))?;
    ensure!(
        size <= MOST_NODES,
        "{size} nodes are more than the {MOST_NODES} that fit"
    );
    Ok(size)
}
