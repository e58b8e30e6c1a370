//! What is wrong with how a belt runs, in words, before anybody starts the engine.

use crate::layout::{Sense, Side};
use std::fmt;

/// Something to put right before the engine is started.
#[derive(Clone, Debug, PartialEq)]
pub enum Fault {
    /// The belt lies on a pulley with the side that does not belong there. One of these.
    WrongSide {
        pulleys: Vec<(String, Side)>,
    },
    /// The face of a pulley does not suit the side listed.
    WrongFace {
        pulley: String,
        side: Side,
    },
    WrongSense {
        pulley: String,
        turns: Sense,
        must: Sense,
    },
    /// With this sense of the crank the belt would meet the pulleys the other way round.
    WrongWayRound {
        crank: String,
        turns: Sense,
    },
    /// The belt loops round a pulley out of its turn. One of these moves mends it.
    WrongPulley {
        moves: Vec<Place>,
    },
    /// How it lies now is not how it belongs.
    LiesWrong {
        what: String,
    },
    NotReached {
        pulley: String,
        wrap_deg: f64,
    },
    WrapTooSmall {
        pulley: String,
        wrap_deg: f64,
        least_deg: f64,
        stated: bool,
    },
    CrossesItself {
        one: (String, String),
        other: (String, String),
    },
    CrossesPulley {
        run: (String, String),
        pulley: String,
    },
    /// The loop turns more or less than once.
    NoPlainLoop {
        turns: f64,
    },
    PulleysOverlap {
        one: String,
        other: String,
    },
    NoWayBetween {
        from: String,
        to: String,
    },
    /// The belt given lies outside what the tensioner can take.
    ArmAtStop {
        too_long: bool,
        by_mm: f64,
    },
    /// The tensioner is drawn outside its own stops.
    DrawnOutsideStops {
        drawn_deg: f64,
        min_deg: f64,
        max_deg: f64,
    },
    /// Nothing takes up the difference.
    DoesNotFit {
        too_long: bool,
        by_mm: f64,
    },
    OneRibOff {
        pulley: String,
        ribs: i32,
        off_mm: f64,
    },
    OutOfLine {
        pulley: String,
        off_mm: f64,
    },
    TooFewGrooves {
        pulley: String,
        grooves: u32,
        ribs: u32,
    },
    Slips {
        pulley: String,
        margin: f64,
    },
    /// A toothed belt whose tensioner stands in the tight run.
    TensionerInTightRun {
        tensioner: String,
    },
    /// Between two marks there is no whole number of teeth.
    MarksDoNotFit {
        from: String,
        to: String,
        teeth: f64,
    },
    NoWholeTeeth {
        teeth: f64,
    },
}

/// A pulley, and the two that the belt meets before and after it.
#[derive(Clone, Debug, PartialEq)]
pub struct Place {
    pub pulley: String,
    pub after: String,
    pub before: String,
}

fn tenth(value: f64) -> f64 {
    libm::round(value * 10.0) / 10.0
}

fn long_or_short(too_long: bool) -> &'static str {
    if too_long { "long" } else { "short" }
}

impl fmt::Display for Fault {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            Fault::WrongSide { pulleys } => wrong_side(f, pulleys),
            Fault::WrongFace { pulley, side } => wrong_face(f, pulley, *side),
            Fault::WrongSense {
                pulley,
                turns,
                must,
            } => write!(
                f,
                "wrong sense: {pulley} would turn {}, it has to turn {}; lay the belt on it with its other side",
                turns.words(),
                must.words()
            ),
            Fault::WrongWayRound { crank, turns } => write!(
                f,
                "wrong sense: with {crank} turning {} the belt meets the pulleys the other way round; list them in that sequence, or look again which way it turns",
                turns.words()
            ),
            Fault::WrongPulley { moves } => wrong_pulley(f, moves),
            Fault::LiesWrong { what } => f.write_str(what),
            Fault::NotReached { pulley, wrap_deg } => write!(
                f,
                "the belt does not lie on {pulley}: it would have to go {wrap_deg:.0}° round it; check its side and its place"
            ),
            Fault::WrapTooSmall {
                pulley,
                wrap_deg,
                least_deg,
                stated,
            } => {
                let by = if *stated {
                    "the maker asks for"
                } else {
                    "it wants at least"
                };
                write!(
                    f,
                    "wrap too small: {pulley} has {:.0}°, {by} {least_deg:.0}°; check the routing",
                    libm::floor(*wrap_deg)
                )
            }
            Fault::CrossesItself { one, other } => write!(
                f,
                "the belt crosses itself: the run from {} to {} and the run from {} to {}; check sides and sequence",
                one.0, one.1, other.0, other.1
            ),
            Fault::CrossesPulley { run, pulley } => write!(
                f,
                "the belt crosses a pulley: the run from {} to {} goes through {pulley}; check sides and sequence",
                run.0, run.1
            ),
            Fault::NoPlainLoop { turns } => write!(
                f,
                "the belt makes no plain loop: it turns {turns:.1} times round, not once; check sides and sequence"
            ),
            Fault::PulleysOverlap { one, other } => write!(
                f,
                "{one} and {other} overlap: measure their places and diameters again"
            ),
            Fault::NoWayBetween { from, to } => write!(
                f,
                "no belt can run from {from} to {to}: they stand too close for these sides; check sides, places and diameters"
            ),
            _ => self.fmt_fit(f),
        }
    }
}

