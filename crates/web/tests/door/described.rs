//! The description of the JSON door, held against what the door does.

use crate::http::Door;
use crate::shop_in_words::{an_order, set_up};
use boon::{Compiler, Schemas};
use serde_json::{Value, json};
use std::collections::BTreeSet;

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
            "/api/orders",
            "/api/orders/{number}"
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
