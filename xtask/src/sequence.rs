//! The search in layers held against published sequential ordering instances.
//!
//! Where every move is its own place with its own cost to every other, planning is
//! TSPLIB's sequential ordering problem. The search is the one that plans use; the
//! bound and the local search beside it are for these instances.

mod bound;
mod exchange;
mod instance;

use anyhow::{Context, Result, bail};
use bound::Bound;
use exchange::Exchange;
pub use instance::Instance;
use plan::bits::Bits;
use plan::layered::{Layered, Next, pass};
use std::path::PathBuf;
use std::process::ExitCode;
use std::time::{Duration, Instant};

/// The width of the first pass.
const NARROWEST: usize = 1_000;

/// The most that the states of one pass may take up.
const MOST_BYTES: usize = 400 << 20;

/// Solve sequential ordering instances with the search that plans use.
#[derive(clap::Args)]
pub struct Choice {
    /// The instances, in TSPLIB's form.
    #[arg(required = true)]
    files: Vec<PathBuf>,
    /// How long each may take.
    #[arg(long, default_value_t = 10.0)]
    seconds: f64,
    /// Print one JSON object a line.
    #[arg(long)]
    json: bool,
}

/// What was found for an instance.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Answer {
    pub sequence: Vec<usize>,
    pub length: u32,
    /// No sequence is shorter than this.
    pub bound: u32,
    pub proven: bool,
}

/// Reads, solves and prints each instance.
pub fn bench(choice: &Choice) -> Result<ExitCode> {
    for file in &choice.files {
        let shown = file.display();
        let text = std::fs::read_to_string(file).with_context(|| format!("cannot read {shown}"))?;
        let instance = Instance::read(&text).with_context(|| format!("{shown} is no instance"))?;
        let start = Instant::now();
        let answer = solve(&instance, Duration::try_from_secs_f64(choice.seconds)?)?;
        let milliseconds = start.elapsed().as_millis();
        let Answer {
            length,
            bound,
            proven,
            ..
        } = answer;
        let name = &instance.name;
        let line = match (choice.json, proven) {
            (true, _) => format!(
                "{{\"length\":{length},\"bound\":{bound},\"proven\":{proven},\"milliseconds\":{milliseconds}}}"
            ),
            (_, true) => format!("{name}: length {length}, proven shortest, {milliseconds} ms"),
            _ => format!("{name}: length {length}, bound {bound}, {milliseconds} ms"),
        };
        println!("{line}");
    }
    Ok(ExitCode::SUCCESS)
}

/// Finds a short sequence and a bound within the time given.
pub fn solve(instance: &Instance, time: Duration) -> Result<Answer> {
    Ok(match instance.nodes.div_ceil(64) {
        0..=1 => Solver::<1>::new(instance, time).solve(),
        2 => Solver::<2>::new(instance, time).solve(),
        3..=4 => Solver::<4>::new(instance, time).solve(),
        5..=8 => Solver::<8>::new(instance, time).solve(),
        _ => bail!("{} nodes are more than the 512 that fit", instance.nodes),
    })
}

struct Solver<'a, const W: usize> {
    instance: &'a Instance,
    space: Space<'a, W>,
    exchange: Exchange<'a, W>,
    best: Vec<usize>,
    length: u32,
    start: Instant,
    time: Duration,
}

impl<'a, const W: usize> Solver<'a, W> {
    fn new(instance: &'a Instance, time: Duration) -> Self {
        let start = Instant::now();
        let exchange = Exchange::new(instance);
        let mut best = exchange.nearest();
        exchange.improve(&mut best, (0..instance.nodes).collect());
        Self {
            space: Space::new(instance),
            exchange,
            length: instance.length(&best).unwrap_or(u32::MAX),
            best,
            instance,
            start,
            time,
        }
    }

    /// Whether less than this part of the time has passed.
    fn within(start: Instant, time: Duration, part: f64) -> bool {
        start.elapsed() < time.mul_f64(part)
    }

