//! Requests, which may be refused, and the decisions that answer them.

use crate::code::WorkIs;
use crate::fact::Fact;
use crate::ids::{CommandId, CustomerId, MapId, VehicleId};
use crate::text::{File, Token, Words};
use crate::{Until, reason::ReasonKey};
use jiff::Timestamp;
use price::{CreditLine, Entry, Payer, Share, TaxRule, Terms, Totals};
use rust_decimal::Decimal;
use states::{Gate, ItemId, Need, Position, State};
use std::collections::BTreeMap;

/// How a vehicle leaves.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Leaves {
    /// It drives away, repaired or put back.
    DrivesAway,
    /// It is collected apart: the open list goes with it.
    CollectedApart,
}

/// How an order ends.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Ending {
    Repaired,
    /// The complaint could not be brought on.
    NotReproduced,
    /// Declined and put back together.
    DeclinedPutBack,
    /// Declined and collected apart.
    DeclinedApart,
}

/// A need that a map states for a move to a state.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct StatedNeed {
    /// The item that moves.
    pub item: ItemId,
    /// The positions; none named means all.
    pub at: Vec<Position>,
    /// The state moved to.
    pub to: State,
    /// What must hold.
    pub need: Need,
}

/// Work that a map says a move makes due.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct StatedWork {
    /// The item that moves.
    pub item: ItemId,
    /// The state moved to.
    pub to: State,
    /// What is then due.
    pub work: WorkIs,
    /// In the map's words.
    pub words: Option<Words>,
    /// Until when.
    pub until: Until,
    /// The map's own item for the work; none in adoptions of before it was kept.
    pub named: Option<ItemId>,
    /// What the trade calls it, where the map says so.
    pub sort: Option<Token>,
}

/// A person asks for something that may be refused.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum Request {
    /// Open this order.
    Open {
        vehicle: VehicleId,
        customer: CustomerId,
    },
    /// Work by this version of a map.
    Adopt {
        map: MapId,
        version: u32,
        /// The needs it states.
        needs: Vec<StatedNeed>,
        /// The work it makes due.
        work: Vec<StatedWork>,
    },
    /// Set the price.
    Price {
        /// Every entry that is on no invoice yet, in place of those before.
        entries: Vec<Entry>,
        /// The decisions about the price that were seen.
        after: Vec<CommandId>,
    },
    /// Add to the price what was found on the way.
    AddToPrice {
        /// The entries added; those there are stay.
        entries: Vec<Entry>,
    },
    /// Bring a payer's sum down to what was agreed.
    WriteDown {
        payer: Payer,
        /// The decisions about the price, and the payer's answers, that were seen.
        after: Vec<CommandId>,
    },
    /// Write the invoice.
    Charge {
        /// The decisions about the price that were seen; whatever stands, if none is named.
        after: Vec<CommandId>,
    },
    /// Take back some of an invoice. It stays as it was written.
    Credit {
        /// The command that had it written.
        invoice: CommandId,
        /// Whose invoice.
        payer: Payer,
        /// What is taken back of its lines.
        lines: Vec<CreditLine>,
        /// Why.
        words: Words,
    },
    /// Let a reason pass.
    Waive {
        /// At this gate.
        gate: Gate,
        reason: ReasonKey,
        /// How much of it was seen; nothing, where its name says it all.
        figure: String,
        /// Why.
        words: Words,
    },
    /// Take a waiver back.
    WithdrawWaiver {
        /// The command that gave it.
        waiver: CommandId,
    },
    /// Hand the vehicle over.
    HandOver {
        /// How it leaves.
        leaves: Leaves,
        /// How the order ends.
        ending: Ending,
        /// Boxes that go with it, counted, if it is collected apart.
        boxes: Option<u16>,
        /// The signature for a vehicle collected apart.
        signature: Option<File>,
        /// Who signed, in words, where no picture was drawn.
        signed_by: Option<Words>,
    },
    /// The vehicle is back on this order.
    TakeBack {
        /// Why.
        words: Words,
    },
    /// The order was opened by mistake.
    Void {
        /// Why.
        words: Words,
    },
}

/// What was decided.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum Decision {
    /// The order is open.
    Opened {
        /// The number people call it by.
        number: u64,
        vehicle: VehicleId,
        customer: CustomerId,
        /// The currency of its sums, three letters.
        currency: String,
        /// Digits of that currency after the point.
        minor_digits: u32,
    },
    /// A map's needs and work hold for this order.
    Adopted {
        map: MapId,
        version: u32,
        /// The needs it states.
        needs: Vec<StatedNeed>,
        /// The work it makes due.
        work: Vec<StatedWork>,
    },
    /// The price is set.
    Priced {
        /// Every entry that is on no invoice.
        entries: Vec<Entry>,
        /// The taxes that held.
        taxes: Vec<TaxRule>,
        /// What each payer owes for these, written down where it was.
        totals: BTreeMap<Payer, Totals>,
        /// What stays taken off each payer's sum, before tax.
        written_down: BTreeMap<Payer, Decimal>,
        /// The invoices that stand beside it, by the commands that had them written.
        invoiced: Vec<CommandId>,
        /// The decision about the price that was seen.
        after: Vec<CommandId>,
        /// What else held; none, where nothing but the taxes did.
        terms: Option<Terms>,
    },
    /// A payer's sum was brought down.
    WrittenDown {
        payer: Payer,
        /// By so much before tax.
        amount: Decimal,
        /// What is left to pay of what is on no invoice. Those that are older do not say: tax
        /// is then brought down in proportion.
        left: Option<Totals>,
        /// The decisions about the price, and the payer's answers, that were seen.
        after: Vec<CommandId>,
    },
    /// The invoice is written.
    Charged {
        /// What each payer owes.
        totals: BTreeMap<Payer, Totals>,
        /// What was taken off each payer's sum before tax.
        written_down: BTreeMap<Payer, Decimal>,
        /// The number of the invoice for each payer.
        numbers: BTreeMap<Payer, u64>,
    },
    /// Some of an invoice is taken back.
    Credited {
        /// The command that had the invoice written.
        invoice: CommandId,
        /// Whose invoice.
        payer: Payer,
        /// What is taken back of its lines.
        lines: Vec<CreditLine>,
        /// What goes back of each of its taxes.
        shares: Vec<Share>,
        /// What goes back in all.
        totals: Totals,
        /// The number of the credit note.
        number: u64,
        /// Why.
        words: Words,
    },
    /// A reason may pass.
    Waived {
        /// At this gate.
        gate: Gate,
        reason: ReasonKey,
        /// How much of it there was: the waiver holds for so much and no more.
        figure: String,
        /// Whether it prints on the invoice.
        prints: bool,
        /// Why.
        words: Words,
    },
    /// A waiver no longer holds.
    WaiverWithdrawn {
        /// The command that gave it.
        waiver: CommandId,
    },
    /// The vehicle was handed over.
    HandedOver {
        /// How it left.
        leaves: Leaves,
        /// How the order ended.
        ending: Ending,
        /// Reasons that stood and were known.
        known: Vec<ReasonKey>,
        /// Boxes that went with it.
        boxes: Option<u16>,
        signature: Option<File>,
        /// Who signed.
        signed_by: Option<Words>,
        /// When it was decided.
        decided_at: Timestamp,
    },
    /// The vehicle is back.
    TakenBack {
        /// Why.
        words: Words,
    },
    /// The order never was.
    Voided {
        /// Why.
        words: Words,
    },
}

/// Everything that can stand in an order's stream.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum Event {
    Fact(Fact),
    Decision(Decision),
}
