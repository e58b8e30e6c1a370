//! A snag is found: which piece, tapped on a picture of its group, and what it looks like.

use super::pieces::change;
use crate::phrases::vehicle as say;
use crate::tap::{
    Look, button, chips, file, files, input, new, order_fact, photo_field, text, voice_field, when,
};
use maud::{Markup, html};
use serde_json::{Value, json};
use shop::record::v1::basics::StateForm;
use shop::record::v1::codes::KindForm;
use shop::view::{ItemView, OrderView, Shape, bolt_places};

/// One way that it looks: a word for the page, what to call it, the snag, how its rest sits.
type Seen = (
    &'static str,
    fn() -> &'static str,
    &'static str,
    Option<&'static str>,
);

/// What it looks like.
const LOOKS: &[Seen] = &[
    (
        "snapped-proud",
        say::snapped_sticks_out,
        "snapped",
        Some("proud"),
    ),
    (
        "snapped-flush",
        say::snapped_flush,
        "snapped",
        Some("flush"),
    ),
    (
        "snapped-below",
        say::snapped_below,
        "snapped",
        Some("below"),
    ),
    ("stuck", say::stuck, "stuck", None),
    ("stripped", say::thread_stripped, "stripped", None),
    ("rounded", say::head_rounded, "rounded", None),
    ("torn", say::torn, "torn", None),
    ("worn", say::worn, "worn", None),
    ("broken", say::broken, "broken", None),
    ("bent", say::bent, "bent", None),
    ("corroded", say::corroded, "corroded", None),
    ("leaking", say::leaking, "leaking", None),
    ("missing", say::missing, "missing", None),
    ("other", say::other, "other", None),
];

/// Those of a thing that is no fastener: nothing of it snaps off in a hole.
const SNAGS_OF_PARTS: &[&str] = &["snapped", "stuck", "stripped", "rounded"];

/// More than so many on a circle stand too close for a gloved finger.
const MOST_ON_A_CIRCLE: usize = 6;
/// More than so many are a list: a picture of them would be longer than three screens.
const MOST_IN_A_PICTURE: usize = 16;

fn shapes(pieces: usize) -> Vec<Shape> {
    let mut shapes = Shape::of(pieces);
    shapes.retain(|shape| *shape != Shape::Circle || pieces <= MOST_ON_A_CIRCLE);
    shapes
}

/// How a group is shown, by the address.
fn shape_of(word: Option<&str>, pieces: usize) -> Shape {
    let wanted = match word {
        Some("rows") => Some(Shape::Rows),
        Some("rectangle") => Some(Shape::Rectangle),
        Some("circle") => Some(Shape::Circle),
        _ => None,
    };
    let shapes = shapes(pieces);
    wanted
        .filter(|shape| shapes.contains(shape))
        .or(shapes.first().copied())
        .unwrap_or(Shape::Rows)
}

fn word(shape: Shape) -> (&'static str, &'static str) {
    match shape {
        Shape::Circle => ("circle", say::on_a_circle()),
        Shape::Rows => ("rows", say::in_two_rows()),
        Shape::Rectangle => ("rectangle", say::around_an_edge()),
    }
}

/// What to say of a snag, and the one tap that notes it.
pub fn found(order: &OrderView, item: Option<&ItemView>, shape: Option<&str>) -> Markup {
    let several = item.filter(|item| item.positions.len() > 1);
    let fastener = item.is_none_or(|item| item.kind == KindForm::Fasteners);
    let looks: Vec<(&str, &str)> = LOOKS
        .iter()
        .filter(|(_, _, snag, _)| fastener || !SNAGS_OF_PARTS.contains(snag))
        .map(|(code, words, _, _)| (*code, words()))
        .collect();
    html! {
        h2 { (say::found()) @if let Some(item) = item { ": " (item.label) @if let Some(size) = &item.size { " " (size) } } }
        form class="narrow" {
            @if let Some(item) = several {
                @if item.positions.len() > MOST_IN_A_PICTURE { (list(item)) } @else { (picture(order, item, shape)) }
            }
            div data-one-of=(say::tap_what_it_looks_like()) { (chips("looks", say::it_is(), &looks, "")) }
            (input("words", say::in_a_few_words(), "", ""))
            (photo_field("photos"))
            (voice_field("voice"))
            div class="presses low" {
                (button(Look::Confirm, say::note_the_snag(), "", &[noted(order, item)], Some(&format!("/o/{}/snag/{{snag}}", order.number))))
            }
        }
    }
}

/// The pieces a snag is about: those tapped, or the only one.
fn at(item: Option<&ItemView>) -> Value {
    match item {
        Some(item) if item.positions.len() > 1 => item
            .positions
            .iter()
            .map(|position| when(&format!("at-{position}"), json!(position)))
            .collect(),
        Some(item) => json!(item.positions),
        None => json!([]),
    }
}

