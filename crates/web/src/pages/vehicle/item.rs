//! One item: where it stands, the exceptions, what went wrong with it.

use super::choices::{KINDS, SYSTEMS, ZONES, same, spoken};
use super::coolant::{is_coolant, overview};
use super::item_told::{about, told_apart};
use super::pieces::{change, mark, where_it_stands};
use super::snag_found::found;
use crate::State;
use crate::pages::{Shown, Visit, order_of, show};
use crate::phrases::vehicle as say;
use crate::tap::{
    Look, button, chips, field, file, input, link, order_fact, required, text, thumbnails,
};
use axum::extract::{self, Path, Query};
use axum::http::HeaderMap;
use axum::response::Response;
use maud::{Markup, html};
use serde::Deserialize;
use serde_json::{Value, json};
use shop::Trouble;
use shop::record::form::Form;
use shop::record::v1::basics::StateForm;
use shop::record::v1::codes::KindForm;
use shop::view::{ItemView, OpenItemView, OrderView, StoppedView};

fn item_of<'a>(order: &'a OrderView, id: &str) -> Result<&'a ItemView, Trouble> {
    order
        .items
        .iter()
        .find(|item| item.item == id)
        .ok_or_else(|| Trouble::not_found(say::no_such_item()))
}

pub async fn item(
    extract::State(state): extract::State<State>,
    headers: HeaderMap,
    Path((number, id)): Path<(String, String)>,
) -> Response {
    show(state, headers, move |visit| {
        let order = order_of(visit, &number)?;
        if let Some(open) = order.open_items.iter().find(|open| open.item == id && open.kind.is_none()) {
            return Ok(Shown::of(&order, say::what_is_it(), what_is_it(&order.order, open)));
        }
        let item = item_of(&order, &id)?;
        let disputed = order.open_items.iter().find(|open| open.item == id && open.disputed);
        if is_coolant(item) {
            return coolant(visit, &order, item, disputed);
        }
        Ok(Shown::of(&order, &item.label, html! {
            h1 { (item.label) @if let Some(size) = &item.size { " " (size) } }
            div class="row" { (mark(item)) span class="what beside" { (where_it_stands(item)) } @if item.safety { span class="strong" { (say::safety()) } } }
            @if let Some(open) = disputed { p class="alarm" { (open.text) } }
            (told_apart(&order, item))
            @if let Some(left) = order.stopped.iter().find(|left| left.item == item.item) { (the_rest(&order, item, left)) }
            div class="columns" {
                div { (moves(&order, item)) }
                div { (super::fastener_facts::facts(visit, item)?) (crate::pages::bench::of_order::of_item(visit, &order, item)?) (photos(&order, item)) (about(visit, &order, item)?) }
            }
            div class="presses low" {
                (link(Look::Plain, say::something_wrong_with_it(), say::snapped_stripped_torn_worn(), &format!("/o/{}/snag?item={}", order.number, item.item)))
            }
        }))
    })
    .await
}

/// Coolant has steps of its own, each a screen.
fn coolant(
    visit: &Visit<'_>,
    order: &OrderView,
    item: &ItemView,
    disputed: Option<&OpenItemView>,
) -> Result<Shown, Trouble> {
    let coolant = shop::coolant::of_order(visit.snap, order.number, &item.item)?;
    Ok(Shown::of(
        order,
        &item.label,
        html! {
            (overview(order, item, &coolant))
            @if let Some(open) = disputed { p class="alarm" { (open.text) } }
            div class="columns" {
                details id="now" open[disputed.is_some()] {
                    summary class="row" { span class="strong" { (say::say_where_it_stands()) } }
                    (moves(order, item))
                }
                div { (photos(order, item)) (about(visit, order, item)?) }
            }
            div class="presses low" {
                (link(Look::Plain, say::something_wrong_with_it(), say::leaking_wrong_colour_rust(), &format!("/o/{}/snag?item={}", order.number, item.item)))
            }
        },
    ))
}

/// Photos of it, and one more.
fn photos(order: &OrderView, item: &ItemView) -> Markup {
    let attached = order_fact(
        &order.order,
        json!({ "attached": { "file": file("photo"), "item": item.item, "snag": null, "words": text("words") } }),
    );
    html! {
        (thumbnails(&item.photos))
        details id="photo" {
            summary class="row" { span class="strong" { (say::photo_of_it()) } }
            form {
                label class="field" { span { (say::photo()) } input type="file" name="photo" accept="image/*" required; }
                (input("words", say::what_it_shows(), "", ""))
                div class="presses" { (button(Look::Plain, say::keep_the_photo(), "", &[attached], None)) }
            }
        }
    }
}

