//! A program on the shop's network, from outside: devices that join, people with PINs, and
//! whoever would like to pass for one.

use crate::http::{Answer, Door};
use serde_json::{Value, json};
use shop::{Caller, Device};
use std::io::{Read, Write};

/// A shop of an owner, a technician and an apprentice, and one order.
pub fn a_shop() -> Door {
    let door = Door::on_the_network();
    set_up(&door);
    door
}

/// Its people, a vehicle and its order.
pub fn set_up(door: &Door) {
    let say = |stream: &str, part: &str, content: Value| {
        let command = door.command(stream, part, content);
        door.service.command(&Caller::program(), command).unwrap();
    };
    say(
        "shop",
        "shop_fact",
        json!({ "set": { "settings": { "name": Device::words("Corner Garage"), "rate": "100", "currency": "EUR", "minor_digits": 2,
        "taxes": [], "units": "metric", "zone": "UTC" } } }),
    );
    for (person, role) in [
        ("olga", "owner"),
        ("tess", "technician"),
        ("abe", "apprentice"),
    ] {
        say(
            "shop",
            "shop_fact",
            json!({ "joined": { "person": person, "name": Device::words(person), "roles": [role] } }),
        );
    }
    say(
        "vehicle:v",
        "vehicle_fact",
        json!({ "declared": { "texts": { "label": Device::words("van") }, "vin_read": "kept-anyway", "rust": null, "customer": "c" } }),
    );
    say(
        "customer:c",
        "customer_fact",
        json!({ "declared": { "texts": { "name": Device::words("Ms Lund") } } }),
    );
    say(
        "order:one",
        "request",
        json!({ "open": { "vehicle": "v", "customer": "c" } }),
    );
}

/// What a browser keeps between two requests.
#[derive(Default, Clone)]
pub struct Browser {
    cookies: Vec<(String, String)>,
}

impl Browser {
    pub fn cookie(&self) -> String {
        let pairs = self
            .cookies
            .iter()
            .map(|(name, value)| format!("{name}={value}"));
        pairs.collect::<Vec<_>>().join("; ")
    }

    pub fn has(&self, name: &str) -> Option<&str> {
        self.cookies
            .iter()
            .find(|(known, _)| known == name)
            .map(|(_, value)| value.as_str())
    }

    fn keeps(&mut self, answer: &Answer) {
        for line in answer
            .header("set-cookie")
            .split('\n')
            .filter(|line| !line.is_empty())
        {
            let (name, value) = line.split(';').next().unwrap().split_once('=').unwrap();
            self.cookies.retain(|(known, _)| known != name);
            self.cookies.push((name.to_owned(), value.to_owned()));
        }
    }

    fn get(&mut self, door: &Door, path: &str) -> Answer {
        let answer = door.ask("GET", path, &[("Cookie", &self.cookie())], b"");
        self.keeps(&answer);
        answer
    }

    fn post(&mut self, door: &Door, path: &str, form: &str) -> Answer {
        let headers = [
            ("Cookie", self.cookie()),
            (
                "Content-Type",
                "application/x-www-form-urlencoded".to_owned(),
            ),
        ];
        let headers: Vec<(&str, &str)> = headers
            .iter()
            .map(|(name, value)| (*name, value.as_str()))
            .collect();
        let answer = door.ask("POST", path, &headers, form.as_bytes());
        self.keeps(&answer);
        answer
    }

    pub fn say(&self, door: &Door, path: &str, body: &Value) -> Answer {
        let cookie = self.cookie();
        let headers = [
            ("Cookie", cookie.as_str()),
            ("Content-Type", "application/json"),
        ];
        door.ask("POST", path, &headers, body.to_string().as_bytes())
    }

    /// A command as a page of this browser sends it.
    fn sends(&self, door: &Door, who: &str, stream: &str, part: &str, content: Value) -> Answer {
        let mut command = door.command(stream, part, content);
        command["who"] = json!(who);
        if let Some(id) = self.has("sign-in") {
            command["sign_in"] = json!(id);
        }
        self.say(door, "/api/commands", &command)
    }
}

/// A phone that was let in.
pub fn a_phone(door: &Door) -> Browser {
    let code = door.service.access().invite(Some("olga")).unwrap();
    let mut phone = Browser::default();
    // Whoever has joined nothing yet is no machine of its own: it shows a key that is none.
    phone.cookies.push(("device".to_owned(), "none".to_owned()));
    assert_eq!(phone.get(door, &format!("/join/{code}")).status, 200);
    let joined = phone.post(
        door,
        "/join",
        &format!("code={code}&name=Phone&place=stall"),
    );
    assert_eq!(
        (joined.status, joined.header("location")),
        (303, "/who"),
        "{joined:?}"
    );
    phone
}

