//! The use cases of a shop, over a store in memory.

#![allow(clippy::unwrap_used, reason = "a test fails by panicking")]

mod bench;

use bench::seen::{order, rows};
use bench::tell_to;

use bench::{Bench, LOG, command, consent, number};
use serde_json::{Value, json};
use shop::repair::{OrderId, VehicleId, Words};

use shop::{Device, TroubleKind};
use std::collections::BTreeSet;
use std::sync::{Arc, Mutex};
use store::{
    Access, AccessChange, AppendError, CacheChange, Card, Command, EngineError, Hash, Head, Memory,
    OnAppend, Outcome, Private, ReadError, Row, Store, StreamHead, Wanted,
};

const COVER: (&str, &str, &str) = ("cover", "body", "below");

#[test]
fn a_command_sent_twice_counts_once_and_gets_the_same_answer() {
    let mut bench = Bench::new();
    let id = bench.open("Ada Brandt", "Drayman", "KD 2302");
    let paid = bench.make(
        &format!("order:{id}"),
        "fact",
        json!({ "paid": {
        "payer": "customer", "amount": "50.00", "by": "cash", "deposit": true } }),
    );
    let first = tell_to(&bench.service, paid.clone()).unwrap();
    let head = bench.store.head(LOG).unwrap();
    assert_eq!(tell_to(&bench.service, paid.clone()).unwrap(), first);
    // Another program, which had no part in it, gives the same answer too.
    assert_eq!(tell_to(&bench.another_program(), paid).unwrap(), first);
    assert_eq!(bench.store.head(LOG).unwrap(), head);
    assert_eq!(bench.view(&id).payments.len(), 1);

    let open = bench.make(
        "order:again",
        "request",
        json!({ "open": { "vehicle": "v", "customer": "c" } }),
    );
    let first = tell_to(&bench.service, open.clone()).unwrap();
    assert_eq!(
        tell_to(&bench.service, open).unwrap(),
        first,
        "a request is not decided again"
    );
}

#[test]
fn an_id_used_for_something_else_is_refused() {
    let mut bench = Bench::new();
    let id = bench.open("Ada Brandt", "Drayman", "KD 2302");
    let paid = |amount: &str| json!({ "paid": { "payer": "customer", "amount": amount, "by": "cash", "deposit": true } });
    let mut sent = bench.make(&format!("order:{id}"), "fact", paid("50.00"));
    tell_to(&bench.service, sent.clone()).unwrap();
    sent["fact"] = paid("500.00");
    let trouble = tell_to(&bench.service, sent).unwrap_err();
    assert_eq!(trouble.kind, TroubleKind::IdReused);
    assert_eq!(bench.view(&id).payments[0].amount, "50.00");
}

/// A store where somebody else is always quicker by one command, or does something between
/// the reading of words and their coming back.
#[derive(Default)]
struct Quicker {
    inner: Memory,
    first: Mutex<Option<Command>>,
    meanwhile: Mutex<Option<Box<dyn FnOnce() + Send>>>,
}

