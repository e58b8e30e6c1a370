//! Fits the weights of `sight::net` to pictures with their truth.
//!
//! Plain gradient descent with momentum and scaled steps (Adam), on squares cut out of the
//! pictures at random, turned, mirrored and with other light and colour.

use super::labels::{Picture, picture};
use super::truth;
use anyhow::{Context, Result, ensure};
use rand::{RngExt, SeedableRng};
use rand_chacha::ChaCha8Rng;
use sight::flat::CHANNELS;
use sight::net::{
    BELOW, CLASSES, COUNTED, END, INNER, OTHER, OUTER, PAPER, REACH, SHANK, WEIGHTS, cut_off,
    flattened, last, layer, look, shares, starts,
};
use sight::weights::{packed, unpacked};
use std::fs;
use std::path::PathBuf;
use std::process::ExitCode;

/// Fit the weights that tell what each cell of a picture shows.
#[derive(clap::Args)]
pub struct Choice {
    /// The folder with a file of truth and its pictures, as `tray-bench` reads it.
    folder: PathBuf,
    /// The name of the file of truth, without its ending.
    #[arg(long, default_value = "open")]
    set: String,
    /// Where to write the weights.
    #[arg(long)]
    to: PathBuf,
    /// Weights to go on from.
    #[arg(long)]
    from: Option<PathBuf>,
    /// Steps.
    #[arg(long, default_value_t = 4000)]
    steps: usize,
    /// The largest step of a weight.
    #[arg(long, default_value_t = 3e-3)]
    rate: f64,
    /// Learn only from every second picture (0 or 1), and try the weights on the others.
    #[arg(long)]
    half: Option<usize>,
    /// What chance begins with.
    #[arg(long, default_value_t = 1)]
    seed: u64,
}

/// Cells along a square.
const SIDE: usize = 136;
/// Squares a step.
const SQUARES: usize = 2;

/// Fits, and writes what came of it every few hundred steps.
pub fn train(choice: &Choice) -> Result<ExitCode> {
    let file = choice.folder.join(format!("{}.jsonl", choice.set));
    let folder = choice.folder.join(&choice.set);
    let (mut learn, mut held) = (Vec::new(), Vec::new());
    for (i, value) in truth::values(&file)?.iter().enumerate() {
        if let Some(picture) = picture(&folder, value)? {
            let out = choice.half.is_some_and(|half| i % 2 != half);
            if out { &mut held } else { &mut learn }.push(picture);
        }
    }
    ensure!(!learn.is_empty(), "there is no picture to learn from");
    println!(
        "{} pictures to learn from, {} left out",
        learn.len(),
        held.len()
    );
    let mut chance = ChaCha8Rng::seed_from_u64(choice.seed);
    let mut weights = match &choice.from {
        Some(file) => unpacked(
            &fs::read(file).with_context(|| format!("{}: cannot be read", file.display()))?,
        ),
        None => begun(&mut chance),
    };
    ensure!(
        weights.len() == WEIGHTS,
        "these are weights of another form"
    );
    let mut descent = Descent::new();
    let mut mean = 0.0;
    for step in 1..=choice.steps {
        let squares: Vec<Picture> = (0..SQUARES).map(|_| square(&learn, &mut chance)).collect();
        let mut slopes = vec![0.0; WEIGHTS];
        let mut loss = 0.0;
        for square in &squares {
            loss += slope(square, &weights, &mut slopes) / SQUARES as f64;
        }
        mean = if step == 1 {
            loss
        } else {
            mean * 0.98 + loss * 0.02
        };
        let share = step as f64 / choice.steps as f64;
        let fading = 0.5 * (1.0 + (std::f64::consts::PI * share).cos());
        let rate = choice.rate * fading * (step as f64 / 50.0).min(1.0) + 2e-5;
        descent.step(&mut weights, &slopes, rate, step);
        if step % 100 == 0 {
            println!("{step}: loss {mean:.4}");
        }
        if step % 400 == 0 || step == choice.steps {
            fs::write(&choice.to, packed(&weights))
                .with_context(|| format!("{}: cannot be written", choice.to.display()))?;
            tried(&held, &weights);
        }
    }
    Ok(ExitCode::SUCCESS)
}

