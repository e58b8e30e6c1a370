//! The sequence in which the bolts of a joint are tightened, drawn.

use crate::phrases::threads as say;
use crate::{Answer, Asked, Calculator, PHONE_PX, Part};
use drawing::{Turn, turns};
use fastener::pattern::{Layout, pattern as sequence};
use measure::{Line, Source, Working};
use serde_json::json;

pub(super) const PATTERN: Calculator = Calculator {
    code: "pattern",
    name: say::tightening_sequence,
    what: say::circle_two_rows_rectangle_drawn,
    cautions: &[],
    how: Vec::new,
    form: &[
        Part::choice(
            "layout",
            say::they_stand,
            &[
                ("circle", say::in_a_circle),
                ("rows", say::in_two_rows),
                ("rectangle", say::round_a_rectangle),
            ],
        ),
        Part::text("bolts", say::how_many_bolts, say::for_a_circle_or_two_rows),
        Part::text(
            "columns",
            say::along_the_rectangle,
            say::bolts_along_its_longer_side,
        ),
        Part::text("rows", say::across_it, say::bolts_along_its_shorter_side),
    ],
    at_first: &[],
    run,
};

/// The sequence in which the bolts of a joint are tightened, drawn.
fn run(asked: &mut Asked) -> Option<Answer> {
    let layout = match asked.text("layout") {
        "rows" => {
            let bolts = asked.count("bolts")?;
            if bolts % 2 == 1 {
                asked.wrong("bolts", say::two_rows_alike_have_an_even());
                return None;
            }
            Layout::TwoRows { columns: bolts / 2 }
        }
        "rectangle" => {
            let (columns, rows) = (asked.count("columns"), asked.count("rows"));
            Layout::Rectangle {
                columns: columns?,
                rows: rows?,
            }
        }
        _ => Layout::Circle {
            bolts: asked.count("bolts")?,
        },
    };
    let field = if asked.text("layout") == "rectangle" {
        "columns"
    } else {
        "bolts"
    };
    let found = match sequence(layout) {
        Ok(found) => found,
        Err(error) => {
            asked.wrong(field, error.to_string());
            return None;
        }
    };
    let bolts: Vec<Turn> = found
        .places
        .iter()
        .filter_map(|place| {
            let turn = found.sequence.iter().position(|at| *at == place.position)?;
            Some(Turn {
                x: place.x,
                y: place.y,
                turn: turn + 1,
            })
        })
        .collect();
    let drawn = turns(say::the_sequence_of_tightening(), &bolts, PHONE_PX);
    Some(Answer {
        fact: say::bolts(bolts.len()),
        said: say::the_number_in_each_is_its().to_owned(),
        notes: vec![say::shop_practice_a_makers_own_sequence().to_owned()],
        drawings: vec![drawn],
        outputs: json!({ "sequence": found.sequence }),
        working: Some(
            Working::new(say::the_sequence())
                .line(
                    Line::new(say::positions_in_turn(), Source::derived()).value(
                        found
                            .sequence
                            .iter()
                            .map(ToString::to_string)
                            .collect::<Vec<_>>()
                            .join(", "),
                    ),
                )
                .remark(say::on_a_circle_across_and_across()),
        ),
        ..Answer::default()
    })
}
