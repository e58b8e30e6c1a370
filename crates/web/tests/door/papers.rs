//! Papers as PDF: fetched as they are now, kept as they were given out.

use crate::http::Door;
use crate::money::priced_shop;
use crate::stages::{press, screen};
use papers::engine::read::{Line, Told};
use papers::{Asked, Kind};
use serde_json::json;
use shop::repair::Language;

const FORM: (&str, &str) = ("Content-Type", "application/x-www-form-urlencoded");

#[test]
fn a_paper_is_a_pdf_that_a_browser_shows_and_does_not_keep() {
    let door = priced_shop();
    for (kind, name) in [
        ("estimate", "Estimate-1001"),
        ("added-work", "Added-work-1001"),
        ("invoice", "Draft-invoice-1001"),
        ("apart", "Collected-dismantled-1001"),
        ("labels", "Tray-labels-1001"),
    ] {
        let answer = door.get(&format!("/o/1001/papers/{kind}.pdf"));
        assert_eq!(answer.status, 200, "{kind}: {answer:?}");
        assert!(answer.body.starts_with("%PDF-1.7"), "{kind}");
        assert_eq!(answer.header("content-type"), "application/pdf");
        assert_eq!(answer.header("cache-control"), "private, no-store");
        assert_eq!(
            answer.header("content-disposition"),
            format!("inline; filename=\"{name}.pdf\"")
        );
    }
}

/// The page of a paper says all that is printed, word for word.
#[test]
fn a_page_shows_what_is_printed() {
    let door = priced_shop();
    for (kind, path) in [
        (Kind::Estimate, "/o/1001/estimate"),
        (Kind::AddedWork, "/o/1001/added"),
        (Kind::Invoice, "/o/1001/invoice"),
        (Kind::Receipt, "/o/1001/papers/receipt"),
        (Kind::Apart, "/o/1001/papers/apart"),
        (Kind::Labels, "/o/1001/papers/labels"),
        (Kind::Estimate, "/o/1001/estimate?language=de"),
    ] {
        let asked = Asked {
            language: path.ends_with("=de").then_some(Language::German),
            ..Asked::of(kind)
        };
        let laid = door
            .service
            .look(&shop::Caller::program(), |snap| {
                let order = shop::view::order(snap, 1001)?;
                papers::lay_out(snap, &order, &asked)
            })
            .unwrap();
        let page = squeezed(&screen(&door, path).text);
        let told = lines(&papers::read(&laid.paper));
        assert!(told.len() > 5, "{path}");
        for line in told {
            assert!(
                page.contains(&squeezed(&line)),
                "{path}: {line:?} is not in {page}"
            );
        }
    }
}

fn squeezed(text: &str) -> String {
    text.chars()
        .filter(|letter| !letter.is_whitespace())
        .collect()
}

fn lines(parts: &[Told]) -> Vec<String> {
    let line = |line: &Line| line.iter().map(|words| words.text.as_str()).collect();
    let mut out: Vec<String> = Vec::new();
    for part in parts {
        match part {
            Told::Heading(_, all)
            | Told::Paragraph(all)
            | Told::Choices(all)
            | Told::Blanks(all)
            | Told::Signed(all) => out.extend(all.iter().map(line)),
            Told::Table(rows) => {
                let cells = rows.iter().flatten().flat_map(|cell| &cell.lines);
                out.extend(cells.map(line));
            }
            Told::Part(parts) => out.extend(lines(parts)),
            Told::Drawing(..) | Told::Photo(..) => {}
        }
    }
    out
}

#[test]
fn labels_are_printed_on_a_sheet_that_is_chosen_and_no_other() {
    let door = priced_shop();
    let page = screen(&door, "/o/1001/papers/labels");
    for format in &papers::FORMATS {
        assert!(page.text.contains(format.title), "{}", page.text);
        let answer = door.get(&format!(
            "/o/1001/papers/labels.pdf?labels={}&from=3",
            format.name
        ));
        assert_eq!(answer.status, 200, "{answer:?}");
    }
    assert_eq!(
        door.get("/o/1001/papers/labels.pdf?labels=&from=").status,
        200
    );
    let bad = door.get("/o/1001/papers/labels.pdf?labels=10x10");
    assert_eq!(bad.status, 400, "{bad:?}");
    assert!(bad.body.contains("70x37"), "{bad:?}");
    let bad = door.get("/o/1001/papers/labels.pdf?labels=70x37&from=25");
    assert_eq!(bad.status, 400, "{bad:?}");
    assert!(bad.body.contains("from 1 to 24"), "{bad:?}");
}

