//! What every engine must do, told once and run unchanged against each.
//!
//! `story!(make)` makes one test of each chapter; `make()` gives a fresh [`House`].

#![allow(clippy::unwrap_used, reason = "a test fails by panicking")]

use std::collections::{BTreeMap, BTreeSet};
use std::sync::{Arc, Mutex, mpsc};
use std::time::Duration;

use store::*;

use crate::commands::{LOG, checks, erasure, event, fact, fact_with, private};

/// A place where one engine keeps its store.
pub trait House {
    /// Opens the store; the one opened before has been dropped.
    fn open(&mut self) -> Arc<dyn Store>;
}

#[macro_export]
macro_rules! story {
    ($make:path) => {
        $crate::story!($make:
            appends_and_reads_back
            a_repeat_gets_the_first_answer
            an_id_is_not_reused
            a_stale_decision_is_told_what_it_missed
            one_command_writes_several_streams
            facts_from_many_threads_leave_no_gap
            one_refusal_in_a_batch_fails_alone
            logs_do_not_mix
            private_contents_come_back
            what_is_erased_is_gone_and_stays_gone
            malformed_commands_write_nothing
            watchers_hear_only_of_what_is_committed
            everything_is_there_after_reopening
            verify_finds_a_noted_head
            verify_wants_an_event_for_each_erasure
            a_cache_is_found_by_key_and_by_what_it_says
            a_cache_changes_only_from_where_it_stands
            an_erased_content_takes_its_cards_along
            who_may_use_it_changes_only_from_what_was_seen
            a_copy_that_is_landing_takes_nothing_else_and_goes_on
        );
    };
    ($make:path: $($chapter:ident)*) => {
        $(#[test] fn $chapter() { story::$chapter(&mut $make()); })*
    };
}

pub fn a_copy_that_is_landing_takes_nothing_else_and_goes_on(house: &mut dyn House) {
    let store = house.open();
    let end = [7; 32];
    store.begin_landing(LOG, &end).unwrap();
    assert_eq!(store.landing(LOG).unwrap(), Some(end));
    assert_eq!(store.landing("another").unwrap(), None);
    let refused = |answer: Result<Outcome, AppendError>| {
        assert!(
            matches!(answer, Err(AppendError::Landing { .. })),
            "{answer:?}"
        );
    };
    refused(store.append(fact(1, "order-1", "belt off")));
    let landed = store.land_all(vec![fact(1, "order-1", "belt off")]);
    assert!(landed[0].is_ok(), "{landed:?}");
    let damage = verify(store.as_ref(), LOG, &checks(None)).unwrap_err();
    assert!(matches!(damage, Damage::HalfLanded { .. }), "{damage}");
    // It broke off; the same copy goes on, and no other.
    let store = {
        drop(store);
        house.open()
    };
    assert!(store.begin_landing(LOG, &[8; 32]).is_err());
    store.begin_landing(LOG, &end).unwrap();
    let again = store.land_all(vec![
        fact(1, "order-1", "belt off"),
        fact(2, "order-1", "belt on"),
    ]);
    assert!(matches!(again[0], Ok(Outcome::Repeated(_))), "{again:?}");
    refused(store.append(fact(3, "order-1", "later")));
    store.end_landing(LOG).unwrap();
    assert_eq!(
        verify(store.as_ref(), LOG, &checks(None)).unwrap().events,
        2
    );
    store.append(fact(3, "order-1", "later")).unwrap();
    // What is landing no more takes no copy, nor does a log with something in it.
    refused(store.land_all(vec![fact(4, "order-1", "late")]).remove(0));
    assert!(store.begin_landing(LOG, &end).is_err());
}

fn appended(answer: Result<Outcome, AppendError>) -> Vec<Row> {
    match answer.unwrap() {
        Outcome::Appended(rows) => rows,
        Outcome::Repeated(rows) => panic!("repeated: {rows:?}"),
    }
}

pub fn appends_and_reads_back(house: &mut dyn House) {
    let store = house.open();
    assert_eq!(store.head(LOG).unwrap(), Head::empty(LOG));
    assert_eq!(store.log(LOG, 0, 10).unwrap(), []);
    let first = appended(store.append(fact(1, "order-1", "undertray off")));
    let second = appended(store.append(fact(2, "order-1", "belt off")));
    let row = &second[0];
    assert_eq!((row.position, row.seq, row.nth), (2, 2, 0));
    assert_eq!(row.body, b"belt off");
    assert_eq!(row.happened_at, "2026-03-02T08:15:00+01:00");
    assert_eq!(row.prev_hash, first[0].hash);
    assert_eq!(first[0].prev_hash, first_hash(LOG));
    assert_eq!(
        store.log(LOG, 0, 10).unwrap(),
        [&first[..], &second[..]].concat()
    );
    assert_eq!(store.log(LOG, 0, 1).unwrap(), first);
    assert_eq!(store.stream(LOG, "order-1", 1).unwrap(), second);
    assert_eq!(store.stream(LOG, "order-2", 0).unwrap(), []);
    assert_eq!(store.command(LOG, &row.command_id).unwrap(), second);
    assert_eq!(
        store.head(LOG).unwrap(),
        Head {
            position: 2,
            hash: row.hash
        }
    );
    let streams = store.streams(LOG).unwrap();
    assert_eq!(
        streams,
        [StreamHead {
            stream: "order-1".to_owned(),
            seq: 2
        }]
    );
    assert_eq!(store.device_seq(LOG, "tablet-1").unwrap(), Some(2));
    assert_eq!(store.device_seq(LOG, "tablet-2").unwrap(), None);
    assert_eq!(store.logs().unwrap(), [LOG]);
    assert_eq!(verify(&*store, LOG, &checks(None)).unwrap().events, 2);
}

pub fn a_repeat_gets_the_first_answer(house: &mut dyn House) {
    let store = house.open();
    let first = appended(store.append(fact(1, "order-1", "belt off")));
    appended(store.append(fact(2, "order-1", "wheel off")));
    let mut again = fact(1, "order-1", "belt off");
    again.recorded_at = "2026-03-02T09:00:00Z".to_owned();
    assert_eq!(store.append(again), Ok(Outcome::Repeated(first.clone())));
    // Also a decision that has been overtaken since, and also within one batch.
    let mut decision = fact(3, "order-1", "priced");
    decision.expected.insert("order-1".to_owned(), 2);
    let answers = store.append_all(vec![decision.clone(), decision]);
    let rows = answers[0].as_ref().unwrap().rows().to_vec();
    assert_eq!(
        answers,
        [
            Ok(Outcome::Appended(rows.clone())),
            Ok(Outcome::Repeated(rows))
        ]
    );
    assert_eq!(store.head(LOG).unwrap().position, 3);
}

pub fn an_id_is_not_reused(house: &mut dyn House) {
    let store = house.open();
    appended(store.append(fact(1, "order-1", "belt off")));
    let error = store.append(fact(1, "order-1", "belt on")).unwrap_err();
    let AppendError::IdReusedWithOtherContent { log, command_id } = error else {
        panic!("{error:?}")
    };
    assert_eq!(
        (log.as_str(), command_id),
        (LOG, fact(1, "", "").command_id)
    );
    assert_eq!(store.head(LOG).unwrap().position, 1);
}

pub fn a_stale_decision_is_told_what_it_missed(house: &mut dyn House) {
    let store = house.open();
    appended(store.append(fact(1, "order-1", "belt off")));
    let missed = appended(store.append(fact(2, "order-1", "wheel off")));
    let mut decision = fact(3, "order-1", "handed over");
    decision.expected.insert("order-1".to_owned(), 1);
    let conflict = |expected, since| AppendError::Conflict {
        stream: "order-1".to_owned(),
        expected,
        actual: 2,
        since,
    };
    assert_eq!(store.append(decision.clone()), Err(conflict(1, missed)));
    // A decision from a future that this log has not seen is stale as well.
    decision.expected.insert("order-1".to_owned(), 5);
    assert_eq!(store.append(decision.clone()), Err(conflict(5, Vec::new())));
    // A refusal is not remembered: with the right number the same id is taken.
    decision.expected.insert("order-1".to_owned(), 2);
    decision.expected.insert("order-9".to_owned(), 0);
    assert_eq!(appended(store.append(decision))[0].position, 3);
}

pub fn one_command_writes_several_streams(house: &mut dyn House) {
    let store = house.open();
    appended(store.append(fact(1, "shop", "opened")));
    let mut command = fact(2, "shop", "number 17 given");
    command.events.push(event("order-1", "began"));
    command.events.push(event("order-1", "line added"));
    let rows = appended(store.append(command.clone()));
    let places: Vec<_> = rows
        .iter()
        .map(|row| (row.position, row.stream.as_str(), row.seq, row.nth))
        .collect();
    assert_eq!(
        places,
        [
            (2, "shop", 2, 0),
            (3, "order-1", 1, 1),
            (4, "order-1", 2, 2)
        ]
    );
    assert_eq!(store.command(LOG, &command.command_id).unwrap(), rows);
    let streams: Vec<_> = store
        .streams(LOG)
        .unwrap()
        .into_iter()
        .map(|s| (s.stream, s.seq))
        .collect();
    assert_eq!(streams, [("order-1".to_owned(), 2), ("shop".to_owned(), 2)]);
    // Stale in one of several streams: nothing of it is written, in none.
    let mut stale = fact(3, "shop", "number 18 given");
    stale.events.push(event("order-2", "began"));
    stale.expected = BTreeMap::from([("order-2".to_owned(), 0), ("shop".to_owned(), 1)]);
    assert!(matches!(
        store.append(stale),
        Err(AppendError::Conflict { .. })
    ));
    assert_eq!(store.head(LOG).unwrap().position, 4);
}

pub fn facts_from_many_threads_leave_no_gap(house: &mut dyn House) {
    let store = house.open();
    std::thread::scope(|scope| {
        for thread in 0..8 {
            let store = &store;
            scope.spawn(move || {
                for number in 0..25 {
                    let stream = format!("order-{}", number % 3);
                    let mut command = fact(thread * 100 + number, &stream, "moved");
                    command.device = format!("tablet-{thread}");
                    appended(store.append(command));
                }
            });
        }
    });
    let rows = store.log(LOG, 0, 1000).unwrap();
    let positions: Vec<_> = rows.iter().map(|row| row.position).collect();
    assert_eq!(positions, (1..=200).collect::<Vec<_>>());
    let ids: BTreeSet<_> = rows.iter().map(|row| &row.command_id).collect();
    assert_eq!(ids.len(), 200);
    for stream in store.streams(LOG).unwrap() {
        let seqs: Vec<_> = store
            .stream(LOG, &stream.stream, 0)
            .unwrap()
            .iter()
            .map(|row| row.seq)
            .collect();
        assert_eq!(seqs, (1..=stream.seq).collect::<Vec<_>>());
    }
    // Each device's own commands kept their order.
    for thread in 0..8 {
        let device = format!("tablet-{thread}");
        let sent: Vec<_> = rows
            .iter()
            .filter(|row| row.device == device)
            .map(|row| row.device_seq)
            .collect();
        assert!(sent.is_sorted());
        assert_eq!(
            store.device_seq(LOG, &device).unwrap(),
            Some(thread * 100 + 24)
        );
    }
    assert_eq!(verify(&*store, LOG, &checks(None)).unwrap().events, 200);
}

pub fn one_refusal_in_a_batch_fails_alone(house: &mut dyn House) {
    let store = house.open();
    let mut stale = fact(2, "order-1", "priced");
    stale.expected.insert("order-1".to_owned(), 0);
    let mut wrong = fact_with(3, vec![private(1, b"Ms Vale, 5 Mill Lane")]);
    wrong.private[0].content.push(b'!');
    let answers = store.append_all(vec![
        fact(1, "order-1", "belt off"),
        stale,
        wrong,
        fact(4, "order-1", "belt on"),
    ]);
    assert!(matches!(answers[0], Ok(Outcome::Appended(_))));
    assert!(matches!(answers[1], Err(AppendError::Conflict { .. })));
    assert!(matches!(
        answers[2],
        Err(AppendError::PrivateDoesNotMatch { .. })
    ));
    assert_eq!(answers[3].as_ref().unwrap().rows()[0].position, 2);
    assert_eq!(verify(&*store, LOG, &checks(None)).unwrap().events, 2);
}

pub fn logs_do_not_mix(house: &mut dyn House) {
    let store = house.open();
    let note = private(9, b"rings back after four");
    let mut other = fact_with(1, vec![note.clone()]);
    other.log = "shop-2".to_owned();
    appended(store.append(fact(1, "order-1", "belt off")));
    // The same command id and stream name in another log are another command and stream.
    let rows = appended(store.append(other));
    assert_eq!((rows[0].position, rows[0].seq), (1, 1));
    assert_eq!(store.logs().unwrap(), [LOG, "shop-2"]);
    assert_eq!(store.private(LOG, &note.id).unwrap(), None);
    assert_eq!(store.private("shop-2", &note.id).unwrap(), Some(note));
    assert_eq!(store.log(LOG, 0, 10).unwrap().len(), 1);
}

pub fn private_contents_come_back(house: &mut dyn House) {
    let store = house.open();
    let text = private(1, "Frau Öztürk möchte es bis Freitag".as_bytes());
    let empty = private(2, b"");
    let photo = private(3, &photo());
    let contents = vec![text.clone(), empty.clone(), photo.clone()];
    appended(store.append(fact_with(1, contents.clone())));
    // Another event may hold the same commitment and bring the content again.
    appended(store.append(fact_with(2, vec![photo])));
    for content in &contents {
        assert_eq!(
            store.private(LOG, &content.id).unwrap().as_ref(),
            Some(content)
        );
    }
    assert_eq!(store.private(LOG, &[0; 32]).unwrap(), None);
    assert_eq!(verify(&*store, LOG, &checks(None)).unwrap().private, 4);
}

/// Large enough to stand beside the log.
fn photo() -> Vec<u8> {
    (0..200_000_u32).flat_map(u32::to_le_bytes).collect()
}

pub fn what_is_erased_is_gone_and_stays_gone(house: &mut dyn House) {
    let store = house.open();
    let (text, kept, photo) = (
        private(1, b"Ms Vale"),
        private(2, b"kept"),
        private(3, &photo()),
    );
    let never_came = private(4, b"never came");
    let brings = fact_with(1, vec![text.clone(), kept.clone(), photo.clone()]);
    appended(store.append(brings.clone()));
    let erased = [text.id, photo.id, never_came.id];
    appended(store.append(erasure(2, &erased)));
    // Neither the same command nor another one brings an erased content back.
    assert!(matches!(store.append(brings), Ok(Outcome::Repeated(_))));
    appended(store.append(fact_with(3, vec![text, photo, never_came])));
    let verified = verify(&*store, LOG, &checks(None)).unwrap();
    assert_eq!(
        (verified.events, verified.private, verified.erased),
        (3, 1, 3)
    );
    drop(store);
    let store = house.open();
    for id in erased {
        assert_eq!(store.private(LOG, &id).unwrap(), None);
    }
    assert_eq!(store.private(LOG, &kept.id).unwrap(), Some(kept));
    assert_eq!(verify(&*store, LOG, &checks(None)).unwrap(), verified);
}

pub fn malformed_commands_write_nothing(house: &mut dyn House) {
    let store = house.open();
    let mut none = fact(1, "order-1", "x");
    none.events.clear();
    assert!(matches!(
        store.append(none),
        Err(AppendError::NoEvents { .. })
    ));
    let refused = |change: &dyn Fn(&mut Command)| {
        let mut command = fact(1, "order-1", "x");
        change(&mut command);
        match store.append(command) {
            Err(AppendError::NotStorable { field, .. }) => field,
            other => panic!("{other:?}"),
        }
    };
    assert_eq!(refused(&|c| c.log.clear()), "log");
    assert_eq!(refused(&|c| c.command_id = "i".repeat(201)), "command_id");
    assert_eq!(refused(&|c| c.who = "a\0b".to_owned()), "who");
    assert_eq!(refused(&|c| c.device_seq = u64::MAX), "device_seq");
    assert_eq!(refused(&|c| c.events[0].stream.clear()), "stream");
    assert_eq!(
        refused(&|c| c.events[0].body = vec![0; 16 * 1024 * 1024 + 1]),
        "body"
    );
    assert_eq!(store.logs().unwrap(), Vec::<String>::new());
    // The largest numbers, an empty body and bytes that are no text are all taken.
    let mut odd = fact(1, "Aufträge/№ 1", "x");
    odd.device_seq = i64::MAX.unsigned_abs();
    odd.events[0].version = u32::MAX;
    odd.events[0].body = vec![];
    odd.events.push(event("order-1", ""));
    odd.events[1].body = (0..=255).collect();
    let rows = appended(store.append(odd));
    assert_eq!(store.log(LOG, 0, 10).unwrap(), rows);
    assert_eq!(store.log(LOG, u64::MAX, usize::MAX).unwrap(), []);
}

pub fn watchers_hear_only_of_what_is_committed(house: &mut dyn House) {
    let store = house.open();
    let (told, heard) = mpsc::channel();
    let told = Mutex::new(told);
    let reads = Arc::downgrade(&store);
    store.on_append(Box::new(move |log, position| {
        let there = reads
            .upgrade()
            .map(|store| store.head(log).unwrap().position);
        let _ = told.lock().unwrap().send((log.to_owned(), position, there));
    }));
    store.on_append(Box::new(|_, _| panic!("a watcher that fails")));
    let mut stale = fact(1, "order-1", "priced");
    stale.expected.insert("order-1".to_owned(), 7);
    store.append(stale).unwrap_err();
    appended(store.append(fact(2, "order-1", "belt off")));
    assert!(matches!(
        store.append(fact(2, "order-1", "belt off")),
        Ok(Outcome::Repeated(_))
    ));
    let mut two = fact(3, "order-1", "wheel off");
    two.events.push(event("order-1", "wheel on"));
    appended(store.append(two));
    let wait = Duration::from_secs(20);
    let mut positions = Vec::new();
    while positions.last() != Some(&3) {
        let (log, position, there) = heard.recv_timeout(wait).unwrap();
        assert_eq!(log, LOG);
        assert!(there.is_none_or(|there| there >= position));
        positions.push(position);
    }
    positions.dedup();
    // Engines that poll may skip a position; none tells of one that is not there.
    assert!(positions == [1, 3] || positions == [3], "{positions:?}");
}

pub fn everything_is_there_after_reopening(house: &mut dyn House) {
    let store = house.open();
    appended(store.append(fact_with(
        1,
        vec![private(1, b"Ms Vale"), private(2, &photo())],
    )));
    appended(store.append(fact(2, "order-2", "belt off")));
    let (rows, head) = (store.log(LOG, 0, 10).unwrap(), store.head(LOG).unwrap());
    drop(store);
    let store = house.open();
    assert_eq!(store.log(LOG, 0, 10).unwrap(), rows);
    assert_eq!(store.head(LOG).unwrap(), head);
    assert!(matches!(
        store.append(fact(2, "order-2", "belt off")),
        Ok(Outcome::Repeated(_))
    ));
    let rows = appended(store.append(fact(3, "order-2", "belt on")));
    assert_eq!(
        (rows[0].position, rows[0].seq, rows[0].prev_hash),
        (3, 2, head.hash)
    );
    assert_eq!(verify(&*store, LOG, &checks(None)).unwrap().private, 2);
}

pub fn verify_finds_a_noted_head(house: &mut dyn House) {
    let store = house.open();
    for id in 1..=2500 {
        // Past two pages of the walk.
        if id % 100 == 1 {
            let commands = (id..id + 100)
                .map(|id| fact(id, "order-1", "moved"))
                .collect();
            store
                .append_all(commands)
                .into_iter()
                .for_each(|answer| drop(appended(answer)));
        }
    }
    let noted = store.log(LOG, 1233, 1).unwrap()[0].hash;
    let verified = verify(&*store, LOG, &checks(Some(noted))).unwrap();
    assert_eq!(
        (verified.events, verified.asked_head_at),
        (2500, Some(1234))
    );
    assert_eq!(verified.head, store.head(LOG).unwrap());
    let unknown = verify(&*store, LOG, &checks(Some([1; 32])));
    assert!(matches!(unknown, Err(Damage::AskedHeadNotFound { .. })));
    let empty = verify(&*store, "shop-9", &checks(None)).unwrap();
    assert_eq!((empty.events, empty.head), (0, Head::empty("shop-9")));
}

pub fn verify_wants_an_event_for_each_erasure(house: &mut dyn House) {
    let store = house.open();
    let text = private(1, b"Ms Vale");
    appended(store.append(fact(1, "order-1", "began")));
    appended(store.append(fact_with(2, vec![text.clone()])));
    let mut silent = fact(3, "order-1", "says nothing of it");
    silent.erase.push(text.id);
    appended(store.append(silent));
    let gone = verify(&*store, LOG, &checks(None)).unwrap_err();
    let Damage::PrivateGone { position, id, .. } = gone else {
        panic!("{gone:?}")
    };
    assert_eq!((position, id), (2, hex::encode(text.id)));
    // An event that claims an erasure which did not happen is found as well.
    let kept = private(2, b"kept");
    appended(store.append(erasure(4, &[text.id])));
    let mut claims = erasure(6, &[kept.id]);
    claims.erase.clear();
    appended(store.append(fact_with(5, vec![kept])));
    appended(store.append(claims));
    let back = verify(&*store, LOG, &checks(None)).unwrap_err();
    assert!(
        matches!(back, Damage::ErasedIsBack { position: 6, .. }),
        "{back:?}"
    );
}

const CACHE: &str = "cards 1";

fn card(drawer: &str, key: &str, value: &str, of: Option<Hash>) -> Card {
    Card {
        drawer: drawer.to_owned(),
        key: key.to_owned(),
        value: value.to_owned(),
        of,
    }
}

fn change(from: Option<Head>, to: Head, put: Vec<Card>) -> CacheChange {
    CacheChange {
        log: LOG.to_owned(),
        cache: CACHE.to_owned(),
        from,
        to,
        remove: Vec::new(),
        put,
    }
}

pub fn a_cache_is_found_by_key_and_by_what_it_says(house: &mut dyn House) {
    let store = house.open();
    appended(store.append(fact(1, "order-1", "belt off")));
    let head = store.head(LOG).unwrap();
    assert_eq!(store.cache_head(LOG, CACHE).unwrap(), None);
    let all: Vec<Card> = (0..20)
        .map(|nth| {
            card(
                "odd and even",
                &format!("{nth:02}"),
                ["even", "odd"][nth % 2],
                None,
            )
        })
        .collect();
    let mut first = change(None, head, all.clone());
    first.put.push(card("other", "05", "elsewhere", None));
    assert_eq!(store.change_cache(first), Ok(true));
    assert_eq!(store.cache_head(LOG, CACHE).unwrap(), Some(head));

    let find = |wanted: Wanted<'_>| -> Vec<String> {
        let found = store.cards(LOG, CACHE, &wanted).unwrap();
        found.into_iter().map(|card| card.key).collect()
    };
    let every = Wanted::from("odd and even", "");
    assert_eq!(store.cards(LOG, CACHE, &every).unwrap(), all);
    assert_eq!(find(Wanted::one("odd and even", "07")), ["07"]);
    let some = Wanted {
        from: "03",
        below: Some("06"),
        ..every
    };
    assert_eq!(find(some), ["03", "04", "05"]);
    let last = Wanted {
        containing: Some("dd"),
        backwards: true,
        most: 2,
        ..every
    };
    assert_eq!(find(last), ["19", "17"]);
    let before = Wanted {
        below: Some("17"),
        ..last
    };
    assert_eq!(find(before), ["15", "13"]);
    // Signs that some search languages give a meaning have none.
    assert!(
        find(Wanted {
            containing: Some("%"),
            ..every
        })
        .is_empty()
    );
    assert!(store.cards("another", CACHE, &every).unwrap().is_empty());
    assert!(store.cards(LOG, "cards 2", &every).unwrap().is_empty());
}

