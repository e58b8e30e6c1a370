//! What an inspection says of numbers typed well and badly.

use proptest::prelude::*;
use vin::{Note, Problem, YearBasis, inspect};

const CHARACTERS: &str = "0123456789ABCDEFGHJKLMNPRSTUVWXYZ";
const SAMPLE: &str = "1M8GDM9AXKP042788";

/// What a character counts for, by a way of its own: digits, then the places in
/// the alphabet's three runs.
fn value(character: char) -> usize {
    [
        "0", "1AJ", "2BKS", "3CLT", "4DMU", "5ENV", "6FW", "7GPX", "8HY", "9RZ",
    ]
    .iter()
    .position(|same| same.contains(character))
    .expect("a character of ISO 3779")
}

fn with(number: &str, position: usize, character: char) -> String {
    number
        .chars()
        .enumerate()
        .map(|(index, c)| if index + 1 == position { character } else { c })
        .collect()
}

/// A North American number with its right check digit.
fn valid_number() -> impl Strategy<Value = String> {
    ("[1-5]", "[0-9A-HJ-NPR-Z]{12}[0-9]{4}").prop_map(|(first, rest)| {
        let number = first + &rest;
        let digit = inspect(&number).expected_check_digit;
        with(&number, 9, digit.expect("every character has a value"))
    })
}

#[test]
fn spaces_hyphens_and_lower_case_are_taken_as_meant() {
    let found = inspect("  1m8 gdm9a\u{2011}xkp-042788\n");
    assert!(found.valid);
    assert_eq!(found.number, SAMPLE);
    assert!(found.notes.contains(&Note::SeparatorsLeftOut { count: 3 }));
    assert!(
        !inspect("  1m8gdm9axkp042788\n")
            .notes
            .contains(&Note::SeparatorsLeftOut { count: 0 })
    );
}

#[test]
fn look_alikes_that_no_number_contains_are_named_with_what_was_meant() {
    let found = inspect("IM8GDM9AXKPO4Q788");
    let said: Vec<String> = found.problems.iter().map(ToString::to_string).collect();
    assert_eq!(
        said,
        [
            "position 1 is I, which no number contains: most likely 1",
            "position 12 is O, which no number contains: most likely 0",
            "position 14 is Q, which no number contains: most likely 0",
        ]
    );
    assert!(!found.well_formed && !found.valid);
}

#[test]
fn one_look_alike_is_also_found_by_the_check_digit() {
    let found = inspect(&with(SAMPLE, 12, 'O'));
    assert_eq!(
        found.suspects.first().map(|s| (s.position, s.character)),
        Some((12, '0'))
    );
    assert!(found.suspects.iter().all(|s| s.position == 12));
}

#[test]
fn a_wrong_length_says_how_many() {
    let said = |text: &str| inspect(text).problems[0].to_string();
    assert_eq!(
        said(""),
        "the number has 0 characters, it needs 17: 17 missing"
    );
    assert_eq!(
        said("1M8GDM9AXKP0427888"),
        "the number has 18 characters, it needs 17: 1 too many"
    );
    assert_eq!(inspect("1M8").problems, [Problem::Length { found: 3 }]);
}

#[test]
fn foreign_letters_keep_their_place() {
    let found = inspect(&with(SAMPLE, 4, 'Ж'));
    assert_eq!(
        found.problems,
        [Problem::NotAllowed {
            position: 4,
            found: 'Ж'
        }]
    );
    assert_eq!(found.problems[0].position(), Some(4));
}

#[test]
fn outside_north_america_no_check_digit_is_asked_for_and_no_year_is_named() {
    let found = inspect("WM8GDM9A0KP042788");
    assert!(found.valid && !found.check_digit_applies);
    assert!(found.suspects.is_empty() && found.swaps.is_empty());
    assert_eq!(
        (found.model_year, found.model_year_basis),
        (None, YearBasis::NotRequired)
    );
    assert_eq!(found.model_years, [1989, 2019]);
    assert!(
        found
            .notes
            .contains(&Note::CheckDigitNotRequired { holds: false })
    );
    assert!(found.notes.contains(&Note::YearNotRequired));
}

#[test]
fn a_letter_at_position_seven_means_2010_or_later() {
    let year = |text: &str| inspect(text).model_year;
    assert_eq!(year("1M8GDM9AXKP042788"), Some(1989));
    assert_eq!(year("1M8GDMZAXKP042788"), Some(2019));
    let none = inspect("1M8GDM9AXUP042788");
    assert_eq!(
        (none.model_year, none.model_year_basis),
        (None, YearBasis::NoYearCode)
    );
    assert!(none.model_years.is_empty());
}

