//! Somebody, or a disk, changes the files of a store: bits in what finds rows, rows, whole
//! files. What is damaged never passes for whole, and whatever is written meanwhile spoils
//! nothing that could still be mended.
//!
//! `TAMPERINGS=500 cargo test -p store --test tampering` tries each kind more often; `SEED`
//! repeats a run.

#![allow(clippy::unwrap_used, reason = "a test fails by panicking")]

mod commands;

use commands::{LOG, checks, event, fact, fact_with, private};
use rand::{RngExt, SeedableRng};
use rand_chacha::ChaCha8Rng;
use rusqlite::Connection;
use std::collections::BTreeMap;
use std::fs;
use std::path::{Path, PathBuf};
use store::{CacheChange, Card, Command, Damage, OpenError, Row, Sqlite, Store, Wanted, verify};

const STREAMS: [&str; 5] = ["shop", "order-1", "order-2", "order-3", "order-4"];

fn number(name: &str, usual: u64) -> u64 {
    std::env::var(name).map_or(usual, |text| text.parse().expect("a whole number"))
}

fn tamperings() -> u64 {
    number("TAMPERINGS", 12)
}

fn chance() -> ChaCha8Rng {
    ChaCha8Rng::seed_from_u64(number("SEED", 1))
}

/// A store with some hundred rows, closed; copied for each try.
struct Whole {
    folder: tempfile::TempDir,
    rows: Vec<Row>,
}

impl Whole {
    fn new() -> Self {
        let folder = tempfile::tempdir().unwrap();
        let store = Sqlite::open(folder.path()).unwrap();
        for id in 1..=160 {
            let stream = STREAMS[usize::try_from(id % 5).unwrap()];
            let mut command = fact(id, stream, &format!("step {id}"));
            if id % 7 == 0 {
                command.events.push(event("shop", "told"));
            }
            store.append(command).unwrap();
        }
        let photo = private(3, &[7; 70_000]);
        let text = private(4, b"Ms Vale");
        store.append(fact_with(161, vec![photo, text])).unwrap();
        let head = store.head(LOG).unwrap();
        let card = |key: u32| Card {
            drawer: "number".to_owned(),
            key: format!("{key:04}"),
            value: "order".to_owned(),
            of: None,
        };
        let change = CacheChange {
            log: LOG.to_owned(),
            cache: "index".to_owned(),
            from: None,
            to: head,
            remove: vec![],
            put: (0..200).map(card).collect(),
        };
        assert!(store.change_cache(change).unwrap());
        let rows = store.log(LOG, 0, 1_000).unwrap();
        Self { folder, rows }
    }

    fn copy(&self) -> tempfile::TempDir {
        let to = tempfile::tempdir().unwrap();
        copy(self.folder.path(), to.path());
        to
    }

    fn stream(&self, name: &str) -> Vec<Row> {
        let rows = self.rows.iter().filter(|row| row.stream == name);
        rows.cloned().collect()
    }
}

fn copy(from: &Path, to: &Path) {
    fs::create_dir_all(to).unwrap();
    for entry in fs::read_dir(from).unwrap() {
        let entry = entry.unwrap();
        let to = to.join(entry.file_name());
        if entry.file_type().unwrap().is_dir() {
            copy(&entry.path(), &to);
        } else {
            fs::copy(entry.path(), to).unwrap();
        }
    }
}

/// A second door to a database, past all triggers.
fn past_triggers(folder: &Path) -> Connection {
    let database = Connection::open(folder.join("store.db")).unwrap();
    database
        .execute_batch(
            "DROP TRIGGER log_grows_at_its_end;
             DROP TRIGGER log_keeps_rows;
             DROP TRIGGER log_keeps_content;",
        )
        .unwrap();
    database
}

/// The database's file, with all of it in one place, and where some of its trees begin.
fn trees(folder: &Path, which: &str) -> (Vec<u8>, Vec<(String, usize)>) {
    let database = folder.join("store.db");
    let connection = Connection::open(&database).unwrap();
    connection
        .execute_batch("PRAGMA wal_checkpoint(TRUNCATE)")
        .unwrap();
    let sql = format!("SELECT name, rootpage FROM sqlite_schema WHERE {which}");
    let mut statement = connection.prepare(&sql).unwrap();
    let roots = statement
        .query_map([], |row| Ok((row.get(0)?, row.get::<_, u32>(1)? as usize)))
        .unwrap()
        .map(Result::unwrap)
        .collect();
    (fs::read(&database).unwrap(), roots)
}

