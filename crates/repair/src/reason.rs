//! Reasons: why a gate says no, or what the desk should still see to. Codes with the
//! item and the figures; whoever shows them fills in the words.

use crate::account::OpenItem;
use crate::code::{ProofIs, Work};
use crate::debts::Debt;
use crate::ids::{CommandId, LineId, PartId, PersonId, SnagId, SubletId};
use crate::text::{Token, Words, Written};
use crate::trade::sorts;
use price::{Over, Payer};
use rust_decimal::Decimal;
use states::{ItemId, Kind, Position, State};

/// The name a reason keeps as long as it stands: a waiver names it. More missing than
/// before is another reason. How it is spelled, `record` knows. Each stands for the [`Why`]
/// that is called like it.
#[derive(Debug, Clone, PartialEq, Eq, PartialOrd, Ord)]
pub enum ReasonKey {
    /// With where its pieces stand that are not at home.
    Open {
        item: ItemId,
        away: Vec<Away>,
    },
    /// With where its pieces stand that are not at home.
    Unlocated {
        item: ItemId,
        away: Vec<Away>,
    },
    NotCaught(ItemId),
    MuchMissing(ItemId),
    AmountUnread(ItemId),
    LitresShort(ItemId),
    FateUntold(ItemId),
    NotKnown(ItemId),
    TorqueToldApart(ItemId),
    /// With what says [which work](Work::identity) it is.
    Owed(Work),
    SnagOpen(SnagId),
    NotChecked(ItemId),
    ProofMissing(ProofIs),
    ProofFailed(ProofIs),
    PartAdrift(PartId),
    OldPartAdrift(PartId),
    SubletOut(SubletId),
    ComplaintNotLookedAt(LineId),
    LineUnfinished(LineId),
    NotPriced,
    NoConsent(Payer),
    OverCeiling(Payer),
    NotCharged,
    Unpaid,
    KeysHere,
    /// A name that this program never gives; it is kept as it came, and stands for nothing.
    Foreign(String),
}

/// Where one piece that is not at home stands; more than one state where people disagree.
#[derive(Debug, Clone, PartialEq, Eq, PartialOrd, Ord)]
pub struct Away {
    pub position: Position,
    pub states: Vec<State>,
}

#[derive(Debug, Clone, PartialEq, Eq)]
pub enum Why {
    /// An item is not at home.
    Open(OpenItem),
    /// Nobody has said which system an item belongs to.
    Unlocated(OpenItem),
    /// A fluid is out and nothing says where it went.
    NotCaught {
        /// The fluid.
        item: ItemId,
    },
    /// Much less went in than came out, and no cold level is recorded.
    MuchMissing {
        /// The fluid.
        item: ItemId,
        out_litres: Decimal,
        in_litres: Decimal,
    },
    /// An amount that came out or went in cannot be read as one, so that what is missing
    /// is not known, and no cold level is recorded.
    AmountUnread {
        /// The fluid.
        item: ItemId,
        /// The amounts, as written.
        amounts: Vec<Written>,
    },
    /// Less went in than came out, by more than a pan hides. It warns; the level decides.
    LitresShort {
        /// The fluid.
        item: ItemId,
        out_litres: Decimal,
        in_litres: Decimal,
    },
    /// Coolant came out, and nothing says how much or what became of it.
    FateUntold {
        /// The fluid.
        item: ItemId,
    },
    /// It was moved, nobody knows what it is, and it may be of the safety class.
    NotKnown { item: ItemId },
    /// Two people told different torques, and nobody who saw both has said which holds.
    TorqueToldApart { item: ItemId },
    /// Work is owed.
    Owed(Debt),
    /// A snag has not come to its end.
    SnagOpen { snag: SnagId, item: Option<ItemId> },
    /// Nobody but the one who did it has checked.
    NotChecked {
        item: ItemId,
        /// Who moved it last.
        by: PersonId,
        /// How many moves it has seen.
        moves: usize,
    },
    ProofMissing {
        /// Which.
        proof: ProofIs,
        /// How many moves disturbed what it speaks of.
        moves: usize,
    },
    ProofFailed {
        /// Which.
        proof: ProofIs,
        /// How many moves disturbed what it speaks of.
        moves: usize,
    },
    /// Some of a new part is neither fitted, returned nor stocked.
    PartAdrift {
        part: PartId,
        /// How many.
        quantity: Decimal,
    },
    /// Nothing says where an old part went.
    OldPartAdrift {
        /// The part that replaces it.
        part: PartId,
    },
    /// Something is still away to be worked on.
    SubletOut {
        /// Which.
        sublet: SubletId,
    },
    /// A complaint about brakes, steering, tyres or wheels, and nobody has said what was found.
    ComplaintNotLookedAt { line: LineId },
    /// A complaint has no cause and correction yet.
    LineUnfinished { line: LineId },
    /// There is no price.
    NotPriced,
    /// A payer has agreed to nothing yet.
    NoConsent {
        /// Who.
        payer: Payer,
    },
    /// The sum passes what was agreed.
    OverCeiling {
        /// Who pays.
        payer: Payer,
        /// By how much.
        over: Over,
    },
    /// No invoice is written for the price as it stands.
    NotCharged,
    /// The customer has not paid and it is on no account.
    Unpaid {
        /// What is left.
        balance: Decimal,
    },
    /// The keys hang with us.
    KeysHere,
}

