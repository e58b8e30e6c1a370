//! Every page that can be reached, as a browser would read it.

use crate::http::{Answer, Door};
use crate::shop_in_words::{ATTEMPT, an_order, set_up};
use html5ever::ParseOpts;
use html5ever::tendril::TendrilSink;
use markup5ever_rcdom::{Handle, NodeData, RcDom};
use serde_json::{Value, json};
use shop::SentCommand;
use std::collections::{BTreeMap, BTreeSet};

/// One element: its name and attributes.
type Element = (String, BTreeMap<String, String>);

/// A page read by the rules of HTML: its elements, its text.
struct Page {
    elements: Vec<Element>,
    text: String,
    errors: Vec<String>,
}

impl Page {
    fn read(html: &str) -> Self {
        let dom = html5ever::parse_document(RcDom::default(), ParseOpts::default()).one(html);
        let mut page = Self {
            elements: Vec::new(),
            text: String::new(),
            errors: dom
                .errors
                .borrow()
                .iter()
                .map(ToString::to_string)
                .collect(),
        };
        page.walk(&dom.document);
        page
    }

    fn walk(&mut self, node: &Handle) {
        match &node.data {
            NodeData::Element { name, attrs, .. } => {
                let attributes = attrs
                    .borrow()
                    .iter()
                    .map(|attribute| {
                        (
                            attribute.name.local.to_string(),
                            attribute.value.to_string(),
                        )
                    })
                    .collect();
                self.elements.push((name.local.to_string(), attributes));
            }
            NodeData::Text { contents } => self.text.push_str(&contents.borrow()),
            _ => {}
        }
        for child in node.children.borrow().iter() {
            self.walk(child);
        }
    }

    fn each<'a>(&'a self, attribute: &'a str) -> impl Iterator<Item = &'a str> {
        self.elements
            .iter()
            .filter_map(move |(_, attributes)| attributes.get(attribute).map(String::as_str))
    }
}

/// Every page that a link leads to, from the floor on.
fn crawl(door: &Door) -> BTreeMap<String, Answer> {
    let mut pages = BTreeMap::new();
    let mut todo = vec![
        "/".to_owned(),
        "/setup".to_owned(),
        "/order/first".to_owned(),
    ];
    while let Some(path) = todo.pop() {
        if pages.contains_key(&path) || path.starts_with("/assets") || path.starts_with("/manifest")
        {
            continue;
        }
        let answer = door.get(&path);
        todo.extend(
            Page::read(&answer.body)
                .each("href")
                .filter(|to| to.starts_with('/'))
                .map(|to| to.split('#').next().unwrap_or(to).to_owned()),
        );
        todo.extend(answer.headers.get("location").cloned());
        pages.insert(path, answer);
    }
    pages
}

fn a_door_with_an_order() -> Door {
    let door = Door::open();
    set_up(&door);
    an_order(&door, "first");
    door
}

