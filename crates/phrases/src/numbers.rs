//! Numbers as each language writes them: its decimal mark, and what parts its thousands.

use crate::{Language, spoken};

impl Language {
    /// What stands before the decimals.
    #[must_use]
    pub fn decimal(self) -> char {
        match self {
            Self::English => '.',
            Self::German => ',',
        }
    }

    /// What parts thousands.
    #[must_use]
    pub fn thousands(self) -> char {
        match self {
            Self::English => ',',
            Self::German => '.',
        }
    }
}

/// A number as a program writes it, with the marks of what is spoken: `1440.50` is `1,440.50`, in
/// German `1.440,50`. What is no number stays as it is.
///
/// ```
/// use phrases::{Language, number, speaking};
/// assert_eq!(number("-1440.50"), "-1,440.50");
/// assert_eq!(speaking(Language::German, || number("-1440.50")), "-1.440,50");
/// assert_eq!(number("too large"), "too large");
/// ```
#[must_use]
pub fn number(plain: &str) -> String {
    marked(plain, spoken().decimal(), Some(spoken().thousands()))
}

/// The same as it stands in a field to be typed over: nothing parts its thousands.
#[must_use]
pub fn number_to_type(plain: &str) -> String {
    marked(plain, spoken().decimal(), None)
}

/// A number as a program writes it, with these marks. What is no number stays as it is.
#[must_use]
pub fn marked(plain: &str, decimal: char, thousands: Option<char>) -> String {
    let (sign, rest) = match plain.strip_prefix('-') {
        Some(rest) => ("-", rest),
        None => ("", plain),
    };
    let (whole, part) = rest.split_once('.').unwrap_or((rest, ""));
    let is_digits = |text: &str| text.bytes().all(|figure| figure.is_ascii_digit());
    if whole.is_empty() || !is_digits(whole) || !is_digits(part) {
        return plain.to_owned();
    }
    let mut out = sign.to_owned();
    for (nth, figure) in whole.chars().enumerate() {
        if nth > 0 && (whole.len() - nth).is_multiple_of(3) {
            out.extend(thousands);
        }
        out.push(figure);
    }
    if !part.is_empty() {
        out.push(decimal);
        out.push_str(part);
    }
    out
}

/// Figures within a text as what is spoken writes them: with a comma in German. A point counts
/// where figures stand on both sides of it.
///
/// ```
/// use phrases::{Language, figures, speaking};
/// let german = speaking(Language::German, || figures("6.4 L by 30.11."));
/// assert_eq!(german, "6,4 L by 30,11.");
/// ```
#[must_use]
pub fn figures(text: &str) -> String {
    if spoken() == Language::English {
        return text.to_owned();
    }
    let letters: Vec<char> = text.chars().collect();
    let is_figure = |nth: Option<usize>| {
        let letter = nth.and_then(|nth| letters.get(nth));
        letter.is_some_and(char::is_ascii_digit)
    };
    let each = letters.iter().enumerate().map(|(nth, letter)| {
        match *letter == '.' && is_figure(nth.checked_sub(1)) && is_figure(Some(nth + 1)) {
            true => spoken().decimal(),
            false => *letter,
        }
    });
    each.collect()
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::speaking;

    #[test]
    fn thousands_are_parted_as_each_language_writes_them() {
        let each = [
            ("0.00", "0.00", "0,00"),
            ("999.99", "999.99", "999,99"),
            ("1085.28", "1,085.28", "1.085,28"),
            ("-1085.28", "-1,085.28", "-1.085,28"),
            ("1234567", "1,234,567", "1.234.567"),
            ("0.125", "0.125", "0,125"),
            ("", "", ""),
            ("-", "-", "-"),
            ("1.2.3", "1.2.3", "1.2.3"),
            ("sum too large", "sum too large", "sum too large"),
        ];
        for (plain, english, german) in each {
            assert_eq!(number(plain), english);
            assert_eq!(speaking(Language::German, || number(plain)), german);
        }
        let typed = speaking(Language::German, || number_to_type("1440.50"));
        assert_eq!(typed, "1440,50");
    }

    #[test]
    fn figures_within_a_text_take_the_comma_in_german_alone() {
        assert_eq!(figures("VAT 7.7 %, 1."), "VAT 7.7 %, 1.");
        let german = speaking(Language::German, || figures("VAT 7.7 %, 1."));
        assert_eq!(german, "VAT 7,7 %, 1.");
    }
}
