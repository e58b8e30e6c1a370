//! What the doors say when the record, or a part of it, cannot be read.

use crate::between::{Asked, Between};
use crate::http::Door;
use crate::shop_in_words::{an_order, set_up};
use serde_json::json;
use shop::Device;
use std::sync::Arc;
use store::{Command, EngineError, Memory, NewEvent};

/// A row that a newer program wrote.
fn newer(stream: &str) -> Command {
    Command {
        log: "shop".to_owned(),
        command_id: Device::name(),
        digest: [7; 32],
        who: "ana".to_owned(),
        device: "another".to_owned(),
        device_seq: 1,
        happened_at: "2026-11-25T08:00:00Z".to_owned(),
        recorded_at: "2026-11-25T08:00:00Z".to_owned(),
        expected: [].into(),
        events: vec![NewEvent {
            stream: stream.to_owned(),
            kind: "weighed-up".to_owned(),
            version: 1,
            body: b"{}".to_vec(),
        }],
        private: vec![],
        erase: vec![],
    }
}

#[test]
fn a_fact_for_what_cannot_be_read_whole_is_kept_on_its_device_and_the_floor_says_so() {
    let door = Door::open();
    set_up(&door);
    an_order(&door, "a");
    door.service.record().0.append(newer("order:a")).unwrap();
    let reading = json!({ "odometer": { "reading": "1 km", "at": "in" } });
    let sent = door.command("order:a", "fact", reading.clone());
    let answer = door.post(sent.to_string().as_bytes());
    assert_eq!(answer.status, 503, "{answer:?}");
    assert_eq!(answer.json()["kind"], "waits");
    let floor = door.get("/");
    assert_eq!(floor.status, 200);
    assert!(
        floor.body.contains("can only be looked at"),
        "{}",
        floor.body
    );
    assert!(
        floor.body.contains("1 thing told about it waits"),
        "{}",
        floor.body
    );
    for page in ["/o/1001", "/o/1001/desk", "/o/1001/may"] {
        let page = door.get(page);
        assert_eq!(page.status, 200, "{page:?}");
        assert!(
            page.body.contains("This order can only be looked at"),
            "{}",
            page.body
        );
        assert!(page.body.contains("weighed-up"), "{}", page.body);
    }
    let verified = door.ask("POST", "/record/verify", &[("Cookie", "who=ana")], b"");
    assert!(
        verified.body.contains("cannot be read by this program"),
        "{}",
        verified.body
    );

    // Everything else goes on.
    an_order(&door, "b");
    let sent = door.command("order:b", "fact", reading);
    assert_eq!(door.post(sent.to_string().as_bytes()).status, 200);
}

#[test]
fn a_page_whose_words_cannot_be_read_is_a_fault() {
    let store = Between::new(Arc::new(Memory::new()));
    let door = Door::on(Arc::clone(&store) as Arc<dyn store::Store>);
    set_up(&door);
    an_order(&door, "a");
    // Nothing is at hand in a program that has just been started.
    let door = Door::on(Arc::clone(&store) as Arc<dyn store::Store>);
    for (error, status) in [
        (
            EngineError::Io {
                what: "bad sector".to_owned(),
            },
            500,
        ),
        (
            EngineError::Unreachable {
                what: "cut".to_owned(),
            },
            503,
        ),
    ] {
        store.act(move |asked| match asked {
            Asked::Private(_) => Err(error.clone()),
            _ => Ok(()),
        });
        for path in [
            "/",
            "/o/1001",
            "/o/1001/invoice",
            "/api/orders/1001",
            "/api/orders",
        ] {
            let answer = door.get(path);
            assert_eq!(answer.status, status, "{path}: {answer:?}");
            assert!(!answer.body.contains("(erased)"), "{path}: {answer:?}");
        }
        store.leave();
    }
    assert_eq!(door.get("/o/1001/invoice").status, 200);
}
