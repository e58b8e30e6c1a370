//! A small set of whole numbers below `64 * W`, kept in place.

/// A set of indices below `64 * W`.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub struct Bits<const W: usize>([u64; W]);

impl<const W: usize> Default for Bits<W> {
    fn default() -> Self {
        Self([0; W])
    }
}

impl<const W: usize> Bits<W> {
    /// The first index that does not fit.
    pub const LIMIT: usize = 64 * W;

    /// Whether the index is in the set; one that does not fit never is.
    #[must_use]
    pub fn has(&self, index: usize) -> bool {
        self.0
            .get(index / 64)
            .is_some_and(|word| word >> (index % 64) & 1 == 1)
    }

    /// Adds an index; one that does not fit is not added.
    pub fn add(&mut self, index: usize) {
        if let Some(word) = self.0.get_mut(index / 64) {
            *word |= 1 << (index % 64);
        }
    }

    /// Takes an index out.
    pub fn remove(&mut self, index: usize) {
        if let Some(word) = self.0.get_mut(index / 64) {
            *word &= !(1 << (index % 64));
        }
    }

    /// The set with one more index.
    #[must_use]
    pub fn with(mut self, index: usize) -> Self {
        self.add(index);
        self
    }

    /// What is in either set.
    #[must_use]
    pub fn or(mut self, other: &Self) -> Self {
        for (word, more) in self.0.iter_mut().zip(other.0) {
            *word |= more;
        }
        self
    }

    /// What is in both sets.
    #[must_use]
    pub fn and(mut self, other: &Self) -> Self {
        for (word, more) in self.0.iter_mut().zip(other.0) {
            *word &= more;
        }
        self
    }

    /// What is in this set and not in the other.
    #[must_use]
    pub fn minus(mut self, other: &Self) -> Self {
        for (word, less) in self.0.iter_mut().zip(other.0) {
            *word &= !less;
        }
        self
    }

    /// Whether every index of this set is in the other.
    #[must_use]
    pub fn within(&self, other: &Self) -> bool {
        self.0.iter().zip(other.0).all(|(word, of)| word & !of == 0)
    }

    /// Whether nothing is in the set.
    #[must_use]
    pub fn is_empty(&self) -> bool {
        self.0.iter().all(|word| *word == 0)
    }

    /// How many indices are in the set.
    #[must_use]
    pub fn len(&self) -> usize {
        self.0.iter().map(|word| word.count_ones() as usize).sum()
    }

    /// The indices, smallest first.
    pub fn iter(&self) -> impl Iterator<Item = usize> + use<W> {
        self.0.into_iter().enumerate().flat_map(|(at, word)| {
            std::iter::successors((word != 0).then_some(word), |left| {
                let next = left & (left - 1);
                (next != 0).then_some(next)
            })
            .map(move |left| at * 64 + left.trailing_zeros() as usize)
        })
    }
}

impl<const W: usize> FromIterator<usize> for Bits<W> {
    fn from_iter<I: IntoIterator<Item = usize>>(indices: I) -> Self {
        indices.into_iter().fold(Self::default(), Self::with)
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn holds_what_was_put_in_and_nothing_else() {
        let set: Bits<2> = [0, 63, 64, 127, 128].into_iter().collect();
        assert_eq!(set.iter().collect::<Vec<_>>(), [0, 63, 64, 127]);
        assert_eq!(set.len(), 4);
        let less = set.minus(&[63, 127].into_iter().collect());
        assert!(less.within(&set) && !set.within(&less));
        assert!(set.minus(&set).is_empty());
    }
}
