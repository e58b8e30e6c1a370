//! The classical job shop and the blocking job shop, for the same search.
//!
//! Shops of this kind have been counted through for sixty years, so their best schedules are
//! known. They are what the search is held against.

use crate::search::{Decode, Genes, below, gather, scatter, search, shift};
use rand::seq::SliceRandom;
use rand_chacha::ChaCha8Rng;

/// Jobs, each a chain of steps: the machine, and how long it takes.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct JobShop {
    pub jobs: Vec<Vec<(usize, i64)>>,
    /// A job stays on its machine until the next machine takes it. Jobs may change places at the
    /// same moment.
    pub blocking: bool,
}

/// A schedule of a job shop.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct JobPlan {
    /// When each step of each job starts.
    pub starts: Vec<Vec<i64>>,
    pub makespan: i64,
    /// No schedule is shorter than this.
    pub bound: i64,
    /// How many schedules were looked at.
    pub looked_at: u64,
}

impl JobShop {
    /// Searches until `go_on` says no; it is asked again and again, with how many schedules were
    /// looked at. The same seed and the same answers give the same schedule.
    pub fn plan(&self, seed: u64, go_on: &mut dyn FnMut(u64) -> bool) -> JobPlan {
        let bound = self.bound();
        let mut desk = Desk::new(self);
        let start = Genes {
            sequence: self.first_sequence(),
            choices: Vec::new(),
        };
        match search(&mut desk, &[start], seed, bound, go_on) {
            Some(best) => {
                let makespan = desk.score(&best.genes);
                JobPlan {
                    starts: desk.starts,
                    makespan,
                    bound,
                    looked_at: best.looked_at,
                }
            }
            None => JobPlan {
                starts: Vec::new(),
                makespan: 0,
                bound,
                looked_at: 0,
            },
        }
    }

    /// Always the job with the most work left.
    fn first_sequence(&self) -> Vec<u16> {
        let mut left: Vec<(i64, usize)> = self
            .jobs
            .iter()
            .map(|job| (job.iter().map(|step| step.1).sum(), 0))
            .collect();
        let steps = self.jobs.iter().map(Vec::len).sum();
        let mut sequence = Vec::with_capacity(steps);
        while sequence.len() < steps {
            let open = (0..left.len()).filter(|job| left[*job].1 < self.jobs[*job].len());
            let Some(job) = open.max_by_key(|job| (left[*job].0, usize::MAX - job)) else {
                break;
            };
            left[job].0 -= self.jobs[job][left[job].1].1;
            left[job].1 += 1;
            sequence.push(u16::try_from(job).expect("a shop has fewer than 65,536 jobs"));
        }
        sequence
    }

    /// The longest job; and for each machine the work on it, with what comes before and after,
    /// if its jobs could be paused at will (Jackson's rule). The greatest of these.
    pub fn bound(&self) -> i64 {
        let machines = self
            .jobs
            .iter()
            .flatten()
            .map(|step| step.0 + 1)
            .max()
            .unwrap_or(0);
        let longest = self
            .jobs
            .iter()
            .map(|job| job.iter().map(|step| step.1).sum());
        let mut bound = longest.max().unwrap_or(0);
        for machine in 0..machines {
            let mut parts = Vec::new();
            for job in &self.jobs {
                let mut head = 0;
                let total: i64 = job.iter().map(|step| step.1).sum();
                for (on, minutes) in job {
                    if *on == machine {
                        parts.push((head, *minutes, total - head - minutes));
                    }
                    head += minutes;
                }
            }
            bound = bound.max(jackson(&parts));
        }
        bound
    }
}

/// The shortest end of parts (head, minutes, tail) on one machine, if they may be paused: always
/// the one with the longest tail of those that are there.
fn jackson(parts: &[(i64, i64, i64)]) -> i64 {
    let mut left: Vec<i64> = parts.iter().map(|part| part.1).collect();
    let (mut now, mut end) = (0, 0);
    loop {
        let open = (0..parts.len()).filter(|at| left[*at] > 0);
        let here = open.clone().filter(|at| parts[*at].0 <= now);
        let next_head = open.map(|at| parts[at].0).filter(|head| *head > now).min();
        match (here.max_by_key(|at| parts[*at].2), next_head) {
            (Some(at), next) => {
                let spent = next.map_or(left[at], |next| left[at].min(next - now));
                left[at] -= spent;
                now += spent;
                if left[at] == 0 {
                    end = end.max(now + parts[at].2);
                }
            }
            (None, Some(next)) => now = next,
            (None, None) => return end,
        }
    }
}

