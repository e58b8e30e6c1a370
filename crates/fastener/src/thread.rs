//! A screw thread and its sizes.

use crate::figures::{shown, trimmed};
use crate::phrases::reading as say;
use crate::pipe::Pipe;
use crate::{series, sources};
use measure::{Line, Working};
use std::f64::consts::PI;
use thiserror::Error;

/// Millimetres in an inch, exactly.
pub const INCH_MM: f64 = 25.4;

/// A straight 60 degree screw thread.
#[derive(Clone, Debug, PartialEq)]
pub struct Thread {
    standard: Standard,
    series: Series,
    name: String,
    diameter_mm: f64,
    pitch_mm: f64,
    left_hand: bool,
}

/// Whose thread it is.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Standard {
    /// ISO metric.
    Metric,
    /// Unified inch.
    Unified,
}

/// Where a thread stands among the listed ones.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Series {
    /// Metric coarse, or UNC.
    Coarse,
    /// Metric fine, or UNF.
    Fine,
    /// Physically sensible, but in neither list: look twice before ordering taps.
    NotPreferred,
}

/// The sizes of a thread. `major` is the nominal diameter.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Geometry {
    pub major_mm: f64,
    pub pitch_mm: f64,
    pub pitch_diameter_mm: f64,
    /// Of the hole.
    pub minor_diameter_mm: f64,
    /// Of the bolt, at the bottom of its rounded root.
    pub root_diameter_mm: f64,
    pub stress_area_mm2: f64,
    pub lead_angle_deg: f64,
}

/// Why a diameter and a pitch make no thread.
#[derive(Clone, Debug, PartialEq, Error)]
pub enum ThreadTrouble {
    #[error("{}", say::diameter_outside(.diameter_mm))]
    Diameter { diameter_mm: f64 },
    #[error("{}", say::pitch_makes_no_screw(.pitch_mm, .diameter_mm, .least_mm, .most_mm))]
    Pitch {
        diameter_mm: f64,
        pitch_mm: f64,
        least_mm: f64,
        most_mm: f64,
    },
}

impl Thread {
    /// A metric thread.
    ///
    /// Inputs: `diameter_mm` 1 to 150, `pitch_mm` from 1.5 % of the diameter (at
    /// least 0.2) to a quarter of it (at most 8).
    ///
    /// # Errors
    ///
    /// [`ThreadTrouble`] outside those.
    ///
    /// ```
    /// use fastener::{Series, Thread};
    /// assert_eq!(Thread::metric(8.0, 1.25)?.series(), Series::Coarse);
    /// assert_eq!(Thread::metric(8.0, 1.0)?.name(), "M8x1");
    /// assert_eq!(Thread::metric(8.0, 1.1)?.series(), Series::NotPreferred);
    /// assert!(Thread::metric(8.0, 12.5).is_err());
    /// # Ok::<(), fastener::ThreadTrouble>(())
    /// ```
    pub fn metric(diameter_mm: f64, pitch_mm: f64) -> Result<Thread, ThreadTrouble> {
        check(diameter_mm, pitch_mm)?;
        Ok(Thread {
            standard: Standard::Metric,
            series: series::metric(diameter_mm, pitch_mm)
                .map_or(Series::NotPreferred, |listed| listed.series),
            name: format!("M{}x{}", trimmed(diameter_mm, 3), trimmed(pitch_mm, 3)),
            diameter_mm,
            pitch_mm,
            left_hand: false,
        })
    }

    /// A unified thread; `size` is how its diameter is written (`5/16`, `#10`).
    ///
    /// Inputs: `diameter_in` in inches, `threads_per_inch` a positive number, with the
    /// same bounds as [`Thread::metric`].
    ///
    /// # Errors
    ///
    /// [`ThreadTrouble`] outside those.
    pub fn unified(
        size: &str,
        diameter_in: f64,
        threads_per_inch: f64,
    ) -> Result<Thread, ThreadTrouble> {
        let (diameter_mm, pitch_mm) = (diameter_in * INCH_MM, INCH_MM / threads_per_inch);
        check(diameter_mm, pitch_mm)?;
        let listed = series::unified(diameter_in, threads_per_inch);
        let suffix = match listed.map(|listed| listed.series) {
            Some(Series::Coarse) => " UNC",
            Some(Series::Fine) => " UNF",
            _ => "",
        };
        Ok(Thread {
            standard: Standard::Unified,
            series: listed.map_or(Series::NotPreferred, |listed| listed.series),
            name: format!("{size}-{}{suffix}", trimmed(threads_per_inch, 2)),
            diameter_mm,
            pitch_mm,
            left_hand: false,
        })
    }

    /// A pipe thread taken as a straight one: for its wall and its drawing, never for a clamp.
    ///
    /// # Errors
    ///
    /// [`ThreadTrouble`] where its sizes are those of no thread.
    pub fn of_pipe(pipe: &Pipe) -> Result<Thread, ThreadTrouble> {
        let pitch_mm = INCH_MM / pipe.threads_per_inch;
        check(pipe.outside_mm, pitch_mm)?;
        Ok(Thread {
            standard: Standard::Unified,
            series: Series::NotPreferred,
            name: pipe.name(),
            diameter_mm: pipe.outside_mm,
            pitch_mm,
            left_hand: false,
        })
    }

