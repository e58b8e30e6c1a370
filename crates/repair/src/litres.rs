//! Litres out and in, added up as written with their units.

use crate::account::Account;
use crate::code::LevelAt;
use crate::fact::Fact;
use crate::moves::Stated;
use crate::order::Order;
use crate::text::Written;
use measure::{Dimension, Unit};
use rust_decimal::Decimal;
use states::ItemId;
use std::collections::BTreeMap;

/// What came out of a fluid and went into it.
#[derive(Debug, Clone, PartialEq, Eq, Default)]
pub struct Litres {
    /// Litres that came out.
    pub out: Decimal,
    /// Litres that went in.
    pub poured: Decimal,
    /// Whether a level was seen cold and good since anybody last moved the fluid.
    pub cold_level_good: bool,
    /// Amounts that came out and that no unit of volume fits, as written.
    pub out_unread: Vec<Written>,
    /// Amounts that went in and that no unit of volume fits, as written: how much is in is
    /// then not known.
    pub poured_unread: Vec<Written>,
}

/// Missing litres that a pan and some spilling can hide: 0.3 to 0.5 L is honest.
const PAN_AND_SPILL: Decimal = Decimal::from_parts(5, 0, 0, false, 1);
/// Missing litres that block as long as no cold level is recorded.
const MUCH: Decimal = Decimal::ONE;

impl Litres {
    /// Litres missing, spill apart.
    #[must_use]
    pub fn missing(&self) -> Decimal {
        self.out.saturating_sub(self.poured)
    }

    /// Whether so little went in that measuring cannot explain it.
    #[must_use]
    pub fn is_short(&self) -> bool {
        self.missing() > PAN_AND_SPILL
    }

    /// Whether any amount cannot be read, so that what is missing is not known either.
    #[must_use]
    pub fn unknown(&self) -> bool {
        !self.out_unread.is_empty() || !self.poured_unread.is_empty()
    }

    /// Whether it is short by more than measuring explains, and yet does not block.
    #[must_use]
    pub fn warns(&self) -> bool {
        self.is_short() && !self.unknown() && !self.much_is_missing()
    }

    /// Whether so much is missing that it blocks.
    #[must_use]
    pub fn much_is_missing(&self) -> bool {
        self.missing() > MUCH && !self.unknown() && !self.cold_level_good
    }
}

/// Litres of every fluid that anything was said about.
#[must_use]
pub fn litres(order: &Order, account: &Account) -> BTreeMap<ItemId, Litres> {
    let mut out: BTreeMap<ItemId, Litres> = BTreeMap::new();
    for (_, filed) in order.beside_moves() {
        let (item, amount) = match &filed.fact {
            Fact::Drained { item, amount, .. } | Fact::Poured { item, amount, .. } => {
                (item, amount)
            }
            Fact::LevelSeen {
                item,
                level: LevelAt::Cold,
                good: true,
                after,
                ..
            } => {
                let seen = account.moves.seen_by(after);
                let name = account.moves.name(item).clone();
                let since = account
                    .moves
                    .live(item)
                    .all(|(id, node)| node.stated != Stated::Moved || seen.contains(id));
                out.entry(name).or_default().cold_level_good |= since;
                continue;
            }
            _ => continue,
        };
        let sums = out.entry(account.moves.name(item).clone()).or_default();
        let read = measure::read(amount.as_str(), Dimension::Volume)
            .ok()
            .and_then(|volume| volume.convert(Unit::Litre).ok());
        match (read, &filed.fact) {
            (Some(volume), Fact::Drained { .. }) => {
                sums.out = sums.out.saturating_add(volume.number());
            }
            (Some(volume), _) => sums.poured = sums.poured.saturating_add(volume.number()),
            (None, Fact::Drained { .. }) => sums.out_unread.push(amount.clone()),
            (None, _) => sums.poured_unread.push(amount.clone()),
        }
    }
    out
}
