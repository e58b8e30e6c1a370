//! How a sum was found, line by line, for whoever opens it.

use crate::bill::{Share, Taxing, bills};
use crate::entry::{Entry, Payer, TaxRule};
use crate::round::By;
use crate::totals::{TooLarge, Totals, amount};
use measure::{Line, Source, Working};
use rust_decimal::Decimal;

/// How a payer's sum was found: each entry, each tax, what was written down, the total that
/// stands.
///
/// ```
/// use price::{Charge, Entry, Payer, Taxing, totals, working};
/// let part = Entry {
///     line: None,
///     charge: Charge::Part,
///     label: None,
///     quantity: 2.into(),
///     each: "10.05".parse().unwrap(),
///     payer: Payer::Customer,
///     less: Vec::new(),
/// };
/// let total = totals(std::slice::from_ref(&part), &[], 2).unwrap()[&Payer::Customer].clone();
/// let none = Taxing::default();
/// let text = working(&[part], &none, Payer::Customer, 0.into(), &total, 2).text();
/// assert!(text.contains("20.10"), "{text}");
/// ```
#[must_use]
pub fn working(
    entries: &[Entry],
    taxing: &Taxing,
    payer: Payer,
    written_down: Decimal,
    total: &Totals,
    minor_digits: u32,
) -> Working {
    let own: Vec<Entry> = entries
        .iter()
        .filter(|entry| entry.payer == payer)
        .cloned()
        .collect();
    let mut out = Working::new("What it comes to");
    for entry in &own {
        out = out.line(of_entry(entry, minor_digits));
    }
    match bills(&own, taxing, minor_digits) {
        Err(too_large) => out = out.remark(too_large.to_string()),
        Ok(mut all) => {
            let shares = all.remove(&payer).unwrap_or_default().shares;
            for share in shares {
                let rule = taxing.taxes.iter().find(|rule| rule.name == share.name);
                out = out.line(of_share(&share, rule, taxing));
            }
        }
    }
    if !written_down.is_zero() {
        out = out.line(
            Line::new("written down, before tax", Source::derived())
                .value(written_down.to_string()),
        );
    }
    let Totals { net, tax, gross } = total;
    out.line(
        Line::new("total", Source::derived())
            .formula("total", "before tax + tax")
            .input("before tax", net.to_string())
            .input("tax", tax.to_string())
            .value(gross.to_string()),
    )
}

fn of_entry(entry: &Entry, minor_digits: u32) -> Line {
    let said = |sum: Result<Decimal, TooLarge>| {
        sum.map_or_else(|too_large| too_large.to_string(), |sum| sum.to_string())
    };
    let formula = if entry.less.is_empty() {
        "quantity × price of one, rounded half away from zero"
    } else {
        "quantity × price of one, rounded half away from zero, less what is taken off"
    };
    let mut line = Line::new(entry.charge.name(), Source::given())
        .formula("amount", formula)
        .input(
            "quantity",
            entry.quantity.round_dp(4).normalize().to_string(),
        )
        .input("price of one", entry.each.to_string());
    for less in &entry.less {
        let name = if less.of_order {
            "its share of the discount on the order"
        } else {
            "discount"
        };
        let percent = less
            .percent
            .map(|percent| format!(" ({} %)", percent.normalize()));
        line = line.input(
            name,
            format!("{}{}", less.amount, percent.unwrap_or_default()),
        );
    }
    line.value(said(amount(entry, minor_digits)))
}

fn of_share(share: &Share, rule: Option<&TaxRule>, taxing: &Taxing) -> Line {
    let (included, compound) = rule.map_or((false, false), |rule| (rule.included, rule.compound));
    let what = match (included, compound) {
        (false, false) => "sum it falls on × per cent ÷ 100",
        (false, true) => "sum it falls on, with the taxes before it × per cent ÷ 100",
        (true, false) => "taken out of the price: price × per cent ÷ (100 + per cent in the price)",
        (true, true) => "taken out of the price, on the taxes before it",
    };
    let place = match taxing.rounding.by {
        By::Total => "once",
        By::Line => "on each line",
    };
    let formula = format!("{what}, {}, {place}", taxing.rounding.round.name());
    let line = Line::new(share.name.clone(), Source::given())
        .formula("tax", formula)
        .input("sum it falls on", share.base.to_string())
        .input("per cent", share.percent.normalize().to_string())
        .value(share.tax.to_string());
    if share.exempt {
        line.note("not asked: the payer is exempt")
    } else {
        line
    }
}