/// A step as job and number.
type Step = (usize, usize);

/// The room that schedules are made in.
struct Desk<'s> {
    shop: &'s JobShop,
    starts: Vec<Vec<i64>>,
    /// The step before each on its machine.
    before: Vec<Vec<Option<Step>>>,
    done: Vec<usize>,
    ready: Vec<i64>,
    machine_free: Vec<i64>,
    machine_last: Vec<Option<Step>>,
    /// Who is on each machine, if machines are blocked.
    on: Vec<Option<usize>>,
    /// Steps that were placed earlier than the sequence says, to make room.
    owed: Vec<usize>,
    /// Pairs of places in the kept sequence: the first would go behind the second.
    worth: Vec<(usize, usize)>,
}

impl<'s> Desk<'s> {
    fn new(shop: &'s JobShop) -> Self {
        let machines = shop
            .jobs
            .iter()
            .flatten()
            .map(|step| step.0 + 1)
            .max()
            .unwrap_or(0);
        let jobs = shop.jobs.len();
        Self {
            shop,
            starts: shop.jobs.iter().map(|job| vec![0; job.len()]).collect(),
            before: shop.jobs.iter().map(|job| vec![None; job.len()]).collect(),
            done: vec![0; jobs],
            ready: vec![0; jobs],
            machine_free: vec![0; machines],
            machine_last: vec![None; machines],
            on: vec![None; machines],
            owed: vec![0; jobs],
            worth: Vec::new(),
        }
    }

    fn clear(&mut self) {
        self.done.fill(0);
        self.ready.fill(0);
        self.machine_free.fill(0);
        self.machine_last.fill(None);
        self.on.fill(None);
        self.owed.fill(0);
    }

    /// Places the next step of a job at this moment.
    fn start(&mut self, job: usize, at: i64) {
        let number = self.done[job];
        let (machine, minutes) = self.shop.jobs[job][number];
        self.starts[job][number] = at;
        self.before[job][number] = self.machine_last[machine];
        self.machine_last[machine] = Some((job, number));
        self.done[job] += 1;
        self.ready[job] = at + minutes;
        self.machine_free[machine] = at + minutes;
    }

    /// The machine that a job stands on after its steps so far.
    fn stands_on(&self, job: usize) -> Option<usize> {
        let last = self.done[job].checked_sub(1)?;
        Some(self.shop.jobs[job][last].0)
    }

    /// Places the next step of a job where a machine is held until the next one takes the job.
    /// Whoever stands in the way goes on first; whoever stand in each other's way change places.
    fn start_blocking(&mut self, job: usize) {
        let wanted = self.done[job];
        while self.done[job] == wanted {
            let mut chain = vec![job];
            let movers = loop {
                let last = chain[chain.len() - 1];
                let machine = self.shop.jobs[last][self.done[last]].0;
                match self.on[machine] {
                    None => break vec![last],
                    Some(other) if other == last => break vec![last],
                    Some(other) => match chain.iter().position(|one| *one == other) {
                        // They stand in a ring, and all move at once.
                        Some(at) => break chain[at..].to_vec(),
                        None => chain.push(other),
                    },
                }
            };
            self.move_on(&movers);
            for mover in &movers {
                if *mover != job {
                    self.owed[*mover] += 1;
                }
            }
        }
    }

    fn move_on(&mut self, movers: &[usize]) {
        let alone = movers.len() == 1;
        let mut at = movers.iter().map(|job| self.ready[*job]).max().unwrap_or(0);
        if alone {
            let job = movers[0];
            at = at.max(self.machine_free[self.shop.jobs[job][self.done[job]].0]);
        }
        for job in movers {
            if let Some(left) = self.stands_on(*job) {
                self.on[left] = None;
                // Whoever comes next comes when this one leaves.
                self.machine_free[left] = at;
            }
        }
        for job in movers {
            let machine = self.shop.jobs[*job][self.done[*job]].0;
            self.start(*job, at);
            // At the end of its last step a job is gone.
            let more = self.done[*job] < self.shop.jobs[*job].len();
            self.on[machine] = more.then_some(*job);
        }
    }

