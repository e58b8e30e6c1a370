//! Facts are recorded as they come; requests are decided.

use states::Gate;

use crate::decision::{Decision, Ending, Event, Leaves, Request};
use crate::fact::Fact;
use crate::gates::may;
use crate::ids::CommandId;
use crate::order::Order;
use crate::papers::{ceilings, handed_over, is_voided, minor_digits, paid, price};
use crate::reason::{Reason, ReasonKey, Waivable};
use crate::rules::Rules;
use crate::text::Words;
use price::{Entry, Over, Payer, TaxRule, over_by_rule, totals, write_down};
use rust_decimal::Decimal;
use thiserror::Error;

/// What was read from other streams when a request is decided; what matters of it is
/// copied into the event.
#[derive(Debug, Clone)]
pub struct Context {
    /// Now, and the shop's time zone.
    pub rules: Rules,
    /// The number the shop gives a new order.
    pub next_number: u64,
    /// The shop's currency.
    pub currency: String,
    /// Digits after its point.
    pub minor_digits: u32,
    /// The taxes that hold.
    pub taxes: Vec<TaxRule>,
}

/// Why a request is refused.
#[derive(Debug, Clone, PartialEq, Eq, Error)]
pub enum Refusal {
    /// The order exists already.
    #[error("this order is open already")]
    AlreadyOpen,
    /// There is no such order.
    #[error("there is no such order; open it first")]
    NotOpen,
    /// The order was opened by mistake and is closed.
    #[error("this order was voided; open a new one")]
    Voided,
    /// The vehicle has left.
    #[error("the vehicle was handed over; take it back in first")]
    HandedOver,
    /// The vehicle is here.
    #[error("the vehicle was not handed over, so it cannot be taken back in")]
    NotHandedOver,
    /// A gate is shut.
    #[error("{} reasons stand against it", reasons.len())]
    StillOpen {
        /// The gate.
        gate: Gate,
        /// Every reason that shuts it.
        reasons: Vec<Reason>,
    },
    /// The sum passes what the payer agreed to.
    #[error("the sum passes what was agreed by {}; ask, or write it down to what was agreed", over.by)]
    OverCeiling {
        /// Who pays.
        payer: Payer,
        /// By how much.
        over: Over,
    },
    /// Nobody agreed to a sum.
    #[error("nobody has agreed to a sum yet; record the consent first")]
    NoConsent {
        /// Who pays.
        payer: Payer,
    },
    /// There is no price.
    #[error("there is no price yet; set one first")]
    NotPriced,
    /// An entry makes no sense.
    #[error("entry {} of the price: {what}", nth + 1)]
    BadEntry {
        /// Which, from 0.
        nth: usize,
        /// What is wrong and how to mend it.
        what: &'static str,
    },
    /// The sum is within what was agreed.
    #[error("the sum is within what was agreed; there is nothing to write down")]
    NothingToWriteDown,
    /// The reason does not stand.
    #[error("no such reason stands at this gate now; look again")]
    NoSuchReason {
        /// The reason named.
        reason: ReasonKey,
    },
    /// The reason can never be waived.
    #[error("this can't be waived; it has to be put right")]
    CannotBeWaived {
        /// The reason named.
        reason: ReasonKey,
    },
    /// There is no such waiver.
    #[error("there is no such waiver to take back")]
    NoSuchWaiver,
    /// Work or money stands on the order.
    #[error("work was done or money was taken on this order; bring it to an end instead")]
    NotVoidable,
    /// A vehicle that leaves apart needs its boxes counted.
    #[error("count the boxes that go with it")]
    BoxesNotCounted,
    /// A vehicle that leaves apart needs a signature.
    #[error("have the open list signed")]
    NotSigned,
}

/// Records a fact. Never fails.
#[must_use]
pub fn record(_order: &Order, fact: Fact) -> Vec<Event> {
    vec![Event::Fact(fact)]
}

