//! The names that a map's items, moves and places have in an order's record.

use map::Map;
use plan::MoveId;
use repair::{ItemId, Step, Token};
use sha2::{Digest, Sha256};

/// The name that an item of a map has in every order that works by it: the same on every
/// device, so that two phones that touch it speak of one thing.
///
/// A name in the record holds letters, digits and few signs; what does not fit is left
/// out, and a tail made from the whole name then keeps two such items apart.
///
/// ```
/// use shop::planning::in_order;
/// use shop::repair::ItemId;
/// assert_eq!(in_order(&ItemId::new("tray screws")).as_str(), "tray-screws");
/// assert_ne!(in_order(&ItemId::new("B+ nut")), in_order(&ItemId::new("B nut")));
/// ```
#[must_use]
pub fn in_order(item: &ItemId) -> ItemId {
    ItemId::new(plain(item.as_str()))
}

/// A place or variant of a map as a code.
#[must_use]
pub fn code(name: &str) -> Token {
    Token::new(&plain(name)).expect("letters, digits and hyphens, fewer than forty")
}

/// How long a plain name may grow before its tail.
const LONGEST: usize = 32;

fn plain(name: &str) -> String {
    let mut out = String::new();
    for c in name.chars() {
        if c.is_ascii_lowercase() || c.is_ascii_digit() {
            out.push(c);
        } else if !out.is_empty() && !out.ends_with('-') {
            out.push('-');
        }
    }
    let whole = out.replace('-', " ") == name && out.len() <= LONGEST;
    if whole && !out.is_empty() {
        return out;
    }
    out.truncate(LONGEST);
    let tail: String = Sha256::digest(name.as_bytes())
        .iter()
        .take(3)
        .map(|byte| format!("{byte:02x}"))
        .collect();
    format!("{}-{tail}", out.trim_matches('-'))
        .trim_start_matches('-')
        .to_owned()
}

/// A move of a map as a step in an order: which item comes to which state.
#[must_use]
pub fn step(map: &Map, id: &MoveId) -> Option<Step> {
    map.moves()
        .find(|(_, made)| made.id == id.as_str())
        .map(|(item, made)| Step {
            item: in_order(item),
            to: made.to,
        })
}

/// The move of a map that a step in an order stands for.
#[must_use]
pub fn move_of(map: &Map, step: &Step) -> Option<MoveId> {
    map.moves()
        .find(|(item, made)| made.to == step.to && in_order(item) == step.item)
        .map(|(_, made)| MoveId::new(&made.id))
}

/// The item of a map that has this name in an order.
#[must_use]
pub fn on_map<'a>(map: &'a Map, item: &ItemId) -> Option<&'a ItemId> {
    map.items.keys().find(|known| in_order(known) == *item)
}

#[cfg(test)]
mod tests {
    use super::*;
    use record::form::Form;
    use record::v1::basics::ItemIdForm;
    use std::collections::BTreeSet;

    #[test]
    fn every_name_can_be_stored_and_no_two_are_the_same() {
        let long = "the bolt behind the second heat shield above the gearbox";
        let names = [
            "belt",
            "B+ nut",
            "B nut",
            "b nut",
            "b-nut",
            "öl",
            "ol",
            "+",
            "%",
            "油",
            "a b",
            "a  b",
            " a b",
            long,
            &long[..50],
        ];
        let slugs: BTreeSet<ItemId> = names.map(|name| in_order(&ItemId::new(name))).into();
        assert_eq!(slugs.len(), names.len());
        for slug in slugs {
            let read = ItemIdForm(slug.as_str().to_owned()).read();
            assert_eq!(read, Ok(slug));
        }
        assert_eq!(code("wheel well").as_str(), "wheel-well");
    }
}
