//! A log of any size: the invented shop's finished order again and again under new names,
//! then the invented shop itself as it stands on the floor today.

use std::collections::BTreeMap;
use std::path::Path;
use store::{Command, Hash, NewEvent, Private, Row, Sqlite, Store};

const LOG: &str = "shop";
/// Commands appended together.
const GROUP: usize = 1_000;

/// Writes a log of at least so many events.
pub fn write(shop: &Path, to: &Path, events: u64) {
    let from = Sqlite::open_for_reading(shop).unwrap();
    let rows = from.log(LOG, 0, usize::MAX).unwrap();
    let template = Template::of(&rows);
    let store = Sqlite::open(to).unwrap();
    let mut writing = Writing {
        store: &store,
        waiting: Vec::new(),
        written: 0,
    };
    // The shop itself first: people and stalls; its orders last, as the newest.
    let (set_up, today): (Vec<&Row>, Vec<&Row>) =
        rows.iter().partition(|row| template.is_set_up(row));
    writing.copy(&set_up, &Names::same(), &from);
    let copies = events
        .saturating_sub(rows.len() as u64)
        .div_ceil(template.rows.len() as u64);
    for copy in 1..=copies {
        writing.copy(
            &template.rows.iter().collect::<Vec<_>>(),
            &Names::new(copy, copies),
            &from,
        );
    }
    writing.copy(&today, &Names::same().numbers_from(copies), &from);
    writing.write();
    println!("{}", writing.written);
}

/// One order from its first event to hand-over, with its vehicle and customer.
struct Template {
    rows: Vec<Row>,
}

impl Template {
    fn of(rows: &[Row]) -> Self {
        let handed_over = rows.iter().find(|row| row.kind == "handed-over");
        let order = &handed_over.expect("an order was handed over").stream;
        let opened = rows
            .iter()
            .find(|row| row.stream == *order && row.kind == "opened")
            .expect("what was handed over was opened");
        let names = String::from_utf8(opened.body.clone()).unwrap();
        // Everything of its commands, and of the vehicle and customer it names.
        let is_of_it = |row: &&Row| {
            let beside = row.stream.split_once(':').map(|(_, name)| name);
            row.stream == *order
                || row.command_id == opened.command_id
                || beside.is_some_and(|name| names.contains(name))
        };
        Self {
            rows: rows.iter().filter(is_of_it).cloned().collect(),
        }
    }

    fn is_set_up(&self, row: &Row) -> bool {
        row.stream == "shop" && row.kind != "number-given"
    }
}

/// What the names in a copy are.
struct Names {
    copy: Option<u64>,
    numbers: u64,
    /// How much earlier it all happened.
    hours_before: i64,
}

/// So many hours lie between one order and the next: twelve a day.
const HOURS_BETWEEN: i64 = 2;

impl Names {
    fn same() -> Self {
        Self {
            copy: None,
            numbers: 0,
            hours_before: 0,
        }
    }

    fn new(copy: u64, copies: u64) -> Self {
        let later = i64::try_from(copies - copy + 1).unwrap();
        Self {
            copy: Some(copy),
            numbers: copy,
            hours_before: later * HOURS_BETWEEN,
        }
    }

    fn time(&self, at: &str) -> String {
        let at: jiff::Timestamp = at.parse().unwrap();
        (at - jiff::SignedDuration::from_hours(self.hours_before)).to_string()
    }

    fn numbers_from(mut self, copies: u64) -> Self {
        self.numbers = copies + 10;
        self
    }

    /// The last twelve digits of a uuid take the copy's number.
    fn uuid(&self, uuid: &str) -> String {
        match self.copy {
            None => uuid.to_owned(),
            Some(copy) => {
                let tail = u64::from_str_radix(&uuid[24..], 16).unwrap();
                let mixed = tail.wrapping_add(copy.wrapping_mul(0x9e37_79b9)) & 0xffff_ffff_ffff;
                format!("{}{mixed:012x}", &uuid[..24])
            }
        }
    }

