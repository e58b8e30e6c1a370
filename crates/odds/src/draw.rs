//! The draws: in blocks, each block and each source of chance with numbers of its own. So the
//! result is the same on any number of threads, and leaving one source out leaves the others.

use crate::many;
use crate::normal::exp;
use crate::prepare::{CAP, Ready, Snags, Work};
use libm::{log1p, sqrt};
use rand::{Rng, RngExt, SeedableRng};
use rand_chacha::ChaCha8Rng;
use rand_distr::{Distribution, StandardNormal};
use rand_xoshiro::Xoshiro256PlusPlus;

/// The most times book, in single precision: a whole number, so the same.
#[expect(clippy::cast_possible_truncation, reason = "a whole number")]
const CAP_SINGLE: f32 = CAP as f32;

/// Stages that are added up in single precision before their sum is.
const TOGETHER: u32 = 16;

/// Draws of one block.
const BLOCK: usize = 512;

/// Sources of chance; those of lines, snags and amounts count on from theirs.
const POINT: u64 = 0;
const VARIANCE: u64 = 1;
const EFFECTS: u64 = 2;
const VEHICLE: u64 = 3;
const FIRST: u64 = 4;
const LINES: u64 = 1 << 16;
const SNAGS: u64 = 2 << 16;
const AFTERMATH: u64 = 3 << 16;
const AMOUNTS: u64 = 4 << 16;
const SOURCES: u32 = 24;

/// What is held still, to see how much narrower the spread becomes.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub(crate) struct Still {
    pub(crate) vehicle: bool,
    pub(crate) shop: bool,
}

/// How to draw.
#[derive(Clone, Copy, Debug)]
pub(crate) struct How {
    pub(crate) seed: u64,
    pub(crate) draws: usize,
    pub(crate) threads: usize,
    pub(crate) still: Still,
    /// Also keep what each line and its snags add.
    pub(crate) detail: bool,
}

/// What was drawn, a number for each draw.
#[derive(Clone, Debug, Default, PartialEq)]
pub(crate) struct Drawings {
    pub(crate) work: Vec<f64>,
    /// Minutes of snags and of what is done first.
    pub(crate) added: Vec<f64>,
    /// Money beside labour.
    pub(crate) extra: Vec<f64>,
    pub(crate) detail: Vec<Detail>,
    /// Block by block: added up in the end, so that the sum does not hang on the threads.
    blocks: Vec<Sums>,
}

/// What one line adds in each draw.
#[derive(Clone, Debug, Default, PartialEq)]
pub(crate) struct Detail {
    /// Its minutes less what they would be if its stages took what they take on average.
    pub(crate) own: Vec<f64>,
    pub(crate) snag_minutes: Vec<f64>,
    pub(crate) snag_price: Vec<f64>,
}

/// Sums over draws.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub(crate) struct Sums {
    pub(crate) with_snag: f64,
    pub(crate) snags: f64,
    pub(crate) snag_minutes: f64,
    pub(crate) snag_price: f64,
    pub(crate) capped: f64,
}

/// Draws an order so many times.
pub(crate) fn draw(ready: &Ready, how: &How) -> Drawings {
    let blocks = how.draws.div_ceil(BLOCK);
    let threads = how.threads.clamp(1, blocks.max(1));
    let share = blocks.div_ceil(threads);
    let parts: Vec<Drawings> = std::thread::scope(|scope| {
        let handles: Vec<_> = (0..threads)
            .map(|thread| {
                let blocks = (thread * share)..((thread + 1) * share).min(blocks);
                scope.spawn(move || {
                    let mut part = Drawings::default();
                    let mut desk = Desk::new(ready);
                    for block in blocks {
                        let size = BLOCK.min(how.draws - block * BLOCK);
                        desk.block(ready, how, block as u64, size, &mut part);
                    }
                    part
                })
            })
            .collect();
        handles
            .into_iter()
            .map(|handle| match handle.join() {
                Ok(part) => part,
                Err(fault) => std::panic::resume_unwind(fault),
            })
            .collect()
    });
    let mut parts = parts.into_iter();
    let mut all = parts.next().unwrap_or_default();
    for part in parts {
        all.append(part);
    }
    all
}