    fn take(&mut self, sequence: Vec<usize>) {
        let length = self.instance.length(&sequence).unwrap_or(u32::MAX);
        if length < self.length {
            (self.best, self.length) = (sequence, length);
        }
    }

    fn exchange_until(&mut self, part: f64, in_vain: usize) {
        let (start, time) = (self.start, self.time);
        let more = |since| since < in_vain && Self::within(start, time, part);
        let found = self.exchange.search(self.best.clone(), more);
        self.take(found);
    }

    /// Raises the bound, and takes out the steps that it rules out.
    fn raise_until(&mut self, part: f64) {
        let (start, time) = (self.start, self.time);
        for _ in 0..3 {
            let more = || Self::within(start, time, part);
            if !more() {
                break;
            }
            self.space.bound.raise(self.length, more);
            self.space.bound.tighten(self.length);
        }
    }

    fn solve(mut self) -> Answer {
        self.exchange_until(0.05, 50 * self.instance.nodes);
        self.raise_until(0.2);
        let bound = self.widen();
        if bound < self.length {
            self.exchange_until(0.97, usize::MAX);
        }
        Answer {
            proven: bound == self.length,
            sequence: self.best,
            length: self.length,
            bound,
        }
    }

    /// Searches in layers, four times wider each time, until nothing was cut or the
    /// next pass would take too long; answers what no sequence is shorter than.
    fn widen(&mut self) -> u32 {
        let mut bound = self.space.bound.whole().min(self.length);
        let mut width = NARROWEST;
        // A first guess, from instances of 50 and of 380 nodes.
        let nodes = self.instance.nodes;
        let mut each_nanoseconds = 1 + nodes as u128 * nodes as u128 * 3 / 2;
        let mut expanded = 0;
        while bound < self.length {
            let left = self.time.mul_f64(0.9).saturating_sub(self.start.elapsed());
            let affordable =
                usize::try_from(left.as_nanos() / each_nanoseconds).unwrap_or(usize::MAX);
            if affordable < 2 * expanded {
                break;
            }
            let began = Instant::now();
            let most = affordable.min(MOST_BYTES / size_of::<Here<W>>()) as u64;
            let mut budget = most;
            let width_now = width.min(1 + affordable / nodes);
            let outcome = pass(&mut self.space, width_now, self.length, &mut budget);
            expanded = usize::try_from(most - budget).unwrap_or(usize::MAX).max(1);
            each_nanoseconds = 1 + began.elapsed().as_nanos() / expanded as u128;
            if let Some(way) = outcome.ways.first() {
                self.take(
                    std::iter::once(0)
                        .chain(way.labels.iter().copied())
                        .collect(),
                );
            }
            let cut = outcome.cut.unwrap_or(self.length);
            bound = bound.max(cut.min(self.length));
            if budget == 0 {
                break;
            }
            width *= 4;
        }
        bound
    }
}

/// What has been passed, and the last node.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
struct Here<const W: usize> {
    done: Bits<W>,
    last: u16,
    /// The prices of the nodes still to come: told by `done`, kept to be at hand.
    prices: i64,
}

struct Space<'a, const W: usize> {
    instance: &'a Instance,
    before: Vec<Bits<W>>,
    bound: Bound<W>,
}

impl<'a, const W: usize> Space<'a, W> {
    fn new(instance: &'a Instance) -> Self {
        let all = 0..instance.nodes;
        let before = |node: usize| {
            all.clone()
                .filter(|other| instance.before(*other, node))
                .collect()
        };
        Self {
            before: all.clone().map(before).collect(),
            bound: Bound::new(instance),
            instance,
        }
    }
}