impl Store for Quicker {
    fn append_all(&self, commands: Vec<Command>) -> Vec<Result<Outcome, AppendError>> {
        if let Some(command) = self.first.lock().unwrap().take() {
            self.inner.append(command).unwrap();
        }
        self.inner.append_all(commands)
    }
    fn begin_landing(&self, log: &str, to: &Hash) -> Result<(), AppendError> {
        self.inner.begin_landing(log, to)
    }
    fn land_all(&self, commands: Vec<Command>) -> Vec<Result<Outcome, AppendError>> {
        self.inner.land_all(commands)
    }
    fn end_landing(&self, log: &str) -> Result<(), EngineError> {
        self.inner.end_landing(log)
    }
    fn landing(&self, log: &str) -> Result<Option<Hash>, ReadError> {
        self.inner.landing(log)
    }
    fn look_over(&self, log: &str) -> Result<(), ReadError> {
        self.inner.look_over(log)
    }
    fn faults(&self) -> Result<Vec<String>, ReadError> {
        self.inner.faults()
    }
    fn remake(&self) -> Result<(), EngineError> {
        self.inner.remake()
    }
    fn held(&self, log: &str) -> Result<Vec<Hash>, ReadError> {
        self.inner.held(log)
    }
    fn stream(&self, log: &str, stream: &str, after_seq: u64) -> Result<Vec<Row>, ReadError> {
        self.inner.stream(log, stream, after_seq)
    }
    fn log(&self, log: &str, after_position: u64, limit: usize) -> Result<Vec<Row>, ReadError> {
        self.inner.log(log, after_position, limit)
    }
    fn command(&self, log: &str, command_id: &str) -> Result<Vec<Row>, ReadError> {
        self.inner.command(log, command_id)
    }
    fn head(&self, log: &str) -> Result<Head, ReadError> {
        self.inner.head(log)
    }
    fn streams(&self, log: &str) -> Result<Vec<StreamHead>, ReadError> {
        self.inner.streams(log)
    }
    fn private(&self, log: &str, id: &Hash) -> Result<Option<Private>, ReadError> {
        let read = self.inner.private(log, id);
        if let Some(act) = self.meanwhile.lock().unwrap().take() {
            act();
        }
        read
    }
    fn is_erased(&self, log: &str, id: &Hash) -> Result<bool, ReadError> {
        self.inner.is_erased(log, id)
    }
    fn device_seq(&self, log: &str, device: &str) -> Result<Option<u64>, ReadError> {
        self.inner.device_seq(log, device)
    }
    fn accesses(
        &self,
        log: &str,
        drawer: &str,
        key: Option<&str>,
    ) -> Result<Vec<Access>, ReadError> {
        self.inner.accesses(log, drawer, key)
    }
    fn change_access(&self, change: AccessChange) -> Result<bool, EngineError> {
        self.inner.change_access(change)
    }
    fn logs(&self) -> Result<Vec<String>, ReadError> {
        self.inner.logs()
    }
    fn cache_head(&self, log: &str, cache: &str) -> Result<Option<Head>, ReadError> {
        self.inner.cache_head(log, cache)
    }
    fn cards(&self, log: &str, cache: &str, wanted: &Wanted<'_>) -> Result<Vec<Card>, ReadError> {
        self.inner.cards(log, cache, wanted)
    }
    fn change_cache(&self, change: CacheChange) -> Result<bool, EngineError> {
        self.inner.change_cache(change)
    }
    fn drop_cache(&self, log: &str, cache: &str) -> Result<(), EngineError> {
        self.inner.drop_cache(log, cache)
    }
    fn caches(&self, log: &str) -> Result<Vec<String>, ReadError> {
        self.inner.caches(log)
    }
    fn on_append(&self, tell: OnAppend) {
        self.inner.on_append(tell);
    }
}

/// The command that made the last row of a store, under another id.
fn like_the_last(store: &dyn Store) -> Command {
    let row = store
        .log(LOG, store.head(LOG).unwrap().position - 1, 1)
        .unwrap()
        .remove(0);
    Command {
        log: row.log,
        command_id: Device::name(),
        digest: [7; 32],
        who: row.who,
        device: row.device,
        device_seq: row.device_seq,
        happened_at: row.happened_at,
        recorded_at: row.recorded_at,
        expected: [].into(),
        events: vec![store::NewEvent {
            stream: row.stream,
            kind: row.kind,
            version: row.version,
            body: row.body,
        }],
        private: vec![],
        erase: vec![],
    }
}

#[test]
fn a_request_is_decided_again_where_somebody_was_quicker_unless_it_says_what_it_rests_on() {
    let store = Arc::new(Quicker::default());
    let mut bench = Bench::on(Arc::clone(&store) as Arc<dyn Store>);
    let id = bench.open("Ada Brandt", "Drayman", "KD 2302");
    bench.tell(
        &id,
        json!({ "odometer": { "reading": "1 km", "at": "in" } }),
    );
    let price = json!({ "price": { "entries": [] } });

    *store.first.lock().unwrap() = Some(like_the_last(store.as_ref()));
    let accepted = bench.ask(&id, price.clone()).unwrap();
    let stream = format!("order:{id}");
    assert_eq!(
        accepted.events[0].seq, 5,
        "opened, line, odometer, odometer, priced"
    );

    *store.first.lock().unwrap() = Some(like_the_last(store.as_ref()));
    let mut resting = bench.make(&stream, "request", price);
    resting["expected"] = json!({ stream.as_str(): 5 });
    let trouble = tell_to(&bench.service, resting.clone()).unwrap_err();
    assert_eq!(trouble.kind, TroubleKind::Conflict);
    assert_eq!(trouble.place, stream);
    assert!(trouble.what.contains("at 6, not at 5"), "{trouble}");
    assert_eq!(
        trouble.reasons,
        [format!("{stream} 6: priced")],
        "what came since"
    );

    // Nothing was written, so it may be decided again on what is new.
    resting["expected"] = json!({ stream.as_str(): 6 });
    assert_eq!(tell_to(&bench.service, resting).unwrap().events[0].seq, 7);
}

