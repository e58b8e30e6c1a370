//! Whether a belt can lie as it is listed, and if not, which change would mend it.

use crate::fault::{Fault, Place};
use crate::layout::{Layout, Pulley, Sense};
use crate::path::{Circle, NoTangent, Path, cross, distance, path};

/// The senses in which the pulleys turn, by the one that drives.
pub(crate) fn senses(layout: &Layout) -> Vec<Sense> {
    let driver = layout.pulleys.iter().find(|pulley| pulley.drives);
    let (sense, side) = match driver {
        Some(crank) => (crank.turns.unwrap_or(Sense::Clockwise), crank.side),
        None => return Vec::new(),
    };
    let turns = |pulley: &Pulley| {
        if pulley.side == side {
            sense
        } else {
            sense.other()
        }
    };
    layout.pulleys.iter().map(turns).collect()
}

pub(crate) fn circles(layout: &Layout) -> Vec<Circle> {
    layout
        .pulleys
        .iter()
        .zip(senses(layout))
        .map(|(pulley, sense)| Circle {
            x: pulley.x_mm,
            y: pulley.y_mm,
            radius: layout.radius_mm(pulley),
            sign: sense.sign(),
        })
        .collect()
}

/// The path, or the two pulleys that stand too close.
pub(crate) fn routed(layout: &Layout) -> Result<(Vec<Circle>, Path), NoTangent> {
    let circles = circles(layout);
    let path = path(&circles)?;
    Ok((circles, path))
}

/// Whether the belt makes one plain loop that touches each pulley and crosses nothing.
pub(crate) fn clean(layout: &Layout) -> bool {
    routed(layout).is_ok_and(|(circles, path)| {
        plain(&circles, &path)
            && crossed_runs(&path).next().is_none()
            && crossed_pulleys(&circles, &path).next().is_none()
    })
}

fn plain(circles: &[Circle], path: &Path) -> bool {
    (path.turning(circles).abs() - 1.0).abs() < 1e-6
}

fn crossed_runs(path: &Path) -> impl Iterator<Item = (usize, usize)> + '_ {
    let count = path.runs.len();
    (0..count)
        .flat_map(move |one| ((one + 1)..count).map(move |other| (one, other)))
        .filter(|(one, other)| cross(&path.runs[*one], &path.runs[*other]))
}

/// Pairs of a run and a pulley that it goes through.
fn crossed_pulleys<'a>(
    circles: &'a [Circle],
    path: &'a Path,
) -> impl Iterator<Item = (usize, usize)> + 'a {
    let count = circles.len();
    (0..count)
        .flat_map(move |run| (0..count).map(move |pulley| (run, pulley)))
        .filter(move |(run, pulley)| *pulley != *run && *pulley != (run + 1) % count)
        .filter(|(run, pulley)| {
            let circle = &circles[*pulley];
            distance(&path.runs[*run], circle.x, circle.y) < circle.radius - 1e-6
        })
}

/// What is wrong with the lie of the belt, with what would mend it first.
pub(crate) fn faults(layout: &Layout) -> Vec<Fault> {
    let mut found = Vec::new();
    let name = |at: usize| layout.pulleys[at % layout.pulleys.len()].name.clone();
    found.extend(overlaps(layout));
    match routed(layout) {
        Err(NoTangent { from, to }) => {
            found.extend(mends(layout));
            found.push(Fault::NoWayBetween {
                from: name(from),
                to: name(to),
            });
        }
        Ok((circles, path)) if !clean(layout) => {
            found.extend(mends(layout));
            let run = |at: usize| (name(at), name(at + 1));
            found.extend(
                crossed_runs(&path).map(|(one, other)| Fault::CrossesItself {
                    one: run(one),
                    other: run(other),
                }),
            );
            found.extend(crossed_pulleys(&circles, &path).map(|(at, pulley)| {
                Fault::CrossesPulley {
                    run: run(at),
                    pulley: name(pulley),
                }
            }));
            let turns = path.turning(&circles).abs();
            if !plain(&circles, &path) {
                let round = path
                    .wraps
                    .iter()
                    .enumerate()
                    .filter(|(_, wrap)| **wrap > MOST_WRAP);
                found.extend(round.map(|(at, wrap)| Fault::NotReached {
                    pulley: name(at),
                    wrap_deg: wrap.to_degrees(),
                }));
                found.push(Fault::NoPlainLoop { turns });
            }
        }
        Ok(_) => {}
    }
    found.extend(of_each(layout));
    found
}