/// Weights to begin with: small and by chance.
fn begun(chance: &mut ChaCha8Rng) -> Vec<f32> {
    let starts = starts();
    let layers = starts.len() - 1;
    let mut out = vec![0.0; WEIGHTS];
    for l in 0..layers {
        let (fan, biases, scale) = match l {
            0 => (9 * CHANNELS, INNER, 1.4),
            l if l == layers - 1 => (INNER, OUTER, 0.5),
            _ => (9 * INNER, INNER, 0.8),
        };
        for weight in &mut out[starts[l]..starts[l + 1] - biases] {
            *weight = (normal(chance) * scale / (fan as f64).sqrt()) as f32;
        }
    }
    out
}

fn normal(chance: &mut ChaCha8Rng) -> f64 {
    let (a, b): (f64, f64) = (chance.random(), chance.random());
    (-2.0 * a.max(1e-12).ln()).sqrt() * (b * std::f64::consts::TAU).cos()
}

/// A square of a picture, the fullest of three, changed as another photo could be.
fn square(pictures: &[Picture], chance: &mut ChaCha8Rng) -> Picture {
    let picture = &pictures[chance.random_range(0..pictures.len())];
    let filled = |(left, top): &(usize, usize)| {
        let mut n = 0;
        for y in (*top..top + SIDE).step_by(6) {
            for x in (*left..left + SIDE).step_by(6) {
                n += match picture.class[y * picture.width + x] as usize {
                    PAPER => 0,
                    // There are far fewer of them than bolts.
                    OTHER => 4,
                    _ => 1,
                };
            }
        }
        n
    };
    let (left, top) = (0..3)
        .map(|_| {
            (
                chance.random_range(0..picture.width - SIDE),
                chance.random_range(0..picture.height - SIDE),
            )
        })
        .max_by_key(filled)
        .unwrap_or((0, 0));
    let mut coin = || chance.random::<f64>() < 0.5;
    let (across, down, over) = (coin(), coin(), coin());
    let mut between = |low: f64, high: f64| (low + (high - low) * chance.random::<f64>()) as f32;
    let (light, colour, uneven) = (between(0.85, 1.2), between(0.7, 1.3), between(0.8, 1.2));
    let off = [0.04, 0.03, 0.03].map(|by| (by * normal(chance)) as f32);
    let mut out = Picture {
        width: SIDE,
        height: SIDE,
        cells: Vec::with_capacity(SIDE * SIDE),
        class: Vec::with_capacity(SIDE * SIDE),
        twice: Vec::with_capacity(SIDE * SIDE),
        weight: Vec::with_capacity(SIDE * SIDE),
    };
    for y in 0..SIDE {
        for x in 0..SIDE {
            let (x, y) = if over { (y, x) } else { (x, y) };
            let x = if across { SIDE - 1 - x } else { x };
            let y = if down { SIDE - 1 - y } else { y };
            let at = (top + y) * picture.width + left + x;
            let [grey, red, blue, rough] = picture.cells[at];
            out.cells.push([
                grey * light + off[0],
                red * colour + off[1],
                blue * colour + off[2],
                rough * uneven,
            ]);
            out.class.push(picture.class[at]);
            let [mut c, mut s] = picture.twice[at];
            if across != down {
                s = -s;
            }
            if over {
                c = -c;
            }
            out.twice.push([c, s]);
            out.weight.push(picture.weight[at]);
        }
    }
    out
}

/// Adds the slopes of the loss on one square, and gives the loss.
fn slope(square: &Picture, weights: &[f32], slopes: &mut [f32]) -> f64 {
    let (w, h) = (square.width, square.height);
    let starts = starts();
    let part = |i: usize| &weights[starts[i]..starts[i + 1]];
    let mut first: Vec<[f32; INNER]> = layer(&square.cells, w, h, 1, part(0));
    cut_off(&mut first);
    let mut after = vec![first];
    let mut added = Vec::new();
    for (i, reach) in REACH.into_iter().enumerate() {
        let mut more: Vec<[f32; INNER]> = layer(&after[i], w, h, reach, part(i + 1));
        flattened(&mut more);
        let mut next = after[i].clone();
        for (sum, more) in next.iter_mut().zip(&more) {
            for (s, m) in sum.iter_mut().zip(more) {
                *s += m;
            }
        }
        after.push(next);
        added.push(more);
    }
    let top = REACH.len();
    let out = last(&after[top], part(top + 1));
    let (loss, of_out) = loss(square, &out);
    let begin = starts[top + 1];
    let mut back = vec![[0.0_f32; INNER]; w * h];
    for ((cell, slope), back) in after[top].iter().zip(&of_out).zip(&mut back) {
        for i in 0..INNER {
            for o in 0..OUTER {
                slopes[begin + i * OUTER + o] += cell[i] * slope[o];
                back[i] += weights[begin + i * OUTER + o] * slope[o];
            }
        }
        for o in 0..OUTER {
            slopes[begin + INNER * OUTER + o] += slope[o];
        }
    }
    for i in (0..top).rev() {
        let mut through = back.clone();
        only_where_above(&mut through, &added[i], BELOW);
        let into = &mut slopes[starts[i + 1]..starts[i + 2]];
        layer_back(
            &after[i],
            &through,
            [w, h, REACH[i]],
            part(i + 1),
            into,
            Some(&mut back),
        );
    }
    only_where_above(&mut back, &after[0], 0.0);
    let into = &mut slopes[starts[0]..starts[1]];
    layer_back(&square.cells, &back, [w, h, 1], part(0), into, None);
    loss
}

