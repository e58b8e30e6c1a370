//! The demo's maps, what is told of maps that are wrong, and changes that keep the text.

#![allow(clippy::unwrap_used, reason = "a test that cannot go on should stop")]

use map::{Edit, Map, Weight, edit, read};
use states::{ItemId, Need, State};
use std::collections::BTreeSet;

fn demo(name: &str) -> (String, Map) {
    let path = format!("{}/../../demo/maps/{name}.toml", env!("CARGO_MANIFEST_DIR"));
    let text = std::fs::read_to_string(path).unwrap();
    let read = read(name, &text).unwrap_or_else(|troubles| panic!("{}", told(&troubles)));
    assert!(read.warnings.is_empty(), "{}", told(&read.warnings));
    (text, read.map)
}

fn told(troubles: &[map::Trouble]) -> String {
    troubles
        .iter()
        .map(|trouble| format!("{trouble}\n"))
        .collect()
}

fn first_trouble(text: &str) -> String {
    let troubles = match read("a.toml", text) {
        Ok(read) => read.warnings,
        Err(troubles) => troubles,
    };
    troubles.first().unwrap().to_string()
}

const HEAD: &str = "vehicle = \"A\"\n[sources.m]\ntitle = \"M\"\ndate = \"2020\"\n";

#[test]
fn the_demo_maps_are_sound() {
    let (_, drayman) = demo("korvane-drayman-engine-front");
    assert!(
        (55..=70).contains(&drayman.items.len()),
        "{}",
        drayman.items.len()
    );
    let bolts = &drayman.items[&ItemId::new("housing bolts")];
    let lengths: Vec<_> = bolts
        .lengths
        .values()
        .map(measure::Measured::written)
        .collect();
    assert_eq!(
        lengths,
        [
            "30 mm", "30 mm", "75 mm", "30 mm", "30 mm", "75 mm", "30 mm"
        ]
    );
    assert_eq!(bolts.torque.len(), 2);
    demo("pellworth-mite-battery");
    let (_, wheel_end) = demo("halvorsen-fjell-front-wheel-end");
    // What has neither stands at every gate until somebody tells.
    for (name, item) in drayman.items.iter().chain(&wheel_end.items) {
        assert!(item.system.is_some() && item.zone.is_some(), "{name}");
    }
    let plug = ItemId::new("sensor plug");
    let bolt = |map: &Map| {
        map.items[&ItemId::new("strut pinch bolt")].moves[0]
            .need
            .clone()
    };
    assert!(bolt(&wheel_end).items().contains(&plug));
    let bare = wheel_end.of_variant(&BTreeSet::new());
    assert!(!bare.items.contains_key(&plug) && !bolt(&bare).items().contains(&plug));
}

#[test]
fn needs_read_as_they_are_said() {
    let text = format!(
        "{HEAD}[items.\"pump bolts\"]\nis = \"fasteners\"\ncount = 4\n[items.belt]\nis = \"belt\"\n\
         needs = [\"pump bolts 1, 3 cracked\", {{ any = [\"pump bolts out\", [\"pump bolts 2 out\"]] }}]\n"
    );
    let map = read("a.toml", &text).unwrap().map;
    let Need::All(needs) = &map.items[&ItemId::new("belt")].moves[0].need else {
        panic!("{map:?}");
    };
    let Need::Is { at, states, .. } = &needs[0] else {
        panic!("{needs:?}");
    };
    assert_eq!(at, &[1, 3]);
    assert!(states.contains(&State::Out) && !states.contains(&State::Tight));
    assert!(matches!(&needs[1], Need::Any(ways) if ways.len() == 2));
}

