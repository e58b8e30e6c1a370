//! Papers in German, what stands of the shop on them, photos, and what a place's rules miss.

#![allow(clippy::unwrap_used, reason = "a test fails by panicking")]

mod scene;

use papers::{Asked, Kind, e_invoice_of, make, missing};
use scene::bench::Bench;
use scene::{assert_laid_out, made, planned, printed, resealed, taken_apart, words};
use serde_json::json;
use shop::Device;
use shop::record::v1::codes::PayerForm;
use shop::repair::Language;

/// A picture of eight by eight points, all of one red.
fn png() -> Vec<u8> {
    let mut out = Vec::new();
    let mut encoder = png::Encoder::new(&mut out, 8, 8);
    encoder.set_color(png::ColorType::Rgb);
    encoder.set_depth(png::BitDepth::Eight);
    let mut writer = encoder.write_header().unwrap();
    writer.write_image_data(&[200, 30, 20].repeat(64)).unwrap();
    writer.finish().unwrap();
    out
}

fn tell_of_the_shop(bench: &mut Bench) {
    bench.shop(json!({ "letterhead-told": { "letterhead": {
        "address": words("Am Hafen 4\n20457 Hamburg"), "phone": words("040 555 01 20"), "mail": null,
        "tax_number": words("DE123456789"), "bank": words("IBAN DE02 1203 0000 0000 2020 51"),
        "terms": words("Zahlbar in 14 Tagen."), "language": "de" }, "after": [] } }));
    bench.shop(json!({ "logo-told": { "logo": Device::file(&png(), "image/png"), "after": [] } }));
}

#[test]
fn an_invoice_in_german_has_the_shop_its_sums_and_days_as_germans_write_them() {
    let (mut bench, order) = resealed();
    tell_of_the_shop(&mut bench);
    bench.ask(&order, json!({ "charge": {} })).unwrap();
    bench.tell(
        &order,
        json!({ "paid": { "payer": "customer", "amount": "500", "by": "card", "deposit": true } }),
    );
    let made = made(&bench, &order, &Asked::of(Kind::Invoice));
    assert_eq!(made.paper.title, "Rechnung INV-1");
    assert_eq!(made.paper.language, "de");
    let text = printed(&made.paper);
    for said in [
        "Am Hafen 4, 20457 Hamburg",
        "Steuernummer DE123456789",
        "IBAN DE02 1203 0000 0000 2020 51",
        "Zahlbar in 14 Tagen.",
        "Mittwoch, 25. November 2026",
        "Gesamt, EUR",
        "987,24",
        "Steuer: VAT 20 %",
        "Karte, Anzahlung, Mi. 25. Nov.",
        "Noch zu zahlen, EUR",
        "487,24",
        "Beanstandung",
        "Prüfzahl",
        "Seite 1 von",
    ] {
        assert!(text.contains(said), "{said} is not in\n{text}");
    }
    for english in [
        "Total",
        "Labour",
        "Verification",
        "Still to pay",
        "Nov 2026",
        "Page 1",
    ] {
        assert!(!text.contains(english), "{english} is in\n{text}");
    }
    assert!(made.paper.has_photos(), "the shop's picture is not on it");
    assert!(
        made.pdf
            .windows(12)
            .any(|part| part == b"/Subtype/Image" as &[u8] || part.starts_with(b"/Image"))
    );
    assert_laid_out(&made.paper);
    // The values for a program stay figures.
    assert_eq!(made.values["gross"], "987.24");
    assert_eq!(made.values["letterhead"]["tax_number"], "DE123456789");
}

#[test]
fn every_paper_for_a_payer_is_made_in_both_languages_from_the_same_values() {
    let (mut bench, order) = resealed();
    tell_of_the_shop(&mut bench);
    bench.ask(&order, json!({ "charge": {} })).unwrap();
    for kind in [
        Kind::Estimate,
        Kind::AddedWork,
        Kind::Invoice,
        Kind::Receipt,
        Kind::Apart,
    ] {
        let in_language = |language| {
            let asked = Asked {
                language: Some(language),
                ..Asked::of(kind)
            };
            made(&bench, &order, &asked)
        };
        let (english, german) = (
            in_language(Language::English),
            in_language(Language::German),
        );
        assert_ne!(english.paper.title, german.paper.title);
        assert_eq!(english.values, german.values, "{kind:?}");
        for one in [&english, &german] {
            assert_laid_out(&one.paper);
        }
    }
}

