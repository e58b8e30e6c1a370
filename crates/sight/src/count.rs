//! What was found against what is expected, group by group.

use crate::bolt::{Head, SIZES};
use crate::decide::{Taken, decide, heads, taken_for};
use thiserror::Error;

/// Lengths that bolts are sold in, in millimetres (preferred numbers of ISO 888, with the 75 that
/// vehicles have), from common practice.
pub const SOLD_MM: [f64; 21] = [
    6.0, 8.0, 10.0, 12.0, 16.0, 20.0, 25.0, 30.0, 35.0, 40.0, 45.0, 50.0, 55.0, 60.0, 65.0, 70.0,
    75.0, 80.0, 90.0, 100.0, 110.0,
];
/// Most groups, and most pieces of a group, that are taken.
pub const MOST: usize = 200;
/// How often a bolt is one that is not on its group's list.
pub(crate) const OFF_LIST: f64 = 0.05;

/// What one bolt is listed as.
#[derive(Debug, Clone, PartialEq)]
pub struct Listed {
    /// Thread as written, "M8" or "M8x1".
    pub thread: String,
    /// Under the head.
    pub length_mm: f64,
}

/// What should be there.
#[derive(Debug, Clone, PartialEq)]
pub struct Group {
    /// What it is called.
    pub name: String,
    /// Thread as written.
    pub thread: String,
    /// Lengths under the head, one for each bolt.
    pub lengths: Vec<f64>,
    /// Where on the sheet it was laid: x0, y0, x1, y1 in millimetres.
    pub area_mm: Option<[f64; 4]>,
}

/// Why a list cannot be counted against.
#[derive(Debug, Error, PartialEq)]
pub enum ListError {
    /// A thread of which the sizes are not known.
    #[error(
        "{group}: {thread} is not a thread that is known here: M5, M6, M8, M10 and M12 are, with a pitch or without"
    )]
    Thread {
        /// The group.
        group: String,
        /// What stands there.
        thread: String,
    },
    /// A length that no bolt on a sheet has.
    #[error("{group}: a length of {length_mm} mm: lengths from 5 to 130 mm can be measured")]
    Length {
        /// The group.
        group: String,
        /// What stands there.
        length_mm: f64,
    },
    /// An area that is none.
    #[error("{group}: its area on the sheet needs x0 < x1 and y0 < y1, in millimetres")]
    Area {
        /// The group.
        group: String,
    },
    /// Too much.
    #[error("{what}: up to {MOST} are counted; split the list")]
    TooMany {
        /// Of what.
        what: String,
    },
    /// The same name twice.
    #[error("{group}: there are two groups of that name: give each its own")]
    Twice {
        /// The group.
        group: String,
    },
}

/// A bolt as measured: what it may be.
#[derive(Debug, Clone, PartialEq)]
pub struct Measured {
    /// Middle on the sheet.
    pub middle_mm: [f64; 2],
    /// For each of [`SIZES`] and each head: how much less likely than the best (0 for it, else
    /// above), and the length that goes with it.
    pub readings: [[(f64, f64); Head::ALL.len()]; SIZES.len()],
    /// How much the length may be off.
    pub error_mm: f64,
    /// How often it is off by far more.
    pub far_off: f64,
    /// Whether it was seen well.
    pub clear: bool,
    /// How likely it is a bolt at all.
    pub bolt_chance: f64,
}

impl Measured {
    /// For each of [`SIZES`] the reading of the head that fits best.
    #[must_use]
    pub fn by_size(&self) -> [(f64, f64); SIZES.len()] {
        self.readings.map(|heads| {
            heads
                .into_iter()
                .fold((f64::MAX, 0.0), |a, b| if b.0 < a.0 { b } else { a })
        })
    }
}

/// Something that was not taken for a bolt and might be one.
#[derive(Debug, Clone, PartialEq)]
pub struct Doubtful {
    /// Middle on the sheet.
    pub middle_mm: [f64; 2],
    /// How likely it is a bolt that was not made out.
    pub bolt_chance: f64,
    /// The longer side of it.
    pub long_mm: f64,
    /// Its area.
    pub mm2: f64,
}

impl Doubtful {
    /// Whether a bolt of this size could be hidden in it.
    fn could_be(&self, size: usize, length_mm: f64) -> bool {
        let thread = SIZES[size].thread;
        self.long_mm > 0.75 * (length_mm + 0.6 * thread) && self.mm2 > 0.5 * thread * length_mm
    }
}

