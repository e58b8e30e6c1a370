//! The story in a folder, and what only a folder can do.

#![allow(clippy::unwrap_used, reason = "a test fails by panicking")]

mod commands;
mod story;

use std::sync::Arc;
use std::sync::atomic::Ordering::Relaxed;

use store::{OpenError, Sqlite, Store, verify};
use tempfile::TempDir;

struct InFolder(TempDir);

impl story::House for InFolder {
    fn open(&mut self) -> Arc<dyn Store> {
        Arc::new(Sqlite::open(self.0.path()).unwrap())
    }
}

fn make() -> InFolder {
    InFolder(tempfile::tempdir().unwrap())
}

story!(make);

use commands::{LOG, checks, erasure, fact, fact_with, private};
use rusqlite::Connection;

#[test]
fn a_folder_belongs_to_one_program_at_a_time() {
    let folder = tempfile::tempdir().unwrap();
    let first = Sqlite::open(folder.path()).unwrap();
    let error = Sqlite::open(folder.path()).err().unwrap();
    assert!(matches!(error, OpenError::InUse { .. }), "{error}");
    assert!(
        error
            .to_string()
            .ends_with("is in use by another running program")
    );
    first.append(fact(1, "order-1", "belt off")).unwrap();
    drop(first);
    assert_eq!(
        Sqlite::open(folder.path())
            .unwrap()
            .head(LOG)
            .unwrap()
            .position,
        1
    );
}

#[test]
#[cfg(target_os = "linux")]
fn a_folder_that_can_not_be_written_is_named() {
    // No user may make folders there, the superuser included.
    let error = Sqlite::open("/sys/store".as_ref()).err().unwrap();
    assert!(matches!(&error, OpenError::Folder { path, .. } if path.ends_with("sys/store")));
    assert!(error.mend().contains("writable"));
}

#[test]
fn a_file_that_is_no_store_is_refused_and_left_alone() {
    let folder = tempfile::tempdir().unwrap();
    let database = folder.path().join("store.db");
    let garbage = b"this was a store until the disk was full of holes\n".repeat(200);
    std::fs::write(&database, &garbage).unwrap();
    let error = Sqlite::open(folder.path()).err().unwrap();
    assert!(matches!(error, OpenError::NotAStore { .. }), "{error}");
    assert_eq!(std::fs::read(&database).unwrap(), garbage);

    std::fs::remove_file(&database).unwrap();
    let other = Connection::open(&database).unwrap();
    other
        .execute_batch("CREATE TABLE stamps (id); INSERT INTO stamps VALUES (7)")
        .unwrap();
    let error = Sqlite::open(folder.path()).err().unwrap();
    assert!(
        error.to_string().contains("another program's database"),
        "{error}"
    );
    let stamp: i64 = other
        .query_row("SELECT id FROM stamps", [], |row| row.get(0))
        .unwrap();
    assert_eq!(stamp, 7);
}

#[test]
fn a_store_with_holes_is_called_damaged_and_left_alone() {
    let folder = tempfile::tempdir().unwrap();
    drop(Sqlite::open(folder.path()).unwrap());
    let database = folder.path().join("store.db");
    let mut bytes = std::fs::read(&database).unwrap();
    bytes.truncate(3 * 4096);
    std::fs::write(&database, &bytes).unwrap();
    for error in [
        Sqlite::open(folder.path()).err().unwrap(),
        Sqlite::open_for_reading(folder.path()).err().unwrap(),
    ] {
        assert!(
            error.to_string().starts_with("the store is damaged: "),
            "{error}"
        );
        assert!(error.mend().contains("restore the newest backup"));
    }
    assert_eq!(std::fs::read(&database).unwrap(), bytes);
}

#[test]
fn a_newer_form_is_refused() {
    let folder = tempfile::tempdir().unwrap();
    drop(Sqlite::open(folder.path()).unwrap());
    let database = Connection::open(folder.path().join("store.db")).unwrap();
    database.pragma_update(None, "user_version", 99).unwrap();
    let error = Sqlite::open(folder.path()).err().unwrap();
    assert!(
        matches!(error, OpenError::Newer { found: 99, .. }),
        "{error}"
    );
    assert_eq!(error.mend(), "Install the newer version of the program.");
}