/// Where the cells of each index lie in the file: their first byte and their length.
fn index_cells(folder: &Path) -> BTreeMap<String, Vec<(usize, usize)>> {
    // Caches are their own index: there is no table beside it.
    let (file, roots) = trees(folder, "type = 'index' OR name IN ('card', 'stream')");
    roots
        .into_iter()
        .map(|(name, root)| (name, cells(&file, root)))
        .filter(|(_, cells)| !cells.is_empty())
        .collect()
}

const PAGE: usize = 4096;

/// After the file format of SQLite, section 1.6, b-tree pages.
fn cells(file: &[u8], page: usize) -> Vec<(usize, usize)> {
    let start = (page - 1) * PAGE;
    let two = |at: usize| usize::from(u16::from_be_bytes([file[at], file[at + 1]]));
    let four = |at: usize| u32::from_be_bytes(file[at..at + 4].try_into().unwrap()) as usize;
    let interior = match file[start] {
        0x02 => true,
        0x0a => false,
        kind => panic!("page {page} is of kind {kind:#x}"),
    };
    let header = if interior { 12 } else { 8 };
    let mut found = Vec::new();
    for cell in 0..two(start + 3) {
        let mut at = start + two(start + header + 2 * cell);
        if interior {
            found.extend(cells(file, four(at)));
            at += 4;
        }
        // Shorter than 128 bytes here, so its length takes one byte.
        let length = usize::from(file[at]);
        assert!(length < 128, "a cell of {length} bytes");
        found.push((at + 1, length));
    }
    if interior {
        found.extend(cells(file, four(start + 8)));
    }
    found
}

/// Where the rows of the log lie in the file: from the length that each begins with.
fn row_cells(folder: &Path) -> Vec<(usize, usize)> {
    let (file, roots) = trees(folder, "name = 'log'");
    rows_under(&file, roots[0].1)
}

/// After the same section, pages of tables.
fn rows_under(file: &[u8], page: usize) -> Vec<(usize, usize)> {
    let start = (page - 1) * PAGE;
    let two = |at: usize| usize::from(u16::from_be_bytes([file[at], file[at + 1]]));
    let four = |at: usize| u32::from_be_bytes(file[at..at + 4].try_into().unwrap()) as usize;
    let count = two(start + 3);
    match file[start] {
        0x05 => {
            let of_cell = |cell: usize| four(start + two(start + 12 + 2 * cell));
            let pages = (0..count).map(of_cell).chain([four(start + 8)]);
            pages.flat_map(|page| rows_under(file, page)).collect()
        }
        0x0d => (0..count)
            .map(|cell| {
                let at = start + two(start + 8 + 2 * cell);
                let (content, length) = varint(&file[at..]);
                let (_, key) = varint(&file[at + length..]);
                (at, length + key + content)
            })
            .collect(),
        kind => panic!("page {page} is of kind {kind:#x}"),
    }
}

/// A number of one to eight bytes, and how many.
fn varint(bytes: &[u8]) -> (usize, usize) {
    let mut number = 0;
    for (nth, byte) in bytes.iter().take(8).enumerate() {
        number = number << 7 | usize::from(byte & 0x7f);
        if byte & 0x80 == 0 {
            return (number, nth + 1);
        }
    }
    panic!("no cell here has a number of nine bytes");
}

fn flip(folder: &Path, byte: usize, bit: u32) {
    let path = folder.join("store.db");
    let mut file = fs::read(&path).unwrap();
    file[byte] ^= 1 << bit;
    fs::write(path, file).unwrap();
}

/// What was read is what was written, whatever came after it, or it is said that it is not.
fn reads_right(store: &Sqlite, whole: &Whole, told: &str) {
    let before = |mut rows: Vec<Row>| {
        rows.retain(|row| row.position <= whole.rows.len() as u64);
        rows
    };
    for stream in STREAMS {
        match store.stream(LOG, stream, 0) {
            Ok(rows) => assert!(before(rows) == whole.stream(stream), "{told}: {stream}"),
            Err(error) => assert!(error.to_string().contains("damaged"), "{told}: {error}"),
        }
    }
    if let Ok(rows) = store.log(LOG, 0, 1_000) {
        assert!(before(rows) == whole.rows, "{told}");
    }
}

