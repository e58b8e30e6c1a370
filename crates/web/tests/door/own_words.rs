//! A shop's own words, and its owner's word on working alone.

use crate::http::Door;
use crate::stages::{declare, opened, order, press, screen};
use serde_json::json;
use shop::Device;

fn off(door: &Door, query: &str) -> crate::stages::Screen {
    screen(door, &format!("/o/1001/off?{query}"))
}

#[test]
fn a_word_that_is_told_once_is_known_from_then_on() {
    let door = opened();
    let asked = off(&door, "lines=glurbles");
    assert!(
        asked.text.contains("What do others call it?"),
        "{}",
        asked.text
    );
    let nor = off(&door, "lines=glurbles&as-0=wibbles");
    assert!(nor.text.contains("is not known either"), "{}", nor.text);
    let told = off(&door, "lines=glurbles&as-0=brake+pads");
    assert!(told.text.contains("means brake pads"), "{}", told.text);
    press(&door, &told, "Out as shown", &[]);
    let order = order(&door);
    let item = &order["items"][0];
    assert_eq!(
        (item["label"].as_str(), item["system"].as_str()),
        (Some("glurbles"), Some("brakes"))
    );
    assert_eq!(item["safety"], true);
    // The next one is known without asking.
    let again = off(&door, "lines=front+glurbles");
    assert!(
        !again.text.contains("What do others call it?"),
        "{}",
        again.text
    );
    assert!(again.text.contains("brakes"), "{}", again.text);
    // Forgotten, it is asked again.
    let shop = screen(&door, "/shop");
    press(&door, &shop, "Forget it", &[]);
    let again = off(&door, "lines=rear+glurbles");
    assert!(
        again.text.contains("What do others call it?"),
        "{}",
        again.text
    );
}

#[test]
fn a_word_of_the_safety_class_keeps_its_meaning() {
    let door = opened();
    let lax =
        json!({ "word-added": { "name": Device::words("brake pads"), "sort": "cabin-filter" } });
    let command = door.command("shop", "shop_fact", lax);
    let answer = door.post(command.to_string().as_bytes());
    assert_eq!(answer.status, 400, "{answer:?}");
    let nowhere =
        json!({ "word-added": { "name": Device::words("glurbles"), "sort": "no-such-sort" } });
    let command = door.command("shop", "shop_fact", nowhere);
    assert_eq!(door.post(command.to_string().as_bytes()).status, 400);
}

fn unchecked(door: &Door) -> bool {
    let order = order(door);
    let gates = order["gates"].as_array().unwrap();
    let all = gates
        .iter()
        .flat_map(|gate| gate["fit_to_go"].as_array().unwrap());
    all.into_iter()
        .any(|reason| reason["kind"] == "not-checked")
}

#[test]
fn walking_back_alone_counts_on_the_owners_written_word_only() {
    let door = opened();
    declare(&door, "bolts", ("fasteners", "brakes"), "caliper bolts", 1);
    let moved = |state: &str, after: &str| {
        let after: Vec<_> = (!after.is_empty())
            .then(|| json!({ "command": after, "nth": 0 }))
            .into_iter()
            .collect();
        let one = json!({ "item": "bolts", "at": [1], "after": after,
            "left": { "state": state, "piece": "original" }, "container": null });
        door.command(
            "order:a",
            "fact",
            json!({ "moved": { "stage": null, "moves": [one] } }),
        )
    };
    let out = moved("out", "");
    door.post(out.to_string().as_bytes());
    let tight = moved("tight", out["command_id"].as_str().unwrap());
    door.post(tight.to_string().as_bytes());
    assert!(unchecked(&door));
    let walk = || {
        let page = screen(&door, "/o/1001/second");
        press(&door, &page, "Walked back", &[("see-0", "yes")]);
    };
    walk();
    assert!(unchecked(&door), "nobody has allowed it");
    let shop = screen(&door, "/shop");
    press(
        &door,
        &shop,
        "Allow it",
        &[("words", "I work alone on Saturdays")],
    );
    walk();
    assert!(!unchecked(&door), "it is allowed, and he walked back");
}

