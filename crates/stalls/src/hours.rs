//! Somebody's hours as one line of worked minutes, asked millions of times.

use crate::windows::{Minute, Windows};

/// A bucket holds this many minutes, as a power of two.
const BUCKET: u32 = 7;

/// Hours between the clock and the minutes that somebody has worked since they began.
///
/// Work of one person has no gaps on that line: breaks and nights vanish from it. So a search for a
/// free stretch only compares numbers, and the clock is asked at both ends.
#[derive(Clone, Debug)]
pub(crate) struct Hours {
    /// First minute, the minute after the last, and the minutes worked before.
    spans: Vec<(Minute, Minute, i64)>,
    /// The first span that can matter for a bucket of the clock, and for one of worked minutes.
    by_clock: Vec<u32>,
    by_worked: Vec<u32>,
}

impl Hours {
    /// Windows that have no end.
    pub(crate) fn new(windows: &Windows) -> Self {
        let mut worked = 0;
        let mut spans = Vec::new();
        for (from, to) in windows.spans() {
            spans.push((*from, *to, worked));
            worked += to - from;
        }
        let origin = spans.first().map_or(0, |span| span.0);
        let (last_clock, last_worked) = spans.last().map_or((0, 0), |last| (last.0, last.2));
        let buckets = |last: i64, first: &dyn Fn(i64) -> usize| {
            let all = 0..=(last >> BUCKET);
            let at = all.map(|bucket| u32::try_from(first(bucket << BUCKET)).unwrap_or(0));
            at.collect::<Vec<u32>>()
        };
        let by_clock = buckets(last_clock - origin, &|minute| {
            spans.partition_point(|span| span.1 <= origin + minute)
        });
        let by_worked = buckets(last_worked, &|minute| {
            spans.partition_point(|span| span.2 + span.1 - span.0 < minute)
        });
        Self {
            spans,
            by_clock,
            by_worked,
        }
    }

    #[inline]
    fn start(buckets: &[u32], minute: i64) -> usize {
        let bucket = usize::try_from(minute.max(0) >> BUCKET).unwrap_or(usize::MAX);
        buckets[bucket.min(buckets.len() - 1)] as usize
    }

    /// Minutes worked before a minute of the clock.
    #[inline]
    pub(crate) fn worked(&self, clock: Minute) -> i64 {
        let mut at = Self::start(&self.by_clock, clock - self.spans[0].0);
        while self.spans[at].1 <= clock {
            at += 1;
        }
        let (from, _, worked) = self.spans[at];
        worked + (clock - from).max(0)
    }

    /// When the work begins that has so many worked minutes before it.
    #[inline]
    pub(crate) fn begins(&self, worked: i64) -> Minute {
        let mut at = Self::start(&self.by_worked, worked);
        while self.spans[at].2 + self.spans[at].1 - self.spans[at].0 <= worked {
            at += 1;
        }
        self.spans[at].0 + worked - self.spans[at].2
    }

    /// When so many minutes have been worked.
    #[inline]
    pub(crate) fn ends(&self, worked: i64) -> Minute {
        let mut at = Self::start(&self.by_worked, worked);
        while self.spans[at].2 + self.spans[at].1 - self.spans[at].0 < worked {
            at += 1;
        }
        self.spans[at].0 + worked - self.spans[at].2
    }
}

#[cfg(test)]
mod tests {
    use super::Hours;
    use crate::windows::Windows;
    use proptest::prelude::*;

    proptest! {
        #[test]
        fn they_say_what_the_windows_say(
            spans in prop::collection::vec((0_i64..4000, 1_i64..600), 0..8),
            clock in 0_i64..6000,
            minutes in 1_i64..900,
        ) {
            let spans = spans.into_iter().map(|(from, long)| (from, from + long));
            let windows = Windows::new(spans).open_ended(5000);
            let hours = Hours::new(&windows);
            let worked = hours.worked(clock);
            prop_assert_eq!(worked, windows.open_between(-10, clock));
            prop_assert_eq!(Some(hours.begins(worked)), windows.next_open(clock));
            prop_assert_eq!(Some(hours.ends(worked + minutes)), windows.finish(clock, minutes));
        }
    }
}