#[test]
fn what_is_wrong_is_told_with_its_place_and_its_mending() {
    for (rows, says) in [
        (
            "[items.a]\nis = \"prt\"",
            "a.toml:6:6: error: `prt` is no kind of item; did you mean `part`?",
        ),
        (
            "[items.a]\nis = \"part\"\nneed = [\"b off\"]",
            "a.toml:7:1: error: `need` is no key of a; did you mean `needs`?",
        ),
        (
            "[items.a]\nis = \"part\"\nneeds = [\"bb off\"]\n[items.b]\nis = \"part\"",
            "a.toml:7:10: error: no item is called `bb`; did you mean `b`?",
        ),
        (
            "[items.a]\nis = \"part\"\nneeds = [\"b tight\"]\n[items.b]\nis = \"part\"",
            "a.toml:7:10: error: `b` is never `tight`; write one of off, on",
        ),
        (
            "[items.a]\nis = \"part\"\nminutes = { out = 2.55 }",
            "a.toml:7:19: error: `out` is 2.55, which is no time in whole tenths of a minute; ",
        ),
        (
            "[items.a]\nis = \"fasteners\"\ntorque = \"8 Nm\"",
            "a.toml:7:10: error: the torque of `a` has no source; add `torque-from = \"...\"` with a name under [sources]",
        ),
        (
            "[items.a]\nis = \"part\"\ncount = 3",
            "a.toml:7:9: error: `a` cannot have 3 pieces; only fasteners and clips are counted, from 1",
        ),
        (
            "[items.a]\nis = \"part\"\nneeds = [\"a off\"]",
            "a.toml:7:9: error: `a` needs a state of itself; take it out; where a move starts is known already",
        ),
        ("[items.a]\nis = ", "a.toml:6:6: error: "),
    ] {
        let trouble = first_trouble(&format!("{HEAD}{rows}\n"));
        assert!(trouble.starts_with(says), "{rows}\n{trouble}");
    }
}

#[test]
fn a_circle_that_nothing_free_reaches_is_shown() {
    let row = |name: &str, need: &str| format!("[items.{name}]\nis = \"part\"\nneeds = [{need}]\n");
    let circle = row("a", "\"b off\"") + &row("b", "\"c off\"") + &row("c", "\"a off\"");
    let trouble = first_trouble(&format!("{HEAD}{circle}"));
    assert!(
        trouble.contains("a.off needs b.off needs c.off needs a.off"),
        "{trouble}"
    );
    let open = circle.replace("\"c off\"", "{ any = [\"c off\", \"d off\"] }") + &row("d", "");
    let read = read("a.toml", &format!("{HEAD}{open}")).unwrap();
    assert_eq!(read.warnings.len(), 1, "{}", told(&read.warnings));
    assert_eq!(read.warnings[0].weight, Weight::Warning);
    assert!(
        read.warnings[0]
            .what
            .contains("the way by `c off` can never support `b.off`")
    );
}

#[test]
fn a_circle_that_only_some_vehicles_have_is_told() {
    let text = "vehicle = \"A\"\nvariants = [\"air\"]\n\
        [items.a]\nis = \"part\"\nneeds = { any = [\"b off\", \"c off\"] }\n\
        [items.b]\nis = \"part\"\nneeds = \"a off\"\n\
        [items.c]\nis = \"part\"\nonly-with = \"air\"\n";
    let trouble = first_trouble(text);
    assert!(
        trouble.contains("on a vehicle with no variant, these moves wait"),
        "{trouble}"
    );
}

#[test]
fn any_cut_or_muddled_text_is_answered_without_a_panic() {
    let (text, _) = demo("korvane-drayman-engine-front");
    for at in (0..text.len())
        .step_by(97)
        .filter(|at| text.is_char_boundary(*at))
    {
        let _ = read("cut", &text[..at]);
        let mut muddled = text.clone();
        muddled.insert_str(at, "[\"");
        let _ = read("muddled", &muddled);
    }
}

#[test]
fn a_change_keeps_comments_and_layout() {
    let (text, _) = demo("pellworth-mite-battery");
    let set = |item: &str, field: &str, value: &str| Edit::Field {
        item: item.to_owned(),
        field: field.to_owned(),
        value: Some(value.to_owned()),
    };
    let change = set("hold-down bolt", "torque", "\"11 Nm\"");
    let (changed, _) = edit("a.toml", &text, &change).unwrap();
    assert_eq!(changed, text.replace("\"9 Nm\"", "\"11 Nm\""));
    let item = "cover".to_owned();
    let add = Edit::Item {
        item: item.clone(),
        is: "cover".to_owned(),
    };
    let (changed, _) = edit("a.toml", &text, &add).unwrap();
    assert!(changed.starts_with(&text), "{changed}");
    let any = vec!["cover off".to_owned(), "battery off".to_owned()];
    let need = Edit::Need {
        item: "hold-down bolt".to_owned(),
        at: "needs".to_owned(),
        any,
    };
    let (changed, read) = edit("a.toml", &changed, &need).unwrap();
    assert!(
        changed.contains("{ any = [\"cover off\", \"battery off\"] }"),
        "{changed}"
    );
    assert!(
        read.warnings[0].what.contains("battery"),
        "the battery waits for the bolt"
    );
    let gone = edit("a.toml", &changed, &Edit::Remove { item }).unwrap_err();
    assert!(told(&gone).contains("no item is called `cover`"));
    assert!(edit("a.toml", &text, &set("battery", "minutes", "{ out = -1 }")).is_err());
}

