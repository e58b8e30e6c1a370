//! Windows of time in which work goes on.

/// Minutes since an origin that the caller names.
pub type Minute = i64;

/// So late that nothing comes after it.
pub(crate) const FAR: Minute = i64::MAX / 8;

/// Spans of minutes, each from its first minute up to but without its last; in sequence, apart.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Windows {
    spans: Vec<(Minute, Minute)>,
    /// Open minutes before each span.
    before: Vec<i64>,
}

impl Windows {
    /// Takes spans in any sequence; those that overlap or touch become one, empty ones go.
    pub fn new(spans: impl IntoIterator<Item = (Minute, Minute)>) -> Self {
        let mut spans: Vec<_> = spans.into_iter().filter(|(from, to)| from < to).collect();
        spans.sort_unstable();
        let mut apart: Vec<(Minute, Minute)> = Vec::with_capacity(spans.len());
        for (from, to) in spans {
            match apart.last_mut() {
                Some(last) if from <= last.1 => last.1 = last.1.max(to),
                _ => apart.push((from, to)),
            }
        }
        let before = apart
            .iter()
            .scan(0, |sum, (from, to)| {
                let before = *sum;
                *sum += to - from;
                Some(before)
            })
            .collect();
        Self {
            spans: apart,
            before,
        }
    }

    /// The spans.
    pub fn spans(&self) -> &[(Minute, Minute)] {
        &self.spans
    }

    /// The end of the last span.
    pub fn end(&self) -> Option<Minute> {
        self.spans.last().map(|span| span.1)
    }

    /// The longest span, or the sum of those that begin within `day_minutes` of its start: what
    /// fits into one day.
    pub(crate) fn longest_day(&self, day_minutes: i64) -> i64 {
        let day = |(from, _): &(Minute, Minute)| self.open_between(*from, from + day_minutes);
        self.spans.iter().map(day).max().unwrap_or(0)
    }

    /// What is in both.
    #[must_use]
    pub fn and(&self, other: &Self) -> Self {
        let (mut one, mut two) = (0, 0);
        let mut spans = Vec::new();
        while let (Some(a), Some(b)) = (self.spans.get(one), other.spans.get(two)) {
            spans.push((a.0.max(b.0), a.1.min(b.1)));
            if a.1 <= b.1 {
                one += 1;
            } else {
                two += 1;
            }
        }
        Self::new(spans)
    }

    /// What is in this and not in the other.
    #[must_use]
    pub fn minus(&self, other: &Self) -> Self {
        let mut outside = Vec::with_capacity(other.spans.len() + 1);
        let mut from = -FAR;
        for span in &other.spans {
            outside.push((from, span.0));
            from = span.1;
        }
        outside.push((from, FAR));
        self.and(&Self::new(outside))
    }

    /// The same with everything from a minute on.
    pub(crate) fn open_ended(&self, from: Minute) -> Self {
        Self::new(self.spans.iter().copied().chain([(from, FAR)]))
    }

    /// What lies from one minute to another.
    #[must_use]
    pub(crate) fn within(&self, from: Minute, to: Minute) -> Self {
        self.and(&Self::new([(from, to)]))
    }

    /// The first span that ends after this minute.
    fn at(&self, minute: Minute) -> usize {
        self.spans.partition_point(|span| span.1 <= minute)
    }

    /// Whether this minute is in one.
    pub fn is_open(&self, minute: Minute) -> bool {
        let span = self.spans.get(self.at(minute));
        span.is_some_and(|span| span.0 <= minute)
    }

    /// The first open minute that is not before this one.
    pub fn next_open(&self, minute: Minute) -> Option<Minute> {
        self.spans
            .get(self.at(minute))
            .map(|span| span.0.max(minute))
    }

    /// The end of the span that this minute is in.
    pub fn closes(&self, minute: Minute) -> Option<Minute> {
        let span = self.spans.get(self.at(minute))?;
        (span.0 <= minute).then_some(span.1)
    }

    fn open_before(&self, minute: Minute) -> i64 {
        let at = self.at(minute);
        match self.spans.get(at) {
            Some(span) => self.before[at] + (minute - span.0).max(0),
            None => self.open(),
        }
    }

    /// All open minutes.
    fn open(&self) -> i64 {
        match (self.before.last(), self.spans.last()) {
            (Some(before), Some(span)) => before + span.1 - span.0,
            _ => 0,
        }
    }

    /// Open minutes from one minute to another.
    pub fn open_between(&self, from: Minute, to: Minute) -> i64 {
        (self.open_before(to) - self.open_before(from)).max(0)
    }

    /// When so many open minutes have passed since a minute; nothing if there are not so many.
    pub fn finish(&self, from: Minute, minutes: i64) -> Option<Minute> {
        let wanted = self.open_before(from) + minutes;
        // The last span that has fewer minutes before it than are wanted.
        let at = self.before.partition_point(|before| *before < wanted);
        let at = at.checked_sub(1)?;
        let end = self.spans[at].0 + wanted - self.before[at];
        (end <= self.spans[at].1).then_some(end)
    }
}

#[cfg(test)]
mod tests {
    use super::Windows;
    use proptest::prelude::*;

    /// Minute by minute.
    fn minutes(windows: &Windows) -> Vec<i64> {
        (-5..120).filter(|at| windows.is_open(*at)).collect()
    }

    fn spans() -> impl Strategy<Value = Vec<(i64, i64)>> {
        prop::collection::vec((0_i64..60, 0_i64..15).prop_map(|(a, b)| (a, a + b)), 0..6)
    }

    proptest! {
        #[test]
        fn every_answer_is_that_of_counting_minutes(a in spans(), b in spans(), from in 0_i64..70, long in 1_i64..40) {
            let (one, two) = (Windows::new(a.clone()), Windows::new(b));
            let open: Vec<i64> = (-5..120).filter(|at| a.iter().any(|(f, t)| f <= at && at < t)).collect();
            prop_assert_eq!(minutes(&one), open.clone());
            let both: Vec<i64> = minutes(&one).into_iter().filter(|at| two.is_open(*at)).collect();
            prop_assert_eq!(minutes(&one.and(&two)), both);
            let only: Vec<i64> = minutes(&one).into_iter().filter(|at| !two.is_open(*at)).collect();
            prop_assert_eq!(minutes(&one.minus(&two)), only);
            prop_assert_eq!(one.next_open(from), open.iter().copied().find(|at| *at >= from));
            let after: Vec<i64> = open.iter().copied().filter(|at| *at >= from).collect();
            let end = after.get(usize::try_from(long).unwrap() - 1).map(|last| last + 1);
            prop_assert_eq!(one.finish(from, long), end);
            let between = open.iter().filter(|at| (from..from + long).contains(*at)).count();
            prop_assert_eq!(one.open_between(from, from + long), i64::try_from(between).unwrap());
        }
    }
}