/// A bolt as decided.
#[derive(Debug, Clone, PartialEq)]
pub struct Decided {
    /// Which of [`SIZES`].
    pub size: usize,
    /// Length as listed or sold.
    pub length_mm: f64,
    /// Whether no other reading comes near.
    pub sure: bool,
    /// How likely it is something else.
    pub doubt: f64,
}

/// What a group comes to.
#[derive(Debug, Clone, PartialEq)]
pub struct Counted {
    /// Its name.
    pub name: String,
    /// How many are expected.
    pub expected: usize,
    /// How many lie there.
    pub found: usize,
    /// Listed, and not there.
    pub missing: Vec<Listed>,
    /// There, and not listed.
    pub extra: Vec<Listed>,
    /// Listed, and there is another one in its place: listed, found.
    pub wrong: Vec<(Listed, Listed)>,
    /// Bolts of this group that could be something else, by place in the list of measured ones.
    pub unsure: Vec<usize>,
    /// How likely this group's answer is another one.
    pub doubt: f64,
}

impl Counted {
    /// Whether everything listed is there, and nothing else.
    #[must_use]
    pub fn agrees(&self) -> bool {
        self.missing.is_empty() && self.extra.is_empty() && self.wrong.is_empty()
    }
}

/// Which of [`SIZES`] a thread is, by its diameter: "M8x1" is an M8.
#[must_use]
pub fn size_of(thread: &str) -> Option<usize> {
    let upper = thread.trim().to_ascii_uppercase().replace('\u{d7}', "X");
    let diameter = upper.split('X').next().unwrap_or_default().trim();
    SIZES.iter().position(|size| size.name == diameter)
}

/// Looks through a list before anything is counted against it.
///
/// # Errors
/// [`ListError`]: what cannot be counted, and what can.
pub fn check(groups: &[Group]) -> Result<(), ListError> {
    if groups.len() > MOST {
        return Err(ListError::TooMany {
            what: "groups".to_owned(),
        });
    }
    for (i, group) in groups.iter().enumerate() {
        let name = || group.name.clone();
        if groups[..i].iter().any(|other| other.name == group.name) {
            return Err(ListError::Twice { group: name() });
        }
        if group.lengths.len() > MOST {
            return Err(ListError::TooMany { what: name() });
        }
        if size_of(&group.thread).is_none() {
            return Err(ListError::Thread {
                group: name(),
                thread: group.thread.clone(),
            });
        }
        let wrong = |l: &&f64| !(5.0..=130.0).contains(*l);
        if let Some(&length_mm) = group.lengths.iter().find(wrong) {
            return Err(ListError::Length {
                group: name(),
                length_mm,
            });
        }
        if let Some([x0, y0, x1, y1]) = group.area_mm {
            let right = [x0, y0, x1, y1].iter().all(|v| v.abs() < 1e4) && x0 < x1 && y0 < y1;
            if !right {
                return Err(ListError::Area { group: name() });
            }
        }
    }
    Ok(())
}

/// Counts against the list. Each bolt belongs to the group on whose area it lies (or to the
/// nearest one); without areas all bolts are shared out so that as much as possible agrees.
#[must_use]
pub fn count(
    groups: &[Group],
    measured: &[Measured],
    doubtful: &[Doubtful],
) -> (Vec<Counted>, Vec<Decided>) {
    let apart = groups.len() == 1 || groups.iter().all(|g| g.area_mm.is_some());
    let lies_with: Vec<Option<usize>> = measured
        .iter()
        .map(|m| apart.then(|| nearest_group(groups, m.middle_mm)).flatten())
        .collect();
    let heads = heads(groups, &lies_with, measured);
    let taken_for: Vec<Vec<Taken>> = measured
        .iter()
        .zip(&lies_with)
        .map(|(m, group)| taken_for((groups, &heads), *group, m, &|_, _| (0.0, 0.0)))
        .collect();
    // Each place of the list is there once: what the others are taken for leaves the fewer of it.
    let decided: Vec<Decided> = (0..measured.len())
        .map(|i| {
            let with = |other: usize| other != i && lies_with[other] == lies_with[i];
            let all = (0..measured.len()).filter(|&other| with(other)).count();
            let others = |size: usize, length: f64| {
                let of_it = (0..measured.len())
                    .filter(|&other| with(other))
                    .flat_map(|other| &taken_for[other])
                    .filter(|t| t.size == size && (t.length_mm - length).abs() < 0.01)
                    .map(|t| t.chance)
                    .sum();
                (of_it, all as f64)
            };
            decide((groups, &heads), lies_with[i], &measured[i], &others)
        })
        .collect();
    let shared = if apart {
        lies_with
    } else {
        share_out(groups, &decided).into_iter().map(Some).collect()
    };
    let counted = (0..groups.len())
        .map(|g| {
            let mine: Vec<usize> = (0..measured.len())
                .filter(|&i| shared[i] == Some(g))
                .collect();
            let near: Vec<&Doubtful> = doubtful
                .iter()
                .filter(|d| !apart || nearest_group(groups, d.middle_mm) == Some(g))
                .collect();
            compare(&groups[g], &mine, measured, &decided, &near)
        })
        .collect();
    (counted, decided)
}

