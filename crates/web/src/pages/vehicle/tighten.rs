//! Torque: one tap a pattern after its last bolt, by passes, never across groups. Whoever
//! is called away says how many of a pass are done; the next one goes on from there.

use super::item_told::told_apart;
use super::joint::joint;
use super::pieces::{change, fits};
use crate::phrases::vehicle as say;
use crate::tap::{Look, button, order_fact};
use maud::{Markup, html};
use serde_json::{Value, json};
use shop::record::v1::basics::StateForm;
use shop::record::v1::codes::KindForm;
use shop::view::{ItemView, OrderView};

/// A group that is on and not all tight, and the pass that comes next.
struct Next<'a> {
    item: &'a ItemView,
    /// Those the pass has not reached, in the sequence of tightening.
    left: Vec<u16>,
    /// Those that are in their place at all.
    there: usize,
    /// The passes done, by those that are left.
    passes: u8,
}

fn next(item: &ItemView) -> Option<Next<'_>> {
    let loose = item.pieces.iter().filter_map(|group| match group.state {
        Some(StateForm::Loose { passes }) => Some((passes, &group.at)),
        _ => None,
    });
    let loose: Vec<_> = loose.collect();
    let passes = loose.iter().map(|(passes, _)| *passes).min()?;
    let left: Vec<u16> = loose
        .iter()
        .filter(|(done, _)| *done == passes)
        .flat_map(|(_, at)| at.iter().copied())
        .collect();
    let tight = item.pieces.iter().filter_map(|group| match group.state {
        Some(StateForm::Tight) => Some(group.at.len()),
        _ => None,
    });
    let there = tight.sum::<usize>() + loose.iter().map(|(_, at)| at.len()).sum::<usize>();
    Some(Next {
        item,
        left: in_sequence(item, left),
        there,
        passes,
    })
}

fn in_sequence(item: &ItemView, mut at: Vec<u16>) -> Vec<u16> {
    let place = |position: &u16| item.sequence.iter().position(|known| known == position);
    at.sort_by_key(|position| (place(position).is_none(), place(position), *position));
    at
}

/// Everything that is on and not tight, the group somebody stopped in first.
pub fn tighten(order: &OrderView) -> Markup {
    let mut all: Vec<Next<'_>> = order
        .items
        .iter()
        .filter(|item| item.kind == KindForm::Fasteners)
        .filter_map(next)
        .collect();
    let left = order.stopped.first().map(|left| left.item.as_str());
    all.sort_by_key(|next| left != Some(next.item.item.as_str()));
    html! {
        @if !all.is_empty() {
            h2 { (say::tighten()) }
            @for next in &all { (group(order, next)) }
        }
    }
}

fn group(order: &OrderView, next: &Next<'_>) -> Markup {
    let Next {
        item,
        left,
        there,
        passes,
    } = next;
    let total = item.passes.len().max(1);
    let nth = usize::from(*passes) + 1;
    let done = there - left.len();
    let stopped = order.stopped.iter().find(|known| known.item == item.item);
    let label = if total > 1 {
        say::pass_of_done(nth, total)
    } else {
        say::tight().to_owned()
    };
    let small = match (done, *there == item.positions.len()) {
        (0, true) => say::all_n(there),
        (0, false) => say::n_of(there, item.positions.len()),
        _ => say::the_last(left.len(), listed(left)),
    };
    html! {
        section id=(format!("tighten-{}", item.item)) {
            div class="spread gap" {
                span class="strong" { (item.label) }
                span class="soft" { @if done > 0 { (say::n_of(done, there)) } @else { (small) } }
            }
            @if let Some(stopped) = stopped { p class="wait" { (say::stopped_here()) (stopped.doing) ", " (stopped.by) ", " (stopped.at) } }
            p class="soft" { (fits(item)) }
            (told_apart(order, item))
            @if let Some(torque) = item.passes.get(usize::from(*passes)) { p class="fact" { (torque) } }
            @else {
                p class="soft" { (say::no_torque_known_here()) }
                a class="row" href=(format!("/o/{}/item/{}", order.number, item.item)) { span class="what strong" { (say::say_its_torque()) } }
            }
            @if !item.sequence.is_empty() && left.len() > 1 { p { (say::in_this_sequence()) (listed(left)) } }
            (joint(item, None, left))
            form {
                div class="presses" { (button(Look::Plain, &label, &small, &[pass(order, next, left.len(), total)], None)) }
            }
            (how_many(order, next))
        }
    }
}

/// Part of a pass, told by how many are done, for a group that is on and not tight.
pub fn part_way(order: &OrderView, item: &ItemView) -> Markup {
    html! { @if let Some(next) = next(item) { (how_many(order, &next)) } }
}

fn how_many(order: &OrderView, next: &Next<'_>) -> Markup {
    let there = next.there;
    let done = there - next.left.len();
    let total = next.item.passes.len().max(1);
    html! {
        @if next.left.len() > 1 {
            details id=(format!("part-{}", next.item.item)) {
                summary class="row" { span { (say::called_away(there)) } }
                form { div class="presses thirds" {
                    @for count in 1..next.left.len() {
                        (button(Look::Plain, &(done + count).to_string(), &say::of_so_many(there), &[pass(order, next, count, total)], None))
                    }
                } }
            }
        }
    }
}

/// So many more of a pass: the first ones in the sequence of tightening.
fn pass(order: &OrderView, next: &Next<'_>, count: usize, total: usize) -> Value {
    let to = if usize::from(next.passes) + 1 >= total {
        StateForm::Tight
    } else {
        StateForm::Loose {
            passes: next.passes + 1,
        }
    };
    // What may not go back was put on new, and is still that when it is tight.
    let piece = if next.item.spent { "new" } else { "original" };
    let moves = [change(next.item, &next.left[..count], to, piece)];
    order_fact(
        &order.order,
        json!({ "moved": { "stage": null, "moves": moves } }),
    )
}

fn listed(at: &[u16]) -> String {
    at.iter()
        .map(ToString::to_string)
        .collect::<Vec<_>>()
        .join(", ")
}
