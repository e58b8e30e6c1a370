//! Finding orders, vehicles and customers by words.

use super::index::{drawer, odd};
use super::{World, filing, padded, squeezed};
use crate::trouble::Trouble;
use jiff::Timestamp;
use repair::{CustomerId, OrderId, VehicleId};
use std::collections::{BTreeMap, BTreeSet};
use std::ops::Range;
use store::{Card, Wanted};

/// Up to here a run of digits may be anything; from here on it is a telephone number, and
/// whether it was written with the country before it or with a nought does not matter.
const SHORTEST_PHONE: usize = 6;

/// So many times are looked at, the latest: more than a shop opens and hands over in a month.
const MOST_OF_A_TIME: usize = 4_000;

impl World {
    /// At most `most` orders, newest first, from below this number if one is given, that are
    /// found by these words: in their number, in the label, plate or identification number of
    /// their vehicle, in the name or telephone number of their customer, in a complaint, in a
    /// part and its number. Without words: every order.
    pub fn orders_saying(
        &self,
        words: &str,
        before: Option<u64>,
        most: usize,
    ) -> Result<Vec<(u64, OrderId)>, Trouble> {
        let part = sought(words);
        if part.is_empty() {
            return self.orders_before(before, most);
        }
        let mut below = before;
        let mut numbers = BTreeSet::new();
        while numbers.len() < most {
            let under = below.map(padded);
            let cards = self.index.cards(&Wanted {
                below: under.as_deref(),
                containing: Some(&part),
                backwards: true,
                most,
                ..Wanted::from(drawer::WORDS, "")
            })?;
            let Some(last) = cards.last() else { break };
            below = Some(filing::number_in(last)?);
            for card in &cards {
                numbers.insert(filing::number_in(card)?);
            }
        }
        let mut out = Vec::new();
        for number in numbers.into_iter().rev().take(most) {
            out.extend(self.order_numbered(number)?.map(|id| (number, id)));
        }
        Ok(out)
    }

    /// Orders that were opened or handed over in this time, likewise.
    pub fn orders_of_time(
        &self,
        time: &Range<Timestamp>,
        before: Option<u64>,
        most: usize,
    ) -> Result<Vec<(u64, OrderId)>, Trouble> {
        let [from, below] = [time.start, time.end].map(|at| filing::when_key(at, ""));
        let cards = self.index.cards(&Wanted {
            below: Some(&below),
            backwards: true,
            most: MOST_OF_A_TIME,
            ..Wanted::from(drawer::WHEN, &from)
        })?;
        let mut orders = BTreeMap::new();
        for card in &cards {
            let name = card.key.rsplit(' ').next().unwrap_or_default();
            let id = OrderId::new(name);
            let number = self.order_card(&id)?.number;
            orders.extend(number.map(|number| (number, id)));
        }
        let earlier = |(number, _): &(u64, OrderId)| before.is_none_or(|before| *number < before);
        Ok(orders
            .into_iter()
            .rev()
            .filter(earlier)
            .take(most)
            .collect())
    }

    /// Vehicles that are found by these words: in their label, plate or identification number.
    pub fn vehicles_saying(&self, words: &str, most: usize) -> Result<Vec<VehicleId>, Trouble> {
        let found = self.named(drawer::VEHICLE_WORDS, words, most)?;
        Ok(found.into_iter().map(VehicleId::new).collect())
    }

    /// Customers that are found by these words: in their name, telephone number, mail address
    /// or address.
    pub fn customers_saying(&self, words: &str, most: usize) -> Result<Vec<CustomerId>, Trouble> {
        let found = self.named(drawer::CUSTOMER_WORDS, words, most)?;
        Ok(found.into_iter().map(CustomerId::new).collect())
    }

    /// Vehicles by their plates, or by what they are where they have none; from after this key
    /// if one is given. Each with its key.
    pub fn vehicles_from(
        &self,
        after: &str,
        most: usize,
    ) -> Result<Vec<(String, VehicleId)>, Trouble> {
        self.listed(drawer::VEHICLE_LIST, after, most, VehicleId::new)
    }

    /// Customers by their names, likewise.
    pub fn customers_from(
        &self,
        after: &str,
        most: usize,
    ) -> Result<Vec<(String, CustomerId)>, Trouble> {
        self.listed(drawer::CUSTOMER_LIST, after, most, CustomerId::new)
    }

    fn named(&self, drawer: &str, words: &str, most: usize) -> Result<Vec<String>, Trouble> {
        let part = sought(words);
        if part.is_empty() {
            return Ok(Vec::new());
        }
        let cards = self.index.cards(&Wanted {
            containing: Some(&part),
            most: most.saturating_mul(filing::MOST_NAMES),
            ..Wanted::from(drawer, "")
        })?;
        let mut out: Vec<String> = Vec::new();
        for card in &cards {
            let name = name_in(card)?;
            if !out.contains(&name) {
                out.push(name);
            }
        }
        out.truncate(most);
        Ok(out)
    }

    fn listed<T>(
        &self,
        drawer: &str,
        after: &str,
        most: usize,
        id: impl Fn(String) -> T,
    ) -> Result<Vec<(String, T)>, Trouble> {
        // The key after this one.
        let from = match after {
            "" => String::new(),
            after => format!("{after}\u{0}"),
        };
        let cards = self.index.cards(&Wanted {
            most,
            ..Wanted::from(drawer, &from)
        })?;
        let name = |card: Card| -> Result<(String, T), Trouble> {
            let name = card.key.rsplit(' ').next().unwrap_or_default().to_owned();
            Ok((card.key, id(name)))
        };
        cards.into_iter().map(name).collect()
    }
}

/// The name in the key of a card of words.
fn name_in(card: &Card) -> Result<String, Trouble> {
    let name = card.key.split(' ').next();
    name.map(str::to_owned).ok_or_else(|| odd(card))
}

/// What is looked for, as it stands on the cards.
fn sought(words: &str) -> String {
    let part = squeezed(words);
    let digits = part.bytes().all(|byte| byte.is_ascii_digit());
    if digits && part.len() >= SHORTEST_PHONE {
        return part.trim_start_matches('0').to_owned();
    }
    part
}
