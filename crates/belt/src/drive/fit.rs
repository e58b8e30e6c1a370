//! How a tensioner and a belt come together.

use super::Stand;
use crate::fault::Fault;
use crate::layout::{Layout, TensionerKind, Travel};
use crate::path::Path;
use crate::phrases as say;
use crate::routing::routed;
use crate::travel::Moving;

/// How a tensioner and a belt come together.
#[derive(Clone, Debug, Default)]
pub(crate) struct Fit {
    /// Of the pulley that moves.
    pub at: Option<usize>,
    pub window: Option<(f64, f64)>,
    pub stand: Option<Stand>,
    pub stretch: Option<f64>,
    /// How fast the length grows with the tensioner's travel.
    pub growth: Option<f64>,
    pub faults: Vec<Fault>,
    pub notes: Vec<String>,
}

/// The layout with its tensioner where the belt puts it, and how it fits.
pub(super) fn fitted(layout: &Layout, length_mm: Option<f64>) -> (Layout, Fit) {
    match Moving::of(layout) {
        Some(moving) => moved(layout, &moving, length_mm),
        None => (layout.clone(), unmoved(layout, length_mm)),
    }
}

/// Nothing moves: the belt fits, or it is stretched on, or it does not fit.
fn unmoved(layout: &Layout, length_mm: Option<f64>) -> Fit {
    /// A belt and a drive measured by hand agree no better.
    const AS_MEASURED_MM: f64 = 1.0;
    let mut fit = Fit::default();
    let Some(length) = length_mm else {
        return fit;
    };
    let Ok((_, path)) = routed(layout) else {
        return fit;
    };
    let over = path.length - length;
    let stretches = layout
        .tensioner
        .as_ref()
        .is_some_and(|tensioner| tensioner.kind == TensionerKind::StretchBelt);
    fit.stretch = Some(over / length);
    if stretches && over > 0.0 {
        fit.notes.push(say::stretched_on_by(format_args!(
            "{:.1}",
            100.0 * over / length
        )));
    } else if stretches || over.abs() > AS_MEASURED_MM {
        fit.faults.push(Fault::DoesNotFit {
            too_long: over < 0.0,
            by_mm: over.abs(),
        });
    }
    fit
}

fn moved(layout: &Layout, moving: &Moving, length_mm: Option<f64>) -> (Layout, Fit) {
    let mut fit = Fit {
        at: Some(moving.at),
        ..Fit::default()
    };
    let (low, high) = moving.stops();
    let mut place = moving.drawn();
    let window = moving.window();
    fit.window = window.map(|(least, most, _)| (least, most));
    if window.is_some_and(|(_, _, whole)| !whole) {
        fit.notes.push(say::would_leave_a_pulley().to_owned());
    }
    match (length_mm, fit.window) {
        (Some(length), Some((least, most))) if (least..=most).contains(&length) => {
            place = moving.place_for(length).unwrap_or(place);
        }
        (Some(length), Some((least, most))) => {
            let too_long = length > most;
            let by_mm = if too_long {
                length - most
            } else {
                least - length
            };
            fit.faults.push(Fault::ArmAtStop { too_long, by_mm });
            place = if too_long == longer_at(moving, high, low) {
                high
            } else {
                low
            };
        }
        _ if !(low - 1e-6..=high + 1e-6).contains(&place) => {
            fit.faults.push(Fault::DrawnOutsideStops {
                drawn_deg: place,
                min_deg: low,
                max_deg: high,
            });
        }
        _ => {}
    }
    // At a stop the belt may lie on nothing any more: then it is shown as drawn.
    if place != moving.drawn() && moving.length(place).is_none() {
        place = moving.drawn();
    }
    // As drawn it stays as drawn, to the last digit.
    let placed = if place == moving.drawn() {
        layout.clone()
    } else {
        moving.placed(place)
    };
    let path = routed(&placed).ok().map(|(_, path)| path);
    fit.growth = path.as_ref().map(|path| moving.growth(path, place));
    fit.notes.extend(near_stop(place, low, high, &fit));
    fit.stand = Some(stand(layout, moving, place, path.as_ref(), &fit));
    (placed, fit)
}

fn longer_at(moving: &Moving, one: f64, other: f64) -> bool {
    let length = |place| moving.length(place).unwrap_or(0.0);
    length(one) > length(other)
}

/// A word where little of the travel is left.
fn near_stop(place: f64, low: f64, high: f64, fit: &Fit) -> Option<String> {
    let part = (place - low) / (high - low);
    let little = !(0.05..=0.95).contains(&part) && fit.faults.is_empty();
    little.then(|| say::little_travel_left().to_owned())
}

fn stand(layout: &Layout, moving: &Moving, place: f64, path: Option<&Path>, fit: &Fit) -> Stand {
    let about = matches!(moving.travel, Travel::Arc { .. });
    let tensioner = layout.tensioner.as_ref();
    let growth = fit.growth.map(f64::abs).filter(|growth| *growth > 1e-9);
    let torque_nmm =
        tensioner.and_then(|tensioner| match (tensioner.torque_nm, tensioner.force_n) {
            (Some(torque), _) if about => Some(torque * 1000.0),
            (_, Some(force)) => Some(force * moving.arm_mm),
            _ => None,
        });
    let spring = torque_nmm
        .zip(growth)
        .map(|(torque, growth)| torque / growth);
    Stand {
        arm_deg: about.then_some(place),
        along_mm: (!about).then_some(place),
        tension_n: layout.facts.tension_n.or(spring),
        room_mm: path
            .zip(fit.window)
            .map(|(path, (least, _))| (path.length - least).max(0.0)),
    }
}
