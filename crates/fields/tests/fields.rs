//! Slips of whoever writes by hand: each is told with its line, what it is, and how to mend it.

#![allow(clippy::unwrap_used, reason = "a test fails by panicking")]

use fields::{Book, Fields, read};
use proptest::prelude::*;

/// What a reader that asks for everything once says of a text.
fn said(text: &str) -> Vec<String> {
    let (Ok(told) | Err(told)) = read("t.toml", text, "the text", ask)
        .map(|read| read.warnings)
        .map(|warnings| warnings.iter().map(ToString::to_string).collect())
        .map_err(|wrong| wrong.iter().map(ToString::to_string).collect());
    told
}

fn ask(root: &Fields<'_>, book: &mut Book<'_>) {
    root.only(
        &[
            "width_mm", "teeth", "drives", "side", "name", "curve", "arm", "part",
        ],
        book,
    );
    root.number("width_mm", book);
    root.count("teeth", book);
    root.yes("drives", false, book);
    root.word("side", &["ribs", "back"], book);
    root.text("name", book);
    if root.has("curve") {
        root.numbers("curve", book);
    }
    if let Some(arm) = root.table("arm", book) {
        arm.needed("length_mm", book);
    }
    for part in root.tables("part", book) {
        part.needed_text("colour", book);
    }
}

#[test]
fn each_slip_is_told_with_its_line_and_how_to_mend_it() {
    let cases = [
        (
            "width_mm = \"wide\"",
            "t.toml:1: `width_mm` of the text is no number; write it such as width_mm = 12.5",
        ),
        (
            "width_mm = nan",
            "t.toml:1: `width_mm` of the text is no number; write it such as width_mm = 12.5",
        ),
        (
            "\nteeth = -3",
            "t.toml:2: `teeth` of the text is no count; write a whole number from 1",
        ),
        (
            "teeth = 2.5",
            "t.toml:1: `teeth` of the text is no count; write a whole number from 1",
        ),
        (
            "drives = \"yes\"",
            "t.toml:1: `drives` of the text is neither true nor false; write true or false",
        ),
        (
            "side = \"rib\"",
            "t.toml:1: `side` of the text is \"rib\", which is not known; write one of \"ribs\", \"back\"",
        ),
        (
            "name = \"  \"",
            "t.toml:1: `name` of the text is no text; write it in quotes",
        ),
        (
            "curve = [1, \"two\"]",
            "t.toml:1: `curve` of the text is no list of numbers; write it such as curve = [0.1, 0.5, 0.9]",
        ),
        (
            "arm = 3",
            "t.toml:1: `arm` is no table; write [arm], with its lines below",
        ),
        (
            "[arm]",
            "t.toml:1: the arm has no `length_mm`; add length_mm = ...",
        ),
        (
            "part = 3",
            "t.toml:1: `part` is no list; write [[part]], in two brackets, for each",
        ),
        (
            "\n[[part]]\nname = \"idler\"",
            "t.toml:3: idler has no `colour`; add colour = ...",
        ),
        (
            "[[part]]\nsize = 1",
            "t.toml:2: part 1 has no `colour`; add colour = ...",
        ),
        (
            "width = 3",
            "t.toml:1: `width` is no key of the text; did you mean `width_mm`?",
        ),
        (
            "teth = 3",
            "t.toml:1: `teth` is no key of the text; did you mean `teeth`?",
        ),
    ];
    for (text, expected) in cases {
        assert_eq!(said(text), [expected], "{text}");
    }
    assert!(said("width_mm = ")[0].starts_with("t.toml:1: this is no TOML: "));
}

#[test]
fn several_slips_come_in_the_sequence_of_the_text() {
    let told = said("teeth = 0\nwidth_mm = true\n[[part]]\n[[part]]\nx = 1\n");
    let lines: Vec<&str> = told
        .iter()
        .map(|one| one.split(':').nth(1).unwrap())
        .collect();
    assert_eq!(
        lines,
        ["1", "1", "2", "5"],
        "a table without a key stands at the top: {told:?}"
    );
}

#[test]
fn what_is_not_known_at_all_is_a_warning_and_the_rest_is_read() {
    let read = read(
        "t.toml",
        "colour = 1\nwidth_mm = 3",
        "the text",
        |root, book| {
            root.only(&["width_mm"], book);
            root.needed("width_mm", book)
        },
    )
    .unwrap();
    assert!((read.value - 3.0).abs() < 1e-12);
    assert_eq!(
        read.warnings[0].to_string(),
        "t.toml:1: `colour` is no key of the text; it is not used; the keys here are width_mm"
    );
}

proptest! {
    /// Whatever is written, there is an answer, and each fault lies within the text.
    #[test]
    fn any_text_is_answered(text in "(\\PC|[\\[\\]=\\n\"a-z_0-9.])*") {
        if let Err(wrong) = read("t.toml", &text, "the text", ask) {
            prop_assert!(wrong.iter().all(|one| (1..=text.lines().count().max(1) + 1).contains(&one.line)));
        }
    }
}

#[test]
fn slips_are_told_in_german_too() {
    let german = |text: &str| phrases::speaking(phrases::Language::German, || said(text));
    for (text, told) in [
        (
            "width_mm = \"wide\"",
            "t.toml:1: „width_mm“ ist keine Zahl: the text; etwa width_mm = 12.5 schreiben",
        ),
        ("[arm]", "„length_mm“ fehlt; length_mm = ... dazuschreiben"),
        (
            "widht_mmm = 3",
            "„widht_mmm“ gibt es hier nicht: the text; es bleibt unbenutzt",
        ),
        ("drives = 3", "weder true noch false"),
        ("side = \"top\"", "und das ist nicht bekannt"),
        ("part = 3", "„part“ ist keine Liste"),
        ("arm = 3", "„arm“ ist keine Tabelle"),
        ("= 3", "das ist kein TOML"),
    ] {
        let all = german(text);
        assert!(all.iter().any(|one| one.contains(told)), "{text}: {all:?}");
    }
}
