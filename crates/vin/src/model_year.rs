//! Model years by the code at position 10.

use crate::LENGTH;

/// The year codes in their sequence; I, O, Q, U, Z and 0 are not used
/// (49 CFR 565.15(d)(1), table VII).
const YEAR_CODES: &str = "ABCDEFGHJKLMNPRSTVWXY123456789";

/// The first model year of each thirty-year cycle of the codes.
const CYCLE_STARTS: [u16; 2] = [1980, 2010];

/// No vehicle of this model year or a later one has been built: the number is misread, or the
/// rule of position 7 is not for it.
const DOUBTED_FROM: u16 = 2030;

const YEAR_INDEX: usize = 10 - 1;
const CYCLE_INDEX: usize = 7 - 1;

/// What a model year rests on.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum YearBasis {
    /// North American: a letter at position 7 means 2010 or later, a digit
    /// 1980 to 2009 (49 CFR 565.15(b)).
    PositionSeven,
    /// Not North American: a year at position 10 is not required, so none is named.
    NotRequired,
    /// North American, but the year lies ahead: it is named, and doubted.
    Doubted { year: u16 },
    /// North American, but position 10 holds no year code.
    NoYearCode,
    /// The number is not well formed.
    NotReadable,
}

pub(crate) struct Years {
    pub possible: Vec<u16>,
    pub likelier: Option<u16>,
    pub basis: YearBasis,
}

pub(crate) fn read(number: Option<&[char; LENGTH]>, north_american: bool) -> Years {
    let none = |basis| Years {
        possible: Vec::new(),
        likelier: None,
        basis,
    };
    let Some(number) = number else {
        return none(YearBasis::NotReadable);
    };
    let possible = years_of(number[YEAR_INDEX]);
    match possible.as_slice() {
        _ if !north_american => Years {
            possible,
            likelier: None,
            basis: YearBasis::NotRequired,
        },
        &[earlier, later] => {
            let likelier = if number[CYCLE_INDEX].is_ascii_alphabetic() {
                later
            } else {
                earlier
            };
            let ahead = likelier >= DOUBTED_FROM;
            Years {
                possible,
                likelier: Some(likelier),
                basis: match ahead {
                    true => YearBasis::Doubted { year: likelier },
                    false => YearBasis::PositionSeven,
                },
            }
        }
        _ => none(YearBasis::NoYearCode),
    }
}

fn years_of(code: char) -> Vec<u16> {
    (0..)
        .zip(YEAR_CODES.chars())
        .filter(|&(_, candidate)| candidate == code)
        .flat_map(|(offset, _): (u16, char)| CYCLE_STARTS.map(|start| start + offset))
        .collect()
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn published_year_codes() {
        let file = checks::published("vin");
        let rows = file.rows("year_code");
        assert_eq!(rows.len(), 60, "1980 to 2039, each once");
        for row in rows {
            let code = row.text("code").chars().next().unwrap();
            let year = u16::try_from(row.whole("year")).unwrap();
            assert!(years_of(code).contains(&year), "{row}");
        }
        for unused in ['I', 'O', 'Q', 'U', 'Z', '0'] {
            assert!(years_of(unused).is_empty(), "{unused}");
        }
    }
}