    /// One longest chain of steps without a gap, from the last end back.
    fn chain(&self) -> Vec<Step> {
        let ends = |&(job, number): &Step| self.starts[job][number] + self.shop.jobs[job][number].1;
        let last_steps = (0..self.shop.jobs.len()).filter_map(|job| {
            let number = self.shop.jobs[job].len().checked_sub(1)?;
            Some((job, number))
        });
        let Some(mut here) = last_steps.max_by_key(ends) else {
            return Vec::new();
        };
        let mut chain = vec![here];
        while self.starts[here.0][here.1] > 0 {
            let start = self.starts[here.0][here.1];
            let on_machine = self.before[here.0][here.1].filter(|step| ends(step) == start);
            let in_job = here.1.checked_sub(1).map(|number| (here.0, number));
            let Some(before) = on_machine.or(in_job.filter(|step| ends(step) == start)) else {
                break;
            };
            chain.push(before);
            here = before;
        }
        chain.reverse();
        chain
    }

    /// The swaps that can shorten the longest chain: neighbours on a machine that works on it
    /// without a gap. No other swap of two can.
    fn find_worth(&mut self, sequence: &[u16]) {
        let mut place: Vec<Vec<usize>> = vec![Vec::new(); self.shop.jobs.len()];
        for (at, job) in sequence.iter().enumerate() {
            place[usize::from(*job)].push(at);
        }
        let chain = self.chain();
        self.worth.clear();
        let machine = |step: &Step| self.shop.jobs[step.0][step.1].0;
        for block in chain.chunk_by(|a, b| machine(a) == machine(b)) {
            let at: Vec<usize> = block.iter().map(|step| place[step.0][step.1]).collect();
            self.worth
                .extend(at.windows(2).map(|pair| (pair[0], pair[1])));
        }
    }
}

impl Decode for Desk<'_> {
    fn score(&mut self, genes: &Genes) -> i64 {
        self.clear();
        for token in &genes.sequence {
            let job = usize::from(*token);
            if self.owed[job] > 0 {
                self.owed[job] -= 1;
            } else if self.shop.blocking {
                self.start_blocking(job);
            } else {
                let machine = self.shop.jobs[job][self.done[job]].0;
                let at = self.ready[job].max(self.machine_free[machine]);
                self.start(job, at);
            }
        }
        self.ready.iter().copied().max().unwrap_or(0)
    }

    fn keep(&mut self, genes: &mut Genes) {
        // By start, so that neighbours on a machine stand near each other.
        let mut steps: Vec<(i64, i64, usize)> = Vec::with_capacity(genes.sequence.len());
        for (job, starts) in self.starts.iter().enumerate() {
            for (number, start) in starts.iter().enumerate() {
                steps.push((*start, start + self.shop.jobs[job][number].1, job));
            }
        }
        steps.sort_unstable();
        for (token, step) in genes.sequence.iter_mut().zip(&steps) {
            *token = u16::try_from(step.2).expect("it was a token before");
        }
        self.find_worth(&genes.sequence);
    }

    fn change(&mut self, genes: &mut Genes, chance: &mut ChaCha8Rng) {
        let length = genes.sequence.len();
        let (from, to) = (below(chance, length), below(chance, length));
        // Where machines are blocked, the chain does not tell all.
        let way = if self.shop.blocking {
            below(chance, 8)
        } else {
            0
        };
        match way {
            0..=2 if !self.worth.is_empty() => {
                let (from, to) = self.worth[below(chance, self.worth.len())];
                gather(&mut genes.sequence, from, to);
            }
            0..=3 => shift(&mut genes.sequence, from, to),
            4 | 5 => gather(&mut genes.sequence, from, to),
            _ => scatter(&mut genes.sequence, from, chance),
        }
    }

    fn anew(&self, genes: &mut Genes, chance: &mut ChaCha8Rng) {
        genes.sequence.shuffle(chance);
    }

    fn heat(&self) -> (f64, f64) {
        let steps = self.shop.jobs.iter().flatten();
        let (sum, count) = steps.fold((0, 0), |(sum, count), step| (sum + step.1, count + 1));
        #[allow(clippy::cast_precision_loss, reason = "a mean of minutes")]
        let mean = sum as f64 / f64::from(count.max(1));
        (mean * 0.5, mean * 0.05)
    }

    fn round(&self) -> u64 {
        8_000
    }
}