impl Fault {
    /// The words of those that are about fit, line and load.
    fn fmt_fit(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            Fault::ArmAtStop { too_long, by_mm } => write!(
                f,
                "arm at its stop: the belt is {} mm too {}; take another belt, or check the routing",
                tenth(*by_mm),
                long_or_short(*too_long)
            ),
            Fault::DrawnOutsideStops {
                drawn_deg,
                min_deg,
                max_deg,
            } => write!(
                f,
                "arm past its stop: it is drawn at {}°, its stops are {}° and {}°; measure the pulley's place again",
                tenth(*drawn_deg),
                tenth(*min_deg),
                tenth(*max_deg)
            ),
            Fault::DoesNotFit { too_long, by_mm } => write!(
                f,
                "the belt is {} mm too {} and nothing takes that up; take another belt, or check the places",
                tenth(*by_mm),
                long_or_short(*too_long)
            ),
            Fault::OneRibOff {
                pulley,
                ribs,
                off_mm,
            } => write!(
                f,
                "{} off: on {pulley} the belt lies {} mm out of line; lift it over",
                counted(*ribs),
                tenth(*off_mm)
            ),
            Fault::OutOfLine { pulley, off_mm } => write!(
                f,
                "out of line: on {pulley} the belt lies {} mm off, which is no whole rib; check the pulley's seat",
                tenth(*off_mm)
            ),
            Fault::TooFewGrooves {
                pulley,
                grooves,
                ribs,
            } => write!(
                f,
                "{pulley} has {grooves} grooves for {ribs} ribs: take the belt that belongs there"
            ),
            Fault::Slips { pulley, margin } => write!(
                f,
                "{pulley} slips: it is asked for {:.1} times what the belt can hold there; more wrap or more tension",
                1.0 / margin.max(1e-3)
            ),
            Fault::TensionerInTightRun { tensioner } => write!(
                f,
                "{tensioner} stands in the tight run: a toothed belt is tensioned where it leaves the crank; check the sense"
            ),
            Fault::MarksDoNotFit { from, to, teeth } => write!(
                f,
                "between the marks of {from} and {to} lie {teeth:.2} teeth, no whole number: a mark is off"
            ),
            Fault::NoWholeTeeth { teeth } => write!(
                f,
                "this length is {teeth:.2} teeth, no whole number: check length and pitch"
            ),
            _ => Ok(()),
        }
    }
}

fn counted(ribs: i32) -> String {
    match ribs.unsigned_abs() {
        1 => "one rib".to_owned(),
        more => format!("{more} ribs"),
    }
}

fn wrong_side(f: &mut fmt::Formatter<'_>, pulleys: &[(String, Side)]) -> fmt::Result {
    let each: Vec<String> = pulleys
        .iter()
        .map(|(pulley, listed)| {
            format!(
                "{pulley} has the belt's {} to it, it wants the {}",
                listed.name(),
                listed.other().name()
            )
        })
        .collect();
    write!(f, "wrong side: {}", each.join(", or "))
}

fn wrong_face(f: &mut fmt::Formatter<'_>, pulley: &str, side: Side) -> fmt::Result {
    match side {
        Side::Ribs => write!(
            f,
            "wrong side: ribs run on {pulley}, which is smooth; turn the belt over there"
        ),
        Side::Back => write!(
            f,
            "wrong side: the back runs on {pulley}, which is ribbed; turn the belt over there"
        ),
    }
}

fn wrong_pulley(f: &mut fmt::Formatter<'_>, moves: &[Place]) -> fmt::Result {
    let each: Vec<String> = moves
        .iter()
        .map(|place| {
            format!(
                "{} belongs between {} and {}",
                place.pulley, place.after, place.before
            )
        })
        .collect();
    write!(f, "loops round the wrong pulley: {}", each.join(", or "))
}
