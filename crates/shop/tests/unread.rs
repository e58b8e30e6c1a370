//! Events that cannot be read: they are not written, and where one is there all the same, only
//! its own stream suffers by it.

#![allow(clippy::unwrap_used, reason = "a test fails by panicking")]

mod bench;

use bench::{Bench, LOG};
use serde_json::json;
use shop::repair::{OrderId, Words};
use shop::view::{OrderView, StuckView, order, rows_here, stuck};
use shop::{Caller, Device, Service, Taken, Trouble, TroubleKind};
use std::sync::Arc;
use store::{Command, Memory, NewEvent, Private, Store};

fn seen(service: &Service, number: u64) -> Result<Arc<OrderView>, Trouble> {
    service.look(&Caller::program(), |snap| order(snap, number))
}

fn stuck_in(service: &Service) -> Vec<StuckView> {
    let waiting = service.waiting();
    let look = service.look(&Caller::program(), |snap| stuck(snap, &waiting));
    look.unwrap()
}

/// A row as another program would write it.
fn row(stream: &str, kind: &str, version: u32, body: &str) -> Command {
    Command {
        log: LOG.to_owned(),
        command_id: Device::name(),
        digest: [7; 32],
        who: "ana".to_owned(),
        device: "another".to_owned(),
        device_seq: 1,
        happened_at: "2026-11-25T08:00:00Z".to_owned(),
        recorded_at: "2026-11-25T08:00:00Z".to_owned(),
        expected: [].into(),
        events: vec![NewEvent {
            stream: stream.to_owned(),
            kind: kind.to_owned(),
            version,
            body: body.as_bytes().to_vec(),
        }],
        private: vec![],
        erase: vec![],
    }
}

fn texts(count: usize) -> Vec<Words> {
    let text = |nth: usize| {
        let mut text = [0; 32];
        text[..8].copy_from_slice(&nth.to_be_bytes());
        Words(text)
    };
    (0..count).map(text).collect()
}

/// As the program before this one wrote it.
fn long_erasure(count: usize) -> Command {
    let texts: Vec<String> = texts(count).iter().map(Words::hex).collect();
    let body = json!({ "texts": texts, "why": "erased before" });
    row("shop", "erased", 1, &body.to_string())
}

#[test]
fn a_log_that_holds_an_erasure_of_any_length_opens() {
    let mut bench = Bench::new();
    let id = bench.open("Ada Brandt", "Drayman", "KD 2302");
    bench.store.append(long_erasure(5_000)).unwrap();
    let again = bench.another_program();
    assert_eq!(seen(&again, 1001).unwrap().order, id);
    bench.open("Bo Carr", "Wagoner", "KD 2303");
    let found = shop::verify(bench.store.as_ref(), LOG, None).unwrap();
    assert_eq!(found.unreadable, []);
}

#[test]
fn an_erasure_of_many_texts_is_cut_into_events_that_read_back() {
    let mut bench = Bench::new();
    bench.open("Ada Brandt", "Drayman", "KD 2302");
    // Texts that some order's events name, as a copy brings them.
    let contents: Vec<Private> = (0..4_500_u32)
        .map(|nth| {
            let mut salt = [3; 32];
            salt[..4].copy_from_slice(&nth.to_be_bytes());
            Private {
                id: store::commitment(&salt, b"x"),
                salt,
                media: "text/plain".to_owned(),
                content: b"x".to_vec(),
            }
        })
        .collect();
    for some in contents.chunks(1_500) {
        let ids: Vec<String> = some.iter().map(|one| Words(one.id).hex()).collect();
        let mut command = row(
            "order:old",
            "consented",
            9,
            &json!({ "texts": ids }).to_string(),
        );
        command.private = some.to_vec();
        bench.store.append(command).unwrap();
    }
    let ids: Vec<_> = contents.iter().map(|one| one.id).collect();
    let now = "2026-11-25T09:00:00Z";
    let count = shop::erase_again(bench.store.as_ref(), LOG, &ids, now).unwrap();
    assert_eq!(count, 4_500);
    let rows = bench.store.stream(LOG, "shop", 0).unwrap();
    let erased: Vec<usize> = rows
        .iter()
        .filter(|row| row.kind == "erased")
        .map(|row| shop::erased(row).len())
        .collect();
    assert_eq!(erased.iter().sum::<usize>(), 4_500);
    assert!(
        erased.len() > 1 && erased.iter().all(|count| *count <= 1_000),
        "{erased:?}"
    );
    let again = bench.another_program();
    assert_eq!(
        again.world().unwrap().position,
        bench.store.head(LOG).unwrap().position
    );
}