#[test]
fn every_page_reads_as_html_and_runs_nothing_of_what_people_typed() {
    let door = a_door_with_an_order();
    let pages = crawl(&door);
    let mut marks = BTreeSet::new();
    for (path, answer) in &pages {
        if (300..400).contains(&answer.status) {
            continue;
        }
        assert_eq!(answer.status, 200, "{path}: {}", answer.body);
        if path.contains(".pdf") {
            assert_eq!(answer.header("content-type"), "application/pdf", "{path}");
            continue;
        }
        if path == "/record/export" {
            let kind = answer.header("content-type");
            assert_eq!(kind, "application/x-ndjson", "{path}");
            continue;
        }
        if path.contains("/sent-file") {
            let kind = answer.header("content-type");
            assert_eq!(kind, "application/json", "{path}");
            continue;
        }
        if path.contains(".csv") {
            let kind = answer.header("content-type");
            assert_eq!(kind, "text/csv; charset=utf-8", "{path}");
            continue;
        }
        assert!(
            answer.header("content-type").starts_with("text/html"),
            "{path}"
        );
        let policy = answer.header("content-security-policy");
        for rule in [
            "default-src 'none'",
            "script-src 'self'",
            "style-src 'self'",
            "frame-ancestors 'none'",
            "base-uri 'none'",
        ] {
            assert!(policy.contains(rule), "{path}: {policy}");
        }
        assert!(!policy.contains("unsafe"), "{path}: {policy}");
        assert_eq!(answer.header("x-content-type-options"), "nosniff", "{path}");

        let page = Page::read(&answer.body);
        assert_eq!(page.errors, Vec::<String>::new(), "{path}");
        assert_runs_nothing(path, &page);
        marks.extend(
            [
                "vehicle",
                "complaint",
                "screws",
                "snag",
                "part",
                "sublet",
                "entry",
                "person",
                "due",
                "cause",
                "ana",
                "stall",
                "plate",
                "waived",
                "noted",
            ]
            .into_iter()
            .filter(|mark| page.text.contains(&format!("{mark} {ATTEMPT}"))),
        );
    }
    assert_eq!(
        marks.len(),
        15,
        "the words stand on the pages as they were typed: {marks:?}"
    );
    for wanted in [
        "/",
        "/find",
        "/calls",
        "/who",
        "/setup",
        "/shop",
        "/record",
        "/calc",
        "/calc/coolant",
        "/calc/coolant/protection",
        "/calc/coolant/leak",
        "/calc/threads/repair",
        "/new",
        "/v/v",
        "/o/1001",
        "/o/1001/story",
        "/o/1001/mend",
        "/o/1001/walk",
        "/o/1001/off",
        "/o/1001/back",
        "/o/1001/open",
        "/o/1001/tray",
        "/o/1001/item/screws",
        "/o/1001/item/nameless",
        "/o/1001/snag",
        "/o/1001/due",
        "/o/1001/may",
        "/o/1001/may/hand-over",
        "/o/1001/hand-over",
        "/o/1001/desk",
        "/o/1001/price",
        "/o/1001/ask",
        "/o/1001/parts",
        "/o/1001/pay",
        "/o/1001/decline",
    ] {
        assert!(
            pages.contains_key(wanted),
            "no link leads to {wanted}: {:?}",
            pages.keys()
        );
    }
}

fn assert_runs_nothing(path: &str, page: &Page) {
    let scripts: Vec<_> = page
        .elements
        .iter()
        .filter(|(name, _)| name == "script")
        .collect();
    assert_eq!(scripts.len(), 1, "{path}");
    assert_eq!(
        scripts[0].1.get("src").map(String::as_str),
        Some("/assets/app.js"),
        "{path}"
    );
    for (name, attributes) in &page.elements {
        assert!(
            !["style", "iframe", "object", "embed", "base", "meta-refresh"]
                .contains(&name.as_str()),
            "{path}: <{name}>"
        );
        for (attribute, value) in attributes {
            assert!(!attribute.starts_with("on"), "{path}: <{name} {attribute}>");
            assert_ne!(attribute, "style", "{path}: <{name}>");
            if name == "img" && attribute == "src" {
                assert!(value.starts_with("/file/"), "{path}: {value}");
            }
            if ["href", "src", "action", "formaction"].contains(&attribute.as_str()) {
                let number = value.strip_prefix("tel:").filter(|_| attribute == "href");
                let dials = number
                    .is_some_and(|number| number.chars().all(|c| c.is_ascii_digit() || c == '+'));
                let here = value.starts_with('/') && !value.starts_with("//");
                assert!(
                    here || value.starts_with('#') || dials,
                    "{path}: {attribute}={value:?}"
                );
            }
        }
    }
}

#[test]
fn every_button_carries_commands_that_the_door_can_read() {
    let door = a_door_with_an_order();
    let mut kinds = BTreeSet::new();
    for (path, answer) in crawl(&door) {
        let page = Page::read(&answer.body);
        for commands in page.each("data-commands") {
            let commands: Value =
                serde_json::from_str(commands).unwrap_or_else(|e| panic!("{path}: {e}"));
            for template in commands.as_array().unwrap() {
                kinds.extend(kind_of(template));
                let read = tries(&page).filter_map(|typed| as_sent(template, &typed));
                let read: Vec<_> = read.map(serde_json::from_value::<SentCommand>).collect();
                assert!(
                    read.iter().any(Result::is_ok),
                    "{path}: {template}\n{:?}",
                    read.last()
                );
            }
        }
    }
    for wanted in [
        "moved",
        "found",
        "consented",
        "paid",
        "part-needed",
        "hand-over",
        "waive",
        "undo",
        "mended",
        "joined",
        "void",
    ] {
        assert!(kinds.contains(wanted), "no button says {wanted}: {kinds:?}");
    }
}

