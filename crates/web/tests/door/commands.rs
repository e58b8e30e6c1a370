//! Commands through the door: what they answer, and who hears of them.

use crate::http::Door;
use crate::shop_in_words::{an_order, set_up};
use serde_json::json;

#[test]
fn a_repeat_gets_the_same_answer_and_another_content_does_not() {
    let door = Door::open();
    set_up(&door);
    let mut command = door.command(
        "order:a",
        "fact",
        json!({ "keys": { "step": "taken", "words": null } }),
    );
    let first = door.post(command.to_string().as_bytes());
    assert_eq!(first.status, 200);
    assert_eq!(door.post(command.to_string().as_bytes()).body, first.body);
    command["fact"]["keys"]["step"] = json!("given-back");
    let other = door.post(command.to_string().as_bytes());
    assert_eq!(
        (other.status, other.json()["kind"].as_str()),
        (409, Some("id-reused"))
    );
}

#[test]
fn a_refusal_names_every_reason_and_a_conflict_what_came_since() {
    let door = Door::open();
    set_up(&door);
    an_order(&door, "a");
    let hand_over = json!({ "hand-over": { "leaves": "drives-away", "ending": "repaired", "boxes": null, "signature": null, "signed_by": null } });
    let refused = door.post(
        door.command("order:a", "request", hand_over)
            .to_string()
            .as_bytes(),
    );
    assert_eq!(refused.status, 422, "{refused:?}");
    let reasons = refused.json()["reasons"].as_array().unwrap().len();
    assert!(reasons > 10, "{refused:?}");
    let gates = door.get("/api/orders/1001").json()["gates"].clone();
    let last = &gates[5];
    assert_eq!(
        (last["gate"].as_str(), last["may"].as_bool()),
        (Some("hand-over"), Some(false))
    );

    let mut stale = door.command("order:a", "request", json!({ "price": { "entries": [] } }));
    stale["expected"] = json!({ "order:a": 1 });
    let conflict = door.post(stale.to_string().as_bytes());
    assert_eq!(
        (conflict.status, conflict.json()["kind"].as_str()),
        (409, Some("conflict"))
    );
    assert!(conflict.json()["reasons"].as_array().unwrap().len() > 10);
}

#[test]
fn whoever_listens_hears_of_a_command() {
    let door = Door::open();
    set_up(&door);
    let mut news = door.news();
    let before = news.next().unwrap();
    let answer = door.send(
        "order:a",
        "fact",
        json!({ "keys": { "step": "taken", "words": null } }),
    );
    let position = answer.json()["position"].as_u64().unwrap();
    assert!(position > before);
    assert_eq!(news.next(), Some(position));
    // Somebody who starts to listen now hears at once where it stands.
    assert_eq!(door.news().next(), Some(position));
}
