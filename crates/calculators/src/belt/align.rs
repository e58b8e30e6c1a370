//! Pulleys in line, by a straight edge.

use super::{MAKER, STOPPED, refused};
use crate::form::none;
use crate::phrases::belt as say;
use crate::{Answer, Asked, Calculator, Holds, Part};
use belt::{AlignQuestion, alignment};
use measure::Unit;
use phrases::figures;
use serde_json::json;

pub(super) const ALIGN: Calculator = Calculator {
    code: "align",
    name: say::pulleys_in_line,
    what: say::two_readings_of_a_straight_edge,
    cautions: &[STOPPED, MAKER],
    how: || {
        vec![
            say::lay_a_straight_edge_across_the(),
            say::measure_from_the_edge_to_the(),
            say::turn_the_edge_by_a_quarter(),
        ]
    },
    form: &[
        Part::number("near", say::to_the_near_rim, Holds::LENGTH, none),
        Part::number("far", say::to_the_far_rim, Holds::LENGTH, none),
        Part::number(
            "apart",
            say::the_two_readings_lie_apart_by,
            Holds::LENGTH,
            none,
        ),
        Part::number(
            "span",
            say::the_free_run_between_the_pulleys,
            Holds::LENGTH,
            say::for_how_far_it_stands_off,
        ),
        Part::number(
            "limit",
            say::the_makers_limit,
            Holds::ANGLE,
            say::none_is_assumed,
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
        Some(true) => ("yes", say::within_the_makers_limit()),
        Some(false) => ("no", say::beyond_the_makers_limit()),
        None => ("", say::no_limit_was_told_so_nothing()),
    };
    let mut answer = Answer {
        fact: figures(&format!("{:.2}°", found.tilt_deg)),
        said: said.to_owned(),
        tone,
        outputs: json!({ "tilt_deg": found.tilt_deg, "offset_deg": found.offset_deg,
            "within_limit": found.within_limit }),
        ..Answer::default()
    };
    if let Some(offset) = found.offset_deg {
        answer.row(
            say::askew_by_standing_off(),
            figures(&format!("{offset:.2}°")),
        );
    }
    Some(answer.with_working(&found.working))
}
