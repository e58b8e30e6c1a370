//! Numbers in a complaint, with what they count.

use crate::number::number;

/// What is counted.
#[derive(Clone, Copy, PartialEq, Eq)]
pub(super) enum Amount {
    Minutes,
    Kmh,
    Kilometres,
    Rpm,
}

/// Numbers with what they count.
pub(super) fn amounts(text: &str) -> Vec<(f64, Amount)> {
    let mut spaced = String::new();
    let mut before = ' ';
    for c in text.chars() {
        if before.is_ascii_digit() && c.is_alphabetic() {
            spaced.push(' ');
        }
        spaced.push(if matches!(c, '(' | ')' | '!' | '?' | '"') {
            ' '
        } else {
            c
        });
        before = c;
    }
    let words: Vec<&str> = spaced
        .split_whitespace()
        .map(|word| word.trim_matches(|c: char| matches!(c, ',' | '.' | ';' | ':')))
        .collect();
    let mut found = Vec::new();
    for (nth, word) in words.iter().enumerate() {
        let value = match *word {
            "half" => Some(0.5),
            "a" | "an" | "one" => Some(1.0),
            "two" => Some(2.0),
            "three" => Some(3.0),
            "five" => Some(5.0),
            "ten" => Some(10.0),
            "fifteen" => Some(15.0),
            "twenty" => Some(20.0),
            "thirty" => Some(30.0),
            // A range: 10-15 minutes. The longer counts.
            word => word
                .rsplit(['-', '–'])
                .next()
                .and_then(|word| number(word, false)),
        };
        let Some(value) = value.filter(|v| *v > 0.0 && *v < 1e5) else {
            continue;
        };
        let rest: Vec<&str> = words.iter().skip(nth + 1).take(2).copied().collect();
        let unit = match rest.as_slice() {
            ["an" | "a", unit] if *word == "half" => *unit,
            [unit, ..] => *unit,
            [] => continue,
        };
        let amount = match unit {
            "min" | "mins" | "minute" | "minutes" => Some((value, Amount::Minutes)),
            "h" | "hour" | "hours" | "hr" | "hrs" => Some((value * 60.0, Amount::Minutes)),
            "km/h" | "kmh" | "kph" | "kilometres/h" => Some((value, Amount::Kmh)),
            "mph" => Some((value * 1.609_344, Amount::Kmh)),
            "km" | "kilometres" | "kilometers" | "kilometre" | "kilometer" => {
                Some((value, Amount::Kilometres))
            }
            "mi" | "mile" | "miles" => Some((value * 1.609_344, Amount::Kilometres)),
            "rpm" | "revs" | "1/min" => Some((value, Amount::Rpm)),
            _ => None,
        };
        // "a" and "an" alone count nothing unless a unit follows.
        found.extend(amount);
    }
    found
}
