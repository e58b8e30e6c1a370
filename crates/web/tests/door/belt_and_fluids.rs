//! A belt's routing kept before it comes off, and a fluid's ticked steps, on an order.

use crate::http::Door;
use crate::stages::{declare, goes_on, opened, order, press, screen, work_by};
use serde_json::{Value, json};

const ROUTING: &str = "name-1=crank&x-1=0+mm&y-1=0+mm&name-2=alternator&x-2=200+mm&y-2=260+mm\
    &name-3=tensioner&x-3=60+mm&y-3=200+mm&side-3=back&name-4=coolant+pump&x-4=-150+mm&y-4=200+mm&belt=6PK1285";

fn texts(list: &Value) -> Vec<String> {
    let all = list.as_array().unwrap().iter();
    all.map(|one| one["text"].as_str().unwrap().to_owned())
        .collect()
}

fn item_named(door: &Door, label: &str) -> Value {
    let view = order(door);
    let items = view["items"].as_array().unwrap();
    let found = items.iter().find(|item| item["label"] == label);
    found
        .unwrap_or_else(|| panic!("no {label}: {items:?}"))
        .clone()
}

#[test]
fn how_a_belt_lay_is_asked_before_it_comes_off_and_shown_when_it_goes_back() {
    let door = opened();
    work_by(&door, "for=pulley");
    // The stage that takes the belt off offers it, once.
    let mut stages = 0;
    let to = loop {
        let stage = screen(&door, "/o/1001/stage");
        if stage.text.contains("Say how it lies") {
            break stage.link("Say how it lies before it comes off");
        }
        press(&door, &stage, "Out as shown", &[]);
        stages += 1;
        assert!(stages < 20, "no stage takes the belt off: {}", stage.text);
    };
    let asked = screen(&door, &to);
    assert!(
        asked.text.contains("Tap where the belt goes next"),
        "{}",
        asked.text
    );
    let kept = screen(&door, &format!("{to}&{ROUTING}"));
    assert!(
        kept.text
            .contains("crank, coolant pump, tensioner (back), alternator"),
        "{}",
        kept.text
    );
    press(&door, &kept, "It lies like this", &[]);
    let stage = screen(&door, "/o/1001/stage");
    assert!(!stage.text.contains("Say how it lies"), "{}", stage.text);
    loop {
        let stage = screen(&door, "/o/1001/stage");
        if stage.button("Out as shown").is_none() {
            press(&door, &stage, "Now the way back", &[]);
            break;
        }
        press(&door, &stage, "Out as shown", &[]);
    }
    // On the way back it stands beside the stage that puts it on, and where it is owed.
    let mut seen = false;
    for _ in 0..40 {
        let stage = screen(&door, "/o/1001/stage");
        seen |= stage
            .text
            .contains("Routed as found: crank, coolant pump, tensioner (back)");
        let Some(label) = goes_on(&stage) else { break };
        press(&door, &stage, label, &[]);
    }
    assert!(seen, "the routing stands beside no stage");
    let owed = texts(&order(&door)["debts"]);
    let asks = owed
        .iter()
        .filter(|text| text.contains("routed as found"))
        .count();
    assert_eq!(asks, 1, "start asks once: {owed:?}");
    let due = screen(&door, "/o/1001/due");
    assert!(due.text.contains("6PK1285"), "{}", due.text);
    let start = order(&door)["gates"][1].clone();
    assert!(start.to_string().contains("routed as found"), "{start}");
}

