//! An invoice or a credit note as programs of others want it: each line before tax, each under
//! the one tax that falls on it.

use crate::apportion::apportion;
use crate::credit::{Billed, BilledLine, Credit, place};
use rust_decimal::Decimal;

/// Lines before tax, parted by the tax that falls on them.
#[derive(Debug, Clone, PartialEq, Eq, Default)]
pub struct ByTax {
    pub lines: Vec<TaxedLine>,
    /// The taxes that fall on any of the lines.
    pub groups: Vec<TaxGroup>,
}

/// One line, before tax.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct TaxedLine {
    /// Its place on the invoice.
    pub line: usize,
    /// Before tax, and before anything was written down.
    pub net: Decimal,
    /// The place of its tax among the groups.
    pub group: usize,
}

/// What lines under one tax come to.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct TaxGroup {
    /// The tax, by its place among the invoice's.
    pub share: usize,
    /// What was written down of its lines.
    pub off: Decimal,
    /// Before tax, after that.
    pub net: Decimal,
    /// The tax on it.
    pub tax: Decimal,
}

/// Why lines cannot be parted by tax. Lines are told by their place on the invoice.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum NotByTax {
    /// No tax falls on a line.
    NoTax(usize),
    /// More than one tax falls on a line.
    SeveralTaxes(usize),
    /// The tax of a line is kept.
    TaxKept(usize),
    /// The groups do not add up to what it comes to.
    Uneven,
}

/// A line, what of it counts, and what was written down of it.
type Counted<'a> = (usize, &'a BilledLine, Decimal, Decimal);

impl Billed {
    /// The invoice parted by its taxes.
    ///
    /// # Errors
    /// [`NotByTax`].
    pub fn by_tax(&self) -> Result<ByTax, NotByTax> {
        let lines = self.lines.iter().enumerate();
        let lines: Vec<Counted<'_>> = lines
            .map(|(nth, line)| (nth, line, line.amount, line.off))
            .collect();
        let taxes: Vec<Decimal> = self.shares.iter().map(|share| share.tax).collect();
        let parted = self.parted(&lines, &taxes)?;
        even(parted, self.totals.net, self.totals.tax)
    }

    /// What was taken back, parted by its taxes.
    ///
    /// # Errors
    /// [`NotByTax`].
    pub fn credited_by_tax(&self, credit: &Credit) -> Result<ByTax, NotByTax> {
        let mut lines: Vec<Counted<'_>> = Vec::new();
        for back in &credit.lines {
            let at = place(back.line);
            let line = self.lines.get(at).ok_or(NotByTax::Uneven)?;
            if back.keeps_tax {
                return Err(NotByTax::TaxKept(at));
            }
            if !back.amount.is_zero() {
                lines.push((at, line, back.amount, Decimal::ZERO));
            }
        }
        let taxes: Vec<Decimal> = credit.shares.iter().map(|share| share.tax).collect();
        let parted = self.parted(&lines, &taxes)?;
        even(parted, credit.totals.net, credit.totals.tax)
    }