fn only_where_above(slopes: &mut [[f32; INNER]], values: &[[f32; INNER]], below: f32) {
    for (slope, value) in slopes.iter_mut().zip(values) {
        for (s, v) in slope.iter_mut().zip(value) {
            if *v <= 0.0 {
                *s *= below;
            }
        }
    }
}

/// Loss over a square: how unlikely the true classes are, and how far off the directions.
fn loss(square: &Picture, out: &[[f32; OUTER]]) -> (f64, Vec<[f32; OUTER]>) {
    let n = out.len() as f32;
    let mut total = 0.0;
    let slopes = out
        .iter()
        .enumerate()
        .map(|(at, out)| {
            let mut slope = [0.0; OUTER];
            let class = square.class[at] as usize;
            let weight = square.weight[at] * COUNTED[class] / n;
            if weight == 0.0 {
                return slope;
            }
            let mut scores = [0.0; CLASSES];
            scores.copy_from_slice(&out[..CLASSES]);
            let shares = shares(scores);
            total -= f64::from(shares[class].max(1e-6).ln() * weight);
            for (c, share) in shares.into_iter().enumerate() {
                slope[c] = weight * (share - f32::from(u8::from(c == class)));
            }
            if class == SHANK || class == END {
                for k in 0..2 {
                    let off = out[CLASSES + k] - square.twice[at][k];
                    total += f64::from(0.5 * off * off * weight);
                    slope[CLASSES + k] = weight * off;
                }
            }
            slope
        })
        .collect();
    (total, slopes)
}

/// The slopes of one layer's weights, and of what went into it.
fn layer_back<const I: usize, const O: usize>(
    from: &[[f32; I]],
    of_out: &[[f32; O]],
    [width, height, reach]: [usize; 3],
    weights: &[f32],
    slopes: &mut [f32],
    mut of_from: Option<&mut Vec<[f32; I]>>,
) {
    for place in 0..9 {
        let (skip_to, skip_from) = match place % 3 {
            0 => (reach, 0),
            1 => (0, 0),
            _ => (0, reach),
        };
        let n = width.saturating_sub(skip_to + skip_from);
        let rows = || {
            (0..height)
                .map(|y| (y, (y + place / 3 * reach).wrapping_sub(reach)))
                .filter(|&(_, row)| row < height)
                .map(|(y, row)| (y * width + skip_to, row * width + skip_from))
        };
        // Four inputs at a time, so that their sums stay at hand.
        for four in (0..I).step_by(4) {
            let mut sums = [[0.0_f32; O]; 4];
            for (to, at) in rows() {
                for (slope, value) in of_out[to..to + n].iter().zip(&from[at..at + n]) {
                    for (k, sum) in sums.iter_mut().enumerate() {
                        for o in 0..O {
                            sum[o] += value[four + k] * slope[o];
                        }
                    }
                }
            }
            for (k, sum) in sums.iter().enumerate() {
                let begin = (place * I + four + k) * O;
                for o in 0..O {
                    slopes[begin + o] += sum[o];
                }
            }
        }
        if let Some(of_from) = of_from.as_deref_mut() {
            let mut table = [[0.0_f32; I]; O];
            for i in 0..I {
                for o in 0..O {
                    table[o][i] = weights[(place * I + i) * O + o];
                }
            }
            for (to, at) in rows() {
                for (slope, back) in of_out[to..to + n].iter().zip(&mut of_from[at..at + n]) {
                    let mut here = *back;
                    for o in 0..O {
                        for i in 0..I {
                            here[i] += slope[o] * table[o][i];
                        }
                    }
                    *back = here;
                }
            }
        }
    }
    for slope in of_out {
        for o in 0..O {
            slopes[9 * I * O + o] += slope[o];
        }
    }
}

