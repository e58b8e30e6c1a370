//! Credit notes, discounts, cash to the coin: what an order's sums come to by these.

use crate::support::*;
use price::{Charge, Coin, CreditLine, Entry, Less, Payer, Round, Terms};
use repair::*;
use rust_decimal::Decimal;

fn cents(cents: i64) -> Decimal {
    Decimal::new(cents, 2)
}

fn part(name: u8, each: i64, payer: Payer) -> Entry {
    Entry {
        line: None,
        charge: Charge::Part,
        label: Some([name; 32]),
        quantity: 1.into(),
        each: cents(each),
        payer,
        less: Vec::new(),
    }
}

/// Two lines of 100.05 and 50.00 at 19 %, agreed, charged.
fn charged() -> (Job, CommandId) {
    let mut job = Job::new();
    job.tax(19);
    job.consented(ConsentStep::Repair, Some(1000));
    let entries = vec![
        part(1, 10_005, Payer::Customer),
        part(2, 5_000, Payer::Customer),
        part(3, 999, Payer::Goodwill),
    ];
    let after = job.price_seen();
    job.ask(Request::Price { entries, after }).unwrap();
    let invoice = job.charged().unwrap();
    (job, invoice)
}

fn back(line: u32, amount: i64) -> CreditLine {
    CreditLine {
        line,
        amount: cents(amount),
        keeps_tax: false,
    }
}

fn credit(job: &mut Job, invoice: &CommandId, lines: &[CreditLine]) -> Result<CommandId, Refusal> {
    job.ask(Request::Credit {
        invoice: invoice.clone(),
        payer: Payer::Customer,
        lines: lines.to_vec(),
        words: words(9),
    })
}

fn left(job: &Job) -> String {
    let stands = papers::balance(&job.order, Payer::Customer).unwrap();
    price::rounded(stands.left, 2).to_string()
}

#[test]
fn an_invoice_is_taken_back_bit_by_bit_and_stays_as_it_was_written() {
    let (mut job, invoice) = charged();
    // 150.05 and 28.51 tax.
    assert_eq!(left(&job), "178.56");
    let before = papers::price(&job.order).unwrap().invoices;
    job.credits_from(7);
    credit(&mut job, &invoice, &[back(0, 5_000)]).unwrap();
    assert_eq!(left(&job), "119.06");
    job.credits_from(8);
    credit(&mut job, &invoice, &[back(0, 5_005), back(1, 5_000)]).unwrap();
    assert_eq!(left(&job), "0.00");
    let now = papers::price(&job.order).unwrap();
    assert_eq!(now.invoices, before);
    let numbers: Vec<u64> = now.credits.iter().map(|credit| credit.number).collect();
    assert_eq!(numbers, [7, 8]);
    let tax: Decimal = now
        .credits
        .iter()
        .map(|credit| credit.credit.totals.tax)
        .sum();
    assert_eq!(tax, cents(2_851));
    assert!(now.charged());
    // Money that was paid is then to be given back.
    job.paid(100, PaidBy::Card);
    assert_eq!(left(&job), "-100.00");
    job.paid(-100, PaidBy::Card);
    assert_eq!(left(&job), "0.00");
}

#[test]
fn no_more_goes_back_than_was_charged_and_not_of_nothing() {
    let (mut job, invoice) = charged();
    let said = |refused: Result<CommandId, Refusal>| refused.unwrap_err().to_string();
    assert!(said(credit(&mut job, &invoice, &[back(1, 5_001)])).starts_with("line 2: "));
    assert!(said(credit(&mut job, &invoice, &[back(2, 1)])).starts_with("line 3: "));
    assert!(said(credit(&mut job, &invoice, &[])).starts_with("credit note: "));
    assert!(said(credit(&mut job, &invoice, &[back(0, -100)])).starts_with("line 1: "));
    credit(&mut job, &invoice, &[back(1, 5_000)]).unwrap();
    assert!(said(credit(&mut job, &invoice, &[back(1, 1)])).starts_with("line 2: "));
    let other = CommandId::new("no such");
    let payer = Payer::Customer;
    assert_eq!(
        credit(&mut job, &other, &[back(0, 1)]),
        Err(Refusal::NoSuchInvoice { payer })
    );
    // The shop writes itself none.
    let payer = Payer::Goodwill;
    let lines = vec![back(0, 1)];
    let own = Request::Credit {
        invoice,
        payer,
        lines,
        words: words(9),
    };
    assert_eq!(job.ask(own), Err(Refusal::NoSuchInvoice { payer }));
}

