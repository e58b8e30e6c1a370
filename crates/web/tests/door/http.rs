//! A shop's program on a real port, and as much HTTP as it takes to be impolite to it.

use serde_json::Value;
use shop::{Device, Service};
use std::collections::BTreeMap;
use std::io::{BufRead, BufReader, Read, Write};
use std::net::{SocketAddr, TcpStream};
use std::sync::{Arc, Mutex};
use std::time::Duration;
use store::{Memory, Store};

/// A program that serves one shop out of memory.
pub struct Door {
    pub port: u16,
    pub service: Arc<Service>,
    device: Mutex<Device>,
    _runtime: tokio::runtime::Runtime,
}

/// What came back.
#[derive(Debug)]
pub struct Answer {
    pub status: u16,
    pub headers: BTreeMap<String, String>,
    pub body: String,
}

impl Answer {
    pub fn json(&self) -> Value {
        serde_json::from_str(&self.body).unwrap_or_else(|e| panic!("{e} in {self:?}"))
    }

    pub fn header(&self, name: &str) -> &str {
        self.headers.get(name).map_or("", String::as_str)
    }
}

/// A record that lies in memory has nowhere to be copied to.
struct NoDisk;

impl web::Keeper for NoDisk {
    fn kept(&self) -> web::Kept {
        web::Kept::default()
    }

    fn back_up(&self) -> Result<web::LastBackup, shop::Trouble> {
        Err(shop::Trouble::not_found("there is no disk to copy to"))
    }

    fn seal_keys(&self, _: &str) -> Result<(), shop::Trouble> {
        Err(shop::Trouble::not_found("there is no disk to seal on"))
    }

    fn signer(&self) -> Result<shop::Signer, shop::Trouble> {
        shop::Signer::read(&shop::Signer::make()?)
    }
}

impl Door {
    pub fn open() -> Self {
        Self::on(Arc::new(Memory::new()))
    }

    pub fn on(store: Arc<dyn Store>) -> Self {
        Self::with(store, web::Limits::default(), web::Patience::default())
    }

    /// A program with as much patience.
    pub fn with(store: Arc<dyn Store>, limits: web::Limits, patience: web::Patience) -> Self {
        Self::of(store, limits, patience, None)
    }

    /// A program whose people sign in.
    pub fn on_the_network() -> Self {
        Self::on_the_network_with(Arc::new(Memory::new()))
    }

    /// The same on a record that may hold something.
    pub fn on_the_network_with(store: Arc<dyn Store>) -> Self {
        let network = web::Network::default();
        Self::of(
            store,
            web::Limits::default(),
            web::Patience::default(),
            Some(network),
        )
    }

    fn of(
        store: Arc<dyn Store>,
        limits: web::Limits,
        patience: web::Patience,
        network: Option<web::Network>,
    ) -> Self {
        let service = Service::open(store, "shop", Arc::new(now)).unwrap();
        let live = web::Live::default();
        let told = live.clone();
        service
            .record()
            .0
            .on_append(Box::new(move |_, position| told.grown(position)));
        let service = Arc::new(service);
        let state = web::State {
            service: Arc::clone(&service),
            live,
            keeper: Arc::new(NoDisk),
            network,
        };
        let runtime = tokio::runtime::Runtime::new().unwrap();
        let listener = runtime
            .block_on(tokio::net::TcpListener::bind(("127.0.0.1", 0)))
            .unwrap();
        let port = listener.local_addr().unwrap().port();
        let router = web::router_with(state, port, patience);
        runtime.spawn(web::serve(listener, router, limits, std::future::pending()));
        Self {
            port,
            service,
            device: Mutex::new(Device::new("test", "ana")),
            _runtime: runtime,
        }
    }

    pub fn connect(&self) -> TcpStream {
        let stream = TcpStream::connect(SocketAddr::from(([127, 0, 0, 1], self.port))).unwrap();
        stream
            .set_read_timeout(Some(Duration::from_secs(120)))
            .unwrap();
        stream
    }

