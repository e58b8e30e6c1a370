//! A paper that was given out is found again byte for byte, and is erased with the person.

#![allow(clippy::unwrap_used, reason = "a test fails by panicking")]

mod scene;

use papers::{Asked, Kind, give_out};
use scene::bench::Bench;
use scene::{invoice, resealed};
use serde_json::json;
use shop::repair::Words;
use shop::{Breadth, Device, Whom};

#[test]
fn what_was_given_out_stays_the_very_bytes_whatever_comes_after() {
    let (mut bench, order) = resealed();
    bench.ask(&order, json!({ "charge": {} })).unwrap();
    let number = bench.number(&order);
    let ana = bench.service.caller(Some("ana"), "page").unwrap();
    let asked = Asked::of(Kind::Invoice);
    let kept = give_out(&bench.service, &ana, number, &asked, "posted to Ada Brandt").unwrap();

    bench.clock.later(60 * 24 * 400);
    bench.tell(
        &order,
        json!({ "paid": { "payer": "customer", "amount": "100", "by": "card", "deposit": false } }),
    );
    bench.tell(&order, json!({ "line-worded": { "line": "line-1", "text": "cause", "words": Device::words("Something else"), "after": [] } }));
    assert!(
        invoice(&bench, &order).pdf != kept.made.pdf,
        "a new paper says what is true now"
    );
    let other = bench.another_program();
    let file = other
        .texts()
        .file(Words::from_hex(&kept.file).unwrap())
        .unwrap()
        .unwrap();
    assert_eq!(file.0, "application/pdf");
    assert!(file.1 == kept.made.pdf);
    let given = &bench.view(&order).papers.given;
    assert_eq!(given.len(), 1);
    assert_eq!(
        (given[0].text.as_str(), given[0].by.as_str()),
        ("Invoice INV-1, posted to Ada Brandt", "Ana Reis")
    );
    let story = bench.view(&order).story;
    let line = story
        .iter()
        .find(|line| line.text.starts_with("Paper given out"))
        .unwrap();
    assert!(line.photos.is_empty(), "a paper is no photo");
}

#[test]
fn who_is_shown_no_prices_is_told_of_no_paper_that_has_some() {
    let (mut bench, order) = resealed();
    bench.shop(json!({ "joined": { "person": "kim", "name": Device::words("Kim"), "roles": ["apprentice"] } }));
    let number = bench.number(&order);
    let ana = bench.service.caller(Some("ana"), "page").unwrap();
    give_out(&bench.service, &ana, number, &Asked::of(Kind::Estimate), "").unwrap();
    let kim = bench.service.caller(Some("kim"), "page").unwrap();
    let seen = bench
        .service
        .look(&kim, |snap| shop::view::order(snap, number))
        .unwrap();
    assert!(seen.papers.given.is_empty());
}

#[test]
fn what_was_given_out_is_erased_with_the_person() {
    let mut bench = Bench::new();
    let order = bench.open("Ada Brandt", "Drayman", "KD 2302");
    bench.finish(&order);
    bench.hand_over(&order).unwrap();
    let number = bench.number(&order);
    let ana = bench.service.caller(Some("ana"), "page").unwrap();
    let kept = give_out(
        &bench.service,
        &ana,
        number,
        &Asked::of(Kind::Estimate),
        "by hand",
    )
    .unwrap();
    let words = Words::from_hex(&kept.file).unwrap();
    assert!(bench.service.texts().file(words).unwrap().is_some());
    let why = shop::repair::Token::new("they asked").unwrap();
    let whom = Whom::OfOrder(number);
    shop::ask_to_erase(&bench.service, &whom, Breadth::Person, "ana", &why).unwrap();
    bench.clock.later(60 * 24);
    assert_eq!(shop::erase_due(&bench.service).unwrap().len(), 1);
    assert!(
        bench
            .another_program()
            .texts()
            .file(words)
            .unwrap()
            .is_none()
    );
}
