//! A hundred devices of the shop's network at once, each let in by a code, each with somebody
//! signed in, each tapping.

use super::crowd::Writer;
use super::load::{Connection, Load};
use super::program::Program;
use super::text;
use anyhow::{Context, Result, ensure};
use serde_json::{Value, json};
use std::io::{Read, Write};
use std::net::TcpStream;
use std::path::Path;
use std::time::{Duration, Instant};

const DEVICES: usize = 100;
/// Faster than anybody presses all day.
const BETWEEN: Duration = Duration::from_secs(1);
/// So many orders are open at once, two devices at each.
const ORDERS: usize = 50;
const PEOPLE: [(&str, &str); 3] = [("nuria", "4827"), ("pavel", "5938"), ("greta", "7261")];

/// What came of it.
pub struct Tapped {
    pub taps: Load,
    /// Taps that were answered and are not in the record.
    pub lost: usize,
    /// Memory after a tenth of the time, and as they end: before what they wrote is read again.
    pub memory: [Option<u64>; 2],
}

/// Lets them tap for a while.
///
/// # Errors
/// If the program could not be run, or a device is not let in or not answered.
pub fn many_devices(program: &Path, scratch: &Path, during: Duration) -> Result<Tapped> {
    let shop = tempfile::tempdir_in(scratch)?;
    let folder = shop.path().join("shop");
    let server = Program::start_at(
        program,
        &[
            "demo",
            "--shop-network",
            "--https-port",
            "0",
            "--http-port",
            "0",
            "--data",
            text(&folder)?,
        ],
    )?;
    let mut desk = Browser::of(&server.address);
    desk.get("/")?;
    desk.sign_in(PEOPLE[0])?;
    let orders = opened(&desk)?;
    let mut devices = Vec::new();
    for nth in 0..DEVICES {
        let person = PEOPLE[nth % PEOPLE.len()];
        let browser = desk.lets_in(&format!("Device {nth}"), person)?;
        let sign_in = browser.kept("sign-in").context("no sign-in")?;
        let (order, number) = &orders[nth % ORDERS];
        let writer = Writer::signed_in(order, person.0, sign_in);
        devices.push((browser.cookie(), writer, *number));
    }
    eprintln!("{DEVICES} devices are in");
    let begun = Instant::now();
    let mut memory = [None; 2];
    let mut times = Vec::new();
    let mut lost = 0;
    std::thread::scope(|scope| -> Result<()> {
        let address = &server.address;
        let all: Vec<_> = devices
            .into_iter()
            .enumerate()
            .map(|(nth, (cookie, writer, number))| {
                // Nobody presses in step with the others.
                let first = BETWEEN * u32::try_from(nth).unwrap_or(0) / 100;
                scope.spawn(move || taps(address, &cookie, (writer, number), first, during))
            })
            .collect();
        for (moment, seen) in [during / 10, during - during / 20].iter().zip(&mut memory) {
            std::thread::sleep(moment.saturating_sub(begun.elapsed()));
            *seen = server.memory();
        }
        for one in all {
            let (took, missing) = one.join().expect("tapping does not panic")?;
            times.extend(took);
            lost += missing;
        }
        Ok(())
    })?;
    Ok(Tapped {
        taps: Load::of(times),
        lost,
        memory,
    })
}

/// One device taps again and again; how long each answer took, and how many taps the record lacks.
fn taps(
    address: &str,
    cookie: &str,
    (mut writer, number): (Writer, u64),
    first: Duration,
    during: Duration,
) -> Result<(Vec<Duration>, usize)> {
    let mut connection = Connection::with_cookie(address, cookie)?;
    writer.declare(&mut connection)?;
    let begun = Instant::now();
    let mut times = Vec::new();
    let mut next = first;
    while next < during {
        std::thread::sleep(next.saturating_sub(begun.elapsed()));
        let asked = Instant::now();
        writer.tap(&mut connection)?;
        times.push(asked.elapsed());
        next += BETWEEN;
    }
    // Each move names the one before: where one were lost, its bolts would not stand as the last
    // one says, or somebody would have to look which of two holds.
    let order: Value = serde_json::from_str(&connection.get(&format!("/api/orders/{number}"))?)?;
    let items = order["items"].as_array().into_iter().flatten();
    let seen: Vec<&Value> = items
        .filter(|item| item["item"] == writer.item())
        .flat_map(|item| item["seen"].as_array().into_iter().flatten())
        .map(|name| &name["command"])
        .collect();
    let stands = writer.last().is_none_or(|last| seen == [&json!(last)]);
    Ok((times, usize::from(!stands)))
}

