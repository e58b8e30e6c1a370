//! Screens speak what the shop picked, a person's what they picked; papers what they are made in.

use crate::http::Door;
use crate::stages::opened;
use serde_json::json;
use std::collections::{BTreeSet, VecDeque};

fn read(door: &Door, path: &str, who: &str) -> String {
    let cookie = format!("who={who}");
    let answer = door.ask("GET", path, &[("Cookie", &cookie)], b"");
    assert!(answer.status == 200, "{path}: {answer:?}");
    answer.body
}

/// A shop that speaks German, with an owner who wants English.
fn german() -> Door {
    let door = opened();
    let shop = |fact| door.send("shop", "shop_fact", fact);
    shop(
        json!({ "joined": { "person": "abe", "name": shop::Device::words("Abe Lind"), "roles": ["owner"] } }),
    );
    shop(json!({ "shop-speaks": { "language": "de", "after": [] } }));
    shop(json!({ "person-speaks": { "person": "abe", "language": "en", "after": [] } }));
    door
}

#[test]
fn the_shop_picks_a_language_and_a_person_another() {
    let door = german();
    assert!(read(&door, "/", "ana").contains("<html lang=\"de\""));
    assert!(read(&door, "/", "abe").contains("<html lang=\"en\""));
    assert!(read(&door, "/language", "ana").contains("Sprache der Bildschirme"));
    // Also what is refused before a page is begun, and what a program is told.
    for path in ["/nothing", "/api/orders/nothing"] {
        let told = |who: &str| {
            let cookie = format!("who={who}");
            door.ask("GET", path, &[("Cookie", &cookie)], b"").body
        };
        assert_ne!(told("ana"), told("abe"), "{path}");
    }
    let back = json!({ "person-speaks": { "person": "abe", "language": null, "after": [] } });
    door.send("shop", "shop_fact", back);
    assert!(read(&door, "/", "abe").contains("<html lang=\"de\""));
}

#[test]
fn a_paper_is_the_same_whoever_prints_it() {
    let door = german();
    door.send(
        "order:a",
        "fact",
        json!({ "line-opened": { "line": "line-1", "complaint": shop::Device::words("It leaks"), "payer": "customer" } }),
    );
    for kind in ["estimate", "added-work"] {
        let paper = |who: &str| {
            let cookie = format!("who={who}");
            let path = format!("/o/1001/papers/{kind}.pdf");
            let answer = door.ask("GET", &path, &[("Cookie", &cookie)], b"");
            assert_eq!(answer.status, 200, "{kind}: {answer:?}");
            answer.body
        };
        assert_eq!(paper("ana"), paper("abe"), "{kind}");
    }
}

/// The texts of a page, without what stands in tags and scripts.
fn texts(page: &str) -> BTreeSet<String> {
    let body = page.split_once("<body").map_or("", |(_, body)| body);
    let shown = body.split('<').filter_map(|part| {
        let (tag, text) = part.split_once('>')?;
        (!tag.starts_with("script") && !tag.starts_with("style")).then_some(text)
    });
    shown
        .map(|text| text.replace("&amp;", "&").replace("&quot;", "\""))
        .map(|text| text.trim().to_owned())
        .filter(|text| !text.is_empty())
        .collect()
}

fn links(page: &str) -> Vec<String> {
    page.split("href=\"")
        .skip(1)
        .filter_map(|rest| rest.split_once('"'))
        .map(|(to, _)| to.split('#').next().unwrap_or("").replace("&amp;", "&"))
        .filter(|to| {
            to.starts_with('/')
                && !to.contains('?')
                && !to.starts_with("/assets")
                && !to.starts_with("/who/")
        })
        .filter(|to| {
            ![
                "pdf",
                "csv",
                "xml",
                "webmanifest",
                "/file?",
                "/record/export",
                "/file/",
            ]
            .iter()
            .any(|not| to.contains(not))
        })
        .collect()
}

const PAPERS: [&str; 5] = ["/added", "/estimate", "/invoice", "/labels", "/receipt"];

/// What follows a number that was measured or reckoned.
const UNITS: [&str; 10] = [
    "min",
    "h",
    "l",
    "L",
    "mm",
    "mm²",
    "bar",
    "Nm",
    "N·m",
    "Umdrehungen",
];

/// Sums and measures on a page that are written with a point before their decimals: as a program
/// writes them.
fn plain_numbers(texts: &BTreeSet<String>, typed: &str) -> Vec<String> {
    let bare = |word: &str| {
        word.trim_matches(|sign: char| !sign.is_alphanumeric())
            .to_owned()
    };
    let digits = |text: &str| !text.is_empty() && text.bytes().all(|one| one.is_ascii_digit());
    let decimals = |word: &str| {
        let (whole, part) = word.split_once('.')?;
        (digits(whole) && digits(part)).then_some(part.len())
    };
    // A map stands in its editor as it was typed.
    let shown = texts.iter().filter(|text| !text.contains("[items."));
    let found = shown.filter(|text| {
        let words = text.split(|c: char| c.is_whitespace() || c == '\u{202f}');
        let words: Vec<String> = words.map(bare).collect();
        words.iter().enumerate().any(|(nth, word)| {
            let measured = words
                .get(nth + 1)
                .is_some_and(|next| UNITS.contains(&next.as_str()));
            match decimals(word) {
                Some(2) => measured || !typed.contains(word),
                Some(_) => measured,
                None => false,
            }
        })
    });
    found.cloned().collect()
}