/// Decides a request.
///
/// # Errors
/// [`Refusal`], with everything that speaks against it.
pub fn decide(order: &Order, context: &Context, request: Request) -> Result<Vec<Event>, Refusal> {
    let opened = order
        .decisions()
        .iter()
        .any(|decided| matches!(decided.decision, Decision::Opened { .. }));
    match (&request, opened) {
        (Request::Open { .. }, true) => return Err(Refusal::AlreadyOpen),
        (Request::Open { .. }, false) | (_, true) => {}
        (_, false) => return Err(Refusal::NotOpen),
    }
    if is_voided(order) {
        return Err(Refusal::Voided);
    }
    let left = handed_over(order).is_some();
    if left
        && !matches!(
            request,
            Request::TakeBack { .. } | Request::WithdrawWaiver { .. }
        )
    {
        return Err(Refusal::HandedOver);
    }
    let decision = match request {
        Request::Open { vehicle, customer } => Decision::Opened {
            number: context.next_number,
            vehicle,
            customer,
            currency: context.currency.clone(),
            minor_digits: context.minor_digits,
        },
        Request::Adopt {
            map,
            version,
            needs,
            work,
        } => Decision::Adopted {
            map,
            version,
            needs,
            work,
        },
        Request::Price { entries } => set_price(order, context, entries)?,
        Request::AddToPrice { entries: added } => {
            let mut entries = price(order).map(|price| price.entries).unwrap_or_default();
            entries.extend(added);
            set_price(order, context, entries)?
        }
        Request::WriteDown { payer } => bring_down(order, payer)?,
        Request::Charge => charge(order, &context.rules)?,
        Request::Waive {
            gate,
            reason,
            words,
        } => waive(order, context, gate, reason, words)?,
        Request::WithdrawWaiver { waiver } => withdraw(order, waiver)?,
        Request::HandOver {
            leaves,
            ending,
            boxes,
            signature,
            signed_by,
        } => {
            let signed = signature.is_some() || signed_by.is_some();
            let known = hand_over(order, context, leaves, boxes, signed)?;
            Decision::HandedOver {
                leaves,
                ending: ending_of(leaves, ending),
                known,
                boxes,
                signature,
                signed_by,
                decided_at: context.rules.now,
            }
        }
        Request::TakeBack { words } if left => Decision::TakenBack { words },
        Request::TakeBack { .. } => return Err(Refusal::NotHandedOver),
        Request::Void { words } => void(order, words)?,
    };
    Ok(vec![Event::Decision(decision)])
}

/// A vehicle collected apart was not repaired, whatever was asked for.
fn ending_of(leaves: Leaves, asked: Ending) -> Ending {
    match leaves {
        Leaves::CollectedApart => Ending::DeclinedApart,
        Leaves::DrivesAway => asked,
    }
}

fn set_price(order: &Order, context: &Context, entries: Vec<Entry>) -> Result<Decision, Refusal> {
    const MOST: usize = 500;
    let largest = Decimal::from(1_000_000_000);
    for (nth, entry) in entries.iter().enumerate() {
        let bad = |what| Err(Refusal::BadEntry { nth, what });
        if nth >= MOST {
            return bad("more than 500 entries; put some together");
        }
        if entry.quantity <= Decimal::ZERO {
            return bad("the quantity must be above nought");
        }
        match entry.quantity.checked_mul(entry.each) {
            Some(amount) if amount.abs() < largest => {}
            _ => return bad("the amount is too large; look at quantity and price again"),
        }
    }
    let minor_digits = minor_digits(order);
    Ok(Decision::Priced {
        totals: totals(&entries, &context.taxes, minor_digits),
        taxes: context.taxes.clone(),
        entries,
    })
}

