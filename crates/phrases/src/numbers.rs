//! Numbers as each language writes them: its decimal mark, and what parts its thousands.

use std::fmt::{self, Display, Formatter};

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
    if !is_digits(whole) || !(part.is_empty() || is_digits(part)) {
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

/// Figures within a text as what is spoken writes them: in German `6.4` is `6,4`. A number is taken
/// with all its points and commas; one with more than a single point is a date or is written so
/// already, and stays.
///
/// ```
/// use phrases::{Language, figures, speaking};
/// let german = speaking(Language::German, || figures("6.4 L for 1.440,50 by 30.11."));
/// assert_eq!(german, "6,4 L for 1.440,50 by 30.11.");
/// ```
#[must_use]
pub fn figures(text: &str) -> String {
    if spoken() == Language::English {
        return text.to_owned();
    }
    let of_number = |letter: char| letter.is_ascii_digit() || matches!(letter, '.' | ',');
    let mut out = String::with_capacity(text.len());
    let mut rest = text;
    while let Some(from) = rest.find(of_number) {
        let (before, numbers) = rest.split_at(from);
        let to = numbers.find(|letter| !of_number(letter));
        let (number, after) = numbers.split_at(to.unwrap_or(numbers.len()));
        out.push_str(before);
        match number.split_once('.') {
            Some((whole, part)) if is_digits(whole) && is_digits(part) => {
                out.push_str(whole);
                out.push(spoken().decimal());
                out.push_str(part);
            }
            _ => out.push_str(number),
        }
        rest = after;
    }
    out + rest
}

fn is_digits(text: &str) -> bool {
    !text.is_empty() && text.bytes().all(|figure| figure.is_ascii_digit())
}

/// What fills a hole of a text: where the text asks for so many decimals, they stand behind the
/// mark of the language.
#[doc(hidden)]
pub struct Hole<'a, T: ?Sized>(pub &'a T);

impl<T: Display + ?Sized> Display for Hole<'_, T> {
    fn fmt(&self, f: &mut Formatter<'_>) -> fmt::Result {
        match f.precision() {
            None => self.0.fmt(f),
            Some(decimals) => f.write_str(&figures(&format!("{:.decimals$}", self.0))),
        }
    }
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
