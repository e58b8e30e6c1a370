//! The leak test: pressure against time, with the cooling taken out.

use crate::amount::Amount;
use crate::error::{CoolantError, within};
use crate::mixture::Mixture;
use crate::phrases as say;
use crate::text;
use crate::water::air_kpa;
use check::checked;
use growth::{Growth, cooling_share, growth};
use line::Fitted;
use measure::{Line, Range, Source, Working};
use verdict::judged;

mod check;
mod growth;
mod jumps;
mod line;
mod tell;
mod verdict;

pub use jumps::Jump;
pub use tell::{Assumption, LeakNote};
pub use verdict::{LeakVerdict, Why};

/// One look at the gauge.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Reading {
    pub minutes: f64,
    pub gauge_kpa: f64,
    /// Of the coolant, if it was read.
    pub temperature_c: Option<f64>,
}

/// Coolant in the system, for its contraction and its steam.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Contents {
    pub mixture: Mixture,
    pub litres: f64,
}

/// What is still called tight.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum LeakLimit {
    MlPerHour(f64),
    /// A pressure drop at steady temperature in a time.
    Drop {
        kpa: f64,
        minutes: f64,
    },
}

/// A leak test. What is not known stays out of it, and the result says so.
#[derive(Clone, Copy, Debug)]
pub struct LeakQuestion<'a> {
    pub readings: &'a [Reading],
    /// The gauge's smallest division that was read.
    pub gauge_step_kpa: f64,
    pub altitude_m: f64,
    /// Air above the coolant, tester and hose included.
    pub headspace: Option<Amount>,
    pub contents: Option<Contents>,
    /// How far the change of temperature over the test may be off, 95 times in 100: of
    /// the thermometer where it was read, of "it stayed the same" where it was not.
    pub temperature_within_k: f64,
    /// The engine is as cold as the shop: where no temperature was read, it stayed the same.
    pub cold: bool,
    pub limit: LeakLimit,
    pub cap_gauge_kpa: Option<f64>,
    pub system_gauge_kpa: Option<f64>,
    /// The tester closed on itself.
    pub blank: Option<&'a [Reading]>,
}

/// What the readings say.
#[derive(Clone, Debug, PartialEq)]
pub struct Leak {
    /// Coolant lost, with its 95 % band; only where the headspace is known.
    pub ml_per_h: Option<Range<f64>>,
    /// Pressure lost in ten minutes at steady temperature, with its 95 % band.
    pub drop_kpa_in_10_min: Range<f64>,
    /// The part of the pressure drop that cooling explains; nothing where no temperature
    /// was read or the pressure did not fall by more than the gauge shows.
    pub cooling_share: Option<f64>,
    pub verdict: LeakVerdict,
    /// The chance that the verdict's side of the limit is the right one.
    pub confidence: f64,
    pub assumptions: Vec<Assumption>,
    pub notes: Vec<LeakNote>,
    /// The fitted line at each reading.
    pub line: Vec<LinePoint>,
    pub working: Working,
}

impl Leak {
    /// The verdict in words, with the condition that it stands under.
    pub fn said(&self) -> String {
        let unread = self.assumptions.contains(&Assumption::TemperatureNotRead);
        match self.verdict {
            LeakVerdict::Tight if unread => say::tight_unless_warmed().to_owned(),
            verdict => verdict.to_string(),
        }
    }
}

/// The fitted pressure at one time, cooling put back in, with its 95 % band.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct LinePoint {
    pub minutes: f64,
    pub gauge_kpa: f64,
    pub low_kpa: f64,
    pub high_kpa: f64,
}

/// The highest pressure that may be pumped in, by the gauge.
#[derive(Clone, Debug, PartialEq)]
pub struct TestPressure {
    pub at_most_kpa: f64,
    pub working: Working,
}

/// The highest pressure that may be pumped in.
///
/// Formula: the lower of the cap's and the system's rating.
///
/// Inputs: gauge ratings in kPa, 0 to 250, where known.
///
/// Returns gauge kPa.
///
/// # Errors
///
/// [`CoolantError::NoRating`] where neither is known; [`CoolantError::OutOfRange`].
///
/// # Limits
///
/// An old radiator or heater core may stand less than its rating.
///
/// # Source
///
/// Practice of the trade.
///
/// ```
/// assert_eq!(coolant::test_pressure(Some(110.0), Some(100.0))?.at_most_kpa, 100.0);
/// assert!(coolant::test_pressure(None, None).is_err());
/// # Ok::<(), coolant::CoolantError>(())
/// ```
pub fn test_pressure(
    cap_gauge_kpa: Option<f64>,
    system_gauge_kpa: Option<f64>,
) -> Result<TestPressure, CoolantError> {
    let at_most_kpa = lowest_rating_kpa(cap_gauge_kpa, system_gauge_kpa)?;
    let ratings = [
        (say::rating_cap(), cap_gauge_kpa),
        (say::rating_system(), system_gauge_kpa),
    ];
    let line = ratings
        .into_iter()
        .filter_map(|(name, rating)| rating.map(|kpa| (name, text::kilopascals(kpa))))
        .fold(
            Line::new(say::highest_test_pressure(), Source::given())
                .formula("p", say::lower_of_ratings()),
            |line, (name, rating)| line.input(name, rating),
        );
    let working = Working::new(say::test_pressure_title())
        .line(line.value(text::kilopascals(at_most_kpa)))
        .limit(say::old_radiator_stands_less());
    Ok(TestPressure {
        at_most_kpa,
        working,
    })
}

