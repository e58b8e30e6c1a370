//! What comes before what: a relation that is always closed and never goes round.

/// A strict order on numbers, with everything that follows from it.
#[derive(Debug, Clone, PartialEq, Eq)]
pub(crate) struct Relation {
    count: usize,
    words: usize,
    after: Vec<u64>,
    before: Vec<u64>,
}

impl Relation {
    pub(crate) fn new(count: usize) -> Self {
        let words = count.div_ceil(64);
        Self {
            count,
            words,
            after: vec![0; count * words],
            before: vec![0; count * words],
        }
    }

    /// What comes after this one.
    pub(crate) fn after(&self, one: usize) -> &[u64] {
        &self.after[one * self.words..(one + 1) * self.words]
    }

    /// What comes before this one.
    pub(crate) fn before(&self, one: usize) -> &[u64] {
        &self.before[one * self.words..(one + 1) * self.words]
    }

    pub(crate) fn has(&self, first: usize, second: usize) -> bool {
        has(self.after(first), second)
    }

    /// Whether it could be added: it is no circle.
    pub(crate) fn may_add(&self, first: usize, second: usize) -> bool {
        first != second && !self.has(second, first)
    }

    /// Adds a pair and what follows from it; false if that would go round.
    pub(crate) fn add(&mut self, first: usize, second: usize) -> bool {
        if !self.may_add(first, second) {
            return false;
        }
        if self.has(first, second) {
            return true;
        }
        let mut firsts = self.before(first).to_vec();
        set(&mut firsts, first);
        let mut seconds = self.after(second).to_vec();
        set(&mut seconds, second);
        for one in ones(&firsts) {
            join(
                &mut self.after[one * self.words..(one + 1) * self.words],
                &seconds,
            );
        }
        for one in ones(&seconds) {
            join(
                &mut self.before[one * self.words..(one + 1) * self.words],
                &firsts,
            );
        }
        true
    }

    /// The pairs that no others imply.
    pub(crate) fn direct(&self) -> Vec<(usize, usize)> {
        let mut pairs = Vec::new();
        for first in 0..self.count {
            for second in ones(self.after(first)) {
                let between = self.after(first).iter().zip(self.before(second));
                if between
                    .into_iter()
                    .all(|(after, before)| after & before == 0)
                {
                    pairs.push((first, second));
                }
            }
        }
        pairs
    }
}

pub(crate) fn set(bits: &mut [u64], at: usize) {
    bits[at / 64] |= 1 << (at % 64);
}

pub(crate) fn has(bits: &[u64], at: usize) -> bool {
    bits[at / 64] >> (at % 64) & 1 == 1
}

fn join(into: &mut [u64], from: &[u64]) {
    for (into, from) in into.iter_mut().zip(from) {
        *into |= from;
    }
}

/// The numbers in a set, the least first.
pub(crate) fn ones(bits: &[u64]) -> impl Iterator<Item = usize> + '_ {
    bits.iter().enumerate().flat_map(|(word, bits)| {
        let mut left = *bits;
        std::iter::from_fn(move || {
            let at = left.trailing_zeros() as usize;
            (left != 0).then(|| {
                left &= left - 1;
                word * 64 + at
            })
        })
    })
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_chain_is_closed_and_reduced() {
        let mut order = Relation::new(70);
        for at in (0..69).rev() {
            assert!(order.add(at, at + 1));
        }
        assert!(order.has(0, 69) && !order.has(69, 0));
        assert!(!order.add(69, 0), "that would go round");
        assert_eq!(order.direct().len(), 69);
        assert_eq!(ones(order.before(3)).collect::<Vec<_>>(), [0, 1, 2]);
    }
}
