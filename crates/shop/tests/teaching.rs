//! What finished orders of one kind of vehicle teach: the sequence with what it rests on, what
//! is asked and answered, names that mean one thing, and the map that follows.

#![allow(clippy::unwrap_used, reason = "a test fails by panicking")]

mod bench;

use bench::Bench;
use serde_json::{Value, json};
use shop::repair::{self, Token};
use shop::teaching::{Renewed, Taught, renewed, taught, vehicle_kind};
use shop::{Device, map};
use states::ItemId;

const VEHICLE: &str = "Tessel Van";
const KIND: &str = "tessel-van";

/// An order of the kind in which these came off in turn, two minutes apart, went back, and that
/// was handed over.
fn worked(bench: &mut Bench, who: &str, off: &[&str]) -> String {
    let order = bench.open("Joe Field", VEHICLE, "TB 100");
    bench.by(who);
    for item in off {
        bench.declare(&order, item, ("cover", "body", "cabin"), 1);
    }
    for item in off {
        bench.clock.later(2);
        bench.move_to(&order, item, "off");
    }
    for item in off.iter().rev() {
        bench.clock.later(2);
        bench.move_to(&order, item, "on");
    }
    bench.by("ana").finish(&order);
    bench.hand_over(&order).unwrap();
    order
}

fn kind() -> String {
    shop::teaching::kind_of(VEHICLE).as_str().to_owned()
}

fn learned(bench: &Bench, target: Option<&str>) -> Taught {
    bench
        .look(|snap| {
            let kind = vehicle_kind(snap, &kind())?;
            taught(snap, &kind, target, &Device::words)
        })
        .unwrap()
}

fn new_map(bench: &Bench) -> Renewed {
    bench
        .look(|snap| renewed(snap, &vehicle_kind(snap, &kind())?))
        .unwrap()
}

fn say(bench: &mut Bench, fact: Value) {
    bench
        .send(&format!("map:{}", kind()), "map_fact", fact)
        .unwrap();
}

fn keep(bench: &mut Bench, made: &Renewed) {
    let text = Device::document(&made.text, "application/toml");
    let fact = json!({ "drafted": { "version": made.from + 1, "text": text } });
    bench
        .send(&format!("map:{}", made.map), "map_fact", fact)
        .unwrap();
}

fn rests(taught: &Taught) -> Vec<String> {
    let step = |step: &shop::teaching::StepTaught| {
        let rests: Vec<String> = step
            .rests
            .iter()
            .map(|rest| format!("after {}: {}", rest.before, rest.how))
            .collect();
        format!("{} {} {}", step.item, step.done, rests.join("; "))
    };
    taught.steps.iter().map(step).collect()
}

#[test]
fn nothing_is_learned_before_an_order_is_handed_over() {
    let mut bench = Bench::new();
    let order = bench.open("Joe Field", VEHICLE, "TB 100");
    bench.declare(&order, "tray", ("cover", "body", "below"), 1);
    bench.move_to(&order, "tray", "off");
    assert!(
        bench
            .look(|snap| vehicle_kind(snap, &kind()).map(|_| ()))
            .is_err()
    );
    assert!(bench.look(shop::teaching::kinds).unwrap().is_empty());
}

#[test]
fn one_person_s_habit_is_one_witness_and_another_s_is_a_second() {
    let mut bench = Bench::new();
    for _ in 0..3 {
        worked(&mut bench, "ben", &["grille", "lamp"]);
    }
    let taught = learned(&bench, None);
    assert_eq!(taught.orders.len(), 3);
    assert_eq!(taught.witnesses, 1);
    assert_eq!(
        rests(&taught),
        [
            "grille off ",
            "lamp off after grille off: seen 3 times, always with Ben: one witness, it may be a habit",
        ]
    );
    assert_eq!(taught.guesses, 1, "a habit is a guess");
    worked(&mut bench, "ana", &["grille", "lamp"]);
    let taught = learned(&bench, None);
    assert_eq!(
        rests(&taught)[1],
        "lamp off after grille off: seen 4 times, 2 witnesses"
    );
    // The other way round, it is known that either will do.
    worked(&mut bench, "ana", &["lamp", "grille"]);
    worked(&mut bench, "ben", &["lamp", "grille"]);
    let taught = learned(&bench, None);
    assert_eq!(taught.guesses, 0, "{:?}", rests(&taught));
}

