//! Rule 6: proofs and debts.

use crate::hold;
use crate::support::*;
use crate::things::*;
use repair::*;

#[test]
fn rule_6_proofs() {
    hold(&[
        (
            "cooling opened: a leak test and a road test",
            |job| {
                job.one("hose", Kind::Hose, System::Cooling, Zone::Above);
                job.out_and_back("hose", State::Off, State::On);
            },
            Gate::HandOver,
            &["proof-missing:LeakTest", "proof-missing:RoadTest"],
        ),
        (
            "brakes: tried at walking speed",
            |job| {
                job.group("pads", 2, Kind::Part, System::Brakes, Zone::WheelWell);
                job.out_and_back("pads", State::Off, State::On);
                job.done(WorkIs::PumpPedal, None);
                job.road_tested();
                job.by("rui").checked(CheckIs::SecondPerson, &["pads"]);
            },
            Gate::HandOver,
            &["proof-missing:BrakeTest"],
        ),
        (
            "fuel and restraints",
            |job| {
                job.one("line", Kind::Hose, System::Fuel, Zone::Above);
                job.one("bag", Kind::Connector, System::Restraints, Zone::Cabin);
                job.out_and_back("line", State::Off, State::On);
                job.out_and_back("bag", State::Unplugged, State::Plugged);
                job.road_tested();
                job.by("rui")
                    .checked(CheckIs::SecondPerson, &["line", "bag"]);
            },
            Gate::HandOver,
            &["proof-missing:FuelLeakLook", "proof-missing:RestraintLamp"],
        ),
        (
            "found only, nothing disturbed: nothing to prove",
            |job| {
                job.one("hose", Kind::Hose, System::Cooling, Zone::Above);
                job.found("hose", &[1], State::On);
            },
            Gate::HandOver,
            &[],
        ),
        (
            "not provoked hands over",
            |job| {
                trim_done(job);
                job.proved_instead("again", ProofIs::RoadTest, Outcome::NotProvoked, &["road"]);
            },
            Gate::HandOver,
            &[],
        ),
        (
            "a failed proof",
            |job| {
                trim_done(job);
                job.proved("again", ProofIs::RoadTest, Outcome::Failed);
            },
            Gate::HandOver,
            &["proof-failed:RoadTest"],
        ),
        (
            "a failed proof that a later one replaces",
            |job| {
                trim_done(job);
                job.proved("second", ProofIs::RoadTest, Outcome::Failed);
                job.proved_instead("third", ProofIs::RoadTest, Outcome::Held, &["second"]);
            },
            Gate::HandOver,
            &[],
        ),
        (
            "a road test that claims to replace a leak test",
            |job| {
                job.one("hose", Kind::Hose, System::Cooling, Zone::Above);
                job.out_and_back("hose", State::Off, State::On);
                job.proved("leak", ProofIs::LeakTest, Outcome::Held);
                job.proved_instead("road", ProofIs::RoadTest, Outcome::Held, &["leak"]);
            },
            Gate::HandOver,
            &[],
        ),
        (
            "work on a hose after the leak test undoes it",
            |job| {
                job.one("hose", Kind::Hose, System::Cooling, Zone::Above);
                job.out_and_back("hose", State::Off, State::On);
                job.proved("leak", ProofIs::LeakTest, Outcome::Held);
                job.road_tested();
                job.out_and_back("hose", State::Off, State::On);
            },
            Gate::HandOver,
            &["proof-missing:LeakTest", "proof-missing:RoadTest"],
        ),
        (
            "bolts torqued once more after the test do not undo it",
            |job| {
                job.group("bolts", 2, Kind::Fasteners, System::Engine, Zone::Above);
                job.out_and_back("bolts", State::Out, State::Tight);
                job.road_tested();
                job.moved("bolts", &[], State::Tight);
            },
            Gate::HandOver,
            &[],
        ),
        (
            "trim off and on after the road test does not undo it",
            |job| {
                trim_done(job);
                job.out_and_back("trim", State::Off, State::On);
            },
            Gate::HandOver,
            &[],
        ),
        (
            "a top-up after the road test does not undo it",
            |job| {
                coolant_renewed(job, "9.2 L");
                job.moved("coolant", &[], State::Low);
                poured(job, "coolant", "0.2 L");
                job.moved("coolant", &[], State::AtLevel);
                job.done(WorkIs::Bleed, Some("coolant"));
                job.level("coolant", LevelAt::Warm);
                job.done(WorkIs::LookForLeaks, None);
                job.by("ana").checked(CheckIs::SecondPerson, &["coolant"]);
            },
            Gate::HandOver,
            &[],
        ),
        (
            "debts due later do not block",
            |job| {
                nuts(job);
                job.out_and_back("nuts", State::Out, State::Tight);
                job.road_tested();
                job.by("rui").checked(CheckIs::SecondPerson, &["nuts"]);
            },
            Gate::HandOver,
            &[],
        ),
        (
            "clock and windows after the battery block, once",
            |job| {
                battery(job);
                let before = Until::Before(Gate::HandOver);
                stated(job, "battery", State::Out, WorkIs::ClockAndWindows, before);
                job.out_and_back("battery", State::Out, State::Tight);
                job.road_tested();
            },
            Gate::HandOver,
            &["owed:ClockAndWindows:"],
        ),
        (
            "a person's own debt blocks its gate",
            |job| own_debt(job),
            Gate::Roll,
            &["owed:own:w"],
        ),
        (
            "a person's own debt for rolling does not keep it up",
            |job| own_debt(job),
            Gate::Lower,
            &[],
        ),
        (
            "a debt of rolling stands on the road too",
            |job| own_debt(job),
            Gate::Road,
            &["owed:own:w"],
        ),
        (
            "a debt of lowering stands at rolling",
            |job| own_debt_before(job, Gate::Lower),
            Gate::Roll,
            &["owed:own:w"],
        ),
        (
            "a debt of going live stands at start",
            |job| own_debt_before(job, Gate::GoLive),
            Gate::Start,
            &["owed:own:w"],
        ),
        (
            "a debt of going live does not keep it up",
            |job| own_debt_before(job, Gate::GoLive),
            Gate::Roll,
            &[],
        ),
        (
            "a debt of handing over does not stop the road test",
            |job| own_debt_before(job, Gate::HandOver),
            Gate::Road,
            &[],
        ),
        (
            "a person's own debt, done",
            |job| {
                own_debt(job);
                job.record(Fact::WorkDone {
                    work: Work::declared(WorkId::new("w"), None),
                    after: vec![],
                    words: None,
                });
            },
            Gate::Roll,
            &[],
        ),
        (
            "an alignment that the map makes due, before hand-over",
            |job| {
                job.one("rod", Kind::Part, System::Steering, Zone::Below);
                stated(
                    job,
                    "rod",
                    State::Off,
                    WorkIs::Alignment,
                    Until::Before(Gate::HandOver),
                );
                job.out_and_back("rod", State::Off, State::On);
                job.road_tested();
                job.by("rui").checked(CheckIs::SecondPerson, &["rod"]);
            },
            Gate::HandOver,
            &["owed:Alignment:rod"],
        ),
        (
            "an alignment that the map makes due later does not block",
            |job| {
                job.one("rod", Kind::Part, System::Steering, Zone::Below);
                let later = Until::Later {
                    date: None,
                    distance: Some(written("80 km")),
                };
                stated(job, "rod", State::Off, WorkIs::Alignment, later);
                job.out_and_back("rod", State::Off, State::On);
                job.road_tested();
                job.by("rui").checked(CheckIs::SecondPerson, &["rod"]);
            },
            Gate::HandOver,
            &[],
        ),
        (
            "the face not cleaned",
            |job| {
                job.one("face", Kind::Work, System::Engine, Zone::WheelWell);
                job.moved("face", &[], State::Due);
            },
            Gate::HandOver,
            &["open:face:1=Due"],
        ),
    ]);
}

/// A map that makes work due when an item comes to a state.
fn stated(job: &mut Job, id: &str, to: State, work: WorkIs, until: Until) {
    job.ask(Request::Adopt {
        map: MapId::new("drayman"),
        version: 1,
        needs: vec![],
        work: vec![StatedWork {
            item: ItemId::new(id),
            to,
            work,
            words: None,
            until,
            named: None,
            sort: None,
        }],
    })
    .unwrap();
}

fn own_debt(job: &mut Job) {
    own_debt_before(job, Gate::Roll);
}

fn own_debt_before(job: &mut Job, gate: Gate) {
    job.record(Fact::WorkDue {
        id: WorkId::new("w"),
        item: None,
        words: words(8),
        until: Until::Before(gate),
    });
}

#[test]
fn rule_6_later_debts_are_listed() {
    let mut job = Job::new();
    nuts(&mut job);
    job.out_and_back("nuts", State::Out, State::Tight);
    let debts = debts(&job.order, &job.account(), &job.rules);
    let later: Vec<_> = debts
        .iter()
        .map(|debt| (debt.work.work, matches!(debt.until, Until::Later { .. })))
        .collect();
    assert_eq!(later, [(WorkIs::TorqueAfterDistance, true)]);
}
