//! Pipe threads: they seal or locate; they do not clamp.

use crate::drill::{Drill, named};
use crate::phrases::reading as say;

/// A pipe thread.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Pipe {
    pub family: Family,
    /// The nominal size, in inches, which is no diameter of the thread.
    pub size: &'static str,
    pub threads_per_inch: f64,
    /// Outside diameter at the large end of the basic thread.
    pub outside_mm: f64,
    /// Turns by hand, then turns by wrench, where a table gives them.
    pub turns: Option<Turns>,
}

/// How far a taper thread is made up.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Turns {
    pub by_hand: f64,
    pub by_wrench: f64,
}

/// Which pipe thread.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Family {
    /// American taper, 60 degrees (ASME B1.20.1).
    Npt,
    /// British taper, 55 degrees (ISO 7-1, R and Rc).
    BspTaper,
    /// British parallel, 55 degrees (ISO 228-1, G): sealed by a washer or ring.
    BspParallel,
}

impl Pipe {
    /// From crest to crest.
    pub fn pitch_mm(&self) -> f64 {
        crate::thread::INCH_MM / self.threads_per_inch
    }

    /// The usual drill before tapping, without a reamer, as the trade lists it.
    pub fn tap_drill(&self) -> Option<Drill> {
        let name = match self.family {
            Family::Npt => NPT_DRILLS.iter().find(|row| row.0 == self.size)?.1,
            Family::BspTaper => BSP_DRILLS.iter().find(|row| row.0 == self.size)?.1,
            Family::BspParallel => BSP_DRILLS.iter().find(|row| row.0 == self.size)?.2,
        };
        named(name)
    }

    /// As it is written.
    pub fn name(&self) -> String {
        match self.family {
            Family::Npt => format!("{}-{} NPT", self.size, self.threads_per_inch),
            Family::BspTaper => format!("R {}", self.size),
            Family::BspParallel => format!("G {}", self.size),
        }
    }

    /// What it is and how it is tightened.
    pub fn what_it_is(&self) -> String {
        match (self.family, self.turns) {
            (Family::BspParallel, _) => say::parallel_pipe_thread().to_owned(),
            (_, Some(turns)) => say::taper_pipe_thread_with_turns(turns.by_hand, turns.by_wrench),
            (_, None) => say::taper_pipe_thread().to_owned(),
        }
    }
}

/// The pipe thread of a family and size (`1/8`), if it is listed.
///
/// # Source
///
/// Turns: table of American standard taper pipe threads, Avantor/Masterflex. Threads per
/// inch and diameters: ASME B1.20.1, ISO 7-1, ISO 228-1.
///
/// ```
/// use fastener::pipe::{Family, pipe};
/// assert_eq!(pipe(Family::Npt, "1/8").unwrap().threads_per_inch, 27.0);
/// assert!(pipe(Family::Npt, "5/16").is_none());
/// ```
pub fn pipe(family: Family, size: &str) -> Option<Pipe> {
    match family {
        Family::Npt => NPT.iter().find(|row| row.0 == size).map(
            |&(size, threads_per_inch, outside_in, by_hand, by_wrench)| Pipe {
                family,
                size,
                threads_per_inch,
                outside_mm: outside_in * crate::thread::INCH_MM,
                turns: Some(Turns { by_hand, by_wrench }),
            },
        ),
        Family::BspTaper | Family::BspParallel => {
            BSP.iter()
                .find(|row| row.0 == size)
                .map(|&(size, threads_per_inch, outside_mm)| Pipe {
                    family,
                    size,
                    threads_per_inch,
                    outside_mm,
                    turns: None,
                })
        }
    }
}

/// The listed sizes of a family, for a message.
pub(crate) fn sizes(family: Family) -> String {
    let sizes: Vec<&str> = match family {
        Family::Npt => NPT.iter().map(|row| row.0).collect(),
        Family::BspTaper | Family::BspParallel => BSP.iter().map(|row| row.0).collect(),
    };
    sizes.join(", ")
}

/// Size, threads per inch, outside diameter of the pipe in inches, turns by hand and by wrench.
const NPT: [(&str, f64, f64, f64, f64); 9] = [
    ("1/16", 27.0, 0.3125, 4.5, 2.5),
    ("1/8", 27.0, 0.405, 4.5, 2.5),
    ("1/4", 18.0, 0.54, 4.0, 3.0),
    ("3/8", 18.0, 0.675, 4.5, 3.0),
    ("1/2", 14.0, 0.84, 4.5, 3.0),
    ("3/4", 14.0, 1.05, 4.5, 3.0),
    ("1", 11.5, 1.315, 4.5, 3.25),
    ("1-1/4", 11.5, 1.66, 4.5, 3.25),
    ("1-1/2", 11.5, 1.9, 4.5, 3.25),
];

/// Size, threads per inch, major diameter in millimetres.
const BSP: [(&str, f64, f64); 10] = [
    ("1/16", 28.0, 7.723),
    ("1/8", 28.0, 9.728),
    ("1/4", 19.0, 13.157),
    ("3/8", 19.0, 16.662),
    ("1/2", 14.0, 20.955),
    ("5/8", 14.0, 22.911),
    ("3/4", 14.0, 26.441),
    ("1", 11.0, 33.249),
    ("1-1/4", 11.0, 41.91),
    ("1-1/2", 11.0, 47.803),
];

/// Size and drill of the usual chart (threads of ASME B1.20.1, tapped without reaming).
const NPT_DRILLS: [(&str, &str); 9] = [
    ("1/16", "C"),
    ("1/8", "R"),
    ("1/4", "7/16"),
    ("3/8", "37/64"),
    ("1/2", "45/64"),
    ("3/4", "59/64"),
    ("1", "1-5/32"),
    ("1-1/4", "1-1/2"),
    ("1-1/2", "1-47/64"),
];

/// Size, drill for the taper thread and for the parallel one (ISO 7-1, ISO 228-1).
const BSP_DRILLS: [(&str, &str, &str); 10] = [
    ("1/16", "6.6 mm", "6.8 mm"),
    ("1/8", "8.4 mm", "8.8 mm"),
    ("1/4", "11.2 mm", "11.8 mm"),
    ("3/8", "14.75 mm", "15.25 mm"),
    ("1/2", "18.25 mm", "19 mm"),
    ("5/8", "", "21 mm"),
    ("3/4", "23.75 mm", "24.5 mm"),
    ("1", "30 mm", "30.75 mm"),
    ("1-1/4", "38.5 mm", "39.5 mm"),
    ("1-1/2", "44.5 mm", "45 mm"),
];
