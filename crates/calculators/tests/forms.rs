//! The one form: what every calculator has to keep to.

#![allow(clippy::unwrap_used, reason = "a test fails by panicking")]

use calculators::{Answer, Calculator, Field, ROOMS, Shop, Takes, Trouble, calculator, fields};
use measure::Customary;
use proptest::prelude::*;
use std::collections::{BTreeMap, BTreeSet};

fn all() -> impl Iterator<Item = (&'static str, &'static Calculator)> {
    ROOMS
        .iter()
        .flat_map(|room| room.calculators.iter().map(|one| (room.code, one)))
}

/// A query as an address has it, `+` for a blank.
fn query(text: &str) -> BTreeMap<String, String> {
    text.split('&')
        .filter_map(|pair| pair.split_once('='))
        .map(|(name, value)| {
            (
                name.to_owned(),
                value.replace('+', " ").replace("%0A", "\n"),
            )
        })
        .collect()
}

fn ask(room: &str, code: &str, text: &str) -> Result<Answer, Vec<Trouble>> {
    let one = calculator(room, code).unwrap();
    one.answer(query(text), &Shop::default())
}

fn names(one: &Calculator) -> BTreeSet<String> {
    fields(one.form).into_iter().map(|one| one.name).collect()
}

#[test]
fn names_are_said_once_and_are_fit_for_an_address() {
    let plain = |text: &str| {
        !text.is_empty()
            && text
                .chars()
                .all(|c| c.is_ascii_lowercase() || c.is_ascii_digit() || c == '-')
    };
    let mut addresses = BTreeSet::new();
    for (room, one) in all() {
        assert!(
            plain(one.code) && addresses.insert((room, one.code)),
            "{}",
            one.code
        );
        let mut names = BTreeSet::new();
        for field in fields(one.form) {
            assert!(plain(&field.name), "{}", field.name);
            assert!(
                names.insert(field.name.clone()),
                "{}: {}",
                one.code,
                field.name
            );
            assert!(!field.label().is_empty());
            if let Takes::Choice { of, .. } = field.takes {
                let codes: BTreeSet<&str> = of.iter().map(|(code, _)| *code).collect();
                assert_eq!(codes.len(), of.len(), "{}: {}", one.code, field.name);
            }
            if let Takes::Number {
                limits: Some((least, most)),
                ..
            } = field.takes
            {
                assert!(least < most, "{}: {}", one.code, field.name);
            }
        }
        for (name, _) in one.at_first {
            assert!(names.contains(*name), "{}: {name}", one.code);
        }
    }
    assert!(addresses.len() >= 30);
}

/// An arm on the back of the belt, as drawn at 90 degrees.
const DRIVE: &str = "turns=cw&name-1=crank&x-1=0&y-1=0&across-1=160\
    &name-2=tensioner&x-2=-120&y-2=116&across-2=72&side-2=back\
    &name-3=alternator&x-3=-126&y-3=262&across-3=62&name-4=pump&x-4=172&y-4=196&across-4=132\
    &profile=given&tensioner=arm&tensioned=tensioner&pivot-x=-120&pivot-y=46&least=72&most=110";

