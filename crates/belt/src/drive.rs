//! A whole drive: path, lengths, tensioner, slip, what is wrong, and how the belt comes off.

use crate::phrases as say;
mod fit;

use crate::caution::{self, Caution};
use crate::check::prepared;
use crate::error::{BeltError, within};
use crate::fault::Fault;
use crate::layout::{Layout, Sense, Side, TensionerKind};
use crate::off::{self, LetOff};
use crate::path::{Circle, Path};
use crate::routing::{self, other_way_round, reversed, routed, senses};
use crate::slip::{self, Hold, Load};
use crate::toothed::{self, Between};
use crate::{align, found, worked};
use fit::fitted;
use measure::Working;
use std::f64::consts::PI;

pub(crate) use fit::Fit;

/// A layout, and the belt to lay on it.
#[derive(Clone, Debug, PartialEq)]
pub struct Question {
    pub layout: Layout,
    /// The belt's length as printed: effective for PK, 50 to 200 000 mm.
    pub length_mm: Option<f64>,
}

/// A drive worked out.
#[derive(Clone, Debug, PartialEq)]
pub struct Drive {
    /// Effective length for PK, pitch length for a toothed belt, else of the line on the
    /// diameters given; nothing where no belt can run.
    pub length_mm: Option<f64>,
    /// Of the pitch line, where speeds are equal.
    pub pitch_length_mm: Option<f64>,
    /// In the sequence of the layout.
    pub pulleys: Vec<OnPulley>,
    pub stand: Option<Stand>,
    /// Least and greatest length that the tensioner can take.
    pub window_mm: Option<(f64, f64)>,
    /// By how much fixed pulleys stretch the belt given, as a fraction.
    pub stretch: Option<f64>,
    pub between_marks: Vec<Between>,
    /// From the best pulley to take last to the worst.
    pub let_off: Vec<LetOff>,
    pub faults: Vec<Fault>,
    pub notes: Vec<String>,
    pub cautions: Vec<Caution>,
    pub working: Working,
}

/// The belt on one pulley.
#[derive(Clone, Debug, PartialEq)]
pub struct OnPulley {
    pub name: String,
    pub side: Side,
    pub x_mm: f64,
    pub y_mm: f64,
    pub line_radius_mm: f64,
    pub turns: Sense,
    /// Where the belt meets it and leaves it; nothing where no belt can run.
    pub touches: Option<Touches>,
    /// Speed over the crank's.
    pub rpm_ratio: f64,
    /// Ratio of tensions that friction holds, where friction is known.
    pub holds_ratio: Option<f64>,
    /// How many times its load it could carry, where the load is known: under 1 it slips.
    pub slip_margin: Option<f64>,
    /// Tension of the run after it.
    pub tension_n: Option<f64>,
}

/// Where a belt touches a pulley.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Touches {
    pub meets: (f64, f64),
    pub leaves: (f64, f64),
    pub wrap_deg: f64,
    /// The free run after it.
    pub span_mm: f64,
}

/// Where the tensioner stands.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Stand {
    /// About a pivot, from the right, counter-clockwise.
    pub arm_deg: Option<f64>,
    /// Along a slot, from its first end.
    pub along_mm: Option<f64>,
    /// Of the belt at rest, where spring or strut is known.
    pub tension_n: Option<f64>,
    /// What the belt can be slackened by, to the stop.
    pub room_mm: Option<f64>,
}

/// Works out a drive.
///
/// Formula: a belt leaves pulley i for pulley j in the direction
/// f + asin((si ri - sj rj)/d), with d and f distance and direction of the centres and s the
/// turning senses; runs are sqrt(d² - (si ri - sj rj)²), wraps the turns between runs; the
/// length is the sum of runs and arcs. Effective length is pitch length less 2 pi times the
/// line differential.
///
/// Inputs: see [`Question`] and [`Layout`].
///
/// Returns the path, the lengths that fit, where the tensioner stands with the belt given,
/// what is wrong in words, and how to take the belt off. What is wrong with a routing is
/// no error: the drive is worked out as far as it goes.
///
/// # Errors
///
/// [`BeltError`] where the layout cannot be reckoned with.
///
/// # Limits
///
/// All pulleys in one plane; a belt as thin as its line; no sag, no stretch under load.
///
/// # Source
///
/// Geometry; ISO 9981:2020 for PK.
///
/// ```
/// use belt::{Layout, Pulley, Question, Sense, drive};
/// let found = drive(&Question {
///     layout: Layout::of(vec![
///         Pulley::new("crank", 0.0, 0.0, 100.0).driving(Sense::Clockwise),
///         Pulley::new("pump", 300.0, 0.0, 100.0),
///     ]),
///     length_mm: None,
/// })?;
/// assert!((found.length_mm.unwrap() - 914.159).abs() < 1e-3);
/// # Ok::<(), belt::BeltError>(())
/// ```
pub fn drive(question: &Question) -> Result<Drive, BeltError> {
    if let Some(length) = question.length_mm {
        within(
            say::belts_length(),
            length,
            "mm",
            50.0..=200_000.0,
            say::mend_as_printed(),
        )?;
    }
    let listed = prepared(&question.layout)?;
    let backwards = other_way_round(&listed);
    let mut faults = routing::faults(&listed);
    let travelled = if backwards { reversed(&listed) } else { listed };
    let (layout, fit) = fitted(&travelled, question.length_mm);
    faults.extend(fit.faults.iter().cloned());
    let mut notes = fit.notes.clone();

    notes.extend(
        routing::either_side(&layout)
            .into_iter()
            .map(|(pulley, side)| {
                let other = match side {
                    Side::Ribs => say::side_back(),
                    Side::Back => say::side_ribs(),
                };
                say::could_lie_on(pulley, other)
            }),
    );

    let worked = routed(&layout).ok();
    let mut on = on_pulleys(&layout, worked.as_ref());
    let mut working = worked::path(&layout, worked.as_ref(), question.length_mm, &fit);
    let mut between_marks = Vec::new();
    if let Some((circles, path)) = &worked {
        faults.extend(wraps(&layout, path));
        between_marks = toothed::between_marks(&layout, circles, path);
        let (holds, slip) = held(&layout, path, &fit, &mut notes);
        for (pulley, hold) in on.iter_mut().zip(holds) {
            pulley.holds_ratio = hold.ratio;
            pulley.slip_margin = hold.margin;
            pulley.tension_n = hold.tension_n;
        }
        working = slip.into_iter().fold(working, Working::then);
    }
    faults.extend(toothed::faults(
        &layout,
        &between_marks,
        question.length_mm,
        fit.at,
    ));
    faults.extend(slips(&on));
    faults.extend(align::edges(&layout));
    faults.extend(found::lies(&layout));

    let kind = layout.tensioner.as_ref().map(|tensioner| tensioner.kind);
    let let_off = off::let_off(&layout);
    let room = fit.stand.and_then(|stand| stand.room_mm);
    notes.extend(off::advice(
        &let_off,
        room,
        kind == Some(TensionerKind::StretchBelt),
    ));
    if backwards {
        on.reverse();
    }
    let length_mm = worked.as_ref().map(|(_, path)| path.length);
    Ok(Drive {
        length_mm,
        pitch_length_mm: length_mm
            .map(|length| length + 2.0 * PI * layout.profile.pitch_offset_mm()),
        pulleys: on,
        stand: fit.stand,
        window_mm: fit.window,
        stretch: fit.stretch,
        between_marks,
        let_off,
        faults,
        notes,
        cautions: caution::of(layout.profile, kind),
        working,
    })
}

