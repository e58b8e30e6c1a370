//! `buttonup map from-order`, and the doors of the map's editor, on the real program.

#![allow(clippy::unwrap_used, reason = "a test fails by panicking")]

mod program;

use program::{Server, invented_shop, run};

#[test]
fn what_an_order_has_shown_is_written_as_a_good_map() {
    let folder = tempfile::tempdir().unwrap();
    let shop = invented_shop(folder.path());
    let data = ["--data", shop.to_str().unwrap()];
    let ask = |number: &str, more: &[&str]| {
        run(&[&["map", "from-order", number][..], &data, more].concat())
    };
    let told = ask("1002", &[]);
    assert_eq!(told.code, 0, "{told:?}");
    assert!(told.out.contains("[seen.\"order 1002\"]"), "{}", told.out);
    let file = folder.path().join("learned.toml");
    std::fs::write(&file, &told.out).unwrap();
    let checked = run(&["map", "check", file.to_str().unwrap()]);
    assert_eq!(checked.code, 0, "{checked:?}");
    let json = ask("1002", &["--json"]).json();
    assert_eq!(
        json["text"].as_str().map(str::trim_end),
        Some(told.out.trim_end())
    );
    assert!(
        json["things"].as_u64().is_some_and(|things| things > 3),
        "{json}"
    );
    assert!(json["map"].is_string() && json["from_version"].is_u64());
    // An order that there is none of, and what is no number.
    let none = ask("4711", &[]);
    assert_eq!((none.code, none.out.as_str()), (1, ""), "{none:?}");
    assert!(none.err.contains("there is no order 4711"), "{none:?}");
    assert_eq!(ask("first", &[]).code, 2);
}

const MAP: &str = "/maps/pellworth-mite-battery";

fn change(server: &Server, fields: &[(&str, &str)]) -> (u16, String) {
    let mut body = form_urlencoded::Serializer::new(String::new());
    body.extend_pairs(fields);
    server.post(
        &format!("{MAP}/edit"),
        "application/x-www-form-urlencoded",
        &body.finish(),
    )
}

#[test]
fn the_editor_answers_whatever_it_is_sent() {
    let folder = tempfile::tempdir().unwrap();
    let server = Server::serve(&invented_shop(folder.path()));
    for path in [
        "/maps/no-such-map",
        "/maps/no-such-map/file",
        &format!("{MAP}?version=99"),
        &format!("{MAP}/file?version=99"),
        &format!("{MAP}/edit?order=4711"),
    ] {
        let (status, page) = server.get(path);
        assert_eq!(status, 404, "{path}: {page}");
    }
    for path in [
        &format!("{MAP}?version=two"),
        &format!("{MAP}/edit?order=first"),
    ] {
        assert_eq!(server.get(path).0, 400, "{path}");
    }
    // An item that is not there, a target that is not there: the page all the same.
    for path in [
        &format!("{MAP}/edit?item=nothing"),
        &format!("{MAP}?for=nothing"),
        "/maps/quite-new/edit",
    ] {
        assert_eq!(server.get(path).0, 200, "{path}");
    }
    let good = "vehicle = \"A\"\n[items.tray]\nis = \"cover\"\n";
    for fields in [
        &[][..],
        &[("act", "no json")],
        &[("act", "[\"open\"]"), ("text", good)],
        &[
            ("act", "[\"set\"]"),
            ("text", good),
            ("item", "no such item"),
            ("was-size", ""),
            ("size", "M6"),
        ],
        &[
            ("act", "[\"unneed\", \"needs\", \"-3\"]"),
            ("text", good),
            ("item", "tray"),
        ],
        &[
            ("act", "[\"crack\"]"),
            ("text", "items = 3"),
            ("item", "tray"),
        ],
        &[
            ("act", "[\"add\"]"),
            ("text", "this is = no [ map"),
            ("new-name", "belt"),
            ("new-is", "belt"),
        ],
        &[
            ("act", "[\"add\"]"),
            ("text", good),
            ("new-name", "<script>alert(1)</script>"),
            ("new-is", "what?"),
        ],
        &[
            ("act", "[\"onto\", \"many\"]"),
            ("text", good),
            ("base", "-1"),
        ],
    ] {
        let (status, page) = change(&server, fields);
        assert_eq!(status, 200, "{fields:?}: {page}");
        assert!(!page.contains("<script>alert"), "{fields:?}");
    }
    let (_, page) = change(
        &server,
        &[
            ("act", "[\"add\"]"),
            ("text", "a = ["),
            ("new-name", "belt"),
            ("new-is", "belt"),
        ],
    );
    assert!(page.contains("Mend the text first"), "{page}");
    let (_, page) = change(
        &server,
        &[
            ("act", "[\"add\"]"),
            ("text", good),
            ("new-name", "tray"),
            ("new-is", "belt"),
        ],
    );
    assert!(page.contains("There is tray already"), "{page}");
    assert!(
        page.contains("is = &quot;cover&quot;"),
        "what was there stays: {page}"
    );
    let (_, page) = change(
        &server,
        &[
            ("act", "[\"set\"]"),
            ("text", good),
            ("item", "tray"),
            ("was-minutes.out", ""),
            ("minutes.out", "soon"),
        ],
    );
    assert!(
        page.contains("no time in whole tenths of a minute"),
        "{page}"
    );
    // Whoever started from a version that is not the last is told.
    let (status, told) = server.post(
        "/maps/check",
        "application/x-www-form-urlencoded",
        "map=pellworth-mite-battery&base=0&text=",
    );
    assert_eq!(status, 200);
    assert!(
        told.contains("kept version 1 of this map") && told.contains("the map names no vehicle"),
        "{told}"
    );
}

