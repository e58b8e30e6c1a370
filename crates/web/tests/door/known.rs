//! Whoever is taken in again is known; what is typed wrong is said with what may be meant.

use crate::http::{Answer, Door};
use crate::shop_in_words::set_up;
use serde_json::json;
use shop::Device;

fn known() -> Door {
    let door = Door::open();
    set_up(&door);
    door.send(
        "customer:c",
        "customer_fact",
        json!({ "declared": { "texts": { "name": Device::words("Ines Duarte"), "phone": Device::words("0912 000 111") } } }),
    );
    door.send(
        "vehicle:v",
        "vehicle_fact",
        json!({ "declared": { "texts": { "label": Device::words("Marlin Combi"), "plate": Device::words("AB-12-CD") },
            "vin_read": "none-readable", "rust": null, "customer": "c" } }),
    );
    door
}

fn page(door: &Door, path: &str) -> String {
    let answer = door.ask("GET", path, &[("Cookie", "who=ana")], b"");
    assert_eq!(answer.status, 200, "{path}: {answer:?}");
    answer.body
}

#[test]
fn a_plate_a_name_or_a_telephone_offers_who_is_meant() {
    let door = known();
    let none = page(&door, "/new?plate=ZZ-99");
    assert!(!none.contains("Known here"), "{none}");
    for query in ["plate=ab12", "phone=912000", "customer=duarte"] {
        let shown = page(&door, &format!("/new?complaint=It+squeals&{query}"));
        assert!(shown.contains("Known here"), "{query}");
        assert!(shown.contains("Ines Duarte"), "{query}");
        // What was typed of the job goes along.
        assert!(shown.contains("complaint=It+squeals\""), "{query}: {shown}");
    }
    let again = page(&door, "/new?of=v&complaint=It+squeals");
    assert!(again.contains("value=\"It squeals\""), "{again}");
    assert!(
        !again.contains("name=\"plate\""),
        "what is known is not asked"
    );
    let another = page(&door, "/new?by=c");
    assert!(another.contains("name=\"plate\"") && !another.contains("name=\"phone\""));
    for nobody in ["/new?of=nobody", "/new?by=nobody", "/c/nobody", "/v/nobody"] {
        let answer = door.ask("GET", nobody, &[("Cookie", "who=ana")], b"");
        assert_eq!(answer.status, 404, "{nobody}");
    }
}

#[test]
fn a_mistyped_number_shows_what_may_be_meant() {
    let door = known();
    // 49 CFR 565.15(c): the check digit of this number is X; an O is never in one.
    let shown = page(&door, "/new?vin=1M8GDM9AXKPO42788");
    assert!(
        shown.contains("data-value=\"1M8GDM9AXKP042788\""),
        "{shown}"
    );
    let shown = page(&door, "/new?vin=1M8GDM9A1KP042788");
    assert!(
        shown.contains("data-value=\"1M8GDM9AXKP042788\""),
        "{shown}"
    );
    // Elsewhere there is no check digit to go by.
    let shown = page(&door, "/new?vin=XW7BF4FK60S145161");
    assert!(shown.contains("Valid"), "{shown}");
}

#[test]
fn a_plate_that_is_known_is_asked_about_once() {
    let door = known();
    let check = |plate: &str| -> Answer {
        let texts = json!({ "label": Device::words("Combi"), "plate": Device::words(plate) });
        let parts = json!([{ "stream": "vehicle:w", "who": "ana", "vehicle_fact": { "declared": {
            "texts": texts, "vin_read": "none-readable", "rust": null, "customer": "c" } } }]);
        let headers = [("Content-Type", "application/json"), ("Cookie", "who=ana")];
        let body = parts.to_string();
        door.ask("POST", "/api/commands/check", &headers, body.as_bytes())
    };
    assert_eq!(check("AB-12-CE").status, 204);
    let trouble = check("ab 12 cd").json();
    assert_eq!(trouble["kind"], "doubtful");
    assert_eq!(trouble["where"], "0/declared.texts.plate");
    let what = trouble["what"].as_str().unwrap();
    assert!(what.contains("Marlin Combi, Ines Duarte"), "{what}");
}

#[test]
fn one_field_finds_vehicles_customers_and_orders_and_all_are_listed() {
    let door = known();
    for words in ["ab12cd", "duarte", "0912000111", "marlin"] {
        let shown = page(&door, &format!("/find?q={words}"));
        let known = shown.contains("/v/v\"") || shown.contains("/c/c\"");
        assert!(known, "{words}: {shown}");
    }
    assert!(page(&door, "/customers").contains("Ines Duarte"));
    assert!(page(&door, "/vehicles").contains("AB-12-CD"));
    let shown = page(&door, "/c/c");
    assert!(
        shown.contains("/new?by=c") && shown.contains("/v/v\""),
        "{shown}"
    );
}

#[test]
fn a_table_is_read_in_and_the_record_taken_out_by_the_owner() {
    let door = known();
    let post = |path: &str, table: &str| {
        let body = format!("table={}", table.replace('\n', "%0A").replace(' ', "+"));
        let headers = [
            ("Content-Type", "application/x-www-form-urlencoded"),
            ("Cookie", "who=ana"),
        ];
        door.ask("POST", path, &headers, body.as_bytes())
    };
    let table = "name,phone,plate,vehicle\nRui Paz,0170 5,XY 1,Osprey 3\n";
    let shown = post("/shop/read-in", table);
    assert!(shown.body.contains("2 new records"), "{}", shown.body);
    assert!(!page(&door, "/customers").contains("Rui Paz"));
    assert_eq!(post("/shop/read-in/done", table).status, 303);
    assert!(page(&door, "/customers").contains("Rui Paz"));
    let again = post("/shop/read-in", table);
    assert!(again.body.contains("Nothing in it is new"));
    let none = post("/shop/read-in", "a,b\n1,2\n");
    assert!(none.body.contains("no column is called name"));

    let exported = door.ask("GET", "/record/export", &[("Cookie", "who=ana")], b"");
    assert_eq!(exported.status, 200);
    assert!(exported.header("content-disposition").contains(".jsonl"));
    let events = door.service.world().unwrap().position;
    let lines = exported.body.matches("\"prev_hash\"").count() as u64;
    assert_eq!(lines, events, "{}", exported.body.len());
}
