//! Does each crate keep to its row of the table?

use crate::table::{self, Level, MayUse, Room};
use crate::{built_with, metadata, reached_from, read};
use cargo_metadata::Metadata;
use std::collections::{BTreeMap, BTreeSet};

/// With any of these below it, however deep, a room could do input or output.
const NOT_IN_PURE_ROOMS: [&str; 8] = [
    "axum",
    "fantoccini",
    "hyper",
    "mio",
    "rusqlite",
    "socket2",
    "tokio",
    "tokio-postgres",
];

/// A crate of ours as cargo sees it.
#[derive(Clone, Debug, Default)]
struct Built {
    name: String,
    /// The crates of ours that it is built with.
    ours: BTreeSet<String>,
    /// Everything that it is built with, however deep.
    all: BTreeSet<String>,
}

#[test]
fn every_crate_keeps_to_its_row() {
    let rooms = table::rooms(&read("ARCHITECTURE.md")).expect("the table of rooms can be read");
    let breaches = breaches(&rooms, &built(&metadata()));
    assert!(breaches.is_empty(), "\n{}\n", breaches.join("\n"));
}

fn built(metadata: &Metadata) -> Vec<Built> {
    let ours = &metadata.workspace_members;
    let resolved = metadata
        .resolve
        .as_ref()
        .expect("dependencies were asked for");
    resolved
        .nodes
        .iter()
        .filter(|node| ours.contains(&node.id))
        .map(|node| Built {
            name: metadata[&node.id].name.to_string(),
            ours: built_with(node)
                .filter(|package| ours.contains(package))
                .map(|package| metadata[package].name.to_string())
                .collect(),
            all: reached_from(metadata, built_with(node))
                .into_iter()
                .map(|package| metadata[package].name.to_string())
                .collect(),
        })
        .collect()
}

/// Everything in which the crates differ from the table, in words.
fn breaches(rooms: &BTreeMap<String, Room>, crates: &[Built]) -> Vec<String> {
    let mut breaches = Vec::new();
    for built in crates {
        match rooms.get(&built.name) {
            Some(room) => breaches.extend(breaches_of(built, room, rooms)),
            None => breaches.push(format!("{} has no row in the table of rooms", built.name)),
        }
    }
    let has_crate = |name: &String| crates.iter().any(|built| built.name == *name);
    for name in rooms.keys().filter(|name| !has_crate(name)) {
        breaches.push(format!("the row {name} has no crate"));
    }
    breaches
}

fn breaches_of(built: &Built, room: &Room, rooms: &BTreeMap<String, Room>) -> Vec<String> {
    let name = &built.name;
    let mut breaches: Vec<String> = built
        .ours
        .iter()
        .filter(|used| !may_use(room, used, rooms))
        .map(|used| format!("{name} may not use {used}"))
        .collect();
    if room.is_pure() {
        breaches.extend(
            NOT_IN_PURE_ROOMS
                .into_iter()
                .filter(|forbidden| built.all.contains(*forbidden))
                .map(|forbidden| format!("{name} is pure, yet it is built with {forbidden}")),
        );
    }
    breaches
}

/// The row must allow it, and even a row allows only what stands lower, and a tool whatever its row names.
fn may_use(room: &Room, used: &str, rooms: &BTreeMap<String, Room>) -> bool {
    let is_allowed = match &room.may_use {
        MayUse::These(names) => names.contains(used),
        MayUse::AllBelow => true,
    };
    let is_below = match (room.level, rooms.get(used).map(|used| used.level)) {
        (Level::Product(level), Some(Level::Product(used))) => used < level,
        // A tool may look at any room that its row names; no room may look at a tool.
        (Level::Tools, Some(_)) => true,
        _ => false,
    };
    is_allowed && is_below
}

/// A made-up house that keeps to its table, to be broken in one place.
fn sound() -> (BTreeMap<String, Room>, Vec<Built>) {
    let rooms = table::rooms(
        "<!-- rooms -->\n| room | may use | level | holds |\n| --- | --- | --- | --- |\n\
         | measure | - | 1 | |\n| vin | - | 2 | |\n| price | measure | 2 | |\n\
         | shop | all below | 5 | |\n| driver | - | tools | |\n| chores | driver | tools | |\n\
         <!-- /rooms -->",
    )
    .expect("the made-up table can be read");
    let crates = [
        ("measure", "", "libm"),
        ("vin", "", ""),
        ("price", "measure", "measure libm"),
        ("shop", "price vin", "price vin measure libm tokio"),
        ("driver", "", "tokio"),
        ("chores", "driver", "driver tokio"),
    ]
    .map(|(name, ours, all)| Built {
        name: name.to_owned(),
        ours: ours.split_whitespace().map(str::to_owned).collect(),
        all: all.split_whitespace().map(str::to_owned).collect(),
    });
    (rooms, crates.into())
}

#[test]
fn a_sound_house_has_no_breach() {
    let (rooms, crates) = sound();
    assert_eq!(breaches(&rooms, &crates), Vec::<String>::new());
}

#[test]
fn each_forbidden_use_is_reported() {
    for (user, used, why) in [
        ("vin", "measure", "its row does not name it"),
        ("price", "shop", "it stands higher"),
        ("shop", "driver", "a product never uses a tool"),
        ("driver", "measure", "a tool never uses a product crate"),
    ] {
        let (rooms, mut crates) = sound();
        let built = crates.iter_mut().find(|built| built.name == user).unwrap();
        built.ours.insert(used.to_owned());
        assert_eq!(
            breaches(&rooms, &crates),
            [format!("{user} may not use {used}")],
            "{why}"
        );
    }
}

#[test]
fn a_row_that_names_a_higher_room_allows_nothing() {
    let (mut rooms, mut crates) = sound();
    rooms.get_mut("price").unwrap().may_use =
        MayUse::These(["measure", "shop"].map(str::to_owned).into());
    crates[2].ours.insert("shop".to_owned());
    assert_eq!(breaches(&rooms, &crates), ["price may not use shop"]);
}

#[test]
fn a_pure_room_built_with_a_runtime_is_reported() {
    let (rooms, mut crates) = sound();
    crates[1].all.insert("tokio".to_owned());
    assert_eq!(
        breaches(&rooms, &crates),
        ["vin is pure, yet it is built with tokio"]
    );
}

#[test]
fn a_crate_without_a_row_and_a_row_without_a_crate_are_reported() {
    let (mut rooms, crates) = sound();
    let row = rooms.remove("vin").unwrap();
    rooms.insert("belt".to_owned(), row);
    assert_eq!(
        breaches(&rooms, &crates),
        [
            "vin has no row in the table of rooms",
            "shop may not use vin",
            "the row belt has no crate"
        ]
    );
}

/// Reads cargo's own description, so that a change in its form cannot go unseen.
#[test]
fn what_cargo_says_is_read() {
    let crates = built(&metadata());
    let repair = crates.iter().find(|built| built.name == "repair").unwrap();
    assert!(repair.ours.contains("states"), "{repair:?}");
    assert!(repair.all.contains("thiserror"), "{repair:?}");
    assert!(
        !repair.all.contains("proptest"),
        "its tests' crates are not built in"
    );
}
