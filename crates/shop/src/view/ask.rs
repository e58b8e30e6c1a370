//! What to ask whom, in one sentence, before it is asked.

use super::customer_text;
use super::desk::{PriceEntryView, price_entry};
use crate::amount::Amount;
use crate::phrases::calls as words;
use crate::places::place_of;
use crate::say::{self, Names};
use crate::snapshot::Snapshot;
use crate::trouble::Trouble;
use crate::world::World;
use record::form::Form;
use record::v1::codes::{ConsentStepForm, PayerForm};
use repair::price::{Ceiling, Entry, Payer, Totals, over, over_by_rule};
use repair::{CommandId, ConsentStep, Fact, Field, Order, Rules, papers as desk};
use rust_decimal::Decimal;
use serde::Serialize;
use std::cell::RefCell;
use std::collections::BTreeSet;
use utoipa::ToSchema;

/// What stands between one payer and the sum as it is now.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, ToSchema)]
pub struct AskView {
    /// Who pays.
    pub payer: PayerForm,
    /// What they are called.
    pub who: String,
    /// Their telephone number; empty if there is none.
    pub phone: String,
    /// What to ask, in one sentence; or why nothing is to be asked.
    pub sentence: String,
    /// Whether nothing may be charged before they answer.
    pub must: bool,
    /// The step it would be.
    pub step: ConsentStepForm,
    /// The sum to ask for, in all; with tax, if what was agreed before is.
    pub sum: Option<Amount>,
    /// Whether tax is within these sums.
    pub with_tax: bool,
    /// The most agreed to so far.
    pub ceiling: Option<Amount>,
    /// By how much the sum passes it.
    pub over: Option<Amount>,
    /// What is left under it.
    pub left: Option<Amount>,
    /// The most that the rules of the shop's place let be charged without asking again,
    /// where that is more than was agreed.
    pub limit: Option<Amount>,
    /// Whether they ever agreed to a sum.
    pub agreed: bool,
    /// The answers that did not see each other, where two people asked at the same time: the
    /// one that leaves the least room counts until somebody asks again.
    pub apart: Vec<String>,
    /// Whether something of theirs is on no invoice yet, so that it can be written down.
    pub can_write_down: bool,
    /// Entries that did not stand in the price when they last agreed.
    pub added: Vec<PriceEntryView>,
    /// Those that stood in it then, and no longer do.
    pub dropped: Vec<PriceEntryView>,
    /// What a consent given now has seen: the consents before it, and the price.
    pub after: Vec<String>,
}

/// What to ask each payer but the shop itself, the customer first.
pub(super) fn asks(
    snap: &Snapshot<'_>,
    world: &World,
    order: &Order,
    rules: &Rules,
) -> Result<Vec<AskView>, Trouble> {
    let price = desk::price(order);
    let priced = price.iter().flat_map(|price| price.totals.keys().copied());
    let lines = desk::lines(order).into_iter().map(|line| line.payer);
    let payers: BTreeSet<Payer> = priced.chain(lines).chain([Payer::Customer]).collect();
    payers
        .into_iter()
        .filter(|payer| *payer != Payer::Goodwill)
        .map(|payer| {
            let totals = price.as_ref().and_then(|price| price.totals.get(&payer));
            ask(snap, world, order, rules, payer, totals)
        })
        .collect()
}