/// Whatever the program itself says of the vehicle is German on a German paper: each of its
/// English phrases is looked for.
#[test]
fn what_the_program_says_of_a_vehicle_is_german() {
    let (mut bench, order) = taken_apart();
    bench.tell(&order, json!({ "snag-found": { "snag": "g", "item": "bolts", "at": [2], "what": "snapped", "sits": "below",
        "words": null, "photos": [], "moves": [] } }));
    bench.tell(
        &order,
        json!({ "snag-found": { "snag": "h", "item": null, "at": [], "what": "worn", "sits": null,
        "words": words("Bremsbeläge"), "photos": [], "moves": [] } }),
    );
    bench.tell(
        &order,
        json!({ "declined": { "items": [], "at": [], "words": words("zu teuer"), "signature": null,
        "entries": [], "snags": ["h"] } }),
    );
    bench.tell(
        &order,
        json!({ "difference-noted": { "id": "d", "item": "bolts", "at": [3, 4], "what": "larger",
        "size": null, "torque": null, "words": null } }),
    );
    bench.tell(&order, json!({ "proved": { "id": "r", "proof": "road-test", "line": null, "outcome": "held", "words": null, "readings": [], "calculation": null, "after": [], "replaces": [] } }));
    let hose = scene::bench::declared(
        "hose",
        ("part", "brakes", "wheel-well"),
        &words("brake hose front left"),
        1,
    );
    bench.tell(&order, hose);
    bench.move_to(&order, "hose", "off");
    bench.move_to(&order, "hose", "on");
    let number = bench.number(&order);
    for gate in bench.view(&order).gates {
        for reason in gate.fit_to_go.iter().filter(|reason| reason.waivable) {
            let _ = bench.ask(
                &order,
                json!({ "waive": { "gate": gate.gate, "reason": reason.key, "figure": reason.figure,
                "words": words("auf eigene Gefahr") } }),
            );
        }
    }
    let said = |language| {
        bench
            .look(|snap| shop::view::on_papers(snap, &order, language))
            .unwrap()
    };
    let (english, german) = (said(Language::English), said(Language::German));
    assert!(english.waived.len() > 1, "{:?}", english.waived);
    let pairs = [
        (
            english.waived.into_iter().collect::<Vec<_>>(),
            german.waived.into_iter().collect(),
        ),
        (english.declined, german.declined),
        (english.differences, german.differences),
        (english.proofs, german.proofs),
        (
            english.snags.into_values().collect(),
            german.snags.into_values().collect(),
        ),
        (
            english.open.into_iter().map(|open| open.text).collect(),
            german.open.into_iter().map(|open| open.text).collect(),
        ),
        (
            english.debts.into_iter().map(|debt| debt.0).collect(),
            german
                .debts
                .into_iter()
                .map(|debt| debt.0)
                .collect::<Vec<_>>(),
        ),
    ];
    let mut printed_in_german = String::new();
    for kind in [Kind::AddedWork, Kind::Invoice, Kind::Apart] {
        let asked = Asked {
            language: Some(Language::German),
            ..Asked::of(kind)
        };
        printed_in_german += &papers_words(&bench, number, &asked);
    }
    for (nth, (english, german)) in pairs.into_iter().enumerate() {
        assert_eq!(english.len(), german.len());
        assert!(!english.is_empty(), "{nth}");
        for one in &english {
            assert!(!german.contains(one), "{one} is English in\n{german:?}");
            assert!(
                !printed_in_german.contains(one.as_str()),
                "{one} is in\n{printed_in_german}"
            );
        }
    }
    for said in [
        "abgerissen",
        "verschlissen, nicht behoben",
        "größeres Gewinde",
        "trotzdem freigegeben von",
        "Probefahrt",
    ] {
        assert!(
            printed_in_german.contains(said),
            "{said} is not in\n{printed_in_german}"
        );
    }
}

/// A paper's words, a line each however the sheet broke it.
fn papers_words(bench: &Bench, number: u64, asked: &Asked) -> String {
    let laid = bench
        .look(|snap| {
            let order = shop::view::order(snap, number)?;
            papers::lay_out(snap, &order, asked)
        })
        .unwrap();
    scene::told(&papers::read(&laid.paper))
}

#[test]
fn a_photo_of_a_snag_stands_on_the_request_for_added_work() {
    let (mut bench, order) = resealed();
    bench.tell(&order, json!({ "snag-found": { "snag": "g", "item": null, "at": [], "what": "torn", "sits": null,
        "words": words("hose torn"), "photos": [Device::file(&png(), "image/png")], "moves": [] } }));
    let with = made(&bench, &order, &Asked::of(Kind::AddedWork));
    assert!(with.paper.has_photos(), "{}", printed(&with.paper));
    assert_laid_out(&with.paper);
    // What only says that it is a picture is left out, and the paper is made all the same.
    let (mut bench, order) = resealed();
    bench.tell(&order, json!({ "snag-found": { "snag": "g", "item": null, "at": [], "what": "torn", "sits": null,
        "words": words("hose torn"), "photos": [Device::file(&png()[..40], "image/png")], "moves": [] } }));
    let without = made(&bench, &order, &Asked::of(Kind::AddedWork));
    assert!(!without.paper.has_photos());
}