pub fn a_cache_changes_only_from_where_it_stands(house: &mut dyn House) {
    let store = house.open();
    let mut heads = Vec::new();
    for nth in 1..=3 {
        appended(store.append(fact(nth, "order-1", "belt off")));
        heads.push(store.head(LOG).unwrap());
    }
    let (first, second) = (heads[0], heads[1]);
    let say = |from, to, value: &str| change(from, to, vec![card("drawer", "key", value, None)]);
    assert_eq!(
        store.change_cache(say(Some(first), second, "too soon")),
        Ok(false)
    );
    assert_eq!(store.change_cache(say(None, first, "one")), Ok(true));
    assert_eq!(store.change_cache(say(None, second, "late")), Ok(false));
    assert_eq!(
        store.change_cache(say(Some(first), second, "two")),
        Ok(true)
    );
    assert_eq!(
        store.change_cache(say(Some(first), heads[2], "late")),
        Ok(false)
    );
    drop(store);

    let store = house.open();
    assert_eq!(store.cache_head(LOG, CACHE).unwrap(), Some(second));
    let found = store
        .cards(LOG, CACHE, &Wanted::one("drawer", "key"))
        .unwrap();
    assert_eq!(found, [card("drawer", "key", "two", None)]);
    let mut gone = change(Some(second), heads[2], Vec::new());
    gone.remove.push(("drawer".to_owned(), "key".to_owned()));
    assert_eq!(store.change_cache(gone), Ok(true));
    let every = Wanted::from("drawer", "");
    assert!(store.cards(LOG, CACHE, &every).unwrap().is_empty());

    let mut other = say(None, first, "other");
    other.cache = "cards 2".to_owned();
    assert_eq!(store.change_cache(other), Ok(true));
    assert_eq!(store.caches(LOG).unwrap(), [CACHE, "cards 2"]);
    store.drop_cache(LOG, "cards 2").unwrap();
    assert_eq!(store.cache_head(LOG, "cards 2").unwrap(), None);
    assert!(store.cards(LOG, "cards 2", &every).unwrap().is_empty());
    assert_eq!(store.cache_head(LOG, CACHE).unwrap(), Some(heads[2]));
    assert_eq!(store.caches(LOG).unwrap(), [CACHE]);
    assert_eq!(verify(&*store, LOG, &checks(None)).unwrap().events, 3);
}

