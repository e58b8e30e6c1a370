//! The invoice: its values, its layout, its bytes.

#![allow(clippy::unwrap_used, reason = "a test fails by panicking")]

mod scene;

use papers::{Asked, Kind, SheetSize, make};
use proptest::prelude::*;
use rust_decimal::Decimal;
use scene::bench::Bench;
use scene::{assert_laid_out, entry, invoice, made, printed, resealed};
use serde_json::json;
use shop::Amount;

#[test]
fn what_is_charged_is_printed_with_its_number_tax_and_total() {
    let (mut bench, order) = resealed();
    let draft = invoice(&bench, &order);
    assert!(
        draft.paper.title.starts_with("Draft invoice"),
        "{}",
        draft.paper.title
    );
    bench.ask(&order, json!({ "charge": {} })).unwrap();
    bench.tell(
        &order,
        json!({ "paid": { "payer": "customer", "amount": "500", "by": "card", "deposit": false } }),
    );
    let made = invoice(&bench, &order);
    assert_eq!(made.paper.title, "Invoice INV-1");
    assert_eq!(made.file, "Invoice-INV-1.pdf");
    let printed = printed(&made.paper);
    for words in [
        "KD-4471",
        "427.00",
        "110.00",
        "822.70",
        "Tax: VAT 20 %",
        "164.54",
        "987.24",
        "Still to pay, EUR",
        "487.24",
        "Wednesday 25 November 2026",
        "Ada Brandt",
    ] {
        assert!(printed.contains(words), "{words} is not in\n{printed}");
    }
    assert_eq!(made.values["gross"], "987.24");
    assert_eq!(made.values["still_to_pay"], "487.24");
    assert_laid_out(&made.paper);
}

/// What a customer multiplies comes to the amount: 213.5 minutes are no 3.56 hours.
#[test]
fn what_is_multiplied_comes_to_the_amount() {
    let (bench, order) = resealed();
    let view = bench.view(&order);
    for entry in &view.price.unwrap().entries {
        let number = |text: &str| text.parse::<Decimal>().unwrap();
        let product = number(entry.quantity.exact()) * number(entry.each.exact());
        assert_eq!(
            product.round_dp_with_strategy(2, rust_decimal::RoundingStrategy::MidpointAwayFromZero),
            number(entry.amount.exact()),
            "{entry:?}"
        );
    }
    assert!(printed(&invoice(&bench, &order).paper).contains("3.5583"));
}

#[test]
fn the_same_values_give_the_same_bytes_in_every_program() {
    let (bench, order) = resealed();
    let first = invoice(&bench, &order);
    let again = invoice(&bench, &order);
    assert!(first.pdf == again.pdf);
    let number = bench.number(&order);
    let other = bench.another_program();
    let other = other
        .look(&shop::Caller::program(), |snap| {
            make(snap, number, &Asked::of(Kind::Invoice))
        })
        .unwrap();
    assert!(first.pdf == other.pdf);
}

#[test]
fn it_is_tagged_for_screen_readers_and_bears_no_time_or_name_of_a_machine() {
    let (bench, order) = resealed();
    let made = invoice(&bench, &order);
    let bytes = String::from_utf8_lossy(&made.pdf);
    for part in [
        "/StructTreeRoot",
        "/MarkInfo",
        "<pdfuaid:part>1</pdfuaid:part>",
        "<pdfaid:part>3</pdfaid:part>",
        "<pdfaid:conformance>A</pdfaid:conformance>",
        "/EmbeddedFiles",
    ] {
        assert!(bytes.contains(part), "{part}");
    }
    assert!(
        bytes.contains("2026-11-25T00:00:00"),
        "the day that it bears"
    );
    assert!(
        !bytes.contains("/Author") && !bytes.contains("dc:creator>"),
        "no author"
    );
    assert!(!bytes.contains("T08:"), "no hour");
}

#[test]
fn letters_that_cannot_be_set_are_named_before_anything_is_printed() {
    let (mut bench, order) = resealed();
    bench
        .price(&order, &[entry("part", "Dichtung 🙂 für שלום", "1", "10")])
        .unwrap();
    let number = bench.number(&order);
    let trouble = bench
        .look(|snap| make(snap, number, &Asked::of(Kind::Invoice)))
        .unwrap_err();
    let reasons = trouble.reasons.join("\n");
    assert!(
        reasons.contains("U+1F642") && reasons.contains("U+05E9"),
        "{trouble:?}"
    );
    assert!(
        trouble.mend.contains("Latin, Greek or Cyrillic"),
        "{trouble:?}"
    );
}

