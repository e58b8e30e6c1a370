//! The card index: where everything of a shop is, so that nothing else has to be read to
//! find it. It lies beside the log as a cache, and says how far down the log it stands.
//!
//! What is new since it was last written is held here, on top of what is stored.

use crate::trouble::{Trouble, TroubleKind};
use std::collections::BTreeMap;
use std::ops::ControlFlow;
use std::sync::Arc;
use store::{CacheChange, Card, Hash, Head, Row, Store, Wanted};

/// The name of the cache, with the form of its cards. Cards of another form are another
/// cache: change the number with anything that is written on a card, or left out.
pub(crate) const CACHE: &str = "index 9";

/// The drawers.
pub(crate) mod drawer {
    /// By an order's name: an [`super::OrderCard`].
    pub(crate) const ORDER: &str = "order";
    /// By number: the order.
    pub(crate) const NUMBER: &str = "number";
    /// By number: the order, if it is not settled.
    pub(crate) const HERE: &str = "here";
    /// By number: which vehicle it is and where it stands, of an order whose vehicle is here.
    pub(crate) const STANDS: &str = "stands";
    /// By vehicle and number: the order.
    pub(crate) const OF_VEHICLE: &str = "order of vehicle";
    /// By customer and number: the order.
    pub(crate) const OF_CUSTOMER: &str = "order of customer";
    /// By vehicle: whose it is.
    pub(crate) const VEHICLE: &str = "vehicle";
    /// By customer and vehicle: nothing more.
    pub(crate) const VEHICLE_OF: &str = "vehicle of customer";
    /// By number and what it is: words that an order is found by, squeezed.
    pub(crate) const WORDS: &str = "words";
    /// By the second at which an order was opened or handed over, and the order: nothing more.
    pub(crate) const WHEN: &str = "when";
    /// By name: nothing more.
    pub(crate) const MAP: &str = "map";
    /// By sequence number: the position of a row that the shop is folded from.
    pub(crate) const SHOP: &str = "shop";
    /// The last sequence number of the shop's stream.
    pub(crate) const SHOP_SEQ: &str = "shop length";

    /// By an invoice's number: the order.
    pub(crate) const INVOICE: &str = "invoice";
    /// By a credit note's number: the order.
    pub(crate) const CREDIT: &str = "credit";
    /// By stream: its first row that could not be read, as JSON.
    pub(crate) const UNREAD: &str = "unread";

    /// By number: the code of its vehicle's label, of an order that is finished.
    pub(crate) const LABEL: &str = "label";
    /// By the code of a vehicle's label, and number: a finished order.
    pub(crate) const OF_LABEL: &str = "finished of label";
    /// By map and number: a finished order that worked by it.
    pub(crate) const OF_MAP: &str = "finished of map";

    /// By vehicle: the other name under which it has a record already.
    pub(crate) const SAME_VEHICLE: &str = "same vehicle";
    /// By customer: likewise.
    pub(crate) const SAME_CUSTOMER: &str = "same customer";
    /// By kind of vehicle: the kind that it goes by.
    pub(crate) const SAME_KIND: &str = "same kind";
    /// By vehicle and what it is: words that it is found by, squeezed.
    pub(crate) const VEHICLE_WORDS: &str = "words of vehicle";
    /// By customer and what it is: likewise.
    pub(crate) const CUSTOMER_WORDS: &str = "words of customer";
    /// By plate, or label where it has none, and vehicle: nothing more.
    pub(crate) const VEHICLE_LIST: &str = "vehicles";
    /// By name and customer: nothing more.
    pub(crate) const CUSTOMER_LIST: &str = "customers";

    /// By the day on which work that it left with is due, and vehicle: nothing more.
    pub(crate) const OWING: &str = "owing";
    /// By vehicle: the day under which it stands there.
    pub(crate) const OWING_DAY: &str = "owing of vehicle";
    /// By the day on which somebody asks whether a fault came back, and number: the order.
    pub(crate) const FOLLOW_UP: &str = "follow up";
    /// By number: the day under which it stands there.
    pub(crate) const FOLLOW_UP_DAY: &str = "follow up of order";