/// Whether a reason may be waived.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Waivable {
    /// By a named person with a written reason.
    Yes,
    /// The same, and it prints on the invoice.
    Prints,
    Never,
}

/// A waiver that stands.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Waiver {
    /// The command that gave it.
    pub command: CommandId,
    /// Who gave it.
    pub by: PersonId,
    /// Why, in words.
    pub words: Words,
    /// Whether it prints on the invoice.
    pub prints: bool,
}

/// One reason at a gate.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Reason {
    /// Its name.
    pub key: ReasonKey,
    /// How much of it there is. A waiver holds for so much and no more.
    pub figure: String,
    pub why: Why,
    /// Whether it blocks, waivers apart.
    pub blocks: bool,
    /// Whether it may be waived.
    pub waivable: Waivable,
    /// The waiver that lets it pass.
    pub waiver: Option<Waiver>,
}

impl Reason {
    /// A reason that blocks and is waived by nobody yet.
    #[must_use]
    pub fn new(why: Why) -> Self {
        Self {
            key: ReasonKey::from(&why),
            figure: figure(&why),
            blocks: blocks(&why),
            waivable: waivable(&why),
            why,
            waiver: None,
        }
    }

    /// Whether the gate stays shut because of it.
    #[must_use]
    pub fn shuts(&self) -> bool {
        self.blocks && self.waiver.is_none()
    }
}

impl From<&Why> for ReasonKey {
    fn from(why: &Why) -> Self {
        match why {
            Why::Open(open) => Self::Open {
                item: open.item.clone(),
                away: away(open),
            },
            Why::Unlocated(open) => Self::Unlocated {
                item: open.item.clone(),
                away: away(open),
            },
            Why::NotCaught { item } => Self::NotCaught(item.clone()),
            Why::MuchMissing { item, .. } => Self::MuchMissing(item.clone()),
            Why::AmountUnread { item, .. } => Self::AmountUnread(item.clone()),
            Why::LitresShort { item, .. } => Self::LitresShort(item.clone()),
            Why::FateUntold { item } => Self::FateUntold(item.clone()),
            Why::NotKnown { item } => Self::NotKnown(item.clone()),
            Why::TorqueToldApart { item } => Self::TorqueToldApart(item.clone()),
            Why::Owed(debt) => Self::Owed(debt.work.identity()),
            Why::SnagOpen { snag, .. } => Self::SnagOpen(snag.clone()),
            Why::NotChecked { item, .. } => Self::NotChecked(item.clone()),
            Why::ProofMissing { proof, .. } => Self::ProofMissing(*proof),
            Why::ProofFailed { proof, .. } => Self::ProofFailed(*proof),
            Why::PartAdrift { part, .. } => Self::PartAdrift(part.clone()),
            Why::OldPartAdrift { part } => Self::OldPartAdrift(part.clone()),
            Why::SubletOut { sublet } => Self::SubletOut(sublet.clone()),
            Why::ComplaintNotLookedAt { line } => Self::ComplaintNotLookedAt(line.clone()),
            Why::LineUnfinished { line } => Self::LineUnfinished(line.clone()),
            Why::NotPriced => Self::NotPriced,
            Why::NoConsent { payer } => Self::NoConsent(*payer),
            Why::OverCeiling { payer, .. } => Self::OverCeiling(*payer),
            Why::NotCharged => Self::NotCharged,
            Why::Unpaid { .. } => Self::Unpaid,
            Why::KeysHere => Self::KeysHere,
        }
    }
}

fn away(open: &OpenItem) -> Vec<Away> {
    let pieces = open.pieces.iter().map(|piece| Away {
        position: piece.position,
        states: piece.stands.iter().map(|stand| stand.state).collect(),
    });
    pieces.collect()
}

