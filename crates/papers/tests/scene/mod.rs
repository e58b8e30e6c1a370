//! Orders to print: a plain one, and one with everything on it.

#![allow(dead_code, reason = "each test file uses its own part")]
#![allow(clippy::unwrap_used, reason = "a test fails by panicking")]

#[path = "../../../shop/tests/bench/mod.rs"]
pub mod bench;

use bench::Bench;
use drawing::Area;
use papers::engine::page::{MARGINS_MM, MM, Mark, Paper};
use papers::engine::read::Told;
use papers::{Asked, Kind, Made};
use serde_json::{Value, json};
use shop::Device;

pub fn words(text: &str) -> Value {
    Device::words(text)
}

pub fn entry(charge: &str, label: &str, quantity: &str, each: &str) -> Value {
    json!({ "line": "line-1", "charge": charge, "label": words(label), "quantity": quantity,
        "each": each, "payer": "customer" })
}

/// The resealed housing of the benchmark, from complaint to payment.
pub fn resealed() -> (Bench, String) {
    let mut bench = Bench::new();
    let order = bench.open("Ada Brandt", "Korvane Drayman 2.3", "KD 2302");
    bench.tell(
        &order,
        json!({ "odometer": { "reading": "148200 km", "at": "in" } }),
    );
    for (text, said) in [
        (
            "cause",
            "Gasket of the oil-cooler housing hard and cracked; coolant weeped past it.",
        ),
        (
            "correction",
            "Housing resealed: gasket and 2 O-rings new. Housing bolt 6 broke below the face; its thread has a steel wire insert.",
        ),
    ] {
        bench.tell(&order, json!({ "line-worded": { "line": "line-1", "text": text, "words": words(said), "after": [] } }));
    }
    for (part, number, label, quantity, price) in [
        (
            "p1",
            "KD-4471",
            "Gasket set, oil-cooler housing: gasket, 2 O-rings",
            "1",
            "61.20",
        ),
        ("p2", "KD-5210", "Drive belt, 6 ribs", "1", "42.50"),
        (
            "p3",
            "NP-30W",
            "Engine oil, maker’s specification K2",
            "6.4",
            "12.50",
        ),
    ] {
        bench.tell(&order, json!({ "part-needed": { "part": part, "line": "line-1", "item": null, "label": words(label),
            "number": number, "quantity": quantity, "cost": null, "price": price, "core": null, "has_old": part == "p1" } }));
    }
    // 213.5 minutes: no number of hours with two decimals.
    bench
        .price(
            &order,
            &[
                entry(
                    "labour",
                    "Reseal the oil-cooler housing, book time",
                    "3.5583333333333333333333333333",
                    "120",
                ),
                entry(
                    "labour",
                    "Repair the thread of housing bolt 6",
                    "0.9166666666666666666666666667",
                    "120",
                ),
                entry("test", "Pressure test and diagnosis", "1", "72"),
                entry(
                    "part",
                    "Gasket set, oil-cooler housing: gasket, 2 O-rings",
                    "1",
                    "61.20",
                ),
                entry("part", "Drive belt, 6 ribs", "1", "42.50"),
                entry(
                    "part",
                    "Engine oil, maker’s specification K2",
                    "6.4",
                    "12.50",
                ),
                entry(
                    "supplies",
                    "Shop supplies: cleaner, sealant, rags; flat",
                    "1",
                    "30",
                ),
            ],
        )
        .unwrap();
    bench.tell(&order, bench::consent("1200"));
    (bench, order)
}

/// The same with its bolts and its housing off, in a tray and on the shelf.
pub fn taken_apart() -> (Bench, String) {
    let (mut bench, order) = resealed();
    let at = |nth: u16, length: &str| json!({ "position": nth, "length": length });
    bench.tell(&order, json!({ "declared": { "item": { "id": "bolts", "kind": "fasteners", "system": "oil", "zone": "below",
        "label": words("housing bolts"), "size": "M8 8.8", "pieces": [at(1, "30 mm"), at(2, "30 mm"), at(3, "75 mm"), at(4, "95 mm")],
        "pattern": { "passes": ["10 N·m", "22 N·m"], "sequence": [1, 2, 3, 4], "source": null },
        "spent": false, "may_miss": null, "put_in": null, "holds": null } } }));
    bench.declare(&order, "housing", ("part", "oil", "below"), 1);
    for (item, tray) in [("bolts", "tray B"), ("housing", "shelf")] {
        let view = bench.view(&order);
        let known = view.items.iter().find(|known| known.item == item).unwrap();
        let state = if item == "bolts" { "out" } else { "off" };
        bench.tell(&order, json!({ "moved": { "stage": null, "moves": [{ "item": item, "at": known.positions, "after": known.seen,
            "left": { "state": state, "piece": "original" }, "container": tray }] } }));
    }
    (bench, order)
}

