//! Each snag leads to what fits it: a whole screw is got out, a lost thread is repaired, a worn
//! part is renewed.

use crate::http::Door;
use crate::stages::{Screen, declare, opened, order, press, screen};

/// Notes a snag of an item's first piece by its page; the page it leads to.
fn noted(door: &Door, item: &str, looks: &str) -> Screen {
    let page = screen(door, &format!("/o/1001/snag?item={item}"));
    press(
        door,
        &page,
        "Note the snag",
        &[("looks", looks), ("at-1", "yes")],
    );
    newest(door)
}

/// The page of the snag that is not at its end.
fn newest(door: &Door) -> Screen {
    let order = order(door);
    let snags = order["snags"].as_array().unwrap();
    assert_eq!(snags.len(), 1, "{snags:?}");
    let snag = snags[0]["snag"].as_str().unwrap();
    screen(door, &format!("/o/1001/snag/{snag}"))
}

#[test]
fn a_rounded_head_is_gripped_and_not_drilled_for_an_insert() {
    let door = opened();
    declare(&door, "screws", ("fasteners", "cooling"), "cover bolts", 4);
    let page = noted(&door, "screws", "rounded");
    assert!(page.text.contains("six-point socket"), "{}", page.text);
    assert!(page.text.contains("a new one goes in"), "{}", page.text);
    for not_yet in ["Show repair options", "wire insert", "larger thread"] {
        assert!(!page.text.contains(not_yet), "{not_yet}: {}", page.text);
    }
    press(
        &door,
        &page,
        "Snag resolved",
        &[("words", "gripping socket")],
    );
    let order = order(&door);
    assert_eq!(order["snags"].as_array().unwrap().len(), 0);
    let part = &order["parts"][0];
    assert_eq!(
        (part["label"].as_str(), part["quantity"].as_str()),
        (Some("cover bolts"), Some("1"))
    );
}

#[test]
fn a_stuck_bolt_that_snaps_becomes_a_snapped_one() {
    let door = opened();
    declare(&door, "screws", ("fasteners", "fuel"), "rail bolts", 2);
    let page = noted(&door, "screws", "stuck");
    assert!(page.text.contains("fuel is near"), "{}", page.text);
    assert!(
        page.text.contains("tighten a little") || page.text.contains("Tighten a little"),
        "{}",
        page.text
    );
    press(&door, &page, "It snapped", &[("sits", "proud")]);
    let page = newest(&door);
    assert!(page.text.contains("snapped"), "{}", page.text);
    assert!(page.text.contains("Show repair options"), "{}", page.text);
}

#[test]
fn a_stuck_bolt_that_takes_its_thread_along_is_a_thread_to_repair() {
    let door = opened();
    declare(&door, "screws", ("fasteners", "cooling"), "cover bolts", 1);
    let page = noted(&door, "screws", "stuck");
    press(&door, &page, "The thread came out", &[]);
    let page = newest(&door);
    assert!(page.text.contains("stripped"), "{}", page.text);
    assert!(page.text.contains("Show repair options"), "{}", page.text);
}

#[test]
fn worn_pads_are_renewed_on_both_sides_and_never_drilled() {
    let door = opened();
    declare(&door, "pads", ("part", "brakes"), "brake pads", 1);
    let page = noted(&door, "pads", "worn");
    assert!(
        page.text.contains("both sides of the axle"),
        "{}",
        page.text
    );
    for never in ["insert", "thread", "drilling", "Size that holds"] {
        assert!(!page.text.contains(never), "{never}: {}", page.text);
    }
    press(&door, &page, "Snag resolved", &[]);
    let order = order(&door);
    assert_eq!(order["snags"].as_array().unwrap().len(), 0);
    assert_eq!(order["parts"][0]["label"], "brake pads");
}

#[test]
fn a_part_that_is_made_good_asks_for_no_new_one() {
    let door = opened();
    declare(&door, "bracket", ("part", "body"), "bracket", 1);
    let page = noted(&door, "bracket", "bent");
    press(
        &door,
        &page,
        "Snag resolved",
        &[("how", "other"), ("words", "straightened")],
    );
    let order = order(&door);
    assert_eq!(order["parts"].as_array().unwrap().len(), 0);
    assert_eq!(order["snags"].as_array().unwrap().len(), 0);
}

/// Which gates an order's account holds shut.
fn shut(door: &Door) -> Vec<String> {
    let order = order(door);
    let gates = order["gates"].as_array().unwrap().iter();
    gates
        .filter(|gate| gate["may"] == false)
        .map(|gate| gate["gate"].as_str().unwrap().to_owned())
        .collect()
}

#[test]
fn a_snag_in_words_alone_shuts_what_the_thing_itself_would() {
    let told = |what: &str, words: &str| {
        let door = opened();
        let page = screen(&door, "/o/1001/snag");
        press(
            &door,
            &page,
            "Note the snag",
            &[("looks", what), ("words", words)],
        );
        shut(&door)
    };
    assert_eq!(
        told("leaking", "brake hose front left"),
        ["roll", "road", "hand-over"]
    );
    assert_eq!(
        told("worn", "brake pads at the rear"),
        ["road", "hand-over"]
    );
    assert_eq!(told("torn", "cabin filter"), ["hand-over"]);
    assert_eq!(told("broken", "glurble"), ["road", "hand-over"]);
}