fn kind_of(template: &Value) -> Option<String> {
    let template = template.get("then").unwrap_or(template);
    let said = [
        "fact",
        "request",
        "vehicle_fact",
        "customer_fact",
        "shop_fact",
        "map_fact",
    ];
    let said = said.iter().find_map(|door| template.get(door))?;
    Some(said.as_object()?.keys().next()?.clone())
}

/// What somebody may have typed and chosen on the page: what stands in its fields, else
/// something that some field takes.
fn tries(page: &Page) -> impl Iterator<Item = BTreeMap<String, String>> {
    let mut fields: BTreeMap<String, Vec<String>> = BTreeMap::new();
    let mut chosen: BTreeMap<String, Vec<String>> = BTreeMap::new();
    let mut select = String::new();
    for (element, attributes) in &page.elements {
        let of = |name: &str| attributes.get(name).cloned().unwrap_or_default();
        match element.as_str() {
            "select" => select = of("name"),
            "option" => chosen.entry(select.clone()).or_default().push(of("value")),
            "input" if ["radio", "checkbox", "hidden"].contains(&of("type").as_str()) => {
                chosen.entry(of("name")).or_default().push(of("value"));
            }
            "input" | "textarea" => fields.entry(of("name")).or_default().push(of("value")),
            _ => {}
        }
    }
    for values in fields.values_mut() {
        values.retain(|value| !value.is_empty());
        values.extend(["1", "2026-12-01", "08:00"].map(str::to_owned));
    }
    // Only what is offered can be chosen.
    fields.extend(chosen);
    // With nothing typed or chosen, then with one thing after another.
    (0..9).map(move |nth| {
        let pick = |values: &Vec<String>| match nth {
            0 => String::new(),
            nth => values[(nth - 1).min(values.len() - 1)].clone(),
        };
        fields
            .iter()
            .map(|(name, values)| (name.clone(), pick(values)))
            .collect()
    })
}

/// The command that the page's script makes of a template; see `assets/app.js`.
fn as_sent(template: &Value, typed: &BTreeMap<String, String>) -> Option<Value> {
    let mut command = filled(template, typed)?;
    let sent = json!({
        "command_id": NAME, "device": "phone", "device_seq": 1,
        "happened_at": "2026-12-01T08:00:00Z", "who": NAME,
    });
    for (field, content) in sent.as_object().unwrap() {
        command
            .as_object_mut()
            .unwrap()
            .entry(field)
            .or_insert(content.clone());
    }
    let kept = |_: &[&[u8]]| Default::default();
    shop::record::take_texts(&mut command, &kept).expect("its texts have their form");
    Some(command)
}

const NAME: &str = "00000000-0000-4000-8000-000000000001";

fn filled(template: &Value, typed: &BTreeMap<String, String>) -> Option<Value> {
    let list = match template {
        Value::Object(holes) => holes,
        Value::Array(parts) => {
            return Some(
                parts
                    .iter()
                    .filter_map(|part| filled(part, typed))
                    .collect(),
            );
        }
        other => return Some(other.clone()),
    };
    let named = |hole: &str| list.get(hole).and_then(Value::as_str);
    let value = |hole: &str| {
        named(hole).map(|name| typed.get(name).cloned().unwrap_or_else(|| "1".to_owned()))
    };
    let said = |text: &str| json!({ "text": text, "salt": "00".repeat(32) });
    let file = || json!({ "file": "/9j/2w==", "media": "image/jpeg", "salt": "00".repeat(32) });
    let hole = list.keys().find(|key| key.starts_with('$'));
    let Some(hole) = hole else {
        let parts = list.iter();
        let parts = parts.filter_map(|(key, part)| Some((key.clone(), filled(part, typed)?)));
        return Some(Value::Object(parts.collect()));
    };
    Some(match hole.as_str() {
        "$field" => json!(value("$field").filter(|typed| !typed.is_empty())),
        "$amount" => {
            let unit = list["unit"].as_str().unwrap_or_default();
            json!(format!("{} {unit}", "1"))
        }
        "$flag" => json!(true),
        "$pieces" => json!([{ "position": 1, "length": null }]),
        "$numbers" => json!([1]),
        "$number" => json!(1),
        "$text" => said("typed"),
        "$words" => said(named("$words").unwrap_or_default()),
        "$document" => {
            json!({ "file": "dA==", "media": list.get("media").unwrap_or(&json!("text/plain")), "salt": "00".repeat(32) })
        }
        "$file" => file(),
        "$files" => json!([file()]),
        "$new" => json!(NAME),
        "$time" => json!("2026-12-01T08:00:00Z"),
        "$map" => {
            let chosen = value("$map").unwrap_or_default();
            let to = list["to"].get(&chosen).or_else(|| list.get("else"));
            return filled(to.unwrap_or(&Value::Null), typed);
        }
        "$sum" => json!("1"),
        // As if every field had been changed.
        "$changed" => return filled(&list["then"], typed),
        "$when" => {
            let typed_there = value("$when").unwrap_or_default();
            let holds = list
                .get("is")
                .and_then(Value::as_array)
                .is_none_or(|is| is.iter().any(|one| one == typed_there.as_str()));
            return if holds {
                filled(&list["then"], typed)
            } else {
                None
            };
        }
        "$join" => {
            let parts = list["$join"].as_array().into_iter().flatten();
            let parts = parts.filter_map(|part| filled(part, typed));
            json!(
                parts
                    .map(|part| part.as_str().unwrap_or_default().to_owned())
                    .collect::<String>()
            )
        }
        other => panic!("the script knows no hole {other}"),
    })
}

