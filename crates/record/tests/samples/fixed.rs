//! Fixed samples of every kind of event: one bare, and so many filled ones that every
//! word an enumeration is stored as comes at least once.

use super::templates;
use serde_json::{Map, Value, json};

const STATES: &[&str] = &[
    "on",
    "off",
    "tight",
    "cracked",
    "out",
    "plugged",
    "unplugged",
    "at-level",
    "low",
    "done",
    "due",
    "outside",
    "inside",
];

/// Every event: its stream, its kind, its content.
pub fn events() -> Vec<(&'static str, &'static str, Value)> {
    let mut orders = templates::facts();
    orders.extend(templates::decisions());
    [
        ("order:order-1", orders),
        ("vehicle:vehicle-1", templates::vehicle_facts()),
        ("customer:customer-1", templates::customer_facts()),
        ("shop", templates::shop_facts()),
        ("map:map-1", templates::map_facts()),
    ]
    .into_iter()
    .flat_map(|(stream, all)| all.into_iter().map(move |one| (stream, one)))
    .flat_map(|(stream, (kind, template))| {
        (0..=most(&template)).map(move |nth| (stream, kind, sample(&template, nth)))
    })
    .collect()
}

/// How many filled samples show every choice in a template.
fn most(template: &Value) -> usize {
    match template {
        Value::String(hole) => match hole.as_str() {
            "$state" => STATES.len() + 3,
            "$need" => 3,
            "$place" => 3,
            "$until" => templates::GATES.split(' ').count() + 1,
            "$bool" => 2,
            hole => hole
                .strip_prefix("$code:")
                .map_or(1, |codes| codes.split(' ').count()),
        },
        Value::Array(list) => list.iter().map(most).max().unwrap_or(1),
        Value::Object(map) => map.values().map(most).max().unwrap_or(1),
        _ => 1,
    }
}

/// The bare sample, if `nth` is nought; else the nth filled one.
fn sample(template: &Value, nth: usize) -> Value {
    let bare = nth == 0;
    match template {
        Value::String(hole) if hole.starts_with('$') => hole_filled(hole, nth.saturating_sub(1)),
        Value::Array(_) if bare => json!([]),
        Value::Array(entry) => json!([sample(&entry[0], nth), sample(&entry[0], nth + 1)]),
        Value::Object(fields) => match (fields.get("?"), fields.get("{}")) {
            (Some(_), _) if bare => Value::Null,
            (Some(inner), _) => sample(inner, nth),
            (_, Some(_)) if bare => json!({}),
            (_, Some(pair)) => Value::Object(
                (0..most(&pair[0]))
                    .map(|key| {
                        let key = hole_filled(pair[0].as_str().unwrap(), key);
                        (key.as_str().unwrap().to_owned(), sample(&pair[1], nth))
                    })
                    .collect(),
            ),
            _ => fields
                .iter()
                .filter(|(_, inner)| !bare || inner.get("+").is_none())
                .map(|(key, inner)| {
                    let inner = inner.get("+").unwrap_or(inner);
                    (key.clone(), sample(inner, nth))
                })
                .collect::<Map<_, _>>()
                .into(),
        },
        other => other.clone(),
    }
}

fn hole_filled(hole: &str, nth: usize) -> Value {
    let of = |codes: &[&str]| Value::from(codes[nth % codes.len()]);
    if let Some(codes) = hole.strip_prefix("$code:") {
        return of(&codes.split(' ').collect::<Vec<_>>());
    }
    match hole {
        "$id" => json!(format!("name-{nth}")),
        "$words" => json!(format!("{:064x}", 0xb0_1f_u64 + nth as u64)),
        "$token" => of(&["M8x75 8.8", "tray A", "image.jpeg", "no. 4/2"]),
        "$written" => of(&["9.2 L", "35 Nm", "148200 km", "5/16 in", "-3,5 °C"]),
        "$short" => of(&["EUR", "VAT", "Europe/Lisbon"]),
        "$decimal" => of(&["904.40", "0", "-12.5", "3.6666666667", "120"]),
        "$date" => json!(format!("2026-11-{:02}", 1 + nth % 28)),
        "$time" => json!(format!("2026-11-25T08:{:02}:00Z", nth % 60)),
        "$week" => of(&["mon-fri 08:00-12:00, 12:30-17:00", "sat 09:00-13:00"]),
        "$string" => of(&["", "{\"a\":1}", "x = 2 · 3\n  = 6", "é \u{1f527}"]),
        "$key" => of(&[
            "owed:LevelCold:oil",
            "not-priced",
            "open:screws:1=Out,2=Out",
        ]),
        "$u8" | "$u16" | "$u32" | "$u64" => json!(nth),
        "$bool" => json!(nth.is_multiple_of(2)),
        "$state" => match nth % (STATES.len() + 3) {
            at if at < STATES.len() => of(STATES),
            13 => json!({ "loose": { "passes": 2 } }),
            14 => json!({ "stub": { "holds": true } }),
            _ => json!({ "stub": { "holds": false } }),
        },
        "$need" => {
            let is = json!({ "is": { "item": "belt", "at": [nth], "states": ["on"] } });
            match nth % 3 {
                0 => is,
                1 => json!({ "all": [is, { "any": [] }] }),
                _ => {
                    json!({ "any": [is, { "is": { "item": "pin", "at": [], "states": ["outside", "inside"] } }] })
                }
            }
        }
        "$until" => {
            let gates: Vec<_> = templates::GATES.split(' ').collect();
            match gates.get(nth % (gates.len() + 1)) {
                Some(gate) => json!({ "before": gate }),
                None => json!({ "later": { "date": "2026-11-26", "distance": null } }),
            }
        }
        "$place" => match nth % 3 {
            0 => json!({ "stall": "stall-1" }),
            1 => json!("yard"),
            _ => json!("away"),
        },
        other => panic!("no hole is called {other}"),
    }
}
