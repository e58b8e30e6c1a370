//! Requests about the price: each names what its author had before them.

use crate::decide::{Context, EntryFault, Refusal, SumChange};
use crate::decision::Decision;
use crate::ids::CommandId;
use crate::order::Order;
use crate::papers::{
    Price, ceiling_seen, ceilings, minor_digits, price, price_seen, standing_answers,
};
use price::{
    Ceiling, Charge, Clash, Entry, Payer, Taxing, Terms, Totals, after_write_down, amount, bills,
    merge, over_by_rule, renewed, write_down,
};
use rust_decimal::Decimal;
use std::collections::{BTreeMap, BTreeSet};

/// Sets every entry that is on no invoice. What others changed meanwhile stands, unless both
/// changed the same.
pub(crate) fn set_price(
    order: &Order,
    context: &Context,
    entries: Vec<Entry>,
    after: &[CommandId],
) -> Result<Decision, Refusal> {
    let now = price(order);
    let entries = match &now {
        Some(now) if !after.contains(&now.by) => {
            let clash = |clashes| Refusal::PriceChanged {
                by: now.by.clone(),
                clashes,
            };
            match price_seen(order, after) {
                Some(seen) => merge(&seen.entries, &entries, &now.entries).map_err(clash)?,
                None if now.entries.is_empty() => entries,
                None => return Err(clash(side_by_side(&entries, &now.entries))),
            }
        }
        _ => entries,
    };
    priced(order, context, now.as_ref(), entries, after)
}

/// What was found on the way goes on top: nobody has to know the rest of the price.
pub(crate) fn add_to_price(
    order: &Order,
    context: &Context,
    added: Vec<Entry>,
) -> Result<Decision, Refusal> {
    let now = price(order);
    let mut entries = now
        .as_ref()
        .map(|now| now.entries.clone())
        .unwrap_or_default();
    entries.extend(added);
    priced(order, context, now.as_ref(), entries, &[])
}

/// Two whole prices of people who had seen no other.
fn side_by_side(yours: &[Entry], theirs: &[Entry]) -> Vec<Clash> {
    let yours = yours.iter().map(|entry| Clash {
        before: None,
        yours: Some(entry.clone()),
        theirs: None,
    });
    let theirs = theirs.iter().map(|entry| Clash {
        before: None,
        yours: None,
        theirs: Some(entry.clone()),
    });
    yours.chain(theirs).collect()
}

fn priced(
    order: &Order,
    context: &Context,
    now: Option<&Price>,
    entries: Vec<Entry>,
    after: &[CommandId],
) -> Result<Decision, Refusal> {
    let digits = minor_digits(order);
    let entries: Vec<Entry> = entries.iter().map(|entry| renewed(entry, digits)).collect();
    check(&entries, now, digits)?;
    let taxing = Taxing::by(&context.taxes, &context.terms);
    let bills = bills(&entries, &taxing, digits)?;
    let mut sums: BTreeMap<Payer, Totals> = bills
        .into_iter()
        .map(|(payer, bill)| (payer, bill.totals))
        .collect();
    let written_down = stay_off(order, now, &mut sums);
    if let Some(now) = now {
        for (payer, sums) in &sums {
            sums.plus(&now.invoiced(*payer))?;
        }
    }
    let invoices = now.map_or(&[][..], |now| &now.invoices);
    Ok(Decision::Priced {
        entries,
        taxes: context.taxes.clone(),
        totals: sums,
        written_down,
        invoiced: invoices
            .iter()
            .map(|invoice| invoice.command.clone())
            .collect(),
        after: price_seen(order, after)
            .map(|seen| seen.by)
            .into_iter()
            .collect(),
        terms: Some(context.terms.clone()).filter(|terms| *terms != Terms::default()),
    })
}

fn check(entries: &[Entry], now: Option<&Price>, minor_digits: u32) -> Result<(), Refusal> {
    const MOST: usize = 500;
    let largest = Decimal::from(1_000_000_000);
    let on_invoice: BTreeSet<_> = now
        .iter()
        .flat_map(|now| &now.invoices)
        .flat_map(|invoice| &invoice.entries)
        .filter_map(|entry| entry.label)
        .collect();
    for (nth, entry) in entries.iter().enumerate() {
        let bad = |what| Err(Refusal::BadEntry { nth, what });
        if nth >= MOST {
            return bad(EntryFault::TooMany);
        }
        if entry.quantity <= Decimal::ZERO {
            return bad(EntryFault::NoQuantity);
        }
        if entry.each.is_sign_negative()
            && !entry.each.is_zero()
            && matches!(entry.charge, Charge::Labour | Charge::Test)
        {
            return bad(EntryFault::RateBelowNought);
        }
        match entry.quantity.checked_mul(entry.each) {
            Some(amount) if amount.abs() < largest => {}
            _ => return bad(EntryFault::TooLarge),
        }
        let negative = entry.less.iter().any(|less| less.amount < Decimal::ZERO);
        if negative && entry.each >= Decimal::ZERO {
            return bad(EntryFault::DiscountBelowNought);
        }
        match amount(entry, minor_digits) {
            Ok(left) if left < Decimal::ZERO && entry.each >= Decimal::ZERO => {
                return bad(EntryFault::MoreOff);
            }
            _ => {}
        }
        if entry.label.is_some_and(|label| on_invoice.contains(&label)) {
            return bad(EntryFault::OnInvoice);
        }
    }
    Ok(())
}