#[test]
fn what_is_not_there_is_told_with_ways_out() {
    let door = a_door_with_an_order();
    for path in [
        "/o/9999",
        "/o/abc",
        "/o/-1",
        "/o/99999999999999999999999",
        "/o/1001/item/none",
        "/o/1001/may/fly",
        "/v/none",
        "/order/none",
        "/who/none",
        "/nowhere",
        "/o/1001/nowhere",
        "/%00",
        "/../../etc/passwd",
    ] {
        let answer = door.get(path);
        assert_eq!(answer.status, 404, "{path}: {}", answer.body);
        let page = Page::read(&answer.body);
        assert_eq!(page.errors, Vec::<String>::new(), "{path}");
        let ways: BTreeSet<_> = page.each("href").collect();
        assert!(
            ways.contains("/") && ways.contains("/find"),
            "{path}: {ways:?}"
        );
        assert!(
            answer
                .header("content-security-policy")
                .contains("default-src 'none'"),
            "{path}"
        );
    }
}

#[test]
fn a_shop_that_is_not_set_up_leads_there_and_a_stranger_is_asked_who_they_are() {
    let door = Door::open();
    for path in ["/", "/find", "/new", "/record", "/nowhere"] {
        let answer = door.get(path);
        assert_eq!(
            (answer.status, answer.header("location")),
            (303, "/setup"),
            "{path}"
        );
    }
    assert_eq!(door.get("/setup").status, 200);
    set_up(&door);
    for cookie in ["", "who=", "who=nobody", "other=1; who=ben"] {
        let answer = door.ask("GET", "/", &[("Cookie", cookie)], b"");
        assert_eq!(
            (answer.status, answer.header("location")),
            (303, "/who"),
            "{cookie:?}"
        );
    }
    let chosen = door.ask("GET", "/who/ana", &[], b"");
    assert_eq!((chosen.status, chosen.header("location")), (303, "/"));
    let cookie = chosen.header("set-cookie");
    assert!(
        cookie.starts_with("who=ana;")
            && cookie.contains("HttpOnly")
            && cookie.contains("SameSite=Strict"),
        "{cookie}"
    );
    assert_eq!(
        door.ask("GET", "/", &[("Cookie", "who=ana")], b"").status,
        200
    );
}

#[test]
fn what_a_page_looks_with_is_served_here() {
    let door = Door::open();
    for (path, media) in [
        ("/assets/app.css", "text/css"),
        ("/assets/app.js", "text/javascript"),
        ("/assets/files.js", "text/javascript"),
        ("/assets/icon.svg", "image/svg+xml"),
    ] {
        let answer = door.get(path);
        assert_eq!(answer.status, 200);
        assert!(answer.header("content-type").starts_with(media), "{path}");
        for elsewhere in ["http://", "https://", "//cdn", "@import"] {
            let allowed = answer.body.replace("http://www.w3.org/2000/svg", "");
            assert!(
                !allowed.contains(elsewhere),
                "{path} asks for something at {elsewhere}"
            );
        }
    }
}
