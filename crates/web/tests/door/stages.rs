//! A whole repair by its plan, pressed through page by page as a phone would: every stage
//! out, the way back, torque pass by pass, fluids, work, until everything is home.

use crate::http::Door;
use crate::shop_in_words::set_up;
use html5ever::ParseOpts;
use html5ever::tendril::TendrilSink;
use markup5ever_rcdom::{Handle, NodeData, RcDom};
use serde_json::{Map, Value, json};
use shop::Device;
use std::collections::BTreeMap;

const PICKUP: &str = include_str!("../../../../demo/maps/korvane-drayman-engine-front.toml");

/// A page as a thumb sees it: its text, and what each button sends with its form's fields.
pub struct Screen {
    pub text: String,
    buttons: Vec<(String, String, BTreeMap<String, String>)>,
    links: Vec<(String, String)>,
}

fn attribute(node: &Handle, name: &str) -> Option<String> {
    let NodeData::Element { attrs, .. } = &node.data else {
        return None;
    };
    let attrs = attrs.borrow();
    let found = attrs
        .iter()
        .find(|attribute| &*attribute.name.local == name);
    found.map(|attribute| attribute.value.to_string())
}

fn is(node: &Handle, element: &str) -> bool {
    matches!(&node.data, NodeData::Element { name, .. } if &*name.local == element)
}

fn text(node: &Handle) -> String {
    if let NodeData::Text { contents } = &node.data {
        return contents.borrow().to_string();
    }
    node.children.borrow().iter().map(text).collect()
}

fn fields(node: &Handle, out: &mut BTreeMap<String, String>) {
    if is(node, "input") {
        let value = attribute(node, "value").unwrap_or_default();
        let box_like =
            attribute(node, "type").is_some_and(|sort| sort == "checkbox" || sort == "radio");
        let left_out = box_like && attribute(node, "checked").is_none();
        if let Some(name) = attribute(node, "name").filter(|_| !left_out) {
            out.insert(name, value);
        }
    }
    for child in node.children.borrow().iter() {
        fields(child, out);
    }
}

impl Screen {
    fn read(html: &str) -> Self {
        let dom = html5ever::parse_document(RcDom::default(), ParseOpts::default()).one(html);
        let mut screen = Self {
            text: text(&dom.document),
            buttons: Vec::new(),
            links: Vec::new(),
        };
        screen.walk(&dom.document, &BTreeMap::new());
        screen
    }

    fn walk(&mut self, node: &Handle, form: &BTreeMap<String, String>) {
        let mut here = form.clone();
        if is(node, "form") {
            here.clear();
            fields(node, &mut here);
        }
        if let Some(commands) = attribute(node, "data-commands") {
            self.buttons.push((text(node), commands, here.clone()));
        }
        if let Some(to) = attribute(node, "href") {
            self.links.push((text(node), to));
        }
        for child in node.children.borrow().iter() {
            self.walk(child, &here);
        }
    }

    pub fn button(&self, label: &str) -> Option<&(String, String, BTreeMap<String, String>)> {
        self.buttons.iter().find(|(text, ..)| text.contains(label))
    }

    /// Every button whose label says this.
    pub fn buttons_named(&self, label: &str) -> Vec<&Button> {
        let all = self.buttons.iter();
        all.filter(|(text, ..)| text.contains(label)).collect()
    }

    pub fn link(&self, label: &str) -> String {
        let found = self.links.iter().find(|(text, _)| text.contains(label));
        found
            .map(|(_, to)| to.clone())
            .unwrap_or_else(|| panic!("no link {label}: {}", self.text))
    }
}

/// A button: its label, its commands, and what its form holds.
pub type Button = (String, String, BTreeMap<String, String>);