pub fn signed_in(door: &Door, person: &str, pin: &str) -> Browser {
    let mut phone = a_phone(door);
    sign_in(door, &mut phone, person, pin);
    phone
}

pub fn sign_in(door: &Door, phone: &mut Browser, person: &str, pin: &str) {
    let form = format!("pin={pin}&again={pin}&back=%2F");
    let answer = phone.post(door, &format!("/sign-in/{person}"), &form);
    assert_eq!(answer.status, 303, "{answer:?}");
}

fn a_note() -> Value {
    json!({ "line-opened": { "line": Device::name(), "complaint": Device::words("it squeals"), "payer": "customer" } })
}

#[test]
fn a_phone_joins_once_and_shows_nothing_until_somebody_signs_in() {
    let door = a_shop();
    let stranger = door.ask("GET", "/api/orders", &[], b"");
    assert_eq!(stranger.status, 401);
    assert_eq!(stranger.json()["kind"], "sign-in");
    let mut phone = a_phone(&door);
    let asked = phone.get(&door, "/o/1001");
    assert_eq!(
        (asked.status, asked.header("location")),
        (303, "/who?back=%2Fo%2F1001")
    );
    assert_eq!(phone.get(&door, "/api/orders").status, 401);
    let who = phone.get(&door, "/who?back=%2Fo%2F1001");
    assert!(
        who.body.contains("/sign-in/tess?back=%2Fo%2F1001"),
        "{}",
        who.body
    );
    // The first time a PIN is set, and an easy one is refused.
    let easy = phone.post(
        &door,
        "/sign-in/tess",
        "pin=1234&again=1234&back=%2Fo%2F1001",
    );
    assert!(easy.status == 422 && easy.body.contains("first that anybody tries"));
    let slip = phone.post(&door, "/sign-in/tess", "pin=4827&again=4828&back=%2F");
    assert!(
        slip.status == 422 && slip.body.contains("not the same"),
        "{slip:?}"
    );
    let signed = phone.post(
        &door,
        "/sign-in/tess",
        "pin=4827&again=4827&back=%2Fo%2F1001",
    );
    assert_eq!((signed.status, signed.header("location")), (303, "/o/1001"));
    let page = phone.get(&door, "/o/1001");
    assert_eq!(page.status, 200);
    assert!(page.body.contains("data-who=\"tess\""));
    assert_eq!(page.header("cache-control"), "no-store");
    // The next time it is asked, and a wrong one lets nobody in.
    let mut other = a_phone(&door);
    assert_eq!(
        other
            .post(&door, "/sign-in/tess", "pin=0000&back=%2F")
            .status,
        422
    );
    assert_eq!(other.get(&door, "/o/1001").status, 303);
    // Somewhere else is nowhere to go.
    let away = other.post(&door, "/sign-in/tess", "pin=4827&back=%2F%2Fevil.example");
    assert_eq!(away.header("location"), "/");
}

#[test]
fn a_code_is_good_once_and_cookies_are_kept_from_scripts() {
    let door = a_shop();
    let code = door.service.access().invite(None).unwrap();
    let mut one = Browser::default();
    one.cookies.push(("device".to_owned(), "none".to_owned()));
    let joined = one.post(&door, "/join", &format!("code={code}&name=One&place=stall"));
    assert!(
        joined.header("set-cookie").contains("HttpOnly"),
        "{joined:?}"
    );
    assert!(joined.header("set-cookie").contains("SameSite=Strict"));
    let again = one
        .clone()
        .post(&door, "/join", &format!("code={code}&name=Two&place=stall"));
    assert!(
        again.status == 422 && again.body.contains("lets nobody in"),
        "{again:?}"
    );
    // A key that somebody made up for a device is none.
    let mut forged = Browser::default();
    forged.cookies.push(("device".to_owned(), "0".repeat(64)));
    forged.cookies.push(("who".to_owned(), "olga".to_owned()));
    forged
        .cookies
        .push(("device-id".to_owned(), "0".repeat(64)));
    assert_eq!(forged.get(&door, "/api/orders").status, 401);
}

