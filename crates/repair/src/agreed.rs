//! What was agreed to: read off the answers of those who pay.

use crate::bill::{after, place_of, price, price_seen, touches_price};
use crate::fact::Fact;
use crate::ids::CommandId;
use crate::order::Order;
use crate::told::Seen;
use price::{Ceiling, Entry, Payer, strictest};
use std::collections::{BTreeMap, BTreeSet};

/// A sum that somebody agreed or refused to pay, as it was told.
struct Named<'a> {
    command: &'a CommandId,
    payer: Payer,
    ceiling: Ceiling,
    after: &'a [CommandId],
}

fn named(order: &Order) -> Vec<Named<'_>> {
    order
        .beside_moves()
        .filter_map(|(command, filed)| match &filed.fact {
            Fact::Consented {
                payer,
                amount: Some(amount),
                tax_included,
                after,
                ..
            } => Some(Named {
                command,
                payer: *payer,
                ceiling: Ceiling {
                    amount: *amount,
                    tax_included: *tax_included,
                },
                after,
            }),
            _ => None,
        })
        .collect()
}

/// The answers that name a sum and that no other answer of the same payer has seen: more
/// than one, where two people asked at the same time.
#[must_use]
pub fn standing_answers(order: &Order) -> BTreeMap<Payer, Vec<(&CommandId, Ceiling)>> {
    standing(order, &named(order))
}

fn standing<'a>(
    order: &'a Order,
    answers: &[Named<'a>],
) -> BTreeMap<Payer, Vec<(&'a CommandId, Ceiling)>> {
    let told = Seen::of(order, |fact| match fact {
        Fact::Consented { after, .. } => Some(after),
        _ => None,
    });
    let mut own: BTreeMap<Payer, BTreeSet<&CommandId>> = BTreeMap::new();
    for answer in answers {
        own.entry(answer.payer).or_default().insert(answer.command);
    }
    // One payer's word takes nothing from another's, whatever it had seen.
    let seen: BTreeSet<(Payer, &CommandId)> = answers
        .iter()
        .flat_map(|answer| {
            let reached = told.reach(&own[&answer.payer], answer.after).into_iter();
            reached.map(|command| (answer.payer, command))
        })
        .collect();
    let mut out: BTreeMap<Payer, Vec<_>> = BTreeMap::new();
    for answer in answers {
        if !seen.contains(&(answer.payer, answer.command)) {
            let of_payer = out.entry(answer.payer).or_default();
            of_payer.push((answer.command, answer.ceiling));
        }
    }
    out
}

/// The most each payer agreed to: of the sums named that none of the others has seen, the
/// one that leaves the least room, with and without tax in one measure by the order's own
/// tax. A refusal that names an amount sets it; a yes or no that names none leaves the sum
/// agreed before as it was.
#[must_use]
pub fn ceilings(order: &Order) -> BTreeMap<Payer, Ceiling> {
    let totals = price(order).map(|price| price.totals).unwrap_or_default();
    standing_answers(order)
        .into_iter()
        .filter_map(|(payer, answers)| {
            let ceilings = answers.into_iter().map(|(_, ceiling)| ceiling);
            Some((payer, strictest(ceilings, totals.get(&payer))?))
        })
        .collect()
}

/// The most a payer had agreed to when somebody had seen no more than these answers.
#[must_use]
pub fn ceiling_seen(order: &Order, payer: Payer, seen: &[CommandId]) -> Option<Ceiling> {
    let mut answers = named(order);
    answers.retain(|answer| answer.payer == payer && seen.contains(answer.command));
    let totals = price_seen(order, seen).and_then(|price| price.totals.get(&payer).cloned());
    let ceilings = standing(order, &answers).remove(&payer)?;
    strictest(ceilings.into_iter().map(|(_, one)| one), totals.as_ref())
}

/// The entries of the price that a payer last agreed to; none, if they never agreed to a
/// sum, and no entries, if there was no price yet.
///
/// A consent names the price that its author had before them among what it had seen. One
/// that names none, because it was written down before pages said so, is taken to mean
/// the last price that stands before it in the log: `position` tells where a command
/// stands there. No clock is asked. Where several consents have not seen each other, the
/// earliest price counts, so that too much is shown as added rather than too little.
#[must_use]
pub fn agreed_entries(
    order: &Order,
    payer: Payer,
    position: &dyn Fn(&CommandId) -> u64,
) -> Option<Vec<Entry>> {
    let consents: Vec<_> = order
        .beside_moves()
        .filter_map(|(command, filed)| match &filed.fact {
            Fact::Consented {
                payer: of,
                agreed: true,
                amount: Some(_),
                after,
                ..
            } if *of == payer => Some((command, after)),
            _ => None,
        })
        .collect();
    let seen: BTreeSet<&CommandId> = consents.iter().flat_map(|(_, after)| *after).collect();
    let before = |command: &CommandId| {
        let told = position(command);
        let decisions = order.decisions().iter();
        decisions
            .enumerate()
            .rfind(|(_, decided)| touches_price(decided) && position(&decided.command) < told)
            .map_or(0, |(nth, _)| nth.saturating_add(1))
    };
    let earliest = consents
        .iter()
        .filter(|(command, _)| !seen.contains(command))
        .map(|(command, seen)| place_of(order, seen).unwrap_or_else(|| before(command)))
        .min()?;
    let then = after(order, earliest);
    Some(then.map_or_else(Vec::new, |price| price.all().cloned().collect()))
}
