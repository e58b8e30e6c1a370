//! The account of one repair order, and what stands beside it.
//!
//! Whatever leaves its place becomes an open item; whatever it leaves to be done
//! becomes a debt; what the vehicle may do next follows from what is open.
//!
//! Three plain functions carry it: [`record`] takes a fact and never fails, [`decide`]
//! answers a request and may refuse, [`evolve`] files an event and is total. All else
//! is read off the filed events: [`Account`] (where everything stands), [`debts()`],
//! [`may`] (the six gates), [`papers`].
//!
//! This room does no input or output, reads no clock and draws no random number. It
//! knows nothing of how events are stored or sent, of screens, or of any text that a
//! person typed: it sees commitments to such texts ([`Words`]) and codes.

mod account;
mod agreed;
mod aim;
mod alarms;
mod beside;
mod bill;
mod code;
mod coming;
mod crediting;
mod debts;
mod decide;
mod decision;
mod fact;
mod gates;
mod grown;
mod how_to;
mod ids;
mod item;
mod items;
mod left;
mod litres;
mod moves;
mod order;
pub mod papers;
mod phrases;
mod pricing;
mod proofs;
mod pushing;
mod reading;
mod reason;
mod rules;
pub mod snags;
pub mod stock;
mod text;
mod told;
mod trade;
mod voiding;

pub use account::{Account, OpenItem, OpenPiece};
pub use aim::{Adoption, Aim, adoption, aim};
pub use alarms::late_alarms;
pub use beside::{
    Beside, Can, CouldBe, Customer, CustomerFact, DaySpan, DaysOff, Field, Fitted, Language,
    Letterhead, MapDrafts, MapFact, MoneyRules, Role, Seat, Settings, Shop, ShopFact, StallIs,
    Told, Units, Vehicle, VehicleFact, VinRead, Week, Weights,
};
pub use code::{
    AimIs, CheckIs, Clock, ConsentStep, DifferenceIs, Fate, KeyStep, LevelAt, LineText, Move,
    Noted, OdometerAt, OldPartFate, Outcome, PaidBy, PartStep, PieceIs, Place, ProofIs, Reading,
    Resolved, RungAbout, Sits, SnagIs, StallNeeded, Stand, Step, Until, Way, Work, WorkIs,
};
pub use coming::{Turnout, expected, expected_told, turnouts};
pub use debts::{Debt, debts};
pub use decide::{Context, EntryFault, Refusal, SumChange, decide, record};
pub use decision::{Decision, Ending, Event, Leaves, Request, StatedNeed, StatedWork};
pub use fact::Fact;
pub use gates::{Answer, may};
pub use how_to::{HowToNote, HowToWritten, how_to_written};
pub use ids::{
    CommandId, CustomerId, DaysOffId, DifferenceId, JobId, LineId, MapId, MoveId, NoteId, OrderId,
    PartId, PersonId, ProofId, SnagId, StageId, StallId, SubletId, VehicleId, WorkId,
};
pub use item::{Item, MayMiss, Pattern, Piece, PutIn};
pub use items::{ToldApart, told_of_items};
pub use left::{WorkLeft, answer_due, answer_due_told, work_left, work_left_told};
pub use litres::{Litres, litres};
pub use moves::{Moves, Node, Stated};
pub use order::{Decided, Filed, Order, Recorded, Stamp, Undone, evolve};
pub use price;
pub use proofs::{needed as proofs_needed, replaced as proofs_replaced};
pub use pushing::against_pushing;
pub use reading::OrderReading;
pub use reason::{Away, Reason, ReasonKey, Waivable, WaivedBy, Waiver, Why};
pub use rules::Rules;
pub use states::{Gate, ItemId, Kind, Need, Position, State, System, Zone};
pub use text::{File, NotPlain, Token, Words, Written};
pub use trade::{SharedIs, SureIs, Trade, TradeWork, work_is};
pub use voiding::Standing;