/// A value that follows from what it looks like; null where there is none.
fn by_look(value: impl Fn(&Seen) -> Option<Value>) -> Value {
    let to: serde_json::Map<String, Value> = LOOKS
        .iter()
        .filter_map(|look| Some((look.0.to_owned(), value(look)?)))
        .collect();
    json!({ "$map": "looks", "to": to })
}

fn noted(order: &OrderView, item: Option<&ItemView>) -> Value {
    let stub = |holds: bool| json!(StateForm::Stub { holds });
    let moves = item
        .filter(|item| item.kind == KindForm::Fasteners)
        .map(|item| {
            let mut moved = change(item, &[], StateForm::Out, "original");
            moved["at"] = at(Some(item));
            moved["left"]["state"] = by_look(|(_, _, snag, _)| match *snag {
                "snapped" => Some(stub(false)),
                "stuck" => Some(stub(true)),
                _ => None,
            });
            let leaves: Vec<&str> = LOOKS
                .iter()
                .filter(|(_, _, snag, _)| matches!(*snag, "snapped" | "stuck"))
                .map(|(code, ..)| *code)
                .collect();
            json!([{ "$when": "looks", "is": leaves, "then": moved }])
        });
    order_fact(
        &order.order,
        json!({ "snag-found": {
            "snag": new("snag"),
            "item": item.map(|item| item.item.clone()),
            "at": at(item),
            "what": by_look(|(_, _, snag, _)| Some(json!(snag))),
            "sits": by_look(|(_, _, _, sits)| sits.map(|sits| json!(sits))),
            "words": text("words"),
            "photos": files("photos"),
            "voice": file("voice"),
            "moves": moves.unwrap_or_else(|| json!([])),
        } }),
    )
}

/// One finger wide, and one step between two of them, in px.
const FINGER: f64 = 92.0;
const STEP: f64 = 112.0;
/// The picture's width on a phone.
const WIDTH: f64 = 356.0;
/// Places in a page are told in steps of so many px, by classes.
pub const GRID_PX: u16 = 4;

/// As far down as a picture goes.
pub const GRID_STEPS: u16 = 240;

fn grid(px: f64) -> u16 {
    (0..GRID_STEPS)
        .find(|steps| f64::from(steps * GRID_PX) >= px.round())
        .unwrap_or(GRID_STEPS)
}

/// The group as it stands, each piece a box to tick.
fn picture(order: &OrderView, item: &ItemView, shape: Option<&str>) -> Markup {
    let pieces = item.positions.len();
    let shape = shape_of(shape, pieces);
    let places = bolt_places(shape, pieces);
    let most = |pick: fn(&(f64, f64)) -> f64| places.iter().map(pick).fold(0.0, f64::max);
    let step = match shape {
        // As wide as the screen: neighbours on a slant need more than those beside each other.
        Shape::Circle => (WIDTH - FINGER) / most(|p| p.0).max(1.0),
        Shape::Rows | Shape::Rectangle => STEP,
    };
    let indent = ((WIDTH - FINGER - most(|p| p.0) * step) / 2.0).max(0.0);
    let tall = grid(most(|p| p.1) * step + FINGER);
    let length = |at: u16| item.lengths.iter().find(|known| known.at == at);
    let state = |at: u16| {
        let group = item.pieces.iter().find(|group| group.at.contains(&at));
        group.map(|group| group.text.clone()).unwrap_or_default()
    };
    html! {
        fieldset data-one-of=(say::tap_which_one()) {
            legend { (say::which_one()) }
            div class={ "bolts " (word(shape).0) " h" (tall) } {
                @for (position, (x, y)) in item.positions.iter().zip(&places) {
                    label class={ "x" (grid(indent + x * step)) " y" (grid(y * step)) } {
                        input type="checkbox" name=(format!("at-{position}")) value="yes";
                        span class="beside" { (position) }
                        @if let Some(known) = length(*position) { span { (known.length) } } @else { span { (state(*position)) } }
                    }
                }
            }
            @let others: Vec<Shape> = shapes(pieces).into_iter().filter(|other| *other != shape).collect();
            @for other in &others {
                @let (code, says) = word(*other);
                a class="row" href=(format!("/o/{}/snag?item={}&shape={code}", order.number, item.item)) {
                    span class="what" { (say::they_stand(says)) }
                    span class="strong" { (say::show_so()) }
                }
            }
        }
    }
}

/// A group too large for a picture.
fn list(item: &ItemView) -> Markup {
    html! {
        fieldset data-one-of=(say::tap_which_one()) {
            legend { (say::which_one()) }
            div class="chips" {
                @for position in &item.positions {
                    label { input type="checkbox" name=(format!("at-{position}")) value="yes"; (position) }
                }
            }
        }
    }
}