#[test]
fn an_order_that_rests_on_its_own_stream_alone_still_gets_a_number_of_its_own() {
    let store = Arc::new(Quicker::default());
    let mut bench = Bench::on(Arc::clone(&store) as Arc<dyn Store>);
    bench.open("Ada Brandt", "Drayman", "KD 2302");
    let open = json!({ "open": { "vehicle": "v", "customer": "c" } });
    let mut late = bench.make("order:late", "request", open.clone());
    late["expected"] = json!({ "order:late": 0 });

    // While it is decided, another device's order gets the next number.
    let number_given = store
        .stream(LOG, "shop", 0)
        .unwrap()
        .into_iter()
        .rfind(|row| row.kind == "number-given")
        .unwrap();
    let body = String::from_utf8(number_given.body.clone()).unwrap();
    let mut quick = like_the_last(store.as_ref());
    quick.events[0].stream = number_given.stream;
    quick.events[0].kind = number_given.kind;
    quick.events[0].version = number_given.version;
    quick.events[0].body = body.replace("1001", "1002").into_bytes();
    *store.first.lock().unwrap() = Some(quick);

    tell_to(&bench.service, late).unwrap();
    let world = bench.service.world().unwrap();
    let late = OrderId::new("late");
    assert_eq!(world.number_of(&late).unwrap(), Some(1003));
}

#[test]
fn words_that_are_erased_while_they_are_read_do_not_stay_at_hand() {
    let store = Arc::new(Quicker::default());
    let mut bench = Bench::on(Arc::clone(&store) as Arc<dyn Store>);
    bench.open("Ada Brandt", "Drayman", "KD 2302");
    let name = Words(named(&bench, "Ada Brandt"));
    let texts = Arc::new(shop::Texts::new(Arc::clone(&bench.store), LOG));
    let mut erasing = like_the_last(store.as_ref());
    erasing.erase = vec![name.0];
    let (within, theirs) = (Arc::clone(&texts), Arc::clone(&store));
    *store.meanwhile.lock().unwrap() = Some(Box::new(move || {
        theirs.inner.append(erasing).unwrap();
        within.forget(&[name]);
    }));
    assert_eq!(
        texts.text(name),
        "Ada Brandt",
        "as it was when it was asked for"
    );
    assert_eq!(texts.text(name), "(erased)");
}

#[test]
fn no_device_can_end_an_erasure_that_was_asked_for() {
    let mut bench = Bench::new();
    let ended = json!({ "erasure-ended": { "asked": "some-command" } });
    let trouble = bench.send("shop", "shop_fact", ended).unwrap_err();
    assert_eq!(trouble.kind, TroubleKind::Unreadable);
    assert!(trouble.what.contains("own program only"), "{trouble}");
}

#[test]
fn what_two_devices_did_apart_is_open_until_somebody_looks() {
    let mut bench = Bench::new();
    let id = bench.open("Ada Brandt", "Drayman", "KD 2302");
    bench.declare(&id, "tray", COVER, 1);
    let off = bench.move_to(&id, "tray", "off");
    let apart = |state: &str| {
        json!({ "moved": { "stage": null, "moves": [{ "item": "tray", "at": [1],
        "after": [{ "command": off.command_id, "nth": 0 }],
        "left": { "state": state, "piece": "original" }, "container": null }] } })
    };
    bench.by("ana").tell(&id, apart("on"));
    assert_eq!(bench.view(&id).open_items, []);
    bench.by("ben").tell(&id, apart("off"));
    let view = bench.view(&id);
    assert_eq!(view.open_items.len(), 1);
    assert!(view.open_items[0].disputed);
    let text = &view.open_items[0].text;
    assert!(
        text.contains("Ana Reis says on") && text.contains("Ben Coe says off"),
        "{text}"
    );
    let seen = &view.items[0].seen;
    assert_eq!(seen.len(), 2, "both are there to be seen past");
    bench.tell(
        &id,
        json!({ "seen": { "moves": [{ "item": "tray", "at": [1], "after": seen,
        "left": { "state": "on", "piece": "original" }, "container": null }] } }),
    );
    assert_eq!(bench.view(&id).open_items, []);
}