#[test]
fn the_way_in_is_what_is_needed_first_and_what_that_needs() {
    let (_, drayman) = demo("korvane-drayman-engine-front");
    let id = |name: &str| ItemId::new(name);
    let firsts = drayman.firsts(&id("alternator bolts"));
    assert_eq!(firsts.get(&id("belt")), Some(&false));
    assert_eq!(firsts.get(&id("shroud")), Some(&true), "one of two ways");
    assert_eq!(firsts.get(&id("liner")), Some(&true));
    // Cracked against the belt, which is on: the pin wrench is not needed.
    assert!(drayman.firsts(&id("pulley bolts")).is_empty());
    let way = drayman.way_in(&[id("belt")].into());
    let names: Vec<_> = way.iter().map(ItemId::as_str).collect();
    assert_eq!(names, ["belt", "pulley bolts", "tensioner pin"]);
    assert!(drayman.way_in(&[id("nothing")].into()).is_empty());
    let deepest = drayman.deepest().unwrap();
    assert!(
        drayman.way_in(&[deepest.clone()].into()).len() > 30,
        "{deepest}"
    );
}

#[test]
fn changes_on_the_screen_keep_comments_too() {
    let (text, _) = demo("korvane-drayman-engine-front");
    let own = |text: &str| text.to_owned();
    let apply = |text: &str, edit: Edit| map::apply(text, &edit).unwrap();
    let field = |field: &str, value: Option<&str>| Edit::Field {
        item: own("shroud"),
        field: own(field),
        value: value.map(own),
    };
    let changed = apply(&text, field("minutes.out", Some("3.5")));
    assert_eq!(
        changed,
        text.replacen(
            "minutes = { out = 3, back = 4 }",
            "minutes = { out = 3.5, back = 4 }",
            1
        )
    );
    assert_eq!(apply(&changed, field("minutes.out", Some("3"))), text);
    let without = apply(&text, field("minutes", None));
    assert_eq!(
        without.matches("{ out = 3, back = 4 }").count(),
        1,
        "the housing's stay"
    );
    // A name changes wherever it is needed, and nowhere else.
    let rename = Edit::Rename {
        item: own("belt"),
        to: own("drive belt"),
    };
    let changed = apply(&text, rename);
    let map = read("a.toml", &changed).unwrap().map;
    assert!(
        map.firsts(&ItemId::new("pulley"))
            .contains_key(&ItemId::new("drive belt"))
    );
    assert!(
        changed.contains("needs-back = [\"drive belt on\"]"),
        "{changed}"
    );
    let back = Edit::Rename {
        item: own("drive belt"),
        to: own("belt"),
    };
    let system = "system = \"drive belt\"";
    assert!(changed.contains(system), "a system is no item");
    assert_eq!(
        apply(&changed, back).matches(system).count(),
        text.matches(system).count()
    );
    let shorter = "vehicle = \"A\"\n[items.motor]\nis = \"part\"\nneeds = [\"motor bolts out\"]\n[items.\"motor bolts\"]\nis = \"fasteners\"\n";
    let rename = Edit::Rename {
        item: own("motor"),
        to: own("drive"),
    };
    let changed = apply(shorter, rename);
    assert!(
        changed.contains("[items.drive]") && changed.contains("\"motor bolts out\""),
        "{changed}"
    );
    // One need taken away, the last one with its key.
    let unneed = |item: &str, at: &str, nth| Edit::Unneed {
        item: own(item),
        at: own(at),
        nth,
    };
    let changed = apply(&text, unneed("shroud", "needs", 0));
    assert!(changed.contains("needs = [\"top hose off\"]"), "{changed}");
    let changed = apply(&text, unneed("pulley bolts", "crack.needs", 0));
    assert_eq!(changed.matches("needs = { any = [\"belt on\"").count(), 0);
    let source = Edit::Source {
        name: own("bulletin"),
        title: own("Bulletin 7"),
        date: own("2024-01-02"),
    };
    let changed = apply(&text, source);
    assert_eq!(read("a.toml", &changed).unwrap().map.sources.len(), 2);
    assert!(map::apply("items = [", &unneed("a", "needs", 0)).is_err());
}

