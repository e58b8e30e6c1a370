//! Strength classes of bolts: what they bear, pulled straight.

use crate::sources;
use crate::thread::{INCH_MM, Series, Standard, Thread};
use measure::Source;
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
    #[error("`{found}` is not a strength class; write one of {known}")]
    Unknown { found: String, known: String },
    #[error(
        "`{found}` may be a nut class or an SAE grade; write `grade {found}` for SAE, or a class \
         such as 8.8"
    )]
    Ambiguous { found: String },
    #[error("{class} does not cover {thread}: it covers {covers}")]
    OutOfRange {
        class: &'static str,
        thread: String,
        covers: &'static str,
    },
}

const PSI_MPA: f64 = 0.006_894_757_293_168;

impl Class {
    /// Every class.
    pub const ALL: [Class; 17] = [
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
        if let Some(row) = iso_898_1(self, d) {
            if self == Class::C9_8 && d > 16.0 {
                return Err(out_of_range("up to M16"));
            }
            if d > 39.0 {
                return Err(out_of_range("up to M39"));
            }
            return Ok(stresses(row, sources::iso_898_1_stresses()));
        }
        let stainless = |tensile_mpa, yield_mpa| {
            if d > 24.0 {
                return Err(out_of_range("up to M24"));
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
            _ => {
                if !(0.25 - 1e-9..=1.5).contains(&(d / INCH_MM)) {
                    return Err(out_of_range("1/4 to 1-1/2 in"));
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

/// Diameter; newtons for 4.6, 4.8, 5.6, 5.8, 6.8, 8.8, 9.8, 10.9, 12.9 (0: not listed).
#[rustfmt::skip]
const PROOF_N: [(f64, [f64; 9]); 16] = [
    (3.0, [1130.0, 1560.0, 1410.0, 1910.0, 2210.0, 2920.0, 3270.0, 4180.0, 4880.0]),
    (3.5, [1530.0, 2100.0, 1900.0, 2580.0, 2980.0, 3940.0, 4410.0, 5630.0, 6580.0]),
    (4.0, [1980.0, 2720.0, 2460.0, 3340.0, 3860.0, 5100.0, 5710.0, 7290.0, 8520.0]),
    (5.0, [3200.0, 4400.0, 3980.0, 5400.0, 6250.0, 8230.0, 9230.0, 11_800.0, 13_800.0]),
    (6.0, [4520.0, 6230.0, 5630.0, 7640.0, 8840.0, 11_600.0, 13_100.0, 16_700.0, 19_500.0]),
    (7.0, [6500.0, 8960.0, 8090.0, 11_000.0, 12_700.0, 16_800.0, 18_800.0, 24_000.0, 28_000.0]),
    (8.0, [8240.0, 11_400.0, 10_200.0, 13_900.0, 16_100.0, 21_200.0, 23_800.0, 30_400.0, 35_500.0]),
    (10.0, [13_000.0, 18_000.0, 16_200.0, 22_000.0, 25_500.0, 33_700.0, 37_700.0, 48_100.0, 56_300.0]),
    (12.0, [19_000.0, 26_100.0, 23_600.0, 32_000.0, 37_100.0, 48_900.0, 54_800.0, 70_000.0, 81_800.0]),
    (14.0, [25_900.0, 35_600.0, 32_200.0, 43_700.0, 50_600.0, 66_700.0, 74_800.0, 95_500.0, 112_000.0]),
    (16.0, [35_300.0, 48_700.0, 44_000.0, 59_700.0, 69_100.0, 91_000.0, 102_000.0, 130_000.0, 152_000.0]),
    (18.0, [43_200.0, 59_500.0, 53_800.0, 73_000.0, 84_500.0, 115_000.0, 0.0, 159_000.0, 186_000.0]),
    (20.0, [55_100.0, 76_000.0, 68_600.0, 93_100.0, 108_000.0, 147_000.0, 0.0, 203_000.0, 238_000.0]),
    (22.0, [68_200.0, 93_900.0, 84_800.0, 115_000.0, 133_000.0, 182_000.0, 0.0, 252_000.0, 294_000.0]),
    (24.0, [79_400.0, 109_000.0, 98_800.0, 134_000.0, 155_000.0, 212_000.0, 0.0, 293_000.0, 342_000.0]),
    (27.0, [103_000.0, 142_000.0, 128_000.0, 174_000.0, 202_000.0, 275_000.0, 0.0, 381_000.0, 445_000.0]),
];

#[rustfmt::skip]
const ULTIMATE_N: [(f64, [f64; 9]); 16] = [
    (3.0, [2010.0, 2110.0, 2510.0, 2620.0, 3020.0, 4020.0, 4530.0, 5230.0, 6140.0]),
    (3.5, [2710.0, 2850.0, 3390.0, 3530.0, 4070.0, 5420.0, 6100.0, 7050.0, 8270.0]),
    (4.0, [3510.0, 3690.0, 4390.0, 4570.0, 5270.0, 7020.0, 7900.0, 9130.0, 10_700.0]),
    (5.0, [5680.0, 5960.0, 7100.0, 7380.0, 8520.0, 11_350.0, 12_800.0, 14_800.0, 17_300.0]),
    (6.0, [8040.0, 8440.0, 10_000.0, 10_400.0, 12_100.0, 16_100.0, 18_100.0, 20_900.0, 24_500.0]),
    (7.0, [11_600.0, 12_100.0, 14_400.0, 15_000.0, 17_300.0, 23_100.0, 26_000.0, 30_100.0, 35_300.0]),
    (8.0, [14_600.0, 15_400.0, 18_300.0, 19_000.0, 22_000.0, 29_200.0, 32_900.0, 38_100.0, 44_600.0]),
    (10.0, [23_200.0, 24_400.0, 29_000.0, 30_200.0, 34_800.0, 46_400.0, 52_200.0, 60_300.0, 70_800.0]),
    (12.0, [33_700.0, 35_400.0, 42_200.0, 43_800.0, 50_600.0, 67_400.0, 75_900.0, 87_700.0, 103_000.0]),
    (14.0, [46_000.0, 48_300.0, 57_500.0, 59_800.0, 69_000.0, 92_000.0, 104_000.0, 120_000.0, 140_000.0]),
    (16.0, [62_800.0, 65_900.0, 78_500.0, 81_600.0, 94_000.0, 125_000.0, 141_000.0, 163_000.0, 192_000.0]),
    (18.0, [76_800.0, 80_600.0, 96_000.0, 99_800.0, 115_000.0, 159_000.0, 0.0, 200_000.0, 234_000.0]),
    (20.0, [98_000.0, 103_000.0, 122_000.0, 127_000.0, 147_000.0, 203_000.0, 0.0, 255_000.0, 299_000.0]),
    (22.0, [121_000.0, 127_000.0, 152_000.0, 158_000.0, 182_000.0, 252_000.0, 0.0, 315_000.0, 370_000.0]),
    (24.0, [141_000.0, 148_000.0, 176_000.0, 184_000.0, 212_000.0, 293_000.0, 0.0, 367_000.0, 431_000.0]),
    (27.0, [184_000.0, 193_000.0, 230_000.0, 239_000.0, 275_000.0, 381_000.0, 0.0, 477_000.0, 560_000.0]),
];
