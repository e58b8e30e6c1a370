//! Something goes wrong in a stage: with its one group at once, with one of several after a
//! tap on it.

use super::stage_rows::{Row, Tightening};
use crate::phrases::vehicle as say;
use crate::tap::{Look, button, link, order_fact};
use maud::{Markup, html};
use serde_json::Value;
use shop::repair::Kind;
use shop::view::OrderView;

/// One thing of a stage that something may be wrong with.
pub struct MaySnag<'a> {
    id: &'a str,
    label: &'a str,
    size: Option<&'a str>,
    pieces: usize,
    /// What tells the order what it is, if it does not know yet.
    described: Option<&'a Value>,
    fasteners: bool,
}

/// What moves in a stage.
pub fn of_rows<'a>(rows: &'a [Row<'_>]) -> Vec<MaySnag<'a>> {
    rows.iter()
        .filter(|row| !matches!(row.shown.kind, Kind::Work | Kind::PutIn))
        .map(|row| MaySnag {
            id: row.id(),
            label: &row.shown.label,
            size: row.shown.size.as_deref(),
            pieces: row.shown.at.len(),
            described: row.described(),
            fasteners: row.shown.kind == Kind::Fasteners,
        })
        .collect()
}

/// What is tightened.
pub fn of_loose<'a>(loose: &'a [Tightening<'_>]) -> Vec<MaySnag<'a>> {
    loose
        .iter()
        .map(|one| MaySnag {
            id: &one.item.item,
            label: &one.item.label,
            size: one.item.size.as_deref(),
            pieces: one.at.len(),
            described: None,
            fasteners: true,
        })
        .collect()
}

/// The one thing that is meant without asking: the only group, or the only thing.
fn only<'a, 'b>(all: &'a [MaySnag<'b>]) -> Option<&'a MaySnag<'b>> {
    let mut groups = all.iter().filter(|one| one.fasteners);
    match (groups.next(), groups.next(), all) {
        (Some(group), None, _) => Some(group),
        (None, _, [one]) => Some(one),
        _ => None,
    }
}

fn page_of(order: &OrderView, one: &MaySnag<'_>) -> String {
    format!("/o/{}/snag?item={}", order.number, one.id)
}

fn described(order: &OrderView, one: &MaySnag<'_>) -> Option<Value> {
    let described = one.described?;
    Some(order_fact(&order.order, described.clone()))
}

fn asked(order: &OrderView, all: &[MaySnag<'_>]) -> String {
    match all {
        [] => format!("/o/{}/snag", order.number),
        _ => format!("/o/{}/stage?snag=which", order.number),
    }
}

/// The way to the snag, as a press; its thing is described first, if nobody has yet.
pub fn press(order: &OrderView, all: &[MaySnag<'_>]) -> Markup {
    match only(all) {
        Some(one) => match described(order, one) {
            Some(command) => button(
                Look::Plain,
                say::snag(),
                "",
                &[command],
                Some(&page_of(order, one)),
            ),
            None => link(Look::Plain, say::snag(), "", &page_of(order, one)),
        },
        None => link(Look::Plain, say::snag(), "", &asked(order, all)),
    }
}

/// The same as a row.
pub fn row(order: &OrderView, all: &[MaySnag<'_>]) -> Markup {
    let to = match only(all) {
        Some(one) if one.described.is_none() => page_of(order, one),
        _ => asked(order, all),
    };
    html! { a class="row" href=(to) { span class="what strong" { (say::snag()) } } }
}

/// Which of several it is.
pub fn which(order: &OrderView, all: &[MaySnag<'_>]) -> Markup {
    html! {
        h1 { (say::what_is_it_with()) }
        form {
            @for one in all {
                @let name = html! {
                    span class="what" {
                        span class="strong" { (shop::say::capital(one.label)) @if let Some(size) = one.size { " " (size) } }
                    }
                    span class="beside number" { @if one.pieces > 1 { (one.pieces) } }
                };
                @match described(order, one) {
                    Some(command) => {
                        button class="row" type="submit" data-commands=(Value::from(vec![command])) data-next=(page_of(order, one)) { (name) }
                    }
                    None => { a class="row" href=(page_of(order, one)) { (name) } }
                }
            }
            a class="row" href=(format!("/o/{}/snag", order.number)) { span class="what strong" { (say::something_else()) } }
            div class="presses low" { (link(Look::Plain, say::back_to_the_stage(), "", &format!("/o/{}/stage", order.number))) }
        }
    }
}