/// More than this round one pulley of a loop that is not plain: it is not touched at all.
const MOST_WRAP: f64 = 1.5 * std::f64::consts::PI;

fn overlaps(layout: &Layout) -> Vec<Fault> {
    let mut found = Vec::new();
    for (at, one) in layout.pulleys.iter().enumerate() {
        for other in &layout.pulleys[at + 1..] {
            let apart = libm::hypot(one.x_mm - other.x_mm, one.y_mm - other.y_mm);
            if apart < (one.diameter_mm + other.diameter_mm) / 2.0 - 1e-9 {
                found.push(Fault::PulleysOverlap {
                    one: one.name.clone(),
                    other: other.name.clone(),
                });
            }
        }
    }
    found
}

/// What of a single pulley contradicts how the belt lies on it.
fn of_each(layout: &Layout) -> Vec<Fault> {
    use crate::layout::{Face, Side};
    let mut found = Vec::new();
    for (pulley, turns) in layout.pulleys.iter().zip(senses(layout)) {
        if let Some(must) = pulley.turns.filter(|must| !pulley.drives && *must != turns) {
            found.push(Fault::WrongSense {
                pulley: pulley.name.clone(),
                turns,
                must,
            });
        }
        let suits = matches!(
            (pulley.face, pulley.side),
            (None, _) | (Some(Face::Ribbed), Side::Ribs) | (Some(Face::Smooth), Side::Back)
        );
        if !suits {
            found.push(Fault::WrongFace {
                pulley: pulley.name.clone(),
                side: pulley.side,
            });
        }
        if let (Some(grooves), Some(ribs)) = (pulley.grooves, layout.facts.ribs)
            && grooves < ribs
            && pulley.side == Side::Ribs
        {
            found.push(Fault::TooFewGrooves {
                pulley: pulley.name.clone(),
                grooves,
                ribs,
            });
        }
    }
    found
}

/// Whether the list is right but for the sense: the pulleys are met the other way round.
pub(crate) fn other_way_round(layout: &Layout) -> bool {
    layout.pulleys.len() > 2 && !clean(layout) && clean(&reversed(layout))
}

pub(crate) fn reversed(layout: &Layout) -> Layout {
    let mut other = layout.clone();
    other.pulleys.reverse();
    other
}

/// The single changes after which the belt would lie well.
fn mends(layout: &Layout) -> Vec<Fault> {
    let mut found = Vec::new();
    if other_way_round(layout)
        && let Some(crank) = layout.pulleys.iter().find(|pulley| pulley.drives)
    {
        found.push(Fault::WrongWayRound {
            crank: crank.name.clone(),
            turns: crank.turns.unwrap_or(Sense::Clockwise),
        });
    }
    let flipped = flips(layout);
    if !flipped.is_empty() {
        found.push(Fault::WrongSide { pulleys: flipped });
    }
    if found.is_empty() {
        let moves = moves(layout);
        if !moves.is_empty() {
            found.push(Fault::WrongPulley { moves });
        }
    }
    found
}

fn flips(layout: &Layout) -> Vec<(String, crate::layout::Side)> {
    (0..layout.pulleys.len())
        .filter(|at| {
            let mut other = layout.clone();
            other.pulleys[*at].side = other.pulleys[*at].side.other();
            clean(&other)
        })
        .map(|at| (layout.pulleys[at].name.clone(), layout.pulleys[at].side))
        .collect()
}

/// Pulleys on which a belt that lies well would lie well with its other side too: geometry
/// cannot tell which is meant.
pub(crate) fn either_side(layout: &Layout) -> Vec<(String, crate::layout::Side)> {
    if clean(layout) {
        flips(layout)
    } else {
        Vec::new()
    }
}

fn moves(layout: &Layout) -> Vec<Place> {
    let count = layout.pulleys.len();
    let mut found = Vec::new();
    for from in 0..count {
        let mut rest = layout.clone();
        let pulley = rest.pulleys.remove(from);
        // Before each of the others; where it stood already is left out.
        for to in (0..count - 1).filter(|to| *to != from % (count - 1)) {
            let mut other = rest.clone();
            other.pulleys.insert(to, pulley.clone());
            if clean(&other) {
                found.push(Place {
                    pulley: pulley.name.clone(),
                    after: other.pulleys[(to + count - 1) % count].name.clone(),
                    before: other.pulleys[(to + 1) % count].name.clone(),
                });
            }
        }
    }
    found
}
