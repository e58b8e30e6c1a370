//! Rule 4: each gate looks at its own part.

use crate::hold;
use crate::support::*;
use crate::things::*;
use repair::*;

#[test]
fn rule_4_go_live() {
    hold(&[
        (
            "battery negative off",
            |job| {
                battery(job);
                job.moved("battery", &[], State::Out);
            },
            Gate::GoLive,
            &[],
        ),
        (
            "a connector hanging",
            |job| {
                job.one("airflow", Kind::Connector, System::Intake, Zone::Above);
                job.moved("airflow", &[], State::Unplugged);
            },
            Gate::GoLive,
            &["open:airflow:1=Unplugged"],
        ),
        (
            "the battery's own sensor plug",
            |job| {
                job.one("sensor", Kind::Connector, System::Battery, Zone::Above);
                job.moved("sensor", &[], State::Unplugged);
            },
            Gate::GoLive,
            &[],
        ),
        (
            "a bare terminal",
            |job| {
                job.one("b+", Kind::Fasteners, System::Electrical, Zone::WheelWell);
                job.moved("b+", &[], State::Out);
            },
            Gate::GoLive,
            &["open:b+:1=Out"],
        ),
        (
            "high voltage not released",
            |job| {
                job.one("service plug", Kind::Work, System::HighVoltage, Zone::Rear);
                job.moved("service plug", &[], State::Due);
            },
            Gate::GoLive,
            &["open:service plug:1=Due"],
        ),
        (
            "a relearn is done with the battery on",
            |job| {
                job.one("relearn", Kind::Work, System::Restraints, Zone::Cabin);
                job.moved("relearn", &[], State::Due);
            },
            Gate::GoLive,
            &[],
        ),
        (
            "a lamp by the fan",
            |job| {
                job.put_in("lamp", PutIn::Lamp, System::Cooling, Zone::Above);
                job.moved("lamp", &[], State::Inside);
            },
            Gate::GoLive,
            &["open:lamp:1=Inside"],
        ),
        (
            "a pinch clamp cannot be caught by the fan",
            |job| {
                job.put_in("clamp", PutIn::Clamp, System::Cooling, Zone::Above);
                job.moved("clamp", &[], State::Inside);
            },
            Gate::GoLive,
            &[],
        ),
        (
            "coolant low and the radiator hose off",
            |job| {
                fluid(job, "coolant", System::Cooling);
                job.one("hose", Kind::Hose, System::Cooling, Zone::Above);
                job.stage(&[("coolant", State::Low), ("hose", State::Off)]);
            },
            Gate::GoLive,
            &[],
        ),
    ]);
}

