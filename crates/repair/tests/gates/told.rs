//! What is told of an item after it was declared: the newer telling holds, by what its
//! author had seen; of two who told apart both are kept, and the stricter counts.

use crate::support::*;
use repair::*;

fn located(id: &str, system: System, after: &[&CommandId]) -> Fact {
    Fact::Located {
        item: ItemId::new(id),
        system,
        zone: Zone::Below,
        after: after.iter().map(|seen| (*seen).clone()).collect(),
    }
}

fn sized(id: &str, size: &str, after: &[&CommandId]) -> Fact {
    Fact::SizeTold {
        item: ItemId::new(id),
        size: Token::new(size).unwrap(),
        after: after.iter().map(|seen| (*seen).clone()).collect(),
    }
}

fn torque(id: &str, torque: &str, after: &[&CommandId]) -> Fact {
    Fact::TorqueTold {
        item: ItemId::new(id),
        pattern: Pattern {
            passes: vec![written(torque)],
            sequence: vec![],
            source: Some(words(3)),
        },
        after: after.iter().map(|seen| (*seen).clone()).collect(),
    }
}

fn same(job: &mut Job, item: &str, also: &str) {
    job.record(Fact::SameAs {
        item: ItemId::new(item),
        also: ItemId::new(also),
    });
}

#[test]
fn after_same_as_the_newer_telling_holds_whichever_name_it_used() {
    // The older telling is of the lesser name in one case, of the greater in the other.
    for (older, newer) in [("a", "b"), ("b", "a")] {
        let mut job = Job::new();
        for id in ["a", "b"] {
            job.group(id, 2, Kind::Fasteners, System::Unknown, Zone::Unknown);
        }
        same(&mut job, "a", "b");
        let size = job.record(sized(older, "M8", &[]));
        job.record(sized(newer, "M10", &[&size]));
        let place = job.record(located(older, System::Body, &[]));
        job.record(located(newer, System::Brakes, &[&place]));
        let pass = job.record(torque(older, "25 Nm", &[]));
        job.record(torque(newer, "45 Nm", &[&pass]));
        let account = job.account();
        let known = &account.items[&ItemId::new("a")];
        let name = format!("{older} then {newer}");
        assert_eq!(known.size, Some(Token::new("M10").unwrap()), "{name}");
        assert_eq!(known.system, System::Brakes, "{name}");
        let passes = &known.pattern.as_ref().unwrap().passes;
        assert_eq!(passes, &[written("45 Nm")], "{name}");
        assert!(account.told_apart.is_empty(), "{name}");
    }
}

#[test]
fn two_who_tell_the_system_apart_are_both_asked_at_the_gates() {
    let mut job = Job::new();
    job.one("pipe", Kind::Part, System::Unknown, Zone::Unknown);
    job.moved("pipe", &[], State::Off);
    let by_ana = job.by("ana").record(located("pipe", System::Fuel, &[]));
    let by_rui = job.by("rui").record(located("pipe", System::Brakes, &[]));
    // Brakes shut roll, an open fuel line the start: told apart, both stand.
    for gate in [Gate::Start, Gate::Roll, Gate::Road] {
        let shut = job.shut(gate);
        assert!(
            shut.contains(&"open:pipe:1=Off".to_owned()),
            "{gate:?}: {shut:?}"
        );
    }
    let account = job.account();
    let apart = &account.told_apart[&ItemId::new("pipe")];
    let systems: Vec<_> = apart.readings.iter().map(|item| item.system).collect();
    assert_eq!(systems, [System::Brakes, System::Fuel]);
    // Somebody who saw both settles it.
    job.record(located("pipe", System::Body, &[&by_ana, &by_rui]));
    assert!(job.shut(Gate::Start).is_empty() && job.shut(Gate::Roll).is_empty());
    assert!(job.account().told_apart.is_empty());
}

