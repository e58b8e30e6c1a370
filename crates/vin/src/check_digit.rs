//! The check digit of 49 CFR 565.15(c).

use crate::{CHECK_DIGIT_POSITION, LENGTH};

/// Weight of each position (49 CFR 565.15(c)(2), table IV). The check digit's
/// own is nothing, so that it never counts itself.
const WEIGHTS: [u32; LENGTH] = [8, 7, 6, 5, 4, 3, 2, 10, 0, 9, 8, 7, 6, 5, 4, 3, 2];

/// The characters of ISO 3779, in the order of their table.
pub(crate) const CHARACTERS: &str = "0123456789ABCDEFGHJKLMNPRSTUVWXYZ";

/// The value that a character counts for (49 CFR 565.15(c)(1), table III).
/// None for what no number contains, I, O and Q among them.
pub(crate) fn value(character: char) -> Option<u32> {
    match character {
        '0'..='9' => character.to_digit(10),
        'A'..='H' => Some(u32::from(character) - u32::from('A') + 1),
        'J'..='N' => Some(u32::from(character) - u32::from('J') + 1),
        'P' => Some(7),
        'R' => Some(9),
        'S'..='Z' => Some(u32::from(character) - u32::from('S') + 2),
        _ => None,
    }
}

/// The check digit that the other sixteen characters ask for; none if one of
/// them has no value.
pub(crate) fn expected(number: &[char; LENGTH]) -> Option<char> {
    let remainder = weighted_sum(number)? % 11;
    Some(char::from_digit(remainder, 10).unwrap_or('X'))
}

fn weighted_sum(number: &[char; LENGTH]) -> Option<u32> {
    number
        .iter()
        .zip(WEIGHTS)
        .enumerate()
        .filter(|(index, _)| index + 1 != CHECK_DIGIT_POSITION)
        .map(|(_, (&character, weight))| Some(value(character)? * weight))
        .sum()
}

/// Whether a number carries the check digit that it asks for.
pub(crate) fn holds(number: &[char; LENGTH]) -> bool {
    expected(number) == Some(number[CHECK_DIGIT_POSITION - 1])
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn published_weighted_sums() {
        for row in checks::published("vin").rows("weighted_sum") {
            let characters: Vec<char> = row.text("vin").chars().collect();
            let number = <[char; LENGTH]>::try_from(characters.as_slice()).unwrap();
            let sum = weighted_sum(&number).map(i64::from);
            assert_eq!(sum, Some(row.whole("sum")), "{row}");
            let check_digit = row.text("check_digit").chars().next();
            assert_eq!(expected(&number), check_digit, "{row}");
        }
    }

    #[test]
    fn published_assigned_values_are_the_whole_alphabet() {
        let mut seen = String::new();
        for row in checks::published("vin").rows("assigned_value") {
            let (characters, values) = (row.text("characters"), row.list("values"));
            assert_eq!(characters.chars().count(), values.len());
            for (character, printed) in characters.chars().zip(values) {
                let got = value(character).map(i64::from);
                assert_eq!(got, printed.as_integer(), "{character}");
                seen.push(character);
            }
        }
        for character in (' '..='\u{ff}').filter(|&c| !seen.contains(c)) {
            assert_eq!(value(character), None, "{character}");
        }
        assert_eq!(seen.len(), CHARACTERS.len());
        assert!(CHARACTERS.chars().all(|c| seen.contains(c)));
    }
}
