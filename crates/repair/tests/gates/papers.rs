//! Rule 5: papers stand apart.

use crate::support::*;
use price::Payer;
use repair::*;
use rust_decimal::Decimal;
use std::collections::BTreeMap;

/// Papers: their keys, each with whether it shuts.
fn papers(job: &Job) -> Vec<(String, bool)> {
    job.answer(Gate::HandOver)
        .papers
        .iter()
        .map(|reason| (spelled(&reason.key), reason.shuts()))
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
        less: Vec::new(),
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
                job.written_down(Payer::Customer).unwrap();
                job.charged().unwrap();
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
                job.charged().unwrap();
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
                job.charged().unwrap();
                job.paid(100, PaidBy::OnAccount);
            },
            &[],
        ),
        (
            "more work after the invoice: it stays, and the rest takes a second one",
            |job| {
                job.papers_in_order();
                job.consented(ConsentStep::Add, Some(190));
                job.priced(90);
            },
            &[("not-charged", true), ("unpaid", true)],
        ),
        (
            "agreed to less after the invoice: it is written, and stays",
            |job| {
                job.papers_in_order();
                job.consented(ConsentStep::Repair, Some(80));
                let down = job.written_down(Payer::Customer);
                assert_eq!(down, Err(Refusal::NothingToWriteDown));
            },
            &[("over-ceiling:Customer", false)],
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
                job.charged().unwrap();
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
                job.charged().unwrap();
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
            less: Vec::new(),
        }],
        after: job.price_seen(),
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
    let refused = job.charged();
    assert!(
        matches!(&refused, Err(Refusal::OverCeiling { payer: Payer::Customer, over }) if over.by == 20.into()),
        "{refused:?}"
    );
    job.consented(ConsentStep::Add, Some(100));
    job.charged().unwrap();
    assert_eq!(
        job.written_down(Payer::Customer),
        Err(Refusal::NothingToWriteDown)
    );
}

fn named(name: u8, each: i64, payer: Payer) -> price::Entry {
    price::Entry {
        line: None,
        charge: price::Charge::Part,
        label: Some([name; 32]),
        quantity: 1.into(),
        each: each.into(),
        payer,
        less: Vec::new(),
    }
}

fn set(job: &mut Job, entries: &[price::Entry], after: &[CommandId]) -> Result<CommandId, Refusal> {
    job.ask(Request::Price {
        entries: entries.to_vec(),
        after: after.to_vec(),
    })
}

fn prices(job: &Job) -> Vec<(u8, Decimal)> {
    let price = papers::price(&job.order).unwrap();
    let entries = price.entries.iter();
    entries
        .map(|entry| (entry.label.unwrap()[0], entry.each))
        .collect()
}

/// Two desks change one price: neither drops what the other did.
#[test]
fn nobodys_line_is_lost_when_two_change_the_price() {
    let c = Payer::Customer;
    let mut job = Job::new();
    set(&mut job, &[named(1, 10, c), named(2, 20, c)], &[]).unwrap();
    let seen = job.price_seen();
    let first = set(
        &mut job,
        &[named(1, 10, c), named(2, 20, c), named(3, 30, c)],
        &seen,
    );
    set(&mut job, &[named(1, 11, c), named(2, 20, c)], &seen).unwrap();
    let both = [(1, 11.into()), (2, 20.into()), (3, 30.into())];
    assert_eq!(prices(&job), both);
    // Both change the same: the later is asked, and nothing changes.
    let seen = [first.unwrap()];
    let changed = set(
        &mut job,
        &[named(1, 12, c), named(2, 20, c), named(3, 30, c)],
        &seen,
    );
    let Err(Refusal::PriceChanged { clashes, .. }) = changed else {
        panic!("{changed:?}");
    };
    assert_eq!(
        clashes,
        [price::Clash {
            before: Some(named(1, 10, c)),
            yours: Some(named(1, 12, c)),
            theirs: Some(named(1, 11, c)),
        }]
    );
    assert_eq!(prices(&job), both);
}

/// Who names nothing has seen no price: two first prices are not put together in silence.
#[test]
fn two_first_prices_are_shown_side_by_side() {
    let c = Payer::Customer;
    let mut job = Job::new();
    set(&mut job, &[named(1, 10, c)], &[]).unwrap();
    let second = set(&mut job, &[named(2, 12, c)], &[]);
    assert!(
        matches!(&second, Err(Refusal::PriceChanged { clashes, .. }) if clashes.len() == 2),
        "{second:?}"
    );
    assert_eq!(prices(&job), [(1, 10.into())]);
}

