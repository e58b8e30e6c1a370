//! What is wrong with how a belt runs, in words, before anybody starts the engine.

use crate::layout::{Sense, Side};
use crate::phrases as say;
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

impl fmt::Display for Fault {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            Fault::WrongSide { pulleys } => wrong_side(f, pulleys),
            Fault::WrongFace { pulley, side } => wrong_face(f, pulley, *side),
            Fault::WrongSense {
                pulley,
                turns,
                must,
            } => f.write_str(&say::wrong_sense(pulley, turns.words(), must.words())),
            Fault::WrongWayRound { crank, turns } => {
                f.write_str(&say::wrong_way_round(crank, turns.words()))
            }
            Fault::WrongPulley { moves } => wrong_pulley(f, moves),
            Fault::LiesWrong { what } => f.write_str(what),
            Fault::NotReached { pulley, wrap_deg } => {
                f.write_str(&say::not_reached(pulley, format_args!("{wrap_deg:.0}")))
            }
            Fault::WrapTooSmall {
                pulley,
                wrap_deg,
                least_deg,
                stated,
            } => {
                let wrap = libm::floor(*wrap_deg);
                let (wrap, least) = (format_args!("{wrap:.0}"), format_args!("{least_deg:.0}"));
                f.write_str(&if *stated {
                    say::wrap_too_small_stated(pulley, wrap, least)
                } else {
                    say::wrap_too_small(pulley, wrap, least)
                })
            }
            Fault::CrossesItself { one, other } => {
                f.write_str(&say::crosses_itself(&one.0, &one.1, &other.0, &other.1))
            }
            Fault::CrossesPulley { run, pulley } => {
                f.write_str(&say::crosses_pulley(&run.0, &run.1, pulley))
            }
            Fault::NoPlainLoop { turns } => {
                f.write_str(&say::no_plain_loop(format_args!("{turns:.1}")))
            }
            Fault::PulleysOverlap { one, other } => f.write_str(&say::pulleys_overlap(one, other)),
            Fault::NoWayBetween { from, to } => f.write_str(&say::no_way_between(from, to)),
            _ => self.fmt_fit(f),
        }
    }
}

impl Fault {
    /// The words of those that are about fit, line and load.
    fn fmt_fit(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            Fault::ArmAtStop { too_long, by_mm } => f.write_str(&if *too_long {
                say::too_long_at_stop(tenth(*by_mm))
            } else {
                say::too_short_at_stop(tenth(*by_mm))
            }),
            Fault::DrawnOutsideStops {
                drawn_deg,
                min_deg,
                max_deg,
            } => f.write_str(&say::arm_past_stop(
                tenth(*drawn_deg),
                tenth(*min_deg),
                tenth(*max_deg),
            )),
            Fault::DoesNotFit { too_long, by_mm } => f.write_str(&if *too_long {
                say::too_long(tenth(*by_mm))
            } else {
                say::too_short(tenth(*by_mm))
            }),
            Fault::OneRibOff {
                pulley,
                ribs,
                off_mm,
            } => f.write_str(&say::ribs_off(ribs.unsigned_abs(), pulley, tenth(*off_mm))),
            Fault::OutOfLine { pulley, off_mm } => {
                f.write_str(&say::out_of_line(pulley, tenth(*off_mm)))
            }
            Fault::TooFewGrooves {
                pulley,
                grooves,
                ribs,
            } => f.write_str(&say::too_few_grooves(pulley, grooves, ribs)),
            Fault::Slips { pulley, margin } => f.write_str(&say::slips(
                pulley,
                format_args!("{:.1}", 1.0 / margin.max(1e-3)),
            )),
            Fault::TensionerInTightRun { tensioner } => {
                f.write_str(&say::tensioner_in_tight_run(tensioner))
            }
            Fault::MarksDoNotFit { from, to, teeth } => {
                f.write_str(&say::marks_do_not_fit(from, to, format_args!("{teeth:.2}")))
            }
            Fault::NoWholeTeeth { teeth } => {
                f.write_str(&say::no_whole_teeth(format_args!("{teeth:.2}")))
            }
            _ => Ok(()),
        }
    }
}

fn wrong_side(f: &mut fmt::Formatter<'_>, pulleys: &[(String, Side)]) -> fmt::Result {
    let each: Vec<String> = pulleys
        .iter()
        .map(|(pulley, listed)| match listed {
            Side::Ribs => say::ribs_to_wants_back(pulley),
            Side::Back => say::back_to_wants_ribs(pulley),
        })
        .collect();
    f.write_str(&say::wrong_side(each.join(say::or_another())))
}

fn wrong_face(f: &mut fmt::Formatter<'_>, pulley: &str, side: Side) -> fmt::Result {
    match side {
        Side::Ribs => f.write_str(&say::ribs_on_smooth(pulley)),
        Side::Back => f.write_str(&say::back_on_ribbed(pulley)),
    }
}

fn wrong_pulley(f: &mut fmt::Formatter<'_>, moves: &[Place]) -> fmt::Result {
    let each: Vec<String> = moves
        .iter()
        .map(|place| say::belongs_between(&place.pulley, &place.after, &place.before))
        .collect();
    f.write_str(&say::wrong_pulley(each.join(say::or_another())))
}