/// How much of a reason there is, where its name does not say.
fn figure(why: &Why) -> String {
    match why {
        Why::MuchMissing {
            out_litres,
            in_litres,
            ..
        }
        | Why::LitresShort {
            out_litres,
            in_litres,
            ..
        } => out_litres
            .saturating_sub(*in_litres)
            .normalize()
            .to_string(),
        Why::AmountUnread { amounts, .. } => amounts.len().to_string(),
        Why::Owed(debt) => debt.causes.len().to_string(),
        Why::NotChecked { moves, .. }
        | Why::ProofMissing { moves, .. }
        | Why::ProofFailed { moves, .. } => moves.to_string(),
        Why::PartAdrift { quantity, .. } => quantity.normalize().to_string(),
        Why::Unpaid { balance } => balance.normalize().to_string(),
        _ => String::new(),
    }
}

fn blocks(why: &Why) -> bool {
    !matches!(
        why,
        Why::OverCeiling { .. }
            | Why::NoConsent { .. }
            | Why::LineUnfinished { .. }
            | Why::LitresShort { .. }
            | Why::FateUntold { .. }
    )
}

fn waivable(why: &Why) -> Waivable {
    match why {
        // It may be a wheel nut: say where it belongs, then it can be judged.
        Why::Unlocated(_) | Why::NotKnown { .. } | Why::TorqueToldApart { .. } => Waivable::Never,
        Why::Open(open) => match &open.known {
            Some(item) if item.kind == Kind::Fluid => Waivable::Prints,
            Some(item) if item.is_safety() => Waivable::Never,
            Some(item) if item.kind == Kind::PutIn && item.system.is_safety() => Waivable::Never,
            Some(item) if item.kind == Kind::PutIn => Waivable::Prints,
            Some(_) => Waivable::Yes,
            None => Waivable::Never,
        },
        Why::Owed(debt) if never_waived(debt) => Waivable::Never,
        Why::NotCaught { .. }
        | Why::MuchMissing { .. }
        | Why::AmountUnread { .. }
        | Why::NotChecked { .. }
        | Why::ProofMissing { .. }
        | Why::ProofFailed { .. }
        | Why::Owed(_)
        | Why::ComplaintNotLookedAt { .. }
        | Why::SnagOpen { .. } => Waivable::Prints,
        _ => Waivable::Yes,
    }
}

/// What nobody lets pass: a pedal that is not hard, wheels that are not tight, high voltage
/// that was not given free, an open or untightened joint of the safety class.
fn never_waived(debt: &Debt) -> bool {
    let Some(sort) = debt.work.sort.as_ref() else {
        return false;
    };
    let code = sort.as_str().split(':').next().unwrap_or_default();
    match code {
        sorts::PEDAL_HARD
        | sorts::WHEEL_NUTS_ON
        | sorts::WHEEL_TORQUE
        | sorts::AXLE_NUT_TORQUE
        | sorts::HV_RELEASE
        | sorts::HV_ISOLATION_TEST
        | sorts::BLEED_BRAKES => true,
        sorts::TORQUE | sorts::NEW_FASTENERS | sorts::LEAK_LOOK => debt.safety,
        _ => false,
    }
}

/// Who may let a reason pass.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum WaivedBy {
    /// Whoever sees to papers.
    Desk,
    /// The technician whose order it is.
    InCharge,
    /// The owner, or whom the owner named foreman.
    Foreman,
}

impl Reason {
    /// Who may let it pass, at the least.
    #[must_use]
    pub fn waived_by(&self) -> WaivedBy {
        match &self.why {
            Why::Owed(debt) => owed_waived_by(debt),
            Why::Open(_) => match self.waivable {
                Waivable::Yes => WaivedBy::InCharge,
                _ => WaivedBy::Foreman,
            },
            Why::NotChecked { .. }
            | Why::ProofMissing { .. }
            | Why::ProofFailed { .. }
            | Why::MuchMissing { .. }
            | Why::AmountUnread { .. }
            | Why::NotCaught { .. }
            | Why::ComplaintNotLookedAt { .. }
            | Why::SnagOpen { .. } => WaivedBy::Foreman,
            Why::LitresShort { .. } | Why::FateUntold { .. } | Why::PartAdrift { .. } => {
                WaivedBy::InCharge
            }
            _ => WaivedBy::Desk,
        }
    }
}

/// Codes, learned values and looks are the technician's once the customer is told; the rest is
/// the foreman's.
fn owed_waived_by(debt: &Debt) -> WaivedBy {
    let code = debt.work.sort.as_ref().map(Token::as_str);
    match code {
        Some(
            sorts::CODES_READ
            | sorts::RELEARN
            | sorts::FUNCTION_SEEN
            | sorts::BALANCE
            | sorts::WATER_TEST
            | sorts::BED_IN,
        ) => WaivedBy::InCharge,
        _ => WaivedBy::Foreman,
    }
}
