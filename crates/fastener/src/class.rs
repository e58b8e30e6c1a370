//! Strength classes of bolts: what they bear, pulled straight.

use crate::figures::shown;
use crate::loads::{PROOF_N, ULTIMATE_N};
use crate::phrases::torque as say;
use crate::sources;
use crate::thread::{INCH_MM, Series, Standard, Thread};
use measure::{Line, Source, Working};
use thiserror::Error;

/// A strength class.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Class {
    C4_6,
    C4_8,
    C5_6,
    C5_8,
    C6_8,
    C8_8,
    C9_8,
    C10_9,
    C12_9,
    A2_70,
    A2_80,
    A4_70,
    A4_80,
    A2_50,
    A4_50,
    A4_100,
    Sae1,
    Sae2,
    Sae5,
    Sae8,
}

/// Least stresses of a class at one size, in MPa.
#[derive(Clone, Debug, PartialEq)]
pub struct Stresses {
    pub tensile_mpa: f64,
    pub yield_mpa: f64,
    /// Nothing where the standard states no proof load (stainless).
    pub proof_mpa: Option<f64>,
    pub source: Source,
}

/// What a bolt of a class bears, in newtons.
#[derive(Clone, Debug, PartialEq)]
pub struct Loads {
    /// Nothing where the standard states none (stainless).
    pub proof_n: Option<f64>,
    pub yield_n: f64,
    pub breaking_n: f64,
    pub source: Source,
}

/// Why a class does not go with a thread, or cannot be read.
#[derive(Clone, Debug, PartialEq, Error)]
pub enum ClassTrouble {
    #[error("{}", say::no_strength_class(.found, .known))]
    Unknown { found: String, known: String },
    #[error("{}", say::nut_class_or_grade(.found))]
    Ambiguous { found: String },
    #[error("{}", say::names_the_steel(.found))]
    WhichStainless { found: String },
    #[error("{}", say::class_does_not_cover(.class, .thread, .covers))]
    OutOfRange {
        class: &'static str,
        thread: String,
        covers: &'static str,
    },
}

const PSI_MPA: f64 = 0.006_894_757_293_168;

impl Class {
    /// Every class.
    pub const ALL: [Class; 20] = [
        Class::C4_6,
        Class::C4_8,
        Class::C5_6,
        Class::C5_8,
        Class::C6_8,
        Class::C8_8,
        Class::C9_8,
        Class::C10_9,
        Class::C12_9,
        Class::A2_70,
        Class::A2_80,
        Class::A4_70,
        Class::A4_80,
        Class::A2_50,
        Class::A4_50,
        Class::A4_100,
        Class::Sae1,
        Class::Sae2,
        Class::Sae5,
        Class::Sae8,
    ];

