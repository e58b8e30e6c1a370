//! How sure counts make us: the chance that one move is needed before another, and the
//! chance that the opposite sequence would have shown by now if it were possible.

use rustc_hash::FxHashMap;

/// What is believed before the first job, and how far jobs are trusted.
///
/// Two moves of one vehicle stand in one of three ways: the first is needed before the second,
/// the second before the first, or either sequence will do. The model says how likely what was
/// seen is under each.
///
/// **One is needed before the other.** Each job shows them in that sequence, but for the
/// share `mistold` in which somebody tapped them in the wrong one. A job in which the second
/// was moved and the first was not speaks against it, but for the share `untold`.
///
/// **Either will do.** The pair has a leaning, which all people share: how often the first
/// comes first (because it is nearer, or at the same place). Its spread is [`LEANINGS`]. Of
/// the people, the share `habit` took up one sequence once, by that leaning, and keeps to it
/// for ever; the others choose anew each time. So a person's fixed habit is one witness,
/// however many jobs he does.
///
/// # Assumptions
///
/// - People are independent but for the leaning, and errors are independent of each other.
/// - Those who often work together are one witness ([`crate::Learner`] says how).
/// - A convenience that everybody shares beyond the leanings looks like a need, and is taken for one:
///   a plan may then be stricter than it has to be, and still can be carried out.
/// - What kind of job it was does not change what is needed.
///
/// # Limits
///
/// Each share lies above 0 and below 1; what does not is moved to the nearest that does.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Model {
    /// The share of jobs that show two moves in the wrong sequence.
    pub mistold: f64,
    /// The share of moves that were made and not told.
    pub untold: f64,
    /// The share of people with one fixed sequence where either will do.
    pub habit: f64,
    /// The share of pairs of which one is needed before the other.
    pub needed: f64,
}

impl Default for Model {
    /// Entered by judgement, and held against simulated shops by the tests.
    fn default() -> Self {
        Self {
            mistold: 0.02,
            untold: 0.02,
            habit: 0.5,
            needed: 0.5,
        }
    }
}

/// How lopsided pairs are of which either sequence will do: how often the first comes first,
/// and of how many sixteenths of all pairs that holds. Mirrored, so that names do not matter.
pub const LEANINGS: [(f64, f64); 7] = [
    (0.02, 1.0),
    (0.1, 2.0),
    (0.3, 3.0),
    (0.5, 4.0),
    (0.7, 3.0),
    (0.9, 2.0),
    (0.98, 1.0),
];

const SIXTEENTHS: f64 = 16.0;

/// What was seen of two moves.
#[derive(Debug, Clone, PartialEq, Eq, Default)]
pub struct Evidence {
    /// For each witness, how often the first came first, and how often the second.
    pub runs: Vec<(u32, u32)>,
    /// Jobs in which both were moved in one go.
    pub together: u32,
    /// Jobs in which the first was moved and the second was not.
    pub first_alone: u32,
    /// Jobs in which the second was moved and the first was not.
    pub second_alone: u32,
}

impl Evidence {
    /// How often the first came first, and how often the second.
    #[must_use]
    pub fn totals(&self) -> (u32, u32) {
        let add = |(a, b): (u32, u32), (c, d): &(u32, u32)| (a + c, b + d);
        self.runs.iter().fold((0, 0), add)
    }

    pub(crate) fn turned(&self) -> Evidence {
        Evidence {
            runs: self
                .runs
                .iter()
                .map(|(there, back)| (*back, *there))
                .collect(),
            together: self.together,
            first_alone: self.second_alone,
            second_alone: self.first_alone,
        }
    }
}

/// The chances of the three ways in which two moves may stand; they add up to 1.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Chances {
    /// The first is needed before the second.
    pub first: f64,
    /// The second is needed before the first.
    pub second: f64,
    /// Either sequence will do.
    pub either: f64,
}

/// A model with what it has reckoned, for the many pairs of one vehicle.
#[derive(Debug)]
pub(crate) struct Judge {
    right: f64,
    wrong: f64,
    alone: f64,
    habit: f64,
    needed: f64,
    /// For each run of one witness, the logarithm of its chance under each leaning.
    runs: FxHashMap<(u32, u32), [f64; LEANINGS.len()]>,
}

