//! Reading threads as people write them.

use crate::class::Class;
use crate::phrases::reading as say;
use crate::pipe::{Family, Pipe, pipe, sizes};
use crate::purpose::Purpose;
use crate::series;
use crate::thread::{Series, Thread, ThreadTrouble};
use crate::words::Words;
use thiserror::Error;

/// A thread as it was written, with what else the words said.
#[derive(Clone, Debug, PartialEq)]
pub struct Designation {
    pub kind: Kind,
    /// Length of the bolt, where one was written after the thread.
    pub length_mm: Option<f64>,
    /// Strength class, where one was written at the end.
    pub class: Option<Class>,
}

/// A screw thread with what it is for, or a pipe thread.
#[derive(Clone, Debug, PartialEq)]
pub enum Kind {
    Screw { thread: Thread, purpose: Purpose },
    Pipe(Pipe),
}

/// Why a text is not a thread. Each says what, and how to mend it.
#[derive(Clone, Debug, PartialEq, Error)]
pub enum Unreadable {
    #[error("{}", say::no_thread_is_written())]
    Empty,
    #[error("{}", say::too_long_for_a_thread(.found))]
    TooLong { found: String },
    #[error("{}", say::not_a_thread(.found))]
    NotAThread { found: String },
    #[error("{}", say::may_be_metric(.found, .meant))]
    Metric { found: String, meant: String },
    #[error("{}", say::neither_pitch_nor_length(.thread, .second, .coarse))]
    NeitherPitchNorLength {
        thread: String,
        second: f64,
        coarse: String,
    },
    #[error("{}", say::no_coarse_pitch(.size))]
    NoCoarsePitch { size: String },
    #[error("{}", say::more_than_one_pitch(.size, .choices))]
    WhichPitch { size: String, choices: String },
    #[error("{}", say::series_mismatch(.thread, .written, .listed))]
    SeriesMismatch {
        thread: String,
        written: String,
        listed: String,
    },
    #[error("{}", say::no_such_pipe(.size, .family, .listed))]
    NoSuchPipe {
        size: String,
        family: &'static str,
        listed: String,
    },
    #[error("{}", say::is_a_pipe_thread(.name, .why))]
    PipeThread { name: String, why: String },
    #[error("{}", say::is_a_thread_of(.name, .purpose, .why))]
    NotForClamping {
        name: String,
        purpose: &'static str,
        why: &'static str,
    },
    #[error(transparent)]
    Thread(#[from] ThreadTrouble),
}

/// No thread that anybody writes is longer.
const LONGEST: usize = 80;

/// Reads a thread designation.
///
/// Accepted: `M8`, `m8 x 1.25`, `M8-1.25`, `M8×1,25`, `M8x75` (75 is a length, since no
/// M8 has that pitch), `M8x1.25x75`; `5/16-18`, `5/16"-18 UNC`, `1/4 UNF`, `#10-24`,
/// `No. 10-32`, `10-24`, `.250-20`, `1-1/8-7`; `1/8 NPT`, `1/8-27 NPT`, `R 1/4`,
/// `G 1/4`; before or after any of them a tolerance class (`6g`, `2A`), `LH`, or a purpose
/// (`spark plug`, `drain plug`, `brake line`, `banjo`, `wheel stud`), and at the end a strength
/// class (`M6x25 8.8`, `1/4-20 grade 5`). A pitch that is
/// in no list is taken if it is physically sensible, and marked not preferred.
///
/// # Errors
///
/// [`Unreadable`].
///
/// ```
/// use fastener::designation::{Kind, read};
/// let bolt = read("m8 x 75")?;
/// assert_eq!(bolt.length_mm, Some(75.0));
/// let Kind::Screw { thread, .. } = bolt.kind else { panic!() };
/// assert_eq!(thread.name(), "M8x1.25");
/// # Ok::<(), fastener::Unreadable>(())
/// ```
pub fn read(text: &str) -> Result<Designation, Unreadable> {
    let found = text.trim();
    if found.is_empty() {
        return Err(Unreadable::Empty);
    }
    if found.chars().count() > LONGEST {
        return Err(Unreadable::TooLong {
            found: found.chars().take(LONGEST).collect::<String>() + "…",
        });
    }
    let words = Words::of(found);
    if let Some(family) = words.pipe {
        return read_pipe(&words, family).map(|pipe| Designation {
            kind: Kind::Pipe(pipe),
            length_mm: None,
            class: None,
        });
    }
    let (thread, length_mm) = if let Some(rest) = words.core.strip_prefix('m') {
        read_metric(rest, found)?
    } else {
        read_unified(&words, found)?
    };
    let thread = if words.left_hand {
        thread.left_handed()
    } else {
        thread
    };
    Ok(Designation {
        kind: Kind::Screw {
            thread,
            purpose: words.purpose,
        },
        length_mm,
        class: words.class,
    })
}

/// Reads a thread that is there to clamp.
///
/// # Errors
///
/// [`Unreadable`]; pipe threads and those of plugs, lines and wheels are named for
/// what they are.
///
/// ```
/// assert!(fastener::designation::read_clamping("5/16-18 UNC").is_ok());
/// let trouble = fastener::designation::read_clamping("1/8 NPT").unwrap_err();
/// assert!(trouble.to_string().contains("Taper pipe thread"));
/// ```
pub fn read_clamping(text: &str) -> Result<Thread, Unreadable> {
    match read(text)?.kind {
        Kind::Pipe(pipe) => Err(Unreadable::PipeThread {
            name: pipe.name(),
            why: pipe.what_it_is(),
        }),
        Kind::Screw { thread, purpose } => match purpose.why_no_clamp() {
            None => Ok(thread),
            Some(why) => Err(Unreadable::NotForClamping {
                name: thread.name().to_owned(),
                purpose: purpose.name(),
                why,
            }),
        },
    }
}

fn read_pipe(words: &Words, family: Family) -> Result<Pipe, Unreadable> {
    let size = words
        .core
        .trim_start_matches(['g', 'r', 'c', 'p', ' '])
        .split(['-', ' '])
        .next()
        .unwrap_or_default();
    pipe(family, size).ok_or_else(|| Unreadable::NoSuchPipe {
        size: size.to_owned(),
        family: match family {
            Family::Npt => "NPT",
            Family::BspTaper => "BSPT",
            Family::BspParallel => "BSPP",
        },
        listed: sizes(family),
    })
}

/// In diameters.
const SHORTEST_BOLT: f64 = 0.6;

/// What stands after the M: a diameter, perhaps a pitch, perhaps a length.
fn read_metric(rest: &str, found: &str) -> Result<(Thread, Option<f64>), Unreadable> {
    let not_a_thread = || Unreadable::NotAThread {
        found: found.to_owned(),
    };
    let numbers = rest
        .split(|c: char| c == 'x' || c == '-' || c.is_whitespace())
        .filter(|part| !part.is_empty() && *part != "mm")
        .map(|part| number(part.trim_end_matches("mm")))
        .collect::<Option<Vec<f64>>>()
        .ok_or_else(not_a_thread)?;
    match numbers[..] {
        [diameter] => Ok((coarse_metric(diameter)?, None)),
        [diameter, second] => match Thread::metric(diameter, second) {
            Ok(thread) => Ok((thread, None)),
            // No pitch is as long as a bolt: M8x75 is 75 long.
            Err(ThreadTrouble::Pitch { most_mm, .. }) if second > most_mm => {
                let coarse = coarse_metric(diameter)?;
                // Not even a grub screw is so short.
                if second < SHORTEST_BOLT * diameter {
                    return Err(Unreadable::NeitherPitchNorLength {
                        thread: format!("M{diameter}"),
                        second,
                        coarse: coarse.name().to_owned(),
                    });
                }
                Ok((coarse, Some(second)))
            }
            Err(trouble) => Err(trouble.into()),
        },
        [diameter, pitch, length] if length > 0.0 => {
            Ok((Thread::metric(diameter, pitch)?, Some(length)))
        }
        _ => Err(not_a_thread()),
    }
}

fn coarse_metric(diameter: f64) -> Result<Thread, Unreadable> {
    match series::coarse(diameter) {
        Some(listed) => Ok(Thread::metric(diameter, listed.pitch_mm)?),
        None => Err(Unreadable::NoCoarsePitch {
            size: format!("M{diameter}"),
        }),
    }
}

fn read_unified(words: &Words, found: &str) -> Result<(Thread, Option<f64>), Unreadable> {
    let not_a_thread = || Unreadable::NotAThread {
        found: found.to_owned(),
    };
    if let Some(meant) = metric_without_its_m(&words.core) {
        return Err(Unreadable::Metric {
            found: found.to_owned(),
            meant,
        });
    }
    let (core, length) = match words.core.split_once('x') {
        Some((core, length)) => (core.trim(), Some(inches(length).ok_or_else(not_a_thread)?)),
        None => (words.core.as_str(), None),
    };
    let core = core
        .trim_start_matches("no.")
        .trim_start_matches("no")
        .trim();
    let length_mm = length.map(|inches| inches * crate::thread::INCH_MM);
    let with_tpi = core
        .rsplit_once(|c: char| c == '-' || c.is_whitespace())
        .and_then(|(size, tpi)| Some((size.trim(), number(tpi)?)));
    let thread = match with_tpi {
        // `1-1/8` is a size whose second part is no count of threads.
        Some((size, tpi)) if !size.is_empty() => {
            let (label, diameter) = unified_size(size, Some(tpi)).ok_or_else(not_a_thread)?;
            Thread::unified(&label, diameter, tpi)?
        }
        _ => {
            let (label, diameter) = unified_size(core, None).ok_or_else(not_a_thread)?;
            listed_unified(words.series, &label, diameter)?
        }
    };
    check_series(&thread, words.series)?;
    Ok((thread, length_mm))
}

/// `8x1.25`, `8 mm`: a metric thread whose M was left out.
fn metric_without_its_m(core: &str) -> Option<String> {
    let plain = core.trim();
    let (size, pitch) = match plain.split_once('x') {
        Some((size, rest)) => (size, rest.split('x').next()),
        None => (plain.strip_suffix("mm")?, None),
    };
    let size = number(size.trim().trim_end_matches("mm").trim())?;
    let pitch = pitch.map(|pitch| number(pitch.trim().trim_end_matches("mm").trim()));
    match pitch {
        None => series::coarse(size).map(|_| format!("M{size}")),
        // `10x1` has no threads per inch: a count stands after a dash.
        Some(Some(pitch)) => Thread::metric(size, pitch)
            .ok()
            .map(|thread| thread.name().to_owned()),
        Some(None) => None,
    }
}

/// A unified thread of which only the size and the series are written.
fn listed_unified(
    written: Option<&'static str>,
    label: &str,
    diameter: f64,
) -> Result<Thread, Unreadable> {
    let listed = series::unified_of_size(diameter);
    let wanted = match written {
        Some("UNC") => Some(Series::Coarse),
        Some("UNF") => Some(Series::Fine),
        _ => None,
    };
    match listed.iter().find(|row| Some(row.series) == wanted) {
        Some(row) => Ok(Thread::unified(label, diameter, row.threads_per_inch)?),
        None => Err(Unreadable::WhichPitch {
            size: label.to_owned(),
            choices: choices(label, &listed),
        }),
    }
}

fn choices(label: &str, listed: &[series::Unified]) -> String {
    if listed.is_empty() {
        return say::with_threads_per_inch(label);
    }
    let names: Vec<String> = listed
        .iter()
        .map(|row| format!("{label}-{}", row.threads_per_inch))
        .collect();
    names.join(say::or_between())
}

fn check_series(thread: &Thread, written: Option<&'static str>) -> Result<(), Unreadable> {
    let expected = match written {
        Some("UNC") => Series::Coarse,
        Some("UNF") => Series::Fine,
        _ => return Ok(()),
    };
    if thread.series() == expected {
        return Ok(());
    }
    let name = thread.name();
    let label = name.rsplit_once('-').map_or(name, |(size, _)| size);
    let listed = series::unified_of_size(thread.diameter_mm() / crate::thread::INCH_MM);
    Err(Unreadable::SeriesMismatch {
        thread: name.to_owned(),
        written: written.unwrap_or_default().to_owned(),
        listed: choices(label, &listed),
    })
}

/// The label and the diameter in inches of `5/16`, `1-1/8`, `.25`, `#10` or `10`.
fn unified_size(text: &str, tpi: Option<f64>) -> Option<(String, f64)> {
    if let Some(digits) = text.strip_prefix('#') {
        return number_size(digits.trim());
    }
    let whole = !text.contains(['/', '.', ' ', '-']);
    // `10-24` is a number size, `1-8` one inch: a number size is meant where it is listed.
    if whole && let Some((label, diameter)) = number_size(text) {
        let listed = match tpi {
            Some(tpi) => series::unified(diameter, tpi).is_some(),
            None => text.len() > 1,
        };
        if listed {
            return Some((label, diameter));
        }
    }
    let diameter = inches(text)?;
    let label = series::unified_of_size(diameter)
        .first()
        .map_or_else(|| text.replace(' ', "-"), |row| row.size.to_owned());
    Some((label, diameter))
}

/// Number sizes go up by 0.013 in from 0.060 in.
fn number_size(digits: &str) -> Option<(String, f64)> {
    let number: u8 = digits.parse().ok().filter(|&number| number <= 14)?;
    Some((format!("#{number}"), 0.060 + 0.013 * f64::from(number)))
}

/// `1/4`, `1-1/2`, `1 1/2`, `.25`, `2`; a trailing `in` is allowed.
fn inches(text: &str) -> Option<f64> {
    let text = text
        .trim()
        .trim_end_matches("inch")
        .trim_end_matches("in")
        .trim();
    let (whole, part) = match text.rsplit_once(['-', ' ']) {
        Some((whole, part)) => (number(whole.trim())?, part),
        None => (0.0, text),
    };
    let part = match part.split_once('/') {
        Some((upper, lower)) => {
            let lower = number(lower).filter(|&lower| lower >= 1.0)?;
            number(upper)? / lower
        }
        None if whole == 0.0 => number(part)?,
        None => return None,
    };
    Some(whole + part)
}

/// A plain positive decimal with a point or a comma.
fn number(text: &str) -> Option<f64> {
    let digits = text.chars().filter(char::is_ascii_digit).count();
    let marks = text.chars().filter(|c| matches!(c, '.' | ',')).count();
    if digits == 0 || digits > 9 || marks > 1 || digits + marks != text.chars().count() {
        return None;
    }
    text.replace(',', ".").parse().ok()
}
