//! Ways to mend a thread as they are shown and kept: the same words when they are read back,
//! and the shop's own weights in the ranking.

#![allow(clippy::unwrap_used, reason = "a test fails by panicking")]

mod bench;

use bench::tell_to;

use bench::Bench;
use drawing::joint;
use fastener::repair::Planning;
use measure::Customary;
use phrases::{Language, speaking};
use rust_decimal::Decimal;
use serde_json::json;
use shop::mending::{Fields, Told, added, kept, planning, ways};
use shop::{Device, Service};
use std::sync::Arc;
use store::Memory;

/// The housing bolt of the benchmark: snapped 2 mm below the face of a blind hole.
fn housing_bolt() -> Fields {
    [
        ("thread", "M8x1.25"),
        ("joint", "other"),
        ("class", "8.8"),
        ("bolt-length", "75 mm"),
        ("engaged", "18 mm"),
        ("depth", "26 mm"),
        ("boss", "19 mm"),
        ("in", "aluminium"),
        ("torque", "22 Nm"),
        ("by", "2 mm"),
    ]
    .map(|(name, text)| (name.to_owned(), text.to_owned()))
    .into()
}

fn told(planning: &Planning) -> Vec<Told> {
    ways(&housing_bolt(), Some("below"), planning, Customary::Metric).unwrap()
}

#[test]
fn the_benchmark_gets_its_insert_in_55_minutes_for_14() {
    let all = told(&Planning::default());
    let first = &all[0].way;
    assert_eq!(first.code, "wire-insert");
    assert_eq!(first.torque_written.as_deref(), Some("22 N·m"));
    assert!(first.torque_as_before);
    assert_eq!(
        first.size_now.as_deref(),
        Some("M8x1.25 insert, bolt M8x75")
    );
    let minutes = first.minutes.as_ref().unwrap();
    let spread = [&minutes.low, &minutes.mid, &minutes.high];
    assert_eq!(spread, ["40", "55", "90"]);
    assert_eq!(first.parts[0].price.as_deref(), Some("14.00"));
    let larger = all.iter().find(|told| told.way.code == "oversize").unwrap();
    assert!(larger.way.rank > 1 && larger.way.holds);
    let why = all[0]
        .others
        .iter()
        .find(|other| other.code == "oversize")
        .unwrap();
    assert!(why.reason.contains("must grow to 11 mm"), "{}", why.reason);
    // No room to weld: the ladder says so, and goes on to the left-hand drills.
    let ladder = all[0].stub.as_ref().unwrap();
    let weld = ladder
        .rungs
        .iter()
        .find(|rung| rung.name.contains("weld"))
        .unwrap();
    assert!(!weld.open && weld.reason.is_some());
    assert!(ladder.cautions[0].contains("Eye protection"));
}

#[test]
fn what_is_kept_reads_back_the_same_and_is_drawn_the_same() {
    for told in told(&Planning::default()) {
        let kept = serde_json::to_string(&told).unwrap();
        assert!(kept.len() < 60_000, "{} bytes", kept.len());
        let read: Told = serde_json::from_str(&kept).unwrap();
        assert_eq!(read, told);
        assert_eq!(
            joint(&read.way.joint.drawn(), 358.0, 290.0),
            joint(&told.way.joint.drawn(), 358.0, 290.0)
        );
        assert!(!read.way.working.lines.is_empty());
    }
}

/// Every way, as it is kept where this is spoken.
fn all_kept(language: Language) -> Vec<Told> {
    let planning = Planning::default();
    let all = speaking(language, || told(&planning));
    let each = all.iter().map(|told| {
        speaking(language, || {
            kept(told, Some("below"), &planning, Customary::Metric)
        })
    });
    each.collect()
}

#[test]
fn whoever_reads_a_way_reads_their_own_language() {
    let (english, german) = (all_kept(Language::English), all_kept(Language::German));
    assert_eq!(german[0].way.name, "Drahtgewindeeinsatz");
    for (english, german) in english.iter().zip(&german) {
        let outputs = serde_json::to_string(german).unwrap();
        assert!(outputs.len() < 60_000, "{} bytes", outputs.len());
        let read: Told = serde_json::from_str(&outputs).unwrap();
        let as_read = |told: &Told, language| {
            let mut read = speaking(language, || told.clone().in_spoken_words());
            read.in_other_words.clear();
            read
        };
        for language in Language::ALL {
            assert_eq!(as_read(&read, language), as_read(english, language));
        }
        let in_english = as_read(&read, Language::English);
        assert_eq!(in_english.way.name, english.way.name);
        assert_eq!(in_english.fields, read.fields);
        for (said, read) in speaking(Language::English, || {
            read.clone().steps_read().collect::<Vec<_>>()
        }) {
            assert_ne!(said, read);
        }
    }
}

/// What was kept before is read as it was said.
#[test]
fn a_way_that_was_kept_in_one_language_stays_in_it() {
    let old = serde_json::to_value(&told(&Planning::default())[0]).unwrap();
    assert!(old.get("in_other_words").is_none());
    let old: Told = serde_json::from_value(old).unwrap();
    let read = speaking(Language::German, || old.clone().in_spoken_words());
    assert_eq!(read, old);
}

