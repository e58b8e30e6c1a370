//! A snag put right without a calculator: what was done is told. What is offered fits what it
//! is: a worn part is not drilled, and a thread is not a part that wore.

use crate::pages::vehicle::choices::{Choices, spoken};
use crate::pages::vehicle::pieces::change;
use crate::phrases::vehicle as say;
use crate::tap::{Look, button, chips, field, input, new, order_fact, text};
use maud::{Markup, html};
use serde_json::{Value, json};
use shop::record::v1::basics::StateForm;
use shop::record::v1::codes::{KindForm, SnagIsForm, SystemForm};
use shop::view::{ItemView, MendingView, OrderView};

/// What a snag is about, as far as it decides what can be done.
#[derive(Clone, Copy, PartialEq, Eq)]
enum About {
    Thread,
    /// A screw, clip or nut whose thread holds.
    Screw,
    /// Goes on new once it is torn.
    Seal,
    Part,
}

fn about(item: Option<&ItemView>, what: SnagIsForm) -> About {
    match (item.map(|item| item.kind), what) {
        (None | Some(KindForm::Fasteners), SnagIsForm::Snapped | SnagIsForm::Stripped) => {
            About::Thread
        }
        (Some(KindForm::Fasteners | KindForm::Clips), _)
        | (None, SnagIsForm::Stuck | SnagIsForm::Rounded) => About::Screw,
        (Some(KindForm::Seal | KindForm::Belt), _) => About::Seal,
        _ => About::Part,
    }
}

fn ways(about: About) -> &'static Choices {
    match about {
        About::Thread => &[
            ("as-before", say::out_all_as_before),
            ("thread-chased", say::thread_chased),
            ("wire-insert", say::wire_insert),
            ("bushing", say::solid_bushing),
            ("oversize", say::larger_thread),
            ("longer-bolt", say::longer_bolt),
            ("new-part", say::new_part),
            ("left-by-consent", say::left_by_consent),
            ("other", say::other),
        ],
        About::Screw => &[
            ("new-part", say::a_new_one_goes_in),
            ("as-before", say::sound_goes_back),
            ("left-by-consent", say::left_they_know),
            ("other", say::other),
        ],
        About::Seal => &[
            ("new-part", say::a_new_one_goes_in),
            ("left-by-consent", say::left_they_know),
        ],
        About::Part => &[
            ("new-part", say::a_new_one_goes_in),
            ("other", say::made_good_stays),
            ("left-by-consent", say::left_they_know),
        ],
    }
}

/// How a snag was put right, and what that leaves.
pub fn put_right(order: &OrderView, snag: &MendingView) -> Markup {
    let item = snag
        .item
        .as_ref()
        .and_then(|id| order.items.iter().find(|item| item.item == *id));
    let about = about(item, snag.what);
    let thread = about == About::Thread;
    let moves = item
        .filter(|item| item.kind == KindForm::Fasteners)
        .map_or_else(
            || json!([]),
            |item| json!([change(item, &snag.at, StateForm::Out, "original")]),
        );
    let fasteners = item.is_some_and(|item| item.kind == KindForm::Fasteners);
    let resolved = order_fact(
        &order.order,
        json!({ "snag-resolved": {
        "snag": snag.snag, "how": field("how"), "words": text("words"), "calculation": null, "moves": moves } }),
    );
    let mut commands = vec![resolved];
    commands.extend(difference(order, snag, thread));
    commands.extend(part_needed(order, snag, item));
    let both_sides = item.is_some_and(|item| {
        item.kind == KindForm::Part
            && matches!(item.system, SystemForm::Brakes | SystemForm::Suspension)
    });
    html! {
        p class="caution" { (if thread { say::thread_caution() } else { say::part_caution() }) @if both_sides { " " (say::both_sides_caution()) } }
        form class="narrow" {
            (chips("how", say::put_right_by(), &spoken(ways(about)), ways(about)[0].0))
            @if thread {
                (input("size", say::size_that_holds_now(), say::such_as_insert(), ""))
                (input("torque", say::torque_that_holds_now(), say::such_as_22_nm(), ""))
            }
            (input("words", say::in_a_few_words(), "", ""))
            div class="presses" {
                (button(Look::Confirm, say::snag_resolved(), if fasteners { say::it_is_then_out() } else { "" }, &commands, Some(&format!("/o/{}", order.number))))
            }
        }
    }
}

/// What stays different for good.
fn difference(order: &OrderView, snag: &MendingView, thread: bool) -> Option<Value> {
    let lasting: &[&str] = if thread {
        &[
            "wire-insert",
            "bushing",
            "oversize",
            "longer-bolt",
            "left-by-consent",
        ]
    } else {
        &["left-by-consent"]
    };
    let what = json!({ "$map": "how", "to": {
        "wire-insert": "insert", "bushing": "insert", "oversize": "larger", "longer-bolt": "longer" }, "else": "other" });
    let written = |name: &str| if thread { field(name) } else { Value::Null };
    Some(
        json!({ "$when": "how", "is": lasting, "then": order_fact(&order.order, json!({ "difference-noted": {
            "id": new("difference"), "item": snag.item, "at": snag.at, "what": what,
            "size": written("size"), "torque": written("torque"), "words": text("words") } })) }),
    )
}

/// A new one has to come from somewhere: it stands among the parts at once, unless it does
/// already.
fn part_needed(order: &OrderView, snag: &MendingView, item: Option<&ItemView>) -> Option<Value> {
    let item = item?;
    if order
        .parts
        .iter()
        .any(|part| part.item.as_ref() == Some(&item.item))
    {
        return None;
    }
    let line = match order.lines.as_slice() {
        [one] => json!(one.line),
        _ => Value::Null,
    };
    let label = match &item.size {
        Some(size) => format!("{} {size}", item.label),
        None => item.label.clone(),
    };
    let needed = order_fact(
        &order.order,
        json!({ "part-needed": {
            "part": new("part"), "line": line, "item": item.item, "label": crate::tap::words(&label),
            "number": null, "quantity": snag.at.len().max(1).to_string(), "cost": null, "price": null,
            "core": null, "has_old": true } }),
    );
    Some(json!({ "$when": "how", "is": ["new-part"], "then": needed }))
}