/// Somebody who had a phone for a moment leaves a key and a sign-in of their own on it.
#[test]
fn what_was_planted_before_is_worth_nothing_after() {
    let door = a_shop();
    let planted = "7".repeat(64);
    let code = door.service.access().invite(Some("olga")).unwrap();
    let mut phone = Browser::default();
    phone.cookies.push(("device".to_owned(), planted.clone()));
    phone.cookies.push(("sign-in".to_owned(), planted.clone()));
    phone.post(
        &door,
        "/join",
        &format!("code={code}&name=Phone&place=stall"),
    );
    let key = phone.has("device").unwrap().to_owned();
    assert_ne!(key, planted);
    sign_in(&door, &mut phone, "tess", "4827");
    let first = phone.has("sign-in").unwrap().to_owned();
    assert_ne!(first, planted);
    // Whoever signs in next is under a sign-in of their own, and the one before stands no more.
    sign_in(&door, &mut phone, "tess", "4827");
    assert_ne!(phone.has("sign-in").unwrap(), first);
    let mut thief = Browser::default();
    thief.cookies.push(("device".to_owned(), planted.clone()));
    thief.cookies.push(("sign-in".to_owned(), first));
    assert_eq!(thief.get(&door, "/api/orders").status, 401);
    let sent = thief.sends(&door, "tess", "order:one", "fact", a_note());
    assert_eq!(sent.status, 401, "{sent:?}");
}

#[test]
fn what_a_browser_says_of_itself_counts_for_nothing() {
    let door = a_shop();
    let mut phone = signed_in(&door, "abe", "4827");
    phone.cookies.push(("who".to_owned(), "olga".to_owned()));
    // An apprentice stays one, whoever the cookie names.
    assert_eq!(phone.get(&door, "/o/1001/price").status, 422);
    assert_eq!(phone.get(&door, "/devices").status, 422);
    let forged = phone.sends(&door, "olga", "order:one", "fact", a_note());
    assert_eq!(forged.status, 422, "{forged:?}");
    assert!(
        forged.json()["what"]
            .as_str()
            .unwrap()
            .contains("not signed in on this device")
    );
    let own = phone.sends(&door, "abe", "order:one", "fact", a_note());
    assert_eq!(own.status, 200, "{own:?}");
    // A sign-in of another device is no good on this one.
    let olga = signed_in(&door, "olga", "5938");
    let mut stolen = phone.clone();
    stolen.cookies.retain(|(name, _)| name != "sign-in");
    stolen.cookies.push((
        "sign-in".to_owned(),
        olga.has("sign-in").unwrap().to_owned(),
    ));
    let lifted = stolen.sends(
        &door,
        "olga",
        "shop",
        "shop_fact",
        json!({ "departed": { "person": "tess" } }),
    );
    assert_eq!(lifted.status, 422, "{lifted:?}");
}

#[test]
fn a_tap_sent_late_is_of_who_made_it() {
    let door = a_shop();
    let mut phone = signed_in(&door, "tess", "4827");
    let before = phone.clone();
    sign_in(&door, &mut phone, "abe", "5938");
    let late = before.sends(&door, "tess", "order:one", "fact", a_note());
    assert_eq!(late.status, 200, "{late:?}");
    // And not of who is signed in now.
    let mixed = phone.sends(&door, "tess", "order:one", "fact", a_note());
    assert_eq!(mixed.status, 422);
}

#[test]
fn a_device_that_was_put_out_sees_nothing_and_loses_nothing() {
    let door = a_shop();
    let mut phone = signed_in(&door, "tess", "4827");
    let mut owner = signed_in(&door, "olga", "5938");
    let devices = door.service.access().devices().unwrap();
    let tess = devices.iter().find(|(id, _)| {
        let standing = door.service.access().standing(id).unwrap();
        standing.is_some_and(|(_, signed)| signed.person == "tess")
    });
    let (lost, _) = tess.unwrap();
    let out = owner.post(
        &door,
        "/devices/change",
        &format!("act=put-out&device={lost}"),
    );
    assert_eq!(
        (out.status, out.header("location")),
        (303, "/devices"),
        "{out:?}"
    );
    let page = phone.get(&door, "/o/1001");
    assert!(
        page.status == 401 && page.body.contains("It was put out"),
        "{page:?}"
    );
    assert_eq!(
        phone
            .post(&door, "/sign-in/tess", "pin=4827&back=%2F")
            .status,
        401
    );
    // A fact of before is kept and marked; a decision is not taken.
    let fact = phone.sends(&door, "tess", "order:one", "fact", a_note());
    assert_eq!(fact.status, 200, "{fact:?}");
    let decision = phone.sends(
        &door,
        "tess",
        "order:one",
        "request",
        json!({ "void": { "words": Device::words("a mistake") } }),
    );
    assert_eq!(decision.status, 401, "{decision:?}");
    let marked = owner.get(&door, "/devices");
    assert!(
        marked.body.contains("Came late") && marked.body.contains("the device was put out"),
        "{}",
        marked.body
    );
    let late = door.service.access().late_facts().unwrap();
    assert_eq!(late.len(), 1);
    owner.post(
        &door,
        "/devices/change",
        &format!("act=seen&command={}", late[0].0),
    );
    assert!(!owner.get(&door, "/devices").body.contains("Came late"));
}