/// A write-down is of the sum that its author saw, not of whatever stands when it comes in.
#[test]
fn a_write_down_is_of_what_its_author_saw() {
    let c = Payer::Customer;
    let mut job = Job::new();
    job.consented(ConsentStep::Repair, Some(80));
    set(&mut job, &[named(1, 100, c)], &[]).unwrap();
    let after = job.ask_seen(c);
    let lines = [named(1, 100, c), named(2, 50, c)];
    set(&mut job, &lines, &after).unwrap();
    let down = |after: &[CommandId]| Request::WriteDown {
        payer: c,
        after: after.to_vec(),
    };
    let refused = job.ask(down(&after));
    let Err(Refusal::SumChanged(sums)) = refused else {
        panic!("{refused:?}");
    };
    let seen = sums.seen.clone().unwrap();
    assert_eq!((seen.net, sums.now.net), (100.into(), 150.into()));
    assert!(matches!(job.ask(down(&[])), Err(Refusal::SumChanged(_))));
    // Somebody else has asked for more meanwhile.
    let after = job.ask_seen(c);
    job.consented(ConsentStep::Add, Some(120));
    assert!(matches!(job.ask(down(&after)), Err(Refusal::SumChanged(_))));
    // What another payer's line comes to does not touch it.
    let after = job.ask_seen(c);
    let lines = [
        named(1, 100, c),
        named(2, 50, c),
        named(3, 70, Payer::Warranty),
    ];
    set(&mut job, &lines, &after).unwrap();
    job.ask(down(&after)).unwrap();
    let price = papers::price(&job.order).unwrap();
    assert_eq!(price.totals[&c].net, 120.into());
}

#[test]
fn a_waiver_is_of_the_figure_its_author_saw() {
    let mut job = Job::new();
    job.papers_in_order();
    job.paid(-10, PaidBy::Cash);
    let waive = |figure: &str| Request::Waive {
        gate: Gate::HandOver,
        reason: ReasonKey::Unpaid,
        figure: figure.into(),
        words: words(9),
    };
    // Ten were seen; before it comes in, ninety more went back.
    job.paid(-90, PaidBy::Cash);
    let refused = job.ask(waive("10"));
    assert!(
        matches!(&refused, Err(Refusal::FigureChanged { seen, now }) if seen == "10" && now.figure == "100"),
        "{refused:?}"
    );
    assert!(matches!(
        job.ask(waive("")),
        Err(Refusal::FigureChanged { .. })
    ));
    job.ask(waive("100")).unwrap();
    assert_eq!(papers(&job), [("unpaid".to_owned(), false)]);
}

/// 90 before tax is more than 100 with it, where a fifth is tax: bare numbers say less.
#[test]
fn ceilings_with_and_without_tax_are_compared_in_one_measure() {
    let mut job = Job::new();
    job.tax(20);
    job.consented(ConsentStep::Repair, Some(90));
    job.agreed_with_tax(100);
    job.priced(80);
    let ceiling = papers::ceilings(&job.order)[&Payer::Customer];
    assert_eq!((ceiling.amount, ceiling.tax_included), (100.into(), true));
    let after = job.price_seen();
    set(&mut job, &[named(1, 88, Payer::Customer)], &after).unwrap();
    let refused = job.charged();
    assert!(
        matches!(&refused, Err(Refusal::OverCeiling { over, .. }) if over.by == "5.60".parse().unwrap()),
        "{refused:?}"
    );
}

/// "Charge 1440.00 and no more" gives 1440.00; and 850.00, which no net sum with 19 per cent
/// on it comes to: 714.28 makes 849.99, and 714.29 makes 850.01.
#[test]
fn a_write_down_to_a_sum_with_tax_comes_to_that_sum() {
    for (priced, agreed) in [(1300, 1440), (1000, 850)] {
        let mut job = Job::new();
        job.tax(19);
        job.agreed_with_tax(agreed);
        job.priced(priced);
        job.written_down(Payer::Customer).unwrap();
        job.charged().unwrap();
        let price = papers::price(&job.order).unwrap();
        let gross = price.totals[&Payer::Customer].gross.to_string();
        assert_eq!(gross, format!("{agreed}.00"));
    }
}

/// A line added later goes on a second invoice: the first keeps its lines, its write-down
/// and its number.
#[test]
fn a_written_invoice_stays_as_it_is() {
    let c = Payer::Customer;
    let mut job = Job::new();
    job.consented(ConsentStep::Repair, Some(80));
    set(&mut job, &[named(1, 100, c)], &[]).unwrap();
    job.written_down(c).unwrap();
    job.charged().unwrap();
    let first = papers::price(&job.order).unwrap().invoices;
    assert_eq!(job.charged(), Err(Refusal::NothingToCharge));
    let after = job.price_seen();
    set(&mut job, &[named(2, 50, c)], &after).unwrap();
    let now = papers::price(&job.order).unwrap();
    assert_eq!(now.invoices, first, "the first is as it was");
    assert_eq!(now.totals[&c].net, 130.into(), "80 and 50");
    assert_eq!(now.written_down.get(&c), None);
    assert!(!now.charged());
    assert!(matches!(job.charged(), Err(Refusal::OverCeiling { .. })));
    job.consented(ConsentStep::Add, Some(130));
    job.numbers_from(2).charged().unwrap();
    let now = papers::price(&job.order).unwrap();
    let numbers: Vec<_> = now.invoices.iter().map(|one| one.numbers[&c]).collect();
    assert_eq!(numbers, [1, 2]);
    assert_eq!(now.invoices[0], first[0]);
    assert_eq!(now.totals[&c].net, 130.into());
    // What is on an invoice is not charged twice by somebody who had not seen it.
    let after = job.price_seen();
    let again = set(&mut job, &[named(1, 100, c)], &after);
    assert!(
        matches!(again, Err(Refusal::BadEntry { nth: 0, .. })),
        "{again:?}"
    );
}

