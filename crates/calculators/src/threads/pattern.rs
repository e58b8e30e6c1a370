//! The sequence in which the bolts of a joint are tightened, drawn.

use crate::{Answer, Asked, Calculator, PHONE_PX, Part};
use drawing::{Turn, turns};
use fastener::pattern::{Layout, pattern as sequence};
use measure::{Line, Source, Working};
use serde_json::json;

pub(super) const PATTERN: Calculator = Calculator {
    code: "pattern",
    name: "Tightening sequence",
    what: "circle, two rows, rectangle, drawn",
    cautions: &[],
    how: &[],
    form: &[
        Part::choice(
            "layout",
            "They stand",
            &[
                ("circle", "in a circle"),
                ("rows", "in two rows"),
                ("rectangle", "round a rectangle"),
            ],
        ),
        Part::text("bolts", "How many bolts", "for a circle or two rows"),
        Part::text(
            "columns",
            "Along the rectangle",
            "bolts along its longer side",
        ),
        Part::text("rows", "Across it", "bolts along its shorter side"),
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
                asked.wrong("bolts", "two rows alike have an even number; write one");
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
    let drawn = turns("The sequence of tightening", &bolts, PHONE_PX);
    Some(Answer {
        fact: format!("{} bolts", bolts.len()),
        said: "the number in each is its turn; to loosen, turn it round".to_owned(),
        notes: vec!["Shop practice: a maker's own sequence overrides it.".to_owned()],
        drawings: vec![drawn],
        outputs: json!({ "sequence": found.sequence }),
        working: Some(
            Working::new("The sequence")
            .line(
                Line::new("positions in turn", Source::derived()).value(
                    found
                        .sequence
                        .iter()
                        .map(ToString::to_string)
                        .collect::<Vec<_>>()
                        .join(", "),
                ),
            )
            .remark(
                "On a circle across and across; in rows and rectangles from the middle outwards.",
            ),
        ),
        ..Answer::default()
    })
}
