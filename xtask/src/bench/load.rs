//! A few words of HTTP over the loopback, kept simple enough to cost little themselves.

use anyhow::{Context, Result, ensure};
use std::io::{BufRead, BufReader, Read, Write};
use std::net::TcpStream;
use std::time::{Duration, Instant};

/// One connection, kept open from request to request.
pub struct Connection {
    stream: BufReader<TcpStream>,
    address: String,
    /// What a browser would send with every request.
    cookie: String,
}

impl Connection {
    pub fn open(address: &str) -> Result<Self> {
        Self::with_cookie(address, "who=nuria")
    }

    /// The same as a browser that keeps this.
    pub fn with_cookie(address: &str, cookie: &str) -> Result<Self> {
        let stream = TcpStream::connect(address).context("the program does not answer")?;
        stream.set_nodelay(true)?;
        Ok(Self {
            stream: BufReader::new(stream),
            address: address.to_owned(),
            cookie: cookie.to_owned(),
        })
    }

    /// The body of a page.
    pub fn get(&mut self, path: &str) -> Result<String> {
        self.ask(&format!("GET {path} HTTP/1.1\r\n"), "")
    }

    /// The answer to a command.
    pub fn post(&mut self, path: &str, body: &str) -> Result<String> {
        let head = format!(
            "POST {path} HTTP/1.1\r\nContent-Type: application/json\r\nContent-Length: {}\r\n",
            body.len()
        );
        self.ask(&head, body)
    }

    /// Asks for a stream of news.
    pub fn listen(&mut self, path: &str) -> Result<()> {
        self.send(&format!("GET {path} HTTP/1.1\r\n"), "")?;
        self.head().map(drop)
    }

    /// Waits until the news say that the log has grown to this position.
    pub fn hear(&mut self, position: u64) -> Result<()> {
        loop {
            let line = self.line()?;
            let heard = line.strip_prefix("data: ").and_then(|at| at.parse().ok());
            if heard.is_some_and(|at: u64| at >= position) {
                return Ok(());
            }
        }
    }

    fn ask(&mut self, head: &str, body: &str) -> Result<String> {
        self.send(head, body)?;
        let length = self.head()?.context("an answer without its length")?;
        let mut body = vec![0; length];
        self.stream.read_exact(&mut body)?;
        String::from_utf8(body).context("an answer that is no text")
    }

    fn send(&mut self, head: &str, body: &str) -> Result<()> {
        let text = format!(
            "{head}Host: {}\r\nCookie: {}\r\n\r\n{body}",
            self.address, self.cookie
        );
        Ok(self.stream.get_mut().write_all(text.as_bytes())?)
    }

    /// Reads the head of an answer, which has to be a good one; its length, if it says one.
    fn head(&mut self) -> Result<Option<usize>> {
        let status = self.line()?;
        ensure!(status.contains(" 200 "), "the program answered {status:?}");
        let mut length = None;
        loop {
            let line = self.line()?.to_ascii_lowercase();
            if line.is_empty() {
                return Ok(length);
            }
            if let Some(text) = line.strip_prefix("content-length: ") {
                length = Some(text.parse()?);
            }
        }
    }

    fn line(&mut self) -> Result<String> {
        let mut line = String::new();
        ensure!(self.stream.read_line(&mut line)? > 0, "the program hung up");
        Ok(line.trim_end().to_owned())
    }
}

/// How long answers took.
pub struct Load {
    /// Shortest first.
    times: Vec<Duration>,
    connections: usize,
}

/// As many as a small shop has screens open.
const CONNECTIONS: usize = 4;

impl Load {
    /// Asks for a page again and again on a few connections at once.
    pub fn put_on(address: &str, path: &str, during: Duration) -> Result<Self> {
        let mut times = Vec::new();
        std::thread::scope(|scope| -> Result<()> {
            let all: Vec<_> = (0..CONNECTIONS)
                .map(|_| scope.spawn(|| ask_again(address, path, during)))
                .collect();
            for one in all {
                times.extend(one.join().expect("asking does not panic")?);
            }
            Ok(())
        })?;
        Ok(Self::of_many(times, CONNECTIONS))
    }

    /// Of times that were taken on so many connections at once.
    pub fn of_many(times: Vec<Duration>, connections: usize) -> Self {
        Self {
            connections,
            ..Self::of(times)
        }
    }

    /// Of times that were taken one after another.
    pub fn of(mut times: Vec<Duration>) -> Self {
        times.sort();
        Self {
            times,
            connections: 1,
        }
    }

    /// How many answers there were.
    pub fn count(&self) -> usize {
        self.times.len()
    }

    pub fn a_second(&self) -> f64 {
        let busy: Duration = self.times.iter().sum();
        self.times.len() as f64 * self.connections as f64 / busy.as_secs_f64()
    }

    /// The milliseconds within which so many of a hundred came.
    pub fn slowest_of(&self, hundredths: usize) -> f64 {
        let index = (self.times.len() * hundredths)
            .div_ceil(100)
            .saturating_sub(1);
        self.times
            .get(index)
            .map_or(f64::NAN, |time| time.as_secs_f64() * 1e3)
    }
}

fn ask_again(address: &str, path: &str, during: Duration) -> Result<Vec<Duration>> {
    let mut connection = Connection::open(address)?;
    let start = Instant::now();
    let mut times = Vec::new();
    while start.elapsed() < during {
        let asked = Instant::now();
        connection.get(path)?;
        times.push(asked.elapsed());
    }
    Ok(times)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_slowest_of_a_hundred() {
        let load = Load::of((1..=200).rev().map(Duration::from_millis).collect());
        assert_eq!(load.slowest_of(50), 100.0);
        assert_eq!(load.slowest_of(95), 190.0);
        assert_eq!(load.slowest_of(100), 200.0);
    }
}
