//! Rule 9: a fluid closes on its level.

use crate::hold;
use crate::support::*;
use crate::things::*;
use jiff::ToSpan;
use repair::*;

#[test]
fn rule_9_a_fluid_closes_on_its_level() {
    hold(&[
        (
            "filled today: the cold level is due tomorrow and does not block",
            |job| coolant_renewed(job, "9.2 L"),
            Gate::HandOver,
            &[],
        ),
        (
            "filled yesterday: the cold level blocks",
            |job| {
                coolant_renewed(job, "9.2 L");
                job.later(24);
            },
            Gate::HandOver,
            &["owed:LevelCold:coolant"],
        ),
        (
            "filled yesterday, the level seen cold",
            |job| {
                coolant_renewed(job, "9.2 L");
                job.later(24);
                job.level("coolant", LevelAt::Cold);
            },
            Gate::HandOver,
            &[],
        ),
        (
            "the level seen cold answers the warm one too",
            |job| {
                fluid(job, "oil", System::Oil);
                job.moved("oil", &[], State::Low);
                job.moved("oil", &[], State::AtLevel);
                job.done(WorkIs::LookForLeaks, None);
                job.level("oil", LevelAt::Cold);
                job.road_tested();
                job.by("rui").checked(CheckIs::SecondPerson, &["oil"]);
            },
            Gate::HandOver,
            &[],
        ),
        (
            "half a litre missing is what a pan hides",
            |job| coolant_renewed(job, "8.7 L"),
            Gate::HandOver,
            &[],
        ),
        (
            "litres much missing",
            |job| coolant_renewed(job, "8.1 L"),
            Gate::HandOver,
            &["much-missing:coolant"],
        ),
        (
            "a cold level that is not good answers nothing",
            |job| {
                coolant_renewed(job, "8.1 L");
                job.later(24);
                job.level_is("coolant", LevelAt::Cold, false);
            },
            Gate::HandOver,
            &["open:coolant:1=Low", "owed:LevelCold:coolant"],
        ),
        (
            "a level that is not good: low, whatever was poured",
            |job| {
                coolant_renewed(job, "9.2 L");
                job.level_is("coolant", LevelAt::Warm, false);
            },
            Gate::Start,
            &["open:coolant:1=Low"],
        ),
        (
            "a level that is not good on a fluid nobody touched",
            |job| {
                fluid(job, "oil", System::Oil);
                job.level_is("oil", LevelAt::Cold, false);
            },
            Gate::Start,
            &["open:oil:1=Low"],
        ),
        (
            "seen low, not drained: there is nothing to catch",
            |job| {
                fluid(job, "oil", System::Oil);
                job.level_is("oil", LevelAt::Cold, false);
            },
            Gate::Lower,
            &[],
        ),
        (
            "seen low, then seen good again",
            |job| {
                coolant_renewed(job, "9.2 L");
                job.level_is("coolant", LevelAt::Warm, false);
                job.level("coolant", LevelAt::Warm);
            },
            Gate::HandOver,
            &[],
        ),
        (
            "seen low, then filled: bleed and look again",
            |job| {
                coolant_renewed(job, "9.2 L");
                job.level_is("coolant", LevelAt::Warm, false);
                poured(job, "coolant", "0.4 L");
                job.moved("coolant", &[], State::AtLevel);
                job.by("ana").checked(CheckIs::WalkedBack, &["coolant"]);
            },
            Gate::HandOver,
            &[
                "owed:Bleed:coolant",
                "owed:LevelWarm:coolant",
                "owed:LookForLeaks:",
            ],
        ),
        (
            "seen low and seen good by two who knew nothing of each other: look",
            |job| {
                coolant_renewed(job, "9.2 L");
                let before = job.seen("coolant");
                job.level("coolant", LevelAt::Warm);
                job.record(Fact::LevelSeen {
                    item: ItemId::new("coolant"),
                    level: LevelAt::Warm,
                    good: false,
                    reading: None,
                    temperature: None,
                    after: before,
                });
            },
            Gate::HandOver,
            &["open:coolant:1=AtLevel+Low"],
        ),
        (
            "litres much missing, the level seen cold since",
            |job| {
                coolant_renewed(job, "8.1 L");
                job.level("coolant", LevelAt::Cold);
            },
            Gate::HandOver,
            &[],
        ),
        (
            "litres much missing, the level seen cold only before",
            |job| {
                fluid(job, "coolant", System::Cooling);
                job.level("coolant", LevelAt::Cold);
                coolant_renewed(job, "8.1 L");
            },
            Gate::HandOver,
            &["much-missing:coolant"],
        ),
        (
            "two people pour, in two units",
            |job| {
                coolant_renewed(job, "4.6 L");
                job.by("rui");
                poured(job, "coolant", "4600 mL");
            },
            Gate::HandOver,
            &[],
        ),
        (
            "poured once more: bleed and look again",
            |job| {
                coolant_renewed(job, "9.2 L");
                job.moved("coolant", &[], State::AtLevel);
                job.checked(CheckIs::WalkedBack, &["coolant"]);
            },
            Gate::HandOver,
            &[
                "owed:Bleed:coolant",
                "owed:LevelWarm:coolant",
                "owed:LookForLeaks:",
            ],
        ),
    ]);
}

