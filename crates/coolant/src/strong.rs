//! Freezing points of mixtures stronger than the models were fitted to.

use crate::error::CoolantError;
use crate::melinder::{self, MASS_FRACTION_MAX};
use crate::mixture::{Glycol, Mixture};
use crate::phrases as say;
use crate::property::{Freezing, tables_line, tables_within_k};
use crate::{sources, text};
use measure::{Line, Working};

/// Glycol by mass and °C: 60 % by volume of an operator manual (an equipment maker's), then the
/// lowest of a vehicle maker's bulletin, 69 % antifreeze. Between them laboratories differ.
const ETHYLENE: [(f64, f64); 3] = [(0.6259, -52.0), (0.676, -69.0), (0.68, -69.0)];
/// 60 % by volume of the same manual.
const PROPYLENE: [(f64, f64); 2] = [(0.6090, -49.0), (0.61, -49.0)];

/// A straight line between the published points, never below what is computed at 60 % by mass
/// where the first point is warmer than that.
pub(crate) fn freezing(mixture: Mixture) -> Result<Freezing, CoolantError> {
    let glycol = mixture.glycol();
    let x = mixture.mass_fraction();
    let published: &[(f64, f64)] = match glycol {
        Glycol::Ethylene => &ETHYLENE,
        Glycol::Propylene => &PROPYLENE,
    };
    let first = (
        MASS_FRACTION_MAX,
        melinder::freezing_c(glycol, MASS_FRACTION_MAX),
    );
    let points: Vec<(f64, f64)> = [first].iter().chain(published).copied().collect();
    let freeze_c = points
        .windows(2)
        .find_map(|pair| {
            let &[(x0, t0), (x1, t1)] = pair else {
                return None;
            };
            (x0..=x1)
                .contains(&x)
                .then(|| t0 + (t1 - t0) * (x - x0) / (x1 - x0))
        })
        .ok_or(CoolantError::NoFreezingPoint {
            glycol,
            mass_fraction: x,
        })?;
    let line = Line::new(say::freezing_point(), sources::strong_points())
        .formula("tf", say::straight_line_published())
        .input(say::glycol(), glycol.to_string())
        .input("x", text::percent(x))
        .value(text::celsius(freeze_c));
    Ok(Freezing {
        freeze_c,
        within_k: tables_within_k(freeze_c),
        working: Working::new(say::freezing_point_title())
            .line(line)
            .line(tables_line(freeze_c))
            .limit(say::laboratories_differ()),
    })
}
