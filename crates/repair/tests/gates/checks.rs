//! Rule 8: second checks and waivers.

use crate::hold;
use crate::support::*;
use crate::things::*;
use repair::*;

#[test]
fn rule_8_safety_wants_a_second_person() {
    hold(&[
        (
            "nobody checked",
            |job| {
                belt(job);
                job.out_and_back("belt", State::Off, State::On);
            },
            Gate::Road,
            &["not-checked:belt"],
        ),
        (
            "checked by the one who did it",
            |job| {
                belt(job);
                job.out_and_back("belt", State::Off, State::On);
                job.checked(CheckIs::SecondPerson, &["belt"]);
            },
            Gate::Road,
            &["not-checked:belt"],
        ),
        (
            "looked at by the one who did it",
            |job| {
                belt(job);
                job.out_and_back("belt", State::Off, State::On);
                job.looked("belt", &[], State::On);
            },
            Gate::Road,
            &["not-checked:belt"],
        ),
        (
            "checked by another",
            |job| {
                belt(job);
                job.out_and_back("belt", State::Off, State::On);
                job.by("rui").checked(CheckIs::SecondPerson, &["belt"]);
            },
            Gate::Road,
            &[],
        ),
        (
            "alone, walked round once more with the list reversed",
            |job| {
                belt(job);
                job.out_and_back("belt", State::Off, State::On);
                job.checked(CheckIs::WalkedBack, &["belt"]);
            },
            Gate::Road,
            &[],
        ),
        (
            "moved again after the check",
            |job| {
                belt(job);
                job.out_and_back("belt", State::Off, State::On);
                job.by("rui").checked(CheckIs::SecondPerson, &["belt"]);
                job.by("ana").out_and_back("belt", State::Off, State::On);
            },
            Gate::Road,
            &["not-checked:belt"],
        ),
        (
            "two did it, one of them checked",
            |job| {
                nuts(job);
                job.moved("nuts", &[1, 2, 3], State::Tight);
                job.by("rui").moved("nuts", &[4, 5], State::Tight);
                job.checked(CheckIs::SecondPerson, &["nuts"]);
            },
            Gate::Road,
            &["not-checked:nuts"],
        ),
        (
            "another item was checked",
            |job| {
                belt(job);
                job.out_and_back("belt", State::Off, State::On);
                job.by("rui").checked(CheckIs::SecondPerson, &["nuts"]);
            },
            Gate::Road,
            &["not-checked:belt"],
        ),
        (
            "trim wants no second person",
            |job| {
                job.one("trim", Kind::Cover, System::Body, Zone::Cabin);
                job.out_and_back("trim", State::Off, State::On);
            },
            Gate::Road,
            &[],
        ),
    ]);
}

#[test]
fn rule_8_every_system_of_the_safety_class_wants_it_at_both_gates() {
    for (system, kind) in [
        (System::Brakes, Kind::Part),
        (System::Steering, Kind::Part),
        (System::Wheels, Kind::Part),
        (System::Fuel, Kind::Hose),
        (System::Restraints, Kind::Connector),
        (System::DriveBelt, Kind::Belt),
        (System::HighVoltage, Kind::Connector),
        // Fluids whose loss stops a vehicle.
        (System::Brakes, Kind::Fluid),
        (System::Steering, Kind::Fluid),
        (System::Cooling, Kind::Fluid),
        (System::Oil, Kind::Fluid),
        (System::Fuel, Kind::Fluid),
        (System::Transmission, Kind::Fluid),
    ] {
        let mut job = Job::new();
        job.one("thing", kind, system, Zone::Above);
        job.out_and_back("thing", kind.away(), kind.home());
        let unchecked = "not-checked:thing".to_owned();
        for gate in Gate::ALL {
            assert_eq!(
                job.shut(gate).contains(&unchecked),
                matches!(gate, Gate::Road | Gate::HandOver),
                "{system:?} {kind:?}, {gate:?}"
            );
        }
        job.checked(CheckIs::WalkedBack, &["thing"]);
        for gate in Gate::ALL {
            assert!(!job.shut(gate).contains(&unchecked), "{system:?} {kind:?}");
        }
    }
}