impl Model {
    /// The chances of the three ways, from what was seen.
    ///
    /// ```
    /// use lessons::{Evidence, Model};
    ///
    /// let of = |runs: &[(u32, u32)]| {
    ///     let runs = runs.to_vec();
    ///     Model::default().chances(&Evidence { runs, ..Evidence::default() })
    /// };
    /// // Ten jobs by five people say more than a hundred by one.
    /// assert!(of(&[(2, 0); 5]).first > of(&[(100, 0)]).first);
    /// // One job told wrong does not undo twenty.
    /// assert!(of(&[(5, 0), (5, 0), (5, 1), (5, 0)]).first > 0.5);
    /// // Five each way are no error.
    /// assert!(of(&[(5, 0), (0, 5)]).either > 0.99);
    /// ```
    #[must_use]
    pub fn chances(&self, seen: &Evidence) -> Chances {
        Judge::new(self).chances(seen)
    }

    /// The chance that the opposite sequence would have shown by now, if it were possible:
    /// 1 - 2 sum over leanings t of their share times the product over people of
    /// (habit t + (1 - habit) t^jobs).
    ///
    /// `jobs` counts for each witness the jobs that showed the one sequence. After a single job
    /// it is 0: whichever came first, nothing could be told from it. Of one person it never
    /// reaches 1 - `habit`.
    ///
    /// ```
    /// let model = lessons::Model::default();
    /// assert_eq!(model.shown(&[1]), 0.0);
    /// assert!(model.shown(&[1000]) < 0.5, "one person's habit");
    /// assert!(model.shown(&[3, 3, 3]) > model.shown(&[9]));
    /// ```
    #[must_use]
    pub fn shown(&self, jobs: &[u32]) -> f64 {
        let habit = inside(self.habit);
        let all_alike: f64 = LEANINGS
            .iter()
            .map(|(leaning, share)| {
                let person = |jobs: &u32| {
                    let anew = libm::exp(f64::from(*jobs) * libm::log(*leaning));
                    habit * leaning + (1.0 - habit) * anew
                };
                share / SIXTEENTHS * jobs.iter().map(person).product::<f64>()
            })
            .sum();
        // The sums of rounded shares may pass the bounds by a hair.
        (1.0 - 2.0 * all_alike).clamp(0.0, 1.0)
    }
}

impl Judge {
    pub(crate) fn new(model: &Model) -> Self {
        let wrong = inside(model.mistold);
        Self {
            right: libm::log(1.0 - wrong),
            wrong: libm::log(wrong),
            // Where either will do, it is as likely as not that a job has the one alone.
            alone: libm::log(inside(model.untold) / 0.5).min(0.0),
            habit: inside(model.habit),
            needed: inside(model.needed),
            runs: FxHashMap::default(),
        }
    }

    pub(crate) fn chances(&mut self, seen: &Evidence) -> Chances {
        let ways = self.weights(seen);
        let all = sum_of_logs(&ways);
        let [first, second, either] = ways.map(|way| libm::exp(way - all));
        Chances {
            first,
            second,
            either,
        }
    }

    /// The logarithm of how likely the evidence is, whichever of the three holds.
    pub(crate) fn likelihood(&mut self, seen: &Evidence) -> f64 {
        sum_of_logs(&self.weights(seen))
    }

    fn weights(&mut self, seen: &Evidence) -> [f64; 3] {
        let (there, back) = seen.totals();
        let (there, back) = (f64::from(there), f64::from(back));
        let needed = libm::log(self.needed / 2.0);
        let first = there * self.right + back * self.wrong;
        let second = back * self.right + there * self.wrong;
        let mut leanings = LEANINGS.map(|(_, share)| libm::log(share / SIXTEENTHS));
        for run in &seen.runs {
            for (sum, one) in leanings.iter_mut().zip(self.run(*run)) {
                *sum += one;
            }
        }
        [
            needed + first + f64::from(seen.second_alone) * self.alone,
            needed + second + f64::from(seen.first_alone) * self.alone,
            libm::log(1.0 - self.needed) + sum_of_logs(&leanings),
        ]
    }

    /// One person's jobs where either sequence will do, under each leaning.
    fn run(&mut self, run: (u32, u32)) -> [f64; LEANINGS.len()] {
        if let Some(known) = self.runs.get(&run) {
            return *known;
        }
        let (there, back) = (f64::from(run.0), f64::from(run.1));
        let (right, wrong, habit) = (self.right, self.wrong, self.habit);
        let fixed_there = there * right + back * wrong;
        let fixed_back = back * right + there * wrong;
        let told_wrong = libm::exp(wrong);
        let value = LEANINGS.map(|(leaning, _)| {
            let shows = leaning * (1.0 - told_wrong) + (1.0 - leaning) * told_wrong;
            let anew = there * libm::log(shows) + back * libm::log(1.0 - shows);
            sum_of_logs(&[
                libm::log(habit * leaning) + fixed_there,
                libm::log(habit * (1.0 - leaning)) + fixed_back,
                libm::log(1.0 - habit) + anew,
            ])
        });
        self.runs.insert(run, value);
        value
    }
}