#[test]
fn the_database_itself_refuses_to_change_the_log() {
    let folder = tempfile::tempdir().unwrap();
    let store = Sqlite::open(folder.path()).unwrap();
    store.append(fact(1, "order-1", "belt off")).unwrap();
    store.append(fact(2, "order-1", "belt on")).unwrap();
    let database = Connection::open(folder.path().join("store.db")).unwrap();
    let copy = |columns: &str| {
        format!(
            "INSERT OR REPLACE INTO log SELECT log, {columns}, kind, version, body, happened_at,
             device, device_seq, recorded_at, who, command_id, nth, command_digest, prev_hash,
             hash FROM log WHERE position = 1"
        )
    };
    let attempts = [
        "UPDATE log SET body = x'00'".to_owned(),
        "UPDATE log SET who = who".to_owned(),
        "DELETE FROM log WHERE position = 2".to_owned(),
        copy("position, stream, seq"),
        copy("3, stream, 1"),
        copy("4, stream, 3"),
        copy("3, stream, 3"),
    ];
    for attempt in attempts {
        let error = database.execute(&attempt, []).unwrap_err().to_string();
        assert!(
            error.starts_with("rows of the log are"),
            "{attempt}: {error}"
        );
    }
    assert_eq!(verify(&store, LOG, &checks(None)).unwrap().events, 2);
}

#[test]
fn a_command_that_meets_a_fault_fails_alone() {
    let folder = tempfile::tempdir().unwrap();
    let store = Sqlite::open(folder.path()).unwrap();
    Connection::open(folder.path().join("store.db"))
        .unwrap()
        .execute_batch(
            "CREATE TRIGGER faulty AFTER INSERT ON log WHEN NEW.device_seq = 2
             BEGIN SELECT RAISE(ABORT, 'a fault'); END;",
        )
        .unwrap();
    let photo = |salt: u8| private(salt, &[salt; 70_000]);
    let answers = store.append_all(vec![
        fact_with(1, vec![photo(1)]),
        fact_with(2, vec![photo(2)]),
        fact(3, "order-1", "belt off"),
        fact(3, "order-1", "the same id, another fact"),
    ]);
    let fault = answers[1].as_ref().unwrap_err().to_string();
    assert!(fault.contains("a fault"), "{fault}");
    answers[3].as_ref().unwrap_err();
    let taken: Vec<u64> = answers
        .iter()
        .flatten()
        .flat_map(store::Outcome::rows)
        .map(|row| row.position)
        .collect();
    assert_eq!(taken, [1, 2]);
    let alone = store.append(fact_with(2, vec![photo(2)])).unwrap_err();
    assert_eq!(alone.to_string(), fault);
    // Its photo went with it, those of the others stayed.
    let kept = std::fs::read_dir(folder.path().join("files")).unwrap();
    let kept: Vec<_> = kept.map(|entry| entry.unwrap().file_name()).collect();
    assert_eq!(kept, [hex::encode(photo(1).id).as_str()]);
    assert_eq!(verify(&store, LOG, &checks(None)).unwrap().events, 2);
    store.append(fact(4, "order-1", "belt on")).unwrap();
    drop(store);
    let again = Sqlite::open(folder.path()).unwrap();
    assert_eq!(verify(&again, LOG, &checks(None)).unwrap().events, 3);
}

#[test]
fn nothing_of_an_erased_content_stays_on_the_disk() {
    let folder = tempfile::tempdir().unwrap();
    let store = Sqlite::open(folder.path()).unwrap();
    let text = private(0xa7, &b"Ms Vale, 5 Mill Lane, 0170 555 0199. ".repeat(40));
    let photo = private(0xb9, &b"a photo of Ms Vale's pickup. ".repeat(4000));
    for id in 1..20 {
        store.append(fact(id, "order-1", "moved")).unwrap();
    }
    store
        .append(fact_with(20, vec![text.clone(), photo.clone()]))
        .unwrap();
    let needles: [&[u8]; 4] = [b"Ms Vale", b"Mill Lane", &text.salt, &photo.salt];
    let found = |needle: &[u8]| {
        on_disk(folder.path())
            .iter()
            .any(|file| file.windows(needle.len()).any(|part| part == needle))
    };
    assert!(
        needles.iter().all(|needle| found(needle)),
        "the search must be able to find"
    );
    store.append(erasure(21, &[text.id, photo.id])).unwrap();
    // The answer came after the purge, while the store is still open.
    assert!(!needles.iter().any(|needle| found(needle)));
    assert_eq!(
        std::fs::read_dir(folder.path().join("files"))
            .unwrap()
            .count(),
        0
    );
}

fn on_disk(folder: &std::path::Path) -> Vec<Vec<u8>> {
    let mut files = Vec::new();
    for entry in std::fs::read_dir(folder).unwrap() {
        let path = entry.unwrap().path();
        if path.is_dir() {
            files.extend(on_disk(&path));
        } else {
            files.push(std::fs::read(&path).unwrap());
        }
    }
    files
}

