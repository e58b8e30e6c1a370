//! What is asked of a plan, as it stands in a page's address.

use shop::map::Map;
use shop::plan::MoveId;
use shop::planning::{Asked, places};
use shop::repair::{AimIs, ItemId};
use std::collections::BTreeSet;

/// What a plan's address says.
#[derive(Debug, Clone, Default)]
pub struct Query {
    /// The map.
    pub map: Option<String>,
    /// Whether more things to get at are being picked.
    pub pick: bool,
    /// Words to find an item by.
    pub find: String,
    pairs: Vec<(String, String)>,
}

impl Query {
    /// Reads the part of an address behind the question mark. Total: what is not known is
    /// passed over.
    pub fn read(text: &str) -> Self {
        let mut out = Self::default();
        for (key, value) in form_urlencoded::parse(text.as_bytes()).into_owned() {
            match key.as_str() {
                "map" => out.map = Some(value),
                "find" => out.find = value,
                "pick" => out.pick = true,
                _ => out.pairs.push((key, value)),
            }
        }
        out
    }

    /// What it asks for of this map; nothing, if it asks for nothing at all. What the
    /// map does not have is passed over.
    pub fn asked(&self, map: &Map) -> Option<Asked> {
        if self.pairs.is_empty() {
            return None;
        }
        let all = |key: &str| -> Vec<&String> {
            let named = self.pairs.iter().filter(|(known, _)| known == key);
            named.map(|(_, value)| value).collect()
        };
        let moves = |key: &str| -> BTreeSet<MoveId> {
            let known = |id: &&String| map.moves().any(|(_, made)| made.id == **id);
            all(key)
                .into_iter()
                .filter(known)
                .map(MoveId::new)
                .collect()
        };
        let aim = match all("aim").first().map(|aim| aim.as_str()) {
            Some("home") => AimIs::Home,
            Some("roll") => AimIs::Roll,
            _ => AimIs::Reach,
        };
        let targets = all("for").into_iter().map(ItemId::new);
        let known_places = places(map);
        Some(Asked {
            aim,
            targets: targets
                .filter(|item| map.items.contains_key(item))
                .collect(),
            without: moves("without"),
            also: moves("also"),
            places_taken: all("taken")
                .into_iter()
                .filter(|place| known_places.contains(*place))
                .cloned()
                .collect(),
            variants: all("with")
                .into_iter()
                .filter(|variant| map.variants.contains(*variant))
                .cloned()
                .collect(),
        })
    }
}

/// The address of the plan of an order that asks for this.
pub fn address(number: u64, map: &str, asked: &Asked) -> String {
    let mut out = form_urlencoded::Serializer::new(String::new());
    out.append_pair("map", map);
    out.append_pair(
        "aim",
        match asked.aim {
            AimIs::Reach => "reach",
            AimIs::Home => "home",
            AimIs::Roll => "roll",
        },
    );
    for item in &asked.targets {
        out.append_pair("for", item.as_str());
    }
    for id in &asked.without {
        out.append_pair("without", id.as_str());
    }
    for id in &asked.also {
        out.append_pair("also", id.as_str());
    }
    for place in &asked.places_taken {
        out.append_pair("taken", place);
    }
    for variant in &asked.variants {
        out.append_pair("with", variant);
    }
    format!("/o/{number}/plan?{}", out.finish())
}