#[test]
fn rule_8_waivers() {
    type Row = (&'static str, fn(&mut Job), &'static str, Waivable);
    let rows: [Row; 17] = [
        (
            "trim",
            |job| {
                job.one("trim", Kind::Cover, System::Body, Zone::Cabin);
                job.moved("trim", &[], State::Off);
            },
            "open:trim:1=Off",
            Waivable::Yes,
        ),
        (
            "a plug left in",
            |job| {
                job.put_in("plug", PutIn::Plug, System::Cooling, Zone::Above);
                job.moved("plug", &[], State::Inside);
            },
            "open:plug:1=Inside",
            Waivable::Prints,
        ),
        (
            "coolant low",
            |job| {
                fluid(job, "coolant", System::Cooling);
                job.moved("coolant", &[], State::Low);
            },
            "open:coolant:1=Low",
            Waivable::Prints,
        ),
        (
            "not checked",
            |job| {
                belt(job);
                job.out_and_back("belt", State::Off, State::On);
            },
            "not-checked:belt",
            Waivable::Prints,
        ),
        (
            "no road test",
            |job| {
                belt(job);
                job.out_and_back("belt", State::Off, State::On);
            },
            "proof-missing:RoadTest",
            Waivable::Prints,
        ),
        ("no price", |_| {}, "not-priced", Waivable::Yes),
        (
            "a part adrift",
            |job| part_needed(job, false),
            "part:hose",
            Waivable::Yes,
        ),
        (
            "a wheel nut missing",
            |job| {
                nuts(job);
                job.found("nuts", &[4], State::Out);
            },
            "open:nuts:4=Out",
            Waivable::Never,
        ),
        (
            "a brake bolt on, not tight",
            |job| {
                job.group("bolt", 2, Kind::Fasteners, System::Brakes, Zone::WheelWell);
                job.moved("bolt", &[1], LOOSE);
            },
            "open:bolt:1=Loose0",
            Waivable::Never,
        ),
        (
            "the belt off",
            |job| {
                belt(job);
                job.moved("belt", &[], State::Off);
            },
            "open:belt:1=Off",
            Waivable::Never,
        ),
        (
            "a fuel line off",
            |job| {
                job.one("line", Kind::Hose, System::Fuel, Zone::Above);
                job.moved("line", &[], State::Off);
            },
            "open:line:1=Off",
            Waivable::Never,
        ),
        (
            "litres much missing",
            |job| coolant_renewed(job, "7.2 L"),
            "much-missing:coolant",
            Waivable::Prints,
        ),
        (
            "a failed leak test",
            |job| {
                coolant_renewed(job, "9.2 L");
                job.proved_instead("hold", ProofIs::LeakTest, Outcome::Failed, &["leak"]);
            },
            "proof-failed:LeakTest",
            Waivable::Prints,
        ),
        (
            "a snag that has not ended",
            |job| {
                job.snag("s", "door", SnagIs::Worn, vec![]);
            },
            "snag:s",
            Waivable::Prints,
        ),
        (
            "work that is owed",
            |job| {
                battery(job);
                job.out_and_back("battery", State::Out, State::Tight);
            },
            "owed:ClockAndWindows:",
            Waivable::Prints,
        ),
        (
            "a part at the machine shop",
            |job| {
                job.record(Fact::SubletOut {
                    sublet: SubletId::new("face"),
                    line: None,
                    items: vec![],
                    what: words(5),
                    to: words(6),
                    due: None,
                    cost: None,
                });
            },
            "sublet:face",
            Waivable::Yes,
        ),
        (
            "something nobody declared",
            |job| {
                job.moved("thing", &[], State::Off);
            },
            "open:thing:1=Off",
            Waivable::Never,
        ),
    ];
    for (name, steps, key, waivable) in rows {
        let mut job = Job::new();
        steps(&mut job);
        let stood = job.answer(Gate::HandOver);
        let reason = stood.reasons().find(|reason| spelled(&reason.key) == key);
        assert_eq!(
            reason.map(|reason| reason.waivable),
            Some(waivable),
            "{name}"
        );
        let waived = job.by("ana").waive(Gate::HandOver, key);
        let now = job.answer(Gate::HandOver);
        let after = now
            .reasons()
            .find(|reason| spelled(&reason.key) == key)
            .unwrap();
        match waivable {
            Waivable::Never => {
                assert!(
                    matches!(waived, Err(Refusal::CannotBeWaived { .. })),
                    "{name}"
                );
                assert!(after.shuts(), "{name}");
            }
            _ => {
                assert!(!after.shuts(), "{name}");
                let waiver = after.waiver.as_ref().unwrap();
                assert_eq!(waiver.prints, waivable == Waivable::Prints, "{name}");
                assert_eq!(waiver.by.as_str(), "ana", "{name}");
                job.ask(Request::WithdrawWaiver {
                    waiver: waived.unwrap(),
                })
                .unwrap();
                let again = job.answer(Gate::HandOver);
                let again = again.reasons().find(|reason| spelled(&reason.key) == key);
                assert!(again.is_some_and(Reason::shuts), "{name}: withdrawn");
            }
        }
    }
}

