//! Vehicles and customers that were written down twice: which names are of one.

use record::AnyEvent;
use repair::{CustomerFact, VehicleFact};
use std::collections::{BTreeMap, BTreeSet};

/// By name: the other name that it leads to.
#[derive(Debug, Clone, Default, PartialEq, Eq)]
pub(super) struct Same {
    to: BTreeMap<String, String>,
}

impl FromIterator<(String, String)> for Same {
    fn from_iter<I: IntoIterator<Item = (String, String)>>(pairs: I) -> Self {
        Self {
            to: pairs.into_iter().collect(),
        }
    }
}

impl Same {
    /// The name that this one goes by. Where names lead in a circle, since two people joined
    /// them at once, it is the smallest of the circle.
    fn goes_by<'a>(&'a self, name: &'a str) -> &'a str {
        let mut passed = vec![name];
        let mut at = name;
        while let Some(next) = self.to.get(at) {
            if let Some(begins) = passed.iter().position(|one| *one == next) {
                return passed[begins..].iter().min().copied().unwrap_or(at);
            }
            passed.push(next);
            at = next;
        }
        at
    }

    /// Every name of the same, the one it goes by first.
    pub(super) fn all(&self, name: &str) -> Vec<String> {
        if self.to.is_empty() {
            return vec![name.to_owned()];
        }
        let first = self.goes_by(name);
        let others: BTreeSet<&str> = self
            .to
            .keys()
            .map(String::as_str)
            .filter(|other| *other != first && self.goes_by(other) == first)
            .collect();
        std::iter::once(first)
            .chain(others)
            .map(str::to_owned)
            .collect()
    }
}

/// Whether an event says that two are one, or not any more.
pub(super) fn is_said(event: &AnyEvent) -> bool {
    matches!(
        event,
        AnyEvent::Vehicle(VehicleFact::SameAs { .. })
            | AnyEvent::Customer(CustomerFact::SameAs { .. })
    )
}

#[cfg(test)]
mod tests {
    use super::*;

    fn same(pairs: &[(&str, &str)]) -> Same {
        let owned = |(one, other): &(&str, &str)| ((*one).to_owned(), (*other).to_owned());
        pairs.iter().map(owned).collect()
    }

    #[test]
    fn what_is_joined_goes_by_one_name_however_many_steps_away() {
        let same = same(&[("b", "a"), ("c", "b"), ("x", "y")]);
        for name in ["a", "b", "c"] {
            assert_eq!(same.all(name), ["a", "b", "c"]);
        }
        assert_eq!(same.all("x"), ["y", "x"]);
        assert_eq!(same.all("alone"), ["alone"]);
    }

    #[test]
    fn two_that_were_joined_both_ways_are_one_all_the_same() {
        let same = same(&[("a", "b"), ("b", "a"), ("c", "b")]);
        for name in ["a", "b", "c"] {
            assert_eq!(same.all(name), ["a", "b", "c"]);
        }
    }
}