    /// As it is marked on the head, or written.
    pub fn name(self) -> &'static str {
        match self {
            Class::C4_6 => "4.6",
            Class::C4_8 => "4.8",
            Class::C5_6 => "5.6",
            Class::C5_8 => "5.8",
            Class::C6_8 => "6.8",
            Class::C8_8 => "8.8",
            Class::C9_8 => "9.8",
            Class::C10_9 => "10.9",
            Class::C12_9 => "12.9",
            Class::A2_70 => "A2-70",
            Class::A2_80 => "A2-80",
            Class::A4_70 => "A4-70",
            Class::A4_80 => "A4-80",
            Class::A2_50 => "A2-50",
            Class::A4_50 => "A4-50",
            Class::A4_100 => "A4-100",
            Class::Sae1 => "SAE grade 1",
            Class::Sae2 => "SAE grade 2",
            Class::Sae5 => "SAE grade 5",
            Class::Sae8 => "SAE grade 8",
        }
    }

    /// Reads a class as people write it: `8.8`, `10,9`, `A2-70`, `a4 80`, `grade 5`, `SAE 8`.
    ///
    /// # Errors
    ///
    /// [`ClassTrouble::Unknown`], or [`ClassTrouble::Ambiguous`] for a lone figure.
    ///
    /// ```
    /// use fastener::Class;
    /// assert_eq!(Class::read("Gr. 5")?, Class::Sae5);
    /// assert_eq!(Class::read("a2 70")?, Class::A2_70);
    /// assert!(Class::read("8").is_err());
    /// # Ok::<(), fastener::class::ClassTrouble>(())
    /// ```
    pub fn read(text: &str) -> Result<Class, ClassTrouble> {
        let plain: String = text
            .to_lowercase()
            .replace(',', ".")
            .replace("class", "")
            .chars()
            .filter(|c| !c.is_whitespace() && *c != '-')
            .collect();
        let grade = ["saegrade", "saegr", "sae", "grade", "gr.", "gr"]
            .iter()
            .find_map(|prefix| plain.strip_prefix(prefix));
        if let Some(grade) = grade {
            let found = match grade {
                "1" => Some(Class::Sae1),
                "2" => Some(Class::Sae2),
                "5" => Some(Class::Sae5),
                "8" => Some(Class::Sae8),
                _ => None,
            };
            return found.ok_or_else(|| unknown(text));
        }
        if matches!(plain.as_str(), "a2" | "a4") {
            return Err(ClassTrouble::WhichStainless {
                found: plain.to_uppercase(),
            });
        }
        if plain.len() == 1 && plain.chars().all(|c| c.is_ascii_digit()) {
            return Err(ClassTrouble::Ambiguous { found: plain });
        }
        Class::ALL
            .into_iter()
            .find(|class| class.name().to_lowercase().replace('-', "") == plain)
            .ok_or_else(|| unknown(text))
    }

    /// Least stresses of the class for a thread.
    ///
    /// # Errors
    ///
    /// [`ClassTrouble::OutOfRange`] where the standard does not cover the size.
    ///
    /// # Source
    ///
    /// ISO 898-1, ISO 3506-1, SAE J429 table 1.
    pub fn stresses(self, thread: &Thread) -> Result<Stresses, ClassTrouble> {
        let out_of_range = |covers: &'static str| ClassTrouble::OutOfRange {
            class: self.name(),
            thread: thread.name().to_owned(),
            covers,
        };
        let d = thread.diameter_mm();
        let metric = thread.standard() == Standard::Metric;
        if let Some(row) = iso_898_1(self, d) {
            if !metric {
                return Err(out_of_range(say::metric_threads_only()));
            }
            if self == Class::C9_8 && d > 16.0 {
                return Err(out_of_range(say::up_to_m16()));
            }
            if d > 39.0 {
                return Err(out_of_range(say::up_to_m39()));
            }
            return Ok(stresses(row, sources::iso_898_1_stresses()));
        }
        let stainless = |tensile_mpa, yield_mpa| {
            // The soft class goes further: it is not cold-worked.
            let most_mm = if tensile_mpa < 600.0 { 39.0 } else { 24.0 };
            if d > most_mm {
                return Err(out_of_range(if tensile_mpa < 600.0 {
                    say::up_to_m39()
                } else {
                    say::up_to_m24()
                }));
            }
            Ok(Stresses {
                tensile_mpa,
                yield_mpa,
                proof_mpa: None,
                source: sources::iso_3506(),
            })
        };
        match self {
            Class::A2_70 | Class::A4_70 => stainless(700.0, 450.0),
            Class::A2_80 | Class::A4_80 => stainless(800.0, 600.0),
            Class::A2_50 | Class::A4_50 => stainless(500.0, 210.0),
            Class::A4_100 => stainless(1000.0, 800.0),
            _ => {
                if metric || !(0.25 - 1e-9..=1.5).contains(&(d / INCH_MM)) {
                    return Err(out_of_range(say::inch_threads_of()));
                }
                let (proof, yields, tensile) = sae(self, d / INCH_MM);
                let row = (tensile * PSI_MPA, yields * PSI_MPA, proof * PSI_MPA);
                Ok(stresses(row, sources::sae_j429()))
            }
        }
    }

    /// Proof, yield and breaking load of a bolt, pulled straight.
    ///
    /// Formula: stress times stress area; for metric coarse threads the loads that ISO 898-1
    /// prints, which override it.
    ///
    /// Returns newtons.
    ///
    /// # Errors
    ///
    /// [`ClassTrouble::OutOfRange`] where the standard does not cover the size.
    ///
    /// # Limits
    ///
    /// New bolt, whole thread, no bending, room temperature. Nothing here tells what a
    /// rusted, necked or once-yielded bolt bears.
    ///
    /// # Source
    ///
    /// ISO 898-1, tables of loads; ISO 3506-1; SAE J429.
    ///
    /// ```
    /// use fastener::{Class, Thread};
    /// let loads = Class::C8_8.loads(&Thread::metric(8.0, 1.25)?)?;
    /// assert_eq!((loads.proof_n, loads.breaking_n), (Some(21_200.0), 29_200.0));
    /// # Ok::<(), Box<dyn std::error::Error>>(())
    /// ```
    pub fn loads(self, thread: &Thread) -> Result<Loads, ClassTrouble> {
        let stresses = self.stresses(thread)?;
        let area = thread.geometry().stress_area_mm2;
        let yield_n = stresses.yield_mpa * area;
        Ok(match self.printed_loads(thread) {
            Some((proof_n, breaking_n)) => Loads {
                proof_n: Some(proof_n),
                yield_n,
                breaking_n,
                source: sources::iso_898_1(),
            },
            None => Loads {
                proof_n: stresses.proof_mpa.map(|proof| proof * area),
                yield_n,
                breaking_n: stresses.tensile_mpa * area,
                source: stresses.source,
            },
        })
    }

    /// How the loads were found.
    ///
    /// # Errors
    ///
    /// As [`Class::loads`].
    pub fn working(self, thread: &Thread) -> Result<Working, ClassTrouble> {
        let (stresses, loads) = (self.stresses(thread)?, self.loads(thread)?);
        let area = thread.geometry().stress_area_mm2;
        let line = |what: &str, symbol: &str, stress_mpa: Option<f64>, source: &Source| {
            let line = Line::new(what, source.clone())
                .formula(symbol, say::stress_by_area())
                .input("As", shown(area, 2, "mm²"));
            match stress_mpa {
                Some(stress_mpa) => line.input(say::stress(), shown(stress_mpa, 0, "MPa")),
                None => line,
            }
        };
        let mut proof = line(say::proof_load(), "Fp", stresses.proof_mpa, &loads.source);
        if let Some(proof_n) = loads.proof_n {
            proof = proof.value(shown(proof_n, 0, "N"));
        }
        Ok(Working::new(say::loads_of(thread.name(), self.name()))
            .line(proof)
            .line(
                line(
                    say::yield_load(),
                    "Fy",
                    Some(stresses.yield_mpa),
                    &stresses.source,
                )
                .value(shown(loads.yield_n, 0, "N")),
            )
            .line(
                line(
                    say::breaking_load(),
                    "Fm",
                    Some(stresses.tensile_mpa),
                    &loads.source,
                )
                .value(shown(loads.breaking_n, 0, "N")),
            )
            .limit(say::new_bolt_pulled_straight()))
    }

    fn printed_loads(self, thread: &Thread) -> Option<(f64, f64)> {
        if thread.standard() != Standard::Metric || thread.series() != Series::Coarse {
            return None;
        }
        let column = Class::ALL[..9].iter().position(|&class| class == self)?;
        let of = |table: &[(f64, [f64; 9])]| {
            let row = table
                .iter()
                .find(|row| (row.0 - thread.diameter_mm()).abs() < 1e-6)?;
            Some(row.1[column]).filter(|&load| load > 0.0)
        };
        Some((of(&PROOF_N)?, of(&ULTIMATE_N)?))
    }
}

