//! Rule 5: papers stand apart.

use crate::support::*;
use price::Payer;
use repair::*;

/// Papers: their keys, each with whether it shuts.
fn papers(job: &Job) -> Vec<(String, bool)> {
    job.answer(Gate::HandOver)
        .papers
        .iter()
        .map(|reason| (reason.key.0.clone(), reason.shuts()))
        .collect()
}

/// What is found on the way goes on top: nobody has to know the rest of the price.
#[test]
fn an_entry_is_added_to_the_price_that_stands() {
    let mut job = Job::new();
    let entry = |each: i64| price::Entry {
        line: None,
        charge: price::Charge::Labour,
        label: None,
        quantity: 1.into(),
        each: each.into(),
        payer: Payer::Customer,
    };
    let add = |each| Request::AddToPrice {
        entries: vec![entry(each)],
    };
    job.ask(add(30)).unwrap();
    job.ask(add(12)).unwrap();
    let now = papers::price(&job.order).unwrap();
    assert_eq!(now.entries, vec![entry(30), entry(12)]);
    assert_eq!(now.totals[&Payer::Customer].net, 42.into());
    let bad = Request::AddToPrice {
        entries: vec![price::Entry {
            quantity: 0.into(),
            ..entry(1)
        }],
    };
    assert!(matches!(
        job.ask(bad),
        Err(Refusal::BadEntry { nth: 2, .. })
    ));
}

#[test]
fn rule_5_papers_stand_apart() {
    type Row = (&'static str, fn(&mut Job), &'static [(&'static str, bool)]);
    let rows: [Row; 15] = [
        ("no price", |_| {}, &[("not-priced", true)]),
        (
            "nobody agreed",
            |job| job.priced(100),
            &[
                ("no-consent:Customer", false),
                ("not-charged", true),
                ("unpaid", true),
            ],
        ),
        (
            "over the ceiling shows, and does not itself block",
            |job| {
                job.consented(ConsentStep::Repair, Some(80));
                job.priced(100);
                job.paid(100, PaidBy::Cash);
            },
            &[("over-ceiling:Customer", false), ("not-charged", true)],
        ),
        (
            "written down to the ceiling in one go",
            |job| {
                job.consented(ConsentStep::Repair, Some(80));
                job.priced(100);
                job.ask(Request::WriteDown {
                    payer: Payer::Customer,
                })
                .unwrap();
                job.ask(Request::Charge).unwrap();
                job.paid(80, PaidBy::Cash);
            },
            &[],
        ),
        (
            "a yes to more that names no sum",
            |job| {
                job.consented(ConsentStep::Repair, Some(80));
                job.consented(ConsentStep::TakeApart, None);
                job.priced(80);
                job.ask(Request::Charge).unwrap();
                job.paid(80, PaidBy::Cash);
            },
            &[],
        ),
        (
            "not all paid",
            |job| {
                job.papers_in_order();
                job.paid(-1, PaidBy::Card);
            },
            &[("unpaid", true)],
        ),
        (
            "on account",
            |job| {
                job.consented(ConsentStep::Repair, Some(100));
                job.priced(100);
                job.ask(Request::Charge).unwrap();
                job.paid(100, PaidBy::OnAccount);
            },
            &[],
        ),
        (
            "priced anew after the invoice",
            |job| {
                job.papers_in_order();
                job.priced(90);
            },
            &[("not-charged", true)],
        ),
        (
            "agreed to less after the invoice, and written down to it",
            |job| {
                job.papers_in_order();
                job.consented(ConsentStep::Repair, Some(80));
                job.ask(Request::WriteDown {
                    payer: Payer::Customer,
                })
                .unwrap();
            },
            &[("not-charged", true)],
        ),
        (
            "the keys hang here",
            |job| {
                job.papers_in_order();
                job.record(Fact::Keys {
                    step: KeyStep::Taken,
                    words: None,
                });
            },
            &[("keys-here", true)],
        ),
        (
            "the warranty pays: it must agree, and its sum is no balance at the counter",
            |job| priced_for(job, Payer::Warranty),
            &[("no-consent:Warranty", false), ("not-charged", true)],
        ),
        (
            "goodwill asks nobody",
            |job| {
                priced_for(job, Payer::Goodwill);
                job.ask(Request::Charge).unwrap();
            },
            &[],
        ),
        (
            "the customer's yes is none of the warranty's",
            |job| {
                job.consented(ConsentStep::Repair, Some(500));
                priced_for(job, Payer::Warranty);
            },
            &[("no-consent:Warranty", false), ("not-charged", true)],
        ),
        (
            "declined at the counter: only the look-over is owed",
            |job| {
                job.consented(ConsentStep::Diagnose, Some(90));
                job.priced(90);
                job.ask(Request::Charge).unwrap();
            },
            &[("unpaid", true)],
        ),
        (
            "a complaint without cause or correction",
            |job| {
                job.papers_in_order();
                job.record(Fact::LineOpened {
                    line: LineId::new("1"),
                    complaint: words(7),
                    payer: Payer::Customer,
                    about: vec![],
                });
            },
            &[("line:1", false)],
        ),
    ];
    for (name, steps, expected) in rows {
        let mut job = Job::new();
        steps(&mut job);
        let found = papers(&job);
        let found: Vec<_> = found
            .iter()
            .map(|(key, shuts)| (key.as_str(), *shuts))
            .collect();
        assert_eq!(found, expected, "{name}");
        assert_eq!(
            job.shut(Gate::HandOver),
            Vec::<String>::new(),
            "{name}: fit to go"
        );
        for gate in &Gate::ALL[..5] {
            assert!(
                job.answer(*gate).papers.is_empty(),
                "{name}: only at hand-over"
            );
        }
    }
}

fn priced_for(job: &mut Job, payer: Payer) {
    job.ask(Request::Price {
        entries: vec![price::Entry {
            line: None,
            charge: price::Charge::Labour,
            label: None,
            quantity: 1.into(),
            each: 100.into(),
            payer,
        }],
    })
    .unwrap();
}

/// Being over blocks the charge, and no gate of the technician's.
#[test]
fn rule_5_over_the_ceiling_keeps_no_vehicle_from_the_road() {
    let mut job = Job::new();
    job.consented(ConsentStep::Repair, Some(80));
    job.priced(100);
    for gate in Gate::ALL {
        assert_eq!(job.shut(gate), Vec::<String>::new(), "{gate:?}");
    }
    for gate in &Gate::ALL[..5] {
        assert!(job.answer(*gate).may(), "{gate:?}");
    }
}

#[test]
fn rule_5_over_the_ceiling_blocks_the_charge() {
    let mut job = Job::new();
    job.consented(ConsentStep::Repair, Some(80));
    job.priced(100);
    let refused = job.ask(Request::Charge);
    assert!(
        matches!(&refused, Err(Refusal::OverCeiling { payer: Payer::Customer, over }) if over.by == 20.into()),
        "{refused:?}"
    );
    job.consented(ConsentStep::Add, Some(100));
    job.ask(Request::Charge).unwrap();
    assert_eq!(
        job.ask(Request::WriteDown {
            payer: Payer::Customer
        }),
        Err(Refusal::NothingToWriteDown)
    );
}
