//! What went back otherwise than it came off: a plan takes the way back as the way in turned
//! round, unless the map says otherwise. A map made of finished work says it.

use super::taught::{Page, away_steps};
use crate::phrases::teaching as told;
use lessons::{Held, Model, Pair, Step};

impl Page<'_> {
    /// Pairs of things of which one came off first and went back first as well, with how often
    /// that was seen.
    pub(super) fn back_otherwise(&self, model: &Model) -> Vec<String> {
        let back = self.learner().lessons_back(model);
        let pairs = back.pairs().into_iter();
        let same = pairs.filter(|pair| pair.held != Held::Either && self.came_off_so(pair));
        let words = |pair: Pair| {
            told::went_back_before(&pair.first.item, &pair.second.item, self.how(&pair))
        };
        same.map(words).collect()
    }

    /// Whether the first of two that went back came off first as well.
    fn came_off_so(&self, back: &Pair) -> bool {
        if back.first.item == back.second.item {
            return false;
        }
        let away = away_steps(self.learner(), self.lessons.steps());
        let off = |of: &Step| away.iter().find(|step| step.item == of.item).cloned();
        let (Some(first), Some(second)) = (off(&back.first), off(&back.second)) else {
            return false;
        };
        let pair = self.lessons.between(&first, &second);
        pair.is_some_and(|pair| pair.held != Held::Either && pair.first.item == first.item)
    }
}