#[test]
fn a_question_is_asked_and_its_answer_stands() {
    let mut bench = Bench::new();
    worked(&mut bench, "ben", &["grille", "lamp"]);
    worked(&mut bench, "ana", &["grille", "lamp"]);
    let asked = learned(&bench, None).question.unwrap();
    assert_eq!(asked.words, "Could the lamp come off before the grille?");
    let [_, no, _] = asked.facts;
    say(&mut bench, no);
    let taught = learned(&bench, None);
    assert!(taught.question.is_none(), "it is not asked again");
    assert_eq!(rests(&taught)[1], "lamp off after grille off: stated");
    assert_eq!(taught.answered[0].said, "No, Ana");
    // Whoever saw the first answer changes it; a fact is never refused.
    let changed = taught.answered[0]
        .others
        .iter()
        .find(|(word, _)| *word == "Yes");
    say(&mut bench, changed.unwrap().1.clone());
    let taught = learned(&bench, None);
    assert_eq!(taught.answered.len(), 1);
    assert_eq!(taught.answered[0].said, "Yes, Ana");
    assert!(taught.steps.iter().all(|step| step.rests.is_empty()));
}

#[test]
fn nobody_is_asked_while_somebody_works_on_one() {
    let mut bench = Bench::new();
    worked(&mut bench, "ben", &["grille", "lamp"]);
    let order = bench.open("Una Marsh", VEHICLE, "TB 200");
    let clock = |clock: &str| json!({ "timed": { "stage": "stage-1", "clock": clock, "book_minutes": null, "words": null } });
    bench.by("ben").tell(&order, clock("opened"));
    let taught = learned(&bench, None);
    assert!(taught.question.is_none());
    assert_eq!(
        taught.waits.as_deref(),
        Some("Ben is at one just now, order 1002")
    );
    bench.clock.later(5);
    bench.tell(&order, clock("left"));
    assert!(learned(&bench, None).question.is_some());
}

#[test]
fn names_are_proposed_never_joined_and_one_tap_joins_them() {
    let mut bench = Bench::new();
    worked(&mut bench, "ben", &["roof-bars", "lamp"]);
    worked(&mut bench, "ana", &["roof-bar", "lamp"]);
    let taught = learned(&bench, None);
    assert_eq!(taught.steps.len(), 3, "two names are two things until told");
    let [same] = taught.names.as_slice() else {
        panic!("one proposal")
    };
    assert!(same.why.starts_with("one and many"), "{}", same.why);
    say(&mut bench, same.facts[0].clone());
    let taught = learned(&bench, None);
    assert_eq!(taught.steps.len(), 2);
    assert!(taught.names.is_empty());
    assert_eq!(
        rests(&taught)[1],
        "lamp off after roof bar off: seen 2 times, 2 witnesses"
    );
}

#[test]
fn a_map_that_has_a_thing_under_two_names_has_it_once_after_they_are_joined() {
    let mut bench = Bench::new();
    worked(&mut bench, "ben", &["roof-bars", "lamp"]);
    worked(&mut bench, "ana", &["roof-bar", "lamp"]);
    let made = new_map(&bench);
    assert_eq!(made.things, 3);
    keep(&mut bench, &made);
    let same = learned(&bench, None).names[0].facts[0].clone();
    say(&mut bench, same);
    let once = new_map(&bench);
    assert_eq!(once.things, 2);
    assert!(
        once.changes.contains(&"roof bars: taken out".to_owned()),
        "{:?}",
        once.changes
    );
    assert!(once.sound, "{:?}", once.faults);
    keep(&mut bench, &once);
    assert!(new_map(&bench).changes.is_empty());
}