/// Sends everything again, and something new to each stream; what was taken of it.
fn write_on(store: &Sqlite, whole: &Whole, told: &str) -> usize {
    for id in 1..=160 {
        let stream = STREAMS[usize::try_from(id % 5).unwrap()];
        let mut again: Command = fact(id, stream, &format!("step {id}"));
        if id % 7 == 0 {
            again.events.push(event("shop", "told"));
        }
        if let Ok(outcome) = store.append(again) {
            let first = outcome.rows()[0].position;
            assert!(
                first <= whole.rows.len() as u64,
                "{told}: command {id} was taken twice"
            );
        }
    }
    let new = (1_000..)
        .zip(STREAMS)
        .map(|(id, stream)| fact(id, stream, "new"));
    new.filter(|command| store.append(command.clone()).is_ok())
        .count()
}

#[test]
fn a_bit_flipped_in_any_index_hides_nothing_and_is_mended_from_the_rows() {
    let whole = Whole::new();
    let mut chance = chance();
    let indexes = index_cells(whole.folder.path());
    assert!(indexes.len() >= 9, "{:?}", indexes.keys());
    for (name, cells) in &indexes {
        for nth in 0..tamperings() {
            let (at, length) = cells[chance.random_range(0..cells.len())];
            let (byte, bit) = (
                at + chance.random_range(0..length),
                chance.random_range(0..8),
            );
            let told = format!("{name}, flip {nth}: bit {bit} of byte {byte}");
            let folder = whole.copy();
            flip(folder.path(), byte, bit);

            // Whoever only looks finds it.
            let looked = Sqlite::open_for_reading(folder.path()).unwrap();
            let is_cache = name == "card";
            let verdict = verify(&looked, LOG, &checks(None));
            if !is_cache {
                let damage = verdict.expect_err(&told);
                assert!(damage.mend().contains("rebuild"), "{told}: {damage}");
            }
            reads_right(&looked, &whole, &told);
            drop(looked);

            // Whoever writes spoils nothing.
            let Ok(store) = Sqlite::open(folder.path()) else {
                continue;
            };
            let taken = write_on(&store, &whole, &told);
            store
                .remake()
                .unwrap_or_else(|error| panic!("{told}: {error}"));
            let found = verify(&store, LOG, &checks(None))
                .unwrap_or_else(|damage| panic!("{told}: {damage}"));
            assert_eq!(found.events, (whole.rows.len() + taken) as u64, "{told}");
            assert_eq!(
                store.log(LOG, 0, whole.rows.len()).unwrap(),
                whole.rows,
                "{told}"
            );
            let cards = store
                .cards(LOG, "index", &Wanted::from("number", ""))
                .unwrap();
            assert_eq!(
                cards,
                [],
                "{told}: caches are made anew by whoever goes by them"
            );
        }
    }
}

#[test]
fn a_bit_flipped_in_any_row_is_found_and_nothing_is_built_on_it() {
    let whole = Whole::new();
    let mut chance = chance();
    let rows = row_cells(whole.folder.path());
    assert_eq!(rows.len(), whole.rows.len());
    for nth in 0..2 * tamperings() {
        let (at, length) = rows[chance.random_range(0..rows.len())];
        let (byte, bit) = (
            at + chance.random_range(0..length),
            chance.random_range(0..8),
        );
        let told = format!("flip {nth}: bit {bit} of byte {byte} of the row at {at}");
        let folder = whole.copy();
        flip(folder.path(), byte, bit);
        let Ok(store) = Sqlite::open(folder.path()) else {
            continue;
        };
        if store
            .log(LOG, 0, 1_000)
            .is_ok_and(|rows| rows == whole.rows)
        {
            // The key by which the database itself finds a row is none of the log's: what is
            // read is what was written, or by its stream it is missed.
            reads_right(&store, &whole, &told);
            continue;
        }
        assert!(verify(&store, LOG, &checks(None)).is_err(), "{told}");
        reads_right(&store, &whole, &told);
        write_on(&store, &whole, &told);
        // Whatever was added since: it does not pass for sound, mended or not.
        assert!(verify(&store, LOG, &checks(None)).is_err(), "{told}");
        let _ = store.remake();
        assert!(verify(&store, LOG, &checks(None)).is_err(), "{told}");
        reads_right(&store, &whole, &told);
    }
}

