//! Freezing points that a label or a maker publishes: they win over computed ones.

use crate::error::CoolantError;
use crate::mixture::{Concentrate, Glycol, Mixture};
use crate::phrases as say;
use crate::property::{Freezing, Strength, freezing, strength_from_freeze_point};
use crate::text;
use measure::{Dimension, Grade, Line, Source, Unit, Working};

/// Freezing points by concentrate by volume, as printed, from weak to strong.
#[derive(Clone, Debug, PartialEq)]
pub struct FreezeTable {
    points: Vec<(f64, f64)>,
    source: String,
}

impl FreezeTable {
    /// A table of at least two points: concentrate by volume, 0 to 1, and °C. `source` says
    /// where it is printed.
    ///
    /// # Errors
    ///
    /// [`CoolantError::TableTooShort`]; [`CoolantError::TableNotFalling`] where a stronger
    /// mixture does not freeze lower; [`CoolantError::OutOfRange`].
    pub fn new(
        points: &[(f64, f64)],
        source: impl Into<String>,
    ) -> Result<FreezeTable, CoolantError> {
        let mut points = points.to_vec();
        for (part, freeze_c) in &points {
            crate::error::within(
                say::points_concentrate(),
                *part,
                say::of_the_whole(),
                0.0..=1.0,
                say::mend_fifty_percent(),
            )?;
            crate::error::within(
                say::points_freezing_point(),
                *freeze_c,
                "°C",
                -90.0..=5.0,
                say::mend_figure_and_unit(),
            )?;
        }
        points.sort_by(|one, other| one.0.total_cmp(&other.0));
        if points.len() < 2 {
            return Err(CoolantError::TableTooShort {
                found: points.len(),
            });
        }
        for pair in points.windows(2) {
            let &[weak, strong] = pair else { continue };
            if strong.0 <= weak.0 || strong.1 >= weak.1 {
                return Err(CoolantError::TableNotFalling {
                    weak: weak.0,
                    strong: strong.0,
                });
            }
        }
        Ok(FreezeTable {
            points,
            source: source.into(),
        })
    }

    /// Reads points as people write them: `33% -18C, 50% -37C`, or one a line.
    ///
    /// # Errors
    ///
    /// [`CoolantError::TableUnreadable`] with the point; as for [`FreezeTable::new`].
    pub fn read(text: &str, source: impl Into<String>) -> Result<FreezeTable, CoolantError> {
        let points = text
            .split([',', ';', '\n'])
            .map(str::trim)
            .filter(|point| !point.is_empty())
            .map(point)
            .collect::<Result<Vec<_>, _>>()?;
        FreezeTable::new(&points, source)
    }

    /// The points, from weak to strong.
    pub fn points(&self) -> &[(f64, f64)] {
        &self.points
    }

    /// Between two points on a straight line; `None` outside.
    fn freeze_c(&self, part: f64) -> Option<f64> {
        self.between(|point| point, part)
    }

    fn part(&self, freeze_c: f64) -> Option<f64> {
        self.between(|(part, freeze_c)| (-freeze_c, part), -freeze_c)
    }

    /// `axes` turns a point to (what is asked by, rising; what is answered).
    fn between(&self, axes: fn((f64, f64)) -> (f64, f64), asked: f64) -> Option<f64> {
        self.points.windows(2).find_map(|pair| {
            let &[one, other] = pair else { return None };
            let ((x0, y0), (x1, y1)) = (axes(one), axes(other));
            // A round trip may end a last bit outside.
            let slack = 1e-9 * (x1 - x0);
            (x0 - slack..=x1 + slack)
                .contains(&asked)
                .then(|| y0 + (y1 - y0) * ((asked - x0) / (x1 - x0)).clamp(0.0, 1.0))
        })
    }

    fn source(&self) -> Source {
        Source::new(&self.source, say::points_as_entered(), Grade::Published)
    }

    fn outside(&self) -> String {
        let (first, last) = (self.points.first(), self.points.last());
        let ends = first.zip(last).map_or((0.0, 0.0), |(a, b)| (a.0, b.0));
        say::points_reach(text::percent(ends.0), text::percent(ends.1))
    }
}