impl Drawings {
    fn append(&mut self, other: Drawings) {
        self.work.extend(other.work);
        self.added.extend(other.added);
        self.extra.extend(other.extra);
        for (mine, other) in self.detail.iter_mut().zip(other.detail) {
            mine.own.extend(other.own);
            mine.snag_minutes.extend(other.snag_minutes);
            mine.snag_price.extend(other.snag_price);
        }
        self.blocks.extend(other.blocks);
    }

    /// The sums over all draws.
    pub(crate) fn sums(&self) -> Sums {
        self.blocks.iter().fold(Sums::default(), |all, one| Sums {
            with_snag: all.with_snag + one.with_snag,
            snags: all.snags + one.snags,
            snag_minutes: all.snag_minutes + one.snag_minutes,
            snag_price: all.snag_price + one.snag_price,
            capped: all.capped + one.capped,
        })
    }
}

/// The room that one thread works in.
struct Desk {
    deviation: Vec<f64>,
    spot: Vec<usize>,
    effects: Vec<f64>,
    rows: Vec<f64>,
    vehicle: Vec<f64>,
    line: Vec<f64>,
    snag_factor: Vec<f64>,
    had_snag: Vec<bool>,
    capped: Vec<bool>,
}

impl Desk {
    fn new(ready: &Ready) -> Desk {
        Desk {
            deviation: vec![0.0; BLOCK],
            spot: vec![0; BLOCK],
            effects: vec![0.0; ready.spots.first().map_or(0, |spot| spot.mean.len())],
            rows: vec![0.0; ready.rows.len() * BLOCK],
            vehicle: vec![0.0; BLOCK],
            line: vec![0.0; BLOCK],
            snag_factor: vec![1.0; BLOCK],
            had_snag: vec![false; BLOCK],
            capped: vec![false; BLOCK],
        }
    }

    fn block(&mut self, ready: &Ready, how: &How, block: u64, size: usize, part: &mut Drawings) {
        let source = |at: u64| {
            let mut chance = ChaCha8Rng::seed_from_u64(how.seed);
            chance.set_stream((block << SOURCES) | at);
            chance
        };
        self.shared(ready, how, size, &source);
        let start = part.work.len();
        part.work.resize(start + size, 0.0);
        part.added.resize(start + size, 0.0);
        part.extra.resize(start + size, 0.0);
        self.had_snag.fill(false);
        self.capped.fill(false);
        if how.detail && part.detail.is_empty() {
            part.detail = vec![Detail::default(); ready.work.len()];
        }
        let mut sums = Sums::default();
        for (at, work) in ready.work.iter().enumerate() {
            let mut detail = how.detail.then(|| &mut part.detail[at]);
            let chance = quick(source(LINES + at as u64));
            self.line(ready, work, size, chance, detail.as_deref_mut());
            for (total, line) in part.work[start..].iter_mut().zip(&self.line) {
                *total += line;
            }
            if let Some(detail) = detail.as_deref_mut() {
                detail.snag_minutes.resize(start + size, 0.0);
                detail.snag_price.resize(start + size, 0.0);
            }
            if let Some(snags) = &work.snags {
                let seed = source(AFTERMATH + at as u64).next_u64();
                let chance = (quick(source(SNAGS + at as u64)), seed);
                self.snags(snags, size, chance, |d, count, minutes, price| {
                    part.added[start + d] += minutes;
                    part.extra[start + d] += price;
                    sums.snags += count;
                    sums.snag_minutes += minutes;
                    sums.snag_price += price;
                    if let Some(detail) = detail.as_deref_mut() {
                        detail.snag_minutes[start + d] = minutes;
                        detail.snag_price[start + d] = price;
                    }
                });
            }
        }
        for (at, amount) in ready.amounts.iter().enumerate() {
            let mut chance = source(AMOUNTS + at as u64);
            for extra in &mut part.extra[start..] {
                *extra += amount.draw(&mut chance);
            }
        }
        if let Some((minutes, price)) = &ready.first {
            let mut chance = source(FIRST);
            for d in start..start + size {
                part.added[d] += minutes.draw(&mut chance);
                part.extra[d] += price.draw(&mut chance);
            }
        }
        sums.with_snag = yes(&self.had_snag[..size]);
        sums.capped = yes(&self.capped[..size]);
        part.blocks.push(sums);
    }