fn ask(
    snap: &Snapshot<'_>,
    world: &World,
    order: &Order,
    rules: &Rules,
    payer: Payer,
    totals: Option<&Totals>,
) -> Result<AskView, Trouble> {
    let digits = desk::minor_digits(order);
    let ceiling = desk::ceilings(order).get(&payer).copied();
    let with_tax = ceiling.is_some_and(|ceiling| ceiling.tax_included);
    let sum = totals.map(|totals| if with_tax { totals.gross } else { totals.net });
    let passed = totals
        .zip(ceiling)
        .and_then(|(totals, ceiling)| over(totals, ceiling));
    let must = totals.is_some_and(|totals| match ceiling {
        _ if totals.gross <= Decimal::ZERO => false,
        None => true,
        Some(ceiling) => over_by_rule(totals, ceiling, &rules.leeway, digits).is_some(),
    });
    let limit = ceiling
        .map(|ceiling| (ceiling, rules.leeway.limit(ceiling.amount, digits)))
        .filter(|(ceiling, limit)| *limit > ceiling.amount)
        .map(|(_, limit)| limit);
    let who = called(snap, world, order, payer)?;
    let asked = Asked {
        who: &who,
        ceiling,
        sum,
        taxed: totals.is_some_and(|totals| !totals.tax.is_zero()),
        digits,
    };
    let (agreed, added, dropped) = since_agreed(snap, order, payer)?;
    Ok(AskView {
        payer: PayerForm::of(&payer),
        phone: match payer {
            Payer::Customer => customer_text(snap, world, order, Field::Phone)?,
            // Theirs is the number that they were called at before.
            _ => number_called(snap, order, payer),
        },
        sentence: match limit {
            Some(limit) if !must && passed.is_some() => asked.let_pass(limit, world),
            _ => asked.sentence(),
        },
        must,
        step: step(order, payer, totals.is_some()),
        sum: sum.map(|sum| say::money(sum, digits)),
        with_tax,
        ceiling: ceiling.map(|ceiling| say::money(ceiling.amount, digits)),
        over: passed.map(|over| say::money(over.by, digits)),
        left: ceiling
            .filter(|_| passed.is_none())
            .zip(sum)
            .map(|(ceiling, sum)| say::money(ceiling.amount.saturating_sub(sum), digits)),
        limit: limit.map(|limit| say::money(limit, digits)),
        apart: apart(snap, order, rules, payer),
        can_write_down: passed.is_some() && is_open(order, payer),
        agreed,
        added,
        dropped,
        after: seen(order, payer),
        who,
    })
}

/// The sentence, and what it is made from.
struct Asked<'a> {
    who: &'a str,
    ceiling: Option<Ceiling>,
    sum: Option<Decimal>,
    taxed: bool,
    digits: u32,
}

impl Asked<'_> {
    fn money(&self, amount: Decimal) -> Amount {
        say::money(amount, self.digits)
    }

    fn tax(&self) -> &'static str {
        match self.ceiling {
            Some(ceiling) if ceiling.tax_included => words::sum_with_tax(),
            _ if self.taxed => words::sum_before_tax(),
            _ => "",
        }
    }

    fn sentence(&self) -> String {
        let Self { who, .. } = self;
        let tax = self.tax();
        match (self.sum, self.ceiling) {
            (None, None) => words::ask_for_diagnosis(who),
            (None, Some(ceiling)) => words::nothing_to_ask_no_price(self.money(ceiling.amount)),
            (Some(sum), None) => words::ask_for(who, self.money(sum), tax),
            (Some(sum), Some(ceiling)) if sum > ceiling.amount => words::ask_for_more(
                who,
                self.money(sum.saturating_sub(ceiling.amount)),
                tax,
                self.money(ceiling.amount),
                self.money(sum),
            ),
            (Some(sum), Some(ceiling)) => words::nothing_to_ask_left(
                self.money(ceiling.amount.saturating_sub(sum)),
                tax,
                self.money(ceiling.amount),
            ),
        }
    }

    /// Over the ceiling, but not over what the rules of the place let pass.
    fn let_pass(&self, limit: Decimal, world: &World) -> String {
        let place = place_of(&world.shop).map_or(words::the_shops_place(), |place| place.name());
        let over = self
            .sum
            .zip(self.ceiling)
            .map(|(sum, ceiling)| self.money(sum.saturating_sub(ceiling.amount)))
            .unwrap_or_default();
        words::need_not_ask(over, self.tax(), place, self.money(limit), self.who)
    }
}

fn called(
    snap: &Snapshot<'_>,
    world: &World,
    order: &Order,
    payer: Payer,
) -> Result<String, Trouble> {
    Ok(match payer {
        Payer::Customer => {
            let name = customer_text(snap, world, order, Field::Name)?;
            if name.is_empty() {
                words::the_customer().to_owned()
            } else {
                name
            }
        }
        Payer::Warranty => words::the_warranty().to_owned(),
        Payer::Goodwill => words::the_shop().to_owned(),
    })
}

/// The number at which a payer was called last.
fn number_called(snap: &Snapshot<'_>, order: &Order, payer: Payer) -> String {
    let called = order
        .beside_moves()
        .filter_map(|(command, filed)| match &filed.fact {
            Fact::Consented {
                payer: of,
                number_called: Some(number),
                ..
            } if *of == payer => Some(((filed.stamp.at, command), *number)),
            _ => None,
        });
    let last = called.max_by(|a, b| a.0.cmp(&b.0));
    last.map_or_else(String::new, |(_, number)| snap.texts().text(number))
}