/// An order with a row that a newer program wrote, after it was set down and found.
struct Newer {
    bench: Bench,
    stuck: String,
    other: String,
}

fn newer() -> Newer {
    let mut bench = Bench::new();
    let stuck = bench.open("Ada Brandt", "Drayman", "KD 2302");
    let other = bench.open("Bo Carr", "Wagoner", "KD 2303");
    let newer = row(
        &format!("order:{stuck}"),
        "weighed-up",
        3,
        r#"{"scales":2}"#,
    );
    bench.store.append(newer).unwrap();
    Newer {
        bench,
        stuck,
        other,
    }
}

#[test]
fn a_row_of_a_newer_program_makes_its_own_stream_one_to_look_at() {
    let Newer {
        mut bench,
        stuck: id,
        other,
    } = newer();
    let reading = json!({ "odometer": { "reading": "1 km", "at": "in" } });

    // The order is shown, and says why it takes nothing.
    let view = bench.view(&id);
    let why = view.unread.clone().unwrap();
    assert!(
        why.contains("weighed-up") && why.contains("version 3"),
        "{why}"
    );
    assert!(
        view.gates.iter().all(|gate| !gate.may),
        "what is not read may hold it"
    );
    assert!(!view.row.can_roll);

    // A fact for it waits on its device, and the desk sees it.
    let sent = bench.make(&format!("order:{id}"), "fact", reading.clone());
    for _ in 0..3 {
        let trouble = bench
            .service
            .command(&Caller::program(), sent.clone())
            .unwrap_err();
        assert_eq!(trouble.kind, TroubleKind::Waits, "{trouble}");
        assert!(trouble.what.contains("weighed-up"), "{trouble}");
    }
    let told = stuck_in(&bench.service);
    assert_eq!(told.len(), 1);
    assert_eq!((told[0].order, told[0].waiting), (Some(1001), 1));
    assert_eq!(told[0].devices, ["desk"]);
    // What is asked for now is answered now.
    let refused = bench.ask(&id, json!({ "charge": {} })).unwrap_err();
    assert_eq!(refused.kind, TroubleKind::Refused);

    // Everything else goes on, new orders too.
    bench.tell(&other, reading);
    bench.open("Cy Dunn", "Carter", "KD 2304");
    assert_eq!(
        bench
            .service
            .look(&Caller::program(), rows_here)
            .unwrap()
            .len(),
        3
    );

    // The same at the next start, from the index and without it.
    bench.service.save_index().unwrap();
    for program in [bench.another_program(), blank(&bench)] {
        assert_eq!(seen(&program, 1001).unwrap().unread, Some(why.clone()));
        assert_eq!(stuck_in(&program).len(), 1);
        let trouble = program
            .command(&Caller::program(), sent.clone())
            .unwrap_err();
        assert_eq!(trouble.kind, TroubleKind::Waits);
    }
    let rebuilt = shop::rebuild(&bench.store, LOG, true).unwrap();
    assert_eq!(rebuilt.differences, Vec::<String>::new());

    // To verify is to read as well.
    let found = shop::verify(bench.store.as_ref(), LOG, None).unwrap();
    assert_eq!(found.unreadable.len(), 1);
    assert_eq!(found.unreadable[0].stream, format!("order:{id}"));
}

/// Another program on the same record, without the index.
fn blank(bench: &Bench) -> Service {
    let to: Arc<dyn Store> = Arc::new(Memory::new());
    shop::copy(bench.store.as_ref(), to.as_ref(), LOG, Taken::AsTheyAre).unwrap();
    Service::open(to, LOG, bench.clock.as_now()).unwrap()
}

