//! The table of who may use it.

use rusqlite::{Connection, TransactionBehavior};

use super::connect::engine_error;
use super::read::{many, one, unsigned};
use crate::access::{Access, AccessChange};
use crate::append::signed;
use crate::error::EngineError;

pub(super) fn find(
    connection: &Connection,
    log: &str,
    drawer: &str,
    key: Option<&str>,
) -> Result<Vec<Access>, EngineError> {
    let sql = "SELECT key, value, version FROM access
         WHERE log = ?1 AND drawer = ?2 AND (?3 IS NULL OR key = ?3) ORDER BY key";
    let found = many(connection, sql, (log, drawer, key), |row| {
        Ok((row.get(0)?, row.get(1)?, row.get(2)?))
    })?;
    let access = |(key, value, version)| {
        let version = unsigned(log, version)?;
        Ok(Access {
            key,
            value,
            version,
        })
    };
    found.into_iter().map(access).collect()
}

pub(super) fn change(
    connection: &mut Connection,
    change: &AccessChange,
) -> Result<bool, EngineError> {
    let fault = |error: rusqlite::Error| engine_error(&error);
    let AccessChange {
        log, drawer, key, ..
    } = change;
    let transaction = connection
        .transaction_with_behavior(TransactionBehavior::Immediate)
        .map_err(fault)?;
    let sql = "SELECT version FROM access WHERE log = ?1 AND drawer = ?2 AND key = ?3";
    let stands = one(&transaction, sql, (log, drawer, key), |row| row.get(0))?;
    if stands.map_or(Ok(0), |version| unsigned(log, version))? != change.from {
        return Ok(false);
    }
    let done = match &change.to {
        Some(value) => transaction.execute(
            "INSERT INTO access (log, drawer, key, version, value) VALUES (?1, ?2, ?3, ?4, ?5)
             ON CONFLICT (log, drawer, key) DO UPDATE SET version = ?4, value = ?5",
            (log, drawer, key, signed(change.from + 1)?, value),
        ),
        None => transaction.execute(
            "DELETE FROM access WHERE log = ?1 AND drawer = ?2 AND key = ?3",
            (log, drawer, key),
        ),
    };
    done.map_err(fault)?;
    transaction.commit().map_err(fault)?;
    Ok(true)
}
