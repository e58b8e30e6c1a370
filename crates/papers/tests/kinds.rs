//! The other papers: what stands on each, and that nothing stands on something else.

#![allow(clippy::unwrap_used, reason = "a test fails by panicking")]

mod scene;

use papers::{Asked, Kind, make};
use scene::{assert_laid_out, entry, made, planned, printed, resealed, taken_apart, words};
use serde_json::json;
use shop::Device;

#[test]
fn every_paper_has_a_name_of_its_own() {
    for kind in Kind::ALL {
        assert_eq!(Kind::named(kind.name()), Some(kind));
    }
    assert_eq!(Kind::named("credit"), Some(Kind::CreditNote));
    assert_eq!(Kind::named("recipe"), None);
}

#[test]
fn the_estimate_says_what_it_comes_to_and_where_to_sign() {
    let (bench, order) = resealed();
    let made = made(&bench, &order, &Asked::of(Kind::Estimate));
    assert_eq!(made.paper.title, "Estimate 1001");
    let printed = printed(&made.paper);
    for words in [
        "You told us",
        "We propose",
        "822.70",
        "987.24",
        "Yes, go ahead up to",
        "No, put it back together",
        "for Corner Works",
        "Page 1 of 1",
    ] {
        assert!(printed.contains(words), "{words} is not in\n{printed}");
    }
    assert_laid_out(&made.paper);
}

#[test]
fn a_signature_on_the_screen_stands_on_the_paper() {
    let (mut bench, order) = resealed();
    let mut file = Vec::new();
    let mut encoder = png::Encoder::new(&mut file, 60, 20);
    encoder.set_color(png::ColorType::Grayscale);
    let mut writer = encoder.write_header().unwrap();
    let pixel = |at: usize| if at.is_multiple_of(7) { 0 } else { 255 };
    writer
        .write_image_data(&(0..1200).map(pixel).collect::<Vec<u8>>())
        .unwrap();
    writer.finish().unwrap();
    bench.clock.later(5);
    let mut yes = scene::bench::consent("1300");
    yes["consented"]["signature"] = Device::file(&file, "image/png");
    yes["consented"]["way"] = json!("in-person");
    yes["consented"]["person"] = words("Ada Brandt");
    bench.tell(&order, yes);
    let made = made(&bench, &order, &Asked::of(Kind::Estimate));
    assert_laid_out(&made.paper);
    let drawn: Vec<_> = made.paper.pages[0]
        .marks
        .iter()
        .filter_map(|mark| match mark {
            papers::engine::page::Mark::Drawing(mark) => Some(mark.drawing.title.as_str()),
            _ => None,
        })
        .collect();
    assert_eq!(drawn, ["The signature of Ada Brandt"]);
}

#[test]
fn added_work_shows_the_old_sum_the_new_one_and_the_question() {
    let (mut bench, order) = resealed();
    let view = bench.view(&order);
    let mut all: Vec<_> = view
        .price
        .unwrap()
        .open
        .iter()
        .map(shop::view::PriceEntryView::sent)
        .collect();
    bench.clock.later(60);
    all.push(entry("labour", "Repair one more thread", "2", "120"));
    bench.price(&order, &all).unwrap();
    let made = made(&bench, &order, &Asked::of(Kind::AddedWork));
    let printed = printed(&made.paper);
    for words in [
        "What is added",
        "Repair one more thread",
        "240.00",
        "1,275.24",
        "1,200.00",
        "75.24 over",
        "Yes, up to 1,275.24 with tax in total",
    ] {
        assert!(
            printed.replace('\n', " ").contains(words),
            "{words} is not in\n{printed}"
        );
    }
    assert_laid_out(&made.paper);
}

#[test]
fn who_collects_it_dismantled_gets_every_loose_thing_in_a_list() {
    let (bench, order) = taken_apart();
    let made = made(&bench, &order, &Asked::of(Kind::Apart));
    let printed = printed(&made.paper);
    for words in [
        "must not be driven",
        "housing bolts, M8 8.8",
        "4 pieces",
        "tray B",
        "shelf",
        "Keys handed over",
    ] {
        assert!(printed.contains(words), "{words} is not in\n{printed}");
    }
    assert!(!printed.contains("987.24"), "no price stands on it");
    assert_laid_out(&made.paper);
}

#[test]
fn a_label_names_its_tray_and_draws_its_bolts_and_bears_no_name_of_a_person() {
    let (bench, order) = taken_apart();
    let asked = Asked {
        address: Some("http://192.168.0.5:8080/".to_owned()),
        ..Asked::of(Kind::Labels)
    };
    let made = made(&bench, &order, &asked);
    let printed = printed(&made.paper);
    for words in [
        "B",
        "shelf",
        "1001",
        "Korvane Drayman 2.3",
        "2 × M8 × 30, housing bolts at 1, 2, 10 N·m, then 22 N·m",
        "label 2 of 2",
        "1 × M8 × 95",
        "1 × housing",
        "this line is 50 mm",
    ] {
        assert!(
            printed.replace('\n', "").contains(words),
            "{words} is not in\n{printed}"
        );
    }
    assert!(
        !printed.contains("Ada") && !printed.contains("KD 2302"),
        "{printed}"
    );
    let bytes = String::from_utf8_lossy(&made.pdf);
    assert!(!bytes.contains("Ada"), "nor in the file");
    let drawings: Vec<_> = made.paper.pages[0]
        .marks
        .iter()
        .filter_map(|mark| match mark {
            papers::engine::page::Mark::Drawing(mark) => Some(mark),
            _ => None,
        })
        .collect();
    let mm = papers::engine::page::MM;
    let widths: Vec<f64> = drawings
        .iter()
        .filter(|mark| mark.leaf.is_none())
        .map(|mark| mark.drawing.width * mark.scale / mm)
        .collect();
    // A head is 0.65 of the thickness high; 95 mm is longer than a label and drawn broken.
    assert_eq!(
        widths.iter().map(|mm| mm.round()).collect::<Vec<_>>(),
        [35.0, 80.0, 84.0]
    );
    assert_eq!(
        drawings.iter().filter(|mark| mark.leaf.is_some()).count(),
        3,
        "a code on each label"
    );
}