#[test]
fn an_index_of_a_program_that_could_read_less_is_made_again() {
    let mut bench = Bench::new();
    let id = bench.open("Ada Brandt", "Drayman", "KD 2302");
    let stream = format!("order:{id}");
    let newer = row(&stream, "odometer", 1, r#"{"at":"in","reading":"7 km"}"#);
    bench.store.append(newer).unwrap();
    bench.service.save_index().unwrap();
    // As a program wrote it that did not know the kind.
    let head = bench.store.cache_head(LOG, "index 9").unwrap().unwrap();
    let unread = json!({ "position": head.position, "stream": stream, "seq": 3,
        "kind": "odometer", "version": 1, "what": "unknown" });
    let card = |drawer: &str, key: &str, value: String| store::Card {
        drawer: drawer.to_owned(),
        key: key.to_owned(),
        value,
        of: None,
    };
    let put = vec![card("unread", &stream, unread.to_string())];
    let change = store::CacheChange {
        log: LOG.to_owned(),
        cache: "index 9".to_owned(),
        from: Some(head),
        to: head,
        remove: vec![],
        put,
    };
    assert!(bench.store.change_cache(change).unwrap());
    let again = bench.another_program();
    assert_eq!(stuck_in(&again), []);
    bench.tell(
        &id,
        json!({ "odometer": { "reading": "8 km", "at": "in" } }),
    );
}

#[test]
fn where_the_shop_itself_is_not_read_whole_only_what_writes_there_waits() {
    let mut bench = Bench::new();
    let id = bench.open("Ada Brandt", "Drayman", "KD 2302");
    bench
        .store
        .append(row("shop", "shutters", 1, "{}"))
        .unwrap();
    bench.tell(
        &id,
        json!({ "odometer": { "reading": "1 km", "at": "in" } }),
    );
    bench
        .ask(&id, json!({ "price": { "entries": [] } }))
        .unwrap();
    let joined = json!({ "joined": { "person": "cy", "name": Device::words("Cy Dunn"), "roles": ["technician"] } });
    let trouble = bench.send("shop", "shop_fact", joined).unwrap_err();
    assert_eq!(trouble.kind, TroubleKind::Waits);
    // A new order gets its number from the shop.
    let open = json!({ "open": { "vehicle": "v", "customer": "c" } });
    let trouble = bench.ask("late", open).unwrap_err();
    assert_eq!(trouble.kind, TroubleKind::Refused, "{trouble}");
    assert!(trouble.what.contains("shutters"), "{trouble}");
    let again = bench.another_program();
    assert_eq!(
        again.world().unwrap().shop.people().len(),
        2,
        "what reads is there"
    );
}

#[test]
fn a_copy_takes_only_what_reads_unless_it_is_told_to() {
    let Newer { bench, .. } = newer();
    let from = bench.store.as_ref();
    let to = Memory::new();
    let trouble = shop::copy(from, &to, LOG, Taken::Readable).unwrap_err();
    assert!(trouble.what.contains("weighed-up"), "{trouble}");
    let mut lines = Vec::new();
    shop::export(from, LOG, |line| {
        lines.push(line.to_owned());
        Ok(())
    })
    .unwrap();
    let lines = || lines.iter().map(|line| Ok(line.clone()));
    let end = shop::end_of_lines(lines()).unwrap();
    let to = Memory::new();
    let trouble = shop::import(lines(), end, &to, LOG, Taken::Readable).unwrap_err();
    assert!(trouble.what.contains("weighed-up"), "{trouble}");
    let to = Memory::new();
    let head = shop::import(lines(), end, &to, LOG, Taken::AsTheyAre).unwrap();
    assert_eq!(head, from.head(LOG).unwrap());
}

#[test]
fn what_comes_with_a_command_is_named_by_it_as_what_it_is() {
    let mut bench = Bench::new();
    let id = bench.open("Ada Brandt", "Drayman", "KD 2302");
    let stream = format!("order:{id}");
    let mut photo = Device::document("not really a photo", "image/jpeg");
    let noted = |file: &serde_json::Value| {
        json!({ "observed": { "id": Device::name(), "zone": "outside", "what": "damage",
        "words": null, "photos": [file] } })
    };
    bench.tell(&id, noted(&photo));
    let named = bench.store.log(LOG, 0, 1_000).unwrap();
    let file = shop::commitments(named.last().unwrap()).remove(0);
    assert_eq!(file.media.as_deref(), Some("image/jpeg"));
    // The same file, named as something else.
    let other = json!({ "words": Words(file.id).hex(), "media": "image/png" });
    let trouble = bench.send(&stream, "fact", noted(&other)).unwrap_err();
    assert_eq!(trouble.kind, TroubleKind::Unreadable, "{trouble}");
    assert!(trouble.what.contains("image/png"), "{trouble}");
    photo = json!({ "words": Words(file.id).hex(), "media": "image/jpeg" });
    bench.tell(&id, noted(&photo));
    shop::verify(bench.store.as_ref(), LOG, None).unwrap();
    assert!(
        bench
            .service
            .world()
            .unwrap()
            .number_of(&OrderId::new(id))
            .unwrap()
            .is_some()
    );
}