/// Fills a template as the page's script does; nothing, where it is left out.
fn fill(
    template: &Value,
    form: &BTreeMap<String, String>,
    names: &mut BTreeMap<String, String>,
) -> Option<Value> {
    let field = |name: &Value| {
        form.get(name.as_str().unwrap())
            .cloned()
            .unwrap_or_default()
    };
    match template {
        Value::Array(list) => Some(
            list.iter()
                .filter_map(|one| fill(one, form, names))
                .collect(),
        ),
        Value::Object(map) if map.contains_key("$field") => {
            let value = field(&map["$field"]);
            Some(if value.is_empty() {
                Value::Null
            } else {
                Value::from(value)
            })
        }
        Value::Object(map) if map.contains_key("$amount") => {
            let value = field(&map["$amount"]);
            let bare = value.ends_with(|c: char| c.is_ascii_digit());
            let unit = map["unit"].as_str().unwrap();
            Some(match (value.is_empty(), bare) {
                (true, _) => Value::Null,
                (false, true) => Value::from(format!("{value} {unit}")),
                (false, false) => Value::from(value),
            })
        }
        Value::Object(map) if map.contains_key("$words") => {
            Some(Device::words(map["$words"].as_str().unwrap()))
        }
        Value::Object(map) if map.contains_key("$text") => {
            let value = field(&map["$text"]);
            let or = map.get("or").and_then(Value::as_str);
            Some(match (value.as_str(), or) {
                ("", None) => Value::Null,
                ("", Some(or)) => Device::words(or),
                (text, _) => Device::words(text),
            })
        }
        Value::Object(map) if map.contains_key("$new") => {
            let name = map["$new"].as_str().unwrap().to_owned();
            Some(Value::from(
                names.entry(name).or_insert_with(Device::name).clone(),
            ))
        }
        Value::Object(map) if map.contains_key("$flag") => {
            Some(Value::from(!field(&map["$flag"]).is_empty()))
        }
        Value::Object(map) if map.contains_key("$file") => Some(Value::Null),
        Value::Object(map) if map.contains_key("$files") => Some(json!([])),
        Value::Object(map) if map.contains_key("$map") => {
            let value = field(&map["$map"]);
            let to = map["to"].get(value.as_str());
            fill(to.or(map.get("else")).unwrap_or(&Value::Null), form, names)
        }
        Value::Object(map) if map.contains_key("$join") => {
            let parts = map["$join"].as_array().unwrap().iter();
            let joined: Vec<String> = parts
                .filter_map(|part| fill(part, form, names))
                .map(|part| part.as_str().unwrap().to_owned())
                .collect();
            Some(Value::from(joined.concat()))
        }
        Value::Object(map) if map.contains_key("$when") => {
            let value = Value::from(field(&map["$when"]));
            let holds = match map.get("is") {
                Some(is) => is.as_array().unwrap().contains(&value),
                None => value != "",
            };
            if !holds {
                return None;
            }
            fill(&map["then"], form, names)
        }
        Value::Object(map) => {
            assert!(!map.keys().any(|key| key.starts_with('$')), "{template}");
            let filled = map
                .iter()
                .filter_map(|(key, part)| Some((key.clone(), fill(part, form, names)?)));
            Some(filled.collect::<Map<_, _>>().into())
        }
        other => Some(other.clone()),
    }
}

/// Presses a button; fields may be written or unticked first.
pub fn press(door: &Door, screen: &Screen, label: &str, change: &[(&str, &str)]) {
    for command in pressed(screen, label, change) {
        let answer = door.post(sent(door, &command).to_string().as_bytes());
        assert_eq!(answer.status, 200, "{command}: {answer:?}");
    }
}

/// A command of a button as a device sends it.
pub fn sent(door: &Door, command: &Value) -> Value {
    let parts = command.as_object().unwrap();
    let (part, content) = parts.iter().find(|(key, _)| *key != "stream").unwrap();
    door.command(parts["stream"].as_str().unwrap(), part, content.clone())
}

/// The commands that a button makes.
pub fn pressed(screen: &Screen, label: &str, change: &[(&str, &str)]) -> Vec<Value> {
    let button = screen
        .button(label)
        .unwrap_or_else(|| panic!("no button {label}: {}", screen.text));
    made_of(button, change)
}

/// Presses this button, its form changed so.
pub fn press_with(door: &Door, button: &Button, change: &[(&str, &str)]) {
    for command in made_of(button, change) {
        let answer = door.post(sent(door, &command).to_string().as_bytes());
        assert_eq!(answer.status, 200, "{command}: {answer:?}");
    }
}