#[test]
fn exchanged_neighbours_are_found() {
    let found = inspect("1M8GDM9AXPK042788");
    assert!(!found.valid);
    assert!(found.swaps.iter().any(|swap| swap.position == 10));
}

/// 49 CFR 565.15(d)(3): the last characters of a North American number are digits.
#[test]
fn the_last_four_are_digits_in_north_america() {
    let found = inspect("1M8GDM9AXKP04S788");
    let said: Vec<String> = found.problems.iter().map(ToString::to_string).collect();
    assert!(
        said.contains(&"position 14 is S; North American numbers have only digits from position 14 on: most likely 5".to_owned()),
        "{said:?}"
    );
    assert!(found.well_formed && !found.valid);
    // Even where the check digit would hold: B counts as 2 does.
    let counts_the_same = inspect(&with(SAMPLE, 14, 'B'));
    assert!(!counts_the_same.valid);
    assert!(
        matches!(
            counts_the_same.problems[..],
            [Problem::NotDigit { position: 14, .. }]
        ),
        "{:?}",
        counts_the_same.problems
    );
    assert!(
        counts_the_same
            .suspects
            .iter()
            .any(|s| (s.position, s.character) == (14, '2'))
    );
    // Elsewhere letters may stand there.
    assert!(inspect("WM8GDM9A0KP04B788").valid);
}

#[test]
fn a_year_that_lies_ahead_is_doubted() {
    // A letter at position 7 and 1 at position 10: 2031, or a heavy vehicle of 2001.
    let found = inspect("1M8GDMAA01P042788");
    assert_eq!(found.model_year, Some(2031));
    assert_eq!(found.model_years, [2001, 2031]);
    assert_eq!(found.model_year_basis, YearBasis::Doubted { year: 2031 });
    let note = Note::YearDoubted { year: 2031 }.to_string();
    assert!(found.notes.iter().any(|said| said.to_string() == note));
    assert!(note.contains("2001"), "{note}");
    assert_eq!(inspect("1M8GDMAAXTP042788").model_year, Some(2026));
    assert_eq!(
        inspect("1M8GDMAAXYP042788").model_year_basis,
        YearBasis::Doubted { year: 2030 }
    );
}

proptest! {
    #[test]
    fn any_text_is_inspected(text in "\\PC*") {
        let found = inspect(&text);
        prop_assert_eq!(found.valid, found.problems.is_empty());
        prop_assert!(!found.valid || found.well_formed);
        prop_assert!(found.problems.iter().all(|p| !p.to_string().is_empty()));
        prop_assert!(found.notes.iter().all(|n| !n.to_string().is_empty()));
        prop_assert_eq!(inspect(&found.number).valid, found.valid);
    }

    #[test]
    fn any_seventeen_characters_are_inspected(text in proptest::collection::vec(any::<char>(), 17)) {
        let text: String = text.into_iter().collect();
        prop_assert_eq!(inspect(&text).valid, inspect(&text).problems.is_empty());
    }

    #[test]
    fn one_changed_character_shows_unless_it_counts_the_same(
        number in valid_number(),
        position in 2..=17_usize,
        character in proptest::sample::select(CHARACTERS.chars().collect::<Vec<_>>()),
    ) {
        let before = number.chars().nth(position - 1).unwrap();
        let found = inspect(&with(&number, position, character));
        let same = if position == 9 { before == character } else { value(before) == value(character) };
        let same = same && (position < 14 || character.is_ascii_digit());
        prop_assert_eq!(found.valid, same);
        if !same {
            prop_assert!(found.suspects.iter().any(|s| (s.position, s.character) == (position, before)));
        }
    }

    #[test]
    fn a_suspect_mends_the_number_and_nothing_else_does(
        number in "[1-5][0-9A-HJ-NPR-Z]{16}",
        position in 1..=17_usize,
        character in proptest::sample::select(CHARACTERS.chars().collect::<Vec<_>>()),
    ) {
        let found = inspect(&number);
        for suspect in &found.suspects {
            let mended = inspect(&with(&number, suspect.position, suspect.character));
            prop_assert!(mended.valid && mended.check_digit_applies);
        }
        for swap in &found.swaps {
            let mut characters: Vec<char> = number.chars().collect();
            characters.swap(swap.position - 1, swap.position);
            prop_assert!(inspect(&characters.iter().collect::<String>()).valid);
        }
        prop_assert!(found.suspects.is_sorted_by_key(|s| (!s.look_alike, s.position)));
        let tried = inspect(&with(&number, position, character));
        let suspected =
            found.suspects.iter().any(|s| (s.position, s.character) == (position, character));
        prop_assert_eq!(suspected, !found.valid && tried.valid && tried.check_digit_applies);
    }
}
