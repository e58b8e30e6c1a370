//! Facts are recorded as they come; requests are decided.

use states::Gate;

use crate::crediting::credit;
use crate::decision::{Decision, Ending, Event, Leaves, Request};
use crate::fact::Fact;
use crate::gates::may;
use crate::ids::CommandId;
use crate::order::Order;
use crate::papers::{handed_over, is_voided};
use crate::pricing::{add_to_price, bring_down, charge, set_price};
use crate::reason::{Reason, ReasonKey, Waivable, WaivedBy};
use crate::rules::Rules;
use crate::text::Words;
use crate::voiding::{Standing, void};
use price::{Ceiling, Clash, Fault, Over, Payer, TaxRule, Terms, TooLarge, Totals};
use std::collections::BTreeSet;
use thiserror::Error;

/// What was read from other streams when a request is decided; what matters of it is
/// copied into the event.
#[derive(Debug, Clone)]
pub struct Context {
    /// Now, and the shop's time zone.
    pub rules: Rules,
    /// The number the shop gives a new order.
    pub next_number: u64,
    /// The number the shop gives its next invoice.
    pub next_invoice: u64,
    /// The number the shop gives its next credit note.
    pub next_credit: u64,
    /// The shop's currency.
    pub currency: String,
    /// Digits after its point.
    pub minor_digits: u32,
    /// The taxes that hold.
    pub taxes: Vec<TaxRule>,
    /// What holds for sums beside the taxes.
    pub terms: Terms,
    /// What whoever asks may let pass.
    pub may_waive: BTreeSet<WaivedBy>,
}

/// What is wrong with an entry of the price.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Error)]
pub enum EntryFault {
    /// There are too many of them.
    #[error("more than 500 entries; put some together")]
    TooMany,
    /// Nothing of it is charged.
    #[error("the quantity must be more than 0")]
    NoQuantity,
    /// Work at a rate below nought.
    #[error("a rate below nought; take the amount off as another charge")]
    RateBelowNought,
    /// An amount beyond all measure.
    #[error("the amount is too large; look at quantity and price again")]
    TooLarge,
    /// A discount below nought.
    #[error("a discount below nought; write more on the price instead")]
    DiscountBelowNought,
    /// A discount above what there is.
    #[error("more is taken off than it comes to; take off less")]
    MoreOff,
    /// It is on an invoice already.
    #[error("it is on an invoice, and that stays as it is; leave it out")]
    OnInvoice,
}

/// Why a request is refused.
#[derive(Debug, Clone, PartialEq, Eq, Error)]
pub enum Refusal {
    /// The order exists already.
    #[error("this order is open already")]
    AlreadyOpen,
    /// Somebody else has to let this pass.
    #[error("this is for somebody else to let pass")]
    NotYoursToWaive {
        reason: ReasonKey,
        /// Who may.
        by: WaivedBy,
    },
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
        what: EntryFault,
    },
    /// Somebody else changed the price meanwhile, and both changed the same.
    #[error("the price was changed meanwhile; look at both and set it again")]
    PriceChanged {
        /// The decision that made it what it is.
        by: CommandId,
        /// What both changed; where the author had seen no price, all of it.
        clashes: Vec<Clash>,
    },
    /// What is to be written down is no longer what its author saw.
    #[error("the sum or what was agreed has changed meanwhile; look at both and decide again")]
    SumChanged(Box<SumChange>),
    /// There is more or less of the reason than its author saw.
    #[error("there is more or less of it than was seen; look again and decide again")]
    FigureChanged {
        /// How much was seen.
        seen: String,
        /// The reason as it stands.
        now: Box<Reason>,
    },
    /// Everything is on an invoice.
    #[error("everything is on an invoice already; what is added later goes on the next one")]
    NothingToCharge,
    /// There is no such invoice.
    #[error("there is no such invoice for that payer; look at the order's invoices")]
    NoSuchInvoice {
        /// Whose.
        payer: Payer,
    },
    /// What is to be taken back makes no sense.
    #[error("{fault}")]
    BadCredit {
        /// Where, what, and how to mend it.
        fault: Fault,
    },
    /// The sums are beyond all measure.
    #[error("the sum is too large to be reckoned; look at quantities, prices and taxes again")]
    TooLarge,
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
    /// Something stands on the order that has to come to its end first.
    #[error("something still stands on this order; bring each to its end first")]
    NotVoidable {
        /// What.
        standing: Vec<Standing>,
    },
    /// A vehicle that leaves apart needs its boxes counted.
    #[error("count the boxes that go with it")]
    BoxesNotCounted,
    /// A vehicle that leaves apart needs a signature.
    #[error("have the open list signed")]
    NotSigned,
}

/// What a payer pays, as it was seen and as it is now.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct SumChange {
    /// Who pays.
    pub payer: Payer,
    /// What they would have paid, as it was seen.
    pub seen: Option<Totals>,
    /// What they had agreed to, as it was seen.
    pub agreed: Option<Ceiling>,
    /// What they would pay now.
    pub now: Totals,
    /// What they have agreed to now.
    pub ceiling: Ceiling,
}

impl From<TooLarge> for Refusal {
    fn from(_: TooLarge) -> Self {
        Self::TooLarge
    }
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
            // Much is taken back only when the vehicle is gone.
            Request::TakeBack { .. } | Request::WithdrawWaiver { .. } | Request::Credit { .. }
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
        Request::Price { entries, after } => set_price(order, context, entries, &after)?,
        Request::AddToPrice { entries } => add_to_price(order, context, entries)?,
        Request::WriteDown { payer, after } => bring_down(order, payer, after)?,
        Request::Charge { after } => charge(order, context, &after)?,
        Request::Credit {
            invoice,
            payer,
            lines,
            words,
        } => credit(order, context, invoice, payer, lines, words)?,
        Request::Waive {
            gate,
            reason,
            figure,
            words,
        } => waive(order, context, gate, reason, &figure, words)?,
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

fn waive(
    order: &Order,
    context: &Context,
    gate: Gate,
    reason: ReasonKey,
    seen: &str,
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
    if !context.may_waive.contains(&found.waived_by()) {
        return Err(Refusal::NotYoursToWaive {
            reason,
            by: found.waived_by(),
        });
    }
    if found.figure != seen {
        return Err(Refusal::FigureChanged {
            seen: seen.to_owned(),
            now: Box::new(found.clone()),
        });
    }
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