/// Momentum and scale of each weight's steps.
struct Descent {
    mean: Vec<f32>,
    square: Vec<f32>,
}

impl Descent {
    fn new() -> Self {
        Self {
            mean: vec![0.0; WEIGHTS],
            square: vec![0.0; WEIGHTS],
        }
    }

    fn step(&mut self, weights: &mut [f32], slopes: &[f32], rate: f64, step: usize) {
        const KEPT: (f32, f32) = (0.9, 0.99);
        let steep = slopes
            .iter()
            .map(|&s| f64::from(s) * f64::from(s))
            .sum::<f64>()
            .sqrt();
        let cut = (2.0 / steep.max(1e-9)).min(1.0) as f32;
        let full = |kept: f32| 1.0 - kept.powi(i32::try_from(step).unwrap_or(i32::MAX));
        let (full_mean, full_square) = (full(KEPT.0), full(KEPT.1));
        for (i, weight) in weights.iter_mut().enumerate() {
            let slope = slopes[i] * cut;
            self.mean[i] = KEPT.0 * self.mean[i] + (1.0 - KEPT.0) * slope;
            self.square[i] = KEPT.1 * self.square[i] + (1.0 - KEPT.1) * slope * slope;
            let scale = (self.square[i] / full_square).sqrt() + 1e-8;
            *weight -= rate as f32 * (self.mean[i] / full_mean) / scale;
        }
    }
}

/// How well cells of pictures are told that were not learnt from: for each class, cells in
/// common over cells in either.
fn tried(held: &[Picture], weights: &[f32]) {
    if held.is_empty() {
        return;
    }
    let mut both = [0_usize; CLASSES];
    let mut either = [0_usize; CLASSES];
    for picture in held {
        let known = look(&picture.cells, picture.width, picture.height, weights);
        for (at, known) in known.iter().enumerate() {
            if picture.weight[at] < 1.0 {
                continue;
            }
            let truth = picture.class[at] as usize;
            let told = (0..CLASSES)
                .max_by(|&a, &b| known.class[a].total_cmp(&known.class[b]))
                .unwrap_or(0);
            either[truth] += 1;
            if told == truth {
                both[truth] += 1;
            } else {
                either[told] += 1;
            }
        }
    }
    let shares: Vec<String> = both
        .iter()
        .zip(either)
        .map(|(&b, e)| format!("{:.3}", b as f64 / e.max(1) as f64))
        .collect();
    println!(
        "  left out, paper, head, shank, end, other: {}",
        shares.join(" ")
    );
}

#[cfg(test)]
mod tests {
    use super::*;

    fn by_chance(chance: &mut ChaCha8Rng, side: usize) -> Picture {
        let n = side * side;
        Picture {
            width: side,
            height: side,
            cells: (0..n)
                .map(|_| [0; CHANNELS].map(|_| normal(chance) as f32))
                .collect(),
            class: (0..n)
                .map(|_| chance.random_range(0..CLASSES) as u8)
                .collect(),
            twice: (0..n)
                .map(|_| [normal(chance) as f32, normal(chance) as f32])
                .collect(),
            weight: (0..n).map(|_| chance.random()).collect(),
        }
    }

    #[test]
    fn slopes_are_what_the_loss_changes_by() {
        let mut chance = ChaCha8Rng::seed_from_u64(7);
        let square = by_chance(&mut chance, 20);
        let mut weights = begun(&mut chance);
        let mut slopes = vec![0.0; WEIGHTS];
        slope(&square, &weights, &mut slopes);
        let mut nothing = vec![0.0; WEIGHTS];
        let starts = starts();
        for l in 0..starts.len() - 1 {
            for _ in 0..6 {
                let i = chance.random_range(starts[l]..starts[l + 1]);
                let kept = weights[i];
                let step = 2e-4;
                weights[i] = kept + step;
                let above = slope(&square, &weights, &mut nothing);
                weights[i] = kept - step;
                let below = slope(&square, &weights, &mut nothing);
                weights[i] = kept;
                let change = (above - below) / f64::from(2.0 * step);
                let told = f64::from(slopes[i]);
                assert!(
                    (change - told).abs() < 0.02 * change.abs() + 2e-3,
                    "layer {l}, weight {i}: {told} for {change}"
                );
            }
        }
    }
}