#[test]
fn rule_4_start() {
    hold(&[
        (
            "battery negative off",
            |job| {
                battery(job);
                job.moved("battery", &[], State::Out);
            },
            Gate::Start,
            &["open:battery:1=Out"],
        ),
        (
            "oil and coolant low",
            |job| {
                fluid(job, "coolant", System::Cooling);
                fluid(job, "oil", System::Oil);
                job.stage(&[("coolant", State::Low), ("oil", State::Low)]);
            },
            Gate::Start,
            &["open:coolant:1=Low", "open:oil:1=Low"],
        ),
        (
            "brake fluid low",
            |job| {
                fluid(job, "brake fluid", System::Brakes);
                job.moved("brake fluid", &[], State::Low);
            },
            Gate::Start,
            &[],
        ),
        (
            "bleeding due needs the engine running",
            |job| {
                job.one("bleed", Kind::Work, System::Cooling, Zone::Above);
                job.moved("bleed", &[], State::Due);
            },
            Gate::Start,
            &[],
        ),
        (
            "belt off",
            |job| {
                belt(job);
                job.moved("belt", &[], State::Off);
            },
            Gate::Start,
            &["open:belt:1=Off"],
        ),
        (
            "belt off, and a start without it planned",
            |job| {
                belt(job);
                job.moved("belt", &[], State::Off);
                job.belt_left_off("belt");
            },
            Gate::Start,
            &[],
        ),
        (
            "planned without the belt, for the start alone",
            |job| {
                belt(job);
                job.moved("belt", &[], State::Off);
                job.belt_left_off("belt");
            },
            Gate::Road,
            &["open:belt:1=Off"],
        ),
        (
            "planned without it, then it was on and came off again",
            |job| {
                belt(job);
                job.moved("belt", &[], State::Off);
                job.belt_left_off("belt");
                job.out_and_back("belt", State::On, State::Off);
            },
            Gate::Start,
            &["open:belt:1=Off"],
        ),
        (
            "planned without it by somebody who did not know that it is off",
            |job| {
                belt(job);
                job.belt_left_off("belt");
                job.moved("belt", &[], State::Off);
            },
            Gate::Start,
            &["open:belt:1=Off"],
        ),
        (
            "one says that the belt is off, one that it is on: nothing was planned of that",
            |job| {
                belt(job);
                job.moved("belt", &[], State::Off);
                let on = a_move("belt", &[1], State::On, &[]);
                job.record(Fact::Moved {
                    stage: None,
                    moves: vec![on],
                });
                job.belt_left_off("belt");
            },
            Gate::Start,
            &["open:belt:1=On+Off"],
        ),
        (
            "no other thing starts without by plan",
            |job| {
                fluid(job, "oil", System::Oil);
                job.moved("oil", &[], State::Low);
                job.belt_left_off("oil");
            },
            Gate::Start,
            &["open:oil:1=Low"],
        ),
        (
            "a rag in the oil port, a plug in the pump's line",
            |job| {
                job.put_in("rag", PutIn::Rag, System::Oil, Zone::Above);
                job.put_in("plug", PutIn::Plug, System::Steering, Zone::WheelWell);
                job.stage(&[("rag", State::Inside), ("plug", State::Inside)]);
            },
            Gate::Start,
            &["open:plug:1=Inside", "open:rag:1=Inside"],
        ),
        (
            "a steering line off: the pump would run dry",
            |job| {
                job.one("line", Kind::Hose, System::Steering, Zone::WheelWell);
                job.moved("line", &[], State::Off);
            },
            Gate::Start,
            &["open:line:1=Off"],
        ),
        (
            "a lamp in the cabin",
            |job| {
                job.put_in("lamp", PutIn::Lamp, System::Body, Zone::Cabin);
                job.moved("lamp", &[], State::Inside);
            },
            Gate::Start,
            &[],
        ),
        (
            "wheel and tray off",
            |job| {
                job.one("wheel", Kind::Part, System::Wheels, Zone::WheelWell);
                job.one("tray", Kind::Cover, System::Body, Zone::Below);
                job.stage(&[("wheel", State::Off), ("tray", State::Off)]);
            },
            Gate::Start,
            &[],
        ),
        (
            "a hanging connector stands at start as at go live",
            |job| {
                job.one("airflow", Kind::Connector, System::Intake, Zone::Above);
                job.moved("airflow", &[], State::Unplugged);
            },
            Gate::Start,
            &["open:airflow:1=Unplugged"],
        ),
    ]);
}