#[test]
fn what_went_back_leaves_room_under_what_was_agreed() {
    let (mut job, invoice) = charged();
    job.consented(ConsentStep::Add, Some(160));
    let more = vec![part(4, 5_000, Payer::Customer)];
    let after = job.price_seen();
    job.ask(Request::Price {
        entries: more,
        after,
    })
    .unwrap();
    assert!(matches!(job.charged(), Err(Refusal::OverCeiling { .. })));
    credit(&mut job, &invoice, &[back(1, 5_000)]).unwrap();
    job.charged().unwrap();
}

#[test]
fn much_is_taken_back_when_the_vehicle_is_gone() {
    let mut job = Job::new();
    job.papers_in_order();
    job.road_tested();
    job.hand_over().unwrap();
    let invoice = papers::price(&job.order).unwrap().invoices[0]
        .command
        .clone();
    credit(&mut job, &invoice, &[back(0, 5_000)]).unwrap();
}

#[test]
fn paid_in_cash_to_the_coin_leaves_nothing_to_pay() {
    let (mut job, _) = charged();
    job.paid(178, PaidBy::Cash);
    assert_eq!(left(&job), "0.56");
    let smallest = Decimal::ONE;
    let terms = Terms {
        coin: Some(Coin {
            smallest,
            round: Round::HalfUp,
        }),
        ..Terms::default()
    };
    let mut job = Job::new();
    job.terms = terms;
    job.consented(ConsentStep::Repair, Some(1000));
    let after = job.price_seen();
    let entries = vec![part(1, 17_856, Payer::Customer)];
    job.ask(Request::Price { entries, after }).unwrap();
    job.charged().unwrap();
    job.paid(100, PaidBy::Card);
    assert_eq!(left(&job), "78.56");
    job.paid(79, PaidBy::Cash);
    assert_eq!(left(&job), "0.00");
    assert!(!keys(&job.answer(Gate::HandOver).papers).contains(&"unpaid".to_owned()));
}

#[test]
fn a_discount_with_its_reason_stands_on_its_line() {
    let mut job = Job::new();
    job.tax(10);
    let less = Less {
        amount: cents(1_000),
        percent: Some(10.into()),
        why: [5; 32],
        of_order: false,
    };
    let off = |amount: i64| Entry {
        less: vec![Less {
            amount: cents(amount),
            ..less
        }],
        ..part(1, 10_000, Payer::Customer)
    };
    let after = job.price_seen();
    job.ask(Request::Price {
        entries: vec![off(1_000)],
        after,
    })
    .unwrap();
    let now = papers::price(&job.order).unwrap();
    assert_eq!(now.totals[&Payer::Customer].gross.to_string(), "99.00");
    // Twice as many: twice as much is taken off.
    let two = Entry {
        quantity: 2.into(),
        ..off(1_000)
    };
    let after = job.price_seen();
    job.ask(Request::Price {
        entries: vec![two],
        after,
    })
    .unwrap();
    let now = papers::price(&job.order).unwrap();
    assert_eq!(now.totals[&Payer::Customer].net.to_string(), "180.00");
    let in_money = |amount: i64| {
        let mut entry = off(amount);
        entry.less[0].percent = None;
        entry
    };
    for bad in [in_money(10_001), in_money(-1)] {
        let after = job.price_seen();
        let refused = job.ask(Request::Price {
            entries: vec![bad],
            after,
        });
        assert!(
            matches!(refused, Err(Refusal::BadEntry { nth: 0, .. })),
            "{refused:?}"
        );
    }
}
