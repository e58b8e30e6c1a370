//! Sequential ordering instances in TSPLIB's form.

use anyhow::{Context, Result, bail, ensure};

/// Costs between nodes, and which must come before which. The first node comes first
/// and the last node last.
#[derive(Debug, Clone)]
pub struct Instance {
    pub name: String,
    pub nodes: usize,
    cost: Vec<u32>,
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

    /// The length of a sequence of all nodes, or nothing if it breaks a rule.
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

    /// Reads an instance.
    ///
    /// An entry of -1 in row `i`, column `j` says that `j` comes before `i`.
    pub fn read(text: &str) -> Result<Self> {
        let mut name = String::new();
        let mut lines = text.lines();
        for line in lines.by_ref() {
            let (key, value) = line.split_once(':').unwrap_or((line, ""));
            match (key.trim(), value.trim()) {
                ("NAME", value) => name = value.trim_end_matches(".sop").to_owned(),
                ("TYPE", kind) => ensure!(kind == "SOP", "TYPE is {kind}, not SOP"),
                ("EDGE_WEIGHT_FORMAT", form) => {
                    ensure!(
                        form == "FULL_MATRIX",
                        "EDGE_WEIGHT_FORMAT is {form}, not FULL_MATRIX"
                    );
                }
                ("EDGE_WEIGHT_SECTION", _) => break,
                _ => {}
            }
        }
        let mut numbers = lines
            .flat_map(str::split_whitespace)
            .take_while(|word| *word != "EOF")
            .map(|word| {
                word.parse::<i64>()
                    .with_context(|| format!("{word} is not a number"))
            });
        let nodes = usize::try_from(numbers.next().context("EDGE_WEIGHT_SECTION is missing")??)?;
        let weights = numbers.collect::<Result<Vec<_>>>()?;
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
            before: vec![false; nodes * nodes],
        };
        for from in 0..nodes {
            for to in 0..nodes {
                let at = from * nodes + to;
                match weights[at] {
                    -1 => instance.before[to * nodes + from] = true,
                    weight => {
                        let cost = u32::try_from(weight).ok().filter(|cost| *cost < 1 << 24);
                        instance.cost[at] =
                            cost.with_context(|| format!("weight {weight} is out of range"))?;
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