/// The commands that this button makes, its form changed so.
pub fn made_of((_, commands, form): &Button, change: &[(&str, &str)]) -> Vec<Value> {
    let mut form = form.clone();
    for (name, value) in change {
        form.insert((*name).to_owned(), (*value).to_owned());
    }
    let templates: Value = serde_json::from_str(commands).unwrap();
    let mut names = BTreeMap::new();
    let templates = templates.as_array().unwrap().iter();
    templates
        .filter_map(|template| fill(template, &form, &mut names))
        .collect()
}

pub fn opened() -> Door {
    let door = Door::open();
    set_up(&door);
    let text = Device::document(PICKUP, "application/toml");
    let drafted = json!({ "drafted": { "version": 1, "text": text } });
    door.send("map:pickup", "map_fact", drafted);
    let label = Device::words("Korvane Drayman 2.3");
    door.send(
        "customer:c",
        "customer_fact",
        json!({ "declared": { "texts": { "name": Device::words("Ada") } } }),
    );
    door.send(
        "vehicle:v",
        "vehicle_fact",
        json!({ "declared": { "texts": { "label": label }, "vin_read": "none-readable", "rust": null, "customer": "c" } }),
    );
    door.send(
        "order:a",
        "request",
        json!({ "open": { "vehicle": "v", "customer": "c" } }),
    );
    door
}

pub fn screen(door: &Door, path: &str) -> Screen {
    let answer = door.get(path);
    assert_eq!(answer.status, 200, "{path}: {}", answer.body);
    Screen::read(&answer.body)
}

/// The plan to an item, taken over.
pub fn work_by(door: &Door, query: &str) {
    let plan = screen(door, &format!("/o/1001/plan?{query}"));
    assert!(
        plan.text.contains("Proven: nothing is cheaper"),
        "{}",
        plan.text
    );
    press(door, &plan, "Work by it", &[]);
}

/// The press by which a stage goes on as shown.
pub fn goes_on(stage: &Screen) -> Option<&'static str> {
    [
        "Out as shown",
        "On as shown",
        "On and tight",
        "On, pass 1 done",
        "Tight",
        "Pass 1 done",
        "Pass 2 done",
    ]
    .into_iter()
    .find(|label| stage.button(label).is_some())
}

/// Goes on as the stages say until no button is left but the last; how many were pressed.
fn to_the_end(door: &Door) -> usize {
    let mut pressed = 0;
    loop {
        let stage = screen(door, "/o/1001/stage");
        let Some(label) = goes_on(&stage) else {
            return pressed;
        };
        press(door, &stage, label, &[]);
        pressed += 1;
        assert!(pressed < 100, "it never ends: {}", stage.text);
    }
}

pub fn order(door: &Door) -> Value {
    door.get("/api/orders/1001").json()
}

fn open(door: &Door) -> Vec<String> {
    let items = order(door)["open_items"].clone();
    let texts = items.as_array().unwrap().iter();
    texts
        .map(|item| item["text"].as_str().unwrap().to_owned())
        .collect()
}

fn debts(door: &Door) -> Vec<String> {
    let debts = order(door)["debts"].clone();
    let texts = debts.as_array().unwrap().iter();
    texts
        .map(|debt| debt["text"].as_str().unwrap().to_owned())
        .collect()
}

#[test]
fn a_repair_goes_out_and_home_again_by_its_stages() {
    let door = opened();
    work_by(&door, "for=housing+gasket&for=housing+o-rings");
    let out = to_the_end(&door);
    assert!((7..=12).contains(&out), "{out} stages out");
    let there = screen(&door, "/o/1001/stage");
    assert!(there.text.contains("You are there"), "{}", there.text);
    let off = open(&door);
    for item in [
        "housing bolts M8 8.8: 7 out (1–7)",
        "shroud: off",
        "rag in the oil port: still inside",
    ] {
        assert!(off.iter().any(|text| text == item), "{item} not in {off:?}");
    }
    assert!(!off.iter().any(|text| text.contains("wheel")), "{off:?}");
    assert!(
        !off.iter().any(|text| text.contains("look, and say which")),
        "{off:?}"
    );
    assert!(
        debts(&door)
            .iter()
            .any(|debt| debt.contains("clean the face")),
        "{:?}",
        debts(&door)
    );

    press(&door, &there, "Now the way back", &[]);
    to_the_end(&door);
    let home = screen(&door, "/o/1001/stage");
    assert!(
        home.text.contains("Everything by the map is home"),
        "{}",
        home.text
    );
    assert_eq!(open(&door), Vec::<String>::new());
    let owed = debts(&door);
    for done in ["clean the face", "look for leaks", "torque again", "clock"] {
        assert!(
            !owed.iter().any(|debt| debt.contains(done)),
            "{done} in {owed:?}"
        );
    }
}

