//! The search in layers held against published sequential ordering instances.
//!
//! Where every move is its own place with its own cost to every other, planning is
//! TSPLIB's sequential ordering problem. The search is the one that plans use; the
//! bound and the local search beside it are for these instances.

mod assign;
mod bound;
pub mod clock;
mod exchange;
mod instance;
mod table;

use anyhow::{Context, Result, bail};
use bound::Bound;
use clock::Clock;
use exchange::Exchange;
use instance::{Instance, MOST_NODES};
use plan::bits::Bits;
use plan::layered::{Layered, Next, pass};
use std::path::PathBuf;
use std::process::ExitCode;
use std::time::Duration;
use table::Table;

/// The width of the first pass.
const NARROWEST: usize = 1_000;

/// The most that the states of one pass may take up, and those of one layer before it
/// is cut.
const MOST_BYTES: usize = 400 << 20;

/// Steps between two looks at the clock.
const LOOK: u32 = 256;

/// Solve sequential ordering instances with the search that plans use.
#[derive(clap::Args)]
pub struct Choice {
    /// The instances, in TSPLIB's form.
    #[arg(required = true)]
    files: Vec<PathBuf>,
    /// How long each may take.
    #[arg(long, default_value_t = 10.0)]
    seconds: f64,
    /// Count the processor's time, for a machine that does other things beside.
    #[arg(long)]
    processor_time: bool,
    /// Write a table into docs/bench.md as well, beside the lengths in optima.csv.
    #[arg(long)]
    write: bool,
    /// Print one JSON object a line.
    #[arg(long)]
    json: bool,
}

/// What was found for an instance.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Answer {
    pub sequence: Vec<usize>,
    pub length: u64,
    /// No sequence is shorter than this.
    pub bound: u64,
    pub proven: bool,
}

/// Reads, solves and prints each instance.
pub fn bench(choice: &Choice) -> Result<ExitCode> {
    let mut table = choice.write.then(Table::new);
    for file in &choice.files {
        let shown = file.display();
        let bytes = std::fs::read(file).with_context(|| format!("cannot read {shown}"))?;
        let instance = Instance::read(&String::from_utf8_lossy(&bytes))
            .with_context(|| format!("{shown} is no instance"))?;
        let time = Duration::try_from_secs_f64(choice.seconds)?;
        let clock = Clock::start(time, choice.processor_time);
        let answer = solve(&instance, clock)?;
        let took = clock.passed();
        if let Some(table) = &mut table {
            table.row(file, &answer, took)?;
        }
        let milliseconds = took.as_millis();
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
    if let Some(table) = table {
        table.write()?;
    }
    Ok(ExitCode::SUCCESS)
}

/// Finds a short sequence and a bound within the time given.
pub fn solve(instance: &Instance, clock: Clock) -> Result<Answer> {
    Ok(match instance.nodes.div_ceil(64) {
        0..=1 => Solver::<1>::new(instance, clock).solve(),
        2 => Solver::<2>::new(instance, clock).solve(),
        3..=4 => Solver::<4>::new(instance, clock).solve(),
        5..=8 => Solver::<8>::new(instance, clock).solve(),
        _ => bail!(
            "{} nodes are more than the {MOST_NODES} that fit",
            instance.nodes
        ),
    })
}

struct Solver<'a, const W: usize> {
    instance: &'a Instance,
    space: Space<'a, W>,
    exchange: Exchange<'a, W>,
    best: Vec<usize>,
    length: u32,
    clock: Clock,
}

impl<'a, const W: usize> Solver<'a, W> {
    fn new(instance: &'a Instance, clock: Clock) -> Self {
        let exchange = Exchange::new(instance);
        let mut best = exchange.nearest();
        let more = || clock.within(0.3);
        exchange.improve(&mut best, (0..instance.nodes).collect(), more);
        Self {
            space: Space::new(instance, clock),
            exchange,
            length: instance.length(&best).unwrap_or(u32::MAX),
            best,
            instance,
            clock,
        }
    }

    fn take(&mut self, sequence: Vec<usize>) {
        let length = self.instance.length(&sequence).unwrap_or(u32::MAX);
        if length < self.length {
            (self.best, self.length) = (sequence, length);
        }
    }

    fn exchange_until(&mut self, part: f64, in_vain: usize) {
        let clock = self.clock;
        let more = |since| since < in_vain && clock.within(part);
        let found = self.exchange.search(self.best.clone(), more);
        self.take(found);
    }

    /// Raises the bound from where an assignment starts it and from level prices: which
    /// of them leads higher differs from one instance to another.
    fn raise_until(&mut self, part: f64) {
        self.climb_until(part / 2.0);
        let (first, prices) = (self.space.bound.exact(), self.space.bound.all_prices());
        if self.space.bound.whole() < self.length {
            self.space.bound.start_from(vec![0; self.instance.nodes]);
            self.climb_until(part);
            if self.space.bound.exact() < first {
                self.space.bound.start_from(prices);
            }
        }
    }