/// The step that follows on what this payer was asked before.
fn step(order: &Order, payer: Payer, priced: bool) -> ConsentStepForm {
    let asked = |wanted: ConsentStep| {
        order.beside_moves().any(|(_, filed)| {
            matches!(&filed.fact, Fact::Consented { step, payer: of, agreed: true, .. } if *of == payer && *step == wanted)
        })
    };
    if asked(ConsentStep::Repair) || asked(ConsentStep::Add) {
        ConsentStepForm::Add
    } else if priced {
        ConsentStepForm::Repair
    } else if asked(ConsentStep::Diagnose) {
        ConsentStepForm::TakeApart
    } else {
        ConsentStepForm::Diagnose
    }
}

/// Whether a payer still owes something that is on no invoice.
fn is_open(order: &Order, payer: Payer) -> bool {
    let price = desk::price(order);
    let open = price.as_ref().and_then(|price| price.open.get(&payer));
    open.is_some_and(|sums| sums.net > Decimal::ZERO)
}

/// Who wrote down which answer, where several stand.
fn apart(snap: &Snapshot<'_>, order: &Order, rules: &Rules, payer: Payer) -> Vec<String> {
    let digits = desk::minor_digits(order);
    let answers = desk::standing_answers(order)
        .remove(&payer)
        .unwrap_or_default();
    if answers.len() < 2 {
        return Vec::new();
    }
    let names = Names::of(snap, snap.world(), order);
    let said = |(command, ceiling): (&CommandId, Ceiling)| {
        let (_, told) = order.beside_moves().find(|(one, _)| *one == command)?;
        let who = names.person(&told.stamp.who);
        let at = super::story::dated(rules, told.stamp.at);
        let sum = say::money(ceiling.amount, digits);
        Some(match ceiling.tax_included {
            true => words::agreed_with_tax(who, at, sum),
            false => words::agreed_before_tax(who, at, sum),
        })
    };
    answers.into_iter().filter_map(said).collect()
}

fn seen(order: &Order, payer: Payer) -> Vec<String> {
    let consents = order
        .beside_moves()
        .filter(|(_, filed)| matches!(filed.fact, Fact::Consented { payer: of, .. } if of == payer))
        .map(|(command, _)| command);
    consents
        .chain(desk::priced_by(order))
        .map(|command| command.as_str().to_owned())
        .collect()
}

/// Whether a payer has agreed to a sum, what came into the price since, and what went out
/// of it.
fn since_agreed(
    snap: &Snapshot<'_>,
    order: &Order,
    payer: Payer,
) -> Result<(bool, Vec<PriceEntryView>, Vec<PriceEntryView>), Trouble> {
    let (store, log) = snap.world().record();
    let failed = RefCell::new(None);
    let position = |command: &CommandId| match store.command(log, command.as_str()) {
        Ok(rows) => rows.first().map_or(0, |row| row.position),
        Err(error) => {
            failed.replace(Some(error));
            0
        }
    };
    let then = desk::agreed_entries(order, payer, &position);
    if let Some(error) = failed.into_inner() {
        return Err(error.into());
    }
    let digits = desk::minor_digits(order);
    let of_payer = |entries: &[Entry]| -> Vec<PriceEntryView> {
        entries
            .iter()
            .filter(|entry| entry.payer == payer)
            .map(|entry| price_entry(snap, entry, digits))
            .collect()
    };
    let agreed = then.is_some();
    let now: Vec<Entry> =
        desk::price(order).map_or_else(Vec::new, |price| price.all().cloned().collect());
    let (now, then) = (of_payer(&now), of_payer(&then.unwrap_or_default()));
    Ok((agreed, without(&now, &then), without(&then, &now)))
}

/// The entries that the others lack, each counted as often as it stands.
fn without(entries: &[PriceEntryView], others: &[PriceEntryView]) -> Vec<PriceEntryView> {
    let mut left = others.to_vec();
    let mut out = Vec::new();
    for entry in entries {
        match left.iter().position(|other| other == entry) {
            Some(place) => {
                left.swap_remove(place);
            }
            None => out.push(entry.clone()),
        }
    }
    out
}