    /// The same thread, left-handed.
    #[must_use]
    pub fn left_handed(mut self) -> Thread {
        if !self.left_hand {
            self.left_hand = true;
            self.name.push_str(" LH");
        }
        self
    }

    /// As it is written: `M8x1.25`, `5/16-18 UNC`.
    pub fn name(&self) -> &str {
        &self.name
    }

    /// Metric or unified.
    pub fn standard(&self) -> Standard {
        self.standard
    }

    /// Coarse, fine or not preferred.
    pub fn series(&self) -> Series {
        self.series
    }

    /// Whether it tightens anticlockwise.
    pub fn is_left_hand(&self) -> bool {
        self.left_hand
    }

    /// Nominal diameter.
    pub fn diameter_mm(&self) -> f64 {
        self.diameter_mm
    }

    /// Distance from thread to thread.
    pub fn pitch_mm(&self) -> f64 {
        self.pitch_mm
    }

    /// The sizes of the thread.
    ///
    /// Formula: d2 = d - 0.75 H, D1 = d - 1.25 H, d3 = D1 - H/6 with H = P √3/2;
    /// stress area π/4 ((d2 + d3)/2)² metric, π/4 (d - 0.9743 P)² unified; lead angle
    /// atan(P / (π d2)).
    ///
    /// Returns millimetres, square millimetres and degrees; basic sizes, without
    /// tolerance.
    ///
    /// # Limits
    ///
    /// Unified roots are those of the rounded UNR form. Older tables of the flat UN
    /// form print a smaller external minor diameter; the two do not mix.
    ///
    /// # Source
    ///
    /// ISO 68-1, ISO 724, ISO 898-1 (stress area); ASME B1.1.
    ///
    /// ```
    /// let thread = fastener::Thread::metric(8.0, 1.25)?;
    /// assert_eq!(format!("{:.1}", thread.geometry().stress_area_mm2), "36.6");
    /// # Ok::<(), fastener::ThreadTrouble>(())
    /// ```
    pub fn geometry(&self) -> Geometry {
        let (d, p) = (self.diameter_mm, self.pitch_mm);
        let height = p * 3.0_f64.sqrt() / 2.0;
        let pitch_diameter = d - 0.75 * height;
        let minor = d - 1.25 * height;
        let root = minor - height / 6.0;
        let stress_diameter = match self.standard {
            Standard::Metric => f64::midpoint(pitch_diameter, root),
            Standard::Unified => d - 0.9743 * p,
        };
        Geometry {
            major_mm: d,
            pitch_mm: p,
            pitch_diameter_mm: pitch_diameter,
            minor_diameter_mm: minor,
            root_diameter_mm: root,
            stress_area_mm2: PI / 4.0 * stress_diameter * stress_diameter,
            lead_angle_deg: libm::atan(p / (PI * pitch_diameter)).to_degrees(),
        }
    }

    /// How the sizes were found.
    pub fn working(&self) -> Working {
        let sizes = self.geometry();
        let metric = self.standard == Standard::Metric;
        let profile = || {
            if metric {
                sources::basic_profile()
            } else {
                sources::unified_profile()
            }
        };
        let line = |what: &str, symbol: &str, formula: &str, value: f64| {
            Line::new(what, profile())
                .formula(symbol, formula)
                .input("d", shown(self.diameter_mm, 4, "mm"))
                .input("P", shown(self.pitch_mm, 5, "mm"))
                .value(shown(value, 4, "mm"))
        };
        let area = if metric {
            Line::new(say::stress_area(), sources::stress_area_metric())
                .formula("As", "π/4·((d2 + d3)/2)²")
        } else {
            Line::new(say::stress_area(), sources::unified_profile())
                .formula("At", "π/4·(d − 0.9743·P)²")
        };
        Working::new(say::sizes_of(&self.name))
            .line(line(
                say::pitch_diameter(),
                "d2",
                "d − 0.649519·P",
                sizes.pitch_diameter_mm,
            ))
            .line(line(
                say::minor_diameter_of_the_hole(),
                "D1",
                "d − 1.082532·P",
                sizes.minor_diameter_mm,
            ))
            .line(line(
                say::root_diameter_of_the_bolt(),
                "d3",
                "d − 1.226869·P",
                sizes.root_diameter_mm,
            ))
            .line(area.value(shown(sizes.stress_area_mm2, 3, "mm²")))
            .line(
                Line::new(say::lead_angle(), profile())
                    .formula("φ", "atan(P/(π·d2))")
                    .value(shown(sizes.lead_angle_deg, 3, "°")),
            )
            .limit(say::basic_sizes())
    }
}

/// Bounds that hold every thread of ISO 261 and ASME B1.1 and little else.
fn check(diameter_mm: f64, pitch_mm: f64) -> Result<(), ThreadTrouble> {
    if !(1.0..=150.0).contains(&diameter_mm) {
        return Err(ThreadTrouble::Diameter { diameter_mm });
    }
    let least_mm = (0.015 * diameter_mm).max(0.2);
    let most_mm = (0.25 * diameter_mm).min(8.0);
    if !(least_mm..=most_mm).contains(&pitch_mm) {
        return Err(ThreadTrouble::Pitch {
            diameter_mm,
            pitch_mm,
            least_mm,
            most_mm,
        });
    }
    Ok(())
}
