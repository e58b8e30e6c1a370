//! Toothed belts: teeth, marks, and where the slack run lies.

use crate::fault::Fault;
use crate::layout::{Layout, Profile, Side};
use crate::path::{Circle, Path};
use std::f64::consts::PI;

/// Teeth of the belt from one mark to the next, in the sense of travel.
#[derive(Clone, Debug, PartialEq)]
pub struct Between {
    pub from: String,
    pub to: String,
    /// A whole number, if the marks are right.
    pub teeth: f64,
}

/// How far from a whole number still counts as whole: marks are read, not measured.
const WHOLE: f64 = 0.2;

/// Teeth between marks that follow each other. A mark that the belt does not touch counts
/// from where it would come to lie.
pub(crate) fn between_marks(layout: &Layout, circles: &[Circle], path: &Path) -> Vec<Between> {
    let Profile::Toothed { pitch_mm, .. } = layout.profile else {
        return Vec::new();
    };
    let marked: Vec<usize> = (0..layout.pulleys.len())
        .filter(|at| {
            layout.pulleys[*at].mark_deg.is_some() && layout.pulleys[*at].side == Side::Ribs
        })
        .collect();
    if marked.len() < 2 {
        return Vec::new();
    }
    let places: Vec<f64> = marked
        .iter()
        .map(|at| along(layout, circles, path, *at))
        .collect();
    (0..marked.len())
        .map(|n| {
            let next = (n + 1) % marked.len();
            let mut way = places[next] - places[n];
            if way < 0.0 {
                way += path.length;
            }
            Between {
                from: layout.pulleys[marked[n]].name.clone(),
                to: layout.pulleys[marked[next]].name.clone(),
                teeth: way / pitch_mm,
            }
        })
        .collect()
}

/// How far along the belt a pulley's mark lies, from where the belt meets the first pulley.
fn along(layout: &Layout, circles: &[Circle], path: &Path, at: usize) -> f64 {
    let count = path.runs.len();
    let before: f64 = (0..at)
        .map(|n| circles[n].radius * path.wraps[n] + path.runs[n].length)
        .sum();
    let arriving = &path.runs[(at + count - 1) % count];
    let circle = &circles[at];
    let meets = libm::atan2(arriving.to.1 - circle.y, arriving.to.0 - circle.x);
    let mark = layout.pulleys[at].mark_deg.unwrap_or(0.0).to_radians();
    let turn = circle.sign * (mark - meets);
    // The nearest turn to the middle of the wrap.
    let middle = path.wraps[at] / 2.0;
    let turn = turn - 2.0 * PI * libm::round((turn - middle) / (2.0 * PI));
    before + circle.radius * turn
}

/// What is wrong with marks, teeth and the place of the tensioner.
pub(crate) fn faults(
    layout: &Layout,
    between: &[Between],
    length_mm: Option<f64>,
    tensioned: Option<usize>,
) -> Vec<Fault> {
    let Profile::Toothed { pitch_mm, .. } = layout.profile else {
        return Vec::new();
    };
    let off = |teeth: f64| (teeth - libm::round(teeth)).abs() > WHOLE;
    let mut found: Vec<Fault> = between
        .iter()
        .filter(|between| off(between.teeth))
        .map(|between| Fault::MarksDoNotFit {
            from: between.from.clone(),
            to: between.to.clone(),
            teeth: between.teeth,
        })
        .collect();
    found.extend(
        length_mm
            .map(|length| length / pitch_mm)
            .filter(|teeth| off(*teeth))
            .map(|teeth| Fault::NoWholeTeeth { teeth }),
    );
    if let Some(at) = tensioned.filter(|at| in_tight_run(layout, *at)) {
        found.push(Fault::TensionerInTightRun {
            tensioner: layout.pulleys[at].name.clone(),
        });
    }
    found
}

/// Whether nothing that is driven lies between the tensioner and the crank that pulls.
pub(crate) fn in_tight_run(layout: &Layout, tensioned: usize) -> bool {
    let count = layout.pulleys.len();
    let driven = |at: usize| at != tensioned && layout.pulleys[at].side == Side::Ribs;
    let walk = |step: usize| (tensioned + step) % count;
    let ahead = (1..count)
        .map(walk)
        .take_while(|at| !layout.pulleys[*at].drives);
    let behind = (1..count)
        .map(|step| (tensioned + count - step) % count)
        .take_while(|at| !layout.pulleys[*at].drives);
    !ahead.into_iter().any(driven) && behind.into_iter().any(driven)
}