/// Opens orders of their own for the devices; by name, and by the number people call them by.
fn opened(desk: &Browser) -> Result<Vec<(String, u64)>> {
    let mut connection = Connection::with_cookie(&desk.address, &desk.cookie())?;
    let sign_in = desk.kept("sign-in").context("no sign-in")?;
    let mut seq = 0;
    let mut say = |stream: &str, part: &str, content: Value| -> Result<()> {
        seq += 1;
        let command = json!({ "command_id": format!("0de71ce5-0000-4000-8000-{seq:012}"), "device": "load-desk",
            "device_seq": seq, "happened_at": "2026-03-02T08:15:00Z", "who": PEOPLE[0].0, "sign_in": sign_in,
            "stream": stream, part: content });
        connection
            .post("/api/commands", &command.to_string())
            .map(drop)
    };
    let mut orders = Vec::new();
    for nth in 0..ORDERS {
        let (customer, vehicle, order) = (
            format!("load-c-{nth}"),
            format!("load-v-{nth}"),
            format!("load-o-{nth}"),
        );
        say(
            &format!("customer:{customer}"),
            "customer_fact",
            json!({ "declared": { "texts": {} } }),
        )?;
        say(
            &format!("vehicle:{vehicle}"),
            "vehicle_fact",
            json!({ "declared": { "texts": {}, "vin_read": "none-readable", "rust": null, "customer": customer } }),
        )?;
        say(
            &format!("order:{order}"),
            "request",
            json!({ "open": { "vehicle": vehicle, "customer": customer } }),
        )?;
        orders.push(order);
    }
    // The newest is listed first; numbers have no gaps.
    let listed: Value = serde_json::from_str(&connection.get("/api/orders")?)?;
    let newest = listed[0]["number"].as_u64().context("no order is listed")?;
    let numbers = newest + 1 - ORDERS as u64..;
    Ok(orders.into_iter().zip(numbers).collect())
}

/// What a browser keeps between requests, and asks with.
struct Browser {
    address: String,
    cookies: Vec<(String, String)>,
}

impl Browser {
    fn of(address: &str) -> Self {
        Self {
            address: address.to_owned(),
            cookies: Vec::new(),
        }
    }

    fn cookie(&self) -> String {
        let pairs = self.cookies.iter();
        let pairs: Vec<String> = pairs
            .map(|(name, value)| format!("{name}={value}"))
            .collect();
        pairs.join("; ")
    }

    fn kept(&self, name: &str) -> Option<&str> {
        let mut cookies = self.cookies.iter();
        cookies
            .find(|(known, _)| known == name)
            .map(|(_, value)| value.as_str())
    }

    fn get(&mut self, path: &str) -> Result<String> {
        self.ask("GET", path, "")
    }

    fn post(&mut self, path: &str, form: &str) -> Result<String> {
        self.ask("POST", path, form)
    }

    /// Asks until it is answered: a stranger is told to wait a moment.
    fn ask(&mut self, method: &str, path: &str, form: &str) -> Result<String> {
        loop {
            let mut stream = TcpStream::connect(&self.address).context("nobody answers")?;
            let head = format!(
                "{method} {path} HTTP/1.1\r\nHost: {}\r\nConnection: close\r\nCookie: {}\r\n\
                 Content-Type: application/x-www-form-urlencoded\r\nContent-Length: {}\r\n\r\n{form}",
                self.address,
                self.cookie(),
                form.len()
            );
            stream.write_all(head.as_bytes())?;
            let mut answer = String::new();
            stream.read_to_string(&mut answer)?;
            let (head, body) = answer.split_once("\r\n\r\n").context("no answer")?;
            let status = head.split(' ').nth(1).unwrap_or("");
            if status == "429" {
                std::thread::sleep(Duration::from_millis(200));
                continue;
            }
            ensure!(
                matches!(status, "200" | "303"),
                "{method} {path} was answered with {status}: {body}"
            );
            self.keeps(head);
            return Ok(body.to_owned());
        }
    }

    fn keeps(&mut self, head: &str) {
        for line in head.lines() {
            let (name, value) = line.split_once(": ").unwrap_or(("", ""));
            if !name.eq_ignore_ascii_case("set-cookie") {
                continue;
            }
            let pair = value.split(';').next().unwrap_or("");
            if let Some((name, value)) = pair.split_once('=') {
                self.cookies.retain(|(known, _)| known != name);
                self.cookies.push((name.to_owned(), value.to_owned()));
            }
        }
    }

    fn sign_in(&mut self, (person, pin): (&str, &str)) -> Result<()> {
        self.post(
            &format!("/sign-in/{person}"),
            &format!("pin={pin}&again={pin}&back=%2F"),
        )
        .map(drop)
    }

    /// Lets another device in, and somebody signs in on it.
    fn lets_in(&mut self, name: &str, person: (&str, &str)) -> Result<Self> {
        let page = self.post("/devices/invite", "")?;
        let code = page
            .split_once("class=\"fact code\">")
            .and_then(|(_, rest)| rest.split_once('<'))
            .map(|(code, _)| code.replace(' ', ""))
            .context("the page shows no code")?;
        let mut other = Self::of(&self.address);
        // Whoever has joined nothing yet shows a key that is none.
        other.cookies.push(("device".to_owned(), "none".to_owned()));
        let name = name.replace(' ', "+");
        other.post("/join", &format!("code={code}&name={name}&place=stall"))?;
        other.sign_in(person)?;
        Ok(other)
    }
}
