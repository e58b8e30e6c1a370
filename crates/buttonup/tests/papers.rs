//! `buttonup paper` on the invented shop.

#![allow(clippy::unwrap_used, reason = "a test fails by panicking")]

mod program;

use program::{invented_shop, run};

#[test]
fn each_paper_of_the_invented_shop_is_written_as_a_pdf() {
    let folder = tempfile::tempdir().unwrap();
    let shop = invented_shop(folder.path());
    let file = folder.path().join("paper.pdf");
    let ask = |number: &str, kind: &str, more: &[&str]| {
        let asked = [
            "paper",
            number,
            kind,
            "-o",
            file.to_str().unwrap(),
            "--data",
            shop.to_str().unwrap(),
        ];
        run(&[&asked, more].concat())
    };
    for kind in [
        "estimate",
        "added-work",
        "invoice",
        "apart",
        "work-sheet",
        "labels",
    ] {
        let run = ask("1002", kind, &[]);
        assert_eq!(run.code, 0, "{kind}: {run:?}");
        assert!(run.out.contains("page"), "{run:?}");
        assert!(
            std::fs::read(&file).unwrap().starts_with(b"%PDF-1.7"),
            "{kind}"
        );
    }
    let values = ask("1002", "estimate", &["--json", "--sheet", "letter"]).json();
    assert_eq!(values["pages"], 1);
    assert_eq!(values["values"]["net"], "780.40");
    let first = std::fs::read(&file).unwrap();
    assert_eq!(ask("1002", "estimate", &["--sheet", "letter"]).code, 0);
    assert!(
        first == std::fs::read(&file).unwrap(),
        "the same values, the same bytes"
    );
}

#[test]
fn what_cannot_be_printed_is_said_and_nothing_is_written() {
    let folder = tempfile::tempdir().unwrap();
    let shop = invented_shop(folder.path());
    let file = folder.path().join("paper.pdf");
    let ask = |number: &str, kind: &str, more: &[&str]| {
        let asked = [
            "paper",
            number,
            kind,
            "-o",
            file.to_str().unwrap(),
            "--data",
            shop.to_str().unwrap(),
        ];
        run(&[&asked, more].concat())
    };
    for (run, code, said) in [
        (ask("77", "invoice", &[]), 1, "there is no order 77"),
        (
            ask("1002", "credit-note", &[]),
            1,
            "no credit note is written for this payer",
        ),
        (
            ask("1002", "credit-note", &["--credit", "CR-9"]),
            1,
            "has no credit note CR-9",
        ),
        (
            ask("1002", "recipe", &[]),
            2,
            "estimate, added-work, invoice",
        ),
        (
            ask("1002", "invoice", &["--invoice", "INV-99"]),
            1,
            "has no invoice INV-99",
        ),
    ] {
        assert_eq!(run.code, code, "{run:?}");
        assert!(run.err.contains(said), "{said}: {run:?}");
    }
    assert!(!file.exists());
}
