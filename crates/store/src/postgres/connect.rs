//! Connections with their settings read back, and faults in our words.

use std::collections::BTreeMap;
use std::time::Duration;

use postgres::config::Host;
use postgres::error::SqlState;
use postgres::types::ToSql;
use postgres::{Client, GenericClient, Row, Statement};

use super::tls::Address;
use crate::error::{EngineError, OpenError};

/// A connection and the statements prepared on it.
pub(super) struct Connection {
    pub(super) client: Client,
    pub(super) statements: Statements,
}

pub(super) type Statements = BTreeMap<&'static str, Statement>;

impl Connection {
    pub(super) fn link(&mut self) -> Link<'_, Client> {
        Link {
            client: &mut self.client,
            statements: &mut self.statements,
        }
    }
}

/// A connection, or a transaction on it, with the connection's statements.
pub(super) struct Link<'a, C> {
    pub(super) client: &'a mut C,
    pub(super) statements: &'a mut Statements,
}

impl<C: GenericClient> Link<'_, C> {
    pub(super) fn query(
        &mut self,
        sql: &'static str,
        parameters: &[&(dyn ToSql + Sync)],
    ) -> Result<Vec<Row>, EngineError> {
        let prepared = match self.statements.get(sql) {
            Some(statement) => statement.clone(),
            None => {
                let statement = self.client.prepare(sql).map_err(|e| engine_error(&e))?;
                self.statements.insert(sql, statement.clone());
                statement
            }
        };
        self.client
            .query(&prepared, parameters)
            .map_err(|error| engine_error(&error))
    }
}

/// Reads an address and adds what it leaves open.
pub(super) fn address(url: &str) -> Result<Address, OpenError> {
    let mut address = Address::read(url)?;
    address
        .config
        .connect_timeout(Duration::from_secs(10))
        .keepalives_idle(Duration::from_secs(30))
        .application_name("buttonup");
    Ok(address)
}

/// Where the database is, without the password.
pub(super) fn place(address: &Address) -> String {
    let config = &address.config;
    let host = match config.get_hosts().first() {
        Some(Host::Tcp(host)) => host.clone(),
        #[cfg(unix)]
        Some(Host::Unix(path)) => path.display().to_string(),
        None => "localhost".to_owned(),
    };
    format!("database {} on {host}", config.get_dbname().unwrap_or("?"))
}

/// A connection with every setting that safety rests on, each read back.
pub(super) fn connect(address: &Address) -> Result<Connection, OpenError> {
    let fault = |error: postgres::Error| engine_error(&error);
    let mut client = address.connect().map_err(fault)?;
    // Whoever stops in the middle must not hold a shop's head for ever.
    client
        .batch_execute(
            "SET search_path = buttonup;
             SET synchronous_commit = on;
             SET default_transaction_isolation = 'read committed';
             SET lock_timeout = '4s';
             SET idle_in_transaction_session_timeout = '30s';
             SET client_min_messages = warning",
        )
        .map_err(fault)?;
    let wanted = [
        ("synchronous_commit", "on"),
        ("fsync", "on"),
        ("full_page_writes", "on"),
        ("server_encoding", "UTF8"),
    ];
    for (setting, value) in wanted {
        let found: String = client
            .query_one("SELECT current_setting($1)", &[&setting])
            .and_then(|row| row.try_get(0))
            .map_err(fault)?;
        if found != value {
            return Err(OpenError::Setting { setting, found });
        }
    }
    Ok(Connection {
        client,
        statements: Statements::new(),
    })
}

/// A fault of PostgreSQL in our words.
pub(super) fn engine_error(error: &postgres::Error) -> EngineError {
    let what = full_message(error);
    let Some(code) = error.code() else {
        // Without the server's own word for it, the connection broke.
        return EngineError::Unreachable { what };
    };
    if *code == SqlState::DISK_FULL {
        return EngineError::Full { what };
    }
    if *code == SqlState::READ_ONLY_SQL_TRANSACTION || *code == SqlState::INSUFFICIENT_PRIVILEGE {
        return EngineError::ReadOnly { what };
    }
    match code.code().get(..2) {
        // Connection, authorisation, no such database, and a server that is stopping.
        Some("08" | "28" | "3D" | "57") => EngineError::Unreachable { what },
        // Deadlock, lock timeout, too many connections.
        Some("40" | "53" | "55") => EngineError::Busy { what },
        // The server ended the session because it stood idle in a transaction.
        Some("25") => EngineError::Unreachable { what },
        Some("58") => EngineError::Io { what },
        Some("XX") => EngineError::Damaged {
            log: String::new(),
            position: None,
            what,
        },
        _ => EngineError::Refused { what },
    }
}

/// The message with what stands behind it: the outer one alone says only "db error".
pub(super) fn full_message(error: &postgres::Error) -> String {
    let mut message = error.to_string();
    let mut source = std::error::Error::source(error);
    while let Some(inner) = source {
        let inner_message = inner.to_string();
        if !message.contains(&inner_message) {
            message = format!("{message}: {inner_message}");
        }
        source = inner.source();
    }
    message
}