pub fn declare(door: &Door, id: &str, is: (&str, &str), label: &str, count: u16) {
    let pieces: Vec<_> = (1..=count)
        .map(|position| json!({ "position": position, "length": null }))
        .collect();
    let item = json!({ "id": id, "kind": is.0, "system": is.1, "zone": "above", "label": Device::words(label),
        "size": null, "pieces": pieces, "pattern": null, "spent": false, "may_miss": null, "put_in": null, "holds": null });
    door.send("order:a", "fact", json!({ "declared": { "item": item } }));
}

#[test]
fn what_went_otherwise_is_planned_from() {
    let door = opened();
    work_by(&door, "for=bracket");
    // The first stage, but two things are left on, and one pulley bolt of three.
    let stage = screen(&door, "/o/1001/stage");
    press(&door, &stage, "Out as shown", &[("row-0", "")]);
    let again = screen(&door, "/o/1001/stage");
    assert!(again.text.contains("stages left"), "{}", again.text);
    // Something that the map does not know comes off, and a bolt snaps.
    declare(&door, "shield", ("cover", "body"), "heat shield", 1);
    declare(
        &door,
        "pump-bolts",
        ("fasteners", "steering"),
        "pump bolts",
        3,
    );
    for (item, at, state) in [
        ("shield", 1, json!("off")),
        ("pump-bolts", 2, json!({ "stub": { "holds": false } })),
    ] {
        let moves = json!([{ "item": item, "at": [at], "after": [],
            "left": { "state": state, "piece": "original" }, "container": null }]);
        door.send(
            "order:a",
            "fact",
            json!({ "moved": { "stage": null, "moves": moves } }),
        );
    }
    let stage = screen(&door, "/o/1001/stage");
    assert!(
        stage.text.contains("pump bolts 2 snapped"),
        "{}",
        stage.text
    );
    assert!(
        stage
            .text
            .contains("heat shield, which the map does not know"),
        "{}",
        stage.text
    );
    to_the_end(&door);
    let state = door.get("/o/1001/state");
    assert!(
        state
            .body
            .contains("[items.\"heat shield\"]\nis = \"cover\"\nstands = \"off\""),
        "{}",
        state.body
    );
    assert!(
        state.body.contains("stands = { out = [1, 3], stub = [2] }"),
        "{}",
        state.body
    );
    // Everything home again, but what the stub keeps.
    let there = screen(&door, "/o/1001/stage");
    press(&door, &there, "Now the way back", &[]);
    to_the_end(&door);
    let left = open(&door);
    assert!(
        left.iter().any(|text| text.contains("pump bolts")),
        "{left:?}"
    );
    assert!(
        !left.iter().any(|text| text.contains("heat shield")),
        "{left:?}"
    );
}

#[test]
fn a_bolt_tightened_before_its_belt_is_on_is_torqued_again() {
    let door = opened();
    work_by(&door, "for=pulley");
    to_the_end(&door);
    let view = order(&door);
    let items = view["items"].as_array().unwrap();
    let seen = |item: &str| {
        let found = items.iter().find(|known| known["item"] == item).unwrap();
        found["seen"].clone()
    };
    let tight = json!([{ "item": "pulley-bolts", "at": [1, 2, 3], "after": seen("pulley-bolts"),
        "left": { "state": "tight", "piece": "original" }, "container": null }]);
    door.send(
        "order:a",
        "fact",
        json!({ "moved": { "stage": null, "moves": tight } }),
    );
    let owed = debts(&door);
    assert!(
        owed.iter().any(|debt| debt.contains("pulley bolts")),
        "{owed:?}"
    );
}

