//! Whether a belt is worn, by the shop's own gauge.

use super::{MAKER, STOPPED, refused};
use crate::form::none;
use crate::phrases::belt as say;
use crate::{Answer, Asked, Calculator, Choices, Holds, Part, Row, capital};
use belt::{WearQuestion, WearVerdict, wear};
use measure::Unit;
use serde_json::json;

const SEEN: Choices = &[("", say::not_looked), ("no", say::no), ("yes", say::yes)];

pub(super) const WEAR: Calculator = Calculator {
    code: "wear",
    name: say::wear,
    what: say::by_a_gauge_the_length_and,
    cautions: &[STOPPED, MAKER],
    how: Vec::new,
    form: &[
        Part::choice("pin", say::the_gauges_pin_lies_level_with, SEEN),
        Part::number(
            "groove",
            say::or_the_gauge_sinks_between_two,
            Holds::LENGTH,
            none,
        ),
        Part::number(
            "groove-limit",
            say::worn_by_its_maker_at,
            Holds::LENGTH,
            say::none_is_assumed,
        ),
        Part::number("printed", say::length_printed, Holds::LENGTH, none),
        Part::number(
            "read",
            say::length_read,
            Holds::LENGTH,
            say::on_the_same_line_as_the,
        ),
        Part::within(
            "stretch-limit",
            say::worn_at_a_stretch_of,
            Holds::SHARE,
            (0.0, 20.0),
            say::none_is_assumed,
        ),
        Part::choice("damage", say::cracks_across_the_ribs_chunks_out, SEEN),
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
            say::good(),
            say::nothing_that_was_read_speaks_against(),
            "yes",
            "good",
        ),
        WearVerdict::Worn => (say::worn(), say::it_is_due_for_a_new(), "no", "worn"),
        WearVerdict::CannotTell => (
            say::cant_tell(),
            say::nothing_was_read_that_tells(),
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
        answer.row(say::stretched_by(), format!("{stretch:.2}\u{202f}%"));
    }
    Some(answer.with_working(&found.working))
}

/// Two figures that say something only together.
fn pair(asked: &mut Asked, one: &str, other: &str) -> Option<(f64, f64)> {
    match (asked.some(one).is_some(), asked.some(other).is_some()) {
        (true, false) => asked.needed(other, say::needed_with_the_one_above()),
        (false, true) => asked.needed(one, say::needed_with_the_one_below()),
        _ => {}
    }
    let one = asked.quantity(one, Unit::Millimetre);
    let other = asked.quantity(other, Unit::Millimetre);
    Some((one?, other?))
}
