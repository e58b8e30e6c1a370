//! What is wrong with what stands beside the rows of the log and follows from them.

use rusqlite::Connection;

use super::files::Files;
use super::read::{many, one};
use crate::error::EngineError;
use crate::row::Hash;

/// How many are told one by one.
const MOST_TOLD: usize = 20;

pub(super) fn find(connection: &Connection, files: &Files) -> Result<Vec<String>, EngineError> {
    // Holds every index, of the log and of the caches, against its table.
    let told = many(connection, "PRAGMA integrity_check", [], |row| row.get(0));
    let told: Vec<String> = match told {
        // It came upon something that it could not even name.
        Err(EngineError::Damaged { what, .. }) => vec![what],
        told => told?,
    };
    let mut faults: Vec<String> = told.into_iter().filter(|line| line != "ok").collect();
    if faults.is_empty() {
        let strays = strays(connection, files)?.into_iter();
        faults.extend(strays.map(|name| format!("no event names the file {name}")));
    }
    let all = faults.len();
    if all > MOST_TOLD {
        faults.truncate(MOST_TOLD);
        faults.push(format!("and {} more", all - MOST_TOLD));
    }
    Ok(faults)
}

/// Files that no row speaks of, of whichever log.
pub(super) fn strays(connection: &Connection, files: &Files) -> Result<Vec<String>, EngineError> {
    let sql = "SELECT EXISTS (SELECT 1 FROM private
               WHERE id = ?1 AND (salt IS NULL OR content IS NULL))";
    files.strays(|id: &Hash| {
        let spoken_of = one(connection, sql, [id], |row| row.get(0))?;
        Ok(spoken_of.unwrap_or(false))
    })
}
