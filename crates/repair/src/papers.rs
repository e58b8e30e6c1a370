//! Papers: consent, price, money, keys. What the desk sees to.

use crate::code::{KeyStep, LineText, PaidBy};
use crate::decision::{Decision, Ending, Leaves};
use crate::fact::Fact;
use crate::ids::{CommandId, LineId};
use crate::order::Order;
use crate::reason::{Reason, ReasonKey, Why};
use crate::rules::Rules;
use crate::text::Words;
use crate::told::latest;
use jiff::Timestamp;
use price::{Balance, Coin, Payer, Payment, TooLarge, over_by_rule};
use rust_decimal::Decimal;
use std::collections::BTreeMap;

pub use crate::agreed::{agreed_entries, ceiling_seen, ceilings, standing_answers};
pub use crate::bill::{CreditNote, Invoice, Price, price, price_seen, priced_by};

/// One line of an order as it reads now.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Line {
    /// Its name.
    pub line: LineId,
    /// Who pays.
    pub payer: Payer,
    /// What the customer says.
    pub complaint: Words,
    /// Whether it is about what holds people's lives.
    pub about_safety: bool,
    /// What was found.
    pub cause: Option<Words>,
    /// What was done.
    pub correction: Option<Words>,
    /// The commands that told each text, for a device to name as seen.
    pub told_by: BTreeMap<LineText, Vec<CommandId>>,
}

/// A hand-over that stands.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct HandedOver {
    /// How the vehicle left.
    pub leaves: Leaves,
    /// How the order ended.
    pub ending: Ending,
    /// Reasons known when it left.
    pub known: Vec<ReasonKey>,
    /// When.
    pub at: Timestamp,
    pub command: CommandId,
}

#[must_use]
pub fn lines(order: &Order) -> Vec<Line> {
    let told = latest(order, |fact| match fact {
        Fact::LineWorded {
            line, text, after, ..
        } => Some(((line.clone(), *text), after)),
        _ => None,
    });
    let text = |line: &LineId, text: LineText| match told.get(&(line.clone(), text)) {
        Some(Fact::LineWorded { words, .. }) => Some(*words),
        _ => None,
    };
    let mut told_by: BTreeMap<LineId, BTreeMap<LineText, Vec<CommandId>>> = BTreeMap::new();
    for (command, filed) in order.beside_moves() {
        if let Fact::LineWorded { line, text, .. } = &filed.fact {
            told_by
                .entry(line.clone())
                .or_default()
                .entry(*text)
                .or_default()
                .push(command.clone());
        }
    }
    let mut opened: Vec<_> = order
        .beside_moves()
        .filter_map(|(_, filed)| match &filed.fact {
            Fact::LineOpened {
                line,
                complaint,
                payer,
                about,
            } => Some((filed.stamp.at, line, complaint, payer, about)),
            _ => None,
        })
        .collect();
    opened.sort();
    opened
        .into_iter()
        .map(|(_, line, complaint, payer, about)| Line {
            line: line.clone(),
            payer: *payer,
            about_safety: !about.is_empty(),
            complaint: text(line, LineText::Complaint).unwrap_or(*complaint),
            cause: text(line, LineText::Cause),
            correction: text(line, LineText::Correction),
            told_by: told_by.get(line).cloned().unwrap_or_default(),
        })
        .collect()
}

/// Digits after the point of the order's currency.
#[must_use]
pub fn minor_digits(order: &Order) -> u32 {
    order
        .decisions()
        .iter()
        .find_map(|decided| match &decided.decision {
            Decision::Opened { minor_digits, .. } => Some(*minor_digits),
            _ => None,
        })
        .unwrap_or(2)
}

/// What a payer has paid or has on account.
///
/// # Errors
/// [`TooLarge`]: no sum is cut in silence.
pub fn paid(order: &Order, payer: Payer) -> Result<Decimal, TooLarge> {
    order
        .beside_moves()
        .filter_map(|(_, filed)| match &filed.fact {
            Fact::Paid {
                payer: by, amount, ..
            } if *by == payer => Some(*amount),
            _ => None,
        })
        .try_fold(Decimal::ZERO, Decimal::checked_add)
        .ok_or(TooLarge)
}

