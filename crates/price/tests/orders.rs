//! Random orders: whichever way their sums are added, they agree to the coin.

use price::{
    Billed, By, Ceiling, Charge, Credit, CreditLine, Entry, Exemption, Payer, Portion, Round,
    TaxOn, TaxRounding, TaxRule, Taxing, amount, bills, off_order, write_down,
};
use proptest::prelude::*;
use proptest::sample::select;
use rust_decimal::Decimal;

fn charge() -> impl Strategy<Value = Charge> {
    select(Charge::ALL.to_vec())
}

fn payer() -> impl Strategy<Value = Payer> {
    select(vec![
        Payer::Customer,
        Payer::Customer,
        Payer::Warranty,
        Payer::Goodwill,
    ])
}

prop_compose! {
    fn entry()(charge in charge(), payer in payer(), quantity in 1i64..4_000, each in -5_000i64..50_000) -> Entry {
        Entry {
            line: None,
            charge,
            label: None,
            quantity: Decimal::new(quantity, 3),
            each: Decimal::new(each, 2),
            payer,
            less: Vec::new(),
        }
    }
}

prop_compose! {
    fn rule(nth: usize)(
        percent in 0i64..30_000, kinds in proptest::collection::vec(charge(), 0..4),
        flags in any::<[bool; 5]>(), payers in proptest::collection::vec(payer(), 0..2),
    ) -> TaxRule {
        let [labour, parts, other, compound, included] = flags;
        TaxRule {
            kinds,
            payers,
            compound,
            included,
            ..TaxRule::on_top(format!("tax {nth}"), Decimal::new(percent, 3), TaxOn { labour, parts, other })
        }
    }
}

prop_compose! {
    fn taxing()(
        taxes in (0usize..4).prop_flat_map(|many| (0..many).map(rule).collect::<Vec<_>>()),
        round in select(vec![Round::HalfUp, Round::HalfDown, Round::HalfEven, Round::Down, Round::Up]),
        by in select(vec![By::Total, By::Line]),
        exempt in proptest::option::of(any::<bool>()),
    ) -> Taxing {
        let exempt = exempt.map(|all| Exemption {
            number: [1; 32],
            taxes: if all { Vec::new() } else { taxes.iter().take(1).map(|tax| tax.name.clone()).collect() },
        });
        Taxing { taxes, rounding: TaxRounding { round, by }, exempt }
    }
}

fn order() -> impl Strategy<Value = Vec<Entry>> {
    proptest::collection::vec(entry(), 1..10)
}