/// What was written down to what was agreed stays so through a change of the price, as far
/// as the sum would pass it again.
fn stay_off(
    order: &Order,
    now: Option<&Price>,
    sums: &mut BTreeMap<Payer, Totals>,
) -> BTreeMap<Payer, Decimal> {
    let digits = minor_digits(order);
    let mut out = BTreeMap::new();
    let Some(now) = now else { return out };
    let ceilings = ceilings(order);
    for (payer, was_off) in &now.written_down {
        let (Some(sum), Some(ceiling)) = (sums.get_mut(payer), ceilings.get(payer)) else {
            continue;
        };
        let room = besides(*ceiling, &now.invoiced(*payer));
        let Some(down) = write_down(sum, room, digits) else {
            continue;
        };
        if down.off <= *was_off {
            out.insert(*payer, down.off);
            *sum = down.after;
        } else {
            out.insert(*payer, *was_off);
            *sum = after_write_down(sum, *was_off, digits);
        }
    }
    out
}

/// What a ceiling leaves for what is on no invoice.
fn besides(ceiling: Ceiling, invoiced: &Totals) -> Ceiling {
    let used = if ceiling.tax_included {
        invoiced.gross
    } else {
        invoiced.net
    };
    Ceiling {
        amount: ceiling.amount.saturating_sub(used),
        ..ceiling
    }
}

/// Brings a payer's sum down to what was agreed.
pub(crate) fn bring_down(
    order: &Order,
    payer: Payer,
    after: Vec<CommandId>,
) -> Result<Decision, Refusal> {
    let now = price(order).ok_or(Refusal::NotPriced)?;
    let ceiling = ceilings(order)
        .get(&payer)
        .copied()
        .ok_or(Refusal::NoConsent { payer })?;
    let sums = now
        .open
        .get(&payer)
        .ok_or(Refusal::NothingToWriteDown)?
        .clone();
    let seen = price_seen(order, &after);
    let total = |price: &Price| price.totals.get(&payer).cloned().unwrap_or_default();
    let same_sum = seen
        .as_ref()
        .is_some_and(|seen| seen.by == now.by || total(seen) == total(&now));
    let answers = standing_answers(order).remove(&payer).unwrap_or_default();
    if !same_sum || answers.iter().any(|(answer, _)| !after.contains(answer)) {
        return Err(Refusal::SumChanged(Box::new(SumChange {
            payer,
            agreed: ceiling_seen(order, payer, &after),
            seen: seen.as_ref().map(total),
            now: total(&now),
            ceiling,
        })));
    }
    let room = besides(ceiling, &now.invoiced(payer));
    let down = write_down(&sums, room, minor_digits(order)).ok_or(Refusal::NothingToWriteDown)?;
    if down.off.is_zero() {
        return Err(Refusal::NothingToWriteDown);
    }
    Ok(Decision::WrittenDown {
        payer,
        amount: down.off,
        left: Some(down.after),
        after,
    })
}

/// Writes the invoice for everything that is on none.
pub(crate) fn charge(
    order: &Order,
    context: &Context,
    after: &[CommandId],
) -> Result<Decision, Refusal> {
    let now = price(order).ok_or(Refusal::NotPriced)?;
    if !after.is_empty() && !after.contains(&now.by) {
        let seen = price_seen(order, after).map_or_else(Vec::new, |seen| seen.entries);
        let clashes = changes(&seen, &now.entries);
        let by = now.by;
        return Err(Refusal::PriceChanged { by, clashes });
    }
    if now.charged() {
        return Err(Refusal::NothingToCharge);
    }
    let ceilings = ceilings(order);
    for (payer, sums) in &now.totals {
        if *payer == Payer::Goodwill || sums.gross <= Decimal::ZERO {
            continue;
        }
        let ceiling = ceilings
            .get(payer)
            .ok_or(Refusal::NoConsent { payer: *payer })?;
        let passed = over_by_rule(sums, *ceiling, &context.rules.leeway, minor_digits(order));
        if let Some(over) = passed {
            return Err(Refusal::OverCeiling {
                payer: *payer,
                over,
            });
        }
    }
    let asked: BTreeSet<Payer> = now.entries.iter().map(|entry| entry.payer).collect();
    Ok(Decision::Charged {
        totals: now.open,
        written_down: now.written_down,
        numbers: asked
            .into_iter()
            .filter(|payer| *payer != Payer::Goodwill)
            .zip(context.next_invoice..)
            .collect(),
    })
}

/// What came into a price, and what went out of it, since it was seen.
fn changes(seen: &[Entry], now: &[Entry]) -> Vec<Clash> {
    let without = |all: &[Entry], others: &[Entry]| {
        let mut left = others.to_vec();
        let mut out = all.to_vec();
        out.retain(|entry| match left.iter().position(|other| other == entry) {
            Some(place) => {
                left.swap_remove(place);
                false
            }
            None => true,
        });
        out
    };
    side_by_side(&without(seen, now), &without(now, seen))
}