    fn parted(&self, lines: &[Counted<'_>], taxes: &[Decimal]) -> Result<ByTax, NotByTax> {
        let mut of_share: Vec<Vec<Counted<'_>>> = vec![Vec::new(); self.shares.len()];
        for counted in lines {
            match counted.1.taxes.as_slice() {
                [] => return Err(NotByTax::NoTax(counted.0)),
                [share] => of_share[*share].push(*counted),
                _ => return Err(NotByTax::SeveralTaxes(counted.0)),
            }
        }
        let mut out = ByTax::default();
        for (share, lines) in of_share.iter().enumerate() {
            if lines.is_empty() {
                continue;
            }
            let group = out.groups.len();
            let tax = taxes.get(share).copied().unwrap_or_default();
            let all = total(lines.iter().map(|line| line.2));
            let in_price = self.included[share];
            let net = if in_price {
                all.saturating_sub(tax)
            } else {
                all
            };
            // A price that has its tax in it is parted from it once for all its lines, so that
            // they add up.
            let nets: Vec<Decimal> = if in_price {
                let amounts: Vec<Decimal> = lines.iter().map(|line| line.2).collect();
                apportion_signed(net, &amounts, self.minor_digits)
            } else {
                let before = |line: &Counted<'_>| line.2.saturating_add(line.3);
                lines.iter().map(before).collect()
            };
            let off = total(nets.iter().copied()).saturating_sub(net);
            out.groups.push(TaxGroup {
                share,
                off,
                net,
                tax,
            });
            let of_group = lines.iter().zip(nets).map(|(line, net)| TaxedLine {
                line: line.0,
                net,
                group,
            });
            out.lines.extend(of_group);
        }
        out.lines.sort_by_key(|line| line.line);
        Ok(out)
    }
}

/// The same as [`apportion`] where some lines are charged and others given back.
fn apportion_signed(net: Decimal, amounts: &[Decimal], minor_digits: u32) -> Vec<Decimal> {
    let is_back = |amount: &Decimal| amount.is_sign_negative();
    let back = total(amounts.iter().copied().filter(is_back));
    let all = total(amounts.iter().copied());
    if back.is_zero() {
        return apportion(net, amounts, minor_digits);
    }
    let part = |of: Decimal| {
        let part = of.checked_mul(net);
        part.and_then(|part| part.checked_div(all))
            .unwrap_or_default()
    };
    let back_net = crate::totals::rounded(part(back), minor_digits);
    let weights = |back: bool| -> Vec<Decimal> {
        let kept = |amount: &Decimal| (is_back(amount) == back).then_some(*amount);
        let weight = |amount| kept(amount).unwrap_or_default();
        amounts.iter().map(weight).collect()
    };
    let charged = apportion(net.saturating_sub(back_net), &weights(false), minor_digits);
    let given = apportion(back_net, &weights(true), minor_digits);
    let both = charged.iter().zip(given);
    both.map(|(one, other)| one.saturating_add(other)).collect()
}

fn total(amounts: impl Iterator<Item = Decimal>) -> Decimal {
    amounts.fold(Decimal::ZERO, Decimal::saturating_add)
}

fn even(parted: ByTax, net: Decimal, tax: Decimal) -> Result<ByTax, NotByTax> {
    let of = |read: fn(&TaxGroup) -> Decimal| total(parted.groups.iter().map(read));
    if of(|group| group.net) == net && of(|group| group.tax) == tax {
        Ok(parted)
    } else {
        Err(NotByTax::Uneven)
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::credit::CreditLine;
    use crate::{Charge, Entry, Payer, TaxOn, TaxRule, Taxing, Totals, bills};
    use proptest::prelude::*;

    fn entry(charge: Charge, cents: i64) -> Entry {
        Entry {
            line: None,
            charge,
            label: None,
            quantity: Decimal::ONE,
            each: Decimal::new(cents, 2),
            payer: Payer::Customer,
            less: Vec::new(),
        }
    }

    fn on(labour: bool, parts: bool) -> TaxOn {
        TaxOn {
            labour,
            parts,
            other: parts,
        }
    }

    fn billed(entries: &[Entry], taxes: &[TaxRule], written_down: Decimal) -> Billed {
        let taxing = Taxing::of(taxes);
        let bill = bills(entries, &taxing, 2).unwrap();
        let was = bill[&Payer::Customer].totals.clone();
        let totals = Totals {
            net: was.net - written_down,
            ..was
        };
        Billed::of(entries, &taxing, Payer::Customer, &totals, 2).unwrap()
    }

    #[test]
    fn each_line_stands_under_its_one_tax() {
        let entries = [entry(Charge::Labour, 12_000), entry(Charge::Part, 5_050)];
        let taxes = [
            TaxRule::on_top("full", 20.into(), on(true, false)),
            TaxRule::on_top("less", 5.into(), on(false, true)),
        ];
        let parted = billed(&entries, &taxes, Decimal::ZERO).by_tax().unwrap();
        let said: Vec<_> = parted
            .groups
            .iter()
            .map(|group| (group.net, group.tax))
            .collect();
        let cents = |cents| Decimal::new(cents, 2);
        assert_eq!(
            said,
            [(cents(12_000), cents(2_400)), (cents(5_050), cents(253))]
        );
        let none = billed(&entries, &taxes[..1], Decimal::ZERO).by_tax();
        assert_eq!(none, Err(NotByTax::NoTax(1)));
        let both = [
            TaxRule::on_top("one", 20.into(), on(true, true)),
            TaxRule::on_top("two", 5.into(), on(false, true)),
        ];
        let two = billed(&entries, &both, Decimal::ZERO).by_tax();
        assert_eq!(two, Err(NotByTax::SeveralTaxes(1)));
    }

    #[test]
    fn a_line_whose_tax_is_kept_stands_under_none() {
        let entries = [entry(Charge::Core, 6_000)];
        let taxes = [TaxRule::on_top("full", 20.into(), on(true, true))];
        let billed = billed(&entries, &taxes, Decimal::ZERO);
        let back = |keeps_tax| CreditLine {
            line: 0,
            amount: 60.into(),
            keeps_tax,
        };
        let kept = billed.credit(&[], &[back(true)]).unwrap();
        assert_eq!(billed.credited_by_tax(&kept), Err(NotByTax::TaxKept(0)));
        let given = billed.credit(&[], &[back(false)]).unwrap();
        let parted = billed.credited_by_tax(&given).unwrap();
        assert_eq!(parted.groups[0].net, Decimal::new(6_000, 2));
        assert_eq!(parted.groups[0].tax, Decimal::new(1_200, 2));
    }

    proptest! {
        /// Lines less what is written down are what their group comes to; groups are the whole.
        #[test]
        fn lines_add_up_to_their_groups(
            cents in prop::collection::vec((1i64..1_000_000, any::<bool>(), any::<bool>()), 1..12),
            included in any::<bool>(), off in 0i64..100,
        ) {
            let charge = |labour| if labour { Charge::Labour } else { Charge::Part };
            let entries: Vec<Entry> = cents.iter()
                .map(|(cents, labour, back)| entry(charge(*labour), if *back && *cents < 500 { -cents } else { *cents }))
                .collect();
            let mut taxes = [
                TaxRule::on_top("full", 19.into(), on(true, false)),
                TaxRule::on_top("less", 7.into(), on(false, true)),
            ];
            for tax in &mut taxes {
                tax.included = included;
            }
            let off = if included { Decimal::ZERO } else { Decimal::new(off, 2) };
            let billed = billed(&entries, &taxes, off);
            prop_assume!(billed.totals.net.is_sign_positive());
            let parted = billed.by_tax().unwrap();
            for (nth, group) in parted.groups.iter().enumerate() {
                let lines = parted.lines.iter().filter(|line| line.group == nth);
                prop_assert_eq!(total(lines.map(|line| line.net)) - group.off, group.net);
            }
            prop_assert_eq!(parted.lines.len(), entries.len());
        }
    }
}
