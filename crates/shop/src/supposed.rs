//! What an order would come to if something were done next: for a device that goes where the
//! network does not reach, and takes along the pages that follow.

use crate::command::{Said, read};
use crate::planning::search::Made;
use crate::snapshot::{Shelves, Snapshot};
use crate::trade_read::{Checks, fill_in};
use crate::trouble::Trouble;
use crate::words::with_sent;
use crate::world::World;
use record::{AnyEvent, Private, Stream};
use repair::{Event, Recorded, Stamp, Words, record as record_fact};
use serde_json::Value;
use std::sync::Arc;

/// A world in which some things were done that nobody has done yet.
pub struct Supposed {
    world: Arc<World>,
    words: Vec<Private>,
    /// Its own, since what is made from it is true of no record; but for plans, which follow from
    /// what is asked alone.
    shelves: Shelves,
}

impl Supposed {
    /// The world as it is.
    #[must_use]
    pub fn of(snap: &Snapshot<'_>) -> Self {
        Self {
            world: Arc::new(snap.world().clone()),
            words: Vec::new(),
            shelves: Shelves::default().with(snap.shelf::<Made>()),
        }
    }

    /// The same, with one more fact of an order done.
    ///
    /// # Errors
    /// [`Trouble`]: it cannot be read, or is no fact of an order.
    pub fn done(&mut self, snap: &Snapshot<'_>, sent: Value) -> Result<(), Trouble> {
        let command = read(sent)?;
        let (Said::Fact(AnyEvent::Order(Event::Fact(fact))), Stream::Order(id)) =
            (command.said, &command.stream)
        else {
            return Err(Trouble::unreadable(
                "what is supposed",
                "it is no fact of an order",
                "suppose what is done at the vehicle",
            ));
        };
        self.words.extend(command.private);
        let learns = snap.caller().only_learns();
        let came = |words: Words| {
            let found = self.words.iter().find(|text| text.words == words)?;
            Some(String::from_utf8_lossy(&found.content).into_owned())
        };
        let checks = Checks {
            learns,
            alone: self.world.shop.alone_allowed().is_some(),
        };
        let order = self.world.order(id)?;
        let facts = fill_in(fact, &checks, &snap.vocabulary(), &came);
        let events = facts.into_iter().flat_map(|fact| record_fact(&order, fact));
        let stamp = Stamp {
            who: command.who.clone(),
            at: snap.now(),
        };
        let mut world = World::clone(&self.world);
        for (nth, event) in (0..).zip(events) {
            let recorded = Recorded {
                command: command.id.clone(),
                nth,
                stamp: stamp.clone(),
                event: AnyEvent::Order(event),
            };
            world.suppose(&command.stream, recorded)?;
        }
        self.world = Arc::new(world);
        Ok(())
    }

    /// Looks at it.
    ///
    /// # Errors
    /// As `look` says.
    pub fn look<T>(
        &self,
        snap: &Snapshot<'_>,
        look: impl FnOnce(&Snapshot<'_>) -> Result<T, Trouble>,
    ) -> Result<T, Trouble> {
        let supposed = Snapshot::new(
            snap.caller(),
            Arc::clone(&self.world),
            snap.texts(),
            &self.shelves,
            snap.now(),
        );
        with_sent(&self.words, || look(&supposed))
    }
}