#[test]
fn a_text_that_was_changed_and_a_file_that_is_gone_are_found_and_can_still_be_put_back() {
    let whole = Whole::new();
    let mut chance = chance();
    let (text, photo) = (private(4, b"Ms Vale"), private(3, &[7; 70_000]));
    let photo_file = Path::new("files").join(hex::encode(photo.id));
    let flip_column = |folder: &Path, column: &str, chance: &mut ChaCha8Rng| {
        let database = Connection::open(folder.join("store.db")).unwrap();
        let read = format!("SELECT {column} FROM private WHERE id = ?");
        let mut old: Vec<u8> = database
            .query_row(&read, [text.id], |row| row.get(0))
            .unwrap();
        let byte = chance.random_range(0..old.len());
        old[byte] ^= 1 << chance.random_range(0..8);
        let write = format!("UPDATE private SET {column} = ? WHERE id = ?");
        assert_eq!(database.execute(&write, (old, text.id)).unwrap(), 1);
    };
    for nth in 0..tamperings() {
        let folder = whole.copy();
        let path = folder.path();
        let (told, of) = match nth % 7 {
            0 => {
                flip_column(path, "content", &mut chance);
                ("a bit of a text", &text)
            }
            1 => {
                flip_column(path, "salt", &mut chance);
                ("a bit of a text's salt", &text)
            }
            2 => {
                let database = Connection::open(path.join("store.db")).unwrap();
                let sql = "DELETE FROM private WHERE id = ?";
                assert_eq!(database.execute(sql, [text.id]).unwrap(), 1);
                ("a text deleted", &text)
            }
            3 => {
                let mut bytes = fs::read(path.join(&photo_file)).unwrap();
                let byte = chance.random_range(0..bytes.len());
                bytes[byte] ^= 1 << chance.random_range(0..8);
                fs::write(path.join(&photo_file), bytes).unwrap();
                ("a bit of a file", &photo)
            }
            4 => {
                let bytes = fs::read(path.join(&photo_file)).unwrap();
                let cut = chance.random_range(0..bytes.len());
                fs::write(path.join(&photo_file), &bytes[..cut]).unwrap();
                ("a file cut", &photo)
            }
            5 => {
                fs::remove_file(path.join(&photo_file)).unwrap();
                ("a file deleted", &photo)
            }
            _ => {
                fs::write(path.join(&photo_file), b"").unwrap();
                ("a file emptied", &photo)
            }
        };
        let told = format!("try {nth}: {told}");
        let store = Sqlite::open(path).unwrap();
        assert!(verify(&store, LOG, &checks(None)).is_err(), "{told}");
        match store.private(LOG, &of.id) {
            // Missing, and not said to be erased.
            Ok(None) => assert!(!store.is_erased(LOG, &of.id).unwrap(), "{told}"),
            Ok(Some(read)) => panic!("{told}: {read:?} was read"),
            Err(error) => assert!(error.to_string().contains("damaged"), "{told}: {error}"),
        }
        // The log goes on, and what was lost can be put back from a copy.
        let taken = write_on(&store, &whole, &told);
        assert_eq!(taken, STREAMS.len(), "{told}");
        assert!(verify(&store, LOG, &checks(None)).is_err(), "{told}");
        drop(store);
        put_back(path, &photo_file, whole.folder.path());
        let store = Sqlite::open(path).unwrap();
        let found = verify(&store, LOG, &checks(None)).unwrap();
        assert_eq!(found.events, (whole.rows.len() + taken) as u64, "{told}");
    }
}

/// Texts and one file, from a copy.
fn put_back(folder: &Path, file: &Path, copy: &Path) {
    fs::copy(copy.join(file), folder.join(file)).unwrap();
    let database = Connection::open(folder.join("store.db")).unwrap();
    let copy = copy.join("store.db").display().to_string();
    database.execute("ATTACH ? AS copy", [copy]).unwrap();
    database
        .execute_batch("DELETE FROM private; INSERT INTO private SELECT * FROM copy.private;")
        .unwrap();
}

