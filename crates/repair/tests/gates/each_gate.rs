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
        (
            "an airbag's plug hanging",
            |job| {
                job.one("bag", Kind::Connector, System::Restraints, Zone::Cabin);
                job.moved("bag", &[], State::Unplugged);
            },
            Gate::GoLive,
            &["open:bag:1=Unplugged"],
        ),
        (
            "a high-voltage cover off",
            |job| {
                job.one("cover", Kind::Cover, System::HighVoltage, Zone::Rear);
                job.moved("cover", &[], State::Off);
            },
            Gate::GoLive,
            &["open:cover:1=Off"],
        ),
        (
            "a tool in the run of the belt",
            |job| {
                job.put_in("bar", PutIn::Tool, System::DriveBelt, Zone::WheelWell);
                job.moved("bar", &[], State::Inside);
            },
            Gate::GoLive,
            &["open:bar:1=Inside"],
        ),
        (
            "a rag, and nobody said where it lies",
            |job| {
                job.put_in("rag", PutIn::Rag, System::Engine, Zone::Unknown);
                job.moved("rag", &[], State::Inside);
            },
            Gate::GoLive,
            &["open:rag:1=Inside"],
        ),
        (
            "a rag in the cabin is no matter of the fan",
            |job| {
                job.put_in("rag", PutIn::Rag, System::Body, Zone::Cabin);
                job.moved("rag", &[], State::Inside);
            },
            Gate::GoLive,
            &[],
        ),
        (
            "belt and wheels off",
            |job| {
                belt(job);
                nuts(job);
                job.stage(&[("belt", State::Off), ("nuts", State::Out)]);
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
        (
            "a fuel line off",
            |job| {
                job.one("line", Kind::Hose, System::Fuel, Zone::Above);
                job.moved("line", &[], State::Off);
            },
            Gate::Start,
            &["open:line:1=Off"],
        ),
        (
            "steering fluid and gearbox oil low",
            |job| {
                fluid(job, "atf", System::Transmission);
                fluid(job, "steering", System::Steering);
                job.stage(&[("atf", State::Low), ("steering", State::Low)]);
            },
            Gate::Start,
            &["open:atf:1=Low", "open:steering:1=Low"],
        ),
        (
            "washer water low",
            |job| {
                fluid(job, "washer water", System::Body);
                job.moved("washer water", &[], State::Low);
            },
            Gate::Start,
            &[],
        ),
        (
            "the pin left in the tensioner",
            |job| {
                job.put_in("pin", PutIn::Pin, System::DriveBelt, Zone::WheelWell);
                job.moved("pin", &[], State::Inside);
            },
            Gate::Start,
            &["open:pin:1=Inside"],
        ),
        (
            "high voltage not released",
            |job| {
                job.one("service plug", Kind::Work, System::HighVoltage, Zone::Rear);
                job.moved("service plug", &[], State::Due);
            },
            Gate::Start,
            &["open:service plug:1=Due"],
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
        (
            "a wheel off",
            |job| {
                job.one("wheel", Kind::Part, System::Wheels, Zone::WheelWell);
                job.moved("wheel", &[], State::Off);
            },
            Gate::Lower,
            &["open:wheel:1=Off"],
        ),
        (
            "four nuts on by hand, the fifth not",
            |job| {
                nuts(job);
                job.moved("nuts", &[], State::Out);
                job.moved("nuts", &[1, 2, 3, 4], LOOSE);
            },
            Gate::Lower,
            &["open:nuts:1=Loose0,2=Loose0,3=Loose0,4=Loose0,5=Out"],
        ),
        (
            "nuts tight: it may roll, checked or not",
            |job| {
                nuts(job);
                job.out_and_back("nuts", State::Out, State::Tight);
            },
            Gate::Roll,
            &[],
        ),
        (
            "a nut that is stuck still holds: it may come down",
            |job| {
                nuts(job);
                job.moved("nuts", &[2], State::Stub { holds: true });
            },
            Gate::Lower,
            &[],
        ),
        (
            "a stud that snapped holds nothing",
            |job| {
                nuts(job);
                job.moved("nuts", &[2], State::Stub { holds: false });
            },
            Gate::Lower,
            &["open:nuts:2=Snapped"],
        ),
        (
            "a suspension arm off",
            |job| {
                job.one("arm", Kind::Part, System::Suspension, Zone::Below);
                job.moved("arm", &[], State::Off);
            },
            Gate::Lower,
            &["open:arm:1=Off"],
        ),
        (
            "an arm's bolt cracked: it may not roll",
            |job| {
                job.one(
                    "arm bolt",
                    Kind::Fasteners,
                    System::Suspension,
                    Zone::WheelWell,
                );
                job.moved("arm bolt", &[], State::Cracked);
            },
            Gate::Roll,
            &["open:arm bolt:1=Cracked"],
        ),
        (
            "oil low, caught in an amount that nobody measured",
            |job| {
                fluid(job, "oil", System::Oil);
                job.moved("oil", &[], State::Low);
                drained(job, "oil", "a pan full");
            },
            Gate::Lower,
            &[],
        ),
        (
            "fluids that drip stand at rolling too",
            |job| {
                fluid(job, "oil", System::Oil);
                job.moved("oil", &[], State::Low);
            },
            Gate::Roll,
            &["not-caught:oil"],
        ),
        (
            "brake fluid low",
            |job| {
                fluid(job, "brake fluid", System::Brakes);
                job.moved("brake fluid", &[], State::Low);
                drained(job, "brake fluid", "0.8 L");
            },
            Gate::Roll,
            &[
                "open:brake fluid:1=Low",
                "owed:Bleed:brake fluid",
                "owed:PumpPedal:",
            ],
        ),
        (
            "steering fluid low: pushed by hand it still steers",
            |job| {
                fluid(job, "steering", System::Steering);
                job.moved("steering", &[], State::Low);
                drained(job, "steering", "1 L");
            },
            Gate::Roll,
            &[],
        ),
        (
            "a chock's strap left on a wheel",
            |job| {
                job.put_in("strap", PutIn::Cord, System::Wheels, Zone::Above);
                job.moved("strap", &[], State::Inside);
            },
            Gate::Roll,
            &["open:strap:1=Inside"],
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
        (
            "wheel nuts on, one pass of two",
            |job| {
                nuts(job);
                job.moved("nuts", &[], State::Loose { passes: 1 });
            },
            Gate::Road,
            &["open:nuts:1=Loose1,2=Loose1,3=Loose1,4=Loose1,5=Loose1"],
        ),
        (
            "steering fluid in, not bled",
            |job| {
                fluid(job, "steering", System::Steering);
                job.moved("steering", &[], State::AtLevel);
                job.by("rui").checked(CheckIs::SecondPerson, &["steering"]);
            },
            Gate::Road,
            &["owed:Bleed:steering"],
        ),
        (
            "brake bolts tight: nobody else looked, the pedal not pumped",
            |job| {
                job.group("bolts", 2, Kind::Fasteners, System::Brakes, Zone::WheelWell);
                job.out_and_back("bolts", State::Out, State::Tight);
            },
            Gate::Road,
            &["not-checked:bolts", "owed:PumpPedal:"],
        ),
        (
            "a bolt that snapped holds nothing",
            |job| {
                job.group("bolts", 7, Kind::Fasteners, System::Cooling, Zone::Above);
                job.moved("bolts", &[6], State::Stub { holds: false });
            },
            Gate::Road,
            &["open:bolts:6=Snapped"],
        ),
        (
            "a stretch bolt put back",
            |job| {
                stretch_bolt(job);
                job.out_and_back("bolt", State::Out, State::Tight);
            },
            Gate::Road,
            &["open:bolt:1=Tight"],
        ),
        (
            "a new stretch bolt",
            |job| {
                stretch_bolt(job);
                job.moved("bolt", &[], State::Out);
                job.moved_as("bolt", State::Tight, PieceIs::New);
            },
            Gate::Road,
            &[],
        ),
        (
            "a stretch bolt cracked and tightened was never out",
            |job| {
                stretch_bolt(job);
                job.out_and_back("bolt", State::Cracked, State::Tight);
            },
            Gate::Road,
            &[],
        ),
        (
            "washer water low, a connector of the load bed hanging",
            |job| {
                fluid(job, "washer water", System::Body);
                job.one("lamp plug", Kind::Connector, System::Electrical, Zone::Rear);
                job.stage(&[
                    ("washer water", State::Low),
                    ("lamp plug", State::Unplugged),
                ]);
                drained(job, "washer water", "2 L");
            },
            Gate::Road,
            &["open:lamp plug:1=Unplugged"],
        ),
    ]);
}

/// A bolt that is tightened by angle: once out it may not go back.
fn stretch_bolt(job: &mut Job) {
    job.declare(Item {
        spent: true,
        ..item("bolt", Kind::Fasteners, System::Engine, Zone::Above, 1)
    });
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
                reason: reason_key(key)
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