fn nearest_group(groups: &[Group], [x, y]: [f64; 2]) -> Option<usize> {
    let away = |group: &Group| {
        group.area_mm.map_or(0.0, |[x0, y0, x1, y1]| {
            let dx = (x0 - x).max(x - x1).max(0.0);
            let dy = (y0 - y).max(y - y1).max(0.0);
            libm::hypot(dx, dy)
        })
    };
    (0..groups.len()).min_by(|&a, &b| away(&groups[a]).total_cmp(&away(&groups[b])))
}

/// How often what was not made out is one too many, where none is missing: nuts and clips look like
/// short bolts far more often.
const EXTRA_NOT_MADE_OUT: f64 = 0.12;
/// How rare it is that one is too many, or another one, or missing: what it is held against that
/// something which is no bolt was taken for one, or a bolt for something else.
const RARE_EXTRA: f64 = 0.08;
const RARE_WRONG: f64 = 0.3;
const RARE_MISSING: f64 = 0.3;

pub(crate) fn fits(group: &Group, size: usize) -> bool {
    size_of(&group.thread) == Some(size)
}

/// Shares bolts out among groups laid together: first what agrees, then what has the thread.
fn share_out(groups: &[Group], decided: &[Decided]) -> Vec<usize> {
    let mut open: Vec<Vec<f64>> = groups.iter().map(|g| g.lengths.clone()).collect();
    let mut shared: Vec<Option<usize>> = vec![None; decided.len()];
    for (one, place) in decided.iter().zip(&mut shared) {
        for (g, open) in open.iter_mut().enumerate() {
            let same = |l: &f64| (l - one.length_mm).abs() < 0.01;
            if fits(&groups[g], one.size)
                && let Some(at) = open.iter().position(same)
            {
                open.swap_remove(at);
                *place = Some(g);
                break;
            }
        }
    }
    for (one, place) in decided.iter().zip(&mut shared) {
        if place.is_some() {
            continue;
        }
        // The group that lacks one, of the same thread if there is one, nearest in length.
        let far = |g: usize| {
            let nearest = open[g]
                .iter()
                .map(|l| (l - one.length_mm).abs())
                .fold(f64::MAX, f64::min);
            let lacks = if nearest == f64::MAX { 500.0 } else { nearest };
            lacks + if fits(&groups[g], one.size) { 0.0 } else { 1e3 }
        };
        let group = (0..groups.len()).min_by(|&a, &b| far(a).total_cmp(&far(b)));
        if let Some(g) = group {
            let nearest = (0..open[g].len()).min_by(|&a, &b| {
                let away = |i: usize| (open[g][i] - one.length_mm).abs();
                away(a).total_cmp(&away(b))
            });
            if let Some(at) = nearest {
                open[g].swap_remove(at);
            }
        }
        *place = group;
    }
    shared.into_iter().map(|g| g.unwrap_or(0)).collect()
}