#[test]
fn one_move_becomes_two_and_one_again_and_no_blank_stays_behind() {
    let text = "vehicle = \"A\"\n[items.belt]\nis = \"belt\"\n[items.bolts]\nis = \"fasteners\"\ncount = 3\n\
        place = \"above\"\nneeds = [\"belt off\"] # it hides them\nminutes = { out = 1, back = 2 }\n";
    let item = || "bolts".to_owned();
    let field = |field: &str, value: Option<&str>| Edit::Field {
        item: item(),
        field: field.to_owned(),
        value: value.map(str::to_owned),
    };
    let apply = |text: &str, edit: &Edit| map::apply(text, edit).unwrap();
    let two = apply(text, &Edit::Crack { item: item() });
    let need = Edit::Need {
        item: item(),
        at: "crack.needs".to_owned(),
        any: vec!["belt on".to_owned()],
    };
    let two = apply(&two, &need);
    let two = apply(&two, &field("crack.minutes.out", Some("0.5")));
    let map = read("a.toml", &two)
        .unwrap_or_else(|t| panic!("{}\n{two}", told(&t)))
        .map;
    let moves = &map.items[&ItemId::new("bolts")].moves;
    assert_eq!(moves[0].minutes.out_tenths, 5);
    assert_eq!(moves[0].place.as_deref(), Some("above"));
    assert_eq!(moves[1].minutes.back_tenths, 20);
    assert_eq!(
        map::needs_written(&two, "bolts", "crack.needs"),
        ["belt on"]
    );
    assert_eq!(map::needs_written(&two, "bolts", "out.needs"), ["belt off"]);
    let one = apply(&two, &Edit::Whole { item: item() });
    assert_eq!(read("a.toml", &one), read("a.toml", text), "{one}");
    assert!(one.contains("# it hides them"), "{one}");
    // A field taken away or added within braces leaves what a person would write.
    let less = apply(text, &field("minutes.back", None));
    assert!(less.ends_with("minutes = { out = 1 }\n"), "{less}");
    let more = apply(&less, &field("minutes.each-out", Some("0.5")));
    assert!(
        more.ends_with("minutes = { out = 1, each-out = 0.5 }\n"),
        "{more}"
    );
    let less = apply(&more, &field("minutes.out", None));
    assert!(less.ends_with("minutes = { each-out = 0.5 }\n"), "{less}");
    assert!(!apply(&less, &field("minutes.each-out", None)).contains("minutes"));
    let long = apply(text, &field("length-at.3", Some("\"75 mm\"")));
    assert_eq!(map::fields(&long, "bolts")["length-at.3"], "75 mm");
}

#[test]
fn what_is_wrong_is_found_at_its_field() {
    let text = "vehicle = \"Käfer\"\n[items.\"Öl bolts\"]\nis = \"fasteners\"\ncount = \"many\"\n\
        minutes = { out = 1, back = \"soon\" }\n[items.lamp]\nis = \"prt\"\nneeds = [\"Öl bolts off\"]\n[items.rest]\nplace = \"above\"\n";
    let (map, troubles) = map::look("a.toml", text);
    assert_eq!(map.items.len(), 1, "what can be read is read");
    let places: Vec<_> = map::placed(text, &troubles)
        .into_iter()
        .map(Option::unwrap)
        .collect();
    let place = |item: &str, key: &str| (item.to_owned(), key.to_owned());
    assert_eq!(
        places,
        [
            place("Öl bolts", "count"),
            place("Öl bolts", "minutes.back"),
            place("lamp", "is"),
            place("rest", ""),
        ]
    );
    assert_eq!(map::fields(text, "Öl bolts")["minutes.back"], "soon");
}

