//! What one bolt is taken for: all that it could be, listed or sold, weighed.

use crate::bolt::Head;
use crate::count::{Decided, Group, Measured, OFF_LIST, SOLD_MM, fits, size_of};

/// How much is held against the list: that the bolt is of the same thread and one other length
/// (far more than it happens, so that what was measured decides and not what is expected), one
/// that is listed for another group, of the thread of another group, any other.
const OFF_LIST_SAME_THREAD: f64 = 0.06;
/// High enough that a swap with another group, of a thread that is hard to tell, is asked about.
const OFF_LIST_OTHER_GROUP: f64 = 0.02;
const OFF_LIST_OTHER_THREAD: f64 = 0.004;
const OFF_LIST_ANY: f64 = 0.0005;
/// Where its length is listed, with another thread, that thread was likely read wrong.
const SAME_LENGTH_OTHER_THREAD: f64 = 0.04;
/// How often something that is no bolt is measured like one that is listed, while that is missing.
const LIKE_A_LISTED: f64 = 0.02;
/// How much a length is off that is far off.
const FAR_OFF_MM: f64 = 3.0;
/// How often the size that fits best is not the true one though it fits much better.
const WRONG_SIZE: f64 = 0.03;
/// Which share of the way to the next length that is sold a length may be off, and the doubt there
/// is beyond.
const COARSE_SHARE: f64 = 0.43;
const DOUBT_WHERE_COARSE: f64 = 0.2;
/// How much of a place of the list is left where the others seem to take it whole.
const LEFT_AT_LEAST: f64 = 0.05;
/// A bolt is sure if what it could be instead is less likely than this.
const SURE_BELOW: f64 = 0.05;

/// How much is held against a length that is not listed, where it is asked which head a group has.
const OFF_LIST_FOR_HEADS: f64 = 0.05;
/// How little of a bolt speaks for any head of its group at least: it may be of another part.
const OF_ANOTHER_PART: f64 = 0.03;
/// How often a bolt has another head than those of its group.
const OTHER_HEAD: f64 = 0.04;

/// What a bolt may be, and how likely; how far off the length then was, and how much of the chance
/// goes with that.
pub struct Taken {
    pub size: usize,
    pub length_mm: f64,
    pub chance: f64,
    off: (f64, f64),
}

/// Shares of the heads that each group's bolts have: those of one part have one head. A head taken
/// for another one makes every length of the part wrong by the same, so that the listed lengths
/// speak for the head with which most of them come out.
pub type Heads = Vec<[f64; Head::ALL.len()]>;

/// The shares of heads, group by group.
pub fn heads(groups: &[Group], lies_with: &[Option<usize>], measured: &[Measured]) -> Heads {
    let of_group = |(g, group): (usize, &Group)| {
        let mut logs = [0.0; Head::ALL.len()];
        let size = size_of(&group.thread).unwrap_or_default();
        for (one, with) in measured.iter().zip(lies_with) {
            if with.is_some_and(|with| with != g) {
                continue;
            }
            for (log, &(behind, length)) in logs.iter_mut().zip(&one.readings[size]) {
                let listed = group.lengths.iter().map(|l| (l, 1.0));
                let sold = SOLD_MM.iter().map(|l| (l, OFF_LIST_FOR_HEADS));
                let fit = listed
                    .chain(sold)
                    .map(|(whole, counts)| counts * fits_length(length - whole, one))
                    .fold(0.0, f64::max);
                *log += libm::log(fit * libm::exp(-behind) + OF_ANOTHER_PART);
            }
        }
        let most = logs.iter().copied().fold(f64::MIN, f64::max);
        let shares = logs.map(|log| libm::exp(log - most));
        let all: f64 = shares.iter().sum();
        shares.map(|s| (1.0 - OTHER_HEAD) * s / all + OTHER_HEAD / shares.len() as f64)
    };
    groups.iter().enumerate().map(of_group).collect()
}