/// Whether a system holds its pressure, and how much coolant leaves if not.
///
/// Formula: the headspace at each reading is V = V0 · (p0/p) · (T/T0), with p the pressure
/// less the coolant's steam (Raoult); what it grew by, less the coolant's own contraction,
/// has leaked. A least-squares line through that
/// gives the rate; its band is Student's, with the gauge's division as the least scatter,
/// and the errors of temperature and headspace added as squares. Where headspace or coolant
/// is not known, the verdict has to hold for every amount that a car, van or pickup may hold;
/// where nobody read the temperature, a fall is never called a leak. A step between two
/// readings that stands out from the rest is named and left out of the rate.
///
/// Inputs: see [`LeakQuestion`]; at least 4 readings in order of time, gauge -100 to
/// 300 kPa, temperatures 0 to 100 °C.
///
/// Returns the rate with its band, the part of the drop that is cooling, and a verdict
/// against the limit.
///
/// # Errors
///
/// [`CoolantError::TooFewReadings`], [`CoolantError::TimeNotRising`],
/// [`CoolantError::LimitNeedsHeadspace`], [`CoolantError::ReadingImpossible`],
/// [`CoolantError::OutOfRange`].
///
/// # Limits
///
/// Without a temperature, "tight" holds only if it did not warm meanwhile. Hoses that give hide a part of the leak, as if the headspace were larger. The air is
/// taken as full of steam, which freshly pumped air is not at first: test cold. A leak that opens
/// only hot, or closes under pressure, is not seen. An internal leak shows as pressure
/// lost or gained with nothing wet: test for combustion gas.
///
/// # Source
///
/// Ideal gas; densities by Melinder (2010); steam by IAPWS R7-97(2012); NIST/SEMATECH e-Handbook, 4.1.4.1.
///
/// ```
/// use coolant::{Amount, LeakLimit, LeakQuestion, LeakVerdict, Reading, leak};
///
/// // 0.15 bar lost in ten minutes over a litre of air.
/// let readings: Vec<Reading> = (0..=10)
///     .map(|minute| f64::from(minute))
///     .map(|minutes| Reading { minutes, gauge_kpa: 100.0 - 1.5 * minutes, temperature_c: Some(20.0) })
///     .collect();
/// let found = leak(&LeakQuestion {
///     readings: &readings,
///     gauge_step_kpa: 1.0,
///     altitude_m: 0.0,
///     headspace: Some(Amount::new(1.0, 0.1)),
///     contents: None,
///     temperature_within_k: 0.3,
///     cold: false,
///     limit: LeakLimit::MlPerHour(20.0),
///     cap_gauge_kpa: Some(110.0),
///     system_gauge_kpa: None,
///     blank: None,
/// })?;
/// assert!(matches!(found.verdict, LeakVerdict::Leaks));
/// # Ok::<(), coolant::CoolantError>(())
/// ```
pub fn leak(question: &LeakQuestion) -> Result<Leak, CoolantError> {
    let air_kpa = air_kpa(question.altitude_m)?;
    checked(question, air_kpa)?;
    let growth = growth(question, air_kpa)?;
    let judged = judged(question, &growth)?;
    let share = cooling_share(question, &growth);
    Ok(Leak {
        ml_per_h: judged.ml_per_h,
        drop_kpa_in_10_min: judged.drop_kpa_in_10_min,
        cooling_share: share,
        verdict: judged.verdict,
        confidence: judged.confidence,
        assumptions: tell::assumptions(question),
        notes: tell::notes(question, &judged),
        line: line_points(question, &growth, &judged.fit, air_kpa),
        working: tell::working(question, &growth, &judged, share),
    })
}

fn lowest_rating_kpa(
    cap_gauge_kpa: Option<f64>,
    system_gauge_kpa: Option<f64>,
) -> Result<f64, CoolantError> {
    let mend = say::mend_stamped_or_manual();
    [cap_gauge_kpa, system_gauge_kpa]
        .into_iter()
        .flatten()
        .map(|rating| within(say::the_rating(), rating, "kPa", 0.0..=250.0, mend))
        .reduce(|one, other| Ok(one?.min(other?)))
        .unwrap_or(Err(CoolantError::NoRating))
}

fn line_points(
    question: &LeakQuestion,
    growth: &Growth,
    fit: &Fitted,
    air_kpa: f64,
) -> Vec<LinePoint> {
    let student = fit.student();
    let point = |(index, reading): (usize, &Reading)| {
        let (x, error) = fit.at(reading.minutes / 60.0);
        let half = student * error;
        let gauge = |x: f64| growth.absolute_kpa(index, x) - air_kpa;
        LinePoint {
            minutes: reading.minutes,
            gauge_kpa: gauge(x),
            // A larger headspace is a lower pressure.
            low_kpa: gauge(x + half),
            high_kpa: gauge(x - half),
        }
    };
    question.readings.iter().enumerate().map(point).collect()
}