#[test]
fn what_is_erased_teaches_no_more_and_is_found_under_no_kind() {
    let mut bench = Bench::new();
    worked(&mut bench, "ben", &["grille", "lamp"]);
    assert_eq!(learned(&bench, None).steps.len(), 2);
    bench.service.save_index().unwrap();
    shop::ask_to_erase(
        &bench.service,
        &shop::Whom::OfOrder(1001),
        shop::Breadth::EveryWord,
        "ana",
        &Token::new("asked").unwrap(),
    )
    .unwrap();
    bench.clock.later(24 * 60);
    assert_eq!(shop::erase_due(&bench.service).unwrap().len(), 1);
    assert!(bench.look(shop::teaching::kinds).unwrap().is_empty());
    let made = shop::rebuild(&bench.store, bench::LOG, false).unwrap();
    assert_eq!(made.differences, Vec::<String>::new());
}

#[test]
fn names_that_are_two_things_are_not_proposed_again() {
    let mut bench = Bench::new();
    worked(&mut bench, "ben", &["grille", "lamp"]);
    worked(&mut bench, "ana", &["grile", "lamp"]);
    let no = learned(&bench, None).names[0].facts[1].clone();
    say(&mut bench, no);
    let taught = learned(&bench, None);
    assert!(taught.names.is_empty());
    assert_eq!(taught.steps.len(), 3);
}

#[test]
fn one_thing_on_an_order_is_one_thing_in_what_it_teaches() {
    let mut bench = Bench::new();
    worked(&mut bench, "ben", &["grille", "lamp"]);
    let order = worked(&mut bench, "ana", &["front-grille", "lamp"]);
    bench.declare(&order, "grille", ("cover", "body", "cabin"), 1);
    bench.tell(
        &order,
        json!({ "same-as": { "item": "grille", "also": "front-grille" } }),
    );
    let taught = learned(&bench, None);
    assert_eq!(taught.steps.len(), 2, "{:?}", rests(&taught));
}

#[test]
fn what_contradicts_itself_is_asked_and_left_out_until_somebody_chose() {
    let mut bench = Bench::new();
    for (who, size) in [("ben", "M6"), ("ana", "M6"), ("ana", "M8")] {
        let order = worked(&mut bench, who, &["grille", "lamp"]);
        bench.by(who).tell(
            &order,
            json!({ "size-told": { "item": "lamp", "size": size, "after": [] } }),
        );
    }
    let told = learned(&bench, None);
    let [differ] = told.differ.as_slice() else {
        panic!("one thing differs")
    };
    assert_eq!(differ.words, "lamp: size?");
    let said: Vec<_> = differ
        .values
        .iter()
        .map(|(value, by, _)| (value.as_str(), by.as_str()))
        .collect();
    assert_eq!(said, [("M6", "Ana and Ben, 2 times"), ("M8", "Ana, once")]);
    let map = new_map(&bench);
    assert_eq!(map.open, 1);
    assert!(!map.text.contains("size"), "{}", map.text);
    say(&mut bench, differ.values[1].2.clone());
    let map = new_map(&bench);
    assert_eq!(map.open, 0);
    assert!(map.text.contains("size = \"M8\""), "{}", map.text);
}

#[test]
fn a_map_is_made_renewed_and_says_which_needs_are_guesses() {
    let mut bench = Bench::new();
    worked(&mut bench, "ben", &["grille", "lamp", "bumper"]);
    worked(&mut bench, "ana", &["grille", "lamp", "bumper"]);
    let made = new_map(&bench);
    assert_eq!(
        (made.from, made.things, made.sound),
        (0, 3, true),
        "{:?}",
        made.faults
    );
    let read = map::read("learned.toml", &made.text).unwrap().map;
    let guessed = |map: &map::Map, item: &str| map.items[&ItemId::new(item)].guessed.clone();
    assert_eq!(guessed(&read, "lamp"), [ItemId::new("grille")].into());
    keep(&mut bench, &made);
    assert!(new_map(&bench).changes.is_empty(), "nothing new was taught");
    // The answer makes a need of a guess, and a new version says so in words.
    let lamp = learned(&bench, Some("lamp")).question.unwrap();
    assert_eq!(lamp.words, "Could the lamp come off before the grille?");
    say(&mut bench, lamp.facts[1].clone());
    let better = new_map(&bench);
    assert_eq!(
        better.changes,
        ["lamp: no longer only guessed to need grille"]
    );
    assert_eq!(better.from, 1);
    keep(&mut bench, &better);
    let again = new_map(&bench);
    assert!(again.changes.is_empty(), "{:?}", again.changes);
}

