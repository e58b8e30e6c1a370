//! Every stored and sent form: whatever is written reads back, and nothing that comes in
//! makes the reading panic.

#![allow(clippy::unwrap_used, reason = "a test fails by panicking")]

mod samples;

use proptest::prelude::*;
use proptest::test_runner::{Config, TestRunner};
use record::form::Form;
use record::v1::beside::{CustomerFactForm, ShopFactForm, VehicleFactForm};
use record::v1::decisions::{DecisionForm, RequestForm};
use record::v1::facts::FactForm;
use record::v1::maps::MapFactForm;
use record::{AnyEvent, Stored, Stream, decode, encode};
use repair::Event;
use samples::templates::*;
use samples::{grown, kinds, tagged};
use serde::Serialize;
use serde::de::DeserializeOwned;
use serde_json::{Value, json};

fn stream(name: &str) -> Stream {
    Stream::read(name).unwrap()
}

#[test]
fn no_kind_is_without_a_template() {
    assert_eq!(kinds(&facts()), FactForm::KINDS);
    assert_eq!(kinds(&decisions()), DecisionForm::KINDS);
    assert_eq!(kinds(&requests()), RequestForm::KINDS);
    assert_eq!(kinds(&vehicle_facts()), VehicleFactForm::KINDS);
    assert_eq!(kinds(&customer_facts()), CustomerFactForm::KINDS);
    assert_eq!(kinds(&shop_facts()), ShopFactForm::KINDS);
    assert_eq!(kinds(&map_facts()), MapFactForm::KINDS);
}

#[test]
fn no_kind_of_fact_is_a_kind_of_decision() {
    for kind in DecisionForm::KINDS {
        assert!(
            !FactForm::KINDS.contains(kind),
            "{kind} would be read as either"
        );
    }
}