/// How a payer stands: what they owe in all, what they paid, and what is left.
///
/// # Errors
/// [`TooLarge`]: no sum is cut in silence.
pub fn balance(order: &Order, payer: Payer) -> Result<Balance, TooLarge> {
    let price = price(order);
    let owes = price
        .as_ref()
        .and_then(|price| price.totals.get(&payer))
        .map_or(Decimal::ZERO, |totals| totals.gross);
    let coin = price.and_then(|price| price.terms.coin);
    stands(order, payer, owes, coin)
}

fn stands(
    order: &Order,
    payer: Payer,
    owes: Decimal,
    coin: Option<Coin>,
) -> Result<Balance, TooLarge> {
    let payments: Vec<Payment> = order
        .beside_moves()
        .filter_map(|(_, filed)| match &filed.fact {
            Fact::Paid {
                payer: whose,
                amount,
                by,
                ..
            } if *whose == payer => Some(Payment {
                amount: *amount,
                cash: *by == PaidBy::Cash,
            }),
            _ => None,
        })
        .collect();
    price::balance(owes, &payments, coin)
}

/// Of what a payer paid, what was put on account and has not come in since.
///
/// # Errors
/// [`TooLarge`]: no sum is cut in silence.
pub fn on_account(order: &Order, payer: Payer) -> Result<Decimal, TooLarge> {
    let put = order
        .beside_moves()
        .filter_map(|(_, filed)| match &filed.fact {
            Fact::Paid {
                payer: whose,
                amount,
                by: PaidBy::OnAccount,
                ..
            } if *whose == payer => Some(*amount),
            _ => None,
        });
    put.into_iter()
        .try_fold(Decimal::ZERO, Decimal::checked_add)
        .ok_or(TooLarge)
}

/// Whether the keys hang with the shop.
#[must_use]
pub fn keys_here(order: &Order) -> bool {
    let count = |wanted: KeyStep| {
        order
            .beside_moves()
            .filter(|(_, filed)| matches!(&filed.fact, Fact::Keys { step, .. } if *step == wanted))
            .count()
    };
    count(KeyStep::Taken) > count(KeyStep::GivenBack)
}

/// The hand-over that stands, unless the vehicle was taken back since.
#[must_use]
pub fn handed_over(order: &Order) -> Option<HandedOver> {
    let mut out = None;
    for decided in order.decisions() {
        match &decided.decision {
            Decision::HandedOver {
                leaves,
                ending,
                known,
                decided_at,
                ..
            } => {
                out = Some(HandedOver {
                    leaves: *leaves,
                    ending: *ending,
                    known: known.clone(),
                    at: *decided_at,
                    command: decided.command.clone(),
                });
            }
            Decision::TakenBack { .. } => out = None,
            _ => {}
        }
    }
    out
}

/// Whether the order was opened by mistake.
#[must_use]
pub fn is_voided(order: &Order) -> bool {
    order
        .decisions()
        .iter()
        .any(|decided| matches!(decided.decision, Decision::Voided { .. }))
}

/// What the desk has still to see to before hand-over.
#[must_use]
pub fn papers(order: &Order, rules: &Rules) -> Vec<Reason> {
    let mut out: Vec<Why> = lines(order)
        .into_iter()
        .filter(|line| line.cause.is_none() || line.correction.is_none())
        .map(|line| Why::LineUnfinished { line: line.line })
        .collect();
    match price(order) {
        None => out.push(Why::NotPriced),
        Some(price) => {
            let ceilings = ceilings(order);
            for (payer, totals) in &price.totals {
                match ceilings.get(payer) {
                    _ if *payer == Payer::Goodwill || totals.gross <= Decimal::ZERO => {}
                    None => out.push(Why::NoConsent { payer: *payer }),
                    Some(ceiling) => {
                        let passed =
                            over_by_rule(totals, *ceiling, &rules.leeway, minor_digits(order));
                        out.extend(passed.map(|over| Why::OverCeiling {
                            payer: *payer,
                            over,
                        }));
                    }
                }
            }
            if !price.charged() {
                out.push(Why::NotCharged);
            }
            let owes = price
                .totals
                .get(&Payer::Customer)
                .map_or(Decimal::ZERO, |totals| totals.gross);
            // What cannot be added up has paid nothing until somebody puts it right.
            let balance = stands(order, Payer::Customer, owes, price.terms.coin)
                .map_or(owes, |stands| stands.left);
            if balance > Decimal::ZERO {
                out.push(Why::Unpaid { balance });
            }
        }
    }
    if keys_here(order) {
        out.push(Why::KeysHere);
    }
    out.into_iter().map(Reason::new).collect()
}