#[test]
fn rule_4_lower_and_roll() {
    hold(&[
        (
            "wheel nuts out",
            |job| {
                nuts(job);
                job.moved("nuts", &[], State::Out);
            },
            Gate::Lower,
            &["open:nuts:1=Out,2=Out,3=Out,4=Out,5=Out"],
        ),
        (
            "wheel nuts on, not tight: it may come down",
            |job| {
                nuts(job);
                job.out_and_back("nuts", State::Out, LOOSE);
            },
            Gate::Lower,
            &[],
        ),
        (
            "wheel nuts on, not tight: it may not roll",
            |job| {
                nuts(job);
                job.out_and_back("nuts", State::Out, LOOSE);
                job.moved("nuts", &[1, 2, 3], State::Loose { passes: 1 });
                job.moved("nuts", &[4, 5], State::Tight);
            },
            Gate::Roll,
            &["open:nuts:1=Loose1,2=Loose1,3=Loose1"],
        ),
        (
            "alignment due does not keep it up",
            |job| {
                job.one("alignment", Kind::Work, System::Steering, Zone::Below);
                job.moved("alignment", &[], State::Due);
            },
            Gate::Lower,
            &[],
        ),
        (
            "a tray half out hangs",
            |job| {
                screws(job);
                job.moved("screws", &[1, 2, 3], State::Out);
            },
            Gate::Lower,
            &["open:screws:1=Out,2=Out,3=Out"],
        ),
        (
            "a tray with its screws cracked hangs",
            |job| {
                screws(job);
                job.moved("screws", &[], State::Cracked);
            },
            Gate::Lower,
            &["open:screws:1=Cracked,2=Cracked,3=Cracked,4=Cracked,5=Cracked,6=Cracked"],
        ),
        (
            "the same where nobody said it is below",
            |job| {
                job.group("screws", 2, Kind::Fasteners, System::Body, Zone::Unknown);
                job.moved("screws", &[1], State::Out);
            },
            Gate::Lower,
            &["open:screws:1=Out"],
        ),
        (
            "a cover above with its screws half out does not hang below",
            |job| {
                job.group("screws", 2, Kind::Fasteners, System::Body, Zone::Above);
                job.moved("screws", &[1], State::Out);
            },
            Gate::Lower,
            &[],
        ),
        (
            "coolant low, and nothing says where it went",
            |job| {
                fluid(job, "coolant", System::Cooling);
                job.moved("coolant", &[], State::Low);
            },
            Gate::Lower,
            &["not-caught:coolant"],
        ),
        (
            "coolant low and caught",
            |job| {
                fluid(job, "coolant", System::Cooling);
                job.moved("coolant", &[], State::Low);
                drained(job, "coolant", "5.5 L");
            },
            Gate::Lower,
            &[],
        ),
        (
            "a lamp under it, a rag in the sump",
            |job| {
                job.put_in("lamp", PutIn::Lamp, System::Body, Zone::Below);
                job.put_in("rag", PutIn::Rag, System::Oil, Zone::Below);
                job.stage(&[("lamp", State::Inside), ("rag", State::Inside)]);
            },
            Gate::Lower,
            &["open:lamp:1=Inside"],
        ),
        (
            "a lamp above does not keep it up",
            |job| {
                job.put_in("lamp", PutIn::Lamp, System::Body, Zone::Above);
                job.moved("lamp", &[], State::Inside);
            },
            Gate::Lower,
            &[],
        ),
        (
            "steering bolts on, not tight: it may come down",
            |job| {
                job.group("rack", 2, Kind::Fasteners, System::Steering, Zone::Below);
                job.moved("rack", &[], LOOSE);
            },
            Gate::Lower,
            &[],
        ),
        (
            "steering bolts on, not tight: it may not roll",
            |job| {
                job.group("rack", 1, Kind::Fasteners, System::Steering, Zone::Below);
                job.moved("rack", &[], LOOSE);
            },
            Gate::Roll,
            &["open:rack:1=Loose0"],
        ),
        (
            "a brake hose off",
            |job| {
                job.one("hose", Kind::Hose, System::Brakes, Zone::WheelWell);
                job.moved("hose", &[], State::Off);
                job.done(WorkIs::PumpPedal, None);
            },
            Gate::Roll,
            &["open:hose:1=Off"],
        ),
        (
            "a brake hose off does not keep it up",
            |job| {
                job.one("hose", Kind::Hose, System::Brakes, Zone::WheelWell);
                job.moved("hose", &[], State::Off);
            },
            Gate::Lower,
            &[],
        ),
        (
            "brakes back, pedal not pumped",
            |job| {
                job.group("pads", 2, Kind::Part, System::Brakes, Zone::WheelWell);
                job.out_and_back("pads", State::Off, State::On);
            },
            Gate::Roll,
            &["owed:PumpPedal:"],
        ),
        (
            "brake fluid renewed, not bled",
            |job| {
                fluid(job, "brake fluid", System::Brakes);
                job.moved("brake fluid", &[], State::Low);
                drained(job, "brake fluid", "0.8 L");
                job.moved("brake fluid", &[], State::AtLevel);
                job.done(WorkIs::PumpPedal, None);
            },
            Gate::Roll,
            &["owed:Bleed:brake fluid"],
        ),
        (
            "radiator hose off: the yard is near",
            |job| {
                job.one("hose", Kind::Hose, System::Cooling, Zone::Above);
                job.moved("hose", &[], State::Off);
            },
            Gate::Roll,
            &[],
        ),
    ]);
}

