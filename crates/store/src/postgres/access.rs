//! The table of who may use it.

use postgres::GenericClient;

use super::connect::{Connection, Link};
use super::read::{column, unsigned};
use crate::access::{Access, AccessChange};
use crate::append::signed;
use crate::error::EngineError;

pub(super) fn find(
    link: &mut Link<'_, impl GenericClient>,
    log: &str,
    drawer: &str,
    key: Option<&str>,
) -> Result<Vec<Access>, EngineError> {
    let sql = "SELECT key, value, version FROM access
         WHERE log = $1 AND drawer = $2 AND ($3::text IS NULL OR key = $3) ORDER BY key";
    let found = link.query(sql, &[&log, &drawer, &key])?;
    let access = |row: &postgres::Row| {
        Ok(Access {
            key: column(row, 0)?,
            value: column(row, 1)?,
            version: unsigned(log, column(row, 2)?)?,
        })
    };
    found.iter().map(access).collect()
}

/// One statement: of two that change the same version the second finds no row.
pub(super) fn change(
    connection: &mut Connection,
    change: &AccessChange,
) -> Result<bool, EngineError> {
    let AccessChange {
        log,
        drawer,
        key,
        from,
        to,
    } = change;
    let (stands, next) = (signed(*from)?, signed(from + 1)?);
    let Connection { client, statements } = connection;
    let mut link = Link { client, statements };
    let done = match (to, from) {
        (Some(value), 0) => link.query(
            "INSERT INTO access (log, drawer, key, version, value) VALUES ($1, $2, $3, $4, $5)
             ON CONFLICT DO NOTHING RETURNING key",
            &[log, drawer, key, &next, value],
        )?,
        (Some(value), _) => link.query(
            "UPDATE access SET version = $4, value = $5
             WHERE log = $1 AND drawer = $2 AND key = $3 AND version = $6 RETURNING key",
            &[log, drawer, key, &next, value, &stands],
        )?,
        (None, 0) => return Ok(find(&mut link, log, drawer, Some(key))?.is_empty()),
        (None, _) => link.query(
            "DELETE FROM access
             WHERE log = $1 AND drawer = $2 AND key = $3 AND version = $4 RETURNING key",
            &[log, drawer, key, &stands],
        )?,
    };
    Ok(!done.is_empty())
}
