//! Who may ask, and what is said to those who ask badly. Nothing of it is a fault of the
//! program, and nothing of it is written down.

use crate::http::{Answer, Door};
use crate::shop_in_words::set_up;
use serde_json::{Value, json};

/// Refused in the words every refusal has.
fn assert_told(answer: &Answer, status: u16, what: &str) {
    assert_eq!(answer.status, status, "{what}: {answer:?}");
    assert!(
        answer
            .header("content-type")
            .starts_with("application/json"),
        "{answer:?}"
    );
    let told = answer.json();
    for field in ["kind", "what", "where", "mend"] {
        assert!(
            told[field].as_str().is_some_and(|text| !text.is_empty()),
            "{field} in {told}"
        );
    }
    assert!(
        told.to_string().contains(what),
        "{told} does not say {what}"
    );
}

#[test]
fn only_this_machine_is_answered_and_only_our_own_pages() {
    let door = Door::open();
    let own = format!("127.0.0.1:{}", door.port);
    let local = format!("localhost:{}", door.port);
    let origin = format!("http://{own}");
    let other_port = format!("http://127.0.0.1:{}", door.port ^ 1);
    let good: &[&[(&str, &str)]] = &[
        &[("Host", &own)],
        &[("Host", &local)],
        &[
            ("Host", &own),
            ("Origin", &origin),
            ("Sec-Fetch-Site", "same-origin"),
        ],
        &[("Host", &own), ("Sec-Fetch-Site", "none")],
    ];
    let bad: &[&[(&str, &str)]] = &[
        &[("Host", "evil.example")],
        &[("Host", "127.0.0.1")],
        &[("Host", "127.0.0.1.evil.example")],
        &[("Host", &own), ("Origin", "http://evil.example")],
        &[("Host", &own), ("Origin", "null")],
        &[("Host", &own), ("Origin", &other_port)],
        &[("Host", &own), ("Origin", "https://127.0.0.1")],
        &[("Host", &own), ("Sec-Fetch-Site", "cross-site")],
        &[("Host", &own), ("Sec-Fetch-Site", "same-site")],
        &[("Host", &own), ("Sec-Fetch-Site", "")],
    ];
    for path in ["/api/orders", "/setup", "/assets/app.js", "/nowhere"] {
        for headers in good {
            assert_ne!(
                door.ask("GET", path, headers, b"").status,
                403,
                "{path} {headers:?}"
            );
        }
        for headers in bad {
            assert_told(
                &door.ask("GET", path, headers, b""),
                403,
                "http://127.0.0.1",
            );
        }
    }
    // Live news and commands too.
    for (method, path) in [("GET", "/api/live"), ("POST", "/api/commands")] {
        let headers = [
            ("Host", own.as_str()),
            ("Origin", "http://evil.example"),
            ("Content-Type", "application/json"),
        ];
        assert_told(
            &door.ask(method, path, &headers, b"{}"),
            403,
            "evil.example",
        );
    }
    let no_host = door.raw(b"GET /api/orders HTTP/1.1\r\nConnection: close\r\n\r\n");
    assert!([400, 403].contains(&no_host.status), "{no_host:?}");
}

#[test]
fn only_json_is_taken() {
    let door = Door::open();
    set_up(&door);
    let fact = json!({ "departed": { "person": "ana" } });
    for media in [
        "",
        "text/plain",
        "application/x-www-form-urlencoded",
        "multipart/form-data; boundary=x",
        "application/jsonp",
        "json",
    ] {
        let body = door.command("shop", "shop_fact", fact.clone()).to_string();
        let headers: Vec<_> = [("Content-Type", media)]
            .into_iter()
            .filter(|(_, media)| !media.is_empty())
            .collect();
        assert_told(
            &door.ask("POST", "/api/commands", &headers, body.as_bytes()),
            400,
            "only JSON",
        );
    }
    let body = door.command("shop", "shop_fact", fact).to_string();
    let headers = [("Content-Type", "application/json; charset=utf-8")];
    assert_eq!(
        door.ask("POST", "/api/commands", &headers, body.as_bytes())
            .status,
        200
    );
}

