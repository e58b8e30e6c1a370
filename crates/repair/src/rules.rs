//! What a question is asked under: the time, the shop's time zone, and what the rules of
//! its place let pass.

use jiff::tz::TimeZone;
use jiff::{Timestamp, civil::Date};
use price::Leeway;

/// The time and place of a question. The caller reads the clock.
#[derive(Debug, Clone)]
pub struct Rules {
    pub now: Timestamp,
    /// The shop's time zone.
    pub zone: TimeZone,
    /// How far a sum may pass what was agreed before the payer is asked again.
    pub leeway: Leeway,
}

impl Rules {
    /// The day at the shop now.
    #[must_use]
    pub fn today(&self) -> Date {
        self.day(self.now)
    }

    /// The day at the shop at this time.
    #[must_use]
    pub fn day(&self, at: Timestamp) -> Date {
        self.zone.to_datetime(at).date()
    }
}