/// A job in which these came off in turn.
fn job(name: &str, by: &str, off: &[&str]) -> map::Job {
    let item = |name: &&str| map::JobItem {
        name: (*name).to_owned(),
        kind: states::Kind::Part,
        count: 1,
        size: None,
        lengths: [].into(),
        system: None,
        zone: Some("cabin".to_owned()),
        holds: None,
        torque: None,
        spent: false,
        out_tenths: Some(15),
        back_tenths: None,
    };
    map::Job {
        name: name.to_owned(),
        vehicle: "Small Van".to_owned(),
        by: by.split(' ').map(str::to_owned).collect(),
        off: off.iter().map(item).collect(),
    }
}

fn grounds(map: &Map) -> Vec<String> {
    let said = |pair: map::Pair| {
        let how = match pair.ground {
            map::Ground::Stated => "stated".to_owned(),
            map::Ground::Seen { times, people } => format!("{times} times by {people}"),
            map::Ground::BothWays { there, back } => format!("{there} there, {back} back"),
        };
        format!("{} before {}: {how}", pair.first, pair.second)
    };
    map.pairs().into_iter().map(said).collect()
}

#[test]
fn a_finished_job_becomes_a_map_and_the_next_one_betters_it() {
    let text = map::merge("", &job("1002", "ana", &["grip", "panel", "speaker"])).unwrap();
    let map = read("a.toml", &text)
        .unwrap_or_else(|t| panic!("{}\n{text}", told(&t)))
        .map;
    assert_eq!(map.vehicle, "Small Van");
    let firsts = |map: &Map, item: &str| -> Vec<String> {
        map.firsts(&ItemId::new(item))
            .keys()
            .map(ToString::to_string)
            .collect()
    };
    // The sequence that was seen, each after the one before.
    assert_eq!(firsts(&map, "speaker"), ["panel"]);
    assert_eq!(firsts(&map, "panel"), ["grip"]);
    assert_eq!(
        map.items[&ItemId::new("grip")].moves[0].minutes.out_tenths,
        15
    );

    let text = map::merge(
        &text,
        &job("1010", "ana rui", &["panel", "grip", "speaker", "lamp"]),
    )
    .unwrap();
    let map = read("a.toml", &text).unwrap().map;
    assert_eq!(
        grounds(&map),
        [
            "grip before lamp: 1 times by 2",
            "grip before panel: 1 there, 1 back",
            "grip before speaker: 2 times by 2",
            "panel before lamp: 1 times by 2",
            "panel before speaker: 2 times by 2",
            "speaker before lamp: 1 times by 2",
        ]
    );
    let asked: Vec<_> = map
        .undecided()
        .iter()
        .map(|pair| pair.first.to_string())
        .collect();
    assert_eq!(asked, ["grip"], "only what is undecided is asked");
    assert!(firsts(&map, "panel").is_empty() && firsts(&map, "grip").is_empty());

    // One answer settles it, either way.
    let settle = |either_way| Edit::Settle {
        first: "panel".to_owned(),
        second: "grip".to_owned(),
        either_way,
    };
    let (_, settled) = edit("a.toml", &text, &settle(false)).unwrap();
    assert!(settled.map.undecided().is_empty());
    assert_eq!(firsts(&settled.map, "grip"), ["panel"]);
    let (_, settled) = edit("a.toml", &text, &settle(true)).unwrap();
    assert!(settled.map.undecided().is_empty());
    assert!(firsts(&settled.map, "grip").is_empty());
    // The same job again counts once.
    let again = map::merge(
        &text,
        &job("1010", "ana rui", &["panel", "grip", "speaker", "lamp"]),
    );
    assert_eq!(again.unwrap(), text);
}

#[test]
fn what_a_person_stated_goes_before_what_was_seen() {
    let stated = "vehicle = \"Small Van\" # ours\n[items.a]\nis = \"part\"\n[items.b]\nis = \"part\"\nneeds = [\"a off\"]\n";
    let text = map::merge(stated, &job("7", "ana", &["b", "a", "c"])).unwrap();
    assert!(text.starts_with(stated), "{text}");
    let map = read("a.toml", &text).unwrap().map;
    assert_eq!(
        grounds(&map),
        [
            "a before b: stated",
            "a before c: 1 times by 1",
            "b before c: 1 times by 1"
        ]
    );
    assert!(map.undecided().is_empty());
    assert_eq!(
        map.firsts(&ItemId::new("a")).len(),
        0,
        "it states that it needs nothing"
    );
}

