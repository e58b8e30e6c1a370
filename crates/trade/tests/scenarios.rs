//! Whole vehicles: the open scenarios, exact, typed as a technician would type them.
//!
//! Source: checks/data/trade/scenarios-open.md (12 scenarios; grade: common-practice).

use std::collections::BTreeSet;
use trade::{Gates, Stands, Thing, Vocabulary, may};

struct Scenario {
    number: u8,
    off: &'static [&'static str],
    back: &'static [&'static str],
    done: &'static [&'static str],
}

/// The lines of each scenario as the file words them.
const SCENARIOS: [Scenario; 12] = [
    Scenario {
        number: 1,
        off: &["both front wheels", "their 10 nuts"],
        back: &["pads", "4 caliper bolts torqued"],
        done: &[],
    },
    Scenario {
        number: 2,
        off: &[],
        back: &["both front wheels", "pads", "caliper bolts torqued"],
        done: &["pedal pumped hard", "fluid level seen"],
    },
    Scenario {
        number: 3,
        off: &[],
        back: &[
            "brake hose front left",
            "banjo bolt with new washers",
            "wheel",
            "5 nuts torqued",
        ],
        done: &[],
    },
    Scenario {
        number: 4,
        off: &["fuel line", "filter"],
        back: &[],
        done: &["pressure let off"],
    },
    Scenario {
        number: 5,
        off: &[],
        back: &["fuel line", "filter with new seals"],
        done: &[],
    },
    Scenario {
        number: 6,
        off: &["timing belt", "tensioner", "upper cover", "drive belt"],
        back: &[],
        done: &[],
    },
    Scenario {
        number: 7,
        off: &["gearbox", "both driveshafts", "starter", "clutch slave"],
        back: &[],
        done: &["battery negative off"],
    },
    Scenario {
        number: 8,
        off: &[],
        back: &["bulb H7 left", "its cover"],
        done: &[],
    },
    Scenario {
        number: 9,
        off: &["seat", "4 seat bolts", "yellow plug", "battery negative"],
        back: &[],
        done: &[],
    },
    Scenario {
        number: 10,
        off: &["engine oil 4.5 l", "undertray"],
        back: &["sump plug torqued with new washer", "oil filter"],
        done: &[],
    },
    Scenario {
        number: 11,
        off: &[],
        back: &["upper hose", "clip", "coolant 6 l"],
        done: &["bled", "level seen warm", "no leak", "fan seen"],
    },
    Scenario {
        number: 12,
        off: &["HV service plug", "inverter lid 12 bolts"],
        back: &[],
        done: &["no voltage measured by the qualified person"],
    },
];

/// What the file says of a scenario: open gates, works owed.
fn wanted(number: u8) -> (BTreeSet<String>, BTreeSet<String>) {
    let text = include_str!("../../../checks/data/trade/scenarios-open.md");
    let from = text
        .find(&format!("## {number}. "))
        .expect("the scenario is in the file");
    let part = &text[from..];
    let line = |name: &str| {
        let from = part.find(name).expect("the line is in the scenario") + name.len();
        part[from..].lines().next().unwrap_or_default().trim()
    };
    let open = line("- Gates:")
        .split(',')
        .filter_map(|word| word.trim().split_once(' '))
        .filter(|(_, answer)| answer.starts_with("yes"))
        .map(|(gate, _)| gate.to_string())
        .collect();
    let owed = line("- Owed:")
        .split(';')
        .map(|word| word.trim().to_string())
        .collect();
    (open, owed)
}

#[test]
fn the_open_scenarios_are_answered_exactly() {
    let mut wrong = Vec::new();
    for scenario in &SCENARIOS {
        let thing = |stands: Stands| {
            move |line: &&str| Thing {
                line: (*line).to_string(),
                stands,
            }
        };
        let things: Vec<Thing> = scenario
            .off
            .iter()
            .map(thing(Stands::Off))
            .chain(scenario.back.iter().map(thing(Stands::Back)))
            .collect();
        let done: Vec<String> = scenario.done.iter().map(ToString::to_string).collect();
        let answer = may(&things, &done, Vocabulary::shipped());
        let (open, owed) = wanted(scenario.number);
        let got_open: BTreeSet<String> = Gates::ALL
            .codes()
            .into_iter()
            .filter(|code| !answer.shut.codes().contains(code))
            .map(str::to_string)
            .collect();
        let got_owed: BTreeSet<String> = answer.owed.iter().map(ToString::to_string).collect();
        if got_open != open || got_owed != owed {
            wrong.push(format!(
                "{}: open {got_open:?} wanted {open:?}; owed more {:?} less {:?}; why {:?}",
                scenario.number,
                got_owed.difference(&owed).collect::<Vec<_>>(),
                owed.difference(&got_owed).collect::<Vec<_>>(),
                answer.why
            ));
        }
    }
    assert!(wrong.is_empty(), "{}", wrong.join("\n"));
}

