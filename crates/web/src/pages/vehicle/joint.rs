//! The joint drawn beside the step that tightens it: its pieces, how they stand, in which sequence
//! they are turned, which are longer than the others.

use crate::phrases::vehicle as say;
use drawing::{Bolt, BoltStand, Bolts, bolts, svg};
use maud::{Markup, PreEscaped, html};
use shop::record::v1::basics::StateForm;
use shop::view::{ItemView, Shape, face};
use std::collections::BTreeMap;

/// A single piece needs no picture, and of more the picture would fill the screen.
const PIECES: std::ops::RangeInclusive<usize> = 2..=24;
/// As wide as half of a telephone's page and a little more.
const WIDTH: f64 = 220.0;

/// The joint of this item. `words` are the map's for the sequence; `left` are the pieces that are
/// to be turned now.
pub fn joint(item: &ItemView, words: Option<&str>, left: &[u16]) -> Markup {
    let pieces = item.positions.len();
    if !PIECES.contains(&pieces) {
        return html! {};
    }
    let face = face(pieces, words);
    let told: Vec<u16> = match item.sequence.is_empty() {
        false => item.sequence.clone(),
        true => by_count(&face.sequence, &item.positions),
    };
    let called = called_out(item);
    let drawn = Bolts {
        title: item.label.clone(),
        round: face.shape == Shape::Circle,
        bolts: item
            .positions
            .iter()
            .zip(&face.places)
            .map(|(&number, &(x, y))| Bolt {
                x,
                y,
                number,
                stands: stands(item, number),
                called: called.get(&number).cloned().unwrap_or_default(),
            })
            .collect(),
        sequence: told.into_iter().filter(|at| left.contains(at)).collect(),
    };
    html! {
        figure class="joint" {
            (PreEscaped(svg(&bolts(&drawn, WIDTH))))
            figcaption {
                @if let Some(size) = &item.size { span class="strong line" { (size) } }
                @if !item.passes.is_empty() { span class="line" { (item.passes.join(say::then_between())) } }
                @if !drawn.sequence.is_empty() { span class="line" { (say::begin_at_the_ring()) } }
                span class="soft line" { (say::drawn_by_count()) }
            }
        }
    }
}

/// A sequence of places, as the numbers that the pieces there have.
fn by_count(sequence: &[u16], positions: &[u16]) -> Vec<u16> {
    let number = |nth: &u16| positions.get(usize::from(*nth).checked_sub(1)?).copied();
    sequence.iter().filter_map(number).collect()
}

fn stands(item: &ItemView, number: u16) -> BoltStand {
    let group = item.pieces.iter().find(|group| group.at.contains(&number));
    match group.and_then(|group| group.state) {
        Some(StateForm::Tight) => BoltStand::Tight,
        Some(StateForm::Loose { .. } | StateForm::Cracked) => BoltStand::Loose,
        _ => BoltStand::Out,
    }
}

/// The lengths of those that are not as long as most.
fn called_out(item: &ItemView) -> BTreeMap<u16, String> {
    let mut by_length: BTreeMap<&str, Vec<u16>> = BTreeMap::new();
    for piece in &item.lengths {
        by_length.entry(&piece.length).or_default().push(piece.at);
    }
    let usual = by_length.values().map(Vec::len).max().unwrap_or(0);
    let unusual = by_length.iter().filter(|(_, at)| at.len() < usual);
    unusual
        .flat_map(|(length, at)| at.iter().map(|at| (*at, (*length).to_owned())))
        .collect()
}