#[test]
fn jobs_that_together_go_in_a_circle_make_no_needs_of_it() {
    let mut text = String::new();
    for (name, off) in [("1", ["a", "b"]), ("2", ["b", "c"]), ("3", ["c", "a"])] {
        text = map::merge(&text, &job(name, "ana", &off)).unwrap();
    }
    let map = read("a.toml", &text).unwrap().map;
    assert_eq!(map.undecided().len(), 3);
    assert!(map.items.keys().all(|item| map.firsts(item).is_empty()));
}

#[test]
fn what_is_renewed_may_not_go_back_and_takes_no_time_of_its_own() {
    let text = |seal: &str| {
        format!(
            "vehicle = \"x\"\nplace-change = 1\ntool-change = 1\n[items.plug]\nis = \"fasteners\"\nrenews = [\"washer\"]\n[items.washer]\nis = \"seal\"\n{seal}"
        )
    };
    let told = |seal: &str| match read("plug.toml", &text(seal)) {
        Ok(read) => read.warnings,
        Err(troubles) => troubles,
    };
    assert_eq!(told("spent = true"), []);
    let may_go_back = told("");
    assert!(
        may_go_back[0].to_string().contains("may go back"),
        "{may_go_back:?}"
    );
    let takes_time = told("spent = true\nminutes = { out = 1 }");
    assert!(
        takes_time[0]
            .to_string()
            .contains("add them to those of `plug`"),
        "{takes_time:?}"
    );
    let unknown = read(
        "plug.toml",
        "vehicle = \"x\"\n[items.plug]\nis = \"fasteners\"\nrenews = [\"ring\"]",
    );
    assert!(
        unknown.unwrap_err()[0]
            .to_string()
            .contains("no item is called `ring`")
    );
}

/// The pieces of a document that are written as code: by four blanks.
fn written_as_code(document: &str) -> Vec<String> {
    let mut pieces: Vec<String> = Vec::new();
    let mut going_on = false;
    for line in document.lines() {
        match line.strip_prefix("    ") {
            Some(code) if going_on => {
                let piece = pieces.last_mut().unwrap();
                piece.push_str(code);
                piece.push('\n');
            }
            Some(code) => pieces.push(format!("{code}\n")),
            None if line.is_empty() && going_on => pieces.last_mut().unwrap().push('\n'),
            None => {}
        }
        going_on = line.starts_with("    ") || (line.is_empty() && going_on);
    }
    pieces
}

#[test]
fn every_example_of_the_document_is_a_good_map() {
    let path = format!("{}/../../docs/maps.md", env!("CARGO_MANIFEST_DIR"));
    let document = std::fs::read_to_string(path).unwrap();
    let mut maps = 0;
    for piece in written_as_code(&document)
        .iter()
        .filter(|piece| piece.contains(" = "))
    {
        let read = read("docs/maps.md", piece)
            .unwrap_or_else(|troubles| panic!("{}{piece}", told(&troubles)));
        assert!(read.warnings.is_empty(), "{}{piece}", told(&read.warnings));
        maps += 1;
    }
    assert!(maps >= 3, "only {maps} examples");
    // Each key that an item or the head can have is told of.
    let wrong = read("keys", "vehicle = \"A\"\nnokeyatall = 1\n[items.a]\nis = \"part\"\nnokeyatall = 1\nminutes = { nokeyatall = 1 }\n").unwrap_err();
    for trouble in wrong {
        let keys = trouble.mend.strip_prefix("the keys here are ").unwrap();
        for key in keys.split(", ") {
            assert!(
                document.contains(key),
                "docs/maps.md does not tell of `{key}`"
            );
        }
    }
}

