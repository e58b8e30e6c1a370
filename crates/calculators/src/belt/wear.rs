//! Whether a belt is worn, by the shop's own gauge.

use super::{MAKER, STOPPED, refused};
use crate::{Answer, Asked, Calculator, Holds, Part, Row, capital};
use belt::{WearQuestion, WearVerdict, wear};
use measure::Unit;
use serde_json::json;

const SEEN: &[(&str, &str)] = &[("", "not looked"), ("no", "no"), ("yes", "yes")];

pub(super) const WEAR: Calculator = Calculator {
    code: "wear",
    name: "Wear",
    what: "by a gauge, the length, and what is seen",
    cautions: &[STOPPED, MAKER],
    how: &[],
    form: &[
        Part::choice(
            "pin",
            "The gauge's pin lies level with the ribs, or below them",
            SEEN,
        ),
        Part::number(
            "groove",
            "Or the gauge sinks between two ribs by",
            Holds::LENGTH,
            "",
        ),
        Part::number(
            "groove-limit",
            "Its maker calls the belt worn at",
            Holds::LENGTH,
            "none is assumed",
        ),
        Part::number("printed", "Length printed", Holds::LENGTH, ""),
        Part::number(
            "read",
            "Length read",
            Holds::LENGTH,
            "on the same line as the printed one",
        ),
        Part::within(
            "stretch-limit",
            "Its maker calls the belt worn at a stretch of",
            Holds::SHARE,
            (0.0, 20.0),
            "none is assumed",
        ),
        Part::choice(
            "damage",
            "Cracks across the ribs, chunks out, fraying, glaze or oil",
            SEEN,
        ),
    ],
    at_first: &[],
    run,
};

fn run(asked: &mut Asked) -> Option<Answer> {
    let seen = |text: &str| match text {
        "yes" => Some(true),
        "no" => Some(false),
        _ => None,
    };
    let groove_mm = pair(asked, "groove", "groove-limit");
    let length_mm = pair(asked, "printed", "read");
    let question = WearQuestion {
        groove_mm,
        pin_level_or_below: seen(asked.text("pin")),
        length_mm,
        stretch_limit_percent: asked.quantity("stretch-limit", Unit::Percent),
        damage_seen: seen(asked.text("damage")),
    };
    if !asked.troubles.is_empty() {
        return None;
    }
    let found = wear(&question).map_err(|error| refused(&error));
    let found = asked.ok("groove", found)?;
    let (fact, said, tone, code) = match found.verdict {
        WearVerdict::Good => (
            "good",
            "nothing that was read speaks against it",
            "yes",
            "good",
        ),
        WearVerdict::Worn => ("worn", "it is due for a new one", "no", "worn"),
        WearVerdict::CannotTell => (
            "can't tell",
            "nothing was read that tells",
            "wait",
            "cant-tell",
        ),
    };
    let mut answer = Answer {
        fact: fact.to_owned(),
        said: said.to_owned(),
        tone,
        rows: found
            .because
            .iter()
            .map(|why| Row {
                what: capital(why),
                tone: "no",
                ..Row::default()
            })
            .collect(),
        outputs: json!({ "verdict": code, "because": found.because,
            "stretch_percent": found.stretch_percent }),
        ..Answer::default()
    };
    if let Some(stretch) = found.stretch_percent {
        answer.row("stretched by", format!("{stretch:.2}\u{202f}%"));
    }
    Some(answer.with_working(&found.working))
}

/// Two figures that say something only together.
fn pair(asked: &mut Asked, one: &str, other: &str) -> Option<(f64, f64)> {
    match (asked.some(one).is_some(), asked.some(other).is_some()) {
        (true, false) => asked.needed(other, "it is needed with the one above"),
        (false, true) => asked.needed(one, "it is needed with the one below"),
        _ => {}
    }
    let one = asked.quantity(one, Unit::Millimetre);
    let other = asked.quantity(other, Unit::Millimetre);
    Some((one?, other?))
}