/// Addresses that people have kept, each with what it has always answered.
#[test]
fn kept_addresses_answer_as_they_did() {
    let kept = [
        (
            "threads",
            "thread",
            "thread=M8x1.25&class=8.8&in=aluminium&depth=12",
            "M8x1.25",
        ),
        (
            "threads",
            "torque",
            "thread=M10x1.5&clamp=25275&friction=0.15",
            "50.1",
        ),
        (
            "threads",
            "torque",
            "thread=M8&class=8.8&torque=500&friction=0.15",
            "the bolt breaks",
        ),
        (
            "threads",
            "wrench",
            "want=70+in-lb&wrench=12+in&adapter=2+in&angle=0",
            "6.78",
        ),
        (
            "threads",
            "pulley",
            "bolt-torque=25&bolt-circle=50&wrench=250&pulley=140&tension=400&wrap=160&side=ribs",
            "It holds",
        ),
        ("threads", "pattern", "layout=circle&bolts=8", "8 bolts"),
        (
            "threads",
            "repair",
            "thread=M8x75&joint=other&class=8.8&engaged=18&hole=blind&depth=26&boss=19&in=aluminium&torque=22",
            "22",
        ),
        (
            "threads",
            "stub",
            "stands=below&thread=M8&class=8.8&by=2&engaged=18&hole=blind&depth=26&in=aluminium",
            "Left-hand drills",
        ),
        (
            "coolant",
            "protection",
            "strength=50&of=concentrate&cap=1.1&altitude=650&hottest=108",
            "\u{2212}3",
        ),
        (
            "coolant",
            "strength",
            "instrument=refractometer&reading=-24&glycol=ethylene",
            "\u{2212}24",
        ),
        (
            "coolant",
            "mix",
            "capacity=9.2&left=3.7&now=35&want=50&has-concentrate=yes&has-water=yes",
            "one fill",
        ),
        (
            "coolant",
            "balance",
            "drained=5.5&poured=4&capacity=9.2&bottle-area=150",
            "short",
        ),
        (
            "coolant",
            "leak",
            "readings=0+1.10+22%0A5+1.09+22%0A10+1.09+21.5%0A15+1.085+21.5&limit=0.05&limit-time=15",
            "can't tell yet",
        ),
        ("belt", "drive", DRIVE, "1"),
        ("belt", "code", "code=6PK1285", "1285 mm"),
        (
            "belt",
            "align",
            "near=0&far=1&apart=120&limit=0.33",
            "0.48°",
        ),
        ("belt", "wear", "pin=yes", "worn"),
        ("fluids", "brake", "class=DOT+4&boils=140", "renew it"),
        ("fluids", "brake", "boils=140", "can't tell"),
        (
            "fluids",
            "axle",
            "level=at-mark&at=30&window-low=20&window-high=40&out=2.1+L&in=2.0+L",
            "right",
        ),
        (
            "fluids",
            "manual-gearbox",
            "out=2.1+L&in=2.0+L",
            "as much in as out",
        ),
        (
            "fluids",
            "urea",
            "holds=18&left=9&now=28",
            "outside the standard",
        ),
        ("fluids", "washer", "holds=4&left=1&now=20&want=50", "1.8"),
        (
            "fluids",
            "refrigerant",
            "label-weight=550&weight-out=410&weight-in=550",
            "as the label says",
        ),
        (
            "fluids",
            "engine-oil",
            "inside=10W-40&new=5W-30&asked-for=5W-30",
            "may go in: say so",
        ),
        (
            "fluids",
            "battery",
            "negative-off=yes&positive-off=yes&positive-on=yes&negative-on=yes&memory-restored=yes&registered=yes",
            "closed",
        ),
        (
            "roadtest",
            "by-hand",
            "at-1=0&coolant-1=20&at-2=10&coolant-2=90&voltage-2=14.2&limit=110",
            "can't tell",
        ),
    ];
    for (room, code, text, fact) in kept {
        let answer = ask(room, code, text).unwrap_or_else(|told| panic!("{code}: {told:?}"));
        assert!(answer.fact.starts_with(fact), "{code}: {}", answer.fact);
        let words = answer.text();
        assert!(words.contains(&answer.fact) && !words.contains('\u{ad}'));
        assert!(
            answer.working.is_some() || answer.fact == "the bolt breaks",
            "{code}"
        );
        let json = answer.json();
        assert_eq!(json["fact"], answer.fact);
        let drawn = json["drawings"].as_array().unwrap().iter();
        assert!(
            drawn
                .into_iter()
                .all(|svg| svg.as_str().unwrap().starts_with("<svg "))
        );
    }
}