#[test]
fn an_erasure_cut_short_is_finished_at_the_next_start() {
    let folder = tempfile::tempdir().unwrap();
    let store = Sqlite::open(folder.path()).unwrap();
    let photo = private(1, &b"a photo of Ms Vale's pickup. ".repeat(4000));
    store.append(fact_with(1, vec![photo.clone()])).unwrap();
    store.append(erasure(2, &[photo.id])).unwrap();
    drop(store);
    // As if the program had been killed between the commit and the removal.
    let file = folder.path().join("files").join(hex::encode(photo.id));
    std::fs::write(&file, &photo.content).unwrap();
    std::fs::write(folder.path().join("files/unfinished"), b"half a pho").unwrap();
    let store = Sqlite::open(folder.path()).unwrap();
    assert_eq!(
        std::fs::read_dir(folder.path().join("files"))
            .unwrap()
            .count(),
        0
    );
    assert_eq!(verify(&store, LOG, &checks(None)).unwrap().erased, 1);
}

#[test]
fn a_copy_taken_while_appending_goes_on_is_a_whole_store() {
    let folder = tempfile::tempdir().unwrap();
    let store = Sqlite::open(&folder.path().join("shop")).unwrap();
    let photo = |id: u64| private(3, &[&id.to_le_bytes()[..], &[7; 70_000]].concat());
    let done = std::sync::atomic::AtomicBool::new(false);
    std::thread::scope(|scope| {
        for thread in 0..2_u64 {
            let (store, done, photo) = (&store, &done, &photo);
            scope.spawn(move || {
                for id in (thread * 1_000_000 + 1..).take_while(|_| !done.load(Relaxed)) {
                    store.append(fact(id * 10, "order-1", "moved")).unwrap();
                    store
                        .append(fact_with(id * 10 + 1, vec![photo(id)]))
                        .unwrap();
                    if id % 3 == 0 {
                        store
                            .append(erasure(id * 10 + 2, &[photo(id - 1).id]))
                            .unwrap();
                    }
                }
            });
        }
        for copy in 0..4 {
            let to = folder.path().join(format!("copy-{copy}"));
            let before = store.head(LOG).unwrap();
            while store.head(LOG).unwrap().position < before.position + 10 {
                std::thread::yield_now();
            }
            store.back_up(&to).unwrap();
            let copy = Sqlite::open(&to).unwrap();
            let verified = verify(&copy, LOG, &checks(None)).unwrap();
            assert!(verified.head.position >= before.position + 10);
            // It is the beginning of the log that it was taken from.
            let rows = copy.log(LOG, 0, usize::MAX).unwrap();
            let count = usize::try_from(verified.events).unwrap();
            assert_eq!(store.log(LOG, 0, count).unwrap(), rows);
            // It goes on as a store of its own.
            copy.append(fact(7, "order-1", "restored")).unwrap();
            assert!(verify(&copy, LOG, &checks(Some(verified.head.hash))).is_ok());
        }
        done.store(true, Relaxed);
    });
    verify(&store, LOG, &checks(None)).unwrap();
}

#[test]
fn a_copy_writes_over_nothing_and_holds_nothing_erased() {
    let folder = tempfile::tempdir().unwrap();
    let store = Sqlite::open(&folder.path().join("shop")).unwrap();
    let (text, photo) = (
        private(1, b"Ms Vale"),
        private(2, &b"Ms Vale's pickup ".repeat(5000)),
    );
    store
        .append(fact_with(1, vec![text.clone(), photo.clone()]))
        .unwrap();
    store.append(erasure(2, &[text.id, photo.id])).unwrap();
    let to = folder.path().join("copy");
    // What an attempt before it left behind, or somebody else put there, is no hindrance and
    // stays; what this attempt made beside it is gone.
    let theirs = folder.path().join("copy.unfinished-1");
    std::fs::create_dir(&theirs).unwrap();
    store.back_up(&to).unwrap();
    assert!(theirs.exists());
    assert!(!folder.path().join("copy.unfinished-2").exists());
    let needle = b"Ms Vale";
    let holds = |file: &Vec<u8>| file.windows(needle.len()).any(|part| part == needle);
    assert!(!on_disk(&to).iter().any(holds));
    let error = store.back_up(&to).unwrap_err();
    assert!(
        matches!(&error, OpenError::Folder { path, .. } if *path == to),
        "{error}"
    );
    assert_eq!(
        verify(&Sqlite::open(&to).unwrap(), LOG, &checks(None))
            .unwrap()
            .erased,
        2
    );
}

#[test]
fn a_store_that_lost_a_file_is_not_copied_as_if_whole() {
    let folder = tempfile::tempdir().unwrap();
    let shop = folder.path().join("shop");
    let store = Sqlite::open(&shop).unwrap();
    let photo = private(1, &[7; 70_000]);
    store.append(fact_with(1, vec![photo.clone()])).unwrap();
    std::fs::remove_file(shop.join("files").join(hex::encode(photo.id))).unwrap();
    let to = folder.path().join("copy");
    let error = store.back_up(&to).unwrap_err().to_string();
    assert!(
        error.starts_with("the store is damaged: the file of private content"),
        "{error}"
    );
    assert!(!to.exists());
}