#[test]
fn a_row_missing_anywhere_is_noticed_at_the_start_and_by_whoever_reads_its_stream() {
    let whole = Whole::new();
    let mut chance = chance();
    let last = whole.rows.len();
    for nth in 0..tamperings() {
        let row = &whole.rows[chance.random_range(0..last)];
        let folder = whole.copy();
        let gone = past_triggers(folder.path())
            .execute(
                "DELETE FROM log WHERE position = ?",
                [i64::try_from(row.position).unwrap()],
            )
            .unwrap();
        assert_eq!(gone, 1);
        let told = format!("try {nth}: position {}", row.position);
        let store = Sqlite::open(folder.path()).unwrap();
        assert!(store.look_over(LOG).is_err(), "{told}");
        assert!(store.stream(LOG, &row.stream, 0).is_err(), "{told}");
        assert!(store.log(LOG, 0, last + 1).is_err(), "{told}");
        assert!(verify(&store, LOG, &checks(None)).is_err(), "{told}");
        reads_right(&store, &whole, &told);
    }
}

#[test]
fn a_tail_that_was_cut_is_noticed_and_nothing_is_added_to_it() {
    let whole = Whole::new();
    let mut chance = chance();
    let last = whole.rows.len();
    for nth in 0..tamperings() {
        let from = chance.random_range(1..last);
        let folder = whole.copy();
        past_triggers(folder.path())
            .execute(
                "DELETE FROM log WHERE position > ?",
                [i64::try_from(from).unwrap()],
            )
            .unwrap();
        let told = format!("try {nth}: cut after {from}");
        let store = Sqlite::open(folder.path()).unwrap();
        assert!(store.look_over(LOG).is_err(), "{told}");
        assert!(store.log(LOG, from as u64, 10).is_err(), "{told}");
        for stream in STREAMS {
            assert!(store.append(fact(2_000, stream, "new")).is_err(), "{told}");
        }
        assert!(verify(&store, LOG, &checks(None)).is_err(), "{told}");
        reads_right(&store, &whole, &told);
    }
}

#[test]
fn a_database_that_is_missing_or_empty_beside_what_belongs_to_it_is_not_begun_anew() {
    let whole = Whole::new();
    let empty: fn(PathBuf) = |path| fs::write(path, "").unwrap();
    let missing: fn(PathBuf) = |path| fs::remove_file(path).unwrap();
    for (nth, spoil) in [empty, missing].into_iter().enumerate() {
        let folder = whole.copy();
        spoil(folder.path().join("store.db"));
        for open in [Sqlite::open, Sqlite::open_for_reading] {
            match open(folder.path()).map(drop) {
                Err(error @ OpenError::Remains { .. }) => {
                    assert!(
                        error.to_string().contains("1 of its files"),
                        "{nth}: {error}"
                    );
                    assert!(error.mend().starts_with("Delete nothing"), "{error}");
                }
                other => panic!("{nth}: {other:?}"),
            }
        }
        assert!(!folder.path().join("store.db-shm").exists());
    }
    // A log that runs ahead is all there is of the last rows: it is not destroyed.
    let folder = tempfile::tempdir().unwrap();
    let store = Sqlite::open(folder.path()).unwrap();
    store.append(fact(1, "shop", "began")).unwrap();
    let ahead = fs::read(folder.path().join("store.db-wal")).unwrap();
    assert!(!ahead.is_empty());
    let left = tempfile::tempdir().unwrap();
    fs::write(left.path().join("store.db-wal"), &ahead).unwrap();
    let error = Sqlite::open(left.path()).map(drop).unwrap_err();
    assert!(error.to_string().contains("write-ahead log"), "{error}");
    assert_eq!(fs::read(left.path().join("store.db-wal")).unwrap(), ahead);
}

