//! A tester's reading of brake fluid against the limits of its class.

use crate::error::{FluidError, within};
use crate::phrases as say;
use crate::text;
use measure::{Grade, Line, Source, Working};

/// The class of a brake fluid, as it stands on cap and container.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum DotClass {
    Dot3,
    Dot4,
    /// Silicone.
    Dot5,
    Dot51,
    /// ISO 4925, low viscosity.
    Class6,
    /// ISO 4925:2020, low viscosity.
    Class7,
}

/// Least boiling points of a class.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Limits {
    /// New, from a sealed container.
    pub dry_c: f64,
    /// After taking up about 3.7 % of water.
    pub wet_c: f64,
}

impl DotClass {
    pub const ALL: [DotClass; 6] = [
        DotClass::Dot3,
        DotClass::Dot4,
        DotClass::Dot5,
        DotClass::Dot51,
        DotClass::Class6,
        DotClass::Class7,
    ];

    /// As it is printed.
    pub fn name(self) -> &'static str {
        match self {
            DotClass::Dot3 => "DOT 3",
            DotClass::Dot4 => "DOT 4",
            DotClass::Dot5 => "DOT 5",
            DotClass::Dot51 => "DOT 5.1",
            DotClass::Class6 => "class 6",
            DotClass::Class7 => "class 7",
        }
    }

    /// As it is said.
    pub(crate) fn said(self) -> &'static str {
        match self {
            DotClass::Class6 => say::class_6(),
            DotClass::Class7 => say::class_7(),
            dot => dot.name(),
        }
    }

    /// The class printed so, with or without spaces, in any case.
    ///
    /// ```
    /// use fluids::DotClass;
    /// assert_eq!(DotClass::named("dot5.1"), Some(DotClass::Dot51));
    /// ```
    pub fn named(printed: &str) -> Option<DotClass> {
        let bare = |text: &str| text.replace([' ', '-'], "").to_lowercase();
        DotClass::ALL
            .into_iter()
            .find(|class| bare(class.name()) == bare(printed))
    }

    /// Silicone, which never mixes with the others.
    pub fn is_silicone(self) -> bool {
        self == DotClass::Dot5
    }

    /// The least boiling points that its standard asks for.
    pub fn limits(self) -> Limits {
        let (dry_c, wet_c) = match self {
            DotClass::Dot3 => (205.0, 140.0),
            DotClass::Dot4 => (230.0, 155.0),
            DotClass::Dot5 | DotClass::Dot51 => (260.0, 180.0),
            DotClass::Class6 => (250.0, 165.0),
            DotClass::Class7 => (260.0, 180.0),
        };
        Limits { dry_c, wet_c }
    }

    fn source(self) -> Source {
        match self {
            DotClass::Class6 | DotClass::Class7 => {
                Source::new("ISO 4925:2020", "table of requirements", Grade::Memory)
            }
            _ => Source::new(
                "FMVSS 116 (49 CFR 571.116), S5.1.1 and S5.1.2",
                "as tabulated in articles on brake fluid",
                Grade::Published,
            ),
        }
    }
}

/// A reading of a tester that boils the fluid.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct BrakeReading {
    /// Off the cap or the maker's data; never guessed.
    pub class: Option<DotClass>,
    /// 80 to 350 °C.
    pub boils_c: f64,
    /// How far the tester may be off, 0 to 30 K.
    pub within_k: f64,
    /// What the vehicle maker asks for in use, where it is stated.
    pub makers_least_c: Option<f64>,
}

/// What a reading says.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum BrakeVerdictKind {
    /// As good as new.
    Dry,
    /// It has taken up water, and keeps its wet limit.
    TakenUpWater,
    /// Under the limit: to be renewed.
    Renew,
    /// The tester's error spans the limit.
    TooNear,
    /// The class is not known.
    CannotTell,
}

/// A reading against its limits.
#[derive(Clone, Debug, PartialEq)]
pub struct BrakeVerdict {
    pub kind: BrakeVerdictKind,
    pub limits: Option<Limits>,
    pub words: String,
    pub working: Working,
}

