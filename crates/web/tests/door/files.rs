//! Photos and signatures by their commitment: shown where that is safe, saved where it is
//! not, gone once erased.

use crate::http::{Answer, Door};
use crate::shop_in_words::set_up;
use serde_json::json;
use shop::Device;
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

/// A tenth of a second of silence: RIFF, its form, plain sound, one channel, 8000 times a second
/// one byte.
fn silence() -> Vec<u8> {
    let mut wav = b"RIFF\0\0\0\0WAVEfmt \x10\0\0\0".to_vec();
    wav.extend([1, 0, 1, 0, 0x40, 0x1F, 0, 0, 0x40, 0x1F, 0, 0, 1, 0, 8, 0]);
    wav.extend(b"data\x20\x03\0\0");
    // One step beside the middle of what a byte can say: as good as nothing to hear, and a letter.
    wav.extend([0x7F; 800]);
    wav
}

fn snag(voice: &serde_json::Value) -> serde_json::Value {
    json!({ "snag-found": { "snag": "g", "item": null, "at": [], "what": "other", "sits": null,
        "words": null, "photos": [], "voice": voice, "moves": [] } })
}

#[test]
fn a_recording_is_played_where_its_snag_stands_and_is_gone_once_erased() {
    let store = Arc::new(Memory::new());
    let door = Door::on(Arc::clone(&store) as Arc<dyn store::Store>);
    an_order(&door);
    let sent = door.send(
        "order:a",
        "fact",
        snag(&Device::file(&silence(), "audio/wav")),
    );
    let page = door.get("/o/1001/snag/g").body;
    let address = page.split("src=\"/file/").nth(1).unwrap();
    let path = format!("/file/{}", address.split('"').next().unwrap());
    assert!(page.contains("<audio"), "{page}");
    assert!(door.get("/o/1001/story").body.contains(&path));
    let answer = door.get(&path);
    assert_eq!(answer.header("content-type"), "audio/wav");
    assert_eq!(answer.header("content-disposition"), "inline");
    assert_eq!(answer.header("accept-ranges"), "bytes");
    assert_kept_privately(&answer);
    let cookie = ("Cookie", "who=ana");
    let part = door.ask("GET", &path, &[cookie, ("Range", "bytes=0-3")], b"");
    assert_eq!((part.status, part.body.as_str()), (206, "RIFF"));
    assert_eq!(part.header("content-range"), "bytes 0-3/844");
    let behind = door.ask("GET", &path, &[cookie, ("Range", "bytes=844-")], b"");
    assert_eq!(behind.status, 416);
    let other = [cookie, ("Range", "bytes=0-3"), ("If-Range", "\"another\"")];
    assert_eq!(door.ask("GET", &path, &other, b"").status, 200);

    // Taken back or not: what was said once still lies beside the record.
    let undo = json!({ "undo": { "command": sent.json()["command_id"], "part": null } });
    door.send("order:a", "fact", undo);
    let void = json!({ "void": { "words": Device::words("by mistake") } });
    door.send("order:a", "request", void);
    let why = Token::new("asked").unwrap();
    let whom = Whom::OfOrder(1001);
    shop::ask_to_erase(&door.service, &whom, Breadth::EveryWord, "ana", &why).unwrap();
    let later = door.service.now() + jiff::SignedDuration::from_hours(24);
    let another = Service::open(store, "shop", Arc::new(move || later)).unwrap();
    assert_eq!(shop::erase_due(&another).unwrap().len(), 1);
    assert_eq!(door.get(&path).status, 404);
}

#[test]
fn what_is_sent_as_a_recording_and_is_none_is_refused() {
    let door = Door::open();
    an_order(&door);
    let svg = b"<svg xmlns='http://www.w3.org/2000/svg'><script>alert(1)</script></svg>";
    for (name, voice) in [
        ("a drawing called sound", Device::file(svg, "audio/webm")),
        ("a drawing", Device::file(svg, "image/svg+xml")),
        ("a page", Device::file(b"<html>", "text/html")),
        (
            "sound under another name",
            Device::file(&silence(), "audio/mpeg"),
        ),
        (
            "sound under another sort",
            Device::file(&silence(), "audio/webm"),
        ),
        ("too long", Device::file(&vec![0; 3_000_000], "audio/wav")),
    ] {
        let sent = door.command("order:a", "fact", snag(&voice));
        let answer = door.post(sent.to_string().as_bytes());
        assert_eq!(answer.status, 400, "{name}: {answer:?}");
    }
    let none = door.get("/api/orders/1001").json();
    assert_eq!(none["snags"], json!([]));
}

#[test]
fn a_paper_is_no_file_for_who_is_shown_no_prices() {
    let door = Door::open();
    an_order(&door);
    door.send(
        "shop",
        "shop_fact",
        json!({ "joined": { "person": "abe", "name": Device::words("Abe"), "roles": ["apprentice"] } }),
    );
    let attached = |media: &str| {
        let file = Device::file(b"%PDF-1.7 a paper", media);
        let sent = door.command(
            "order:a",
            "fact",
            json!({ "attached": { "file": file, "item": null, "snag": null, "words": null } }),
        );
        assert_eq!(door.post(sent.to_string().as_bytes()).status, 200);
        let (store, log) = door.service.record();
        let rows = store.stream(log, "order:a", 0).unwrap();
        let body: serde_json::Value = serde_json::from_slice(&rows.last().unwrap().body).unwrap();
        format!("/file/{}", body["file"]["words"].as_str().unwrap())
    };
    let paper = attached("application/pdf");
    let photo = attached("image/png");
    let seen = |path: &str, who: &str| {
        let cookie = format!("who={who}");
        door.ask("GET", path, &[("Cookie", &cookie)], b"").status
    };
    assert_eq!((seen(&paper, "ana"), seen(&photo, "ana")), (200, 200));
    assert_eq!((seen(&paper, "abe"), seen(&photo, "abe")), (404, 200));
}
