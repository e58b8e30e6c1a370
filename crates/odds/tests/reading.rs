//! Orders as they are written, and what is said where they are not.

#![allow(clippy::unwrap_used, reason = "a test fails by panicking")]

use odds::{Labour, line, read};

const ORDER: &str = r#"
rate = 120
labour = "clock"
ceiling = 850

[vehicle]
name = "Drayman 2.3"
age_years = 9
rust = 2

[[line]]
what = "housing bolts"
kind = "fasteners"
minutes = 6
pieces = 7
size = "M8"
material = "aluminium"
snag_minutes = [40, 55, 90]
snag_price = 14

[[line]]
what = "pump"
minutes = 4.5
times = 2
person = "Ana"

[[amount]]
what = "parts"
price = 268.4

[[first]]
what = "soak overnight"
line = "housing bolts"
minutes = 5
snag_odds = 0.5

[[past]]
vehicle = "RO-7"
kind = "fasteners"
book_minutes = 6
minutes = 9.5

[[past_snag]]
size = "M8"
rust = 2
pieces = 40
snags = 3

[[given]]
chances = [0.1, 0.5, 0.9]
values = [3.0, 4.0, 5.5]
happened = 4.4
"#;

#[test]
fn an_order_is_read() {
    let read = read("order.toml", ORDER).unwrap();
    assert!(read.warnings.is_empty(), "{:?}", read.warnings);
    let order = &read.order;
    assert_eq!(order.vehicle.as_deref(), Some("Drayman 2.3"));
    assert_eq!(order.rule.labour, Labour::Clock);
    assert_eq!(order.stages(), 3);
    assert!((order.book_minutes() - 15.0).abs() < 1e-12);
    let pieces = order.lines[0].pieces.as_ref().unwrap();
    // The vehicle's rust is that of its bolts unless a line says otherwise.
    assert_eq!(pieces.joint.rust, Some(2));
    assert!((pieces.minutes.likely - 55.0).abs() < 1e-12);
    assert_eq!(order.lines[1].kind, "pump");
    assert_eq!(read.ceiling, Some(850.0));
    assert_eq!((read.history.stages(), read.snags.pieces()), (1, 40));
    assert_eq!((order.actions.len(), read.given.len()), (1, 1));
}

#[test]
fn what_is_wrong_says_where_and_how_to_mend_it() {
    for (text, part) in [
        ("rate = ", "order.toml:1: this is no TOML"),
        ("rate = \"high\"", "`rate` of the file is no number"),
        (
            "labour = \"free\"",
            "write one of \"clock\", \"book\", \"lesser\"",
        ),
        ("rats = 3", "did you mean `rate`?"),
        (
            "[[line]]\nwhat = \"x\"",
            "x has no `minutes`; add minutes = ...",
        ),
        (
            "[[line]]\nwhat = \"x\"\nminutes = nan",
            "`minutes` of x is no number",
        ),
        ("[[line]]\nminutes = 5", "has no `what`"),
        (
            "[[line]]\nwhat = \"x\"\nminutes = 5\npieces = 3",
            "has no `snag_minutes`",
        ),
        (
            "[[line]]\nwhat = \"x\"\nminutes = 5\npieces = 3\nsnag_minutes = [1, 2]",
            "least, likely and most",
        ),
        ("[vehicle]\nrust = 7", "write 0 for none"),
        ("[prior]\njobs = 0", "the weight of the prior is 0 jobs"),
        (
            "[[past]]\nkind = \"x\"\nbook_minutes = 5\nminutes = -1",
            "the time of a past stage (x) is -1 minutes",
        ),
        (
            "[[past_snag]]\npieces = 2\nsnags = 3",
            "3 snags among 2 pieces",
        ),
        (
            "[[given]]\nchances = [0.9, 0.1]\nvalues = [1.0, 2.0]\nhappened = 1",
            "write chances that rise",
        ),
        (
            "[[given]]\nchances = [0.9]\nvalues = []\nhappened = 1",
            "1 chances and 0 values",
        ),
        ("line = 3", "write [[line]], in two brackets"),
    ] {
        let troubles = read("order.toml", text).unwrap_err();
        let said: Vec<String> = troubles.iter().map(ToString::to_string).collect();
        assert!(
            said.iter().any(|said| said.contains(part)),
            "{text}: {said:?}"
        );
    }
}

#[test]
fn a_line_as_typed() {
    let bolts = line("bolts of the housing, rusty, 6 min, 10 times").unwrap();
    assert_eq!(bolts.what, "bolts of the housing, rusty");
    assert!((bolts.book_minutes - 6.0).abs() < 1e-12 && bolts.times == 10);
    for text in [
        "",
        "bolts",
        "bolts, many",
        ", 5",
        "bolts, 5, 0",
        "bolts, 5, 1.5",
        "bolts, nan",
        "bolts, 5, 1e9",
    ] {
        assert!(line(text).is_err(), "{text}");
    }
    // What cannot be worked on is refused when it is quoted.
    assert!(line("bolts, -5").is_ok());
}