#[test]
fn bad_bodies_are_told_what_is_bad() {
    let door = Door::open();
    set_up(&door);
    let before = door.get("/api/orders").body;
    let good = door.command(
        "order:a",
        "fact",
        json!({ "keys": { "step": "taken", "words": null } }),
    );
    let with = |key: &str, value: Value| {
        let mut sent = good.clone();
        sent[key] = value;
        sent.to_string().into_bytes()
    };
    let nested = format!("{}{}", "[".repeat(100_000), "]".repeat(100_000));
    let needs = format!("{}{}", "{\"all\":[".repeat(120), "]}".repeat(120));
    let deep = json!({ "adopt": { "map": "m", "version": 1, "needs": [], "work": [] } })
        .to_string()
        .replace(
            "\"needs\":[]",
            &format!("\"needs\":[{{\"item\":\"a\",\"at\":[],\"to\":\"on\",\"need\":{needs}}}]"),
        );
    let rows: Vec<(Vec<u8>, &str)> = vec![
        (b"".to_vec(), "no JSON"),
        (b"{".to_vec(), "no JSON"),
        (b"\xff\xfe".to_vec(), "no JSON"),
        (b"{\"a\":1}trailing".to_vec(), "no JSON"),
        (nested.into_bytes(), "no JSON"),
        (b"null".to_vec(), "the command"),
        (b"[]".to_vec(), "the command"),
        (b"{}".to_vec(), "missing field"),
        (with("unheard_of", json!(1)), "unknown field `unheard_of`"),
        (with("device_seq", json!("1")), "invalid type"),
        (with("device_seq", json!(1.5)), "invalid type"),
        (with("device_seq", json!(u64::MAX)), "device_seq"),
        (with("happened_at", json!("yesterday")), "is no time"),
        (
            with("happened_at", json!("2026-13-01T00:00:00Z")),
            "is no time",
        ),
        (with("command_id", json!("x".repeat(300))), "is no name"),
        (
            with("command_id", json!("x".repeat(3_000_000))),
            "is no name",
        ),
        (with("stream", json!("x".repeat(3_000_000))), "is no stream"),
        (
            with("fact", json!({ "y".repeat(3_000_000): {} })),
            "unknown variant",
        ),
        (with("stream", json!("order:a\u{0}")), "is no name"),
        (with("stream", json!("nowhere")), "is no stream"),
        (
            with(
                "fact",
                json!({ "keys": { "step": "taken", "words": null }, "paid": {} }),
            ),
            "the command",
        ),
        (with("fact", json!({ "fly": {} })), "unknown variant `fly`"),
        (
            with(
                "fact",
                json!({ "keys": { "step": "taken", "words": { "text": "x" } } }),
            ),
            "salt",
        ),
        (
            with(
                "fact",
                json!({ "keys": { "step": "taken", "words": { "text": "x".repeat(5_000), "salt": "00".repeat(32) } } }),
            ),
            "at most 4000",
        ),
        (
            with(
                "fact",
                json!({ "keys": { "step": "taken", "words": "00".repeat(32) } }),
            ),
            "never came",
        ),
        (
            with(
                "fact",
                json!({ "paid": { "payer": "customer", "amount": "1,5", "by": "cash", "deposit": false } }),
            ),
            "is no decimal",
        ),
        (
            with(
                "fact",
                json!({ "paid": { "payer": "customer", "amount": 1.5, "by": "cash", "deposit": false } }),
            ),
            "invalid type",
        ),
        (with("request", json!({ "charge": {} })), "exactly one"),
        (with("stream", json!("shop")), "does not take this"),
        (with("fact", Value::Null), "exactly one"),
        (
            good.to_string()
                .replace(
                    "\"fact\":{\"keys\":{\"step\":\"taken\",\"words\":null}}",
                    &format!("\"request\":{deep}"),
                )
                .into_bytes(),
            "no JSON",
        ),
    ];
    for (body, what) in rows {
        let told = door.post(&body);
        assert_told(&told, 400, what);
        assert!(told.body.len() < 8_000, "{} bytes", told.body.len());
    }
    assert_eq!(door.get("/api/orders").body, before);
}

#[test]
fn a_body_as_large_as_a_photo_is_taken_and_a_larger_one_is_not() {
    let door = Door::open();
    set_up(&door);
    let photo = |bytes: usize| {
        // Four letters of base64 hold three bytes.
        let file = "AAAA".repeat(bytes / 3);
        door.command(
            "order:a",
            "fact",
            json!({ "attached": { "file": { "file": file, "media": "image/jpeg",
            "salt": "5a".repeat(32) }, "item": null, "snag": null, "words": null } }),
        )
        .to_string()
    };
    let answer = door.post(photo(4_000_000).as_bytes());
    assert_eq!(answer.status, 200, "{answer:?}");
    assert_told(
        &door.post(photo(4_300_000).as_bytes()),
        400,
        "at most 4194304 fit",
    );
    assert_told(
        &door.post(photo(6_000_000).as_bytes()),
        413,
        "larger than 6 MiB",
    );
}

#[test]
fn bad_addresses_and_methods_are_told_so() {
    let door = Door::open();
    set_up(&door);
    for method in ["GET", "PUT", "DELETE", "PATCH"] {
        let answer = door.ask(method, "/api/commands", &[], b"");
        assert_told(&answer, 405, "/api/commands");
        assert_eq!(answer.header("allow"), "POST");
    }
    // Nothing says back what a browser sent (RFC 9110, 9.3.8: TRACE, from memory).
    let trace = door.ask("TRACE", "/", &[("Cookie", "who=ana; device=secret")], b"");
    assert_eq!(trace.status, 405, "{trace:?}");
    assert!(!trace.body.contains("secret"), "{trace:?}");
    assert_told(
        &door.ask("POST", "/api/orders", &[], b""),
        405,
        "/api/orders",
    );
    assert_told(&door.get("/api/orders?find=a&find=b"), 400, "/api/orders");
    // Whoever opened a page is told so on a page.
    let page = door.get("/find?q=a&q=b");
    assert_eq!(page.status, 400);
    assert!(
        page.header("content-type").starts_with("text/html"),
        "{page:?}"
    );
    assert!(page.body.contains("/find cannot be read"), "{}", page.body);
    let pressed = door.ask("DELETE", "/o/1001", &[], b"");
    assert_eq!((pressed.status, pressed.header("allow")), (405, "GET,HEAD"));
    assert!(pressed.body.contains("does not take DELETE"), "{pressed:?}");
    // However long it was, not all of it is said back.
    let long = "9".repeat(20_000);
    for path in [format!("/api/orders/{long}"), format!("/o/{long}")] {
        let told = door.get(&path);
        assert_eq!(told.status, 404);
        assert!(told.body.len() < 4_000, "{} bytes", told.body.len());
    }
    for number in [
        "0",
        "1",
        "abc",
        "-1",
        "1e3",
        "99999999999999999999999",
        "%F0%9F",
    ] {
        let answer = door.get(&format!("/api/orders/{number}"));
        assert!([400, 404].contains(&answer.status), "{number}: {answer:?}");
        assert_told(&answer, answer.status, "");
    }
}
