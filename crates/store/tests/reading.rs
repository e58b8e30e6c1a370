//! Reading beside a program that writes, and where nothing may be written.

#![allow(clippy::unwrap_used, reason = "a test fails by panicking")]

mod commands;

use commands::{LOG, checks, fact, fact_with, private};
use store::{CacheChange, Head, OpenError, Sqlite, Store, verify};

#[test]
fn a_reader_sees_what_another_program_appends_and_appends_nothing() {
    let folder = tempfile::tempdir().unwrap();
    let writer = Sqlite::open(folder.path()).unwrap();
    writer.append(fact(1, "order-1", "began")).unwrap();
    let reader = Sqlite::open_for_reading(folder.path()).unwrap();
    assert_eq!(reader.head(LOG).unwrap().position, 1);
    let photo = private(1, &[7; 70_000]);
    writer.append(fact_with(2, vec![photo.clone()])).unwrap();
    assert_eq!(reader.private(LOG, &photo.id).unwrap(), Some(photo));
    assert_eq!(verify(&reader, LOG, &checks(None)).unwrap().events, 2);

    let error = reader.append(fact(3, "order-1", "ended")).unwrap_err();
    assert!(error.to_string().contains("reading only"), "{error}");
    assert_eq!(writer.head(LOG).unwrap().position, 2);

    // The copy was never opened by a writer.
    let to = folder.path().join("copy");
    reader.back_up(&to).unwrap();
    let copy = Sqlite::open_for_reading(&to).unwrap();
    assert_eq!(copy.head(LOG).unwrap(), writer.head(LOG).unwrap());
    assert_eq!(verify(&copy, LOG, &checks(None)).unwrap().private, 1);
}

#[test]
#[cfg(unix)]
fn a_reader_needs_no_leave_to_write() {
    let folder = tempfile::tempdir().unwrap();
    let writer = Sqlite::open(folder.path()).unwrap();
    writer.append(fact(1, "order-1", "began")).unwrap();
    drop(writer);
    // Readers and writers speak through this file: now nobody can make it, as on a disk
    // that is read-only.
    std::os::unix::fs::symlink("/nowhere/file", folder.path().join("store.db-shm")).unwrap();
    let reader = Sqlite::open_for_reading(folder.path()).unwrap();
    assert_eq!(verify(&reader, LOG, &checks(None)).unwrap().events, 1);
    // With rows that stand in the write-ahead log alone, it would show an older record.
    std::fs::write(folder.path().join("store.db-wal"), [1; 100]).unwrap();
    assert!(Sqlite::open_for_reading(folder.path()).is_err());
}

#[test]
fn a_reader_makes_no_store_and_brings_nothing_forward() {
    let folder = tempfile::tempdir().unwrap();
    let error = Sqlite::open_for_reading(folder.path()).err().unwrap();
    assert!(matches!(error, OpenError::NotAStore { .. }), "{error}");
    assert_eq!(std::fs::read_dir(folder.path()).unwrap().count(), 0);

    let database = folder.path().join("store.db");
    std::fs::write(&database, b"").unwrap();
    let error = Sqlite::open_for_reading(folder.path()).err().unwrap();
    assert!(error.to_string().contains("nothing was ever"), "{error}");
    assert_eq!(std::fs::read(&database).unwrap(), b"");

    std::fs::remove_file(&database).unwrap();
    drop(Sqlite::open(folder.path()).unwrap());
    make_older(&database);
    let reader = Sqlite::open_for_reading(folder.path()).unwrap();
    assert_eq!(reader.head(LOG).unwrap(), Head::empty(LOG));
    assert_eq!(reader.cache_head(LOG, "cards").unwrap(), None);
    drop(reader);
    let form: i64 = rusqlite::Connection::open(&database)
        .unwrap()
        .pragma_query_value(None, "user_version", |row| row.get(0))
        .unwrap();
    assert_eq!(form, 1);

    let newer = rusqlite::Connection::open(&database).unwrap();
    newer.pragma_update(None, "user_version", 99).unwrap();
    let error = Sqlite::open_for_reading(folder.path()).err().unwrap();
    assert!(
        matches!(error, OpenError::Newer { found: 99, .. }),
        "{error}"
    );
}

/// Makes it what the first form was: a store without caches.
fn make_older(database: &std::path::Path) {
    rusqlite::Connection::open(database)
        .unwrap()
        .execute_batch(
            "DROP TABLE card; DROP TABLE cache; DROP INDEX private_erased; DROP TABLE stream; DROP TABLE access;
             ALTER TABLE head DROP COLUMN landing; PRAGMA user_version = 1",
        )
        .unwrap();
}

#[test]
fn a_store_of_the_first_form_is_brought_forward_and_keeps_its_log() {
    let folder = tempfile::tempdir().unwrap();
    let store = Sqlite::open(folder.path()).unwrap();
    store.append(fact(1, "order-1", "belt off")).unwrap();
    let head = store.head(LOG).unwrap();
    drop(store);
    make_older(&folder.path().join("store.db"));

    let store = Sqlite::open(folder.path()).unwrap();
    assert_eq!(
        verify(&store, LOG, &checks(Some(head.hash))).unwrap().head,
        head
    );
    let change = CacheChange {
        log: LOG.to_owned(),
        cache: "cards".to_owned(),
        from: None,
        to: head,
        remove: Vec::new(),
        put: Vec::new(),
    };
    assert_eq!(store.change_cache(change), Ok(true));
}
