//! What an hour costs, and how many hours are charged.

use crate::fault::{Fault, MOST, Time, Wrong};
use crate::phrases as say;
use crate::working::number;
use measure::{Line, Source, Working};
use rust_decimal::Decimal;
use std::collections::BTreeSet;

/// What an hour of one kind of work costs, by who does it.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Rate {
    /// The kind of work, such as `diagnosis`; none for any.
    pub work: Option<String>,
    /// The grade of who does it, such as `apprentice`; none for any.
    pub grade: Option<String>,
    /// The price of an hour.
    pub hour: Decimal,
}

/// What an hour costs.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Rates {
    /// Where no other rate fits.
    pub hour: Decimal,
    /// Those for kinds of work and grades.
    pub rates: Vec<Rate>,
}

/// Which hours are charged.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash, Default)]
pub enum HoursBy {
    /// The book's, whatever it took.
    #[default]
    Book,
    /// What it took by the clock.
    Clock,
    /// The book's or the clock's, the fewer.
    Lesser,
}

/// Labour, priced.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Labour {
    /// The minutes charged.
    pub minutes: u32,
    /// Hours.
    pub quantity: Decimal,
    /// The price of one.
    pub each: Decimal,
    /// How it was found.
    pub working: Working,
}

/// A working day of a hundred people: more minutes than that are a slip of the finger.
const MOST_MINUTES: u32 = 60_000;

impl Rates {
    /// The rate for this kind of work by a person of this grade: the one that names both, else
    /// the one that names the work, else the one that names the grade, else the shop's own.
    ///
    /// ```
    /// use price::{Rate, Rates};
    /// let rate = |work: Option<&str>, grade: Option<&str>, hour: u32| Rate {
    ///     work: work.map(Into::into),
    ///     grade: grade.map(Into::into),
    ///     hour: hour.into(),
    /// };
    /// let rates = Rates {
    ///     hour: 120.into(),
    ///     rates: vec![rate(Some("diagnosis"), None, 150), rate(None, Some("apprentice"), 70)],
    /// };
    /// assert_eq!(rates.hour_of(Some("diagnosis"), Some("apprentice")), 150.into());
    /// assert_eq!(rates.hour_of(Some("brakes"), Some("apprentice")), 70.into());
    /// assert_eq!(rates.hour_of(None, None), 120.into());
    /// ```
    #[must_use]
    pub fn hour_of(&self, work: Option<&str>, grade: Option<&str>) -> Decimal {
        self.fitting(work, grade)
            .map_or(self.hour, |rate| rate.hour)
    }

    fn fitting(&self, work: Option<&str>, grade: Option<&str>) -> Option<&Rate> {
        let named = |work: Option<&str>, grade: Option<&str>| {
            let mut rates = self.rates.iter();
            rates.find(|rate| rate.work.as_deref() == work && rate.grade.as_deref() == grade)
        };
        let both = work.and(grade).and_then(|_| named(work, grade));
        both.or_else(|| work.and_then(|_| named(work, None)))
            .or_else(|| grade.and_then(|_| named(None, grade)))
    }

    /// Refuses rates that make no sense.
    ///
    /// # Errors
    /// [`Fault`], the first there is.
    pub fn check(&self) -> Result<(), Fault> {
        hourly("rate", self.hour)?;
        let mut named = BTreeSet::new();
        for (nth, rate) in self.rates.iter().enumerate() {
            let at = format!("rate {}", nth.saturating_add(1));
            if rate.work.is_none() && rate.grade.is_none() {
                return Err(Fault::new(at, Wrong::RateForNothing));
            }
            if !named.insert((&rate.work, &rate.grade)) {
                return Err(Fault::new(at, Wrong::SameRate));
            }
            hourly(&at, rate.hour)?;
        }
        Ok(())
    }

    /// Prices minutes of work.
    ///
    /// # Errors
    /// [`Fault`], where the hours that are charged by are not known, or beyond all measure.
    ///
    /// ```
    /// use price::{HoursBy, Rates};
    /// let rates = Rates { hour: 120.into(), rates: Vec::new() };
    /// let labour = rates.labour(None, None, HoursBy::Lesser, Some(90), Some(75)).unwrap();
    /// assert_eq!(labour.minutes, 75);
    /// assert!(rates.labour(None, None, HoursBy::Clock, Some(90), None).is_err());
    /// ```
    pub fn labour(
        &self,
        work: Option<&str>,
        grade: Option<&str>,
        by: HoursBy,
        book: Option<u32>,
        clock: Option<u32>,
    ) -> Result<Labour, Fault> {
        let minutes = by.minutes(book, clock)?;
        let each = self.hour_of(work, grade);
        hourly("rate", each)?;
        let quantity = Decimal::from(minutes) / Decimal::from(60);
        let told = |minutes: Option<u32>| {
            minutes.map_or_else(|| say::not_known().to_owned(), say::minutes)
        };
        let rate = match self.fitting(work, grade) {
            None => say::own_rate().to_owned(),
            Some(rate) => {
                let names = [&rate.work, &rate.grade];
                let names: Vec<&str> = names.into_iter().flatten().map(String::as_str).collect();
                say::rate_for(names.join(", "))
            }
        };
        let working = Working::new(say::labour_title())
            .line(
                Line::new(say::time_charged(), Source::given())
                    .formula(say::minutes_name(), by.formula())
                    .input(say::book(), told(book))
                    .input(say::clock(), told(clock))
                    .value(say::minutes(minutes)),
            )
            .line(
                Line::new(say::price_of_an_hour(), Source::given())
                    .value(number(each))
                    .note(rate),
            );
        Ok(Labour {
            minutes,
            quantity,
            each,
            working,
        })
    }
}

