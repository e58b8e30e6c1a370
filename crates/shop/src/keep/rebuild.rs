//! Every cache again from the log, and whether the answers are the same.

use crate::trouble::Trouble;
use crate::world::World;
use crate::world::index::{CACHE, drawer};
use sha2::{Digest, Sha256};
use std::collections::{BTreeMap, BTreeSet};
use std::sync::Arc;
use store::{CacheChange, Card, Hash, Head, Row, Store, Wanted};

/// What making the caches again came to.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Rebuilt {
    /// Events folded.
    pub events: u64,
    /// Orders, vehicles and customers that came of it.
    pub orders: u64,
    /// Vehicles.
    pub vehicles: u64,
    /// Customers.
    pub customers: u64,
    /// Where the index stood that was kept beside the record; `None` if there was none.
    pub index_stood_at: Option<u64>,
    /// Where what was kept and what came of the log differ; empty if the answers are the
    /// same.
    pub differences: Vec<String>,
    /// Whether the index made again is the one that is kept now.
    pub written: bool,
}

/// Makes again whatever follows from the rows of a store, if anything of it is not what they
/// say; answers what was wrong. Nothing may go by the store meanwhile.
///
/// # Errors
/// [`Trouble`], if the store cannot be read or written.
pub fn mend(store: &dyn Store, log: &str) -> Result<Vec<String>, Trouble> {
    let mut wrong = store.faults()?;
    if wrong.is_empty() {
        match super::verify(store, log, None) {
            Err(store::Damage::Beside { faults, .. }) => wrong = faults,
            _ => return Ok(wrong),
        }
    }
    store.remake()?;
    Ok(wrong)
}

/// How many rows are read at a time.
const PAGE: usize = 5_000;
/// How many differences are told one by one.
const MOST_TOLD: usize = 20;

/// Makes the index again from the first row on, and holds the kept one against it at the
/// place where that stands. And reads each stream by its name: its rows must be those that
/// the log has, or what is folded from them would be another order.
///
/// # Errors
/// [`Trouble`], if the record cannot be read.
pub fn rebuild(store: &Arc<dyn Store>, log: &str, write: bool) -> Result<Rebuilt, Trouble> {
    let kept = store.cache_head(log, CACHE)?;
    let mut world = World::blank(Arc::clone(store), log)?;
    let mut streams = Streams::default();
    let mut differences = Vec::new();
    let mut head = Head::empty(log);
    loop {
        // Up to where the kept index stands, so that the two can be compared there.
        let most = match kept {
            Some(kept) if kept.position > world.position => {
                usize::try_from(kept.position - world.position).map_or(PAGE, |left| left.min(PAGE))
            }
            _ => PAGE,
        };
        let rows = store.log(log, world.position, most)?;
        let Some(last) = rows.last() else { break };
        head = Head {
            position: last.position,
            hash: last.hash,
        };
        rows.iter().for_each(|row| streams.add(row));
        world.take(&rows)?;
        if kept == Some(head) {
            compare(store.as_ref(), log, &world, &mut differences)?;
        }
    }
    match kept {
        Some(kept) if kept.position > head.position => {
            differences.push(format!(
                "the index stands at {}, behind the last row",
                kept.position
            ));
        }
        _ => {}
    }
    streams.compare(store.as_ref(), log, head.position, &mut differences)?;
    let written = write && replace(store.as_ref(), log, kept, head, &world)?;
    Ok(Rebuilt {
        events: head.position,
        orders: streams.count("order:"),
        vehicles: streams.count("vehicle:"),
        customers: streams.count("customer:"),
        index_stood_at: kept.map(|kept| kept.position),
        differences: told(differences),
        written,
    })
}

/// What the rows of each stream were, as the log has them.
#[derive(Default)]
struct Streams(BTreeMap<String, (u64, Hash)>);

impl Streams {
    fn add(&mut self, row: &Row) {
        let (rows, digest) = self.0.entry(row.stream.clone()).or_default();
        *rows += 1;
        *digest = Sha256::new()
            .chain_update(*digest)
            .chain_update(row.hash)
            .finalize()
            .into();
    }

    fn count(&self, family: &str) -> u64 {
        let names = self.0.keys();
        names.filter(|name| name.starts_with(family)).count() as u64
    }

    /// Up to where the other reading ended: the log may be growing meanwhile.
    fn compare(
        &self,
        store: &dyn Store,
        log: &str,
        end: u64,
        differences: &mut Vec<String>,
    ) -> Result<(), Trouble> {
        for (name, known) in &self.0 {
            let mut by_name = Self::default();
            let rows = store.stream(log, name, 0)?;
            rows.iter()
                .filter(|row| row.position <= end)
                .for_each(|row| by_name.add(row));
            if by_name.0.get(name) != Some(known) {
                differences.push(format!("the rows of {name}"));
            }
        }
        Ok(())
    }
}

fn compare(
    store: &dyn Store,
    log: &str,
    world: &World,
    differences: &mut Vec<String>,
) -> Result<(), Trouble> {
    let made: BTreeMap<_, &Card> = world.index().new_cards().map(place).collect();
    let mut kept = BTreeSet::new();
    for card in stored(store, log)? {
        if made.get(&(card.drawer.as_str(), card.key.as_str())) != Some(&&card) {
            differences.push(format!("the card {:?} of {:?}", card.key, card.drawer));
        }
        kept.insert((card.drawer, card.key));
    }
    for (drawer, key) in made.into_keys() {
        if !kept.contains(&(drawer.to_owned(), key.to_owned())) {
            differences.push(format!("the missing card {key:?} of {drawer:?}"));
        }
    }
    Ok(())
}

fn place(card: &Card) -> ((&str, &str), &Card) {
    ((card.drawer.as_str(), card.key.as_str()), card)
}

fn stored(store: &dyn Store, log: &str) -> Result<Vec<Card>, Trouble> {
    let mut all = Vec::new();
    for drawer in drawer::ALL {
        all.extend(store.cards(log, CACHE, &Wanted::from(drawer, ""))?);
    }
    Ok(all)
}

/// Puts the index made again in the place of the kept one, in one piece, and throws away
/// those of other forms. False if another program wrote the kept one meanwhile.
fn replace(
    store: &dyn Store,
    log: &str,
    kept: Option<Head>,
    head: Head,
    world: &World,
) -> Result<bool, Trouble> {
    if head.position == 0 {
        return Ok(false);
    }
    let put: Vec<Card> = world.index().new_cards().cloned().collect();
    let made: BTreeSet<_> = put.iter().map(|card| place(card).0).collect();
    let gone = |card: &Card| !made.contains(&place(card).0);
    let remove = stored(store, log)?
        .into_iter()
        .filter(gone)
        .map(|card| (card.drawer, card.key))
        .collect();
    let written = store.change_cache(CacheChange {
        log: log.to_owned(),
        cache: CACHE.to_owned(),
        from: kept,
        to: head,
        remove,
        put,
    })?;
    for other in store.caches(log)? {
        if other != CACHE {
            store.drop_cache(log, &other)?;
        }
    }
    Ok(written)
}

fn told(mut differences: Vec<String>) -> Vec<String> {
    let all = differences.len();
    if all > MOST_TOLD {
        differences.truncate(MOST_TOLD);
        differences.push(format!("and {} more", all - MOST_TOLD));
    }
    differences
}