/// Grows a few values of each kind, and hands each to `check` with its core value.
fn each<F>(templates: Vec<(&'static str, Value)>, check: impl Fn(&str, &Value, F::Core))
where
    F: Form + DeserializeOwned,
{
    for (kind, template) in templates {
        let mut runner = TestRunner::new(Config {
            cases: 24,
            failure_persistence: None,
            ..Config::default()
        });
        runner
            .run(&tagged(kind, &template), |sent| {
                let form: F = serde_json::from_value(sent.clone())
                    .unwrap_or_else(|e| panic!("{kind}: {e} in {sent}"));
                let core = form
                    .read()
                    .unwrap_or_else(|e| panic!("{kind}: {e} in {sent}"));
                check(kind, &sent, core);
                Ok(())
            })
            .unwrap();
    }
}

/// An event reads back as it was, under its own kind, and its bytes are the same again.
fn kept(name: &str, kind: &str, event: &AnyEvent) {
    let stored = encode(event);
    assert_eq!(stored.kind, kind);
    let again = decode(&stream(name), &stored).unwrap();
    assert_eq!(&again, event);
    assert_eq!(encode(&again), stored);
}

#[test]
fn every_fact_reads_back() {
    each::<FactForm>(facts(), |kind, _, fact| {
        kept("order:a", kind, &AnyEvent::Order(Event::Fact(fact)));
    });
}

#[test]
fn every_decision_reads_back() {
    each::<DecisionForm>(decisions(), |kind, _, decision| {
        kept("order:a", kind, &AnyEvent::Order(Event::Decision(decision)));
    });
}

#[test]
fn every_fact_beside_orders_reads_back() {
    each::<VehicleFactForm>(vehicle_facts(), |kind, _, fact| {
        kept("vehicle:a", kind, &AnyEvent::Vehicle(fact));
    });
    each::<CustomerFactForm>(customer_facts(), |kind, _, fact| {
        kept("customer:a", kind, &AnyEvent::Customer(fact));
    });
    each::<ShopFactForm>(shop_facts(), |kind, _, fact| {
        kept("shop", kind, &AnyEvent::Shop(fact));
    });
    each::<MapFactForm>(map_facts(), |kind, _, fact| {
        kept("map:a", kind, &AnyEvent::Map(fact));
    });
}

/// What is sent is what is meant: the form of the core value is the form that came, where
/// nothing in it can be written in two ways.
#[test]
fn a_form_loses_nothing_on_its_way_through_the_core() {
    fn same<F>(templates: Vec<(&'static str, Value)>)
    where
        F: Form + DeserializeOwned + Serialize,
    {
        each::<F>(templates, |kind, sent, core| {
            let back = serde_json::to_value(F::of(&core)).unwrap();
            assert_eq!(plain(&back), plain(sent), "{kind}");
        });
    }
    // A decimal of nought has no sign, and lists of states have an order of their own.
    fn plain(value: &Value) -> String {
        fn walk(value: &Value) -> Value {
            match value {
                Value::String(text) if text.starts_with("-0") => {
                    let nought = text.chars().all(|c| "-0.".contains(c));
                    json!(text.strip_prefix('-').filter(|_| nought).unwrap_or(text))
                }
                Value::Object(map) => map
                    .iter()
                    .map(|(key, inner)| {
                        let mut inner = walk(inner);
                        if let (true, Value::Array(states)) = (key == "states", &mut inner) {
                            states.sort_by_key(Value::to_string);
                        }
                        (key.clone(), inner)
                    })
                    .collect(),
                Value::Array(list) => list.iter().map(walk).collect(),
                other => other.clone(),
            }
        }
        walk(value).to_string()
    }
    same::<FactForm>(facts());
    same::<DecisionForm>(decisions());
    same::<RequestForm>(requests());
    same::<VehicleFactForm>(vehicle_facts());
    same::<CustomerFactForm>(customer_facts());
    same::<ShopFactForm>(shop_facts());
}

/// A stored body has its keys in order and no blanks, whatever else is built into the
/// program: the same event is the same bytes, and so the same hash.
#[test]
fn stored_bytes_have_one_form() {
    each::<FactForm>(facts(), |_, _, fact| {
        let body = encode(&AnyEvent::Order(Event::Fact(fact))).body;
        let value: Value = serde_json::from_slice(&body).unwrap();
        assert_eq!(record::canonical(&value).into_bytes(), body);
    });
}

/// The form of one event of each family, as it stands in logs already written. These
/// lines never change.
#[test]
fn what_has_landed_stays_as_it_landed() {
    let words = "0".repeat(63) + "1";
    let landed = [
        (
            "order:a",
            "moved",
            r#"{"moves":[{"after":[{"command":"c1","nth":0}],"at":[1,2],"container":"tray A","item":"screws","left":{"piece":"original","state":{"loose":{"passes":1}}}}],"stage":null}"#.to_owned(),
        ),
        ("order:a", "stood", r#"{"place":{"stall":"stall-1"}}"#.to_owned()),
        (
            "order:a",
            "work-due",
            format!(r#"{{"id":"w","item":null,"until":{{"later":{{"date":"2026-11-26","distance":"80 km"}}}},"words":"{words}"}}"#),
        ),
        (
            "order:a",
            "waived",
            format!(r#"{{"figure":"1","gate":"hand-over","prints":true,"reason":"debt:level-cold","words":"{words}"}}"#),
        ),
        (
            "vehicle:a",
            "declared",
            format!(r#"{{"customer":"c","rust":2,"texts":{{"plate":"{words}"}},"vin_read":"none-readable"}}"#),
        ),
        ("customer:a", "mended", format!(r#"{{"after":["c1"],"field":"phone","words":"{words}"}}"#)),
        ("shop", "number-given", r#"{"number":1001,"order":"a"}"#.to_owned()),
    ];
    for (name, kind, body) in landed {
        let stored = Stored {
            kind: kind.to_owned(),
            version: 1,
            body: body.into_bytes(),
        };
        let event = decode(&stream(name), &stored).unwrap();
        assert_eq!(encode(&event), stored);
    }
}

/// A program before this one wrote every erasure of a restore into one event.
#[test]
fn an_erasure_of_any_length_still_reads() {
    let texts: Vec<Value> = (0..5_000).map(|nth| json!(format!("{nth:064x}"))).collect();
    let stored = Stored {
        kind: "erased".to_owned(),
        version: 1,
        body: json!({ "texts": texts, "why": "erased before" })
            .to_string()
            .into_bytes(),
    };
    let event = decode(&stream("shop"), &stored).unwrap();
    assert_eq!(encode(&event), stored);
}

/// What would not come back is found before it is kept.
#[test]
fn what_the_reader_refuses_is_not_kept() {
    let many = repair::Decision::HandedOver {
        leaves: repair::Leaves::DrivesAway,
        ending: repair::Ending::Repaired,
        known: (0..2_001)
            .map(|nth| repair::ReasonKey::LineUnfinished(repair::LineId::new(nth.to_string())))
            .collect(),
        boxes: None,
        signature: None,
        signed_by: None,
        decided_at: "2026-11-25T08:00:00Z".parse().unwrap(),
    };
    let event = AnyEvent::Order(Event::Decision(many));
    let unkept = record::encode_checked(&stream("order:a"), &event).unwrap_err();
    assert!(unkept.to_string().contains("at most 2000"), "{unkept}");
    // An event of one family in the stream of another.
    let unkept = record::encode_checked(&stream("shop"), &event).unwrap_err();
    assert!(unkept.why.contains("handed-over"), "{unkept}");
}

#[test]
fn a_newer_version_is_refused_with_a_word() {
    let stored = Stored {
        kind: "keys".to_owned(),
        version: 99,
        body: br#"{"step":"taken","words":null}"#.to_vec(),
    };
    let refused = decode(&stream("order:a"), &stored).unwrap_err().to_string();
    assert!(refused.contains("version 99"), "{refused}");
    assert!(refused.contains("keys"), "{refused}");
    assert!(refused.contains("newer program"), "{refused}");
    // A version that the content does not have was not written by any program.
    for (version, body) in [
        (2, r#"{"step":"taken","words":null}"#),
        (
            1,
            r#"{"after":[],"words":null,"work":{"item":null,"named":"a","own":null,"work":"other"}}"#,
        ),
    ] {
        let odd = Stored {
            kind: if version == 2 { "keys" } else { "work-done" }.to_owned(),
            version,
            body: body.as_bytes().to_vec(),
        };
        assert!(decode(&stream("order:a"), &odd).is_err(), "{version}");
    }
    let first = Stored {
        version: 1,
        ..stored
    };
    assert!(decode(&stream("order:a"), &first).is_ok());
}

#[test]
fn an_event_of_another_family_is_refused() {
    let stored = Stored {
        kind: "number-given".to_owned(),
        version: 1,
        body: br#"{"number":1,"order":"a"}"#.to_vec(),
    };
    for name in ["order:a", "vehicle:a", "customer:a"] {
        assert!(decode(&stream(name), &stored).is_err(), "{name}");
    }
    assert!(decode(&stream("shop"), &stored).is_ok());
}

fn streams() -> impl Strategy<Value = Stream> {
    prop::sample::select(vec!["order:a", "vehicle:a", "customer:a", "shop"]).prop_map(stream)
}

fn every_kind() -> Vec<String> {
    [
        FactForm::KINDS,
        DecisionForm::KINDS,
        VehicleFactForm::KINDS,
        CustomerFactForm::KINDS,
        ShopFactForm::KINDS,
    ]
    .concat()
    .into_iter()
    .map(str::to_owned)
    .collect()
}

/// Any template of the order's stream, with one piece of it replaced by something else.
fn mutilated() -> impl Strategy<Value = (String, Value)> {
    let odd = prop_oneof![
        Just(Value::Null),
        Just(json!([])),
        Just(json!({})),
        Just(json!(-1)),
        Just(json!(1e300)),
        Just(json!("99999999999999999999999999999999999999999999")),
        Just(json!("1e5")),
        Just(json!("NaN")),
        Just(json!("9999-12-31T23:59:59.999999999Z")),
        Just(json!("\u{0}")),
        ".{0,80}".prop_map(Value::from),
    ];
    let mut all = facts();
    all.extend(decisions());
    (prop::sample::select(all), odd, any::<prop::sample::Index>()).prop_flat_map(
        |((kind, template), odd, which)| {
            grown(&template).prop_map(move |mut body| {
                let count = leaves(&mut body, &mut |_, _| {}, 0);
                if count > 0 {
                    let chosen = which.index(count);
                    leaves(
                        &mut body,
                        &mut |nth, leaf| {
                            if nth == chosen {
                                leaf.clone_from(&odd);
                            }
                        },
                        0,
                    );
                }
                (kind.to_owned(), body)
            })
        },
    )
}

fn leaves(value: &mut Value, touch: &mut dyn FnMut(usize, &mut Value), from: usize) -> usize {
    match value {
        Value::Object(map) => map
            .values_mut()
            .fold(from, |nth, inner| leaves(inner, touch, nth)),
        Value::Array(list) => list
            .iter_mut()
            .fold(from, |nth, inner| leaves(inner, touch, nth)),
        leaf => {
            touch(from, leaf);
            from + 1
        }
    }
}

proptest! {
    #![proptest_config(Config::with_cases(128))]

    #[test]
    fn arbitrary_bytes_never_panic(
        stream in streams(),
        kind in prop_oneof![prop::sample::select(every_kind()), ".{0,20}"],
        version in prop_oneof![3 => Just(1_u32), 1 => any::<u32>()],
        body in prop_oneof![
            prop::collection::vec(any::<u8>(), 0..60),
            ".{0,60}".prop_map(String::into_bytes),
            "[\\[\\]{}\":,0-9a-z-]{0,60}".prop_map(String::into_bytes),
        ],
    ) {
        let _ = decode(&stream, &Stored { kind, version, body });
    }

    /// Either a mutilated body is refused with a word, or what it is read as is kept.
    #[test]
    fn a_mutilated_event_is_refused_or_kept((kind, body) in mutilated()) {
        let stored = Stored { kind: kind.clone(), version: 1, body: body.to_string().into_bytes() };
        match decode(&stream("order:a"), &stored) {
            Err(refused) => prop_assert!(!refused.what.is_empty()),
            Ok(event) => kept("order:a", &kind, &event),
        }
    }

    #[test]
    fn a_body_nested_beyond_reason_is_refused(depth in 100_usize..3_000) {
        let body = format!("{}{}", "[".repeat(depth), "]".repeat(depth));
        let refused = decode(
            &stream("order:a"),
            &Stored { kind: "adopted".to_owned(), version: 1, body: body.into_bytes() },
        );
        prop_assert!(refused.is_err());
    }
}
