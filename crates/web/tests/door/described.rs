//! The description of the JSON door, held against what the door does.

use crate::http::Door;
use crate::shop_in_words::{an_order, set_up};
use boon::{Compiler, Schemas};
use serde_json::{Value, json};
use std::collections::BTreeSet;
use utoipa::OpenApi;
use web::ApiDoc;

fn described(door: &Door) -> Value {
    let answer = door.get("/api/openapi.json");
    assert_eq!(answer.status, 200);
    answer.json()
}

#[test]
fn it_names_every_door_and_every_schema_it_speaks_of() {
    let door = Door::open();
    let api = described(&door);
    assert!(
        api["openapi"].as_str().unwrap().starts_with("3.1"),
        "{}",
        api["openapi"]
    );
    assert!(
        !api["info"]["title"].as_str().unwrap().is_empty()
            && !api["info"]["version"].as_str().unwrap().is_empty()
    );
    let paths: BTreeSet<_> = api["paths"]
        .as_object()
        .unwrap()
        .keys()
        .map(String::as_str)
        .collect();
    assert_eq!(
        paths,
        BTreeSet::from([
            "/api/calc",
            "/api/calc/{room}/{calculator}",
            "/api/commands",
            "/api/commands/check",
            "/api/day",
            "/api/live",
            "/api/openapi.json",
            "/api/orders",
            "/api/orders/{number}",
            "/api/orders/{number}/reach",
            "/api/pin",
            "/api/pin/beside",
            "/api/reach",
        ])
    );
    for (path, methods) in api["paths"].as_object().unwrap() {
        for (method, operation) in methods.as_object().unwrap() {
            assert!(
                !operation["responses"].as_object().unwrap().is_empty(),
                "{method} {path}"
            );
        }
    }
    let mut refs = BTreeSet::new();
    gather_refs(&api, &mut refs);
    for name in [
        "SentCommand",
        "Accepted",
        "Trouble",
        "OrderRow",
        "OrderView",
        "DayTold",
        "FactForm",
        "RequestForm",
    ] {
        assert!(
            refs.contains(&format!("#/components/schemas/{name}")),
            "{name}: {refs:?}"
        );
    }
    for reference in refs {
        let pointer = reference.strip_prefix('#').unwrap();
        assert!(
            api.pointer(pointer).is_some_and(Value::is_object),
            "{reference} leads nowhere"
        );
    }
}

fn gather_refs(value: &Value, out: &mut BTreeSet<String>) {
    match value {
        Value::Object(map) => {
            out.extend(map.get("$ref").and_then(Value::as_str).map(str::to_owned));
            map.values().for_each(|inner| gather_refs(inner, out));
        }
        Value::Array(list) => list.iter().for_each(|inner| gather_refs(inner, out)),
        _ => {}
    }
}

/// Whether a value fits a schema of the description.
fn fits(api: &Value, schema: &Value, value: &Value) -> Result<(), String> {
    const AT: &str = "http://door.example/schema.json";
    let whole = json!({ "components": api["components"], "wanted": schema });
    let mut compiler = Compiler::new();
    compiler
        .add_resource(AT, whole)
        .map_err(|e| e.to_string())?;
    let mut schemas = Schemas::new();
    let wanted = compiler
        .compile(&format!("{AT}#/wanted"), &mut schemas)
        .map_err(|e| format!("{e:#}"))?;
    schemas
        .validate(value, wanted)
        .map_err(|e| format!("{e:#}"))
}

#[test]
fn what_the_door_takes_and_gives_is_as_described() {
    let door = Door::open();
    set_up(&door);
    an_order(&door, "a");
    let api = described(&door);
    let answers = |path: &str, method: &str, status: u16| {
        api["paths"][path][method]["responses"][status.to_string()]["content"]["application/json"]["schema"].clone()
    };
    let check = |schema: Value, value: &Value| {
        assert!(schema.is_object(), "no schema for {value}");
        fits(&api, &schema, value).unwrap_or_else(|e| panic!("{e}"));
        // Nothing at all fits a schema that is worth something.
        assert!(fits(&api, &schema, &json!(7)).is_err());
    };
    check(
        answers("/api/day", "get", 200),
        &door.get("/api/day").json(),
    );
    check(
        answers("/api/orders", "get", 200),
        &door.get("/api/orders").json(),
    );
    check(
        answers("/api/orders/{number}", "get", 200),
        &door.get("/api/orders/1001").json(),
    );
    check(
        answers("/api/orders/{number}", "get", 404),
        &door.get("/api/orders/9").json(),
    );

    let sent = api["paths"]["/api/commands"]["post"]["requestBody"]["content"]["application/json"]
        ["schema"]
        .clone();
    let good = door.command(
        "order:b",
        "request",
        json!({ "open": { "vehicle": "v", "customer": "c" } }),
    );
    let accepted = door.post(good.to_string().as_bytes());
    assert_eq!(accepted.status, 200);
    check(sent.clone(), &good);
    check(answers("/api/commands", "post", 200), &accepted.json());
    let refused = door.command(
        "order:b",
        "request",
        json!({ "open": { "vehicle": "v", "customer": "c" } }),
    );
    let answer = door.post(refused.to_string().as_bytes());
    assert_eq!(answer.status, 422);
    check(answers("/api/commands", "post", 422), &answer.json());
    let mut unknown = good.clone();
    unknown["unheard_of"] = json!(1);
    assert_eq!(door.post(unknown.to_string().as_bytes()).status, 400);
    assert!(
        fits(&api, &sent, &unknown).is_err(),
        "the description refuses what the door refuses"
    );
}