pub fn who_may_use_it_changes_only_from_what_was_seen(house: &mut dyn House) {
    let store = house.open();
    let change = |drawer: &str, key: &str, from: u64, to: Option<&str>| {
        let change = AccessChange {
            log: "shop".to_owned(),
            drawer: drawer.to_owned(),
            key: key.to_owned(),
            from,
            to: to.map(str::to_owned),
        };
        store.change_access(change).unwrap()
    };
    assert!(store.accesses("shop", "device", None).unwrap().is_empty());
    assert!(change("device", "b", 0, Some("two")));
    assert!(change("device", "a", 0, Some("one")));
    assert!(!change("device", "a", 0, Some("another")), "it is there");
    assert!(change("device", "a", 1, Some("one, changed")));
    assert!(!change("device", "a", 1, Some("late")));
    assert!(!change("device", "a", 1, None));
    assert!(change("pin", "a", 0, Some("another drawer")));
    // Of two that saw the same, one is told that it was too late.
    let quicker: usize = std::thread::scope(|scope| {
        let tries: Vec<_> = (0..8)
            .map(|nth| scope.spawn(move || change("device", "b", 1, Some(&nth.to_string()))))
            .collect();
        tries
            .into_iter()
            .map(|one| usize::from(one.join().unwrap()))
            .sum()
    });
    assert_eq!(quicker, 1);
    let all = store.accesses("shop", "device", None).unwrap();
    let all: Vec<_> = all
        .iter()
        .map(|one| (one.key.as_str(), one.version))
        .collect();
    assert_eq!(all, [("a", 2), ("b", 2)]);
    assert!(change("device", "b", 2, None));
    let one = store.accesses("shop", "device", Some("a")).unwrap();
    assert_eq!(one[0].value, "one, changed");
    assert!(
        store
            .accesses("shop", "device", Some("b"))
            .unwrap()
            .is_empty()
    );
    assert!(store.accesses("other", "device", None).unwrap().is_empty());
    // No row of the log came of it.
    assert_eq!(store.head("shop").unwrap().position, 0);
}