impl<const W: usize> Layered for Space<'_, W> {
    type State = Here<W>;

    fn steps(&self) -> usize {
        self.instance.nodes - 1
    }

    fn starts(&mut self) -> Vec<(Here<W>, u32)> {
        let done = Bits::default().with(0);
        let prices = self.bound.prices();
        vec![(
            Here {
                done,
                last: 0,
                prices,
            },
            0,
        )]
    }

    fn follow(&mut self, here: &Here<W>, into: &mut Vec<Next<Here<W>>>) {
        let last = usize::from(here.last);
        let position = here.done.len() - 1;
        let open = self.bound.follow(position, last).minus(&here.done);
        for (node, number) in open
            .iter()
            .filter_map(|node| Some((node, u16::try_from(node).ok()?)))
        {
            if self.before[node].within(&here.done) {
                into.push(Next {
                    label: node,
                    cost: self.instance.cost(last, node),
                    state: Here {
                        done: here.done.with(node),
                        last: number,
                        prices: here.prices - self.bound.price(node),
                    },
                });
            }
        }
    }

    fn bound(&mut self, here: &Here<W>) -> Option<u32> {
        let position = here.done.len() - 1;
        self.bound
            .rest(position, usize::from(here.last), here.prices)
    }

    fn ending(&mut self, _: &Here<W>) -> u32 {
        0
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn data(file: &str) -> String {
        let folder = concat!(env!("CARGO_MANIFEST_DIR"), "/../checks/data/sop");
        std::fs::read_to_string(format!("{folder}/{file}")).unwrap()
    }

    /// The lengths as published, by instance.
    fn published() -> Vec<(String, u32)> {
        let text = data("optima.csv");
        let rows = text.lines().filter(|line| !line.starts_with('#')).skip(1);
        rows.map(|row| {
            let mut cells = row.split(',');
            let name = cells.next().unwrap().to_owned();
            (name, cells.next().unwrap().parse().unwrap())
        })
        .collect()
    }

    #[test]
    fn small_instances_are_proven_at_their_published_length() {
        let small = [
            "ESC07", "ESC11", "ESC12", "ESC25", "br17.10", "br17.12", "p43.4",
        ];
        let published = published();
        for name in small {
            let (_, length) = published.iter().find(|(known, _)| known == name).unwrap();
            let instance = Instance::read(&data(&format!("{name}.sop"))).unwrap();
            let answer = solve(&instance, Duration::from_secs(30)).unwrap();
            assert_eq!((answer.length, answer.proven), (*length, true), "{name}");
            assert_eq!(instance.length(&answer.sequence), Some(*length), "{name}");
        }
    }

    #[test]
    fn a_bound_never_lies_above_the_published_length() {
        for (name, length) in published() {
            let instance = Instance::read(&data(&format!("{name}.sop"))).unwrap();
            let mut bound = Bound::<1>::new(&instance);
            for rounds in [0, 10, 40] {
                let mut left = rounds;
                bound.raise(length, || {
                    left -= 1;
                    left >= 0
                });
                assert!(bound.whole() <= length, "{name}: {}", bound.whole());
                bound.tighten(length + 1);
                assert!(bound.whole() <= length, "{name}: {}", bound.whole());
            }
        }
    }

    #[test]
    fn local_search_keeps_every_rule() {
        for (name, length) in published() {
            let instance = Instance::read(&data(&format!("{name}.sop"))).unwrap();
            let mut exchange = Exchange::<1>::new(&instance);
            let first = exchange.nearest();
            let mut left = 20;
            let found = exchange.search(first.clone(), |_| {
                left -= 1;
                left >= 0
            });
            let (first, found) = (instance.length(&first), instance.length(&found));
            assert!(
                found >= Some(length) && found <= first,
                "{name}: {first:?} {found:?}"
            );
        }
    }

    #[test]
    fn what_is_no_instance_is_told_where() {
        for (text, says) in [
            ("TYPE: TSP\n", "not SOP"),
            ("EDGE_WEIGHT_SECTION\n3\n0 1 2\n", "square"),
            ("EDGE_WEIGHT_SECTION\n2\n0 x 1 0\n", "not a number"),
            (
                "EDGE_WEIGHT_SECTION\n3\n0 1 1 1 0 -1 1 -1 0\n",
                "before itself",
            ),
        ] {
            let error = Instance::read(text).unwrap_err();
            assert!(format!("{error:#}").contains(says), "{error:#}");
        }
    }
}