/// Commands about one order, as three devices send them; some name what others have not
/// sent yet.
fn story(bench: &mut Bench, id: &str) -> Vec<Value> {
    let stream = format!("order:{id}");
    let (mut ana, mut ben) = (
        Device::new("phone of ana", "ana"),
        Device::new("phone of ben", "ben"),
    );
    let clock = bench.clock.clone();
    let mut out = Vec::new();
    let mut tell = |device: &mut Device, fact: Value| {
        clock.later(1);
        let made = command(device, &clock, &stream, "fact", fact);
        let name = made["command_id"].as_str().unwrap().to_owned();
        out.push(made);
        name
    };
    let moved = |item: &str, at: &[u16], after: &[&String], state: &str| {
        let after: Vec<_> = after
            .iter()
            .map(|command| json!({ "command": command, "nth": 0 }))
            .collect();
        json!({ "moved": { "stage": null, "moves": [{ "item": item, "at": at, "after": after,
            "left": { "state": state, "piece": "original" }, "container": "tray A" }] } })
    };
    let is = |item: &str, is: (&str, &str, &str), count: u16| {
        bench::declared(item, is, &Device::words(item), count)
    };
    tell(&mut ana, is("screws", ("fasteners", "body", "below"), 6));
    tell(&mut ana, is("coolant", ("fluid", "cooling", "below"), 1));
    let out_all = tell(&mut ana, moved("screws", &[1, 2, 3, 4, 5, 6], &[], "out"));
    let ben_tight = tell(&mut ben, moved("screws", &[1, 2, 3], &[&out_all], "tight"));
    let ana_loose = tell(&mut ana, moved("screws", &[3, 4], &[&out_all], "tight"));
    tell(
        &mut ben,
        json!({ "seen": { "moves": [{ "item": "screws", "at": [3], "after": [
        { "command": ben_tight, "nth": 0 }, { "command": ana_loose, "nth": 0 }],
        "left": { "state": "out", "piece": "original" }, "container": null }] } }),
    );
    let low = tell(&mut ben, moved("coolant", &[1], &[], "low"));
    tell(
        &mut ben,
        json!({ "drained": { "item": "coolant", "amount": "5.5 L", "fate": "kept", "temperature": null } }),
    );
    let level = tell(&mut ana, moved("coolant", &[1], &[&low], "at-level"));
    tell(
        &mut ana,
        json!({ "work-done": { "work": { "work": "bleed", "item": "coolant", "own": null },
        "after": [{ "command": level, "nth": 0 }], "words": null } }),
    );
    let mistake = tell(&mut ana, moved("screws", &[5], &[&out_all], "tight"));
    tell(
        &mut ana,
        json!({ "undo": { "command": mistake, "part": null } }),
    );
    let named = tell(
        &mut ben,
        json!({ "renamed": { "item": "screws", "label": Device::words("tray bolts"), "after": [] } }),
    );
    tell(
        &mut ana,
        json!({ "renamed": { "item": "screws", "label": Device::words("tray screws"), "after": [named] } }),
    );
    tell(
        &mut ben,
        json!({ "snag-found": { "snag": "s", "item": "screws", "at": [6], "what": "stripped", "sits": null,
        "words": Device::words("turns and turns"), "photos": [], "moves": [] } }),
    );
    tell(
        &mut ben,
        json!({ "work-due": { "id": "w", "item": null, "words": Device::words("wash it"), "until": { "before": "hand-over" } } }),
    );
    tell(&mut ana, consent("300"));
    tell(&mut ben, consent("250"));
    out
}

#[test]
fn any_arrival_gives_what_is_served() {
    let mut bench = Bench::new();
    let id = bench.open("Ada Brandt", "Drayman", "KD 2302");
    let rows = bench.store.log(LOG, 0, 1_000).unwrap();
    let begun: Vec<Command> = rows
        .iter()
        .filter(|row| row.nth == 0)
        .map(|first| again(bench.store.as_ref(), &rows, first))
        .collect();
    let told = story(&mut bench, &id);
    for command in &told {
        tell_to(&bench.service, command.clone()).unwrap();
    }
    let served = bench.view(&id);
    assert_eq!(served.open_items.len(), 1, "screws 3, 5 and 6 are out");
    assert_eq!(served.open_items[0].text, "tray screws: 3 out (3, 5, 6)");

    let mut seed = 20_261_125_u64;
    for round in 0..24 {
        let mut commands = told.clone();
        if round == 0 {
            commands.reverse();
        } else {
            // Fisher and Yates, with a generator of one line: the same on every machine.
            for at in (1..commands.len()).rev() {
                seed = seed
                    .wrapping_mul(6_364_136_223_846_793_005)
                    .wrapping_add(1_442_695_040_888_963_407);
                commands.swap(at, usize::try_from((seed >> 33) % (at as u64 + 1)).unwrap());
            }
        }
        let store: Arc<dyn Store> = Arc::new(Memory::new());
        for command in &begun {
            store.append(command.clone()).unwrap();
        }
        let clock = bench.clock.clone();
        let other = shop::Service::open(store, LOG, Arc::new(move || clock.now())).unwrap();
        for command in commands {
            tell_to(&other, command).unwrap();
        }
        assert_eq!(
            order(&other, served.number).unwrap(),
            served,
            "round {round}"
        );
    }
}