#[test]
fn the_wheel_goes_back_so_that_it_rolls() {
    let door = opened();
    work_by(&door, "for=liner");
    to_the_end(&door);
    let found = screen(&door, "/o/1001/plan?pick=yes");
    let plan = screen(&door, &found.link("Button it up so that it rolls"));
    assert!(plan.text.contains("wheel nuts"), "{}", plan.text);
    press(&door, &plan, "Work by it", &[]);
    // Two studs were made larger: what holds there now is told before the map's torque.
    door.send(
        "order:a",
        "fact",
        json!({ "difference-noted": { "id": "d", "item": "wheel-nuts", "at": [2, 3],
        "what": "larger", "size": "M14x1.5", "torque": "140 Nm", "words": null } }),
    );
    press(&door, &screen(&door, "/o/1001/stage"), "Not tight yet", &[]);
    let tighten = screen(&door, "/o/1001/stage");
    for said in [
        "60\u{202f}Nm",
        "pass 1 of 2",
        "In a star",
        "Korvane workshop manual",
        "2019-03-01",
        "This vehicle differs at 2, 3: now M14x1.5, 140 Nm",
    ] {
        assert!(
            tighten.text.contains(said),
            "{said} not in {}",
            tighten.text
        );
    }
    to_the_end(&door);
    let gates = order(&door)["gates"].clone();
    let roll = gates
        .as_array()
        .unwrap()
        .iter()
        .find(|gate| gate["gate"] == "roll")
        .unwrap();
    assert_eq!(roll["may"], true, "{roll}");
    assert!(
        open(&door).iter().any(|text| text.contains("liner")),
        "{:?}",
        open(&door)
    );
}

#[test]
fn a_draft_says_what_it_grew_from_and_the_page_opens_whatever_it_says() {
    let door = opened();
    let answer = door.ask(
        "POST",
        "/maps/odd/edit",
        &[
            ("Cookie", "who=ana"),
            ("Content-Type", "application/x-www-form-urlencoded"),
        ],
        b"base=4294967295&text=vehicle+%3D+%22x%22",
    );
    assert_eq!(answer.status, 200, "{}", answer.body);
}

#[test]
fn what_a_map_is_made_of_is_shown_and_never_run() {
    let door = opened();
    let name = "<img src=x onerror=alert(1)> & \\\"B+\\\" nut";
    let map = format!(
        "vehicle = \"<script>alert(1)</script>\"\n[items.\"{name}\"]\nis = \"cover\"\nplace = \"'><b>\"\n\
         tools = [\"</details>\"]\n[items.hose]\nis = \"hose\"\nneeds = [\"{name} off\"]\n"
    );
    let text = Device::document(&map, "application/toml");
    door.send(
        "map:odd",
        "map_fact",
        json!({ "drafted": { "version": 1, "text": text } }),
    );
    for path in [
        "/maps",
        "/maps/odd",
        "/o/1001/plan?map=odd",
        "/o/1001/plan?map=odd&for=hose",
        "/o/1001/plan/price?map=odd&for=hose",
    ] {
        let answer = door.get(path);
        assert_eq!(answer.status, 200, "{path}: {}", answer.body);
        for raw in ["<script>alert", "<img", "'><b>"] {
            assert!(
                !answer.body.contains(raw),
                "{path}: {raw} in {}",
                answer.body
            );
        }
    }
    work_by(&door, "map=odd&for=hose");
    let stage = door.get("/o/1001/stage");
    assert!(!stage.body.contains("<img"), "{}", stage.body);
    press(&door, &Screen::read(&stage.body), "Out as shown", &[]);
    assert!(
        open(&door).iter().any(|text| text.contains("<img src=x")),
        "{:?}",
        open(&door)
    );
}