/// The answers that other programs are promised.
#[test]
fn an_order_answers_at_least_what_is_promised() {
    let door = Door::open();
    set_up(&door);
    an_order(&door, "a");
    let order = door.get("/api/orders/1001").json();
    for field in [
        "number",
        "open_items",
        "debts",
        "gates",
        "totals",
        "handed_over",
        "waivers",
    ] {
        assert!(order.get(field).is_some(), "{field}");
    }
    for field in ["item", "kind", "states", "home", "since", "by"] {
        assert!(order["open_items"][0].get(field).is_some(), "{field}");
    }
    let gates: Vec<_> = order["gates"]
        .as_array()
        .unwrap()
        .iter()
        .map(|gate| gate["gate"].as_str().unwrap())
        .collect();
    assert_eq!(
        gates,
        ["go-live", "start", "lower", "roll", "road", "hand-over"]
    );
    let last = &order["gates"][5];
    for field in ["kind", "text"] {
        assert!(last["fit_to_go"][0][field].is_string(), "{field}");
        assert!(last["papers"][0][field].is_string(), "{field}");
    }
    assert!(last["papers"][0]["blocks"].is_boolean());
    assert_eq!(order["waivers"].as_array().unwrap().len(), 1);
}

/// One asking as the description has it, and what it has to come to.
struct Asking {
    method: &'static str,
    path: &'static str,
    /// The path with its parameters filled in, and a query.
    address: String,
    body: Option<Value>,
    status: u16,
}

const CALCULATOR: &str = "/api/calc/{room}/{calculator}";

/// For each door of the description every answer it describes, but those of a record that is
/// away, which its own tests bring about.
fn askings(door: &Door) -> Vec<Asking> {
    let open = |order: &str| {
        door.command(
            &format!("order:{order}"),
            "request",
            json!({ "open": { "vehicle": "v", "customer": "c" } }),
        )
    };
    let get = |path: &'static str, address: &str, status| Asking {
        method: "get",
        path,
        address: address.to_owned(),
        body: None,
        status,
    };
    let post = |path: &'static str, body: Value, status| Asking {
        method: "post",
        path,
        address: path.to_owned(),
        body: Some(body),
        status,
    };
    let in_full = |address: &str, body: Value, status| Asking {
        method: "post",
        path: CALCULATOR,
        address: address.to_owned(),
        body: Some(body),
        status,
    };
    let good = open("asked");
    let mut reused = door.command(
        "shop",
        "shop_fact",
        json!({ "departed": { "person": "ben" } }),
    );
    reused["command_id"] = good["command_id"].clone();
    let part = |mut command: Value| {
        for field in ["command_id", "device", "device_seq", "happened_at"] {
            command.as_object_mut().unwrap().remove(field);
        }
        command
    };
    vec![
        post("/api/commands", good.clone(), 200),
        post("/api/commands", good, 200),
        post("/api/commands", json!({ "fly": 1 }), 400),
        post("/api/commands", reused, 409),
        post("/api/commands", open("asked"), 422),
        post("/api/commands/check", json!([part(open("checked"))]), 204),
        post("/api/commands/check", json!([]), 204),
        post("/api/commands/check", json!([{ "fly": 1 }]), 400),
        post("/api/commands/check", json!({ "no": "list" }), 400),
        post("/api/commands/check", json!([part(open("asked"))]), 422),
        get("/api/day", "/api/day", 200),
        get("/api/orders", "/api/orders", 200),
        get("/api/orders", "/api/orders?find=1001&before=2000", 200),
        get("/api/orders", "/api/orders?before=many", 400),
        get("/api/orders/{number}", "/api/orders/1001", 200),
        get("/api/orders/{number}", "/api/orders/1001?before=2", 200),
        get("/api/orders/{number}", "/api/orders/1001?before=-1", 400),
        get("/api/orders/{number}", "/api/orders/9", 404),
        get("/api/orders/{number}", "/api/orders/many", 404),
        get("/api/reach", "/api/reach", 200),
        get("/api/orders/{number}/reach", "/api/orders/1001/reach", 200),
        get("/api/orders/{number}/reach", "/api/orders/9/reach", 404),
        get("/api/openapi.json", "/api/openapi.json", 200),
        get("/api/calc", "/api/calc", 200),
        get(CALCULATOR, "/api/calc/threads/thread?thread=M8", 200),
        get(CALCULATOR, "/api/calc/threads/thread?thread=none", 400),
        get(CALCULATOR, "/api/calc/threads/none", 404),
        in_full("/api/calc/threads/thread", json!({ "thread": "M8" }), 200),
        in_full("/api/calc/threads/thread", json!({ "thread": "none" }), 400),
        in_full("/api/calc/threads/none", json!({}), 404),
    ]
}

