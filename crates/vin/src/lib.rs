//! Vehicle identification numbers: what is wrong with one as typed, how to
//! mend it, and which model years it can mean.
//!
//! Knows nothing of makers, models or any data base of vehicles: only what the
//! seventeen characters say by themselves.

mod check_digit;
mod model_year;
mod phrases;
mod problem;
mod suspects;

pub use model_year::YearBasis;
pub use problem::{Note, Problem};
pub use suspects::{Change, Swap};

/// How many characters a vehicle identification number has (ISO 3779).
pub const LENGTH: usize = 17;

/// Where the check digit stands, counted from 1 (49 CFR 565.15(c)).
pub const CHECK_DIGIT_POSITION: usize = 9;

/// From this position on North American numbers have digits alone (49 CFR 565.15(d)(3); cars and
/// light trucks of large makers from the one before).
pub const DIGITS_FROM: usize = 14;

/// Everything that the characters of one number say. Positions count from 1.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Inspection {
    /// The number as it was read: upper case, without spaces and hyphens.
    pub number: String,
    /// Seventeen characters, all of them of the ISO 3779 set.
    pub well_formed: bool,
    /// Whether a check digit is required: North American numbers only.
    pub check_digit_applies: bool,
    /// Well formed and, in North America, with the right check digit and digits at its end.
    pub valid: bool,
    /// The character that stands at position 9.
    pub check_digit: Option<char>,
    /// The character that the other sixteen ask for at position 9.
    pub expected_check_digit: Option<char>,
    /// Every model year that position 10 can stand for, earliest first.
    pub model_years: Vec<u16>,
    /// The likelier of the model years, where the number itself tells.
    pub model_year: Option<u16>,
    /// What `model_year` rests on, or why there is none.
    pub model_year_basis: YearBasis,
    /// What is wrong, by position, each with a way to mend it.
    pub problems: Vec<Problem>,
    /// What was changed in reading, and what the figures do not say.
    pub notes: Vec<Note>,
    /// Where a required check digit fails: every change of one character that
    /// makes the number valid, look-alikes first, then by position.
    pub suspects: Vec<Change>,
    /// Likewise every exchange of two neighbours that makes it valid.
    pub swaps: Vec<Swap>,
}

/// Inspects a vehicle identification number as somebody typed or scanned it.
///
/// Formula: the check digit is the remainder of the sum of (value × weight)
/// over the seventeen positions, divided by 11; a remainder of 10 is written X.
///
/// Inputs: any text. Spaces, hyphens and lower case are taken as meant.
///
/// Returns an [`Inspection`]; a text that is no such number gives one with
/// `problems`, never a failure.
///
/// # Errors
/// None: what is wrong stands in `problems`.
///
/// # Limits
/// The check digit and the year code are required in North America only (first
/// character 1 to 5). Vehicles built elsewhere for North America carry them
/// too, which their number does not say; a check digit that happens to hold is
/// noted. Numbers that begin with 7 are not taken as North American, though a
/// part of that range has been given to the United States. The choice between
/// the two model years holds for cars, multipurpose vehicles and trucks up to
/// 4536 kg (10 000 lb) gross weight rating.
///
/// # Source
/// ISO 3779 (characters), ISO 3780 (first character), 49 CFR 565.15(b), (c)
/// and (d), as amended by 73 FR 23367 (30 April 2008).
///
/// # Example
/// ```
/// let found = vin::inspect("1m8gdm9a-xkp042788");
/// assert!(found.valid);
/// assert_eq!(found.check_digit, Some('X'));
/// assert_eq!(found.model_years, [1989, 2019]);
///
/// let mistyped = vin::inspect("1M8GDM9AXKPO42788");
/// assert_eq!(
///     mistyped.problems[0].to_string(),
///     "position 12 is O, which no number contains: most likely 0"
/// );
/// ```
#[must_use]
pub fn inspect(text: &str) -> Inspection {
    let read = read(text);
    let mut problems = form_problems(&read.characters);
    let well_formed = problems.is_empty();
    let whole = <[char; LENGTH]>::try_from(read.characters.as_slice()).ok();

    let applies = read
        .characters
        .first()
        .is_some_and(|&c| is_north_american(c));
    let check_digit = read.characters.get(CHECK_DIGIT_POSITION - 1).copied();
    let expected = whole.as_ref().and_then(check_digit::expected);
    let holds = expected.is_some() && expected == check_digit;
    if let (true, true, false, Some(found), Some(expected)) =
        (well_formed, applies, holds, check_digit, expected)
    {
        problems.push(Problem::CheckDigit { found, expected });
    }

    let serial = whole.as_ref().filter(|_| well_formed && applies);
    problems.extend(serial.into_iter().flat_map(serial_problems));
    let sound = problems.is_empty();

    let years = model_year::read(whole.as_ref().filter(|_| well_formed), applies);
    let asked = whole.as_ref().filter(|_| applies && !sound);
    Inspection {
        number: read.characters.iter().collect(),
        well_formed,
        check_digit_applies: applies,
        valid: sound,
        check_digit,
        expected_check_digit: expected,
        notes: notes(&read, well_formed, applies, holds, years.basis),
        model_years: years.possible,
        model_year: years.likelier,
        model_year_basis: years.basis,
        problems,
        suspects: asked.map(suspects::changes).unwrap_or_default(),
        swaps: asked.map(suspects::swaps).unwrap_or_default(),
    }
}

