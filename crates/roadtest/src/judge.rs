//! What a drive proves, check by check.

use crate::check::{self, Spike};
use crate::complaint::Complaint;
use crate::drive::Drive;
use crate::opening::{Opening, opening};
use crate::phrases::judge as say;
use crate::{Caution, Log, Picture};
use measure::{Line, Working};

/// What is known besides the log; everything may be left out.
#[derive(Debug, Clone, Default, PartialEq)]
pub struct Conditions {
    /// The complaint in the customer's words: "comes on after 20 min of motorway".
    pub complaint: Option<String>,
    /// The temperature stamped on the thermostat, °C.
    pub thermostat_c: Option<f64>,
    /// The maker's highest coolant temperature, °C.
    pub limit_c: Option<f64>,
    /// Where this coolant boils under this cap, °C, as worked out elsewhere.
    pub boil_c: Option<f64>,
}

/// A verdict.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
pub enum Outcome {
    Held,
    Failed,
    /// What the complaint needs was not driven.
    NotProvoked,
    CantTell,
}

impl Outcome {
    /// As a program reads it.
    #[must_use]
    pub fn code(self) -> &'static str {
        match self {
            Outcome::Held => "held",
            Outcome::Failed => "failed",
            Outcome::NotProvoked => "not-provoked",
            Outcome::CantTell => "cant-tell",
        }
    }

    /// As a person says it.
    #[must_use]
    pub fn said(self) -> &'static str {
        match self {
            Outcome::Held => say::held(),
            Outcome::Failed => say::failed(),
            Outcome::NotProvoked => say::not_provoked(),
            Outcome::CantTell => say::cant_tell(),
        }
    }
}

/// What is looked at.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
pub enum CheckName {
    WarmUp,
    Thermostat,
    Band,
    Air,
    Overheating,
    Fan,
    Charging,
    Trims,
    Codes,
    Provoked,
}

impl CheckName {
    /// As a program reads it.
    #[must_use]
    pub fn code(self) -> &'static str {
        match self {
            CheckName::WarmUp => "warm-up",
            CheckName::Thermostat => "thermostat",
            CheckName::Band => "band",
            CheckName::Air => "air",
            CheckName::Overheating => "overheating",
            CheckName::Fan => "fan",
            CheckName::Charging => "charging",
            CheckName::Trims => "trims",
            CheckName::Codes => "codes",
            CheckName::Provoked => "provoked",
        }
    }

    /// As a person reads it.
    #[must_use]
    pub fn name(self) -> &'static str {
        match self {
            CheckName::WarmUp => say::check_warm_up(),
            CheckName::Thermostat => say::check_thermostat(),
            CheckName::Band => say::check_band(),
            CheckName::Air => say::check_air(),
            CheckName::Overheating => say::check_overheating(),
            CheckName::Fan => say::check_fan(),
            CheckName::Charging => say::check_charging(),
            CheckName::Trims => say::check_trims(),
            CheckName::Codes => say::check_codes(),
            CheckName::Provoked => say::check_provoked(),
        }
    }
}

/// A figure that a verdict rests on.
#[derive(Debug, Clone, PartialEq)]
pub struct Reading {
    pub name: String,
    pub value: f64,
    pub unit: &'static str,
    /// Seconds since the start of the log, where it belongs to a moment.
    pub at_s: Option<f64>,
    /// How far it may be off, where that is known.
    pub within: Option<f64>,
}

/// One check.
#[derive(Debug, Clone, PartialEq)]
pub struct Check {
    pub check: CheckName,
    pub verdict: Outcome,
    /// Why, in a sentence.
    pub because: String,
    pub readings: Vec<Reading>,
    /// What to read or drive next, where nothing can be told yet.
    pub next: Option<String>,
}

/// All checks and what they come to.
#[derive(Debug, Clone, PartialEq)]
pub struct Verdict {
    pub verdict: Outcome,
    pub because: String,
    pub checks: Vec<Check>,
    /// To be read before the drive.
    pub cautions: Vec<Caution>,
    pub working: Working,
    pub picture: Picture,
}

impl Check {
    pub(crate) fn new(check: CheckName, verdict: Outcome, because: impl Into<String>) -> Check {
        Check {
            check,
            verdict,
            because: because.into(),
            readings: Vec::new(),
            next: None,
        }
    }

    /// Nothing can be told yet; what to read next.
    pub(crate) fn cant_tell(
        check: CheckName,
        because: impl Into<String>,
        next: impl Into<String>,
    ) -> Check {
        Check {
            next: Some(next.into()),
            ..Check::new(check, Outcome::CantTell, because)
        }
    }

    pub(crate) fn reading(self, name: &str, value: f64, unit: &'static str) -> Check {
        self.with(name, value, unit, None, None)
    }

    pub(crate) fn at(self, name: &str, value: f64, unit: &'static str, at_s: f64) -> Check {
        self.with(name, value, unit, Some(at_s), None)
    }

    pub(crate) fn with(
        mut self,
        name: &str,
        value: f64,
        unit: &'static str,
        at_s: Option<f64>,
        within: Option<f64>,
    ) -> Check {
        self.readings.push(Reading {
            name: name.to_owned(),
            value,
            unit,
            at_s,
            within,
        });
        self
    }
}

/// Everything that a check looks at.
pub(crate) struct Case<'a> {
    pub(crate) log: &'a Log,
    pub(crate) drive: Drive,
    pub(crate) conditions: &'a Conditions,
    pub(crate) spikes: Vec<Spike>,
    pub(crate) opening: Opening,
}