#[test]
fn every_door_answers_as_described() {
    let door = Door::open();
    set_up(&door);
    an_order(&door, "a");
    let api = described(&door);
    let mut seen = BTreeSet::new();
    for asking in askings(&door) {
        let Asking {
            method,
            path,
            address,
            body,
            status,
        } = &asking;
        let operation = &api["paths"][path][method];
        let which = format!("{method} {address} -> {status}");
        assert!(operation.is_object(), "{which} is not described");
        let answer = match body {
            None => door.get(address),
            Some(body) => {
                let media = &operation["requestBody"]["content"]["application/json"]["schema"];
                assert!(media.is_object(), "{which}: no word of what is sent");
                if *status == 200 || *status == 204 {
                    fits(&api, media, body).unwrap_or_else(|e| panic!("{which} sends: {e}"));
                }
                let json = [("Content-Type", "application/json"), ("Cookie", "who=ana")];
                door.ask("POST", address, &json, body.to_string().as_bytes())
            }
        };
        assert_eq!(answer.status, *status, "{which}: {answer:?}");
        let told = &operation["responses"][status.to_string()];
        assert!(told.is_object(), "{which} is not described");
        seen.insert((method.to_owned(), path.to_owned(), *status));
        let Some(content) = told.get("content") else {
            assert_eq!(answer.body, "", "{which} says more than described");
            continue;
        };
        let media = answer.header("content-type").split(';').next().unwrap();
        let schema = &content[media]["schema"];
        assert!(schema.is_object(), "{which}: {media} is not described");
        fits(&api, schema, &answer.json()).unwrap_or_else(|e| panic!("{which}: {e}"));
    }
    // Nothing is described that was not asked.
    for (path, methods) in api["paths"].as_object().unwrap() {
        for (method, operation) in methods.as_object().unwrap() {
            for status in operation["responses"].as_object().unwrap().keys() {
                let status: u16 = status.parse().unwrap();
                let asked = seen
                    .iter()
                    .any(|(m, p, s)| (*m, *p, *s) == (method.as_str(), path.as_str(), status));
                // The record is away in tests of their own, and so is who is not signed in; news
                // have no end to read.
                let elsewhere = status == 503 || status == 401 || path.starts_with("/api/pin");
                assert!(
                    asked || elsewhere || path == "/api/live",
                    "{method} {path} {status} was never asked"
                );
            }
        }
    }
}

#[test]
fn what_is_answered_to_who_is_not_signed_in_is_described() {
    let door = crate::network::a_shop();
    let api = ApiDoc::openapi();
    let api = serde_json::to_value(api).unwrap();
    let phone = crate::network::signed_in(&door, "tess", "4827");
    let stranger = crate::network::Browser::default();
    let told = |path: &str, status: u16| {
        api["paths"][path]["post"]["responses"][status.to_string()]["content"]["application/json"]["schema"].clone()
    };
    for (browser, path, body, status) in [
        (&phone, "/api/pin", json!({ "pin": "4827" }), 204),
        (&phone, "/api/pin", json!({ "pin": "0000" }), 401),
        (&phone, "/api/pin", json!({ "key": 1 }), 400),
        (
            &phone,
            "/api/pin/beside",
            json!({ "person": "tess", "pin": "4827" }),
            200,
        ),
        (
            &phone,
            "/api/pin/beside",
            json!({ "person": "tess", "pin": "0000" }),
            401,
        ),
        (&phone, "/api/pin/beside", json!([]), 400),
        (&stranger, "/api/commands", json!({}), 401),
    ] {
        let answer = browser.say(&door, path, &body);
        assert_eq!(answer.status, status, "{path}: {answer:?}");
        if status != 204 {
            fits(&api, &told(path, status), &answer.json())
                .unwrap_or_else(|e| panic!("{path}: {e}"));
        }
    }
}

#[test]
fn every_answer_of_a_record_that_is_away_is_described() {
    let door = Door::open();
    let api = described(&door);
    for (path, methods) in api["paths"].as_object().unwrap() {
        // What needs no record is never away with it.
        if ["/api/openapi.json", "/api/live", "/api/calc"].contains(&path.as_str()) {
            continue;
        }
        for (method, operation) in methods.as_object().unwrap() {
            let told = &operation["responses"]["503"]["content"]["application/json"]["schema"];
            assert!(told.is_object(), "{method} {path} may be away");
        }
    }
}

#[test]
fn news_come_as_described() {
    let door = Door::open();
    let api = described(&door);
    let told = &api["paths"]["/api/live"]["get"]["responses"]["200"]["content"];
    assert!(told["text/event-stream"].is_object(), "{told}");
    let mut news = door.news();
    assert_eq!(news.next(), Some(0));
    set_up(&door);
    assert!(news.next().unwrap() > 0);
}