#[test]
fn a_torque_that_was_told_on_the_job_is_learned_with_who_says_it() {
    let mut taught = job("1002", "ana", &["bracket bolts", "bracket"]);
    taught.off[0].kind = states::Kind::Fasteners;
    taught.off[0].count = 2;
    taught.off[0].torque = Some(map::JobTorque {
        passes: vec!["30 Nm".to_owned(), "90 deg".to_owned()],
        title: "Workshop manual, 2021-09-15".to_owned(),
        date: "2021-09-15".to_owned(),
    });
    let text = map::merge("", &taught).unwrap();
    let map = read("a.toml", &text)
        .unwrap_or_else(|t| panic!("{}\n{text}", told(&t)))
        .map;
    let item = &map.items[&ItemId::new("bracket bolts")];
    let torque: Vec<_> = item.torque.iter().map(measure::Measured::written).collect();
    assert_eq!(torque, ["30 Nm", "90 deg"]);
    let source = &map.sources[item.torque_from.as_deref().unwrap()];
    assert_eq!(
        (&*source.title, &*source.date),
        ("Workshop manual, 2021-09-15", "2021-09-15")
    );
    // What a map says already is not written over, and a source is written once.
    taught.off[0].torque.as_mut().unwrap().passes = vec!["99 Nm".to_owned()];
    taught.name = "1003".to_owned();
    let again = map::merge(&text, &taught).unwrap();
    assert!(!again.contains("99 Nm"), "{again}");
    assert_eq!(again.matches("[sources").count(), 1, "{again}");
}

#[test]
fn the_other_side_is_made_of_the_one_that_was_written() {
    let text = "vehicle = \"Small Van\"\nplace-change = 1\ntool-change = 0.2\n\n\
        [items.\"left wheel nuts\"]\nis = \"fasteners\"\ncount = 4\n\n\
        [items.\"left wheel\"]\nis = \"part\"\nneeds = \"left wheel nuts out\"\n\n\
        [items.undertray]\nis = \"cover\"\n\n\
        [items.\"left caliper\"]\nis = \"part\"\nneeds = [\"left wheel off\", \"undertray off\"]\n";
    assert_eq!(map::one_sided(text).len(), 3);
    let (made, read) =
        edit("a.toml", text, &Edit::Mirror).unwrap_or_else(|t| panic!("{}", told(&t)));
    let caliper = &read.map.items[&ItemId::new("right caliper")];
    let left = &read.map.items[&ItemId::new("left caliper")];
    assert_eq!(
        map::needs_written(&made, "right caliper", "needs"),
        ["right wheel off", "undertray off"]
    );
    assert_eq!(caliper.kind, left.kind);
    assert_eq!(read.map.items.len(), 7);
    // Made once: nothing is left to make.
    assert!(map::one_sided(&made).is_empty());
    let (again, _) = edit("a.toml", &made, &Edit::Mirror).unwrap();
    assert_eq!(again, made);
}

#[test]
fn what_jobs_taught_is_needed_and_its_guesses_are_named() {
    let text = "vehicle = \"Van\"\n[items.tray]\nis = \"cover\"\n[items.lamp]\nis = \"part\"\nneeds = \"as seen\"\nseen-needs = [\"tray off\"]\nguessed = [\"tray\"]\n";
    let map = read("van.toml", text).unwrap().map;
    let lamp = &map.items[&ItemId::new("lamp")];
    assert_eq!(map::said(&map, &lamp.moves[0].need), "tray off");
    assert_eq!(lamp.guessed, [ItemId::new("tray")].into());
    // A guess about nothing that is needed, and taught needs beside stated ones, are errors.
    for (wrong, what) in [
        (
            text.replace("guessed = [\"tray\"]", "guessed = [\"lamp\"]"),
            "`lamp` is not said to need `lamp`",
        ),
        (
            text.replace("needs = \"as seen\"\n", ""),
            "`seen-needs` of `lamp` counts only where it needs what was seen",
        ),
    ] {
        let troubles = read("van.toml", &wrong).unwrap_err();
        assert!(
            troubles.iter().any(|trouble| trouble.what == what),
            "{}",
            told(&troubles)
        );
    }
}

