//! What the form of `checks/published` asks for, and what it refuses.

use checks::{Grade, Published, published, subjects};

const WHOLE: &str = r#"
[source.book]
title = "Screws"
publisher = "A press"
edition = "third edition, 1990"
at = "table 2"
read = "the book itself"

[[size]]
thread = "M6"
expected = 5.35
source = "book"
grade = "published"
"#;

/// What the reader says of a text, in words.
fn refused(text: &str) -> String {
    let troubles = Published::read("bolts", text).expect_err("the text is wrong");
    let lines: Vec<String> = troubles.iter().map(ToString::to_string).collect();
    lines.join("\n")
}

#[test]
fn a_whole_row_is_read_with_its_source() {
    let file = Published::read("bolts", WHOLE).unwrap();
    let [row] = file.rows("size") else {
        panic!("{file:?}")
    };
    assert_eq!((row.text("thread"), row.real("expected")), ("M6", 5.35));
    assert_eq!(row.grade(), Grade::Published);
    assert_eq!(row.source().title, "Screws");
    assert_eq!(row.source().at, "table 2");
}

/// Anybody must be able to find a published row again.
#[test]
fn a_published_row_without_a_field_is_refused() {
    for field in ["title", "publisher", "edition", "at", "read"] {
        let text: String = WHOLE
            .lines()
            .filter(|line| !line.starts_with(field))
            .map(|line| format!("{line}\n"))
            .collect();
        let said = refused(&text);
        let expected = format!("a row of grade published needs the {field} of its source book");
        assert!(said.contains(&expected), "{said}");
        for grade in ["memory", "common-practice"] {
            let text = text.replace("\"published\"", &format!("\"{grade}\""));
            let read = Published::read("bolts", &text);
            assert_eq!(read.is_ok(), field != "title", "{grade} without {field}");
        }
    }
}

#[test]
fn an_empty_field_is_no_field() {
    let said = refused(&WHOLE.replace("A press", " "));
    assert!(said.contains("needs the publisher"), "{said}");
}

#[test]
fn a_row_may_name_its_own_page() {
    let text = WHOLE.replace("at = \"table 2\"\n", "") + "at = \"page 7\"\n";
    let file = Published::read("bolts", &text).unwrap();
    assert_eq!(file.rows("size")[0].source().at, "page 7");
}

#[test]
fn what_does_not_keep_to_the_form_is_refused() {
    let wrong = [
        ("= \"book\"", "= \"bock\"", "no [source.bock] in this file"),
        ("\"published\"", "\"certain\"", "grade certain is none of"),
        ("publisher", "printer", "a source has no field printer"),
        ("[[size]]", "[size]", "write it as [[size]] rows"),
        (
            "thread = \"M6\"",
            "same_memory = true",
            "only a row of grade memory",
        ),
        ("[[size]]", "[[size]", "is no TOML"),
    ];
    for (from, to, expected) in wrong {
        let said = refused(&WHOLE.replacen(from, to, 1));
        assert!(said.contains(expected), "{from} -> {to}: {said}");
    }
    let said = refused(&format!("{WHOLE}\n[source.other]\ntitle = \"Nuts\"\n"));
    assert!(said.contains("source other: no row names it"), "{said}");
}

#[test]
fn every_file_keeps_to_the_form() {
    let subjects = subjects();
    assert!(subjects.contains(&"units".to_owned()), "{subjects:?}");
    for subject in subjects {
        assert!(
            published(&subject).all().count() > 0,
            "{subject} has no row"
        );
    }
}

/// The table of the README, as it must be.
fn counts() -> String {
    let mut lines = vec![
        "| file | published | other implementation | common practice | memory | of the same memory |"
            .to_owned(),
        "| --- | --- | --- | --- | --- | --- |".to_owned(),
    ];
    let mut sums = [0; 5];
    for subject in subjects() {
        let file = published(&subject);
        let same = file.all().filter(|row| row.same_memory()).count();
        let [a, b, c, d] = Grade::ALL.map(|grade| file.count(grade));
        let row = [a, b, c, d, same];
        lines.push(line(&subject, row));
        sums = std::array::from_fn(|at| sums[at] + row[at]);
    }
    lines.push(line("all", sums));
    lines.join("\n")
}

fn line(name: &str, counts: [usize; 5]) -> String {
    let cells = counts.map(|count| count.to_string());
    format!("| {name} | {} |", cells.join(" | "))
}

#[test]
fn the_readme_counts_the_rows_by_grade() {
    let path = format!(
        "{}/../../checks/published/README.md",
        env!("CARGO_MANIFEST_DIR")
    );
    let text = std::fs::read_to_string(path).unwrap();
    let counts = counts();
    assert!(
        text.contains(&counts),
        "the table in checks/published/README.md must read\n\n{counts}\n"
    );
}
