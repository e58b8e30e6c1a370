//! The real program, run as a person or another program would, and a few words of HTTP.

#![allow(dead_code, reason = "each test uses its own part")]

use serde_json::Value;
use std::io::{self, BufRead, BufReader, Read, Write};
use std::net::TcpStream;
use std::path::{Path, PathBuf};
use std::process::{Child, ChildStdout, Command, Stdio};
use std::sync::OnceLock;

pub const PROGRAM: &str = env!("CARGO_BIN_EXE_buttonup");

/// What a run came to.
#[derive(Debug)]
pub struct Run {
    pub code: i32,
    pub out: String,
    pub err: String,
}

impl Run {
    pub fn json(&self) -> Value {
        serde_json::from_str(&self.out).unwrap_or_else(|error| panic!("{error}: {self:?}"))
    }
}

/// Runs the program to its end.
pub fn run(arguments: &[&str]) -> Run {
    finish(Command::new(PROGRAM).args(arguments))
}

/// Runs a command to its end.
pub fn finish(command: &mut Command) -> Run {
    let output = command.stdin(Stdio::null()).output().unwrap();
    Run {
        code: output.status.code().unwrap_or(-1),
        out: String::from_utf8(output.stdout).unwrap(),
        err: String::from_utf8(output.stderr).unwrap(),
    }
}

/// The program while it serves; killed when dropped.
pub struct Server {
    child: Child,
    address: String,
    /// Kept open: the program may go on printing.
    _out: BufReader<ChildStdout>,
}

impl Server {
    pub fn start(arguments: &[&str]) -> Self {
        let mut child = Command::new(PROGRAM)
            .args(arguments)
            .args(["--no-open", "--listen", "127.0.0.1:0"])
            .stdout(Stdio::piped())
            .spawn()
            .unwrap();
        let mut out = BufReader::new(child.stdout.take().unwrap());
        let mut line = String::new();
        out.read_line(&mut line).unwrap();
        let address = line
            .trim()
            .strip_prefix("http://")
            .expect("the first line is the address")
            .to_owned();
        Self {
            child,
            address,
            _out: out,
        }
    }

    pub fn serve(folder: &Path) -> Self {
        Self::start(&["serve", "--data", folder.to_str().unwrap()])
    }

    pub fn kill(mut self) {
        self.stop();
    }

    /// Kills it while others still speak to it.
    pub fn kill_now(&self) {
        let id = self.child.id().to_string();
        let killed = Command::new("kill").args(["-KILL", &id]).status();
        assert!(killed.unwrap().success());
    }

    fn stop(&mut self) {
        let _ = self.child.kill();
        let _ = self.child.wait();
    }

    /// The status and the body.
    pub fn get(&self, path: &str) -> (u16, String) {
        self.ask(&format!("GET {path} HTTP/1.1\r\n"), "")
    }

    pub fn post(&self, path: &str, media: &str, body: &str) -> (u16, String) {
        let head = format!(
            "POST {path} HTTP/1.1\r\nContent-Type: {media}\r\nContent-Length: {}\r\n",
            body.len()
        );
        self.ask(&head, body)
    }

    /// Sends one command to the JSON door.
    pub fn command(&self, command: &Value) -> (u16, String) {
        self.post("/api/commands", "application/json", &command.to_string())
    }

    /// The same, where the program may end in the middle.
    pub fn try_command(&self, command: &Value) -> io::Result<(u16, String)> {
        let body = command.to_string();
        let head = format!(
            "POST /api/commands HTTP/1.1\r\nContent-Type: application/json\r\nContent-Length: {}\r\n",
            body.len()
        );
        self.try_ask(&head, &body)
    }

    fn ask(&self, head: &str, body: &str) -> (u16, String) {
        self.try_ask(head, body).unwrap()
    }

    fn try_ask(&self, head: &str, body: &str) -> io::Result<(u16, String)> {
        let mut stream = TcpStream::connect(&self.address)?;
        let ask = format!(
            "{head}Host: {}\r\nCookie: who=nuria\r\nConnection: close\r\n\r\n{body}",
            self.address
        );
        stream.write_all(ask.as_bytes())?;
        let mut answer = String::new();
        stream.read_to_string(&mut answer)?;
        let cut = || io::Error::from(io::ErrorKind::UnexpectedEof);
        let (head, body) = answer.split_once("\r\n\r\n").ok_or_else(cut)?;
        let status = head.split(' ').nth(1).and_then(|word| word.parse().ok());
        Ok((status.ok_or_else(cut)?, body.to_owned()))
    }

    /// A page that has the live updates open.
    pub fn listen(&self) -> TcpStream {
        let mut stream = TcpStream::connect(&self.address).unwrap();
        let ask = format!("GET /api/live HTTP/1.1\r\nHost: {}\r\n\r\n", self.address);
        stream.write_all(ask.as_bytes()).unwrap();
        let mut first = [0; 12];
        stream.read_exact(&mut first).unwrap();
        assert_eq!(&first, b"HTTP/1.1 200");
        stream
    }