/// Asked in its page, told in the shop's and the customer's, laid into the file.
#[test]
fn an_e_invoice_is_made_once_all_of_it_is_told() {
    let door = priced_shop();
    let consent = json!({ "consented": { "step": "repair", "payer": "customer", "lines": [], "agreed": true, "amount": "900",
        "tax_included": true, "way": "phone", "person": null, "said": null, "number_called": null, "signature": null, "after": [] } });
    door.send("order:a", "fact", consent);
    let pay = screen(&door, "/o/1001/pay");
    press(&door, &pay, "Write the invoice", &[]);
    assert!(!screen(&door, "/o/1001/invoice").text.contains("e-invoice"));
    let letterhead = screen(&door, "/shop/letterhead");
    let told = [
        ("seat-street", "Am Hafen 4"),
        ("seat-postcode", "20457"),
        ("seat-country", "de"),
        ("tax-number", "DE123456789"),
    ];
    press(&door, &letterhead, "Save", &told);
    let paper = screen(&door, "/o/1001/invoice");
    for missing in [
        "It prints without an e-invoice",
        "The shop’s town",
        "The customer’s street and house",
        "When to pay",
    ] {
        assert!(paper.text.contains(missing), "{missing}: {}", paper.text);
    }
    let refused = door.get("/o/1001/papers/invoice.xml");
    assert_eq!(refused.status, 422, "{refused:?}");
    let letterhead = screen(&door, "/shop/letterhead");
    press(
        &door,
        &letterhead,
        "Save",
        &[("seat-town", "Hamburg"), ("terms", "Payable in 14 days.")],
    );
    assert!(
        screen(&door, "/o/1001/mend")
            .text
            .contains("Street and house")
    );
    for (field, said) in [
        ("street", "Lange Reihe 11"),
        ("postcode", "20099"),
        ("town", "Hamburg"),
        ("country", "DE"),
    ] {
        let mended = json!({ "mended": { "field": field, "words": shop::Device::words(said), "after": [] } });
        door.send("customer:c", "customer_fact", mended);
    }
    let paper = screen(&door, "/o/1001/invoice");
    assert!(!paper.text.contains("It prints without"), "{}", paper.text);
    assert!(paper.text.contains("Lange Reihe 11") && paper.text.contains("20099 Hamburg"));
    let made = door.get(&paper.link("The e-invoice by itself"));
    assert_eq!(made.status, 200);
    assert_eq!(made.header("content-type"), "application/xml");
    assert!(
        made.body.contains("urn:cen.eu:en16931:2017"),
        "{}",
        made.body
    );
    assert!(
        made.body
            .contains("<ram:GrandTotalAmount>528.00</ram:GrandTotalAmount>"),
        "{}",
        made.body
    );
    let pdf = door.get("/o/1001/papers/invoice.pdf");
    assert!(pdf.body.contains("factur-x.xml"));
}

#[test]
fn no_such_paper_no_such_order_and_no_plan_are_said() {
    let door = priced_shop();
    for path in [
        "/o/1001/papers/recipe.pdf",
        "/o/77/papers/invoice.pdf",
        "/o/x/papers/invoice.pdf",
        "/o/1001/papers/work-sheet.pdf",
    ] {
        assert_eq!(door.get(path).status, 404, "{path}");
    }
}

#[test]
fn what_was_given_out_stands_at_the_desk_and_is_the_same_file() {
    let door = priced_shop();
    let page = screen(&door, "/o/1001/estimate");
    assert!(page.text.contains("Save as given out"), "{}", page.text);
    let cookie = ("Cookie", "who=ana");
    let given = door.ask(
        "POST",
        "/o/1001/papers/estimate.pdf?payer=customer",
        &[cookie, FORM],
        b"given=by+hand+to+Ada",
    );
    assert_eq!(
        (given.status, given.header("location")),
        (303, "/o/1001/desk"),
        "{given:?}"
    );
    let desk = screen(&door, "/o/1001/desk");
    assert!(desk.text.contains("Papers given out"), "{}", desk.text);
    assert!(desk.text.contains("Estimate 1001, by hand to Ada"));
    let view = door
        .service
        .look(&shop::Caller::program(), |snap| {
            shop::view::order(snap, 1001)
        })
        .unwrap();
    let file = door.get(&format!("/file/{}", view.papers.given[0].file));
    assert_eq!(file.status, 200);
    assert!(file.body.starts_with("%PDF-1.7"));
    assert_eq!(file.header("content-disposition"), "attachment");
}

#[test]
fn nobody_gives_a_paper_without_saying_who_they_are() {
    let door: Door = priced_shop();
    let given = door.ask("POST", "/o/1001/papers/estimate.pdf", &[FORM], b"given=");
    assert_eq!(given.status, 422, "{given:?}");
}