#[test]
fn rule_9_the_cold_level_is_due_by_a_date() {
    let mut job = Job::new();
    coolant_renewed(&mut job, "9.2 L");
    let debts = debts(&job.order, &job.account(), &job.rules);
    let cold = debts
        .iter()
        .find(|debt| debt.work.work == WorkIs::LevelCold);
    let tomorrow = job.rules.today().checked_add(1.day()).unwrap();
    assert_eq!(
        cold.map(|debt| debt.until.clone()),
        Some(Until::Later {
            date: Some(tomorrow),
            distance: None
        })
    );
}

/// What is told at the hand-over without shutting it.
fn told(steps: fn(&mut Job)) -> Vec<String> {
    let mut job = Job::new();
    steps(&mut job);
    let answer = job.answer(Gate::HandOver);
    answer
        .fit_to_go
        .iter()
        .filter(|reason| !reason.shuts())
        .map(|reason| spelled(&reason.key))
        .collect()
}

#[test]
fn rule_9_litres_warn() {
    type Told = (&'static str, fn(&mut Job), &'static [&'static str]);
    let rows: &[Told] = &[
        ("all in", |job| coolant_renewed(job, "9.2 L"), &[]),
        (
            "half a litre is what a pan hides",
            |job| coolant_renewed(job, "8.7 L"),
            &[],
        ),
        (
            "more than a pan hides, less than much",
            |job| coolant_renewed(job, "8.4 L"),
            &["litres-short:coolant"],
        ),
        (
            "much is missing and blocks: not told twice",
            |job| coolant_renewed(job, "8.1 L"),
            &[],
        ),
        (
            "much is missing, the level seen cold since: told all the same",
            |job| {
                coolant_renewed(job, "8.1 L");
                job.level("coolant", LevelAt::Cold);
            },
            &["litres-short:coolant"],
        ),
        (
            "coolant out, and nothing says what became of it",
            |job| {
                fluid(job, "coolant", System::Cooling);
                job.out_and_back("coolant", State::Low, State::AtLevel);
            },
            &["fate-untold:coolant"],
        ),
        (
            "topped up, never drained: nothing to be rid of",
            |job| {
                fluid(job, "coolant", System::Cooling);
                job.moved("coolant", &[], State::AtLevel);
                poured(job, "coolant", "0.2 L");
            },
            &[],
        ),
        (
            "found low: it did not go through us",
            |job| {
                fluid(job, "coolant", System::Cooling);
                job.found("coolant", &[1], State::Low);
                job.moved("coolant", &[], State::AtLevel);
            },
            &[],
        ),
        (
            "another fluid of another system is counted elsewhere",
            |job| {
                fluid(job, "washer water", System::Body);
                job.out_and_back("washer water", State::Low, State::AtLevel);
            },
            &[],
        ),
    ];
    for (name, steps, expected) in rows {
        assert_eq!(told(*steps), *expected, "{name}");
    }
}

#[test]
fn the_mix_after_filling_stands_when_it_is_outside_its_limits() {
    hold(&[
        (
            "measured after filling, too weak",
            |job| {
                coolant_renewed(job, "9.2 L");
                job.proved("mix", ProofIs::CoolantMix, Outcome::Failed);
            },
            Gate::HandOver,
            &["proof-failed:CoolantMix"],
        ),
        (
            "put right and measured again",
            |job| {
                coolant_renewed(job, "9.2 L");
                job.proved("mix", ProofIs::CoolantMix, Outcome::Failed);
                job.proved_instead("again", ProofIs::CoolantMix, Outcome::Held, &["mix"]);
            },
            Gate::HandOver,
            &[],
        ),
        (
            "a good mix measured beside a bad one that it does not name",
            |job| {
                coolant_renewed(job, "9.2 L");
                job.proved("mix", ProofIs::CoolantMix, Outcome::Failed);
                job.proved("again", ProofIs::CoolantMix, Outcome::Held);
            },
            Gate::HandOver,
            &["proof-failed:CoolantMix"],
        ),
        (
            "a leak test takes the place of no mix",
            |job| {
                coolant_renewed(job, "9.2 L");
                job.proved("mix", ProofIs::CoolantMix, Outcome::Failed);
                job.proved_instead("hold", ProofIs::LeakTest, Outcome::Held, &["mix"]);
            },
            Gate::HandOver,
            &["proof-failed:CoolantMix"],
        ),
        (
            "it does not stop a road test",
            |job| {
                coolant_renewed(job, "9.2 L");
                job.proved("mix", ProofIs::CoolantMix, Outcome::Failed);
            },
            Gate::Road,
            &[],
        ),
        (
            "a good mix asks for nothing",
            |job| {
                coolant_renewed(job, "9.2 L");
                job.proved("mix", ProofIs::CoolantMix, Outcome::Held);
            },
            Gate::HandOver,
            &[],
        ),
    ]);
}

#[test]
fn the_leak_proof_stands_when_the_cooling_system_was_opened() {
    hold(&[
        (
            "coolant drained and filled: missing",
            |job| {
                fluid(job, "coolant", System::Cooling);
                job.out_and_back("coolant", State::Low, State::AtLevel);
                drained(job, "coolant", "5.5 L");
                poured(job, "coolant", "5.5 L");
                job.done(WorkIs::Bleed, Some("coolant"));
                job.level("coolant", LevelAt::Warm);
                job.done(WorkIs::LookForLeaks, None);
                job.road_tested();
                job.by("rui").checked(CheckIs::SecondPerson, &["coolant"]);
            },
            Gate::HandOver,
            &["proof-missing:LeakTest"],
        ),
        (
            "it leaks",
            |job| {
                coolant_renewed(job, "9.2 L");
                job.proved_instead("hold", ProofIs::LeakTest, Outcome::Failed, &["leak"]);
            },
            Gate::HandOver,
            &["proof-failed:LeakTest"],
        ),
        (
            "it leaked, was mended and holds",
            |job| {
                coolant_renewed(job, "9.2 L");
                job.proved_instead("hold", ProofIs::LeakTest, Outcome::Failed, &["leak"]);
                job.proved_instead("again", ProofIs::LeakTest, Outcome::Held, &["hold"]);
            },
            Gate::HandOver,
            &[],
        ),
        (
            "a hose clip off and on opened it",
            |job| {
                job.one("hose clip", Kind::Clips, System::Cooling, Zone::Above);
                job.out_and_back("hose clip", State::Out, State::On);
                job.road_tested();
            },
            Gate::HandOver,
            &["proof-missing:LeakTest"],
        ),
        (
            "the fan's plug did not open it",
            |job| {
                job.one("fan plug", Kind::Connector, System::Cooling, Zone::Above);
                job.out_and_back("fan plug", State::Unplugged, State::Plugged);
                job.road_tested();
                job.by("rui").checked(CheckIs::SecondPerson, &["fan plug"]);
            },
            Gate::HandOver,
            &[],
        ),
        (
            "nor did the shroud",
            |job| {
                job.one("shroud", Kind::Cover, System::Cooling, Zone::Above);
                job.out_and_back("shroud", State::Off, State::On);
                job.road_tested();
                job.by("rui").checked(CheckIs::SecondPerson, &["shroud"]);
            },
            Gate::HandOver,
            &[],
        ),
        (
            "the fan's plug off and on after the leak test does not undo it",
            |job| {
                job.one("fan plug", Kind::Connector, System::Cooling, Zone::Above);
                coolant_renewed(job, "9.2 L");
                job.out_and_back("fan plug", State::Unplugged, State::Plugged);
                job.road_tested();
                job.by("rui").checked(CheckIs::SecondPerson, &["fan plug"]);
            },
            Gate::HandOver,
            &[],
        ),
    ]);
}

#[test]
fn rule_9_an_amount_that_cannot_be_read_is_not_known() {
    hold(&[
        (
            "poured in words: how much is in is not known",
            |job| coolant_renewed(job, "a good splash of"),
            Gate::HandOver,
            &["amount-unread:coolant"],
        ),
        (
            "poured in words, the level seen cold since",
            |job| {
                coolant_renewed(job, "about 9");
                job.level("coolant", LevelAt::Cold);
            },
            Gate::HandOver,
            &[],
        ),
        (
            "drained, and only what went in was noted: nothing was caught",
            |job| {
                fluid(job, "coolant", System::Cooling);
                job.moved("coolant", &[], State::Low);
                poured(job, "coolant", "some");
            },
            Gate::Lower,
            &["not-caught:coolant"],
        ),
    ]);
}
