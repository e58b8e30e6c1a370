//! What one request looks at: who asks, the world at one position of the log, one time.
//!
//! A snapshot holds no lock. Whatever is written while a page is made goes into a world of
//! its own, which the next snapshot shows.

use crate::caller::Caller;
use crate::words::Texts;
use crate::world::World;
use jiff::Timestamp;
use jiff::tz::TimeZone;
use repair::Rules;
use std::any::{Any, TypeId};
use std::collections::HashMap;
use std::sync::{Arc, Mutex, PoisonError};
use store::Store;
use trade::Vocabulary;

/// One request's view of the shop.
pub struct Snapshot<'a> {
    caller: &'a Caller,
    world: Arc<World>,
    texts: &'a Texts,
    shelves: &'a Shelves,
    now: Timestamp,
}

/// What rooms of this crate keep from one request to the next because making it again is
/// dear: maps that were read, plans that were found. Each keeps what it likes under a type of
/// its own.
#[derive(Default)]
pub struct Shelves(Mutex<HashMap<TypeId, Arc<dyn Any + Send + Sync>>>);

impl Shelves {
    /// The shelf of this type, empty at first.
    pub fn shelf<T: Default + Send + Sync + 'static>(&self) -> Arc<T> {
        let mut all = self.0.lock().unwrap_or_else(PoisonError::into_inner);
        let shelf = all
            .entry(TypeId::of::<T>())
            .or_insert_with(|| Arc::new(T::default()));
        Arc::clone(shelf)
            .downcast()
            .expect("a shelf lies under its own type")
    }

    /// The same with a shelf that others use as well.
    pub(crate) fn with<T: Send + Sync + 'static>(self, shelf: Arc<T>) -> Self {
        let mut all = self.0.lock().unwrap_or_else(PoisonError::into_inner);
        all.insert(TypeId::of::<T>(), shelf);
        drop(all);
        self
    }
}

impl<'a> Snapshot<'a> {
    /// A snapshot of this world, at this time.
    #[must_use]
    pub fn new(
        caller: &'a Caller,
        world: Arc<World>,
        texts: &'a Texts,
        shelves: &'a Shelves,
        now: Timestamp,
    ) -> Self {
        Self {
            caller,
            world,
            texts,
            shelves,
            now,
        }
    }

    /// Who asks.
    #[must_use]
    pub fn caller(&self) -> &Caller {
        self.caller
    }

    /// The world.
    #[must_use]
    pub fn world(&self) -> &World {
        &self.world
    }

    /// The store and the log's name.
    #[must_use]
    pub fn record(&self) -> (&dyn Store, &str) {
        self.world.record()
    }

    /// The texts behind commitments.
    #[must_use]
    pub fn texts(&self) -> &Texts {
        self.texts
    }

    /// The time.
    #[must_use]
    pub fn now(&self) -> Timestamp {
        self.now
    }

    /// The time and zone of questions asked now.
    #[must_use]
    pub fn rules(&self) -> Rules {
        rules(&self.world, self.now)
    }

    /// The table of the trade with this shop's own words.
    #[must_use]
    pub fn vocabulary(&self) -> Arc<Vocabulary> {
        crate::own_words::vocabulary(&self.world, self.texts, self.shelves)
    }

    pub(crate) fn shelf<T: Default + Send + Sync + 'static>(&self) -> Arc<T> {
        self.shelves.shelf()
    }
}

/// The time and zone of questions asked at a time.
pub(crate) fn rules(world: &World, now: Timestamp) -> Rules {
    let zone = world
        .shop
        .settings()
        .and_then(|settings| TimeZone::get(&settings.zone).ok())
        .unwrap_or(TimeZone::UTC);
    Rules {
        now,
        zone,
        leeway: crate::places::leeway_of(&world.shop),
    }
}
