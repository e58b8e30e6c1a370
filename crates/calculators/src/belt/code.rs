//! What the code printed on a belt says.

use super::{MAKER, refused};
use crate::{Answer, Asked, Calculator, Part, both_mm};
use belt::{CodeUnit, Shape, code};
use serde_json::json;

pub(super) const CODE: Calculator = Calculator {
    code: "code",
    name: "A belt's code",
    what: "length, ribs, pitch, as printed on it",
    cautions: &[MAKER],
    how: &[],
    form: &[Part::text(
        "code",
        "Printed on the belt",
        "such as 6PK1285, K060505, 10x1000, 124ZA19",
    )],
    at_first: &[],
    run,
};

fn run(asked: &mut Asked) -> Option<Answer> {
    asked.needed("code", "write it as it is printed");
    let written = asked.some("code")?.to_owned();
    let found = code(&written).map_err(|error| refused(&error));
    let found = asked.ok("code", found)?;
    let (shape, what) = match found.shape {
        Shape::Ribbed => ("ribbed", "effective length"),
        Shape::Vee => ("V-belt", "outside length"),
        Shape::Toothed => ("toothed", "pitch length"),
    };
    let mut answer = Answer {
        fact: both_mm(found.length_mm, asked.customary()),
        said: format!("{what} of a {shape} belt, profile {}", found.profile),
        outputs: json!({ "length_mm": found.length_mm, "ribs": found.ribs, "teeth": found.teeth,
            "pitch_mm": found.pitch_mm, "width_mm": found.width_mm, "profile": found.profile,
            "double_sided": found.double_sided, "stretch": found.stretch }),
        ..Answer::default()
    };
    let written_in = match found.unit {
        CodeUnit::Millimetre => "millimetres",
        CodeUnit::TenthInch => "tenths of an inch",
    };
    answer.row("its length is written in", written_in);
    if let Some(ribs) = found.ribs {
        answer.row("ribs", ribs.to_string());
    }
    if let Some(teeth) = found.teeth {
        answer.row("teeth", teeth.to_string());
    }
    if let Some(pitch) = found.pitch_mm {
        answer.row(
            "from rib to rib, or tooth to tooth",
            both_mm(pitch, asked.customary()),
        );
    }
    if let Some(width) = found.width_mm {
        answer.row("width", both_mm(width, asked.customary()));
    }
    if found.double_sided {
        answer.row("ribs or teeth", "on both sides");
    }
    if found.stretch {
        answer
            .alarms
            .push(belt::Caution::StretchBelt.text().to_owned());
    }
    Some(answer.with_working(&found.working))
}
