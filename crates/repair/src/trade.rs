//! What the trade knows of an item: how its name was read when somebody first spoke of it,
//! what then is owed when it comes off, and which gates stay shut meanwhile.
//!
//! It stands in the declaration, with the version of the tables it was read by, so that an
//! order reads the same for ever. A newer table counts only once somebody says so.

pub(crate) mod sorts;

use crate::account::Account;
use crate::code::{PieceIs, WorkIs};
use crate::item::Item;
use crate::text::{Token, Written};
use states::{Gate, Kind, State, System};

/// How sure a reading is.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum SureIs {
    /// The words name one sort of thing.
    Sure,
    /// A word was guessed, spelled otherwise, or left over.
    Likely,
    /// Nobody knows before it is told.
    Unknown,
}

/// For how much one doing of a work counts.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum SharedIs {
    /// Once for the whole order.
    Order,
    /// Once for each wheel.
    Wheel,
    /// Once for each item.
    Item,
}

/// A work that moving an item leaves.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct TradeWork {
    /// Its code, such as `bleed-brakes`.
    pub sort: Token,
    /// The gates it shuts until it is done; none for what is due after a distance.
    pub before: Vec<Gate>,
    /// For how much one doing counts.
    pub shared: SharedIs,
    /// The distance after which it is due, as written.
    pub after: Option<Written>,
}

/// What the trade knows of one item.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Trade {
    /// The version of the tables it was read by.
    pub table: u32,
    /// How many words and rules of the shop's own were among them.
    pub additions: u32,
    /// The sort of thing, as the tables call it.
    pub sort: Option<Token>,
    /// How sure the reading is.
    pub sure: SureIs,
    /// The system it was read to belong to.
    pub system: System,
    /// The side, such as `front-left`.
    pub side: Option<Token>,
    /// Whether the stricter rules hold.
    pub safety: bool,
    /// The gates shut while it is out of its place.
    pub shuts: Vec<Gate>,
    /// The works owed once it was out of its place.
    pub owes: Vec<TradeWork>,
    /// The cautions that stand before it.
    pub cautions: Vec<Token>,
}

impl Trade {
    /// Whether it is known what the item is.
    #[must_use]
    pub fn is_known(&self) -> bool {
        self.sure != SureIs::Unknown
    }

    /// Whether it shuts a gate while it is out of its place.
    #[must_use]
    pub fn shuts(&self, gate: Gate) -> bool {
        shut(&self.shuts, gate)
    }

    /// What several readings of one thing come to: who understood nothing claims nothing
    /// beside somebody who did, and of those that did the stricter counts.
    pub(crate) fn together(readings: &[&Trade]) -> Option<Trade> {
        let known = readings.iter().filter(|trade| trade.is_known());
        let mut out = known
            .clone()
            .next()
            .or(readings.first())
            .map(|trade| (*trade).clone())?;
        for other in known.skip(1) {
            out.safety |= other.safety;
            out.shuts.extend(&other.shuts);
            out.shuts.sort_unstable();
            out.shuts.dedup();
            for owed in &other.owes {
                if !out.owes.contains(owed) {
                    out.owes.push(owed.clone());
                }
            }
            for caution in &other.cautions {
                if !out.cautions.contains(caution) {
                    out.cautions.push(caution.clone());
                }
            }
        }
        Some(out)
    }

    fn is(&self, sort: &str) -> bool {
        self.sort.as_ref().is_some_and(|own| own.as_str() == sort)
    }

    /// Whether something on that side may be on this one: who says no side may mean any.
    fn may_be_at(&self, other: &Trade) -> bool {
        match (&self.side, &other.side) {
            (Some(one), Some(two)) => {
                let (one, two) = (one.as_str(), two.as_str());
                one == two || one == "all" || two == "all" || one.contains(two) || two.contains(one)
            }
            _ => true,
        }
    }
}

/// Whether a gate is shut because these are.
fn shut(gates: &[Gate], gate: Gate) -> bool {
    gates.iter().any(|shut| gate.includes(*shut))
}

impl Item {
    /// What the trade knows of it, if its name was understood.
    #[must_use]
    pub fn known_trade(&self) -> Option<&Trade> {
        self.trade.as_ref().filter(|trade| trade.is_known())
    }

    /// Whether somebody, or a map, says that it belongs to another system than its name does:
    /// then both count.
    #[must_use]
    pub fn told_otherwise(&self) -> bool {
        self.known_trade()
            .is_some_and(|trade| self.system != trade.system && self.system != System::Unknown)
    }

    /// Whether both may belong to one wheel: who says no side may mean any.
    pub(crate) fn may_be_at_the_wheel_of(&self, other: &Item) -> bool {
        match (self.known_trade(), other.known_trade()) {
            (Some(one), Some(two)) => one.may_be_at(two),
            _ => true,
        }
    }

    /// Whether nobody knows what it is, and it may be of the safety class: it shuts every gate
    /// until told, at home or not.
    #[must_use]
    pub fn may_be_of_safety(&self) -> bool {
        let unread = self
            .trade
            .as_ref()
            .is_some_and(|trade| !trade.is_known() && trade.safety);
        unread && self.system == System::Unknown
    }

    /// Whether the trade shuts this gate while its pieces stand like this.
    pub(crate) fn trade_shuts(&self, gate: Gate, all_in_place: bool) -> bool {
        let Some(trade) = self.known_trade() else {
            return false;
        };
        if self.kind != Kind::Fasteners || !all_in_place {
            return trade.shuts(gate);
        }
        // On but not tight: what its torque is owed before.
        let torques = trade
            .owes
            .iter()
            .filter(|owed| is_torque(owed.sort.as_str()));
        let mut before: Vec<Gate> = torques.flat_map(|owed| owed.before.clone()).collect();
        if before.is_empty() {
            before.push(if trade.shuts(Gate::Road) {
                Gate::Road
            } else {
                Gate::HandOver
            });
        }
        shut(&before, gate)
    }