impl HoursBy {
    fn formula(self) -> &'static str {
        match self {
            HoursBy::Book => say::book_time(),
            HoursBy::Clock => say::clock_time(),
            HoursBy::Lesser => say::lesser_time(),
        }
    }

    /// The minutes charged.
    ///
    /// # Errors
    /// [`Fault`], where they are not known, or beyond all measure.
    pub fn minutes(self, book: Option<u32>, clock: Option<u32>) -> Result<u32, Fault> {
        let known = |minutes: Option<u32>, time: Time| {
            minutes.ok_or_else(|| Fault::new("hours", Wrong::NotKnown { time }))
        };
        let minutes = match self {
            HoursBy::Book => known(book, Time::Book)?,
            HoursBy::Clock => known(clock, Time::Clock)?,
            HoursBy::Lesser => known(book, Time::Book)?.min(known(clock, Time::Clock)?),
        };
        if minutes > MOST_MINUTES {
            return Err(Fault::new("hours", Wrong::TooLong { minutes }));
        }
        Ok(minutes)
    }
}

fn hourly(at: &str, hour: Decimal) -> Result<(), Fault> {
    if hour < Decimal::ZERO {
        return Err(Fault::new(at, Wrong::HourBelowNought { hour }));
    }
    if hour >= MOST {
        return Err(Fault::new(at, Wrong::HourTooMuch { hour }));
    }
    Ok(())
}

#[cfg(test)]
mod tests {
    use super::*;

    fn rate(work: Option<&str>, grade: Option<&str>, hour: i64) -> Rate {
        Rate {
            work: work.map(Into::into),
            grade: grade.map(Into::into),
            hour: hour.into(),
        }
    }

    #[test]
    fn the_rate_that_names_most_holds() {
        let rates = Rates {
            hour: 100.into(),
            rates: vec![
                rate(None, Some("master"), 140),
                rate(Some("diagnosis"), None, 150),
                rate(Some("diagnosis"), Some("master"), 180),
            ],
        };
        assert!(rates.check().is_ok());
        for (work, grade, hour) in [
            (Some("diagnosis"), Some("master"), 180),
            (Some("diagnosis"), Some("apprentice"), 150),
            (Some("brakes"), Some("master"), 140),
            (Some("brakes"), None, 100),
            (None, Some("master"), 140),
            (None, None, 100),
        ] {
            assert_eq!(
                rates.hour_of(work, grade),
                hour.into(),
                "{work:?} {grade:?}"
            );
        }
    }

    #[test]
    fn hours_are_by_book_by_clock_or_the_fewer() {
        assert_eq!(HoursBy::Book.minutes(Some(90), Some(120)), Ok(90));
        assert_eq!(HoursBy::Clock.minutes(Some(90), Some(120)), Ok(120));
        assert_eq!(HoursBy::Lesser.minutes(Some(90), Some(120)), Ok(90));
        assert_eq!(HoursBy::Lesser.minutes(Some(90), Some(60)), Ok(60));
        assert!(HoursBy::Lesser.minutes(Some(90), None).is_err());
        assert!(HoursBy::Book.minutes(Some(u32::MAX), None).is_err());
    }

    #[test]
    fn rates_that_make_no_sense_are_refused_in_words() {
        let bad = |hour: i64, rates: Vec<Rate>| {
            let rates = Rates {
                hour: hour.into(),
                rates,
            };
            rates.check().unwrap_err().to_string()
        };
        assert!(bad(-1, vec![]).starts_with("rate: -1 an hour is below nought; "));
        assert!(bad(1_000_000_000, vec![]).contains("digit too many"));
        assert!(bad(1, vec![rate(None, None, 5)]).starts_with("rate 1: "));
        let twice = vec![rate(Some("a"), None, 5), rate(Some("a"), None, 6)];
        assert!(bad(1, twice).starts_with("rate 2: "));
    }
}
