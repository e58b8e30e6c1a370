//! Photos and signatures by their commitment: shown where that is safe, saved where it is
//! not, gone once erased.

use crate::http::{Answer, Door};
use crate::shop_in_words::set_up;
use serde_json::json;
use shop::repair::Token;
use shop::view::order;
use shop::{Breadth, Service, Whom};
use std::sync::Arc;
use store::Memory;

/// `not really a picture`, which is enough for a door that does not look into it.
const CONTENT: &str = "bm90IHJlYWxseSBhIHBpY3R1cmU=";

/// Signs an order with a file of this type; the address the file has from then on.
fn signed_with(door: &Door, media: &str) -> String {
    let file = json!({ "file": CONTENT, "media": media, "salt": "7c".repeat(32) });
    door.send(
        "order:a",
        "fact",
        json!({ "consented": { "step": "repair", "payer": "customer", "lines": [], "agreed": true,
        "amount": "50", "tax_included": false, "way": "in-person", "person": null, "said": null,
        "number_called": null, "signature": file, "after": [] } }),
    );
    let view = door
        .service
        .look(&shop::Caller::program(), |snap| order(snap, 1001))
        .unwrap();
    let signature = view.consents.iter().find_map(|one| one.signature.clone());
    format!("/file/{}", signature.unwrap())
}

fn an_order(door: &Door) {
    set_up(door);
    door.send(
        "customer:c",
        "customer_fact",
        json!({ "declared": { "texts": {} } }),
    );
    door.send(
        "vehicle:v",
        "vehicle_fact",
        json!({ "declared": { "texts": {}, "vin_read": "none-readable", "rust": null, "customer": "c" } }),
    );
    door.send(
        "order:a",
        "request",
        json!({ "open": { "vehicle": "v", "customer": "c" } }),
    );
}

fn assert_kept_privately(answer: &Answer) {
    assert_eq!(answer.header("x-content-type-options"), "nosniff");
    assert_eq!(answer.header("cache-control"), "private, no-cache");
}

#[test]
fn a_picture_is_shown_and_asked_for_again_each_time() {
    let door = Door::open();
    an_order(&door);
    let path = signed_with(&door, "image/png");
    let answer = door.get(&path);
    assert_eq!(answer.status, 200, "{answer:?}");
    assert_eq!(answer.body, "not really a picture");
    assert_eq!(answer.header("content-type"), "image/png");
    assert_eq!(answer.header("content-disposition"), "inline");
    assert_kept_privately(&answer);
    let tag = answer.header("etag");
    assert!(tag.len() > 60, "{tag}");
    let again = door.ask(
        "GET",
        &path,
        &[("Cookie", "who=ana"), ("If-None-Match", tag)],
        b"",
    );
    assert_eq!((again.status, again.body.as_str()), (304, ""));
}

#[test]
fn what_could_run_is_only_ever_saved() {
    for media in [
        "image/svg+xml",
        "text/html",
        "application/pdf",
        "IMAGE/PNG",
        "image/png, text/html",
    ] {
        let door = Door::open();
        an_order(&door);
        let answer = door.get(&signed_with(&door, media));
        assert_eq!(answer.status, 200, "{media}: {answer:?}");
        assert_eq!(answer.header("content-type"), "application/octet-stream");
        assert_eq!(answer.header("content-disposition"), "attachment");
        assert_kept_privately(&answer);
    }
}

#[test]
fn what_is_not_there_and_what_was_erased_are_told_apart() {
    let store = Arc::new(Memory::new());
    let door = Door::on(Arc::clone(&store) as Arc<dyn store::Store>);
    an_order(&door);
    let never = door.get(&format!("/file/{}", "0".repeat(64)));
    assert_eq!(never.status, 404);
    assert!(
        never.body.contains("There is no such file"),
        "{}",
        never.body
    );
    for path in ["/file/abc", "/file/", "/file/..%2f..%2fetc%2fpasswd"] {
        assert_eq!(door.get(path).status, 404, "{path}");
    }
    let path = signed_with(&door, "image/png");
    door.send(
        "order:a",
        "request",
        json!({ "void": { "words": { "text": "by mistake", "salt": "8d".repeat(32) } } }),
    );
    let why = Token::new("asked").unwrap();
    let whom = Whom::OfOrder(1001);
    shop::ask_to_erase(&door.service, &whom, Breadth::Person, "ana", &why).unwrap();
    assert_eq!(
        door.get(&path).status,
        200,
        "it can be called off for a day"
    );
    // Another program, a day later.
    let later = door.service.now() + jiff::SignedDuration::from_hours(24);
    let another = Service::open(store, "shop", Arc::new(move || later)).unwrap();
    assert_eq!(shop::erase_due(&another).unwrap().len(), 1);
    let gone = door.get(&path);
    assert_eq!(gone.status, 404);
    assert!(gone.body.contains("This file was erased"), "{}", gone.body);
}