#[test]
fn before_anything_is_off_the_labels_are_empty_trays() {
    let (bench, order) = resealed();
    let made = made(&bench, &order, &Asked::of(Kind::Labels));
    assert!(
        ["A", "H"]
            .iter()
            .all(|name| made.paper.texts().any(|(_, text)| text.text == *name))
    );
}

#[test]
fn a_work_sheet_without_a_plan_says_how_to_make_one() {
    let (bench, order) = resealed();
    let number = bench.number(&order);
    let trouble = bench
        .look(|snap| make(snap, number, &Asked::of(Kind::WorkSheet)))
        .unwrap_err();
    assert!(
        trouble.what.contains("no plan") && trouble.mend.contains("order 1001"),
        "{trouble:?}"
    );
}

#[test]
fn who_is_shown_no_prices_prints_none() {
    let (mut bench, order) = resealed();
    bench.shop(json!({ "joined": { "person": "kim", "name": Device::words("Kim"), "roles": ["apprentice"] } }));
    let number = bench.number(&order);
    let kim = bench.service.caller(Some("kim"), "phone").unwrap();
    let ask = |kind| {
        bench
            .service
            .look(&kim, |snap| make(snap, number, &Asked::of(kind)))
    };
    assert!(ask(Kind::Invoice).unwrap_err().what.contains("prices"));
    assert!(ask(Kind::Labels).is_ok());
}

#[test]
fn the_work_sheet_goes_down_as_it_comes_off_and_up_as_it_goes_back() {
    let (bench, order) = planned();
    let made = made(&bench, &order, &Asked::of(Kind::WorkSheet));
    assert_laid_out(&made.paper);
    let whole = printed(&made.paper).replace('\n', "");
    for words in [
        "Down this side as it comes off",
        "Up this side as it goes back",
        "10 Nm, then 22 Nm",
        "Lift and support as the lift's",
        "coolant: 9.2 L, the drain gives 5.5 L: out",
        "housing gasket",
    ] {
        assert!(whole.contains(words), "{words} is not in\n{whole}");
    }
    // What falls due stands once, where it is done and under what is to do before it leaves.
    assert!(!whole.contains("owed"), "{whole}");
    // The first stage off stands in the first row, and beside it the last one back.
    let column = |left: bool| -> Vec<u32> {
        let (width, _) = made.paper.size.points();
        let bold = made
            .paper
            .texts()
            .filter(|(_, text)| (text.x < width / 2.0) == left);
        bold.filter_map(|(_, text)| text.text.parse().ok())
            .filter(|nth| *nth < 100)
            .collect()
    };
    let (down, up) = (column(true), column(false));
    assert!(down.len() > 3 && up.len() > 3, "{down:?} {up:?}");
    assert_eq!(
        down,
        (1..=down.last().copied().unwrap()).collect::<Vec<_>>()
    );
    assert_eq!(up, (1..=up[0]).rev().collect::<Vec<_>>());
}

#[test]
fn the_how_to_sheet_says_what_came_off_and_how_it_went_back_and_names_no_customer() {
    let (bench, order) = taken_apart();
    let made = made(&bench, &order, &Asked::of(Kind::HowTo));
    assert_laid_out(&made.paper);
    assert_eq!(made.paper.title, "How it was done 1001");
    let printed = printed(&made.paper);
    assert!(printed.contains("Comes off"), "{printed}");
    let view = bench.view(&order);
    assert!(!printed.contains(&view.row.customer), "{printed}");
    assert!(!printed.contains(&view.row.plate), "{printed}");
}

#[test]
fn what_people_wrote_on_a_how_to_sheet_is_printed_beside_its_stage() {
    let (mut bench, order) = taken_apart();
    let number = bench.number(&order);
    let how = bench
        .look(|snap| shop::how_to::how_to(snap, number))
        .unwrap();
    bench.tell(&order, json!({ "how-to-titled": { "words": words("Housing without the manifold off"), "after": [] } }));
    for (note, stage, text) in [
        ("a", None, "Do it cold"),
        ("b", Some(&how.off[0].told_by), "The long one sits at 12"),
    ] {
        bench.tell(&order, json!({ "how-to-noted": { "note": note, "stage": stage, "words": words(text), "after": [] } }));
    }
    let made = made(&bench, &order, &Asked::of(Kind::HowTo));
    assert_laid_out(&made.paper);
    let printed = printed(&made.paper).replace('\n', " ");
    for words in [
        "Housing without the manifold off",
        "Do it cold",
        "Note: The long one sits at 12.",
    ] {
        assert!(printed.contains(words), "{words} is not in\n{printed}");
    }
}

#[test]
fn of_an_order_in_which_nothing_was_moved_there_is_no_how_to_sheet() {
    let mut bench = scene::bench::Bench::new();
    let order = bench.open("Ada Brandt", "Selwick Rue 1.4", "SR 1408");
    let number = bench.number(&order);
    let trouble = bench
        .look(|snap| make(snap, number, &Asked::of(Kind::HowTo)))
        .unwrap_err();
    assert_eq!(trouble.what, "nothing was moved in order 1001");
}