proptest! {
    /// By taxes, by payers, by lines, and in any sequence: the sums are the same.
    #[test]
    fn sums_agree_whichever_way_they_are_added(
        (entries, mixed) in order().prop_flat_map(|order| (Just(order.clone()), Just(order).prop_shuffle())),
        taxing in taxing(), digits in select(vec![0u32, 2, 3]),
    ) {
        let all = bills(&entries, &taxing, digits).unwrap();
        prop_assert_eq!(&all, &bills(&mixed, &taxing, digits).unwrap());
        for (payer, bill) in &all {
            let own: Vec<Entry> = entries.iter().filter(|entry| entry.payer == *payer).cloned().collect();
            prop_assert_eq!(&bills(&own, &taxing, digits).unwrap()[payer], bill);
            let taxes: Decimal = bill.shares.iter().map(|share| share.tax).sum();
            prop_assert_eq!(taxes, bill.totals.tax);
            prop_assert_eq!(bill.totals.net + bill.totals.tax, bill.totals.gross);
            let prices: Decimal = own.iter().map(|entry| amount(entry, digits).unwrap()).sum();
            let included = |name: &str| taxing.taxes.iter().any(|tax| tax.name == name && tax.included);
            if taxing.exempt.is_none() {
                let in_price: Decimal = bill.shares.iter().filter(|share| included(&share.name)).map(|share| share.tax).sum();
                prop_assert_eq!(bill.totals.net + in_price, prices);
                if taxing.taxes.iter().all(|tax| tax.included) {
                    // Where every tax is in the price, what is paid is the price.
                    prop_assert_eq!(bill.totals.gross, prices);
                }
            }
            for share in &bill.shares {
                let is_exempt = *payer == Payer::Customer && taxing.exempt.as_ref().is_some_and(|exempt| {
                    exempt.taxes.is_empty() || exempt.taxes.contains(&share.name)
                });
                prop_assert_eq!(share.exempt, is_exempt);
                prop_assert!(!share.exempt || share.tax.is_zero());
            }
        }
    }

    /// The sums that single taxes fall on, and what none falls on, are all there is before tax.
    #[test]
    fn what_is_split_by_tax_adds_up_to_the_sum_before_tax(entries in order(), split in proptest::collection::btree_map(charge(), 0usize..3, 0..8), included in any::<bool>()) {
        let rule = |nth: usize| TaxRule {
            kinds: split.iter().filter(|(_, of)| **of == nth).map(|(charge, _)| *charge).collect(),
            included,
            ..TaxRule::on_top(format!("tax {nth}"), Decimal::from(7 * (nth + 1)), TaxOn { labour: false, parts: false, other: false })
        };
        let taxing = Taxing::of(&[rule(0), rule(1), rule(2)]);
        for bill in bills(&entries, &taxing, 2).unwrap().values() {
            let bases: Decimal = bill.shares.iter().map(|share| share.base).sum();
            prop_assert_eq!(bases + bill.untaxed, bill.totals.net);
            for share in &bill.shares {
                // Each tax is its per cent of its sum, to the coin; taken out of a price, the sum
                // before tax is rounded as well.
                let exact = share.base * share.percent / Decimal::ONE_HUNDRED;
                prop_assert!((exact - share.tax).abs() <= Decimal::new(1, 2), "{exact} {}", share.tax);
            }
        }
    }

    /// Rounded on each line or once, a tax differs by no more than a coin a line.
    #[test]
    fn by_line_and_by_total_differ_by_less_than_a_coin_a_line(entries in order(), percent in 0i64..3_000, included in any::<bool>()) {
        let on = TaxOn { labour: true, parts: true, other: true };
        let rule = TaxRule { included, ..TaxRule::on_top("tax", Decimal::new(percent, 2), on) };
        let of = |by| {
            let rounding = TaxRounding { round: Round::HalfUp, by };
            bills(&entries, &Taxing { rounding, ..Taxing::of(std::slice::from_ref(&rule)) }, 2).unwrap()
        };
        let (once, each) = (of(By::Total), of(By::Line));
        for (payer, bill) in &once {
            let lines = entries.iter().filter(|entry| entry.payer == *payer).count();
            let apart = (bill.totals.tax - each[payer].totals.tax).abs();
            prop_assert!(apart <= Decimal::new(1, 2) * Decimal::from(lines), "{apart}");
        }
    }

    /// Whatever is taken back bit by bit comes to what the invoice came to, tax by tax.
    #[test]
    fn an_invoice_taken_back_bit_by_bit_is_taken_back_whole(
        entries in order(), taxing in taxing(), cuts in proptest::collection::vec(0i64..100, 30),
        agreed in 1i64..20_000, off in 0i64..3_000,
    ) {
        let entries = off_order(&entries, Payer::Customer, Portion::Percent(Decimal::new(off, 2)), [3; 32], 2).unwrap();
        let all = bills(&entries, &taxing, 2).unwrap();
        let Some(bill) = all.get(&Payer::Customer) else { return Ok(()) };
        // Some were written down to what was agreed.
        let ceiling = Ceiling { amount: Decimal::new(agreed, 2), tax_included: true };
        let negative = bill.shares.iter().any(|share| share.tax < Decimal::ZERO);
        let down = write_down(&bill.totals, ceiling, 2).filter(|_| !negative && bill.totals.net > Decimal::ZERO);
        let totals = down.map_or_else(|| bill.totals.clone(), |down| down.after);
        let billed = Billed::of(&entries, &taxing, Payer::Customer, &totals, 2).unwrap();
        let taxes: Decimal = billed.shares.iter().map(|share| share.tax).sum();
        prop_assert_eq!(taxes, totals.tax);
        let mut already: Vec<Credit> = Vec::new();
        let mut cuts = cuts.into_iter();
        for last in [false, false, true] {
            let lines: Vec<CreditLine> = (0u32..).zip(&billed.lines).map(|(line, of)| {
                let left = of.amount - billed.credited(line, &already);
                let cut = Decimal::from(cuts.next().unwrap_or(0)) / Decimal::ONE_HUNDRED;
                let amount = if last { left } else { Round::Down.to_digits(left * cut, 2) };
                CreditLine { line, amount, keeps_tax: false }
            }).collect();
            match billed.credit(&already, &lines) {
                Ok(credit) => already.push(credit),
                Err(fault) => prop_assert!(lines.iter().all(|line| line.amount.is_zero()), "{fault}"),
            }
        }
        let back: Decimal = already.iter().map(|credit| credit.totals.gross).sum();
        let moot = |tax: usize| {
            let on: Decimal = billed.lines.iter().filter(|line| line.has_tax(tax)).map(|line| line.amount).sum();
            on.is_zero()
        };
        let kept: Decimal = billed.shares.iter().enumerate().filter(|(nth, _)| moot(*nth)).map(|(_, share)| share.tax).sum();
        prop_assert_eq!(back + kept, totals.gross);
        for (nth, share) in billed.shares.iter().enumerate().filter(|(nth, _)| !moot(*nth)) {
            let back: Decimal = already.iter().map(|credit| credit.shares[nth].tax).sum();
            prop_assert_eq!(back, share.tax);
        }
        // Nothing is left to take back.
        for line in (0u32..).take(billed.lines.len()) {
            let more = CreditLine { line, amount: Decimal::new(1, 2), keeps_tax: false };
            prop_assert!(billed.credit(&already, &[more]).is_err());
        }
    }
}