/// Whether brake fluid keeps the limits of its class.
///
/// Formula: at or above the dry limit it is as good as new; under the wet limit, or under
/// what the maker asks for, it is renewed; a reading within the tester's error of that limit
/// is too near to tell.
///
/// Inputs: see [`BrakeReading`].
///
/// Returns the verdict in words, with the limits of the class.
///
/// # Errors
///
/// [`FluidError::OutOfRange`].
///
/// # Limits
///
/// The limits are for a laboratory's reflux; a shop's tester reads the bottle, not the
/// caliper, where the fluid is worse. Age and the maker's interval count beside it. Without
/// the class nothing is said.
///
/// # Source
///
/// FMVSS 116 S5.1.1 (dry), S5.1.2 (wet); ISO 4925.
///
/// ```
/// use fluids::{BrakeReading, BrakeVerdictKind, DotClass, brake_reading};
/// let read = |class, boils_c| {
///     brake_reading(&BrakeReading { class, boils_c, within_k: 5.0, makers_least_c: None })
/// };
/// assert_eq!(read(Some(DotClass::Dot4), 140.0)?.kind, BrakeVerdictKind::Renew);
/// assert_eq!(read(None, 140.0)?.kind, BrakeVerdictKind::CannotTell);
/// # Ok::<(), fluids::FluidError>(())
/// ```
pub fn brake_reading(reading: &BrakeReading) -> Result<BrakeVerdict, FluidError> {
    let boils = within(
        say::the_reading(),
        reading.boils_c,
        "°C",
        80.0..=350.0,
        say::mend_read_again(),
    )?;
    let off = within(
        say::the_testers_error(),
        reading.within_k,
        "K",
        0.0..=30.0,
        say::mend_in_its_manual(),
    )?;
    if let Some(least) = reading.makers_least_c {
        within(
            say::the_makers_limit(),
            least,
            "°C",
            80.0..=350.0,
            say::mend_write_it_in_degrees(),
        )?;
    }
    let mut working = Working::new(say::brake_fluid_title()).line(
        Line::new(say::boils_at(), Source::given())
            .input(say::tester_good_to(), format!("{off:.0}\u{202f}K"))
            .value(text::celsius(boils)),
    );
    let Some(class) = reading.class else {
        working =
            working.line(Line::new(say::class(), Source::given()).note(say::read_it_off_the_cap()));
        return Ok(BrakeVerdict {
            kind: BrakeVerdictKind::CannotTell,
            limits: None,
            words: say::cannot_tell_without_class().to_owned(),
            working,
        });
    };
    let limits = class.limits();
    let least = limits.wet_c.max(reading.makers_least_c.unwrap_or(0.0));
    working = working
        .line(
            Line::new(say::least_dry(class.said()), class.source())
                .value(text::celsius(limits.dry_c)),
        )
        .line(
            Line::new(say::least_wet(class.said()), class.source())
                .value(text::celsius(limits.wet_c)),
        );
    if let Some(makers) = reading.makers_least_c {
        working = working.line(
            Line::new(say::makers_least_in_use(), Source::given()).value(text::celsius(makers)),
        );
    }
    let kind = if boils + off < least {
        BrakeVerdictKind::Renew
    } else if boils - off < least {
        BrakeVerdictKind::TooNear
    } else if boils >= limits.dry_c {
        BrakeVerdictKind::Dry
    } else {
        BrakeVerdictKind::TakenUpWater
    };
    let words = match kind {
        BrakeVerdictKind::Renew => {
            say::renew_it(format_args!("{boils:.0}"), format_args!("{least:.0}"))
        }
        BrakeVerdictKind::TooNear => say::too_near(format_args!("{least:.0}")),
        BrakeVerdictKind::Dry => say::as_good_as_new().to_owned(),
        _ => say::taken_up_water().to_owned(),
    };
    Ok(BrakeVerdict {
        kind,
        limits: Some(limits),
        words,
        working: working.limit(say::tester_reads_the_bottle()),
    })
}
