//! The things that cases are about.

use crate::support::*;
use repair::*;

pub fn battery(job: &mut Job) {
    job.one("battery", Kind::Fasteners, System::Battery, Zone::Above);
}

pub fn nuts(job: &mut Job) {
    job.group("nuts", 5, Kind::Fasteners, System::Wheels, Zone::WheelWell);
}

/// Tray clips under the vehicle: two may be missing, none at 1 and 2.
pub fn clips(job: &mut Job) {
    job.declare(Item {
        may_miss: Some(MayMiss {
            up_to: 2,
            never_at: vec![1, 2],
        }),
        ..item("clips", Kind::Clips, System::Body, Zone::Below, 8)
    });
}

pub fn screws(job: &mut Job) {
    job.group("screws", 6, Kind::Fasteners, System::Body, Zone::Below);
}

pub fn belt(job: &mut Job) {
    job.one("belt", Kind::Belt, System::DriveBelt, Zone::WheelWell);
}

/// Pulley bolts whose tightening needs the belt on, as a map states it.
pub fn pulley(job: &mut Job) {
    belt(job);
    job.group(
        "pulley",
        3,
        Kind::Fasteners,
        System::DriveBelt,
        Zone::WheelWell,
    );
    let need = |to, states: &[State]| StatedNeed {
        item: ItemId::new("pulley"),
        at: vec![],
        to,
        need: Need::Is {
            item: ItemId::new("belt"),
            at: vec![],
            states: states.iter().copied().collect(),
        },
    };
    job.ask(Request::Adopt {
        map: MapId::new("drayman"),
        version: 1,
        needs: vec![
            need(State::Cracked, &[State::On]),
            need(State::Tight, &[State::On]),
        ],
        work: vec![],
    })
    .unwrap();
}

/// One screw out and tight again, which a map says needs another item in a state.
pub fn tightened_by(job: &mut Job, needed: &str, state: State) {
    job.group("screw", 1, Kind::Fasteners, System::Body, Zone::Above);
    let need = Need::Is {
        item: ItemId::new(needed),
        at: vec![],
        states: [state].into(),
    };
    job.ask(Request::Adopt {
        map: MapId::new("drayman"),
        version: 1,
        needs: vec![StatedNeed {
            item: ItemId::new("screw"),
            at: vec![],
            to: State::Tight,
            need,
        }],
        work: vec![],
    })
    .unwrap();
    job.out_and_back("screw", State::Out, State::Tight);
}

pub fn fluid(job: &mut Job, id: &str, system: System) {
    job.declare(item(id, Kind::Fluid, system, Zone::Above, 1));
}

pub fn drained(job: &mut Job, id: &str, amount: &str) {
    job.record(Fact::Drained {
        item: ItemId::new(id),
        amount: written(amount),
        fate: Fate::Kept,
        temperature: None,
    });
}

pub fn poured(job: &mut Job, id: &str, amount: &str) {
    job.record(Fact::Poured {
        item: ItemId::new(id),
        amount: written(amount),
        what: None,
        temperature: None,
    });
}

/// Coolant out and in, bled, its level seen warm, looked over for leaks, checked.
pub fn coolant_renewed(job: &mut Job, poured_back: &str) {
    fluid(job, "coolant", System::Cooling);
    job.moved("coolant", &[], State::Low);
    drained(job, "coolant", "9.2 L");
    poured(job, "coolant", poured_back);
    job.moved("coolant", &[], State::AtLevel);
    job.done(WorkIs::Bleed, Some("coolant"));
    job.level("coolant", LevelAt::Warm);
    job.done(WorkIs::LookForLeaks, None);
    job.proved("leak", ProofIs::LeakTest, Outcome::Held);
    job.road_tested();
    job.by("rui").checked(CheckIs::SecondPerson, &["coolant"]);
}

/// A trim cover off and on again, road tested: nothing else is left of it.
pub fn trim_done(job: &mut Job) {
    job.one("trim", Kind::Cover, System::Body, Zone::Cabin);
    job.out_and_back("trim", State::Off, State::On);
    job.road_tested();
}

pub fn part_needed(job: &mut Job, has_old: bool) {
    job.record(Fact::PartNeeded {
        part: PartId::new("hose"),
        line: None,
        item: None,
        label: words(2),
        number: None,
        quantity: 2.into(),
        cost: None,
        price: None,
        core: None,
        has_old,
    });
}

pub fn part_step(job: &mut Job, step: PartStep, quantity: i64) {
    job.record(Fact::PartStepped {
        part: PartId::new("hose"),
        quantity: quantity.into(),
        step,
        due: None,
        words: None,
    });
}