    /// What all lines share: the point of the grid, the spread, the effects, the vehicle.
    fn shared(
        &mut self,
        ready: &Ready,
        how: &How,
        size: usize,
        source: &dyn Fn(u64) -> ChaCha8Rng,
    ) {
        let (mut points, mut variances) = (source(POINT), source(VARIANCE));
        let (mut effects, mut vehicles) = (source(EFFECTS), source(VEHICLE));
        for d in 0..size {
            let u: f64 = points.random();
            let at = ready.spots.partition_point(|spot| spot.until < u);
            let at = at.min(ready.spots.len() - 1);
            let spot = &ready.spots[at];
            let deviation = sqrt(spot.scale / spot.shape.sample(&mut variances));
            self.spot[d] = at;
            self.deviation[d] = deviation;
            let used = self.effects.len();
            let mut normals = [0.0; 8];
            let mut kept: Vec<f64>;
            // A few effects fit on the stack.
            let normals: &mut [f64] = if used <= normals.len() {
                &mut normals[..used]
            } else {
                kept = vec![0.0; used];
                &mut kept
            };
            for normal in normals.iter_mut() {
                *normal = effects.sample(StandardNormal);
            }
            for (at, effect) in self.effects.iter_mut().enumerate() {
                *effect = spot.mean[at];
                if !how.still.shop {
                    let swing: f64 = spot.rows[at]
                        .iter()
                        .zip(&*normals)
                        .map(|(l, z)| l * z)
                        .sum();
                    *effect += deviation * swing;
                }
            }
            for (row, places) in ready.rows.iter().enumerate() {
                let sum: f64 = places.iter().map(|(at, x)| x * self.effects[*at]).sum();
                self.rows[row * BLOCK + d] = ready.center + sum;
            }
            let past: f64 = ready
                .visits
                .iter()
                .map(|(at, x)| x * self.effects[*at])
                .sum();
            let normal: f64 = vehicles.sample(StandardNormal);
            let mut vehicle = spot.shrink * (ready.visits_y - past);
            if !how.still.vehicle {
                vehicle += deviation * spot.vehicle * normal;
            }
            self.vehicle[d] = vehicle;
            self.snag_factor[d] = exp(ready.vehicle_on_snags * vehicle);
        }
    }

    /// The minutes of one line.
    fn line(
        &mut self,
        ready: &Ready,
        work: &Work,
        size: usize,
        mut chance: Xoshiro256PlusPlus,
        detail: Option<&mut Detail>,
    ) {
        let rows = &self.rows[work.row * BLOCK..][..size];
        let book = work.book * work.factor;
        let floor = single(ready.floor);
        let (mut even, mut deviations) = ([0.0; BLOCK], [0.0; BLOCK]);
        let shared = rows.iter().zip(&self.vehicle).zip(&self.deviation);
        for ((even, scale), ((row, vehicle), deviation)) in
            even.iter_mut().zip(&mut deviations).zip(shared)
        {
            *even = single(row + vehicle);
            *scale = single(*deviation);
        }
        let mut normals = [0.0; BLOCK];
        let mut over_book = [0.0; BLOCK];
        let mut most = [0.0; BLOCK];
        let mut left = work.times;
        while left > 0 {
            let some = left.min(TOGETHER);
            left -= some;
            let mut sums = [0.0; BLOCK];
            for _ in 0..some {
                many::normals(&mut chance, &mut normals[..size]);
                let shared = normals.iter().zip(&even).zip(&deviations);
                for ((sum, most), ((normal, even), deviation)) in
                    sums.iter_mut().zip(&mut most).zip(shared)
                {
                    let times = floor + (1.0 - floor) * many::exp(even + deviation * normal);
                    let times = if times < CAP_SINGLE {
                        times
                    } else {
                        CAP_SINGLE
                    };
                    *most = if times > *most { times } else { *most };
                    *sum += times;
                }
            }
            for (all, sum) in over_book.iter_mut().zip(&sums) {
                *all += f64::from(*sum);
            }
        }
        for (total, sum) in self.line[..size].iter_mut().zip(&over_book) {
            *total = book * sum;
        }
        for (capped, most) in self.capped[..size].iter_mut().zip(&most) {
            *capped |= *most >= CAP_SINGLE;
        }
        if let Some(detail) = detail {
            let times = f64::from(work.times);
            let shared = rows.iter().zip(&self.vehicle).zip(&self.deviation);
            for (line, ((row, vehicle), deviation)) in self.line[..size].iter().zip(shared) {
                let even = ready.times_book(row + vehicle + 0.5 * deviation * deviation);
                detail.own.push(line - times * book * even);
            }
        }
    }