    /// Sends exactly these bytes and reads what comes back until the other side closes.
    pub fn raw(&self, bytes: &[u8]) -> Answer {
        let mut stream = self.connect();
        // The other side may answer and close before it has read everything.
        let _ = stream.write_all(bytes);
        let mut answer = Vec::new();
        let _ = stream.read_to_end(&mut answer);
        parse(&answer)
    }

    /// A request with these header lines besides Host and Connection.
    pub fn ask(&self, method: &str, path: &str, headers: &[(&str, &str)], body: &[u8]) -> Answer {
        let mut head = format!("{method} {path} HTTP/1.1\r\nConnection: close\r\n");
        if !headers.iter().any(|(name, _)| *name == "Host") {
            head += &format!("Host: 127.0.0.1:{}\r\n", self.port);
        }
        for (name, value) in headers {
            head += &format!("{name}: {value}\r\n");
        }
        if !body.is_empty() {
            head += &format!("Content-Length: {}\r\n", body.len());
        }
        self.raw(&[head.as_bytes(), b"\r\n", body].concat())
    }

    pub fn get(&self, path: &str) -> Answer {
        self.ask("GET", path, &[("Cookie", "who=ana")], b"")
    }

    pub fn post(&self, body: &[u8]) -> Answer {
        self.ask(
            "POST",
            "/api/commands",
            &[("Content-Type", "application/json")],
            body,
        )
    }

    pub fn command(&self, stream: &str, part: &str, content: Value) -> Value {
        self.device
            .lock()
            .unwrap()
            .command(stream, now(), part, content)
    }

    pub fn send(&self, stream: &str, part: &str, content: Value) -> Answer {
        let command = self.command(stream, part, content);
        let answer = self.post(command.to_string().as_bytes());
        assert_eq!(answer.status, 200, "{command}: {answer:?}");
        answer
    }

    /// Lines of news as they come.
    pub fn news(&self) -> impl Iterator<Item = u64> + use<> {
        let mut stream = self.connect();
        let ask = format!(
            "GET /api/live HTTP/1.1\r\nHost: 127.0.0.1:{}\r\n\r\n",
            self.port
        );
        stream.write_all(ask.as_bytes()).unwrap();
        BufReader::new(stream)
            .lines()
            .map(Result::unwrap)
            .filter_map(|line| line.strip_prefix("data: ")?.parse().ok())
    }
}

fn now() -> jiff::Timestamp {
    "2026-11-25T08:00:00Z".parse().unwrap()
}

fn parse(answer: &[u8]) -> Answer {
    let end = answer
        .windows(4)
        .position(|window| window == b"\r\n\r\n")
        .unwrap_or_else(|| panic!("no answer: {:?}", String::from_utf8_lossy(answer)));
    let head = std::str::from_utf8(&answer[..end]).unwrap();
    let mut lines = head.lines();
    let status = lines
        .next()
        .unwrap()
        .split(' ')
        .nth(1)
        .unwrap()
        .parse()
        .unwrap();
    let headers: BTreeMap<String, String> = lines
        .filter_map(|line| line.split_once(": "))
        .map(|(name, value)| (name.to_lowercase(), value.to_owned()))
        .collect();
    let body = &answer[end + 4..];
    let body = match headers.get("transfer-encoding") {
        Some(_) => unchunked(body),
        None => body.to_vec(),
    };
    // Everything but a file that was asked for is text.
    let media = headers.get("content-type").map_or("", String::as_str);
    let body = match media {
        "application/pdf" | "application/octet-stream" => {
            String::from_utf8_lossy(&body).into_owned()
        }
        _ => String::from_utf8(body).unwrap(),
    };
    Answer {
        status,
        headers,
        body,
    }
}

fn unchunked(mut body: &[u8]) -> Vec<u8> {
    let mut out = Vec::new();
    while let Some(end) = body.windows(2).position(|window| window == b"\r\n") {
        let length = usize::from_str_radix(std::str::from_utf8(&body[..end]).unwrap(), 16).unwrap();
        if length == 0 {
            break;
        }
        out.extend(&body[end + 2..end + 2 + length]);
        body = &body[end + 4 + length..];
    }
    out
}