/// For a thing that was moved before anybody said what it is: another device may still
/// say so, or it is said here.
fn what_is_it(order: &str, open: &OpenItemView) -> Markup {
    let declared = order_fact(
        order,
        json!({ "declared": { "item": {
            "id": open.item, "kind": field("kind"), "system": { "$map": "system", "to": same(SYSTEMS), "else": "unknown" },
            "zone": field("zone"), "label": text("label"), "size": field("size"), "pieces": { "$pieces": "count" },
            "pattern": null, "spent": false, "may_miss": null,
            "put_in": { "$map": "kind", "to": { "put-in": "other" } }, "holds": null } } }),
    );
    html! {
        h1 { (say::what_is_it()) }
        p class="gap" { (open.text) }
        p class="soft gap" { (open.by) ", " (open.since) }
        form {
            (required("label", say::call_it(), say::such_as_tray_screws(), ""))
            (required("count", say::how_many_pieces(), "", "1"))
            (input("size", say::size(), say::such_as_m6(), ""))
            (chips("kind", say::what_it_is(), &spoken(KINDS), "part"))
            (chips("system", say::belongs_to(), &spoken(SYSTEMS), ""))
            (chips("zone", say::worked_on(), &spoken(ZONES), "unknown"))
            div class="presses" { (button(Look::Confirm, say::it_is_that(), "", &[declared], None)) }
        }
    }
}

/// A group left in the middle: the rest of it in one tap.
fn the_rest(order: &OrderView, item: &ItemView, left: &StoppedView) -> Markup {
    let moved = order_fact(
        &order.order,
        json!({ "moved": { "stage": null, "moves": [change(item, &left.rest, left.to, "original")] } }),
    );
    html! {
        p class="wait gap" { (say::stopped_here()) (left.group) ", " (left.doing) " · " (left.by) ", " (left.at) }
        @if !left.going_on {
            form { div class="presses" {
                (button(Look::Confirm, &say::the_rest_too(&left.doing), &say::positions(shop::say::positions(&left.rest)), &[moved], None))
            } }
        }
    }
}

/// The states an item of this kind can be told to be in, as buttons.
fn moves(order: &OrderView, item: &ItemView) -> Markup {
    let states: Vec<StateForm> = item
        .kind
        .read()
        .map(|kind| {
            kind.states()
                .iter()
                .filter(|state| !matches!(state, shop::repair::State::Stub { .. }))
                .map(StateForm::of)
                .collect()
        })
        .unwrap_or_default();
    let word = |state: &StateForm| {
        item.kind
            .read()
            .ok()
            .zip(state.read().ok())
            .map_or("", |(kind, state)| shop::say::state(kind, state))
    };
    let several = item.positions.len() > 1;
    let at: Vec<Value> = if several {
        item.positions
            .iter()
            .map(|position| json!({ "$when": format!("at-{position}"), "then": position }))
            .collect()
    } else {
        item.positions
            .iter()
            .map(|position| json!(position))
            .collect()
    };
    let disputed = order
        .open_items
        .iter()
        .any(|open| open.item == item.item && open.disputed);
    let fact = if disputed { "seen" } else { "moved" };
    let command = |state: &StateForm| {
        let mut moved = change(item, &[], *state, "original");
        moved["at"] = Value::from(at.clone());
        moved["left"]["piece"] = json!({ "$map": "piece", "to": { "new": "new", "substitute": "substitute" }, "else": "original" });
        moved["container"] = field("container");
        let content = if fact == "seen" {
            json!({ "seen": { "moves": [moved] } })
        } else {
            json!({ "moved": { "stage": null, "moves": [moved] } })
        };
        order_fact(&order.order, content)
    };
    html! {
        h2 { @if disputed { (say::look_and_say_which()) } @else { (say::it_is_now()) } }
        form {
            @if several {
                @for group in &item.pieces {
                    @for position in &group.at {
                        label class="row" {
                            input type="checkbox" name=(format!("at-{position}")) value="yes" checked;
                            span class="what" { span class="strong" { (position) } }
                            span class="soft" { (group.text) }
                        }
                    }
                }
            }
            @if item.kind != KindForm::Fluid && item.kind != KindForm::PutIn {
                (chips("piece", say::the_piece_is(), &[("original", say::piece_the_same()), ("new", say::piece_new()), ("substitute", say::piece_another_kind())], if item.spent { "new" } else { "original" }))
                (input("container", say::lies_in(), "", item.container.as_deref().unwrap_or("")))
            }
            div class="presses even" {
                @for state in &states {
                    (button(Look::Plain, &shop::say::capital(word(state)), "", &[command(state)], None))
                }
            }
        }
        @if item.kind == KindForm::Fluid && !is_coolant(item) { (levels(order, item)) }
        @if item.kind == KindForm::Belt && !item.home { (left_off(order, item)) }
    }
}