/// From one folder to another and back, by the command line alone.
#[test]
fn a_map_is_exported_signed_and_imported_by_another_shop() {
    let folder = tempfile::tempdir().unwrap();
    let one = invented_shop(&folder.path().join("one"));
    let other = invented_shop(&folder.path().join("other"));
    let file = folder.path().join("battery.json");
    let (file, data) = (file.to_str().unwrap(), |shop: &std::path::Path| {
        ["--data".to_owned(), shop.display().to_string()]
    });
    let ask = |shop: &std::path::Path, words: &[&str]| {
        let data = data(shop);
        let data: Vec<&str> = data.iter().map(String::as_str).collect();
        run(&[words, &data].concat())
    };
    let sent = ask(
        &one,
        &["map", "export", "pellworth-mite-battery", "-o", file],
    );
    assert_eq!(sent.code, 0, "{sent:?}");
    let key = sent
        .out
        .split("signed with ")
        .nth(1)
        .unwrap()
        .trim()
        .to_owned();
    let looked = ask(&other, &["map", "import", file, "--json"]).json();
    assert_eq!(
        (&looked["same"], &looked["kept"]),
        (&true.into(), &false.into()),
        "{looked}"
    );
    assert_eq!(looked["signed_with"], key.as_str());

    // Another shop's key is another; its file says so, and what differs.
    let text = std::fs::read_to_string(file).unwrap();
    let again = ask(
        &one,
        &["map", "export", "pellworth-mite-battery", "-o", file],
    );
    assert!(again.out.contains(&key), "the key stays: {again:?}");
    let theirs = ask(
        &other,
        &["map", "export", "pellworth-mite-battery", "-o", file],
    );
    assert!(!theirs.out.contains(&key), "{theirs:?}");

    // Changed on the way: refused, with what to do, and nothing is kept.
    std::fs::write(file, text.replace("minutes", "minuten")).unwrap();
    let refused = ask(&other, &["map", "import", file, "--keep", "pavel"]);
    assert_eq!((refused.code, refused.out.as_str()), (2, ""), "{refused:?}");
    assert!(
        refused.err.contains("signature does not fit"),
        "{refused:?}"
    );
    std::fs::write(file, &text).unwrap();
    let nobody = ask(&other, &["map", "import", file, "--keep", "nobody here"]);
    // It is the same map, so there is nothing to keep and nobody is needed for it.
    assert_eq!(nobody.code, 0, "{nobody:?}");
    let missing = ask(&other, &["map", "import", "no-such-file"]);
    assert_eq!(missing.code, 2, "{missing:?}");
    let none = ask(&one, &["map", "export", "no-such-map", "-o", file]);
    assert_eq!(none.code, 1, "{none:?}");
    #[cfg(unix)]
    {
        use std::os::unix::fs::PermissionsExt;
        let kept = std::fs::metadata(one.join("network/maps.key")).unwrap();
        assert_eq!(kept.permissions().mode() & 0o777, 0o600);
    }
}