#[test]
fn what_is_missing_or_twice_in_a_routing_is_said_at_its_row() {
    let door = opened();
    let says = |query: &str, what: &str| {
        let page = screen(&door, &format!("/calc/belt/routing?{query}"));
        assert!(page.text.contains(what), "{query}: {}", page.text);
    };
    says(
        "name-1=crank&x-1=0&y-1=0",
        "Tap where the belt goes after the crank",
    );
    says(
        "x-1=0&y-1=0&x-2=0&y-2=300&name-2=idler&x-3=200&y-3=200&name-3=idler",
        "`idler` is there twice",
    );
    says("x-1=0&y-1=0&x-2=wide&y-2=300", "wide");
    // Two places that are one: nothing can run there, and that is said, not refused.
    says(
        "x-1=0&y-1=0&x-2=0&y-2=0&x-3=300&y-3=0",
        "Look again at the places",
    );
}

#[test]
fn ticked_steps_of_a_brake_fluid_close_what_the_order_owes_for_it_and_no_more() {
    let door = opened();
    declare(&door, "hose", ("hose", "brakes"), "brake hose", 1);
    declare(&door, "fluid", ("fluid", "brakes"), "brake fluid", 1);
    for (item, state) in [("hose", "off"), ("fluid", "low"), ("hose", "on")] {
        let after = item_seen(&door, item);
        let moves = json!([{ "item": item, "at": [1], "after": after,
            "left": { "state": state, "piece": "original" }, "container": null }]);
        door.send(
            "order:a",
            "fact",
            json!({ "moved": { "stage": null, "moves": moves } }),
        );
    }
    let owed = texts(&order(&door)["debts"]);
    let has = |owed: &[String], what: &str| owed.iter().any(|text| text.contains(what));
    assert!(has(&owed, "leed") && has(&owed, "edal"), "{owed:?}");
    let page = |ticks: &str| {
        screen(
            &door,
            &format!("/o/1001/calc/fluids/brake?of=fluid&{ticks}"),
        )
    };
    // A step done too early counts for nothing: the pedal without bleeding.
    let early = page("pedal-hard=yes");
    assert!(!early.text.contains("closes:"), "{}", early.text);
    let all = page(
        "circuits-named=yes&named=yes&filled=yes&bled=yes&pedal-hard=yes&pedal-twice=yes&level-seen=yes",
    );
    assert!(all.text.contains("closes: its level"), "{}", all.text);
    press(&door, &all, "Save with the order", &[]);
    let view = order(&door);
    let owed = texts(&view["debts"]);
    assert!(!has(&owed, "leed") && !has(&owed, "edal"), "{owed:?}");
    let fluid = item_named(&door, "brake fluid");
    assert_eq!(fluid["home"], true, "{fluid}");
    // Opened again, the boxes stand as they were saved.
    let again = door.get("/o/1001/calc/fluids/brake?of=fluid").body;
    assert!(
        again.contains(r#"name="bled" value="yes" checked"#),
        "{again}"
    );
}

fn item_seen(door: &Door, item: &str) -> Value {
    let view = order(door);
    let items = view["items"].as_array().unwrap();
    items.iter().find(|known| known["item"] == item).unwrap()["seen"].clone()
}

/// A litre and more that came out and was not poured in again holds the vehicle. The page of what
/// is owed says so too, and where it is told.
#[test]
fn what_holds_the_vehicle_beside_what_is_owed_stands_there_too() {
    let door = opened();
    declare(&door, "coolant", ("fluid", "cooling"), "coolant", 1);
    let held = |door: &Door| screen(door, "/o/1001/due").text.contains("Also in the way");
    assert!(!held(&door), "nothing came out yet");
    door.send(
        "order:a",
        "fact",
        json!({ "drained": { "item": "coolant", "amount": "5.5 L", "fate": "recycled", "temperature": null } }),
    );
    let due = screen(&door, "/o/1001/due");
    assert!(due.text.contains("Also in the way"), "{}", due.text);
    assert!(due.text.contains("5.5"), "{}", due.text);
    door.send(
        "order:a",
        "fact",
        json!({ "poured": { "item": "coolant", "amount": "5.5 L", "what": null, "temperature": null } }),
    );
    assert!(!held(&door), "{}", screen(&door, "/o/1001/due").text);
}