pub fn an_erased_content_takes_its_cards_along(house: &mut dyn House) {
    let store = house.open();
    let name = private(1, b"Ines Duarte");
    let plate = private(2, b"55-KD-01");
    appended(store.append(fact_with(1, vec![name.clone(), plate.clone()])));
    let first = store.head(LOG).unwrap();
    let cards = vec![
        card("words", "1 name", "inesduarte", Some(name.id)),
        card("words", "1 plate", "55kd01", Some(plate.id)),
        // Its content never came.
        card("words", "2 name", "nobody", Some([7; 32])),
    ];
    assert_eq!(
        store.change_cache(change(None, first, cards.clone())),
        Ok(true)
    );
    let every = Wanted::from("words", "");
    assert_eq!(store.cards(LOG, CACHE, &every).unwrap(), cards[..2]);

    appended(store.append(erasure(2, &[name.id])));
    assert_eq!(store.cards(LOG, CACHE, &every).unwrap(), cards[1..2]);
    // Nor does a program put it back that read the content before.
    let second = store.head(LOG).unwrap();
    assert_eq!(
        store.change_cache(change(Some(first), second, cards.clone())),
        Ok(true)
    );
    assert_eq!(store.cards(LOG, CACHE, &every).unwrap(), cards[1..2]);
}
