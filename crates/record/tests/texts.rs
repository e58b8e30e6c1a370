//! Words on their way in: each is replaced by its commitment, wherever it stands.

#![allow(clippy::unwrap_used, reason = "a test fails by panicking")]

use proptest::prelude::*;
use record::form::Form;
use record::v1::facts::FactForm;
use record::{BadText, Private, canonical, commit, take_texts};
use repair::Words;
use serde_json::{Map, Value, json};

/// A stand-in for a hash: here only who is given what matters.
fn hash(parts: &[&[u8]]) -> [u8; 32] {
    let mut out = [0x11_u8; 32];
    for (nth, byte) in parts.concat().into_iter().enumerate() {
        let at = (nth + usize::from(byte)) % 32;
        out[at] = out[at].wrapping_mul(31).wrapping_add(byte);
    }
    out
}

fn take(value: &mut Value) -> Result<Vec<Private>, BadText> {
    take_texts(value, &hash)
}

const SALT: &str = "0102030405060708090a0b0c0d0e0f101112131415161718191a1b1c1d1e1f20";

fn text(words: &str) -> Value {
    json!({ "text": words, "salt": SALT })
}

#[test]
fn a_text_becomes_its_commitment() {
    let mut sent = text("It squeals");
    let taken = take(&mut sent).unwrap();
    let salt = Words::from_hex(SALT).unwrap().0;
    assert_eq!(sent, json!(commit(&hash, &salt, b"It squeals").hex()));
    assert_eq!(
        taken,
        [Private {
            words: commit(&hash, &salt, b"It squeals"),
            salt,
            media: "text/plain".to_owned(),
            content: b"It squeals".to_vec(),
        }]
    );
}

#[test]
fn texts_are_found_at_any_depth_and_in_lists() {
    let mut sent = json!({ "fact": { "declined": { "deep": [[text("a")], { "x": text("b") }], "words": text("c") } }, "who": "ana" });
    let taken = take(&mut sent).unwrap();
    let mut contents: Vec<_> = taken.iter().map(|p| p.content.clone()).collect();
    contents.sort();
    assert_eq!(contents, [b"a", b"b", b"c"]);
    assert!(!sent.to_string().contains("salt"), "{sent}");
    assert_eq!(sent["who"], "ana");
}

#[test]
fn a_file_becomes_its_commitment_with_its_media_type() {
    let mut sent = json!({ "photo": { "file": "aGVsbG8=", "media": "image/jpeg", "salt": SALT } });
    let taken = take(&mut sent).unwrap();
    assert_eq!(taken[0].content, b"hello");
    assert_eq!(taken[0].media, "image/jpeg");
    assert_eq!(
        sent["photo"],
        json!({ "words": taken[0].words.hex(), "media": "image/jpeg" })
    );
}

/// `line-worded` says in a field `text` which text it means: that is no text itself.
#[test]
fn a_line_keeps_its_field_of_that_name() {
    let mut sent = json!({ "line-worded": { "line": "line-1", "text": "cause", "words": text("worn"), "after": [] } });
    let taken = take(&mut sent).unwrap();
    assert_eq!(taken.len(), 1);
    assert_eq!(sent["line-worded"]["text"], "cause");
    let form: FactForm = serde_json::from_value(sent).unwrap();
    assert!(
        matches!(form.read(), Ok(repair::Fact::LineWorded { words, .. }) if words == taken[0].words)
    );
}

#[test]
fn blanks_around_a_text_are_left_out() {
    let (mut one, mut other) = (text("  worn \n"), text("worn"));
    assert_eq!(take(&mut one).unwrap(), take(&mut other).unwrap());
    assert_eq!(one, other);
}