#[test]
fn who_left_the_shop_is_out_and_what_they_did_before_is_kept() {
    let door = a_shop();
    let mut phone = signed_in(&door, "tess", "4827");
    let owner = signed_in(&door, "olga", "5938");
    let gone = owner.sends(
        &door,
        "olga",
        "shop",
        "shop_fact",
        json!({ "departed": { "person": "tess" } }),
    );
    assert_eq!(gone.status, 200, "{gone:?}");
    assert_eq!(phone.get(&door, "/o/1001").status, 303);
    let fact = phone.sends(&door, "tess", "order:one", "fact", a_note());
    assert_eq!(fact.status, 200, "{fact:?}");
    assert_eq!(
        door.service.access().late_facts().unwrap()[0].1.why,
        "the person had left the shop"
    );
}

#[test]
fn only_the_owner_puts_out_takes_a_pin_away_and_sets_limits() {
    let door = a_shop();
    let mut tess = signed_in(&door, "tess", "4827");
    for form in [
        "act=put-out&device=x",
        "act=take-pin&person=olga",
        "act=limits&desk=1&decision=1",
    ] {
        assert_eq!(
            tess.post(&door, "/devices/change", form).status,
            422,
            "{form}"
        );
    }
    // She may let a device in.
    let invited = tess.post(&door, "/devices/invite", "");
    assert!(
        invited.status == 200 && invited.body.contains("A code to scan"),
        "{invited:?}"
    );
    let mut olga = signed_in(&door, "olga", "5938");
    assert_eq!(
        olga.post(&door, "/devices/change", "act=limits&desk=5&decision=2")
            .status,
        303
    );
    assert_eq!(door.service.access().limits().unwrap().decision, 2);
    assert_eq!(
        olga.post(&door, "/devices/change", "act=limits&desk=0")
            .status,
        422
    );
    assert_eq!(olga.post(&door, "/devices/change", "act=dance").status, 400);
    assert_eq!(
        olga.post(&door, "/devices/change", "act=take-pin&person=tess")
            .status,
        303
    );
    assert_eq!(
        tess.get(&door, "/o/1001").status,
        303,
        "she is signed out everywhere"
    );
}

#[test]
fn another_person_checks_on_the_same_phone_with_their_own_pin() {
    let door = a_shop();
    let phone = signed_in(&door, "abe", "5938");
    signed_in(&door, "tess", "4827");
    let wrong = phone.say(
        &door,
        "/api/pin/beside",
        &json!({ "person": "tess", "pin": "5938" }),
    );
    assert_eq!(
        (wrong.status, wrong.json()["kind"].as_str()),
        (401, Some("pin"))
    );
    let right = phone.say(
        &door,
        "/api/pin/beside",
        &json!({ "person": "tess", "pin": "4827" }),
    );
    assert_eq!(right.status, 200, "{right:?}");
    let mut beside = phone.clone();
    beside.cookies.retain(|(name, _)| name != "sign-in");
    beside.cookies.push((
        "sign-in".to_owned(),
        right.json()["sign_in"].as_str().unwrap().to_owned(),
    ));
    let check = json!({ "checked": { "check": "second-person", "items": [], "after": [] } });
    let checked = beside.sends(&door, "tess", "order:one", "fact", check);
    assert_eq!(checked.status, 200, "{checked:?}");
    // The phone is still abe's.
    let mut still = phone.clone();
    assert!(
        still
            .get(&door, "/o/1001")
            .body
            .contains("data-who=\"abe\"")
    );
}