    pub(crate) const ALL: [&str; 30] = [
        ORDER,
        NUMBER,
        HERE,
        STANDS,
        OF_VEHICLE,
        OF_CUSTOMER,
        VEHICLE,
        VEHICLE_OF,
        WORDS,
        WHEN,
        MAP,
        SHOP,
        SHOP_SEQ,
        INVOICE,
        CREDIT,
        UNREAD,
        LABEL,
        OF_LABEL,
        OF_MAP,
        SAME_VEHICLE,
        SAME_CUSTOMER,
        SAME_KIND,
        VEHICLE_WORDS,
        CUSTOMER_WORDS,
        VEHICLE_LIST,
        CUSTOMER_LIST,
        OWING,
        OWING_DAY,
        FOLLOW_UP,
        FOLLOW_UP_DAY,
    ];
}

/// Cards, stored and new.
#[derive(Clone)]
pub(crate) struct Index {
    store: Arc<dyn Store>,
    log: String,
    /// Where the stored cards stand; `None`: there are none to go by.
    stored: Option<Head>,
    /// Where the cards stand with what is new.
    pub(crate) position: u64,
    head: Head,
    new: BTreeMap<(String, String), Option<Card>>,
    /// Rows since the index was written, or since writing failed.
    waiting: u64,
}

/// How many rows may be new before the index is written: folding them again at the next
/// start takes a few thousandths of a second.
const MOST_WAITING: u64 = 256;

impl Index {
    /// The index of a log as it is stored, if it belongs to this log.
    pub(crate) fn open(store: Arc<dyn Store>, log: &str) -> Result<Self, Trouble> {
        let mut index = Self::blank(store, log);
        index.look()?;
        Ok(index)
    }

    /// An index that goes by nothing stored.
    pub(crate) fn blank(store: Arc<dyn Store>, log: &str) -> Self {
        Self {
            store,
            log: log.to_owned(),
            stored: None,
            position: 0,
            head: Head::empty(log),
            new: BTreeMap::new(),
            waiting: 0,
        }
    }

    /// Begins again from what is stored now. What belongs to another log, or to one that
    /// was cut, counts as nothing.
    pub(crate) fn look(&mut self) -> Result<(), Trouble> {
        self.new.clear();
        self.waiting = 0;
        self.stored = match self.store.cache_head(&self.log, CACHE)? {
            Some(head) if stands_in(self.store.as_ref(), &self.log, head)? => Some(head),
            _ => None,
        };
        self.head = self.stored.unwrap_or(Head::empty(&self.log));
        self.position = self.head.position;
        Ok(())
    }

    pub(crate) fn card(&self, drawer: &str, key: &str) -> Result<Option<Card>, Trouble> {
        if let Some(new) = self.new.get(&(drawer.to_owned(), key.to_owned())) {
            return Ok(new.clone());
        }
        if self.stored.is_none() {
            return Ok(None);
        }
        let found = self
            .store
            .cards(&self.log, CACHE, &Wanted::one(drawer, key))?;
        Ok(found.into_iter().next().filter(|card| card.key == key))
    }

    pub(crate) fn cards(&self, wanted: &Wanted<'_>) -> Result<Vec<Card>, Trouble> {
        let first = (wanted.drawer.to_owned(), wanted.from.to_owned());
        let new: BTreeMap<&str, &Option<Card>> = self
            .new
            .range(first..)
            .take_while(|((drawer, key), _)| {
                drawer == wanted.drawer && wanted.below.is_none_or(|below| key.as_str() < below)
            })
            .map(|((_, key), card)| (key.as_str(), card))
            .collect();
        // Each of the new may stand in the place of one that is stored.
        let most = wanted.most.saturating_add(new.len());
        let stored = match self.stored {
            Some(_) => self
                .store
                .cards(&self.log, CACHE, &Wanted { most, ..*wanted })?,
            None => Vec::new(),
        };
        let mut found: Vec<Card> = stored
            .into_iter()
            .filter(|card| !new.contains_key(card.key.as_str()))
            .chain(new.values().copied().flatten().cloned())
            .filter(|card| {
                let part = wanted.containing;
                part.is_none_or(|part| card.value.contains(part))
            })
            .collect();
        found.sort_by(|one, other| one.key.cmp(&other.key));
        if wanted.backwards {
            found.reverse();
        }
        found.truncate(wanted.most);
        Ok(found)
    }

