//! The tables of caches.

use postgres::GenericClient;

use super::connect::{Connection, Link, engine_error};
use super::read::{column, hash, head_of, number};
use super::transaction::Writing;
use crate::append::{Transaction, signed};
use crate::cache::{CacheChange, Card, Wanted};
use crate::error::EngineError;
use crate::row::Head;

pub(super) fn head(
    link: &mut Link<'_, impl GenericClient>,
    log: &str,
    cache: &str,
) -> Result<Option<Head>, EngineError> {
    let sql = "SELECT position, hash FROM cache WHERE log = $1 AND cache = $2";
    let found = link.query(sql, &[&log, &cache])?;
    found.first().map(|row| head_of(row, log)).transpose()
}

pub(super) fn find(
    link: &mut Link<'_, impl GenericClient>,
    log: &str,
    cache: &str,
    wanted: &Wanted<'_>,
) -> Result<Vec<Card>, EngineError> {
    macro_rules! select {
        ($order:literal) => {
            concat!(
                "SELECT drawer, key, value, of FROM card
                 WHERE log = $1 AND cache = $2 AND drawer = $3 AND key >= $4
                    AND key < $5 AND ($6::text IS NULL OR strpos(value, $6) > 0)
                 ORDER BY key ",
                $order,
                " LIMIT $7"
            )
        };
    }
    let sql = if wanted.backwards {
        select!("DESC")
    } else {
        select!("")
    };
    let most = number(wanted.most as u64);
    let found = link.query(
        sql,
        &[
            &log,
            &cache,
            &wanted.drawer,
            &wanted.from,
            &wanted.end(),
            &wanted.containing,
            &most,
        ],
    )?;
    let card = |row: &postgres::Row| {
        let of: Option<Vec<u8>> = column(row, 3)?;
        Ok(Card {
            drawer: column(row, 0)?,
            key: column(row, 1)?,
            value: column(row, 2)?,
            of: of.map(|of| hash(log, &of)).transpose()?,
        })
    };
    found.iter().map(card).collect()
}

pub(super) fn change(
    connection: &mut Connection,
    change: &CacheChange,
) -> Result<bool, EngineError> {
    let fault = |error: postgres::Error| engine_error(&error);
    let CacheChange { log, cache, .. } = change;
    let Connection { client, statements } = connection;
    let mut transaction = client.transaction().map_err(fault)?;
    let mut writing = Writing(Link {
        client: &mut transaction,
        statements,
    });
    // Held until the commit: an erasure, which takes its cards along, comes before this
    // or after it, never in between. And no two programs change one cache at once.
    writing.lock_head(log)?;
    let link = &mut writing.0;
    if head(link, log, cache)? != change.from {
        return Ok(false);
    }
    let put = &change.put;
    let drawers: Vec<&str> = put.iter().map(|card| card.drawer.as_str()).collect();
    let keys: Vec<&str> = put.iter().map(|card| card.key.as_str()).collect();
    let values: Vec<&str> = put.iter().map(|card| card.value.as_str()).collect();
    let of: Vec<Option<&[u8]>> = put
        .iter()
        .map(|card| card.of.as_ref().map(<[u8; 32]>::as_slice))
        .collect();
    let replaced = change.remove.iter();
    let (gone_drawers, gone_keys): (Vec<&str>, Vec<&str>) = replaced
        .map(|(drawer, key)| (drawer.as_str(), key.as_str()))
        .chain(drawers.iter().copied().zip(keys.iter().copied()))
        .unzip();
    link.query(
        "DELETE FROM card USING unnest($3::text[], $4::text[]) AS gone (drawer, key)
         WHERE log = $1 AND cache = $2 AND card.drawer = gone.drawer AND card.key = gone.key",
        &[log, cache, &gone_drawers, &gone_keys],
    )?;
    // A card of a content that is gone is not put back.
    link.query(
        "INSERT INTO card (log, cache, drawer, key, value, of)
         SELECT $1, $2, new.drawer, new.key, new.value, new.of
         FROM unnest($3::text[], $4::text[], $5::text[], $6::bytea[])
            AS new (drawer, key, value, of)
         WHERE new.of IS NULL OR EXISTS (
            SELECT 1 FROM private
            WHERE private.log = $1 AND private.id = new.of AND salt IS NOT NULL)",
        &[log, cache, &drawers, &keys, &values, &of],
    )?;
    link.query(
        "INSERT INTO cache (log, cache, position, hash) VALUES ($1, $2, $3, $4)
         ON CONFLICT (log, cache) DO UPDATE SET position = $3, hash = $4",
        &[
            log,
            cache,
            &signed(change.to.position)?,
            &change.to.hash.as_slice(),
        ],
    )?;
    transaction.commit().map_err(fault)?;
    Ok(true)
}

pub(super) fn drop(connection: &mut Connection, log: &str, cache: &str) -> Result<(), EngineError> {
    let fault = |error: postgres::Error| engine_error(&error);
    let Connection { client, statements } = connection;
    let mut transaction = client.transaction().map_err(fault)?;
    let mut link = Link {
        client: &mut transaction,
        statements,
    };
    for sql in [
        "DELETE FROM card WHERE log = $1 AND cache = $2",
        "DELETE FROM cache WHERE log = $1 AND cache = $2",
    ] {
        link.query(sql, &[&log, &cache])?;
    }
    transaction.commit().map_err(fault)
}

pub(super) fn caches(
    link: &mut Link<'_, impl GenericClient>,
    log: &str,
) -> Result<Vec<String>, EngineError> {
    let sql = "SELECT cache FROM cache WHERE log = $1 ORDER BY cache";
    let found = link.query(sql, &[&log])?;
    found.iter().map(|row| column(row, 0)).collect()
}
