//! Back together: on as shown, tight pass by pass, fluids to their level.

use super::pieces::{MOST, change, fits};
use super::tighten::tighten;
use crate::State;
use crate::pages::{Shown, order_of, show};
use crate::phrases::vehicle as say;
use crate::tap::{Look, button, field, input, link, new, order_fact};
use axum::extract::{self, Path};
use axum::http::HeaderMap;
use axum::response::Response;
use maud::{Markup, html};
use serde_json::{Value, json};
use shop::record::form::Form;
use shop::record::v1::basics::StateForm;
use shop::record::v1::codes::{KindForm, SystemForm};
use shop::view::{ItemView, OrderView};

/// What an open item goes to next on its way home.
fn next_home(item: &ItemView, state: StateForm) -> Option<StateForm> {
    match (item.kind, state) {
        (KindForm::Fasteners, StateForm::Out) if is_tight_when_snug(item) => Some(StateForm::Tight),
        (KindForm::Fasteners, StateForm::Out) => Some(StateForm::Loose { passes: 0 }),
        (KindForm::Fasteners, StateForm::Cracked) => Some(StateForm::Tight),
        (KindForm::Fasteners, StateForm::Loose { .. } | StateForm::Stub { .. }) => None,
        (KindForm::Fluid | KindForm::Work, _) => None,
        (kind, _) => kind.read().ok().map(|kind| StateForm::of(&kind.home())),
    }
}

/// Screws of covers and ducts for which nobody states a torque: snug and checked is tight, so
/// putting them in and making them snug is one tap. Anything that carries more has a tap of
/// its own.
fn is_tight_when_snug(item: &ItemView) -> bool {
    item.passes.is_empty() && matches!(item.system, SystemForm::Body | SystemForm::Intake)
}

pub async fn back(
    extract::State(state): extract::State<State>,
    headers: HeaderMap,
    Path(number): Path<String>,
) -> Response {
    show(state, headers, move |visit| {
        let order = order_of(visit, &number)?;
        Ok(Shown::of(
            &order,
            say::back_together(),
            back_content(&order),
        ))
    })
    .await
}

/// The last things off go on first: up to eight rows, one tap.
fn back_content(order: &OrderView) -> Markup {
    let mut going: Vec<(&ItemView, Vec<u16>, StateForm)> = Vec::new();
    for item in order.items.iter().rev().filter(|item| !item.home) {
        for group in &item.pieces {
            let Some(state) = group.state else { continue };
            if let Some(to) = next_home(item, state)
                && to != state
            {
                going.push((item, group.at.clone(), to));
            }
        }
    }
    let rest = going.len().saturating_sub(MOST);
    going.truncate(MOST);
    let moves: Vec<Value> = going
        .iter()
        .enumerate()
        .map(|(nth, (item, at, to))| {
            let piece = if item.spent { "new" } else { "original" };
            crate::tap::when(&format!("row-{nth}"), change(item, at, *to, piece))
        })
        .collect();
    let command = order_fact(
        &order.order,
        json!({ "moved": { "stage": new("stage"), "moves": moves } }),
    );
    let pieces: usize = going.iter().map(|(_, at, _)| at.len()).sum();
    // Who comes to a group left in the middle goes on with that first.
    let first = order.stopped.first().is_some_and(|left| left.going_on);
    html! {
        h1 { (say::back_as_shown()) }
        @if first { (tighten(order)) h2 { (say::then_back_on()) } }
        @if going.is_empty() {
            p class="gap" { (say::nothing_left_to_put_on()) }
        } @else {
            p class="soft" { (say::last_off_goes_on_first()) @if rest > 0 { (say::then_more(rest)) } }
            form {
                @for (nth, (item, at, to)) in going.iter().enumerate() {
                    label class="row" {
                        input type="checkbox" name=(format!("row-{nth}")) value="yes" checked;
                        span class="what" {
                            span class="strong line" { (item.label) }
                            span class="soft line" {
                                (goes(*to, item))
                                @let fits = fits(item);
                                @if !fits.is_empty() { " · " (fits) }
                                @if item.spent { (say::comma_a_new_one()) }
                                @if let Some(container) = &item.container { (say::from_the_tray()) (container) }
                            }
                        }
                        span class="beside number" { (at.len()) }
                    }
                }
                div class="presses low" {
                    (button(Look::Confirm, say::on_as_shown(), &say::pieces(pieces), &[command], None))
                }
            }
        }
        (super::open::count_by_photo(order))
        @if !first { (tighten(order)) }
        (fill(order))
        div class="presses" { (link(Look::Plain, say::still_open(), &open_words(order), &format!("/o/{}/open", order.number))) }
    }
}

fn goes(to: StateForm, item: &ItemView) -> String {
    match to {
        StateForm::Loose { .. } => say::on_not_tight_yet().to_owned(),
        StateForm::Tight => say::on_and_snug().to_owned(),
        StateForm::Outside => say::out_of_the_vehicle().to_owned(),
        other => item
            .kind
            .read()
            .ok()
            .zip(other.read().ok())
            .map_or_else(String::new, |(kind, state)| {
                shop::say::state(kind, state).to_owned()
            }),
    }
}

/// Fluids close on their level.
fn fill(order: &OrderView) -> Markup {
    let low: Vec<_> = order
        .items
        .iter()
        .filter(|item| item.kind == KindForm::Fluid && !item.home)
        .collect();
    html! {
        @if !low.is_empty() {
            h2 { (say::fill()) }
            @for item in low {
                form class="narrow" {
                    p class="strong gap" { (item.label) }
                    @for line in order.open_items.iter().filter(|open| open.item == item.item) { p class="soft" { (line.text) } }
                    (input("amount", say::poured_in(), say::with_its_unit(), ""))
                    @let pour = crate::tap::when("amount", order_fact(&order.order, json!({ "poured": { "item": item.item, "amount": field("amount"), "what": null, "temperature": null } })));
                    @let level = order_fact(&order.order, json!({ "moved": { "stage": null, "moves": [change(item, &item.positions, StateForm::AtLevel, "original")] } }));
                    div class="presses two" {
                        (button(Look::Plain, say::filled_to_its_level(), "", &[pour.clone(), level], None))
                        (button(Look::Plain, say::poured(), say::not_at_level(), &[pour], None))
                    }
                }
            }
        }
    }
}

fn open_words(order: &OrderView) -> String {
    let inside = order.open_items.iter().filter(|open| open.inside).count();
    say::off_and_inside(order.open_items.len() - inside, inside)
}
