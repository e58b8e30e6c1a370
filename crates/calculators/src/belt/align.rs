//! Pulleys in line, by a straight edge.

use super::{MAKER, STOPPED, refused};
use crate::{Answer, Asked, Calculator, Holds, Part};
use belt::{AlignQuestion, alignment};
use measure::Unit;
use serde_json::json;

pub(super) const ALIGN: Calculator = Calculator {
    code: "align",
    name: "Pulleys in line",
    what: "two readings of a straight edge",
    cautions: &[STOPPED, MAKER],
    how: &[
        "Lay a straight edge across the face of the pulley that the others are lined up with.",
        "Measure from the edge to the near rim of the other pulley, then to its far rim.",
        "Turn the edge by a quarter and read again: one direction does not show the other.",
    ],
    form: &[
        Part::number("near", "To the near rim", Holds::LENGTH, ""),
        Part::number("far", "To the far rim", Holds::LENGTH, ""),
        Part::number("apart", "The two readings lie apart by", Holds::LENGTH, ""),
        Part::number(
            "span",
            "The free run between the pulleys",
            Holds::LENGTH,
            "for how far it stands off; may stay empty",
        ),
        Part::number(
            "limit",
            "The maker's limit",
            Holds::ANGLE,
            "none is assumed",
        ),
    ],
    at_first: &[],
    run,
};

fn run(asked: &mut Asked) -> Option<Answer> {
    let near_mm = asked.must("near", Unit::Millimetre);
    let far_mm = asked.must("far", Unit::Millimetre);
    let apart_mm = asked.must("apart", Unit::Millimetre);
    let span_mm = asked.quantity("span", Unit::Millimetre);
    let limit_deg = asked.quantity("limit", Unit::Degree);
    let question = AlignQuestion {
        near_mm: near_mm?,
        far_mm: far_mm?,
        apart_mm: apart_mm?,
        span_mm,
        limit_deg,
    };
    let found = alignment(&question).map_err(|error| refused(&error));
    let found = asked.ok("near", found)?;
    let (tone, said) = match found.within_limit {
        Some(true) => ("yes", "within the maker's limit"),
        Some(false) => ("no", "beyond the maker's limit"),
        None => (
            "",
            "no limit was told, so nothing is said of whether it may stay",
        ),
    };
    let mut answer = Answer {
        fact: format!("{:.2}°", found.tilt_deg),
        said: said.to_owned(),
        tone,
        outputs: json!({ "tilt_deg": found.tilt_deg, "offset_deg": found.offset_deg,
            "within_limit": found.within_limit }),
        ..Answer::default()
    };
    if let Some(offset) = found.offset_deg {
        answer.row("askew by standing off", format!("{offset:.2}°"));
    }
    Some(answer.with_working(&found.working))
}
