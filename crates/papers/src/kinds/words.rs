//! Dates, sums and codes as a paper says them.

use jiff::civil::Date;
use serde::Serialize;
use shop::record::v1::codes::{ConsentStepForm, OutcomeForm, PayerForm};
use shop::view::ConsentView;

const MONTHS: [&str; 12] = [
    "January",
    "February",
    "March",
    "April",
    "May",
    "June",
    "July",
    "August",
    "September",
    "October",
    "November",
    "December",
];

/// `2026-11-30` as `Monday 30 November 2026`; what is no day stays as it is.
pub fn long_day(day: &str) -> String {
    let Ok(date) = day.parse::<Date>() else {
        return day.to_owned();
    };
    let name = match date.weekday() {
        jiff::civil::Weekday::Monday => "Monday",
        jiff::civil::Weekday::Tuesday => "Tuesday",
        jiff::civil::Weekday::Wednesday => "Wednesday",
        jiff::civil::Weekday::Thursday => "Thursday",
        jiff::civil::Weekday::Friday => "Friday",
        jiff::civil::Weekday::Saturday => "Saturday",
        jiff::civil::Weekday::Sunday => "Sunday",
    };
    let month = usize::try_from(date.month() - 1).unwrap_or_default();
    format!(
        "{name} {} {} {}",
        date.day(),
        MONTHS.get(month).unwrap_or(&""),
        date.year()
    )
}

/// Year, month and day of a date, for the file.
pub fn day_of(day: &str) -> (u16, u8, u8) {
    day.parse::<Date>().map_or((1970, 1, 1), |date| {
        (
            u16::try_from(date.year()).unwrap_or(1970),
            u8::try_from(date.month()).unwrap_or(1),
            u8::try_from(date.day()).unwrap_or(1),
        )
    })
}

/// A sum with a comma after each thousand: `1085.28` as `1,085.28`. Figures alone are
/// grouped: what is no number stays as it is.
pub fn sum(amount: &str) -> String {
    let (sign, rest) = match amount.strip_prefix('-') {
        Some(rest) => ("-", rest),
        None => ("", amount),
    };
    let (whole, part) = match rest.split_once('.') {
        Some((whole, part)) => (whole, format!(".{part}")),
        None => (rest, String::new()),
    };
    if whole.is_empty() || !whole.bytes().all(|figure| figure.is_ascii_digit()) {
        return amount.to_owned();
    }
    let mut grouped = String::new();
    for (nth, figure) in whole.chars().enumerate() {
        if nth > 0 && (whole.len() - nth) % 3 == 0 {
            grouped.push(',');
        }
        grouped.push(figure);
    }
    format!("{sign}{grouped}{part}")
}

/// Whether a sum is nothing.
pub fn nought(amount: &str) -> bool {
    !amount.bytes().any(|digit| (b'1'..=b'9').contains(&digit))
}

/// A hash in groups of eight.
pub fn in_eights(hash: &str) -> String {
    let letters: Vec<char> = hash.chars().collect();
    let groups = letters
        .chunks(8)
        .map(|group| group.iter().collect::<String>());
    groups.collect::<Vec<_>>().join(" ")
}

/// Who pays.
pub fn payer_name(payer: PayerForm) -> &'static str {
    match payer {
        PayerForm::Customer => "the customer",
        PayerForm::Warranty => "the warranty",
        PayerForm::Goodwill => "us, as goodwill",
    }
}

/// What a test showed.
pub fn outcome(outcome: OutcomeForm) -> &'static str {
    match outcome {
        OutcomeForm::Held => "passed",
        OutcomeForm::Failed => "did not pass",
        OutcomeForm::NotProvoked => "could not reproduce the complaint",
    }
}

/// What was asked.
pub fn step_name(step: ConsentStepForm) -> &'static str {
    match step {
        ConsentStepForm::Diagnose => "finding the fault",
        ConsentStepForm::TakeApart => "taking it apart, and putting it back if declined",
        ConsentStepForm::Repair => "the repair",
        ConsentStepForm::Add => "added work",
    }
}

/// One approval in a sentence: when, what, how much, how, who asked.
pub fn consented(consent: &ConsentView) -> String {
    let who = consent.person.as_deref().unwrap_or("The payer");
    let yes = if consent.agreed {
        "approved"
    } else {
        "declined"
    };
    let amount = consent.amount.as_ref().map_or_else(String::new, |amount| {
        let tax = if consent.tax_included {
            "with tax"
        } else {
            "before tax"
        };
        format!(", up to {} in total {tax}", sum(amount))
    });
    let called = consent.number_called.as_ref();
    let called = called.map_or_else(String::new, |number| format!(" on {number}"));
    let signed = consent
        .signature
        .as_ref()
        .map_or("", |_| ", signed on the screen");
    format!(
        "{}: {who} {yes} {}{amount}, {}{called}{signed}, asked by {}",
        consent.at,
        step_name(consent.step),
        code(&consent.way),
        consent.by
    )
}

/// A code as a person reads it: `in-person` is `in person`.
pub fn code(code: &impl Serialize) -> String {
    serde_json::to_value(code)
        .ok()
        .and_then(|value| value.as_str().map(|code| code.replace('-', " ")))
        .unwrap_or_default()
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn sums_have_commas() {
        let written = [
            "0.00",
            "999.99",
            "1085.28",
            "-1085.28",
            "1234567",
            "too large",
        ]
        .map(sum);
        assert_eq!(
            written,
            [
                "0.00",
                "999.99",
                "1,085.28",
                "-1,085.28",
                "1,234,567",
                "too large"
            ]
        );
    }

    #[test]
    fn days_are_said_whole() {
        assert_eq!(long_day("2026-11-30"), "Monday 30 November 2026");
        assert_eq!(long_day("soon"), "soon");
        assert_eq!(day_of("2026-11-30"), (2026, 11, 30));
    }

    #[test]
    fn a_hash_stands_in_eights() {
        assert_eq!(in_eights("0123456789abcdef01"), "01234567 89abcdef 01");
    }
}