    /// The snags of one line; `add` is told of each draw that has any.
    fn snags(
        &mut self,
        snags: &Snags,
        size: usize,
        (mut chance, aftermath): (Xoshiro256PlusPlus, u64),
        mut add: impl FnMut(usize, f64, f64, f64),
    ) {
        for d in 0..size {
            let p = one_piece(snags, &mut chance);
            let odds = snags.odds * self.snag_factor[d];
            let p = (p * odds / (1.0 + p * (odds - 1.0))).clamp(0.0, 0.9999);
            let count = how_many(snags.count, p, &mut chance);
            if count == 0 {
                continue;
            }
            self.had_snag[d] = true;
            // Numbers of its own, so that one snag more does not shift the next draw's.
            let seed = aftermath.wrapping_add(d as u64);
            let mut aftermath = Xoshiro256PlusPlus::seed_from_u64(seed);
            let (mut minutes, mut price) = (0.0, 0.0);
            for _ in 0..count {
                minutes += snags.minutes.draw(&mut aftermath);
                price += snags.price.draw(&mut aftermath);
            }
            add(d, f64::from(count), minutes, price);
        }
    }
}

/// The chance of a snag of one piece, as known as it is.
fn one_piece(snags: &Snags, chance: &mut impl Rng) -> f64 {
    let u: f64 = chance.random();
    let at = snags.parts.partition_point(|(until, _)| *until < u);
    let Some((_, beta)) = snags.parts.get(at.min(snags.parts.len().saturating_sub(1))) else {
        return snags.mean;
    };
    let p = beta.sample(chance);
    if p.is_nan() { snags.mean } else { p }
}

/// How many of `count` pieces bring a snag: eight at a time by one number each, so that a
/// greater chance never brings fewer.
fn how_many(count: u32, p: f64, chance: &mut impl Rng) -> u32 {
    let mut all = 0;
    let mut rest = count;
    while rest > 0 {
        let n = rest.min(8);
        rest -= n;
        let u: f64 = chance.random();
        // (1 - p)^n is at least 1 - n p: most draws end here.
        if u <= 1.0 - f64::from(n) * p {
            continue;
        }
        let mut term = exp(f64::from(n) * log1p(-p));
        let mut sum = term;
        let mut found = 0;
        while u > sum && found < n {
            found += 1;
            term *= f64::from(n - found + 1) / f64::from(found) * p / (1.0 - p);
            sum += term;
        }
        all += found;
    }
    all
}

/// A quicker generator for what is drawn most, begun from the numbers of its source.
fn quick(mut source: ChaCha8Rng) -> Xoshiro256PlusPlus {
    Xoshiro256PlusPlus::from_rng(&mut source)
}

/// In single precision, for what is worked out many at a time.
#[expect(
    clippy::cast_possible_truncation,
    reason = "seven digits are enough for a stage"
)]
fn single(x: f64) -> f32 {
    x as f32
}

fn yes(flags: &[bool]) -> f64 {
    flags.iter().map(|flag| f64::from(u8::from(*flag))).sum()
}
