//! Pieces of items: their marks, where they stand, and one move of them.

use crate::phrases::vehicle as say;
use maud::{Markup, html};
use serde_json::{Value, json};
use shop::record::v1::basics::StateForm;
use shop::record::v1::codes::KindForm;
use shop::view::{ItemView, MoveName, OrderView};

/// Rows a stage shows at most.
pub const MOST: usize = 8;

/// One move of a group of pieces, as a device sends it.
pub fn change(item: &ItemView, at: &[u16], state: StateForm, piece: &str) -> Value {
    json!({
        "item": item.item,
        "at": at,
        "after": item.seen,
        "left": { "state": state, "piece": piece },
        "container": null,
    })
}

/// The mark of where an item stands.
pub fn mark(item: &ItemView) -> Markup {
    let round = if matches!(item.kind, KindForm::Fasteners | KindForm::Clips) {
        "round"
    } else {
        ""
    };
    let loose = item
        .pieces
        .iter()
        .any(|group| matches!(group.state, Some(StateForm::Loose { .. })));
    let state = if item.home {
        "home"
    } else if item.kind == KindForm::PutIn {
        "inside"
    } else if loose {
        "half"
    } else {
        ""
    };
    html! { span class={ "mark " (round) " " (state) } {} }
}

/// Where an item's pieces stand, in a few words.
pub fn where_it_stands(item: &ItemView) -> String {
    let several = item.positions.len() > 1;
    item.pieces
        .iter()
        .map(|group| {
            if several {
                format!("{} {}", group.at.len(), group.text)
            } else {
                group.text.clone()
            }
        })
        .collect::<Vec<_>>()
        .join(", ")
}

/// What fits an item, as far as it is known: its size, its lengths, the wrench for it.
pub fn fits(item: &ItemView) -> String {
    let mut by_length: Vec<(&str, Vec<u16>)> = Vec::new();
    for piece in &item.lengths {
        match by_length
            .iter_mut()
            .find(|(known, _)| *known == piece.length)
        {
            Some((_, at)) => at.push(piece.at),
            None => by_length.push((&piece.length, vec![piece.at])),
        }
    }
    let all = by_length.len() == 1;
    by_length.sort_by_key(|(_, at)| std::cmp::Reverse(at.len()));
    let lengths = by_length.iter().enumerate().map(|(nth, (length, at))| {
        if all || nth == 0 {
            (*length).to_owned()
        } else {
            say::length_at(length, shop::say::positions(at))
        }
    });
    let lengths = lengths.collect::<Vec<_>>().join(", ");
    let wrench = item.wrench.as_ref().map(say::if_hex);
    [item.size.clone(), Some(lengths), wrench]
        .into_iter()
        .flatten()
        .filter(|part| !part.is_empty())
        .collect::<Vec<_>>()
        .join(" · ")
}

/// What a proof given now has seen: all that was disturbed.
pub fn disturbed_seen(order: &OrderView) -> Vec<MoveName> {
    order
        .items
        .iter()
        .filter(|item| item.disturbed)
        .flat_map(|item| item.seen.clone())
        .collect()
}
