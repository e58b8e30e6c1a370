//! Where a shop's record is, and opening it there.

use crate::answer::Wrong;
use clap::Args;
use serde_json::Value;
use std::path::{Path, PathBuf};
use std::sync::Arc;
use store::{OpenError, Postgres, Sqlite, Store};

/// Where a shop's record is.
#[derive(Debug, Clone, Args)]
pub struct Place {
    /// The shop's folder.
    #[arg(long, value_name = "FOLDER", default_value = "shop")]
    pub data: PathBuf,
    /// A PostgreSQL database that holds the record instead, as `postgres://user@host/name`;
    /// the folder then only notes where backups are.
    #[arg(long, value_name = "URL")]
    pub database: Option<String>,
    /// The name of the shop's log; several shops in one database need one each.
    #[arg(long, value_name = "NAME", default_value = "shop")]
    pub log: String,
}

/// A record that was opened.
pub enum Opened {
    Folder(Sqlite),
    Database(Box<Postgres>),
}

impl Opened {
    pub fn store(&self) -> &dyn Store {
        match self {
            Self::Folder(store) => store,
            Self::Database(store) => store.as_ref(),
        }
    }

    pub fn shared(self) -> Arc<dyn Store> {
        match self {
            Self::Folder(store) => Arc::new(store),
            Self::Database(store) => Arc::new(*store),
        }
    }
}

impl Place {
    /// A folder with a shop's log under its usual name.
    pub fn folder(data: PathBuf) -> Self {
        Self {
            data,
            database: None,
            log: "shop".to_owned(),
        }
    }

    /// Opens the record for reading, also while another program serves it.
    pub fn read(&self) -> Result<Opened, Wrong> {
        match &self.database {
            Some(url) => database(url).map(|store| Opened::Database(Box::new(store))),
            None => reading(&self.data).map(Opened::Folder),
        }
    }

    /// Opens the record for writing; a folder then belongs to this program.
    pub fn write(&self) -> Result<Opened, Wrong> {
        match &self.database {
            Some(url) => database(url).map(|store| Opened::Database(Box::new(store))),
            None => writing(&self.data).map(Opened::Folder),
        }
    }

    /// Opens a record that is there for writing: one is not made by asking for it.
    pub fn write_existing(&self) -> Result<Opened, Wrong> {
        if self.database.is_none() {
            reading(&self.data)?;
        }
        self.write()
    }

    /// Opens a record that is there for writing, or if that is not to be had now, because
    /// another program serves it or nothing may be written there, for reading; says which.
    pub fn write_if_free(&self) -> Result<(Opened, bool), Wrong> {
        if self.database.is_some() {
            return Ok((self.write()?, true));
        }
        let looked_at = reading(&self.data)?;
        if self.data.join(MOVED).exists() {
            return Ok((Opened::Folder(looked_at), false));
        }
        Ok(match Sqlite::open(&self.data) {
            Ok(store) => (Opened::Folder(store), true),
            Err(_) => (Opened::Folder(looked_at), false),
        })
    }

    /// Fails unless the log is there: a name that was typed wrong is no empty record.
    pub fn must_hold(&self, store: &dyn Store) -> Result<(), Wrong> {
        let trouble = |error| Wrong::from(shop::Trouble::from(error));
        let begun = store.head(&self.log).map_err(trouble)?.position > 0
            || store.landing(&self.log).map_err(trouble)?.is_some();
        if begun {
            return Ok(());
        }
        let there = store.logs().map_err(trouble)?;
        let place = match &self.database {
            Some(_) => "the database".to_owned(),
            None => self.data.display().to_string(),
        };
        Err(Wrong::input(
            format!("--log {}", self.log),
            format!("there is no log of that name in {place}"),
            if there.is_empty() {
                "nothing was ever written there: name another place".to_owned()
            } else {
                format!("name one of these: {}", there.join(", "))
            },
        ))
    }

    /// Fails where a folder holds other logs only: a shop that is served there under a name
    /// that was typed wrong would be another shop.
    pub fn must_not_be_anothers(&self, store: &dyn Store) -> Result<(), Wrong> {
        let there = store.logs().map_err(shop::Trouble::from)?;
        match self.database {
            None if !there.is_empty() => self.must_hold(store),
            _ => Ok(()),
        }
    }

    /// The place in words, without a password.
    pub fn name(&self) -> String {
        match &self.database {
            Some(_) => format!("log {:?} in the database", self.log),
            None => self.data.display().to_string(),
        }
    }
}

pub fn database(url: &str) -> Result<Postgres, Wrong> {
    if !["postgres://", "postgresql://"]
        .iter()
        .any(|start| url.starts_with(start))
    {
        // Without the address itself: it may hold a password.
        return Err(Wrong::input(
            "the database's address",
            "it does not start with postgres://",
            "write it as postgres://user@host/name",
        ));
    }
    Postgres::open(url).map_err(|error| not_opened("the database".to_owned(), &error))
}

pub fn reading(folder: &Path) -> Result<Sqlite, Wrong> {
    Sqlite::open_for_reading(folder).map_err(|error| {
        if folder.join("store.db").exists() {
            return not_opened(folder.display().to_string(), &error);
        }
        Wrong::input(
            folder.display().to_string(),
            "there is no record in it",
            "name the shop's folder with --data",
        )
    })
}

pub fn writing(folder: &Path) -> Result<Sqlite, Wrong> {
    refuse_moved(folder)?;
    Sqlite::open(folder).map_err(|error| not_opened(folder.display().to_string(), &error))
}

pub fn not_opened(place: String, error: &OpenError) -> Wrong {
    Wrong::input(place, error.to_string(), error.mend())
}

/// The file that says that the record goes on elsewhere.
pub const MOVED: &str = "moved.json";

/// Two records that both go on from the same beginning could never be one again.
fn refuse_moved(folder: &Path) -> Result<(), Wrong> {
    let note = folder.join(MOVED);
    let Ok(text) = std::fs::read_to_string(&note) else {
        return Ok(());
    };
    let to = serde_json::from_str::<Value>(&text)
        .ok()
        .and_then(|moved| moved["to"].as_str().map(str::to_owned))
        .unwrap_or_else(|| "a database".to_owned());
    Err(Wrong {
        code: 1,
        place: folder.display().to_string(),
        what: format!("this record was moved to {to} and goes on there"),
        mend: format!(
            "open it there with --database; if it never went on there, remove {}",
            note.display()
        ),
    })
}