    fn salt(&self, mut salt: [u8; 32]) -> [u8; 32] {
        for (byte, extra) in salt.iter_mut().zip(self.copy.unwrap_or(0).to_le_bytes()) {
            *byte ^= extra;
        }
        salt
    }

    /// Text with every uuid, every commitment and the order's number renamed.
    fn text(&self, text: &str, commitments: &BTreeMap<String, String>) -> String {
        let mut out = String::with_capacity(text.len());
        let mut rest = text;
        while let Some(found) = rest.find(|c: char| c.is_ascii_hexdigit()) {
            out.push_str(&rest[..found]);
            rest = &rest[found..];
            let word: usize = rest
                .bytes()
                .take_while(|byte| byte.is_ascii_alphanumeric() || *byte == b'-')
                .count();
            let (this, after) = rest.split_at(word);
            match (this.len(), commitments.get(this)) {
                (_, Some(new)) => out.push_str(new),
                (36, None) if this.as_bytes()[8] == b'-' && this.as_bytes()[23] == b'-' => {
                    out.push_str(&self.uuid(this));
                }
                _ => out.push_str(this),
            }
            rest = after;
        }
        out.push_str(rest);
        out
    }

    fn body(&self, row: &Row, commitments: &BTreeMap<String, String>) -> Vec<u8> {
        let text = self.text(&String::from_utf8(row.body.clone()).unwrap(), commitments);
        let mut body: serde_json::Value = match row.kind.as_str() {
            "opened" | "number-given" => serde_json::from_str(&text).unwrap(),
            _ => return text.into_bytes(),
        };
        renumber(&mut body, self.numbers);
        body.to_string().into_bytes()
    }
}

fn renumber(body: &mut serde_json::Value, by: u64) {
    match body {
        serde_json::Value::Object(map) => {
            for (key, value) in map {
                match value.as_u64() {
                    Some(number) if key == "number" => *value = (number + by).into(),
                    _ => renumber(value, by),
                }
            }
        }
        serde_json::Value::Array(list) => list.iter_mut().for_each(|value| renumber(value, by)),
        _ => {}
    }
}

struct Writing<'a> {
    store: &'a Sqlite,
    waiting: Vec<Command>,
    written: usize,
}

impl Writing<'_> {
    fn copy(&mut self, rows: &[&Row], names: &Names, from: &Sqlite) {
        let mut private = Vec::new();
        let mut commitments = BTreeMap::new();
        for id in rows
            .iter()
            .flat_map(|row| shop::commitments(row))
            .map(|held| held.id)
        {
            if let Some(content) = from.private(LOG, &id).unwrap() {
                let content = renamed(content, names);
                commitments.insert(hex(&id), hex(&content.id));
                private.push(content);
            }
        }
        for (index, row) in rows.iter().enumerate() {
            let event = NewEvent {
                stream: names.text(&row.stream, &commitments),
                kind: row.kind.clone(),
                version: row.version,
                body: names.body(row, &commitments),
            };
            let goes_on = index > 0 && rows[index - 1].command_id == row.command_id;
            match self.waiting.last_mut() {
                Some(command) if goes_on => command.events.push(event),
                _ => self.waiting.push(Command {
                    log: LOG.to_owned(),
                    command_id: names.uuid(&row.command_id),
                    digest: row.command_digest,
                    who: row.who.clone(),
                    device: row.device.clone(),
                    device_seq: row.device_seq,
                    happened_at: names.time(&row.happened_at),
                    recorded_at: names.time(&row.recorded_at),
                    expected: BTreeMap::new(),
                    events: vec![event],
                    private: std::mem::take(&mut private),
                    erase: Vec::new(),
                }),
            }
        }
        if self.waiting.len() >= GROUP {
            self.write();
        }
    }

    fn write(&mut self) {
        for answer in self.store.append_all(std::mem::take(&mut self.waiting)) {
            self.written += answer.unwrap().rows().len();
        }
    }
}

fn renamed(content: Private, names: &Names) -> Private {
    let salt = names.salt(content.salt);
    Private {
        id: store::commitment(&salt, &content.content),
        salt,
        ..content
    }
}

fn hex(hash: &Hash) -> String {
    repair::Words(*hash).hex()
}