    /// Somebody who begins to ask, and stops in the middle.
    pub fn half_a_request(&self) -> TcpStream {
        let mut stream = TcpStream::connect(&self.address).unwrap();
        let half = format!(
            "POST /api/commands HTTP/1.1\r\nHost: {}\r\nContent-Type: application/json\r\nContent-Length: 900\r\n\r\n{{",
            self.address
        );
        stream.write_all(half.as_bytes()).unwrap();
        stream
    }

    /// Somebody who sends nearly all of a large command, as far as it is taken, and stops there.
    pub fn held_body(&self) -> TcpStream {
        const SIX_MIB: usize = 6 * 1024 * 1024;
        let mut stream = TcpStream::connect(&self.address).unwrap();
        let head = format!(
            "POST /api/commands HTTP/1.1\r\nHost: {}\r\nContent-Type: application/json\r\nContent-Length: {SIX_MIB}\r\n\r\n",
            self.address
        );
        stream.write_all(head.as_bytes()).unwrap();
        let soon = Some(std::time::Duration::from_secs(2));
        stream.set_write_timeout(soon).unwrap();
        // Where it is not taken, it waits in between.
        let _ = stream.write_all(&vec![b' '; SIX_MIB - 1]);
        stream
    }

    /// The memory it holds, and the most it ever held, in MiB.
    #[cfg(target_os = "linux")]
    pub fn memory(&self) -> (u64, u64) {
        let path = format!("/proc/{}/status", self.child.id());
        let status = std::fs::read_to_string(path).unwrap();
        let of = |name: &str| {
            let line = status.lines().find_map(|line| line.strip_prefix(name));
            let kib: u64 = line
                .unwrap()
                .trim()
                .split(' ')
                .next()
                .unwrap()
                .parse()
                .unwrap();
            kib / 1024
        };
        (of("VmRSS:"), of("VmHWM:"))
    }

    pub fn signal(&self, signal: &str) {
        let id = self.child.id().to_string();
        // It may have ended meanwhile.
        let _ = Command::new("kill").args([signal, &id]).status();
    }

    pub fn is_running(&mut self) -> bool {
        self.child.try_wait().unwrap().is_none()
    }

    /// Ends it by a signal; the number it ends with.
    pub fn end_by(&mut self, signal: &str) -> Option<i32> {
        self.signal(signal);
        self.child.wait().unwrap().code()
    }

    /// Listens for news until the log stands at `position`.
    pub fn hear(&self, position: u64) -> impl FnOnce() + use<> {
        let mut stream = TcpStream::connect(&self.address).unwrap();
        let ask = format!("GET /api/live HTTP/1.1\r\nHost: {}\r\n\r\n", self.address);
        stream.write_all(ask.as_bytes()).unwrap();
        move || {
            let heard = BufReader::new(stream)
                .lines()
                .map(Result::unwrap)
                .any(|line| {
                    line.strip_prefix("data: ")
                        .and_then(|at| at.parse::<u64>().ok())
                        .is_some_and(|at| at >= position)
                });
            assert!(heard, "the program ended before it told of {position}");
        }
    }
}

impl Drop for Server {
    fn drop(&mut self) {
        self.stop();
    }
}

/// A copy of the invented shop's folder, made once for all tests.
pub fn invented_shop(to: &Path) -> PathBuf {
    static MADE: OnceLock<tempfile::TempDir> = OnceLock::new();
    let made = MADE.get_or_init(|| {
        let folder = tempfile::tempdir().unwrap();
        let data = folder.path().join("shop");
        Server::start(&["demo", "--data", data.to_str().unwrap()]).kill();
        folder
    });
    let folder = to.join("shop");
    copy_folder(&made.path().join("shop"), &folder);
    folder
}

pub fn copy_folder(from: &Path, to: &Path) {
    std::fs::create_dir_all(to).unwrap();
    for entry in std::fs::read_dir(from).unwrap() {
        let entry = entry.unwrap();
        let to = to.join(entry.file_name());
        if entry.file_type().unwrap().is_dir() {
            copy_folder(&entry.path(), &to);
        } else {
            std::fs::copy(entry.path(), to).unwrap();
        }
    }
}

/// Runs the program and kills it after a while, if it has not ended by itself; whether it had.
pub fn killed_after(arguments: &[&str], moment: std::time::Duration) -> bool {
    let mut child = Command::new(PROGRAM)
        .args(arguments)
        .stdin(Stdio::null())
        .stdout(Stdio::null())
        .stderr(Stdio::null())
        .spawn()
        .unwrap();
    std::thread::sleep(moment);
    let ended = child.try_wait().unwrap().is_some();
    let _ = child.kill();
    child.wait().unwrap();
    ended
}

/// A number that a longer run may set.
pub fn number(name: &str, usual: u32) -> u32 {
    std::env::var(name).map_or(usual, |text| text.parse().expect("a whole number"))
}