/// The steps of a way that was taken in one language are owed in the reader's.
#[test]
fn the_steps_of_a_way_are_owed_in_the_readers_language() {
    let mut bench = Bench::new();
    let order = bench.open("Ada Brandt", "Drayman", "KD 2302");
    let first = &all_kept(Language::German)[0];
    let step = &first.way.steps[0].what;
    bench.tell(&order, json!({ "declared": { "item": { "id": "housing-bolts", "kind": "fasteners", "system": "oil",
        "zone": "above", "label": Device::words("housing bolts"), "size": "M8x75", "pieces": [{ "position": 1, "length": null }],
        "pattern": null, "spent": false, "may_miss": null, "put_in": null, "holds": null } } }));
    bench.tell(&order, json!({ "snag-found": { "snag": "snag-1", "item": "housing-bolts", "at": [1], "what": "snapped",
        "sits": "below", "words": null, "photos": [], "moves": [] } }));
    bench.tell(&order, json!({ "calculated": { "id": "choice-1", "item": "housing-bolts", "snag": "snag-1",
        "calculator": "thread-repair", "version": 1, "inputs": "{}", "outputs": serde_json::to_string(first).unwrap(), "working": "" } }));
    bench.tell(
        &order,
        json!({ "work-due": { "id": "choice-1-0", "item": "housing-bolts",
        "words": Device::words(&shop::say::capital(step)), "until": { "before": "start" } } }),
    );
    let owed = |bench: &Bench| {
        let ana = bench.service.caller(Some("ana"), "test").unwrap();
        let number = bench.number(&order);
        let look = |snap: &shop::Snapshot<'_>| shop::view::order(snap, number);
        let view = bench.service.look(&ana, look).unwrap();
        let mut debts = view.debts.iter();
        debts.find(|debt| debt.own.is_some()).unwrap().text.clone()
    };
    let english = speaking(Language::English, || first.clone().in_spoken_words());
    let in_english = shop::say::capital(&english.way.steps[0].what);
    assert!(owed(&bench).starts_with(&in_english), "{}", owed(&bench));
    bench.shop(json!({ "shop-speaks": { "language": "de", "after": [] } }));
    let in_german = shop::say::capital(step);
    assert!(owed(&bench).starts_with(&in_german), "{}", owed(&bench));
}

#[test]
fn the_shops_own_weights_decide_and_nonsense_is_refused() {
    let at = || "2026-11-25T08:00:00Z".parse().unwrap();
    let service = Service::open(Arc::new(Memory::new()), "shop", Arc::new(at)).unwrap();
    let mut device = Device::new("phone", "ana");
    let mut weigh = |weights: [&str; 4]| {
        let [margin, time, cost, reversibility] = weights;
        let fact = json!({ "weighed": { "weights": {
            "margin": margin, "time": time, "cost": cost, "reversibility": reversibility } } });
        tell_to(&service, device.command("shop", at(), "shop_fact", fact))
    };
    let first = |service: &Service| {
        let world = service.world().unwrap();
        told(&planning(&world))[0].way.code.clone()
    };
    assert_eq!(first(&service), "wire-insert");
    weigh(["0", "0", "1", "0"]).unwrap();
    assert_eq!(first(&service), "oversize", "the cheapest that holds");
    for nonsense in [
        ["0", "0", "0", "0"],
        ["-1", "1", "1", "1"],
        ["5000", "1", "1", "1"],
    ] {
        let trouble = weigh(nonsense).unwrap_err();
        assert!(trouble.mend.contains("write 1"), "{}", trouble.mend);
    }
    assert_eq!(first(&service), "oversize");
}

#[test]
fn what_is_wrong_names_its_field() {
    let mut fields = housing_bolt();
    fields.insert("engaged".to_owned(), "a lot".to_owned());
    let trouble = ways(&fields, None, &Planning::default(), Customary::Metric).unwrap_err();
    assert_eq!(trouble.field, "engaged");
    fields.remove("engaged");
    let trouble = ways(&fields, None, &Planning::default(), Customary::Metric).unwrap_err();
    assert_eq!(trouble.field, "engaged");
}

/// A shop may say any rate; the page of a snag that reckons by it must still open.
#[test]
fn no_rate_is_too_large_to_reckon_by() {
    let mut bench = Bench::new();
    let id = bench.open("Ada Brandt", "Drayman", "KD 2302");
    let mut way = told(&Planning::default()).remove(0).way;
    way.minutes.as_mut().unwrap().mid = "600".to_owned();
    let added = added(&bench.view(&id), &way, Decimal::MAX, 2);
    assert_eq!(added.hours.as_ref().map(shop::Amount::exact), Some("10"));
}

/// Nothing is ranked before somebody said what the joint holds, and a brake gets the maker's
/// part alone.
#[test]
fn what_the_joint_holds_is_asked_first() {
    let mut fields = housing_bolt();
    fields.remove("joint");
    let ranked = |fields: &Fields| ways(fields, None, &Planning::default(), Customary::Metric);
    let trouble = ranked(&fields).unwrap_err();
    assert_eq!(
        (trouble.field, trouble.what.as_str()),
        ("joint", "what does the joint hold?")
    );
    fields.insert("joint".to_owned(), "brake".to_owned());
    let all = ranked(&fields).unwrap();
    let names: Vec<&str> = all.iter().map(|told| told.way.name.as_str()).collect();
    assert_eq!(
        names,
        ["the maker's part", "a repair that the maker approves"]
    );
    assert!(
        all[0]
            .cautions
            .iter()
            .any(|text| text.starts_with("People are hurt"))
    );
    assert_eq!(all[0].way.code, "new-part");
}