#[test]
fn photos_of_a_job_stand_on_its_how_to_sheet_and_those_that_cannot_are_counted() {
    let (mut bench, order) = taken_apart();
    for bytes in [&png()[..], b"no picture"] {
        bench.tell(
            &order,
            json!({ "attached": { "file": Device::file(bytes, "image/png"),
            "item": null, "snag": null, "words": words("where the long bolt sits") } }),
        );
    }
    let how = made(&bench, &order, &Asked::of(Kind::HowTo));
    assert!(how.paper.has_photos());
    assert_laid_out(&how.paper);
    let text = printed(&how.paper).replace('\n', " ");
    for said in ["Where the long bolt sits", "1 more with the order"] {
        assert!(text.contains(said), "{said} is not in\n{text}");
    }
}

#[test]
fn what_the_rules_of_a_place_ask_and_a_paper_lacks_is_named() {
    let (mut bench, order) = resealed();
    let what = |bench: &Bench, order: &str| -> Vec<&'static str> {
        let view = bench.view(order);
        let all = missing(&view, Kind::Invoice, PayerForm::Customer);
        all.into_iter().map(|one| one.what).collect()
    };
    assert!(what(&bench, &order).is_empty(), "no place is chosen");
    bench.shop(json!({ "place-chosen": { "place": "eu", "version": 1, "after": [] } }));
    let lacks = what(&bench, &order);
    for one in [
        "the shop’s address",
        "the shop’s tax number",
        "the customer’s address",
    ] {
        assert!(lacks.contains(&one), "{lacks:?}");
    }
    tell_of_the_shop(&mut bench);
    assert_eq!(what(&bench, &order), ["the customer’s address"]);
}

/// Why a paper is refused and what it lacks is for whoever asks: said as the screen speaks, not as
/// the paper does.
#[test]
fn what_is_refused_or_missing_is_said_as_the_screen_speaks() {
    let (mut bench, order) = resealed();
    bench.ask(&order, json!({ "charge": {} })).unwrap();
    let number = bench.number(&order);
    let note = bench
        .look(|snap| {
            phrases::speaking(phrases::Language::German, || {
                make(snap, number, &Asked::of(Kind::CreditNote))
            })
        })
        .unwrap_err();
    assert_eq!(
        note.what,
        "für diesen Zahler ist keine Rechnungskorrektur geschrieben"
    );
    let lacks = bench
        .look(|snap| {
            phrases::speaking(phrases::Language::German, || {
                e_invoice_of(snap, number, &Asked::of(Kind::Invoice))
            })
        })
        .unwrap_err();
    assert_eq!(lacks.place, "die E-Rechnung");
    let said = lacks.reasons.join("\n");
    for what in ["Steuernummer der Werkstatt", "Land des Kunden"] {
        assert!(said.contains(what), "{what} is not in\n{said}");
    }
    assert!(!said.contains("the "), "{said}");
}

/// What is printed for the stall speaks as the screen does: the frame of each sheet in German, and
/// what people and the map have written as they wrote it.
#[test]
fn papers_for_the_stall_speak_german() {
    let (bench, order) = planned();
    let ask = |kind, language| Asked {
        language,
        ..Asked::of(kind)
    };
    let sheet = made(
        &bench,
        &order,
        &ask(Kind::WorkSheet, Some(Language::German)),
    );
    assert_laid_out(&sheet.paper);
    assert_eq!(sheet.paper.title, "Arbeitsblatt 1001");
    assert_eq!(sheet.paper.language, "de");
    let text = printed(&sheet.paper).replace('\n', "");
    for said in [
        "Ausbau, von oben nach unten",
        "10 Nm, dann 22 Nm",
        "Vor der Abholung",
        "neu: ",
        "Seite 1 von",
        "oben",
    ] {
        assert!(text.contains(said), "{said} is not in\n{text}");
    }
    for english in [
        "above",
        "as it comes off",
        "Caution",
        "Litres",
        "Complaint",
        "owed",
    ] {
        assert!(!text.contains(english), "{english} is in\n{text}");
    }
    let (bench, order) = taken_apart();
    let labels = made(&bench, &order, &ask(Kind::Labels, Some(Language::German)));
    let text = printed(&labels.paper);
    assert!(text.contains("Diese Linie ist 50 mm lang"), "{text}");
    let how = made(&bench, &order, &ask(Kind::HowTo, Some(Language::German)));
    let text = printed(&how.paper);
    assert!(text.contains("Ausbau"), "{text}");
    assert!(!text.contains("Comes off"), "{text}");
}