/// All that a bolt may be, listed or sold; `others` says how many of a size and length the other
/// bolts of its group are taken for.
pub fn taken_for(
    (groups, heads): (&[Group], &Heads),
    group: Option<usize>,
    measured: &Measured,
    others: &dyn Fn(usize, f64) -> (f64, f64),
) -> Vec<Taken> {
    let mut lengths: Vec<f64> = SOLD_MM.to_vec();
    lengths.extend(groups.iter().flat_map(|g| g.lengths.iter().copied()));
    lengths.sort_by(f64::total_cmp);
    lengths.dedup();
    let readings = &measured.readings;
    let least = readings
        .iter()
        .flatten()
        .map(|r| r.0)
        .fold(f64::MAX, f64::min);
    let even = 1.0 / Head::ALL.len() as f64;
    let mut out = Vec::new();
    let mut all = 1e-9 + (1.0 - measured.bolt_chance) * LIKE_A_LISTED * even;
    for (size, by_head) in readings.iter().enumerate() {
        // The heads of what is listed in this size there.
        let listed = |g: &usize| group.is_none_or(|only| only == *g) && fits(&groups[*g], size);
        let shares = (0..groups.len()).filter(listed).map(|g| heads[g]).fold(
            [0.0_f64; Head::ALL.len()],
            |mut most, shares| {
                for (most, share) in most.iter_mut().zip(shares) {
                    *most = most.max(share);
                }
                most
            },
        );
        for &whole in &lengths {
            let prior = expected(groups, group, (size, whole), others(size, whole));
            let mut taken = Taken {
                size,
                length_mm: whole,
                chance: 0.0,
                off: (0.0, 0.0),
            };
            for (&(behind, length), share) in by_head.iter().zip(shares) {
                let fit = fits_length(length - whole, measured) * fits_size(behind - least);
                let share = if share > 0.0 { share } else { even };
                let chance = measured.bolt_chance * fit * prior * share;
                taken.chance += chance;
                if chance > taken.off.1 {
                    taken.off = (length - whole, chance);
                }
            }
            if taken.chance > 1e-9 {
                all += taken.chance;
                out.push(taken);
            }
        }
    }
    for one in &mut out {
        one.chance /= all;
    }
    out
}

/// What a bolt is: listed or sold, whichever is likeliest, and how likely it is anything else.
pub fn decide(
    listed: (&[Group], &Heads),
    group: Option<usize>,
    measured: &Measured,
    others: &dyn Fn(usize, f64) -> (f64, f64),
) -> Decided {
    let all = taken_for(listed, group, measured, others);
    let best = all.iter().max_by(|a, b| a.chance.total_cmp(&b.chance));
    let (size, length_mm, chance, off) = best.map_or((0, 0.0, 0.0, 0.0), |t| {
        (t.size, t.length_mm, t.chance, t.off.0.abs())
    });
    // What is measured no better than lengths lie apart may agree with the list by chance.
    let gap = SOLD_MM
        .iter()
        .map(|sold| (sold - length_mm).abs())
        .filter(|&away| away > 0.01)
        .fold(f64::MAX, f64::min);
    let coarse = measured.error_mm.max(off) > COARSE_SHARE * gap;
    let doubt = (1.0 - chance).max(if coarse { DOUBT_WHERE_COARSE } else { 0.0 });
    Decided {
        size,
        length_mm,
        sure: doubt < SURE_BELOW,
        doubt,
    }
}

/// How likely a bolt of one size is read as another one, by how much better that one fits: in a
/// few of a hundred by much more than should be.
fn fits_size(behind: f64) -> f64 {
    (1.0 - WRONG_SIZE) * libm::exp(-behind) + WRONG_SIZE * libm::exp(-behind / 12.0)
}

/// How likely a length is measured this far off, against one that is right and was seen well.
fn fits_length(off_mm: f64, measured: &Measured) -> f64 {
    let within = |spread: f64| libm::exp(-0.5 * (off_mm / spread) * (off_mm / spread)) / spread;
    let error = measured.error_mm.max(0.3);
    let far = measured.far_off;
    ((1.0 - far) * within(error) + far * within(FAR_OFF_MM.max(error))) * 0.3
}

/// How likely a bolt is of this size and length before it is looked at; `others`: how many of
/// its group are taken for that, and how many there are.
fn expected(
    groups: &[Group],
    group: Option<usize>,
    (size, length): (usize, f64),
    (others, all_others): (f64, f64),
) -> f64 {
    if groups.is_empty() {
        return 1.0;
    }
    let (mut mine, mut all) = (0_usize, 0_usize);
    let (mut thread, mut elsewhere, mut other_thread) = (false, false, false);
    let mut length_listed = false;
    for (i, g) in groups.iter().enumerate() {
        let of_it = group.is_none_or(|only| only == i);
        let fits = fits(g, size);
        let same = g
            .lengths
            .iter()
            .filter(|l| (**l - length).abs() < 0.01)
            .count();
        if of_it {
            all += g.lengths.len();
            mine += if fits { same } else { 0 };
            thread |= fits;
            length_listed |= same > 0;
        } else {
            elsewhere |= fits && same > 0;
            other_thread |= fits;
        }
    }
    let other = if length_listed {
        SAME_LENGTH_OTHER_THREAD
    } else {
        1.0
    };
    let off = if elsewhere {
        OFF_LIST_OTHER_GROUP
    } else if thread {
        OFF_LIST_SAME_THREAD
    } else if other_thread {
        OFF_LIST_OTHER_THREAD * other
    } else {
        OFF_LIST_ANY * other
    };
    let left = if mine > 0 {
        (mine as f64 - others).max(LEFT_AT_LEAST)
    } else {
        0.0
    };
    off + (1.0 - OFF_LIST) * left / (all as f64 - all_others).max(1.0)
}