fn inside(share: f64) -> f64 {
    // What is no number is not believed either.
    let share = if share.is_nan() { 0.5 } else { share };
    share.clamp(1e-6, 1.0 - 1e-6)
}

fn sum_of_logs(logs: &[f64]) -> f64 {
    let most = logs.iter().copied().fold(f64::NEG_INFINITY, f64::max);
    most + libm::log(logs.iter().map(|one| libm::exp(one - most)).sum())
}

#[cfg(test)]
mod tests {
    use super::*;

    fn chances(runs: &[(u32, u32)]) -> Chances {
        Model::default().chances(&Evidence {
            runs: runs.to_vec(),
            ..Evidence::default()
        })
    }

    #[test]
    fn nothing_seen_leaves_what_was_believed() {
        let none = chances(&[]);
        assert!((none.first - 0.25).abs() < 1e-12 && (none.either - 0.5).abs() < 1e-12);
    }

    #[test]
    fn a_turned_pair_has_turned_chances() {
        let seen = Evidence {
            runs: vec![(3, 1), (0, 2)],
            together: 1,
            first_alone: 2,
            second_alone: 5,
        };
        let model = Model::default();
        let (one, other) = (model.chances(&seen), model.chances(&seen.turned()));
        assert!((one.first - other.second).abs() < 1e-12);
        assert!((one.either - other.either).abs() < 1e-12);
        assert!((one.first + one.second + one.either - 1.0).abs() < 1e-12);
    }

    #[test]
    fn one_persons_habit_never_settles_it() {
        let before = chances(&[(10, 0)]).first;
        let after = chances(&[(10_000, 0)]).first;
        assert!(before < 0.75 && after < 0.75, "{before} {after}");
        assert!(
            chances(&[(3, 0); 6]).first > after,
            "fewer jobs by more people"
        );
        assert!(chances(&[(20, 0); 6]).first > 0.9);
    }

    #[test]
    fn very_many_jobs_are_no_trouble() {
        let many = chances(&[(1_000_000, 1_000_000), (4_000_000, 3)]);
        assert!(many.either > 0.99, "{many:?}");
    }

    #[test]
    fn shares_that_are_none_do_no_harm() {
        for share in [f64::NAN, -1.0, 0.0, 1.0, f64::INFINITY] {
            let model = Model {
                mistold: share,
                untold: share,
                habit: share,
                needed: share,
            };
            let seen = Evidence {
                runs: vec![(3, 1)],
                ..Evidence::default()
            };
            let chances = model.chances(&seen);
            let sum = chances.first + chances.second + chances.either;
            assert!((sum - 1.0).abs() < 1e-9, "{share}: {chances:?}");
            assert!((0.0..=1.0).contains(&model.shown(&[2, 5])));
        }
    }

    /// Leanings against habit drawn many times by a plain count of cases: two people, one
    /// with two jobs, one with one, all sixteen ways in which habits and jobs can fall.
    #[test]
    fn the_chance_to_have_shown_is_that_of_counting_cases() {
        let model = Model::default();
        let mut alike = 0.0;
        for (leaning, share) in LEANINGS {
            for first_keeps in [true, false] {
                for second_keeps in [true, false] {
                    let kept = |keeps: bool| {
                        if keeps {
                            model.habit
                        } else {
                            1.0 - model.habit
                        }
                    };
                    let chance = kept(first_keeps) * kept(second_keeps);
                    // A keeper chooses once, the other at each of two jobs.
                    let first = if first_keeps {
                        leaning
                    } else {
                        leaning * leaning
                    };
                    let first_back = if first_keeps {
                        1.0 - leaning
                    } else {
                        (1.0 - leaning) * (1.0 - leaning)
                    };
                    alike += share / SIXTEENTHS
                        * chance
                        * (first * leaning + first_back * (1.0 - leaning));
                }
            }
        }
        assert!((model.shown(&[2, 1]) - (1.0 - alike)).abs() < 1e-12);
    }
}
