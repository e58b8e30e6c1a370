//! Every calculator through its page and the JSON door.

use crate::http::Door;
use crate::shop_in_words::{an_order, set_up};
use serde_json::{Value, json};

#[test]
fn each_calculator_has_a_page_and_a_row_in_its_description() {
    let door = Door::open();
    let described = door.get("/api/calc").json();
    let rooms = described.as_array().unwrap();
    let mut seen = 0;
    for room in rooms {
        let code = room["room"].as_str().unwrap();
        assert_eq!(door.get(&format!("/calc/{code}")).status, 200, "{code}");
        for one in room["calculators"].as_array().unwrap() {
            let path = format!("/calc/{code}/{}", one["code"].as_str().unwrap());
            let page = door.get(&path);
            assert_eq!(page.status, 200, "{path}");
            for field in one["fields"].as_array().unwrap() {
                let asked = format!("name=\"{}\"", field["name"].as_str().unwrap());
                let is_link = field["kind"] == "link";
                assert_ne!(page.body.contains(&asked), is_link, "{path}: {asked}");
            }
            seen += 1;
        }
    }
    assert!(seen >= 30, "{seen}");
}

#[test]
fn page_and_door_say_the_same_and_old_addresses_stand() {
    let door = Door::open();
    set_up(&door);
    let query = "thread=M10x1.5&clamp=25275&friction=0.15";
    let told = door
        .get(&format!("/api/calc/threads/torque?{query}"))
        .json();
    assert_eq!(told["calculator"], "torque");
    let fact = told["fact"].as_str().unwrap();
    assert!(fact.starts_with("50.1"), "{fact}");
    assert!((told["outputs"]["torque_nm"].as_f64().unwrap() - 50.05).abs() < 0.01);
    assert!(told["working"]["lines"].as_array().unwrap().len() > 2);
    for room in ["/calc/threads", "/threads"] {
        let page = door.get(&format!("{room}/torque?{query}"));
        assert!(page.body.contains(fact), "{room}");
    }
    assert!(door.get("/threads").body.contains("Tightening sequence"));
    assert!(door.get("/coolant").body.contains("50 % is not 50 %"));
    let sent = json!({ "strength": "50", "of": "glycol", "cap": "15 psi" });
    let sent = door.ask(
        "POST",
        "/api/calc/coolant/protection",
        &[("Content-Type", "application/json")],
        sent.to_string().as_bytes(),
    );
    let boils = sent.json()["outputs"]["boil_c"].as_f64().unwrap();
    assert!((boils - 130.0).abs() < 1.0, "{boils}");
}

#[test]
fn what_is_wrong_says_which_field_and_how_to_mend_it() {
    let door = Door::open();
    let wrong = |path: &str, status: u16| -> Value {
        let answer = door.get(path);
        assert_eq!(answer.status, status, "{path}: {}", answer.body);
        answer.json()
    };
    let heavy = wrong(
        "/api/calc/threads/torque?thread=M8&clamp=heavy&friction=0.15",
        400,
    );
    assert_eq!(heavy["where"], "clamp");
    assert!(
        heavy["mend"].as_str().unwrap().contains("25275 N"),
        "{heavy}"
    );
    let strange = wrong("/api/calc/threads/torque?weight=3", 400);
    assert_eq!(strange["where"], "weight");
    assert!(strange["mend"].as_str().unwrap().contains("clamp"));
    let posted = |body: &str| {
        let json = [("Content-Type", "application/json")];
        let path = "/api/calc/belt/align";
        door.ask("POST", path, &json, body.as_bytes())
    };
    let plain = posted(r#"{"near": 0, "far": 1, "apart": 120, "limit": 0.33}"#).json();
    assert_eq!(plain["fact"], "0.48°");
    for broken in ["", "[]", r#"{"near": [0]}"#] {
        let answer = posted(broken);
        assert_eq!(answer.status, 400, "{broken}: {answer:?}");
        assert_eq!(answer.json()["where"], "the body");
    }
    // Everything that is missing is told at once.
    let blank = wrong("/api/calc/coolant/mix?left=3.7", 400);
    assert!(blank["reasons"].as_array().unwrap().len() >= 2, "{blank}");
    assert_eq!(wrong("/api/calc/threads/weight", 404)["kind"], "not-found");
    assert_eq!(door.get("/calc/teapots").status, 404);
}

#[test]
fn an_order_writes_what_it_knows_and_keeps_what_comes_of_it() {
    let door = Door::open();
    set_up(&door);
    an_order(&door, "a");
    let see = |path: &str| door.ask("GET", path, &[("Cookie", "who=ana")], b"");
    // Four litres came out and one went in, as was told on the order.
    let asked = see("/o/1001/calc/fluids/engine-oil?of=oil");
    assert_eq!(asked.status, 200, "{}", asked.body);
    for field in [r#"name="out" value="4 L""#, r#"name="in" value="1 L""#] {
        assert!(asked.body.contains(field), "{field}: {}", asked.body);
    }
    let short = see("/o/1001/calc/fluids/engine-oil?of=oil&out=4+L&in=1+L");
    assert!(short.body.contains("Save with the order"), "{}", short.body);
    // Coolant and threads have a way of their own; what is not there is told.
    for nowhere in [
        "/o/1001/calc/coolant/mix",
        "/o/1001/calc/fluids/milk",
        "/o/1001/calc/fluids/brake?of=teapot",
        "/o/9/calc/fluids/brake",
    ] {
        assert_eq!(see(nowhere).status, 404, "{nowhere}");
    }
    door.send(
        "order:a",
        "fact",
        json!({ "calculated": { "id": "n", "item": "oil", "snag": null,
            "calculator": "fluids engine-oil", "version": 1, "inputs": "{}",
            "outputs": "{\"fact\":\"short\",\"tone\":\"no\",\"figures\":{}}",
            "working": "as it was found" } }),
    );
    let item = see("/o/1001/item/oil");
    assert!(
        item.body.contains("short") && item.body.contains("as it was found"),
        "{}",
        item.body
    );
}
