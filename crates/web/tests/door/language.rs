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

#[test]
fn every_page_is_german_from_top_to_bottom() {
    let door = german();
    let typed: String = [
        include_str!("../../../../demo/maps/korvane-drayman-engine-front.toml"),
        "Korvane Drayman 2.3 Abe Lind shop stall",
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
