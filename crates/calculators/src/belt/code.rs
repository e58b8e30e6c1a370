//! What the code printed on a belt says.

use super::{MAKER, refused};
use crate::phrases::belt as say;
use crate::{Answer, Asked, Calculator, Part, both_mm};
use belt::{CodeUnit, Shape, code};
use serde_json::json;

pub(super) const CODE: Calculator = Calculator {
    code: "code",
    name: say::a_belts_code,
    what: say::length_ribs_pitch_as_printed_on,
    cautions: &[MAKER],
    how: Vec::new,
    form: &[Part::text(
        "code",
        say::printed_on_the_belt,
        say::such_as_6pk1285_k060505_10x1000_124za19,
    )],
    at_first: &[],
    run,
};

fn run(asked: &mut Asked) -> Option<Answer> {
    asked.needed("code", say::write_it_as_it_is_printed());
    let written = asked.some("code")?.to_owned();
    let found = code(&written).map_err(|error| refused(&error));
    let found = asked.ok("code", found)?;
    let said = match found.shape {
        Shape::Ribbed => say::length_of_ribbed(&found.profile),
        Shape::Vee => say::length_of_vee(&found.profile),
        Shape::Toothed => say::length_of_toothed(&found.profile),
    };
    let mut answer = Answer {
        fact: both_mm(found.length_mm, asked.customary()),
        said,
        outputs: json!({ "length_mm": found.length_mm, "ribs": found.ribs, "teeth": found.teeth,
            "pitch_mm": found.pitch_mm, "width_mm": found.width_mm, "profile": found.profile,
            "double_sided": found.double_sided, "stretch": found.stretch }),
        ..Answer::default()
    };
    let written_in = match found.unit {
        CodeUnit::Millimetre => say::millimetres(),
        CodeUnit::TenthInch => say::tenths_of_an_inch(),
    };
    answer.row(say::its_length_is_written_in(), written_in);
    if let Some(ribs) = found.ribs {
        answer.row(say::ribs(), ribs.to_string());
    }
    if let Some(teeth) = found.teeth {
        answer.row(say::teeth(), teeth.to_string());
    }
    if let Some(pitch) = found.pitch_mm {
        answer.row(
            say::from_rib_to_rib_or_tooth(),
            both_mm(pitch, asked.customary()),
        );
    }
    if let Some(width) = found.width_mm {
        answer.row(say::width(), both_mm(width, asked.customary()));
    }
    if found.double_sided {
        answer.row(say::ribs_or_teeth(), say::on_both_sides());
    }
    if found.stretch {
        answer
            .alarms
            .push(belt::Caution::StretchBelt.text().to_owned());
    }
    Some(answer.with_working(&found.working))
}
