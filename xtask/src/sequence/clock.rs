//! How much of the time given has passed.

use std::time::{Duration, Instant};

/// Started once, and asked again and again.
#[derive(Debug, Clone, Copy)]
pub struct Clock {
    began: Instant,
    /// The processor's time when it was started, if that is what counts.
    busy: Option<Duration>,
    time: Duration,
}

impl Clock {
    /// Starts. With `processor_time` only what this thread was given counts, where the
    /// system tells.
    pub fn start(time: Duration, processor_time: bool) -> Self {
        Self {
            began: Instant::now(),
            busy: processor_time.then(busy).flatten(),
            time,
        }
    }

    pub fn passed(&self) -> Duration {
        match self.busy {
            Some(before) => busy().unwrap_or_default().saturating_sub(before),
            None => self.began.elapsed(),
        }
    }

    /// Whether less than this part of the time has passed.
    pub fn within(&self, part: f64) -> bool {
        !self.left(part).is_zero()
    }

    /// What is left until this part of the time has passed.
    pub fn left(&self, part: f64) -> Duration {
        self.time.mul_f64(part).saturating_sub(self.passed())
    }
}

fn busy() -> Option<Duration> {
    let text = std::fs::read_to_string("/proc/thread-self/schedstat").ok()?;
    text.split(' ')
        .next()?
        .parse()
        .ok()
        .map(Duration::from_nanos)
}
