//! How a sum was found, line by line, for whoever opens it.

use crate::bill::{Share, Taxing, bills};
use crate::entry::{Entry, Payer, TaxRule};
use crate::phrases as say;
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
    let mut out = Working::new(say::what_it_comes_to());
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
        out =
            out.line(Line::new(say::written_down(), Source::derived()).value(number(written_down)));
    }
    let Totals { net, tax, gross } = total;
    out.line(
        Line::new(say::total(), Source::derived())
            .formula(say::total(), say::before_tax_and_tax())
            .input(say::before_tax(), number(*net))
            .input(say::tax(), number(*tax))
            .value(number(*gross)),
    )
}

/// A number as a person reads it.
pub(crate) fn number(number: Decimal) -> String {
    phrases::number(&number.to_string())
}

fn of_entry(entry: &Entry, minor_digits: u32) -> Line {
    let said =
        |sum: Result<Decimal, TooLarge>| sum.map_or_else(|too_large| too_large.to_string(), number);
    let formula = if entry.less.is_empty() {
        say::quantity_times_price()
    } else {
        say::quantity_times_price_less()
    };
    let mut line = Line::new(entry.charge.name(), Source::given())
        .formula(say::amount(), formula)
        .input(
            say::quantity(),
            number(entry.quantity.round_dp(4).normalize()),
        )
        .input(say::price_of_one(), number(entry.each));
    for less in &entry.less {
        let name = if less.of_order {
            say::share_of_the_discount()
        } else {
            say::discount()
        };
        let percent = less
            .percent
            .map(|percent| format!(" ({} %)", number(percent.normalize())));
        line = line.input(
            name,
            format!("{}{}", number(less.amount), percent.unwrap_or_default()),
        );
    }
    line.value(said(amount(entry, minor_digits)))
}

fn of_share(share: &Share, rule: Option<&TaxRule>, taxing: &Taxing) -> Line {
    let (included, compound) = rule.map_or((false, false), |rule| (rule.included, rule.compound));
    let what = match (included, compound) {
        (false, false) => say::tax_on_top(),
        (false, true) => say::tax_on_taxes(),
        (true, false) => say::tax_taken_out(),
        (true, true) => say::tax_taken_out_of_taxes(),
    };
    let how = taxing.rounding.round.name();
    let formula = match taxing.rounding.by {
        By::Total => say::rounded_once(what, how),
        By::Line => say::rounded_each_line(what, how),
    };
    let line = Line::new(share.name.clone(), Source::given())
        .formula(say::tax(), formula)
        .input(say::falls_on(), number(share.base))
        .input(say::per_cent(), number(share.percent.normalize()))
        .value(number(share.tax));
    if share.exempt {
        line.note(say::not_asked())
    } else {
        line
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::bands::{Bands, Uplift};
    use crate::credit::Credit;
    use crate::entry::{Charge, Less};
    use crate::extras::Supplies;
    use crate::job::FixedJob;
    use crate::labour::{HoursBy, Rates};
    use crate::round::Coin;
    use phrases::{Language, speaking};

    /// Every working of a price, as it is shown.
    fn all() -> Vec<String> {
        let entry = |charge, quantity: i64, each: i64, less| Entry {
            line: None,
            charge,
            label: None,
            quantity: quantity.into(),
            each: each.into(),
            payer: Payer::Customer,
            less,
        };
        let less = |of_order| Less {
            amount: Decimal::new(1250, 2),
            percent: Some(Decimal::new(25, 1)),
            why: [0; 32],
            of_order,
        };
        let entries = [
            entry(Charge::Labour, 12, 120, vec![less(false), less(true)]),
            entry(Charge::Part, 1, 80, Vec::new()),
        ];
        let taxing = Taxing {
            taxes: vec![TaxRule::on_top(
                "MwSt",
                19.into(),
                crate::entry::TaxOn {
                    labour: true,
                    parts: true,
                    other: true,
                },
            )],
            ..Taxing::default()
        };
        let total = bills(&entries, &taxing, 2).unwrap()[&Payer::Customer]
            .totals
            .clone();
        let supplies = Supplies {
            percent: 8.into(),
            of: vec![Charge::Labour],
            most: Some(25.into()),
        };
        let rates = Rates {
            hour: 100.into(),
            rates: Vec::new(),
        };
        let job = FixedJob {
            name: [0; 32],
            price: 1200.into(),
            parts: Vec::new(),
            in_one: false,
        };
        let coin = Coin {
            smallest: Decimal::new(5, 2),
            round: crate::round::Round::HalfUp,
        };
        [
            working(&entries, &taxing, Payer::Customer, 5.into(), &total, 2),
            supplies.found(&entries, 2).unwrap().working,
            rates
                .labour(None, None, HoursBy::Lesser, Some(90), Some(100))
                .unwrap()
                .working,
            job.working(2),
            Bands::flat(Uplift::Markup(Decimal::new(125, 1)))
                .price(10.into(), 2)
                .unwrap()
                .working,
            coin.working(Decimal::new(1003, 2)),
            Credit {
                lines: Vec::new(),
                shares: Vec::new(),
                totals: total.clone(),
            }
            .working(),
        ]
        .map(|one| one.html())
        .to_vec()
    }

    #[test]
    fn what_is_shown_of_a_price_is_german_with_its_marks() {
        let (english, german) = (all(), speaking(Language::German, all));
        assert!(english[0].contains("1,415.00"), "{}", english[0]);
        assert!(german[0].contains("1.415,00"), "{}", german[0]);
        // Nothing is said the same in both but names of taxes, units and numbers.
        let texts = |html: &str| -> Vec<String> {
            let parts = html.split(['<', '>']);
            let said = parts.filter(|part| part.chars().filter(|c| c.is_alphabetic()).count() > 4);
            said.map(str::to_owned)
                .filter(|part| {
                    !part.starts_with('/') && !["section", "output"].contains(&part.as_str())
                })
                .collect()
        };
        for (english, german) in english.iter().zip(&german) {
            for text in texts(english) {
                assert!(!texts(german).contains(&text), "{text}: {german}");
            }
        }
    }
}
