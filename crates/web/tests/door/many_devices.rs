//! Two phones and a tablet at one order, each with the queue that a page has (`assets/queue.js`, run
//! by a JavaScript engine), over real HTTP: requests are dropped and doubled, answers are lost, the
//! program is killed between taking and answering, clocks are wrong by years, people change over,
//! pages are closed with what waits in them, and one device is put out in the middle. In the end
//! nothing is lost, nothing counts twice, nothing stands under a wrong name, and the account is that
//! of a plain model.
//!
//! `DEVICE_RUNS` says how many seeds are run, from `SEED` on.

use crate::http::{Answer, Door};
use crate::network::{Browser, a_phone, set_up, sign_in};
use jiff::{SignedDuration, Timestamp};
use rquickjs::{Context, Ctx, Function, Promise, Runtime};
use serde_json::{Value, json};
use shop::{Caller, Device as Names};
use std::cell::RefCell;
use std::collections::{BTreeMap, BTreeSet};
use std::rc::Rc;
use std::sync::Arc;
use store::{Memory, Store};

const RUNS: u64 = 12;
const DEVICES: usize = 3;
const ITEMS: u64 = 5;
const PEOPLE: [(&str, &str); 3] = [("olga", "5938"), ("tess", "4827"), ("abe", "7261")];

/// What a page hands to its queue, with the rest of a browser in Rust.
const PAGE: &str = r"
class Store {
  getItem(key) { return Object.hasOwn(this, key) ? this[key] : null; }
  setItem(key, text) { this[key] = String(text); }
  removeItem(key) { delete this[key]; }
}
const stores = [];
const pages = [];
function open(nth) {
  const storage = (stores[nth] ??= new Store());
  const post = async (command) => {
    const said = hostPost(nth, JSON.stringify(command));
    if (!said) throw new Error('nobody answers');
    const { status, body } = JSON.parse(said);
    return { ok: status < 300, status, told: JSON.parse(body) };
  };
  const none = () => {};
  pages[nth] = queueOf({
    storage, session: {}, name: hostName, stamp: () => JSON.parse(hostStamp(nth)), post,
    whole: async (command) => command, forget: none, lock: (work) => work(),
    prove: async () => false, tell: none, met: none, took: none,
  });
}
const tap = (nth, parts) => JSON.stringify(pages[nth].enqueue(JSON.parse(parts)));
const send = (nth) => pages[nth].send();
const waiting = (nth) => pages[nth].waiting();
const refused = (nth) => JSON.stringify(pages[nth].refusedOnes());
";

/// Chance from a seed: SplitMix64.
struct Chance(u64);

impl Chance {
    fn next(&mut self) -> u64 {
        self.0 = self.0.wrapping_add(0x9E37_79B9_7F4A_7C15);
        let mut bits = self.0;
        bits = (bits ^ bits >> 30).wrapping_mul(0xBF58_476D_1CE4_E5B9);
        bits = (bits ^ bits >> 27).wrapping_mul(0x94D0_49BB_1331_11EB);
        bits ^ bits >> 31
    }

    fn below(&mut self, most: u64) -> u64 {
        self.next() % most
    }

    fn one_of<'a, T>(&mut self, all: &'a [T]) -> &'a T {
        let nth = usize::try_from(self.below(all.len() as u64)).unwrap();
        &all[nth]
    }
}

/// A phone or tablet, as whoever holds it knows it.
struct Held {
    browser: Browser,
    id: String,
    person: &'static str,
    reaches: bool,
    clock: Timestamp,
    /// The moves of each item that it has seen.
    seen: BTreeMap<String, Vec<Value>>,
}

struct World {
    chance: Chance,
    store: Arc<Memory>,
    door: Door,
    held: Vec<Held>,
    faults: bool,
    /// Names come from the seed as well.
    names: u64,
    seed: u64,
}