#[test]
fn another_program_on_the_same_record_learns_the_same() {
    let mut bench = Bench::new();
    worked(&mut bench, "ben", &["grille", "lamp"]);
    worked(&mut bench, "ana", &["lamp", "grille"]);
    let here = rests(&learned(&bench, None));
    let other = bench.another_program();
    let there = other
        .look(&shop::Caller::program(), |snap| {
            let kind = vehicle_kind(snap, &kind())?;
            taught(snap, &kind, None, &Device::words)
        })
        .unwrap();
    assert_eq!(here, rests(&there));
    // An order taken back is no finished work any more.
    let order = worked(&mut bench, "ana", &["grille", "lamp"]);
    assert_eq!(learned(&bench, None).orders.len(), 3);
    bench
        .ask(
            &order,
            json!({ "take-back": { "words": Device::words("it came back at once") } }),
        )
        .unwrap();
    assert_eq!(learned(&bench, None).orders.len(), 2);
}

#[test]
fn a_kind_goes_by_what_its_vehicles_are_called() {
    assert_eq!(kind(), KIND);
}

/// Two ways to write one vehicle: near names are proposed, never joined in silence, and can be
/// taken apart again. What was said under the other name counts as well.
#[test]
fn kinds_that_are_called_otherwise_are_joined_by_a_tap() {
    use shop::teaching::{alike, kinds, known_kind};
    let mut bench = Bench::new();
    worked(&mut bench, "ben", &["grille", "lamp"]);
    for (label, plate) in [("Tessell van", "TB 200"), ("Oxby saloon", "TB 300")] {
        let order = bench.open("Joe Field", label, plate);
        bench
            .by("ana")
            .declare(&order, "grille", ("cover", "body", "cabin"), 1);
        bench.declare(&order, "lamp", ("hose", "body", "cabin"), 1);
        for (item, to) in [
            ("grille", "off"),
            ("lamp", "off"),
            ("lamp", "on"),
            ("grille", "on"),
        ] {
            bench.clock.later(2);
            bench.move_to(&order, item, to);
        }
        bench.finish(&order);
        bench.hand_over(&order).unwrap();
    }
    let codes = |bench: &Bench| -> Vec<String> {
        let rows = bench.look(kinds).unwrap();
        rows.into_iter().map(|row| row.code).collect()
    };
    assert_eq!(codes(&bench), ["oxby-saloon", KIND, "tessell-van"]);
    let others = bench
        .look(|snap| alike(snap, &vehicle_kind(snap, KIND)?))
        .unwrap();
    let near: Vec<(&str, bool)> = others
        .iter()
        .map(|one| (one.code.as_str(), one.near))
        .collect();
    assert_eq!(near, [("tessell-van", true), ("oxby-saloon", false)]);

    let same =
        |kind: Value, after: Value| json!({ "same-kind-as": { "kind": kind, "after": after } });
    bench
        .send("map:tessell-van", "map_fact", same(json!(KIND), json!([])))
        .unwrap();
    assert_eq!(codes(&bench), ["oxby-saloon", KIND]);
    let both = learned(&bench, None);
    assert_eq!((both.orders.len(), both.witnesses), (2, 2));
    for name in ["Tessell van", "Tessel Van"] {
        let known = bench.look(|snap| known_kind(snap, name)).unwrap();
        assert_eq!(
            known.map(|code| code.as_str().to_owned()),
            Some(KIND.to_owned())
        );
    }
    let found = bench
        .look(|snap| vehicle_kind(snap, "tessell-van"))
        .unwrap();
    assert_eq!(found.code.as_str(), KIND);

    // What the lamp is was told both ways: asked, chosen with a tap, and written so.
    let lamp = both
        .differ
        .iter()
        .find(|one| one.words == "lamp: what is it?")
        .unwrap();
    let (word, _, choose) = lamp
        .values
        .iter()
        .find(|(word, ..)| word == "hose")
        .unwrap();
    assert_eq!(new_map(&bench).open, 1);
    say(&mut bench, choose.clone());
    let made = new_map(&bench);
    assert_eq!(made.open, 0);
    let (map, _) = map::look("line", &made.text);
    let kind = map.items[&ItemId::new("lamp")].kind;
    assert_eq!(map::kind_word(kind), word);

    // Said both ways round, they stay one kind; and apart again they are two.
    bench
        .send(
            &format!("map:{KIND}"),
            "map_fact",
            same(json!("tessell-van"), json!([])),
        )
        .unwrap();
    assert_eq!(codes(&bench).len(), 2);
    for name in [KIND, "tessell-van"] {
        let seen = bench
            .look(|snap| {
                let seen = snap
                    .world()
                    .map(&repair::MapId::new(name))?
                    .same_kind_as()
                    .1;
                Ok(seen
                    .iter()
                    .map(|one| one.as_str().to_owned())
                    .collect::<Vec<_>>())
            })
            .unwrap();
        let apart = same(Value::Null, json!(seen));
        bench
            .send(&format!("map:{name}"), "map_fact", apart)
            .unwrap();
    }
    assert_eq!(codes(&bench), ["oxby-saloon", KIND, "tessell-van"]);
}