    /// Raises the bound, and takes out the steps that it rules out.
    fn climb_until(&mut self, part: f64) {
        let clock = self.clock;
        for _ in 0..3 {
            let more = || clock.within(part);
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
        let length = self.instance.length_as_written(&self.best);
        Answer {
            proven: u64::from(bound) == length,
            sequence: self.best,
            length,
            bound: u64::from(bound),
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
        let states = MOST_BYTES / size_of::<Here<W>>();
        while bound < self.length {
            let left = self.clock.left(0.9);
            let affordable =
                usize::try_from(left.as_nanos() / each_nanoseconds).unwrap_or(usize::MAX);
            if affordable < 2 * expanded {
                break;
            }
            let began = self.clock.passed();
            let most = affordable.min(states) as u64;
            let mut budget = most;
            let widest = (1 + affordable / nodes).min(4 * states / nodes);
            let outcome = pass(&mut self.space, width.min(widest), self.length, &mut budget);
            expanded = usize::try_from(most - budget).unwrap_or(usize::MAX).max(1);
            let took = self.clock.passed().saturating_sub(began);
            each_nanoseconds = 1 + took.as_nanos() / expanded as u128;
            if let Some(way) = outcome.ways.first() {
                self.take(
                    std::iter::once(0)
                        .chain(way.labels.iter().copied())
                        .collect(),
                );
            }
            if self.space.late {
                // It left out what nobody has looked at: its cut says nothing.
                break;
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
    clock: Clock,
    steps: u32,
    /// Whether the time ran out, and steps were left out.
    late: bool,
}

impl<'a, const W: usize> Space<'a, W> {
    fn new(instance: &'a Instance, clock: Clock) -> Self {
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
            clock,
            steps: 0,
            late: false,
        }
    }

    fn is_late(&mut self) -> bool {
        self.steps += 1;
        if self.steps.is_multiple_of(LOOK) {
            self.late |= !self.clock.within(0.95);
        }
        self.late
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
        if self.is_late() {
            return;
        }
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
            "ESC07", "ESC11", "ESC12", "ESC25", "br17.10", "br17.12", "p43.4", "rbg048a", "ry48p.4",
        ];
        let published = published();
        for name in small {
            let (_, length) = published.iter().find(|(known, _)| known == name).unwrap();
            let instance = Instance::read(&data(&format!("{name}.sop"))).unwrap();
            let answer = solve(&instance, Clock::start(Duration::from_secs(30), true)).unwrap();
            assert_eq!(
                (answer.length, answer.proven),
                (u64::from(*length), true),
                "{name}"
            );
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
    fn with_no_time_at_all_a_sequence_keeps_the_rules_and_a_bound_holds() {
        for (name, length) in published() {
            let instance = Instance::read(&data(&format!("{name}.sop"))).unwrap();
            let answer = solve(&instance, Clock::start(Duration::ZERO, false)).unwrap();
            let kept = instance.length(&answer.sequence).map(u64::from);
            assert_eq!(kept, Some(answer.length), "{name}");
            assert!(answer.bound <= u64::from(length), "{name}: {answer:?}");
        }
    }

    #[test]
    fn weights_too_large_to_add_up_are_counted_as_written() {
        let far = 1_000_000_000_000_u64;
        let text = format!("EDGE_WEIGHT_SECTION\n4\n0 {far} 7 9 -1 0 1 8 -1 -1 0 5 -1 -1 -1 0");
        let instance = Instance::read(&text).unwrap();
        let answer = solve(&instance, Clock::start(Duration::from_secs(1), false)).unwrap();
        assert_eq!(answer.length, far + 6);
        assert!(answer.bound <= answer.length && !answer.proven);
    }

    #[test]
    fn an_instance_is_read_however_it_is_laid_out() {
        let plain = "NAME: a.sop\nTYPE: SOP\nDIMENSION: 3\nEDGE_WEIGHT_FORMAT: FULL_MATRIX\n\
                     EDGE_WEIGHT_SECTION\n3\n0 4 9\n-1 0 5\n-1 -1 0\nEOF\n";
        let wrapped = "Name : a\r\nType: sop \r\nComment: a: b\r\n\r\n\
                       edge_weight_section\r\n 3\r\n0 4\r\n9 -1\r\n0 5 -1\r\n-1\r\n0\r\n";
        let without_size = "DIMENSION: 3\nEDGE_WEIGHT_SECTION\n-1 4 9 -1 7 5 -1 -1 1000000";
        for text in [plain, wrapped, without_size] {
            let instance = Instance::read(text).unwrap();
            assert_eq!(instance.length(&[0, 1, 2]), Some(9), "{text}");
            assert_eq!(instance.length(&[0, 2, 1]), None, "{text}");
        }
    }

    #[test]
    fn what_is_no_instance_is_told_where() {
        for (text, says) in [
            ("TYPE: TSP\n", "not SOP"),
            ("EDGE_WEIGHT_SECTION\n3\n0 1 2\n", "square"),
            ("EDGE_WEIGHT_SECTION\n2\n0 x 1 0\n", "not a number"),
            ("EDGE_WEIGHT_SECTION\n2\n0 -2 -1 0\n", "out of range"),
            ("EDGE_WEIGHT_SECTION\n-3\n", "no number of nodes"),
            ("EDGE_WEIGHT_SECTION\n600\n", "more than the 512"),
            ("DIMENSION: 99999999999\n", "more than the 512"),
            ("EDGE_WEIGHT_SECTION\n", "no weights"),
            ("", "EDGE_WEIGHT_SECTION is missing"),
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