#[test]
fn a_belt_is_drawn_and_one_that_does_not_fit_stops_the_start() {
    let found = ask("belt", "drive", DRIVE).unwrap();
    assert_eq!(found.outputs["arm_deg"], 90.0);
    let alternator = &found.outputs["pulleys"][2];
    let ratio = alternator["rpm_ratio"].as_f64().unwrap();
    assert!((ratio - 160.0 / 62.0).abs() < 1e-9, "{ratio}");
    assert_eq!(found.drawings.len(), 1);
    assert_eq!(found.tone, "");
    // The window's own lengths fit, the code of a longer belt does not.
    let least = found.outputs["window_mm"][0].as_f64().unwrap();
    let fits = ask("belt", "drive", &format!("{DRIVE}&belt={}", least + 1.0)).unwrap();
    assert!((fits.outputs["length_mm"].as_f64().unwrap() - least - 1.0).abs() < 1e-6);
    let long = ask("belt", "drive", &format!("{DRIVE}&belt=6PK1500")).unwrap();
    assert_eq!(
        (long.fact.as_str(), long.tone),
        ("do not start the engine", "no")
    );
    assert!(
        long.rows[0].what.starts_with("Arm at its stop"),
        "{:?}",
        long.rows[0]
    );
    // A page sends the chips of a row that nobody has filled.
    let sent = ask("belt", "drive", &format!("{DRIVE}&side-5=ribs&x-5=")).unwrap();
    assert_eq!(sent.outputs, found.outputs);
    // The same drive as text.
    let toml = "[[pulley]]\nname = \"crank\"\nx_mm = 0\ny_mm = 0\ndiameter_mm = 100\ndrives = true\n\
        turns = \"cw\"\n[[pulley]]\nname = \"pump\"\nx_mm = 300\ny_mm = 0\ndiameter_mm = 100\n";
    let fields = BTreeMap::from([("layout".to_owned(), toml.to_owned())]);
    let drive = calculator("belt", "drive").unwrap();
    let open = drive.answer(fields, &Shop::default()).unwrap();
    assert!((open.outputs["length_mm"].as_f64().unwrap() - 914.159).abs() < 1e-3);
    // What is missing stands in its row.
    let told = ask(
        "belt",
        "drive",
        "name-1=crank&x-1=0&y-1=0&across-1=160&name-2=pump&y-2=9",
    );
    let places: Vec<String> = told.unwrap_err().into_iter().map(|one| one.place).collect();
    assert_eq!(places, ["across-2", "x-2"]);
}

#[test]
fn a_fluid_keeps_its_sequence_and_says_what_waits() {
    let open = ask("fluids", "brake", "").unwrap();
    let waits = open.outputs["waits"].as_array().unwrap();
    assert!(waits.iter().any(|gate| gate == "road"), "{waits:?}");
    assert!(open.steps.iter().any(|step| step.caution.is_some()));
    let reading = ask("fluids", "brake", "class=DOT+4&boils=140").unwrap();
    assert_eq!(reading.outputs["reading"]["verdict"], "renew");
    assert!(reading.notes[0].contains("owed"), "{:?}", reading.notes);
    // Where that is no sum, there is no field to ask it.
    assert!(ask("fluids", "engine-oil", "holds=5").is_err());
    let one_end = ask("fluids", "axle", "level=low&at=30&window-low=20").unwrap_err();
    assert_eq!(one_end[0].place, "window-high");
}

#[test]
fn a_recorded_drive_is_judged_check_by_check() {
    let log = include_bytes!("../../../checks/data/drives/drive12.csv");
    let log = String::from_utf8_lossy(log).into_owned();
    let recording = calculator("roadtest", "recording").unwrap();
    assert!(recording.takes_file());
    let ask = |complaint: &str| {
        let mut fields = BTreeMap::from([("log".to_owned(), log.clone())]);
        fields.insert("complaint".to_owned(), complaint.to_owned());
        recording.answer(fields, &Shop::default()).unwrap()
    };
    let held = ask("");
    assert_eq!((held.fact.as_str(), held.rows.len()), ("held", 10));
    assert!(held.rows.iter().all(|row| !row.beside.is_empty()));
    assert_eq!(
        ask("comes on after 20 min of motorway").fact,
        "not provoked"
    );
    let empty = BTreeMap::from([("log".to_owned(), "a,b\n1,2\n".to_owned())]);
    let told = recording.answer(empty, &Shop::default()).unwrap_err();
    assert_eq!(told[0].place, "log");
}