#[test]
fn tries_of_a_pin_are_counted_over_all_devices() {
    let door = a_shop();
    signed_in(&door, "tess", "4827");
    let mut phones: Vec<Browser> = (0..6).map(|_| a_phone(&door)).collect();
    let answers: Vec<String> = phones
        .iter_mut()
        .map(|phone| phone.post(&door, "/sign-in/tess", "pin=9173&back=%2F").body)
        .collect();
    assert!(
        answers[..5]
            .iter()
            .all(|page| page.contains("That is not the PIN"))
    );
    assert!(
        answers[5].contains("wrong too often: wait"),
        "{}",
        answers[5]
    );
    // Nor does the right one help now; the owner lifts it.
    assert_eq!(
        phones[0]
            .post(&door, "/sign-in/tess", "pin=4827&back=%2F")
            .status,
        422
    );
    let mut owner = signed_in(&door, "olga", "5938");
    owner.post(&door, "/devices/change", "act=lift&person=tess");
    assert_eq!(
        phones[0]
            .post(&door, "/sign-in/tess", "pin=4827&back=%2F")
            .status,
        303
    );
}

#[test]
fn a_stranger_who_asks_without_end_is_held() {
    let door = a_shop();
    let mut phone = signed_in(&door, "tess", "4827");
    // All on one connection, one behind the other: however slow the machine, faster than it may.
    let one = format!(
        "GET /assets/icon.svg HTTP/1.1\r\nHost: 127.0.0.1:{}\r\n",
        door.port
    );
    let all = format!("{one}\r\n").repeat(300) + &one + "Connection: close\r\n\r\n";
    let mut stream = door.connect();
    stream.write_all(all.as_bytes()).unwrap();
    let mut answers = Vec::new();
    stream.read_to_end(&mut answers).unwrap();
    assert!(String::from_utf8_lossy(&answers).contains("HTTP/1.1 429"));
    // Nobody else is.
    assert_eq!(phone.get(&door, "/assets/icon.svg").status, 200);
}

#[test]
fn the_machine_itself_is_in_and_signs_in_too() {
    let door = a_shop();
    let mut here = Browser::default();
    let asked = here.get(&door, "/");
    assert_eq!(
        (asked.status, asked.header("location")),
        (303, "/who?back=%2F")
    );
    assert!(here.has("device").is_some());
    assert_eq!(here.get(&door, "/who").status, 200);
    assert_eq!(door.service.access().devices().unwrap().len(), 1);
    sign_in(&door, &mut here, "olga", "5938");
    assert_eq!(here.get(&door, "/devices").status, 200);
}

#[test]
fn a_decision_asks_for_the_pin_again() {
    let door = a_shop();
    let phone = signed_in(&door, "olga", "5938");
    let device = door.service.access().devices().unwrap().remove(0).0;
    let signed = door.service.access().standing(&device).unwrap().unwrap();
    // As if the last PIN had been typed an hour ago.
    let (store, log) = door.service.record();
    let hour_ago = door.service.now() - std::time::Duration::from_secs(3_600);
    shop::access::Access::new(store, log, hour_ago)
        .proved(&signed.0)
        .unwrap();
    let void = || json!({ "void": { "words": Device::words("a mistake") } });
    let asked = phone.sends(&door, "olga", "order:one", "request", void());
    assert_eq!(
        (asked.status, asked.json()["kind"].as_str()),
        (401, Some("pin")),
        "{asked:?}"
    );
    // What is so is taken all the same.
    assert_eq!(
        phone
            .sends(&door, "olga", "order:one", "fact", a_note())
            .status,
        200
    );
    assert_eq!(
        phone
            .say(&door, "/api/pin", &json!({ "pin": "0000" }))
            .status,
        401
    );
    assert_eq!(
        phone
            .say(&door, "/api/pin", &json!({ "pin": "5938" }))
            .status,
        204
    );
    let done = phone.sends(&door, "olga", "order:one", "request", void());
    assert_eq!(done.status, 200, "{done:?}");
}

#[test]
fn the_owner_reads_who_opened_a_customers_pages() {
    let door = a_shop();
    let mut tess = signed_in(&door, "tess", "4827");
    for _ in 0..3 {
        assert_eq!(tess.get(&door, "/o/1001").status, 200);
    }
    assert_eq!(tess.get(&door, "/maps").status, 200);
    assert_eq!(tess.get(&door, "/devices/opened").status, 422);
    let opened = door.service.access().opened().unwrap();
    let pages: Vec<_> = opened
        .iter()
        .map(|one| (one.person.as_str(), one.page.as_str()))
        .collect();
    assert_eq!(pages, [("tess", "/o/1001")]);
    let mut owner = signed_in(&door, "olga", "5938");
    let page = owner.get(&door, "/devices/opened");
    assert!(page.status == 200 && page.body.contains("tess") && page.body.contains("/o/1001"));
}