/// The command that made these rows, with its private texts.
fn again(store: &dyn Store, rows: &[Row], first: &Row) -> Command {
    let of: Vec<&Row> = rows
        .iter()
        .filter(|row| row.command_id == first.command_id)
        .collect();
    let private = of
        .iter()
        .flat_map(|row| shop::commitments(row))
        .filter_map(|held| store.private(LOG, &held.id).unwrap())
        .collect();
    Command {
        log: LOG.to_owned(),
        command_id: first.command_id.clone(),
        digest: first.command_digest,
        who: first.who.clone(),
        device: first.device.clone(),
        device_seq: first.device_seq,
        happened_at: first.happened_at.clone(),
        recorded_at: first.recorded_at.clone(),
        expected: [].into(),
        events: of
            .iter()
            .map(|row| store::NewEvent {
                stream: row.stream.clone(),
                kind: row.kind.clone(),
                version: row.version,
                body: row.body.clone(),
            })
            .collect(),
        private,
        erase: vec![],
    }
}

#[test]
fn replay_equals_what_is_served() {
    let mut bench = Bench::new();
    let id = bench.open("Ada Brandt", "Drayman", "KD 2302");
    for command in story(&mut bench, &id) {
        tell_to(&bench.service, command).unwrap();
    }
    let other = bench.open("Tilde Aumann", "Lanner", "LN 7719");
    bench.declare(&other, "tray", COVER, 1);
    bench.move_to(&other, "tray", "off");
    bench.move_to(&other, "tray", "on");
    bench.finish(&other);
    bench.hand_over(&other).unwrap();

    let replayed = bench.another_program();
    for order_id in [&id, &other] {
        let number = bench.number(order_id);
        assert_eq!(
            order(&replayed, number).unwrap(),
            order(&bench.service, number).unwrap()
        );
    }
    assert_eq!(
        rows(&replayed, None, None).unwrap(),
        rows(&bench.service, None, None).unwrap()
    );
    shop::verify(bench.store.as_ref(), LOG, None).unwrap();
}

#[test]
fn no_number_is_given_twice_however_many_open_at_once() {
    const DEVICES: usize = 8;
    const EACH: usize = 6;
    let bench = Bench::new();
    let numbers = Mutex::new(Vec::new());
    std::thread::scope(|scope| {
        for nth in 0..DEVICES {
            let (bench, numbers) = (&bench, &numbers);
            // Half of them on another program on the same store.
            let other = (nth % 2 == 1).then(|| bench.another_program());
            scope.spawn(move || {
                let service = other.as_ref().unwrap_or(&bench.service);
                let mut device = Device::new(&format!("phone {nth}"), "ana");
                for _ in 0..EACH {
                    let id = Device::name();
                    let open = json!({ "open": { "vehicle": Device::name(), "customer": "c" } });
                    let sent = command(
                        &mut device,
                        &bench.clock,
                        &format!("order:{id}"),
                        "request",
                        open,
                    );
                    tell_to(service, sent).unwrap();
                    numbers.lock().unwrap().push(number(service, &id));
                }
            });
        }
    });
    let given = numbers.into_inner().unwrap();
    let different: BTreeSet<u64> = given.iter().copied().collect();
    let first = 1001;
    let last = first + (DEVICES * EACH) as u64;
    assert_eq!(
        different,
        (first..last).collect::<BTreeSet<_>>(),
        "none twice, none left out"
    );
    assert_eq!(
        rows(&bench.service, None, None).unwrap().len(),
        DEVICES * EACH
    );
}