/// What was written down stays so when a line comes to it, and no more is charged than was
/// agreed.
#[test]
fn a_line_added_keeps_what_was_written_down() {
    let c = Payer::Customer;
    let mut job = Job::new();
    job.consented(ConsentStep::Repair, Some(80));
    set(&mut job, &[named(1, 100, c)], &[]).unwrap();
    job.written_down(c).unwrap();
    job.ask(Request::AddToPrice {
        entries: vec![named(2, 15, c)],
    })
    .unwrap();
    let now = papers::price(&job.order).unwrap();
    assert_eq!(
        (now.totals[&c].net, now.written_down[&c]),
        (95.into(), 20.into())
    );
    // Agreed to up to 110 in all: of the 115 only 5 are taken off.
    job.consented(ConsentStep::Add, Some(110));
    let after = job.price_seen();
    set(&mut job, &[named(1, 100, c), named(2, 15, c)], &after).unwrap();
    let now = papers::price(&job.order).unwrap();
    assert_eq!(
        (now.totals[&c].net, now.written_down[&c]),
        (110.into(), 5.into())
    );
}

/// An invoice that a later price had unwritten, before invoices stayed, still reads so.
#[test]
fn what_was_written_before_invoices_stayed_reads_as_it_did() {
    let c = Payer::Customer;
    let mut job = Job::new();
    let totals = |net: i64| -> BTreeMap<Payer, price::Totals> {
        let sums = price::Totals {
            net: net.into(),
            tax: 0.into(),
            gross: net.into(),
        };
        [(c, sums)].into()
    };
    let old_price = |net: i64| Decision::Priced {
        entries: vec![named(1, net, c)],
        taxes: vec![],
        totals: totals(net),
        written_down: BTreeMap::new(),
        invoiced: vec![],
        after: vec![],
        terms: None,
    };
    let old_charge = |net: i64| Decision::Charged {
        totals: totals(net),
        written_down: BTreeMap::new(),
        numbers: BTreeMap::new(),
    };
    let down = Decision::WrittenDown {
        payer: c,
        amount: 5.into(),
        left: None,
        after: vec![],
    };
    let read = |job: &Job| {
        let price = papers::price(&job.order).unwrap();
        (price.totals[&c].net, price.charged(), price.invoices.len())
    };
    let steps = [
        (old_price(100), (100.into(), false, 0)),
        (old_charge(100), (100.into(), true, 1)),
        (old_price(90), (90.into(), false, 0)),
        (old_charge(90), (90.into(), true, 1)),
        (down, (85.into(), false, 0)),
        (old_charge(85), (85.into(), true, 1)),
        (old_charge(85), (85.into(), true, 1)),
    ];
    for (decision, expected) in steps {
        job.file(Event::Decision(decision.clone()));
        assert_eq!(read(&job), expected, "{decision:?}");
    }
}

#[test]
fn sums_beyond_all_measure_and_rates_below_nought_are_refused() {
    let c = Payer::Customer;
    let mut job = Job::new();
    let rate = price::Entry {
        charge: price::Charge::Labour,
        ..named(1, -5, c)
    };
    let refused = set(&mut job, &[rate], &[]);
    assert!(
        matches!(refused, Err(Refusal::BadEntry { nth: 0, .. })),
        "{refused:?}"
    );
    job.tax(1_000_000);
    let most = 999_999_999;
    let refused = set(&mut job, &[named(1, most, c)], &[]);
    assert_eq!(refused, Err(Refusal::TooLarge));
    assert_eq!(papers::price(&job.order), None);
}

/// Whoever saw an answer that is taken back since has seen past the answer before it.
#[test]
fn an_answer_taken_back_still_passes_on_what_its_author_had_seen() {
    let mut job = Job::new();
    let agreed = |amount: i64, after: &[&CommandId]| Fact::Consented {
        step: ConsentStep::Repair,
        payer: Payer::Customer,
        lines: vec![],
        agreed: true,
        amount: Some(amount.into()),
        tax_included: false,
        way: Way::Phone,
        person: None,
        said: None,
        number_called: None,
        signature: None,
        after: after.iter().map(|seen| (*seen).clone()).collect(),
    };
    let first = job.record(agreed(100, &[]));
    let slip = job.record(agreed(120, &[&first]));
    job.record(agreed(150, &[&slip]));
    job.record(Fact::Undo {
        command: slip,
        part: None,
    });
    let ceiling = papers::ceilings(&job.order)[&Payer::Customer];
    assert_eq!(ceiling.amount, Decimal::from(150));
}