#[test]
fn a_map_that_is_not_there_or_has_errors_is_told_with_its_lines() {
    let door = opened();
    let nowhere = door.get("/o/1001/plan?map=nonsense");
    assert_eq!(nowhere.status, 404);
    let text = Device::document("vehicle = \"Van\"\n[items.tray]\n", "application/toml");
    door.send(
        "map:half",
        "map_fact",
        json!({ "drafted": { "version": 1, "text": text } }),
    );
    let half = door.get("/o/1001/plan?map=half&for=tray");
    assert_eq!(half.status, 422);
    for said in ["It has errors", "half.toml:2:", "does not say what it is"] {
        assert!(half.body.contains(said), "{said} not in {}", half.body);
    }
    // What the map does not have is passed over, and something is asked for again.
    let unknown = screen(
        &door,
        "/o/1001/plan?map=pickup&for=nonsense&without=x.y&taken=moon&aim=what",
    );
    assert!(
        unknown.text.contains("What do you want to get at?"),
        "{}",
        unknown.text
    );
}

#[test]
fn what_was_off_before_the_map_came_is_made_one_with_it() {
    let door = opened();
    declare(&door, "typed-1", ("cover", "body"), "Engine cover", 1);
    let moves = json!([{ "item": "typed-1", "at": [1], "after": [], "left": { "state": "off", "piece": "original" }, "container": null }]);
    door.send(
        "order:a",
        "fact",
        json!({ "moved": { "stage": null, "moves": moves } }),
    );
    let plan = screen(&door, "/o/1001/plan?for=duct+clamps");
    assert!(
        plan.text.contains("which the map does not know"),
        "{}",
        plan.text
    );
    press(&door, &plan, "They are the same", &[]);
    let plan = screen(&door, "/o/1001/plan?for=duct+clamps");
    for gone in ["which the map does not know", "by the same name"] {
        assert!(!plan.text.contains(gone), "{gone} in {}", plan.text);
    }
    work_by(&door, "for=duct+clamps");
    let stage = screen(&door, "/o/1001/stage");
    assert!(
        stage.text.contains("duct clamps") && !stage.text.contains("engine cover"),
        "{}",
        stage.text
    );
    to_the_end(&door);
    press(
        &door,
        &screen(&door, "/o/1001/stage"),
        "Now the way back",
        &[],
    );
    to_the_end(&door);
    assert_eq!(open(&door), Vec::<String>::new());
}

#[test]
fn a_group_that_nobody_planned_is_told_its_size_and_torque() {
    let door = opened();
    declare(
        &door,
        "shield-bolts",
        ("fasteners", "exhaust"),
        "shield bolts",
        2,
    );
    let path = "/o/1001/item/shield-bolts";
    let shown = screen(&door, path);
    assert!(shown.text.contains("no torque told"), "{}", shown.text);
    press(&door, &shown, "It is that size", &[("size", "M8x30 8.8")]);
    let shown = screen(&door, path);
    for told in ["M8x30 8.8", "Bolt yields, oiled (no specification)"] {
        assert!(shown.text.contains(told), "{told}: {}", shown.text);
    }
    // Told wrong, then right by somebody who saw it, however the commands are called.
    for torque in ["52 Nm", "21 Nm", "25 Nm", "22 Nm"] {
        let shown = screen(&door, path);
        let fields = [("pass-1", torque), ("pass-2", ""), ("source", "the manual")];
        press(&door, &shown, "That is its torque", &fields);
        let item = &order(&door)["items"][0];
        assert_eq!(item["passes"], json!([torque]));
        assert_eq!(item["torque_from"], json!("the manual"));
    }
    let loose = json!([{ "item": "shield-bolts", "at": [1, 2], "after": [],
        "left": { "state": { "loose": { "passes": 0 } }, "piece": "original" }, "container": null }]);
    door.send(
        "order:a",
        "fact",
        json!({ "moved": { "stage": null, "moves": loose } }),
    );
    let back = screen(&door, "/o/1001/back");
    assert!(back.text.contains("22 Nm"), "{}", back.text);
    let story = screen(&door, "/o/1001/story");
    assert!(story.text.contains("torque 22 Nm"), "{}", story.text);
}

