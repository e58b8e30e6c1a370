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

/// A number as it is written in a sentence: a point or a comma before exactly three digits parts
/// thousands, for nobody says how long by three decimals.
fn written(word: &str) -> Option<f64> {
    let groups: Vec<&str> = word.split(['.', ',']).collect();
    let [first, rest @ ..] = groups.as_slice() else {
        return None;
    };
    let digits = |text: &str| text.bytes().all(|letter| letter.is_ascii_digit());
    let thousands = !rest.is_empty()
        && (1..=3).contains(&first.len())
        && digits(first)
        && rest.iter().all(|group| group.len() == 3 && digits(group));
    match thousands {
        true => groups.concat().parse().ok(),
        false => number(word, true),
    }
}

/// Numbers with what they count, in a folded text.
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
            "halb" | "halbe" | "halben" | "halber" => Some(0.5),
            "viertel" => Some(0.25),
            "dreiviertel" => Some(0.75),
            "anderthalb" | "eineinhalb" => Some(1.5),
            "ein" | "eine" | "einem" | "einen" | "einer" => Some(1.0),
            "zwei" => Some(2.0),
            "drei" => Some(3.0),
            "vier" => Some(4.0),
            "funf" => Some(5.0),
            "zehn" => Some(10.0),
            "funfzehn" => Some(15.0),
            "zwanzig" => Some(20.0),
            "dreissig" => Some(30.0),
            "vierzig" => Some(40.0),
            "viertelstunde" => {
                found.push((15.0, Amount::Minutes));
                continue;
            }
            "dreiviertelstunde" => {
                found.push((45.0, Amount::Minutes));
                continue;
            }
            // A range: 10-15 minutes. The longer counts.
            word => word.rsplit(['-', '–']).next().and_then(written),
        };
        let Some(value) = value.filter(|v| *v > 0.0 && *v < 1e5) else {
            continue;
        };
        // The speed stands behind its word: Tempo 130.
        if nth.checked_sub(1).and_then(|before| words.get(before)) == Some(&"tempo") {
            found.push((value, Amount::Kmh));
            continue;
        }
        let rest: Vec<&str> = words.iter().skip(nth + 1).take(2).copied().collect();
        let unit = match rest.as_slice() {
            ["an" | "a", unit] if *word == "half" => *unit,
            [unit, ..] => *unit,
            [] => continue,
        };
        let amount = match unit {
            "min" | "mins" | "minute" | "minutes" | "minuten" => Some((value, Amount::Minutes)),
            "h" | "hour" | "hours" | "hr" | "hrs" | "std" | "stunde" | "stunden" => {
                Some((value * 60.0, Amount::Minutes))
            }
            "km/h" | "kmh" | "kph" | "kilometres/h" | "sachen" | "stundenkilometer"
            | "stundenkilometern" => Some((value, Amount::Kmh)),
            "mph" => Some((value * 1.609_344, Amount::Kmh)),
            "km" | "kilometres" | "kilometers" | "kilometre" | "kilometer" | "kilometern" => {
                Some((value, Amount::Kilometres))
            }
            "mi" | "mile" | "miles" | "meile" | "meilen" => {
                Some((value * 1.609_344, Amount::Kilometres))
            }
            "rpm" | "revs" | "1/min" | "u/min" | "upm" | "touren" | "umdrehungen" => {
                Some((value, Amount::Rpm))
            }
            _ => None,
        };
        // "a" and "an" alone count nothing unless a unit follows.
        found.extend(amount);
    }
    found
}