fn on_pulleys(layout: &Layout, worked: Option<&(Vec<Circle>, Path)>) -> Vec<OnPulley> {
    let count = layout.pulleys.len();
    let crank = layout.pulleys.iter().find(|pulley| pulley.drives);
    let driving_mm = crank.map_or(1.0, |crank| layout.pitch_radius_mm(crank));
    layout
        .pulleys
        .iter()
        .zip(senses(layout))
        .enumerate()
        .map(|(at, (pulley, turns))| OnPulley {
            name: pulley.name.clone(),
            side: pulley.side,
            x_mm: pulley.x_mm,
            y_mm: pulley.y_mm,
            line_radius_mm: layout.radius_mm(pulley),
            turns,
            touches: worked.map(|(_, path)| Touches {
                meets: path.runs[(at + count - 1) % count].to,
                leaves: path.runs[at].from,
                wrap_deg: path.wraps[at].to_degrees(),
                span_mm: path.runs[at].length,
            }),
            rpm_ratio: driving_mm / layout.pitch_radius_mm(pulley),
            holds_ratio: None,
            slip_margin: None,
            tension_n: None,
        })
        .collect()
}

/// Less than this and the belt does no more than brush a pulley: a figure of the trade.
pub const BRUSHES_DEG: f64 = 10.0;
/// Less than this and ribs hardly drive or are driven: a figure of the trade, where the maker
/// states none.
pub const LEAST_RIBBED_WRAP_DEG: f64 = 45.0;

fn wraps(layout: &Layout, path: &Path) -> Vec<Fault> {
    let mut found = Vec::new();
    for (pulley, wrap) in layout.pulleys.iter().zip(&path.wraps) {
        let moves = layout
            .tensioner
            .as_ref()
            .and_then(|tensioner| tensioner.moves.as_ref());
        let carries =
            pulley.side == Side::Ribs && moves.is_none_or(|(name, _)| *name != pulley.name);
        let bare = if carries {
            LEAST_RIBBED_WRAP_DEG
        } else {
            BRUSHES_DEG
        };
        let least_deg = pulley.least_wrap_deg.unwrap_or(bare);
        let wrap_deg = wrap.to_degrees();
        if wrap_deg < least_deg {
            found.push(Fault::WrapTooSmall {
                pulley: pulley.name.clone(),
                wrap_deg,
                least_deg,
                stated: pulley.least_wrap_deg.is_some(),
            });
        }
    }
    found
}

fn held(
    layout: &Layout,
    path: &Path,
    fit: &Fit,
    notes: &mut Vec<String>,
) -> (Vec<Hold>, Option<Working>) {
    let spans: Vec<f64> = path.runs.iter().map(|run| run.length).collect();
    let kind = layout.tensioner.as_ref().map(|tensioner| tensioner.kind);
    let load = Load {
        layout,
        wraps_rad: &path.wraps,
        spans_mm: &spans,
        tensioned: fit.at,
        tension_n: fit
            .stand
            .and_then(|stand| stand.tension_n)
            .or(layout.facts.tension_n),
        follows: kind.is_some_and(TensionerKind::follows),
    };
    let asked = layout.facts.friction.is_some()
        || layout
            .pulleys
            .iter()
            .any(|pulley| pulley.power_kw.is_some());
    if layout.profile.is_toothed() {
        notes.push(say::toothed_jumps().to_owned());
    } else if asked {
        notes.extend(slip::missing(&load));
    }
    slip::holds(&load)
}

fn slips(on: &[OnPulley]) -> Vec<Fault> {
    on.iter()
        .filter_map(|pulley| Some((pulley, pulley.slip_margin?)))
        .filter(|(_, margin)| *margin < 1.0)
        .map(|(pulley, margin)| Fault::Slips {
            pulley: pulley.name.clone(),
            margin,
        })
        .collect()
}