impl World {
    fn begun(seed: u64) -> Self {
        let store = Arc::new(Memory::new());
        let door = Door::on_the_network_with(Arc::clone(&store) as Arc<dyn Store>);
        set_up(&door);
        for item in 0..ITEMS {
            let id = format!("cover-{item}");
            let label = Names::words(&id);
            let said = json!({ "declared": { "item": { "id": id, "kind": "cover", "system": "body",
                "zone": "below", "label": label, "size": null, "pieces": [{ "position": 1, "length": null }],
                "pattern": null, "spent": false, "may_miss": null, "put_in": null, "holds": null } } });
            let command = door.command("order:one", "fact", said);
            door.service.command(&Caller::program(), command).unwrap();
        }
        let mut world = Self {
            chance: Chance(seed),
            store,
            door,
            held: Vec::new(),
            faults: true,
            names: 0,
            seed,
        };
        for (nth, (person, pin)) in PEOPLE.into_iter().enumerate() {
            let mut browser = a_phone(&world.door);
            sign_in(&world.door, &mut browser, person, pin);
            // A clock may be years off, and runs all the same.
            let years = i64::try_from(world.chance.below(9)).unwrap() - 4;
            let off = SignedDuration::from_hours(years * 365 * 24 + i64::try_from(nth).unwrap());
            let clock = world.door.service.now().checked_add(off).unwrap();
            let devices = world.door.service.access().devices().unwrap();
            let known: BTreeSet<&String> = world.held.iter().map(|held: &Held| &held.id).collect();
            let new = devices.iter().find(|(id, _)| !known.contains(id));
            let id = new.unwrap().0.clone();
            world.held.push(Held {
                browser,
                id,
                person,
                reaches: true,
                clock,
                seen: BTreeMap::new(),
            });
        }
        world
    }

    /// Sends a command as the network lets it through; nothing, where no answer comes.
    fn posts(&mut self, nth: usize, body: &str) -> Option<Answer> {
        let fate = if self.faults {
            self.chance.below(10)
        } else {
            9
        };
        if !self.held[nth].reaches || fate == 0 {
            return None;
        }
        let answer = self.asks(nth, body);
        match fate {
            // Taken, and the answer is lost on its way; or the program is killed before it gives it.
            1 => None,
            2 => {
                self.starts_again();
                None
            }
            // A network that was in doubt sent it twice.
            3 => Some(self.asks(nth, body)),
            _ => Some(answer),
        }
    }

    fn asks(&self, nth: usize, body: &str) -> Answer {
        let cookie = self.held[nth].browser.cookie();
        let headers = [
            ("Cookie", cookie.as_str()),
            ("Content-Type", "application/json"),
        ];
        self.door
            .ask("POST", "/api/commands", &headers, body.as_bytes())
    }

    fn starts_again(&mut self) {
        self.door = Door::on_the_network_with(Arc::clone(&self.store) as Arc<dyn Store>);
    }

    /// What a tap is stamped with: the device's own clock, and who is signed in.
    fn stamp(&mut self, nth: usize) -> Value {
        let held = &mut self.held[nth];
        held.clock = held
            .clock
            .checked_add(SignedDuration::from_secs(7))
            .unwrap();
        json!({ "happened_at": held.clock.to_string(), "who": held.person,
            "sign_in": held.browser.has("sign-in").unwrap_or("") })
    }

    fn name(&mut self) -> String {
        self.names += 1;
        format!("{:08x}-0000-4000-8000-{:012x}", self.seed, self.names)
    }

    /// A device that reaches the program sees how things stand.
    fn looks(&mut self, nth: usize) {
        let cookie = self.held[nth].browser.cookie();
        let page = self
            .door
            .ask("GET", "/api/orders/1001", &[("Cookie", &cookie)], b"");
        if page.status != 200 {
            return;
        }
        let order = page.json();
        let items = order["items"].as_array().unwrap();
        self.held[nth].seen = items
            .iter()
            .map(|item| {
                let seen = item["seen"].as_array().unwrap().clone();
                (item["item"].as_str().unwrap().to_owned(), seen)
            })
            .collect();
    }
}

