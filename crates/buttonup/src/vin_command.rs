//! `buttonup vin`: what a vehicle identification number says of itself.

use crate::answer::Answer;
use clap::Args;
use serde_json::json;

/// The number to look at.
#[derive(Debug, Args)]
pub struct Vin {
    /// The number, 17 characters; spaces and hyphens are left out.
    number: String,
}

/// Looks at the number. A number that is not valid is an answer, not a fault.
pub fn run(vin: &Vin) -> Answer {
    let found = vin::inspect(&vin.number);
    let problems: Vec<String> = found.problems.iter().map(ToString::to_string).collect();
    let notes: Vec<String> = found.notes.iter().map(ToString::to_string).collect();
    let suspects: Vec<_> = found
        .suspects
        .iter()
        .map(|change| {
            json!({
                "position": change.position,
                "character": change.character.to_string(),
                "look_alike": change.look_alike,
            })
        })
        .collect();
    let mut text = vec![format!(
        "{}: {}",
        found.number,
        if found.valid { "valid" } else { "not valid" }
    )];
    text.extend(problems.iter().map(|problem| format!("  {problem}")));
    if let Some(year) = found.model_year {
        let doubted = matches!(found.model_year_basis, vin::YearBasis::Doubted { .. });
        let word = if doubted { ", doubtful" } else { "" };
        text.push(format!("  model year {year}{word}"));
    }
    text.extend(found.suspects.iter().take(8).map(|change| {
        format!(
            "  would be valid with {} at position {}",
            change.character, change.position
        )
    }));
    text.extend(notes.iter().map(|note| format!("  {note}")));
    Answer {
        text: text.join("\n"),
        good: found.valid,
        json: json!({
            "vin": found.number,
            "well_formed": found.well_formed,
            "check_digit_applies": found.check_digit_applies,
            "valid": found.valid,
            "check_digit": found.check_digit.map(|c| c.to_string()),
            "expected_check_digit": found.expected_check_digit.map(|c| c.to_string()),
            "model_year": found.model_year,
            "model_year_doubted": matches!(found.model_year_basis, vin::YearBasis::Doubted { .. }),
            "model_years": found.model_years,
            "suspects": suspects,
            "problems": problems,
            "notes": notes,
        }),
    }
}