#[test]
fn what_is_taken_away_under_a_running_program_is_noticed_at_once() {
    for what in ["store.db", "store.db-wal", "."] {
        let folder = tempfile::tempdir().unwrap();
        let shop = folder.path().join("shop");
        let store = Sqlite::open(&shop).unwrap();
        store.append(fact(1, "shop", "began")).unwrap();
        assert_eq!(store.stream(LOG, "shop", 0).unwrap().len(), 1);
        let elsewhere = folder.path().join("elsewhere");
        fs::rename(shop.join(what).canonicalize().unwrap(), &elsewhere).unwrap();
        for _ in 0..2 {
            let error = store.append(fact(2, "shop", "went on")).unwrap_err();
            assert!(
                error.to_string().contains("the store is gone"),
                "{what}: {error}"
            );
        }
        if what != "store.db-wal" {
            let error = store.stream(LOG, "shop", 0).unwrap_err();
            assert!(
                error.to_string().contains("the store is gone"),
                "{what}: {error}"
            );
        }
        // And when another stands in its place.
        if what == "store.db" {
            fs::copy(&elsewhere, shop.join(what)).unwrap();
            assert!(store.append(fact(3, "shop", "went on")).is_err());
        }
    }
}

#[test]
fn what_no_event_names_is_found() {
    let whole = Whole::new();
    // A text.
    let folder = whole.copy();
    let stranger = private(9, b"whose is this");
    Connection::open(folder.path().join("store.db"))
        .unwrap()
        .execute(
            "INSERT INTO private (log, id, salt, media, content) VALUES (?, ?, ?, 'text/plain', ?)",
            (LOG, stranger.id, stranger.salt, &stranger.content),
        )
        .unwrap();
    let store = Sqlite::open(folder.path()).unwrap();
    let damage = verify(&store, LOG, &checks(None)).unwrap_err();
    assert!(matches!(damage, Damage::Unnamed { .. }), "{damage}");

    // Another media type.
    let folder = whole.copy();
    let changed = Connection::open(folder.path().join("store.db"))
        .unwrap()
        .execute("UPDATE private SET media = 'text/html'", [])
        .unwrap();
    assert_eq!(changed, 2);
    let store = Sqlite::open(folder.path()).unwrap();
    let damage = verify(&store, LOG, &checks(None)).unwrap_err();
    assert!(matches!(damage, Damage::OtherMedia { .. }), "{damage}");

    // A file: put aside, not deleted. What has only just come may be on its way in.
    let folder = whole.copy();
    for name in ["note.txt".to_owned(), hex::encode([5; 32])] {
        let path = folder.path().join("files").join(&name);
        fs::write(&path, "stray").unwrap();
        let store = Sqlite::open(folder.path()).unwrap();
        verify(&store, LOG, &checks(None)).unwrap();
        let long_ago = std::time::SystemTime::now() - std::time::Duration::from_secs(3_600);
        let file = fs::File::options().append(true).open(&path).unwrap();
        file.set_modified(long_ago).unwrap();
        let damage = verify(&store, LOG, &checks(None)).unwrap_err();
        assert!(damage.to_string().contains(&name), "{damage}");
        store.remake().unwrap();
        verify(&store, LOG, &checks(None)).unwrap();
        let aside = folder.path().join("files-without-event").join(&name);
        assert_eq!(fs::read(aside).unwrap(), b"stray");
    }
}

#[cfg(unix)]
#[test]
fn only_the_owner_may_read_what_is_kept() {
    use std::os::unix::fs::PermissionsExt;
    let folder = tempfile::tempdir().unwrap();
    let shop = folder.path().join("shop");
    let store = Sqlite::open(&shop).unwrap();
    let photo = private(3, &[7; 70_000]);
    store.append(fact_with(1, vec![photo])).unwrap();
    let copy = folder.path().join("copy");
    store.back_up(&copy).unwrap();
    let open = |path: &Path| {
        let mode = fs::metadata(path).unwrap().permissions().mode();
        mode & 0o077 != 0
    };
    fn all(folder: &Path) -> Vec<PathBuf> {
        let mut found = vec![folder.to_owned()];
        for entry in fs::read_dir(folder).unwrap() {
            let path = entry.unwrap().path();
            if path.is_dir() {
                found.extend(all(&path));
            } else {
                found.push(path);
            }
        }
        found
    }
    let paths = [all(&shop), all(&copy)].concat();
    assert!(paths.len() >= 11, "{paths:?}");
    for path in &paths {
        assert!(!open(path), "{}", path.display());
    }
    // What an older program left open is closed.
    drop(store);
    for name in ["store.db", "files"] {
        let path = shop.join(name);
        fs::set_permissions(&path, fs::Permissions::from_mode(0o755)).unwrap();
    }
    let _store = Sqlite::open(&shop).unwrap();
    assert!(!open(&shop.join("store.db")) && !open(&shop.join("files")));
}
