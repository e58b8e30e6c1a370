//! The keys of the shop's network go along with a copy, sealed with a word, on the real program.

#![allow(clippy::unwrap_used, reason = "a test fails by panicking")]

mod program;

use program::{Run, invented_shop, run};
use std::fs;
use std::path::Path;

const WORD: &str = "eleven brass drain plugs";

fn ask(shop: &Path, words: &[&str]) -> Run {
    run(&[words, &["--data", shop.to_str().unwrap()]].concat())
}

#[test]
fn keys_are_sealed_copied_and_opened_again() {
    let folder = tempfile::tempdir().unwrap();
    let at = |name: &str| folder.path().join(name);
    let shop = invented_shop(&at("shop"));
    let word = at("word");
    let word_file = ["--word-file", word.to_str().unwrap()];
    fs::write(&word, "too short\n").unwrap();
    // There are none to seal yet, and a short word is told before anything else.
    let short = ask(&shop, &[&["seal-keys"], &word_file[..]].concat());
    assert!(short.err.contains("fewer than 10 letters"), "{short:?}");
    fs::write(&word, format!("{WORD}\n")).unwrap();
    let none = ask(&shop, &[&["seal-keys"], &word_file[..]].concat());
    assert!(none.err.contains("there are no keys yet"), "{none:?}");

    let map = at("map.json");
    let export = [
        "map",
        "export",
        "pellworth-mite-battery",
        "-o",
        map.to_str().unwrap(),
    ];
    let first = ask(&shop, &export).out;
    let sealed = ask(&shop, &[&["seal-keys"], &word_file[..]].concat());
    assert_eq!(sealed.code, 0, "{sealed:?}");
    let kept = fs::read_to_string(shop.join("network/keys.sealed")).unwrap();
    let open = fs::read_to_string(shop.join("network/maps.key")).unwrap();
    assert!(!kept.contains(open.trim()), "it is not there to be read");

    let copy = at("copy");
    assert_eq!(ask(&shop, &["backup", copy.to_str().unwrap()]).code, 0);
    let restored = at("restored");
    let landed = ask(&restored, &["restore", copy.to_str().unwrap()]);
    assert!(landed.out.contains("buttonup open-keys"), "{landed:?}");
    assert!(!restored.join("network/maps.key").exists());

    fs::write(&word, "eleven brass drain plug\n").unwrap();
    let wrong = ask(&restored, &[&["open-keys"], &word_file[..]].concat());
    assert_eq!((wrong.code, wrong.out.as_str()), (1, ""), "{wrong:?}");
    assert!(wrong.err.contains("does not open them"), "{wrong:?}");
    fs::write(&word, format!("{WORD}\n")).unwrap();
    let opened = ask(&restored, &[&["open-keys"], &word_file[..]].concat());
    assert_eq!(opened.code, 0, "{opened:?}");
    let again = ask(&restored, &export).out;
    let mark = |out: &str| out.split("signed with ").nth(1).map(str::to_owned);
    assert_eq!(mark(&again), mark(&first), "it is the same key");
    // Opened twice is opened; a key that is another one is not written over.
    assert_eq!(
        ask(&restored, &[&["open-keys"], &word_file[..]].concat()).code,
        0
    );
    fs::write(restored.join("network/maps.key"), "another\n").unwrap();
    let other = ask(&restored, &[&["open-keys"], &word_file[..]].concat());
    assert!(
        other.err.contains("another key is there already"),
        "{other:?}"
    );

    // A file that was cut is told, and a copy without sealed keys says nothing of them.
    fs::write(
        restored.join("network/keys.sealed"),
        &kept[..kept.len() / 2],
    )
    .unwrap();
    let cut = ask(&restored, &[&["open-keys"], &word_file[..]].concat());
    assert!(cut.err.contains("does not read as sealed keys"), "{cut:?}");
    let plain = invented_shop(&at("plain"));
    let copy = at("plain copy");
    ask(&plain, &["backup", copy.to_str().unwrap()]);
    let landed = ask(&at("plain restored"), &["restore", copy.to_str().unwrap()]);
    assert!(
        landed.code == 0 && !landed.out.contains("open-keys"),
        "{landed:?}"
    );
}
