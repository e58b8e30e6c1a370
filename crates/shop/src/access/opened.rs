//! Who opened whose data, for the owner to read: kept for 90 days, outside the log.

use super::Access;
use crate::trouble::Trouble;
use jiff::civil::Date;
use jiff::{Timestamp, ToSpan};
use serde::{Deserialize, Serialize};

/// A person opened a page that shows a customer's data; once a day for each page.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
pub struct OpenedPage {
    /// When, the first time on that day.
    pub at: Timestamp,
    /// Who, by name in the record.
    pub person: String,
    /// The page, by its address.
    pub page: String,
    /// The device.
    pub device: String,
}

/// Days that it is kept.
const KEPT_DAYS: i64 = 90;

impl Access<'_> {
    /// Notes that somebody opened a page with a customer's data on it.
    ///
    /// # Errors
    /// [`Trouble`], if it cannot be written.
    pub fn note_opened(&self, person: &str, page: &str, device: &str) -> Result<(), Trouble> {
        let opened = OpenedPage {
            at: self.now,
            person: person.to_owned(),
            page: page.to_owned(),
            device: device.to_owned(),
        };
        let key = format!("{} {person} {page}", self.today());
        self.drawer("opened")
            .change(&key, |stands: Option<OpenedPage>| {
                Ok((Some(stands.unwrap_or_else(|| opened.clone())), ()))
            })
    }

    /// What was opened in the last 90 days, the last first. Older notes go.
    ///
    /// # Errors
    /// [`Trouble`], if it cannot be read.
    pub fn opened(&self) -> Result<Vec<OpenedPage>, Trouble> {
        let oldest = self.today().saturating_sub(KEPT_DAYS.days());
        let drawer = self.drawer("opened");
        let mut kept = Vec::new();
        for (key, opened) in drawer.all::<OpenedPage>()? {
            let day: Option<Date> = key.split(' ').next().and_then(|day| day.parse().ok());
            if day.is_some_and(|day| day >= oldest) {
                kept.push(opened);
            } else {
                drawer.change(&key, |_: Option<OpenedPage>| Ok((None, ())))?;
            }
        }
        kept.sort_by_key(|opened| std::cmp::Reverse(opened.at));
        Ok(kept)
    }

    /// Days are told apart as they are in Greenwich: nothing hangs on the hour.
    fn today(&self) -> Date {
        self.now.to_zoned_datetime(jiff::tz::TimeZone::UTC).date()
    }
}
