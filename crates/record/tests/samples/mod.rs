//! A template of every kind that is stored or sent, and values grown from it.
//!
//! In a template a string that begins with `$` is a hole: `$id` a name, `$words` a
//! commitment, `$code:…` one of a list, and so on. A list holds the template of its
//! entries; `{"?": …}` may be null; `{"+": …}` was added later and may be left out;
//! `{"{}": [key, value]}` is a map. Everything else
//! stands for itself.

#![allow(dead_code, reason = "each test file uses its own part")]
#![allow(clippy::unwrap_used, reason = "a test fails by panicking")]

pub mod fixed;
pub mod templates;

use proptest::prelude::*;
use record::{AnyEvent, Stored, Stream, decode};
use serde_json::{Map, Value, json};

/// The kinds of a list of templates.
pub fn kinds(templates: &[(&'static str, Value)]) -> Vec<&'static str> {
    templates.iter().map(|(kind, _)| *kind).collect()
}

/// An event of this content, under the version that its content asks for.
pub fn decoded(stream: &Stream, kind: &str, content: &Value) -> (AnyEvent, u32) {
    let body = content.to_string().into_bytes();
    let read = |version| {
        let stored = Stored {
            kind: kind.to_owned(),
            version,
            body: body.clone(),
        };
        decode(stream, &stored).map(|event| (event, version))
    };
    read(1).or_else(|_| read(2)).or_else(|_| read(3)).unwrap()
}

/// A template grown, under its kind.
pub fn tagged(kind: &str, template: &Value) -> BoxedStrategy<Value> {
    let kind = kind.to_owned();
    grown(template)
        .prop_map(move |content| Value::Object(Map::from_iter([(kind.clone(), content)])))
        .boxed()
}

/// Values grown from a template.
pub fn grown(template: &Value) -> BoxedStrategy<Value> {
    match template {
        Value::String(hole) if hole.starts_with('$') => leaf(hole),
        Value::Array(entry) => prop::collection::vec(grown(&entry[0]), 0..3)
            .prop_map(Value::Array)
            .boxed(),
        Value::Object(fields) => object(fields),
        other => Just(other.clone()).boxed(),
    }
}

fn object(fields: &Map<String, Value>) -> BoxedStrategy<Value> {
    if let Some(inner) = fields.get("?") {
        return prop_oneof![Just(Value::Null), grown(inner)].boxed();
    }
    if let Some(pair) = fields.get("{}") {
        let entry = (leaf(pair[0].as_str().unwrap()), grown(&pair[1]));
        return prop::collection::vec(entry, 0..3)
            .prop_map(|entries| {
                Value::Object(
                    entries
                        .into_iter()
                        .map(|(key, value)| (key.as_str().unwrap().to_owned(), value))
                        .collect(),
                )
            })
            .boxed();
    }
    fields
        .iter()
        .fold(Just(Map::new()).boxed(), |grown_so_far, (key, inner)| {
            let key = key.clone();
            let there = match inner.get("+") {
                Some(added) => prop::option::of(grown(added).prop_filter(
                    "what says nothing is left out",
                    |value| {
                        !matches!(value, Value::Array(list) if list.is_empty())
                            && !matches!(value, Value::Object(map) if map.is_empty())
                            && *value != ""
                            && *value != false
                    },
                ))
                .boxed(),
                None => grown(inner).prop_map(Some).boxed(),
            };
            (grown_so_far, there)
                .prop_map(move |(mut map, value)| {
                    map.extend(value.map(|value| (key.clone(), value)));
                    map
                })
                .boxed()
        })
        .prop_map(Value::Object)
        .boxed()
}

fn leaf(hole: &str) -> BoxedStrategy<Value> {
    if let Some(codes) = hole.strip_prefix("$code:") {
        let codes: Vec<Value> = codes.split(' ').map(Value::from).collect();
        return prop::sample::select(codes).boxed();
    }
    let text = |pattern: &'static str| pattern.prop_map(Value::from).boxed();
    match hole {
        // Few names come often, so that events speak of the same things.
        "$id" => prop_oneof![
            3 => prop::sample::select(vec!["a", "b", "line-1"]).prop_map(Value::from),
            1 => text("[A-Za-z0-9_.:-]{1,63}"),
        ]
        .boxed(),
        "$words" => text("[0-9a-f]{64}"),
        "$token" => text("[A-Za-z0-9][A-Za-z0-9 .,/#+%°·×()_:*²µ-]{0,38}[A-Za-z0-9]"),
        "$written" => text("-?[0-9]{1,6}([.,][0-9]{1,4})? (Nm|L|km|bar|°C|in-lb|5/16 in|%)"),
        "$short" => text("[A-Za-z][A-Za-z/_]{0,20}"),
        "$decimal" => text("-?(0|[1-9][0-9]{0,12})(\\.[0-9]{1,9})?"),
        "$date" => text("20[0-9]{2}-(0[1-9]|1[0-2])-(0[1-9]|1[0-9]|2[0-8])"),
        "$time" => text(
            "20[0-9]{2}-(0[1-9]|1[0-2])-(0[1-9]|1[0-9]|2[0-8])T([01][0-9]|2[0-3]):[0-5][0-9]:[0-5][0-9]Z",
        ),
        "$week" => {
            text("(mon|tue-fri) 0[0-9]:[0-5][0-9]-1[2-9]:[0-5][0-9]; sat 0[6-9]:[0-5]0-1[0-3]:00")
        }
        "$string" => ".{0,60}".prop_map(Value::from).boxed(),
        "$key" => text("[a-z-]{1,20}:[a-z0-9:.,-]{0,60}"),
        "$u8" => any::<u8>().prop_map(Value::from).boxed(),
        "$u16" => any::<u16>().prop_map(Value::from).boxed(),
        "$u32" => any::<u32>().prop_map(Value::from).boxed(),
        "$u64" => any::<u64>().prop_map(Value::from).boxed(),
        "$bool" => any::<bool>().prop_map(Value::from).boxed(),
        "$state" => states(),
        "$need" => needs(),
        "$until" => prop_oneof![
            leaf(&format!("$code:{}", templates::GATES)).prop_map(|gate| json!({ "before": gate })),
            grown(
                &json!({ "later": { "date": { "?": "$date" }, "distance": { "?": "$written" } } })
            ),
        ]
        .boxed(),
        "$place" => prop_oneof![
            Just(json!("yard")),
            Just(json!("away")),
            leaf("$id").prop_map(|stall| json!({ "stall": stall })),
        ]
        .boxed(),
        other => panic!("no hole is called {other}"),
    }
}

fn states() -> BoxedStrategy<Value> {
    prop_oneof![
        leaf(
            "$code:on off tight cracked out plugged unplugged at-level low done due outside inside"
        ),
        any::<u8>().prop_map(|passes| json!({ "loose": { "passes": passes } })),
        any::<bool>().prop_map(|holds| json!({ "stub": { "holds": holds } })),
    ]
    .boxed()
}

fn needs() -> BoxedStrategy<Value> {
    let is = (
        leaf("$id"),
        prop::collection::vec(any::<u16>(), 0..3),
        prop::collection::btree_set(states().prop_map(|state| state.to_string()), 1..3),
    )
        .prop_map(|(item, at, states)| {
            let states: Vec<Value> = states
                .iter()
                .map(|state| serde_json::from_str(state).unwrap())
                .collect();
            json!({ "is": { "item": item, "at": at, "states": states } })
        });
    is.prop_recursive(3, 8, 3, |inner| {
        prop_oneof![
            prop::collection::vec(inner.clone(), 0..3).prop_map(|needs| json!({ "all": needs })),
            prop::collection::vec(inner, 0..3).prop_map(|needs| json!({ "any": needs })),
        ]
    })
    .boxed()
}

/// Content as a device sends it: a text with its salt where its commitment would stand.
pub fn sent(value: &mut Value) {
    let salt = "5a".repeat(32);
    match value {
        Value::Object(map) if map.contains_key("media") => {
            *value = json!({ "file": "aGVsbG8=", "media": "image/jpeg", "salt": salt });
        }
        Value::String(text) if repair::Words::from_hex(text).is_some() => {
            *value = json!({ "text": format!("words <{}>", &text[56..]), "salt": salt });
        }
        Value::Object(map) => {
            for (name, value) in map {
                let told = !value.is_null();
                sent(value);
                // What was said is a recording, not a picture: the head of one in WebM.
                if name == "voice" && told {
                    *value = json!({ "file": "GkXfo4dCgoR3ZWJtGFOAZ4oWVK5rha6Dg4EC", "media": "audio/webm", "salt": salt });
                }
            }
        }
        Value::Array(list) => list.iter_mut().for_each(sent),
        _ => {}
    }
}