#[test]
fn bad_texts_say_where_they_stand() {
    let at = |inner: Value| json!({ "fact": { "paid": [0, inner] } });
    let short = &SALT[..62];
    let odd = SALT.replace('1', "g");
    let accent = "é".repeat(32);
    let rows = [
        (json!({ "text": "a" }), "salt must be 64 hexadecimal digits"),
        (json!({ "text": "a", "salt": short }), "salt must be"),
        (json!({ "text": "a", "salt": odd }), "salt must be"),
        (json!({ "text": "a", "salt": accent }), "salt must be"),
        (json!({ "text": "a", "salt": 7 }), "salt must be"),
        (text(""), "the text is empty"),
        (text(" \t\n"), "the text is empty"),
        (text(&"x".repeat(4_001)), "4001 bytes; at most 4000 fit"),
        (
            json!({ "file": "aGVsbG8=", "salt": SALT }),
            "media type beside it",
        ),
        (
            json!({ "file": "not base64!", "media": "image/png", "salt": SALT }),
            "base64",
        ),
        (
            json!({ "file": "", "media": "image/png", "salt": SALT }),
            "empty",
        ),
        (
            json!({ "file": "aGVsbG8=", "media": "image/png" }),
            "salt must be",
        ),
        (
            json!({ "file": "aGVsbG8=", "media": "image/png", "salt": short }),
            "salt must be",
        ),
    ];
    for (bad, what) in rows {
        let mut sent = at(bad.clone());
        let said = take(&mut sent).unwrap_err().to_string();
        assert!(said.starts_with("fact.paid[1]: "), "{bad} says {said}");
        assert!(said.contains(what), "{bad} says {said}");
    }
}

/// Any JSON, shallow.
fn json_value() -> impl Strategy<Value = Value> {
    let leaf = prop_oneof![
        Just(Value::Null),
        any::<bool>().prop_map(Value::from),
        any::<i64>().prop_map(Value::from),
        ".{0,12}".prop_map(Value::from),
    ];
    leaf.prop_recursive(4, 24, 4, |inner| {
        prop_oneof![
            prop::collection::vec(inner.clone(), 0..4).prop_map(Value::Array),
            prop::collection::btree_map(
                prop_oneof![
                    "[a-z\"\\\\é]{0,4}",
                    Just("text".to_owned()),
                    Just("salt".to_owned()),
                    Just("file".to_owned())
                ],
                inner,
                0..4
            )
            .prop_map(|map| Value::Object(map.into_iter().collect())),
        ]
    })
}

/// The same value with the keys of every object put in backwards.
fn backwards(value: &Value) -> String {
    match value {
        Value::Object(map) => {
            let mut keys: Vec<_> = map.keys().collect();
            keys.sort();
            let inner: Vec<_> = keys
                .into_iter()
                .rev()
                .map(|key| format!(" {} : {} ", json!(key), backwards(&map[key])))
                .collect();
            format!("{{{}}}", inner.join(","))
        }
        Value::Array(list) => {
            format!(
                "[ {} ]",
                list.iter().map(backwards).collect::<Vec<_>>().join(" , ")
            )
        }
        other => other.to_string(),
    }
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(128))]

    #[test]
    fn the_sequence_of_keys_and_blanks_do_not_matter(value in json_value()) {
        let other: Value = serde_json::from_str(&backwards(&value)).unwrap();
        prop_assert_eq!(canonical(&other), canonical(&value));
        let again: Value = serde_json::from_str(&canonical(&value)).unwrap();
        prop_assert_eq!(again, value);
    }

    #[test]
    fn other_content_has_another_canonical_text(one in json_value(), other in json_value()) {
        prop_assert_eq!(one == other, canonical(&one) == canonical(&other));
    }

    #[test]
    fn taking_texts_never_panics_and_takes_them_all(mut value in json_value()) {
        if take(&mut value).is_ok() {
            // Nothing is left to take.
            let before = value.clone();
            prop_assert_eq!(take(&mut value).unwrap(), vec![]);
            prop_assert_eq!(value, before);
        }
    }
}

#[test]
fn keys_are_written_as_json_writes_them() {
    let value = Value::Object(Map::from_iter([
        ("b\"\\".to_owned(), json!(1)),
        ("a".to_owned(), json!([true, null])),
    ]));
    assert_eq!(canonical(&value), r#"{"a":[true,null],"b\"\\":1}"#);
}
