//! Every cache again from the log, and whether the answers are the same.

use crate::trouble::Trouble;
use crate::world::World;
use store::Store;

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
    /// Where the two foldings differ; empty if the answers are the same.
    pub differences: Vec<String>,
}

/// How many rows are read at a time.
const PAGE: usize = 5_000;

/// Folds the log twice, once as it grew and once stream by stream, and compares what
/// comes of it. Facts commute, so the two must not differ.
///
/// # Errors
/// [`Trouble`], if the record cannot be read.
pub fn rebuild(store: &dyn Store, log: &str) -> Result<Rebuilt, Trouble> {
    let grown = as_it_grew(store, log)?;
    let streams = stream_by_stream(store, log, grown.position)?;
    let mut differences = Vec::new();
    compare("order", &grown.orders, &streams.orders, &mut differences);
    compare(
        "vehicle",
        &grown.vehicles,
        &streams.vehicles,
        &mut differences,
    );
    compare(
        "customer",
        &grown.customers,
        &streams.customers,
        &mut differences,
    );
    compare("stream", &grown.seqs, &streams.seqs, &mut differences);
    if grown.settled != streams.settled {
        differences.push("which orders are settled".to_owned());
    }
    if grown.shop != streams.shop {
        differences.push("the shop".to_owned());
    }
    Ok(Rebuilt {
        events: grown.position,
        orders: grown.orders.len() as u64,
        vehicles: grown.vehicles.len() as u64,
        customers: grown.customers.len() as u64,
        differences,
    })
}

fn as_it_grew(store: &dyn Store, log: &str) -> Result<World, Trouble> {
    let mut world = World::default();
    loop {
        let rows = store.log(log, world.position, PAGE)?;
        if rows.is_empty() {
            return Ok(world);
        }
        for row in &rows {
            world.fold(row)?;
        }
    }
}

/// Up to the position where the other folding ended: the log may be growing meanwhile.
fn stream_by_stream(store: &dyn Store, log: &str, end: u64) -> Result<World, Trouble> {
    let mut world = World::default();
    for head in store.streams(log)? {
        for row in store.stream(log, &head.stream, 0)? {
            if row.position <= end {
                world.fold(&row)?;
            }
        }
    }
    Ok(world)
}

fn compare<K: Ord + std::fmt::Debug, V: PartialEq>(
    what: &str,
    one: &std::collections::BTreeMap<K, V>,
    other: &std::collections::BTreeMap<K, V>,
    differences: &mut Vec<String>,
) {
    for key in one
        .keys()
        .chain(other.keys().filter(|key| !one.contains_key(key)))
    {
        if one.get(key) != other.get(key) {
            differences.push(format!("{what} {key:?}"));
        }
    }
}