/// A text as read: its characters, and how many separators were left out.
struct Read {
    characters: Vec<char>,
    separators: usize,
}

fn read(text: &str) -> Read {
    let mut separators = 0;
    let characters = text
        .trim()
        .chars()
        .filter(|&c| {
            let separator = is_separator(c);
            separators += usize::from(separator);
            !separator
        })
        // Only ASCII: full upper-casing can turn one character into two.
        .map(|c| c.to_ascii_uppercase())
        .collect();
    Read {
        characters,
        separators,
    }
}

/// Spaces of any kind, the hyphen and the dashes that keyboards put for it.
fn is_separator(c: char) -> bool {
    c.is_whitespace() || matches!(c, '-' | '\u{2010}'..='\u{2015}' | '\u{2212}')
}

/// The first character of North American makers (ISO 3780).
fn is_north_american(first: char) -> bool {
    matches!(first, '1'..='5')
}

fn form_problems(characters: &[char]) -> Vec<Problem> {
    // Past the seventeenth character there are no positions to speak of.
    let odd = characters
        .iter()
        .take(LENGTH)
        .enumerate()
        .filter_map(|(index, &found)| {
            let position = index + 1;
            match found {
                'I' => Some(Problem::LookAlike {
                    position,
                    found,
                    meant: '1',
                }),
                'O' | 'Q' => Some(Problem::LookAlike {
                    position,
                    found,
                    meant: '0',
                }),
                _ if check_digit::value(found).is_none() => {
                    Some(Problem::NotAllowed { position, found })
                }
                _ => None,
            }
        });
    let length = (characters.len() != LENGTH).then_some(Problem::Length {
        found: characters.len(),
    });
    length.into_iter().chain(odd).collect()
}

/// Letters where a North American number has only digits.
fn serial_problems(number: &[char; LENGTH]) -> impl Iterator<Item = Problem> + '_ {
    (DIGITS_FROM..=LENGTH)
        .map(|position| (position, number[position - 1]))
        .filter(|(_, found)| !found.is_ascii_digit())
        .map(|(position, found)| Problem::NotDigit {
            position,
            found,
            meant: suspects::digit_like(found),
        })
}

fn notes(
    read: &Read,
    well_formed: bool,
    applies: bool,
    holds: bool,
    basis: YearBasis,
) -> Vec<Note> {
    let separators = (read.separators > 0).then_some(Note::SeparatorsLeftOut {
        count: read.separators,
    });
    let elsewhere = (well_formed && !applies).then_some(Note::CheckDigitNotRequired { holds });
    let year = match basis {
        YearBasis::PositionSeven => Some(Note::YearForLightVehicles),
        YearBasis::NotRequired => Some(Note::YearNotRequired),
        YearBasis::NoYearCode => Some(Note::NoYearCode),
        YearBasis::Doubted { year } => Some(Note::YearDoubted { year }),
        YearBasis::NotReadable => None,
    };
    [separators, elsewhere, year]
        .into_iter()
        .flatten()
        .collect()
}