/// Work for 1,440 before tax on an order, with what was agreed and paid of it.
fn priced(door: &Door) {
    let tell = |part, content| door.send("order:a", part, content);
    tell(
        "fact",
        json!({ "line-opened": { "line": "line-1", "complaint": shop::Device::words("It leaks"), "payer": "customer" } }),
    );
    tell(
        "request",
        json!({ "add-to-price": { "entries": [{ "line": "line-1", "charge": "labour", "label": shop::Device::words("work"),
            "quantity": "12", "each": "120", "payer": "customer" }] } }),
    );
    tell(
        "fact",
        json!({ "consented": { "step": "repair", "payer": "customer", "lines": [], "agreed": true, "amount": "1400.50",
            "tax_included": false, "way": "phone", "person": null, "said": null, "number_called": null,
            "signature": null, "after": [] } }),
    );
    tell(
        "fact",
        json!({ "paid": { "payer": "customer", "amount": "100.25", "by": "card", "deposit": true } }),
    );
}

#[test]
fn sums_are_written_as_each_screen_speaks_and_programs_get_them_plain() {
    let door = german();
    priced(&door);
    for path in ["/o/1001/price", "/o/1001/desk", "/o/1001/pay"] {
        let (german, english) = (read(&door, path, "ana"), read(&door, path, "abe"));
        assert!(german.contains("1.440,00"), "{path}: {german}");
        assert!(english.contains("1,440.00"), "{path}: {english}");
    }
    // What stands in a field to be typed over is read back as it is.
    assert!(read(&door, "/o/1001/price", "ana").contains("value=\"120\""));
    for who in ["ana", "abe"] {
        let order: serde_json::Value =
            serde_json::from_str(&read(&door, "/api/orders/1001", who)).unwrap();
        assert_eq!(order["totals"][0]["net"], "1440.00", "{who}");
        assert_eq!(order["payments"][0]["amount"], "100.25", "{who}");
    }
}

#[test]
fn opening_hours_are_typed_and_shown_in_german() {
    let door = german();
    let hours = json!({ "hours-told": { "person": null, "week": "Montag bis Freitag 8-12, 12:30-17 Uhr; Sa 9-13", "after": [] } });
    door.send("shop", "shop_fact", hours);
    assert!(read(&door, "/shop", "ana").contains("Mo-Fr 8-12, 12:30-17; Sa 9-13"));
    let english = "mon-fri 08:00-12:00, 12:30-17:00; sat 09:00-13:00";
    assert!(read(&door, "/shop", "abe").contains(english));
}

#[test]
fn what_the_door_refuses_is_said_in_the_language_of_the_page() {
    let door = german();
    let sent = json!({ "hours-told": { "person": null, "week": "irgendwann 8-17", "after": [] } });
    let told = |who: &str| {
        let cookie = format!("who={who}");
        let part = json!([{ "stream": "shop", "shop_fact": sent, "who": who }]);
        let headers = [
            ("Cookie", cookie.as_str()),
            ("Content-Type", "application/json"),
        ];
        door.ask(
            "POST",
            "/api/commands/check",
            &headers,
            part.to_string().as_bytes(),
        )
        .body
    };
    let (german, english) = (told("ana"), told("abe"));
    assert!(german.contains("ist kein Tag"), "{german}");
    assert!(english.contains("is no day"), "{english}");
}

#[test]
fn every_page_is_german_from_top_to_bottom() {
    let door = german();
    priced(&door);
    let typed: String = [
        include_str!("../../../../demo/maps/korvane-drayman-engine-front.toml"),
        "Korvane Drayman 2.3 Abe Lind Ada It leaks shop stall",
        // What is typed as it stands: words of a map's text, of a thread, of a command.
        "above below wheel well cabin rear outside spark plug buttonup serve --shop-network",
    ]
    .concat()
    .to_lowercase();
    let (mut seen, mut todo) = (BTreeSet::new(), VecDeque::from(["/".to_owned()]));
    let mut left = BTreeSet::new();
    while let Some(path) = todo.pop_front() {
        if !seen.insert(path.clone()) {
            continue;
        }
        let of = |who: &str| {
            let cookie = format!("who={who}");
            door.ask("GET", &path, &[("Cookie", &cookie)], b"")
        };
        let german = of("ana");
        if german.status != 200 || !german.body.starts_with("<!DOCTYPE") {
            continue;
        }
        let (german, english) = (german.body, of("abe").body);
        assert!(german.contains("<html lang=\"de\""), "{path}");
        // A paper's page is written as the paper is.
        if PAPERS.iter().any(|paper| path.ends_with(paper)) {
            continue;
        }
        todo.extend(links(&german));
        let both = texts(&german);
        left.extend(
            plain_numbers(&both, &typed)
                .into_iter()
                .map(|text| format!("{path}: {text}")),
        );
        let both = both
            .intersection(&texts(&english))
            .cloned()
            .collect::<Vec<_>>();
        let is_typed = |word: &str| {
            let bare = word.trim_matches(|sign: char| !sign.is_alphanumeric());
            typed.contains(&bare.to_lowercase())
        };
        let sentences = both.into_iter().filter(|text| {
            let letters = |word: &&str| word.chars().any(char::is_alphabetic);
            let words: Vec<&str> = text.split_whitespace().filter(letters).collect();
            // What the shop in these tests is called, examples of threads, commands.
            let is_data = text.contains("alert(1)")
                || text.starts_with("M8, M8x1.25")
                || text.starts_with("buttonup ");
            words.len() >= 3 && !is_data && !words.into_iter().all(is_typed)
        });
        left.extend(sentences.map(|text| format!("{path}: {text}")));
    }
    assert!(seen.len() > 60, "{seen:?}");
    let left: Vec<String> = left.into_iter().collect();
    assert!(
        left.is_empty(),
        "{} of {} pages:\n{}",
        left.len(),
        seen.len(),
        left.join("\n")
    );
}