    pub(crate) fn put(&mut self, drawer: &str, key: &str, value: impl Into<String>) {
        self.put_of(drawer, key, value, None);
    }

    /// Puts a card that is made of a private content, and goes with it.
    pub(crate) fn put_of(
        &mut self,
        drawer: &str,
        key: &str,
        value: impl Into<String>,
        of: Option<Hash>,
    ) {
        let card = Card {
            drawer: drawer.to_owned(),
            key: key.to_owned(),
            value: value.into(),
            of,
        };
        self.new
            .insert((drawer.to_owned(), key.to_owned()), Some(card));
    }

    pub(crate) fn remove(&mut self, drawer: &str, key: &str) {
        self.new.insert((drawer.to_owned(), key.to_owned()), None);
    }

    /// Every card that is new.
    pub(crate) fn new_cards(&self) -> impl Iterator<Item = &Card> {
        self.new.values().flatten()
    }

    /// Lets go of cards made of contents that were erased; of those that are stored, the
    /// erasure itself took care.
    pub(crate) fn erase(&mut self, ids: &[Hash]) {
        for card in self.new.values_mut() {
            let erased = |card: &Card| card.of.is_some_and(|of| ids.contains(&of));
            if card.as_ref().is_some_and(erased) {
                *card = None;
            }
        }
    }

    /// The cards hold for this row, and all before it.
    pub(crate) fn stands_at(&mut self, row: &Row) {
        self.waiting += row.position.saturating_sub(self.position);
        self.position = row.position;
        self.head = Head {
            position: row.position,
            hash: row.hash,
        };
    }

    pub(crate) fn is_due(&self) -> bool {
        self.waiting >= MOST_WAITING
    }

    /// Writes what is new. Breaks off if another program wrote the index meanwhile: then
    /// what is stored now has to be gone by. Where nothing can be written, what is new
    /// stays new, and it is tried again later: no answer rests on it.
    pub(crate) fn save(&mut self) -> ControlFlow<()> {
        if self.waiting == 0 || self.stored == Some(self.head) {
            return ControlFlow::Continue(());
        }
        if self.stored.is_none() && self.store.drop_cache(&self.log, CACHE).is_err() {
            self.waiting = 0;
            return ControlFlow::Continue(());
        }
        let (put, remove): (Vec<_>, Vec<_>) = self
            .new
            .iter()
            .map(|(place, card)| card.clone().ok_or_else(|| place.clone()))
            .partition(Result::is_ok);
        let change = CacheChange {
            log: self.log.clone(),
            cache: CACHE.to_owned(),
            from: self.stored,
            to: self.head,
            remove: remove.into_iter().filter_map(Result::err).collect(),
            put: put.into_iter().filter_map(Result::ok).collect(),
        };
        self.waiting = 0;
        match self.store.change_cache(change) {
            Ok(true) => {
                self.stored = Some(self.head);
                self.new.clear();
                ControlFlow::Continue(())
            }
            Ok(false) => ControlFlow::Break(()),
            Err(_) => ControlFlow::Continue(()),
        }
    }
}

/// Whether a log has this hash at this position.
fn stands_in(store: &dyn Store, log: &str, head: Head) -> Result<bool, Trouble> {
    let Some(before) = head.position.checked_sub(1) else {
        return Ok(false);
    };
    let row = store.log(log, before, 1)?;
    Ok(row
        .first()
        .is_some_and(|row| row.position == head.position && row.hash == head.hash))
}

/// What a card cannot say: it was written by no form of this program, or damaged.
pub(crate) fn odd(card: &Card) -> Trouble {
    Trouble::new(
        TroubleKind::Record,
        format!("the index, drawer {:?}, card {:?}", card.drawer, card.key),
        "it does not read",
        "stop the program and run `buttonup rebuild`: the index is made again from the record",
    )
}