#[test]
fn what_an_order_keeps_holds_no_words_of_a_customer() {
    let recording = calculator("roadtest", "recording").unwrap();
    let log = String::from_utf8_lossy(include_bytes!("../../../checks/data/drives/drive12.csv"));
    let fields = BTreeMap::from([
        ("log".to_owned(), log.into_owned()),
        (
            "complaint".to_owned(),
            "Mrs Quibble says it comes on after 20 min of motorway".to_owned(),
        ),
        ("limit".to_owned(), "110".to_owned()),
    ]);
    let mut asked = recording.asked(fields, &Shop::default());
    let answer = (recording.run)(&mut asked).unwrap();
    let kept = recording.kept("roadtest", &asked, &answer);
    assert_eq!(kept.calculator, "roadtest recording");
    assert_eq!(kept.inputs, r#"{"limit":"110 °C"}"#);
    for text in [&kept.inputs, &kept.outputs, &kept.working] {
        assert!(!text.contains("Quibble") && text.len() < 20_000, "{text}");
    }
    let outputs: serde_json::Value = serde_json::from_str(&kept.outputs).unwrap();
    assert_eq!(outputs["figures"]["verdict"], "not-provoked");
}

#[test]
fn a_way_asked_for_by_its_link_is_answered() {
    let hole = "thread=M8x75&joint=other&class=8.8&engaged=18&hole=blind&depth=26&boss=19&in=aluminium&torque=22";
    let best = ask("threads", "repair", hole).unwrap();
    assert_eq!(best.said, "Wire insert, bolt M8x75 · holds");
    let other = best
        .others
        .iter()
        .find(|other| other.name.contains("Oversize"))
        .unwrap();
    assert!(
        other.reason.contains("must grow to 11 mm"),
        "{}",
        other.reason
    );
    let (field, value) = &other.ask;
    let larger = ask("threads", "repair", &format!("{hole}&{field}={value}")).unwrap();
    assert_eq!(larger.said, "Oversize thread, bolt M10x75 · holds");
    assert!(!larger.drawings.is_empty() && !larger.steps.is_empty());
}

#[test]
fn an_inch_shop_means_inches_and_its_height_is_known() {
    let shop = Shop {
        customary: Customary::Us,
        altitude: Some("2000 m".to_owned()),
        ..Shop::default()
    };
    let wrench = calculator("threads", "wrench").unwrap();
    let asked = query("want=60&wrench=16&adapter=2&angle=0");
    let answer = wrench.answer(asked, &shop).unwrap();
    assert!(
        answer.fact.starts_with("53.3\u{202f}lb·ft"),
        "{}",
        answer.fact
    );
    let protection = calculator("coolant", "protection").unwrap();
    let boils = |shop: &Shop| {
        let asked = query("strength=50+%&cap=1.1+bar");
        protection.answer(asked, shop).unwrap().outputs["boil_c"]
            .as_f64()
            .unwrap()
    };
    assert!(boils(&shop) < boils(&Shop::default()) - 2.0);
}

#[test]
fn what_is_wrong_stands_beside_a_field_of_the_form() {
    let wrong = |room: &str, code: &str, text: &str| {
        let told = ask(room, code, text).unwrap_err();
        let first = told.first().unwrap().clone();
        (first.place, first.what, first.mend)
    };
    let (place, what, mend) = wrong("threads", "torque", "thread=M8&clamp=10000");
    assert_eq!(place, "friction");
    assert!(
        what.contains("none is assumed") || mend.contains("none is assumed"),
        "{what}; {mend}"
    );
    assert_eq!(wrong("threads", "pulley", "wrap=400").0, "bolt-circle");
    let all = ask("threads", "pulley", "wrap=400").unwrap_err();
    assert!(
        all.iter()
            .any(|told| told.place == "wrap" && told.what.contains("0 to 360"))
    );
    // Nothing written at all.
    for (_, one) in all_with_something_to_write() {
        let told = one.answer(BTreeMap::new(), &Shop::default()).unwrap_err();
        assert!(!told.is_empty(), "{}", one.code);
        let known = names(one);
        for trouble in told {
            assert!(known.contains(&trouble.place), "{}: {trouble}", one.code);
            assert!(
                !trouble.what.is_empty() && !trouble.mend.is_empty(),
                "{}",
                one.code
            );
        }
    }
}

/// Those that have nothing to say of a form left blank.
fn all_with_something_to_write() -> impl Iterator<Item = (&'static str, &'static Calculator)> {
    all().filter(|(room, one)| *room != "fluids" && !SAYS_SOMETHING_AT_ONCE.contains(&one.code))
}

/// A balance of nothing is an answer, so is "can't tell", so are steps of which none is done.
const SAYS_SOMETHING_AT_ONCE: &[&str] = &["balance", "wear"];

fn written(field: &Field) -> BoxedStrategy<String> {
    let any = "\\PC{0,24}".boxed();
    let number = "-?[0-9]{1,6}([.,][0-9]{1,3})?( ?(mm|in|Nm|L|%|°C|bar|N|kW|psi|deg))?".boxed();
    match field.takes {
        Takes::Choice { of, .. } => {
            let codes: Vec<String> = of.iter().map(|(code, _)| (*code).to_owned()).collect();
            prop_oneof![4 => proptest::sample::select(codes), 1 => any].boxed()
        }
        Takes::Tick => prop_oneof![Just("yes".to_owned()), Just(String::new())].boxed(),
        Takes::Lines | Takes::File => {
            let line = "[0-9.,; \\-a-zA-Z%°]{0,30}";
            let lines = proptest::collection::vec(line, 0..6).prop_map(|all| all.join("\n"));
            prop_oneof![lines, any].boxed()
        }
        Takes::Number { .. } => prop_oneof![4 => number, 1 => any].boxed(),
        Takes::Text | Takes::Said | Takes::Link => {
            let thread = Just("M8x1.25".to_owned());
            prop_oneof![2 => number, 1 => any, 1 => thread].boxed()
        }
    }
}

/// Which calculator, and what is written into its fields.
fn anything() -> impl Strategy<Value = (usize, BTreeMap<String, String>)> {
    let count = all().count();
    (0..count).prop_flat_map(|nth| {
        let (_, one) = all().nth(nth).expect("it was counted");
        let each: Vec<_> = fields(one.form)
            .into_iter()
            .map(|field| {
                let name = field.name.clone();
                // Of many rows most stay empty.
                let share = if field.rows.is_some() { 0.1 } else { 0.5 };
                proptest::option::weighted(share, written(&field))
                    .prop_map(move |text| (name.clone(), text))
            })
            .collect();
        each.prop_map(move |all| {
            let fields = all
                .into_iter()
                .filter_map(|(name, text)| Some((name, text?)));
            (nth, fields.collect())
        })
    })
}

proptest! {
    #![proptest_config(ProptestConfig { cases: 600, ..ProptestConfig::default() })]

    /// Whatever is written: an answer that can be shown, or troubles at fields of the form.
    #[test]
    fn whatever_is_written_is_answered_or_mended((nth, written) in anything(), us in any::<bool>()) {
        let (_, one) = all().nth(nth).expect("it was counted");
        let shop = Shop {
            customary: if us { Customary::Us } else { Customary::Metric },
            ..Shop::default()
        };
        match one.answer(written, &shop) {
            Ok(answer) => {
                prop_assert!(!answer.fact.is_empty());
                prop_assert!(!answer.json().to_string().contains("NaN"));
                prop_assert!(!answer.text().contains("NaN"));
            }
            Err(told) => {
                prop_assert!(!told.is_empty());
                let known = names(one);
                for trouble in told {
                    prop_assert!(known.contains(&trouble.place), "{}: {trouble}", one.code);
                }
            }
        }
    }
}

#[test]
fn a_belt_tapped_either_way_round_is_one_belt() {
    let there =
        "name-1=crank&x-1=0&y-1=0&name-2=alternator&x-2=-200&y-2=260&name-3=pump&x-3=200&y-3=260";
    let back =
        "name-1=crank&x-1=0&y-1=0&name-2=pump&x-2=200&y-2=260&name-3=alternator&x-3=-200&y-3=260";
    let (one, other) = (
        ask("belt", "routing", there).unwrap(),
        ask("belt", "routing", back).unwrap(),
    );
    assert_eq!(one.said, "crank, alternator, pump");
    assert_eq!(one, other);
    assert!(
        one.tone.is_empty() && one.rows.iter().all(|row| row.value == "clockwise"),
        "{one:?}"
    );
    let turned = ask("belt", "routing", &format!("{there}&turns=ccw")).unwrap();
    assert_eq!(turned.said, "crank, pump, alternator");
    let drawn = calculators::belt::as_found(&one.outputs).unwrap();
    assert_eq!(Some(&drawn), one.drawings.first());
}
