//! Pulleys in line: a straight edge's two readings, and a belt one rib off.

use crate::error::{BeltError, within};
use crate::fault::Fault;
use crate::layout::{Layout, PK_PITCH_MM, Profile};
use crate::phrases as say;
use crate::text;
use measure::{Line, Source, Working};

/// Two readings of a straight edge laid across a pulley's face from the one it is lined up
/// with.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct AlignQuestion {
    /// Gap at the near rim; negative where the pulley stands proud. -50 to 50 mm.
    pub near_mm: f64,
    /// Gap at the far rim.
    pub far_mm: f64,
    /// Between the two points read, 5 to 1000 mm.
    pub apart_mm: f64,
    /// Length of the belt's run to the other pulley, 10 to 5000 mm, for the offset.
    pub span_mm: Option<f64>,
    /// What the maker allows, 0 to 10 degrees.
    pub limit_deg: Option<f64>,
}

/// How far out of line.
#[derive(Clone, Debug, PartialEq)]
pub struct Alignment {
    /// Of the pulley's plane against the straight edge.
    pub tilt_deg: f64,
    /// By which the belt enters askew because the pulley stands off.
    pub offset_deg: Option<f64>,
    /// The greater of the two, against the limit; nothing where no limit was stated.
    pub within_limit: Option<bool>,
    pub working: Working,
}

/// The angles of misalignment from two readings of a straight edge.
///
/// Formula: tilt = atan((far - near) / apart); offset = atan(((near + far)/2) / span).
///
/// Inputs: see [`AlignQuestion`].
///
/// Returns both angles in degrees, and whether they keep to the limit, if one was stated.
///
/// # Errors
///
/// [`BeltError::OutOfRange`].
///
/// # Limits
///
/// One straight edge sees one direction only: read again with it turned by a quarter. The
/// limit is the maker's; none is assumed.
///
/// # Source
///
/// Geometry.
///
/// ```
/// use belt::{AlignQuestion, alignment};
/// let found = alignment(&AlignQuestion {
///     near_mm: 0.0, far_mm: 1.0, apart_mm: 120.0, span_mm: None, limit_deg: Some(0.33),
/// })?;
/// assert!((found.tilt_deg - 0.477).abs() < 1e-3 && found.within_limit == Some(false));
/// # Ok::<(), belt::BeltError>(())
/// ```
pub fn alignment(question: &AlignQuestion) -> Result<Alignment, BeltError> {
    let gap = |what, value| within(what, value, "mm", -50.0..=50.0, say::mend_straight_edge());
    let near = gap(say::the_near_reading(), question.near_mm)?;
    let far = gap(say::the_far_reading(), question.far_mm)?;
    let apart = within(
        say::distance_of_readings(),
        question.apart_mm,
        "mm",
        5.0..=1000.0,
        say::mend_opposite_rims(),
    )?;
    let tilt_deg = libm::atan((far - near) / apart).to_degrees();
    let mut working = Working::new(say::in_line_title()).line(
        Line::new(say::tilt(), Source::derived())
            .formula("t", say::tilt_formula())
            .input(say::near(), text::millimetres(near))
            .input(say::far(), text::millimetres(far))
            .input(say::apart(), text::millimetres(apart))
            .value(text::degrees(tilt_deg)),
    );
    let mut offset_deg = None;
    if let Some(span) = question.span_mm {
        within(
            say::runs_length(),
            span,
            "mm",
            10.0..=5000.0,
            say::mend_free_run(),
        )?;
        let offset = libm::atan(f64::midpoint(near, far) / span).to_degrees();
        working = working.line(
            Line::new(say::askew(), Source::derived())
                .formula("o", say::askew_formula())
                .input(say::span(), text::millimetres(span))
                .value(text::degrees(offset)),
        );
        offset_deg = Some(offset);
    }
    let worst = tilt_deg.abs().max(offset_deg.unwrap_or(0.0).abs());
    let mut within_limit = None;
    if let Some(limit) = question.limit_deg {
        within(
            say::the_limit(),
            limit,
            "°",
            0.0..=10.0,
            say::mend_in_degrees(),
        )?;
        within_limit = Some(worst <= limit);
        working = working
            .line(Line::new(say::makers_limit(), Source::given()).value(text::degrees(limit)));
    }
    let working = working.limit(say::one_straight_edge());
    Ok(Alignment {
        tilt_deg,
        offset_deg,
        within_limit,
        working,
    })
}

/// Further off than this is worth a word; nearer, the edge was read no better.
const READ_WITHIN_MM: f64 = 1.0;

/// Belts that lie a rib off, or off by no whole rib, by their edges against the crank's.
pub(crate) fn edges(layout: &Layout) -> Vec<Fault> {
    let crank = layout.pulleys.iter().find(|pulley| pulley.drives);
    let Some(zero) = crank.and_then(|crank| crank.edge_mm) else {
        return Vec::new();
    };
    let mut found = Vec::new();
    for pulley in layout.pulleys.iter().filter(|pulley| !pulley.drives) {
        let Some(off_mm) = pulley.edge_mm.map(|edge| edge - zero) else {
            continue;
        };
        if off_mm.abs() <= READ_WITHIN_MM {
            continue;
        }
        let ribs = libm::round(off_mm / PK_PITCH_MM);
        let whole = (off_mm - ribs * PK_PITCH_MM).abs() <= READ_WITHIN_MM;
        let is_pk = matches!(layout.profile, Profile::Pk { .. });
        #[allow(
            clippy::cast_possible_truncation,
            reason = "edges are checked to a metre"
        )]
        let counted = ribs as i32;
        found.push(if is_pk && whole && counted != 0 {
            Fault::OneRibOff {
                pulley: pulley.name.clone(),
                ribs: counted,
                off_mm,
            }
        } else {
            Fault::OutOfLine {
                pulley: pulley.name.clone(),
                off_mm,
            }
        });
    }
    found
}