/// What a check has found: its verdict and the lines of its working.
pub(crate) struct Found {
    pub(crate) check: Check,
    pub(crate) lines: Vec<Line>,
}

impl From<Check> for Found {
    fn from(check: Check) -> Found {
        Found {
            check,
            lines: Vec::new(),
        }
    }
}

/// Judges a drive, check by check, and as a whole.
///
/// Failed if any check failed. With a complaint: not provoked if what it needs was not
/// driven; held if it was and the checks that it touches held. Without one: held if the
/// temperature held its band, no spike was seen and nothing ran hot. Else nothing can be told,
/// and each check says what to read next.
///
/// Inputs: a [`Log`]; [`Conditions`], all of which may be left out. A maker's limit or a
/// thermostat's rating goes before the common values used here.
///
/// Returns a [`Verdict`] with every check, its reason, its readings and the working.
///
/// # Limits
///
/// Liquid-cooled engines. The log tells what the sensor tells: a sensor in steam or air reads
/// wrong. Without a maker's limit nothing between 105 and 110 °C can be judged; without a
/// rating nothing between 71 and 75 °C.
///
/// # Source
///
/// Each line of the working names its own; the values are common practice and secondary
/// texts, none is a maker's.
///
/// ```
/// use roadtest::{Conditions, Mapping, Outcome, judge, read};
///
/// let log = read(b"time,coolant\n0,20\n60,35\n120,48\n", None, &Mapping::default())?;
/// let verdict = judge(&log, &Conditions::default());
/// assert_eq!(verdict.verdict, Outcome::CantTell);
/// # Ok::<(), roadtest::LogError>(())
/// ```
#[must_use]
pub fn judge(log: &Log, conditions: &Conditions) -> Verdict {
    let drive = Drive::of(log);
    let spikes = check::spikes(log, &drive);
    let opening = opening(&drive, spikes.iter().map(|spike| spike.steps));
    // What is no temperature is as good as not given.
    let finite = |c: Option<f64>| c.filter(|c| c.is_finite());
    let conditions = &Conditions {
        complaint: conditions.complaint.clone(),
        thermostat_c: finite(conditions.thermostat_c),
        limit_c: finite(conditions.limit_c),
        boil_c: finite(conditions.boil_c),
    };
    let case = Case {
        log,
        drive,
        conditions,
        spikes,
        opening,
    };
    let mut found: Vec<Found> = vec![
        check::warm_up(&case),
        check::thermostat(&case),
        check::band(&case),
        check::air(&case),
        check::overheating(&case),
        check::fan(&case),
        check::charging(&case),
        check::trims(&case),
        check::codes(&case),
    ];
    let complaint = conditions.complaint.as_deref().map(Complaint::read);
    let came_back = complaint.as_ref().is_some_and(|complaint| {
        found.iter().any(|found| {
            found.check.verdict == Outcome::Failed && complaint.touches(found.check.check)
        })
    });
    found.push(check::provoked(&case, complaint.as_ref(), came_back));
    let picture = Picture::of(&case, found.iter().map(|found| &found.check));
    let mut working = Working::new(say::road_test());
    for line in found.iter().flat_map(|found| found.lines.clone()) {
        working = working.line(line);
    }
    let working = working
        .limit(say::the_makers_limits_and_the_thermostats())
        .limit(say::the_log_tells_what_the_sensor());
    let checks: Vec<Check> = found.into_iter().map(|found| found.check).collect();
    let (verdict, because) = whole(&checks, complaint.as_ref());
    Verdict {
        verdict,
        because,
        checks,
        cautions: Caution::ALL.to_vec(),
        working,
        picture,
    }
}

/// What the checks come to.
fn whole(checks: &[Check], complaint: Option<&Complaint>) -> (Outcome, String) {
    let names = |wanted: &dyn Fn(&&Check) -> bool| {
        let names: Vec<&str> = checks
            .iter()
            .filter(|check| check.check != CheckName::Provoked)
            .filter(wanted)
            .map(|check| check.check.name())
            .collect();
        names.join(", ")
    };
    let failed = names(&|check| check.verdict == Outcome::Failed);
    if !failed.is_empty() {
        return (Outcome::Failed, say::failed_checks(failed));
    }
    if let Some(complaint) = complaint {
        let provoked = checks
            .iter()
            .find(|check| check.check == CheckName::Provoked);
        match provoked {
            Some(check) if check.verdict != Outcome::Held => {
                return (check.verdict, check.because.clone());
            }
            _ => {}
        }
        if complaint.names_checks() {
            let open =
                names(&|check| complaint.touches(check.check) && check.verdict != Outcome::Held);
            return if open.is_empty() {
                let held = names(&|check| complaint.touches(check.check));
                (Outcome::Held, say::driven_and_held(held))
            } else {
                (Outcome::CantTell, say::driven_but_cant_tell(open))
            };
        }
    }
    let core = [CheckName::Band, CheckName::Air, CheckName::Overheating];
    let open = names(&|check| core.contains(&check.check) && check.verdict != Outcome::Held);
    if open.is_empty() {
        let because = say::the_temperature_held_its_band_with();
        (Outcome::Held, because.to_owned())
    } else {
        (Outcome::CantTell, say::log_cant_tell_of(open))
    }
}