/// The plain model: what was tapped, by whom, on which device.
#[derive(Default)]
struct Model {
    taps: BTreeMap<String, (&'static str, usize)>,
    moves: Vec<Moved>,
    notes: BTreeSet<String>,
}

struct Moved {
    item: String,
    command: String,
    after: Vec<String>,
    off: bool,
}

impl Model {
    /// What is open: something that nobody has seen past left it off.
    fn open(&self) -> BTreeSet<&str> {
        let seen: BTreeSet<&String> = self.moves.iter().flat_map(|one| &one.after).collect();
        let heads = self.moves.iter().filter(|one| !seen.contains(&one.command));
        heads
            .filter(|one| one.off)
            .map(|one| one.item.as_str())
            .collect()
    }
}

fn called<T: for<'js> rquickjs::FromJs<'js>>(ctx: &Ctx<'_>, name: &str, nth: usize) -> T {
    let function: Function<'_> = ctx.globals().get(name).unwrap();
    function.call((nth,)).unwrap()
}

fn sends(ctx: &Ctx<'_>, nth: usize) {
    let function: Function<'_> = ctx.globals().get("send").unwrap();
    let sent: Promise<'_> = function.call((nth,)).unwrap();
    sent.finish::<()>().unwrap();
}

/// One tap: something comes off or goes on, or something is noted.
fn taps(ctx: &Ctx<'_>, world: &Rc<RefCell<World>>, model: &mut Model, nth: usize) {
    let (fact, item, off) = {
        let mut world = world.borrow_mut();
        if world.chance.below(4) == 0 {
            let id = world.name();
            model.notes.insert(id.clone());
            let noted = json!({ "observed": { "id": id, "zone": "outside", "what": "damage",
                "words": Names::words("scratch"), "photos": [] } });
            (noted, None, false)
        } else {
            let item = format!("cover-{}", world.chance.below(ITEMS));
            let off = world.chance.below(2) == 0;
            let after = world.held[nth].seen.get(&item).cloned().unwrap_or_default();
            let state = if off { "off" } else { "on" };
            let moved = json!({ "moved": { "stage": null, "moves": [{ "item": item, "at": [1], "after": after,
                "left": { "state": state, "piece": "original" }, "container": null }] } });
            (moved, Some((item, after)), off)
        }
    };
    let person = world.borrow().held[nth].person;
    let parts = json!([{ "stream": "order:one", "fact": fact }]).to_string();
    let function: Function<'_> = ctx.globals().get("tap").unwrap();
    let told: String = function.call((nth, parts)).unwrap();
    let told: Value = serde_json::from_str(&told).unwrap();
    let command = told[0]["command_id"].as_str().unwrap().to_owned();
    assert_eq!(told[0]["who"], person);
    model.taps.insert(command.clone(), (person, nth));
    if let Some((item, after)) = item {
        let own = json!({ "command": command, "nth": 0 });
        let mut world = world.borrow_mut();
        world.held[nth].seen.insert(item.clone(), vec![own]);
        let name = |one: &Value| one["command"].as_str().unwrap().to_owned();
        model.moves.push(Moved {
            item,
            command,
            after: after.iter().map(name).collect(),
            off,
        });
    }
}

fn run(seed: u64) {
    let world = Rc::new(RefCell::new(World::begun(seed)));
    let runtime = Runtime::new().unwrap();
    let context = Context::full(&runtime).unwrap();
    context.with(|ctx| {
        let host = ctx.globals();
        let of = Rc::clone(&world);
        let post = move |nth: usize, body: String| {
            let answer = of.borrow_mut().posts(nth, &body);
            answer.map_or_else(String::new, |answer| {
                json!({ "status": answer.status, "body": answer.body }).to_string()
            })
        };
        host.set("hostPost", Function::new(ctx.clone(), post).unwrap())
            .unwrap();
        let of = Rc::clone(&world);
        let stamp = move |nth: usize| of.borrow_mut().stamp(nth).to_string();
        host.set("hostStamp", Function::new(ctx.clone(), stamp).unwrap())
            .unwrap();
        let of = Rc::clone(&world);
        let name = move || of.borrow_mut().name();
        host.set("hostName", Function::new(ctx.clone(), name).unwrap())
            .unwrap();
        let queue = include_str!("../../assets/queue.js").replace("export ", "");
        ctx.eval::<(), _>(format!(
            "{queue}\n{PAGE}\nObject.assign(globalThis, {{ open, tap, send, waiting, refused }});"
        ))
        .unwrap();
        goes_on(&ctx, &world, seed);
    });
}

fn goes_on(ctx: &Ctx<'_>, world: &Rc<RefCell<World>>, seed: u64) {
    let mut model = Model::default();
    for nth in 0..DEVICES {
        called::<()>(ctx, "open", nth);
    }
    let out = usize::try_from(world.borrow_mut().chance.below(DEVICES as u64)).unwrap();
    let put_out_at = 20 + world.borrow_mut().chance.below(20);
    let mut head_at_put_out = u64::MAX;
    for step in 0..60 {
        let (nth, what) = {
            let mut world = world.borrow_mut();
            let nth = usize::try_from(world.chance.below(DEVICES as u64)).unwrap();
            (nth, world.chance.below(20))
        };
        if step == put_out_at {
            let world = world.borrow();
            let service = &world.door.service;
            service.access().put_out(&world.held[out].id).unwrap();
            head_at_put_out = service.world().unwrap().position;
        }
        match what {
            0..=9 => taps(ctx, world, &mut model, nth),
            10..=13 => sends(ctx, nth),
            14 | 15 => {
                let held = &mut world.borrow_mut().held[nth];
                held.reaches = !held.reaches;
            }
            // What waits stays in the browser; the page's own name is another from then on.
            16 => called::<()>(ctx, "open", nth),
            17 => world.borrow_mut().starts_again(),
            18 => changes_over(
                &mut world.borrow_mut(),
                nth,
                step >= put_out_at && nth == out,
            ),
            _ => {
                let mut world = world.borrow_mut();
                if world.held[nth].reaches {
                    world.looks(nth);
                }
            }
        }
    }
    // Back in range, and the network is well.
    world.borrow_mut().faults = false;
    for nth in 0..DEVICES {
        world.borrow_mut().held[nth].reaches = true;
        sends(ctx, nth);
        assert_eq!(called::<u32>(ctx, "waiting", nth), 0, "seed {seed}");
        let refused: String = called(ctx, "refused", nth);
        assert_eq!(refused, "[]", "seed {seed}");
    }
    judged(&world.borrow(), &model, (out, head_at_put_out), seed);
}

/// Somebody else takes the device, while it reaches the program and was not put out.
fn changes_over(world: &mut World, nth: usize, is_out: bool) {
    if !world.held[nth].reaches || is_out {
        return;
    }
    let (person, pin) = *world.chance.one_of(&PEOPLE);
    let mut browser = world.held[nth].browser.clone();
    sign_in(&world.door, &mut browser, person, pin);
    let held = &mut world.held[nth];
    (held.browser, held.person) = (browser, person);
}

fn judged(world: &World, model: &Model, (out, head): (usize, u64), seed: u64) {
    let (store, log) = world.door.service.record();
    let rows = store.stream(log, "order:one", 0).unwrap();
    let mut found: BTreeMap<&str, &str> = BTreeMap::new();
    let mut last: BTreeMap<&str, u64> = BTreeMap::new();
    let late = world.door.service.access().late_facts().unwrap();
    let late: BTreeSet<&str> = late.iter().map(|(command, _)| command.as_str()).collect();
    for row in rows
        .iter()
        .filter(|row| model.taps.contains_key(&row.command_id))
    {
        // One event a fact: a second one would be the same tap twice.
        let before = found.insert(&row.command_id, &row.who);
        assert_eq!(before, None, "seed {seed}: {} twice", row.command_id);
        let last = last.entry(row.device.as_str()).or_insert(0);
        assert!(
            *last < row.device_seq,
            "seed {seed}: {} out of sequence",
            row.command_id
        );
        *last = row.device_seq;
        let (_, nth) = model.taps[&row.command_id];
        if nth == out && row.position > head {
            assert!(
                late.contains(row.command_id.as_str()),
                "seed {seed}: not marked"
            );
        }
        assert!(
            nth == out || !late.contains(row.command_id.as_str()),
            "seed {seed}: marked"
        );
    }
    let wanted: BTreeMap<&str, &str> = model
        .taps
        .iter()
        .map(|(command, (person, _))| (command.as_str(), *person))
        .collect();
    assert_eq!(found, wanted, "seed {seed}");
    let view = world
        .door
        .service
        .look(&Caller::program(), |snap| shop::view::order(snap, 1001))
        .unwrap();
    let open: BTreeSet<&str> = view
        .open_items
        .iter()
        .map(|open| open.item.as_str())
        .collect();
    assert_eq!(open, model.open(), "seed {seed}");
    let notes: BTreeSet<String> = view.notes.iter().map(|note| note.id.clone()).collect();
    assert_eq!(notes, model.notes, "seed {seed}");
}

#[test]
fn many_devices_out_of_reach_come_to_one_account() {
    let asked = |name: &str| std::env::var(name).ok().and_then(|text| text.parse().ok());
    let first = asked("SEED").unwrap_or(1);
    for seed in first..first + asked("DEVICE_RUNS").unwrap_or(RUNS) {
        println!("seed {seed}");
        run(seed);
    }
}