/// One group against its list: what is on one side only pairs up, nearest first, as `wrong`.
fn compare(
    group: &Group,
    mine: &[usize],
    measured: &[Measured],
    decided: &[Decided],
    doubtful: &[&Doubtful],
) -> Counted {
    let mut open = group.lengths.clone();
    let mut over: Vec<usize> = Vec::new();
    for &i in mine {
        let one = &decided[i];
        let same = |l: &f64| (l - one.length_mm).abs() < 0.01;
        match open.iter().position(same) {
            Some(at) if fits(group, one.size) => {
                open.remove(at);
            }
            _ => over.push(i),
        }
    }
    let listed = |length_mm: f64| Listed {
        thread: group.thread.clone(),
        length_mm,
    };
    let shown = |one: &Decided| Listed {
        // The pitch cannot be seen: the listed thread of that diameter is meant.
        thread: if fits(group, one.size) {
            group.thread.clone()
        } else {
            SIZES[one.size].name.to_owned()
        },
        length_mm: one.length_mm,
    };
    let mut doubt: f64 = mine.iter().map(|&i| decided[i].doubt).sum();
    let mut wrong = Vec::new();
    while !open.is_empty() && !over.is_empty() {
        let mut best = (f64::MAX, 0, 0);
        for (i, length) in open.iter().enumerate() {
            for (j, one) in over.iter().map(|&i| &decided[i]).enumerate() {
                let other = if fits(group, one.size) { 0.0 } else { 30.0 };
                let far = (length - one.length_mm).abs() + other;
                if far < best.0 {
                    best = (far, i, j);
                }
            }
        }
        let (length, i) = (open.remove(best.1), over.remove(best.2));
        let none = 1.0 - measured[i].bolt_chance;
        doubt += none / (none + RARE_WRONG);
        wrong.push((listed(length), shown(&decided[i])));
    }
    for &i in &over {
        let none = 1.0 - measured[i].bolt_chance;
        doubt += none / (none + RARE_EXTRA);
    }
    let size = size_of(&group.thread).unwrap_or_default();
    for one in doubtful {
        let hides = open.iter().any(|&l| one.could_be(size, l))
            || wrong.iter().any(|w| one.could_be(size, w.0.length_mm));
        doubt += if hides {
            one.bolt_chance / (one.bolt_chance + RARE_MISSING)
        } else {
            let extra = one.bolt_chance * EXTRA_NOT_MADE_OUT;
            extra / (extra + 1.0 - one.bolt_chance)
        };
    }
    Counted {
        name: group.name.clone(),
        expected: group.lengths.len(),
        found: mine.len(),
        missing: open.into_iter().map(listed).collect(),
        extra: over.iter().map(|&i| shown(&decided[i])).collect(),
        wrong,
        unsure: mine.iter().copied().filter(|&i| !decided[i].sure).collect(),
        doubt: doubt.min(1.0),
    }
}

#[cfg(test)]
mod tests {
    use super::check as check_all;
    use super::*;

    fn group(name: &str, thread: &str, lengths: &[f64], area: Option<[f64; 4]>) -> Group {
        Group {
            name: name.to_owned(),
            thread: thread.to_owned(),
            lengths: lengths.to_vec(),
            area_mm: area,
        }
    }

    fn bolt(size: usize, length: f64, x: f64) -> Measured {
        let mut readings = [[(40.0, length); Head::ALL.len()]; SIZES.len()];
        readings[size][0] = (0.0, length);
        Measured {
            middle_mm: [x, 100.0],
            readings,
            error_mm: 0.6,
            far_off: 0.03,
            clear: true,
            bolt_chance: 0.99,
        }
    }

    #[test]
    fn what_lies_there_as_listed_agrees() {
        let groups = [group("cover", "M8x1", &[30.0, 30.0, 75.0], None)];
        let (counted, decided) = count(
            &groups,
            &[
                bolt(2, 30.4, 50.0),
                bolt(2, 74.2, 90.0),
                bolt(2, 29.8, 10.0),
            ],
            &[],
        );
        assert!(counted[0].agrees());
        assert_eq!((counted[0].expected, counted[0].found), (3, 3));
        assert!(counted[0].unsure.is_empty() && decided.iter().all(|d| d.sure));
    }

    #[test]
    fn missing_extra_and_wrong_are_told_apart() {
        let groups = [group("cover", "M8", &[30.0, 30.0, 75.0], None)];
        let (missing, _) = count(&groups, &[bolt(2, 30.0, 1.0), bolt(2, 75.0, 2.0)], &[]);
        assert_eq!(missing[0].missing.len(), 1);
        assert_eq!(missing[0].missing[0].length_mm, 30.0);
        let four = [
            bolt(2, 30.0, 1.0),
            bolt(2, 75.0, 2.0),
            bolt(2, 30.0, 3.0),
            bolt(1, 16.0, 4.0),
        ];
        let (extra, _) = count(&groups, &four, &[]);
        assert_eq!(extra[0].extra[0].thread, "M6");
        let (wrong, _) = count(
            &groups,
            &[bolt(2, 30.0, 1.0), bolt(2, 80.2, 2.0), bolt(2, 30.0, 3.0)],
            &[],
        );
        let (listed, found) = &wrong[0].wrong[0];
        assert_eq!((listed.length_mm, found.length_mm), (75.0, 80.0));
        assert!(wrong[0].missing.is_empty() && wrong[0].extra.is_empty());
    }

