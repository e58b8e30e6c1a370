//! What may have been misread, when the check digit fails.

use crate::check_digit::{self, CHARACTERS};
use crate::{DIGITS_FROM, LENGTH, is_north_american};

/// Characters that are taken for one another on a plate, in a photo or by hand.
const LOOK_ALIKES: [&str; 17] = [
    "1IL", "0OQD", "5S", "8B", "2Z", "6G", "UV", "MN", "VY", "CG", "EF", "PR", "KX", "HN", "38",
    "17", "4A",
];

/// One character changed so that the number is valid.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Change {
    /// Where, counted from 1.
    pub position: usize,
    /// What to put there.
    pub character: char,
    /// Whether it is easily taken for what stands there.
    pub look_alike: bool,
}

/// Two neighbours exchanged so that the number is valid.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Swap {
    /// The first of the two, counted from 1.
    pub position: usize,
}

/// Every single change that makes a number valid, look-alikes first.
pub(crate) fn changes(number: &[char; LENGTH]) -> Vec<Change> {
    let mut found: Vec<Change> = (0..LENGTH)
        .flat_map(|index| CHARACTERS.chars().map(move |character| (index, character)))
        .filter(|&(index, character)| number[index] != character)
        .filter(|&(index, character)| {
            let mut changed = *number;
            changed[index] = character;
            is_mended(&changed)
        })
        .map(|(index, character)| Change {
            position: index + 1,
            character,
            look_alike: look_alike(number[index], character),
        })
        .collect();
    found.sort_by_key(|change| (!change.look_alike, change.position, change.character));
    found
}

/// Every exchange of unlike neighbours that makes a number valid.
pub(crate) fn swaps(number: &[char; LENGTH]) -> Vec<Swap> {
    (1..LENGTH)
        .filter(|&index| number[index - 1] != number[index])
        .filter(|&index| {
            let mut changed = *number;
            changed.swap(index - 1, index);
            is_mended(&changed)
        })
        .map(|position| Swap { position })
        .collect()
}

/// A change that leaves North America would need no check digit at all, which
/// mends nothing.
fn is_mended(number: &[char; LENGTH]) -> bool {
    let digits = number[DIGITS_FROM - 1..].iter().all(char::is_ascii_digit);
    is_north_american(number[0]) && digits && check_digit::holds(number)
}

/// The digit that a letter is easily taken for.
pub(crate) fn digit_like(letter: char) -> Option<char> {
    let groups = LOOK_ALIKES.iter().filter(|group| group.contains(letter));
    groups
        .flat_map(|group| group.chars())
        .find(char::is_ascii_digit)
}

fn look_alike(one: char, other: char) -> bool {
    LOOK_ALIKES
        .iter()
        .any(|group| group.contains(one) && group.contains(other))
}