#[test]
fn rule_8_a_waiver_is_for_one_gate_and_for_what_stood_then() {
    let mut job = Job::new();
    job.group("screws", 6, Kind::Fasteners, System::Body, Zone::Below);
    job.moved("screws", &[5], State::Out);
    job.road_tested();
    job.waive(Gate::HandOver, "open:screws:5=Out").unwrap();
    assert_eq!(job.shut(Gate::HandOver), Vec::<String>::new());
    assert_eq!(job.shut(Gate::Road), ["open:screws:5=Out"], "another gate");
    job.moved("screws", &[6], State::Out);
    assert_eq!(
        job.shut(Gate::HandOver),
        ["open:screws:5=Out,6=Out"],
        "more missing than before is another reason"
    );
    let gone = reason_key("open:screws:5=Out");
    assert_eq!(
        job.waive(Gate::HandOver, "open:screws:5=Out"),
        Err(Refusal::NoSuchReason { reason: gone })
    );
    assert_eq!(
        job.ask(Request::WithdrawWaiver {
            waiver: CommandId::new("none")
        }),
        Err(Refusal::NoSuchWaiver)
    );
}

#[test]
fn rule_8_a_waiver_is_for_so_much_and_no_more() {
    let mut job = Job::new();
    job.group("bolt", 2, Kind::Fasteners, System::Brakes, Zone::WheelWell);
    job.moved("bolt", &[1, 2], State::Out);
    job.moved("bolt", &[1, 2], State::Tight);
    let stands = |job: &Job| {
        let answer = job.answer(Gate::HandOver);
        let found = answer
            .reasons()
            .find(|reason| spelled(&reason.key) == "not-checked:bolt");
        found.map(Reason::shuts)
    };
    assert_eq!(stands(&job), Some(true));
    job.waive(Gate::HandOver, "not-checked:bolt").unwrap();
    assert_eq!(stands(&job), Some(false));
    // Off and on again: nobody waived a check of that.
    job.moved("bolt", &[2], State::Out);
    job.moved("bolt", &[2], State::Tight);
    assert_eq!(stands(&job), Some(true));
}

#[test]
fn rule_8_a_waiver_falls_when_the_item_turns_out_to_be_of_the_safety_class() {
    let key = "open:bracket:1=Off";
    let place = |job: &mut Job, system| {
        job.record(Fact::Located {
            item: ItemId::new("bracket"),
            system,
            zone: Zone::Below,
            after: vec![],
        });
    };
    let mut job = Job::new();
    job.one("bracket", Kind::Part, System::Body, Zone::Below);
    job.moved("bracket", &[], State::Off);
    job.road_tested();
    job.waive(Gate::HandOver, key).unwrap();
    assert_eq!(job.shut(Gate::HandOver), Vec::<String>::new());
    place(&mut job, System::Brakes);
    assert!(job.shut(Gate::HandOver).contains(&key.to_owned()));
}