    #[test]
    fn a_swap_shows_only_where_groups_lie_apart() {
        let areas = [
            Some([0.0, 0.0, 100.0, 200.0]),
            Some([110.0, 0.0, 200.0, 200.0]),
        ];
        let swapped = [bolt(2, 40.0, 50.0), bolt(1, 30.0, 150.0)];
        let lists = |areas: [Option<[f64; 4]>; 2]| {
            [
                group("left", "M6", &[30.0], areas[0]),
                group("right", "M8", &[40.0], areas[1]),
            ]
        };
        let (apart, _) = count(&lists(areas), &swapped, &[]);
        assert!(apart.iter().all(|g| g.wrong.len() == 1));
        let (together, _) = count(&lists([None, None]), &swapped, &[]);
        assert!(together.iter().all(Counted::agrees));
    }

    /// Bolts whose heads were taken for another kind, which makes each three and a half millimetres
    /// too long; as the head they have they fit a little less well.
    fn with_another_head(lengths: &[f64]) -> Vec<Measured> {
        let of = |(i, length): (usize, &f64)| {
            let mut one = bolt(2, length + 3.5, 10.0 + 20.0 * i as f64);
            one.readings[2][2] = (1.5, *length);
            one
        };
        lengths.iter().enumerate().map(of).collect()
    }

    #[test]
    fn the_lengths_of_a_part_say_which_head_it_has() {
        let lengths = [60.0, 80.0, 80.0, 80.0, 100.0];
        let groups = [group("cover", "M8", &lengths, None)];
        let (counted, decided) = count(&groups, &with_another_head(&lengths), &[]);
        assert!(counted[0].agrees(), "{:?}", counted[0]);
        assert!(decided.iter().all(|d| d.doubt < 0.18), "{decided:?}");
        // One of another length does not pass for it.
        let wrong = with_another_head(&[60.0, 80.0, 75.0, 80.0, 100.0]);
        let (counted, _) = count(&groups, &wrong, &[]);
        assert_eq!(counted[0].wrong.len(), 1);
        assert_eq!(counted[0].wrong[0].1.length_mm, 75.0);
    }

    #[test]
    fn a_nut_that_looks_like_a_short_bolt_is_no_bolt_too_many() {
        let groups = [group("cover", "M8", &[30.0], None)];
        let nut = Doubtful {
            middle_mm: [90.0, 90.0],
            bolt_chance: 0.8,
            long_mm: 19.0,
            mm2: 150.0,
        };
        let there = bolt(2, 30.1, 10.0);
        let (counted, _) = count(&groups, &[there], std::slice::from_ref(&nut));
        assert!(
            counted[0].agrees() && counted[0].doubt < 0.6,
            "{:?}",
            counted[0]
        );
        // It may be the bolt that is missing, if it is as long.
        let (counted, _) = count(
            &groups,
            &[],
            &[Doubtful {
                long_mm: 36.0,
                ..nut
            }],
        );
        assert!(counted[0].doubt > 0.6, "{:?}", counted[0]);
    }

    #[test]
    fn what_lies_between_two_lengths_is_not_sure() {
        let groups = [group("cover", "M8", &[75.0], None)];
        let (counted, decided) = count(&groups, &[bolt(2, 77.7, 1.0)], &[]);
        assert!(!decided[0].sure);
        assert_eq!(counted[0].unsure, [0]);
    }

    #[test]
    fn nothing_where_something_is_listed_never_agrees() {
        let groups = [group("cover", "M8", &[75.0], None)];
        let (counted, _) = count(&groups, &[], &[]);
        assert!(!counted[0].agrees());
    }

    #[test]
    fn a_list_that_cannot_be_counted_says_why() {
        let check = |g: Group| check_all(&[g]).unwrap_err().to_string();
        assert!(check(group("a", "M14", &[30.0], None)).contains("M14"));
        assert!(check(group("a", "M8", &[f64::NAN], None)).contains("length"));
        assert!(check(group("a", "M8", &[30.0], Some([9.0, 0.0, 2.0, 3.0]))).contains("area"));
        let two = [group("a", "M8", &[], None), group("a", "M6", &[], None)];
        assert!(check_all(&two).is_err());
    }

    #[test]
    fn threads_are_read_by_their_diameter() {
        assert_eq!(size_of("M8x1"), Some(2));
        assert_eq!(size_of("m10 x 1.25"), Some(3));
        assert_eq!(size_of("M12\u{d7}1.5"), Some(4));
        assert_eq!(size_of("M14"), None);
        assert_eq!(size_of(""), None);
    }
}
