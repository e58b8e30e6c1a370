//! Every calculator through its page and the JSON door.

use crate::http::Door;
use crate::shop_in_words::set_up;
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
