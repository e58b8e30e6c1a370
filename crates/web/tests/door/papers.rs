//! Papers as PDF: fetched as they are now, kept as they were given out.

use crate::http::Door;
use crate::money::priced_shop;
use crate::stages::screen;

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