#[test]
fn a_typo_is_mended_and_an_order_found_by_what_it_is_called_by() {
    let mut bench = Bench::new();
    let id = bench.open("Ada Brant", "Korvane Drayman", "KD 2303");
    bench.open("Tilde Aumann", "Lanner estate", "LN 7719");
    let found = |bench: &Bench, words: &str| -> Vec<u64> {
        rows(&bench.service, Some(words), None)
            .unwrap()
            .into_iter()
            .map(|row| row.number)
            .collect()
    };
    assert_eq!(found(&bench, "Brandt"), Vec::<u64>::new());

    let (vehicle, customer) = {
        let world = bench.service.world().unwrap();
        let row = bench.view(&bench_order(&bench, 1001)).row;
        let vehicle = VehicleId::new(row.vehicle_id.unwrap());
        let known = world.vehicle(&vehicle).unwrap();
        (vehicle.to_string(), known.customer().unwrap().to_string())
    };
    let mended = |field: &str, words: &str| json!({ "mended": { "field": field, "words": Device::words(words), "after": [] } });
    bench
        .send(
            &format!("customer:{customer}"),
            "customer_fact",
            mended("name", "Ada Brandt"),
        )
        .unwrap();
    let mut plate = mended("plate", "KD 2302");
    plate["mended"]["vin_read"] = Value::Null;
    bench
        .send(&format!("vehicle:{vehicle}"), "vehicle_fact", plate)
        .unwrap();
    bench.tell(
        &id,
        json!({ "line-worded": { "line": "line-1", "text": "complaint",
        "words": Device::words("Smells hot"), "after": [] } }),
    );

    let row = bench.view(&id).row;
    assert_eq!(
        (
            row.customer.as_str(),
            row.plate.as_str(),
            row.complaint.as_str()
        ),
        ("Ada Brandt", "KD 2302", "Smells hot")
    );
    for words in ["1001", "kd2302", "KD-23", "brandt", "ADA", "korvane dray"] {
        assert_eq!(found(&bench, words), [1001], "{words:?}");
    }
    assert_eq!(
        found(&bench, "KD 2303"),
        Vec::<u64>::new(),
        "the typo finds nothing any more"
    );
    assert_eq!(found(&bench, "aumann"), [1002]);
    // The day and the month in which it was opened, and no other.
    for day in ["25 November 2026", "25.11.2026", "2026-11", "Nov. 2026"] {
        assert_eq!(found(&bench, day), [1002, 1001], "{day:?}");
    }
    assert_eq!(found(&bench, "26 November 2026"), Vec::<u64>::new());
    for all in ["", "  ", " - "] {
        assert_eq!(found(&bench, all), [1002, 1001], "{all:?}");
    }
}

fn bench_order(bench: &Bench, wanted: u64) -> String {
    let world = bench.service.world().unwrap();
    world.order_numbered(wanted).unwrap().unwrap().to_string()
}

#[test]
fn an_order_opened_by_mistake_is_voided_and_one_at_work_is_not() {
    let mut bench = Bench::new();
    let void = json!({ "void": { "words": Device::words("wrong vehicle") } });
    let mistake = bench.open("Ada Brandt", "Drayman", "KD 2302");
    bench.ask(&mistake, void.clone()).unwrap();
    let view = bench.view(&mistake);
    assert!(view.voided);
    assert_eq!(view.row.word, "voided");
    let refused = bench
        .ask(&mistake, json!({ "price": { "entries": [] } }))
        .unwrap_err();
    assert_eq!(refused.kind, TroubleKind::Refused);
    assert_eq!(refused.mend, "open a new one");

    let at_work = bench.open("Tilde Aumann", "Lanner", "LN 7719");
    bench.declare(&at_work, "tray", COVER, 1);
    bench.move_to(&at_work, "tray", "off");
    let refused = bench.ask(&at_work, void).unwrap_err();
    assert_eq!(refused.what, "Something still stands on this order");
    assert_eq!(
        refused.reasons,
        ["tray was moved: hand the order over instead; if it was told by mistake, take it back"]
    );
    assert!(!bench.view(&at_work).voided);
}

#[test]
fn the_vehicle_carries_its_differences_and_what_is_due_later_to_its_next_visit() {
    let mut bench = Bench::new();
    let id = bench.open("Ada Brandt", "Drayman", "KD 2302");
    bench.declare(&id, "wheel-nuts", ("fasteners", "wheels", "wheel-well"), 5);
    bench.move_to(&id, "wheel-nuts", "out");
    bench.tell(
        &id,
        json!({ "difference-noted": { "id": "d", "item": "wheel-nuts", "at": [4], "what": "larger",
        "size": "M14x1.5", "torque": "140 Nm", "words": null } }),
    );
    bench.move_to(&id, "wheel-nuts", "tight");
    bench.finish(&id);
    let refused = bench.view(&id);
    assert_eq!(
        refused.standing,
        Vec::<String>::new(),
        "nothing is carried before it leaves"
    );
    bench.hand_over(&id).unwrap();

    let vehicle = bench.view(&id).row.vehicle_id.unwrap();
    let next = Device::name();
    bench.open_again(&next, &vehicle, "someone-else");
    let carried = [
        "wheel nuts 4: now M14x1.5, 140 Nm",
        "Due: Tighten the wheel nuts again after 50 km",
    ];
    assert_eq!(
        sorted(bench.view(&next).standing),
        sorted(carried.map(str::to_owned).into())
    );

    // Taken back in and handed over once more, it carries them once.
    bench
        .ask(
            &id,
            json!({ "take-back": { "words": Device::words("forgot the cap") } }),
        )
        .unwrap();
    bench.hand_over(&id).unwrap();
    assert_eq!(
        sorted(bench.view(&next).standing),
        sorted(carried.map(str::to_owned).into())
    );

    bench
        .send(
            &format!("vehicle:{vehicle}"),
            "vehicle_fact",
            json!({ "owing-done": { "order": id,
        "work": { "work": "torque-after-distance", "item": null, "own": null,
            "sort": "torque-after-distance" } } }),
        )
        .unwrap();
    bench
        .send(
            &format!("vehicle:{vehicle}"),
            "vehicle_fact",
            json!({ "difference-ended": { "id": "d" } }),
        )
        .unwrap();
    assert_eq!(bench.view(&next).standing, Vec::<String>::new());
}