fn bring_down(order: &Order, payer: Payer) -> Result<Decision, Refusal> {
    let price = price(order).ok_or(Refusal::NotPriced)?;
    let ceiling = ceilings(order)
        .get(&payer)
        .copied()
        .ok_or(Refusal::NoConsent { payer })?;
    let sums = price
        .totals
        .get(&payer)
        .ok_or(Refusal::NothingToWriteDown)?;
    let amount = write_down(sums, ceiling, minor_digits(order));
    if amount.is_zero() {
        return Err(Refusal::NothingToWriteDown);
    }
    Ok(Decision::WrittenDown { payer, amount })
}

fn charge(order: &Order, rules: &Rules) -> Result<Decision, Refusal> {
    let price = price(order).ok_or(Refusal::NotPriced)?;
    let ceilings = ceilings(order);
    for (payer, sums) in &price.totals {
        if *payer == Payer::Goodwill || sums.gross <= Decimal::ZERO {
            continue;
        }
        let ceiling = ceilings
            .get(payer)
            .ok_or(Refusal::NoConsent { payer: *payer })?;
        if let Some(over) = over_by_rule(sums, *ceiling, &rules.leeway, minor_digits(order)) {
            return Err(Refusal::OverCeiling {
                payer: *payer,
                over,
            });
        }
    }
    Ok(Decision::Charged {
        totals: price.totals,
        written_down: price.written_down,
    })
}

fn waive(
    order: &Order,
    context: &Context,
    gate: Gate,
    reason: ReasonKey,
    words: Words,
) -> Result<Decision, Refusal> {
    let answer = may(order, gate, &context.rules);
    let Some(found) = answer.reasons().find(|found| found.key == reason) else {
        return Err(Refusal::NoSuchReason { reason });
    };
    let prints = match found.waivable {
        Waivable::Never => return Err(Refusal::CannotBeWaived { reason }),
        Waivable::Prints => true,
        Waivable::Yes => false,
    };
    Ok(Decision::Waived {
        gate,
        figure: found.figure.clone(),
        reason,
        prints,
        words,
    })
}

fn withdraw(order: &Order, waiver: CommandId) -> Result<Decision, Refusal> {
    let given = order.decisions().iter().any(|decided| {
        decided.command == waiver && matches!(decided.decision, Decision::Waived { .. })
    });
    if !given {
        return Err(Refusal::NoSuchWaiver);
    }
    Ok(Decision::WaiverWithdrawn { waiver })
}

/// The reasons known at a hand-over that is given, or the refusal with all of them.
fn hand_over(
    order: &Order,
    context: &Context,
    leaves: Leaves,
    boxes: Option<u16>,
    signed: bool,
) -> Result<Vec<ReasonKey>, Refusal> {
    let answer = may(order, Gate::HandOver, &context.rules);
    let apart = leaves == Leaves::CollectedApart;
    if apart && boxes.is_none() {
        return Err(Refusal::BoxesNotCounted);
    }
    if apart && !signed {
        return Err(Refusal::NotSigned);
    }
    let shut = |reasons: &[Reason]| -> Vec<Reason> {
        reasons
            .iter()
            .filter(|reason| reason.shuts())
            .cloned()
            .collect()
    };
    let mut against = if apart {
        Vec::new()
    } else {
        shut(&answer.fit_to_go)
    };
    against.extend(shut(&answer.papers));
    if !against.is_empty() {
        return Err(Refusal::StillOpen {
            gate: Gate::HandOver,
            reasons: against,
        });
    }
    Ok(answer.reasons().map(|reason| reason.key.clone()).collect())
}

fn void(order: &Order, words: Words) -> Result<Decision, Refusal> {
    let worked = order.facts().any(|(_, filed)| {
        matches!(
            filed.fact,
            Fact::Moved { .. } | Fact::Drained { .. } | Fact::SnagFound { .. }
        )
    });
    let money = [Payer::Customer, Payer::Warranty, Payer::Goodwill]
        .into_iter()
        .any(|payer| !paid(order, payer).is_zero());
    if worked || money {
        return Err(Refusal::NotVoidable);
    }
    Ok(Decision::Voided { words })
}