#[test]
fn a_snag_in_a_stage_of_several_groups_asks_with_which() {
    let door = opened();
    work_by(&door, "for=housing+gasket&for=housing+o-rings");
    let mut asked = 0;
    let mut at_once = 0;
    for _ in 0..40 {
        let stage = screen(&door, "/o/1001/stage");
        if stage.button("Out as shown").is_none() {
            break;
        }
        let to = stage.links.iter().find(|(text, _)| text == "Snag");
        match to.map(|(_, to)| to.as_str()) {
            Some("/o/1001/stage?snag=which") => {
                asked += 1;
                let which = screen(&door, "/o/1001/stage?snag=which");
                assert!(which.text.contains("What is it with?"), "{}", which.text);
                assert!(
                    which.buttons.len() + which.links.len() > 2,
                    "{}",
                    which.text
                );
            }
            _ => at_once += 1,
        }
        press(&door, &stage, "Out as shown", &[]);
    }
    assert!(asked > 0 && at_once > 0, "asked {asked}, at once {at_once}");
}

#[test]
fn what_the_plan_renews_is_needed_priced_and_fitted_in_one_tap_each() {
    let door = opened();
    work_by(&door, "for=housing+gasket&for=housing+o-rings");
    let parts = screen(&door, "/o/1001/parts");
    assert!(
        parts.text.contains("By the plan these go on new"),
        "{}",
        parts.text
    );
    press(&door, &parts, "They are needed", &[]);
    let needed = order(&door)["parts"].as_array().unwrap().len();
    assert!(needed >= 3, "{needed}");
    // The price of each is asked where it is not known, and it goes on top of what stands.
    for nth in 1..=needed {
        let parts = screen(&door, "/o/1001/parts");
        press(&door, &parts, "Put it on the price", &[("each", "4.50")]);
        let entries = order(&door)["price"]["entries"].clone();
        assert_eq!(entries.as_array().unwrap().len(), nth);
    }
    let parts = screen(&door, "/o/1001/parts");
    assert!(parts.button("Put it on the price").is_none());
    assert!(parts.button("They are needed").is_none());
    to_the_end(&door);
    let there = screen(&door, "/o/1001/stage");
    press(&door, &there, "Now the way back", &[]);
    to_the_end(&door);
    // What went on new was fitted with the same tap.
    for part in order(&door)["parts"].as_array().unwrap() {
        assert_eq!(part["adrift"], "0", "{part}");
    }
}

#[test]
fn a_way_that_is_taken_back_comes_off_the_price_too() {
    let door = opened();
    declare(&door, "hb", ("fasteners", "oil"), "housing bolts", 7);
    door.send("order:a", "request", json!({ "price": { "entries": [{ "line": null, "charge": "labour",
        "label": Device::words("Reseal"), "quantity": "3.6667", "each": "120", "payer": "customer" }] } }));
    door.send(
        "order:a",
        "fact",
        json!({ "snag-found": { "snag": "s", "item": "hb", "at": [6],
        "what": "snapped", "sits": "below", "words": null, "photos": [], "moves": [] } }),
    );
    let asked = "/o/1001/snag/s?asked=1&thread=M8x1.25&joint=other&class=8.8&bolt-length=75%20mm&torque=22%20Nm\
        &by=2&engaged=18&depth=26&hole=blind&boss=19&in=aluminium";
    let entries = || order(&door)["price"]["entries"].clone();
    let ways = screen(&door, asked);
    press(&door, &ways, "Take this way", &[]);
    assert_eq!(entries().as_array().unwrap().len(), 3, "{}", ways.text);
    let taken = screen(&door, "/o/1001/snag/s");
    assert!(taken.text.contains("Off the price too"), "{}", taken.text);
    press(&door, &taken, "Take the way back", &[("off-price", "")]);
    assert_eq!(
        entries().as_array().unwrap().len(),
        3,
        "left there, as wanted"
    );

    let ways = screen(&door, asked);
    press(&door, &ways, "Take this way", &[]);
    assert_eq!(entries().as_array().unwrap().len(), 5);
    let taken = screen(&door, "/o/1001/snag/s");
    press(&door, &taken, "Take the way back", &[]);
    let left = entries();
    assert_eq!(left.as_array().unwrap().len(), 3, "its own, and no other");
    assert_eq!(left[0]["quantity_exact"], "3.6667");
    assert_eq!(order(&door)["parts"], json!([]));
}