fn sorted(mut lines: Vec<String>) -> Vec<String> {
    lines.sort();
    lines
}

#[test]
fn what_comes_in_after_it_left_raises_an_alarm() {
    let mut bench = Bench::new();
    let id = bench.open("Ada Brandt", "Drayman", "KD 2302");
    bench.declare(&id, "tray", COVER, 1);
    bench.move_to(&id, "tray", "off");
    let refused = bench.hand_over(&id).unwrap_err();
    assert_eq!(refused.kind, TroubleKind::Refused);
    assert!(
        refused.reasons.iter().any(|reason| reason == "tray: off"),
        "{:?}",
        refused.reasons
    );
    assert!(
        refused
            .reasons
            .iter()
            .any(|reason| reason == "No price yet"),
        "every reason at once: {:?}",
        refused.reasons
    );
    bench.move_to(&id, "tray", "on");
    bench.finish(&id);
    bench.hand_over(&id).unwrap();
    bench.clock.later(10);
    let view = bench.view(&id);
    assert_eq!((view.row.word.as_str(), view.alarms.len()), ("left", 0));

    // A phone that was out of reach: the screws were never put back.
    bench
        .by("ben")
        .declare(&id, "screws", ("fasteners", "body", "below"), 6);
    bench.tell(
        &id,
        json!({ "moved": { "stage": null, "moves": [{ "item": "screws", "at": [1, 2], "after": [],
        "left": { "state": "out", "piece": "original" }, "container": null }] } }),
    );
    let view = bench.view(&id);
    assert_eq!(view.row.word, "left, look");
    assert!(
        view.alarms
            .iter()
            .any(|alarm| alarm == "screws: 2 out (1, 2)"),
        "{:?}",
        view.alarms
    );
}

#[test]
fn erased_words_read_as_erased_everywhere_and_the_rest_stands() {
    let mut bench = Bench::new();
    let id = bench.open("Ada Brandt", "Drayman", "KD 2302");
    assert_eq!(bench.view(&id).row.customer, "Ada Brandt");
    let erased = named(&bench, "Ada Brandt");
    let shop_fact = record::encode(&record::AnyEvent::Shop(repair::ShopFact::Erased {
        texts: vec![Words(erased)],
        why: repair::Token::new("asked").unwrap(),
    }));
    bench
        .store
        .append(Command {
            log: LOG.to_owned(),
            command_id: Device::name(),
            digest: [9; 32],
            who: "ana".to_owned(),
            device: "desk".to_owned(),
            device_seq: 99,
            happened_at: bench.clock.now().to_string(),
            recorded_at: bench.clock.now().to_string(),
            expected: [].into(),
            events: vec![store::NewEvent {
                stream: "shop".to_owned(),
                kind: shop_fact.kind,
                version: 1,
                body: shop_fact.body,
            }],
            private: vec![],
            erase: vec![erased],
        })
        .unwrap();
    // The program that had the words at hand, and one that starts now.
    for service in [&bench.service, &bench.another_program()] {
        let view = order(service, bench.number(&id)).unwrap();
        assert_eq!(view.row.customer, "(erased)");
        assert_eq!(view.row.vehicle, "Drayman");
        assert!(rows(service, Some("Brandt"), None).unwrap().is_empty());
    }
    shop::verify(bench.store.as_ref(), LOG, None).unwrap();
}

/// The commitment behind a text.
fn named(bench: &Bench, text: &str) -> Hash {
    bench
        .store
        .log(LOG, 0, 1_000)
        .unwrap()
        .iter()
        .flat_map(shop::commitments)
        .map(|held| held.id)
        .find(|id| {
            bench
                .store
                .private(LOG, id)
                .unwrap()
                .is_some_and(|private| private.content == text.as_bytes())
        })
        .unwrap()
}

