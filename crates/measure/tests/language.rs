//! What is wrong with a quantity, and the frame of a working, in the language that is spoken.

#![allow(clippy::unwrap_used, reason = "a test fails by panicking")]

use measure::{Currency, Dimension, Grade, Line, Money, Source, Working, read};
use phrases::{Language, speaking};

fn german<T>(act: impl FnOnce() -> T) -> T {
    speaking(Language::German, act)
}

#[test]
fn what_is_wrong_is_said_in_german() {
    let wrong = |text: &str| german(|| read(text, Dimension::Torque).unwrap_err().to_string());
    for (text, says) in [
        ("", "nichts eingetragen"),
        ("fest", "keine Zahl bei „fest“"),
        ("22", "keine Einheit nach „22“"),
        ("22 mm", "Einheit für Länge, nicht für Drehmoment"),
        ("22 Ellen", "keine bekannte Einheit"),
        ("1,234 Nm", "kann 1.234 oder 1234 heißen"),
        ("1/0 Nm", "teilt durch null"),
        ("9999999999999 Nm", "zu groß oder zu fein"),
    ] {
        let told = wrong(text);
        assert!(told.contains(says), "{text:?}: {told}");
    }
    let euro = Currency::new("EUR").unwrap();
    let money = |text: &str| german(|| Money::read(text, euro).unwrap_err().to_string());
    assert_eq!(
        money(""),
        "kein Betrag eingetragen; einen wie 904,40 schreiben"
    );
    assert!(money("904,405").contains("Nachkommastellen") || money("904,405").contains("heißen"));
    let misfit = german(|| {
        read("-300 °C", Dimension::Temperature)
            .unwrap_err()
            .to_string()
    });
    assert!(misfit.contains("absoluten Nullpunkt"), "{misfit}");
}

#[test]
fn the_frame_of_a_working_is_german_and_its_json_is_not() {
    let working = || {
        Working::new("Klemmkraft")
            .line(
                Line::new("Prüfkraft", Source::new("ISO 898-1", "", Grade::Memory)).note("trocken"),
            )
            .line(
                Line::new("Reibung", Source::given())
                    .input("µ", "0,12")
                    .value("0,12"),
            )
            .line(Line::new("Kraft", Source::derived()).value("25 kN"))
            .remark("Trockene Gewinde.")
            .limit("Nicht für Dehnschrauben.")
    };
    let html = german(|| working().html());
    let text = german(|| working().text());
    for says in [
        "unbekannt",
        "Quelle",
        "aus dem Gedächtnis",
        "angegeben",
        "aus den Zeilen darüber",
    ] {
        assert!(
            html.contains(says) && text.contains(says),
            "{says}: {html}\n{text}"
        );
    }
    for says in ["Anmerkung", "Bemerkungen", "Grenzen"] {
        assert!(html.contains(says), "{says}: {html}");
    }
    for not in ["Source", "Note", "unknown", "given", "memory"] {
        assert!(!html.contains(not), "{not}: {html}");
    }
    // A program reads the grade as its code.
    assert!(german(|| working().json()).contains("\"grade\":\"memory\""));
}