#[test]
fn rule_4_road() {
    hold(&[
        (
            "a tray fully off below",
            |job| {
                screws(job);
                job.one("tray", Kind::Cover, System::Body, Zone::Below);
                job.stage(&[("screws", State::Out), ("tray", State::Off)]);
            },
            Gate::Road,
            &[],
        ),
        (
            "a tray fully off below, one clip of it missing since before",
            |job| {
                clips(job);
                job.found("clips", &[3], State::Out);
                job.moved("clips", &[1, 2, 4, 5, 6, 7, 8], State::Out);
            },
            Gate::Road,
            &[],
        ),
        (
            "a tray half fastened",
            |job| {
                screws(job);
                job.moved("screws", &[], State::Out);
                job.moved("screws", &[1, 2, 3, 4], State::Tight);
            },
            Gate::Road,
            &["open:screws:5=Out,6=Out"],
        ),
        (
            "a cover above half fastened",
            |job| {
                job.group("screws", 4, Kind::Fasteners, System::Body, Zone::Above);
                job.moved("screws", &[1], State::Out);
            },
            Gate::Road,
            &["open:screws:1=Out"],
        ),
        (
            "a stuck bolt holds, and blocks",
            |job| {
                job.group("bolts", 7, Kind::Fasteners, System::Cooling, Zone::Above);
                let stuck = job.change("bolts", &[6], State::Stub { holds: true });
                job.snag("s", "bolts", SnagIs::Stuck, vec![stuck]);
            },
            Gate::Road,
            &["open:bolts:6=Stuck", "snag:s"],
        ),
        (
            "its snag at an end, the bolt tight",
            |job| {
                job.group("bolts", 7, Kind::Fasteners, System::Cooling, Zone::Above);
                let stuck = job.change("bolts", &[6], State::Stub { holds: true });
                job.snag("s", "bolts", SnagIs::Stuck, vec![stuck]);
                let tight = job.change("bolts", &[6], State::Tight);
                job.snag_ended("s", Resolved::AsBefore, vec![tight]);
            },
            Gate::Road,
            &[],
        ),
        (
            "a scratch found on a door does not stop a road test",
            |job| {
                job.one("door", Kind::Part, System::Body, Zone::Outside);
                job.snag("s", "door", SnagIs::Other, vec![]);
            },
            Gate::Road,
            &[],
        ),
        (
            "a snag on something nobody has told of",
            |job| {
                job.snag("s", "thing", SnagIs::Worn, vec![]);
            },
            Gate::Road,
            &["snag:s"],
        ),
        (
            "anything inside, wherever it is",
            |job| {
                job.put_in("lamp", PutIn::Lamp, System::Body, Zone::Cabin);
                job.moved("lamp", &[], State::Inside);
            },
            Gate::Road,
            &["open:lamp:1=Inside"],
        ),
        (
            "airbox off",
            |job| {
                job.one("airbox", Kind::Part, System::Intake, Zone::Above);
                job.moved("airbox", &[], State::Off);
            },
            Gate::Road,
            &["open:airbox:1=Off"],
        ),
        (
            "coolant in, not bled",
            |job| {
                fluid(job, "coolant", System::Cooling);
                job.moved("coolant", &[], State::AtLevel);
                job.by("rui").checked(CheckIs::SecondPerson, &["coolant"]);
            },
            Gate::Road,
            &["owed:Bleed:coolant"],
        ),
        (
            "a trim panel off in the cabin",
            |job| {
                job.one("trim", Kind::Cover, System::Body, Zone::Cabin);
                job.moved("trim", &[], State::Off);
            },
            Gate::Road,
            &[],
        ),
    ]);
}

#[test]
fn rule_4_unknown_stands_at_every_gate_until_told() {
    for gate in Gate::ALL {
        let mut job = Job::new();
        job.moved("heat shield", &[], State::Off);
        assert_eq!(
            job.shut(gate),
            ["open:heat shield:1=Off"],
            "{gate:?}: not declared"
        );
        job.one("heat shield", Kind::Cover, System::Unknown, Zone::Unknown);
        let key = "unlocated:heat shield:1=Off";
        let shut = job.shut(gate);
        assert!(shut.contains(&key.into()), "{gate:?}: not located");
        assert_eq!(
            job.waive(gate, key),
            Err(Refusal::CannotBeWaived {
                reason: ReasonKey(key.into())
            })
        );
        job.record(Fact::Located {
            item: ItemId::new("heat shield"),
            system: System::Exhaust,
            zone: Zone::Below,
            after: vec![],
        });
        let stands = job.shut(gate).contains(&"open:heat shield:1=Off".into());
        assert_eq!(
            stands,
            matches!(gate, Gate::Road | Gate::HandOver),
            "{gate:?}: told"
        );
    }
}