#[test]
fn hostile_text_stays_text() {
    let (mut bench, order) = resealed();
    let hostile = ") Tj ET /OpenAction << /S /JavaScript /JS (app.alert(1)) >> BT ( <script>alert(1)</script>";
    bench
        .price(&order, &[entry("part", hostile, "1", "10")])
        .unwrap();
    let made = invoice(&bench, &order);
    let bytes = String::from_utf8_lossy(&made.pdf);
    assert!(!bytes.contains("/JavaScript") && !bytes.contains("/OpenAction"));
    assert!(
        printed(&made.paper)
            .replace('\n', "")
            .contains("/OpenAction << /S")
    );
    assert_laid_out(&made.paper);
}

#[test]
fn two_hundred_lines_go_on_over_pages_with_their_heads() {
    let (mut bench, order) = resealed();
    let all: Vec<_> = (1..=200)
        .map(|nth| {
            entry(
                "part",
                &format!("Clip number {nth}, one of many"),
                "1",
                "1.10",
            )
        })
        .collect();
    bench.price(&order, &all).unwrap();
    let made = invoice(&bench, &order);
    let pages = made.paper.pages.len();
    assert!((5..=9).contains(&pages), "{pages}");
    assert_laid_out(&made.paper);
    let on = |words: &str| -> Vec<usize> {
        made.paper
            .texts()
            .filter(|(_, text)| text.text.trim() == words)
            .map(|(page, _)| page)
            .collect()
    };
    assert_eq!(
        on("Amount"),
        (0..=on("Clip number 200, one of many")[0]).collect::<Vec<_>>(),
        "the head is on every page of the table"
    );
    assert_eq!(
        on("Total, EUR"),
        on("Clip number 200, one of many"),
        "no sum stands without its last line"
    );
    assert_eq!(on(&format!("Page 2 of {pages}")), [1]);
}

#[test]
fn it_prints_on_letter_too() {
    let (bench, order) = resealed();
    let asked = Asked {
        size: Some(SheetSize::Letter),
        ..Asked::of(Kind::Invoice)
    };
    let made = made(&bench, &order, &asked);
    assert_eq!(made.paper.size.points(), (612.0, 792.0));
    assert_laid_out(&made.paper);
}

#[test]
fn an_order_with_nothing_on_it_prints() {
    let mut bench = Bench::new();
    let order = bench.open("-", "-", "-");
    let made = invoice(&bench, &order);
    assert!(printed(&made.paper).contains("No price yet."));
    assert_laid_out(&made.paper);
}

fn arbitrary_entry() -> impl Strategy<Value = (String, String, String, String)> {
    let charge = prop_oneof![
        Just("labour"),
        Just("part"),
        Just("supplies"),
        Just("sublet"),
        Just("test")
    ];
    let label = prop_oneof![
        "[a-zA-Zéß][a-zA-Zéß ,.]{0,39}",
        "[a-z]{60}",
        "([a-z]{1,12} ){20,60}",
        "[α-ω]{3,20}",
        "[А-я]{3,20}"
    ];
    (charge, label, 1..90_000u32, 0..9_000_000u32).prop_map(|(charge, label, quantity, each)| {
        let decimal =
            |number: u32, places: u32| Decimal::new(i64::from(number), places).to_string();
        (
            charge.to_owned(),
            label,
            decimal(quantity, 4),
            decimal(each, 2),
        )
    })
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(64))]

    /// Whatever is on an order, its sums are those of the JSON, and nothing is cut off or
    /// stands on something else.
    #[test]
    fn any_order_is_laid_out_with_its_own_sums(
        all in proptest::collection::vec(arbitrary_entry(), 1..45),
        name in "[A-Za-zéÅßñ][A-Za-zéÅßñ' -]{0,70}",
    ) {
        let mut bench = Bench::new();
        let order = bench.open(&name, "Small Van", "A 1");
        let all: Vec<_> = all.iter().map(|(charge, label, quantity, each)| entry(charge, label, quantity, each)).collect();
        bench.price(&order, &all).unwrap();
        let made = invoice(&bench, &order);
        assert_laid_out(&made.paper);
        let view = bench.view(&order);
        let total = view.totals.first().unwrap();
        prop_assert_eq!(&made.values["gross"], &json!(total.gross));
        prop_assert_eq!(&made.values["net"], &json!(total.net));
        let printed = printed(&made.paper).replace(',', "");
        // What a screen shows is what is printed: the same sums, the same letters.
        let told = scene::told(&papers::read(&made.paper)).replace(',', "");
        for amount in [&total.net, &total.tax, &total.gross].map(Amount::exact) {
            prop_assert!(printed.lines().any(|line| line.trim() == amount), "{} in {}", amount, printed);
            prop_assert!(told.lines().any(|line| line.trim() == amount), "{} in {}", amount, told);
        }
        for part in &all {
            let label = part["label"]["text"].as_str().unwrap();
            let squeezed = |text: &str| text.replace(',', " ").split_whitespace().collect::<String>();
            prop_assert!(told.lines().any(|line| squeezed(line).starts_with(&squeezed(label))), "{} in {}", label, told);
        }
    }
}