#[test]
fn a_way_back_that_jobs_taught_is_kept_to_unless_a_person_states_another() {
    let item = |name: &str, needs: &[&str], back: Option<map::TaughtBack>| map::TaughtItem {
        is: map::JobItem::new(name, states::Kind::Cover),
        needs: needs
            .iter()
            .map(|need| ((*need).to_owned(), State::Off))
            .collect(),
        guessed: [].into(),
        back,
        tools: [].into(),
        owes: [].into(),
    };
    let at_the_bench = map::TaughtBack {
        home: ["hose".to_owned()].into(),
        guessed: ["hose".to_owned()].into(),
        ..map::TaughtBack::default()
    };
    let taught = |back| map::Taught {
        vehicle: "Van".to_owned(),
        items: vec![item("hose", &[], None), item("pump", &["hose"], back)],
    };
    let back = |text: &str| {
        let map = read("van.toml", text)
            .unwrap_or_else(|t| panic!("{}\n{text}", told(&t)))
            .map;
        let pump = map.items[&ItemId::new("pump")].clone();
        let need = pump.moves[0].need_back.as_ref();
        (need.map(|need| map::said(&map, need)), pump.guessed_back)
    };
    let text = map::teach("", &taught(Some(at_the_bench.clone()))).unwrap();
    let hose = ItemId::new("hose");
    assert_eq!(back(&text), (Some("hose on".to_owned()), [hose].into()));
    // What is no longer taught is taken out again.
    let turned = map::teach(&text, &taught(None)).unwrap();
    assert_eq!(back(&turned), (None, [].into()), "{turned}");
    // What a person states is not taught otherwise.
    let stated = text.replace(
        "seen-needs-back = [\"hose on\"]",
        "needs-back = [\"hose off\"]",
    );
    let stated = stated.replace("guessed-back = [\"hose\"]\n", "");
    let again = map::teach(&stated, &taught(Some(at_the_bench))).unwrap();
    assert_eq!(
        back(&again),
        (Some("hose off".to_owned()), [].into()),
        "{again}"
    );
    // Another name is another name on the way back as well.
    let rename = Edit::Rename {
        item: "hose".to_owned(),
        to: "lower hose".to_owned(),
    };
    let renamed = map::apply(&text, &rename).unwrap();
    assert_eq!(
        back(&renamed),
        (
            Some("lower hose on".to_owned()),
            [ItemId::new("lower hose")].into()
        )
    );
}

#[test]
fn what_a_person_stated_is_not_taught_otherwise_and_what_is_lacking_is_filled_in() {
    let stated = "vehicle = \"Van\"\n[items.tray]\nis = \"cover\"\n[items.lamp]\nis = \"part\"\nneeds = [\"tray off\"]\nminutes = { out = 9 }\n";
    let item = |name: &str, needs: &[&str]| map::TaughtItem {
        is: map::JobItem {
            size: Some("M6".to_owned()),
            out_tenths: Some(40),
            ..map::JobItem::new(name, states::Kind::Part)
        },
        needs: needs
            .iter()
            .map(|need| ((*need).to_owned(), State::Off))
            .collect(),
        guessed: [].into(),
        back: None,
        tools: ["T20".to_owned()].into(),
        owes: ["set the beam".to_owned()].into(),
    };
    let taught = map::Taught {
        vehicle: "Another".to_owned(),
        items: vec![item("lamp", &[]), item("horn", &["lamp"])],
    };
    let text = map::teach(stated, &taught).unwrap();
    let map = read("van.toml", &text)
        .unwrap_or_else(|t| panic!("{}\n{text}", told(&t)))
        .map;
    let lamp = &map.items[&ItemId::new("lamp")];
    assert_eq!(map.vehicle, "Van");
    assert_eq!(map::said(&map, &lamp.moves[0].need), "tray off");
    assert_eq!(
        lamp.moves[0].minutes.out_tenths, 90,
        "what is written stays"
    );
    assert_eq!(
        lamp.size.as_deref(),
        Some("M6"),
        "what was lacking is filled in"
    );
    assert_eq!(lamp.moves[0].owes, [ItemId::new("set the beam")]);
    let horn = &map.items[&ItemId::new("horn")];
    assert_eq!(map::said(&map, &horn.moves[0].need), "lamp off");
    assert_eq!(horn.moves[0].minutes.out_tenths, 40);
    assert_eq!(
        map::teach(&text, &taught).unwrap(),
        text,
        "taught again, it says the same"
    );
}
