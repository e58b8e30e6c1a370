//! The tables of caches.

use rusqlite::{Connection, TransactionBehavior};

use super::connect::engine_error;
use super::read::{many, number, one, unsigned};
use crate::append::signed;
use crate::cache::{CacheChange, Card, Wanted};
use crate::error::EngineError;
use crate::row::Head;

pub(super) fn head(
    connection: &Connection,
    log: &str,
    cache: &str,
) -> Result<Option<Head>, EngineError> {
    let sql = "SELECT position, hash FROM cache WHERE log = ?1 AND cache = ?2";
    one(connection, sql, (log, cache), |row| {
        Ok((row.get(0)?, row.get(1)?))
    })?
    .map(|(position, hash)| {
        let position = unsigned(log, position)?;
        Ok(Head { position, hash })
    })
    .transpose()
}

pub(super) fn find(
    connection: &Connection,
    log: &str,
    cache: &str,
    wanted: &Wanted<'_>,
) -> Result<Vec<Card>, EngineError> {
    macro_rules! select {
        ($order:literal) => {
            concat!(
                "SELECT drawer, key, value, of FROM card
                 WHERE log = ?1 AND cache = ?2 AND drawer = ?3 AND key >= ?4
                    AND key < ?5 AND (?6 IS NULL OR instr(value, ?6) > 0)
                 ORDER BY key ",
                $order,
                " LIMIT ?7"
            )
        };
    }
    let sql = if wanted.backwards {
        select!("DESC")
    } else {
        select!("")
    };
    let parameters = (
        log,
        cache,
        wanted.drawer,
        wanted.from,
        wanted.end(),
        wanted.containing,
        number(wanted.most as u64),
    );
    many(connection, sql, parameters, |row| {
        Ok(Card {
            drawer: row.get(0)?,
            key: row.get(1)?,
            value: row.get(2)?,
            of: row.get(3)?,
        })
    })
}

pub(super) fn change(
    connection: &mut Connection,
    change: &CacheChange,
) -> Result<bool, EngineError> {
    let fault = |error: rusqlite::Error| engine_error(&error);
    let CacheChange { log, cache, .. } = change;
    let transaction = connection
        .transaction_with_behavior(TransactionBehavior::Immediate)
        .map_err(fault)?;
    if head(&transaction, log, cache)? != change.from {
        return Ok(false);
    }
    let write = || -> rusqlite::Result<()> {
        let mut remove = transaction.prepare_cached(
            "DELETE FROM card WHERE log = ? AND cache = ? AND drawer = ? AND key = ?",
        )?;
        // A card of a content that is gone is not put back.
        let mut put = transaction.prepare_cached(
            "INSERT INTO card (log, cache, drawer, key, value, of)
             SELECT ?1, ?2, ?3, ?4, ?5, ?6
             WHERE ?6 IS NULL OR EXISTS (
                SELECT 1 FROM private WHERE log = ?1 AND id = ?6 AND salt IS NOT NULL)",
        )?;
        for (drawer, key) in &change.remove {
            remove.execute((log, cache, drawer, key))?;
        }
        for card in &change.put {
            remove.execute((log, cache, &card.drawer, &card.key))?;
            put.execute((log, cache, &card.drawer, &card.key, &card.value, card.of))?;
        }
        Ok(())
    };
    write().map_err(fault)?;
    transaction
        .execute(
            "INSERT INTO cache (log, cache, position, hash) VALUES (?1, ?2, ?3, ?4)
             ON CONFLICT (log, cache) DO UPDATE SET position = ?3, hash = ?4",
            (log, cache, signed(change.to.position)?, change.to.hash),
        )
        .map_err(fault)?;
    transaction.commit().map_err(fault)?;
    Ok(true)
}

pub(super) fn drop(connection: &mut Connection, log: &str, cache: &str) -> Result<(), EngineError> {
    let mut drop = || -> rusqlite::Result<()> {
        let transaction = connection.transaction_with_behavior(TransactionBehavior::Immediate)?;
        for sql in [
            "DELETE FROM card WHERE log = ? AND cache = ?",
            "DELETE FROM cache WHERE log = ? AND cache = ?",
        ] {
            transaction.execute(sql, (log, cache))?;
        }
        transaction.commit()
    };
    drop().map_err(|error| engine_error(&error))
}

pub(super) fn caches(connection: &Connection, log: &str) -> Result<Vec<String>, EngineError> {
    let sql = "SELECT cache FROM cache WHERE log = ? ORDER BY cache";
    many(connection, sql, [log], |row| row.get(0))
}
