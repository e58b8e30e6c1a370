//! Views of orders that were made before. Many look at one order, and it seldom changes
//! between two looks: what nothing was added to reads as it did.

use super::OrderView;
use crate::snapshot::Snapshot;
use crate::trouble::Trouble;
use crate::world::{customer_of, vehicle_of};
use phrases::Language;
use record::Stream;
use repair::{Order, OrderId};
use std::collections::BTreeMap;
use std::sync::{Arc, Mutex, PoisonError};

/// All that a view follows from: how long its streams are, the shop, which words were
/// erased, the minute, whether prices are shown, and what is spoken.
#[derive(Debug, Clone, PartialEq, Eq)]
pub(super) struct Basis {
    order: u64,
    /// Of each name that the vehicle has, and likewise the customer.
    vehicle: Vec<u64>,
    customer: Vec<u64>,
    shop: u64,
    forgotten: u64,
    minute: i64,
    prices: bool,
    language: Language,
}

/// A view with what it follows from.
type Kept = (Basis, Arc<OrderView>);

/// Views by order, whether prices are in them, and what is spoken.
#[derive(Default)]
pub(super) struct Made(Mutex<BTreeMap<(OrderId, bool, Language), Kept>>);

/// So many are kept before all are let go: a day's orders.
const MOST: usize = 64;

impl Basis {
    pub(super) fn of(snap: &Snapshot<'_>, id: &OrderId, order: &Order) -> Result<Self, Trouble> {
        let world = snap.world();
        let vehicles = vehicle_of(order).map(|id| world.same_vehicles(&id));
        let vehicles = vehicles.into_iter().flatten().map(Stream::Vehicle);
        let customers = customer_of(order).map(|id| world.same_customers(&id));
        let customers = customers.into_iter().flatten().map(Stream::Customer);
        Ok(Self {
            order: world.seq(&Stream::Order(id.clone()))?,
            vehicle: vehicles
                .map(|stream| world.seq(&stream))
                .collect::<Result<_, _>>()?,
            customer: customers
                .map(|stream| world.seq(&stream))
                .collect::<Result<_, _>>()?,
            shop: world.shop_position,
            forgotten: snap.texts().forgotten(),
            minute: snap.now().as_second().div_euclid(60),
            prices: snap.caller().sees_prices(),
            language: phrases::spoken(),
        })
    }
}

impl Made {
    pub(super) fn get(&self, id: &OrderId, basis: &Basis) -> Option<Arc<OrderView>> {
        let made = self.0.lock().unwrap_or_else(PoisonError::into_inner);
        let (of, view) = made.get(&(id.clone(), basis.prices, basis.language))?;
        (of == basis).then(|| Arc::clone(view))
    }

    pub(super) fn put(&self, id: &OrderId, basis: Basis, view: &Arc<OrderView>) {
        let mut made = self.0.lock().unwrap_or_else(PoisonError::into_inner);
        if made.len() >= MOST {
            made.clear();
        }
        made.insert(
            (id.clone(), basis.prices, basis.language),
            (basis, Arc::clone(view)),
        );
    }
}
