//! How a sum was found, line by line, for whoever opens it.

use crate::entry::{Charge, Entry, Payer, TaxRule};
use crate::totals::{TooLarge, Totals, amount, tax_on};
use measure::{Line, Source, Working};
use rust_decimal::Decimal;

/// How a payer's sum was found: each entry, each tax, what was written down, the total that
/// stands.
///
/// ```
/// use price::{Charge, Entry, Payer, totals, working};
/// let part = Entry {
///     line: None,
///     charge: Charge::Part,
///     label: None,
///     quantity: 2.into(),
///     each: "10.05".parse().unwrap(),
///     payer: Payer::Customer,
/// };
/// let total = totals(std::slice::from_ref(&part), &[], 2).unwrap()[&Payer::Customer].clone();
/// let text = working(&[part], &[], Payer::Customer, 0.into(), &total, 2).text();
/// assert!(text.contains("20.10"), "{text}");
/// ```
#[must_use]
pub fn working(
    entries: &[Entry],
    taxes: &[TaxRule],
    payer: Payer,
    written_down: Decimal,
    total: &Totals,
    minor_digits: u32,
) -> Working {
    let said = |sum: Result<Decimal, TooLarge>| {
        sum.map_or_else(|too_large| too_large.to_string(), |sum| sum.to_string())
    };
    let of_payer: Vec<&Entry> = entries
        .iter()
        .filter(|entry| entry.payer == payer)
        .collect();
    let mut out = Working::new("What it comes to");
    for entry in &of_payer {
        out = out.line(
            Line::new(charge_name(entry.charge), Source::given())
                .formula(
                    "amount",
                    "quantity × price of one, rounded half away from zero",
                )
                .input(
                    "quantity",
                    entry.quantity.round_dp(4).normalize().to_string(),
                )
                .input("price of one", entry.each.to_string())
                .value(said(amount(entry, minor_digits))),
        );
    }
    for tax in taxes {
        let base = of_payer
            .iter()
            .filter(|entry| tax.falls_on(entry.charge))
            .try_fold(Decimal::ZERO, |sum, entry| {
                sum.checked_add(amount(entry, minor_digits)?)
                    .ok_or(TooLarge)
            });
        out = out.line(
            Line::new(tax.name.clone(), Source::given())
                .formula("tax", "sum it falls on × per cent ÷ 100, rounded once")
                .input("sum it falls on", said(base))
                .input("per cent", tax.percent.normalize().to_string())
                .value(said(base.and_then(|base| tax_on(base, tax, minor_digits)))),
        );
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

fn charge_name(charge: Charge) -> &'static str {
    match charge {
        Charge::Labour => "labour",
        Charge::Part => "part",
        Charge::Sublet => "work sent out",
        Charge::Supplies => "shop supplies",
        Charge::Core => "core charge",
        Charge::Test => "test",
        Charge::Fee => "fee",
    }
}