#[test]
fn of_body_and_brakes_the_item_counts_as_of_the_safety_class() {
    let mut job = Job::new();
    job.group("bolts", 2, Kind::Fasteners, System::Unknown, Zone::Unknown);
    job.record(located("bolts", System::Body, &[]));
    job.record(located("bolts", System::Brakes, &[]));
    assert!(job.account().items[&ItemId::new("bolts")].is_safety());
}

#[test]
fn a_torque_told_apart_is_asked_before_the_road() {
    let mut job = Job::new();
    job.group("nuts", 4, Kind::Fasteners, System::Engine, Zone::Below);
    let ana = job.by("ana").record(torque("nuts", "25 Nm", &[]));
    let rui = job.by("rui").record(torque("nuts", "45 Nm", &[]));
    job.out_and_back("nuts", State::Out, State::Tight);
    job.by("ana").road_tested();
    assert_eq!(job.shut(Gate::Road), ["told-apart:nuts:torque"]);
    assert_eq!(job.shut(Gate::HandOver), ["told-apart:nuts:torque"]);
    let known = &job.account().items[&ItemId::new("nuts")];
    assert_eq!(
        known.pattern, None,
        "neither is picked by the names of commands"
    );
    job.record(torque("nuts", "45 Nm", &[&ana, &rui]));
    assert!(job.shut(Gate::HandOver).is_empty());
}

#[test]
fn two_who_tell_the_same_do_not_tell_apart() {
    let mut job = Job::new();
    job.group("nuts", 4, Kind::Fasteners, System::Engine, Zone::Below);
    job.by("ana").record(torque("nuts", "25 Nm", &[]));
    job.by("rui").record(torque("nuts", "25 Nm", &[]));
    job.out_and_back("nuts", State::Out, State::Tight);
    job.road_tested();
    assert!(job.shut(Gate::HandOver).is_empty());
}

#[test]
fn of_two_counts_every_position_counts() {
    let mut job = Job::new();
    job.group("screws", 3, Kind::Fasteners, System::Engine, Zone::Below);
    let pieces = |count: u16| -> Vec<Piece> {
        (1..=count)
            .map(|position| Piece {
                position,
                length: None,
            })
            .collect()
    };
    for count in [5, 4] {
        job.record(Fact::CountCorrected {
            item: ItemId::new("screws"),
            pieces: pieces(count),
            after: vec![],
        });
    }
    let account = job.account();
    let positions = account.positions(&ItemId::new("screws"));
    assert_eq!(positions.into_iter().collect::<Vec<_>>(), [1, 2, 3, 4, 5]);
    assert_eq!(account.told_apart[&ItemId::new("screws")].counts, [4, 5]);
}

/// Two phones spoke of one thing; who did not know what it was claims nothing.
#[test]
fn of_two_declarations_the_one_that_knows_holds() {
    for names in [["a", "b"], ["b", "a"]] {
        let mut job = Job::new();
        job.one(names[0], Kind::Hose, System::Unknown, Zone::Unknown);
        job.one(names[1], Kind::Hose, System::Brakes, Zone::WheelWell);
        same(&mut job, "a", "b");
        let account = job.account();
        assert_eq!(account.items[&ItemId::new("a")].system, System::Brakes);
        assert!(account.told_apart.is_empty());
    }
}

/// Whoever saw a telling that is taken back since has seen past what its author saw.
#[test]
fn a_telling_taken_back_still_passes_on_what_its_author_had_seen() {
    let mut job = Job::new();
    job.group("nuts", 4, Kind::Fasteners, System::Engine, Zone::Below);
    let first = job.record(sized("nuts", "M8", &[]));
    let slip = job.record(sized("nuts", "M10", &[&first]));
    job.record(sized("nuts", "M12", &[&slip]));
    job.record(Fact::Undo {
        command: slip,
        part: None,
    });
    let account = job.account();
    let known = &account.items[&ItemId::new("nuts")];
    assert_eq!(known.size, Some(Token::new("M12").unwrap()));
    assert!(account.told_apart.is_empty());
}