#[test]
fn words_nobody_sent_are_not_taken_for_words() {
    let mut bench = Bench::new();
    let id = bench.open("Ada Brandt", "Drayman", "KD 2302");
    let head = bench.store.head(LOG).unwrap();
    for fact in [
        json!({ "keys": { "step": "taken", "words": "ab".repeat(32) } }),
        json!({ "attached": { "file": { "words": "ab".repeat(32), "media": "image/jpeg" }, "item": null, "snag": null, "words": null } }),
        json!({ "calculated": { "id": "n", "item": null, "snag": null, "calculator": "leak", "version": 1,
            "inputs": "", "outputs": "", "working": "AB".repeat(32) } }),
    ] {
        let trouble = bench
            .send(&format!("order:{id}"), "fact", fact)
            .unwrap_err();
        assert_eq!(trouble.kind, TroubleKind::Unreadable, "{trouble}");
    }
    assert_eq!(bench.store.head(LOG).unwrap(), head);
    // A commitment that came before may be named again without its text.
    let known = Words(named(&bench, "It squeals")).hex();
    bench.tell(&id, json!({ "keys": { "step": "taken", "words": known } }));
    shop::verify(bench.store.as_ref(), LOG, None).unwrap();
}

#[test]
fn commands_that_fit_nowhere_are_refused_with_where_what_and_how_to_mend() {
    let mut bench = Bench::new();
    let id = bench.open("Ada Brandt", "Drayman", "KD 2302");
    let head = bench.store.head(LOG).unwrap();
    let stream = format!("order:{id}");
    let keys = json!({ "keys": { "step": "taken", "words": null } });
    let good = bench.make(&stream, "fact", keys.clone());
    let with = |key: &str, value: Value| {
        let mut sent = good.clone();
        sent[key] = value;
        sent
    };
    let without = |key: &str| {
        let mut sent = good.clone();
        sent.as_object_mut().unwrap().remove(key);
        sent
    };
    let mut rows: Vec<(Value, &str)> = vec![
        (json!([]), "invalid"),
        (json!("x"), "invalid"),
        (with("command_id", json!("")), "command_id"),
        (with("command_id", json!("a b")), "command_id"),
        (with("device", json!("a\nb")), "device"),
        (with("device_seq", json!(-1)), "-1"),
        (with("device_seq", json!(u64::MAX)), "device_seq"),
        (with("happened_at", json!("now")), "happened_at"),
        (with("who", json!("")), "who"),
        (with("stream", json!("garage")), "garage"),
        (with("stream", json!("order:")), "stream"),
        (with("stream", json!("shop")), "does not take this"),
        (with("stream", json!("vehicle:v")), "does not take this"),
        (with("request", json!({ "charge": {} })), "exactly one"),
        (without("fact"), "exactly one"),
        (with("extra", json!(1)), "extra"),
        (
            with("fact", json!({ "keys": { "step": "lost", "words": null } })),
            "lost",
        ),
        (
            with(
                "fact",
                json!({ "keys": { "step": "taken", "words": { "text": "", "salt": "00" } } }),
            ),
            "empty",
        ),
    ];
    for key in [
        "command_id",
        "device",
        "device_seq",
        "happened_at",
        "who",
        "stream",
    ] {
        rows.push((without(key), key));
    }
    for program_only in [
        json!({ "number-given": { "number": 7, "order": "o" } }),
        json!({ "erased": { "texts": [], "why": "x" } }),
    ] {
        rows.push((
            bench.make("shop", "shop_fact", program_only),
            "shop's own program only",
        ));
    }
    let mut settings = json!({ "set": { "settings": { "name": Device::words("x"), "rate": "1", "currency": "EUR",
        "minor_digits": 2, "taxes": [], "units": "metric", "zone": "Mars/Base" } } });
    rows.push((
        bench.make("shop", "shop_fact", settings.clone()),
        "Mars/Base",
    ));
    settings["set"]["settings"]["zone"] = json!("UTC");
    settings["set"]["settings"]["minor_digits"] = json!(4_000_000_000_u32);
    rows.push((bench.make("shop", "shop_fact", settings), "digits"));
    for (sent, what) in rows {
        let trouble = tell_to(&bench.service, sent.clone()).unwrap_err();
        assert_eq!(trouble.kind, TroubleKind::Unreadable, "{sent}: {trouble}");
        assert!(trouble.to_string().contains(what), "{sent} says {trouble}");
        assert!(!trouble.place.is_empty() && !trouble.mend.is_empty());
    }
    let refused = bench.ask("nowhere", json!({ "charge": {} })).unwrap_err();
    assert_eq!(refused.kind, TroubleKind::Refused);
    assert_eq!(refused.what, "There is no such order");
    assert_eq!(refused.mend, "open it first");
    assert_eq!(
        bench.store.head(LOG).unwrap(),
        head,
        "nothing of it was written"
    );
}
