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
                let after = job.seen("coolant");
                job.record(Fact::LevelSeen {
                    item: ItemId::new("coolant"),
                    level: LevelAt::Cold,
                    good: false,
                    reading: Some(written("20 mm below")),
                    temperature: None,
                    after,
                });
            },
            Gate::HandOver,
            &["much-missing:coolant", "owed:LevelCold:coolant"],
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