/// An order in which these moves were made in turn, two minutes apart.
fn moved(bench: &mut Bench, who: &str, moves: &[(&str, &str)]) {
    let order = bench.open("Joe Field", VEHICLE, "TB 100");
    bench.by(who);
    for (item, _) in moves.iter().filter(|(_, to)| *to == "off") {
        bench.declare(&order, item, ("cover", "body", "cabin"), 1);
    }
    for (item, to) in moves {
        bench.clock.later(2);
        bench.move_to(&order, item, to);
    }
    bench.by("ana").finish(&order);
    bench.hand_over(&order).unwrap();
}

/// The sequence in which a plan by this map puts things back.
fn planned_back(text: &str, target: &str) -> Vec<String> {
    let map = map::read("learned.toml", text).unwrap().map;
    let stands = shop::planning::Stands::new();
    let problem = shop::planning::problem(&map, &[ItemId::new(target)], &stands);
    let plan = plan::plan(&problem, plan::Budget::default()).unwrap();
    assert!(plan.proven && plan.no_way_back.is_empty(), "{text}");
    plan.back.iter().map(|row| row.item.to_string()).collect()
}

#[test]
fn a_map_made_of_finished_work_carries_the_way_back_too() {
    let off = [("hose", "off"), ("pump", "off"), ("bracket", "off")];
    let turned = [("bracket", "on"), ("pump", "on"), ("hose", "on")];
    let at_the_bench = [("hose", "on"), ("bracket", "on"), ("pump", "on")];
    let job = |back: &[(&'static str, &'static str)]| [&off[..], back].concat();
    // Turned round, nothing is said of it.
    let mut bench = Bench::new();
    for who in ["ben", "ana", "ben"] {
        moved(&mut bench, who, &job(&turned));
    }
    let made = new_map(&bench);
    assert!(!made.text.contains("seen-needs-back"), "{}", made.text);
    assert_eq!(
        planned_back(&made.text, "bracket"),
        ["bracket", "pump", "hose"]
    );
    // The hose goes on the pump at the bench, before either goes back.
    let mut bench = Bench::new();
    for who in ["ben", "ana", "ben", "ana"] {
        moved(&mut bench, who, &job(&at_the_bench));
    }
    let made = new_map(&bench);
    assert!(made.sound, "{:?}", made.faults);
    assert_eq!(
        planned_back(&made.text, "bracket"),
        ["hose", "bracket", "pump"]
    );
    keep(&mut bench, &made);
    assert!(new_map(&bench).changes.is_empty(), "nothing new was taught");
    // Seen both ways, it does not matter: neither is asked for.
    for who in ["ben", "ana", "ben", "ana"] {
        moved(&mut bench, who, &job(&turned));
    }
    let either = new_map(&bench);
    assert!(!either.text.contains("hose on"), "{}", either.text);
    assert!(!either.text.contains("guessed-back"), "{}", either.text);
    // What somebody stated of it is turned round as it stands.
    let lines = made.text.lines();
    let lines = lines.filter(|line| !line.starts_with("guessed-back"));
    let stated: Vec<String> = lines
        .map(
            |line| match line.starts_with("seen-needs-back = [\"pump off\"") {
                true => "needs-back = [\"pump off\"]".to_owned(),
                false => line.to_owned(),
            },
        )
        .collect();
    let text = stated.join("\n");
    keep(
        &mut bench,
        &Renewed {
            text,
            from: 1,
            ..made
        },
    );
    let again = new_map(&bench);
    let of_bracket = again
        .text
        .split("[items.")
        .find(|item| item.starts_with("bracket"));
    let of_bracket = of_bracket.unwrap();
    assert!(
        of_bracket.contains("\nneeds-back = [\"pump off\"]"),
        "{of_bracket}"
    );
    assert!(!of_bracket.contains("seen-needs-back"), "{of_bracket}");
    assert_eq!(planned_back(&again.text, "bracket")[0], "bracket");
}