#[test]
fn what_a_word_means_since_is_offered_for_what_is_off_and_never_taken_by_itself() {
    let door = opened();
    // By hand at the door, so that nobody was asked what it is.
    declare(&door, "thing", ("part", "unknown"), "glurble", 1);
    let page = screen(&door, "/o/1001");
    assert!(!page.text.contains("read otherwise"), "{}", page.text);
    let word = json!({ "word-added": { "name": Device::words("glurble"), "sort": "brake-pads" } });
    door.send("shop", "shop_fact", word);
    let owed = |door: &Door| order(door)["items"][0]["safety"].clone();
    let before = owed(&door);
    let page = screen(&door, "/o/1001");
    assert!(
        page.text.contains("1 thing is read otherwise by now"),
        "{}",
        page.text
    );
    assert_eq!(owed(&door), before);
    press(&door, &page, "Read them so", &[]);
    assert_eq!(owed(&door), true);
    let page = screen(&door, "/o/1001");
    assert!(!page.text.contains("read otherwise"), "{}", page.text);
}

/// The page of the gate *roll* with this much off.
fn rolling(items: &[(&str, (&str, &str), &str)]) -> (Door, crate::stages::Screen) {
    let door = opened();
    for (item, is, state) in items {
        let id = item.replace(' ', "-");
        declare(&door, &id, *is, item, 1);
        let moved = json!({ "item": id, "at": [1], "after": [],
            "left": { "state": state, "piece": "original" }, "container": null });
        door.send(
            "order:a",
            "fact",
            json!({ "moved": { "stage": null, "moves": [moved] } }),
        );
    }
    let page = screen(&door, "/o/1001/may/roll");
    (door, page)
}

#[test]
fn with_its_brakes_open_it_is_pushed_on_the_owners_word_and_still_may_not_roll() {
    let (door, page) = rolling(&[("brake hose", ("hose", "brakes"), "off")]);
    assert!(page.text.contains("Push it by hand"), "{}", page.text);
    assert!(page.text.contains("chocks"), "{}", page.text);
    press(
        &door,
        &page,
        "Yard",
        &[("words", "flat floor, Ben at the parking brake")],
    );
    let roll = order(&door)["gates"]
        .as_array()
        .unwrap()
        .iter()
        .find(|gate| gate["gate"] == "roll")
        .unwrap()
        .clone();
    assert_eq!(roll["may"], false);
    let story = screen(&door, "/o/1001/story");
    assert!(
        story.text.contains("Pushed into the yard by hand"),
        "{}",
        story.text
    );
}

#[test]
fn without_its_wheel_it_is_not_even_pushed() {
    let (_, page) = rolling(&[("wheel", ("part", "wheels"), "off")]);
    assert!(page.text.contains("Not even that"), "{}", page.text);
    let (_, page) = rolling(&[("track rod end", ("part", "steering"), "off")]);
    assert!(page.text.contains("Not even that"), "{}", page.text);
}

#[test]
fn the_same_list_a_second_time_is_asked_about() {
    let door = opened();
    let list = off(&door, "lines=4+cover+screws%0Acover");
    press(&door, &list, "Out as shown", &[]);
    let again = off(&door, "lines=4+cover+screws%0Acover");
    assert!(again.text.contains("the same ones?"), "{}", again.text);
    assert!(again.button("Out as shown").is_none(), "{}", again.text);
    // One thing more beside them is noted, they are not.
    let more = off(&door, "lines=cover%0Abracket");
    press(&door, &more, "Out as shown", &[]);
    let items = |order: &serde_json::Value| order["items"].as_array().unwrap().len();
    assert_eq!(items(&order(&door)), 3);
    // They are others.
    let others = screen(&door, &again.link("They are others"));
    press(&door, &others, "Out as shown", &[]);
    assert_eq!(items(&order(&door)), 5);
}
