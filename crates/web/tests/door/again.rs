//! What is shown to many is made once, and is never older than what was answered before it was
//! asked for.

use crate::http::Door;
use crate::shop_in_words::{an_order, set_up};
use serde_json::json;
use std::sync::atomic::{AtomicBool, Ordering};

fn read(door: &Door, path: &str, who: &str) -> String {
    let answer = door.ask("GET", path, &[("Cookie", &format!("who={who}"))], b"");
    assert_eq!(answer.status, 200, "{answer:?}");
    answer.body
}

#[test]
fn a_page_shows_what_was_answered_before_it_was_asked_for() {
    let door = Door::open();
    set_up(&door);
    an_order(&door, "a");
    let done = AtomicBool::new(false);
    let looks = std::thread::scope(|scope| {
        // Others who look at the same all the time.
        let look = || {
            let mut looks = 0_u64;
            while !done.load(Ordering::Relaxed) {
                read(&door, "/o/1001/story", "ana");
                read(&door, "/api/orders/1001", "ana");
                looks += 2;
            }
            looks
        };
        let lookers: Vec<_> = (0..4).map(|_| scope.spawn(look)).collect();
        for reading in 1_000..1_040 {
            let told = json!({ "odometer": { "reading": format!("{reading} km"), "at": "in" } });
            let answer = door.send("order:a", "fact", told);
            let position = answer.json()["position"].as_u64().unwrap();
            let page = read(&door, "/o/1001/story", "ana");
            assert!(page.contains(&format!("{reading} km")), "{reading}");
            assert!(
                page.contains(&format!("data-position=\"{position}\"")),
                "{page}"
            );
            let order = read(&door, "/api/orders/1001", "ana");
            assert!(order.contains(&format!("{reading} km")), "{reading}");
        }
        done.store(true, Ordering::Relaxed);
        let looks = lookers.into_iter().map(|one| one.join().unwrap());
        looks.sum::<u64>()
    });
    assert!(looks > 0);
}

#[test]
fn each_person_is_shown_a_page_of_their_own() {
    let door = Door::open();
    set_up(&door);
    an_order(&door, "a");
    let joined = json!({ "joined": { "person": "abe", "name": shop::Device::words("Abe Lind"), "roles": ["apprentice"] } });
    door.send("shop", "shop_fact", joined);
    for _ in 0..2 {
        for (who, name) in [("ana", "ana"), ("abe", "Abe")] {
            let page = read(&door, "/o/1001", who);
            assert!(page.contains(&format!("data-who=\"{who}\"")), "{page}");
            assert!(page.contains(name), "{page}");
        }
        let with_prices = read(&door, "/api/orders/1001", "ana");
        let without = read(&door, "/api/orders/1001", "abe");
        assert!(with_prices.contains("\"price\":{"), "{with_prices}");
        assert!(without.contains("\"price\":null"), "{without}");
    }
    // What a person may do is as it stands now.
    door.send(
        "shop",
        "shop_fact",
        json!({ "departed": { "person": "abe" } }),
    );
    let gone = door.ask("GET", "/o/1001", &[("Cookie", "who=abe")], b"");
    assert_eq!(gone.status, 303, "{gone:?}");
}

#[test]
fn a_long_story_comes_in_parts() {
    let door = Door::open();
    set_up(&door);
    an_order(&door, "a");
    let short = door.get("/api/orders/1001").json();
    assert_eq!(short["story_before"], json!(null));
    let before = short["story_length"].as_u64().unwrap();
    assert_eq!(before, short["story"].as_array().unwrap().len() as u64);
    for reading in 0..250 {
        let told = json!({ "odometer": { "reading": format!("{reading} km"), "at": "in" } });
        door.send("order:a", "fact", told);
    }
    let last = door.get("/api/orders/1001").json();
    assert_eq!(last["story_length"], before + 250);
    assert_eq!(last["story"].as_array().unwrap().len(), 200);
    let place = last["story_before"].as_u64().unwrap();
    assert_eq!(place, before + 50);
    let first = door.get(&format!("/api/orders/1001?before={place}")).json();
    assert_eq!(first["story"].as_array().unwrap().len() as u64, place);
    assert_eq!(first["story_before"], json!(null));
    assert_eq!(first["items"], last["items"]);
    let page = door.get("/o/1001/story").body;
    assert!(
        page.contains(&format!("/o/1001/story?before={place}")),
        "{page}"
    );
    let page = door.get(&format!("/o/1001/story?before={place}")).body;
    assert!(
        page.contains("To the newest") && !page.contains("?before="),
        "{page}"
    );
}