fn asked(off: &[&str], back: &[&str], done: &[&str]) -> (Vec<&'static str>, BTreeSet<String>) {
    let thing = |stands: Stands| {
        move |line: &&str| Thing {
            line: (*line).to_string(),
            stands,
        }
    };
    let things: Vec<Thing> = off
        .iter()
        .map(thing(Stands::Off))
        .chain(back.iter().map(thing(Stands::Back)))
        .collect();
    let done: Vec<String> = done.iter().map(ToString::to_string).collect();
    let answer = may(&things, &done, Vocabulary::shipped());
    (
        answer.shut.codes(),
        answer.owed.iter().map(ToString::to_string).collect(),
    )
}

/// Common practice: a small job shuts nothing superfluous once its things are back.
#[test]
fn small_jobs_raise_no_false_alarm() {
    assert_eq!(
        asked(&[], &["headlamp bulb H7 left"], &["lamp-works"]).0,
        Vec::<&str>::new()
    );
    assert_eq!(asked(&[], &["wiper blades 2"], &[]).0, ["hand"]);
    assert_eq!(
        asked(&[], &["wiper blades 2"], &["seen working"]).0,
        Vec::<&str>::new()
    );
    assert_eq!(asked(&["cabin filter"], &[], &[]).0, ["hand"]);
    assert_eq!(asked(&[], &["cabin filter"], &[]).0, Vec::<&str>::new());
    assert_eq!(asked(&[], &["battery"], &[]).0, ["hand"]);
    assert_eq!(
        asked(&["battery"], &[], &[]).0,
        ["live", "start", "road", "hand"]
    );
    let service = asked(
        &[],
        &[
            "engine oil 4.5 l",
            "sump plug torqued with new washer",
            "oil filter",
            "undertray",
        ],
        &[
            "level-oil",
            "oil-pressure-seen",
            "leak-look",
            "second-check",
        ],
    );
    assert_eq!(service.0, Vec::<&str>::new(), "{:?}", service.1);
}

#[test]
fn a_proof_counts_for_nothing_while_its_thing_is_off() {
    let (shut, owed) = asked(
        &["brake hose front left"],
        &[],
        &["bleed-brakes", "pedal-hard"],
    );
    assert_eq!(shut, ["roll", "road", "hand"]);
    assert!(owed.contains("bleed-brakes") && owed.contains("pedal-hard"));
}

#[test]
fn the_same_work_by_two_causes_is_owed_once_and_told_with_both() {
    let things = ["brake hose front left", "brake pads rear"].map(|line| Thing {
        line: line.to_string(),
        stands: Stands::Back,
    });
    let answer = may(&things, &[], Vocabulary::shipped());
    assert_eq!(
        answer
            .owed
            .iter()
            .filter(|work| &***work == "pedal-hard")
            .count(),
        1
    );
    assert_eq!(
        answer
            .why
            .iter()
            .filter(|why| why.work.as_deref() == Some("pedal-hard"))
            .count(),
        2
    );
}

#[test]
fn nuts_of_one_wheel_say_nothing_of_another() {
    let (shut, owed) = asked(
        &[],
        &[
            "front left wheel",
            "rear right wheel",
            "wheel nuts x5 front left torqued",
        ],
        &[],
    );
    assert!(shut.contains(&"lower") && owed.contains("wheel-nuts-on"));
    let (shut, _) = asked(
        &[],
        &[
            "front left wheel",
            "rear right wheel",
            "10 wheel nuts torqued",
        ],
        &[],
    );
    assert!(!shut.contains(&"lower"));
}

#[test]
fn what_is_not_understood_as_done_counts_for_nothing() {
    let hose = [Thing {
        line: "brake hose".to_string(),
        stands: Stands::Back,
    }];
    let answer = may(
        &hose,
        &["all good".to_string(), "not bled".to_string()],
        Vocabulary::shipped(),
    );
    assert_eq!(answer.not_understood, ["all good", "not bled"]);
    assert!(answer.owed.iter().any(|work| &**work == "bleed-brakes"));
}

#[test]
fn a_thing_left_in_shuts_its_gates_until_it_is_out() {
    let lamp = |stands| {
        may(
            &[Thing {
                line: "inspection lamp under bonnet".to_string(),
                stands,
            }],
            &[],
            Vocabulary::shipped(),
        )
        .shut
        .codes()
    };
    assert_eq!(lamp(Stands::In), ["start", "road", "hand"]);
    assert_eq!(lamp(Stands::Back), Vec::<&str>::new());
}
