//! Many who look and many who write at once.

use super::load::{Connection, Load};
use anyhow::{Context, Result};
use serde_json::{Value, json};
use std::sync::atomic::{AtomicU64, Ordering};
use std::time::{Duration, Instant};

/// Who does what for how long.
pub struct Crowd<'a> {
    pub address: &'a str,
    pub readers: usize,
    pub writers: usize,
    /// The pages that readers ask for, each reader the next one.
    pub pages: &'a [String],
    /// The names of the orders that writers write to, each writer the next one.
    pub orders: &'a [String],
    pub during: Duration,
}

/// What came of it.
pub struct Came {
    pub reads: Load,
    pub writes: Load,
}

/// Commands have names of their own, from run to run on one shop.
static NAMES: AtomicU64 = AtomicU64::new(1);

impl Crowd<'_> {
    /// Lets them all go.
    ///
    /// # Errors
    /// If an answer is not a good one.
    pub fn go(&self) -> Result<Came> {
        let mut reads = Vec::new();
        let mut writes = Vec::new();
        std::thread::scope(|scope| -> Result<()> {
            let readers: Vec<_> = (0..self.readers)
                .map(|nth| scope.spawn(move || self.read(nth)))
                .collect();
            let writers: Vec<_> = (0..self.writers)
                .map(|nth| scope.spawn(move || self.write(nth)))
                .collect();
            for reader in readers {
                reads.extend(reader.join().expect("reading does not panic")?);
            }
            for writer in writers {
                writes.extend(writer.join().expect("writing does not panic")?);
            }
            Ok(())
        })?;
        Ok(Came {
            reads: Load::of_many(reads, self.readers),
            writes: Load::of_many(writes, self.writers),
        })
    }

    fn read(&self, nth: usize) -> Result<Vec<Duration>> {
        let page = &self.pages[nth % self.pages.len()];
        let mut connection = Connection::open(self.address)?;
        self.again(|| connection.get(page).map(drop))
    }

    fn write(&self, nth: usize) -> Result<Vec<Duration>> {
        let order = &self.orders[nth % self.orders.len()];
        let mut connection = Connection::open(self.address)?;
        let mut writer = Writer::new(order);
        writer.declare(&mut connection)?;
        self.again(|| writer.tap(&mut connection).map(drop))
    }

    fn again(&self, mut act: impl FnMut() -> Result<()>) -> Result<Vec<Duration>> {
        let start = Instant::now();
        let mut times = Vec::new();
        while start.elapsed() < self.during {
            let began = Instant::now();
            act()?;
            times.push(began.elapsed());
        }
        Ok(times)
    }
}

/// Somebody with two bolts of their own on an order: out and tight, again and again.
pub struct Writer {
    stream: String,
    device: String,
    item: String,
    seq: u64,
    last: Option<String>,
    /// Whose taps they are, and the sign-in that they are made under, where people sign in.
    who: String,
    sign_in: Option<String>,
}

impl Writer {
    pub fn new(order: &str) -> Self {
        let name = NAMES.fetch_add(1, Ordering::Relaxed);
        Self {
            stream: format!("order:{order}"),
            device: format!("load-{name}"),
            item: format!("load-{name}"),
            seq: 0,
            last: None,
            who: "nuria".to_owned(),
            sign_in: None,
        }
    }

    /// Somebody who is signed in on a device.
    pub fn signed_in(order: &str, who: &str, sign_in: &str) -> Self {
        Self {
            who: who.to_owned(),
            sign_in: Some(sign_in.to_owned()),
            ..Self::new(order)
        }
    }

    /// The last move that was answered.
    pub fn last(&self) -> Option<&str> {
        self.last.as_deref()
    }

    /// What they call their bolts.
    pub fn item(&self) -> &str {
        &self.item
    }

    /// Tells of the bolts.
    pub fn declare(&mut self, connection: &mut Connection) -> Result<()> {
        let pieces: Vec<Value> = (1..=2)
            .map(|position| json!({ "position": position, "length": null }))
            .collect();
        let label = json!({ "text": self.item, "salt": "07".repeat(32) });
        let item = json!({ "id": self.item, "kind": "fasteners", "system": "engine", "zone": "above",
            "label": label, "size": null, "pieces": pieces, "pattern": null, "spent": false,
            "may_miss": null, "put_in": null, "holds": null });
        let fact = json!({ "declared": { "item": item } });
        self.send(connection, fact).map(drop)
    }

    /// Moves them. Answers where the log stands.
    pub fn tap(&mut self, connection: &mut Connection) -> Result<u64> {
        let after: Vec<Value> = self
            .last
            .iter()
            .map(|command| json!({ "command": command, "nth": 0 }))
            .collect();
        let state = if self.seq.is_multiple_of(2) {
            "tight"
        } else {
            "out"
        };
        let change = json!({ "item": self.item, "at": [1, 2], "after": after,
            "left": { "state": state, "piece": "original" }, "container": null });
        let fact = json!({ "moved": { "stage": null, "moves": [change] } });
        let (name, position) = self.send(connection, fact)?;
        self.last = Some(name);
        Ok(position)
    }

    fn send(&mut self, connection: &mut Connection, fact: Value) -> Result<(String, u64)> {
        self.seq += 1;
        let number = NAMES.fetch_add(1, Ordering::Relaxed);
        let name = format!("10ad0000-0000-7000-8000-{number:012}");
        let mut command = json!({
            "command_id": name, "device": self.device, "device_seq": self.seq,
            "happened_at": "2026-03-02T08:15:00Z", "who": self.who,
            "stream": self.stream, "fact": fact,
        });
        if let Some(sign_in) = &self.sign_in {
            command["sign_in"] = json!(sign_in);
        }
        let answer = connection.post("/api/commands", &command.to_string())?;
        let answer: Value = serde_json::from_str(&answer).context("no answer")?;
        let position = answer["position"].as_u64();
        let position = position.with_context(|| format!("the fact was not taken: {answer}"))?;
        Ok((name, position))
    }
}