/// A start with the belt off, on purpose: whoever says so has seen that it is off.
fn left_off(order: &OrderView, item: &ItemView) -> Markup {
    let planned = order_fact(
        &order.order,
        json!({ "belt-left-off": { "item": item.item, "words": text("words"), "after": item.seen } }),
    );
    html! {
        details id="left-off" {
            summary class="row" { span class="strong" { (say::start_with_it_off()) } }
            p class="caution" { (say::nothing_it_drives_turns()) }
            form {
                (input("words", say::what_for(), say::such_as_to_hear(), ""))
                div class="presses" { (button(Look::Plain, say::start_without_is_planned(), "", &[planned], None)) }
            }
        }
    }
}

/// Litres and levels of a fluid.
fn levels(order: &OrderView, item: &ItemView) -> Markup {
    let fact = |content: Value| order_fact(&order.order, content);
    let seen = |level: &str, good: bool| {
        fact(
            json!({ "level-seen": { "item": item.item, "level": level, "good": good,
            "reading": field("reading"), "temperature": null, "after": item.seen } }),
        )
    };
    let amount = |kind: &str| {
        let mut content =
            json!({ "item": item.item, "amount": field("amount"), "temperature": null });
        if kind == "drained" {
            content["fate"] = json!("recycled");
        } else {
            content["what"] = text("what");
        }
        let mut named = serde_json::Map::new();
        named.insert(kind.to_owned(), content);
        fact(Value::Object(named))
    };
    html! {
        form {
            (required("amount", say::amount(), say::with_its_unit(), ""))
            (input("what", say::what_was_poured(), "", ""))
            div class="presses even" {
                (button(Look::Plain, say::poured_in(), "", &[amount("poured")], None))
                (button(Look::Plain, say::came_out(), "", &[amount("drained")], None))
            }
        }
        form {
            (input("reading", say::level_read(), say::such_as_4_mm_above(), ""))
            div class="presses even" {
                (button(Look::Plain, say::right_warm(), "", &[seen("warm", true)], None))
                (button(Look::Plain, say::right_cold(), say::after_heating_and_cooling(), &[seen("cold", true)], None))
                (button(Look::Plain, say::low_warm(), "", &[seen("warm", false)], None))
                (button(Look::Plain, say::low_cold(), "", &[seen("cold", false)], None))
            }
        }
    }
}

/// Which item, if one.
#[derive(Debug, Deserialize)]
pub struct About {
    item: Option<String>,
    shape: Option<String>,
}

pub async fn snag(
    extract::State(state): extract::State<State>,
    headers: HeaderMap,
    Path(number): Path<String>,
    Query(about): Query<About>,
) -> Response {
    show(state, headers, move |visit| {
        let order = order_of(visit, &number)?;
        let item = about
            .item
            .as_deref()
            .map(|id| item_of(&order, id))
            .transpose()?;
        Ok(Shown::of(
            &order,
            say::snag(),
            html! {
                h1 { (say::something_is_wrong()) }
                @if item.is_some() { (found(&order, item, about.shape.as_deref())) }
                @for snag in &order.snags { (open_snag(&order, snag)) }
                @if item.is_none() { (found(&order, None, None)) }
            },
        ))
    })
    .await
}

/// A snag that is not at its end, with the way there.
fn open_snag(order: &OrderView, snag: &shop::view::SnagView) -> Markup {
    html! {
        a class="row" href=(format!("/o/{}/snag/{}", order.number, snag.snag)) {
            span class="what no" { (snag.text) }
            span class="strong" { (say::put_it_right()) }
        }
    }
}
