//! What to ask: the few questions that settle the most for a target, and the fewest that
//! settle all.

use crate::board::Board;
use crate::job::Step;
use crate::lessons::{Answers, Lessons};
use crate::relation::{has, ones, set};
use std::fmt;

/// One question about two steps, to be answered with yes, no or can't say.
#[derive(Debug, Clone, PartialEq)]
pub struct Question {
    /// What was seen, or is believed, to come first.
    pub first: Step,
    /// Could this have come before it?
    pub second: Step,
    /// The chance that the answer is no.
    pub needed: f64,
    /// How many open pairs a yes settles.
    pub if_yes: usize,
    /// How many open pairs a no settles.
    pub if_no: usize,
}

/// An answer to a [`Question`].
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Answer {
    /// The second could have come before the first.
    Yes,
    /// It could not: the first is needed.
    No,
    /// Whoever was asked does not know.
    CannotSay,
}

impl fmt::Display for Question {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        write!(f, "Could {} come before {}?", self.second, self.first)
    }
}

impl Answers {
    /// Takes an answer down.
    pub fn take(&mut self, question: &Question, answer: Answer) {
        let pair = (question.first.clone(), question.second.clone());
        match answer {
            Answer::Yes => self.not_needed.insert(pair),
            Answer::No => self.needed.insert(pair),
            Answer::CannotSay => self.unsaid.insert(pair),
        };
    }
}

impl Lessons {
    /// The questions that settle the most for the targets, the best first, at most so many.
    /// Each is worth asking whatever the others are answered: no answer to one settles
    /// another.
    ///
    /// A question is weighed by the mean of the logarithms of what a yes and a no would
    /// settle, each by its chance. So of a chain its middle is asked first, and where nothing
    /// seems needed the pair that would settle all the others. Pairs that a plan shows,
    /// because no others imply them, go before the rest: a step rests on them.
    #[must_use]
    pub fn questions(&self, targets: &[Step], most: usize) -> Vec<Question> {
        let mut board = self.board();
        let near = self.near(&board, targets);
        let direct = self.kept.direct();
        let mut questions = Vec::new();
        while questions.len() < most {
            let shown = direct.iter().copied();
            let shown = shown.filter(|(_, second)| has(&near, *second));
            let others = || {
                ones(&near).flat_map(|second| {
                    let firsts = ones(board.before(second));
                    firsts.map(move |first| (first, second))
                })
            };
            let best = self.best(&board, shown, &Board::gains);
            let best = best.or_else(|| self.best(&board, others(), &Board::gains));
            let Some((first, second)) = best else {
                break;
            };
            questions.push(self.question(&board, first, second));
            // What either answer would settle is not asked beside it.
            board.close_if_needed(first, second);
            board.close_if_not(first, second);
        }
        questions
    }

    /// The next question on the way to settle everything for the targets with few
    /// questions; nothing once all is settled that anybody can say.
    ///
    /// It takes the steps in the sequence in which they were mostly seen, and places each
    /// among those before it, all of which are settled: so every answer about the one holds
    /// for all that comes before or after it.
    ///
    /// # Limits
    /// After one job without errors it takes fewer than n (w + log2 n) questions on the
    /// simulated orders of the tests, n the steps and w how many of them at most have no fixed
    /// sequence among each other. That is measured, not proven: another order may need more.
    ///
    /// # Source
    /// The measure is that of C. Daskalakis, R. Karp, E. Mossel, S. Riesenfeld and E. Verbin,
    /// Sorting and selection in posets, SIAM Journal on Computing 40 (2011), from memory.
    #[must_use]
    pub fn next_to_settle(&self, targets: &[Step]) -> Option<Question> {
        let board = self.board();
        let mut near: Vec<usize> = ones(&self.near(&board, targets)).collect();
        near.sort_by_key(|step| (board.turn(*step), *step));
        near.into_iter().find_map(|second| {
            let pairs = ones(board.before(second)).map(|first| (first, second));
            let (first, second) = self.best(&board, pairs, &Board::gains_of_one)?;
            Some(self.question(&board, first, second))
        })
    }

    /// How many pairs are open for the targets.
    #[must_use]
    pub fn open(&self, targets: &[Step]) -> usize {
        let board = self.board();
        let near = self.near(&board, targets);
        ones(&near)
            .map(|second| ones(board.before(second)).count())
            .sum()
    }

    /// The targets, and all that may be needed before them.
    fn near(&self, board: &Board, targets: &[Step]) -> Vec<u64> {
        let mut near = vec![0; self.steps.len().div_ceil(64)];
        let mut open: Vec<usize> = targets
            .iter()
            .filter_map(|step| self.number(step))
            .collect();
        while let Some(at) = open.pop() {
            if has(&near, at) {
                continue;
            }
            set(&mut near, at);
            open.extend(ones(board.needed.before(at)));
            open.extend(ones(board.before(at)));
        }
        near
    }

    fn best(
        &self,
        board: &Board,
        pairs: impl Iterator<Item = (usize, usize)>,
        gains: &dyn Fn(&Board, usize, usize) -> (usize, usize),
    ) -> Option<(usize, usize)> {
        let log = |gain: usize| libm::log(1.0 + f64::from(u32::try_from(gain).unwrap_or(u32::MAX)));
        let worth = |first: usize, second: usize| {
            let (needed, not) = gains(board, first, second);
            let chance = board.chance(self, first, second);
            chance * log(needed) + (1.0 - chance) * log(not)
        };
        let mut best: Option<(f64, usize, (usize, usize))> = None;
        for (first, second) in pairs.filter(|(first, second)| board.may_ask(*first, *second)) {
            let worth = worth(first, second);
            // Of equals, the two that were seen closest to each other.
            let apart = board.distance(first, second);
            let better = best.as_ref().is_none_or(|(most, close, _)| {
                worth.total_cmp(most).then(close.cmp(&apart)).is_gt()
            });
            if better {
                best = Some((worth, apart, (first, second)));
            }
        }
        best.map(|(.., pair)| pair)
    }

    fn question(&self, board: &Board, first: usize, second: usize) -> Question {
        let (if_no, if_yes) = board.gains(first, second);
        Question {
            first: self.steps[first].clone(),
            second: self.steps[second].clone(),
            needed: self.chance(first, second),
            if_yes,
            if_no,
        }
    }
}