#[test]
fn jobs_done_before_stand_with_those_that_got_at_the_same_first() {
    let mut bench = Bench::new();
    worked(&mut bench, "ben", &["grille", "lamp"]);
    worked(&mut bench, "ana", &["tray"]);
    let made = new_map(&bench);
    keep(&mut bench, &made);
    let order = bench.open("Joe Field", VEHICLE, "TB 100");
    let number = bench.number(&order);
    let before = |bench: &Bench| {
        let found = bench
            .look(|snap| shop::teaching::done_before(snap, number))
            .unwrap();
        assert_eq!(found.vehicle, VEHICLE);
        let job = |job: shop::teaching::JobBefore| (job.number, job.by, job.things, job.wanted);
        found.jobs.into_iter().map(job).collect::<Vec<_>>()
    };
    let (tray, lamp) = ((1002, "Ana".to_owned(), 1), (1001, "Ben".to_owned(), 2));
    let none = Vec::<String>::new;
    assert_eq!(
        before(&bench),
        [
            (tray.0, tray.1.clone(), tray.2, none()),
            (lamp.0, lamp.1.clone(), lamp.2, none()),
        ]
    );
    bench.declare(&order, "lamp", ("cover", "body", "cabin"), 1);
    bench.tell(
        &order,
        json!({ "aimed": { "aim": "reach", "targets": ["lamp"], "without": [], "also": [],
            "places_taken": [], "variants": [], "after": [] } }),
    );
    assert_eq!(
        before(&bench),
        [
            (lamp.0, lamp.1, lamp.2, vec!["lamp".to_owned()]),
            (tray.0, tray.1, tray.2, none()),
        ]
    );
}

/// The lamp went on with the grille on already, though the grille came off first: a plan would
/// turn the way in round.
#[test]
fn what_went_back_otherwise_than_it_came_off_is_told() {
    let mut bench = Bench::new();
    for who in ["ben", "ana", "ben"] {
        worked(&mut bench, who, &["grille", "lamp"]);
    }
    assert_eq!(learned(&bench, None).back, Vec::<String>::new());
    let mut bench = Bench::new();
    for who in ["ben", "ana", "ben", "ana"] {
        let order = bench.open("Joe Field", VEHICLE, "TB 100");
        bench.by(who);
        for item in ["grille", "lamp"] {
            bench.declare(&order, item, ("cover", "body", "cabin"), 1);
        }
        for (item, to) in [
            ("grille", "off"),
            ("lamp", "off"),
            ("grille", "on"),
            ("lamp", "on"),
        ] {
            bench.clock.later(2);
            bench.move_to(&order, item, to);
        }
        bench.by("ana").finish(&order);
        bench.hand_over(&order).unwrap();
    }
    let back = learned(&bench, None).back;
    assert_eq!(
        back,
        ["grille went back before lamp, and came off before it as well: seen 4 times, 2 witnesses"]
    );
}