/// The strongest class that a thread comes in.
pub fn strongest(thread: &Thread) -> Option<Class> {
    let class = match thread.standard() {
        Standard::Metric => Class::C12_9,
        Standard::Unified => Class::Sae8,
    };
    class.stresses(thread).ok().map(|_| class)
}

fn unknown(text: &str) -> ClassTrouble {
    ClassTrouble::Unknown {
        found: text.trim().chars().take(40).collect(),
        known: Class::ALL.map(Class::name).join(", "),
    }
}

fn stresses(row: (f64, f64, f64), source: Source) -> Stresses {
    Stresses {
        tensile_mpa: row.0,
        yield_mpa: row.1,
        proof_mpa: Some(row.2),
        source,
    }
}

/// Tensile, yield and proof stress in MPa.
fn iso_898_1(class: Class, diameter_mm: f64) -> Option<(f64, f64, f64)> {
    Some(match class {
        Class::C4_6 => (400.0, 240.0, 225.0),
        Class::C4_8 => (420.0, 340.0, 310.0),
        Class::C5_6 => (500.0, 300.0, 280.0),
        Class::C5_8 => (520.0, 420.0, 380.0),
        Class::C6_8 => (600.0, 480.0, 440.0),
        Class::C8_8 if diameter_mm <= 16.0 => (800.0, 640.0, 580.0),
        Class::C8_8 => (830.0, 660.0, 600.0),
        Class::C9_8 => (900.0, 720.0, 650.0),
        Class::C10_9 => (1040.0, 940.0, 830.0),
        Class::C12_9 => (1220.0, 1100.0, 970.0),
        _ => return None,
    })
}

/// Proof, yield and tensile stress in psi.
fn sae(class: Class, diameter_in: f64) -> (f64, f64, f64) {
    match class {
        Class::Sae2 if diameter_in <= 0.75 => (55_000.0, 57_000.0, 74_000.0),
        Class::Sae5 if diameter_in <= 1.0 => (85_000.0, 92_000.0, 120_000.0),
        Class::Sae5 => (74_000.0, 81_000.0, 105_000.0),
        Class::Sae8 => (120_000.0, 130_000.0, 150_000.0),
        _ => (33_000.0, 36_000.0, 60_000.0),
    }
}
