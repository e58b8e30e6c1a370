//! Labels on sheets of labels: each stands in its box, from the label that is the first.
//!
//! The measures of the boxes are those of the formats' names (common practice); that they fill
//! their sheet as they do follows from the measures alone.

#![allow(clippy::unwrap_used, reason = "a test fails by panicking")]

mod scene;

use drawing::Area;
use papers::engine::page::{MM, Mark, Paper};
use papers::{Asked, FORMATS, Format, Kind, Labels, SheetSize};
use scene::bench::Bench;
use scene::{made, printed, taken_apart};
use serde_json::json;

fn on(bench: &Bench, order: &str, format: &'static Format, from: usize) -> Paper {
    let asked = Asked {
        labels: Labels {
            format: Some(format),
            from,
        },
        address: Some("http://192.168.1.20:7461".to_owned()),
        ..Asked::of(Kind::Labels)
    };
    made(bench, order, &asked).paper
}

fn holds(outer: &Area, inner: &Area) -> bool {
    inner.x >= outer.x - 0.1
        && inner.right() <= outer.right() + 0.1
        && inner.y >= outer.y - 0.1
        && inner.bottom() <= outer.bottom() + 0.1
}

/// The boxes that anything is printed in, by page; every mark stands in one of them.
fn used(paper: &Paper, format: &Format) -> Vec<(usize, usize)> {
    let mut out = Vec::new();
    for (page, sheet) in paper.pages.iter().enumerate() {
        for mark in &sheet.marks {
            let area = mark.area();
            let mut boxes = 0..format.on_a_sheet();
            let found = boxes.find(|at| holds(&format.place(*at), &area));
            let at =
                found.unwrap_or_else(|| panic!("{}: {mark:?} stands in no label", format.name));
            out.push((page, at));
        }
    }
    out.sort_unstable();
    out.dedup();
    out
}

#[test]
fn the_boxes_have_their_measures_and_fill_the_sheet_evenly() {
    for format in &FORMATS {
        let (sheet_w, sheet_h) = format.sheet.points();
        let all: Vec<Area> = (0..format.on_a_sheet())
            .map(|at| format.place(at))
            .collect();
        let (first, last) = (all[0], all[all.len() - 1]);
        for one in &all {
            assert!((one.width / MM - format.label_mm.0).abs() < 1e-9);
            assert!((one.height / MM - format.label_mm.1).abs() < 1e-9);
        }
        assert!(
            (first.x - (sheet_w - last.right())).abs() < 1e-6,
            "{}",
            format.name
        );
        assert!(
            (first.y - (sheet_h - last.bottom())).abs() < 1e-6,
            "{}",
            format.name
        );
        assert!(
            first.x >= -1e-9 && first.y >= -1e-9,
            "{}: beyond the sheet",
            format.name
        );
        for (nth, one) in all.iter().enumerate() {
            for other in &all[nth + 1..] {
                let inner = Area {
                    x: one.x + 0.01,
                    y: one.y + 0.01,
                    width: one.width - 0.02,
                    height: one.height - 0.02,
                };
                assert!(!inner.overlaps(other), "{}: {nth}", format.name);
            }
        }
    }
    let place = |name: &str, at: usize| Format::named(name).unwrap().place(at);
    // By hand: 3 × 70 mm are the width of the sheet, 8 × 37 mm leave 1 mm of its height.
    let second = place("70x37", 4);
    assert!((second.x / MM - 70.0).abs() < 1e-9 && (second.y / MM - 37.5).abs() < 1e-9);
    // By hand: half an inch above, 5/32 in beside, 3/16 in between.
    let second = place("4x2in", 3);
    assert!((second.x - 72.0 * (5.0 / 32.0 + 4.0 + 3.0 / 16.0)).abs() < 1e-9);
    assert!((second.y - 72.0 * 2.5).abs() < 1e-9);
    assert!(Format::named("10x10").is_none());
}

#[test]
fn labels_stand_in_their_boxes_from_the_first_that_is_left() {
    let (mut bench, order) = taken_apart();
    // A long name and many things in one tray.
    for nth in 0..9 {
        let item = format!("clip-{nth}");
        bench.declare(&order, &item, ("part", "oil", "below"), 1);
        let view = bench.view(&order);
        let known = view.items.iter().find(|known| known.item == item).unwrap();
        bench.tell(&order, json!({ "moved": { "stage": null, "moves": [{ "item": item, "at": known.positions, "after": known.seen,
            "left": { "state": "off", "piece": "original" }, "container": "tray under the long bench by the window" }] } }));
    }
    for format in &FORMATS {
        let paper = on(&bench, &order, format, 1);
        assert_eq!(paper.size, format.sheet);
        let first = used(&paper, format);
        assert_eq!(first[0], (0, 0), "{}", format.name);
        let begun = on(&bench, &order, format, format.on_a_sheet());
        let from_last = used(&begun, format);
        assert_eq!(
            from_last[0],
            (0, format.on_a_sheet() - 1),
            "{}",
            format.name
        );
        assert_eq!(first.len(), from_last.len(), "{}", format.name);
        let text = printed(&paper);
        assert!(text.contains("1001") && !text.contains("Ada"), "{text}");
        let codes = paper.pages.iter().flat_map(|page| &page.marks);
        let codes = codes.filter(|mark| matches!(mark, Mark::Drawing(one) if one.leaf.is_some()));
        assert_eq!(
            codes.count(),
            first.len(),
            "{}: a code on each",
            format.name
        );
    }
    let letter = on(&bench, &order, Format::named("2.625x1in").unwrap(), 1);
    assert_eq!(letter.size, SheetSize::Letter);
}