pub fn made(bench: &Bench, order: &str, asked: &Asked) -> Made {
    bench
        .look(|snap| papers::make(snap, bench.number(order), asked))
        .unwrap()
}

pub fn invoice(bench: &Bench, order: &str) -> Made {
    made(bench, order, &Asked::of(Kind::Invoice))
}

/// All that is printed, line by line as it was set.
pub fn printed(paper: &Paper) -> String {
    let lines: Vec<&str> = paper.texts().map(|(_, text)| text.text.as_str()).collect();
    lines.join("\n")
}

/// All that is read, line by line as it was said.
pub fn told(parts: &[Told]) -> String {
    let line = |line: &papers::engine::read::Line| -> String {
        let words: String = line.iter().map(|words| words.text.as_str()).collect();
        format!("{words}\n")
    };
    let each = parts.iter().map(|part| match part {
        Told::Heading(_, lines)
        | Told::Paragraph(lines)
        | Told::Choices(lines)
        | Told::Blanks(lines)
        | Told::Signed(lines) => lines.iter().map(line).collect(),
        Told::Table(rows) => {
            let cells = rows.iter().flatten().flat_map(|cell| &cell.lines);
            cells.map(line).collect()
        }
        Told::Part(parts) => told(parts),
        Told::Drawing(..) | Told::Photo(..) => String::new(),
    });
    each.collect()
}

/// Nothing stands outside the margins, and no letters stand on others.
pub fn assert_laid_out(paper: &Paper) {
    let (width, height) = paper.size.points();
    let [left, right, top, bottom] = MARGINS_MM.map(|margin| margin * MM);
    for (nth, page) in paper.pages.iter().enumerate() {
        let mut seen: Vec<(Area, &str)> = Vec::new();
        for mark in &page.marks {
            let area = mark.area();
            let inside = area.x >= left - 0.1
                && area.right() <= width - right + 0.1
                && area.y >= top - 3.0
                && area.bottom() <= height - bottom + 0.1;
            assert!(inside, "page {}: {mark:?} at {area:?}", nth + 1);
            let (Mark::Text(text), false) = (mark, area.width < 0.1) else {
                continue;
            };
            // Letters fill their line less than this room says: a line may touch the next one's.
            let body = Area {
                y: area.y + 0.2 * text.size,
                height: area.height - 0.25 * text.size,
                ..area
            };
            for (other, words) in &seen {
                assert!(
                    !body.overlaps(other),
                    "page {}: {:?} stands on {words:?}",
                    nth + 1,
                    text.text
                );
            }
            seen.push((body, &text.text));
        }
    }
}

/// The benchmark's order, planned by its map, before anything is off.
pub fn planned() -> (Bench, String) {
    use shop::planning::{Asked as Wanted, adopt};
    use shop::repair::{ItemId, MapId};
    let (mut bench, order) = resealed();
    let text = include_str!("../../../../demo/maps/korvane-drayman-engine-front.toml");
    let text = Device::document(text, "application/toml");
    let id = MapId::new("korvane-drayman-engine-front");
    bench
        .send(
            &format!("map:{}", id.as_str()),
            "map_fact",
            json!({ "drafted": { "version": 1, "text": text } }),
        )
        .unwrap();
    let kept = bench.look(|snap| snap.map(&id, None)).unwrap();
    let map = kept.sound().unwrap().clone();
    bench
        .ask(&order, adopt(&kept.id, &map, &Device::words))
        .unwrap();
    let wanted = Wanted {
        targets: ["housing gasket", "housing o-rings"]
            .map(ItemId::new)
            .into(),
        ..Wanted::default()
    };
    bench.tell(&order, wanted.fact(&map, None));
    (bench, order)
}