    /// The works that moving it leaves, as far as the account does not already show them done.
    pub(crate) fn trade_owes<'a>(
        &'a self,
        account: &'a Account,
    ) -> impl Iterator<Item = &'a TradeWork> + 'a {
        self.known_trade().into_iter().flat_map(move |trade| {
            trade
                .owes
                .iter()
                // A second pair of eyes is a check, not a debt.
                .filter(|owed| owed.sort.as_str() != sorts::SECOND_CHECK)
                .filter(move |owed| !shown_done(self, trade, owed.sort.as_str(), account))
        })
    }
}

fn is_torque(sort: &str) -> bool {
    matches!(
        sort,
        sorts::TORQUE | sorts::WHEEL_TORQUE | sorts::AXLE_NUT_TORQUE
    )
}

/// The older sort of work that a code stands for, for who asks by that.
#[must_use]
pub fn work_is(sort: &str) -> WorkIs {
    match sort {
        sorts::BLEED_BRAKES
        | sorts::BLEED_COOLING
        | sorts::BLEED_STEERING
        | sorts::BLEED_CLUTCH => WorkIs::Bleed,
        sorts::LEVEL_WARM => WorkIs::LevelWarm,
        sorts::LEVEL_COLD => WorkIs::LevelCold,
        sorts::LEAK_LOOK | sorts::GAS_LOOK => WorkIs::LookForLeaks,
        sorts::TORQUE => WorkIs::TorqueAgain,
        sorts::TORQUE_AFTER_DISTANCE => WorkIs::TorqueAfterDistance,
        sorts::PEDAL_HARD => WorkIs::PumpPedal,
        sorts::RELEARN => WorkIs::Relearn,
        sorts::ALIGNMENT => WorkIs::Alignment,
        _ => WorkIs::Other,
    }
}

/// Whether the account itself shows a work to be done: nuts that were named and are tight, a
/// new seal that is in, a fluid at its level.
fn shown_done(item: &Item, trade: &Trade, sort: &str, account: &Account) -> bool {
    let own = |is: Kind| item.kind == is;
    match sort {
        sorts::TORQUE | sorts::WHEEL_TORQUE | sorts::AXLE_NUT_TORQUE if own(Kind::Fasteners) => {
            account.open_item(&item.id).is_none()
        }
        sorts::WHEEL_NUTS_ON => all(account, trade, &|_, other| other.is(sorts::WHEEL_NUTS), &on),
        sorts::WHEEL_TORQUE => all(
            account,
            trade,
            &|_, other| other.is(sorts::WHEEL_NUTS),
            &home,
        ),
        sorts::AXLE_NUT_TORQUE => all(account, trade, &|_, other| other.is(sorts::AXLE_NUT), &home),
        sorts::TORQUE => all(account, trade, &holds_it(item), &home),
        sorts::NEW_SEAL if own(Kind::Seal) => new(account, item),
        sorts::NEW_SEAL => all(account, trade, &seals_it(item), &new),
        sorts::NEW_FASTENERS if own(Kind::Fasteners) => new(account, item),
        sorts::NEW_FASTENERS => all(account, trade, &holds_it(item), &new),
        // A fluid closes on its level; of what only borders on it somebody has to say so.
        level
            if level.starts_with(sorts::LEVEL)
                && !matches!(level, sorts::LEVEL_WARM | sorts::LEVEL_COLD) =>
        {
            own(Kind::Fluid) && account.open_item(&item.id).is_none()
        }
        // The fluid itself owes these, where it is on the order.
        sorts::LEVEL_WARM | sorts::LEVEL_COLD => {
            !own(Kind::Fluid) && has_fluid(account, item.system)
        }
        _ => false,
    }
}

type Meant<'a> = dyn Fn(&Item, &Trade) -> bool + 'a;

fn holds_it(item: &Item) -> impl Fn(&Item, &Trade) -> bool + '_ {
    |other, _| other.kind == Kind::Fasteners && other.system == item.system
}

fn seals_it(item: &Item) -> impl Fn(&Item, &Trade) -> bool + '_ {
    |other, _| other.kind == Kind::Seal && other.system == item.system
}

/// Whether some such items were moved on that side, and all of them are so.
fn all(
    account: &Account,
    trade: &Trade,
    meant: &Meant<'_>,
    are: &dyn Fn(&Account, &Item) -> bool,
) -> bool {
    let mut these = account
        .items
        .values()
        .filter(|other| account.is_disturbed(&other.id))
        .filter(|other| {
            let known = other.known_trade();
            known.is_some_and(|known| known.may_be_at(trade) && meant(other, known))
        })
        .peekable();
    these.peek().is_some() && these.all(|other| are(account, other))
}

fn home(account: &Account, item: &Item) -> bool {
    account.open_item(&item.id).is_none()
}

fn on(account: &Account, item: &Item) -> bool {
    stands(account, item, &|state, _| state.in_place())
}

fn new(account: &Account, item: &Item) -> bool {
    home(account, item) && stands(account, item, &|_, piece| piece != PieceIs::Original)
}

fn stands(account: &Account, item: &Item, so: &dyn Fn(State, PieceIs) -> bool) -> bool {
    account.positions(&item.id).into_iter().all(|position| {
        let stands = account.moves.stands(&item.id, position);
        stands.iter().all(|stand| so(stand.state, stand.piece))
    })
}

fn has_fluid(account: &Account, system: System) -> bool {
    account.items.values().any(|item| {
        item.kind == Kind::Fluid && item.system == system && account.is_disturbed(&item.id)
    })
}
