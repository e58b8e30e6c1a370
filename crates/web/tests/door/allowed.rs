//! Who may open what: every route has a row in the shop's table of roles, and the page or
//! door does as the row says.

use crate::http::Door;
use crate::shop_in_words::set_up;
use serde_json::json;
use shop::Device;
use shop::repair::Role;
use shop::roles::{Act, who_may};
use std::collections::BTreeSet;

/// Where routes are written down.
const SOURCES: &[&str] = &[
    include_str!("../../src/lib.rs"),
    include_str!("../../src/pages/mod.rs"),
    include_str!("../../src/pages/bench/mod.rs"),
    include_str!("../../src/pages/desk/mod.rs"),
    include_str!("../../src/pages/maps/mod.rs"),
    include_str!("../../src/pages/people/mod.rs"),
    include_str!("../../src/pages/shop/mod.rs"),
    include_str!("../../src/pages/vehicle/mod.rs"),
];

/// Every route of the program, as its sources write them.
fn routes() -> BTreeSet<String> {
    let after_route = SOURCES
        .iter()
        .flat_map(|text| text.split(".route(").skip(1));
    let path = |rest: &str| rest.split('"').nth(1).map(str::to_owned);
    after_route.filter_map(path).collect()
}

fn needs_nobody(route: &str) -> bool {
    let nobody_yet = [
        "/who",
        "/who/{person}",
        "/setup",
        "/join",
        "/join/{code}",
        "/sign-in/{person}",
        "/sign-out",
        "/service-worker.js",
        "/manifest.webmanifest",
    ];
    nobody_yet.contains(&route) || route.starts_with("/assets/")
}

#[test]
fn every_route_has_a_row() {
    let all = routes();
    assert!(all.len() > 50, "{all:?}");
    for route in &all {
        let has_row = who_may(Act::See(route)).is_some();
        assert_ne!(has_row, needs_nobody(route), "{route}");
    }
}

/// An apprentice asks for everything; what the table keeps from them is not sent.
#[test]
fn each_role_is_sent_what_its_row_says() {
    let door = Door::open();
    set_up(&door);
    let people = [
        ("tess", "technician", Role::Technician),
        ("dora", "desk", Role::Desk),
        ("olaf", "owner", Role::Owner),
        ("abe", "apprentice", Role::Apprentice),
    ];
    for (person, role, _) in people {
        let joined = json!({ "joined": { "person": person, "name": Device::words(person), "roles": [role] } });
        door.send("shop", "shop_fact", joined);
    }
    for route in routes().iter().filter(|route| !needs_nobody(route)) {
        // An event stream never ends, and a command needs a body of its own.
        if ["/api/live", "/api/commands"].contains(&route.as_str()) {
            continue;
        }
        let path = route
            .replace("{number}", "1001")
            .replace("{gate}", "road")
            .replace(['{', '}'], "");
        for (person, _, role) in people {
            let cookie = format!("who={person}");
            let answer = door.ask("GET", &path, &[("Cookie", &cookie)], b"");
            let may = who_may(Act::See(route)).is_some_and(|who| who.contains(&role));
            let refused = answer.body.contains("his is for ");
            assert_eq!(refused, !may, "{person} at {path}: {}", answer.status);
            assert!(answer.status < 500, "{person} at {path}: {answer:?}");
            if refused {
                assert_eq!(answer.status, 422, "{person} at {path}");
            }
        }
    }
}

#[test]
fn an_apprentice_says_what_is_so_and_decides_nothing() {
    let door = Door::open();
    set_up(&door);
    door.send(
        "shop",
        "shop_fact",
        json!({ "joined": { "person": "abe", "name": Device::words("Abe"), "roles": ["apprentice"] } }),
    );
    let mut phone = Device::new("abe's phone", "abe");
    let mut say = |stream: &str, part: &str, content: serde_json::Value| {
        let now = "2026-11-25T08:00:00Z".parse().unwrap();
        door.post(
            phone
                .command(stream, now, part, content)
                .to_string()
                .as_bytes(),
        )
    };
    let walked = say("order:a", "fact", json!({ "walked": { "zone": "above" } }));
    assert_eq!(walked.status, 200, "{walked:?}");
    let priced = say("order:a", "request", json!({ "price": { "entries": [] } }));
    assert_eq!(priced.status, 422, "{priced:?}");
    assert!(
        priced.body.contains("technician, desk, owner"),
        "{priced:?}"
    );
    let kept = say(
        "shop",
        "shop_fact",
        json!({ "records-kept": { "years": 1 } }),
    );
    assert_eq!(kept.status, 422, "{kept:?}");
}