/// The freezing point by a published table where it reaches, else computed.
///
/// Formula: a straight line between the two nearest points of the table; outside them
/// [`freezing`].
///
/// Inputs: the mixture; the concentrate that the table counts; the table.
///
/// Returns the freezing point in °C; how far other models lie from it is nothing where the
/// table answers.
///
/// # Errors
///
/// As [`freezing`], where that has to answer.
///
/// # Limits
///
/// Between two points that lie far apart the true curve is bent by some kelvin.
///
/// # Source
///
/// The label or maker that the table names.
///
/// ```
/// use coolant::{Concentrate, FreezeTable, Glycol, Mixture, freezing_by_table};
/// let label = FreezeTable::read("40% -24C, 50% -37C", "label of the bottle")?;
/// let usual = Concentrate::default();
/// let mixture = Mixture::of_concentrate(Glycol::Ethylene, 0.45, usual)?;
/// assert_eq!((freezing_by_table(mixture, usual, &label)?.freeze_c * 10.0).round(), -305.0);
/// # Ok::<(), coolant::CoolantError>(())
/// ```
pub fn freezing_by_table(
    mixture: Mixture,
    concentrate: Concentrate,
    table: &FreezeTable,
) -> Result<Freezing, CoolantError> {
    let by_table = mixture
        .concentrate_fraction(concentrate)
        .and_then(|part| Some((part, table.freeze_c(part)?)));
    let Some((part, freeze_c)) = by_table else {
        let computed = freezing(mixture)?;
        return Ok(Freezing {
            working: computed.working.remark(table.outside()),
            ..computed
        });
    };
    let line = Line::new(say::freezing_as_published(), table.source())
        .formula("tf", say::straight_line())
        .input(say::concentrate_by_volume(), text::percent(part))
        .value(text::celsius(freeze_c));
    Ok(Freezing {
        freeze_c,
        within_k: 0.0,
        working: Working::new(say::freezing_point_title())
            .line(line)
            .limit(say::true_curve_is_bent()),
    })
}

/// The strength from a freezing point read on a refractometer, by a published table where it
/// reaches, else computed.
///
/// Formula, inputs, limits: as for [`freezing_by_table`], the other way round.
///
/// Returns the mixture.
///
/// # Errors
///
/// As [`strength_from_freeze_point`]; [`CoolantError::OutOfRange`].
///
/// # Source
///
/// The label or maker that the table names.
///
/// ```
/// use coolant::{Concentrate, FreezeTable, Glycol, strength_by_table};
/// let label = FreezeTable::read("40% -24C, 50% -37C", "label of the bottle")?;
/// let usual = Concentrate::default();
/// let found = strength_by_table(Glycol::Ethylene, Glycol::Ethylene, -30.5, usual, &label)?;
/// let part = found.mixture.concentrate_fraction(usual);
/// assert_eq!(part.map(|part| (part * 1000.0).round()), Some(450.0));
/// # Ok::<(), coolant::CoolantError>(())
/// ```
pub fn strength_by_table(
    coolant: Glycol,
    scale: Glycol,
    freeze_c: f64,
    concentrate: Concentrate,
    table: &FreezeTable,
) -> Result<Strength, CoolantError> {
    let by_table = (scale == coolant).then(|| table.part(freeze_c)).flatten();
    let Some(part) = by_table else {
        let computed = strength_from_freeze_point(coolant, scale, freeze_c)?;
        return Ok(Strength {
            working: computed.working.remark(table.outside()),
            ..computed
        });
    };
    let line = Line::new(say::strength_as_published(), table.source())
        .formula("x", say::straight_line())
        .input(say::reading(), text::celsius(freeze_c))
        .value(say::part_concentrate(text::percent(part)));
    Ok(Strength {
        mixture: Mixture::of_concentrate(coolant, part, concentrate)?,
        mass_band: None,
        working: Working::new(say::strength_title()).line(line),
    })
}

/// `33% -18C`, with or without a colon or an equals sign between.
fn point(text: &str) -> Result<(f64, f64), CoolantError> {
    let unreadable = || CoolantError::TableUnreadable {
        point: text.to_owned(),
    };
    let (part, freeze) = text.split_once('%').ok_or_else(unreadable)?;
    let freeze = freeze.trim_start_matches([' ', ':', '=']);
    let number = |text: &str, dimension, unit| {
        let measured = measure::read(text, dimension).ok()?.convert(unit).ok()?;
        measured.number().to_string().parse::<f64>().ok()
    };
    let part = number(&format!("{part}%"), Dimension::Fraction, Unit::Percent);
    let freeze_c = number(freeze, Dimension::Temperature, Unit::Celsius);
    let (part, freeze_c) = part.zip(freeze_c).ok_or_else(unreadable)?;
    Ok((part / 100.0, freeze_c))
}
